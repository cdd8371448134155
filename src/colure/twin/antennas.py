"""The simulated antennas: our panel with its flaws, a reference horn, a probe.

Invented devices; nothing here describes a real product.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray, IntArray
from colure.twin.sources import Cluster

LIGHT = 299_792_458.0
#: Sources across a reference horn's mouth at least: fewer shrink the mouth as a near probe sees it (its second moment by 1/n^2).
FEWEST_ACROSS = 8


@dataclass(frozen=True)
class PanelFlaws:
    """What is wrong with the panel, as (row, column) of the element grid."""

    dead: tuple[tuple[int, int], ...] | None = ((2, 5),)
    misfed: tuple[tuple[int, int], ...] | None = ((4, 1), (5, 1))
    misfeed_deg: float = 75.0


@dataclass(frozen=True, kw_only=True)
class PanelMake:
    """How a panel is made.

    taper
        Amplitude over rows and columns: 1 - taper + taper cos(pi u / width).
    error, cross_error
        Rms of each part of the elements' random errors, co- and cross-polar.
    cross
        Mean orthogonal part of the field.
    magnetic_ratio
        Magnetic over electric moment: less than 1 leaves some radiation behind the ground plane.
    feed_slope_deg, feed_loss_db
        A corporate feed disperses a little: phase at the edge column at the end of the band turns the beam; loss there.
    moment
        (x, y) unit vector of the wanted polarization.
    """

    taper: float = 0.45
    error: float = 0.03
    cross_error: float = 0.035
    cross: complex = 0.06j
    magnetic_ratio: float = 0.88
    feed_slope_deg: float = 6.0
    feed_loss_db: float = 0.15
    moment: tuple[complex, complex] = (1.0, 0.0)


def panel(
    frequency_hz: FloatArray,
    *,
    elements: int = 8,
    columns: int | None = None,
    pitch_m: float | None = None,
    centre_m: tuple[float, float, float] = (0.0, 0.0, -0.030),
    flaws: PanelFlaws | None = None,
    make: PanelMake | None = None,
    efficiency_db: float = -1.1,
    centre_hz: float = 24.125e9,
    half_band_hz: float = 0.125e9,
    seed: int = 24,
) -> Cluster:
    """Return a printed panel, boresight +z: `elements` rows, as many columns by default; the demo's with its defaults.

    Rows run along y, columns along x. Each element is a crossed electric and magnetic
    dipole (front pattern 1 + r cos theta) with a weak orthogonal part; edge taper
    cos on a pedestal; small random amplitude and phase errors, a gentle response over
    frequency, and the given flaws.
    """
    rng = np.random.default_rng(seed)
    f = np.asarray(frequency_hz, float)
    columns = elements if columns is None else columns
    pitch = 0.5 * LIGHT / centre_hz if pitch_m is None else pitch_m
    flaws, make = flaws or PanelFlaws(), make or PanelMake()
    count = elements * columns
    place_y, place_x = ((np.arange(n) - (n - 1) / 2) * pitch for n in (elements, columns))
    row, column = np.meshgrid(np.arange(elements), np.arange(columns), indexing="ij")
    position = np.stack([place_x[column].ravel(), place_y[row].ravel(), np.zeros(count)], axis=-1)
    edge_y, edge_x = (
        (1.0 - make.taper) + make.taper * np.cos(np.pi * p / (p.size * pitch)) for p in (place_y, place_x)
    )
    errors = 1.0 + make.error * (rng.normal(size=count) + 1j * rng.normal(size=count))
    excitation = (edge_y[row] * edge_x[column]).ravel() * errors
    _apply_flaws(excitation, row.ravel(), column.ravel(), flaws)
    cross = make.cross_error * (rng.normal(size=count) + 1j * rng.normal(size=count)) + make.cross
    electric, magnetic = huygens(make.moment, np.asarray(cross, complex), make.magnetic_ratio)
    offset = (f - centre_hz) / half_band_hz
    slope = np.deg2rad(make.feed_slope_deg) * offset[:, None] * (position[None, :, 0] / (columns * pitch / 2))
    weights = excitation[None, :] * np.exp(1j * slope) * (1.0 - 0.02 * offset[:, None] ** 2)
    efficiency = 10 ** ((efficiency_db - make.feed_loss_db * offset**2) / 10.0)
    return Cluster(f, position + np.asarray(centre_m), electric, magnetic, weights, efficiency)


def huygens(
    moment: tuple[complex, complex], cross: ComplexArray, magnetic_ratio: float
) -> tuple[ComplexArray, ComplexArray]:
    """Return electric and magnetic moments (site, 3) of sources in the plane z = 0 that radiate towards +z.

    Parameters
    ----------
    moment
        (x, y) of the wanted polarization, unit vector.
    cross
        (site,) orthogonal part of each.
    magnetic_ratio
        Magnetic over electric moment: 1 radiates nothing towards -z.
    """
    wanted = np.asarray(moment, complex)
    other = np.array([-np.conj(wanted[1]), np.conj(wanted[0])])
    x, y = (wanted[axis] + np.asarray(cross) * other[axis] for axis in (0, 1))
    none = np.zeros_like(x)
    electric, magnetic = np.stack([x, y, none], axis=-1), np.stack([-y, x, none], axis=-1)
    return np.asarray(electric, complex), np.asarray(magnetic_ratio * magnetic, complex)


def _apply_flaws(excitation: ComplexArray, row: IntArray, column: IntArray, flaws: PanelFlaws) -> None:
    for place in flaws.dead or ():
        excitation[(row == place[0]) & (column == place[1])] = 0.0
    for place in flaws.misfed or ():
        excitation[(row == place[0]) & (column == place[1])] *= np.exp(1j * np.deg2rad(flaws.misfeed_deg))


def horn(
    frequency_hz: FloatArray,
    *,
    a_m: float,
    b_m: float,
    slant_e_m: float,
    slant_h_m: float,
    spacing: float = 0.4,
    cross: complex = 0.0,
) -> Cluster:
    """Return a pyramidal horn as Huygens sources over its aperture (a along y, E along x).

    Aperture field cos(pi y / a) with the quadratic phase of both flares about the slant
    lengths in metres; the aperture centre is the origin, `spacing` in wavelengths. `cross` is the field along
    y over that along x.
    """
    f = np.asarray(frequency_hz, float)
    step = spacing * LIGHT / float(f.max())
    count_a, count_b = (max(FEWEST_ACROSS, int(np.ceil(side / step))) for side in (a_m, b_m))
    along_a = (np.arange(count_a) + 0.5) / count_a * a_m - a_m / 2
    along_b = (np.arange(count_b) + 0.5) / count_b * b_m - b_m / 2
    x, y = (grid.ravel() for grid in np.meshgrid(along_b, along_a, indexing="ij"))
    k = 2.0 * np.pi * f / LIGHT
    path = x**2 / (2.0 * slant_e_m) + y**2 / (2.0 * slant_h_m)
    weights = np.cos(np.pi * y / a_m) * np.exp(-1j * k[:, None] * path)
    position = np.stack([x, y, np.zeros_like(x)], axis=-1)
    ones, zeros = np.ones_like(x), np.zeros_like(x)
    electric = np.stack([ones, cross * ones, zeros], axis=-1).astype(complex)
    magnetic = np.stack([-cross * ones, ones, zeros], axis=-1).astype(complex)
    return Cluster(f, position, electric, magnetic, weights, np.ones_like(f))


def probe_ports(
    frequency_hz: FloatArray,
    *,
    ring_m: float = 2.6e-3,
    cross_polar_db: float = -42.0,
    circular: bool = False,
    taper_db: float = 0.0,
) -> list[Cluster]:
    """Return the two ports of the probe in its own frame: port 1 along x, port 2 along -y; or one for each sense.

    The probe faces the device, so its own -y axis is 90 deg of growing roll from port 1.

    Four Huygens sources on a small ring; each port leaks into the other polarization at
    `cross_polar_db` (amplitude ratio in dB, in quadrature). A second, weak ring one wavelength out makes the
    pattern `taper_db` lower than that 10 deg off the axis, relative to the axis.
    """
    f = np.asarray(frequency_hz, float)
    leak = 10 ** (cross_polar_db / 20.0)
    places = np.array([[1, 0, 0], [0, 1, 0], [-1, 0, 0], [0, -1, 0]]) * ring_m
    ports = []
    x, y = np.array([1.0, 0.0, 0.0]), np.array([0.0, -1.0, 0.0])
    pair = ((x + 1j * y) / np.sqrt(2.0), (x - 1j * y) / np.sqrt(2.0)) if circular else (x, y)
    for co in pair:
        turned = np.cross([0.0, 0.0, 1.0], co)
        moment = co + 1j * leak * turned
        electric = np.tile(moment, (4, 1))
        magnetic = np.tile(np.cross([0.0, 0.0, 1.0], moment), (4, 1))
        weights = np.ones((f.size, 4), complex)
        port = Cluster(f, places, electric, magnetic, weights, np.ones_like(f))
        ports.append(port if taper_db == 0.0 else _tapered(port, taper_db))
    return ports


def _tapered(port: Cluster, taper_db: float) -> Cluster:
    """Return a probe's port with a second ring that lowers its pattern 10 deg off the axis."""
    ring = np.array([[1, 0, 0], [0, 1, 0], [-1, 0, 0], [0, -1, 0]]) * LIGHT / float(np.mean(port.frequency_hz))
    aside = np.array([np.sin(np.deg2rad(10.0)), 0.0, 0.0])

    def lower(places: FloatArray) -> FloatArray:
        """Sum over a ring 10 deg off the axis over that on it, (frequency,)."""
        return np.asarray(np.cos(port.k[:, None] * (places @ aside)).mean(axis=-1))

    wanted = 10.0 ** (-taper_db / 20.0) * lower(port.position)
    share = (wanted - lower(port.position)) / (lower(ring) - wanted)
    return Cluster(
        port.frequency_hz,
        np.concatenate([port.position, ring]),
        np.concatenate([port.electric, port.electric]),
        np.concatenate([port.magnetic, port.magnetic]),
        np.concatenate([port.weights, share[:, None] * port.weights], axis=1),
        port.efficiency,
    )
