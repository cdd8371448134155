"""Slices flown at constant speed give the pattern that step and settle gives: engine, drivers, journal and
recipe against the twin's closed-form far field, with latency and backlash injected and taken out again."""

from __future__ import annotations

import numpy as np
import pytest

from colure.acquire.journal import Journal
from colure.acquire.outcome import Options
from colure.acquire.seal import record_of
from colure.acquire.states import State
from colure.analysis.pipeline.recipe import process
from colure.analysis.steps.places import lag_of, to_planned_places
from colure.app.services.reference import probe_of
from colure.planning.progressive import progressive_order
from colure.twin.devices import maker_of
from tests.conftest import DEMO_DEVICE
from tests.endtoend.test_near_to_far import edited, rms_error_db
from tests.world import world_of

PERFECT = "seed = 5\nnoise = false\ncrosstalk_db = -200\nprobe_cross_polar_db = -200\n"


def centred(folder, goal: str, twin: str = ""):
    """The demo panel on the axes' crossing, two frequencies, in a perfect chamber."""
    edited(folder, "goal.toml", ("points = 11", "points = 2"), ("= -50 ", "= -85 "))
    edited(folder, "device.toml", ("[0.0, 0.0, -30.0]", "[0.0, 0.0, 0.0]"))
    with (folder / "goal.toml").open("a", encoding="utf-8") as out:
        out.write("\n" + goal)
    (folder / "twin.toml").write_text(PERFECT + twin + DEMO_DEVICE, encoding="utf-8")
    return folder


def measured(folder, tmp_path, **limits):
    """Run a campaign in virtual time and return (world, plan, record)."""
    world, plan = world_of(folder, kind="gcode")
    journal = Journal.create(tmp_path / "j.sqlite", plan, {})
    options = Options(threads=False, pause_limit_s=1e-3)
    engines = []

    def listen(event):
        if "stop_after" in limits and limits["stop_after"] == event.data.get("measured"):
            engines[0].stop("enough")

    engines.append(world.engine(plan, journal, listener=listen, options=options))
    outcome = engines[0].run()
    assert outcome.state is (State.STOPPED if limits else State.DONE), outcome
    record = record_of(journal)
    journal.close()
    return world, plan, record


def error_db(world, record) -> float:
    campaign = world.campaign
    probe = probe_of(campaign, record["frequency"].values)
    pattern = process(record, campaign.chamber, campaign.device, probe=probe, grid_step_deg=3).pattern
    return rms_error_db(campaign, pattern, maker_of(campaign)(pattern["frequency"].values))


def correction_leaves_its_input_alone_and_step_records_as_they_are(record):
    before = record["trace"].values.copy()
    to_planned_places(record)
    np.testing.assert_array_equal(record["trace"].values, before)
    assert to_planned_places(record.assign_attrs(style="step")).identical(record.assign_attrs(style="step"))


@pytest.mark.parametrize("trigger", ["position", "time"])
def test_flown_slices_give_the_closed_form_pattern(campaign_folder, tmp_path, trigger, request):
    if trigger == "time" and not request.config.getoption("--nightly"):
        pytest.skip("the second trigger is for the nightly run")
    twin = "backlash_deg = { azimuth = 0.2 }\n" + ("axes_latency_s = 0.02\n" if trigger == "time" else "")
    folder = centred(campaign_folder, f'style = "fly"\ntrigger = "{trigger}"\n', twin)
    if not request.config.getoption("--nightly"):
        edited(folder, "device.toml", ("[49.7, 49.7, 4.0]", "[24.9, 24.9, 4.0]"))
        edited(folder, "twin.toml", ("rows = 8\ncolumns = 8", "rows = 4\ncolumns = 4"), ("[[4, 1], [5, 1]]", "[[3, 1]]"),
               ("[[2, 5]]", "[[2, 2]]"))  # fmt: skip
    world, plan, record = measured(folder, tmp_path)
    speed = plan.settings["fly_speed_deg_s"]
    injected = (speed * 0.02 if trigger == "time" else 0.0) - 0.1
    lag = lag_of(record)
    print(f"{trigger}: injected {injected:+.4f} deg, found {lag.shift_deg:+.4f} +- {lag.uncertainty_deg:.1e} deg")
    assert lag.shift_deg == pytest.approx(injected, abs=5e-4)
    with pytest.raises(ValueError, match="flown both ways reads zero everywhere"):
        lag_of(record.assign(trace=(record["trace"].dims, np.zeros_like(record["trace"].values))))
    corrected = error_db(world, record)
    # What the same record gives if nobody knew that the axis was moving.
    ignorant = error_db(world, record.assign_attrs(style="step"))
    print(f"{trigger}: {corrected:.1f} dB rms corrected, {ignorant:.1f} dB ignored")
    assert corrected <= -70.0 and corrected <= ignorant - 20.0
    assert world.time.now() == pytest.approx(plan.predicted["duration_s"], rel=0.03)
    correction_leaves_its_input_alone_and_step_records_as_they_are(record)


def test_a_progressive_scan_stopped_early_gives_a_coarser_pattern(campaign_folder, tmp_path):
    folder = centred(campaign_folder, 'style = "fly"\norder = "progressive"\n')
    world, plan = world_of(folder, kind="gcode")
    slices = len(np.unique(plan.slice_index[plan.slice_index >= 0]))
    order = progressive_order(slices)
    # Both polarizations of a slice are flown one after the other: four tenths of the points are a pattern already.
    stop = int(0.4 * len(plan))
    world, plan, record = measured(folder, tmp_path, stop_after=stop)
    done = np.unique(record["slice_index"].values[record["pass_index"].values == 1])
    assert set(done) <= set(order[: int(0.4 * slices) + 1])
    error = error_db(world, record)
    print(f"{len(done)} of {slices} slices: {error:.1f} dB rms")
    assert error <= -30.0
