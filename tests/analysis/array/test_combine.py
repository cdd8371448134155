"""States added up to elements and beams, held against closed-form fields of random simulated arrays; intervals by counting."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.linalg import hadamard as sylvester

from colure.analysis.array.combine import (
    Answers,
    CombinedErrors,
    answers_alone,
    combine,
    elements_alone,
    levels,
    misfit,
    spare_noise,
)
from colure.geometry.conventions import amplitude_db
from colure.model.chamber import SimulatedChamber
from colure.model.commands import Commands
from colure.planning.codes import hadamard, joined, next_order, orthogonal, rotated, toggled
from colure.twin.antennas import PanelFlaws, PanelMake, panel
from colure.twin.states import answered, told

DB = np.log(10.0) / 20.0
#: Share of a circular normal error inside r standard deviations (complex modulus): 1 - exp(-r^2).
R95 = np.sqrt(-np.log(0.05))


def elements_of(rows, columns, *, seed, ghz=24.0, directions=40):
    """Return a random panel, and every element's field along x and y (element, direction * 2) in random front directions."""
    random = np.random.default_rng(seed)
    wave = 299_792_458.0 / (ghz * 1e9)
    device = panel(
        np.array([ghz * 1e9]), elements=rows, columns=columns, pitch_m=wave * random.uniform(0.45, 0.8),
        flaws=PanelFlaws(None, None), make=PanelMake(taper=random.uniform(0.0, 0.6), error=0.1), seed=seed,
        centre_m=tuple(random.uniform(-0.03, 0.03, 3)),
    )  # fmt: skip
    d = random.normal(size=(directions, 3))
    d[:, 2] = np.abs(d[:, 2])
    d /= np.linalg.norm(d, axis=1, keepdims=True)
    fields = [told(device, row).far_field(d)[0, :, :2].reshape(-1) for row in np.eye(rows * columns)]
    return device, d, np.array(fields)


def phases(rows, columns, count, random):
    """Return beams by 5-bit phase shifters towards random directions (beam, element)."""
    y, x = (grid.ravel() for grid in np.meshgrid(np.arange(rows), np.arange(columns), indexing="ij"))
    u, v = random.uniform(-2.0, 2.0, (2, count, 1))
    return np.exp(1j * np.round((u * x + v * y) / (2 * np.pi / 32)) * (2 * np.pi / 32))


def noise(random, shape, sigma):
    return sigma * (random.normal(size=shape) + 1j * random.normal(size=shape)) / np.sqrt(2.0)


@pytest.mark.parametrize("order", [1, 2, 4, 8, 12, 20, 24, 32, 44, 48, 60, 64, 68, 72, 80, 128])
def test_hadamard_matrices(order):
    """H H' = n I (definition). Orders of powers of two span what scipy.linalg.hadamard's do."""
    matrix = hadamard(order)
    assert np.array_equal(matrix @ matrix.T, order * np.eye(order)) and (matrix[:, 0] == 1.0).all()
    assert (matrix[0] == 1.0).all()
    if order & (order - 1) == 0:
        assert np.array_equal(np.sort(matrix, axis=0), np.sort(sylvester(order), axis=0))


def test_the_next_order_leaves_the_column_of_ones_free():
    assert [next_order(n) for n in (3, 4, 7, 16, 64)] == [4, 8, 8, 20, 68]
    assert hadamard(6) is None and hadamard(28) is None  # 28: none by these constructions


def test_states_add_up():
    """What goes in is the same in every state: the field of a state is the sum of its elements' (superposition)."""
    device, d, fields = elements_of(3, 4, seed=5)
    row = noise(np.random.default_rng(1), 12, 1.0)
    assert np.allclose(told(device, row).far_field(d)[0, :, :2].reshape(-1), row @ fields, atol=1e-12)
    assert np.allclose(device.far_field(d)[0, :, :2].reshape(-1), fields.sum(axis=0), atol=1e-12)


@pytest.mark.parametrize("seed", [1])
def test_64_elements_to_50_db(seed):
    """64 and 68 code states, noise 60 dB below each state's rms sweep: every element is known to -50 dB and better.

    N orthogonal states average the noise N times (derivable): 1e-3 of a state is 1e-3 of an element.
    """
    _, _, fields = elements_of(8, 8, seed=seed)
    random = np.random.default_rng(seed)
    for codes in (orthogonal(64, order=64), orthogonal(64)):
        clean = codes.weight @ fields
        sigma = 1e-3 * np.sqrt(np.mean(np.abs(clean) ** 2))
        sweeps = clean + noise(random, clean.shape, sigma)
        found = elements_alone(codes.weight, CombinedErrors(noise=sigma, level=levels(codes.weight, sweeps, sigma)))
        error = np.linalg.norm(found.states @ sweeps - fields) / np.linalg.norm(fields)
        assert amplitude_db(error) < -50.0
        expected = sigma * np.linalg.norm(found.noise_factor) / np.sqrt(np.mean(np.sum(np.abs(fields) ** 2, axis=0)))
        assert error == pytest.approx(expected, rel=0.1)


def test_errors_of_commands_spoil_no_element_while_the_column_of_ones_is_free():
    """What no command turns adds up over 64 elements; 64 states put it on element 0, 68 on none, and the statement says so."""
    _, _, fields = elements_of(8, 8, seed=11)
    truth = SimulatedChamber(seed=4, command_error_db=0.3, command_error_deg=3.0)
    for order, good in ((64, False), (68, True)):
        codes = orthogonal(64, order=order)
        answers = answered(codes, truth)
        sweeps = answers @ fields
        errors = CombinedErrors(
            noise=1e-6, level=levels(codes.weight, sweeps, 0.0), amplitude=0.3 * DB, phase=np.deg2rad(3.0)
        )
        found = elements_alone(codes.weight, errors)
        # An element is half the difference of its two answers: what its command turns.
        plus, minus = (np.array([row[np.argmax(c == s)] for row, c in zip(answers.T, codes.weight.T,
            strict=True)]) for s in (1, -1))  # fmt: skip
        own = np.where((codes.weight == -1).any(axis=0), 0.5 * (plus - minus), plus)
        off = np.linalg.norm(found.states @ sweeps - own[:, None] * fields, axis=1) / np.linalg.norm(fields, axis=1)
        stated = np.sqrt(np.abs(found.shares()[0]) ** 2 @ errors.level[found.answers.element] ** 2) * errors.command
        assert (amplitude_db(off[0]) < -50.0) == good and amplitude_db(off[1:]).max() < -50.0
        assert (amplitude_db(stated / errors.level[0]) < -50.0) == good


@pytest.mark.parametrize("shape", [(2, 2), (1, 7), (4, 4)])
def test_beams_lie_within_their_intervals(shape):
    """1200 beams of random arrays with random errors of commands, by codes, toggling, and codes of two bits: 95 % by definition."""
    count, inside, total = shape[0] * shape[1], 0, 0
    random = np.random.default_rng(count)
    makers = (orthogonal(count), toggled(count), orthogonal(count, (1j, -1.0)), toggled(count, (0.0,)))
    _, _, fields = elements_of(*shape, seed=count)
    for draw in range(50):
        codes = makers[draw % len(makers)]
        truth = SimulatedChamber(seed=draw, command_error_db=0.2, command_error_deg=2.0)
        book = Commands(tuple(f"b{i}" for i in range(8)), phases(*shape, 8, random))
        every = answered(joined(codes, book), truth)
        sigma = 0.003 * np.sqrt(count) * np.sqrt(np.mean(np.abs(fields) ** 2))
        clean = every[: len(codes.names)] @ fields
        sweeps = clean + noise(random, clean.shape, sigma)
        errors = CombinedErrors(
            noise=sigma, level=levels(codes.weight, sweeps, sigma), amplitude=0.2 * DB, phase=np.deg2rad(2.0)
        )
        found = combine(codes.weight, book.weight, errors)
        alone = elements_alone(codes.weight, errors).states @ sweeps
        off = found.states @ sweeps - every[len(codes.names) :] @ fields
        # One direction each: a beam's errors of commands are the same in all of them.
        where = random.integers(fields.shape[1], size=8)
        for beam, place in enumerate(where):
            own = np.abs(found.shares()[beam] * alone[found.answers.element, place]) ** 2
            spread = np.sqrt(errors.command**2 * own.sum() + (sigma * found.noise_factor[beam]) ** 2)
            inside += abs(off[beam, place]) <= R95 * spread
            total += 1
    assert inside / total >= 0.94 - 1.65 * np.sqrt(0.95 * 0.05 / total)  # one-sided, by so many beams


def test_a_beam_of_commands_that_were_all_measured_has_no_error_of_commands():
    """Answers that occurred in the codes are known, whatever they are: only noise is left (derivable)."""
    codes, random = orthogonal(12), np.random.default_rng(3)
    beam = np.sign(random.normal(size=(1, 12))).astype(complex)
    errors = CombinedErrors(noise=1e-7, level=np.ones(12), amplitude=0.05, phase=0.1)
    found = combine(codes.weight, beam, errors)
    assert np.linalg.norm(found.left) < 0.01
    tilted = combine(codes.weight, beam * np.exp(0.4j), errors)
    # A new command: its own error, and half that of the element's mean (two answers).
    assert np.linalg.norm(tilted.left) == pytest.approx(np.sqrt(12 * 1.5), rel=1e-3)


def test_noise_and_contradictions_are_told_from_spare_states():
    _, _, fields = elements_of(3, 4, seed=8)
    codes, random = orthogonal(12), np.random.default_rng(1)
    truth = SimulatedChamber(seed=2, command_error_db=0.2, command_error_deg=2.0)
    sigma = 1e-3 * np.abs(fields).mean()
    sweeps = answered(codes, truth) @ fields
    sweeps = sweeps + noise(random, sweeps.shape, sigma)
    found, freedom = spare_noise(codes.weight, sweeps)
    assert found == pytest.approx(sigma, rel=4.0 / np.sqrt(2 * freedom))
    level = levels(codes.weight, sweeps, sigma)
    told_right = misfit(
        codes.weight, sweeps, CombinedErrors(noise=sigma, level=level, amplitude=0.2 * DB, phase=np.deg2rad(2.0))
    )
    assert told_right[0] < 2.0 and told_right[1] == len(codes.names) - 12
    # One state in which the array did not take its command.
    sweeps[5] = sweeps[4]
    assert (
        misfit(
            codes.weight, sweeps, CombinedErrors(noise=sigma, level=level, amplitude=0.2 * DB, phase=np.deg2rad(2.0))
        )[0]
        > 2.0
    )
    assert misfit(np.eye(3), sweeps[:3], CombinedErrors(noise=sigma, level=np.ones(3)))[1] == 0
    assert spare_noise(toggled(12).weight, sweeps[:13]) is None


def test_elements_that_no_state_tells_apart_are_named():
    weight = np.array([[1, 1, 1], [1, 1, -1], [-1, -1, 1]], complex)
    with pytest.raises(ValueError, match="do not tell elements 0, 1 apart; 3 independent states"):
        elements_alone(weight, CombinedErrors(noise=1e-3, level=np.ones(3)))


def bits(element, answers, codes, actual, fields, found, sweeps):
    """Return (estimated, true, stated rms error) of each answer over its element and command."""
    e = fields[element]
    own = np.flatnonzero(answers.element == element)
    got = np.array([np.vdot(e, found.states[i] @ sweeps) / np.vdot(e, e) / answers.told[i] for i in own])
    true = np.array([actual[np.argmax(answers.chosen[:, i]), element] / answers.told[i] for i in own])
    across = np.abs(fields.conj() @ e / np.vdot(e, e)) ** 2
    shares = np.abs(found.shares()[own]) ** 2 @ across[answers.element]
    return got, true, np.sqrt(shares)


@pytest.mark.parametrize("others", [(1j, -1.0), (np.exp(0.25j * np.pi), 1j, -1.0, 0.0)], ids=["bits", "bits and off"])
def test_every_bit_of_every_element_is_calibrated(others):
    """With states in which elements are off every bit is known to 0.1 dB and 1 deg; without, to what the declared errors let expect."""
    inside, total = 0, 0
    for seed in range(12):
        _, _, fields = elements_of(2, 3, seed=seed)
        codes, random = orthogonal(6, others), np.random.default_rng(seed)
        actual = answered(codes, SimulatedChamber(seed=seed, command_error_db=0.3, command_error_deg=4.0))
        sigma = 1e-3 * np.sqrt(6) * np.abs(fields).mean()
        sweeps = actual @ fields
        sweeps = sweeps + noise(random, sweeps.shape, sigma)
        errors = CombinedErrors(
            noise=sigma, level=levels(codes.weight, sweeps, sigma), amplitude=0.3 * DB, phase=np.deg2rad(4.0)
        )
        found, answers = answers_alone(codes.weight, errors), Answers.of(codes.weight)
        for element in range(6):
            got, true, shares = bits(element, answers, codes, actual, fields, found, sweeps)
            if 0.0 in others:
                assert np.abs(amplitude_db(np.abs(got / true))).max() < 0.1
                assert np.abs(np.rad2deg(np.angle(got / true))).max() < 1.0
            own = answers.element == element
            heard = sigma * found.noise_factor[own] / np.linalg.norm(fields[element])
            inside += np.count_nonzero(np.abs(got - true) <= R95 * np.hypot(errors.command * shares, heard))
            total += got.size
    assert inside / total >= 0.94 - 1.65 * np.sqrt(0.95 * 0.05 / total)


def test_one_element_at_a_time():
    """Toggling needs one state more than elements, a full turn of each in eight steps seven times as many and one."""
    assert toggled(6).weight.shape == (7, 6) and rotated(6, 8).weight.shape == (1 + 6 * 7, 6)
    assert np.count_nonzero(toggled(6, (0.0, -1.0)).weight != 1.0) == 12
