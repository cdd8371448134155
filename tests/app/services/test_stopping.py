"""A scan that ends by itself: which slices make a pattern, what is enough, what is refused, and one run over sockets."""

from __future__ import annotations

import itertools
import json
from dataclasses import replace

import numpy as np
import pytest
from click.testing import CliRunner

from colure.acquire.outcome import Options
from colure.app import services
from colure.app.cli import main
from colure.app.services.rehearsal import record_of_rehearsal
from colure.app.services.stopping import FiguresSoFar, even_sets, first_enough, parsed, with_until
from colure.app.storage.folders import run_folder
from colure.errors import InputError
from colure.model.campaign import Campaign
from colure.model.events import Event
from colure.model.goal import Want
from colure.model.plan import ROLES, Role
from tests.coverage.scenarios import AZIMUTH_OVER_ELEVATION, SCENARIOS, Scenario, band, four_by_four, sized

PATCH = "2.4 GHz patch, 1 m"


def test_what_is_wanted_is_read_or_named():
    assert parsed("gain_dbi=0.3, beamwidth_e_deg = 0.5").wishes == {"gain_dbi": 0.3, "beamwidth_e_deg": 0.5}
    for text, named in (
        ("gain_dbi", "FIGURE=UNCERTAINTY"),
        ("", "names no figure"),
        ("gain=0.3", "gain"),
        ("gain_dbi=-1", "gain_dbi"),
    ):
        with pytest.raises(InputError, match=named):
            parsed(text)


@pytest.mark.parametrize("name", [PATCH, "4 x 4 panel", "38 GHz horn"])
def test_even_sets_are_even_and_complete(name, tmp_path):
    """The rolls of what is measured by then hold that many equal steps of 180 deg, at every theta and both polarizations."""
    scenario = SCENARIOS[name]
    _, plan = services.make_plan(
        replace(scenario, goal={**scenario.goal, "order": "progressive"}).write(tmp_path / "c")
    )
    scan = plan.role == ROLES.index(Role.SCAN)
    roll, azimuth = (plan.targets_deg[:, plan.axes.index(axis)] for axis in ("roll", "azimuth"))
    thetas = np.unique(np.round(azimuth[scan], 3)).size
    found = even_sets(plan)
    assert found and all(one.last < two.last for one, two in itertools.pairwise(found))
    for one in found:
        upto = scan & (np.arange(len(plan)) <= one.last)
        rolls, counts = np.unique(np.round(roll[upto] % 180.0, 3), return_counts=True)
        complete = rolls[counts == 2 * thetas]
        wanted = np.arange(one.slices) * 180.0 / one.slices
        apart = np.abs((complete[None, :] - complete[0] - wanted[:, None] + 90.0) % 180.0 - 90.0)
        assert np.all(apart.min(axis=1) < 0.01)
        assert one.last < len(plan) - 2 * thetas


def test_enough_is_every_figure_that_was_wished_and_no_jump():
    want = Want(gain_dbi=0.3, beamwidth_e_deg=0.5)
    known = FiguresSoFar({"gain_dbi": 0.2, "beamwidth_e_deg": 0.4}, {"gain_dbi": (10.0,), "beamwidth_e_deg": (30.0,)})
    before = FiguresSoFar({"gain_dbi": 0.4, "beamwidth_e_deg": 1.0}, {"gain_dbi": (10.3,), "beamwidth_e_deg": (30.9,)})
    assert known.enough(want, None) and known.enough(want, before)
    assert not known.enough(Want(gain_dbi=0.1), None)
    assert not known.enough(Want(gain_dbi=0.3, xpd_db=1.0), None)
    assert not replace(known, doubts=("gain above 100 % efficiency",)).enough(want, None)
    # Fewer slices said 30.9 +- 0.1: what more of them say must not lie outside of both intervals.
    sure = replace(before, half_widths={"gain_dbi": 0.4, "beamwidth_e_deg": 0.1})
    assert not known.enough(want, sure)


def test_what_cannot_end_early_is_refused_before_anything_moves(tmp_path):
    want = Want(gain_dbi=0.3)
    tilted = Scenario(device=four_by_four(), goal=band(24.1), chamber={"positioner": AZIMUTH_OVER_ELEVATION})
    with pytest.raises(InputError, match="roll-over-azimuth"):
        with_until(Campaign.load(tilted.write(tmp_path / "a")), until=want)
    plain = SCENARIOS[PATCH].write(tmp_path / "b")
    run = run_folder(plain, "first")
    run.path.mkdir(parents=True)
    run.journal.touch()
    with pytest.raises(InputError, match="begin another run"):
        with_until(Campaign.load(plain), run, want)


def test_a_figure_that_the_scan_does_not_give_cannot_end_it(tmp_path):
    """Half a sphere gives no directivity, a run without a reference no gain; and what is too much to ask is said beforehand."""
    half = Scenario(device=sized(21.0, 27.0, 5.0, 18.0, offset_mm=[0.0, 0.0, 150.0]), goal=band(38.0, region_deg=90))
    folder = half.write(tmp_path / "half")
    with pytest.raises(InputError, match=r"until: directivity_dbi = 0\.5: needs the whole sphere, region_deg = 90"):
        services.make_plan(folder, until=Want(directivity_dbi=0.5, beamwidth_e_deg=1.0))
    _, plan = services.make_plan(folder, until=Want(beamwidth_e_deg=0.001))
    assert "even that is expected to give only beamwidth_e_deg" in plan.predicted["until"]
    alone = replace(SCENARIOS[PATCH], chamber={**SCENARIOS[PATCH].chamber, "reference": {"method": "none"}})
    with pytest.raises(InputError, match=r"until.gain_dbi: needs a reference"):
        services.make_plan(alone.write(tmp_path / "alone"), until=Want(gain_dbi=0.3))


def test_a_run_ends_when_it_knows_and_goes_on_when_more_is_wanted(tmp_path):
    """A patch at 2.4 GHz: four of eight slices tell its gain; asked for more, the same run measures on."""
    folder = SCENARIOS[PATCH].write(tmp_path / "c")
    run = run_folder(folder, "quick")
    campaign, plan = services.make_plan(folder, run, until=parsed("gain_dbi=0.5"))
    (half,) = even_sets(plan)
    assert "4 of 8 slices" in plan.predicted["until"] and "gain_dbi ±0.5" in plan.predicted["until"]
    events: list[Event] = []
    outcome = services.acquire(campaign, plan, run, listener=events.append, options=Options(threads=False))
    assert outcome.state.value == "done" and outcome.reason.startswith("known after 4 of 8 slices: gain_dbi")
    # Simulated time stands still while the figures are read: not one point more.
    assert outcome.measured == half.last + 1 < len(plan) and [one.kind for one in events].count("known") == 1
    gain = next(one for one in services.read_figures(Campaign.load(folder), run) if one.name == "gain_dbi")
    assert max(gain.upper - gain.value, gain.value - gain.lower) <= 0.5
    # 0.01 dB is more than the horn's own gain is known to: every point is measured.
    command = ["acquire", str(folder), "--run", "quick", "--yes", "--json", "--until", "gain_dbi=0.01"]
    more = CliRunner().invoke(main, command, catch_exceptions=False)
    assert more.exit_code == 0, more.output
    told = json.loads(more.stdout)
    assert told["state"] == "done" and told["reason"] == "plan completed" and told["measured"] == told["total"]


@pytest.mark.nightly
def test_what_is_known_early_is_known_rightly(tmp_path):
    """A short dipole across the beam: half of the slices give 1.76 dBi (Balanis, Antenna Theory, 4.2) within what was wanted."""
    scenario = Scenario(device=sized(6.0, 1.0, 1.0, 2.1), goal={**band(24.1), "until": {"directivity_dbi": 0.3}})
    campaign, plan = services.make_plan(scenario.write(tmp_path / "c"))
    found = first_enough(campaign, plan, record_of_rehearsal(campaign, plan, seed=3))
    assert found is not None
    known = found[1]
    assert known.half_widths["directivity_dbi"] <= 0.3
