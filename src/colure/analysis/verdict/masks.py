"""Published side-lobe envelopes as functions of the angle from the peak.

Every formula names its text; levels in dBi. Angles in degrees, from 0 to 180.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike

from colure.errors import InputError
from colure.geometry.conventions import FloatArray
from colure.model.specification import Mask


def fcc_25_209(angle_deg: ArrayLike) -> FloatArray:
    """Return 47 CFR 25.209(a)(1): 29 - 25 log from 1.5 to 7 deg, 8 to 9.2, 32 - 25 log to 48, -10 beyond; nan nearer."""
    a = np.asarray(angle_deg, float)
    log = 25.0 * np.log10(np.maximum(a, 1e-6))
    return np.select([a < 1.5, a <= 7.0, a <= 9.2, a <= 48.0], [np.nan, 29.0 - log, 8.0 + 0.0 * a, 32.0 - log], -10.0)


def itu_r_f_699(angle_deg: ArrayLike, *, d_over_lambda: float, peak_gain_dbi: float) -> FloatArray:
    """Return ITU-R F.699 (both branches of D/lambda, 1 to 70 GHz)."""
    a, d, g = np.asarray(angle_deg, float), d_over_lambda, peak_gain_dbi
    first = 2.0 + 15.0 * np.log10(d)
    edge = 20.0 / d * np.sqrt(max(g - first, 0.0))
    main = g - 2.5e-3 * (d * a) ** 2
    log = 25.0 * np.log10(np.maximum(a, 1e-6))
    if d > 100.0:
        begin = max(edge, 15.85 * d**-0.6)
        return np.select([a < edge, a < begin, a < 48.0], [main, first + 0.0 * a, 32.0 - log], -10.0)
    begin = max(edge, 100.0 / d)
    wide = 52.0 - 10.0 * np.log10(d) - log
    return np.select([a < edge, a < begin, a < 48.0], [main, first + 0.0 * a, wide], 10.0 - 10.0 * np.log10(d))


def itu_r_ra_1631(angle_deg: ArrayLike, *, d_over_lambda: float) -> FloatArray:
    """Return ITU-R RA.1631: an ideal paraboloid's 20 log(pi D/lambda), and its envelope."""
    a, d = np.asarray(angle_deg, float), d_over_lambda
    g = 20.0 * np.log10(np.pi * d)
    first = -1.0 + 15.0 * np.log10(d)
    edge, begin = 20.0 / d * np.sqrt(g - first), 15.85 * d**-0.6
    log = np.log10(np.maximum(a, 1e-6))
    return np.select(
        [a < edge, a < begin, a < 10.0, a < 34.1, a < 80.0, a < 120.0],
        [
            g - 2.5e-3 * (d * a) ** 2,
            first + 0.0 * a,
            29.0 - 25.0 * log,
            34.0 - 30.0 * log,
            -12.0 + 0.0 * a,
            -7.0 + 0.0 * a,
        ],
        -12.0,
    )


def itu_r_s_465(angle_deg: ArrayLike, *, d_over_lambda: float) -> FloatArray:
    """Return ITU-R S.465 (from memory): 32 - 25 log from max(1 deg, 100 lambda/D) to 48 deg, -10 beyond; nan nearer.

    Below D/lambda = 50 it begins at max(2 deg, 114 (D/lambda)^-1.09).
    """
    a = np.asarray(angle_deg, float)
    begin = max(1.0, 100.0 / d_over_lambda) if d_over_lambda >= 50.0 else max(2.0, 114.0 * d_over_lambda**-1.09)
    log = 25.0 * np.log10(np.maximum(a, 1e-6))
    return np.select([a < begin, a < 48.0], [np.nan, 32.0 - log], -10.0)


def itu_r_s_580(angle_deg: ArrayLike, *, d_over_lambda: float) -> FloatArray:
    """Return ITU-R S.580-6: 29 - 25 log up to 20 deg, 3.5 below to 26.3 deg, then S.465 (beyond 20 deg from memory)."""
    a = np.asarray(angle_deg, float)
    far = itu_r_s_465(a, d_over_lambda=d_over_lambda)
    near = np.where(np.isnan(far), np.nan, 29.0 - 25.0 * np.log10(np.maximum(a, 1e-6)))
    return np.asarray(np.where(a <= 20.0, near, np.where(a <= 26.3, -3.5, far)))


def itu_r_f_1336_omni(angle_deg: ArrayLike, *, peak_gain_dbi: float, beamwidth_deg: float | None = None) -> FloatArray:
    """Return ITU-R F.1336 recommends 2.1, peak side lobes of an omnidirectional antenna in elevation (k = 0.7, from memory).

    max(G0 - 12 (a/t3)^2, G0 - 12 + 10 log(max(a/t3, 1)^-1.5 + 0.7)), t3 = 107.6 x 10^(-0.1 G0).
    """
    a, g = np.abs(np.asarray(angle_deg, float)), peak_gain_dbi
    t3 = 107.6 * 10.0 ** (-0.1 * g) if beamwidth_deg is None else beamwidth_deg
    main = g - 12.0 * (a / t3) ** 2
    rest = g - 12.0 + 10.0 * np.log10(np.maximum(a / t3, 1.0) ** -1.5 + 0.7)
    return np.asarray(np.maximum(main, rest))


def itu_r_f_1336_sector(
    angle_deg: ArrayLike, *, peak_gain_dbi: float, beamwidth_deg: float, elevation_beamwidth_deg: float, azimuth: bool
) -> FloatArray:
    """Return ITU-R F.1336-5 recommends 3.1.1 (400 MHz to 6 GHz), peak side lobes of a typical sectoral antenna in one principal plane.

    With x = angle/beamwidth, k_h = 0.8, k_v = k_p = 0.7 (read in public implementations, the Recommendation itself from memory).
    Azimuth: -12 x^2 to x = 0.5, beyond -12 x^(2 - k_h) - 3 (1 - 0.5^-k_h), never below G180.
    Elevation: -12 x^2 to x = sqrt(1 - 0.36 k_v), -12 + 10 log(x^-1.5 + k_v) to 4, then straight in log x to G180 at 90 deg.
    G180 = -12 + 10 log(1 + 8 k_p) - 15 log(180/elevation beamwidth), in both planes.
    """
    k_h, k_v, k_p, t3 = 0.8, 0.7, 0.7, beamwidth_deg
    x = np.abs(np.asarray(angle_deg, float)) / t3
    floor = -12.0 + 10.0 * np.log10(1.0 + 8.0 * k_p) - 15.0 * np.log10(180.0 / elevation_beamwidth_deg)
    if azimuth:
        wide = -12.0 * x ** (2.0 - k_h) - 3.0 * (1.0 - 0.5**-k_h)
        return np.asarray(peak_gain_dbi + np.maximum(np.where(x <= 0.5, -12.0 * x**2, wide), floor))
    lobes = -12.0 + 10.0 * np.log10(np.maximum(x, 1e-3) ** -1.5 + k_v)
    at_four = -12.0 + 10.0 * np.log10(4.0**-1.5 + k_v)
    last = 90.0 / t3
    share = np.log(np.maximum(x, 4.0) / 4.0) / np.log(max(last, 4.0001) / 4.0)
    tail = at_four + np.minimum(share, 1.0) * (floor - at_four)
    levels = np.select([x < np.sqrt(1.0 - 0.36 * k_v), x < 4.0, x < last], [-12.0 * x**2, lobes, tail], floor)
    return np.asarray(peak_gain_dbi + levels)


def itu_r_f_1336_sector_above_6_ghz(
    angle_deg: ArrayLike, *, peak_gain_dbi: float, beamwidth_deg: float, azimuth: bool
) -> FloatArray:
    """Return ITU-R F.1336-5 recommends 3.2.1 (6 to 70 GHz), peak side lobes of a sectoral antenna in one principal plane.

    With x = angle/beamwidth: -12 x^2 to x = 1, -12 - 15 log x beyond (read in a public implementation). In azimuth beyond 90 deg
    the curve was not read in the text itself: nan there, the mask is silent.
    """
    x = np.abs(np.asarray(angle_deg, float)) / beamwidth_deg
    levels = peak_gain_dbi + np.where(x < 1.0, -12.0 * x**2, -12.0 - 15.0 * np.log10(np.maximum(x, 1.0)))
    return np.where(azimuth & (x * beamwidth_deg > 90.0 + 1e-9), np.nan, levels)


#: Bands in GHz for which the forms of ITU-R F.1336 hold (its title: 400 MHz to about 70 GHz); sectoral antennas have one form up to
#: 6 GHz (recommends 3.1) and another one above (recommends 3.2).
F_1336_GHZ, F_1336_CHANGE_GHZ = (0.4, 70.0), 6.0


def _require_band(mask: Mask, frequency_hz: float) -> None:
    low, high = F_1336_GHZ if mask.formula.startswith("itu-r-f.1336") else (0.0, np.inf)
    if not low <= 1e-9 * frequency_hz <= high:
        raise InputError(
            [
                f"mask {mask.name!r}: formula = {mask.formula!r} at {1e-9 * frequency_hz:g} GHz: holds from {low:g} to {high:g} GHz; "
                "narrow band_ghz, or give the mask as a table of points"
            ]
        )


def elevation_beamwidth(mask: Mask, peak_gain_dbi: float) -> float:
    """Return a sectoral mask's half-power beamwidth in elevation, degrees; ITU-R F.1336-5 recommends 3.3 where it is not declared.

    31000 x 10^(-0.1 G0) / azimuth beamwidth, for azimuth beamwidths up to about 120 deg.

    Raises
    ------
    InputError
        If neither it nor the gain is known.
    """
    width = mask.beamwidth_deg or 0.0
    if mask.formula.endswith("elevation"):
        return width
    if mask.elevation_beamwidth_deg is not None:
        return mask.elevation_beamwidth_deg
    if not np.isfinite(peak_gain_dbi):
        raise InputError(
            [
                f"mask {mask.name!r}: elevation_beamwidth_deg: missing; the level behind the antenna follows from it (deg)"
            ]
        )
    return float(min(31000.0 * 10.0 ** (-0.1 * peak_gain_dbi) / width, 180.0))


def level_of(mask: Mask, angle_deg: FloatArray, *, frequency_hz: float, peak_gain_dbi: float) -> FloatArray:
    """Return a mask's level in dBi (relative masks: dB re the peak) at angles from the peak, -180 to 180; nan where it is silent.

    Published curves are in dBi: for a relative mask the peak gain is taken off them, the declared one or else the measured one.

    Raises
    ------
    InputError
        If the published curve does not hold at this frequency, or needs a gain that nobody knows; both are named.
    """
    if mask.formula == "table":
        known, level = (np.array(column) for column in zip(*mask.points, strict=True))
        where = np.abs(angle_deg) if known[0] >= 0.0 else angle_deg
        return np.asarray(np.interp(where, known, level, left=np.nan, right=np.nan))
    gain = peak_gain_dbi if mask.peak_gain_dbi is None else mask.peak_gain_dbi
    if mask.relative and not np.isfinite(gain):
        raise InputError(
            [
                f"mask {mask.name!r}: peak_gain_dbi: missing; {mask.formula} is in dBi, the mask relative to the peak (dBi)"
            ]
        )
    published = _published(mask, np.abs(angle_deg), frequency_hz=frequency_hz, gain=gain)
    return published - gain if mask.relative else published


def _published(mask: Mask, a: FloatArray, *, frequency_hz: float, gain: float) -> FloatArray:
    """Return a published curve in dBi at angles from the peak, degrees from 0 to 180."""
    _require_band(mask, frequency_hz)
    d = 0.0 if mask.diameter_mm is None else 1e-3 * mask.diameter_mm * frequency_hz / 299_792_458.0
    if mask.formula == "fcc-25.209":
        return fcc_25_209(a)
    if mask.formula == "itu-r-f.699":
        return itu_r_f_699(a, d_over_lambda=d, peak_gain_dbi=gain)
    if mask.formula == "itu-r-ra.1631":
        return itu_r_ra_1631(a, d_over_lambda=d)
    if mask.formula == "itu-r-s.465":
        return itu_r_s_465(a, d_over_lambda=d)
    if mask.formula == "itu-r-s.580":
        return itu_r_s_580(a, d_over_lambda=d)
    if mask.formula == "itu-r-f.1336-omni":
        return itu_r_f_1336_omni(a, peak_gain_dbi=gain, beamwidth_deg=mask.beamwidth_deg)
    width, azimuth = mask.beamwidth_deg or 0.0, mask.formula.endswith("azimuth")
    if 1e-9 * frequency_hz > F_1336_CHANGE_GHZ:
        return itu_r_f_1336_sector_above_6_ghz(a, peak_gain_dbi=gain, beamwidth_deg=width, azimuth=azimuth)
    return itu_r_f_1336_sector(
        a,
        peak_gain_dbi=gain,
        beamwidth_deg=width,
        elevation_beamwidth_deg=elevation_beamwidth(mask, gain),
        azimuth=azimuth,
    )
