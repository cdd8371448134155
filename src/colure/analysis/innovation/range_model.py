"""What a probe reads of a device's waves on any points of a range: misaligned, and in a room with walls."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from colure.analysis.steps.alignment_fit import mixed
from colure.geometry.conventions import ComplexArray, FloatArray, wavenumber
from colure.geometry.directions import phi_hat, tangents, theta_hat, theta_phi
from colure.geometry.kinematics import ALIGNED, Geometry, Misalignment, device_to_lab, probe_to_lab
from colure.values import holds_arrays
from colure.waves.modes import resized
from colure.waves.probe import FirstOrderResponse, apply_response
from colure.waves.scattered import synthesis_at

#: The model of a wall is no better.
ACCURACY = 1e-5


@dataclass(frozen=True)
@holds_arrays
class RangeModel:
    """Points of a scan (point,) with the probe's response at the range length.

    first, second, roll
        Angles of the axes and of the probe's roll, radians.
    response
        What the probe makes of waves up to `order` at the range length.
    """

    geometry: Geometry
    distance_m: float
    frequency_hz: FloatArray
    first: FloatArray
    second: FloatArray
    roll: FloatArray
    order: int
    response: FirstOrderResponse

    def measured(self, coefficients: ComplexArray) -> ComplexArray:
        """Return the coefficients (..., frequency, 2, J) of the field that the probe measures of a device's waves."""
        return apply_response(resized(coefficients, self.order), self.response)

    def read(self, measured: ComplexArray, error: Misalignment = ALIGNED) -> ComplexArray:
        """Return readings (..., frequency, point) of measured waves (..., frequency, 2, J) where a misaligned range stands.

        Directions, the probe's vector and the path's length are exact; the radial functions stay those of the nominal
        distance.
        """
        motion = device_to_lab(self.geometry, first=self.first, second=self.second, misalignment=error).inverse()
        probe = probe_to_lab(distance=self.distance_m, roll=self.roll, misalignment=error)
        place = np.einsum("pij,pj->pi", motion.rotation, probe.translation) + motion.translation
        radius = np.linalg.norm(place, axis=-1)
        vector = np.einsum("pij,pj->pi", motion.rotation, probe.rotation[..., 0])
        t, p = theta_phi(place / radius[:, None])
        e = synthesis_at(measured, theta=t, phi=p)
        along = np.stack(
            [np.sum(vector * theta_hat(theta=t, phi=p), axis=-1), np.sum(vector * phi_hat(theta=t, phi=p), axis=-1)]
        )
        k = wavenumber(self.frequency_hz)
        way = np.exp(-1j * k[:, None] * (radius - self.distance_m)) * self.distance_m / radius
        return np.asarray(np.einsum("cp,...fcp->...fp", along, e) * way)

    def change(self, measured: ComplexArray, error: Misalignment, share: float = 1e-2) -> ComplexArray:
        """Return what a small error adds to readings of measured waves, to first order in it."""
        return np.asarray((self.read(measured, mixed((error,), np.array([share]))) - self.read(measured)) / share)

    def through_walls(self, coefficients: ComplexArray, directions: FloatArray, mirrors: ComplexArray) -> ComplexArray:
        """Return what walls add to the readings (room, frequency, point).

        Parameters
        ----------
        coefficients
            (frequency, 2, J) the device's waves.
        directions
            (room, wall, 3) where waves leave for the walls, in the room.
        mirrors
            (room, frequency, wall, 2, 2): components along the lab's x and y per component along the direction's tangents.
        """
        rotation = device_to_lab(self.geometry, first=self.first, second=self.second).rotation
        rooms, walls = directions.shape[:2]
        shape = (rooms, walls, self.first.size)
        t, p = theta_phi(np.einsum("pji,rwj->rwpi", rotation, directions))
        sides = np.array([[tangents(d) for d in one] for one in directions])
        turned = np.einsum("pji,rwbj->brwpi", rotation, sides)
        hats = theta_hat(theta=t, phi=p), phi_hat(theta=t, phi=p)
        share = np.stack([np.einsum("rwpi,brwpi->brwp", hat, turned) for hat in hats])
        probe = np.stack([np.cos(self.roll), np.sin(self.roll)])
        out = np.zeros((rooms, len(coefficients), self.first.size), complex)
        for f, c in enumerate(coefficients):
            e = synthesis_at(c, theta=t.reshape(-1), phi=p.reshape(-1), accuracy=ACCURACY).reshape(2, *shape)
            across = np.einsum("erwp,ebrwp->brwp", e, share)
            out[:, f] = np.einsum("ap,rwab,brwp->rp", probe, mirrors[:, f], across, optimize=True)
        return out
