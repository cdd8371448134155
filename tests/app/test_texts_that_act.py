"""Texts from instruments and foreign files do nothing to a terminal or a page: escapes (ECMA-48), marks of direction (Unicode Standard
Annex 9), and words in brackets that the library for tables would take for a style."""

from __future__ import annotations

import json
import unicodedata

import click
import pytest
from click.testing import CliRunner

from colure.app.services.acquisition import CheckLine
from colure.app.terminal import screens
from colure.app.terminal.say import say
from colure.model.events import Event
from colure.model.strict_json import shown_json

ACTING = "\x1b]0;mine\x07\x9b2J\u202eevil\u2066"
HOSTILE = f"[/red][bold]{ACTING}:smile: network analyzer"
PLAIN = "[/red][bold]"


def acts(text: str) -> list[str]:
    return [one for one in text if one != "\n" and (unicodedata.category(one) == "Cc" or one in "\u202e\u2066")]


def test_an_instrument_that_answers_with_escapes_and_styles_is_shown_as_it_answered(capsys):
    screens.show_check([CheckLine("analyzer", True, HOSTILE), CheckLine("axes", False, HOSTILE)])
    shown = capsys.readouterr().out
    assert shown.count(PLAIN) == 2 and shown.count(":smile: network analyzer") == 2 and "NO" in shown
    assert not acts(shown)


def test_what_a_running_scan_says_is_shown_as_it_is(capsys):
    with screens.progress(3, quiet=False) as listener:
        listener(Event("warning", HOSTILE, {}))
        listener(Event("state", HOSTILE, {"state": "paused"}))
    shown = capsys.readouterr().err
    assert shown.count(PLAIN) == 2 and "\x07" not in shown and "\u202e" not in shown and "\x1b]" not in shown


def test_a_line_of_a_command_keeps_its_ends_and_nothing_else_that_acts():
    @click.command()
    def told() -> None:
        say(f"one {HOSTILE}\ntwo")

    shown = CliRunner().invoke(told).output
    assert shown.count("\n") == 2 and PLAIN in shown and not acts(shown)


@pytest.mark.parametrize("text", [HOSTILE, "a\\u202eb", "\\\x1b", "line\nend\ttab", "\b\f", "\u00e9\u6771"])
def test_a_page_is_told_the_same_without_what_acts(text):
    told = json.loads(shown_json({"text": text}))["text"]
    assert len(told) == len(text) and not [one for one in acts(told) if one != "\t"]
    assert [b for a, b in zip(text, told, strict=True) if a != b] == ["?"] * sum(
        a != b for a, b in zip(text, told, strict=True)
    )
    if text in ("a\\u202eb", "line\nend\ttab", "\u00e9\u6771"):
        assert told == text
