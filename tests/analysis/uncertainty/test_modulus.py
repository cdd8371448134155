"""Intervals of moduli are found by a coarse and a fine search: a plain one over every size, one question at a time, is held against it."""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.uncertainty import modulus
from colure.geometry.conventions import ComplexArray, FloatArray


def plainly(ratio: ComplexArray, errors: ComplexArray, tail: float = 0.025) -> tuple[float, float]:
    """The same inversion as its words say it: every size of the grid, every draw, nothing left out."""
    measured = float(np.sqrt(np.max(np.sum(np.abs(ratio) ** 2, axis=-1))))
    added = np.sum(np.abs(errors) ** 2, axis=-1)
    shape = modulus._shape(ratio, added.mean(axis=0))
    sigma = float(np.sqrt(0.5 * added[:, int(np.argmax(np.linalg.norm(shape, axis=-1)))].mean()))
    measured = max(measured, float(np.quantile(np.sqrt(added.max(axis=-1)), modulus.LUCKY)))
    tried = np.unique(np.maximum(measured + sigma * modulus.TRIED, 0.0))

    def above(form: ComplexArray) -> FloatArray:
        shares = []
        for size in tried:
            true = np.stack(
                [_likely(ratio[i], errors[:, i], size * np.linalg.norm(form[i])) for i in range(len(ratio))]
            )
            seen = np.max(np.sum(np.abs(true + errors) ** 2, axis=-1), axis=1)
            shares.append(float(np.mean(seen >= measured**2)))
        return np.array(shares)

    low_share = above(modulus._rivals(shape, measured, sigma))
    low = 0.0 if low_share[0] >= tail else float(np.interp(tail, np.maximum.accumulate(low_share), tried))
    below = 1.0 - (low_share if len(ratio) == 1 else above(modulus._outsiders(shape, measured, sigma)))
    share = below / max(float(below[0]), 1.0 / len(errors))
    high = float(np.interp(-tail, -np.minimum.accumulate(share), tried))
    return min(low, measured), max(high, measured)


def _likely(ratio: ComplexArray, errors: ComplexArray, size: float) -> ComplexArray:
    """Return the field of a modulus from which the measured one is most likely: (1 - lambda C)^-1 x, lambda by halving."""
    covariance = np.einsum("di,dj->ij", errors, np.conj(errors)) / len(errors)
    variance, axes = np.linalg.eigh(covariance)
    share = np.clip(variance / variance[-1], modulus.LEAST_SHARE, 1.0)
    along = axes.conj().T @ ratio
    low, high = -modulus.MOST_GROWN, modulus.MOST_GROWN
    for _ in range(60):
        grown = np.exp(0.5 * (low + high))
        found = along * grown / (grown * (1.0 - share) + share)
        low, high = (low, 0.5 * (low + high)) if np.linalg.norm(found) > size else (0.5 * (low + high), high)
    return np.asarray(axes @ found * (size / max(float(np.linalg.norm(found)), 1e-300)))


def questions() -> list[tuple[ComplexArray, ComplexArray]]:
    """Return measured fields and their errors: one and several, one component and two, strong, weak and unlike errors."""
    random = np.random.default_rng(20)

    def drawn(*shape: int) -> ComplexArray:
        return np.asarray(random.normal(size=shape) + 1j * random.normal(size=shape))

    sizes = [(1, 1, 0.02), (1, 2, 0.3), (6, 1, 0.05), (5, 2, 0.02), (4, 2, 0.5), (1, 1, 3.0)]
    out = []
    for count, components, size in sizes:
        unlike = np.array([1.0, 0.2])[:components]
        out.append((0.3 * drawn(count, components), size * unlike * drawn(200, count, components)))
    return out


def test_the_search_ends_where_a_plain_one_over_every_size_ends() -> None:
    """Within 1e-6 of the interval, asked together and asked alone."""
    asked = questions()
    together = modulus.modulus_intervals(asked)
    for (ratio, errors), found in zip(asked, together, strict=True):
        expected = plainly(ratio, errors)
        width = expected[1] - expected[0]
        assert found == pytest.approx(expected, abs=1e-6 * width)
        assert modulus.modulus_interval(ratio, errors) == pytest.approx(found, abs=1e-6 * width)


@pytest.mark.parametrize("measured", [0.3, 0.1, 0.03, 0.001])
def test_a_modulus_that_errors_happened_to_cancel_is_bounded_by_the_errors(measured: float) -> None:
    """What is measured far below its errors bounds the true modulus at 2.72 of their standard deviations, however small it came out.

    The share of true fields x that leave so little, over that of none at all, is exp(-x^2/2) for small moduli (distribution of Rice): 2.5 %
    at 2.716. An end from draws lies above it, as the modulus that stands for smaller ones does, and never at what was measured.
    """
    random = np.random.default_rng(7)
    ends = []
    for _ in range(20):
        errors = random.normal(size=(1000, 1, 1)) + 1j * random.normal(size=(1000, 1, 1))
        low, high = modulus.modulus_interval(np.array([[measured + 0j]]), errors)
        assert low == 0.0
        ends.append(high)
    assert min(ends) > 2.4 and 2.7 < np.mean(ends) < 3.3


def test_without_errors_a_modulus_is_what_was_measured() -> None:
    """Nothing to search for, among others that are searched for."""
    quiet = (np.array([[0.3 + 0.4j]]), np.zeros((50, 1, 1), complex))
    assert modulus.modulus_intervals([questions()[0], quiet])[1] == (0.5, 0.5)
