"""One polarization alone of a device beside the axes: what its place turns and stretches lies in the row of the finite distance."""

from __future__ import annotations

import numpy as np

from colure.app import services
from colure.app.services.rehearsal import rehearse
from tests.coverage.scenarios import AT_2_4_GHZ, Scenario, band, sized

#: A waveguide's mouth, 80 mm beside and behind the axes' intersection, 2 m from the probe; what else could hide its place is quiet.
BESIDE = Scenario(
    device=sized(110.0, 70.0, 14.0, 7.5, offset_mm=[45.0, -26.0, -39.0]),
    goal=band(2.2, scheme="one-pass", region_deg=100.0),
    chamber={**AT_2_4_GHZ, "range_length_m": 2.0, "echo_level_db": -65},
    twin={"device": {"kind": "aperture", "shape": "rectangular", "width_mm": 110.0, "height_mm": 70.0}},
)


def test_a_device_beside_the_axes_holds_its_beamwidth(tmp_path):
    """The probe stands nearer to the axis for a device that lies behind: by geometry its beam reads z / R too narrow or too wide."""
    campaign, plan = services.make_plan(BESIDE.write(tmp_path / "beside"))
    inside, wide = [], []
    for seed in (1, 2):
        found = {one.figure.name: one for one in rehearse(campaign, plan, seed=seed).findings}
        some = [
            found[name] for name in ("beamwidth_e_deg", "beamwidth_h_deg", "beam_azimuth_deg", "beam_elevation_deg")
        ]
        inside += [one.inside for one in some]
        wide += [one.figure.upper - one.figure.lower for one in some]
        print([(one.figure.name, round(one.error, 2), round(one.figure.upper - one.figure.lower, 2)) for one in some])
    assert all(inside)
    # The interval knows the place, instead of being wide enough for any: within twice the shift from end to end.
    shift = np.rad2deg(np.linalg.norm(campaign.device.offset_mm) / 2000.0)
    assert max(wide) < 4.0 * shift
