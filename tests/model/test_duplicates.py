"""Directions that a table gives more than once: the mean is formed, and how far apart the values are is said."""

from __future__ import annotations

import numpy as np
import pytest
from click.testing import CliRunner

from colure.app.cli import main
from colure.errors import InputError
from colure.model.exchange import read_csv, write_csv
from tests.app.services.test_pattern_files import HUYGENS, field


def table(tmp_path, rows):
    """A far-field table of a Huygens source with more rows at its end."""
    path = tmp_path / "twice.csv"
    write_csv(field(HUYGENS, step_deg=30.0), path)
    path.write_text(path.read_text("utf-8") + "".join(f"{row}\n" for row in rows), "utf-8")
    return path


def rows_of(path):
    return [line.split(",") for line in path.read_text("utf-8").splitlines()[1:]]


def changed(row, factor, **other):
    """A row again with its field times a factor; columns by number in `other`, such as c2 = phi."""
    again = [*row[:3], *(f"{float(value) * factor:.17g}" for value in row[3:])]
    for column, value in other.items():
        again[int(column[1:])] = value
    return ",".join(again)


def test_contradictory_values_that_are_accepted_become_their_mean(tmp_path):
    """Of 1 and 2 the mean is 1.5, and both lie a half about it: a third of the mean (arithmetic)."""
    first = rows_of(table(tmp_path, []))[17]
    path = table(tmp_path, [changed(first, 2.0)])
    with pytest.raises(InputError, match="given twice with different fields"):
        read_csv(path, far_field=True)
    found = read_csv(path, far_field=True, accept=frozenset({"duplicates"}))
    assert dict(found.sizes) == {"frequency": 2, "theta": 7, "phi": 12}
    here = found.sel(theta=float(first[1]), phi=float(first[2]), method="nearest").isel(frequency=0)
    expected = 1.5 * complex(float(first[3]), float(first[4]))
    assert complex(here["e_theta"].item()) == pytest.approx(expected, rel=1e-12)
    assert "mean is taken; the values lie 33 % rms about it" in found.attrs["caution"]
    told = CliRunner().invoke(
        main, ["convert", str(path), str(tmp_path / "a.nc"), "--far-field", "--accept", "duplicates"]
    )
    assert told.exit_code == 0 and "mean is taken" in told.output and "grid" in told.output


def test_a_last_column_that_does_not_close_is_averaged_into_the_first(tmp_path):
    base = [row for row in rows_of(table(tmp_path, [])) if float(row[2]) == 0.0]
    path = table(tmp_path, [changed(row, 1.02, c2="360") for row in base])
    found = read_csv(path, far_field=True)  # 2 % apart: told, not refused
    assert found.sizes["phi"] == 12 and found.sizes["theta"] == 7
    truth = field(HUYGENS, step_deg=30.0)["e_theta"].values[:, 1:-1, 0]
    assert np.allclose(found["e_theta"].values[:, 1:-1, 0], 1.01 * truth, rtol=1e-9)
    assert "does not close" in found.attrs["caution"] and "mean is taken" in found.attrs["caution"]


def test_values_given_twice_alike_change_nothing(tmp_path):
    path = table(tmp_path, [",".join(rows_of(table(tmp_path, []))[17])])
    found = read_csv(path, far_field=True)
    assert "mean" not in found.attrs["caution"] and found.sizes["phi"] == 12
    assert np.array_equal(found["e_theta"].values, read_csv(table(tmp_path, []), far_field=True)["e_theta"].values)
