"""One source outside the device's sphere: located in the high degrees, and waves about it fitted to them.

How strong each degree about a source is follows from the high degrees by the evidence (D. J. C. MacKay, Neural Computation
4:415-447, 1992), and with it what its low degrees may be wrong by: what a source sends past or through the device's sphere is in
no high degree, and its own smoothness alone tells it.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from scipy.optimize import minimize

from colure.analysis.fields.image_in_wall import HighDegrees, to_z
from colure.geometry.conventions import BoolArray, ComplexArray, FloatArray, IntArray, mode_count, order_within
from colure.geometry.directions import unit_vector
from colure.values import holds_arrays
from colure.waves.expansion import Expansion
from colure.waves.source_waves import OrderBlock, focused, waves_from_z

#: Step of the first search in wavelengths.
SEARCH_STEP = 0.25
#: Highest degree of the waves about a source: so many more than the device has, at least and at most so many.
OWN_MARGIN, OWN_LEAST, OWN_MOST = 4, 9, 48
#: Degrees of waves by which a place is refined, and evaluations of that.
REFINED_BY, REFINEMENTS = 2, 60
#: Rounds of the search for the sizes of the degrees; where a degree is known by less than this share it falls on.
ROUNDS, KNOWN = 40, 0.15
#: The fit's own spread leaves out where the place is wrong; counted in simulated echoes.
SPREAD = 1.5


@dataclass(frozen=True)
@holds_arrays
class FittedSource:
    """A located source: its waves about the origin, (2, N(N+2)), and (draw, 2, N(N+2)) what they may be wrong by."""

    place: FloatArray
    waves: ComplexArray
    errors: ComplexArray


def located(high: HighDegrees) -> FloatArray:
    """Return the place outside the device's sphere at which the high degrees focus best."""
    k, order = high.k, high.order
    step = SEARCH_STEP * 2.0 * np.pi / k
    theta, columns = np.linspace(0.0, np.pi, order + 3), 2 * order + 4
    best, place = 0.0, np.zeros(3)
    waves = high.seen()
    for radius in np.arange((high.kept + 1.0) / k, order / k + step, step):
        sharp = focused(waves, k * radius, theta, columns)
        ring, column = np.unravel_index(int(np.argmax(sharp)), sharp.shape)
        if sharp[ring, column] > best:
            best = float(sharp[ring, column])
            place = radius * np.asarray(unit_vector(theta=theta[ring], phi=2.0 * np.pi * column / columns))
    return place


def _on_axis(high: HighDegrees, place: FloatArray) -> tuple[ComplexArray, FloatArray, float]:
    """Return the waves in a frame whose z axis goes through a place, flat; that rotation, and the place's distance times k."""
    rotation = to_z(place)
    turned = Expansion(high.waves, np.array(high.k)).rotated(rotation).coefficients
    return turned.ravel(), rotation, high.k * float(np.linalg.norm(place))


def refined(high: HighDegrees, place: FloatArray) -> FloatArray:
    """Return the place near by about which dipoles and quadrupoles explain most of the high degrees."""
    wave, whole = 2.0 * np.pi / high.k, high.high()

    def unexplained(at: FloatArray) -> float:
        target, _, distance = _on_axis(high, at)
        explained = 0.0
        for block in waves_from_z(distance, REFINED_BY, high.order):
            use = block.degree > high.kept
            weight = 1.0 / high.noise[block.degree[use] - 1]
            rotation, _ = np.linalg.qr(block.matrix[use] * weight[:, None])
            explained += float(np.sum(np.abs(rotation.conj().T @ (target[block.rows[use]] * weight)) ** 2))
        return 1.0 - explained / whole

    simplex = place + 0.1 * wave * np.concatenate([np.zeros((1, 3)), np.eye(3)])
    options = {"initial_simplex": simplex, "maxfev": REFINEMENTS, "xatol": 0.01 * wave, "fatol": 1e-6}
    return np.asarray(minimize(unexplained, place, method="Nelder-Mead", options=options).x)


@dataclass(frozen=True)
@holds_arrays
class _OrderEquations:
    """Normal equations of one azimuthal order with the noise as unit, and the degrees of their unknowns."""

    square: ComplexArray
    right: ComplexArray
    own: IntArray


def fitted(high: HighDegrees, place: FloatArray, draws: int, random: np.random.Generator) -> FittedSource:
    """Fit waves about a place to the high degrees, each own degree as strong as these make it."""
    target, rotation, distance = _on_axis(high, place)
    room = order_within(max(distance - high.kept, 1.0), digits=2.0, least=1.0)
    top = int(min(max(OWN_LEAST, min(room, high.kept + OWN_MARGIN)), OWN_MOST))
    blocks = waves_from_z(distance, top, high.order)
    squares = [_squares(high, one, target) for one in blocks]
    solved, halves = _by_evidence(high, squares)
    waves = np.zeros(target.size, complex)
    drawn = np.zeros((draws, target.size), complex)
    for block, own, half in zip(blocks, solved, halves, strict=True):
        waves[block.rows] += block.matrix @ own
        raw = random.normal(size=(2, half.shape[-1], draws)) * np.sqrt(0.5)
        drawn[:, block.rows] += (block.matrix @ (SPREAD * half @ (raw[0] + 1j * raw[1]))).T
    k = np.array(high.k)
    back = Expansion(waves.reshape(2, -1), k).rotated(rotation.T).coefficients
    errors = Expansion(drawn.reshape(draws, 2, -1), np.broadcast_to(k, draws)).rotated(rotation.T).coefficients
    return FittedSource(place, back, errors)


def _squares(high: HighDegrees, block: OrderBlock, target: ComplexArray) -> _OrderEquations:
    use = block.degree > high.kept
    weight = 1.0 / high.noise[block.degree[use] - 1]
    rows, right = block.matrix[use] * weight[:, None], target[block.rows[use]] * weight
    return _OrderEquations(rows.conj().T @ rows, rows.conj().T @ right, block.own)


def _by_evidence(high: HighDegrees, squares: list[_OrderEquations]) -> tuple[list[ComplexArray], list[ComplexArray]]:
    """Return the own waves of every azimuthal order, and factors of their covariance."""
    top = max(int(one.own.max()) for one in squares)
    number = 2.0 * (2.0 * np.arange(1, top + 1) + 1.0)
    power, rows = high.high(), 2 * (mode_count(high.order) - mode_count(high.kept))
    trace = sum(float(np.trace(one.square).real) for one in squares)
    strength, sigma2 = power / trace * 0.7 ** np.arange(top), max(1.0, 1e-3 * power / rows)
    for turn in range(ROUNDS):
        known, size, left = np.zeros(top), np.zeros(top), power
        solved, inverses = [], []
        for one in squares:
            scale = np.sqrt(strength[one.own - 1])
            inverse = np.linalg.inv(one.square * scale[:, None] * scale / sigma2 + np.eye(scale.size))
            own = scale * (inverse @ (scale * one.right)) / sigma2
            known += np.bincount(one.own - 1, 1.0 - np.diag(inverse).real, top)
            size += np.bincount(one.own - 1, np.abs(own) ** 2, top)
            left += float(np.real(own.conj() @ (one.square @ own - 2.0 * one.right)))
            solved.append(own)
            inverses.append(scale[:, None] * inverse * scale)
        known = np.maximum(known, 1e-6 * number)
        following = np.maximum(_falling_on(size / known, known > KNOWN * number), 1e-30 * power / trace)
        noise2 = max(left / max(rows - float(known.sum()), 1.0), 1.0)
        if turn == ROUNDS - 1 or np.max(np.abs(np.log(following / strength))) < 0.05:
            break
        strength, sigma2 = following, noise2
    return solved, [_half(one) for one in inverses]


def _half(covariance: ComplexArray) -> ComplexArray:
    """Return a factor of a covariance that rounding may have left short of positive."""
    size, vectors = np.linalg.eigh(0.5 * (covariance + covariance.conj().T))
    return np.asarray(vectors * np.sqrt(np.maximum(size, 0.0)))


def _falling_on(strength: FloatArray, seen: BoolArray) -> FloatArray:
    """Let degrees beyond the last seen one fall on as the last ones do: what the data do not show may be there."""
    out = np.maximum(strength, max(1e-20 * float(strength.max()), 1e-300))
    last = int(np.flatnonzero(seen)[-1]) if seen.any() else 0
    for degree in range(last + 1, out.size):
        slope = float(np.clip(out[degree - 1] / out[degree - 2], 1e-3, 0.5)) if degree > 1 else 0.5
        out[degree] = max(min(out[degree], out[degree - 1]), out[degree - 1] * slope)
    return out
