"""Text tables as people write them: any usual encoding, separator and decimal sign, with the lines they stand on."""

from __future__ import annotations

import codecs
import csv
import io
import re
from dataclasses import dataclass
from pathlib import Path

import numpy as np

from colure.errors import InputError
from colure.geometry.conventions import FloatArray
from colure.model.admission import require_regular

#: Marks at a file's beginning that name its encoding.
MARKS = ((codecs.BOM_UTF8, "utf-8-sig"), (codecs.BOM_UTF16_LE, "utf-16"), (codecs.BOM_UTF16_BE, "utf-16"))
SEPARATORS = {",": "comma", ";": "semicolon", "\t": "tab"}
#: A table larger than this is refused before it is read.
LARGEST_TABLE_BYTES = 200_000_000
#: A cell that is a number with a decimal comma, or with a decimal point.
COMMA_NUMBER = re.compile(r"\s*[-+]?\d*,\d+([eE][-+]?\d+)?\s*")
POINT_NUMBER = re.compile(r"\s*[-+]?\d*\.\d+([eE][-+]?\d+)?\s*")


@dataclass(frozen=True)
class TextTable:
    """A table's text without comments and empty lines, its separator and decimal sign, and every row's line in the file.

    notes: the comments above the header, without their sign.
    """

    text: str
    separator: str
    decimal: str
    lines: tuple[int, ...]
    encoding: str
    notes: tuple[str, ...] = ()


def decoded(path: Path) -> tuple[str, str]:
    """Return (text, encoding) of a file: UTF-8 with or without a mark, UTF-16, or Latin-1 where it is neither.

    Raises
    ------
    InputError
        If the file cannot be read, is no regular file or too large, or holds zero bytes and is no UTF-16.
    """
    require_regular(path, largest_bytes=LARGEST_TABLE_BYTES)
    try:
        content = path.read_bytes()
    except OSError as error:
        raise InputError([f"{path.name}: cannot be read: {error.strerror or error}"]) from None
    for mark, name in MARKS:
        if content.startswith(mark):
            return _as(path, content, name), name
    if b"\x00" in content[:4000]:
        # Text of the western alphabets has its zero bytes all on one side.
        name = "utf-16-le" if content[1:2] == b"\x00" else "utf-16-be"
        return _as(path, content, name), name
    try:
        return content.decode("utf-8"), "utf-8"
    except UnicodeDecodeError:
        return content.decode("latin-1"), "latin-1"


def _as(path: Path, content: bytes, name: str) -> str:
    try:
        text = content.decode(name)
    except UnicodeDecodeError as error:
        raise InputError(
            [f"{path.name}: begins like {name} text but cannot be read so: {error.reason}; save it as UTF-8"]
        ) from None
    if "\x00" in text:
        raise InputError([f"{path.name}: holds zero bytes; it is no text table (UTF-8 wanted)"])
    return text


def read_text_table(path: Path, *, names: bool = False) -> TextTable:
    """Return a file's table: comments (#) and empty lines left out, separator and decimal sign told from header and rows.

    Parameters
    ----------
    names
        Cells may hold names: then only whole lines are comments, and only numbers tell the decimal sign.

    Raises
    ------
    InputError
        If the file is empty, or its columns are separated by something else than comma, semicolon or tab.
    """
    text, encoding = decoded(path)
    rows, lines, notes = [], [], []
    for number, line in enumerate(text.splitlines(), start=1):
        row = ("" if line.lstrip().startswith("#") else line) if names else line.split("#", 1)[0]
        if row.strip(" ,;\t"):
            rows.append(row.rstrip())
            lines.append(number)
        elif not rows and line.lstrip().startswith("#"):
            notes.append(line.lstrip()[1:].strip())
    if not rows:
        raise InputError([f"{path.name}: holds no table; needs a header line and rows"])
    separator = _separator(path, rows[0], lines[0])
    decimal = "." if separator == "," else _decimal(path, rows[1:], lines[1:], separator if names else None)
    return TextTable("\n".join(rows) + "\n", separator, decimal, tuple(lines[1:]), encoding, tuple(notes))


def _separator(path: Path, header: str, line: int) -> str:
    separator = max(SEPARATORS, key=header.count)
    if header.count(separator) > 0:
        return separator
    if len(re.split(r"[\s|:]+", header.strip())) > 1:
        raise InputError(
            [f"{path.name}: line {line}: {header[:60]!r}: columns must be separated by comma, semicolon or tab"]
        )
    return ","


def _decimal(path: Path, rows: list[str], lines: list[int], separator: str | None) -> str:
    """Return the decimal sign of rows; cells are only looked at one by one where a separator is given."""
    if separator is None:
        comma, point = ([sign in row for row in rows] for sign in ",.")
    else:
        cells = [row.split(separator) for row in rows]
        comma, point = ([any(map(kind.fullmatch, row)) for row in cells] for kind in (COMMA_NUMBER, POINT_NUMBER))
    if any(comma) and any(point):
        raise InputError(
            [
                f"{path.name}: line {lines[point.index(True)]}: decimal points and decimal commas in one table; use one of them"
            ]
        )
    return "," if any(comma) else "."


def read_rows(path: Path, *, names: bool = False) -> tuple[list[str], list[tuple[int, dict[str, str]]]]:
    """Return the header of a table, and every row as (line in the file, cell by column); decimal commas become points.

    Raises
    ------
    InputError
        If the file cannot be read as a table, or a row has another number of cells than the header.
    """
    if path.is_file() and path.stat().st_size > LARGEST_TABLE_BYTES:
        raise InputError([f"{path.name}: size = {path.stat().st_size}: must be at most {LARGEST_TABLE_BYTES} bytes"])
    source = read_text_table(path, names=names)
    try:
        cells = list(csv.reader(io.StringIO(source.text), delimiter=source.separator, skipinitialspace=True))
    except csv.Error as error:
        raise InputError([f"{path.name}: cannot be read as a table: {error}"]) from None
    header = [cell.strip() for cell in cells[0]]
    rows = []
    for line, row in zip(source.lines, cells[1:], strict=False):
        if len(row) != len(header):
            raise InputError(
                [
                    f"{path.name}: line {line}: {len(row)} cells, must be {len(header)} "
                    f"(read with {SEPARATORS[source.separator]} between columns)"
                ]
            )
        comma = source.decimal == ","
        plain = [cell.replace(",", ".") if comma and COMMA_NUMBER.fullmatch(cell) else cell for cell in row]
        rows.append((line, dict(zip(header, plain, strict=True))))
    return header, rows


def read_numbers(path: Path, units: dict[str, str]) -> tuple[FloatArray, tuple[int, ...]]:
    """Return (values (row, column), every row's line in the file) of a table with exactly these columns, in this order.

    Parameters
    ----------
    units
        Column names and what each is in, for the faults.

    Raises
    ------
    InputError
        Naming file, line, column, value and unit of everything that is no finite number.
    """
    header, rows = read_rows(path)
    if header != list(units):
        raise InputError([f"{path.name}: header must be {','.join(units)}, is {','.join(header)[:120]}"])
    return numbers_of(path.name, rows, units), tuple(line for line, _ in rows)


def numbers_of(name: str, rows: list[tuple[int, dict[str, str]]], units: dict[str, str]) -> FloatArray:
    """Return (row, column) of what `read_rows` read, in the order of `units`; raises `InputError` naming what is no finite number."""
    values, faults = np.empty((len(rows), len(units))), []
    for i, (line, row) in enumerate(rows):
        for j, (column, unit) in enumerate(units.items()):
            try:
                values[i, j] = float(row[column])
            except ValueError:
                values[i, j] = np.nan
            if not np.isfinite(values[i, j]):
                faults.append(f"{name}: line {line}: {column} = {row[column]!r}: must be a finite number ({unit})")
    if faults:
        raise InputError(faults[:20])
    return values
