"""The aperture picture points at the panel's flaws by itself."""

from __future__ import annotations

import numpy as np
import pytest

from colure.twin.antennas import PanelFlaws, panel
from colure.waves.aperture import plane_field, suspicious_elements
from colure.waves.elements import element_excitations
from tests.conftest import cluster_of, expansion_of

F = np.array([24.0e9, 24.125e9, 24.25e9])


def found_flaws(flaws: PanelFlaws, seed: int):
    device = panel(F, flaws=flaws, seed=seed)
    return suspicious_elements(element_excitations(expansion_of(device, 34), device.position).weight, 8, 8)


def test_the_demo_panels_flaws_are_named_and_nothing_else():
    found = {(s.row, s.column): s for s in found_flaws(PanelFlaws(), seed=24)}
    assert set(found) == {(2, 5), (4, 1), (5, 1)}
    assert found[2, 5].verdict == "dead or weak" and found[2, 5].relative_level_db < -12
    for place in ((4, 1), (5, 1)):
        assert found[place].verdict == "feed phase error"
        assert found[place].phase_error_deg == pytest.approx(75.0, abs=12.0)


@pytest.mark.parametrize("seed", range(5))
def test_other_flaws_in_other_places(seed):
    random = np.random.default_rng(seed)
    dead, misfed = (tuple(int(x) for x in random.integers(0, 8, 2)) for _ in range(2))
    if dead == misfed:
        misfed = ((dead[0] + 3) % 8, dead[1])
    found = {(s.row, s.column): s.verdict for s in found_flaws(PanelFlaws((dead,), (misfed, misfed), 45.0), seed)}
    assert found == {dead: "dead or weak", misfed: "feed phase error"}  # the pair is one element twice: 90 deg


@pytest.mark.parametrize("seed", range(3))
def test_a_sound_panel_raises_no_suspicion(seed):
    assert found_flaws(PanelFlaws(None, None), seed) == []


def test_a_point_source_appears_where_it_is_half_a_wavelength_wide():
    f = np.array([10e9])
    lam = 299_792_458.0 / 10e9
    source = cluster_of(f, [0.3 * lam, -0.7 * lam, 0.2 * lam], [1, 0, 0], [0, 1, 0])
    x = np.linspace(-2 * lam, 2 * lam, 161)
    picture = np.abs(plane_field(expansion_of(source, 16), x, x, 0.2 * lam)[0, 0])
    row, column = np.unravel_index(np.argmax(picture), picture.shape)
    assert x[column] == pytest.approx(0.3 * lam, abs=0.03 * lam) and x[row] == pytest.approx(-0.7 * lam, abs=0.03 * lam)
    wide = np.sum(picture[row] > picture.max() / np.sqrt(2)) * (x[1] - x[0])
    assert 0.3 * lam < wide < 0.7 * lam


def test_plane_field_far_in_front_is_the_closed_form_field():
    """Several wavelengths in front of a large sheet only visible waves are left: amplitude and phase agree."""
    f = np.array([10e9])
    lam = 299_792_458.0 / 10e9
    s = (np.arange(16) - 7.5) * lam / 3
    xx, yy = np.meshgrid(s, s)
    taper = (np.cos(np.pi * xx / (6 * lam)) * np.cos(np.pi * yy / (6 * lam))).ravel() ** 2
    position = np.stack([xx.ravel(), yy.ravel(), 0 * xx.ravel()], -1)
    sheet = cluster_of(f, position, taper[:, None] * [1, 0, 0], taper[:, None] * [0, 1, 0])
    x = np.linspace(-1.5 * lam, 1.5 * lam, 7)
    ours = plane_field(expansion_of(sheet, 48), x, x, 3 * lam)[0, 0]
    px, py = np.meshgrid(x, x)
    exact = sheet.field_at(np.stack([px.ravel(), py.ravel(), np.full(px.size, 3 * lam)], -1))[0, :, 0].reshape(7, 7)
    assert np.abs(ours - exact).max() < 0.01 * np.abs(exact).max()
