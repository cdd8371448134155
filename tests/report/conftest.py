"""One processed run for every test of reports: a 3 x 3 panel at two frequencies, held against limits."""

from __future__ import annotations

import pytest

from colure.app import services
from colure.app.services.reporting import source_of
from colure.app.services.verdicts import judge
from colure.app.storage.run_identity import keep_identity
from colure.model.identity import RunIdentity
from colure.model.loading import load
from colure.model.specification import Specification
from colure.report.content import compose
from tests.report.test_report import small_campaign


@pytest.fixture(scope="session")
def source(tmp_path_factory):
    """A 3 x 3 panel at two frequencies, held against limits."""
    campaign, plan, run = small_campaign(tmp_path_factory.mktemp("laboratory") / "c")
    keep_identity(run, RunIdentity(serial="S-5"))
    done = services.process(campaign, run)
    figures = services.evaluate(done, run)
    judged = judge(done, figures, load(Specification, campaign.folder / "limits.toml"))
    return source_of(campaign, plan, run, done, figures, judged)


@pytest.fixture(scope="session")
def whole(source):
    """The full report in English: drawn once for every test that reads it."""
    return compose(source)
