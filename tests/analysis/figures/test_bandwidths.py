"""Bandwidths of figures: stretches between crossings, and intervals from the figures' own."""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.figures.bandwidths import bandwidth_of
from colure.model.evaluation import Span
from colure.model.figure import Figure


def over_frequency(values, expanded=0.1):
    return [
        Figure(
            name="gain_dbi",
            label="Peak gain",
            value=v,
            unit="dBi",
            frequency_hz=1e9 + 10e6 * i,
            lower=v - expanded,
            upper=v + expanded,
            definition="",
            source="",
        )
        for i, v in enumerate(values)
    ]


def test_the_3_db_bandwidth_of_a_parabola():
    """G = 20 - 3 (x/50 MHz)^2: 3 dB down at +-50 MHz, so 100 MHz; straight lines between samples every 10 MHz are exact there."""
    x = (np.arange(21) - 10) * 10.0
    figures = over_frequency(20 - 3 * (x / 50) ** 2)
    found = bandwidth_of(Span(figure="gain_dbi", drop_db=3.0), figures)
    assert found.value == pytest.approx(100.0, abs=1e-9) and found.unit == "MHz"
    assert found.lower <= 100.0 <= found.upper < 120.0


def test_limits_and_what_reaches_the_edge():
    figures = over_frequency([18, 19, 20, 19.9, 19.8], expanded=0.5)
    inside = bandwidth_of(Span(figure="gain_dbi", at_least=18.5), figures)
    assert inside.value == pytest.approx(35.0) and np.isinf(inside.upper)
    assert inside.lower == pytest.approx(30.0)  # the pessimistic end passes 18.5 dBi at 19 dBi
    never = bandwidth_of(Span(figure="gain_dbi", at_least=25), figures)
    assert never.value == 0.0 and never.lower == 0.0
    below = bandwidth_of(Span(figure="gain_dbi", at_most=19.5), over_frequency([20, 19, 18, 19, 20], expanded=0.01))
    assert below.value == pytest.approx(30.0, abs=1e-9)


def test_what_was_not_read_is_named():
    with pytest.raises(ValueError, match="read at 0 frequencies, needs at least 2; figures are gain_dbi"):
        bandwidth_of(Span(figure="xpd_db", drop_db=1.0), over_frequency([1, 2]))
    with pytest.raises(ValueError, match="one of drop_db, at_least, at_most"):
        Span(figure="gain_dbi")
