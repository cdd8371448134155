"""From the record of the operator's own directions to fields along cuts, at the range length.

No transform: every direction stands for itself. What many passes with different probe angles say of one direction is
solved for its two components; one pass alone gives one component.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from colure.analysis.cuts.repeats import CutSlip, RepeatedReadings, slipped
from colure.analysis.steps.cable import cable_flex, correct_cable, has_turns
from colure.analysis.steps.drift import correct, declared_drift, track
from colure.analysis.steps.gain import GainTransfer, ReferenceData, apply_gain, gain_transfer
from colure.analysis.steps.places import to_planned_places
from colure.geometry.conventions import ComplexArray, FloatArray, IntArray, wavenumber
from colure.geometry.directions import theta_phi
from colure.geometry.kinematics import Geometry, sighting
from colure.geometry.polarization import Basis, basis_matrix, from_cartesian
from colure.model.chamber import Chamber
from colure.model.device import Device
from colure.model.files import history
from colure.model.plan import Role
from colure.model.record import holds_cuts, of_role
from colure.model.scan import Cut, Scan
from colure.values import holds_arrays

if TYPE_CHECKING:
    import xarray as xr

#: Directions closer than this (radians) are the same.
SAME = 1e-5
#: Passes whose polarizations differ by less than this (|sin|) give one component, not two.
LEAST_SINE = 0.1
#: At most so many cuts are evaluated; of more, those a person asks for first.
MOST_CUTS = 8
#: Names of the cuts along the zeros of azimuth and elevation.
ALONG_ZERO = ("az_0", "el_0")


@dataclass(frozen=True)
@holds_arrays
class MeasuredCut:
    """One cut as it was measured, gain scale (sqrt of gain), phase referred to the device's declared centre.

    angle_deg
        (n,) along the cut as the device's centre sees the probe; that of the axes where the centre is at their crossing.
    directions
        (n, 3) from the device's centre to the probe, device frame.
    co, cross
        (frequency, n) component along the first pass's polarization and 90 deg further; `cross` None with one component.
    scatter
        (frequency,) rms of repeated readings about their mean, relative to the strongest; nan without repeats.
    off_cut_deg
        How far the directions leave the cut that was asked for, because the device is beside the axes' intersection.
    off_axis_deg
        How far off its own axis the probe sees the device's centre at most.
    """

    cut: Cut
    angle_deg: FloatArray
    directions: FloatArray
    co: ComplexArray
    cross: ComplexArray | None
    scatter: FloatArray
    off_cut_deg: float
    off_axis_deg: float

    @property
    def total(self) -> FloatArray:
        """(frequency, n) amplitude of what was measured: of both components where both are known."""
        if self.cross is None:
            return np.abs(self.co)
        return np.asarray(np.hypot(np.abs(self.co), np.abs(self.cross)))


@dataclass(frozen=True, kw_only=True)
@holds_arrays
class CutScan:
    """Every cut of a record with what all of them share.

    noise
        (frequency,) standard deviation (complex modulus) of one component of one direction, gain scale.
    drift
        Relative rms that the drift correction leaves in the level.
    pure
        Whether the probe's impurity was measured with the reference and taken out.
    lag_deg
        On the fly: standard uncertainty of how far the axis ran ahead of its readout.
    slip
        When the device slipped, where repeated directions show that it did.
    across
        Of a rectangle in azimuth and elevation with many cuts: those across them, along zero and through the strongest reading.
    """

    scan: Scan
    cuts: tuple[MeasuredCut, ...]
    frequency_hz: FloatArray
    noise: FloatArray
    drift: float
    transfer: GainTransfer
    pure: bool
    missing: int
    lag_deg: float = 0.0
    slip: CutSlip | None = None
    across: tuple[MeasuredCut, ...] = ()

    @property
    def vector(self) -> bool:
        """Tell whether both components are known."""
        return all(one.cross is not None for one in self.cuts)


def read_cuts(record: xr.Dataset, chamber: Chamber, device: Device, reference: ReferenceData | None = None) -> CutScan:
    """Turn a record of free directions into fields along its cuts: drift, cable, gain, components, even distance.

    Raises
    ------
    ValueError
        If the record holds a sphere's grid, no phase, or lacks ties, reference sweeps or scan points; counts are named.
    """
    if not holds_cuts(record.attrs):
        raise ValueError("record: holds a sphere's grid, not cuts; colure evaluate reads it")
    if record.attrs.get("receiver", "vector") != "vector":
        raise ValueError("record: receiver is power-only: cuts need phase to take out drift and distance (receiver)")
    scan = Scan.model_validate_json(str(record.attrs["scan_json"]))
    drift = track(record, declared=declared_drift(chamber))
    steady = correct(record, drift)
    if has_turns(record):
        steady = correct_cable(steady, cable_flex(record, passes=2 if chamber.cable is None else chamber.cable.passes))
    lag = 0.0
    if record.attrs.get("style") == "fly":
        steady = to_planned_places(steady)
        lag = float(history(steady)[-1]["parameters"]["lag_uncertainty_deg"])
    transfer = gain_transfer(steady, chamber, reference)
    points = of_role(apply_gain(steady, transfer), Role.SCAN)
    if points.sizes["point"] == 0:
        raise ValueError("record: 0 scan points, needs at least 1 (points)")
    rows = _rows(points, chamber, scan)
    planned = scan.cuts() or [_list_of(rows)]
    cuts, missing = list[MeasuredCut](), 0
    for number, cut in enumerate(planned):
        own, where = rows.of(number).along(cut)
        measured, lost = _measured(cut, own, where, transfer.leak, record["frequency"].values, chamber, device)
        missing += lost
        if measured is not None:
            cuts.append(measured)
    if not cuts:
        raise ValueError(
            "record: no direction was measured with every polarization (points); resume it with colure acquire"
        )
    readings = max(1, round(points.sizes["point"] * record.sizes["port"] / sum(len(c.cut.directions) for c in cuts)))
    per_component = np.sqrt(max(1.0, readings / (2.0 if all(c.cross is not None for c in cuts) else 1.0)))
    of_reading = transfer.noise.max(axis=1) * np.abs(transfer.factor).max(axis=1)
    noise = of_reading / per_component
    pure = bool(transfer.leak.any() or np.any(transfer.response != np.eye(transfer.response.shape[1])))
    return CutScan(
        scan=scan,
        cuts=tuple(cuts),
        frequency_hz=record["frequency"].values,
        noise=noise,
        drift=float(drift.left.level),
        transfer=transfer,
        pure=pure,
        missing=missing,
        lag_deg=lag,
        slip=_slip(points, rows, of_reading, float(drift.left.level)),
        across=_across(scan, rows, transfer.leak, record["frequency"].values, chamber, device),
    )


def _across(
    scan: Scan, rows: _ScanReadings, leak: ComplexArray, frequency_hz: FloatArray, chamber: Chamber, device: Device
) -> tuple[MeasuredCut, ...]:
    """Return the cuts across many of a rectangle: the one along zero, and the one through the strongest reading."""
    crossing = scan.crossing()
    if _turns_along(scan, chamber) and rows.turn.shape[1] == 1 and len(scan.offsets_deg) == 1:
        return ()  # one component at each direction, and not the same one
    if not crossing or min(len(crossing), len(crossing[0].directions)) <= MOST_CUTS:
        return ()
    top = rows.directions[np.argmax(np.abs(rows.values[:, frequency_hz.size // 2]).max(axis=-1))]
    strongest = max(crossing, key=lambda cut: float(np.max(cut.directions @ top)))
    chosen = [cut for cut in crossing if cut.name in ALONG_ZERO or cut is strongest]
    measured = (_measured(cut, *rows.along(cut), leak, frequency_hz, chamber, device)[0] for cut in chosen)
    return tuple(one for one in measured if one is not None)


def _slip(points: xr.Dataset, rows: _ScanReadings, noise: FloatArray, drift: float) -> CutSlip | None:
    """Return when the device slipped, where repeated directions show that it did.

    Lines that are flown both ways differ by what the axis runs ahead of its readout: they cannot tell.
    """
    if points.attrs.get("style") == "fly":
        return None
    order = np.argsort(points["time_s"].values, kind="stable")
    sorted_rows = rows.at(order)
    readings = RepeatedReadings(
        cut=sorted_rows.slice_index,
        directions=sorted_rows.directions,
        turn=sorted_rows.turn[:, 0],
        values=sorted_rows.values,
        time_s=points["time_s"].values[order],
        noise=noise,
        drift=drift,
    )
    return slipped(readings)


@dataclass(frozen=True)
class _ScanReadings:
    """Readings: which cut, direction (n, 3), angle of each port from the co vector (n, port), values (n, frequency, port)."""

    slice_index: IntArray
    directions: FloatArray
    turn: FloatArray
    values: ComplexArray

    def of(self, number: int) -> _ScanReadings:
        return self.at(self.slice_index == number)

    def along(self, cut: Cut) -> tuple[_ScanReadings, IntArray]:
        """Return the readings of a cut's directions, and which one each is: on the fly a line is longer than its cut."""
        where = np.argmax(self.directions @ cut.directions.T, axis=1)
        near = np.linalg.norm(self.directions - cut.directions[where], axis=1) < SAME
        return self.at(near), where[near]

    def at(self, own: np.ndarray) -> _ScanReadings:
        return _ScanReadings(self.slice_index[own], self.directions[own], self.turn[own], self.values[own])


def _rows(points: xr.Dataset, chamber: Chamber, scan: Scan) -> _ScanReadings:
    """Work out where every reading looked and along which polarization, from the commanded axes."""
    names = [str(name) for name in points["axis"].values]
    shown = points["commanded_deg"].values
    angle = {name: chamber.axis_table[name].map.angle_deg(shown[:, i]) for i, name in enumerate(names)}
    geometry = chamber.positioner.geometry
    first, second = (np.deg2rad(angle[name]) for name in geometry.axis_names)
    seen = sighting(geometry, first=first, second=second)
    chi = np.deg2rad(angle.get("probe", np.zeros(first.size)))
    offset = float(np.deg2rad(scan.offsets_deg[0]))
    slant = np.zeros(first.size)
    if scan.probe == "follows" or (_turns_along(scan, chamber) and _both(scan, points)):
        theta, phi = theta_phi(seen.direction)
        pair = np.stack(from_cartesian(seen.first_vector.astype(complex), theta=theta, phi=phi), axis=-1)
        co, cross = np.moveaxis(
            np.einsum("nab,nb->na", basis_matrix(Basis.LUDWIG_3, theta=theta, phi=phi), pair).real, -1, 0
        )
        slant = np.arctan2(cross, co)
    ports = np.arange(points.sizes["port"]) * 0.5 * np.pi
    # Port angle from the co vector: the co vector is what the probe would receive at the first offset.
    turn = (chi + slant - offset)[:, None] + ports[None, :]
    return _ScanReadings(points["slice_index"].values, seen.direction, turn, points["trace"].values)


def _turns_along(scan: Scan, chamber: Chamber) -> bool:
    """Tell whether a probe that stands still reads another polarization at every direction of a line or great circle: the device rolls there."""
    rolls = chamber.positioner.geometry is Geometry.ROLL_OVER_AZIMUTH
    return rolls and scan.probe == "fixed" and (scan.azimuth_deg is not None or scan.great_circles_deg is not None)


def _both(scan: Scan, points: xr.Dataset) -> bool:
    return len(scan.offsets_deg) > 1 or points.sizes["port"] > 1


def _list_of(rows: _ScanReadings) -> Cut:
    """Return the directions of a list in the order they were first measured."""
    _, first = np.unique(np.round(rows.directions, 7), axis=0, return_index=True)
    directions = rows.directions[np.sort(first)]
    return Cut("list", f"{len(directions)} directions", "number", np.arange(1.0, len(directions) + 1.0), directions)


def _measured(
    cut: Cut,
    rows: _ScanReadings,
    where: IntArray,
    leak: ComplexArray,
    frequency_hz: FloatArray,
    chamber: Chamber,
    device: Device,
) -> tuple[MeasuredCut | None, int]:
    """Solve a cut's readings for components; also return how many of its directions have none."""
    count, frequencies = len(cut.directions), frequency_hz.size
    first = _first_of_same(cut.directions)
    where = first[where]
    # Reading = co (cos t - leak sin t) + cross (sin t + leak cos t): a port also hears a little of what lies across it.
    c, s = np.cos(rows.turn), np.sin(rows.turn)
    single = rows.turn.shape[1] == 1
    across = leak[None, :, None] if single else np.zeros((1, frequencies, 1))
    row = np.stack([c[:, None] - across * s[:, None], s[:, None] + across * c[:, None]], axis=-1)  # (n, f, port, 2)
    normal = np.zeros((count, frequencies, 2, 2), complex)
    right = np.zeros((count, frequencies, 2), complex)
    np.add.at(normal, where, np.einsum("nfpa,nfpb->nfab", row.conj(), row))
    np.add.at(right, where, np.einsum("nfpa,nfp->nfa", row.conj(), rows.values))
    # A direction that the cut has twice (theta = -180 and 180 deg) is known at both of its angles.
    normal, right, seen = normal[first], right[first], np.bincount(where, minlength=count)[first]
    trace = np.maximum(np.einsum("nfaa->nf", normal).real, 1e-100)
    # 4 det / trace^2 is sin^2 of the angle between two polarizations read as often.
    spread = np.sqrt(np.maximum(4.0 * np.linalg.det(normal).real / trace**2, 0.0)).mean(axis=1)
    full = spread > LEAST_SINE
    vector = bool(np.any(full))
    keep = np.flatnonzero(full if vector else seen > 0)
    if not keep.size:
        return None, count
    if vector:
        solved = np.linalg.solve(normal[keep], right[keep][..., None])[..., 0]
        co, cross = solved[..., 0].T, solved[..., 1].T
    else:
        co, cross = (right[keep][..., 0] / normal[keep][..., 0, 0]).T, None
    fitted = np.zeros((count, frequencies, 2), complex)
    fitted[keep, :, 0] = co.T
    if cross is not None:
        fitted[keep, :, 1] = cross.T
    chosen = np.isin(where, keep)
    rest = rows.values[chosen] - np.einsum("nfpa,nfa->nfp", row[chosen], fitted[where[chosen]])
    unknown = np.unique(first[keep]).size * (2 if vector else 1)
    free = rest.shape[0] * rest.shape[2] - unknown
    top = np.maximum(np.abs(co).max(axis=1), 1e-300)
    many = rest.shape[0] * rest.shape[2] / unknown
    scatter = (
        np.sqrt(np.sum(np.abs(rest) ** 2, axis=(0, 2)) / free / many) / top
        if free > 0
        else np.full(frequencies, np.nan)
    )
    return _seen_from_the_centre(
        cut, keep, np.asarray(co), None if cross is None else np.asarray(cross), scatter, frequency_hz, chamber, device
    ), count - keep.size


def _first_of_same(directions: FloatArray) -> IntArray:
    """Return for every direction (n, 3) the first one that is the same."""
    apart = np.linalg.norm(directions[:, None] - directions[None], axis=2)
    return np.asarray(np.argmax(apart < SAME, axis=1))


def _seen_from_the_centre(
    cut: Cut,
    keep: IntArray,
    co: ComplexArray,
    cross: ComplexArray | None,
    scatter: FloatArray,
    frequency_hz: FloatArray,
    chamber: Chamber,
    device: Device,
) -> MeasuredCut:
    """Refer directions, level (1/r) and phase (k r) to the device's declared centre instead of the axes' intersection."""
    asked, angle = cut.directions[keep], cut.angle_deg[keep]
    centre = 1e-3 * np.asarray(device.offset_mm, float)
    distance = chamber.range_length_m
    way = distance * asked - centre
    r = np.linalg.norm(way, axis=1)
    directions = way / r[:, None]
    k = wavenumber(frequency_hz)[:, None]
    factor = r / distance * np.exp(1j * k * (r - distance))
    shown, off_cut = _along(asked, angle, directions)
    apart = np.rad2deg(np.arccos(np.clip(np.sum(asked * directions, axis=1), -1.0, 1.0)))
    return MeasuredCut(
        cut,
        shown,
        directions,
        co * factor,
        None if cross is None else cross * factor,
        scatter,
        off_cut,
        float(apart.max()),
    )


def _along(asked: FloatArray, angle_deg: FloatArray, directions: FloatArray) -> tuple[FloatArray, float]:
    """Return the angle along the cut of the directions that were really seen, and how far they leave it, degrees."""
    moved = directions - asked
    if len(asked) < 3 or not np.any(np.abs(moved) > 1e-12):
        return angle_deg.copy(), 0.0
    # Along the cut a degree of its angle is this long; what lies across it is off the cut.
    tangent = np.gradient(asked, angle_deg, axis=0, edge_order=2)
    length = np.maximum(np.linalg.norm(tangent, axis=1), 1e-12)
    unit = tangent / length[:, None]
    ahead = np.sum(directions * unit, axis=1)
    out = np.cross(asked, unit)
    across = np.abs(np.sum(directions * out, axis=1))
    plane = np.arctan2(ahead, np.sum(directions * asked, axis=1))
    return np.asarray(angle_deg + plane / length), float(np.rad2deg(np.arcsin(np.clip(across, 0.0, 1.0))).max())
