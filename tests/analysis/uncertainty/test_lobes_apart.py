"""First side lobes that merge with what lies beside them: undefined with a reason, and no number that is another lobe's.

Truth is the closed-form far field of the simulated horn (sums of dipoles), which shares no mathematics with the budget.
"""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.figures.cuts import GreatCircleCut
from colure.analysis.figures.lobes import first_lobe_paths_deg
from colure.analysis.uncertainty.lobes_apart import first_dips, first_tops
from colure.app import services
from colure.app.services.rehearsal import rehearse
from tests.app.test_cuts import ROLL
from tests.coverage import forms
from tests.coverage.scenarios import ONE, Scenario, band, mounted, sized
from tests.mounts import swinging_arm

ANGLE = np.linspace(-30.0, 30.0, 1201)


def test_a_path_over_the_first_lobe_of_a_uniform_line():
    """Nulls of sin(x)/x at asin(1/20) and asin(2/20), its lobe -13.26 dB between them (textbook values, derivable)."""
    line = np.sinc(20.0 * np.sin(np.deg2rad(ANGLE)))
    paths = first_lobe_paths_deg(GreatCircleCut(ANGLE, line.astype(complex), np.zeros(ANGLE.size)), 0.6)
    assert len(paths) == 2
    for sign, path in zip((1.0, -1.0), paths, strict=True):
        assert np.all(np.diff(sign * path) > 0.0)
        for null in (1.0, 2.0):
            assert np.min(np.abs(sign * path - np.rad2deg(np.arcsin(null / 20.0)))) < 0.05
        levels = np.interp(path, ANGLE, np.abs(line))
        assert 20.0 * np.log10(levels[first_tops(levels[None])[0]]) == pytest.approx(-13.26, abs=0.02)


def test_the_first_top_of_every_draw_is_found_beyond_its_first_minimum():
    draws = np.array(
        [[5.0, 1.0, 3.0, 2.0, 4.0], [5.0, 3.0, 1.0, 2.0, 4.0], [5.0, 4.0, 3.0, 2.0, 1.0], [1.0, 2.0, 1.5, 1.0, 3.0]]
    )
    assert first_tops(draws).tolist() == [2, 4, 4, 1]
    assert first_dips(draws).tolist() == [1, 2, 4, 0]


@pytest.mark.parametrize(
    "seeds", [(708,), pytest.param(range(700, 712), marks=pytest.mark.nightly)], ids=["one run", "runs"]
)
def test_a_ripple_before_the_back_lobe_is_no_side_lobe(tmp_path, seeds, request):
    """Horn, H plane: 0.1 dB part a lobe of -35.4 dB from the back lobe of -30.2 dB; run 708 read -28.7 (-32.7 to -26.2) dB before."""
    if len(seeds) > 1:
        request.getfixturevalue("nightly")
    plan_of = forms.planned(tmp_path / "c", "sphere, from 0 deg, unequal offsets", ROLL, "step")
    stated, held = 0, 0
    for seed in seeds:
        found = rehearse(*plan_of, seed=seed).findings
        lobes = [one for one in found if one.figure.name.startswith(("side_lobe", "null"))]
        at_37 = {one.figure.name: one for one in lobes if one.figure.frequency_hz == plan_of[1].frequency_hz[0]}
        for name in ("side_lobe_h_db", "null_h_db"):
            assert at_37[name].figure.reason.startswith("undefined: ")
        assert not at_37["side_lobe_e_db"].figure.reason
        sure = [one for one in lobes if one.counts]
        stated, held = stated + len(sure), held + sum(one.inside for one in sure)
    assert stated > 0
    assert held >= 0.9 * stated, (held, stated)


@pytest.mark.parametrize(
    "seeds", [(3,), pytest.param(range(100, 116), marks=pytest.mark.nightly)], ids=["one run", "runs"]
)
def test_a_shoulder_that_may_be_a_lobe_is_neither_told_as_one_nor_left_out(tmp_path, seeds, request):
    """Disc with a bent phase: a shoulder at -18.9 dB whose dip is that of a lobe within the errors; its true highest lobe is -29.5 dB."""
    if len(seeds) > 1:
        request.getfixturevalue("nightly")
    disc = {"kind": "aperture", "shape": "circular", "diameter_mm": 28.4, "taper": 1.1, "pedestal": 0.47, "seed": 2,
            "edge_phase_deg": -55.0, "random_phase_deg": 12.0, "correlation_mm": 7.5}  # fmt: skip
    plan_of = services.make_plan(Scenario(sized(30, 30, 3, 14), ONE, twin={"device": disc}).write(tmp_path / "c"))
    for seed in seeds:
        (lobe,) = (one for one in rehearse(*plan_of, seed=seed).findings if one.figure.name == "side_lobe_highest_db")
        assert lobe.truth < -29.0
        assert "a lobe of its own" in lobe.figure.reason or lobe.figure.upper < -25.0, (seed, lobe.figure)
        if seed == 3:
            assert "a maximum at -18.9 dB" in lobe.figure.reason


@pytest.mark.parametrize(
    "seeds", [(2,), pytest.param(range(100, 116), marks=pytest.mark.nightly)], ids=["one run", "runs"]
)
def test_a_ripple_on_a_shoulder_is_no_null(tmp_path, seeds, request):
    """Panel with a dead and a misfed element: echoes make a minimum of -24 dB on a shoulder of its H plane; its null is -28.2 dB."""
    if len(seeds) > 1:
        request.getfixturevalue("nightly")
    grid = {"rows": 3, "columns": 5, "pitch_mm": 11.297}
    panel = Scenario(
        sized(56.48, 33.89, 2.24, 15.8, elements=grid),
        band(13.38, scheme="auto"),
        mounted(swinging_arm(949), ports=2, range_length_m=0.949, echo_level_db=-51.0,
                reference={"aperture_a_mm": 89.6, "aperture_b_mm": 71.7, "slant_e_mm": 161.0, "slant_h_mm": 179.0}),
        {"device": {"kind": "panel", **grid, "dead": [[0, 1]], "misfed": [[0, 3]], "misfeed_deg": -86.0, "error": 0.1}},
    )  # fmt: skip
    plan_of = services.make_plan(panel.write(tmp_path / "c"))
    for seed in seeds:
        (null,) = (one for one in rehearse(*plan_of, seed=seed).findings if one.figure.name == "null_h_db")
        print(seed, null.figure.value, null.figure.lower, null.figure.upper, null.truth, null.figure.reason)
        assert null.figure.reason.startswith("undefined") or null.inside, seed
