"""The simulated chamber's analyzer beside a controller that it does not know: it asks where the axes really stand."""

from __future__ import annotations

import re
import socket
import subprocess
import sys
import threading
from collections.abc import Callable
from pathlib import Path

import numpy as np

from colure.acquire.glance import rows_so_far
from colure.acquire.journal import Journal
from colure.acquire.states import State
from colure.app.storage.folders import run_folder
from colure.model.campaign import Campaign
from colure.model.chamber import SimulatedChamber
from colure.twin.chamber import SimulatedRange
from colure.twin.clock import SimulatedClock
from colure.twin.devices import maker_of
from colure.twin.faults import Faults, HangUpError, SilenceError
from colure.twin.scpi_server import SimulatedAnalyzer
from colure.twin.states import responses_in
from tests.instruments.loopback import Loopback
from tests.world import world_of

Places = Callable[[], dict[str, float]]


class Elsewhere:
    """The axes as the simulated analyzer sees them, turned by somebody else; a sweep sees where they stand at its beginning."""

    def __init__(self, truth: SimulatedChamber, places: Places) -> None:
        self.clock = SimulatedClock(1.0)
        self.faults = Faults(truth)
        self.held = threading.Event()
        self._places = places

    def busy_until(self) -> float:
        return 0.0

    def true_positions(self, moment: float) -> dict[str, float]:
        return self._places()

    def next_pulse(self, after: float) -> float | None:
        return next(iter(self.pulses_after(after)), None)

    def pulses_after(self, after: float) -> list[float]:
        return []


Stages = Callable[[SimulatedChamber, Places], Elsewhere]


class Beside(Loopback):
    """Serves the analyzer of a campaign's simulated chamber."""

    def __init__(self, campaign: Campaign, places: Places, stage: Stages = Elsewhere) -> None:
        truth = campaign.simulated()
        room = SimulatedRange(campaign.chamber, truth, maker_of(campaign), responses_in(campaign))
        self._analyzer = SimulatedAnalyzer(room, stage(truth, places))
        self._lock = threading.Lock()
        super().__init__()

    def _serve(self, connection: socket.socket) -> None:
        with connection.makefile("rb") as lines:
            while line := lines.readline(4096):
                try:
                    with self._lock:
                        reply = self._analyzer.answer(line.decode("ascii", "replace").strip())
                except SilenceError:
                    continue
                except HangUpError:
                    return
                if reply:
                    connection.sendall(reply)


def put_beside(
    folder: Path, axes: str, profile: str, places: Places, *, stage: Stages = Elsewhere, **motion: float
) -> Beside:
    """Turn the axes of a campaign in the simulated chamber by somebody else's controller; return its analyzer.

    stage
        How the analyzer sees those axes.
    motion
        Keys of every axis' table that are set anew.
    """
    chamber = folder / "chamber.toml"
    text = chamber.read_text(encoding="utf-8")
    for key, value in motion.items():
        text = re.sub(rf"(?m)^{key} = \S+", f"{key} = {value:g}", text)
    chamber.write_text(text, encoding="utf-8")
    beside = Beside(Campaign.load(folder), places, stage)
    text = re.sub(r'(?m)^resource = "twin".*$', f'resource = "{beside.resource}"', text, count=1)
    text = text.replace(
        'resource = "twin"\nprofile = "gcode-axes"\ninterlock = true', f'resource = "{axes}"\nprofile = "{profile}"'
    )
    assert '"twin"' not in text
    chamber.write_text(text, encoding="utf-8")
    return beside


def require_measured_beside(
    folder: Path,
    axes: str,
    profile: str,
    places: Places,
    *,
    stage: Stages = Elsewhere,
    twin: str = "line",
    **motion: float,
) -> None:
    """Measure a whole campaign from the command line with somebody else's controller, homed first, and require that it is right."""
    beside = put_beside(folder, axes, profile, places, stage=stage, **motion)
    done = subprocess.run(
        [sys.executable, "-m", "colure", "acquire", str(folder), "--yes", "--home"],
        capture_output=True, text=True, timeout=900,
    )  # fmt: skip
    beside.close()
    assert done.returncode == 0, done.stdout + done.stderr
    require_right(folder, "first", points=100, share=1e-3, twin=twin)


def require_right(folder: Path, run: str, *, points: int, share: float, twin: str = "line") -> None:
    """Require so many points, each with the trace of the same campaign measured in the simulated chamber alone (`twin`: its axes)."""
    world, plan = world_of(folder, kind=twin)
    with_twin = Journal.create(folder / "twin.sqlite", plan, {})
    assert world.engine(plan, with_twin).run().state is State.DONE
    wanted = {row.plan_index: row.trace for row in with_twin.rows() if row.plan_index >= 0}
    with_twin.close()
    told = rows_so_far(run_folder(folder, run).journal)
    assert told is not None
    found = {row.plan_index: row.trace for row in told[1] if row.plan_index >= 0}
    assert len(found) >= points and found.keys() <= wanted.keys()
    largest = max(np.abs(trace).max() for trace in wanted.values())
    worst = max(float(np.abs(found[index] - wanted[index]).max()) for index in found)
    assert worst < share * largest, f"{worst / largest:.2e} of the largest"
