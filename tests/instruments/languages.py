"""Seven languages as unlike as possible, and the profile for each: five of lines, two of G-code."""

from __future__ import annotations

import time
from typing import ClassVar

from tests.instruments.peers import Motors, Peer, later

NAMES = ("azimuth", "roll", "probe")


class Talker(Peer):
    """Echoes, greets, answers in several lines that end in a dot, CR LF; stops at one character."""

    PROFILE = r"""
kind = "line-axes"
identity = { send = "ABOUT", end = "^\\.$" }
move = "TURN {axis} TO {value}"
acknowledge = "DONE"
busy = { send = "REPORT", end = "^\\.$" }
busy_pattern = "turning"
position = { send = "REPORT", end = "^\\.$" }
position_pattern = '(?m)^(?P<axis>\w+) at (?P<value>\S+)'
status = { send = "REPORT", end = "^\\.$" }
held = "braked"
door_open = "door: open"
door_closed = "door: shut"
fault = "^CANNOT"
hold = { send = "\u001b", raw = true }
release = "GO ON"
[line]
read_end = "\r\n"
write_end = "\r\n"
echo = true
greeting = "^\\*\\* "
[axes]
azimuth.name = "AZ"
roll.name = "RO"
probe.name = "PR"
"""

    def greeted(self):
        self.say("** turning machine, hello\r\n** type ABOUT\r\n")

    def took(self, data):
        for line in self.lines(data, b"\r\n", b"\x1b"):
            if line == "\x1b":
                self.motors.hold()
                continue
            self.say(line + "\r\n")
            self.say("".join(f"{text}\r\n" for text in self.answer(line)))

    def answer(self, line):
        motors, wire = self.motors, dict(zip(("AZ", "RO", "PR"), NAMES, strict=True))
        if line == "ABOUT":
            return ["turning machine", "three axes", "."]
        if line == "GO ON":
            motors.held = False
            return ["DONE"]
        if line == "REPORT":
            state = "braked" if motors.held else "turning" if motors.moving() else "resting"
            return [state, "door: shut", *(f"{key} at {motors.at(name):.5f}" for key, name in wire.items()), "."]
        word, key, _, value = line.split()
        if word != "TURN" or motors.held:
            return ["CANNOT " + line]
        motors.go(wire[key], float(value))
        return ["DONE"]


class Counter(Peer):
    """Counts steps, no acknowledgement, all axes in one answer, lines end in a semicolon; tells only positions."""

    PROFILE = r"""
kind = "line-axes"
identity = "ID"
move = "P{axis}={value}"
completion = "position"
poll_s = 0.01
position = "TP"
position_pattern = '^(?P<azimuth>-?\d+),(?P<roll>-?\d+),(?P<probe>-?\d+)$'
status = "IN"
held = "^I.1"
door_closed = "^I0"
door_open = "^I1"
hold = "ST"
hold_answer = "^!$"
release = "RS"
[line]
read_end = ";"
write_end = ";"
baud_rate = 9600
parity = "even"
data_bits = 7
stop_bits = 2
[axes]
azimuth = { name = "1", units_per_deg = 400, decimals = 0 }
roll = { name = "2", units_per_deg = -400, decimals = 0 }
probe = { name = "3", units_per_deg = 200, offset_units = 5000, decimals = 0 }
"""
    SCALES = ((400.0, 0.0), (-400.0, 0.0), (200.0, 5000.0))

    def took(self, data):
        for line in self.lines(data, b";"):
            if line == "ID":
                self.say("COUNTER 3;")
            elif line == "TP":
                counts = (self.motors.at(n) * scale + zero for n, (scale, zero) in zip(NAMES, self.SCALES, strict=True))
                self.say(",".join(f"{count:.0f}" for count in counts) + ";")
            elif line == "IN":
                self.say(f"I0{int(self.motors.held)};")
            elif line == "ST":
                self.motors.hold()
                self.say("!;")
            elif line == "RS":
                self.motors.held = False
            elif line.startswith("P") and not self.motors.held:
                scale, zero = self.SCALES[int(line[1]) - 1]
                self.motors.go(NAMES[int(line[1]) - 1], (float(line[3:]) - zero) / scale)


class Chatterer(Peer):
    """Chats by itself all the time, takes all axes in one command, and calls out each axis that has arrived."""

    PROFILE = r"""
kind = "line-axes"
identity = "whoami"
move = "goto {azimuth} {roll} {probe}"
acknowledge = '^\+$'
completion = "message"
arrived = '^@(?P<axis>\d) there$'
alarm_message = "^ALARM"
poll_s = 0.005
position = "where {axis}"
position_pattern = '^= (?P<value>\S+)$'
status = "state"
held = "stopped"
fault = '^- '
hold = "stop"
hold_answer = '^\+$'
release = "continue"
line.messages = '^# '
[axes]
azimuth.name = "0"
roll.name = "1"
probe.name = "2"
"""

    def greeted(self):
        self.open = True

        def chat():
            while self.open:
                self.say("# temperature 23.4\n")
                time.sleep(0.004)

        later(chat)

    def took(self, data):
        for line in self.lines(data, b"\n"):
            word, *rest = line.split()
            if word == "goto":
                self.go([float(value) for value in rest])
            elif word == "where":
                self.say(f"= {self.motors.at(NAMES[int(rest[0])]):.4f}\n")
            elif word == "state":
                self.say("stopped\n" if self.motors.held else "well\n")
            elif word == "whoami":
                self.say("chatterer\n")
            elif word == "stop":
                self.motors.hold()
                self.say("+\n")
            elif word == "continue":
                self.motors.held = False
                self.say("+\n")
            else:
                self.say("- what?\n")

    def go(self, targets):
        if self.motors.held:
            self.say("- held\n")
            return
        ends = [self.motors.go(name, target) for name, target in zip(NAMES, targets, strict=True)]
        self.say("+\n")

        def call(number, end):
            time.sleep(max(0.0, end - time.monotonic()) + 0.003)
            if not self.motors.held:
                self.say(f"@{number} there\n")

        for number, end in enumerate(ends):
            later(lambda number=number, end=end: call(number, end))


class Selector(Peer):
    """Selects an axis first, takes the target next, goes on the third line, one move after the other, and answers last."""

    PROFILE = r"""
kind = "line-axes"
identity = "v"
move = ["axis {axis}", "to {value}", { send = "go", expect = "^arrived" }]
acknowledge = "^>"
completion = "reply"
sequential = true
position = ["axis {axis}", { send = "pos", expect = '^pos' }]
position_pattern = '^pos (?P<value>\S+)'
fault = '^\?'
hold = { send = "!", raw = true }
release = "clear"
line.pace_s = 0.001
[axes]
azimuth.name = "a"
roll.name = "b"
probe.name = "c"
"""

    def __init__(self, motors=None):
        super().__init__(motors)
        self.axis, self.target = "azimuth", 0.0

    def took(self, data):
        for line in self.lines(data, b"\n", b"!"):
            word, *rest = line.split()
            if word == "!":
                self.motors.hold()
            elif word == "v":
                self.say("selector 2.1\n")
            elif word == "axis":
                self.axis = NAMES["abc".index(rest[0])]
                self.say(">\n")
            elif word == "to":
                self.target = float(rest[0])
                self.say(">\n")
            elif word == "pos":
                self.say(f"pos {self.motors.at(self.axis):.4f}\n")
            elif word == "clear":
                self.motors.held = False
                self.say("> clear\n")
            elif word == "go" and not self.motors.held:
                self.motors.go(self.axis, self.target)

                def arrive():
                    self.motors.wait()
                    self.say("? stopped\n" if self.motors.held else "arrived\n")

                later(arrive)
            else:
                self.say(f"? {line}\n")


class Encoded(Peer):
    """Takes motor counts, shows an encoder's arc seconds, wraps at 360 degrees, hears a stop on a second connection."""

    PROFILE = r"""
kind = "line-axes"
identity = "*ID"
move = "MOV {axis},{value}"
acknowledge = "^A"
busy = "BSY {axis}"
busy_pattern = "^B1"
position = "ENC {axis}"
position_pattern = '^E (?P<value>-?\d+)'
fault = "^N"
hold = "STP"
hold_line = "second"
hold_answer = "^A"
release = "CLR"
line.read_end = "\r"
line.write_end = "\r"
[axes]
azimuth = { name = "x", units_per_deg = 100, decimals = 0, read_units_per_deg = 3600, wraps_deg = 360 }
roll = { name = "y", units_per_deg = -50, decimals = 0, read_units_per_deg = 3600, read_offset_units = 0 }
probe = { name = "z", units_per_deg = 100, decimals = 0, read_units_per_deg = -3600 }
"""
    WIRE: ClassVar = {"x": ("azimuth", 100.0, 3600.0), "y": ("roll", -50.0, 3600.0), "z": ("probe", 100.0, -3600.0)}

    def took(self, data):
        for line in self.lines(data, b"\r"):
            self.say(self.answer(line) + "\r")

    def answer(self, line):
        word, _, rest = line.partition(" ")
        if word == "*ID":
            return "ENCODED"
        if word == "STP":
            self.motors.hold()
            return "A"
        if word == "CLR":
            self.motors.held = False
            return "A"
        name, scale, encoder = self.WIRE[rest[0]]
        if word == "BSY":
            return f"B{int(self.motors.moving(name))}"
        if word == "ENC":
            shown = self.motors.at(name) % 360.0 if rest[0] == "x" else self.motors.at(name)
            return f"E {shown * encoder:.0f}"
        if self.motors.held:
            return "N held"
        target = float(rest.split(",")[1]) / scale
        if rest[0] == "x":
            if not 0.0 <= target < 360.0:
                return "N range"
            here = self.motors.at(name)
            target = here + (target - here + 180.0) % 360.0 - 180.0  # the shorter way round
        self.motors.go(name, target)
        return "A"


class QueuedGcode(Peer):
    """G-code (RS-274 words) that acknowledges when a line is queued; one character asks for the state, one brakes. What was
    held goes on after the brake: only a reset forgets it."""

    def greeted(self):
        self.say("\r\nMotion 1.4 ready\r\n")

    def took(self, data):
        for line in self.lines(data, b"\n", b"?!~\x18"):
            self.answer(line.strip())

    def answer(self, line):
        motors = self.motors
        if line == "?":
            state = "Hold:0" if motors.held else "Run" if motors.moving() else "Idle"
            places = ",".join(f"{motors.at(name):.3f}" for name in NAMES)
            self.say(f"<{state}|MPos:{places}|FS:0,0>\r\n")
        elif line == "!":
            if motors.moving():
                self.rest = dict(motors.log[-3:])
                motors.hold()
        elif line == "~":
            if motors.held:
                motors.held = False
                for name, target in self.rest.items():
                    motors.go(name, target)
        elif line == "\x18":
            motors.held = False
            self.say("\r\nMotion 1.4 ready\r\n")
        elif line == "$I":
            self.say("[VER:1.4]\r\nok\r\n")
        elif line.startswith("G90 G0") and not motors.held:
            for word in line.split()[2:]:
                motors.go(NAMES["XYZ".index(word[0])], float(word[1:]))
            self.say("ok\r\n")
        else:
            self.say("error:20\r\n")


class WaitingGcode(Peer):
    """G-code that answers `ok` when a line is done and says that it is busy meanwhile; a stop word is heard at any time."""

    def greeted(self):
        self.say("start\necho:ready\n")

    def took(self, data):
        for line in self.lines(data, b"\n"):
            self.answer(line)

    def answer(self, line):
        motors = self.motors
        if line.startswith("M410"):
            motors.hold()
            self.say("ok\n")
        elif line.startswith("M115"):
            self.say("FIRMWARE:waiting AXES:3\nok\n")
        elif line.startswith("M114"):
            a, b, c = (motors.at(name) for name in NAMES)
            self.say(f"A:{a:.3f} B:{b:.3f} C:{c:.3f} Count A:{a * 80:.0f} B:{b * 80:.0f} C:{c * 80:.0f}\nok\n")
        elif line.startswith("M400"):

            def wait():
                while motors.moving():
                    time.sleep(0.02)
                    self.say("echo:busy: processing\n")
                self.say("ok\n")

            later(wait)
        elif line.startswith("G90 G0"):
            motors.held = False
            for word in line.split()[2:]:
                motors.go(NAMES["ABC".index(word[0])], float(word[1:]))
            self.say("ok\n")
        else:
            self.say(f'echo:Unknown command: "{line}"\nok\n')


def shared(kind: type[Peer], speed_deg_s: float = 400.0):
    """Return (motors, maker): every connection talks to the same motors."""
    motors = Motors(speed_deg_s)
    return motors, lambda: kind(motors)
