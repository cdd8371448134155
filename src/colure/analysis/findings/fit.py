"""What does not fit the waves of the declared device, and what it comes from: the plainest cause that explains it is named.

Axes that never moved, a roll that the slices accuse, single sweeps, whole slices, a single frequency, a device that slipped; a device of another
size where nothing of this is true.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
from scipy.special import chdtri

from colure.analysis.findings.finding import Finding, Severity
from colure.analysis.findings.misfit import SEED, as_declared, freedom_of, misfit_of
from colure.analysis.findings.once import once_per_result
from colure.analysis.findings.passes_apart import PassesApart, passes_apart
from colure.analysis.findings.slice_numbers import slices_through
from colure.analysis.findings.slices import disagreement
from colure.analysis.findings.slices_apart import SlicesApart, slices_apart
from colure.analysis.findings.slipped import AS_GOOD, Slip, slip_of
from colure.analysis.findings.sweeps_apart import misfit_power, sweeps_apart
from colure.analysis.steps.agreement import NOTHING_DB, level_db
from colure.geometry.conventions import FloatArray, power_db
from colure.model.figure import NOT_TO_BE_USED
from colure.model.plan import Role
from colure.model.record import of_role

if TYPE_CHECKING:
    from colure.analysis.pipeline.recipe import Processed
    from colure.model.chamber import Chamber
    from colure.model.device import Device

#: What does not fit the declared size, below the peak, that is more than an anechoic room's echoes ever are, dB.
MISFIT_WRONG_DB, MISFIT_LOOK_ABOVE_DB = -25.0, 10.0
#: A frequency stands alone if so much more does not fit there than at the median of at least so many, dB.
ALONE_DB, LEAST_FREQUENCIES = 10.0, 3
#: Ranges as declared that tell what chance makes look like a slip, or like two passes that differ.
RANGES = 64
#: A large misfit is called a slip if that explains this much of its power, and a device of another size otherwise.
MOSTLY = 0.3
#: What does not fit is beyond the noise as strong as it is in all but this share of cases.
NOISE_SURE = 0.99
#: Sweeps that differ by less than this share of their mean saw nothing move: no antenna radiates alike in all directions and
#: polarizations (a consequence of the hairy-ball theorem; H. F. Mathis, Proc. IRE 39:970, 1951, from memory).
STILL = 0.02


def fit_findings(processed: Processed, chamber: Chamber, device: Device) -> list[Finding]:
    """Return what the misfit says: one finding at most."""
    sphere, step = processed.sphere, processed.step
    if step.direct or sphere.one_polarization:
        return []
    if not sphere.whole or step.rings is not None:
        return _of_part(processed, chamber)
    if _still(processed):
        text = (
            "all sweeps of the scan read the same: the axes did not move, or what was read is not the device. Look at motors, couplings "
            "and the switch between device and reference"
        )
        return [Finding("motion", NOTHING_DB, text, NOT_TO_BE_USED)]
    bad = disagreement(processed, chamber)
    if bad is not None and bad.turned:
        return []
    levels_db = _misfit_db(processed)
    level = float(levels_db.max())
    large = level > min(MISFIT_WRONG_DB, chamber.echo_level_db + MISFIT_LOOK_ABOVE_DB)
    # Most of what a room echoes fits the device's waves: what does not is far below the echoes themselves.
    asked = large or bad is not None or level > chamber.echo_level_db
    # Slices that went wrong at the boresight are named already.
    named = bad is not None and bool(bad.apart_deg)
    whole = slices_apart(processed) if asked and not named else None
    if whole is not None:
        return _of_passes(processed, whole.explained) or [_of_slices(whole)]
    apart = sweeps_apart(sphere, step, poles=bad is not None) if asked else None
    if apart is not None:
        slices = slices_through(processed.budget.sweeps.record, chamber, apart.directions_deg)
        return [Finding("sweeps", apart.with_db, apart.text(slices), NOT_TO_BE_USED)]
    explained = [] if named else _of_all_sweeps(processed, mostly=large)
    if not large:
        return explained
    severity: Severity = NOT_TO_BE_USED if level > MISFIT_WRONG_DB else "look"
    alone = _at_one_frequency(processed, levels_db, severity)
    if alone is not None:
        return [alone]
    return explained or ([] if named else [_of_another_size(device, level, severity)])


def _of_part(processed: Processed, chamber: Chamber) -> list[Finding]:
    """Return what the misfit says of a part of the sphere: slices are asked where more than the room's echoes does not fit."""
    misfit = misfit_of(processed)
    if misfit is not None:
        left = float(misfit.power(misfit.inputs.sphere.field[None])[0])
        whole = slices_apart(processed) if level_db(left**0.5) > chamber.echo_level_db else None
        if whole is not None:
            return _of_passes(processed, whole.explained) or [_of_slices(whole)]
    return _of_all_sweeps(processed)


def _of_passes(processed: Processed, at_least: float) -> list[Finding]:
    """Return that both polarizations differ by a factor, if they do, and if that explains at least such a share of what does not fit."""
    slip, apart = _slip_and_passes(processed)
    # One factor is plainer than a moment and six motions.
    if apart is None or apart.explained < max(at_least, AS_GOOD * slip.explained if slip else 0.0):
        return []
    return [apart.finding]


def _of_all_sweeps(processed: Processed, *, mostly: bool = False) -> list[Finding]:
    """Return that both polarizations differ by a factor, that the device slipped, or that slices look like it, if one is so.

    mostly
        And if it explains most of what does not fit.
    """
    if passes := _of_passes(processed, MOSTLY * mostly):
        return passes
    slip, _ = _slip_and_passes(processed)
    if slip is None or (mostly and slip.explained < MOSTLY):
        return []
    apart = slices_apart(processed)
    if apart is not None:
        return [_of_slices(apart)]
    return [Finding("slip", slip.level_db, slip.text, NOT_TO_BE_USED)]


def _of_slices(apart: SlicesApart) -> Finding:
    return Finding("sweeps" if apart.sure else "slip", apart.with_db, apart.text, NOT_TO_BE_USED)


@once_per_result
def _slip_and_passes(processed: Processed) -> tuple[Slip | None, PassesApart | None]:
    misfit = misfit_of(processed)
    if misfit is None or misfit.inputs.chamber.positioner.joints:
        return None, None
    left = misfit.unexplained(misfit.inputs.sphere.field[None])[0]
    if not np.any(left):
        return None, None
    chance = as_declared(misfit, RANGES, np.random.default_rng(SEED + 2))
    return slip_of(misfit, left, chance), passes_apart(misfit, left, chance)


def _at_one_frequency(processed: Processed, levels_db: FloatArray, severity: Severity) -> Finding | None:
    worst, others = int(np.argmax(levels_db)), float(np.median(levels_db))
    if levels_db.size < LEAST_FREQUENCIES or levels_db[worst] - others < ALONE_DB:
        return None
    text = (
        f"a part of {levels_db[worst]:.1f} dB relative to the peak does not fit the device at {processed.frequency_hz[worst] / 1e9:.3f} GHz, "
        f"and {others:.1f} dB at most frequencies: another transmitter, or a fault of receiver or device there"
    )
    return Finding("frequency", float(levels_db[worst]), text, severity)


def _of_another_size(device: Device, level: float, severity: Severity) -> Finding:
    size = " x ".join(f"{x:g}" for x in device.size_mm)
    text = (
        f"a part of {level:.1f} dB relative to the peak does not fit a device of {size} mm at the declared place: it is larger, "
        "stands elsewhere, or moved. Correct size_mm and offset_mm in device.toml and measure again"
    )
    return Finding("size", level, text, severity)


def _misfit_db(processed: Processed) -> FloatArray:
    """Return by frequency what does not fit beyond the noise, relative to the peak, dB."""
    sphere = processed.sphere
    mean = misfit_power(sphere, sphere.field - processed.step.refitted(sphere.field))
    # Few sweeps tell the noise: it may be so much stronger, and no noise is called a misfit (chi-square; JCGM 100:2008, G.3).
    freedom = freedom_of(processed)
    noise = processed.budget.noise_sigma**2 * 2.0 * freedom / chdtri(freedom, NOISE_SURE)
    peak = np.max(np.sum(np.abs(sphere.field) ** 2, axis=1), axis=(-2, -1))
    return np.asarray(power_db(np.maximum((mean - noise) / peak, 10.0 ** (NOTHING_DB / 10.0))))


def _still(processed: Processed) -> bool:
    """Tell whether every port read the same all over the scan."""
    trace = of_role(processed.budget.sweeps.record, Role.SCAN)["trace"].values
    mean = trace.mean(axis=0)
    return bool(np.sum(np.abs(trace - mean) ** 2) <= STILL**2 * trace.shape[0] * np.sum(np.abs(mean) ** 2))
