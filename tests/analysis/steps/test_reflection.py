"""The device's own reflection measured in the run: corrupted, recovered, told from losses, refused where words are missing."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
import skrf
import xarray as xr
from click.testing import CliRunner

from colure.analysis.figures.evaluate import OF_REFLECTION, FigureSet
from colure.analysis.pipeline.recipe import process
from colure.analysis.steps.reflection import device_reflection, loss_db
from colure.analysis.uncertainty.budget import figures_with_budget
from colure.app import services
from colure.app.cli import main
from colure.app.services.rehearsal import rehearse
from colure.errors import InputError
from colure.instruments.profile import profile_path
from colure.model.campaign import Campaign
from colure.model.files import open_dataset
from colure.model.plan import ROLES, Role
from colure.model.signal_chain import OnePort
from tests.endtoend.test_near_to_far import edited

LEFT = OnePort(directivity_db=-36, match_db=-30, tracking_db=0.1)
ONE_PORT = "\n[one_port]\ndirectivity_db = -36\nmatch_db = -30\ntracking_db = 0.1\n"


def record_of(readings):
    """A record of reflections alone, (reading, frequency)."""
    roles = np.full(len(readings), ROLES.index(Role.REFLECTION))
    return xr.Dataset({"trace": (("point", "frequency", "port"), readings[:, :, None]), "role": (("point",), roles)})


@pytest.mark.parametrize(("vswr", "loss", "back"), [(1.5, 0.1773, 13.979), (2.0, 0.5115, 9.542), (3.0, 1.2494, 6.021)])
def test_losses_of_the_trade(vswr, loss, back):
    """Mismatch loss and return loss of VSWR 1.5, 2 and 3 (any handbook; the losses as in section 7 of the standards sheet)."""
    modulus = np.array([(vswr - 1) / (vswr + 1)])
    assert loss_db(modulus)[0] == pytest.approx(loss, abs=5e-5)
    figures = FigureSet(mismatch_loss_db=loss_db(modulus), reflection_measured=True)
    shown = next(one for one in figures.definitions if one.name == "return_loss_db")
    assert shown.display(float(np.sqrt(1.0 - 10.0 ** (-loss / 10.0)))) == pytest.approx(back, abs=2e-3)


@pytest.mark.parametrize("modulus", [0.0, 0.03, 0.3, 0.7])
def test_what_a_calibration_left_stays_inside_the_interval(modulus):
    """Corrupted by scikit-rf's own three-term model with residual terms as large as declared, recovered within the interval."""
    random, inside = np.random.default_rng(3), []
    f = skrf.Frequency(24, 24, 1, unit="GHz")
    for _ in range(120):
        true = modulus * np.exp(2j * np.pi * random.random())
        d, m, t = np.array([10**-1.8, 10**-1.5, 10**0.005 - 1.0]) * np.exp(2j * np.pi * random.random(3))
        box = skrf.Network(frequency=f, s=np.array([[[d, 1.0 + t], [1.0, m]]]), z0=50)
        read = (box ** skrf.Network(frequency=f, s=np.array([[[true]]]), z0=50)).s[:, 0, 0]
        found = device_reflection(record_of(np.repeat(read[None], 3, axis=0)), LEFT)
        inside.append(found.low[0] <= modulus <= found.high[0])
    assert np.mean(inside) >= 0.93


def test_readings_that_scatter_widen_the_interval():
    random = np.random.default_rng(4)
    noise = 0.02 * (random.normal(size=(150, 5, 1)) + 1j * random.normal(size=(150, 5, 1)))
    held = [device_reflection(record_of(0.3 + one), LEFT) for one in noise]
    assert np.mean([one.low[0] <= 0.3 <= one.high[0] for one in held]) >= 0.95
    assert np.median([one.high[0] - one.low[0] for one in held]) > 0.08


def test_one_reading_or_none():
    assert device_reflection(record_of(np.zeros((0, 1))), LEFT) is None
    with pytest.raises(ValueError, match=r"1 reading .* at least 2"):
        device_reflection(record_of(np.full((1, 1), 0.3 + 0j)), LEFT)
    with pytest.raises(ValueError, match="one_port: missing"):
        device_reflection(record_of(np.full((2, 1), 0.3 + 0j)), None)


def reflecting(folder, *, twin='kind = "patch"\nreflection_db = -9\nreflection_deg = 33\nefficiency_db = -0.8\n'):
    goal = folder / "goal.toml"
    goal.write_text("reflection = true\n" + goal.read_text())
    chamber = folder / "chamber.toml"
    chamber.write_text(chamber.read_text() + ONE_PORT)
    (folder / "twin.toml").write_text(f"{(folder / 'twin.toml').read_text()}\n[device]\n{twin}")
    return folder


def test_reflection_is_read_before_every_tie_without_a_move(small_campaign):
    _, without = services.make_plan(small_campaign)
    _, plan = services.make_plan(reflecting(small_campaign))
    codes = [ROLES[code] for code in plan.role]
    ties = [i for i, role in enumerate(codes) if role is Role.TIE]
    assert codes[ties[0] + 1] is Role.REFLECTION
    assert all(codes[i - 1] is Role.REFLECTION for i in ties[1:])
    here = [i for i, role in enumerate(codes) if role is Role.REFLECTION]
    assert len(here) == len(ties)
    assert np.array_equal(plan.targets_deg[here], plan.targets_deg[np.array(here) - 1])
    more = plan.predicted["duration_s"] - without.predicted["duration_s"]
    assert more == pytest.approx(len(here) * plan.predicted["sweep_s"], abs=1e-6)
    assert plan.predicted["points"]["reflection"] == len(here)
    assert "reflection" not in without.predicted["points"]


def test_realized_and_accepted_gain_are_told_apart(small_campaign):
    campaign, plan = services.make_plan(reflecting(small_campaign))
    found = {one.figure.name: one for one in rehearse(campaign, plan, seed=4).findings}
    names = (
        "gain_dbi",
        "gain_accepted_dbi",
        "efficiency_db",
        "radiation_efficiency_db",
        "mismatch_loss_db",
        "return_loss_db",
    )
    assert all(found[name].inside for name in names), {name: found[name] for name in names}
    value = {name: found[name].figure.value for name in names}
    assert value["gain_accepted_dbi"] - value["gain_dbi"] == pytest.approx(value["mismatch_loss_db"], abs=1e-9)
    assert value["radiation_efficiency_db"] - value["efficiency_db"] == pytest.approx(
        value["mismatch_loss_db"], abs=1e-9
    )
    assert found["return_loss_db"].truth == pytest.approx(9.0, abs=1e-9)
    rows = {row.term: row.expanded for row in found["gain_accepted_dbi"].figure.budget}
    assert rows["device reflection"] > 0.0
    assert {row.term: row.expanded for row in found["gain_dbi"].figure.budget}["device reflection"] == 0.0


def test_acquired_and_handed_over_as_touchstone(tiny_campaign, tmp_path):
    """A whole run through the sockets; scikit-rf reads both files back."""
    run = CliRunner().invoke
    folder = str(reflecting(tiny_campaign))
    assert run(main, ["acquire", folder, "--run", "first", "--yes"]).exit_code == 0
    for kind, name in (("touchstone", "a.s2p"), ("reflection", "a.s1p")):
        said = run(main, ["export", folder, kind, str(tmp_path / name)])
        assert said.exit_code == 0, said.output
    one, two = skrf.Network(str(tmp_path / "a.s1p")), skrf.Network(str(tmp_path / "a.s2p"))
    true = 10 ** (-9 / 20) * np.exp(1j * np.deg2rad(33.0))
    assert one.s[:, 0, 0] == pytest.approx(np.full(1, true), abs=1e-9)
    assert two.s[:, 0, 0] == pytest.approx(one.s[:, 0, 0], abs=1e-12)
    assert np.abs(two.s[:, 1, 0]) > 0.1
    taken = run(main, ["export", folder, "reflection", str(tmp_path / "a.s1p")])
    assert taken.exit_code == 2
    # Stopped before the second reading: what the reflection decides is undefined, the rest is there.
    campaign, record = Campaign.load(Path(folder)), open_dataset(Path(folder) / "runs/first/record.nc").load()
    extra = np.flatnonzero(record["role"].values == ROLES.index(Role.REFLECTION))[1:]
    part = process(record.drop_isel(point=extra), campaign.chamber, campaign.device)
    by_name = {one.name: one for one in figures_with_budget(part.budget)}
    assert all("read once" in by_name[name].reason for name in OF_REFLECTION)
    assert not by_name["gain_dbi"].reason and np.isfinite(by_name["gain_dbi"].upper)


def test_what_cannot_be_measured_is_refused_before_anything_moves(small_campaign):
    folder = reflecting(small_campaign)
    device = folder / "device.toml"
    device.write_text('reflection = "known.s1p"\n' + device.read_text())
    with pytest.raises(InputError, match=r"device.toml: reflection = 'known.s1p': must be left out"):
        services.make_plan(folder)
    device.write_text(device.read_text().replace('reflection = "known.s1p"\n', ""))
    words = (
        profile_path("scpi-analyzer", None).read_text().replace('reflection = "CALC11:DATA? SDATA"', 'reflection = ""')
    )
    (folder / "mine.toml").write_text(words)
    edited(folder, "chamber.toml", ('profile = "scpi-analyzer"', 'profile = "mine"'))
    with pytest.raises(InputError, match=r"mine.toml: reflection: missing"):
        services.make_plan(folder)
    edited(folder, "chamber.toml", ('profile = "mine"', 'profile = "scpi-power"'))
    with pytest.raises(InputError, match=r"a power-only receiver reads no reflection"):
        services.make_plan(folder)
    edited(folder, "chamber.toml", ('profile = "scpi-power"', 'profile = "scpi-analyzer"'))
    edited(folder, "chamber.toml", (ONE_PORT, ""))
    with pytest.raises(InputError, match=r"\[one_port\]: missing"):
        services.make_plan(folder)
