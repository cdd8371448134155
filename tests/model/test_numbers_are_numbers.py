"""A text and a `true` do not pass for a number in any file of a campaign: "11" would be read as 11, and true as 1."""

from __future__ import annotations

import re
from typing import Annotated, Literal

import pytest
from click.testing import CliRunner
from pydantic import Field

from colure.app.cli import main
from colure.errors import InputError
from colure.model.campaign import Campaign
from colure.model.loading import Section, number, validate


@pytest.mark.parametrize(
    ("file", "before", "after", "says"),
    [
        ("goal.toml", "points = 11", 'points = "11"', r"goal\.toml: points = '11': must be a whole number from 1"),
        ("goal.toml", "start_ghz = 24.00", "start_ghz = true", r"start_ghz = True: must be a number"),
        (
            "chamber.toml",
            "range_length_m = 1.2",
            "range_length_m = true",
            r"range_length_m = True: must be a number from 0\.05",
        ),
        ("chamber.toml", "speed_deg_s = 20", "speed_deg_s = '20'", r"azimuth\.speed_deg_s = '20': must be a number"),
        ("twin.toml", "[0.08, 0.0, 0.05]", '[0.08, "0.0", 0.05]', r"axes_offset_mm"),
    ],
)
def test_a_text_or_true_for_a_number_is_refused_by_its_field(campaign_folder, file, before, after, says):
    path = campaign_folder / file
    text = path.read_text(encoding="utf-8")
    assert before in text
    path.write_text(text.replace(before, after, 1), encoding="utf-8")
    with pytest.raises(InputError, match=says):
        Campaign.load(campaign_folder).simulated()


class Mixed(Section):
    """Numbers among what is none."""

    either: float | Literal["auto"] = "auto"
    named: dict[str, Annotated[float, Field(ge=0)]] = Field(default_factory=dict)
    text: str = ""
    yes: bool = False
    plain: float | None = number("m", 0, 9, 1.0)


def test_what_may_be_a_text_or_true_stays_one():
    good = {"either": "auto", "named": {"a": 1}, "text": "11", "yes": True, "plain": 2}
    found = validate(Mixed, good, source="mixed.toml")
    assert (found.either, found.named, found.text, found.yes, found.plain) == ("auto", {"a": 1.0}, "11", True, 2.0)
    for name, value in {"either": "11", "named": {"a": "1"}, "plain": False}.items():
        with pytest.raises(InputError, match=name):
            validate(Mixed, {**good, name: value}, source="mixed.toml")


@pytest.mark.parametrize("mark", ["\\u001b[31m", "\\u202e", "\\u009b2J", "\\u2067", "\\u0007"])
def test_a_text_that_does_something_to_a_terminal_is_refused(campaign_folder, mark):
    """Escape sequences (ECMA-48) and marks of direction (Unicode Standard Annex 9)."""
    path = campaign_folder / "goal.toml"
    text = path.read_text(encoding="utf-8")
    path.write_text(re.sub(r'name = "', lambda _: f'name = "{mark}', text, count=1), encoding="utf-8")
    shown = CliRunner().invoke(main, ["plan", str(campaign_folder)])
    assert (
        shown.exit_code == 2
        and "goal.toml: name = " in shown.output
        and "must hold no control characters" in shown.output
    )
    assert not set(shown.output) & set("\x1b\u202e\u009b\u2067\x07")
