"""`colure compare` and `colure series`: patterns against each other."""

from __future__ import annotations

import math
import sys
from pathlib import Path
from typing import TYPE_CHECKING

import click

from colure.app.commands.as_measured import own_run, present_option, refuse_present
from colure.app.commands.numbers import FiniteRange
from colure.app.terminal.say import say
from colure.model.strict_json import json_text

if TYPE_CHECKING:
    from colure.app.services.comparing import ComparedFigure
    from colure.app.services.cuts import CutChange


@click.command()
@click.argument("source", type=click.Path(path_type=Path))
@click.argument("other", type=str)
@click.option("--run", "run_name", default="first", show_default=True, help="Name of the run.")
@click.option("--state", default=None, help="State of a device that has several; the first by default.")
@click.option("--other-state", default=None, help="State of the other run; the one of the same name by default.")
@click.option(
    "--match", "matched", default="", help="What is matched before the difference is formed: any of frame,origin,level."
)
@click.option("--other-uncertainty-db", type=FiniteRange(0.0, 20.0), default=0.0, show_default=True,
              help="Expanded uncertainty of the levels of a pattern file.")  # fmt: skip
@click.option("--plot", type=click.Path(path_type=Path), help="Draw the difference to this file (.svg, .pdf or .png).")
@click.option("--difference", type=click.Path(path_type=Path), help="Write the difference pattern to this file (.nc).")
@present_option
@click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of tables.")
def compare(
    source: Path,
    other: str,
    run_name: str,
    state: str | None,
    other_state: str | None,
    matched: str,
    other_uncertainty_db: float,
    plot: Path | None,
    difference: Path | None,
    present_chamber: bool,
    as_json: bool,
) -> None:
    """Compare a run with another run of the campaign, or a run or a far-field file with a file (.nc, tidy .csv).

    SOURCE is a campaign folder or a far-field file. Errors that two files do not state count as none.

    Both are held against each other as they stand: only the phase of every frequency is matched. The change of every figure
    is told with its uncertainty, and E_n = change over both uncertainties together; |E_n| <= 1 agrees. Exit code 1 if a
    figure does not. --match takes a turn, a shift or a level out of the difference and tells how much: a device that was
    mounted anew. --plot draws the principal cuts of both over each other with their intervals, and the difference.

    \b
    Examples:
      colure compare my-campaign simulated.csv --run first --other-uncertainty-db 0.2
      colure compare my-campaign second --run first --plot change.pdf
      colure compare my-beams second --state left
      colure compare far.nc simulated.csv --other-uncertainty-db 0.2
    """
    from colure.analysis.compare.match import Freedom
    from colure.app.services.comparing import compare_files, compare_run, save_difference
    from colure.app.services.pattern_files import is_file
    from colure.app.storage.folders import require_chart_target, run_folder
    from colure.app.storage.run_kinds import is_cuts
    from colure.app.terminal import comparison_screens
    from colure.errors import InputError

    words = _matched(matched)
    require_chart_target(plot)
    freedom = Freedom("frame" in words, "origin" in words, "level" in words)
    path = Path(other)
    _require_states(source, path, state, other_state)
    refuse_present(source, present=present_chamber)
    if is_file(source) and not is_file(path):
        raise InputError([f"{other}: must be a far-field file (.nc or .csv), because {source.name} is one"])
    if _of_power(source, run_name, path):
        for option, value in (("--match", matched), ("--plot", plot), ("--difference", difference)):
            if value:
                raise InputError([f"{option} = {value}: needs phase; power is compared figure by figure"])
        _compare_power(
            source, run_name, path, state, other_state, other_uncertainty_db=other_uncertainty_db,
            present=present_chamber, as_json=as_json,
        )  # fmt: skip
        return
    _say_if_the_same(source, run_name, other, one_state=other_state in (None, state))
    if is_file(source):
        comparison = compare_files(source, path, freedom=freedom, other_uncertainty_db=other_uncertainty_db)
    else:
        if not is_file(path) and any(is_cuts(run_folder(source, one)) for one in (run_name, other)):
            if state is not None or other_state is not None:
                raise InputError(["--state: runs of cuts are compared in their first state; leave --state out"])
            _compare_cuts(source, run_name, other, plot, present=present_chamber, as_json=as_json)
            return
        comparison = compare_run(
            *own_run(source, run_name, state, present=present_chamber, one_of_two=True),
            path if is_file(path) else own_run(source, other, other_state, present=present_chamber, one_of_two=True), freedom=freedom,
            other_uncertainty_db=other_uncertainty_db,
        )  # fmt: skip
    if difference is not None:
        save_difference(comparison, difference)
    if plot is not None:
        from colure.report.comparison_charts import comparison_chart

        names = (source.stem, path.stem) if is_file(source) else (run_name, path.stem if is_file(path) else other)
        comparison_chart(comparison.match, comparison.middle, comparison.levels, comparison.overlaid, names).savefig(
            plot, dpi=200
        )
    if as_json:
        m = comparison.match
        say(json_text({
            "rotation_deg": m.rotation_deg.tolist(), "shift_mm": m.shift_mm.tolist(), "level_db": m.level_db.tolist(),
            "difference_db": m.difference_db.tolist(), "levels": [one.__dict__ for one in comparison.levels],
            "matched": sorted(words), "figures": [_plain(one) for one in comparison.rows], "agrees": comparison.agrees,
        }))  # fmt: skip
    else:
        comparison_screens.show_compared(comparison)
    sys.exit(0 if comparison.agrees else 1)


def _say_if_the_same(source: Path, run_name: str, other: str, *, one_state: bool) -> None:
    """Warn of what files tell of themselves, and where something is compared with itself: its figures agree, which says nothing."""
    from colure.app.storage.folders import run_folder
    from colure.model.files import attribute_of, file_hash

    both = [
        one if one.suffix.lower() in (".nc", ".csv") else run_folder(source, name).record
        for one, name in ((source, run_name), (Path(other), other))
    ]
    for one in both:
        if one.suffix.lower() == ".nc" and one.is_file() and (told := attribute_of(one, "caution", "")):
            say(f"caution: {one.name}: {told}", err=True)
    if not one_state or not all(one.is_file() for one in both):
        return
    if len({one.stat().st_size for one in both}) == 1 and file_hash(both[0]) == file_hash(both[1]):
        names = (source.name, Path(other).name) if source.is_file() else (run_name, other)
        say(f"caution: {names[0]} and {names[1]} hold the same bytes; that they agree says nothing", err=True)


def _matched(option: str) -> set[str]:
    """Return what is matched; raises `InputError` for what cannot be."""
    from colure.errors import InputError

    words = {word for word in option.split(",") if word}
    if words - {"frame", "origin", "level"}:
        raise InputError([f"--match = {option!r}: must be any of frame,origin,level"])
    return words


def _of_power(source: Path, run_name: str, other: Path) -> bool:
    """Tell whether one of two files or runs is power without phase."""
    from colure.app.services.pattern_files import is_file
    from colure.app.services.power_files import is_power_file
    from colure.app.services.processing import has_phase
    from colure.app.storage.folders import run_folder
    from colure.app.storage.run_kinds import is_cuts

    if is_power_file(source) or is_power_file(other):
        return True
    runs = [] if is_file(source) else [run_name, *([] if is_file(other) else [str(other)])]
    folders = [run_folder(source, name) for name in runs]
    return any(one.record.is_file() and not is_cuts(one) and not has_phase(one) for one in folders)


def _compare_power(
    source: Path,
    run_name: str,
    other: Path,
    state: str | None,
    other_state: str | None,
    *,
    other_uncertainty_db: float,
    present: bool,
    as_json: bool,
) -> None:
    """Print the change of every figure; exit code 1 if one is larger than both uncertainties."""
    from colure.app.services.comparing import compare_power
    from colure.app.services.pattern_files import is_file
    from colure.app.terminal import comparison_screens

    one = source if is_file(source) else own_run(source, run_name, state, present=present, one_of_two=True)
    two = (
        other if is_file(other) else own_run(source, str(other), other_state or state, present=present, one_of_two=True)
    )
    rows = compare_power(
        one, two, other_uncertainty_db=other_uncertainty_db
    )  # fmt: skip
    agrees = all(row.agrees for row in rows)
    if as_json:
        say(json_text({"figures": [_plain(one) for one in rows], "agrees": agrees}))
    else:
        frequencies = sorted({row.frequency_hz for row in rows})
        comparison_screens.show_figure_rows(rows, frequencies[len(frequencies) // 2])
    sys.exit(0 if agrees else 1)


def _require_states(source: Path, other: Path, state: str | None, other_state: str | None) -> None:
    """Raise `InputError` if a state is asked for of a file."""
    from colure.app.services.pattern_files import is_file
    from colure.errors import InputError

    for option, name, path in (("--state", state, source), ("--other-state", other_state, other)):
        if name is not None and is_file(path):
            raise InputError([f"{option} = {name!r}: {path.name} holds one state; leave {option} out"])


def _compare_cuts(source: Path, run_name: str, other: str, plot: Path | None, *, present: bool, as_json: bool) -> None:
    """Print the change of every figure of two runs of cuts; exit code 1 if one is larger than both uncertainties."""
    from colure.app.services import cuts
    from colure.app.terminal import comparison_screens

    one, two = (own_run(source, name, present=present, one_of_two=True) for name in (run_name, other))
    rows = cuts.compare(one, two, plot)
    if as_json:
        say(json_text([_plain_change(row) for row in rows]))
    else:
        comparison_screens.show_changes(rows, run_name, other)
    sys.exit(0 if all(row.agrees for row in rows) else 1)


def _plain_change(row: CutChange) -> dict[str, object]:
    """Return a change for JSON: null where there is no number."""
    content = {**row.__dict__, "change": row.change, "change_expanded": row.change_expanded, "agrees": row.agrees}
    return {k: None if isinstance(v, float) and not math.isfinite(v) else v for k, v in content.items()}


def _plain(row: ComparedFigure) -> dict[str, object]:
    """Return a row for JSON: null for what nobody states or nothing decides, and why."""
    reason = ""
    if math.isnan(row.value) or math.isnan(row.other):
        reason = "undefined in both" if math.isnan(row.value) and math.isnan(row.other) else "undefined in one of them"
    elif not math.isfinite(row.e_n):
        reason = "neither of them states an uncertainty, and the values differ"
    elif math.isnan(row.expanded) or math.isnan(row.other_expanded):
        reason = "one of them states no uncertainty: it counts as none"
    change = {"change": row.change, "change_expanded": row.change_expanded}
    finite = {k: v if math.isfinite(v) else None for k, v in change.items()}
    return {**row.__dict__, **finite, "agrees": row.agrees, "reason": reason}


@click.command()
@click.argument("folder", type=click.Path(path_type=Path))
@click.argument("runs", nargs=-1, required=True)
@click.option("--state", default=None, help="State of a device that has several; the first by default.")
@click.option("--golden", default=None, help="Run of the golden unit; the first one by default.")
@click.option(
    "--plot", type=click.Path(path_type=Path), help="Draw E_n of every figure to this file (.svg, .pdf or .png)."
)
@click.option(
    "--control",
    "page",
    type=click.Path(path_type=Path),
    help="Write control charts of a check antenna to this page (.pdf or .html).",
)
@click.option("--baseline", type=int, default=None, help="So many of the first runs set the limits; all by default.")
@click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of a table.")
def series(
    folder: Path,
    runs: tuple[str, ...],
    state: str | None,
    golden: str | None,
    plot: Path | None,
    page: Path | None,
    baseline: int | None,
    as_json: bool,
) -> None:
    """Compare many devices: spread and trend of every figure at mid-band, and each against a golden unit.

    RUNS are evaluated runs of the campaign, in the order they were measured. With --control they are runs of one check
    antenna: Shewhart and CUSUM charts are drawn, every alarm is a sentence, and the exit code is 1 if there is one.

    \b
    Examples:
      colure series my-campaign golden unit-2 unit-3 --golden golden
      colure series my-campaign jan feb mar apr may jun jul aug sep --control check.pdf --baseline 8
    """
    from colure.app.services.series import series as over_devices
    from colure.app.storage.folders import require_chart_target
    from colure.app.terminal import comparison_screens

    require_chart_target(plot)
    if page is None and baseline is not None:
        raise click.UsageError("--baseline goes with --control")
    if page is not None:
        if golden is not None or plot is not None:
            raise click.UsageError("--control goes without --golden and --plot")
        _control(folder, list(runs), page, baseline, state, as_json=as_json)
        return
    rows = over_devices(folder, list(runs), golden or runs[0], state=state)
    if plot is not None and rows:
        from colure.report.comparison_charts import series_chart

        series_chart([row.label for row in rows], runs, [row.e_n for row in rows], golden or runs[0],
                     rows[0].frequency_hz).savefig(plot, dpi=200)  # fmt: skip
    if as_json:
        say(json_text([row.__dict__ for row in rows]))
    else:
        comparison_screens.show_series(rows, list(runs), golden or runs[0])


def _control(
    folder: Path, runs: list[str], page: Path, baseline: int | None, state: str | None, *, as_json: bool
) -> None:
    """Write control charts and print their alarms; exit code 1 if there is one."""
    from colure.app.services.control import control

    charts, alarms = control(folder, runs, page, baseline=baseline, state=state)
    if as_json:
        figures = [
            {"figure": one.label, "unit": one.unit, "reason": one.reason}
            if one.chart is None
            else {"figure": one.label, "unit": one.unit, "centre": one.chart.centre, "sigma": one.chart.sigma,
                  "limits": [one.chart.low, one.chart.high], "outside": [runs[i] for i in one.chart.outside],
                  "shifted": [runs[i] for i in one.chart.shifted]}
            for one in charts
        ]  # fmt: skip
        say(json_text({"page": str(page), "figures": figures, "alarms": alarms}))
    else:
        for text in alarms or ["in control: no run outside the limits, no shift"]:
            say(text)
        for one in charts:
            if one.reason:
                say(f"{one.label}: cannot tell, because {one.reason}")
        say(f"control charts: {page}")
    sys.exit(1 if alarms else 0)
