"""Ctrl-C in a short run: the engine is stopped as in a long one, what was measured is sealed, and the same command goes on."""

from __future__ import annotations

import os
import signal

import pytest
from click.testing import CliRunner

from colure.acquire.station import Station
from colure.app.cli import main
from colure.app.storage.folders import run_folder
from colure.model.files import attribute_of

CUT = ("cut", "--phi", "0", "--theta", "-30:30:10", "--run", "short")
FLIP = ("flip", "--run", "short")
BEAM = ("beam", "--run", "short")


@pytest.mark.skipif(os.name == "nt", reason="sends SIGINT to itself")
@pytest.mark.parametrize(
    "words", [FLIP, *(pytest.param(one, marks=pytest.mark.nightly) for one in (CUT, BEAM))], ids=lambda words: words[0]
)
def test_ctrl_c_stops_a_short_run_safely_and_the_same_command_goes_on(words, tiny_campaign, monkeypatch, request):
    if words is not FLIP:
        request.getfixturevalue("nightly")
    right, told = Station.row, []

    def row(station, *rest):
        told.append(1)
        if len(told) == 5:
            os.kill(os.getpid(), signal.SIGINT)
        return right(station, *rest)

    monkeypatch.setattr(Station, "row", row)
    command = [words[0], str(tiny_campaign), *words[1:], "--yes"]
    stopped = CliRunner().invoke(main, command)
    assert stopped.exit_code == 3, stopped.output
    assert (
        "stopped: operator pressed Ctrl-C; " in stopped.output and "the same command goes on with it" in stopped.output
    )
    runs = [run_folder(tiny_campaign, one.name) for one in (tiny_campaign / "runs").iterdir()]
    assert [attribute_of(one.record, "complete", "") for one in runs] == ["0"], "what was measured is sealed"
    done = CliRunner().invoke(main, command)
    assert done.exit_code == 0, done.output
    assert attribute_of(runs[0].record, "complete", "") == "1"
