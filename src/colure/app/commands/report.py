"""`colure report`: the report of a run, as a page and for print."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from colure.model.strict_json import json_text

if TYPE_CHECKING:
    from colure.app.storage.folders import RunFolder


@click.command()
@click.argument("folder", type=click.Path(path_type=Path), default=Path())
@click.option("--run", "run_name", default="first", show_default=True, help="Name of the run.")
@click.option(
    "--specification", type=click.Path(path_type=Path), default=None, help="Limits and masks to hold it against."
)
@click.option("--state", default=None, help="State of a device that has several; the first by default.")
@click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of words.")
def report(folder: Path, run_name: str, specification: Path | None, state: str | None, as_json: bool) -> None:
    """Write the report of a run as one HTML page and a PDF, with a verdict if there is a specification.

    Of a state other than the first the files carry its name.

    \b
    Example: colure report my-campaign --run first --specification limits.toml
    """
    from colure.app import services
    from colure.app.services import cuts
    from colure.app.services.reporting import report_on
    from colure.app.storage.folders import run_folder
    from colure.app.storage.run_kinds import NO_SPHERE, is_cuts
    from colure.errors import InputError
    from colure.model.campaign import Campaign

    run = run_folder(folder, run_name)
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

    page, printed = (services.addresses(run, one, state)[-1] for one in (run.report_html, run.report_pdf))
    if as_json:
        click.echo(json_text({"html": str(page), "pdf": str(printed)}))
    else:
        click.echo(f"report: {page}\nreport: {printed}")
