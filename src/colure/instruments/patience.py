"""How long an answer is waited for: what a line has shown so far decides, not the longest time that anything may take."""

from __future__ import annotations

import math

#: An answer is lost after so many times the longest that this question has taken, and never before the second number, seconds.
EXCHANGES, LEAST_S = 6.0, 2.0
#: So many different questions are remembered.
MOST_QUESTIONS = 200
#: A move is waited for so many times as long as it should take; shorter ones than the second number say nothing, seconds. An answer
#: that has never taken less than this share of its move comes at the end of it.
WAYS, LEAST_WAY_S, AT_END_SHARE = 2.0, 0.2, 0.5


class Patience:
    """Times of one line's exchanges, by question; a question that was never answered may take the line's whole time-out.

    The command of a move may be answered when the axes stand: how long a move should take is told as `way_s`, and the smallest
    share of it that an answer has taken says whether this controller answers at once or at the end.
    """

    def __init__(self, timeout_s: float) -> None:
        self._timeout_s = timeout_s
        self._longest_s: dict[str, float] = {}
        self._share: dict[str, float] = {}

    def took(self, question: str, seconds: float, *, way_s: float = 0.0) -> None:
        """Learn how long an answer took; the slowest of late counts."""
        if question in self._longest_s or len(self._longest_s) < MOST_QUESTIONS:
            self._longest_s[question] = max(0.98 * self._longest_s.get(question, 0.0), seconds)
            if way_s > LEAST_WAY_S:
                self._share[question] = min(self._share.get(question, math.inf), seconds / way_s)

    def at_end(self, question: str) -> bool:
        """Tell whether answers came, or may come, when the move was over: nobody else can be heard before that."""
        return self._share.get(question, math.inf) > AT_END_SHARE

    def limit_s(self, question: str, *, way_s: float = 0.0) -> float:
        """Return how long an answer is waited for, seconds."""
        longest = self._longest_s.get(question)
        if longest is None:
            return max(self._timeout_s, WAYS * way_s)
        usual = min(self._timeout_s, max(EXCHANGES * longest, LEAST_S))
        return max(usual, LEAST_S + WAYS * min(self._share.get(question, 1.0), 1.0) * way_s) if way_s > 0.0 else usual
