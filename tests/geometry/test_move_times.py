"""Speed profiles against numerical integration of what limits them, and the planner against the simulated axes."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from colure.geometry.move_times import coordinated_time, move_time, peak_speed, ramp_time, travelled
from colure.model.chamber import Axis
from colure.planning.duration import approached_time
from colure.twin.clock import SimulatedClock
from colure.twin.motion import Move, Stage

limits = st.floats(0.5, 100.0)


@given(way=st.floats(0.01, 400.0), speed=limits, acceleration=limits, jerk=st.floats(1.0, 5000.0))
@settings(max_examples=150, deadline=None)
def test_a_jerk_limited_move_is_made_of_seven_spans_of_constant_jerk(way, speed, acceleration, jerk):
    """The simulated axis integrates its jerk span by span; the closed form must end at the same time and place."""
    move = Move(start_deg=3.0, distance_deg=-way, begin_s=10.0, speed=speed, acceleration=acceleration, jerk=jerk)
    total = float(move_time(way, speed, acceleration, jerk))
    assert move.end_s - 10.0 == pytest.approx(total, rel=1e-6)
    for share in np.linspace(0.0, 1.0, 23):
        place, _ = move.state(10.0 + share * total)
        assert 3.0 - place == pytest.approx(travelled(share * total, way, speed, acceleration, jerk), abs=1e-5 * way)
    top = max(abs(move.state(10.0 + t)[1]) for t in np.linspace(0, total, 401))
    assert top <= speed * (1 + 1e-9)
    assert top == pytest.approx(float(peak_speed(way, speed, acceleration, jerk)), rel=0.02)


@given(way=st.floats(0.01, 400.0), speed=limits, acceleration=limits)
@settings(max_examples=60, deadline=None)
def test_without_a_jerk_limit_it_is_the_trapezoid(way, speed, acceleration):
    short = way < speed**2 / acceleration
    expected = 2 * np.sqrt(way / acceleration) if short else way / speed + speed / acceleration
    assert float(move_time(way, speed, acceleration)) == pytest.approx(expected, rel=1e-12)
    assert float(move_time(way, speed, acceleration, 1e9)) == pytest.approx(expected, rel=1e-3)
    assert Move(
        start_deg=0.0, distance_deg=way, begin_s=0.0, speed=speed, acceleration=acceleration
    ).end_s == pytest.approx(expected, rel=1e-9)


def test_places_are_passed_when_the_axis_is_there():
    for jerk in (np.inf, 100.0):
        move = Move(start_deg=-10.0, distance_deg=60.0, begin_s=5.0, speed=20.0, acceleration=40.0, jerk=jerk)
        for place in np.linspace(-9.99, 49.99, 31):
            moment = move.when(float(place))
            assert moment is not None
            assert move.state(moment)[0] == pytest.approx(place, abs=1e-9)
        assert move.when(50.1) is None


def test_ramps_by_hand():
    """20 deg/s at 40 deg/s^2: 0.5 s; with 80 deg/s^3 the acceleration is just reached: 2 sqrt(20/80) = 1 s."""
    assert float(ramp_time(20.0, 40.0)) == 0.5
    assert float(ramp_time(20.0, 40.0, 80.0)) == pytest.approx(1.0)
    assert float(ramp_time(20.0, 40.0, 400.0)) == pytest.approx(0.1 + 0.5)


@pytest.mark.parametrize("jerk", [None, 150.0])
def test_coordinated_moves_last_as_long_as_the_simulated_axes_take(jerk):
    axes = {
        "azimuth": Axis(speed_deg_s=20, acceleration_deg_s2=40, jerk_deg_s3=jerk),
        "roll": Axis(speed_deg_s=30, acceleration_deg_s2=25, jerk_deg_s3=jerk),
    }
    tables = list(axes.values())
    stage = Stage(axes, SimulatedClock())
    for target in ({"azimuth": 30.0, "roll": 5.0}, {"azimuth": 29.0, "roll": 90.0}, {"azimuth": 29.5, "roll": 90.0}):
        before = stage.positions()
        begin = stage.clock.now()
        stage.start(target)
        took = stage.busy_until() - begin
        stage.wait_idle(0.0)
        way = [[target[name] - before[name] for name in axes]]
        planned = coordinated_time(way, *np.transpose([(a.speed_deg_s, a.acceleration_deg_s2, a.jerk) for a in tables]))
        assert took == pytest.approx(float(planned[0]), rel=1e-6)


def test_an_approach_from_below_is_a_second_move_downwards_only():
    axis = Axis(speed_deg_s=20, acceleration_deg_s2=40, approach_deg=1.0)
    plain = Axis(speed_deg_s=20, acceleration_deg_s2=40)
    up, down = approached_time(np.array([[5.0], [0.0]]), np.array([[0.0], [5.0]]), [axis])
    assert up == pytest.approx(float(coordinated_time([[5.0]], [20], [40], [np.inf])[0]))
    assert down == pytest.approx(float(coordinated_time([[6.0]], [20], [40], [np.inf])[0]) + 2 * np.sqrt(1 / 40))
    assert approached_time(np.array([[0.0]]), np.array([[5.0]]), [plain])[0] == pytest.approx(up)
