"""Where the axes may go: a million random plans, checked against a dense walk along the commanded paths."""

from __future__ import annotations

import re

import numpy as np
import pytest

from colure.acquire.clocks import SystemClock
from colure.acquire.guard import Bounds, Guard, MotionWatch, outside, through_box
from colure.acquire.sight import looks_at
from colure.errors import GuardError, InstrumentError, MotionError
from colure.instruments.protocols import AxesStatus, DoorOpenError, LostError
from colure.model.campaign import Campaign
from colure.model.chamber import Axis, KeepOut, clearance_of
from colure.model.joints import values_of
from colure.twin.clock import SimulatedClock
from tests.mounts import SOLIDS_OF_ARM, on_mount, swinging_arm
from tests.world import VirtualClock

AXES = {
    "azimuth": Axis(min_deg=-185, max_deg=185, speed_deg_s=20, acceleration_deg_s2=40),
    "roll": Axis(min_deg=-10, max_deg=190, speed_deg_s=30, acceleration_deg_s2=60),
    "probe": Axis(min_deg=-200, max_deg=200, speed_deg_s=60, acceleration_deg_s2=120, wrap_budget_deg=150.0),
}
SECTORS = (
    KeepOut(name="bracket meets mast", azimuth=(120, 185), roll=(60, 120)),
    KeepOut(name="cable loop", probe=(100, 150), azimuth=(-185, -100)),
)


def walk(starts, targets, share):
    """Positions a share of the way along straight paths."""
    return starts + share * (targets - starts)


def test_a_million_random_plans_cross_no_limit_and_touch_no_sector():
    random = np.random.default_rng(1)
    count, moves, crossings, refused = 1_000_000, 0, 0, 0
    bounds = Bounds.of(AXES, SECTORS)
    reach = np.array([230.0, 240.0, 230.0])
    for _ in range(10):
        starts = random.uniform(bounds.low, bounds.high, (count // 10, 3))
        targets = random.uniform(-reach, reach, (count // 10, 3))
        bad = outside(bounds, starts, targets).any(axis=1)
        for box in bounds.boxes:
            bad |= through_box(box, starts, targets, coordinated=True)
        moves, refused = moves + len(starts), refused + int(bad.sum())
        accepted, to = starts[~bad], targets[~bad]
        # The judge knows no slab test: it walks along what would be commanded.
        for share in np.linspace(0.0, 1.0, 41):
            here = walk(accepted, to, share)
            crossings += int(np.sum((here < bounds.low - 1e-6) | (here > bounds.high + 1e-6)))
            for box in bounds.boxes:
                crossings += int(np.sum(np.all((here > box[0]) & (here < box[1]), axis=1)))
    print(f"{moves} moves, {refused} refused, {crossings} crossings")
    assert moves == count and crossings == 0 and 0.2 * count < refused < 0.95 * count


def test_refusals_are_not_for_nothing():
    """Every refused move does touch the sector: the slab test is exact, not merely cautious."""
    random = np.random.default_rng(2)
    box = Bounds.of(AXES, SECTORS).boxes[0]
    starts, targets = (random.uniform([-180, -10, -150], [180, 190, 150], (20_000, 3)) for _ in range(2))
    hit = through_box(box, starts, targets, coordinated=True)
    way = np.linspace(0.0, 1.0, 4001)[:, None]
    assert np.count_nonzero(hit) > 300
    for start, target in zip(starts[hit][:300], targets[hit][:300], strict=True):
        here = start + way * (target - start)
        margin = 0.2
        assert np.any(np.all((here >= box[0] - margin) & (here <= box[1] + margin), axis=1))


def test_uncoordinated_axes_may_be_anywhere_in_between():
    box = np.array([[10.0, 10.0], [20.0, 20.0]])
    start, target = np.array([[0.0, 15.0]]), np.array([[30.0, 60.0]])
    # The straight line passes beside the box; axes that arrive in their own time may cut through it.
    assert not through_box(np.array([[10.0, 10.0], [20.0, 20.0]]), start, np.array([[30.0, 80.0]]), coordinated=True)[0]
    assert through_box(box, start, target, coordinated=False)[0]


def test_only_end_points_would_not_have_been_enough():
    box = Bounds.of(AXES, SECTORS).boxes[0]
    start, target = np.array([[115.0, 90.0, 0.0]]), np.array([[185.0, 30.0, 0.0]])
    inside = [np.all((p >= box[0]) & (p <= box[1])) for p in (start, target)]
    assert not any(inside) and through_box(box, start, target, coordinated=True)[0]


@pytest.fixture
def guard(small_campaign):
    text = (small_campaign / "chamber.toml").read_text(encoding="utf-8")
    text += '\n[[keep_out]]\nname = "bracket meets mast"\nazimuth = [100, 185]\nroll = [80, 100]\n'
    (small_campaign / "chamber.toml").write_text(text, encoding="utf-8")
    chamber = Campaign.load(small_campaign).chamber
    return Guard(chamber, tuple(chamber.axis_table), VirtualClock(SimulatedClock(0.0)), coordinated=True)


def test_refusals_name_axis_value_limit_and_sector(guard):
    with pytest.raises(GuardError, match=r"axis roll target = 200: must be from -10 to 190 deg"):
        guard.check_path(np.array([[0.0, 0.0, 0.0], [0.0, 200.0, 0.0]]), "plan")
    with pytest.raises(GuardError, match="passes through keep-out sector 'bracket meets mast'"):
        guard.check_path(np.array([[90.0, 90.0, 0.0], [110.0, 90.0, 0.0]]), "plan")
    guard.check_path(np.array([[90.0, 70.0, 0.0], [110.0, 70.0, 0.0]]), "plan")


def status(positions, **more):
    names = ("azimuth", "roll", "probe")
    return AxesStatus(dict(zip(names, positions, strict=True)), **{"moving": False, "door_open": False, **more})


def test_alarm_door_and_a_silent_interlock_are_told_apart(guard):
    with pytest.raises(MotionError, match="limit-switch"):
        guard.require_safe(status((0, 0, 0), alarm="limit-switch"))
    with pytest.raises(DoorOpenError, match="door open"):
        guard.require_safe(status((0, 0, 0), door_open=True))
    with pytest.raises(InstrumentError, match="interlock"):
        guard.require_safe(status((0, 0, 0), door_open=None))
    guard.require_safe(status((0, 0, 0)))


def watched(guard, target=(90.0, 0.0, 0.0)):
    guard.last_deg = np.zeros(3)
    clock = guard._clock
    return MotionWatch(guard, np.array(target), clock), clock


def test_an_axis_that_keeps_up_is_left_alone(guard):
    watch, clock = watched(guard)
    for tick in range(1, 50):
        clock.sleep(0.1)
        t = 0.1 * tick
        place = min(90.0, 20.0 * t - 5.0 if t > 0.5 else 20.0 * t * t)
        watch(status((place, 0.0, 0.0), moving=place < 90.0))


def test_following_error_grows_with_speed_and_ends_the_motion(guard):
    watch, clock = watched(guard)
    with pytest.raises(MotionError, match="azimuth follows .* behind its command, limit 3.000 deg"):
        for tick in range(1, 50):
            clock.sleep(0.1)
            watch(status((4.0 * 0.1 * tick, 0.0, 0.0), moving=True))
    assert clock.monotonic() < 1.0


def slow_to_tell(guard, *, look_s: float, renewed_s: float, begins_s: float, sent_s: float, stuck_deg: float = np.inf):
    """An azimuth axis at 40 deg/s whose controller tells its position late; return the highest limit of its lag, seconds.

    Common practice, no source: a status page renewed ten times a second, a brake that opens for 0.2 s.
    """
    guard.axes["azimuth"] = Axis(
        **{**guard.axes["azimuth"].model_dump(), "speed_deg_s": 40, "acceleration_deg_s2": 400}
    )
    guard.last_deg = np.array([-80.0, 0.0, 0.0])
    clock, watch = guard._clock, MotionWatch(guard, np.array([90.0, 0.0, 0.0]), guard._clock)
    clock.sleep(sent_s)
    watch.begun()
    begin = clock.monotonic()
    while True:
        clock.sleep(look_s)
        t = np.floor((clock.monotonic() - begin) / renewed_s) * renewed_s - begins_s
        way = min(0.0 if t < 0.0 else 200.0 * t * t if t < 0.1 else 40.0 * t - 2.0, stuck_deg)
        watch(status((min(-80.0 + way, 90.0), 0.0, 0.0), moving=way < 170.0))
        if way >= 170.0:
            return guard.age_s


@pytest.mark.parametrize(
    ("look_s", "renewed_s", "begins_s", "sent_s"),
    [
        (0.1, 0.1, 0.1, 0.25),
        (0.1, 0.12, 0.2, 0.3),
        (0.02, 0.1, 0.3, 0.1),
        (0.3, 0.001, 0.1, 0.5),
        (0.05, 0.12, 0.0, 0.0),
    ],
)
def test_a_controller_that_tells_positions_late_is_not_taken_for_a_slow_axis(
    guard, look_s, renewed_s, begins_s, sent_s
):
    assert slow_to_tell(guard, look_s=look_s, renewed_s=renewed_s, begins_s=begins_s, sent_s=sent_s) < 0.25


def test_an_axis_that_sticks_is_seen_on_a_fast_line_as_soon_as_before(guard):
    begin = guard._clock.monotonic()
    with pytest.raises(MotionError, match="azimuth follows .* limit 5.000 deg"):
        slow_to_tell(guard, look_s=0.02, renewed_s=0.001, begins_s=0.05, sent_s=0.05, stuck_deg=40.0)
    reached_s = 0.05 + 0.05 + 0.1 + 38.0 / 40.0
    assert guard._clock.monotonic() - begin - reached_s < 0.2


def test_an_axis_that_never_begins_is_seen_in_time(guard):
    with pytest.raises(MotionError, match="azimuth follows"):
        slow_to_tell(guard, look_s=0.02, renewed_s=0.001, begins_s=99.0, sent_s=0.1)
    assert guard._clock.monotonic() < 1.0


def test_a_stall_is_noticed_by_lack_of_progress(guard):
    guard.last_deg = np.zeros(3)
    slow = Axis(**{**guard.axes["azimuth"].model_dump(), "following_error_deg": 89.0})
    guard.axes["azimuth"] = slow
    watch, clock = watched(guard)
    with pytest.raises(MotionError, match="stalled 85.000 deg before their target"):
        for _ in range(100):
            clock.sleep(0.1)
            watch(status((5.0, 0.0, 0.0), moving=True))
    assert clock.monotonic() < 2.5


def test_a_jump_of_the_readout_is_noticed(guard):
    watch, clock = watched(guard)
    clock.sleep(0.1)
    watch(status((0.2, 0.0, 0.0), moving=True))
    clock.sleep(0.1)
    with pytest.raises(MotionError, match="azimuth jumped from 0.200 to 30.800 deg"):
        watch(status((30.8, 0.0, 0.0), moving=True))


def test_whole_turns_of_a_wrapping_readout_are_counted(guard):
    guard.axes["roll"] = Axis(**{**guard.axes["roll"].model_dump(), "modulo_deg": 360.0, "max_deg": 1000.0})
    for shown, turned in ((350.0, -10.0), (10.0, 10.0), (170.0, 170.0), (300.0, 300.0), (20.0, 380.0), (160.0, 520.0)):
        assert guard.readouts(status((0.0, shown, 0.0)))[1] == pytest.approx(turned)


def test_the_cable_budget_is_a_limit_of_its_own():
    bounds = Bounds.of(AXES, ())
    assert bounds.low[2] == -150.0 and bounds.high[2] == 150.0
    assert outside(bounds, np.zeros((1, 3)), np.array([[0.0, 0.0, 170.0]]))[0, 2]


@pytest.mark.parametrize(("tick_s", "within_s", "within_deg"), [(0.05, 0.2, 1.0), (0.1, 0.2, 1.0)])
def test_an_axis_that_runs_the_wrong_way_is_seen_within_a_degree_and_a_fifth_of_a_second(
    guard, tick_s, within_s, within_deg
):
    """A miswired azimuth drive at full acceleration, looked at as often as a slow line allows."""
    watch, clock = watched(guard)
    begin, place = clock.monotonic(), 0.0
    with pytest.raises(MotionError, match="azimuth runs the wrong way"):
        while True:
            clock.sleep(tick_s)
            t = clock.monotonic() - begin
            place = -0.5 * 40.0 * t * t
            watch(status((place, 0.0, 0.0), moving=True))
    assert clock.monotonic() - begin <= within_s + 1e-9 and abs(place) <= within_deg


def test_a_readout_that_is_no_number_is_never_a_position(guard):
    with pytest.raises(LostError, match="azimuth reads nan"):
        guard.readouts(status((np.nan, 0.0, 0.0)))
    assert guard.last_deg is None
    assert guard.position_fault(wanted_deg=np.zeros(3), found_deg=np.array([np.nan, 0.0, 0.0]))
    assert guard.position_fault(wanted_deg=np.zeros(3), found_deg=np.array([0.0, np.inf, 0.0]))


def test_a_move_that_leaves_its_limits_is_stopped_whatever_was_planned(guard):
    watch, clock = watched(guard, (170.0, 0.0, 0.0))
    with pytest.raises(MotionError, match="outside -185 to 185 deg|past its target"):
        for tick in range(1, 400):
            clock.sleep(0.05)
            t = 0.05 * tick
            watch(status((20.0 * t - 5.0 if t > 0.5 else 20.0 * t * t, 0.0, 0.0), moving=True))
    assert guard.last_deg[0] < 186.5


def test_a_path_that_bends_into_a_sector_is_stopped_there(guard):
    guard.last_deg = np.array([90.0, 70.0, 0.0])
    watch = MotionWatch(guard, np.array([150.0, 70.0, 0.0]), guard._clock)
    guard._clock.sleep(1.0)
    watch(status((105.0, 70.3, 0.0), moving=True))
    guard._clock.sleep(0.5)
    with pytest.raises(MotionError, match="bracket meets mast"):
        watch(status((115.0, 80.5, 0.0), moving=True))


@pytest.mark.parametrize("tick_s", [0.05, 0.1])
@pytest.mark.parametrize("moving", [True, False])
def test_an_axis_that_runs_into_a_sector_is_seen_within_a_degree_and_a_fifth_of_a_second(guard, tick_s, moving):
    """Roll was told to stay, 0.3 deg before the sector, and runs into it at full acceleration; azimuth goes its way meanwhile.
    A controller that calls a runaway axis resting changes nothing."""
    guard.last_deg = np.array([105.0, 79.7, 0.0])
    watch = MotionWatch(guard, np.array([120.0, 79.7, 0.0]), guard._clock)
    began_s, entered_s, roll = guard._clock.monotonic(), np.inf, 79.7
    with pytest.raises(MotionError, match="axes stand in keep-out sector 'bracket meets mast'"):
        while True:
            guard._clock.sleep(tick_s)
            t = guard._clock.monotonic() - began_s
            roll, entered_s = 79.7 + 0.5 * 60.0 * t * t, np.sqrt(0.3 / 30.0)
            watch(status((105.0 + 20.0 * t * t, roll, 0.0), moving=moving))
    assert t - entered_s <= 0.2 and 80.0 < roll <= 81.0


def test_an_axis_that_does_not_stop_before_a_sector_never_reaches_it(guard):
    """Azimuth was sent to 95 deg at full speed and goes on; the sector begins at 100."""
    guard.last_deg = np.array([60.0, 90.0, 0.0])
    watch = MotionWatch(guard, np.array([95.0, 90.0, 0.0]), guard._clock)
    place = 60.0
    with pytest.raises(MotionError, match=r"azimuth ran .* past its target 95\.000 deg"):
        for tick in range(1, 100):
            guard._clock.sleep(0.1)
            t = 0.1 * tick
            place = 60.0 + (20.0 * t - 5.0 if t > 0.5 else 20.0 * t * t)
            watch(status((place, 90.0, 0.0), moving=True))
    assert place < 100.0


def test_an_arm_that_could_swing_into_a_solid_between_two_slow_looks_is_refused_with_the_speed_that_cannot(
    campaign_folder,
):
    """Where the post is met is looked for in small steps of our own; the arm runs on from there, past its target."""
    on_mount(campaign_folder, swinging_arm(1000), range_m=1.0, solids=SOLIDS_OF_ARM)
    path = campaign_folder / "chamber.toml"
    text = path.read_text(encoding="utf-8").replace('pattern = "probe.nc"', "#")

    def guard(speed: float = 30.0, solids: bool = True) -> Guard:
        chosen = text if solids else text.replace(SOLIDS_OF_ARM, "")
        path.write_text(chosen.replace("speed_deg_s = 30\n", f"speed_deg_s = {speed}\n"), encoding="utf-8")
        chamber = Campaign.load(campaign_folder).chamber
        return Guard(chamber, tuple(chamber.driven_table), SystemClock(), coordinated=True)

    first = guard()
    chamber, arm = Campaign.load(campaign_folder).chamber, first.names.index("arm")
    places = np.zeros((3600, 3))
    places[:, arm] = np.linspace(0.0, 180.0, 3600)
    joined = clearance_of(chamber)
    assert joined is not None
    near = joined.gaps(values_of(chamber.positioner.joints, places)).min(axis=1) < 1e-3
    met = places[np.argmax(near), arm]
    assert 90.0 < met < 180.0

    def way_to(left_deg: float) -> np.ndarray:
        there = np.array([90.0, 0.0, 0.0])  # the turntable, far from its own limits
        return np.stack([there, np.where(np.arange(3) == arm, met - left_deg, there)])

    # 6 deg in a look, 7.5 deg while it brakes (30 deg/s, 60 deg/s2).
    with pytest.raises(InstrumentError, match=r"arm could come \d+\.\d deg past where it brings post to") as told:
        looks_at(first, way_to(5.0), 0.2)
    assert float(re.search(r"arm could come ([0-9.]+)", str(told.value))[1]) == pytest.approx(8.5, abs=0.2)
    most = float(re.search(r"arm could come [^;]* ([0-9.]+) deg/s at most", str(told.value))[1])
    # v t + v^2 / 2 a = 6 deg.
    assert most == pytest.approx(60.0 * (np.sqrt(0.2**2 + 2.0 * 6.0 / 60.0) - 0.2), abs=0.2)
    with pytest.raises(InstrumentError, match="arm could come"):
        looks_at(guard(most + 0.5), way_to(5.0), 0.2)
    looks_at(first, way_to(13.0), 0.2)
    looks_at(guard(solids=False), way_to(5.0), 0.2)
    # A fast line sees it within a degree.
    looks_at(first, way_to(0.5), 0.02)
