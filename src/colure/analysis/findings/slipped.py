"""A device that slips on its mount while it is scanned: that it did, and from which sweep on.

Level, noise and ties are as ever. Either part of the scan fits the device's waves, both together do not, and figures are of a
mixture of two devices. What a device that turns or moves adds to the sweeps from one moment on is held against what does not fit
the waves; ranges as declared tell how much of that is chance.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np

from colure.analysis.cuts.repeats import SlipMoment
from colure.analysis.findings.finding import Finding
from colure.analysis.findings.misfit import ScanMisfit
from colure.analysis.steps.agreement import level_db
from colure.analysis.steps.assemble import pass_errors
from colure.analysis.steps.misaligned import ForwardModel
from colure.geometry.conventions import ComplexArray, FloatArray, IntArray
from colure.geometry.kinematics import ALIGNED
from colure.model.figure import NOT_TO_BE_USED
from colure.model.plan import Role
from colure.model.record import of_role
from colure.values import holds_arrays
from colure.waves.modes import resized

if TYPE_CHECKING:
    import xarray as xr

    from colure.analysis.cuts.repeats import CutSlip

#: A slip is looked for between so many stretches of a scan at most, of whole slices each.
STRETCHES = 32
#: Standard deviations, over those ranges in the logarithm, that a slip stands out by. Right scans reach 4.2 (counted).
STANDS_OUT = 4.5
#: What a range's covariance of the six motions is known to.
WELL_KNOWN = 1e-6
#: Moments that explain this much of what the best one does may be the moment as well; too far apart, none is named. What explains less
#: than the last of what does not fit is something else where noise is not heard, so far below it: right scans without noise stand out
#: from drawn ranges as well (4 to 13 %); with noise, none of 36 did that was asked without this limit.
NOISE_WITHIN_DB = 20.0
AS_GOOD, WIDEST, LEAST_EXPLAINED = 0.85, 0.5, 0.25
#: Where noise is heard so much is enough: of right scans of a dipole 32 rad beside the axes, whose noise hides what a correction of the
#: alignment leaves, half show 0.6 to 1.1 %; slips that are told at all explain 1.5 % and more (counted).
LEAST_BESIDE_NOISE = 0.0125
#: A device that turns about or moves along each axis of its frame: sizes at which what is added grows evenly.
SMALL_TURN, SMALL_SHIFT_M = float(np.deg2rad(0.5)), 1e-4


@dataclass(frozen=True, kw_only=True)
class Slip(SlipMoment):
    """A slip that does not fit the device's waves.

    explained
        Share of the power of what does not fit that a slip at the best moment explains.
    """

    explained: float

    @property
    def text(self) -> str:
        """When it was, and what to do."""
        if self.latest - self.earliest > WIDEST * self.sweeps:
            return (
                "the device slipped on its mount, or an axis lost its place, at a moment that this scan cannot tell: sweeps before and after fit "
                f"the device's waves, both together do not (a part of {self.level_db:.1f} dB relative to the peak is left). Look at mount, "
                "flange and couplings, and measure all of it again"
            )
        return (
            f"the device slipped on its mount, or an axis lost its place, between sweeps {self.earliest} and {self.latest} of {self.sweeps} "
            f"({self.earliest_s:.0f} to {self.latest_s:.0f} s): sweeps before and after fit the device's waves, both together do not (a part of "
            f"{self.level_db:.1f} dB relative to the peak is left). Look at mount, flange and couplings, and measure all of it again"
        )


def cut_slip_findings(slip: CutSlip | None) -> list[Finding]:
    """Return that the device slipped during a run of cuts, if it did."""
    return [] if slip is None else [Finding("slip", slip.level_db, slip.text, NOT_TO_BE_USED)]


def slip_of(misfit: ScanMisfit, left: FloatArray, chance: FloatArray) -> Slip | None:
    """Return when the device slipped; None where it did not, or where nobody can tell.

    left (row,), chance (draw, row)
        What the record, and ranges as declared, leave outside the device's waves that no adjustment explains.
    """
    stretches = stretches_of(misfit)
    if stretches is None:
        return None
    moved = moved_fields(misfit)
    if not _stands_out(misfit, stretches, moved, np.concatenate([left[None], chance])):
        return None
    slip = _slip(misfit, stretches, moved, left)
    least = LEAST_BESIDE_NOISE if _noise_heard(misfit, slip.level_db) else LEAST_EXPLAINED
    return slip if slip.explained >= least else None


def best_slip(misfit: ScanMisfit) -> Slip | None:
    """Return the slip that explains most of what does not fit, whether it stands out or not."""
    stretches = stretches_of(misfit)
    left = misfit.unexplained(misfit.inputs.sphere.field[None])
    return _slip(misfit, stretches, moved_fields(misfit), left[0]) if stretches is not None and np.any(left) else None


def _noise_heard(misfit: ScanMisfit, left_db: float) -> bool:
    """Tell whether noise is part of what does not fit: only then do ranges as declared differ from each other as real ones do."""
    inputs = misfit.inputs
    noise = float(np.max(inputs.noise_sigma)) / float(np.abs(inputs.sphere.field).max())
    return level_db(noise) > left_db - NOISE_WITHIN_DB


@dataclass(frozen=True, kw_only=True)
@holds_arrays
class Stretches:
    """Parts of a scan one after the other.

    slices (stretch,)
        Number of the first slice of each.
    parts (stretch, 2, 2, theta or 1, column or 1)
        What takes the components of a sphere's field to those measured in each.
    sweep, times_s (stretch, 2)
        Numbers, from 1, and moments of the first and the last sweep of each.
    sweeps
        How many there are.
    """

    slices: IntArray
    parts: FloatArray
    sweep: FloatArray
    times_s: FloatArray
    sweeps: int

    def of(self, field: ComplexArray, stretch: int) -> ComplexArray:
        """Return what of fields (..., 2, theta, phi) was measured in a stretch."""
        part = np.broadcast_to(self.parts[stretch], (2, 2, *field.shape[-2:]))
        return np.asarray(np.einsum("abtp,...btp->...atp", part, field))


def stretches_of(misfit: ScanMisfit, most: int = STRETCHES) -> Stretches | None:
    """Return the stretches of a scan, each slice of each pass alone where there are no more than `most`; None where its slices are no columns or rings of the sphere."""
    record: xr.Dataset = misfit.inputs.sweeps.record
    scan = of_role(record, Role.SCAN)
    moments, keys = scan["time_s"].values, np.stack([scan["pass_index"].values, scan["slice_index"].values])
    names, line = np.unique(keys, axis=1, return_inverse=True)
    line = line.reshape(-1)
    middle = np.array([moments[line == n].mean() for n in range(names.shape[1])])
    count = min(most, middle.size)
    of_line = np.empty(middle.size, int)
    of_line[np.argsort(middle)] = np.arange(middle.size) * count // middle.size
    edges = np.array([middle[of_line == g].min() for g in range(count)])
    parts = pass_errors(record, misfit.inputs.chamber, misfit.inputs.sphere, _indicators(edges))
    if parts is None or count < 2:
        return None
    own, order = of_line[line], 1 + np.argsort(np.argsort(moments))
    ends = [[[one[own == g].min(), one[own == g].max()] for g in range(count)] for one in (order, moments)]
    first = np.searchsorted(of_line[np.argsort(middle)], np.arange(count))
    slices = names[1][np.argsort(middle)[first]]
    return Stretches(
        slices=slices, parts=parts.real, sweep=np.array(ends[0]), times_s=np.array(ends[1]), sweeps=moments.size
    )


def _indicators(edges: FloatArray) -> Callable[[FloatArray], ComplexArray]:
    """Return what tells (stretch, moment) in which stretch moments lie, by the middle of its first slice."""

    def inside(moments: FloatArray) -> ComplexArray:
        which = np.searchsorted(edges, moments + 1e-6, side="right") - 1
        return np.asarray(which[None, :] == np.arange(edges.size)[:, None], complex)

    return inside


def moved_fields(misfit: ScanMisfit) -> ComplexArray:
    """Return what turns about and shifts along every axis of the device add, (motion, 2, theta, phi)."""
    inputs = misfit.inputs
    model = ForwardModel(inputs.sphere, inputs.chamber.range_length_m, inputs.chamber.positioner.geometry)
    # The device's waves alone: higher ones are of what does not fit, and would be held against themselves.
    waves = resized(inputs.step.measured(inputs.sphere.field), inputs.step.keep_order)
    axes = [(1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0)]
    turns = [replace(ALIGNED, device_tilt=_times(axis, SMALL_TURN)) for axis in axes]
    shifts = [replace(ALIGNED, device_offset=_times(axis, SMALL_SHIFT_M)) for axis in axes]
    field = model.read(waves, ALIGNED)[0]
    changes = np.stack([model.read(waves, one)[0] - field for one in turns + shifts])
    # The ties saw the device slip as well: what it did where they look, at the strongest direction, was taken for drift.
    strength = np.sum(np.abs(field) ** 2, axis=0)
    t, p = np.unravel_index(int(np.argmax(strength)), strength.shape)
    ratio = changes[:, :, t, p] @ field[:, t, p].conj() / strength[t, p]
    return np.asarray(changes - ratio[:, None, None, None] * field)


def _times(axis: tuple[float, float, float], size: float) -> tuple[float, float, float]:
    return axis[0] * size, axis[1] * size, axis[2] * size


def _stands_out(misfit: ScanMisfit, stretches: Stretches, moved: ComplexArray, rows: FloatArray) -> bool:
    """Tell whether the first of rows looks more like a slip at some moment than those of ranges as declared do."""
    rows = rows / np.maximum(np.linalg.norm(rows, axis=1, keepdims=True), 1e-300)
    each = np.stack(
        [rows @ misfit.weighted(stretches.of(moved, g)[:, None]).T for g in range(len(stretches.parts))], axis=1
    )
    # From every stretch on to the end; from the first on nothing changes.
    after = np.cumsum(each[:, ::-1], axis=1)[:, ::-1][:, 1:]
    most = np.log(np.max([_against_chance(after[:, c]) for c in range(after.shape[1])], axis=0))
    usual = most[1:]
    return bool(most[0] > usual.mean() + STANDS_OUT * usual.std())


def _against_chance(products: FloatArray) -> FloatArray:
    """Return squares (row,) of products (row, motion) in units of those of all rows but the first, each held against the others."""
    size = np.maximum(np.sqrt(np.mean(products[1:] ** 2, axis=0)), 1e-300)
    scaled, n = products / size, len(products) - 1
    spread = scaled[1:].T @ scaled[1:] / n + WELL_KNOWN * np.eye(scaled.shape[1])
    square = np.einsum("ra,ar->r", scaled, np.linalg.solve(spread, scaled.T))
    # The inverse without a row's own part (Sherman and Morrison, Ann. Math. Stat. 21:124, 1950; from memory).
    square[1:] = (n - 1.0) / n * square[1:] / (1.0 - np.minimum(square[1:] / n, 0.99))
    return np.asarray(np.maximum(square, 1e-12))


def _slip(misfit: ScanMisfit, stretches: Stretches, moved: ComplexArray, left: FloatArray) -> Slip:
    """Return between which moments a slip explains most of what does not fit."""
    fields, shares = np.zeros_like(moved), np.zeros(len(stretches.parts))
    for stretch in range(len(stretches.parts) - 1, 0, -1):
        fields = fields + stretches.of(moved, stretch)
        basis, size, _ = np.linalg.svd(misfit.unexplained(fields[:, None]).T, full_matrices=False)
        shares[stretch] = float(np.sum((left @ basis[:, size > WELL_KNOWN * size.max()]) ** 2))
    good = np.flatnonzero(shares >= AS_GOOD * shares.max())
    # It may have been within a stretch: then one of the two moments beside that is the best one.
    before, after = int(good.min()) - 1, int(good.max())
    shares /= float(left @ left)
    return Slip(
        earliest=int(stretches.sweep[before, 0]),
        latest=int(stretches.sweep[after, 1]),
        sweeps=stretches.sweeps,
        earliest_s=float(stretches.times_s[before, 0]),
        latest_s=float(stretches.times_s[after, 1]),
        level_db=level_db(float(np.linalg.norm(left))),
        explained=float(shares.max()),
    )
