"""Line profiles against controllers of unlike languages over TCP and pseudo-terminals: every axis goes where it was sent,
a hold brakes at once in every one of them, and nothing that was held goes on by itself."""

from __future__ import annotations

import os
import random
import re
import threading
import time
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager, suppress

import numpy as np
import pytest

from colure.acquire.clocks import SystemClock
from colure.acquire.guard import Guard, MotionWatch
from colure.acquire.sight import looks_at
from colure.errors import InputError, InstrumentError, MotionError
from colure.instruments.line_axes import LineAxes
from colure.instruments.line_profile import LineProfile
from colure.instruments.profile import axes_profile
from colure.instruments.protocols import HeldError, LostError, RefusedError, unwatched
from colure.model.campaign import Campaign
from colure.model.loading import validate
from tests.instruments import languages
from tests.instruments.peers import AXES, Motors, Tcp, Terminal

pytestmark = pytest.mark.skipif(os.name == "nt", reason="pseudo-terminals")

LANGUAGES = {
    "talker": (languages.Talker, Tcp, None),
    "counter": (languages.Counter, Terminal, None),
    "chatterer": (languages.Chatterer, Tcp, None),
    "selector": (languages.Selector, Terminal, None),
    "encoded": (languages.Encoded, Tcp, None),
    "queued G-code": (languages.QueuedGcode, Terminal, "gcode-queued"),
    "waiting G-code": (languages.WaitingGcode, Terminal, "gcode-waiting"),
}


def profile_from(text: str) -> LineProfile:
    import tomllib

    return validate(LineProfile, tomllib.loads(text), source="mine.toml")


@contextmanager
def connected(language: str, *, speed_deg_s: float = 400.0, profile: LineProfile | None = None, **options):
    kind, server_of, shipped = LANGUAGES[language]
    motors, make = languages.shared(kind, speed_deg_s)
    server = server_of(make, **options)
    words = profile or (axes_profile(shipped) if shipped else profile_from(kind.PROFILE))
    table = dict(AXES)
    if language == "encoded":
        table["azimuth"] = AXES["azimuth"].model_copy(update={"modulo_deg": 360.0})
    axes = None
    try:
        axes = LineAxes(server.resource, words, table, timeout_s=1.0, timer=SystemClock())
        yield motors, axes
    finally:
        if axes is not None:
            axes.close()
        server.close()


def places(motors: Motors) -> dict[str, float]:
    return {name: motors.at(name) for name in AXES}


def go(axes: LineAxes, motors: Motors, targets: dict[str, float]) -> dict[str, float]:
    axes.begin(targets, from_deg=places(motors))
    return axes.finish(0.0, unwatched, limit_s=5.0).positions_deg


def turned(found: dict[str, float], wanted: dict[str, float]) -> dict[str, float]:
    """Count whole turns of a readout that wraps."""
    return {name: value + 360.0 * round((wanted[name] - value) / 360.0) for name, value in found.items()}


@pytest.mark.parametrize("language", LANGUAGES)
def test_twenty_positions_are_reached_and_read(language):
    draw = random.Random(language)
    with connected(language, speed_deg_s=8000.0) as (motors, axes):
        assert axes.identity() and len(axes.identity()) < 60
        for _ in range(20):
            wanted = {name: draw.uniform(-160.0, 160.0) for name in AXES}
            found = go(axes, motors, wanted)
            assert places(motors) == pytest.approx(wanted, abs=0.011), "the axes themselves"
            assert turned(found, wanted) == pytest.approx(wanted, abs=0.011), "what the driver reads"


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_hold_brakes_at_once_and_nothing_goes_on_by_itself(language, prompt):
    with connected(language, speed_deg_s=40.0) as (motors, axes):
        axes.begin({"azimuth": 100.0, "roll": 100.0, "probe": 50.0}, from_deg=places(motors))
        time.sleep(0.1)
        assert motors.moving()
        sent = time.monotonic()
        axes.hold()
        while motors.moving():
            time.sleep(0.001)
        prompt([time.monotonic() - sent], 0.1)
        with pytest.raises(HeldError):
            axes.finish(0.0, unwatched, limit_s=5.0)
        assert axes.status().held
        braked = places(motors)
        with pytest.raises(HeldError):
            axes.begin({"azimuth": 0.0, "roll": 0.0, "probe": 0.0}, from_deg=braked)
        axes.release()
        status = axes.status()
        time.sleep(0.05)
        assert places(motors) == pytest.approx(braked, abs=1e-6), "release alone moves nothing"
        assert not status.held and turned(status.positions_deg, braked) == pytest.approx(braked, abs=0.011)
        go(axes, motors, {"azimuth": 0.0, "roll": 10.0, "probe": -5.0})
        assert places(motors) == pytest.approx({"azimuth": 0.0, "roll": 10.0, "probe": -5.0}, abs=0.011)


@pytest.mark.parametrize("verb", ["move", "home"])
def test_no_step_that_moves_is_sent_after_a_hold_between_two_steps(verb):
    """A sequence is under way, nothing turns yet, somebody stops: the step that starts the motion must not follow."""
    sequence = '["axis {axis}", "to 90", { send = "go", expect = "^arrived" }]'
    slow = sequence.replace('"axis {axis}"', '{ send = "axis {axis}", pause_s = 0.2 }')
    text = languages.Selector.PROFILE.replace(
        'move = ["axis {axis}", "to {value}"', 'move = [{ send = "axis {axis}", pause_s = 0.2 }, "to {value}"'
    )
    # This controller forgets a hold as soon as nothing moves: only we know of it.
    with connected("selector", profile=profile_from(text.replace("[axes]", f"[axes]\nazimuth.home = {slow}\n"
                   f"roll.home = {slow}\nprobe.home = {slow}"))) as (motors, axes):  # fmt: skip
        motors.hold = lambda: None
        with ThreadPoolExecutor(1) as beside:
            there = {"azimuth": 90.0, "roll": 0.0, "probe": 0.0}
            told = beside.submit(axes.begin, there) if verb == "move" else beside.submit(axes.home, unwatched, 5.0)
            time.sleep(0.1)
            axes.hold()
            with pytest.raises(HeldError):
                told.result()
        time.sleep(0.1)
        assert places(motors) == dict.fromkeys(AXES, 0.0) and not motors.moving()


def test_an_axis_that_wraps_goes_the_way_that_was_meant():
    """From 160 to -160 deg the shorter way round leads over 180 deg, where cables may not go."""
    with connected("encoded", speed_deg_s=3000.0) as (motors, axes):
        go(axes, motors, {"azimuth": 160.0, "roll": 0.0, "probe": 0.0})
        motors.log.clear()
        go(axes, motors, {"azimuth": -160.0, "roll": 0.0, "probe": 0.0})
        way = [target for name, target in motors.log if name == "azimuth"]
        assert motors.at("azimuth") == pytest.approx(-160.0, abs=0.01)
        assert all(-160.01 <= target <= 160.01 for target in way) and len(way) == 3


def test_a_hold_on_a_slow_line_costs_one_exchange(prompt):
    """9600 baud, 10 bits a character: the question under way has at most a dozen characters, its answer twenty."""
    with connected("counter", speed_deg_s=50.0, baud=9600.0) as (motors, axes):
        axes.begin({"azimuth": 100.0, "roll": 0.0, "probe": 0.0})
        delays = []
        for _ in range(5):
            axes.status()
        before, sent = len(motors.heard), time.monotonic()
        axes.hold()
        while motors.moving():
            time.sleep(0.001)
        delays.append(time.monotonic() - sent)
        assert motors.heard[before] == "ST"
        prompt(delays, 0.05)


def test_holds_on_a_slow_line_while_another_thread_asks(request, prompt):
    """9600 baud, questions without a pause from another thread: from the call of `hold` to motors that stand, 99 % below 50 ms.

    The limit is that of the simulated chamber's line; one exchange here is thirty characters at most (31 ms).
    """
    count = 200 if request.config.getoption("--nightly") else 12
    drawn = random.Random(8)
    delays, asked = [], []
    with connected("counter", speed_deg_s=200.0, baud=9600.0) as (motors, axes):
        over = threading.Event()

        def ask():
            while not over.is_set():
                with suppress(HeldError):
                    axes.status()

        asking = threading.Thread(target=ask)
        asking.start()
        try:
            for _ in range(count):
                # The longer way, so that no move ends by itself before its hold is heard on a busy computer.
                axes.begin({"azimuth": -170.0 if motors.at("azimuth") > 0.0 else 170.0, "roll": 0.0, "probe": 0.0})
                time.sleep(drawn.uniform(0.05, 0.15))
                assert motors.moving()
                before, sent = len(motors.heard), time.perf_counter()
                axes.hold()
                while motors.moving():
                    time.sleep(0.0005)
                delays.append(time.perf_counter() - sent)
                asked.append(motors.heard[before:].index("ST"))
                axes.release()
        finally:
            over.set()
            asking.join()
    print(
        f"{count} holds: median {1e3 * np.median(delays):.1f}, 99 % {1e3 * np.quantile(delays, 0.99):.1f}, "
        f"most {1e3 * max(delays):.1f} ms, {max(asked)} questions before it at most"
    )
    assert np.median(asked) <= 1.0, "the question under way comes before a hold, none that waits"
    prompt(delays, 0.05, share=0.99)


def overrun(axes: LineAxes, motors: Motors, guard: Guard, *, target: float) -> float:
    """Send the probe to a target that its controller runs past; return where it stands once that was seen and braked."""
    home = dict.fromkeys(AXES, 0.0)
    axes.release()
    guard.readouts(axes.status())
    wanted = np.array([{**home, "probe": target}[name] for name in guard.names])
    watch = MotionWatch(guard, wanted, SystemClock())
    axes.begin(guard.wire(wanted), from_deg=home)
    watch.begun()
    while motors.log[-1:] != [("probe", target)]:
        time.sleep(0.001)  # its command is still on the line
    motors.go("probe", 160.0)
    with pytest.raises(MotionError, match="'mast'|past its target"):
        axes.finish(0.0, watch, limit_s=20.0)
    axes.hold()
    while motors.moving():
        time.sleep(0.001)
    return motors.at("probe")


def test_a_keep_out_on_a_slow_line_is_told_within_a_degree_at_the_speed_that_the_check_allows(tiny_campaign, nightly):
    """9600 baud, thirty characters a look; these motors brake at once, so what remains is the look."""
    chamber = tiny_campaign / "chamber.toml"
    text = chamber.read_text(encoding="utf-8") + '\n[[keep_out]]\nname = "mast"\nprobe = [104, 200]\n'
    chamber.write_text(text, encoding="utf-8")
    path = np.zeros((2, 3))
    with connected("counter", speed_deg_s=60.0, baud=9600.0) as (motors, axes):
        took_s = []
        for _ in range(9):
            began = time.monotonic()
            axes.status()
            took_s.append(time.monotonic() - began)
        look_s = float(np.median(took_s))
        guard = Guard(Campaign.load(tiny_campaign).chamber, tuple(AXES), SystemClock(), coordinated=False)
        path[1, 2] = 100.0
        with pytest.raises(InstrumentError, match="probe could come .* into keep-out sector 'mast'") as told:
            looks_at(guard, path, look_s)
        most = float(re.search(r"([0-9.]+) deg/s at most", str(told.value))[1])
        assert 0.0 < most < 60.0
        chamber.write_text(text.replace("speed_deg_s = 60", f"speed_deg_s = {most}"), encoding="utf-8")
        slower = Guard(Campaign.load(tiny_campaign).chamber, tuple(AXES), SystemClock(), coordinated=False)
        looks_at(slower, path, look_s)
        motors.speed = most
        inside = []
        for _ in range(5):
            inside.append(overrun(axes, motors, slower, target=100.0) - 104.0)
            axes.release()
            go(axes, motors, dict.fromkeys(AXES, 0.0))
        print(f"{1e3 * look_s:.0f} ms a look, {most:g} deg/s: {np.round(inside, 2)} deg into the sector")
        assert max(inside) <= 1.0


def test_an_answer_that_comes_late_is_not_taken_for_the_next_one():
    """The azimuth's position, asked for in vain, arrives while the roll's is awaited."""

    class Late(languages.Chatterer):
        late = True

        def greeted(self):
            """This one keeps quiet."""

        def took(self, data):
            if b"where 1" in data and Late.late:
                Late.late = False
                from tests.instruments.peers import later

                def answer():
                    time.sleep(0.4)
                    languages.Chatterer.took(self, data)

                later(answer)
            else:
                super().took(data)

    motors = Motors()
    server = Tcp(lambda: Late(motors))
    axes = LineAxes(
        server.resource, profile_from(languages.Chatterer.PROFILE), AXES, timeout_s=0.3, timer=SystemClock()
    )
    motors.go("azimuth", 30.0), motors.go("roll", 60.0), motors.go("probe", 90.0)
    motors.wait()
    with pytest.raises(LostError, match="no answer to 'where 1' within"):
        axes.status()
    assert axes.status().positions_deg == pytest.approx({"azimuth": 30.0, "roll": 60.0, "probe": 90.0})
    axes.close()
    server.close()


def test_an_alarm_between_two_questions_is_not_an_answer_and_is_told():
    with connected("chatterer") as (motors, axes):
        peer_line = axes._line
        peer_line._take_in(b"ALARM limit switch of axis 1\n", peer_line._inbox)
        assert axes.status().alarm == "ALARM limit switch of axis 1"
        assert places(motors)["azimuth"] == 0.0


def test_a_controller_that_restarts_is_not_trusted_until_homed():
    with connected("queued G-code") as (motors, axes):
        go(axes, motors, {"azimuth": 10.0, "roll": 0.0, "probe": 0.0})
        axes._line._take_in(b"\r\nMotion 1.4 ready\r\n", axes._line._inbox)
        with pytest.raises(MotionError, match="restarted .*counts may be lost; home the axes"):
            axes.status()


def test_a_refusal_is_told_in_the_controllers_own_words():
    with connected("talker") as (motors, axes):
        motors.held = True
        with pytest.raises(RefusedError, match="CANNOT TURN AZ TO"):
            axes.begin({"azimuth": 5.0, "roll": 0.0, "probe": 0.0})


@pytest.mark.parametrize(
    ("old", "new", "word"),
    [
        ('busy = { send = "REPORT", end = "^\\\\.$" }\n', "", "needs `busy` and `busy_pattern`"),
        ("position_pattern = '(?m)^(?P<axis>\\w+) at (?P<value>\\S+)'\n", "", "`position` or `position_pattern` is empty"),
        ('move = "TURN {axis} TO {value}"', 'move = "TURN {axle} TO {value}"', "unknown field {axle}"),
        ('hold = { send = "\\u001b", raw = true }', 'hold = ["A", "B"]', "`hold` must be one command"),
        ('acknowledge = "DONE"', 'acknowledge = "(DONE"', "must be a regular expression"),
        ('acknowledge = "DONE"', 'acknowledge = "DONE"\ncompletion = "message"', "needs `arrived`"),
    ],
)  # fmt: skip
def test_a_missing_word_is_named_before_anything_is_opened(old, new, word):
    text = languages.Talker.PROFILE
    assert old in text
    with pytest.raises(InputError) as caught:
        profile_from(text.replace(old, new))
    assert word in str(caught.value) and str(caught.value).startswith("mine.toml: ")
    assert len(caught.value.faults) == 1


def test_a_serial_line_without_any_query_of_its_own_is_refused():
    text = languages.Selector.PROFILE.replace('identity = "v"\n', "")
    with (
        pytest.raises(Exception, match="`identity` and `sync` are empty"),
        connected("selector", profile=profile_from(text)),
    ):
        pass


def test_an_echo_that_the_profile_does_not_know_is_named():
    text = languages.Talker.PROFILE.replace("echo = true\n", "")
    with (
        pytest.raises(LostError, match="came back as it was sent: set `echo = true`"),
        connected("talker", profile=profile_from(text)) as (_, axes),
    ):
        # On a loaded computer the first question may be lost and asked anew; the next one tells, long before anything moves.
        axes.status()
