"""How figures answer to errors of the waves: all draws at one go, from the field where the figures are read.

The field in a direction is linear in the waves, so that one matrix product gives what every error adds to it. What follows from
it is to first order in an error: how far the peak moves, the edges of the main lobe, the phase about the centre; gain and
radiated power to second order. Moduli (side lobes, nulls, cross-polarization) are answered twice: by what lies along the
field that was measured, for covariances, and by the complex error itself, for their distribution.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from colure.analysis.figures.beams import Near
from colure.analysis.figures.components import component_rows
from colure.analysis.figures.cuts import FarField, beam_at, carried
from colure.analysis.figures.evaluate import FigureSet
from colure.analysis.figures.one_pattern import reference_axis
from colure.analysis.figures.phase_centre import centre_in, centre_rows, cone_of, copolar
from colure.analysis.figures.places import FieldReading, Places, places_of, slopes_at_peak
from colure.analysis.figures.sphere import UP, Sky
from colure.geometry.conventions import ComplexArray, FloatArray, order_of_count, power_db
from colure.geometry.directions import angle_between, azimuth_over_elevation, from_azimuth_over_elevation, theta_phi
from colure.values import holds_arrays
from colure.waves.expansion import Expansion
from colure.waves.harmonics import FieldsAt
from colure.waves.scattered import adjoint_at
from colure.waves.transform import adjoint_synthesis, synthesis

#: A peak is not followed farther than this share of the beam's width, along either axis of it: a fan beam is narrow along one only.
FARTHEST = 0.5
#: Relative accuracy of the rows of the phase centre.
ROW_ACCURACY = 1e-9
#: Turn of the peak over which the phase centre's following is told, radians.
CENTRE_STEP = 1e-3
#: The peak and the four directions about it.
AT_THE_PEAK = 5


@dataclass(frozen=True)
@holds_arrays
class PatternChanges:
    """What errors (n,) do to one pattern: changes (n,) of its figures by name, and what figures along the band need.

    fields (n, place, 2)
        What every error adds to co and cross at the places.
    direction (n, 3), centre_m (n, 3), phase (n,)
        The peak's direction, change of the phase centre in metres, and of the phase at the peak in radians.
    gain_db (n,)
        Change of the intensity at the peak.
    """

    changes: dict[str, FloatArray]
    fields: ComplexArray
    direction: FloatArray
    centre_m: FloatArray
    phase: FloatArray
    gain_db: FloatArray


class Response:
    """One pattern (2, J) with its native figures `values`, ready to say what errors do to them."""

    def __init__(
        self, figures: FigureSet, coefficients: ComplexArray, k: float, near: Near, values: dict[str, float]
    ) -> None:
        self.figures, self.coefficients, self.k, self.near, self.values = figures, coefficients, k, near, values
        self.places: Places = places_of(figures, coefficients, near)
        self._power = float(np.sum(np.abs(coefficients) ** 2))

    @cached_property
    def _fields_at(self) -> FieldsAt:
        """From waves to the components along theta and phi at the places; about the peak small differences count."""
        order, (theta, phi) = FarField(self.coefficients).order, theta_phi(self.places.directions)
        return FieldsAt(order, theta, phi, exact=AT_THE_PEAK)

    @cached_property
    def _rows(self) -> ComplexArray:
        """From waves (2 J,) to the linear figures (row,): radiated power, phase centre, shares of the power."""
        rows = [self.coefficients.conj().reshape(1, -1), self._centre_rows(FarField(self.coefficients).order)]
        return np.concatenate([*rows, *(one.conj().reshape(1, -1) for one in self._shares.values())])

    def _co_and_cross(self, along: ComplexArray) -> ComplexArray:
        """Return co and cross (n, place, 2) of components along theta and phi at the places."""
        turn = self.figures.slant - theta_phi(self.places.directions)[1]
        c, s = np.cos(turn), np.sin(turn)
        first, second = along[..., 0], along[..., 1]
        return np.stack([c * first + s * second, c * second - s * first], axis=-1)

    def _centre_rows(self, order: int) -> ComplexArray:
        """Return rows (3, 2 J) whose imaginary part is the change of the phase centre, metres."""
        if self.near.centre_m is None:
            return np.zeros((3, self.coefficients.size), complex)
        beam = self.places.beam
        cone = cone_of(beam.direction, self.near.cone_deg)
        vectors = FarField(self.coefficients).at(cone.directions)
        co = copolar(vectors, beam, cone.directions)
        theta, phi = theta_phi(cone.directions)
        along = carried(beam.tangent, beam.direction, cone.directions)
        one = np.einsum("pi,pci->cp", along, _hats(theta, phi))
        per_phase = centre_rows(cone, co, self.k) / co
        # Rows of a matrix are what the adjoint makes of them, conjugated: no field of every single wave is needed.
        rows = adjoint_at((per_phase[:, None] * one).conj(), order, theta=theta, phi=phi, accuracy=ROW_ACCURACY)
        return np.asarray(rows.conj().reshape(3, -1))

    @cached_property
    def _centre_follows(self) -> FloatArray:
        """How the phase centre moves (3, 2), metres per radian that the peak moves along its axes.

        The cone is about the peak, and the co-polar vector is carried from there: carried from elsewhere it is turned, and a turn
        is a phase of a circular wave.
        """
        near = self.near
        if near.centre_m is None:
            return np.zeros((3, 2))
        field, peak = FarField(self.coefficients), self.places.directions[0]
        sides = CENTRE_STEP * np.array([[1.0, 0.0], [-1.0, 0.0], [0.0, 1.0], [0.0, -1.0]])
        peaks = peak + sides @ self.places.axes
        peaks /= np.linalg.norm(peaks, axis=1, keepdims=True)
        cones = [cone_of(one, near.cone_deg) for one in peaks]
        at_peaks, *around = np.split(
            field.at(np.concatenate([peaks, *(one.directions for one in cones)])),
            np.cumsum([len(peaks), *(len(one.directions) for one in cones)])[:-1],
        )
        centres = []
        for one, vector, cone, vectors in zip(peaks, at_peaks, cones, around, strict=True):
            beam = beam_at(one, vector, self.figures.slant, plane=near.plane)
            centres.append(centre_in(cone, copolar(vectors, beam, cone.directions), self.k, start=near.centre_m))
        return np.stack([centres[0] - centres[1], centres[2] - centres[3]], axis=-1) / (2.0 * CENTRE_STEP)

    @cached_property
    def _shares(self) -> dict[str, ComplexArray]:
        """Gradients (2, J) of the power radiated into parts of the sphere, by the figure's name."""
        figures, names = self.figures, set(self.figures.names)
        gradients = {}
        if "upper_share_db" in names:
            sky = Sky.of(self.coefficients)
            gradients["upper_share_db"] = _gradient(sky, self.coefficients, sky.side_weights(figures.settings.up))
        for band in figures.settings.horizon_bands_deg:
            turn = UP[figures.settings.up]
            turned = Expansion(self.coefficients, np.asarray(self.k)).rotated(turn)
            sky, half = Sky.of(turned.coefficients), float(np.deg2rad(band))
            weights = sky.belt_weights(0.5 * np.pi - half, 0.5 * np.pi + half)
            gradient = _gradient(sky, turned.coefficients, weights)
            back = Expansion(gradient, np.asarray(self.k)).rotated(np.asarray(turn).T)
            gradients[f"horizon_{band:g}_db"] = back.coefficients
        return {name: one for name, one in gradients.items() if name in names}

    def _solid_share(self, name: str) -> float:
        """Return the part of the whole solid angle that a share of the power counts."""
        bands = {
            f"horizon_{band:g}_db": float(np.sin(np.deg2rad(band))) for band in self.figures.settings.horizon_bands_deg
        }
        return bands.get(name, 0.5)

    def answer(self, errors: ComplexArray) -> PatternChanges:
        """Return what errors of the waves (n, 2, J) do."""
        flat = errors.reshape(len(errors), -1)
        linear = flat @ self._rows.T
        fields = self._co_and_cross(self._fields_at.of(errors))
        along, shares = linear[:, 0], linear[:, 4:]
        added = 2.0 * along.real + np.sum(flat.real**2 + flat.imag**2, axis=1)
        moved, lift = self._peak(fields)
        centre = linear[:, 1:4].imag + moved @ self._centre_follows.T
        gain = power_db(1.0 + lift / self.places.beam.intensity)
        radiated = power_db(1.0 + added / self._power)
        direction = self.places.directions[0] + moved @ self.places.axes
        direction /= np.linalg.norm(direction, axis=1, keepdims=True)
        changes = self._levels(gain, radiated) | self._directions(direction) | self._widths(fields, lift, moved)
        changes |= self._polarization(fields, moved)
        for one in self.places.readings:
            changes[one.name] = self._along(one, fields)
        changes |= {f"phase_centre_{axis}_mm": 1e3 * centre[:, i] for i, axis in enumerate("xyz")}
        for i, name in enumerate(self._shares):
            share, more = self.values[name], added - 2.0 * along.real
            # What an error radiates by itself goes to all sides alike, as far as anyone knows: to second order, as the power.
            mine = share * self._power + 2.0 * shares[:, i].real + self._solid_share(name) * more
            changes[name] = mine / (self._power + added) - share
        # Phase is read where the peak has moved to: off the axes' intersection it runs across the beam.
        at_peak = self._at_peak(fields, moved) - self.places.fields[0]
        phase = np.imag(self._tangent(at_peak) / self._tangent(self.places.fields[:1])[0])
        names = set(self.figures.names)
        return PatternChanges({n: v for n, v in changes.items() if n in names}, fields, direction, centre, phase, gain)

    def _tangent(self, both: ComplexArray) -> ComplexArray:
        """Return the component of fields at the peak (n, 2) along the E plane's tangent."""
        theta, phi = theta_phi(self.places.directions[:1])
        hats, turn = _hats(theta, phi)[0], self.figures.slant - float(phi[0])
        co = np.cos(turn) * hats[0] + np.sin(turn) * hats[1]
        cross = -np.sin(turn) * hats[0] + np.cos(turn) * hats[1]
        return np.asarray(both @ np.array([co, cross]) @ self.places.beam.tangent)

    def _peak(self, fields: ComplexArray) -> tuple[FloatArray, FloatArray]:
        """Return how far the peak moves (n, 2) along the axes, radians, and by how much its intensity rises (n,)."""
        p = self.places
        lift = np.sum(np.abs(p.fields[:5] + fields[:, :5]) ** 2 - np.abs(p.fields[:5]) ** 2, axis=-1)
        slope = slopes_at_peak(lift, p.step)
        moved = self._followed(slope @ self._per_slope)
        return moved, lift[:, 0] + 0.5 * np.sum(slope * moved, axis=-1)

    @cached_property
    def _bent(self) -> tuple[FloatArray, FloatArray]:
        """Second derivatives (2,) of the intensity along the beam's own axes, the narrow one first, and those axes as columns (2, 2)."""
        bent, turn = np.linalg.eigh(self.places.bend)
        return np.minimum(bent, -1e-6 * self.places.beam.intensity), turn

    @cached_property
    def _per_slope(self) -> FloatArray:
        """How far the peak moves (2, 2) for a slope of the intensity along the axes that errors add there."""
        bent, turn = self._bent
        return np.asarray(-(turn / bent) @ turn.T)

    def _followed(self, moved: FloatArray) -> FloatArray:
        """Return moves (n, 2) of the peak, along neither of the beam's axes farther than it is followed."""
        bent, turn = self._bent
        along = moved @ turn
        # Beams of one shape fall to half at distances that go with the root of what bends them.
        widths = np.minimum(self.near.width_deg * np.sqrt(bent[0] / bent), 180.0)
        most = np.deg2rad(FARTHEST * widths)
        return np.asarray(np.clip(along, -most, most) @ turn.T)

    def moves(self, fields: ComplexArray) -> ComplexArray:
        """Return what errors (n, place, 2) do to the peak's place (n, 2), to first order: the real part is its move, radians.

        Errors that turn in phase turn this by as much.
        """
        p = self.places
        lift = 2.0 * np.sum(np.conj(p.fields[:AT_THE_PEAK]) * fields[:, :AT_THE_PEAK], axis=-1)
        return np.asarray(slopes_at_peak(lift, p.step) @ self._per_slope)

    def drifts(self, one: FieldReading, moved: FloatArray) -> ComplexArray:
        """Return what moves (n, 2) of the peak add to the ratios (n, place, component) of a reading whose places follow it."""
        if one.drift is None:
            return np.zeros((len(moved), len(one.where), 2), complex)
        drift = one.drift[..., :1] if one.co else one.drift
        return np.asarray(np.tensordot(self._followed(moved), drift, axes=([1], [1])) / self._top(one))

    def _levels(self, gain: FloatArray, radiated: FloatArray) -> dict[str, FloatArray]:
        return {
            "gain_dbi": gain,
            "gain_accepted_dbi": gain,
            "gain_dbd": gain,
            "gain_linear": gain,
            "directivity_dbi": gain - radiated,
            "efficiency_db": radiated,
            "radiation_efficiency_db": radiated,
            "eirp_dbm": gain,
            "trp_dbm": radiated,
            "eis_dbm": -gain,
            "tis_dbm": -radiated,
        }

    def _directions(self, direction: FloatArray) -> dict[str, FloatArray]:
        peak, settings = self.places.directions[0], self.figures.settings
        then, now = azimuth_over_elevation(peak), azimuth_over_elevation(direction)
        azimuth, elevation = (np.rad2deg(a - b) for a, b in zip(now, then, strict=True))
        changes_deg = {"beam_azimuth_deg": (azimuth + 180.0) % 360.0 - 180.0, "beam_elevation_deg": elevation}
        told = settings.commanded_deg.get(self.figures.state)
        if told is not None:
            az, el = np.deg2rad(told)
            aim = from_azimuth_over_elevation(azimuth=az, elevation=el)
            changes_deg["pointing_error_deg"] = np.rad2deg(
                np.array([angle_between(aim, one) for one in direction]) - angle_between(aim, peak)
            )
        axis = reference_axis(settings)
        if axis is not None:
            apart = np.array([angle_between(axis, one) for one in direction]) - angle_between(axis, peak)
            changes_deg["squint_axis_deg"] = np.rad2deg(apart)
        return changes_deg

    def _widths(self, fields: ComplexArray, lift: FloatArray, moved: FloatArray) -> dict[str, FloatArray]:
        p, changes_deg = self.places, {}
        for one in p.widths:
            then, add = p.fields[one.where], fields[:, one.where]
            rise = np.abs(then + add) ** 2 - np.abs(then) ** 2
            top = np.abs(p.fields[0] + fields[:, 0]) ** 2 - np.abs(p.fields[0]) ** 2
            rise, top = (rise[..., 0], top[:, 0]) if one.co else (rise.sum(axis=-1), lift)
            rise = rise + moved @ one.runs.T
            changes_deg[one.name] = np.rad2deg(np.sum((rise - one.share * top[:, None]) / one.fall, axis=1))
        return changes_deg

    def _at_peak(self, fields: ComplexArray, moved: FloatArray) -> ComplexArray:
        """Return the fields (n, 2) at the peaks as errors have moved them."""
        p = self.places
        slope = np.stack([p.fields[1] - p.fields[2], p.fields[3] - p.fields[4]]) / (2.0 * p.step)
        return np.asarray(p.fields[0] + fields[:, 0] + moved @ slope)

    def _polarization(self, fields: ComplexArray, moved: FloatArray) -> dict[str, FloatArray]:
        at = self._at_peak(fields, moved)
        then, now = (
            0.5 * np.angle(right * np.conj(left)) for right, left in map(_circular, (self.places.fields[:1], at))
        )
        tilt = np.rad2deg(now - then)
        ratio, unit = self.circular, self.circular / max(abs(self.circular), 1e-300)
        along = ((self.circular_error(fields) + moved @ self._circular_drift) * np.conj(unit)).real
        size = abs(ratio)
        sense = np.sign(self.values.get("circularity", 1.0))
        axial = -2.0 * along / (1.0 + size) ** 2
        components = {
            name: (np.conj(value / max(abs(value), 1e-300)) * (error + moved @ self.component_drifts[name])).real
            for name, (value, error) in self.components(fields[:, 0]).items()
        }
        return components | {
            "xpd_circular_db": along,
            "axial_ratio_signed_db": sense * axial,
            "tilt_deg": (tilt + 90.0) % 180.0 - 90.0,
            "axial_ratio_db": axial,
            "circularity": -sense * 4.0 * size * along / (1.0 + size**2) ** 2,
        }

    def components(self, added: ComplexArray) -> dict[str, tuple[complex, ComplexArray]]:
        """Return by figure a partial field at the peak, and what fields (n, 2) added there change of it (n,)."""
        rows = component_rows(self.places.directions[0], self.figures.slant, self.figures.bases)
        return {name: (complex(row @ self.places.fields[0]), np.asarray(added @ row)) for name, row in rows.items()}

    @cached_property
    def component_drifts(self) -> dict[str, ComplexArray]:
        """By figure how a partial field changes (2,) per radian that the peak moves along its axes: field and basis both turn.

        The phase of the whole field, which runs across the beam of a device off the axes' intersection, is no part of it.
        """
        p, partial = self.places, dict[str, list[complex]]()
        for direction, field in zip(p.directions[:AT_THE_PEAK], p.fields[:AT_THE_PEAK], strict=True):
            still = field * np.exp(-1j * np.angle(np.vdot(p.fields[0], field)))
            for name, row in component_rows(direction, self.figures.slant, self.figures.bases).items():
                partial.setdefault(name, []).append(complex(row @ still))
        return {name: slopes_at_peak(np.array(values), p.step) for name, values in partial.items()}

    def component_moves(self, name: str, moved: FloatArray) -> ComplexArray:
        """Return what moves (n, 2) of the peak add to a partial field (n,), not farther than the peak is followed."""
        return np.asarray(self._followed(moved) @ self.component_drifts[name])

    @property
    def circular(self) -> complex:
        """The weaker circular component at the peak over the stronger."""
        one, two = (complex(x) for x in _circular(self.places.fields[0]))
        return two / one if abs(one) >= abs(two) else one / two

    @cached_property
    def _circular_drift(self) -> ComplexArray:
        """How `circular` runs (2,) per radian that the peak moves along its axes."""
        p, one = self.places, _circular(self.places.fields[:AT_THE_PEAK])
        weak, strong = one if abs(one[0][0]) < abs(one[1][0]) else one[::-1]
        return slopes_at_peak(weak / strong, p.step)

    def circular_moves(self, moved: FloatArray) -> ComplexArray:
        """Return what moves (n, 2) of the peak add to `circular` (n,)."""
        return np.asarray(self._followed(moved) @ self._circular_drift)

    def circular_error(self, fields: ComplexArray) -> ComplexArray:
        """Return what errors (n, place, 2) add to `circular` (n,)."""
        one, two = _circular(self.places.fields[0])
        a, b = _circular(fields[:, 0])
        if abs(one) < abs(two):
            (one, a), (two, b) = (two, b), (one, a)
        return np.asarray((b - two / one * a) / one)

    def ratios(self, one: FieldReading) -> ComplexArray:
        """Return the fields (place, component) of a reading over what they are compared with."""
        then = self.places.fields[one.where]
        if one.kind == "cross over co":
            return np.asarray(then[:, 1:] / then[:, :1])
        return np.asarray((then[:, :1] if one.co else then) / self._top(one))

    def _top(self, one: FieldReading) -> float:
        top = self.places.fields[0]
        return float(abs(top[0]) if one.co else np.linalg.norm(top))

    def errors(self, one: FieldReading, fields: ComplexArray, *, slid: bool = True) -> ComplexArray:
        """Return what errors (n, place, 2) add to the ratios of a reading (n, place, component).

        Of a minimum without what only moves it along the cut; with it where it is not yet `slid`.
        """
        then, add, ratio = self.places.fields[one.where], fields[:, one.where], self.ratios(one)
        if one.kind == "cross over co":
            ratios = (add[..., 1:] - ratio * add[..., :1]) / then[:, :1]
            return np.asarray(ratios if one.drift is None else ratios + self.drifts(one, self.moves(fields).real))
        top, size = self.places.fields[0], self._top(one)
        if one.co:
            at_top = (np.conj(top[0]) * fields[:, 0, 0]).real / size**2
            add = add[..., :1]
        else:
            at_top = np.sum((np.conj(top) * fields[:, 0]).real, axis=-1) / size**2
        error = add / size - ratio * at_top[:, None, None]
        if one.turn is not None:
            error = error + self._tilted(fields[:, :1])[:, :, None] * one.turn[:, : error.shape[-1]] / size
        if one.drift is not None:
            error = error + self.drifts(one, self.moves(fields).real)
        return self.filling(one, error) if slid else np.asarray(error)

    def filling(self, one: FieldReading, added: ComplexArray) -> ComplexArray:
        """Return what fills a minimum of what is added (n, place, component) there: the rest only moves it along the cut."""
        if one.slope is None:
            return np.asarray(added)
        run = one.slope[:, : added.shape[-1]]
        return np.asarray(added - run * np.sum((np.conj(run) * added).real, axis=-1, keepdims=True))

    def _tilted(self, at_peak: ComplexArray) -> FloatArray:
        """Return by how much errors (n, 1, 2) at the peak turn the ellipse's major axis (n, 1), radians."""
        then, now = (
            0.5 * np.angle(right * np.conj(left))
            for right, left in map(_circular, (self.places.fields[:1], self.places.fields[0] + at_peak))
        )
        return np.asarray((now - then + 0.5 * np.pi) % np.pi - 0.5 * np.pi)

    def _along(self, one: FieldReading, fields: ComplexArray) -> FloatArray:
        """Return the change (n,) of the largest modulus of a reading by what lies along it."""
        ratio = self.ratios(one)
        size = np.linalg.norm(ratio, axis=-1)
        i = int(np.argmax(size))
        error = self.errors(one, fields)[:, i]
        return np.asarray(np.sum((np.conj(ratio[i]) * error).real, axis=-1) / max(size[i], 1e-300))


def _circular(both: ComplexArray) -> tuple[ComplexArray, ComplexArray]:
    """Return right- and left-handed components of fields (..., 2): co and cross (exp(+jwt), outgoing; IEEE Std 145)."""
    return (both[..., 0] + 1j * both[..., 1]) / np.sqrt(2.0), (both[..., 0] - 1j * both[..., 1]) / np.sqrt(2.0)


def _hats(theta: FloatArray, phi: FloatArray) -> FloatArray:
    """Return the unit vectors (n, 2, 3) along theta and phi."""
    ct, st, cp, sp = np.cos(theta), np.sin(theta), np.cos(phi), np.sin(phi)
    return np.stack([np.stack([ct * cp, ct * sp, -st], -1), np.stack([-sp, cp, 0.0 * st], -1)], axis=1)


def _gradient(sky: Sky, coefficients: ComplexArray, weights: FloatArray) -> ComplexArray:
    """Return g (2, J) such that sum(weights |e|^2) changes by 2 Re(g^H d) when the waves change by d."""
    e = synthesis(coefficients, sky.theta, sky.phi.size)
    return adjoint_synthesis(weights * e, order_of_count(coefficients.shape[-1]), sky.theta)
