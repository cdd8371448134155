"""What the terminal shows: short tables that a person reads."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Any

from rich.table import Table
from rich.text import Text

from colure.app.services.cautions import cautions_of
from colure.app.services.plan_words import duration_text, plan_rows
from colure.app.terminal.consoles import console
from colure.app.terminal.newest import NewestTrace
from colure.model.events import Event, Listener, nobody
from colure.model.figure import NOT_TO_BE_USED, objections, undefined_words
from colure.model.plan import ROLES

if TYPE_CHECKING:
    from colure.app.scale.rehearsals import Draw
    from colure.app.services.acquisition import CheckLine
    from colure.app.services.coverage import StateCoverage
    from colure.app.services.evaluation import StepEffects
    from colure.app.services.verdicts import Judged
    from colure.geometry.kinematics import Geometry
    from colure.model.campaign import Campaign
    from colure.model.chamber import Chamber
    from colure.model.figure import Figure
    from colure.model.goal import Goal
    from colure.model.plan import Plan
    from colure.planning.aim import Aim, Bearing
    from colure.planning.learning import Learned
    from colure.planning.schemes import Choice

NO = Text("NO", "bold red")
#: So many rehearsals are shown figure by figure; of more, what they have in common.
DRAWS_SHOWN = 3


def show_plan(campaign: Campaign, plan: Plan) -> None:
    """Print a plan as one screen."""
    p, goal = plan.predicted, campaign.goal
    table = Table(title=f"Plan: {goal.name}", title_justify="left", show_header=False, box=None, pad_edge=False)
    table.add_column(style="bold", no_wrap=True)
    table.add_column()
    for row in plan_rows(campaign, plan):
        table.add_row(*row)
    for line in p["missing"]:
        table.add_row(Text("Missing", "bold red"), line)
    console().print(table)
    if p["forecast"]:
        _show_forecast(plan, {} if goal.want is None else goal.want.wishes)
    if goal.want is not None:
        _show_alternatives(p["alternatives"], goal.want.wishes)


def _show_forecast(plan: Plan, wishes: dict[str, float]) -> None:
    """Print how uncertain every figure will be."""
    table = Table(title="Forecast (expanded uncertainty, k = 2)", title_justify="left", box=None)
    for name, justify in (("figure", "left"), ("\u00b1", "right"), ("wanted", "right"), ("mostly from", "left")):
        table.add_column(name, justify=justify)  # type: ignore[arg-type]
    for name, forecast in plan.predicted["forecast"].items():
        unit = name.rsplit("_", 1)[1].removesuffix("i").replace("db", "dB")
        wish = f"{wishes[name]:g}" if name in wishes else ""
        table.add_row(name, f"{forecast['expanded']:.2g} {unit}", wish, forecast["cause"])
    console().print(table)


def _show_alternatives(plans: list[dict[str, Any]], wishes: dict[str, float]) -> None:
    """Print the plan chosen beside two others."""
    table = Table(title="Plans, the first is taken", title_justify="left", box=None)
    for name in ("plan", "duration", "points", "data", *wishes):
        table.add_column(name, justify="left" if name == "plan" else "right")
    for one in plans:
        values = (f"\u00b1{one['uncertainty'][name]:.2g}" if name in one["uncertainty"] else "-" for name in wishes)
        table.add_row(one["name"], duration_text(one["duration_s"]), str(one["points"]),
                      f"{one['data_bytes'] / 1e6:.1f} MB", *values)  # fmt: skip
    console().print(table)
    for one in plans:
        console().print(f"{one['name']}: {one['why']}.")
    for one in plans[1:]:
        chosen = ", ".join(
            f'{k} = "{v}"' if isinstance(v, str) else f"{k} = {v:.6g}" for k, v in one["choices"].items()
        )
        console().print(f'To take "{one["name"]}", write into goal.toml: {chosen}')


def show_comparison_of_schemes(choices: Sequence[Choice]) -> None:
    """Print positioners and polarization schemes side by side."""
    table = Table(title="Positioners and schemes for this device, same speeds", title_justify="left", box=None)
    for name, justify in (("positioner", "left"), ("scheme", "left"), ("points", "right"), ("duration", "right"),
                          ("slices meet at", "left"), ("near boresight", "right"), ("hidden", "right"),
                          ("gravity torque", "right")):  # fmt: skip
        table.add_column(name, justify=justify)  # type: ignore[arg-type]
    for choice in choices:
        duration = "-" if choice.duration_s is None else duration_text(choice.duration_s)
        table.add_row(choice.geometry.value, choice.scheme, str(choice.points or "-"), duration, choice.pole,
                      str(choice.near_boresight), f"{choice.blocked_percent:.1f} %",
                      f"{choice.torque_nm:.2f} N m")  # fmt: skip
    console().print(table)
    for geometry in dict.fromkeys(choice.geometry for choice in choices):
        one = next(choice for choice in choices if choice.geometry is geometry)
        console().print(f"{geometry.value}: d = {geometry.direction_formula}; suits {one.suits}; "
                        f"polarization {one.polarization}.")  # fmt: skip
    for choice in choices:
        if choice.fault:
            console().print(f"{choice.geometry.value}, {choice.scheme}: {choice.fault}")


def show_points(plan: Plan) -> None:
    """Print every point of a plan."""
    table = Table(box=None)
    chamber = plan.inputs.get("chamber", {})
    joints = {one["name"]: one["kind"] for one in chamber.get("positioner", {}).get("joints", ())}
    units = ["mm" if joints.get(axis) == "prismatic" else "deg" for axis in plan.axes]
    for name in (
        "point", "role", "slice", "pass", *(f"{axis} / {unit}" for axis, unit in zip(plan.axes, units, strict=True))
    ):  # fmt: skip
        table.add_column(name, justify="right")
    for index, target in enumerate(plan.targets_deg):
        role = ROLES[plan.role[index]].value
        table.add_row(str(index), role, str(plan.slice_index[index]), str(plan.pass_index[index]),
                      *(f"{value:.3f}" for value in target))  # fmt: skip
    console().print(table)


def _mount_title(geometry: Geometry, chamber: Chamber | None) -> str:
    """Return what readouts belong to: a positioner with its formula, or the joints of a mount."""
    if chamber is None or not chamber.positioner.joints:
        return f"{geometry.value}: d = {geometry.direction_formula}"
    return f"{chamber.name}: {len(chamber.positioner.joints)} joints"


def show_aims(targets: Sequence[tuple[Bearing, Geometry, Sequence[Aim]]], chamber: Chamber | None = None) -> None:
    """Print the readouts for every bearing, one block a positioner; on a mount with joints those of the joints."""
    joints = () if chamber is None else chamber.positioner.joints
    for geometry in dict.fromkeys(geometry for _, geometry, _ in targets):
        table = Table(title=_mount_title(geometry, chamber), title_justify="left", box=None)
        names = ["readouts"] if joints else list(geometry.axis_names)
        for name in ("target", "az / el", "theta / phi", *names, "slant", "probe roll", ""):
            table.add_column(name, justify="left" if name in ("target", "readouts", "") else "right")
        for bearing, own, ways in targets:
            if own is not geometry:
                continue
            for number, aim in enumerate(ways):
                first = (bearing.name, f"{bearing.azimuth_deg:.2f} / {bearing.elevation_deg:.2f}",
                         f"{bearing.theta_deg:.2f} / {bearing.phi_deg:.2f}") if number == 0 else ("", "", "")  # fmt: skip
                reach = Text("out of reach", "bold red") if aim.fault else "nearest" if number == 0 else "also"
                shown = [f"{value:.3f}" for value in aim.readouts_deg.values()]
                if joints:
                    shown = [", ".join(f"{one} {value}" for one, value in zip(aim.readouts_deg, shown, strict=True))]
                table.add_row(*first, *shown,
                              f"{aim.slant_deg:.2f}", f"{aim.probe_roll_deg:.2f}", reach)  # fmt: skip
        console().print(table)
    for fault in dict.fromkeys(aim.fault for _, _, ways in targets for aim in ways if aim.fault):
        console().print(fault)
    if joints:
        console().print(
            "Readouts in degrees, of prismatic joints in millimetres. Slant: what port 1 receives there (Ludwig-3, x towards y, in the "
            "device's frame).\nProbe roll: how much further the probe must be rolled to receive the device's own x component."
        )
        return
    console().print(
        "Angles in degrees. Slant: what the probe receives at roll 0 (Ludwig-3, x towards y, in the device's frame).\n"
        "Probe roll: the roll at which it receives the device's own x component."
    )


def show_sightings(sightings: Sequence[tuple[Geometry, Bearing, float]], chamber: Chamber | None = None) -> None:
    """Print the bearing that readouts show."""
    slant_name = "slant" if chamber is not None and chamber.positioner.joints else "slant at probe roll 0"
    for geometry, b, slant in sightings:
        table = Table(title=_mount_title(geometry, chamber), title_justify="left", box=None)
        for name in ("az / el", "theta / phi", "alpha / epsilon", slant_name):
            table.add_column(name, justify="right")
        table.add_row(f"{b.azimuth_deg:.3f} / {b.elevation_deg:.3f}", f"{b.theta_deg:.3f} / {b.phi_deg:.3f}",
                      f"{b.alpha_deg:.3f} / {b.epsilon_deg:.3f}", f"{slant:.2f}")  # fmt: skip
        console().print(table)


def show_rehearsal(draws: Sequence[Draw], plan: Plan, share: float, held: str) -> None:
    """Print what rehearsals at the centre frequency found, what dominates, and what to change.

    held
        The simulated device in words.
    """
    from colure.app.services.rehearsal import REMEDIES

    frequencies = sorted({finding.figure.frequency_hz for finding in draws[0].findings})
    centre = frequencies[len(frequencies) // 2]
    title = f"Rehearsal at {centre / 1e9:.3f} GHz: invented chamber, {held}"
    table = Table(title=title, title_justify="left", box=None)
    for name, justify in (("figure", "left"), ("truth", "right"), ("error", "right"), ("forecast", "right"), ("it states", "left"),
                          ("unit", "left"), ("inside?", "left"), ("dominated by", "left")):  # fmt: skip
        table.add_column(name, justify=justify)  # type: ignore[arg-type]
    for one in draws if len(draws) <= DRAWS_SHOWN else ():
        for finding in one.findings:
            if finding.figure.frequency_hz == centre:
                inside = "" if not finding.counts else "yes" if finding.inside else NO
                planned = plan.predicted["forecast"].get(finding.figure.name)
                forecast = "" if planned is None else f"\u00b1 {planned['expanded']:.2g}"
                table.add_row(finding.figure.label, f"{finding.truth:.3f}", f"{finding.error:+.3f}", forecast,
                              finding.figure.reason or finding.figure.interval_text(), finding.figure.unit, inside,
                              finding.cause)  # fmt: skip
        table.add_section()
    console().print(table if table.row_count else _shares(draws))
    total = sum(finding.counts for one in draws for finding in one.findings)
    seconds = sum(one.seconds for one in draws)
    console().print(
        f"\n{100 * share:.1f} % of {total} figures over {len(frequencies)} frequencies inside their intervals; "
        f"{duration_text(plan.predicted['duration_s'])} of scan rehearsed {len(draws)} times in {seconds:.0f} s."
    )
    console().print("What would help most:")
    for cause, count in draws[0].causes[:3]:
        console().print(f"  {cause} (largest term of {count} figures): {REMEDIES.get(cause, 'see the budget')}")


def _shares(draws: Sequence[Draw]) -> Table:
    """Return the table of every figure's share inside over many draws."""
    from colure.app.scale.rehearsals import counts_by_figure

    table = Table(title=f"{len(draws)} invented chambers, all frequencies", title_justify="left", box=None)
    for name, justify in (("figure", "left"), ("cases", "right"), ("inside", "right"), ("median |error| / U", "right")):
        table.add_column(name, justify=justify)  # type: ignore[arg-type]
    for one in counts_by_figure(draws):
        table.add_row(one.label, str(one.cases), f"{100 * one.share_inside:.1f} %", f"{one.median_ratio:.2f}")
    return table


def show_effects(effects: StepEffects) -> None:
    """Print every figure with the whole recipe, and how it changes without each step."""
    table = Table(title="Figures at mid-band, and how they change without a step", title_justify="left", box=None)
    table.add_column("figure")
    for name in ("all steps", *(f"no {step}" for step in effects.without)):
        table.add_column(name, justify="right")
    for name, label in effects.labels.items():
        changes = (f"{values[name] - effects.whole[name]:+.3f}" for values in effects.without.values())
        table.add_row(label, f"{effects.whole[name]:.3f}", *changes)
    console().print(table)


def show_learned(learned: Learned, chamber: Chamber, path: Path) -> None:
    """Print what a run taught about the axes beside what was declared."""
    table = Table(title=f"Axes as run {learned.run} showed them", title_justify="left", box=None)
    for name in ("axis", "speed declared", "speed real", "acceleration declared", "acceleration real"):
        table.add_column(name, justify="left" if name == "axis" else "right")
    for name, axis in learned.axes.items():
        declared = chamber.driven_table[name]
        table.add_row(name, f"{declared.speed_deg_s:g} deg/s", f"{axis.speed_deg_s:.2f} deg/s",
                      f"{declared.acceleration_deg_s2:g} deg/s^2", f"{axis.acceleration_deg_s2:.2f} deg/s^2")  # fmt: skip
    console().print(table)
    console().print(
        f"{1e3 * learned.overhead_s:.1f} ms a point beyond motion, settling and trace (declared "
        f"{1e3 * chamber.analyzer.sweep_overhead_s:.1f} ms); {1e3 * learned.residual_s:.1f} ms rms residual over "
        f"{learned.points} points.\nwrote {path}; what only short moves were seen of stays as declared."
    )


def show_check(lines: Sequence[CheckLine]) -> None:
    """Print what every instrument answered."""
    table = Table(title="Instruments", title_justify="left", box=None, show_header=False)
    for line in lines:
        table.add_row("ok" if line.good else NO, line.what, line.answer)
    console().print(table)


def show_instruments(rows: Sequence[Mapping[str, Any]]) -> None:
    """Print the instruments of a range by role."""
    table = Table(title="Instruments", title_justify="left", box=None)
    for title in ("role", "name", "at", "words", "from", "details"):
        table.add_column(title)
    for row in rows:
        details = [*([", ".join(row["axes"])] if row["axes"] else [])]
        details += [f"stands for {row['stands_for']}"] if row["stands_for"] else []
        details += [f"read every {row['every_s']:g} s"] if row["every_s"] else []
        details.append(f"time-out {row['timeout_s']:g} s")
        table.add_row(
            *(str(row[key]) for key in ("role", "name", "resource", "profile", "from")),
            "; ".join(details),
        )
    console().print(table)


def show_cautions(campaign: Campaign, plan: Plan) -> None:
    """Print what can hurt someone, before anything moves."""
    out = console()
    out.print("Cautions", style="bold")
    for line in cautions_of(campaign, plan):
        out.print(f"  - {line}")


@contextmanager
def progress(total: int, *, quiet: bool) -> Iterator[Listener]:
    """Show a bar with time left while the block runs; yields the listener to give the engine."""
    if quiet:
        yield nobody
        return
    from rich.console import RenderableType
    from rich.progress import (
        BarColumn,
        MofNCompleteColumn,
        Progress,
        TextColumn,
        TimeElapsedColumn,
        TimeRemainingColumn,
    )

    columns = (
        TextColumn("{task.description}"),
        BarColumn(bar_width=30),
        MofNCompleteColumn(),
        TextColumn("points, elapsed"),
        TimeElapsedColumn(),
        TextColumn("left"),
        TimeRemainingColumn(),
    )
    newest = NewestTrace()

    class WithTrace(Progress):
        def get_renderables(self) -> Iterator[RenderableType]:
            yield from super().get_renderables()
            yield Text(newest.text)

    with WithTrace(*columns, console=console(stderr=True), refresh_per_second=4) as bar:
        task = bar.add_task("measuring", total=total)

        def listen(event: Event) -> None:
            if event.kind in ("point", "tie") and "measured" in event.data:
                newest.see(event.data.get("row"))
                bar.update(task, completed=event.data["measured"])
            elif event.kind in ("warning", "home", "tie", "known"):
                bar.console.print(event.text)
            elif event.data.get("state") == "paused":
                bar.console.print(event.text, style="bold")
                bar.console.print("  r resumes, s stops, a aborts (or signal USR2 to resume, Ctrl-C to stop)")

        yield listen


def show_figures(figures: Sequence[Figure], goal: Goal | None = None) -> None:
    """Print the figures at the frequency that a goal watches, else at the centre frequency."""
    frequencies = sorted({figure.frequency_hz for figure in figures})
    centre = frequencies[len(frequencies) // 2 if goal is None else goal.shown_index(frequencies)]
    table = Table(title=f"Figures at {centre / 1e9:.3f} GHz (95 % intervals)", title_justify="left", box=None)
    for name, justify in (("figure", "left"), ("value", "right"), ("", "left"), ("unit", "left")):
        table.add_column(name, justify=justify)  # type: ignore[arg-type]
    here = [figure for figure in figures if figure.frequency_hz == centre]
    for figure in here:
        if not figure.reason and not figure.zero_by_definition:
            table.add_row(figure.label, *figure.cells(), figure.unit)
    console().print(table)
    for words in undefined_words(here):
        console().print(words)
    left_out = next((figure.not_included for figure in figures if figure.not_included), ())
    if left_out:
        console().print(f"Not included in the intervals: {', '.join(left_out)}.")


def show_against(figures: Sequence[Figure]) -> int:
    """Print what the data say against the figures; return the exit code: 1 if one is not to be used."""
    for one in objections(figures):
        use, _, text = one.words.partition(": ")
        which = "all figures" if one.all_figures else ", ".join(one.labels)
        console(stderr=True).print(f"{use.upper()} ({which}): {text}", soft_wrap=True)
    return int(any(figure.use == NOT_TO_BE_USED for figure in figures))


def show_comparison(rows: Sequence[tuple[Figure, float]], title: str) -> None:
    """Print measured values beside the truth of the simulated device."""
    table = Table(title=title, title_justify="left", box=None)
    for name, justify in (("figure", "left"), ("measured", "right"), ("\u00b1 uncertainty", "left"), ("truth", "right"),
                          ("unit", "left"), ("inside?", "left")):  # fmt: skip
        table.add_column(name, justify=justify)  # type: ignore[arg-type]
    for figure, truth in rows:
        inside = "yes" if figure.contains(truth) else NO
        inside = "" if figure.reason else inside
        table.add_row(figure.label, *figure.cells(), f"{truth:.3f}", figure.unit, inside)
    console().print(table)


def show_verdicts(judged: Judged) -> None:
    """Print every requirement with its outcome and why, and the outcome of all together."""
    rule = {
        "simple": "simple acceptance: the value alone decides",
        "guard-band": "guard band: the whole interval (95 %) decides",
    }[judged.specification.decision]
    table = Table(title=f"{judged.specification.name}; {rule}", box=None, title_justify="left", pad_edge=False)
    for name in ("requirement", "verdict", "why"):
        table.add_column(name, overflow="fold")
    colours = {"pass": "green", "fail": "bold red", "not decidable": "yellow"}
    for one in judged.verdicts:
        table.add_row(one.requirement, Text(one.outcome, colours[one.outcome]), one.text)
    console().print(table)
    console().print(Text.assemble("all together: ", (judged.outcome, colours[judged.outcome])))


def show_coverage(coverage: StateCoverage) -> None:
    """Print coverage percentiles of every state and of the best of all."""
    table = Table(title=f"Spherical coverage at {coverage.frequency_hz / 1e9:.3f} GHz, {coverage.unit} \u00b1 {coverage.expanded_db:.2f} dB (k = 2)",
                  box=None, title_justify="left", pad_edge=False)  # fmt: skip
    table.add_column("state")
    table.add_column("peak", justify="right")
    table.add_column("azimuth", justify="right")
    table.add_column("elevation", justify="right")
    for percent in coverage.percent:
        table.add_column(f"{percent:g} %", justify="right")
    for name, row in coverage.states.items():
        toward = (f"{value:.1f}" for value in coverage.toward[name])
        table.add_row(name, f"{coverage.peak[name]:.2f}", *toward, *(f"{value:.2f}" for value in row))
    table.add_row(
        Text.assemble(("best of all", "bold"), f" ({coverage.strongest} peaks highest)"),
        f"{max(coverage.peak.values()):.2f}",
        "",
        "",
        *(Text(f"{value:.2f}", "bold") for value in coverage.best),
    )
    console().print(table)
    if coverage.untold:
        console().print(
            f"not told by these samples: {', '.join(f'{p:g} %' for p in coverage.untold)}; measure with a smaller step"
        )
