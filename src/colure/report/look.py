"""Our own look: colours that a colour-blind reader and a black-and-white printer keep apart."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from colure.report.drawing import Drawing

INK = "#1d2b36"
MUTED = "#6b7a86"
GRID = "#d5dce1"
CO = "#0b5d7a"
CROSS = "#c8641b"
BAND = "#9cc3d3"
ACCENT = "#7a3b69"
FIELD_MAP = "cividis"  # perceptually uniform, made for colour-blind readers

STYLE: dict[str, Any] = {
    "font.family": "DejaVu Sans",
    "font.size": 9.0,
    "axes.edgecolor": MUTED,
    "axes.labelcolor": INK,
    "axes.titlesize": 10.0,
    "axes.titleweight": "bold",
    "axes.titlelocation": "left",
    "axes.spines.top": False,
    "axes.spines.right": False,
    "axes.grid": True,
    "grid.color": GRID,
    "grid.linewidth": 0.6,
    "xtick.color": INK,
    "ytick.color": INK,
    "text.color": INK,
    "lines.linewidth": 1.6,
    "svg.fonttype": "path",
    "svg.hashsalt": "colure",
}


def canvas(width_in: float, height_in: float) -> Drawing:
    """Return an empty figure in our style; no global state is touched."""
    from matplotlib.backends.backend_agg import FigureCanvasAgg

    from colure.report.drawing import Drawing

    figure = Drawing(figsize=(width_in, height_in), layout="constrained")
    FigureCanvasAgg(figure)
    return figure


def styled() -> Any:
    """Return a context manager that applies our style while a figure is drawn."""
    import matplotlib as mpl

    settings: Any = STYLE
    return mpl.rc_context(settings)
