"""The axes of several simulated controllers as the analyzer sees them: all of them turn the same device and probe."""

from __future__ import annotations

import threading
from collections.abc import Sequence

from colure.twin.clock import SimulatedClock
from colure.twin.faults import Faults
from colure.twin.motion import Stage


class StageSet:
    """What the analyzer asks of the axes, over all controllers; axes that nobody turns stand at 0."""

    def __init__(self, stages: Sequence[Stage], fixed: Sequence[str] = ()) -> None:
        self.stages = tuple(stages)
        self._fixed = dict.fromkeys(fixed, 0.0)

    @property
    def clock(self) -> SimulatedClock:
        """The one clock of the chamber."""
        return self.stages[0].clock

    @property
    def faults(self) -> Faults:
        """The one list of faults of the chamber."""
        return self.stages[0].faults

    @property
    def held(self) -> threading.Event:
        """Whether the controller that gives pulses is held."""
        return self._pulsing.held

    @property
    def _pulsing(self) -> Stage:
        return next((stage for stage in self.stages if stage.pulses is not None), self.stages[0])

    def busy_until(self) -> float:
        """Return when the last axis stands."""
        return max(stage.busy_until() for stage in self.stages)

    def true_positions(self, moment: float) -> dict[str, float]:
        """Return where all axes really are."""
        out = dict(self._fixed)
        for stage in self.stages:
            out |= stage.true_positions(moment)
        return out

    def next_pulse(self, after: float) -> float | None:
        """Return the next moment at which a pulse comes."""
        return self._pulsing.next_pulse(after)

    def pulses_after(self, after: float) -> list[float]:
        """Return the moments at which pulses come, in their order."""
        return self._pulsing.pulses_after(after)

    def stand_at(self, positions_deg: dict[str, float]) -> None:
        """Let axes stand where an earlier session left them."""
        for stage in self.stages:
            stage.stand_at(positions_deg)

    def rest_positions(self) -> dict[str, float]:
        """Brake, and return where the axes' counts come to stand."""
        out: dict[str, float] = {}
        for stage in self.stages:
            out |= stage.rest_positions()
        return out
