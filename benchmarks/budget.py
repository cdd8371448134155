"""Figures with intervals against reading every changed pattern anew: `python benchmarks/budget.py [--quick]`.

The demo's device in a drawn chamber. Prints seconds, the ratio to the former way (every change read anew, counted on one
frequency and multiplied), and how long the same question takes a second time.
"""

from __future__ import annotations

import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

import numpy as np

from colure.analysis.uncertainty.budget import budget_of
from colure.analysis.uncertainty.causes import causes
from colure.analysis.uncertainty.trial import Bench
from colure.app import services
from colure.app.services.rehearsal import carry_out

ROUNDS = 3


def seconds(what: Callable[[], object], rounds: int) -> float:
    """Return the shortest of several times."""
    found = []
    for _ in range(rounds):
        begin = time.perf_counter()
        what()
        found.append(time.perf_counter() - begin)
    return min(found)


def main() -> None:
    """Print the rows."""
    rounds = 1 if "--quick" in sys.argv[1:] else ROUNDS
    with tempfile.TemporaryDirectory() as where:
        folder = Path(where) / "campaign"
        services.new_campaign(folder)
        campaign, plan = services.make_plan(folder)
        done = carry_out(campaign, plan, seed=1).processed
    inputs = done.budget
    count = inputs.sphere.frequency_hz.size
    now = seconds(lambda: budget_of(inputs), rounds)
    one = inputs.only(count // 2)
    nominal = one.step.expansion(one.sphere.field)
    bench = Bench(one, nominal, one.figures.values(nominal), one.figures.places(nominal))
    changes = np.concatenate([cause.changes for cause in causes(bench)])
    adding = seconds(lambda: list(causes(bench)), 1)
    anew = seconds(lambda: bench.effects(changes), 1)
    alone = seconds(lambda: budget_of(one), rounds)
    print(f"figures with intervals, {count} frequencies: {now:.2f} s")
    print(f"one frequency: {alone:.2f} s, of which causes {adding:.2f} s")
    print(
        f"reading {len(changes)} changes anew, one frequency: {anew:.2f} s; {(anew + adding) / alone:.1f} times as long"
    )


if __name__ == "__main__":
    main()
