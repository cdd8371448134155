"""What a misaligned positioner makes of a device's waves, and how that is taken off again: rigid geometry, nothing else.

The field about a nominal place is taken from the data's own waves: a shift of direction, a turn
of the polarization and a longer way are exact in geometry; the change of the radial functions
over millimetres is neglected (below 1e-3 for a millimetre at 1 m).
"""

from __future__ import annotations

from typing import Protocol, TypeVar

import numpy as np

from colure.analysis.steps.assemble import MeasuredSphere, angles_of, azimuths, finer_columns
from colure.analysis.steps.far_field import FarFieldStep
from colure.geometry.conventions import ComplexArray, FloatArray, IntArray, wavenumber
from colure.geometry.directions import phi_hat, theta_hat, theta_phi
from colure.geometry.kinematics import ALIGNED, Geometry, Misalignment, device_to_lab, probe_to_lab
from colure.waves.modes import resized
from colure.waves.scattered import synthesis_at

CORRECTION_ROUNDS = 8
#: Change of the data, relative, below which the correction has settled.
SETTLED = 1e-5
#: The transform of the forward model need be no better than this.
FORWARD_ACCURACY = 1e-9


#: What says how a range is off: a `Misalignment` of two axes, or small motions of many joints.
E = TypeVar("E")
E_contra = TypeVar("E_contra", contravariant=True)


class Reads(Protocol[E_contra]):
    """What a probe pair would read of waves on a range that is off."""

    def read(self, measured: ComplexArray, error: E_contra, *, of: IntArray | None = None) -> ComplexArray:
        """Return fields (frequency, 2, theta, phi) along the nominal polar vectors, as `ForwardModel.read` does."""


class ForwardModel:
    """What a probe pair would read of the data's waves where a misaligned positioner really stands, on any geometry."""

    def __init__(
        self, sphere: MeasuredSphere, distance_m: float, geometry: Geometry = Geometry.ROLL_OVER_AZIMUTH
    ) -> None:
        if geometry is Geometry.ROLL_OVER_AZIMUTH and sphere.slices_used < 1:
            raise ValueError("alignment: needs great-circle slices of a roll-over-azimuth positioner")
        self._geometry, self._distance, self._k = geometry, distance_m, wavenumber(sphere.frequency_hz)
        self._total, self._to_device = sphere.phi.size, sphere.polar_to_device
        self._first, self._second = angles_of(sphere, geometry)
        columns = self._first.shape[1]
        phi = azimuths(sphere, columns)
        t, p = np.meshgrid(sphere.theta, phi, indexing="ij")
        polar = np.stack([theta_hat(theta=t, phi=p), phi_hat(theta=t, phi=p)])
        # What the probe's two vectors are worth along the polar ones, where everything stands as it should.
        self._nominal = np.einsum("a...i,c...i->ac...", polar, self._seen(ALIGNED)[2])

    def _seen(self, error: Misalignment) -> tuple[FloatArray, FloatArray, FloatArray]:
        """Return (direction of the probe (..., 3), its distance (...), its two vectors (2, ..., 3)) in the polar frame."""
        motion = device_to_lab(self._geometry, first=self._first, second=self._second, misalignment=error).inverse()
        probe = probe_to_lab(distance=self._distance, roll=np.array([0.0, 0.5 * np.pi]), misalignment=error)
        place = np.einsum("...ij,j->...i", motion.rotation, probe.translation[0]) + motion.translation
        radius = np.linalg.norm(place, axis=-1)
        vectors = np.einsum("...ij,cj->c...i", motion.rotation, probe.rotation[:, :, 0])
        return (place / radius[..., None]) @ self._to_device, radius, vectors @ self._to_device

    def read(self, measured: ComplexArray, error: Misalignment, *, of: IntArray | None = None) -> ComplexArray:
        """Return fields (frequency, 2, theta, phi) along the nominal polar vectors.

        measured
            Coefficients (frequency, 2, N(N+2)) of the field on the nominal sphere.
        of
            Which of the sphere's frequencies these are; all of them by default.
        """
        k = self._k if of is None else self._k[of]
        direction, radius, vectors = self._seen(error)
        t, p = theta_phi(direction)
        e = synthesis_at(measured, theta=t, phi=p, accuracy=FORWARD_ACCURACY).reshape(len(measured), 2, *t.shape)
        along = np.stack([np.sum(vectors * theta_hat(theta=t, phi=p), axis=-1),
                          np.sum(vectors * phi_hat(theta=t, phi=p), axis=-1)], axis=1)  # fmt: skip
        way = np.exp(-1j * k[:, None, None] * (radius - self._distance)) * self._distance / radius
        read = np.einsum("ca...,fa...->fc...", along, e) * way[:, None]
        return finer_columns(np.einsum("ac...,fc...->fa...", self._nominal, read), self._total)

    def change(self, measured: ComplexArray, error: Misalignment) -> ComplexArray:
        """Return what an error adds to the fields (frequency, 2, theta, phi) of a nominal range."""
        return np.asarray(self.read(measured, error) - self.read(measured, ALIGNED))


def corrected(
    sphere: MeasuredSphere, step: FarFieldStep, model: Reads[E], error: E, aligned: E
) -> tuple[ComplexArray, ComplexArray]:
    """Return (data as on an aligned range, their waves): what the error adds is taken off, waves found anew.

    Every frequency is corrected for itself: some of them come out as all of them do.
    """
    data = sphere.field.copy()
    waves = resized(step.measured(data), step.keep_order)
    if error == aligned:
        return data, waves
    size = np.linalg.norm(data.reshape(len(data), -1), axis=1)
    moving = np.arange(len(data))
    for _ in range(CORRECTION_ROUNDS):
        extra = model.read(waves[moving], error, of=moving) - model.read(waves[moving], aligned, of=moving)
        better = sphere.field[moving] - extra
        change = np.linalg.norm((better - data[moving]).reshape(len(moving), -1), axis=1)
        data[moving] = better
        waves[moving] = resized(step.measured(better), step.keep_order)
        moving = moving[change >= SETTLED * size[moving]]
        if not moving.size:
            break
    return data, waves
