"""`colure cut`: one or a few cuts, now: measured, drawn and evaluated in one command."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from colure.app.commands.acquiring import complete, measure_whole
from colure.app.commands.runs import ENTRIES, identity_options, identity_said
from colure.app.commands.scan_options import front_cut, scan_of, scan_options
from colure.app.terminal.say import say
from colure.model.strict_json import json_text

if TYPE_CHECKING:
    from colure.app.services.cuts import ReadCuts


@click.command()
@click.argument("folder", type=click.Path(path_type=Path), default=Path())
@scan_options
@click.option("--run", "run_name", default="cut", show_default=True, help="Name of the run.")
@identity_options
@click.option(
    "--plan", "only_plan", is_flag=True, help="Show what would be measured and how long it takes; move nothing."
)
@click.option("--yes", is_flag=True, help="The cautions are read and everyone is clear of the axes.")
@click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of tables.")
def cut(
    folder: Path,
    run_name: str,
    only_plan: bool,
    yes: bool,
    as_json: bool,
    monitor_ghz: float | None,
    frequencies: str | None,
    **asked: Any,
) -> None:
    """Measure, draw and evaluate cuts in one command; the result is a run like any other.

    Directions are read at the range length, without a transform. A run that is there already is only read (or finished).

    \b
    Examples:
      colure cut my-campaign --phi 0 --theta -90:90:1 --run h-plane --yes
      colure cut my-campaign --phi 0,90 --theta -90:90:1 --offset 0,90 --run both --yes
      colure cut my-campaign --az -60:60:0.5 --el 0 --run azimuth --yes
      colure cut my-campaign --phi 0 --frequencies 5.8,24:24.25:0.05 --run two-bands --yes
      colure cut my-campaign --circles 0,45 --through 20,0 --run skew --yes
    """
    from colure.app.services import cuts
    from colure.app.services.receiver_kind import is_power_only
    from colure.app.storage.folders import run_folder
    from colure.app.storage.run_identity import keep_identity
    from colure.app.terminal import screens
    from colure.errors import InputError

    run = run_folder(folder, run_name)
    campaign, made = cuts.cut_plan(folder, front_cut(scan_of(asked)), monitor_ghz, run, frequencies=frequencies)
    if only_plan:
        if as_json:
            say(json_text({**made.predicted, "hash": made.hash}))
        else:
            screens.show_plan(campaign, made)
        return
    if not complete(run.record):
        if is_power_only(campaign):
            raise InputError([
                f"chamber.toml: profile = {campaign.chamber.analyzer.profile!r}: must be that of a receiver with phase: a cut is "
                "evaluated from phase and level; colure acquire records single directions, a scan of the sphere gives figures"
            ])  # fmt: skip
        if not as_json:
            screens.show_cautions(campaign, made)
        for line in made.predicted["missing"]:
            say(f"note: {line}", err=True)
        if not yes and (
            as_json or not click.confirm("Everyone is clear of the axes and the cautions are understood. Start?")
        ):
            raise InputError(["cautions: not acknowledged: must be acknowledged with --yes before anything moves"])
        keep_identity(run, identity_said(campaign, {name: asked[name] for name in ENTRIES}), asked["photographs"])
        measure_whole(campaign, made, run, "cut", quiet=as_json, looked_at=True)
    elif not cuts.same_plan(run, made):
        raise InputError(
            [f"run {run_name}: holds another scan than this one; choose another --run, or colure evaluate reads it"]
        )
    read_cuts = cuts.evaluate(campaign, run)
    sys.exit(show_cuts(read_cuts, run.path, as_json=as_json))


def show_cuts(read_cuts: ReadCuts, path: Path, *, as_json: bool) -> int:
    """Print the figures of cuts, what the data say against them, and where the picture and the table lie; return the exit code."""
    from colure.app.terminal import screens

    if as_json:
        say(json_text({"figures": [figure.as_dict() for figure in read_cuts.figures],
                               "picture": str(path / "cuts.png"), "table": str(path / "cuts.csv")}))  # fmt: skip
        return screens.show_against(read_cuts.figures)
    shown = float(read_cuts.scan.frequency_hz[read_cuts.shown])
    here = [figure for figure in read_cuts.figures if figure.frequency_hz == shown]
    if here:
        screens.show_figures(here)
    if len(read_cuts.scan.cuts) > len(
        {figure.name.split("_peak_dbi")[0] for figure in here if figure.name.endswith("_peak_dbi")}
    ):
        say(
            f"{len(read_cuts.scan.cuts)} cuts were measured; figures are read from the principal ones, along and across, and the strongest"
        )
    if read_cuts.scan.missing:
        missing = read_cuts.scan.missing
        say(f"{missing} direction{'s are' if missing > 1 else ' is'} missing: the run was stopped", err=True)
    say(f"picture: {path / 'cuts.png'}\nall directions and frequencies: {path / 'cuts.csv'}")
    return screens.show_against(read_cuts.figures)
