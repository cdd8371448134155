"""Control charts of a check antenna over the runs of a campaign."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from colure.app.services.series import series
from colure.app.storage.folders import require_free
from colure.errors import InputError
from colure.model.campaign import Campaign
from colure.model.whole import write_whole

if TYPE_CHECKING:
    from colure.report.control_content import Controlled

#: Figures that a check antenna is watched by, of those that its runs hold.
WATCHED = (
    "gain_dbi",
    "directivity_dbi",
    "beam_azimuth_deg",
    "beam_elevation_deg",
    "beamwidth_e_deg",
    "beamwidth_h_deg",
    "xpd_db",
)


def control(
    folder: Path, runs: list[str], page: Path, *, baseline: int | None = None, state: str | None = None
) -> tuple[list[Controlled], list[str]]:
    """Write the page of control charts (.pdf or .html) and return the charts, and a sentence for every alarm.

    Parameters
    ----------
    runs
        Evaluated runs in the order of time.
    baseline
        So many of the first runs set the limits; all of them if None.
    state
        State of a device that has several; the first if None.

    Raises
    ------
    InputError
        If a run was not evaluated, too few set the limits, or the page exists.
    """
    from colure.analysis.compare.control import LEAST_RUNS, control_chart
    from colure.report.control_content import Controlled, alarm_words, compose_control
    from colure.report.html import render_html
    from colure.report.pdf import render_pdf

    if page.suffix.lower() not in (".pdf", ".html"):
        raise InputError([f"control = {page.name}: must end in .pdf or .html"])
    require_free(page)
    count = len(runs) if baseline is None else baseline
    if not LEAST_RUNS <= count <= len(runs):
        raise InputError([f"baseline = {count}: must be from {LEAST_RUNS} to {len(runs)} runs; fewer set no limits"])
    rows = [row for row in series(folder, runs, runs[0], state=state) if row.name in WATCHED]
    if not rows:
        raise InputError([f"control: the runs have none of {', '.join(WATCHED)} in common; there is nothing to chart"])
    charts = []
    for row in rows:
        try:
            charts.append(Controlled(row.label, row.unit, control_chart(row.values, baseline=count)))
        except ValueError as error:
            charts.append(Controlled(row.label, row.unit, None, str(error)))
    document = compose_control(Campaign.load(folder).device.name, runs, rows[0].frequency_hz, charts)
    if page.suffix.lower() == ".pdf":
        render_pdf(document, page)
    else:
        write_whole(page, render_html(document))
    return charts, [text for one in charts for text in alarm_words(one, runs)]
