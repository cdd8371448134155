"""Decibels and wavenumbers against values that every handbook prints."""

from __future__ import annotations

import numpy as np
import pytest

from colure.geometry.conventions import amplitude_db, amplitude_from_db, power_db, power_from_db, wavenumber
from colure.geometry.polarization import Basis, basis_matrix, to_basis


@pytest.mark.parametrize(("level_db", "power"), [(0.0, 1.0), (3.0103, 2.0), (10.0, 10.0), (-30.0, 1e-3), (6.9897, 5.0)])
def test_decibels_are_ten_times_the_logarithm_of_power(level_db, power):
    """IEC 60027-3: level of a power quantity 10 lg(P/P0) dB, of a field quantity 20 lg(F/F0) dB."""
    np.testing.assert_allclose(power_from_db(level_db), power, rtol=1e-5)
    np.testing.assert_allclose(amplitude_from_db(2.0 * level_db), power, rtol=1e-5)
    np.testing.assert_allclose(10.0 * np.log10(power_from_db(level_db)), level_db, atol=1e-12)


def test_a_wavelength_at_24_ghz_is_12_49_mm():
    """c = 299 792 458 m/s exactly (SI brochure, 9th edition)."""
    np.testing.assert_allclose(2.0 * np.pi / wavenumber(24e9), 12.491352416667e-3, rtol=1e-12)


def test_levels_have_the_floor_that_is_asked_for():
    """20 log10 2 = 6.0206 dB, 10 log10 2 = 3.0103 dB; a floor of -60 dB is 1e-3 in amplitude and 1e-6 in power."""
    assert amplitude_db([2j, 0.0], least=1e-3) == pytest.approx([6.0206, -60.0], abs=1e-4)
    assert power_db([2.0, 0.0, -1.0], least=1e-6) == pytest.approx([3.0103, -60.0, -60.0], abs=1e-4)
    assert amplitude_db(0.0) == power_db(0.0) == -np.inf


@pytest.mark.parametrize("basis", list(Basis))
def test_no_basis_changes_the_power(basis):
    """Each pair of unit vectors is orthonormal, so the matrix times its adjoint is the unit matrix."""
    matrix = basis_matrix(basis, theta=[0.4, 1.5, 2.9], phi=[0.3, -2.0, 4.0], slant=0.7)
    assert matrix @ matrix.conj().swapaxes(-1, -2) == pytest.approx(np.broadcast_to(np.eye(2), (3, 2, 2)), abs=1e-14)


def test_a_wave_whose_second_component_lags_a_quarter_period_is_right_handed():
    """IEEE Std 145 with exp(+jwt): unit power in e_theta, e_phi = (1, -j) / sqrt 2 is all right-hand."""
    half = np.sqrt(0.5)
    right, left = to_basis(half, -1j * half, Basis.CIRCULAR, theta=0.4, phi=0.3)
    assert abs(right) == pytest.approx(1.0, abs=1e-15) and abs(left) == pytest.approx(0.0, abs=1e-15)
