"""What checks of a campaign's instruments said: a run after one that failed starts only if somebody says so, one without any says so itself."""

from __future__ import annotations

import hashlib
from dataclasses import dataclass, field
from datetime import UTC, datetime
from pathlib import Path
from typing import TYPE_CHECKING

from colure.errors import InputError, InstrumentError
from colure.model.admission import read_json
from colure.model.strict_json import json_text
from colure.model.whole import write_whole

if TYPE_CHECKING:
    from colure.model.campaign import Campaign
    from colure.model.plan import Plan

FILE, LARGEST_BYTES = "check.json", 1_000_000
#: Resource of an instrument that the simulated chamber stands in for.
SIMULATED = "twin"
#: So many plans with a fault are remembered.
MOST_PLANS = 50


def keep_check(folder: Path, plan_hash: str, faults: list[str], motion: list[str] | None, *, under: str = "") -> str:
    """Write down beside the campaign what a check of a plan found wrong, nothing if it passed; return why that failed, or nothing.

    motion
        What was wrong when the axes turned; None if they did not: what was wrong then still is.
    under
        `mark_of` the words, limits and geometry that hold.
    """
    kept, now = _kept(folder), datetime.now(UTC).isoformat(timespec="seconds")
    passed = {name: one for name, one in kept.passed.items() if name != plan_hash}
    if not faults:
        passed[plan_hash] = {"when": now, "under": under}
    turned = kept.turned if motion is None else {} if motion else {"when": now, "under": under}
    plans = {name: texts for name, texts in kept.plans.items() if name != plan_hash}
    if faults:
        plans[plan_hash] = faults
    content = {"faults": faults, "motion": kept.motion if motion is None else motion,
               "plans": dict(list(plans.items())[-MOST_PLANS:]), "passed": dict(list(passed.items())[-MOST_PLANS:]),
               "turned": turned, "when": now}  # fmt: skip
    try:
        write_whole(folder / FILE, json_text(content))
    except OSError as error:
        why = error.strerror or type(error).__name__
        return f"{FILE}: {why}: what this check found is not kept, a run will not know of it; free the disk, then check again"
    return ""


def failed_checks(folder: Path, plan_hash: str = "") -> list[str]:
    """Return what checks found wrong that speaks against a run of this plan; nothing without any check.

    What the newest check found counts for every plan. What a check of this plan found counts until one of this plan passes,
    whatever other plans passed since.

    Raises
    ------
    InputError
        If what was kept cannot be read.
    """
    kept = _kept(folder)
    mine = [one for one in kept.plans.get(plan_hash, []) if one not in kept.faults]
    return [f"check of {kept.when} did not pass: {one}" for one in kept.faults + kept.motion] + [
        f"an earlier check of this plan did not pass: {one}" for one in mine
    ]


def require_passed_check(folder: Path, plan_hash: str = "") -> None:
    """Refuse a run after a check that did not pass; without any check nothing is known, and a run may start.

    Raises
    ------
    InputError
        With every fault of `failed_checks`, and what to do.
    """
    failed = failed_checks(folder, plan_hash)
    if not failed:
        return
    turn = " --senses" if _kept(folder).motion else ""
    raise InputError(
        [
            *failed,
            f"mend it and check again (colure acquire FOLDER --check{turn}), or start with `despite_check`; nothing was moved",
        ]
    )


def unchecked(campaign: Campaign, plan: Plan) -> list[str]:
    """Return what no check has looked at before a run of this plan on real instruments; nothing of simulated ones.

    Raises
    ------
    InputError
        If what was kept cannot be read.
    """
    if all(one.resource == SIMULATED for one in campaign.chamber.outfit):
        return []
    kept, under = _kept(campaign.folder), mark_of(campaign)
    mine, others = kept.passed.get(plan.hash), [one["when"] for one in kept.passed.values() if one["under"] == under]
    texts = []
    if mine is None and others:
        texts.append(f"not checked before: this plan (its instruments passed with another plan, {max(others)})")
    elif mine is None:
        texts.append("not checked before: instruments, level and hold (no check of this plan passed)")
    elif mine["under"] != under:
        texts.append(
            f"not checked before: words, limits or geometry as they are now (changed since the check of {mine['when']})"
        )
    if kept.turned.get("under") != under:
        texts.append("not checked before: which way the axes turn (no check with `senses` passed)")
    return texts


def said_of_checks(campaign: Campaign, plan: Plan) -> list[str]:
    """Return what a run of this plan begins with: what was not checked, and what did not pass and was accepted."""
    failed = failed_checks(campaign.folder, plan.hash)
    return [f"begun in spite of it: {one}" for one in failed] or unchecked(campaign, plan)


def mark_of(campaign: Campaign) -> str:
    """Return what changes with every word, limit or geometry, and with nothing else; empty where a driver is not installed."""
    from colure.acquire.circumstances import circumstances

    try:
        content = json_text(circumstances(campaign.chamber, campaign.folder))
    except InstrumentError:
        return ""  # whoever connects says so
    return hashlib.sha256(content.encode()).hexdigest()


@dataclass(frozen=True)
class _Kept:
    """Faults of the newest check, those of the axes' motion, those of plans by their hash, and when the newest check was.

    passed
        When each plan passed last, and under which words, limits and geometry.
    turned
        The same of the newest check that turned the axes, if it passed.
    """

    faults: list[str]
    motion: list[str]
    plans: dict[str, list[str]]
    when: str
    passed: dict[str, dict[str, str]] = field(default_factory=dict)
    turned: dict[str, str] = field(default_factory=dict)


def _kept(folder: Path) -> _Kept:
    """Return what was kept; raises `InputError` if it cannot be read."""
    path = folder / FILE
    if not path.exists():
        return _Kept([], [], {}, "")
    try:
        content = read_json(path, largest_bytes=LARGEST_BYTES)
        faults, motion = ([str(x) for x in content[name]] for name in ("faults", "motion"))
        plans = {str(name): [str(x) for x in texts] for name, texts in content.get("plans", {}).items()}
        passed = {str(name): _told(one) for name, one in content.get("passed", {}).items()}
        turned = _told(content["turned"]) if content.get("turned") else {}
        return _Kept(faults, motion, plans, str(content["when"]), passed, turned)
    except (ValueError, KeyError, TypeError, AttributeError) as error:
        raise InputError([f"{FILE}: cannot be read: {error}; remove it and check again"]) from None


def _told(content: dict[str, object]) -> dict[str, str]:
    """Return one entry of what passed; raises `KeyError` or `TypeError` if it is none."""
    return {name: str(content[name]) for name in ("when", "under")}
