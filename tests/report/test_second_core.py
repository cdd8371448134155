"""Sections that a child draws are those that this process draws; what the child does not bring, this process draws."""

from __future__ import annotations

from collections import deque
from dataclasses import replace

import pytest

from colure.report.content import SECTIONS
from colure.report.document import Chart, Paragraph, Table
from colure.report.second_core import SecondCore
from colure.report.spoken import pictures_in
from colure.report.translation import Translation


@pytest.fixture
def child():
    made = SecondCore()
    yield made
    made.close()


def told(sections):
    """Texts and drawn values: an SVG has names in it that no two drawings share."""
    blocks = [block for one in sections for block in one.blocks]
    return [
        (one.caption, one.values) if isinstance(one, Chart) else one
        for one in blocks
        if isinstance(one, (Chart, Paragraph, Table))
    ]


def test_the_child_draws_the_same_sections_in_the_language_that_is_spoken(source, child):
    speak = Translation("de")
    with pictures_in(speak):
        drawn, english = child._drawn_by_child(source, "de", deque(["drift", "checks"]))
        own = SECTIONS["drift"](source)
    assert english == [] and list(drawn) == ["drift", "checks"]
    assert told(drawn["drift"]) == told(own) and "GHz" in drawn["drift"][0].blocks[0].values
    assert "Zeit / min" in drawn["drift"][0].blocks[0].values and speak.left == []


def test_what_the_child_began_early_is_not_drawn_again(source, child):
    """It draws from a source that holds nothing of what is worked out later; the rest comes from the whole one."""
    early = replace(source, findings=[], diagnoses=[], levels={}, face=None, room=None)
    child.begin(early, ["drift", "set-up"])
    child._begun.result()
    found = child.sections(source, ("set-up", "checks", "drift"), {"checks": SECTIONS["checks"]})
    assert set(found) == {"set-up", "checks", "drift"}
    assert all(told(found[name]) == told(SECTIONS[name](source)) for name in found)


def test_a_child_that_died_costs_time_and_no_section(source, child):
    child._child.kill()
    child._child.wait()
    names = ("drift", "checks", "measured")
    found = child.sections(source, names, SECTIONS)
    assert set(found) == set(names) and told(found["checks"]) == told(SECTIONS["checks"](source))
