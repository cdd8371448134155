"""How often a run speaks against what chamber.toml declares: right declarations, all too small by two, echoes alone, each alone.

`python -m tests.coverage.declarations --draws 25 "dipole along x" ...` prints the share of campaigns with a finding. A campaign is
measured in a chamber drawn from the true declarations and read with wrong ones. Only what a person sees counts: `colure findings`.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass, field
from pathlib import Path
from tempfile import TemporaryDirectory

from colure.analysis.findings.self_check import self_check
from colure.analysis.pipeline.recipe import process
from colure.app import services
from colure.app.services.reference import probe_of
from colure.app.services.rehearsal import record_of_rehearsal
from colure.model.chamber import Chamber
from tests.coverage.asking import arguments
from tests.coverage.scenarios import HORN_38_GHZ, SCENARIOS, Scenario, band, sized

Change = Callable[[Chamber], Chamber]
#: Halved, as an amplitude.
HALF_DB = 6.0206
#: Tables and entries of a chamber that are tolerances: bounds in dB go down by 6 dB, all others to half.
TOLERANCES: Mapping[str, Sequence[str]] = {
    "": ("echo_level_db", "tie_drift_db", "tie_drift_deg", "cable_flex_deg", "standing_wave_db"),
    "probe": ("cross_polar_db", "pattern_uncertainty_db", "imbalance_db", "imbalance_deg"),
    "reference": ("gain_uncertainty_db", "reconnect_db", "reconnect_deg"),
    "analyzer": ("isolation_db", "linearity_db"),
    "alignment": (
        "theta_zero_deg", "roll_axis_tilt_deg", "elevation_zero_deg", "axes_square_deg", "axes_offset_mm", "probe_roll_zero_deg",
        "distance_mm", "probe_lateral_mm", "probe_pointing_deg", "device_pose_deg",
    ),
}  # fmt: skip
BOUNDS_DB = ("echo_level_db", "standing_wave_db", "cross_polar_db", "isolation_db")
#: Devices that are in no other count.
MORE: Mapping[str, Scenario] = {
    "horn at 38 GHz": Scenario(
        device=sized(20.0, 16.0, 10.0, 17.0, offset_mm=[0.0, 0.0, 5.0]),
        goal=band(38.0),
        chamber={"reference": HORN_38_GHZ},
        twin={"device": {"kind": "horn", "aperture_a_mm": 20.0, "aperture_b_mm": 16.0, "slant_e_mm": 35.0, "slant_h_mm": 40.0}},
    ),
}  # fmt: skip
ALL = {**SCENARIOS, **MORE}


def halved(chamber: Chamber, only: str | None = None) -> Chamber:
    """Return a chamber that declares half of every tolerance, or of one ("alignment.theta_zero_deg")."""
    for table, names in TOLERANCES.items():
        of = getattr(chamber, table) if table else chamber
        wanted = [n for n in names if only is None or only == ".".join(filter(None, (table, n)))]
        changes = {name: _half(name, getattr(of, name)) for name in wanted}
        chamber = chamber.model_copy(update={table: of.model_copy(update=changes)} if table else changes)
    return chamber


def _half(name: str, value: float | None) -> float | None:
    if value is None:
        return None
    return value - HALF_DB if name in BOUNDS_DB else 0.5 * value


def single() -> dict[str, Change]:
    """Return the changes that halve one tolerance each."""
    names = [".".join(filter(None, (table, name))) for table, some in TOLERANCES.items() for name in some]
    return {name: lambda chamber, name=name: halved(chamber, name) for name in names}  # type: ignore[misc]


CHANGES: dict[str, Change] = {
    "right": lambda chamber: chamber,
    "all halved": halved,
    "echoes 6 dB understated": lambda chamber: halved(chamber, "echo_level_db"),
}


@dataclass
class Spoken:
    """Of how many campaigns something was said against a declaration, by what was declared, and which topics spoke."""

    campaigns: int = 0
    found: Counter[str] = field(default_factory=Counter)
    topics: dict[str, Counter[str]] = field(default_factory=dict)
    silent: Counter[str] = field(default_factory=Counter)

    def share(self, change: str) -> float:
        """Share of campaigns with a finding."""
        return self.found[change] / max(1, self.campaigns)

    def add(self, other: Spoken) -> None:
        """Take another count in."""
        self.campaigns += other.campaigns
        self.found += other.found
        self.silent += other.silent
        for change, topics in other.topics.items():
            self.topics.setdefault(change, Counter()).update(topics)


def spoken_of(folder: Path, seeds: Sequence[int], names: Sequence[str]) -> Spoken:
    """Measure campaigns in drawn chambers and read each with every change of the declarations."""
    campaign, plan = services.make_plan(folder)
    probe, changes, out = probe_of(campaign, plan.frequency_hz), {**CHANGES, **single()}, Spoken()
    for seed in seeds:
        record = record_of_rehearsal(campaign, plan, seed=seed)
        out.campaigns += 1
        for name in names:
            chamber = changes[name](campaign.chamber)
            done = process(record, chamber, campaign.device, probe=probe, recipe=campaign.recipe(), grid_step_deg=30.0)
            told = self_check(done, chamber, campaign.device.slant_deg)
            against = {one.topic for one in told if one.severity != "information"}
            out.found[name] += bool(against)
            out.topics.setdefault(name, Counter()).update(against)
            out.silent[name] += any("cannot tell from this run" in one.text for one in told)
    return out


def count(scenario: Scenario, draws: int, names: Sequence[str], *, first: int = 1, processes: int = 1) -> Spoken:
    """Count over campaigns of a scenario."""
    with TemporaryDirectory() as where:
        folder = scenario.write(Path(where) / "campaign")
        seeds = range(first, first + draws)
        if processes == 1:
            return spoken_of(folder, seeds, names)
        total = Spoken()
        with ProcessPoolExecutor(processes) as pool:
            for part in pool.map(
                spoken_of, [folder] * processes, [seeds[i::processes] for i in range(processes)], [names] * processes
            ):
                total.add(part)
        return total


def table(name: str, found: Spoken) -> str:
    """Return what was counted as text."""
    lines = [f"{name}: {found.campaigns} campaigns"]
    for change, topics in found.topics.items():
        spoke = ", ".join(f"{topic} {times}" for topic, times in topics.most_common())
        cannot = f"; cannot tell of echoes: {found.silent[change]}" if found.silent[change] else ""
        lines.append(f"    {change:32s} {100 * found.share(change):5.1f} %  {spoke}{cannot}")
    return "\n".join(lines)


def main() -> None:
    """Print the shares of the scenarios named."""
    parser = arguments(__doc__ or "")
    parser.add_argument("--each", action="store_true", help="each tolerance alone as well")
    wanted = parser.parse_args()
    changes, total = [*CHANGES, *(single() if wanted.each else ())], Spoken()
    for name in wanted.names or ALL:
        found = count(ALL[name], wanted.draws, changes, first=wanted.first, processes=wanted.processes)
        print(table(name, found), flush=True)
        total.add(found)
    print(table("all scenarios", total))


if __name__ == "__main__":
    main()
