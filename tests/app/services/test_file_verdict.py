"""A far-field file against limits and masks, and against another file: decided by its own errors, never silently."""

from __future__ import annotations

import json

import numpy as np
import pytest
from click.testing import CliRunner

from colure.app.cli import main
from colure.model.files import save_dataset
from tests.app.services.test_pattern_files import HUYGENS, SHORT, field

#: Huygens source: co-polar level cos^4(t/2) of the peak: -6.0206 dB at 90 deg (section 6 of the standards sheet).
MASK = '[[masks]]\nname = "m"\nplane = "all"\nrelative = true\nfrom_deg = 90\nto_deg = {to}\npoints = [[90, {level}], [180, {level}]]\n'


def specification(tmp_path, text, decision="simple"):
    path = tmp_path / "limits.toml"
    path.write_text(f'name = "river-level station"\ndecision = "{decision}"\n{text}', "utf-8")
    return str(path)


def verdict(path, limits, *more):
    result = CliRunner().invoke(main, ["verdict", str(path), limits, "--json", *more])
    assert result.exit_code in (0, 1), result.output
    found = json.loads(result.stdout)
    assert (result.exit_code == 0) == (found["outcome"] == "pass")
    return found["outcome"], [one["text"] for one in found["verdicts"]]


def limit(name, low):
    return f'[[limits]]\nfigure = "{name}"\nat_least = {low}\n'


def with_errors(dataset, share_db, draws=5):
    """The same far field with so large random errors of every wave stated beside it, dB re the root of the waves' power."""
    from colure.analysis.fields.known_pattern import opened_pattern

    c = opened_pattern(dataset).expansion.coefficients
    random = np.random.default_rng(3)
    size = 10 ** (share_db / 20) * np.sqrt(np.sum(np.abs(c) ** 2, axis=(1, 2)))[:, None, None, None] / np.sqrt(2 * 30)
    errors = size * (random.normal(size=(len(c), draws, 2, 15)) + 1j * random.normal(size=(len(c), draws, 2, 15)))
    return dataset.assign(error_waves=(("frequency", "draw", "kind", "mode"), errors))


@pytest.mark.parametrize(("low", "simple"), [(4.6, "pass"), (4.9, "fail")])
def test_a_file_without_errors_decides_by_value_only(tmp_path, low, simple):
    """Huygens source 4.7712 dBi (section 6 of the standards sheet)."""
    save_dataset(field(HUYGENS), tmp_path / "far.nc")
    text = limit("directivity_dbi", low)
    assert verdict(tmp_path / "far.nc", specification(tmp_path, text))[0] == simple
    outcome, (why,) = verdict(tmp_path / "far.nc", specification(tmp_path, text, "guard-band"))
    assert outcome == "not decidable" and "errors unknown" in why and "nan" not in why.replace("errors unknown", "")


def test_masks_of_a_file_follow_its_errors(tmp_path):
    """The mask lies 0.3 dB above, and 0.3 dB below, the -6.0206 dB that the source has at 90 deg."""
    save_dataset(field(HUYGENS), tmp_path / "bare.nc")
    save_dataset(with_errors(field(HUYGENS), -70.0), tmp_path / "sure.nc")
    save_dataset(with_errors(field(HUYGENS), -20.0), tmp_path / "unsure.nc")
    for level, simple in ((-5.7, "pass"), (-6.3, "fail")):
        text = MASK.format(to=180, level=level)
        assert verdict(tmp_path / "bare.nc", specification(tmp_path, text))[0] == simple
        guard = specification(tmp_path, text, "guard-band")
        outcome, (why,) = verdict(tmp_path / "sure.nc", guard)
        assert outcome == simple and (outcome == "fail" or ("not included" in why and "range echoes" in why))
        assert verdict(tmp_path / "unsure.nc", guard)[0] == "not decidable"
        outcome, (why,) = verdict(tmp_path / "bare.nc", guard)
        assert outcome == "not decidable" and "errors unknown" in why and "inf" not in why


def test_no_mask_is_passed_where_the_file_holds_nothing(tmp_path):
    save_dataset(field(HUYGENS, top_deg=120.0), tmp_path / "part.nc")
    inside = MASK.format(to=110, level=-5.7)
    assert verdict(tmp_path / "part.nc", specification(tmp_path, inside))[0] == "pass"
    for level, expected in ((-5.7, "not decidable"), (-6.3, "fail")):
        outcome, (why,) = verdict(tmp_path / "part.nc", specification(tmp_path, MASK.format(to=180, level=level)))
        assert outcome == expected
        assert ("holds no field" in why) == (expected == "not decidable")


def test_what_a_file_cannot_be_held_against_is_named(tmp_path):
    save_dataset(field(HUYGENS), tmp_path / "far.nc")
    save_dataset(field(HUYGENS, quantity="eirp"), tmp_path / "power.nc")
    for name, text, words in (
        ("far.nc", limit("gain_dbi", 1), "not measured"),
        ("power.nc", limit("gain_dbi", 1), "not measured"),  # watts are no gain
        ("far.nc", MASK.format(to=180, level=0).replace("true", "false"), "holds directivity; set relative = true"),
        ("far.nc", '[[masks]]\nname = "f"\nrelative = true\nformula = "itu-r-f.699"\ndiameter_mm = 300\n', "peak_gain_dbi"),
    ):  # fmt: skip
        result = CliRunner().invoke(main, ["verdict", str(tmp_path / name), specification(tmp_path, text)])
        assert result.exit_code == 2 and words in result.stderr, result.output
    result = CliRunner().invoke(
        main, ["verdict", str(tmp_path / "far.nc"), specification(tmp_path, ""), "--state", "x"]
    )
    assert result.exit_code == 2 and ("holds one state" in result.stderr or "needs" in result.stderr)


def compared(first, second, *more):
    result = CliRunner().invoke(main, ["compare", str(first), str(second), "--json", *more])
    assert result.exit_code in (0, 1), result.output
    found = json.loads(result.stdout)
    assert (result.exit_code == 0) == found["agrees"]
    return found


def test_two_files_are_held_against_each_other(tmp_path):
    """A relative field and its double agree; a Huygens source is 3.0103 dB more directive than a short dipole (1.5 of 3)."""
    one = field(HUYGENS)
    save_dataset(one, tmp_path / "one.nc")
    double = one.assign(e_theta=2.0 * one["e_theta"], e_phi=2.0 * one["e_phi"])
    save_dataset(double, tmp_path / "double.nc")
    save_dataset(field(SHORT), tmp_path / "dipole.nc")
    same = compared(tmp_path / "one.nc", tmp_path / "double.nc", "--other-uncertainty-db", "0.01")
    # Relative fields of whole spheres are both scaled to directivity.
    assert np.max(np.abs(same["level_db"])) < 1e-6 and np.max(same["difference_db"]) < -100.0
    rows = {row["name"]: row for row in same["figures"]}
    assert abs(rows["directivity_dbi"]["e_n"]) < 0.1 and rows["directivity_dbi"]["expanded"] is None
    as_they_stand = ()
    other = compared(tmp_path / "one.nc", tmp_path / "dipole.nc", "--other-uncertainty-db", "0.2", *as_they_stand)
    row = next(row for row in other["figures"] if row["name"] == "directivity_dbi")
    assert not other["agrees"] and row["value"] - row["other"] == pytest.approx(4.7712 - 1.7609, abs=1e-3)
    assert row["e_n"] == pytest.approx((4.7712 - 1.7609) / 0.2, abs=0.02)
    unknown = compared(tmp_path / "one.nc", tmp_path / "dipole.nc", *as_they_stand)
    assert not unknown["agrees"] and {row["other_expanded"] for row in unknown["figures"]} == {
        None
    }  # errors unknown count as none: nothing agrees by not being known


def test_errors_of_both_files_count(tmp_path):
    save_dataset(with_errors(field(HUYGENS), -30.0), tmp_path / "one.nc")
    save_dataset(with_errors(field(HUYGENS), -40.0), tmp_path / "two.nc")
    found = compared(tmp_path / "one.nc", tmp_path / "two.nc")
    row = next(row for row in found["figures"] if row["name"] == "directivity_dbi")
    assert found["agrees"] and row["expanded"] > row["other_expanded"] > 0.0


def test_files_that_cannot_be_compared_are_refused(tmp_path):
    save_dataset(field(HUYGENS), tmp_path / "one.nc")
    save_dataset(field(HUYGENS, quantity="gain"), tmp_path / "gain.nc")
    save_dataset(field(HUYGENS).assign_coords(frequency=[5.0e9, 5.1e9]), tmp_path / "high.nc")
    for second, more, words in (
        ("none.nc", (), "no such file"),
        ("high.nc", (), "covers 5 to 5.1 GHz"),
        ("gain.nc", (), "level in --match takes that out"),
        ("first", (), "must be a far-field file"),
    ):
        other = second if second == "first" else str(tmp_path / second)
        result = CliRunner().invoke(main, ["compare", str(tmp_path / "one.nc"), other, *more])
        assert result.exit_code == 2 and words in result.stderr, result.output


def test_a_difference_keeps_the_first_files_quantity(tmp_path):
    """The difference of two relative fields is no realized gain; on the screen unknown errors are a question mark."""
    from colure.model.files import open_dataset

    save_dataset(field(HUYGENS), tmp_path / "one.nc")
    save_dataset(field(SHORT, quantity="gain"), tmp_path / "two.nc")
    for first, second, quantity in (("one", "two", "directivity"), ("two", "one", "gain")):
        target = tmp_path / f"{quantity}.nc"
        files = [str(tmp_path / f"{x}.nc") for x in (first, second)]
        # So unlike that no pose brings them together: that is said, whichever comes first.
        refused = CliRunner().invoke(main, ["compare", *files, "--match", "frame,origin,level"])
        assert refused.exit_code == 2 and "too unlike" in refused.stderr
        result = CliRunner().invoke(main, ["compare", *files, "--match", "level", "--difference", str(target)])
        assert result.exit_code == 1 and "\u00b1 ?" in result.output
        assert open_dataset(target).attrs["quantity"] == quantity
