"""Radio-frequency exposure: power density against published limits. Advice, not a licence."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np


@dataclass(frozen=True)
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
    Below 2 GHz, where limits depend on the field type, the lower bounds of that row's
    neighbour are not printed there: ValueError.
    """
    f = frequency_hz / 1e9
    if not 2.0 < f <= 300.0:
        raise ValueError(f"frequency: {f:g} GHz, exposure limits are tabled above 2 to 300 GHz")
    if f <= 6.0:
        return 200.0, 40.0
    return 275.0 / f**0.177, 55.0 / f**0.177


def whole_body_public_w_m2() -> float:
    """Return the public whole-body level, 30-minute average: 10 W/m^2 (ICNIRP 2020 Table 5, from memory)."""
    return 10.0


def assess_exposure(*, power_dbm: float, gain_dbi: float, distance_m: float, frequency_hz: float) -> Exposure:
    """Return the power density in the main beam at `distance_m` and where it meets the public limit.

    S = EIRP / (4 pi r^2); the stricter of the local and the whole-body public level counts.
    """
    eirp_dbm = power_dbm + gain_dbi
    eirp_w = 10.0 ** ((eirp_dbm - 30.0) / 10.0)
    occupational, public = local_limits_w_m2(frequency_hz)
    strict = min(public, whole_body_public_w_m2())
    density = eirp_w / (4.0 * np.pi * distance_m**2)
    return Exposure(eirp_dbm, density, strict, occupational, float(np.sqrt(eirp_w / (4.0 * np.pi * strict))))
