"""`colure cut`: one or a few cuts, now: measured, drawn and evaluated in one command."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from colure.app.commands.runs import ENTRIES, identity_options, identity_said
from colure.model.strict_json import json_text

if TYPE_CHECKING:
    from colure.app.services.cuts import ReadCuts


@click.command()
@click.argument("folder", type=click.Path(path_type=Path), default=Path())
@click.option(
    "--theta", metavar="ANGLES", help="Polar angles from the boresight: start:stop:step, or a list such as 0,5,10."
)
@click.option("--phi", metavar="ANGLES", help="Angles about the boresight, from x towards y. With --theta.")
@click.option("--az", metavar="ANGLES", help="Azimuths, d = (sin az cos el, sin el, cos az cos el). With --el.")
@click.option("--el", metavar="ANGLES", help="Elevations. With --az.")
@click.option("--circles", metavar="ANGLES", help="Great circles through a direction: their planes, from x towards y.")
@click.option("--through", metavar="AZ,EL", help="That direction; the device's declared beam if left out.")
@click.option("--along", metavar="ANGLES", help="Angles along great circles.  [default: -90:90:1]")
@click.option("--directions", metavar="CSV", help="Single directions from a CSV beside goal.toml, as colure aim takes.")
@click.option("--offset", metavar="ANGLES", default="0", show_default=True,
              help="Polarization offsets of the probe, one a pass: 0,90 gives both components.")  # fmt: skip
@click.option("--probe", type=click.Choice(["follows", "fixed"]), default="follows", show_default=True,
              help="Whether the probe turns with the device's x.")  # fmt: skip
@click.option("--single-sided", is_flag=True, help="Measure negative theta with the roll turned by 180 deg.")
@click.option("--repeats", type=int, default=1, show_default=True, help="How often everything is measured.")
@click.option("--dwell-s", type=float, default=0.0, show_default=True, help="Rest at every point before its sweep.")
@click.option("--monitor-ghz", type=float, help="Frequency that is shown; mid-band if left out.")
@click.option("--run", "run_name", default="cut", show_default=True, help="Name of the run.")
@identity_options
@click.option(
    "--plan", "only_plan", is_flag=True, help="Show what would be measured and how long it takes; move nothing."
)
@click.option("--yes", is_flag=True, help="The cautions are read and everyone is clear of the axes.")
@click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of tables.")
def cut(
    folder: Path, run_name: str, only_plan: bool, yes: bool, as_json: bool, monitor_ghz: float | None, **asked: Any
) -> None:
    """Measure, draw and evaluate cuts in one command; the result is a run like any other.

    Directions are read at the range length, without a transform. A run that is there already is only read (or finished).

    \b
    Examples:
      colure cut my-campaign --phi 0 --theta -90:90:1 --run h-plane --yes
      colure cut my-campaign --phi 0,90 --theta -90:90:1 --offset 0,90 --run both --yes
      colure cut my-campaign --az -60:60:0.5 --el 0 --run azimuth --yes
      colure cut my-campaign --circles 0,45 --through 20,0 --run skew --yes
    """
    from colure.app import services
    from colure.app.services import cuts
    from colure.app.services.connecting import is_power_only
    from colure.app.storage.folders import run_folder
    from colure.app.storage.run_identity import keep_identity
    from colure.app.terminal import screens
    from colure.errors import InputError

    run = run_folder(folder, run_name)
    campaign, made = cuts.cut_plan(folder, _scan_of(asked), monitor_ghz, run)
    if only_plan:
        if as_json:
            click.echo(json_text({**made.predicted, "hash": made.hash}))
        else:
            screens.show_plan(campaign, made)
        return
    if not _complete(run.record):
        if is_power_only(campaign):
            raise InputError([
                f"chamber.toml: profile = {campaign.chamber.analyzer.profile!r}: must be that of a receiver with phase: a cut is "
                "evaluated from phase and level; colure acquire records single directions, a scan of the sphere gives figures"
            ])  # fmt: skip
        if not as_json:
            screens.show_cautions(campaign, made)
        for line in made.predicted["missing"]:
            click.echo(f"note: {line}", err=True)
        if not yes and (
            as_json or not click.confirm("Everyone is clear of the axes and the cautions are understood. Start?")
        ):
            raise InputError(["cautions: not acknowledged: must be acknowledged with --yes before anything moves"])
        keep_identity(run, identity_said(campaign, {name: asked[name] for name in ENTRIES}), asked["photographs"])
        with screens.progress(len(made), quiet=as_json) as listener:
            outcome = services.acquire(campaign, made, run, listener=listener)
        if outcome.state.value != "done":
            raise InputError([f"cut: {outcome.state.value}: {outcome.reason}; the same command goes on with it"])
    elif not cuts.same_plan(run, made):
        raise InputError(
            [f"run {run_name}: holds another scan than this one; choose another --run, or colure evaluate reads it"]
        )
    found = cuts.evaluate(campaign, run)
    show_cuts(found, run.path, as_json=as_json)
    sys.exit(0)


def _complete(record: Path) -> bool:
    """Tell whether a record is there and holds every point of its plan."""
    from colure.model.files import attribute_of

    return record.is_file() and attribute_of(record, "complete", "1") == "1"


def show_cuts(found: ReadCuts, path: Path, *, as_json: bool) -> None:
    """Print the figures of cuts, and where the picture and the table lie."""
    from colure.app.terminal import screens

    if as_json:
        click.echo(json_text({"figures": [figure.as_dict() for figure in found.figures],
                               "picture": str(path / "cuts.png"), "table": str(path / "cuts.csv")}))  # fmt: skip
        return
    shown = float(found.scan.frequency_hz[found.shown])
    here = [figure for figure in found.figures if figure.frequency_hz == shown]
    if here:
        screens.show_figures(here)
    if len(found.scan.cuts) > len(
        {figure.name.split("_peak_dbi")[0] for figure in here if figure.name.endswith("_peak_dbi")}
    ):
        click.echo(
            f"{len(found.scan.cuts)} cuts were measured; figures are read from the principal ones and the strongest"
        )
    if found.scan.missing:
        click.echo(f"{found.scan.missing} directions are missing: the run was stopped", err=True)
    click.echo(f"picture: {path / 'cuts.png'}\nall directions and frequencies: {path / 'cuts.csv'}")


def _scan_of(asked: dict[str, Any]) -> dict[str, Any]:
    """Return the table [scan] that the options say."""
    from colure.errors import InputError

    names = {"theta": "theta_deg", "phi": "phi_deg", "az": "azimuth_deg", "el": "elevation_deg", "circles": "great_circles_deg",
             "along": "along_deg", "directions": "directions", "offset": "offset_deg", "probe": "probe", "repeats": "repeats",
             "dwell_s": "dwell_s"}  # fmt: skip
    scan = {entry: asked[option] for option, entry in names.items() if asked[option] is not None}
    if asked["single_sided"]:
        scan["double_sided"] = False
    if asked["through"] is not None:
        try:
            azimuth, elevation = (float(word) for word in asked["through"].split(","))
        except ValueError:
            raise InputError(
                [f"--through = {asked['through']!r}: must be two angles such as 20,0 (azimuth, elevation, deg)"]
            ) from None
        scan["through_deg"] = (azimuth, elevation)
    if not scan.keys() & {"theta_deg", "azimuth_deg", "great_circles_deg", "directions"}:
        # The habit: one cut over the front.
        if "phi_deg" not in scan:
            raise InputError(
                ["cut: no directions: give --phi (with --theta), --az with --el, --circles, or --directions (deg)"]
            )
        scan["theta_deg"] = "-90:90:1"
    return scan
