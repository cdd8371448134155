"""kill -9 at random instants of the whole command line; what resumes equals what was never broken."""

from __future__ import annotations

import os
import subprocess
import sys
import time

import apsw
import numpy as np
import pytest

from colure.app import services
from colure.app.storage.folders import run_folder
from colure.model.files import open_dataset

KILLS = 3


def committed(path) -> dict[int, bytes]:
    """Read (sequence, chain) of what a dead process had committed."""
    if not path.exists():
        return {}
    db = apsw.Connection(str(path))
    db.set_busy_timeout(5000)  # the process may be recovering its journal at this very moment
    try:
        return dict(db.execute("select seq, chain from point").fetchall())
    except apsw.SQLError:
        return {}  # killed before the tables were made
    finally:
        db.close()


def start(folder, name):
    return subprocess.Popen(
        [sys.executable, "-m", "colure", "acquire", str(folder), "--run", name, "--yes", "--json"],
        stdout=subprocess.DEVNULL, stderr=subprocess.PIPE,
    )  # fmt: skip


@pytest.mark.skipif(os.name == "nt", reason="SIGKILL; Windows needs its own job-object test")
@pytest.mark.parametrize("seed", [20, 21])
def test_killed_at_random_instants(small_campaign, seed, request):
    if seed == 21 and not request.config.getoption("--nightly"):
        pytest.skip("a second seed is for the nightly run")
    wanted_kills = 1000 if request.config.getoption("--nightly") else KILLS
    campaign, plan = services.make_plan(small_campaign)
    whole = run_folder(small_campaign, "whole")
    services.acquire(campaign, plan, whole)
    truth = open_dataset(whole.record)
    random = np.random.default_rng(seed)
    kills, runs, killed_with_points = 0, 0, 0
    while kills < wanted_kills:
        runs += 1
        run = run_folder(small_campaign, f"broken{runs}")
        known: dict[int, bytes] = {}
        while True:
            child = start(small_campaign, run.path.name)
            before, deadline = len(known), time.monotonic() + 300  # a busy computer takes a minute to start
            # Wait until it measures, most of the time; some kills shall hit the start as well.
            wait_for_points = random.random() < 0.85 and kills < wanted_kills
            while wait_for_points and child.poll() is None and len(committed(run.journal)) <= before:
                assert time.monotonic() < deadline
                time.sleep(0.01)
            try:
                code = child.wait(timeout=None if kills >= wanted_kills else random.uniform(0.0, 0.12))
            except subprocess.TimeoutExpired:
                child.kill()
                child.wait()
                kills += 1
                now = committed(run.journal)
                assert known.items() <= now.items(), "a committed point was lost"
                killed_with_points += len(now) > len(known)
                known = now
                continue
            finally:
                errors = child.stderr.read().decode()
                child.stderr.close()
            assert code == 0, errors
            break
        found = open_dataset(run.record)
        planned = found.isel(point=np.flatnonzero(found["plan_index"].values >= 0))
        for name in (
            "trace",
            "commanded_deg",
            "readback_deg",
            "role",
            "plan_index",
            "slice_index",
            "pass_index",
            "flags",
        ):
            np.testing.assert_array_equal(planned[name].values, truth[name].values)
        assert services.verify(run).whole
    print(f"{kills} kills over {runs} runs, {killed_with_points} of them with new points on disk")
    assert killed_with_points > wanted_kills / 2
