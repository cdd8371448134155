"""Power without phase: total power over directions, and the figures that need no more.

A scalar receiver says nothing that a transform could use. The sum of both polarizations' powers is still
the total power in every direction at the range length, and power figures follow from it.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from colure.analysis.calibration import ReferenceData, gain_transfer
from colure.analysis.drift import DB as NEPER_DB
from colure.analysis.drift import correct, track
from colure.analysis.figures.definitions import Definition, definitions_for
from colure.analysis.figures.sphere import UP, coverage
from colure.analysis.uncertainty import build_figure
from colure.geometry.conventions import SPEED_OF_LIGHT, FloatArray
from colure.geometry.directions import azimuth_over_elevation, tangents, unit_vector
from colure.geometry.kinematics import Geometry
from colure.geometry.sphere import clenshaw_curtis_weights, sector_weights
from colure.model.chamber import Chamber
from colure.model.device import Device
from colure.model.evaluation import Evaluation
from colure.model.figure import BudgetRow, Figure
from colure.model.plan import Role
from colure.model.record import of_role

if TYPE_CHECKING:
    import xarray as xr

#: Figures that power alone gives.
NAMES = ("gain_dbi", "directivity_dbi", "efficiency_db", "beam_azimuth_deg", "beam_elevation_deg", "front_to_back_db",
         "upper_share_db", "eirp_dbm", "trp_dbm", "eis_dbm", "tis_dbm")  # fmt: skip
STARTS = ("horizon_", "coverage_")
#: Samples about the highest one that a paraboloid is laid through.
NEIGHBOURS = 9
DB = 10.0 / np.log(10.0)


@dataclass(frozen=True)
class PowerSphere:
    """Total gain, linear (frequency, theta, phi), rings and columns over a full turn; whole or part of the sphere."""

    frequency_hz: FloatArray
    theta: FloatArray
    phi: FloatArray
    gain: FloatArray
    noise_db: float
    drift_db: float

    @property
    def whole(self) -> bool:
        """Tell whether the rings run from pole to pole."""
        return bool(np.isclose(self.theta[0], 0.0) and np.isclose(self.theta[-1], np.pi))


def power_sphere(record: xr.Dataset, chamber: Chamber, reference: ReferenceData | None = None) -> PowerSphere:
    """Turn a power-only record into total gain over directions (substitution with the reference, drift taken out).

    Raises
    ------
    ValueError
        If the geometry is not roll over azimuth, there are not two polarizations 90 deg apart, or directions are missing.
    """
    if chamber.positioner.geometry is not Geometry.ROLL_OVER_AZIMUTH:
        raise ValueError("record: power-only evaluation needs a roll-over-azimuth positioner (geometry)")
    drift = track(record)
    steady = correct(record, drift)
    transfer = gain_transfer(steady, chamber, reference)
    scan = of_role(steady, Role.SCAN)
    reading = np.abs(scan["trace"].values * transfer.factor[None]) ** 2
    names = [str(name) for name in record["axis"].values]
    shown = scan["commanded_deg"].values
    angle = {name: chamber.axis_table[name].map.angle_deg(shown[:, i]) for i, name in enumerate(names)}
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
    noise = float(np.max(transfer.noise * np.abs(transfer.factor)) / np.sqrt(reading.max()))
    theta, phi, gain = _folded(places, total)
    return PowerSphere(
        record["frequency"].values,
        theta,
        phi,
        gain,
        2.0 * NEPER_DB * noise / np.sqrt(2.0),
        2.0 * NEPER_DB * drift.between,
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
    found = np.abs(azimuth[at_minus] + azimuth[front]) < 1e-3
    # The scan of a whole turn reads the back pole once.
    negative = np.where(found[:, None, None], grid[at_minus], positive)
    both = np.concatenate([positive, negative], axis=1)
    if np.isclose(theta[0], 0.0):
        both[0] = both[0].mean(axis=0)
    if np.isclose(theta[-1], np.pi):
        both[-1] = both[-1].mean(axis=0)
    phi = np.concatenate([np.deg2rad(roll), np.deg2rad(roll) + np.pi])
    return theta, phi, np.moveaxis(both, -1, 0)


def power_figures(sphere: PowerSphere, chamber: Chamber, device: Device, settings: Evaluation) -> list[Figure]:
    """Return every figure that power alone gives, with its interval and budget."""
    chosen = [
        d
        for d in definitions_for(settings)
        if (d.name in NAMES or d.name.startswith(STARTS)) and (sphere.whole or not d.sphere)
    ]
    out = []
    for f, frequency in enumerate(sphere.frequency_hz):
        values = _values(sphere, f, settings)
        for what in chosen:
            rows = _budget(
                what, sphere, chamber, _curvature_db(device, chamber, float(frequency)), _sampling_db(sphere, f)
            )
            out.append(build_figure(what, values[what.name], rows, float(frequency)))
    return out


def _values(sphere: PowerSphere, f: int, settings: Evaluation) -> dict[str, float]:
    gain = sphere.gain[f]
    direction, peak = _peak(sphere, gain)
    azimuth, elevation = (float(np.rad2deg(x)) for x in azimuth_over_elevation(direction))
    peak_db = DB * float(np.log(peak))
    values = {"gain_dbi": peak_db, "beam_azimuth_deg": azimuth, "beam_elevation_deg": elevation}
    if settings.transmit_power_dbm is not None:
        values["eirp_dbm"] = settings.transmit_power_dbm + peak_db
    if settings.sensitivity_dbm is not None:
        values["eis_dbm"] = settings.sensitivity_dbm - peak_db
    if not sphere.whole:
        return values
    weights = clenshaw_curtis_weights(sphere.theta.size - 1)
    mean = float(weights @ gain.mean(axis=1)) / 2.0
    efficiency = DB * float(np.log(mean))
    directions = unit_vector(theta=sphere.theta[:, None], phi=sphere.phi[None, :])
    opposite = np.unravel_index(int(np.argmax(directions @ -direction)), gain.shape)
    values |= {
        "efficiency_db": efficiency,
        "directivity_dbi": peak_db - efficiency,
        "front_to_back_db": float(np.sqrt(gain[opposite] / peak)),
        "upper_share_db": _share(sphere, gain, UP[settings.up][2], 0.0, 90.0),
    }
    for band in settings.horizon_bands_deg:
        values[f"horizon_{band:g}_db"] = _share(sphere, gain, UP[settings.up][2], 90.0 - band, 90.0 + band)
    if settings.coverage_percent:
        for percent, level in zip(
            settings.coverage_percent, coverage(gain, sphere.theta, settings.coverage_percent), strict=True
        ):
            values[f"coverage_{percent:g}_dbi"] = DB * float(np.log(max(level, 1e-20)))
    if settings.transmit_power_dbm is not None:
        values["trp_dbm"] = settings.transmit_power_dbm + efficiency
    if settings.sensitivity_dbm is not None:
        values["tis_dbm"] = settings.sensitivity_dbm - efficiency
    return values


def _peak(sphere: PowerSphere, gain: FloatArray) -> tuple[FloatArray, float]:
    """Return (direction (3,), value) of the top of a paraboloid through the highest sample and its nearest ones, in dB."""
    directions = unit_vector(theta=sphere.theta[:, None], phi=sphere.phi[None, :]).reshape(-1, 3)
    flat = gain.ravel()
    top = directions[int(np.argmax(flat))]
    # A pole is sampled by every column: one of them is enough.
    _, once = np.unique(np.round(directions, 7), axis=0, return_index=True)
    near = once[np.argsort(-(directions[once] @ top))[: 2 * NEIGHBOURS]]
    first, second = tangents(top)
    a, b = directions[near] @ first, directions[near] @ second
    level = np.log(np.maximum(flat[near], 1e-300))
    c = np.linalg.lstsq(np.stack([np.ones_like(a), a, b, a * a, a * b, b * b], axis=-1), level, rcond=None)[0]
    hessian = np.array([[2.0 * c[3], c[4]], [c[4], 2.0 * c[5]]])
    if np.linalg.det(hessian) <= 0.0 or c[3] >= 0.0:
        return top, float(flat.max())
    at = -np.linalg.solve(hessian, c[1:3])
    if float(np.hypot(*at)) > float(np.hypot(a, b).max()):
        return top, float(flat.max())
    direction = top + at[0] * first + at[1] * second
    return direction / np.linalg.norm(direction), float(np.exp(c[0] + 0.5 * c[1:3] @ at))


def _share(sphere: PowerSphere, gain: FloatArray, axis: FloatArray, low_deg: float, high_deg: float) -> float:
    """Return the share of the power between two angles from an axis (3,): samples weighted with their solid angles."""
    if abs(axis[2]) > 0.5:
        inside = (sphere.theta >= np.deg2rad(low_deg) - 1e-9) & (sphere.theta <= np.deg2rad(high_deg) + 1e-9)
        by_ring = gain.mean(axis=1)
        part = float(sector_weights(sphere.theta[inside]) @ by_ring[inside])
        return part / float(clenshaw_curtis_weights(sphere.theta.size - 1) @ by_ring)
    directions = unit_vector(theta=sphere.theta[:, None], phi=sphere.phi[None, :])
    away = np.rad2deg(np.arccos(np.clip(directions @ axis, -1.0, 1.0)))
    # A sample on the border counts half.
    inside = (away > low_deg + 1e-6) & (away < high_deg - 1e-6)
    edge = (np.abs(away - low_deg) <= 1e-6) | (np.abs(away - high_deg) <= 1e-6)
    weight = clenshaw_curtis_weights(sphere.theta.size - 1)[:, None] * gain
    return float(np.sum(weight * (inside + 0.5 * edge)) / np.sum(weight))


def _budget(
    what: Definition, sphere: PowerSphere, chamber: Chamber, curvature_db: float, sampling_db: float
) -> tuple[BudgetRow, ...]:
    """Return the rows of one figure; native variables in dB, degrees, or as shares and ratios."""
    echo = 10.0 ** (chamber.echo_level_db / 20.0)
    step = float(np.rad2deg(sphere.theta[1] - sphere.theta[0]))
    if what.unit == "deg":
        pose = float(np.hypot(chamber.alignment.device_pose_deg, chamber.alignment.theta_zero_deg))
        return (
            BudgetRow("alignment", pose, "declared", "declared", "normal", pose, "deg"),
            BudgetRow(
                "sampling and truncation",
                0.1 * step,
                "a tenth of the step",
                "declared",
                "rectangular",
                0.1 * step,
                "deg",
            ),
        )
    if what.name == "front_to_back_db":
        return (
            BudgetRow(
                "range echoes",
                2.0 * echo,
                "declared level against the back lobe",
                "declared",
                "U-shaped",
                chamber.echo_level_db,
                "dB",
            ),
        )
    rows = [
        BudgetRow("reference gain", abs(what.gain) * chamber.reference.gain_uncertainty_db, "declared", "declared", "normal",
                  chamber.reference.gain_uncertainty_db, "dB"),
        BudgetRow("noise", sphere.noise_db, "scatter of repeated sweeps", "measured", "normal", sphere.noise_db, "dB"),
        BudgetRow("drift residual", sphere.drift_db, "ties against each other", "measured", "normal", sphere.drift_db, "dB"),
        BudgetRow("range echoes", 2.0 * NEPER_DB * echo, "declared level against the peak", "declared", "U-shaped", chamber.echo_level_db, "dB"),
        BudgetRow("finite distance", curvature_db, "bulge of the wave over the device, not transformed", "declared",
                  "rectangular"),
        BudgetRow("sampling and truncation", sampling_db if what.sphere else 0.0, "the mean over every second ring against all", "measured",
                  "change", sampling_db, "dB"),
    ]  # fmt: skip
    if what.display(1.0) != 1.0:  # a share: dB to natural units
        return tuple(row.of_size(row.expanded / DB * 0.5) for row in rows)
    return tuple(rows)


def _curvature_db(device: Device, chamber: Chamber, frequency_hz: float) -> float:
    """Return what the wave's bulge takes from a square aperture's peak: 0.119 dB at 2 D^2/lambda, with 1/R^2 (section 3)."""
    far = 2.0 * device.largest_dimension_m**2 * frequency_hz / SPEED_OF_LIGHT
    return float(0.119 * (far / chamber.range_length_m) ** 2)


def _sampling_db(sphere: PowerSphere, f: int) -> float:
    """Return how much the mean over the sphere changes with every second ring left out, dB; 0 where that is not possible."""
    rings = sphere.theta.size - 1
    if not sphere.whole or rings % 2:
        return 0.0
    by_ring = sphere.gain[f].mean(axis=1)
    every = float(clenshaw_curtis_weights(rings) @ by_ring)
    half = float(clenshaw_curtis_weights(rings // 2) @ by_ring[::2])
    return abs(DB * float(np.log(half / every))) if half > 0.0 else float("inf")
