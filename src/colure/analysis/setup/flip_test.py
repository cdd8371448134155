"""What a flip test says: theta zero, and how far the axes miss each other sideways."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from colure.analysis.steps.drift import correct, declared_drift, track
from colure.geometry.conventions import ComplexArray, FloatArray, amplitude_db, wavenumber
from colure.model.chamber import Chamber
from colure.model.plan import Role
from colure.model.record import of_role

if TYPE_CHECKING:
    import xarray as xr

#: What interpolating between the places of a cut may add, expanded: degrees, millimetres (found on the twin).
FLOOR = (0.001, 0.002)
#: Stretches of the cut whose errors count as independent.
STRETCHES = 8
#: Largest theta zero looked for, degrees.
LARGEST_DEG = 2.0
ECHO_DRAWS, ECHO_SEED = 200, 60


@dataclass(frozen=True, kw_only=True)
class Flip:
    """Values, expanded uncertainties (k = 2) and what chamber.toml declares, degrees and millimetres; rms disagreement before and
    after, dB."""

    theta_zero_deg: float
    theta_zero_expanded_deg: float
    axes_offset_mm: float
    axes_offset_expanded_mm: float
    disagreement_before_db: float
    disagreement_after_db: float
    theta_zero_declared_deg: float
    axes_offset_declared_mm: float

    def sentences(self) -> list[str]:
        """Say what to turn or shift, and how well the two sides agree."""
        out = []
        for value, expanded, declared, unit, what in (
            (
                self.theta_zero_deg,
                self.theta_zero_expanded_deg,
                self.theta_zero_declared_deg,
                "deg",
                "turn the azimuth axis' zero towards negative readouts",
            ),
            (
                self.axes_offset_mm,
                self.axes_offset_expanded_mm,
                self.axes_offset_declared_mm,
                "mm",
                "move the roll axis sideways towards negative x",
            ),
        ):
            if abs(value) > expanded:
                advice = f"{what} by this much"
            elif expanded > declared:
                advice = (
                    f"cannot tell, because echoes and noise hide more than the declared ±{declared:g} {unit}; a device with a "
                    "narrower beam shows it"
                )
            else:
                advice = "nothing to do"
            name = "theta zero" if unit == "deg" else "axes offset sideways"
            out.append(f"{name}: {value:+.3f} \u00b1 {expanded:.3f} {unit}: {advice}")
        out.append(
            f"the two sides disagree by {self.disagreement_before_db:.1f} dB below the peak as they are, by "
            f"{self.disagreement_after_db:.1f} dB with both taken into account"
        )
        return out


def evaluate_flip(record: xr.Dataset, chamber: Chamber) -> Flip:
    """Compare the two sides of a flip test.

    The true direction is theta + zero on one side and theta - zero, seen from the device, on
    the other; axes apart by x lengthen one way by x sin(theta) and shorten the other. One
    complex factor per frequency is free (drift, probe).

    Raises
    ------
    ValueError
        If the record does not hold two cuts at the same directions.
    """
    from scipy.interpolate import CubicSpline
    from scipy.optimize import least_squares

    theta, sides = _sides(correct(record, track(record, declared=declared_drift(chamber))), chamber)
    k = wavenumber(record["frequency"].values)
    peak = float(np.abs(sides).max())
    one, two = sides / peak
    splines = [CubicSpline(np.rad2deg(theta), side, axis=0) for side in (one, two)]
    inner = np.abs(np.rad2deg(theta)) <= np.rad2deg(np.abs(theta).max()) - LARGEST_DEG
    places = theta[inner]

    def rest(x: FloatArray) -> ComplexArray:
        zero_deg, offset_mm = x
        way = np.exp(1j * k[None, :] * 1e-3 * offset_mm * np.sin(places)[:, None])
        # Side one read at theta saw theta + aside: what it would have seen at theta is read that much earlier.
        # A device that swings sideways is also seen from a little aside.
        aside = zero_deg - np.rad2deg(1e-3 * offset_mm * np.cos(places) / chamber.range_length_m)
        first = splines[0](np.rad2deg(places) - aside) / way
        second = splines[1](np.rad2deg(places) + aside) * way
        factor = np.sum(np.conj(second) * first, axis=0) / np.sum(np.abs(second) ** 2, axis=0)
        return np.asarray(first - second * factor)

    def flat(x: FloatArray) -> FloatArray:
        left = rest(x).ravel()
        return np.concatenate([left.real, left.imag])

    fit = least_squares(flat, np.zeros(2), x_scale=(0.05, 0.1), bounds=((-LARGEST_DEG, -20.0), (LARGEST_DEG, 20.0)))
    sigma = _sigma(np.asarray(fit.fun), np.asarray(fit.jac), places.size)
    before, after = (float(amplitude_db(np.sqrt(np.mean(np.abs(rest(x)) ** 2)) + 1e-15)) for x in (np.zeros(2), fit.x))
    strongest = one[int(np.argmax(np.sum(np.abs(one) ** 2, axis=1)))]
    echoes = _echoes(
        np.asarray(fit.jac),
        places,
        strongest / np.abs(strongest),
        order=int(record.attrs["order"]),
        amplitude=chamber.facing_echo_amplitude,
    )
    expanded = np.sqrt((2.0 * sigma) ** 2 + (2.0 * echoes) ** 2 + np.square(FLOOR))
    return Flip(
        theta_zero_deg=float(fit.x[0]),
        theta_zero_expanded_deg=float(expanded[0]),
        axes_offset_mm=float(fit.x[1]),
        axes_offset_expanded_mm=float(expanded[1]),
        disagreement_before_db=before,
        disagreement_after_db=after,
        theta_zero_declared_deg=chamber.alignment.theta_zero_deg,
        axes_offset_declared_mm=chamber.alignment.axes_offset_mm,
    )


def _sigma(left: FloatArray, jacobian: FloatArray, places: int) -> FloatArray:
    """Return standard uncertainties from the remainder, which hangs together along the cut and over the band.

    Sums over stretches of the cut stand for independent pieces (cluster-robust covariance).
    """
    count = jacobian.shape[1]
    normal = np.linalg.inv(jacobian.T @ jacobian)
    pieces = (jacobian * left[:, None]).reshape(2, places, -1, count).sum(axis=(0, 2))
    stretches = np.array([part.sum(axis=0) for part in np.array_split(pieces, STRETCHES)])
    robust = normal @ (stretches.T @ stretches) @ normal * STRETCHES / (STRETCHES - 1.0)
    plain = normal * float(left @ left) / max(1, left.size - count)
    return np.asarray(np.sqrt(np.maximum(np.diag(robust), np.diag(plain))))


def _echoes(
    jacobian: FloatArray, places: FloatArray, phase: ComplexArray, *, order: int, amplitude: float
) -> FloatArray:
    """Return standard uncertainties from the declared echoes: both sides hear other ones, and a smooth one looks like a turn.

    An echo is what the device radiates elsewhere, so it varies along the cut as fast as the device's waves can, and no faster; over the
    band it keeps its phase against the direct wave. The remainder does not show the part that the two unknowns have taken up.

    phase
        (frequency,) of the direct wave.
    """
    random = np.random.default_rng(ECHO_SEED)
    degrees = np.arange(-order, order + 1)
    shape = (ECHO_DRAWS, 2, degrees.size)
    drawn = (random.normal(size=shape) + 1j * random.normal(size=shape)) * amplitude / np.sqrt(2.0 * degrees.size)
    field = drawn @ np.exp(1j * degrees[:, None] * places)
    apart = ((field[:, 0] - field[:, 1])[:, :, None] * phase).reshape(ECHO_DRAWS, -1)
    left = np.concatenate([apart.real, apart.imag], axis=1)
    moved = left @ jacobian @ np.linalg.inv(jacobian.T @ jacobian)
    return np.asarray(np.sqrt(np.mean(moved**2, axis=0)))


def _sides(record: xr.Dataset, chamber: Chamber) -> tuple[FloatArray, ComplexArray]:
    """Return (theta in radians rising, (side, theta, frequency)) with both sides at the same directions."""
    scan = of_role(record, Role.SCAN)
    names = [str(name) for name in record["axis"].values]
    shown = scan["commanded_deg"].values
    table = chamber.axis_table
    theta = table["azimuth"].map.angle_deg(shown[:, names.index("azimuth")])
    roll = table["roll"].map.angle_deg(shown[:, names.index("roll")])
    flipped = np.abs(np.mod(roll, 360.0) - 180.0) < 1.0
    sides = []
    for rows, sign in ((np.flatnonzero(~flipped), 1.0), (np.flatnonzero(flipped), -1.0)):
        order = rows[np.argsort(sign * theta[rows])]
        sides.append((sign * theta[order], scan["trace"].values[order][:, :, 0]))
    if sides[0][0].shape != sides[1][0].shape or not np.allclose(sides[0][0], sides[1][0], atol=1e-3):
        raise ValueError(
            f"record: {sides[0][0].size} and {sides[1][0].size} directions on the two sides, must be the same"
        )
    return np.deg2rad(sides[0][0]), np.stack([sides[0][1], sides[1][1]])
