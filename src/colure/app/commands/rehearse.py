"""`colure rehearse`: prove a plan on the simulated chamber before anything moves."""

from __future__ import annotations

import math
import sys
from dataclasses import asdict
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from colure.app.terminal.say import say
from colure.model.strict_json import json_text

if TYPE_CHECKING:
    from colure.app.scale.rehearsals import Draw

#: Intervals that hold this share of the truths keep what they promise.
HONEST_SHARE = 0.93


@click.command()
@click.argument("folder", type=click.Path(path_type=Path), default=Path())
@click.option("--draws", type=click.IntRange(1, 1000), default=1, show_default=True, help="Chambers to draw.")
@click.option("--seed", type=click.IntRange(0, 2**30), default=1, show_default=True, help="The first of them.")
@click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of tables.")
def rehearse(folder: Path, draws: int, seed: int, as_json: bool) -> None:
    """Carry a plan out on an invented chamber, as imperfect as chamber.toml says, in virtual time.

    The device is that of twin.toml's table [device], or one made after device.toml; misalignment, echoes,
    drift, cable, noise and the reference's error are drawn within what the chamber declares. Shows the
    error of every figure against known truth beside the uncertainty that the measurement will
    state, what dominates it, and what to change; of many draws, each figure's share of truths inside.
    Exit code 1 if fewer than 93 % of the truths lie inside their intervals, or a draw could not be processed.

    \b
    Example: colure rehearse my-campaign --draws 3
    """
    from colure.app import services
    from colure.app.scale.rehearsals import counts_by_figure, draws_of
    from colure.app.terminal import screens

    campaign, plan = services.make_plan(folder)
    rehearsals, failed = draws_of(campaign, plan, range(seed, seed + draws))
    share = sum(one.share_inside for one in rehearsals) / len(rehearsals)
    held = "declared device" if campaign.simulated().device is None else "device of twin.toml"
    if as_json:
        content = {
            "note": f"invented chamber, {held}",
            "share_inside": share,
            "planned_duration_s": plan.predicted["duration_s"],
            "by_figure": [
                {name: _number(value) for name, value in asdict(one).items()} for one in counts_by_figure(rehearsals)
            ],
            "failed": [{"seed": number, "reason": reason} for number, reason in failed.items()],
            "draws": [_plain(one) for one in rehearsals],
        }
        say(json_text(content))
    else:
        screens.show_rehearsal(rehearsals, plan, share, held)
        for number, reason in failed.items():
            say(f"draw {number} could not be processed: {reason}")
    sys.exit(0 if share >= HONEST_SHARE and not failed else 1)


def _number(value: Any) -> Any:
    """Return a value as JSON can hold it."""
    return None if isinstance(value, float) and not math.isfinite(value) else value


def _plain(one: Draw) -> dict[str, Any]:
    rows = []
    for finding in one.findings:
        row = finding.figure.as_dict()
        kept = ("name", "frequency_hz", "value", "unit", "lower", "upper", "expanded_uncertainty")
        rows.append({**{k: row[k] for k in kept}, "truth": _number(finding.truth),
                     "inside": finding.inside if finding.counts else None, "reason": finding.figure.reason,
                     "cause": finding.cause})  # fmt: skip
    return {"seed": one.seed, "seconds": round(one.seconds, 1), "causes": one.causes, "figures": rows}
