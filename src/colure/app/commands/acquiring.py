"""What `colure acquire` does with a run: asks, checks, measures with a bar, verifies, and finds slices that are measured again."""

from __future__ import annotations

import sys
from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from colure.app.terminal.say import say
from colure.errors import CHECK_FAILED, GOOD, STOPPED
from colure.model.strict_json import json_text

if TYPE_CHECKING:
    from colure.acquire.outcome import Options, Outcome
    from colure.app.services.measuring_again import MeasuredAgain
    from colure.app.storage.folders import RunFolder
    from colure.model.campaign import Campaign
    from colure.model.plan import Plan


def slices_again(
    folder: Path, run: RunFolder, again: str, others: Mapping[str, Any], *, quiet: bool
) -> tuple[Campaign, Plan, MeasuredAgain]:
    """Return campaign, the run's own plan and the points of the slices named; says how many and how long.

    others
        Options that say what else is measured: a run that is measured again has its plan already.
    """
    from colure.app.services.acquisition import require_writable
    from colure.app.services.measuring_again import again_plan
    from colure.app.services.plan_words import duration_text
    from colure.app.storage.folders import require_begun
    from colure.errors import InputError

    if given := [f"--{name.replace('_', '-')}" for name, value in others.items() if value not in (None, False, ())]:
        raise InputError([f"--again: takes the run's own plan and words: leave out {', '.join(given)}"])
    require_begun(run)
    require_writable(run)
    campaign, made, part = again_plan(folder, run, again)
    if not quiet:
        say(
            f"{len(part.points)} of {len(made)} points are measured again ({again}), about {duration_text(part.duration_s)} and two "
            f"boresight checks; what they replace stays in {run.journal.name}"
        )
    return campaign, made, part


def show_verification(run: RunFolder, as_json: bool) -> None:
    """Print what a check of a run's journal says; exit code 1 if it is damaged."""
    from colure.app import services

    verification = services.verify(run)
    if as_json:
        content = {
            "rows": verification.rows,
            "whole": verification.whole,
            "damaged": verification.damaged,
            "accepted": verification.accepted,
            "measured_again": verification.again,
        }
        say(json_text({**content, "root": verification.root_hash}))
    else:
        say(
            f"{verification.rows} points, {'whole' if verification.whole else 'DAMAGED'}; root hash {verification.root_hash}"
        )
        for line in verification.damaged:
            say(f"  {line}")
        if verification.again:
            say(f"  {verification.again} first readings are kept beside those measured again in their place")
        for line in verification.accepted:
            say(f"  accepted before, measured anew: {line}")
    sys.exit(GOOD if verification.whole else CHECK_FAILED)


def acknowledge(campaign: Campaign, made: Plan, *, yes: bool, quiet: bool) -> None:
    """Show the cautions; motion needs a person's yes, or --yes from a script."""
    from colure.app.terminal import screens
    from colure.errors import InputError

    if not quiet:
        screens.show_cautions(campaign, made)
    if yes:
        return
    if quiet or not sys.stdin.isatty():
        raise InputError(["cautions: not acknowledged: must be acknowledged with --yes before anything moves"])
    if not click.confirm("Everyone is clear of the axes and the cautions are understood. Start?"):
        raise InputError(["cautions: not acknowledged: nothing was moved"])


def show_check(campaign: Campaign, made: Plan, as_json: bool, *, senses: bool, yes: bool) -> None:
    """Print what every instrument said; exit code 3 if one of them is not ready."""
    from colure.app import services
    from colure.app.commands.jog import Confirmation
    from colure.app.terminal import screens

    confirm = Confirmation(yes=yes) if senses else None
    lines = services.check_instruments(campaign, made, confirm=confirm, tell=lambda text: say(text, err=True))
    if as_json:
        say(json_text([{"what": line.what, "good": line.good, "found": line.answer} for line in lines]))
    else:
        screens.show_check(lines)
    sys.exit(GOOD if all(line.good for line in lines) else STOPPED)


def run_engine(
    campaign: Campaign,
    made: Plan,
    run: RunFolder,
    *,
    quiet: bool,
    options: Options,
    accept_damage: bool,
    despite_check: bool,
) -> Outcome:
    """Run the engine under a progress bar; Ctrl-C stops it safely."""
    from colure.acquire.control import hear_stops_soon
    from colure.app import services
    from colure.app.terminal import keys, screens

    hear_stops_soon()

    with screens.progress(len(made), quiet=quiet) as listener, keys.Controls(quiet=quiet) as controls:
        return services.acquire(
            campaign,
            made,
            run,
            listener=listener,
            on_engine=controls.attach,
            options=options,
            accept_damage=accept_damage,
            despite_check=despite_check,
        )


def complete(record: Path) -> bool:
    """Tell whether a record is there and holds every point of its plan."""
    from colure.model.files import attribute_of

    return record.is_file() and attribute_of(record, "complete", "1") == "1"


def measure_whole(
    campaign: Campaign, made: Plan, run: RunFolder, what: str, *, quiet: bool, looked_at: bool = False
) -> None:
    """Measure what a run does not hold yet; keys and signals stop it safely. Ends with exit code 3 if it was not finished.

    looked_at
        What is there of such a run can be read before it is finished.
    """
    from colure.acquire.outcome import Options

    outcome = run_engine(campaign, made, run, quiet=quiet, options=Options(), accept_damage=False, despite_check=False)
    if outcome.state.value != "done":
        look = f"; colure look {campaign.folder} --run {run.path.name} reads what is there" if looked_at else ""
        say(
            f"{what}: {outcome.state.value}: {outcome.reason}; {outcome.measured} of {outcome.total} points saved; the same command goes "
            f"on with it{look}",
            err=True,
        )
        sys.exit(STOPPED)
