"""Doors for other packages: what they bring by entry points is loaded once, looked at, and refused by name if it misbehaves."""

from __future__ import annotations

import sys
from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache
from importlib.metadata import entry_points
from typing import Any, TypeVar

from colure.errors import ColureError, InputError

#: Entry point groups, and what an object of each must have.
GROUPS: dict[str, tuple[str, ...]] = {
    "colure.steps": ("run",),
    "colure.figures": ("definition", "read"),
    "colure.probes": ("pattern",),
    "colure.report_sections": ("title", "blocks"),
    "colure.exports": ("ending", "write"),
}
T = TypeVar("T")


@dataclass(frozen=True)
class Brought:
    """One object of another package.

    name
        The entry point's: what files and commands call it by.
    package
        The package and its version.
    group
        The door that it came through.
    """

    name: str
    package: str
    group: str
    thing: Any

    def refusal(self, words: str) -> InputError:
        """Return the refusal of this object, which names package and object."""
        return InputError([f"{self.package}: {self.group} {self.name!r}: {words}; correct or remove that package"])

    def call(self, kind: type[T], function: Callable[..., Any], *arguments: Any) -> T:
        """Call something of the package.

        Raises
        ------
        InputError
            If it raises, or returns something else than `kind`; the package is named.
        """
        try:
            answer = function(*arguments)
        except ColureError:
            raise
        except Exception as error:
            raise self.refusal(f"raised {type(error).__name__}: {error}") from error
        if kind is float and isinstance(answer, int) and not isinstance(answer, bool):
            answer = float(answer)
        if not isinstance(answer, kind):
            raise self.refusal(f"returned {type(answer).__name__}, must return {kind.__name__}")
        return answer


def brought(group: str) -> tuple[Brought, ...]:
    """Return what other packages bring through a door (a key of `GROUPS`), sorted by name.

    Raises
    ------
    InputError
        If an object cannot be loaded, lacks something, or shares its name with another; the package is named.
    """
    return _loaded(group, tuple(sys.path))


def named(group: str, name: str) -> Brought:
    """Return one of the objects by name; raises `InputError` that names those that are installed."""
    for one in brought(group):
        if one.name == name:
            return one
    there = ", ".join(one.name for one in brought(group)) or "none"
    raise InputError([f"{name!r}: no package brings it; installed in {group}: {there}"])


def packages() -> str:
    """Return all packages that bring something, for hashes: results depend on their versions. Empty if there are none."""
    return " ".join(sorted({one.package for group in GROUPS for one in brought(group)}))


@lru_cache(maxsize=64)
def _loaded(group: str, path: tuple[str, ...]) -> tuple[Brought, ...]:
    out: list[Brought] = []
    for point in sorted(entry_points(group=group), key=lambda one: one.name):
        package = "an unknown package" if point.dist is None else f"{point.dist.name} {point.dist.version}"
        one = Brought(point.name, package, group, None)
        for other in out:
            if other.name == one.name:
                raise one.refusal(f"{other.package} brings one of this name too")
        thing = one.call(object, point.load)
        if isinstance(thing, type):
            thing = one.call(object, thing)
        missing = [name for name in GROUPS[group] if not hasattr(thing, name)]
        if missing:
            raise one.refusal(f"lacks {', '.join(missing)}")
        out.append(Brought(point.name, package, group, thing))
    return tuple(out)
