"""Many fields of one grid are transformed by matrices: the same coefficients as one field at a time, and those that made the field."""

from __future__ import annotations

import numpy as np
import pytest

from colure.geometry.conventions import mode_count
from colure.waves.many_fields import HIGHEST, pays
from colure.waves.transform import analysis, synthesis

RINGS, COLUMNS, ORDER = 12, 25, 9


@pytest.mark.parametrize("layout", ["with-poles", "without-poles", "gauss-legendre"])
@pytest.mark.parametrize("start", [0.0, 0.3])
def test_as_one_field_at_a_time(layout: str, start: float) -> None:
    random = np.random.default_rng(1)
    raw = random.normal(size=(2, 5, 4, 2, RINGS, COLUMNS))
    fields = raw[0] + 1j * raw[1]
    assert pays(20, rings=RINGS, order=ORDER)
    assert not pays(1, rings=RINGS, order=ORDER)
    made = analysis(fields, ORDER, layout=layout, phi_start=start)
    for some, coefficients in zip(fields.reshape(-1, *fields.shape[2:]), made.reshape(20, 2, -1), strict=True):
        alone = analysis(some, ORDER, layout=layout, phi_start=start)
        np.testing.assert_allclose(coefficients, alone, rtol=0.0, atol=1e-13 * np.abs(alone).max())


@pytest.mark.parametrize("columns", [2 * ORDER + 1, 2 * ORDER + 2, 40])
def test_gives_back_the_waves_that_made_the_fields(columns: int) -> None:
    random = np.random.default_rng(2)
    raw = random.normal(size=(2, 40, 2, mode_count(ORDER)))
    waves = raw[0] + 1j * raw[1]
    fields = synthesis(waves, np.linspace(0.0, np.pi, RINGS), columns, phi_start=0.7)
    np.testing.assert_allclose(analysis(fields, ORDER, phi_start=0.7), waves, rtol=0.0, atol=1e-12)


def test_large_orders_keep_their_memory() -> None:
    assert not pays(10_000, rings=HIGHEST + 3, order=HIGHEST + 1)
