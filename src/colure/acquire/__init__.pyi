from .engine import Engine, Options, Outcome
from .guard import Guard, GuardError
from .journal import Journal, JournalError, Verification
from .seal import record_of
from .states import State

__all__ = [
    "Engine",
    "Guard",
    "GuardError",
    "Journal",
    "JournalError",
    "Options",
    "Outcome",
    "State",
    "Verification",
    "record_of",
]
