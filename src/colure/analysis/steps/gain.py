"""Absolute gain by substitution with a horn of known dimensions, from a stored calibration, or relative levels without one."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Any

import numpy as np

from colure.analysis.steps.horn_place import horn_seen
from colure.analysis.steps.reflection import DeviceReflection
from colure.analysis.steps.repetition import students_factor
from colure.geometry.conventions import ComplexArray, FloatArray, IntArray, amplitude_db, wavenumber
from colure.geometry.kinematics import device_to_lab
from colure.model.chamber import Chamber
from colure.model.files import with_step
from colure.model.plan import Role
from colure.model.record import of_role
from colure.model.reference import WITH_HORN, Reference
from colure.values import holds_arrays
from colure.waves.expansion import Expansion
from colure.waves.horn import horn_gain_dbi

if TYPE_CHECKING:
    import xarray as xr


#: A record whose clock shows less was measured in simulated time, which begins at zero.
REHEARSED_S = 1e8


@dataclass(frozen=True)
@holds_arrays
class GainTransfer:
    """Factor from received wave ratio to sqrt(gain).

    factor
        (frequency, port) complex: field at the probe, exp(-jkA)/A removed, per received ratio.
    response
        (frequency, port, port) complex: what each port (row) reads per unit field along each port's
        own vector (column), relative to its own; the unit matrix unless the horn's purity is known.
    leak
        (frequency,) complex: of a single port, its response across its own vector over that along it.
    reference_gain_dbi
        (frequency,) gain of the horn on axis at the range length.
    noise
        (frequency, port) standard deviation of one sweep's noise, complex modulus, as a wave
        ratio: from the scatter of the reference's repeated sweeps.
    freedom
        Degrees of freedom of `noise` at one frequency and port; 0 where nothing repeats.
    expanded
        (frequency, port) expanded uncertainty (k = 2) of `factor` by that noise, relative: of its
        modulus, and in radians of its phase. `leak` and `response` are known to sqrt 2 times that.
    """

    factor: ComplexArray
    reference_gain_dbi: FloatArray
    noise: FloatArray
    response: ComplexArray
    leak: ComplexArray
    expanded: FloatArray
    freedom: float

    def at(self, one: slice | IntArray) -> GainTransfer:
        """Return the factors at some of the frequencies."""
        return GainTransfer(
            self.factor[one],
            self.reference_gain_dbi[one],
            self.noise[one],
            self.response[one],
            self.leak[one],
            self.expanded[one],
            self.freedom,
        )

    @property
    def imbalance(self) -> ComplexArray:
        """(frequency,) what port 2 reads over what port 1 reads of the same field; 1 with one port."""
        if self.factor.shape[1] < 2:
            return np.ones(len(self.factor), complex)
        return np.asarray(self.factor[:, 0] / self.factor[:, 1])


@dataclass(frozen=True)
@holds_arrays
class ReferenceData:
    """What files say of the reference: gain (frequency,) dBi and its expanded uncertainty in dB, and its path.

    path
        (frequency,) complex: factor from adapter and mismatch, relative to a matched, direct
        connection (`substitution_path`).
    device_loss_db
        (frequency,) what the device's own reflection costs, positive; None where no file states it.
    stored, stored_at_s
        The factors of an earlier calibration of the range at these frequencies, for the method `stored`, and when it was made
        (seconds since 1970, UTC).
    scale
        (frequency,) what relative levels are multiplied with, for the method `none`.
    probe
        The probe's pattern, where the horn stands beside the axes' intersection.
    source
        (frequency,) complex reflection of the cable's end, where a file states it.
    """

    gain_dbi: FloatArray | None
    uncertainty_db: float | None
    path: ComplexArray | None
    device_loss_db: FloatArray | None = None
    stored: GainTransfer | None = None
    stored_at_s: float | None = None
    scale: FloatArray | None = None
    probe: Expansion | None = None
    source: ComplexArray | None = None

    def at(self, one: slice | IntArray) -> ReferenceData:
        """Return what is known at some of the frequencies."""

        def of(values: Any) -> Any:
            return None if values is None else values[one]

        return replace(
            self,
            gain_dbi=of(self.gain_dbi),
            path=of(self.path),
            device_loss_db=of(self.device_loss_db),
            source=of(self.source),
            stored=None if self.stored is None else self.stored.at(one),
            scale=of(self.scale),
            probe=None if self.probe is None else Expansion(self.probe.coefficients[one], self.probe.k[one]),
        )


def with_reflection(known: ReferenceData | None, reflection: DeviceReflection | None) -> ReferenceData | None:
    """Return what is known of the reference with the device's reflection as this run measured it.

    Where the cable's end is known too, both together decide what wave the device gets: 1 - G_s G_d (see `substitution_path`).
    """
    if reflection is None:
        return known
    old = ReferenceData(None, None, None) if known is None else known
    path = old.path
    if path is not None and old.source is not None:
        path = path * (1.0 - old.source * reflection.coefficient)
    return replace(old, path=path, device_loss_db=reflection.loss_db)


def substitution_path(
    *, source: ComplexArray, horn: ComplexArray, device: ComplexArray, adapter: ComplexArray | None = None
) -> ComplexArray:
    """Return what the reference's sweeps hold beyond its gain, relative to the device's realized gain.

    A source of reflection G_s feeds an antenna of reflection G: its wave is 1/(1 - G_s G) of the one
    into a match, and the horn accepts 1 - |G_h|^2 of the power. Through an adapter S the horn shows
    S11 + S12 S21 G_h/(1 - S22 G_h) and gets S21/(1 - S22 G_h) (any microwave text, derivable). The device's
    realized gain includes its own mismatch to a matched source, so only the interaction 1 - G_s G_d counts.

    source, horn, device
        (frequency,) reflection coefficients; zero where matched.
    adapter
        (frequency, 2, 2) scattering matrix, port 1 to the switch.
    """
    accepted = np.sqrt(1.0 - np.abs(horn) ** 2)
    seen, through = horn, np.ones_like(accepted, complex)
    if adapter is not None:
        inside = 1.0 - adapter[:, 1, 1] * horn
        through = adapter[:, 1, 0] / inside
        seen = adapter[:, 0, 0] + adapter[:, 0, 1] * adapter[:, 1, 0] * horn / inside
    return np.asarray(accepted * through * (1.0 - source * device) / (1.0 - source * seen))


def gain_transfer(record: xr.Dataset, chamber: Chamber, known: ReferenceData | None = None) -> GainTransfer:
    """Return what makes a field of a record's sweeps, by the chamber's reference method.

    Raises
    ------
    ValueError
        If the record does not hold the sweeps that the method needs, or the stored calibration is not given.
    """
    method = chamber.reference.method
    if method == "none":
        return relative_transfer(record, chamber, known)
    if method == "stored":
        return _stored_transfer(record, chamber, known)
    if method_of(record) not in WITH_HORN:
        raise ValueError(
            f"record: measured without a reference horn (reference.method = {method_of(record)!r}): must hold its sweeps for "
            f"method = {method!r}; method = 'none' gives the relative pattern"
        )
    return _substitution(record, chamber, known)


def age_days(record: xr.Dataset, known: ReferenceData) -> float | None:
    """Return how old a stored calibration was when a record was measured, days."""
    if known.stored_at_s is None:
        return None
    begin = float(np.min(record["wall_time"].values))
    if begin < REHEARSED_S:
        return 0.0  # a rehearsal is measured on no day
    if begin < known.stored_at_s:
        raise ValueError(
            f"reference.calibration: made {(known.stored_at_s - begin) / 86400.0:.2f} days after the run began: must be older than it (days)"
        )
    return (begin - known.stored_at_s) / 86400.0


def method_of(record: xr.Dataset) -> str:
    """Return by which reference method a record was measured."""
    return str(record.attrs.get("reference_method", "switch"))


def _visits(record: xr.Dataset, blocks: int | None, ports: int) -> tuple[xr.Dataset, ComplexArray]:
    """Return the reference's sweeps, and their traces (block, sweep, frequency, port); a block for each direction."""
    points = of_role(record, Role.REFERENCE)
    count = points.sizes["point"]
    if count < ports:
        raise ValueError(f"record: {count} reference sweeps, needs at least {ports} (one per port)")
    if blocks is None:
        places = np.round(points["commanded_deg"].values, 4)
        blocks = 1 + int(np.count_nonzero(np.any(np.diff(places, axis=0) != 0.0, axis=1)))
    if count % blocks:
        raise ValueError(f"record: {count} reference sweeps, must be a multiple of {blocks} (one set per direction)")
    return points, points["trace"].values.reshape(blocks, count // blocks, -1, ports)


def _scatter(block: ComplexArray, mean: ComplexArray) -> tuple[FloatArray, float, FloatArray]:
    """Return noise (frequency, port), its degrees of freedom, and the expanded relative uncertainty of the mean."""
    blocks, sweeps = block.shape[:2]
    # Every direction repeats its sweeps.
    apart = np.mean(np.abs(block - block.mean(axis=1, keepdims=True)) ** 2, axis=(0, 1))
    # A level without its phase, far above the noise, shows one of two quadratures.
    seen = 2.0 if np.any(block.imag) else 1.0
    noise = np.sqrt(2.0 / seen * apart * sweeps / max(1, sweeps - 1))
    return noise, seen * blocks * (sweeps - 1), coverage_factor(sweeps) * noise / np.sqrt(2.0 * sweeps) / np.abs(mean)


def relative_transfer(record: xr.Dataset, chamber: Chamber, known: ReferenceData | None = None) -> GainTransfer:
    """Return factors without a reference: levels relative to the strongest sweep, or times `known.scale`.

    Where both ports of a dual probe looked at one polarization, what port 2 reads more than port 1 is taken out.
    """
    ports, frequencies = record.sizes["port"], record.sizes["frequency"]
    points, block = _visits(record, None, ports)
    mean = block.mean(axis=1)
    own = np.stack([mean[min(p, len(mean) - 1), :, p] for p in range(ports)], axis=-1)
    noise, freedom, expanded = _scatter(block, np.where(np.abs(own) > 0.0, own, 1.0))
    factor: ComplexArray = np.ones((frequencies, ports), complex)
    if ports == 2 and len(mean) == 2:
        factor[:, 1] = own[:, 0] / own[:, 1] * np.sign(_port_cosine(points, chamber, len(block[0])))
    scan = of_role(record, Role.SCAN)["trace"].values * factor
    top = np.sqrt(np.max(np.sum(np.abs(scan) ** 2, axis=2), axis=0)) if len(scan) else np.ones(frequencies)
    scale = 1.0 / np.maximum(top, 1e-300) if known is None or known.scale is None else known.scale
    nothing = np.broadcast_to(np.eye(ports, dtype=complex), (frequencies, ports, ports)).copy()
    return GainTransfer(factor * scale[:, None], np.full(frequencies, np.nan), noise, nothing, np.zeros(frequencies,
                        complex),
                        expanded, freedom)  # fmt: skip


def _port_cosine(points: xr.Dataset, chamber: Chamber, sweeps: int) -> float:
    """Return the cosine between port 1's polarization at the first place and port 2's at the second."""
    names = [str(name) for name in points["axis"].values]
    if "probe" not in names:
        return 1.0
    shown = points["commanded_deg"].values[[0, sweeps], names.index("probe")]
    roll = chamber.axis_table["probe"].map.angle_deg(shown)
    return float(np.cos(np.deg2rad(roll[1] + 90.0 - roll[0])))


def _stored_transfer(record: xr.Dataset, chamber: Chamber, known: ReferenceData | None) -> GainTransfer:
    """Return the factors of a stored calibration with the noise of this record's own repeated sweeps."""
    if known is None or known.stored is None:
        raise ValueError("reference: method = 'stored', and no calibration was read (reference.calibration)")
    stored, ports = known.stored, record.sizes["port"]
    if stored.factor.shape != (record.sizes["frequency"], ports):
        raise ValueError(
            f"reference.calibration: {stored.factor.shape[1]} ports, must be {ports} as in the record (ports)"
        )
    age, most = age_days(record, known), chamber.reference.valid_days
    if age is not None and age > most:
        raise ValueError(
            f"reference.calibration: {age:.1f} days old when the run began: must be at most {most:g} days (reference.valid_days); "
            "calibrate the range again (colure calibrate), or method = 'none' gives the relative pattern"
        )
    _, block = _visits(record, None, ports)
    noise, freedom, _ = _scatter(block, np.ones(block.shape[2:], complex))
    return replace(stored, noise=noise, freedom=freedom)


def _substitution(record: xr.Dataset, chamber: Chamber, known: ReferenceData | None) -> GainTransfer:
    """Compare the reference sweeps of a record with the horn's computed gain.

    The horn's mouth stands at `offset_mm` from the axes' intersection, its phase centre
    `phase_centre_mm` in front of that; the path is shorter by as much.
    """
    reference = chamber.reference
    ports = record.sizes["port"]
    frequency = record["frequency"].values
    distance = chamber.range_length_m
    gain_dbi = reference_gain_dbi(frequency, reference, distance)
    if known is not None and known.gain_dbi is not None:
        # The dimensions still say what the horn loses at short range.
        gain_dbi = known.gain_dbi + gain_dbi - reference_gain_dbi(frequency, reference)
    blocks = reference_blocks(chamber, ports, str(record.attrs["scheme"]))
    points, block = _visits(record, blocks, ports)
    # Block p holds the sweeps in which port p met the horn's polarization.
    aligned = _alignment(points, chamber, ports, blocks, None if known is None else known.probe)
    own = np.stack([block[p, :, :, p] / aligned[:, p] for p in range(ports)], axis=-1)
    mean = own.mean(axis=0)
    if known is not None and known.path is not None:
        mean = mean / known.path[:, None]
    response, leak = _impurity(
        block.mean(axis=1), aligned, ports, known=blocks == 2 and reference.cross_polar_db is not None
    )
    noise, freedom, expanded = _scatter(block, own.mean(axis=0))
    shorter = 1e-3 * reference.phase_centre_mm
    k = wavenumber(frequency)
    # Field the horn lays at the probe, exp(-jkA)/A removed for the nominal distance A.
    field = 10 ** (gain_dbi / 20.0) * distance / (distance - shorter) * np.exp(1j * k * shorter)
    return GainTransfer(field[:, None] / mean, gain_dbi, noise, response, leak, expanded, freedom)


def coverage_factor(sweeps: int) -> float:
    """Return Student's t for 95.45 % and the freedom of the real and imaginary parts of repeated sweeps (JCGM 100:2008, G.3).

    A single sweep says nothing about its own scatter: the factor is infinite.
    """
    freedom = 2 * (sweeps - 1)
    return students_factor(freedom, 0.9545) if freedom else float("inf")


def reference_blocks(chamber: Chamber, ports: int, scheme: str) -> int:
    """Return in how many directions of polarization the horn is read: one per port, two where purity is measured."""
    return 2 if ports == 2 or (scheme == "two-pass" and chamber.reference.cross_polar_db is not None) else 1


def _impurity(
    mean: ComplexArray, aligned: ComplexArray, ports: int, *, known: bool
) -> tuple[ComplexArray, ComplexArray]:
    """Return (response, leak) from mean readings (block, frequency, port) of a pure horn.

    A port that receives r along its own vector and r leak 90 deg further reads -r leak of a horn
    when it is turned by 90 deg.
    """
    frequencies = mean.shape[1]
    response = np.broadcast_to(np.eye(ports, dtype=complex), (frequencies, ports, ports)).copy()
    leak = np.zeros(frequencies, complex)
    if not known:
        return response, leak
    if ports == 1:
        return response, np.asarray(-mean[1, :, 0] / mean[0, :, 0])
    for one, other in ((0, 1), (1, 0)):
        # In block `one` the field lies along port `one`: what the other port reads is its impurity.
        own = mean[other, :, other] / aligned[:, other]
        response[:, other, one] = mean[one, :, other] / aligned[:, one] / own
    return response, leak


def reference_gain_dbi(frequency_hz: FloatArray, reference: Reference, distance_m: float = np.inf) -> FloatArray:
    """Return the computed gain of the reference horn, or what it lays on its axis at a finite distance."""
    a, b, slant_e, slant_h = reference.sides_m
    return horn_gain_dbi(frequency_hz, a=a, b=b, slant_e=slant_e, slant_h=slant_h, distance=distance_m)


def _alignment(
    points: xr.Dataset, chamber: Chamber, ports: int, blocks: int, probe: Expansion | None = None
) -> ComplexArray:
    """Return what each port receives of the horn during its own sweeps, over a horn along it, (frequency, port).

    The horn is polarized along x of the device frame; port 2 lies 90 deg of growing roll from port 1. At the axes'
    intersection this is the cosine between the two; beside it the horn's pattern, distance and path count.
    """
    names = [str(name) for name in points["axis"].values]
    per_port, frequency = points.sizes["point"] // blocks, points["frequency"].values
    offset_m = 1e-3 * np.asarray(chamber.reference.offset_mm, float)
    out = np.empty((frequency.size, ports), complex)
    cosine = np.empty(ports)
    for port in range(ports):
        shown = points["commanded_deg"].values[port * per_port]
        angle = {n: float(chamber.axis_table[n].map.angle_deg(v)) for n, v in zip(names, shown, strict=True)}
        first, second = (np.deg2rad(angle[name]) for name in chamber.positioner.geometry.axis_names)
        horn = device_to_lab(chamber.positioner.geometry, first=first, second=second).rotation[:, 0]
        chi = np.deg2rad(angle.get("probe", 0.0) + 90.0 * port)
        cosine[port] = horn[0] * np.cos(chi) + horn[1] * np.sin(chi)
        out[:, port] = (
            horn_seen(chamber, frequency, angle, port=port + 1, offset_m=offset_m, probe=probe)
            if offset_m.any()
            else cosine[port]
        )
    if np.any(np.abs(cosine) < 0.9):
        raise ValueError(
            f"record: reference horn is not aligned with the probe port (cosine {cosine.min():.2f}, limit 0.9)"
        )
    return out


def _said(transfer: GainTransfer) -> dict[str, Any]:
    if np.isnan(transfer.reference_gain_dbi).any():
        return {"method": "none: relative levels"}
    return {
        "method": "substitution with a reference horn",
        "reference_gain_dbi": [round(float(g), 4) for g in transfer.reference_gain_dbi],
    }


def apply_gain(record: xr.Dataset, transfer: GainTransfer) -> xr.Dataset:
    """Turn wave ratios into field at the probe in units of sqrt(gain)."""
    values = record["trace"].values * transfer.factor[None]
    if transfer.response.shape[1] == 2:
        values = np.einsum("fab,pfb->pfa", np.linalg.inv(transfer.response), values)
    unequal = {}
    if transfer.factor.shape[1] == 2:
        unequal = {
            "imbalance_db": [round(float(amplitude_db(abs(x))), 4) for x in transfer.imbalance],
            "imbalance_deg": [round(float(np.rad2deg(np.angle(x))), 3) for x in transfer.imbalance],
        }
    attrs = {**record["trace"].attrs, "long_name": "field at the probe, exp(-jkA)/A removed, sqrt(gain)"}
    return with_step(
        record.assign(trace=(record["trace"].dims, values, attrs)),
        "gain",
        **_said(transfer),
        **unequal,
    )
