"""Faults on demand: which operation of a simulated instrument fails, and how, from a list or a seed."""

from __future__ import annotations

import threading

import numpy as np

from colure.model.chamber import SimulatedChamber
from colure.model.faults import PULSE_FAULTS, ROLE_FAULTS, FaultKind

#: Random faults come from these; the others are asked for by name.
RANDOM_ANALYZER = tuple(kind for kind in FaultKind if kind.of_analyzer and kind is not FaultKind.WRONG_IDENTITY)
RANDOM_AXES = tuple(kind for kind in FaultKind if not kind.of_analyzer and kind not in ROLE_FAULTS)

#: Faults of pulses are so much rarer than others: one of them spoils a whole slice.
PULSE_SHARE = 0.1


class SilenceError(Exception):
    """The instrument does not answer this line."""


class HangUpError(Exception):
    """The instrument drops the connection."""


class Faults:
    """Decides, operation by operation, whether a simulated instrument fails now."""

    def __init__(self, truth: SimulatedChamber) -> None:
        self._listed = {
            (fault.kind.of_analyzer, fault.at): fault.kind for fault in truth.faults if fault.kind not in ROLE_FAULTS
        }
        self._of_roles = {(fault.kind, fault.at) for fault in truth.faults if fault.kind in ROLE_FAULTS}
        self._role_count = dict.fromkeys(ROLE_FAULTS, 0)
        self._random = np.random.default_rng((truth.seed, 77))
        self._share = truth.random_faults_per_1000 / 1000.0
        self._count = {True: 0, False: 0}
        self._lock = threading.Lock()
        #: Every fault that happened: (operation number, kind).
        self.happened: list[tuple[int, FaultKind]] = []
        #: The fault of the latest move, for the answer to it.
        self.of_move: FaultKind | None = None

    def reseed(self, seed: tuple[int, ...]) -> None:
        """Draw the random faults from another seed from now on."""
        with self._lock:
            self._random = np.random.default_rng((*seed, 77))

    def next_sweep(self) -> FaultKind | None:
        """Count a sweep and return the fault it suffers, if any."""
        return self._next(of_analyzer=True)

    def next_move(self) -> FaultKind | None:
        """Count a move and return the fault it suffers, if any."""
        self.of_move = self._next(of_analyzer=False)
        return self.of_move

    def of(self, kind: FaultKind) -> bool:
        """Count an operation of a smaller instrument and tell whether it suffers its fault now."""
        with self._lock:
            self._role_count[kind] += 1
            number = self._role_count[kind]
            faulty = (kind, number) in self._of_roles
            if kind in PULSE_FAULTS and self._share > 0.0:
                faulty |= bool(self._random.random() < PULSE_SHARE * self._share)
            if faulty:
                self.happened.append((number, kind))
            return faulty

    def _next(self, *, of_analyzer: bool) -> FaultKind | None:
        with self._lock:
            self._count[of_analyzer] += 1
            number = self._count[of_analyzer]
            kind = self._listed.get((of_analyzer, number))
            if kind is None and self._share > 0.0 and self._random.random() < self._share:
                choices = RANDOM_ANALYZER if of_analyzer else RANDOM_AXES
                kind = choices[int(self._random.integers(len(choices)))]
            if kind is not None:
                self.happened.append((number, kind))
            return kind
