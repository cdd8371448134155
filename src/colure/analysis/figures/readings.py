"""How every figure is read from a pattern, by the key of its definition: its native value, in which errors add up evenly."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import numpy as np

from colure.analysis.figures.components import component_rows
from colure.analysis.figures.cuts import GreatCircleCut
from colure.analysis.figures.delay import delay_ns
from colure.analysis.figures.lobes import beamwidth_deg, edges_deg, first_null, first_side_lobe
from colure.analysis.figures.one_pattern import OnePattern
from colure.geometry.conventions import SPEED_OF_LIGHT, FloatArray, amplitude_from_db, power_db, wrapped
from colure.geometry.directions import angle_between, azimuth_over_elevation
from colure.model.components import NAMES
from colure.model.definitions import MOST_CROSS_DB, Definition

#: From one pattern at one frequency.
FigureReading = Callable[[OnePattern, Definition], float]
#: From the patterns of all frequencies: values (frequency,).
BandReading = Callable[[Sequence[OnePattern]], FloatArray]


def _power(one: OnePattern, *, sign: int, level: float) -> float:
    """Return the declared power plus, or the declared sensitivity minus, a level of gain or efficiency."""
    settings = one.wanted.settings
    declared = settings.transmit_power_dbm if sign > 0 else settings.sensitivity_dbm
    assert declared is not None  # the definition is there because it was declared
    return declared + level if sign > 0 else declared - level


def _worst(planes: Sequence[GreatCircleCut], cone_deg: float | None) -> float:
    """Return the largest cross- over co-polar amplitude along the rays of some planes; nan where co has a null on them."""
    worst = 0.0
    for one in planes:
        # A cut that never falls to half power counts to 90 deg.
        ends = [e if np.isfinite(e) else 90.0 for e in edges_deg(one)] if cone_deg is None else [cone_deg, cone_deg]
        inside = (one.angle_deg <= ends[0]) & (one.angle_deg >= -ends[1]) & np.isfinite(one.co)
        if not inside.any():
            continue
        ratio = np.abs(one.cross) / np.maximum(np.abs(one.co), 1e-300)
        edge = np.interp([-ends[1], ends[0]], one.angle_deg, ratio)
        worst = max(worst, float(np.nanmax(ratio[inside])), float(np.nanmax(np.nan_to_num(edge))))
    return worst if worst < amplitude_from_db(MOST_CROSS_DB) else float("nan")


def _efficiency(one: OnePattern) -> float:
    return one.gain_dbi - one.directivity_dbi


def _azimuth_elevation_deg(one: OnePattern) -> tuple[float, float]:
    azimuth, elevation = (float(np.rad2deg(v)) for v in azimuth_over_elevation(one.beam.direction))
    return azimuth, elevation


def _xpd(one: OnePattern) -> float:
    co, cross = one.co_cross
    return abs(cross) / max(abs(co), 1e-300)


def _tilt_deg(one: OnePattern) -> float:
    co, cross = one.co_cross
    product = co * np.conj(cross)
    return float(np.rad2deg(0.5 * np.arctan2(2.0 * product.real, abs(co) ** 2 - abs(cross) ** 2)))


def _horizon(one: OnePattern, band_deg: float) -> float:
    b = float(np.deg2rad(band_deg))
    return one.sky_about_up.power_between(0.5 * np.pi - b, 0.5 * np.pi + b) / one.radiated


def _level_dbi(intensity: float) -> float:
    return float(power_db(max(intensity, 1e-20)))


def _component(one: OnePattern, name: str) -> float:
    """Return the amplitude of a partial field at the peak."""
    basis = next(basis for basis, names in NAMES.items() if name in names)
    row = component_rows(one.beam.direction, one.wanted.slant, (basis,))[name]
    return float(abs(row @ np.array(one.co_cross)))


def _signed_ratio(one: OnePattern) -> float:
    """Return minor over major axis of the ellipse, + right-handed, - left-handed."""
    return float(np.copysign(one.minor_over_major, one.circularity))


READINGS: dict[str, FigureReading] = {
    **{name: lambda one, what: _component(one, what.name) for pair in NAMES.values() for name in pair},
    "xpd_circular_db": lambda one, what: (1.0 - one.minor_over_major) / (1.0 + one.minor_over_major),
    "axial_ratio_signed_db": lambda one, what: _signed_ratio(one),
    "gain_dbd": lambda one, what: one.gain_dbi,
    "gain_linear": lambda one, what: one.gain_dbi,
    "gain_dbi": lambda one, what: one.gain_dbi,
    "directivity_dbi": lambda one, what: one.directivity_dbi,
    "efficiency_db": lambda one, what: _efficiency(one),
    "gain_accepted_dbi": lambda one, what: one.gain_dbi + one.mismatch_loss_db,
    "radiation_efficiency_db": lambda one, what: _efficiency(one) + one.mismatch_loss_db,
    "mismatch_loss_db": lambda one, what: one.mismatch_loss_db,
    "return_loss_db": lambda one, what: float(np.sqrt(1.0 - 10.0 ** (-0.1 * one.mismatch_loss_db))),
    "sector_mean_dbi": lambda one, what: float(power_db(one.sectors[str(what.at[0])][0])),
    "sector_min_dbi": lambda one, what: _level_dbi(one.sectors[str(what.at[0])][1]),
    "beam_azimuth_deg": lambda one, what: _azimuth_elevation_deg(one)[0],
    "beam_elevation_deg": lambda one, what: _azimuth_elevation_deg(one)[1],
    "pointing_error_deg": lambda one, what: one.pointing_error_deg,
    "squint_axis_deg": lambda one, what: one.squint_axis_deg,
    "front_to_back_axis_db": lambda one, what: one.behind_axis,
    "beamwidth_e_deg": lambda one, what: beamwidth_deg(one.cut("e")),
    "beamwidth_h_deg": lambda one, what: beamwidth_deg(one.cut("h")),
    "beamwidth_level_deg": lambda one, what: beamwidth_deg(one.cut(what.at[0]), float(what.at[1])),
    "beamwidth_plane_deg": lambda one, what: beamwidth_deg(one.cut(what.at[0])),
    "side_lobe_e_db": lambda one, what: first_side_lobe(one.cut("e")),
    "side_lobe_h_db": lambda one, what: first_side_lobe(one.cut("h")),
    "side_lobe_plane_db": lambda one, what: first_side_lobe(one.cut(what.at[0])),
    "side_lobe_highest_db": lambda one, what: one.highest_lobe,
    "null_e_db": lambda one, what: first_null(one.cut("e")),
    "null_h_db": lambda one, what: first_null(one.cut("h")),
    "front_to_back_db": lambda one, what: float(np.sqrt(np.sum(np.abs(one.ends[1]) ** 2) / one.beam.intensity)),
    "front_to_rear_db": lambda one, what: one.rear,
    "xpd_db": lambda one, what: _xpd(one),
    "xpd_worst_db": lambda one, what: _worst(one.cuts_of_polarization, one.wanted.settings.cone_deg),
    "axial_ratio_db": lambda one, what: one.minor_over_major,
    "tilt_deg": lambda one, what: _tilt_deg(one),
    "circularity": lambda one, what: one.circularity,
    "phase_centre_x_mm": lambda one, what: 1e3 * float(one.centre_m[0]),
    "phase_centre_y_mm": lambda one, what: 1e3 * float(one.centre_m[1]),
    "phase_centre_z_mm": lambda one, what: 1e3 * float(one.centre_m[2]),
    "upper_share_db": lambda one, what: one.sky.power_on_one_side(one.wanted.settings.up) / one.radiated,
    "horizon_db": lambda one, what: _horizon(one, float(what.at[0])),
    "coverage_dbi": lambda one, what: one.coverage_dbi[float(what.at[0])],
    "eirp_dbm": lambda one, what: _power(one, sign=1, level=one.gain_dbi),
    "trp_dbm": lambda one, what: _power(one, sign=1, level=_efficiency(one)),
    "eis_dbm": lambda one, what: _power(one, sign=-1, level=one.gain_dbi),
    "tis_dbm": lambda one, what: _power(one, sign=-1, level=_efficiency(one)),
}


def _delay_ns(every: Sequence[OnePattern]) -> FloatArray:
    frequency = np.array([one.k for one in every]) * SPEED_OF_LIGHT / (2.0 * np.pi)
    middle = every[len(every) // 2]
    # An ellipse's axis has no sign: every one is taken along the middle frequency's.
    turned = [0.0 if one.beam.tangent @ middle.beam.tangent >= 0.0 else np.pi for one in every]
    return delay_ns(np.array([one.phase + turn for one, turn in zip(every, turned, strict=True)]), frequency)


def _squint_deg(every: Sequence[OnePattern]) -> FloatArray:
    middle, squint = every[len(every) // 2], []
    for one in every:
        az, el = (
            float(wrapped(x - y))
            for x, y in zip(
                azimuth_over_elevation(one.beam.direction), azimuth_over_elevation(middle.beam.direction), strict=True
            )
        )
        sign = np.sign(az if abs(az) >= abs(el) else el)
        squint.append(float(sign * np.rad2deg(angle_between(one.beam.direction, middle.beam.direction))))
    return np.array(squint)


def _wander_mm(every: Sequence[OnePattern]) -> FloatArray:
    middle = every[len(every) // 2]
    moved = [1e3 * (one.centre_m - middle.centre_m) for one in every]
    return np.array([float(np.linalg.norm(m) * np.sign(m[int(np.argmax(np.abs(m)))])) for m in moved])


#: Figures that need the neighbours in frequency.
BAND_READINGS: dict[str, BandReading] = {
    "group_delay_ns": _delay_ns,
    "squint_deg": _squint_deg,
    "phase_centre_wander_mm": _wander_mm,
}
