"""One table of states and legal transitions of an acquisition."""

from __future__ import annotations

from enum import StrEnum


class State(StrEnum):
    """Where an acquisition stands.

    Paused waits for a person; stopped was asked for and resumes; aborted took the drives'
    power and faulted met something it may not pass: both need a person, then resume as well.
    """

    IDLE = "idle"
    RUNNING = "running"
    PAUSED = "paused"
    STOPPED = "stopped"
    ABORTED = "aborted"
    FAULTED = "faulted"
    DONE = "done"


_ENDS = frozenset({State.STOPPED, State.ABORTED, State.FAULTED})

LEGAL: dict[State, frozenset[State]] = {
    State.IDLE: frozenset({State.RUNNING}) | _ENDS,
    State.RUNNING: frozenset({State.PAUSED, State.DONE}) | _ENDS,
    State.PAUSED: frozenset({State.RUNNING}) | _ENDS,
    State.STOPPED: frozenset(),
    State.ABORTED: frozenset(),
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
