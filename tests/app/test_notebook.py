"""The door for notebooks: what the command line does in a few lines, and objects that show themselves."""

from __future__ import annotations

import ast
import importlib
import subprocess
import sys
from pathlib import Path

import matplotlib.figure
import pytest

import colure
from colure.app import services
from colure.app.services.rehearsal import record_of_rehearsal
from colure.app.storage.folders import run_folder
from colure.model.files import save_dataset
from tests.endtoend.test_near_to_far import edited

SOURCE = Path(colure.__file__).parent
ROOMS = ("geometry", "waves", "model", "planning", "analysis", "instruments", "acquire", "twin", "report", "app")


@pytest.fixture
def opened(small_campaign):
    """A small campaign with a measured run, and a device whose name is no friend of HTML."""
    edited(small_campaign, "device.toml", ('name = "Printed 8 x 8 panel, 24 GHz"', 'name = "<b>panel</b> & co"'))
    campaign, plan = services.make_plan(small_campaign)
    run = run_folder(small_campaign, "first")
    run.path.mkdir(parents=True)
    save_dataset(record_of_rehearsal(campaign, plan), run.record)
    return colure.open_campaign(small_campaign)


def test_a_measurement_in_a_few_lines(opened, tmp_path):
    assert [run.name for run in opened.runs] == ["first"]
    assert (
        "Duration" in str(opened.plan())
        and "more: print()" in repr(opened.plan())
        and "<table>" in opened.plan()._repr_html_()
    )
    run = opened.run("first")
    assert "two-pass" in repr(run.record) and run.record.data.sizes["frequency"] == 2
    pattern, figures = run.process(), run.evaluate()
    assert pattern.steps[-1] and pattern.data.sizes["theta"] == 181
    gain = figures["gain_dbi"]
    assert gain.lower < gain.value < gain.upper
    assert len(figures.table()) == len(figures) == 2 * len(figures.at(24.0))
    assert figures.save(tmp_path / "figures.csv").read_text(encoding="utf-8").count("\n") == len(figures) + 1
    assert run.findings() and run.compare(run).match.difference_db.max() < -200.0
    assert "S21" in run.export("touchstone", tmp_path / "boresight.s2p")
    with pytest.raises(KeyError, match="must be one of gain_dbi"):
        figures["beauty"]
    with pytest.raises(colure.InputError, match="must be one of 24, 24.1 GHz"):
        pattern.plot_map(frequency_ghz=25.0)
    with pytest.raises(colure.InputError, match="must be one of csv"):
        run.export("poem", tmp_path / "poem.txt")


def test_everything_shows_itself_and_names_stay_text(opened):
    run = opened.run("first")
    pattern, figures = run.process(), run.evaluate()
    for one in (opened, run.record, pattern, figures):
        page = one._repr_html_()
        assert "<b>panel</b>" not in page and len(page) > 200
    assert "&lt;b&gt;panel" in opened._repr_html_()
    for drawn in (pattern.plot_cuts(), pattern.plot_cuts(polar=True), pattern.plot_map(), pattern.plot_solid(), pattern.plot_front(),
                  figures.plot_budget(), figures.plot_over_frequency("gain_dbi")):  # fmt: skip
        assert isinstance(drawn.figure, matplotlib.figure.Figure) and drawn._repr_png_().startswith(b"\x89PNG")


def test_nothing_moves_before_the_cautions_are_read(opened):
    with pytest.raises(colure.InputError, match="cautions_read = False") as caught:
        opened.acquire("second")
    assert len(caught.value.faults) > 1 and not opened.run("second").files.path.exists()


@pytest.mark.parametrize("room", ["", *ROOMS])
def test_every_door_opens(room):
    """What a stub promises is there, has a docstring, and is all that the door names."""
    package = importlib.import_module(f"colure.{room}" if room else "colure")
    tree = ast.parse((SOURCE / room / "__init__.pyi").read_text(encoding="utf-8"))
    promised = sorted(alias.name for node in tree.body if isinstance(node, ast.ImportFrom) for alias in node.names)
    assert sorted(package.__all__) == promised
    for name in promised:
        assert getattr(package, name).__doc__, f"{package.__name__}.{name}"


def test_importing_loads_nothing_heavy():
    """The time itself is measured in benchmarks/start.py."""
    words = "import sys, colure; print([m for m in ('numpy', 'scipy', 'xarray', 'matplotlib', 'pydantic', 'dask') if m in sys.modules])"
    assert (
        subprocess.run([sys.executable, "-c", words], capture_output=True, text=True, check=True).stdout.strip() == "[]"
    )
    words = (
        "import sys; from colure.app.cli import main; main(['--help'], standalone_mode=False); "
        "print([m for m in ('numpy', 'scipy', 'xarray', 'matplotlib', 'dask', 'starlette') if m in sys.modules])"
    )
    assert (
        subprocess.run([sys.executable, "-c", words], capture_output=True, text=True, check=True)
        .stdout.strip()
        .endswith("[]")
    )
