"""`colure explain`: what an entry of a TOML file means."""

from __future__ import annotations

import difflib
from dataclasses import asdict
from typing import TYPE_CHECKING

import click

from colure.app.terminal.say import say
from colure.model.strict_json import json_text

if TYPE_CHECKING:
    from colure.model.entries import Entry


@click.command()
@click.argument("name", required=False, default="")
@click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of words.")
def explain(name: str, as_json: bool) -> None:
    """Say what an entry of a TOML file means: its unit, limits and default.

    NAME is file.entry, file.table.entry, or the beginning of one; without it all entries are listed. The files are
    chamber, device, goal, evaluation, recipe, specification, twin, report and equipment.

    \b
    Examples:
      colure explain chamber.range_length_m
      colure explain chamber.probe
      colure explain roll_axis
    """
    from colure.errors import InputError
    from colure.model.entries import entries

    every = list(entries())
    chosen = _chosen(every, name.removesuffix(".toml"))
    if not chosen:
        near = difflib.get_close_matches(name, [one.name for one in every], n=3, cutoff=0.5)
        ending = f"; near: {', '.join(near)}" if near else "; `colure explain` lists all"
        raise InputError([f"{name}: no entry of any file{ending}"])
    if as_json:
        say(json_text([asdict(one) for one in chosen], indent=1))
        return
    for one in chosen:
        say(f"{one.name}  ({_kind(one)})")
        say(click.wrap_text(one.meaning.replace("`", "'"), width=96, initial_indent="    ", subsequent_indent="    "))


def _chosen(every: list[Entry], name: str) -> list[Entry]:
    """Return the entry of that name, else those below it, else those whose name holds it."""
    exact = [one for one in every if one.name == name]
    below = [one for one in every if one.name.startswith(f"{name}.")]
    return exact + below if exact or below else [one for one in every if name in one.name]


def _kind(one: Entry) -> str:
    parts = [one.kind.replace("`", ""), one.unit, one.limits]
    parts.append(one.default if one.default == "required" else f"default {one.default.strip('`')}")
    return ", ".join(part for part in parts if part)
