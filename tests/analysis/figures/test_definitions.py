"""Every definition of a figure has its reading, its forecast and its truth, or says why not; nothing is registered without one."""

import numpy as np
import pytest

from colure.analysis.figures.evaluate import FigureSet
from colure.analysis.figures.readings import BAND_READINGS, READINGS
from colure.model.definitions import definitions_for
from colure.model.evaluation import Evaluation, Window
from colure.model.goal import Want
from colure.planning.forecast import FORECASTS
from colure.twin.sources import Cluster
from colure.twin.truth import TruthSettings, truth_of

EVERYTHING = Evaluation(
    beamwidth_levels_db=(3.0, 10.0),
    cut_planes_deg=(45.0,),
    horizon_bands_deg=(30.0,),
    coverage_percent=(50.0,),
    transmit_power_dbm=10.0,
    sensitivity_dbm=-90.0,
    commanded_deg={"beam": (0.0, 0.0)},
    reference_axis_deg=(0.0, 0.0),
    components=("circular", "theta-phi", "ludwig-2"),
    gain_units=("dBd", "linear"),
    sectors=(Window(name="front", azimuth_deg=(-30.0, 30.0), elevation_deg=(-20.0, 20.0)),),
)
EVERY = definitions_for(EVERYTHING, band=True, reflection=True, reflection_measured=True)
FREQUENCY_HZ = np.array([2.3e9, 2.4e9, 2.5e9])


def pair_of_dipoles() -> Cluster:
    """Two short crossed sources a quarter wave apart: they have a beam, and both polarizations."""
    position = np.array([[0.0, 0.0, 0.0], [0.0, 0.0, -0.03]])
    electric = np.array([[1.0, 0.2, 0.0], [1.0, 0.2, 0.0]], complex)
    weights = np.exp(-1j * np.array([0.0, 0.5 * np.pi])) * np.ones((FREQUENCY_HZ.size, 1))
    return Cluster(FREQUENCY_HZ, position, electric, np.zeros_like(electric), weights, np.ones(FREQUENCY_HZ.size))


def test_every_definition_is_read_and_nothing_is_read_without_one():
    keys = {what.key for what in EVERY if not what.band}
    assert keys == set(READINGS)
    assert {what.key for what in EVERY if what.band} == set(BAND_READINGS)


def test_a_forecast_or_why_not():
    assert {what.key for what in EVERY if not what.no_forecast} == set(FORECASTS)
    assert all(len(what.no_forecast) > 10 for what in EVERY if what.key not in FORECASTS)


def test_goal_toml_takes_a_wish_for_every_figure_with_a_forecast():
    assert set(Want.model_fields) == {what.name for what in EVERY if not what.no_forecast}


def test_a_truth_or_why_not():
    loss = np.full(FREQUENCY_HZ.size, 0.1)
    rows = truth_of(pair_of_dipoles(), TruthSettings(settings=EVERYTHING, mismatch_loss_db=loss))
    wanted = {what.name: what.unit for what in EVERY if not what.no_truth}
    assert {name: one.unit for name, one in rows[1].items()} == wanted


def test_names_and_symbols_are_each_for_one_figure():
    names, symbols = [what.name for what in EVERY], [what.symbol for what in EVERY]
    assert len(set(names)) == len(names) and len(set(symbols)) == len(symbols) and all(symbols)
    members = [(what.key, what.at) for what in EVERY]
    assert len(set(members)) == len(members)


@pytest.mark.parametrize("band", [False, True])
def test_a_set_of_figures_holds_what_its_settings_ask_for(band):
    own = FigureSet(EVERYTHING, band=band, mismatch_loss_db=np.full(3, 0.1), reflection_measured=True)
    assert own.names == tuple(what.name for what in EVERY if band or not what.band)
