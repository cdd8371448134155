"""What small motions of a mount's joints make of a measured field: to first order, but for the phase of the longer way.

A probe that stands a little off sees another direction, another polarization and a longer way. Every small motion is a sum
of four base fields with weights that differ from sample to sample, so that many joints cost little more than one.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import numpy as np

from colure.analysis.steps.assemble import MeasuredSphere, angles_of, azimuths, finer_columns
from colure.geometry.conventions import ComplexArray, FloatArray, wavenumber
from colure.geometry.directions import phi_hat, theta_hat, theta_phi, unit_vector
from colure.geometry.joint_errors import Shifted, small_motions
from colure.geometry.kinematics import Geometry
from colure.model.chamber import Chamber
from colure.model.joints import values_of
from colure.model.plan import Role
from colure.model.record import of_role
from colure.waves.scattered import synthesis_at

if TYPE_CHECKING:
    import xarray as xr

#: Turn by which the field's change with direction is taken, radians, and the accuracy of the transform behind it.
SMALL, ACCURACY = 1e-4, 1e-10


def values_on(sphere: MeasuredSphere, record: xr.Dataset, chamber: Chamber) -> FloatArray:
    """Return the joint values (theta, column, joint) at which a sphere was measured, those of the first pass, as `values_of_pass`."""
    return values_of_pass(sphere, record, chamber, int(of_role(record, Role.SCAN)["pass_index"].values.min()))


def values_of_pass(sphere: MeasuredSphere, record: xr.Dataset, chamber: Chamber, number: int) -> FloatArray:
    """Return the joint values (theta, column, joint) at which a pass measured a sphere.

    Raises
    ------
    ValueError
        If the record does not hold a direction of the sphere.
    """
    scan = of_role(record, Role.SCAN)
    names = [str(name) for name in record["axis"].values]
    shown = scan["commanded_deg"].values
    angle = {n: chamber.axis_table[n].map.angle_deg(shown[:, i]) for i, n in enumerate(names)}
    values = values_of(chamber.positioner.joints, scan["joint_commanded"].values)
    first = scan["pass_index"].values == number
    known: dict[tuple[int, int], FloatArray] = {}
    for a, b, value in zip(angle["azimuth"][first], angle["roll"][first], values[first], strict=True):
        known.setdefault(_key(float(a), float(b)), value)
    a, b = (np.rad2deg(angle) for angle in angles_of(sphere, Geometry.ROLL_OVER_AZIMUTH))
    out = np.empty((*a.shape, len(chamber.positioner.joints)))
    for index in np.ndindex(a.shape):
        joint_values = known.get(_key(float(a[index]), float(b[index])))
        if joint_values is None:
            raise ValueError(
                f"record: theta = {a[index]:g}, phi = {b[index]:g} deg was not measured: its joints are not known"
            )
        out[index] = joint_values
    return out


def _key(theta_deg: float, phi_deg: float) -> tuple[int, int]:
    """Number a direction of a slice: theta over a full turn."""
    return round(1e3 * (theta_deg % 360.0)) % 360_000, round(1e3 * phi_deg)


class JointMotions:
    """Changes of a sphere's field by small motions of the joints."""

    def __init__(self, sphere: MeasuredSphere, record: xr.Dataset, chamber: Chamber, measured: ComplexArray) -> None:
        chain = chamber.chain
        assert chain is not None  # only made for a mount with joints
        self._chain, self._tables, self._distance = chain, chamber.positioner.joints, chamber.range_length_m
        self.values = values_on(sphere, record, chamber)
        self._k, self._total = wavenumber(sphere.frequency_hz), sphere.phi.size
        columns = self.values.shape[1]
        phi = azimuths(sphere, columns)
        self._theta, self.phi = np.meshgrid(sphere.theta, phi, indexing="ij")
        self._measured = measured
        self._here = self._seen(0.0, 0.0)
        self._along = (self._seen(SMALL, 0.0) - self._here) / SMALL
        self._across = (self._seen(0.0, SMALL) - self._here) / SMALL

    def _seen(self, along: float, across: float) -> ComplexArray:
        """Return the components (frequency, 2, theta, column) along vectors carried over by a small turn towards theta^ or phi^."""
        t, p = self._theta, self.phi
        d, e, f = unit_vector(theta=t, phi=p), theta_hat(theta=t, phi=p), phi_hat(theta=t, phi=p)
        turn = along + across
        if along:
            d, e = np.cos(turn) * d + np.sin(turn) * e, np.cos(turn) * e - np.sin(turn) * d
        elif across:
            d, f = np.cos(turn) * d + np.sin(turn) * f, np.cos(turn) * f - np.sin(turn) * d
        t, p = theta_phi(d)
        field = synthesis_at(self._measured, theta=t, phi=p, accuracy=ACCURACY).reshape(
            len(self._measured), 2, *t.shape
        )
        own = np.stack([theta_hat(theta=t, phi=p), phi_hat(theta=t, phi=p)])
        return np.asarray(np.einsum("c...i,a...i,fa...->fc...", np.stack([e, f]), own, field))

    def change(self, shifted: Shifted) -> ComplexArray:
        """Return what a small motion adds to the sphere's field (frequency, 2, theta, phi)."""
        turned = np.stack([self._here[:, 1], -self._here[:, 0]], axis=1) * shifted.roll
        moved = (self._along * shifted.theta + self._across * shifted.phi) / self._distance + turned
        way = (
            np.exp(-1j * self._k[:, None, None] * shifted.away) * self._distance / (self._distance + shifted.away) - 1.0
        )
        return finer_columns(moved + self._here * way[:, None], self._total)

    def changes(self) -> list[ComplexArray]:
        """Return what every small motion within its tolerance (expanded) adds to the field.

        A way that is longer in all directions alike is left out: boresight checks and horn see it as well.
        """
        tolerances = tuple(one.tolerance for one in self._tables)
        power = np.sum(np.abs(self._here) ** 2, axis=(0, 1)) * np.sin(self._theta)
        weight = power / power.sum()
        return [
            self.change(replace(one, away=one.away - np.sum(weight * one.away)))
            for _, one in small_motions(self._chain, self.values, tolerances, phi=self.phi)
        ]
