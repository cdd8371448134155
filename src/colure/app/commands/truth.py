"""`colure truth`: what the simulated device's figures really are."""

from __future__ import annotations

import math
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from colure.app.terminal.say import say
from colure.model.strict_json import json_text

if TYPE_CHECKING:
    from colure.model.campaign import Campaign
    from colure.twin.truth import TrueFigure


@click.command()
@click.argument("folder", type=click.Path(path_type=Path), default=Path())
@click.option("--state", help="State of a device that has several; the first by default.")
@click.option("--json", "as_json", is_flag=True, help="Print JSON for programs: every figure at every frequency.")
def truth(folder: Path, state: str | None, as_json: bool) -> None:
    """Print the true figures of the campaign's simulated device, worked out in closed form.

    The device is that of twin.toml, or the one that device.toml declares. Region, polarization scheme and
    evaluation.toml count as in a measurement. A figure that the device does not have says why.

    \b
    Example: colure truth my-campaign --json
    """
    from colure.model.campaign import Campaign
    from colure.twin.campaign_truth import campaign_truth

    campaign = Campaign.load(folder)
    true_figures = campaign_truth(campaign, state=state)
    frequencies = [float(f) for f in campaign.goal.frequency_hz]
    if as_json:
        rows = [
            {"frequency_hz": f, "figures": {name: _plain(one) for name, one in row.items()}}
            for f, row in zip(frequencies, true_figures, strict=True)
        ]
        say(json_text({"note": "simulated device", "state": state, "truth": rows}, indent=1))
    else:
        _show(campaign, frequencies[len(frequencies) // 2], true_figures[len(frequencies) // 2])


def _plain(one: TrueFigure) -> dict[str, Any]:
    """Return a figure as JSON can say it: null where there is no finite value, with the reason."""
    if math.isfinite(one.value):
        return {"value": one.value, "unit": one.unit, "reason": ""}
    infinite = "infinite: nothing is there to compare with" if one.value > 0 else "minus infinity: nothing is there"
    return {"value": None, "unit": one.unit, "reason": one.reason or infinite}


def _show(campaign: Campaign, frequency_hz: float, row: dict[str, TrueFigure]) -> None:
    from rich.table import Table

    from colure.app.terminal.consoles import console
    from colure.model.definitions import definitions_for

    labels = {
        one.name: one.label
        for one in definitions_for(
            campaign.evaluation(),
            band=True,
            reflection=True,
            reflection_measured=True,
            partial=campaign.goal.scheme == "one-pass",
            circular=campaign.device.polarization in ("right", "left"),
            hands=campaign.device.polarization != "linear",
        )
    }
    table = Table(
        title=f"Truth of the simulated device at {frequency_hz / 1e9:.3f} GHz", title_justify="left", box=None
    )
    for name, justify in (("figure", "left"), ("value", "right"), ("unit", "left"), ("", "left")):
        table.add_column(name, justify=justify)  # type: ignore[arg-type]
    for name in sorted(row, key=lambda one: list(labels).index(one) if one in labels else len(labels)):
        one = row[name]
        shown = "-" if one.reason else f"{one.value:.4f}"
        table.add_row(labels.get(name, name), shown, "" if one.reason else one.unit, one.reason)
    console().print(table)
