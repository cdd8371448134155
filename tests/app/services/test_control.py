"""Control charts of a check antenna by command: in control, one run off, and a slow shift."""

from __future__ import annotations

import json

import numpy as np
import xarray as xr
from click.testing import CliRunner

from colure.app import services
from colure.app.cli import main
from colure.model.files import save_dataset
from tests.printed import pages_of


def runs_of(folder, values):
    """Evaluated runs of a campaign whose gain and E beamwidth are given."""
    names = [f"m{index:02d}" for index in range(len(values))]
    for name, value in zip(names, values, strict=True):
        run = folder / "runs" / name
        run.mkdir(parents=True)
        row = {
            "unit": "dBi",
            "frequency_hz": 24e9,
            "expanded_uncertainty": 0.3,
            "lower": value - 0.3,
            "upper": value + 0.3,
        }
        rows = [{**row, "name": "gain_dbi", "label": "Peak gain (realized)", "value": value}]
        (run / "figures.json").write_text(json.dumps(rows), encoding="utf-8")
        save_dataset(xr.Dataset(attrs={"states": ""}), run / "record.nc")
    return names


def called(*words):
    return CliRunner().invoke(main, [str(word) for word in words])


def test_a_run_that_is_off_and_a_slow_shift_are_alarms_and_a_quiet_year_is_none(tmp_path):
    services.new_campaign(tmp_path / "c")
    quiet = 20.0 + 0.05 * np.random.default_rng(3).standard_normal(24)
    names = runs_of(tmp_path / "c", quiet)
    page = tmp_path / "quiet.pdf"
    outcome = called("series", tmp_path / "c", *names, "--control", page, "--baseline", 12)
    assert outcome.exit_code == 0, outcome.output
    text = " ".join(" ".join(pages_of(page)).split())
    assert (
        "In control" in text and "Handbook of Statistical Methods, 6.3.2.2" in text and "Peak gain (realized)" in text
    )

    services.new_campaign(tmp_path / "d")
    off = quiet + np.where(np.arange(24) >= 14, 0.08, 0.0)
    off[20] += 0.5
    names = runs_of(tmp_path / "d", off)
    outcome = called("series", tmp_path / "d", *names, "--control", tmp_path / "off.html", "--baseline", 12, "--json")
    found = json.loads(outcome.output)
    assert outcome.exit_code == 1 and "m20" in found["figures"][0]["outside"]
    assert found["figures"][0]["shifted"] and len(found["alarms"]) >= 2
    assert "Repeat it" in found["alarms"][0] and "rose" in found["alarms"][-1]


def test_too_few_runs_set_no_limits_and_no_page_is_written(tmp_path):
    services.new_campaign(tmp_path / "c")
    names = runs_of(tmp_path / "c", [20.0, 20.1, 20.2])
    outcome = called("series", tmp_path / "c", *names, "--control", tmp_path / "p.pdf")
    assert outcome.exit_code == 2 and "must be from 8 to 3 runs" in outcome.output.replace("\n", " ")
    assert not (tmp_path / "p.pdf").exists()
