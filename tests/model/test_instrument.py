"""Instruments by role: what fits together, what is refused and in which words, and old files that mean the same."""

from __future__ import annotations

import tomllib

import pytest

from colure.acquire.circumstances import changes, circumstances
from colure.errors import InputError
from colure.model.campaign import Campaign
from colure.model.chamber import Chamber
from colure.model.loading import validate
from tests.ranges import TWO, range_campaign

RECEIVER, AXES = {"role": "receiver"}, {"role": "axis-controller"}
FLOOR = {**AXES, "name": "floor", "axes": ["azimuth", "roll"]}
MAST = {**AXES, "name": "mast", "axes": ["probe"]}


@pytest.fixture(scope="module")
def tables(tmp_path_factory):
    folder = range_campaign(tmp_path_factory.mktemp("range") / "c", "")
    return tomllib.loads((folder / "chamber.toml").read_text(encoding="utf-8"))


def chamber(tables, *instruments, **more):
    return validate(Chamber, {**tables, **more, "instruments": list(instruments)}, source="chamber.toml")


@pytest.mark.parametrize(
    ("instruments", "words"),
    [
        ((RECEIVER, {**RECEIVER, "name": "b"}, AXES), "role 'receiver' is given 2 times: must be once at most"),
        ((RECEIVER,), "no instrument has role 'axis-controller': must be at least one"),
        ((AXES,), "no instrument has role 'receiver'"),
        ((RECEIVER, FLOOR, {**MAST, "axes": ["roll", "probe"]}), "axes: 'roll' is named 2 times"),
        ((RECEIVER, FLOOR), "axis 'probe' has no controller"),
        ((RECEIVER, FLOOR, {**AXES, "name": "mast"}), "'mast' names no axes"),
        ((RECEIVER, {**AXES, "axes": ["azimuth", "roll", "probe", "elevation"]}), "axes = 'elevation': no such motor axis"),
        ((RECEIVER, FLOOR, {**MAST, "name": "floor"}), "name 'floor' is given twice"),
        ((RECEIVER, AXES, {"role": "engine"}), "instruments.2.role = 'engine': must be one of 'receiver', 'source'"),
        ((RECEIVER, AXES, {"role": "sensor", "axes": ["roll"]}), "axes belongs to role axis-controller, not to 'sensor'"),
        ((RECEIVER, AXES, {"role": "interlock", "timeout_s": 5}), "timeout_s = 5: must be at most 2 s for an interlock"),
        ((RECEIVER, AXES, {"role": "interlock", "every_s": 5}), "every_s = 5: must be at most 1 s for an interlock"),
        ((RECEIVER, AXES, {"role": "sensor", "every_s": 0}), "instruments.2.every_s = 0: must be a number from 0.01 to 3600 s"),
        ((RECEIVER, AXES, {"role": "sensor", "name": "axes"}), "name 'axes' belongs to role 'axis-controller'"),
        ((RECEIVER, {**FLOOR, "resource": "h:1"}, {**MAST, "resource": "h:1"}), "resource 'h:1' is given to two instruments"),
    ],
)  # fmt: skip
def test_what_does_not_fit_is_refused_by_name(tables, instruments, words):
    with pytest.raises(InputError) as caught:
        chamber(tables, *instruments)
    assert words in str(caught.value)


def test_a_connection_said_twice_is_refused_unless_both_agree(tables):
    with pytest.raises(InputError, match=r"\[axes\] resource = 'a:1': instruments say 'twin'"):
        chamber(tables, RECEIVER, AXES, axes={"resource": "a:1"})
    made = chamber(tables, {**RECEIVER, "resource": "b:5025"}, FLOOR, {**MAST, "reports_door": True})
    assert (made.analyzer.resource, made.analyzer.profile, made.axes.interlock) == ("b:5025", "scpi-analyzer", True)
    assert validate(Chamber, made.model_dump(), source="again") == made


def test_an_old_file_means_the_same_as_the_roles_that_it_is_shown_as(campaign_folder):
    old = Campaign.load(campaign_folder).chamber
    content = old.model_dump(mode="json", exclude={"axes": True, "instruments": True})
    for name in ("resource", "profile", "timeout_s"):
        content["analyzer"].pop(name)
    content["instruments"] = [one.model_dump(mode="json") for one in old.outfit]
    new = validate(Chamber, content, source="chamber.toml")
    assert new.outfit == old.outfit and new.analyzer == old.analyzer and new.axes == old.axes
    assert changes(circumstances(old, campaign_folder), circumstances(new, campaign_folder)) == []


def test_addresses_may_change_between_sessions_and_words_and_roles_may_not(tmp_path):
    folder = range_campaign(tmp_path / "c", TWO + '[[instruments]]\nrole = "interlock"\nname = "door"\n')
    begun = circumstances(Campaign.load(folder).chamber, folder)

    def after(old, new):
        text = (folder / "chamber.toml").read_text(encoding="utf-8")
        assert old in text
        (folder / "chamber.toml").write_text(text.replace(old, new), encoding="utf-8")
        found = changes(begun, circumstances(Campaign.load(folder).chamber, folder))
        (folder / "chamber.toml").write_text(text, encoding="utf-8")
        return "; ".join(found)

    assert after('name = "mast"\n', 'name = "mast"\nresource = "192.0.2.7:5000"\n') == ""
    assert "roles.door = 'emergency-stop': must be 'door'" in after(
        'name = "door"', 'name = "door"\nstands_for = "emergency-stop"'
    )
    assert "mast profile gcode-queued" in after('name = "mast"\n', 'name = "mast"\nprofile = "gcode-queued"\n')
    assert "instruments: door is missing" in after('[[instruments]]\nrole = "interlock"\nname = "door"\n', "")
