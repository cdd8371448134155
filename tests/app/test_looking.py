"""A look at a run that is not finished: its slices as cuts first, its pattern as soon as an even set of slices is there."""

from __future__ import annotations

import numpy as np
import pytest
from click.testing import CliRunner

from colure.acquire.journal import Journal, Row
from colure.app.cli import main
from colure.app.services import make_plan
from colure.app.services.looking import look
from colure.app.services.rehearsal import measured
from colure.app.services.starting import start_campaign
from colure.app.storage.folders import run_folder
from colure.app.terminal.newest import BLOCKS, trace_line


def begun(folder, share, goal=""):
    """Write the journal of a run that was stopped after a share of its points; return the rehearsed truth."""
    start_campaign(folder, kind="patch", band="5-5.5")
    text = (folder / "goal.toml").read_text().replace("points = 5", f"points = 2\n{goal}")
    (folder / "goal.toml").write_text(text)
    resolved, plan = make_plan(folder)
    rehearsed, moments = measured(resolved, plan, seed=3)
    run = run_folder(folder, "first")
    run.path.mkdir(parents=True)
    journal = Journal.create(run.journal, plan, {"receiver": "vector"})
    for i in range(int(share * len(plan))):
        journal.append(
            Row(plan_index=i, role=int(plan.role[i]), state_index=-1, time_s=float(moments[i]),
            wall_time=1.7e9 + float(moments[i]), monotonic_s=float(moments[i]), commanded_deg=plan.targets_deg[i],
                readback_deg=rehearsed.readback_deg[i], rate_deg_s=rehearsed.rate_deg_s[i], trace=rehearsed.trace[i],
                flags=0)
        )  # fmt: skip
    # The run goes on: another process holds the journal while it is looked at.
    return resolved, run, journal, rehearsed


def test_slices_are_read_as_cuts_while_the_run_goes_on(tmp_path):
    resolved, run, journal, rehearsed = begun(tmp_path / "c", 0.3)
    before = run.journal.read_bytes()
    found = look(resolved, run)
    assert "no pattern of the sphere yet" in found.how
    assert 0 < found.measured < found.total
    assert found.left_s > 0.0
    assert found.drawing is not None
    gain = next(one for one in found.figures if one.name == "phi_0_peak_dbi" and one.frequency_hz == 5.5e9)
    from colure.twin.true_field import TrueField

    true = np.abs(TrueField(rehearsed.device.at(1)).at(np.array([[0.0, 0.0, 1.0]]))[0, 0])
    assert gain.lower <= 20.0 * np.log10(true) <= gain.upper
    assert (run.journal.read_bytes(), run.record.exists()) == (before, False)
    said = CliRunner().invoke(main, ["look", str(tmp_path / "c"), "--picture", str(tmp_path / "look.png")])
    assert said.exit_code == 0, said.output
    assert (tmp_path / "look.png").stat().st_size > 1000
    journal.close()


def test_an_even_set_of_slices_is_a_pattern(tmp_path):
    resolved, run, journal, _ = begun(tmp_path / "c", 0.6, 'order = "progressive"')
    journal.close()
    found = look(resolved, run)
    assert "evenly spaced" in found.how
    assert any(one.name == "directivity_dbi" for one in found.figures)


def test_a_run_that_was_never_begun_says_so(tmp_path):
    start_campaign(tmp_path / "c", kind="patch", band="5-5.5")
    said = CliRunner().invoke(main, ["look", str(tmp_path / "c")])
    assert said.exit_code == 2
    assert "run first: does not exist; there are no runs here yet" in said.output


@pytest.mark.parametrize(
    ("levels", "chart"), [((-60.0, -50.0), BLOCKS[0] + BLOCKS[-1]), ((-50.0, -50.0), BLOCKS[0] * 2)]
)
def test_the_newest_trace_is_a_small_chart(levels, chart):
    trace = 10.0 ** (np.array(levels)[:, None] / 20.0) + 0j
    row = Row(
        plan_index=0,
        role=0,
        state_index=-1,
        time_s=0.0,
        wall_time=0.0,
        monotonic_s=0.0,
        commanded_deg=np.zeros(2),
        readback_deg=np.array([1.0, 2.0]),
        rate_deg_s=np.zeros(2),
        trace=trace,
        flags=0,
    )
    assert f"-50.0 dB at 1.0 2.0 deg  {chart} {levels[0]:.0f}..-50 dB" == trace_line(row)
