"""Which room imports which, read from the code: as text for the architecture page, and as its picture."""

from __future__ import annotations

from typing import Any

import grimp

from colure.report.drawing import Drawing
from colure.report.look import INK, MUTED, canvas, styled

#: Packages whose rooms are drawn, and what is left out because every room may use it.
HOUSES = {"colure": ("__main__", "errors", "values"), "colure.analysis": (), "colure.app": ()}
Imports = dict[str, set[str]]


def imports(graph: grimp.ImportGraph, house: str) -> Imports:
    """Return for every room of a house the rooms that it imports, also inside functions and for types alone."""
    left_out = {f"{house}.{name}" for name in HOUSES[house]}
    inside = {room: {room} | graph.find_descendants(room) for room in graph.find_children(house) - left_out}
    used = {
        room: set().union(*(graph.find_modules_directly_imported_by(one) for one in modules))
        for room, modules in inside.items()
    }
    short = {room: room.removeprefix(f"{house}.") for room in inside}
    return {
        short[room]: {short[other] for other, modules in inside.items() if other != room and used[room] & modules}
        for room in sorted(inside)
    }


def floors(found: Imports) -> list[list[str]]:
    """Return the rooms from the ground up: each stands on the highest of those that it imports."""
    height: dict[str, int] = {}

    def of(room: str) -> int:
        if room not in height:
            height[room] = 1 + max((of(other) for other in found[room]), default=-1)
        return height[room]

    top = max(of(room) for room in found)
    return [[room for room in found if height[room] == floor] for floor in range(top + 1)]


def nearest(found: Imports) -> Imports:
    """Return the imports that no chain of others implies."""

    def below(room: str) -> set[str]:
        return found[room] | {deeper for other in found[room] for deeper in below(other)}

    return {room: {other for other in used if all(other not in below(x) for x in used)} for room, used in found.items()}


def listing() -> str:
    """Return all imports between rooms: one line a room, from the top floor down."""
    graph = grimp.build_graph("colure", cache_dir=None)
    lines = []
    for house in HOUSES:
        found = imports(graph, house)
        lines += [house, *(f"  {room:12s} {', '.join(sorted(found[room])) or '-'}"
                           for floor in reversed(floors(found)) for room in floor)]  # fmt: skip
    return "\n".join(lines)


def _draw(ax: Any, found: Imports) -> None:
    """Draw one house: a room on its floor, a line down to each of the nearest that it imports."""
    storeys = floors(found)
    place = {
        room: ((number + 0.5) / len(floor), float(height))
        for height, floor in enumerate(storeys)
        for number, room in enumerate(floor)
    }
    for room, used in nearest(found).items():
        for other in sorted(used):
            ax.plot(*zip(place[room], place[other], strict=True), color=MUTED, linewidth=0.8)
    box = {"boxstyle": "round,pad=0.35", "facecolor": "white", "edgecolor": INK, "linewidth": 0.8}
    for room, (x, y) in place.items():
        ax.text(x, y, room, ha="center", va="center", color=INK, fontsize=9, bbox=box)
    ax.set_xlim(0.0, 1.0)
    ax.set_ylim(-0.5, len(storeys) - 0.5)
    ax.axis("off")


def rooms() -> Drawing:
    """Draw the rooms of every house: a line joins a room with what it imports, which lies below it."""
    graph = grimp.build_graph("colure", cache_dir=None)
    with styled():
        figure = canvas(7.4, 10.0)
        for ax, house in zip(figure.subplots(len(HOUSES), 1), HOUSES, strict=True):
            _draw(ax, imports(graph, house))
            ax.set_title(house, loc="left", fontsize=10)
        return figure
