"""The steps from sweeps to the measured sphere, one object each; a recipe is a loop over them in their declared order."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Protocol

import numpy as np

from colure.analysis.steps.assemble import MeasuredSphere, assemble
from colure.analysis.steps.cable import CableFlex, cable_flex, correct_cable, has_turns
from colure.analysis.steps.distance import at_even_distance
from colure.analysis.steps.drift import DriftTrack, correct
from colure.analysis.steps.gain import GainTransfer, ReferenceData, apply_gain, gain_transfer, method_of
from colure.analysis.steps.places import to_planned_places
from colure.analysis.steps.time_gate import Gate, common_response, gate_record, proposed_gate
from colure.errors import InputError
from colure.model.chamber import Chamber
from colure.model.device import Device
from colure.model.doors import Brought, brought
from colure.model.files import with_step
from colure.model.recipe import BEFORE, Recipe, StepName
from colure.model.reference import WITH_HORN
from colure.values import holds_arrays

if TYPE_CHECKING:
    import xarray as xr


@dataclass(frozen=True)
@holds_arrays
class Stages:
    """A record on its way to a sphere: after the steps that turn sweeps into sweeps, and after the gain."""

    drift: DriftTrack
    cable: CableFlex | None
    steady: xr.Dataset
    transfer: GainTransfer
    calibrated: xr.Dataset
    sphere: MeasuredSphere
    gate: Gate | None = None


@dataclass(frozen=True)
@holds_arrays
class Work:
    """A record while the steps are at it.

    steady
        The sweeps as the steps so far left them; the record itself to begin with.
    cable, gate
        What was found before or is prescribed; each step finds its own if None.
    transfer, calibrated, sphere
        None until the step that makes them has run.
    """

    record: xr.Dataset
    chamber: Chamber
    device: Device
    recipe: Recipe
    reference: ReferenceData | None
    drift: DriftTrack
    steady: xr.Dataset
    cable: CableFlex | None = None
    gate: Gate | None = None
    transfer: GainTransfer | None = None
    calibrated: xr.Dataset | None = None
    sphere: MeasuredSphere | None = None

    def stages(self) -> Stages:
        """Return what the finished work has made of the record."""
        assert self.transfer is not None  # gain and assembly run in every recipe
        assert self.calibrated is not None
        assert self.sphere is not None
        return Stages(self.drift, self.cable, self.steady, self.transfer, self.calibrated, self.sphere, self.gate)


@dataclass(frozen=True, kw_only=True)
class RecipeStep:
    """What the recipe knows of any step.

    name, parameters
        As recipe.toml writes them; parameters are the entries of [[steps]] that this step reads.
    suits
        Tells from record, chamber and device whether the step belongs to the default recipe.
    needs
        What of the record or the chamber the step looks at, in words.
    rows
        Rows of the budget that say what the step leaves open; every name is one of `uncertainty.causes`.
    whole_band
        True: the step looks across all frequencies, so that no frequency can be processed alone.
    """

    name: StepName
    suits: Callable[[xr.Dataset, Chamber, Device], bool]
    needs: str
    rows: tuple[str, ...] = ()
    parameters: tuple[str, ...] = ()
    whole_band: bool = False


@dataclass(frozen=True, kw_only=True)
class SweepStep(RecipeStep):
    """A step from sweeps to the measured sphere.

    run
        Returns the work with the step done, or with what remains to be done where it is switched off.
    """

    run: Callable[[Work, bool], Work]


def _always(record: xr.Dataset, chamber: Chamber, device: Device) -> bool:
    return True


def _drift(work: Work, on: bool) -> Work:
    return replace(work, steady=correct(work.record, work.drift)) if on else work


def _cable(work: Work, on: bool) -> Work:
    if not on:
        return replace(work, cable=None)
    flex = flex_of(work.record, work.chamber) if work.cable is None else work.cable
    return replace(work, steady=correct_cable(work.steady, flex), cable=flex)


def _places(work: Work, on: bool) -> Work:
    return replace(work, steady=to_planned_places(work.steady)) if on else work


def _gate(work: Work, on: bool) -> Work:
    if not on:
        return replace(work, gate=None)
    used = gate_of(work.steady, work.chamber, work.device, work.recipe) if work.gate is None else work.gate
    return replace(work, steady=gate_record(work.steady, used), gate=used)


def _gain(work: Work, on: bool) -> Work:
    return replace(work, transfer=gain_transfer(work.steady, work.chamber, work.reference))


def _purity(work: Work, on: bool) -> Work:
    """Leave the ports' impurity in where the step is off; circular ports are told apart by it and cannot go without."""
    transfer = work.transfer
    assert transfer is not None  # the gain runs before
    if on or work.chamber.probe.polarization != "linear":
        return work
    identity = np.ones_like(transfer.response) * np.eye(work.record.sizes["port"])
    return replace(work, transfer=replace(transfer, response=identity, leak=0 * transfer.leak))


def _assemble(work: Work, on: bool) -> Work:
    assert work.transfer is not None  # the gain runs before
    calibrated = apply_gain(work.steady, work.transfer)
    return replace(work, calibrated=calibrated, sphere=assemble(calibrated, work.chamber, leak=work.transfer.leak))


def _distance(work: Work, on: bool) -> Work:
    if not on:
        return work
    assert work.sphere is not None  # the assembly runs before
    even = at_even_distance(work.sphere, work.device, work.chamber.range_length_m)
    return replace(work, sphere=replace(work.sphere, field=even))


def one_pass(record: xr.Dataset) -> bool:
    """Tell whether a record holds one polarization alone."""
    return bool(record.attrs["scheme"] == "one-pass")


def is_offset(device: Device) -> bool:
    """Tell whether the device's centre lies beside the axes' intersection."""
    return float(np.linalg.norm(device.offset_mm)) > 0.0


#: In the only order that makes sense: each step needs what the ones before it have put right.
STEPS = (
    SweepStep(name="drift", run=_drift, suits=_always, needs="boresight checks (ties)", rows=("drift residual",)),
    SweepStep(name="cable", run=_cable, suits=lambda record, chamber, device: has_turns(record),
              needs="sweeps of dedicated cable turns", rows=("cable flexing",)),
    SweepStep(name="places", run=_places, suits=lambda record, chamber, device: record.attrs.get("style") == "fly",
              needs="one slice flown both ways", rows=("position error",), whole_band=True),
    SweepStep(name="gate", run=_gate, suits=lambda record, chamber, device: False,
              needs="a band wide enough to part the echoes", rows=("time gate",),
              parameters=("width_ns", "centre_ns", "response_ns"), whole_band=True),
    SweepStep(name="gain", run=_gain, suits=_always, needs="sweeps of the reference", rows=("reference gain",)),
    SweepStep(name="purity", run=_purity,
              suits=lambda record, chamber, device: chamber.reference.shows_purity and not one_pass(record),
              needs="sweeps of the reference turned by 90 deg", rows=("probe polarization",)),
    SweepStep(name="assemble", run=_assemble, suits=_always, needs="scan points on a grid", rows=("noise",)),
    SweepStep(name="distance", run=_distance,
              suits=lambda record, chamber, device: one_pass(record) and is_offset(device),
              needs="offset_mm of the device", rows=("finite distance",)),
)  # fmt: skip


class StepDoor(Protocol):
    """What an object behind `colure.steps` must have."""

    def run(self, record: xr.Dataset, chamber: Chamber, device: Device) -> xr.Dataset:
        """Return the record with other sweeps: `trace` is complex (point, frequency, port).

        The step meets the record after drift, cable, places and gate, with boresight checks and reference sweeps in it, and is gone again
        for every cause of uncertainty: the same record must give the same sweeps.
        """
        ...


def sweep_steps() -> tuple[SweepStep, ...]:
    """Return the steps from sweeps to the sphere in their order, those of other packages among them."""
    others = tuple(_step_of(one) for one in brought("colure.steps"))
    at = next(i for i, step in enumerate(STEPS) if step.name == BEFORE)
    return (*STEPS[:at], *others, *STEPS[at:])


def _step_of(one: Brought) -> SweepStep:
    def run(work: Work, on: bool) -> Work:
        if not on:
            return work
        import xarray as xr

        before = work.steady
        after = one.call(xr.Dataset, one.thing.run, before.copy(deep=True), work.chamber, work.device)
        trace = after["trace"].values if "trace" in after else np.empty(0)
        if trace.shape != before["trace"].shape or not np.all(np.isfinite(trace)):
            raise one.refusal(
                f"trace has the shape {trace.shape}, must have {before['trace'].shape} and hold finite numbers"
            )
        dims, attrs = before["trace"].dims, before["trace"].attrs
        steady = before.assign(trace=(dims, np.asarray(trace, complex), attrs))
        return replace(work, steady=with_step(steady, one.name, package=one.package))

    return SweepStep(name=one.name, run=run, suits=_always, needs=f"what {one.package} says", whole_band=True)


def flex_of(record: xr.Dataset, chamber: Chamber) -> CableFlex:
    """Return what the cable does over the travel, from its dedicated turns."""
    return cable_flex(record, passes=2 if chamber.cable is None else chamber.cable.passes)


def gate_of(record: xr.Dataset, chamber: Chamber, device: Device, recipe: Recipe) -> Gate:
    """Return the time gate that a recipe asks for, what it leaves open proposed from the record's sweeps."""
    if chamber.swings_probe:
        raise InputError(["recipe.toml: step 'gate': must be off (on = false): joints carry the probe around the device, and the "
                          "intervals know no gate there"])  # fmt: skip
    table = recipe.step("gate")
    centre, width, response = (
        None if ns is None else 1e-9 * ns for ns in (table.centre_ns, table.width_ns, table.response_ns)
    )
    substituted = chamber.reference.method in WITH_HORN and method_of(record) in WITH_HORN
    return proposed_gate(
        record, chamber.echo_excess_m, centre_s=centre, width_s=width, response_s=response, spread_m=device.reach_m,
        common=common_response(record) if substituted else None,
    )  # fmt: skip
