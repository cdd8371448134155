"""Whether a first side lobe stands apart within the errors: from the minimum before it, and from the lobes beside it.

A lobe that merges with its neighbour is read where the neighbour is, far from where it was before. No interval about the value tells
that; so the whole way over the lobe is looked at in every joint draw of the errors (JCGM 101:2008), not its top alone.
"""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from colure.analysis.figures.own_lobes import DIP_DB
from colure.analysis.figures.places import FieldReading
from colure.analysis.figures.response import PatternChanges, Response
from colure.analysis.uncertainty.modulus import TAIL
from colure.geometry.conventions import ComplexArray, FloatArray, IntArray, amplitude_db

#: A lobe lower than this many standard deviations above the minimum before it may not be one.
SET_APART = 2.0
#: A draw reads another lobe where its level is so many standard deviations of the draws off that of the same place.
ANOTHER = 2.0
HIGHEST = "side_lobe_highest_db"
DB_FORMAT = "{:.2g} dB"


def vanishing(response: Response, answer: PatternChanges, joint: ComplexArray) -> dict[str, str]:
    """Return why side lobes and minima beside the main lobe may not exist, or may be others, by the figure's name."""
    readings = {one.name: one for one in response.places.readings}
    out: dict[str, str] = {}
    for name, top in readings.items():
        dip = readings.get(name.replace("side_lobe_", "null_"))
        if not name.startswith("side_lobe_") or name == HIGHEST:
            continue
        if dip is not None and len(dip.where) == len(top.where):
            out |= _low(response, answer, joint, top, dip)
        paths = [path.along for path in response.places.paths if path.name == name]
        sides = [drawn_levels(response, answer, joint, along) for along in paths]
        if name not in out and (share := _elsewhere(sides, first_tops)) > TAIL:
            why = f"undefined: within the errors the lobe may merge with the one beside it ({100.0 * share:.0f} % of the draws)"
            out |= {name: why} if dip is None else {name: why, dip.name: why}
        if dip is not None and dip.name not in out and (share := _elsewhere(sides, first_dips)) > TAIL:
            why = f"undefined: within the errors another minimum may be the first one ({100.0 * share:.0f} % of the draws)"
            out |= {dip.name: why}
    return out | _own_or_none(response, answer, joint)


def _own_or_none(response: Response, answer: PatternChanges, joint: ComplexArray) -> dict[str, str]:
    """Return why the highest lobe may be another one: a maximum higher than it, or it itself, may be a lobe of its own or none.

    The least dip that a lobe has is a limit by definition, so that no interval about the value tells which side of it is true.
    """
    paths = [path.along for path in response.places.paths if path.name == HIGHEST]
    if not paths:
        return {}
    least = 10.0 ** (-DIP_DB / 20.0)
    levels = [drawn_levels(response, answer, joint, along) for along in paths]
    own = np.stack([one.min(axis=1) < least * one[:, -1] for one in levels], axis=1)
    tops = np.stack([one[:, -1] for one in levels], axis=1)
    read = np.where(own.any(axis=1), np.argmax(own, axis=1), len(paths) - 1)
    here = read[0]
    same = tops[np.arange(len(tops)), read] - tops[:, here]
    other = np.abs(same) > ANOTHER * np.std(tops[:, here])
    if float(np.mean(other[1:])) <= TAIL:
        return {}
    which = int(np.argmax(np.mean(own[1:] != own[0], axis=0)))
    dip_db = amplitude_db(tops[0, which] / levels[which][0].min())
    return {
        HIGHEST: f"undefined: a maximum at {amplitude_db(tops[0, which]):.1f} dB stands {DB_FORMAT.format(dip_db)} above the way to the peak: "
        f"within the errors it may be a lobe of its own ({DIP_DB:g} dB) or none"
    }


def _low(
    response: Response, answer: PatternChanges, joint: ComplexArray, top: FieldReading, dip: FieldReading
) -> dict[str, str]:
    """Return why a lobe may not stand above the minimum before it."""
    high, low = (np.linalg.norm(response.ratios(one), axis=-1) for one in (top, dip))
    errors: list[ComplexArray] = [response.errors(one, answer.fields) for one in (top, dip)]
    out: dict[str, str] = {}
    # The higher lobe is read, and the shallower minimum: they need not be on the same side.
    for i, names in ((int(np.argmax(high)), (top.name, dip.name)), (int(np.argmax(low)), (dip.name,))):
        moved = [one[:, i] for one in errors]
        spread = float(np.sqrt(0.5 * sum(np.mean(np.sum(np.abs(joint @ one) ** 2, axis=-1)) for one in moved)))
        if high[i] - low[i] < SET_APART * spread:
            why = f"undefined: the lobe stands {DB_FORMAT.format(amplitude_db(high[i] / low[i]))} above the minimum before it, within the errors"
            out |= {name: why.replace("the lobe", "the lobe beyond") if name == dip.name else why for name in names}
    return out


def drawn_levels(response: Response, answer: PatternChanges, joint: ComplexArray, one: FieldReading) -> FloatArray:
    """Return a reading's levels as measured and in the joint draws of the errors, (1 + draw, place)."""
    ratios, errors = response.ratios(one), response.errors(one, answer.fields)
    drawn = (joint @ errors.reshape(len(errors), -1)).reshape(-1, *errors.shape[1:])
    return np.asarray(np.linalg.norm(np.concatenate([ratios[None], ratios + drawn]), axis=-1))


def _elsewhere(sides: list[FloatArray], first: Callable[[FloatArray], IntArray]) -> float:
    """Return in which share of the draws a first lobe, or the minimum before it, is read with another level than that of its own place.

    sides
        Of each: the levels (1 + draw, place) on the way over the lobe, as measured first.
    """
    if not sides:
        return 0.0
    at = [first(levels) for levels in sides]
    read = np.max([levels[np.arange(len(levels)), one] for levels, one in zip(sides, at, strict=True)], axis=0)[1:]
    kept = np.max([levels[:, one[0]] for levels, one in zip(sides, at, strict=True)], axis=0)[1:]
    # A lobe is a little higher at its own top than where it was: half its change by the errors is no other lobe.
    return float(np.mean(np.abs(read - kept) > ANOTHER * np.std(kept)))


def first_dips(levels: FloatArray) -> IntArray:
    """Return where levels (draw, place) on the way outwards have their first minimum, (draw,); the last place where they have none."""
    rises = np.diff(levels, axis=1) > 0.0
    return np.asarray(np.where(rises.any(axis=1), np.argmax(rises, axis=1), rises.shape[1]))


def first_tops(levels: FloatArray) -> IntArray:
    """Return where levels (draw, place) on the way outwards have their first maximum beyond their first minimum, (draw,).

    The last place where they have none.
    """
    rises, dip = np.diff(levels, axis=1) > 0.0, first_dips(levels)
    falls = ~rises & (np.arange(rises.shape[1]) > dip[:, None])
    return np.asarray(np.where(falls.any(axis=1), np.argmax(falls, axis=1), rises.shape[1]))
