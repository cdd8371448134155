"""Near field to far field on mounts that are no stack of two axes, against the twin's own closed-form far field.

The bound of -80 dB is common practice for a noise-free transform, no source.
"""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.pipeline.recipe import process
from colure.app.services.reference import probe_of
from colure.errors import InputError
from colure.geometry.directions import unit_vector
from colure.geometry.polarization import from_cartesian
from colure.model.campaign import Campaign
from colure.model.pattern import field_of
from colure.model.recipe import Recipe
from colure.planning.preflight import make_plan
from colure.twin.devices import device_maker
from tests.endtoend.test_near_to_far import PERFECT, edited, rms_error_db, simulated_record
from tests.mounts import on_mount, six_axes, swinging_arm
from tests.twin.test_linkage import dipole_on, record_of

MOUNTS = {
    "swinging arm": lambda: swinging_arm(300),
    "swinging arm over one side": lambda: swinging_arm(300, arm="[-2, 182]"),
    "two joints, dual probe": lambda: swinging_arm(300, arm="[-2, 182]", roll=False),
    "six axes": lambda: six_axes(300),
}


def rms_db(pattern, device) -> float:
    """Rms of the complex vector difference to a device's closed form, relative to the peak; one complex factor is free."""
    t, p = np.meshgrid(np.deg2rad(pattern["theta"].values), np.deg2rad(pattern["phi"].values), indexing="ij")
    true = device.far_field(unit_vector(theta=t, phi=p).reshape(-1, 3)).reshape(-1, *t.shape, 3)[0]
    truth, found = np.stack(from_cartesian(true, theta=t, phi=p)), field_of(pattern)[0]
    found = found * np.vdot(found, truth) / np.vdot(found, found)
    error = np.sum(np.abs(found - truth) ** 2 * np.sin(t)) / np.sum(np.sin(t))
    return float(10 * np.log10(error / np.sum(np.abs(truth) ** 2, axis=0).max()))


@pytest.mark.parametrize("name", [pytest.param("swinging arm over one side", marks=pytest.mark.nightly), "six axes"])
def test_a_noise_free_dipole_beside_the_intersection_comes_out_right(tmp_path, name, request):
    if name != "six axes":
        request.getfixturevalue("nightly")
    campaign = Campaign.load(dipole_on(MOUNTS[name](), 0.3, level_db=-85).write(tmp_path / "c"))
    campaign, plan = make_plan(campaign)
    record = record_of(campaign, plan, PERFECT)
    assert np.allclose(record["readback_deg"], record["commanded_deg"], atol=1e-6)
    probe = probe_of(campaign, plan.frequency_hz)
    done = process(record, campaign.chamber, campaign.device, probe=probe, grid_step_deg=10)
    device = device_maker(campaign.simulated(), campaign.device, band_hz=plan.frequency_hz)(plan.frequency_hz)
    error = rms_db(done.pattern, device)
    print(f"{name}: {error:.1f} dB rms relative to the peak, {len(plan)} points")
    assert error <= -80.0
    # Two axes' alignment is nothing that joints have.
    steps = [{"step": step} for step in ("gain", "assemble", "alignment", "far-field")]
    with pytest.raises(InputError, match=r"recipe.toml: step 'alignment': must be off"):
        process(record, campaign.chamber, campaign.device, probe=probe, recipe=Recipe.model_validate({"steps": steps}))


@pytest.mark.nightly
@pytest.mark.parametrize("name", MOUNTS)
def test_a_noise_free_panel_comes_out_right(campaign_folder, name, request):
    if not request.config.getoption("--nightly"):
        pytest.skip("5,000 points a mount: --nightly")
    ports = 2 if "dual" in name else 1
    edited(campaign_folder, "goal.toml", ("points = 11", "points = 2"), ("= -50 ", "= -95 "), ('"two-pass"', '"auto"'))
    edited(campaign_folder, "device.toml", ("-30.0]", "-10.0]"))
    on_mount(campaign_folder, MOUNTS[name](), range_m=0.3, ports=ports)
    campaign, plan = make_plan(Campaign.load(campaign_folder))
    record = simulated_record(campaign, plan, PERFECT)
    assert list(record["axis"].values) == ["azimuth", "roll", "probe"][: 3 if ports == 1 else 2]
    assert np.allclose(record["readback_deg"], record["commanded_deg"], atol=1e-6)
    done = process(
        record, campaign.chamber, campaign.device, probe=probe_of(campaign, plan.frequency_hz), grid_step_deg=3
    )
    error = rms_error_db(campaign, done.pattern)
    print(f"{name}: {error:.1f} dB rms relative to the peak, {len(plan)} points")
    assert error <= -80.0
