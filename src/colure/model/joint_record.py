"""Rows measured on a mount with joints, put into the coordinates that records are written in."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from colure.errors import InputError
from colure.geometry.conventions import BoolArray, FloatArray, IntArray
from colure.geometry.joints import coordinates_of
from colure.model.chamber import Chamber
from colure.model.joints import values_of
from colure.model.plan import ROLES, Plan, Role
from colure.values import holds_arrays

#: An unplanned row stands where a planned one does, degrees or millimetres.
SAME = 1e-3
#: Roles whose sweeps do not pass the probe.
WITHOUT_PROBE = (Role.REFLECTION, Role.CABLE)


@dataclass(frozen=True)
@holds_arrays
class InCoordinates:
    """Commanded and read positions (point, coordinate) in degrees, and which sweeps change sign (point,)."""

    commanded_deg: FloatArray
    readback_deg: FloatArray
    turned: BoolArray


def in_coordinates(
    plan: Plan, *, plan_index: IntArray, role: IntArray, commanded_deg: FloatArray, readback_deg: FloatArray
) -> InCoordinates:
    """Return rows (point, joint) of a plan with joints in its coordinates.

    What was commanded are the plan's own coordinates; what was read follows from forward kinematics.

    Raises
    ------
    InputError
        If an unplanned row stands where no planned one does.
    """
    asked, half = plan.coordinates_deg, plan.half_turned
    assert asked is not None and half is not None  # only asked of plans with joints
    rows = plan_index.copy()
    for number in np.flatnonzero(rows < 0):
        off = np.abs(plan.targets_deg - commanded_deg[number]).max(axis=1)
        rows[number] = int(off.argmin())
        if off.min() > SAME:
            raise InputError(
                [
                    f"record: row {number} stands {off.min():.3g} deg beside every point of the plan: its direction is not known"
                ]
            )
    commanded = asked[rows]
    chamber = Chamber.model_validate(plan.inputs["chamber"])
    there = shown_coordinates(chamber, commanded_deg, commanded)
    read = commanded + shown_coordinates(chamber, readback_deg, commanded) - there
    codes = [ROLES.index(one) for one in WITHOUT_PROBE]
    return InCoordinates(commanded, read, half[rows] & ~np.isin(role, codes))


def shown_coordinates(chamber: Chamber, readouts_deg: FloatArray, near_deg: FloatArray) -> FloatArray:
    """Return coordinates (point, coordinate) of joint readouts, in the form that is nearest to others, degrees."""
    chain = chamber.chain
    assert chain is not None  # only asked of plans with joints
    pose = chain.probe_in_device(values_of(chamber.positioner.joints, readouts_deg))
    near = np.deg2rad(near_deg)
    behind = np.sin(near[:, 0]) < 0.0
    coordinates = coordinates_of(pose, phi_at_pole=np.mod(near[:, 1] + np.pi * behind, 2.0 * np.pi))
    theta = np.where(behind, -coordinates.theta, coordinates.theta)
    out = [theta, coordinates.phi - np.pi * behind, coordinates.chi - np.pi * behind][: near.shape[1]]
    # The probe's roll by half a turn is a matter of sign, which the sweeps carry.
    turns = [2.0 * np.pi, 2.0 * np.pi, np.pi][: near.shape[1]]
    near_by = [one + turn * np.round((n - one) / turn) for one, turn, n in zip(out, turns, near.T, strict=True)]
    return np.asarray(np.rad2deg(np.stack(near_by, axis=-1)))
