"""`colure verdict`: a run against a specification."""

from __future__ import annotations

import sys
from pathlib import Path

import click

from colure.app.commands.as_measured import campaign_told, present_option
from colure.app.commands.fields import refuse_slant, slant_option
from colure.app.terminal.say import say
from colure.model.strict_json import json_text


@click.command()
@click.argument("source", type=click.Path(path_type=Path))
@click.argument("specification", type=click.Path(path_type=Path))
@click.option("--run", "run_name", default="first", show_default=True, help="Name of the run.")
@click.option("--state", default=None, help="State of a device that has several; the first by default.")
@slant_option
@present_option
@click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of a table.")
def verdict(
    source: Path,
    specification: Path,
    run_name: str,
    state: str | None,
    slant_deg: float | None,
    present_chamber: bool,
    as_json: bool,
) -> None:
    """Hold a run or a far-field file against limits and masks: pass, fail, or not decidable at this uncertainty.

    SOURCE is a campaign folder or a far-field file (.nc, .csv). A file that states no errors decides nothing by guard
    band. SPECIFICATION is a TOML file with [[limits]] (figure, at_least, at_most, band_ghz) and [[masks]] (plane, component,
    a table of points or a published formula by name, allowed exceedances). With decision = "guard-band" a pass
    needs the whole interval on the good side; with "simple" the value alone decides. Exit code 1 unless all pass.

    \b
    Examples:
      colure verdict my-campaign limits.toml --run first
      colure verdict far.nc limits.toml
    """
    from colure.app.services.pattern_files import is_file
    from colure.app.services.verdicts import judge_file, judge_run
    from colure.app.storage.folders import require_record, run_folder
    from colure.app.terminal import screens
    from colure.errors import InputError

    if is_file(source):
        if state is not None:
            raise InputError([f"--state = {state!r}: {source.name} holds one state; leave --state out"])
        judged = judge_file(source, specification, slant_deg=slant_deg)
    else:
        refuse_slant(slant_deg)
        run = run_folder(source, run_name).state(state)
        require_record(run)
        campaign = campaign_told(source, run, present=present_chamber)
        judged = judge_run(campaign, run, specification)
    if as_json:
        say(json_text({"outcome": judged.outcome, "verdicts": [one.__dict__ for one in judged.verdicts]}))
    else:
        screens.show_verdicts(judged)
    sys.exit(0 if judged.outcome == "pass" else 1)
