"""What chamber.toml and device.toml said when a run began, kept beside its journal, and what they say otherwise by now."""

from __future__ import annotations

import json
from typing import Any

from colure.acquire.circumstances import flat
from colure.app.storage.folders import RunFolder
from colure.app.storage.whole import keep_before_motion
from colure.errors import InputError
from colure.model.campaign import Campaign

FILE = "begun.json"
#: Changes named one by one.
MOST = 10
#: Where an instrument answers changes nothing of what was measured.
ADDRESS = "resource"


def keep_begun(run: RunFolder, campaign: Campaign) -> None:
    """Keep both files' content once, before anything moves; a run that is resumed keeps what it began with.

    Raises
    ------
    InputError
        If the run's folder cannot be written to.
    """
    if not (run.path / FILE).exists():
        keep_before_motion(run.path / FILE, _content(campaign))


def changed_since(run: RunFolder, campaign: Campaign) -> list[str]:
    """Return what differs from what the run was begun with, a line each; empty for runs that did not keep it.

    Raises
    ------
    InputError
        If what was kept cannot be read.
    """
    path = run.path / FILE
    if not path.is_file():
        return []
    try:
        kept = {name: flat(part) for name, part in json.loads(path.read_text(encoding="utf-8")).items()}
    except (OSError, ValueError, AttributeError) as error:
        raise InputError(
            [f"{path}: cannot be read: {error}; remove it if the run's files did not change since"]
        ) from None
    lines = []
    for name, part in _content(campaign).items():
        now, then = flat(part), kept.get(name, {})
        other = [key for key in dict.fromkeys([*then, *now]) if now.get(key) != then.get(key)]
        lines += [
            f"{name}.toml: {key} = {_told(now, key)}, was {_told(then, key)} when the run began; what follows is worked out with "
            f"{_told(now, key)}"
            for key in other
            if key.rpartition(".")[2] != ADDRESS
        ]
    return lines[:MOST] + ([f"and {len(lines) - MOST} more changes"] if len(lines) > MOST else [])


def _content(campaign: Campaign) -> dict[str, Any]:
    """Return both files as JSON holds them."""
    content = {"chamber": campaign.chamber.model_dump(mode="json"), "device": campaign.device.model_dump(mode="json")}
    back: dict[str, Any] = json.loads(json.dumps(content))
    return back


def _told(content: dict[str, Any], key: str) -> str:
    return repr(content[key]) if key in content else "left out"
