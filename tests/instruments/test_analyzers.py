"""Analyzers over sockets and over a message-based wire, in every number format; power-only receivers; states."""

from __future__ import annotations

import sys

import numpy as np
import pytest

from colure.acquire.journal import Journal
from colure.acquire.seal import record_of
from colure.acquire.states import State
from colure.app import services
from colure.app.storage.folders import run_folder
from colure.errors import InputError, InstrumentError
from colure.instruments.device_states import CallableStates, CommandStates, ProgramStates
from colure.instruments.links import real_number
from colure.instruments.profile import analyzer_profile
from colure.instruments.protocols import LostError, SweepSettings
from colure.instruments.scpi_analyzer import ScpiAnalyzer, require_plausible
from colure.instruments.scpi_power import ScpiPowerReceiver
from colure.model.device import States
from colure.planning.level import free_space_loss_db
from colure.twin.servers import start_twin
from tests.instruments.hislip import HislipServer
from tests.world import world_of

SETTINGS = SweepSettings(start_hz=24.0e9, stop_hz=24.1e9, points=5, if_bandwidth_hz=1000.0, power_dbm=-3.0, averages=2)


@pytest.fixture
def twin(small_campaign):
    running = start_twin(services.make_plan(small_campaign)[0])
    yield running
    running.close()


def words(**changes):
    """The shipped profile with other formats."""
    profile = analyzer_profile("scpi-analyzer")
    form = changes.get("number_format", "real64")
    order = changes.get("byte_order", "big")
    text = {"real64": "FORM REAL,64", "real32": "FORM REAL,32", "ascii": "FORM ASC,0"}[form]
    setup = tuple(
        text if c == "FORM REAL,64" else f"FORM:BORD {'NORM' if order == 'big' else 'SWAP'}" if "BORD" in c else c
        for c in profile.setup
    )
    said = {"FORM:BORD?": f"^{'NORM' if order == 'big' else 'SWAP'}"}
    return profile.model_copy(update={"confirm_words": said, **changes, "setup": setup})


def sweep(resource, profile):
    analyzer = ScpiAnalyzer(resource, profile, timeout_s=5)
    try:
        read_back = analyzer.configure(SETTINGS, (1,))
        return read_back, analyzer.sweep()
    finally:
        analyzer.close()


@pytest.mark.parametrize("number_format", ["real64", "real32", "ascii"])
@pytest.mark.parametrize("byte_order", ["big", "little"])
def test_every_number_format_gives_the_same_trace(twin, number_format, byte_order):
    _, wanted = sweep(twin.analyzer_resource, words())
    read_back, found = sweep(twin.analyzer_resource, words(number_format=number_format, byte_order=byte_order))
    np.testing.assert_allclose(found.trace, wanted.trace, rtol=1e-6 if number_format == "real32" else 1e-11)
    assert read_back["averages"] == 2.0 and read_back["power_dbm"] == -3.0 and found.flags == 0


def test_averaging_costs_time_as_it_should(twin):
    analyzer = ScpiAnalyzer(twin.analyzer_resource, words(), timeout_s=5)
    analyzer.configure(SETTINGS, (1,))
    before = analyzer.clock_s()
    analyzer.sweep()
    # 5 points x 2 averages / 1 kHz, and 5 ms overhead.
    assert analyzer.clock_s() - before == pytest.approx(0.015, abs=1e-6)
    analyzer.close()


def test_a_message_based_wire_carries_text_and_blocks(twin, small_campaign):
    _, wanted = sweep(twin.analyzer_resource, words())
    from colure.twin.scpi_server import SimulatedAnalyzer as ScpiServer

    server = HislipServer(ScpiServer(twin.chamber, twin.stage).answer)
    resource = f"TCPIP::127.0.0.1::hislip0,{server.port}::INSTR"
    _, found = sweep(resource, words())
    np.testing.assert_allclose(found.trace, wanted.trace, rtol=1e-11)
    analyzer = ScpiAnalyzer(resource, words(), timeout_s=5)
    analyzer.reconnect()
    assert server.cleared == 1, "a device clear goes over a wire that knows it"
    analyzer.close()
    server.close()


def test_a_stale_sweep_is_refused_by_its_counter(small_campaign):
    (small_campaign / "twin.toml").write_text('noise = false\n[[faults]]\nkind = "stale"\nat = 2\n', encoding="utf-8")
    twin = start_twin(services.make_plan(small_campaign)[0])
    analyzer = ScpiAnalyzer(twin.analyzer_resource, words(), timeout_s=5)
    analyzer.configure(SETTINGS, (1,))
    analyzer.sweep()
    with pytest.raises(InstrumentError, match="stale sweep, the sweep counter still stands at 1"):
        analyzer.sweep()
    analyzer.sweep()
    analyzer.close()
    twin.close()


def test_a_setting_that_does_not_stay_is_named(twin):
    profile = words()
    profile = profile.model_copy(update={"confirm": {**profile.confirm, "power_dbm": "SENS:BAND?"}})
    analyzer = ScpiAnalyzer(twin.analyzer_resource, profile, timeout_s=5)
    with pytest.raises(InstrumentError, match="power_dbm = 1000, must be -3"):
        analyzer.configure(SETTINGS, (1,))
    analyzer.close()


def test_a_power_meter_reads_what_friis_says(twin):
    """H. T. Friis, Proc. IRE 34:254, 1946: horn to probe over the range, cable loss included."""
    meter = ScpiPowerReceiver(twin.analyzer_resource, analyzer_profile("scpi-power"), timeout_s=5)
    analyzer = ScpiAnalyzer(twin.analyzer_resource, words(), timeout_s=5)
    analyzer.configure(SETTINGS, (1,))
    trace = analyzer.sweep().trace[:, 0]
    meter.configure(SETTINGS, (1,))
    power = 20 * np.log10(np.abs(meter.sweep().trace[:, 0]))
    np.testing.assert_allclose(power, -3.0 + 20 * np.log10(np.abs(trace)), atol=1e-3)
    loss = free_space_loss_db(frequency_hz=24.05e9, distance_m=1.2)
    gain = 21.3 + 7.6  # panel and probe, within a dB or so: a check of the scale, not of the antennas
    assert power.mean() == pytest.approx(-3.0 + gain - loss - 12.0, abs=2.0)
    with pytest.raises(InstrumentError, match="2 ports wanted"):
        meter.configure(SETTINGS, (1, 2))
    with pytest.raises(InstrumentError, match="pulses"):
        meter.trigger(external=True)
    meter.close()
    analyzer.close()


def test_a_power_only_run_is_recorded_and_refused_where_phase_is_needed(tiny_campaign):
    chamber = (tiny_campaign / "chamber.toml").read_text(encoding="utf-8")
    (tiny_campaign / "chamber.toml").write_text(chamber.replace("scpi-analyzer", "scpi-power"), encoding="utf-8")
    campaign, plan = services.make_plan(tiny_campaign)
    run = run_folder(tiny_campaign, "power")
    assert services.acquire(campaign, plan, run).state is State.DONE
    from colure.model.files import open_dataset

    record = open_dataset(run.record)
    assert record.attrs["receiver"] == "power" and np.all(record["trace"].values.imag == 0.0)
    with pytest.raises(InputError, match="receiver is power-only"):
        services.process(campaign, run)


STATES = """
[states]
names = ["left", "middle", "right"]
loop = "{loop}"
settle_s = 0.05
resource = "twin"
set = "STATE {{index}}"
readback = "STATE?"
"""
STEER = "state_steer_deg = [-20.0, 0.0, 20.0]\n"


@pytest.mark.parametrize("loop", ["inner", "outer"])
def test_device_states_are_taken_proven_and_recorded(tiny_campaign, tmp_path, loop):
    with (tiny_campaign / "device.toml").open("a", encoding="utf-8") as out:
        out.write(STATES.format(loop=loop))
    (tiny_campaign / "twin.toml").write_text("seed = 3\nnoise = false\n" + STEER, encoding="utf-8")
    world, plan = world_of(tiny_campaign, kind="gcode")
    assert plan.states == ("left", "middle", "right")
    journal = Journal.create(tmp_path / "j.sqlite", plan, {})
    assert world.engine(plan, journal).run().state is State.DONE
    record = record_of(journal)
    journal.close()
    scan = record["role"].values == 0
    counts = np.bincount(record["state_index"].values[scan])
    assert counts.tolist() == [144, 144, 144]
    # The beam goes where its state steers it: strongest readings left, in the middle, right of boresight.
    best = []
    for state in range(3):
        own = scan & (record["state_index"].values == state) & (record["pass_index"].values == 0)
        own &= np.isclose(record["commanded_deg"].values[:, 1], 0.0)
        theta = record["commanded_deg"].values[own, 0]
        best.append(float(theta[np.argmax(np.abs(record["trace"].values[own, 0, 0]))]))
    assert best == [-30.0, 0.0, 30.0]
    assert world.time.now() == pytest.approx(plan.predicted["duration_s"], rel=0.03)


def test_each_state_becomes_a_pattern(tiny_campaign):
    with (tiny_campaign / "device.toml").open("a", encoding="utf-8") as out:
        out.write(STATES.format(loop="inner"))
    (tiny_campaign / "twin.toml").write_text("seed = 3\nnoise = false\n" + STEER, encoding="utf-8")
    campaign, plan = services.make_plan(tiny_campaign)
    run = run_folder(tiny_campaign, "beams")
    assert services.acquire(campaign, plan, run).state is State.DONE
    assert services.states_of(run) == ["left", "middle", "right"]
    for name in ("left", "right"):
        services.process(campaign, run.state(name))
        assert run.state(name).pattern.stat().st_size > 1000
    with pytest.raises(InputError, match="must be one of left, middle, right"):
        services.process(campaign, run.state("up"))


def test_a_state_that_is_not_taken_is_never_measured(twin):
    table = States(
        names=("a", "b"), resource=twin.device_resource, set="STATE {index}", readback="STATE?", expect="x{index}"
    )
    switch = CommandStates(table)
    with pytest.raises(InstrumentError, match="state reads '1', must be 'x1'"):
        switch.take(1, "b")
    switch.close()


def test_states_by_program_and_by_callable(tmp_path):
    script = tmp_path / "set_beam.py"
    script.write_text("import sys; sys.exit(0 if sys.argv[1] != 'bad' else 'no such beam')", encoding="utf-8")
    table = States(names=("good", "bad"), program=(sys.executable, "set_beam.py", "{name}"))
    programs = ProgramStates(table, tmp_path)
    programs.take(0, "good")
    with pytest.raises(InstrumentError, match="state bad: exit code 1: no such beam"):
        programs.take(1, "bad")
    slow = States(names=("slow",), program=(sys.executable, "-c", "import time; time.sleep(9)"), timeout_s=0.3)
    with pytest.raises(LostError, match=r"not taken within 0\.3 s"):
        ProgramStates(slow, tmp_path).take(0, "slow")

    def fail(index, name):
        raise KeyError(name)

    with pytest.raises(InstrumentError, match="state b: 'b'"):
        CallableStates(fail).take(1, "b")


def test_a_misspelt_sweep_word_is_refused_at_that_sweep(twin):
    """The old trace would come again as new: the counter is not asked for here, only the error queue tells (SCPI-1999, -113)."""
    profile = words(sweep="INIT:IMEM;*OPC?", status="")
    analyzer = ScpiAnalyzer(twin.analyzer_resource, profile, timeout_s=2)
    try:
        analyzer.configure(SETTINGS, (1,))
        for _ in range(2):
            with pytest.raises(InstrumentError, match="-113"):
                analyzer.sweep()
    finally:
        analyzer.close()


def test_a_level_that_no_path_has_is_refused():
    trace = np.full((5, 1), 10.0 ** (6121.0 / 20.0 / 20.0), complex)
    with pytest.raises(InstrumentError, match=r"trace reads 306 dB, must be below 80 dB"):
        require_plausible(trace, "analyzer")


@pytest.mark.parametrize("text", ["1;-40", "1,-40", "+1.5 dBm -3", "nan", "inf", "--3", ""])
def test_an_answer_that_is_not_one_number_is_refused(text):
    with pytest.raises(InstrumentError, match="is no power in dBm"):
        real_number(text, "meter", "power in dBm")


@pytest.mark.parametrize(("text", "value"), [("-40.25", -40.25), (" +1.5E-03 dBm ", 1.5e-3), (".5", 0.5), ("7.", 7.0)])
def test_one_number_with_a_unit_at_most_is_read(text, value):
    assert real_number(text, "meter", "power in dBm") == value


def test_the_instruments_clock_goes_on_over_midnight(twin):
    analyzer = ScpiAnalyzer(twin.analyzer_resource, words(), timeout_s=2)
    times = iter(["23,59,58.5", "0,0,1.5", "0,0,3.5"])
    ask = analyzer._link.query
    analyzer._link.query = lambda text: next(times) if "TIME" in text else ask(text)
    moments = [analyzer.clock_s() for _ in range(3)]
    assert np.diff(moments).tolist() == [3.0, 2.0]
    analyzer.close()
