"""Line profiles: what to say to an axis controller that takes text, and how to read what it says."""

from __future__ import annotations

import re
from collections.abc import Sequence
from string import Formatter
from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Field, field_validator, model_validator

from colure.instruments.links import LineEnds
from colure.model.loading import Section

#: Fields of the templates, verb by verb; names of axes and what a sequence has captured come on top.
FIELDS = {
    "move": ("axis", "value", "words"), "timed": ("axis", "value", "words", "seconds", "speed", "per_minute"),
    "speed": ("axis", "speed"), "pulses": ("axis", "start", "step", "count"),
    "position": ("axis",), "busy": ("axis",), "home": ("axis",), "latched": ("axis", "count"),
}  # fmt: skip


def compiles(pattern: str) -> str:
    """Return a regular expression; raises `ValueError` if it is none."""
    try:
        re.compile(pattern)
    except re.error as error:
        raise ValueError(f"must be a regular expression: {error}") from None
    return pattern


def require_latch_words(latched: bool | str, pattern: str) -> None:
    """Raise `ValueError` if latched positions could be asked for and not be read, or the other way round."""
    if bool(latched) != bool(pattern) or (pattern and "value" not in re.compile(pattern).groupindex):
        raise ValueError(
            "`latched` and `latched_pattern` belong together: a query, and the pattern that finds `(?P<value>...)` of every pulse"
        )


class LineTable(Section):
    """How lines end, the settings of a serial port, and which lines are not answers.

    echo
        The controller sends back what it was sent.
    prompt
        Pattern of what it says before it takes a command, without a line end: left out at the beginning of every line.
    pace_s
        Least time between two lines sent.
    visa
        VISA library for GPIB, USB, VXI-11 and HiSLIP: `@py`, `@ivi`, or the path of one.
    greeting, restart, messages
        Patterns of lines that come by themselves: at every connection; when the controller restarts (counts are then
        not trusted until the axes are homed); at any time, to be ignored.
    """

    read_end: Annotated[str, Field(min_length=1, max_length=4)] = "\n"
    write_end: Annotated[str, Field(min_length=1, max_length=4)] = "\n"
    baud_rate: int = Field(default=115200, ge=50, le=20_000_000, json_schema_extra={"unit": "baud"})
    parity: Literal["none", "even", "odd", "mark", "space"] = "none"
    data_bits: Literal[5, 6, 7, 8] = Field(default=8, json_schema_extra={"unit": "bits"})
    stop_bits: Literal[1, 1.5, 2] = Field(default=1, json_schema_extra={"unit": "bits"})  # type: ignore[valid-type]
    flow: Literal["none", "xonxoff", "rtscts", "dsrdtr"] = "none"
    visa: Annotated[str, Field(min_length=1, max_length=300)] = "@py"
    echo: bool = False
    prompt: str = ""
    pace_s: float = Field(default=0.0, ge=0, le=10, json_schema_extra={"unit": "s"})
    greeting: str = ""
    restart: str = ""
    messages: str = ""

    _patterns = field_validator("prompt", "greeting", "restart", "messages")(compiles)

    @property
    def ends(self) -> LineEnds:
        """The same as the links want it."""
        return LineEnds(
            read=self.read_end,
            write=self.write_end,
            baud_rate=self.baud_rate,
            parity=self.parity,
            data_bits=self.data_bits,
            stop_bits=float(self.stop_bits),
            flow=self.flow,
            visa=self.visa,
        )


class SequenceStep(Section):
    """One step of a sequence: send, await an answer, ask until the answer is the one wanted, wait.

    raw
        Send without a line end, such as characters that act at once.
    answers, end
        Number of answer lines, or the pattern of the last one; left out: one line, or none where `acknowledge` is empty.
    expect
        Pattern that the answer must match; its named groups are fields of the steps after it.
    until, every_s, limit_s
        Send again until the answer matches, at this interval, for this long.
    pause_s
        Wait after the step.
    """

    send: Annotated[str, Field(max_length=1000)] = ""
    raw: bool = False
    answers: int | None = Field(default=None, ge=0, le=1000, json_schema_extra={"unit": "lines"})
    end: str = ""
    expect: str = ""
    until: str = ""
    every_s: float = Field(default=0.05, ge=0.001, le=60, json_schema_extra={"unit": "s"})
    limit_s: float | None = Field(default=None, ge=0.01, le=3600, json_schema_extra={"unit": "s"})
    pause_s: float = Field(default=0.0, ge=0, le=60, json_schema_extra={"unit": "s"})

    _patterns = field_validator("end", "expect", "until")(compiles)

    @model_validator(mode="after")
    def _does_something(self) -> SequenceStep:
        if not self.send and not self.pause_s:
            raise ValueError("a step needs `send` or `pause_s` (s)")
        return self

    @field_validator("send")
    @classmethod
    def _latin(cls, value: str) -> str:
        if not value.isascii():
            raise ValueError("must be ASCII characters")
        return value


def _steps(value: Any) -> Any:
    """Take one command, one step, or a list of both for a sequence."""
    if value == "":
        return ()
    if isinstance(value, (str, dict, SequenceStep)):
        value = [value]
    if isinstance(value, (list, tuple)):
        return tuple({"send": one} if isinstance(one, str) else one for one in value)
    return value


Words = Annotated[tuple[SequenceStep, ...], BeforeValidator(_steps)]


class LineAxis(Section):
    """One axis of a line profile: its name on the wire, its unit, and words of its own.

    read_units_per_deg, read_offset_units
        Unit of the position that is read, where an encoder counts otherwise than the motor.
    wraps_deg
        The controller knows positions from 0 to this angle only and goes the shorter way round.
    """

    name: Annotated[str, Field(min_length=1, max_length=40)]
    units_per_deg: float = Field(default=1.0, json_schema_extra={"unit": "units per degree"})
    offset_units: float = Field(default=0.0, json_schema_extra={"unit": "units"})
    read_units_per_deg: float | None = Field(default=None, json_schema_extra={"unit": "units per degree"})
    read_offset_units: float | None = Field(default=None, json_schema_extra={"unit": "units"})
    decimals: int = Field(default=4, ge=0, le=9, json_schema_extra={"unit": "decimals"})
    wraps_deg: float | None = Field(default=None, ge=90, le=3600, json_schema_extra={"unit": "deg"})
    move: Words = ()
    timed: Words = ()
    speed: Words = ()
    home: Words = ()
    position: Words = ()
    position_pattern: str = ""
    busy: Words = ()
    busy_pattern: str = ""

    _patterns = field_validator("position_pattern", "busy_pattern")(compiles)

    @field_validator("units_per_deg", "read_units_per_deg")
    @classmethod
    def _not_zero(cls, value: float | None) -> float | None:
        if value is not None and not 1e-6 <= abs(value) <= 1e9:
            raise ValueError("must be from 1e-6 to 1e9 units per degree, either sign")
        return value

    def to_wire(self, angle_deg: float) -> float:
        """Return an angle in the controller's units."""
        return angle_deg * self.units_per_deg + self.offset_units

    def from_wire(self, units: float) -> float:
        """Return the angle that a position as read means, degrees."""
        scale = self.units_per_deg if self.read_units_per_deg is None else self.read_units_per_deg
        offset = self.offset_units if self.read_offset_units is None else self.read_offset_units
        return (units - offset) / scale

    @property
    def least_deg(self) -> float:
        """Half of the smallest step that a command can name."""
        return 0.5 * 10.0**-self.decimals / abs(self.units_per_deg)

    def target_fault(self, targets_deg: Sequence[float], tolerance_deg: float) -> str:
        """Say if a target, in rounded units, is sent further off than its axis may stand; empty if none is."""
        off_deg, target = max(
            (abs(float(f"{self.to_wire(one):.{self.decimals}f}") - self.to_wire(one)) / abs(self.units_per_deg), one)
            for one in targets_deg
        )
        if off_deg <= tolerance_deg:
            return ""
        return (
            f"decimals = {self.decimals}: {target:g} deg would be sent as {self.to_wire(target):.{self.decimals}f} units, {off_deg:.3g} deg "
            f"off, limit {tolerance_deg:g} deg (readback_tolerance_deg): more `decimals` if the controller takes them, or a plan in steps "
            f"of {2.0 * self.least_deg:.3g} deg"
        )

    def pulse_fault(self, step_deg: float, count: int) -> str:
        """Say if pulses set in rounded units drift off: the last one by more than a quarter of their step; empty if not."""
        units = f"{step_deg * self.units_per_deg:.{self.decimals}f}"
        off_deg, limit_deg = count * abs(float(units) / self.units_per_deg - step_deg), 0.25 * abs(step_deg)
        if off_deg <= limit_deg:
            return ""
        return (
            f"`pulses` every {step_deg:.6f} deg are every {step_deg * self.units_per_deg:.4f} units, set as {units}: the last of {count} "
            f"would come {off_deg:.4f} deg off, limit {limit_deg:.4f} deg; choose swept_step_deg and points (goal.toml) so that a pulse "
            f"comes at multiples of {2.0 * self.least_deg:.6f} deg, or more `decimals` if the controller takes them"
        )


class LineProfile(Section):
    """Command templates and reply patterns that adapt any ASCII controller.

    Every verb is one command, one step, or a list of steps (`SequenceStep`). `{axis}` is the axis' name on the wire, `{value}` a
    position in its units, `{speed}` its speed in units per second, `{words}` all axes of a move (`word` for each);
    `{azimuth}` and so on are the positions of all axes by name. Every command is answered by a line unless
    `acknowledge` is empty.

    completion
        `busy`: `busy_pattern` matches while an axis moves. `reply`: the answer to `move` comes when the axis stands.
        `message`: a line that matches `arrived` comes by itself then (its group `axis` names it). `position`: axes stand
        when two looks agree, at their target.
    position_pattern
        Finds `(?P<value>...)`; asked once for all axes, it finds groups named after the axes, or pairs of groups `axis`
        and `value`.
    sequential
        The controller carries out one move after the other.
    latched, latched_pattern
        Asks for the positions that were stored at the pulses since `pulses` was sent, {count} of them, in the unit that is read;
        the pattern finds `(?P<value>...)` of each, in their order.
    sync, sync_pattern
        A query with an answer of its own, which tells where in the line we are; `identity` if left out.
    hold, hold_answer, hold_line
        Brake now; what the controller says to that; whether a second connection is opened for it.
    alarm_message, not_referenced
        An alarm that comes by itself; a status that says that the axes were not homed.
    """

    foreign_words = True

    kind: Literal["line-axes"]
    line: LineTable = LineTable()
    axes: dict[str, LineAxis]
    identity: Words = ()
    prepare: Words = ()
    speed: Words = ()
    move: Words
    word: str = "{axis}{value}"
    separator: str = " "
    timed: Words = ()
    start: Words = ()
    acknowledge: str = ""
    completion: Literal["busy", "reply", "message", "position"] = "busy"
    arrived: str = ""
    coordinated: bool = False
    sequential: bool = False
    busy: Words = ()
    busy_pattern: str = ""
    poll_s: float = Field(default=0.02, ge=0.001, le=10, json_schema_extra={"unit": "s"})
    position: Words = ()
    position_pattern: str = ""
    status: Words = ()
    held: str = ""
    door_open: str = ""
    door_closed: str = ""
    alarm: str = ""
    alarm_message: str = ""
    not_referenced: str = ""
    fault: str = ""
    pulses: Words = ()
    latched: Words = ()
    latched_pattern: str = ""
    home: Words = ()
    beat: Words = ()
    sync: str = ""
    sync_pattern: str = ""
    hold: Words
    hold_answer: str = ""
    hold_line: Literal["same", "second"] = "same"
    release: Words = ()
    disable: Words = ()

    _patterns = field_validator(
        "acknowledge", "busy_pattern", "position_pattern", "held", "door_open", "door_closed", "alarm", "fault",
        "arrived", "alarm_message", "not_referenced", "sync_pattern", "hold_answer", "latched_pattern",
    )(compiles)  # fmt: skip

    @model_validator(mode="after")
    def _whole(self) -> LineProfile:
        if not self.move and not all(axis.move for axis in self.axes.values()):
            raise ValueError("`move` is empty: no axis could be turned")
        if len(self.hold) != 1 or self.hold[0].until or not self.hold[0].send:
            raise ValueError("`hold` must be one command: it is sent in the middle of whatever is under way")
        if self.sync and not self.sync_pattern:
            raise ValueError("`sync` needs `sync_pattern`: its answer must be known from all others")
        self._completes()
        require_latch_words(bool(self.latched), self.latched_pattern)
        for name, axis in self.axes.items():
            if not (axis.position or self.position) or not (axis.position_pattern or self.position_pattern):
                raise ValueError(f"`position` or `position_pattern` is empty for axis {name}: it could not be read")
        for verb in (*FIELDS, "start", "prepare", "status", "identity", "beat", "hold", "release", "disable"):
            for owner in (self, *self.axes.values()):
                self._known_fields(verb, getattr(owner, verb, ()))
        return self

    def _completes(self) -> None:
        if self.completion == "busy":
            own = all(axis.busy and axis.busy_pattern for axis in self.axes.values())
            if not own and not (self.busy and self.busy_pattern):
                raise ValueError(
                    "completion = 'busy' needs `busy` and `busy_pattern`; without such words take 'position'"
                )
        elif self.completion == "message" and not self.arrived:
            raise ValueError(
                "completion = 'message' needs `arrived`, the pattern of the line that says that an axis stands"
            )
        elif self.completion == "reply" and self.start:
            raise ValueError("completion = 'reply' with `start`: put the start word at the end of the list `move`")
        elif self.completion == "reply" and not self.acknowledge and not self._move_answers():
            raise ValueError("completion = 'reply' needs `acknowledge`, the pattern of the answer to `move`")

    def _move_answers(self) -> bool:
        moves = [axis.move or self.move for axis in self.axes.values()]
        return all(steps[-1].expect or steps[-1].end for steps in moves)

    def _known_fields(self, verb: str, steps: tuple[SequenceStep, ...]) -> None:
        known = {*FIELDS.get(verb, ()), *(self.axes if verb in ("move", "timed") else ())}
        for step in steps:
            try:
                used = {name for _, name, _, _ in Formatter().parse(step.send) if name is not None}
            except ValueError as error:
                raise ValueError(f"`{verb}`: {step.send!r}: {error}; write {{{{ for a brace") from None
            if used - known:
                allowed = ", ".join(sorted(known)) or "none"
                raise ValueError(
                    f"`{verb}`: {step.send!r}: unknown field {{{min(used - known)}}}; known here: {allowed}"
                )
            known |= set(re.compile(step.expect).groupindex)
