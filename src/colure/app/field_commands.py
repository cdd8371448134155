"""`colure process` and `colure convert`: records and field files into patterns."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import click


@click.command()
@click.argument("source", type=click.Path(path_type=Path), default=Path())
@click.argument("target", type=click.Path(path_type=Path), required=False)
@click.option("--run", "run_name", default="first", show_default=True, help="Name of the run.")
@click.option("--to", "destination", type=click.Choice(["far-field"]), help="What to make of a field file.")
@click.option("--order", type=click.IntRange(1, 2000), help="Order of the expansion; chosen from the data by default.")
@click.option(
    "--step-deg", type=click.FloatRange(0.05, 30.0), default=1.0, show_default=True, help="Grid of the result."
)
@click.option("--origin-m", type=str, help="x,y,z: phase reference of the result and centre of --keep-radius-m.")
@click.option("--keep-radius-m", type=click.FloatRange(1e-6, 1e3), help="Keep only waves from inside this sphere.")
@click.option("--state", "state_name", help="One state of a device that has several; all of them by default.")
@click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of tables.")
def process(
    source: Path,
    target: Path | None,
    run_name: str,
    destination: str | None,
    order: int | None,
    step_deg: float,
    origin_m: str | None,
    keep_radius_m: float | None,
    state_name: str | None,
    as_json: bool,
) -> None:
    """Turn a run's record, or a file of near fields, into a far-field pattern.

    Grids that cover the whole sphere take the fast path; anything else (scattered directions,
    a radius per point, part of the sphere) is fitted by least squares, and directions that the
    data say nothing about are marked in the result (`support`) and written as nan to CSV.

    \b
    Examples:
      colure process my-campaign --run first
      colure process near.nc far.nc --to far-field
      colure process near.nc far.nc --to far-field --origin-m 0,0,-0.03 --keep-radius-m 0.05
    """
    from colure.app import service
    from colure.app.converting import transform_file
    from colure.model.campaign import Campaign
    from colure.model.files import history
    from colure.model.loading import InputError

    if target is not None:
        if destination is None:
            raise InputError(["--to: missing: must be far-field for a field file"])
        place = None if origin_m is None else _point(origin_m)
        words = transform_file(
            source, target, order=order, step_deg=step_deg, origin_m=place, keep_radius_m=keep_radius_m
        )
        click.echo(
            json.dumps({"pattern": str(target), "steps": words})
            if as_json
            else "\n".join([*words, f"pattern: {target}"])
        )
        return
    run = service.run_folder(source, run_name)
    campaign, written = Campaign.load(source), []
    states: list[str | None] = [state_name] if state_name else [*service.states_of(run)] or [None]
    for state in states:
        steps = history(service.process(campaign, run, state=state).pattern)
        path = run.pattern if state is None else run.pattern_of(state)
        written.append({"pattern": str(path), "state": state, "steps": steps})
        if not as_json:
            _print_steps(steps)
            click.echo(f"pattern: {path}")
    if as_json:
        click.echo(json.dumps(written[0] if len(written) == 1 else written))


def _print_steps(steps: list[dict[str, Any]]) -> None:
    """Print the recipe's steps, and what a person must know about them."""
    for step in steps:
        p = step["parameters"]
        words = step["step"]
        if words == "assemble":
            used, planned = p["slices"]
            if used < planned:
                words += f": COARSE, {used} of {planned} slices; azimuthal orders above {used - 1} are lost"
            if p["flagged_points"]:
                words += f"; {p['flagged_points']} points carry flags of the analyzer"
        elif words == "on-the-fly places":
            words += f": lag {p['lag_deg']:+.4f} deg (standard uncertainty {p['lag_uncertainty_deg']:.4f} deg)"
        click.echo(words)


@click.command()
@click.argument("source", type=click.Path(path_type=Path))
@click.argument("target", type=click.Path(path_type=Path))
@click.option("--radius-m", type=click.FloatRange(1e-9, 1e9), help="Radius of the sphere, if the CSV has no radius_m.")
@click.option("--far-field", is_flag=True, help="The CSV holds a far field, exp(-jkr)/r removed.")
@click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of tables.")
def convert(source: Path, target: Path, radius_m: float | None, far_field: bool, as_json: bool) -> None:
    """Convert between tidy CSV and netCDF-4; the file endings say which way.

    The CSV has the header frequency_hz,theta_deg,phi_deg,e_theta_re,e_theta_im,e_phi_re,e_phi_im and
    optionally radius_m and weight; time factor exp(+jwt). A grid is recognized by itself.

    \b
    Examples:
      colure convert near.csv near.nc --radius-m 1.2
      colure convert far.nc far.csv
    """
    from colure.app.converting import convert_file

    words = convert_file(source, target, radius_m=radius_m, far_field=far_field)
    click.echo(json.dumps({"file": str(target), "found": words}) if as_json else f"{words}\nwrote {target}")


def _point(text: str) -> tuple[float, float, float]:
    """Read x,y,z in metres."""
    from colure.model.loading import InputError

    try:
        x, y, z = (float(part) for part in text.split(","))
    except ValueError:
        raise InputError([f"--origin-m = {text!r}: must be three numbers x,y,z from -100 to 100 m"]) from None
    if not all(-100.0 <= value <= 100.0 for value in (x, y, z)):
        raise InputError([f"--origin-m = {text!r}: must be three numbers x,y,z from -100 to 100 m"])
    return x, y, z
