"""Axes behind EPICS motor records, over Channel Access; the package of the extra `epics` is needed.

The resource is the server's address (`host` or `host:port`); records are named in the profile. Fields as in the reference of
the motor record (synApps): VAL, RBV, DMOV, VELO, SPMG, MSTA, HOMF, HOMR, SEVR.
"""

from __future__ import annotations

import os
import threading
from collections.abc import Callable, Mapping
from contextlib import suppress
from typing import Any, Literal

from pydantic import Field, field_validator

from colure.errors import InstrumentError, MotionError
from colure.instruments.line_profile import compiles
from colure.instruments.protocols import AxesStatus, HeldError, LostError, Timer, Watch, unheard
from colure.model.chamber import Axis
from colure.model.loading import Section

#: Values of SPMG: brake and stay, and free to go.
STOP, GO = 0, 3
#: Bits of MSTA that stop an axis: what is wrong, by bit.
ALARMS = {2: "limit-switch, positive end", 13: "limit-switch, negative end", 6: "slip or stall", 9: "driver problem"}
COMMUNICATION, REFERENCED = 12, 14
#: SEVR of a record whose values mean nothing.
INVALID = 3
#: A record takes this long at most to say that it moves, seconds.
START_S = 0.5
FIELDS = ("VAL", "RBV", "DMOV", "VELO", "SPMG", "MSTA", "SEVR")
#: Channel Access keeps one list of addresses for the whole process.
_addresses = threading.Lock()


class EpicsProfile(Section):
    """Motor records by axis.

    motors
        Name of the record of every axis, such as `range:m1`; its engineering unit is the degree.
    home
        How an axis seeks its reference: `forward` (HOMF), `reverse` (HOMR), or `none`.
    require_referenced
        An axis that has not been homed since power-up (MSTA bit 15) is an alarm.
    door, door_open, door_closed
        Name of a variable that tells the door, and patterns of what it says; "" if there is none.
    poll_s
        How often a move is looked at.
    """

    foreign_words = True

    kind: Literal["epics-motors"]
    motors: dict[str, str] = Field(min_length=1)
    home: Literal["forward", "reverse", "none"] = "none"
    require_referenced: bool = False
    door: str = ""
    door_open: str = "^1$"
    door_closed: str = "^0$"
    poll_s: float = Field(default=0.02, ge=0.005, le=1.0, json_schema_extra={"unit": "s"})

    _patterns = field_validator("door_open", "door_closed")(compiles)


class EpicsAxes:
    """See `AxesDriver`; every axis goes at its own speed.

    Raises
    ------
    LostError
        From every method, when the server does not answer, or a record says that its values are invalid.
    """

    coordinated, one_by_one = False, False

    def __init__(
        self, resource: str, profile: EpicsProfile, axes: Mapping[str, Axis], *, timeout_s: float, timer: Timer
    ) -> None:
        missing = [name for name in axes if name not in profile.motors]
        if missing:
            raise InstrumentError(f"axes profile: motors: no record for axis {missing[0]!r}")
        self.heard: Callable[[], None] = unheard
        self._resource, self._profile, self._axes, self._timer = resource, profile, dict(axes), timer
        # A move has its own time; an answer of the server comes at once or not at all.
        self._timeout_s = min(timeout_s, 2.0)
        self._held = threading.Event()
        self._speeds_deg_s: dict[str, float] = {}
        self._targets: dict[str, float] = {}
        self._began_s = 0.0
        self._context: Any = None
        self._variables: dict[str, Any] = {}
        self._open()

    def _open(self) -> None:
        try:
            from caproto.threading.client import Context
        except ImportError:
            raise InstrumentError(f"{self._resource}: EPICS needs a library: pip install 'colure[epics]'") from None
        names = [f"{self._profile.motors[axis]}.{field}" for axis in self._axes for field in FIELDS]
        names += [f"{self._profile.motors[axis]}.{field}" for axis in self._axes for field in self._homing()]
        names += [self._profile.door] if self._profile.door else []
        try:
            with _addresses:
                os.environ["EPICS_CA_ADDR_LIST"], os.environ["EPICS_CA_AUTO_ADDR_LIST"] = self._resource, "NO"
                self._context = Context(timeout=self._timeout_s)
                variables = self._context.get_pvs(*names)
                for one in variables:
                    one.wait_for_connection(timeout=self._timeout_s)
        except Exception as error:
            self.close()
            raise LostError(f"{self._resource}: records cannot be reached: {error}") from None
        self._variables = dict(zip(names, variables, strict=True))

    def _homing(self) -> tuple[str, ...]:
        return {"forward": ("HOMF",), "reverse": ("HOMR",), "none": ()}[self._profile.home]

    def _read(self, name: str) -> Any:
        try:
            answer = self._variables[name].read(timeout=self._timeout_s)
        except Exception as error:
            raise LostError(f"{self._resource}: {name} does not answer: {error}") from None
        self.heard()
        return answer.data[0]

    def _write(self, name: str, value: Any) -> None:
        try:
            # Not acknowledged: the acknowledgement of a move comes at its end.
            self._variables[name].write([value], wait=False, notify=False, timeout=self._timeout_s)
        except Exception as error:
            raise LostError(f"{self._resource}: {name} did not take {value}: {error}") from None

    def _field(self, axis: str, field: str) -> str:
        return f"{self._profile.motors[axis]}.{field}"

    def identity(self) -> str:
        """Return which records are spoken to: the protocol tells no more."""
        return "EPICS motor records " + ", ".join(f"{axis} {self._profile.motors[axis]}" for axis in self._axes)

    def begin(
        self,
        targets_deg: Mapping[str, float],
        *,
        per_s: float | None = None,
        from_deg: Mapping[str, float] | None = None,
    ) -> None:
        """Start a move of every axis that is named."""
        here = self.status()
        self._require_free(here)
        self._targets = dict(targets_deg)
        for axis, target in targets_deg.items():
            fastest = self._speeds_deg_s.get(axis, self._axes[axis].speed_deg_s)
            way = abs(target - here.positions_deg[axis])
            if per_s is not None and way == 0.0:
                continue
            self._write(self._field(axis, "VELO"), fastest if per_s is None else min(fastest, way * per_s))
        for axis, target in targets_deg.items():
            self._write(self._field(axis, "VAL"), float(target))
        self._began_s = self._timer.monotonic()

    def set_speeds(self, speeds_deg_s: Mapping[str, float] | None) -> None:
        """Let axes go at these speeds from the next move on (VELO); None: as declared."""
        before, self._speeds_deg_s = self._speeds_deg_s, dict(speeds_deg_s or {})
        for axis in before:
            if axis not in self._speeds_deg_s:
                self._write(self._field(axis, "VELO"), self._axes[axis].speed_deg_s)

    def _require_free(self, status: AxesStatus) -> None:
        if self._held.is_set() or status.held:
            raise HeldError(f"{self._resource}: the axes are held")

    def finish(self, settle_s: float, watch: Watch, *, limit_s: float) -> AxesStatus:
        """Wait until all axes stand, looking at them meanwhile, then let them settle."""
        begin = self._timer.monotonic()
        while True:
            status = self.status()
            self._require_free(status)
            watch(status)
            now = self._timer.monotonic()
            if not status.moving and not (now - self._began_s < START_S and self._has_not_begun(status)):
                break
            if now - begin > limit_s:
                raise MotionError(f"{self._resource}: axes not there after {limit_s:.1f} s")
            self._timer.sleep(self._profile.poll_s)
        self._timer.sleep(settle_s)
        return self.status() if settle_s > 0.0 else status

    def _has_not_begun(self, status: AxesStatus) -> bool:
        return any(
            abs(status.positions_deg[axis] - target) > 0.5 * self._axes[axis].following_error_deg
            for axis, target in self._targets.items()
        )

    def status(self) -> AxesStatus:
        """Ask every record; positions come last, so that a resting axis is read where it rests."""
        moving = held = False
        alarms = []
        for axis in self._axes:
            if int(self._read(self._field(axis, "SEVR"))) >= INVALID:
                raise LostError(f"{self._resource}: record of axis {axis} says that its values are invalid (SEVR)")
            bits = int(self._read(self._field(axis, "MSTA")))
            if bits >> COMMUNICATION & 1:
                raise LostError(f"{self._resource}: record of axis {axis} has lost its controller (MSTA)")
            alarms += [f"{axis}: {words}" for bit, words in ALARMS.items() if bits >> bit & 1]
            if self._profile.require_referenced and not bits >> REFERENCED & 1:
                alarms.append(f"{axis}: not homed since power-up")
            moving |= not int(self._read(self._field(axis, "DMOV")))
            held |= int(self._read(self._field(axis, "SPMG"))) != GO
        door = self._door()
        places = {axis: float(self._read(self._field(axis, "RBV"))) for axis in self._axes}
        return AxesStatus(places, moving, held or self._held.is_set(), door, "; ".join(alarms))

    def _door(self) -> bool | None:
        import re

        if not self._profile.door:
            return None
        value = self._read(self._profile.door)
        text = value.decode("latin-1") if isinstance(value, bytes) else f"{value:g}"
        is_open, is_closed = re.search(self._profile.door_open, text), re.search(self._profile.door_closed, text)
        if bool(is_open) == bool(is_closed):
            raise LostError(f"{self._resource}: {self._profile.door} says {text[:60]!r}: neither open nor closed")
        return bool(is_open)

    def pulses(self, axis: str, *, start_deg: float, step_deg: float, count: int) -> None:
        """Refuse: a motor record has no position-compare output."""
        raise InstrumentError(
            "EPICS motor records cannot start sweeps by position; use trigger = 'time' or style = 'step'"
        )

    def hold(self) -> None:
        """Brake all axes now; every record is told even if one line fails."""
        self._held.set()
        lost: LostError | None = None
        for axis in self._axes:
            try:
                self._write(self._field(axis, "SPMG"), STOP)
            except LostError as error:
                lost = error
        if lost is not None:
            raise lost

    def release(self) -> None:
        """Allow motion again; nothing that was under way goes on."""
        for axis in self._axes:
            self._write(self._field(axis, "SPMG"), GO)
        self._held.clear()

    def disable(self) -> None:
        """Brake and stay."""
        self.hold()

    def home(self, watch: Watch, limit_s: float) -> AxesStatus:
        """Seek the reference marks, then go to every axis' home position."""
        if not self._homing():
            raise InstrumentError("axes profile: home = 'none': the axes cannot be homed")
        if self._held.is_set() or self.status().held:
            self.release()
        self._targets = {}
        for axis in self._axes:
            self._write(self._field(axis, self._homing()[0]), 1)
        self._began_s = self._timer.monotonic()
        self._timer.sleep(START_S)
        self.finish(0.0, watch, limit_s=limit_s)
        self.begin({axis: table.home_deg for axis, table in self._axes.items()})
        return self.finish(max(table.settle_s for table in self._axes.values()), watch, limit_s=limit_s)

    def beat(self) -> None:
        """Do nothing: records have no watchdog of their own."""

    def reconnect(self) -> None:
        """Open the circuits anew."""
        self.close()
        self._open()

    def close(self) -> None:
        """Let go of the server."""
        context, self._context = self._context, None
        if context is not None:
            with suppress(Exception):
                context.disconnect()
