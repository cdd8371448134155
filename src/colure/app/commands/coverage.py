"""`colure coverage`: spherical coverage of many states."""

from __future__ import annotations

import math
from pathlib import Path

import click

from colure.model.strict_json import json_text


@click.command()
@click.argument("folder", type=click.Path(path_type=Path))
@click.option("--run", "run_name", default="first", show_default=True, help="Name of the run.")
@click.option(
    "--plot", type=click.Path(path_type=Path), help="Draw the coverage curves to this file (.svg, .pdf or .png)."
)
@click.option("--weights", type=click.Path(path_type=Path),
              help="CSV of beams that are synthesized from the run's states, instead of the states.")  # fmt: skip
@click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of a table.")
def coverage(folder: Path, run_name: str, plot: Path | None, weights: Path | None, as_json: bool) -> None:
    """Read the spherical coverage of every state of a run, and of the best of all, weighted with solid angle.

    Percentiles come from coverage_percent in evaluation.toml; with transmit_power_dbm there, levels are EIRP.

    \b
    Examples:
      colure coverage my-campaign --run first
      colure coverage my-array --weights codebook.csv
    """
    from colure.app.services.coverage import coverage_over_codebook, coverage_over_states
    from colure.app.storage.folders import require_chart_target, run_folder
    from colure.app.terminal import screens
    from colure.model.campaign import Campaign

    require_chart_target(plot)
    own = Campaign.load(folder), run_folder(folder, run_name)
    found = coverage_over_states(*own) if weights is None else coverage_over_codebook(*own, weights)
    if plot is not None:
        from colure.report.maps import coverage_curve

        coverage_curve(found.power, found.theta, found.best_power).savefig(plot, dpi=200)
    if as_json:
        click.echo(json_text({
            "frequency_hz": found.frequency_hz, "percent": list(found.percent), "unit": found.unit, "expanded_db": found.expanded_db,
            "best": found.best.tolist(), "states": {name: row.tolist() for name, row in found.states.items()}, "peak": found.peak,
            "toward_deg": {name: [None if math.isnan(v) else v for v in both] for name, both in found.toward.items()},
            "strongest": found.strongest,
            "untold_percent": list(found.untold),
        }))  # fmt: skip
    else:
        screens.show_coverage(found)
