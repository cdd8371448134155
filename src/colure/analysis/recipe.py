"""The recipe: recorded, ordered steps from a record to a pattern and its figures."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from colure.analysis.assembly import MeasuredSphere, assemble
from colure.analysis.calibration import GainTransfer, apply_gain, gain_transfer
from colure.analysis.drift import DriftTrack, correct, track
from colure.analysis.nearfield import FarFieldStep, far_field_step, pattern_grid
from colure.analysis.regrid import to_planned_places
from colure.analysis.uncertainty import Inputs
from colure.geometry.conventions import FloatArray
from colure.model.chamber import Chamber
from colure.model.device import Device
from colure.model.files import with_step
from colure.model.pattern import build_pattern
from colure.waves.expansion import Expansion

if TYPE_CHECKING:
    import xarray as xr

PATTERN_STEP_DEG = 1.0


@dataclass(frozen=True)
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


def require_phase(record: xr.Dataset) -> None:
    """Raise `ValueError` for the record of a power-only receiver, which no near-field step can use."""
    if record.attrs.get("receiver", "vector") != "vector":
        raise ValueError("record: receiver is power-only: without phase there is no near field to far field (receiver)")


def process(
    record: xr.Dataset,
    chamber: Chamber,
    device: Device,
    *,
    probe: Expansion | None = None,
    order: int | None = None,
    grid_step_deg: float = PATTERN_STEP_DEG,
) -> Processed:
    """Run the default recipe: drift, gain, polarization assembly, near field to far field.

    Parameters
    ----------
    probe
        Probe far field at the record's frequencies; an ideal dipole if None.
    order
        Order of the device's waves; the plan's by default.

    Raises
    ------
    ValueError
        If the record lacks tie points, reference sweeps or scan points, or phase; counts are named.
    """
    require_phase(record)
    drift = track(record)
    steady = to_planned_places(correct(record, drift))
    transfer = gain_transfer(steady, chamber)
    calibrated = apply_gain(steady, transfer)
    sphere = assemble(calibrated, chamber)
    keep = int(record.attrs["order"]) if order is None else order
    noise = transfer.noise.max(axis=1) * np.abs(transfer.factor).max(axis=1)
    stray = 10.0 ** (chamber.echo_level_db / 20.0)
    step = far_field_step(
        sphere, distance_m=chamber.range_length_m, keep_order=keep, probe=probe, noise=noise, stray=stray
    )
    expansion = step.expansion(sphere.field)
    pattern = _pattern(expansion, sphere, grid_step_deg, calibrated)
    pattern = with_step(
        pattern,
        "assemble",
        scheme=record.attrs["scheme"],
        grid=[sphere.theta.size, sphere.phi.size],
        slices=[sphere.slices_used, sphere.slices_planned],
        flagged_points=int(np.count_nonzero(record["flags"].values)),
        region_deg=sphere.region_deg,
    )
    pattern = _with_far_field_step(pattern, step, sphere, chamber, "ideal dipole" if probe is None else "pattern")
    slant = float(np.deg2rad(device.slant_deg))
    if sphere.slices_used:
        # Columns between the slices are no new measurements: their noise is the slices'.
        noise = noise * np.sqrt(sphere.phi.size / (2.0 * sphere.slices_used))
    budget = Inputs(sphere, step, chamber, slant, noise, drift.residual, probe)
    return Processed(pattern, expansion, sphere, step, drift, transfer, budget, sphere.frequency_hz)


def _pattern(expansion: Expansion, sphere: MeasuredSphere, step_deg: float, calibrated: xr.Dataset) -> xr.Dataset:
    """Return the pattern on a regular grid, with the history of the data behind it."""
    theta, phi, field = pattern_grid(expansion, step_deg)
    pattern = build_pattern(field, frequency_hz=sphere.frequency_hz, theta=theta, phi=phi, quantity="realized_gain")
    return _marked(pattern.assign_attrs(history_json=calibrated.attrs["history_json"]), sphere.region_deg)


def _with_far_field_step(
    pattern: xr.Dataset, step: FarFieldStep, sphere: MeasuredSphere, chamber: Chamber, probe: str
) -> xr.Dataset:
    if sphere.one_polarization:
        return with_step(pattern, "one polarization, no transform", order=step.order, distance_m=chamber.range_length_m)
    return with_step(
        pattern,
        "near-field to far-field",
        order=step.keep_order,
        distance_m=chamber.range_length_m,
        probe=probe,
        first_order_share=float(step.response.first_order_share.min()),
    )


def _marked(pattern: xr.Dataset, region_deg: float) -> xr.Dataset:
    """Mark directions outside the region (`support` 0) and blank them: nothing was asked or measured there."""
    if region_deg >= 180.0:
        return pattern
    inside = pattern["theta"] <= region_deg + 1e-9
    support = inside.astype(float).broadcast_like(pattern["e_theta"].isel(frequency=0)).transpose("theta", "phi")
    kept = pattern.assign({name: pattern[name].where(inside) for name in ("e_theta", "e_phi")})
    return kept.assign(support=support.assign_attrs(units="1", long_name="1 inside the region that was scanned"))
