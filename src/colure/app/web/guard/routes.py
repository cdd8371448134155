"""Who may do what: every door of the control room is listed with its rule, and a door without one does not open."""

from __future__ import annotations

from collections.abc import Awaitable, Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Literal

from pydantic import BaseModel

from colure.app.web.guard.roles import SessionRole

if TYPE_CHECKING:
    from colure.app.web.guard.sessions import Session


HttpMethod = Literal["GET", "POST", "WS"]


@dataclass(frozen=True)
class Door:
    """One thing that the control room can be asked for.

    path
        Fixed text with `{name}` for one part that holds an id.
    lease
        True: only who holds the motion lease.
    reserved
        True: never refused for load, and outside the rate limit. Stop, and only stop.
    body
        What a POST must hold, validated before the handler sees it.
    handler
        Called with the control room, the session, the ids of the path and the body.
    """

    method: HttpMethod
    path: str
    role: SessionRole
    summary: str
    handler: Callable[[Any, Session, dict[str, str], Any], Awaitable[Any]] | None = None
    body: type[BaseModel] | None = None
    lease: bool = False
    reserved: bool = False

    def match(self, path: str) -> dict[str, str] | None:
        """Return the ids in a path if it is this door's, else None."""
        mine, theirs = self.path.split("/"), path.split("/")
        if len(mine) != len(theirs):
            return None
        ids = {}
        for one, other in zip(mine, theirs, strict=True):
            if one.startswith("{"):
                # A file of the page has one dot; it is looked up in a table, never opened.
                if not is_id(other.replace(".", "", 1) if one == "{name}" else other):
                    return None
                ids[one[1:-1]] = other
            elif one != other:
                return None
        return ids


def is_id(text: str) -> bool:
    """Tell whether a text can be an id: no id is ever part of a path that is opened."""
    return 0 < len(text) <= 80 and all(c.isascii() and (c.isalnum() or c in "-_") for c in text)


def find(doors: tuple[Door, ...], method: str, path: str) -> tuple[Door, dict[str, str]] | None:
    """Return the door and the ids that a request asks for; None if there is none."""
    for door in doors:
        if door.method == method and (ids := door.match(path)) is not None:
            return door, ids
    return None
