"""Figures held against what is possible and what was declared: what cannot be is said, and not to be used.

A wrong device at the right cable, a cable at the wrong device, a size in the wrong unit: the data are then clean, and every
interval is short. Only the declaration shows it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import cached_property
from typing import TYPE_CHECKING

import numpy as np

from colure.analysis.figures.sphere import Sky
from colure.analysis.findings.finding import Finding
from colure.analysis.findings.fit import fit_findings
from colure.analysis.findings.one_component import one_component_findings
from colure.analysis.findings.reference_level import LEVELS, horn_findings, unseen_findings
from colure.analysis.findings.slices import slice_findings
from colure.analysis.findings.stuck_switch import switch_findings
from colure.analysis.findings.wave_at_peak import NEEDED, StatedValue, readings, turn_findings, wave_findings
from colure.analysis.findings.zero_in_one_pass import zero_findings
from colure.analysis.steps.agreement import NOTHING_DB, level_db
from colure.geometry.conventions import SPEED_OF_LIGHT, FloatArray, amplitude_db, power_db, wavenumber
from colure.model.conditions import celsius, spans_of
from colure.model.figure import LOOK, NOT_TO_BE_USED, USABLE, Figure

if TYPE_CHECKING:
    from colure.analysis.pipeline.recipe import Processed
    from colure.model.chamber import Chamber
    from colure.model.device import Device

#: A gain that is farther from the declared one than this is looked at, and beyond that not to be used, dB.
GAIN_LOOK_DB, GAIN_WRONG_DB = 5.0, 10.0
#: The same for the level that the receiver reads at the peak.
LEVEL_LOOK_DB, LEVEL_WRONG_DB = 6.0, 12.0
#: A small housing radiates a little beyond the part that was declared: this much above the limit of its sphere is let pass, dB.
SPHERE_MARGIN_DB = 1.0
#: Strongest sweep over the noise, below which a search for maxima follows the noise, dB. Noise alone reads 10 to 15 dB, the
#: largest of thousands of sweeps; a true 9 dB reads 15 and a true 19 dB 22 (counted by simulation).
SNR_LOOK_DB, SNR_WRONG_DB = 25.0, 18.0
#: Frequencies at which the power within a region is looked at.
REGION_FREQUENCIES = 8


def sanity(processed: Processed, figures: Sequence[Figure] = ()) -> list[Finding]:
    """Return what cannot be, or is not as declared, worst first.

    figures
        With their intervals; without them a margin for the reference's gain alone is left.
    """
    device, chamber = processed.device, processed.chamber
    if device is None or chamber is None:
        return []
    read = _StatedFigures(figures, processed)
    findings = [
        *switch_findings(processed.budget.sweeps.record),
        *_level(processed, chamber, device),
        *_noise(processed),
        *_sphere(device, read),
        *_gain(device, read),
        *_efficiency(read),
        *_within_region(processed, read),
        *horn_findings(processed.transfer.reference_gain_dbi, processed.frequency_hz, chamber),
        *unseen_findings(read.of("efficiency_db"), chamber),
        *wave_findings(peak := {name: read.of(name) for name in NEEDED}, device),
        *turn_findings(peak, device),
        *slice_findings(processed, chamber),
        *fit_findings(processed, chamber, device),
        *one_component_findings(processed, chamber, device),
        *zero_findings(processed, chamber, device),
        *_complete(processed),
        *_conditions(processed),
    ]
    return sorted(findings, key=lambda one: one.rank)


def power_sanity(figures: Sequence[Figure], device: Device) -> list[Finding]:
    """Return what cannot be, or is not as declared, of figures that were read without phase."""
    read = _StatedFigures(figures, None)
    return [*_sphere(device, read), *_gain(device, read), *_efficiency(read)] if figures else []


def marked(figures: Sequence[Figure], findings: Sequence[Finding]) -> list[Figure]:
    """Return the figures with what is known against them."""
    return [_marked(figure, findings) for figure in figures]


def _marked(figure: Figure, findings: Sequence[Finding]) -> Figure:
    against = [
        one for one in findings if one.severity != "information" and (not one.figures or figure.name in one.figures)
    ]
    if not against or figure.reason:
        return figure
    use = NOT_TO_BE_USED if any(one.severity == NOT_TO_BE_USED for one in against) else LOOK
    return replace(figure, use=use, cautions=tuple(f"{one.severity}: {one.text}" for one in against))


def worst(figures: Sequence[Figure]) -> str:
    """Return the worst that is said of any figure."""
    uses = {figure.use for figure in figures}
    return next((one for one in (NOT_TO_BE_USED, LOOK) if one in uses), USABLE)


def expected_peak_db(chamber: Chamber, device: Device, frequency_hz: float) -> float:
    """Return the wave ratio that the receiver should read at the peak (H. T. Friis, Proc. IRE 34:254, 1946), dB."""
    loss = amplitude_db(4.0 * np.pi * chamber.range_length_m * frequency_hz / SPEED_OF_LIGHT)
    return float(device.expected_gain_dbi + chamber.probe.gain_dbi - loss - chamber.analyzer.cable_loss_db)


def most_directivity_dbi(device: Device, frequency_hz: float) -> float:
    """Return the directivity of all waves up to N = k r0, N^2 + 2 N (Harrington, Time-Harmonic Electromagnetic Fields,
    1961, section 6-12; from memory), r0 the radius of the smallest sphere about the device; never below N = 1."""  # fmt: skip
    n = max(1.0, float(wavenumber(frequency_hz)) * 0.5e-3 * float(np.linalg.norm(device.size_mm)))
    return float(power_db(n**2 + 2.0 * n))


def _level(processed: Processed, chamber: Chamber, device: Device) -> Iterator[Finding]:
    # The rms of all frequencies was read, and path loss goes with frequency: bands may lie far apart.
    alike = float(np.mean(processed.frequency_hz**-2.0) ** -0.5)
    read, wanted = processed.scan_peak_db, expected_peak_db(chamber, device, alike)
    if read is None or abs(read - wanted) <= LEVEL_LOOK_DB:
        return
    off = read - wanted
    text = (
        f"the receiver read {read:.1f} dB at the peak; the plan promised {wanted:.1f} dB ({off:+.1f} dB). Check device and cables, "
        "then gain, loss and distance in the files"
    )
    yield Finding("level", read, text, NOT_TO_BE_USED if abs(off) > LEVEL_WRONG_DB else "look")


def _noise(processed: Processed) -> Iterator[Finding]:
    peak = float(np.abs(processed.sphere.field).max())
    snr = -level_db(float(np.max(processed.budget.noise_sigma)) / peak)
    if snr >= SNR_LOOK_DB:
        return
    text = f"noise lies only {snr:.0f} dB below the peak: raise power_dbm, narrow if_bandwidth_hz or average, and measure again"
    yield Finding("signal to noise", -snr, text, NOT_TO_BE_USED if snr < SNR_WRONG_DB else "look")


class _StatedFigures:
    """Figures by name; their values alone, with a margin for the reference's gain, where no interval is known yet."""

    def __init__(self, figures: Sequence[Figure], processed: Processed | None) -> None:
        self._figures, self._processed = figures, processed
        self._names = tuple(one.name for one in figures) if processed is None else processed.budget.figures.names

    @property
    def level(self) -> str:
        """The figure that the size limits: gain where there is no directivity."""
        return "directivity_dbi" if "directivity_dbi" in self._names else "gain_dbi"

    @cached_property
    def _values(self) -> FloatArray:
        """Native values (frequency, figure), read once."""
        assert self._processed is not None  # else all that is known are figures
        return self._processed.budget.figures.values(self._processed.expansion)

    def of(self, name: str) -> list[StatedValue]:
        """Return (frequency, value, expanded uncertainty) of a figure wherever it exists."""
        known = readings(self._figures, name)
        if known or self._figures or name not in self._names:
            return known
        processed, index = self._processed, self._names.index(name)
        assert processed is not None
        display = processed.budget.figures.definitions[index].display
        values = [display(float(v)) for v in self._values[:, index]]
        margin = 0.5 if processed.chamber is None else processed.budget.chamber.reference.gain_uncertainty_db
        return [(float(f), v, margin) for f, v in zip(processed.frequency_hz, values, strict=True) if np.isfinite(v)]


def _sphere(device: Device, read: _StatedFigures) -> Iterator[Finding]:
    name, over = read.level, []
    for frequency, value, uncertainty in read.of(name):
        limit = most_directivity_dbi(device, frequency) + SPHERE_MARGIN_DB
        over.append((value - uncertainty - limit, value, limit, frequency))
    if not over or max(over)[0] <= 0.0:
        return
    _, value, limit, frequency = max(over)
    size = " x ".join(f"{x:g}" for x in device.size_mm)
    text = (
        f"{name.split('_', maxsplit=1)[0]} {value:.1f} dBi at {frequency / 1e9:.3f} GHz: nothing within {size} mm gives more than {limit:.1f} dBi "
        "(N^2 + 2 N, N = k r0). Correct size_mm in device.toml and measure again: grid and filter were made for a smaller device"
    )
    yield Finding("size", NOTHING_DB, text, NOT_TO_BE_USED)


def _gain(device: Device, read: _StatedFigures) -> Iterator[Finding]:
    off = [
        (np.sign(v - device.expected_gain_dbi) * max(0.0, abs(v - device.expected_gain_dbi) - u), v, f)
        for f, v, u in read.of("gain_dbi")
    ]
    if not off:
        return
    most = max(off, key=lambda one: abs(one[0]))
    if abs(most[0]) <= GAIN_LOOK_DB:
        return
    text = (
        f"gain {most[1]:.1f} dBi at {most[2] / 1e9:.3f} GHz, device.toml expects {device.expected_gain_dbi:g} dBi: another device or "
        "polarization, a fault, or a wrong declaration"
    )
    yield Finding("gain", NOTHING_DB, text, NOT_TO_BE_USED if abs(most[0]) > GAIN_WRONG_DB else "look")


def _efficiency(read: _StatedFigures) -> Iterator[Finding]:
    # Three standard uncertainties: of lossless devices two would be called wrong in one of forty cases.
    over = [(v - 1.5 * u, v, f) for f, v, u in read.of("efficiency_db") if v - 1.5 * u > 0.0]
    if not over:
        return
    _, value, frequency = max(over)
    text = (
        f"efficiency {value:+.2f} dB at {frequency / 1e9:.3f} GHz: more than 100 %, beyond its uncertainty. Look at the reference: its gain, "
        "its cable, its place"
    )
    yield Finding("efficiency", NOTHING_DB, text, NOT_TO_BE_USED, LEVELS)


def _within_region(processed: Processed, read: _StatedFigures) -> Iterator[Finding]:
    """Say where the measured part of the sphere alone radiates more than the device accepts."""
    sphere, gains = processed.sphere, read.of("gain_dbi")
    if sphere.whole or "efficiency_db" in processed.budget.figures.names:
        return
    region, over = float(np.deg2rad(sphere.region_deg)), []
    frequencies = list(processed.frequency_hz)
    for frequency, _, uncertainty in gains[:: max(1, len(gains) // REGION_FREQUENCIES)]:
        sky = Sky.of(processed.expansion.coefficients[frequencies.index(frequency)])
        share_db = float(power_db(sky.power_between(0.0, region) / (4.0 * np.pi)))
        if share_db - 1.5 * uncertainty > 0.0:
            over.append((share_db, frequency))
    if not over:
        return
    share_db, frequency = max(over)
    text = (
        f"the measured {sphere.region_deg:g} deg about the boresight alone radiate {share_db:+.2f} dB of the power that the device accepts, at "
        f"{frequency / 1e9:.3f} GHz: more than 100 %, beyond its uncertainty. Look at the reference: its gain, its cable, its place"
    )
    yield Finding("efficiency", NOTHING_DB, text, NOT_TO_BE_USED, LEVELS)


def _complete(processed: Processed) -> Iterator[Finding]:
    completeness = processed.completeness
    if completeness is None or completeness.whole:
        return
    text = (
        completeness.text
        + '; the budget\'s row "slice aliasing" holds what the missing ones may change' * completeness.thinned
    )
    yield Finding("incomplete", NOTHING_DB, text, "look")


def _conditions(processed: Processed) -> Iterator[Finding]:
    """Say what sensors were lost, and how far the air's temperature moved."""
    spans = spans_of(processed.budget.sweeps.record)
    for one in spans:
        if one.lost > 0.0:
            yield Finding(
                "sensor lost", NOTHING_DB,
                f"sensor {one.name} was lost at {100.0 * one.lost:.0f} % of the points: its values there are not known",
            )  # fmt: skip
    air_celsius = celsius(spans)
    if air_celsius is not None:
        yield Finding(
            "air", NOTHING_DB, f"the air had {air_celsius[0]:.1f} to {air_celsius[1]:.1f} deg C at the measured points"
        )
