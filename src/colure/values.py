"""Results that hold arrays: arrays that cannot be changed, a repr of a few lines, and an `==` that gives one answer.

Every room may import this module; it imports none, and no library before it is needed.
"""

from __future__ import annotations

import reprlib
import unicodedata
from collections.abc import Iterable
from dataclasses import fields, is_dataclass
from math import isnan
from typing import Any, TypeVar

Class = TypeVar("Class", bound=type)
#: A repr is not longer than this: five lines of a terminal.
LONGEST = 400
#: Of these nothing is to be frozen; objects of the twin and of the engine are made by the ten thousand.
PLAIN = frozenset({int, float, complex, bool, str, bytes, type(None)})
SHORT = reprlib.Repr()
SHORT.maxstring = SHORT.maxother = 60


def holds_arrays(cls: Class) -> Class:
    """Prepare a data class whose fields hold arrays or data sets; stands below `@dataclass(frozen=True)`.

    - Arrays become read-only views (no copy), also those in tuples, lists, dictionaries and data sets: `array.copy()` can be changed.
    - The repr names type and shape of an array instead of its numbers; a class may have its own.
    - Two values are equal if their classes and all fields are. What is not a number equals itself, so a value equals its copy.
    - There is no hash.
    """
    wanted: dict[str, Any] = {"__repr__": short_repr, "__eq__": _equal, "__hash__": _no_hash, "__setstate__": _restored}
    for name, method in wanted.items():
        if cls.__dict__.get(name) is None:
            setattr(cls, name, method)
    checked = getattr(cls, "__post_init__", None)

    def __post_init__(self: Any) -> None:  # noqa: N807 - the name that the data class calls
        if checked is not None:
            checked(self)
        _freeze(self)

    setattr(cls, "__post_init__", __post_init__)  # noqa: B010 - a type checker knows no such attribute of `type`
    return cls


def briefly_shown(cls: Class) -> Class:
    """Give a data class without arrays, but with long lists or tables in it, the same repr; stands below `@dataclass(frozen=True)`."""
    setattr(cls, "__repr__", short_repr)  # noqa: B010 - as above
    return cls


def frozen(part: Any) -> Any:
    """Return a field whose arrays are read-only; itself where nothing had to be changed."""
    kind = type(part)
    if kind in PLAIN:
        return part
    if hasattr(part, "setflags"):
        if part.flags.writeable:
            part = part.view()
            part.setflags(write=False)
        return part
    if kind is tuple or kind is list:
        every = [frozen(one) for one in part]
        return part if all(new is old for new, old in zip(every, part, strict=True)) else kind(every)
    if kind is dict:
        members = {key: frozen(one) for key, one in part.items()}
        return part if all(members[key] is one for key, one in part.items()) else members
    return _frozen_dataset(part) if hasattr(part, "data_vars") else part


def same(one: Any, other: Any) -> bool:
    """Tell whether two fields are equal: arrays and data sets as a whole, containers member by member."""
    if one is other:
        return True
    if hasattr(one, "data_vars") and hasattr(other, "data_vars"):
        return bool(one.identical(other))
    if hasattr(one, "dtype") or hasattr(other, "dtype"):
        import numpy as np

        first, second = np.asarray(one), np.asarray(other)
        return np.array_equal(first, second, equal_nan=first.dtype.kind in "fc" and second.dtype.kind in "fc")
    if isinstance(one, dict) and isinstance(other, dict):
        return one.keys() == other.keys() and all(same(each, other[key]) for key, each in one.items())
    if isinstance(one, list | tuple) and isinstance(other, list | tuple):
        return type(one) is type(other) and len(one) == len(other) and all(map(same, one, other))
    return bool(one == other) or (isinstance(one, float) and isinstance(other, float) and isnan(one) and isnan(other))


def _freeze(self: Any) -> None:
    for name in self.__dataclass_fields__:
        part = getattr(self, name)
        new = frozen(part)
        if new is not part:
            object.__setattr__(self, name, new)


def _frozen_dataset(dataset: Any) -> Any:
    """Return a data set whose arrays in memory are read-only. What is still in its file stays there; indices are so already."""
    open_ = [name for name, one in dataset.variables.items() if _writeable(one)]
    if not open_:
        return dataset
    own = dataset.copy(deep=False)
    for name in open_:
        variable = own.variables[name]
        variable.data = frozen(variable.data)
    return own


def _writeable(variable: Any) -> bool:
    held: Any = getattr(variable, "_data", None)  # `data` would read what is still in a file
    return hasattr(held, "setflags") and bool(held.flags.writeable)


def _restored(self: Any, state: dict[str, Any]) -> None:
    """Come back from a copy or another process, where arrays can be changed again."""
    self.__dict__.update(state)
    _freeze(self)


def _equal(self: Any, other: Any) -> Any:
    if type(self) is not type(other):
        return NotImplemented
    compared = [one.name for one in fields(self) if one.compare]
    return all(same(getattr(self, name), getattr(other, name)) for name in compared)


def _no_hash(self: Any) -> int:
    raise TypeError(f"{type(self).__name__} holds arrays and has no hash: use id(), or a name, as the key")


def short_repr(self: Any) -> str:
    """Return the type and the fields in at most `LONGEST` characters; of arrays, data sets and objects only what they are."""
    shown = (f"{one.name}={in_short(getattr(self, one.name))}" for one in fields(self) if one.repr)
    return cut_off(type(self).__name__, shown)


def cut_off(name: str, shown: Iterable[str]) -> str:
    """Return "Name(a=1, b=2)", ending with "...)" where that is longer than `LONGEST` characters."""
    text = f"{name}({', '.join(shown)})"
    return text if len(text) <= LONGEST else f"{text[: LONGEST - 4]}...)"


def in_short(part: Any) -> str:
    """Return a field's value in a few words."""
    if hasattr(part, "shape"):
        return f"{part.dtype}{tuple(part.shape)}" if part.shape else str(part)
    if hasattr(part, "data_vars"):
        return f"{type(part).__name__}({', '.join(f'{name} {count}' for name, count in part.sizes.items())})"
    if is_dataclass(part) or hasattr(part, "model_fields_set"):
        return f"{type(part).__name__}(...)"
    return SHORT.repr(part)


#: Marks that turn the direction of writing (Unicode Standard Annex 9, section 2).
TURNING = frozenset("\u061c\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069")


def printable(text: str, keep: str = "\n") -> str:
    """Return a text that does nothing to a terminal: control characters and marks that turn the writing become `?`, but for `keep`."""
    if text.isascii() and text.isprintable():
        return text
    return "".join(
        "?" if one not in keep and (one in TURNING or unicodedata.category(one) == "Cc") else one for one in text
    )
