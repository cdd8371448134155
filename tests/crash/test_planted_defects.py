"""Tests of tests: each defect below is planted into a copy of the package, and a named test must catch it."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

import colure
from tests.mutation.preloaded import Preloaded, changed_copy

ENGINE = "tests/acquire/test_engine.py::"
CONTROL = "tests/acquire/test_control.py::"
JOURNAL = "tests/acquire/test_journal.py::"
FAULT = "tests/acquire/test_faults.py::test_one_fault_over_real_sockets"

#: (what is wrong, file, text, what it becomes, the test that must fail)
DEFECTS = [
    ("commits are not synced", "acquire/journal.py", "pragma synchronous=full", "pragma synchronous=normal",
     JOURNAL + "test_durability_settings_are_in_force"),
    ("announced before it is committed", "acquire/engine.py", "        self._journal.append(row)\n        for text",
     '        self._tell(Event("point", "early", {"index": row.plan_index}))\n        self._journal.append(row)\n'
     "        for text", ENGINE + "test_a_point_is_committed_before_it_is_announced"),
    ("row checksum ignored", "acquire/chain.py",
     'if zlib.crc32(body) != crc:\n            faults.append(f"{name}: checksum differs")',
     'if False:\n            faults.append(f"{name}: checksum differs")',
     "tests/acquire/test_bit_rot.py::test_damaged_points_are_named_given_up_and_measured_again"),
    ("hash chain ignored", "acquire/chain.py", "if hashlib.sha256(self.previous + body).digest() != chain:", "if False:",
     JOURNAL + "test_a_row_replaced_with_a_matching_checksum_breaks_the_chain"),
    ("writing goes on after a failed sync", "acquire/journal.py",
     'self._failed = f"{type(error).__name__.removesuffix(\'Error\')}: {out_of_files() or error}"', "failed = error",
     "tests/crash/test_io_faults.py::test_every_call_fails[True]"),
    ("two writers on one journal", "acquire/locks.py", "fcntl.flock(handle.fileno(), fcntl.LOCK_EX | fcntl.LOCK_NB)", "pass",
     JOURNAL + "test_a_second_process_is_refused_and_told_the_owner"),
    ("keep-outs checked at end points only", "acquire/guard.py",
     "return np.asarray(np.maximum(enter.max(axis=1), 0.0) <= np.minimum(leave.min(axis=1), 1.0))",
     "return np.all(inside, axis=1) | np.all((targets_deg >= low) & (targets_deg <= high), axis=1)",
     "tests/acquire/test_guard.py::test_only_end_points_would_not_have_been_enough"),
    ("limits of the way not checked", "acquire/guard.py", "if beyond.any():", "if False:",
     "tests/acquire/test_guard.py::test_refusals_name_axis_value_limit_and_sector"),
    ("whole turns forgotten", "acquire/guard.py", "if axis.modulo_deg is not None:\n                near", "if False:\n                near",
     "tests/acquire/test_guard.py::test_whole_turns_of_a_wrapping_readout_are_counted"),
    ("positions not compared", "acquire/station.py", "fault = self.guard.position_fault(wanted_deg=target, found_deg=shown)", 'fault = ""',
     ENGINE + "test_axis_that_stands_elsewhere_stops_the_run"),
    ("stale sweeps taken", "instruments/scpi_words.py", "if count == before:", "if False:",
     "tests/instruments/test_analyzers.py::test_a_stale_sweep_is_refused_by_its_counter"),
    ("frozen traces taken", "acquire/freshness.py", "and (view != self._view):", "and False:", FAULT + "[frozen]"),
    ("non-finite values taken", "instruments/scpi_analyzer.py", "if not np.all(np.isfinite(trace)):", "if False:",
     FAULT + "[not-a-number]"),
    ("flags of the analyzer ignored", "instruments/scpi_words.py", "if condition & mask:", "if False:", FAULT + "[overload]"),
    ("another instrument accepted", "acquire/gate.py", "if wanted.get(name) != value:", "if False:",
     "tests/acquire/test_gate.py::test_another_instrument_is_refused"),
    ("a pause ends by itself", "acquire/engine.py", "if not self._control.await_resume(self._options.pause_limit_s):", "if False:",
     CONTROL + "test_a_pause_that_nobody_ends_becomes_a_stop_with_its_reason"),
    ("source stays on", "acquire/engine.py", "            self._analyzer.safe()\n        except LostError:",
     "            pass\n        except LostError:",
     CONTROL + "test_pause_finishes_the_point_and_resume_goes_on_to_the_same_record"),
    ("position trusted after an abort", "acquire/engine.py", 'self._journal.set_meta("distrust", reason)', "pass",
     CONTROL + "test_abort_takes_the_power_and_the_next_run_must_home"),
    ("resumed with another plan", "app/services/acquisition.py", "if old_hash != new_hash:", "if False:",
     ENGINE + "test_resume_refuses_another_plan"),
    ("resumed with a changed tie", "acquire/gate.py", "if abs(change.level_db) > RESUME_TOLERANCE_DB:", "if False:",
     "tests/acquire/test_gate.py::test_a_changed_tie_is_refused_on_resume"),
    ("stop queues behind the move", "instruments/gcode_axes.py", "self._watch_link.write_raw(self._words.hold)",
     "self._link.write_raw(self._words.hold)", ENGINE + "test_a_hold_does_not_queue_behind_a_move"),
    ("a moving axis is taken for standing", "acquire/gate.py", "            self._bring_to_rest()\n            with", "            with",
     "tests/acquire/test_gate.py::test_axes_left_in_motion_are_brought_to_rest_first"),
    ("sign in the probe's matrices", "waves/probe.py", "0.5j * (minus_c - plus_c)", "0.5j * (plus_c - minus_c)",
     "tests/waves/test_probes.py::test_an_elliptical_first_order_probe_is_taken_out_exactly"),
    ("width of the U-shaped distribution", "analysis/uncertainty/combination.py", '"U-shaped": float(np.sqrt(2.0))',
     '"U-shaped": float(np.sqrt(3.0))', "tests/published/test_guide_budget.py"),
    ("mismatch sign", "analysis/steps/gain.py", "(1.0 - source * device) / (1.0 - source * seen)",
     "(1.0 + source * device) / (1.0 - source * seen)", "tests/analysis/steps/test_reference.py"),
    ("sign of the reference's phase centre", "analysis/steps/gain.py", "np.exp(1j * k * shorter)",
     "np.exp(-1j * k * shorter)", "tests/analysis/steps/test_reference.py"),
    ("ends of a mask's interval swapped", "analysis/verdict/verdicts.py", "best, bad = (low, high) if sign > 0",
     "best, bad = (high, low) if sign > 0", "tests/analysis/verdict/test_verdicts.py"),
    ("ends of a limit's interval swapped", "analysis/verdict/verdicts.py", "if (sign > 0.0) == (margin >= 0.0)",
     "if (sign > 0.0) != (margin >= 0.0)", "tests/analysis/verdict/test_verdicts.py"),
    ("sign of a correction", "analysis/uncertainty/budget.py", "values = values - one.mean", "values = values + one.mean",
     "tests/published/test_guide_budget.py"),
]  # fmt: skip


#: Gates that carry out whole runs: seconds each, so that the nightly run looks whether they see their defect.
RUNS = (ENGINE, CONTROL, FAULT, "tests/acquire/test_bit_rot.py", "tests/acquire/test_gate.py", "tests/crash/")


@pytest.fixture(scope="module")
def gates():
    with Preloaded() as process:
        yield process


@pytest.mark.skipif(os.name == "nt", reason="the gates use POSIX locks and a memory file system")
@pytest.mark.parametrize(("what", "name", "old", "new", "gate"), DEFECTS, ids=[row[0] for row in DEFECTS])
def test_planted_defect_is_caught(tmp_path, request, what, name, old, new, gate):
    package = Path(colure.__file__).parent
    source = (package / name).read_text(encoding="utf-8")
    assert source.count(old) == 1, f"{name}: the text of the defect is there {source.count(old)} times"
    slow = gate.startswith(RUNS) or [row[0] for row in DEFECTS].index(what) % 2 == 1
    if slow and not request.config.getoption("--nightly"):
        pytest.skip("whole runs and every second gate are for the nightly run; the defect can still be planted")
    gates: Preloaded = request.getfixturevalue("gates")
    changed_copy(package, tmp_path / "src", name, source.replace(old, new))
    code = gates.run(tmp_path / "src", [gate], log=tmp_path / "log")
    said = (tmp_path / "log").read_text(encoding="utf-8")
    assert code == 1, f"{what}: not caught by {gate}\n{said[-2000:]}"
    assert "\nFAILED " in said


def test_the_list_is_long_enough():
    assert len({row[0] for row in DEFECTS}) >= 10
