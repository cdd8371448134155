"""A power-only run as a table of its levels: everything that a table of power can do, with the run's own errors."""

from __future__ import annotations

import csv
from typing import TYPE_CHECKING

import numpy as np

from colure.app.services.figure_table import Figures
from colure.app.services.power_files import PowerPattern
from colure.app.services.processing import opened
from colure.app.services.reference import probe_of, reference_of
from colure.errors import InputError
from colure.geometry.conventions import power_db
from colure.model.campaign import Campaign
from colure.model.power_table import ERRORS, PLACES, PowerTable
from colure.model.whole import whole_file

if TYPE_CHECKING:
    from pathlib import Path

    from colure.analysis.findings.finding import Finding
    from colure.app.storage.folders import RunFolder
    from colure.model.evaluation import Evaluation

#: Column of the levels in the table that a run is exported as.
LEVEL_COLUMN = {"gain": "gain_dbi", "relative": "power_db"}
#: Levels below this under 1 are written as this, dB: a table holds no minus infinity.
LEAST_DB = -300.0


class PowerRun(PowerPattern):
    """The levels that a power-only run measured, total of both polarizations, and what they may be wrong by.

    Raises
    ------
    InputError
        If the record lacks directions or polarizations.
    """

    def __init__(self, campaign: Campaign, run: RunFolder) -> None:
        from colure.analysis.pipeline.power_budget import level_errors
        from colure.analysis.pipeline.power_only import power_sphere

        chamber, record = campaign.chamber, opened(run)
        try:
            frequency = record["frequency"].values
            self._reference = reference_of(campaign, frequency)
            sphere = power_sphere(
                record,
                chamber,
                self._reference,
                offset_mm=campaign.device.offset_mm,
                probe=probe_of(campaign, frequency),
            )
        except ValueError as error:
            raise InputError([str(error)]) from None
        common, scatter = level_errors(sphere, chamber, campaign.device)
        quantity = "gain" if chamber.reference.absolute else "relative"
        table = PowerTable(sphere.frequency_hz, sphere.theta, sphere.phi, sphere.gain, quantity, common, scatter)
        super().__init__(run.path.name, table, slant_deg=campaign.device.slant_deg)
        self._measured, self._campaign, self._scatter = sphere, campaign, scatter

    def evaluate(self, evaluation: Evaluation | None = None, *, index: int | None = None) -> Figures:
        """Read the run's figures, each with its budget; `evaluation` counts instead of evaluation.toml where it is given.

        index
            Of the one frequency that is asked for; all of them if None.
        """
        from colure.analysis.findings.power_fit import power_fit_findings
        from colure.analysis.findings.sanity import marked, power_sanity
        from colure.analysis.pipeline.power_only import power_figures

        one, measured = self._campaign, self._measured if index is None else self._measured.only(index)
        try:
            figures = power_figures(measured, one.chamber, one.device, evaluation or one.evaluation())
            against = [
                *power_sanity(figures, one.device), *power_fit_findings(measured, one.device), *self._of_reference(),
            ]  # fmt: skip
            return Figures(marked(figures, against))
        except ValueError as error:
            raise InputError([str(error)]) from None

    def _of_reference(self) -> list[Finding]:
        """Return what contradicts the gain that a table or a stored calibration gives the reference."""
        from colure.analysis.findings.reference_level import horn_findings

        known, frequency = self._reference, self._measured.frequency_hz
        if known is not None and known.stored is not None:
            return list(horn_findings(known.stored.reference_gain_dbi, frequency, self._campaign.chamber))
        if known is not None and known.gain_dbi is not None:
            return list(horn_findings(known.gain_dbi, frequency, self._campaign.chamber, near=False))
        return []

    def write(self, target: Path) -> str:
        """Write the levels as a table that every command for files reads, with their errors; return in words what it holds."""
        t = self.table
        size = t.power.shape
        f, theta, phi = np.meshgrid(t.frequency_hz, np.rad2deg(t.theta), np.rad2deg(t.phi), indexing="ij")
        level, common = power_db(t.power, least=10.0 ** (0.1 * LEAST_DB)), np.full(size, t.common_db)
        rows = np.stack([f, theta, phi, level, common, self._scatter], axis=-1)
        with whole_file(target) as out:
            writer = csv.writer(out)
            writer.writerow([*PLACES, LEVEL_COLUMN[t.quantity], *ERRORS])
            writer.writerows([f"{x:.10g}" for x in row] for row in rows.reshape(-1, 6))
        unit = "dBi" if t.quantity == "gain" else "dB on any scale"
        return f"total {self.scale} of {f.size} directions and frequencies in {unit}, and what each may be wrong by"
