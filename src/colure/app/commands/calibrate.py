"""`colure calibrate`: keep what a run's reference says of the range, for runs without a horn."""

from __future__ import annotations

from pathlib import Path

import click

from colure.app.terminal.say import say
from colure.model.strict_json import json_text


@click.command()
@click.argument("folder", type=click.Path(path_type=Path), default=Path())
@click.option("--run", "run_name", default="first", show_default=True, help="Run whose reference sweeps are used.")
@click.option("--to", "target", type=click.Path(path_type=Path), default=Path("range.json"), show_default=True,
              help="File beside chamber.toml; it is not overwritten.")  # fmt: skip
@click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of words.")
def calibrate(folder: Path, run_name: str, target: Path, as_json: bool) -> None:
    """Store the calibration of the range that a run's reference horn gave.

    Later runs use it with method = "stored", calibration = "range.json" and drift_db_day under [reference]: they need no horn.

    \b
    Example: colure calibrate my-campaign --run first
    """
    from colure.app.services.range_calibration import calibrate as keep
    from colure.app.storage.folders import run_folder
    from colure.model.campaign import Campaign

    campaign = Campaign.load(folder)
    path = folder / target
    content = keep(campaign, run_folder(folder, run_name), path)
    if as_json:
        say(json_text({"file": str(path), "calibrated_at": content["calibrated_at"],
                              "frequencies": len(content["frequency_hz"])}))  # fmt: skip
        return
    say(
        f"{path}: {len(content['frequency_hz'])} frequencies, measured {content['calibrated_at']}; valid for "
        f"{campaign.chamber.reference.valid_days:g} days unless valid_days says otherwise"
    )
