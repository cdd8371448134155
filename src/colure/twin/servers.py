"""Two TCP ports on the loopback address: an analyzer and an axis controller."""

from __future__ import annotations

import socket
import socketserver
import sys
import threading
from dataclasses import dataclass

from colure.model.campaign import Campaign
from colure.twin.chamber import SimulatedRange
from colure.twin.clock import Clock
from colure.twin.devices import maker_of
from colure.twin.faults import Faults, HangUpError, SilenceError
from colure.twin.gcode_server import GcodeController
from colure.twin.line_server import LineController, SerialLine
from colure.twin.motion import Stage
from colure.twin.scpi_server import ScpiAnalyzer

LOOPBACK = "127.0.0.1"
LONGEST_LINE = 4096


class _Server(socketserver.ThreadingTCPServer):
    allow_reuse_address = True
    daemon_threads = True

    def handle_error(self, request: object, client_address: object) -> None:
        """A client that goes away in the middle of a reply is everyday life; anything else is shown."""
        if not isinstance(sys.exc_info()[1], ConnectionError):
            super().handle_error(request, client_address)  # type: ignore[arg-type]


def _scpi_handler(analyzer: ScpiAnalyzer, lock: threading.Lock) -> type[socketserver.BaseRequestHandler]:
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
        """`STATE n` puts the device into a state, `MOUNT device` or `MOUNT reference` is a person's exchange; `?` reads."""

        disable_nagle_algorithm = True

        def handle(self) -> None:
            while line := self.rfile.readline(LONGEST_LINE):
                word, _, argument = line.decode("ascii", "replace").strip().partition(" ")
                if word.upper() == "STATE" and argument.isdigit():
                    chamber.state = int(argument)
                elif word.upper() == "MOUNT" and argument in ("device", "reference"):
                    chamber.mounted = "reference" if argument == "reference" else "device"
                elif word.upper() == "MOUNT?":
                    self.wfile.write(f"{chamber.mounted}\n".encode("ascii"))
                elif word.upper() == "STATE?":
                    self.wfile.write(f"{chamber.state}\n".encode("ascii"))

    return Handler


@dataclass
class RunningTwin:
    """The simulated chamber behind its sockets."""

    analyzer_port: int
    axes_port: int
    device_port: int
    stage: Stage
    chamber: SimulatedRange
    servers: tuple[_Server, ...]
    serial: SerialLine | None = None

    @property
    def analyzer_resource(self) -> str:
        """VISA resource string of the analyzer."""
        return f"TCPIP::{LOOPBACK}::{self.analyzer_port}::SOCKET"

    @property
    def axes_resource(self) -> str:
        """VISA resource string of the axis controller."""
        return f"TCPIP::{LOOPBACK}::{self.axes_port}::SOCKET"

    @property
    def device_resource(self) -> str:
        """VISA resource string of the device's state switch."""
        return f"TCPIP::{LOOPBACK}::{self.device_port}::SOCKET"

    def close(self) -> None:
        """Stop serving."""
        if self.serial is not None:
            self.serial.close()
        for server in self.servers:
            server.shutdown()
            server.server_close()


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
    clock = Clock(max(truth.time_factor, least_time_factor))
    chamber = SimulatedRange(campaign.chamber, truth, maker_of(campaign))
    stage = Stage(campaign.chamber.axis_table, clock, truth, Faults(truth))
    analyzer = ScpiAnalyzer(chamber, stage)
    servers = (
        _Server((LOOPBACK, analyzer_port), _scpi_handler(analyzer, threading.Lock())),
        _Server((LOOPBACK, axes_port), _gcode_handler(GcodeController(stage))),
        _Server((LOOPBACK, 0), _device_handler(chamber)),
    )
    for server in servers:
        threading.Thread(target=server.serve_forever, kwargs={"poll_interval": 0.02}, daemon=True).start()
    ports = [server.server_address[1] for server in servers]
    serial = SerialLine(LineController(stage)) if serial_axes else None
    return RunningTwin(ports[0], ports[1], ports[2], stage, chamber, servers, serial)
