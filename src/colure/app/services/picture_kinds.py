"""The pictures that a far field can be drawn as."""

from __future__ import annotations

#: Kinds of pictures: kept here, where no heavy library is imported.
KINDS = ("cuts", "polar", "map", "solid", "front", "frequency", "aperture")
