"""One frequency's samples to the device's waves: grids by the fast path, the rest by least squares."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from colure.analysis.fields.errors import (
    GRID_DRAWS,
    Declared,
    ErrorDraws,
    displaced,
)
from colure.analysis.fields.result import folded, ratio_db
from colure.geometry.conventions import (
    ComplexArray,
    FloatArray,
    mode_degrees,
    order_of_count,
    order_within,
    wavenumber,
)
from colure.geometry.sphere import gauss_legendre
from colure.model.fields import FieldGrid, FieldSamples, recognize_grid
from colure.values import holds_arrays
from colure.waves.cells import Cells
from colure.waves.least_squares import DRAWS, LeastSquaresFit, tail_of
from colure.waves.modes import resized
from colure.waves.radial import outgoing
from colure.waves.scattered_fit import Samples, fit_scattered
from colure.waves.transform import analysis, fold_double_sided, highest_order

if TYPE_CHECKING:
    from collections.abc import Callable


#: Order left beyond k r for sources close to the measurement sphere.
ORDER_MARGIN = 10


KEEP_DIGITS = 4.0
#: Amplitude of a mode, relative to the largest, that double precision leaves.
ROUNDING = 1e-14
#: Standard deviations of a degree's noise power that are no chance.
CHANCE = 5.0
#: Degrees above the signal that tell the noise.
FLOOR_DEGREES = 3
#: Noise of a sample that a text of fifteen digits leaves, over the largest sample.
LEAST_NOISE = 1e-15


@dataclass(frozen=True)
@holds_arrays
class WholeSphere:
    """A recognized whole-sphere grid: ring layout and the field on it, phi over a full turn."""

    layout: str
    field: ComplexArray
    phi_start: float

    @property
    def highest_order(self) -> int:
        """The highest order that the grid carries."""
        rings, columns = self.field.shape[-2:]
        return highest_order(self.layout, rings=rings, phi_count=columns)

    @property
    def theta(self) -> FloatArray:
        """Polar angles of the rings (ring,), radians."""
        rings = self.field.shape[-2]
        if self.layout == "gauss-legendre":
            return np.asarray(gauss_legendre(rings=rings, phi_count=1).theta)
        if self.layout == "with-poles":
            return np.linspace(0.0, np.pi, rings)
        return np.asarray((np.arange(rings) + 0.5) * np.pi / rings)


@dataclass(frozen=True)
@holds_arrays
class ExpandedField:
    """One frequency's expansion, how it came about in plain words, and its possible errors.

    noise
        Rms noise of one component of one sample over the largest sample, as the data show it.
    errors
        What the coefficients may be wrong by.
    """

    coefficients: ComplexArray
    order: int
    words: str
    fit: LeastSquaresFit | None
    noise: float
    errors: ErrorDraws


def order_cap(k: float, radius_m: float) -> int:
    """Return the highest order that sources inside a sphere of `radius_m` can need."""
    kr = k * radius_m
    return int(np.ceil(order_within(kr, digits=KEEP_DIGITS, least=1.0))) + ORDER_MARGIN


def whole_sphere(grid: FieldGrid) -> WholeSphere | None:
    """Return the grid as rings from pole to pole, or None if it is not a whole sphere."""
    theta, phi, field = grid.theta, grid.phi, grid.field
    step = float(phi[1] - phi[0])
    full_turn = np.isclose(step * phi.size, 2.0 * np.pi, atol=1e-6)
    half_turn = np.isclose(step * phi.size, np.pi, atol=1e-6)
    if half_turn and np.isclose(theta[-1], np.pi) and np.isclose(phi[0], 0.0, atol=1e-9):
        if np.isclose(theta[0], -np.pi):  # both readings of the back pole: keep one
            theta, field = theta[1:], field[:, 1:]
        even = np.allclose(np.diff(theta), theta[1] - theta[0], atol=1e-7)
        if even and theta.size % 2 == 0 and np.isclose(theta[0] - (theta[1] - theta[0]), -np.pi, atol=1e-6):
            return WholeSphere("with-poles", fold_double_sided(field, theta), 0.0)
    if not full_turn:
        return None
    rings = theta.size
    expected = {
        "with-poles": np.linspace(0.0, np.pi, rings),
        "without-poles": (np.arange(rings) + 0.5) * np.pi / rings,
        "gauss-legendre": gauss_legendre(rings=rings, phi_count=1).theta,
    }
    for layout, nodes in expected.items():
        if np.allclose(theta, nodes, atol=2e-7):
            return WholeSphere(layout, field, float(phi[0]))
    return None


def expand(
    samples: FieldSamples, *, order: int | None = None, cap: int | None = None, declared: Declared | None = None
) -> ExpandedField:
    """Return the far-field expansion of one frequency's samples about the coordinate origin.

    Parameters
    ----------
    order
        Fixed order; by default as high as the sampling and the radius allow, cut where the
        mode spectrum has sunk into its own noise floor.
    cap
        Highest order to consider, where the device's size is known.
    declared
        Noise and positions, where the user knows them.

    Raises
    ------
    ValueError
        If the samples cannot carry the order asked for.
    """
    declared = declared or Declared()
    k = float(wavenumber(samples.frequency_hz))
    limit = 10_000 if samples.radius_m is None else order_cap(k, float(np.min(samples.radius_m)))
    grid = recognize_grid(samples)
    whole = None if grid is None else whole_sphere(grid)
    # A whole grid shows what lies outside the device's sphere; it is located and removed afterwards.
    limit = min(limit, 10_000 if cap is None or whole is not None else cap)
    if whole is not None:
        rings, columns = whole.field.shape[-2:]
        top = highest_order(whole.layout, rings=rings, phi_count=columns)
        if order is not None and order > top:
            raise ValueError(f"order: {order}, must be at most {top} (degree) on {rings} rings x {columns} columns")
        radius = None if samples.radius_m is None else float(np.mean(samples.radius_m))
        top = top if order is None else order
        return _from_rings(
            whole, top, limit, radius, k, fixed=order is not None, outside=cap is not None, declared=declared
        )
    chosen = order if order is not None else max(3, min(limit, sampled_order(samples)))
    theta, phi, field = folded(samples)
    bundle = Samples.of(theta=theta, phi=phi, field=field, radius=samples.radius_m, weight=samples.weight)
    fit = fit_scattered(bundle, chosen, k)
    order_used = int(np.count_nonzero(np.isfinite(fit.damping))) if order is None else chosen
    words = (
        f"least squares on {bundle.count} scattered samples, order {order_used}, residual {ratio_db(fit.residual):.1f} dB, "
        + ("solved directly" if fit.iterations == 0 else f"{fit.iterations} iterations")
        + ("" if fit.converged else " (stopped at the limit)")
    )
    return ExpandedField(fit.coefficients, chosen, words, fit, fit.noise, fit_errors(fit, bundle, k, declared))


def fit_errors(
    fit: LeastSquaresFit, samples: Samples, k: float, declared: Declared, *, draws_wanted: int = DRAWS
) -> ErrorDraws:
    """Return the errors of a least-squares fit; declared noise and places make them larger, never smaller.

    Independent errors of place act like noise: they are in the residual already, so only what the user
    declares beyond the residual is added.
    """
    draws = fit.error_draws(draws_wanted)
    noise = max(fit.noise, 1e-16)
    stated = 0.0 if declared.noise_db is None else 10.0 ** (declared.noise_db / 20.0)
    noise_draws = draws * max(1.0, stated / noise)
    if declared.position_m == 0.0 and declared.angle == 0.0:
        return ErrorDraws(noise_draws, None, fit.truncation())
    order = int(np.sqrt(fit.coefficients.shape[-1] + 1)) - 1
    near, size = fit.coefficients, float(np.max(np.abs(samples.field)))
    if samples.radius is not None:
        middle = float(np.median(samples.radius))
        functions = outgoing(order, np.array(k * middle)).tangential()[:, mode_degrees(order) - 1]
        near = np.where(near != 0.0, near * np.where(np.isfinite(functions), functions, 0.0), 0.0)
        size *= middle
    change = displaced(
        near, samples.theta, samples.phi, k=k, radius=samples.radius, declared=declared, random=np.random.default_rng(5)
    )
    level = float(np.sqrt(np.mean(np.abs(change) ** 2))) / size
    return ErrorDraws(noise_draws, np.roll(draws, 1, axis=0) * (level / noise), fit.truncation())


def _from_rings(
    whole: WholeSphere,
    top: int,
    limit: int,
    radius: float | None,
    k: float,
    *,
    fixed: bool,
    outside: bool,
    declared: Declared,
) -> ExpandedField:
    """Analyse rings, cut the spectrum's noise floor, take the radial functions out.

    outside
        True where what lies outside the device is looked for: it spreads over many degrees, each hardly above the noise.
    """
    field = whole.field if radius is None else whole.field * radius * np.exp(1j * k * radius)
    highest = whole.highest_order
    measured = analysis(field, highest, layout=whole.layout, phi_start=whole.phi_start)
    order = top if fixed else min(limit, signal_order(resized(measured, top), deviations=CHANCE if outside else None))
    largest = float(np.max(np.abs(field)))
    noise = max(floor_noise(measured, order, field.shape[-2] * field.shape[-1]) / largest, LEAST_NOISE)
    words = (
        f"whole sphere, {whole.field.shape[-2]} rings x {whole.field.shape[-1]} columns {whole.layout}, order {order}"
    )
    inverse = np.ones((2, mode_degrees(order).size), complex)
    if radius is not None:
        with np.errstate(over="ignore", invalid="ignore", divide="ignore"):
            functions = outgoing(order, np.array(k * radius)).tangential()[:, mode_degrees(order) - 1]
            inverse = np.where(np.isfinite(functions), 1.0 / functions, 0.0)
    near = resized(measured, order)
    errors = grid_errors(
        whole, near, lambda waves: waves * inverse, radius=radius, k=k, noise=noise * largest, declared=declared
    )
    return ExpandedField(near * inverse, order, words, None, noise, errors)


def floor_noise(measured: ComplexArray, order: int, samples: int) -> float:
    """Return the noise of one sample from the degrees above the signal.

    Where fewer than three degrees lie above it, the last three count: what they hold is the most that the noise can be. Each
    degree's mean counts, as a symmetric antenna leaves most single coefficients empty of what rounded its samples.
    """
    top = order_of_count(measured.shape[-1])
    first = max(1, min(order, top - FLOOR_DEGREES) + 1)
    per_mode = np.mean(np.abs(measured) ** 2, axis=-2)
    degrees = np.arange(first, top + 1)
    power = np.add.reduceat(per_mode, degrees**2 - 1) / (2.0 * degrees + 1.0)
    # White noise of variance s^2 per sample puts about s^2 4 pi / samples into every coefficient.
    return float(np.sqrt(np.median(power) * samples / (4.0 * np.pi)))


def grid_errors(
    whole: WholeSphere,
    near: ComplexArray,
    corrected: Callable[[ComplexArray], ComplexArray],
    *,
    radius: float | None,
    k: float,
    noise: float,
    declared: Declared,
) -> ErrorDraws:
    """Return the errors of a whole-sphere grid: noise and places drawn per sample and analysed alike.

    near
        (2, n(n+2)) what was measured; `corrected` makes far-field coefficients of such.
    noise
        Rms of one component of one sample, in the unit of the field with exp(-jkr)/r removed.
    """
    order, shape = order_of_count(near.shape[-1]), whole.field.shape
    largest = float(np.max(np.abs(whole.field))) * (1.0 if radius is None else radius)
    if declared.noise_db is not None:
        noise = 10.0 ** (declared.noise_db / 20.0) * largest
    random = np.random.default_rng(5)

    def analysed(fields: ComplexArray) -> ComplexArray:
        return corrected(analysis(fields, order, layout=whole.layout, phi_start=whole.phi_start))

    raw = random.normal(size=(2, GRID_DRAWS, *shape)) * np.sqrt(0.5)
    noise_draws = analysed(noise * (raw[0] + 1j * raw[1]))
    spectrum = np.add.reduceat(np.sum(np.abs(near) ** 2, axis=0), np.arange(1, order + 1) ** 2 - 1)
    floor = 2.0 * (2.0 * order + 1.0) * noise**2 * 4.0 * np.pi / (shape[-1] * shape[-2])
    last = np.zeros_like(near)
    last[:, -1] = 1.0  # what a wave of the last degree becomes in the far field
    grown = float(np.sqrt(np.sum(np.abs(corrected(last)) ** 2) / 2.0))
    truncation = float(np.sqrt(tail_of(spectrum, floor) / (4.0 * np.pi)) * grown)
    if declared.position_m == 0.0 and declared.angle == 0.0:
        return ErrorDraws(noise_draws, None, truncation)
    theta, phi = _places(whole)
    radii = None if radius is None else np.full(theta.size, radius)
    changes = [
        displaced(near, theta, phi, k=k, radius=radii, declared=declared, random=random).reshape(shape)
        for _ in range(GRID_DRAWS)
    ]
    return ErrorDraws(noise_draws, analysed(np.stack(changes)), truncation)


def _places(whole: WholeSphere) -> tuple[FloatArray, FloatArray]:
    """Return theta and phi of every sample of a recognized grid."""
    columns = whole.field.shape[-1]
    phi = whole.phi_start + np.arange(columns) * 2.0 * np.pi / columns
    t, p = np.meshgrid(whole.theta, phi, indexing="ij")
    return t.ravel(), p.ravel()


def signal_order(measured: ComplexArray, *, deviations: float | None = None) -> int:
    """Return the degree above which a spectrum holds nothing but an even noise floor.

    White noise has the same power in every coefficient. The floor is the median over the
    upper fifth of the degrees; the last degree that stands 6 dB (or `deviations` standard deviations of noise) out of it, and two more, stay.
    Where the spectrum still falls at the top there is no floor and everything stays, but for what is rounding.
    """
    per_mode = np.sum(np.abs(measured) ** 2, axis=-2)
    top = int(np.sqrt(per_mode.size + 1)) - 1
    starts = np.arange(1, top + 1) ** 2 - 1
    spectrum = np.add.reduceat(per_mode, starts) / (2.0 * (2.0 * np.arange(1, top + 1) + 1.0))
    tail = spectrum[-max(4, top // 5) :]
    floor = float(np.median(tail))
    if top < 12 or floor <= 0.0:
        return top
    # Rounding is not even: a field without noise would keep degrees that hold nothing else.
    above = 4.0 if deviations is None else 1.0 + deviations / np.sqrt(2.0 * (2.0 * np.arange(1, top + 1) + 1.0))
    out = np.flatnonzero(spectrum > above * max(floor, ROUNDING**2 * float(spectrum.max())))
    return min(top, int(out[-1]) + 3) if out.size else top


def sampled_order(samples: FieldSamples) -> int:
    """Return the order that scattered samples carry: by the size of their cells and their number."""
    theta, phi, _ = folded(samples)
    area = Cells.of(theta, phi).solid_angles(1)
    spacing = float(np.sqrt(np.quantile(area, 0.9)))
    covered = min(1.0, float(area.sum()) / (4.0 * np.pi))
    by_count = np.sqrt(samples.theta.size / (1.2 * max(covered, 0.02)))
    return int(min(0.98 * np.pi / spacing, by_count))
