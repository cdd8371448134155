"""The forecast learns the real axes from a run; and a scan everybody knows takes the time everybody knows."""

from __future__ import annotations

import numpy as np
import pytest

from colure.acquire.journal import Journal
from colure.acquire.seal import record_of
from colure.acquire.states import State
from colure.app import services
from colure.errors import InputError
from colure.model.chamber import Analyzer, Axis
from colure.model.goal import Goal
from colure.planning.duration import coordinated_time, move_time, point_times, sweep_time
from colure.planning.learning import learn, recall, save
from tests.world import world_of


def real_axes(world, **changes):
    """Let the simulated hardware be another than the declared one."""
    world.stage.axes = {
        name: axis.model_copy(update=changes[name]) if name in changes else axis
        for name, axis in world.stage.axes.items()
    }


def test_a_slower_azimuth_is_found_and_the_next_forecast_uses_it(tiny_campaign, tmp_path):
    world, plan = world_of(tiny_campaign, kind="gcode")
    real_axes(world, azimuth={"speed_deg_s": 13.0, "acceleration_deg_s2": 22.0}, roll={"speed_deg_s": 21.0})
    journal = Journal.create(tmp_path / "j.sqlite", plan, {})
    assert world.engine(plan, journal).run().state is State.DONE
    took = world.time.now()
    declared = plan.predicted["duration_s"]
    assert took > 1.2 * declared
    record = record_of(journal)
    journal.close()
    learned = learn(record, world.campaign.chamber, "first")
    print(f"azimuth {learned.axes['azimuth']}, roll {learned.axes['roll']}, residual {1e3 * learned.residual_s:.2f} ms")
    assert learned.axes["azimuth"].speed_deg_s == pytest.approx(13.0, rel=0.02)
    assert learned.axes["azimuth"].acceleration_deg_s2 == pytest.approx(22.0, rel=0.05)
    save(learned, tiny_campaign)
    assert recall(tiny_campaign).axes["azimuth"].speed_deg_s == pytest.approx(
        learned.axes["azimuth"].speed_deg_s, rel=1e-5
    )
    _, again = services.make_plan(tiny_campaign)
    # Forecasts change, what is measured does not: a run begun before goes on.
    assert again.hash == plan.hash and again.predicted["learned_from"] == "first"
    assert again.predicted["declared_duration_s"] == declared
    assert again.predicted["duration_s"] == pytest.approx(took, rel=0.03)


def test_declared_axes_are_confirmed_when_they_are_right(tiny_campaign, tmp_path):
    world, plan = world_of(tiny_campaign, kind="gcode")
    journal = Journal.create(tmp_path / "j.sqlite", plan, {})
    assert world.engine(plan, journal).run().state is State.DONE
    learned = learn(record_of(journal), world.campaign.chamber, "first")
    journal.close()
    for name, axis in learned.axes.items():
        wanted = world.campaign.chamber.axis_table[name]
        assert axis.speed_deg_s == pytest.approx(wanted.speed_deg_s, rel=0.03), name
    assert learned.overhead_s == pytest.approx(world.campaign.chamber.analyzer.sweep_overhead_s, abs=2e-3)


def test_too_short_a_run_teaches_nothing(tiny_campaign, tmp_path):
    world, plan = world_of(tiny_campaign, kind="gcode")
    journal = Journal.create(tmp_path / "j.sqlite", plan, {})
    engines = []
    engines.append(
        world.engine(plan, journal, listener=lambda e: e.data.get("measured") == 12 and engines[0].stop("enough"))
    )
    engines[0].run()
    with pytest.raises(InputError, match="must be at least 20"):
        learn(record_of(journal), world.campaign.chamber, "first")
    journal.close()


def test_half_a_sphere_at_two_degrees_takes_a_hundred_minutes():
    """Common practice, no source: 91 x 91 points at 2 deg with 25-point sweeps take 100 minutes, 0.72 s a point.
    20 deg/s, 40 deg/s^2, 0.25 s settling and 1 kHz explain it: 447 ms of motion, 250 ms of rest, 25 ms of sweep."""
    axis = Axis(speed_deg_s=20, acceleration_deg_s2=40, settle_s=0.25)
    sweep = sweep_time(
        Goal(name="x", start_ghz=24, stop_ghz=24.25, points=25), Analyzer(if_bandwidth_hz=1000.0, sweep_overhead_s=0.0)
    )
    theta = np.arange(-90.0, 90.1, 2.0)
    slices = [np.stack([theta if n % 2 == 0 else theta[::-1], np.full(91, 2.0 * n)], axis=-1) for n in range(91)]
    times = point_times(np.concatenate(slices), np.array([-90.0, 0.0]), [axis, axis], sweep)
    assert float(np.median(times)) == pytest.approx(0.72, abs=0.005)
    assert float(times.sum()) / 60.0 == pytest.approx(100.0, abs=1.0)
    assert float(move_time(np.array(2.0), axis)) == pytest.approx(0.447, abs=5e-4) and sweep == pytest.approx(0.025)


def test_one_moving_axis_takes_its_own_time_and_two_take_the_slower():
    fast = Axis(speed_deg_s=20, acceleration_deg_s2=40)
    slow = Axis(speed_deg_s=5, acceleration_deg_s2=10)
    ways = np.array([[30.0, 0.0], [0.0, 30.0], [30.0, 30.0], [0.0, 0.0]])
    alone = [float(move_time(np.array(30.0), axis)) for axis in (fast, slow)]
    assert coordinated_time(ways, [fast, slow]) == pytest.approx([alone[0], alone[1], alone[1], 0.0])
