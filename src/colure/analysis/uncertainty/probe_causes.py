"""What probe, positions of single points and the wave between device and probe do to the measured sphere.

A source beside the device's centre is seen aside by the probe; beside by x it turns the phase of the measured field by k x for
every radian that the direction turns towards x. So a factor x on every source is 1/(jk) times the change of the field with the
direction, and x^2 + y^2 is n(n + 1)/k^2 on waves of degree n (derivable).
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from colure.analysis.steps.assemble import MeasuredSphere, finer_columns
from colure.analysis.steps.probe_beam import DECLARED_AT, beam_of
from colure.analysis.uncertainty.alignment_causes import leaked
from colure.analysis.uncertainty.trial import Cause, Declarations, Perturbation, Trial
from colure.geometry.conventions import ComplexArray, FloatArray, amplitude_db, mode_degrees, wavenumber
from colure.geometry.directions import unit_vector
from colure.geometry.kinematics import ALIGNED, Geometry
from colure.waves.transform import synthesis

STANDING_DRAWS = 32
POSITION_DRAWS = 16
#: Sites of a device that scatter a wave back to the probe.
SITES = 40
#: How differently the sites of a flat face send back: phase in radians, rms (common practice, no source).
UNEVEN = 0.3
#: A step small enough to be linear: radians, metres.
SMALL = 1e-4


def _standing_wave(cause: Cause, trial: Trial, random: np.random.Generator) -> Perturbation:
    """Draw devices that scatter the probe's wave back to it: from a flat face, or from anywhere in the declared box."""
    inputs = trial.inputs
    level_db, device, sphere = inputs.chamber.standing_wave_db, inputs.sweeps.device, inputs.sphere
    assert level_db is not None  # declared
    d = unit_vector(theta=sphere.theta[:, None], phi=sphere.phi[None, :]) @ sphere.polar_to_device.T
    k = wavenumber(sphere.frequency_hz)
    size, centre = 1e-3 * np.asarray(device.size_mm), 1e-3 * np.asarray(device.offset_mm)
    level, drawn = 10.0 ** (level_db / 20.0), []
    for number in range(STANDING_DRAWS):
        sites, weights = _scatterers(random, size, flat=bool(number % 2))
        sites = sites + centre
        nearer = (d @ sites.T).reshape(-1, SITES)  # the way to the probe is shorter by it, there and back
        back = np.stack([np.exp(2j * one * nearer) @ weights for one in k]).reshape(k.size, *d.shape[:2])
        back *= level / np.abs(back).max(axis=(1, 2), keepdims=True)
        turns = np.exp(2j * np.pi * random.random(2) - 2j * k[:, None] * inputs.chamber.range_length_m)
        with_device, with_horn = back * turns[:, :1, None], level * turns[:, 1]
        drawn.append(sphere.field * ((1.0 + with_device) / (1.0 + with_horn)[:, None, None])[:, None])
    words = f"declared {level_db:g} dB of the direct wave, back and forth between probe and device, probe and horn"
    if (bounce := inputs.bounce) is not None:
        less_db = -float(amplitude_db(bounce.left, least=1e-9))
        words = (
            f"the distance steps leave {level_db:.1f} dB of the direct wave, {less_db:.0f} dB less than bounced; "
            f"steps known to \u00b1{bounce.expanded_mm:g} mm"
        )
    return Perturbation(cause, trial.each_before_alignment(drawn), words, level_db, "dB")


def _scatterers(random: np.random.Generator, size_m: FloatArray, *, flat: bool) -> tuple[FloatArray, ComplexArray]:
    """Return places (site, 3) about the device's centre and their strengths (site,).

    flat
        A face that sends back like a mirror: all sites in one plane and nearly in phase, as an aperture or a ground plane does. Else
        sites anywhere in the box, more or less in phase. Nobody knows which one a device is: both are drawn.
    """
    sites = size_m * random.uniform(-0.5, 0.5, (SITES, 3))
    raw = random.normal(size=(2, SITES)) / np.sqrt(2.0)
    if flat:
        sites[:, 2] = size_m[2] * random.uniform(-0.5, 0.5)
        return sites, np.asarray(np.exp(1j * UNEVEN * np.sqrt(2.0) * raw[0]))
    even = random.random()
    return sites, np.asarray(even + (1.0 - even) * (raw[0] + 1j * raw[1]))


def _towards(trial: Trial) -> list[ComplexArray]:
    """Return the change of the field per metre of the probe along the lab's x and y; an error in any direction has half its square in each."""
    sides = ((SMALL, 0.0, 0.0), (0.0, SMALL, 0.0))
    return [trial.misread(replace(ALIGNED, probe_offset=one)) / SMALL for one in sides]


def _probe_place(cause: Cause, trial: Trial, random: np.random.Generator) -> Perturbation:
    size, field = trial.inputs.chamber.alignment.probe_lateral_mm, trial.inputs.sphere.field
    scale = 1e-3 * size / np.sqrt(2.0)
    words = f"declared \u00b1{size:g} mm beside the range's axis"
    changes = trial.each_before_alignment([field + scale * one for one in _towards(trial)])
    return Perturbation(cause, changes, words, size, "mm")


def _probe_pointing(cause: Cause, trial: Trial, random: np.random.Generator) -> Perturbation:
    sphere, size = trial.inputs.sphere, trial.inputs.chamber.alignment.probe_pointing_deg
    angle = np.deg2rad(size) / np.sqrt(2.0)
    k = wavenumber(sphere.frequency_hz)[:, None, None, None]
    # A beam exp(-c a^2) turned by an angle lights a source at x by the factor 1 + 2 c angle x / length.
    scale = 2.0 * beam_of(trial.inputs.probe, trial.inputs.chamber.probe.gain_dbi) * angle / (1j * k)
    words = f"declared \u00b1{size:g} deg beside the device's centre"
    changes = trial.each_before_alignment([sphere.field + scale * one for one in _towards(trial)])
    return Perturbation(cause, changes, words, size, "deg")


def _probe_pattern(cause: Cause, trial: Trial, random: np.random.Generator) -> Perturbation:
    inputs = trial.inputs
    size = inputs.chamber.probe.pattern_uncertainty_db
    n = mode_degrees(inputs.step.order)
    bend = size * np.log(10.0) / 20.0 / DECLARED_AT**2
    aside = n * (n + 1.0) / (wavenumber(inputs.sphere.frequency_hz)[:, None, None] * inputs.chamber.range_length_m) ** 2
    change = trial.changed(inputs.step.from_measured(trial.measured * (1.0 + bend * aside)))
    words = f"declared \u00b1{size:g} dB of the probe's pattern 10 deg off its axis"
    return Perturbation(cause, change[None], words, size, "dB")


def _positions(cause: Cause, trial: Trial, random: np.random.Generator) -> Perturbation:
    """Every point was read a little beside its place: the field's change with each axis times a random angle."""
    inputs, sphere = trial.inputs, trial.inputs.sphere
    table, geometry = inputs.chamber.axis_table, inputs.chamber.positioner.geometry
    sizes = {name: 0.5 * np.deg2rad(axis.position_error_deg) for name, axis in table.items()}
    along_theta, along_phi = _slopes(sphere, trial.measured)
    first, second = (sizes[name] for name in geometry.axis_names)
    rings, columns = (second, first) if geometry is Geometry.AZIMUTH_OVER_ELEVATION else (first, second)
    turned = leaked(sphere.field, 1.0) - sphere.field
    slopes = [(rings, along_theta), (columns, along_phi), (sizes.get("probe", 0.0), turned)]
    shape = (inputs.sweeps.record.sizes["port"], sphere.theta.size, 2 * sphere.slices_used or sphere.phi.size)
    # One pass of two ports reads both components at one place; two passes read each at its own.
    components = (1 if shape[0] == 2 else 2, *shape[1:])
    drawn = []
    for _ in range(POSITION_DRAWS):
        field = sphere.field.copy()
        for size, slope in slopes:
            if size > 0.0:
                field = (
                    field
                    + slope * finer_columns(random.normal(0.0, size, components).astype(complex), sphere.phi.size).real
                )
        drawn.append(field)
    words = "declared " + ", ".join(f"{name} \u00b1{axis.position_error_deg:g} deg" for name, axis in table.items())
    largest = max(axis.position_error_deg for axis in table.values())
    return Perturbation(cause, trial.each_before_alignment(drawn), words, largest, "deg")


def _misplaced(known: Declarations) -> bool:
    return any(axis.position_error_deg > 0.0 for axis in known.chamber.axis_table.values())


def _slopes(sphere: MeasuredSphere, measured: ComplexArray) -> tuple[ComplexArray, ComplexArray]:
    """Return how the field (frequency, 2, theta, phi) changes with theta and with phi, per radian."""
    start, columns = float(sphere.phi[0]), sphere.phi.size
    inwards = np.where(sphere.theta < 0.5 * np.pi, SMALL, -SMALL)

    def at(theta: FloatArray, phi_start: float) -> ComplexArray:
        return synthesis(measured, theta, columns, phi_start=phi_start)

    here = at(sphere.theta, start)
    along_theta = (at(sphere.theta + inwards, start) - here) / inwards[:, None]
    return np.asarray(along_theta), np.asarray((at(sphere.theta, start + SMALL) - here) / SMALL)


#: What is declared of probe, positions and standing wave, in the order of the budget's rows.
PROBE_CAUSES = (
    Cause(key="standing wave", text="devices that scatter the probe's wave back to it at the declared level", needs="standing_wave_db",
          perturb=_standing_wave, distribution="as drawn", declared=lambda known: known.chamber.standing_wave_db is not None,
          missing="standing wave", stream=(3,)),
    Cause(key="probe place", text="declared offset of the probe across the range, in two directions", needs="probe_lateral_mm",
          perturb=_probe_place, distribution="normal", declared=lambda known: known.chamber.alignment.probe_lateral_mm > 0.0,
          missing="probe place"),
    Cause(key="probe pointing", text="declared turn of the probe, in two directions", needs="probe_pointing_deg",
          perturb=_probe_pointing, distribution="normal", declared=lambda known: known.chamber.alignment.probe_pointing_deg > 0.0,
          missing="probe pointing"),
    Cause(key="probe pattern", text="declared uncertainty of the probe's taper, as a taper over the degrees of the waves",
          needs="pattern_uncertainty_db", perturb=_probe_pattern, distribution="normal",
          declared=lambda known: known.chamber.probe.pattern_uncertainty_db > 0.0, missing="probe pattern"),
    Cause(key="position error", text="points read beside their places", needs="position_error_deg of an axis", perturb=_positions,
          distribution="Monte Carlo", known_mean=True, declared=_misplaced, missing="position error", stream=(3,)),
)  # fmt: skip
