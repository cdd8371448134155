"""Small motions of a mount's joints from a finished run: the recipe as far as the sphere, the rooms that may be, and the fit."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np

from colure.analysis.pipeline.recipe import default_recipe, require_phase
from colure.analysis.pipeline.stages import bends_of, seed_of, transform
from colure.analysis.pipeline.sweep_steps import one_pass
from colure.analysis.steps.alignment import FREQUENCIES, looked_at, looked_upon
from colure.analysis.steps.alignment_fit import Disturbances
from colure.analysis.steps.assemble import MeasuredSphere
from colure.analysis.steps.far_field import FarFieldStep
from colure.analysis.steps.gain import ReferenceData
from colure.analysis.steps.joint_estimate import JointEstimate, estimate_joints
from colure.analysis.steps.moved_joints import MovedJoints, beam_of_probe, chain_of_mount, motions_declared
from colure.analysis.stray.held import HeldPasses
from colure.analysis.stray.mirrors import Wall, draw_walls, hearing
from colure.analysis.stray.swung import SwungWalls, drawn_room
from colure.geometry.conventions import ComplexArray, FloatArray, wavenumber
from colure.geometry.kinematics import Geometry
from colure.model.chamber import Chamber
from colure.model.device import Device
from colure.model.plan import Role
from colure.model.recipe import Recipe
from colure.model.record import grid_of, of_role
from colure.waves.expansion import Expansion
from colure.waves.transform import average_poles

if TYPE_CHECKING:
    import xarray as xr

#: Rooms behind the covariance; every wall's phase is anyone's.
ROOMS = 16
#: A scan that reads theta no further down than this looks at the device from one side only, degrees.
OTHER_SIDE_DEG = -10.0


@dataclass(frozen=True)
class SolvedGeometry:
    """What a run tells of its mount, and whether it was measured from both sides.

    joints
        The estimate.
    both_sides
        Whether polar angles were read on both sides of zero; None where slices are rings.
    """

    joints: JointEstimate
    both_sides: bool | None


def solved_geometry(
    record: xr.Dataset,
    chamber: Chamber,
    device: Device,
    recipe: Recipe | None,
    *,
    probe: Expansion | None = None,
    reference: ReferenceData | None = None,
) -> SolvedGeometry:
    """Find the small motions of a run's mount.

    Parameters
    ----------
    probe, reference
        At the record's frequencies.

    Raises
    ------
    ValueError
        If the run is not a whole sphere of both polarizations, in slices about the device's roll; nothing less closes on itself.
    """
    require_phase(record)
    if one_pass(record) or not grid_of(record).whole:
        raise ValueError("geometry: the run must be a whole sphere in both polarizations: part of one, or one polarization alone, fits "
                         "a device on any mount; set region_deg = 180 (deg) in goal.toml and measure again")  # fmt: skip
    chosen_recipe = default_recipe(record, chamber, device) if recipe is None else recipe
    transformed = transform(record, chamber, device, chosen_recipe.without("alignment").without("room"),
                      keep=int(record.attrs["order"]),
                      probe=probe, reference=reference)  # fmt: skip
    some, step = looked_upon(transformed.sphere, transformed.step, FREQUENCIES)
    chosen = looked_at(transformed.sphere.frequency_hz.size)
    own = None if probe is None else Expansion(probe.coefficients[chosen], probe.k[chosen])
    motions, beam = motions_declared(chamber), beam_of_probe(hearing(own, chamber.probe.gain_dbi))
    model = MovedJoints(some, step, record, chamber, motions, probe=own, beam=beam)
    rooms = rooms_around(some, step, chamber, model, own, seed_of(record))
    bends = bends_of(some, chamber, transformed.sweep_stages.cable)
    disturbances = Disturbances(
        noise=transformed.noise[chosen],
        slice_error=transformed.sweep_stages.drift.between,
        rooms=rooms,
        echo_level=chamber.echo_amplitude,
        bends=bends,
        parts=len(rooms[0]),
    )
    joints = estimate_joints(some, step, model, motions, disturbances)
    if chamber.positioner.geometry is not Geometry.ROLL_OVER_AZIMUTH:
        return SolvedGeometry(joints, None)
    shown = of_role(record, Role.SCAN)["commanded_deg"].values[
        :, [str(n) for n in record["axis"].values].index("azimuth")
    ]
    return SolvedGeometry(joints, bool(chamber.axis_table["azimuth"].map.angle_deg(shown).min() < OTHER_SIDE_DEG))


def rooms_around(
    sphere: MeasuredSphere, step: FarFieldStep, chamber: Chamber, model: MovedJoints, probe: Expansion | None, seed: int
) -> list[ComplexArray]:
    """Return what the walls (wall, frequency, 2, theta, phi) of drawn rooms add to a scan, one room after another."""
    random, hears = np.random.default_rng(seed), hearing(probe, chamber.probe.gain_dbi)
    device, chain = replace(step, own_waves=None).expansion(sphere.field), chain_of_mount(chamber)
    if sphere.slices_used == 0:
        return _rooms_of_two_axes(random, sphere, replace(step, own_waves=None), chamber, hears)
    held = HeldPasses.of_values(sphere, chain, model.values, ports=model.ports)
    walls, out = SwungWalls(sphere, device, chain.distance, held, hears), []
    for _ in range(ROOMS):
        room = drawn_room(random, chain.distance, standing=not chamber.swings_probe)
        one = np.stack([walls.stray(room.wall(number)) for number in range(len(room.normals))])
        # The assembly takes the mean of all slices at the poles, of echoes as well.
        average_poles(one, [(0, 1.0), (one.shape[-2] - 1, -1.0)])
        out.append(one)
    return out


def _rooms_of_two_axes(
    random: np.random.Generator,
    sphere: MeasuredSphere,
    step: FarFieldStep,
    chamber: Chamber,
    hears: Callable[[FloatArray], ComplexArray],
) -> list[ComplexArray]:
    """Return drawn rooms, wall by wall, as `rooms_around` does, of a positioner whose slices are rings: no sample is shared by them."""
    k, out = wavenumber(sphere.frequency_hz)[:, None], []
    wall = Wall(sphere, step, step.expansion(sphere.field), chamber.positioner.geometry)
    for _ in range(ROOMS):
        directions, way, mirrors = draw_walls(random, chamber.range_length_m, hears)
        turned = (mirrors * np.exp(-1j * k * way)[..., None, None])[None]
        each = [wall.through_mirrors(directions[n : n + 1], turned[:, :, n : n + 1])[0] for n in range(len(directions))]
        out.append(np.stack(each))
    return out
