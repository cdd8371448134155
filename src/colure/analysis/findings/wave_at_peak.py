"""The wave at the peak held against the polarization that device.toml declares.

A circular device declared linear, the other hand, a device that stands turned: data, gain and intervals are right then, and
every co- and cross-polar level is of a component that nobody meant. A mask on it would pass a device that is too strong.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from colure.analysis.figures.cuts import CIRCULAR_BELOW_DB, FORWARD_DEG, LINEAR_DB, TILT_DEG, in_hand
from colure.analysis.findings.finding import Finding
from colure.analysis.steps.agreement import NOTHING_DB
from colure.geometry.conventions import amplitude_db
from colure.model.components import NAMES
from colure.model.figure import NOT_TO_BE_USED

if TYPE_CHECKING:
    from colure.model.device import Device
    from colure.model.figure import Figure

StatedValue = tuple[float, float, float]
TOPIC = "polarization"
#: Beyond this axial ratio a device that is declared circular radiates no circular wave at all, dB (common practice, no source).
NOT_CIRCULAR_DB = 20.0
#: A turn that is less than this is let pass, degrees: a cross-polarization of -32 dB. What scatters over frequency, or is out of phase, by more
#: than this share of it is no turn, and fewer frequencies do not tell (common practice, no source).
LEAST_TURN_DEG, FLAT, LEAST_FLAT = 1.5, 0.25, 3
#: Figures that count from the declared direction, and those that count from a hand.
FROM_DIRECTION = ("xpd_db", "xpd_worst_db")
TURNED = (*FROM_DIRECTION, "tilt_deg")
FROM_HAND = (*NAMES["circular"], "xpd_circular_db")
NEEDED = ("circularity", "tilt_deg", "beam_azimuth_deg", "beam_elevation_deg")


@dataclass(frozen=True, kw_only=True)
class _PeakWave:
    """The wave at the peak at one frequency.

    sense in -1 .. 1 (right-hand above 0); tilt_deg from the declared direction and its expanded uncertainty.
    """

    frequency_hz: float
    sense: float
    tilt_deg: float
    tilt_u_deg: float

    @property
    def axial_ratio_db(self) -> float:
        """Major over minor axis, dB; infinite where the wave is linear."""
        minor = abs(np.tan(0.5 * np.arcsin(np.clip(self.sense, -1.0, 1.0))))
        return float(-amplitude_db(minor)) if minor > 0.0 else float("inf")


def wave_findings(read: Mapping[str, Sequence[StatedValue]], device: Device) -> list[Finding]:
    """Return what the wave at the peak says against the declaration, where it does so at every frequency; else nothing.

    Beams more than 60 deg from +z say nothing: Ludwig's vectors turn about -z, and many devices radiate the other hand there.

    read
        (frequency in Hz, value, expanded uncertainty) of the figures `NEEDED`, by name, in rising order of frequency.
    """
    texts = [_against(one, device) for one in _waves(read)]
    if not texts or not all(texts):
        return []
    if not device.hand:
        return [Finding(TOPIC, NOTHING_DB, texts[len(texts) // 2], "look", FROM_DIRECTION)]
    # A ratio of the stronger hand to the weaker one would pass the wrong hand.
    return [Finding(TOPIC, NOTHING_DB, texts[len(texts) // 2], NOT_TO_BE_USED, FROM_HAND)]


def turn_findings(read: Mapping[str, Sequence[StatedValue]], device: Device) -> list[Finding]:
    """Return that the cross-polarization at the peak is that of a turn: in phase with the co-polar field, and the same at every frequency.

    What `wave_findings` speaks against is no turn; `read` as there.
    """
    waves = [] if wave_findings(read, device) else _waves(read)
    if device.hand or len(waves) < LEAST_FLAT:
        return []
    tilt = np.array([one.tilt_deg for one in waves])
    middle = float(np.median(tilt))
    # Of a minor axis b over a: the part of the cross-polarization that a turn does not explain.
    out_of_phase = np.rad2deg(max(10.0 ** (-one.axial_ratio_db / 20.0) for one in waves))
    surely = abs(middle) - max(one.tilt_u_deg for one in waves)
    if surely < LEAST_TURN_DEG or max(np.ptp(tilt), out_of_phase) > FLAT * abs(middle):
        return []
    text = (
        f"the cross-polarization at the peak is that of a turn by {middle:+.1f} deg from slant_deg = {device.slant_deg:g}, the same at every frequency. "
        "Nobody can tell from this run whether the device radiates so, stands turned, or slipped between two passes; XPD and tilt hold the turn. "
        "Level device, horn and probe and measure again, or correct slant_deg in device.toml"
    )
    return [Finding(TOPIC, NOTHING_DB, text, "look", TURNED)]


def readings(figures: Sequence[Figure], name: str) -> list[StatedValue]:
    """Return (frequency in Hz, value, expanded uncertainty) of a figure wherever it exists."""
    return [
        (one.frequency_hz, one.value, one.expanded_uncertainty)
        for one in figures
        if one.name == name and not one.reason
    ]


def wave_doubt(figures: Sequence[Figure], device: Device | None) -> str:
    """Return why co- and cross-polar levels are not of what the device was declared to radiate; empty if they are."""
    if device is None:
        return ""
    against = wave_findings({name: readings(figures, name) for name in NEEDED}, device)
    return against[0].text if against else ""


def pair_findings(
    pairs: Sequence[tuple[float, complex, complex]], device: Device, names: Sequence[str]
) -> list[Finding]:
    """Return what single pairs of components say against the declared sense of rotation, where all of them do; else nothing.

    A pair has no direction of its own: it may be along any offset of the probe, and says nothing of the declared slant.

    pairs
        (frequency in Hz, co, cross) of a right-handed pair at the peak of each cut.
    names
        Of the figures that were read.
    """
    texts = []
    for frequency, co, cross in pairs:
        right, left = (float(abs(one)) ** 2 for one in in_hand(np.asarray(co), np.asarray(cross), 1))
        sense = (right - left) / max(right + left, 1e-300)
        texts.append(_against(_PeakWave(frequency_hz=frequency, sense=sense, tilt_deg=0.0, tilt_u_deg=0.0), device))
    if not texts or not all(texts):
        return []
    ends = FROM_HAND if device.hand else (*FROM_DIRECTION, "cross_peak_db")
    about = tuple(name for name in names if name.endswith(ends))
    return [Finding(TOPIC, NOTHING_DB, texts[len(texts) // 2], NOT_TO_BE_USED if device.hand else "look", about)]


def _waves(read: Mapping[str, Sequence[StatedValue]]) -> list[_PeakWave]:
    """Return the waves of all frequencies; none where one of them is not known, or points away from +z."""
    tables = [read[name] for name in NEEDED]
    if len({tuple(frequency for frequency, _, _ in table) for table in tables}) != 1:
        return []
    waves = []
    for sense, tilt, azimuth, elevation in zip(*tables, strict=True):
        forward = np.cos(np.deg2rad(azimuth[1])) * np.cos(np.deg2rad(elevation[1]))
        if forward < np.cos(np.deg2rad(FORWARD_DEG)):
            return []
        waves.append(_PeakWave(frequency_hz=sense[0], sense=sense[1], tilt_deg=tilt[1], tilt_u_deg=tilt[2]))
    return waves


def _against(wave: _PeakWave, device: Device) -> str:
    """Return what one wave says against the declaration; empty where it is as declared."""
    ghz, ratio, declared = wave.frequency_hz / 1e9, wave.axial_ratio_db, device.polarization
    measured = "right" if wave.sense > 0.0 else "left"
    hand = f"{measured}-hand"
    if device.hand and ratio > NOT_CIRCULAR_DB:
        return (
            f"the wave at the peak is linear (axial ratio {ratio:.1f} dB at {ghz:.3f} GHz); device.toml declares polarization = '{declared}': "
            "levels of a hand are of half its power. Set polarization = 'linear' and slant_deg, or look whether the device is the "
            "declared one"
        )
    if device.hand and wave.sense * device.hand < 0.0:
        return (
            f"the wave at the peak is {hand} (axial ratio {ratio:.1f} dB at {ghz:.3f} GHz); device.toml declares polarization = "
            f"'{declared}': co-polar levels are of the weaker hand. Correct polarization, or look at the sign of the probe's roll and at its ports"
        )
    if declared == "linear" and ratio < CIRCULAR_BELOW_DB:
        return (
            f"the wave at the peak is {hand} circular (axial ratio {ratio:.1f} dB at {ghz:.3f} GHz); device.toml declares polarization = "
            f"'{declared}': co- and cross-polar levels are two linear parts, each of half its power. Set polarization = '{measured}'"
        )
    if not device.hand and ratio > LINEAR_DB and abs(wave.tilt_deg) - wave.tilt_u_deg > TILT_DEG:
        return (
            f"the wave at the peak lies {wave.tilt_deg:+.1f} deg from slant_deg = {device.slant_deg:g} at {ghz:.3f} GHz: co- and cross-polar "
            "levels are along the declared direction. Correct slant_deg in device.toml, or look whether the device stands turned"
        )
    return ""
