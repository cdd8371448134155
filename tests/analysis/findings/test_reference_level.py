"""What contradicts the level of a reference, and what of it no run shows."""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.findings.reference_level import LEVELS, horn_findings, unseen_findings
from colure.analysis.steps.gain import reference_gain_dbi
from colure.model.campaign import Campaign
from colure.model.figure import LOOK

FREQUENCY_HZ = np.array([24.0e9, 24.25e9])


@pytest.fixture
def chamber(tiny_campaign):
    return Campaign.load(tiny_campaign).chamber


@pytest.mark.parametrize("near", [True, False])
@pytest.mark.parametrize(("off_db", "told"), [(0.0, False), (1.1, False), (-1.1, False), (1.5, True), (-3.0, True)])
def test_a_gain_that_is_not_that_of_the_declared_horn_is_told(chamber, near, off_db, told):
    """A table is let pass within 1 dB and its own 0.25 dB of the horn's formula (common practice, no source)."""
    formula = reference_gain_dbi(FREQUENCY_HZ, chamber.reference, chamber.range_length_m if near else np.inf)
    off = np.array([0.0, off_db])  # a table may be right at one end of the band only
    said = list(horn_findings(formula + off, FREQUENCY_HZ, chamber, near=near))
    assert bool(said) is told
    if told:
        assert said[0].severity == LOOK and said[0].figures == LEVELS and "24.250 GHz" in said[0].text


def test_without_a_reference_nothing_is_said_of_it(chamber):
    none = chamber.model_copy(update={"reference": chamber.reference.model_copy(update={"method": "none"})})
    assert not list(horn_findings(np.full(2, np.nan), FREQUENCY_HZ, none))
    assert not list(unseen_findings([], none))


def test_what_no_run_shows_is_said_with_its_size(chamber):
    """-0.8 dB +-0.3 dB: more than 100 % is told from 1.5 x 0.3 above 0 on, so 1.25 dB are open (derivable)."""
    (said,) = unseen_findings([(24.0e9, -2.0, 0.3), (24.25e9, -0.8, 0.3)], chamber)
    assert said.severity == "information" and "reads over 1.2 dB too low" in said.text
    (said,) = unseen_findings([], chamber)
    assert "No efficiency" in said.text
    assert not list(unseen_findings([(24.0e9, 0.6, 0.3)], chamber))  # told already
