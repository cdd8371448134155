"""`colure pattern`: a run's pattern in any of the trade's coordinates and polarizations."""

from __future__ import annotations

from pathlib import Path

import click

from colure.app.commands.as_measured import campaign_told
from colure.app.commands.numbers import FiniteRange
from colure.app.terminal.say import say
from colure.model.strict_json import json_text

COORDINATES = ("theta-phi", "az-el", "alpha-epsilon", "u-v")
BASES = ("theta-phi", "ludwig-2-az-over-el", "ludwig-2-el-over-az", "ludwig-3", "circular")


@click.command()
@click.argument("folder", type=click.Path(path_type=Path))
@click.argument("target", type=click.Path(path_type=Path))
@click.option("--run", "run_name", default="first", show_default=True, help="Name of the run.")
@click.option("--state", default=None, help="State of a device that has several; the first by default.")
@click.option("--coordinates", type=click.Choice(COORDINATES), default="theta-phi", show_default=True)
@click.option("--basis", type=click.Choice(BASES), default="ludwig-3", show_default=True)
@click.option("--boresight", default="device", show_default=True, help="device, peak, or AZ,EL in degrees.")
@click.option(
    "--origin-mm",
    default="crossing",
    show_default=True,
    help="Phase reference: crossing, phase-centre, or X,Y,Z in mm of the device frame.",
)
@click.option("--step-deg", type=FiniteRange(0.1, 45.0), default=2.0, show_default=True)
@click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of words.")
def pattern(
    folder: Path,
    target: Path,
    run_name: str,
    state: str | None,
    coordinates: str,
    basis: str,
    boresight: str,
    origin_mm: str,
    step_deg: float,
    as_json: bool,
) -> None:
    """Write a run's pattern as CSV in a chosen frame, coordinates and polarization basis.

    Prints the formulas that the columns follow. Directions outside the measured region are left out.

    \b
    Example: colure pattern my-campaign cut.csv --coordinates az-el --basis ludwig-3 --boresight peak
    """
    from colure.app import services
    from colure.app.storage.folders import run_folder

    run = run_folder(folder, run_name)
    words = services.write_view(
        campaign_told(folder, run),
        run.state(state),
        target,
        coordinates=coordinates,
        basis=basis,
        boresight=boresight,
        origin=origin_mm,
        step_deg=step_deg,
    )
    say(json_text({"file": str(target), "formulas": words}) if as_json else "\n".join([*words, f"wrote {target}"]))
