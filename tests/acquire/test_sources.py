"""Source, switch box and device states of their own, and a device that transmits by itself, over real sockets in real time."""

from __future__ import annotations

import re
import threading
import time

import numpy as np
import pytest

from colure.acquire.outcome import Options
from colure.acquire.states import State
from colure.app import services
from colure.app.services.cautions import cautions_of
from colure.app.services.connecting import instruments
from colure.app.storage.folders import run_folder
from colure.errors import InputError, InstrumentError
from colure.instruments.protocols import SweepSettings
from colure.instruments.receiver_chain import ReceiverChain
from colure.instruments.role_profiles import SourceProfile
from colure.instruments.small_instruments import WordsSource
from colure.model.campaign import Campaign
from colure.model.files import open_dataset
from tests.ranges import CUT, range_campaign, wired

AXES = '[[instruments]]\nrole = "axis-controller"\nname = "floor"\n'
VECTOR = '[[instruments]]\nrole = "receiver"\n' + AXES
POWER = '[[instruments]]\nrole = "receiver"\nprofile = "scpi-power-meter"\n' + AXES
SOURCE = '[[instruments]]\nrole = "source"\nname = "generator"\n'
SWITCH = '[[instruments]]\nrole = "switch"\nname = "box"\n'


def run_of(campaign, name="a", **more):
    _, plan = services.make_plan(campaign.folder)
    run, texts = run_folder(campaign.folder, name), []
    listener = more.pop("listener", lambda event: None)

    def listen(event):
        texts.append(event.text)
        listener(event)

    outcome = services.acquire(campaign, plan, run, listener=listen, options=Options(pause_limit_s=0.3), **more)
    return outcome, texts, run


def trace_of(run):
    record = open_dataset(run.record)
    return np.abs(record.sortby("plan_index")["trace"].values)


@pytest.fixture(scope="module")
def vector_trace(tmp_path_factory):
    """What the analyzer with a source and a switch of its own reads."""
    folder = range_campaign(tmp_path_factory.mktemp("vector") / "c", VECTOR)
    campaign = Campaign.load(folder)
    _, _, run = run_of(campaign)
    return trace_of(run)


def test_a_generator_and_a_power_meter_read_the_levels_of_an_analyzer_and_the_source_is_off_at_the_end(
    tmp_path, vector_trace
):
    folder = range_campaign(tmp_path / "c", POWER + SOURCE + SWITCH)
    with wired(folder) as (campaign, twin):
        source, on = twin.small["generator"], []
        outcome, _, run = run_of(campaign, listener=lambda event: on.append(source.on))
        assert outcome.state is State.DONE and any(on) and not source.on
        assert source.level_dbm == campaign.chamber.analyzer.power_dbm
    # Powers are read in dBm with four decimals; the square root of a milliwatt is 1 at the source's 0 dBm.
    np.testing.assert_allclose(trace_of(run), vector_trace, rtol=2e-5)
    assert open_dataset(run.record).attrs["receiver"] == "power"


def test_a_source_that_stays_on_is_said_and_one_that_went_off_by_itself_costs_no_point(tmp_path, vector_trace):
    twin = 'noise = false\n[[faults]]\nkind = "source-stays-on"\nat = 1\n'
    twin += "".join(f'[[faults]]\nkind = "source-stays-on"\nat = {at}\n' for at in range(2, 40))
    folder = range_campaign(tmp_path / "stays", POWER + SOURCE + SWITCH, twin=twin)
    with wired(folder) as (campaign, served):
        outcome, texts, run = run_of(campaign)
        assert served.small["generator"].on
    assert outcome.state is State.DONE
    assert any("SOURCE STAYS ON" in text and "take its power away" in text for text in texts), texts
    folder = range_campaign(tmp_path / "off", POWER + SOURCE + SWITCH)
    with wired(folder) as (campaign, served):
        source, seen = served.small["generator"], []

        def somebody(event):
            if event.kind in ("point", "tie"):
                seen.append(event)
                if len(seen) in (3, 11):
                    source.on = False

        outcome, texts, run = run_of(campaign, listener=somebody)
    assert outcome.state is State.DONE, outcome
    assert sum("source is off although it was switched on" in text for text in texts) >= 2
    np.testing.assert_allclose(trace_of(run), vector_trace, rtol=2e-5)


def test_a_stop_and_an_open_door_switch_the_source_off_within_a_moment(tmp_path, prompt):
    door = '[[instruments]]\nrole = "interlock"\nname = "door"\n'
    folder = range_campaign(tmp_path / "c", POWER + SOURCE + SWITCH + door, scan=CUT + "\ndwell_s = 0.3")
    with wired(folder) as (campaign, twin):
        source, taken = twin.small["generator"], []

        def at_point(event):
            if event.kind == "point" and event.data["measured"] > 11 and not taken:
                begin = time.monotonic()
                twin.small["door"].closed = False
                while source.on and time.monotonic() < begin + 2.0:
                    time.sleep(0.001)
                taken.append(time.monotonic() - begin)

        outcome, _, _ = run_of(campaign, listener=at_point)
        assert outcome.state is State.FAULTED and "door is open" in outcome.reason
        assert not source.on
        prompt(taken, 0.25)  # one reading of the contact (50 ms) and three lines to the source


def test_a_source_beside_an_analyzer_with_phase_is_refused(tmp_path):
    folder = range_campaign(tmp_path / "c", VECTOR + SOURCE)
    with wired(folder) as (campaign, _), pytest.raises(InstrumentError, match="only with a power-only receiver"):
        run_of(campaign)


def test_a_level_that_reads_back_otherwise_is_refused(tmp_path):
    folder = range_campaign(tmp_path / "c", POWER + SOURCE)
    with wired(folder) as (campaign, twin), instruments(campaign) as bench:
        source = twin.small["generator"]
        honest = source.answer
        source.answer = lambda line: "-5" if line.strip() == "SOUR:POW?" else honest(line)
        with pytest.raises(InstrumentError, match="level reads -5 dBm, must be 0 dBm"):
            bench.analyzer.configure(
                SweepSettings(start_hz=24e9, stop_hz=24.1e9, points=3, if_bandwidth_hz=1000.0, power_dbm=0.0), (1,)
            )
        assert not source.on


def test_a_switch_box_brings_device_and_reference_as_the_analyzers_own_switch_does(tmp_path, vector_trace):
    folder = range_campaign(tmp_path / "c", VECTOR + SWITCH)
    with wired(folder) as (campaign, twin):
        outcome, _, run = run_of(campaign)
        assert outcome.state is State.DONE
        np.testing.assert_array_equal(trace_of(run), vector_trace)
        box = twin.small["box"]
        honest = box.answer
        box.answer = lambda line: "1" if line.strip() == "PATH?" else honest(line)
        outcome, _, _ = run_of(campaign, "stuck")
    assert outcome.state is State.FAULTED and "switch stands at '1', must be at the reference" in outcome.reason


def test_states_are_taken_by_an_instrument_of_the_range_and_proven(tmp_path):
    states = '[[instruments]]\nrole = "state"\nname = "beams"\n'
    folder = range_campaign(tmp_path / "c", VECTOR + states, twin="noise = false\nstate_steer_deg = [0, 12]\n")
    with pytest.raises(InputError, match="'beams' takes states: device.toml must name them"):
        Campaign.load(folder)
    text = (folder / "device.toml").read_text(encoding="utf-8")
    (folder / "device.toml").write_text(text + '[states]\nnames = ["left", "right"]\n', encoding="utf-8")
    with wired(folder) as (campaign, twin):
        outcome, _, run = run_of(campaign)
        assert outcome.state is State.DONE, outcome
        record = open_dataset(run.record)
        scan = record.isel(point=np.flatnonzero(record["state_index"].values >= 0))
        level = [np.abs(scan["trace"].values[scan["state_index"].values == k, 0, 0]) for k in (0, 1)]
        azimuth = [scan["readback_deg"].values[scan["state_index"].values == k, 0] for k in (0, 1)]
        # Steered by 12 deg: the strongest of -20, -10, 0, 10, 20 deg is 0 in the one state and 10 in the other.
        assert [float(a[np.argmax(v)]) for a, v in zip(azimuth, level, strict=True)] == pytest.approx([0, 10], abs=0.1)
        beams = twin.small["beams"]
        honest = beams.answer
        beams.answer = lambda line: "OK" if line.startswith("STATE ") else honest(line)
        outcome, _, _ = run_of(campaign, "deaf")
    assert outcome.state is State.FAULTED and "state reads '" in outcome.reason


def test_a_device_that_transmits_by_itself_is_cautioned_with_its_own_power_and_measured(tmp_path, vector_trace):
    """EIRP 33 dBm: power density 1 W/m^2 at sqrt(10^(3.3 - 3) / 4 pi) = 0.40 m (Friis)."""
    none = (('method = "switch"', 'method = "none"'),)
    mine = (("expected_gain_dbi = 21.0", "expected_gain_dbi = 21.0\neirp_dbm = 33.0"),)
    with pytest.raises(InputError, match="method = 'switch': must be 'none' for a device that transmits by itself"):
        Campaign.load(range_campaign(tmp_path / "horn", POWER, device=mine))
    with pytest.raises(InputError, match="takes no source"):
        Campaign.load(range_campaign(tmp_path / "source", POWER + SOURCE, device=mine, chamber=none))
    folder = range_campaign(tmp_path / "c", POWER, device=mine, chamber=none)
    campaign, plan = services.make_plan(folder)
    text = " ".join(cautions_of(campaign, plan))
    assert "33 dBm EIRP" in text and "nothing here can switch it off" in text and "device is on" in text
    exposure = plan.predicted["exposure"]
    assert exposure["eirp_dbm"] == pytest.approx(33.0)
    limit = 55.0 / 24.0**0.177  # ICNIRP 2020, Table 6; 10 W/m^2 whole body (Table 5) is lower
    assert exposure["public_distance_m"] == pytest.approx(
        np.sqrt(10 ** (0.3) / (4 * np.pi * min(limit, 10.0))), rel=0.05
    )
    with wired(folder) as (wired_campaign, _):
        outcome, _, run = run_of(wired_campaign)
    assert outcome.state is State.DONE, outcome
    record = open_dataset(run.record)
    scan = np.abs(record["trace"].values[record["plan_index"].values >= 0])[:, 0, 0]
    # 12 dBm at the device's port (33 dBm - 21 dBi) instead of the analyzer's 0 dBm.
    assert 20 * np.log10(scan.max() / _at_device(vector_trace)) == pytest.approx(12.0, abs=0.01)


def _at_device(trace):
    """The level along the beam: the strongest point of a run whose horn reads less than the device."""
    return trace[:, 0, 0].max()


def test_acknowledged_states_of_a_serial_line(tmp_path):
    """A device on a pseudo-terminal that acknowledges: nobody's own server."""
    import os
    import tty

    from colure.instruments.device_states import CommandStates
    from colure.model.device import States

    near, far = os.openpty()
    tty.setraw(far)
    taken, answers = [], {"b": b"NAK\n"}

    def serve():
        while data := os.read(near, 100):
            name = data.decode().split()[-1]
            taken.append(name)
            os.write(near, answers.get(name, b"ACK " + name.encode() + b"\n"))
            if name == "end":
                return

    thread = threading.Thread(target=serve, daemon=True)
    thread.start()
    table = States(names=("a", "b", "end"), resource=f"ASRL{os.ttyname(far)}::INSTR", set="BEAM {name}",
                   acknowledge="^ACK", timeout_s=1.0)  # fmt: skip
    device = CommandStates(table)
    device.take(0, "a")
    with pytest.raises(InstrumentError, match=re.escape("answered 'NAK', must match '^ACK'")):
        device.take(1, "b")
    device.take(2, "end")
    thread.join(timeout=2.0)
    device.close()
    os.close(near)
    os.close(far)
    assert taken == ["a", "b", "end"]


def test_coarse_powers_may_repeat_and_a_stuck_power_meter_is_found(tmp_path, nightly):
    """A meter that shows whole decibels says the same of neighbours; one that always says the same is broken."""
    folder = range_campaign(tmp_path / "c", POWER + SOURCE + SWITCH, scan='theta_deg = "-16:16:1"\nphi_deg = 0')
    with wired(folder) as (campaign, twin):
        read = twin.chamber.sweep

        def coarse(*arguments, **more):
            return 10 ** (np.round(20 * np.log10(np.abs(read(*arguments, **more)))) / 20)

        twin.chamber.sweep = coarse
        outcome, _, _ = run_of(campaign)
        assert outcome.state is State.DONE, outcome
        twin.chamber.sweep = lambda *arguments, **more: np.full(1, 0.01)
        outcome, _, _ = run_of(campaign, "stuck")
    assert outcome.state is State.FAULTED and "frozen trace" in outcome.reason


SPHERE = 'name = "Sphere"\nstart_ghz = 24.0\nstop_ghz = 24.0\npoints = 1\nwanted_level_db = -20\nstep_deg = 30\nscheme = "two-pass"\n'


def test_a_device_that_transmits_gives_the_figures_that_need_no_gain(tmp_path, nightly):
    """The same device fed by a generator and read against a horn: the directivity is the same, only that one has a gain."""
    small = (("[49.7, 49.7, 4.0]", "[2.0, 2.0, 1.0]"), ("[0.0, 0.0, -30.0]", "[0.0, 0.0, 0.0]"))
    found = {}
    for name, roles, chamber, device in (
        ("fed", POWER + SOURCE + SWITCH, (), small),
        ("alone", POWER, (('method = "switch"', 'method = "none"'),),
         (*small, ("expected_gain_dbi = 21.0", "expected_gain_dbi = 21.0\neirp_dbm = 33.0"))),
    ):  # fmt: skip
        folder = range_campaign(tmp_path / name, roles, chamber=chamber, device=device)
        (folder / "goal.toml").write_text(SPHERE, encoding="utf-8")
        campaign, plan = services.make_plan(folder)
        run = run_folder(folder, "a")
        assert services.acquire(campaign, plan, run).state is State.DONE
        found[name] = {one.name: one for one in services.evaluate_power(campaign, run)}
    assert found["alone"]["directivity_dbi"].value == pytest.approx(found["fed"]["directivity_dbi"].value, abs=1e-3)
    assert "gain_dbi" in found["fed"] and "gain_dbi" not in found["alone"] and "eirp_dbm" not in found["alone"]


def test_cuts_of_a_power_only_receiver_are_refused_before_anything_moves(tmp_path):
    from click.testing import CliRunner

    from colure.app.cli import main

    folder = range_campaign(tmp_path / "c", POWER + SOURCE + SWITCH)
    result = CliRunner().invoke(main, ["cut", str(folder), "--phi", "0", "--theta", "-20:20:10", "--yes"])
    assert result.exit_code == 2 and "a cut is evaluated from phase and level" in result.output
    assert not run_folder(folder, "cut").journal.exists()


def test_an_open_door_has_an_analyzers_own_source_switched_off_after_the_sweep_under_way(tmp_path, monkeypatch, prompt):
    """The line is busy until the sweep ends; the axes are held at once all the same."""
    from colure.instruments.scpi_analyzer import ScpiAnalyzer

    told, begun = [], []
    safe, sweep = ScpiAnalyzer.safe, ScpiAnalyzer.sweep

    def noted(self):
        told.append(time.monotonic())
        safe(self)

    def counted(self, *arguments, **options):
        begun.append(time.monotonic())
        return sweep(self, *arguments, **options)

    monkeypatch.setattr(ScpiAnalyzer, "safe", noted)
    monkeypatch.setattr(ScpiAnalyzer, "sweep", counted)
    door = '[[instruments]]\nrole = "interlock"\nname = "door"\n'
    slow = (("if_bandwidth_hz = 1000", "if_bandwidth_hz = 5"),)  # three frequencies: 0.6 s a sweep
    folder = range_campaign(tmp_path / "c", VECTOR + door, chamber=slow)
    with wired(folder) as (campaign, twin):
        opened = []

        def at_point(event):
            if event.kind == "point" and event.data["measured"] == 3:
                threading.Timer(0.25, open_it).start()

        def open_it():
            opened.append(time.monotonic())
            twin.small["door"].closed = False

        outcome, _, _ = run_of(campaign, listener=at_point)
    assert outcome.state is State.FAULTED and "door is open" in outcome.reason
    off = min(moment for moment in told if moment > opened[0])
    # One reading of the contact, one look of the engine (50 ms each); not the sweep's 0.6 s.
    prompt([off - opened[0]], 0.4)
    assert sum(opened[0] < moment for moment in begun) <= 1, "no sweep is begun with an open door"


class Lazy:
    """A generator behind a slow line: what it was told has reached it only once it has answered something sent later."""

    resource = "lazy"

    def __init__(self) -> None:
        self.told: list[str] = []
        self.frequency_hz = 0.0

    def write(self, text: str) -> None:
        self.told.append(text)

    def query(self, text: str) -> str:
        for one in self.told:
            self.frequency_hz = float(one.split()[1]) if one.startswith("F ") else self.frequency_hz
        self.told.clear()
        return "1" if text == "O?" else "lazy 1"


class LazyDriver:
    """A driver of another package for it, which leaves its commands on the way."""

    def __init__(self, line: Lazy) -> None:
        self._line = line

    def tune(self, frequency_hz: float) -> None:
        self._line.write(f"F {frequency_hz:g}")

    def require_on(self) -> None:
        assert self._line.query("O?") == "1"


class Meter:
    """A power-only receiver on a line of its own: it reads where the generator is tuned to at this moment."""

    receiver = "power"

    def __init__(self, line: Lazy) -> None:
        self._line = line
        self.tuned = lambda frequency_hz: None

    def sweep(self) -> list[float]:
        read = []
        for frequency_hz in (1e9, 2e9, 3e9):
            self.tuned(frequency_hz)
            read.append(self._line.frequency_hz)
        return read


@pytest.mark.parametrize("kind", ["words", "driver"])
def test_nothing_is_read_before_the_generator_has_taken_its_frequency(kind):
    """Two lines: without an answer from the generator the receiver reads the frequency before, at one of them nothing at all."""
    line = Lazy()
    words = SourceProfile(kind="source", identity="I?", tune="F {frequency_hz:g}", level="P {power_dbm}", on="ON", off="OFF", output="O?")  # fmt: skip
    source = (
        WordsSource("x", words, timeout_s=1.0, opener=lambda *_, **__: line) if kind == "words" else LazyDriver(line)
    )
    assert ReceiverChain(Meter(line), source=source).sweep() == [1e9, 2e9, 3e9]
