"""A machine controller that somebody else wrote (Debian package linuxcnc-uspace, its headless simulator with three rotary
joints, its TCP server), measured through by a profile alone: echo on, acknowledgements on, nothing added to the controller."""

from __future__ import annotations

import os
import random
import shutil
import signal
import socket
import subprocess
import time
import tomllib
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager, suppress

import psutil
import pytest

from colure.acquire.clocks import SystemClock
from colure.instruments.line_axes import LineAxes
from colure.instruments.line_profile import LineProfile
from colure.instruments.protocols import HeldError, unwatched
from colure.model.chamber import Axis
from colure.model.loading import validate
from tests.instruments.range_beside import Places, require_measured_beside

PROFILE = r"""
kind = "line-axes"
identity = "hello EMC colure 1.0"
prepare = [
  { send = "set enable EMCTOO", answers = 0, pause_s = 0.1 },
  "set verbose on", "set estop off", "set machine on", "set mode mdi",
]
move = "set mdi G90 G0 {words}"
timed = "set mdi G93 G90 G1 {words} F{per_minute}"
coordinated = true
acknowledge = "ACK$"
completion = "position"
position = "get abs_act_pos"
position_pattern = '^ABS_ACT_POS \S+ \S+ \S+ (?P<azimuth>\S+) (?P<roll>\S+) (?P<probe>\S+)$'
status = "get joint_homed"
not_referenced = "^JOINT_HOMED.*? NO( \\S+){3,5}$"
fault = "NAK"
home = [
  "set mode manual",
  { send = "set home 0", pause_s = 0.1 }, { send = "get joint_homed", until = "^JOINT_HOMED YES", limit_s = 60 },
  { send = "set home 1", pause_s = 0.1 }, { send = "get joint_homed", until = "^JOINT_HOMED( YES){2}", limit_s = 60 },
  { send = "set home 2", pause_s = 0.1 }, { send = "get joint_homed", until = "^JOINT_HOMED( YES){3}", limit_s = 60 },
  "set mode mdi",
]
hold = "set abort"
hold_answer = "^SET ABORT ACK"
release = "set mode mdi"
[line]
read_end = "\n"
write_end = "\r\n"
echo = true
[axes]
azimuth.name = "A"
roll.name = "B"
probe.name = "C"
"""
MACHINE = """[EMC]
VERSION = 1.1
MACHINE = three-rotary
DEBUG = 0
[DISPLAY]
DISPLAY = linuxcncrsh
CYCLE_TIME = 0.100
[TASK]
TASK = milltask
CYCLE_TIME = 0.001
[RS274NGC]
PARAMETER_FILE = three.var
[EMCMOT]
EMCMOT = motmod
COMM_TIMEOUT = 1.0
SERVO_PERIOD = 1000000
[HAL]
HALFILE = three.hal
[KINS]
KINEMATICS = trivkins coordinates=abc
JOINTS = 3
[TRAJ]
COORDINATES = A B C
LINEAR_UNITS = mm
ANGULAR_UNITS = degree
DEFAULT_LINEAR_VELOCITY = 100
MAX_LINEAR_VELOCITY = 100
DEFAULT_ANGULAR_VELOCITY = 40
MAX_ANGULAR_VELOCITY = 40
NO_FORCE_HOMING = 1
[EMCIO]
EMCIO = io
CYCLE_TIME = 0.100
TOOL_TABLE = tool.tbl
"""
JOINT = """[AXIS_{letter}]
MAX_VELOCITY = 40
MAX_ACCELERATION = 400
MIN_LIMIT = -190
MAX_LIMIT = 190
[JOINT_{number}]
TYPE = ANGULAR
MAX_VELOCITY = 40
MAX_ACCELERATION = 400
MIN_LIMIT = -190
MAX_LIMIT = 190
HOME = 0
HOME_OFFSET = {offset}
HOME_SEARCH_VEL = 0
HOME_LATCH_VEL = 0
HOME_FINAL_VEL = 20
HOME_SEQUENCE = 0
FERROR = 50
MIN_FERROR = 50
"""
WIRES = """loadrt [KINS]KINEMATICS
loadrt [EMCMOT]EMCMOT servo_period_nsec=[EMCMOT]SERVO_PERIOD num_joints=[KINS]JOINTS
addf motion-command-handler servo-thread
addf motion-controller servo-thread
net p0 joint.0.motor-pos-cmd => joint.0.motor-pos-fb
net p1 joint.1.motor-pos-cmd => joint.1.motor-pos-fb
net p2 joint.2.motor-pos-cmd => joint.2.motor-pos-fb
net estop iocontrol.0.user-enable-out => iocontrol.0.emc-enable-in
"""
PORT = 5007  # the server's own; it has no option for another one that works in every version


def require_ready(limit_s: float = 40.0) -> None:
    """Wait until the server answers: it listens before it has found its controller."""
    end = time.monotonic() + limit_s
    while time.monotonic() < end:
        with suppress(OSError), socket.create_connection(("127.0.0.1", PORT), timeout=5.0) as line:
            line.sendall(b"hello EMC starting 1.0\r\n")
            if line.recv(100).startswith(b"HELLO ACK"):
                return
        time.sleep(0.2)
    raise AssertionError(f"the machine controller does not answer within {limit_s:g} s")


@pytest.fixture
def controller(request, tmp_path):
    if not request.config.getoption("--nightly"):
        pytest.skip("the machine controller takes a minute: --nightly")
    if shutil.which("linuxcnc") is None:
        pytest.skip("linuxcnc-uspace is not installed: apt-get install linuxcnc-uspace")
    with socket.socket() as trial:
        if trial.connect_ex(("127.0.0.1", PORT)) == 0:
            pytest.skip(f"port {PORT} is taken")
    joints = "".join(JOINT.format(letter=letter, number=number, offset=20) for number, letter in enumerate("ABC"))
    (tmp_path / "three.ini").write_text(MACHINE + joints, encoding="utf-8")
    (tmp_path / "three.hal").write_text(WIRES, encoding="utf-8")
    (tmp_path / "tool.tbl").write_text("", encoding="utf-8")
    command = ["linuxcnc", "-r", "three.ini"]
    if os.getuid() == 0:  # it refuses to run as root
        for folder in (tmp_path, *tmp_path.parents[:2]):
            folder.chmod(0o777)
        command = ["setpriv", "--reuid=65534", "--regid=65534", "--clear-groups", *command]
    begin = time.time()
    child = subprocess.Popen(
        command, cwd=tmp_path, env={**os.environ, "HOME": str(tmp_path)}, start_new_session=True,
        stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
    )  # fmt: skip
    try:
        require_ready()
        yield f"127.0.0.1:{PORT}"
    finally:
        os.killpg(child.pid, signal.SIGTERM)
        try:
            child.wait(timeout=20)
        except subprocess.TimeoutExpired:
            os.killpg(child.pid, signal.SIGKILL)
            child.wait()
        # Its real-time part leaves the session at the start, and stays behind when the rest is ended.
        for one in psutil.process_iter(["name", "create_time"]):
            if one.info["name"] == "rtapi_app" and one.info["create_time"] >= begin - 1.0:
                with suppress(psutil.Error):
                    one.kill()


def test_twenty_points_and_a_hold_in_the_middle_of_moves(controller):
    words = validate(LineProfile, tomllib.loads(PROFILE), source="machine.toml")
    table = {n: Axis(speed_deg_s=40, acceleration_deg_s2=400) for n in ("azimuth", "roll", "probe")}
    axes = LineAxes(controller, words, table, timeout_s=2.0, timer=SystemClock())
    assert axes.identity().startswith("HELLO ACK")
    assert axes.status().alarm == "axes not referenced"
    hold_while_homing(axes)
    axes.home(unwatched, 20.0)
    assert not axes.status().alarm and axes.status().positions_deg == pytest.approx(dict.fromkeys(table, 0.0), abs=1e-3)
    draw = random.Random(5)
    for _ in range(20):
        wanted = {name: round(draw.uniform(-40.0, 40.0), 3) for name in table}
        axes.begin(wanted)
        assert axes.finish(0.0, unwatched, limit_s=20.0).positions_deg == pytest.approx(wanted, abs=1e-3)
    for side, per_s in ((1.0, None), (-1.0, None), (1.0, 0.15)):  # as fast as it can, back, and at a set speed
        axes.begin({"azimuth": 150.0 * side, "roll": 0.0, "probe": 0.0}, per_s=per_s)
        time.sleep(0.8)
        axes.hold()
        with pytest.raises(HeldError):
            axes.finish(0.0, unwatched, limit_s=5.0)
        time.sleep(0.6)
        rested = axes.status().positions_deg["azimuth"]
        assert abs(rested) < 140.0
        axes.release()
        time.sleep(0.4)
        assert axes.status().positions_deg["azimuth"] == pytest.approx(rested, abs=1e-3), "nothing goes on by itself"
    axes.close()


def hold_while_homing(axes: LineAxes) -> None:
    """Homing is another mode of this controller than moves to positions; a hold is heard in both."""
    with ThreadPoolExecutor(1) as homing:
        told = homing.submit(axes.home, unwatched, 20.0)
        time.sleep(1.0)
        axes.hold()
        with pytest.raises(HeldError):
            told.result()
    axes.release()
    rested = axes.status().positions_deg
    time.sleep(0.5)
    assert axes.status().positions_deg == pytest.approx(rested, abs=1e-3), "nothing goes on by itself"
    assert max(abs(x) for x in rested.values()) > 1.0, "it was held on its way"


@contextmanager
def places_of(resource: str) -> Iterator[Places]:
    """Yield what asks the controller over a connection of its own; axis names as in `PROFILE`."""
    with (
        socket.create_connection(("127.0.0.1", int(resource.rsplit(":", 1)[1])), timeout=5.0) as line,
        line.makefile("rw", encoding="ascii", newline="\r\n") as words,
    ):

        def say(text: str) -> None:
            words.write(text + "\n")
            words.flush()

        say("hello EMC beside 1.0")
        say("set echo off")

        def ask() -> dict[str, float]:
            say("get abs_act_pos")
            while not (answer := words.readline()).startswith("ABS_ACT_POS"):
                assert answer
            return dict(zip(("azimuth", "roll", "probe"), map(float, answer.split()[4:7]), strict=True))

        yield ask


def test_a_whole_campaign(controller, tiny_campaign):
    """From the command line: homed, measured at 40 deg/s, sealed."""
    (tiny_campaign / "machine.toml").write_text(PROFILE, encoding="utf-8")
    motion = {"speed_deg_s": 40.0, "acceleration_deg_s2": 400.0, "settle_s": 0.05}
    with places_of(controller) as places:
        require_measured_beside(tiny_campaign, controller, "machine", places, **motion)
