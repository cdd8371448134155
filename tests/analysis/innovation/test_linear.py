"""The fit about a device, on an invented linear range: a shift that acts on a faulty device, and elements that all differ."""

from __future__ import annotations

from types import SimpleNamespace

import numpy as np
import pytest

from colure.analysis.innovation.causes import Drawn, without_common_phase
from colure.analysis.innovation.estimate import MISFITS, OF_ELEMENTS, Estimator
from colure.analysis.innovation.known_unit import over_band
from colure.analysis.innovation.linear import ROOMS
from colure.analysis.innovation.verified import doubts_of

ELEMENTS, FREQUENCIES, POINTS, WAVES = 8, 3, 36, 12
NOISE, SPREAD, SHIFT = 1e-3, 0.02, 0.03


class InventedCauses:
    """A range whose readings are any matrix times the waves; every point's phase errs along a line of rms `SHIFT` at its end."""

    def __init__(self, seed: int, share_error: float = 0.01) -> None:
        random = np.random.default_rng(seed)
        self._random = random
        elements = self.complex_of(ELEMENTS, 1, 2, WAVES // 2) * np.ones((1, FREQUENCIES, 1, 1))
        self._matrix = self.complex_of(POINTS, WAVES)
        self._ramp = np.linspace(-1.0, 1.0, POINTS)
        straight = over_band(FREQUENCIES)[1][:, None, None] * elements
        self.known = SimpleNamespace(
            elements=elements, new=np.concatenate([elements, straight]),
            usual=SPREAD * np.repeat([1.0, share_error], ELEMENTS), share_error=np.full(ELEMENTS, share_error), likeness=SimpleNamespace(faulty=0.02),
            expansion=SimpleNamespace(coefficients=elements.sum(axis=0)), by_element=lambda new: new[..., :ELEMENTS],
        )  # fmt: skip
        self.model = SimpleNamespace(measured=lambda waves: waves, read=self.read)
        self.chamber = SimpleNamespace(echo_amplitude=1e-4)
        self.slices, self.peak = np.repeat([0, 1, 2], POINTS // 3), 1.0
        self.nominal = self.read(self.known.expansion.coefficients)

    def complex_of(self, *shape: int):
        return (self._random.normal(size=shape) + 1j * self._random.normal(size=shape)) / np.sqrt(2.0)

    def read(self, waves):
        return waves.reshape(*waves.shape[:-2], WAVES) @ self._matrix.T

    def shifted(self, waves, size: float):
        """Readings of a device, exactly, whose points err by so many times the rms."""
        return self.read(waves) * np.exp(1j * size * SHIFT * self._ramp)

    def tolerances(self, waves):
        return (1j * SHIFT * self._ramp * self.read(waves))[None]

    def rooms(self, random, count):
        return np.zeros((count, FREQUENCIES, POINTS), complex), np.zeros((count, FREQUENCIES), complex)

    def reference_shapes(self):
        return np.zeros((1, FREQUENCIES, POINTS), complex)

    def lacking(self, told):
        return np.zeros((len(told), FREQUENCIES, 2, WAVES // 2), complex)

    def draws(self, random, count, noise, tolerances):
        raw = random.normal(size=(2, count, FREQUENCIES, POINTS)) * NOISE / np.sqrt(2.0)
        nothing = self.lacking(np.zeros(count))
        return Drawn(
            raw[0] + 1j * raw[1], random.normal(size=(count, tolerances)), np.zeros((count, FREQUENCIES)), nothing
        )


def device_of(causes: InventedCauses, deviation):
    return causes.known.expansion.coefficients + np.tensordot(deviation, causes.known.elements, axes=1)


def of_shape(waves, device):
    """By how much waves differ from a device's, rms, a common factor of each frequency apart."""
    axes = (-2, -1)
    factor = np.sum(device.conj() * waves, axis=axes) / np.sum(np.abs(device) ** 2, axis=axes)
    return np.sqrt(np.mean(np.abs(waves / factor[:, None, None] - device) ** 2))


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_a_shift_acts_on_the_faulty_device_and_not_on_its_reference(seed):
    causes = InventedCauses(seed)
    deviation = 0.5 * SPREAD * causes.complex_of(ELEMENTS)
    deviation[[2, 5]] = -1.0, np.exp(1j * np.deg2rad(120.0)) - 1.0
    device = device_of(causes, deviation)
    value = causes.shifted(device, 0.5) + NOISE * causes.complex_of(FREQUENCIES, POINTS)
    found = Estimator(causes, np.full(FREQUENCIES, NOISE), seed=4).of(value)
    assert found.faulty.elements == (2, 5)
    # Below the noise of one reading; with the shift of the reference it is nine times that.
    assert of_shape(found.coefficients, device) < NOISE


@pytest.mark.parametrize(("share_error", "doubted"), [(0.15, False), (0.02, True)])
def test_a_fault_is_explained_as_well_as_the_share_that_it_changes_is_known(share_error, doubted):
    """The reference errs by 15 % over the band in the share of an element that is misfed."""
    causes = InventedCauses(7, share_error)
    fault = np.exp(1j * np.deg2rad(110.0)) - 1.0
    lost = 0.15j * over_band(FREQUENCIES)[1][:, None, None] * causes.known.elements[3]
    device = device_of(causes, fault * (np.arange(ELEMENTS) == 3)) + fault * lost
    value = causes.read(device) + NOISE * causes.complex_of(FREQUENCIES, POINTS)
    found = Estimator(causes, np.full(FREQUENCIES, NOISE), seed=4).of(value)
    assert found.faulty.elements == (3,)
    assert bool(doubts_of(found)) == doubted
    assert of_shape(found.coefficients, device) < NOISE
    assert 2.0 * found.sigma[3] > 2.0 * share_error * abs(fault)


def test_a_unit_whose_elements_all_differ_is_doubted_by_that_alone():
    causes = InventedCauses(5)
    estimator = Estimator(causes, np.full(FREQUENCIES, NOISE), seed=4)
    noise = NOISE * causes.complex_of(FREQUENCIES, POINTS)
    turn = np.exp(2j * np.pi * np.arange(ELEMENTS) / ELEMENTS)
    said = {}
    for times in (0.8, 2.2):  # each below what makes an element faulty
        found = estimator.of(causes.read(device_of(causes, times * SPREAD * turn)) + noise)
        assert found.usual.shape == (ROOMS, len(MISFITS))
        assert found.faulty.elements == ()
        said[times] = doubts_of(found)
    assert said[0.8] == []
    assert [one.startswith(OF_ELEMENTS) for one in said[2.2]] == [True]


def test_the_phase_that_all_points_share_is_no_cause_and_their_level_is_one():
    causes = InventedCauses(6)
    readings, ramp = causes.nominal, np.arange(POINTS) - 0.5 * (POINTS - 1)
    even = np.sqrt(np.abs(readings[:1]) ** 2)  # a ramp over readings of one size turns them by nothing on average
    left = without_common_phase(np.stack([0.3j * readings, 0.2 * readings, (0.2 + 0.3j) * readings]), readings)
    np.testing.assert_allclose(left, np.stack([0.0 * readings, 0.2 * readings, 0.2 * readings]), atol=1e-12)
    same = 1j * ramp * readings / even
    np.testing.assert_allclose(without_common_phase(same[None], readings / even)[0], same, atol=1e-12)
