"""`colure flip`: two quick cuts that tell theta zero and whether the axes cross."""

from __future__ import annotations

from pathlib import Path

import click

from colure.app.commands.acquiring import complete, measure_whole
from colure.app.terminal.say import say
from colure.model.strict_json import json_text


@click.command()
@click.argument("folder", type=click.Path(path_type=Path), default=Path())
@click.option("--run", "run_name", default="flip", show_default=True, help="Name of the run that holds the two cuts.")
@click.option("--yes", is_flag=True, help="The cautions are read and everyone is clear of the axes.")
@click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of sentences.")
def flip(folder: Path, run_name: str, yes: bool, as_json: bool) -> None:
    """Measure one cut from both sides and say what to turn or shift, before a long scan.

    Theta against -theta with the roll at 180 deg: a few minutes. A run that is there already is
    only evaluated (or finished).

    \b
    Example: colure flip my-campaign --yes
    """
    from colure.app import services
    from colure.app.storage.folders import run_folder
    from colure.app.terminal import screens
    from colure.errors import InputError

    campaign, plan = services.flip_plan(folder)
    run = run_folder(folder, run_name)
    if not complete(run.record):
        if not as_json:
            screens.show_cautions(campaign, plan)
        if not yes and (
            as_json or not click.confirm("Everyone is clear of the axes and the cautions are understood. Start?")
        ):
            raise InputError(["cautions: not acknowledged: must be acknowledged with --yes before anything moves"])
        measure_whole(campaign, plan, run, "flip test", quiet=as_json)
    comparison = services.flip_result(campaign, run)
    if as_json:
        say(json_text(comparison.__dict__))
    else:
        say("\n".join(comparison.sentences()))
