"""How good a quiet zone is, from a table of field probing."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from colure.errors import InputError

if TYPE_CHECKING:
    from colure.analysis.stray.quiet_zone import Probed, Spread
    from colure.report.drawing import Drawing


def quiet_zone(path: Path, *, radius_mm: float | None = None) -> list[Probed] | list[Spread]:
    """Read every line of a table, or the spread of a figure over its places.

    Parameters
    ----------
    radius_mm
        Of the zone, for a table of places; the farthest place if None.

    Raises
    ------
    InputError
        If the table is malformed, or a line has too few samples.
    """
    from colure.analysis.stray.quiet_zone import probed, spread_of
    from colure.model.field_probing import ProbedLine, ProbedPlaces, read_probing

    lines: list[Probed] = []
    places: list[Spread] = []
    try:
        for one in read_probing(path):
            if isinstance(one, ProbedLine):
                lines.append(probed(one))
            elif isinstance(one, ProbedPlaces):
                farthest = float(abs(one.place_m).max()) if radius_mm is None else 1e-3 * radius_mm
                places.append(spread_of(one.frequency_hz, one.place_m, list(one.value_db), radius_m=farthest))
    except ValueError as error:
        raise InputError([f"{path.name}: {error}"]) from None
    return lines or places


def quiet_zone_chart(lines: list[Probed]) -> Drawing:
    """Draw the ripple of every line about the direct wave's taper."""
    from colure.report.quiet_zone_charts import ripple_chart

    return ripple_chart(lines)
