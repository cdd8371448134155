"""Time gating: laws of the discrete band, an outside reference, and a wall of the simulated chamber."""

from __future__ import annotations

import numpy as np
import pytest
import skrf

from colure.analysis.gating import Gate, gated, impulse_response, limits, propose
from colure.twin.antennas import panel

LIGHT = 299_792_458.0
BAND = np.linspace(22e9, 26e9, 201)
STEP = BAND[1] - BAND[0]


def ray(delay_s: float, level: complex = 1.0) -> np.ndarray:
    return level * np.exp(-2j * np.pi * BAND * delay_s)


def test_limits_of_two_ghz_and_25_points():
    # 83.333 MHz: 12.0 ns alias-free, 0.5 ns resolution (section 8 of the standards sheet, derived).
    narrowest, widest = limits(np.linspace(23e9, 25e9, 25))
    assert widest == pytest.approx(12.0e-9) and narrowest == pytest.approx(2 * 0.5e-9)


def test_a_ray_in_the_middle_passes_unchanged_to_the_ends_of_the_band():
    """Renormalized: without it the ends lose about 6 dB (section 8 of the standards sheet)."""
    gate = Gate(10e-9, 4e-9)
    assert gated(ray(10e-9), BAND, gate) == pytest.approx(ray(10e-9), abs=1e-12)


def test_a_second_ray_outside_the_gate_vanishes_and_one_alias_range_later_it_is_back():
    gate = Gate(10e-9, 4e-9)
    inner = slice(20, -20)
    outside = gated(ray(10e-9) + ray(20e-9, 0.3), BAND, gate) - ray(10e-9)
    assert 20 * np.log10(np.abs(outside[inner]).max() / 0.3) < -40
    late = gated(ray(10e-9 + 1.0 / STEP), BAND, gate)
    # f / df is whole here: exactly the same samples as the ray in the gate, turned by a constant.
    assert late == pytest.approx(ray(10e-9 + 1.0 / STEP), abs=1e-9)


def test_the_gate_agrees_with_scikit_rf():
    """A direct ray, an echo 3 m later at -20 dB: both gates leave the same within 1 % over the middle of the band."""
    trace = ray(12e-9) + ray(12e-9 + 3.0 / LIGHT, 0.1j)
    own = gated(trace, BAND, Gate(12e-9, 10e-9))
    network = skrf.Network(f=BAND, f_unit="hz", s=trace[:, None, None])
    other = network.time_gate(center=12, span=10, t_unit="ns").s[:, 0, 0]
    middle = slice(40, -40)
    assert np.abs(own - other)[middle].max() < 0.01
    assert np.abs(own - ray(12e-9))[middle].max() < 0.01


def test_refusals_name_the_numbers():
    with pytest.raises(ValueError, match=r"width 0\.1 ns, must be from 0\.5 \(span\) to 50 ns"):
        gated(ray(0.0), BAND, Gate(0.0, 0.1e-9))
    with pytest.raises(ValueError, match="3 frequencies, needs at least 5"):
        limits(BAND[:3])
    with pytest.raises(ValueError, match="must be equidistant"):
        limits(BAND**1.01)
    with pytest.raises(
        ValueError, match=r"0\.6 m late and allows a gate of 2\.00 ns; .* needs at least 8\.00 ns: 0\.999 GHz would do"
    ):
        propose(np.ones((1, 11)), np.linspace(24e9, 24.25e9, 11), (0.6,))


def test_the_impulse_response_peaks_at_the_delay():
    time, response = impulse_response(ray(17.3e-9), BAND)
    assert time[int(np.argmax(np.abs(response)))] == pytest.approx(17.3e-9, abs=0.1e-9)


def wide_panel(frequency_hz):
    """The panel with its gentle response stretched over the whole band."""
    return panel(frequency_hz, centre_m=(0.0, 0.0, 0.0), centre_hz=24e9, half_band_hz=2e9)


def test_a_wall_of_the_chamber_is_gated_away(campaign_folder):
    """The simulated panel beside a -30 dB wall, 4 GHz of band: the wall's share falls by at least 25 dB."""
    from colure.model.campaign import Campaign
    from colure.model.chamber import EchoTable, SimulatedChamber
    from colure.twin.chamber import SimulatedRange

    chamber = Campaign.load(campaign_folder).chamber
    wall = EchoTable(normal=(1.0, 0.0, 0.0), distance_m=0.9, level_db=-10.0, phase_deg=40.0)
    traces = []
    for echoes in ((), (wall,)):
        truth = SimulatedChamber(noise=False, echoes=echoes)
        room = SimulatedRange(chamber, truth, (0.0, 0.0, 0.0), device_of=wide_panel)
        room.set_frequencies(BAND)
        theta = np.linspace(-40.0, 40.0, 9)
        traces.append(room.received({"azimuth": theta, "roll": 0 * theta, "probe": 0 * theta}, 1))
    clean, dirty = traces
    excess = np.hypot(2 * 0.9, 1.2) - 1.2
    gate = propose(dirty, BAND, (float(excess),))
    inner = slice(50, -50)  # nearer to the ends of the band a gate of any kind runs out of data
    before = np.sqrt(np.mean(np.abs(dirty - clean)[:, inner] ** 2))
    after = np.sqrt(np.mean(np.abs(gated(dirty, BAND, gate) - gated(clean, BAND, gate))[:, inner] ** 2))
    print(
        f"wall {20 * np.log10(before / np.abs(clean).max()):.1f} dB, reduced by {20 * np.log10(before / after):.1f} dB"
    )
    assert 20 * np.log10(before / after) >= 25.0
    # The device itself stays what it was.
    left = np.abs(gated(clean, BAND, gate) - clean)[:, inner]
    assert 20 * np.log10(left.max() / np.abs(clean).max()) < -45.0
