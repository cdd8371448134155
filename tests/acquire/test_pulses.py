"""A slice flown by pulses is proven at its end: positions that the controller latched, sweeps that the analyzer kept, counted
against each other and against the plan, on simulated instruments that can fail at each."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from colure.acquire.journal import Journal
from colure.acquire.seal import record_of_rows
from colure.acquire.states import State
from colure.analysis.steps.places import to_planned_places
from colure.model.faults import PULSE_FAULTS, FaultKind
from colure.model.plan import ROLES, Role
from colure.model.record import Flag
from tests.acquire.hours import long_run
from tests.acquire.test_faults import with_faults
from tests.world import planned_rows, world_of

#: What is told of a line that suffers the fault.
TOLD = {
    FaultKind.PULSE_LOST: "the analyzer kept 11 sweeps of 12 pulses: a pulse was not heard",
    FaultKind.PULSE_DOUBLED: "the analyzer kept 13 or more sweeps of 12 pulses: a pulse was heard twice",
    FaultKind.LATCH_OFF: "pulse 7 of 12 was latched at",
    FaultKind.NEVER_READY: "not ready for pulses after 1 s, 'STAT:OPER:COND?' answered '0'",
}


def world_that_flies(folder, more, faults=()):
    """Return world and plan of a campaign that is flown, with more entries of goal.toml; the file is left as it was."""
    goal = folder / "goal.toml"
    text = goal.read_text(encoding="utf-8")
    goal.write_text('style = "fly"\n' + more + text, encoding="utf-8")
    with_faults(folder, *faults)
    world, plan = world_of(folder, kind="gcode")
    goal.write_text(text, encoding="utf-8")
    return world, plan


def flown(folder, journal_path, *, more="buffered = true\n", changed=None, faults=()):
    """Fly a campaign; return (outcome, texts of the warnings, rows of the planned points)."""
    world, plan = world_that_flies(folder, more, faults)
    if changed is not None:
        changed(world)
    journal, events = Journal.create(journal_path, plan, {}), []
    outcome = world.engine(plan, journal, listener=events.append).run()
    rows = planned_rows(journal), {row.plan_index: row for row in journal.rows() if row.plan_index >= 0}
    journal.close()
    assert sorted(kind for _, kind in world.stage.faults.happened) == sorted(kind for kind, _ in faults)
    return outcome, [event.text for event in events if event.kind == "warning"], rows


def require_equal(ours, theirs, *, time_s=1e-3) -> None:
    """Require the rows of two runs to say the same; moments by the middle of the line's time."""
    assert ours.keys() == theirs.keys()
    for index, row in ours.items():
        np.testing.assert_allclose(row.trace, theirs[index].trace, rtol=1e-9)
        np.testing.assert_array_equal(row.readback_deg, theirs[index].readback_deg)
        np.testing.assert_array_equal(row.rate_deg_s, theirs[index].rate_deg_s)
        assert abs(row.time_s - theirs[index].time_s) < time_s


def test_every_fault_of_pulses_is_tried_here():
    assert TOLD.keys() == PULSE_FAULTS


def test_sweeps_kept_by_the_analyzer_are_those_read_one_by_one_and_no_fault_of_pulses_gets_in(tiny_campaign, tmp_path):
    """Each fault spoils a line of its own, which is flown again."""
    done, warned, (_, one_by_one) = flown(
        tiny_campaign, tmp_path / "one.sqlite", more="", faults=((FaultKind.NEVER_READY, 5),)
    )
    assert done.state is State.DONE and len(warned) == 1 and TOLD[FaultKind.NEVER_READY] in warned[0]
    # A line has 12 pulses; positions are read only of flights whose sweeps are as many.
    faults = (
        (FaultKind.PULSE_LOST, 3),
        (FaultKind.PULSE_DOUBLED, 30),
        (FaultKind.LATCH_OFF, 4),
        (FaultKind.NEVER_READY, 9),
    )
    done, warned, (_, kept) = flown(tiny_campaign, tmp_path / "kept.sqlite", faults=faults)
    assert done.state is State.DONE and done.flagged == 0 and done.measured == len(kept)
    assert [sum(told in text for text in warned) for told in TOLD.values()] == [1, 1, 1, 1], warned
    assert len(warned) == 4
    # Four flights more make no later run the same moment; what is measured is.
    require_equal(kept, one_by_one, time_s=np.inf)


def with_room(folder) -> None:
    """Let the axis run a step further: after the last pulse's place come those of the other frequencies."""
    chamber = (folder / "chamber.toml").read_text(encoding="utf-8")
    wider = chamber.replace("min_deg = -185\nmax_deg = 185", "min_deg = -230\nmax_deg = 230")
    assert wider != chamber
    (folder / "chamber.toml").write_text(wider, encoding="utf-8")


def to_every_frequency(folder) -> None:
    """Let a campaign sweep three frequencies."""
    with_room(folder)
    goal = (folder / "goal.toml").read_text(encoding="utf-8").replace("points = 1", "points = 3\nswept_step_deg = 30")
    (folder / "goal.toml").write_text(goal.replace("stop_ghz = 24.0", "stop_ghz = 24.1"), encoding="utf-8")


def test_every_frequency_is_read_at_its_own_pulse_and_no_fault_of_a_pulse_gets_in(tiny_campaign, tmp_path):
    """A line has 12 sweeps of 3 frequencies. What each must read is asked of the simulated range, axes standing at the pulse's place."""
    to_every_frequency(tiny_campaign)
    worlds = []
    faults = (
        (FaultKind.PULSE_LOST, 20),
        (FaultKind.PULSE_DOUBLED, 80),
        (FaultKind.LATCH_OFF, 4),
        (FaultKind.NEVER_READY, 9),
    )
    more = 'buffered = true\npulse_each = "frequency"\n'
    done, warned, (_, rows) = flown(
        tiny_campaign, tmp_path / "each.sqlite", more=more, changed=worlds.append, faults=faults
    )
    assert done.state is State.DONE and done.flagged == 0 and done.measured == len(rows)
    told = ("kept 11 sweeps of 36 pulses", "heard 37 of 36 pulses, one for every frequency: a pulse was heard twice",
            "pulse 19 of 36 was latched at", TOLD[FaultKind.NEVER_READY])  # fmt: skip
    assert [sum(one in text for text in warned) for one in told] == [1, 1, 1, 1] and len(warned) == 4, warned
    simulated, names = worlds[0].scpi._range, tuple(worlds[0].campaign.chamber.axis_table)
    lines = [row for row in rows.values() if np.any(row.rate_deg_s)]
    assert len(lines) == 156
    for row in lines[::17]:
        speed = row.rate_deg_s
        for number in range(3):
            # Pulses every 10 deg; a frequency takes a millisecond.
            at = dict(
                zip(names, (row.readback_deg + np.sign(speed) * 10.0 * number + 0.5e-3 * speed).tolist(), strict=True)
            )
            reads = simulated.sweep(at, port=1, channel=1, time_s=row.time_s, power_dbm=0.0, if_bandwidth_hz=1000.0)[
                number
            ]
            assert abs(row.trace[number, 0] - reads) < 1e-6 * np.abs(row.trace).max() + 1e-9, (number, row.readback_deg)


#: The line's pulses that are lost and doubled, by what counts them, and the frequency that is told of: half a line apart, neither shows
#: against the median of all sweeps; within one sweep no other sweep begins late.
PAIRS = [((FaultKind.PULSE_LOST, 10), (FaultKind.PULSE_DOUBLED, 27)), ((FaultKind.PULSE_LOST, 11), (FaultKind.PULSE_DOUBLED, 11)),
         ((FaultKind.PULSE_DOUBLED, 16), (FaultKind.PULSE_LOST, 17))]  # fmt: skip


@pytest.mark.nightly
@pytest.mark.parametrize("pair", PAIRS)
def test_a_frequencys_pulse_lost_and_another_doubled_on_one_slice_are_told(tiny_campaign, tmp_path, pair):
    to_every_frequency(tiny_campaign)
    more = 'buffered = true\npulse_each = "frequency"\n'
    _, none, (_, right) = flown(tiny_campaign, tmp_path / "right.sqlite", more=more)
    done, warned, (_, rows) = flown(tiny_campaign, tmp_path / "pair.sqlite", more=more, faults=pair)
    assert done.state is State.DONE and not none and len(warned) == 1, warned
    assert "pulses come every" in warned[0] and "a pulse was lost, and another heard twice" in warned[0]
    require_equal(rows, right, time_s=np.inf)


@pytest.mark.nightly
def test_a_pulse_for_every_frequency_gives_the_pattern_that_sweeps_give(small_campaign, tmp_path):
    """The same places to -60 dB of the strongest reading (the step resolves twenty orders more than the device has)."""
    with_room(small_campaign)
    goal = small_campaign / "goal.toml"
    text = goal.read_text(encoding="utf-8").replace("points = 2", "points = 7") + "swept_step_deg = 6\n"
    goal.write_text(text, encoding="utf-8")
    fields = []
    for more in ("", 'pulse_each = "frequency"\n'):
        goal.write_text('style = "fly"\nbuffered = true\n' + more + text, encoding="utf-8")
        world, plan = world_of(small_campaign, kind="gcode")
        journal = Journal.create(tmp_path / f"{len(fields)}.sqlite", plan, {})
        assert world.engine(plan, journal).run().state is State.DONE
        record = to_planned_places(record_of_rows(plan, list(journal.rows())))
        journal.close()
        scan = record["role"].values == ROLES.index(Role.SCAN)
        fields.append(record["trace"].values[scan])
    assert np.abs(fields[1] - fields[0]).max() < 1e-3 * np.abs(fields[0]).max()


class Late:
    """A controller whose pulses come late by a share of a step, evenly or from one line on."""

    def __init__(self, share: float) -> None:
        self._share = share

    def __call__(self, world) -> None:
        set_pulses = world.stage.set_pulses
        world.stage.set_pulses = lambda pulses: set_pulses(
            replace(pulses, start_deg=pulses.start_deg + self._share * pulses.step_deg)
        )


@pytest.mark.nightly
@pytest.mark.parametrize("more", ["buffered = true\n", ""])
def test_the_record_holds_the_latched_positions(tiny_campaign, tmp_path, more):
    done, warned, (_, rows) = flown(tiny_campaign, tmp_path / "late.sqlite", more=more, changed=Late(0.08))
    assert done.state is State.DONE and not warned
    lines = [row for row in rows.values() if np.any(row.rate_deg_s)]
    assert len(lines) == 156
    off = [row.readback_deg - row.commanded_deg for row in lines]
    np.testing.assert_allclose([one[np.argmax(np.abs(row.rate_deg_s))] * np.sign(row.rate_deg_s.sum()) for one, row in zip(off, lines, strict=True)], 0.08 * 30.0, atol=2e-4)  # fmt: skip


@pytest.mark.nightly
@pytest.mark.parametrize("more", ["buffered = true\n", ""])
def test_a_latched_position_far_from_its_place_waits_for_a_person(tiny_campaign, tmp_path, more):
    faults = tuple((FaultKind.LATCH_OFF, at) for at in (2, 3, 4))
    done, warned, (_, rows) = flown(tiny_campaign, tmp_path / "far.sqlite", more=more, faults=faults)
    assert done.state is State.FAULTED and "latched at" in done.reason and "after 3 attempts" in done.reason
    assert len(warned) == 2 and sum(bool(np.any(row.rate_deg_s)) for row in rows.values()) == 12, "the first line only"


@pytest.mark.nightly
def test_a_pulse_lost_and_another_doubled_on_one_slice_are_told_by_the_moments(tiny_campaign, tmp_path):
    _, _, (_, right) = flown(tiny_campaign, tmp_path / "right.sqlite")
    faults = ((FaultKind.PULSE_LOST, 3), (FaultKind.PULSE_DOUBLED, 8))
    done, warned, (_, rows) = flown(tiny_campaign, tmp_path / "both.sqlite", faults=faults)
    assert done.state is State.DONE and len(warned) == 1 and "a pulse was lost, and another heard twice" in warned[0]
    require_equal(rows, right, time_s=np.inf)


@pytest.mark.nightly
def test_moments_of_kept_sweeps_are_those_of_their_pulses(tiny_campaign, tmp_path):
    _, _, (_, one_by_one) = flown(tiny_campaign, tmp_path / "one.sqlite", more="")
    _, _, (_, kept) = flown(tiny_campaign, tmp_path / "kept.sqlite")
    require_equal(kept, one_by_one, time_s=1e-5)


@pytest.mark.nightly
def test_an_overload_in_the_middle_of_a_slice_is_heard_at_its_end(tiny_campaign, tmp_path):
    """The condition is gone by then: the event register tells."""
    done, warned, _ = flown(tiny_campaign, tmp_path / "once.sqlite", faults=((FaultKind.OVERLOAD, 22),))
    assert done.state is State.DONE and done.flagged == 0, "flown again"
    faults = tuple((FaultKind.OVERLOAD, at) for at in (22, 34, 46))
    done, warned, (_, rows) = flown(tiny_campaign, tmp_path / "stays.sqlite", faults=faults)
    assert done.state is State.DONE and done.flagged == 12, warned
    assert {row.flags for row in rows.values()} == {0, int(Flag.OVERLOAD)}


@pytest.mark.nightly
@pytest.mark.parametrize("kind", ["not-a-number", "infinite", "all-zero", "frozen", "stale", "short-block", "long-block", "byte-order",
                                  "analyzer-hang", "analyzer-drop", "lost-settings"])  # fmt: skip
def test_faults_of_the_analyzer_in_the_middle_of_a_slice_are_flown_again(tiny_campaign, tmp_path, kind):
    _, _, (_, right) = flown(tiny_campaign, tmp_path / "right.sqlite")
    done, warned, (_, rows) = flown(tiny_campaign, tmp_path / "faulty.sqlite", faults=((FaultKind(kind), 22),))
    assert done.state is State.DONE and done.flagged == 0 and warned
    require_equal(rows, right, time_s=np.inf)


@pytest.mark.nightly
def test_an_axis_that_creeps_is_flown_again(tiny_campaign, tmp_path):
    """At a tenth of the speed every frequency would be read elsewhere than the line says."""
    _, _, (_, right) = flown(tiny_campaign, tmp_path / "right.sqlite")
    done, warned, (_, rows) = flown(tiny_campaign, tmp_path / "slow.sqlite", faults=((FaultKind.SLOW, 19),))
    assert done.state is State.DONE and len(warned) == 1 and "flew at" in warned[0]
    require_equal(rows, right, time_s=np.inf)


@pytest.mark.nightly
def test_a_frozen_trace_of_an_unknown_place_is_not_the_next_flights_first_point(tiny_campaign, tmp_path):
    """Faults at random by a recorded seed: the first trace of two missing points was refused, the flight given up, and the analyzer froze."""
    kinds = ("fly", "latched", "kept", "each")
    long_run(tiny_campaign, tmp_path, 20932, hours=1.0, faults=0.0, kinds=kinds, first=22)
