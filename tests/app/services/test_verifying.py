"""A device verified from few slices: what is refused, which slices come first, faults named, and a room that is another one."""

from __future__ import annotations

import json
from concurrent.futures import Future

import numpy as np
import pytest
from click.testing import CliRunner

from colure.analysis.verdict.verdicts import Verdict
from colure.app import services
from colure.app.cli import main
from colure.app.services import verifying
from colure.app.services.rehearsal import record_of_rehearsal
from colure.app.storage.folders import run_folder
from colure.errors import InputError
from colure.model.campaign import Campaign
from colure.model.chamber import EchoTable, SimulatedChamber
from colure.model.files import save_dataset
from colure.model.pattern import build_pattern
from colure.twin.devices import maker_of
from colure.twin.truth import far_field_on
from tests.docs.worlds import edited

LIMITS = 'name = "invented"\ndecision = "guard-band"\n\n[[limits]]\nfigure = "gain_dbi"\nat_least = 10.0\n'
#: Invented 4 x 4 array at 5.8 GHz.
ARRAY = {"kind": "panel", "rows": 4, "columns": 4, "pitch_mm": 25.8, "error": 0.02, "cross_error": 0.0}


@pytest.fixture(scope="module")
def world(tmp_path_factory):
    """A campaign for a 4 x 4 array at 5.8 GHz, far from the demo, and the far field of a sound one as a file."""
    here = tmp_path_factory.mktemp("verify")
    folder = here / "my-array"
    services.start_campaign(folder, kind="panel", band="5.7-5.9")
    edited(folder / "device.toml", r"rows = 8\ncolumns = 8", "rows = 4\ncolumns = 4")
    edited(folder / "device.toml", r"size_mm = \[[^\]]*\]", "size_mm = [103.2, 103.2, 5.0]")
    edited(folder / "goal.toml", r"wanted_level_db = [-0-9.]+", "wanted_level_db = -35\nregion_deg = 75")
    edited(folder / "goal.toml", r"points = 5", "points = 2")
    edited(folder / "chamber.toml", r"echo_level_db = [-0-9.]+", "echo_level_db = -50")
    (here / "limits.toml").write_text(LIMITS, encoding="utf-8")
    campaign = Campaign.load(folder)
    pitch = campaign.device.elements.pitch_mm
    made = maker_of(campaign, truth_with(pitch))(campaign.goal.frequency_hz)
    theta, phi = np.linspace(0.0, np.pi, 61), np.arange(120) * 2.0 * np.pi / 120
    field = np.stack([far_field_on(made, i, theta=theta, phi=phi) for i in range(made.frequency_hz.size)])
    save_dataset(
        build_pattern(field, frequency_hz=made.frequency_hz, theta=theta, phi=phi, quantity="realized_gain"),
        here / "golden.nc",
    )
    return here


def truth_with(pitch: float, **flaws: object) -> SimulatedChamber:
    return SimulatedChamber.model_validate({"device": {**ARRAY, "pitch_mm": pitch, **flaws}})


def asked_of(here, **changed):
    folder = here / "my-array"
    likely = {"spread": 0.02, "reference_error_db": -55.0}
    return verifying.asked_of(folder, changed.pop("limits", here / "limits.toml"), here / "golden.nc",
                              run=run_folder(folder, "verify"), likely=likely)  # fmt: skip


def measured(asked, seed, *, echoes=(), **flaws):
    """A rehearsed record whose device has flaws, in a drawn chamber (with more echoes than declared)."""
    from colure.twin.rehearsal import draw_chamber

    campaign = asked.campaign
    holding = truth_with(campaign.device.elements.pitch_mm, **flaws)
    drawn = draw_chamber(campaign.chamber, campaign.device, asked.plan, seed, holding=holding)
    drawn = drawn.model_copy(update={"echoes": (*drawn.echoes, *echoes)})
    record = record_of_rehearsal(campaign, asked.plan, seed=seed, truth=drawn)
    return record, drawn


@pytest.fixture(scope="module")
def asked(world):
    return asked_of(world)


def test_the_first_three_slices_stand_60_deg_apart_and_sets_grow(asked):
    sets = verifying.slice_sets(asked.plan)
    assert [one.slices for one in sets] == list(verifying.LOOKS)
    first = asked.plan.slice_index[: sets[0].last + 1]
    angles = np.unique(first[asked.plan.role[: sets[0].last + 1] == 0]) * asked.plan.step_deg
    np.testing.assert_allclose(angles, [0.0, 60.0, 120.0])
    assert "3 slices" in verifying.plan_words(asked)


def test_the_whole_plan_is_no_finer_than_the_device_asks_for(tmp_path):
    """27 slices are enough for a centred 5 cm panel at 24 GHz; a progressive plan's 30 readable ones made 81 of them."""
    services.new_campaign(tmp_path / "c")
    edited(tmp_path / "c" / "device.toml", r"offset_mm = \[[^\]]*\]", "offset_mm = [0.0, 0.0, 0.0]")
    edited(tmp_path / "c" / "goal.toml", r"wanted_level_db = [-0-9.]+", "wanted_level_db = -40\nregion_deg = 75")
    few = verifying._in_few_slices(Campaign.load(tmp_path / "c"))
    assert few.goal.progressive
    assert 180.0 / few.goal.step_deg == pytest.approx(27)


def test_a_dead_and_a_misfed_element_are_named_and_intervals_hold(asked):
    from colure.twin.devices import device_maker
    from colure.twin.truth import TruthSettings, truth_of

    last = verifying.slice_sets(asked.plan)[0].last
    record, drawn = measured(asked, 2, dead=[[1, 2]], misfed=[[3, 0]], misfeed_deg=75.0)
    told = verifying.told_by(asked, record.isel(point=np.arange(last + 1)))
    assert told is not None
    found, _ = told
    named = {(one.row, one.column): one for one in found.faults}
    assert set(named) == {(1, 2), (3, 0)}
    assert found.trusted, found.doubts
    assert (named[1, 2].kind, named[3, 0].kind) == ("dead", "misfed")
    assert named[3, 0].phase_deg == pytest.approx(75.0, abs=np.rad2deg(named[3, 0].expanded) + 3.0)
    device = device_maker(drawn, asked.campaign.device, band_hz=asked.plan.frequency_hz)(found.frequency_hz)
    truth = truth_of(device, TruthSettings(0.0, asked.campaign.evaluation(), 75.0, True))
    at = dict(zip(found.frequency_hz, truth, strict=True))
    held = [one.contains(at[one.frequency_hz][one.name].value) for one in found.figures if not one.reason]
    assert len(held) >= 20
    # One unit in one room: its figures go together, so that a tenth may lie outside at once.
    assert np.mean(held) >= 0.9


def test_a_wall_that_nobody_declared_is_doubted(asked):
    wall = EchoTable(normal=(0.8, 0.3, -0.5), distance_m=0.9, level_db=-6.0, phase_deg=40.0)
    last = verifying.slice_sets(asked.plan)[0].last
    record, _ = measured(asked, 3, echoes=(wall,))
    told = verifying.told_by(asked, record.isel(point=np.arange(last + 1)))
    assert told is not None
    assert told[0].doubts
    assert not verifying.enough(told)


@pytest.mark.nightly
def test_half_a_face_that_stands_off_is_doubted_by_its_elements_and_by_the_slice_that_was_left_out(asked):
    """Many small deviations at once are no unit with few faults. Misfits of all readings and of their mean did not notice."""
    half = [[row, column] for row in range(4) for column in (2, 3)]
    last = verifying.slice_sets(asked.plan)[0].last
    record, _ = measured(asked, 2, misfed=half, misfeed_deg=12.0)
    told = verifying.told_by(asked, record.isel(point=np.arange(last + 1)))
    assert told is not None
    words = "; ".join(told[0].doubts)
    assert "elements that count as good differ from the reference" in words
    assert "differs from what the others predict" in words
    assert not verifying.enough(told)


def test_a_run_ends_when_slices_decide_and_goes_on_when_they_do_not(asked):
    from colure.analysis.innovation.verified import Verified

    said, ended = [], []
    follower = verifying.Verifier(asked, asked.plan, said.append, "vector")
    follower.finish = ended.append
    one = verifying.slice_sets(asked.plan)[0]
    judged = verifying.verdicts.Judged(asked.specification, [Verdict("gain", "pass", "", 1.0, "dBi")], [])

    def told(*doubts):
        future = Future()
        future.set_result((Verified(3, [], (), doubts, np.ones(1)), judged))
        follower.judged(one, future)

    try:
        told("something is new that no element explains")
        assert not ended
        assert "something is new" in said[-1].text
        told()
        assert ended == [f"verified by 3 of {one.planned} slices: pass"]
    finally:
        follower.close()


def test_what_cannot_be_verified_is_refused_by_name(world, tmp_path):
    folder = world / "my-array"

    def refused(limits=LIMITS, **edits):
        import shutil

        there = tmp_path / f"copy{len(list(tmp_path.iterdir()))}"
        shutil.copytree(folder, there)
        for name, (pattern, put) in edits.items():
            edited(there / f"{name}.toml", pattern, put)
        file = there / "wanted.txt"
        file.write_text(limits, encoding="utf-8")
        file = file.rename(there.parent / f"{there.name}-limits.toml")
        with pytest.raises(InputError) as caught:
            verifying.asked_of(there, file, world / "golden.nc", run=run_folder(there, "verify"))
        return str(caught.value)

    assert "[elements]" in refused(device=(r"\[elements\].*", ""))
    assert "mask 'side lobes'" in refused(
        LIMITS + '\n[[masks]]\nname = "side lobes"\npoints = [[0, 1], [90, -10]]\nrelative = true\n'
    )
    assert "xpd_db" in refused(LIMITS.replace("gain_dbi", "xpd_db"))
    assert "guard-band" in refused(LIMITS.replace("guard-band", "simple"))
    assert "standing_wave_db" in refused(chamber=(r"range_length_m", "standing_wave_db = -30\nrange_length_m"))
    assert "unexplained" in refused(device=(r"pitch_mm = [0-9.]+", "pitch_mm = 30.0"))
    assert "GHz" in refused(goal=(r"stop_ghz = [0-9.]+", "stop_ghz = 6.1"))


def test_nothing_moves_before_the_cautions_are_acknowledged(world):
    told = CliRunner().invoke(
        main, ["verify", str(world / "my-array"), str(world / "limits.toml"), "--against", str(world / "golden.nc")]
    )
    assert told.exit_code == 2
    assert "--yes" in told.output
    assert not (world / "my-array" / "runs" / "verify" / "journal.sqlite").exists()


@pytest.mark.nightly
def test_a_unit_is_verified_on_the_simulated_chamber_and_asked_again_nothing_moves(world):
    folder = world / "my-array"
    words = [
        "verify",
        str(folder),
        str(world / "limits.toml"),
        "--against",
        str(world / "golden.nc"),
        "--run",
        "goods-in",
    ]
    told = CliRunner().invoke(main, [*words, "--yes", "--json", "--spread", "0.02", "--reference-error-db", "-50"])
    assert told.exit_code in (0, 1), told.output
    run = run_folder(folder, "goods-in")
    kept = (run.path / verifying.RESULT).read_text(encoding="utf-8")
    found = json.loads(kept)
    assert found["by"] in ("slices", "whole scan")
    assert (found["outcome"] == "pass") == (told.exit_code == 0)
    before = run.journal.stat().st_mtime_ns
    again = CliRunner().invoke(main, [*words, "--json", "--spread", "0.02", "--reference-error-db", "-50"])
    assert again.exit_code == told.exit_code
    assert run.journal.stat().st_mtime_ns == before
