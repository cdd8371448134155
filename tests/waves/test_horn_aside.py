"""What a pyramidal horn sends aside, against its published side lobes and the simulated horn's elementary dipoles."""

from __future__ import annotations

import numpy as np
import pytest

from colure.twin.antennas import horn
from colure.waves.horn import horn_aside

F = np.array([24e9])
LAM = 299_792_458.0 / F[0]


def test_flat_apertures_have_the_published_side_lobes():
    """Uniform -13.261 dB (standards sheet, section 4), cosine -23.0 dB (Balanis, table 12.1, from memory)."""
    size = 20 * LAM
    sine = np.linspace(1.2 * LAM / size, 2.3 * LAM / size, 2000)
    for axis, level in ((0, -13.261), (1, -23.0)):
        d = np.zeros((sine.size, 3))
        d[:, axis], d[:, 2] = sine, np.sqrt(1 - sine**2)
        field = np.linalg.norm(horn_aside(F, d, a=size, b=size, slant_e=1e9, slant_h=1e9)[0], axis=-1)
        obliquity = (1.0 + d[:, 2]) / 2.0
        peaks = (field / obliquity)[1:-1][(np.diff(field)[:-1] > 0) & (np.diff(field)[1:] < 0)]
        assert 20 * np.log10(peaks[0]) == pytest.approx(level, abs=0.02)


def test_flared_horn_agrees_with_a_sum_of_dipoles():
    random = np.random.default_rng(3)
    d = random.normal(size=(40, 3))
    d[:, 2] = np.abs(d[:, 2])
    d /= np.linalg.norm(d, axis=1, keepdims=True)
    sides = {"a": 45e-3, "b": 36e-3, "slant_e": 80e-3, "slant_h": 90e-3}
    true = horn(F, a_m=sides["a"], b_m=sides["b"], slant_e_m=sides["slant_e"], slant_h_m=sides["slant_h"], spacing=0.1)
    sent, axis = true.far_field(d)[0], true.far_field([[0.0, 0.0, 1.0]])[0, 0]
    found = horn_aside(F, d, **sides)[0]
    assert found == pytest.approx(sent / axis[0], abs=2e-3)
