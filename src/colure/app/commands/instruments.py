"""`colure instruments`: the instruments of a range by role, as chamber.toml declares them."""

from __future__ import annotations

import json
from pathlib import Path
from typing import TYPE_CHECKING

import click

from colure.app.terminal.say import say
from colure.model.strict_json import json_text

if TYPE_CHECKING:
    from colure.model.chamber import Chamber


@click.command()
@click.argument("folder", type=click.Path(path_type=Path), default=Path())
@click.option("--toml", "as_toml", is_flag=True, help="Print them as [[instruments]], to take over into chamber.toml.")
@click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of a table.")
def instruments(folder: Path, as_toml: bool, as_json: bool) -> None:
    """List the instruments of a range: what each does, where it answers, which words it understands. Nothing is connected.

    A chamber.toml with the tables [analyzer] and [axes] alone is shown as the roles that it means; --toml prints what
    stands for `resource`, `profile` and `timeout_s` of these tables and for [axes] as a whole. `colure acquire --check` talks
    to all of them, `colure conformance` to one.

    \b
    Examples:
      colure instruments my-campaign
      colure instruments my-campaign --toml
    """
    from colure.app.terminal import screens
    from colure.instruments.plugins import GROUPS, driver_version, is_driver
    from colure.instruments.profile import profile_path
    from colure.model.campaign import Campaign

    campaign = Campaign.load(folder)
    if as_toml:
        say(toml_of(campaign.chamber))
        return
    rows = []
    for one in campaign.chamber.outfit:
        words = one.words
        where = (
            driver_version(GROUPS[one.role], words) if is_driver(words) else
            "own" if profile_path(words, campaign.folder).parent == campaign.folder else "shipped"
        )  # fmt: skip
        axes = one.axes or (campaign.chamber.motor_axes if one.role == "axis-controller" else ())
        rows.append({
            "role": one.role, "name": one.shown_name, "resource": one.resource, "profile": words, "from": where,
            "timeout_s": one.limit_s, "axes": list(axes),
            "stands_for": one.stands_for if one.role == "interlock" else None,
            "every_s": one.period_s if one.role in ("interlock", "sensor") else None,
        })  # fmt: skip
    if as_json:
        say(json_text(rows))
    else:
        screens.show_instruments(rows)


def toml_of(chamber: Chamber) -> str:
    """Return the instruments of a range as TOML."""
    lines = []
    for one in chamber.outfit:
        lines.append("[[instruments]]")
        for name, value in one.model_dump(mode="json", exclude_defaults=True).items():
            lines.append(f"{name} = {json.dumps(value)}")  # texts, numbers and lists of texts are written alike in TOML
        lines.append("")
    return "\n".join(lines).rstrip()
