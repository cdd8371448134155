"""What a misaligned positioner or probe does to the figures: each tolerance applied to the data in turn."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Literal

import numpy as np

from colure.analysis.steps.assemble import MeasuredSphere, angles_of
from colure.analysis.steps.misaligned import ForwardModel
from colure.analysis.uncertainty.trial import Bench, Cause
from colure.geometry.conventions import ComplexArray, FloatArray
from colure.geometry.kinematics import ALIGNED, Geometry, Misalignment
from colure.geometry.rotations import about_axis
from colure.model.chamber import AlignmentTolerance
from colure.waves.probe import first_order_response, ideal_response


def alignment_causes(bench: Bench) -> Iterator[Cause]:
    """Yield the change of the waves for each tolerance."""
    inputs = bench.inputs
    tolerance, sphere = inputs.chamber.alignment, inputs.sphere
    yield from _axes(bench)
    size = tolerance.probe_roll_zero_deg
    known, kind = _known(bench)
    words = (
        f"{known} \u00b1{size:.2g} deg" if size > 0.0 else "found with the reference: part of the probe's polarization"
    )
    rolled = leaked(sphere.field, np.tan(np.deg2rad(size)))
    yield Cause("alignment: probe roll", bench.changed_field(rolled)[None], words, kind, "normal", size, "deg")
    if not sphere.one_polarization:  # without a transform the distance is not used
        size = tolerance.distance_mm
        change = distance_change(bench, 1e-3 * size)
        # The whole device seems to stand nearer: its phase centre keeps its distance to the crossing.
        yield Cause(
            "alignment: distance", change[None], f"declared \u00b1{size:g} mm", "declared", "normal", size, "mm"
        )
    size = tolerance.device_pose_deg
    turned = [bench.changed(bench.nominal.rotated(about_axis(axis, np.deg2rad(size)))) for axis in ("x", "y", "z")]
    yield Cause("alignment: device pose", np.stack(turned), f"declared \u00b1{size:g} deg about every axis", "declared", "normal",
                size, "deg")  # fmt: skip


def _known(bench: Bench) -> tuple[str, Literal["measured", "declared"]]:
    return ("left after the correction", "measured") if bench.inputs.aligned else ("declared", "declared")


def _axes(bench: Bench) -> Iterator[Cause]:
    """Yield the errors of a geometry's two axes, each under its own name."""
    inputs, geometry = bench.inputs, bench.inputs.chamber.positioner.geometry
    tolerance, sphere = inputs.chamber.alignment, inputs.sphere
    model = ForwardModel(sphere, inputs.chamber.range_length_m, geometry)
    waves = inputs.step.measured(sphere.field)
    known, kind = _known(bench)

    def moved(error: Misalignment) -> ComplexArray:
        return bench.changed_field(sphere.field + model.change(waves, error))

    for name, size, one in angle_errors(geometry, tolerance):
        yield Cause(
            f"alignment: {name}", moved(one)[None], f"{known} \u00b1{size:.2g} deg", kind, "normal", size, "deg"
        )
    size = tolerance.axes_offset_mm
    # Along the range and upwards the carried axis may stand off as well, which no scan tells from a device that does.
    other = inputs.declared_offset_mm / np.sqrt(3.0)
    places = [(size, 0.0, 0.0), (0.0, other, 0.0), (0.0, 0.0, other)]
    shifts = [moved(replace(ALIGNED, carried_axis_offset=(1e-3 * x, 1e-3 * y, 1e-3 * z))) for x, y, z in places]
    words = f"{known} \u00b1{size:.2g} mm across, declared \u00b1{other:.2g} mm along the range and upwards"
    yield Cause("alignment: axes offset", np.stack(shifts), words, kind, "normal", size, "mm")


def angle_errors(geometry: Geometry, tolerance: AlignmentTolerance) -> list[tuple[str, float, Misalignment]]:
    """Return (name, tolerance in degrees, that error) of every angle between the axes, the room and the device.

    Errors that no figure tells from another one stand once: the carried axis' tilt about its own direction is the zero of its
    readout, and on a roll-over-azimuth positioner the roll's zero is the device's pose.
    """
    zero, tilt = np.deg2rad(tolerance.theta_zero_deg), np.deg2rad(tolerance.roll_axis_tilt_deg)
    if geometry is Geometry.ROLL_OVER_AZIMUTH:
        return [
            ("theta zero", tolerance.theta_zero_deg, replace(ALIGNED, azimuth_zero=zero)),
            ("roll axis", tolerance.roll_axis_tilt_deg, replace(ALIGNED, carried_axis_tilt=(tilt, 0.0, 0.0))),
        ]
    elevation, square = np.deg2rad(tolerance.elevation_zero_deg), np.deg2rad(tolerance.axes_square_deg)
    # A horn on the same axes that shows the probe's polarization turns along: only what the other directions differ by is left.
    with_horn = tolerance.probe_roll_zero_deg == 0.0
    return [
        ("azimuth zero", tolerance.theta_zero_deg, replace(ALIGNED, azimuth_zero=zero)),
        ("elevation zero", tolerance.elevation_zero_deg, replace(ALIGNED, other_zero=elevation)),
        ("axes not square", tolerance.axes_square_deg,
         replace(ALIGNED, carried_axis_tilt=(0.0, 0.0, square), probe_roll_zero=square if with_horn else 0.0)),
    ]  # fmt: skip


def distance_change(bench: Bench, error: float) -> ComplexArray:
    """Return the change of the waves when the range length is wrong by `error` metres."""
    inputs = bench.inputs
    step, length = inputs.step, inputs.chamber.range_length_m + error
    if inputs.probe is None:
        response = ideal_response(step.order, step.k, length)
    else:
        response = first_order_response(inputs.probe, step.order, length)
    other = replace(step, response=response)
    return bench.changed(other.from_measured(step.measured(inputs.sphere.field)))


def leaked(field: ComplexArray, ratio: complex) -> ComplexArray:
    """Mix the polarizations as one impure port does when it is turned by 90 deg between passes."""
    return np.stack([field[:, 0] + ratio * field[:, 1], field[:, 1] - ratio * field[:, 0]], axis=1)


def azimuth_of(sphere: MeasuredSphere, geometry: Geometry) -> FloatArray:
    """Return the azimuth axis' angle of every sample (theta, phi), radians: on roll over azimuth negative where theta was."""
    if geometry is Geometry.ROLL_OVER_AZIMUTH:
        return np.asarray(sphere.theta[:, None] * sphere.readout_sign[None, :])
    return angles_of(sphere, geometry)[0]
