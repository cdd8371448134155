"""The guide "Connect your own positioner in half an hour", done as it says, against a controller on a serial line
that speaks another language."""

from __future__ import annotations

import json
import os
import re
import signal
import socketserver
import subprocess
import sys
import threading
import time
from pathlib import Path

import pytest
from click.testing import CliRunner

from colure.acquire.clocks import SystemClock
from colure.app import services
from colure.app.cli import main
from colure.app.storage.folders import run_folder
from colure.errors import MotionError
from colure.instruments.line_axes import LineAxes
from colure.instruments.profile import axes_profile
from colure.instruments.protocols import HeldError, RefusedError, unwatched
from colure.model.files import open_dataset
from colure.twin.servers import start_twin

GUIDE = Path(__file__).parents[2] / "docs" / "how-to" / "connect-your-positioner.md"
pytestmark = pytest.mark.skipif(os.name == "nt", reason="pseudo-terminals")


def commands() -> list[list[str]]:
    """Every command of the guide, in order."""
    blocks = re.findall(r"```console\n(.*?)```", GUIDE.read_text(encoding="utf-8"), flags=re.DOTALL)
    return [line.split() for block in blocks for line in block.splitlines() if line.startswith("colure ")]


def colure(words: list[str], folder: Path, **options):
    return subprocess.run(
        [sys.executable, "-m", "colure", *words[1:]], cwd=folder, capture_output=True, text=True, timeout=120, **options
    )


def test_the_guide_works_as_written(tmp_path, tiny_campaign, monkeypatch):
    """Against a simulator in a process of its own, as the guide says; the other commands share this one."""
    monkeypatch.chdir(tmp_path)
    served: dict[str, str] = {}
    simulator = None
    try:
        for words in commands():
            if words[1] == "simulate":
                simulator = subprocess.Popen(
                    [sys.executable, "-m", "colure", *words[1:]], cwd=tmp_path, stdout=subprocess.PIPE, text=True,
                    stderr=subprocess.DEVNULL,
                )  # fmt: skip
                served = json.loads(simulator.stdout.readline())
                edit_chamber(tmp_path / "my-range", served)
                continue
            done = CliRunner().invoke(main, words[1:])
            assert done.exit_code == 0, f"{' '.join(words)}\n{done.output}"
            if words[1] == "new" and "--profile" not in words:
                # Few points and a nimble positioner, or this test would take as long as a measurement.
                for name in ("goal.toml", "device.toml", "twin.toml"):
                    (tmp_path / "my-range" / name).write_bytes((tiny_campaign / name).read_bytes())
                hurry(tmp_path / "my-range" / "chamber.toml")
                goal = tmp_path / "my-range" / "goal.toml"
                goal.write_text(goal.read_text("utf-8") + "region_deg = 60\n", "utf-8")
            if "--check" in words:
                assert "SIMULATED STEPPER RACK 3 AXES" in done.output
                assert "door closed" in done.output and "NO" not in re.findall(
                    r"^ ?(\S+)", done.output, flags=re.MULTILINE
                )
    finally:
        if simulator is not None:
            simulator.send_signal(signal.SIGINT)
            simulator.wait(timeout=10)
            simulator.stdout.close()
    record = open_dataset(tmp_path / "my-range" / "runs" / "first" / "record.nc")
    assert (tmp_path / "first.png").read_bytes().startswith(b"\x89PNG")
    assert record.attrs["complete"] == 1 and record.sizes["point"] > 60


def hurry(chamber: Path) -> None:
    text = re.sub(r"(speed_deg_s = )\d+", r"\g<1>400", chamber.read_text(encoding="utf-8"))
    text = re.sub(r"(acceleration_deg_s2 = )\d+", r"\g<1>9000", text)
    chamber.write_text(re.sub(r"(settle_s = )[0-9.]+", r"\g<1>0.0", text), encoding="utf-8")


def edit_chamber(folder: Path, served: dict[str, str]) -> None:
    """Step 3 of the guide."""
    text = (folder / "chamber.toml").read_text(encoding="utf-8")
    text = text.replace('resource = "twin"           #', f'resource = "{served["analyzer"]}"  #')
    text = text.replace('resource = "twin"\n', f'resource = "{served["serial_axes"]}"\n')
    (folder / "chamber.toml").write_text(text.replace("gcode-axes", "stepper-rack"), encoding="utf-8")


@pytest.fixture
def rack(small_campaign):
    """The stepper rack in real time, on its pseudo-terminal."""
    (small_campaign / "twin.toml").write_text("noise = false\ntime_factor = 1.0\n", encoding="utf-8")
    campaign, _ = services.make_plan(small_campaign)
    twin = start_twin(campaign, serial_axes=True)
    axes = LineAxes(
        twin.serial.resource,
        axes_profile("stepper-rack"),
        campaign.chamber.axis_table,
        timeout_s=2,
        timer=SystemClock(),
    )
    yield twin, axes
    axes.close()
    twin.close()


def test_steps_and_degrees_agree_and_axes_move_together(rack):
    twin, axes = rack
    axes.begin({"azimuth": 10.0, "roll": 15.0, "probe": -20.0})
    status = axes.finish(0.05, unwatched, limit_s=10.0)
    assert status.positions_deg == pytest.approx({"azimuth": 10.0, "roll": 15.0, "probe": -20.0}, abs=1 / 800)
    moves = sorted(twin.stage._moves.values(), key=lambda move: move.begin_s)
    assert moves[-1].begin_s < moves[0].end_s, "the last axis sets out before the first one has arrived"
    assert status.door_open is False and not status.moving and twin.stage.positions()["azimuth"] == 10.0


def test_positions_are_read_after_the_axes_said_that_they_stand(rack, monkeypatch):
    """On a busy computer the answer may come when the move has ended: a position asked for before would lie on the way."""
    twin, axes = rack

    def late() -> bool:
        while twin.stage.clock.now() < twin.stage.busy_until():
            time.sleep(0.02)
        return False

    monkeypatch.setattr(twin.stage, "moving", late)
    axes.begin({"azimuth": 2.0})
    assert axes.finish(0.0, unwatched, limit_s=10.0).positions_deg["azimuth"] == pytest.approx(2.0, abs=1 / 800)


def test_hold_passes_an_exchange_and_the_line_stays_in_step(rack):
    twin, axes = rack
    axes.begin({"azimuth": 90.0})
    time.sleep(0.4)
    axes.hold()
    assert twin.stage.held.wait(0.2)
    with pytest.raises(HeldError):
        axes.finish(0.0, unwatched, limit_s=10.0)
    assert axes.status().held
    with pytest.raises(HeldError):
        axes.begin({"azimuth": 0.0})
    axes.release()
    axes.begin({"azimuth": 0.0})
    assert axes.finish(0.0, unwatched, limit_s=20.0).positions_deg["azimuth"] == pytest.approx(0.0, abs=1e-3)


DEGREES = """
kind = "line-axes"
identity = "who"
move = "goto {axis} {value}"
acknowledge = "^done"
completion = "reply"
position = "where {axis}"
position_pattern = '(?P<value>-?[0-9.]+)'
fault = "^no"
hold = "halt"
release = "free"
axes.azimuth.name = "az"
axes.roll.name = "ro"
axes.probe.name = "pr"
"""


class DegreesController(socketserver.StreamRequestHandler):
    """Counts degrees, over TCP, and answers a move when the axis stands."""

    def handle(self):
        names = {"az": "azimuth", "ro": "roll", "pr": "probe"}
        stage = self.server.stage
        for line in self.rfile:
            word, *rest = line.decode().split()
            if word == "goto":
                stage.start({names[rest[0]]: float(rest[1])}, coordinated=False)
                good = stage.wait_idle(0.0)
                reply = "done" if good else "no, held"
            elif word == "where":
                reply = f"{stage.positions()[names[rest[0]]]:.4f}"
            else:
                reply = {"who": "degrees over tcp", "free": "done"}.get(word, "done")
                if word == "free":
                    stage.release()
            self.wfile.write((reply + "\n").encode())


def test_degrees_over_tcp_with_completion_replies(small_campaign):
    """The other half of what a line profile can be: no steps, no polling, no serial line."""
    (small_campaign / "degrees.toml").write_text(DEGREES, encoding="utf-8")
    (small_campaign / "twin.toml").write_text("noise = false\ntime_factor = 1.0\n", encoding="utf-8")
    campaign, _ = services.make_plan(small_campaign)
    twin = start_twin(campaign)
    with socketserver.ThreadingTCPServer(("127.0.0.1", 0), DegreesController) as server:
        server.daemon_threads, server.stage = True, twin.stage
        threading.Thread(target=server.serve_forever, daemon=True).start()
        resource = f"TCPIP::127.0.0.1::{server.server_address[1]}::SOCKET"
        axes = LineAxes(resource, axes_profile("degrees", small_campaign), campaign.chamber.axis_table, timeout_s=30,
                        timer=SystemClock())  # fmt: skip
        assert axes.identity() == "degrees over tcp"
        looks = []
        axes.begin({"azimuth": 8.0, "roll": 3.5})
        status = axes.finish(0.0, looks.append, limit_s=20.0)
        assert status.positions_deg == pytest.approx({"azimuth": 8.0, "roll": 3.5, "probe": 0.0})
        # While the controller cannot be asked, the engine's watchdog is still told that we wait.
        assert looks.count(None) >= 5 and looks[-1] == status
        axes.close()
        server.shutdown()
    twin.close()


def test_refusals_limits_and_time_are_told(rack):
    _, axes = rack
    with pytest.raises(RefusedError, match="azimuth target 400 outside"):
        axes.begin({"azimuth": 400.0})
    axes.begin({"azimuth": 100.0})
    with pytest.raises(MotionError, match=r"not there after 0\.5 s"):
        axes.finish(0.0, unwatched, limit_s=0.5)
    axes.hold()


def test_pause_and_resume_by_signals_over_the_whole_command_line(small_campaign):
    child = subprocess.Popen(
        [sys.executable, "-m", "colure", "acquire", str(small_campaign), "--yes", "--json"],
        stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True,
    )  # fmt: skip
    run = run_folder(small_campaign, "first")
    import apsw

    def count(statement: str) -> int:
        try:
            db = apsw.Connection(str(run.journal), flags=apsw.SQLITE_OPEN_READONLY)
            db.set_busy_timeout(2000)
            try:
                return db.execute(statement).fetchone()[0]
            finally:
                db.close()
        except apsw.Error:
            return 0

    def wait_for(statement: str, least: int) -> None:
        deadline = time.monotonic() + 30
        while count(statement) < least:
            assert time.monotonic() < deadline and child.poll() is None, statement
            time.sleep(0.01)

    points = "select count(*) from point"
    wait_for(points, 20)
    child.send_signal(signal.SIGUSR1)
    wait_for("select count(*) from event where text like 'paused:%'", 1)
    before = count(points)
    time.sleep(0.5)
    assert count(points) == before
    child.send_signal(signal.SIGUSR2)
    out, err = child.communicate(timeout=60)
    result = json.loads(out)
    assert child.returncode == 0 and result["state"] == "done" and result["measured"] == result["total"], err


def test_check_says_no_when_nobody_answers(small_campaign):
    chamber = (small_campaign / "chamber.toml").read_text(encoding="utf-8")
    (small_campaign / "chamber.toml").write_text(
        chamber.replace('resource = "twin"\n', 'resource = "TCPIP::127.0.0.1::9::SOCKET"\n'), encoding="utf-8"
    )
    done = colure(["colure", "acquire", str(small_campaign), "--check"], small_campaign)
    assert done.returncode == 3 and "127.0.0.1::9::SOCKET" in done.stdout
