"""`colure verdict`: a run against a specification."""

from __future__ import annotations

import json
import sys
from pathlib import Path

import click


@click.command()
@click.argument("folder", type=click.Path(path_type=Path))
@click.argument("specification", type=click.Path(path_type=Path))
@click.option("--run", "run_name", default="first", show_default=True, help="Name of the run.")
@click.option("--state", default=None, help="State of a device that has several; the first by default.")
@click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of a table.")
def verdict(folder: Path, specification: Path, run_name: str, state: str | None, as_json: bool) -> None:
    """Hold a run against limits and masks: pass, fail, or not decidable at this uncertainty.

    SPECIFICATION is a TOML file with [[limits]] (figure, at_least, at_most, band_ghz) and [[masks]] (plane, component,
    a table of points or a published formula by name, allowed exceedances). With decision = "guard-band" a pass
    needs the whole interval on the good side; with "simple" the value alone decides. Exit code 1 unless all pass.

    \b
    Example: colure verdict my-campaign limits.toml --run first
    """
    from colure.app import screens, service
    from colure.app.judging import judge_run
    from colure.model.campaign import Campaign

    found = judge_run(Campaign.load(folder), service.run_folder(folder, run_name), specification, state=state)
    if as_json:
        click.echo(json.dumps({"outcome": found.outcome, "verdicts": [one.__dict__ for one in found.verdicts]}))
    else:
        screens.show_verdicts(found)
    sys.exit(0 if found.outcome == "pass" else 1)
