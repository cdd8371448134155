"""Two patterns, two runs or many devices side by side, as tables."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import TYPE_CHECKING

from rich.table import Table
from rich.text import Text

from colure.app.terminal.consoles import console
from colure.app.terminal.say import say
from colure.model.figure import format_value

if TYPE_CHECKING:
    from colure.app.services.comparing import ComparedFigure, PatternComparison
    from colure.app.services.cuts import CutChange
    from colure.app.services.series import SeriesRow


def show_compared(comparison: PatternComparison) -> None:
    """Print how two patterns lie to each other, how they differ then, and figure by figure at mid-band."""
    m, middle = comparison.match, comparison.middle
    turn, shift = (", ".join(f"{v:+.3f}" for v in values) for values in (m.rotation_deg, m.shift_mm))
    moved = [
        *([f"turn {turn} deg about x, y, z"] if m.rotation_deg.any() else []),
        *([f"shift {shift} mm"] if m.shift_mm.any() else []),
        *([f"level {m.level_db[middle]:+.3f} dB at mid-band"] if abs(m.level_db).max() > 1e-9 else []),
    ]
    console().print(
        f"matched: {'; '.join(moved) or 'nothing but the phase of every frequency (--match takes a turn, a shift or a level out)'}"
    )
    console().print(f"left between them: {m.difference_db[middle]:.1f} dB rms below the peak at mid-band, "
                    f"{m.difference_db.max():.1f} dB at the worst frequency")  # fmt: skip
    table = Table(title="Level of the first / dB re peak, and how far the other one is from it as a field",
                  box=None, title_justify="left", pad_edge=False)  # fmt: skip
    for name in ("from", "to", "rms / dB", "worst / dB", "solid angle / %"):
        table.add_column(name, justify="right")
    for one in comparison.levels:
        table.add_row(
            f"{one.high_db:.0f}",
            f"{one.low_db:.0f}",
            f"{one.error_db:.1f}",
            f"{one.worst_db:.1f}",
            f"{100 * one.share:.1f}",
        )
    console().print(table)
    show_figure_rows(comparison.rows, float(comparison.frequency_hz[middle]))


def show_figure_rows(rows: Sequence[ComparedFigure], frequency: float) -> None:
    """Print the figures of two patterns side by side at one frequency in Hz, and how many agree at all of them."""
    table = Table(
        title=f"Figures at {frequency / 1e9:.3f} GHz, as they are", box=None, title_justify="left", pad_edge=False
    )
    table.add_column("figure")
    for name in ("this", "other", "change", "unit", "E_n"):
        table.add_column(name, justify="right" if name != "unit" else "left")
    here = [row for row in rows if row.frequency_hz == frequency]
    for row in here:
        if not row.undefined:
            colour = "green" if row.agrees else "bold red"
            own = row.change_expanded
            change = "undefined in one" if math.isnan(row.change) else _with_half(row.change, own, own)
            table.add_row(row.label, _with_half(row.value, row.expanded, row.expanded), _figure_or_none(row.other,
                          row.expanded), change,
                          row.unit, Text("" if math.isnan(row.change) else f"{row.e_n:+.2f}", colour))  # fmt: skip
    console().print(table)
    missing = [row.label for row in here if row.undefined]
    if missing:
        console().print(f"Undefined in both: {'; '.join(missing)}.", highlight=False)
    known = [row for row in rows if not row.undefined]
    good = sum(row.agrees for row in known)
    console().print(f"{good} of {len(known)} figures over all frequencies agree (|E_n| at most 1)")


def _figure_or_none(value: float, expanded: float) -> str:
    return "undefined" if math.isnan(value) else format_value(value, uncertainty=expanded)


def _with_half(value: float, expanded: float, shown_to: float) -> str:
    """Return value and half width in words; a half width that nobody states is a question mark."""
    if math.isnan(value):
        return "undefined"
    half = "?" if math.isnan(expanded) else format_value(expanded, uncertainty=expanded)
    return f"{format_value(value, uncertainty=shown_to)} \u00b1 {half}"


def show_changes(rows: Sequence[CutChange], name: str, other: str) -> None:
    """Print the change of every figure from one run to another at the middle frequency, and what changed beyond doubt."""
    frequencies = sorted({row.frequency_hz for row in rows})
    middle = frequencies[len(frequencies) // 2]
    table = Table(
        title=f"From {name} to {other} at {middle / 1e9:.3f} GHz; nothing is matched", box=None, title_justify="left"
    )
    for word in ("figure", name, other, "change", "unit"):
        table.add_column(word, justify="left" if word in ("figure", "unit") else "right")
    for row in rows:
        if row.frequency_hz != middle or row.reason:
            continue
        half = row.change_expanded
        colour = "green" if row.agrees else "bold red"
        table.add_row(row.label, format_value(row.value, uncertainty=row.expanded), format_value(row.other,
                      uncertainty=row.other_expanded),
                      Text(f"{'+' if row.change >= 0 else ''}{format_value(row.change, uncertainty=half)} \u00b1 {format_value(half, uncertainty=half)}", colour), row.unit)  # fmt: skip
    console().print(table)
    for reason in dict.fromkeys(row.reason for row in rows if row.frequency_hz == middle and row.reason):
        labels = [row.label for row in rows if row.frequency_hz == middle and row.reason == reason]
        say(f"{'; '.join(labels)}: {reason}")
    known = [row for row in rows if not row.reason]
    changed = [row for row in known if not row.agrees]
    console().print(
        f"{len(changed)} of {len(known)} figures over all frequencies changed by more than both uncertainties together"
    )


def show_series(rows: Sequence[SeriesRow], names: Sequence[str], golden: str) -> None:
    """Print spread, trend and the largest E_n of every figure over many devices."""
    table = Table(title=f"{len(names)} devices, golden unit {golden}, {rows[0].frequency_hz / 1e9:.3f} GHz" if rows else "no figures",
                  box=None, title_justify="left", pad_edge=False)  # fmt: skip
    table.add_column("figure")
    for name in ("mean", "spread (1 s)", "trend per device", "unit", "largest E_n", "of"):
        table.add_column(name, justify="left" if name in ("unit", "of") else "right")
    for row in rows:
        worst = max(range(len(names)), key=lambda i: abs(row.e_n[i]))
        sure = "" if abs(row.trend) > row.trend_expanded else " (none)"
        table.add_row(row.label, format_value(row.mean, uncertainty=row.spread), f"{row.spread:.2g}",
                      f"{row.trend:+.2g}{sure}", row.unit,
                      f"{row.e_n[worst]:+.2f}", names[worst])  # fmt: skip
    console().print(table)
