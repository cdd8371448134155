"""Bandwidths of any figure: where over the band it keeps what is asked of it."""

from __future__ import annotations

import numpy as np

from colure.geometry.conventions import FloatArray
from colure.model.bands import stretches
from colure.model.evaluation import Span
from colure.model.figure import BudgetRow, Figure


def bandwidth_of(span: Span, figures: list[Figure]) -> Figure:
    """Return the width (MHz) of the stretch about the best frequency over which a figure keeps its limit.

    Straight in between frequencies. The interval takes the figure's own interval: its lower end asks for the
    limit at the pessimistic end everywhere, its upper end at the optimistic one. A stretch that reaches the
    edge of the band is at least that wide: the upper end is then infinite.

    Raises
    ------
    ValueError
        If the figure was not read at two frequencies at least.
    """
    here = sorted((f for f in figures if f.name == span.figure), key=lambda f: f.frequency_hz)
    if len(here) < 2:
        known = ", ".join(sorted({f.name for f in figures}))
        raise ValueError(
            f"bandwidth of {span.figure}: read at {len(here)} frequencies, needs at least 2; figures are {known}"
        )
    if (undefined := next((f for f in here if f.reason), None)) is not None:
        nan = float("nan")
        return Figure(name=f"bandwidth_{span.figure}", label=f"Bandwidth of {here[0].label.lower()}", value=nan,
                      unit="MHz", frequency_hz=undefined.frequency_hz, lower=nan, upper=nan,
                      definition="Width of the stretch of frequencies over which a figure keeps its limit.",
                      source="definition derivable", topic="band",
                      reason=f"undefined at {undefined.frequency_hz / 1e9:.3f} GHz: {undefined.reason.removeprefix('undefined: ')}")  # fmt: skip
    frequency = np.array([f.frequency_hz for f in here])
    value, lower, upper = (np.array([getattr(f, name) for f in here]) for name in ("value", "lower", "upper"))
    if span.at_most is not None:
        # Mirrored: below a limit is above its negative.
        value, lower, upper, limit = -value, -upper, -lower, -span.at_most
    else:
        limit = float(value.max()) - span.drop_db if span.drop_db is not None else float(span.at_least or 0.0)
    if span.drop_db is not None:
        # What moves all frequencies together does not change a drop: only half of the interval's own spread counts.
        common = float(np.min(0.5 * (upper - lower)))
        lower, upper = np.minimum(lower + common, value), np.maximum(upper - common, value)
    best = int(np.argmax(value))
    width, reached = _stretch(frequency, value, limit, best)
    least, _ = _stretch(frequency, lower, limit, best)
    most, edge = _stretch(frequency, upper, limit, best)
    words = (
        f"at most {span.drop_db:g} dB below its best" if span.drop_db is not None
        else f"at least {span.at_least:g}" if span.at_least is not None else f"at most {span.at_most:g}"
    )  # fmt: skip
    return Figure(
        name=f"bandwidth_{span.figure}",
        label=f"Bandwidth of {here[0].label.lower()}",
        value=1e-6 * width,
        unit="MHz",
        frequency_hz=float(frequency[frequency.size // 2]),
        lower=1e-6 * least,
        upper=float("inf") if edge or reached else 1e-6 * most,
        definition=f"Width of the stretch of frequencies about the best one where {here[0].label.lower()} is {words} {here[0].unit}.",
        source="definition derivable",
        topic="band",
        budget=(
            BudgetRow(
                term="figure over frequency",
                expanded=0.5e-6 * (most - least),
                basis="the figure's own intervals",
                kind="measured",
                distribution="change",
            ),
        ),
    )


def _stretch(frequency_hz: FloatArray, value: FloatArray, limit: float, best: int) -> tuple[float, bool]:
    """Return (width in Hz of the stretch about `best` where value >= limit, whether it reaches an edge of the band)."""
    if value[best] < limit:
        return 0.0, False
    ends, reached = [], False
    # Nothing is known between two bands: a gap ends what was measured.
    own = next(one for one in stretches(frequency_hz) if one.start <= best < one.stop)
    for step, last in ((1, own.stop - 1), (-1, own.start)):
        i = best
        while i != last and value[i + step] >= limit:
            i += step
        if i == last:
            reached = True
            ends.append(float(frequency_hz[i]))
        else:
            share = (value[i] - limit) / (value[i] - value[i + step])
            ends.append(float(frequency_hz[i] + share * (frequency_hz[i + step] - frequency_hz[i])))
    return ends[0] - ends[1], reached
