"""Mutation testing of the mathematical rooms: plant small errors, one at a time, and count how many the tests catch.

`python -m tests.mutation.mutants --count 60 --seed 1 [--room waves]` draws mutants (a sign, an operator, a comparison, a
number, sine for cosine, a forgotten conjugate) from the sources of geometry, waves and analysis (of its uncertainty alone, if
asked), runs the room's tests and the published values against each, and prints the survivors and the share caught. A survivor is either an error that no test
sees, or a change that makes no difference (a tolerance, a speed-up); people must look. POSIX only.
"""

from __future__ import annotations

import argparse
import ast
import shutil
import sys
import tempfile
import time
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import numpy as np

import colure
from tests.mutation.preloaded import TIMED_OUT, Preloaded, changed_copy

PACKAGE = Path(colure.__file__).parent
ROOMS = ("geometry", "waves", "uncertainty", "analysis")
#: Folder of a room, where that is not its name.
FOLDERS = {"uncertainty": "analysis/uncertainty"}
#: Tests of a room, quick ones first: the run ends at the first that fails.
GATES = {
    "geometry": ["tests/geometry", "tests/published", "tests/laws"],
    "waves": ["tests/laws", "tests/waves", "tests/published"],
    "uncertainty": ["tests/analysis/uncertainty", "tests/published"],
    "analysis": ["tests/published", "tests/analysis", "tests/app/services/test_compare_verdict_export.py"],
}
OPERATORS = {ast.Add: "-", ast.Sub: "+", ast.Mult: "/", ast.Div: "*"}
SIGNS = {"-": ast.Sub, "+": ast.Add, "/": ast.Div, "*": ast.Mult}
COMPARISONS: dict[type[ast.cmpop], type[ast.cmpop]] = {ast.Lt: ast.Gt, ast.Gt: ast.Lt, ast.LtE: ast.Gt, ast.GtE: ast.Lt}
NAMES = {"sin": "cos", "cos": "sin", "real": "imag", "imag": "real", "min": "max", "max": "min", "minimum": "maximum",
         "maximum": "minimum", "conj": "copy"}  # fmt: skip


@dataclass(frozen=True)
class Mutant:
    """One change: file within the package, line, what it was and what it becomes, and the whole new text."""

    name: str
    line: int
    was: str
    becomes: str
    text: str


def mutants_of(name: str) -> Iterator[Mutant]:
    """Yield every mutant of a file of the package; text in messages and annotations stays."""
    source = (PACKAGE / name).read_text(encoding="utf-8")
    count = sum(1 for _ in _places(ast.parse(source)))
    for at in range(count):
        tree = ast.parse(source)
        node = list(_places(tree))[at]
        was = ast.unparse(node)
        _change(node)
        yield Mutant(name, node.lineno, was, ast.unparse(node), ast.unparse(tree))


def _places(tree: ast.AST) -> Iterator[ast.expr]:
    """Yield expressions that can be changed, inside functions."""
    for function in ast.walk(tree):
        if isinstance(function, ast.FunctionDef):
            for statement in function.body:
                for node in ast.walk(statement):
                    if _changeable(node):
                        yield node  # type: ignore[misc]


def _changeable(node: ast.AST) -> bool:
    if isinstance(node, ast.BinOp):
        return type(node.op) in OPERATORS and not isinstance(
            node.left, ast.Constant | ast.JoinedStr | ast.List | ast.Tuple
        )
    if isinstance(node, ast.UnaryOp):
        return isinstance(node.op, ast.USub) and not isinstance(node.operand, ast.Constant)
    if isinstance(node, ast.Compare):
        return type(node.ops[0]) in COMPARISONS
    if isinstance(node, ast.Attribute):
        return node.attr in NAMES
    return isinstance(node, ast.Constant) and isinstance(node.value, float) and node.value not in (0.0,)


def _change(node: ast.expr) -> None:
    if isinstance(node, ast.BinOp):
        node.op = SIGNS[OPERATORS[type(node.op)]]()
    elif isinstance(node, ast.UnaryOp):
        node.op = ast.UAdd()
    elif isinstance(node, ast.Compare):
        node.ops[0] = COMPARISONS[type(node.ops[0])]()
    elif isinstance(node, ast.Attribute):
        node.attr = NAMES[node.attr]
    elif isinstance(node, ast.Constant):
        node.value = 1.5 * node.value


def drawn(rooms: tuple[str, ...], count: int, seed: int) -> list[Mutant]:
    """Draw mutants: files by their number of lines, then any place in the file."""
    random = np.random.default_rng(seed)
    names = [
        str(p.relative_to(PACKAGE))
        for room in rooms
        for p in sorted((PACKAGE / FOLDERS.get(room, room)).rglob("*.py"))
        if p.stem != "__init__"
    ]
    size = np.array([len((PACKAGE / name).read_text(encoding="utf-8").splitlines()) for name in names], float)
    out = []
    while len(out) < count:
        every = list(mutants_of(names[random.choice(len(names), p=size / size.sum())]))
        if every:
            out.append(every[random.integers(len(every))])
    return out


def room_of(name: str) -> str:
    """Return the room whose tests judge a file of the package: the innermost that has its own."""
    return next(
        (room for room, folder in FOLDERS.items() if name.startswith(f"{folder}/")), name.split("/", maxsplit=1)[0]
    )


def caught(one: Mutant, gates: Preloaded, *, limit_s: float) -> int:
    """Return the exit code of the gates against a mutant: 0 means that it survives."""
    folder = Path(tempfile.mkdtemp(prefix="mutant-"))
    try:
        changed_copy(PACKAGE, folder / "src", one.name, one.text)
        return gates.run(folder / "src", GATES[room_of(one.name)], log=folder / "log", limit_s=limit_s)
    finally:
        shutil.rmtree(folder, ignore_errors=True)


def main() -> int:
    """Draw, run and print; the exit code is 0 where the wanted share was caught."""
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("--count", type=int, default=60)
    asked.add_argument("--seed", type=int, default=1)
    asked.add_argument("--room", choices=ROOMS)
    asked.add_argument("--limit-s", type=float, default=600.0)
    asked.add_argument("--least", type=float, default=0.8, help="share that must be caught")
    options = asked.parse_args()
    rooms = (options.room,) if options.room else tuple(room for room in ROOMS if room not in FOLDERS)
    survivors, begun = [], time.monotonic()
    with Preloaded() as gates:
        for number, one in enumerate(drawn(rooms, options.count, options.seed), 1):
            code = caught(one, gates, limit_s=options.limit_s)
            word = "SURVIVES" if code == 0 else "too slow" if code == TIMED_OUT else "caught"
            survivors += [one] if code == 0 else []
            print(f"{number:3d} {word:8s} {one.name}:{one.line}  {one.was}  ->  {one.becomes}", flush=True)
    share = 1.0 - len(survivors) / options.count
    print(
        f"{options.count - len(survivors)} of {options.count} caught ({share:.0%}) in {time.monotonic() - begun:.0f} s"
    )
    return 0 if share >= options.least else 1


if __name__ == "__main__":
    sys.exit(main())
