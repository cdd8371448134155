"""What the page hears of a scan: one state, one port of the checks, a time that goes on over a resume, a server that speaks."""

from __future__ import annotations

import json
from dataclasses import replace

import numpy as np
import pytest

from colure.app.web.scan.layout import layout_for
from colure.app.web.scan.live import SCAN, TIE, LiveScan


@pytest.fixture
def layout(tiny_campaign):
    return layout_for(tiny_campaign)


def tie(at, first, second):
    parts = [first.real, first.imag, second.real, second.imag]
    return {"kind": "tie", "row": [-1, TIE, at, [0.0, 0.0], parts, 0], "text": "check"}


def test_a_circular_wave_whose_ports_are_equal_shows_its_own_drift_and_no_other(layout):
    """Both ports of a circular wave are equally strong and 90 deg apart (IEEE Std 145): noise must not choose between them."""
    scan = LiveScan("c", "first", layout)
    for k, tilt in enumerate((1e-3, -1e-3, 1e-3, -1e-3)):
        drift = np.exp(1j * np.deg2rad(2.0 * k))
        scan.hear(tie(60.0 * k, (1.0 + tilt) * drift, 1j * (1.0 - tilt) * drift))
    found = np.array(scan.status()["ties"])
    assert found[:, 0] == pytest.approx([0.0, 60.0, 120.0, 180.0])
    assert found[:, 2] == pytest.approx([0.0, 2.0, 4.0, 6.0], abs=0.01)


def test_drift_over_a_resume_goes_on_in_time(layout):
    """An earlier attempt's checks come as history, an hour before those of this one: the chart shows the hour."""
    scan = LiveScan("c", "first", layout)
    scan.hear({"kind": "history", "rows": [tie(1000.0, 1.0, 0.0)["row"], tie(1180.0, 1.0, 0.0)["row"]]})
    scan.hear(tie(4780.0, 0.9 + 0.0j, 0.0))
    found = np.array(scan.status()["ties"])
    assert found[:, 0] == pytest.approx([0.0, 180.0, 3780.0])
    assert found[-1, 1] == pytest.approx(20.0 * np.log10(0.9), abs=1e-3)


def test_the_picture_of_a_device_with_states_is_that_of_one_state(layout):
    points = np.flatnonzero(layout.cell >= 0)
    states = np.zeros(len(layout.cell), int)
    states[points[1]] = 1
    cell = layout.cell.copy()
    cell[points[1]] = cell[points[0]]  # the same direction in another state
    of_states = replace(layout, state_index=states, states=("left", "right"), cell=cell)
    scan = LiveScan("c", "first", of_states)
    for index, value in ((points[0], 0.1), (points[1], 0.9)):
        scan.hear({"kind": "point", "row": [int(index), SCAN, 1.0, [0.0, 0.0], [value, 0.0], 0]})
    assert scan.geometry()["state"] == "left"
    assert np.nanmax(np.frombuffer(scan.frame(), "<f4")) == pytest.approx(-20.0, abs=1e-3)


@pytest.mark.parametrize(("at_rest", "moves"), [(True, False), (False, True)])
def test_a_scan_that_seals_its_record_moves_nothing_and_lets_no_other_begin(layout, at_rest, moves):
    """STOP is red while the axes may move: where the engine could not tell that they stand, until its process is gone."""
    scan = LiveScan("c", "first", layout)
    scan.hear({"kind": "state", "state": "running", "text": "running: 3 of 3 points to measure", "at_rest": False})
    assert scan.status()["moves"] and scan.running
    scan.hear({"kind": "state", "state": "done", "text": "done: plan completed", "at_rest": at_rest})
    assert scan.status()["moves"] is moves and scan.running
    scan.ended(0)
    assert not scan.status()["moves"] and not scan.running


def test_a_server_with_nothing_new_still_speaks(tiny_campaign, monkeypatch):
    """Without it a page cannot tell a quiet server from one that is gone, and would go on to show its STOP as if it worked."""
    from websockets.sync.client import connect

    from colure.app.web import server
    from tests.browser.conftest import serving

    assert server.HEARTBEAT_S <= 2.0  # the page takes the line for lost after 7 s
    monkeypatch.setattr(server, "HEARTBEAT_S", 0.2)
    for served in serving([tiny_campaign]):
        url = f"ws://127.0.0.1:{served.port}/api/live"
        with connect(url, additional_headers={"Cookie": served.headers()["Cookie"]}, origin=served.base) as line:
            assert json.loads(line.recv(timeout=5))["type"] == "status"
            assert [json.loads(line.recv(timeout=5))["type"] for _ in range(3)] == ["alive"] * 3
