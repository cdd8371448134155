"""`colure grid-study`: how good grids of directions are for a device, by Monte Carlo over its orientations."""

from __future__ import annotations

from pathlib import Path

import click

from colure.app.terminal.say import say
from colure.model.strict_json import json_text


@click.command(name="grid-study")
@click.argument("source", type=click.Path(path_type=Path))
@click.option("--run", "run_name", default="first", show_default=True, help="Name of the run of a campaign folder.")
@click.option("--steps-deg", default="30,15", show_default=True, help="Constant steps, divisors of 180 deg.")
@click.option("--counts", default="35,135,266", show_default=True, help="Directions of constant density.")
@click.option("--orientations", type=click.IntRange(10, 20_000), default=300, show_default=True)
@click.option("--percent", default="50", show_default=True, help="Levels of the coverage to judge, percent.")
@click.option("--seed", type=int, default=1, show_default=True)
@click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of a table.")
def grid_study(
    source: Path, run_name: str, steps_deg: str, counts: str, orientations: int, percent: str, seed: int, as_json: bool
) -> None:
    """Study grids of directions for a device: errors of radiated power, coverage and peak over random orientations.

    SOURCE is a far-field file (.nc, .csv) of the whole sphere or a campaign folder. Constant steps are judged with the
    sin-theta rule and with exact weights; constant density as charged particles and as a Fibonacci lattice.

    \b
    Example: colure grid-study simulated.csv --steps-deg 30,15 --counts 135,266
    """
    from colure.app.services.grid_study import grid_errors
    from colure.app.services.pattern_files import waves_of

    steps, some = _numbers(steps_deg, "--steps-deg"), _numbers(counts, "--counts")
    grids = grid_errors(
        waves_of(source, run_name=run_name), steps_deg=steps, counts=[round(n) for n in some],
        orientations=orientations, percent=tuple(_numbers(percent, "--percent")), seed=seed,
    )  # fmt: skip
    if as_json:
        say(json_text([one.__dict__ for one in grids]))
        return
    say(f"{orientations} orientations, errors in dB: mean and standard deviation")
    say(f"{'grid':42s} {'points':>6s} {'TRP':>15s} {'worst':>6s} {'coverage':>15s} {'peak mean':>9s} {'worst':>6s}")
    for one in grids:
        first = next(iter(one.level_std))
        say(
            f"{one.name:42s} {one.count:6d} {one.trp_mean:+7.3f} {one.trp_std:7.3f} {one.trp_worst:6.2f} "
            f"{one.level_mean[first]:+7.3f} {one.level_std[first]:7.3f} {one.peak_mean:9.2f} {one.peak_worst:6.2f}"
        )


def _numbers(text: str, name: str) -> list[float]:
    """Return the numbers of a comma-separated list; raises `InputError` naming the option."""
    try:
        return [float(part) for part in text.split(",") if part.strip()]
    except ValueError:
        from colure.errors import InputError

        raise InputError([f"{name} = {text!r}: must be numbers with commas between them"]) from None
