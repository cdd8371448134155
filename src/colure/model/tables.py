"""Text tables as people write them: any usual encoding, separator and decimal sign, with the lines they stand on."""

from __future__ import annotations

import codecs
from dataclasses import dataclass
from pathlib import Path

from colure.model.loading import InputError

#: Marks at a file's beginning that name its encoding.
MARKS = ((codecs.BOM_UTF8, "utf-8-sig"), (codecs.BOM_UTF16_LE, "utf-16"), (codecs.BOM_UTF16_BE, "utf-16"))
SEPARATORS = {",": "comma", ";": "semicolon", "\t": "tab"}


@dataclass(frozen=True)
class TextTable:
    """A table's text without comments and empty lines, its separator and decimal sign, and every row's line in the file."""

    text: str
    separator: str
    decimal: str
    lines: tuple[int, ...]
    encoding: str


def decoded(path: Path) -> tuple[str, str]:
    """Return (text, encoding) of a file: UTF-8 with or without a mark, UTF-16, or Latin-1 where it is neither.

    Raises
    ------
    InputError
        If the file cannot be read, or holds zero bytes and is no UTF-16.
    """
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


def read_text_table(path: Path) -> TextTable:
    """Return a file's table: comments (#) and empty lines left out, separator and decimal sign told from header and rows.

    Raises
    ------
    InputError
        If the file is empty, or its columns are separated by something else than comma, semicolon or tab.
    """
    text, encoding = decoded(path)
    rows, lines = [], []
    for number, line in enumerate(text.splitlines(), start=1):
        row = line.split("#", 1)[0].rstrip()
        if row.strip(" ,;\t"):
            rows.append(row)
            lines.append(number)
    if not rows:
        raise InputError([f"{path.name}: holds no table; needs a header line and rows"])
    separator = max(SEPARATORS, key=rows[0].count)
    if rows[0].count(separator) == 0:
        if len(rows[0].split()) > 1:
            raise InputError(
                [
                    f"{path.name}: line {lines[0]}: {rows[0][:60]!r}: columns must be separated by comma, semicolon or tab"
                ]
            )
        separator = ","
    decimal = "." if separator == "," or not any("," in row for row in rows[1:]) else ","
    if decimal == "," and any("." in row for row in rows[1:]):
        at = next(i for i, row in enumerate(rows[1:], start=1) if "." in row)
        raise InputError(
            [f"{path.name}: line {lines[at]}: decimal points and decimal commas in one table; use one of them"]
        )
    return TextTable("\n".join(rows) + "\n", separator, decimal, tuple(lines[1:]), encoding)
