"""What a frequency grid can see in time: alias-free delay, resolution, and the chamber's echoes between them."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from colure.geometry.conventions import SPEED_OF_LIGHT, FloatArray
from colure.model.bands import evenly_spaced

#: A window that keeps side lobes low widens the response by about this (common practice, no source).
WINDOW_WIDENING = 2.0


@dataclass(frozen=True, kw_only=True)
class FrequencyGrid:
    """Seconds and one-way metres that an equidistant grid resolves (section 8 of the standards sheet, derived).

    alias_free_m
        Excess path beyond which an echo folds back: c / step.
    resolution_m
        Excess path below which echo and direct ray are one: c / span.
    """

    step_hz: float
    span_hz: float
    alias_free_s: float
    alias_free_m: float
    resolution_s: float
    resolution_m: float


def frequency_grid(frequency_hz: FloatArray) -> FrequencyGrid | None:
    """Return what frequencies (n,) in Hz resolve; None for a single one, and for unequal steps, which carry no time gate."""
    if frequency_hz.size < 2 or not evenly_spaced(frequency_hz):
        return None
    span = float(frequency_hz[-1] - frequency_hz[0])
    step = span / (frequency_hz.size - 1)
    return FrequencyGrid(
        step_hz=step,
        span_hz=span,
        alias_free_s=1.0 / step,
        alias_free_m=SPEED_OF_LIGHT / step,
        resolution_s=1.0 / span,
        resolution_m=SPEED_OF_LIGHT / span,
    )


def no_grid_words(frequency_hz: FloatArray) -> str:
    """Say why frequencies carry no time gate, where `frequency_grid` is None."""
    if frequency_hz.size < 2:
        return "one frequency: no time gate is possible"
    steps = np.diff(frequency_hz) / 1e6
    return (
        f"steps from {steps.min():g} to {steps.max():g} MHz: no time gate is possible, it needs equal steps: one band of "
        "start_ghz, stop_ghz, points"
    )


def gate_verdict(frequency_hz: FloatArray, echo_excess_m: tuple[float, ...]) -> str:
    """Say whether a time gate can part the declared echoes from the direct ray, and what is missing.

    echo_excess_m
        How much longer than the direct ray the echoes' ways are, metres.
    """
    grid = frequency_grid(frequency_hz)
    if not echo_excess_m:
        return "no echo distances declared (chamber.toml echo_excess_m), gating not judged"
    if grid is None:
        return no_grid_words(frequency_hz)
    nearest, farthest = min(echo_excess_m), max(echo_excess_m)
    wanted_span = WINDOW_WIDENING * SPEED_OF_LIGHT / nearest
    wanted_step = SPEED_OF_LIGHT / (2.0 * farthest)
    faults = []
    if grid.span_hz < wanted_span:
        faults.append(
            f"the nearest echo comes {nearest:g} m late and needs {wanted_span / 1e9:.2f} GHz of span, "
            f"{grid.span_hz / 1e9:.2f} GHz are planned"
        )
    if grid.step_hz > wanted_step:
        points = int(np.ceil(grid.span_hz / wanted_step)) + 1
        faults.append(
            f"the farthest echo comes {farthest:g} m late and needs steps of {wanted_step / 1e6:.1f} MHz at most "
            f"({points} points), {grid.step_hz / 1e6:.1f} MHz are planned"
        )
    return "gating possible" if not faults else "no gating: " + "; ".join(faults)
