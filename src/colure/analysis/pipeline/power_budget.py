"""What the figures of power without phase may be wrong by: the rows of their budgets, and the errors of every level."""

from __future__ import annotations

from typing import TypedDict

import numpy as np
from scipy.ndimage import map_coordinates

from colure.analysis.pipeline.power_between import MOST_REACH, TOP_DB
from colure.analysis.pipeline.power_levels import PowerSphere
from colure.analysis.steps.distance import away
from colure.analysis.steps.drift import DB as NEPER_DB
from colure.geometry.conventions import FloatArray, wavenumber
from colure.geometry.directions import azimuth_over_elevation, tangents, theta_phi, unit_vector
from colure.model.chamber import Chamber, facing_backwards
from colure.model.definitions import Definition
from colure.model.device import Device
from colure.model.figure import BudgetRow
from colure.model.power_table import LARGEST_ERROR_DB

DB = 10.0 / np.log(10.0)
WORDS = "half and two thirds of the samples against all"


class _CentrePlace(TypedDict):
    """Where the device's centre stands, metres from the axes' intersection, and the range length."""

    offset_m: FloatArray
    distance_m: float


class LevelBudget:
    """The budgets of one frequency's figures.

    peak (3,)
        Direction of the beam.
    """

    def __init__(self, sphere: PowerSphere, chamber: Chamber, device: Device, *, index: int, peak: FloatArray) -> None:
        self._sphere, self._chamber = sphere, chamber
        frequency_hz = float(sphere.frequency_hz[index])
        self._near_db = device.nearness_db(range_length_m=chamber.range_length_m, frequency_hz=frequency_hz)
        self._probe_db = _probe_open_db(chamber, device)
        gain = sphere.gain[index]
        # Echoes and noise stand below the highest level on the range; what is farther from the probe than that is raised, they with it.
        # Of levels nearly alike the highest is where they are strongest.
        below = float(_heard_most(sphere, chamber, device)[index] / np.sqrt(gain.max()))
        alike = _away(sphere, chamber, device)[gain > 10.0 ** (-0.1 * TOP_DB) * gain.max()]
        self._raised = max(1.0, below * float(alike.max()))
        self._raised_behind = max(1.0, below * float(away(-peak, **_place(chamber, device))))
        self._steady = _moved_deg(sphere, gain, peak, self._steepness(device, frequency_hz))
        mean = float(np.average(gain.mean(axis=1), weights=np.maximum(np.sin(sphere.theta), 1e-9)))
        self._backwards = facing_backwards(float(gain.max() / mean))

    def _steepness(self, device: Device, frequency_hz: float) -> tuple[float, float]:
        """Return the slope of ln power that echoes, and that noise and drift, may add at the peak, per radian, expanded."""
        # The gradient of an error that is white over waves up to N is N/2 per radian; ln power is twice the field's.
        order = float(wavenumber(frequency_hz)) * device.reach_m + 1.0
        echoes = 2.0 * np.sqrt(2.0) * self._raised * self._chamber.echo_amplitude * 0.5 * order
        step = float(self._sphere.theta[1] - self._sphere.theta[0])
        # Two readings, two steps apart, each with its own error.
        scatter = (
            float(np.hypot(self._raised * self._sphere.noise_db, self._sphere.drift_db)) / DB / (np.sqrt(2.0) * step)
        )
        return float(echoes), float(scatter)

    def rows(self, what: Definition, value: float, change: float) -> tuple[BudgetRow, ...]:
        """Return the rows of one figure; native variables in dB, degrees, or as shares and ratios.

        change
            What every second ring and column alone would make of the figure, in its native variable.
        """
        if what.unit == "deg":
            return self._of_angle(what, change)
        if what.name == "front_to_back_db":
            echo = BudgetRow(
                term="range echoes", expanded=2.0 * self._backwards * self._raised_behind * self._chamber.echo_amplitude,
                basis="declared level against the back lobe, while the beam looks to the wall behind the device", kind="declared",
                distribution="U-shaped", size=self._chamber.echo_level_db, unit="dB",
            )  # fmt: skip
            return (echo, _sampling(change))
        return (*self._of_level(what, value), _sampling(change))

    def _of_angle(self, what: Definition, change: float) -> tuple[BudgetRow, ...]:
        """Return the rows of the beam's azimuth or elevation."""
        tolerance = self._chamber.alignment
        pose = float(np.hypot(tolerance.device_pose_deg, tolerance.theta_zero_deg))
        echoes, scatter = self._steady[what.name]
        step = float(np.rad2deg(self._sphere.theta[1] - self._sphere.theta[0]))
        least = max(change, 0.1 * step)
        return (
            BudgetRow(term="alignment", expanded=pose, basis="declared", kind="declared", distribution="normal", size=pose, unit="deg"),
            BudgetRow(term="noise", expanded=scatter, basis="level errors over how the peak bends", kind="measured",
                      distribution="normal", size=scatter, unit="deg"),
            BudgetRow(term="range echoes", expanded=echoes, basis="declared level over how the peak bends", kind="declared",
                      distribution="normal", size=self._chamber.echo_level_db, unit="dB"),
            BudgetRow(term="sampling and truncation", expanded=least, basis=WORDS, kind="measured", distribution="change",
                      size=least, unit="deg"),
        )  # fmt: skip

    def _of_level(self, what: Definition, value: float) -> list[BudgetRow]:
        """Return the rows of a level, a ratio of levels or a share of power, but the samples'."""
        sphere, chamber = self._sphere, self._chamber
        drift = float(np.hypot(sphere.drift_db, what.gain * sphere.tied_db))
        rows = [
            BudgetRow(term="reference gain", expanded=abs(what.gain) * chamber.reference.gain_uncertainty_db,
            basis="declared", kind="declared", distribution="normal",
                      size=chamber.reference.gain_uncertainty_db, unit="dB"),
            BudgetRow(term="noise", expanded=self._raised * sphere.noise_db, basis="scatter of repeated sweeps", kind="measured",
            distribution="normal", size=sphere.noise_db, unit="dB"),
            BudgetRow(term="drift residual", expanded=drift, basis="ties against each other", kind="measured",
            distribution="normal", size=drift, unit="dB"),
            BudgetRow(term="range echoes", expanded=2.0 * NEPER_DB * self._raised * chamber.echo_amplitude, basis="declared level against the peak",
            kind="declared", distribution="U-shaped", size=chamber.echo_level_db, unit="dB"),
            BudgetRow(term="finite distance", expanded=self._near_db,
            basis="bulge of the wave and place of the phase centre, not transformed", kind="declared",
                      distribution="rectangular"),
        ]  # fmt: skip
        if self._probe_db > 0.0:
            basis = "probe's taper towards a device beside the axes' intersection"
            rows.append(
                BudgetRow(
                    term="probe pattern", expanded=self._probe_db, basis=basis, kind="declared", distribution="normal"
                )
            )
        if what.display(1.0) != 1.0:  # a share: dB to natural units
            rows = [row.of_size(row.expanded / DB * min(0.5, value)) for row in rows]
        return rows


def _probe_open_db(chamber: Chamber, device: Device) -> float:
    known = None if chamber.probe.pattern is None else chamber.probe.pattern_uncertainty_db
    return device.probe_open_db(
        range_length_m=chamber.range_length_m, probe_gain_dbi=chamber.probe.gain_dbi, pattern_db=known
    )


def _place(chamber: Chamber, device: Device) -> _CentrePlace:
    return {"offset_m": 1e-3 * np.asarray(device.offset_mm, float), "distance_m": chamber.range_length_m}


def _away(sphere: PowerSphere, chamber: Chamber, device: Device) -> FloatArray:
    """Return the probe's distance from the device's centre (theta, phi) over the range length."""
    directions = unit_vector(theta=sphere.theta[:, None], phi=sphere.phi[None, :])
    return away(directions, **_place(chamber, device))


def _heard_most(sphere: PowerSphere, chamber: Chamber, device: Device) -> FloatArray:
    """Return the largest amplitude (frequency,) that the probe met on the range, which levels from the device's centre are not."""
    return np.asarray(np.sqrt(np.max(sphere.gain / _away(sphere, chamber, device) ** 2, axis=(1, 2))))


def _sampling(change: float) -> BudgetRow:
    return BudgetRow(
        term="sampling and truncation", expanded=change, basis=WORDS, kind="measured", distribution="change"
    )


def _moved_deg(
    sphere: PowerSphere, gain: FloatArray, peak: FloatArray, slopes: tuple[float, float]
) -> dict[str, tuple[float, float]]:
    """Return how far slopes of ln power (per radian) move a beam, degrees, by figure: a flat top moves farther.

    Infinite where the samples about the peak do not tell how it bends.
    """
    first, second = tangents(peak)
    bend = _bend(sphere, gain, peak, first, second)
    azimuth, elevation = azimuth_over_elevation(peak)
    along = {
        "beam_azimuth_deg": np.array([np.cos(azimuth), 0.0, -np.sin(azimuth)]) / max(float(np.cos(elevation)), 1e-6),
        "beam_elevation_deg": np.array(
            [-np.sin(elevation) * np.sin(azimuth), np.cos(elevation), -np.sin(elevation) * np.cos(azimuth)]
        ),
    }
    if not np.isfinite(bend).all() or np.linalg.eigvalsh(bend).max() >= 0.0:
        return dict.fromkeys(along, (float("inf"), float("inf")))
    out = {}
    for name, unit in along.items():
        per_slope = float(np.rad2deg(np.linalg.norm(np.linalg.solve(bend, [unit @ first, unit @ second]))))
        out[name] = (per_slope * slopes[0], per_slope * slopes[1])
    return out


def _bend(sphere: PowerSphere, gain: FloatArray, peak: FloatArray, first: FloatArray, second: FloatArray) -> FloatArray:
    """Return the second derivatives (2, 2) of ln power at the peak along two tangents; nan where the rim is too near.

    Along each way over the fewest steps that fall by `TOP_DB`, as far as a paraboloid holds. Linear between samples: that lowers
    all levels about a top alike, and leaves its bend.
    """
    step = float(sphere.theta[1] - sphere.theta[0])
    level = np.log(np.maximum(np.pad(gain, ((0, 0), (0, 1)), mode="wrap"), 1e-300))
    reach = step * np.arange(1, max(1, int(MOST_REACH / step)) + 1)
    slant = np.sqrt(0.5)

    def along(unit: FloatArray) -> float:
        way = np.concatenate([-reach[::-1], [0.0], reach])
        t, p = theta_phi(np.cos(way)[:, None] * peak + np.sin(way)[:, None] * unit)
        # A direction on the last ring is not beyond it by rounding.
        ring = np.where(np.isclose(t, sphere.theta[-1]), len(level) - 1.0, t / step)
        where = np.stack([ring, p * sphere.phi.size / (2.0 * np.pi)])
        read = map_coordinates(level, where, order=1, cval=np.nan)
        falls = 2.0 * read[reach.size] - read[reach.size + 1 :] - read[: reach.size][::-1]
        known = np.flatnonzero(np.isfinite(falls))
        if not known.size:
            return float("nan")
        enough = known[falls[known] >= 2.0 * TOP_DB / DB]
        at = enough[0] if enough.size else known[-1]
        return float(-falls[at] / reach[at] ** 2)

    cross = 0.5 * (along(slant * (first + second)) - along(slant * (first - second)))
    return np.array([[along(first), cross], [cross, along(second)]])


def level_errors(sphere: PowerSphere, chamber: Chamber, device: Device) -> tuple[float, FloatArray]:
    """Return what all levels of a run may be wrong by together, and each by itself.

    Returns
    -------
    Expanded uncertainty (k = 2) of all levels together, dB: reference gain, the way from the reference by the ties, the
    probe's pattern, and finite distance, the largest of all frequencies.
    Standard deviation (frequency, theta, phi) of each level, dB: noise and echoes stand against the level itself, drift does not.
    """
    near = max(
        device.nearness_db(range_length_m=chamber.range_length_m, frequency_hz=float(f)) for f in sphere.frequency_hz
    )
    gain = chamber.reference.gain_uncertainty_db if chamber.reference.absolute else 0.0
    probe = _probe_open_db(chamber, device)
    top = _heard_most(sphere, chamber, device)[:, None, None]
    below = top * _away(sphere, chamber, device) / np.sqrt(np.maximum(sphere.gain, 1e-300))
    echo = NEPER_DB * chamber.echo_amplitude
    scatter = np.hypot(np.hypot(0.5 * sphere.noise_db, echo) * below, 0.5 * sphere.drift_db)
    return float(np.sqrt(gain**2 + near**2 + probe**2 + sphere.tied_db**2)), np.minimum(scatter, LARGEST_ERROR_DB)
