"""Slices that went wrong as a whole: a cable was caught, or an axis was off, for one line, and all was right again after it.

Such a slice is too much of a scan to be told sweep by sweep, and it looks like a device that slipped: what does not fit the device's
waves is large there as well. Its level, and a device that stood otherwise while it was measured, are held against what does not fit,
and so is a slip. Where rings of a scan are few both explain it: then both are said, and the slices are measured again first.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from colure.analysis.findings.misfit import ScanMisfit, misfit_of
from colure.analysis.findings.once import once_per_result
from colure.analysis.findings.slice_numbers import as_ranges
from colure.analysis.findings.slipped import WELL_KNOWN, Stretches, best_slip, moved_fields, stretches_of
from colure.analysis.steps.agreement import level_db
from colure.geometry.conventions import ComplexArray, FloatArray, power_db

if TYPE_CHECKING:
    from colure.analysis.pipeline.recipe import Processed

#: So many slices at most, and no more than this share of all, are taken for wrong; another one if it takes so much more away, dB.
MOST, SHARE, WORTH_DB = 3, 0.125, 2.0
#: Of so many slices in which most does not fit each is tried.
TRIED = 8
#: They are named if without them so much less does not fit, dB; with those that explain nearly as much, unless that is this share of all.
EXPLAINED_DB, NEARLY_DB, TOO_MANY = 5.0, 1.0, 0.4
#: A slip is out of the question where it leaves so much more, dB.
WORSE_DB = 6.0
#: Lines of a scan, a pass each, of which each is a stretch of its own.
LINES = 100_000


@dataclass(frozen=True, kw_only=True)
class SlicesApart:
    """Slices that explain what does not fit the device's waves, by their numbers.

    with_db, without_db
        What does not fit, with and without them, dB relative to the peak.
    sure
        Whether a device that slipped does not explain it as well.
    """

    slices: tuple[int, ...]
    with_db: float
    without_db: float
    sure: bool

    @property
    def explained(self) -> float:
        """Share of the power of what does not fit that they explain."""
        return float(1.0 - 10.0 ** (0.1 * (self.without_db - self.with_db)))

    @property
    def text(self) -> str:
        """Which slices they are, and what to do."""
        said = as_ranges(self.slices)
        which = f"slice {said}" if len(self.slices) == 1 else f"one or more of slices {said}"
        if self.sure:
            return which + (
                f" went wrong as a whole: a part of {self.with_db:.1f} dB relative to the peak does not fit the device, and {self.without_db:.1f} dB "
                f"without it. Look at connectors, cable and couplings, then measure again: colure acquire --again {said}"
            )
        return which + (
            f" went wrong as a whole, or the device slipped on its mount: this scan cannot tell which. A part of {self.with_db:.1f} dB relative "
            f"to the peak does not fit the device. Look at connectors, cable and couplings, then measure again: colure acquire --again {said}. If this "
            "stays, look at mount and flange, and measure all of it"
        )


@once_per_result
def slices_apart(processed: Processed) -> SlicesApart | None:
    """Return the few slices that explain what does not fit the device's waves; None if none do, if many do, or if a slip does better."""
    misfit = misfit_of(processed)
    lines = None if misfit is None else stretches_of(misfit, most=LINES)
    if misfit is None or lines is None:
        return None
    left = misfit.unexplained(misfit.inputs.sphere.field[None])[0]
    before = float(left @ left)
    names = np.unique(lines.slices)
    slices, share = _explaining(misfit, lines, left / np.sqrt(max(before, 1e-300)))
    left_db = _left_db(share)
    if left_db > -EXPLAINED_DB or len(slices) > TOO_MANY * names.size:
        return None
    slip = best_slip(misfit)
    slip_db = 0.0 if slip is None else _left_db(slip.explained)
    if slip_db < left_db - NEARLY_DB:
        return None
    level = level_db(before**0.5)
    return SlicesApart(slices=slices, with_db=level, without_db=level + left_db, sure=slip_db >= left_db + WORSE_DB)


def _explaining(misfit: ScanMisfit, lines: Stretches, left: FloatArray) -> tuple[tuple[int, ...], float]:
    """Return the slices that explain most of rows (row,) of unit power, and the share that they explain.

    One after the other the slice is taken for wrong that explains most together with those before. Where others explain nearly as
    much nobody can tell them apart: all from the first to the last are named then, and one on either side.
    """
    field = misfit.inputs.sphere.field - misfit.outside(misfit.inputs.sphere.field[None])[0]
    causes = np.concatenate([field, 1j * field, moved_fields(misfit)])
    names = np.unique(lines.slices)
    outside = (misfit.inputs.sphere.field - field)[0]
    inside = [float(np.sum(misfit.weighted(_in_slice(lines, outside, one)) ** 2)) for one in names]
    likely = [int(names[n]) for n in np.argsort(inside)[-TRIED:]]
    named, chosen, share = set[int](), 0, 0.0
    basis = np.zeros((left.size, 0))
    for _ in range(min(MOST, int(SHARE * names.size))):
        tried = {one: _with(basis, misfit.unexplained(_in_slice(lines, causes, one)).T) for one in likely}
        shares = {one: float(np.sum((left @ own) ** 2)) for one, own in tried.items()}
        best = max(shares, key=shares.__getitem__)
        if named and _left_db(shares[best]) > _left_db(share) - WORTH_DB:
            break
        named |= {one for one in likely if _left_db(shares[one]) <= _left_db(shares[best]) + NEARLY_DB}
        share, basis = shares[best], tried[best]
        chosen += 1
        likely.remove(best)
    if len(named) > chosen:
        beside = (names >= min(named) - 1) & (names <= max(named) + 1)
        named = set(names[beside].tolist())
    return tuple(sorted(named)), share


def _in_slice(lines: Stretches, fields: ComplexArray, one: int) -> ComplexArray:
    """Return what of fields (..., 2, theta, phi) each pass of a slice measured, (pass and field, 1, 2, theta, phi)."""
    parts = [lines.of(fields, int(line)) for line in np.flatnonzero(lines.slices == one)]
    return np.stack(parts).reshape(-1, 1, *fields.shape[-3:])


def _with(basis: FloatArray, columns: FloatArray) -> FloatArray:
    """Return an orthonormal basis (row, k) and what columns (row, n) add to it."""
    rest = columns - basis @ (basis.T @ columns)
    u, size, _ = np.linalg.svd(rest, full_matrices=False)
    return np.concatenate([basis, u[:, size > WELL_KNOWN * max(float(size.max()), 1e-300)]], axis=1)


def _left_db(share: float) -> float:
    """Return the power that is left beside an explained share, dB."""
    return float(power_db(max(1.0 - share, 1e-20)))
