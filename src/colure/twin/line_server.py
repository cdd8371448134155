"""A second simulated axis controller that speaks quite another language, on a serial line.

Lines end in CR; axes are numbered; positions are motor steps; moves return at once and are
asked for: `WHO`, `RATE 1 16000`, `MOVE 1 72000`, `WHERE 1`, `BUSY 1`, `STATE`, `HALT`, `FREE`,
`SEEK 1`. Invented for this simulation.
"""

from __future__ import annotations

import os
import threading

from colure.twin.faults import HangUpError, SilenceError
from colure.twin.motion import Stage, fail_to_answer

STEPS_PER_DEG = 800.0
NUMBERS = {"azimuth": 1, "roll": 2, "elevation": 2, "probe": 3}
LONGEST_LINE = 4096


class LineController:
    """Commands of the simulated stepper rack."""

    def __init__(self, stage: Stage) -> None:
        self.stage = stage
        # Joints have no number of their own: they come after the four axes, in their order.
        others = [name for name in stage.axes if name not in NUMBERS]
        numbers = NUMBERS | {name: len(NUMBERS) + 1 + number for number, name in enumerate(others)}
        self._names = {numbers[name]: name for name in stage.axes}
        self._rates_deg_s: dict[str, float] = {}

    def answer(self, line: str) -> str:
        """Execute one line and return the reply without its line end."""
        word, *arguments = line.strip().split() or [""]
        try:
            numbers = [float(argument) for argument in arguments]
        except ValueError:
            return f"ERR not a number in {line.strip()[:40]}"
        simple = {"WHO": self._who, "STATE": self._state, "HALT": self._halt, "FREE": self._free}
        if word in simple and not numbers:
            return simple[word]()
        if not numbers or round(numbers[0]) not in self._names:
            return f"ERR not understood: {line.strip()[:40]}"
        return self._axis(word, self._names[round(numbers[0])], numbers)

    def _axis(self, word: str, name: str, numbers: list[float]) -> str:
        number = round(numbers[0])
        if word == "WHERE" and len(numbers) == 1:
            return f"POS {number} {self.stage.positions()[name] * STEPS_PER_DEG:.0f}"
        if word == "BUSY" and len(numbers) == 1:
            return f"BUSY {number} {'YES' if self.stage.moving() else 'NO'}"
        if word == "RATE" and len(numbers) == 2:
            fastest = self.stage.axes[name].speed_deg_s * STEPS_PER_DEG
            if not 0.0 < numbers[1] <= fastest * 1.001:
                return f"ERR rate above {fastest:.0f}"
            self._rates_deg_s[name] = numbers[1] / STEPS_PER_DEG
            return "OK"
        if word == "SEEK" and len(numbers) == 1:
            self.stage.home()
            return "OK"
        if word == "MOVE" and len(numbers) == 2:
            return self._move(name, numbers[1] / STEPS_PER_DEG)
        return f"ERR not understood: {word[:40]}"

    def _move(self, name: str, target: float) -> str:
        if self.stage.held.is_set():
            return "ERR HELD"
        fault = self.stage.limit_fault({name: target})
        if fault:
            return f"ERR {fault}"
        self.stage.start({name: target}, coordinated=False, speeds_deg_s=self._rates_deg_s)
        garbage = fail_to_answer(self.stage)
        return garbage or ("ERR HELD" if self.stage.held.is_set() else "OK")

    def _who(self) -> str:
        return f"SIMULATED STEPPER RACK {len(self._names)} AXES"

    def _state(self) -> str:
        held = "HELD" if self.stage.held.is_set() else "FREE"
        door = "OPEN" if self.stage.door_open else "SHUT"
        alarm = f" ALARM {self.stage.alarm}" if self.stage.alarm else ""
        return f"STATE {held} DOOR {door}{alarm}"

    def _halt(self) -> str:
        self.stage.hold()
        return "OK"

    def _free(self) -> str:
        self.stage.release()
        return "OK" if not self.stage.held.is_set() else "ERR HELD"


class SerialLine:
    """A pseudo-terminal with the controller on its far end (POSIX systems only)."""

    def __init__(self, controller: LineController) -> None:
        import tty

        self._controller = controller
        self._near, far = os.openpty()
        tty.setraw(far)
        # Keeping the far end open lets clients come and go.
        self._far = far
        self.path = os.ttyname(far)
        threading.Thread(target=self._serve, daemon=True).start()

    @property
    def resource(self) -> str:
        """VISA resource string of the serial port."""
        return f"ASRL{self.path}::INSTR"

    def _serve(self) -> None:
        pending = ""
        while True:
            try:
                block = os.read(self._near, LONGEST_LINE)
            except OSError:
                return
            pending += block.decode("ascii", "replace")
            while "\r" in pending:
                line, pending = pending.split("\r", 1)
                try:
                    os.write(self._near, (self._controller.answer(line) + "\r").encode("ascii"))
                except (SilenceError, HangUpError):
                    continue
                except OSError:
                    return
            pending = pending[-LONGEST_LINE:]

    def close(self) -> None:
        """Hang up."""
        os.close(self._far)
        os.close(self._near)
