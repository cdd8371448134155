"""Echoes of side walls on mounts of joints: what the budget's rooms add, held against the simulated chamber with the same wall.

The simulated chamber shares no mathematics with them: it mirrors the device's dipoles in the wall, joint after joint by matrices.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from colure.analysis.steps.assemble import assemble
from colure.analysis.steps.far_field import far_field_step
from colure.analysis.stray.held import HeldPasses, HeldWalls
from colure.analysis.stray.mirrors import hearing
from colure.analysis.stray.swung import SurroundingRoom, SwungWalls
from colure.app.services.reference import probe_of
from colure.geometry.conventions import wavenumber
from colure.model.campaign import Campaign
from colure.model.simulated_chamber import EchoTable
from colure.planning.preflight import make_plan
from tests.coverage.scenarios import Scenario
from tests.mounts import joint, six_axes, swinging_arm, table_on_swing
from tests.twin.test_linkage import PERFECT, dipole_on, record_of

LIFT = (
    '[[positioner.joints]]\nname = "lift"\nletter = "L"\ncarries = "device"\nkind = "prismatic"\naxis = [0, 0, 1]\n'
    "min_mm = -2000\nmax_mm = 2000\nspeed_mm_s = 200\nacceleration_mm_s2 = 400\n"
)
MOUNTS = {
    "arm": (swinging_arm(800), 0.8),
    "arch": (swinging_arm(800, arm="[-2, 182]"), 0.8),
    "six axes": (six_axes(600, base_mm=1600), 0.6),
    # A lift under the turntable goes its share of the way: walls come nearer and go away.
    "six axes and a lift": (LIFT + six_axes(600, base_mm=1600), 0.6),
    "table on a swing": (table_on_swing(800), 0.8),
    # No joint rolls the probe: the device itself turns for the second polarization.
    "three axes": (
        joint("tower", "C", "device", "[0, 0, 1]", travel="[-370, 370]")
        + joint("turn", "A", "device", "[0, -1, 0]") + joint("spin", "B", "device", "[0, 0, -1]", travel="[-370, 370]"),
        0.8,
    ),
}  # fmt: skip
NORMALS = ((1.0, 0.0, 0.0), (0.1, -1.0, 0.2), (0.3, 0.2, -1.0))


def correlations(folder, joints: str, range_m: float) -> list[complex]:
    """Return how the modelled echo of each wall goes together with the simulated one: 1 where they are the same but for size."""
    scenario = dipole_on(joints, range_m)
    scenario = replace(scenario, chamber={**scenario.chamber, "largest_device_m": 0.2})
    campaign, plan = make_plan(Campaign.load(scenario.write(folder / "c")))
    chamber, probe = campaign.chamber, probe_of(campaign, plan.frequency_hz)
    clean = record_of(campaign, plan, PERFECT)
    sphere = assemble(clean, chamber)
    step = far_field_step(sphere, distance_m=range_m, keep_order=plan.order, probe=probe)
    device, held = step.expansion(sphere.field), HeldPasses.of(sphere, clean, chamber)
    swung = SwungWalls(sphere, device, range_m, held, hearing(probe, chamber.probe.gain_dbi))
    still = HeldWalls(sphere, step, device, held)
    weight, out = np.sqrt(np.sin(sphere.theta))[:, None], []
    for normal in np.array(NORMALS):
        wall = EchoTable(normal=tuple(normal), distance_m=1.5 * range_m, level_db=-20.0)
        dirty = assemble(record_of(campaign, plan, PERFECT.model_copy(update={"echoes": (wall,)})), chamber)
        true = weight * (dirty.field - sphere.field)
        unit = normal / np.linalg.norm(normal)
        room = SurroundingRoom(
            unit[None], np.array([1.5 * range_m]), np.array([0.1 + 0j]), np.zeros((1, 2, 2), complex)
        )
        if chamber.swings_probe:
            told = weight * swung.stray(room)
        else:
            direction, way, mirror = swung.to_horn(room)
            turn = np.exp(-1j * wavenumber(sphere.frequency_hz)[:, None] * way)[..., None, None]
            told = weight * still.through_mirrors(direction, (mirror * turn)[None])[0]
        out.append(complex(np.vdot(told, true) / np.linalg.norm(told) / np.linalg.norm(true)))
    return out


@pytest.mark.parametrize("name", MOUNTS)
def test_a_wall_meets_the_device_as_the_joints_hold_it(tmp_path, name):
    """From the same joints the same echo, in phase; 0.32 to 0.88 came of poses that two axes would have had (table on a swing)."""
    found = correlations(tmp_path, *MOUNTS[name])
    assert min(abs(one) for one in found) > 0.99, found
    # A probe's centre of phase is not quite its mouth: a little of a turn that all samples share.
    assert max(abs(np.angle(one)) for one in found) < np.deg2rad(5.0), found


def test_without_joints_there_is_no_such_pose(tmp_path):
    chamber = Campaign.load(Scenario().write(tmp_path / "c")).chamber
    with pytest.raises(ValueError, match=r"positioner\.joints: none"):
        HeldPasses.of(None, None, chamber)
