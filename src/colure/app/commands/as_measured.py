"""The campaign that a command works out a run with: as the run began, or as chamber.toml is now; what differs is said."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from colure.app.terminal.say import say

if TYPE_CHECKING:
    from colure.app.storage.folders import RunFolder
    from colure.model.campaign import Campaign

present_option = click.option(
    "--present-chamber",
    is_flag=True,
    help="Use chamber.toml as it is now where it was edited after the run began; else as it was then.",
)


def refuse_present(source: Path, *, present: bool) -> None:
    """Raise `InputError` if the present chamber is asked for of a far-field file, which was worked out before."""
    from colure.app.services.pattern_files import is_file
    from colure.errors import InputError

    if present and is_file(source):
        raise InputError([f"--present-chamber: only for a run; {source.name} is a far-field file; leave it out"])


def campaign_told(folder: Path, run: RunFolder, *, present: bool = False, whose: str = "") -> Campaign:
    """Read a campaign for the results of a run, and say on stderr every entry that differs from what the run began with.

    whose
        Stands before every entry where a command works several runs out.

    Raises
    ------
    InputError
        If a file cannot be read, or a value is out of its limits.
    """
    from colure.app.storage.begun import campaign_of, edits_since

    campaign = campaign_of(folder, run, present=present)
    edits = edits_since(run, campaign)
    for one in edits:
        say(f"caution: {whose}{one}", err=True)
    if not present and any(one.used != one.now for one in edits):
        say(
            "caution: evaluate, verdict, report, export, plot and compare use chamber.toml as it is now with --present-chamber",
            err=True,
        )
    return campaign


def tell_edits(folder: Path, run_name: str, *, present: bool) -> None:
    """Say on stderr for one of many runs how many entries differ from what it began with, and which are used."""
    from colure.app.storage.begun import campaign_of, edits_since
    from colure.app.storage.folders import run_folder
    from colure.errors import InputError

    run = run_folder(folder, run_name)
    try:
        edits = edits_since(run, campaign_of(folder, run, present=present))
    except InputError:
        return  # the batch says why this run failed
    if edits:
        names = ", ".join(f"{one.file}: {one.name} = {one.now} ({one.then}; {one.used} is used)" for one in edits)
        say(f"caution: {folder.name}/{run_name}: edited after the run began: {names}", err=True)


def own_run(
    folder: Path, run_name: str, state: str | None = None, *, present: bool = False, one_of_two: bool = False
) -> tuple[Campaign, RunFolder]:
    """Return the campaign as `campaign_told` reads it, and the run (of one state). Raises `InputError` as it does.

    one_of_two
        What differs is said with the names of folder and run.
    """
    from colure.app.storage.folders import run_folder

    run = run_folder(folder, run_name)
    whose = f"{folder.resolve().name}/{run_name}: " if one_of_two else ""
    return campaign_told(folder, run, present=present, whose=whose), run.state(state)
