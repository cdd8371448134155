"""`colure elements`: what every element of an array radiates."""

from __future__ import annotations

import math
from pathlib import Path
from typing import TYPE_CHECKING

import click

from colure.app.commands.numbers import FINITE, FiniteRange
from colure.app.terminal.say import say
from colure.model.strict_json import json_text

if TYPE_CHECKING:
    from colure.model.device import Elements

#: A fit that leaves more than this of the field is none, dB.
UNEXPLAINED_DB = -6.0


@click.command()
@click.argument("source", type=click.Path(path_type=Path))
@click.option("--rows", type=click.IntRange(1, 200), help="Elements along y; device.toml says it for a run.")
@click.option("--columns", type=click.IntRange(1, 200), help="Elements along x.")
@click.option("--pitch-mm", type=FiniteRange(0.01, 10000.0), help="Distance between two elements.")
@click.option("--pattern", type=click.Choice(["estimated", "panel"]), default="estimated", show_default=True,
              help="Pattern of one element: from the data, the same for all; or (1 + cos theta)/2.")  # fmt: skip
@click.option("--centre-mm", nargs=3, type=FINITE, help="Centre of the elements, x y z from the origin of the field.")
@click.option("--frequency-ghz", type=FINITE, help="One of the frequencies; mid-band by default.")
@click.option("--slant-deg", type=FiniteRange(-180.0, 180.0), help="Co-polar direction of a file's field.")
@click.option("--run", "run_name", default="first", show_default=True, help="Name of the run of a campaign folder.")
@click.option("--state", default=None, help="State of a device that has several; the first by default.")
@click.option("--plot", type=click.Path(path_type=Path), help="Draw the elements to this file (.svg, .pdf or .png).")
@click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of a table.")
def elements(
    source: Path,
    rows: int | None,
    columns: int | None,
    pitch_mm: float | None,
    pattern: str,
    centre_mm: tuple[float, float, float] | None,
    frequency_ghz: float | None,
    slant_deg: float | None,
    run_name: str,
    state: str | None,
    plot: Path | None,
    as_json: bool,
) -> None:
    """Read from a far field what every element of an array radiates: level, phase, and the floor below which neither is known.

    SOURCE is a far-field file (.nc, .csv) or a campaign folder. Elements lie on a grid on z = const about --centre-mm.
    Rows count from -y, columns from -x, from 0.

    \b
    Examples:
      colure elements far.nc --rows 4 --columns 4 --pitch-mm 6.213
      colure elements my-campaign --run first --plot elements.png
    """
    from colure.app.services.elements import elements_of, levels_db, phases_deg
    from colure.app.storage.folders import require_chart_target
    from colure.errors import InputError

    require_chart_target(plot)
    face, frequency = elements_of(
        source, declared_elements(rows, columns, pitch_mm, pattern), centre_mm=centre_mm or None, run_name=run_name, state=state,
        slant_deg=slant_deg, frequency_ghz=frequency_ghz,
    )  # fmt: skip
    if face.residual_db > UNEXPLAINED_DB:
        raise InputError(
            [
                f"elements: {rows} x {columns} at {pitch_mm} mm leave {face.residual_db:.1f} dB of the field unexplained, must be at most "
                f"{UNEXPLAINED_DB:g} dB: rows and columns exchanged, another pitch, or a centre elsewhere?"
            ]
        )
    level, phase = levels_db(face), phases_deg(face)
    if plot is not None:
        from colure.report.charts import face_picture

        face_picture(face).savefig(plot, dpi=200)
    if as_json:
        told = [[None if math.isnan(v) else round(float(v), 2) for v in row] for row in phase]
        say(json_text({
            "frequency_hz": frequency, "level_db": level.round(2).tolist(), "phase_deg": told, "floor_db": face.floor_db,
            "residual_db": face.residual_db, "suspects": [one.__dict__ for one in face.suspects],
        }))  # fmt: skip
        return
    say(f"Elements at {frequency / 1e9:.6g} GHz: level / dB of the strongest, phase / deg about the mean; rows from -y")
    for row, (levels, phases) in enumerate(zip(level, phase, strict=True)):
        cells = (
            f"below {face.floor_db:.0f}       " if v <= face.floor_db else f"{v:7.2f} {p:+7.1f}"
            for v, p in zip(levels, phases, strict=True)
        )
        say(f"row {row}: " + "  ".join(cells))
    say(
        f"Elements below {face.floor_db:.1f} dB cannot be told from nothing; residual of the fit {face.residual_db:.1f} dB rms."
    )
    for one in face.suspects:
        say(f"row {one.row}, column {one.column}: {one.verdict} ({one.words})")


def declared_elements(rows: int | None, columns: int | None, pitch_mm: float | None, pattern: str) -> Elements | None:
    """Return the elements that were declared on the command line, or None."""
    from colure.errors import InputError
    from colure.model.device import Elements

    given = (rows, columns, pitch_mm)
    if rows is not None and columns is not None and pitch_mm is not None:
        return Elements(
            rows=rows, columns=columns, pitch_mm=pitch_mm, pattern="panel" if pattern == "panel" else "estimated"
        )
    if any(one is not None for one in given):
        raise InputError(["--rows, --columns, --pitch-mm: all three or none (elements, elements, mm)"])
    return None
