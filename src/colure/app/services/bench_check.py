"""What the newest check of a campaign's instruments said: a run after a check that failed starts only if somebody says so."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

from colure.errors import InputError
from colure.model.admission import read_json
from colure.model.strict_json import json_text
from colure.model.whole import write_whole

FILE, LARGEST_BYTES = "check.json", 1_000_000
#: So many plans with a fault are remembered.
MOST_PLANS = 50


def keep_check(folder: Path, plan_hash: str, faults: list[str], motion: list[str] | None) -> str:
    """Write down beside the campaign what a check of a plan found wrong, nothing if it passed; return why that failed, or nothing.

    motion
        What was wrong when the axes turned; None if they did not: what was wrong then still is.
    """
    kept = _kept(folder)
    plans = {name: texts for name, texts in kept.plans.items() if name != plan_hash}
    if faults:
        plans[plan_hash] = faults
    content = {"faults": faults, "motion": kept.motion if motion is None else motion,
               "plans": dict(list(plans.items())[-MOST_PLANS:]),
               "when": datetime.now(UTC).isoformat(timespec="seconds")}  # fmt: skip
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


@dataclass(frozen=True)
class _Kept:
    """Faults of the newest check, those of the axes' motion, those of plans by their hash, and when the newest check was."""

    faults: list[str]
    motion: list[str]
    plans: dict[str, list[str]]
    when: str


def _kept(folder: Path) -> _Kept:
    """Return what was kept; raises `InputError` if it cannot be read."""
    path = folder / FILE
    if not path.exists():
        return _Kept([], [], {}, "")
    try:
        content = read_json(path, largest_bytes=LARGEST_BYTES)
        faults, motion = ([str(x) for x in content[name]] for name in ("faults", "motion"))
        plans = {str(name): [str(x) for x in texts] for name, texts in content.get("plans", {}).items()}
        return _Kept(faults, motion, plans, str(content["when"]))
    except (ValueError, KeyError, TypeError, AttributeError) as error:
        raise InputError([f"{FILE}: cannot be read: {error}; remove it and check again"]) from None
