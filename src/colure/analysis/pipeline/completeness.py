"""How much of what was planned a record holds, and what of it the pattern rests on."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from colure.geometry.kinematics import Geometry
from colure.model.plan import Role
from colure.model.record import grid_of, of_role, offsets_of

if TYPE_CHECKING:
    import xarray as xr

    from colure.analysis.steps.assemble import MeasuredSphere


@dataclass(frozen=True, kw_only=True)
class Completeness:
    """Points planned and measured (one number a polarization pass), slices that the pattern rests on, flagged points."""

    planned: tuple[int, ...]
    measured: tuple[int, ...]
    slices_used: int
    slices_planned: int
    flagged: int

    @property
    def whole(self) -> bool:
        """Tell whether every planned point was measured."""
        return self.planned == self.measured

    @property
    def thinned(self) -> bool:
        """Tell whether the pattern rests on fewer slices than were planned."""
        return 0 < self.slices_used < self.slices_planned

    @property
    def text(self) -> str:
        """What was measured, in a sentence without a full stop."""
        flagged = f"; {self.flagged} points are flagged" if self.flagged else ""
        if self.whole:
            return f"every planned point was measured{flagged}"
        passes = " and ".join(
            f"{one} of {all_} in pass {number}" if len(self.planned) > 1 else f"{one} of {all_}"
            for number, (one, all_) in enumerate(zip(self.measured, self.planned, strict=True), 1)
        )
        used = (
            f"; the pattern rests on {self.slices_used} of {self.slices_planned} slices, evenly spaced"
            if self.slices_used
            else ""
        )
        return f"the scan is INCOMPLETE: {passes} scan points were measured{used}{flagged}"


def completeness_of(record: xr.Dataset, sphere: MeasuredSphere, geometry: Geometry) -> Completeness:
    """Compare the record of one device state with its plan."""
    grid, scan = grid_of(record), of_role(record, Role.SCAN)
    each = grid.swept_deg(geometry).size * grid.sliced_deg(geometry).size
    offsets = offsets_of(record)
    passes = 1 if record.attrs["scheme"] != "two-pass" else 2 if offsets is None else offsets.size
    measured = np.bincount(np.maximum(scan["pass_index"].values, 0), minlength=passes)
    return Completeness(
        planned=(each,) * passes,
        measured=tuple(int(count) for count in measured[:passes]),
        slices_used=sphere.slices_used,
        slices_planned=sphere.slices_planned,
        flagged=int(np.count_nonzero(scan["flags"].values)),
    )
