"""How long an answer is waited for: what a line has shown so far decides, not the longest time that anything may take."""

from __future__ import annotations

#: An answer is lost after so many times the longest that this question has taken, and never before the second number, seconds.
EXCHANGES, LEAST_S = 6.0, 2.0
#: So many different questions are remembered.
MOST_QUESTIONS = 200


class Patience:
    """Times of one line's exchanges, by question; a question that was never answered may take the line's whole time-out."""

    def __init__(self, timeout_s: float) -> None:
        self._timeout_s = timeout_s
        self._longest_s: dict[str, float] = {}

    def took(self, question: str, seconds: float) -> None:
        """Learn how long an answer took; the slowest of late counts."""
        if question in self._longest_s or len(self._longest_s) < MOST_QUESTIONS:
            self._longest_s[question] = max(0.98 * self._longest_s.get(question, 0.0), seconds)

    def limit_s(self, question: str) -> float:
        """Return how long an answer is waited for, seconds."""
        longest = self._longest_s.get(question)
        if longest is None:
            return self._timeout_s
        return min(self._timeout_s, max(EXCHANGES * longest, LEAST_S))
