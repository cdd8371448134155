"""The report's uncertainty budget: contributions of every figure, and one of them as the GUM tabulates it."""

from __future__ import annotations

import numpy as np

from colure.model.figure import BudgetRow, Figure
from colure.report import charts
from colure.report.document import Block, Cell, Paragraph, Ref, ReportSection, Table, anchor, chart
from colure.report.terms import NEAR_FIELD, OVER_THE_AIR, covered

GUM_HEADER = ("Term", "Type", "Distribution", "Half width", "Divisor", "Standard uncertainty", "Sensitivity",
              "Degrees of freedom", "Contribution", "Known from", "Basis")  # fmt: skip

#: Relative widths of these columns on paper: the words want most of the room.
GUM_SHARES = (1.7, 0.6, 1.5, 1.2, 1.0, 1.5, 1.4, 1.15, 1.6, 1.3, 2.8)


def budget_section(here: list[Figure], frequency: float) -> ReportSection:
    """Return the budget of the figures of one frequency, which all exist."""
    present = {row.group for row in here[0].budget}
    return ReportSection(
        "Uncertainty budget",
        (
            Paragraph(
                "Each error source is applied to the device's modes; the change of every figure is its contribution. "
                "Standard uncertainties add by root sum of squares (JCGM 100:2008). The half width holds 95 % of the joint "
                "distribution of all sources (JCGM 101:2008). The coverage factor k is half width over standard uncertainty. "
                "Side lobes, nulls and cross-polarization follow the distribution of a modulus; their intervals are lopsided. "
                "The file correlations.json holds the correlations of all figures."
            ),
            *contributions(here, frequency, "figures.json holds all"),
            Paragraph("Published lists of error terms against this budget:"),
            Table(("Near-field term", "Covered by"), tuple((a, covered(b, present)) for a, b in NEAR_FIELD), wide=True),
            Table(
                ("Over-the-air heading", "Covered by"),
                tuple((a, covered(b, present)) for a, b in OVER_THE_AIR),
                wide=True,
            ),
        ),
    )


def contributions(here: list[Figure], frequency: float, where: str) -> tuple[Block, ...]:
    """Return picture and tables of the budgets of figures of one frequency; `where` all rows are to be found."""
    terms = list(here[0].groups())
    header = ("Figure", *terms, "u", "k", "\u03bd eff", "interval")
    rows: list[tuple[Cell, ...]] = []
    for figure in here:
        by_term = figure.groups()
        combined = float(np.sqrt(sum(row.contribution**2 for row in figure.budget)))
        rows.append(
            (
                Ref(f"{figure.label} / {figure.unit}", anchor(figure.name)),
                *(small(by_term.get(t, 0.0)) for t in terms),
                small(combined),
                f"{figure.coverage_factor:.2f}",
                dof_text(figure.effective_dof),
                figure.interval_text(),
            )
        )
    return (
        chart(charts.budget_bars(here), f"What each interval is made of, {frequency / 1e9:.3f} GHz.", width_percent=72),
        Table(
            header,
            tuple(rows),
            caption="Contributions times k, in the figure's own unit.",
            shares=(3.2, *(1.0,) * len(terms), 1.0, 0.8, 0.9, 1.7),
            upright=True,
        ),
        Table(
            GUM_HEADER,
            tuple(_row(row) for row in here[0].budget),
            wide=True,
            shares=GUM_SHARES,
            caption=f"The budget of {here[0].label[0].lower()}{here[0].label[1:]} in {here[0].unit}, row by row; {where}.",
        ),
    )


def _row(row: BudgetRow) -> tuple[Cell, ...]:
    """Return one row as the GUM tabulates it."""

    def of(value: float | None, unit: str) -> str:
        return "" if value is None else f"{value:.3g}" + (f" {unit}" if unit not in ("", "1") else "")

    return (row.term, row.evaluation, row.distribution, of(row.size, row.unit), f"{row.divisor:.3g}", of(row.standard, row.unit),
            of(row.sensitivity, ""), dof_text(row.dof), small(row.contribution), row.kind, row.basis)  # fmt: skip


def dof_text(dof: float) -> str:
    """Return degrees of freedom as they are printed: beyond 100 they no longer matter."""
    return f"{dof:.0f}" if dof <= 100.0 else "> 100"


def small(value: float) -> str:
    """Return a contribution with two digits."""
    return "0" if value == 0.0 else f"{value:.2g}" if value >= 0.001 else "<0.001"
