"""Control charts against the worked examples of the NIST/SEMATECH e-Handbook, and their false alarms by counting."""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.compare.control import ALLOWANCE, DECISION, LEAST_RUNS, control_chart, cumulative_sums

#: Flow rate of batches: NIST/SEMATECH e-Handbook, 6.3.2.2 (numbers from memory; they agree with each other).
FLOW = (49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1)
#: NIST/SEMATECH e-Handbook, 6.3.2.3: target 325, k = 0.3175, h = 4.1959 (numbers from memory; they agree with each other).
CUSUM = (324.925, 324.675, 324.725, 324.350, 325.350, 325.225, 324.125, 324.525, 325.225, 324.600, 324.625, 325.150, 328.325, 327.250,
         327.825, 328.500, 326.675, 327.775, 326.875, 328.350)  # fmt: skip
RISING_FROM_13 = (3.01, 4.94, 7.45, 10.63, 11.99, 14.44, 16.00, 19.04)


def test_the_limits_of_single_values_are_the_handbooks():
    found = control_chart(FLOW, baseline=len(FLOW))
    assert found.centre == pytest.approx(50.81, abs=5e-3)
    assert found.high == pytest.approx(55.8041, abs=5e-5) and found.low == pytest.approx(45.8159, abs=5e-5)
    assert found.outside == []


def test_the_cumulative_sums_are_the_handbooks():
    rising, falling = cumulative_sums(np.array(CUSUM), target=325.0, allowance=0.3175)
    assert rising[12:] == pytest.approx(RISING_FROM_13, abs=6e-3)
    # Nothing before the 13th batch goes beyond the decision interval; the 14th does.
    assert max(rising[:13].max(), falling.max()) < 4.1959 < rising[13]


def test_false_alarms_come_as_rarely_as_stated_and_a_shift_of_one_deviation_within_about_ten_runs():
    """ARL of k = 0.5, h = 5, two-sided: 465 without a shift, 10.4 with one of 1 sigma (Siegmund's approximation, in closed form)."""

    def siegmund(shift: float) -> float:
        d, b = shift - ALLOWANCE, DECISION + 1.166
        return (np.exp(-2.0 * d * b) + 2.0 * d * b - 1.0) / (2.0 * d * d)

    random = np.random.default_rng(5)

    def mean_length(shift: float, runs: int) -> float:
        up, down, alive, length = np.zeros(runs), np.zeros(runs), np.ones(runs, bool), np.zeros(runs)
        while np.any(alive):
            x = shift + random.standard_normal(runs)
            up, down = np.maximum(0.0, up + x - ALLOWANCE), np.maximum(0.0, down - x - ALLOWANCE)
            length += alive
            alive &= (up <= DECISION) & (down <= DECISION)
        return float(length.mean())

    assert mean_length(0.0, 2000) == pytest.approx(siegmund(0.0) / 2.0, rel=0.1)
    assert siegmund(0.0) / 2.0 == pytest.approx(465.0, rel=0.02)
    assert mean_length(1.0, 2000) == pytest.approx(siegmund(1.0), rel=0.1)


@pytest.mark.parametrize(
    ("values", "baseline", "words"),
    [
        (FLOW[:5], 5, f"from {LEAST_RUNS} to 5 runs"),
        (FLOW, 11, "from 8 to 10 runs"),
        ((1.0,) * 9, 9, "no spread"),
        ((*FLOW, float("nan")), 10, "no value of this figure"),
    ],
)
def test_what_sets_no_limits_is_refused(values, baseline, words):
    with pytest.raises(ValueError, match=words):
        control_chart(values, baseline=baseline)
