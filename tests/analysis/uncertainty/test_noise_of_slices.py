"""Noise of a scan of slices, drawn as the sweeps have it; and what it does to the largest of many equal directions."""

import numpy as np
import pytest

from colure.analysis.steps.assemble import MeasuredSphere
from colure.analysis.uncertainty.rivals import raised_db


def sphere(slices, columns, rings=9):
    """A whole sphere of slices whose columns are finer than the slices."""
    theta, phi = np.linspace(0.0, np.pi, rings), np.arange(columns) * 2.0 * np.pi / columns
    field = np.ones((1, 2, rings, columns), complex)
    return MeasuredSphere(
        frequency_hz=np.array([24e9]),
        field=field,
        theta=theta,
        phi=phi,
        polar_to_device=np.eye(3),
        readout_sign=np.ones(columns),
        slices_used=slices,
        slices_planned=slices,
    )


def test_columns_between_slices_are_no_new_samples():
    """Four slices are eight half circles: a mean over a ring scatters as 1 / sqrt 8, however many columns follow (derivable)."""
    random = np.random.default_rng(4)
    drawn = np.stack([sphere(4, 40).white_noise(random) for _ in range(400)])[:, 0]
    assert np.mean(np.abs(drawn[:, :, 4].mean(axis=-1)) ** 2) == pytest.approx(1.0 / 8.0, rel=0.12)


def test_opposite_columns_share_the_pole():
    """At a pole theta^ and phi^ of opposite columns are each other's negatives (geometry): one sample, not two."""
    drawn = sphere(6, 12).white_noise(np.random.default_rng(5))[0]
    for ring in (0, -1):
        assert drawn[:, ring, 6:] == pytest.approx(-drawn[:, ring, :6])
        # Six slices are averaged in a fixed frame (derivable).
    many = np.stack([sphere(6, 12).white_noise(np.random.default_rng(i))[0, :, 0, 0] for i in range(600)])
    assert np.mean(np.abs(many) ** 2) == pytest.approx(1.0 / 6.0, rel=0.15)


def test_the_bias_of_a_ring_of_equal_maxima_is_known():
    """Counted: the true maximum of 24 equal directions is 0 dB; what is read is too high by what the draws say."""
    random = np.random.default_rng(6)

    def errors(count):
        return 0.003 * (random.normal(size=(count, 24, 1)) + 1j * random.normal(size=(count, 24, 1)))

    fields, read, said = np.ones((24, 1), complex), [], []
    for error in errors(200):
        measured = fields + error
        read.append(10.0 * np.log10(np.max(np.abs(measured) ** 2)))
        said.append(float(np.mean(raised_db(measured, errors(16)))))
    assert np.mean(read) > 0.04
    assert np.mean(said) == pytest.approx(np.mean(read), rel=0.12)


def test_a_single_maximum_is_not_raised_by_its_rivals():
    """Far below the largest nothing rivals it: noise raises it only as often as it lowers it."""
    random = np.random.default_rng(7)
    fields = np.array([[1.0], [0.8], [0.7]], complex)
    noise = 0.003 * (random.normal(size=(4000, 3, 1)) + 1j * random.normal(size=(4000, 3, 1)))
    assert abs(np.mean(raised_db(fields, noise))) < 0.002
