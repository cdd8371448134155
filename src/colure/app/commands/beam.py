"""`colure beam`: where the beam is, coarse to fine, before a long scan."""

from __future__ import annotations

import time
from dataclasses import asdict
from pathlib import Path
from typing import get_args

import click

from colure.app.commands.acquiring import complete, measure_whole
from colure.app.terminal.say import say
from colure.model.strict_json import json_text


@click.command()
@click.argument("folder", type=click.Path(path_type=Path), default=Path())
@click.option(
    "--run",
    "run_name",
    default="beam",
    show_default=True,
    help="Name of the search; its two runs end in -coarse and -fine.",
)
@click.option("--yes", is_flag=True, help="The cautions are read and everyone is clear of the axes.")
@click.option(
    "--set-home",
    is_flag=True,
    help="Write the beam's readouts into chamber.toml as the home of axes or joints.",
)
@click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of sentences.")
def beam(folder: Path, run_name: str, yes: bool, set_home: bool, as_json: bool) -> None:
    """Look around coarsely, then finely where it was strongest, and say where the beam is.

    A look that is there already is only read (or finished).

    \b
    Example: colure beam my-campaign --yes
    """
    from colure.app.services import beam_search
    from colure.app.terminal import screens
    from colure.errors import InputError

    for stage in get_args(beam_search.SearchStage):
        run = beam_search.stage_run(folder, run_name, stage)
        if complete(run.record):
            continue
        campaign, plan = beam_search.stage_plan(folder, run_name, stage)
        if not yes:
            screens.show_cautions(campaign, plan)
            if as_json or not click.confirm("Everyone is clear of the axes and the cautions are understood. Start?"):
                raise InputError(["cautions: not acknowledged: must be acknowledged with --yes before anything moves"])
            yes = True
        measure_whole(campaign, plan, run, "beam search", quiet=as_json)
    search = beam_search.result(folder, run_name)
    home = beam_search.set_home(folder, run_name, time.strftime("%Y%m%d-%H%M%S")) if set_home else []
    if as_json:
        say(json_text({"found": asdict(search.beam), "readouts_deg": search.readouts_deg, "home": home}))
    else:
        say("\n".join([*search.sentences(), *home]))
