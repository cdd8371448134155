"""Fields written into a campaign's files: comments stay, and so does the file as it was."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from pathlib import Path
from typing import Any, Literal

from pydantic import BaseModel

from colure.errors import InputError
from colure.model.chamber import Chamber
from colure.model.loading import validate
from colure.model.whole import write_whole


def write_fields(target: Path, model: type[BaseModel], fields: Mapping[str, Any], stamp: str) -> None:
    """Write fields (dotted names; None takes one out) into a TOML file; the old one stays beside it under a stamp.

    Raises
    ------
    InputError
        If the file would not be valid; nothing is written then.
    """
    import tomlkit

    before = target.read_text(encoding="utf-8")
    document: Any = tomlkit.parse(before)
    for key, value in fields.items():
        table = document
        *path, last = key.split(".")
        for part in path:
            table = table.setdefault(part, tomlkit.table())
        if value is None:
            table.pop(last, None)
        elif isinstance(value, list) and value and all(isinstance(one, Mapping) for one in value):
            table[last] = _tables(table.get(last), value)
        else:
            table[last] = value
    _written(target, model, document, before, stamp)


def write_rows(
    target: Path, model: type[BaseModel], table: str, rows: Mapping[str, Mapping[str, Any]], stamp: str
) -> None:
    """Write fields of named rows of a list of tables (`positioner.joints`); the old file stays beside it under a stamp.

    Raises
    ------
    InputError
        If a row of that name is not there, or if the file would not be valid; nothing is written then.
    """
    import tomlkit

    before = target.read_text(encoding="utf-8")
    document: Any = tomlkit.parse(before)
    listed: Any = document
    for part in table.split("."):
        listed = listed.get(part, {})
    known = {str(one["name"]): one for one in listed or ()}
    if unknown := [name for name in rows if name not in known]:
        raise InputError(
            [f"{target.name}: {table}: name = {one!r}: must be one of {', '.join(known)}" for one in unknown]
        )
    for name, fields in rows.items():
        for key, value in fields.items():
            known[name][key] = value
    _written(target, model, document, before, stamp)


def write_readouts(
    folder: Path, chamber: Chamber, entry: Literal["home", "zero"], values: Mapping[str, float], stamp: str
) -> dict[str, float]:
    """Write readouts as home or zero of axes, or of a mount's joints, into chamber.toml (degrees; a prismatic joint's millimetres).

    An axis that never moves has its home and zero at 0 already, and no table to write it into: the others are returned.

    Raises
    ------
    InputError
        If a home is beyond the limits of its axis; nothing is written then.
    """
    target = folder / "chamber.toml"
    moving = {name: value for name, value in values.items() if not chamber.driven_table[name].fixed}
    if joints := chamber.positioner.joints:
        unit = {one.name: one.unit for one in joints}
        rows = {name: {f"{entry}_{unit[name]}": round(value, 4)} for name, value in moving.items()}
        write_rows(target, Chamber, "positioner.joints", rows, stamp)
        return moving
    place = {name: "probe.roll" if name == "probe" else f"positioner.{name}" for name in moving}
    write_fields(target, Chamber, {f"{place[name]}.{entry}_deg": round(v, 4) for name, v in moving.items()}, stamp)
    return moving


def _written(target: Path, model: type[BaseModel], document: Any, before: str, stamp: str) -> None:
    """Write a document if it is valid; the text as it was goes beside it under a stamp."""
    import tomlkit

    text = tomlkit.dumps(document)
    validate(model, tomllib.loads(text), source=target.name)
    kept = _unused(target.with_name(f"{target.name}.{stamp}"))
    write_whole(kept, before)
    try:
        write_whole(target, text)
    except OSError:
        kept.unlink(missing_ok=True)  # nothing was written that it could be the old text of
        raise


def _unused(path: Path) -> Path:
    """Return a name that no file has: two edits within a second have the same stamp."""
    number, name = 1, path
    while name.exists():
        number += 1
        name = path.with_name(f"{path.name}-{number}")
    return name


def _tables(before: Any, rows: list[Mapping[str, Any]]) -> Any:
    """Return rows as tables [[...]]; where as many stood there, these are changed and keep their comments."""
    import tomlkit

    if before is not None and len(before) == len(rows):
        for old, row in zip(before, rows, strict=True):
            for name in [name for name in old if name not in row]:
                old.pop(name)
            for name, value in row.items():
                if old.get(name) != value:
                    old[name] = value
        return before
    tables = tomlkit.aot()
    for row in rows:
        table = tomlkit.table()
        table.update(row)
        tables.append(table)
    return tables
