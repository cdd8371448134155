"""The page of a check antenna's control charts; every number comes from elsewhere."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from colure.model.figure import format_value
from colure.report.document import Document, Paragraph, ReportSection, Table, chart
from colure.report.look import BAND, CO, CROSS, INK, canvas, styled

if TYPE_CHECKING:
    from colure.analysis.compare.control import ControlChart
    from colure.report.drawing import Drawing


@dataclass(frozen=True)
class Controlled:
    """One figure with its control chart, or why there is none."""

    label: str
    unit: str
    chart: ControlChart | None
    reason: str = ""


def compose_control(device: str, runs: Sequence[str], frequency_hz: float, every: Sequence[Controlled]) -> Document:
    """Return the control charts of a check antenna over runs: a table of all figures, then a picture of each."""
    known = [one for one in every if one.chart is not None]
    alarms = [text for one in known for text in alarm_words(one, runs)]
    rows = tuple(
        (f"{one.label} / {one.unit}", format_value(one.chart.centre, uncertainty=one.chart.sigma),
        f"{one.chart.sigma:.2g}",
         f"{format_value(one.chart.low, uncertainty=one.chart.sigma)} \u2013 {format_value(one.chart.high, uncertainty=one.chart.sigma)}",
         _names(one.chart.outside, runs), _names(one.chart.shifted, runs))
        for one in known if one.chart is not None
    )  # fmt: skip
    return Document(
        title=f"Control charts: {device}",
        subtitle=f"{len(runs)} runs from {runs[0]} to {runs[-1]}, {frequency_hz / 1e9:.3f} GHz",
        answer=tuple(alarms) or ("In control: no run lies outside the limits, no cumulative sum exceeds its decision interval.",),
        sections=(
            ReportSection("Limits", (
                Table(("Figure", "centre", "sigma", "limits", "outside", "shifted"), rows, shares=(2.2, 0.8, 0.7, 1.5,
                1.2, 1.2)),
                *(Paragraph(f"{one.label}: cannot tell, because {one.reason}.") for one in every if one.chart is None),
                Paragraph("Limits are 3 standard deviations from the mean of the first runs; sigma is the mean moving range over 1.128. "
                          "The cumulative sum has an allowance of 0.5 sigma and a decision interval of 5 sigma. "
                          "Source: NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2 and 6.3.2.3."),
            )),
            ReportSection("Charts", tuple(
                chart(control_picture(one, runs),
                f"{one.label}: values with limits; below, cumulative sums. Dotted: the last run that sets limits.")
                for one in known
            )),
        ),
        footer=f"Control charts, {device}",
    )  # fmt: skip


def alarm_words(one: Controlled, runs: Sequence[str]) -> list[str]:
    """Return a sentence for every alarm of a figure: which run, how large, what to do."""
    control = one.chart
    if control is None:
        return []
    limits = f"{format_value(control.low, uncertainty=control.sigma)} to {format_value(control.high, uncertainty=control.sigma)} {one.unit}"
    said = [
        f"{one.label}: run {runs[index]} reads {format_value(control.values[index], uncertainty=control.sigma)} {one.unit}, outside {limits}. "
        "Repeat it; then check reference, cables and mount."
        for index in control.outside
    ]
    if control.shifted:
        first = control.shifted[0]
        way = "rose" if control.rising[first] > control.decision else "fell"
        said.append(f"{one.label} {way}: the cumulative sum is beyond {control.decision:.2g} {one.unit} from run {runs[first]} on. "
                    "Look for what changed before it.")  # fmt: skip
    return said


def _names(indices: Sequence[int], runs: Sequence[str]) -> str:
    return (
        ", ".join(runs[i] for i in indices[:3]) + (f", {len(indices) - 3} more" if len(indices) > 3 else "")
        if indices
        else "-"
    )


def control_picture(one: Controlled, runs: Sequence[str]) -> Drawing:
    """Draw values with their limits, and both cumulative sums with the decision interval, over runs."""
    control = one.chart
    assert control is not None
    with styled():
        figure = canvas(7.2, 3.1)
        upper, lower = figure.subplots(2, 1, sharex=True, height_ratios=(1.5, 1.0))
        x = np.arange(1, len(runs) + 1)
        upper.axhspan(control.low, control.high, color=BAND, alpha=0.35, linewidth=0)
        upper.axhline(control.centre, color=INK, linewidth=0.8)
        upper.plot(x, control.values, color=CO, marker="o", markersize=3.5)
        upper.plot(x[control.outside], control.values[control.outside], "s", color=CROSS, markersize=6)
        upper.set_ylabel(f"{one.unit}")
        upper.set_title(one.label)
        lower.plot(x, control.rising, color=CO, marker="^", markersize=3, label="rising")
        lower.plot(x, -control.falling, color=CROSS, marker="v", markersize=3, label="falling")
        for side in (control.decision, -control.decision):
            lower.axhline(side, color=INK, linewidth=0.8, linestyle=(0, (4, 2)))
        lower.set_ylabel(f"sum / {one.unit}")
        lower.set_xlabel("run, in the order of time")
        for ax in (upper, lower):
            ax.axvline(control.baseline + 0.5, color=INK, linewidth=0.6, linestyle=(0, (1, 2)))
        lower.xaxis.get_major_locator().set_params(integer=True)
        return figure
