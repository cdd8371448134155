"""Dialects drawn at random from what controllers do: a peer that speaks one, and the table of words that describes it."""

from __future__ import annotations

import random
import time
from dataclasses import dataclass, field
from typing import Any

from tests.instruments.peers import Motors, Peer, later

NAMES = ("azimuth", "roll", "probe")
ENDS = ("\n", "\r", "\r\n", ";")


@dataclass
class Dialect:
    """One draw; `words()` is its profile."""

    seed: int
    choice: dict[str, Any] = field(init=False)

    def __post_init__(self) -> None:
        draw = random.Random(self.seed)

        def may(share: float) -> bool:
            return draw.random() < share

        completion = draw.choice(("busy", "reply", "message", "position"))
        move = draw.choice(("each", "words", "named", "select"))
        acknowledge = "OK" if completion == "reply" or may(0.6) else ""
        scales = [draw.choice((1.0, 100.0, -400.0, 3600.0)) for _ in NAMES]
        self.choice = {
            "link": draw.choice(("tcp", "terminal")), "end": draw.choice(ENDS), "echo": may(0.25), "greeting": may(0.3),
            "chat": may(0.3), "acknowledge": acknowledge, "completion": completion, "scales": scales,
            "zeros": [draw.choice((0.0, 720.0)) for _ in NAMES], "encoder": may(0.25),
            "position": draw.choice(("each", "all", "pairs")), "several": may(0.3), "move": move,
            "start": completion != "reply" and move == "each" and may(0.3),
            "sequential": completion != "reply" and may(0.2), "hold": draw.choice(("line", "mark", "silent")),
            "names": draw.choice((("1", "2", "3"), ("AZ", "RO", "PR"))),
        }  # fmt: skip

    def words(self) -> dict[str, Any]:
        """Return the profile as a table."""
        c = self.choice

        def asked(text: str) -> Any:
            return {"send": text, "end": r"^\.$"} if c["several"] else text

        table: dict[str, Any] = {
            "kind": "line-axes", "identity": asked("WHO"), "acknowledge": f"^{c['acknowledge']}" if c["acknowledge"] else "",
            "completion": c["completion"], "position": asked("POS {axis}" if c["position"] == "each" else "POS"),
            "status": asked("STATE"), "held": "HELD", "fault": "^ERR", "release": "FREE", "poll_s": 0.004,
            "sequential": c["sequential"], "position_pattern": self._position_pattern(),
            "line": {"read_end": c["end"], "write_end": c["end"], "echo": c["echo"]},
        }  # fmt: skip
        table["hold"] = {"line": "HALT", "mark": {"send": "!", "raw": True}, "silent": {"send": "!", "raw": True}}[
            c["hold"]
        ]
        if c["hold"] == "mark":
            table["hold_answer"] = "^BRAKED"
        if c["completion"] == "busy":
            table |= {"busy": asked("BUSY {axis}"), "busy_pattern": "YES"}
        if c["completion"] == "message":
            table["arrived"] = r"^THERE (?P<axis>\S+)"
        if c["greeting"]:
            table["line"]["greeting"] = "^HELLO"
        if c["chat"]:
            table["line"]["messages"] = "^NOTE"
        table["move"] = self._move()
        if c["start"]:
            table["start"] = "START"
        table["axes"] = {name: self._axis(k) for k, name in enumerate(NAMES)}
        return table

    def _move(self) -> Any:
        kind = self.choice["move"]
        last = {"send": "GO", "expect": "^ARRIVED"} if self.choice["completion"] == "reply" else "GO"
        done = {"expect": "^ARRIVED"} if self.choice["completion"] == "reply" else {}
        if kind == "select":
            return ["AXIS {axis}", "TO {value}", last]
        text = {
            "each": "MOVE {axis} {value}", "words": "ALL {words}", "named": "THREE {azimuth} {roll} {probe}",
        }[kind]  # fmt: skip
        return {"send": text, **done} if done else text

    def _position_pattern(self) -> str:
        number = r"-?\d+(\.\d+)?"
        return {
            "each": rf"^P (?P<value>{number})$",
            "all": rf"^P (?P<azimuth>{number}) (?P<roll>{number}) (?P<probe>{number})$",
            "pairs": rf"(?P<axis>\w+)=(?P<value>{number})",
        }[self.choice["position"]] if not self.choice["several"] else {
            "each": rf"(?m)^P (?P<value>{number})$",
            "all": rf"(?m)^P (?P<azimuth>{number}) (?P<roll>{number}) (?P<probe>{number})$",
            "pairs": rf"(?P<axis>\w+)=(?P<value>{number})",
        }[self.choice["position"]]  # fmt: skip

    def _axis(self, k: int) -> dict[str, Any]:
        c = self.choice
        scale = c["scales"][k]
        axis = {"name": c["names"][k], "units_per_deg": scale, "offset_units": c["zeros"][k],
                "decimals": 3 if abs(scale) < 10 else 0}  # fmt: skip
        if c["encoder"]:
            axis |= {"read_units_per_deg": 1000.0, "read_offset_units": 0.0}
        return axis


class Drawn(Peer):
    """Speaks one dialect."""

    def __init__(self, dialect: Dialect, motors: Motors) -> None:
        super().__init__(motors)
        self.c = dialect.choice
        self.wire = dict(zip(self.c["names"], NAMES, strict=True))
        self.axis, self.target = NAMES[0], 0.0
        self.prepared: dict[str, float] = {}
        self.end = self.c["end"]

    def tell(self, *lines: str) -> None:
        self.say("".join(line + self.end for line in lines))

    def reply(self, *lines: str) -> None:
        self.tell(*lines, *(["."] if self.c["several"] else []))

    def acknowledge(self) -> None:
        if self.c["acknowledge"]:
            self.tell(self.c["acknowledge"])

    def greeted(self) -> None:
        if self.c["greeting"]:
            self.tell("HELLO, this is a controller")
        if self.c["chat"]:
            later(self._chat)

    def _chat(self) -> None:
        for _ in range(1000):
            self.tell("NOTE all is well")
            time.sleep(0.01)

    def took(self, data: bytes) -> None:
        raw = b"" if self.c["hold"] == "line" else b"!"
        for line in self.lines(data, self.end.encode(), raw):
            if line == "!":
                self.motors.hold()
                if self.c["hold"] == "mark":
                    self.tell("BRAKED")
                continue
            if self.c["echo"]:
                self.tell(line)
            word, *rest = line.split() or [""]
            getattr(self, f"do_{word.lower()}", self.do_wrong)(rest)

    def do_wrong(self, rest: list[str]) -> None:
        self.tell("ERR not understood")

    def do_who(self, rest: list[str]) -> None:
        self.reply("CONTROLLER OF THREE AXES")

    def do_halt(self, rest: list[str]) -> None:
        self.motors.hold()
        self.acknowledge()

    def do_free(self, rest: list[str]) -> None:
        self.motors.held = False
        self.acknowledge()

    def do_state(self, rest: list[str]) -> None:
        self.reply("HELD" if self.motors.held else "WELL")

    def do_busy(self, rest: list[str]) -> None:
        self.reply("YES" if self.motors.moving(self.wire[rest[0]]) else "NO")

    def shown(self, name: str) -> str:
        k = NAMES.index(name)
        if self.c["encoder"]:
            return f"{self.motors.at(name) * 1000.0:.0f}"
        scale = self.c["scales"][k]
        return f"{self.motors.at(name) * scale + self.c['zeros'][k]:.{3 if abs(scale) < 10 else 0}f}"

    def do_pos(self, rest: list[str]) -> None:
        if self.c["position"] == "each":
            self.reply(f"P {self.shown(self.wire[rest[0]])}")
        elif self.c["position"] == "all":
            self.reply("P " + " ".join(self.shown(name) for name in NAMES))
        else:
            self.reply(" ".join(f"{key}={self.shown(name)}" for key, name in self.wire.items()))

    def angle(self, name: str, text: str) -> float:
        k = NAMES.index(name)
        return (float(text) - self.c["zeros"][k]) / self.c["scales"][k]

    def do_axis(self, rest: list[str]) -> None:
        self.axis = self.wire[rest[0]]
        self.acknowledge()

    def do_to(self, rest: list[str]) -> None:
        self.target = self.angle(self.axis, rest[0])
        self.acknowledge()

    def do_go(self, rest: list[str]) -> None:
        self._run({self.axis: self.target})

    def do_move(self, rest: list[str]) -> None:
        name = self.wire[rest[0]]
        if self.c["start"]:
            self.prepared[name] = self.angle(name, rest[1])
            self.acknowledge()
        else:
            self._run({name: self.angle(name, rest[1])})

    def do_start(self, rest: list[str]) -> None:
        self._run(dict(self.prepared))
        self.prepared.clear()

    def do_three(self, rest: list[str]) -> None:
        self._run({name: self.angle(name, text) for name, text in zip(NAMES, rest, strict=True)})

    def do_all(self, rest: list[str]) -> None:
        pairs = {}
        for word in rest:
            key = next(key for key in self.wire if word.startswith(key))
            pairs[self.wire[key]] = self.angle(self.wire[key], word[len(key) :])
        self._run(pairs)

    def _run(self, targets: dict[str, float]) -> None:
        if self.motors.held:
            self.tell("ERR HELD")
            return
        ends = {name: self.motors.go(name, target, after=self.c["sequential"]) for name, target in targets.items()}
        if self.c["completion"] == "reply":
            later(lambda: self._arrive(max(ends.values(), default=0.0)))
            return
        self.acknowledge()
        if self.c["completion"] == "message":
            for name, end in ends.items():
                later(lambda name=name, end=end: self._call(name, end))

    def _arrive(self, end: float) -> None:
        time.sleep(max(0.0, end - time.monotonic()))
        self.tell("ERR HELD" if self.motors.held else "ARRIVED")

    def _call(self, name: str, end: float) -> None:
        time.sleep(max(0.0, end - time.monotonic()) + 0.001)
        if not self.motors.held:
            self.tell("THERE " + next(key for key, value in self.wire.items() if value == name))
