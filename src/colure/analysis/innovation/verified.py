"""A device verified from few slices: figures with intervals, faulty elements by name, and why the model is not to be believed."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from colure.analysis.figures.evaluate import FigureSet
from colure.analysis.innovation.causes import Causes
from colure.analysis.innovation.estimate import MISFITS, OF_ELEMENTS, Estimator, Found
from colure.analysis.innovation.figures import innovation_figures
from colure.analysis.innovation.known_unit import KnownUnit
from colure.analysis.innovation.range_model import RangeModel
from colure.analysis.innovation.readings import SliceReadings
from colure.geometry.conventions import FloatArray, IntArray, amplitude_db
from colure.model.chamber import Chamber
from colure.model.figure import Figure
from colure.values import holds_arrays
from colure.waves.expansion import Expansion
from colure.waves.probe import first_order_response, ideal_response

#: A fit looks at so many frequencies at most, and at readings this share of the narrowest ripple apart.
MOST_FREQUENCIES, APART = 11, 0.5
#: A misfit above this share of drawn ones is one that the model does not explain.
USUAL = 0.95
#: So is a strength of all elements above this share. A good unit keeps it in every look, so that fewer may be refused by it.
UNUSUAL = 0.99
#: An element is named where so little doubt is left, and where it deviates by this share of its amplitude: -2.5 dB, or 14 deg.
SURE, NAMED = 0.95, 0.25
#: Others are cleared where it is so likely that there is none: one that hides does little to the pattern.
CLEARED = 0.8
#: With more faults than this a device is another one, not the reference with faults.
MOST_NAMED = 6
#: An element below this level is dead; one whose phase is off by more than this is misfed.
DEAD_DB, MISFED_DEG = -14.0, 15.0


@dataclass(frozen=True, kw_only=True)
class ElementFault:
    """A faulty element: row and column from -y and -x, what is wrong, level and phase against the reference, and how sure it is.

    expanded
        Expanded uncertainty (k = 2) of the element's complex amplitude, relative to the reference's.
    """

    row: int
    column: int
    kind: str
    level_db: float
    phase_deg: float
    expanded: float
    sure: float


@dataclass(frozen=True)
@holds_arrays
class Verified:
    """What a set of slices says of a device.

    doubts
        Why its figures are not to be used, in words; none where the model explains the readings.
    frequency_hz
        Frequencies that were looked at.
    """

    slices: int
    figures: list[Figure]
    faults: tuple[ElementFault, ...]
    doubts: tuple[str, ...]
    frequency_hz: FloatArray

    @property
    def trusted(self) -> bool:
        """Tell whether figures and faults are to be used."""
        return not self.doubts


def looked_at(frequencies: int) -> IntArray:
    """Return which of a plan's frequencies a fit looks at."""
    return np.unique(np.round(np.linspace(0, frequencies - 1, min(frequencies, MOST_FREQUENCIES))).astype(np.int64))


def thinned(readings: SliceReadings, order: int, region: float) -> IntArray:
    """Return which points a fit looks at: within the region (radians), as close together as waves up to `order` ask for."""
    step = float(np.median(np.abs(np.diff(np.unique(np.round(readings.first, 6))))))
    every = max(1, int(APART * np.pi / order / step))
    inside = np.abs(readings.first) <= region + 1e-6
    return np.flatnonzero(inside & (np.round(readings.first / step).astype(int) % every == 0))


def verified(
    readings: SliceReadings, known: KnownUnit, chamber: Chamber, probe: Expansion | None, figures: FigureSet, *,
    columns: int, order: int, seed: int,
) -> Verified:  # fmt: skip
    """Fit reference and innovation to readings and say what the device is.

    Parameters
    ----------
    readings
        At the frequencies of `known` and `probe`.
    columns
        Elements in a row.
    order
        Of the waves that the readings may hold.
    seed
        What every random draw begins with.
    """
    some = readings.at(thinned(readings, order, figures.region))
    estimator = estimator_of(some, known, chamber, probe, order=order, seed=seed)
    fit = estimator.of(some.value)
    pattern = Expansion(fit.coefficients, known.expansion.k)
    stated = innovation_figures(figures, pattern, fit.errors, some.frequency_hz, seed=seed)
    slices = int(np.unique(some.slice_index).size)
    return Verified(slices, stated, faults_of(fit, columns), tuple(doubts_of(fit)), some.frequency_hz)


def estimator_of(
    some: SliceReadings, known: KnownUnit, chamber: Chamber, probe: Expansion | None, *, order: int, seed: int
) -> Estimator:
    """Return the estimator for the places of some readings."""
    k, distance = known.expansion.k, chamber.range_length_m
    response = ideal_response(order, k, distance) if probe is None else first_order_response(probe, order, distance)
    model = RangeModel(
        chamber.positioner.geometry, distance, some.frequency_hz, some.first, some.second, some.roll, order, response
    )
    return Estimator(Causes(model, known, chamber, probe, some.time_s, some.slice_index), some.noise, seed=seed)


def faults_of(fit: Found, columns: int) -> tuple[ElementFault, ...]:
    """Return the faulty elements in words and numbers; those that deviate a little more than good ones are none."""
    out = []
    for i, sure in zip(fit.faulty.elements, fit.faulty.sure, strict=True):
        if abs(fit.deviation[i]) < NAMED:
            continue
        amplitude = 1.0 + complex(fit.deviation[i])
        level, phase = float(amplitude_db(max(abs(amplitude), 1e-6))), float(np.rad2deg(np.angle(amplitude)))
        kind = (
            "dead" if level < DEAD_DB else "misfed" if abs(phase) > MISFED_DEG else "weak" if level < 0.0 else "strong"
        )
        out.append(
            ElementFault(
                row=i // columns,
                column=i % columns,
                kind=kind,
                level_db=level,
                phase_deg=phase,
                expanded=2.0 * float(fit.sigma[i]),
                sure=sure,
            )
        )
    return tuple(out)


def doubts_of(fit: Found) -> list[str]:
    """Return why a fit is not to be believed, in words."""
    out = []
    rank = np.mean(fit.usual < fit.misfit, axis=0)
    for name, share, size, usual in zip(MISFITS, rank, fit.misfit, fit.usual.T, strict=True):
        if share > (UNUSUAL if name == OF_ELEMENTS else USUAL):
            out.append(f"{name} by {size / np.median(usual):.2g} times what rooms, tolerances and noise do: something is new "
                       "that no element explains")  # fmt: skip
    faulty = fit.faulty
    if len(faulty.elements) > MOST_NAMED:
        out.append(f"{len(faulty.elements)} elements differ: at most {MOST_NAMED} can be told apart")
    least = min(
        (sure for i, sure in zip(faulty.elements, faulty.sure, strict=True) if abs(fit.deviation[i]) >= NAMED),
        default=1.0,
    )
    if least < SURE:
        out.append(f"cannot tell which elements differ: the least sure of them does with {100.0 * least:.0f} %")
    if faulty.complete < CLEARED:
        out.append(f"cannot tell whether another element differs: none does with {100.0 * faulty.complete:.0f} %")
    return out
