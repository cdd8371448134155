"""`colure runs`: which runs a campaign holds; and the options that say what a run is kept by."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from colure.app.terminal.say import say
from colure.model.strict_json import json_text

if TYPE_CHECKING:
    from colure.model.campaign import Campaign
    from colure.model.identity import RunIdentity

ENTRIES = ("tag", "operator", "serial", "customer", "order", "note")
SORTED_BY = ("name", "changed", *ENTRIES)


def identity_options(command: Callable[..., Any]) -> Callable[..., Any]:
    """Add the options that say what a run is kept and found by."""
    words = {"tag": "A word of your own: lot, variant, set-up.", "operator": "Who measures.",
             "serial": "Serial number of the device.",
             "customer": "For whom.", "order": "Order number.", "note": "Anything else."}  # fmt: skip
    command = click.option(
        "--photograph", "photographs", multiple=True, type=click.Path(path_type=Path),
        help="Kept with the run: a picture of the set-up; may be given several times.",
    )(command)  # fmt: skip
    for name in reversed(ENTRIES):
        command = click.option(
            f"--{name}", default=None, help=f"Kept with the run: {words[name][0].lower()}{words[name][1:]}"
        )(command)
    return command


def identity_said(campaign: Campaign, options: dict[str, str | None]) -> RunIdentity:
    """Return what options say of a run, and goal.toml's [run] where they say nothing."""
    from colure.model.identity import RunIdentity
    from colure.model.loading import validate

    said = {name: value for name, value in options.items() if value is not None}
    return validate(RunIdentity, said, source="options").over(campaign.goal.run or RunIdentity())


@click.command()
@click.argument("folder", type=click.Path(path_type=Path), default=Path())
@click.option("--filter", "words", default="", help="Only runs in whose name or identity all of these words occur.")
@click.option(
    "--sort",
    "by",
    type=click.Choice(SORTED_BY),
    default="changed",
    show_default=True,
    help="Sort by this; newest first.",
)
@click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of a table.")
def runs(folder: Path, words: str, by: str, as_json: bool) -> None:
    """List the runs of a campaign: what they hold, and what was said of them.

    \b
    Examples:
      colure runs my-campaign
      colure runs my-campaign --filter "unit 7" --sort serial
    """
    from colure.app.storage.run_identity import list_runs
    from colure.errors import InputError

    if not (folder / "goal.toml").is_file():
        raise InputError([f"{folder}: holds no goal.toml; give a campaign folder"])
    matching_runs = [one for one in list_runs(folder) if one.matches(words)]
    matching_runs.sort(key=lambda one: -one.changed if by == "changed" else getattr(one, by, one.identity.get(by, "")))
    if as_json:
        say(json_text([one.__dict__ for one in matching_runs]))
        return
    if not matching_runs:
        say("no such runs")
        return
    from rich.table import Table

    from colure.app.terminal.consoles import console

    table = Table(box=None)
    shown = [name for name in (*ENTRIES, "photographs") if any(name in one.identity for one in matching_runs)]
    for name in ("run", "changed", "holds", *shown):
        table.add_column(name)
    for one in matching_runs:
        when = datetime.fromtimestamp(one.changed).astimezone().strftime("%Y-%m-%d %H:%M")
        part = f", {one.measured} of {one.total} points" if one.measured < one.total else ""
        holds = one.holds + part + (", figures" if one.figures else "") + (", report" if one.report else "")
        table.add_row(one.name, when, holds, *(one.identity.get(name, "") for name in shown))
    console().print(table)
