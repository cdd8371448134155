"""Radio-frequency exposure: power density against published limits. Advice, not a licence."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

#: Where the guideline ends (ICNIRP, Health Phys. 118:483-524, 2020: 100 kHz to 300 GHz).
HIGHEST_HZ = 300e9


@dataclass(frozen=True, kw_only=True)
class Exposure:
    """Power densities and limits in W/m^2, distances in metres."""

    eirp_dbm: float
    density_w_m2: float
    public_limit_w_m2: float
    occupational_limit_w_m2: float
    public_distance_m: float


def local_limits_w_m2(frequency_hz: float) -> tuple[float, float]:
    """Return (occupational, public) local reference levels in W/m^2, 6-minute average.

    ICNIRP, Health Phys. 118:483-524, 2020, Table 6: above 6 to 300 GHz 275/f^0.177 and
    55/f^0.177 with f in GHz; above 2 to 6 GHz 200 and 40 (section 9 of the standards sheet).
    Below that, with f in MHz, 0.29 f^0.86 and 0.058 f^0.86 from 400 MHz, 50 and 10 from 30 MHz
    (from memory; they meet at 400 MHz and 2 GHz). IEEE C95.1-2019 gives the same numbers above
    6 GHz for unrestricted environments, and 274.8/f^0.177 for restricted ones (from memory).

    Raises
    ------
    ValueError
        Outside 0.03 to 300 GHz.
    """
    f = frequency_hz / 1e9
    if not 0.03 <= f <= 300.0:
        raise ValueError(f"frequency: {f:g} GHz, exposure limits are known here from 0.03 to 300 GHz")
    if f < 0.4:
        return 50.0, 10.0
    if f <= 2.0:
        return 0.29 * (1e3 * f) ** 0.86, 0.058 * (1e3 * f) ** 0.86
    if f <= 6.0:
        return 200.0, 40.0
    return 275.0 / f**0.177, 55.0 / f**0.177


def whole_body_limits_w_m2(frequency_hz: float) -> tuple[float, float]:
    """Return (occupational, public) whole-body levels in W/m^2, 30-minute average.

    ICNIRP 2020 Table 5 (from memory): 50 and 10 above 2 GHz; f/40 and f/200 with f in MHz from
    400 MHz; 10 and 2 from 30 MHz.
    """
    f = frequency_hz / 1e6
    if f < 400.0:
        return 10.0, 2.0
    return (f / 40.0, f / 200.0) if f <= 2000.0 else (50.0, 10.0)


def assess_exposure(*, power_dbm: float, gain_dbi: float, distance_m: float, frequency_hz: float) -> Exposure:
    """Return the power density in the main beam at `distance_m` and where it meets the public limit.

    S = EIRP / (4 pi r^2); the stricter of the local and the whole-body public level counts. The guideline ends at 300 GHz:
    above that its value there is taken, and whoever shows it says so.
    """
    frequency_hz = min(frequency_hz, HIGHEST_HZ)
    eirp_dbm = power_dbm + gain_dbi
    eirp_w = 10.0 ** ((eirp_dbm - 30.0) / 10.0)
    occupational, public = local_limits_w_m2(frequency_hz)
    strict = min(public, whole_body_limits_w_m2(frequency_hz)[1])
    density = eirp_w / (4.0 * np.pi * distance_m**2)
    return Exposure(
        eirp_dbm=eirp_dbm,
        density_w_m2=density,
        public_limit_w_m2=strict,
        occupational_limit_w_m2=occupational,
        public_distance_m=float(np.sqrt(eirp_w / (4.0 * np.pi * strict))),
    )
