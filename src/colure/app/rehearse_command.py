"""`colure rehearse`: prove a plan on the simulated chamber before anything moves."""

from __future__ import annotations

import json
import math
import sys
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

if TYPE_CHECKING:
    from colure.app.rehearsal import Rehearsal

#: Intervals that hold this share of the truths keep what they promise.
HONEST_SHARE = 0.93


@click.command()
@click.argument("folder", type=click.Path(path_type=Path), default=Path())
@click.option("--draws", type=click.IntRange(1, 1000), default=1, show_default=True, help="Chambers to draw.")
@click.option("--seed", type=click.IntRange(0, 2**30), default=1, show_default=True, help="The first of them.")
@click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of tables.")
def rehearse(folder: Path, draws: int, seed: int, as_json: bool) -> None:
    """Carry a plan out on an invented chamber, as imperfect as chamber.toml says, in virtual time.

    A sound panel of the declared size stands in for the device; misalignment, echoes, drift,
    cable, noise and the reference's error are drawn within what the chamber declares. Shows the
    error of every figure against known truth beside the uncertainty that the measurement will
    state, what dominates it, and what to change. Exit code 1 if fewer than 93 % of the truths
    lie inside their intervals.

    \b
    Example: colure rehearse my-campaign --draws 3
    """
    from colure.app import screens, service
    from colure.app.rehearsal import rehearse as run

    campaign, plan = service.make_plan(folder)
    found = [run(campaign, plan, seed=seed + number) for number in range(draws)]
    share = sum(one.share_inside for one in found) / draws
    if as_json:
        content = {
            "note": "invented chamber, stand-in device",
            "share_inside": share,
            "planned_duration_s": plan.predicted["duration_s"],
            "draws": [_plain(one, seed + number) for number, one in enumerate(found)],
        }
        click.echo(json.dumps(content))
    else:
        screens.show_rehearsal(found, plan, share)
    sys.exit(0 if share >= HONEST_SHARE else 1)


def _plain(one: Rehearsal, seed: int) -> dict[str, Any]:
    rows = []
    for finding in one.findings:
        row = finding.figure.as_dict()
        kept = ("name", "frequency_hz", "value", "unit", "lower", "upper", "expanded_uncertainty")
        rows.append({**{k: row[k] for k in kept}, "truth": finding.truth if math.isfinite(finding.truth) else None,
                     "inside": finding.inside if finding.counts else None, "reason": finding.figure.reason, "cause": finding.cause})  # fmt: skip
    return {"seed": seed, "seconds": round(one.seconds, 1), "causes": one.causes(), "figures": rows}
