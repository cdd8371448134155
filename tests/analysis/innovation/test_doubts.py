"""What makes a fit one that is not believed: each kind of misfit by itself, by the draws of the same kind."""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.innovation.estimate import MISFITS, OF_ELEMENTS, Found
from colure.analysis.innovation.fit import Faulty
from colure.analysis.innovation.verified import doubts_of


def found_with(misfit):
    """A fit of which all draws misfit by 0.01 to 1, evenly, in every kind."""
    usual = np.repeat(np.linspace(0.01, 1.0, 100)[:, None], len(MISFITS), axis=1)
    none = np.zeros(1, complex)
    return Found(none, none, np.zeros(1), Faulty((), (), 1.0), none, none, np.asarray(misfit, float), usual)


@pytest.mark.parametrize("kind", range(len(MISFITS)))
def test_each_misfit_is_doubted_by_itself(kind):
    misfit = np.full(len(MISFITS), 0.5)
    assert doubts_of(found_with(misfit)) == []
    misfit[kind] = 4.04  # eight times the median of 0.505
    doubts = doubts_of(found_with(misfit))
    assert len(doubts) == 1
    assert doubts[0].startswith(f"{MISFITS[kind]} by 8 times")


def test_a_good_unit_may_differ_from_its_reference_in_more_of_the_draws():
    """A slice above 96 % of the draws is doubted; a unit's own strength only above 99 %."""
    at = {name: np.where(np.array(MISFITS) == name, 0.975, 0.5) for name in MISFITS}
    assert [name for name in MISFITS if doubts_of(found_with(at[name]))] == [n for n in MISFITS if n != OF_ELEMENTS]
