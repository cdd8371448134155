"""Other packages bring figures, steps, probes, report sections and exports; what misbehaves is refused by the package's name."""

import json
import sys
import tomllib
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from colure.analysis.figures.evaluate import FigureSet
from colure.analysis.pipeline.stages import all_steps
from colure.app import services
from colure.app.notebook import Run
from colure.app.services.evaluation import read_figures
from colure.app.services.exporting import export
from colure.app.services.reference import probe_of
from colure.app.services.rehearsal import record_of_rehearsal
from colure.app.services.reporting import report_on
from colure.app.services.starting import start_campaign
from colure.app.storage.folders import run_folder
from colure.errors import InputError
from colure.model.doors import GROUPS, brought
from colure.model.files import save_dataset
from colure.model.recipe import Recipe
from colure.waves.expansion import Expansion

EXAMPLE = Path(__file__).parents[2] / "examples" / "river_level"
PACKAGE = "river-level-example 0.1.0"


def installed(folder, name, points, code="", version="0.1.0"):
    """Lay a package into a folder as an installer does: its module, its metadata and its entry points."""
    info = folder / f"{name.replace('-', '_')}-{version}.dist-info"
    info.mkdir(parents=True)
    (info / "METADATA").write_text(f"Metadata-Version: 2.1\nName: {name}\nVersion: {version}\n", encoding="utf-8")
    lines = [f"[{group}]\n" + "\n".join(f"{k} = {v}" for k, v in own.items()) for group, own in points.items()]
    (info / "entry_points.txt").write_text("\n\n".join(lines) + "\n", encoding="utf-8")
    if code:
        (folder / f"{name.replace('-', '_')}.py").write_text(code, encoding="utf-8")


@pytest.fixture
def example(tmp_path, monkeypatch):
    points = tomllib.loads((EXAMPLE / "pyproject.toml").read_text(encoding="utf-8"))["project"]["entry-points"]
    installed(tmp_path / "site", "river-level-example", points)
    for path in (EXAMPLE / "src", tmp_path / "site"):
        monkeypatch.syspath_prepend(str(path))


@pytest.fixture(scope="module")
def measured(tmp_path_factory):
    """A patch at three frequencies, rehearsed once."""
    folder = tmp_path_factory.mktemp("doors") / "patch"
    start_campaign(folder, kind="patch", band="2.3-2.5")
    goal = folder / "goal.toml"
    goal.write_text(goal.read_text(encoding="utf-8").replace("points = 5", "points = 3"), encoding="utf-8")
    campaign, plan = services.make_plan(folder)
    run = run_folder(folder, "first")
    run.path.mkdir(parents=True)
    save_dataset(record_of_rehearsal(campaign, plan, seed=5), run.record)
    return campaign, plan, run


def test_every_door_of_the_example_is_open(example):
    assert {group: [one.package for one in brought(group)] for group in GROUPS} == {
        group: [PACKAGE] for group in GROUPS
    }


def test_a_run_with_everything_that_the_example_brings(measured, example, tmp_path):
    campaign, plan, run = measured
    figures = read_figures(campaign, run)
    own = [one for one in figures if one.name == "gain_towards_water_dbi"]
    gain = {one.frequency_hz: one for one in figures if one.name == "gain_dbi"}
    assert len(own) == 3
    for one in own:
        # 10 deg beside the beam of a patch the gain is at most the peak's, and hardly less well known.
        assert gain[one.frequency_hz].value - 1.0 < one.value <= gain[one.frequency_hz].value
        u = gain[one.frequency_hz].expanded_uncertainty
        assert 0.8 * u < one.expanded_uncertainty < 1.5 * u and one.groups()["reference gain"] > 0.0
    done = services.process(campaign, run)
    steps = json.loads(done.pattern.attrs["history_json"])
    assert any(step["step"] == "cable-delay" and step["parameters"]["package"] == PACKAGE for step in steps)
    target = tmp_path / "figures.txt"
    assert "one a line" in export(campaign, run, "station-text", target)
    assert (
        sum(line.startswith("gain_towards_water_dbi") for line in target.read_text(encoding="utf-8").splitlines()) == 3
    )
    report_on(campaign, plan, run, done, None)
    page = run.report_html.read_text(encoding="utf-8")
    assert "On the bridge (river-level-example 0.1.0)" in page and "Gain towards the water" in page


def test_a_delay_that_reference_and_device_share_moves_nothing(measured, example, monkeypatch):
    campaign, _, run = measured
    with_it = services.process(campaign, run).expansion.coefficients
    recipe = Recipe(
        steps=tuple(one for one in services.process(campaign, run).recipe.steps if one.step != "cable-delay")
    )
    without = Run(campaign, run).process(recipe=recipe).processed.expansion.coefficients
    assert np.abs(with_it - without).max() < 1e-9 * np.abs(without).max()
    assert [step.name for step in all_steps()].index("cable-delay") < [step.name for step in all_steps()].index("gain")


def test_a_probe_by_name(measured, example):
    campaign, _, _ = measured
    named = campaign.chamber.probe.model_copy(update={"pattern": "probe:open-waveguide"})
    other = campaign.chamber.model_copy(update={"probe": named})
    probe = probe_of(replace(campaign, chamber=other), np.array([2.4e9]))
    # A Huygens source has waves of the first degree alone, and a directivity of 3.
    assert np.sum(np.abs(probe.coefficients[0, :, 3:]) ** 2) < 1e-12
    assert np.sum(np.abs(probe.coefficients) ** 2) == pytest.approx(4.0 * np.pi, rel=1e-6)


FIGURE = """
from colure.model.definitions import Definition
class F:
    definition = Definition(name={name!r}, label="x", unit="dB", text="x", source="x", display=float)
    def read(self, pattern):
        {body}
F = F()
"""


@pytest.mark.parametrize(
    ("group", "code", "words"),
    [
        (
            "colure.figures",
            FIGURE.format(name="own_db", body="raise RuntimeError('no luck')"),
            "raised RuntimeError: no luck",
        ),
        ("colure.figures", FIGURE.format(name="own_db", body="return 'much'"), "returned str, must return float"),
        ("colure.figures", FIGURE.format(name="gain_dbi", body="return 1.0"), "is another figure's already"),
        ("colure.figures", "class F: definition = 3; read = None\nF = F()", "definition is int"),
        ("colure.figures", "class F: pass\nF = F()", "lacks definition, read"),
        ("colure.figures", "raise ImportError('half installed')", "raised ImportError: half installed"),
    ],
)
def test_a_figure_that_misbehaves_is_refused_by_its_package(tmp_path, monkeypatch, group, code, words):
    installed(tmp_path, "bad-example", {group: {"own": "bad_example:F"}}, code)
    monkeypatch.syspath_prepend(str(tmp_path))
    monkeypatch.delitem(sys.modules, "bad_example", raising=False)
    field = np.zeros((1, 2, 8), complex)
    field[0, 0, :3] = 1.0, 0.2, 0.4j
    with pytest.raises(InputError, match=f"bad-example 0.1.0: colure.figures 'own': .*{words}"):
        FigureSet().values(Expansion(field, np.ones(1)))


def test_two_packages_with_one_name_are_refused(tmp_path, monkeypatch):
    for name in ("first-example", "second-example"):
        installed(tmp_path, name, {"colure.exports": {"same": f"{name.replace('-', '_')}:F"}},
                  "class F:\n    ending = '.x'\n    def write(self, run, target): return ''\nF = F()")  # fmt: skip
    monkeypatch.syspath_prepend(str(tmp_path))
    with pytest.raises(InputError, match=r"(first|second)-example 0.1.0 brings one of this name too"):
        brought("colure.exports")


def test_a_step_that_loses_points_and_one_with_a_name_of_ours_are_refused(measured, tmp_path, monkeypatch):
    campaign, _, run = measured
    code = "class F:\n    def run(self, record, chamber, device): return record.isel(point=slice(3))\nF = F()"
    installed(tmp_path / "a", "losing-example", {"colure.steps": {"lose": "losing_example:F"}}, code)
    installed(tmp_path / "b", "gate-example", {"colure.steps": {"gate": "losing_example:F"}}, code)
    with monkeypatch.context() as patch:
        patch.syspath_prepend(str(tmp_path / "a"))
        with pytest.raises(InputError, match=r"losing-example 0.1.0: colure.steps 'lose': trace has the shape"):
            services.process(campaign, run)
    monkeypatch.syspath_prepend(str(tmp_path / "a"))
    monkeypatch.syspath_prepend(str(tmp_path / "b"))
    with pytest.raises(InputError, match="gate-example 0.1.0: .*has the name of one of Colure's own steps"):
        services.process(campaign, run)


def test_a_format_that_nobody_knows_names_those_that_are_there(measured, example, tmp_path):
    campaign, _, run = measured
    with pytest.raises(InputError, match="must be one of csv, .*station-text"):
        export(campaign, run, "stone", tmp_path / "a.txt")
