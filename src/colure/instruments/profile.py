"""Which words a device wants: TOML profiles, shipped with the package or written by a user."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Literal

from pydantic import Field, field_validator, model_validator

from colure.errors import InputError
from colure.instruments.line_profile import LineProfile, LineTable, compiles, require_latch_words
from colure.model.loading import Section, load, read_toml, validate

FOLDER = Path(__file__).parent / "profiles"


class AnalyzerProfile(Section):
    """Commands of an analyzer; {name} fields are filled from the sweep settings.

    confirm
        Queries whose answers must equal the setting they are named after.
    status, status_pattern
        One query after every sweep; the pattern's groups `condition` (register) and `count`
        (sweeps so far) are read if present.
    conditions
        Masks of the condition register: `overload`, `unlevelled`, `unlocked`.
    frequency_list
        Query of the frequencies of the trace, comma-separated; they must be those asked for.
    confirm_words
        Queries whose answers must match a pattern, such as the byte order.
    reflection
        Query of the corrected reflection at the device's port, real and imaginary parts as in `trace`. With the device on the
        port that is driven (S11), it is a second trace of the same sweep.
    reflection_start, reflection_end
        Commands before and after such a sweep: the device on the other port (S22) needs that port driven.
    segment, segment_start, segment_end, segment_confirm
        Commands of one segment of a sweep over several bands ({number} from 1, {start_hz}, {stop_hz}, {points},
        {if_bandwidth_hz}, {power_dbm}), those before the first and after the last, and queries ({number}) whose answers must
        equal the setting they are named after. Without them only one evenly spaced band can be swept.
    trace, marker, marker_frequency, marker_value
        Query of a port's trace ({port}), real and imaginary parts in turn. An analyzer that hands over no complex trace has
        `marker` instead: commands that put a marker on a frequency ({frequency_hz}, {number} from 1, {port}), then queries of
        the frequency at which it stands, which must be that one, and of real and imaginary part there, comma-separated.
    start, poll, poll_pattern
        Where `sweep` has no answer: commands sent before it; a query repeated until it matches (IEEE 488.2, 12.5.2).
    each_average
        `sweep` is carried out once for every average.
    ready, ready_pattern, ready_start, ready_sweep, ready_end
        A query repeated until it matches, which says that the analyzer waits for a pulse: asked before the axis starts a slice.
        Where sweeps are read one by one, `ready_start` are the commands that begin the sweep which is to wait, `ready_sweep` the
        query that is answered 1 at its end, `ready_end` commands that give it up. With `poll` the first two are not needed.
    buffer_start, buffer_count, buffer_trace, buffer_status, buffer_times, buffer_end
        Sweeps that the analyzer keeps for a whole slice: commands that let it keep {count} sweeps, one for every pulse; queries of how many sweeps it has kept and of a port's
        traces, one after the other; the event register, which `status_pattern` reads and which holds what happened since it was
        read; if it knows, a query of when each sweep began (s, comma-separated); commands that end it.
    point_start, point_end, point_count, point_times
        A pulse for every frequency of the sweeps that are kept: commands, sent before `buffer_start`, after which one pulse starts
        one frequency; commands, sent after `buffer_end`, after which it starts a whole sweep again; a query of how many pulses
        have started a frequency since `buffer_start`; if it knows, a query of when each frequency began (s, comma-separated).
    """

    foreign_words = True

    kind: Literal["scpi-analyzer"]
    line: LineTable = LineTable()
    identity: str = "*IDN?"
    setup: tuple[str, ...]
    confirm: dict[str, str] = Field(default_factory=dict)
    confirm_words: dict[str, str] = Field(default_factory=dict)
    frequency_list: str = ""
    segment: tuple[str, ...] = ()
    segment_start: tuple[str, ...] = ()
    segment_end: tuple[str, ...] = ()
    segment_confirm: dict[str, str] = Field(default_factory=dict)
    start: tuple[str, ...] = ()
    sweep: str
    poll: str = ""
    poll_pattern: str = ""
    each_average: bool = False
    trace: str = ""
    marker: tuple[str, ...] = ()
    marker_frequency: str = ""
    marker_value: str = ""
    buffer_start: tuple[str, ...] = ()
    ready: str = ""
    ready_pattern: str = ""
    ready_start: tuple[str, ...] = ()
    ready_sweep: str = ""
    ready_end: tuple[str, ...] = ()
    buffer_count: str = ""
    buffer_trace: str = ""
    buffer_status: str = ""
    buffer_times: str = ""
    buffer_end: tuple[str, ...] = ()
    point_start: tuple[str, ...] = ()
    point_end: tuple[str, ...] = ()
    point_count: str = ""
    point_times: str = ""
    reflection: str = ""
    reflection_start: tuple[str, ...] = ()
    reflection_end: tuple[str, ...] = ()
    number_format: Literal["real64", "real32", "ascii"] = "real64"
    byte_order: Literal["big", "little"] = "big"
    error: str = "SYST:ERR?"
    error_none: str = r"^\+?0,"
    status: str = ""
    status_pattern: str = r"(?P<condition>\d+)"
    conditions: dict[Literal["overload", "unlevelled", "unlocked"], int] = Field(default_factory=dict)
    trigger_internal: str = ""
    trigger_external: str = ""
    route: str = ""
    clock: str = ""
    safe: tuple[str, ...] = ()

    _patterns = field_validator("error_none", "status_pattern", "poll_pattern", "ready_pattern")(compiles)

    @field_validator("confirm_words")
    @classmethod
    def _all_compile(cls, value: dict[str, str]) -> dict[str, str]:
        return {query: compiles(pattern) for query, pattern in value.items()}

    @model_validator(mode="after")
    def _trace_or_marker(self) -> AnalyzerProfile:
        told = {name: bool(getattr(self, name)) for name in ("marker", "marker_frequency", "marker_value")}
        if self.trace and any(told.values()):
            raise ValueError("`trace` must be left out where a marker reads the values (`marker_value`)")
        if missing := [name for name, said in told.items() if not said and not self.trace]:
            raise ValueError(
                f"`trace` is empty, and so is `{missing[0]}`: one query of the trace, or all three words of a marker"
            )
        return self

    @model_validator(mode="after")
    def _polled(self) -> AnalyzerProfile:
        if bool(self.poll) != bool(self.poll_pattern):
            raise ValueError(
                "`poll` and `poll_pattern` belong together: a query, and its answer when the sweep is complete"
            )
        known = ("start_hz", "stop_hz", "points", "if_bandwidth_hz", "power_dbm")
        if unknown := [name for name in self.segment_confirm if name not in known]:
            raise ValueError(f"`segment_confirm`: {unknown[0]!r} is no setting of a segment; known: {', '.join(known)}")
        return self

    @property
    def lacks_for_segments(self) -> str:
        """Which word is missing for a sweep over several bands: its commands, or the query that proves the frequencies."""
        return "segment" if not self.segment else "frequency_list" if not self.frequency_list else ""

    @property
    def lacks_for_buffer(self) -> str:
        """Which word is missing for sweeps that the analyzer keeps; without the event register an overload would go unseen."""
        needs = ["buffer_start", "ready", "ready_pattern", "buffer_count", "buffer_trace"]
        needs += ["buffer_status"] if self.status else []
        return next((name for name in needs if not getattr(self, name)), "")

    @property
    def lacks_for_ready(self) -> str:
        """Which word is missing for an analyzer that says, sweep by sweep, that it waits for a pulse."""
        needs = ["ready", "ready_pattern", "ready_end", *([] if self.poll else ["ready_start", "ready_sweep"])]
        return next((name for name in needs if not getattr(self, name)), "")

    @property
    def lacks_for_points(self) -> str:
        """Which word is missing for a pulse for every frequency, beyond those for kept sweeps."""
        return next((name for name in ("point_start", "point_end", "point_count") if not getattr(self, name)), "")


class PowerProfile(Section):
    """Commands of a power-only receiver (power meter, spectrum analyzer) that reads dBm.

    `read` is sent once per frequency, after `tune` with `{frequency_hz}`.
    """

    foreign_words = True

    kind: Literal["scpi-power"]
    line: LineTable = LineTable()
    identity: str = "*IDN?"
    setup: tuple[str, ...] = ()
    tune: str
    read: str
    error: str = "SYST:ERR?"
    error_none: str = r"^\+?0,"
    status: str = ""
    status_pattern: str = r"(?P<condition>\d+)"
    conditions: dict[Literal["overload", "unlevelled", "unlocked"], int] = Field(default_factory=dict)
    route: str = ""
    clock: str = ""
    safe: tuple[str, ...] = ()

    _patterns = field_validator("error_none", "status_pattern")(compiles)


class GcodeProfile(Section):
    """Commands and reply patterns of a controller that speaks G-code (RS-274) and queues lines.

    `move` receives `{words}`, one `{letter}{value}` per axis; `timed` also `{per_minute}`, the
    inverse time of the whole move; `wait` receives `{settle_s}`. `coordinated` says that all axes
    of one `move` start and end together. `latched` asks for the positions of `{letter}` that were stored at its pulses since
    `pulses` was sent; `latched_pattern` finds `(?P<value>...)` of each, in their order.
    """

    foreign_words = True

    kind: Literal["gcode-axes"]
    line: LineTable = LineTable()
    identity: str = ""
    letters: dict[str, str]
    coordinated: bool = False
    decimals: int = Field(default=4, ge=0, le=9, json_schema_extra={"unit": "decimals"})
    word: str = "{letter}{value}"
    move: str
    timed: str = ""
    wait: str
    position: str
    position_pattern: str
    moving: str = ""
    held: str = "held"
    door_open: str = ""
    door_closed: str = ""
    alarm: str = ""
    done: str = "^ok$"
    fault: str = "^error"
    pulses: str = ""
    latched: str = ""
    latched_pattern: str = ""
    home: str = ""
    beat: str = ""
    hold: str = "!"
    release: str = "~"
    disable: str = ""

    _patterns = field_validator(
        "position_pattern", "done", "fault", "held", "moving", "door_open", "door_closed", "alarm", "latched_pattern"
    )(compiles)

    @model_validator(mode="after")
    def _latches(self) -> GcodeProfile:
        require_latch_words(self.latched, self.latched_pattern)
        return self


def profile_path(name: str, campaign_folder: Path | None) -> Path:
    """Return the file of a profile: beside the campaign first, then the shipped ones.

    Raises
    ------
    InputError
        If no such profile exists; the shipped names are listed.
    """
    if not re.fullmatch(r"[A-Za-z0-9_-]{1,60}", name):
        hint = f"; leave `.toml` out: {name[:-5]!r}" if name.endswith(".toml") else ""
        raise InputError(
            [f"chamber.toml: profile = {name!r}: must be letters, digits, - or _ (1 to 60 characters){hint}"]
        )
    for folder in filter(None, (campaign_folder, FOLDER)):
        path = folder / f"{name}.toml"
        if path.is_file():
            return path
    shipped = ", ".join(sorted(p.stem for p in FOLDER.glob("*.toml")))
    raise InputError([f"chamber.toml: profile = {name!r}: must be one of {shipped}, or a file {name}.toml beside it"])


def analyzer_profile(name: str, campaign_folder: Path | None = None) -> AnalyzerProfile | PowerProfile:
    """Read the profile of an analyzer or of a power-only receiver."""
    path = profile_path(name, campaign_folder)
    if _kind(path, ("scpi-analyzer", "scpi-power")) == "scpi-power":
        return load(PowerProfile, path)
    return load(AnalyzerProfile, path)


def axes_profile(name: str, campaign_folder: Path | None = None) -> GcodeProfile | LineProfile:
    """Read the profile of an axis controller that is spoken to by words; those of motor records are read by their driver."""
    path = profile_path(name, campaign_folder)
    data = read_toml(path)
    if _kind(path, ("gcode-axes", "line-axes")) == "line-axes":
        return validate(LineProfile, data, source=path.name)
    return validate(GcodeProfile, data, source=path.name)


def _kind(path: Path, allowed: tuple[str, ...]) -> str:
    kind = read_toml(path).get("kind")
    if kind not in allowed:
        raise InputError([f"{path.name}: kind = {kind!r}: must be one of {', '.join(allowed)} (profile kind)"])
    return str(kind)
