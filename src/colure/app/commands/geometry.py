"""`colure geometry`: how far every joint of the mount is off, as a finished run of one device tells it."""

from __future__ import annotations

from dataclasses import asdict
from pathlib import Path
from typing import TYPE_CHECKING

import click

from colure.app.commands.as_measured import own_run
from colure.app.terminal.say import say
from colure.model.strict_json import json_text

if TYPE_CHECKING:
    from colure.app.services.joint_geometry import GeometryAnswer


@click.command("geometry")
@click.argument("folder", type=click.Path(path_type=Path), default=Path())
@click.option("--run", "run_name", default="first", show_default=True, help="Name of the run.")
@click.option("--state", default=None, help="State of a device that has several; the first by default.")
@click.option("--to", "target", type=click.Path(path_type=Path), help="Also write a TOML file with the values and proposed zeros.")  # fmt: skip
@click.option(
    "--apply", "applied", is_flag=True, help="Also write what the run tells into chamber.toml: readings or zeros."
)
@click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of a table.")
def geometry(folder: Path, run_name: str, state: str | None, target: Path | None, applied: bool, as_json: bool) -> None:
    """Find how far every joint of FOLDER's mount is off, from a finished run.

    The run must be a whole sphere in both polarizations. Motions that look alike are shown as a sum. Motions that the run does not
    tell stay as declared in chamber.toml. Nothing is corrected here.

    With --apply a roll-over-azimuth positioner's adjustments go into [alignment.readings] of chamber.toml: the alignment of later runs
    starts from there, and the budget holds what that leaves. On other positioners, and with joints, zeros that were seen apart go into
    the tables of their axes; tilts and offsets have no entry and are printed. This run itself does not use any of it.

    \b
    Example: colure geometry my-arm --run first --to geometry.toml
    """
    from colure.app.services.applied_geometry import apply_geometry
    from colure.app.services.joint_geometry import solve_geometry, write_geometry
    from colure.app.storage.folders import require_free
    from colure.model.campaign import Campaign

    if target is not None:
        require_free(target)
    campaign, run = own_run(folder, run_name, state)
    answer = solve_geometry(campaign, run)
    proposals = [] if target is None else write_geometry(answer, campaign, run, target)
    written = apply_geometry(answer, Campaign.load(folder), campaign) if applied else []
    if as_json:
        say(json_text(_numbers(answer)))
        return
    say("\n".join(_lines(answer)))
    if applied:
        say("\n".join(f"chamber.toml: {one}" for one in written) or "no adjustment is known well enough to write it")
    if target is not None:
        say(f"{target.name}: written")
        say("\n".join(f"  proposed: {one}" for one in proposals) or "  no zero is known well enough to propose another")


def _numbers(answer: GeometryAnswer) -> dict[str, object]:
    return {
        "adjustments": [asdict(one) for one in answer.adjustments],
        "motions": [asdict(one) for one in answer.rows], "sums": answer.sum_tables, "wanted": list(answer.wanted),
        "misfit_before_db": answer.before_db, "misfit_after_db": answer.after_db, "conflict": answer.conflict,
    }  # fmt: skip


def _lines(answer: GeometryAnswer) -> list[str]:
    width = max(len(one.called) for one in answer.rows)
    rows = [f"{'motion':<{width}}    value  \u00b1 (k = 2)  declared  unit  state"]
    rows += [
        f"{one.called:<{width}}  {one.value:+8.3f}  \u00b1{one.expanded:7.3f}  \u00b1{one.declared:7.3f}  {one.unit:<4}  {one.state}"
        for one in answer.rows
    ]
    rows += ["", "known, best first:"] + [f"  {one.sentence}" for one in answer.sums] if answer.sums else [""]
    rows += [f"note: {one}" for one in answer.wanted]
    if answer.sums:
        rows.append(f"The correction would lower the misfit from {answer.before_db:.1f} to {answer.after_db:.1f} dB.")
    return rows
