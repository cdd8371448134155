"""The truth of a cut, from the simulated device's closed-form far field alone: dense samples and plain searches."""

from __future__ import annotations

import numpy as np

from colure.twin.sources import Cluster
from colure.twin.true_ellipse import ludwig3
from colure.twin.true_field import TrueField

FINE_DEG = 0.02


def true_cut(device: Cluster, index: int, cut, *, slant_deg: float, vector: bool = False) -> dict[str, float]:
    """Return the figures of a cut (any object with `angle_deg` and `directions`), followed probe at one slant."""
    field = TrueField(device.at(index))
    angle = np.arange(cut.angle_deg.min(), cut.angle_deg.max() + FINE_DEG / 2, FINE_DEG)
    d = np.stack([np.interp(angle, cut.angle_deg, cut.directions[:, i]) for i in range(3)], axis=-1)
    d /= np.linalg.norm(d, axis=1, keepdims=True)
    e = field.at(d)
    co = np.abs(np.sum(e * ludwig3(d, np.deg2rad(slant_deg)), axis=-1))
    cross = np.abs(np.sum(e * ludwig3(d, np.deg2rad(slant_deg + 90.0)), axis=-1))
    a = np.hypot(co, cross) if vector else co
    top = int(np.argmax(a))
    level = 20.0 * np.log10(np.maximum(a, 1e-12) / a[top])
    found = {"peak_dbi": float(20.0 * np.log10(a[top])), "peak_deg": float(angle[top])}
    for down, name in ((10.0 * np.log10(2.0), "width_3_deg"), (10.0, "width_10_deg")):
        left = np.flatnonzero(level[:top] < -down)
        right = np.flatnonzero(level[top:] < -down)
        if left.size and right.size:
            found[name] = float(angle[top + right[0]] - angle[left[-1]])
    for side, word in ((-1, "left"), (1, "right")):
        path = np.arange(top, -1, -1) if side < 0 else np.arange(top, a.size)
        here = level[path]
        dip = _first_dip(here)
        if dip is None:
            continue
        found[f"null_{word}_deg"] = float(angle[path[dip]])
        found[f"null_{word}_db"] = float(here[dip])
        inner = here[dip + 1 : -1]
        tops = np.flatnonzero((inner > here[dip:-2]) & (inner >= here[dip + 2 :]))
        if tops.size:
            found[f"side_lobe_{word}_db"] = float(inner[tops].max())
    if vector:
        found["xpd_db"] = float(20.0 * np.log10(co[top] / max(cross[top], 1e-12)))
    return found


def _first_dip(level: np.ndarray) -> int | None:
    """Return the first place at which a level turns up again by at least 1 dB."""
    low = 0
    for i in range(1, level.size):
        if level[i] < level[low]:
            low = i
        elif level[i] > level[low] + 1.0 and low > 0:
            return low
    return None
