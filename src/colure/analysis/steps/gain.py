"""Absolute gain by substitution with a horn of known dimensions measured in the same run."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from colure.analysis.steps.repetition import students_factor
from colure.geometry.conventions import ComplexArray, FloatArray, wavenumber
from colure.geometry.kinematics import device_to_lab
from colure.model.chamber import Chamber, Reference
from colure.model.files import with_step
from colure.model.plan import Role
from colure.model.record import of_role
from colure.waves.horn import horn_gain_dbi

if TYPE_CHECKING:
    import xarray as xr


@dataclass(frozen=True)
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

    @property
    def imbalance(self) -> ComplexArray:
        """(frequency,) what port 2 reads over what port 1 reads of the same field; 1 with one port."""
        if self.factor.shape[1] < 2:
            return np.ones(len(self.factor), complex)
        return np.asarray(self.factor[:, 0] / self.factor[:, 1])


@dataclass(frozen=True)
class ReferenceData:
    """What files say of the reference: gain (frequency,) dBi and its expanded uncertainty in dB, and its path.

    path
        (frequency,) complex: what adapter and mismatch make of a wave that a matched, direct
        connection would have let through (`substitution_path`).
    device_loss_db
        (frequency,) what the device's own reflection costs, positive; None where no file states it.
    """

    gain_dbi: FloatArray | None
    uncertainty_db: float | None
    path: ComplexArray | None
    device_loss_db: FloatArray | None = None


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
    """Compare the reference sweeps of a record with the horn's computed gain.

    The horn's aperture centre stands at the axes' crossing, its phase centre
    `phase_centre_mm` in front of that; the path is shorter by as much.

    Raises
    ------
    ValueError
        If the record holds no reference sweeps for one of its ports.
    """
    reference = chamber.reference
    points = of_role(record, Role.REFERENCE)
    count = points.sizes["point"]
    ports = record.sizes["port"]
    if count < ports:
        raise ValueError(f"record: {count} reference sweeps, needs at least {ports} (one per port)")
    frequency = record["frequency"].values
    distance = chamber.range_length_m
    gain_dbi = reference_gain_dbi(frequency, reference, distance)
    if known is not None and known.gain_dbi is not None:
        # The dimensions still say what the horn loses at short range.
        gain_dbi = known.gain_dbi + gain_dbi - reference_gain_dbi(frequency, reference)
    blocks = reference_blocks(chamber, ports, str(record.attrs["scheme"]))
    if count % blocks:
        raise ValueError(f"record: {count} reference sweeps, must be a multiple of {blocks} (one set per direction)")
    block = points["trace"].values.reshape(blocks, count // blocks, frequency.size, ports)
    # Block p holds the sweeps in which port p met the horn's polarization.
    aligned = _alignment(points, chamber, ports, blocks)
    own = np.stack([block[p, :, :, p] for p in range(ports)], axis=-1) / aligned
    mean = own.mean(axis=0)
    if known is not None and known.path is not None:
        mean = mean / known.path[:, None]
    response, leak = _impurity(
        block.mean(axis=1), aligned, ports, known=blocks == 2 and reference.cross_polar_db is not None
    )
    plain = own.mean(axis=0)
    # Every direction of the horn repeats its sweeps.
    apart = np.mean(np.abs(block - block.mean(axis=1, keepdims=True)) ** 2, axis=(0, 1))
    noise = np.sqrt(apart * own.shape[0] / max(1, own.shape[0] - 1))
    freedom = 2.0 * blocks * (own.shape[0] - 1)
    expanded = coverage_factor(own.shape[0]) * noise / np.sqrt(2.0 * own.shape[0]) / np.abs(plain)
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


def _impurity(mean: ComplexArray, aligned: FloatArray, ports: int, *, known: bool) -> tuple[ComplexArray, ComplexArray]:
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
        own = mean[other, :, other] / aligned[other]
        response[:, other, one] = mean[one, :, other] / aligned[one] / own
    return response, leak


def reference_gain_dbi(frequency_hz: FloatArray, reference: Reference, distance_m: float = np.inf) -> FloatArray:
    """Return the computed gain of the reference horn, or what it lays on its axis at a finite distance."""
    return horn_gain_dbi(
        frequency_hz,
        a=1e-3 * reference.aperture_a_mm,
        b=1e-3 * reference.aperture_b_mm,
        slant_e=1e-3 * reference.slant_e_mm,
        slant_h=1e-3 * reference.slant_h_mm,
        distance=distance_m,
    )


def _alignment(points: xr.Dataset, chamber: Chamber, ports: int, blocks: int) -> FloatArray:
    """Return the cosine between the horn's polarization and each port during its own sweeps, (port,).

    The horn is polarized along x of the device frame; port 2 lies 90 deg of growing roll from
    port 1.
    """
    names = [str(name) for name in points["axis"].values]
    per_port = points.sizes["point"] // blocks
    out = np.empty(ports)
    for port in range(ports):
        shown = points["commanded_deg"].values[port * per_port]
        angle = {n: float(chamber.axis_table[n].map.angle_deg(v)) for n, v in zip(names, shown, strict=True)}
        first, second = (np.deg2rad(angle[name]) for name in chamber.positioner.geometry.axis_names)
        horn = device_to_lab(chamber.positioner.geometry, first=first, second=second).rotation[:, 0]
        chi = np.deg2rad(angle.get("probe", 0.0) + 90.0 * port)
        out[port] = horn[0] * np.cos(chi) + horn[1] * np.sin(chi)
    if np.any(np.abs(out) < 0.9):
        raise ValueError(
            f"record: reference horn is not aligned with the probe port (cosine {out.min():.2f}, limit 0.9)"
        )
    return out


def apply_gain(record: xr.Dataset, transfer: GainTransfer) -> xr.Dataset:
    """Turn wave ratios into field at the probe in units of sqrt(gain)."""
    values = record["trace"].values * transfer.factor[None]
    if transfer.response.shape[1] == 2:
        values = np.einsum("fab,pfb->pfa", np.linalg.inv(transfer.response), values)
    unequal = {}
    if transfer.factor.shape[1] == 2:
        unequal = {
            "imbalance_db": [round(float(20.0 * np.log10(abs(x))), 4) for x in transfer.imbalance],
            "imbalance_deg": [round(float(np.rad2deg(np.angle(x))), 3) for x in transfer.imbalance],
        }
    attrs = {**record["trace"].attrs, "long_name": "field at the probe, exp(-jkA)/A removed, sqrt(gain)"}
    return with_step(
        record.assign(trace=(record["trace"].dims, values, attrs)),
        "gain",
        method="substitution, horn dimensions",
        reference_gain_dbi=[round(float(g), 4) for g in transfer.reference_gain_dbi],
        **unequal,
    )
