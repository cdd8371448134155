"""What a probe reads of a device's waves where every joint of a mount stands a little off: exact kinematics, nothing to first order.

A joint that stands off carries everything further out with it: its motion is E exp(S q), E the small motion, S its line.
The field about the nominal place is taken from the data's own waves, as `misaligned` does; a probe that no longer looks at
the device frame's origin weighs the device's parts by the slope of its beam (a Gaussian beam of its gain).
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from colure.analysis.steps.assemble import MeasuredSphere, angles_of, azimuths, finer_columns
from colure.analysis.steps.far_field import FarFieldStep
from colure.analysis.steps.joint_motions import values_of_pass
from colure.geometry.conventions import ComplexArray, FloatArray, IntArray, order_of_count, wavenumber
from colure.geometry.directions import phi_hat, theta_hat, theta_phi
from colure.geometry.joint_errors import JointTolerance, across
from colure.geometry.joints import Carried, JointChain, JointKind, stack_of
from colure.geometry.kinematics import Geometry, probe_to_lab
from colure.geometry.rotations import RigidMotion, from_rotation_vector
from colure.model.chamber import Chamber
from colure.model.plan import Role
from colure.model.record import of_role
from colure.values import holds_arrays
from colure.waves.expansion import Expansion
from colure.waves.probe import FirstOrderResponse, apply_response, first_order_response, ideal_response, remove_response
from colure.waves.scattered import synthesis_at
from colure.waves.transform import average_poles

if TYPE_CHECKING:
    import xarray as xr

#: The transform of the forward model need be no better than this.
FORWARD_ACCURACY = 1e-9
#: Turn by which the slope of a field is taken, radians.
SMALL = 1e-4
#: Distance over which the change of waves with distance is taken, metres; angle at which a probe's beam is looked at, radians.
FURTHER, BESIDE = 1e-3, 0.1
#: What moves by less than this (metres, radians) does not move.
LEAST_MOVED = 1e-9
#: Name of what the joints do not move: the probe in its holder.
PROBE = "probe"
#: Sizes of all motions, in units of one standard deviation each.
Units = tuple[float, ...]
#: How fast a probe's response falls along its port and across it, per square radian.
ProbeFall = tuple[complex, complex]


@dataclass(frozen=True)
class SmallMotion:
    """One small motion, of one standard deviation as declared.

    joint
        Name of the joint, or `PROBE`; number of the joint in the chain, -1 for the probe.
    kind
        `zero`, `tilt` or `offset`.
    turn, shift
        Rotation vector about `point` (radians) and shift (metres) in the reference position.
    size
        Length of the turn (radians) or of the shift (metres).
    """

    joint: str
    number: int
    kind: str
    turn: tuple[float, float, float]
    shift: tuple[float, float, float]
    point: tuple[float, float, float]
    size: float

    @property
    def linear(self) -> bool:
        """Tell whether it is a shift."""
        return not any(self.turn)


def motions_of(
    chain: JointChain, tolerances: tuple[JointTolerance, ...], *, lateral: float, roll: float, pointing: float = 0.0
) -> tuple[SmallMotion, ...]:
    """Return every small motion that tolerances (expanded) allow and data can show; what is declared as zero is none.

    A joint that stands off along its own line looks like a device or a probe that does: it has a row in the budget, none here.

    lateral, roll, pointing
        Of the probe in its holder, expanded: metres across, and radians about its boresight and beside it.
    """
    out = []
    for number, (joint, size) in enumerate(zip(chain.joints, tolerances, strict=True)):
        line, straight = joint.direction, np.zeros(3)
        sides = [_forwards(side) for side in across(np.asarray(joint.axis, float))]
        own: list[tuple[str, FloatArray, FloatArray]] = []
        if size.zero > 0.0:
            moved = 0.5 * size.zero * line
            own.append(("zero", straight, moved) if joint.kind is JointKind.PRISMATIC else ("zero", moved, straight))
        own += [("tilt", 0.5 * size.tilt * side, straight) for side in sides if size.tilt > 0.0]
        if joint.kind is JointKind.REVOLUTE:
            own += [("offset", straight, 0.5 * size.offset * side) for side in sides if size.offset > 0.0]
        out += [_motion(joint.name, number, kind, turn, shift, joint.point) for kind, turn, shift in own]
    at = (0.0, 0.0, chain.distance)
    # In any direction across: one of the two has the root of a half of it.
    half = 0.5 / float(np.sqrt(2.0))
    for side in np.eye(3)[:2]:
        if lateral > 0.0:
            out.append(_motion(PROBE, -1, "offset", np.zeros(3), half * lateral * side, at))
        if pointing > 0.0:
            out.append(_motion(PROBE, -1, "tilt", half * pointing * side, np.zeros(3), at))
    if roll > 0.0:
        out.append(_motion(PROBE, -1, "zero", np.array([0.0, 0.0, 0.5 * roll]), np.zeros(3), at))
    return tuple(out)


def _forwards(side: FloatArray) -> FloatArray:
    """Return a direction that points along its largest coordinate."""
    return np.asarray(side * np.sign(side[int(np.argmax(np.abs(side)))]) + 0.0)


def _motion(
    joint: str, number: int, kind: str, turn: FloatArray, shift: FloatArray, point: tuple[float, ...]
) -> SmallMotion:
    a, b, c = (float(x) for x in turn)
    x, y, z = (float(s) for s in shift)
    u, v, w = point
    return SmallMotion(joint, number, kind, (a, b, c), (x, y, z), (u, v, w), float(np.linalg.norm([a, b, c, x, y, z])))


def motions_declared(chamber: Chamber) -> tuple[SmallMotion, ...]:
    """Return the small motions that a chamber's declarations allow."""
    chain = chain_of_mount(chamber)
    own = chamber.alignment
    if chamber.positioner.joints:
        sizes = tuple(one.tolerance for one in chamber.positioner.joints)
    else:
        tilt, zero = np.deg2rad(own.roll_axis_tilt_deg), np.deg2rad(own.theta_zero_deg)
        if chamber.positioner.geometry is Geometry.AZIMUTH_OVER_ELEVATION:
            zero = np.deg2rad(own.elevation_zero_deg)
        if chamber.positioner.geometry is not Geometry.ROLL_OVER_AZIMUTH:
            tilt = np.deg2rad(own.axes_square_deg)
        # The fixed axis is where the room's frame begins, and the carried one's zero is how the device sits.
        sizes = (
            JointTolerance(zero=float(zero)),
            JointTolerance(tilt=float(tilt), offset=1e-3 * own.axes_offset_mm),
            JointTolerance(),
        )
    roll, pointing = (float(np.deg2rad(one)) for one in (own.probe_roll_zero_deg, own.probe_pointing_deg))
    motions = motions_of(chain, sizes, lateral=1e-3 * own.probe_lateral_mm, roll=roll, pointing=pointing)
    if chamber.positioner.joints or chamber.positioner.geometry is Geometry.ROLL_OVER_AZIMUTH:
        return motions
    # Axes that are not square turn about neither: a turn about the fixed axis is that axis' zero.
    fixed = np.asarray(chain.joints[0].axis)
    return tuple(one for one in motions if one.kind != "tilt" or one.number != 1 or not np.dot(one.turn, fixed))


def chain_of_mount(chamber: Chamber) -> JointChain:
    """Return the chain of a chamber's mount, by joints or built in."""
    if chamber.chain is not None:
        return chamber.chain
    return stack_of(chamber.positioner.geometry, distance=chamber.range_length_m)


class MovedJoints:
    """What a probe would read of the data's waves where a mount's joints really stand."""

    def __init__(
        self,
        sphere: MeasuredSphere,
        step: FarFieldStep,
        record: xr.Dataset,
        chamber: Chamber,
        motions: tuple[SmallMotion, ...],
        *,
        probe: Expansion | None = None,
        beam: ProbeFall = (0.0, 0.0),
    ) -> None:
        """Take the scan, the record that says where the joints stood, what may be off, and the probe.

        beam
            How fast the probe's response falls along its port and across it: 1 - c a^2 at an angle a (radians), complex.
        """
        self._chain, self._motions, self._k = chain_of_mount(chamber), motions, wavenumber(sphere.frequency_hz)
        self._total, self.ports, self._beam = sphere.phi.size, record.sizes["port"], beam
        self._to_device, self._sliced = sphere.polar_to_device, sphere.slices_used > 0
        self._radial = _responses(step, probe, self._k, self._chain.distance)
        self.values = _values(sphere, record, chamber)
        self._links = [joint.motion(self.values[..., n]) for n, joint in enumerate(self._chain.joints)]
        phi = azimuths(sphere, self.values.shape[2])
        t, p = np.meshgrid(sphere.theta, phi, indexing="ij")
        polar = np.stack([theta_hat(theta=t, phi=p), phi_hat(theta=t, phi=p)])
        seen = np.einsum("a...i,c...i->...ca", polar, self._seen(self.aligned).ports)
        # Readings of all passes to the two components, as the assembly solves them.
        self._solve = np.linalg.pinv(seen)

    @property
    def aligned(self) -> Units:
        """No motion at all."""
        return (0.0,) * len(self._motions)

    def _pose(self, units: Units) -> RigidMotion:
        """Return the probe in the polar frame of the device, (pass, theta, column)."""
        shape = self.values.shape[:-1]
        held: dict[Carried, RigidMotion] = dict.fromkeys(Carried, RigidMotion.none(shape))
        off = self._off(units)
        for n, (joint, link) in enumerate(zip(self._chain.joints, self._links, strict=True)):
            held[joint.carries] = link.then(off[n]).then(held[joint.carries])
        probe = probe_to_lab(distance=self._chain.distance, roll=0.0).then(off[-1]).then(held[Carried.PROBE])
        seen = probe.then(held[Carried.DEVICE].inverse())
        return RigidMotion(self._to_device.T @ seen.rotation, seen.translation @ self._to_device)

    def _off(self, units: Units) -> list[RigidMotion]:
        """Return the small motion of every joint, and that of the probe last."""
        out = []
        for number in [*range(len(self._chain.joints)), -1]:
            turn, shift, point = np.zeros(3), np.zeros(3), np.zeros(3)
            for unit, one in zip(units, self._motions, strict=True):
                if one.number == number:
                    turn, shift = turn + unit * np.array(one.turn), shift + unit * np.array(one.shift)
                    point = np.array(one.point)
            turned = from_rotation_vector(turn)
            out.append(RigidMotion(turned, point - turned @ point + shift))
        return out

    def _seen(self, units: Units) -> _Sight:
        pose = self._pose(units)
        turned = pose.rotation
        if self.ports == 2:
            # At the probe's roll 0 port 2 lies a quarter turn from port 1, counter-clockwise seen from the probe.
            second = np.stack([-turned[..., 1], turned[..., 0], turned[..., 2]], axis=-1)
            turned = np.concatenate([turned, second])
            pose = RigidMotion(turned, np.concatenate([pose.translation] * 2))
        radius = np.linalg.norm(pose.translation, axis=-1)
        direction = pose.translation / radius[..., None]
        # Towards the origin in the probe's own frame: 0 where it looks there.
        local = -np.einsum("...ji,...j->...i", turned, direction)
        return _Sight(direction, radius, turned[..., 0], turned[..., 1], local[..., 0], local[..., 1])

    def read(self, measured: ComplexArray, error: Units, *, of: IntArray | None = None) -> ComplexArray:
        """Return fields (frequency, 2, theta, phi) along the nominal polar vectors; arguments as `ForwardModel.read`."""
        chosen = np.arange(self._k.size) if of is None else of
        k = self._k[chosen][:, None, None, None]
        sight, distance = self._seen(error), self._chain.distance
        read = _along(measured, sight.direction, sight.ports)
        away = sight.radius - distance
        if np.abs(away).max() > LEAST_MOVED:
            steeper = self._steeper(measured, chosen)
            read = read + away * _along(steeper, sight.direction, sight.ports)
        for beside, side, fall in (
            (sight.beside, sight.ports, self._beam[0]),
            (sight.above, sight.second, self._beam[1]),
        ):
            if np.abs(beside).max() > LEAST_MOVED and fall:
                slope = (_along(measured, _towards(sight.direction, side), sight.ports) - _along(
                    measured, _towards(sight.direction, -side), sight.ports)) / (2.0 * SMALL)  # fmt: skip
                read = read - 2.0 * fall * beside / (1j * k * sight.radius) * slope
        read = read * np.exp(-1j * k * away) * distance / sight.radius
        field = np.asarray(np.einsum("...ac,fc...->fa...", self._solve, read))
        # Great-circle slices all meet at the poles, where the assembly takes their mean.
        if self._sliced:
            average_poles(field, [(0, 1.0), (field.shape[-2] - 1, -1.0)])
        return finer_columns(field, self._total)

    def _steeper(self, measured: ComplexArray, of: IntArray) -> ComplexArray:
        """Return by how much the waves change per metre of distance, beside the spherical wave's own change."""
        here, there = (one.at(of) for one in self._radial)
        order = order_of_count(measured.shape[-1])
        here, there = (_cut(one, order) for one in (here, there))
        return np.asarray((apply_response(remove_response(measured, here), there) - measured) / FURTHER)


@dataclass(frozen=True)
@holds_arrays
class _Sight:
    """How the probe stands (reading, theta, column): its direction and distance, its port and what lies across that, and how far
    the device frame's origin lies beside its boresight along both (radians)."""

    direction: FloatArray
    radius: FloatArray
    ports: FloatArray
    second: FloatArray
    beside: FloatArray
    above: FloatArray


def beam_of_probe(hears: Callable[[FloatArray], ComplexArray]) -> ProbeFall:
    """Return how fast a probe's response falls along its port and across it, from its responses near the axis."""
    cosine, sine = np.cos(BESIDE), np.sin(BESIDE)
    travel = np.array([[sine, 0, cosine], [-sine, 0, cosine], [0, sine, cosine], [0, -sine, cosine]])
    heard = hears(travel)[:, 0]
    # The port's vector carried along the great circle to the direction of the wave.
    carried = np.array([[cosine, 0, -sine], [cosine, 0, sine], [1.0, 0, 0], [1.0, 0, 0]])
    response = np.sum(heard * carried, axis=-1)
    return complex(1.0 - response[:2].mean()) / BESIDE**2, complex(1.0 - response[2:].mean()) / BESIDE**2


def _responses(
    step: FarFieldStep, probe: Expansion | None, k: FloatArray, distance: float
) -> tuple[FirstOrderResponse, FirstOrderResponse]:
    """Return what the probe makes of waves at the range length, and a little further."""
    there = distance + FURTHER
    if step.direct:
        return step.response, step.response
    if probe is None:
        return step.response, ideal_response(step.order, k, there)
    return step.response, first_order_response(probe, step.order, there)


def _cut(response: FirstOrderResponse, order: int) -> FirstOrderResponse:
    return FirstOrderResponse(response.grad[..., :order], response.curl[..., :order], response.first_order_share)


def _towards(direction: FloatArray, side: FloatArray) -> FloatArray:
    aside = direction + SMALL * side
    return np.asarray(aside / np.linalg.norm(aside, axis=-1, keepdims=True))


def _along(measured: ComplexArray, direction: FloatArray, ports: FloatArray) -> ComplexArray:
    """Return what vectors (reading, ..., 3) read of waves (frequency, 2, J) in directions (reading, ..., 3)."""
    t, p = theta_phi(direction)
    e = synthesis_at(measured, theta=t, phi=p, accuracy=FORWARD_ACCURACY).reshape(len(measured), 2, *t.shape)
    along = np.stack(
        [np.sum(ports * theta_hat(theta=t, phi=p), axis=-1), np.sum(ports * phi_hat(theta=t, phi=p), axis=-1)]
    )
    return np.asarray(np.sum(e * along, axis=1))


def _values(sphere: MeasuredSphere, record: xr.Dataset, chamber: Chamber) -> FloatArray:
    """Return the joint values (pass, theta, column, joint)."""
    numbers = np.unique(of_role(record, Role.SCAN)["pass_index"].values)
    if chamber.positioner.joints:
        return np.stack([values_of_pass(sphere, record, chamber, int(number)) for number in numbers])
    geometry = chamber.positioner.geometry
    first, second = angles_of(sphere, geometry)
    if geometry is Geometry.AZIMUTH_OVER_ELEVATION:
        # The chain begins with the axis that stands in the room.
        first, second = second, first
    # Rolled by the probe's own axis: two at right angles say what any two do.
    turns = (0.0,) if record.sizes["port"] == 2 else (0.0, 0.5 * np.pi)
    return np.stack([np.stack([first, second, np.full_like(first, turn)], axis=-1) for turn in turns])
