"""What a misaligned positioner or probe does to the figures: each tolerance applied to the data in turn."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Literal

import numpy as np

from colure.analysis.assembly import MeasuredSphere
from colure.analysis.bench import Bench, Cause
from colure.geometry.conventions import ComplexArray, FloatArray, wavenumber
from colure.geometry.directions import theta_phi, unit_vector
from colure.geometry.polarization import to_ludwig_1
from colure.geometry.rotations import about_axis
from colure.waves.probe import first_order_response, ideal_response
from colure.waves.scattered import synthesis_at


def alignment_causes(bench: Bench) -> Iterator[Cause]:
    """Yield the change of every figure for each tolerance."""
    inputs = bench.inputs
    tolerance, sphere = inputs.chamber.alignment, inputs.sphere
    measured = inputs.step.measured(sphere.field)
    known = "left after the correction" if inputs.aligned else "declared"
    kind: Literal["measured", "declared"] = "measured" if inputs.aligned else "declared"
    for name, size, along in (
        ("theta zero", tolerance.theta_zero_deg, True),
        ("roll axis", tolerance.roll_axis_tilt_deg, False),
    ):
        angle = float(np.deg2rad(size))
        shifted = _looking_aside(sphere, measured, angle if along else 0.0, 0.0 if along else angle)
        yield Cause(f"alignment: {name}", bench.changed_field(shifted)[None], f"{known} \u00b1{size:.2g} deg", kind, "normal",
                    size, "deg")  # fmt: skip
    k = wavenumber(sphere.frequency_hz)[:, None, None, None]
    size = tolerance.axes_offset_mm
    moved = [sphere.field * np.exp(1j * k * 1e-3 * size * swing(sphere))]
    # Along the range the roll axis may stand off as well, which no scan tells from a device that does.
    along_range = inputs.declared_offset_mm / np.sqrt(3.0)
    moved.append(sphere.field * np.exp(1j * k * 1e-3 * along_range * np.cos(sphere.theta)[:, None]))
    yield Cause("alignment: axes offset", np.stack([bench.changed_field(one) for one in moved]),
                f"{known} \u00b1{size:.2g} mm across, declared \u00b1{along_range:.2g} mm along the range", kind, "normal", size, "mm")  # fmt: skip
    size = tolerance.probe_roll_zero_deg
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


def _looking_aside(sphere: MeasuredSphere, measured: ComplexArray, along: float, across: float) -> ComplexArray:
    """Return the field as if every direction had been off by angles along and across the slice.

    The polarization vectors are carried along rigidly (a tilted positioner turns them too).
    """
    t, p = np.meshgrid(sphere.theta, sphere.phi, indexing="ij")
    sign = np.broadcast_to(sphere.readout_sign[None, :], t.shape)
    d = unit_vector(theta=t, phi=p)
    e1 = to_ludwig_1(1.0, 0.0, theta=t, phi=p).real * sign[..., None]
    e2 = to_ludwig_1(0.0, 1.0, theta=t, phi=p).real * sign[..., None]
    seen = d + along * e1 + across * e2
    seen = seen / np.linalg.norm(seen, axis=-1, keepdims=True)
    first, second = e1 - along * d, e2 - across * d
    where = theta_phi(seen)
    e = synthesis_at(measured, where.theta, where.phi)
    flat_t, flat_p = where.theta.ravel(), where.phi.ravel()
    vector = to_ludwig_1(e[..., 0, :], e[..., 1, :], theta=flat_t, phi=flat_p)
    along_first = np.sum(vector * first.reshape(-1, 3), axis=-1) * sign.ravel()
    along_second = np.sum(vector * second.reshape(-1, 3), axis=-1) * sign.ravel()
    return np.stack([along_first, along_second], axis=1).reshape(len(measured), 2, *t.shape)


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


def swing(sphere: MeasuredSphere) -> FloatArray:
    """Sine of the azimuth readout of every sample, (theta, phi): negative where theta was."""
    return np.asarray(np.sin(sphere.theta)[:, None] * sphere.readout_sign[None, :])
