"""How well slices agree with each other, as a level below the peak."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final, Literal

import numpy as np

from colure.analysis.steps.assemble import components, evenly_spaced_slices
from colure.geometry.conventions import ComplexArray, FloatArray, amplitude_db
from colure.geometry.kinematics import Geometry
from colure.model.chamber import Chamber
from colure.model.record import grid_of

if TYPE_CHECKING:
    import xarray as xr


NOTHING_DB = -200.0
RollFault = Literal["", "reversed", "probe still", "roll still", "one still"]
#: How often the right-hand part of the boresight's reading turns in a turn of the roll, the left-hand one the other way.
ROLL_TURNS: Final[dict[RollFault, int]] = {"": 0, "reversed": 2, "probe still": -1, "roll still": 1}
#: The same of one component alone: it turns both ways at once, and cannot tell which of the two rolls stood still.
ONE_COMPONENT_TURNS: Final[dict[RollFault, int]] = {"one still": 1, "reversed": 2}
#: Fewer slices agree with anything, or with anything that turns; a fault explains the spread if it takes this much away, dB.
LEAST_SLICES, LEAST_TURNING, EXPLAINED_DB = 4, 6, 10.0
#: A probe that follows the roll reads one direction of a fixed frame, up to this share of the power.
FOLLOWS = 1e-4


def level_db(ratio: float) -> float:
    """Return a field ratio in dB, not below `NOTHING_DB`."""
    return float(amplitude_db(max(ratio, 10.0 ** (NOTHING_DB / 20.0))))


def boresight_by_slice(record: xr.Dataset, chamber: Chamber) -> tuple[FloatArray, ComplexArray, float] | None:
    """Return what every complete slice says of the boresight, in a fixed frame; None if fewer than three saw it.

    (slice,) roll in degrees, (2, slice, frequency) components, and the largest component anywhere. Of one pass both are what one
    component that follows the roll has along them.
    """
    if chamber.positioner.geometry is not Geometry.ROLL_OVER_AZIMUTH:
        return None
    grid = grid_of(record)
    whole_slices = evenly_spaced_slices(record, grid.slices_planned, grid.swept_deg(chamber.positioner.geometry).size)
    pair, theta, phi = components(whole_slices, chamber)
    at_pole = np.abs(theta) < 1e-3
    if int(at_pole.sum()) < 3:
        return None
    angle = np.deg2rad(phi[at_pole])[:, None]
    first, second = pair[at_pole, :, 0], pair[at_pole, :, 1]
    # In a fixed frame all slices must say the same (Ludwig-3 pair at the pole).
    fixed = np.stack([np.cos(angle) * first - np.sin(angle) * second, np.sin(angle) * first + np.cos(angle) * second])
    return phi[at_pole], fixed, float(np.abs(pair).max())


@dataclass(frozen=True)
class BoresightAgreement:
    """How much the slices disagree about the boresight, which all of them saw.

    spread_db
        Rms of the differences, relative to the peak.
    turned
        What takes most of it away, if anything does. `reversed`: one of the two rolls turns the other way; `probe still`: the
        probe did not follow the roll; `roll still`: the roll did not move.
    apart_deg
        Roll of the few slices without which the others agree, degrees, if there are such.
    left_db
        Rms of the differences once that is taken out; the spread itself where nothing is.
    """

    spread_db: float
    turned: RollFault = ""
    apart_deg: tuple[float, ...] = ()
    left_db: float = NOTHING_DB


def boresight_agreement(record: xr.Dataset, chamber: Chamber) -> BoresightAgreement | None:
    """Return how well the slices agree about the boresight; None if fewer than three saw it.

    With roll phi, a vector e that stands still in the device's frame is read as R(2 phi) e by an axis that turns the other way,
    mirrored if it is the probe's; as R(-phi) e by a probe that stood still, and as R(phi) e where the roll did. In circular
    components each is a turn of the phase with phi, of opposite sense for both hands.
    """
    boresight = boresight_by_slice(record, chamber)
    if boresight is None:
        return None
    phi_deg, fixed, peak = boresight
    if record.attrs["scheme"] == "one-pass":
        return _one_component_agreement(phi_deg, fixed, peak)
    hands = np.stack([fixed[0] + 1j * fixed[1], fixed[0] - 1j * fixed[1]]) / np.sqrt(2.0)
    left_db = {name: _left_db(hands, phi_deg, turns, peak) for name, turns in ROLL_TURNS.items()}
    spread_db = left_db[""]
    turned = min(left_db, key=left_db.__getitem__)
    if phi_deg.size < LEAST_SLICES:
        return BoresightAgreement(spread_db, left_db=spread_db)
    if left_db[turned] <= spread_db - EXPLAINED_DB:
        return BoresightAgreement(spread_db, turned, left_db=left_db[turned])
    return _without_some(phi_deg, fixed, peak, spread_db)


def _one_component_agreement(phi_deg: FloatArray, fixed: ComplexArray, peak: float) -> BoresightAgreement | None:
    """Return how slices of one pass agree about the one component they read of the boresight; None if the probe did not follow the roll.

    With roll phi a component e that stands still in the device's frame is read as the sum of a turn with n phi and one with -n phi,
    of any two sizes: n = 2 where an axis turns the other way, 1 where one of the two stood still.
    """
    power, along = np.linalg.eigh(np.einsum("asf,bsf->ab", fixed, fixed.conj()).real)
    if power[0] > FOLLOWS * power[1]:
        return None
    read = np.einsum("a,asf->sf", along[:, 1], fixed)
    spread_db = _spread_db(read[None], peak)
    if phi_deg.size >= LEAST_TURNING:
        left_db = {name: _turning_left_db(read, phi_deg, turns, peak) for name, turns in ONE_COMPONENT_TURNS.items()}
        turned = min(left_db, key=left_db.__getitem__)
        if left_db[turned] <= spread_db - EXPLAINED_DB:
            return BoresightAgreement(spread_db, turned, left_db=left_db[turned])
    return _without_some(phi_deg, read[None], peak, spread_db)


def _turning_left_db(read: ComplexArray, phi_deg: FloatArray, turns: int, peak: float) -> float:
    """Return what of readings (slice, frequency) no sum of two turns with the roll, one each way, explains, relative to the peak."""
    turn = np.exp(1j * turns * np.deg2rad(phi_deg))
    both = np.stack([turn, turn.conj()], axis=1)
    left = read - both @ np.linalg.lstsq(both, read, rcond=None)[0]
    return level_db(float(np.sqrt(np.mean(np.abs(left) ** 2))) / peak)


def _without_some(phi_deg: FloatArray, fixed: ComplexArray, peak: float, spread_db: float) -> BoresightAgreement:
    """Return the agreement of (component, slice, frequency), and the few slices without which the others agree, if there are such."""
    apart, others_db = _apart(fixed, peak, below_db=spread_db - EXPLAINED_DB)
    if not apart:
        return BoresightAgreement(spread_db, left_db=spread_db)
    return BoresightAgreement(spread_db, apart_deg=tuple(sorted(float(phi_deg[n]) for n in apart)), left_db=others_db)


def _apart(fixed: ComplexArray, peak: float, *, below_db: float) -> tuple[list[int], float]:
    """Return the slices without which the others of (component, slice, frequency) differ by less than so much, and that difference.

    One after the other, each the one that is farthest from the mean of the others; none if a quarter of them is not enough.
    """
    kept = list(range(fixed.shape[1]))
    apart: list[int] = []
    while 4 * (len(apart) + 1) <= fixed.shape[1]:
        now = fixed[:, kept]
        off = np.sum(np.abs(now - now.mean(axis=1, keepdims=True)) ** 2, axis=(0, 2))
        apart.append(kept.pop(int(np.argmax(off))))
        if (left_db := _spread_db(fixed[:, kept], peak)) <= below_db:
            return apart, left_db
    return [], NOTHING_DB


def _left_db(hands: ComplexArray, phi_deg: FloatArray, turns: int, peak: float) -> float:
    """Return what is left of (hand, slice, frequency) about its mean once the phase turns so often a turn, relative to the peak."""
    turn = np.exp(-1j * turns * np.deg2rad(phi_deg))[:, None]
    return _spread_db(np.stack([hands[0] * turn, hands[1] * turn.conj()]), peak)


def _spread_db(readings: ComplexArray, peak: float) -> float:
    """Return the rms of (component, slice, frequency) about the mean of all slices, relative to the peak."""
    return level_db(float(np.sqrt(np.mean(np.abs(readings - readings.mean(axis=1, keepdims=True)) ** 2)) / peak))
