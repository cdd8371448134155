"""Pause, resume, stop and abort in the real engine, in virtual time and over the wire."""

from __future__ import annotations

import threading
import time

import numpy as np
import pytest

from colure.acquire.journal import Journal
from colure.acquire.outcome import Options
from colure.acquire.states import State
from colure.acquire.watchdog import Watchdog
from colure.instruments.protocols import LostError
from colure.model.plan import ROLES, Role
from tests.world import planned_rows, world_of


@pytest.fixture
def tiny(tiny_campaign, tmp_path):
    world, plan = world_of(tiny_campaign, kind="gcode")
    journal = Journal.create(tmp_path / "j.sqlite", plan, {})
    yield world, plan, journal
    journal.close()


def at(index, action):
    """A listener that acts once, when a point is announced."""

    def listen(event):
        if event.data.get("measured") == index:
            action()

    return listen


def test_pause_finishes_the_point_and_resume_goes_on_to_the_same_record(tiny, tiny_campaign, tmp_path):
    world, plan, journal = tiny
    events, engines = [], []

    def listen(event):
        events.append(event.text)
        if event.data.get("measured") == 40 and event.kind == "point":
            engines[0].pause("coffee")
        if event.data.get("state") == "paused":
            assert ("analyzer", b"OUTP OFF\n") in world.wire[-4:]  # source off while somebody may come near
            threading.Timer(0.05, engines[0].resume).start()

    world.log_wire = True
    engines.append(world.engine(plan, journal, listener=listen, options=Options(threads=False, pause_limit_s=10.0)))
    assert engines[0].run().state is State.DONE
    assert "paused: coffee" in events and "running: resumed by a person" in events
    whole_world, _ = world_of(tiny_campaign, kind="gcode")
    whole = Journal.create(tmp_path / "whole.sqlite", plan, {})
    whole_world.engine(plan, whole).run()
    assert planned_rows(whole) == planned_rows(journal)
    # A pause ends with a tie of its own, kept apart from the planned ones.
    assert any(ROLES[row.role] is Role.RESUME for row in journal.rows())
    whole.close()


def test_a_pause_that_nobody_ends_becomes_a_stop_with_its_reason(tiny):
    world, plan, journal = tiny
    engines = []
    engines.append(world.engine(plan, journal, listener=at(20, lambda: engines[0].pause("telephone"))))
    outcome = engines[0].run()
    assert outcome.state is State.FAULTED and "nobody came: telephone" in outcome.reason
    assert any(kind == "state" and "paused: telephone" in text for _, kind, text in journal.events())


def test_stop_outranks_a_pause(tiny):
    world, plan, journal = tiny
    engines = []

    def both():
        engines[0].pause("coffee")
        engines[0].stop("fire drill")

    engines.append(world.engine(plan, journal, listener=at(20, both)))
    outcome = engines[0].run()
    assert outcome.state is State.STOPPED and outcome.reason == "fire drill" and outcome.measured == 20


def test_abort_takes_the_power_and_the_next_run_must_home(tiny):
    world, plan, journal = tiny
    engines = []
    engines.append(world.engine(plan, journal, listener=at(20, lambda: engines[0].abort("smoke"))))
    world.log_wire = True
    outcome = engines[0].run()
    assert outcome.state is State.ABORTED and outcome.reason == "smoke"
    assert any(data.startswith(b"M18") for name, data in world.wire[-8:])
    refused = world.engine(plan, journal).run()
    assert refused.state is State.FAULTED and "not trusted since: smoke" in refused.reason
    homed = world.engine(plan, journal, options=Options(home=True, threads=False)).run()
    assert homed.state is State.DONE and journal.meta("distrust") is None


def test_an_open_door_pauses_and_closing_alone_starts_nothing(tiny):
    world, plan, journal = tiny
    moves, engines = [], []

    def listen(event):
        if event.data.get("measured") == 30 and event.kind == "point":
            world.stage.open_door(seconds=5.0)
        if event.data.get("state") == "paused":
            assert "door open" in event.text
            world.clock.sleep(60.0)  # long closed again
            moves.append(dict(world.stage.positions()))
            time.sleep(0.05)
            moves.append(dict(world.stage.positions()))
            assert world.stage.held.is_set()
            engines[0].resume()

    # The resume comes from inside the listener, before the engine waits for it: it must not be lost.
    engines.append(world.engine(plan, journal, listener=listen, options=Options(threads=False, pause_limit_s=0.5)))
    outcome = engines[0].run()
    assert outcome.state is State.DONE, outcome
    assert moves[0] == moves[1]


def test_a_defect_of_our_own_leaves_a_safe_chamber_and_is_not_hidden(tiny, monkeypatch):
    world, plan, journal = tiny
    engine = world.engine(plan, journal)
    monkeypatch.setattr(engine._station, "fresh", lambda *_: 1 / 0)
    world.log_wire = True
    with pytest.raises(ZeroDivisionError):
        engine.run()
    assert world.stage.held.is_set() and ("analyzer", b"OUTP OFF\n") in world.wire[-4:]
    assert "internal error, ZeroDivisionError" in journal.meta("stops")[-1]["reason"]


def test_a_listener_that_fails_does_not_stop_the_run(tiny):
    world, plan, journal = tiny

    def listen(event):
        raise ValueError("a bug in a page")

    assert world.engine(plan, journal, listener=listen).run().state is State.DONE
    assert any("a listener failed: a bug in a page" in text for _, _, text in journal.events())


def test_a_computer_that_slept_is_noticed(tiny):
    world, plan, journal = tiny

    def sleep():
        world.clock.slept_s += 120.0

    outcome = world.engine(plan, journal, listener=at(25, sleep)).run()
    assert outcome.state is State.FAULTED and "slept for 120 s" in outcome.reason
    assert "slept" in journal.meta("distrust")


def test_ties_come_more_often_while_the_chamber_drifts(tiny_campaign, tmp_path):
    text = (tiny_campaign / "twin.toml").read_text(encoding="utf-8")
    (tiny_campaign / "twin.toml").write_text(
        text + "drift_db = 8.0\ndrift_deg = 60\ndrift_time_s = 300\n", encoding="utf-8"
    )
    chamber = (tiny_campaign / "chamber.toml").read_text(encoding="utf-8")
    (tiny_campaign / "chamber.toml").write_text(
        chamber.replace("tie_interval_s = 180", "tie_interval_s = 40"), encoding="utf-8"
    )
    world, plan = world_of(tiny_campaign, kind="gcode")
    journal = Journal.create(tmp_path / "j.sqlite", plan, {})
    assert world.engine(plan, journal).run().state is State.DONE
    extra = [row for row in journal.rows() if ROLES[row.role] is Role.TIE and row.plan_index < 0]
    planned = int(np.sum(plan.role == ROLES.index(Role.TIE)))
    assert extra and any("drifts faster" in text for _, _, text in journal.events())
    print(f"{planned} planned ties, {len(extra)} extra ones")
    journal.close()


def test_ties_come_by_time_when_the_plan_is_late(tiny_campaign, tmp_path):
    world, plan = world_of(tiny_campaign, kind="gcode")
    journal = Journal.create(tmp_path / "j.sqlite", plan, {})

    def late(event):
        if event.data.get("measured") == 30 and event.kind == "point":
            world.clock.sleep(1000.0)  # a slow analyzer, a slow disk, anything

    assert world.engine(plan, journal, listener=late).run().state is State.DONE
    assert any("since the last one" in text for _, kind, text in journal.events() if kind == "tie")
    journal.close()


def test_the_same_seed_gives_the_same_trace_of_events(tiny_campaign, tmp_path):
    text = (tiny_campaign / "twin.toml").read_text(encoding="utf-8")
    (tiny_campaign / "twin.toml").write_text(text + "random_faults_per_1000 = 30\n", encoding="utf-8")
    traces = []
    for number in range(2):
        world, plan = world_of(tiny_campaign, kind="line")
        journal = Journal.create(tmp_path / f"{number}.sqlite", plan, {})
        events = []
        world.engine(plan, journal, listener=lambda event, events=events: events.append((event.kind, event.text))).run()
        traces.append((events, journal.events()))
        journal.close()
    assert traces[0] == traces[1] and len(traces[0][0]) > 5


def test_the_watchdog_trips_once_when_the_engine_no_longer_looks():
    reasons, beats = [], []
    dog = Watchdog(reasons.append, lambda: beats.append(time.monotonic()))
    dog.start()
    with dog.guarding():
        for _ in range(8):
            time.sleep(0.05)
            dog.alive()
        assert not reasons and beats
        end = time.monotonic() + 30.0
        while not reasons and time.monotonic() < end:
            time.sleep(0.01)
        time.sleep(0.2)  # once
    dog.close()
    assert len(reasons) == 1 and "did not look at moving axes" in reasons[0]


def test_the_watchdog_waits_longer_on_a_slow_line_but_not_for_ever():
    dog = Watchdog(lambda reason: None, lambda: None)
    assert dog.limit_s == 0.5
    dog.exchange_took(0.3)  # seventeen exchanges at 9600 baud
    assert dog.limit_s == pytest.approx(1.8)
    dog.exchange_took(30.0)
    assert dog.limit_s == 5.0
    for _ in range(100):
        dog.exchange_took(0.001)
    assert dog.limit_s == 0.5


def test_a_computer_that_gives_nobody_time_is_no_reason_to_brake(monkeypatch):
    """The watchdog itself was not run for 3 s, as under a burst of load: that says nothing of the engine."""
    reasons, now = [], [0.0]
    dog = Watchdog(reasons.append, lambda: None)
    steps = iter([0.1, 0.1, 3.0, 0.1])

    def wait(_):
        step = next(steps, None)
        if step is None:
            return True
        now[0] += step
        return False

    monkeypatch.setattr("colure.acquire.watchdog.time.monotonic", lambda: now[0])
    monkeypatch.setattr(dog._end, "wait", wait)
    with dog.guarding():
        dog._run()
    assert not reasons


def test_a_recovery_waits_for_the_hold_that_the_watchdog_sent(tiny):
    """On a slow line that hold is under way for a while; released before it arrives, the axes would seem held by somebody else."""
    world, plan, journal = tiny
    engine = world.engine(plan, journal)
    station, arrived = engine._station, threading.Event()

    class SlowLine:
        def hold(self):
            time.sleep(0.3)
            arrived.set()

    engine._axes = SlowLine()
    braking = threading.Thread(target=engine._late, args=("engine did not look",))
    braking.start()
    while not station.late:
        time.sleep(0.001)
    with pytest.raises(LostError, match="engine did not look; the axes were braked"):
        station.alive()
    assert arrived.is_set()
    braking.join()
