"""The axis controller's side of the socket: a few RS-274 words and a position report.

Words from RS274/NGC version 3 (Kramer, Proctor, Messina, NISTIR 6556, 2000; from memory):
G0 G1 G4 G28 G90 G93 M2, rotary axes A B C; the probe roll is axis U here. Our own: `!` holds,
`~` releases; M114 reports, M115 names the controller, M70 sets position pulses, M71 reports
the positions latched at them, M72 is the heartbeat, M80 seeks the reference marks, M18 takes the drives' power away. Every line is
answered by its report, if any, and `ok` or `error: words`.
"""

from __future__ import annotations

import re

from colure.errors import InputError
from colure.model.faults import FaultKind
from colure.model.joints import letters_of
from colure.twin.faults import SilenceError
from colure.twin.motion import Pulses, Stage, fail_to_answer

IDENTITY = "Colure simulated axis controller 0 1"
KNOWN = frozenset({"G0", "G1", "G4", "G28", "G90", "G93", "M2", "M18", "M70", "M71", "M72", "M80", "M114", "M115"})

WORD = re.compile(r"([A-Z])\s*(-?\d+(?:\.\d*)?|-?\.\d+)")
LETTERS = {"azimuth": "B", "roll": "C", "elevation": "A", "probe": "U"}


class GcodeController:
    """Commands of the simulated axis controller; one instance serves every connection."""

    def __init__(self, stage: Stage, *, second: bool = False) -> None:
        self.stage = stage
        self._second = second
        #: Answers nothing and hears nothing any more, a hold neither.
        self.dead = False
        self._letters = LETTERS | letters_of(stage.axes)
        missing = [name for name in stage.axes if name not in self._letters]
        if missing:
            raise InputError(
                [
                    f"chamber.toml: positioner.joints: letter of {', '.join(missing)}: missing; the controller needs one (letter)"
                ]
            )
        self._names = {self._letters[name]: name for name in stage.axes}

    def realtime(self, character: str) -> None:
        """Act on a single character that does not queue behind motion."""
        if self.dead:
            return
        if character == "!":
            self.stage.hold()
        elif character == "~":
            self.stage.release()

    def answer(self, line: str) -> str:
        """Execute one line and return the reply lines."""
        if self.dead:
            raise SilenceError
        text = line.split(";", maxsplit=1)[0].strip().upper()
        if not text:
            return "ok\n"
        words = WORD.findall(text)
        if not words or "".join(WORD.sub("", text).split()):
            return f"error: not understood: {line.strip()[:40]}\n"
        codes = {f"{letter}{float(value):g}" for letter, value in words if letter in "GM"}
        numbers = {letter: float(value) for letter, value in words if letter in "FPQ"}
        values = {letter: float(value) for letter, value in words if letter not in "GMFNPQ"}
        unknown = set(values) - set(self._names)
        if unknown:
            return f"error: no axis {', '.join(sorted(unknown))}\n"
        return self._execute(codes, {self._names[k]: v for k, v in values.items()}, numbers)

    def _execute(self, codes: set[str], targets: dict[str, float], numbers: dict[str, float]) -> str:
        if codes - KNOWN:
            return f"error: code not known: {' '.join(sorted(codes - KNOWN))}\n"
        if "M114" in codes:
            return self._report() + "ok\n"
        if "M115" in codes:
            return IDENTITY + "\nok\n"
        if "M70" in codes:
            return self._set_pulses(targets, numbers)
        if "M71" in codes:
            return " ".join(["LATCHED", *(f"L:{place:.4f}" for place in self.stage.latched())]) + "\nok\n"
        if "M72" in codes:
            self.stage.beat(numbers.get("P", 1.0))
            return "ok\n"
        if codes & {"M2", "M18"}:
            self.stage.hold()
            return "ok\n"
        if "M80" in codes:
            self.stage.home()
            return "ok\n"
        if "G4" in codes:
            return "ok\n" if self.stage.wait_idle(numbers.get("P", 0.0)) else "error: held\n"
        if "G28" in codes:
            targets = {name: axis.home_deg for name, axis in self.stage.axes.items()}
        return self._move(targets, numbers.get("F") if "G93" in codes else None)

    def _move(self, targets: dict[str, float], per_minute: float | None) -> str:
        if not targets:
            return "ok\n"
        if self.stage.held.is_set():
            return "error: held\n"
        fault = self.stage.limit_fault(targets)
        if fault:
            return f"error: {fault}\n"
        if per_minute is not None and per_minute <= 0.0:
            return "error: F must be above 0 per minute\n"
        if self._second and self.stage.faults.of(FaultKind.CONTROLLER_DEAD):
            self.dead = True
        self.stage.start(targets, per_s=None if per_minute is None else per_minute / 60.0)
        garbage = fail_to_answer(self.stage)
        if self.dead:
            raise SilenceError
        if garbage:
            return garbage + "\n"
        return "error: held\n" if self.stage.held.is_set() else "ok\n"

    def _set_pulses(self, start: dict[str, float], numbers: dict[str, float]) -> str:
        if len(start) != 1 or not {"P", "Q"} <= set(numbers) or numbers["P"] == 0.0:
            return "error: M70 needs one axis word, P and Q\n"
        (axis, place), count = next(iter(start.items())), round(numbers["Q"])
        self.stage.set_pulses(Pulses(axis=axis, start_deg=place, step_deg=numbers["P"], count=count))
        return "ok\n"

    def _report(self) -> str:
        moving = self.stage.moving()
        positions = self.stage.positions()
        fields = [f"{self._letters[name]}:{value:.4f}" for name, value in positions.items()]
        state = "held" if self.stage.held.is_set() else "moving" if moving else "idle"
        fields += [f"S:{state}", f"D:{'open' if self.stage.door_open else 'closed'}"]
        if self.stage.alarm:
            fields.append(f"ALARM {self.stage.alarm}")
        return " ".join(fields) + "\n"
