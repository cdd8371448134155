"""Legal transitions are one table; everything else is refused."""

from __future__ import annotations

import itertools

import pytest

from colure.acquire.states import LEGAL, IllegalTransitionError, State, check


@pytest.mark.parametrize(("old", "new"), list(itertools.product(State, State)))
def test_only_the_table_decides(old, new):
    if new in LEGAL[old]:
        assert check(old, new) is new
    else:
        with pytest.raises(IllegalTransitionError, match=old.value):
            check(old, new)


@pytest.mark.parametrize("end", [State.DONE, State.STOPPED, State.FAULTED])
def test_an_ended_run_cannot_move_again(end):
    assert not LEGAL[end]
