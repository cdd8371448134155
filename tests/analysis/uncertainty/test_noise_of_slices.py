"""Noise of a scan of slices, drawn as the sweeps have it; and what it does to the largest of many equal directions."""

from dataclasses import replace

import numpy as np
import pytest

from colure.analysis.steps.assemble import MeasuredSphere
from colure.analysis.uncertainty.rivals import raised_db
from colure.waves.transform import fold_double_sided


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


def ring_with_sides(random):
    """A ring of 40 equal maxima whose pattern falls by 0.15 dB to both sides, and smooth errors along it: (field, what draws add)."""
    turns, sides = np.arange(40) * 2.0 * np.pi / 40, 10.0 ** (-0.15 / 20.0 * np.linspace(-1.0, 1.0, 9) ** 2)

    def errors(count):
        raw = random.normal(size=(2, count, 5))
        smooth = (raw[0] + 1j * raw[1]) @ np.exp(1j * np.outer(np.arange(-2, 3), turns))
        return 0.0022 * np.tile(smooth, (1, 9))[:, :, None]

    return np.repeat(sides, 40)[:, None].astype(complex), errors


def test_errors_that_stay_in_the_value_raise_a_ring_by_as_much_as_the_record_allows():
    """Counted over 60 records: the raise that is said is the one that was read; on average over the ring it is less."""
    random = np.random.default_rng(8)
    true, errors = ring_with_sides(random)
    read, said, usual = [], [], []
    for error in errors(60):
        measured = true + error
        read.append(10.0 * np.log10(np.max(np.abs(measured) ** 2)))
        said.append(float(np.mean(raised_db(measured, errors(40), at_most=True))))
        usual.append(float(np.mean(raised_db(measured, errors(40)))))
    assert np.mean(said) == pytest.approx(np.mean(read), rel=0.12)
    assert np.mean(usual) < 0.87 * np.mean(read)


def test_a_maximum_that_stands_out_is_not_evened():
    random = np.random.default_rng(9)
    fields = np.ones((24, 1), complex)
    fields[7] = 1.02
    noise = 0.003 * (random.normal(size=(400, 24, 1)) + 1j * random.normal(size=(400, 24, 1)))
    assert np.mean(raised_db(fields, noise, at_most=True)) < 0.02


@pytest.mark.parametrize("whole", [True, False])
def test_a_drawn_error_meets_at_a_pole_as_the_assembly_lets_slices_meet(whole):
    """Slices that differ at a pole are folded, and the same samples as an error that is drawn on the sphere: one result."""
    random, slices, rings = np.random.default_rng(10), 6, 9
    readouts = np.arange(-7 if whole else -8, 9) * np.pi / 8 * (1.0 if whole else 0.5)
    raw = random.normal(size=(2, 1, 2, readouts.size, slices))
    double = raw[0] + 1j * raw[1]
    grid = replace(sphere(slices, 2 * slices, rings), theta=readouts[readouts >= -1e-9])
    zero = int(np.argmin(np.abs(readouts)))
    drawn = np.empty((1, 2, rings, 2 * slices), complex)
    drawn[..., :slices] = double[..., zero:, :]
    drawn[..., 1 : zero + 1, slices:] = -double[..., :zero, :][..., ::-1, :]
    drawn[..., 0, slices:] = -double[..., zero, :]
    if whole:
        drawn[..., -1, slices:] = -double[..., -1, :]
    assert grid.as_assembled(drawn) == pytest.approx(fold_double_sided(double, readouts))
    assert grid.as_assembled(drawn) != pytest.approx(drawn)
