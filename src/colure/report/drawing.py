"""Our matplotlib figures, which a notebook shows without being told how, and the axes that a picture is drawn on."""

from __future__ import annotations

import io
from collections.abc import Sequence
from typing import Any, cast

import numpy as np
from matplotlib.axes import Axes
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure

from colure.errors import InputError

#: What a picture is drawn on: axes of the caller, one or as many as the picture has panels; a new figure if None.
OnAxes = Axes | Sequence[Axes] | None
#: Projections that matplotlib names, and how a caller makes such axes.
PROJECTIONS = {"polar": "subplot_kw={'projection': 'polar'}", "3d": "subplot_kw={'projection': '3d'}"}


class Drawing(Figure):
    """A matplotlib figure that displays itself; everything a figure can do works, `savefig` included."""

    def _repr_png_(self) -> bytes:
        out = io.BytesIO()
        self.savefig(out, format="png", dpi=110)
        return out.getvalue()


class Panels(tuple[Axes, ...]):
    """The axes of one picture, in the order they are read. A notebook shows them if the figure is ours."""

    #: Whether the figure was made for them: it may be laid out and written on.
    own: bool
    _others: tuple[Axes, ...]

    @classmethod
    def of(cls, axes: Sequence[Axes], *, own: bool) -> Panels:
        """Take axes that nothing has been drawn on by us."""
        made = cls(axes)
        made.own = own
        made._others = tuple(one for one in axes[0].figure.axes if one not in axes)
        return made

    @property
    def figure(self) -> Figure:
        """The figure that they belong to."""
        return cast("Figure", self[0].get_figure())

    @property
    def with_bars(self) -> list[Axes]:
        """The panels and their colour bars; nothing else of the figure."""
        return [one for one in self.figure.axes if one not in self._others]

    def _repr_png_(self) -> bytes | None:
        return self.figure._repr_png_() if isinstance(self.figure, Drawing) else None


def panels(
    ax: OnAxes,
    names: Sequence[str],
    size_in: tuple[float, float],
    *,
    columns: int = 1,
    projection: str | None = None,
    **shared: Any,
) -> Panels:
    """Return the axes of a picture with one panel for each name: the caller's, or those of a new figure in `columns`.

    Raises
    ------
    InputError
        If the caller gives another number of axes, or axes of another projection.
    """
    if ax is None:
        figure = Drawing(figsize=size_in, layout="constrained")
        FigureCanvasAgg(figure)
        rows = -(-len(names) // columns)
        made = figure.subplots(rows, columns, squeeze=False, subplot_kw={"projection": projection}, **shared)
        for one in list(made.flat)[len(names) :]:
            one.set_visible(False)
        own = Panels.of(list(made.flat)[: len(names)], own=True)
        if len(own) == 1:
            own[0]._repr_png_ = figure._repr_png_  # type: ignore[attr-defined]
        return own
    given = [ax] if isinstance(ax, Axes) else list(np.ravel(np.asarray(ax, dtype=object)))
    if len(given) != len(names):
        raise InputError([f"ax: {len(given)} axes: must be {len(names)} (axes), one for each of {', '.join(names)}"])
    wanted = projection or "rectilinear"
    for one in given:
        if not isinstance(one, Axes):
            raise InputError([f"ax: {type(one).__name__}: must be matplotlib axes"])
        if one.name != wanted:
            how = f": make them with {PROJECTIONS[wanted]}" if wanted in PROJECTIONS else ""
            raise InputError([f"ax: {one.name} axes: must be {wanted} axes{how}"])
    return Panels.of(given, own=False)
