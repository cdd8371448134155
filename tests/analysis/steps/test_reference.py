"""Absolute gain: three antennas, gain tables and adapters, against closed form and by round trip."""

from __future__ import annotations

import numpy as np
import pytest
import skrf

from colure.analysis.findings.declared import against_declaration
from colure.analysis.setup.three_antenna import AntennaPair, mismatch_loss_db, three_antenna_gains
from colure.analysis.steps.gain import gain_transfer, reference_gain_dbi, substitution_path
from colure.app import services
from colure.app.services import reference
from colure.app.services.rehearsal import record_of_rehearsal
from colure.errors import InputError
from colure.model.campaign import Campaign
from colure.model.chamber import SimulatedChamber
from colure.model.plan import ROLES, Role
from colure.report.terms import gain_source
from colure.twin.antennas import horn
from colure.twin.sources import transmission
from tests.endtoend.test_near_to_far import edited

F = np.array([23e9, 24e9, 25e9])


def pair_of(first_dbi, second_dbi, distance, gamma_one=0.0, gamma_two=0.0) -> AntennaPair:
    wave = 299_792_458.0 / F
    realized = np.asarray(first_dbi) + np.asarray(second_dbi)
    through = 10 ** (realized / 20) * wave / (4 * np.pi * distance) * np.exp(-2j * np.pi * distance / wave)
    through = through * np.sqrt((1 - abs(gamma_one) ** 2) * (1 - abs(gamma_two) ** 2))
    return AntennaPair(through, np.full(3, gamma_one, complex), np.full(3, gamma_two, complex))


def test_three_gains_close():
    """G1 = (C12 + C13 - C23)/2 (section 7 of the standards sheet), with each antenna's own mismatch."""
    gains = np.array([[15.0, 15.5, 16.0], [20.0, 20.4, 20.8], [9.0, 9.1, 9.2]])
    gamma = (0.1, 0.2j, -0.05)
    pairs = tuple(pair_of(gains[i], gains[j], 3.0, gamma[i], gamma[j]) for i, j in ((0, 1), (0, 2), (1, 2)))
    found = three_antenna_gains(pairs, F, distance_m=3.0)
    assert found.gain_dbi == pytest.approx(gains, abs=1e-9)
    assert found.realized_dbi[1] == pytest.approx(gains[1] - mismatch_loss_db(np.array(0.2)), abs=1e-9)


@pytest.mark.parametrize(("vswr", "loss"), [(1.5, 0.1773), (2.0, 0.5115), (3.0, 1.2494)])
def test_mismatch_loss(vswr, loss):
    # Section 7 of the standards sheet.
    assert mismatch_loss_db(np.array((vswr - 1) / (vswr + 1))) == pytest.approx(loss, abs=5e-5)


def test_three_simulated_horns_far_apart_have_their_closed_form_gains():
    sizes = [(0.05, 0.04, 0.09, 0.10), (0.04, 0.03, 0.08, 0.09), (0.06, 0.045, 0.12, 0.13)]
    horns = [horn(F, a_m=a, b_m=b, slant_e_m=e, slant_h_m=h) for a, b, e, h in sizes]
    from colure.geometry.kinematics import probe_to_lab

    def facing(one, two, distance=60.0):
        placed = two.moved(probe_to_lab(distance=distance, roll=0.0))
        s21 = transmission(one, placed, source_power=one.power(), receiver_power=two.power())
        return AntennaPair(s21, np.zeros(3, complex), np.zeros(3, complex))

    found = three_antenna_gains(
        (facing(horns[0], horns[1]), facing(horns[0], horns[2]), facing(horns[1], horns[2])), F, distance_m=60.0
    )
    true = [10 * np.log10(np.sum(np.abs(h.far_field([[0, 0, 1.0]])[:, 0]) ** 2, axis=-1)) for h in horns]
    assert found.gain_dbi == pytest.approx(np.array(true), abs=0.01)


def test_bad_pairs_are_refused_with_numbers():
    good = pair_of([10] * 3, [10] * 3, 3.0)
    with pytest.raises(ValueError, match=r"reflection: 1\.200, must be below 1"):
        three_antenna_gains((good, good, pair_of([1] * 3, [1] * 3, 3.0, 0.0, 0.0).__class__(
            good.transmission, np.full(3, 1.2 + 0j), good.reflection_two)), F, distance_m=3.0)  # fmt: skip
    with pytest.raises(ValueError, match="must be more than both phase centres"):
        three_antenna_gains((good, good, good), F, distance_m=0.1, phase_centre_m=(0.06, 0.06, 0.0))


def test_tables_from_touchstone_become_the_reference(tmp_path):
    files = []
    for name, (i, j) in (("ab", (0, 1)), ("ac", (0, 2)), ("bc", (1, 2))):
        gains = np.array([[15.0] * 3, [20.0] * 3, [9.0] * 3])
        pair = pair_of(gains[i], gains[j], 3.0)
        s = np.zeros((3, 2, 2), complex)
        s[:, 1, 0] = s[:, 0, 1] = pair.transmission
        skrf.Network(f=F, f_unit="hz", s=s).write_touchstone(name, dir=str(tmp_path))
        files.append(tmp_path / f"{name}.s2p")
    tables = reference.three_antenna_tables(
        (files[0], files[1], files[2]), range_m=3.0, phase_centre_mm="0,0,0", uncertainty_db=0.2, folder=tmp_path
    )
    assert [path.name for path in tables] == ["antenna-1.csv", "antenna-2.csv", "antenna-3.csv"]
    assert "24,20.00000,0.2" in tables[1].read_text(encoding="utf-8")
    with pytest.raises(InputError, match="holds antenna-1.csv"):
        reference.three_antenna_tables(
            (files[0], files[1], files[2]), range_m=3.0, phase_centre_mm="0,0,0", uncertainty_db=0.2, folder=tmp_path
        )


def test_a_gain_table_and_an_adapter_count(small_campaign):
    """1 dB more gain in the table, a 0.5 dB adapter in the reference's path: the device has 1.5 dB less ... and more."""
    campaign, plan = services.make_plan(small_campaign)
    record = record_of_rehearsal(campaign, plan, truth=SimulatedChamber(noise=False))
    plain = processed(campaign, record)
    from colure.analysis.steps.gain import reference_gain_dbi

    formula = reference_gain_dbi(plan.frequency_hz, campaign.chamber.reference)
    rows = [f"{f / 1e9},{g + 1.0},0.15" for f, g in zip(plan.frequency_hz, formula, strict=True)]
    (small_campaign / "horn.csv").write_text(
        "\n".join(["frequency_ghz,gain_dbi,uncertainty_db", *rows]), encoding="utf-8"
    )
    s = np.zeros((2, 2, 2), complex)
    s[:, 1, 0] = s[:, 0, 1] = 10 ** (-0.5 / 20) * np.exp(1j * 0.3)
    skrf.Network(f=[23e9, 25e9], f_unit="hz", s=s).write_touchstone("adapter", dir=str(small_campaign))
    edited(
        small_campaign,
        "chamber.toml",
        ("gain_uncertainty_db", 'gain_table = "horn.csv"\nadapter = "adapter.s2p"\ngain_uncertainty_db'),
    )
    found = processed(Campaign.load(small_campaign), record)
    ratio = found.expansion.coefficients / plain.expansion.coefficients
    # The table's decibel comes on top; the adapter made the reference look weaker than it is.
    assert 20 * np.log10(np.abs(np.median(ratio))) == pytest.approx(1.0 - 0.5, abs=1e-6)
    assert found.budget.chamber.reference.gain_uncertainty_db == 0.15
    told = gain_source(Campaign.load(small_campaign).chamber, found.budget.chamber)
    # What the report prints beside the horn's sides.
    assert told.endswith("gain from the table horn.csv, \u00b10.15 dB (k = 2)")
    assert "dimensions" not in found.pattern.attrs["history_json"]
    assert gain_source(campaign.chamber, plain.budget.chamber).endswith(
        "gain from its dimensions, \u00b10.25 dB (k = 2)"
    )
    assert any("reference gain (\u00b10.15 dB:" in one.text for one in against_declaration(found))
    edited(small_campaign, "chamber.toml", ("horn.csv", "none.csv"))
    with pytest.raises(InputError, match=r"none\.csv: cannot be read"):
        processed(Campaign.load(small_campaign), record)


def processed(campaign, record):
    return services.processed(campaign, record, None)


def test_the_path_of_the_reference_is_that_of_a_signal_flow_graph():
    """Source, adapter and horn cascaded by scikit-rf, against the source and the device: ratio of what is let through."""
    source, horn_s11, device_s11 = (
        np.array([0.2 + 0.1j, -0.1j, 0.15]),
        np.array([0.1, 0.2j, -0.25 + 0.1j]),
        np.array([-0.3j, 0.3, 0.1]),
    )
    adapter = np.array([[[0.1 + 0.05j, 0.9], [0.9, -0.15j]]] * 3)

    def network(s11, s21, s22):
        s = np.zeros((3, 2, 2), complex)
        s[:, 0, 0], s[:, 1, 0], s[:, 1, 1] = s11, s21, s22
        return skrf.Network(f=F, f_unit="hz", s=s)

    generator = network(0.0, 1.0, source)
    radiating = network(horn_s11, np.sqrt(1.0 - np.abs(horn_s11) ** 2), 0.0)
    through = generator ** skrf.Network(f=F, f_unit="hz", s=adapter) ** radiating
    direct = generator ** network(device_s11, 1.0, 0.0)
    found = substitution_path(source=source, horn=horn_s11, device=device_s11, adapter=adapter)
    assert found == pytest.approx(through.s[:, 1, 0] / direct.s[:, 1, 0], rel=1e-12)


def test_the_horns_phase_centre_in_front_shortens_its_path(small_campaign):
    """Friis with the phase: a horn 12 mm nearer to the probe, and the factor that a device at the origin then needs."""
    edited(small_campaign, "chamber.toml", ("phase_centre_mm = 0.0", "phase_centre_mm = 12.0"))
    campaign, plan = services.make_plan(small_campaign)
    record = record_of_rehearsal(campaign, plan, truth=SimulatedChamber(noise=False))
    reference_points = record["role"].values == ROLES.index(Role.REFERENCE)
    distance, shorter = campaign.chamber.range_length_m, 0.012
    k = 2.0 * np.pi * plan.frequency_hz / 299_792_458.0
    gain = 10 ** (reference_gain_dbi(plan.frequency_hz, campaign.chamber.reference, distance) / 20.0)
    wave = 0.3 * gain * np.exp(-1j * k * (distance - shorter)) / (distance - shorter)
    trace = record["trace"].values.copy()
    trace[reference_points] = wave[:, None]
    factor = gain_transfer(record.assign(trace=(record["trace"].dims, trace)), campaign.chamber).factor
    assert np.abs(factor[:, 0]) == pytest.approx(distance / 0.3, rel=1e-9)
    assert np.exp(1j * np.angle(factor[:, 0])) ** 2 == pytest.approx(np.exp(2j * k * distance), abs=1e-6)


def test_phase_centres_in_front_shorten_the_path_of_a_pair():
    """Friis: the distance that counts is the one between the phase centres, 3.0 m less what lies in front."""
    gains, front = np.array([[15.0] * 3, [20.0] * 3, [9.0] * 3]), (0.06, 0.02, 0.11)
    pairs = tuple(pair_of(gains[i], gains[j], 3.0 - front[i] - front[j]) for i, j in ((0, 1), (0, 2), (1, 2)))
    found = three_antenna_gains(pairs, F, distance_m=3.0, phase_centre_m=front)
    assert found.gain_dbi == pytest.approx(gains, abs=1e-9)
