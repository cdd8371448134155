"""`colure effects`: what every step of the recipe does to every figure."""

from __future__ import annotations

from pathlib import Path

import click

from colure.app.commands.as_measured import own_run
from colure.app.terminal.say import say
from colure.model.strict_json import json_text


@click.command()
@click.argument("folder", type=click.Path(path_type=Path), default=Path())
@click.option("--run", "run_name", default="first", show_default=True, help="Name of the run.")
@click.option("--state", default=None, help="State of a device that has several; the first by default.")
@click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of a table.")
def effects(folder: Path, run_name: str, state: str | None, as_json: bool) -> None:
    """Process a run again with each step of its recipe left out, and show what changes.

    Steps come from recipe.toml beside the other files, or from what suits the record. Nothing
    is written.

    \b
    Example: colure effects my-campaign --run first
    """
    from colure.app import services
    from colure.app.terminal import screens

    step_effects = services.effects(*own_run(folder, run_name, state))
    if as_json:
        say(
            json_text({"figures": step_effects.labels, "with_all": step_effects.whole, "without": step_effects.without})
        )
    else:
        screens.show_effects(step_effects)
