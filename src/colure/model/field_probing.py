"""Tables of field probing: readings along lines of a quiet zone, or one antenna's figure at several places of it."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

import numpy as np

from colure.errors import InputError
from colure.geometry.conventions import ComplexArray, FloatArray
from colure.model.plausible import LEAST_HZ
from colure.model.tables import numbers_of, read_rows
from colure.values import holds_arrays

LINE = {"frequency_hz": "Hz", "position_mm": "mm", "level_db": "dB"}
PLACES = {"frequency_hz": "Hz", "x_mm": "mm", "y_mm": "mm", "z_mm": "mm", "value_db": "dB"}
#: Columns that may be left out, their units, limits and what they are then.
OPTIONAL = {
    "phase_deg": ("deg", -1e6, 1e6, float("nan")),
    "direct_deg": ("deg", 0.0, 180.0, 90.0),
    "pattern_db": ("dB", -60.0, 0.0, 0.0),
    "noise_db": ("dB", 0.0, 10.0, 0.0),
}


@dataclass(frozen=True, kw_only=True)
@holds_arrays
class ProbedLine:
    """Readings along one line at one frequency and one aspect, in the order of their positions.

    position_m (n,), reading (n,) complex amplitudes, real ones where the phase is not known.
    phase
        True: the readings' phase is known.
    direct_deg
        Angle between the line and the direct wave's way: 90 across the range, 0 along it, away from the source.
    pattern_db
        Level of the probing antenna's pattern towards the source, below its peak: its aspect. Zero where it looks at the source.
    noise_db
        Standard deviation of one reading's level; 0: not stated.
    """

    name: str
    frequency_hz: float
    position_m: FloatArray
    reading: ComplexArray
    phase: bool
    direct_deg: float = 90.0
    pattern_db: float = 0.0
    noise_db: float = 0.0


@dataclass(frozen=True)
@holds_arrays
class ProbedPlaces:
    """One antenna's figure at places (n, 3) of the zone, metres from its centre, at one frequency; values in dB."""

    frequency_hz: float
    place_m: FloatArray
    value_db: FloatArray


def read_probing(path: Path) -> list[ProbedLine] | list[ProbedPlaces]:
    """Read a table of lines (`line` and `position_mm`) or of places (`x_mm,y_mm,z_mm,value_db`).

    Raises
    ------
    InputError
        Naming file, line, column, value and unit of what is wrong.
    """
    header, rows = read_rows(path, names=True)
    if set(PLACES) <= set(header):
        table = numbers_of(path.name, rows, PLACES)
        _require_hertz(path, table[:, 0])
        every = np.unique(table[:, 0])
        return [
            ProbedPlaces(float(f), 1e-3 * here[:, 1:4], here[:, 4]) for f in every for here in [table[table[:, 0] == f]]
        ]
    missing = [name for name in LINE if name not in header]
    if missing:
        raise InputError(
            [f"{path.name}: column {', '.join(missing)}: missing; needs {','.join(LINE)} or {','.join(PLACES)}"]
        )
    there = {name: unit for name, (unit, *_) in OPTIONAL.items() if name in header}
    table = numbers_of(path.name, rows, {**LINE, **there})
    _require_hertz(path, table[:, 0])
    columns = {name: table[:, 3 + i] for i, name in enumerate(there)}
    _require_limits(path, columns)
    names = [row["line"].strip() if "line" in header else "line" for _, row in rows]
    direct, pattern = (
        columns.get(name, np.full(len(table), OPTIONAL[name][3])) for name in ("direct_deg", "pattern_db")
    )
    keys = list(zip(names, table[:, 0], direct, pattern, strict=True))
    out = []
    for key in dict.fromkeys(keys):
        some = np.array([one == key for one in keys])
        some = np.flatnonzero(some)[np.argsort(table[some, 1])]
        phase = columns["phase_deg"][some] if "phase_deg" in columns else np.zeros(some.size)
        reading = 10.0 ** (table[some, 2] / 20.0) * np.exp(1j * np.deg2rad(phase))
        noise = float(columns["noise_db"][some].max()) if "noise_db" in columns else 0.0
        out.append(
            ProbedLine(name=key[0], frequency_hz=float(key[1]), position_m=1e-3 * table[some, 1], reading=reading,
            phase="phase_deg" in columns, direct_deg=float(key[2]), pattern_db=float(key[3]), noise_db=noise)
        )  # fmt: skip
    return out


def _require_hertz(path: Path, frequency_hz: FloatArray) -> None:
    if frequency_hz.min() < LEAST_HZ:
        raise InputError([f"{path.name}: frequency_hz = {frequency_hz.min():g}: must be at least {LEAST_HZ:g} Hz"])


def _require_limits(path: Path, columns: dict[str, FloatArray]) -> None:
    faults = []
    for name, values in columns.items():
        unit, low, high, _ = OPTIONAL[name]
        worst = float(values.min()) if values.min() < low else float(values.max())
        if not low <= worst <= high:
            faults.append(f"{path.name}: {name} = {worst:g}: must be from {low:g} to {high:g} {unit}")
    if faults:
        raise InputError(faults)
