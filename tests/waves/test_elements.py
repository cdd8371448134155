"""Excitations of arrays whose moments are known in closed form."""

from __future__ import annotations

import numpy as np
import pytest

from colure.geometry.conventions import wavelength
from colure.geometry.directions import unit_vector
from colure.waves.elements import element_excitations, element_waves
from colure.waves.expansion import Expansion
from colure.waves.scattered import synthesis_at
from tests.conftest import cluster_of, expansion_of

F = np.array([10e9])
LAM = float(wavelength(F)[0])


def grid(rows, columns, pitch):
    y, x = ((np.arange(n) - (n - 1) / 2) * pitch for n in (rows, columns))
    yy, xx = np.meshgrid(y, x, indexing="ij")
    return np.stack([xx.ravel(), yy.ravel(), np.zeros(xx.size)], axis=-1)


def moments(random, count, dead):
    level = 10.0 ** (random.uniform(-2.0, 2.0, count) / 20.0) * np.exp(1j * random.uniform(-0.6, 0.6, count))
    level[dead] = 10.0 ** (-75.0 / 20.0)
    return level


def compared(found, true):
    """Return (rms error dB, level of the weakest against the largest dB) after one common factor."""
    factor = np.vdot(found, true) / np.vdot(found, found)
    off = found * factor - true
    return 20 * np.log10(np.linalg.norm(off) / np.linalg.norm(true)), 20 * np.log10(
        np.abs(found).min() / np.abs(found).max()
    )


@pytest.mark.parametrize("electric, magnetic", [([1, 0, 0], None), ([0.6, 0.8, 0], None), ([1, 0, 0], [0, 1, 0])])
def test_short_dipoles_of_known_moments_one_of_them_dead(electric, magnetic):
    """4 x 4 elements half a wavelength apart: dipoles along x, slanted ones, Huygens sources; one radiates -75 dB."""
    random = np.random.default_rng(5)
    true = moments(random, 16, 6)
    places = grid(4, 4, 0.5 * LAM)
    weighted = [true[:, None] * np.asarray(v, complex) for v in (electric, magnetic) if v is not None]
    device = cluster_of(F, places, *weighted)
    found = element_excitations(expansion_of(device, 22), places)
    rms, weakest = compared(found.weight[0], true)
    print(f"rms {rms:.1f} dB, dead element {weakest:.1f} dB, floor {20 * np.log10(found.floor[0]):.1f} dB")
    assert rms < -60.0 and weakest < -60.0


def test_noise_sets_the_floor_that_is_stated():
    """With noise -40 dB below the far field's rms the dead element lies below the stated floor, in 19 of 20 cases or more."""
    random = np.random.default_rng(6)
    places, below, errors = grid(4, 4, 0.5 * LAM), [], []
    for _ in range(20):
        true = moments(random, 16, 9)
        clean = expansion_of(cluster_of(F, places, true[:, None] * np.array([1, 0, 0])), 18)
        c = clean.coefficients
        noise = random.normal(size=(2, *c.shape)).T @ [1.0, 1j]
        noisy = Expansion(c + 0.01 * np.linalg.norm(c) / np.linalg.norm(noise) * noise.T, clean.k)
        found = element_excitations(noisy, places)
        below.append(abs(found.weight[0, 9]) < 1.5 * found.floor[0])
        errors.append(compared(found.weight[0], true)[0])
    print(f"below {np.mean(below):.2f}, floor {20 * np.log10(found.floor[0]):.1f} dB, rms {np.median(errors):.1f} dB")
    assert np.mean(below) >= 0.95 and np.median(errors) < -35.0


def test_a_declared_pattern_is_the_panels():
    random = np.random.default_rng(7)
    true, places = moments(random, 16, 3), grid(4, 4, 0.6 * LAM)
    device = cluster_of(F, places, true[:, None] * np.array([1, 0, 0]), true[:, None] * np.array([0, 1, 0]))
    rms, _ = compared(element_excitations(expansion_of(device, 24), places, pattern="panel").weight[0], true)
    assert rms < -50.0


def test_upright_dipoles_that_radiate_nothing_ahead_are_told_one_by_one():
    """4 x 4 dipoles along z, one dead: from a pattern that is largest ahead the search ended at -7 dB in 2 of 20 such arrays."""
    for seed in (1, 5):
        random = np.random.default_rng(seed)
        places = grid(4, 4, 0.5 * LAM)
        true = (1.0 + 0.3 * random.normal(size=16)) * np.exp(0.3j * random.normal(size=16))
        true[int(random.integers(16))] = 0.0
        found = element_excitations(
            expansion_of(cluster_of(F, places, true[:, None] * np.array([0, 0, 1])), 22), places
        )
        rms, weakest = compared(found.weight[0], true)
        print(f"rms {rms:.1f} dB, dead element {weakest:.1f} dB, floor {20 * np.log10(found.floor[0]):.1f} dB")
        assert rms < -60.0 and weakest < 20 * np.log10(found.floor[0])


@pytest.mark.parametrize("pattern", ["estimated", "panel"])
def test_the_elements_own_waves_times_the_excitations_give_the_pattern_back_in_its_scale(pattern):
    """4 x 4 Huygens sources, whose pattern is (1 + cos theta)/2 in closed form (Balanis, Antenna Theory, ch. 12): e(d) = f(d) times the array factor."""
    random = np.random.default_rng(8)
    true, places = moments(random, 16, 3), grid(4, 4, 0.6 * LAM)
    device = cluster_of(F, places, true[:, None] * np.array([1, 0, 0]), true[:, None] * np.array([0, 1, 0]))
    expansion = expansion_of(device, 24)
    weight = element_excitations(expansion, places, pattern=pattern).weight
    own = element_waves(expansion, places, weight, pattern=pattern)
    theta, phi = np.deg2rad(random.uniform(0.0, 70.0, 200)), random.uniform(0.0, 2.0 * np.pi, 200)
    factor = np.exp(1j * expansion.k[0] * (unit_vector(theta=theta, phi=phi) @ places.T)) @ weight[0]
    rebuilt = synthesis_at(own[0], theta=theta, phi=phi) * factor
    field = synthesis_at(expansion.coefficients[0], theta=theta, phi=phi)
    off = 20 * np.log10(np.abs(rebuilt - field).max() / np.abs(field).max())
    print(f"{pattern}: worst {off:.1f} dB")
    assert off < -50.0
