"""Charged particles on the sphere against the published energies of the Thomson problem."""

from __future__ import annotations

import numpy as np
import pytest

from colure.geometry.constant_density import charged_particles, energy

#: Least energies known (Thomson problem; tables of Wales and Ulker, Phys. Rev. B 74:212101, 2006, from memory).
LEAST = {4: 3.674234614, 6: 9.985281374, 12: 49.165253058, 20: 150.881568334, 32: 412.261274651, 100: 4448.350634331}


@pytest.mark.parametrize("count", list(LEAST))
def test_the_energy_is_the_least_one_known_or_a_minimum_beside_it(count):
    grid = charged_particles(count)
    found = energy(grid.theta, grid.phi)
    print(f"{count}: {found:.9f}, {found / LEAST[count] - 1:.1e} above")
    assert LEAST[count] * (1 - 1e-9) <= found <= LEAST[count] * (1 + 2e-4)
    assert grid.weights.sum() == pytest.approx(4.0 * np.pi)


def test_every_direction_stands_for_nearly_the_same_area():
    grid = charged_particles(266)
    assert grid.weights.max() / grid.weights.min() < 1.25


def test_counts_outside_the_limits_are_refused():
    with pytest.raises(ValueError, match="3, must be 4 to 3000"):
        charged_particles(3)
