"""The simulated analyzer's memory of sweeps: filled pulse by pulse while an axis runs, read once at the end."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from colure.model.faults import FaultKind
from colure.twin.motion import Stage
from colure.twin.stages import StageSet

#: How much later than a sweep a pulse must come to be another one, seconds.
APART_S = 1e-9


@dataclass(frozen=True)
class Swept:
    """Traces by port after a sweep, when they were there, and the fault that the sweep suffered."""

    traces: dict[int, np.ndarray]
    finish_s: float
    fault: FaultKind | None


class KeptSweeps:
    """Waits for pulses once it was started; what has passed is looked up when somebody asks.

    sweep
        Makes one sweep, begun at a moment, or at a moment for every frequency.
    """

    def __init__(self, stage: Stage | StageSet, sweep: Callable[[float | np.ndarray], Swept]) -> None:
        self._stage, self._sweep = stage, sweep
        self.traces: list[dict[int, np.ndarray]] = []
        self.begun_s: list[float] = []
        self._wanted, self._from_s, self._deaf = 0, 0.0, False
        #: Moments of the pulses that were heard one by one, each for a frequency.
        self.heard_s: list[float] = []
        self._begun: list[float] = []

    @property
    def waits(self) -> bool:
        """Tell whether it waits for a pulse."""
        return not self._deaf and len(self.traces) < self._wanted

    def start(self, wanted: int) -> None:
        """Wait for so many pulses from now on; never, if that is its fault."""
        self.traces, self.begun_s = [], []
        self._wanted, self._from_s = wanted, self._stage.clock.now()
        self._deaf = self._stage.faults.of(FaultKind.NEVER_READY)
        self.heard_s, self._begun = [], []

    def end(self) -> None:
        """Wait no longer."""
        self._wanted = 0

    def collect(self) -> FaultKind | None:
        """Sweep at every pulse that has come meanwhile; return the first fault among them."""
        fault, faults = None, self._stage.faults
        while self.waits:
            moment = self._stage.next_pulse(self._from_s)
            if moment is None or moment > self._stage.clock.now():
                break
            self._from_s = moment + APART_S
            if faults.of(FaultKind.PULSE_LOST):
                continue
            again = faults.of(FaultKind.PULSE_DOUBLED)
            for begin in (moment, None)[: 1 + again]:
                self.begun_s.append(self._from_s if begin is None else begin)
                swept = self._sweep(self.begun_s[-1])
                self.traces.append(swept.traces)
                # A pulse that comes during a sweep is not heard.
                self._from_s = swept.finish_s + APART_S
                fault = fault or swept.fault
        return fault

    def collect_points(self, lasts_s: np.ndarray) -> FaultKind | None:
        """Measure one frequency at every pulse that has come meanwhile, each for its time; return the first fault of a sweep."""
        fault, faults = None, self._stage.faults
        for moment in self._stage.pulses_after(self._from_s):
            if not self.waits or moment > self._stage.clock.now():
                break
            # A pulse that comes during a frequency is not heard.
            if moment < self._from_s or faults.of(FaultKind.PULSE_LOST):
                continue
            for _ in range(1 + faults.of(FaultKind.PULSE_DOUBLED)):
                begin = max(moment, self._from_s)
                self.heard_s.append(begin)
                self._begun.append(begin)
                self._from_s = begin + float(lasts_s[len(self._begun) - 1])
                if len(self._begun) == lasts_s.size:
                    swept = self._sweep(np.array(self._begun))
                    self.begun_s.append(self._begun[0])
                    self.traces.append(swept.traces)
                    self._begun, self._from_s = [], swept.finish_s
                    fault = fault or swept.fault
        return fault
