"""Level and phase that follow the air: the row of the logged temperature holds what they do to every figure that they matter to.

The drift is injected into simulated campaigns; what the row alone promises is held against the campaign without it. A 95 %
interval holds 95 of 100 (JCGM 100:2008, 6.2).
"""

from __future__ import annotations

import numpy as np
import pytest
import xarray as xr
from pydantic import ValidationError

from colure.errors import InputError
from colure.model.campaign import Campaign
from colure.model.conditions import kelvins
from tests.analysis.uncertainty.test_chain_causes import _changed, _held, _on_the_fly

PER_K = {
    "temperature": {"level_db_per_k": 0.35, "phase_deg_per_k": 9.0, "period_s": 300.0},
    "axes": {"interlock": None},
    "instruments": [{"role": "receiver"}, {"role": "axis-controller"}, {"role": "sensor", "name": "air"}],
}


@pytest.mark.nightly
def test_the_row_of_a_logged_temperature_holds_the_drift(tmp_path):
    """Four drawn chambers: at least 0.85 of all figures inside, which one row of half the length does not hold."""
    ratios, sizes, names = _held(tmp_path, "temperature", _changed(PER_K), 4)
    some = ratios[np.isfinite(ratios)]
    assert some.size > 40 and np.mean(some <= 1.0) >= 0.85
    assert np.median(some) <= 0.7 and sizes[:, names.index("gain_dbi")].max() > 0.0


@pytest.mark.nightly
@pytest.mark.parametrize("scenario", [_changed, _on_the_fly])
def test_forty_drifts(scenario, tmp_path):
    ratios, _, _ = _held(tmp_path, "temperature", scenario(PER_K), 40)
    some = ratios[np.isfinite(ratios)]
    print(f"{100 * np.mean(some <= 1.0):.1f} % of {some.size} inside, median {np.median(some):.2f}")
    assert np.mean(some <= 1.0) >= 0.90 and 0.1 <= np.median(some) <= 0.7


def record(**quantities: list[float]) -> xr.Dataset:
    values = np.array(list(quantities.values())).T
    return xr.Dataset(
        {"conditions": (("point", "sensor"), values), "time_s": ("point", [0.0, 10.0, 30.0])},
        coords={"sensor": [f"air.{name}" for name in quantities]},
    )


def test_what_was_lost_is_read_between_its_neighbours_and_a_temperature_that_nobody_logged_is_refused():
    assert kelvins(record(temperature_c=[20.0, np.nan, 23.0], humidity_percent=[40.0, 41.0, 42.0])).tolist() == [
        20,
        21,
        23,
    ]
    with pytest.raises(InputError, match=r"must be one temperature of the run's sensors, logged here: none"):
        kelvins(record(humidity_percent=[40.0, 41.0, 42.0]))
    with pytest.raises(InputError, match=r"air\.temperature_c, air\.temperature_k"):
        kelvins(record(temperature_c=[20.0, 20, 20], temperature_k=[293.0, 293, 293]))
    with pytest.raises(InputError, match="was lost at every point"):
        kelvins(record(temperature_c=[np.nan] * 3))


def test_a_coefficient_without_a_sensor_is_refused(tmp_path):
    with pytest.raises((InputError, ValidationError), match="needs a sensor whose temperature is logged"):
        Campaign.load(_changed({"temperature": PER_K["temperature"]}).write(tmp_path / "campaign"))
