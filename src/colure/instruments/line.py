"""One line of text to a controller: every line that comes in is sorted before anybody takes it for an answer.

A controller answers, but it also greets, echoes, chats by itself, raises alarms and restarts. What is not the answer to
the question must never be taken for it. After anything that leaves in doubt whose answer comes next (a time-out, a hold
in the middle of an exchange, a line that nobody asked for), a sentinel query with an answer of its own is sent, and
everything before that answer is thrown away.
"""

from __future__ import annotations

import queue
import re
import threading
import time
from collections import deque
from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass, field, replace

from colure.errors import MotionError
from colure.instruments.links import LineEnds
from colure.instruments.patience import Patience
from colure.instruments.protocols import HeldError, LostError, unheard
from colure.instruments.wires import SerialWire, Wire, WireOpener, open_wire

#: Tells whether somebody has asked for a hold.
HoldAsked = Callable[[], bool]
#: Somebody who waits for a line looks up this often, seconds; an answer is passed on at once.
LOOK_S = 0.05
#: Lines of one answer, characters of one line, and sentinels sent before the line is given up.
MOST_LINES, LONGEST_LINE, SENTINELS = 1000, 65536, 3
#: The answer to a move that was broken off comes within this time, or never, seconds.
BRAKED_S = 0.5


def _never() -> bool:
    """Nobody asks for a hold any more."""
    return False


@dataclass(frozen=True)
class LineRules:
    """How lines end, and which of them are not answers (regular expressions; empty: there are none).

    sync, sync_pattern, sync_rest
        The sentinel, the line of its answer that no other answer holds, and how many lines follow it.
    hold_answer
        What the controller says to a hold.
    """

    ends: LineEnds = field(default_factory=LineEnds)
    echo: bool = False
    prompt: str = ""
    pace_s: float = 0.0
    greeting: str = ""
    restart: str = ""
    messages: str = ""
    arrived: str = ""
    alarm: str = ""
    hold_answer: str = ""
    sync: str = ""
    sync_pattern: str = ""
    sync_rest: int = 0


@dataclass(frozen=True)
class ExpectedReply:
    """The answer that a command has: a number of lines, or all lines until one matches `end`.

    expect
        Pattern of the answer's lines; also tells them from restart messages that look alike.
    fault
        Pattern of a refusal, which stands for the whole answer.
    """

    lines: int = 1
    end: str = ""
    expect: str = ""
    fault: str = ""


def _fits(pattern: str, text: str) -> re.Match[str] | None:
    return re.search(pattern, text) if pattern else None


@dataclass(eq=False)
class Inbox:
    """What one connection has brought: bytes of a line that is not whole yet, and lines that are answers."""

    lines: queue.SimpleQueue[str | LostError] = field(default_factory=queue.SimpleQueue)
    buffer: bytes = b""


@dataclass
class Heard:
    """What came in that was no answer; kept until somebody has dealt with it."""

    alarm: str = ""
    restart: str = ""
    arrived: deque[str] = field(default_factory=lambda: deque(maxlen=200))
    hold: threading.Event = field(default_factory=threading.Event)


class ControllerLine:
    """Exchanges with one controller; `shout` passes them by.

    Raises
    ------
    LostError
        From every exchange that is not answered as it should be.
    HeldError
        From an exchange that a hold has interrupted.
    MotionError
        From every exchange after the controller has restarted: its counts may be lost.
    """

    def __init__(self, resource: str, rules: LineRules, *, timeout_s: float, opener: WireOpener = open_wire) -> None:
        self.resource = resource
        self.rules = rules
        self.heard: Callable[[], None] = unheard
        self.news = Heard()
        self.timeout_s = timeout_s
        self.patience = Patience(timeout_s)
        self._opener = opener
        self._exchange_lock, self._send_lock = threading.Lock(), threading.Lock()
        self._read_end = rules.ends.read.encode("latin-1")
        self._hold_count = 0
        #: Why the line is closed after it could not be opened anew; empty while there is a wire.
        self._closed = ""
        self._open()

    def _open(self) -> None:
        self._wire: Wire = self._opener(self.resource, timeout_s=self.timeout_s, ends=self.rules.ends)
        self._inbox = Inbox()
        self._wanted: ExpectedReply | None = None
        self._asked = ""
        self._echoes: deque[str] = deque(maxlen=50)
        self._syncs_due = 0
        self._holds = 0
        self._sent_s = 0.0
        # Nobody knows what an earlier user has left on a serial line.
        self._doubt = "the line was opened" if self.rules.sync else ""
        if self._wire.threaded:
            threading.Thread(target=self._read, args=(self._wire, self._inbox), name="line-reader", daemon=True).start()

    def _read(self, wire: Wire, inbox: Inbox) -> None:
        """Read until the wire breaks or is closed; whoever waits is told."""
        try:
            while self._inbox is inbox:
                self._take_in(wire.receive(1.0), inbox)
        except LostError as error:
            inbox.lines.put(error)

    def _take_in(self, data: bytes, inbox: Inbox) -> None:
        """Cut bytes into lines and sort them."""
        inbox.buffer += data
        while self._read_end in inbox.buffer:
            raw, inbox.buffer = inbox.buffer.split(self._read_end, 1)
            # Lines that end in CR LF are read by either half alone; NUL fills the gaps of some serial adapters.
            text = raw.decode("latin-1").strip(" \t\r\n\0")
            if self.rules.prompt:
                # It has no line end of its own, and stands before whatever comes next.
                text = re.sub(f"^(?:{self.rules.prompt})+", "", text).strip(" \t\r\n\0")
            if text and inbox is self._inbox:
                self.heard()
                self._sort(text, inbox.lines)
        if len(inbox.buffer) > LONGEST_LINE:
            inbox.buffer = b""
            text = f"{self.resource}: {LONGEST_LINE} characters without the line end {self._read_end!r}"
            inbox.lines.put(LostError(text))

    def _sort(self, text: str, lines: queue.SimpleQueue[str | LostError]) -> None:
        """Give a line to whom it belongs: alarm, answer awaited by name, restart, greeting, message, hold, echo, answer."""
        rules, wanted = self.rules, self._wanted
        if _fits(rules.alarm, text):
            self.news.alarm = text
            return
        if wanted is not None and (_fits(wanted.expect, text) or _fits(wanted.end, text)):
            lines.put(text)
            return
        if _fits(rules.restart, text):
            self.news.restart = text
            self._doubt = f"the controller restarted ({text!r})"
        elif _fits(rules.arrived, text):
            self.news.arrived.append(text)
        elif _fits(rules.greeting, text) or _fits(rules.messages, text):
            return
        elif self._holds and _fits(rules.hold_answer, text):
            self._holds -= 1
            self.news.hold.set()
        elif text in self._echoes:
            # Whatever was sent before it has been echoed too, or never will be.
            while self._echoes and self._echoes.popleft() != text:
                pass
        elif self._syncs_due and self._asked != rules.sync and _fits(rules.sync_pattern, text):
            self._syncs_due -= 1
        elif wanted is None:
            self._doubt = f"{text[:60]!r} came although nothing was asked"
        else:
            lines.put(text)

    def exchange(
        self,
        text: str,
        wanted: ExpectedReply,
        *,
        raw: bool = False,
        limit_s: float | None = None,
        unless: HoldAsked | None = None,
        question: str = "",
        way_s: float = 0.0,
    ) -> list[str]:
        """Send one line (`raw`: without its end) and return the lines of its answer.

        question
            Which question it is: it is waited for as long as this one's answers have taken so far allow.
        way_s
            How long the move that it commands should take: its answer may come at the end.
        unless
            Looked at in the moment of sending: nothing is sent once it is true, so that no motion follows a hold.
        """
        with self._exchange_lock:
            if self._doubt:
                self._get_in_step()
            holds = self._hold_count
            lost: LostError | None = None
            lines: list[str] = []
            try:
                lines = self._ask(text, wanted, raw=raw, limit_s=limit_s, unless=unless, question=question, way_s=way_s)
            except LostError as error:
                lost = error
            self._require_running()
            if self._hold_count != holds:
                # Nobody knows whose answer this is.
                self._doubt = "a hold came between question and answer"
                raise HeldError(f"{self.resource}: held by this program")
            if lost is not None:
                raise lost
            return lines

    def _require_wire(self) -> None:
        """Raise `LostError` with the reason if the line could not be opened anew."""
        if self._closed:
            raise LostError(self._closed)

    def _require_running(self) -> None:
        """Raise `MotionError` if the controller has restarted since it was connected."""
        if self.news.restart:
            raise MotionError(
                f"{self.resource}: the controller restarted ({self.news.restart[:60]!r}): its counts may be lost; home the axes"
            )

    def _ask(
        self, text: str, wanted: ExpectedReply, *, raw: bool = False, limit_s: float | None = None, rest: int = 0,
        unless: HoldAsked | None = None, question: str = "", way_s: float = 0.0,
    ) -> list[str]:  # fmt: skip
        self._discard()
        limit_s = self.patience.limit_s(question, way_s=way_s) if limit_s is None else limit_s
        # Who answers at the end of a move, or may, says nothing before: its silence is no sign of a dead line.
        silent_way = way_s > 0.0 and self.patience.at_end(question)
        self._asked = text
        silent = wanted.lines == 0 and not wanted.end
        self._wanted = None if silent else wanted
        try:
            self._put(text + ("" if raw else self.rules.ends.write), unless)
            sent_s = time.monotonic()
            lines = [] if silent else self._collect(text, wanted, limit_s, unless=unless, silent_way=silent_way)
            if question and not (unless is not None and unless()):
                self.patience.took(question, time.monotonic() - sent_s, way_s=way_s)
            return lines + (self._collect(text, ExpectedReply(lines=rest), self.timeout_s) if rest else [])
        except LostError as error:
            self._doubt = str(error)
            raise
        finally:
            self._wanted = None

    def _collect(
        self,
        text: str,
        wanted: ExpectedReply,
        limit_s: float,
        *,
        unless: HoldAsked | None = None,
        silent_way: bool = False,
    ) -> list[str]:
        lines: list[str] = []
        end_s = time.monotonic() + limit_s
        while len(lines) < MOST_LINES:
            left_s = limit_s if not self._wire.threaded else max(end_s - time.monotonic(), 0.0)
            line = self._next(left_s) if unless is None else self._next_of_move(left_s, unless, silent_way=silent_way)
            if line is None:
                got = f" after {lines[-1][:60]!r}" if lines else ""
                raise LostError(f"{self.resource}: no answer to {text!r} within {limit_s:g} s{got}")
            if not self.rules.echo and line == text and not _fits(wanted.expect, line):
                raise LostError(f"{self.resource}: {text!r} came back as it was sent: set `echo = true` in [line]")
            lines.append(line)
            if _fits(wanted.fault, line):
                return [line]
            if _fits(wanted.end, line) or (not wanted.end and len(lines) >= wanted.lines):
                return lines
        raise LostError(f"{self.resource}: {MOST_LINES} lines after {text!r} and no end {wanted.end!r}")

    def _next(self, limit_s: float) -> str | None:
        """Return the next line that is an answer; None if none comes in time."""
        waited = 0.0
        while True:
            try:
                item = self._inbox.lines.get(timeout=limit_s) if self._wire.threaded else self._inbox.lines.get_nowait()
            except queue.Empty:
                if self._wire.threaded or waited >= limit_s:
                    return None
                step = min(LOOK_S, limit_s - waited)
                data = self._wire.receive(step)
                waited += 0.0 if data else step
                self._take_in(data, self._inbox)
                continue
            if isinstance(item, LostError):
                self._inbox.lines.put(item)  # the wire stays broken for whoever comes next
                raise LostError(str(item))
            return item

    def _next_of_move(self, limit_s: float, unless: HoldAsked, *, silent_way: bool) -> str | None:
        """Return the next answer to the command of a move; a hold cuts the wait short, and `silent_way` gives signs of life."""
        left_s = limit_s
        while True:
            step = min(LOOK_S, left_s)
            line = self._next(step)
            left_s -= step
            if line is not None or left_s <= 0.0:
                return line
            if unless():
                # Braked axes do not arrive; what is said to that comes soon or never.
                left_s = min(left_s, BRAKED_S)
                unless = _never
            elif silent_way:
                self.heard()

    def first(self, text: str, wanted: ExpectedReply, *, limit_s: float, raw: bool = False) -> list[str]:
        """Exchange before the sentinel is known: whose answer comes is for the caller to find out."""
        with self._exchange_lock:
            self._require_wire()
            self._doubt = ""
            return self._ask(text, wanted, raw=raw, limit_s=min(limit_s, self.timeout_s))

    def get_in_step(self) -> None:
        """Send the sentinel now; raises `LostError` if it is not answered."""
        with self._exchange_lock:
            self._get_in_step()

    def distrust(self, reason: str) -> None:
        """Send the sentinel before the next question."""
        self._doubt = reason

    @property
    def fresh(self) -> bool:
        """Whether a new connection begins with nothing under way."""
        return self._wire.fresh

    def post(self, text: str, wanted: ExpectedReply, *, raw: bool = False, unless: HoldAsked | None = None) -> None:
        """Send a line whose answer comes when it comes; `take` waits for it. No exchange in between, nothing if `unless`."""
        with self._exchange_lock:
            if self._doubt:
                self._get_in_step()
            self._require_running()
            self._asked, self._wanted = text, wanted
            self._put(text + ("" if raw else self.rules.ends.write), unless)

    def take(self, limit_s: float) -> str | None:
        """Return the next answer to what was posted; None if it does not come in time."""
        line = self._next(limit_s)
        self._require_running()
        return line

    def listen(self, limit_s: float) -> None:
        """Let a wire without a reader of its own take in what has come by itself."""
        if not self._wire.threaded:
            with self._exchange_lock:
                self._take_in(self._wire.receive(limit_s), self._inbox)

    def _discard(self) -> None:
        """Throw away what nobody waits for any more; a broken wire stays broken."""
        while not self._inbox.lines.empty():
            item = self._inbox.lines.get()
            if isinstance(item, LostError):
                self._inbox.lines.put(item)
                raise LostError(str(item))

    def _get_in_step(self) -> None:
        """Send the sentinel until its answer comes: everything before belongs to the past."""
        if not self.rules.sync:
            if not self._wire.fresh:
                raise LostError(
                    f"{self.resource}: out of step: {self._doubt}; the profile has neither `identity` nor `sync`"
                )
            # A new connection begins with nothing under way.
            self._reconnect()
            return
        self._require_wire()
        for _ in range(SENTINELS):
            self._doubt = ""
            self._syncs_due += 1
            wanted = ExpectedReply(end=self.rules.sync_pattern)
            with suppress(LostError):
                self._ask(self.rules.sync, wanted, rest=self.rules.sync_rest, question=self.rules.sync)
                self._syncs_due -= 1
                return
            with suppress(queue.Empty):
                item = self._inbox.lines.get_nowait()
                if isinstance(item, LostError):
                    self._inbox.lines.put(item)
                    raise LostError(str(item))
        self._doubt = "the sentinel was not answered"
        raise LostError(
            f"{self.resource}: {self.rules.sync!r} was not answered by {self.rules.sync_pattern!r} in {SENTINELS} attempts"
        )

    def _put(self, text: str, unless: HoldAsked | None = None) -> None:
        if self.rules.pace_s > 0.0:
            time.sleep(max(0.0, self._sent_s + self.rules.pace_s - time.monotonic()))
        if unless is not None and unless():
            raise HeldError(f"{self.resource}: held by this program")
        if self.rules.echo:
            self._echoes.append(text.strip(" \t\r\n\0" + self.rules.ends.write))
        with self._send_lock:
            # Whoever holds says so before he sends: what passes here is braked by it.
            if unless is not None and unless():
                raise HeldError(f"{self.resource}: held by this program")
            self._wire.send(text.encode("latin-1"))
        self._sent_s = time.monotonic()

    def shout(self, text: str) -> None:
        """Send at once, past any exchange that is under way."""
        self._require_wire()
        self.news.hold.clear()
        self._holds += 1 if self.rules.hold_answer else 0
        self._hold_count += 1
        if self.rules.echo:
            self._echoes.append(text.strip(" \t\r\n\0" + self.rules.ends.write))
        if isinstance(self._wire, SerialWire):
            self._wire.send_on()  # whoever waits to be allowed to send holds the lock
        with self._send_lock:
            self._wire.send(text.encode("latin-1"))
        # Its answer may look like any other: a sentinel tells them apart.
        self._doubt = "a hold was sent"

    def reopen(self) -> None:
        """Open the connection anew; what the old one still brings is nobody's."""
        with self._exchange_lock:
            self._reconnect()

    def _reconnect(self) -> None:
        self.close()
        self.news.arrived.clear()
        self._closed = self._doubt = f"{self.resource}: closed, and not opened anew"
        try:
            self._open()
        except LostError as error:
            # Until somebody opens it: the wire that is left is none, and no sentinel will ever be answered.
            self._closed = self._doubt = f"{self._closed}: {error}"
            raise
        self._closed = ""

    def keep_in_step_by(self, sync: str, answer: list[str]) -> None:
        """Take a query with a constant answer for the sentinel; its longest line tells it from all others."""
        number = max(range(len(answer)), key=lambda k: len(answer[k]))
        pattern, rest = f"^{re.escape(answer[number])}$", len(answer) - 1 - number
        self.rules = replace(self.rules, sync=sync, sync_pattern=pattern, sync_rest=rest)

    @property
    def unanswered_holds(self) -> int:
        """Holds whose known answer has not come yet."""
        return self._holds

    def hold_answered(self) -> None:
        """Take an answer for a hold's, which looked like any other."""
        self._holds = max(0, self._holds - 1)

    def close(self) -> None:
        """Close the connection; the reader ends."""
        wire = self._wire
        with suppress(LostError):
            wire.close()
