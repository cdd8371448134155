"""Answers that are asked for more than once of one result: at its figures, among the findings, in the report."""

from __future__ import annotations

import weakref
from collections.abc import Callable
from functools import wraps
from typing import TYPE_CHECKING, Final, TypeVar

if TYPE_CHECKING:
    from colure.analysis.pipeline.recipe import Processed

Answer = TypeVar("Answer")
#: Answers of so many results are kept, the last ones.
MOST: Final = 4


def once_per_result(ask: Callable[[Processed], Answer]) -> Callable[[Processed], Answer]:
    """Let a question be worked out once for each result, which never changes; a result that nobody holds any more is forgotten."""
    kept: dict[int, tuple[weakref.ref[Processed], Answer]] = {}

    @wraps(ask)
    def asked(processed: Processed) -> Answer:
        known = kept.get(id(processed))
        if known is not None and known[0]() is processed:
            return known[1]
        answer = ask(processed)
        kept[id(processed)] = (weakref.ref(processed), answer)
        while len(kept) > MOST:
            kept.pop(next(iter(kept)), None)
        return answer

    return asked
