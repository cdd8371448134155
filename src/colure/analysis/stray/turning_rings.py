"""The device's own far field in fixed directions of the room, ring by ring: what a turn about the polar axis leaves to compute.

While only the carried axis turns, a fixed direction of the room runs along a circle of constant polar angle of the device. So the
field there is a short Fourier series, and what walls do to it is the same matrix all along the circle. One series
a circle then takes the place of a field at every direction (derivable).
"""

from __future__ import annotations

import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray
from colure.geometry.directions import phi_hat, tangents, theta_hat, theta_phi
from colure.waves.circles import Circles

#: A turn is one about the polar axis when its matrix is so near to one.
ABOUT_AXIS = 1e-9


class TurningRings:
    """Poses of a double-sided scan, of which every half turn of the carried axis is a part of a circle of the device.

    rotation (theta, column, 3, 3)
        Polar frame to room at every direction; the second half of the columns may begin elsewhere (seen from the other side).
    probe (component, lab axis, theta, column)
        What the probe's axes are worth along the polar vectors.
    """

    def __init__(self, rotation: FloatArray, probe: FloatArray, step: float) -> None:
        self._half = rotation.shape[1] // 2
        self._first = np.stack([rotation[:, 0], rotation[:, self._half]], axis=1)  # theta, half
        theta, columns = rotation.shape[:2]
        self._probe = probe.reshape(*probe.shape[:2], theta, 2, columns // 2)
        self._step = step

    @staticmethod
    def of(rotation: FloatArray, probe: FloatArray) -> TurningRings | None:
        """Return the rings of poses; None where poses do not turn about the polar axis from column to column."""
        columns = rotation.shape[1]
        if columns % 2 or columns < 4:
            return None
        step = 2.0 * np.pi / columns
        halves = rotation.reshape(len(rotation), 2, columns // 2, 3, 3)
        turned = np.einsum("thcji,thjk->thcik", halves, halves[:, :, 0])
        for sense in (1.0, -1.0):
            angle = sense * step * np.arange(columns // 2)
            c, s, zero = np.cos(angle), np.sin(angle), np.zeros_like(angle)
            about = np.stack([c, -s, zero, s, c, zero, zero, zero, zero + 1.0], axis=-1).reshape(-1, 3, 3)
            if np.abs(turned - about).max() < ABOUT_AXIS:
                return TurningRings(rotation, probe, sense * step)
        return None

    def through_mirrors(self, device: Circles, directions: FloatArray, mirrors: ComplexArray) -> ComplexArray:
        """Return (set, frequency, 2, theta, column) for mirrors (set, frequency, wall, 2, 2); see `Wall.through_mirrors`.

        device
            Its field (frequency,) in the polar frame.
        """
        # Vectors of the room as the device sees them where each half turn begins: (theta, half, wall, ...).
        t, p = theta_phi(np.einsum("thji,wj->thwi", self._first, directions))
        local = np.stack([theta_hat(theta=t, phi=p), phi_hat(theta=t, phi=p)])
        across = np.array([tangents(d) for d in directions])
        turned = np.einsum("thji,wbj->bthwi", self._first, across)
        share = np.einsum("ethwi,bthwi->thewb", local, turned)
        sets, count, walls = mirrors.shape[:3]
        matrix = np.einsum("sfwab,thewb->thfsaew", mirrors, share).astype(np.complex64)
        matrix = matrix.reshape(*t.shape[:2], count, 2 * sets, 2 * walls)
        start = np.exp(1j * device.orders * p[..., None]).astype(np.complex64)  # theta, half, wall, order
        start = start[:, :, None, None, None]
        # Of every wall its components side by side: theta, half, frequency, sign of the order, component, wall, order.
        spectra = np.empty((*t.shape[:2], count, 2, 2, walls, device.orders.size), np.complex64)
        begin = 0
        for part in device.at(t.ravel()):
            which = slice(begin, begin + part.shape[-1])
            seen = part.reshape(*t.shape, *part.shape[1:])
            np.multiply(np.moveaxis(seen, 2, 5), start[..., which], out=spectra[..., which])
            begin += part.shape[-1]
        spectra = spectra.reshape(*spectra.shape[:4], 2 * walls, -1)
        turn = np.exp(1j * self._step * device.orders[:, None] * np.arange(self._half)).astype(np.complex64)
        # Orders below zero are the conjugate of what the conjugate matrix makes of the second spectra.
        above, below = matrix @ spectra[:, :, :, 0], matrix @ spectra[:, :, :, 1].conj()
        below[..., device.orders == 0] = 0.0
        lab = np.concatenate([above, below], axis=-1).reshape(-1, 2 * device.orders.size)
        lab = (lab @ np.concatenate([turn, turn.conj()])).reshape(*t.shape[:2], count, sets, 2, -1)
        # lab: theta, half, frequency, set, lab axis, column; out: the same with a component instead of the lab axis
        probe = self._probe.transpose(2, 3, 0, 1, 4)[:, :, None, None].astype(np.float32)
        out = np.sum(probe * lab[:, :, :, :, None], axis=-2)
        out = np.ascontiguousarray(out.transpose(3, 2, 4, 0, 1, 5), complex)
        return out.reshape(*out.shape[:4], -1)
