"""A reference horn that stands turned: the probe is blamed, and the device's polarization turns with the correction."""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.findings.declared import _impure


def leak(deg: float, scatter: float, *, phase_deg: float = 0.0, count: int = 5):
    """What a horn turned by so much shows of the probe, beside noise (frequency,)."""
    random = np.random.default_rng(3)
    noise = scatter * (random.normal(size=count) + 1j * random.normal(size=count))
    return np.tan(np.deg2rad(deg)) * np.exp(1j * np.deg2rad(phase_deg)) * (1.0 + noise)


@pytest.mark.parametrize("deg", [-3.0, 5.0])
def test_a_turn_bars_what_it_turns_and_nothing_else(deg):
    one = _impure([leak(deg, 0.02)], float(np.tan(np.deg2rad(abs(deg)))), -40.0)
    assert one.severity == "not to be used" and set(one.figures) == {"xpd_db", "xpd_worst_db", "tilt_deg"}
    assert f"turned, by {abs(deg):.1f} deg" in one.text and "Nobody can tell" in one.text


@pytest.mark.parametrize("seen", [leak(5.0, 0.02, phase_deg=90.0), leak(5.0, 0.4), leak(5.0, 0.02, count=2)])
def test_an_impurity_with_a_phase_or_that_wanders_or_too_few_frequencies_is_looked_at(seen):
    one = _impure([seen], 0.0875, -40.0)
    assert one.severity == "look" and "turned by 5.0 deg would show as much" in one.text
