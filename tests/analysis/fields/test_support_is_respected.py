"""Directions that the data do not determine: marked for every frequency, and left out by everything that reads the file."""

from __future__ import annotations

import numpy as np

from colure.analysis.fields.known_pattern import opened_pattern
from colure.analysis.fields.near_to_far import far_field
from colure.geometry.conventions import SPEED_OF_LIGHT
from colure.model.exchange import read_csv, write_csv
from colure.model.fields import FieldSamples, samples_of, scattered_dataset
from tests.waves.test_part_of_sphere import far, spiral

ANTENNA = np.array([[0.2, 0.0, 0.1], [-0.3, 0.1, 0.0]]), np.array([[1.0, 0.5j, 0.0], [0.2, 0.7, 1.0j]])


def two_frequencies(seed=1):
    """The first frequency sees a half sphere, the second the whole one."""
    theta, phi = spiral(400, np.random.default_rng(0))
    sets = []
    for seen in (theta <= np.pi / 2, theta <= np.pi):
        field = far(ANTENNA, theta[seen], phi[seen])
        raw = np.random.default_rng(seed).normal(size=(2, *field.shape))
        field = field + 1e-2 * (raw[0] + 1j * raw[1])
        f = SPEED_OF_LIGHT * (1.0 + 1e-9 * len(sets))
        sets.append(FieldSamples(f, theta[seen], phi[seen], field, None, np.ones(int(seen.sum()))))
    return scattered_dataset(sets, "test")


def test_every_frequency_has_its_own_support(tmp_path):
    pattern, words = far_field(two_frequencies(), step_deg=10.0)
    support = pattern["support"]
    assert support.dims == ("frequency", "theta", "phi")
    assert float(support[0].sel(theta=slice(130, 180)).max()) == 0.0
    assert float(support[0].sel(theta=slice(0, 70)).min()) == 1.0 and float(support[1].min()) == 1.0
    assert sum("error of the field at most" in line for line in words) == 2
    assert all(one.theta.max() < np.deg2rad(130) for one in samples_of(pattern)[:1])
    assert opened_pattern(pattern.isel(frequency=[0])).region < np.deg2rad(130)
    assert opened_pattern(pattern.isel(frequency=[1])).region == np.pi
    write_csv(pattern, tmp_path / "far.csv")
    again = read_csv(tmp_path / "far.csv", far_field=True)
    assert [one.theta.max() < np.deg2rad(130) for one in samples_of(again)] == [True, False]
    assert opened_pattern(again.isel(frequency=[0])).region < np.deg2rad(130)


def test_stated_errors_hold_where_determined():
    """Errors of one measurement go together in all directions: counted over 12 measurements, by solid angle."""
    inside, whole = 0.0, 0.0
    for seed in range(12):
        pattern, _ = far_field(two_frequencies(seed), step_deg=15.0)
        t, p = np.meshgrid(np.deg2rad(pattern.theta), np.deg2rad(pattern.phi), indexing="ij")
        truth = far(ANTENNA, t.ravel(), p.ravel()).reshape(2, *t.shape)
        for index in (0, 1):
            found = np.stack([pattern[name].values[index] for name in ("e_theta", "e_phi")])
            error, bound = np.sqrt(np.sum(np.abs(found - truth) ** 2, axis=0)), pattern["error_bound"].values[index]
            weight = np.sin(t) * (pattern["support"].values[index] == 1.0)
            inside, whole = inside + np.sum(weight * (error <= bound)), whole + np.sum(weight)
    assert inside / whole >= 0.95
