"""Signal generator, switch box, contact, sensor and device states, each by a file of words."""

from __future__ import annotations

import math
import re

from colure.errors import InstrumentError
from colure.instruments.links import Opener, VisaLink, real_number, whole_number
from colure.instruments.protocols import LostError
from colure.instruments.role_profiles import (
    ContactProfile,
    SensorProfile,
    SourceProfile,
    StatesProfile,
    SwitchProfile,
)
from colure.instruments.words import WordsInstrument

#: Attempts to switch a source off before it is said to be on.
OFF_ATTEMPTS = 3
#: A level that is read back may differ by so much, dB.
LEVEL_TOLERANCE_DB = 0.011
#: What a channel brings into the path.
PLACES = {1: "device", 2: "reference", 3: "cable"}


class WordsSource(WordsInstrument):
    """A signal generator; see `SourceDriver`."""

    proves_tuning = True

    def __init__(self, resource: str, profile: SourceProfile, *, timeout_s: float, opener: Opener = VisaLink) -> None:
        super().__init__(resource, profile, timeout_s=timeout_s, opener=opener)
        self._source = profile

    def prepare(self, power_dbm: float) -> None:
        """Set the level while the output is off; raises `InstrumentError` if it reads back otherwise."""
        for command in self._source.setup:
            self.tell(command.format(power_dbm=power_dbm))
        self.off()
        self.tell(self._source.level.format(power_dbm=power_dbm))
        if self._source.level_query:
            level_dbm = real_number(self.ask(self._source.level_query), self.resource, "level in dBm")
            if abs(level_dbm - power_dbm) > LEVEL_TOLERANCE_DB:
                raise InstrumentError(f"{self.resource}: level reads {level_dbm:g} dBm, must be {power_dbm:g} dBm")

    def tune(self, frequency_hz: float) -> None:
        """Set the frequency, and hear from the generator after it: it has read the command then."""
        self.tell(self._source.tune.format(frequency_hz=frequency_hz))
        if not (self._source.acknowledge or self._source.error):
            self.ask(self._source.output)

    def on(self) -> None:
        """Switch the output on; raises `InstrumentError` if it reads as off."""
        self.tell(self._source.on)
        self.require_on()

    def require_on(self) -> None:
        """Raise `InstrumentError` if the output is not on: what is received then is noise."""
        answer = self.ask(self._source.output)
        if not re.search(self._source.output_on, answer):
            raise InstrumentError(
                f"{self.resource}: source is off although it was switched on ({self._source.output!r} answered {answer[:60]!r})"
            )

    def off(self) -> None:
        """Switch the output off and see that it is off.

        Raises
        ------
        InstrumentError
            If it still reads as on, or cannot be asked: it then counts as on.
        """
        why = ""
        for _ in range(OFF_ATTEMPTS):
            try:
                self.tell(self._source.off)
                answer = self.ask(self._source.output)
                if re.search(self._source.output_off, answer):
                    return
                why = f"{self._source.output!r} answered {answer[:60]!r}"
            except InstrumentError as error:
                why = str(error)
        raise InstrumentError(
            f"{self.resource}: SOURCE STAYS ON after {OFF_ATTEMPTS} attempts to switch it off ({why}): take its power away "
            "before anybody goes in"
        )


class WordsSwitch(WordsInstrument):
    """A switch box; see `SwitchDriver`."""

    def __init__(self, resource: str, profile: SwitchProfile, *, timeout_s: float, opener: Opener = VisaLink) -> None:
        super().__init__(resource, profile, timeout_s=timeout_s, opener=opener)
        self._switch = profile

    def route(self, channel: int) -> None:
        """Bring the device (1), the reference (2) or the shorted cable (3) into the path and see that it is.

        Raises
        ------
        InstrumentError
            If the box cannot, or stands elsewhere afterwards.
        """
        place = PLACES[channel]
        command = getattr(self._switch, place)
        if not command:
            raise InstrumentError(
                f"switch profile: `{place}` is empty, the switch cannot bring the {place} into the path"
            )
        self.tell(command)
        if self._switch.readback:
            answer = self.ask(self._switch.readback)
            if not re.search(getattr(self._switch, f"at_{place}"), answer):
                raise InstrumentError(f"{self.resource}: switch stands at {answer[:60]!r}, must be at the {place}")


class WordsContact(WordsInstrument):
    """A contact; see `ContactDriver`."""

    def __init__(self, resource: str, profile: ContactProfile, *, timeout_s: float, opener: Opener = VisaLink) -> None:
        super().__init__(resource, profile, timeout_s=timeout_s, opener=opener)
        self._contact = profile

    def closed(self) -> bool:
        """Tell whether the contact is closed; raises `LostError` for an answer that is neither of the two."""
        answer = self.ask(self._contact.read)
        is_closed, is_open = re.search(self._contact.closed, answer), re.search(self._contact.open, answer)
        if bool(is_closed) == bool(is_open):
            self._doubt = True
            raise LostError(
                f"{self.resource}: {self._contact.read!r} answered {answer[:60]!r}: neither open nor closed"
            )
        return bool(is_closed)


class WordsSensor(WordsInstrument):
    """A sensor; see `SensorDriver`."""

    def __init__(self, resource: str, profile: SensorProfile, *, timeout_s: float, opener: Opener = VisaLink) -> None:
        super().__init__(resource, profile, timeout_s=timeout_s, opener=opener)
        self._quantities = profile.quantities
        self.quantities = tuple(profile.quantities)

    def read(self) -> dict[str, float]:
        """Return every quantity; raises `InstrumentError` if one cannot be read or is beyond what it can be."""
        out = {}
        for name, one in self._quantities.items():
            answer = self.ask(one.query)
            match = re.search(one.pattern, answer)
            try:
                number = whole_number(match, "value", self.resource, name) if match else "nan"
                value = one.scale * float(number) + one.offset
            except ValueError:
                value = math.nan
            if not one.least <= value <= one.most:
                raise InstrumentError(
                    f"{self.resource}: {name} answered {answer[:60]!r}: must be a number from {one.least:g} to {one.most:g}"
                )
            out[name] = value
        return out


class WordsStates(WordsInstrument):
    """Device states by a file of words; see `StateDriver`."""

    def __init__(self, resource: str, profile: StatesProfile, *, timeout_s: float, opener: Opener = VisaLink) -> None:
        super().__init__(resource, profile, timeout_s=timeout_s, opener=opener)
        self._states = profile

    def take(self, index: int, name: str) -> None:
        """Take a state and read it back; raises `InstrumentError` if it is another."""
        self.tell(self._states.take.format(index=index, name=name))
        if not self._states.readback:
            return
        answer = self.ask(self._states.readback.format(index=index, name=name))
        wanted = self._states.expect.replace("{index}", str(index)).replace("{name}", re.escape(name))
        if not re.search(wanted, answer):
            raise InstrumentError(f"{self.resource}: state reads {answer[:60]!r}, must match {wanted!r}")
