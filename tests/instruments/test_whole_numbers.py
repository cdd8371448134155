"""A number of which a pattern takes a part is refused: it would look like a number. And targets that decimals cannot name."""

from __future__ import annotations

import re

import pytest

from colure.app import services
from colure.app.services.flight_words import coarse_faults
from colure.app.storage.folders import run_folder
from colure.errors import InputError, InstrumentError
from colure.instruments.links import whole_number
from colure.instruments.role_profiles import SensorQuantity

DEFAULT = SensorQuantity(query="T?").pattern
POINT = r"(?P<value>[-+]?[0-9.]+)"


@pytest.mark.parametrize(
    ("pattern", "answer", "value"),
    [
        (DEFAULT, "23.5", "23.5"),
        (DEFAULT, "TEMP 23.5 C", "23.5"),
        (DEFAULT, "23.5,45.0", "23.5"),  # a list whose first number has its point
        (DEFAULT, "-5e-3", "-5e-3"),
        (DEFAULT, "23.", "23"),
        (POINT, "A+738.6 B+0.0", "+738.6"),
        (r"(?P<value>-?\d+),", "12,34,56", "12"),  # the comma is taken by the pattern: it parts
        (r"^AZ-(?P<value>\d+)$", "AZ-12", "12"),
        (r"(?P<value>-?\d+) 1200", "-5 1200", "-5"),
        (r"(?P<value>\d+):", "2000:0", "2000"),
        (POINT, "12.500:0", "12.500"),  # a state behind a colon
        (r"(?P<value>\d+)", "12 \xb0", "12"),
        (r"(?P<value>\S+)", "738,6", "738,6"),  # is no number for whoever reads it
    ],
)
def test_a_whole_number_is_taken(pattern, answer, value):
    assert whole_number(re.search(pattern, answer), "value", "rack", "position") == value


@pytest.mark.parametrize(
    ("pattern", "answer"),
    [
        (DEFAULT, "23,5"),
        (POINT, "A+738,6 B+0,0"),
        (r"(?P<value>\d+)", "-5"),
        (r"(?P<value>\d\.\d+)", "12.5"),
        (r"(?P<value>-?\d+)", "12.75"),
        (r"(?P<value>-?\d{3})", "12345"),
        (POINT, "1.5e-3"),
        (POINT, "1,234.5"),
        (r"(?P<value>\d+)", ".5"),
        (r"(?P<value>[-+]?\d+)", "+12:34:56"),
        (r"(?P<value>\d+)", "012\xb034'56"),
        (r"(?P<value>\d+)", "012\xc2\xb0 34'56"),  # UTF-8, read byte by byte
        (r"T(?P<value>\d+)?", "T="),
    ],
)
def test_a_part_of_a_number_is_refused(pattern, answer):
    with pytest.raises(InstrumentError, match=r"^rack: position: the pattern (takes|finds no number)"):
        whole_number(re.search(pattern, answer), "value", "rack", "position")


def test_targets_that_the_decimals_of_a_profile_cannot_name_are_refused_before_anything_moves(tiny_campaign):
    """An axis in radians with two decimals: steps of 0.573 deg; a run stopped at its first point ("stands at 12.032 deg")."""
    words = tiny_campaign / "radians.toml"
    axis = '[axes.{}]\nname = "{}"\nunits_per_deg = 0.017453292519943295\ndecimals = 2\n'
    words.write_text(
        'kind = "line-axes"\nmove = "GO {axis} {value}"\ncompletion = "position"\nposition = "POS {axis}"\n'
        "position_pattern = '(?P<value>\\S+)'\nhold = \"HALT\"\n"
        + "".join(axis.format(name, name[0]) for name in ("azimuth", "roll", "probe")),
        encoding="utf-8",
    )
    chamber = tiny_campaign / "chamber.toml"
    chamber.write_text(
        chamber.read_text(encoding="utf-8").replace('profile = "gcode-axes"', 'profile = "radians"'), encoding="utf-8"
    )
    campaign, plan = services.make_plan(tiny_campaign)
    faults = coarse_faults(campaign, plan)
    assert len(faults) == 3 and faults[0].startswith("radians.toml: axes.azimuth: decimals = 2: ")
    worst = max(abs(round(x * 0.017453292519943295, 2) / 0.017453292519943295 - x) for x in range(-180, 181, 30))
    told = re.search(r"([0-9.]+) deg off, limit 0.02 deg", faults[0])
    assert told is not None and float(told[1]) == pytest.approx(worst, rel=0.01)
    with pytest.raises(InputError, match=r"axes.roll: decimals = 2"):
        services.acquire(campaign, plan, run_folder(tiny_campaign, "first"))
    assert not run_folder(tiny_campaign, "first").path.exists()
    words.write_text(words.read_text(encoding="utf-8").replace("decimals = 2", "decimals = 4"), encoding="utf-8")
    assert coarse_faults(campaign, plan) == []
