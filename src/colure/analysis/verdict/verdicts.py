"""Pass, fail, or not decidable at this uncertainty, and what would decide it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Literal

import numpy as np

from colure.analysis.uncertainty.level_cuts import LevelCut
from colure.analysis.verdict.masks import level_of
from colure.geometry.conventions import FloatArray
from colure.model.figure import NOT_TO_BE_USED, Figure, format_value
from colure.model.specification import Limit, Mask, Specification
from colure.values import holds_arrays

VerdictOutcome = Literal["pass", "fail", "not decidable"]
#: Why a requirement whose band or angles hold no measurement decides nothing.
NOTHING_MEASURED = "nothing was measured in its band or angles; measure there, or leave it out"
ERRORS_UNKNOWN = "errors unknown, so there is no interval to decide by"


@dataclass(frozen=True)
class Verdict:
    """One requirement and its outcome.

    margin
        Distance to the limit at the worst place, in the requirement's unit: positive is on the good side.
    needed
        Expanded uncertainty that would decide it, where it is not decided.
    """

    requirement: str
    outcome: VerdictOutcome
    text: str
    margin: float
    unit: str
    needed: float | None = None


def overall(verdicts: list[Verdict]) -> VerdictOutcome:
    """Return the outcome of all together: one fail fails, one undecided leaves it undecided."""
    outcomes = {one.outcome for one in verdicts}
    return "fail" if "fail" in outcomes else "not decidable" if "not decidable" in outcomes else "pass"


def planes_of(mask: Mask) -> tuple[float, ...]:
    """Return the planes that a mask is held against, degrees from E towards H."""
    if mask.plane == "all":
        return tuple(float(a) for a in range(0, 180, 15))
    return ({"E": 0.0, "H": 90.0}[mask.plane] if isinstance(mask.plane, str) else mask.plane,)


def judge(
    specification: Specification,
    figures: list[Figure],
    cuts: dict[float, list[LevelCut]],
    peak_gain_dbi: dict[float, float],
    *,
    doubt: str = "",
) -> list[Verdict]:
    """Hold figures and cuts against a specification.

    Parameters
    ----------
    cuts
        By frequency in Hz: cuts in every plane that a mask asks for.
    peak_gain_dbi
        By frequency in Hz.
    doubt
        Why the co- and cross-polar levels of the cuts are not what the device was declared to radiate: masks on them decide nothing.

    Raises
    ------
    ValueError
        If a limit names a figure that was not measured at any frequency.
    """
    verdicts = [_limit(one, specification, figures) for one in specification.limits]
    held = [_mask(one, specification, cuts, peak_gain_dbi) for one in specification.masks]
    return verdicts + [_doubted(one, mask, doubt) for one, mask in zip(held, specification.masks, strict=True)]


def _doubted(verdict: Verdict, mask: Mask, doubt: str) -> Verdict:
    if not doubt or mask.component == "total" or verdict.text == NOTHING_MEASURED:
        return verdict
    return replace(verdict, outcome="not decidable", text=f"{verdict.text}; not decidable: {doubt}", needed=None)


def in_band(band_ghz: tuple[float, float] | None, frequency_hz: float) -> bool:
    """Tell whether a frequency in Hz lies in a band in GHz; every one does where there is no band."""
    return band_ghz is None or band_ghz[0] - 1e-9 <= frequency_hz / 1e9 <= band_ghz[1] + 1e-9


def _band_words(band_ghz: tuple[float, float] | None) -> str:
    return "" if band_ghz is None else f", {band_ghz[0]:g} to {band_ghz[1]:g} GHz"


def _against(figure: Figure) -> str:
    """Say why a figure decides nothing: it does not exist, or the data contradict what was declared; empty if it may."""
    if figure.reason or figure.use != NOT_TO_BE_USED:
        return figure.reason
    return next((one for one in figure.cautions if one.startswith(NOT_TO_BE_USED)), NOT_TO_BE_USED)


def _limit(one: Limit, specification: Specification, figures: list[Figure]) -> Verdict:
    here = [f for f in figures if f.name == one.figure and in_band(one.band_ghz, f.frequency_hz)]
    elsewhere = [f for f in figures if f.name == one.figure]
    if not elsewhere:
        known = ", ".join(sorted({f.name for f in figures}))
        raise ValueError(f"limit on {one.figure}: not measured; there are {known}")
    if not here:
        return Verdict(f"{elsewhere[0].label}{_band_words(one.band_ghz)}", "not decidable", NOTHING_MEASURED,
                       float("nan"),
                       elsewhere[0].unit)  # fmt: skip
    unit = here[0].unit
    if (useless := next((f for f in here if _against(f)), None)) is not None:
        asked = " and ".join(
            f"{word} {x:g}" for word, x in (("at least", one.at_least), ("at most", one.at_most)) if x is not None
        )
        text = f"{useless.frequency_hz / 1e9:.3f} GHz: {_against(useless)}"
        return Verdict(
            f"{here[0].label} {asked} {unit}{_band_words(one.band_ghz)}", "not decidable", text, float("nan"), unit
        )
    outcomes: list[tuple[float, VerdictOutcome, Figure, float]] = []
    for f in here:
        for bound, sign in ((one.at_least, 1.0), (one.at_most, -1.0)):
            if bound is not None:
                margin = sign * (f.value - bound)
                # The end of the interval that points to the limit.
                half = f.value - f.lower if (sign > 0.0) == (margin >= 0.0) else f.upper - f.value
                outcomes.append((margin, _decided(margin, half, specification.decision), f, half))
    margin, _, worst, _ = min(outcomes, key=lambda item: item[0])
    outcome = _worst([item[1] for item in outcomes])
    bounds = " and ".join(
        f"{word} {bound:g}"
        for word, bound in (("at least", one.at_least), ("at most", one.at_most))
        if bound is not None
    )
    requirement = f"{worst.label} {bounds} {unit}{_band_words(one.band_ghz)}"
    text = f"{worst.text()} {unit} at {worst.frequency_hz / 1e9:.3f} GHz, the worst of {len(here)}; margin {margin:+.3g} {unit}"
    if outcome != "not decidable":
        return Verdict(requirement, outcome, text, margin, unit)
    if any(np.isnan(half) for _, _, _, half in outcomes):
        return Verdict(requirement, outcome, f"{text}; not decidable: {ERRORS_UNKNOWN}", margin, unit)
    open_ = min((item for item in outcomes if item[1] == "not decidable"), key=lambda item: abs(item[0]))
    groups = open_[2].groups()
    cause = max(groups, key=lambda name: groups[name]) if groups else "the uncertainty"
    needed = abs(open_[0])
    text += (
        f"; an expanded uncertainty below {format_value(needed, uncertainty=needed)} {unit} would decide it (now {open_[3]:.2g} {unit}; "
        f"most of it: {cause})"
    )
    return Verdict(requirement, outcome, text, margin, unit, needed)


def _decided(margin: float, half: float, rule: str) -> VerdictOutcome:
    """Decide one value whose distance to the limit is `margin` (good side positive) and whose interval reaches `half`."""
    if rule == "simple" or abs(margin) > half:
        return "pass" if margin >= 0.0 else "fail"
    return "not decidable"


def _worst(outcomes: list[VerdictOutcome]) -> VerdictOutcome:
    return "fail" if "fail" in outcomes else "not decidable" if "not decidable" in outcomes else "pass"


@dataclass(frozen=True)
class _CutAgainstMask:
    """One cut held against a mask: everything in dB, over on the bad side positive; only angles where the mask speaks."""

    cut: LevelCut
    angle_deg: FloatArray
    over: FloatArray
    surely: FloatArray
    possibly: FloatArray


@dataclass(frozen=True)
@holds_arrays
class MaskView:
    """The cut of a mask that comes nearest to it, for drawing: (angle,) in degrees, levels and limit in dB or dBi."""

    name: str
    angle_deg: FloatArray
    level: FloatArray
    low: FloatArray
    high: FloatArray
    limit: FloatArray
    relative: bool
    plane_deg: float
    frequency_hz: float


def nearest_cuts(
    specification: Specification, cuts: dict[float, list[LevelCut]], peak_gain_dbi: dict[float, float]
) -> list[MaskView]:
    """Return for every mask the cut that comes nearest to it, or goes farthest beyond."""
    out = []
    for one in specification.masks:
        worst = max(_held(one, cuts, peak_gain_dbi), key=lambda h: float(h.over.max()), default=None)
        if worst is None:
            continue
        cut = worst.cut
        level, low, high = cut.bounds_db(one.component, relative=one.relative)
        limit = level_of(
            one, cut.angle_deg, frequency_hz=cut.frequency_hz, peak_gain_dbi=peak_gain_dbi[cut.frequency_hz]
        )
        away = np.abs(cut.angle_deg)
        limit = np.where((away >= one.from_deg) & (away <= one.to_deg), limit, np.nan)
        out.append(
            MaskView(one.name, cut.angle_deg, level, low, high, limit, one.relative, cut.plane_deg, cut.frequency_hz)
        )
    return out


def _mask(
    one: Mask, specification: Specification, cuts: dict[float, list[LevelCut]], peak_gain_dbi: dict[float, float]
) -> Verdict:
    held = _held(one, cuts, peak_gain_dbi)
    if not held:
        return Verdict(f"mask {one.name} ({one.formula}), {one.component}, {_plane_words(one)}{_band_words(one.band_ghz)}",
                       "not decidable", NOTHING_MEASURED, float("nan"), "dB")  # fmt: skip
    outcome = _worst([_of_cut(one, h, specification.decision) for h in held])
    worst = max(held, key=lambda h: float(h.over.max()))
    i = int(np.argmax(worst.over))
    margin = -float(worst.over[i])
    requirement = f"mask {one.name} ({one.formula}), {one.component}, {_plane_words(one)}{_band_words(one.band_ghz)}"
    text = (
        f"worst {-margin:+.2f} dB against the mask at {worst.angle_deg[i]:+.1f} deg, plane {worst.cut.plane_deg:g} deg, "
        f"{worst.cut.frequency_hz / 1e9:.3f} GHz; {100 * max(float(np.mean(h.over > 0)) for h in held):.1f} % of the angles beyond it"
    )
    if outcome != "not decidable":
        return Verdict(requirement, outcome, text, margin, "dB")
    open_ = [(abs(float(h.over[j])), float(h.possibly[j] - h.over[j]), float(h.angle_deg[j]))
             for h in held for j in np.flatnonzero((h.possibly > 0.0) & (h.surely <= 0.0))]  # fmt: skip
    if any(np.isinf(now) for _, now, _ in open_):
        return Verdict(requirement, outcome, f"{text}; not decidable: {ERRORS_UNKNOWN}", margin, "dB")
    needed, now, where = max(open_, key=lambda item: item[1] - item[0])
    text += f"; an expanded uncertainty below {max(needed, 0.01):.2f} dB at {where:+.1f} deg would decide it (now {now:.2f} dB there)"
    return Verdict(requirement, outcome, text, margin, "dB", needed)


def _plane_words(one: Mask) -> str:
    if one.plane == "all":
        return "planes every 15 deg"
    return f"{one.plane} plane" if isinstance(one.plane, str) else f"plane at {one.plane:g} deg"


def _held(one: Mask, cuts: dict[float, list[LevelCut]], peak_gain_dbi: dict[float, float]) -> list[_CutAgainstMask]:
    """Return every cut in a mask's band and planes held against it, as far as the mask speaks there."""
    comparisons = [
        _hold(one, cut, peak_gain_dbi[frequency])
        for frequency, here in cuts.items()
        if in_band(one.band_ghz, frequency)
        for cut in here
        if any(abs(cut.plane_deg - plane) < 1e-6 for plane in planes_of(one))
    ]
    return [held for held in comparisons if held.over.size]


def _hold(one: Mask, cut: LevelCut, peak_gain_dbi: float) -> _CutAgainstMask:
    limit = level_of(one, cut.angle_deg, frequency_hz=cut.frequency_hz, peak_gain_dbi=peak_gain_dbi)
    level, low, high = cut.bounds_db(one.component, relative=one.relative)
    away = np.abs(cut.angle_deg)
    here = np.isfinite(limit) & np.isfinite(level) & (away >= one.from_deg) & (away <= one.to_deg)
    sign = 1.0 if one.side == "upper" else -1.0
    best, bad = (low, high) if sign > 0 else (high, low)
    return _CutAgainstMask(cut, cut.angle_deg[here], *(sign * (x - limit)[here] for x in (level, best, bad)))


def _of_cut(one: Mask, h: _CutAgainstMask, rule: str) -> VerdictOutcome:
    """Decide one cut, allowed exceedances counted."""
    if rule == "simple":
        return "pass" if _accepted(one, h.angle_deg, h.over) else "fail"
    if _accepted(one, h.angle_deg, h.possibly):
        return "pass"
    return "not decidable" if _accepted(one, h.angle_deg, h.surely) else "fail"


def _accepted(one: Mask, angle_deg: FloatArray, over: FloatArray) -> bool:
    """Tell whether levels `over` a mask (dB) stay within what it allows."""
    beyond = over > 0.0
    if not beyond.any():
        return True
    allowed = np.abs(angle_deg) >= one.exceed_from_deg
    if np.any(beyond & ~allowed) or float(over.max()) > one.exceed_db:
        return False
    return float(np.sum(beyond)) <= one.exceed_share * float(np.sum(allowed))
