"""Figures with intervals against the recipe on the same record, in one run: `python benchmarks/budget.py [--quick]`.

The demo's device in a drawn chamber, 11 and 25 frequencies. Baselines: one full recipe on the same record; and the plain way
to an interval, in which every changed pattern is read anew (one frequency). CPU seconds of this process, so that a busy
machine counts the same as an idle one.
"""

from __future__ import annotations

import sys
import tempfile
import time
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import numpy as np

from colure.analysis.pipeline.recipe import Processed
from colure.analysis.uncertainty.budget import budget_of
from colure.analysis.uncertainty.causes import causes
from colure.analysis.uncertainty.level_cuts import level_cuts
from colure.analysis.uncertainty.trial import Trial
from colure.app import services
from colure.app.services.rehearsal import record_of_rehearsal
from colure.app.storage.folders import run_folder
from colure.model.campaign import Campaign
from colure.model.files import save_dataset
from colure.planning.preflight import make_plan

ROUNDS = 3
COUNTS = (11, 25)


def seconds(what: Callable[[], object], rounds: int) -> float:
    """Return the shortest of several times."""
    found = []
    for _ in range(rounds):
        begin = time.process_time()
        what()
        found.append(time.process_time() - begin)
    return min(found)


def row(what: str, taken: float, baseline: float, name: str = "the recipe") -> None:
    """Print seconds and their ratio to a named baseline."""
    print(f"{what}: {taken:.2f} s, {taken / baseline:.2f} times {name}", flush=True)


def measured(folder: Path, frequencies: int, rounds: int) -> Processed:
    """Print the rows of one number of frequencies and return the processed record."""
    services.new_campaign(folder)
    base = Campaign.load(folder)
    campaign, plan = make_plan(replace(base, goal=base.goal.model_copy(update={"points": frequencies})))
    run = run_folder(folder, "first")
    run.path.mkdir(parents=True)
    save_dataset(record_of_rehearsal(campaign, plan, seed=1), run.record)
    done = services.process(campaign, run)
    recipe = seconds(lambda: services.process(campaign, run), rounds)
    print(f"{frequencies} frequencies, the recipe: {recipe:.2f} s")
    row("figures with intervals", seconds(lambda: budget_of(done.budget), rounds), recipe)
    services.known_figures(campaign, run, lambda: done)
    again = seconds(lambda: services.known_figures(campaign, run, lambda: done), rounds)
    row("the same question again", again, recipe)
    middle = done.budget.only(frequencies // 2)
    row("levels of two cuts with intervals", seconds(lambda: level_cuts(middle, (0.0, 90.0)), rounds), recipe)
    return done


def against_reading_anew(done: Processed, rounds: int) -> None:
    """Print how long one frequency takes, and what reading every changed pattern anew would take."""
    one = done.budget.only(done.frequency_hz.size // 2)
    alone = seconds(lambda: budget_of(one), rounds)
    nominal = one.step.expansion(one.sphere.field)
    trial = Trial(one, nominal, *one.figures.read(nominal))
    changes = np.concatenate([cause.changes for cause in causes(trial)])
    adding = seconds(lambda: list(causes(trial)), 1)
    anew = seconds(lambda: trial.effects(changes), 1)
    print(f"one frequency, {len(changes)} changes read anew: {adding + anew:.2f} s")
    row("one frequency", alone, adding + anew, "reading anew")


def main() -> None:
    """Print the rows."""
    rounds = 1 if "--quick" in sys.argv[1:] else ROUNDS
    done = None
    for frequencies in COUNTS:
        with tempfile.TemporaryDirectory() as where:
            done = measured(Path(where) / "campaign", frequencies, rounds)
    if done is not None:
        against_reading_anew(done, rounds)


if __name__ == "__main__":
    main()
