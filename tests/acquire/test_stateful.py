"""A hypothesis machine over the real engine: any order of work, faults, doors, pauses, stops, deaths and restarts
keeps the invariants."""

from __future__ import annotations

import os
import shutil
import tempfile
from pathlib import Path

import pytest
from hypothesis import HealthCheck, settings
from hypothesis import strategies as st
from hypothesis.stateful import (
    RuleBasedStateMachine,
    initialize,
    invariant,
    precondition,
    rule,
    run_state_machine_as_test,
)

from colure.acquire.journal import Journal
from colure.acquire.outcome import Options
from colure.acquire.states import State
from colure.app import services
from colure.model.faults import ROLE_FAULTS, FaultKind
from tests.conftest import QUIET_TWIN, SMALL_GOAL
from tests.world import World, planned_rows

FAST = Path("/dev/shm")


class Death(BaseException):
    """kill -9."""


def campaign(folder: Path):
    """The tiny campaign, made without fixtures."""
    services.new_campaign(folder)
    goal = SMALL_GOAL.replace("step_deg = 15", "step_deg = 30").replace("points = 2", "points = 1")
    (folder / "goal.toml").write_text(goal.replace("stop_ghz = 24.1", "stop_ghz = 24.0"), encoding="utf-8")
    (folder / "twin.toml").write_text(QUIET_TWIN, encoding="utf-8")
    device = (folder / "device.toml").read_text(encoding="utf-8")
    device = device.replace("[49.7, 49.7, 4.0]", "[2.0, 2.0, 1.0]").replace("[0.0, 0.0, -30.0]", "[0.0, 0.0, 0.0]")
    (folder / "device.toml").write_text(device, encoding="utf-8")
    return services.make_plan(folder)


class Chamber(RuleBasedStateMachine):
    """One chamber, one run, and everything that can happen to it."""

    shared: tuple = ()

    @initialize(kind=st.sampled_from(["line", "gcode"]))
    def begin(self, kind):
        self.folder = Path(tempfile.mkdtemp(dir=FAST if FAST.is_dir() else None))
        parsed, self.plan, self.reference = self.shared
        self.world = World(parsed, kind, 1.0)
        self.path = self.folder / "j.sqlite"
        Journal.create(self.path, self.plan, {}).close()
        self.announced: set[int] = set()
        self.todo: list = []
        self.outcome = None

    def listen(self, event):
        index = event.data.get("index")
        if index is not None and index >= 0:
            assert index not in self.announced, "I3"
            self.announced.add(index)
            self.left -= 1
            if self.left <= 0 and self.then is not None:
                action, self.then = self.then, None
                action()
        if event.data.get("state") == "paused":
            assert self.world.stage.held.is_set(), "I4"
            self.world.clock.sleep(30.0)
            self.engine.resume()

    def work(self, points: int, then) -> None:
        """Run the engine; after some points do something to it."""
        self.left, self.then = points, then
        self.world.stage.reset()
        journal = Journal.resume(self.path)
        home = journal.meta("distrust") is not None
        self.engine = self.world.engine(
            self.plan, journal, listener=self.listen, options=Options(threads=False, pause_limit_s=1e-3, home=home)
        )
        try:
            self.outcome = self.engine.run()
            if self.outcome.state is not State.DONE:
                assert self.outcome.reason and journal.meta("stops")[-1]["reason"] == self.outcome.reason, "I5"
                assert self.world.stage.held.is_set(), "I4"
        except Death:
            self.outcome = None
        finally:
            journal.close()

    points = st.integers(1, 60)

    @rule(points=points)
    def stop(self, points):
        self.work(points, lambda: self.engine.stop("operator"))

    @rule(points=points)
    def pause_and_go_on_then_stop(self, points):
        def pause():
            self.engine.pause("coffee")
            self.left, self.then = 3, lambda: self.engine.stop("operator")

        self.work(points, pause)

    @rule(points=points)
    def abort(self, points):
        self.work(points, lambda: self.engine.abort("smoke"))

    @rule(points=points)
    def die(self, points):
        def death():
            raise Death

        self.work(points, death)

    @rule(points=points)
    def open_the_door(self, points):
        def door():
            self.world.stage.open_door(10.0)
            self.left, self.then = 5, lambda: self.engine.stop("operator")

        self.work(points, door)

    @rule(
        points=points,
        kind=st.sampled_from([kind for kind in FaultKind if kind not in ROLE_FAULTS | {FaultKind.WRONG_IDENTITY}]),
    )
    def meet_a_fault(self, points, kind):
        def fault():
            faults = self.world.stage.faults
            number = faults._count[kind.of_analyzer] + 1
            faults._listed[(kind.of_analyzer, number)] = kind
            self.left, self.then = 5, lambda: self.engine.stop("operator")

        self.work(points, fault)

    @precondition(lambda self: hasattr(self, "path"))
    @invariant()
    def promises_are_kept(self):
        journal = Journal.resume(self.path)
        try:
            assert journal.verify().whole
            done = journal.measured()
            assert self.announced <= done and len(done - self.announced) <= 1, "I1"
            self.announced = set(done)
            rows = {row[0]: row for row in planned_rows(journal)}
            for index, row in rows.items():
                wanted = self.reference[index]
                import numpy as np

                found, true = np.frombuffer(row[6], complex), np.frombuffer(wanted[6], complex)
                assert row[7] or np.allclose(found, true, rtol=1e-9), "I2"
        finally:
            journal.close()

    def teardown(self):
        if hasattr(self, "folder"):
            shutil.rmtree(self.folder, ignore_errors=True)


@pytest.mark.skipif(os.name == "nt", reason="wants a memory file system")
def test_any_order_of_events_keeps_the_invariants(tmp_path, request):
    parsed, plan = campaign(tmp_path / "campaign")
    world = World(parsed, "line", 1.0)
    whole = Journal.create(tmp_path / "whole.sqlite", plan, {})
    assert world.engine(plan, whole).run().state is State.DONE
    Chamber.shared = (parsed, plan, {row[0]: row for row in planned_rows(whole)})
    whole.close()
    many = request.config.getoption("--nightly")
    run_state_machine_as_test(
        Chamber,
        settings=settings(
            max_examples=2000 if many else 7, stateful_step_count=12, deadline=None, derandomize=not many,
            suppress_health_check=list(HealthCheck),
        ),
    )  # fmt: skip
