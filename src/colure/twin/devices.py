"""The simulated device under test: table `[device]` of twin.toml, or what device.toml declares, as elementary dipoles.

Every place that radiates or judges the simulated device builds it here.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import numpy as np

from colure.errors import InputError
from colure.geometry.conventions import ComplexArray, FloatArray
from colure.geometry.rotations import RigidMotion
from colure.model.campaign import Campaign
from colure.model.chamber import SimulatedChamber
from colure.model.device import Device
from colure.model.simulated_device import (
    PolarizedAntenna,
    SimulatedAntenna,
    SimulatedAperture,
    SimulatedCrossedDipoles,
    SimulatedDipole,
    SimulatedDipoles,
    SimulatedHelix,
    SimulatedHorn,
    SimulatedPanel,
    SimulatedPatch,
)
from colure.twin.antennas import PanelFlaws, PanelMake, panel
from colure.twin.apertures import HornFlaws, Sheet, disc, flared_horn, patch, rectangle, rough, steering
from colure.twin.declared import elliptical, stand_in
from colure.twin.source_table import read_sources
from colure.twin.sources import Cluster
from colure.twin.states import in_state, responses_of
from colure.twin.wires import crossed_dipoles, dipole, helix, joined

LIGHT = 299_792_458.0
#: A patch of usual make, in wavelengths: distance of its radiating edges (short of half a wavelength because of its
#: substrate) and their length (common practice, no source).
PATCH_LENGTH, PATCH_WIDTH = 0.35, 0.45
#: A helix of usual make, in wavelengths (Kraus, Antennas, ch. 7: 0.75 to 1.33, and a pitch of 12 to 14 deg).
HELIX_CIRCUMFERENCE, HELIX_SPACING = 1.0, 0.225

#: Builds the device for any frequencies.
DeviceMaker = Callable[[FloatArray], Cluster]


def maker_of(campaign: Campaign, truth: SimulatedChamber | None = None) -> DeviceMaker:
    """Return what builds a campaign's simulated device; `truth` instead of what twin.toml says.

    Raises
    ------
    InputError
        If a file of sources is not as it must be.
    """
    truth = campaign.simulated() if truth is None else truth
    return device_maker(truth, campaign.device, band_hz=campaign.goal.frequency_hz, folder=campaign.folder)


def device_of(
    truth: SimulatedChamber,
    device: Device,
    frequency_hz: FloatArray,
    *,
    band_hz: FloatArray,
    folder: Path | None = None,
    state: int | None = None,
) -> Cluster:
    """Return the simulated device at some frequencies, in the device frame, in one of its states.

    Parameters
    ----------
    band_hz
        All frequencies of the campaign: a device disperses over its band, whichever part is asked for.
    folder
        Where files of sources lie.
    state
        Index of one of its states; the device as built if None or if there are no states.

    Raises
    ------
    InputError
        If a file of sources is not as it must be.
    """
    made = device_maker(truth, device, band_hz=band_hz, folder=folder)(frequency_hz)
    return in_state(made, state, truth, responses_of(truth, device, folder))


def device_maker(
    truth: SimulatedChamber, device: Device, *, band_hz: FloatArray, folder: Path | None = None
) -> DeviceMaker:
    """Return what builds the simulated device for any frequencies; files are read and checked now.

    Raises
    ------
    InputError
        If a file of sources is not as it must be.
    """
    table, band = truth.device, np.asarray(band_hz, float)
    if table is None:
        return lambda f: stand_in(device, f, band_hz=band, seed=truth.seed)
    build = _builder(table, device, band, folder)
    place = np.zeros(3) if isinstance(table, SimulatedDipoles) else 1e-3 * np.asarray(device.offset_mm)
    if table.position_mm is not None:
        place = 1e-3 * np.asarray(table.position_mm)

    def make(frequency_hz: FloatArray) -> Cluster:
        made = build(np.asarray(frequency_hz, float))
        return replace(made, position=made.position + place, efficiency=made.efficiency * _passed(table, frequency_hz))

    return make


def true_reflection(table: SimulatedAntenna | None, frequency_hz: FloatArray) -> ComplexArray:
    """Return the device's reflection at its connector (frequency,), complex; 0 where it is matched.

    At a resonance z = r (1 + j Q (f/f0 - f0/f)), S11 = (z - 1) / (z + 1) (series resonant circuit, any text on circuits, from
    memory), with r above 1 so that S11 is `reflection_db` at f0.
    """
    frequency = np.asarray(frequency_hz, float)
    if table is None or table.reflection_db is None:
        return np.zeros(frequency.size, complex)
    at_best = 10.0 ** (table.reflection_db / 20.0)
    turn = np.exp(1j * np.deg2rad(table.reflection_deg))
    if table.resonance_ghz is None or table.resonance_q is None:
        return np.full(frequency.size, at_best * turn)
    off = frequency / (1e9 * table.resonance_ghz)
    z = (1.0 + at_best) / (1.0 - at_best) * (1.0 + 1j * table.resonance_q * (off - 1.0 / off))
    return np.asarray((z - 1.0) / (z + 1.0) * turn)


def _passed(table: SimulatedAntenna, frequency_hz: FloatArray) -> FloatArray:
    """Return the share (frequency,) of the available power that the device accepts."""
    return np.asarray(1.0 - np.abs(true_reflection(table, frequency_hz)) ** 2)


def _builder(table: SimulatedAntenna, device: Device, band_hz: FloatArray, folder: Path | None) -> DeviceMaker:
    """Return what builds one kind about its own centre."""
    match table:
        case SimulatedPanel():
            return lambda f: _panel(table, device, f, band_hz)
        case SimulatedHorn():
            return _in_modes(lambda f, cross: _horn(table, f, cross, band_hz), table, device)
        case SimulatedPatch():
            return _in_modes(lambda f, cross: _patch(table, f, cross, band_hz), table, device)
        case SimulatedAperture():
            return lambda f: _aperture(table, device, f, band_hz)
        case SimulatedDipoles():
            sources = read_sources((folder or Path()) / table.file)
            return lambda f: _losing(sources.cluster(f), table)
    return lambda f: _losing(_wire(table, device, f, float(np.mean(band_hz))), table)


def _losing(made: Cluster, table: SimulatedAntenna) -> Cluster:
    return replace(made, efficiency=np.full(made.frequency_hz.size, 10.0 ** (table.efficiency_db / 10.0)))


def _phasor(level_db: float | None, angle_deg: float) -> complex:
    """Return a level and phase as a complex number, quarter turns exactly; 0 without a level."""
    if level_db is None:
        return 0.0
    quarter = {0.0: 1.0 + 0.0j, 90.0: 1j, 180.0: -1.0 + 0.0j, -90.0: -1j}.get(angle_deg)
    turn = complex(np.exp(1j * np.deg2rad(angle_deg))) if quarter is None else quarter
    return complex(10.0 ** (level_db / 20.0) * turn)


def _polarization(table: PolarizedAntenna, device: Device) -> tuple[float, float | None, bool]:
    """Return (tilt in radians, axial ratio in dB or None for linear, right-handed) of a kind or else of device.toml."""
    kind, ratio, tilt_deg = table.polarization, table.axial_ratio_db, table.tilt_deg
    if kind is None:
        kind, ratio = device.polarization, device.axial_ratio_db if ratio is None else ratio
        tilt_deg = device.slant_deg if tilt_deg == 0.0 else tilt_deg
        right = kind != "left" if kind != "elliptical" else table.sense == "right"
    else:
        right = kind != "left" if kind != "elliptical" else table.sense == "right"
    if kind == "linear":
        return float(np.deg2rad(device.slant_deg if table.slant_deg is None else table.slant_deg)), None, True
    return float(np.deg2rad(tilt_deg)), ratio or 0.0, right


def _moment(table: PolarizedAntenna, device: Device) -> tuple[complex, complex]:
    tilt, ratio_db, right = _polarization(table, device)
    return elliptical(tilt=tilt, axial_ratio_db=ratio_db, right=right)


def _in_modes(build: Callable[[FloatArray, complex], Cluster], table: PolarizedAntenna, device: Device) -> DeviceMaker:
    """Return a device that is turned about z with its polarization, and fed in two modes where that is not linear.

    build
        (frequencies, orthogonal part) -> the device polarized along x.
    """
    tilt, ratio_db, right = _polarization(table, device)
    cross = _phasor(table.cross_polar_db, table.cross_polar_deg)
    if ratio_db is None:
        return lambda f: _losing(_turned(build(f, cross), tilt), table)
    x, y = elliptical(tilt=0.0, axial_ratio_db=ratio_db, right=right)
    first, second = x - cross * np.conj(y), y + cross * np.conj(x)

    def make(f: FloatArray) -> Cluster:
        mode = build(f, 0.0)
        both = joined(mode, _turned(mode, np.pi / 2.0), first, second)
        return _losing(_turned(both, tilt), table)

    return make


def _turned(made: Cluster, angle: float) -> Cluster:
    """Return a cluster turned about z by an angle in radians, from x towards y."""
    if angle == 0.0:
        return made
    cos, sin = np.cos(angle), np.sin(angle)
    rotation = np.array([[cos, -sin, 0.0], [sin, cos, 0.0], [0.0, 0.0, 1.0]])
    return made.moved(RigidMotion(rotation, np.zeros(3)))


def _panel(table: SimulatedPanel, device: Device, f: FloatArray, band_hz: FloatArray) -> Cluster:
    centre = float(np.mean(band_hz)) if table.centre_ghz is None else table.centre_ghz * 1e9
    usual = max(0.005 * centre, 0.5 * float(np.ptp(band_hz)))
    made = panel(
        f,
        elements=table.rows,
        columns=table.columns,
        pitch_m=None if table.pitch_mm is None else 1e-3 * table.pitch_mm,
        centre_m=(0.0, 0.0, 0.0),
        flaws=PanelFlaws(table.dead, table.misfed, table.misfeed_deg),
        make=PanelMake(
            taper=table.taper,
            error=table.error,
            cross_error=table.cross_error,
            cross=_phasor(table.cross_polar_db, table.cross_polar_deg),
            magnetic_ratio=table.magnetic_ratio,
            feed_slope_deg=table.feed_slope_deg,
            feed_loss_db=table.feed_loss_db,
            moment=_moment(table, device),
        ),
        efficiency_db=table.efficiency_db,
        centre_hz=centre,
        half_band_hz=usual if table.half_band_ghz is None else table.half_band_ghz * 1e9,
        seed=table.seed,
    )
    if not any(table.steer_deg):
        return made
    return replace(made, weights=made.weights * steering(made.position, made.k, _radians(table.steer_deg)))


def _radians(pair_deg: tuple[float, float]) -> tuple[float, float]:
    return float(np.deg2rad(pair_deg[0])), float(np.deg2rad(pair_deg[1]))


def _horn(table: SimulatedHorn, f: FloatArray, cross: complex, band_hz: FloatArray) -> Cluster:
    flaws = HornFlaws(
        edge_db=table.edge_db,
        asymmetry=table.asymmetry,
        bent_wall_m=1e-3 * table.bent_wall_mm,
        lump_m=(1e-3 * table.lump_mm[0], 1e-3 * table.lump_mm[1]),
        lump=_phasor(table.lump_db, table.lump_deg),
    )
    return flared_horn(
        f,
        a_m=1e-3 * table.aperture_a_mm,
        b_m=1e-3 * table.aperture_b_mm,
        slant_e_m=1e-3 * table.slant_e_mm,
        slant_h_m=1e-3 * table.slant_h_mm,
        flaws=flaws,
        highest_hz=float(band_hz.max()),
        cross=cross,
        magnetic_ratio=table.magnetic_ratio,
    )


def _patch(table: SimulatedPatch, f: FloatArray, cross: complex, band_hz: FloatArray) -> Cluster:
    wavelength = LIGHT / float(np.mean(band_hz))
    length = PATCH_LENGTH * wavelength if table.length_mm is None else 1e-3 * table.length_mm
    width = PATCH_WIDTH * wavelength if table.width_mm is None else 1e-3 * table.width_mm
    return patch(f, length_m=length, width_m=width, cross=cross, magnetic_ratio=table.magnetic_ratio)


def _sheet(table: SimulatedAperture, highest_hz: float) -> tuple[Sheet, FloatArray, FloatArray]:
    """Return the sources' places, their amplitudes, and the square of their distance from the middle, 1 at the rim."""
    if table.shape == "circular":
        assert table.diameter_mm is not None  # guaranteed by the model
        sheet = disc(1e-3 * table.diameter_mm, highest_hz=highest_hz)
        squared = np.sum(sheet.across**2, axis=-1)
        shape = (1.0 - squared) ** table.taper
    else:
        assert table.width_mm is not None and table.height_mm is not None
        sheet = rectangle(1e-3 * table.width_mm, 1e-3 * table.height_mm, highest_hz=highest_hz)
        squared = np.sum(sheet.across**2, axis=-1)
        shape = np.prod(np.cos(0.5 * np.pi * sheet.across) ** table.taper, axis=-1)
    return sheet, np.asarray(table.pedestal + (1.0 - table.pedestal) * shape), np.asarray(squared)


def _aperture(table: SimulatedAperture, device: Device, f: FloatArray, band_hz: FloatArray) -> Cluster:
    sheet, level, squared = _sheet(table, float(band_hz.max()))
    phase = np.deg2rad(table.edge_phase_deg) * squared
    if table.random_phase_deg > 0.0:
        alike = _metres(table.correlation_mm, LIGHT / float(np.mean(band_hz)))
        phase = phase + np.deg2rad(table.random_phase_deg) * rough(sheet.place, alike, seed=table.seed)
    k = 2.0 * np.pi * f / LIGHT
    weights = level * np.exp(-1j * phase) * steering(sheet.place, k, _radians(table.steer_deg))
    made = sheet.cluster(
        f,
        weights,
        moment=_moment(table, device),
        cross=_phasor(table.cross_polar_db, table.cross_polar_deg),
        magnetic_ratio=table.magnetic_ratio,
    )
    return _losing(made, table)


def _wire(table: SimulatedAntenna, device: Device, f: FloatArray, centre_hz: float) -> Cluster:
    """Return a dipole, crossed dipoles or a helix."""
    wavelength = LIGHT / centre_hz
    if isinstance(table, SimulatedHelix):
        return helix(
            f,
            turns=table.turns,
            circumference_m=_metres(table.circumference_mm, HELIX_CIRCUMFERENCE * wavelength),
            spacing_m=_metres(table.spacing_mm, HELIX_SPACING * wavelength),
            right=(table.polarization or device.polarization) != "left",
        )
    if isinstance(table, SimulatedCrossedDipoles):
        right = (table.polarization or device.polarization) != "left"
        length = _metres(table.length_mm, 0.5 * wavelength)
        return crossed_dipoles(f, normal=table.normal, right=right, length_m=length)
    if not isinstance(table, SimulatedDipole):
        raise InputError([f"twin.toml: device: {type(table).__name__} is no kind that can be built"])
    slant = np.deg2rad(device.slant_deg)
    axes = {"x": (1.0, 0.0, 0.0), "y": (0.0, 1.0, 0.0), "z": (0.0, 0.0, 1.0), None: (np.cos(slant), np.sin(slant), 0.0)}
    return dipole(f, axis=np.asarray(axes[table.axis]), length_m=_metres(table.length_mm, 0.5 * wavelength))


def _metres(length_mm: float | None, otherwise: float) -> float:
    return otherwise if length_mm is None else 1e-3 * length_mm
