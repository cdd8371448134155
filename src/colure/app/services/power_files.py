"""A table of power without phase: its figures and its pictures."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from colure.app.services.figure_table import Figures
from colure.errors import InputError
from colure.model.evaluation import Evaluation
from colure.model.pattern import index_of
from colure.model.power_table import PowerTable, level_columns, read_power
from colure.model.tables import read_text_table

if TYPE_CHECKING:
    from colure.report.drawing import Drawing

#: Pictures that need no phase and no polarization.
KINDS = ("map", "solid")
SCALES = {"gain": ("gain", "dBi"), "eirp": ("EIRP", "dBm"), "relative": ("power", "dB, relative")}


def is_power_file(path: Path) -> bool:
    """Tell whether a file is a table of power levels."""
    if path.suffix.lower() != ".csv" or not path.is_file():
        return False
    source = read_text_table(path)
    header = [cell.strip() for cell in source.text.split("\n", 1)[0].split(source.separator)]
    return level_columns(header) is not None


class PowerPattern:
    """A table of power and what can be read from it without phase."""

    def __init__(self, path: Path) -> None:
        self.name, self.table = path.stem, read_power(path)

    def evaluate(self, evaluation: Evaluation | None = None) -> Figures:
        """Read every figure that power alone gives; no intervals, because a table states no errors."""
        from colure.analysis.pipeline.power_only import PowerSphere, figures_of_power

        t = self.table
        sphere = PowerSphere(t.frequency_hz, t.theta, t.phi, t.power, float("nan"), float("nan"))
        try:
            return Figures(figures_of_power(sphere, evaluation or Evaluation(), t.quantity))
        except ValueError as error:
            raise InputError([f"{self.name}: {error}"]) from None

    def plot(self, kind: str = "map", *, frequency_ghz: float | None = None) -> Drawing:
        """Draw the power as map or solid; raises `InputError` for pictures that need phase or polarization."""
        from colure.report import charts

        if kind not in KINDS:
            raise InputError([f"kind = {kind!r}: of power without phase must be one of {', '.join(KINDS)}"])
        t: PowerTable = self.table
        size = np.sqrt(t.power[index_of(t.frequency_hz, frequency_ghz)])
        field = np.stack([size, np.zeros_like(size)]).astype(complex)
        draw = charts.sphere_map if kind == "map" else charts.solid
        return charts.renamed(draw(np.rad2deg(t.theta), np.rad2deg(t.phi), field), *SCALES[t.quantity])

    def __repr__(self) -> str:
        t = self.table
        return f"Power {self.name}: {t.frequency_hz.size} frequencies, {t.theta.size} rings x {t.phi.size} columns, {t.quantity}, no phase"
