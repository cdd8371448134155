"""Runs held against a specification."""

from __future__ import annotations

import json
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from colure.app import service
from colure.app.folders import RunFolder
from colure.model.campaign import Campaign
from colure.model.loading import InputError
from colure.model.specification import Specification, load_specification

if TYPE_CHECKING:
    from colure.analysis.recipe import Processed
    from colure.analysis.verdicts import MaskView, Verdict
    from colure.model.figure import Figure
    from colure.model.plan import Plan


@dataclass(frozen=True)
class Judged:
    """A specification, every requirement's verdict, and the cut that comes nearest to each mask."""

    specification: Specification
    verdicts: list[Verdict]
    views: list[MaskView]

    @property
    def outcome(self) -> str:
        """Pass, fail or not decidable, of all together."""
        from colure.analysis.verdicts import overall

        return overall(self.verdicts)


def judge_run(campaign: Campaign, run: RunFolder, specification_file: Path, *, state: str | None = None) -> Judged:
    """Process a run and hold it against a specification file; the verdicts are written beside the figures.

    Raises
    ------
    InputError
        If the file is malformed, names what was not measured, or the run cannot be processed.
    """
    specification = load_specification(specification_file)
    done = service.process(campaign, run, state=state)
    judged = judge(done, service.evaluate(done, run), specification)
    content = {
        "specification": specification.name,
        "document": specification.document,
        "decision": specification.decision,
        "outcome": judged.outcome,
        "verdicts": [one.__dict__ for one in judged.verdicts],
    }
    for target in service.addresses(run, run.path / "verdicts.json", service.state_in(done, run)):
        target.write_text(json.dumps(content, indent=1), encoding="utf-8")
    return judged


def judge(done: Processed, figures: list[Figure], specification: Specification) -> Judged:
    """Hold a processed run against a specification; raises `InputError` if it names what was not measured."""
    from colure.analysis.profiles import level_cuts
    from colure.analysis.verdicts import in_band, nearest_cuts, planes_of
    from colure.analysis.verdicts import judge as decide

    planes = tuple(sorted({plane for mask in specification.masks for plane in planes_of(mask)}))
    cuts = {
        float(f): level_cuts(done.budget.only(i), planes)[0]
        for i, f in enumerate(done.frequency_hz)
        if any(in_band(mask.band_ghz, float(f)) for mask in specification.masks)
    }
    gain = {figure.frequency_hz: figure.value for figure in figures if figure.name == "gain_dbi"}
    try:
        verdicts = decide(specification, figures, cuts, gain)
        return Judged(
            specification, _qualified(verdicts, specification, figures), nearest_cuts(specification, cuts, gain)
        )
    except ValueError as error:
        raise InputError([str(error)]) from None


def _qualified(verdicts: list[Verdict], specification: Specification, figures: list[Figure]) -> list[Verdict]:
    """Return verdicts that say beside every pass by guard band what its interval does not hold."""
    left_out = next((f.not_included for f in figures if f.not_included), ())
    if specification.decision != "guard-band" or not left_out:
        return verdicts
    words = f" (not included, because nothing is declared: {', '.join(left_out)})"
    return [replace(one, text=one.text + words) if one.outcome == "pass" else one for one in verdicts]


def report_on(campaign: Campaign, plan: Plan, run: RunFolder, done: Processed, specification_file: Path | None) -> None:
    """Evaluate a processed run and write its report, with a verdict if there is a specification file."""
    figures = service.known_figures(campaign, run, lambda: done, state=service.state_in(done, run))
    judged = None if specification_file is None else judge(done, figures, load_specification(specification_file))
    service.write_report(campaign, plan, run, done, figures, judged)
