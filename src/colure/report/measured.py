"""The report's section on what was measured: complete or stopped, pass by pass, and what the pattern rests on."""

from __future__ import annotations

from typing import TYPE_CHECKING

from colure.report.document import Cell, ReportSection, Table

if TYPE_CHECKING:
    from colure.analysis.pipeline.completeness import Completeness
    from colure.model.plan import Plan
    from colure.report.source import Source


def where(plan: Plan) -> str:
    """Say which part of the sphere was measured."""
    return "the whole sphere" if plan.grid.whole else f"theta up to {plan.settings['region_deg']:g} deg"


def measured_section(source: Source) -> tuple[ReportSection, ...]:
    """Return what was measured of what was planned, and what the pattern rests on."""
    points, completeness, drift = source.plan.predicted["points"], source.processed.completeness, source.processed.drift
    rows: list[tuple[Cell, ...]] = [("Planned",
                                     f"{points['scan']} scan points over {where(source.plan)}, {points['tie']} tie points, "
                                     f"{points['reference']} reference sweeps")]  # fmt: skip
    if completeness is None:
        rows.append(("Measured", "not known: the pattern does not come from a record of this program"))
    else:
        rows += _points(completeness)
    rows.append(("Tie points used", f"{drift.time_s.size}; noise of one {100 * drift.noise:.2g} %"))
    weak = [one for one in source.findings if one.topic == "ties"]
    rows += [("Ties", f"{one.text}.") for one in weak]
    rows += [("Left out", words) for words in _left_out(source)]
    rows += [("Instrument check", text) for text in source.checks]
    rows += [("Stopped", text) for text in source.stops]
    rows += [("Measured again", text) for text in source.again]
    return (ReportSection("What was measured", (Table(("", ""), tuple(rows), wide=True, shares=(1.0, 4.0)),)),)


def _points(completeness: Completeness) -> list[tuple[Cell, ...]]:
    """Return state, points of every pass, slices and flagged points."""
    rows: list[tuple[Cell, ...]] = [("State", "complete" if completeness.whole else "INCOMPLETE")]
    rows += [
        (f"Pass {number}", f"{one} of {planned} points")
        for number, (one, planned) in enumerate(zip(completeness.measured, completeness.planned, strict=True), 1)
    ]
    used = f"{completeness.slices_used} of {completeness.slices_planned}" + (
        ", evenly spaced" if completeness.thinned else ""
    )
    rows.append(("Slices used", used if completeness.slices_used else "single points, no slices"))
    flagged = f"{completeness.flagged} (overload, unlevelled, unlocked or undecided); kept and counted, not removed"
    rows.append(("Flagged points", flagged if completeness.flagged else "none"))
    return rows


def _left_out(source: Source) -> list[str]:
    """Say which directions and which figures the report does not hold, one sentence each."""
    told = []
    if not source.plan.grid.whole:
        told.append(f"Directions beyond theta = {source.processed.sphere.region_deg:g} deg were not measured.")
        told.append(
            "Figures over the whole sphere, such as directivity, efficiency and radiated power, cannot be computed."
        )
    if source.processed.sphere.one_polarization:
        told.append("The other polarization was not measured.")
    lost = len({one.name for one in source.figures if one.reason and one.frequency_hz == source.frequency})
    if lost == 1:
        told.append("One figure is undefined; the reason stands below the figures.")
    elif lost:
        told.append(f"{lost} figures are undefined; the reasons stand below the figures.")
    return told or ["No direction and no polarization is left out."]
