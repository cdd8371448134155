"""Distance steps against a bounce of known strength: weights by hand, laws of the fit, and whole campaigns on a patch and a horn."""

from __future__ import annotations

import json
from dataclasses import replace

import numpy as np
import pytest

from colure.analysis.findings.bounced import distance_findings
from colure.analysis.pipeline.stages import stages
from colure.analysis.steps.distance_steps import Bounce, at_one_distance, first_distance
from colure.app import services
from colure.app.services.rehearsal import carry_out, record_of_rehearsal, rehearse
from colure.waves.bounce import bounce_phase, distance_weights, noise_over_mean
from tests.coverage.scenarios import EIGHTHS, HORN_5_8_GHZ, SCENARIOS, Scenario, band, sized

LIGHT = 299_792_458.0
STEPS = {"wavelengths": EIGHTHS, "expanded_mm": 0.2}
PATCH = Scenario(
    device=sized(30.0, 30.0, 5.0, 7.0),
    goal={**band(5.75, 5.85, 3), "distance_steps": STEPS},
    chamber={"reference": HORN_5_8_GHZ, "standing_wave_db": -26.0, "echo_level_db": -60},
    twin={"device": {"kind": "patch"}},
)
HORN = SCENARIOS["38 GHz horn, four distances"]


def test_a_quarter_wave_is_exact_at_one_frequency_and_four_eighths_over_an_octave():
    """The mean of readings a quarter apart (common practice, no source): 1/2 each; of four an eighth apart 1/4 each."""
    frequency = np.array([4e9, 6e9, 8e9])
    wave = LIGHT / 6e9
    quarter = distance_weights(frequency, np.array([0.0, 0.25 * wave]))
    assert quarter[0, 1] == pytest.approx([0.5, 0.5])
    eighths = distance_weights(frequency, wave * np.array([0.0, 0.125, 0.25, 0.375]))
    assert eighths[0, 1] == pytest.approx([0.25] * 4)
    assert (noise_over_mean(eighths) < 1.3).all() and noise_over_mean(quarter)[0] > 1.1


def test_both_waves_are_told_apart_at_every_frequency():
    """Superposition: any direct wave and any bounce come back, and a second bounce falls out of four eighths at mid-band."""
    random = np.random.default_rng(1)
    frequency, steps = np.linspace(4e9, 8e9, 5), LIGHT / 6e9 * np.array([0.0, 0.125, 0.25, 0.375])
    direct, bounced = random.normal(size=(2, 5, 2)) @ np.array([1.0, 1j])
    turned = bounce_phase(frequency, steps)
    weights = distance_weights(frequency, steps)
    found = np.sum(weights * (direct[:, None] + bounced[:, None] * turned), axis=-1)
    assert found[0] == pytest.approx(direct) and found[1] == pytest.approx(bounced)
    assert abs(np.sum(weights[0, 2] * turned[2] ** 2)) < 1e-12


@pytest.fixture(scope="module")
def patch(tmp_path_factory):
    """A patch at 5.8 GHz: campaign, plan, and the record of a chamber without noise whose bounce is -26 dB."""
    folder = PATCH.write(tmp_path_factory.mktemp("patch") / "campaign")
    campaign, plan = services.make_plan(folder)
    truth = campaign.simulated().model_copy(
        update={"noise": False, "standing_wave_db": -26.0, "standing_wave_deg": 70.0, "probe_cross_polar_db": -200.0}
    )
    return campaign, plan, truth, record_of_rehearsal(campaign, plan, truth=truth)


def test_the_record_is_that_of_a_chamber_without_the_bounce(patch):
    """Corrupt, correct, recover: the same chamber without a standing wave is the truth; levels about the horn's."""
    campaign, plan, truth, record = patch
    found = at_one_distance(record, campaign.chamber, campaign.device)
    assert found.sizes["point"] * 4 == len(plan) == record.sizes["point"]

    def levels(truth_, read):
        one = at_one_distance(read, campaign.chamber, campaign.device)
        reference = one["trace"].values[one["role"].values == 2].mean(axis=0)
        scan = one["trace"].values[one["role"].values == 0]
        return scan / reference

    clean = record_of_rehearsal(campaign, plan, truth=truth.model_copy(update={"standing_wave_db": None}))
    true, corrected = levels(truth, clean), levels(truth, record)
    raw = levels(truth, first_distance(record))
    strong = np.abs(true) > 0.1 * np.abs(true).max()

    def off_db(values):
        return 20.0 * np.log10(np.abs(values[strong] / true[strong] - 1.0).max())

    assert off_db(raw) > -30.0 and off_db(corrected) < -55.0


def test_what_the_path_does_between_the_distances_does_not_matter(patch):
    """Law: any factor on all readings of a distance (drift, a cable that was moved, the step itself) cancels."""
    campaign, _, _, record = patch
    factor = np.array([1.0, 0.9 * np.exp(0.7j), 1.1 * np.exp(-2j), np.exp(3j)])
    step = record["plan_index"].values // json.loads(record.attrs["distance_steps"])["points_per_distance"]
    moved = record.assign(trace=(record["trace"].dims, record["trace"].values * factor[step][:, None, None]))
    one, other = (at_one_distance(r, campaign.chamber, campaign.device)["trace"].values for r in (record, moved))
    assert np.abs(one - other).max() < 1e-9 * np.abs(one).max()
    told = Bounce.of(at_one_distance(moved, campaign.chamber, campaign.device))
    said = distance_findings(told, campaign.chamber)
    assert any("moved as far as asked and the right way" in one.text and one.severity == "look" for one in said)


def test_records_of_several_distances_are_never_taken_for_one(patch):
    campaign, _, _, record = patch
    with pytest.raises(ValueError, match="several distances"):
        stages(record, campaign.chamber, campaign.device, campaign.recipe())
    part = record.isel(point=np.flatnonzero(record["plan_index"].values < record.sizes["point"] // 2))
    with pytest.raises(ValueError, match="no direction was read at all 4 distances, the run reached 2 of them"):
        at_one_distance(part, campaign.chamber, campaign.device)
    assert first_distance(part).sizes["point"] == record.sizes["point"] // 4
    whole = at_one_distance(record, campaign.chamber, campaign.device)
    assert at_one_distance(whole, campaign.chamber, campaign.device) is whole


def test_gain_and_interval_with_steps_beat_one_distance(tmp_path):
    """Drawn chambers; the closed-form truth lies inside, the interval is a fraction, the finding states the bounce."""
    campaign, plan = services.make_plan(PATCH.write(tmp_path / "steps"))
    done = carry_out(campaign, plan, seed=3)
    found = {
        one.figure.name: one for one in rehearse(campaign, plan, seed=3).findings if one.figure.frequency_hz == 5.8e9
    }
    gain, directivity = found["gain_dbi"], found["directivity_dbi"]
    assert gain.inside and directivity.inside
    rows = gain.figure.groups()
    assert 0.0 < rows["standing wave"] < 0.05  # at one distance 0.8 dB
    text = " ".join(one.text for one in distance_findings(done.processed.bounce, campaign.chamber))
    assert "from 4 distances" in text and "bounced between probe and reference" in text
    true = done.rehearsed.truth.standing_wave_db
    assert done.processed.bounce is not None and true is not None
    # Rms over directions is below the largest; what is common to all directions is not in it.
    assert true - 15.0 < 20.0 * np.log10(done.processed.bounce.rms) < true


@pytest.mark.nightly
@pytest.mark.usefixtures("nightly")
@pytest.mark.parametrize("scenario", [PATCH, HORN], ids=["patch", "horn"])
def test_intervals_hold_in_drawn_chambers(scenario, tmp_path):
    """25 draws; gain and directivity inside in 94 % as the counting does, less what chance takes."""
    campaign, plan = services.make_plan(scenario.write(tmp_path / "campaign"))
    names, inside = ("gain_dbi", "directivity_dbi", "beamwidth_e_deg", "beamwidth_h_deg"), []
    for seed in range(1, 26):
        inside += [
            one.inside
            for one in rehearse(campaign, plan, seed=seed).findings
            if one.figure.name in names and one.counts
        ]
    assert np.mean(inside) >= 0.94 - 1.65 * np.sqrt(0.94 * 0.06 / 25)


def test_a_device_beside_the_axes_is_put_right(tmp_path):
    """150 mm beside the axes' intersection the device does not move by the whole step where it is seen aside."""
    scenario = replace(
        PATCH,
        device=sized(30.0, 30.0, 5.0, 7.0, offset_mm=[150.0, 0.0, 0.0]),
        goal={**PATCH.goal, "points": 1, "stop_ghz": 5.75, "region_deg": 60.0},
    )
    folder = scenario.write(tmp_path / "campaign")
    campaign, plan = services.make_plan(folder)
    quiet = campaign.simulated().model_copy(update={"noise": False})
    record = record_of_rehearsal(campaign, plan, truth=quiet)
    told = Bounce.of(at_one_distance(record, campaign.chamber, campaign.device))
    beside = campaign.device.model_copy(update={"offset_mm": (0.0, 0.0, 0.0)})
    wrong = Bounce.of(at_one_distance(record, campaign.chamber, beside))
    assert told is not None and wrong is not None
    # Nothing bounces here: whatever is found is an error of the distances.
    assert told.rms < 5e-4 < wrong.rms and told.strongest < 1e-3 < wrong.strongest


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"mm": [0.0, 5.0]}, "exactly one of both"),
        ({"wavelengths": [0.125, 0.25]}, "must rise from 0"),
        ({"wavelengths": [0.0]}, "must be 2 to 12 distances"),
        ({"moves": "axis"}, "no axis of the range's length is driven"),
        ({"wavelengths": [0.0, 0.5]}, "times that of a plain mean"),
        ({"expanded_mm": None}, "expanded_mm"),
    ],
)
def test_steps_that_part_nothing_are_refused(tmp_path, changes, said):
    steps = {name: value for name, value in {**STEPS, **changes}.items() if value is not None}
    with pytest.raises(Exception, match=said):
        folder = replace(PATCH, goal={**PATCH.goal, "distance_steps": steps}).write(tmp_path / "campaign")
        services.make_plan(folder)


def test_what_is_not_done_at_several_distances_is_refused(tmp_path):
    for goal, chamber, said in (
        ({"style": "fly"}, {}, "style = 'fly': must be 'step' with distance_steps"),
        ({"want": {"gain_dbi": 0.5}}, {}, "want: must be left out with distance_steps"),
        ({}, {"method": "swap", "reconnect_db": 0.1}, "must be 'switch' or 'none' with distance_steps"),
    ):
        scenario = replace(
            PATCH, goal={**PATCH.goal, **goal}, chamber={**PATCH.chamber, "reference": {**HORN_5_8_GHZ, **chamber}}
        )
        with pytest.raises(Exception, match=said):
            services.make_plan(scenario.write(tmp_path / said[:5] / "campaign"))


def test_the_campaign_says_what_a_person_moves(patch):
    campaign, plan, _, _ = patch
    from colure.app.services.plan_words import plan_rows

    rows = dict(plan_rows(campaign, plan))
    assert "the whole scan at 4 distances: the probe 0 mm, then 6.461, 12.922, 19.383 mm farther" in rows["Distances"]
    assert "noise is 0.50 times that of one scan" in rows["Distances"]
