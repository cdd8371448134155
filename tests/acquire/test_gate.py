"""Nothing is measured before instruments, settings, position and tie are proven, and the same on resume."""

from __future__ import annotations

import os
import stat

import pytest

from colure.acquire import locks
from colure.acquire.journal import Journal
from colure.acquire.locks import canonical, hold_lock, hold_resource
from colure.acquire.outcome import Options
from colure.acquire.states import State
from colure.errors import LockedError
from colure.model.plan import ROLES, Role
from colure.twin.motion import Move
from tests.world import planned_rows, world_of


@pytest.fixture
def half(tiny_campaign, tmp_path):
    """A run that was stopped after 40 points."""
    world, plan = world_of(tiny_campaign, kind="gcode")
    journal = Journal.create(tmp_path / "j.sqlite", plan, {})
    engines = []

    def listen(event):
        if event.data.get("measured") == 40:
            engines[0].stop("enough")

    engines.append(world.engine(plan, journal, listener=listen))
    assert engines[0].run().state is State.STOPPED
    yield world, plan, journal
    journal.close()


def test_another_instrument_is_refused(half):
    world, plan, journal = half
    world.scpi._identity = "Colure,Another simulated analyzer,1,1"
    outcome = world.engine(plan, journal).run()
    assert outcome.state is State.FAULTED and "Another simulated analyzer" in outcome.reason
    assert "must be 'Colure,Simulated network analyzer,0,1'" in outcome.reason and outcome.measured == 40


def test_settings_that_do_not_stay_are_refused(half):
    world, plan, journal = half
    wanted = journal.meta("settings")
    journal.set_meta("settings", {**wanted, "if_bandwidth_hz": 10.0})
    outcome = world.engine(plan, journal).run()
    assert outcome.state is State.FAULTED
    assert "if_bandwidth_hz = 1000.0, must be 10.0" in outcome.reason


def test_a_changed_tie_is_refused_on_resume(half):
    world, plan, journal = half
    path = world.range._path
    world.range._path = lambda: 0.8 * path()  # a loose connector: -1.9 dB
    outcome = world.engine(plan, journal).run()
    assert outcome.state is State.FAULTED and "tie point changed by -1.94 dB" in outcome.reason
    world.range._path = path
    assert world.engine(plan, journal).run().state is State.DONE
    assert sum(ROLES[row.role] is Role.RESUME for row in journal.rows()) == 1


def test_axes_left_in_motion_are_brought_to_rest_first(half):
    world, plan, journal = half
    world.stage.release()
    # What a process had commanded that died on the way: it said so before, and left no place of rest.
    journal.set_meta("rest", None)
    journal.set_meta("heading", {"deg": [[180.0, 0.0, 0.0]], "rows": journal.count})
    world.stage.start({"azimuth": 180.0})
    world.clock.sleep(1.0)
    assert world.stage.busy_until() > world.time.now()
    world.log_wire = True
    outcome = world.engine(plan, journal).run()
    assert outcome.state is State.DONE, outcome
    sent = b"".join(data for name, data in world.wire if name == "axes")
    assert sent.index(b"!") < sent.index(b"G90 G0")


@pytest.mark.parametrize(("axis", "off_deg"), [("azimuth", 6.0), ("roll", -12.0), ("probe", 0.7)])
@pytest.mark.parametrize("died", [False, True], ids=["stopped", "killed"])
def test_counts_that_shifted_between_two_sessions_are_refused_until_homed_or_confirmed(half, axis, off_deg, died):
    world, plan, journal = half
    if died:
        journal.set_meta("rest", None)
        off_deg *= 40.0  # a process that dies leaves only the way it was on
    before = planned_rows(journal)
    world.stage.shift_counts({axis: off_deg})
    outcome = world.engine(plan, journal).run()
    assert outcome.state is State.FAULTED and f"axis {axis} stands at" in outcome.reason and "`home`" in outcome.reason
    assert planned_rows(journal) == before  # nothing was measured with doubtful counts
    # Asking again does not make it true.
    assert world.engine(plan, journal).run().state is State.FAULTED
    homed = world.engine(plan, journal, options=Options(threads=False, home=True)).run()
    assert homed.state is State.DONE, homed


def test_a_person_may_confirm_what_the_counts_say(half):
    world, plan, journal = half
    world.stage.stand_at({"azimuth": 17.0})  # turned away to reach the device, counts and all
    assert world.engine(plan, journal).run().state is State.FAULTED
    confirmed = world.engine(plan, journal, options=Options(threads=False, position_confirmed=True)).run()
    assert confirmed.state is State.DONE, confirmed
    assert any("confirmed by a person" in text for _, _, text in journal.events())


def test_a_confirmation_does_not_hold_for_what_a_later_pause_brings(half):
    world, plan, journal = half
    world.stage.stand_at({"azimuth": 17.0})
    engines = []

    def listen(event):
        if event.data.get("measured") == 60:
            engines[0].pause("coffee")
        if event.data.get("state") == "paused":
            world.stage.shift_counts({"azimuth": 6.0})  # the controller was switched off and on
            engines[0].resume()

    options = Options(threads=False, position_confirmed=True)
    engines.append(world.engine(plan, journal, listener=listen, options=options))
    outcome = engines[0].run()
    assert outcome.state is State.FAULTED and "axis azimuth stands at" in outcome.reason, outcome


def test_a_wrapping_readout_whose_turns_are_lost_must_be_homed(tiny_campaign, tmp_path):
    chamber = (tiny_campaign / "chamber.toml").read_text(encoding="utf-8")
    head, roll = chamber.split("[positioner.roll]")
    chamber = head + "[positioner.roll]\nmodulo_deg = 360" + roll
    (tiny_campaign / "chamber.toml").write_text(chamber, encoding="utf-8")
    world, plan = world_of(tiny_campaign, kind="gcode")
    journal = Journal.create(tmp_path / "j.sqlite", plan, {})
    engines = []
    engines.append(
        world.engine(plan, journal, listener=lambda e: e.data.get("measured") == 120 and engines[0].stop("x"))
    )
    engines[0].run()
    last = float(journal.last_row().readback_deg[1])
    # Somebody turned the roll by hand to the opposite side: either way round is equally near.
    world.stage._moves["roll"] = Move(
        start_deg=last + 178.0, distance_deg=0.0, begin_s=0.0, speed=30.0, acceleration=60.0
    )
    outcome = world.engine(plan, journal).run()
    assert outcome.state is State.FAULTED and "turns are not certain" in outcome.reason
    homed = world.engine(plan, journal, options=Options(threads=False, home=True)).run()
    assert homed.state is State.DONE
    journal.close()


def test_one_controller_has_one_master():
    held = hold_resource("TCPIP::192.0.2.1::5026::SOCKET")
    try:
        with pytest.raises(LockedError, match="in use by process"):
            hold_resource(" tcpip::192.0.2.1::5026::socket")
    finally:
        held.close()
    hold_resource("TCPIP::192.0.2.1::5026::SOCKET").close()


def test_a_path_through_a_keep_out_is_refused_before_anything_moves(tiny_campaign, tmp_path):
    with (tiny_campaign / "chamber.toml").open("a", encoding="utf-8") as out:
        out.write('\n[[keep_out]]\nname = "bracket meets mast"\nazimuth = [110, 185]\nroll = [80, 100]\n')
    world, plan = world_of(tiny_campaign, kind="gcode")
    journal = Journal.create(tmp_path / "j.sqlite", plan, {})
    world.log_wire = True
    outcome = world.engine(plan, journal).run()
    assert outcome.state is State.FAULTED and "keep-out sector 'bracket meets mast'" in outcome.reason
    assert outcome.measured == 0 and not any(b"G0" in data for _, data in world.wire)
    journal.close()


@pytest.mark.parametrize("other", [
    "TCPIP0::127.0.0.1::5026::SOCKET", "tcpip::localhost::5026::socket", "TCPIP::127.0.0.1::5026::SOCKET ",
])  # fmt: skip
def test_one_controller_by_two_spellings_has_one_master(other):
    held = hold_resource("TCPIP::localhost::5026::SOCKET")
    try:
        with pytest.raises(LockedError, match="in use by process"):
            hold_resource(other)
    finally:
        held.close()


def test_different_lines_are_different(tmp_path):
    names = ["TCPIP::127.0.0.1::5026::SOCKET", "TCPIP::127.0.0.1::5025::SOCKET", "TCPIP1::127.0.0.1::5026::SOCKET",
             "ASRL/dev/ttyS0::INSTR", "ASRL/dev/ttyS1::INSTR", "ASRL3::INSTR", "GPIB0::7::INSTR", "GPIB0::8::INSTR"]  # fmt: skip
    assert len({canonical(name) for name in names}) == len(names)
    port, link = tmp_path / "port", tmp_path / "by-id"
    port.touch()
    link.symlink_to(port)
    assert canonical(f"ASRL{link}::INSTR") == canonical(f"ASRL{port}::INSTR")


def test_a_lock_file_that_is_a_link_is_refused_and_its_target_left_alone(tmp_path):
    victim, lock = tmp_path / "victim", tmp_path / "x.lock"
    victim.write_text("precious", encoding="utf-8")
    lock.symlink_to(victim)
    with pytest.raises(LockedError, match="remove it"):
        hold_lock(lock, "controller")
    note = tmp_path / "y.lock.pid"
    note.symlink_to(victim)
    hold_lock(tmp_path / "y.lock", "controller").close()
    note.unlink()
    note.hardlink_to(victim)
    hold_lock(tmp_path / "y.lock", "controller").close()
    assert victim.read_text(encoding="utf-8") == "precious"


@pytest.fixture(params=[True, False], ids=["a name in memory", "a file"])
def locking(request, tmp_path, monkeypatch):
    """Both ways of locking a line, the file in a folder of the test."""
    if request.param and not locks.NAMES_IN_MEMORY:
        pytest.skip("this system has no names in memory")
    monkeypatch.setattr(locks, "NAMES_IN_MEMORY", request.param)
    monkeypatch.setattr(locks, "SHARED_FOLDER", tmp_path)
    return request.param, tmp_path


@pytest.mark.skipif(os.name == "nt", reason="wants links and pipes of POSIX")
@pytest.mark.parametrize("plant", ["link", "pipe", "folder", "gone"])
def test_what_others_put_in_the_place_of_a_lines_lock_lets_no_second_program_drive_it(locking, plant):
    """Another user's link, pipe or folder at the lock file, or the file taken away, while or before it is held."""
    in_memory, folder = locking
    hold_resource(line := "TCPIP::192.0.2.7::5026::SOCKET").close()
    (lock,) = folder.glob("*.lock")
    assert stat.S_IMODE(lock.stat().st_mode) == 0o666  # another user may lock it, too
    lock.unlink()
    if plant == "link":
        lock.symlink_to(folder / "victim")
    elif plant == "pipe":
        os.mkfifo(lock)
    elif plant == "folder":
        lock.mkdir()
    if plant != "gone" and not in_memory:
        with pytest.raises(LockedError, match="remove it"):
            hold_resource(line)
        return
    held = hold_resource(line)
    if plant == "gone" and in_memory:
        lock.unlink()
    with pytest.raises(LockedError, match=f"in use by process {os.getpid()}"):
        hold_resource(line)
    held.close()
    hold_resource(line).close()
    assert not (folder / "victim").exists()
