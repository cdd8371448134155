"""The command line: short tables for people, --json for programs, honest exit codes.

0 good, 1 a check failed, 2 bad input, 3 instrument or safety stop. Heavy libraries are
imported inside the commands, so that `colure --help` stays quick.
"""

from __future__ import annotations

import re
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import Any

import click

from colure import __version__
from colure.app.commands.acquiring import acknowledge, run_engine, show_check, show_verification, slices_again
from colure.app.commands.aim import aim
from colure.app.commands.array import calibrate_array, codes, embedded, synthesize
from colure.app.commands.beam import beam
from colure.app.commands.calibrate import calibrate
from colure.app.commands.compare import compare, series
from colure.app.commands.conformance import conformance
from colure.app.commands.coverage import coverage
from colure.app.commands.cut import cut
from colure.app.commands.effects import effects
from colure.app.commands.elements import elements
from colure.app.commands.evaluate import evaluate
from colure.app.commands.explain import explain
from colure.app.commands.export import export
from colure.app.commands.fields import convert, process
from colure.app.commands.findings import findings
from colure.app.commands.flip import flip
from colure.app.commands.geometry import geometry
from colure.app.commands.grid_study import grid_study
from colure.app.commands.instruments import instruments
from colure.app.commands.jog import goto, jog, trace
from colure.app.commands.learned_room import check_room, learn_room
from colure.app.commands.look import look
from colure.app.commands.numbers import FiniteRange
from colure.app.commands.pattern import pattern
from colure.app.commands.plot import plot
from colure.app.commands.probe_model import probe_model
from colure.app.commands.quiet_zone import quiet_zone
from colure.app.commands.rehearse import rehearse
from colure.app.commands.report import report
from colure.app.commands.runs import identity_options, identity_said, runs
from colure.app.commands.scan_options import NAMES as SCAN_OPTIONS
from colure.app.commands.scan_options import scan_in_place, scan_options
from colure.app.commands.serve import serve
from colure.app.commands.set_ups import set_ups
from colure.app.commands.simulate import simulate
from colure.app.commands.three_antenna import three_antenna
from colure.app.commands.truth import truth
from colure.app.commands.verdict import verdict
from colure.app.commands.verify import verify
from colure.app.scale.threads import one_thread
from colure.app.terminal.say import say
from colure.errors import BAD_INPUT, GOOD, STOPPED, ColureError, system_fault
from colure.model.strict_json import json_text

#: The kinds of devices that `colure new --device` knows; `colure.app.services.starting` holds their sizes.
KINDS_TO_START = ("horn", "panel", "patch", "dipole", "array")

folder_argument = click.argument("folder", type=click.Path(path_type=Path), default=Path())
run_option = click.option("--run", "run_name", default="first", show_default=True, help="Name of the run.")
json_option = click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of tables.")
yes_option = click.option("--yes", is_flag=True, help="Acknowledge the cautions without being asked (for scripts).")


#: The commands by the order of the work.
GROUPS = {
    "Prepare": (
        "new",
        "explain",
        "plan",
        "rehearse",
        "truth",
        "grid-study",
        "three-antenna",
        "calibrate",
        "codes",
        "quiet-zone",
    ),
    "Check and align": ("simulate", "flip", "geometry", "beam", "aim"),
    "Scan": ("acquire", "look", "serve", "demo"),
    "Correct": ("process", "convert", "effects"),
    "Read": (
        "evaluate",
        "coverage",
        "elements",
        "embedded",
        "calibrate-array",
        "synthesize",
        "plot",
        "pattern",
        "findings",
        "set-ups",
    ),
    "Judge": ("verify", "verdict", "compare", "series"),
    "Hand over": ("report", "export"),
}


def with_flags(message: str, parameters: Sequence[click.Parameter]) -> str:
    """Return a fault in the words of a command: `name` in backquotes, or as the field that a line begins with, as its option.

    Python has arguments, the command line options; only here it is known which was used.
    """
    flags = {flag[2:].replace("-", "_"): flag for one in parameters for flag in one.opts if flag.startswith("--")}
    quoted = re.sub(r"`(\w+)`", lambda match: flags.get(match[1], match[0]), message)
    return re.sub(r"^(\w+)(?= = |:)", lambda match: flags.get(match[1], match[1]), quoted, flags=re.MULTILINE)


class CommandGroup(click.Group):
    """Turns our own errors into plain lines and exit codes."""

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        """List the commands by the order of the work; one that no group names comes last."""
        named = {name for names in GROUPS.values() for name in names}
        rest = tuple(name for name in self.list_commands(ctx) if name not in named)
        for title, names in {**GROUPS, "Others": rest}.items():
            rows = [(name, self.commands[name].get_short_help_str(62)) for name in names if name in self.commands]
            if rows:
                with formatter.section(title):
                    formatter.write_dl(rows)

    def invoke(self, ctx: click.Context) -> Any:
        try:
            return super().invoke(ctx)
        except ColureError as error:
            command = self.commands.get(ctx.invoked_subcommand or "")
            # An instrument or a file may have said what stands in it.
            say(with_flags(str(error), [] if command is None else command.params), err=True)
            ctx.exit(error.exit_code)
        except OSError as error:
            # A folder that is not there or a disk that is full is no fault of the program.
            named = isinstance(error, FileNotFoundError | IsADirectoryError | NotADirectoryError) and error.filename
            words = f"{error.filename}: {error.strerror}" if named else system_fault(error)
            if words is None:
                raise
            say(words, err=True)
            ctx.exit(BAD_INPUT)


@click.group(cls=CommandGroup, context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100})
@click.version_option(__version__, prog_name="colure")
@click.pass_context
def main(ctx: click.Context) -> None:
    """Plan, measure, correct and report antenna patterns on a spherical range.

    \b
    First steps:
      colure demo              a whole measurement on a simulated chamber, in under a minute
      colure new my-campaign   three small TOML files to start from
      colure plan my-campaign  what will be measured, how long it takes, how good it gets
    """
    if ctx.invoked_subcommand != "process":  # a field file's least squares gain by many threads; see there
        one_thread()


@main.command()
@click.argument("folder", type=click.Path(path_type=Path))
@click.option(
    "--profile", "profile_name", help="Put a copy of this instrument profile beside an existing chamber.toml."
)
@click.option(
    "--device", "kind", type=click.Choice(KINDS_TO_START), help="Start with this kind of device; needs --band."
)
@click.option("--band", metavar="LOW-HIGH", help="Its band in GHz, such as 37-40.")
@json_option
def new(folder: Path, profile_name: str | None, kind: str | None, band: str | None, as_json: bool) -> None:
    """Start a campaign folder: the demo's files, or files for a kind of device in a band.

    With --device and --band chamber, device, goal and simulated chamber agree with each other: sizes, reference horn,
    range length, noise and the probe's calibration follow the band. All of it is invented, for you to edit.

    \b
    Examples:
      colure new my-campaign
      colure new my-horn --device horn --band 37-40
      colure new my-campaign --profile stepper-rack
    """
    from colure.app import services

    if profile_name is not None:
        written = [services.copy_profile(folder, profile_name)]
    elif kind is not None and band is not None:
        written = services.start_campaign(folder, kind=kind, band=band)
    elif kind is None and band is None:
        written = services.new_campaign(folder)
    else:
        raise click.UsageError("--device and --band go together, such as --device horn --band 37-40 (GHz)")
    if as_json:
        say(json_text({"files": [str(path) for path in written]}))
        return
    for path in written:
        say(f"wrote {path}")
    say(f"Edit them, then: colure plan {folder}")


@main.command()
@folder_argument
@click.option("--points", "show_points", is_flag=True, help="List every point with its axis targets.")
@click.option(
    "--compare", "compare_all", is_flag=True, help="Set all positioners and polarization schemes side by side."
)
@click.option("--learn", "learn_from", metavar="RUN", help="Fit the real axes to a run; later forecasts use them.")
@scan_options
@json_option
def plan(
    folder: Path, show_points: bool, compare_all: bool, learn_from: str | None, as_json: bool, **asked: Any
) -> None:
    """Show what a campaign will measure: range, sampling, level, load, duration, exposure.

    Options that name directions take the place of what goal.toml scans; the same options of colure acquire measure them.

    \b
    Examples:
      colure plan my-campaign
      colure plan my-campaign --compare
      colure plan my-campaign --learn first
      colure plan my-campaign --theta -90:90:2 --phi 0:178:2
    """
    from colure.app import services
    from colure.app.services.flight_words import coarse_faults, flight_faults
    from colure.app.terminal import screens
    from colure.model.campaign import Campaign

    if learn_from is not None:
        learned, path = services.learn_axes(folder, learn_from)
        if as_json:
            say(json_text({"file": str(path), **learned.model_dump()}))
        else:
            screens.show_learned(learned, Campaign.load(folder).chamber, path)
        return
    campaign, made = services.make_plan(folder, scan=scan_in_place(asked), monitor_ghz=asked["monitor_ghz"],
                                         frequencies=asked["frequencies"])  # fmt: skip
    if compare_all:
        from colure.planning.schemes import compare

        choices = compare(campaign, made)
        if as_json:
            say(json_text([{**choice.__dict__, "pole": choice.pole} for choice in choices]))
        else:
            screens.show_comparison_of_schemes(choices)
        return
    if as_json:
        content = made.as_dict() if show_points else {**made.predicted, "not_possible": coarse_faults(campaign, made) + flight_faults(campaign, made),
                                                      "hash": made.hash, "order": made.order,
                                                      "step_deg": made.step_deg, "scheme": made.scheme}  # fmt: skip
        say(json_text(content))
        return
    screens.show_plan(campaign, made)
    if show_points:
        screens.show_points(made)


@main.command()
@folder_argument
@run_option
@yes_option
@click.option(
    "--check", "only_check", is_flag=True, help="Talk to every instrument, move nothing, print what is found."
)
@click.option(
    "--senses", is_flag=True,
    help="With --check: turn every axis by 1 deg and ask whether it went the right way; brake it on a longer way.",
)  # fmt: skip
@click.option("--despite-check", is_flag=True, help="Start although the newest --check did not pass.")
@click.option("--verify", "only_verify", is_flag=True, help="Check the run's journal and measure nothing.")
@click.option(
    "--rebuild", "only_rebuild", is_flag=True, help="Write the run's record anew from its journal and measure nothing."
)
@click.option("--home", is_flag=True, help="Home the axes first; needed after a fault of the motion.")
@click.option(
    "--position-confirmed",
    is_flag=True,
    help="You have looked: the readouts are right although the axes stand elsewhere than the run left them.",
)
@click.option(
    "--again", default=None, metavar="SLICES",
    help="Measure these slices of a finished run again, such as 3,7-9, or reference; the first readings are kept.",
)  # fmt: skip
@click.option("--accept-damage", is_flag=True, help="Measure the points anew whose journal rows are damaged.")
@click.option(
    "--pause-limit-s", type=FiniteRange(0.1, 1e6), default=1800.0, show_default=True,
    help="A pause that nobody ends becomes a stop after this.",
)  # fmt: skip
@click.option(
    "--until", "until", default=None, metavar="FIGURE=U,...",
    help="End the scan as soon as these figures are known this well, such as gain_dbi=0.3,beamwidth_e_deg=0.2.",
)  # fmt: skip
@scan_options
@identity_options
@json_option
def acquire(
    folder: Path,
    run_name: str,
    until: str | None,
    yes: bool,
    only_check: bool,
    senses: bool,
    despite_check: bool,
    only_verify: bool,
    only_rebuild: bool,
    home: bool,
    position_confirmed: bool,
    again: str | None,
    accept_damage: bool,
    pause_limit_s: float,
    as_json: bool,
    photographs: tuple[Path, ...],
    **said: Any,
) -> None:
    """Measure a campaign, or go on with a run that was interrupted.

    Options that name directions take the place of what goal.toml scans; a run that was interrupted goes on with the same ones.

    Every point is on disk before it is announced. Ctrl-C brakes the axes and ends the run in a
    safe state; the same command resumes it. In a terminal the keys p, r, s and a pause, resume,
    stop and abort; signals USR1 and USR2 pause and resume where the system has them.

    \b
    Examples:
      colure acquire my-campaign --check --senses
      colure acquire my-campaign --run first
      colure acquire my-campaign --run quick --until gain_dbi=0.3,beamwidth_e_deg=0.5
      colure acquire my-campaign --run habit --theta -90:90:2 --phi 0:178:2 --offset 0,90
      colure acquire my-campaign --run first --again 3,7-9
      colure acquire my-campaign --run first --verify
      colure acquire my-campaign --run first --rebuild
    """
    from colure.acquire.outcome import Options
    from colure.app import services
    from colure.app.services.acquisition import require_room, require_writable
    from colure.app.services.bench_check import require_passed_check, said_of_checks
    from colure.app.services.stopping import parsed
    from colure.app.storage.folders import run_folder
    from colure.app.storage.run_identity import keep_identity
    from colure.errors import InputError

    if senses and not only_check:
        raise InputError(["--senses: goes with --check"])
    run = run_folder(folder, run_name)
    if only_verify:
        show_verification(run, as_json)
        return
    if only_rebuild:
        points, kept = services.rebuild(run)
        aside = f"; what lay there before is {kept}" if kept else ""
        say(json_text({"record": str(run.record), "points": points, "kept": kept}) if as_json else
                   f"record: {run.record}, {points} points from {run.journal.name}{aside}")  # fmt: skip
        return
    asked = {name: said.pop(name) for name in SCAN_OPTIONS}
    measured_again: frozenset[int] = frozenset()
    if again is not None:
        others = {**asked, **said, "until": until, "check": only_check, "photograph": photographs}
        campaign, made, part = slices_again(folder, run, again, others, quiet=as_json)
        measured_again = part.points
    else:
        campaign, made = services.make_plan(
            folder, run, until=None if until is None else parsed(until), scan=scan_in_place(asked),
            monitor_ghz=asked["monitor_ghz"],
            frequencies=asked["frequencies"],
        )  # fmt: skip
    if only_check:
        show_check(campaign, made, as_json, senses=senses, yes=yes)
        return
    if not despite_check:
        require_passed_check(folder, made.hash)
    require_writable(run)
    require_room(run, made)
    acknowledge(campaign, made, yes=yes, quiet=as_json)
    if again is None:
        keep_identity(run, identity_said(campaign, said), photographs)
    options = Options(
        home=home,
        position_confirmed=position_confirmed,
        pause_limit_s=pause_limit_s,
        again=measured_again,
        said=again or "",
    )
    outcome = run_engine(
        campaign, made, run, quiet=as_json, options=options, accept_damage=accept_damage, despite_check=despite_check
    )
    reason = with_flags(outcome.reason, click.get_current_context().command.params)
    if as_json:
        say(json_text({"state": outcome.state.value, "reason": reason, "measured": outcome.measured,
                               "total": outcome.total, "flagged": outcome.flagged, "record": str(run.record),
                               "checks": said_of_checks(campaign, made)}))  # fmt: skip
    else:
        say(f"{outcome.state.value}: {reason}; {outcome.measured} of {outcome.total} points saved")
        if outcome.flagged:
            say(f"{outcome.flagged} points carry flags of the analyzer (overload, unlevelled, unlocked)")
        say(f"record: {run.record}")
        if again is not None and run.figures.is_file():
            say(
                f"figures and pictures here are of the first readings: colure evaluate {folder} --run {run_name} reads them anew"
            )
    sys.exit(GOOD if outcome.state.value == "done" else STOPPED)


@main.command()
@click.option("--folder", type=click.Path(path_type=Path), default=None, help="Where to put the campaign.")
@json_option
def demo(folder: Path | None, as_json: bool) -> None:
    """Measure a simulated 24 GHz panel end to end and compare with its truth.

    Invented data: a printed 8 x 8 panel of a river-level telemetry station with a dead element
    and a misfed pair, in a compact chamber that drifts and echoes.

    \b
    Example: colure demo --json
    """
    from colure.app.commands.demo import run_demo

    sys.exit(run_demo(folder, as_json=as_json))


for command in (
    aim, beam, calibrate, codes, synthesize, embedded, calibrate_array, cut, report, runs, rehearse, effects, elements, evaluate, findings, three_antenna, pattern, flip, geometry, set_ups, verify, verdict, compare, series, export, coverage, process, convert, simulate, serve, grid_study, plot, truth, explain, jog, goto, look, trace, conformance, instruments, quiet_zone, probe_model, learn_room, check_room,
):  # fmt: skip
    main.add_command(command)


if __name__ == "__main__":
    main()
