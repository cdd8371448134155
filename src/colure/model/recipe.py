"""What is done to a record, in order: recipe.toml, or the default that suits the record."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field, field_validator, model_validator

from colure.model.doors import brought
from colure.model.loading import Section

#: One of `ORDER`, or the name of a step that another package brings.
StepName = str
#: The only order that makes sense: each step needs what the ones before it have put right.
ORDER: tuple[StepName, ...] = (
    "drift", "cable", "places", "gate", "gain", "purity", "assemble", "distance", "room", "alignment", "far-field", "mode-filter",
)  # fmt: skip
#: Steps of other packages turn sweeps into sweeps: they run before this one.
BEFORE: StepName = "gain"
#: Without these there is no pattern.
NEEDED: tuple[StepName, ...] = ("gain", "assemble")


def every_step() -> tuple[StepName, ...]:
    """Return the names of all steps in their order, those of other packages (entry points `colure.steps`) among them.

    Raises
    ------
    InputError
        If a package's step has the name of one of Colure's own.
    """
    others = brought("colure.steps")
    for one in others:
        if one.name in ORDER:
            raise one.refusal("has the name of one of Colure's own steps")
    at = ORDER.index(BEFORE)
    return (*ORDER[:at], *(one.name for one in others), *ORDER[at:])


class Step(Section):
    """One step; switched off it is skipped and its place in the history says so.

    width_ns, centre_ns
        `gate`: width of the time gate, and its middle; by default from before the strongest arrival
        to just before the nearest declared echo.
    response_ns
        `gate`: how long the response of device and horn lasts, where that is known; judged from the data if left out.
    radius_mm
        `mode-filter`: radius about the device's centre that all sources lie in; the device's own by default.
    step
        Name of the step.
    on
        False leaves it out.
    """

    step: StepName = Field(json_schema_extra={"enum": list(ORDER)})
    on: bool = True
    width_ns: float | None = Field(default=None, gt=0, le=1e6, json_schema_extra={"unit": "ns"})
    centre_ns: float | None = Field(default=None, ge=-1e6, le=1e6, json_schema_extra={"unit": "ns"})
    response_ns: float | None = Field(default=None, ge=0, le=1e6, json_schema_extra={"unit": "ns"})
    radius_mm: float | None = Field(default=None, gt=0, le=1e5, json_schema_extra={"unit": "mm"})

    @field_validator("step")
    @classmethod
    def _known(cls, name: str) -> str:
        if name not in every_step():
            raise ValueError(f"must be one of {', '.join(every_step())}")
        return name


class Recipe(Section):
    """Steps in their order, from recipe.toml: one table [[steps]] each.

    steps
        Steps that are set by hand, in the order of the recipe; all others follow the record.
    """

    steps: Annotated[tuple[Step, ...], Field(min_length=1)]

    @model_validator(mode="after")
    def _ordered(self) -> Recipe:
        names = [one.step for one in self.steps]
        wanted = [name for name in every_step() if name in names]
        if names != wanted:
            raise ValueError(f"steps {', '.join(names)}: must come once each and in the order {', '.join(wanted)}")
        for name in NEEDED:
            if not self.runs(name):
                raise ValueError(f"step {name!r}: must be there and on; there is no pattern without it")
        return self

    def runs(self, name: StepName) -> bool:
        """Tell whether a step is there and switched on."""
        return any(one.step == name and one.on for one in self.steps)

    def step(self, name: StepName) -> Step:
        """Return a step's table; raises `KeyError` if it is not there."""
        for one in self.steps:
            if one.step == name:
                return one
        raise KeyError(name)

    def without(self, name: StepName) -> Recipe:
        """Return the recipe with one step switched off."""
        changed = tuple(one.model_copy(update={"on": False}) if one.step == name else one for one in self.steps)
        return self.model_copy(update={"steps": changed})

    def gated(self, *, centre_ns: float, width_ns: float) -> Recipe:
        """Return the recipe with its time gate switched on there; raises `KeyError` if it has no such step."""
        gate = self.step("gate").model_copy(update={"on": True, "centre_ns": centre_ns, "width_ns": width_ns})
        return self.model_copy(update={"steps": tuple(gate if one.step == "gate" else one for one in self.steps)})

    @property
    def switchable(self) -> list[StepName]:
        """Steps that run and could be left out."""
        return [one.step for one in self.steps if one.on and one.step not in NEEDED]
