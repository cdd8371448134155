"""A closed terminal ends a run in order; a run goes on under another address, not under other words or limits."""

from __future__ import annotations

import os
import pty
import signal
import subprocess
import sys
import time

import pytest
from click.testing import CliRunner

from colure.acquire.circumstances import changes, circumstances
from colure.acquire.journal import Journal
from colure.app import services
from colure.app.cli import main
from colure.app.storage.folders import run_folder
from colure.app.terminal.keys import Controls
from colure.errors import InputError
from colure.model.campaign import Campaign

pytestmark = pytest.mark.skipif(os.name == "nt", reason="pseudo-terminals")


#: Takes the terminal on standard input for its own, as a shell does.
IN_TERMINAL = """
import fcntl, os, sys, termios
os.setsid()
fcntl.ioctl(0, termios.TIOCSCTTY, 0)
os.execv(sys.executable, [sys.executable, "-m", "colure", *sys.argv[1:]])
"""


def wait_for(condition, seconds: float = 30.0) -> None:
    end = time.monotonic() + seconds
    while not condition():
        assert time.monotonic() < end
        time.sleep(0.05)


def stop_of(run) -> dict:
    journal = Journal.resume(run.journal)
    try:
        return journal.meta("stops")[-1]
    finally:
        journal.close()


def points(run) -> int:
    import apsw

    if not run.journal.exists():
        return 0
    try:
        db = apsw.Connection(str(run.journal), flags=apsw.SQLITE_OPEN_READONLY)
        try:
            return db.execute("select count(*) from point").fetchone()[0]
        finally:
            db.close()
    except apsw.Error:
        return 0


def test_a_closed_terminal_brakes_switches_off_and_keeps_the_reason(small_campaign):
    """The kernel sends HUP to the whole session when its terminal goes; every write to it fails from then on."""
    near, far = pty.openpty()
    child = subprocess.Popen(
        [sys.executable, "-c", IN_TERMINAL, "acquire", str(small_campaign), "--yes"], stdin=far, stdout=far, stderr=far
    )
    os.close(far)
    run = run_folder(small_campaign, "first")
    try:
        wait_for(lambda: os.read(near, 65536) and points(run) > 3)
    finally:
        os.close(near)
    assert child.wait(timeout=30) == 3
    stop = stop_of(run)
    assert stop["state"] == "stopped" and "terminal was closed" in stop["reason"]


@pytest.mark.parametrize(("name", "reason"), [("SIGQUIT", "signal QUIT"), ("SIGTERM", "signal TERM")])
def test_other_ways_to_end_a_program_are_stops_too(name, reason):
    heard = []

    class Engine:
        stop = staticmethod(heard.append)

    with Controls(quiet=True) as controls:
        controls.attach(Engine())
        os.kill(os.getpid(), getattr(signal, name))
        wait_for(lambda: heard, 2.0)
    assert heard == [reason]


def test_words_and_limits_are_held_against_those_of_the_run_and_addresses_are_not(tiny_campaign):
    campaign, _ = services.make_plan(tiny_campaign)
    before = circumstances(campaign.chamber, tiny_campaign)
    assert "M114" in before["profiles"]["axes"]["text"]
    moved = campaign.chamber.model_copy(
        update={"axes": campaign.chamber.axes.model_copy(update={"resource": "192.0.2.10:5000"})}
    )
    assert changes(before, circumstances(moved, tiny_campaign)) == []
    text = before["profiles"]["axes"]["text"]
    (tiny_campaign / "gcode-axes.toml").write_text("# a remark\n" + text, encoding="utf-8")
    assert changes(before, circumstances(campaign.chamber, tiny_campaign)) == []
    (tiny_campaign / "gcode-axes.toml").write_text(text.replace('hold = "!"', 'hold = "?"'), encoding="utf-8")
    found = changes(before, circumstances(campaign.chamber, tiny_campaign))
    assert found == ["axes profile gcode-axes: hold = '?': must be '!' to resume"]


def test_a_run_does_not_go_on_under_other_limits(tiny_campaign):
    campaign, plan = services.make_plan(tiny_campaign)
    run = run_folder(tiny_campaign, "first")
    services.acquire(campaign, plan, run, on_engine=lambda engine: engine.stop("enough"))
    chamber = (tiny_campaign / "chamber.toml").read_text(encoding="utf-8")
    (tiny_campaign / "chamber.toml").write_text(
        chamber.replace("speed_deg_s = ", "following_error_deg = 45.0\nspeed_deg_s = ", 1),
        encoding="utf-8",
    )
    with pytest.raises(
        InputError, match=r"chamber.toml: axes.azimuth.following_error_deg = 45.0: must be .* to resume"
    ):
        services.acquire(Campaign.load(tiny_campaign), plan, run)


@pytest.mark.parametrize("left", [None, b""])
def test_a_record_whose_journal_is_gone_or_empty_is_not_written_over(small_campaign, left):
    run = run_folder(small_campaign, "first")
    run.path.mkdir(parents=True)
    run.record.write_bytes(b"nineteen points")
    if left is not None:
        run.journal.write_bytes(left)
    result = CliRunner().invoke(main, ["acquire", str(small_campaign), "--run", "first", "--yes"])
    assert result.exit_code == 2 and "journal.sqlite is gone or empty" in " ".join(result.output.split())
    assert run.record.read_bytes() == b"nineteen points" and (left is None) == (not run.journal.exists())
