"""What an array's elements are told in each of its states: a table of complex weights, as CSV."""

from __future__ import annotations

import re
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from colure.errors import InputError
from colure.geometry.conventions import ComplexArray, FloatArray, amplitude_db
from colure.model.alike import alike_names
from colure.model.tables import numbers_of, read_rows
from colure.values import holds_arrays

if TYPE_CHECKING:
    from colure.model.device import Device

PHASE = {"phase_deg": "deg"}
LEVEL = {"phase_deg": "deg", "level_db": "dB"}
PARTS = {"re": "1", "im": "1"}
#: What stands in place of numbers where an element is switched off.
OFF = "off"
NAME = re.compile(r"^[A-Za-z0-9_.+-]{1,60}$")
MOST_ELEMENTS = 40_000
#: A command above this level is a mistake, dB.
HIGHEST_DB = 60.0


@dataclass(frozen=True)
@holds_arrays
class Commands:
    """Commanded weight (state, element) of every element in every state; 0: switched off.

    Elements count row by row from -y, and from -x within a row, from 0.
    """

    names: tuple[str, ...]
    weight: ComplexArray

    @property
    def elements(self) -> int:
        """How many elements the array has."""
        return int(self.weight.shape[1])

    def row(self, name: str) -> ComplexArray:
        """Return the weights (element,) of one state; raises `InputError` that lists the states if there is none of that name."""
        if name not in self.names:
            raise InputError([f"state = {name!r}: must be one of {', '.join(self.names)}"])
        return np.asarray(self.weight[self.names.index(name)])

    def some(self, names: tuple[str, ...] | list[str]) -> Commands:
        """Return some of the states, in the order asked for."""
        return Commands(tuple(names), np.stack([self.row(name) for name in names]))

    def text(self) -> str:
        """Return the table as CSV: state, element, phase_deg, level_db; `off` where an element is switched off."""
        lines = ["state,element,phase_deg,level_db"]
        for name, row in zip(self.names, self.weight, strict=True):
            for element, weight in enumerate(row):
                said = (
                    f"{OFF},{OFF}"
                    if weight == 0.0
                    else f"{_plain(np.rad2deg(np.angle(weight)))},{_plain(float(amplitude_db(weight)))}"
                )
                lines.append(f"{name},{element},{said}")
        return "\n".join(lines) + "\n"


def _plain(value: float) -> str:
    """Return a number without digits that are none: 180, not 179.99999999999997."""
    shown = round(float(value), 9) + 0.0
    return f"{180.0 if shown == -180.0 else shown:.12g}"


def read_commands(path: Path) -> Commands:
    """Return the table of a CSV file.

    Columns `state,element,phase_deg`, the same with `level_db`, or `state,element,re,im`. Every state has a row for every element,
    from 0. `off` in place of numbers switches an element off.

    Raises
    ------
    InputError
        Naming file, line, state, element, value and unit of everything that is missing, double, no number or beyond its limits.
    """
    header, rows = read_rows(path, names=True)
    units = next((one for one in (LEVEL, PHASE, PARTS) if header == ["state", "element", *one]), None)
    if units is None:
        raise InputError(
            [f"{path.name}: header must be state,element,phase_deg[,level_db] or state,element,re,im, is {','.join(header)[:120]}"]
        )  # fmt: skip
    off = [any(row[column].strip() == OFF for column in units) for _, row in rows]
    shown = [(line, {**row, **dict.fromkeys(units, "0")} if gone else row) for (line, row), gone in zip(rows, off,
        strict=True)]  # fmt: skip
    values = numbers_of(path.name, shown, {"element": "whole number", **units})
    weights = np.where(off, 0.0, _weights(values[:, 1:], units))
    return _table(path, [(line, row["state"].strip()) for line, row in rows], values[:, 0], weights)


def _weights(values: FloatArray, units: dict[str, str]) -> ComplexArray:
    if units is PARTS:
        return np.asarray(values[:, 0] + 1j * values[:, 1])
    level = 10.0 ** (np.minimum(values[:, 1], 10.0 * HIGHEST_DB) / 20.0) if units is LEVEL else 1.0
    # Quarter turns exactly: 180 deg and -180 deg are one command.
    phase = np.round(np.exp(1j * np.deg2rad(values[:, 0])), 12)
    return np.asarray(level * phase)


def _table(path: Path, places: list[tuple[int, str]], element: FloatArray, weight: ComplexArray) -> Commands:
    faults, states = list[str](), dict[str, dict[int, complex]]()
    count = int(element.max()) + 1 if element.size and element.max() < MOST_ELEMENTS else 0
    for (line, name), place, value in zip(places, element, weight, strict=True):
        where = f"{path.name}: line {line}"
        if not NAME.match(name):
            faults.append(f"{where}: state = {name!r}: must be 1 to 60 letters, digits or . _ + -")
        elif place != int(place) or not 0 <= place < MOST_ELEMENTS:
            faults.append(
                f"{where}: element = {place:g}: must be a whole number from 0 to {MOST_ELEMENTS - 1} (elements)"
            )
        elif int(place) in states.setdefault(name, {}):
            faults.append(f"{where}: state {name}, element {int(place)}: stands there twice")
        elif abs(value) > 10.0 ** (HIGHEST_DB / 20.0):
            faults.append(
                f"{where}: level {amplitude_db(np.array(abs(value))):.3g} dB: must be at most {HIGHEST_DB:g} dB"
            )
        else:
            states[name][int(place)] = complex(value)
    for name, one in states.items():
        missing = sorted(set(range(count)) - set(one))
        if missing and not faults:
            faults.append(
                f"{path.name}: state {name}: element {missing[0]} is missing; every state needs all {count} elements"
            )
    if alike := alike_names(tuple(states)):
        faults.append(f"{path.name}: state: {alike}")
    if faults:
        raise InputError(faults[:20])
    names = tuple(states)
    return Commands(names, np.array([[states[name][place] for place in range(count)] for name in names]))


def commands_of(device: Device, folder: Path) -> Commands | None:
    """Return what a device's elements are told in its states; None where device.toml names no file of codes.

    Raises
    ------
    InputError
        If the file is not as it must be.
    """
    if device.states is None or device.states.codes is None:
        return None
    return read_commands(folder / device.states.codes)
