"""Slices of a run measured again: which points they are, by the run's own plan, and what forbids it."""

from __future__ import annotations

import re
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from colure.app.storage.folders import RunFolder, require_begun
from colure.errors import InputError
from colure.geometry.conventions import IntArray
from colure.model.campaign import Campaign
from colure.model.plan import ROLES, Plan, Role

if TYPE_CHECKING:
    from colure.acquire.journal import Journal

#: What a person says for the reference's sweeps.
REFERENCE = "reference"
SLICES = re.compile(r"(\d+)(?:-(\d+))?")


@dataclass(frozen=True)
class MeasuredAgain:
    """Points of a run's plan that are measured again, what a person asked for, and about how long it takes."""

    points: frozenset[int]
    said: str
    duration_s: float


def again_plan(folder: Path, run: RunFolder, said: str) -> tuple[Campaign, Plan, MeasuredAgain]:
    """Return the campaign, a run's own plan, and those of its points that are asked for.

    Nothing is planned anew: files that changed since cannot make another plan of it. Words, limits and geometry of the chamber, and
    who answers, are compared when the instruments are connected.

    said
        Numbers of slices as in the table of the plan's points, such as `3,7-9`, and `reference` for the reference's sweeps.

    Raises
    ------
    InputError
        If the run was not finished, holds no such slices, or cannot be measured in part.
    """
    from colure.acquire.journal import Journal

    require_begun(run)
    campaign = Campaign.load(folder)
    journal = Journal.resume(run.journal)
    try:
        plan = journal.plan()
        _require_suited(plan, campaign, run)
        points = slice_points(plan, said)
        _require_finished(journal, points, run)
    finally:
        journal.close()
    share = points.size / len(plan)
    return (
        campaign,
        plan,
        MeasuredAgain(frozenset(points.tolist()), said, share * float(plan.predicted["duration_s"])),
    )


def _require_suited(plan: Plan, campaign: Campaign, run: RunFolder) -> None:
    """Refuse runs of which no part can be measured by itself."""
    name = f"run {run.path.name}"
    if "device" not in plan.inputs:
        raise InputError([f"{name}: is a {plan.inputs.get('test', 'test')}: it is short, measure it whole again"])
    if "distance_steps_mm" in plan.settings:
        raise InputError(
            [f"{name}: was measured at {len(plan.settings['distance_steps_mm'])} distances, and every slice belongs to all of them: "
             "measure it whole, under another run name (`run`)"]
        )  # fmt: skip
    states = () if campaign.device.states is None else campaign.device.states.names
    if tuple(states) != plan.states:
        raise InputError(
            [f"device.toml: states.names = {list(states)}: must be {list(plan.states)} as the run began; put it back, or begin another run"]
        )  # fmt: skip


def slice_points(plan: Plan, said: str) -> IntArray:
    """Return the points of the plan that are named, in plan order."""
    scans = np.isin(plan.role, [ROLES.index(role) for role in (Role.SCAN, Role.TURN)])
    there = np.unique(plan.slice_index[scans])
    most = f"slices from {there[0]} to {there[-1]} of this run"
    if there.size == 1:
        # Single directions are one slice, and so is one cut: its number is not that of a direction.
        directions = len(np.unique(plan.targets_deg[scans][:, :2], axis=0))
        most = f"{there[0]}, the only slice of this run, which holds all {directions} directions"
    chosen = np.zeros(len(plan), bool)
    faults = []
    for word in (one.strip() for one in said.split(",")):
        if word == REFERENCE:
            own = plan.role == ROLES.index(Role.REFERENCE)
        elif (numbers := SLICES.fullmatch(word)) is None:
            faults.append(f"again = {word!r}: must be numbers of slices such as 3,7-9, or {REFERENCE}")
            continue
        else:
            first, last = int(numbers[1]), int(numbers[2] or numbers[1])
            own = scans & (plan.slice_index >= first) & (plan.slice_index <= last)
            if first > last or first < there[0] or last > there[-1]:
                faults.append(f"again = {word!r}: must be {most}")
        chosen |= own
    if faults:
        raise InputError(faults)
    return np.flatnonzero(chosen)


def _require_finished(journal: Journal, points: IntArray, run: RunFolder) -> None:
    """Refuse a run that was stopped; one that ended by itself, its figures known, counts as finished."""
    held = journal.measured() | journal.pending().keys()
    stops = journal.meta("stops") or []
    missing = [int(one) for one in points if int(one) not in held]
    broken_off = not journal.pending() and (not stops or stops[-1]["state"] != "done")
    if missing or broken_off:
        raise InputError(
            [f"run {run.path.name}: holds {len(held)} of {len(journal.plan())} points and was not finished: go on with it first (the same "
             "command as it began with), then measure slices of it again"]
        )  # fmt: skip
