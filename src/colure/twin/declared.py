"""The simulated device where twin.toml holds none: what device.toml declares, no better and no worse.

Huygens sources fill the declared size (or sit on the declared element grid). How they are lit, what they lose and how
much they radiate backwards follow from the expected gain, cross-polarization and front-to-back ratio.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from colure.geometry.conventions import FloatArray
from colure.model.device import Device
from colure.twin.antennas import huygens
from colure.twin.sources import Cluster

LIGHT = 299_792_458.0
#: Amplitude along each side as printed panels have it: 1 - taper + taper cos(pi u / width).
TAPER = 0.45
#: A feed network loses about so much; where that taper leaves more or less to lose, the illumination changes.
USUAL_LOSS_DB, LEAST_LOSS_DB, MOST_LOSS_DB = 1.1, 0.3, 3.0
#: Lit more at the rim (negative) or in the middle: a further exp(-c u^2) along each side, u from -1 to 1.
FLATTEST, NARROWEST = -1.5, 6.0
#: Below this size in wavelengths a side holds one source, below the other one three, up to the edges.
ONE_SOURCE, THREE_SOURCES = 0.25, 1.5
#: Random errors of every source, rms of each part.
ERROR = 0.03
#: Directivity of one Huygens source in dBi: 3 (derivable).
HUYGENS_DBI = 4.77
#: Most sources whose directivity is summed exactly for every trial of the illumination.
SUMMED_EACH_TIME = 150


@dataclass(frozen=True, kw_only=True)
class Make:
    """What the expected figures come down to."""

    narrowness: float
    magnetic_ratio: float
    efficiency_db: float


def wanted_moment(device: Device) -> tuple[complex, complex]:
    """Return the (x, y) unit vector of the device's polarization towards +z."""
    sense = None if device.polarization == "linear" else device.polarization
    return elliptical(
        tilt=float(np.deg2rad(device.slant_deg)),
        axial_ratio_db=None if sense is None else device.axial_ratio_db or 0.0,
        right=sense != "left",
    )


def elliptical(*, tilt: float, axial_ratio_db: float | None, right: bool) -> tuple[complex, complex]:
    """Return the (x, y) unit vector of a polarization towards +z; linear without an axial ratio.

    Right-handed (IEEE Std 145, e^{+jwt}): the part 90 deg from the major axis lags by a quarter period.
    """
    cos, sin = float(np.cos(tilt)), float(np.sin(tilt))
    if axial_ratio_db is None:
        return complex(cos), complex(sin)
    ratio = 10.0 ** (axial_ratio_db / 20.0)
    minor = (-1j if right else 1j) / np.hypot(1.0, ratio)
    major = ratio / np.hypot(1.0, ratio)
    return complex(major * cos - minor * sin), complex(major * sin + minor * cos)


def stand_in(device: Device, frequency_hz: FloatArray, *, band_hz: FloatArray, seed: int = 24) -> Cluster:
    """Return a sound device as declared: Huygens sources over its size or on its element grid.

    band_hz
        All frequencies of the plan: the device disperses over its band, whichever part is asked for.
    seed
        Draws the sources' small random errors.
    """
    f, band = np.asarray(frequency_hz, float), np.asarray(band_hz, float)
    make = _make(device, float(np.mean(band)), float(band.max()))
    offset = (f - np.mean(band)) / max(0.125e9, 0.5 * float(np.ptp(band)))
    sound = _cluster(device, f, float(band.max()), make, np.random.default_rng(seed))
    half = max(float(np.ptp(sound.position[:, 0])) / 2.0, 1e-9)
    slope = np.deg2rad(6.0) * offset[:, None] * (sound.position[None, :, 0] / half)
    efficiency = 10 ** ((make.efficiency_db - 0.15 * offset**2) / 10.0)
    place = sound.position + 1e-3 * np.asarray(device.offset_mm)
    return Cluster(f, place, sound.electric, sound.magnetic, sound.weights * np.exp(1j * slope), efficiency)


def _sides(device: Device, highest_hz: float) -> tuple[FloatArray, FloatArray]:
    """Return the places of the sources along x and y, metres from the middle."""
    if device.elements is not None:
        pitch = 1e-3 * device.elements.pitch_mm
        counts = (device.elements.columns, device.elements.rows)
        x, y = ((np.arange(n) - (n - 1) / 2) * pitch for n in counts)
        return np.asarray(x), np.asarray(y)
    half_wave = 0.5 * LIGHT / highest_hz
    places = list[FloatArray]()
    for size in (1e-3 * side for side in device.size_mm[:2]):
        if size < 2.0 * ONE_SOURCE * half_wave:
            places.append(np.zeros(1))
        elif size < 2.0 * THREE_SOURCES * half_wave:
            places.append(np.linspace(-size / 2, size / 2, 3))
        else:
            count = round(size / half_wave)
            places.append(np.asarray((np.arange(count) - (count - 1) / 2) * (size / count)))
    return places[0], places[1]


def _cluster(
    device: Device, f: FloatArray, highest_hz: float, make: Make, random: np.random.Generator | None
) -> Cluster:
    """Return the sources about their own middle; without random errors if there is no generator."""
    sides = _sides(device, highest_hz)
    along_x, along_y = (_lit(place, make.narrowness) for place in sides)
    y, x = (grid.ravel() for grid in np.meshgrid(sides[1], sides[0], indexing="ij"))
    excitation = np.outer(along_y, along_x).ravel().astype(complex)
    level = 10.0 ** (-device.expected_xpd_db / 20.0)
    cross = np.full(x.size, 1j * level)
    if random is not None:
        errors = random.normal(size=(4, x.size))
        excitation *= 1.0 + ERROR * (errors[0] + 1j * errors[1])
        # An array averages its elements' cross-polarization; a single source keeps what it is declared to have.
        share = 0.6 if x.size > 1 else 0.1
        cross = cross + share * level * (errors[2] + 1j * errors[3])
    electric, magnetic = huygens(wanted_moment(device), cross, make.magnetic_ratio)
    position = np.stack([x, y, np.zeros_like(x)], axis=-1)
    weights = np.broadcast_to(excitation, (f.size, x.size)).copy()
    return Cluster(f, position, electric, magnetic, weights, np.ones_like(f))


@lru_cache(maxsize=64)
def _make(device: Device, centre_hz: float, highest_hz: float) -> Make:
    """Find the illumination and the loss that give the expected gain, as far as the declared size can give it."""
    f = np.array([centre_hz])
    front = 10.0 ** (device.expected_front_to_back_db / 20.0)
    ratio = (front - 1.0) / (front + 1.0)
    sides = _sides(device, highest_hz)
    count = sides[0].size * sides[1].size
    wanted_dbi = device.expected_gain_dbi + USUAL_LOSS_DB

    def directivity_dbi(narrowness: float, magnetic_ratio: float = ratio) -> float:
        made = _cluster(
            device, f, highest_hz, Make(narrowness=narrowness, magnetic_ratio=magnetic_ratio, efficiency_db=0.0), None
        )
        return float(10.0 * np.log10(np.sum(np.abs(made.far_field([[0.0, 0.0, 1.0]])) ** 2)))

    narrowness = 0.0
    if wanted_dbi < HUYGENS_DBI:
        # 1.5 (1 + r)^2 / (1 + r^2): from a dipole's 1.76 dBi to a Huygens source's 4.77 dBi.
        narrowness = NARROWEST
        ratio = _root(lambda r: directivity_dbi(NARROWEST, r) - wanted_dbi, 0.0, ratio)
    elif LEAST_LOSS_DB <= directivity_dbi(0.0) - device.expected_gain_dbi <= MOST_LOSS_DB:
        pass
    elif count <= SUMMED_EACH_TIME:
        # A few sources add up to most when the outer ones are strongest, many when all are alike.
        best = max(np.linspace(FLATTEST, 0.0, 6), key=directivity_dbi)
        narrowness = _root(lambda c: wanted_dbi - directivity_dbi(c), float(best), NARROWEST)
    else:
        known = directivity_dbi(0.0) - _taper_db(sides, 0.0)
        narrowness = _root(lambda c: wanted_dbi - known - _taper_db(sides, c), -0.5, NARROWEST)
    loss_db = directivity_dbi(narrowness, ratio) - device.expected_gain_dbi
    return Make(narrowness=narrowness, magnetic_ratio=ratio, efficiency_db=-max(0.0, loss_db))


def _lit(place: FloatArray, narrowness: float) -> FloatArray:
    """Return the amplitudes along one side."""
    half = max(float(np.abs(place).max()), 1e-9)
    width = 2.0 * half * place.size / max(place.size - 1, 1)
    taper = (1.0 - TAPER) + TAPER * np.cos(np.pi * place / width)
    return np.asarray(taper * np.exp(-narrowness * (place / half) ** 2))


def _root(rising: Callable[[float], float], low: float, high: float) -> float:
    """Return where a rising function is zero, or the end that it comes nearest at."""
    from scipy.optimize import brentq

    if rising(low) >= 0.0:
        return low
    if rising(high) <= 0.0:
        return high
    return float(brentq(rising, low, high, xtol=1e-4))


def _taper_db(sides: tuple[FloatArray, FloatArray], narrowness: float) -> float:
    """Return the aperture efficiency of an illumination: |sum w|^2 over n sum w^2, in dB."""
    total = 0.0
    for place in sides:
        w = _lit(place, narrowness)
        total += 10.0 * np.log10(w.sum() ** 2 / (w.size * np.sum(w**2)))
    return float(total)
