"""`colure coverage`: spherical coverage of many states."""

from __future__ import annotations

import math
from pathlib import Path

import click

from colure.app.commands.as_measured import own_run
from colure.app.terminal.say import say
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
    from colure.app.storage.folders import require_chart_target
    from colure.app.terminal import screens

    require_chart_target(plot)
    own = own_run(folder, run_name)
    state_coverage = coverage_over_states(*own) if weights is None else coverage_over_codebook(*own, weights)
    if plot is not None:
        from colure.report.maps import coverage_curve

        coverage_curve(state_coverage.power, state_coverage.theta, state_coverage.best_power).savefig(plot, dpi=200)
    if as_json:
        say(json_text({
            "frequency_hz": state_coverage.frequency_hz, "percent": list(state_coverage.percent),
            "unit": state_coverage.unit, "expanded_db": state_coverage.expanded_db,
            "best": state_coverage.best.tolist(), "states": {name: row.tolist() for name,
            row in state_coverage.states.items()}, "peak": state_coverage.peak,
            "toward_deg": {name: [None if math.isnan(v) else v for v in both] for name,
            both in state_coverage.toward.items()},
            "strongest": state_coverage.strongest,
            "untold_percent": list(state_coverage.untold),
        }))  # fmt: skip
    else:
        screens.show_coverage(state_coverage)
