"""Elementary sources of a simulated device from a CSV file."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

import numpy as np

from colure.errors import InputError
from colure.geometry.conventions import ComplexArray, FloatArray
from colure.model.tables import numbers_of, read_rows
from colure.twin.sources import Cluster
from colure.values import holds_arrays

PLACE = ("x_mm", "y_mm", "z_mm")
ELECTRIC = tuple(f"p_{axis}_{part}" for axis in "xyz" for part in ("re", "im"))
MAGNETIC = tuple(f"m_{axis}_{part}" for axis in "xyz" for part in ("re", "im"))
FREQUENCY = "frequency_hz"
#: Free-space wave impedance in ohm (CODATA 2018): an electric moment in A m counts so many times as one in V m.
ETA = 376.730_313_668


@dataclass(frozen=True)
@holds_arrays
class SourceTable:
    """Sources at `place` (site, 3) in metres with moments (frequency, site, 6): electric times eta, then magnetic.

    frequency_hz
        (frequency,), or empty where the moments hold at every frequency.
    """

    name: str
    frequency_hz: FloatArray
    place: FloatArray
    moment: ComplexArray

    def cluster(self, frequency_hz: FloatArray) -> Cluster:
        """Return the sources at some frequencies.

        Raises
        ------
        InputError
            If the file does not cover them.
        """
        f = np.asarray(frequency_hz, float)
        if self.frequency_hz.size == 0:
            moment = self.moment[0]
            return Cluster(f, self.place, moment[:, :3], moment[:, 3:], np.ones((f.size, len(self.place)), complex), np.ones_like(f))  # fmt: skip
        low, high = self.frequency_hz[0], self.frequency_hz[-1]
        if f.min() < low - 1.0 or f.max() > high + 1.0:
            raise InputError(
                [
                    f"{self.name}: covers {low / 1e9:g} to {high / 1e9:g} GHz, asked for {f.min() / 1e9:g} to "
                    f"{f.max() / 1e9:g} GHz; list more frequencies (frequency_hz)"
                ]
            )
        # Every component that is somewhere not zero becomes a source of its own with a weight over frequency.
        site, part = np.nonzero(np.any(self.moment != 0.0, axis=0))
        known = self.moment[:, site, part]
        weights = np.stack(
            [np.interp(f, self.frequency_hz, w.real) + 1j * np.interp(f, self.frequency_hz, w.imag) for w in known.T],
            axis=-1,
        )
        unit = np.eye(6, dtype=complex)[part]
        return Cluster(f, self.place[site], unit[:, :3], unit[:, 3:], weights, np.ones_like(f))


def read_sources(path: Path) -> SourceTable:
    """Read elementary sources.

    Raises
    ------
    InputError
        If the file cannot be read, its header differs, a cell is no number, everything is zero, or frequencies list
        different places.
    """
    header, table = _cells(path)
    columns = {name: index for index, name in enumerate(header)}
    place = 1e-3 * table[:, [columns[name] for name in PLACE]]
    parts = [_complex(table, columns, ELECTRIC) * ETA]
    parts.append(_complex(table, columns, MAGNETIC) if MAGNETIC[0] in columns else np.zeros_like(parts[0]))
    moment = np.concatenate(parts, axis=-1)
    if not np.any(moment):
        raise InputError([f"{path.name}: every moment is 0; at least one must not be (A m, V m)"])
    if FREQUENCY not in columns:
        return SourceTable(path.name, np.zeros(0), place, moment[None])
    return _over_frequency(path.name, table[:, columns[FREQUENCY]], place, moment)


def _cells(path: Path) -> tuple[list[str], FloatArray]:
    """Return header and numbers (row, column) of a source file whose header is one of the known ones."""
    if not path.is_file():
        raise InputError(
            [f"{path.name}: cannot be read from {path.parent}: there is no such file (twin.toml: device.file)"]
        )
    header, rows = read_rows(path)
    wanted = [*PLACE, *ELECTRIC]
    rest = header[len(wanted) :]
    known: tuple[list[str], ...] = ([], [FREQUENCY], [*MAGNETIC], [*MAGNETIC, FREQUENCY], [FREQUENCY, *MAGNETIC])
    if header[: len(wanted)] != wanted or rest not in known:
        raise InputError(
            [
                f"{path.name}: header must be {','.join(wanted)}, optionally with {','.join(MAGNETIC)} and {FREQUENCY} "
                "after it"
            ]
        )
    if not rows:
        raise InputError([f"{path.name}: holds no source; needs at least 1 row"])
    return header, numbers_of(path.name, rows, {name: _unit(name) for name in header})


def _unit(column: str) -> str:
    return {"x": "mm", "y": "mm", "z": "mm", "p": "A m", "m": "V m"}.get(column[0], "Hz")


def _complex(table: FloatArray, columns: dict[str, int], names: tuple[str, ...]) -> ComplexArray:
    values = table[:, [columns[name] for name in names]]
    return np.asarray(values[:, 0::2] + 1j * values[:, 1::2])


def _over_frequency(name: str, frequency: FloatArray, place: FloatArray, moment: ComplexArray) -> SourceTable:
    """Sort rows by frequency; every frequency must list the same places in the same order."""
    known = np.unique(frequency)
    if known[0] <= 0.0:
        raise InputError([f"{name}: {FREQUENCY} = {known[0]:g}: must be above 0 Hz"])
    groups = [np.flatnonzero(frequency == one) for one in known]
    first = place[groups[0]]
    for one, rows in zip(known, groups, strict=True):
        if rows.size != groups[0].size or not np.allclose(place[rows], first, atol=1e-9):
            raise InputError(
                [f"{name}: {one / 1e9:g} GHz lists other places than {known[0] / 1e9:g} GHz; must list the same (mm)"]
            )
    return SourceTable(name, known, first, np.stack([moment[rows] for rows in groups]))
