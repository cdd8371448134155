"""Near field to far field for data from anywhere: grids by the fast path, the rest by least squares."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray, mode_degrees, wavenumber
from colure.geometry.directions import fold
from colure.geometry.sphere import gauss_legendre
from colure.model.fields import FieldGrid, FieldSamples, recognize_grid, samples_of
from colure.model.files import with_step
from colure.model.pattern import build_pattern
from colure.waves.expansion import Expansion
from colure.waves.modes import resized
from colure.waves.radial import outgoing
from colure.waves.scattered_fit import Fit, Samples, fit_scattered, solid_angles, support_map
from colure.waves.transform import analysis, fold_double_sided, highest_order

if TYPE_CHECKING:
    import xarray as xr

#: Order left beyond k r for sources close to the measurement sphere.
ORDER_MARGIN = 10
KEEP_DIGITS = 4.0
SUPPORT_STEP_DEG = 5.0


@dataclass(frozen=True)
class WholeSphere:
    """A recognized whole-sphere grid: ring layout and the field on it, phi over a full turn."""

    layout: str
    field: ComplexArray
    phi_start: float


@dataclass(frozen=True)
class Transformed:
    """One frequency's expansion and how it came about, in plain words."""

    coefficients: ComplexArray
    order: int
    words: str
    fit: Fit | None


def order_cap(k: float, radius_m: float) -> int:
    """Return the highest order that sources inside a sphere of `radius_m` can need."""
    kr = k * radius_m
    return int(np.ceil(kr + 1.8 * KEEP_DIGITS ** (2 / 3) * max(kr, 1.0) ** (1 / 3))) + ORDER_MARGIN


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


def expand(samples: FieldSamples, *, order: int | None = None, cap: int | None = None) -> Transformed:
    """Return the far-field expansion of one frequency's samples about the coordinate origin.

    Parameters
    ----------
    order
        Fixed order; by default as high as the sampling and the radius allow, cut where the
        mode spectrum has sunk into its own noise floor.
    cap
        Highest order to consider, where the device's size is known.

    Raises
    ------
    ValueError
        If the samples cannot carry the order asked for.
    """
    k = float(wavenumber(samples.frequency_hz))
    limit = 10_000 if samples.radius_m is None else order_cap(k, float(np.min(samples.radius_m)))
    limit = min(limit, 10_000 if cap is None else cap)
    grid = recognize_grid(samples)
    whole = None if grid is None else whole_sphere(grid)
    if whole is not None:
        rings, columns = whole.field.shape[-2:]
        top = highest_order(whole.layout, rings, columns)
        if order is not None and order > top:
            raise ValueError(f"order: {order}, must be at most {top} (degree) on {rings} rings x {columns} columns")
        radius = None if samples.radius_m is None else float(np.mean(samples.radius_m))
        return _from_rings(whole, top if order is None else order, limit, radius, k, fixed=order is not None)
    chosen = order if order is not None else max(3, min(limit, sampled_order(samples)))
    theta, phi, field = _folded(samples)
    bundle = Samples.of(theta, phi, field, radius=samples.radius_m, weight=samples.weight)
    fit = fit_scattered(bundle, chosen, k)
    words = (
        f"least squares on {bundle.count} scattered samples, order {chosen}, residual {_db(fit.residual):.1f} dB, "
        f"{fit.iterations} iterations{'' if fit.converged else ' (stopped at the limit)'}"
    )
    return Transformed(fit.coefficients, chosen, words, fit)


def _from_rings(
    whole: WholeSphere, top: int, limit: int, radius: float | None, k: float, *, fixed: bool
) -> Transformed:
    """Analyse rings, cut the spectrum's noise floor, take the radial functions out."""
    field = whole.field if radius is None else whole.field * radius * np.exp(1j * k * radius)
    measured = analysis(field, top, layout=whole.layout, phi_start=whole.phi_start)
    order = top if fixed else min(limit, signal_order(measured))
    measured = resized(measured, order)
    if radius is not None:
        with np.errstate(over="ignore", invalid="ignore"):
            functions = outgoing(order, np.array(k * radius)).tangential()[:, mode_degrees(order) - 1]
            measured = np.where(np.isfinite(functions), measured / functions, 0.0)
    words = (
        f"whole sphere, {whole.field.shape[-2]} rings x {whole.field.shape[-1]} columns {whole.layout}, order {order}"
    )
    return Transformed(measured, order, words, None)


def signal_order(measured: ComplexArray) -> int:
    """Return the degree above which a spectrum holds nothing but an even noise floor.

    White noise has the same power in every coefficient. The floor is the median over the
    upper fifth of the degrees; the last degree that stands 6 dB out of it, and two more, stay.
    Where the spectrum still falls at the top there is no floor and everything stays.
    """
    per_mode = np.sum(np.abs(measured) ** 2, axis=-2)
    top = int(np.sqrt(per_mode.size + 1)) - 1
    starts = np.arange(1, top + 1) ** 2 - 1
    spectrum = np.add.reduceat(per_mode, starts) / (2.0 * (2.0 * np.arange(1, top + 1) + 1.0))
    tail = spectrum[-max(4, top // 5) :]
    floor = float(np.median(tail))
    if top < 12 or floor <= 0.0:
        return top
    out = np.flatnonzero(spectrum > 4.0 * floor)
    return min(top, int(out[-1]) + 3) if out.size else top


def sampled_order(samples: FieldSamples) -> int:
    """Return the order that scattered samples carry: by the size of their cells and their number."""
    theta, phi, _ = _folded(samples)
    area = solid_angles(theta, phi, 1)
    spacing = float(np.sqrt(np.quantile(area, 0.9)))
    covered = min(1.0, float(area.sum()) / (4.0 * np.pi))
    by_count = np.sqrt(samples.theta.size / (1.2 * max(covered, 0.02)))
    return int(min(0.98 * np.pi / spacing, by_count))


def _folded(samples: FieldSamples) -> tuple[FloatArray, FloatArray, ComplexArray]:
    """Return samples with theta in 0..pi; both components change sign where theta was negative."""
    folded, sign = fold(theta=samples.theta, phi=samples.phi)
    return folded.theta, folded.phi, samples.field * sign


def far_field(
    dataset: xr.Dataset,
    *,
    order: int | None = None,
    step_deg: float = 1.0,
    origin_m: tuple[float, float, float] | None = None,
    keep_radius_m: float | None = None,
) -> tuple[xr.Dataset, list[str]]:
    """Turn a dataset of near (or far) fields into a far-field pattern on a whole-sphere grid.

    Parameters
    ----------
    order
        Order about the coordinate origin; chosen from the data if None.
    step_deg
        Step of the result's grid.
    origin_m
        Phase reference of the result, and centre of `keep_radius_m`; the coordinate origin if None.
    keep_radius_m
        Only waves from inside this sphere about the origin are kept (stray signals from
        elsewhere are filtered out).

    Returns
    -------
    The pattern, with a variable `support` (theta, phi) where the data do not cover the sphere,
    and what was done in plain words, one line per frequency.

    Raises
    ------
    ValueError
        If the samples cannot carry the order, or nothing would be left.
    """
    sets = samples_of(dataset)
    shift = np.zeros(3) if origin_m is None else np.asarray(origin_m, float)
    rings = round(180.0 / step_deg) + 1
    columns = 2 * (rings - 1)
    fields, words, support = [], [], None
    for index, samples in enumerate(sets):
        k = float(wavenumber(samples.frequency_hz))
        cap = None if keep_radius_m is None else order_cap(k, keep_radius_m + float(np.linalg.norm(shift)))
        found = expand(samples, order=order, cap=cap)
        expansion = Expansion(found.coefficients, np.array(k))
        if origin_m is not None:
            expansion = expansion.translated(-shift)
        if keep_radius_m is not None:
            expansion = expansion.truncated(min(expansion.order, order_cap(k, keep_radius_m) - ORDER_MARGIN))
        fields.append(expansion.far_field(np.linspace(0.0, np.pi, rings), columns))
        words.append(f"{samples.frequency_hz / 1e9:.6g} GHz: {found.words}")
        if found.fit is not None and index == len(sets) // 2:
            support = _support(samples, found, k, rings)
    theta, phi = np.linspace(0.0, np.pi, rings), np.arange(columns) * 2.0 * np.pi / columns
    reference = "coordinate origin" if origin_m is None else f"point ({shift[0]:g}, {shift[1]:g}, {shift[2]:g}) m"
    pattern = build_pattern(
        np.stack(fields), frequency_hz=np.array([s.frequency_hz for s in sets]), theta=theta, phi=phi,
        quantity="relative", phase_reference=reference,
    )  # fmt: skip
    pattern = pattern.assign_attrs(field="far field", history_json=dataset.attrs.get("history_json", "[]"))
    if support is not None:
        pattern["support"] = (
            ("theta", "phi"),
            support,
            {"long_name": "share of an arbitrary field that the data determine"},
        )
    pattern = with_step(
        pattern, "to far-field", order=order, origin_m=shift.tolist(), keep_radius_m=keep_radius_m, found=words
    )
    return pattern, words


def _support(samples: FieldSamples, found: Transformed, k: float, rings: int) -> FloatArray:
    """Return the support of the result on its grid, computed on a coarser one."""
    from scipy.interpolate import RegularGridInterpolator

    theta, phi, field = _folded(samples)
    bundle = Samples.of(theta, phi, field, weight=samples.weight)
    coarse_t = np.deg2rad(np.arange(0.0, 180.1, SUPPORT_STEP_DEG))
    coarse_p = np.deg2rad(np.arange(0.0, 360.1, SUPPORT_STEP_DEG))
    t, p = np.meshgrid(coarse_t, coarse_p, indexing="ij")
    # Judged at the order that the data really fill; the empty degrees above need no support.
    judged = effective_order(found)
    coarse = support_map(bundle, judged, k, t, p).reshape(t.shape)
    columns = 2 * (rings - 1)
    fine = np.meshgrid(np.linspace(0, np.pi, rings), np.arange(columns) * 2 * np.pi / columns, indexing="ij")
    at = np.stack([g.ravel() for g in fine], axis=-1)
    return np.asarray(RegularGridInterpolator((coarse_t, coarse_p), coarse)(at).reshape(rings, columns))


def effective_order(found: Transformed) -> int:
    """Return the degree below which 99.9 % of the expansion's power lies."""
    per_mode = np.sum(np.abs(found.coefficients) ** 2, axis=-2)
    starts = np.arange(1, found.order + 1) ** 2 - 1
    share = np.cumsum(np.add.reduceat(per_mode, starts)) / np.sum(per_mode)
    return max(3, int(np.searchsorted(share, 0.999)) + 1)


def _db(ratio: float) -> float:
    return float(20.0 * np.log10(ratio)) if ratio > 0.0 else -400.0
