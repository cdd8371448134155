"""Figures and cuts of a table of power without phase, with intervals where the table states its errors."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

import numpy as np

from colure.analysis.figures.cuts import Beam, declared_vector
from colure.analysis.pipeline.power_between import Continuous, PowerOfRegion, sampled_peak
from colure.analysis.pipeline.power_levels import PowerSphere
from colure.analysis.pipeline.power_only import (
    changed,
    native_values,
    no_single_beam,
    thinned,
    turned,
    untold,
)
from colure.analysis.steps.repetition import students_factor
from colure.analysis.uncertainty.budget import build_figure
from colure.analysis.uncertainty.level_cuts import LevelCut, cut_directions
from colure.geometry.conventions import FloatArray
from colure.geometry.directions import theta_phi
from colure.model.definitions import Definition, definitions_for
from colure.model.evaluation import Evaluation
from colure.model.figure import BudgetRow, Figure
from colure.values import holds_arrays

#: Draws of the levels' scatter; an interval from so few is right within a seventh (JCGM 100:2008, E.4.3).
DRAWS = 24
#: The share of the scatter that draws add: the table holds all of it already, and a peak moves further where noise lies on noise.
PART = 0.4
UNKNOWN = ("all: the table states no errors",)
NOT_INCLUDED = ("range echoes", "alignment", "finite distance")


@dataclass(frozen=True)
@holds_arrays
class TableErrors:
    """What a table's levels may be wrong by: all together (dB, expanded), and each by itself (frequency, theta, phi; dB, 1 sigma)."""

    common_db: float | None
    scatter_db: FloatArray | None


def figures_of_power(
    sphere: PowerSphere, settings: Evaluation, quantity: str, errors: TableErrors | None = None
) -> list[Figure]:
    """Return every figure that power alone gives, of a table.

    Parameters
    ----------
    sphere
        Gain, EIRP in milliwatts, or power on any scale.
    quantity
        `gain`, `eirp` or `relative`; a relative one of the whole sphere gives directivity.
    errors
        What the table states of its levels; None where it states nothing: no intervals then.

    Raises
    ------
    ValueError
        If the rings are too few to tell how good they are.
    """
    if quantity == "eirp":
        settings = settings.model_copy(update={"transmit_power_dbm": 0.0})
    kept = {"gain": None, "eirp": ("eirp_dbm", "trp_dbm"), "relative": ()}[quantity]
    chosen = [
        d
        for d in definitions_for(settings)
        if d.power and (sphere.whole or not d.sphere) and (kept is None or d.gain == 0.0 or d.name in kept)
    ]
    fewer, drawn = thinned(sphere), _drawn(sphere, errors)
    out = []
    for f, frequency in enumerate(sphere.frequency_hz):
        values, coarser, moved = (
            [native_values(one, f, settings) for one in some] for some in ([sphere], fewer, drawn)
        )
        several = no_single_beam(sphere, f)
        for what in chosen:
            change = changed(what, values[0][what.name], coarser)
            rows = _rows(what, values[0][what.name], change, moved, errors)
            reason = several if what.single_beam else untold(change)
            out.append(_stated(build_figure(what, values[0][what.name], rows, float(frequency), reason=reason), errors))
    return out


def _stated(one: Figure, errors: TableErrors | None) -> Figure:
    """Return a figure without an interval where the table states nothing; what the interval does not hold is named."""
    if one.reason:
        return one
    if errors is None:
        return replace(one, lower=float("nan"), upper=float("nan"), not_included=UNKNOWN)
    return replace(one, not_included=NOT_INCLUDED)


def _drawn(sphere: PowerSphere, errors: TableErrors | None) -> list[PowerSphere]:
    """Return the sphere with a part of the levels' scatter added once more, in random draws."""
    if errors is None or errors.scatter_db is None:
        return []
    random, scatter = np.random.default_rng(1), errors.scatter_db
    out = []
    for _ in range(DRAWS):
        gain = sphere.gain * 10.0 ** (0.1 * PART * scatter * random.normal(size=scatter.shape))
        # Every column of a pole is the same direction.
        for ring in [i for i, t in ((0, 0.0), (-1, np.pi)) if np.isclose(sphere.theta[i], t)]:
            gain[:, ring] = gain[:, ring].mean(axis=-1, keepdims=True)
        out.append(replace(sphere, gain=gain))
    return out


def _rows(
    what: Definition,
    value: float,
    change: float,
    moved: Sequence[dict[str, float]],
    errors: TableErrors | None,
) -> tuple[BudgetRow, ...]:
    rows = [
        BudgetRow(
            term="sampling and truncation",
            expanded=change,
            basis="fewer samples against all",
            kind="measured",
            distribution="change",
        )
    ]
    if moved:
        spread = float(np.sqrt(np.nanmean([turned(what, one[what.name] - value) ** 2 for one in moved]))) / PART
        k = students_factor(DRAWS - 1.0)
        words = "stated by the table for each level by itself"
        rows.append(
            BudgetRow(
                term="scatter of the levels",
                expanded=k * spread,
                basis=words,
                kind="declared",
                distribution="Monte Carlo",
                dof=DRAWS - 1.0,
                coverage_factor=k,
            )
        )
    if errors is not None and errors.common_db is not None and what.gain != 0.0:
        size = errors.common_db
        rows.append(
            BudgetRow(
                term="level of the table",
                expanded=size,
                basis="stated by the table for all levels together",
                kind="declared",
                distribution="normal",
                size=size,
                unit="dB",
            )
        )
    return tuple(rows)


def power_cuts(
    sphere: PowerSphere,
    planes_deg: tuple[float, ...],
    *,
    slant: float,
    errors: TableErrors | None = None,
    step_deg: float = 1.0,
) -> dict[float, list[LevelCut]]:
    """Return cuts of total power through the peak by frequency in Hz, in planes in degrees from E towards H.

    Power does not tell the E plane: it is the one that holds the declared co-polar vector, `slant` radians from x towards y.
    Both `co` and `total` of a cut are total power. Nan beyond the last ring; uncertainties are infinite where `errors` is None.

    Raises
    ------
    ValueError
        If the rings are too few to tell how good they are.
    """
    angle = np.linspace(-180.0, 180.0, 2 * round(180.0 / step_deg) + 1)
    out: dict[float, list[LevelCut]] = {}
    fewer = [] if errors is None else thinned(sphere)
    for f, frequency in enumerate(sphere.frequency_hz):
        amplitudes, peak = _between_samples(sphere, f)
        beam = Beam(peak, declared_vector(peak, slant), 1.0)
        d = cut_directions(beam, planes_deg, angle)
        level = amplitudes(d)
        half = np.full(level.shape, np.inf)
        if errors is not None:
            sampling = np.max([np.abs(level - _between_samples(one, f)[0](d)) for one in fewer], axis=0)
            scatter = 0.0 if errors.scatter_db is None else 2.0 * float(np.sqrt(np.mean(errors.scatter_db[f] ** 2)))
            half = np.hypot(sampling, level * (10.0 ** (scatter / 20.0) - 1.0))
        common = 0.0 if errors is None or errors.common_db is None else errors.common_db
        out[float(frequency)] = [
            LevelCut(
                plane_deg=plane,
                frequency_hz=float(frequency),
                angle_deg=angle,
                amplitude={"co": a, "total": a},
                expanded={"co": u, "total": u},
                common_db=common,
            )
            for plane, a, u in zip(planes_deg, level.reshape(-1, angle.size), half.reshape(-1, angle.size), strict=True)
        ]
    return out


def _between_samples(sphere: PowerSphere, f: int) -> tuple[Callable[[FloatArray], FloatArray], FloatArray]:
    """Return what gives amplitudes (n,) in directions (n, 3), nan beyond the last ring, and the direction (3,) of the peak."""
    gain = sphere.gain[f]
    if sphere.whole:
        whole = Continuous(gain)
        return lambda d: np.asarray(np.sqrt(whole.at(*theta_phi(d)))), whole.peak(gain)[0]
    part = PowerOfRegion(sphere.theta, gain)
    return lambda d: np.asarray(np.sqrt(part.at(*theta_phi(d)))), sampled_peak(sphere, gain)[0]
