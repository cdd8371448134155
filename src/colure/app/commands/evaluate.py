"""`colure evaluate`: the figures of a run, of many runs, or of a far-field file."""

from __future__ import annotations

import sys
from pathlib import Path

import click

from colure.app.commands.as_measured import campaign_told, present_option, refuse_present
from colure.app.commands.batch import BatchOptions, batch_options, run_batch_command
from colure.app.commands.fields import refuse_slant, slant_option
from colure.app.terminal.say import say
from colure.model.strict_json import json_text


@click.command()
@click.argument("sources", nargs=-1)
@click.option(
    "--run", "run_name", help="Name of the run, or a pattern of names; `first` of one folder, all of several."
)
@click.option(
    "--specification",
    type=click.Path(path_type=Path),
    default=None,
    help="Limits and masks that every run of a batch is held against.",
)
@click.option("--state", default=None, help="State of a device that has several; the first by default.")
@slant_option
@present_option
@batch_options
@click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of tables.")
def evaluate(
    sources: tuple[str, ...],
    run_name: str | None,
    state: str | None,
    slant_deg: float | None,
    batch: BatchOptions,
    present_chamber: bool,
    as_json: bool,
) -> None:
    """Read the figures from a run, each with its expanded uncertainty; or from many runs at once.

    A power-only run gives the power figures. evaluation.toml asks for more: levels, planes, sectors, power at the port.
    Several folders, a glob, a run folder or @list make a batch: what did not change since last time is kept, what
    fails is told and left out, and --table holds all figures and verdicts.
    Exit code 1: a figure is not to be used, because the data contradict the declaration.

    \b
    Examples:
      colure evaluate my-campaign --run first --json
      colure evaluate far.nc
      colure evaluate far.csv --slant-deg 45
      colure evaluate 'campaigns/*' --specification limits.toml --table figures.csv
    """
    from colure.app.services.pattern_files import is_file

    if len(sources) == 1 and is_file(Path(sources[0])) and Path(sources[0]).is_file():
        _only_of_one_run(state, "a file holds one state")
        refuse_present(Path(sources[0]), present=present_chamber)
        _evaluate_file(Path(sources[0]), slant_deg, as_json=as_json)
        return
    refuse_slant(slant_deg)
    if batch.is_batch(sources, run_name) or batch.specification is not None or batch.scheduler is not None:
        _only_of_one_run(state, "a batch does every state by itself")
        run_batch_command("evaluate", sources, run_name, batch, as_json=as_json, present=present_chamber)
        return
    from colure.app import services
    from colure.app.commands.cut import show_cuts
    from colure.app.services import cuts
    from colure.app.storage.folders import require_record, run_folder
    from colure.app.storage.run_kinds import is_cuts
    from colure.app.terminal import screens

    folder = Path(sources[0] if sources else ".")
    run = run_folder(folder, run_name or "first").state(state)
    require_record(run)
    campaign = campaign_told(folder, run, present=present_chamber)
    if is_cuts(run):
        sys.exit(show_cuts(cuts.evaluate(campaign, run), run.path, as_json=as_json))
    figures = services.read_figures(campaign, run)
    if as_json:
        say(json_text([figure.as_dict() for figure in figures]))
    else:
        screens.show_figures(figures, campaign.goal)
        say(f"all frequencies and budgets: {run.figures}")
    for line in services.step_cautions(run):
        say(f"caution: {line}", err=True)
    sys.exit(screens.show_against(figures))


def _only_of_one_run(state: str | None, why: str) -> None:
    """Raise `InputError` if a state is asked for where none can be chosen."""
    from colure.errors import InputError

    if state is not None:
        raise InputError([f"--state = {state!r}: {why}; give one campaign folder, or leave --state out"])


def _evaluate_file(source: Path, slant_deg: float | None, *, as_json: bool) -> None:
    """Print the figures of a far-field file; evaluation.toml beside it asks for more, as in a campaign."""
    from colure.app.services.pattern_object import FilePattern, open_pattern
    from colure.app.services.power_files import is_power_file, open_power
    from colure.app.terminal import screens

    wanted = FilePattern.wanted_beside(source)
    opened = (
        open_power(source, slant_deg=slant_deg or 0.0)
        if is_power_file(source)
        else open_pattern(source, slant_deg=slant_deg)
    )
    figures = list(opened.evaluate(wanted))
    if as_json:
        say(json_text([figure.as_dict() for figure in figures]))
        return
    say(repr(opened))
    for line in opened.cautions if isinstance(opened, FilePattern) else ():
        say(line)
    screens.show_figures(figures)
