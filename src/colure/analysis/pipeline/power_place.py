"""Levels of a device that stands beside the axes' intersection, as its own centre sends them.

Without phase no transform knows where a device stands. Its declared place tells how far the probe was from it, in which direction
the probe stood as the device sees it, and how far off its own axis the probe saw the device. These are known, and are taken out.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from colure.analysis.pipeline.power_between import Continuous, PowerOfRegion
from colure.analysis.steps.distance import away
from colure.geometry.conventions import FloatArray
from colure.geometry.directions import theta_phi, unit_vector
from colure.geometry.kinematics import device_to_lab

if TYPE_CHECKING:
    from colure.model.chamber import Chamber
    from colure.waves.expansion import Expansion


def place_factor(
    chamber: Chamber, angles_deg: dict[str, FloatArray], *, ports: int, offset_m: FloatArray, probe: Expansion | None
) -> FloatArray:
    """Return what every reading's power (point, frequency or 1, port) is multiplied by.

    angles_deg
        (point,) convention's angles of the axes.
    offset_m
        (3,) the device's centre from the axes' intersection, device frame.
    probe
        Its pattern; a Gaussian beam of its declared gain if None.
    """
    geometry, distance = chamber.positioner.geometry, chamber.range_length_m
    first, second = (np.deg2rad(angles_deg[name]) for name in geometry.axis_names)
    centre = device_to_lab(geometry, first=first, second=second).rotation @ offset_m
    way = np.array([0.0, 0.0, distance]) - centre
    r = np.linalg.norm(way, axis=-1)
    chi = np.deg2rad(angles_deg.get("probe", np.zeros(len(r))))
    heard = [_heard(probe, chamber.probe.gain_dbi, way / r[:, None], chi + 0.5 * np.pi * port) for port in range(ports)]
    return np.asarray((r / distance)[:, None, None] ** 2 / np.stack(heard, axis=-1))


def _heard(probe: Expansion | None, gain_dbi: float, travel: FloatArray, chi: FloatArray) -> FloatArray:
    """Return the probe's power (point, frequency or 1) towards waves that travel along (point, 3), relative to its axis."""
    if probe is None:
        aside = np.arccos(np.clip(travel[:, 2], -1.0, 1.0))
        return np.asarray(np.exp(-(10.0 ** (gain_dbi / 10.0)) / 4.0 * aside**2))[:, None]
    # The probe looks back at the device: its own axes are x, -y and -z of the lab, turned by chi.
    c, s = np.cos(chi), np.sin(chi)
    x, y = -(travel[:, 0] * c + travel[:, 1] * s), -(travel[:, 0] * s - travel[:, 1] * c)
    theta, phi = np.arccos(np.clip(travel[:, 2], -1.0, 1.0)), np.arctan2(y, x)
    seen = probe.far_field_at(theta=np.append(theta, 0.0), phi=np.append(phi, 0.0))
    power = np.sum(np.abs(seen) ** 2, axis=-2)
    return np.asarray((power[..., :-1] / power[..., -1:]).T)


def seen_from_the_centre(
    theta: FloatArray, phi: FloatArray, gain: FloatArray, *, offset_m: FloatArray, distance_m: float
) -> tuple[FloatArray, FloatArray]:
    """Return (theta, gain (frequency, theta, phi)) in directions from the device's centre instead of the axes' intersection.

    A part of the sphere loses the rings that the device's centre does not see all round.
    """
    u = unit_vector(theta=theta[:, None], phi=phi[None, :])
    r = away(u, offset_m=offset_m, distance_m=distance_m)
    t, p = theta_phi(offset_m / distance_m + r[..., None] * u)
    whole = bool(np.isclose(theta[-1], np.pi))
    kept = np.all(t <= theta[-1], axis=1) | whole
    count = kept.size if kept.all() else int(np.argmin(kept))
    t, p = t[:count], p[:count]
    where = t.ravel(), np.mod(p.ravel() - phi[0], 2.0 * np.pi)
    read = np.stack(
        [Continuous(one).sampled_at(*where) if whole else PowerOfRegion(theta, one).at(*where) for one in gain]
    )
    lowest = gain.min(axis=(1, 2))[:, None, None]
    return theta[:count], np.maximum(read.reshape(len(gain), *t.shape), lowest)
