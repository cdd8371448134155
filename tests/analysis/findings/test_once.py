"""A question is worked out once for each result, never answered for another one, and holds no result alive."""

from __future__ import annotations

import gc
import weakref

from colure.analysis.findings.once import MOST, once_per_result


class Result:
    """Stands where a processed run stands: something that can be held weakly and compared by identity."""


def test_each_result_has_its_own_answer_and_is_asked_once():
    asked = []

    @once_per_result
    def ask(result):
        asked.append(result)
        return len(asked)

    first, second = Result(), Result()
    assert [ask(first), ask(second), ask(first), ask(second)] == [1, 2, 1, 2]
    others = [Result() for _ in range(MOST)]
    assert [ask(one) for one in others] == list(range(3, 3 + MOST))
    assert ask(first) == 3 + MOST, "the oldest is forgotten, not the answer of another one given"


def test_a_result_is_not_kept_alive():
    ask = once_per_result(lambda result: "answer")
    one = Result()
    ask(one)
    gone = weakref.ref(one)
    del one
    gc.collect()
    assert gone() is None
