"""Conjugate near fields are told by their delay; where nothing tells, what was taken is said, with what it changes."""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.fields.near_to_far import far_field
from colure.analysis.fields.time_factor import conjugate_words
from colure.geometry.conventions import SPEED_OF_LIGHT
from colure.model.fields import grid_dataset, samples_of
from colure.report.translation import Translation

THETA_DEG, PHI_DEG = np.arange(0.0, 181.0, 15.0), np.arange(0.0, 360.0, 15.0)
RADIUS_M, OFFSET_M = 0.8, 0.02


def near(frequency_hz, *, conjugate=False, cable_m=0.0):
    """Exact field of an electric dipole along x, 20 mm along z off the origin (Balanis, Antenna Theory, eq. 4-8 and 4-10; from memory)."""
    t, p = np.meshgrid(np.deg2rad(THETA_DEG), np.deg2rad(PHI_DEG), indexing="ij")
    radial = np.stack([np.sin(t) * np.cos(p), np.sin(t) * np.sin(p), np.cos(t)], axis=-1)
    along = np.stack([np.cos(t) * np.cos(p), np.cos(t) * np.sin(p), -np.sin(t)], axis=-1)
    across = np.stack([-np.sin(p), np.cos(p), 0.0 * p], axis=-1)
    way = RADIUS_M * radial - np.array([0.0, 0.0, OFFSET_M])
    r = np.linalg.norm(way, axis=-1)[..., None]
    u, x = way / r, np.array([1.0, 0.0, 0.0])
    out = []
    for f in frequency_hz:
        kr = 2.0 * np.pi * f / SPEED_OF_LIGHT * r
        beside, ahead = x - u * u[..., :1], 3.0 * u * u[..., :1] - x
        e = np.exp(-1j * kr) / kr * (beside + (1.0 / kr**2 + 1j / kr) * ahead)
        e = e * np.exp(-2j * np.pi * f / SPEED_OF_LIGHT * cable_m)
        out.append(np.stack([np.sum(e * along, axis=-1), np.sum(e * across, axis=-1)]))
    field = np.stack(out)
    return grid_dataset(
        np.asarray(frequency_hz),
        THETA_DEG,
        PHI_DEG,
        field.conj() if conjugate else field,
        radius_m=RADIUS_M,
        source="test",
    )


BAND = (2.45e9, 2.46e9, 2.5e9)


def test_a_conjugate_near_field_is_told_by_its_delay_and_goes_with_the_file():
    pattern, words = far_field(near(BAND, conjugate=True), step_deg=15.0)
    assert "the field looks conjugate" in pattern.attrs["caution"] and any("caution: phases rise" in w for w in words)
    caution = conjugate_words(samples_of(near(BAND, conjugate=True)))[0]
    for language in ("de", "fr", "es"):
        translate = Translation(language)
        assert "looks" not in translate(f"How the file is read: {caution}.") and not translate.left


def test_a_right_near_field_of_two_frequencies_is_let_pass_without_a_word():
    assert conjugate_words(samples_of(near(BAND))) == ("", "")


@pytest.mark.parametrize(("frequencies", "cable_m", "why"), [
    ((2.45e9,), 0.0, "one frequency, or frequencies too far apart"),
    ((2.45e9, 2.95e9), 0.0, "one frequency, or frequencies too far apart"),
    (BAND, 6.0, "the phases' delay of 22.7 ns is not that of the radius (2.67 ns)"),
    (BAND, -RADIUS_M, "is not that of the radius"),
])  # fmt: skip
def test_where_nothing_tells_what_was_taken_is_said(frequencies, cable_m, why):
    caution, taken = conjugate_words(samples_of(near(frequencies, cable_m=cable_m)))
    assert not caution and "exp(+jwt)" in taken and why in taken
