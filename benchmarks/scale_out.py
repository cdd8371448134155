"""Scale-out: one campaign of 64 states x 101 frequencies x 91 x 91 x 2 on one and on two Dask workers, and a killed one.

    python benchmarks/scale_out.py            # the whole size (1.7 GB of sweeps)
    python benchmarks/scale_out.py --states 6 --frequencies 21

The campaign is synthetic: the demo panel rehearsed once at 2 x 4 deg, every state the same field with its own
phase over the band and its own noise. Prints ratios against the single worker in the same run, the largest memory of a worker,
and the largest difference to processing in one process.
"""

from __future__ import annotations

import argparse
import multiprocessing
import os
import random
import shutil
import signal
import tempfile
import threading
import time
from pathlib import Path

import numpy as np

from colure.app import services
from colure.app.scale.pieces import process_large
from colure.app.services.rehearsal import record_of_rehearsal
from colure.model.campaign import Campaign
from colure.model.lazy import lay_out, open_lazily, read_array, read_rows, rows_of_state
from colure.model.plan import ROLES, Role

#: Frequencies that are worked out; those in between repeat the nearest one.
REHEARSED = 11

GOAL = """
name = "synthetic"
start_ghz = 24.0
stop_ghz = 24.25
points = {frequencies}
wanted_level_db = -30
step_deg = {step}
swept_step_deg = 4
scheme = "dual-port"
"""


def campaign_of(folder: Path, frequencies: int) -> Campaign:
    """Make the demo campaign with a dual probe, 91 slices of 91 directions."""
    services.new_campaign(folder)
    chamber = (folder / "chamber.toml").read_text(encoding="utf-8").replace("ports = 1", "ports = 2")
    (folder / "chamber.toml").write_text(chamber, encoding="utf-8")
    (folder / "goal.toml").write_text(GOAL.format(frequencies=frequencies, step=180.0 / 91.0), encoding="utf-8")
    return Campaign.load(folder)


def record_of(folder: Path, states: int, frequencies: int):
    """Return one rehearsed record as many states of it, in the order of time."""
    campaign_of(folder, min(frequencies, REHEARSED))
    record = record_of_rehearsal(*services.make_plan(folder), seed=2)
    for path in folder.iterdir():
        path.unlink()
    campaign_of(folder, frequencies)
    _, plan = services.make_plan(folder)
    nearest = np.linspace(0, record.sizes["frequency"] - 1, frequencies).round().astype(int)
    record = record.isel(frequency=nearest).assign_coords(frequency=("frequency", plan.frequency_hz))
    scan = record["role"].values == ROLES.index(Role.SCAN)
    rows = np.concatenate([np.flatnonzero(~scan), np.repeat(np.flatnonzero(scan), states)])
    state = np.concatenate([np.full((~scan).sum(), -1), np.tile(np.arange(states), scan.sum())])
    order = np.argsort(record["time_s"].values[rows], kind="stable")
    rows, state = rows[order], state[order]
    many = record.isel(point=rows).assign(state_index=("point", state))
    many = many.assign_attrs(states=",".join(f"beam{i:02d}" for i in range(states)))
    drawn = np.random.default_rng(1)
    turn = np.exp(1j * drawn.uniform(-1, 1, (states + 1, frequencies)).cumsum(axis=1) * 0.05)
    turn[-1] = 1.0  # ties and references belong to no state
    trace = many["trace"].values
    for begin in range(0, len(rows), 4096):
        part = slice(begin, begin + 4096)
        trace[part] *= turn[state[part], :, None]
    return many


def measured(function):
    """Return (seconds, result)."""
    begin = time.perf_counter()
    result = function()
    return time.perf_counter() - begin, result


def killer(stop: threading.Event, told: list[int]) -> None:
    """Kill one worker of the cluster at a random moment of the run."""
    time.sleep(random.Random(5).uniform(6.0, 12.0))
    while not stop.is_set() and not told:
        import psutil

        workers = [
            child for child in psutil.Process().children(recursive=True)
            if "distributed" in " ".join(child.cmdline()) or "spawn_main" in " ".join(child.cmdline())
        ]  # fmt: skip
        busy = [w for w in workers if w.cpu_times().user > 2.0]
        if busy:
            os.kill(busy[0].pid, signal.SIGKILL)
            told.append(busy[0].pid)
        time.sleep(0.2)


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--states", type=int, default=64)
    parser.add_argument("--frequencies", type=int, default=101)
    arguments = parser.parse_args()
    folder = Path(tempfile.mkdtemp(prefix="colure-scale-"))
    campaign_folder = folder / "campaign"
    seconds, record = measured(lambda: record_of(campaign_folder, arguments.states, arguments.frequencies))
    size = record["trace"].nbytes
    print(f"record: {record['trace'].shape} sweeps, {size / 1e9:.2f} GB, made in {seconds:.0f} s", flush=True)
    source = folder / "record.zarr"
    begin = time.perf_counter()
    lay_out(record, str(source))
    seconds = time.perf_counter() - begin
    print(f"laid out by state: {seconds:.1f} s ({size / 1e6 / seconds:.0f} MB/s)", flush=True)
    del record

    def run(workers: int, name: str):
        found = process_large(campaign_folder, name, record=str(source), scheduler="local", workers=workers)
        assert not found.faults, found.faults
        return found

    _, one = measured(lambda: run(1, "one"))
    print(f"one worker: {one.seconds:.1f} s, {one.layout.pieces} pieces, expected {one.layout.piece_bytes / 2**20:.0f} MiB, "
          f"worker's peak {one.peak_bytes / 2**20:.0f} MiB", flush=True)  # fmt: skip
    _, two = measured(lambda: run(2, "two"))
    print(f"two workers: {two.seconds:.1f} s, {one.seconds / two.seconds:.2f} times one worker, "
          f"worker's peak {two.peak_bytes / 2**20:.0f} MiB", flush=True)  # fmt: skip
    stop, told = threading.Event(), []
    threading.Thread(target=killer, args=(stop, told), daemon=True).start()
    seconds, _ = measured(lambda: run(2, "killed"))
    stop.set()
    print(f"two workers, one killed ({'yes' if told else 'NO'}): {seconds:.1f} s", flush=True)
    waves = {
        name: read_array(str(campaign_folder / "runs" / name / "patterns.zarr"), "waves")
        for name in ("one", "two", "killed")
    }
    print(
        "one, two and killed are equal to the last bit:", all(np.array_equal(waves["one"], w) for w in waves.values())
    )
    campaign = Campaign.load(campaign_folder)
    worst = 0.0
    with open_lazily(str(source)) as lazy:
        for index in range(0, arguments.states, max(1, arguments.states // 4)):
            alone = services.processed(
                campaign, read_rows(lazy, rows_of_state(lazy, index), slice(None)), campaign.recipe()
            )
            scale = np.abs(alone.expansion.coefficients).max()
            worst = max(worst, float(np.abs(alone.expansion.coefficients - waves["one"][index]).max() / scale))
    print(f"largest difference to one process, relative to the largest wave: {worst:.1e}")
    shutil.rmtree(folder)


if __name__ == "__main__":
    multiprocessing.freeze_support()
    main()
