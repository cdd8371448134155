"""`colure findings`: what the data of a run say of themselves."""

from __future__ import annotations

from pathlib import Path

import click

from colure.app.commands.as_measured import own_run
from colure.app.terminal.say import say
from colure.model.strict_json import json_text

#: What is said of cuts that nothing speaks against; of a sphere there is always something to say.
NOTHING = "nothing speaks against these cuts. Cuts cannot tell a wrong zero of an axis, or a reference that is off"


@click.command()
@click.argument("folder", type=click.Path(path_type=Path), default=Path())
@click.option("--run", "run_name", default="first", show_default=True, help="Name of the run.")
@click.option("--state", default=None, help="State of a device that has several; the first by default.")
@click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of sentences.")
def findings(folder: Path, run_name: str, state: str | None, as_json: bool) -> None:
    """Say how well a run's data agree with themselves, and which error explains the rest.

    Drift and jumps, misalignment in degrees and millimetres with what to turn, stray signals
    against what the chamber declares, the probe's purity, noise, and the phase centre; the
    largest effect on the pattern first.

    \b
    Example: colure findings my-campaign --run first
    """
    from colure.app import services

    run_findings = services.findings(*own_run(folder, run_name, state))
    if as_json:
        say(json_text([one.__dict__ for one in run_findings]))
        return
    if not run_findings:
        say(NOTHING)
    for one in run_findings:
        say(f"{one.topic}: {one.text}.")
