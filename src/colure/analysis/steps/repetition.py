"""Readings that were repeated a few times: Student's factor for their mean."""

from __future__ import annotations

from functools import lru_cache

import numpy as np
from scipy.special import stdtrit

PROBABILITY = 0.95


@lru_cache(maxsize=256)
def students_factor(dof: float, probability: float = PROBABILITY) -> float:
    """Return the coverage factor of Student's distribution (JCGM 100:2008, table G.2)."""
    return float(stdtrit(dof, 0.5 + 0.5 * probability)) if np.isfinite(dof) else 1.959964
