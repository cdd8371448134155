"""A plan's coordinates put into joint readouts: reach, one continuous way, and solids that must not meet."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

import numpy as np

from colure.errors import InputError
from colure.geometry.clearance import Clearance
from colure.geometry.conventions import BoolArray, FloatArray, IntArray, wrapped
from colure.geometry.joint_inverse import JointInverse, JointSolution
from colure.geometry.joints import JointChain
from colure.model.chamber import Chamber, clearance_of
from colure.model.device import Device
from colure.model.joints import JointTable, device_solid, readouts_of_values, values_of
from colure.model.plan import ROLES, Role
from colure.values import holds_arrays

#: Joints that spin device or probe may be whole turns further, within their limits.
TURNS = (0, -1, 1)
#: A readout this far beyond a limit is on it, degrees or millimetres.
SLACK = 1e-6


@dataclass(frozen=True)
@holds_arrays
class JointPath:
    """Readouts (point, joint) of a path, and where the probe is turned by half a turn against what was asked for (point,)."""

    targets_deg: FloatArray
    half_turned: BoolArray


class OutOfReachError(InputError):
    """Poses that a mount with joints cannot take up.

    theta_deg
        Largest polar angle of the plan up to which all poses can be taken up; 0 where there is none.
    """

    def __init__(self, faults: Sequence[str], theta_deg: float) -> None:
        super().__init__(faults)
        self.theta_deg = theta_deg

    def __reduce__(self) -> tuple[Any, ...]:
        return type(self), (self.faults, self.theta_deg)


@lru_cache(maxsize=16)
def inverse_of(chain: JointChain) -> JointInverse:
    """Return the inverse of a chain."""
    return JointInverse(chain)


@dataclass(frozen=True)
@holds_arrays
class Ways:
    """Every way to take up coordinates: readouts (way, point, joint), which can be taken, and whether the probe is half turned (way,).

    pose
        (way,) number of the pose: ways that differ by whole turns of a joint share one.
    """

    readouts_deg: FloatArray
    possible: BoolArray
    half_turned: BoolArray
    pose: IntArray
    solutions: tuple[JointSolution, ...]


def ways_of(chamber: Chamber, coordinates_deg: FloatArray) -> Ways:
    """Return the ways of a mount to take up coordinates (point, 2 or 3): theta, phi and the probe's roll in degrees.

    (theta, phi, chi) and (-theta, phi + 180, chi + 180) are one pose; a probe turned by 180 deg reads the same with the
    other sign. Joints that spin device or probe may stand whole turns further.
    """
    chain, joints = chamber.chain, chamber.positioner.joints
    assert chain is not None  # only asked of a mount with joints
    theta, phi = np.deg2rad(coordinates_deg[:, 0]), np.deg2rad(coordinates_deg[:, 1])
    chi = np.deg2rad(coordinates_deg[:, 2]) if coordinates_deg.shape[1] > 2 else np.zeros_like(theta)
    inverse, half = inverse_of(chain), np.pi
    tries = [(theta, phi, chi, False), (-theta, phi + half, chi + half, False),
             (theta, phi, chi + half, True), (-theta, phi + half, chi, True)]  # fmt: skip
    every = [np.concatenate([one[column] for one in tries]) for column in range(3)]
    solutions = _split(inverse.solve(theta=every[0], phi=every[1], chi=wrapped(every[2])), len(tries))
    readouts, possible, turned, pose = [], [], [], []
    for number, solution in enumerate(solutions):
        base = readouts_of_values(joints, solution.values)
        for shown, inside in _with_turns(inverse, joints, base):
            readouts.append(shown)
            possible.append(solution.reached & inside)
            turned.append(tries[number][3])
            pose.append(number)
    return Ways(np.stack(readouts), np.stack(possible), np.array(turned), np.array(pose), solutions)


def _split(solution: JointSolution, parts: int) -> tuple[JointSolution, ...]:
    """Return the answers of so many equally long parts of what was asked for."""
    size = len(solution.miss) // parts
    rows = [slice(part * size, (part + 1) * size) for part in range(parts)]
    return tuple(
        JointSolution(solution.values[own], solution.miss[own], solution.turned[own], solution.reached[own])
        for own in rows
    )


def _with_turns(
    inverse: JointInverse, joints: tuple[JointTable, ...], base: FloatArray
) -> list[tuple[FloatArray, BoolArray]]:
    """Return readouts with whole turns added where they come within the limits, and whether they do."""
    shown = base.copy()
    for number, joint in enumerate(joints):
        if joint.kind == "prismatic":
            continue
        # The whole turn that brings the readout nearest to the middle of its travel, where the reading itself is outside.
        middle = 0.5 * (joint.min_deg + joint.max_deg)
        outside = (shown[:, number] < joint.min_deg - SLACK) | (shown[:, number] > joint.max_deg + SLACK)
        turns = np.round((middle - shown[:, number]) / 360.0)
        shown[:, number] += np.where(outside, 360.0 * turns, 0.0)
    spins = [spin[0] for spin in (inverse.device_spin, inverse.probe_spin) if spin is not None]
    grids = np.array(np.meshgrid(*[TURNS] * len(spins), indexing="ij")).reshape(len(spins), -1).T if spins else [()]
    low, high = np.array([j.min_deg for j in joints]), np.array([j.max_deg for j in joints])
    out = []
    for turn in grids:
        moved = shown.copy()
        for spin, count in zip(spins, turn, strict=True):
            moved[:, spin] += 360.0 * count
        inside = np.all((moved >= low - SLACK) & (moved <= high + SLACK), axis=1)
        if inside.any() or not np.any(turn):
            out.append((np.clip(moved, low, high) if inside.any() else moved, inside))
    return out


def joint_path(chamber: Chamber, device: Device, coordinates_deg: FloatArray, role: IntArray) -> JointPath:
    """Return the readouts that take a mount along coordinates (point, 2 or 3), degrees, without touching anything.

    What belongs to no slice (ties, reference) is always taken up in the same way.

    Raises
    ------
    OutOfReachError
        If a direction is out of reach, or the mount would touch something there; joint, limit and solids are named.
    InputError
        If the mount would touch something on its way.
    """
    joints, home = chamber.positioner.joints, np.array([j.home_deg for j in chamber.positioner.joints])
    # The same coordinates come many times: each is worked out once.
    unique, where = np.unique(np.round(coordinates_deg, 9), axis=0, return_inverse=True)
    ways, clearance = ways_of(chamber, unique), clearance_of(chamber, device_solid(device))
    free = _free(joints, ways, clearance)
    _require_ways(chamber, unique, ways, free, clearance)
    chosen = _cheapest(joints, home, ways, free, where.ravel(), role == ROLES.index(Role.SCAN))
    targets = np.round(ways.readouts_deg[chosen, where.ravel()], 9) + 0.0
    if clearance is not None:
        _require_clear(chamber, clearance, coordinates_deg, targets, role)
    return JointPath(targets, ways.half_turned[chosen])


def _free(joints: tuple[JointTable, ...], ways: Ways, clearance: Clearance | None) -> BoolArray:
    """Return which ways (way, point) are within limits and touch nothing."""
    free = ways.possible.copy()
    if clearance is not None:
        for pose in range(len(ways.solutions)):
            # Whole turns of a joint move no solid: each pose is looked at in one of its ways.
            same = ways.pose == pose
            rows = np.flatnonzero(free[same].any(axis=0))
            shown = ways.readouts_deg[np.flatnonzero(same)[free[same][:, rows].argmax(axis=0)], rows]
            clear = np.all(clearance.gaps(values_of(joints, shown)) > 0.0, axis=1)
            free[np.ix_(same, rows)] &= clear
    return free


def in_reach(chamber: Chamber, device: Device, coordinates_deg: FloatArray) -> BoolArray:
    """Return which coordinates (point, 2 or 3), degrees, a mount with joints takes up within limits and without touching anything."""
    ways = ways_of(chamber, coordinates_deg)
    free = _free(chamber.positioner.joints, ways, clearance_of(chamber, device_solid(device)))
    return np.asarray(free.any(axis=0))


def _cheapest(
    joints: tuple[JointTable, ...], home: FloatArray, ways: Ways, free: BoolArray, where: IntArray, scan: BoolArray
) -> IntArray:
    """Return which way every point is taken up (point,): the quickest run of all (dynamic programming)."""
    speed = np.array([j.speed_deg_s for j in joints])
    cost_home = np.abs(ways.readouts_deg - home).max(axis=-1)
    fixed = np.where(free, cost_home, np.inf).argmin(axis=0)
    total = np.where(free[:, where[0]], (np.abs(ways.readouts_deg[:, where[0]] - home) / speed).max(axis=-1), np.inf)
    back = np.zeros((len(where), len(free)), np.int64)
    count = np.arange(len(free))
    for number, here in enumerate(where):
        allowed = free[:, here] if scan[number] else count == fixed[here]
        if number:
            before = where[number - 1]
            way = np.abs(ways.readouts_deg[:, None, here] - ways.readouts_deg[None, :, before]) / speed
            both = total[None, :] + way.max(axis=-1)
            back[number] = both.argmin(axis=1)
            total = both[count, back[number]]
        total = np.where(allowed, total, np.inf)
    chosen = np.empty(len(where), np.int64)
    chosen[-1] = int(total.argmin())
    for number in range(len(where) - 1, 0, -1):
        chosen[number - 1] = back[number, chosen[number]]
    return chosen


def _text(coordinates_deg: FloatArray) -> str:
    words = [f"theta = {coordinates_deg[0]:g}, phi = {coordinates_deg[1]:g}"]
    if coordinates_deg.size > 2:
        words.append(f"probe roll = {coordinates_deg[2]:g}")
    return ", ".join(words) + " deg"


def _require_ways(
    chamber: Chamber, coordinates_deg: FloatArray, ways: Ways, free: BoolArray, clearance: Clearance | None
) -> None:
    lost = np.flatnonzero(~free.any(axis=0))
    if not lost.size:
        return
    first = int(lost[0])
    why = why_not(chamber, ways, clearance, first)
    theta = np.abs(coordinates_deg[:, 0])
    held = theta[theta < theta[lost].min() - SLACK]
    words = f"plan: {_text(coordinates_deg[first])} is out of reach ({lost.size} of {free.shape[1]} poses are): {why}"
    if held.size:
        words += f"; all poses with theta to {held.max():g} deg can be taken up"
    raise OutOfReachError([words], float(held.max()) if held.size else 0.0)


def why_not(chamber: Chamber, ways: Ways, clearance: Clearance | None, point: int) -> str:
    """Say what keeps a pose from being taken up: a solid, a limit, or the length of the arms."""
    joints = chamber.positioner.joints
    possible = np.flatnonzero(ways.possible[:, point])
    if possible.size and clearance is not None:
        readouts = ways.readouts_deg[possible[0], point]
        gaps = clearance.gaps(values_of(joints, readouts[None]))[0]
        one, other = clearance.pairs[int(gaps.argmin())]
        return f"{one.name} would touch {other.name} (solids overlap by {-1e3 * gaps.min():.3g} mm)"
    reached = [solution for solution in ways.solutions if solution.reached[point]]
    if reached:
        readouts = readouts_of_values(joints, reached[0].values[point])
        beyond = [
            f"joint {joint.name} = {value:.6g}: must be from {joint.min_deg:g} to {joint.max_deg:g} {joint.unit}"
            for joint, value in zip(joints, readouts, strict=True)
            if not joint.min_deg - SLACK <= value <= joint.max_deg + SLACK
        ]
        return ", ".join(beyond)
    best = min(
        ways.solutions, key=lambda solution: solution.miss[point] / chamber.range_length_m + solution.turned[point]
    )
    return (
        f"no joint values lead there; the nearest pose found is {1e3 * best.miss[point]:.3g} mm and "
        f"{np.rad2deg(best.turned[point]):.3g} deg beside it (joints too short, or axes that miss each other and so keep no "
        f"range_length_m)"
    )


def _require_clear(
    chamber: Chamber, clearance: Clearance, coordinates_deg: FloatArray, targets_deg: FloatArray, role: IntArray
) -> None:
    """Raise `InputError` if a move touches anything: between points, from and to home, or to the tie and back from anywhere."""
    joints = chamber.positioner.joints
    home = np.array([[j.home_deg for j in joints]])
    ties = np.flatnonzero(role == ROLES.index(Role.TIE))
    starts = [np.concatenate([home, targets_deg])]
    ends = [np.concatenate([targets_deg, home])]
    names = [
        [f"from {_where(coordinates_deg, n - 1)} to {_where(coordinates_deg, n)}" for n in range(len(targets_deg) + 1)]
    ]
    if ties.size:
        tie = np.broadcast_to(targets_deg[ties[0]], targets_deg.shape)
        starts, ends = [*starts, targets_deg], [*ends, tie]
        names.append([f"from {_where(coordinates_deg, n)} to the boresight check" for n in range(len(targets_deg))])
    collision = clearance.first_contact(
        values_of(joints, np.concatenate(starts)), values_of(joints, np.concatenate(ends))
    )
    if collision is None:
        return
    move, contact = collision
    raise InputError(
        [f"plan: the move {[one for part in names for one in part][move]} would bring {contact.one} to {contact.other} "
         f"(gap {1e3 * contact.gap:.3g} mm at {100 * contact.share:.0f} % of the way): must stay above 1 mm; make the region "
         f"smaller, or mend the solid (chamber.toml positioner.solids)"]
    )  # fmt: skip


def _where(coordinates_deg: FloatArray, number: int) -> str:
    return _text(coordinates_deg[number]) if 0 <= number < len(coordinates_deg) else "home"
