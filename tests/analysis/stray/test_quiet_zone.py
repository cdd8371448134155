"""Quiet-zone figures against closed forms, and against a simulated chamber with one wall whose echo is known."""

from __future__ import annotations

import csv
import json

import numpy as np
import pytest
from click.testing import CliRunner

from colure.analysis.stray.quiet_zone import probed, reflectivity_db, spread_of
from colure.app.cli import main
from colure.geometry.rotations import RigidMotion
from colure.model.campaign import Campaign
from colure.model.chamber import EchoTable, SimulatedChamber
from colure.model.field_probing import ProbedLine
from colure.twin.chamber import SimulatedRange
from tests.conftest import cluster_of
from tests.coverage.scenarios import ONE, Scenario, sized

F = 24.1e9
WAVE = 299_792_458.0 / F


def readings(level_db, angle_deg, *, seed=0, noise_db=0.0, length=0.3, steps=5):
    """A tapered direct wave across the range and one echo at an angle to the line: (positions, complex amplitudes)."""
    random, x = np.random.default_rng(seed), np.arange(-length / 2, length / 2, WAVE / steps)
    echo = 10 ** (level_db / 20) * np.exp(
        -2j * np.pi / WAVE * np.cos(np.deg2rad(angle_deg)) * x + 2j * np.pi * random.random()
    )
    noise = noise_db / 8.686 * (random.normal(size=x.size) + 1j * random.normal(size=x.size))
    return x, (1 + 0.3 * x - 2 * x**2) * (1 + echo) * (1 + noise)


def test_reflectivity_of_a_ripple():
    """Standards sheet, error levels: 1 dB peak to peak is -24.81 dB, 0.5 is -30.82, 0.1 is -44.80."""
    assert [reflectivity_db(r) for r in (1.0, 0.5, 0.1)] == pytest.approx([-24.81, -30.82, -44.80], abs=5e-3)


@pytest.mark.parametrize(("level", "angle"), [(-25.0, 40.0), (-40.0, 70.0), (-33.0, 125.0)])
def test_one_echo_is_found_with_level_and_direction(level, angle):
    x, amplitude = readings(level, angle)
    found = probed(ProbedLine(name="rail", frequency_hz=F, position_m=x, reading=amplitude, phase=True))
    assert found.reflectivity_db == pytest.approx(level, abs=1.0) and found.rms_db == pytest.approx(level, abs=0.4)
    assert found.waves[0].angle_deg[0] == pytest.approx(angle, abs=2.0)
    assert found.waves[0].level_db == pytest.approx(level, abs=0.6)
    assert found.taper_db == pytest.approx(8.686 * (0.09 + 2 * 0.15**2) / 1, abs=0.45)
    # Power alone leaves two directions open, mirrored about the direct wave.
    dark = probed(
        ProbedLine(name="rail", frequency_hz=F, position_m=x, reading=np.abs(amplitude).astype(complex), phase=False)
    )
    assert (
        any(a == pytest.approx(angle, abs=2.0) for a in dark.waves[0].angle_deg) and len(dark.waves[0].angle_deg) == 2
    )


def test_intervals_hold_and_noise_alone_has_no_lower_end():
    inside, open_ended = [], 0
    for seed in range(40):
        level = (-22.0, -32.0, -42.0, -80.0)[seed % 4]
        x, amplitude = readings(level, 25.0 + seed, seed=seed, noise_db=0.04)
        found = probed(
            ProbedLine(
                name="rail",
                frequency_hz=F,
                position_m=x,
                reading=np.abs(amplitude).astype(complex),
                phase=False,
                noise_db=0.04,
            )
        )
        inside.append(found.lower_db <= level <= found.upper_db)
        open_ended += level == -80.0 and np.isinf(found.lower_db)
    assert np.mean(inside) >= 0.85 and open_ended >= 8


def test_what_a_line_cannot_show_is_said():
    x, amplitude = readings(-30.0, 60.0, length=0.3, steps=1)
    assert (
        "apart"
        in probed(ProbedLine(name="rail", frequency_hz=F, position_m=x, reading=amplitude, phase=True)).cautions[0]
    )
    x, amplitude = readings(-30.0, 60.0, length=1.5 * WAVE, steps=10)
    assert any(
        "nothing can be told" in one
        for one in probed(ProbedLine(name="rail", frequency_hz=F, position_m=x, reading=amplitude, phase=True)).cautions
    )
    with pytest.raises(ValueError, match="needs at least 8"):
        probed(ProbedLine(name="rail", frequency_hz=F, position_m=x[:5], reading=amplitude[:5], phase=True))


def test_a_wall_of_the_simulated_chamber(tmp_path):
    """A small dipole on a rail before a side wall: ripple and direction against what the chamber adds with the wall and without."""
    scenario = Scenario(device=sized(6.0, 1.0, 1.0, 2.1), goal=ONE, twin={"device": {"kind": "dipole", "axis": "y"}})
    chamber = Campaign.load(scenario.write(tmp_path / "c")).chamber
    wall = EchoTable(normal=(0.94, 0.0, 0.34), distance_m=0.8, level_db=-20.0)
    x = np.arange(-0.15, 0.15, WAVE / 6)

    def along(echoes):
        out = []
        for place in x:
            dipole = cluster_of([F], [0, 0, 0], [0, 1, 0]).moved(RigidMotion(np.eye(3), np.array([place, 0.0, 0.0])))
            here = SimulatedRange(chamber, SimulatedChamber(echoes=echoes), lambda f, one=dipole: one)
            here.set_frequencies(np.array([F]))
            still = {name: np.zeros(1) for name in chamber.axis_table}
            still["probe"] = np.full(1, 90.0)
            out.append(complex(here.received(still, 1)[0, 0]))
        return np.array(out)

    clean, dirty = along(()), along((wall,))
    true = float(np.median(20 * np.log10(np.abs(dirty - clean) / np.abs(clean))))
    found = probed(ProbedLine(name="rail", frequency_hz=F, position_m=x, reading=dirty, phase=True))
    assert -50.0 < true < -15.0
    assert found.rms_db == pytest.approx(true, abs=1.5) and found.reflectivity_db == pytest.approx(true, abs=2.5)
    # The echo's own turn of phase against the direct wave along the rail.
    turn = np.polyfit(x, np.unwrap(np.angle((dirty - clean) / clean)), 1)[0]
    cosine = -turn * WAVE / (2 * np.pi)
    assert found.waves[0].angle_deg[0] == pytest.approx(np.rad2deg(np.arccos(cosine)), abs=5.0)


def test_spread_over_the_reference_positions():
    """Seven positions of TS 38.521-2 O.2.5; the interval of a standard deviation is chi-squared (JCGM 100:2008, E.4.3 tells how wide)."""
    r = 0.1
    places = r * np.concatenate([np.zeros((1, 3)), np.eye(3), -np.eye(3)])
    random = np.random.default_rng(2)
    inside = []
    for _ in range(200):
        found = spread_of(F, places, list(0.3 * random.normal(size=7)), radius_m=r)
        inside.append(found.lower_db <= 0.3 <= found.upper_db)
    assert 0.90 <= np.mean(inside) <= 0.99
    assert not spread_of(F, places, [0.0] * 7, radius_m=r).lacking
    assert len(spread_of(F, places[:5], [0.0] * 5, radius_m=r).lacking) == 2


def test_the_command(tmp_path):
    x, amplitude = readings(-30.0, 60.0)
    rail = tmp_path / "rail.csv"
    with rail.open("w", newline="", encoding="utf-8") as file:
        out = csv.writer(file)
        out.writerow(["line", "frequency_hz", "position_mm", "level_db", "phase_deg", "pattern_db"])
        for place, one in zip(x, amplitude, strict=True):
            out.writerow(["across", F, 1e3 * place, 20 * np.log10(abs(one)), np.rad2deg(np.angle(one)), -10])
    run = CliRunner()
    found = json.loads(run.invoke(main, ["quiet-zone", str(rail), "--json"]).stdout)
    # The antenna looks aside by 10 dB: what is 30 dB below the direct wave there is 40 dB below its peak.
    assert found[0]["reflectivity_db"] == pytest.approx(-40.0, abs=0.6) and found[0]["lower_db"] is None
    said = run.invoke(main, ["quiet-zone", str(rail), "--plot", str(tmp_path / "ripple.png")])
    assert said.exit_code == 0 and "a wave at 60 deg" in said.stdout and (tmp_path / "ripple.png").is_file()
    rail.write_text(rail.read_text("utf-8").replace("pattern_db", "pattern_DB"), "utf-8")
    places = tmp_path / "places.csv"
    places.write_text("frequency_hz,x_mm,y_mm,z_mm,value_db\n" + "".join(
        f"24.1e9,{x},{y},{z},{v}\n" for x, y, z, v in [(0, 0, 0, 10.1), (100, 0, 0, 10.3), (-100, 0, 0, 9.9), (0, 100,
        0, 10.0)]
    ), "utf-8")  # fmt: skip
    told = run.invoke(main, ["quiet-zone", str(places)])
    assert told.exit_code == 0 and "standard deviation 0.171 dB" in told.stdout and "without a value" in told.stdout
    places.write_text("a,b\n1,2\n", "utf-8")
    refused = run.invoke(main, ["quiet-zone", str(places)])
    assert refused.exit_code == 2 and "position_mm" in refused.output
