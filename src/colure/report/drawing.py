"""Our matplotlib figures, which a notebook shows without being told how."""

from __future__ import annotations

import io

from matplotlib.figure import Figure


class Drawing(Figure):
    """A matplotlib figure that displays itself; everything a figure can do works, `savefig` included."""

    def _repr_png_(self) -> bytes:
        out = io.BytesIO()
        self.savefig(out, format="png", dpi=110)
        return out.getvalue()
