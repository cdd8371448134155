"""One table of states and legal transitions of an acquisition."""

from __future__ import annotations

from enum import StrEnum


class State(StrEnum):
    """Where an acquisition stands."""

    IDLE = "idle"
    RUNNING = "running"
    PAUSED = "paused"
    STOPPED = "stopped"
    FAULTED = "faulted"
    DONE = "done"


LEGAL: dict[State, frozenset[State]] = {
    State.IDLE: frozenset({State.RUNNING, State.STOPPED, State.FAULTED}),
    State.RUNNING: frozenset({State.PAUSED, State.STOPPED, State.FAULTED, State.DONE}),
    State.PAUSED: frozenset({State.RUNNING, State.STOPPED, State.FAULTED}),
    State.STOPPED: frozenset(),
    State.FAULTED: frozenset(),
    State.DONE: frozenset(),
}


class IllegalTransitionError(RuntimeError):
    """A transition that the table does not allow."""


def check(old: State, new: State) -> State:
    """Return the new state, or raise `IllegalTransitionError`."""
    if new not in LEGAL[old]:
        raise IllegalTransitionError(
            f"{old} cannot become {new}; allowed: {', '.join(sorted(LEGAL[old])) or 'nothing'}"
        )
    return new
