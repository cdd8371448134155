"""How uncertain every figure will be, from what the chamber declares and the plan does.

A uniform line source models the device: as long as the device in each principal plane,
with the side lobe, purity and back lobe that device.toml expects. Causes are field errors
relative to the peak; each figure's answer to a field error follows from the stand-in's slope,
curvature and level (first order, derivable). All results are expanded, k = 2.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

import numpy as np

from colure.geometry.conventions import wavenumber
from colure.geometry.kinematics import Geometry
from colure.model.campaign import Campaign
from colure.model.chamber import WALL_FACING, facing_backwards
from colure.model.plan import ScanGrid
from colure.planning.level import LinkBudget
from colure.planning.passes import polarization_scheme

#: 20/ln 10: dB per unit of relative field.
DB = 20.0 / np.log(10.0)
#: Half-power point of sin(pi u)/(pi u), its slope there, and its curvature at the peak over pi^2/3.
HALF_POWER_U, HALF_POWER_SLOPE = 0.44295, 1.194
STEEPEST_SLOPE = 1.37
SIDE_LOBE_U, EVEN_SIDE_LOBE_DB = 1.43, -13.3
#: A lobe farther out than this is no lobe of a panel any more but what its elements leave near the plane.
FARTHEST_LOBE_DEG = 50.0
#: A drifting chamber needs about this long for the drift that it declares (common practice, no source).
DRIFT_TIME_S = 1800.0
#: Rms error of interpolating a warm-up with a swing of a fifth, over (interval / drift time)^2, told by ties
#: that are predicted from their neighbours, which spans twice the interval.
DRIFT_BEND = 3.0
#: Share of a pointing error that neighbouring slices do not have in common, as a field error.
UNEVEN_SHARE = 0.3
#: Directions of side walls, which a beam may face.
WALL_ANGLES_DEG = (30.0, 65.0)
#: A figure is read where several independent errors meet.
SEVERAL = 1.2
#: A device that radiates as much backwards, within so many dB, has no single beam: many directions share its peak.
EVEN_ALL_ROUND_DB = 3.0


@dataclass(frozen=True)
class Forecast:
    """Expanded uncertainty of one figure in its own unit, and what it is made of."""

    name: str
    expanded: float
    causes: dict[str, float]

    @property
    def cause(self) -> str:
        """The largest contribution."""
        return max(self.causes, key=lambda key: self.causes[key])


@dataclass(frozen=True, kw_only=True)
class FieldErrors:
    """Errors of the pattern as rms field relative to the peak (drift: relative to the field itself).

    once
        Noise of the first tie and the reference; common to all points.
    """

    noise: float
    echoes: float
    drift: float
    once: float
    slices: int
    order: int


def field_errors(campaign: Campaign, grid: ScanGrid, order: int, level: LinkBudget) -> FieldErrors:
    """Return what noise, echoes and drift will leave in the pattern.

    Noise: a fit with as many waves as the scanned part holds averages over all directions.
    """
    chamber, geometry = campaign.chamber, campaign.chamber.positioner.geometry
    share = 0.5 * (1.0 - np.cos(np.deg2rad(grid.reach_deg)))
    directions = grid.swept_deg(geometry).size * grid.sliced_deg(geometry).size
    sample = 10.0 ** (-level.snr_peak_db / 20.0)
    noise = sample * np.sqrt(min(1.0, order * (order + 2) * share / directions))
    moved = np.hypot(chamber.tie_drift_db / DB, np.deg2rad(chamber.tie_drift_deg))
    drift = DRIFT_BEND * moved * min(1.0, (chamber.tie_interval_s / DRIFT_TIME_S) ** 2)
    # Every correction carries the noise of the ties beside it.
    drift = np.hypot(drift, sample)
    echoes = 10.0 ** (chamber.echo_level_db / 20.0)
    once = sample * np.sqrt(1.0 + 1.0 / chamber.reference.sweeps)
    return FieldErrors(
        noise=float(noise),
        echoes=float(echoes),
        drift=float(drift),
        once=float(once),
        slices=grid.slices_planned,
        order=order,
    )


@dataclass(frozen=True)
class Plane:
    """The stand-in in one principal plane: its length in wavelengths."""

    waves: float

    @property
    def half_power_slope(self) -> float:
        """Fall of the relative field per radian at the half-power point."""
        return HALF_POWER_SLOPE * self.waves

    @property
    def curvature(self) -> float:
        """Curvature of the relative field at the peak, per radian squared."""
        return float(np.pi**2 / 3.0 * self.waves**2)

    @property
    def side_lobe_angle(self) -> float:
        """Angle of the first side lobe's top, radians; a right angle where the line is too short for one."""
        return float(np.arcsin(min(1.0, SIDE_LOBE_U / self.waves)))


def planes(campaign: Campaign) -> tuple[Plane, Plane]:
    """Return the stand-in in the E and H plane at mid-band; never shorter than a half wave."""
    device, goal = campaign.device, campaign.goal
    k = float(wavenumber(0.5e9 * (goal.start_ghz + goal.stop_ghz)))
    x, y = (1e-3 * size for size in device.size_mm[:2])
    c, s = np.cos(np.deg2rad(device.slant_deg)), np.sin(np.deg2rad(device.slant_deg))
    e, h = np.hypot(c * x, s * y), np.hypot(s * x, c * y)
    return Plane(max(0.5, k * e / (2.0 * np.pi))), Plane(max(0.5, k * h / (2.0 * np.pi)))


@dataclass(frozen=True)
class Expected:
    """What forecasts are made from: the campaign, its field errors, the stand-in in both planes, and whether the sphere is whole."""

    campaign: Campaign
    errors: FieldErrors
    e_plane: Plane
    h_plane: Plane
    whole: bool

    @property
    def picked(self) -> float:
        """By how much more echoes raise the peak than they raise one direction.

        A probe that is swung around the device meets other echoes in every direction. Of many directions that share the peak the
        highest is read: of n independent normal errors about sqrt(2 ln n) standard deviations (common practice, no source);
        waves up to N have N (N + 2) independent directions, half of them near such a peak. Where the device is turned, its own
        echo goes along with it.
        """
        several = self.campaign.device.expected_front_to_back_db <= EVEN_ALL_ROUND_DB
        if not (several and self.campaign.chamber.swings_probe):
            return 1.0
        order = self.errors.order
        return float(np.sqrt(2.0 * np.log(max(2.0, 0.5 * order * (order + 2)))))


def forecast(campaign: Campaign, errors: FieldErrors, *, whole: bool) -> dict[str, Forecast]:
    """Return the forecast of every figure that the plan will show."""
    known = Expected(campaign, errors, *planes(campaign), whole)
    return summed({key: one(known) for key, one in FORECASTS.items()})


def summed(causes: Mapping[str, dict[str, float] | None]) -> dict[str, Forecast]:
    """Return forecasts of the figures whose causes are given, by root sum of squares; figures without causes are left out."""
    return {
        name: Forecast(name, float(np.sqrt(sum(v**2 for v in own.values()))), own)
        for name, own in causes.items()
        if own
    }


def inphase(rms: float) -> float:
    """Expanded in-phase part of a complex error: two standard deviations of rms / sqrt 2."""
    return float(np.sqrt(2.0) * rms)


def _own_levels(known: Expected) -> dict[str, float]:
    errors = known.errors
    return {
        "noise": DB * inphase(errors.noise),
        "range echoes": DB * inphase(errors.echoes) * known.picked,
        "drift residual": DB * inphase(errors.drift) * SEVERAL / np.sqrt(errors.slices),
    }


def _absolute_levels(known: Expected) -> dict[str, float] | None:
    errors = known.errors
    if not known.campaign.chamber.reference.absolute:
        return None
    return {
        **_own_levels(known),
        "noise": DB * inphase(float(np.hypot(errors.noise, errors.once))),
        # The reference is read in one direction: nothing filters its echoes.
        "range echoes": DB * inphase(float(np.hypot(1.0, known.picked)) * errors.echoes),
        "reference gain": known.campaign.chamber.reference.gain_uncertainty_db,
    }


def _tilt_deg(campaign: Campaign) -> float:
    """Return the tolerance of the angle that goes with elevation on this positioner."""
    a = campaign.chamber.alignment
    rolls = campaign.chamber.positioner.geometry is Geometry.ROLL_OVER_AZIMUTH
    return a.roll_axis_tilt_deg if rolls else a.elevation_zero_deg


def _pointing(known: Expected, plane: Plane) -> dict[str, float]:
    campaign, errors, a = known.campaign, known.errors, known.campaign.chamber.alignment
    # The gradient of an error that is white over waves up to N is N/2 per radian.
    share = 0.5 * errors.order / plane.curvature
    degrees = float(np.rad2deg(1.0))
    return {
        "noise": degrees * share * inphase(errors.noise),
        "range echoes": degrees * share * inphase(errors.echoes),
        "drift residual": degrees * 0.3 * inphase(errors.drift) / plane.half_power_slope,
        "alignment": float(np.sqrt(a.theta_zero_deg**2 + _tilt_deg(campaign) ** 2 + a.device_pose_deg**2)),
    }


def _beamwidth(known: Expected, plane: Plane) -> dict[str, float]:
    campaign, errors, a = known.campaign, known.errors, known.campaign.chamber.alignment
    # Two crossings, each against the peak's own error.
    degrees = float(np.rad2deg(1.0)) * SEVERAL * np.sqrt(2.0) / plane.half_power_slope
    return {
        "noise": degrees * inphase(errors.noise),
        "range echoes": degrees * inphase(errors.echoes) * float(np.hypot(1.0, known.picked)) / np.sqrt(2.0),
        "drift residual": degrees * np.sqrt(0.5) * inphase(errors.drift),
        "alignment": 0.7 * float(np.hypot(a.theta_zero_deg, _tilt_deg(campaign))),
    }


def _side_lobe(known: Expected, plane: Plane) -> dict[str, float] | None:
    campaign, errors, a = known.campaign, known.errors, known.campaign.chamber.alignment
    if plane.side_lobe_angle > np.deg2rad(min(FARTHEST_LOBE_DEG, campaign.goal.region_deg)):
        return None
    expected = campaign.device.expected_side_lobe_db
    # An evenly lit line, whose elements radiate less the farther out the lobe lies.
    even = EVEN_SIDE_LOBE_DB + DB * np.log(np.cos(plane.side_lobe_angle))
    lobe = 10.0 ** ((even if expected is None else expected) / 20.0)
    off = float(np.deg2rad(np.hypot(a.theta_zero_deg, _tilt_deg(campaign))))
    k = float(wavenumber(0.5e9 * (campaign.goal.start_ghz + campaign.goal.stop_ghz)))
    # A shifted axis turns the field's phase along the way to the lobe.
    aside = k * 1e-3 * a.axes_offset_mm * np.sin(plane.side_lobe_angle)
    return {
        "noise": DB * inphase(errors.noise) / lobe,
        "range echoes": DB * inphase(errors.echoes) * _facing_a_wall(plane.side_lobe_angle) / lobe,
        "drift residual": DB * inphase(errors.drift) * SEVERAL,
        "alignment": DB * float(np.hypot(UNEVEN_SHARE * STEEPEST_SLOPE * plane.waves * off / lobe, 0.5 * aside)),
    }


def _facing_a_wall(angle: float) -> float:
    """Return how much stronger than on average stray signals are while a lobe at `angle` (rad) looks to the probe.

    The beam then faces a side wall, if that stands 0.4 to 1 range length away (common practice, no source).
    """
    return WALL_FACING if WALL_ANGLES_DEG[0] <= np.rad2deg(angle) <= WALL_ANGLES_DEG[1] else 1.0


def _ratio(known: Expected, expected_db: float, *, pure: bool) -> dict[str, float]:
    """Return the forecast of a ratio of the peak to something weak; `pure` if the probe's purity does not matter."""
    campaign, errors, chamber = known.campaign, known.errors, known.campaign.chamber
    weak = 10.0 ** (-expected_db / 20.0)
    horn = chamber.reference.cross_polar_db
    purity = 0.0 if pure else 10.0 ** ((chamber.probe.cross_polar_db if horn is None else horn) / 20.0)
    roll = 0.0 if pure else float(np.tan(np.deg2rad(campaign.chamber.alignment.probe_roll_zero_deg)))
    parts = {
        "noise": inphase(errors.noise),
        "range echoes": inphase(errors.echoes) * (facing_backwards(campaign.device.expected_gain) if pure else 1.0),
        "probe polarization": purity,
        "alignment": roll,
    }
    return {name: shown(weak, value) for name, value in parts.items() if value > 0.0}


def shown(weak: float, error: float) -> float:
    """Return half the width in dB of weak +- error; an error as large as the thing itself has no lower end."""
    upper = DB * np.log1p(error / weak)
    return float(0.5 * (upper - DB * np.log1p(-error / weak))) if error < 0.95 * weak else float(upper * 4.0)


def _xpd(known: Expected) -> dict[str, float] | None:
    if polarization_scheme(known.campaign.goal, known.campaign.chamber) == "one-pass":
        return None
    return _ratio(known, known.campaign.device.expected_xpd_db, pure=False)


def _front_to_back(known: Expected) -> dict[str, float] | None:
    return _ratio(known, known.campaign.device.expected_front_to_back_db, pure=True) if known.whole else None


#: By the key of a figure's definition: what its expanded uncertainty will be made of; None where the plan will not show it.
FORECASTS: dict[str, Callable[[Expected], dict[str, float] | None]] = {
    "gain_dbi": _absolute_levels,
    "directivity_dbi": lambda known: _own_levels(known) if known.whole else None,
    "efficiency_db": lambda known: _absolute_levels(known) if known.whole else None,
    "beam_azimuth_deg": lambda known: _pointing(known, known.e_plane),
    "beam_elevation_deg": lambda known: _pointing(known, known.h_plane),
    "beamwidth_e_deg": lambda known: _beamwidth(known, known.e_plane),
    "beamwidth_h_deg": lambda known: _beamwidth(known, known.h_plane),
    "xpd_db": _xpd,
    "side_lobe_e_db": lambda known: _side_lobe(known, known.e_plane),
    "side_lobe_h_db": lambda known: _side_lobe(known, known.h_plane),
    "front_to_back_db": _front_to_back,
}
