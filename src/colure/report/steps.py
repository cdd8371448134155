"""The report's sections on how the result came about: every step with its diagnosis, and the map of the room."""

from __future__ import annotations

from typing import TYPE_CHECKING

from colure.report.document import Block, Paragraph, ReportSection, Side, Table, chart
from colure.report.step_charts import room_chart, step_chart

if TYPE_CHECKING:
    from colure.analysis.findings.diagnosis import Diagnosis
    from colure.analysis.stray.echo_map import EchoMap

#: Steps as people call them.
NAMES = {
    "cable": "Moving cable", "places": "On-the-fly places", "gate": "Time gate", "gain": "Gain by substitution",
    "purity": "The probe's purity", "assemble": "Assembly of the polarizations",
    "distance": "One distance for all directions",
    "room": "Learned room", "alignment": "Alignment from the data", "far-field": "Near field to far field",
    "mode-filter": "Mode filter",
    "phase centre": "Phase centre",
}  # fmt: skip


def steps_section(diagnoses: list[Diagnosis]) -> ReportSection:
    """Return what each step found and did."""
    blocks: list[Block] = [
        Paragraph(
            "Dashed: what a step found. Solid: what it left. The command colure effects shows every figure without each step."
        )
    ]
    drawn = [chart(step_chart(one), f"{NAMES[one.step]}. {one.text}") for one in diagnoses]
    blocks += [Side(tuple(drawn[i : i + 2])) for i in range(0, len(drawn), 2)]
    return ReportSection("What each step found and did", tuple(blocks))


def room_section(echo_map: EchoMap | None) -> tuple[ReportSection, ...]:
    """Return the map of the room, if the scan can tell."""
    if echo_map is None:
        return ()
    rows = tuple(
        (
            echo.place,
            f"{echo.azimuth_deg:+.0f}, {echo.elevation_deg:+.0f}",
            f"{echo.level_db:.0f} dB",
            f"{100 * echo.share:.0f} %",
            "one frequency cannot tell"
            if echo.excess_m is None
            else f"{echo.excess_m:.2f} \u00b1 {echo.resolution_m:.2f} m",
        )
        for echo in echo_map.echoes
    )
    table: Block = Paragraph("No direction of the room stands out.")
    if rows:
        table = Table(("From", "azimuth, elevation / deg", "level", "explains", "extra path"), rows)
    return (
        ReportSection(
            "Where stray signals come from",
            (
                Paragraph(
                    f"A part of {echo_map.rest_db:.0f} dB rms relative to the peak does not fit the device's waves. A wave that leaves the turning device in "
                    "one direction of the room and comes back by a wall would read like the device's own field there: the map shows "
                    "how much of the rest each direction explains. Echoes that turn with the device like its own waves stay hidden."
                ),
                chart(
                    room_chart(echo_map), "The room seen from the axes' intersection, looking to the probe.", dense=True
                ),
                table,
            ),
        ),
    )
