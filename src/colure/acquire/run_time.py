"""The time of a run: the instrument's clock, which goes on where that clock begins anew."""

from __future__ import annotations

from colure.acquire.clocks import Clock

#: A clock that is asked before one sweep and after another may seem to go back by less than this, seconds.
BACK_S = 1.0
#: Two clocks that tell of the same pause differ by less than this and a thousandth of it, seconds (common practice, no source).
APART_S, APART = 10.0, 1e-3
#: No pause is shorter than this, seconds: a computer's date may have been lost as well, and no two points share a moment.
SHORTEST_S = 1.0


class RunTime:
    """Turns what the instrument's clock shows into moments of the run.

    A clock begins anew at midnight, at a restart of the instrument, and at one of the computer where that one's is taken. Drift
    is told by moments: those of two sessions must not be mixed. Between sessions the computer's date says how long the pause was.
    """

    def __init__(self, clock: Clock) -> None:
        self._clock = clock
        self._shift_s = 0.0
        self._last: tuple[float, float] | None = None
        self._entering = False
        self._news: list[str] = []

    def resumed(self, time_s: float, wall_s: float) -> None:
        """Go on after the newest point of an earlier session."""
        self._last, self._entering = (time_s, wall_s), True

    def of(self, shown_s: float) -> float:
        """Return the moment of the run at which the instrument's clock shows so many seconds."""
        wall_s = self._clock.wall()
        if self._last is not None:
            self._compare(shown_s, wall_s, *self._last)
        self._last, self._entering = (shown_s + self._shift_s, wall_s), False
        return self._last[0]

    def _compare(self, shown_s: float, wall_s: float, last_s: float, last_wall_s: float) -> None:
        pause_s = max(SHORTEST_S, self._clock.of_real(wall_s - last_wall_s))
        step_s = shown_s + self._shift_s - last_s
        unlike = abs(step_s - pause_s) > APART_S + APART * pause_s
        if step_s < -BACK_S or (self._entering and self._clock.real_time and unlike):
            self._shift_s += pause_s - step_s
            self._news.append(
                f"the instrument's clock went on by {step_s:.0f} s since the last point, the computer's date by {pause_s:.0f} s: "
                "the date is taken"
            )

    def news(self) -> list[str]:
        """Return what was put right since the last call."""
        texts, self._news = self._news, []
        return texts
