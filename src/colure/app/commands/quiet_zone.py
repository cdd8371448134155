"""`colure quiet-zone`: how good a quiet zone is, from field probing."""

from __future__ import annotations

import math
from pathlib import Path
from typing import TYPE_CHECKING

import click

from colure.app.commands.numbers import FiniteRange
from colure.app.terminal.say import say
from colure.model.strict_json import json_text

if TYPE_CHECKING:
    from colure.analysis.stray.quiet_zone import Probed, Spread


@click.command(name="quiet-zone")
@click.argument("table", type=click.Path(path_type=Path))
@click.option("--radius-mm", type=FiniteRange(1.0, 1e5), help="Of the zone, for a table of places; the farthest place by default.")  # fmt: skip
@click.option("--plot", type=click.Path(path_type=Path), help="Draw the ripple of every line to this file (.svg, .pdf or .png).")  # fmt: skip
@click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of words.")
def quiet_zone(table: Path, radius_mm: float | None, plot: Path | None, as_json: bool) -> None:
    """Tell ripple, reflectivity and arriving waves of a quiet zone from field probing, or a figure's spread over places.

    TABLE (.csv) holds lines: frequency_hz,position_mm,level_db and optionally line, phase_deg, direct_deg (angle between line
    and direct wave, 90 by default), pattern_db (the probing antenna's level towards the source: its aspect), noise_db. Or it
    holds places: frequency_hz,x_mm,y_mm,z_mm,value_db, such as the TRP of one antenna at the seven reference positions.

    \b
    Example: colure quiet-zone rail.csv --plot ripple.pdf
    """
    from colure.analysis.stray.quiet_zone import Probed
    from colure.app.services.quiet_zones import quiet_zone as read
    from colure.app.services.quiet_zones import quiet_zone_chart
    from colure.app.storage.folders import require_chart_target
    from colure.errors import InputError

    require_chart_target(plot)
    evaluations = read(table, radius_mm=radius_mm)
    lines = [one for one in evaluations if isinstance(one, Probed)]
    if plot is not None:
        if not lines:
            raise InputError([f"--plot = {plot}: {table.name} holds places, no lines; there is no ripple to draw"])
        quiet_zone_chart(lines).savefig(plot, dpi=200)
    if as_json:
        say(json_text([_plain(one) for one in evaluations]))
        return
    for one in evaluations:
        say(_words(one) if isinstance(one, Probed) else _spread_words(one))


def _words(one: Probed) -> str:
    line = one.line
    interval = "" if math.isnan(one.upper_db) else f" (95 %: {_level(one.lower_db)} to {_level(one.upper_db)})"
    told = [
        f"{line.name}, {line.frequency_hz / 1e9:.6g} GHz: ripple {one.ripple_db:.3g} dB peak to peak about a taper of {one.taper_db:.2g} dB",
        f"  echoes as one wave {_level(one.reflectivity_db)}{interval}, as many {_level(one.rms_db)}, re the direct wave",
    ]
    if not math.isnan(one.tilt_deg):
        told.append(f"  phase front: {one.tilt_deg:+.1f} deg from end to end")
    for wave in one.waves:
        angles = " or ".join(f"{angle:.0f}" for angle in wave.angle_deg)
        told.append(f"  a wave at {angles} deg to the line, {_level(wave.level_db)}")
    return "\n".join([*told, *(f"  {caution}" for caution in one.cautions)])


def _level(level_db: float) -> str:
    return "nothing" if math.isinf(level_db) else f"{level_db:.1f} dB"


def _spread_words(one: Spread) -> str:
    lack = "; ".join(f"({1e3 * x:g}, {1e3 * y:g}, {1e3 * z:g}) mm" for x, y, z in one.lacking)
    return (
        f"{one.frequency_hz / 1e9:.6g} GHz: {one.count} places, mean {one.mean_db:.2f} dB, standard deviation {one.deviation_db:.3f} dB "
        f"(95 %: {one.lower_db:.3f} to {one.upper_db:.3f}), farthest from the mean {one.largest_db:.3f} dB"
        + (f"\n  reference positions without a value: {lack}" if lack else "")
    )


def _plain(one: Probed | Spread) -> dict[str, object]:
    """Return a result for JSON: null where there is no number."""
    from colure.analysis.stray.quiet_zone import Probed

    if not isinstance(one, Probed):
        return {**one.__dict__, "lacking_m": [list(place) for place in one.lacking], "lacking": len(one.lacking)}
    content: dict[str, object] = {
        "line": one.line.name, "frequency_hz": one.line.frequency_hz, "ripple_db": one.ripple_db,
        "reflectivity_db": one.reflectivity_db, "lower_db": one.lower_db, "upper_db": one.upper_db,
        "rms_db": one.rms_db,
        "taper_db": one.taper_db, "tilt_deg": one.tilt_deg,
    }  # fmt: skip
    out: dict[str, object] = {
        k: None if isinstance(v, float) and not math.isfinite(v) else v for k, v in content.items()
    }
    out["waves"] = [{"angle_deg": list(wave.angle_deg), "level_db": wave.level_db} for wave in one.waves]
    return {**out, "cautions": list(one.cautions)}
