"""The pictures that a far field can be drawn as."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TypeVar

from colure.errors import InputError

One = TypeVar("One")
#: Kinds of pictures: kept here, where no heavy library is imported.
KINDS = ("cuts", "polar", "map", "solid", "front", "frequency", "aperture")
#: Principal planes, in the order they are drawn.
PLANES = ("E", "H")


def chosen_planes(cuts: Mapping[str, One], planes: Sequence[str]) -> dict[str, One]:
    """Return the cuts in some principal planes; raises `InputError` if there is no such plane, or none is named."""
    wanted = list(planes)
    if not wanted or any(name not in cuts for name in wanted):
        raise InputError([f"planes = {', '.join(wanted)}: must be one or more of {', '.join(cuts)}"])
    return {name: cuts[name] for name in wanted}
