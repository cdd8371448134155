"""The true figures of the simulated device, from its closed-form far field alone.

Written without any of the analysis code: dense closed-form evaluation and scalar root and
maximum searches, so that a mistake there cannot hide here. The definitions are the same:
what a figure says is a convention, how it is found is not.
"""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from functools import cached_property
from typing import TYPE_CHECKING

import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray
from colure.model.bands import stretches
from colure.model.definitions import MOST_CROSS_DB, NEVER_FALLS, Definition, definitions_for
from colure.model.evaluation import Evaluation, Window
from colure.model.pattern import build_pattern
from colure.twin.antennas import probe_ports
from colure.twin.sources import Cluster
from colure.twin.true_ellipse import (
    along_grids,
    amplitude_db,
    axial_ratio_db,
    azimuth_elevation_deg,
    coherency,
    down_db,
    from_azimuth_elevation,
    ludwig3,
)
from colure.twin.true_field import LevelOver, TrueField
from colure.values import holds_arrays

if TYPE_CHECKING:
    import xarray as xr

HALF = float(np.sqrt(0.5))
#: The same conventions as the figures' definitions state: see `docs/reference` and IEEE Std 145.
OMNIDIRECTIONAL_DB, EQUAL_DB = 1.0, 0.02
LINEAR_DB, TILT_DEG, FORWARD_DEG, BEHIND_DEG, NO_CO_DEG = 10.0, 15.0, 60.0, 120.0, 150.0
CIRCULAR_DB = 0.05
CONTOUR_DB, LARGEST_CONE_DEG, RIPPLE_LIMIT_DEG = 10.0, 60.0, 10.0
RAYS = 16
#: Lobes that are climbed, at most.
MOST_LOBES = 16
#: Shares of solid angle, angles and directions that the phase centre's cone is made of.
CONE_RINGS, CONE_COLUMNS = 24, 36


@dataclass(frozen=True)
class TrueFigure:
    """One true figure: its value and unit, and why there is none where it is nan."""

    value: float
    unit: str
    reason: str = ""


@dataclass(frozen=True)
@holds_arrays
class TruthSettings:
    """What figures depend on besides the device.

    slant_deg: the declared co-polar direction; region_deg: polar angle up to which it is measured; one_polarization: only the
    declared component is; state: picks the commanded direction; mismatch_loss_db: (frequency,) what the device's reflection
    costs, None where it is not known; hands: the device is declared not linear.
    """

    slant_deg: float = 0.0
    settings: Evaluation = field(default_factory=Evaluation)
    region_deg: float = 180.0
    one_polarization: bool = False
    state: str = "beam"
    mismatch_loss_db: FloatArray | None = None
    hands: bool = False


def figures_of(device: Cluster, slant_deg: float) -> list[dict[str, float]]:
    """Return the true figures of any cluster over the whole sphere, one dictionary per frequency; nan where there is none."""
    return [{name: one.value for name, one in row.items()} for row in truth_of(device, TruthSettings(slant_deg))]


def truth_of(device: Cluster, asked: TruthSettings) -> list[dict[str, TrueFigure]]:
    """Return every true figure of a cluster that was asked for, by name, one dictionary per frequency."""
    judges = [_Judge(device.at(index), asked) for index in range(device.frequency_hz.size)]
    if asked.settings.principal_planes == "measured":
        # The ellipse at the middle frequency is the reference at all of them.
        turned = replace(asked, slant_deg=asked.slant_deg + judges[len(judges) // 2].at_peak()["tilt_deg"])
        judges = [_Judge(device.at(index), turned) for index in range(device.frequency_hz.size)]
    rows = [judge.figures() for judge in judges]
    if len(judges) > 1:
        _along_the_band(rows, judges, device.frequency_hz)
    if asked.mismatch_loss_db is not None:
        for row, loss in zip(rows, asked.mismatch_loss_db, strict=True):
            row["gain_accepted_dbi"] = row["gain_dbi"] + float(loss)
            row["radiation_efficiency_db"] = row["efficiency_db"] + float(loss)
            row["mismatch_loss_db"] = float(loss)
            row["return_loss_db"] = _return_loss_db(float(loss))
    middle = judges[len(judges) // 2]
    every = definitions_for(asked.settings, band=True, reflection=True, hands=asked.hands, reflection_measured=True)
    defined = {one.name: one for one in every}
    return [
        {name: _true(defined[name], value, judge, middle) for name, value in row.items()}
        for row, judge in zip(rows, judges, strict=True)
    ]


def _return_loss_db(mismatch_loss_db: float) -> float:
    """Return what comes back of an available power of which so much is lost by mismatch, dB down; no end for a match."""
    back = 1.0 - 10.0 ** (-mismatch_loss_db / 10.0)
    return float("inf") if back <= 0.0 else float(-10.0 * np.log10(back))


def far_field_on(device: Cluster, index: int, *, theta: FloatArray, phi: FloatArray) -> ComplexArray:
    """Return the closed-form far field (2, theta, phi) at one frequency on a grid of radians, up to a factor."""
    return np.asarray(_on_grid(device.at(index), theta, phi)[0])


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


class _Judge:
    """One device at one frequency, and everything that can be read from its closed-form field."""

    def __init__(self, device: Cluster, asked: TruthSettings) -> None:
        self.asked, self.settings = asked, asked.settings
        self.slant, self.region = float(np.deg2rad(asked.slant_deg)), float(np.deg2rad(asked.region_deg))
        one = asked.one_polarization
        self.field = TrueField(device, only=(lambda d: ludwig3(d, self.slant)) if one else None)
        places, level = self.field.local_maxima(self.region)
        # A dense grid misses a top by less than 2 dB.
        tops = self.field.climb(places[level >= 0.63 * level[0]][:MOST_LOBES], region=self.region)
        levels = self.field.intensity(tops)
        best = int(np.argmax(levels))
        self.direction, self.peak = tops[best], float(levels[best])
        self._places, self._level = places, level
        self._highest_lobe()
        self.vector = self.field.at(self.direction)[0]
        self.tangent = self._e_plane()
        self.normal = np.cross(self.direction, self.tangent)
        self.ripple_deg, self.cone_deg = 0.0, 0.0

    def _e_plane(self) -> FloatArray:
        """Return the tangent (3,) of the E plane: the declared vector, or the major axis of a linear wave that lies elsewhere."""
        one = self._declared(self.slant)
        several = bool(self._no_single_beam())
        two = np.cross(self.direction, one)
        values, axes = np.linalg.eigh(coherency(self.vector @ one, self.vector @ two))
        ratio_db = 10.0 * np.log10(values[1] / max(values[0], 1e-300))
        a, b = axes[:, 1] * (1.0 if axes[0, 1] >= 0.0 else -1.0)
        tilt_deg = float(np.rad2deg(np.arctan2(b, a)))
        forward = self.direction[2] >= np.cos(np.deg2rad(FORWARD_DEG))
        near = forward and abs(tilt_deg) <= TILT_DEG and not several
        if self.settings.principal_planes != "auto" or ratio_db <= LINEAR_DB or near:
            return one
        return np.asarray(a * one + b * two)

    def _declared(self, slant: float) -> FloatArray:
        """Return the declared co-polar vector at the peak: Ludwig's third, or far behind the reference itself, projected."""
        if self.direction[2] >= np.cos(np.deg2rad(BEHIND_DEG)):
            return ludwig3(self.direction, slant)
        reference = np.array([np.cos(slant), np.sin(slant), 0.0])
        flat = reference - (reference @ self.direction) * self.direction
        return np.asarray(flat / np.linalg.norm(flat))

    def _highest_lobe(self) -> None:
        """Find the highest lobe besides the peak, and how far apart they are if they are equal; nan if there is none."""
        away = np.cos(1.5 * self.field.sky_step)
        other = self._places @ self.direction < away
        places = self._places[other]
        tops = np.empty((0, 3))
        self.highest, self.equal_apart_deg = float("nan"), float("nan")
        # On the ridge of a fan beam samples make lobes that are none: they lead to the peak or belong to it, and others are tried.
        for begin in range(0, len(places), MOST_LOBES):
            tops = self.field.climb(places[begin : begin + MOST_LOBES], region=self.region)
            tops = tops[tops @ self.direction < away]
            levels = self.field.intensity(tops)
            if len(tops) and np.isnan(self.equal_apart_deg) and levels.max() >= 10.0 ** (-EQUAL_DB / 10.0) * self.peak:
                at = tops[int(np.argmax(levels))]
                self.equal_apart_deg = float(np.rad2deg(np.arccos(np.clip(at @ self.direction, -1.0, 1.0))))
            own = [
                level for level, top in zip(levels, tops, strict=True) if self.field.apart(self.direction, top, level)
            ]
            if own:
                self.highest = float(max(own))
                break

    def level(self, tangent: FloatArray) -> LevelOver:
        """Return the amplitude over the angle on a great circle through the peak: of both polarizations, or the co-polar one."""

        def at(angle: float | FloatArray) -> FloatArray:
            a = np.atleast_1d(angle)[:, None]
            d = np.cos(a) * self.direction + np.sin(a) * tangent
            if self.settings.cuts_of == "co":
                amplitude = np.abs(np.sum(self.field.at(d) * ludwig3(d, self.slant), axis=-1))
            else:
                amplitude = np.sqrt(self.field.intensity(d))
            return np.where(d[:, 2] < np.cos(min(self.region + 1e-9, np.pi)) - 1e-12, np.nan, amplitude)

        return at

    def figures(self) -> dict[str, float]:
        """Return every figure that needs no other frequency."""
        centre = self.phase_centre_mm()
        values = {
            **self.at_peak(),
            **self.of_cuts(),
            **self.over_the_sphere(),
            **self.of_powers(),
            "xpd_worst_db": self.worst_xpd_db(),
            **{f"phase_centre_{axis}_mm": value for axis, value in zip("xyz", centre, strict=True)},
        }
        return {name: float(value) for name, value in values.items()}

    @property
    def axial_ratio_db(self) -> float:
        """Of the wave at the peak; infinite for a linear one."""
        return axial_ratio_db(*self._co_cross)

    @cached_property
    def _co_cross(self) -> tuple[complex, complex]:
        """Ludwig's third components at the peak, wherever it points."""
        co, cross = (complex(self.vector @ ludwig3(self.direction, self.slant + turn)) for turn in (0.0, 0.5 * np.pi))
        return co, cross

    def at_peak(self) -> dict[str, float]:
        """Return figures that are read at the peak."""
        co, cross = self._co_cross
        efficiency_db = 10.0 * np.log10(self.field.efficiency)
        gain = 10.0 * np.log10(self.peak)
        right, left = abs(co + 1j * cross) ** 2, abs(co - 1j * cross) ** 2
        azimuth, elevation = azimuth_elevation_deg(self.direction)
        figures = {
            "gain_dbi": gain,
            "directivity_dbi": gain - efficiency_db,
            "efficiency_db": efficiency_db,
            "beam_azimuth_deg": azimuth,
            "beam_elevation_deg": elevation,
            "xpd_db": down_db(abs(cross), abs(co)),
            "axial_ratio_db": self.axial_ratio_db,
            "front_to_back_db": down_db(float(np.sqrt(self.field.intensity(-self.direction)[0])), np.sqrt(self.peak)),
            # Half the angle from the left- to the right-hand part turns the ellipse.
            "tilt_deg": 0.5 * np.rad2deg(np.angle((co + 1j * cross) * np.conj(co - 1j * cross))),
            "circularity": (right - left) / (right + left),
        }
        if self.asked.hands or "circular" in self.settings.components:
            figures |= {
                "gain_right_dbic": 10.0 * np.log10(max(0.5 * right, 1e-30)),
                "gain_left_dbic": 10.0 * np.log10(max(0.5 * left, 1e-30)),
                "xpd_circular_db": abs(10.0 * np.log10(max(right, 1e-30) / max(left, 1e-30))),
                "axial_ratio_signed_db": float(np.copysign(self.axial_ratio_db, right - left)),
            }
        units = {"dBd": ("gain_dbd", gain - 2.15), "linear": ("gain_linear", self.peak)}
        figures |= dict(units[name] for name in self.settings.gain_units)
        figures |= along_grids(self.vector, self.direction, self.settings.components)
        if self.settings.reference_axis_deg is not None:
            axis = from_azimuth_elevation(*np.deg2rad(self.settings.reference_axis_deg))
            figures["squint_axis_deg"] = np.rad2deg(np.arccos(np.clip(axis @ self.direction, -1.0, 1.0)))
            behind = float(np.sqrt(self.field.intensity(-axis)[0]))
            figures["front_to_back_axis_db"] = down_db(behind, np.sqrt(self.peak))
        told = self.settings.commanded_deg.get(self.asked.state)
        if told is not None:
            apart = np.arccos(np.clip(from_azimuth_elevation(*np.deg2rad(told)) @ self.direction, -1.0, 1.0))
            figures["pointing_error_deg"] = np.rad2deg(apart)
        return figures

    def of_cuts(self) -> dict[str, float]:
        """Return figures of the principal cuts, and of those that settings add."""
        figures = {}
        for plane, angle in (("e", 0.0), ("h", 90.0)):
            level = self.level(self._turned(np.deg2rad(angle)))
            figures[f"beamwidth_{plane}_deg"] = self._width(level, HALF)
            for down in self.settings.beamwidth_levels_db:
                figures[f"beamwidth_{plane}_{down:g}db_deg"] = self._width(level, 10.0 ** (-down / 20.0))
            lobe, null = self.field.lobe_and_null(level)
            figures[f"side_lobe_{plane}_db"], figures[f"null_{plane}_db"] = amplitude_db(lobe), amplitude_db(null)
        for angle in self.settings.cut_planes_deg:
            level = self.level(self._turned(np.deg2rad(angle)))
            figures[f"beamwidth_at_{angle:g}_deg"] = self._width(level, HALF)
            figures[f"side_lobe_at_{angle:g}_db"] = amplitude_db(self.field.lobe_and_null(level)[0])
        return figures

    def _turned(self, angle: float) -> FloatArray:
        """Return the tangent (3,) of the plane at an angle (radians) from E towards H."""
        return np.asarray(np.cos(angle) * self.tangent + np.sin(angle) * self.normal)

    def _width(self, level: LevelOver, share: float) -> float:
        return float(np.rad2deg(self.field.edge(level, share, 1.0) + self.field.edge(level, share, -1.0)))

    def worst_xpd_db(self) -> float:
        """Return the worst cross-polar discrimination within half power (or a cone), along 16 rays from the peak."""
        worst = np.inf
        for turn in np.arange(RAYS) * 2.0 * np.pi / RAYS:
            tangent = self._turned(turn)
            cone = self.settings.cone_deg
            end = self.field.edge(self.level(tangent), HALF, 1.0) if cone is None else np.deg2rad(cone)
            angle = np.linspace(0.0, end if np.isfinite(end) else 0.5 * np.pi, 181)[:, None]
            d = np.cos(angle) * self.direction + np.sin(angle) * tangent
            d = d[d[:, 2] >= np.cos(min(self.region + 1e-9, np.pi)) - 1e-12]
            e = self.field.at(d)
            co, cross = (np.abs(np.sum(e * ludwig3(d, self.slant + t), axis=-1)) for t in (0.0, 0.5 * np.pi))
            worst = min(worst, down_db(float(np.max(cross / np.maximum(co, 1e-300))), 1.0))
        return worst if worst > -MOST_CROSS_DB else float("nan")

    def over_the_sphere(self) -> dict[str, float]:
        """Return the highest lobe besides the peak, and the front-to-rear ratio over the closed sector."""
        half_angle = float(np.deg2rad(self.settings.rear_sector_deg))
        rear = self.field.local_maxima(np.pi)[0] if self.region < np.pi else self._places
        near = rear[rear @ -self.direction >= np.cos(half_angle + self.field.sky_step)][:MOST_LOBES]
        tops = self.field.climb(near)
        inside = tops[tops @ -self.direction >= np.cos(half_angle)]
        most = max([self.field.largest_on_rim(-self.direction, half_angle), *self.field.intensity(inside)])
        return {
            "side_lobe_highest_db": 10.0 * np.log10(self.highest / self.peak),
            "front_to_rear_db": down_db(float(np.sqrt(most)), np.sqrt(self.peak)),
        }

    def of_powers(self) -> dict[str, float]:
        """Return shares of the radiated power, coverage, sectors and what a transmitter and a receiver make of the gain."""
        settings, gain, efficiency = self.settings, 10.0 * np.log10(self.peak), 10.0 * np.log10(self.field.efficiency)
        figures = {"upper_share_db": 10.0 * np.log10(self.field.share_about(settings.up, 0.0, 1.0))}
        for band in settings.horizon_bands_deg:
            rise = float(np.sin(np.deg2rad(band)))
            figures[f"horizon_{band:g}_db"] = 10.0 * np.log10(self.field.share_about(settings.up, -rise, rise))
        for percent in settings.coverage_percent:
            figures[f"coverage_{percent:g}_dbi"] = 10.0 * np.log10(max(self.field.exceeded(percent), 1e-20))
        if settings.transmit_power_dbm is not None:
            figures |= {
                "eirp_dbm": settings.transmit_power_dbm + gain,
                "trp_dbm": settings.transmit_power_dbm + efficiency,
            }
        if settings.sensitivity_dbm is not None:
            figures |= {"eis_dbm": settings.sensitivity_dbm - gain, "tis_dbm": settings.sensitivity_dbm - efficiency}
        for window in settings.sectors:
            mean, least = self._sector(window)
            figures[f"sector_{window.name}_mean_dbi"] = 10.0 * np.log10(mean)
            figures[f"sector_{window.name}_min_dbi"] = 10.0 * np.log10(max(least, 1e-20))
        return figures

    def _sector(self, window: Window) -> tuple[float, float]:
        """Return the mean over solid angle and the least of |e|^2 in a sector."""
        from scipy.optimize import minimize

        axes = []
        for low, high in (np.deg2rad(window.azimuth_deg), np.deg2rad(window.elevation_deg)):
            axes.append(np.linspace(low, high, max(9, int((high - low) / (0.15 * self.field.sky_step)) + 1)))
        az, el = np.meshgrid(*axes, indexing="ij")
        d = np.stack([np.sin(az) * np.cos(el), np.sin(el), np.cos(az) * np.cos(el)], axis=-1).reshape(-1, 3)
        power = self.field.intensity(d).reshape(az.shape)
        weighted, weight = (
            np.trapezoid(np.trapezoid(values, axes[1], axis=1), axes[0]) for values in (power * np.cos(el), np.cos(el))
        )
        least = float(power.min())
        for i in np.argsort(power.ravel())[:MOST_LOBES]:
            at = minimize(
                lambda a: float(self.field.intensity(from_azimuth_elevation(a[0], a[1]))[0]) / self.peak,
                [az.ravel()[i], el.ravel()[i]],
                method="L-BFGS-B",
                bounds=[(axis[0], axis[-1]) for axis in axes],
            )
            least = min(least, float(at.fun) * self.peak)
        return float(weighted / weight), least

    def phase_centre_mm(self) -> FloatArray:
        """Return the point (3,) about which the phase is flattest in the cone that ends on the beam's -10 dB contour."""
        edges = [self.field.edge(self.level(self._turned(np.pi * i / (RAYS // 2))), 10.0 ** (-CONTOUR_DB / 20.0), sign)
                 for i in range(RAYS // 2) for sign in (1.0, -1.0)]  # fmt: skip
        limits = [np.deg2rad(LARGEST_CONE_DEG), *(e for e in edges if np.isfinite(e))]
        if self.region < np.pi:
            limits.append(self.region - float(np.arccos(np.clip(self.direction[2], -1.0, 1.0))))
        cone = max(float(min(limits)), 1e-4)
        self.cone_deg = float(np.rad2deg(cone))
        # Middles of rings of equal solid angle.
        angle = np.arccos(1.0 - (np.arange(CONE_RINGS) + 0.5) / CONE_RINGS * (1.0 - np.cos(cone)))
        turn = np.arange(CONE_COLUMNS) * 2.0 * np.pi / CONE_COLUMNS
        a, p = (grid.ravel()[:, None] for grid in np.meshgrid(angle, turn, indexing="ij"))
        ring = np.cos(p) * self.tangent + np.sin(p) * self.normal
        side = np.cos(p) * self.normal - np.sin(p) * self.tangent
        d = np.cos(a) * self.direction + np.sin(a) * ring
        # The E plane's tangent, carried along each great circle: its part along the circle tips with it, the rest stays.
        along = np.cos(p) * (np.cos(a) * ring - np.sin(a) * self.direction) - np.sin(p) * side
        co = np.sum(self.field.at(d) * along, axis=-1)
        root = np.abs(co)
        design = np.concatenate([self.field.k * (d - self.direction), np.ones((len(d), 1))], axis=1)
        # The device's own place takes most of the phase off, so that the rest does not wrap.
        centre, middle = self.field.middle, complex(self.vector @ self.tangent)
        for _ in range(12):
            rest = np.angle(co * np.exp(-1j * self.field.k * (d - self.direction) @ centre) * np.conj(middle))
            step = np.linalg.lstsq(design * root[:, None], rest * root, rcond=1e-12)[0]
            centre = centre + step[:3]
        rest = np.angle(co * np.exp(-1j * (self.field.k * (d - self.direction) @ centre + step[3])) * np.conj(middle))
        self.ripple_deg = float(np.rad2deg(np.sqrt(np.average(rest**2, weights=root**2))))
        return np.asarray(1e3 * centre)

    def reason(self, what: Definition) -> str:
        """Return why a figure does not exist, empty if it does or if only its own search can tell."""
        name = what.name
        if what.sphere and self.region < np.pi - 1e-9:
            return f"undefined: it needs the whole sphere, the region ends at {self.asked.region_deg:g} deg"
        if what.pair and self.asked.one_polarization:
            return "undefined: it needs both polarizations"
        edge = self.region < np.pi - 1e-9 and self.direction[2] <= np.cos(self.region - 1e-6)
        if edge and (what.single_beam or what.at_peak):
            return f"undefined: the strongest direction lies at the edge of the region ({self.asked.region_deg:g} deg)"
        several = self._no_single_beam()
        if what.single_beam and several:
            return several
        no_plane = self.axial_ratio_db < LINEAR_DB and abs(self.direction[2]) < np.cos(np.deg2rad(30.0))
        if several and no_plane and what.in_plane:
            return "undefined: a circularly polarized ring of maxima has neither an E plane nor one direction to declare it in"
        ratio_db = self.axial_ratio_db
        if name == "tilt_deg" and ratio_db < CIRCULAR_DB:
            return f"undefined: the wave is circular (axial ratio {ratio_db:.2g} dB), its ellipse has no axis"
        if name in ("xpd_db", "xpd_worst_db", "tilt_deg") and self.direction[2] < np.cos(np.deg2rad(NO_CO_DEG)):
            return "undefined: Ludwig's third co-polar vector is not defined near -z"
        if what.phase_centre and self.ripple_deg > RIPPLE_LIMIT_DEG:
            return f"undefined: the phase within {self.cone_deg:.3g} deg of the peak ripples by {self.ripple_deg:.0f} deg rms"
        if name == "beam_azimuth_deg" and abs(self.direction[1]) > np.cos(np.deg2rad(0.1)):
            return "undefined: the beam points along y, where azimuth is not defined"
        return ""

    def _no_single_beam(self) -> str:
        behind = self._level[self._places @ self.direction < 0.0]
        if behind.size and behind.max() >= 10.0 ** (-OMNIDIRECTIONAL_DB / 10.0) * self.peak:
            return f"undefined: no single beam (directions more than 90 deg from the peak lie within {OMNIDIRECTIONAL_DB:g} dB of it)"
        if np.isfinite(self.equal_apart_deg):
            return f"undefined: no single beam (two lobes {self.equal_apart_deg:.3g} deg apart are equal)"
        return ""


def _true(what: Definition, value: float, judge: _Judge, middle: _Judge) -> TrueFigure:
    """Return a figure with its unit, and nan with a reason where the device does not have it."""
    reason = judge.reason(what)
    if what.middle:
        reason = reason or middle.reason(what)
    if not reason and np.isnan(value):
        reason = "undefined: the device has none"
        if what.absent == NEVER_FALLS:
            reason = f"omnidirectional in this cut: {NEVER_FALLS}"
            if judge.region < np.pi - 1e-9:
                reason = f"undefined: {NEVER_FALLS} within {judge.asked.region_deg:g} deg of +z"
    return TrueFigure(float("nan") if reason else value, what.unit, reason)


def _along_the_band(rows: list[dict[str, float]], judges: list[_Judge], frequency_hz: FloatArray) -> None:
    """Add group delay about its mean, squint and the phase centre's wander."""
    middle = judges[len(judges) // 2]
    # An ellipse's axis has no sign: every one is taken along the middle frequency's.
    signs = [1.0 if judge.tangent @ middle.tangent >= 0.0 else -1.0 for judge in judges]
    phases = np.array([float(np.angle(s * (j.vector @ j.tangent))) for s, j in zip(signs, judges, strict=True)])
    delay = np.full(frequency_hz.size, np.nan)
    for one in stretches(frequency_hz):
        if one.stop - one.start > 1:
            slope = np.gradient(np.unwrap(phases[one]), frequency_hz[one])
            delay[one] = -1e9 * (slope - slope.mean()) / (2.0 * np.pi)
    centres = [np.array([row[f"phase_centre_{axis}_mm"] for axis in "xyz"]) for row in rows]
    for row, judge, value, centre in zip(rows, judges, delay, centres, strict=True):
        path = centre - centres[len(centres) // 2]
        row["phase_centre_wander_mm"] = float(np.sqrt(path @ path) * np.sign(max(path, key=abs)))
        row["group_delay_ns"] = round(float(value), 9)  # finer is arithmetic
        apart = np.arctan2(
            np.linalg.norm(np.cross(judge.direction, middle.direction)), judge.direction @ middle.direction
        )
        moved = [
            a - b
            for a, b in zip(
                azimuth_elevation_deg(judge.direction), azimuth_elevation_deg(middle.direction), strict=True
            )
        ]
        moved[0] = (moved[0] + 180.0) % 360.0 - 180.0
        row["squint_deg"] = float(np.rad2deg(apart) * np.sign(max(moved, key=abs)))
