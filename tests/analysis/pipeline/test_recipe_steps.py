"""Every step of the recipe is one object: in the order that recipe.toml asks for, with a diagnosis, rows and parameters that exist."""

import pytest

from colure.analysis.findings import diagnosis
from colure.analysis.pipeline.stages import all_steps
from colure.analysis.uncertainty.causes import AFTER_THE_OTHERS, CAUSES, MISSING
from colure.model.recipe import ORDER, Step

#: The drift's track is drawn as it is, on a page of its own.
WITHOUT_A_DIAGNOSIS = {"drift"}


def test_the_declared_order_is_the_order_of_the_file():
    assert tuple(step.name for step in all_steps()) == ORDER


def test_every_step_that_runs_has_a_diagnosis():
    assert set(diagnosis.DIAGNOSES) == {step.name for step in all_steps()} - WITHOUT_A_DIAGNOSIS


def test_every_parameter_of_the_file_is_read_by_one_step():
    parameters = [name for step in all_steps() for name in step.parameters]
    assert sorted(parameters) == sorted(set(Step.model_fields) - {"step", "on"})


@pytest.mark.parametrize("step", all_steps(), ids=lambda step: step.name)
def test_the_rows_of_a_step_are_causes_that_the_budget_knows(step):
    known = {one.group or one.key for one in CAUSES}
    assert step.rows and step.needs and set(step.rows) <= known


def test_every_cause_of_uncertainty_is_one_object_with_a_row_of_its_own():
    """What can be declared is named where it was not, and every name that a figure may say belongs to a cause."""
    every = (*CAUSES, *AFTER_THE_OTHERS)
    assert len({one.row for one in every}) == len(every)
    assert all(one.text and one.needs for one in every)
    assert [one.key for one in every if bool(one.missing) != (one.declared is not None)] == []
    assert {one.missing for one in every} - {""} == set(MISSING)
    assert [one.key for one in every if one.type_a and one.kind != "measured"] == []  # statistics need data
