"""Each cause of the signal chain injected into simulated campaigns: its row alone holds what it does to every figure it matters to.

The error is that of a campaign with the cause against the same campaign without it, so that nothing else is in it. A sound
95 % interval holds 95 of 100 (JCGM 100:2008, 6.2); a normal one has a median |error|/U of 0.34 (derivable).
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from types import SimpleNamespace

import numpy as np
import pytest

from colure.analysis.pipeline.recipe import process
from colure.analysis.steps.gain import reference_gain_dbi
from colure.analysis.uncertainty.causes import not_declared
from colure.analysis.uncertainty.combination import half_width, joint_draws
from colure.analysis.uncertainty.probe_causes import PROBE_CAUSES
from colure.analysis.uncertainty.receiver_causes import RECEIVER_CAUSES
from colure.analysis.uncertainty.trial import Trial, perturbations
from colure.app import services
from colure.app.services.reference import probe_of
from colure.app.services.rehearsal import record_of_rehearsal
from colure.model.campaign import Campaign
from colure.model.chamber import SimulatedChamber
from colure.model.plan import ROLES, Role
from colure.twin.antennas import probe_ports
from colure.twin.chamber import DEVICE_CHANNEL, SimulatedRange
from colure.twin.devices import device_maker
from colure.twin.drawn_chain import draw_chain
from tests.coverage.scenarios import ONE, Scenario, band, four_by_four, sized

QUIET = {"noise": False, "crosstalk_db": -200.0, "probe_cross_polar_db": -200.0}
CAUSES = {
    "leakage": {"analyzer": {"isolation_db": -85.0}},
    "receiver linearity": {"analyzer": {"linearity_db": 0.1}},
    "receiver compression": {"analyzer": {"compression_dbm": -38.0}},
    "standing wave": {"standing_wave_db": -30.0},
    "probe place": {"alignment": {"probe_lateral_mm": 3.0}},
    "probe pointing": {"alignment": {"probe_pointing_deg": 5.0}},
    "probe pattern": {"probe": {"pattern_uncertainty_db": 0.3}},
    "reconnection": {"reference": {"reconnect_db": 0.1, "reconnect_deg": 3.0}},
    "position error": {
        "positioner": {"azimuth": {"position_error_deg": 0.2}, "roll": {"position_error_deg": 0.2}},
    },
    "temperature": {"temperature": {"level_db": 0.2, "phase_deg": 5.0, "period_s": 300.0}},
    "jumps": {"jumps": {"per_hour": 20.0, "level_db": 0.2, "phase_deg": 5.0}},
    "polarization imbalance": {"probe": {"imbalance_db": 0.3, "imbalance_deg": 3.0}},
}
#: In a figure of this unit a row below this does not matter.
MATTERS = {"dBi": 0.002, "dB": 0.002, "deg": 0.005, "mm": 0.005}


def _campaign(where: Path, scenario: Scenario):
    campaign, plan = services.make_plan(scenario.write(where / "campaign"))
    probe, own = probe_of(campaign, plan.frequency_hz), campaign.simulated()
    quiet = {**QUIET, "device": own.device, "probe_ring_mm": own.probe_ring_mm}

    def measured(**truth):
        record = record_of_rehearsal(campaign, plan, truth=SimulatedChamber(**{**quiet, **truth}))
        inputs = process(record, campaign.chamber, campaign.device, probe=probe).budget
        nominal = inputs.step.expansion(inputs.sphere.field)
        return inputs, nominal, inputs.figures.values(nominal)

    return campaign, measured


def _row(inputs, nominal, values):
    """Return the one cause that is declared, its half width, and what it takes off the value (frequency, figure)."""
    trial = Trial(inputs, nominal, values, inputs.figures.places(nominal))
    (one,) = perturbations(trial, (*RECEIVER_CAUSES, *PROBE_CAUSES))
    part = trial.contribution(one)
    return one.cause.row, half_width(joint_draws([part])), part.mean * (part.centred and one.cause.drawn)


def _held(where: Path, cause: str, scenario: Scenario, draws: int) -> tuple[np.ndarray, np.ndarray, tuple[str, ...]]:
    """Return |error| over half width (draw, figure) where the row matters, nan elsewhere; its half width; figures."""
    campaign, measured = _campaign(where, scenario)
    ratios, sizes = [], []
    for seed in range(1, draws + 1):
        _, _, clean = measured(seed=seed)
        inputs, nominal, values = measured(seed=seed, **draw_chain(campaign.chamber, seed))
        term, half, known = _row(inputs, nominal, values)
        assert term == cause
        error = np.abs(values - known - clean)[-1]
        limit = np.array([MATTERS.get(what.unit, np.inf) for what in inputs.figures.definitions])
        ratios.append(np.where(np.isfinite(error) & (half[-1] > limit), error / np.maximum(half[-1], 1e-12), np.nan))
        sizes.append(half[-1])
    return np.array(ratios), np.array(sizes), inputs.figures.names


def _changed(chamber: dict, **more) -> Scenario:
    return Scenario(device=four_by_four(), goal=ONE, chamber={**chamber, **more})


def _off_the_axes(chamber: dict, **more) -> Scenario:
    """A device 120 mm before the axes' intersection: what belongs to the probe's direction matters to it."""
    return Scenario(
        device=sized(12.0, 12.0, 3.0, 11.0, offset_mm=[0.0, 0.0, 120.0]), goal=band(10.0), chamber={**chamber, **more}
    )


def _on_the_fly(chamber: dict, **more) -> Scenario:
    return Scenario(device=four_by_four(), goal={**ONE, "style": "fly"}, chamber={**chamber, **more})


def _cases() -> list[tuple[str, Callable[..., Scenario]]]:
    """Every cause on a device where it matters; those that depend on the moment of a sweep on the fly too."""
    off = ("probe place", "probe pointing", "probe pattern", "position error", "reconnection")
    fly = ("position error", "temperature", "jumps", "leakage", "receiver compression")
    at = [(cause, _changed) for cause in CAUSES if cause not in ("probe place", "probe pointing", "probe pattern")]
    return [*at, *((cause, _off_the_axes) for cause in off), *((cause, _on_the_fly) for cause in fly)]


@pytest.mark.nightly
@pytest.mark.parametrize(("cause", "scenario"), _cases(), ids=lambda one: getattr(one, "__name__", one))
def test_each_row_holds_its_cause(cause, scenario, tmp_path, request):
    """Forty campaigns a cause: 90 % or more inside, the row not longer than it must be."""
    if not request.config.getoption("--nightly"):
        pytest.skip("forty campaigns of every cause: --nightly")
    ratios, _, _ = _held(tmp_path, cause, scenario(CAUSES[cause]), 40)
    some = ratios[np.isfinite(ratios)]
    print(f"{cause}: {100 * np.mean(some <= 1.0):.1f} % of {some.size} inside, median {np.median(some):.2f}")
    assert np.mean(some <= 1.0) >= 0.90
    # Of a normal error the median is 0.34 of the bound; of its square, as a width answers to a probe beside its place,
    # (0.674/1.96)^2 = 0.12, and half of that where two coordinates share it.
    assert (0.05 if cause == "probe place" else 0.1) <= np.median(some) <= 0.7


def test_leakage_in_the_receivers_frame(tmp_path):
    """-85 dB of leakage under a -47 dB peak: the cross-polarization it makes lies inside the row of the leakage alone."""
    ratios, sizes, names = _held(tmp_path, "leakage", _changed(CAUSES["leakage"]), 2)
    assert np.nanmean(ratios <= 1.0) >= 0.9
    assert sizes[:, names.index("xpd_db")].min() > 0.0


def test_linearity_counts_from_the_references_level(tmp_path):
    """A step from the horn's level to the device's times the declared error per 10 dB is the gain's error, and the row's size."""
    _, measured = _campaign(tmp_path, _changed(CAUSES["receiver linearity"]))
    _, _, clean = measured()
    inputs, nominal, values = measured(linearity_db=-0.1)
    _, half, _ = _row(inputs, nominal, values)
    gain = inputs.figures.names.index("gain_dbi")
    step_db = clean[0, gain] - _reference_gain_dbi(inputs)
    assert values[0, gain] - clean[0, gain] == pytest.approx(-0.01 * step_db, abs=0.005)
    assert half[0, gain] == pytest.approx(0.01 * abs(step_db), abs=0.007)


def _reference_gain_dbi(inputs) -> float:
    """Return the gain of the reference horn as the record's steps count it."""
    again = inputs.sweeps
    return float(
        reference_gain_dbi(again.record["frequency"].values, again.chamber.reference, again.chamber.range_length_m)[0]
    )


def test_compression_is_no_stronger_than_declared(tmp_path):
    """10 log(1 + 0.2589 P/P1) of both horn and device are missing: the horn is the stronger one, so the gain reads too high."""
    _, measured = _campaign(tmp_path, _changed(CAUSES["receiver compression"]))
    _, _, clean = measured()
    inputs, nominal, values = measured(compression_dbm=-38.0)
    _, half, _ = _row(inputs, nominal, values)
    gain = inputs.figures.names.index("gain_dbi")
    read_dbm = inputs.chamber.analyzer.power_dbm + 20.0 * np.log10(np.abs(inputs.sweeps.trace))
    role = inputs.sweeps.record["role"].values
    device_dbm, horn_dbm = (read_dbm[role == ROLES.index(which)].max() for which in (Role.SCAN, Role.REFERENCE))
    missing = [10.0 * np.log10(1.0 + 0.2589 * 10.0 ** ((dbm + 38.0) / 10.0)) for dbm in (device_dbm, horn_dbm)]
    missing_db = missing[1] - missing[0]
    assert values[0, gain] - clean[0, gain] == pytest.approx(missing_db, rel=0.15)
    # A rectangle of that half width, at 95 %: 1.65 standard uncertainties of it.
    assert half[0, gain] == pytest.approx(0.95 * missing_db, rel=0.15)


def test_standing_wave_has_half_a_wavelength_of_period(tmp_path):
    """A quarter of a wave farther away the standing wave hinders where it helped; half a wave farther it helps again."""
    campaign, _ = _campaign(tmp_path, Scenario(device=sized(6.0, 1.0, 1.0, 2.1), goal=ONE))
    truth = SimulatedChamber(**QUIET, standing_wave_db=-30.0, device={"kind": "dipole", "axis": "x"})
    f = np.array([24.1e9])
    make = device_maker(truth, campaign.device, band_hz=f, folder=campaign.folder)
    wave_mm = 1e3 * 299_792_458.0 / f[0]

    def ripple_db(farther_mm: float) -> float:
        got = []
        for one in (truth, truth.model_copy(update={"standing_wave_db": None})):
            there = SimulatedRange(
                campaign.chamber, one.model_copy(update={"probe_offset_mm": (0.0, 0.0, farther_mm)}), make
            )
            there.set_frequencies(f)
            got.append(there.received(dict.fromkeys(campaign.chamber.axis_table, 0.0), 1, channel=DEVICE_CHANNEL)[0])
        return float(20.0 * np.log10(np.abs(got[0] / got[1])))

    here = [ripple_db(share * wave_mm) for share in (0.0, 0.125, 0.25, 0.375, 0.5)]
    assert here[4] == pytest.approx(here[0], abs=0.02)
    assert here[2] == pytest.approx(-here[0], abs=0.02)
    # 20 log(1 + 10^(-30/20)) is the largest; two places an eighth of a wave apart see both quadratures of it.
    assert np.hypot(here[0], here[1]) == pytest.approx(0.27, abs=0.02)


def test_probe_taper_is_what_was_asked_for():
    angle = np.deg2rad(10.0)
    for phi in (0.0, 0.5 * np.pi):
        aside = [[0.0, 0.0, 1.0], [np.sin(angle) * np.cos(phi), np.sin(angle) * np.sin(phi), np.cos(angle)]]
        level = [
            20.0 * np.log10(np.linalg.norm(probe_ports(np.array([24e9]), taper_db=t)[0].far_field(aside)[0], axis=-1))
            for t in (0.0, 0.3, -0.2)
        ]
        falls = [one[0] - one[1] for one in level]
        assert falls[1] - falls[0] == pytest.approx(0.3, abs=1e-6)
        assert falls[2] - falls[0] == pytest.approx(-0.2, abs=1e-6)


def test_what_nobody_declared_is_named(tmp_path):
    everything = {
        "analyzer": {"isolation_db": -85.0, "linearity_db": 0.1, "compression_dbm": 0.0},
        "standing_wave_db": -30.0,
        "alignment": {"probe_lateral_mm": 3.0, "probe_pointing_deg": 5.0},
        "probe": {"pattern_uncertainty_db": 0.3, "imbalance_db": 0.3},
        "reference": {"reconnect_db": 0.1},
        "positioner": {"azimuth": {"position_error_deg": 0.2}},
        "temperature": {"level_db": 0.2},
        "jumps": {"per_hour": 1.0},
    }
    plain = Campaign.load(Scenario(device=sized(6, 6, 1, 5), goal=band(24.1)).write(tmp_path / "plain"))
    full = Campaign.load(
        Scenario(device=sized(60, 60, 6, 7), goal=band(24.1), chamber=everything).write(tmp_path / "full")
    )
    nothing, all_of_it = (
        SimpleNamespace(chamber=plain.chamber, mismatch_db=0.0),
        SimpleNamespace(chamber=full.chamber, mismatch_db=0.1),
    )
    assert not_declared(nothing)[:3] == ("mismatch", "leakage", "linearity")
    assert {"standing wave", "jumps", "probe pattern"} <= set(not_declared(nothing))
    assert not_declared(all_of_it) == ()
