"""A pole is one direction: columns that show different vectors there hold something else than e_theta and e_phi over theta and phi."""

from __future__ import annotations

import numpy as np
import pandas as pd
import pytest
from click.testing import CliRunner

from colure.app.cli import main
from colure.errors import InputError
from colure.model.exchange import COLUMNS, read_csv


def table(ahead=(1.0, 0.3j), behind=(0.1, 0.05)):
    """A smooth field from pole to pole: the vector `ahead` at theta = 0, `behind` at 180 deg, in columns of a CSV."""
    theta, phi = (
        a.ravel() for a in np.meshgrid(np.arange(0.0, 181.0, 15.0), np.arange(0.0, 360.0, 30.0), indexing="ij")
    )
    t, p = np.deg2rad(theta), np.deg2rad(phi)
    share = 0.5 * (1.0 + np.cos(t))
    x, y = (share * a + (1.0 - share) * b for a, b in zip(ahead, behind, strict=True))
    e_theta = np.cos(t) * (x * np.cos(p) + y * np.sin(p))
    e_phi = -x * np.sin(p) + y * np.cos(p)
    parts = [e_theta.real, e_theta.imag, e_phi.real, e_phi.imag]
    return pd.DataFrame(dict(zip(COLUMNS, [np.full(theta.size, 1e10), theta, phi, *parts], strict=True)))


def exchanged(one):
    out = one.copy()
    out[list(COLUMNS[3:])] = one[[*COLUMNS[5:], *COLUMNS[3:5]]].to_numpy()
    return out


def in_db(one):
    out = one.copy()
    for name in ("theta", "phi"):
        field = one[f"e_{name}_re"].to_numpy() + 1j * one[f"e_{name}_im"].to_numpy()
        level = 20.0 * np.log10(np.maximum(np.abs(field), 1e-6)) * np.exp(1j * np.angle(field))
        out[f"e_{name}_re"], out[f"e_{name}_im"] = level.real, level.imag
    return out


MISTAKES = {
    "exchanged": (exchanged, "exchanged"),
    "phi the other way": (lambda one: one.assign(phi_deg=(-one["phi_deg"]) % 360.0), "turns the other way"),
    "theta from the back": (lambda one: one.assign(theta_deg=180.0 - one["theta_deg"]), "from the other end"),
    "e_phi of the other sign": (lambda one: one.assign(e_phi_re=-one["e_phi_re"], e_phi_im=-one["e_phi_im"]), "other sign"),
    "phi in radians": (lambda one: one.assign(phi_deg=np.deg2rad(one["phi_deg"])), "degrees or radians"),
    "dB": (in_db, "not dB"),
}  # fmt: skip


@pytest.mark.parametrize("mistake", MISTAKES)
def test_a_pole_that_contradicts_itself_is_refused_with_the_mistake(tmp_path, mistake):
    """Directivities were wrong by 2 dB, and nothing was said: a horn of 18.9 dBi read 16.8."""
    spoil, named = MISTAKES[mistake]
    spoil(table()).to_csv(tmp_path / "a.csv", index=False)
    with pytest.raises(InputError, match="all columns of phi_deg see one vector there") as told:
        read_csv(tmp_path / "a.csv", far_field=True)
    assert named in str(told.value) and "--accept poles" in str(told.value)


@pytest.mark.parametrize("ahead", [(1.0, 0.0), (1.0, 1j), (1e-3, 1e-3)])
def test_a_right_field_is_read_whatever_it_is_at_the_pole(tmp_path, ahead):
    """Linear, circular, and a null with noise twice as strong."""
    one = table(ahead)
    random = np.random.default_rng(1)
    for name in COLUMNS[3:]:
        one[name] += 2e-3 * random.normal(size=len(one))
    one.to_csv(tmp_path / "a.csv", index=False)
    assert read_csv(tmp_path / "a.csv", far_field=True).attrs["caution"] == ""


def test_of_a_pole_that_is_given_once_the_ring_next_to_it_tells(tmp_path):
    one = table()
    one = one[(one["theta_deg"] % 180.0 > 0.0) | (one["phi_deg"] == 0.0)]
    one.to_csv(tmp_path / "a.csv", index=False)
    read_csv(tmp_path / "a.csv", far_field=True)
    exchanged(one).to_csv(tmp_path / "a.csv", index=False)
    with pytest.raises(InputError, match="theta_deg = 15.*turns over a turn of phi_deg"):
        read_csv(tmp_path / "a.csv", far_field=True)


def test_who_knows_better_says_so(tmp_path):
    path = tmp_path / "a.csv"
    exchanged(table()).to_csv(path, index=False)
    told = CliRunner().invoke(main, ["convert", str(path), str(tmp_path / "a.nc"), "--far-field"])
    assert told.exit_code == 2 and "poles" in told.output
    told = CliRunner().invoke(main, ["convert", str(path), str(tmp_path / "a.nc"), "--far-field", "--accept", "poles"])
    assert told.exit_code == 0, told.output
