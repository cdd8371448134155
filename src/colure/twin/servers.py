"""Two TCP ports on the loopback address: an analyzer and an axis controller."""

from __future__ import annotations

import socket
import socketserver
import sys
import threading
from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Protocol, TypeVar

from colure.model.campaign import Campaign
from colure.model.chamber import Axis, Chamber
from colure.twin.chamber import SimulatedRange
from colure.twin.clock import SimulatedClock
from colure.twin.devices import maker_of
from colure.twin.faults import Faults, HangUpError, SilenceError
from colure.twin.gcode_server import GcodeController
from colure.twin.line_server import LineController, SerialLine
from colure.twin.motion import Stage
from colure.twin.scpi_server import SimulatedAnalyzer
from colure.twin.small_servers import (
    SimulatedContact,
    SimulatedSensor,
    SimulatedSource,
    SimulatedSwitch,
    SmallInstrument,
)
from colure.twin.stages import StageSet
from colure.twin.states import responses_in

LOOPBACK = "127.0.0.1"
LONGEST_LINE = 4096


class TextInstrument(Protocol):
    """Answers lines of text."""

    def answer(self, line: str) -> str | None: ...


class _Server(socketserver.ThreadingTCPServer):
    allow_reuse_address = True
    daemon_threads = True

    def handle_error(self, request: object, client_address: object) -> None:
        """A client that goes away in the middle of a reply is everyday life; anything else is shown."""
        if not isinstance(sys.exc_info()[1], ConnectionError):
            super().handle_error(request, client_address)  # type: ignore[arg-type]


def _scpi_handler(analyzer: SimulatedAnalyzer, lock: threading.Lock) -> type[socketserver.BaseRequestHandler]:
    class Handler(socketserver.StreamRequestHandler):
        disable_nagle_algorithm = True

        def handle(self) -> None:
            while line := self.rfile.readline(LONGEST_LINE):
                try:
                    with lock:
                        reply = analyzer.answer(line.decode("ascii", "replace").strip())
                except SilenceError:
                    continue
                except HangUpError:
                    return
                if reply:
                    self.wfile.write(reply)

    return Handler


def _gcode_handler(controller: GcodeController) -> type[socketserver.BaseRequestHandler]:
    class Handler(socketserver.BaseRequestHandler):
        """Real-time characters are taken out of the stream before lines are queued."""

        def handle(self) -> None:
            self.request.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
            pending = ""
            while block := self.request.recv(LONGEST_LINE):
                for character in block.decode("ascii", "replace"):
                    if character in "!~":
                        controller.realtime(character)
                    else:
                        pending += character
                while "\n" in pending:
                    line, pending = pending.split("\n", 1)
                    try:
                        self.request.sendall(controller.answer(line).encode("ascii"))
                    except SilenceError:
                        continue
                    except HangUpError:
                        return
                if len(pending) > LONGEST_LINE:
                    return

    return Handler


def _device_handler(chamber: SimulatedRange) -> type[socketserver.BaseRequestHandler]:
    class Handler(socketserver.StreamRequestHandler):
        """`STATE n`: a state of the device; `MOUNT device|reference`, `MOVE probe|positioner mm`: what a person does; `?` reads."""

        disable_nagle_algorithm = True

        def handle(self) -> None:
            while line := self.rfile.readline(LONGEST_LINE):
                word, _, argument = line.decode("ascii", "replace").strip().partition(" ")
                if word.upper() == "STATE" and argument.isdigit():
                    chamber.state = int(argument)
                elif word.upper() == "MOUNT" and argument in ("device", "reference"):
                    chamber.mounted = "reference" if argument == "reference" else "device"
                elif word.upper() == "MOVE" and argument.partition(" ")[0] in ("probe", "positioner"):
                    what, _, step_mm = argument.partition(" ")
                    chamber.move(what, 1e-3 * float(step_mm))
                elif word.upper() == "MOUNT?":
                    self.wfile.write(f"{chamber.mounted}\n".encode("ascii"))
                elif word.upper() == "STATE?":
                    self.wfile.write(f"{chamber.state}\n".encode("ascii"))

    return Handler


def _text_handler(instrument: TextInstrument) -> type[socketserver.BaseRequestHandler]:
    class Handler(socketserver.StreamRequestHandler):
        """One line in, one line out at most."""

        disable_nagle_algorithm = True

        def handle(self) -> None:
            while line := self.rfile.readline(LONGEST_LINE):
                try:
                    answer = instrument.answer(line.decode("ascii", "replace"))
                except SilenceError:
                    continue
                if answer is not None:
                    self.wfile.write(f"{answer}\n".encode("ascii"))

    return Handler


@dataclass(kw_only=True)
class RunningTwin:
    """The simulated chamber behind its sockets.

    small
        Source, switch, contacts, sensors and states by the names that chamber.toml gives them.
    controllers
        Axis controllers by their names.
    ports
        Port of every instrument by its name in chamber.toml.
    """

    analyzer_port: int
    axes_port: int
    device_port: int
    stages: StageSet
    chamber: SimulatedRange
    servers: tuple[_Server, ...]
    serial: SerialLine | None = None
    small: dict[str, TextInstrument] = field(default_factory=dict)
    controllers: dict[str, GcodeController] = field(default_factory=dict)
    ports: dict[str, int] = field(default_factory=dict)

    @property
    def stage(self) -> Stage:
        """The axes of the first controller."""
        return self.stages.stages[0]

    @property
    def analyzer_resource(self) -> str:
        """VISA resource string of the analyzer."""
        return _resource(self.analyzer_port)

    @property
    def axes_resource(self) -> str:
        """VISA resource string of the axis controller."""
        return _resource(self.axes_port)

    @property
    def device_resource(self) -> str:
        """VISA resource string of the device's state switch."""
        return _resource(self.device_port)

    @property
    def resources(self) -> dict[str, str]:
        """VISA resource string of everything served: `analyzer`, `axes`, `device`, and every instrument by its name."""
        names = {"analyzer": self.analyzer_port, "axes": self.axes_port, "device": self.device_port}
        return {name: _resource(port) for name, port in (names | self.ports).items()}

    def close(self) -> None:
        """Stop serving."""
        if self.serial is not None:
            self.serial.close()
        for server in self.servers:
            server.shutdown()
            server.server_close()


def _resource(port: int) -> str:
    return f"TCPIP::{LOOPBACK}::{port}::SOCKET"


def start_twin(
    campaign: Campaign,
    *,
    analyzer_port: int = 0,
    axes_port: int = 0,
    serial_axes: bool = False,
    least_time_factor: float = 0.0,
) -> RunningTwin:
    """Serve a campaign's simulated chamber on the loopback address (port 0: any free port).

    serial_axes
        Also answer on a pseudo-terminal, as the differently speaking stepper rack.
    least_time_factor
        Simulated seconds per real second, if twin.toml asks for less (0: virtual time).
    """
    truth = campaign.simulated()
    clock = SimulatedClock(max(truth.time_factor, least_time_factor))
    chamber = SimulatedRange(campaign.chamber, truth, maker_of(campaign), responses_in(campaign))
    chamber.set_frequencies(campaign.goal.frequency_hz[:1])  # a device that cannot take its states says so now
    faults = Faults(truth)
    stages = {name: Stage(axes, clock, truth, faults) for name, axes in _axes_of(campaign.chamber).items()}
    fixed = [name for name, axis in campaign.chamber.driven_table.items() if axis.fixed]
    stage = StageSet(list(stages.values()), fixed)
    small = _small(campaign.chamber, chamber, faults, clock)
    # An analyzer that is simulated too sees the simulated source and switch, if the range has any.
    analyzer = SimulatedAnalyzer(chamber, stage, source=_first(small, SimulatedSource), switch=_first(small,
                            SimulatedSwitch),
                            own_power_dbm=_own_power_dbm(campaign))  # fmt: skip
    controllers = {name: GcodeController(one, second=number > 0) for number, (name, one) in enumerate(stages.items())}
    wanted = [("analyzer", analyzer_port, _scpi_handler(analyzer, threading.Lock()))]
    wanted += [
        (name, 0 if number else axes_port, _gcode_handler(controller))
        for number, (name, controller) in enumerate(controllers.items())
    ]
    wanted += [("device", 0, _device_handler(chamber))]
    wanted += [(name, 0, _text_handler(instrument)) for name, instrument in small.items()]
    servers = tuple(_Server((LOOPBACK, port), handler) for _, port, handler in wanted)
    for server in servers:
        threading.Thread(target=server.serve_forever, kwargs={"poll_interval": 0.02}, daemon=True).start()
    ports = {name: server.server_address[1] for (name, *_), server in zip(wanted, servers, strict=True)}
    receiver = campaign.chamber.with_role("receiver")[0].shown_name
    axes = next(iter(controllers))
    serial = SerialLine(LineController(next(iter(stages.values())))) if serial_axes else None
    return RunningTwin(analyzer_port=ports["analyzer"], axes_port=ports[axes], device_port=ports["device"],
                       stages=stage, chamber=chamber, servers=servers, serial=serial, small=small,
                       controllers=controllers,
                       ports=ports | {receiver: ports["analyzer"]})  # fmt: skip


def _axes_of(chamber: Chamber) -> dict[str, dict[str, Axis]]:
    """Return the axes of every controller by its name."""
    table = {name: axis for name, axis in chamber.driven_table.items() if not axis.fixed}
    return {
        one.shown_name: {name: table[name] for name in one.axes or table}
        for one in chamber.with_role("axis-controller")
    }


def _small(chamber: Chamber, room: SimulatedRange, faults: Faults, clock: SimulatedClock) -> dict[str, TextInstrument]:
    """Return the simulated sources, switches, contacts, sensors and states by name."""
    makers: dict[str, Callable[[], TextInstrument]] = {
        "source": lambda: SimulatedSource(faults), "switch": SimulatedSwitch, "state": lambda: SmallInstrument(room),
        "interlock": lambda: SimulatedContact(faults), "sensor": lambda: SimulatedSensor(room, faults, clock),
    }  # fmt: skip
    return {one.shown_name: makers[one.role]() for one in chamber.outfit if one.role in makers}


SmallT = TypeVar("SmallT")


def _first(small: dict[str, TextInstrument], kind: type[SmallT]) -> SmallT | None:
    return next((one for one in small.values() if isinstance(one, kind)), None)


def _own_power_dbm(campaign: Campaign) -> float | None:
    """Return the power at the port of a device that transmits by itself; None for one that is fed."""
    device = campaign.device
    return None if device.eirp_dbm is None else device.eirp_dbm - device.expected_gain_dbi
