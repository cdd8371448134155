"""Ranges of several instruments over real sockets, in real time: controllers, interlock, sensors, source, switch, states."""

from __future__ import annotations

import random
import threading
import time
from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace

import numpy as np
import pytest

from colure.acquire.journal import Journal
from colure.acquire.outcome import Options
from colure.acquire.states import State
from colure.app import services
from colure.app.services.connecting import instruments
from colure.app.services.jogging import jogger, sweeps
from colure.app.storage.folders import run_folder
from colure.errors import GuardError, InputError, InstrumentError, LockedError
from colure.instruments.protocols import DoorOpenError
from colure.model.conditions import humidity_percent, spans_of
from colure.model.faults import PULSE_FAULTS, ROLE_FAULTS, FaultKind
from colure.model.files import open_dataset
from colure.model.plan import ROLES, Role
from tests.instruments import languages
from tests.instruments.peers import Motors, Tcp
from tests.ranges import CUT, TWO, range_campaign, wired

DOOR = '[[instruments]]\nrole = "interlock"\nname = "door"\n'
CHAIN = '[[instruments]]\nrole = "interlock"\nname = "chain"\nstands_for = "emergency-stop"\n'
AIR = '[[instruments]]\nrole = "sensor"\nname = "air"\nevery_s = 0.1\ntimeout_s = 0.2\n'
#: Stop latency that the project promises, seconds; on a computer that does other things too the longest of few may be more.
PROMISED_S, LONGEST_S = 0.05, 0.2


def run_of(campaign, name, *, pause_limit_s=0.3, **options):
    """Acquire the campaign's plan; returns (outcome, events, journal's content)."""
    _, plan = services.make_plan(campaign.folder)
    run, events = run_folder(campaign.folder, name), []
    outcome = services.acquire(campaign, plan, run, listener=events.append,
                               options=Options(pause_limit_s=pause_limit_s, **options))  # fmt: skip
    return outcome, [event.text for event in events], run


def goes(axes, target, here=0.0):
    """Start all axes from one place to another, as the engine does."""
    names = ("azimuth", "roll", "probe")
    axes.begin(dict.fromkeys(names, target), from_deg=dict.fromkeys(names, here))


def until(fact, limit_s=3.0):
    end = time.monotonic() + limit_s
    while not fact():
        assert time.monotonic() < end, "not in time"
        time.sleep(0.001)


def test_two_controllers_measure_what_one_does(tmp_path, nightly):
    one = "[[instruments]]\nrole = 'receiver'\n[[instruments]]\nrole = 'axis-controller'\n"
    traces = []
    for name, roles in (("one", one), ("two", TWO)):
        folder = range_campaign(tmp_path / name, roles)
        campaign, plan = services.make_plan(folder)
        assert services.acquire(campaign, plan, run_folder(folder, "a")).state is State.DONE
        record = open_dataset(run_folder(folder, "a").record)
        np.testing.assert_allclose(record["readback_deg"].values, record["commanded_deg"].values, atol=1e-3)
        traces.append(record["trace"].values)
    np.testing.assert_allclose(traces[0], traces[1], rtol=1e-6)


def test_a_stop_reaches_all_controllers_at_once_and_a_dead_one_delays_nobody(tmp_path, prompt):
    """Told to stop: p99 50 ms (our own promise), whichever controller is dead; the move takes 3 s, a dead line 10 s."""
    folder = range_campaign(tmp_path / "c", TWO)
    with wired(folder) as (campaign, twin), instruments(campaign) as bench:
        floor, mast = twin.controllers["floor"], twin.controllers["mast"]
        taken = []
        for _ in range(20):
            goes(bench.axes, 60.0)
            time.sleep(0.02)
            begin = time.monotonic()
            bench.axes.hold()
            until(lambda: floor.stage.held.is_set() and mast.stage.held.is_set())
            taken.append(time.monotonic() - begin)
            bench.axes.release()
            goes(bench.axes, 0.0, 60.0)
            bench.axes.hold()
            bench.axes.release()
        prompt(taken, PROMISED_S)
        prompt(taken, LONGEST_S, share=1.0)
        goes(bench.axes, 160.0)
        mast.dead = True
        with ThreadPoolExecutor(1) as stopping:
            begin = time.monotonic()
            told = stopping.submit(bench.axes.hold)
            until(floor.stage.held.is_set)
            prompt([time.monotonic() - begin], LONGEST_S)
            assert not mast.stage.held.is_set()
            told.result()  # this dialect's hold has no answer: that the mast is dead shows at the next reading


def test_a_controller_that_dies_ends_the_run_with_the_others_held_and_is_named(tmp_path, nightly):
    folder = range_campaign(
        tmp_path / "c", TWO.replace('name = "mast"', 'name = "mast"\ntimeout_s = 0.3'),
        twin='noise = false\n[[faults]]\nkind = "controller-dead"\nat = 1\n', scan=CUT + "\noffset_deg = [0, 90]",
    )  # fmt: skip
    with wired(folder) as (campaign, twin):
        outcome, texts, _ = run_of(campaign, "a")
        mast = twin.resources["mast"]
        assert twin.controllers["floor"].stage.held.is_set()
    assert outcome.state is State.FAULTED and outcome.measured != outcome.total
    assert any(mast in text for text in texts), texts


def test_each_controller_has_a_lock_of_its_own(tmp_path):
    folder = range_campaign(tmp_path / "c", TWO)
    with wired(folder) as (campaign, _), instruments(campaign), pytest.raises(LockedError), instruments(campaign):
        pass


def test_limits_and_keep_outs_count_over_controllers(tmp_path):
    box = '[[keep_out]]\nname = "mast meets bracket"\nazimuth = [20, 40]\nprobe = [60, 100]\n'
    folder = range_campaign(tmp_path / "c", TWO + box)
    with wired(folder) as (campaign, twin), jogger(campaign) as hand:
        # Axes of two controllers do not run on a straight line: the whole box between is forbidden.
        with pytest.raises(GuardError, match="mast meets bracket"):
            hand.to({"azimuth": 50.0, "probe": 70.0})
        with pytest.raises(GuardError, match="axis probe target = 300: must be from -200 to 200 deg"):
            hand.to({"probe": 300.0})
        assert hand.to({"azimuth": 3.0, "probe": 4.0}) == pytest.approx({"azimuth": 3.0, "roll": 0.0, "probe": 4.0})
        assert twin.controllers["mast"].stage.positions() == pytest.approx({"probe": 4.0})


def test_a_turntable_measures_cuts_in_its_plane_and_refuses_everything_else_before_it_moves(tmp_path):
    roll = (
        "[positioner.roll]           # reads phi\nmin_deg = -10\nmax_deg = 190\n"
        "speed_deg_s = 150\nacceleration_deg_s2 = 1500\nsettle_s = 0.02\n"
    )
    table = (("load_limit_kg = 5\n", "load_limit_kg = 5\nturntable = true\n"), (roll, ""))
    roles = TWO.replace('["azimuth", "roll"]', '["azimuth"]')
    folder = range_campaign(tmp_path / "c", roles, chamber=table)
    with wired(folder) as (campaign, twin):
        outcome, _, run = run_of(campaign, "a")
        assert outcome.state is State.DONE
        assert list(twin.controllers["floor"].stage.positions()) == ["azimuth"], "roll has no motor"
        with (
            instruments(campaign) as bench,
            pytest.raises(InstrumentError, match="axis roll target = 5: must be 0 deg"),
        ):
            bench.axes.begin({"azimuth": 0.0, "roll": 5.0, "probe": 0.0})
    record = open_dataset(run.record)
    scan = record.isel(point=np.flatnonzero(record["role"].values == ROLES.index(Role.SCAN)))
    assert np.all(record["readback_deg"].values[:, 1] == 0.0)
    level = np.abs(scan["trace"].values[:, 0, 0])
    assert scan["readback_deg"].values[np.argmax(level), 0] == pytest.approx(0.0, abs=0.01), (
        "the beam is on the boresight"
    )
    for scan in ('theta_deg = "-20:20:10"\nphi_deg = 45', 'azimuth_deg = 0\nelevation_deg = "0:20:5"'):
        (folder / "goal.toml").write_text(
            f'name = "x"\nstart_ghz = 24.0\nstop_ghz = 24.1\npoints = 3\n[scan]\n{scan}\n'
        )
        with pytest.raises(InputError, match="turntable = true: only azimuth turns"):
            services.make_plan(folder)
    (folder / "goal.toml").write_text('name = "x"\nstart_ghz = 24.0\nstop_ghz = 24.1\npoints = 3\n')
    with pytest.raises(InputError, match=r"turntable = true: only azimuth turns\n.*a turntable measures cuts"):
        services.make_plan(folder)


def test_a_door_that_opens_at_a_random_instant_brakes_all_axes_and_only_a_person_resumes(tmp_path, request, prompt):
    for seed in range(20 if request.config.getoption("--nightly") else 1):
        door_opens(tmp_path / str(seed), seed, prompt)


def door_opens(tmp_path, seed, prompt):
    """Run with a door that opens once, is ignored once, and is closed before a person resumes."""
    instant_s = random.Random(seed).uniform(0.1, 0.6)
    tmp_path.mkdir()
    folder = range_campaign(tmp_path / "c", TWO + DOOR + AIR)
    with wired(folder) as (campaign, twin):
        door, engines = twin.small["door"], []
        _, plan = services.make_plan(folder)
        run, moved = run_folder(folder, "a"), []

        def open_it():
            time.sleep(instant_s)
            door.closed = False
            begin = time.monotonic()
            until(lambda: all(one.stage.held.is_set() for one in twin.controllers.values()))
            moved.append(time.monotonic() - begin)

        person = threading.Thread(target=open_it)
        states = []

        def listen(event):
            if event.kind != "state":
                return
            states.append(event.text)
            if event.data["state"] == "paused" and len([s for s in states if "paused" in s]) == 1:
                # Resumed although it is open: it rests again. Closed: nothing starts by itself.
                engines[0].resume()
            elif event.data["state"] == "paused":
                door.closed = True
                threading.Timer(0.3, engines[0].resume).start()

        person.start()
        outcome = services.acquire(campaign, plan, run, listener=listen, on_engine=engines.append,
                                   options=Options(pause_limit_s=5.0))  # fmt: skip
        person.join()
    assert outcome.state is State.DONE, outcome
    assert [text.split(":")[0] for text in states].count("paused") == 2
    assert "door is open" in states[1] and "make sure that nobody is inside" in states[1]
    prompt(moved, 0.05 + LONGEST_S)  # one reading of the contact and the stop
    journal = Journal.resume(run.journal)
    assert any("door is open" in text for _, kind, text in journal.events() if kind == "state")
    journal.close()


@pytest.mark.parametrize(("kind", "words"), [("interlock-open", "door is open"),
                                             ("interlock-lost", "door cannot be read and counts as open")])  # fmt: skip
def test_an_open_or_lost_interlock_pauses_and_nobody_coming_ends_the_run_held(tmp_path, kind, words):
    twin = f'noise = false\n[[faults]]\nkind = "{kind}"\nat = 20\n'
    folder = range_campaign(tmp_path / "c", TWO + DOOR.replace("door", "door") + "timeout_s = 0.1\n", twin=twin)
    with wired(folder) as (campaign, served):
        outcome, texts, run = run_of(campaign, "a")
        assert all(one.stage.held.is_set() for one in served.controllers.values())
        with jogger(campaign) as hand, pytest.raises(DoorOpenError, match=words):
            hand.to({"azimuth": 1.0})
    assert outcome.state is State.FAULTED and words in outcome.reason, outcome
    assert any(text.startswith("paused") and words in text for text in texts)
    journal = Journal.resume(run.journal)
    assert words in journal.meta("stops")[-1]["reason"]
    journal.close()


def test_an_emergency_stop_ends_the_run_and_axes_must_be_homed(tmp_path):
    folder = range_campaign(tmp_path / "c", TWO + CHAIN)
    with wired(folder) as (campaign, twin):
        chain = twin.small["chain"]
        threading.Timer(0.3, lambda: setattr(chain, "closed", False)).start()
        outcome, _, _ = run_of(campaign, "a")
        assert outcome.state is State.FAULTED and "emergency stop: chain is open" in outcome.reason
        outcome, _, _ = run_of(campaign, "a")
        assert outcome.state is State.FAULTED and "emergency stop" in outcome.reason, "still open"
        chain.closed = True
        outcome, _, _ = run_of(campaign, "a")
        assert outcome.state is State.FAULTED and "position not trusted" in outcome.reason
        outcome, _, _ = run_of(campaign, "a", home=True)
        assert outcome.state is State.DONE, outcome


def test_an_interlock_that_answers_nonsense_or_late_is_open(tmp_path):
    folder = range_campaign(tmp_path / "c", TWO + DOOR + "timeout_s = 0.1\n")
    with wired(folder) as (campaign, twin), instruments(campaign) as bench:
        door = twin.small["door"]
        honest = door.answer
        for answer in ("CLOSED?", "", "OPEN CLOSED", "1"):
            door.answer = lambda line, answer=answer: answer if line.strip() == "CONTACT?" else honest(line)
            with pytest.raises(DoorOpenError):
                goes(bench.axes, 5.0)
            door.answer = honest
            bench.contacts.acknowledge()

        def late(line):
            time.sleep(0.25)
            return honest(line)

        door.answer, door.closed = late, True
        with pytest.raises(DoorOpenError):
            goes(bench.axes, 5.0)
        door.answer, door.closed = honest, False
        # The late "closed" must not be taken for the answer to a later question.
        for _ in range(5):
            with pytest.raises(DoorOpenError):
                bench.contacts.require_closed()
            time.sleep(0.06)


def test_sensors_go_with_every_point_and_a_lost_one_is_nan_and_stops_nothing(tmp_path):
    twin = 'noise = false\n[[faults]]\nkind = "sensor-lost"\nat = 5\n'
    folder = range_campaign(tmp_path / "c", TWO + AIR, twin=twin, scan=CUT + "\ndwell_s = 0.5")
    with wired(folder) as (campaign, _):
        outcome, texts, run = run_of(campaign, "a")
    assert outcome.state is State.DONE and outcome.flagged == 0
    assert sum("sensor air.temperature_c is lost" in text for text in texts) == 1
    record = open_dataset(run.record)
    assert list(record["sensor"].values) == ["air.temperature_c", "air.humidity_percent"]
    found = record["conditions"].values
    assert found.shape == (record.sizes["point"], 2)
    assert np.all(np.abs(found[0] - [23.0, 41.0]) < [0.1, 0.1]), "the simulated air, 23 deg C"
    assert np.isnan(found[-1]).all()
    spans = {one.name: one for one in spans_of(record)}
    share = np.isnan(found[:, 0]).mean()
    assert 0.0 < share < 1.0 and spans["air.temperature_c"].lost == pytest.approx(share)
    assert humidity_percent(spans_of(record)) == (41.0, 41.0)


def test_a_sensor_that_is_not_there_at_the_start_stops_nothing_and_is_logged_once_it_comes(tmp_path):
    folder = range_campaign(tmp_path / "c", TWO + AIR)
    with wired(folder) as (campaign, twin):
        twin.small["air"].silent = True
        with instruments(campaign) as bench:
            assert bench.sensors.names == ("air.temperature_c", "air.humidity_percent")
            assert np.isnan(list(bench.sensors.latest().values())).all()
            twin.small["air"].silent = False
            until(lambda: np.isfinite(list(bench.sensors.latest().values())).all())


def test_every_fault_of_a_smaller_instrument_is_tried_here():
    tried = {"interlock-open", "interlock-lost", "sensor-lost", "controller-dead", "source-stays-on"}
    assert {str(kind) for kind in ROLE_FAULTS - PULSE_FAULTS} == tried and FaultKind.SOURCE_STAYS_ON in ROLE_FAULTS


def test_a_stop_says_which_controller_does_not_answer(tmp_path):
    """Held blindly: a person must know that the axes of a dead controller may still move."""
    folder = range_campaign(tmp_path / "c", TWO.replace('name = "mast"', 'name = "mast"\ntimeout_s = 0.3'))
    with wired(folder) as (campaign, twin):
        _, plan = services.make_plan(folder)
        engines, texts, rest = [], [], []

        def listen(event):
            texts.append(event.text)
            if event.kind == "state":
                rest.append(event.data["at_rest"])
            if event.kind == "point" and event.data["measured"] == 10:
                twin.controllers["mast"].dead = True
                engines[0].stop("somebody pressed s")

        outcome = services.acquire(campaign, plan, run_folder(folder, "a"), listener=listen, on_engine=engines.append)
        assert outcome.state is State.STOPPED and twin.controllers["floor"].stage.held.is_set()
    assert any("axes may still move, look before you go near: mast:" in text for text in texts), texts
    # Who watches goes on to show that something may move.
    assert rest == [False, False]


class Rotator(languages.Talker):
    """The line dialect of another make, with one axis."""

    PROFILE = languages.Talker.PROFILE.replace('azimuth.name = "AZ"\nroll.name = "RO"\n', "")


def test_a_probe_roll_of_another_make_beside_the_positioner(tmp_path, prompt):
    """Coordinated G-code on the floor, an echoing line dialect with pushed greetings on the mast."""
    folder = range_campaign(tmp_path / "c", TWO + DOOR, scan=CUT + "\noffset_deg = [0, 90]", twin="noise = true\n")
    motors = Motors(150.0)
    server = Tcp(lambda: Rotator(motors))
    (folder / "rotator.toml").write_text(Rotator.PROFILE, encoding="utf-8")
    try:
        with wired(folder) as (campaign, twin):
            chamber = campaign.chamber
            own = tuple(
                one.model_copy(update={"resource": server.resource, "profile": "rotator"})
                if one.name == "mast"
                else one
                for one in chamber.instruments
            )
            mixed = replace(campaign, chamber=chamber.model_copy(update={"instruments": own}))
            with jogger(mixed) as hand:
                assert hand.prove("probe") == pytest.approx(1.0, abs=0.05)
                assert "held after" in hand.prove_hold("probe") and "held after" in hand.prove_hold("azimuth")
            outcome, _, run = run_of(mixed, "a")
            assert outcome.state is State.DONE, outcome
            with instruments(mixed) as bench:
                goes(bench.axes, 80.0)
                time.sleep(0.05)
                twin.small["door"].closed = False
                begin = time.monotonic()
                until(lambda: motors.held and twin.controllers["floor"].stage.held.is_set())
                prompt([time.monotonic() - begin], 0.05 + LONGEST_S)
    finally:
        server.close()
    record = open_dataset(run.record)
    np.testing.assert_allclose(record["readback_deg"].values, record["commanded_deg"].values, atol=0.02)
    assert set(np.round(record["commanded_deg"].values[:, 2])) >= {0.0, 90.0}


def test_no_source_is_switched_on_for_a_look_while_the_interlock_is_open(tmp_path):
    folder = range_campaign(tmp_path / "c", TWO + DOOR)
    with wired(folder) as (campaign, twin):
        _, plan = services.make_plan(folder)
        twin.small["door"].closed = False
        with pytest.raises(DoorOpenError, match="door is open"):
            next(sweeps(campaign, plan, 1))
        twin.small["door"].closed = True
        assert next(sweeps(campaign, plan, 1)).trace.shape == (3, 1)
