"""`colure plot`: pictures of a far field, from a file or a run."""

from __future__ import annotations

import io
from pathlib import Path
from typing import TYPE_CHECKING

import click

from colure.app.commands.as_measured import campaign_told, present_option, refuse_present
from colure.app.commands.fields import slant_option
from colure.app.commands.numbers import FINITE, FiniteRange
from colure.app.services.picture_kinds import KINDS
from colure.app.terminal.say import say
from colure.model.strict_json import json_text
from colure.model.whole import write_whole

if TYPE_CHECKING:
    from matplotlib.figure import Figure

SUFFIXES = (".png", ".svg", ".pdf", ".html")


@click.command()
@click.argument("source", type=click.Path(path_type=Path))
@click.argument("target", type=click.Path(path_type=Path))
@click.option("--kind", type=click.Choice(KINDS), default="cuts", show_default=True, help="What to draw.")
@click.option("--frequency-ghz", type=FINITE, help="One of the frequencies; the one to watch, or mid-band, by default.")
@slant_option
@click.option("--rows", type=click.IntRange(1, 200), help="Aperture of a file: elements along y, drawn one by one.")
@click.option("--columns", type=click.IntRange(1, 200), help="Elements along x.")
@click.option("--pitch-mm", type=FiniteRange(0.01, 10000.0), help="Distance between two elements.")
@click.option("--centre-mm", nargs=3, type=FINITE, help="Centre of the elements, x y z from the origin of the field.")
@click.option("--run", "run_name", default="first", show_default=True, help="Name of the run of a campaign folder.")
@click.option("--state", default=None, help="State of a device that has several; the first by default.")
@present_option
@click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of words.")
def plot(
    source: Path,
    target: Path,
    kind: str,
    frequency_ghz: float | None,
    slant_deg: float | None,
    rows: int | None,
    columns: int | None,
    pitch_mm: float | None,
    centre_mm: tuple[float, float, float] | None,
    run_name: str,
    state: str | None,
    present_chamber: bool,
    as_json: bool,
) -> None:
    """Draw a far field: principal cuts, polar diagrams, map, solid, front half, figures over frequency, aperture.

    SOURCE is a far-field file (.nc, .csv) or a campaign folder; of a run of cuts (also a flip test or a beam search) the
    cuts are drawn. TARGET ends in .png, .svg, .pdf or .html; nothing is
    overwritten. Nothing is drawn where nothing was measured. The aperture of a run with declared elements, or of
    a file with --rows, --columns and --pitch-mm, is drawn element by element, with the level below which none can be told.
    Without elements it is the field on z = 0, resolved to half a wavelength: it cannot show that one element is dead.

    \b
    Examples:
      colure plot far.nc cuts.png
      colure plot my-campaign map.html --run first --kind map
      colure plot far.nc elements.png --kind aperture --rows 4 --columns 4 --pitch-mm 6.213
    """
    from colure.app.commands.elements import declared_elements
    from colure.app.services.cuts import draw_cuts
    from colure.app.services.pattern_files import is_file, waves_of
    from colure.app.services.pattern_object import FilePattern
    from colure.app.services.power_files import PowerPattern, is_power_file, open_power
    from colure.app.services.power_runs import PowerRun
    from colure.app.services.processing import has_phase
    from colure.app.storage.folders import run_folder
    from colure.app.storage.run_kinds import is_cuts
    from colure.errors import InputError

    _require_target(target)
    subject: FilePattern | PowerPattern | str
    refuse_present(source, present=present_chamber)
    campaign = None
    if not is_file(source) and source.is_dir():
        campaign = campaign_told(source, run_folder(source, run_name), present=present_chamber)
    declared = campaign is not None and campaign.device.elements is not None
    grid = declared_elements(rows, columns, pitch_mm, "estimated")
    if (grid is not None or centre_mm) and (kind != "aperture" or is_power_file(source)):
        raise InputError(["--rows, --columns, --pitch-mm, --centre-mm: only for --kind aperture of a field with phase"])
    if centre_mm and grid is None and not declared:
        raise InputError(["--centre-mm: needs --rows, --columns and --pitch-mm (elements, elements, mm)"])
    if campaign is not None and is_cuts(run := run_folder(source, run_name)):
        subject = f"Cuts of run {run_name}"
        drawing = draw_cuts(campaign, run.state(state), kind, frequency_ghz).figure
    elif kind == "aperture" and (grid is not None or declared):
        from colure.app.services.elements import elements_of
        from colure.report.charts import face_picture

        face, at = elements_of(
            source, grid, centre_mm=centre_mm or None, run_name=run_name, state=state, frequency_ghz=frequency_ghz,
            slant_deg=slant_deg if is_file(source) else None, present=present_chamber,
        )  # fmt: skip
        subject = f"Elements of {source.name} at {at / 1e9:.6g} GHz; below {face.floor_db:.0f} dB none can be told from nothing"
        drawing = face_picture(face)
    elif campaign is not None and run.record.is_file() and not has_phase(run.state(state)):
        subject = PowerRun(campaign, run.state(state))
    elif is_power_file(source):
        subject = open_power(source, slant_deg=slant_deg or 0.0)
    else:
        subject = FilePattern(
            waves_of(source, run_name=run_name, state=state, slant_deg=slant_deg, present=present_chamber)
        )
        if campaign is not None and frequency_ghz is None and kind != "frequency":
            # The frequency to watch, or mid-band.
            frequency_ghz = float(1e-9 * subject.frequency_hz[campaign.goal.shown_index(subject.frequency_hz)])
    if not isinstance(subject, str):
        drawing = subject.plot(kind, frequency_ghz=frequency_ghz).figure
    _save(drawing, kind, target)
    said = "".join(f"\n{line}" for line in subject.cautions) if isinstance(subject, FilePattern) else ""
    say(json_text({"file": str(target), "kind": kind}) if as_json else f"{subject}{said}\nwrote {target}")


def _save(drawing: Figure, kind: str, target: Path) -> None:
    """Write a picture; as HTML it is a page that holds the drawing."""
    if target.suffix.lower() == ".html":
        out = io.StringIO()
        drawing.savefig(out, format="svg")
        svg = out.getvalue()
        page = f"<!doctype html><meta charset='utf-8'><title>{kind}</title>{svg[svg.index('<svg') :]}"
        write_whole(target, page)
    else:
        drawing.savefig(target, dpi=200)


def _require_target(target: Path) -> None:
    """Raise `InputError` if a picture cannot be written there."""
    from colure.app.storage.folders import require_free
    from colure.errors import InputError

    if target.suffix.lower() not in SUFFIXES:
        raise InputError([f"{target}: must end in one of {', '.join(SUFFIXES)}"])
    require_free(target)
    if not target.parent.is_dir():
        raise InputError([f"{target}: folder {target.parent} does not exist"])
