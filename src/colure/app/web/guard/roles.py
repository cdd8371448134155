"""What a session may do."""

from __future__ import annotations

from enum import IntEnum
from typing import Literal, cast

RoleWord = Literal["nobody", "view", "operate", "configure"]


class SessionRole(IntEnum):
    """What a session may do; each includes those before it. `NOBODY` is who has no session."""

    NOBODY = 0
    VIEW = 1
    OPERATE = 2
    CONFIGURE = 3

    @property
    def word(self) -> RoleWord:
        """The role as people say it."""
        return cast("RoleWord", self.name.lower())
