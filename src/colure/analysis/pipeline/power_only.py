"""Power without phase: total power over directions, and the figures that need no more.

A scalar receiver says nothing that a transform could use. The sum of both polarizations' powers is still
the total power in every direction at the range length, and power figures follow from it.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import numpy as np

from colure.analysis.figures.beams import OMNIDIRECTIONAL_REASON
from colure.analysis.figures.cuts import OMNIDIRECTIONAL
from colure.analysis.figures.sphere import UP, belt_weights, coverage
from colure.analysis.pipeline.power_between import Continuous, sampled_peak
from colure.analysis.pipeline.power_budget import DB, LevelBudget
from colure.analysis.pipeline.power_levels import PowerSphere
from colure.analysis.pipeline.power_place import place_factor, seen_from_the_centre
from colure.analysis.steps.drift import DB as NEPER_DB
from colure.analysis.steps.drift import correct, declared_drift, track
from colure.analysis.steps.gain import ReferenceData, gain_transfer
from colure.analysis.steps.repetition import students_factor
from colure.analysis.uncertainty.budget import build_figure
from colure.geometry.conventions import FloatArray
from colure.geometry.directions import (
    azimuth_over_elevation,
    from_azimuth_over_elevation,
    theta_phi,
    unit_vector,
)
from colure.geometry.kinematics import Geometry
from colure.geometry.sphere import clenshaw_curtis_weights
from colure.model.chamber import Chamber
from colure.model.definitions import Definition, definitions_for
from colure.model.device import Device
from colure.model.evaluation import Evaluation
from colure.model.figure import Figure
from colure.model.plan import Role
from colure.model.record import of_role

if TYPE_CHECKING:
    import xarray as xr

    from colure.waves.expansion import Expansion

#: Rings over which partial powers are integrated and levels counted, at least.
FINE_RINGS = 181
UNTOLD = "below what these samples tell; measure with a smaller step"


def power_sphere(
    record: xr.Dataset,
    chamber: Chamber,
    reference: ReferenceData | None = None,
    *,
    offset_mm: tuple[float, float, float] = (0.0, 0.0, 0.0),
    probe: Expansion | None = None,
) -> PowerSphere:
    """Turn a power-only record into total gain over directions (substitution with the reference, drift taken out).

    With reference.method = 'none' its scale is any: directivity and other figures without a gain are right.

    Parameters
    ----------
    offset_mm
        The device's centre from the axes' intersection, device frame: levels and directions are those from there.
    probe
        The probe's pattern, which counts for a device beside its axis; a Gaussian beam of its declared gain if None.

    Raises
    ------
    ValueError
        If the geometry is not roll over azimuth, there are not two polarizations 90 deg apart, or directions are missing.
    """
    if chamber.positioner.geometry is not Geometry.ROLL_OVER_AZIMUTH:
        raise ValueError("record: power-only evaluation needs a roll-over-azimuth positioner (geometry)")
    drift = track(record, declared=declared_drift(chamber))
    steady = correct(record, drift)
    transfer = gain_transfer(steady, chamber, reference)
    scan = of_role(steady, Role.SCAN)
    reading = np.abs(scan["trace"].values * transfer.factor[None]) ** 2
    names = [str(name) for name in record["axis"].values]
    shown = scan["commanded_deg"].values
    angle = {name: chamber.axis_table[name].map.angle_deg(shown[:, i]) for i, name in enumerate(names)}
    each = transfer.noise * np.abs(transfer.factor)
    # Few sweeps are repeated: Student's factor counts how few (JCGM 100:2008, G.3), over all frequencies and ports together.
    k = students_factor(max(1.0, transfer.freedom * each.size))
    noise = k * float(np.sqrt(np.mean(each**2) / reading.max()))
    offset_m = 1e-3 * np.asarray(offset_mm, float)
    if offset_m.any():
        reading *= place_factor(chamber, angle, ports=record.sizes["port"], offset_m=offset_m, probe=probe)
    key = np.round(np.stack([angle["azimuth"], angle["roll"]], axis=-1), 4)
    unique, which = np.unique(key, axis=0, return_inverse=True)
    places = np.asarray(unique, np.float64)
    total = np.zeros((len(places), reading.shape[1]))
    np.add.at(total, which.ravel(), reading.sum(axis=2))
    readings = np.bincount(which.ravel(), minlength=len(places)) * record.sizes["port"]
    if np.any(readings != 2):
        raise ValueError(
            f"record: {int(readings.min())} to {int(readings.max())} polarizations a direction, must be 2 (passes or ports)"
        )
    theta, phi, gain = _folded(places, total)
    if offset_m.any():
        theta, gain = seen_from_the_centre(theta, phi, gain, offset_m=offset_m, distance_m=chamber.range_length_m)
    return PowerSphere(
        frequency_hz=record["frequency"].values,
        theta=theta,
        phi=phi,
        gain=gain,
        noise_db=NEPER_DB * noise / np.sqrt(2.0),
        drift_db=2.0 * NEPER_DB * drift.left.level,
        tied_db=2.0 * NEPER_DB * drift.left.common,
    )


def _folded(places_deg: FloatArray, total: FloatArray) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Return (theta, phi, (frequency, theta, phi)) of a double-sided scan: negative theta lies at phi + 180 deg."""
    azimuth, roll = np.unique(places_deg[:, 0]), np.unique(places_deg[:, 1])
    if azimuth.size * roll.size != len(places_deg):
        raise ValueError(
            f"record: {len(places_deg)} directions, needs {azimuth.size * roll.size} for the whole grid (directions)"
        )
    grid = np.empty((azimuth.size, roll.size, total.shape[1]))
    grid[np.searchsorted(azimuth, places_deg[:, 0]), np.searchsorted(roll, places_deg[:, 1])] = total
    front = azimuth >= -1e-6
    theta = np.deg2rad(azimuth[front])
    positive = grid[front]
    at_minus = np.array([int(np.argmin(np.abs(azimuth + t))) for t in azimuth[front]])
    has_opposite = np.abs(azimuth[at_minus] + azimuth[front]) < 1e-3
    # The scan of a whole turn reads the back pole once.
    negative = np.where(has_opposite[:, None, None], grid[at_minus], positive)
    both = np.concatenate([positive, negative], axis=1)
    if np.isclose(theta[0], 0.0):
        both[0] = both[0].mean(axis=0)
    if np.isclose(theta[-1], np.pi):
        both[-1] = both[-1].mean(axis=0)
    phi = np.concatenate([np.deg2rad(roll), np.deg2rad(roll) + np.pi])
    return theta, phi, np.moveaxis(both, -1, 0)


#: What no interval of a power-only run holds, whatever chamber.toml declares.
LEFT_OUT = ("alignment", "probe polarization", "mismatch", "leakage", "linearity", "standing wave", "reconnection",
            "position error",
            "temperature", "jumps")  # fmt: skip
#: Levels are those from the device's declared place, where it is not at the axes' intersection: nothing in them tells whether it stands there.
PLACE = "device place"


def power_figures(sphere: PowerSphere, chamber: Chamber, device: Device, settings: Evaluation) -> list[Figure]:
    """Return every figure that power alone gives, with its interval and budget; without a reference those that need no gain.

    Raises
    ------
    ValueError
        If the rings are too few to tell how good they are.
    """
    chosen = [d for d in definitions_for(settings) if d.power and (sphere.whole or not d.sphere)]
    if not chamber.reference.absolute:
        chosen = [d for d in chosen if not d.gain and not d.absolute]
    fewer = thinned(sphere)
    left_out = (*LEFT_OUT, PLACE) if any(device.offset_mm) else LEFT_OUT
    out = []
    for f, frequency in enumerate(sphere.frequency_hz):
        values, coarser = native_values(sphere, f, settings), [native_values(one, f, settings) for one in fewer]
        azimuth, elevation = (np.deg2rad(values[f"beam_{name}_deg"]) for name in ("azimuth", "elevation"))
        peak = from_azimuth_over_elevation(azimuth=azimuth, elevation=elevation)
        budget = LevelBudget(sphere, chamber, device, index=f, peak=peak)
        several = no_single_beam(sphere, f)
        for what in chosen:
            value = values[what.name]
            change = changed(what, value, coarser)
            rows = budget.rows(what, value, change)
            reason = several if what.single_beam else untold(change)
            out.append(build_figure(what, value, rows, float(frequency), left_out=left_out, reason=reason))
    return out


def no_single_beam(sphere: PowerSphere, f: int) -> str:
    """Return why a pattern has no single beam, as `single_beam_reason` decides it, from the samples; empty if it has one."""
    gain = sphere.gain[f]
    directions = unit_vector(theta=sphere.theta[:, None], phi=sphere.phi[None, :])
    peak = directions[np.unravel_index(int(np.argmax(gain)), gain.shape)]
    behind = np.where(directions @ peak < 0.0, gain, 0.0).max()
    return OMNIDIRECTIONAL_REASON if behind >= OMNIDIRECTIONAL * gain.max() else ""


def turned(what: Definition, change: float) -> float:
    """Return a change of a figure, of an angle within half a turn."""
    return (change + 180.0) % 360.0 - 180.0 if what.unit == "deg" else change


def changed(what: Definition, value: float, coarser: list[dict[str, float]]) -> float:
    """Return the largest change of a figure by fewer samples; nan where all or fewer samples do not tell it."""
    moved = [abs(turned(what, value - one[what.name])) for one in coarser]
    known = [one for one in moved if np.isfinite(one)]
    return max(known, default=float("nan"))


def untold(change: float) -> str:
    """Return why samples do not tell a figure; empty if they do."""
    return UNTOLD if np.isnan(change) else ""


def thinned(sphere: PowerSphere) -> list[PowerSphere]:
    """Return the sphere seen by fewer samples: what they change bounds what the sampling leaves open.

    Every second ring and column; of a whole sphere also the continuous pattern at two thirds of the rings.

    Raises
    ------
    ValueError
        If fewer than three rings would be left.
    """
    steps, columns = sphere.theta.size - 1, sphere.phi.size
    if steps < 4:
        raise ValueError(
            f"record: {steps + 1} rings, needs at least 5 (step {np.rad2deg(sphere.theta[1]):.3g} deg, at most 45 deg on a whole sphere)"
        )
    out = []
    if steps % 2 == 0 or not sphere.whole:
        turn = 2 if columns % 4 == 0 else 1
        out.append(replace(sphere, theta=sphere.theta[::2], phi=sphere.phi[::turn], gain=sphere.gain[:, ::2, ::turn]))
    if sphere.whole:
        theta = np.linspace(0.0, np.pi, 2 * steps // 3 + 1)
        t, p = np.meshgrid(theta, sphere.phi, indexing="ij")
        gain = np.stack([Continuous(one).at(t.ravel(), p.ravel()).reshape(t.shape) for one in sphere.gain])
        out.append(replace(sphere, theta=theta, gain=gain))
    return out


def native_values(sphere: PowerSphere, f: int, settings: Evaluation) -> dict[str, float]:
    """Return the native figures of one frequency by name."""
    gain = sphere.gain[f]
    between = Continuous(gain) if sphere.whole else None
    direction, peak = sampled_peak(sphere, gain) if between is None else between.peak(gain)
    azimuth, elevation = (float(np.rad2deg(x)) for x in azimuth_over_elevation(direction))
    peak_db = DB * float(np.log(peak))
    values = {"gain_dbi": peak_db, "beam_azimuth_deg": azimuth, "beam_elevation_deg": elevation}
    if settings.transmit_power_dbm is not None:
        values["eirp_dbm"] = settings.transmit_power_dbm + peak_db
    if settings.sensitivity_dbm is not None:
        values["eis_dbm"] = settings.sensitivity_dbm - peak_db
    return values if between is None else values | _sphere_values(sphere, gain, between, direction, peak, settings)


def _sphere_values(
    sphere: PowerSphere,
    gain: FloatArray,
    between: Continuous,
    direction: FloatArray,
    peak: float,
    settings: Evaluation,
) -> dict[str, float]:
    """Return the figures that need the whole sphere, integrated over the continuous pattern."""
    weights = clenshaw_curtis_weights(sphere.theta.size - 1)
    mean = float(weights @ gain.mean(axis=1)) / 2.0
    efficiency, peak_db = DB * float(np.log(mean)), DB * float(np.log(peak))
    t, p = theta_phi(-direction[None])
    rings = max(FINE_RINGS, 2 * sphere.theta.size - 1)
    theta, about = between.sky(UP[settings.up], least_rings=rings)
    whole = _between(about, 0.0, np.pi)
    values = {
        "efficiency_db": efficiency,
        "directivity_dbi": peak_db - efficiency,
        # Between samples near a null the continuous power may pass 0: the back lobe is no less than the lowest sample.
        "front_to_back_db": float(np.sqrt(max(between.sampled_at(t, p)[0], gain.min()) / peak)),
        "upper_share_db": _between(about, 0.0, 0.5 * np.pi) / whole,
    }
    for band in settings.horizon_bands_deg:
        half = float(np.deg2rad(band))
        values[f"horizon_{band:g}_db"] = _between(about, 0.5 * np.pi - half, 0.5 * np.pi + half) / whole
    for percent, level in zip(
        settings.coverage_percent, coverage(about, theta, settings.coverage_percent), strict=True
    ):
        told = level > between.least_told
        values[f"coverage_{percent:g}_dbi"] = DB * float(np.log(level)) if told else float("nan")
    if settings.transmit_power_dbm is not None:
        values["trp_dbm"] = settings.transmit_power_dbm + efficiency
    if settings.sensitivity_dbm is not None:
        values["tis_dbm"] = settings.sensitivity_dbm - efficiency
    return values


def _between(power: FloatArray, low: float, high: float) -> float:
    """Return the power between two polar angles in radians, of a grid (theta, phi) with poles."""
    return float(belt_weights(power.shape[0], round(low, 9), round(high, 9)) @ power.mean(axis=1)) * 2.0 * np.pi
