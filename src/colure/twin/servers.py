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
from colure.twin.gcode_server import GcodeController
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
                with lock:
                    reply = analyzer.answer(line.decode("ascii", "replace").strip())
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
                    self.request.sendall(controller.answer(line).encode("ascii"))
                if len(pending) > LONGEST_LINE:
                    return

    return Handler


@dataclass
class RunningTwin:
    """The simulated chamber behind its two sockets."""

    analyzer_port: int
    axes_port: int
    stage: Stage
    chamber: SimulatedRange
    servers: tuple[_Server, _Server]

    @property
    def analyzer_resource(self) -> str:
        """VISA resource string of the analyzer."""
        return f"TCPIP::{LOOPBACK}::{self.analyzer_port}::SOCKET"

    @property
    def axes_resource(self) -> str:
        """VISA resource string of the axis controller."""
        return f"TCPIP::{LOOPBACK}::{self.axes_port}::SOCKET"

    def close(self) -> None:
        """Stop serving."""
        for server in self.servers:
            server.shutdown()
            server.server_close()


def start_twin(campaign: Campaign, *, analyzer_port: int = 0, axes_port: int = 0) -> RunningTwin:
    """Serve a campaign's simulated chamber on the loopback address (port 0: any free port)."""
    truth = campaign.simulated()
    clock = Clock(truth.time_factor)
    offset = tuple(1e-3 * x for x in campaign.device.offset_mm)
    chamber = SimulatedRange(campaign.chamber, truth, (offset[0], offset[1], offset[2]))
    stage = Stage(campaign.chamber.axis_table, clock)
    analyzer = ScpiAnalyzer(chamber, stage)
    servers = (
        _Server((LOOPBACK, analyzer_port), _scpi_handler(analyzer, threading.Lock())),
        _Server((LOOPBACK, axes_port), _gcode_handler(GcodeController(stage))),
    )
    for server in servers:
        threading.Thread(target=server.serve_forever, kwargs={"poll_interval": 0.1}, daemon=True).start()
    return RunningTwin(servers[0].server_address[1], servers[1].server_address[1], stage, chamber, servers)
