"""`colure look`: figures and a picture of a run while it is measured, or after any stop."""

from __future__ import annotations

from pathlib import Path

import click

from colure.app.terminal.say import say
from colure.model.strict_json import json_text


@click.command()
@click.argument("folder", type=click.Path(path_type=Path), default=Path())
@click.option("--run", "run_name", default="first", show_default=True, help="Name of the run.")
@click.option(
    "--picture",
    type=click.Path(path_type=Path),
    help="Draw what is there (.png, .svg or .pdf); an earlier look is drawn over.",
)
@click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of a table.")
def look(folder: Path, run_name: str, picture: Path | None, as_json: bool) -> None:
    """Read what is there of a run that is being measured, or that was stopped.

    As soon as an even set of slices is complete, that is the pattern with its intervals. Before, the slices are read as cuts
    at the range length. Nothing of the run is written or held up.

    \b
    Examples:
      colure look my-campaign
      colure look my-campaign --run first --picture look.png
    """
    from colure.app.services.looking import look as look_at
    from colure.app.services.plan_words import duration_text
    from colure.app.storage.folders import run_folder
    from colure.app.terminal import screens
    from colure.errors import InputError
    from colure.model.campaign import Campaign

    if picture is not None and picture.suffix.lower() not in (".png", ".svg", ".pdf"):
        raise InputError([f"--picture = {picture}: must end in one of .png, .svg, .pdf"])
    campaign = Campaign.load(folder)
    snapshot = look_at(campaign, run_folder(folder, run_name))
    if picture is not None and snapshot.drawing is not None:
        snapshot.drawing.figure.savefig(picture, dpi=200)
    if as_json:
        said = {
            name: getattr(snapshot, name)
            for name in ("measured", "total", "left_s", "level_db", "strongest_db", "angles_deg", "how")
        }
        say(json_text({**said, "figures": [figure.as_dict() for figure in snapshot.figures]}))
        return
    left = "complete" if snapshot.left_s is None else f"about {duration_text(snapshot.left_s)} left at the pace so far"
    where = ", ".join(f"{name} {value:.2f}" for name, value in snapshot.angles_deg.items())
    say(f"{snapshot.measured} of {snapshot.total} points, {left}")
    say(f"newest sweep {snapshot.level_db:.1f} dB (strongest {snapshot.strongest_db:.1f}) at {where} deg")
    say(f"read from: {snapshot.how}")
    if snapshot.figures:
        screens.show_figures(snapshot.figures, campaign.goal)
    if picture is not None:
        say(f"wrote {picture}" if snapshot.drawing is not None else "no picture: there is nothing to draw yet")
