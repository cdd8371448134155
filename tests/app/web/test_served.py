"""The real server, spoken to over its port: what a campaign's files may do to it, and how soon it hears a stop."""

from __future__ import annotations

import os
import socket
import time
from contextlib import ExitStack

import numpy as np
import pytest

from colure.app import services
from tests.app.web.served import id_of, serving
from tests.model.test_admission import spoil_device, spoil_key, spoil_pipe, spoil_points

SPOILED = (spoil_pipe, spoil_device, spoil_key, spoil_points)
pytestmark = pytest.mark.skipif(os.name == "nt", reason="wants pipes, devices and /proc")


def asked_of(campaign: str, sequence: int) -> dict[str, dict]:
    """Return every request that reads a campaign's files, by door."""
    one, run = {"campaign": campaign}, {"campaign": campaign, "run": "first"}
    return {
        "/api/plan": one, "/api/motion": one, "/api/before": run, "/api/save": {**one, "edits": {"goal.points": 3}},
        "/api/where": one, "/api/start": {**run, "sequence": sequence, "cautions_read": True},
    }  # fmt: skip


def test_files_that_would_hang_or_fill_the_memory_are_refused_by_the_page(tmp_path, nightly):
    """Every door within 2 s of processor time (wall time on an idle computer) and all of the server within 1 GiB."""
    good, *bad = folders = [tmp_path / name for name in ("good", "pipe", "device", "key", "points")]
    for folder in folders:
        services.new_campaign(folder)
    fine = {"campaign": id_of(good), "edits": {"goal.step_deg": 0.05}}
    with serving(*folders) as page:
        assert page.post("/api/plan", campaign=id_of(good))[0] == 200 and page.post("/api/lease", hold=True)[0] == 200
        for spoil, folder in zip(SPOILED, bad, strict=True):
            spoil(folder)  # while it is served: at the start the server refuses it itself
            for door in asked_of("", 0):
                body = asked_of(id_of(folder), page.get("/api/me")["sequence"])[door]
                begin = page.busy_s()
                status, answer = page.post(door, **body)
                assert page.busy_s() - begin < 2.0, (spoil.__name__, door)
                assert status == 422 and "must be" in answer["errors"][0], (spoil.__name__, door, answer)
        # Fifty million points of a form are as many as those of a file.
        status, answer = page.post("/api/plan", **fine)
        assert status == 422 and "51840000 points" in answer["errors"][0]
        assert sum(page.most_bytes().values()) < 1 << 30
        assert page.post("/api/plan", campaign=id_of(good))[0] == 200


def test_a_stop_is_answered_at_once_beside_eight_hundred_silent_connections(campaign_folder, nightly, prompt):
    """99 of 100 within 50 ms, over a connection that is kept and over one that is opened for it."""
    with serving(campaign_folder) as page, ExitStack() as silent:
        for _ in range(800):
            silent.enter_context(socket.create_connection(("127.0.0.1", page.port)))
        assert page.post("/api/plan", campaign=id_of(campaign_folder))[0] == 200  # its workers are there
        for anew in (False, True):
            took = []
            for _ in range(200):
                begin = time.monotonic()
                assert page.post("/api/stop", anew=anew)[0] == 200
                took.append(time.monotonic() - begin)
            print(f"stops (connection {'of its own' if anew else 'kept'}): median {1e3 * np.median(took):.1f} ms, "
                  f"99 % {1e3 * np.percentile(took, 99):.1f} ms, most {1e3 * max(took):.1f} ms")  # fmt: skip
            prompt(took, 0.05, share=0.99)
