"""What is read from a processed run: figures with intervals, findings, effects of each step."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from colure.app.services import cuts
from colure.app.services.processing import addresses, has_phase, opened, own_state, process, processed, state_in
from colure.app.storage.folders import RunFolder, require_record
from colure.app.storage.run_kinds import is_cuts
from colure.errors import InputError
from colure.model.campaign import Campaign
from colure.model.strict_json import json_text
from colure.model.whole import write_whole

if TYPE_CHECKING:
    from collections.abc import Callable

    from colure.analysis.findings.finding import Finding
    from colure.analysis.pipeline.recipe import Processed
    from colure.analysis.setup.flip_test import Flip
    from colure.model.figure import Figure


@dataclass(frozen=True)
class StepEffects:
    """Figures at mid-band with the whole recipe, and by step what they are without it."""

    labels: dict[str, str]
    whole: dict[str, float]
    without: dict[str, dict[str, float]]


def effects(campaign: Campaign, run: RunFolder) -> StepEffects:
    """Process a run with each step of its recipe left out in turn.

    Raises
    ------
    InputError
        If the record lacks what the recipe needs.
    """
    record = opened(run)
    processed_run = processed(campaign, record, campaign.recipe())
    assert processed_run.recipe is not None  # the recipe always says what it did

    def figures(processed: Processed) -> dict[str, float]:
        chosen = processed.budget.figures
        values = chosen.values(processed.expansion)[processed.frequency_hz.size // 2]
        return {what.name: what.display(float(v)) for what, v in zip(chosen.definitions, values, strict=True)}

    left_out = {
        str(name): figures(processed(campaign, record, processed_run.recipe.without(name)))
        for name in processed_run.recipe.switchable
    }
    return StepEffects(
        {what.name: f"{what.label} / {what.unit}" for what in processed_run.budget.figures.definitions},
        figures(processed_run),
        left_out,
    )


def findings(campaign: Campaign, run: RunFolder) -> list[Finding]:
    """Return a run's self-consistency checks, largest effect first; of a run of cuts those that speak against it.

    Raises
    ------
    InputError
        If the record lacks what the recipe needs.
    """
    from colure.analysis.findings.self_check import room_of, self_check

    if is_cuts(run):
        return sorted(cuts.read(campaign, run).findings, key=lambda one: (one.rank, -one.level_db))
    processed_run = processed(campaign, opened(run), campaign.recipe())
    room = room_of(processed_run, campaign.chamber)
    return self_check(processed_run, campaign.chamber, (processed_run.device or campaign.device).slant_deg, room=room)


def flip_result(campaign: Campaign, run: RunFolder) -> Flip:
    """Evaluate the record of a flip test; raises `InputError` if it is not one."""
    from colure.analysis.setup.flip_test import evaluate_flip

    try:
        return evaluate_flip(opened(run.state(None)), campaign.chamber)
    except ValueError as error:
        raise InputError([str(error)]) from None


def marked_by_data(processed: Processed, figures: list[Figure]) -> list[Figure]:
    """Return figures marked where the data contradict what was declared.

    What is more than was declared makes the intervals too short: it is said wherever a figure is, not among the findings alone.
    """
    from colure.analysis.findings.declared import against_declaration
    from colure.analysis.findings.finding import without_room
    from colure.analysis.findings.sanity import marked, sanity

    return marked(figures, without_room([*sanity(processed, figures), *against_declaration(processed)]))


def evaluate(processed: Processed, run: RunFolder) -> list[Figure]:
    """Read the figures with their budgets and save them as JSON; of one device state under its own name."""
    from colure.analysis.uncertainty.budget import budget_of

    own = run if run.chosen is not None else state_in(processed, run)
    budget = budget_of(processed.budget)
    budget = replace(budget, figures=[*budget.figures, *_bandwidths(processed, budget.figures)])
    budget = replace(budget, figures=marked_by_data(processed, budget.figures))
    content = json_text([figure.as_dict() for figure in budget.figures], indent=1)
    for figures in addresses(own, "figures.json"):
        write_whole(figures, content)
    kept = {
        "names": budget.names,
        "frequency_hz": [float(f) for f in budget.frequency_hz],
        "correlation": budget.correlation.round(4).tolist(),
    }
    for correlations in addresses(own, "correlations.json"):
        write_whole(correlations, json_text(kept))
    return budget.figures


def read_figures(campaign: Campaign, run: RunFolder) -> list[Figure]:
    """Process a run and read its figures; a power-only run gives the power figures, one of cuts those of its cuts.

    Raises `InputError` as each of them does.
    """
    require_record(run)
    if is_cuts(run):
        return cuts.evaluate(campaign, run).figures
    if not has_phase(run):
        return evaluate_power(campaign, run)
    return known_figures(campaign, run, lambda: process(campaign, run))


def known_figures(campaign: Campaign, run: RunFolder, processed_: Callable[[], Processed]) -> list[Figure]:
    """Return the figures of a run as its campaign's recipe gives them: kept from last time, or read from `processed_()` and kept."""
    from colure.app.storage.kept_figures import keep_figures, kept_figures, key_of

    key = key_of(campaign, run)
    written = [run.figures, run.correlations]
    figures = kept_figures(run, key, written) if run.pattern.is_file() else None
    if figures is None:
        figures = evaluate(processed_(), run)
        keep_figures(run, key, written, figures)
    return figures


def _bandwidths(processed: Processed, figures: list[Figure]) -> list[Figure]:
    """Return the bandwidths that evaluation.toml asks for."""
    from colure.analysis.figures.bandwidths import bandwidth_of

    try:
        return [bandwidth_of(span, figures) for span in processed.budget.figures.settings.bandwidths]
    except ValueError as error:
        raise InputError([str(error)]) from None


def evaluate_power(campaign: Campaign, run: RunFolder) -> list[Figure]:
    """Read the figures that power alone gives from a power-only run, and save them as JSON.

    Raises
    ------
    InputError
        If the record lacks directions or polarizations.
    """
    from colure.app.services.power_runs import PowerRun

    figures = list(PowerRun(campaign, run).evaluate())
    for target in addresses(own_state(run), "figures.json"):
        write_whole(target, json_text([figure.as_dict() for figure in figures], indent=1))
    return figures
