"""Field files spoilt at random: true figures, or one line that names field, value and way out; never a traceback."""

from __future__ import annotations

import json

import numpy as np
import pytest
from click.testing import CliRunner

from colure.app.cli import main
from colure.model.files import save_dataset
from tests.app.services.field_mutations import spoilt_file
from tests.app.services.test_pattern_files import HUYGENS, field


def no_number(word):
    raise AssertionError(f"{word} is no JSON (RFC 8259)")


def answer(arguments):
    result = CliRunner().invoke(main, arguments)
    assert result.exception is None or isinstance(result.exception, SystemExit), (arguments, result.exception)
    assert result.exit_code in (0, 1, 2), arguments
    if result.exit_code == 2:
        said = [line for line in result.stderr.splitlines() if line.strip()]
        assert said and all(len(line) < 420 for line in said), result.stderr
        assert not any(word in result.stderr for word in ("Traceback", "Error:", "object at")), result.stderr
        return None
    return json.loads(result.stdout, parse_constant=no_number) if "--json" in arguments else result.stdout


def tried(seeds, folder):
    """Try every command on spoilt files; return how many answered and how many refused."""
    base = folder / "base.nc"
    save_dataset(field(HUYGENS), base)
    counts = [0, 0]
    for seed in seeds:
        try:
            path, words = spoilt_file(folder, seed)
        except (ValueError, TypeError, KeyError):
            continue  # what xarray or netCDF-4 itself cannot write is no file
        kind = ("map", "cuts", "aperture", "polar")[seed % 4]
        other, way = ("nc", ["--far-field"]) if path.suffix == ".csv" else ("csv", [])
        for arguments in (
            ["evaluate", str(path), "--json"],
            ["compare", str(path), str(base), "--json"],
            ["plot", str(path), str(folder / f"{seed}.png"), "--kind", kind],
            ["convert", str(path), str(folder / f"converted-{seed}.{other}"), *way],
            ["process", str(path if path.suffix == ".nc" else folder / f"converted-{seed}.nc"), str(folder / f"far-{seed}.nc"), "--to", "far-field"],
        ):  # fmt: skip
            found = answer(arguments)
            counts[found is None] += 1
            if found is not None and arguments[0] == "evaluate" and any(
                w in words for w in ("encoding", "separator", "shuffle", "order", "reversed", "double rows", "history")
            ):  # fmt: skip
                rows = {row["name"]: row["value"] for row in found if row["frequency_hz"] == found[0]["frequency_hz"]}
                if "directivity_dbi" in rows:  # the whole sphere: what was not touched is still the handbook's 3
                    assert rows["directivity_dbi"] == pytest.approx(10 * np.log10(3.0), abs=1e-3), words
    return counts


def test_spoilt_field_files_are_read_or_refused_in_words(tmp_path):
    answered, refused = tried([*range(6), 17, 260], tmp_path)
    assert answered > 2 and refused > 2


@pytest.mark.nightly
def test_five_hundred_spoilt_field_files(tmp_path, request):
    if not request.config.getoption("--nightly"):
        pytest.skip("500 files: with --nightly")
    answered, refused = tried(range(500), tmp_path)
    print(f"{answered} answers, {refused} refusals")
    assert answered > 200 and refused > 200
