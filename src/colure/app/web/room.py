"""The control room itself: campaigns, sessions, the desk's workers, and the one scan that may run."""

from __future__ import annotations

import asyncio
import functools
import hashlib
import json
import sys
import time
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path
from typing import Any, cast

from colure.app.web.desk import Desk
from colure.app.web.guard.hidden import without
from colure.app.web.guard.sessions import Lease, Sessions
from colure.app.web.jobs import Jobs
from colure.app.web.scan.before import require_startable
from colure.app.web.scan.hand import Action
from colure.app.web.scan.layout import Kind, layout_for
from colure.app.web.scan.live import LiveScan
from colure.app.web.scan.messages import ByHand, Hand
from colure.app.web.views.preparing import Checked
from colure.errors import InputError

#: A line of the scan's process is never longer.
LONGEST_LINE = 4 << 20
#: Shutdown time-out in seconds: so long a scan may brake and seal its record.
FAREWELL_S = 20.0


class Stale(Exception):  # noqa: N818 - an answer, not an error
    """A command that was meant for another moment."""


class Room:
    """Everything the doors lead to. Lives in the server's one thread; slow work is done at the desk."""

    def __init__(self, folders: list[Path]) -> None:
        self.sessions, self.lease, self.desk = Sessions(), Lease(), Desk()
        self.folders = {campaign_id(folder): folder.resolve() for folder in folders}
        self.scan: LiveScan | None = None
        #: Grows with every command that was accepted: a command names the one it follows.
        self.sequence = 0
        self._child: asyncio.subprocess.Process | None = None
        self._hearing: asyncio.Task[None] | None = None
        self.jobs = Jobs(self.desk, self.shown)
        #: What axes or receiver do by hand at this moment; None if nothing.
        self.by_hand: Hand | None = None
        #: The last answers of the instruments, by campaign.
        self.checked: dict[str, Checked] = {}
        #: Tells whether the server is told to end: watchers are let go then.
        self.leaving: Callable[[], bool] = lambda: False

    def folder(self, campaign: str) -> Path:
        """Return a campaign's folder by its id; raises `InputError` if there is none."""
        if campaign not in self.folders:
            raise InputError([f"campaign = {campaign!r}: is none of this room's"])
        return self.folders[campaign]

    def shown(self, text: str) -> str:
        """Return what a page is told of a refusal: without the server's folders."""
        for folder in sorted(self.folders.values(), key=lambda one: -len(str(one))):
            text = without(folder, text)
        return text

    def require_current(self, sequence: int) -> None:
        """Raise `Stale` for a command that follows another state of things than the present one."""
        if sequence != self.sequence:
            raise Stale(f"sequence = {sequence}: must be {self.sequence}; somebody else gave a command meanwhile")

    async def start(
        self, campaign: str, run: str, *, kind: Kind, home: bool, despite_check: bool = False, again: str = ""
    ) -> None:
        """Start a scan, go on with one that was interrupted, or measure slices of a finished one `again`.

        Raises
        ------
        InputError
            If one runs already, the campaign cannot be planned, or a check did not pass and nobody said `despite_check`.
        """
        folder = self.folder(campaign)
        self.require_idle()
        await self.desk.do(
            functools.partial(require_startable, despite_check=despite_check, again=again), folder, run, kind
        )
        layout = await self.desk.do(layout_for, folder, run, kind, again)
        if self.busy:
            raise InputError(["a scan was started meanwhile"])
        words = ["--kind", kind, *(["--home"] if home else []), *(["--despite-check"] if despite_check else [])]
        words += [f"--again={again}"] if again else []
        self._child = await asyncio.create_subprocess_exec(
            sys.executable, "-m", "colure.app.web.scan.child", str(folder), run, *words,
            stdin=asyncio.subprocess.PIPE, stdout=asyncio.subprocess.PIPE, limit=LONGEST_LINE, start_new_session=True,
        )  # fmt: skip
        self.scan = LiveScan(campaign, run, layout, kind=kind)
        self.sequence += 1
        self._hearing = asyncio.create_task(self._hear(self._child, self.scan))

    @property
    def busy(self) -> bool:
        """Tell whether a scan's process is there."""
        return self._child is not None and self._child.returncode is None

    def say(self, word: str) -> bool:
        """Give the scan a word at once, without waiting for anything; False if there is no scan."""
        if not self.busy or self._child is None or self._child.stdin is None:
            return False
        self._child.stdin.write(word.encode() + b"\n")
        self.sequence += 1
        return True

    async def _hear(self, child: asyncio.subprocess.Process, scan: LiveScan) -> None:
        assert child.stdout is not None  # it was asked for
        while line := await child.stdout.readline():
            try:
                scan.hear(json.loads(line))
            except Exception as error:  # whatever it is, the pipe must go on being read
                scan.stumbled(error)
        scan.ended(await child.wait())
        self.sequence += 1

    def require_idle(self) -> None:
        """Raise `InputError` while something may move."""
        if self.busy:
            what = (
                self.by_hand["text"] if self.by_hand else f"a scan is under way ({self.scan.run if self.scan else ''})"
            )
            raise InputError([f"{what}; stop it first, or wait"])

    async def hand(
        self,
        campaign: str,
        action: Action,
        values: dict[str, float],
        words: str,
        speed_deg_s: float | None = None,
    ) -> ByHand:
        """Do one thing by hand, in a process of its own that every stop reaches, and return what was found.

        Raises
        ------
        InputError
            If something moves already, or with the reason why it was not done.
        """
        folder = self.folder(campaign)
        self.require_idle()
        self.by_hand = {"campaign": campaign, "text": words, "began": time.time()}
        self.sequence += 1
        try:
            self._child = await asyncio.create_subprocess_exec(
                sys.executable, "-m", "colure.app.web.scan.hand", str(folder), action, json.dumps(values),
                *([] if speed_deg_s is None else ["--speed", repr(speed_deg_s)]), stdin=asyncio.subprocess.PIPE, stdout=asyncio.subprocess.PIPE, limit=LONGEST_LINE, start_new_session=True,
            )  # fmt: skip
            child = self._child
            assert child.stdout is not None  # it was asked for
            lines = (await child.stdout.read()).splitlines()
            await child.wait()
        finally:
            self.by_hand = None
            self.sequence += 1
        answer: dict[str, Any] = json.loads(lines[-1]) if lines else {"faults": [f"{words}: ended without an answer"]}
        if "faults" in answer:
            raise InputError(answer["faults"])
        return cast("ByHand", answer["found"])

    async def close(self) -> None:
        """Leave the room: a scan brakes, seals its record and ends; then the workers end."""
        if self.busy and self._child is not None and self._child.stdin is not None:
            self._child.stdin.close()
            with suppress(TimeoutError):
                await asyncio.wait_for(self._child.wait(), FAREWELL_S)
        self.jobs.close()
        self.desk.close()


def campaign_id(folder: Path) -> str:
    """Return an id for a folder: no path ever crosses the door."""
    return hashlib.sha256(str(folder.resolve()).encode()).hexdigest()[:12]


def stamp() -> str:
    """Return the time as a part of a file's name."""
    return time.strftime("%Y%m%d-%H%M%S")
