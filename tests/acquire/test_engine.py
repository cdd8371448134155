"""The engine over real sockets: order, commit before announce, stop, refusal, resume."""

from __future__ import annotations

import threading

import numpy as np
import pytest

from colure.acquire.clocks import SystemClock
from colure.acquire.engine import Engine
from colure.acquire.journal import Journal
from colure.acquire.outcome import Options
from colure.acquire.states import State
from colure.app import services
from colure.app.services.starting import start_campaign
from colure.app.storage.folders import run_folder
from colure.errors import InputError, InstrumentError
from colure.instruments.gcode_axes import GcodeAxes
from colure.instruments.profile import analyzer_profile, axes_profile
from colure.instruments.protocols import RefusedError, unwatched
from colure.instruments.scpi_analyzer import ScpiAnalyzer
from colure.model.campaign import Campaign
from colure.model.files import open_dataset
from colure.model.plan import ROLES, Role
from colure.twin.clock import SimulatedClock
from colure.twin.motion import Stage
from colure.twin.servers import start_twin
from tests.endtoend.test_near_to_far import edited


def move(axes, targets):
    """Move as the engine does, unwatched."""
    axes.begin(targets)
    return axes.finish(0.0, unwatched, limit_s=10.0).positions_deg


def engine_of(campaign, plan, journal, analyzer, axes, **options):
    """An engine over sockets whose instruments live in virtual time."""
    identity = {"analyzer": analyzer.identity(), "axes": axes.identity(), "states": None, "receiver": "vector"}
    journal.set_meta("identity", identity)
    return Engine(plan, campaign.chamber, journal, analyzer, axes, clock=SystemClock(0.0),
                  options=Options(pause_limit_s=0.2), **options)  # fmt: skip


@pytest.fixture
def bench(small_campaign):
    campaign, plan = services.make_plan(small_campaign)
    twin = start_twin(campaign)
    analyzer = ScpiAnalyzer(twin.analyzer_resource, analyzer_profile("scpi-analyzer"), timeout_s=5)
    axes = GcodeAxes(twin.axes_resource, axes_profile("gcode-axes"), plan.axes, timeout_s=5)
    yield campaign, plan, twin, analyzer, axes
    analyzer.close()
    axes.close()
    twin.close()


def test_a_point_is_committed_before_it_is_announced(bench, tmp_path):
    campaign, plan, _, analyzer, axes = bench
    journal = Journal.create(tmp_path / "j.sqlite", plan, {})
    seen, rest = [], []

    def listen(event):
        if "index" in event.data:
            seen.append(event.data["index"] in journal.measured())
        if event.kind == "state":
            rest.append((event.data["state"], event.data["at_rest"]))

    outcome = engine_of(campaign, plan, journal, analyzer, axes, listener=listen).run()
    journal.close()
    assert outcome.state is State.DONE and len(seen) == len(plan) and all(seen)
    # Only the end says that the axes stand.
    assert rest == [("running", False), ("done", True)]


def test_predicted_duration_is_what_the_simulated_hardware_takes(bench, tmp_path):
    campaign, plan, twin, analyzer, axes = bench
    journal = Journal.create(tmp_path / "j.sqlite", plan, {})
    engine_of(campaign, plan, journal, analyzer, axes).run()
    journal.close()
    assert twin.stage.clock.now() == pytest.approx(plan.predicted["duration_s"], rel=0.03)


@pytest.mark.nightly
def test_the_habitual_scan_takes_as_long_as_predicted(tmp_path):
    """91 x 91 points, 25 frequencies, offset 0, with the instruments of a 38 GHz horn's range: the whole run, in virtual time."""
    start_campaign(tmp_path / "c", kind="horn", band="37-40")
    (tmp_path / "c" / "goal.toml").write_text(
        'name = "Daily scan"\nstart_ghz = 37\nstop_ghz = 40\npoints = 25\nmonitor_ghz = 38.5\n'
        'scan = { theta_deg = "-90:90:2", phi_deg = "0:180:2", offset_deg = 0 }\n'
    )
    campaign, plan = services.make_plan(tmp_path / "c")
    twin = start_twin(campaign)
    analyzer = ScpiAnalyzer(twin.analyzer_resource, analyzer_profile("scpi-analyzer"), timeout_s=5)
    axes = GcodeAxes(twin.axes_resource, axes_profile("gcode-axes"), plan.axes, timeout_s=5)
    journal = Journal.create(tmp_path / "j.sqlite", plan, {})
    outcome = engine_of(campaign, plan, journal, analyzer, axes).run()
    for one in (journal, analyzer, axes, twin):
        one.close()
    assert outcome.state is State.DONE and plan.predicted["points"]["scan"] == 90 * 91
    assert twin.stage.clock.now() == pytest.approx(plan.predicted["duration_s"], rel=0.03)


def test_stop_brakes_at_once_and_the_run_resumes_to_the_same_record(tiny_campaign):
    campaign, plan = services.make_plan(tiny_campaign)
    whole, broken = run_folder(tiny_campaign, "whole"), run_folder(tiny_campaign, "broken")
    services.acquire(campaign, plan, whole)
    engines = []

    def listen(event):
        if event.data.get("index") == 100:
            threading.Thread(target=engines[0].stop, args=("somebody opened the door",)).start()

    first = services.acquire(campaign, plan, broken, listener=listen, on_engine=engines.append)
    assert first.state is State.STOPPED and first.reason == "somebody opened the door"
    assert 100 <= first.measured < len(plan)
    partial = open_dataset(broken.record)
    assert partial.sizes["point"] == first.measured and partial.attrs["complete"] == 0
    assert services.acquire(campaign, plan, broken).state is State.DONE
    a, b = open_dataset(whole.record), open_dataset(broken.record)
    planned = b.isel(point=np.flatnonzero(b["plan_index"].values >= 0))
    for name in ("trace", "commanded_deg", "readback_deg", "role", "plan_index", "flags"):
        np.testing.assert_array_equal(a[name].values, planned[name].values)
    assert ROLES[int(b["role"].values[-1])] is Role.RESUME
    # The simulated clock begins anew with each session; the run's time does not.
    order = np.argsort(b["wall_time"].values)
    assert np.all(np.diff(b["time_s"].values[order]) > 0.0)


def test_a_probe_pattern_that_misses_the_band_is_found_before_the_scan(small_campaign):
    edited(small_campaign, "goal.toml", ("stop_ghz = 24.1", "stop_ghz = 25.5"))
    with pytest.raises(InputError, match=r"probe.pattern = 'probe.nc': covers 23.52 to 24.\d+ GHz, goal.toml asks for"):
        services.make_plan(small_campaign)


def test_resume_refuses_another_plan(small_campaign):
    campaign, plan = services.make_plan(small_campaign)
    run = run_folder(small_campaign, "first")
    services.acquire(campaign, plan, run, on_engine=lambda engine: engine.stop("enough"))
    goal = small_campaign / "goal.toml"
    goal.write_text(goal.read_text(encoding="utf-8").replace("stop_ghz = 24.1", "stop_ghz = 24.2"), encoding="utf-8")
    other, changed = services.make_plan(small_campaign)
    with pytest.raises(InputError, match="to resume; the campaign files changed"):
        services.acquire(other, changed, run)


def test_held_axes_do_not_move_until_released(bench):
    _, plan, _, _, axes = bench
    axes.hold()
    # The answer to a report on the same line proves that the hold has been read.
    assert axes.status().held
    with pytest.raises(InstrumentError, match="held"):
        move(axes, dict.fromkeys(plan.axes, 1.0))
    assert set(axes.status().positions_deg.values()) == {0.0}
    axes.release()
    assert move(axes, dict.fromkeys(plan.axes, 1.0)) == dict.fromkeys(plan.axes, 1.0)


def test_target_beyond_a_limit_is_refused_by_the_controller_and_the_line_stays_in_step(bench):
    _, _, _, _, axes = bench
    with pytest.raises(RefusedError, match="outside"):
        move(axes, {"azimuth": 400.0})
    assert move(axes, {"azimuth": 4.0})["azimuth"] == 4.0


def test_analyzer_refusal_carries_its_own_words(bench):
    _, plan, _, analyzer, _ = bench
    from colure.instruments.protocols import SweepSettings

    with pytest.raises(InstrumentError, match="-222"):
        analyzer.configure(
            SweepSettings(start_hz=24e9, stop_hz=24.1e9, points=0, if_bandwidth_hz=1e3, power_dbm=0.0), plan.ports
        )


def test_unreachable_instrument_is_named(small_campaign):
    with pytest.raises(InstrumentError, match="127.0.0.1::9::SOCKET"):
        ScpiAnalyzer("TCPIP::127.0.0.1::9::SOCKET", analyzer_profile("scpi-analyzer"), timeout_s=1)


def test_axis_that_stands_elsewhere_stops_the_run(bench, tmp_path):
    campaign, plan, twin, analyzer, axes = bench
    journal = Journal.create(tmp_path / "j.sqlite", plan, {})
    honest = twin.stage.positions

    def lying(moment=None):
        found = honest(moment)
        return {**found, "azimuth": found["azimuth"] + 0.5}

    twin.stage.positions = lying
    outcome = engine_of(campaign, plan, journal, analyzer, axes).run()
    stops = journal.meta("stops")
    journal.close()
    assert outcome.state is State.FAULTED and "axis azimuth stands at" in outcome.reason
    assert stops[-1]["reason"] == outcome.reason


def test_a_hold_does_not_queue_behind_a_move(small_campaign):
    """In real time: the line with the move is busy for seconds, the hold arrives at once."""
    import time

    (small_campaign / "twin.toml").write_text("noise = false\ntime_factor = 1.0\n", encoding="utf-8")
    campaign, plan = services.make_plan(small_campaign)
    twin = start_twin(campaign)
    axes = GcodeAxes(twin.axes_resource, axes_profile("gcode-axes"), plan.axes, timeout_s=5)
    axes.begin({"azimuth": 90.0})
    ended = []

    def finish():
        try:
            axes.finish(0.0, unwatched, limit_s=10.0)
        except InstrumentError as error:
            ended.append(error)

    waiting = threading.Thread(target=finish)
    waiting.start()
    time.sleep(0.5)
    axes.hold()
    assert twin.stage.held.wait(0.5)
    waiting.join(5.0)
    assert ended and "held" in str(ended[0]) and 0.0 < twin.stage.positions()["azimuth"] < 40.0
    axes.close()
    twin.close()


def test_a_heartbeat_counts_in_the_computers_time_where_the_chambers_runs_faster(small_campaign):
    """60 times as fast, a second of the computer is a minute: a move of some seconds is not braked for want of a beat."""
    clock = SimulatedClock(60.0)
    last = [0.0]
    clock.now = lambda: last[0]
    slow = Campaign.load(small_campaign).chamber.axis_table["azimuth"].model_copy(update={"speed_deg_s": 1.0})
    stage = Stage({"azimuth": slow}, clock)
    stage.start({"azimuth": 180.0})
    stage.beat(1.0)
    for last[0], held in ((3.0, False), (59.0, False), (61.0, True)):
        stage.moving()
        assert stage.held.is_set() is held, last[0]


def test_the_controller_stops_by_itself_when_nobody_beats(small_campaign):
    import time

    (small_campaign / "twin.toml").write_text("noise = false\ntime_factor = 1.0\n", encoding="utf-8")
    campaign, plan = services.make_plan(small_campaign)
    twin = start_twin(campaign)
    axes = GcodeAxes(twin.axes_resource, axes_profile("gcode-axes"), plan.axes, timeout_s=5)
    axes.begin({"azimuth": 180.0})
    for _ in range(4):
        axes.beat()
        time.sleep(0.4)
    moving = axes.status()
    assert moving.moving and not moving.held
    time.sleep(1.2)  # the computer is dead
    assert axes.status().held
    time.sleep(0.7)
    place = axes.status().positions_deg
    time.sleep(0.2)
    assert axes.status().positions_deg == place and place["azimuth"] < 170.0
    axes.close()
    twin.close()
