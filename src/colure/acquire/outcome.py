"""What a run is told beforehand, what it counts on the way, and how it ended."""

from __future__ import annotations

from dataclasses import dataclass, field

from colure.acquire.states import State


@dataclass(frozen=True)
class Options:
    """How a run behaves.

    home
        Home the axes before anything else.
    position_confirmed
        A person has looked: the readouts are right although they do not follow from where the run left the axes.
    pause_limit_s
        A pause that nobody ends becomes a stop after this, real seconds.
    again
        Points of the plan that are measured again, and nothing else; none: what the journal does not hold yet.
    said
        What a person asked for then, in words for the journal.
    threads
        Watchdog and patient waiting; without them everything runs in one thread, repeatably.
    """

    home: bool = False
    position_confirmed: bool = False
    pause_limit_s: float = 1800.0
    again: frozenset[int] = frozenset()
    said: str = ""
    threads: bool = True


@dataclass(frozen=True, kw_only=True)
class Outcome:
    """How a run ended."""

    state: State
    reason: str
    measured: int
    total: int
    flagged: int = 0


@dataclass
class Tally:
    """What has been measured so far."""

    measured: set[int] = field(default_factory=set)
    flagged: int = 0
    #: Instrument time of the newest point.
    time_s: float = 0.0
