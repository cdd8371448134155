"""The architecture page says of the code's rooms what the code says, and every path that it names is there."""

from __future__ import annotations

import importlib.util
import re
from pathlib import Path

import pytest

import colure

DOCS = Path(__file__).parents[2] / "docs"
PAGE = (DOCS / "explanation" / "architecture.md").read_text(encoding="utf-8")


@pytest.fixture(scope="module")
def rooms():
    spec = importlib.util.spec_from_file_location("rooms", DOCS / "rooms.py")
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def test_the_page_lists_the_imports_of_the_code(rooms):
    """If this fails after a change of imports that was meant: put the text of `rooms.listing()` into the page."""
    assert re.search(r"^```text\n(.*?)\n```", PAGE, re.DOTALL | re.MULTILINE)[1] == rooms.listing()


def test_the_answers_name_what_is_there():
    """Ten answers to "where would X go": each path begins in the package."""
    source = Path(colure.__file__).parent
    table = PAGE[PAGE.index("| question") : PAGE.index("## Exit codes")]
    answers = [line.split("|")[2] for line in table.splitlines()[2:] if line.startswith("|")]
    assert len(answers) == 10
    for answer in answers:
        named = [one for one in re.findall(r"`([^`]+)`", answer) if "/" in one or one.endswith(".py")]
        assert named
        for one in named:
            assert (source / one).exists(), one


def test_a_room_stands_above_what_it_imports(rooms):
    """A diamond worked out by hand: d needs b and c, both need a; the line from d to a follows from the others."""
    found = {"a": set(), "b": {"a"}, "c": {"a"}, "d": {"a", "b", "c"}}
    assert rooms.floors(found) == [["a"], ["b", "c"], ["d"]]
    assert rooms.nearest(found) == {"a": set(), "b": {"a"}, "c": {"a"}, "d": {"b", "c"}}
