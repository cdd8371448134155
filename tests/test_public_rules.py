"""Rules that every public object and message keeps, whoever wrote it."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import click

import colure
from colure.app.cli import with_flags

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
