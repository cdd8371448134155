"""A whole chamber in one process and one thread: the real engine, drivers, journal and simulated instruments,
joined by memory instead of sockets and living in virtual time, so that hours pass in seconds and repeat exactly."""

from __future__ import annotations

from concurrent.futures import Executor, Future
from dataclasses import dataclass, field
from pathlib import Path

import pyvisa
from pyvisa.constants import StatusCode

from colure.acquire.engine import Engine
from colure.acquire.journal import Journal
from colure.acquire.outcome import Options
from colure.app import services
from colure.instruments.device_states import CommandStates
from colure.instruments.gcode_axes import GcodeAxes
from colure.instruments.line_axes import LineAxes
from colure.instruments.links import LineEnds, VisaLink
from colure.instruments.profile import analyzer_profile, axes_profile
from colure.instruments.protocols import LostError
from colure.instruments.scpi_analyzer import ScpiAnalyzer
from colure.model.campaign import Campaign
from colure.twin.chamber import SimulatedRange
from colure.twin.clock import SimulatedClock
from colure.twin.devices import maker_of
from colure.twin.faults import Faults, HangUpError, SilenceError
from colure.twin.gcode_server import GcodeController
from colure.twin.line_server import LineController
from colure.twin.motion import Stage
from colure.twin.scpi_server import SimulatedAnalyzer as ScpiServer
from colure.twin.states import responses_in

TIMEOUT = pyvisa.VisaIOError(StatusCode.error_timeout)
LOST = pyvisa.VisaIOError(StatusCode.error_connection_lost)


class VirtualClock:
    """The engine's clock, which is the simulated chamber's."""

    real_time = True

    def __init__(self, clock: SimulatedClock) -> None:
        self._clock = clock
        self.slept_s = 0.0

    def monotonic(self) -> float:
        return self._clock.now()

    def wall(self) -> float:
        return 1.7e9 + self._clock.now()

    def sleep(self, seconds: float) -> None:
        self._clock.wait_until(self._clock.now() + seconds)

    def of_real(self, seconds: float) -> float:
        return seconds

    def asleep_s(self) -> float:
        return self.slept_s


class Inline(Executor):
    """Does at once what it is given, in the caller's thread."""

    def submit(self, fn, /, *args, **kwargs):
        done: Future = Future()
        try:
            done.set_result(fn(*args, **kwargs))
        except Exception as error:
            done.set_exception(error)
        return done


class MemoryResource:
    """Stands where PyVISA's resource stands: bytes in, bytes out, time-outs in virtual time."""

    def __init__(self, world: World, name: str, ends: LineEnds) -> None:
        self._world, self._name, self._ends = world, name, ends
        self._buffer = b""
        self._dead = False
        self.timeout = 1000
        self.read_termination = ends.read

    def write(self, text: str) -> None:
        self.write_raw((text + self._ends.write).encode())

    def write_raw(self, data: bytes) -> None:
        if self._dead:
            raise LOST
        try:
            self._buffer += self._world.feed(self._name, data)
        except HangUpError:
            self._dead = True
        except SilenceError:
            pass

    def _need(self, count: int) -> None:
        if self._dead:
            raise LOST
        if len(self._buffer) < count:
            self._world.clock.sleep(self.timeout / 1000.0)
            raise TIMEOUT

    def read(self) -> str:
        end = self._ends.read.encode()
        if end not in self._buffer:
            self._need(len(self._buffer) + 1)
        line, self._buffer = self._buffer.split(end, 1)
        return line.decode("ascii", "replace")

    def read_bytes(self, count: int) -> bytes:
        self._need(count)
        out, self._buffer = self._buffer[:count], self._buffer[count:]
        return out

    def clear(self) -> None:
        self._buffer = b""

    def close(self) -> None:
        self._dead = True


class MemoryWire:
    """Bytes to and from a simulated controller, in the caller's thread."""

    threaded, fresh = False, True

    def __init__(self, world: World, name: str) -> None:
        self._world, self._name = world, name
        self._buffer, self._dead = b"", False

    def send(self, data: bytes) -> None:
        if self._dead:
            raise LostError("hung up")
        try:
            self._buffer += self._world.feed(self._name, data)
        except HangUpError:
            self._dead = True
        except SilenceError:
            pass

    def receive(self, limit_s: float) -> bytes:
        if self._dead:
            raise LostError("hung up")
        if not self._buffer:
            self._world.clock.sleep(limit_s)
        out, self._buffer = self._buffer, b""
        return out

    def close(self) -> None:
        self._dead = True


class MemoryLink(VisaLink):
    """The product's own link with memory underneath."""

    world: World
    _stream = True

    def _open(self) -> None:
        self._link = MemoryResource(self.world, self.resource, self._ends)

    def _chunk(self, count: int) -> tuple[bytes, bool]:
        return self._link.read_bytes(count), False


@dataclass
class World:
    """Campaign, plan and simulated instruments; they outlive the engines that come and go."""

    campaign: Campaign
    kind: str = "line"
    poll_s: float = 0.05
    stage: Stage = field(init=False)

    def __post_init__(self) -> None:
        truth, chamber = self.campaign.simulated(), self.campaign.chamber
        self.time = SimulatedClock(0.0)
        self.clock = VirtualClock(self.time)
        self.range = SimulatedRange(chamber, truth, maker_of(self.campaign), responses_in(self.campaign))
        self.stage = Stage(chamber.axis_table, self.time, truth, Faults(truth))
        self.stage.glance_s = 0.0
        self.scpi = ScpiServer(self.range, self.stage)
        self.gcode = GcodeController(self.stage)
        self.line = LineController(self.stage)
        self.wire: list[tuple[str, bytes]] = []
        self.log_wire = False

    def feed(self, name: str, data: bytes) -> bytes:
        """Give bytes to an instrument and return what it answers at once."""
        if self.log_wire:
            self.wire.append((name, data))
        text = data.decode("ascii")
        if name == "analyzer":
            return b"".join(self.scpi.answer(line) for line in text.split("\n") if line)
        if name == "device":
            word, _, argument = text.strip().partition(" ")
            if word == "STATE":
                self.range.state = int(argument)
                return b""
            return f"{self.range.state}\n".encode()
        if self.kind == "line":
            return b"".join((self.line.answer(line) + "\r").encode() for line in text.split("\r") if line)
        for character in "!~":
            if character in text:
                self.gcode.realtime(character)
                text = text.replace(character, "")
        return b"".join(self.gcode.answer(line).encode() for line in text.split("\n") if line)

    def opener(self):
        """Return what opens links into this world."""
        return type("BoundLink", (MemoryLink,), {"world": self})

    def wires(self, resource: str, *, timeout_s: float, ends: LineEnds) -> MemoryWire:
        """Open a wire into this world."""
        return MemoryWire(self, resource)

    def engine(self, plan, journal: Journal, *, listener=lambda event: None, options=None, axes=None) -> Engine:
        """Connect anew, as a fresh process would, and build an engine."""
        chamber, opener = self.campaign.chamber, self.opener()
        analyzer = ScpiAnalyzer("analyzer", analyzer_profile("scpi-analyzer"), timeout_s=1.0, opener=opener)
        if axes is None:
            axes = self.axes()
        table = self.campaign.device.states
        states = (
            None if table is None else CommandStates(table.model_copy(update={"resource": "device"}), opener=opener)
        )
        identity = {"analyzer": analyzer.identity(), "axes": axes.identity(), "receiver": analyzer.receiver,
                    "states": None if states is None else states.identity()}  # fmt: skip
        if journal.meta("identity") in (None, {}):
            journal.set_meta("identity", identity)
        return Engine(plan, chamber, journal, analyzer, axes, states=states, state_table=table, listener=listener,
                      clock=self.clock, options=options or Options(threads=False, pause_limit_s=1e-3))  # fmt: skip

    def axes(self):
        """Connect an axis driver."""
        chamber, opener = self.campaign.chamber, self.opener()
        if self.kind == "line":
            profile = axes_profile("stepper-rack").model_copy(update={"poll_s": self.poll_s})
            return LineAxes("axes", profile, chamber.axis_table, timeout_s=1.0, timer=self.clock, opener=self.wires)
        names, words = tuple(chamber.axis_table), axes_profile("gcode-axes")
        if self.kind == "unlatched":
            words = words.model_copy(update={"latched": "", "latched_pattern": ""})
        return GcodeAxes("axes", words, names, timeout_s=1.0, opener=opener, executor=Inline)


def planned_rows(journal: Journal) -> list[tuple]:
    """Return everything of the planned points that must not depend on interruptions: all but the times."""
    rows = sorted((row for row in journal.rows() if row.plan_index >= 0), key=lambda row: row.plan_index)
    return [
        (r.plan_index, r.role, r.state_index, r.commanded_deg.tobytes(), r.readback_deg.tobytes(),
         r.rate_deg_s.tobytes(), r.trace.tobytes(), r.flags)
        for r in rows
    ]  # fmt: skip


def world_of(folder: Path, *, kind: str = "line", poll_s: float = 0.05) -> tuple[World, object]:
    """Return (world, plan) of a campaign folder."""
    campaign, plan = services.make_plan(folder)
    return World(campaign, kind, poll_s), plan
