"""From sweeps to the device's waves: the steps of a recipe that turn a record into an expansion.

What belongs to all frequencies together (drift and its jumps, the cable, the misalignment) is found first; the rest goes
frequency by frequency, so that a record too large for the memory comes out, piece by piece, exactly as a small one does.
"""

from __future__ import annotations

import hashlib
from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import partial
from typing import TYPE_CHECKING

import numpy as np

from colure.analysis.pipeline.sweep_steps import RecipeStep, Stages, Work, flex_of, is_offset, one_pass, sweep_steps
from colure.analysis.steps.alignment import (
    FREQUENCIES,
    Estimate,
    aligned_field,
    declared_prior,
    estimate,
    looked_at,
    looked_upon,
    readings_of,
    without_own,
)
from colure.analysis.steps.alignment_fit import Disturbances
from colure.analysis.steps.assemble import MeasuredSphere
from colure.analysis.steps.cable import CableFlex, bend_shapes
from colure.analysis.steps.distance_steps import require_one_distance
from colure.analysis.steps.drift import DriftTrack, declared_drift, track
from colure.analysis.steps.far_field import FarFieldStep, far_field_step
from colure.analysis.steps.gain import ReferenceData
from colure.analysis.steps.misaligned import ForwardModel
from colure.analysis.steps.mode_filter import OwnWaves
from colure.analysis.steps.time_gate import Gate
from colure.analysis.stray.known_room import RoomHeard, ScanNoise, heard_of, removed, require_room
from colure.analysis.stray.mirrors import hearing, stray_fields
from colure.analysis.uncertainty.alignment_causes import azimuth_of
from colure.errors import InputError
from colure.geometry.conventions import ComplexArray, FloatArray, IntArray
from colure.geometry.kinematics import ALIGNED, Geometry
from colure.model.chamber import Chamber
from colure.model.device import Device
from colure.model.learned_room import LearnedRoom
from colure.model.plan import Role
from colure.model.recipe import Recipe
from colure.model.record import grid_of, of_role
from colure.values import holds_arrays
from colure.waves.expansion import Expansion

if TYPE_CHECKING:
    import xarray as xr


#: Rooms behind the alignment's covariance, and how often the phases of their echoes are drawn.
ROOMS, PHASES = 16, 2


@dataclass(frozen=True)
class Known:
    """What all frequencies of a record tell together: drift, cable, misalignment; None where that step does not run."""

    drift: DriftTrack
    cable: CableFlex | None
    alignment: Estimate | None
    heard: RoomHeard | None = None

    def at(self, frequencies: slice | IntArray) -> Known:
        """Return what holds at some of the frequencies."""
        cable = None if self.cable is None else self.cable.at(frequencies)
        return replace(self, drift=self.drift.at(frequencies), cable=cable)


def _whole(record: xr.Dataset, chamber: Chamber, device: Device) -> bool:
    return grid_of(record).whole and not one_pass(record)


#: From the measured sphere to the device's waves, in one solution: the misalignment is part of the transform's forward model,
#: and the mode filter of its unknowns. `transform` takes them together.
WAVE_STEPS = (
    RecipeStep(name="room",
    needs="a learned room (`room` in chamber.toml), the whole sphere, both polarizations, a probe that stands still",
    rows=("range echoes",),
               suits=lambda record, chamber,
               device: chamber.room is not None and not chamber.positioner.joints and _whole(record, chamber, device)),
    RecipeStep(name="alignment",
    needs="the whole sphere, both polarizations, slices about the roll axis of a positioner with two axes",
    rows=("alignment",),
               suits=lambda record, chamber, device: chamber.positioner.geometry is Geometry.ROLL_OVER_AZIMUTH
               and not chamber.positioner.joints and _whole(record, chamber, device)),
    RecipeStep(name="far-field", needs="both polarizations", rows=("sampling and truncation",),
               suits=lambda record, chamber, device: not one_pass(record)),
    # Part of a sphere tells no waves apart well enough to drop some of them.
    RecipeStep(name="mode-filter", needs="the whole sphere, both polarizations, a device beside the axes' intersection",
               rows=("sampling and truncation",), parameters=("radius_mm",),
               suits=lambda record, chamber, device: _whole(record, chamber, device) and is_offset(device)),
)  # fmt: skip


def all_steps() -> tuple[RecipeStep, ...]:
    """Return every step of the recipe in its order."""
    return (*sweep_steps(), *WAVE_STEPS)


@dataclass(frozen=True)
@holds_arrays
class Transformed:
    """A record as the device's waves: the stages, the step that was taken, the sphere it was taken from, its noise.

    noise (frequency,): standard deviation of one component of one sample.
    """

    sweep_stages: Stages
    step: FarFieldStep
    sphere: MeasuredSphere
    noise: FloatArray
    alignment: Estimate | None
    expansion: Expansion
    heard: RoomHeard | None = None


def stages(
    record: xr.Dataset,
    chamber: Chamber,
    device: Device,
    recipe: Recipe,
    reference: ReferenceData | None = None,
    known: Known | None = None,
    gate: Gate | None = None,
) -> Stages:
    """Run the recipe as far as the measured sphere.

    `known` holds what was found from all frequencies already; `gate` is used in place of the recipe's.
    """
    require_one_distance(record)
    drift = track(record, declared=declared_drift(chamber)) if known is None else known.drift
    work = Work(record, chamber, device, recipe, reference, drift, record, None if known is None else known.cable, gate)
    for step in sweep_steps():
        work = step.run(work, recipe.runs(step.name))
    return work.stages()


def transform(
    record: xr.Dataset,
    chamber: Chamber,
    device: Device,
    recipe: Recipe,
    *,
    keep: int,
    probe: Expansion | None = None,
    reference: ReferenceData | None = None,
    known: Known | None = None,
    room: LearnedRoom | None = None,
) -> Transformed:
    """Run a recipe as far as the device's waves.

    Parameters
    ----------
    keep
        Order of the device's waves.
    room
        The learned room, for the step of that name.
    probe, reference
        At the record's frequencies.
    known
        What was found from all frequencies of the record that these belong to; found from these if None.

    Raises
    ------
    ValueError
        If the record lacks tie points, reference sweeps or scan points; counts are named.
    """
    learned = require_room(chamber, recipe, room) if recipe.runs("room") else None
    sweep_stages = stages(record, chamber, device, recipe, reference, known)
    sphere = sweep_stages.sphere
    noise = (
        sweep_stages.transfer.noise.max(axis=1) * np.abs(sweep_stages.transfer.factor).max(axis=1) * sphere.noise_factor
    )
    # Ties and reference were read once; a sum of states is as noisy as its weights make it.
    noise = noise * float(record.attrs.get("noise_factor", 1.0))
    step = far_field_step(
        sphere,
        distance_m=chamber.range_length_m,
        keep_order=keep,
        probe=probe,
        noise=noise,
        stray=chamber.echo_amplitude,
        direct=not recipe.runs("far-field"),
        own_waves=_own_waves(device, recipe, keep),
    )
    if known is None:
        estimator = partial(
            _estimate,
            step=step,
            chamber=chamber,
            drift=sweep_stages.drift,
            noise=noise,
            probe=probe,
            flex=sweep_stages.cable,
            seed=seed_of(record),
        )
        noisy = ScanNoise(noise, max(1.0, sweep_stages.transfer.freedom))
        heard, sphere, aligned = _room_then_alignment(
            sphere, step, chamber, learned, estimator if recipe.runs("alignment") else None, noise=noisy, probe=probe
        )
    else:
        heard, aligned = known.heard, known.alignment if recipe.runs("alignment") else None
        if learned is not None and heard is not None and heard.holds:
            sphere = removed(sphere, step, chamber, learned, probe=probe)
    if aligned is not None:
        sphere = replace(sphere, field=aligned_field(sphere, step, chamber.range_length_m, aligned))
    return Transformed(sweep_stages, step, sphere, noise, aligned, step.expansion(sphere.field), heard)


def _room_then_alignment(
    sphere: MeasuredSphere,
    step: FarFieldStep,
    chamber: Chamber,
    room: LearnedRoom | None,
    estimated: Callable[..., Estimate] | None,
    *,
    noise: ScanNoise,
    probe: Expansion | None,
) -> tuple[RoomHeard | None, MeasuredSphere, Estimate | None]:
    """Return what the run says of a learned room, the sphere without its echoes, and the alignment of that.

    The room is asked about an aligned sphere: what misalignment leaves outside the device's waves is no echo.
    """
    heard = None
    if room is not None:
        looked = sphere
        if estimated is not None:
            first = aligned_field(sphere, step, chamber.range_length_m, estimated(sphere))
            looked = replace(sphere, field=first)
        heard = heard_of(looked, step, chamber, room, noise=noise, probe=probe)
        if heard.holds:
            sphere = removed(sphere, step, chamber, room, probe=probe)
    if estimated is None:
        return heard, sphere, None
    if heard is not None:
        level = max(chamber.echo_level_db, heard.level_db(chamber.echo_level_db))
        chamber = chamber.model_copy(update={"echo_level_db": level})
    return heard, sphere, estimated(sphere, chamber=chamber)


def _estimate(
    sphere: MeasuredSphere,
    step: FarFieldStep,
    chamber: Chamber,
    drift: DriftTrack,
    noise: FloatArray,
    probe: Expansion | None,
    flex: CableFlex | None,
    *,
    seed: int,
) -> Estimate:
    if chamber.positioner.joints:
        raise InputError(["recipe.toml: step 'alignment': must be off (on = false) with chamber.toml positioner.joints: it turns the two axes "
                          "of a positioner; the joints' tolerances are in the budget"])  # fmt: skip
    some, there = looked_upon(sphere, step, FREQUENCIES)
    rooms = stray_fields(
        some,
        replace(there, own_waves=None),
        chamber.positioner.geometry,
        range_m=chamber.range_length_m,
        hears=hearing(probe, chamber.probe.gain_dbi),
        rooms=ROOMS,
        phases=PHASES,
        seed=seed,
    )
    chosen, declared = looked_at(sphere.frequency_hz.size), without_own(chamber.alignment, mark_of(seed))
    return estimate(
        sphere,
        step,
        chamber.range_length_m,
        prior=declared_prior(declared, chamber.range_length_m),
        read=readings_of(declared),
        disturbances=Disturbances(
            noise=noise[chosen],
            slice_error=drift.between,
            rooms=rooms,
            echo_level=chamber.echo_amplitude,
            bends=np.concatenate([bends_of(some, chamber, flex), *_beside(some, there, chamber)]),
        ),
    )


def bends_of(sphere: MeasuredSphere, chamber: Chamber, flex: CableFlex | None) -> ComplexArray:
    """Return what the moving cable adds, one standard deviation of each shape over the azimuth: sin a and sin 2a.

    Left and right of the pole they act with opposite signs, as axes beside each other do; 1 - cos a does not. On a mount with
    joints the sides may be alike: every shape (`bend_shapes`).
    """
    expanded = (
        np.deg2rad(chamber.cable_flex_deg) if flex is None else min(np.deg2rad(chamber.cable_flex_deg), flex.expanded)
    )
    joints = bool(chamber.positioner.joints)
    every = bend_shapes(azimuth_of(sphere, chamber.positioner.geometry), joints=joints)
    shapes = every if joints else every[:2]
    return np.asarray(0.5j * expanded / np.sqrt(3.0) * shapes[:, None, None] * sphere.field)


def seed_of(record: xr.Dataset) -> int:
    """Return what random draws begin with, from the ties of a record as they were read: the same for the same run, another for another.

    Were it one number, all runs would share the same few drawn rooms, and what those miss they would all miss together.
    """
    ties = of_role(record, Role.TIE, Role.RESUME)["trace"].values
    digest = hashlib.blake2b(np.ascontiguousarray(ties, dtype="<c16").tobytes(), digest_size=4)
    return int.from_bytes(digest.digest(), "little")


def mark_of(seed: int) -> str:
    """Return the mark of a run by what its draws begin with (`seed_of`)."""
    return f"{seed:08x}"


def _beside(sphere: MeasuredSphere, step: FarFieldStep, chamber: Chamber) -> list[ComplexArray]:
    """Return what one standard deviation of the probe's height adds, no field or one: of the five adjustments none looks like it."""
    up = 0.5e-3 * chamber.alignment.probe_lateral_mm / float(np.sqrt(2.0))
    if up == 0.0:
        return []
    model = ForwardModel(sphere, chamber.range_length_m)
    return [model.change(step.measured(sphere.field), replace(ALIGNED, probe_offset=(0.0, up, 0.0)))[None]]


def in_pieces(record: xr.Dataset, recipe: Recipe, *, whole: bool) -> bool:
    """Tell whether a recipe goes frequency by frequency once `known_of` has looked.

    A gate works across the band, places flown over are timed across it, and part of a sphere is damped for all frequencies alike.
    """
    across = any(step.whole_band and recipe.runs(step.name) for step in sweep_steps())
    return whole and not one_pass(record) and not across


def known_of(
    record: xr.Dataset,
    some: xr.Dataset,
    chamber: Chamber,
    device: Device,
    recipe: Recipe,
    *,
    keep: int,
    probe: Expansion | None = None,
    reference: ReferenceData | None = None,
    room: LearnedRoom | None = None,
) -> Known:
    """Look at ties and cable of all frequencies, and at the few that show the misalignment.

    record
        May be lazy: only ties, cable sweeps and passes of the boresight are read.
    some
        The record at the frequencies that `looked_at` names, in memory.
    probe, reference
        At those few frequencies.
    """
    drift = track(record, declared=declared_drift(chamber))
    flex = flex_of(record, chamber) if recipe.runs("cable") else None
    first = Known(drift, flex, None)
    if not recipe.runs("alignment") and not recipe.runs("room"):
        return first
    learned = require_room(chamber, recipe, room) if recipe.runs("room") else None
    transformed = transform(
        some,
        chamber,
        device,
        recipe.without("alignment").without("room"),
        keep=keep,
        probe=probe,
        reference=reference,
        known=first.at(looked_at(record.sizes["frequency"])),
    )
    estimated = partial(
        _estimate,
        step=transformed.step,
        chamber=chamber,
        drift=drift,
        noise=transformed.noise,
        probe=probe,
        flex=flex,
        seed=seed_of(record),
    )
    noisy = ScanNoise(transformed.noise, max(1.0, transformed.sweep_stages.transfer.freedom))
    heard, _, alignment = _room_then_alignment(
        transformed.sphere,
        transformed.step,
        chamber,
        learned,
        estimated if recipe.runs("alignment") else None,
        noise=noisy,
        probe=probe,
    )
    return replace(first, alignment=alignment, heard=heard)


def _own_waves(device: Device, recipe: Recipe, keep: int) -> OwnWaves | None:
    """Return the mode filter about the device's own centre, if it is to run."""
    if not recipe.runs("mode-filter"):
        return None
    radius_mm = recipe.step("mode-filter").radius_mm
    own = 0.5e-3 * float(np.linalg.norm(device.size_mm)) if radius_mm is None else 1e-3 * radius_mm
    return OwnWaves(1e-3 * np.asarray(device.offset_mm, float), own, keep)
