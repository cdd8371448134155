"""One driver for each small role of a range, in Python: copy what no file of words can say, and change what it does.

Each class is what an entry point names (pyproject.toml beside it) and chamber.toml calls `profile = "driver:NAME"`. Colure makes
one with the resource, `timeout_s` and `folder`. What a driver cannot do it says by `InstrumentError`; a line that does not answer
is a `LostError`. A contact that raises counts as open, a sensor that raises gives `nan`.
"""

from __future__ import annotations

from pathlib import Path

from colure.errors import InstrumentError
from colure.instruments.links import VisaLink, real_number
from colure.instruments.protocols import LostError

#: The three places of the switch box.
PLACES = {1: "device", 2: "reference", 3: "cable"}


class Spoken:
    """A line of text to one instrument; opened anew after an answer that did not come, so that no late one is taken."""

    def __init__(self, resource: str, *, timeout_s: float, folder: Path | None = None) -> None:
        self.link = VisaLink(resource, timeout_s=timeout_s)
        self.doubt = False

    def ask(self, text: str) -> str:
        """Return the answer to a line."""
        if self.doubt:
            self.reconnect()
        try:
            return self.link.query(text)
        except LostError:
            self.doubt = True
            raise

    def identity(self) -> str:
        """Return who answers; a run refuses another one later."""
        return self.ask("WHO")

    def reconnect(self) -> None:
        """Open the line anew."""
        self.link.reopen()
        self.doubt = False

    def close(self) -> None:
        """Close the line."""
        self.link.close()


class StationSensor(Spoken):
    """Temperature of the air in kelvin, which no file of words turns into a dew point."""

    quantities = ("temperature_k",)

    def read(self) -> dict[str, float]:
        """Return every quantity."""
        return {"temperature_k": 273.15 + real_number(self.ask("TEMPERATURE?"), self.link.resource, "temperature")}


class TwoOfTwo(Spoken):
    """A contact that is read twice: it is closed only if both answers say so."""

    def closed(self) -> bool:
        """Tell whether the contact is closed."""
        answers = {self.ask("CONTACT?") for _ in range(2)}
        if answers - {"OPEN", "CLOSED"}:
            raise LostError(f"{self.link.resource}: {sorted(answers)} is neither open nor closed")
        return answers == {"CLOSED"}


class Box(Spoken):
    """A switch box that is asked where it stands after every change."""

    def route(self, channel: int) -> None:
        """Bring the device (1), the reference (2) or the shorted cable (3) into the path."""
        if self.ask(f"PATH {channel}") != "OK" or self.ask("PATH?") != str(channel):
            raise InstrumentError(f"{self.link.resource}: the {PLACES[channel]} is not in the path")


class Beams(Spoken):
    """Device states by number, proven."""

    def take(self, index: int, name: str) -> None:
        """Take a state."""
        if self.ask(f"STATE {index}") != "OK" or self.ask("STATE?") != str(index):
            raise InstrumentError(f"{self.link.resource}: state {name} is not taken")


class Generator(Spoken):
    """A signal generator; `off` raises unless the output is proven to be off."""

    def identity(self) -> str:
        """Return who answers."""
        return self.ask("*IDN?")

    def prepare(self, power_dbm: float) -> None:
        """Set the level with the output off."""
        self.off()
        self.link.write(f"SOUR:POW {power_dbm:g}")

    def tune(self, frequency_hz: float) -> None:
        """Set the frequency."""
        self.link.write(f"SOUR:FREQ {frequency_hz:.3f}")

    def on(self) -> None:
        """Switch the output on."""
        self.link.write("OUTP ON")
        self.require_on()

    def require_on(self) -> None:
        """Raise if the output is off."""
        if self.ask("OUTP?") != "1":
            raise InstrumentError(f"{self.link.resource}: the source is off although it was switched on")

    def off(self) -> None:
        """Switch the output off."""
        self.link.write("OUTP OFF")
        if self.ask("OUTP?") != "0":
            raise InstrumentError(
                f"{self.link.resource}: the source stays on: take its power away before anybody goes in"
            )
