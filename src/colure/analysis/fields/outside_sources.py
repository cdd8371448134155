"""Sources outside the device's sphere that turn with it: found from the waves the device cannot make, and taken out.

Degrees above those of the device's sphere belong to other sources. Cutting them off leaves the lower part of
these sources in the result, where it is as large as before in the direction of each source. So the sources are
located by focusing, a few waves about their centre are fitted to the high degrees, and their low degrees are
subtracted with them.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from scipy.optimize import minimize

from colure.geometry.conventions import ComplexArray, FloatArray, mode_count, mode_degrees, power_db
from colure.geometry.directions import unit_vector
from colure.geometry.polarization import to_ludwig_1
from colure.geometry.sphere import gauss_legendre
from colure.waves.expansion import Expansion
from colure.waves.modes import resized
from colure.waves.transform import synthesis

#: Most sources looked for, and the step of the first search in wavelengths.
MOST_SOURCES = 2
SEARCH_STEP = 0.5
#: Highest order of the waves about a source, and power over the noise's that is worth a search.
HIGHEST_OWN = 9
WORTH = 4.0
#: Power over the whole that is not worth one either: the device's own waves beyond its sphere, to four digits.
NEGLIGIBLE = 1e-7
#: Residual power must fall by this factor for one more degree about a source.
FALLS = 0.7
#: The fit's own spread leaves out degrees that its residual did not ask for; counted in simulated echoes.
SPREAD = 2.0


@dataclass(frozen=True)
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
    """

    expansion: Expansion
    errors: ComplexArray
    outside: float
    left: float
    places: list[FloatArray]


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
        place = _located(high, kept, expansion.order, k)
        waves, own = _fitted(high, place, kept, expansion.order, k, noise)
        places.append(place)
        low = low - waves.low @ own
        high = (high.ravel() - waves.high @ own).reshape(high.shape)
        raw = random.normal(size=(2, waves.spread.shape[1], draws)) * np.sqrt(0.5)
        errors += np.moveaxis(waves.low @ (waves.spread @ (raw[0] + 1j * raw[1])), -1, 0)
    total = float(whole)
    left = float(np.sum(np.abs(high) ** 2))
    return Cleaned(Expansion(np.asarray(low), expansion.k), errors, before / total, left / total, places)


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
    points = np.stack(np.meshgrid(axis, axis, axis, indexing="ij"), axis=-1).reshape(-1, 3)
    distance = np.linalg.norm(points, axis=1)
    points = points[(distance <= reach + step) & (distance >= 0.7 * kept / k)]
    sharp = np.concatenate([focus(some) for some in np.array_split(points, 1 + len(points) // 500)])
    best = points[int(np.argmax(sharp))]
    top = float(sharp.max())
    found = minimize(
        lambda at: -float(focus(at[None])[0]) / top, best, method="Nelder-Mead",
        options={"initial_simplex": best + step * np.concatenate([np.zeros((1, 3)), 0.4 * np.eye(3)]), "maxiter": 120},
    )  # fmt: skip
    return np.asarray(found.x)


@dataclass(frozen=True)
class _Waves:
    """Waves about a source as low degrees (2, n, own) and high ones (rows, own), and the spread of their fit."""

    low: ComplexArray
    high: ComplexArray
    spread: ComplexArray


def _fitted(
    high: ComplexArray, place: FloatArray, kept: int, order: int, k: float, noise: float
) -> tuple[_Waves, ComplexArray]:
    """Fit waves about a place to the high degrees, of as many own degrees as lower the residual."""
    target, top = high.ravel(), min(HIGHEST_OWN, kept)
    count = 2 * mode_count(top)
    # By rising degree, so that one factorization holds the residual of every own order.
    degree = np.tile(mode_degrees(top), 2)
    units = np.eye(count, dtype=complex)[np.argsort(degree, kind="stable")].reshape(count, 2, -1)
    moved = Expansion(units, np.full(count, k)).translated(place, order=order).coefficients
    rows = moved[:, :, mode_count(kept) :].reshape(count, -1).T
    rotation, _ = np.linalg.qr(rows)
    shown = np.abs(rotation.conj().T @ target) ** 2
    residual = float(np.sum(np.abs(target) ** 2)) - np.cumsum(shown)[[2 * mode_count(n) - 1 for n in range(1, top + 1)]]
    own = 1
    while own < top and residual[own] < FALLS * residual[own - 1] and residual[own - 1] > noise**2 * target.size:
        own += 1
    used = 2 * mode_count(own)
    rows, low = rows[:, :used], np.moveaxis(resized(moved[:used], kept), 0, -1)
    left, sizes, right = np.linalg.svd(rows, full_matrices=False)
    signal = max(float(np.sum(np.abs(target) ** 2)) / float(np.sum(sizes**2)), 1e-300)
    variance = max(float(residual[own - 1]) / target.size, noise**2, 1e-30 * signal)
    damping = variance / signal
    solution = right.conj().T @ (sizes / (sizes**2 + damping) * (left.conj().T @ target))
    # Posterior spread under a prior of the size that the high degrees show.
    spread = SPREAD * right.conj().T * np.sqrt(variance / (sizes**2 + damping))
    return _Waves(low, rows, np.asarray(spread, complex)), np.asarray(solution)


def outside_words(cleaned: Cleaned, radius: float) -> str:
    """Say how much power lies outside the device's sphere and what was removed."""
    outside, left = (float(power_db(max(one, 1e-40))) for one in (cleaned.outside, cleaned.left))
    words = f"  waves of sources outside {radius:g} m hold {outside:.1f} dB of the power and were removed"
    if not cleaned.places:
        return f"{words}; none was located, so their lower waves stay"
    where = "; ".join("({:.3f}, {:.3f}, {:.3f}) m".format(*place) for place in cleaned.places)
    return f"{words}; located at {where}, their lower waves subtracted, {left:.1f} dB of the power unexplained"
