"""Cuts with their uncertainty at every angle: what masks, plots and comparisons of levels need.

The same causes as the figures' are applied to the data; the level-dependent interval follows by itself:
a field error that hardly moves the peak moves a lobe 35 dB below it by decibels.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from colure.analysis.bench import Bench, Inputs
from colure.analysis.causes import causes
from colure.analysis.combination import half_width, joint_draws
from colure.analysis.figures.cuts import Beam, FarField, find_beam, ludwig_3, tangent_at
from colure.analysis.figures.definitions import Definition
from colure.analysis.figures.evaluate import FigureSet
from colure.geometry.conventions import FloatArray
from colure.waves.expansion import Expansion


@dataclass(frozen=True)
class LevelCut:
    """One cut at one frequency: amplitudes (sqrt of gain) and their expanded uncertainties, by component.

    angle_deg (n,); amplitude and expanded (n,) of `co`, `cross` and `total`; common_db is what moves all levels together
    (reference gain, mismatch): it counts for absolute levels only.
    """

    plane_deg: float
    frequency_hz: float
    angle_deg: FloatArray
    amplitude: dict[str, FloatArray]
    expanded: dict[str, FloatArray]
    common_db: float

    def bounds_db(self, component: str, *, relative: bool) -> tuple[FloatArray, FloatArray, FloatArray]:
        """Return (level, lower, upper) in dBi, or in dB re the co-polar peak."""
        a, u = self.amplitude[component], self.expanded[component]
        top = float(self.amplitude["co"][self.angle_deg.size // 2]) if relative else 1.0
        common = 0.0 if relative else 10.0 ** (self.common_db / 20.0) - 1.0
        half = np.hypot(u, common * a)
        level, low, high = (20.0 * np.log10(np.maximum(x, 1e-10) / top) for x in (a, a - half, a + half))
        return level, low, high


@dataclass(frozen=True)
class _Levels(FigureSet):
    """Amplitudes at fixed directions instead of figures: the causes do not care."""

    directions: tuple[FloatArray, ...] = ()

    def __post_init__(self) -> None:
        super().__post_init__()
        one = Definition("gain_dbi", "", "", "", "", float)
        object.__setattr__(self, "definitions", (one,))

    def values(self, expansion: Expansion, *, near: object = None) -> FloatArray:
        out = []
        for coefficients, d in zip(expansion.coefficients, self.directions, strict=True):
            vectors = FarField(coefficients).at(d)
            co, cross = ludwig_3(vectors, d, self.slant)
            total = np.sqrt(np.sum(np.abs(vectors) ** 2, axis=-1))
            peak = 20.0 * np.log10(max(float(total.max()), 1e-10))
            out.append(np.concatenate([[peak], np.abs(co), np.abs(cross), total]))
        return np.array(out)

    def places(self, expansion: Expansion) -> list[object]:  # type: ignore[override]
        return []


def level_cuts(
    inputs: Inputs, planes_deg: tuple[float, ...], *, step_deg: float = 1.0, span_deg: float = 180.0
) -> list[list[LevelCut]]:
    """Return cuts through the peak with their intervals: by frequency, then by plane (degrees from E towards H)."""
    nominal = inputs.step.expansion(inputs.sphere.field)
    base = inputs.figures
    count = round(span_deg / step_deg)
    angle = np.linspace(-span_deg, span_deg, 2 * count + 1)
    beams = [find_beam(c, slant=base.slant, region=base.region) for c in nominal.coefficients]
    levels = _Levels(
        settings=base.settings, slant=base.slant, region=base.region, one_polarization=base.one_polarization,
        directions=tuple(cut_directions(beam, planes_deg, angle) for beam in beams),
    )  # fmt: skip
    values = levels.values(nominal)
    bench = Bench(replace(inputs, figures=levels), nominal, values, [])
    found = [bench.contribution(one) for one in causes(bench) if one.term not in ("reference gain", "mismatch")]
    expanded = half_width(joint_draws(found))
    common = float(np.hypot(inputs.chamber.reference.gain_uncertainty_db, inputs.mismatch_db))
    out = []
    for f, frequency in enumerate(inputs.sphere.frequency_hz):
        shape = (3, len(planes_deg), angle.size)
        a, u = (table[f, 1:].reshape(shape) for table in (values, expanded))
        out.append([
            LevelCut(plane, float(frequency), angle, _by_component(a[:, i]), _by_component(u[:, i]), common)
            for i, plane in enumerate(planes_deg)
        ])  # fmt: skip
    return out


def _by_component(table: FloatArray) -> dict[str, FloatArray]:
    return dict(zip(("co", "cross", "total"), table, strict=True))


def cut_directions(beam: Beam, planes_deg: tuple[float, ...], angle_deg: FloatArray) -> FloatArray:
    """Return directions (plane x angle, 3) on great circles through the peak."""
    a = np.deg2rad(angle_deg)[:, None]
    return np.concatenate([np.cos(a) * beam.direction + np.sin(a) * tangent_at(beam, plane) for plane in planes_deg])
