"""Is the range long enough, and how large is the sphere that must be sampled?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from colure.geometry.conventions import wavelength


@dataclass(frozen=True)
class Reach:
    """Range adequacy at one frequency; lengths in metres, angles in degrees.

    far_field_m
        2 D^2 / lambda: edge phase error 22.5 deg (derivable; Hansen 1984 for its effects).
    reactive_m
        0.62 sqrt(D^3 / lambda): bound of the reactive field (Balanis sec. 4.4, from memory).
    edge_phase_deg
        Phase error at the device's edge at the actual range length.
    level_span_db
        Change of level over a turn because the device sits off the axes' crossing.
    """

    radius_m: float
    far_field_m: float
    reactive_m: float
    edge_phase_deg: float
    level_span_db: float
    parallax_deg: float
    verdict: str


def assess(*, range_length_m: float, reach_m: float, largest_m: float, frequency_hz: float) -> Reach:
    """Judge a range length for a device of front diagonal `largest_m`, turning radius `reach_m`."""
    lam = float(wavelength(frequency_hz))
    far = 2.0 * largest_m**2 / lam
    phase = 360.0 / lam * (np.hypot(range_length_m, largest_m / 2.0) - range_length_m)
    span = 20.0 * np.log10((range_length_m + reach_m) / (range_length_m - reach_m))
    parallax = np.rad2deg(np.arcsin(min(1.0, reach_m / range_length_m)))
    long_enough = range_length_m >= 10.0 * far and span < 0.1
    verdict = "direct" if long_enough else "near field to far field transform"
    reactive = 0.62 * np.sqrt(largest_m**3 / lam)
    return Reach(reach_m, far, float(reactive), float(phase), float(span), float(parallax), verdict)
