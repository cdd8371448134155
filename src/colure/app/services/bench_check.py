"""What the newest check of a campaign's instruments said: a run after a check that failed starts only if somebody says so."""

from __future__ import annotations

import json
from contextlib import suppress
from datetime import UTC, datetime
from pathlib import Path

from colure.app.storage.whole import write_whole
from colure.errors import InputError
from colure.model.admission import require_regular
from colure.model.strict_json import json_text

FILE, LARGEST_BYTES = "check.json", 1_000_000


def keep_check(folder: Path, faults: list[str], motion: list[str] | None) -> None:
    """Write down beside the campaign what a check found wrong, nothing if it passed.

    motion
        What was wrong when the axes turned; None if they did not: what was wrong then still is.
    """
    known = _kept(folder)[1] if motion is None else motion
    content = {"faults": faults, "motion": known, "when": datetime.now(UTC).isoformat(timespec="seconds")}
    # A folder that cannot be written takes no run either.
    with suppress(OSError):
        write_whole(folder / FILE, json_text(content))


def require_passed_check(folder: Path) -> None:
    """Refuse a run after a check that did not pass; without any check nothing is known, and a run may start.

    Raises
    ------
    InputError
        With every fault that the newest check found, and what to do.
    """
    faults, motion, when = _kept(folder)
    if not faults and not motion:
        return
    turn = " --senses" if motion else ""
    raise InputError(
        [f"check of {when} did not pass: {one}" for one in faults + motion]
        + [
            f"mend it and check again (colure acquire FOLDER --check{turn}), or start with `despite_check`; nothing was moved"
        ]
    )


def _kept(folder: Path) -> tuple[list[str], list[str], str]:
    """Return the faults of the newest check, those of the axes' motion, and when it was; raises `InputError` if unreadable."""
    path = folder / FILE
    if not path.exists():
        return [], [], ""
    require_regular(path, largest_bytes=LARGEST_BYTES)
    try:
        content = json.loads(path.read_text(encoding="utf-8"))
        return [str(x) for x in content["faults"]], [str(x) for x in content["motion"]], str(content["when"])
    except (OSError, ValueError, KeyError, TypeError, RecursionError) as error:
        raise InputError([f"{FILE}: cannot be read: {error}; remove it and check again"]) from None
