"""`colure export`: results for other programs."""

from __future__ import annotations

from pathlib import Path

import click

from colure.app.commands.as_measured import campaign_told, present_option, refuse_present
from colure.app.terminal.say import say
from colure.model.strict_json import json_text


@click.command()
@click.argument("source", type=click.Path(path_type=Path))
@click.argument("kind")
@click.argument("target", type=click.Path(path_type=Path))
@click.option("--run", "run_name", default="first", show_default=True, help="Name of the run.")
@click.option("--state", default=None, help="State of a device that has several; the first by default.")
@present_option
@click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of words.")
def export(
    source: Path, kind: str, target: Path, run_name: str, state: str | None, present_chamber: bool, as_json: bool
) -> None:
    """Write the results of a run or a far-field file for another program; nothing is overwritten.

    SOURCE is a campaign folder or a far-field file (.nc, .csv).
    csv, netcdf, matlab: the far field on its grid. figures: a table of every figure with its interval, and of its budgets. nsma: cuts in the
    text format of NSMA WG16.99.050. touchstone: the boresight over frequency as S21 (of a circular device its hand; and S11 where the run measured it). reflection: S11
    of the device as a one-port Touchstone file. Any other kind is the name of a format that
    another package brings (entry points colure.exports).

    \b
    Examples:
      colure export my-campaign matlab pattern.mat --run first
      colure export far.nc figures figures.csv
    """
    from colure.app.services.cuts import export as write_cuts
    from colure.app.services.exporting import export as write
    from colure.app.services.exporting import export_file
    from colure.app.services.pattern_files import is_file
    from colure.app.storage.folders import run_folder
    from colure.app.storage.run_kinds import is_cuts
    from colure.errors import InputError

    refuse_present(source, present=present_chamber)
    if is_file(source):
        if state is not None:
            raise InputError([f"--state = {state!r}: {source.name} holds one state; leave --state out"])
        words = export_file(source, kind, target)
    else:
        run = run_folder(source, run_name)
        campaign = campaign_told(source, run, present=present_chamber)
        words = (write_cuts if is_cuts(run) else write)(campaign, run.state(state), kind, target)
    say(json_text({"file": str(target), "content": words}) if as_json else f"{words}\nwrote {target}")
