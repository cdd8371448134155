"""The instruments of a range by what they do: `[[instruments]]` in chamber.toml."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from typing import Annotated, Literal

from pydantic import Field, model_validator

from colure.model.loading import Section

RoleName = Literal["receiver", "source", "switch", "axis-controller", "interlock", "state", "sensor"]
AxisName = Literal["azimuth", "roll", "elevation", "probe"]

#: Profile that counts where none is named, by role: the words of the simulated chamber.
PROFILES: dict[str, str] = {
    "receiver": "scpi-analyzer", "source": "scpi-source", "switch": "switch-line", "axis-controller": "gcode-axes",
    "interlock": "contact-line", "state": "states-line", "sensor": "sensor-line",
}  # fmt: skip
#: Time-out that counts where none is named, seconds. A contact that does not answer is open: it gets little time.
TIMEOUTS_S: dict[str, float] = {"receiver": 10.0, "axis-controller": 60.0, "interlock": 0.5, "sensor": 2.0}
#: How often an interlock and a sensor are read where nothing is said, seconds.
EVERY_S: dict[str, float] = {"interlock": 0.05, "sensor": 2.0}
#: Names that messages use already, and the role that may have them.
RESERVED = {"analyzer": "receiver", "axes": "axis-controller", "device": ""}
#: Roles that there is one of at most, and options that belong to some roles only.
SINGLE = ("receiver", "source", "switch", "state")
OPTIONS: dict[str, tuple[str, ...]] = {
    "axes": ("axis-controller",),
    "reports_door": ("axis-controller",),
    "stands_for": ("interlock",),
    "every_s": ("interlock", "sensor"),
}


class Instrument(Section):
    """One instrument and what it does in the range.

    role
        What it does. `receiver`: analyzer, power meter or spectrum analyzer. `source`: a signal generator of its own, beside a
        power-only receiver. `switch`: brings device, reference or cable into the path. `axis-controller`: turns one or several
        axes. `interlock`: a contact that must be closed. `state`: puts the device into a beam or mode. `sensor`: temperature,
        humidity and the like.
    name
        How messages call it; the role if left out. Each must be unique.
    resource
        Address of the instrument (host:port, serial port, VISA resource); `twin` is the simulated chamber.
    profile
        Name of the file of words that it understands, or `driver:NAME` of another package; that of the simulated one if left out.
    timeout_s
        How long an answer may take (axis controller: a move beyond its calculated duration); by default 60 s for an axis
        controller, 0.5 s for an interlock, 2 s for a sensor, 10 s for the others.
    axes
        Axis controller only: the axes that it turns; all axes if left out, where it is the only one.
    reports_door
        Axis controller only: it must report the door; motion needs it closed.
    stands_for
        Interlock only. `door`: opening brakes and pauses, a person resumes. `emergency-stop`: opening ends the run, axes must be
        homed before the next motion.
    every_s
        Interlock and sensor only: how often it is read; by default 0.05 s and 2 s.
    """

    role: RoleName
    name: Annotated[str, Field(pattern=r"^[a-z0-9-]{0,40}$")] = ""
    resource: str = "twin"
    profile: str = ""
    timeout_s: float | None = Field(default=None, ge=0.05, le=600, json_schema_extra={"unit": "s"})
    axes: tuple[AxisName, ...] = ()
    reports_door: bool = False
    stands_for: Literal["door", "emergency-stop"] = "door"
    every_s: float | None = Field(default=None, ge=0.01, le=3600, json_schema_extra={"unit": "s"})

    @model_validator(mode="after")
    def _own_options(self) -> Instrument:
        for option, roles in OPTIONS.items():
            default = type(self).model_fields[option].default
            if getattr(self, option) != default and self.role not in roles:
                raise ValueError(f"{option} belongs to role {' or '.join(roles)}, not to {self.role!r}; remove it")
        if self.role == "interlock" and (self.timeout_s or 0.0) > 2.0:
            raise ValueError(
                f"timeout_s = {self.timeout_s:g}: must be at most 2 s for an interlock: so long a lost line goes unnoticed"
            )
        if self.role == "interlock" and (self.every_s or 0.0) > 1.0:
            raise ValueError(f"every_s = {self.every_s:g}: must be at most 1 s for an interlock")
        return self

    @property
    def shown_name(self) -> str:
        """How messages call it."""
        return self.name or self.role

    @property
    def words(self) -> str:
        """Name of the profile that counts."""
        return self.profile or PROFILES[self.role]

    @property
    def limit_s(self) -> float:
        """Time-out that counts, seconds."""
        return TIMEOUTS_S.get(self.role, 10.0) if self.timeout_s is None else self.timeout_s

    @property
    def period_s(self) -> float:
        """How often it is read, seconds."""
        return EVERY_S.get(self.role, 1.0) if self.every_s is None else self.every_s


def faults_of(instruments: Sequence[Instrument], axes: Sequence[str]) -> list[str]:
    """Return what is wrong with a range's instruments: too many, too few, an axis that nobody or that two turn.

    Parameters
    ----------
    axes
        Names of the axes that turn by motor.
    """
    roles = Counter[str](one.role for one in instruments)
    faults = [f"role {role!r} is given {roles[role]} times: must be once at most" for role in SINGLE if roles[role] > 1]
    if not roles["receiver"]:
        faults.append("no instrument has role 'receiver': must be exactly one")
    if not roles["axis-controller"]:
        faults.append("no instrument has role 'axis-controller': must be at least one")
    twice = [name for name, count in Counter(one.shown_name for one in instruments).items() if count > 1]
    faults += [f"name {name!r} is given twice: give each a name of its own" for name in twice]
    faults += [
        f"name {one.shown_name!r} belongs to role {RESERVED[one.shown_name] or 'device'!r}: give {one.role!r} another name"
        for one in instruments
        if one.shown_name in RESERVED and RESERVED[one.shown_name] != one.role
    ]
    lines = Counter(
        one.resource for one in instruments if one.role in ("axis-controller", "source") and one.resource != "twin"
    )
    faults += [f"resource {line!r} is given to two instruments that act" for line, count in lines.items() if count > 1]
    return faults + _axis_faults([one for one in instruments if one.role == "axis-controller"], axes)


def _axis_faults(controllers: Sequence[Instrument], axes: Sequence[str]) -> list[str]:
    if len(controllers) == 1 and not controllers[0].axes:
        return []
    faults = [
        f"axis controller {one.shown_name!r} names no axes: with several controllers each needs axes = [...]"
        for one in controllers
        if not one.axes
    ]
    turned = Counter[str](name for one in controllers for name in one.axes)
    for name, count in turned.items():
        if name not in axes:
            faults.append(f"axes = {name!r}: no such motor axis here; known: {', '.join(axes)}")
        elif count > 1:
            faults.append(f"axes: {name!r} is named {count} times: must be turned by one controller")
    if controllers and not any("names no axes" in one for one in faults):
        faults += [
            f"axis {name!r} has no controller: name it in axes = [...] of one" for name in axes if not turned[name]
        ]
    return faults
