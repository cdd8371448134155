"""Phase centre of sources whose centre is known by construction."""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.figures.phase_centre import phase_centre
from colure.geometry.conventions import wavenumber
from colure.twin.antennas import PanelFlaws, panel
from colure.waves.expansion import Expansion
from tests.conftest import cluster_of, expansion_of

FREQUENCY = np.array([24e9])
K = float(wavenumber(FREQUENCY)[0])


@pytest.mark.parametrize("place", [(0.0, 0.0, 0.0), (0.012, -0.007, -0.03), (-0.02, 0.01, 0.05)])
def test_a_single_huygens_source_has_its_own_place(place):
    """A crossed electric and magnetic dipole radiates from where it stands, in every direction (derivable)."""
    source = cluster_of(24e9, [place], [[1, 0, 0]], [[0, 1, 0]])
    found = phase_centre(expansion_of(source, 45).coefficients[0], K, slant=0.0, cone_deg=30.0)
    assert found.position_m == pytest.approx(place, abs=2e-6)
    assert found.ripple_deg < 1e-3


def test_a_sound_panel_is_centred_and_recentring_flattens_its_phase():
    centre = np.array([0.004, -0.006, -0.03])
    device = panel(FREQUENCY, centre_m=tuple(centre), flaws=PanelFlaws(dead=None, misfed=None))
    expansion = expansion_of(device, 45)
    found = phase_centre(expansion.coefficients[0], K, slant=0.0, cone_deg=8.0)
    # A panel's few per cent of random errors move it by a fraction of a millimetre across, more along the beam.
    assert found.position_m[:2] == pytest.approx(centre[:2], abs=3e-4)
    assert found.position_m[2] == pytest.approx(centre[2], abs=8e-3)
    assert found.ripple_deg < 2.0 < found.ripple_before_deg
    moved = Expansion(expansion.coefficients, expansion.k).translated(-found.position_m)
    again = phase_centre(moved.coefficients[0], K, slant=0.0, cone_deg=8.0)
    assert np.linalg.norm(again.position_m) < 1e-5
    assert again.ripple_before_deg == pytest.approx(found.ripple_deg, abs=1e-3)


def test_a_cone_that_cannot_be_is_refused():
    with pytest.raises(ValueError, match="cone: 80, must be from 0.01 to 60 deg"):
        phase_centre(np.zeros((2, 8), complex), K, slant=0.0, cone_deg=80.0)
