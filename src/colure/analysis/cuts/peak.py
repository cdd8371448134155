"""The top of a beam from many samples: a parabola through everything near it, which noise hardly moves."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from colure.analysis.cuts.curve import Lobes
from colure.geometry.conventions import FloatArray, amplitude_db

#: Samples within this of the highest make the top; the taller one shows how much that choice matters, dB.
TOP_DB, TALLER_DB = 1.5, 3.0
LEAST_SAMPLES = 5


@dataclass(frozen=True, kw_only=True)
class Top:
    """Peak of a cut: angle (deg) and level (dB); how the fit answers to noise, and what another top changes.

    curvature
        Of the relative field, per radian squared, positive.
    angle_per_noise, level_per_noise
        Degrees, and dB, per dB of independent error of each sample.
    angle_change, level_change
        What the choice of the top leaves open, degrees and dB.
    """

    angle_deg: float
    level_db: float
    curvature: float
    angle_per_noise: float
    level_per_noise: float
    angle_change: float
    level_change: float


def top_of(angle_deg: FloatArray, amplitude: FloatArray, lobes: Lobes) -> Top:
    """Return the top of the main lobe from samples (n,); the curve's own highest point where too few show it."""
    level = amplitude_db(amplitude, least=1e-12)
    low, tall = (_parabola(angle_deg, level, lobes, height) for height in (TOP_DB, TALLER_DB))
    chosen = low or tall
    if chosen is None:
        # The curve's own curvature over its fine points.
        index = int(np.clip(lobes.peak_index, 1, lobes.curve.angle_deg.size - 2))
        step = float(np.deg2rad(np.diff(lobes.curve.angle_deg)[index]))
        a = lobes.curve.amplitude[index - 1 : index + 2] / lobes.peak
        bend = max(float(-(a[0] - 2.0 * a[1] + a[2]) / step**2), 1e-6)
        return Top(
            angle_deg=lobes.peak_deg,
            level_db=float(amplitude_db(lobes.peak)),
            curvature=bend,
            angle_per_noise=1.0,
            level_per_noise=1.0,
            angle_change=0.0,
            level_change=0.0,
        )
    if low is None or tall is None:
        return chosen
    # A parabola leaves out what falls steeper than it; half of what a taller top changes bounds that.
    return Top(
        angle_deg=chosen.angle_deg, level_db=chosen.level_db, curvature=chosen.curvature,
        angle_per_noise=chosen.angle_per_noise, level_per_noise=chosen.level_per_noise,
        angle_change=0.5 * abs(low.angle_deg - tall.angle_deg), level_change=0.5 * abs(low.level_db - tall.level_db),
    )  # fmt: skip


def _parabola(angle_deg: FloatArray, level_db: FloatArray, lobes: Lobes, height_db: float) -> Top | None:
    """Return the vertex of a parabola through the samples within `height_db` of the peak, in one piece around it."""
    left, right = lobes.crossing_deg[height_db]
    if not np.isfinite(left) or not np.isfinite(right):
        return None
    places = angle_deg[:, None] + (np.array([-360.0, 0.0, 360.0]) if lobes.curve.closed else np.array([0.0]))
    inside = (places > left) & (places < right)
    x, y = places[inside] - lobes.peak_deg, np.broadcast_to(level_db[:, None], places.shape)[inside]
    if x.size < LEAST_SAMPLES:
        return None
    matrix = np.stack([np.ones_like(x), x, x * x], axis=-1)
    solve = np.linalg.pinv(matrix)
    c = solve @ y
    if c[2] >= 0.0 or not left - lobes.peak_deg < -0.5 * c[1] / c[2] < right - lobes.peak_deg:
        return None
    vertex = float(-0.5 * c[1] / c[2])
    curvature = float(-2.0 * c[2] * np.log(10.0) / 20.0 * np.rad2deg(1.0) ** 2)
    angle_noise = float(np.linalg.norm(solve[1] + 2.0 * vertex * solve[2]) / abs(2.0 * c[2]))
    level_noise = float(np.linalg.norm(solve[0] + vertex * solve[1] + vertex**2 * solve[2]))
    level = float(c[0] + 0.5 * c[1] * vertex)
    return Top(
        angle_deg=lobes.peak_deg + vertex,
        level_db=level,
        curvature=curvature,
        angle_per_noise=angle_noise,
        level_per_noise=level_noise,
        angle_change=0.0,
        level_change=0.0,
    )
