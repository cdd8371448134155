"""Fields written into a campaign's files: comments stay, and so does the file as it was."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from pydantic import BaseModel

from colure.model.loading import validate


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
    text = tomlkit.dumps(document)
    validate(model, tomllib.loads(text), source=target.name)
    with target.with_name(f"{target.name}.{stamp}").open("x", encoding="utf-8") as out:
        out.write(before)
    target.write_text(text, encoding="utf-8")


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
