"""What one comparison of a record with a declaration is worth, and what all of them say together.

One declaration that is too small hides in the scatter of one estimate. Many that are too small seldom do.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from scipy.special import chdtrc

#: A chance below this is a finding of its own; about six comparisons are made of a record.
RARE = 0.01
#: The same for two comparisons and more together. Bounds that are kept make chances larger than they need be: with both levels
#: 2 of 100 right declarations are spoken against, as counted over 767 campaigns by `tests.coverage.declarations`.
RARE_TOGETHER = 0.15
#: No comparison counts for more than this: its distribution was drawn, and draws tell little of its far end.
LEAST_CHANCE = 1e-3


@dataclass(frozen=True)
class Evidence:
    """One comparison: of what, and how many ranges as declared would look as far off or farther.

    chance
        Uniform from 0 to 1 over ranges as declared; larger where the declaration is a bound that is kept.
    """

    topic: str
    chance: float

    @property
    def rare(self) -> bool:
        """Tell whether this comparison alone speaks against its declaration."""
        return self.chance < RARE


def chance_together(evidence: Sequence[Evidence]) -> float:
    """Return the chance of all comparisons together: -2 sum ln p is chi-square with 2 m degrees of freedom.

    R. A. Fisher, Statistical Methods for Research Workers, section 21.1 (from memory). 1 where nothing was compared.
    """
    if not evidence:
        return 1.0
    chances = np.clip([one.chance for one in evidence], LEAST_CHANCE, 1.0)
    return float(chdtrc(2 * len(evidence), -2.0 * float(np.sum(np.log(chances)))))
