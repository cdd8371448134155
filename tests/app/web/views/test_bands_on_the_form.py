"""Several bands on the page's form: shown, changed and written as goal.toml has them."""

from __future__ import annotations

import pytest

from colure.app.services.starting import start_campaign
from colure.app.web.bodies import Form
from colure.app.web.views import plan as page
from colure.errors import InputError
from colure.model.campaign import Campaign
from tests.endtoend.test_near_to_far import edited

TWO = [
    {"start_ghz": 5.7, "stop_ghz": 5.9, "points": 3, "step_mhz": None},
    {"start_ghz": 24.0, "stop_ghz": 24.0, "points": 1, "if_bandwidth_hz": 300.0, "power_dbm": -3.0},
]


@pytest.fixture
def patch(tmp_path):
    start_campaign(tmp_path / "c", kind="patch", band="5.8")
    return tmp_path / "c"


def test_one_stretch_becomes_two_bands_and_is_written_with_its_comments(patch):
    assert page.form_of(patch)["bands"]["rows"] == []
    sent = Form.model_validate({"campaign": "c", "edits": {"goal.band": TWO}}).edits
    page.save(patch, sent, "first")
    edited(patch, "goal.toml", ("[[band]]\nstart_ghz = 24.0", "# ours\n[[band]]\nstart_ghz = 24.0"))
    rows = page.form_of(patch)["bands"]["rows"]
    assert [sorted(row) for row in rows] == [
        ["points", "start_ghz", "stop_ghz"],
        ["if_bandwidth_hz", "points", "power_dbm", "start_ghz", "stop_ghz"],
    ]
    rows[1]["power_dbm"] = -6.0
    page.save(patch, {"goal.band": rows}, "second")
    goal = Campaign.load(patch).goal
    # By hand: 5.7, 5.8, 5.9 and 24 GHz.
    assert goal.frequency_hz == pytest.approx([5.7e9, 5.8e9, 5.9e9, 24e9])
    assert [one.power_dbm for one in goal.band] == [None, -6.0] and goal.band[1].if_bandwidth_hz == 300.0
    assert "# ours" in (patch / "goal.toml").read_text("utf-8")
    # A row that goes leaves the other.
    page.save(patch, {"goal.band": rows[:1]}, "third")
    assert Campaign.load(patch).goal.frequency_hz.size == 3


def test_a_band_that_cannot_be_is_refused_by_its_number(patch):
    with pytest.raises(InputError, match=r"band\.0.*stop_ghz = 5: must be at least start_ghz = 6 GHz"):
        page.save(patch, {"goal.band": [{"start_ghz": 6.0, "stop_ghz": 5.0, "points": 3}]}, "first")
    overlapping = [{"start_ghz": 5.0, "stop_ghz": 6.0, "points": 2}, {"start_ghz": 5.5, "stop_ghz": 7.0, "points": 2}]
    with pytest.raises(InputError, match="band 2 starts at 5.5 GHz: must be above 6 GHz"):
        page.edited(patch, {"goal.band": overlapping})
    assert "[[band]]" not in (patch / "goal.toml").read_text("utf-8")


def test_a_list_of_frequencies_is_shown_and_named(patch):
    lines = "".join(f"{5.7 + 0.01 * k:.2f},{100 if k < 4 else 1000}\n" for k in range(9))
    (patch / "ours.csv").write_text("frequency_ghz,if_bandwidth_hz\n" + lines, "utf-8")
    goal = patch / "goal.toml"
    kept = [line for line in goal.read_text("utf-8").splitlines() if not line.startswith(("start_", "stop_", "points"))]
    goal.write_text("\n".join([*kept, 'frequency_list = "ours.csv"']) + "\n", "utf-8")
    bands = page.form_of(patch)["bands"]
    assert bands["listed"] == "ours.csv"
    assert bands["rows"] == [
        {"start_ghz": 5.7, "stop_ghz": 5.73, "points": 4, "if_bandwidth_hz": 100.0},
        {"start_ghz": 5.74, "stop_ghz": 5.78, "points": 5, "if_bandwidth_hz": 1000.0},
    ]
