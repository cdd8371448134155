"""Sources outside the device's sphere that turn with it: found from the waves the device cannot make, and taken out.

Degrees above those of the device's sphere belong to other sources. Cutting them off leaves the lower part of
these sources in the result, where it is as large as before in the direction of each source. So the sources are
located by focusing and by the fit of dipoles and quadrupoles, waves about their centre are fitted to the high degrees, and
their low degrees are subtracted with them. How strong each degree about a centre is follows from the high degrees by the
evidence (D. J. C. MacKay, Neural Computation 4:415-447, 1992), and with it what the subtraction may be wrong by.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from scipy.optimize import minimize

from colure.geometry.conventions import (
    BoolArray,
    ComplexArray,
    FloatArray,
    IntArray,
    mode_count,
    mode_degrees,
    power_db,
)
from colure.geometry.directions import unit_vector
from colure.geometry.polarization import to_ludwig_1
from colure.geometry.sphere import gauss_legendre
from colure.values import holds_arrays
from colure.waves.expansion import Expansion
from colure.waves.modes import resized
from colure.waves.transform import synthesis

#: Most sources looked for, and the step of the first search in wavelengths.
MOST_SOURCES = 2
SEARCH_STEP = 0.5
#: Highest order of the waves about a source, and power over the noise's that is worth a search.
HIGHEST_OWN = 9
WORTH = 1.3
#: Power over the whole that is not worth one either: the device's own waves beyond its sphere, to four digits.
NEGLIGIBLE = 1e-7
#: Degrees of waves by which a place is refined, and evaluations of that.
REFINED_BY, REFINEMENTS = 2, 40
#: Rounds of the search for the sizes of the degrees; where a degree is known by less than this share it falls on.
ROUNDS, KNOWN = 40, 0.15
#: The fit's own spread leaves out where the place is wrong; counted in simulated echoes.
SPREAD = 1.5
#: More than this many times the noise's power left over is not noise.
EXPLAINED = 2.0
#: A source that was not located points its waves somewhere: its field there against its rms over all directions.
POINTED = 2.0


@dataclass(frozen=True)
@holds_arrays
class Cleaned:
    """The device's waves without what lies outside its sphere.

    expansion
        Degrees of the device's sphere only.
    errors
        (draw, 2, n(n+2)) what the subtraction may be wrong by.
    outside
        Power of the degrees above the device's over the whole power.
    left
        Power of these degrees that the located sources do not explain, over the whole power.
    places
        Centres of the located sources, metres.
    explained
        False where what is left stands out of the noise: there are more or larger sources than the fit has waves for, and `errors`
        are too small.
    """

    expansion: Expansion
    errors: ComplexArray
    outside: float
    left: float
    places: list[FloatArray]
    explained: bool = True


def without_outside(expansion: Expansion, kept: int, noise: float, *, draws: int, seed: int = 3) -> Cleaned:
    """Return the expansion (one frequency) without sources outside the sphere whose waves end at degree `kept`.

    Parameters
    ----------
    noise
        Rms noise of one coefficient.
    draws
        Number of error draws wanted.
    """
    k, whole = float(expansion.k), expansion.power()
    start, low = mode_count(kept), expansion.coefficients[:, : mode_count(kept)]
    high = expansion.coefficients[:, start:]
    before = float(np.sum(np.abs(high) ** 2))
    places: list[FloatArray] = []
    errors = np.zeros((draws, *low.shape), complex)
    expected = noise**2 * high.size
    random = np.random.default_rng(seed)
    for _ in range(MOST_SOURCES):
        power = float(np.sum(np.abs(high) ** 2))
        if power < max(WORTH * expected, NEGLIGIBLE * float(whole)) or expansion.order < kept + 3:
            break
        place = _refined(high, _located(high, kept, expansion.order, k), kept, expansion.order, k)
        waves, own = _fitted(high, place, kept, expansion.order, k, noise)
        places.append(place)
        low = low - waves.low @ own
        high = (high.ravel() - waves.high @ own).reshape(high.shape)
        raw = random.normal(size=(2, waves.spread.shape[1], draws)) * np.sqrt(0.5)
        errors += np.moveaxis(waves.low @ (waves.spread @ (raw[0] + 1j * raw[1])), -1, 0)
    total = float(whole)
    left = float(np.sum(np.abs(high) ** 2))
    # What was not located has low degrees too, about as strong as the high ones that stand out of the noise.
    hidden = POINTED * np.sqrt(max(left - expected, 0.0) / low.size)
    raw = random.normal(size=(2, *errors.shape)) * np.sqrt(0.5)
    errors += hidden * (raw[0] + 1j * raw[1])
    return Cleaned(
        Expansion(np.asarray(low), expansion.k),
        errors,
        before / total,
        left / total,
        places,
        left <= EXPLAINED * expected,
    )


def _located(high: ComplexArray, kept: int, order: int, k: float) -> FloatArray:
    """Return the place outside the device's sphere at which the high degrees focus best."""
    coefficients = np.zeros((2, mode_count(order)), complex)
    coefficients[:, mode_count(kept) :] = high
    grid = gauss_legendre(rings=order + 2, phi_count=2 * order + 2)
    field = synthesis(coefficients, grid.theta, 2 * order + 2)
    t, p = np.meshgrid(grid.theta, np.arange(2 * order + 2) * np.pi / (order + 1), indexing="ij")
    weights = np.polynomial.legendre.leggauss(order + 2)[1][:, None]
    vector = (to_ludwig_1(field[0], field[1], theta=t, phi=p) * weights[..., None]).reshape(-1, 3)
    towards = unit_vector(theta=t, phi=p).reshape(-1, 3)

    def focus(points: FloatArray) -> FloatArray:
        return np.asarray(np.sum(np.abs(np.exp(-1j * k * points @ towards.T) @ vector) ** 2, axis=-1))

    step = SEARCH_STEP * 2.0 * np.pi / k
    reach = order / k
    axis = np.arange(-np.ceil(reach / step), np.ceil(reach / step) + 1) * step
    points = np.stack(np.meshgrid(axis, axis, axis, indexing="ij"), axis=-1)
    # On a lattice the factors of the three axes multiply: no exponential for every place and direction.
    x, y, z = np.exp(-1j * k * axis[:, None] * towards.T[:, None])
    flat = (x[:, None] * y).reshape(-1, len(towards))
    sharp = np.stack([np.sum(np.abs((flat * one) @ vector) ** 2, axis=-1) for one in z], axis=-1).reshape(
        points.shape[:3]
    )
    distance = np.linalg.norm(points, axis=-1)
    sharp = np.where((distance <= reach + step) & (distance >= 0.7 * kept / k), sharp, 0.0)
    best = points[np.unravel_index(int(np.argmax(sharp)), sharp.shape)]
    top = float(sharp.max())
    found = minimize(
        lambda at: -float(focus(at[None])[0]) / top, best, method="Nelder-Mead",
        options={"initial_simplex": best + step * np.concatenate([np.zeros((1, 3)), 0.4 * np.eye(3)]), "maxiter": 120},
    )  # fmt: skip
    return np.asarray(found.x)


@dataclass(frozen=True)
class _SourceWaves:
    """Waves about a source as low degrees (2, n, own) and high ones (rows, own), and the spread of their fit."""

    low: ComplexArray
    high: ComplexArray
    spread: ComplexArray


def _about(place: FloatArray, kept: int, order: int, k: float, top: int) -> tuple[ComplexArray, ComplexArray, IntArray]:
    """Return waves up to degree `top` about a place: (rows, own) high degrees, (2, n, own) low ones, and their own degrees."""
    count, degree = 2 * mode_count(top), np.tile(mode_degrees(top), 2)
    rising = np.argsort(degree, kind="stable")
    units = np.eye(count, dtype=complex)[rising].reshape(count, 2, -1)
    moved = Expansion(units, np.full(count, k)).translated(place, order=order).coefficients
    rows = moved[:, :, mode_count(kept) :].reshape(count, -1).T
    return rows, np.moveaxis(resized(moved, kept), 0, -1), degree[rising]


def _refined(high: ComplexArray, place: FloatArray, kept: int, order: int, k: float) -> FloatArray:
    """Return the place near by about which dipoles and quadrupoles explain most of the high degrees."""
    target, wave = high.ravel(), 2.0 * np.pi / k
    whole = float(np.sum(np.abs(target) ** 2))

    def unexplained(at: FloatArray) -> float:
        rotation, _ = np.linalg.qr(_about(at, kept, order, k, REFINED_BY)[0])
        return 1.0 - float(np.sum(np.abs(rotation.conj().T @ target) ** 2)) / whole

    simplex = place + 0.1 * wave * np.concatenate([np.zeros((1, 3)), np.eye(3)])
    options = {"initial_simplex": simplex, "maxfev": REFINEMENTS, "xatol": 0.01 * wave, "fatol": 1e-6}
    return np.asarray(minimize(unexplained, place, method="Nelder-Mead", options=options).x)


def _fitted(
    high: ComplexArray, place: FloatArray, kept: int, order: int, k: float, noise: float
) -> tuple[_SourceWaves, ComplexArray]:
    """Fit waves about a place to the high degrees, each own degree as strong as these make it."""
    target = high.ravel()
    rows, low, degree = _about(place, kept, order, k, min(HIGHEST_OWN, kept))
    square, right = rows.conj().T @ rows, rows.conj().T @ target
    at, number = degree - 1, np.bincount(degree)[1:].astype(float)
    power = float(np.sum(np.abs(target) ** 2))
    least = 1e-30 * power / target.size
    sigma2, strength = max(noise**2, least), power / float(np.trace(square).real) * 0.5 ** np.arange(number.size)
    for turn in range(ROUNDS):
        scale = np.sqrt(strength[at])
        inverse = np.linalg.inv(square * scale[:, None] * scale / sigma2 + np.eye(scale.size))
        solution = scale * (inverse @ (scale * right)) / sigma2
        known = np.maximum(np.bincount(at, 1.0 - np.diag(inverse).real), 1e-6 * number)
        following = _falling_on(np.bincount(at, np.abs(solution) ** 2) / known, known > KNOWN * number)
        left = float(np.sum(np.abs(target - rows @ solution) ** 2))
        noise2 = max(left / (target.size - float(known.sum())), noise**2, least)
        if turn == ROUNDS - 1 or np.max(np.abs(np.log(following / strength))) < 0.05:
            break
        strength, sigma2 = following, noise2
    spread = SPREAD * scale[:, None] * np.linalg.cholesky(inverse)
    return _SourceWaves(low, rows, np.asarray(spread, complex)), np.asarray(solution)


def _falling_on(strength: FloatArray, seen: BoolArray) -> FloatArray:
    """Let degrees beyond the last seen one fall on as the last ones do: what the data do not show may be there."""
    out = np.maximum(strength, 1e-30 * float(strength.max()))
    last = int(np.flatnonzero(seen)[-1]) if seen.any() else 0
    for degree in range(last + 1, out.size):
        slope = float(np.clip(out[degree - 1] / out[degree - 2], 1e-3, 0.5)) if degree > 1 else 0.5
        out[degree] = max(min(out[degree], out[degree - 1]), out[degree - 1] * slope)
    return out


def outside_words(cleaned: Cleaned, radius: float) -> str:
    """Say how much power lies outside the device's sphere and what was removed."""
    outside, left = (float(power_db(max(one, 1e-40))) for one in (cleaned.outside, cleaned.left))
    words = f"  waves of sources outside {radius:g} m hold {outside:.1f} dB of the power and were removed"
    if not cleaned.places:
        return f"{words}; none was located, so their lower waves stay"
    where = "; ".join("({:.3f}, {:.3f}, {:.3f}) m".format(*place) for place in cleaned.places)
    doubt = (
        ""
        if cleaned.explained
        else "; caution: that is more than noise, so the sources are larger than the fit knows: the stated error is too small. "
        "Declare the smallest `keep_radius_m` that holds the device"
    )
    return f"{words}; located at {where}, their lower waves subtracted, {left:.1f} dB of the power unexplained{doubt}"
