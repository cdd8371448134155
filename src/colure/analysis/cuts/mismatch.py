"""What the device's measured reflection says of a run of cuts: return loss, mismatch loss, and peaks without the mismatch."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from colure.analysis.cuts.errors import BASIS
from colure.analysis.steps.reflection import READ_ONCE, DeviceReflection
from colure.geometry.conventions import FloatArray
from colure.model.definitions import Definition, definitions_for
from colure.model.evaluation import Evaluation
from colure.model.figure import BudgetRow, Figure

ROW = "device reflection"


def mismatch_figures(reflection: DeviceReflection, frequency_hz: FloatArray) -> list[Figure]:
    """Return mismatch loss and return loss of every frequency."""
    known = {one.name: one for one in definitions_for(Evaluation(), reflection=True, reflection_measured=True)}
    loss, back = known["mismatch_loss_db"], known["return_loss_db"]
    low, high = reflection.loss_ends_db
    out = []
    for f, frequency in enumerate(frequency_hz):
        out.append(_figure(loss, float(frequency), (float(low[f]), float(reflection.loss_db[f]), float(high[f]))))
        ends = (float(reflection.low[f]), float(reflection.modulus[f]), float(reflection.high[f]))
        out.append(_figure(back, float(frequency), ends))
    return out


def read_once_figures(frequency_hz: FloatArray) -> list[Figure]:
    """Return mismatch loss and return loss of every frequency where the reflection was read once: undefined, and why."""
    known = {one.name: one for one in definitions_for(Evaluation(), reflection=True, reflection_measured=True)}
    return [
        replace(_figure(known[name], float(frequency), (np.nan, np.nan, np.nan)), reason=READ_ONCE)
        for frequency in frequency_hz
        for name in ("mismatch_loss_db", "return_loss_db")
    ]


def _figure(what: Definition, frequency_hz: float, native: tuple[float, float, float]) -> Figure:
    """Return a figure whose only uncertainty is that of the reflection; `native` low, value and high."""
    low, value, high = (what.display(one) for one in native)
    low, high = min(low, high), max(low, high)
    wide = max(abs(high - value), abs(value - low))
    row = BudgetRow(term=ROW, expanded=wide if np.isfinite(wide) else float("inf"), basis=BASIS[ROW], kind="measured")
    return Figure(
        name=what.name, label=what.label, value=value, unit=what.unit, frequency_hz=frequency_hz, lower=low, upper=high,
        definition=what.text, source=what.source, topic=what.topic, budget=(row,)
    )  # fmt: skip


def accepted(peak: Figure, reflection: DeviceReflection, f: int) -> Figure:
    """Return a cut's peak gain without the device's mismatch: gain of the accepted power."""
    (low, high), loss = reflection.loss_ends_db, float(reflection.loss_db[f])
    wide = max(float(high[f]) - loss, loss - float(low[f]))
    name, label = peak.name.replace("peak_dbi", "peak_accepted_dbi"), f"{peak.label} (accepted power)"
    text = "Highest realized gain on the cut over 1 - |S11|^2 of the device."
    if peak.reason:
        return replace(peak, name=name, label=label, definition=text)
    value = peak.value + loss
    down, up = (float(np.hypot(side, wide)) for side in (peak.value - peak.lower, peak.upper - peak.value))
    row = BudgetRow(term=ROW, expanded=wide, basis=BASIS[ROW], kind="measured")
    return replace(
        peak, name=name, label=label, value=value, lower=value - down, upper=value + up, definition=text,
        budget=(*peak.budget, row),
    )  # fmt: skip
