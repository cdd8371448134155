"""What a run holds: a sphere's grid, or cuts and single directions."""

from __future__ import annotations

from typing import TYPE_CHECKING

from colure.app.storage.folders import RunFolder
from colure.errors import InputError

if TYPE_CHECKING:
    import xarray as xr

#: What a run of cuts says to everything that needs a sphere.
NO_SPHERE = (
    "holds cuts or single directions, no sphere: no transform, map, directivity, efficiency or TRP follows from it; "
    "colure evaluate, findings, report, export (csv, figures) and compare read its cuts"
)


def is_cuts(run: RunFolder) -> bool:
    """Tell whether a run's record holds the operator's own directions."""
    from colure.model.files import attribute_of

    return run.record.is_file() and attribute_of(run.record, "form", "sphere") == "directions"


def require_sphere(record: xr.Dataset) -> None:
    """Raise `InputError` if a record holds cuts, where only a sphere will do."""
    from colure.model.record import holds_cuts

    if holds_cuts(record.attrs):
        raise InputError([f"this run {NO_SPHERE}"])
