"""The states that show an array's elements, written beside device.toml."""

from __future__ import annotations

from pathlib import Path
from typing import Literal

from colure.app.storage.folders import require_free
from colure.errors import InputError
from colure.model.commands import OFF, Commands, read_commands
from colure.model.device import Device
from colure.model.loading import read_toml, validate
from colure.model.whole import write_whole
from colure.planning.codes import joined, orthogonal, rotated, toggled, turned

CodeMethod = Literal["codes", "toggle", "rotate"]
FILE = "codes.csv"


def write_codes(
    folder: Path,
    method: CodeMethod = "codes",
    *,
    elements: int | None = None,
    commands: str = "180",
    steps: int = 8,
    order: int | None = None,
    beams: Path | None = None,
) -> tuple[Path, Commands]:
    """Write codes.csv into a campaign folder, and return where, and what it holds.

    Parameters
    ----------
    elements
        Number of elements; rows times columns of [elements] in device.toml if None.
    commands
        Commands besides 0 deg with `codes` and `toggle`: phases in degrees and `off`, with commas between.
    steps
        Steps of a full turn with `rotate`.
    order
        Number of code states; the smallest above the number of elements if None.
    beams
        CSV of further states that are measured too, such as beams to compare with.

    Raises
    ------
    InputError
        If the number of elements is not known, a code does not exist, or the file exists.
    """
    target = folder / FILE
    require_free(target)
    count = elements or _declared(folder)
    if method == "codes":
        made = orthogonal(count, _others(commands), order)
    elif method == "toggle":
        made = toggled(count, _others(commands))
    else:
        made = rotated(count, steps)
    if beams is not None:
        made = joined(made, read_commands(beams))
    write_whole(target, made.text())
    return target, made


def _others(commands: str) -> tuple[complex, ...]:
    """Return the weights of commands besides 0 deg; raises `InputError` naming what is none."""
    out = list[complex]()
    for word in (one.strip() for one in commands.split(",")):
        try:
            turn = None if word == OFF else float(word)
        except ValueError:
            raise InputError([f"commands = {commands!r}: {word!r} must be a phase (deg) or `off`, as in 90,180,off"]) from None  # fmt: skip
        if turn is not None and not 0.0 < turn < 360.0:
            raise InputError([f"commands = {commands!r}: {turn:g} must be above 0 and below 360 deg"])
        out.append(0j if turn is None else turned(turn))
    if len(set(out)) != len(out):
        raise InputError([f"commands = {commands!r}: each must stand there once (deg)"])
    return tuple(out)


def _declared(folder: Path) -> int:
    """Return the number of elements that device.toml declares; its states need not be there yet."""
    table = {name: value for name, value in read_toml(folder / "device.toml").items() if name != "states"}
    grid = validate(Device, table, source="device.toml").elements
    if grid is None:
        raise InputError(
            ["elements: missing; give the number of elements, or [elements] with rows and columns in device.toml"]
        )
    return grid.rows * grid.columns
