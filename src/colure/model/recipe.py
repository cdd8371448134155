"""What is done to a record, in order: recipe.toml, or the default that suits the record."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field, model_validator

from colure.model.loading import Section

StepName = Literal[
    "drift",
    "cable",
    "places",
    "gate",
    "gain",
    "purity",
    "assemble",
    "distance",
    "alignment",
    "far-field",
    "mode-filter",
]
#: The only order that makes sense: each step needs what the ones before it have put right.
ORDER: tuple[StepName, ...] = (
    "drift", "cable", "places", "gate", "gain", "purity", "assemble", "distance", "alignment", "far-field", "mode-filter",
)  # fmt: skip
#: Without these there is no pattern.
NEEDED: tuple[StepName, ...] = ("gain", "assemble")


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

    step: StepName
    on: bool = True
    width_ns: float | None = Field(default=None, gt=0, le=1e6, json_schema_extra={"unit": "ns"})
    centre_ns: float | None = Field(default=None, ge=-1e6, le=1e6, json_schema_extra={"unit": "ns"})
    response_ns: float | None = Field(default=None, ge=0, le=1e6, json_schema_extra={"unit": "ns"})
    radius_mm: float | None = Field(default=None, gt=0, le=1e5, json_schema_extra={"unit": "mm"})


class Recipe(Section):
    """Steps in their order, from recipe.toml: one table [[steps]] each.

    steps
        Steps that are set by hand, in the order of the recipe; all others follow the record.
    """

    steps: Annotated[tuple[Step, ...], Field(min_length=1)]

    @model_validator(mode="after")
    def _ordered(self) -> Recipe:
        names = [one.step for one in self.steps]
        wanted = [name for name in ORDER if name in names]
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
