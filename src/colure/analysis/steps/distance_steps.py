"""A scan that was repeated at several range lengths becomes one, without the wave that bounced between probe and antenna.

At a place p and the distance R + s a reading is g (D_p + C_p exp(-2jks)): D_p and C_p are what was read directly and what bounced
once, g is what the path did meanwhile (the direct wave's longer way, drift, cables that were moved). g is common to all places,
and found from all of them: it need not be known how far the drift went, nor the step's length better than a share of the wave.
"""

from __future__ import annotations

import json
from dataclasses import asdict, dataclass
from typing import TYPE_CHECKING, Any

import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray, IntArray, amplitude_db, amplitude_from_db, wavenumber
from colure.geometry.kinematics import sighting
from colure.model.chamber import Chamber
from colure.model.device import Device
from colure.model.plan import ROLES, Role
from colure.waves.bounce import bounce_phase, distance_weights

if TYPE_CHECKING:
    import xarray as xr

#: Readings this much below the strongest say nothing of a bounce: amplitude ratio.
STRONG = 0.1
#: The bounce of the directions in which it is strongest, but for one in twenty.
QUANTILE = 0.95
#: Attribute of a record that holds several distances, and of one that was made from such.
SEVERAL, REMOVED = "distance_steps", "bounce"
#: What leads from the reading of one antenna to that of another; of other roles the plain mean is taken.
RADIATED = (Role.SCAN, Role.TIE, Role.REFERENCE, Role.TURN)


@dataclass(frozen=True, kw_only=True)
class Bounce:
    """What bounced between probe and antenna, over the direct wave, and what is left of it.

    steps_mm, moves, expanded_mm
        As declared.
    rms, strongest
        Of the device: rms by power over all directions, and what 19 of 20 strong directions stay below; what is common to all
        directions is not in it.
    reference
        Of the reference horn, relative to the device's common part; nan without one.
    left
        Share of it that stays: by the steps' lengths, by waves that bounced twice, by drift between the distances.
    path_db, path_deg
        What the path did between the distances beyond the declared step: largest change of level and phase against the first.
    dropped
        Extra boresight checks that were left out: they were not read at every distance.
    """

    steps_mm: tuple[float, ...]
    moves: str
    expanded_mm: float
    rms: float
    strongest: float
    reference: float
    left: float
    path_db: float
    path_deg: float
    dropped: int

    def residual(self, declared_db: float | None) -> float:
        """Return what stays over the direct wave: of what was found, or of what was declared if that is more."""
        declared = 0.0 if declared_db is None else float(amplitude_from_db(declared_db))
        return self.left * max(self.strongest, declared)

    @classmethod
    def of(cls, record: xr.Dataset) -> Bounce | None:
        """Return what was taken out of a record; None if nothing was."""
        told = str(record.attrs.get(REMOVED, ""))
        if not told:
            return None
        values = json.loads(told)
        return cls(**{**values, "steps_mm": tuple(values["steps_mm"])})


def holds_distances(record: xr.Dataset) -> bool:
    """Tell whether a record holds several distances that are not put together yet."""
    return bool(record.attrs.get(SEVERAL))


def require_one_distance(record: xr.Dataset) -> None:
    """Raise `ValueError` for a record that holds several distances."""
    if holds_distances(record):
        raise ValueError("record: holds several distances; they must be put together first (distance_steps)")


def first_distance(record: xr.Dataset) -> xr.Dataset:
    """Return the rows of the first distance alone, as if there were no other; the record itself if there is none."""
    if not holds_distances(record):
        return record
    told = json.loads(record.attrs[SEVERAL])
    index = record["plan_index"].values
    time_s = record["time_s"].values
    own = (index >= 0) & (index < told["points_per_distance"])
    last = time_s[own].max(initial=-np.inf)
    out = record.isel(point=np.flatnonzero(own | ((index < 0) & (time_s <= last))))
    out.attrs = {name: value for name, value in record.attrs.items() if name != SEVERAL}
    return out


def at_one_distance(record: xr.Dataset, chamber: Chamber, device: Device) -> xr.Dataset:
    """Return a record of several distances as one at the declared range length; any other record as it is.

    Raises
    ------
    ValueError
        If no place was read at every distance, or the receiver has no phase.
    """
    if not holds_distances(record):
        return record
    if record.attrs.get("receiver", "vector") != "vector":
        raise ValueError("record: receiver is power-only: distance_steps need phase (receiver)")
    told = json.loads(record.attrs[SEVERAL])
    rows, dropped = _rows(record, len(told["distance_steps_mm"]), int(told["points_per_distance"]))
    steps_m = 1e-3 * np.asarray(told["distance_steps_mm"], float)
    trace, sizes = _combined(record, rows, steps_m, chamber, device)
    bounce = Bounce(steps_mm=tuple(told["distance_steps_mm"]), moves=told["distance_moves"],
                    expanded_mm=told["distance_expanded_mm"],
                    **_with_steps(sizes, record, steps_m, told["distance_expanded_mm"]), dropped=dropped)  # fmt: skip
    return _put_together(record, rows, trace, bounce)


def _rows(record: xr.Dataset, count: int, points: int) -> tuple[IntArray, int]:
    """Return the rows (distance, place) of what was read at every distance, in measured order, and how many extra ones there are."""
    index = record["plan_index"].values
    table = np.full((count, points), -1, np.int64)
    planned = np.flatnonzero(index >= 0)
    table[index[planned] // points, index[planned] % points] = planned
    whole = np.all(table >= 0, axis=0)
    scan = record["role"].values[table[0]] == ROLES.index(Role.SCAN)
    if not np.any(whole & scan):
        reached = int(np.count_nonzero(np.any(table >= 0, axis=1)))
        raise ValueError(
            f"record: no direction was read at all {count} distances, the run reached {reached} of them; go on with it (distance_steps)"
        )
    return table[:, whole], int(np.count_nonzero(index < 0))


def _beyond(
    record: xr.Dataset, rows: IntArray, steps_m: FloatArray, chamber: Chamber, centre_m: FloatArray
) -> ComplexArray:
    """Return what makes of readings (distance, row, frequency) those of an antenna that moves by the whole step.

    One that stands at `centre_m` (3,) of the device frame, beside the axes' intersection, moves by less where it is seen aside.
    """
    names = [str(one) for one in record["axis"].values]
    geometry, tables = chamber.positioner.geometry, chamber.axis_table
    commanded = record["commanded_deg"].values[rows]
    first, second = (
        np.deg2rad(tables[name].map.angle_deg(commanded[:, names.index(name)])) for name in geometry.axis_names
    )
    along = sighting(geometry, first=first, second=second).direction @ centre_m
    range_m = chamber.range_length_m + steps_m[:, None]
    far = np.sqrt(range_m**2 + float(centre_m @ centre_m) - 2.0 * range_m * along)
    level = far / far[:1] * range_m[:1] / range_m
    beyond = far - far[:1] - (steps_m - steps_m[0])[:, None]
    return np.asarray(level[..., None] * np.exp(1j * beyond[..., None] * wavenumber(record["frequency"].values)))


def _combined(
    record: xr.Dataset, rows: IntArray, steps_m: FloatArray, chamber: Chamber, device: Device
) -> tuple[ComplexArray, dict[str, Any]]:
    """Return the traces (place, frequency, port) without the bounce, and what was found of it."""
    frequency, role = record["frequency"].values, record["role"].values[rows[0]]
    k = wavenumber(frequency)
    read = np.array(record["trace"].values[rows], complex)
    for kind, centre_mm in (
        ((Role.SCAN, Role.TIE, Role.TURN), device.offset_mm),
        ((Role.REFERENCE,), chamber.reference.offset_mm if chamber.reference.has_horn else device.offset_mm),
    ):
        of_kind = np.flatnonzero(np.isin(role, [ROLES.index(one) for one in kind]))
        centre_m = 1e-3 * np.asarray(centre_mm, float)
        read[:, of_kind] *= _beyond(record, rows[0][of_kind], steps_m, chamber, centre_m)[..., None]
    scan = role == ROLES.index(Role.SCAN)
    strongest = read[:, scan]
    path = np.einsum("pfc,mpfc->mf", strongest[0].conj(), strongest) / np.sum(np.abs(strongest[0]) ** 2, axis=(0, 2))
    weights = distance_weights(frequency, steps_m)
    even = read / path[:, None, :, None]
    direct, bounced = np.einsum("afm,mpfc->apfc", weights, even)
    out = direct.copy()
    radiated = np.isin(role, [ROLES.index(one) for one in RADIATED])
    out[~radiated] = read[:, ~radiated].mean(axis=0)
    misfit = even - direct - bounced * bounce_phase(frequency, steps_m).T[:, None, :, None]
    return out, {
        **_sizes(direct[scan], bounced[scan]),
        "reference": _rms(direct[role == ROLES.index(Role.REFERENCE)], bounced[role == ROLES.index(Role.REFERENCE)]),
        "path": path * np.exp(1j * k * (steps_m - steps_m[0])[:, None]),
        "drifted": _rms(direct[role == ROLES.index(Role.TIE)], misfit[:, role == ROLES.index(Role.TIE)]),
    }


def _rms(direct: ComplexArray, other: ComplexArray) -> float:
    if not direct.size:
        return float("nan")
    return float(np.sqrt(np.mean(np.abs(other) ** 2) / np.mean(np.abs(direct) ** 2)))


def _sizes(direct: ComplexArray, bounced: ComplexArray) -> dict[str, float]:
    """Return how large the bounce of the device is over its direct wave."""
    strong = np.abs(direct) > STRONG * np.abs(direct).max()
    return {
        "rms": _rms(direct, bounced),
        "strongest": float(np.quantile(np.abs(bounced[strong] / direct[strong]), QUANTILE)),
    }


def _with_steps(sizes: dict[str, Any], record: xr.Dataset, steps_m: FloatArray, expanded_mm: float) -> dict[str, float]:
    """Return the sizes of a `Bounce`, with what is left of it by steps, second bounces and drift."""
    frequency = record["frequency"].values
    weights, turned = distance_weights(frequency, steps_m)[0], bounce_phase(frequency, steps_m)
    size = np.linalg.norm(weights, axis=1)
    by_steps = wavenumber(frequency) * 1e-3 * expanded_mm * size
    twice = 2.0 * sizes["strongest"] * np.abs(np.sum(weights * turned**2, axis=1))
    drifted = 0.0 if np.isnan(sizes["drifted"]) else sizes["drifted"]
    path = sizes.pop("path")
    levels = amplitude_db(np.abs(path))
    sizes.pop("drifted")
    return {
        **sizes,
        "left": float(np.sqrt(by_steps**2 + twice**2 + (drifted * size) ** 2).max()),
        "path_db": float(levels.flat[np.argmax(np.abs(levels))]),
        "path_deg": float(np.rad2deg(np.angle(path)).flat[np.argmax(np.abs(np.angle(path)))]),
    }


def _put_together(record: xr.Dataset, rows: IntArray, trace: ComplexArray, bounce: Bounce) -> xr.Dataset:
    """Return a record of the first distance's rows with what all of them gave."""
    from colure.model.files import with_step

    order = np.argsort(rows[0], kind="stable")
    out = record.isel(point=rows[0][order])
    flags = np.bitwise_or.reduce(record["flags"].values[rows], axis=0)[order]
    changed: dict[str, Any] = {
        "trace": (record["trace"].dims, trace[order], dict(record["trace"].attrs)),
        "flags": (record["flags"].dims, flags, dict(record["flags"].attrs)),
    }
    # What drifted is the mean over the distances: each place counts from the beginning of its own.
    for name in ("time_s", "wall_time", "monotonic_s"):
        own = record[name].values[rows]
        since = np.mean(own - own.min(axis=1, keepdims=True), axis=0)
        changed[name] = (record[name].dims, (own[0].min() + since)[order], dict(record[name].attrs))
    attrs = {name: value for name, value in record.attrs.items() if name != SEVERAL}
    told = asdict(bounce)
    out = out.assign(changed)
    out.attrs = {**attrs, REMOVED: json.dumps(told)}
    return with_step(out, "distance steps", distances=len(bounce.steps_mm), moves=bounce.moves,
                     bounce_rms_db=round(float(amplitude_db(bounce.rms, least=1e-12)), 2))  # fmt: skip
