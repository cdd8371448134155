"""The level of a cut at every direction that was measured, with its interval."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from colure.analysis.cuts.figures import reader_of
from colure.analysis.cuts.reader import DB
from colure.analysis.cuts.scan import CutScan, MeasuredCut
from colure.geometry.conventions import FloatArray, amplitude_db
from colure.geometry.directions import azimuth_over_elevation, theta_phi
from colure.model.chamber import Chamber
from colure.model.device import Device
from colure.model.evaluation import Evaluation
from colure.values import holds_arrays

LOWEST = 1e-10


@dataclass(frozen=True)
@holds_arrays
class CutLevel:
    """One cut at one frequency: levels (n,) in dBi, or `unit`: dB below the strongest of a run without a reference; `lower` and `upper` hold the co-polar level in 95 of 100 cases.

    lower and upper are nan where no interval was worked out: single directions, and cuts of a large raster beside those that
    figures are read from.
    """

    name: str
    label: str
    angle_name: str
    frequency_hz: float
    angle_deg: FloatArray
    directions: FloatArray
    co_dbi: FloatArray
    co_phase_deg: FloatArray
    cross_dbi: FloatArray
    cross_phase_deg: FloatArray
    total_dbi: FloatArray
    lower_dbi: FloatArray
    upper_dbi: FloatArray
    unit: str = "dBi"

    def rows(self) -> Iterator[FloatArray]:
        """Yield angle, theta, phi, azimuth, elevation (degrees), then the levels, direction by direction."""
        theta, phi = theta_phi(self.directions)
        azimuth, elevation = azimuth_over_elevation(self.directions)
        angles = np.rad2deg(np.stack([theta, phi, azimuth, elevation]))
        yield from np.vstack(
            [self.angle_deg, angles, self.co_dbi, self.co_phase_deg, self.cross_dbi, self.cross_phase_deg, self.total_dbi,
             self.lower_dbi, self.upper_dbi]
        ).T  # fmt: skip


def cut_levels(
    scan: CutScan, chamber: Chamber, device: Device, settings: Evaluation, **context: float
) -> list[CutLevel]:
    """Return the levels of every cut at every frequency; context as in `cut_figures`."""
    from colure.analysis.cuts.figures import evaluated

    chosen = {one.cut.name for one in evaluated(scan, device)}
    return [
        _level(scan, cut, f, chamber, device, settings, context, banded=cut.cut.name in chosen)
        for cut in (*scan.cuts, *scan.across)
        for f in range(scan.frequency_hz.size)
    ]


def _level(
    scan: CutScan, cut: MeasuredCut, f: int, chamber: Chamber, device: Device, settings: Evaluation, context: dict[str, float],
    *, banded: bool,
) -> CutLevel:  # fmt: skip
    co, nan = cut.co[f], np.full(cut.angle_deg.size, np.nan)
    cross = None if cut.cross is None else cut.cross[f]
    lower, upper = nan, nan
    errors = reader_of(scan, cut, f, chamber, device, settings, context).known_errors() if banded else None
    if errors is not None:
        amplitude = np.maximum(np.abs(co), LOWEST)
        fixed = errors.noise**2 + errors.echoes**2 + errors.floor**2 + errors.impurity**2
        shared = errors.drift**2 + errors.once**2 + (errors.all_common_db / DB) ** 2
        relative = np.sqrt(fixed / amplitude**2 + shared)
        level = amplitude_db(amplitude)
        upper = level + amplitude_db(1.0 + relative)
        lower = np.where(relative < 1.0, level + amplitude_db(np.maximum(1.0 - relative, LOWEST)), -200.0)
    return CutLevel(
        cut.cut.name, cut.cut.label, cut.cut.angle_name, float(scan.frequency_hz[f]), cut.angle_deg, cut.directions,
        _dbi(np.abs(co)), np.rad2deg(np.angle(co)),
        nan if cross is None else _dbi(np.abs(cross)), nan if cross is None else np.rad2deg(np.angle(cross)),
        nan if cross is None else _dbi(cut.total[f]), lower, upper, "dBi" if chamber.reference.absolute else "dB",
    )  # fmt: skip


def _dbi(amplitude: FloatArray) -> FloatArray:
    return amplitude_db(np.maximum(amplitude, LOWEST))
