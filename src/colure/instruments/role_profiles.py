"""Files of words for sources, switches, contacts, device states and sensors: a query, a pattern, an acknowledgement."""

from __future__ import annotations

from pathlib import Path
from typing import Literal

from pydantic import Field, field_validator, model_validator

from colure.errors import InputError
from colure.instruments.line_profile import LineTable, compiles
from colure.instruments.modbus import ModbusContactProfile, ModbusSensorProfile
from colure.instruments.profile import profile_path
from colure.instruments.sensors import require_unit_names
from colure.model.loading import Section, load, read_toml

#: Roles whose instruments are described by one of these files, and the `kind` that it must have.
KINDS = {
    "source": ("source",), "switch": ("switch",), "interlock": ("contact", "modbus-contact"), "state": ("states",),
    "sensor": ("sensor", "modbus-sensor"),
}  # fmt: skip


class WordsProfile(Section):
    """What all of them share.

    identity
        Query of who answers; "" if the instrument cannot tell.
    acknowledge
        Pattern of the answer to a command; "" if there is none.
    error, error_none
        Query of the error queue after every command ("" if there is none), and what it says when it is empty.
    """

    foreign_words = True

    kind: str
    line: LineTable = LineTable()
    identity: str = ""
    acknowledge: str = ""
    error: str = ""
    error_none: str = r"^\+?0,"

    _patterns = field_validator("acknowledge", "error_none")(compiles)


class SourceProfile(WordsProfile):
    """Commands of a signal generator.

    setup
        Sent before the run; {power_dbm} is filled in.
    tune, level
        Commands that set {frequency_hz} and {power_dbm}.
    on, off
        Commands that switch the output.
    output, output_on, output_off
        Query of the output, and patterns of what it says: a source that cannot be asked is not trusted to be off.
    level_query
        Query of the level, which must equal what was set; "" if it cannot tell.
    """

    kind: Literal["source"]
    setup: tuple[str, ...] = ()
    tune: str
    level: str
    on: str
    off: str
    output: str
    output_on: str = r"^(1|ON)$"
    output_off: str = r"^(0|OFF)$"
    level_query: str = ""

    _outputs = field_validator("output_on", "output_off")(compiles)


class SwitchProfile(WordsProfile):
    """Commands of a switch box.

    device, reference, cable
        Commands that bring the device, the reference horn, or the shorted cable into the path; "" where the box cannot.
    readback
        Query of the position; "" if it cannot tell.
    at_device, at_reference, at_cable
        Patterns of its answer.
    """

    kind: Literal["switch"]
    device: str
    reference: str = ""
    cable: str = ""
    readback: str = ""
    at_device: str = ""
    at_reference: str = ""
    at_cable: str = ""

    _positions = field_validator("at_device", "at_reference", "at_cable")(compiles)

    @model_validator(mode="after")
    def _proven(self) -> SwitchProfile:
        for name in ("device", "reference", "cable"):
            if self.readback and getattr(self, name) and not getattr(self, f"at_{name}"):
                raise ValueError(f"`readback` needs `at_{name}`, the pattern of its answer in that position")
        return self


class ContactProfile(WordsProfile):
    """A contact that can be read: interlock, door switch, emergency-stop chain.

    read
        Query of the contact.
    closed, open
        Patterns of its two answers. Any other answer, or none, counts as open.
    """

    kind: Literal["contact"]
    read: str
    closed: str = Field(min_length=1)
    open: str = Field(min_length=1)

    _answers = field_validator("closed", "open")(compiles)


class StatesProfile(WordsProfile):
    """Commands that put the device into a state; {index} and {name} are filled in.

    take
        Command that takes a state.
    readback, expect
        Query of the state, and the pattern of the answer that proves it (values are quoted for it).
    """

    kind: Literal["states"]
    take: str
    readback: str = ""
    expect: str = "^{index}$"


class SensorQuantity(Section):
    """One quantity of a sensor.

    query
        Asks for it.
    pattern
        Finds the number in the answer, group `value`.
    scale, offset
        The value is scale times the number plus offset.
    least, most
        A value outside is no reading.
    """

    query: str
    pattern: str = r"(?P<value>[-+]?\d+(?:\.\d+)?(?:[eE][-+]?\d+)?)"
    scale: float = 1.0
    offset: float = 0.0
    least: float = -1e9
    most: float = 1e9

    @field_validator("pattern")
    @classmethod
    def _has_value(cls, value: str) -> str:
        if "(?P<value>" not in compiles(value):
            raise ValueError("pattern needs a group named value: (?P<value>...)")
        return value


class SensorProfile(WordsProfile):
    """Queries of a sensor.

    quantities
        What it reads, by name with the unit at the end: `temperature_c`, `humidity_percent`, `pressure_hpa`.
    """

    kind: Literal["sensor"]
    quantities: dict[str, SensorQuantity] = Field(min_length=1, max_length=20)

    @field_validator("quantities")
    @classmethod
    def _names(cls, value: dict[str, SensorQuantity]) -> dict[str, SensorQuantity]:
        require_unit_names(value)
        return value


RoleProfile = (
    SourceProfile | SwitchProfile | ContactProfile | StatesProfile | SensorProfile | ModbusContactProfile
    | ModbusSensorProfile
)  # fmt: skip
MODELS: dict[str, type[RoleProfile]] = {
    "source": SourceProfile, "switch": SwitchProfile, "contact": ContactProfile, "states": StatesProfile,
    "sensor": SensorProfile, "modbus-contact": ModbusContactProfile, "modbus-sensor": ModbusSensorProfile,
}  # fmt: skip


def role_profile(name: str, folder: Path | None = None, *, role: str = "") -> RoleProfile:
    """Read the profile of a source, switch, interlock, state or sensor.

    Parameters
    ----------
    role
        What it must serve; any of them if empty.

    Raises
    ------
    InputError
        If there is none of that name, it serves another role, or it is wrong.
    """
    path = profile_path(name, folder)
    kind = str(read_toml(path).get("kind"))
    allowed = list(KINDS[role] if role else MODELS)
    if kind not in allowed:
        raise InputError(
            [f"{path.name}: kind = {kind!r}: must be {' or '.join(allowed)}" + (f" for role {role!r}" if role else "")]
        )
    return load(MODELS[kind], path)
