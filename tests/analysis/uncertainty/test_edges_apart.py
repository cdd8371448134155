"""Beamwidths whose edge lies on a shoulder of the main lobe: the interval reaches to where the lobe ends otherwise.

Truth is the closed-form far field of a simulated disc (sums of dipoles), which shares no mathematics with the budget.
"""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.figures.cuts import GreatCircleCut
from colure.analysis.figures.lobes import edges_deg
from colure.analysis.figures.places import Width
from colure.analysis.uncertainty.edges_apart import beyond_the_slope
from colure.app import services
from colure.app.services.rehearsal import rehearse
from colure.geometry.conventions import amplitude_db
from tests.coverage.scenarios import HORN_38_GHZ, Scenario, band, sized

ANGLE = np.linspace(-90.0, 90.0, 3601)


def width_of(amplitude: np.ndarray, level: float) -> Width:
    cut = GreatCircleCut(ANGLE, amplitude.astype(complex), np.zeros(ANGLE.size))
    ends = np.array(edges_deg(cut, float(-amplitude_db(level)))) * [1.0, -1.0]
    fall = -np.sign(ends) * np.interp(ends, ANGLE, np.gradient(amplitude**2, np.deg2rad(ANGLE)))
    return Width("beamwidth_e_10db_deg", np.zeros(2, int), fall, level**2, False, cut, np.zeros((2, 2)))


def test_an_even_flank_reaches_no_farther_than_its_slope_says():
    cosine = np.cos(np.deg2rad(ANGLE))
    assert beyond_the_slope(width_of(cosine, 0.5), np.full(2, 0.02)) == (0.0, 0.0)


def test_an_edge_on_a_shoulder_reaches_to_both_of_its_ends():
    """Straight flank to 0.32 at 25 deg, a shoulder that falls to 0.30 at 45 deg, straight on: at 0.31 the edge is at 35 deg."""
    right = np.interp(np.abs(ANGLE), [0.0, 25.0, 45.0, 90.0], [1.0, 0.32, 0.30, 0.0])
    one_side = np.where(ANGLE > 0.0, right, np.interp(np.abs(ANGLE), [0.0, 90.0], [1.0, 0.0]))
    narrower, wider = beyond_the_slope(width_of(one_side, 0.318), np.array([0.03, 0.03]))
    # At 0.288 the far flank stands at 45 + 0.012 / 0.3 * 45 deg: 19.8 deg beyond 27 deg, of which the slope says 30 (all of it, then).
    assert wider == 0.0
    # A slope of 0.001 per degree says 30 deg; at 0.348 the near flank is met 3 deg earlier: less, not more.
    assert narrower == 0.0
    narrower, wider = beyond_the_slope(width_of(one_side, 0.325), np.array([0.03, 0.0]))
    # At 0.295 the far flank: 45.75 deg, 20.9 beyond 24.8 deg; the near flank's slope (0.0272 per degree) says 1.1 deg.
    assert wider == pytest.approx(45.75 - 24.82 - 0.03 / 0.0272, abs=0.1)


@pytest.mark.parametrize("seeds", [(2,), pytest.param(range(20), marks=pytest.mark.nightly)], ids=["one run", "runs"])
def test_a_disc_with_a_shoulder_at_the_level_of_its_edge(tmp_path, seeds, request):
    """A bent phase across the disc: the -10 dB edges lie on shoulders of the main lobe."""
    if len(seeds) > 1:
        request.getfixturevalue("nightly")
    disc = {"kind": "aperture", "shape": "circular", "diameter_mm": 26.0, "taper": 0.29, "pedestal": 0.48, "seed": 72,
            "edge_phase_deg": 127.0, "random_phase_deg": 16.0, "correlation_mm": 4.8}  # fmt: skip
    chamber = {"reference": HORN_38_GHZ, "echo_level_db": -45.0}
    disc_at_38 = Scenario(sized(26, 26, 1.6, 18), band(38.0), chamber, {"device": disc})
    plan_of, held, stated = services.make_plan(disc_at_38.write(tmp_path / "c")), 0, 0
    for seed in seeds:
        found = {one.figure.name: one for one in rehearse(*plan_of, seed=seed).findings}
        for name in ("beamwidth_e_10db_deg", "beamwidth_h_10db_deg"):
            held, stated = held + found[name].inside, stated + 1
    assert held >= 0.9 * stated, (held, stated)
