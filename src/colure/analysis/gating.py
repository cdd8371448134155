"""Time gating: keep what arrives about one moment, with the edges of the band put right.

A gate multiplies the impulse response; over frequency that is a convolution with the gate's
spectrum, which runs short of data at both ends of the band. Dividing by what the same gate does to
one ideal ray in its middle puts that right (renormalization). A band of width B resolves 1/B; a
step of df repeats everything after 1/df: a ray one such range later lands on the gate.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from colure.geometry.conventions import SPEED_OF_LIGHT, ComplexArray, FloatArray
from colure.model.files import with_step
from colure.model.plan import Role
from colure.model.record import of_role

if TYPE_CHECKING:
    import xarray as xr

#: Share of the gate's width on each side over which it opens and closes (raised cosine).
SLOPE_SHARE = 0.5
#: A gate narrower than this many resolutions 1/B cuts into the direct ray itself.
NARROWEST = 2.0


@dataclass(frozen=True)
class Gate:
    """Middle and width of a gate, seconds."""

    centre_s: float
    width_s: float


def limits(frequency_hz: FloatArray) -> tuple[float, float]:
    """Return (narrowest, widest) useful gate in seconds.

    Raises
    ------
    ValueError
        If there are too few frequencies, or they are not equidistant.
    """
    if frequency_hz.size < 5:
        raise ValueError(f"gate: {frequency_hz.size} frequencies, needs at least 5 (frequencies)")
    steps = np.diff(frequency_hz)
    if np.ptp(steps) > 1e-6 * steps.mean():
        raise ValueError(f"gate: steps from {steps.min():g} to {steps.max():g} Hz, must be equidistant")
    return NARROWEST / float(np.ptp(frequency_hz)), 1.0 / float(steps.mean())


def impulse_response(
    trace: ComplexArray, frequency_hz: FloatArray, *, points: int = 1024
) -> tuple[FloatArray, ComplexArray]:
    """Return (time in seconds, response (..., time)) over one alias range from 0, Hann-windowed."""
    window = np.hanning(frequency_hz.size + 2)[1:-1]
    spectrum = np.zeros((*trace.shape[:-1], points), complex)
    spectrum[..., : frequency_hz.size] = trace * window / window.sum()
    time = np.arange(points) / points / float(np.mean(np.diff(frequency_hz)))
    return time, np.asarray(np.fft.ifft(spectrum, axis=-1) * points)


def propose(trace: ComplexArray, frequency_hz: FloatArray, echo_excess_m: tuple[float, ...]) -> Gate:
    """Return a gate about the strongest arrival of traces (..., frequency), half way to the nearest echo.

    Raises
    ------
    ValueError
        If no echo distance is known, or the band cannot part the nearest one; the missing span is named.
    """
    narrowest, widest = limits(frequency_hz)
    if not echo_excess_m:
        raise ValueError("gate: chamber.toml declares no echo_excess_m, needs the nearest one to propose a width (m)")
    width = min(min(echo_excess_m) / SPEED_OF_LIGHT, widest)
    if width < narrowest:
        raise ValueError(
            f"gate: the nearest echo comes {min(echo_excess_m):g} m late and allows a gate of {1e9 * width:.2f} ns; the span of "
            f"{np.ptp(frequency_hz) / 1e9:.3g} GHz needs at least {1e9 * narrowest:.2f} ns: {NARROWEST / width / 1e9:.3g} GHz would do"
        )
    time, response = impulse_response(trace, frequency_hz)
    power = np.sum(np.abs(response.reshape(-1, time.size)) ** 2, axis=0)
    return Gate(float(time[int(np.argmax(power))]), width)


def spectrum_matrix(frequency_hz: FloatArray, gate: Gate) -> ComplexArray:
    """Return the matrix (frequency, frequency) that gates a trace, renormalized to the gate's own middle.

    Raises
    ------
    ValueError
        If the gate is narrower than the span resolves or wider than the alias-free range.
    """
    narrowest, widest = limits(frequency_hz)
    if not narrowest <= gate.width_s <= widest:
        raise ValueError(
            f"gate: width {1e9 * gate.width_s:.3g} ns, must be from {1e9 * narrowest:.3g} (span) to {1e9 * widest:.3g} ns "
            "(alias-free range)"
        )
    apart = frequency_hz[:, None] - frequency_hz[None, :]
    slope = SLOPE_SHARE * gate.width_s
    # A flat top convolved with a raised cosine: the product of their transforms.
    flat = (gate.width_s - slope) * np.sinc(apart * (gate.width_s - slope))
    x = apart * slope
    rounding = np.cos(np.pi * np.clip(x, -50, 50)) / np.where(np.isclose(np.abs(x), 0.5), np.inf, 1.0 - 4.0 * x**2)
    rounding = np.where(np.isclose(np.abs(x), 0.5), np.pi / 4.0, rounding)
    kernel = flat * rounding * np.exp(-2j * np.pi * apart * gate.centre_s)
    ray = np.exp(-2j * np.pi * frequency_hz * gate.centre_s)
    return np.asarray(kernel * (ray / (kernel @ ray))[:, None])


def gated(trace: ComplexArray, frequency_hz: FloatArray, gate: Gate) -> ComplexArray:
    """Return traces (..., frequency) with only what arrives inside the gate."""
    return np.asarray(trace @ spectrum_matrix(frequency_hz, gate).T)


def proposed_gate(
    record: xr.Dataset, echo_excess_m: tuple[float, ...], *, centre_s: float | None = None, width_s: float | None = None
) -> Gate:
    """Return a gate; what is left open is proposed from the record's tie points.

    Raises
    ------
    ValueError
        If the frequency grid cannot carry a gate; numbers are named.
    """
    frequency = record["frequency"].values
    limits(frequency)
    if centre_s is not None and width_s is not None:
        return Gate(centre_s, width_s)
    ties = np.moveaxis(of_role(record, Role.TIE)["trace"].values, 1, 2)
    time, response = impulse_response(ties, frequency)
    strongest = float(time[int(np.argmax(np.sum(np.abs(response.reshape(-1, time.size)) ** 2, axis=0)))])
    wide = propose(ties, frequency, echo_excess_m).width_s if width_s is None else width_s
    return Gate(strongest if centre_s is None else centre_s, wide)


def gate_record(record: xr.Dataset, gate: Gate) -> xr.Dataset:
    """Gate every sweep of a record.

    Raises
    ------
    ValueError
        If the frequency grid cannot carry the gate; numbers are named.
    """
    matrix = spectrum_matrix(record["frequency"].values, gate)
    trace = np.einsum("gf,pfc->pgc", matrix, record["trace"].values)
    changed = record.assign(trace=(record["trace"].dims, trace, record["trace"].attrs))
    return with_step(changed, "gate", centre_ns=1e9 * gate.centre_s, width_ns=1e9 * gate.width_s)
