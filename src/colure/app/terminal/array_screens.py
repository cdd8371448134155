"""Tables of an array's beams and elements."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

import numpy as np
from rich.table import Table

from colure.app.terminal.consoles import console

if TYPE_CHECKING:
    from colure.app.services.array_elements import CalibrationRow, Element
    from colure.app.services.synthesizing import SynthesizedBeam
    from colure.model.figure import Figure

#: Figures of a synthesized beam in the table, with their column's name; all of them are in the JSON.
COLUMNS = {"gain_dbi": "gain", "beam_azimuth_deg": "azimuth", "beam_elevation_deg": "elevation", "beamwidth_e_deg": "E width",
           "beamwidth_h_deg": "H width"}  # fmt: skip


def show_beams(beams: Sequence[SynthesizedBeam]) -> None:
    """Print peak, direction and widths of synthesized beams, each with its interval."""
    shown = [name for name in COLUMNS if any(f.name == name for f in beams[0].figures)]
    table = Table(title=f"Synthesized beams at {beams[0].figures[0].frequency_hz / 1e9:.3f} GHz (k = 2)", box=None,
                  title_justify="left", pad_edge=False)  # fmt: skip
    table.add_column("beam")
    for name in shown:
        table.add_column(f"{COLUMNS[name]} / {beams[0].figure(name).unit}", justify="right")
    for one in beams:
        table.add_row(one.name, *(_with_interval(one.figure(name)) for name in shown))
    console().print(table)


def _with_interval(figure: Figure) -> str:
    if figure.reason or np.isnan(figure.value):
        return "undefined"
    return f"{figure.value:.2f} \u00b1 {figure.expanded_uncertainty:.2f}"


def show_elements(elements: Sequence[Element]) -> None:
    """Print every element's peak, and the errors of its pattern below that peak."""
    table = Table(title="Embedded patterns; errors rms over all directions, below each element's own peak", box=None,
                  title_justify="left", pad_edge=False)  # fmt: skip
    for name in ("element", "peak / dBi", "azimuth", "elevation", "noise / dB", "commands / dB", "chamber / dB"):
        table.add_column(name, justify="right")
    for one in elements:
        errors = ("none" if level < -200.0 else f"{level:.1f}" for level in (one.noise_db, one.commands_db, one.chamber_db))  # fmt: skip
        table.add_row(str(one.number), f"{one.peak_dbi:.2f}", *(f"{angle:.1f}" for angle in one.toward_deg), *errors)
    console().print(table)


def show_calibration(rows: Sequence[CalibrationRow]) -> None:
    """Print the calibration: elements over all, then commands over what was told."""
    table = Table(title="Elements over their rms and about the phase of their sum; commands over what was told (k = 2)", box=None,
                  title_justify="left", pad_edge=False)  # fmt: skip
    for name in ("element", "command", "level / dB", "phase / deg", ""):
        table.add_column(name, justify="right" if name else "left")
    for one in rows:
        table.add_row(str(one.element), one.command, f"{one.level_db:.3f} \u00b1 {one.level_expanded_db:.3f}",
                      f"{one.phase_deg:.2f} \u00b1 {one.phase_expanded_deg:.2f}", one.remark)  # fmt: skip
    console().print(table)
