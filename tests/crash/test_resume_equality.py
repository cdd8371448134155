"""A run that dies anywhere and is resumed gives the record that an uninterrupted one gives: many seeds, deaths at
any line on any wire, in virtual time."""

from __future__ import annotations

import os

import numpy as np
import pytest

from colure.acquire.journal import Journal
from colure.acquire.states import State
from tests.crash.test_power_cut import fast_folder  # noqa: F401 - a fixture
from tests.world import planned_rows, world_of


class Death(BaseException):
    """The process is gone: nothing after this line runs, not even a handler for Exception."""


class MortalWorld:
    """Counts the lines that go over the wires and dies at one of them."""

    def __init__(self, world):
        self.world, self.left, self.lines = world, None, 0
        feed = world.feed

        def mortal(name, data):
            self.lines += 1
            if self.left is not None:
                self.left -= 1
                if self.left == 0:
                    self.left = None
                    raise Death
            return feed(name, data)

        world.feed = mortal


@pytest.mark.skipif(os.name == "nt", reason="wants a memory file system")
@pytest.mark.parametrize("kind", ["line", "gcode"])
def test_resumed_equals_uninterrupted(tiny_campaign, fast_folder, kind, request):  # noqa: F811
    seeds = 500 if request.config.getoption("--nightly") else 3
    world, plan = world_of(tiny_campaign, kind=kind, poll_s=1.0)
    whole = Journal.create(fast_folder / "whole.sqlite", plan, {})
    counted = MortalWorld(world)
    assert world.engine(plan, whole).run().state is State.DONE
    wanted = planned_rows(whole)
    whole.close()
    deaths = 0
    for seed in range(seeds):
        random = np.random.default_rng(seed)
        world, plan = world_of(tiny_campaign, kind=kind, poll_s=1.0)
        mortal = MortalWorld(world)
        path = fast_folder / f"{seed}.sqlite"
        Journal.create(path, plan, {}).close()
        for _ in range(4):
            journal = Journal.resume(path)
            before = journal.measured()
            mortal.left = int(random.integers(1, counted.lines // 2)) if random.random() < 0.8 else None
            try:
                outcome = world.engine(plan, journal).run()
            except Death:
                deaths += 1
                # As the kernel would: the files stay as they are, the connection is gone.
                journal.close()
                continue
            mortal.left = None
            assert before <= journal.measured()
            assert outcome.state is State.DONE, outcome
            break
        else:
            journal = Journal.resume(path)
            assert world.engine(plan, journal).run().state is State.DONE
        found = planned_rows(journal)
        # Positions after a brake differ in the last bits of a float; everything that was measured must agree.
        assert [row[:4] for row in found] == [row[:4] for row in wanted]
        for ours, theirs in zip(found, wanted, strict=True):
            np.testing.assert_allclose(np.frombuffer(ours[6], complex), np.frombuffer(theirs[6], complex), rtol=1e-9)
        assert journal.verify().whole
        journal.close()
    print(f"{kind}: {seeds} seeds, {deaths} deaths")
    assert deaths > seeds
