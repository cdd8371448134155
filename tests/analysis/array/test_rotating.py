"""Elements from power alone, held against their own vectors; the relations of Mano and Katagi (1982) and their ambiguity."""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.array.rotating import beyond_the_range, chosen, relative, solutions, turned_elements
from colure.geometry.conventions import amplitude_db
from colure.geometry.rotations import RigidMotion
from colure.model.device import Elements
from colure.twin.antennas import huygens, probe_ports
from colure.twin.sources import Cluster, transmission

R95 = 1.96


def powers(values, steps, random=None, scatter=0.0):
    """Return (element, turn, power) of the sum of all while one element turns: superposition, nothing else."""
    turn = np.arange(steps) * 2.0 * np.pi / steps
    rows = [(n, t, abs(values.sum() + v * (np.exp(1j * t) - 1.0)) ** 2) for n, v in enumerate(values) for t in turn]
    element, turns, power = (np.array(part) for part in zip(*rows, strict=True))
    if random is not None:
        power = power * (1.0 + scatter * random.normal(size=power.size))
    return element.astype(int), turns, power


def test_the_published_relations():
    """k = G / sqrt(1 + 2 G cos D0 + G^2), tan X = sin D0 / (cos D0 + G) (Mano and Katagi 1982), worked by hand:

    whole field 1, element 0.5 at 90 deg. Others: 1 - 0.5j, Y = sqrt(1.25), cos X = 0, sin X = 1: tan D0 = 1 / -0.5, D0 = 116.565 deg.
    """
    y, start = np.sqrt(1.25), np.deg2rad(116.56505117707799)
    mean, swing = y**2 + 0.25, 2 * 0.5 * y
    weaker, stronger = solutions(mean, swing * np.cos(start), -swing * np.sin(start))
    assert weaker == pytest.approx(0.5j, abs=1e-12)
    # The other solution exchanges the element and all others: k' = Y.
    assert abs(stronger) == pytest.approx(y, abs=1e-12)
    assert solutions(1.0, 0.0, 0.0) == (0.0, 1.0)  # a dead element: no swing


@pytest.mark.parametrize("count", [3, 16, 64])
def test_power_alone_gives_every_element(count):
    random = np.random.default_rng(count)
    values = random.uniform(0.5, 1.5, count) * np.exp(1j * np.deg2rad(random.uniform(-40.0, 40.0, count)))
    best = chosen(turned_elements(*powers(values, 8, random, 1e-7)))
    assert best.adds_up and not best.undecided.size
    assert np.allclose(relative(best.value), relative(values), atol=1e-4)


def test_an_element_stronger_than_all_others_is_told_by_the_sum():
    values = np.array([0.2 + 0.1j, 2.0, 0.3j, -0.1 + 0.2j])
    best = chosen(turned_elements(*powers(values, 8, np.random.default_rng(1), 1e-6)))
    assert best.adds_up and np.allclose(relative(best.value), relative(values), atol=1e-3)


def test_two_elements_cannot_be_told_apart():
    """Of two elements each is all others of the other one: exchanged, they give the same powers (derivable)."""
    values = np.array([1.0, 0.6 * np.exp(0.5j)])
    best = chosen(turned_elements(*powers(values, 8, np.random.default_rng(1), 1e-5)))
    assert best.undecided.tolist() == [0, 1]


def test_elements_that_were_left_out_are_missed():
    values = np.exp(1j * np.deg2rad(np.random.default_rng(2).uniform(-30.0, 30.0, 8)))
    element, turn, power = powers(values, 8, np.random.default_rng(3), 1e-4)
    some = element < 6
    assert not chosen(turned_elements(element[some], turn[some], power[some])).adds_up


@pytest.mark.parametrize("steps", [8, 16])
def test_errors_are_as_the_scatter_of_the_power_says(steps):
    """1000 elements: 95 % inside; and a phase error of sqrt(2 / n) s / (2 k) for a weak element (least squares, derivable)."""
    inside, errors, random = np.zeros(2), [], np.random.default_rng(steps)
    for _ in range(50):
        values = random.uniform(0.5, 1.5, 20) * np.exp(1j * np.deg2rad(random.uniform(-60.0, 60.0, 20)))
        found = turned_elements(*powers(values, steps, random, 2e-3))
        off = found.value / (values / values.sum()) - 1.0
        size = np.sqrt(np.diagonal(found.covariance, axis1=1, axis2=2))
        inside += np.count_nonzero(np.abs(np.stack([off.real, off.imag], axis=1)) <= R95 * size, axis=0)
        errors.append(off.imag * np.abs(values / values.sum()))
    assert (inside / 1000 >= 0.94 - 1.65 * np.sqrt(0.95 * 0.05 / 1000)).all()
    assert np.sqrt(np.mean(np.square(errors))) == pytest.approx(2e-3 * np.sqrt(2.0 / steps) / 2.0, rel=0.15)


def test_too_few_turns_and_no_power_are_refused():
    element, turn, power = powers(np.array([1.0, 0.5, 0.3j]), 3)
    with pytest.raises(ValueError, match="element 0: 3 different turns, needs at least 4"):
        turned_elements(element, turn, power)
    with pytest.raises(ValueError, match="must be above 0"):
        turned_elements(*powers(np.array([1.0, 0.5]), 8)[:2], np.zeros(16))


def test_elements_at_the_probe_are_turned_into_those_far_away():
    """Dipoles of the simulated chamber, exact at every distance: 5 x 3 at 10 GHz, 0.6 m away and 20 deg aside."""
    frequency, range_m = np.array([10e9]), 0.6
    place = Elements(rows=5, columns=3, pitch_mm=15.0).places_m(np.array([0.0, 0.0, 0.01]))
    assert place[1] == pytest.approx([0.0, -0.03, 0.01]) and place[3] == pytest.approx([-0.015, -0.015, 0.01])
    angle = np.deg2rad(20.0)
    direction = np.array([np.sin(angle), 0.0, np.cos(angle)])
    turn = np.array([[np.cos(angle), 0.0, np.sin(angle)], [0.0, 1.0, 0.0], [-np.sin(angle), 0.0, np.cos(angle)]])
    probe = probe_ports(frequency, ring_m=1e-3, cross_polar_db=-200.0)[0]
    # The probe looks back along -z of its own frame once it is turned about y by half a turn.
    back = turn @ np.diag([-1.0, 1.0, -1.0])
    placed = probe.moved(RigidMotion(back, range_m * direction))
    electric, magnetic = huygens((1.0, 0.0), np.zeros(1), 0.9)
    read, far = [], []
    for one in place:
        element = Cluster(frequency, one[None], electric, magnetic, np.ones((1, 1), complex), np.ones(1))
        read.append(transmission(element, placed, source_power=element.power(), receiver_power=probe.power())[0])
        far.append(element.far_field(direction[None])[0, 0] @ turn[:, 0])
    k = float(2.0 * np.pi * frequency[0] / 299_792_458.0)
    near, true = np.array(read), relative(np.array(far))
    raw = np.angle(relative(near) / true)
    left = relative(near * beyond_the_range(place, direction, range_m=range_m, wavenumber=k)) / true
    # Phases about their mean: what is common to all is no error of a calibration.
    assert np.rad2deg(np.ptp(raw)) > 5.0
    assert np.rad2deg(np.ptp(np.angle(left))) < 0.05 and np.abs(amplitude_db(np.abs(left))).max() < 0.05
