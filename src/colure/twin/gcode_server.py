"""The axis controller's side of the socket: a few RS-274 words and a position report.

Words from RS274/NGC version 3 (Kramer, Proctor, Messina, NISTIR 6556, 2000; from memory):
G0 G1 G4 G28 G90 M2, rotary axes A B C; the probe roll is axis U here. `!` holds, `~` releases;
M114 reports. Every line is answered by its report, if any, and `ok` or `error: words`.
"""

from __future__ import annotations

import re

from colure.twin.motion import Stage

WORD = re.compile(r"([A-Z])\s*(-?\d+(?:\.\d*)?|-?\.\d+)")
LETTERS = {"azimuth": "B", "roll": "C", "elevation": "A", "probe": "U"}


class GcodeController:
    """Commands of the simulated axis controller; one instance serves every connection."""

    def __init__(self, stage: Stage) -> None:
        self.stage = stage
        self._names = {LETTERS[name]: name for name in stage.axes}

    def realtime(self, character: str) -> None:
        """Act on a single character that does not queue behind motion."""
        if character == "!":
            self.stage.hold()
        elif character == "~":
            self.stage.release()

    def answer(self, line: str) -> str:
        """Execute one line and return the reply lines."""
        text = line.split(";", maxsplit=1)[0].strip().upper()
        if not text:
            return "ok\n"
        words = WORD.findall(text)
        if not words or "".join(WORD.sub("", text).split()):
            return f"error: not understood: {line.strip()[:40]}\n"
        codes = {f"{letter}{float(value):g}" for letter, value in words if letter in "GM"}
        values = {letter: float(value) for letter, value in words if letter not in "GMFNP"}
        dwell = next((float(value) for letter, value in words if letter == "P"), 0.0)
        unknown = set(values) - set(self._names)
        if unknown:
            return f"error: no axis {', '.join(sorted(unknown))}\n"
        return self._execute(codes, {self._names[k]: v for k, v in values.items()}, dwell)

    def _execute(self, codes: set[str], targets: dict[str, float], dwell: float) -> str:
        if codes - {"G0", "G1", "G4", "G28", "G90", "M2", "M114"}:
            return f"error: code not known: {' '.join(sorted(codes))}\n"
        if "M114" in codes:
            return self._report() + "ok\n"
        if "M2" in codes:
            self.stage.hold()
            return "ok\n"
        if "G28" in codes:
            targets = {name: axis.home_deg for name, axis in self.stage.axes.items()}
        if "G4" in codes:
            return "ok\n" if self.stage.wait_idle(dwell) else "error: held\n"
        if targets:
            if self.stage.held.is_set():
                return "error: held\n"
            fault = self.stage.limit_fault(targets)
            if fault:
                return f"error: {fault}\n"
            self.stage.start(targets)
        return "ok\n"

    def _report(self) -> str:
        clock = self.stage.clock
        moving = clock.now() < self.stage.busy_until()
        if moving and clock.virtual:
            # Somebody is watching a move: let a little time pass, or it would never end.
            clock.wait_until(min(clock.now() + 0.02, self.stage.busy_until()))
        positions = self.stage.positions()
        fields = [f"{LETTERS[name]}:{value:.4f}" for name, value in positions.items()]
        state = "held" if self.stage.held.is_set() else "moving" if moving else "idle"
        return " ".join([*fields, f"S:{state}"]) + "\n"
