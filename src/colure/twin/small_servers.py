"""Simulated signal generator, switch box, contact, sensor and device: small text servers of the chamber, with their faults."""

from __future__ import annotations

import re

from colure.model.faults import FaultKind
from colure.twin.chamber import SimulatedRange
from colure.twin.clock import SimulatedClock
from colure.twin.faults import Faults, SilenceError

NO_ERROR = '0,"No error"'


class SimulatedSource:
    """A signal generator that speaks SCPI: frequency, level, output."""

    def __init__(self, faults: Faults) -> None:
        self._faults = faults
        self._error = NO_ERROR
        self.frequency_hz, self.level_dbm, self.on = 1e9, -20.0, False

    def answer(self, line: str) -> str | None:
        """Execute one line and return its answer; None if it has none."""
        head, _, argument = line.strip().partition(" ")
        queries = {
            "*IDN?": "Colure,Simulated signal generator,0,1", "OUTP?": str(int(self.on)), "SYST:ERR?": self._take_error(head),
            "SOUR:POW?": f"{self.level_dbm:.10g}", "SOUR:FREQ?": f"{self.frequency_hz:.12g}",
        }  # fmt: skip
        if head in queries:
            return queries[head]
        try:
            if head == "SOUR:FREQ":
                self.frequency_hz = float(argument)
            elif head == "SOUR:POW":
                self.level_dbm = float(argument)
            elif head == "OUTP" and argument in ("ON", "OFF"):
                self._switch(argument == "ON")
            elif head != "*CLS":
                self._error = '-113,"Undefined header"'
        except ValueError:
            self._error = '-104,"Data type error"'
        return None

    def _switch(self, on: bool) -> None:
        stuck = not on and self.on and self._faults.of(FaultKind.SOURCE_STAYS_ON)
        self.on = on or stuck

    def _take_error(self, head: str) -> str:
        error = self._error
        if head == "SYST:ERR?":
            self._error = NO_ERROR
        return error


class SimulatedSwitch:
    """A switch box: `PATH n`, `PATH?`."""

    def __init__(self) -> None:
        self.channel = 1

    def answer(self, line: str) -> str | None:
        """Execute one line and return its answer."""
        text = line.strip()
        if text == "WHO":
            return "SIMULATED SWITCH BOX"
        if text == "PATH?":
            return str(self.channel)
        match = re.fullmatch(r"PATH ([123])", text)
        if match is None:
            return "ERR"
        self.channel = int(match[1])
        return "OK"


class SimulatedContact:
    """A contact: `CONTACT?`. It opens, or stops to answer, when its fault's turn has come."""

    def __init__(self, faults: Faults) -> None:
        self._faults = faults
        self.closed, self.silent = True, False

    def answer(self, line: str) -> str | None:
        """Execute one line and return its answer."""
        text = line.strip()
        if text == "WHO":
            return "SIMULATED CONTACT"
        if text != "CONTACT?":
            return "ERR"
        if self._faults.of(FaultKind.INTERLOCK_OPEN):
            self.closed = False
        if self._faults.of(FaultKind.INTERLOCK_LOST):
            self.silent = True
        if self.silent:
            raise SilenceError
        return "CLOSED" if self.closed else "OPEN"


class SimulatedSensor:
    """A sensor of temperature and humidity that follows the chamber's air; silent for good once its fault's turn has come."""

    def __init__(self, chamber: SimulatedRange, faults: Faults, clock: SimulatedClock) -> None:
        self._chamber, self._faults, self._clock = chamber, faults, clock
        self.silent = False

    def answer(self, line: str) -> str | None:
        """Execute one line and return its answer."""
        text = line.strip()
        if text == "WHO":
            return "SIMULATED SENSOR"
        if self._faults.of(FaultKind.SENSOR_LOST):
            self.silent = True
        if self.silent:
            raise SilenceError
        if text == "TEMPERATURE?":
            return f"{self._chamber.air_c(self._clock.now()):.2f} C"
        return "41.0 %" if text == "HUMIDITY?" else "ERR"


class SmallInstrument:
    """A device that takes states: `STATE n`, acknowledged, and `STATE?`."""

    def __init__(self, chamber: SimulatedRange) -> None:
        self._chamber = chamber

    def answer(self, line: str) -> str | None:
        """Execute one line and return its answer."""
        text = line.strip()
        if text == "WHO":
            return "SIMULATED DEVICE"
        if text == "STATE?":
            return str(self._chamber.state)
        match = re.fullmatch(r"STATE (\d{1,4})", text)
        if match is None:
            return "ERR"
        self._chamber.state = int(match[1])
        return "OK"
