"""A line controller with a position-compare output: it starts sweeps at counts of an axis, and stores an encoder's arc seconds then."""

from __future__ import annotations

import time

from colure.model.chamber import SimulatedChamber
from tests.instruments.peers import Motors, Peer
from tests.instruments.range_beside import Elsewhere, Places

WIRE = {"X": "azimuth", "Y": "roll", "Z": "probe"}
COUNTS, ARC_SECONDS = {"azimuth": 250.0, "roll": -100.0, "probe": 100.0}, 3600.0

PROFILE = r"""
kind = "line-axes"
identity = "NAME"
move = "GO {axis} {value}"
timed = "RUN {axis} {value} IN {seconds}"
acknowledge = "^TAKEN$"
fault = "^NO "
busy = "REST {axis}"
busy_pattern = "^TURNS"
position = "AT {axis}"
position_pattern = '^AT (?P<value>-?\d+)$'
pulses = ["MARK {axis} FROM {start} EVERY {step}", "MARK TIMES {count}"]
latched = { send = "MARKS {axis}", end = "^END$" }
latched_pattern = '(?m)^M (?P<value>-?\d+)$'
home = "SEEK {axis}"
hold = "BRAKE"
hold_answer = "^BRAKED$"
release = "FREE"
line.read_end = "\r"
line.write_end = "\r"
[axes]
azimuth = { name = "X", units_per_deg = 250, decimals = 0, read_units_per_deg = 3600, read_offset_units = 0 }
roll = { name = "Y", units_per_deg = -100, decimals = 0, read_units_per_deg = 3600, read_offset_units = 0 }
probe = { name = "Z", units_per_deg = 100, decimals = 0, read_units_per_deg = 3600, read_offset_units = 0 }
"""


class PulsedMotors(Motors):
    """Motors whose controller gives pulses: of one axis, at (start, step, count) in degrees."""

    def __init__(self, speed_deg_s: float = 400.0) -> None:
        super().__init__(speed_deg_s)
        self.marks: tuple[str, float, float, int] = ("azimuth", 0.0, 1.0, 0)
        #: How often pulses were set; numbers of the pulses that are not given, and of the stored positions that are a third of a
        #: step off, by that.
        self.settings = 0
        self.lost: dict[int, set[int]] = {}
        self.off: dict[int, set[int]] = {}

    def place(self, name: str, moment: float) -> float:
        """Where an axis is at a moment of its move under way."""
        start, target, begin, end = self._ways[name]
        return target if moment >= end else start + (target - start) * max(moment - begin, 0.0) / (end - begin)

    def run(self, name: str, target: float, seconds: float) -> None:
        """Start a move of its own duration."""
        with self._lock:
            now = time.monotonic()
            self._ways[name] = (self.at(name), target, now, now + seconds)

    @property
    def end(self) -> float:
        """When the last axis stands."""
        return max(way[3] for way in self._ways.values())

    def given(self) -> list[tuple[float, float]]:
        """Moment and place of every pulse of the move under way, in order."""
        name, first, step, count = self.marks
        start, target, begin, end = self._ways[name]
        if target == start:
            return []
        shares = [(number, (first + number * step - start) / (target - start)) for number in range(count)]
        return [(begin + share * (end - begin), first + number * step)
                for number, share in shares if 0.0 <= share <= 1.0 and number not in self.lost.get(self.settings, ())]  # fmt: skip


class Marker(Peer):
    """The controller's language."""

    motors: PulsedMotors

    def took(self, data: bytes) -> None:
        for line in self.lines(data, b"\r"):
            self.say(self.answer(line.split()) + "\r")

    def answer(self, words: list[str]) -> str:
        motors = self.motors
        match words:
            case ["NAME"]:
                return "MARKING MACHINE"
            case ["BRAKE"]:
                motors.hold()
                return "BRAKED"
            case ["FREE"]:
                motors.held = False
                return "TAKEN"
            case ["REST", axis]:
                return "TURNS" if motors.moving(WIRE[axis]) else "RESTS"
            case ["AT", axis]:
                return f"AT {motors.at(WIRE[axis]) * ARC_SECONDS:.0f}"
            case ["GO", axis, value] if not motors.held:
                motors.go(WIRE[axis], float(value) / COUNTS[WIRE[axis]])
                return "TAKEN"
            case ["SEEK", axis] if not motors.held:
                motors.go(WIRE[axis], 0.0)
                return "TAKEN"
            case ["RUN", axis, value, "IN", seconds] if not motors.held:
                motors.run(WIRE[axis], float(value) / COUNTS[WIRE[axis]], float(seconds))
                return "TAKEN"
            case ["MARK", axis, "FROM", start, "EVERY", step]:
                scale = COUNTS[WIRE[axis]]
                motors.marks = (WIRE[axis], float(start) / scale, float(step) / scale, 0)
                return "TAKEN"
            case ["MARK", "TIMES", count]:
                motors.marks = (*motors.marks[:3], int(count))
                motors.settings += 1
                return "TAKEN"
            case ["MARKS", axis] if WIRE[axis] == motors.marks[0]:
                return self.marks()
        return "NO " + " ".join(words)

    def marks(self) -> str:
        places = [place for moment, place in self.motors.given() if moment <= time.monotonic()]
        off = self.motors.off.get(self.motors.settings, ())
        shifts = [self.motors.marks[2] / 3.0 if number in off else 0.0 for number in range(len(places))]
        lines = [f"M {(place + shift) * ARC_SECONDS:.0f}" for place, shift in zip(places, shifts, strict=True)]
        return "\r".join([*lines, "END"])


def watched(motors: PulsedMotors):
    """Return what makes the axes as the simulated analyzer sees them: where they were at every moment, and their pulses."""

    class Pulsing(Elsewhere):
        def __init__(self, truth: SimulatedChamber, places: Places) -> None:
            super().__init__(truth, places)
            #: The motors' time at the clock's zero.
            self._zero_s = time.monotonic() - self.clock.now()

        def busy_until(self) -> float:
            return motors.end - self._zero_s

        def true_positions(self, moment: float) -> dict[str, float]:
            return {**self._places(), **{name: motors.place(name, moment + self._zero_s) for name in WIRE.values()}}

        def pulses_after(self, after: float) -> list[float]:
            return [at for moment, _ in motors.given() if (at := moment - self._zero_s) > after]

    return Pulsing
