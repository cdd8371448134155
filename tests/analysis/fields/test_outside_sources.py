"""An image of the device in a wall that turns with it: located, and taken out with its low degrees too.

Device and image are elementary dipoles in closed form; image theory of a conductor (any electromagnetics text).
"""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.fields.near_to_far import far_field
from colure.analysis.fields.outside_sources import without_outside
from colure.geometry.conventions import mode_count
from colure.model.fields import grid_dataset
from colure.waves.expansion import Expansion
from colure.waves.scattered import synthesis_at
from colure.waves.transform import analysis
from tests.app.services.test_field_probe import FREQUENCY, LOOK_P, LOOK_T, K, far

ORDER, KEPT, WALL = 26, 8, 1.1
NORMAL = np.array([0.6, 0.48, 0.64])
RANDOM = np.random.default_rng(4)
DEVICE = RANDOM.uniform(-0.2, 0.2, (5, 3)), RANDOM.normal(size=(5, 3)) + 1j * RANDOM.normal(size=(5, 3))
FLIP = np.eye(3) - 2.0 * np.outer(NORMAL, NORMAL)
IMAGE = DEVICE[0] @ FLIP + 2.0 * WALL * NORMAL, -0.05 * (DEVICE[1] @ FLIP)
THETA, PHI = np.linspace(0.0, np.pi, ORDER + 3), np.arange(2 * ORDER + 4) * np.pi / (ORDER + 2)


def measured(noise_db):
    t, p = (a.ravel() for a in np.meshgrid(THETA, PHI, indexing="ij"))
    field = far(DEVICE, t, p) + far(IMAGE, t, p)
    raw = np.random.default_rng(0).normal(size=(2, *field.shape)) * np.sqrt(0.5)
    noise = 10 ** (noise_db / 20) * np.abs(field).max()
    return (field + noise * (raw[0] + 1j * raw[1])).reshape(2, THETA.size, PHI.size), noise


def error_of(coefficients):
    truth = far(DEVICE, LOOK_T, LOOK_P)
    error = np.sqrt(np.sum(np.abs(synthesis_at(coefficients, LOOK_T, LOOK_P) - truth) ** 2, axis=0))
    return error / np.sqrt(np.max(np.sum(np.abs(truth) ** 2, axis=0)))


@pytest.mark.parametrize("noise_db", [-60.0, -100.0])
def test_the_worst_error_gains_where_a_cut_alone_gains_nothing(noise_db):
    field, noise = measured(noise_db)
    coefficients = analysis(field, ORDER)
    per_mode = noise * np.sqrt(4.0 * np.pi / (THETA.size * PHI.size))
    found = without_outside(Expansion(coefficients, np.array(K)), KEPT, per_mode, draws=8)
    before, cut = error_of(coefficients).max(), error_of(coefficients[:, : mode_count(KEPT)]).max()
    after = error_of(found.expansion.coefficients)
    assert 20 * np.log10(cut / before) > -6.0
    assert 20 * np.log10(after.max() / before) < -8.0
    assert np.linalg.norm(found.places[0] - 2.0 * WALL * NORMAL) < 0.35


def test_the_command_says_how_much_lies_outside():
    field, _ = measured(-60.0)
    dataset = grid_dataset(
        np.array([FREQUENCY]), np.rad2deg(THETA), np.rad2deg(PHI), field[None], radius_m=None, source="test"
    )
    _, words = far_field(dataset, step_deg=15.0, keep_radius_m=0.36)
    assert any("outside 0.36 m hold" in line and "located at" in line for line in words)
