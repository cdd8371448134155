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
from colure.twin.antennas import probe_ports
from colure.twin.devices import maker_of
from colure.twin.sources import Cluster

if TYPE_CHECKING:
    import xarray as xr


def device_truth(campaign: Campaign) -> list[dict[str, float]]:
    """Return the true figures of the simulated device, one dictionary per frequency."""
    device = maker_of(campaign)(campaign.goal.frequency_hz)
    return figures_of(device, campaign.device.slant_deg)


def figures_of(device: Cluster, slant_deg: float) -> list[dict[str, float]]:
    """Return the true figures of any cluster, one dictionary per frequency."""
    slant = float(np.deg2rad(slant_deg))
    found = [_figures(_at(device, index), slant) for index in range(device.frequency_hz.size)]
    _along_the_band(found, device.frequency_hz)
    return found


def far_field_on(device: Cluster, index: int, theta: FloatArray, phi: FloatArray) -> ComplexArray:
    """Return the closed-form far field (2, theta, phi) at one frequency on a grid of radians, up to a factor."""
    return np.asarray(_on_grid(_at(device, index), theta, phi)[0])


def _on_grid(cluster: Cluster, theta: FloatArray, phi: FloatArray) -> ComplexArray:
    """Return (frequency, 2, theta, phi): the far field's components on a grid of radians."""
    t, p = np.meshgrid(theta, phi, indexing="ij")
    st, ct, sp, cp = np.sin(t), np.cos(t), np.sin(p), np.cos(p)
    field = cluster.far_field(np.stack([st * cp, st * sp, ct], -1).reshape(-1, 3)).reshape(-1, *t.shape, 3)
    e_theta = field[..., 0] * ct * cp + field[..., 1] * ct * sp - field[..., 2] * st
    return np.stack([e_theta, -field[..., 0] * sp + field[..., 1] * cp], axis=1)


def probe_calibration(frequency_hz: FloatArray, step_deg: float = 5.0, *, ring_m: float = 2.6e-3) -> xr.Dataset:
    """Return the simulated probe's co-polar pattern as its calibration would state it."""
    probe = probe_ports(frequency_hz, ring_m=ring_m, cross_polar_db=-200.0)[0]
    theta = np.deg2rad(np.arange(0.0, 180.0 + step_deg / 2, step_deg))
    phi = np.deg2rad(np.arange(0.0, 360.0 - step_deg / 2, step_deg))
    return build_pattern(
        _on_grid(probe, theta, phi),
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


class _Judge:
    """One device at one frequency, and everything that can be read from its closed-form field."""

    def __init__(self, device: Cluster, slant: float) -> None:
        self.device, self.slant = device, slant
        self._scale = float(np.sqrt(2.0 * np.pi * device.efficiency / device.power())[0])
        best = minimize(
            lambda a: -self.intensity(_from_azimuth_elevation(*a)), _coarse_peak(self.field), method="Nelder-Mead",
            options={"xatol": 1e-9, "fatol": 1e-13},
        )  # fmt: skip
        self.azimuth, self.elevation = (float(x) for x in best.x)
        self.direction = _from_azimuth_elevation(self.azimuth, self.elevation)
        self.peak = self.intensity(self.direction)
        self.co_vector = _ludwig3(self.direction, slant)
        self.across = np.cross(self.direction, self.co_vector)

    def field(self, direction: FloatArray) -> ComplexArray:
        """Return Cartesian far fields (count, 3), sqrt(gain)."""
        return _field(self.device, np.atleast_2d(direction), self._scale)

    def intensity(self, direction: FloatArray) -> float:
        """Return |e|^2 in one direction."""
        return float(np.sum(np.abs(self.field(direction)) ** 2))

    def level(self, tangent: FloatArray) -> Callable[[float | FloatArray], FloatArray]:
        """Return the co-polar amplitude over the angle on a great circle through the peak."""

        def at(angle: float | FloatArray) -> FloatArray:
            a = np.atleast_1d(angle)[:, None]
            d = np.cos(a) * self.direction + np.sin(a) * tangent
            return np.asarray(np.abs(np.sum(self.field(d) * _ludwig3(d, self.slant), axis=-1)))

        return at

    def at_peak(self) -> dict[str, float]:
        """Return figures that are read at the peak."""
        at_peak = self.field(self.direction)[0]
        co = complex(at_peak @ self.co_vector)
        cross = complex(at_peak @ _ludwig3(self.direction, self.slant + np.pi / 2))
        efficiency_db = float(10.0 * np.log10(self.device.efficiency[0]))
        gain = 10.0 * np.log10(self.peak)
        right, left = abs(co + 1j * cross) ** 2, abs(co - 1j * cross) ** 2
        # Half the angle from the left- to the right-hand part turns the ellipse.
        tilt = 0.5 * np.rad2deg(np.angle((co + 1j * cross) * np.conj(co - 1j * cross)))
        return {
            "gain_dbi": gain,
            "directivity_dbi": gain - efficiency_db,
            "efficiency_db": efficiency_db,
            "beam_azimuth_deg": np.rad2deg(self.azimuth),
            "beam_elevation_deg": np.rad2deg(self.elevation),
            "xpd_db": 20.0 * np.log10(abs(co) / abs(cross)),
            "axial_ratio_db": _axial_ratio_db(co, cross),
            "front_to_back_db": 10.0 * np.log10(self.peak / self.intensity(-self.direction)),
            "tilt_deg": float(tilt),
            "circularity": (right - left) / (right + left),
            "phase": float(np.angle(co)),
        }

    def of_cuts(self) -> dict[str, float]:
        """Return figures of the principal cuts."""
        found = {}
        for plane, tangent in (("e", self.co_vector), ("h", self.across)):
            level = self.level(tangent)
            found[f"beamwidth_{plane}_deg"] = _beamwidth(level, np.sqrt(0.5))
            found[f"beamwidth_{plane}_10db_deg"] = _beamwidth(level, 10.0**-0.5)
            found[f"side_lobe_{plane}_db"], found[f"null_{plane}_db"] = _side_lobe_and_null(level)
        return found

    def worst_xpd_db(self) -> float:
        """Return the worst cross-polar discrimination within half power, along 16 rays from the peak."""
        worst = np.inf
        for turn in np.arange(16) * np.pi / 8.0:
            tangent = np.cos(turn) * self.co_vector + np.sin(turn) * self.across
            level = self.level(tangent)
            angle = np.linspace(0.0, _edge(level, np.sqrt(0.5), 1.0), 61)[:, None]
            d = np.cos(angle) * self.direction + np.sin(angle) * tangent
            e = self.field(d)
            co = np.abs(np.sum(e * _ludwig3(d, self.slant), axis=-1))
            cross = np.abs(np.sum(e * _ludwig3(d, self.slant + np.pi / 2), axis=-1))
            worst = min(worst, float(np.min(20.0 * np.log10(co / cross))))
        return worst

    def over_the_sphere(self) -> dict[str, float]:
        """Return the highest lobe besides the peak, the front-to-rear ratio, and the power radiated upwards (+y)."""
        theta, phi = np.deg2rad(np.arange(1.0, 180.0, 2.0)), np.deg2rad(np.arange(0.0, 360.0, 2.0))
        t, p = np.meshgrid(theta, phi, indexing="ij")
        d = np.stack([np.sin(t) * np.cos(p), np.sin(t) * np.sin(p), np.cos(t)], axis=-1)
        power = np.sum(np.abs(self.field(d.reshape(-1, 3))) ** 2, axis=-1).reshape(t.shape)
        highest, inner = 0.0, power[1:-1]
        top = np.ones(inner.shape, bool)
        for down in (0, 1, 2):
            for side in (-1, 0, 1):
                top &= inner >= np.roll(power[down : down + inner.shape[0]], side, axis=1)
        for i, j in np.argwhere(top & (inner > 0.3 * np.sort(inner[top])[-2])):
            at = self._climb(d[i + 1, j])
            if at @ self.direction < np.cos(np.deg2rad(3.0)):
                highest = max(highest, self.intensity(at))
        rear = d @ -self.direction >= np.cos(np.deg2rad(30.0))
        at = self._climb(d[rear][int(np.argmax(power[rear]))])
        inside = float(at @ -self.direction) >= np.cos(np.deg2rad(30.0))
        most = max(float(power[rear].max()), self.intensity(at) if inside else 0.0)
        nodes, weights = np.polynomial.legendre.leggauss(48)
        v = 0.5 * (nodes + 1.0)  # from the horizon to +y, evenly in solid angle
        turn = np.deg2rad(np.arange(0.0, 360.0, 2.5))
        vv, tt = np.meshgrid(v, turn, indexing="ij")
        across = np.sqrt(1.0 - vv**2)
        up = np.stack([across * np.sin(tt), vv, across * np.cos(tt)], axis=-1)
        ring = np.sum(np.abs(self.field(up.reshape(-1, 3))) ** 2, axis=-1).reshape(vv.shape).mean(axis=1)
        share = 0.5 * float(weights @ ring) * 2.0 * np.pi / (4.0 * np.pi * self.device.efficiency[0])
        return {
            "side_lobe_highest_db": 10.0 * np.log10(highest / self.peak),
            "front_to_rear_db": 10.0 * np.log10(self.peak / most),
            "upper_share_db": 10.0 * np.log10(share),
        }

    def _climb(self, start: FloatArray) -> FloatArray:
        """Return the local maximum of |e|^2 near a direction."""
        one = np.cross(start, [1.0, 0.0, 0.0] if abs(start[0]) < 0.7 else [0.0, 1.0, 0.0])
        one = one / np.linalg.norm(one)
        two = np.cross(start, one)

        def place(a: FloatArray) -> FloatArray:
            d = start + a[0] * one + a[1] * two
            return np.asarray(d / np.linalg.norm(d))

        found = minimize(
            lambda a: -self.intensity(place(a)) / self.peak, np.zeros(2), method="Nelder-Mead",
            options={"xatol": 1e-7, "fatol": 1e-11, "initial_simplex": [[0, 0], [0.02, 0], [0, 0.02]]},
        )  # fmt: skip
        return place(found.x)

    def phase_centre_mm(self, cone_deg: float = 8.0) -> FloatArray:
        """Return the point (3,) about which the co-polar phase in a cone about the peak is flattest, power-weighted."""
        angle = np.deg2rad(np.linspace(0.0, cone_deg, 13))[1:]
        turn = np.deg2rad(np.arange(0.0, 360.0, 10.0))
        a, p = np.meshgrid(angle, turn, indexing="ij")
        ring = np.cos(p)[..., None] * self.co_vector + np.sin(p)[..., None] * self.across
        d = (np.cos(a)[..., None] * self.direction + np.sin(a)[..., None] * ring).reshape(-1, 3)
        co = np.sum(self.field(d) * _ludwig3(d, self.slant), axis=-1)
        k = float(self.device.k[0])
        # The panel's own place takes most of the phase off, so that the rest does not wrap.
        guess = self.device.position.mean(axis=0)
        middle = complex(np.sum(self.field(self.direction) * self.co_vector))
        rest = np.angle(co * np.exp(-1j * k * (d - self.direction) @ guess) * np.conj(middle) / np.abs(middle))
        root = np.sqrt(np.abs(co) ** 2 * np.sin(a.ravel()))
        design = np.concatenate([k * (d - self.direction), np.ones((len(d), 1))], axis=1)
        found = np.linalg.lstsq(design * root[:, None], rest * root, rcond=None)[0]
        return np.asarray(1e3 * (guess + found[:3]))


def _figures(device: Cluster, slant: float) -> dict[str, float]:
    judge = _Judge(device, slant)
    x, y, z = judge.phase_centre_mm()
    result = {
        **judge.at_peak(),
        **judge.of_cuts(),
        **judge.over_the_sphere(),
        "xpd_worst_db": judge.worst_xpd_db(),
        "phase_centre_x_mm": x,
        "phase_centre_y_mm": y,
        "phase_centre_z_mm": z,
    }
    return {name: float(value) for name, value in result.items()}


def _along_the_band(found: list[dict[str, float]], frequency_hz: FloatArray) -> None:
    """Add group delay about its mean, squint and the phase centre's wander; takes the helper `phase` away."""
    phases = np.unwrap([one.pop("phase") for one in found])
    if frequency_hz.size < 2:
        return
    delay = -1e9 * np.gradient(phases, frequency_hz) / (2.0 * np.pi)
    beams = [np.deg2rad([one["beam_azimuth_deg"], one["beam_elevation_deg"]]) for one in found]
    middle = beams[len(beams) // 2]
    centres = [np.array([one[f"phase_centre_{axis}_mm"] for axis in "xyz"]) for one in found]
    for one, centre in zip(found, centres, strict=True):
        way = centre - centres[len(centres) // 2]
        one["phase_centre_wander_mm"] = float(np.hypot(np.hypot(way[0], way[1]), way[2]) * np.sign(max(way, key=abs)))
    for one, value, beam in zip(found, delay - delay.mean(), beams, strict=True):
        one["group_delay_ns"] = float(value)
        apart = np.arccos(np.clip(_from_azimuth_elevation(*beam) @ _from_azimuth_elevation(*middle), -1.0, 1.0))
        moved = beam - middle
        one["squint_deg"] = float(np.rad2deg(apart) * np.sign(moved[int(np.argmax(np.abs(moved)))]))


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


def _edge(level: Callable[[float | FloatArray], FloatArray], share: float, sign: float) -> float:
    """Return the angle at which the main lobe has fallen to a share of its amplitude, radians."""
    wanted = level(0.0)[0] * share
    angle = np.deg2rad(np.arange(0.0, 90.0, 0.5))
    first = int(np.flatnonzero(level(sign * angle) < wanted)[0])
    return float(brentq(lambda a: float(level(sign * a)[0] - wanted), angle[first - 1], angle[first], xtol=1e-12))


def _beamwidth(level: Callable[[float | FloatArray], FloatArray], share: float) -> float:
    return float(np.rad2deg(_edge(level, share, 1.0) + _edge(level, share, -1.0)))


def _side_lobe_and_null(level: Callable[[float | FloatArray], FloatArray]) -> tuple[float, float]:
    """Return (higher first side lobe, shallower first null) of a cut in dB re its centre."""
    lobes, nulls = [], []
    for sign in (1.0, -1.0):
        angle = np.deg2rad(np.arange(0.0, 90.0, 0.1))
        values = level(sign * angle)
        inner = np.arange(1, angle.size - 1)
        dips = inner[(values[inner] < values[inner - 1]) & (values[inner] <= values[inner + 1])]
        dips = dips[values[dips] < 0.7 * values[0]]
        if dips.size == 0:
            continue
        nulls.append(_extreme(level, sign, angle[int(dips[0]) - 1], angle[int(dips[0]) + 1], 1.0))
        tops = inner[(inner > dips[0]) & (values[inner] > values[inner - 1]) & (values[inner] >= values[inner + 1])]
        if tops.size:
            lobes.append(_extreme(level, sign, angle[int(tops[0]) - 1], angle[int(tops[0]) + 1], -1.0))
    centre = level(0.0)[0]
    return tuple(float(20.0 * np.log10(max(found) / centre)) if found else float("nan") for found in (lobes, nulls))  # type: ignore[return-value]


def _extreme(
    level: Callable[[float | FloatArray], FloatArray], sign: float, low: float, high: float, down: float
) -> float:
    """Return the least (down = 1) or largest (-1) amplitude between two angles."""
    found = minimize_scalar(
        lambda a: down * float(level(sign * a)[0]), bounds=(low, high), method="bounded", options={"xatol": 1e-10}
    )
    return float(down * found.fun)
