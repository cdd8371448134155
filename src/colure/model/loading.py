"""TOML in, validated models out; every fault names file, field, value, limit and unit."""

from __future__ import annotations

import difflib
import re
import tomllib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from importlib import import_module
from pathlib import Path
from typing import Annotated, Any, ClassVar, Literal, TypeVar, get_args, get_origin

import annotated_types
from pydantic import BaseModel, ConfigDict, Field, ValidationError, model_validator
from pydantic.fields import FieldInfo

from colure.errors import InputError as InputError  # noqa: PLC0414 - the room's front offers it too
from colure.model.admission import require_regular
from colure.values import cut_off, in_short, printable

#: A campaign file larger than this is refused before it is parsed.
LARGEST_TOML_BYTES = 1_000_000
#: Parts of one key, and tables or lists in each other; campaign files have 4 at most.
MOST_PARTS, DEEPEST = 100, 20
_QUOTED = re.compile(r'"(?:[^"\\]|\\.)*"' + r"|'[^']*'")


def require_library(name: str, extra: str) -> Any:
    """Return a library that comes with one of Colure's extras.

    Raises
    ------
    InputError
        If it, or something that it needs, is not installed; the extra is named.
    """
    try:
        return import_module(name)
    except ModuleNotFoundError as error:
        raise InputError([f"{error.name} is missing; install it with: pip install 'colure[{extra}]'"]) from None


class Section(BaseModel):
    """Base of every table in a campaign file: frozen, no unknown fields, no infinities.

    foreign_words
        Its texts are words of an instrument, which may be control characters.
    """

    foreign_words: ClassVar[bool] = False
    model_config = ConfigDict(frozen=True, extra="forbid", allow_inf_nan=False, validate_default=True, defer_build=True)

    @model_validator(mode="before")
    @classmethod
    def _numbers_as_they_are(cls, data: Any) -> Any:
        """Let no text and no `true` pass for a number: "11" and true would be read as 11 and 1."""
        if not isinstance(data, dict):
            return data
        strict = _strict_fields(cls)
        return {name: strict[name].sifted(value) if name in strict else value for name, value in data.items()}

    @classmethod
    def written(cls, name: str, table: Mapping[str, Any]) -> tuple[str, str]:
        """Return the word by which a table of a file names a field, and the unit that stands in for degrees there, if any."""
        return name, ""

    def __repr__(self) -> str:
        """Return the entries in a few lines; tables inside only by name."""
        return cut_off(
            type(self).__name__, (f"{name}={in_short(getattr(self, name))}" for name in type(self).model_fields)
        )


class NoNumber:
    """Stands for a text or a `true` where a number belongs, so that the field refuses it; shown as it was written."""

    def __init__(self, written: object) -> None:
        self._written = written

    def __repr__(self) -> str:
        """Return what was written."""
        return repr(self._written)


@dataclass(frozen=True)
class NumbersOnly:
    """What could be taken for a number in a field that holds numbers, and must not.

    likes
        `str` and `bool`, unless the field holds such values too.
    words
        Texts that it may hold although it holds no others.
    tables
        Whether tables in it hold numbers by name; tables with entries of their own look at those themselves.
    """

    likes: tuple[type, ...]
    words: frozenset[str]
    tables: bool

    def sifted(self, value: Any) -> Any:
        """Return a value, or a list or table of them, with what is only like a number put aside."""
        if isinstance(value, self.likes) and not (isinstance(value, str) and value in self.words):
            return NoNumber(value)
        if isinstance(value, (list, tuple)):
            return type(value)(self.sifted(one) for one in value)
        if self.tables and isinstance(value, dict):
            return {name: self.sifted(one) for name, one in value.items()}
        return value


@cache
def _strict_fields(model: type[BaseModel]) -> dict[str, NumbersOnly]:
    """Return the fields that hold numbers."""
    out = {}
    for name, field in model.model_fields.items():
        held = set(_held(field.annotation))
        if held & {int, float}:
            words = frozenset(one for one in held if isinstance(one, str))
            tables = not any(isinstance(one, type) and issubclass(one, BaseModel) for one in held)
            out[name] = NumbersOnly(tuple(kind for kind in (str, bool) if kind not in held), words, tables)
    return out


def _held(annotation: Any) -> Iterator[Any]:
    """Yield the kinds of values that an annotation allows, and the words of its literals; not the keys of tables."""
    origin, inner = get_origin(annotation), get_args(annotation)
    if origin is Literal:
        yield from (one if isinstance(one, str) else type(one) for one in inner)
    elif origin is Annotated:
        yield from _held(inner[0])
    elif isinstance(origin, type) and issubclass(origin, Mapping):
        yield from _held(inner[1])
    elif inner:
        for one in inner:
            yield from _held(one)
    else:
        # A kind of text of its own, such as an enumeration, is text.
        yield str if isinstance(annotation, type) and issubclass(annotation, str) else annotation


def number(unit: str, low: float, high: float, default: float | None = None) -> Any:
    """Declare a number with its unit and inclusive limits; required when no default is given."""
    extra: dict[str, Any] = {"unit": unit}
    if default is None:
        return Field(ge=low, le=high, json_schema_extra=extra)
    return Field(default=default, ge=low, le=high, json_schema_extra=extra)


Millimetres3 = tuple[
    Annotated[float, Field(ge=-1000.0, le=1000.0)],
    Annotated[float, Field(ge=-1000.0, le=1000.0)],
    Annotated[float, Field(ge=-1000.0, le=1000.0)],
]

ModelT = TypeVar("ModelT", bound=BaseModel)


def read_toml(path: Path) -> dict[str, Any]:
    """Read a TOML file.

    Raises
    ------
    InputError
        If the file is missing, no regular file, too large, not UTF-8, not TOML, or nested too deeply.
    """
    name = path.name
    require_regular(path, largest_bytes=LARGEST_TOML_BYTES)
    try:
        text = path.read_text(encoding="utf-8")
        _require_short_keys(text, name)
        tables = tomllib.loads(text)
    except (tomllib.TOMLDecodeError, UnicodeDecodeError) as error:
        raise InputError([f"{name}: not valid TOML: {error}"]) from None
    except OSError as error:
        raise InputError([f"{name}: cannot be read from {path.parent}: {error.strerror}"]) from None
    except RecursionError:
        raise InputError([f"{name}: nested too deeply: must be at most {DEEPEST} tables or lists"]) from None
    require_shallow(tables, name)
    return tables


def _require_short_keys(text: str, name: str) -> None:
    """Refuse a key of very many parts before the parser sees it, which takes seconds over one."""
    for line, content in enumerate(text.splitlines(), start=1):
        if content.count(".") <= MOST_PARTS:
            continue
        bare = _QUOTED.sub("q", content).split("#")[0]
        parts = max(piece.count(".") + 1 for piece in re.split("[,=]", bare))
        if parts > MOST_PARTS:
            raise InputError([f"{name}: line {line}: key of {parts} parts: must be at most {MOST_PARTS} parts"])


def require_shallow(data: dict[str, Any], source: str) -> None:
    """Raise `InputError` if tables and lists stand in each other more than `DEEPEST` deep."""
    level: list[Any] = [data]
    for _ in range(DEEPEST):
        level = [
            inner
            for one in level
            for inner in (one.values() if isinstance(one, dict) else one)
            if isinstance(inner, (dict, list))
        ]
        if not level:
            return
    raise InputError([f"{source}: nested too deeply: must be at most {DEEPEST} tables or lists"])


def _require_plain_text(data: dict[str, Any], source: str) -> None:
    """Refuse texts that would do something to a terminal, or turn what is written after them around."""
    faults = [
        f"{source}: {where} = {text!r}: must hold no control characters, and no marks that turn the direction of writing"
        for where, text in _texts(data, "")
        if text != printable(text, keep="\n\r\t")
    ]
    if faults:
        raise InputError(faults)


def _texts(value: Any, where: str) -> Iterator[tuple[str, str]]:
    """Yield every text of a table, its keys too, with the place where it stands."""
    if isinstance(value, str):
        yield where, value
    elif isinstance(value, dict):
        for name, one in value.items():
            place = f"{where}.{name}" if where else str(name)
            yield printable(place), str(name)
            yield from _texts(one, printable(place))
    elif isinstance(value, (list, tuple)):
        for one in value:
            yield from _texts(one, where)


def load(model: type[ModelT], path: Path) -> ModelT:
    """Read and validate one campaign file; raises `InputError` with every fault found."""
    return validate(model, read_toml(path), source=path.name)


def validate(model: type[ModelT], data: dict[str, Any], *, source: str) -> ModelT:
    """Validate a table against a model; raises `InputError` with every fault found."""
    require_shallow(data, source)
    if not getattr(model, "foreign_words", False):
        _require_plain_text(data, source)
    try:
        return model.model_validate(data)
    except ValidationError as error:
        raise InputError([_fault(model, fault, source, data) for fault in error.errors()]) from None


def _fault(model: type[BaseModel], fault: Any, source: str, data: dict[str, Any]) -> str:
    path = [part for part in fault["loc"] if not (isinstance(part, str) and part.startswith("function-"))]
    path, field, owner = _find(model, path)
    path, other_unit = _as_written(path, owner, data)
    where = ".".join(str(part) for part in path) or "file"
    value = fault.get("input")
    shown = repr(value) if not isinstance(value, (dict, list)) or len(repr(value)) < 60 else "(table)"
    kind = fault["type"]
    if kind == "extra_forbidden":
        known = list(owner.model_fields) if owner is not None else []
        hint = _where_it_belongs(str(path[-1]), owner)
        return f"{source}: {where} = {shown}: unknown field; known here: {', '.join(known)}{hint}"
    if kind in ("union_tag_invalid", "union_tag_not_found"):
        tag = f" = {fault['ctx']['tag']!r}" if "tag" in fault["ctx"] else ": missing"
        kinds = ", ".join(_kinds(field)) if field is not None else ""
        return f"{source}: {where}.kind{tag}; must be one of {kinds}"
    if kind == "missing":
        return f"{source}: {where}: missing; needs {_requirement(field, fault, other_unit)}"
    if kind == "value_error":
        text = str(fault["msg"]).removeprefix("Value error, ")
        # A whole table's value says nothing, nor does a file's name twice.
        if shown == "(table)":
            return f"{source}: {text}" if not path else f"{source}: {where}: {text}"
        return f"{source}: {where} = {shown}: {text}"
    return f"{source}: {where} = {shown}: must be {_requirement(field, fault, other_unit)}"


def _as_written(path: list[Any], owner: type[BaseModel] | None, data: Any) -> tuple[list[Any], str]:
    """Name a field as the file writes it, where its table has another word; and the unit of degrees there, if another."""
    if not path or owner is None or not issubclass(owner, Section) or path[-1] not in owner.model_fields:
        return path, ""
    table = data
    for part in path[:-1]:
        try:
            table = table[part]
        except (KeyError, IndexError, TypeError):
            return path, ""
    name, unit = owner.written(str(path[-1]), table if isinstance(table, dict) else {})
    return [*path[:-1], name], unit


def _where_it_belongs(name: str, owner: type[BaseModel] | None) -> str:
    """Return a hint at the field that was meant: a table beside it that has one of this name, or one that is spelt nearly so."""
    fields = {} if owner is None else owner.model_fields
    tables = {table: _nested(field.annotation) for table, field in fields.items()}
    inside = [table for table, kind in tables.items() if kind is not None and name in kind.model_fields]
    if len(inside) == 1:
        return f"; write it in the table [{inside[0]}] ({inside[0]}.{name})"
    close = difflib.get_close_matches(name, list(fields), n=1)
    return f"; did you mean {close[0]}?" if close else ""


def _find(model: type[BaseModel], path: list[Any]) -> tuple[list[Any], FieldInfo | None, type[BaseModel] | None]:
    """Walk a fault's path to its field and to the model that owns it.

    The path comes back without what only names the kind of a table, such as `horn` in device.horn.aperture_a_mm.
    """
    owner: type[BaseModel] = model
    field: FieldInfo | None = None
    kept, kinds = list[Any](), dict[str, type[BaseModel]]()
    for number, part in enumerate(path):
        if part in kinds:
            owner, kinds = kinds[part], {}
            continue
        kept.append(part)
        if not isinstance(part, str) or part not in owner.model_fields:
            continue
        field = owner.model_fields[part]
        kinds = _kinds(field)
        nested = _nested(field.annotation)
        if number < len(path) - 1 and nested is not None:
            owner = nested
    return kept, field, owner


def _kinds(field: FieldInfo) -> dict[str, type[BaseModel]]:
    """Return the tables that a field may hold by the names of their kinds, if it has kinds."""
    tables = dict[str, type[BaseModel]]()

    def walk(annotation: Any) -> None:
        if isinstance(annotation, type) and issubclass(annotation, BaseModel):
            if "kind" in annotation.model_fields:
                tables.update(dict.fromkeys(get_args(annotation.model_fields["kind"].annotation), annotation))
            return
        for inner in get_args(annotation):
            walk(inner)

    walk(field.annotation)
    return tables


def _nested(annotation: Any) -> type[BaseModel] | None:
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return annotation
    for inner in get_args(annotation):
        model = _nested(inner)
        if model is not None:
            return model
    return None


def _requirement(field: FieldInfo | None, fault: Any, other_unit: str = "") -> str:
    """Say what a field accepts, from its limits and its unit; `other_unit` stands in for degrees."""
    message = str(fault["msg"])
    message = message[0].lower() + message[1:]
    if field is None:
        return message
    if fault["type"] == "missing":
        message = "a value"
    extra = field.json_schema_extra
    unit = str(extra.get("unit", "")) if isinstance(extra, dict) else ""
    unit = unit.replace("deg", other_unit) if other_unit else unit
    low = next((m.ge for m in field.metadata if isinstance(m, annotated_types.Ge)), None)
    high = next((m.le for m in field.metadata if isinstance(m, annotated_types.Le)), None)
    if low is not None and high is not None:
        whole = "a whole number" if field.annotation is int else "a number"
        return f"{whole} from {low:g} to {high:g} {unit}".rstrip()
    allowed = fault.get("ctx", {}).get("expected")
    if allowed:
        return f"one of {allowed}"
    return f"{message} {f'({unit})' if unit else ''}".rstrip()
