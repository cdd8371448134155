"""What does not fit waves from a device is told as more than noise, and right samples are let pass."""

from __future__ import annotations

import re

import numpy as np
import pytest

from colure.analysis.fields.errors import Declared
from colure.analysis.fields.near_to_far import far_field
from colure.analysis.fields.worst_ring import ring_words
from colure.model.fields import grid_dataset, samples_of
from colure.report.translation import Translation

STEP_DEG = 10.0
THETA_DEG, PHI_DEG = np.arange(5.0, 180.0, STEP_DEG), np.arange(0.0, 360.0, STEP_DEG)


def field(noise_db):
    """Two Huygens sources along x, 0.6 wavelengths apart, in closed form, with noise."""
    t, p = np.meshgrid(np.deg2rad(THETA_DEG), np.deg2rad(PHI_DEG), indexing="ij")
    level = 0.5 * (1.0 + np.cos(t)) * np.cos(0.6 * np.pi * np.sin(t) * np.cos(p) + 0.4j)
    level = level * np.exp(0.3j * np.pi * np.cos(t))
    e = np.stack([level * np.cos(p), -level * np.sin(p)])
    random = np.random.default_rng(1)
    noise = random.normal(size=e.shape) + 1j * random.normal(size=e.shape)
    return e + 10.0 ** (noise_db / 20.0) / np.sqrt(2.0) * noise


def said(e, **declared):
    dataset = grid_dataset(np.array([1e10]), THETA_DEG, PHI_DEG, e[None], radius_m=None, source="test")
    pattern, words = far_field(dataset, step_deg=5.0, declared=Declared(probe_db=0.0, **declared))
    told = [one for one in words if "do not fit waves" in one]
    assert bool(told) == ("do not fit waves" in str(pattern.attrs.get("caution", "")))
    return told


@pytest.mark.parametrize("noise_db", [-60.0, -40.0])
def test_right_samples_are_let_pass(noise_db):
    assert not said(field(noise_db))


MISTAKES = {
    "phase in another unit": lambda e: np.abs(e) * np.exp(1j * np.rad2deg(np.angle(e))),
    "rows in another order": lambda e: e.reshape(2, PHI_DEG.size, THETA_DEG.size).transpose(0, 2, 1),
    "e_phi a quarter turn late": lambda e: e * np.array([1.0, 1j])[:, None, None],
    "columns lost": lambda e: np.where(np.arange(PHI_DEG.size) < 5, 0.0, e),
}


@pytest.mark.parametrize("mistake", MISTAKES)
def test_samples_that_went_wrong_are_told(mistake):
    (told,) = said(MISTAKES[mistake](field(-60.0)))
    assert "10 GHz" in told and "The stated errors take it for noise alone" in told


def test_who_states_the_noise_is_not_told():
    assert said(field(-22.0)) and not said(field(-22.0), noise_db=-22.0)


AT_A_RING = {
    "e_phi 1 dB low": lambda e: e * np.array([1.0, 10.0**-0.05])[:, None, None],
    "half of the columns 2 dB low": lambda e: np.where(np.arange(PHI_DEG.size) < PHI_DEG.size // 2, 10.0**-0.1, 1.0) * e,
    "rows one late": lambda e: np.concatenate([e[:, :1], e[:, :-1]], axis=1),
}  # fmt: skip


def ring(e):
    return ring_words(
        samples_of(grid_dataset(np.array([1e10]), THETA_DEG, PHI_DEG, e[None], radius_m=None, source="t"))
    )


@pytest.mark.parametrize("mistake", AT_A_RING)
def test_a_mistake_that_shows_on_the_rings_at_a_pole_is_told_there(mistake):
    """Over the whole sphere noise of -40 dB leaves more."""
    words = ring(AT_A_RING[mistake](field(-60.0)))
    assert "Near a pole all columns see nearly one vector" in words
    for language in ("de", "fr", "es"):
        translate = Translation(language)
        assert "Near" not in translate(f"How the file is read: {words}.") and not translate.left
    assert float(re.search(r"at theta ([\d.]+) deg", words)[1]) in (5.0, 15.0, 165.0, 175.0)


@pytest.mark.parametrize("way", ["noise", "noise where the field is strong", "columns that drift"])
def test_no_ring_of_right_samples_is_accused(way):
    e, random = field(-60.0), np.random.default_rng(2)
    if way == "noise where the field is strong":  # places that jitter by 0.2 mm
        e = e * (1.0 + 0.04j * random.normal(size=e.shape[1:]))
    if way == "columns that drift":
        e = e * (1.0 + 0.01 * random.normal(size=PHI_DEG.size))
    assert ring(field(-30.0) if way == "noise" else e) == ""
