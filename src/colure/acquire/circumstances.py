"""What a run was begun under, kept with it: the words spoken to its instruments, limits and geometry of its axes.

Addresses are left out: another port or another host changes nothing of what is measured.
"""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from colure.instruments.plugins import GROUPS, driver_version, is_driver
from colure.instruments.profile import profile_path
from colure.model.chamber import Chamber

#: Changes named in one refusal.
MOST = 10


def circumstances(chamber: Chamber, folder: Path | None) -> dict[str, Any]:
    """Return profiles as text, and what decides where the axes go."""
    content = chamber.model_dump(mode="json")
    return {
        "profiles": _profiles(chamber, folder),
        "roles": _roles(chamber),
        "axes": {name: axis.model_dump(mode="json") for name, axis in chamber.driven_table.items()},
        "keep_out": content["keep_out"],
        **({"solids": content["positioner"]["solids"]} if chamber.positioner.joints else {}),
        "geometry": str(chamber.positioner.geometry),
        "interlock": chamber.axes.interlock,
        "range_length_m": chamber.range_length_m,
    }


def _profiles(chamber: Chamber, folder: Path | None) -> dict[str, dict[str, str]]:
    """Return the words of every instrument: `analyzer` and `axes` are the two that every range has, however they are written."""
    out = {
        "analyzer": _words(chamber.analyzer.profile, "colure.receivers", folder),
        "axes": _words(chamber.axes.profile, "colure.axes", folder),
    }
    first = {chamber.with_role("receiver")[0].shown_name, chamber.with_role("axis-controller")[0].shown_name}
    for one in chamber.outfit:
        if one.shown_name not in first:
            out[one.shown_name] = _words(one.words, GROUPS[one.role], folder)
    return out


def _roles(chamber: Chamber) -> dict[str, Any]:
    """Return who turns which axis, and what contacts stand for; nothing where one controller turns all and there is no contact."""
    controllers = chamber.with_role("axis-controller")
    axes = {one.shown_name: list(one.axes) for one in controllers if len(controllers) > 1}
    return axes | {one.shown_name: one.stands_for for one in chamber.with_role("interlock")}


def _words(profile: str, group: str, folder: Path | None) -> dict[str, str]:
    if is_driver(profile):
        return {"name": profile, "text": f'driver = "{profile} of {driver_version(group, profile)}"\n'}
    return {"name": profile, "text": profile_path(profile, folder).read_text(encoding="utf-8")}


def changes(before: Mapping[str, Any], now: Mapping[str, Any]) -> list[str]:
    """Say what has changed since a run was begun; comments and order of a profile do not count."""
    differences = []
    for name, profile in now["profiles"].items():
        if name not in before["profiles"]:
            differences.append(f"instruments: {name}: must be left out to resume")
            continue
        old = before["profiles"][name]
        words, wanted = (flat(tomllib.loads(one["text"])) for one in (profile, old))
        differences += [f"{name} profile {profile['name']}: {text}" for text in _differences(words, wanted)]
    gone = [name for name in before["profiles"] if name not in now["profiles"]]
    differences += [f"instruments: {name} is missing: must be there to resume" for name in gone]
    rest = ("roles", "axes", "keep_out", "solids", "geometry", "interlock", "range_length_m")
    words, wanted = ({key: one.get(key, {}) for key in rest} for one in (now, before))
    differences += [f"chamber.toml: {text}" for text in _differences(flat(words), flat(wanted))]
    return differences[:MOST] + ([f"and {len(differences) - MOST} more"] if len(differences) > MOST else [])


def flat(value: Any, path: str = "") -> dict[str, Any]:
    """Return tables in tables and lists as one table, its keys joined by dots; numbers count the members of a list."""
    if isinstance(value, Mapping):
        items = [(str(key), one) for key, one in value.items()]
    elif isinstance(value, (list, tuple)):
        items = [(str(number), one) for number, one in enumerate(value)]
    else:
        return {path: value}
    return {key: one for name, inner in items for key, one in flat(inner, f"{path}.{name}".lstrip(".")).items()}


def _differences(present: Mapping[str, Any], wanted: Mapping[str, Any]) -> list[str]:
    texts = []
    for key in dict.fromkeys([*wanted, *present]):
        if present.get(key) != wanted.get(key):
            now = repr(present[key]) if key in present else "missing"
            texts.append(f"{key} = {now}: must be {repr(wanted[key]) if key in wanted else 'left out'} to resume")
    return texts
