"""Tables that a user hands in (horn, mask, targets, sources): any usual separator, decimal sign and encoding, or a named fault."""

from __future__ import annotations

import numpy as np
import pytest

from colure.app.services.reference import HEADER, _interpolated
from colure.errors import InputError
from colure.model.specification import load_specification
from colure.planning.aim import read_targets
from colure.twin.source_table import ELECTRIC, PLACE, read_sources

F = np.array([24.0e9, 24.5e9])
HORN = [[23.5, 19.25, 0.12], [24.5, 19.75, 0.12]]
WAYS = [
    (";", ",", "latin-1"),
    ("\t", ",", "utf-16"),
    (";", ".", "utf-8-sig"),
    (",", ".", "utf-16-le"),
    ("\t", ".", "utf-8"),
]


def text_of(head, rows, separator=",", decimal="."):
    def cell(x):
        return str(x) if isinstance(x, str) else repr(float(x)).replace(".", decimal)

    lines = [separator.join(head), *(separator.join(cell(x) for x in row) for row in rows)]
    return "# f\u00fcr heute\n\n" + "\n".join(lines) + "\n\n"


@pytest.mark.parametrize(("separator", "decimal", "encoding"), WAYS)
def test_every_table_reads_other_separators_and_encodings(tmp_path, separator, decimal, encoding):
    path = tmp_path / "a.csv"

    def write(head, rows):
        path.write_bytes(text_of(head, rows, separator, decimal).encode(encoding))

    write(HEADER, HORN)
    gain, uncertainty = _interpolated(path, F)
    assert gain == pytest.approx([19.5, 19.75]) and uncertainty == 0.12  # half way, and the end
    write(("angle_deg", "level_db"), [[10.5, -12.25], [180.0, -30.0]])
    (tmp_path / "s.toml").write_text('name = "s"\n[[masks]]\nname = "m"\nfile = "a.csv"\nrelative = true\n', "utf-8")
    assert load_specification(tmp_path / "s.toml").masks[0].points == ((10.5, -12.25), (180.0, -30.0))
    write(("name", "az_deg", "el_deg"), [["St. Vid, # 3" if separator != "," else "St. Vid # 3", 20.5, 5.25]])
    (target,) = read_targets(path)
    assert target.name.startswith("St. Vid") and target.azimuth_deg == pytest.approx(20.5)
    write((*PLACE, *ELECTRIC), [[1.5, 0, 0, 1, 0, 0, 0, 0, 0]])
    assert read_sources(path).place[0] == pytest.approx([1.5e-3, 0.0, 0.0])


@pytest.mark.parametrize(
    ("rows", "words"),
    [
        ([[23.5, 19.0, 0.1], [23.5, 19.5, 0.1]], r"line 5: frequency_ghz = 23\.5: must be above the 23\.5"),
        ([[23.5e9, 19.0, 0.1], [24.5e9, 19.5, 0.1]], r"2\.35e\+10 Hz is 23\.5 in this column"),
        ([[23500.0, 19.0, 0.1], [24500.0, 19.5, 0.1]], r"23500 MHz is 23\.5 in this column"),
        ([[23.5, 190.0, 0.1], [24.5, 19.5, 0.1]], r"line 4: gain_dbi = 190: must be from -20 to 80 dBi"),
        ([[23.5, 19.0, 0.0], [24.5, 19.5, 0.1]], r"line 4: uncertainty_db = 0: must be from 0\.001 to 5 dB"),
        ([[23.5, 19.0, "x"], [24.5, 19.5, 0.1]], r"line 4: uncertainty_db = 'x': must be a finite number \(dB\)"),
        ([[23.5, 19.0], [24.5, 19.5, 0.1]], r"line 4: 2 cells, must be 3 \(read with comma"),
        ([[25.5, 19.0, 0.1], [26.5, 19.5, 0.1]], r"covers 25\.5 to 26\.5 GHz, the record needs 24 to 24\.5"),
        ([], r"0 rows: must hold at least 1"),
    ],
)  # fmt: skip
def test_a_gain_table_that_can_hardly_be_meant_names_line_column_and_value(tmp_path, rows, words):
    (tmp_path / "a.csv").write_text(text_of(HEADER, rows), "utf-8")
    with pytest.raises(InputError, match=words):
        _interpolated(tmp_path / "a.csv", F)


def test_spaces_between_columns_and_mixed_decimals_are_named(tmp_path):
    path = tmp_path / "a.csv"
    path.write_text("frequency_ghz gain_dbi uncertainty_db\n23 19 0.1\n", "utf-8")
    with pytest.raises(InputError, match="line 1: .*separated by comma, semicolon or tab"):
        _interpolated(path, F)
    path.write_text("frequency_ghz;gain_dbi;uncertainty_db\n23,5;19,0;0.1\n", "utf-8")
    with pytest.raises(InputError, match="line 2: decimal points and decimal commas in one table"):
        _interpolated(path, F)
    path.write_text("name;az_deg;el_deg\nmast;20,5;1.5\n", "utf-8")
    with pytest.raises(InputError, match="line 2: decimal points and decimal commas"):
        read_targets(path)
