"""The interlock chain: contacts that must be closed, read before every motion and all the time.

A contact that opens brakes at once, from the thread that has seen it. One that cannot be read counts as open. An opening is
remembered until somebody acknowledges it: closing alone never starts motion. Openings shorter than the reading period may
go unseen; the hard-wired chain sees them.
"""

from __future__ import annotations

import threading
import time
from collections.abc import Callable, Sequence
from contextlib import suppress
from dataclasses import dataclass
from typing import Literal

from colure.errors import InstrumentError, MotionError
from colure.instruments.protocols import ContactDriver, DoorOpenError

#: How long a reading under way is waited for at the end, seconds: an interlock's time-out is 2 s at most.
CLOSING_S = 3.0


@dataclass(frozen=True)
class Contact:
    """One contact, what it stands for, and how often it is read (seconds)."""

    name: str
    driver: ContactDriver
    stands_for: Literal["door", "emergency-stop"] = "door"
    every_s: float = 0.05


def _nothing(reason: str) -> None:
    """Nobody has asked to be told."""


class Contacts:
    """All contacts of a range; one thread each once `watch` was called, without it they are read when asked.

    reaction_s
        How long braking took after the newest opening was read, seconds; 0 before any.
    """

    def __init__(self, contacts: Sequence[Contact] = ()) -> None:
        self.contacts = tuple(contacts)
        self.reaction_s = 0.0
        self._lock = threading.Lock()
        self._now: dict[str, str] = {}
        self._seen: dict[str, str] = {}
        self._end = threading.Event()
        self._watching = False
        self._threads: list[threading.Thread] = []
        self._act: Callable[[str], None] = _nothing

    def watch(self, act: Callable[[str], None]) -> None:
        """Read all contacts from now on, and call `act` with the reason, in a thread of the contact, whenever one opens."""
        self._act, self._watching = act, True
        self._threads = [
            threading.Thread(target=self._run, args=(one,), name=f"contact {one.name}", daemon=True)
            for one in self.contacts
        ]
        for thread in self._threads:
            thread.start()

    def close(self) -> None:
        """Read no more; readings under way are waited for, so that their lines can be closed."""
        self._end.set()
        for thread in self._threads:
            if thread is not threading.current_thread():
                thread.join(CLOSING_S)

    def _run(self, contact: Contact) -> None:
        while not self._end.wait(contact.every_s):
            with suppress(Exception):  # whatever goes wrong here, the contact is read again
                self._read(contact)

    def _read(self, contact: Contact) -> str:
        """Read one contact and return why it counts as open; empty if it is closed."""
        try:
            why = "" if contact.driver.closed() else f"{contact.name} is open"
        except InstrumentError as error:
            why = f"{contact.name} cannot be read and counts as open: {error}"
        except Exception as error:
            why = f"{contact.name} counts as open: its driver failed: {type(error).__name__}: {error}"
        if self._end.is_set():
            return why
        begin = time.monotonic()
        with self._lock:
            new = bool(why) and contact.name not in self._now
            if why:
                self._now[contact.name] = why
                self._seen.setdefault(contact.name, why)
            else:
                self._now.pop(contact.name, None)
        if new and self._watching:
            self._act(why)
            self.reaction_s = time.monotonic() - begin
        return why

    def read_all(self) -> None:
        """Read every contact once, now."""
        for contact in self.contacts:
            self._read(contact)

    def open_now(self) -> tuple[str, str]:
        """Return why the door counts as open, and why the emergency stop does, at the moment; empty where closed."""
        if not self._watching:
            self.read_all()
        return self._words(self._now)

    def _words(self, reasons: dict[str, str]) -> tuple[str, str]:
        with self._lock:
            kinds = {contact.name: contact.stands_for for contact in self.contacts}
            door = "; ".join(why for name, why in reasons.items() if kinds[name] == "door")
            stop = "; ".join(why for name, why in reasons.items() if kinds[name] != "door")
        return door, stop

    def require_never_opened(self) -> None:
        """Raise if a contact was open at any time since the last acknowledgement; reads nothing by itself.

        Raises
        ------
        MotionError
            For an emergency stop.
        DoorOpenError
            For a door.
        """
        if self._seen:
            self._refuse(*self._words(self._seen))

    def acknowledge(self) -> None:
        """Read all contacts, forget those that are closed again, and raise like `require_never_opened` for the others."""
        self.read_all()
        with self._lock:
            self._seen = dict(self._now)
        self.require_never_opened()

    def require_closed(self) -> None:
        """Read all contacts now and raise like `require_never_opened` if one is open."""
        if not self.contacts:
            return
        self.read_all()
        self._refuse(*self._words(self._now))

    @staticmethod
    def _refuse(door: str, stop: str) -> None:
        if stop:
            raise MotionError(f"emergency stop: {stop}; make sure why, reset it, then home the axes before going on")
        if door:
            raise DoorOpenError(f"interlock: {door}: close it, make sure that nobody is inside, then resume")
