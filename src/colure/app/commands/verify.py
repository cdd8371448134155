"""`colure verify`: a device against a reference, from as few slices as decide."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING

import click

from colure.app.commands.numbers import FiniteRange
from colure.app.terminal.say import say
from colure.model.strict_json import json_text

if TYPE_CHECKING:
    from colure.acquire.outcome import Options, Outcome
    from colure.app.services.verifying import Asked
    from colure.app.storage.folders import RunFolder


@click.command()
@click.argument("folder", type=click.Path(path_type=Path))
@click.argument("specification", type=click.Path(path_type=Path))
@click.option("--against", required=True, type=click.Path(path_type=Path),
              help="The reference: a far-field file (.nc, .csv), or the folder of a good unit.")  # fmt: skip
@click.option("--against-run", default="first", show_default=True, help="Run of the good unit's folder.")
@click.option("--run", "run_name", default="verify", show_default=True, help="Name of the run.")
@click.option("--spread", type=FiniteRange(0.001, 0.3), default=0.03, show_default=True,
              help="How far elements of good units are from the reference's, rms, relative.")  # fmt: skip
@click.option("--reference-error-db", type=FiniteRange(-80.0, -30.0), default=-45.0, show_default=True,
              help="Error of the reference pattern, rms over directions, below its peak.")  # fmt: skip
@click.option("--yes", is_flag=True, help="Acknowledge the cautions without being asked (for scripts).")
@click.option("--despite-check", is_flag=True, help="Start although the newest check did not pass.")
@click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of a table.")
def verify(
    folder: Path,
    specification: Path,
    against: Path,
    against_run: str,
    run_name: str,
    spread: float,
    reference_error_db: float,
    yes: bool,
    despite_check: bool,
    as_json: bool,
) -> None:
    """Measure a few slices, hold them against a reference, and say pass or fail as soon as they decide.

    The device is the reference with a few elements that differ. Slices stand 60 deg apart at first; after each further one the
    fit is repeated. Where the readings show what no element explains, or an interval holds a limit, the scan goes on, in
    the end to the whole plan, which is read as any scan is. A run that was interrupted goes on with the same command.
    SPECIFICATION holds [[limits]], decided by guard band. Exit code 1 unless all pass.

    \b
    Examples:
      colure verify my-campaign limits.toml --against golden.nc
      colure verify my-campaign limits.toml --against good-unit --against-run first --yes
    """
    from colure.app.services import verifying
    from colure.app.storage.folders import run_folder

    run = run_folder(folder, run_name)
    likely = {"spread": spread, "reference_error_db": reference_error_db}
    asked = verifying.asked_of(folder, specification, against, run=run, reference_run=against_run, likely=likely)
    if not (run.path / verifying.RESULT).is_file():
        outcome = _measured(asked, run, yes=yes, despite_check=despite_check, quiet=as_json)
        if outcome.state.value != "done":
            say(f"{outcome.state.value}: {outcome.reason}; the same command goes on with it", err=True)
            sys.exit(3)
    result = verifying.result_of(asked, run)
    if as_json:
        say(json_text(result.as_dict()))
    else:
        from colure.app.terminal.verification_screens import show_verification

        show_verification(result, asked.campaign.goal)
    sys.exit(0 if result.judged.outcome == "pass" else 1)


def _measured(asked: Asked, run: RunFolder, *, yes: bool, despite_check: bool, quiet: bool) -> Outcome:
    """Show plan and cautions, have them acknowledged, and measure under a progress bar."""
    from colure.acquire.outcome import Options
    from colure.app.services import verifying
    from colure.app.terminal import keys, screens
    from colure.errors import InputError

    if not quiet:
        say(verifying.plan_words(asked))
        screens.show_cautions(asked.campaign, asked.plan)
    if not yes and (
        quiet
        or not sys.stdin.isatty()
        or not click.confirm("Everyone is clear of the axes and the cautions are understood. Start?")
    ):
        raise InputError(["cautions: not acknowledged: must be acknowledged with --yes before anything moves"])
    options: Options = Options()
    with screens.progress(len(asked.plan), quiet=quiet) as listener, keys.Controls(quiet=quiet) as controls:
        return verifying.measure(
            asked, run, listener=listener, on_engine=controls.attach, options=options, despite_check=despite_check
        )
