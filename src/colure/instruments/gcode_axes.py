"""An axis controller that queues G-code lines, with a second connection for watching and stopping."""

from __future__ import annotations

import math
import re
import threading
import time
from collections.abc import Callable, Mapping
from concurrent.futures import Executor, Future, ThreadPoolExecutor
from concurrent.futures import TimeoutError as NotYetError

from colure.errors import InstrumentError, MotionError
from colure.instruments.links import Link, Opener, VisaLink, whole_number
from colure.instruments.patience import Patience
from colure.instruments.profile import GcodeProfile
from colure.instruments.protocols import AxesStatus, LostError, RefusedError, Watch, unheard
from colure.instruments.status_words import read_status, refusal, says

#: How often a running move is looked at, seconds.
WATCH_S = 0.05
#: A controller says who it is within this time, or it is given up, seconds.
MEETING_S = 5.0


class GcodeAxes:
    """Axis controller behind a VISA resource; see `AxesDriver`.

    Lines queue on one connection. `hold`, `status` and `beat` use another, so that they never
    queue behind a move; `hold` is a bare character and waits for nothing.
    """

    def __init__(
        self,
        resource: str,
        profile: GcodeProfile,
        axes: tuple[str, ...],
        *,
        timeout_s: float,
        opener: Opener = VisaLink,
        executor: Callable[[], Executor] = lambda: ThreadPoolExecutor(1, thread_name_prefix="axes-reader"),
    ) -> None:
        self.heard: Callable[[], None] = unheard
        missing = [name for name in axes if name not in profile.letters]
        if missing:
            raise InstrumentError(
                f"axes profile: `letters` has no entry for {', '.join(missing)}; a joint may have its own (chamber.toml positioner.joints.letter)"
            )
        self._words = profile
        self._axes = axes
        self.coordinated = profile.coordinated
        self._letters = {profile.letters[name]: name for name in axes}
        self._link: Link = opener(resource, timeout_s=timeout_s, ends=profile.line.ends)
        self._watch_link: Link = opener(resource, timeout_s=min(timeout_s, 2.0), ends=profile.line.ends)
        self._watch_lock = threading.Lock()
        self._new_reader = executor
        self._reader = executor()
        self._speeds_deg_s: dict[str, float] = {}
        self._patience = Patience(timeout_s)
        self._identity = self.identity()

    def identity(self) -> str:
        """Return what the controller says it is, or its resource name if it cannot tell."""
        if not self._words.identity:
            return self._link.resource
        try:
            return self._prompt(self._words.identity, MEETING_S)
        except InstrumentError as error:
            raise LostError(
                f"{error}; `identity` = {self._words.identity!r} was not answered by a line that matches `done` = "
                f"{self._words.done!r} (profile) within {MEETING_S:g} s; is the controller on, and is the profile the right one?"
            ) from None

    one_by_one = False

    def begin(
        self,
        targets_deg: Mapping[str, float],
        *,
        per_s: float | None = None,
        from_deg: Mapping[str, float] | None = None,
    ) -> None:
        """Start a move; it is under way, or refused, when this returns.

        Parameters
        ----------
        per_s
            Share of the move per second at cruising speed; as fast as the axes can if None.
        """
        p = self._words
        if per_s is None and self._speeds_deg_s:
            per_s = self._share(targets_deg)
        words = " ".join(
            p.word.format(letter=p.letters[name], value=f"{value:.{p.decimals}f}")
            for name, value in targets_deg.items()
        )
        if per_s is None:
            self._prompt(p.move.format(words=words))
        elif p.timed:
            self._prompt(p.timed.format(words=words, per_minute=60.0 * per_s))
        else:
            raise InstrumentError("axes profile: `timed` is empty, the speed of a move cannot be set")

    def set_speeds(self, speeds_deg_s: Mapping[str, float] | None) -> None:
        """Let axes go at these speeds from the next move on, by `timed`; None: as fast as they can."""
        if speeds_deg_s and not self._words.timed:
            raise InstrumentError(
                f"{self._link.resource}: axes profile: timed is empty: this controller cannot be told a speed; leave the speed out"
            )
        self._speeds_deg_s = dict(speeds_deg_s or {})

    def _share(self, targets_deg: Mapping[str, float]) -> float | None:
        """Return the share of a move per second at which no axis goes faster than it shall."""
        here = self.status().positions_deg
        ways = {name: abs(targets_deg[name] - here[name]) for name in self._speeds_deg_s}
        return min((self._speeds_deg_s[name] / way for name, way in ways.items() if way > 0.0), default=None)

    def finish(self, settle_s: float, watch: Watch, *, limit_s: float) -> AxesStatus:
        """Wait until all axes stand and have settled, looking at them meanwhile.

        Raises
        ------
        HeldError
            If motion is held.
        MotionError
            If the axes do not arrive within `limit_s`.
        LostError
            If they stand, and the controller does not say that the move is over.
        """
        return self._arrive(settle_s, watch, limit_s, settle_s + self._patience.limit_s("queue"))

    def _arrive(self, settle_s: float, watch: Watch, limit_s: float, rest_s: float) -> AxesStatus:
        """Wait for the end of a move; axes that stand for `rest_s` before it is told have lost it."""
        # One packet, two replies: the controller never waits for us between them.
        self._link.write("\n".join([self._words.wait.format(settle_s=settle_s), self._words.position]))
        due: Future[AxesStatus] = self._reader.submit(self._arrival)
        waited = stood = 0.0
        while True:
            try:
                status = due.result(timeout=WATCH_S)
            except NotYetError:
                waited += WATCH_S
                status = self.status()
                watch(status)
                stood = stood + WATCH_S if self._words.moving and not status.moving else 0.0
                if stood > rest_s:
                    raise LostError(
                        f"{self._link.resource}: axes stand, but the end of their move was not told"
                    ) from None
                if waited > limit_s:
                    raise MotionError(
                        f"{self._link.resource}: axes not there after {waited:.1f} s, limit {limit_s:.1f} s"
                    ) from None
            else:
                watch(status)
                return status

    def _arrival(self) -> AxesStatus:
        refusal: RefusedError | None = None
        report = ""
        for _ in range(2):
            try:
                report = self._reply()
            except RefusedError as error:
                # The other reply is still due; reading it keeps the line in step.
                refusal = refusal or error
        if refusal is not None:
            raise refusal
        return self._parse(report)

    def status(self) -> AxesStatus:
        """Return where the axes are at this moment and what the controller says about itself."""
        with self._watch_lock:
            self._watch_link.write(self._words.position)
            return self._parse(self._reply(self._watch_link))

    def pulses(self, axis: str, *, start_deg: float, step_deg: float, count: int) -> None:
        """Let the controller start a sweep whenever an axis passes start + k step."""
        if not self._words.pulses:
            raise InstrumentError("axes profile: `pulses` is empty, sweeps cannot be started by position")
        letter = self._words.letters[axis]
        self._prompt(self._words.pulses.format(letter=letter, start=start_deg, step=step_deg, count=count))

    def latches(self, axis: str) -> bool:
        """Tell whether the controller stores where an axis is at its pulses."""
        return bool(self._words.latched)

    def latched(self, axis: str, count: int) -> list[float]:
        """Return the readouts that were stored at the pulses of an axis, degrees."""
        text = self._words.latched.format(letter=self._words.letters[axis], count=count)
        limit_s = self._patience.limit_s("queue")
        try:
            # After a hold the replies to the move that was broken off come first.
            answer = self._reader.submit(self._prompt, text).result(timeout=2.0 * limit_s)
        except NotYetError:
            raise LostError(f"{self._link.resource}: latched positions: no answer within {2.0 * limit_s:g} s") from None
        try:
            return [float(match["value"]) for match in re.finditer(self._words.latched_pattern, answer)]
        except ValueError as error:
            raise LostError(f"{self._link.resource}: latched positions: {error}") from None

    def hold(self) -> None:
        """Brake all axes now; not an emergency stop."""
        self._watch_link.write_raw(self._words.hold)

    def release(self) -> None:
        """Allow motion after a hold."""
        with self._watch_lock:
            self._watch_link.write_raw(self._words.release)
            # A report on the same connection proves that the release has been read.
            self._watch_link.write(self._words.position)
            self._reply(self._watch_link)

    def disable(self) -> None:
        """Take the drives' power away, if the profile knows how."""
        if self._words.disable:
            with self._watch_lock:
                self._watch_link.write(self._words.disable)
                self._reply(self._watch_link)

    def home(self, watch: Watch, limit_s: float) -> AxesStatus:
        """Seek the reference marks; positions can be trusted again afterwards."""
        if not self._words.home:
            raise InstrumentError("axes profile: `home` is empty; home the axes by the controller's own means")
        self._link.write(self._words.home)
        self._reply()
        # Axes that seek their marks may rest on the way.
        return self._arrive(0.0, watch, limit_s, limit_s)

    def beat(self) -> None:
        """Tell the controller that we are alive; it stops by itself when this lapses."""
        if self._words.beat:
            with self._watch_lock:
                self._watch_link.write(self._words.beat)
                self._reply(self._watch_link)

    def reconnect(self) -> None:
        """Open both connections anew and check that the same controller answers."""
        # A reader left waiting on the old connection must not eat the new one's replies.
        self._reader.shutdown(wait=False, cancel_futures=True)
        self._reader = self._new_reader()
        self._link.reopen()
        with self._watch_lock:
            self._watch_link.reopen()
        identity = self.identity()
        if identity != self._identity:
            raise InstrumentError(f"{self._link.resource}: is {identity!r}, must be {self._identity!r}")

    def close(self) -> None:
        """Close both connections."""
        self._reader.shutdown(wait=False, cancel_futures=True)
        self._link.close()
        self._watch_link.close()

    def _prompt(self, text: str, most_s: float = math.inf) -> str:
        """Send what is answered when it is queued, and wait no longer than such answers have taken so far."""
        sent_s = time.monotonic()
        self._link.write(text)
        answer = self._reply(limit_s=min(most_s, self._patience.limit_s("queue")))
        self._patience.took("queue", time.monotonic() - sent_s)
        return answer

    def _reply(self, link: Link | None = None, limit_s: float | None = None) -> str:
        """Read lines up to the completion reply and return them joined."""
        line_of = link or self._link
        lines: list[str] = []
        for _ in range(50):
            line = line_of.read(limit_s)
            self.heard()
            if re.search(self._words.fault, line):
                raise refusal(self._words, line, line_of.resource)
            if re.search(self._words.done, line):
                return "\n".join(lines)
            lines.append(line)
        raise LostError(f"{line_of.resource}: 50 lines without a completion reply")

    def _parse(self, text: str) -> AxesStatus:
        try:
            letter_positions = {
                m["letter"]: float(whole_number(m, "value", self._link.resource, f"position of axis {m['letter']}"))
                for m in re.finditer(self._words.position_pattern, text)
            }
        except (InstrumentError, ValueError) as error:
            # Axes may be moving: whoever hears of a lost position brakes them first.
            raise LostError(str(error)) from None
        missing = [name for letter, name in self._letters.items() if letter not in letter_positions]
        if missing:
            raise LostError(f"{self._link.resource}: no position of {', '.join(missing)} in {text[:80]!r}")
        positions = {name: letter_positions[letter] for letter, name in self._letters.items()}
        return read_status(self._words, text, positions, moving=says(self._words.moving, text))
