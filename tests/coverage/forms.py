"""Every form of an operator's scan on every positioner, in both styles, held against the closed-form truth.

`python -m tests.coverage.forms --draws 100 --minutes 30` prints for each case how many figures were inside their intervals, or why
the plan refuses it; every case has its portion in turn, so that an early end leaves even counts.
"""

from __future__ import annotations

import argparse
import tempfile
import time
from collections import defaultdict
from dataclasses import dataclass, field
from pathlib import Path

import numpy as np

from colure.analysis.cuts.figures import cut_figures, evaluated
from colure.analysis.cuts.scan import read_cuts
from colure.app.services.reference import reference_of
from colure.app.services.rehearsal import _record, measured, rehearse
from colure.errors import InputError
from colure.model.campaign import Campaign
from colure.planning.preflight import make_plan
from tests.analysis.true_cuts import true_cut
from tests.app.test_cuts import AZ_EL, EL_AZ, ROLL, campaign

BOTH = "offset_deg = [0, 90]\n"
#: Form of a scan: the lines of [scan].
FORMS = {
    "one cut": 'theta_deg = "-90:90:1"\nphi_deg = 0\n',
    "two cuts, both components": f'theta_deg = "-60:60:1"\nphi_deg = [0, 90]\n{BOTH}',
    "azimuth cut": 'azimuth_deg = "-90:90:1"\nelevation_deg = 0\nprobe = "fixed"\n',
    "rectangle": f'azimuth_deg = "-30:30:3"\nelevation_deg = "-30:30:3"\nprobe = "fixed"\n{BOTH}',
    "list of angles": f"theta_deg = [-40, -30, -22, -15, -10, -6, -3, 0, 2, 5, 9, 14, 20, 31]\nphi_deg = [0, 45]\n{BOTH}",
    "circles through a direction": f"great_circles_deg = [0, 45]\nthrough_deg = [6, 3]\nalong_deg = '-40:40:1'\n{BOTH}",
    "csv of directions": f'directions = "d.csv"\n{BOTH}',
    "half sphere": f'theta_deg = "-90:90:6"\nphi_deg = "0:174:6"\n{BOTH}',
    "half sphere, one offset": 'theta_deg = "-90:90:6"\nphi_deg = "0:180:6"\noffset_deg = 0\n',
    "sphere, from 0 deg, unequal offsets": 'theta_deg = "0:180:6"\nphi_deg = "0:354:6"\noffset_deg = [20, 65]\n',
    "sphere in azimuth and elevation": f'azimuth_deg = "-174:180:6"\nelevation_deg = "-90:90:6"\nprobe = "fixed"\n{BOTH}',
    "three repeats": 'theta_deg = "-60:60:2"\nphi_deg = 0\nrepeats = 3\n',
}
GEOMETRIES = (ROLL, AZ_EL, EL_AZ)
STYLES = ("step", "fly")
CSV = "name,az_deg,el_deg\n" + "".join(
    f"p{i},{a},{e}\n" for i, (a, e) in enumerate([(0, 0), (10, 0), (0, 10), (-20, 5), (30, -10)])
)


@dataclass
class Tally:
    """What was counted of one case: campaigns, figures stated, figures inside; why it was refused."""

    campaigns: int = 0
    stated: int = 0
    inside: int = 0
    refused: str = ""
    kind: str = ""
    missed: dict[str, int] = field(default_factory=lambda: defaultdict(int))

    @property
    def share(self) -> float:
        return self.inside / self.stated if self.stated else float("nan")


def planned(folder: Path, form: str, geometry: str, style: str) -> tuple[Campaign, object]:
    """Return the plan of a form; raises `InputError` if it is refused."""
    made = campaign(folder, "horn", "37-40", geometry, FORMS[form])
    (folder / "d.csv").write_text(CSV)
    goal = (
        (folder / "goal.toml")
        .read_text()
        .replace("points = 2\n", f'points = 2\nstyle = "{style}"\nwanted_level_db = -40\n')
    )
    (folder / "goal.toml").write_text(goal)
    return make_plan(Campaign.load(made.folder))


def draw(resolved: Campaign, plan, seed: int, tally: Tally) -> None:
    """Carry one campaign out and count its figures at the second frequency."""
    tally.campaigns += 1
    if resolved.goal.scan is None:
        tally.kind = "grid"
        found = rehearse(resolved, plan, seed=seed).findings
        rows = [
            (one.figure, one.truth, one.inside)
            for one in found
            if one.counts and one.figure.frequency_hz == plan.frequency_hz[1]
        ]
        rows = [
            row
            for row in rows
            if not row[0].value == row[1] == row[0].lower == row[0].upper and np.isfinite(row[0].value)
        ]
    else:
        tally.kind = "directions"
        rows = _cut_rows(resolved, plan, seed)
    tally.stated += len(rows)
    tally.inside += sum(inside for _, _, inside in rows)
    for figure, _, inside in rows:
        if not inside:
            tally.missed[figure.name] += 1


def _cut_rows(resolved: Campaign, plan, seed: int) -> list:
    rehearsed, moments = measured(resolved, plan, seed=seed)
    reference = reference_of(resolved, plan.frequency_hz)
    scan = read_cuts(_record(plan, rehearsed, moments), resolved.chamber, resolved.device, reference)
    if resolved.goal.scan.directions is not None:
        return []  # single directions are stated without intervals
    figures = cut_figures(scan, resolved.chamber, resolved.device, resolved.evaluation(), order=plan.order)
    truth = {
        f"{cut.cut.name}_{key}": value
        for cut in evaluated(scan, resolved.device)
        for key, value in _truth(rehearsed, cut, scan).items()
    }
    return [
        (one, truth[one.name], bool(one.lower <= truth[one.name] <= one.upper))
        for one in figures
        if one.frequency_hz == plan.frequency_hz[1] and not one.reason and one.name in truth and np.isfinite(one.value)
    ]


def _truth(rehearsed, cut, scan) -> dict[str, float]:
    vector = cut.cross is not None
    return true_cut(rehearsed.device, 1, cut.cut, slant_deg=float(scan.scan.offsets_deg[0]), vector=vector)


def count(draws: int, *, minutes: float = 1e9, first: int = 1, only: str = "") -> dict[tuple[str, str, str], Tally]:
    """Count every case, one draw of each in turn, until all draws are done or the time is over."""
    end = time.perf_counter() + 60.0 * minutes
    cases = [(f, g, s) for f in FORMS for g in GEOMETRIES for s in STYLES if only in f"{f}, {g}, {s}"]
    tallies = {case: Tally() for case in cases}
    with tempfile.TemporaryDirectory() as where:
        plans = {}
        for number, case in enumerate(cases):
            try:
                plans[case] = planned(Path(where) / str(number), *case)
            except InputError as error:
                tallies[case].refused = error.faults[0]
        for seed in range(first, first + draws):
            for case, (resolved, plan) in plans.items():
                if time.perf_counter() > end:
                    return tallies
                draw(resolved, plan, seed, tallies[case])
    return tallies


def table(tallies: dict[tuple[str, str, str], Tally]) -> str:
    """Return what was counted as text, and the sum of all."""
    lines = []
    for (form, geometry, style), one in tallies.items():
        name = f"{form:36s} {geometry:24s} {style:5s}"
        worst = ", ".join(f"{n} {c}" for n, c in sorted(one.missed.items(), key=lambda pair: -pair[1])[:3])
        lines.append(f"{name} refused: {one.refused[:150]}" if one.refused else
                     f"{name} {one.kind:10s} {one.campaigns:4d} {100 * one.share:6.1f} % of {one.stated:5d}  {worst}")  # fmt: skip
    stated, inside = (sum(getattr(one, key) for one in tallies.values()) for key in ("stated", "inside"))
    lines.append(f"all: {100 * inside / max(1, stated):.2f} % of {stated}")
    return "\n".join(lines)


if __name__ == "__main__":
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--draws", type=int, default=5)
    parser.add_argument("--first", type=int, default=1)
    parser.add_argument("--minutes", type=float, default=1e9)
    parser.add_argument("--only", default="")
    said = parser.parse_args()
    print(table(count(said.draws, minutes=said.minutes, first=said.first, only=said.only)))
