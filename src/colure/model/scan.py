"""A scan in the operator's own words: ranges and steps, lists, cuts; what a campaign without a sphere measures."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Annotated, Literal

import numpy as np
from pydantic import BeforeValidator, Field, WithJsonSchema, model_validator

from colure.geometry.conventions import FloatArray
from colure.geometry.directions import from_azimuth_over_elevation, phi_hat, theta_hat, theta_phi, unit_vector
from colure.model.loading import Section, number
from colure.values import holds_arrays

#: More directions than this are refused before anything is worked out.
MOST_DIRECTIONS = 200_000
#: More angles than this in one range are a slip of the pen.
MOST_ANGLES = 40_000
#: Largest absolute angle that a scan may name, degrees.
LARGEST_DEG = 720.0


def angles_of(text: str | float | tuple[float, ...]) -> FloatArray:
    """Return the angles (degrees) that a number, a list, `a,b,c` or `start:stop:step` names.

    Raises
    ------
    ValueError
        If it cannot be read, the step does not fit the range, or an angle is out of range; value and limit are named.
    """
    if isinstance(text, str):
        angles_deg = np.concatenate([_range_of(part, text) for part in text.split(",")])
    else:
        angles_deg = np.atleast_1d(np.asarray(text, float))
    if not angles_deg.size or not np.all(np.isfinite(angles_deg)) or np.abs(angles_deg).max() > LARGEST_DEG:
        raise ValueError(f"{text!r}: angles must be from {-LARGEST_DEG:g} to {LARGEST_DEG:g} deg")
    if np.unique(np.round(angles_deg, 9)).size != angles_deg.size:
        raise ValueError(f"{text!r}: every angle must come once (deg); `repeats` measures all of them again")
    return angles_deg


def _range_of(part: str, text: str) -> FloatArray:
    words = part.split(":")
    try:
        values = [float(word) for word in words]
    except ValueError:
        raise ValueError(f"{text!r}: must be an angle, a list of angles, or start:stop:step (deg)") from None
    if len(values) == 1:
        return np.array(values)
    if len(values) != 3:
        raise ValueError(f"{text!r}: must be start:stop:step (deg), such as -90:90:1")
    start, stop, step = values
    if step == 0.0 or (stop - start) * step < 0.0 or not np.all(np.isfinite(values)):
        raise ValueError(f"{text!r}: step = {step:g}: must lead from {start:g} to {stop:g} deg")
    count = (stop - start) / step
    if count > MOST_ANGLES:
        raise ValueError(f"{text!r}: {count:.0f} angles: must be at most {MOST_ANGLES} (angles)")
    if abs(count - round(count)) > 1e-6:
        last = start + np.floor(count) * step
        raise ValueError(
            f"{text!r}: step = {step:g}: does not end at {stop:g} deg; stop at {last:g} or {last + step:g} deg"
        )
    return np.asarray(start + step * np.arange(round(count) + 1))


def _angles(value: object) -> object:
    """Check an entry of angles and keep it as it was written."""
    if isinstance(value, bool) or not isinstance(value, (str, int, float, list, tuple)):
        raise ValueError(f"{value!r}: must be an angle, a list of angles, or start:stop:step (deg)")  # noqa: TRY004
    try:
        kept = value if isinstance(value, str) else tuple(np.atleast_1d(np.asarray(value, float)).tolist())
    except (TypeError, ValueError):
        raise ValueError(f"{value!r}: must be an angle, a list of angles, or start:stop:step (deg)") from None
    angles_of(kept)
    return kept


Angles = Annotated[
    str | tuple[float, ...],
    BeforeValidator(_angles),
    WithJsonSchema({"anyOf": [{"type": "number"}, {"type": "string"}, {"type": "array"}]}),
]
#: The two angles of a direction, by the names that [scan] gives them.
ComponentPair = Literal["theta_phi", "azimuth_elevation"]
#: (name of the angle, short name for cuts) of both angles of a pair.
PAIRS: dict[str, tuple[tuple[str, str], tuple[str, str]]] = {
    "theta_phi": (("theta", "theta"), ("phi", "phi")),
    "azimuth_elevation": (("azimuth", "az"), ("elevation", "el")),
}


@dataclass(frozen=True)
@holds_arrays
class Cut:
    """Directions that are measured one after the other along one angle.

    name, label
        For figures and files (`phi_0`), and for people.
    angle_name
        What `angle_deg` (n,) counts: theta, phi, azimuth, elevation, or the angle along a great circle.
    directions
        (n, 3) device frame.
    pair_deg
        (n, 2) theta and phi as they were asked for, negative theta kept; None if not asked for so.
    """

    name: str
    label: str
    angle_name: str
    angle_deg: FloatArray
    directions: FloatArray
    pair_deg: FloatArray | None = None

    @property
    def step_deg(self) -> float:
        """Largest distance between neighbouring directions, degrees; 0 for a single one."""
        if len(self.directions) < 2:
            return 0.0
        cosine = np.clip(np.sum(self.directions[1:] * self.directions[:-1], axis=1), -1.0, 1.0)
        return float(np.rad2deg(np.arccos(cosine).max()))

    @property
    def great_circle(self) -> bool:
        """Tell whether the directions lie in one plane through the origin."""
        return bool(np.linalg.svd(self.directions, compute_uv=False)[-1] < 1e-6 * np.sqrt(len(self.directions)))


class Scan(Section):
    """Where to look, and with which polarization; instead of the grid that Colure would choose.

    theta_deg, phi_deg
        Angles of the device frame: a number, a list, or `start:stop:step`; both together are a rectangle of directions.
    azimuth_deg, elevation_deg
        The same with d = (sin az cos el, sin el, cos az cos el), as `colure aim` counts them.
    sweep
        Which angle of the pair is swept along a cut: `first`, `second`, or `auto` (first, unless it has only one angle).
    great_circles_deg, through_deg, along_deg
        Cuts through one direction (azimuth, elevation; the device's declared beam if left out): planes counted from the
        device's x towards y, and angles along them.
    directions
        CSV beside goal.toml with name, az_deg, el_deg or name, theta_deg, phi_deg, as `colure aim --targets` takes.
    double_sided
        True: negative theta is measured with a negative azimuth reading. False: with the roll turned by 180 deg.
    offset_deg
        Polarization offset of the probe, counted from x towards y: one number a pass.
    probe
        `follows`: the probe turns with the device's x, so that an offset is one Ludwig-3 slant everywhere.
        `fixed`: the probe stays at the offset: theta and phi components, or the grid's Ludwig-2 pair.
    repeats
        How often the whole list is measured; the scatter goes into the intervals.
    dwell_s
        Rest at every point before its sweep, beyond settling.
    """

    theta_deg: Angles | None = None
    phi_deg: Angles | None = None
    azimuth_deg: Angles | None = None
    elevation_deg: Angles | None = None
    sweep: Literal["auto", "first", "second"] = "auto"
    great_circles_deg: Angles | None = None
    through_deg: tuple[Annotated[float, Field(ge=-180, le=180)], Annotated[float, Field(ge=-90, le=90)]] | None = None
    along_deg: Angles = "-90:90:1"
    directions: Annotated[str, Field(min_length=1, max_length=200)] | None = None
    double_sided: bool = True
    offset_deg: Angles = (0.0,)
    probe: Literal["follows", "fixed"] = "follows"
    repeats: int = Field(default=1, ge=1, le=50, json_schema_extra={"unit": "times"})
    dwell_s: float = number("s", 0, 600, 0.0)

    @model_validator(mode="after")
    def _one_form(self) -> Scan:
        theta, az = (self.theta_deg, self.phi_deg), (self.azimuth_deg, self.elevation_deg)
        for pair, names in ((theta, "theta_deg and phi_deg"), (az, "azimuth_deg and elevation_deg")):
            if (pair[0] is None) != (pair[1] is None):
                raise ValueError(f"{names} go together (deg)")
        forms = [
            theta[0] is not None,
            az[0] is not None,
            self.great_circles_deg is not None,
            self.directions is not None,
        ]
        if sum(forms) != 1:
            raise ValueError(
                "needs exactly one of: theta_deg with phi_deg, azimuth_deg with elevation_deg, great_circles_deg (deg), directions (CSV)"
            )
        for name, values, limit in (
            ("elevation_deg", az[1], 90.0),
            ("azimuth_deg", az[0], 360.0),
            ("theta_deg", theta[0], 180.0),
        ):
            if values is not None and np.abs(angles_of(values)).max() > limit + 1e-9:
                raise ValueError(f"{name} = {values!r}: must be from {-limit:g} to {limit:g} deg")
        offsets = self.offsets_deg
        if offsets.size > 8 or np.abs(offsets).max() > 360.0:
            raise ValueError(f"offset_deg = {self.offset_deg!r}: must be 1 to 8 angles from -360 to 360 deg")
        if self.through_deg is not None and self.great_circles_deg is None:
            raise ValueError("through_deg belongs to great_circles_deg (deg)")
        sizes = [0 if x is None else angles_of(x).size for x in (*theta, *az)]
        planes = 0 if self.great_circles_deg is None else angles_of(self.great_circles_deg).size
        count = sizes[0] * sizes[1] + sizes[2] * sizes[3] + planes * angles_of(self.along_deg).size
        if count > MOST_DIRECTIONS:
            raise ValueError(f"{count} directions: must be at most {MOST_DIRECTIONS} (directions)")
        return self

    @property
    def mixes_where_it_rolls(self) -> bool:
        """Tell whether one offset of a probe at rest is no one polarization where the device rolls from direction to direction."""
        lines = self.azimuth_deg is not None or self.great_circles_deg is not None
        return self.probe == "fixed" and lines and self.offsets_deg.size == 1

    @property
    def offsets_deg(self) -> FloatArray:
        """Polarization offsets, one a pass, degrees."""
        return angles_of(self.offset_deg)

    def cuts(self) -> list[Cut]:
        """Return the cuts in the order they are measured; none for a CSV of directions."""
        if self.theta_deg is not None and self.phi_deg is not None:
            return self._of_pair("theta_phi", angles_of(self.theta_deg), angles_of(self.phi_deg), _of_theta_phi)
        if self.azimuth_deg is not None and self.elevation_deg is not None:
            one, two = angles_of(self.azimuth_deg), angles_of(self.elevation_deg)
            return self._of_pair("azimuth_elevation", one, two, _of_azimuth_elevation)
        if self.great_circles_deg is None:
            return []
        azimuth, elevation = self.through_deg or (0.0, 0.0)
        centre = _of_azimuth_elevation(np.array([azimuth]), np.array([elevation]))[0]
        along = angles_of(self.along_deg)
        circles = []
        for plane in angles_of(self.great_circles_deg):
            a = np.deg2rad(along)[:, None]
            directions = np.cos(a) * centre + np.sin(a) * _tangent(centre, float(plane))
            label = f"circle {plane:g} deg through ({azimuth:g}, {elevation:g})"
            circles.append(Cut(f"circle_{_short(plane)}", label, "angle", along, directions))
        return circles

    def crossing(self) -> list[Cut]:
        """Return the cuts across those that are measured, where azimuth and elevation make a rectangle; directions are the same.

        Across theta there is nothing of the kind: phi at one theta is a cone.
        """
        if self.azimuth_deg is None or self.elevation_deg is None:
            return []
        one, two = angles_of(self.azimuth_deg), angles_of(self.elevation_deg)
        if min(one.size, two.size) < 2:
            return []
        turned = self.model_copy(update={"sweep": "first" if self.sweep == "second" else "second"})
        return turned._of_pair("azimuth_elevation", one, two, _of_azimuth_elevation)

    def _of_pair(
        self,
        pair: ComponentPair,
        one: FloatArray,
        two: FloatArray,
        direction: Callable[[FloatArray, FloatArray], FloatArray],
    ) -> list[Cut]:
        second = self.sweep == "second" or (self.sweep == "auto" and one.size == 1 and two.size > 1)
        swept, fixed = (two, one) if second else (one, two)
        (swept_name, _), (fixed_name, short) = PAIRS[pair][::-1] if second else PAIRS[pair]
        cuts = []
        for value in fixed:
            same = np.full(swept.size, value)
            first, other = (same, swept) if second else (swept, same)
            pair_deg = np.stack([first, other], axis=-1) if pair == "theta_phi" else None
            label = f"{fixed_name} = {value:g} deg"
            cuts.append(Cut(f"{short}_{_short(value)}", label, swept_name, swept, direction(first, other), pair_deg))
        return cuts


def _short(value: float) -> str:
    """Return an angle as part of a name: 22.5 becomes 22p5."""
    return f"{value:g}".replace(".", "p")


def _of_theta_phi(theta_deg: FloatArray, phi_deg: FloatArray) -> FloatArray:
    return unit_vector(theta=np.deg2rad(theta_deg), phi=np.deg2rad(phi_deg))


def _of_azimuth_elevation(azimuth_deg: FloatArray, elevation_deg: FloatArray) -> FloatArray:
    return from_azimuth_over_elevation(azimuth=np.deg2rad(azimuth_deg), elevation=np.deg2rad(elevation_deg))


def _tangent(centre: FloatArray, plane_deg: float) -> FloatArray:
    """Return the unit tangent (3,) at a direction along Ludwig-3 slant `plane_deg`: x at the boresight, towards y."""
    theta, phi = theta_phi(centre)
    turn = phi - np.deg2rad(plane_deg)
    tangent = np.cos(turn) * theta_hat(theta=theta, phi=phi) - np.sin(turn) * phi_hat(theta=theta, phi=phi)
    return np.asarray(tangent)
