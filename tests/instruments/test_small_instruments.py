"""Conformance of every role, drivers of other packages, and peers of other make: a contact, a sensor and a switch nobody here wrote for."""

from __future__ import annotations

import json
import socketserver
import sys
import threading
import tomllib
from contextlib import contextmanager
from pathlib import Path

import numpy as np
import pytest
from click.testing import CliRunner

from colure.acquire.states import State
from colure.app.cli import main
from colure.errors import InputError
from colure.instruments.protocols import InstrumentError, LostError
from colure.instruments.role_profiles import role_profile
from colure.instruments.small_instruments import WordsContact, WordsSensor, WordsSource, WordsSwitch
from colure.model.files import open_dataset
from tests.acquire.test_sources import AXES, run_of
from tests.app.test_doors import installed
from tests.ranges import range_campaign, wired

EXAMPLE = Path(__file__).parents[2] / "examples" / "river_level"
SMALL = {
    "source": "scpi-source",
    "switch": "switch-line",
    "interlock": "contact-line",
    "sensor": "sensor-line",
    "state": "states-line",
}
DRIVERS = {"source": "station-generator", "switch": "station-box", "interlock": "two-of-two", "sensor": "station-sensor",
           "state": "station-beams"}  # fmt: skip
STATES = '[states]\nnames = ["left", "right"]\n'


def roles(profiles=None):
    head = '[[instruments]]\nrole = "receiver"\nprofile = "scpi-power-meter"\n' + AXES
    profile = {} if profiles is None else {role: f'profile = "driver:{name}"\n' for role, name in profiles.items()}
    return head + "".join(f'[[instruments]]\nrole = "{role}"\n{profile.get(role, "")}' for role in SMALL)


@pytest.fixture
def example(tmp_path, monkeypatch):
    points = tomllib.loads((EXAMPLE / "pyproject.toml").read_text(encoding="utf-8"))["project"]["entry-points"]
    installed(tmp_path / "site", "river-level-example", points)
    for path in (EXAMPLE / "src", tmp_path / "site"):
        monkeypatch.syspath_prepend(str(path))
    yield
    sys.modules.pop("river_level_instruments", None)


def with_states(folder):
    device = folder / "device.toml"
    device.write_text(device.read_text(encoding="utf-8") + STATES, encoding="utf-8")
    return folder


def conforms(*arguments):
    result = CliRunner().invoke(main, ["conformance", *arguments, "--json"])
    return result, json.loads(result.stdout) if result.exit_code in (0, 1) and result.stdout else []


def test_every_role_conforms_by_its_words_and_by_the_drivers_of_the_example_package(tmp_path, example):
    folder = with_states(range_campaign(tmp_path / "c", roles()))
    with wired(folder) as (_, twin):
        for role, profile in SMALL.items():
            result, answers = conforms(profile, "--resource", twin.resources[role], "--states", "left,right")
            assert result.exit_code == 0, (role, result.output)
            own, found = conforms(f"driver:{DRIVERS[role]}", "--role", role, "--resource", twin.resources[role])
            assert own.exit_code == 0, (role, own.output)
            assert {"connection and identity", "reconnection"} <= {one["what"] for one in answers} & {
                one["what"] for one in found
            }
        assert not twin.small["source"].on
        twin.small["source"].answer = lambda line: "1" if line.strip() == "OUTP?" else "0"
        result, answers = conforms("scpi-source", "--resource", twin.resources["source"])
        assert result.exit_code == 1 and any("SOURCE STAYS ON" in one["found"] for one in answers)


def test_a_range_of_drivers_alone_measures_what_one_of_words_does(tmp_path, example, nightly):
    traces = []
    for name, chosen in (("words", None), ("drivers", DRIVERS)):
        folder = with_states(range_campaign(tmp_path / name, roles(chosen)))
        with wired(folder) as (campaign, twin):
            outcome, _, run = run_of(campaign)
            assert outcome.state is State.DONE, outcome
            assert not twin.small["source"].on
        record = open_dataset(run.record)
        traces.append(record.sortby("plan_index")["trace"].values)
    np.testing.assert_allclose(*traces, rtol=2e-5)
    assert list(record["sensor"].values) == ["sensor.temperature_k"]
    assert np.all(np.abs(record["conditions"].values - 296.15) < 0.7)
    shown = CliRunner().invoke(main, ["instruments", str(folder), "--json"])
    listed = {one["role"]: one for one in json.loads(shown.stdout)}
    assert set(listed) == {"receiver", "axis-controller", *SMALL}
    assert listed["sensor"]["from"] == "river-level-example 0.1.0"


def test_a_driver_that_lacks_something_and_one_that_nobody_brings_are_refused_by_name(tmp_path, example, monkeypatch):
    import river_level_instruments

    monkeypatch.delattr(river_level_instruments.TwoOfTwo, "closed")
    folder = with_states(range_campaign(tmp_path / "c", roles(DRIVERS)))
    with wired(folder) as (campaign, _), pytest.raises(InstrumentError, match="driver:two-of-two: lacks closed"):
        run_of(campaign)
    result, answers = conforms("driver:nobodys", "--role", "sensor", "--resource", "h:1")
    assert result.exit_code == 1 and "no package brings it" in answers[0]["found"]
    assert "needs --role" in conforms("driver:nobodys", "--resource", "h:1")[0].output


def test_a_profile_of_another_role_is_refused(tmp_path):
    with pytest.raises(InputError, match="kind = 'sensor': must be contact or modbus-contact for role 'interlock'"):
        role_profile("sensor-line", role="interlock")
    result, _ = conforms("sensor-line", "--role", "switch", "--resource", "h:1")
    assert "profile sensor-line is for role 'sensor'" in result.output


@contextmanager
def peer(answer, end=b"\r"):
    """A server of another make: its own line ends, its own words."""

    class Handler(socketserver.StreamRequestHandler):
        def handle(self):
            buffer = b""
            while data := self.request.recv(100):
                buffer += data
                while end in buffer:
                    line, buffer = buffer.split(end, 1)
                    reply = answer(line.decode())
                    if reply is not None:
                        self.request.sendall(reply.encode() + end)

    class Server(socketserver.ThreadingTCPServer):
        allow_reuse_address, daemon_threads = True, True

    server = Server(("127.0.0.1", 0), Handler)
    threading.Thread(target=server.serve_forever, kwargs={"poll_interval": 0.02}, daemon=True).start()
    try:
        yield f"TCPIP::127.0.0.1::{server.server_address[1]}::SOCKET"
    finally:
        server.shutdown()
        server.server_close()


def words_of(tmp_path, text):
    (tmp_path / "own.toml").write_text(text + '[line]\nread_end = "\\r"\nwrite_end = "\\r"\n', encoding="utf-8")
    return role_profile("own", tmp_path)


def test_a_controller_of_inputs_that_answers_in_hexadecimal_is_a_contact(tmp_path):
    """Bit 2 of an input register: `%I` answers `I=04` when closed; every other answer but `I=00` is none."""
    state = {"I": "04"}
    words = words_of(tmp_path, 'kind = "contact"\nread = "%I"\nclosed = "^I=04$"\nopen = "^I=00$"\n')
    with peer(lambda line: f"I={state['I']}" if line == "%I" else "?") as resource:
        contact = WordsContact(resource, words, timeout_s=0.5)
        assert contact.closed()
        state["I"] = "00"
        assert not contact.closed()
        for nonsense in ("05", "4", "", "0400"):
            state["I"] = nonsense
            with pytest.raises(LostError, match="neither open nor closed"):
                contact.closed()
        state["I"] = "04"
        assert contact.closed()
        contact.close()


def test_a_logger_in_tenths_of_a_degree_fahrenheit_is_a_sensor(tmp_path):
    """73.4 deg F are 23 deg C (definition of the scale); a broken probe answers 9999."""
    tenths = {"value": 734}
    words = words_of(
        tmp_path,
        'kind = "sensor"\n[quantities.temperature_c]\nquery = "R1"\npattern = "^R1,(?P<value>-?\\\\d+)$"\n'
        "scale = 0.05555555555555556\noffset = -17.77777777777778\nleast = -40\nmost = 85\n",
    )
    with peer(lambda line: f"R1,{tenths['value']}") as resource:
        sensor = WordsSensor(resource, words, timeout_s=0.5)
        assert sensor.read()["temperature_c"] == pytest.approx(23.0)
        tenths["value"] = 9999
        with pytest.raises(InstrumentError, match="must be a number from -40 to 85"):
            sensor.read()
        sensor.close()


def test_a_logger_with_a_decimal_comma_is_refused_and_not_read_without_its_decimals(tmp_path):
    words = words_of(tmp_path, 'kind = "sensor"\n[quantities.temperature_c]\nquery = "T?"\nleast = -40\nmost = 85\n')
    with peer(lambda line: "23,5") as resource:
        sensor = WordsSensor(resource, words, timeout_s=0.5)
        with pytest.raises(InstrumentError, match="the pattern takes '23' of '23,5'"):
            sensor.read()
        sensor.close()


def test_a_matrix_without_a_readback_is_a_switch_and_a_refusal_is_heard(tmp_path):
    heard = []
    words = words_of(tmp_path, 'kind = "switch"\nacknowledge = "^done"\ndevice = "close 11"\nreference = "close 12"\n')

    def answer(line):
        heard.append(line)
        return "done" if line != "close 12" or len(heard) < 4 else "relay worn"

    with peer(answer) as resource:
        switch = WordsSwitch(resource, words, timeout_s=0.5)
        for channel in (1, 2, 1):
            switch.route(channel)
        with pytest.raises(InstrumentError, match="'relay worn', must match"):
            switch.route(2)
        with pytest.raises(InstrumentError, match="`cable` is empty"):
            switch.route(3)
        assert heard == ["close 11", "close 12", "close 11", "close 12"]
        switch.close()


def test_a_generator_that_stops_answering_counts_as_on(tmp_path):
    silent = []
    words = words_of(
        tmp_path,
        'kind = "source"\ntune = "F{frequency_hz:.0f}"\nlevel = "L{power_dbm}"\non = "RF1"\noff = "RF0"\noutput = "RF?"\n',
    )
    state = {"on": "0"}

    def answer(line):
        if line in ("RF1", "RF0"):
            state["on"] = line[-1]
        return state["on"] if line == "RF?" and not silent else None

    with peer(answer) as resource:
        source = WordsSource(resource, words, timeout_s=0.2)
        source.prepare(-10.0)
        source.on()
        source.off()
        silent.append(True)
        with pytest.raises(InstrumentError, match="SOURCE STAYS ON after 3 attempts"):
            source.off()
        source.close()
