"""A table of power without phase: its figures, cuts and pictures."""

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
    from colure.analysis.pipeline.power_levels import PowerSphere
    from colure.analysis.pipeline.power_tables import TableErrors
    from colure.analysis.uncertainty.level_cuts import LevelCut
    from colure.geometry.conventions import FloatArray
    from colure.report.drawing import OnAxes, Panels

#: Pictures that need no phase and no polarization.
KINDS = ("cuts", "map", "solid", "frequency")
SCALES = {"gain": ("gain", "dBi"), "eirp": ("EIRP", "dBm"), "relative": ("power", "dB, relative")}
PLANES_DEG = (0.0, 90.0)


def is_power_file(path: Path) -> bool:
    """Tell whether a file is a table of power levels."""
    if path.suffix.lower() != ".csv" or not path.is_file():
        return False
    source = read_text_table(path)
    header = [cell.strip() for cell in source.text.split("\n", 1)[0].split(source.separator)]
    return level_columns(header) is not None


def open_power(path: Path, *, slant_deg: float = 0.0) -> PowerPattern:
    """Open a table of power; raises `InputError` naming what is wrong in it."""
    return PowerPattern(path.stem, read_power(path), slant_deg=slant_deg)


class PowerPattern:
    """A table of power and what can be read from it without phase.

    Parameters
    ----------
    slant_deg
        Declared direction of the co-polar vector, degrees from x towards y: it names the E plane, which power does not tell.
    """

    def __init__(self, name: str, table: PowerTable, *, slant_deg: float = 0.0) -> None:
        self.name, self.table = name, table
        self.slant = float(np.deg2rad(slant_deg))

    @property
    def frequency_hz(self) -> FloatArray:
        """Frequencies (frequency,)."""
        return self.table.frequency_hz

    @property
    def scale(self) -> str:
        """What the levels are: gain, EIRP or power."""
        return SCALES[self.table.quantity][0]

    @property
    def sphere(self) -> PowerSphere:
        """The levels on their grid."""
        from colure.analysis.pipeline.power_levels import PowerSphere

        t = self.table
        return PowerSphere(
            frequency_hz=t.frequency_hz,
            theta=t.theta,
            phi=t.phi,
            gain=t.power,
            noise_db=float("nan"),
            drift_db=float("nan"),
        )

    @property
    def errors(self) -> TableErrors | None:
        """What the table states of its levels; None where it states nothing."""
        from colure.analysis.pipeline.power_tables import TableErrors

        return TableErrors(self.table.common_db, self.table.scatter_db) if self.table.states_errors else None

    def evaluate(self, evaluation: Evaluation | None = None) -> Figures:
        """Read every figure that power alone gives; with intervals where the table states its errors."""
        from colure.analysis.pipeline.power_tables import figures_of_power

        try:
            return Figures(figures_of_power(self.sphere, evaluation or Evaluation(), self.table.quantity, self.errors))
        except ValueError as error:
            raise InputError([f"{self.name}: {error}"]) from None

    def cuts(self, planes_deg: tuple[float, ...]) -> dict[float, list[LevelCut]]:
        """Return cuts of total power through the peak by frequency in Hz, in planes in degrees from the declared E plane."""
        from colure.analysis.pipeline.power_tables import power_cuts

        try:
            return power_cuts(self.sphere, planes_deg, slant=self.slant, errors=self.errors)
        except ValueError as error:
            raise InputError([f"{self.name}: {error}"]) from None

    def plot(self, kind: str = "cuts", *, frequency_ghz: float | None = None, ax: OnAxes = None) -> Panels:
        """Draw the power as cuts, map, solid or over frequency; returns the axes, `ax` or those of a new figure.

        Raises
        ------
        InputError
            For pictures that need phase or polarization, or if `ax` are not as many axes as the picture has panels.
        """
        from colure.report import charts
        from colure.report.power_charts import cuts_of_power

        if kind not in KINDS:
            raise InputError([f"kind = {kind!r}: of power without phase must be one of {', '.join(KINDS)}"])
        t = self.table
        index = index_of(t.frequency_hz, frequency_ghz)
        if kind == "frequency":
            return self._over_frequency(ax)
        if kind == "cuts":
            planes = self.cuts(PLANES_DEG)[float(t.frequency_hz[index])]
            drawn = cuts_of_power(dict(zip(("E", "H"), planes, strict=True)), banded=t.states_errors, ax=ax)
            return charts.renamed(drawn, *SCALES[t.quantity])
        size = np.sqrt(t.power[index])
        field = np.stack([size, np.zeros_like(size)]).astype(complex)
        draw = charts.sphere_map if kind == "map" else charts.solid
        return charts.renamed(
            draw(theta_deg=np.rad2deg(t.theta), phi_deg=np.rad2deg(t.phi), field=field, ax=ax), *SCALES[t.quantity]
        )

    def _over_frequency(self, ax: OnAxes) -> Panels:
        if self.frequency_hz.size < 2:
            raise InputError([f"{self.name}: holds 1 frequency; a curve over frequency needs 2"])
        figures = self.evaluate()
        names = [n for n in ("gain_dbi", "eirp_dbm", "directivity_dbi") if any(f.name == n for f in figures.at())]
        if not names:
            raise InputError([f"{self.name}: relative power of a part of the sphere has no figure over frequency"])
        return figures.plot_over_frequency(*names, ax=ax)

    def __repr__(self) -> str:
        t = self.table
        return f"Power {self.name}: {t.frequency_hz.size} frequencies, {t.theta.size} rings x {t.phi.size} columns, {t.quantity}, no phase"
