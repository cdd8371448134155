"""Every entry of the TOML files: what it means, its unit, limits and default. The documentation and `colure explain` read this."""

from __future__ import annotations

import inspect
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any, get_args, get_origin

from pydantic import BaseModel

from colure.model.chamber import Chamber, SimulatedChamber
from colure.model.device import Device
from colure.model.equipment import Register
from colure.model.evaluation import Evaluation
from colure.model.goal import Goal
from colure.model.recipe import Recipe
from colure.model.report_settings import ReportSettings
from colure.model.specification import Specification

#: The files a person writes, by the first word of an entry's name.
FILES: dict[str, type[BaseModel]] = {
    "chamber": Chamber, "device": Device, "goal": Goal, "evaluation": Evaluation, "recipe": Recipe,
    "specification": Specification, "twin": SimulatedChamber, "report": ReportSettings, "equipment": Register,
}  # fmt: skip
_ENTRY = re.compile(r"^(\S[^\n]*)\n((?:    [^\n]*(?:\n|$))+)", re.MULTILINE)
_LIMITS = ("minimum", "maximum", "exclusiveMinimum", "exclusiveMaximum", "pattern")


@dataclass(frozen=True)
class Entry:
    """One entry of a file.

    name
        Full name, as in `chamber.positioner.azimuth.max_deg`.
    kind, unit, limits, default
        In words; empty where there is none. `default` is `required` where the entry must be given.
    meaning
        What it is for.
    """

    name: str
    kind: str
    unit: str
    limits: str
    default: str
    meaning: str


def entries(files: Mapping[str, type[BaseModel]] = FILES) -> Iterator[Entry]:
    """Yield every entry of the files, in the order in which they are declared; a table before what stands in it."""
    for name, model in files.items():
        yield from _entries(model, name, ())


def meaning_of(model: type[BaseModel], entry: str) -> str:
    """Return what an entry means, from the docstrings of its table and of what the table extends; empty if nothing is said."""
    for one in model.__mro__:
        for names, text in _ENTRY.findall(inspect.cleandoc(one.__dict__.get("__doc__") or "")):
            if entry in {name.strip() for name in names.split(",")}:
                return " ".join(text.split())
    return ""


def tables_of(annotation: Any) -> Iterator[type[BaseModel]]:
    """Yield the tables that an entry's type can hold."""
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        yield annotation
    elif get_origin(annotation) is not None:
        for part in get_args(annotation):
            yield from tables_of(part)


def entries_of(model: type[BaseModel], prefix: str = "") -> Iterator[tuple[Entry, list[type[BaseModel]]]]:
    """Yield the entries of one table, each with the tables that it can hold; `prefix` stands before every name."""
    schema = schema_of(model)
    for name, field in model.model_fields.items():
        shown = field.alias or name
        one = schema.get(shown, {})
        inner = list(tables_of(field.annotation))
        entry = Entry(
            f"{prefix}{shown}",
            "table" if inner else kind_of(one),
            one.get("unit", ""),
            limits_of(one),
            "required" if field.is_required() else default_of(field.default),
            meaning_of(model, shown) or (field.description or ""),
        )
        yield entry, inner


def _entries(model: type[BaseModel], prefix: str, above: tuple[type[BaseModel], ...]) -> Iterator[Entry]:
    for entry, inner in entries_of(model, f"{prefix}."):
        yield entry
        for table in inner:
            if table not in above:
                kind = choice_of(table) if len(inner) > 1 else ""
                yield from _entries(table, f"{entry.name}({kind})" if kind else entry.name, (*above, table))


def schema_of(model: type[BaseModel]) -> dict[str, dict[str, Any]]:
    """Return the JSON schema of every entry of a table, names of choices filled in."""
    schema = model.model_json_schema()
    choices = {f"#/$defs/{name}": one for name, one in schema.get("$defs", {}).items() if "enum" in one}
    return {name: choices.get(one.get("$ref", ""), one) for name, one in schema["properties"].items()}


def choice_of(table: type[BaseModel]) -> str:
    """Return the `kind` by which a table is told from others that may stand in its place; empty if it has none."""
    kind = table.model_fields.get("kind")
    return str(get_args(kind.annotation)[0]) if kind is not None and get_args(kind.annotation) else ""


def kind_of(one: dict[str, Any]) -> str:
    """Return the type of an entry in words, from its JSON schema."""
    plain = {"number": "number", "integer": "whole number", "string": "text", "boolean": "true or false", "array": "list",
             "object": "table"}  # fmt: skip
    words = []
    for part in (part for part in one.get("anyOf", [one]) if part.get("type") != "null"):
        if "anyOf" in part:
            words.append(kind_of(part))
        elif "enum" in part:
            words.append(", ".join(f"`{value}`" for value in part["enum"]))
        elif "const" in part:
            words.append(f"`{part['const']}`")
        else:
            words.append(plain.get(part.get("type", ""), ""))
    return " or ".join(dict.fromkeys(word for word in words if word))


def limits_of(one: dict[str, Any]) -> str:
    """Return the limits of an entry in words, from its JSON schema."""
    bounds = {key: part[key] for part in [one, *one.get("anyOf", [])] for key in _LIMITS if key in part}
    words = [f"above {bounds['exclusiveMinimum']:g}"] if "exclusiveMinimum" in bounds else []
    words += [f"from {bounds['minimum']:g}"] if "minimum" in bounds else []
    words += [f"to {bounds['maximum']:g}"] if "maximum" in bounds else []
    words += [f"below {bounds['exclusiveMaximum']:g}"] if "exclusiveMaximum" in bounds else []
    return " ".join(words)


def default_of(value: Any) -> str:
    """Return a default in words."""
    if value is None or "PydanticUndefined" in repr(value):
        return "none"
    if isinstance(value, BaseModel):
        return "its own defaults"
    text = repr(list(value) if isinstance(value, tuple) else value)
    return f"`{text}`" if len(text) < 60 else "see the file"
