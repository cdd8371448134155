"""A switch that stands still while it is told to change over: clean data, and the gain of the reference."""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.findings.stuck_switch import SAME_DB, nearest_db, switch_findings
from colure.app import services
from colure.app.services.rehearsal import record_of_rehearsal
from colure.model.plan import ROLES, Role
from colure.model.record import of_role


@pytest.fixture
def record(tiny_campaign):
    return record_of_rehearsal(*services.make_plan(tiny_campaign), seed=1)


def stuck(record, *, noise: float = 1e-3):
    """The record as it were if the source had stayed at the device: where a horn was to be read, a scan point of the same place is."""
    other = record.copy(deep=True)
    reference, device = (np.flatnonzero(np.isin(record["role"].values, [ROLES.index(one) for one in some]))
                         for some in ((Role.REFERENCE,), (Role.SCAN, Role.TIE)))  # fmt: skip
    places, random = record["commanded_deg"].values, np.random.default_rng(2)
    for row in reference:
        here = device[np.all(np.abs(places[device] - places[row]) < 0.01, axis=1)]
        trace = record["trace"].values[here[0]]
        size = noise * np.abs(trace).max()
        other["trace"].values[row] = trace + size * (
            random.normal(size=trace.shape) + 1j * random.normal(size=trace.shape)
        )
    return other


def test_a_switch_that_stood_still_bars_every_figure(record):
    assert switch_findings(record) == []
    (one,) = switch_findings(stuck(record))
    assert one.severity == "not to be used" and one.figures == () and "the switch did not change over" in one.text


def test_drift_between_both_does_not_hide_it_and_noise_does_not_make_it(record):
    late = stuck(record)
    late["trace"].values[of_role_rows(late)] *= np.exp(1j * np.deg2rad(0.5))
    assert nearest_db(late) < SAME_DB
    assert nearest_db(stuck(record, noise=0.1)) > SAME_DB


def of_role_rows(record):
    return np.flatnonzero(record["role"].values == ROLES.index(Role.REFERENCE))


def test_another_method_has_no_switch(record):
    assert switch_findings(stuck(record).assign_attrs(reference_method="swap")) == []
    nowhere = record.copy(deep=True)
    nowhere["commanded_deg"].values[of_role_rows(record)] += 1.0
    assert nearest_db(nowhere) is None and of_role(nowhere, Role.REFERENCE).sizes["point"] > 0
