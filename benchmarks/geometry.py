"""Adjustments told by one run and used by the next, counted: `python benchmarks/geometry.py [--draws N] [--first N]`.

A 38 GHz horn is measured on a roll-over-azimuth positioner; room, drift, noise and adjustments are drawn anew each time from what is
declared (three times the usual tolerances of angles and axes). `colure geometry` reads the run; what it tells is held against the
drawn chamber, and so is every known sum. Then its readings are written into chamber.toml, and a dipole that hardly tells its
adjustments is measured on the same positioner: its pattern error without and with the readings. Invented devices and rooms.
Exit code 1 if fewer than 90 % of the told adjustments hold, or if the next run's pattern is worse in the median.
"""

from __future__ import annotations

import argparse
import sys
import tempfile
from collections import Counter
from pathlib import Path

import numpy as np

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from tests.coverage.scenarios import HORN_38_GHZ, TRUE_HORN_38_GHZ, Scenario, band, sized

from colure.analysis.pipeline.recipe import default_recipe, process
from colure.app import services
from colure.app.services.applied_geometry import apply_geometry
from colure.app.services.joint_geometry import GeometryAnswer, solve_geometry
from colure.app.services.reference import probe_of
from colure.app.services.rehearsal import record_of_rehearsal
from colure.app.storage.folders import run_folder
from colure.geometry.conventions import ComplexArray, amplitude_db
from colure.model.campaign import Campaign
from colure.model.files import save_dataset
from colure.model.simulated_chamber import SimulatedChamber
from colure.twin.rehearsal import draw_chamber

WIDE = {"theta_zero_deg": 0.24, "roll_axis_tilt_deg": 0.18, "axes_offset_mm": 0.6}
CHAMBER = {"reference": HORN_38_GHZ, "alignment": WIDE}
TEACHES = Scenario(
    device=sized(21.0, 27.0, 5.0, 18.0, offset_mm=[0.0, 0.0, -15.0]), goal=band(38.0), chamber=CHAMBER,
    twin={"device": TRUE_HORN_38_GHZ},
)  # fmt: skip
LEARNS = Scenario(
    device=sized(4.0, 1.0, 1.0, 2.1, offset_mm=[0.0, 0.0, 0.0]), goal=band(38.0), chamber={**CHAMBER, "analyzer": {"power_dbm": -30}},
    twin={"device": {"kind": "dipole", "axis": "x"}},
)  # fmt: skip
#: What stays from run to run: the range's adjustments.
STAYS = ("theta_zero_deg", "roll_axis_tilt_deg", "axes_offset_mm", "probe_roll_zero_deg", "probe_offset_mm", "echoes")
INSIDE = 0.9


def true_values(truth: SimulatedChamber) -> dict[str, float]:
    """Return what the drawn chamber's adjustments are, degrees and millimetres."""
    x, y, _ = truth.axes_offset_mm
    return {"theta_zero": truth.theta_zero_deg, "roll_axis_tilt": truth.roll_axis_tilt_deg, "axes_offset_x": x,
            "axes_offset_y": y, "probe_roll_zero": truth.probe_roll_zero_deg}  # fmt: skip


def answer_of_run(campaign: Campaign, record: object) -> GeometryAnswer:
    """Return what `colure geometry` reads in a record."""
    run = run_folder(campaign.folder, "first")
    run.path.mkdir(parents=True, exist_ok=True)
    save_dataset(record, run.record)
    return solve_geometry(campaign, run)


def waves_of(campaign: Campaign, record: object, *, aligned: bool) -> ComplexArray:
    """Return the waves (2, J) that the recipe makes of a record, with or without its step `alignment`."""
    recipe = default_recipe(record, campaign.chamber, campaign.device)
    probe = probe_of(campaign, campaign.goal.frequency_hz)
    done = process(
        record, campaign.chamber, campaign.device, recipe=recipe if aligned else recipe.without("alignment"), probe=probe,
        grid_step_deg=15.0,
    )  # fmt: skip
    return np.asarray(done.expansion.coefficients[0])


def off_db(waves: ComplexArray, true: ComplexArray) -> float:
    """Return how far waves are from others, whatever their common factor, rms over the sphere relative to them."""
    left = waves - np.vdot(true, waves) / np.vdot(true, true) * true
    return float(amplitude_db(np.linalg.norm(left) / np.linalg.norm(waves)))


def one_draw(seed: int, count: Counter[str]) -> tuple[float, float]:
    """Draw a positioner, read it by a horn, measure a dipole on it; return the dipole's error without and with the readings, dB."""
    with tempfile.TemporaryDirectory() as where:
        campaign, plan = services.make_plan(TEACHES.write(Path(where) / "horn"))
        truth = draw_chamber(campaign.chamber, campaign.device, plan, seed, holding=campaign.simulated(), folder=campaign.folder)  # fmt: skip
        answer = answer_of_run(campaign, record_of_rehearsal(campaign, plan, seed=seed, truth=truth))
        for one in answer.adjustments:
            off = abs(one.value - true_values(truth)[one.name])
            count["all"] += 1
            count["all inside"] += off <= one.expanded
            count["told"] += one.told
            count["told inside"] += one.told and off <= one.expanded
            if one.told:
                print(
                    f"  {one.name:16s} {one.value:+.3f} +- {one.expanded:.3f} {one.unit}, true {true_values(truth)[one.name]:+.3f}"
                )
        other, its_plan = services.make_plan(LEARNS.write(Path(where) / "dipole"))
        own = draw_chamber(other.chamber, other.device, its_plan, seed + 5000, holding=other.simulated(), folder=other.folder)  # fmt: skip
        moved = own.model_copy(update={name: getattr(truth, name) for name in STAYS})
        # Shifts upwards and along the range are a device that sits otherwise: no run tells them.
        none = {"theta_zero_deg": 0.0, "axes_offset_mm": (0.0, *truth.axes_offset_mm[1:])}
        record = record_of_rehearsal(other, its_plan, seed=seed, truth=moved)
        clean = record_of_rehearsal(other, its_plan, seed=seed, truth=moved.model_copy(update=none))
        true = waves_of(other, clean, aligned=False)
        without = off_db(waves_of(other, record, aligned=True), true)
        apply_geometry(answer, other)
        return without, off_db(waves_of(Campaign.load(other.folder), record, aligned=True), true)


def main() -> int:
    """Count; 1 if something is not as it must be."""
    ask = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    ask.add_argument("--draws", type=int, default=20)
    ask.add_argument("--first", type=int, default=1)
    said = ask.parse_args()
    count, errors = Counter[str](), list[tuple[float, float]]()
    for seed in range(said.first, said.first + said.draws):
        errors.append(one_draw(seed, count))
        print(
            f"draw {seed}: the next run's pattern off by {errors[-1][0]:.1f} dB, with the readings {errors[-1][1]:.1f} dB",
            flush=True,
        )
    without, with_them = np.median(np.array(errors), axis=0)
    worse = sum(after > before + 1.0 for before, after in errors)
    print(f"told {count['told']} of {count['all']} adjustments, {count['told inside']} of {count['told']} inside; "
          f"all {count['all inside']} of {count['all']} inside")  # fmt: skip
    print(
        f"the next run: {without:.1f} -> {with_them:.1f} dB in the median, {worse} of {len(errors)} worse by more than 1 dB"
    )
    return int(count["told inside"] < INSIDE * count["told"] or with_them > without)


if __name__ == "__main__":
    sys.exit(main())
