"""The recipe: recorded, ordered steps from a record to a pattern and its figures."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np

from colure.analysis.figures.beams import ellipse_tilt
from colure.analysis.figures.evaluate import FigureSet
from colure.analysis.pipeline.completeness import Completeness, completeness_of
from colure.analysis.pipeline.relative import brought_to_scale, quantity_of
from colure.analysis.pipeline.stages import Transformed, all_steps, seed_of, stages, transform
from colure.analysis.pipeline.sweep_steps import Stages
from colure.analysis.pipeline.sweeps_again import SweepsAgain
from colure.analysis.steps.agreement import BoresightAgreement, boresight_agreement
from colure.analysis.steps.alignment import PARAMETERS, Estimate, left_over
from colure.analysis.steps.assemble import MeasuredSphere, slice_errors
from colure.analysis.steps.cable import CableFlex
from colure.analysis.steps.distance_steps import Bounce, at_one_distance
from colure.analysis.steps.drift import DriftTrack
from colure.analysis.steps.far_field import FarFieldStep, pattern_grid
from colure.analysis.steps.gain import GainTransfer, ReferenceData, age_days, with_reflection
from colure.analysis.steps.horn_place import place_uncertainty_db
from colure.analysis.steps.probe_beam import rim_unheard_db
from colure.analysis.steps.reflection import DeviceReflection, device_reflection, read_once
from colure.analysis.steps.time_gate import GateResponse
from colure.analysis.stray.known_room import RoomHeard
from colure.analysis.uncertainty.inputs import Inputs
from colure.geometry.conventions import FloatArray, amplitude_db, amplitude_from_db, power_db
from colure.model.bands import of_segments, relative_noise
from colure.model.chamber import Chamber
from colure.model.device import Device
from colure.model.evaluation import Evaluation
from colure.model.files import with_step
from colure.model.learned_room import LearnedRoom
from colure.model.pattern import Quantity, build_pattern
from colure.model.plan import ROLES, Role
from colure.model.recipe import Recipe, Step
from colure.model.record import of_role, offsets_of
from colure.values import holds_arrays
from colure.waves.expansion import Expansion

if TYPE_CHECKING:
    import xarray as xr

PATTERN_STEP_DEG = 1.0
#: The true error of a gate lies within this times what another gate changes, in 95 of 100 simulated cases.
GATE_ERROR = 1.8
#: kT0, dBm in one hertz at 290 K (section 8 of the standards sheet, derived).
THERMAL_DBM_HZ = -173.975


@dataclass(frozen=True)
@holds_arrays
class Processed:
    """What the default recipe makes of a record, with everything later pages draw on."""

    pattern: xr.Dataset
    expansion: Expansion
    sphere: MeasuredSphere
    step: FarFieldStep
    drift: DriftTrack
    transfer: GainTransfer
    budget: Inputs
    frequency_hz: FloatArray
    alignment: Estimate | None = None
    recipe: Recipe | None = None
    cable: CableFlex | None = None
    boresight: BoresightAgreement | None = None
    completeness: Completeness | None = None
    device: Device | None = None
    chamber: Chamber | None = None
    noise_promised_db: float | None = None
    scan_peak_db: float | None = None
    tie_below_peak_db: float | None = None
    #: (frequency,) how strong the noise is against the mean of all frequencies, in power, as bandwidths and powers say.
    noise_by_frequency: FloatArray | None = None
    bounce: Bounce | None = None
    heard: RoomHeard | None = None


def require_phase(record: xr.Dataset) -> None:
    """Raise `ValueError` for the record of a power-only receiver, which no near-field step can use."""
    if record.attrs.get("receiver", "vector") != "vector":
        raise ValueError("record: receiver is power-only: without phase there is no near field to far field (receiver)")


def default_recipe(record: xr.Dataset, chamber: Chamber, device: Device) -> Recipe:
    """Return the steps that suit what a record contains."""
    return Recipe(steps=tuple(Step(step=one.name, on=one.suits(record, chamber, device)) for one in all_steps()))


def process(
    record: xr.Dataset,
    chamber: Chamber,
    device: Device,
    *,
    probe: Expansion | None = None,
    order: int | None = None,
    grid_step_deg: float = PATTERN_STEP_DEG,
    recipe: Recipe | None = None,
    reference: ReferenceData | None = None,
    evaluation: Evaluation | None = None,
    state: str = "beam",
    room: LearnedRoom | None = None,
) -> Processed:
    """Run a recipe: drift, places, gate, gain, assembly, alignment, near field to far field, mode filter.

    Parameters
    ----------
    probe
        Probe far field at the record's frequencies. None: an ideal dipole is assumed; the pattern's history and `self_check` say that
        no probe correction was made.
    order
        Order of the device's waves; the plan's by default.
    recipe
        The steps; `default_recipe` if None. The record itself is never changed.
    reference
        Gain table and adapter of the reference; its dimensions alone if None.
    room
        The learned room, for the step of that name.
    evaluation, state
        What is to be read from the pattern, and the device's state, for its commanded direction.

    Raises
    ------
    ValueError
        If the record lacks tie points, reference sweeps or scan points, or phase; counts are named.
    """
    require_phase(record)
    record = at_one_distance(record, chamber, device)
    device = as_measured(record, device)
    chosen_recipe = default_recipe(record, chamber, device) if recipe is None else recipe
    once = read_once(record)
    reflection = None if once else device_reflection(record, chamber.one_port)
    reference = with_reflection(reference, reflection)
    keep = int(record.attrs["order"]) if order is None else order
    transformed = transform(
        record, chamber, device, chosen_recipe, keep=keep, probe=probe, reference=reference, room=room
    )
    if not chamber.reference.absolute:
        transformed, reference = brought_to_scale(transformed, reference)
    asked = Evaluation() if evaluation is None else evaluation
    own = Surroundings(record, chamber, device, chosen_recipe, probe, reference, reflection)
    slant = _co_polar_slant(transformed.expansion, transformed.sphere, device, asked)
    read_loss_db = None if reference is None else reference.device_loss_db
    loss_db = np.full(record.sizes["frequency"], np.nan) if once else read_loss_db
    figures = FigureSet(
        asked, slant, float(np.deg2rad(transformed.sphere.region_deg)), transformed.sphere.one_polarization, state,
        transformed.sphere.frequency_hz.size > 1, loss_db,
        device.hand, not chamber.reference.absolute, device.polarization != "linear",
        once or reflection is not None,
    )  # fmt: skip
    sweep_stages = transformed.sweep_stages
    return Processed(
        _pattern_of(transformed, own, grid_step_deg, figures), transformed.expansion, transformed.sphere,
        transformed.step, sweep_stages.drift, sweep_stages.transfer,
        _budget_inputs(transformed, own, figures), transformed.sphere.frequency_hz, transformed.alignment,
        chosen_recipe, sweep_stages.cable,
        boresight_agreement(sweep_stages.calibrated, chamber), completeness_of(record, transformed.sphere,
        chamber.positioner.geometry), device,
        chamber, promised_noise_db(record, chamber), *peaks_db(sweep_stages),
        relative_noise(record.attrs, transformed.sphere.frequency_hz), Bounce.of(record), transformed.heard,
    )  # fmt: skip


def as_measured(record: xr.Dataset, device: Device) -> Device:
    """Return the device with the slant that co- and cross-polar refer to: the first offset of the passes, where offsets were set."""
    offsets = offsets_of(record)
    return device if offsets is None else device.model_copy(update={"slant_deg": float(offsets[0])})


@dataclass(frozen=True)
@holds_arrays
class Surroundings:
    """What a record was measured in, and what is known of it: the same for every step."""

    record: xr.Dataset
    chamber: Chamber
    device: Device
    recipe: Recipe
    probe: Expansion | None
    reference: ReferenceData | None
    reflection: DeviceReflection | None = None


def _pattern_of(transformed: Transformed, own: Surroundings, grid_step_deg: float, figures: FigureSet) -> xr.Dataset:
    """Return the pattern on a regular grid, with everything that was done to it in its history."""
    calibrated, sphere = transformed.sweep_stages.calibrated, transformed.sphere
    quantity = quantity_of(transformed, absolute=own.chamber.reference.absolute)
    pattern = _pattern(transformed.expansion, sphere, grid_step_deg, calibrated, quantity)
    if transformed.heard is not None:
        heard = transformed.heard
        pattern = with_step(pattern, "room", removed=bool(heard.holds), explained=round(heard.explained, 4),
                            echo_db=round(heard.echo_db, 2),
                            left_db=round(heard.left_db, 2))  # fmt: skip
    pattern = _history(pattern, calibrated, sphere, transformed.alignment, own.recipe)
    probe = "none: no probe correction was made, an ideal dipole was assumed" if own.probe is None else "pattern"
    pattern = _with_far_field_step(pattern, transformed.step, sphere, own.chamber, probe)
    if figures.settings.principal_planes != "measured":
        return pattern
    slant_deg = round(float(np.rad2deg(figures.slant)), 4)
    return with_step(pattern, "principal planes from the measured ellipse", slant_deg=slant_deg)


def _chamber_then(transformed: Transformed, own: Surroundings) -> Chamber:
    """Return the chamber with what the corrections leave open instead of what was declared."""
    chamber = _with_cable(
        _with_purity(_with_table(own.chamber, own.reference), own.recipe), transformed.sweep_stages.cable
    )
    chamber = _without_room(_with_bounce(chamber, Bounce.of(own.record)), transformed.heard)
    if transformed.alignment is None:
        return chamber
    return chamber.model_copy(update={"alignment": left_over(chamber.alignment, transformed.alignment)})


def _with_bounce(chamber: Chamber, bounce: Bounce | None) -> Chamber:
    """Return the chamber with what distance steps leave of the standing wave."""
    if bounce is None:
        return chamber
    left_db = float(amplitude_db(bounce.residual(chamber.standing_wave_db), least=1e-6))
    return chamber.model_copy(update={"standing_wave_db": left_db})


def _without_room(chamber: Chamber, heard: RoomHeard | None) -> Chamber:
    """Return the chamber with the level of echoes that a learned room leaves, or shows where it was not removed."""
    if heard is None:
        return chamber
    return chamber.model_copy(update={"echo_level_db": heard.level_db(chamber.echo_level_db)})


def _horn_louder(chamber: Chamber, heard: RoomHeard | None) -> float:
    """Return how much louder the reference's echoes stay than those of the device, as an amplitude ratio."""
    declared = chamber.echo_level_db
    return 1.0 if heard is None else float(amplitude_from_db(heard.strongest_db(declared) - heard.level_db(declared)))


def _budget_inputs(transformed: Transformed, own: Surroundings, figures: FigureSet) -> Inputs:
    """Return what the uncertainty budget needs of a processed record."""
    record, chamber, recipe, reference = own.record, own.chamber, own.recipe, own.reference
    sweep_stages, sphere, noise, aligned, drift = (
        transformed.sweep_stages,
        transformed.sphere,
        transformed.noise,
        transformed.alignment,
        transformed.sweep_stages.drift,
    )
    if sphere.slices_used:
        # Columns between the slices are no new measurements: their noise is the slices'.
        noise = noise * np.sqrt(sphere.phi.size / (2.0 * sphere.slices_used))
    scan = sweep_stages.steady["role"].values == ROLES.index(Role.SCAN)
    horn = chamber.reference.has_horn
    inputs = Inputs(
        sphere=sphere,
        step=transformed.step,
        chamber=_chamber_then(transformed, own),
        figures=figures,
        noise_sigma=noise,
        drift_residual=drift.between
        if recipe.runs("drift")
        else float(np.sqrt(np.mean(np.abs(drift.ratio - 1.0) ** 2))),
        probe=own.probe,
        sweeps=SweepsAgain(record, chamber, own.device, recipe, reference, sweep_stages.gate),
        seed=seed_of(record),
        aligned=aligned is not None,
        answer=None if aligned is None else aligned.answer,
        once=noise_once(sweep_stages),
        peak_reading=float(np.abs(sweep_stages.steady["trace"].values[scan]).max()),
        declared_offset_mm=chamber.alignment.axes_offset_mm,
        mismatch_db=mismatch_db(chamber, own.device, reference, own.reflection),
        reflection=own.reflection,
        drift_parts=_parts(record, drift),
        drift_errors=slice_errors(record, chamber, sphere, drift.modes)
        if recipe.runs("drift") and drift.level
        else None,
        leak_noise=leak_noise(sweep_stages) if recipe.runs("purity") else None,
        noise_dof=max(1.0, sweep_stages.transfer.freedom),
        place_db=place_uncertainty_db(chamber, sphere.frequency_hz, None if reference is None else reference.probe)
        if horn
        else 0.0,
        unheard_db=rim_unheard_db(chamber, sphere.frequency_hz, own.probe) if horn else 0.0,
        bounce=Bounce.of(record),
        horn_louder=_horn_louder(chamber, transformed.heard),
        age_days=None if reference is None or reference.stored is None else age_days(record, reference),
    )
    return _with_gate(inputs, transformed, own) if recipe.runs("gate") else inputs


def _with_gate(inputs: Inputs, transformed: Transformed, own: Surroundings) -> Inputs:
    """Add what another time gate makes of the sphere, and how the one that was used answers."""
    used, frequency = transformed.sweep_stages.gate, transformed.sphere.frequency_hz
    assert used is not None  # the recipe runs one
    closer = used.other(float(np.ptp(frequency)))
    other = stages(own.record, own.chamber, own.device, own.recipe, own.reference, gate=closer).sphere.field
    return replace(
        inputs,
        other_gate=transformed.sphere.field + GATE_ERROR * (other - transformed.sweep_stages.sphere.field),
        gate=GateResponse.of(frequency, used, spread_m=own.device.reach_m),
    )


def _co_polar_slant(expansion: Expansion, sphere: MeasuredSphere, device: Device, wanted: Evaluation) -> float:
    """Return the reference of the co-polar vector, radians: declared, or the measured ellipse's major axis."""
    declared = float(np.deg2rad(device.slant_deg))
    if wanted.principal_planes != "measured":
        return declared
    if sphere.one_polarization:
        raise ValueError(
            "principal_planes = 'measured': needs both polarizations, the record holds one (polarizations)"
        )
    coefficients = expansion.coefficients[expansion.k.size // 2]
    tilt = ellipse_tilt(coefficients, slant=declared, region=float(np.deg2rad(sphere.region_deg)))
    if tilt is None:
        raise ValueError(
            "principal_planes = 'measured': the wave at the peak is circularly polarized, its ellipse has no major axis; "
            "'auto' or 'declared' (evaluation.toml)"
        )
    return declared + tilt


def noise_once(sweep_stages: Stages) -> FloatArray:
    """Return the relative error (frequency,), per quadrature, that the whole scan has against the reference.

    The noise of the reference's mean, and what the ties leave open of the drift since then.
    """
    ties = of_role(sweep_stages.steady, Role.TIE, Role.RESUME)["trace"].values
    strong = int(np.argmax(np.abs(ties).mean(axis=(0, 1))))
    sweeps = sweep_stages.transfer.expanded[:, strong] / 2.0
    return np.asarray(
        np.hypot(
            sweep_stages.drift.left.common,
            np.where(np.isfinite(sweeps), sweeps, sweep_stages.drift.noise / np.sqrt(2.0)),
        )
    )


def leak_noise(sweep_stages: Stages) -> FloatArray | None:
    """Return the noise (frequency,), per quadrature, of the probe's impurity: that of the mean of as many sweeps of the horn.

    None where the horn was not read across its polarization.
    """
    transfer = sweep_stages.transfer
    across = transfer.leak.any() or np.any(transfer.response != np.eye(transfer.response.shape[1]))
    if not across:
        return None
    sweeps = of_role(sweep_stages.steady, Role.REFERENCE).sizes["point"] // 2
    # Field per wave ratio, over the field that the horn lays on its axis.
    own = (
        transfer.noise.max(axis=1) * np.abs(transfer.factor).max(axis=1) / 10.0 ** (transfer.reference_gain_dbi / 20.0)
    )
    return np.asarray(own / np.sqrt(2.0 * sweeps))


def _parts(record: xr.Dataset, drift: DriftTrack) -> int:
    """Return how many intervals between ties one pass of a scan holds, on average."""
    scan = record["role"].values == ROLES.index(Role.SCAN)
    passes = len(np.unique(record["pass_index"].values[scan]))
    return max(1, round((drift.time_s.size - 1) / max(1, passes)))


def mismatch_db(
    chamber: Chamber, device: Device, reference: ReferenceData | None, reflection: DeviceReflection | None = None
) -> float:
    """Return the expanded uncertainty (k = 2) of gain by declared reflections of unknown phase; 0 where files state them.

    A measured `reflection` of the device counts at its upper end instead of a declared one.

    20 log(1 + |G1 G2|) is the half width of a U-shaped distribution, its standard uncertainty is that over
    sqrt 2 (section 7 of the standards sheet); horn and device each meet the source once.
    """
    source = chamber.analyzer.source_match_db
    if source is None or not chamber.reference.absolute or (reference is not None and reference.path is not None):
        return 0.0
    of_device = device.match_db if reflection is None else float(amplitude_db(max(reflection.high.max(), 1e-9)))
    widths = [
        amplitude_db(1.0 + 10.0 ** ((source + match) / 20.0))
        for match in (chamber.reference.match_db, of_device)
        if match is not None
    ]
    return float(2.0 / np.sqrt(2.0) * np.linalg.norm(widths)) if widths else 0.0


def peaks_db(sweep_stages: Stages) -> tuple[float, float]:
    """Return the strongest sweep of the scan as a wave ratio in dB, and how much weaker the ties are."""
    ties, scan = (
        of_role(sweep_stages.steady, *roles)["trace"].values for roles in ((Role.TIE, Role.RESUME), (Role.SCAN,))
    )
    strongest = np.sqrt(np.mean(np.abs(scan) ** 2, axis=1)).max()
    tie = np.sqrt(np.mean(np.abs(ties) ** 2, axis=(0, 1))).max()
    return float(amplitude_db(strongest)), float(amplitude_db(strongest / max(float(tie), 1e-15)))


def promised_noise_db(record: xr.Dataset, chamber: Chamber) -> float | None:
    """Return the noise of one sweep as a wave ratio in dB, as noise figure, bandwidth and power promise it; None if unknown."""
    attrs = record.attrs
    if "if_bandwidth_hz" not in attrs or "power_dbm" not in attrs:
        return None
    frequency, width, power = record["frequency"].values, float(attrs["if_bandwidth_hz"]), float(attrs["power_dbm"])
    widths = of_segments(attrs, frequency, "if_bandwidth_hz", width) / float(attrs.get("averages", 1))
    powers = of_segments(attrs, frequency, "power_dbm", power)
    # Over bands with bandwidth and power of their own: the mean of all frequencies.
    mean = power_db(np.mean(widths * 10.0 ** (-powers / 10.0)))
    return float(THERMAL_DBM_HZ + chamber.analyzer.noise_figure_db + mean)


def _with_cable(chamber: Chamber, flex: CableFlex | None) -> Chamber:
    """Return the chamber with what the cable's correction leaves open instead of what was declared."""
    if flex is None:
        return chamber
    left = min(chamber.cable_flex_deg, float(np.rad2deg(flex.expanded)))
    return chamber.model_copy(update={"cable_flex_deg": left})


def _with_table(chamber: Chamber, reference: ReferenceData | None) -> Chamber:
    """Return the chamber with the uncertainty that the reference's own table states."""
    if reference is None or reference.uncertainty_db is None:
        return chamber
    table = chamber.reference.model_copy(update={"gain_uncertainty_db": reference.uncertainty_db})
    return chamber.model_copy(update={"reference": table})


def _with_purity(chamber: Chamber, recipe: Recipe) -> Chamber:
    """Return the chamber as it counts in the budget: after the correction the probe is as pure as the horn is known to be."""
    if not recipe.runs("purity") or not chamber.reference.shows_purity:
        return chamber
    level = chamber.reference.cross_polar_db
    return chamber.model_copy(update={
        "probe": chamber.probe.model_copy(update={"cross_polar_db": level}),
        # The horn's polarization is the reference now: the probe's roll is as well known as that, and no better.
        "alignment": chamber.alignment.model_copy(update={"probe_roll_zero_deg": 0.0}),
    })  # fmt: skip


def _history(
    pattern: xr.Dataset, calibrated: xr.Dataset, sphere: MeasuredSphere, aligned: Estimate | None, recipe: Recipe
) -> xr.Dataset:
    """Add what was assembled, aligned and left out to the pattern's history."""
    pattern = with_step(
        pattern,
        "assemble",
        scheme=calibrated.attrs["scheme"],
        grid=[sphere.theta.size, sphere.phi.size],
        slices=[sphere.slices_used, sphere.slices_planned],
        flagged_points=int(np.count_nonzero(calibrated["flags"].values)),
        region_deg=sphere.region_deg,
    )
    if aligned is not None:
        parameters = {
            p.name: [round(p.per_si * aligned.values[p.name], 5), p.unit] for p in PARAMETERS if aligned.seen[p.name]
        }
        pattern = with_step(
            pattern, "alignment", found=parameters, residual=aligned.residual, before=aligned.residual_before
        )
    off = [one.step for one in recipe.steps if not one.on]
    return with_step(pattern, "left out", steps=off) if off else pattern


def _pattern(
    expansion: Expansion, sphere: MeasuredSphere, step_deg: float, calibrated: xr.Dataset, quantity: Quantity
) -> xr.Dataset:
    """Return the pattern on a regular grid, with the history of the data behind it."""
    theta, phi, field = pattern_grid(expansion, step_deg)
    pattern = build_pattern(field, frequency_hz=sphere.frequency_hz, theta=theta, phi=phi, quantity=quantity)
    return _marked(pattern.assign_attrs(history_json=calibrated.attrs["history_json"]), sphere.region_deg)


def _with_far_field_step(
    pattern: xr.Dataset, step: FarFieldStep, sphere: MeasuredSphere, chamber: Chamber, probe: str
) -> xr.Dataset:
    if sphere.one_polarization:
        return with_step(pattern, "one polarization, no transform", order=step.order, distance_m=chamber.range_length_m)
    if step.direct:
        return with_step(pattern, "no transform", order=step.keep_order, distance_m=chamber.range_length_m)
    pattern = with_step(
        pattern,
        "near-field to far-field",
        order=step.keep_order,
        distance_m=chamber.range_length_m,
        probe=probe,
        first_order_share=float(step.response.first_order_share.min()),
    )
    if step.own_waves is None:
        return pattern
    own = step.own_waves
    return with_step(
        pattern, "mode filter", centre_mm=[round(1e3 * float(x), 3) for x in own.centre_m], radius_mm=1e3 * own.radius_m
    )


def _marked(pattern: xr.Dataset, region_deg: float) -> xr.Dataset:
    """Mark directions outside the region (`support` 0) and blank them: nothing was asked or measured there."""
    if region_deg >= 180.0:
        return pattern
    inside = pattern["theta"] <= region_deg + 1e-9
    support = inside.astype(float).broadcast_like(pattern["e_theta"].isel(frequency=0)).transpose("theta", "phi")
    kept = pattern.assign({name: pattern[name].where(inside) for name in ("e_theta", "e_phi")})
    return kept.assign(support=support.assign_attrs(units="1", long_name="1 inside the region that was scanned"))
