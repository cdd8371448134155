"""The true figures of the simulated device, from its closed-form far field alone.

Written without any of the analysis code: dense closed-form evaluation and scalar root and
maximum searches, so that a mistake there cannot hide here.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

import numpy as np
from scipy.optimize import brentq, minimize, minimize_scalar

from colure.geometry.conventions import ComplexArray, FloatArray
from colure.model.campaign import Campaign
from colure.model.pattern import build_pattern
from colure.twin.antennas import panel, probe_ports
from colure.twin.sources import Cluster

if TYPE_CHECKING:
    import xarray as xr


def device_truth(campaign: Campaign) -> list[dict[str, float]]:
    """Return the true figures of the simulated device, one dictionary per frequency."""
    offset = tuple(1e-3 * x for x in campaign.device.offset_mm)
    frequencies = campaign.goal.frequency_hz
    device = panel(frequencies, centre_m=(offset[0], offset[1], offset[2]))
    return figures_of(device, campaign.device.slant_deg)


def figures_of(device: Cluster, slant_deg: float) -> list[dict[str, float]]:
    """Return the true figures of any cluster, one dictionary per frequency."""
    slant = float(np.deg2rad(slant_deg))
    return [_figures(_at(device, index), slant) for index in range(device.frequency_hz.size)]


def probe_calibration(frequency_hz: FloatArray, step_deg: float = 5.0) -> xr.Dataset:
    """Return the simulated probe's co-polar pattern as its calibration would state it."""
    probe = probe_ports(frequency_hz, cross_polar_db=-200.0)[0]
    theta = np.deg2rad(np.arange(0.0, 180.0 + step_deg / 2, step_deg))
    phi = np.deg2rad(np.arange(0.0, 360.0 - step_deg / 2, step_deg))
    t, p = np.meshgrid(theta, phi, indexing="ij")
    st, ct, sp, cp = np.sin(t), np.cos(t), np.sin(p), np.cos(p)
    field = probe.far_field(np.stack([st * cp, st * sp, ct], -1).reshape(-1, 3))
    field = field.reshape(frequency_hz.size, *t.shape, 3)
    e_theta = field[..., 0] * ct * cp + field[..., 1] * ct * sp - field[..., 2] * st
    e_phi = -field[..., 0] * sp + field[..., 1] * cp
    return build_pattern(
        np.stack([e_theta, e_phi], axis=1),
        frequency_hz=frequency_hz,
        theta=theta,
        phi=phi,
        quantity="gain",
        phase_reference="probe reference point",
    ).assign_attrs(note="Invented demo data: co-polar pattern of the simulated probe.")


def _at(device: Cluster, index: int) -> Cluster:
    one = slice(index, index + 1)
    return Cluster(
        device.frequency_hz[one],
        device.position,
        device.electric,
        device.magnetic,
        device.weights[one],
        device.efficiency[one],
    )


def _figures(device: Cluster, slant: float) -> dict[str, float]:
    scale = np.sqrt(2.0 * np.pi * device.efficiency / device.power())

    def field(direction: FloatArray) -> ComplexArray:
        return _field(device, np.atleast_2d(direction), float(scale[0]))

    def intensity(angles: FloatArray) -> float:
        return float(np.sum(np.abs(field(_from_azimuth_elevation(*angles))) ** 2))

    start = _coarse_peak(field)
    best = minimize(lambda a: -intensity(a), start, method="Nelder-Mead", options={"xatol": 1e-9, "fatol": 1e-13})
    azimuth, elevation = (float(x) for x in best.x)
    peak = intensity(best.x)
    direction = _from_azimuth_elevation(azimuth, elevation)
    co_vector = _ludwig3(direction, slant)
    across = np.cross(direction, co_vector)
    at_peak = field(direction)[0]
    co, cross = complex(at_peak @ co_vector), complex(at_peak @ _ludwig3(direction, slant + np.pi / 2))
    efficiency_db = float(10.0 * np.log10(device.efficiency[0]))
    gain = 10.0 * np.log10(peak)
    result = {
        "gain_dbi": gain,
        "directivity_dbi": gain - efficiency_db,
        "efficiency_db": efficiency_db,
        "beam_azimuth_deg": np.rad2deg(azimuth),
        "beam_elevation_deg": np.rad2deg(elevation),
        "xpd_db": 20.0 * np.log10(abs(co) / abs(cross)),
        "axial_ratio_db": _axial_ratio_db(co, cross),
        "front_to_back_db": 10.0 * np.log10(peak / float(np.sum(np.abs(field(-direction)) ** 2))),
    }
    for plane, tangent in (("e", co_vector), ("h", across)):

        def level(angle: float | FloatArray, tangent: FloatArray = tangent) -> FloatArray:
            a = np.atleast_1d(angle)[:, None]
            d = np.cos(a) * direction + np.sin(a) * tangent
            return np.asarray(np.abs(np.sum(field(d) * _ludwig3(d, slant), axis=-1)))

        result[f"beamwidth_{plane}_deg"] = _beamwidth(level)
        result[f"side_lobe_{plane}_db"] = _side_lobe(level)
    return {name: float(value) for name, value in result.items()}


def _field(device: Cluster, u: FloatArray, scale: float) -> ComplexArray:
    """Closed-form far field of one frequency, shape (count, 3)."""
    k = float(device.k[0])
    phase = np.exp(1j * k * (u @ device.position.T)) * device.weights[0]
    p, m = phase @ device.electric, phase @ device.magnetic
    across = p - u * np.sum(p * u, axis=-1, keepdims=True)
    return np.asarray(scale * (-1j * k / (4.0 * np.pi)) * (across - np.cross(u, m)))


def _from_azimuth_elevation(azimuth: float, elevation: float) -> FloatArray:
    return np.array([np.sin(azimuth) * np.cos(elevation), np.sin(elevation), np.cos(azimuth) * np.cos(elevation)])


def _ludwig3(direction: FloatArray, slant: float) -> FloatArray:
    """Ludwig-3 co-polar vectors of unit directions (..., 3): parallel transport of the z-pole's frame."""
    d = np.asarray(direction)
    reference = np.array([np.cos(slant), np.sin(slant), 0.0])
    along = np.sum(d * reference, axis=-1, keepdims=True)
    # Rotate the reference from +z onto d about z x d: r - d.r (d + z) / (1 + d.z).
    return np.asarray(reference - along / (1.0 + d[..., 2:]) * (d + np.array([0.0, 0.0, 1.0])))


def _coarse_peak(field: Callable[[FloatArray], ComplexArray]) -> FloatArray:
    axis = np.deg2rad(np.arange(-80.0, 80.1, 2.0))
    az, el = (g.ravel() for g in np.meshgrid(axis, axis, indexing="ij"))
    d = np.stack([np.sin(az) * np.cos(el), np.sin(el), np.cos(az) * np.cos(el)], axis=-1)
    best = int(np.argmax(np.sum(np.abs(field(d)) ** 2, axis=-1)))
    return np.array([az[best], el[best]])


def _axial_ratio_db(co: complex, cross: complex) -> float:
    """From the eigenvalues of the real coherency matrix: squares of the ellipse's axes."""
    matrix = np.array([[abs(co) ** 2, (co * np.conj(cross)).real], [(co * np.conj(cross)).real, abs(cross) ** 2]])
    small, large = np.linalg.eigvalsh(matrix)
    return float(10.0 * np.log10(large / small))


def _beamwidth(level: Callable[[float | FloatArray], FloatArray]) -> float:
    half = level(0.0)[0] / np.sqrt(2.0)
    ends = []
    for sign in (1.0, -1.0):
        angle = np.deg2rad(np.arange(0.0, 90.0, 0.5))
        first = int(np.flatnonzero(level(sign * angle) < half)[0])
        ends.append(brentq(lambda a, s=sign: float(level(s * a)[0] - half), angle[first - 1], angle[first], xtol=1e-12))
    return float(np.rad2deg(sum(ends)))


def _side_lobe(level: Callable[[float | FloatArray], FloatArray]) -> float:
    found = []
    for sign in (1.0, -1.0):
        angle = np.deg2rad(np.arange(0.0, 90.0, 0.1))
        values = level(sign * angle)
        inner = np.arange(1, angle.size - 1)
        dips = inner[(values[inner] < values[inner - 1]) & (values[inner] <= values[inner + 1])]
        dips = dips[values[dips] < 0.7 * values[0]]
        if dips.size == 0:
            continue
        tops = inner[(inner > dips[0]) & (values[inner] > values[inner - 1]) & (values[inner] >= values[inner + 1])]
        if tops.size == 0:
            continue
        i = int(tops[0])
        top = minimize_scalar(
            lambda a, s=sign: -float(level(s * a)[0]), bounds=(angle[i - 1], angle[i + 1]), method="bounded",
            options={"xatol": 1e-10},
        )  # fmt: skip
        found.append(-top.fun)
    return float(20.0 * np.log10(max(found) / level(0.0)[0])) if found else float("nan")
