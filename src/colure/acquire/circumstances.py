"""What a run was begun under, kept with it: the words spoken to its instruments, limits and geometry of its axes.

Addresses are left out: another port or another host changes nothing of what is measured.
"""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from colure.instruments.plugins import driver_version, is_driver
from colure.instruments.profile import profile_path
from colure.model.chamber import Chamber

#: Changes named in one refusal.
MOST = 10


def circumstances(chamber: Chamber, folder: Path | None) -> dict[str, Any]:
    """Return profiles as text, and what decides where the axes go."""
    content = chamber.model_dump(mode="json")
    return {
        "profiles": {
            "analyzer": _words(chamber.analyzer.profile, "colure.receivers", folder),
            "axes": _words(chamber.axes.profile, "colure.axes", folder),
        },
        "axes": {name: axis.model_dump(mode="json") for name, axis in chamber.axis_table.items()},
        "keep_out": content["keep_out"],
        "geometry": str(chamber.positioner.geometry),
        "interlock": chamber.axes.interlock,
        "range_length_m": chamber.range_length_m,
    }


def _words(profile: str, group: str, folder: Path | None) -> dict[str, str]:
    if is_driver(profile):
        return {"name": profile, "text": f'driver = "{profile} of {driver_version(group, profile)}"\n'}
    return {"name": profile, "text": profile_path(profile, folder).read_text(encoding="utf-8")}


def changes(before: Mapping[str, Any], now: Mapping[str, Any]) -> list[str]:
    """Say what has changed since a run was begun; comments and order of a profile do not count."""
    found = []
    for name, profile in now["profiles"].items():
        old = before["profiles"][name]
        words, wanted = (_flat(tomllib.loads(one["text"])) for one in (profile, old))
        found += [f"{name} profile {profile['name']}: {text}" for text in _differences(words, wanted)]
    rest = ("axes", "keep_out", "geometry", "interlock", "range_length_m")
    words, wanted = ({key: one[key] for key in rest} for one in (now, before))
    found += [f"chamber.toml: {text}" for text in _differences(_flat(words), _flat(wanted))]
    return found[:MOST] + ([f"and {len(found) - MOST} more"] if len(found) > MOST else [])


def _flat(value: Any, path: str = "") -> dict[str, Any]:
    if isinstance(value, Mapping):
        items = [(str(key), one) for key, one in value.items()]
    elif isinstance(value, (list, tuple)):
        items = [(str(number), one) for number, one in enumerate(value)]
    else:
        return {path: value}
    return {key: one for name, inner in items for key, one in _flat(inner, f"{path}.{name}".lstrip(".")).items()}


def _differences(found: Mapping[str, Any], wanted: Mapping[str, Any]) -> list[str]:
    texts = []
    for key in dict.fromkeys([*wanted, *found]):
        if found.get(key) != wanted.get(key):
            now = repr(found[key]) if key in found else "missing"
            texts.append(f"{key} = {now}: must be {repr(wanted[key]) if key in wanted else 'left out'} to resume")
    return texts
