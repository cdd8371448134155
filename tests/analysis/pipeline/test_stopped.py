"""Scans that were stopped: an honest pattern from what is there, or a refusal that says what to do; never a whole one."""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.pipeline.recipe import process
from colure.analysis.steps.assemble import finer_columns
from colure.analysis.uncertainty.budget import figures_with_budget
from colure.analysis.uncertainty.slice_causes import thinned
from colure.app import services
from colure.app.services.reference import probe_of
from colure.app.services.rehearsal import measured, record_of_rehearsal
from colure.planning.progressive import progressive_order
from colure.twin.truth import figures_of
from tests.coverage.scenarios import Scenario, band, four_by_four


def planned(folder, order):
    scenario = Scenario(device=four_by_four(offset_mm=[0.0, 0.0, -30.0]), goal=band(24.1, order=order))
    return services.make_plan(scenario.write(folder))


@pytest.fixture(scope="module")
def progressive(tmp_path_factory):
    campaign, plan = planned(tmp_path_factory.mktemp("stopped") / "campaign", "progressive")
    return campaign, plan, record_of_rehearsal(campaign, plan, seed=3), measured(campaign, plan, seed=3)[0].device


def test_both_polarizations_of_a_slice_follow_each_other(progressive):
    """Whenever it is stopped, a progressive scan has both passes of all slices but the last."""
    _, plan, _, _ = progressive
    scan = plan.role == 0
    order = progressive_order(plan.grid.slices_planned)
    slices, passes = plan.slice_index[scan], plan.pass_index[scan]
    per_slice = len(slices) // len(order) // 2
    assert slices[:: 2 * per_slice].tolist() == order
    for number in range(len(order)):
        own = slice(2 * number * per_slice, 2 * (number + 1) * per_slice)
        assert set(slices[own]) == {order[number]} and set(passes[own]) == {0, 1}


def test_a_stopped_progressive_scan_gives_a_pattern_with_honest_intervals(progressive):
    """A third of the slices: wider intervals that hold the closed-form truth, and the text says what was measured."""
    campaign, plan, record, device = progressive
    some = record.isel(point=slice(0, int(0.45 * len(plan))))
    done = process(some, campaign.chamber, campaign.device, probe=probe_of(campaign, plan.frequency_hz))
    whole = process(record, campaign.chamber, campaign.device, probe=probe_of(campaign, plan.frequency_hz))
    assert (
        done.completeness.thinned
        and "INCOMPLETE" in done.completeness.text
        and "6 of 18 slices" in done.completeness.text
    )
    assert whole.completeness.whole and whole.completeness.text == "every planned point was measured"
    truth = figures_of(device, campaign.device.slant_deg)[0]
    found = {one.name: one for one in figures_with_budget(done.budget)}
    full = {one.name: one for one in figures_with_budget(whole.budget)}
    for name in ("gain_dbi", "directivity_dbi", "beamwidth_e_deg", "beamwidth_h_deg"):
        assert found[name].contains(truth[name]), (name, found[name].text(), truth[name])
    assert found["directivity_dbi"].expanded_uncertainty > 2.0 * full["directivity_dbi"].expanded_uncertainty
    assert "slice aliasing" in {row.term for row in found["directivity_dbi"].budget}
    assert "slice aliasing" not in {row.term for row in full["directivity_dbi"].budget}


def test_too_few_slices_are_refused(progressive):
    campaign, plan, record, _ = progressive
    some = record.isel(point=slice(0, int(0.15 * len(plan))))
    with pytest.raises(ValueError, match=r"of 18 slices complete in every pass.*at least 4.*resume"):
        process(some, campaign.chamber, campaign.device, probe=probe_of(campaign, plan.frequency_hz))


def test_a_stopped_plain_scan_is_refused_with_what_to_do(tmp_path):
    campaign, plan = planned(tmp_path / "campaign", "plain")
    record = record_of_rehearsal(campaign, plan)
    for share in (0.3, 0.9):
        with pytest.raises(ValueError, match=r"resume the scan with colure acquire"):
            process(record.isel(point=slice(0, int(share * len(plan)))), campaign.chamber, campaign.device,
                    probe=probe_of(campaign, plan.frequency_hz))  # fmt: skip


@pytest.mark.parametrize(("slices", "columns", "factor"), [(12, 24, 2), (12, 40, 2), (9, 30, 3)])
def test_thinning_reads_every_pth_slice(slices, columns, factor):
    """Against leaving columns out of the samples themselves (exact for band-limited data)."""
    random = np.random.default_rng(1)
    samples = random.normal(size=(2, 2 * slices)) + 1j * random.normal(size=(2, 2 * slices))
    expected = finer_columns(samples[:, ::factor], columns)
    np.testing.assert_allclose(thinned(finer_columns(samples, columns), slices), expected, atol=1e-12)
    kept = np.arange(2 * slices) % factor == 1
    other = thinned(finer_columns(samples, 4 * slices), slices, 1)[:, ::2]
    # Where it was read, a thinned field is what was read (but for the highest order of an even count).
    if factor % 2:
        np.testing.assert_allclose(other[:, kept], samples[:, kept], atol=1e-9)
