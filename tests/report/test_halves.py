"""Maps over direction cosines show the half that holds the beam, or both, and say which.

Closed forms: a Huygens source radiates (1 + cos g)^2 / 4 of its peak at g from its axis, a short dipole sin^2 g
(Balanis, Antenna Theory, 4.2 and 12.2; from memory).
"""

from __future__ import annotations

import numpy as np
import pytest

import colure
from colure.app.services.file_reporting import _sphere_pictures
from colure.model.files import save_dataset
from tests.app.services.test_pattern_files import HUYGENS, field


def turned(angle_deg):
    """A Huygens source whose beam lies in the x-z plane, so far from +z."""
    angle = np.deg2rad(angle_deg)
    return [np.cos(angle), 0.0, -np.sin(angle)], [0.0, 1.0, 0.0]


def maps(moments, folder, **more):
    save_dataset(field(moments, **more), folder / "far.nc")
    opened = colure.open_pattern(folder / "far.nc")
    return opened, opened.beam_maps()


def total_db(picture):
    """Level of both components (v, u) as they are drawn."""
    co, cross = (np.ma.filled(ax.collections[0].get_array().astype(float), np.nan) for ax in picture[:2])
    return 10.0 * np.log10(10.0 ** (co / 10.0) + 10.0 ** (cross / 10.0))


def test_a_beam_behind_the_device_is_shown_in_the_back_half_and_the_caption_says_so(tmp_path):
    opened, found = maps(turned(157.0), tmp_path)
    ((picture, back),) = found
    assert back
    level = total_db(picture)
    u = np.linspace(-1.0, 1.0, level.shape[1])
    row, column = np.unravel_index(np.nanargmax(level), level.shape)
    assert level[row, column] == pytest.approx(0.0, abs=0.05)
    assert u[column] == pytest.approx(np.sin(np.deg2rad(157.0)), abs=0.06) and u[row] == pytest.approx(0.0, abs=0.06)
    # At u = v = 0 nothing is drawn; 6 deg beside it, towards the beam: g = 17 deg, (1 + cos g)^2 / 4 = -0.19 dB.
    middle = level.shape[0] // 2
    assert np.isnan(level[middle, middle])
    near = int(np.argmin(np.abs(u - np.sin(np.deg2rad(6.0)))))
    g = np.deg2rad(180.0 - 157.0) - np.arcsin(u[near])
    assert level[middle, near] == pytest.approx(20.0 * np.log10(0.5 * (1.0 + np.cos(g))), abs=0.05)
    words = [one.caption for one in _sphere_pictures(opened, "5.8 GHz")]
    assert "the back half (z below 0)" in words[0] and not any("front half" in one for one in words)


def test_a_dipole_is_shown_from_both_sides_at_one_scale(tmp_path):
    opened, found = maps(([1.0, 0.0, 0.0], None), tmp_path)
    assert [back for _, back in found] == [False, True]
    front, behind = (total_db(picture) for picture, _ in found)
    middle = front.shape[0] // 2
    # sin^2 g: the peak is all round in the plane x = 0, both halves alike.
    assert front[middle, middle] == pytest.approx(0.0, abs=0.05)
    known = np.isfinite(behind)
    assert np.allclose(behind[known], front[known], atol=0.05)
    words = [one.caption for one in _sphere_pictures(opened, "5.8 GHz")]
    assert "the front half" in words[0] and "the back half" in words[1]


def test_a_beam_in_front_and_a_half_sphere_are_shown_as_before(tmp_path):
    assert [back for _, back in maps(HUYGENS, tmp_path)[1]] == [False]
    (tmp_path / "half").mkdir()
    assert [back for _, back in maps(turned(85.0), tmp_path / "half", top_deg=90.0)[1]] == [False]
