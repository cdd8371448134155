"""Power without phase: total power over directions, and the figures that need no more.

A scalar receiver says nothing that a transform could use. The sum of both polarizations' powers is still
the total power in every direction at the range length, and power figures follow from it.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import ducc0
import numpy as np
from scipy.ndimage import map_coordinates, spline_filter

from colure.analysis.figures.beams import OMNIDIRECTIONAL_REASON
from colure.analysis.figures.cuts import OMNIDIRECTIONAL
from colure.analysis.figures.sphere import UP, belt_weights, coverage
from colure.analysis.pipeline.power_budget import DB, MOST_REACH, TOP_DB, LevelBudget
from colure.analysis.pipeline.power_levels import PowerSphere
from colure.analysis.steps.drift import DB as NEPER_DB
from colure.analysis.steps.drift import correct, declared_drift, track
from colure.analysis.steps.gain import ReferenceData, gain_transfer
from colure.analysis.steps.repetition import students_factor
from colure.analysis.uncertainty.budget import build_figure
from colure.geometry.conventions import FloatArray
from colure.geometry.directions import (
    azimuth_over_elevation,
    from_azimuth_over_elevation,
    tangents,
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

#: Samples about the highest one that a paraboloid is laid through.
NEIGHBOURS = 9
#: Between two samples of the continuous pattern before its spline, at most.
FINE_STEP_DEG = 2.0
#: Rings over which partial powers are integrated and levels counted, at least.
FINE_RINGS = 181
#: Rounds in which the highest power is looked for, each on a finer grid.
PEAK_ROUNDS = 4
UNTOLD = "below what these samples tell; measure with a smaller step"


def power_sphere(record: xr.Dataset, chamber: Chamber, reference: ReferenceData | None = None) -> PowerSphere:
    """Turn a power-only record into total gain over directions (substitution with the reference, drift taken out).

    With reference.method = 'none' its scale is any: directivity and other figures without a gain are right.

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
    each = transfer.noise * np.abs(transfer.factor)
    # Few sweeps are repeated: Student's factor counts how few (JCGM 100:2008, G.3), over all frequencies and ports together.
    k = students_factor(max(1.0, transfer.freedom * each.size))
    noise = k * float(np.sqrt(np.mean(each**2) / reading.max()))
    theta, phi, gain = _folded(places, total)
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
            out.append(build_figure(what, value, rows, float(frequency), left_out=LEFT_OUT, reason=reason))
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


class Continuous:
    """Power between its samples: the scalar spherical harmonics through a whole grid with poles, as many as its samples tell apart.

    A polynomial over theta and phi alone would leave every column free near the poles, where they lie close together.
    """

    def __init__(self, gain: FloatArray) -> None:
        rings, columns = gain.shape
        order = rings - 2
        across = min(order, (columns - 1) // 2)
        coefficients = ducc0.sht.analysis_2d(
            map=np.ascontiguousarray(gain[None]), spin=0, lmax=order, mmax=across, geometry="CC"
        )
        finer = _finer(2 * order), _finer(columns)
        fine = ducc0.sht.synthesis_2d(
            alm=coefficients, spin=0, lmax=order, mmax=across, ntheta=finer[0] // 2 + 1, nphi=finer[1], geometry="CC"
        )[0]
        # Rings go on through the poles, where phi is half a turn further.
        self._table = np.concatenate([fine, np.roll(fine[-2:0:-1], finer[1] // 2, axis=1)])
        self._spline = spline_filter(self._table, order=5, mode="grid-wrap")
        told = ducc0.sht.synthesis_2d(
            alm=coefficients, spin=0, lmax=order, mmax=across, ntheta=rings, nphi=columns, geometry="CC"
        )[0]
        #: What the harmonics leave of the samples: noise, or lobes too narrow for them.
        self._left = np.pad(gain - told, ((0, 0), (0, 1)), mode="wrap")

    @property
    def least_told(self) -> float:
        """The lowest power that its samples tell: twice as deep as they make it pass below zero between them."""
        return 2.0 * max(0.0, -float(self._table.min()))

    def at(self, theta: FloatArray, phi: FloatArray) -> FloatArray:
        """Return the power (count,) at directions in radians, never below 0."""
        return np.asarray(np.maximum(self._between(theta, phi), 0.0), np.float64)

    def _between(self, theta: FloatArray, phi: FloatArray) -> FloatArray:
        rows, columns = self._table.shape
        where = np.stack([theta * rows / (2.0 * np.pi), phi * columns / (2.0 * np.pi)])
        return np.asarray(map_coordinates(self._spline, where, order=5, mode="grid-wrap", prefilter=False), np.float64)

    def sampled_at(self, theta: FloatArray, phi: FloatArray) -> FloatArray:
        """Return the power (count,) as the samples about each direction read it: their noise counts, and so do their narrow lobes."""
        rows, columns = (size - 1 for size in self._left.shape)
        left = map_coordinates(self._left, np.stack([theta * rows / np.pi, phi * columns / (2.0 * np.pi)]), order=1)
        return np.asarray(np.maximum(self._between(theta, phi) + left, 0.0), np.float64)

    def peak(self, gain: FloatArray) -> tuple[FloatArray, float]:
        """Return (direction (3,), value) of the highest power, looked for about the samples (theta, phi) it began with."""
        theta = np.linspace(0.0, np.pi, gain.shape[0])
        phi = np.arange(gain.shape[1]) * 2.0 * np.pi / gain.shape[1]
        every = unit_vector(theta=theta[:, None], phi=phi[None, :]).reshape(-1, 3)
        best, top, reach = every[int(np.argmax(gain))], float(gain.max()), float(theta[1])
        steps = np.linspace(-1.0, 1.0, 2 * NEIGHBOURS + 1)
        a, b = (one.ravel() for one in np.meshgrid(steps, steps))
        for _ in range(PEAK_ROUNDS):
            first, second = tangents(best)
            near = best + reach * (a[:, None] * first + b[:, None] * second)
            near /= np.linalg.norm(near, axis=1, keepdims=True)
            level = self.at(*theta_phi(near))
            best, top = near[int(np.argmax(level))], float(level.max())
            reach *= 2.0 / NEIGHBOURS
        # Noise moves a flat top far: a paraboloid over everything within 1 dB of it holds still.
        first, second = tangents(best)
        reach = float(theta[1])
        for _ in range(PEAK_ROUNDS):
            near = best + reach * (a[:, None] * first + b[:, None] * second)
            near /= np.linalg.norm(near, axis=1, keepdims=True)
            level = self.at(*theta_phi(near))
            inside = level > 10.0 ** (-TOP_DB / 10.0) * top
            reach *= float(np.clip(2.0 * np.sqrt(inside.mean()), 0.3, 1.5))
            reach = min(reach, MOST_REACH)
        direction, _ = _top_of(near[inside], level[inside], best, top)
        return direction, float(self.at(*theta_phi(direction[None]))[0])

    def sky(self, frame: FloatArray, *, least_rings: int) -> tuple[FloatArray, FloatArray]:
        """Return (theta, power (theta, phi)) on a grid with poles about the z axis of a frame (rows: its axes)."""
        theta = np.linspace(0.0, np.pi, least_rings)
        phi = np.arange(2 * (least_rings - 1)) * np.pi / (least_rings - 1)
        d = unit_vector(theta=theta[:, None], phi=phi[None, :]) @ frame
        t, p = theta_phi(d)
        return theta, self.at(t.ravel(), p.ravel()).reshape(theta.size, phi.size)


def _finer(count: int) -> int:
    """Return a multiple of a number of samples over a full turn that leaves at most `FINE_STEP_DEG` between two."""
    return count * max(1, int(np.ceil(360.0 / FINE_STEP_DEG / count)))


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


def sampled_peak(sphere: PowerSphere, gain: FloatArray) -> tuple[FloatArray, float]:
    """Return (direction (3,), value) of the top of a paraboloid through the highest sample and its nearest ones, in dB."""
    directions = unit_vector(theta=sphere.theta[:, None], phi=sphere.phi[None, :]).reshape(-1, 3)
    flat = gain.ravel()
    top = directions[int(np.argmax(flat))]
    # A pole is sampled by every column: one of them is enough.
    _, once = np.unique(np.round(directions, 7), axis=0, return_index=True)
    near = once[np.argsort(-(directions[once] @ top))[: 2 * NEIGHBOURS]]
    return _top_of(directions[near], flat[near], top, float(flat.max()))


def _top_of(near: FloatArray, power: FloatArray, best: FloatArray, highest: float) -> tuple[FloatArray, float]:
    """Return (direction (3,), value) of the paraboloid's top through powers at directions (n, 3), in dB; `best` if it has none."""
    first, second = tangents(best)
    a, b = near @ first, near @ second
    level = np.log(np.maximum(power, 1e-300))
    c = np.linalg.lstsq(np.stack([np.ones_like(a), a, b, a * a, a * b, b * b], axis=-1), level, rcond=None)[0]
    hessian = np.array([[2.0 * c[3], c[4]], [c[4], 2.0 * c[5]]])
    if np.linalg.det(hessian) <= 0.0 or c[3] >= 0.0:
        return best, highest
    at = -np.linalg.solve(hessian, c[1:3])
    if float(np.hypot(*at)) > float(np.hypot(a, b).max()):
        return best, highest
    direction = best + at[0] * first + at[1] * second
    return direction / np.linalg.norm(direction), float(np.exp(c[0] + 0.5 * c[1:3] @ at))
