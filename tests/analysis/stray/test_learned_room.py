"""Learned rooms: corrupt (walls of the simulated chamber), correct, recover; a moved wall is named and nothing is touched."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from colure.analysis.findings.room_heard import REMEDIES, room_findings
from colure.analysis.stray import learning
from colure.analysis.stray.known_room import Doubt, RoomHeard
from colure.analysis.stray.known_room import _doubt as doubt_of
from colure.analysis.stray.known_room import _judged as judged_of
from colure.analysis.stray.learning import Images, learn
from colure.errors import InputError
from colure.geometry.conventions import power_db
from colure.model.chamber import EchoTable
from colure.model.files import open_dataset, save_dataset
from colure.model.learned_room import LearnedRoom
from tests.coverage.one_room import UNLIKE, OneRoom, echo_left, moved_wall
from tests.coverage.scenarios import AZIMUTH_OVER_ELEVATION

WALL = EchoTable(normal=(1.0, 0.15, -0.1), distance_m=0.8, level_db=-20.0, phase_deg=30.0)


@pytest.fixture(scope="module")
def world(tmp_path_factory):
    """A room of one wall, and what a circular panel and a dipole tell of it."""
    room = OneRoom(tmp_path_factory.mktemp("room"), 3, level_db=-38.0, walls=(WALL,), points=2)
    return room, room.learned(["circular", "dipole"])


def test_two_devices_show_where_the_wall_is(world):
    """The image of the probe in the plane of the wall (geometrical optics); 5 mm are 1/40 of the band's resolution."""
    _, learned = world
    assert len(learned.places_m) == 1
    normal = np.asarray(WALL.normal) / np.linalg.norm(WALL.normal)
    probe = np.array([0.0, 0.0, 1.2])
    image = probe + 2.0 * (WALL.distance_m - normal @ probe) * normal
    place = learned.places_m[0]
    cosine = place @ image / np.linalg.norm(place) / np.linalg.norm(image)
    assert np.rad2deg(np.arccos(cosine)) < 1.5
    assert power_db(np.abs(learned.weights[0, 0]) ** 2) == pytest.approx(WALL.level_db, abs=1.0)


def test_the_next_device_loses_its_echo(world):
    """A panel of 2 x 6 elements that was not among the devices: its error by echoes against the same run without a wall."""
    room, learned = world
    found = echo_left(room.measured("2 x 6", 50), learned)
    print(found.before_db, found.after_db, found.done.heard)
    assert found.done.heard is not None and found.done.heard.holds is True
    assert found.gain_db > 15.0
    assert found.done.budget.chamber.echo_level_db < -38.0  # the row says less than was declared
    assert found.done.budget.horn_louder > 1.0  # but not for the reference horn, of whose back nothing is known
    (told,) = room_findings(found.done.heard, -38.0)
    assert told.severity == "information" and "as it was" in told.text


@pytest.mark.parametrize("by_m", [0.003, -0.05])
def test_a_moved_wall_is_named_and_nothing_is_touched(world, by_m):
    room, learned = world
    run = room.measured("2 x 6", 51).in_a(moved_wall(room.walls, 0, by_m))
    done, plain = run.processed(learned), run.processed()
    assert done.heard is not None and done.heard.holds is False
    assert np.array_equal(done.expansion.coefficients, plain.expansion.coefficients)
    assert done.budget.chamber.echo_level_db == run.campaign.chamber.echo_level_db
    (told,) = room_findings(done.heard, -38.0)
    assert told.severity == "look" and "has changed" in told.text


def test_a_room_without_its_walls_is_not_corrected(world):
    """What is not there is not removed: the learned echoes explain nothing."""
    room, learned = world
    run = room.measured("2 x 6", 52).in_a(())
    done, plain = run.processed(learned), run.processed()
    assert done.heard is not None and not done.heard.holds
    assert (done.heard.doubt is None) == (done.heard.holds is False)
    assert np.array_equal(done.expansion.coefficients, plain.expansion.coefficients)


def heard_as(holds, *, echo_db, left_db):
    return RoomHeard(holds=holds, explained=0.5, off=0.1, off_expanded=0.2, factors=np.ones(1, complex), echo_db=echo_db, left_db=left_db)  # fmt: skip


@pytest.mark.parametrize(
    ("holds", "echo_db", "left_db", "declared_db", "level_db"),
    [
        (True, -40.0, -55.0, -42.0, -55.0),
        (
            True,
            -34.0,
            -44.0,
            -49.0,
            -44.0,
        ),  # what remains is more than was declared: the declaration was of another device
        (None, -34.0, -44.0, -49.0, -34.0),
        (False, -34.0, -44.0, -49.0, -34.0),
        (None, -55.0, -60.0, -49.0, -49.0),
        (False, 3.0, 2.0, -49.0, 0.0),
    ],
)
def test_the_row_of_echoes_holds_what_the_room_shows(holds, echo_db, left_db, declared_db, level_db):
    """A dipole throws 14 dB more at the walls, beside its peak, than a panel of 16 dBi: a level declared for the panel is no limit."""
    heard = heard_as(holds, echo_db=echo_db, left_db=left_db)
    assert heard.level_db(declared_db) == level_db
    (told,) = room_findings(heard, declared_db)
    assert ("MORE than the" in told.text) == (not holds and echo_db > declared_db)


@pytest.mark.parametrize(
    ("by_run", "by_room", "gain", "strange", "doubt"),
    [
        (0.01, 0.01, 100.0, 0.1, None),
        (0.2, 0.01, 100.0, 0.1, Doubt.DEVICE),
        (0.01, 0.2, 100.0, 0.1, Doubt.LEARNED),
        (0.01, 0.01, 10.0, 0.1, Doubt.NOISE),
        (0.01, 0.01, 100.0, 0.8, Doubt.STRANGE),
    ],
)
def test_a_run_that_cannot_tell_says_why(by_run, by_room, gain, strange, doubt):
    assert doubt_of(by_run, by_room, gain, strange) is doubt
    if doubt is not None:
        (told,) = room_findings(replace(heard_as(None, echo_db=-50.0, left_db=-55.0), doubt=doubt), -45.0)
        assert doubt.value in told.text and REMEDIES[doubt] in told.text


@pytest.mark.parametrize(
    ("share", "spread", "judged"),
    [
        ([0.5, 0.3, 0.2], [0.01, 0.04, 0.04], [0.5, 0.3, 0.2]),
        ([0.5, 0.3, 0.2], [0.01, 0.04, 9.0], [0.625, 0.375, 0.0]),
        ([0.4, 0.3, 0.3], [0.01, 0.04, 9.0], [0.4, 0.3, 0.3]),
    ],
)
def test_what_a_run_leaves_open_is_not_judged_where_it_is_weak(share, spread, judged):
    """Twice the echo of a quarter of the power is at most the power that was there: a wall that was moved unseen never makes it worse."""
    assert judged_of(np.array(share), np.array(spread)) == pytest.approx(judged)


def test_a_wall_that_one_device_hears_is_kept_and_goes_from_one_that_leaves_it_open(tmp_path, nightly):
    """The wall behind the device, heard by the panel of 2 x 6 alone. Without it the errors by echoes were 10.3 and 11.5 dB less."""
    devices = {
        name: replace(one, chamber={**one.chamber, "positioner": AZIMUTH_OVER_ELEVATION})
        for name, one in UNLIKE.items()
    }
    room = OneRoom(tmp_path, 332, level_db=-46.3, devices=devices)
    learned = room.learned(["circular", "patch", "4 x 4", "horn", "2 x 6"])
    assert len(learned.places_m) == len(room.walls)
    for number, name in enumerate(("steered", "dipole")):
        found = echo_left(room.measured(name, 50 + number), learned)
        heard = found.done.heard
        assert heard.holds is True and found.gain_db > 15.0
        assert len(heard.unjudged) == 1
        (told,) = room_findings(heard, -46.3)
        assert "(1 of 5 learned echoes) was removed too" in told.text


def test_two_images_in_one_place_are_one(tmp_path, monkeypatch, nightly):
    """Their sum is known, not the two: kept apart they made every later run unable to tell."""
    found = learning.searched

    def doubled(runs):
        images = found(runs)
        half = Images(images.places, 0.5 * images.weights)
        return learning.joined(half, Images(images.places * (1.0 + 1e-6), 0.5 * images.weights))

    monkeypatch.setattr(learning, "searched", doubled)
    room = OneRoom(tmp_path, 3, level_db=-38.0, walls=(WALL,), points=2)
    learned = room.learned(["circular", "dipole"])
    assert len(learned.places_m) == 1
    assert power_db(np.abs(learned.weights[0, 0]) ** 2) == pytest.approx(WALL.level_db, abs=1.0)
    assert room.measured("2 x 6", 50).processed(learned).heard.holds is True


def test_a_quiet_room_teaches_nothing(tmp_path, nightly):
    room = OneRoom(tmp_path, 4, level_db=-38.0, walls=(), points=2)
    with pytest.raises(ValueError, match="nothing to learn"):
        room.learned(["patch", "dipole"])
    with pytest.raises(ValueError, match="at least 2"):
        learn([], [])


def test_a_room_is_kept_whole_and_serves_its_own_range_only(world, tmp_path):
    _, learned = world
    save_dataset(learned.to_dataset(), tmp_path / "room.nc")
    again = LearnedRoom.from_dataset(open_dataset(tmp_path / "room.nc"), "room.nc")
    assert again == learned
    other = learned.identity.__class__("azimuth-over-elevation", 1.3, "2 ports")
    with pytest.raises(InputError) as error:
        learned.require_fits(other, np.array([24.1e9]))
    text = str(error.value)
    assert "geometry" in text and "range_length_m = 1.2" in text and "probe" in text
    with pytest.raises(InputError, match="GHz"):
        learned.require_fits(learned.identity, np.array([26.0e9]))


def test_the_step_is_refused_where_it_cannot_be(world):
    room, learned = world
    run = room.measured("2 x 6", 53)
    with pytest.raises(InputError, match="room"):
        run.processed_with(None, "room")
    with pytest.raises(InputError, match="gate"):
        run.processed_with(learned, "gate", "room")


def test_a_recipe_without_the_step_leaves_the_run_alone(world):
    room, learned = world
    run = room.measured("dipole", 54)
    assert run.processed_with(learned).heard is None
