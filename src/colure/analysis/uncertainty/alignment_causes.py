"""What a misaligned positioner or probe does to the figures: each tolerance applied to the data in turn."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from colure.analysis.steps.assemble import MeasuredSphere, angles_of
from colure.analysis.steps.joint_motions import JointMotions
from colure.analysis.uncertainty.combination import DIVISORS
from colure.analysis.uncertainty.inputs import Inputs
from colure.analysis.uncertainty.trial import Cause, CauseKind, Perturbation, Trial
from colure.geometry.conventions import ComplexArray, FloatArray
from colure.geometry.kinematics import ALIGNED, Geometry, Misalignment
from colure.geometry.rotations import about_axis
from colure.model.chamber import AlignmentTolerance
from colure.waves.expansion import Expansion
from colure.waves.probe import first_order_response, ideal_response

#: Draws of all joints' motions together, where many directions share the peak.
JOINT_MOTION_DRAWS = 32


def _kind(trial: Trial) -> CauseKind:
    return "measured" if trial.inputs.aligned else "declared"


def _known(trial: Trial) -> str:
    return "left after the correction" if trial.inputs.aligned else "declared"


def _moved(trial: Trial, error: Misalignment) -> ComplexArray:
    return trial.changed_field(trial.inputs.sphere.field + trial.misread(error))


def _errors(inputs: Inputs) -> dict[str, tuple[float, Misalignment]]:
    """Return the errors of a geometry's two axes by name: tolerance in degrees, and that error."""
    chamber = inputs.chamber
    if chamber.positioner.joints:
        return {}
    return {name: (size, one) for name, size, one in angle_errors(chamber.positioner.geometry, chamber.alignment)}


def _angle(cause: Cause, trial: Trial, random: np.random.Generator) -> Perturbation:
    size, error = _errors(trial.inputs)[cause.key]
    return Perturbation(
        cause, _moved(trial, error)[None], f"{_known(trial)} \u00b1{size:.2g} deg", size, "deg", _kind(trial)
    )


def _offset(cause: Cause, trial: Trial, random: np.random.Generator) -> Perturbation:
    size = trial.inputs.chamber.alignment.axes_offset_mm
    # Along the range and upwards the carried axis may stand off as well, which no scan tells from a device that does.
    other = trial.inputs.declared_offset_mm / np.sqrt(3.0)
    places = [(size, 0.0, 0.0), (0.0, other, 0.0), (0.0, 0.0, other)]
    shifts = [trial.misread(replace(ALIGNED, carried_axis_offset=(1e-3 * x, 1e-3 * y, 1e-3 * z))) for x, y, z in places]
    words = f"{_known(trial)} \u00b1{size:.2g} mm across, declared \u00b1{other:.2g} mm along the range and upwards"
    changes = trial.changed_field(trial.inputs.sphere.field + np.stack(shifts))
    return Perturbation(cause, changes, words, size, "mm", _kind(trial))


def _joints(cause: Cause, trial: Trial, random: np.random.Generator) -> Perturbation:
    """Every small motion of every joint within its tolerance, each of its own."""
    inputs, joints = trial.inputs, trial.inputs.chamber.positioner.joints
    motions = JointMotions(inputs.sphere, inputs.sweeps.record, inputs.chamber, trial.measured)
    moved = trial.each_before_alignment([inputs.sphere.field + change for change in motions.changes()])
    size = max(one.zero_error_deg for one in joints)
    words = f"declared for {len(joints)} joints: zero up to \u00b1{size:.2g} deg, tilt, offset, place along the line"
    if any("beam_azimuth_deg" in near.reasons for near in trial.near):
        # Many directions share the peak: the highest is one that all motions together raised, not each of them alone.
        weights = random.normal(0.0, 1.0 / DIVISORS[cause.distribution], (JOINT_MOTION_DRAWS, len(moved)))
        drawn = replace(cause, distribution="Monte Carlo")
        return Perturbation(drawn, np.tensordot(weights, moved, axes=1), words, size, "deg", picked=True)
    return Perturbation(cause, moved, words, size, "deg")


def _probe_roll(cause: Cause, trial: Trial, random: np.random.Generator) -> Perturbation:
    size = trial.inputs.chamber.alignment.probe_roll_zero_deg
    words = (
        f"{_known(trial)} \u00b1{size:.2g} deg"
        if size > 0.0
        else "found with the reference: part of the probe's polarization"
    )
    rolled = leaked(trial.inputs.sphere.field, np.tan(np.deg2rad(size)))
    return Perturbation(cause, trial.changed_field(rolled)[None], words, size, "deg", _kind(trial))


def _distance(cause: Cause, trial: Trial, random: np.random.Generator) -> Perturbation:
    """The whole device seems to stand nearer: its phase centre keeps its distance to the axes' intersection."""
    size = trial.inputs.chamber.alignment.distance_mm
    return Perturbation(cause, distance_change(trial, 1e-3 * size)[None], f"declared \u00b1{size:g} mm", size, "mm")


def _pose(cause: Cause, trial: Trial, random: np.random.Generator) -> Perturbation:
    size = trial.inputs.chamber.alignment.device_pose_deg
    turned = [trial.changed(trial.nominal.rotated(about_axis(axis, np.deg2rad(size)))) for axis in ("x", "y", "z")]
    return Perturbation(cause, np.stack(turned), f"declared \u00b1{size:g} deg about every axis", size, "deg")


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


def distance_change(trial: Trial, error: float) -> ComplexArray:
    """Return the change of the waves when the range length is wrong by `error` metres."""
    return trial.changed(transformed(trial, trial.inputs.sphere.field, error))


def transformed(trial: Trial, field: ComplexArray, error: float = 0.0) -> Expansion:
    """Return the waves of fields (frequency, 2, theta, phi) measured at the range length and `error` metres more."""
    inputs = trial.inputs
    step, length = inputs.step, inputs.chamber.range_length_m + error
    if inputs.probe is None:
        response = ideal_response(step.order, step.k, length)
    else:
        response = first_order_response(inputs.probe, step.order, length)
    other = replace(step, response=response)
    return other.from_measured(step.measured(field))


def leaked(field: ComplexArray, ratio: complex) -> ComplexArray:
    """Mix the polarizations as one impure port does when it is turned by 90 deg between passes."""
    return np.stack([field[:, 0] + ratio * field[:, 1], field[:, 1] - ratio * field[:, 0]], axis=1)


def azimuth_of(sphere: MeasuredSphere, geometry: Geometry) -> FloatArray:
    """Return the azimuth axis' angle of every sample (theta, phi), radians: on roll over azimuth negative where theta was."""
    if geometry is Geometry.ROLL_OVER_AZIMUTH:
        return np.asarray(sphere.theta[:, None] * sphere.readout_sign[None, :])
    return angles_of(sphere, geometry)[0]


def _of_axes(key: str, text: str) -> Cause:
    return Cause(key=key, group="alignment", text=text, needs="its tolerance, or what the correction left", perturb=_angle,
                 distribution="normal", applies=lambda inputs: key in _errors(inputs))  # fmt: skip


#: Every motion of a mount's joints within its tolerance.
JOINTS = Cause(key="joints", group="alignment", text="small motions of the mount's joints",
      needs="zero_error_deg, tilt_error_deg, offset_error_mm, axial_error_mm of the joints", perturb=_joints, distribution="normal", stream=(5,),
      applies=lambda inputs: any(max(one.zero_error_deg, one.tilt_error_deg, one.offset_error_mm, one.axial_error_mm) > 0.0
                                 for one in inputs.chamber.positioner.joints))  # fmt: skip
#: Each tolerance (declared, or left by the correction) applied to the data in turn, in the order of the budget's rows.
ALIGNMENT_CAUSES = (
    _of_axes("theta zero", "zero of the polar angle"),
    _of_axes("roll axis", "tilt of the roll axis against the azimuth axis"),
    _of_axes("azimuth zero", "zero of the azimuth axis"),
    _of_axes("elevation zero", "zero of the elevation axis"),
    _of_axes("axes not square", "angle between the axes that is not 90 deg"),
    Cause(key="axes offset", group="alignment", text="distance between the two axes", needs="axes_offset_mm, or what the correction left",
          perturb=_offset, distribution="normal", applies=lambda inputs: not inputs.chamber.positioner.joints),
    JOINTS,
    Cause(key="probe roll", group="alignment", text="turn of the probe about the range's axis",
          needs="probe_roll_zero_deg, or what the correction left", perturb=_probe_roll, distribution="normal"),
    Cause(key="distance", group="alignment", text="range length that the transform uses", needs="distance_mm", perturb=_distance,
          distribution="normal", applies=lambda inputs: not inputs.sphere.one_polarization),
    Cause(key="device pose", group="alignment", text="turn of the device about every axis", needs="device_pose_deg", perturb=_pose,
          distribution="normal"),
)  # fmt: skip
