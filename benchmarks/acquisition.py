"""Stop latency and overhead of the acquisition, in real time: `python benchmarks/acquisition.py [--quick]`.

Stop latency: from `Engine.stop` to the hold on the controller's wire, with a hung analyzer and every core busy.
Overhead: actual duration over the plan's kinematic and sweep time, simulated instruments in a process of their own.
Exit code 1 if a stated limit is missed.
"""

from __future__ import annotations

import argparse
import json
import multiprocessing
import os
import re
import socket
import sys
import tempfile
import threading
import time
from pathlib import Path

import numpy as np

from colure.acquire.clocks import SystemClock
from colure.acquire.engine import Engine
from colure.acquire.journal import Journal
from colure.acquire.outcome import Options
from colure.app import services
from colure.app.storage.folders import run_folder
from colure.instruments.gcode_axes import GcodeAxes
from colure.instruments.profile import analyzer_profile, axes_profile
from colure.instruments.scpi_analyzer import ScpiAnalyzer
from colure.planning.path import build_path

FAILED: list[str] = []
REPORT = "B:0.0000 C:0.0000 U:0.0000 S:idle D:closed\nok\n"
GOAL = """
name = "benchmark"
start_ghz = 24.0
stop_ghz = 24.0
points = 1
wanted_level_db = -20
step_deg = 30
scheme = "two-pass"
"""


def check(name: str, value: float, limit: float, unit: str = "") -> None:
    """Print a figure beside its limit and remember a miss."""
    good = value <= limit
    print(f"{'ok  ' if good else 'MISS'} {name}: {value:.4g}{unit} (limit <= {limit:g}{unit})", flush=True)
    if not good:
        FAILED.append(name)


def burn(end: float) -> None:
    """Keep one core busy."""
    while time.monotonic() < end:
        sum(i * i for i in range(1000))


def controller(ports: multiprocessing.Queue, arrivals: multiprocessing.Queue) -> None:
    """An axis controller that does nothing but write down when a hold arrives."""
    listening = socket.create_server(("127.0.0.1", 0))
    ports.put(listening.getsockname()[1])

    def serve(connection: socket.socket) -> None:
        while block := connection.recv(4096):
            now = time.monotonic()
            if b"!" in block:
                arrivals.put(now)
            lines = block.replace(b"!", b"").replace(b"~", b"").count(b"\n")
            text = block.decode("ascii", "replace")
            for line in [part for part in re.sub("[!~]", "", text).split("\n") if part][:lines]:
                connection.sendall((REPORT if "M114" in line else "bench\nok\n" if "M115" in line else "ok\n").encode())

    while True:
        connection, _ = listening.accept()
        threading.Thread(target=serve, args=(connection,), daemon=True).start()


def hanging_analyzer() -> int:
    """An analyzer that accepts every setting and never finishes a sweep."""
    listening = socket.create_server(("127.0.0.1", 0))
    answers = {"*IDN?": "bench,hung,0,1", "SYST:ERR?": '0,"No error"', "SYST:TIME?": "0,0,0.0"}

    def serve(connection: socket.socket) -> None:
        reader = connection.makefile("r")
        for line in reader:
            text = line.strip()
            if text in answers:
                connection.sendall((answers[text] + "\n").encode())

    def accept() -> None:
        while True:
            connection, _ = listening.accept()
            threading.Thread(target=serve, args=(connection,), daemon=True).start()

    threading.Thread(target=accept, daemon=True).start()
    return int(listening.getsockname()[1])


def campaign_in(folder: Path, *, goal: str = GOAL, fast: bool = False) -> Path:
    """A tiny campaign; with fast axes the benchmark ends today."""
    services.new_campaign(folder)
    (folder / "goal.toml").write_text(goal, encoding="utf-8")
    (folder / "twin.toml").write_text("noise = false\ntime_factor = 1.0\n", encoding="utf-8")
    device = (folder / "device.toml").read_text(encoding="utf-8")
    device = device.replace("[49.7, 49.7, 4.0]", "[2.0, 2.0, 1.0]").replace("[0.0, 0.0, -30.0]", "[0.0, 0.0, 0.0]")
    (folder / "device.toml").write_text(device, encoding="utf-8")
    if fast:
        text = (folder / "chamber.toml").read_text(encoding="utf-8")
        text = re.sub(r"(speed_deg_s = )\d+", r"\g<1>60", text)
        text = re.sub(r"(acceleration_deg_s2 = )\d+", r"\g<1>240", text)
        text = text.replace("min_deg = -185", "min_deg = -200").replace("max_deg = 185", "max_deg = 200")
        (folder / "chamber.toml").write_text(text, encoding="utf-8")
    return folder


def stop_latency(count: int) -> None:
    """Measure how long a stop takes to the wire while the analyzer hangs and every core is busy."""
    ports, arrivals = multiprocessing.Queue(), multiprocessing.Queue()
    child = multiprocessing.Process(target=controller, args=(ports, arrivals), daemon=True)
    child.start()
    axes_port, analyzer_port = ports.get(), hanging_analyzer()
    cores = os.cpu_count() or 2
    burners = [
        multiprocessing.Process(target=burn, args=(time.monotonic() + 600.0,), daemon=True) for _ in range(cores)
    ]
    for burner in burners:
        burner.start()
    words = analyzer_profile("scpi-analyzer").model_copy(update={"confirm": {}})
    latencies = []
    with tempfile.TemporaryDirectory() as name:
        folder = campaign_in(Path(name) / "c")
        campaign, plan = services.make_plan(folder)
        for number in range(count):
            analyzer = ScpiAnalyzer(f"TCPIP::127.0.0.1::{analyzer_port}::SOCKET", words, timeout_s=30)
            axes = GcodeAxes(
                f"TCPIP::127.0.0.1::{axes_port}::SOCKET", axes_profile("gcode-axes"), plan.axes, timeout_s=5
            )
            identity = {"analyzer": analyzer.identity(), "axes": axes.identity(), "states": None, "receiver": "vector"}
            journal = Journal.create(Path(name) / f"{number}.sqlite", plan, identity)
            engine = Engine(plan, campaign.chamber, journal, analyzer, axes, clock=SystemClock(0.0), options=Options())
            running = threading.Thread(target=engine.run)
            running.start()
            time.sleep(0.25)  # it hangs in its first sweep now
            while not arrivals.empty():
                arrivals.get()
            begin = time.monotonic()
            engine.stop("benchmark")
            latencies.append(1e3 * (arrivals.get(timeout=10) - begin))
            analyzer._link._link.close()  # let the hung call go
            running.join(10)
            axes.close()
            journal.close()
    for process in [*burners, child]:
        process.kill()
    print(f"stop latency, {count} stops, {cores} busy cores: median {np.median(latencies):.2f} ms, "
          f"max {max(latencies):.2f} ms")  # fmt: skip
    check("stop latency, 99th percentile", float(np.percentile(latencies, 99)), 50.0, " ms")


def overhead(style: str, limit: float, seconds: float) -> None:
    """Measure actual over predicted duration of the first part of a plan."""
    with tempfile.TemporaryDirectory() as name:
        goal = GOAL + (f'style = "{style}"\n' if style == "fly" else "")
        folder = campaign_in(Path(name) / "c", goal=goal, fast=True)
        campaign, plan = services.make_plan(folder)
        path = build_path(campaign.goal, campaign.chamber, campaign.device, plan.grid)
        until = int(np.searchsorted(np.cumsum(path.time_s), seconds))
        if style == "fly":
            # Whole lines only: inside a line the plan's time is shared evenly, the axis' is not.
            until = int(np.flatnonzero(np.diff(path.line_index[: until + 1]) != 0)[-1]) + 1
        stamps: dict[int, float] = {}
        engines: list[Engine] = []

        def listen(event: object) -> None:
            measured = getattr(event, "data", {}).get("measured")
            if measured is not None:
                stamps[measured] = time.monotonic()
            if measured == until + 1:
                engines[0].stop("enough")

        begin_after = 9 if style == "step" else int(np.flatnonzero(path.line_index == 1)[0])
        services.acquire(campaign, plan, run_folder(folder, "first"), listener=listen, on_engine=engines.append)
        actual = stamps[until] - stamps[begin_after]
        wanted = float(path.time_s[begin_after:until].sum())
        print(f"{style}: {until - begin_after} points, {actual:.2f} s actual, {wanted:.2f} s kinematic and sweep")
        check(f"overhead, {style}", actual / wanted, limit)


def main() -> int:
    """Run everything."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--quick", action="store_true")
    quick = parser.parse_args().quick
    overhead("step", 1.03, 15.0 if quick else 60.0)
    overhead("fly", 1.05, 45.0 if quick else 90.0)
    stop_latency(60 if quick else 300)
    print(json.dumps({"missed": FAILED}))
    return 1 if FAILED else 0


if __name__ == "__main__":
    sys.exit(main())
