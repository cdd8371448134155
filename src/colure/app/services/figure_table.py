"""Figures at all frequencies as a table, for notebooks and files."""

from __future__ import annotations

import html
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, overload

from colure.app.storage.folders import require_free
from colure.model.figure import Figure

if TYPE_CHECKING:
    import pandas
    from matplotlib.axes import Axes

    from colure.report.drawing import OnAxes, Panels

#: Figures that are drawn where none is named.
MAIN = ("gain_dbi", "beamwidth_e_deg", "side_lobe_e_db", "xpd_db")
#: Lines that a repr shows, and characters of each.
FEW, WIDTH = 5, 160


def few_lines(lines: Sequence[str]) -> list[str]:
    """Return the first lines, shortened, and how many more `print` shows."""
    shown = [line if len(line) <= WIDTH else f"{line[: WIDTH - 3]}..." for line in lines[:FEW]]
    return [*shown, f"... {len(lines) - FEW} more: print() shows them"] if len(lines) > FEW else shown


def html_table(head: Sequence[str], rows: Sequence[Sequence[str]], caption: str) -> str:
    """Return an HTML table; every text is escaped."""

    def cells(kind: str, row: Sequence[str]) -> str:
        return "".join(f'<{kind} style="text-align:left">{html.escape(c)}</{kind}>' for c in row)

    body = "".join(f"<tr>{cells('td', row)}</tr>" for row in rows)
    top = f"<thead><tr>{cells('th', head)}</tr></thead>" if head else ""
    return f"<table><caption>{html.escape(caption)}</caption>{top}<tbody>{body}</tbody></table>"


class Figures(Sequence[Figure]):
    """Figures at all frequencies; shown as a table of mid-band."""

    def __init__(self, figures: Sequence[Figure]) -> None:
        self._figures = list(figures)
        self._frequencies = sorted({one.frequency_hz for one in self._figures})

    @overload
    def __getitem__(self, key: int | str) -> Figure: ...
    @overload
    def __getitem__(self, key: slice) -> Sequence[Figure]: ...
    def __getitem__(self, key: int | str | slice) -> Figure | Sequence[Figure]:
        """Return a figure by its place, or by its name at mid-band; raises `KeyError` with the names there are."""
        if not isinstance(key, str):
            return self._figures[key]
        here = self.at()
        for one in here:
            if one.name == key:
                return one
        raise KeyError(f"{key!r}: must be one of {', '.join(one.name for one in here)}")

    def __len__(self) -> int:
        return len(self._figures)

    def __iter__(self) -> Iterator[Figure]:
        return iter(self._figures)

    def at(self, frequency_ghz: float | None = None) -> list[Figure]:
        """Return the figures at one frequency, mid-band by default."""
        middle = self._frequencies[len(self._frequencies) // 2]
        wanted = middle if frequency_ghz is None else 1e9 * frequency_ghz
        return [one for one in self._figures if abs(one.frequency_hz - wanted) < 1.0]

    def table(self) -> pandas.DataFrame:
        """Return all of them as a table: one row a figure and frequency."""
        import pandas

        names = ("name", "label", "frequency_hz", "value", "unit", "lower", "upper")
        return pandas.DataFrame([{name: getattr(one, name) for name in names} for one in self._figures])

    def save(self, target: str | Path) -> Path:
        """Write them as CSV, safe for spreadsheets; nothing is overwritten."""
        from colure.model.exports import write_figures

        require_free(Path(target))
        write_figures(Path(target), self._figures)
        return Path(target)

    def plot_budget(self, *names: str, ax: Axes | None = None) -> Axes:
        """Draw what makes up the uncertainty of figures, by name; of the main ones that there are by default.

        ax
            Matplotlib axes to draw on; those of a new figure if None. They are returned.
        """
        from colure.report import charts

        there = {one.name for one in self.at()}
        wanted = names or [name for name in MAIN if name in there]
        return charts.budget_bars([self[name] for name in wanted], ax=ax)[0]

    def plot_over_frequency(self, *names: str, ax: OnAxes = None) -> Panels:
        """Draw figures over the band with their intervals, by name; gain and beamwidth, where there are such, by default.

        ax
            Matplotlib axes to draw on, one a figure; those of a new figure if None. They are returned.
        """
        from colure.report import charts

        there = {one.name for one in self.at()}
        wanted = names or [name for name in MAIN[:2] if name in there]
        groups = [(self[name].label, [one for one in self._figures if one.name == name]) for name in wanted]
        return charts.over_frequency(groups, ax=ax)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Figures) and self._figures == other._figures

    __hash__ = None  # type: ignore[assignment]

    def __str__(self) -> str:
        """Return all figures at mid-band, one a line."""
        return "\n".join(f"{one.label:34s} {one.text()} {one.unit}" for one in self.at())

    def __repr__(self) -> str:
        """Return the first few figures at mid-band, and how many there are."""
        head = f"{len(self)} figures at {len(self._frequencies)} frequencies, at mid-band:"
        return "\n".join([head, *few_lines(str(self).splitlines())])

    def _repr_html_(self) -> str:
        rows = [(one.label, one.text(), one.unit) for one in self.at()]
        f = self._frequencies[len(self._frequencies) // 2] / 1e9
        return html_table(
            ("figure", "value and 95 % interval", "unit"),
            rows,
            f"Figures at {f:.4f} GHz, one of {len(self._frequencies)}",
        )
