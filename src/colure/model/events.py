"""What the engine tells the world: plain events, subscribed to by anyone who watches."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Any


@dataclass(frozen=True)
class Event:
    """One thing that happened.

    kind
        `state`, `point`, `tie`, `warning`, `stop`, `ask`, `known` (of the figures, so far) or `done`.
    text
        The same in plain words.
    """

    kind: str
    text: str
    data: dict[str, Any] = field(default_factory=dict)


Listener = Callable[[Event], None]


def nobody(event: Event) -> None:
    """Listen to nothing."""
