"""Frequencies in several bands or as a list: `[[band]]` in goal.toml, a CSV of frequencies, and the segments of a sweep."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import asdict, dataclass
from itertools import pairwise
from pathlib import Path
from typing import Annotated, Any

import numpy as np
from pydantic import Field, model_validator

from colure.errors import InputError
from colure.geometry.conventions import BoolArray, FloatArray
from colure.model.loading import Section
from colure.model.tables import numbers_of, read_rows

#: Lowest and highest frequency that a goal may name, GHz.
LOWEST_GHZ, HIGHEST_GHZ = 0.03, 1100.0
#: More frequencies than this in one sweep are a slip of the pen.
MOST_FREQUENCIES = 100_001
#: Steps that differ by less than this share are equal: a list is written with few digits.
EQUAL_STEPS = 1e-6
#: A step is a gap between two bands if it is so many times the median step ...
GAP_STEPS = 5.0
#: ... or, where steps are unequal anyway, such a share of the frequency.
GAP_SHARE = 0.1
#: ... or, between two evenly stepped runs, so many times their steps.
GAP_BETWEEN_RUNS = 2.0
#: Columns of a list of frequencies by their unit, in GHz; the first is the one to write.
COLUMNS = {"frequency_ghz": 1.0, "frequency_mhz": 1e-3, "frequency_hz": 1e-9}
UNITS = {"frequency_ghz": "GHz", "frequency_mhz": "MHz", "frequency_hz": "Hz"}
#: What a list may say beside each frequency, with its unit.
BESIDE = {"if_bandwidth_hz": "Hz", "power_dbm": "dBm"}
LIMITS = {"if_bandwidth_hz": (1.0, 10e6), "power_dbm": (-60.0, 30.0)}

Gigahertz = Annotated[float, Field(ge=LOWEST_GHZ, le=HIGHEST_GHZ)]


class GoalBand(Section):
    """One stretch of the frequencies that every sweep measures; several of them may have wide gaps between them.

    start_ghz, stop_ghz
        First and last frequency, together with `points` or `step_mhz`.
    points
        How many frequencies, evenly spaced; 1 needs start_ghz equal to stop_ghz.
    step_mhz
        Distance of neighbouring frequencies; it must end at stop_ghz.
    frequencies_ghz
        The frequencies themselves, rising, instead of start, stop and points or step.
    if_bandwidth_hz, power_dbm
        Of this band alone, if not those of the whole sweep. The analyzer must have words for segments.
    """

    start_ghz: Gigahertz | None = Field(default=None, json_schema_extra={"unit": "GHz"})
    stop_ghz: Gigahertz | None = Field(default=None, json_schema_extra={"unit": "GHz"})
    points: int | None = Field(default=None, ge=1, le=MOST_FREQUENCIES, json_schema_extra={"unit": "frequencies"})
    step_mhz: float | None = Field(default=None, gt=0, le=1e6, json_schema_extra={"unit": "MHz"})
    frequencies_ghz: tuple[Gigahertz, ...] | None = Field(default=None, json_schema_extra={"unit": "GHz"})
    if_bandwidth_hz: float | None = Field(default=None, ge=1, le=10e6, json_schema_extra={"unit": "Hz"})
    power_dbm: float | None = Field(default=None, ge=-60, le=30, json_schema_extra={"unit": "dBm"})

    @model_validator(mode="after")
    def _one_form(self) -> GoalBand:
        ends = {"start_ghz": self.start_ghz, "stop_ghz": self.stop_ghz}
        inner = {"points": self.points, "step_mhz": self.step_mhz}
        given = [name for name, value in {**ends, **inner}.items() if value is not None]
        if self.frequencies_ghz is not None:
            if given:
                raise ValueError(f"band: frequencies_ghz stands alone: leave {', '.join(given)} out")
            require_rising(self.frequencies_ghz, "band: frequencies_ghz")
            return self
        if None in ends.values() or sum(value is not None for value in inner.values()) != 1:
            raise ValueError(
                "band: needs start_ghz, stop_ghz and one of points and step_mhz, or frequencies_ghz alone; given: "
                f"{', '.join(given) or 'nothing'}"
            )
        start, stop = float(self.start_ghz or 0.0), float(self.stop_ghz or 0.0)
        if stop < start:
            raise ValueError(f"band: stop_ghz = {stop:g}: must be at least start_ghz = {start:g} GHz")
        if self.points == 1 and stop != start:
            raise ValueError("band: points = 1 needs start_ghz equal to stop_ghz (GHz)")
        if self.points is not None and self.points > 1 and stop == start:
            raise ValueError(
                f"band: points = {self.points}: must be 1 with start_ghz equal to stop_ghz ({start:g} GHz)"
            )
        if self.step_mhz is not None:
            _count(start, stop, self.step_mhz)
        return self

    @property
    def frequency_hz(self) -> FloatArray:
        """The band's frequencies in hertz, rising."""
        if self.frequencies_ghz is not None:
            return 1e9 * np.asarray(self.frequencies_ghz, float)
        assert self.start_ghz is not None and self.stop_ghz is not None  # the validator saw to it
        count = self.points or _count(self.start_ghz, self.stop_ghz, self.step_mhz or 0.0)
        return np.linspace(1e9 * self.start_ghz, 1e9 * self.stop_ghz, count)


def _count(start_ghz: float, stop_ghz: float, step_mhz: float) -> int:
    """Return how many frequencies a step gives; raises `ValueError` if it does not end at the last one."""
    steps = 1e3 * (stop_ghz - start_ghz) / step_mhz
    if steps > MOST_FREQUENCIES:
        raise ValueError(
            f"band: step_mhz = {step_mhz:g}: {steps:.0f} frequencies, must be at most {MOST_FREQUENCIES} (frequencies)"
        )
    if abs(steps - round(steps)) > 1e-6:
        last = start_ghz + 1e-3 * step_mhz * np.floor(steps)
        raise ValueError(
            f"band: step_mhz = {step_mhz:g}: does not end at {stop_ghz:g} GHz; stop at {last:g} or {last + 1e-3 * step_mhz:g} GHz"
        )
    return round(steps) + 1


def require_rising(ghz: Sequence[float], what: str) -> None:
    """Raise `ValueError` for an empty list of frequencies, too many of them, one that comes twice, or one that falls."""
    if not ghz:
        raise ValueError(f"{what}: 0 frequencies: must hold at least 1 (frequencies)")
    if len(ghz) > MOST_FREQUENCIES:
        raise ValueError(f"{what}: {len(ghz)} frequencies: must be at most {MOST_FREQUENCIES} (frequencies)")
    for _, words in _out_of_order(ghz, "frequencies"):
        raise ValueError(f"{what}: {words}")


def _out_of_order(ghz: Sequence[float] | FloatArray, noun: str) -> Iterator[tuple[int, str]]:
    """Yield (index, what is wrong) of every frequency in GHz that does not rise above the one before."""
    for index, (before, after) in enumerate(pairwise(ghz), start=1):
        if abs(after - before) < 1e-9:
            yield index, f"{after:.9g} GHz comes twice: must come once"
        elif after < before:
            yield index, f"{after:.9g} GHz comes after {before:.9g} GHz: must rise; sort the {noun}"


def bands_said(text: str) -> list[dict[str, Any]]:
    """Return the bands that frequencies in words name: numbers and start:stop:step in GHz, between commas.

    Raises
    ------
    ValueError
        If a part is neither.
    """
    bands = list[dict[str, Any]]()
    for part in text.split(","):
        try:
            values = [float(word) for word in part.split(":")]
        except ValueError:
            values = []
        if len(values) == 1 and bands and "frequencies_ghz" in bands[-1]:
            bands[-1]["frequencies_ghz"].append(values[0])
        elif len(values) == 1:
            bands.append({"frequencies_ghz": values})
        elif len(values) == 3 and values[2] > 0.0:
            bands.append({"start_ghz": values[0], "stop_ghz": values[1], "step_mhz": 1e3 * values[2]})
        else:
            raise ValueError(f"{part!r}: must be a frequency or start:stop:step (GHz), such as 5.8,24:24.25:0.05")
    return bands


def joined(bands: Sequence[GoalBand]) -> FloatArray:
    """Return the frequencies (n,) of several bands in hertz; raises `ValueError` unless they rise from band to band."""
    frequencies_hz = [one.frequency_hz for one in bands]
    for number, (before, after) in enumerate(pairwise(frequencies_hz), start=2):
        if after[0] <= before[-1] + 1.0:
            raise ValueError(
                f"band {number} starts at {after[0] / 1e9:.9g} GHz: must be above {before[-1] / 1e9:.9g} GHz, where band "
                f"{number - 1} ends; bands rise and do not overlap"
            )
    return np.concatenate(frequencies_hz)


def read_list(path: Path) -> tuple[dict[str, Any], ...]:
    """Return the bands of a list of frequencies (CSV), one for each stretch of the same bandwidth and power.

    Columns: `frequency_ghz` (or `frequency_mhz`, `frequency_hz`) and, if wanted, `if_bandwidth_hz` and `power_dbm`; an empty
    cell stands for what the whole sweep has.

    Raises
    ------
    InputError
        If the file cannot be read, names no frequencies, or holds some out of range, twice or out of order; lines are named.
    """
    names, rows = read_rows(path)
    columns = [name for name in names if name in COLUMNS]
    if len(columns) != 1:
        raise InputError(
            [f"{path.name}: columns {', '.join(names) or '(none)'}: must hold one of {', '.join(COLUMNS)}, and may hold "
             f"{', '.join(BESIDE)}"]
        )  # fmt: skip
    if unknown := [name for name in names if name not in COLUMNS and name not in BESIDE]:
        raise InputError(
            [f"{path.name}: column {unknown[0]!r}: unknown; known here: {columns[0]}, {', '.join(BESIDE)}"]
        )
    column = columns[0]
    ghz = COLUMNS[column] * numbers_of(path.name, rows, {column: UNITS[column]})[:, 0]
    lines = [line for line, _ in rows]
    if faults := _faults(path.name, ghz, lines, column):
        raise InputError(faults[:20])
    beside = [tuple(_cell(path.name, line, row, name) for name in BESIDE) for line, row in rows]
    for name, values in zip(BESIDE, zip(*beside, strict=True), strict=True):
        low, high = LIMITS[name]
        faults += [
            f"{path.name}: line {line}: {name} = {value:g}: must be from {low:g} to {high:g} {BESIDE[name]}"
            for line, value in zip(lines, values, strict=True)
            if value is not None and not low <= value <= high
        ]
    if faults:
        raise InputError(faults[:20])
    starts = [0, *(i for i in range(1, len(rows)) if beside[i] != beside[i - 1]), len(rows)]
    bands = []
    for begin, end in pairwise(starts):
        band: dict[str, Any] = {"frequencies_ghz": [round(float(f), 9) for f in ghz[begin:end]]}
        band |= {name: v for name, v in zip(BESIDE, beside[begin], strict=True) if v is not None}
        bands.append(band)
    return tuple(bands)


def _cell(name: str, line: int, row: Mapping[str, str], column: str) -> float | None:
    if not row.get(column, "").strip():
        return None
    return float(numbers_of(name, [(line, dict(row))], {column: BESIDE[column]})[0, 0])


def _faults(name: str, ghz: FloatArray, lines: Sequence[int], column: str) -> list[str]:
    """Return what is wrong with the frequencies of a list, each with its line."""
    if not ghz.size:
        return [f"{name}: 0 rows: must hold at least 1 (frequencies)"]
    faults = []
    for line, value in zip(lines, ghz, strict=True):
        if LOWEST_GHZ <= value <= HIGHEST_GHZ:
            continue
        raw = value / COLUMNS[column]
        meant = [other for other, factor in COLUMNS.items() if LOWEST_GHZ <= factor * raw <= HIGHEST_GHZ]
        hint = f"; is the column {' or '.join(meant)}?" if meant else ""
        faults.append(
            f"{name}: line {line}: {column} = {raw:.9g} is {value:.4g} GHz: must be from {LOWEST_GHZ:g} to {HIGHEST_GHZ:g} GHz{hint}"
        )
    if faults:
        return faults
    return [f"{name}: line {lines[index]}: {words}" for index, words in _out_of_order(ghz, "list")]


def with_list(folder: Path, goal: Mapping[str, Any]) -> dict[str, Any]:
    """Return the table of goal.toml with the bands that its list of frequencies holds, if it names one.

    Raises
    ------
    InputError
        If the list is not as it must be, or goal.toml names other bands beside it.
    """
    named = goal.get("frequency_list")
    if not isinstance(named, str) or not named:
        return dict(goal)
    bands = read_list(folder / named)
    if "band" in goal:
        raise InputError(
            [f"goal.toml: frequency_list = {named!r}: must be left out with [[band]], or [[band]] with it"]
        )
    return {**goal, "band": list(bands)}


@dataclass(frozen=True, kw_only=True)
class Segment:
    """Evenly spaced frequencies of one sweep that share IF bandwidth and power; Hz, dBm."""

    start_hz: float
    stop_hz: float
    points: int
    if_bandwidth_hz: float
    power_dbm: float

    @property
    def frequency_hz(self) -> FloatArray:
        """The frequencies of this segment."""
        return np.linspace(self.start_hz, self.stop_hz, self.points)


def segments_of(bands: Sequence[GoalBand], *, if_bandwidth_hz: float, power_dbm: float) -> tuple[Segment, ...]:
    """Return the segments of a sweep over bands; bandwidth and power count where a band has none of its own.

    Unequal frequencies of a list become one segment for each evenly spaced run of three or more, and one for each other.
    """
    segments = list[Segment]()
    for band in bands:
        width = if_bandwidth_hz if band.if_bandwidth_hz is None else band.if_bandwidth_hz
        power = power_dbm if band.power_dbm is None else band.power_dbm
        runs = _even_runs(band.frequency_hz)
        segments += [
            Segment(
                start_hz=float(run[0]), stop_hz=float(run[-1]), points=run.size, if_bandwidth_hz=width, power_dbm=power
            )
            for run in runs
        ]
    return tuple(segments)


def _even_runs(frequency_hz: FloatArray) -> list[FloatArray]:
    """Cut frequencies into evenly spaced runs; two frequencies alone are no run unless there are no more."""
    if evenly_spaced(frequency_hz):
        return [frequency_hz]
    runs, begin = list[FloatArray](), 0
    while begin < frequency_hz.size:
        end = begin + 2
        while end < frequency_hz.size and evenly_spaced(frequency_hz[begin : end + 1]):
            end += 1
        end = end if end - begin >= 3 else begin + 1
        runs.append(frequency_hz[begin:end])
        begin = end
    return runs


def evenly_spaced(frequency_hz: FloatArray) -> bool:
    """Tell whether frequencies (n,) in Hz have equal steps; one or two always have."""
    steps = np.diff(np.asarray(frequency_hz, float))
    return bool(steps.size < 2 or np.ptp(steps) <= EQUAL_STEPS * float(steps.mean()) + 2.0)


def stretches(frequency_hz: FloatArray) -> list[slice]:
    """Return the runs of frequencies without a gap, in order: what goes from one frequency to the next may be read inside each.

    A step is a gap if it is above `GAP_STEPS` median steps, above a tenth of the frequency where steps are unequal, or above
    twice the steps of the evenly stepped runs of three or more that it parts (common practice, no source). Evenly spaced
    frequencies of three or more are one run.
    """
    frequency = np.asarray(frequency_hz, float)
    if frequency.size > 2 and evenly_spaced(frequency):
        return [slice(0, frequency.size)]
    steps = np.diff(frequency)
    gap = (steps > GAP_SHARE * frequency[:-1]) | (steps > GAP_STEPS * np.median(steps) if steps.size else False)
    borders = [0, *(np.flatnonzero(gap | _parts_even_runs(steps)) + 1).tolist(), frequency.size]
    return [slice(a, b) for a, b in pairwise(borders)]


def _parts_even_runs(steps: FloatArray) -> BoolArray:
    """Tell which steps (n,) in Hz stand between two equal steps before and two equal steps after, and are much longer."""
    parts = np.zeros(steps.size, bool)
    if steps.size >= 5:
        before, after = (np.stack([steps[a : steps.size - 4 + a], steps[a + 1 : steps.size - 3 + a]]) for a in (0, 3))
        even = [np.ptp(one, axis=0) <= EQUAL_STEPS * one.mean(axis=0) + 2.0 for one in (before, after)]
        longest = np.maximum(before.max(axis=0), after.max(axis=0))
        parts[2:-2] = even[0] & even[1] & (steps[2:-2] > GAP_BETWEEN_RUNS * longest)
    return parts


def bands_apart(frequency_hz: FloatArray) -> str:
    """Say which bands frequencies lie in, where there are several with gaps between them; empty for one band."""
    frequency = np.asarray(frequency_hz, float)
    parts = [frequency[one] / 1e9 for one in stretches(frequency)]
    return "" if len(parts) < 2 else ", ".join(_ends_words(one) for one in parts) + " GHz; nothing measured in between"


def told_segments(settings: Mapping[Any, Any]) -> tuple[Segment, ...]:
    """Return the segments that a plan's settings or a record's attributes hold; none where the sweep is an even one."""
    told = settings.get("segments")
    if not told:
        return ()
    return tuple(Segment(**one) for one in (json.loads(told) if isinstance(told, str) else told))


def segment_words(settings: Mapping[Any, Any]) -> list[str]:
    """Say in words what a plan's settings or a record's attributes hold of power and bandwidth, a line for each that differs."""
    segments = told_segments(settings)
    if not segments:
        power, width = (float(settings.get(name, float("nan"))) for name in ("power_dbm", "if_bandwidth_hz"))
        return [f"{power:g} dBm, {width:g} Hz"]
    lines = list[str]()
    for power, width in dict.fromkeys((one.power_dbm, one.if_bandwidth_hz) for one in segments):
        own = [one for one in segments if (one.power_dbm, one.if_bandwidth_hz) == (power, width)]
        lines.append(f"{_range_words(own)}: {power:g} dBm, {width:g} Hz")
    return lines


def _range_words(segments: Sequence[Segment]) -> str:
    """Return what stretches of frequencies segments cover, in GHz."""
    frequency = np.concatenate([one.frequency_hz for one in segments]) / 1e9
    parts = [frequency[one] for one in stretches(1e9 * frequency)]
    return ", ".join(_ends_words(one) for one in parts) + " GHz"


def _ends_words(ghz: FloatArray) -> str:
    return f"{ghz[0]:.6g}" if ghz.size == 1 else f"{ghz[0]:.6g} to {ghz[-1]:.6g}"


def band_words(start_ghz: float, stop_ghz: float, points: int) -> str:
    """Say from where to where frequencies go, and how many there are."""
    ends = _ends_words(np.array([start_ghz, stop_ghz][: 1 if start_ghz == stop_ghz else 2]))
    return f"{ends} GHz, {points} frequenc{'y' if points == 1 else 'ies'}"


def as_settings(segments: Sequence[Segment]) -> list[dict[str, Any]]:
    """Return segments as plain data for a plan's settings."""
    return [asdict(one) for one in segments]


def of_segments(attributes: Mapping[Any, Any], frequency_hz: FloatArray, name: str, otherwise: float) -> FloatArray:
    """Return a setting (n,) at some of a record's frequencies: of the segment that holds each; `otherwise` where there are none.

    name
        `if_bandwidth_hz` or `power_dbm`.
    """
    segments = told_segments(attributes)
    if not segments:
        return np.full(np.size(frequency_hz), otherwise)
    starts = np.array([one.start_hz for one in segments])
    # Rounding of the last digit must not put a frequency below its segment.
    held = np.maximum(np.searchsorted(starts, np.asarray(frequency_hz) + 1.0, side="right") - 1, 0)
    return np.array([getattr(one, name) for one in segments])[held]


def relative_noise(attributes: Mapping[Any, Any], frequency_hz: FloatArray) -> FloatArray:
    """Return how strong each frequency's noise (n,) is against the mean of all, in power: bandwidth over power of its segment."""
    width = of_segments(attributes, frequency_hz, "if_bandwidth_hz", 1.0)
    each = width / 10.0 ** (of_segments(attributes, frequency_hz, "power_dbm", 0.0) / 10.0)
    return np.asarray(each / each.mean())


def moments_s(attributes: Mapping[Any, Any], count: int) -> FloatArray:
    """Return when each frequency (n,) is read after the sweep's start, seconds: the middle of its share of `trace_s`."""
    each = _shares_s(attributes, count)
    return np.asarray(np.cumsum(each) - 0.5 * each)


def ways_deg(attributes: Mapping[Any, Any], count: int, speed_deg_s: float) -> FloatArray:
    """Return how far on from the sweep's own place each frequency (n,) is read by an axis that runs, signed.

    Where every frequency has a pulse of its own (`point_step_deg`), it is that pulse's place and half of what is integrated over.
    """
    step = float(attributes.get("point_step_deg", 0.0))
    if not step:
        return speed_deg_s * moments_s(attributes, count)
    return np.asarray(np.sign(speed_deg_s) * step * np.arange(count) + 0.5 * speed_deg_s * _shares_s(attributes, count))


def _shares_s(attributes: Mapping[Any, Any], count: int) -> FloatArray:
    """Return how long each frequency (n,) takes of `trace_s`, seconds."""
    segments = told_segments(attributes)
    whole = float(attributes["trace_s"])
    if not segments:
        return np.full(count, whole / count)
    each = np.concatenate([np.full(one.points, 1.0 / one.if_bandwidth_hz) for one in segments])
    return np.asarray(each * (whole / each.sum()))
