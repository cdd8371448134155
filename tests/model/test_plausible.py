"""Files as people bring them: other separators and encodings are read, numbers that can hardly be meant are named."""

from __future__ import annotations

import string

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from colure.errors import InputError
from colure.model.exchange import COLUMNS, read_csv, write_csv
from colure.model.exports import read_nsma

STEP, TURN = np.arange(0.0, 181.0, 30.0), np.arange(0.0, 360.0, 30.0)


def rows(frequency=10e9, theta=STEP, phi=TURN, radius=None, scale=1.0, angle=1.0):
    """Return rows (list of lists of numbers) of a smooth field on a grid."""
    out = []
    for t in theta:
        for p in phi:
            a, b = np.deg2rad(t), np.deg2rad(p)
            e = scale * np.array([np.cos(a) * np.cos(b), -np.sin(b)]) * (1 + 0.3j * np.cos(a))
            out.append(
                [frequency, angle * t, angle * p, e[0].real, e[0].imag, e[1].real, e[1].imag]
                + ([radius] if radius else [])
            )
    return out


def text_of(table, separator=",", decimal=".", head=COLUMNS):
    head = [*head, "radius_m"] if len(table[0]) > len(head) else head
    body = [separator.join(repr(float(x)).replace(".", decimal) for x in row) for row in table]
    return separator.join(head) + "\n" + "\n".join(body) + "\n"


@pytest.mark.parametrize(
    ("separator", "decimal", "encoding"),
    [(";", ".", "utf-8"), (";", ",", "utf-8"), ("\t", ",", "latin-1"), ("\t", ".", "utf-16"), (",", ".", "utf-8-sig"),
     (",", ".", "utf-16-le"), (",", ".", "utf-16-be"), (";", ",", "latin-1")],
)  # fmt: skip
def test_other_separators_decimal_signs_and_encodings_are_read_alike(tmp_path, separator, decimal, encoding):
    plain, other = tmp_path / "plain.csv", tmp_path / "other.csv"
    plain.write_text(text_of(rows()), encoding="utf-8")
    other.write_bytes(("# Messung f\u00fcr heute\n\n" + text_of(rows(), separator, decimal)).encode(encoding))
    first, second = (read_csv(path, far_field=True) for path in (plain, other))
    np.testing.assert_array_equal(first["e_phi"].values, second["e_phi"].values)


def test_lines_are_counted_as_the_file_has_them(tmp_path):
    lines = text_of(rows()).splitlines()
    lines[4] = lines[4].replace(lines[4].split(",")[3], "x", 1)
    path = tmp_path / "a.csv"
    path.write_text(
        "# one\n\n# three\n" + "\n".join([*lines[:3], "# between", "", *lines[3:]]) + "\n", encoding="utf-8"
    )
    with pytest.raises(InputError, match=r"line 10: .*'x'"):
        read_csv(path, far_field=True)
    lines[4] = "1,2,3,4,5,6,7,8,9"
    path.write_text("# one\n\n" + "\n".join(lines) + "\n", encoding="utf-8")
    with pytest.raises(InputError, match="line 7"):
        read_csv(path, far_field=True)


def seam(level):
    table = rows(phi=np.arange(0.0, 361.0, 30.0))
    return [row if row[2] < 360.0 else [*row[:3], *(x * (1 + level) for x in row[3:])] for row in table]


SILLY = [
    (rows(frequency=24.1), True, r"frequency_hz = 24\.1: would be 24\.1 Hz; 24\.1 GHz is 2\.41e\+10", "frequency"),
    (rows(frequency=24100.0), True, r"24100 MHz is 2\.41e\+10 in this column", "frequency"),
    (rows(radius=1200.0), False, r"radius_m = 1200: .*1200 mm is 1\.2 m, 1200 cm is 12 m", "radius"),
    (rows(radius=0.0012), False, r"radius_m = 0\.0012: would be 0\.04 wavelengths", "radius"),
    (rows(angle=np.pi / 180.0), True, r"phi_deg up to 5\.7\d+: .* radians are to be multiplied by 57\.29578", "angles"),
    (
        [[f, t * np.pi / 180.0, *rest] for f, t, *rest in rows()], True,
        r"theta_deg up to 3\.14159: is pi, .* phi_deg goes up to 330", "angles",
    ),
    (rows(scale=0.0), True, r"e_theta, e_phi at 1e\+10 Hz: the field is 0 everywhere", None),
    (seam(0.35), True, r"the last column of phi_deg .* does not close: \d\d % rms apart", "duplicates"),
    ([*rows(), [*rows()[40][:3], 5.0, 0.0, -3.0, 1.0]], True, r"theta_deg = 90, phi_deg = 120 is given twice", "duplicates"),
]  # fmt: skip


@pytest.mark.parametrize(("table", "far", "words", "accept"), SILLY)
def test_what_can_hardly_be_meant_names_column_value_meaning_and_how_to_insist(tmp_path, table, far, words, accept):
    path = tmp_path / "a.csv"
    path.write_text(text_of(table), encoding="utf-8")
    with pytest.raises(InputError, match=words) as caught:
        read_csv(path, far_field=far)
    if accept is None:
        return
    assert f"--accept {accept}" in str(caught.value)
    assert read_csv(path, far_field=far, accept=frozenset({accept})).sizes["frequency"] == 1


def test_a_seam_a_little_open_is_told_and_a_closed_one_is_not(tmp_path):
    path = tmp_path / "a.csv"
    for level, told in ((0.05, "does not close"), (0.0, "")):
        path.write_text(text_of(seam(level)), encoding="utf-8")
        caution = read_csv(path, far_field=True).attrs["caution"]
        assert told in caution and bool(told) == bool(caution)


def test_a_half_sphere_and_frequencies_of_other_directions_go_there_and_back(tmp_path):
    path, back = tmp_path / "a.csv", tmp_path / "b.csv"
    mixed = (
        rows(theta=STEP[:4]) + rows(frequency=11e9, theta=STEP[:3]) + rows(frequency=12e9, theta=STEP[:1], phi=[0.0])
    )
    path.write_text(text_of(mixed), encoding="utf-8")
    write_csv(read_csv(path, far_field=True), back)
    again = read_csv(back, far_field=True)
    assert again.sizes["frequency"] == 3 and int((again["weight"].values > 0).sum()) == len(mixed)
    holes = text_of(rows()).splitlines()
    for i in range(40, 60):
        holes[i] = ",".join([*holes[i].split(",")[:3], *["nan"] * 4])
    path.write_text("\n".join(holes) + "\n", encoding="utf-8")
    assert int((read_csv(path, far_field=True)["weight"].values > 0).sum()) == len(rows()) - 20


@pytest.mark.parametrize("radius", [float("nan"), float("inf"), 0.0, -1.0])
def test_a_radius_that_is_none(tmp_path, radius):
    (tmp_path / "a.csv").write_text(text_of(rows()), encoding="utf-8")
    with pytest.raises(InputError, match="must be a number above 0"):
        read_csv(tmp_path / "a.csv", radius_m=radius)


WORDS = [
    "NUPOIN:,",
    "PATCUT:,AZ",
    "POLARI:,H/H",
    "ENDFIL:,EOF",
    "-1",
    "0",
    "3",
    "1,2",
    "1,2,3",
    "nan,1",
    "1e999,2",
    ",",
    ":,",
    "\u00b2",
]


@settings(max_examples=300, deadline=None)
@given(
    st.lists(st.one_of(st.sampled_from(WORDS), st.text(string.printable, max_size=12)), max_size=12),
    st.sampled_from(["\n", ""]),
)
def test_any_text_is_an_exchange_file_or_a_named_fault(parts, joiner):
    try:
        _, cuts = read_nsma(joiner.join(parts))
    except InputError:
        return
    assert all(np.all(np.isfinite(cut.level_db)) for cut in cuts)
