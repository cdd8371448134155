"""`colure set-ups`: one device at two distances, or at two angles of the whole set-up."""

from __future__ import annotations

from pathlib import Path

import click

from colure.app.commands.as_measured import own_run
from colure.app.terminal.say import say
from colure.model.strict_json import json_text


@click.command("set-ups")
@click.argument("folder", type=click.Path(path_type=Path))
@click.argument("other", type=click.Path(path_type=Path))
@click.option("--run", "run_name", default="first", show_default=True, help="Name of the run in FOLDER.")
@click.option("--other-run", default="first", show_default=True, help="Name of the run in OTHER.")
@click.option("--state", default=None, help="State of a device that has several, in both; the first by default.")
@click.option("--mean", "target", type=click.Path(path_type=Path), help="Write the mean pattern to this file (.nc).")
@click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of sentences.")
def set_ups(
    folder: Path, other: Path, run_name: str, other_run: str, state: str | None, target: Path | None, as_json: bool
) -> None:
    """Compare a device measured in two set-ups: what moved, and how strong the room's stray signals are.

    FOLDER and OTHER are campaigns, each with its own chamber.toml: another range length, or positioner
    and probe turned in the room together. Walls then answer from elsewhere, the device does not change. Two set-ups in which a wall answers with the same phase
    by chance agree too well: distances that differ by an odd number of quarter waves, or a third set-up, tell.

    \b
    Example: colure set-ups at-1.2-m at-1.5-m --mean mean.nc
    """
    from colure.app.services.comparing import compare_set_ups

    comparison = compare_set_ups(
        own_run(folder, run_name, state, one_of_two=True),
        own_run(other, other_run, one_of_two=True),
        target,
    )
    say(json_text(comparison.numbers) if as_json else "\n".join(comparison.sentences))
