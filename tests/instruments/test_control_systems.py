"""Modbus and EPICS against servers that others wrote, each in a process of its own."""

from __future__ import annotations

import os
import socket
import subprocess
import sys
import time
from contextlib import contextmanager
from pathlib import Path
from threading import Timer

import pytest

from colure.acquire.clocks import SystemClock
from colure.errors import InputError, InstrumentError
from colure.instruments.connect import connect_axes
from colure.instruments.protocols import HeldError, LostError, unwatched
from colure.instruments.small_connect import connect_contact, connect_sensor
from colure.model.chamber import Axis, AxisController
from colure.model.instrument import Instrument
from tests.instruments.range_beside import Places, require_measured_beside

ROOT = Path(__file__).parents[2]
SLOW_S = 30.0


def free_port() -> int:
    with socket.socket() as one:
        one.bind(("127.0.0.1", 0))
        return int(one.getsockname()[1])


@contextmanager
def child(module: str, *arguments: str, **environment: str):
    """Run a server as a child, ended with the test."""
    process = subprocess.Popen([sys.executable, "-m", module, *arguments], cwd=ROOT, env={**os.environ, **environment},
                               stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)  # fmt: skip
    try:
        yield process
    finally:
        process.kill()
        process.wait()


def listening(port: int) -> None:
    end = time.monotonic() + SLOW_S
    while True:
        with socket.socket() as one:
            if one.connect_ex(("127.0.0.1", port)) == 0:
                return
        assert time.monotonic() < end
        time.sleep(0.05)


def words(folder: Path, name: str, text: str) -> None:
    (folder / f"{name}.toml").write_text(text, encoding="utf-8")


def sensor_words(quantity: str) -> str:
    return f'kind = "modbus-sensor"\nunit = 7\n[quantities]\n{quantity}\n'


def test_contact_and_sensor_over_modbus(tmp_path):
    port = free_port()
    words(tmp_path, "shut", 'kind = "modbus-contact"\nunit = 7\nread = "coil"\naddress = 3\n')
    words(tmp_path, "ajar", 'kind = "modbus-contact"\nunit = 7\naddress = 4\n')
    words(tmp_path, "nobody", 'kind = "modbus-contact"\nunit = 7\naddress = 400\n')
    words(tmp_path, "air", sensor_words('temperature_c = { address = 10, type = "float32", least = -40, most = 85 }\n'
                                        'dew_point_c = { address = 12 }\n'
                                        'pressure_hpa = { address = 13, type = "uint32", low_word_first = true, scale = 0.01 }'))  # fmt: skip
    words(tmp_path, "broken", sensor_words('temperature_c = { address = 15, type = "float32" }'))

    def contact(name):
        return connect_contact(Instrument(role="interlock", profile=name), f"127.0.0.1:{port}", tmp_path)

    def sensor(name):
        return connect_sensor(Instrument(role="sensor", profile=name, timeout_s=1.0), f"127.0.0.1:{port}", tmp_path)

    with child("tests.instruments.modbus_peer", str(port)) as server:
        listening(port)
        shut, ajar, nobody, air, broken = (
            contact("shut"),
            contact("ajar"),
            contact("nobody"),
            sensor("air"),
            sensor("broken"),
        )
        assert shut.closed() and not ajar.closed() and "unit 7" in shut.identity()
        with pytest.raises(LostError, match="was refused"):
            nobody.closed()
        # Values by IEEE 754 and two's complement, written out in the peer.
        assert air.read() == pytest.approx({"temperature_c": 21.5, "dew_point_c": -7.0, "pressure_hpa": 1013.25})
        with pytest.raises(InstrumentError, match="temperature_c reads nan"):
            broken.read()
        server.kill()
        server.wait()
        for _ in range(2):
            with pytest.raises(LostError):
                shut.closed()
    with child("tests.instruments.modbus_peer", str(port)):
        listening(port)
        assert shut.closed()  # by itself, once the line is back
        for one in (shut, ajar, nobody, air, broken):
            one.close()


def test_a_profile_of_the_wrong_role_is_refused(tmp_path):
    words(tmp_path, "air", sensor_words("temperature_c = { address = 10 }"))
    with pytest.raises(InputError, match="must be contact or modbus-contact"):
        connect_contact(Instrument(role="interlock", profile="air"), "127.0.0.1:1", tmp_path)


AXIS = {"min_deg": -180, "max_deg": 180, "speed_deg_s": 20, "acceleration_deg_s2": 40, "settle_s": 0.0}


@pytest.mark.skipif(os.name == "nt", reason="the library's server wants a POSIX loop")
def test_axes_behind_motor_records(tmp_path, monkeypatch):
    for name in ("EPICS_CA_ADDR_LIST", "EPICS_CA_AUTO_ADDR_LIST"):
        monkeypatch.setenv(name, "")
    port = free_port()
    words(tmp_path, "records", 'kind = "epics-motors"\n[motors]\nazimuth = "range:m1"\nroll = "range:m2"\n')
    table = AxisController(profile="records", timeout_s=2.0)
    axes = {name: Axis(**AXIS) for name in ("azimuth", "roll")}
    with child("tests.instruments.motor_peer", EPICS_CA_SERVER_PORT=str(port)):
        listening(port)
        driver = connect_axes(table, f"127.0.0.1:{port}", axes, tmp_path, timer=SystemClock())
        heard = []
        driver.heard = lambda: heard.append(1)
        seen = []
        driver.begin({"azimuth": 4.0, "roll": -2.0})
        rest = driver.finish(0.0, seen.append, limit_s=10.0)
        assert rest.positions_deg == pytest.approx({"azimuth": 4.0, "roll": -2.0}, abs=1e-6) and not rest.moving
        assert any(status.moving for status in seen) and len(heard) > 20
        driver.begin({"azimuth": 40.0, "roll": -2.0})
        time.sleep(0.4)
        driver.hold()
        with pytest.raises(HeldError):
            driver.finish(0.0, seen.append, limit_s=10.0)
        with pytest.raises(HeldError):
            driver.begin({"azimuth": 0.0})
        time.sleep(0.3)
        held = driver.status()
        assert held.held and 4.0 < held.positions_deg["azimuth"] < 30.0
        driver.release()
        time.sleep(0.3)
        freed = driver.status()
        assert not freed.held and freed.positions_deg == pytest.approx(held.positions_deg)
        driver.set_speeds({"azimuth": 5.0})
        driver.begin({**freed.positions_deg, "azimuth": freed.positions_deg["azimuth"] + 0.5})
        assert [driver._read(f"range:m{number}.VELO") for number in (1, 2)] == [5.0, 20.0]
        driver.finish(0.0, seen.append, limit_s=10.0)
        driver.set_speeds(None)
        assert driver._read("range:m1.VELO") == 20.0
        with pytest.raises(InstrumentError, match="position"):
            driver.pulses("azimuth", start_deg=0.0, step_deg=1.0, count=3)
    with pytest.raises(LostError):
        driver.status()
    driver.close()


#: Bits of MSTA as the reference of the motor record (synApps) names them, counted from 0, and what a person reads.
BITS = {2: "limit-switch, positive end", 13: "limit-switch, negative end", 6: "slip or stall", 9: "driver problem"}


@pytest.mark.skipif(os.name == "nt", reason="the library's server wants a POSIX loop")
def test_motor_records_home_tell_alarms_and_are_held_on_the_way(tmp_path, monkeypatch):
    for name in ("EPICS_CA_ADDR_LIST", "EPICS_CA_AUTO_ADDR_LIST"):
        monkeypatch.setenv(name, "")
    port = free_port()
    text = 'kind = "epics-motors"\nhome = "forward"\n[motors]\nazimuth = "range:m1"\nroll = "range:m2"\n'
    words(tmp_path, "records", text)
    table = AxisController(profile="records", timeout_s=2.0)
    axes = {name: Axis(**AXIS) for name in ("azimuth", "roll")}
    with child("tests.instruments.motor_peer", EPICS_CA_SERVER_PORT=str(port)):
        listening(port)
        driver = connect_axes(table, f"127.0.0.1:{port}", axes, tmp_path, timer=SystemClock())
        driver.begin({"azimuth": 6.0, "roll": -2.0})
        driver.finish(0.0, unwatched, limit_s=10.0)
        assert driver.home(unwatched, 20.0).positions_deg == pytest.approx({"azimuth": 0.0, "roll": 0.0}, abs=1e-6)
        (bits,) = driver._context.get_pvs("range:bits")
        bits.wait_for_connection(timeout=SLOW_S)
        for bit, said in BITS.items():
            bits.write([1 << bit], timeout=SLOW_S)
            assert driver.status().alarm == f"azimuth: {said}"
        bits.write([1 << 12], timeout=SLOW_S)
        with pytest.raises(LostError, match="has lost its controller"):
            driver.status()
        bits.write([0], timeout=SLOW_S)
        driver.begin({"azimuth": 40.0, "roll": 0.0})
        driver.finish(0.0, unwatched, limit_s=10.0)
        Timer(0.8, driver.hold).start()  # after the marks, on the way to the home position
        with pytest.raises(HeldError):
            driver.home(unwatched, 20.0)
        driver.release()
        assert driver.status().positions_deg["azimuth"] > 5.0
        driver.close()


def places_of(port: int, folder: Path) -> Places:
    """Return what asks the records by a driver of its own, which moves nothing."""
    axes = {name: Axis(**AXIS) for name in ("azimuth", "roll", "probe")}
    driver = connect_axes(AxisController(profile="records", timeout_s=2.0), f"127.0.0.1:{port}", axes, folder, timer=SystemClock())  # fmt: skip
    return lambda: driver.status().positions_deg


@pytest.mark.skipif(os.name == "nt", reason="the library's server wants a POSIX loop")
def test_a_whole_campaign_with_motor_records(tiny_campaign, monkeypatch, nightly):
    port = free_port()
    records = '[motors]\nazimuth = "range:m1"\nroll = "range:m2"\nprobe = "range:m3"\n'
    words(tiny_campaign, "records", f'kind = "epics-motors"\nhome = "forward"\n{records}')
    with child("tests.instruments.motor_peer", EPICS_CA_SERVER_PORT=str(port)):
        listening(port)
        motion = {"speed_deg_s": 60.0, "acceleration_deg_s2": 240.0, "settle_s": 0.05}
        require_measured_beside(tiny_campaign, f"127.0.0.1:{port}", "records", places_of(port, tiny_campaign), **motion)
