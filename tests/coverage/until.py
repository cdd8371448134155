"""Scans that end when they know enough, counted: is what they claim true, and how much time do they take?

`python -m tests.coverage.until --draws 20` prints one line for each device.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass, field, replace
from pathlib import Path
from tempfile import TemporaryDirectory

import numpy as np

from colure.app import services
from colure.app.services.rehearsal import _record, measured
from colure.app.services.stopping import first_enough
from colure.model.evaluation import Evaluation
from colure.twin.campaign_truth import asked_of
from colure.twin.truth import truth_of
from tests.coverage.asking import arguments
from tests.coverage.scenarios import SCENARIOS

#: Devices, and what an operator would want of each (expanded, in the figure's unit).
WANTED: Mapping[str, Mapping[str, float]] = {
    "4 x 4 panel": {"gain_dbi": 0.4, "directivity_dbi": 0.25, "beamwidth_e_deg": 1.0},
    "38 GHz horn": {"gain_dbi": 0.4, "beamwidth_e_deg": 0.5, "beamwidth_h_deg": 0.5},
    "2.4 GHz patch, 1 m": {"gain_dbi": 0.5, "directivity_dbi": 0.3},
}


@dataclass
class Count:
    """Campaigns of one device: claims made and held, share of the whole plan's time, how many ended early."""

    held: list[bool] = field(default_factory=list)
    inside: list[bool] = field(default_factory=list)
    time: list[float] = field(default_factory=list)

    def add(self, other: Count) -> None:
        """Take another count in."""
        self.held += other.held
        self.inside += other.inside
        self.time += other.time

    def line(self, name: str) -> str:
        """Return it as text."""
        early = np.mean(np.array(self.time) < 1.0)
        return (
            f"{name:24s} {len(self.time):4d} campaigns, {100 * early:5.1f} % ended early, median time {np.median(self.time):.2f} of the plan's, "
            f"wanted uncertainty held in {100 * np.mean(self.held):.1f} % of {len(self.held)}, interval in {100 * np.mean(self.inside):.1f} %"
        )


def ended(name: str, folder: Path, seeds: Sequence[int]) -> Count:
    """Measure campaigns in drawn chambers, end each when it knows, and hold its claims against the truth."""
    scenario, out = SCENARIOS[name], Count()
    where = replace(scenario, goal={**scenario.goal, "until": dict(WANTED[name])}).write(folder / "campaign")
    campaign, plan = services.make_plan(where)
    for seed in seeds:
        rehearsed, moments = measured(campaign, plan, seed=seed)
        record = _record(plan, rehearsed, moments)
        found = first_enough(campaign, plan, record)
        out.time.append(1.0 if found is None else float(moments[found[0].last] / moments[-1]))
        if found is None:
            continue  # the whole plan was measured: that is counted elsewhere
        asked = replace(asked_of(campaign, Evaluation()), mismatch_loss_db=None)
        truth = truth_of(rehearsed.device, asked)
        for figure, limit in WANTED[name].items():
            errors = np.abs(np.array(found[1].values[figure]) - [row[figure].value for row in truth])
            out.held += list(errors <= limit)
            out.inside += list(errors <= found[1].half_widths[figure])
    return out


def count(name: str, draws: int, *, first: int = 1, processes: int = 1) -> Count:
    """Count over campaigns of a device."""
    seeds, total = range(first, first + draws), Count()
    with TemporaryDirectory() as folder:
        places = [Path(folder) / str(i) for i in range(processes)]
        if processes == 1:
            return ended(name, places[0], seeds)
        with ProcessPoolExecutor(processes) as pool:
            parts = [seeds[i::processes] for i in range(processes)]
            for part in pool.map(ended, [name] * processes, places, parts):
                total.add(part)
    return total


def main() -> None:
    """Print one line for each device."""
    parser = arguments(__doc__ or "")
    asked = parser.parse_args()
    for name in asked.names or WANTED:
        found = count(name, asked.draws, first=asked.first, processes=asked.processes)
        print(found.line(name), flush=True)


if __name__ == "__main__":
    main()
