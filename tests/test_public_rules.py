"""Rules that every public object and message keeps, whoever wrote it."""

from __future__ import annotations

import ast
import importlib
import inspect
import re
from collections.abc import Iterator
from pathlib import Path

import click
import numpy as np
import pytest

import colure
from colure.analysis import normalized_error
from colure.app.cli import with_flags
from colure.geometry import ellipse, mode_index
from colure.waves import synthesis_at

SOURCE = Path(colure.__file__).parent
#: Rooms that speak to a command line: only they may name its options.
SHELL = ("app/commands/", "app/terminal/", "app/cli.py")
#: An option, unless it belongs to a whole command that is quoted.
FLAG = re.compile(r"(?<![\w-])--[a-z]")
COMMAND = re.compile(r"colure \w+[^,;:]*")


def raised() -> Iterator[tuple[str, str]]:
    """Yield (place, text) of all texts inside `raise` statements, values left out."""
    for path in sorted(SOURCE.rglob("*.py")):
        name = path.relative_to(SOURCE).as_posix()
        if name.startswith(SHELL):
            continue
        for statement in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(statement, ast.Raise) and statement.exc is not None:
                for node in ast.walk(statement.exc):
                    if isinstance(node, ast.Constant) and isinstance(node.value, str):
                        yield f"{name}:{node.lineno}", node.value


def test_no_python_error_names_an_option_of_the_command_line():
    texts = list(raised())
    assert len(texts) > 500  # they were found
    assert [(at, text) for at, text in texts if FLAG.search(COMMAND.sub("", text))] == []


def test_the_command_line_names_the_option_instead():
    options = [click.Option(["--step-deg"]), click.Option(["--run", "run_name"]), click.Argument(["folder"])]
    said = with_flags("step_deg = 7: must divide 180 deg\nbegin another run (`run`), not `folder`", options)
    assert said == "--step-deg = 7: must divide 180 deg\nbegin another run (--run), not `folder`"


#: Packages whose names are public.
PUBLIC = (
    "geometry",
    "waves",
    "model",
    "planning",
    "analysis",
    "instruments",
    "acquire",
    "twin",
    "report",
    "app",
    "app.services",
)
#: Numbers of a kind: a caller who swaps two of them gets a wrong number that looks right.
KINDS = {
    "float": ("float", "float | None"),
    "int": ("int", "int | None"),
    "real array": ("ArrayLike", "FloatArray", "IntArray"),
    "complex array": ("ComplexArray",),
}
#: Where the order is no choice of ours, and why.
ORDER_GIVEN = {
    "geometry.angle_between": "order makes no difference",
    "geometry.to_basis": "a pair of components as every function returns it",
    "geometry.from_basis": "a pair of components as every function returns it",
}


def public_functions() -> Iterator[tuple[str, object]]:
    """Yield functions and public methods of classes that the rooms' fronts name; constructors of data classes are left out."""
    for room in PUBLIC:
        package = importlib.import_module(f"colure.{room}")
        for name in package.__all__:
            thing = getattr(package, name)
            if inspect.isfunction(thing):
                yield f"{room}.{name}", thing
            for member, method in list(vars(thing).items()) if inspect.isclass(thing) else ():
                plain = getattr(method, "__func__", method)
                if inspect.isfunction(plain) and not member.startswith("_"):
                    yield f"{room}.{name}.{member}", plain


def look_alike(function: object) -> list[list[str]]:
    """Return names of numbers of one kind that a caller may give by place."""
    by_place = [p for p in inspect.signature(function).parameters.values() if p.kind is p.POSITIONAL_OR_KEYWORD]
    found = [[p.name for p in by_place if str(p.annotation) in kind] for kind in KINDS.values()]
    return [names for names in found if len(names) > 1]


def test_look_alike_numbers_are_given_by_name():
    functions = dict(public_functions())
    assert len(functions) > 150  # they were found
    assert {
        name: look_alike(one) for name, one in functions.items() if look_alike(one) and name not in ORDER_GIVEN
    } == {}


@pytest.mark.parametrize(
    "call", [lambda: ellipse(1.0, 1j), lambda: mode_index(1, 0), lambda: synthesis_at(np.ones((1, 2, 3)), 0.1, 0.2),
             lambda: normalized_error(1.0, 0.1, 1.1, 0.1)]
)  # fmt: skip
def test_given_by_place_they_are_refused(call):
    with pytest.raises(TypeError, match="positional argument"):
        call()
