"""Near field on the measured sphere to the far-field expansion in the device frame."""

from __future__ import annotations

from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from colure.analysis.steps.assemble import MeasuredSphere
from colure.analysis.steps.mode_filter import OwnWaves
from colure.geometry.conventions import ComplexArray, FloatArray, mode_count, power_db, wavenumber
from colure.model.fields import FieldSamples
from colure.model.files import open_dataset
from colure.model.pattern import field_of
from colure.model.plausible import pole_fault
from colure.values import holds_arrays
from colure.waves.expansion import Expansion
from colure.waves.modes import resized
from colure.waves.probe import FirstOrderResponse, apply_response, first_order_response, ideal_response, remove_response
from colure.waves.rings import RingFit
from colure.waves.transform import analysis, highest_order, synthesis

if TYPE_CHECKING:
    import xarray as xr

#: A probe pattern with less of its response in mu = +-1 is not a first-order probe.
LEAST_FIRST_ORDER_SHARE = 0.999
#: A probe looks towards the device: its strongest direction may be this much above it, dB (common practice, no source).
MOST_BELOW_DB = 6.0

#: A probe's pattern is expanded to this order; further, to at most the next one, where a degree beyond it holds more than this share
#: of the power and stands out of the noise by so many standard deviations.
USUAL_PROBE_ORDER, LARGEST_PROBE_ORDER, PROBE_LEFT, SURE = 20, 80, 1e-6, 6.0
#: Share of the power that may lie above the orders that are kept.
PROBE_CUT = 1e-3
#: One component of a field of order N bends a little more than the field: its direction turns along.
MORE_ORDERS = 8
#: Damping beyond this would show: its square is the share that even well measured waves lose.
MOST_DAMPING = 0.03


@dataclass(frozen=True, kw_only=True)
@holds_arrays
class FarFieldStep:
    """Everything the near-field to far-field step needs besides the data; reused by the budget.

    grid
        Rings and columns of the scan.
    """

    order: int
    keep_order: int
    response: FirstOrderResponse
    k: FloatArray
    polar_to_device: FloatArray
    phi_start: float
    rings: RingFit | None = None
    direct: bool = False
    own_waves: OwnWaves | None = None
    grid: tuple[int, int] = (0, 0)

    def measured(self, field: ComplexArray) -> ComplexArray:
        """Return the coefficients of measured fields (..., 2, theta, phi), probe and distance still in them."""
        if self.rings is not None:
            return self.rings.analysis(field, phi_start=self.phi_start)
        return analysis(field, self.order, phi_start=self.phi_start)

    def at_frequency(self, index: int) -> FarFieldStep:
        """Return the step for one of its frequencies alone, any leading dimensions."""
        return replace(self, response=self.response.at(index), k=self.k[index])

    def predicted(self, expansion: Expansion) -> ComplexArray:
        """Return what the scan would measure of a device, (..., 2, theta, phi) on `theta` rings of a whole sphere.

        Raises
        ------
        ValueError
            If the scan covers only part of the sphere.
        """
        if self.rings is not None:
            raise ValueError("near field: part of a sphere does not determine a device (deg)")
        polar = expansion
        if not np.array_equal(self.polar_to_device, np.eye(3)):
            polar = expansion.rotated(self.polar_to_device.T)
        measured = apply_response(resized(polar.coefficients, self.order), self.response)
        theta = np.linspace(0.0, np.pi, self.grid[0])
        return synthesis(measured, theta, self.grid[1], phi_start=self.phi_start)

    def unseen(self, measured: ComplexArray) -> ComplexArray:
        """Return what of coefficients (..., 2, N(N+2)) of the measured field the rings of a part of the sphere do not tell.

        Raises
        ------
        ValueError
            If the scan covers the whole sphere.
        """
        if self.rings is None:
            raise ValueError("near field: a whole sphere leaves nothing unseen (deg)")
        seen = synthesis(measured, self.rings.theta, self.grid[1], phi_start=self.phi_start)
        return np.asarray(measured - self.measured(seen))

    def refitted(self, field: ComplexArray) -> ComplexArray:
        """Return the part of measured fields (..., 2, theta, phi) that fits into the device's waves."""
        return self.predicted(self.expansion(field))

    def expansion(self, field: ComplexArray) -> Expansion:
        """Return the device-frame expansion of measured fields (..., 2, theta, phi)."""
        return self.from_measured(self.measured(field))

    def from_measured(self, coefficients: ComplexArray) -> Expansion:
        """Return the device-frame expansion from coefficients of the measured field."""
        device = resized(remove_response(coefficients, self.response), self.keep_order)
        result = Expansion(device, self.k)
        if not np.array_equal(self.polar_to_device, np.eye(3)):
            result = result.rotated(self.polar_to_device)
        return result if self.own_waves is None else self.own_waves.of(result)


def far_field_step(
    sphere: MeasuredSphere,
    *,
    distance_m: float,
    keep_order: int,
    probe: Expansion | None = None,
    noise: FloatArray | None = None,
    stray: float = 0.0,
    direct: bool = False,
    own_waves: OwnWaves | None = None,
) -> FarFieldStep:
    """Prepare the step for a measured sphere.

    Parameters
    ----------
    keep_order
        Order of the device's own waves; higher ones, which the grid may resolve, are dropped. One
        polarization alone is fitted as it was measured, at the range length.
    probe
        Far field of the probe at the same frequencies; an ideal dipole if None.
    noise
        (frequency,) standard deviation of one sample; damps what part of a sphere hardly shows.
    stray
        Field that is not the device's relative to the peak; damps likewise.
    direct
        True: the field is taken as it was measured at the range length.
    own_waves
        Filter about the device's own centre, after the transform.

    Raises
    ------
    ValueError
        If the grid cannot carry `keep_order`, or the probe is not nearly a first-order one.
    """
    rings, k = None, wavenumber(sphere.frequency_hz)
    if sphere.one_polarization:
        # A transform would need the other polarization.
        top = (sphere.phi.size - 1) // 2
        by_rings = round(np.pi / float(sphere.theta[1] - sphere.theta[0])) - 1
        order = max(keep_order, min(keep_order + MORE_ORDERS, by_rings))
        rings = RingFit(sphere.theta, order, _damping(sphere, order, noise, 0.0), top)
        response = _nothing_in_between(k.size, order)
        grid = (sphere.theta.size, sphere.phi.size)
        return FarFieldStep(
            order=order,
            keep_order=order,
            response=response,
            k=k,
            polar_to_device=sphere.polar_to_device,
            phi_start=float(sphere.phi[0]),
            rings=rings,
            direct=True,
            own_waves=None,
            grid=grid,
        )
    if sphere.whole:
        order = highest_order("with-poles", rings=sphere.theta.size, phi_count=sphere.phi.size)
    else:
        # Waves hold each other in balance inside the part that was seen: none may be dropped afterwards.
        order = min((sphere.phi.size - 1) // 2, keep_order)
        rings = RingFit(sphere.theta, order, _damping(sphere, order, noise, stray))
    if keep_order > order:
        raise ValueError(f"order: {keep_order}, must be at most {order} (degree) on this grid")
    response = _nothing_in_between(k.size, order) if direct else _probe_response(probe, order, k, distance_m)
    start = float(sphere.phi[0])
    grid = (sphere.theta.size, sphere.phi.size)
    return FarFieldStep(
        order=order,
        keep_order=keep_order,
        response=response,
        k=k,
        polar_to_device=sphere.polar_to_device,
        phi_start=start,
        rings=rings,
        direct=direct,
        own_waves=own_waves,
        grid=grid,
    )


def _probe_response(probe: Expansion | None, order: int, k: FloatArray, distance_m: float) -> FirstOrderResponse:
    """Return what a probe makes of waves up to `order` at a distance; an ideal dipole if None.

    Raises
    ------
    ValueError
        If the probe is not nearly a first-order one.
    """
    if probe is None:
        return ideal_response(order, k, distance_m)
    response = first_order_response(probe, order, distance_m)
    share = float(response.first_order_share.min())
    if share < LEAST_FIRST_ORDER_SHARE:
        raise ValueError(
            f"probe pattern: first-order share {share:.5f}, must be at least {LEAST_FIRST_ORDER_SHARE} (power ratio)"
        )
    return response


def _nothing_in_between(frequencies: int, order: int) -> FirstOrderResponse:
    """Return the response that leaves a field as it was measured."""
    unchanged = np.ones((frequencies, 2, order), complex)
    return FirstOrderResponse(unchanged, unchanged, np.ones(frequencies))


def _damping(sphere: MeasuredSphere, order: int, noise: FloatArray | None, stray: float) -> float:
    """Return the error of one coefficient over the usual size of one, at the worst frequency.

    Inside the measured part any small value gives the same field; outside it the error grows to
    about the signal, no further.
    """
    area = RingFit(sphere.theta, order).solid_angle
    power = np.sum(np.mean(np.sum(np.abs(sphere.field) ** 2, axis=1), axis=-1) * area, axis=-1)
    usual = np.sqrt(power / (2.0 * mode_count(order)))
    per_sample = float(np.mean(area)) / sphere.phi.size
    own = np.zeros_like(usual) if noise is None else noise * np.sqrt(per_sample)
    peak = np.max(np.abs(sphere.field), axis=(1, 2, 3))
    foreign = stray * peak * np.sqrt(4.0 * np.pi / (2.0 * mode_count(order)))
    return float(np.clip(np.max(np.hypot(own, foreign) / np.maximum(usual, 1e-300)), 1e-6, MOST_DAMPING))


def load_probe(path: Path, frequency_hz: FloatArray) -> Expansion:
    """Read a probe's pattern and expand it, interpolated to the frequencies wanted.

    The file is a pattern on a whole-sphere equiangular grid with poles, in the probe's frame
    (z out of the aperture, x along port 1).

    Raises
    ------
    ValueError
        If the band is not covered or the grid is not a whole sphere with poles.
    """
    return probe_from(open_dataset(path), path.name, frequency_hz)


def probe_from(dataset: xr.Dataset, name: str, frequency_hz: FloatArray) -> Expansion:
    """Expand a probe's pattern as `load_probe` does that of a file; `name` is what errors call it."""
    theta, phi = np.deg2rad(dataset["theta"].values), np.deg2rad(dataset["phi"].values)
    if not (np.isclose(theta[0], 0.0) and np.isclose(theta[-1], np.pi)):
        raise ValueError(
            f"{name}: theta runs {np.rad2deg(theta[0]):g} to {np.rad2deg(theta[-1]):g}, must be 0 to 180 deg"
        )
    _require_ahead(field_of(dataset), dataset["theta"].values, name)
    _require_one_vector(field_of(dataset)[..., 0, :], dataset["frequency"].values, phi, name)
    coefficients = _probe_waves(
        field_of(dataset), highest_order("with-poles", rings=theta.size, phi_count=phi.size), name
    )
    known = dataset["frequency"].values
    if frequency_hz.min() < known.min() - 1.0 or frequency_hz.max() > known.max() + 1.0:
        raise ValueError(
            f"{name}: covers {known.min() / 1e9:g} to {known.max() / 1e9:g} GHz, "
            f"the record needs {frequency_hz.min() / 1e9:g} to {frequency_hz.max() / 1e9:g} GHz"
        )
    flat = coefficients.reshape(known.size, -1)
    real = np.stack([np.interp(frequency_hz, known, column) for column in flat.real.T], axis=-1)
    imaginary = np.stack([np.interp(frequency_hz, known, column) for column in flat.imag.T], axis=-1)
    joined = (real + 1j * imaginary).reshape(frequency_hz.size, *coefficients.shape[1:])
    return Expansion(joined, wavenumber(frequency_hz))


def _require_ahead(field: ComplexArray, theta_deg: FloatArray, name: str) -> None:
    """Raise `ValueError` if a probe of (frequency, 2, theta, phi) radiates most elsewhere than towards the device: its frame is another one."""
    power = np.max(np.sum(np.abs(field) ** 2, axis=1), axis=-1)  # frequency, theta
    below = power_db(np.max(power, axis=1) / np.maximum(power[:, 0], 1e-30 * np.max(power, axis=1)))
    worst = int(np.argmax(below))
    if below[worst] > MOST_BELOW_DB:
        raise ValueError(
            f"{name}: the field at theta = 0 lies {below[worst]:.0f} dB below the strongest, at theta = {theta_deg[np.argmax(power[worst])]:g} deg: "
            f"must be at most {MOST_BELOW_DB:g} dB; z points out of the probe's aperture towards the device"
        )


def _require_one_vector(ahead: ComplexArray, frequency_hz: FloatArray, phi: FloatArray, name: str) -> None:
    """Raise `ValueError` if columns of (frequency, 2, phi) at theta = 0 contradict each other: components exchanged, a sign, a mirrored phi."""
    nothing = np.zeros(phi.size)
    one_direction = [
        FieldSamples(float(frequency), nothing, phi, field, None, nothing + 1.0)
        for frequency, field in zip(frequency_hz, ahead, strict=True)
    ]
    if fault := pole_fault(one_direction):
        raise ValueError(f"{name}: {fault}; write it anew, x along port 1 and z towards the device")


def _probe_waves(field: ComplexArray, carried: int, name: str) -> ComplexArray:
    """Expand a probe's field up to the order that its waves reach; `carried` is the highest that its grid tells apart.

    Noise lies evenly over all waves: what the highest quarter holds is taken for it.
    """
    order = min(USUAL_PROBE_ORDER, carried)
    coefficients = analysis(field, order)
    by_degree = Expansion(coefficients, np.zeros(len(field))).mode_power()
    if np.all(np.sum(by_degree[:, -2:], axis=-1) <= PROBE_LEFT * np.sum(by_degree, axis=-1)):
        return coefficients
    every = analysis(field, carried)
    by_degree = Expansion(every, np.zeros(len(field))).mode_power()
    total = np.sum(by_degree, axis=-1, keepdims=True)
    count, high = 2.0 * np.arange(1, carried + 1) + 1.0, carried - max(2, carried // 4)
    noise = np.median(by_degree[:, high:] / count[high:], axis=-1, keepdims=True) * count
    excess = by_degree - noise * (1.0 + SURE / np.sqrt(2.0 * count))
    cut = np.max(np.sum(np.maximum(excess, 0.0)[:, min(high, LARGEST_PROBE_ORDER) :], axis=-1, keepdims=True) / total)
    if cut > PROBE_CUT:
        raise ValueError(
            f"{name}: waves above order {min(high, LARGEST_PROBE_ORDER)} carry {power_db(cut):.0f} dB of its power: must be at most "
            f"{power_db(PROBE_CUT):.0f} dB; give a finer grid of theta and phi, or use a probe of less gain"
        )
    reached = int(np.max(np.flatnonzero(np.any(excess > PROBE_LEFT * total, axis=0)), initial=-1)) + 1
    reached = min(reached, high, LARGEST_PROBE_ORDER)
    return resized(every, max(order, reached))


def pattern_grid(expansion: Expansion, step_deg: float) -> tuple[FloatArray, FloatArray, ComplexArray]:
    """Return (theta, phi, field) of an expansion on a regular grid with poles, radians."""
    rings = round(180.0 / step_deg) + 1
    columns = 2 * (rings - 1)
    theta = np.linspace(0.0, np.pi, rings)
    phi = np.arange(columns) * 2.0 * np.pi / columns
    return theta, phi, synthesis(expansion.coefficients, theta, columns)
