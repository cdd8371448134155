"""The align page: what flip tests and beam searches found, as numbers, sentences and maps; what the instruments answer."""

from __future__ import annotations

from pathlib import Path

import numpy as np

from colure.app import services
from colure.app.storage.begun import measured_run
from colure.app.web.views import preparing
from colure.geometry.conventions import FloatArray


def flip_words(folder: Path, run_name: str) -> preparing.FlipWords:
    """Return what a flip test found: numbers, and what to turn or shift."""
    campaign, run = measured_run(folder, run_name)
    flip = services.flip_result(campaign, run)
    return {
        "run": run_name, "measured_at": run.record.stat().st_mtime,
        "numbers": {
            "theta_zero_deg": flip.theta_zero_deg, "theta_zero_expanded_deg": flip.theta_zero_expanded_deg,
            "theta_zero_declared_deg": flip.theta_zero_declared_deg,
            "axes_offset_mm": flip.axes_offset_mm, "axes_offset_expanded_mm": flip.axes_offset_expanded_mm,
            "axes_offset_declared_mm": flip.axes_offset_declared_mm,
        },
        "sentences": flip.sentences(),
    }  # fmt: skip


def beam_words(folder: Path, run_name: str) -> preparing.BeamWords:
    """Return what a beam search found: numbers, where the readouts point the beam at the probe, and the levels of both looks.

    After the coarse look alone: its strongest direction, and no readouts.
    """
    from colure.app.services import beam_search

    maps = [
        _look(stage, *beam_search.levels(folder, run_name, stage)) for stage in beam_search.finished(folder, run_name)
    ]
    if "fine" not in beam_search.finished(folder, run_name):
        first = beam_search.strongest_of(folder, run_name)
        said = (
            f"coarse look: strongest at azimuth {first.azimuth_deg:+.1f}, elevation {first.elevation_deg:+.1f} deg "
            f"of the device frame ({first.level_db:.1f} dB, S21); the fine look goes there"
        )
        return {"run": run_name, "readouts_deg": {}, "sentences": [said], "maps": maps, "beam_deg": None}
    search = beam_search.result(folder, run_name)
    beam = (search.beam.azimuth_deg, search.beam.elevation_deg)
    return {
        "run": run_name,
        "readouts_deg": search.readouts_deg,
        "sentences": search.sentences(),
        "maps": maps,
        "beam_deg": beam,
    }


def _look(stage: str, azimuth_deg: FloatArray, elevation_deg: FloatArray, level_db: FloatArray) -> preparing.BeamMap:
    """Lay the directions of one look out on a grid; a cell that was not looked at holds None."""
    columns, at_column = np.unique(np.round(azimuth_deg, 3), return_inverse=True)
    rows, at_row = np.unique(np.round(elevation_deg, 3), return_inverse=True)
    grid = np.full((rows.size, columns.size), np.nan)
    grid[at_row, at_column] = np.round(level_db, 2)
    return {
        "stage": stage, "azimuth_deg": columns.tolist(), "elevation_deg": rows.tolist(),
        "level_db": [None if np.isnan(v) else float(v) for v in grid.ravel()],
    }  # fmt: skip


def bench(folder: Path) -> list[preparing.InstrumentLine]:
    """Talk to every instrument, move nothing, and return what was found."""
    campaign, plan = services.make_plan(folder)
    return [
        {"what": one.what, "good": one.good, "found": one.answer} for one in services.check_instruments(campaign, plan)
    ]
