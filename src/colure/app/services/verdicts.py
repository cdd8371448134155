"""Runs and far-field files held against a specification."""

from __future__ import annotations

from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from colure.app.services import cuts, evaluation, processing
from colure.app.services.power_runs import PowerRun
from colure.app.storage.begun import changed_since
from colure.app.storage.folders import RunFolder
from colure.app.storage.run_kinds import NO_SPHERE, is_cuts
from colure.errors import InputError
from colure.model.campaign import Campaign
from colure.model.specification import Specification, load_specification
from colure.model.strict_json import json_text
from colure.model.whole import write_whole
from colure.values import briefly_shown

if TYPE_CHECKING:
    from colure.analysis.pipeline.recipe import Processed
    from colure.analysis.uncertainty.level_cuts import LevelCut
    from colure.analysis.verdict.verdicts import MaskView, Verdict
    from colure.app.services.pattern_object import FilePattern
    from colure.app.services.power_files import PowerPattern
    from colure.model.device import Device
    from colure.model.figure import Figure
    from colure.model.specification import Limit, Mask
    from colure.report.source import Verdicts


@dataclass(frozen=True)
@briefly_shown
class Judged:
    """A specification, every requirement's verdict, and the cut that comes nearest to each mask."""

    specification: Specification
    verdicts: list[Verdict]
    views: list[MaskView]

    @property
    def outcome(self) -> str:
        """Pass, fail or not decidable, of all together."""
        from colure.analysis.verdict.verdicts import overall

        return overall(self.verdicts)


def judge_run(campaign: Campaign, run: RunFolder, specification_file: Path) -> Judged:
    """Process a run and hold it against a specification file; the verdicts are written beside the figures.

    Raises
    ------
    InputError
        If the file is malformed, names what was not measured, or the run cannot be processed.
    """
    specification = load_specification(specification_file)
    if is_cuts(run):
        judged, own = _judge_cuts(campaign, run, specification), run
    elif not processing.has_phase(run):
        figures = evaluation.read_figures(campaign, run)
        judged, own = judge_opened(PowerRun(campaign, run), f"run {run.path.name}", figures, specification), run
    else:
        processed = processing.process(campaign, run)
        judged = evaluate_and_judge(processed, run, specification)[1]
        own = processing.state_in(processed, run)
    content = {
        "specification": specification.name,
        "document": specification.document,
        "decision": specification.decision,
        "outcome": judged.outcome,
        "edited": changed_since(run, campaign),
        "verdicts": [one.__dict__ for one in judged.verdicts],
    }
    for target in processing.addresses(own, "verdicts.json"):
        write_whole(target, json_text(content, indent=1))
    return judged


def _judge_cuts(campaign: Campaign, run: RunFolder, specification: Specification) -> Judged:
    """Hold the figures of a run's cuts against limits that name them; masks need the transform's principal cuts."""
    if specification.masks:
        raise InputError(
            [f"mask {mask.name!r}: needs a sphere: run {run.path.name} {NO_SPHERE}; limits on its figures can be held"
             for mask in specification.masks]
        )  # fmt: skip
    figures = cuts.evaluate(campaign, run).figures
    names = sorted({one.name for one in figures})
    missing = [one.figure for one in specification.limits if one.figure not in names]
    if missing:
        raise InputError(
            [f"limit on {name}: needs a figure of this run's cuts, such as {', '.join(names[:3])}; {run.path.name} {NO_SPHERE}"
             for name in missing]
        )  # fmt: skip
    return decided(specification, figures, {})


def judge(processed: Processed, figures: list[Figure], specification: Specification) -> Judged:
    """Hold a processed run against a specification; raises `InputError` if it names what was not measured."""
    return decided(specification, figures, _mask_cuts(processed, specification), device=processed.device)


def evaluate_and_judge(
    processed: Processed, run: RunFolder, specification: Specification
) -> tuple[list[Figure], Judged]:
    """Return a processed run's figures and what `judge` says of them; the cuts of the masks are worked out beside the figures.

    Raises
    ------
    InputError
        As `judge` does.
    """
    with ThreadPoolExecutor(1) as beside:
        waiting = beside.submit(_mask_cuts, processed, specification)
        figures = evaluation.evaluate(processed, run)
        return figures, decided(specification, figures, waiting.result(), device=processed.device)


def _mask_cuts(processed: Processed, specification: Specification) -> dict[float, list[LevelCut]]:
    """Return the cuts that the masks look at with their intervals, by frequency."""
    from colure.analysis.uncertainty.level_cuts import level_cuts
    from colure.analysis.verdict.verdicts import in_band

    if processed.chamber is not None and not processed.chamber.reference.absolute:
        _require_gain(specification, "levels without a reference (reference.method = 'none')", "this run")
    planes = _planes(specification)
    return {
        float(f): level_cuts(processed.budget.only(i), planes)[0]
        for i, f in enumerate(processed.frequency_hz)
        if any(in_band(mask.band_ghz, float(f)) for mask in specification.masks)
    }


def judge_file(path: Path, specification_file: Path, *, slant_deg: float | None = None) -> Judged:
    """Hold a far-field file (.nc, .csv) against a specification file; nothing is written.

    A guard band decides nothing where the file states no errors, and no mask is passed where the file holds no field.
    evaluation.toml beside the file asks for more figures, as in a campaign.

    Raises
    ------
    InputError
        If a file is malformed, or the specification names what the far field does not hold.
    """
    from colure.app.services.pattern_object import FilePattern, open_pattern
    from colure.app.services.power_files import is_power_file, open_power

    specification = load_specification(specification_file)
    if is_power_file(path):
        power = open_power(path, slant_deg=slant_deg or 0.0)
        return judge_opened(power, path.name, list(power.evaluate(FilePattern.wanted_beside(path))), specification)
    opened = open_pattern(path, slant_deg=slant_deg)
    return judge_opened(opened, path.name, list(opened.evaluate(opened.wanted_beside(path))), specification)


def judge_opened(
    opened: FilePattern | PowerPattern, name: str, figures: list[Figure], specification: Specification
) -> Judged:
    """Hold an opened file and its figures against a specification; raises `InputError` as `judge_file` does."""
    from colure.app.services.power_files import PowerPattern

    if isinstance(opened, PowerPattern):
        _require_total(specification, name)
    if opened.scale != "gain":
        _require_gain(specification, opened.scale, name)
    planes = _planes(specification)
    cuts = opened.cuts(planes) if planes else {}
    judged = decided(specification, figures, cuts)
    masks = len(specification.masks)
    limits, held = judged.verdicts[: len(judged.verdicts) - masks], judged.verdicts[len(judged.verdicts) - masks :]
    known = [_only_where_known(one, mask, cuts) for one, mask in zip(held, specification.masks, strict=True)]
    return replace(judged, verdicts=[*limits, *known])


def verdicts_for_report(judged: Judged) -> Verdicts:
    """Return verdicts as the report shows them."""
    from colure.report.source import Requirement, Verdicts

    rule = {"simple": "simple acceptance", "guard-band": "guard band of the expanded uncertainty"}
    specification = judged.specification
    asked = [Requirement(one.figure, _bounds(one, judged)) for one in specification.limits]
    asked += [Requirement("", one.name) for one in specification.masks]
    return Verdicts(
        specification.name,
        specification.document,
        rule[specification.decision],
        specification.decision,
        judged.outcome,
        judged.verdicts,
        judged.views,
        asked,
    )


def _bounds(one: Limit, judged: Judged) -> str:
    """Return the bounds of a limit in symbols, with its unit and band."""
    unit = judged.verdicts[judged.specification.limits.index(one)].unit
    bounds = [
        f"{sign} {x:g} {unit}" for sign, x in (("\u2265", one.at_least), ("\u2264", one.at_most)) if x is not None
    ]
    band = "" if one.band_ghz is None else f", {one.band_ghz[0]:g} \u2013 {one.band_ghz[1]:g} GHz"
    return ", ".join(bounds) + band


def _require_total(specification: Specification, name: str) -> None:
    """Raise `InputError` for masks on a component that power without phase does not have."""
    faults = [
        f"mask {mask.name!r}: component = {mask.component!r}, but {name} holds total power; set component = 'total'"
        for mask in specification.masks
        if mask.component != "total"
    ]
    if faults:
        raise InputError(faults)


def _require_gain(specification: Specification, scale: str, name: str) -> None:
    """Raise `InputError` for masks in dBi, or by published curves in dBi, where there is no gain but another scale."""
    faults = []
    for mask in specification.masks:
        if not mask.relative:
            faults.append(f"mask {mask.name!r}: in dBi, but {name} holds {scale}; set relative = true (dB re the peak)")
        elif mask.formula != "table" and mask.peak_gain_dbi is None:
            faults.append(f"mask {mask.name!r}: peak_gain_dbi: missing; {name} holds {scale}, no gain (dBi)")
    if faults:
        raise InputError(faults)


def _only_where_known(verdict: Verdict, mask: Mask, cuts: dict[float, list[LevelCut]]) -> Verdict:
    """Return a mask's verdict, not decidable where it speaks at angles at which a file holds no field."""
    import numpy as np

    from colure.analysis.verdict.masks import level_of
    from colure.analysis.verdict.verdicts import in_band, planes_of

    silent = 0
    for frequency, here in cuts.items():
        for cut in here if in_band(mask.band_ghz, frequency) else ():
            if not any(abs(cut.plane_deg - plane) < 1e-6 for plane in planes_of(mask)):
                continue
            limit, away = (
                level_of(mask, cut.angle_deg, frequency_hz=frequency, peak_gain_dbi=0.0),
                np.abs(cut.angle_deg),
            )
            asked = np.isfinite(limit) & (away >= mask.from_deg) & (away <= mask.to_deg)
            silent = max(silent, int(np.sum(asked & np.isnan(cut.amplitude[mask.component]))))
    # A share of allowed exceedances counts every angle; one fault beyond what is allowed fails whatever lies elsewhere.
    if silent == 0 or (verdict.outcome == "fail" and mask.exceed_share == 0.0):
        return verdict
    words = f"not decidable: the mask also holds at {silent} angles of a cut where the file holds no field"
    return replace(verdict, outcome="not decidable", text=f"{verdict.text}; {words}", needed=None)


def _planes(specification: Specification) -> tuple[float, ...]:
    from colure.analysis.verdict.verdicts import planes_of

    return tuple(sorted({plane for mask in specification.masks for plane in planes_of(mask)}))


def decided(
    specification: Specification,
    figures: list[Figure],
    cuts: dict[float, list[LevelCut]],
    *,
    device: Device | None = None,
) -> Judged:
    """Hold figures and cuts by frequency against a specification.

    device
        What it was declared to be: masks on co- and cross-polar levels decide nothing where the wave at the peak contradicts it.
    """
    from colure.analysis.findings.wave_at_peak import wave_doubt
    from colure.analysis.verdict.verdicts import judge as decide
    from colure.analysis.verdict.verdicts import nearest_cuts

    gain = {frequency: float("nan") for frequency in cuts}
    gain |= {figure.frequency_hz: figure.value for figure in figures if figure.name == "gain_dbi"}
    try:
        verdicts = decide(specification, figures, cuts, gain, doubt=wave_doubt(figures, device))
        return Judged(
            specification, _qualified(verdicts, specification, figures), nearest_cuts(specification, cuts, gain)
        )
    except ValueError as error:
        raise InputError([str(error)]) from None


def _qualified(verdicts: list[Verdict], specification: Specification, figures: list[Figure]) -> list[Verdict]:
    """Return verdicts that say beside every pass by guard band what its interval does not hold."""
    from colure.report.source import NOT_HELD

    left_out = next((f.not_included for f in figures if f.not_included), ())
    if specification.decision != "guard-band" or not left_out:
        return verdicts
    words = f"{NOT_HELD}{', '.join(left_out)})"
    return [replace(one, text=one.text + words) if one.outcome == "pass" else one for one in verdicts]
