"""Is the range long enough, and how large is the sphere that must be sampled?"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from colure.geometry.conventions import FloatArray, amplitude_db, wavelength


@dataclass(frozen=True, kw_only=True)
class Reach:
    """Range adequacy at one frequency; lengths in metres, angles in degrees.

    far_field_m
        2 D^2 / lambda: edge phase error 22.5 deg (derivable; Hansen 1984 for its effects).
    reactive_m
        0.62 sqrt(D^3 / lambda): bound of the reactive field (Balanis sec. 4.4, from memory).
    edge_phase_deg
        Phase error at the device's edge at the actual range length.
    level_span_db
        Change of level over a turn because the device sits off the axes' intersection.
    parallax_deg
        How far off the probe's axis the rim of the turning sphere is seen at most.
    taper_db
        Probe taper over the device: level at the rim of the turning sphere below that at its centre.
    side_lobe_m
        Beyond this a side lobe at the wanted level is right to 1 dB without a transform.
    nearest_m
        Below this the probe stands among waves that a transform cannot take back.
    """

    radius_m: float
    far_field_m: float
    reactive_m: float
    edge_phase_deg: float
    level_span_db: float
    parallax_deg: float
    taper_db: float
    side_lobe_m: float
    nearest_m: float
    verdict: str


#: What may be left uncorrected in a direct measurement, dB (common practice, no source).
NEGLIGIBLE_DB = 0.1
#: Verdicts, from the plainest processing to the most.
DIRECT = "direct"
CORRECTED = "direct with distance correction"
TRANSFORM = "near field to far field transform"


def assess(
    *,
    range_length_m: float,
    reach_m: float,
    largest_m: float,
    frequency_hz: float,
    probe_gain_dbi: float = 0.0,
    wanted_level_db: float = -40.0,
    order: int | None = None,
) -> Reach:
    """Judge a range length for a device of front diagonal `largest_m`, turning radius `reach_m`.

    Parameters
    ----------
    wanted_level_db
        Side-lobe level that should come out right; from -40 to -20 dB is what a line source answers.
    order
        Order of the device's waves, for the nearest distance; k r0 + 10 by default.
    """
    lam = float(wavelength(frequency_hz))
    far = 2.0 * largest_m**2 / lam
    phase = 360.0 / lam * (np.hypot(range_length_m, largest_m / 2.0) - range_length_m)
    span = float(amplitude_db((range_length_m + reach_m) / (range_length_m - reach_m)))
    parallax = np.arcsin(min(1.0, reach_m / range_length_m))
    taper = taper_db(probe_gain_dbi, float(parallax))
    lobe = distance_for_side_lobe(
        largest_m=largest_m,
        frequency_hz=frequency_hz,
        side_lobe_db=float(np.clip(wanted_level_db, -40.0, -20.0)),
        error_db=1.0,
    )
    if range_length_m < max(far, lobe):
        verdict = TRANSFORM
    else:
        verdict = DIRECT if max(span, taper) < NEGLIGIBLE_DB else CORRECTED
    k = 2.0 * np.pi / lam
    waves = k * reach_m + 10.0 if order is None else order
    # Beyond the highest wave's caustic, with room for a separating sphere, and off the device itself.
    nearest = max((waves + 2.0) / k / 0.85, reach_m + lam)
    return Reach(
        radius_m=reach_m,
        far_field_m=far,
        reactive_m=float(0.62 * np.sqrt(largest_m**3 / lam)),
        edge_phase_deg=float(phase),
        level_span_db=float(span),
        parallax_deg=float(np.rad2deg(parallax)),
        taper_db=taper,
        side_lobe_m=lobe,
        nearest_m=float(nearest),
        verdict=verdict,
    )


def taper_db(gain_dbi: float, angle: float) -> float:
    """Return how far a probe's pattern has fallen at `angle` (radians) off its axis, dB.

    A Gaussian beam of gain G falls as exp(-G angle^2 / 4) in power: its integral over the sphere
    is then 4 pi / G (derivable; common practice for small angles).
    """
    return float(10.0 / np.log(10.0) * 10.0 ** (gain_dbi / 10.0) * angle**2 / 4.0)


def distance_for_edge_phase(*, largest_m: float, frequency_hz: float, edge_phase_deg: float) -> float:
    """Return the range length (m) at which a flat aperture's edge lags by `edge_phase_deg`.

    sqrt(R^2 + D^2/4) - R = lambda phase / 360, solved for R; 22.5 deg gives 2 D^2/lambda less
    lambda/32 (derivable; section 3 of the standards sheet).
    """
    late = float(wavelength(frequency_hz)) * edge_phase_deg / 360.0
    return largest_m**2 / (8.0 * late) - 0.5 * late


def line_pattern(weights: FloatArray, u: FloatArray, ratio: float) -> FloatArray:
    """Return |field| of a line source over u = (D/lambda) sin(theta) at `ratio` times 2 D^2/lambda.

    A finite range adds the phase pi/8/ratio x^2 over the aperture x = -1..1; trapezoid over
    the (odd number of) equidistant weights. Normalized to the in-phase sum.
    """
    x = np.linspace(-1.0, 1.0, weights.size)
    share = np.where((x == -1.0) | (x == 1.0), 0.5, 1.0) * weights
    bent = share * np.exp(-1j * np.pi / 8.0 / ratio * x**2) if np.isfinite(ratio) else share.astype(complex)
    return np.asarray(np.abs(np.exp(1j * np.pi * np.outer(u, x)) @ bent) / share.sum())


def axial_loss_db(ratio: float, *, dimensions: int = 1) -> float:
    """Return what a uniform aperture loses on axis at `ratio` times 2 D^2/lambda.

    `dimensions` 1: line (D its length); 2: square measured at 2 D^2/lambda of its side. Section
    3 of the standards sheet: 0.0596 dB for the line at 1, 0.119 dB for the square.
    """
    return float(-20.0 * dimensions * np.log10(line_pattern(np.ones(2001), np.zeros(1), ratio)[0]))


def first_side_lobe_db(weights: FloatArray, ratio: float) -> float:
    """Return the first side lobe of a line source in dB below its peak at `ratio` times 2 D^2/lambda."""
    u = np.linspace(0.0, 6.0, 401)
    far = line_pattern(weights, u, np.inf)
    # Between the far-field nulls, where the lobe may have turned into a shoulder of the main beam.
    nulls = np.flatnonzero((far[1:-1] < far[:-2]) & (far[1:-1] <= far[2:])) + 1
    level = line_pattern(weights, u[: nulls[1]], ratio)
    lobe = level[nulls[0] :]
    best = int(np.argmax(lobe))
    if 0 < best < lobe.size - 1:
        # The top of the parabola through the three highest samples.
        left, middle, right = lobe[best - 1 : best + 2]
        lobe_top = middle + (right - left) ** 2 / (8.0 * (2.0 * middle - left - right))
    else:
        lobe_top = lobe[best]
    return float(amplitude_db(lobe_top / level.max()))


def taylor_weights(count: int, side_lobe_db: float) -> FloatArray:
    """Return the equidistant weights of a Taylor line source over its aperture, largest 1.

    T. T. Taylor, IRE Trans. Antennas Propag. AP-3:16-28, 1955; as written in C. A. Balanis,
    Antenna Theory, section 7.6.3 (from memory; the tests compare with an independent library).
    """
    nbar = max(3, int(np.ceil(-side_lobe_db / 5.0)))
    a = np.arccosh(10.0 ** (-side_lobe_db / 20.0)) / np.pi
    n = np.arange(1, nbar)
    sigma2 = nbar**2 / (a**2 + (nbar - 0.5) ** 2)
    terms = np.empty(n.size)
    for place, m in enumerate(n):
        others = n[n != m]
        zeros = np.prod(1.0 - m**2 / (sigma2 * (a**2 + (n - 0.5) ** 2)))
        terms[place] = 0.5 * (-1.0) ** (m + 1) * zeros / np.prod(1.0 - m**2 / others**2)
    x = np.linspace(-1.0, 1.0, count)
    weights = 1.0 + 2.0 * np.cos(np.pi * np.outer(x, n)) @ terms
    return np.asarray(weights / weights.max())


@lru_cache(maxsize=64)
def distance_for_side_lobe(*, largest_m: float, frequency_hz: float, side_lobe_db: float, error_db: float) -> float:
    """Return the range length (m) at which a first side lobe of a given level is off by `error_db` at most.

    A Taylor line source with that side-lobe level stands for the device (T. T. Taylor, IRE
    Trans. Antennas Propag. AP-3:16-28, 1955). Low side lobes need far more than 2 D^2/lambda.

    Raises
    ------
    ValueError
        If the level is not from -60 to -13.3 dB.
    """
    if not -60.0 <= side_lobe_db <= -13.3:
        raise ValueError(f"side lobe: {side_lobe_db:g} dB, must be from -60 to -13.3 dB")
    weights = taylor_weights(101, side_lobe_db)
    far = first_side_lobe_db(weights, np.inf)

    def excess(log_ratio: float) -> float:
        return abs(first_side_lobe_db(weights, float(np.exp(log_ratio))) - far) - error_db

    low, high = np.log(0.2), np.log(300.0)
    if excess(low) <= 0.0:
        high = low
    # The error falls steadily with distance: halving the interval 12 times leaves 0.2 % of it.
    for _ in range(12):
        middle = 0.5 * (low + high)
        low, high = (middle, high) if excess(middle) > 0.0 else (low, middle)
    ratio = float(np.exp(high))
    return ratio * 2.0 * largest_m**2 / float(wavelength(frequency_hz))
