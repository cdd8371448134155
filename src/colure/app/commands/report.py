"""`colure report`: the report of a run, as a page and for print."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from colure.model.strict_json import json_text

if TYPE_CHECKING:
    from colure.app.storage.folders import RunFolder


@click.command()
@click.argument("source", type=click.Path(path_type=Path), default=Path())
@click.option("--run", "run_name", default="first", show_default=True, help="Name of the run.")
@click.option(
    "--specification", type=click.Path(path_type=Path), default=None, help="Limits and masks to hold it against."
)
@click.option("--state", default=None, help="State of a device that has several; the first by default.")
@click.option("--slant-deg", type=click.FloatRange(-180.0, 180.0),
              help="Co-polar direction of a file's field, from x towards y; 0 by default.")  # fmt: skip
@click.option(
    "--to", "target", type=click.Path(path_type=Path), help="Folder of a file's report; beside it by default."
)
@click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of words.")
def report(
    source: Path,
    run_name: str,
    specification: Path | None,
    state: str | None,
    slant_deg: float | None,
    target: Path | None,
    as_json: bool,
) -> None:
    """Write the report of a run or a far-field file as one HTML page and a PDF, with a verdict if there is a specification.

    SOURCE is a campaign folder or a far-field file (.nc, .csv). Of a state other than the first the files carry its name.
    The report of FILE.nc is FILE-report.html and FILE-report.pdf; it says what the file does not hold, and overwrites nothing.

    \b
    Examples:
      colure report my-campaign --run first --specification limits.toml
      colure report far.nc --specification limits.toml --to reports
    """
    from colure.app import services
    from colure.app.services import cuts
    from colure.app.services.file_reporting import report_file
    from colure.app.services.pattern_files import is_file
    from colure.app.services.reporting import report_on
    from colure.app.storage.folders import run_folder
    from colure.app.storage.run_kinds import NO_SPHERE, is_cuts
    from colure.errors import InputError
    from colure.model.campaign import Campaign

    if is_file(source):
        if state is not None:
            raise InputError([f"--state = {state!r}: {source.name} holds one state; leave --state out"])
        _say(*report_file(source, target, specification, slant_deg=slant_deg or 0.0), as_json=as_json)
        return
    for option, given in (("--slant-deg", slant_deg), ("--to", target)):
        if given is not None:
            raise InputError([f"{option} = {given}: only for a file; a run's report lies in its folder"])
    folder, run = source, run_folder(source, run_name)
    if is_cuts(run):
        if specification is not None:
            raise InputError([f"--specification: run {run_name} {NO_SPHERE}"])
        cuts.write_report(Campaign.load(folder), run, state=state)
        _say_reports(run, state, as_json=as_json)
        return
    campaign, made = services.make_plan(folder)
    report_on(campaign, made, run, services.process(campaign, run, state=state), specification)
    _say_reports(run, state, as_json=as_json)


def _say_reports(run: RunFolder, state: str | None, *, as_json: bool) -> None:
    """Print where the report lies."""
    from colure.app import services

    _say(*(services.addresses(run, one, state)[-1] for one in (run.report_html, run.report_pdf)), as_json=as_json)


def _say(page: Path, printed: Path, *, as_json: bool) -> None:
    if as_json:
        click.echo(json_text({"html": str(page), "pdf": str(printed)}))
    else:
        click.echo(f"report: {page}\nreport: {printed}")
