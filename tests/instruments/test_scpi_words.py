"""The simulated instruments speak as SCPI-1999, IEEE 488.2 and RS-274 say (from memory)."""

from __future__ import annotations

import numpy as np
import pytest

from colure.app import services
from colure.instruments.links import VisaLink as Transport
from colure.twin.scpi_headers import header_pattern
from colure.twin.servers import start_twin


@pytest.fixture
def twin(small_campaign):
    campaign, _ = services.make_plan(small_campaign)
    running = start_twin(campaign)
    yield running
    running.close()


@pytest.mark.parametrize(
    ("text", "good"),
    [("SENS:FREQ:STAR", True), ("SENSE:FREQUENCY:START", True), (":sens:freq:start", True), ("SENSEQ:FREQ:STAR", False),
     ("SENS:FREQU:STAR", False)],
)  # fmt: skip
def test_only_short_and_long_forms_are_accepted(text, good):
    assert bool(header_pattern("SENSe:FREQuency:STARt").match(text)) is good


def test_common_commands_and_error_queue(twin):
    link = Transport(twin.analyzer_resource, timeout_s=5)
    assert len(link.query("*IDN?").split(",")) == 4
    assert link.query("*OPC?") == "1" and link.query("SYST:ERR?") == '0,"No error"'
    link.write("NONSENSE:WORD 1")
    assert link.query("SYST:ERR?").startswith("-113")
    link.write("SENS:BAND 1E12")
    assert link.query("SYST:ERR:NEXT?").startswith("-222")
    assert float(link.query("SENS:BAND?")) == 1000.0
    link.close()


@pytest.mark.parametrize("big_endian", [True, False])
def test_definite_block_in_both_byte_orders(twin, big_endian):
    link = Transport(twin.analyzer_resource, timeout_s=5)
    link.write("SENS:SWE:POIN 201;:FORM:BORD " + ("NORM" if big_endian else "SWAP"))
    assert link.query("INIT;*OPC?") == "1"
    values = link.query_numbers("CALC1:DATA? SDATA", form="real64", big_endian=big_endian, expected=402)
    assert values.shape == (402,) and np.all(np.isfinite(values)) and 1e-6 < np.abs(values).max() < 1
    # 201 complex doubles are 3216 bytes: the header is #43216.
    link.write("CALC1:DATA? SDATA")
    assert link._link.read_bytes(6) == b"#43216"
    link.close()


def test_block_of_unexpected_size_is_refused_and_the_line_stays_in_step(twin):
    from colure.errors import InstrumentError

    link = Transport(twin.analyzer_resource, timeout_s=5)
    link.query("INIT;*OPC?")
    with pytest.raises(InstrumentError, match="expected 800 bytes"):
        link.query_numbers("CALC1:DATA? SDATA", form="real64", big_endian=True, expected=100)
    assert link.query("*OPC?") == "1"
    link.close()


def test_moves_take_the_time_of_their_profile(twin):
    link = Transport(twin.axes_resource, timeout_s=5)
    for line in ("G90 G0 B90", "G4 P0.5"):
        assert link.query(line) == "ok"
    # 90 deg at 20 deg/s and 40 deg/s^2: 4.5 s cruise + 0.5 s ramp, then the dwell.
    assert twin.stage.clock.now() == pytest.approx(5.5, abs=1e-9)
    assert link.query("M114").startswith("B:90.0000") and link.read() == "ok"
    assert link.query("G28") == "ok" and link.query("G4 P0") == "ok"
    assert link.query("M114").startswith("B:0.0000") and link.read() == "ok"
    assert link.query("G17").startswith("error") and link.query("X10").startswith("error")
    link.close()


def test_feed_hold_in_real_time_brakes_within_the_deceleration(small_campaign):
    import time

    (small_campaign / "twin.toml").write_text("noise = false\ntime_factor = 1.0\n", encoding="utf-8")
    campaign, _ = services.make_plan(small_campaign)
    running = start_twin(campaign)
    moving, stop = (Transport(running.axes_resource, timeout_s=5) for _ in range(2))
    moving.write("G0 B90\nG4 P0")
    assert moving.read() == "ok"
    time.sleep(0.7)
    before = running.stage.positions()["azimuth"]
    stop.write_raw("!")
    assert moving.read() == "error: held"
    time.sleep(0.1)
    first = running.stage.positions()["azimuth"]
    time.sleep(0.2)
    assert running.stage.positions()["azimuth"] == first  # at rest
    assert before < first < before + 20.0 * 0.3 + 20.0**2 / (2 * 40.0)
    moving.close()
    stop.close()
    running.close()


def test_small_packets_are_sent_at_once(twin):
    """A command and a query sent after it must not wait for each other's acknowledgement (Nagle, RFC 896)."""
    import socket

    link = Transport(twin.analyzer_resource, timeout_s=5)
    wire = link._link.visalib.sessions[link._link.session].interface
    assert wire.getsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY) == 1
    link.reopen()
    wire = link._link.visalib.sessions[link._link.session].interface
    assert wire.getsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY) == 1
    link.close()
