"""A campaign folder: three small TOML files, and runs below it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from colure.errors import InputError
from colure.geometry.conventions import SPEED_OF_LIGHT
from colure.model.bands import with_list
from colure.model.chamber import Chamber, SimulatedChamber
from colure.model.commands import Commands, commands_of, read_commands
from colure.model.device import Device
from colure.model.evaluation import Evaluation
from colure.model.goal import Goal
from colure.model.loading import load, read_toml, validate
from colure.model.recipe import Recipe
from colure.model.simulated_chamber import PROBE_RING
from colure.values import briefly_shown

#: Ludwig's third definition has no direction at 180 deg; the pattern of one component must stay clear of it.
ONE_PASS_REGION_DEG = 120.0
#: Why echoes are not gated where joints carry the probe.
NO_GATE_ON_A_SWING = (
    "goal.toml: gate = true: must be false with chamber.toml positioner.joints that carry the probe around the device: "
    "an echo has no one extra path there"
)


@dataclass(frozen=True)
@briefly_shown
class Campaign:
    """Goal, chamber and device of one folder, checked against each other.

    levels_alone
        Whether the receiver reads power without phase. Its file of words says so, which is read when the campaign is planned.
    """

    folder: Path
    goal: Goal
    chamber: Chamber
    device: Device
    levels_alone: bool = False

    @classmethod
    def load(cls, folder: Path) -> Campaign:
        """Read a campaign folder; raises `InputError` with every fault of every file."""
        faults, tables = list[str](), dict[str, dict[str, Any]]()
        for name in ("goal", "chamber", "device"):
            try:
                tables[name] = read_toml(folder / f"{name}.toml")
            except InputError as error:
                faults += error.faults
        if faults:
            raise InputError(faults)
        return cls.of(folder, tables)

    @classmethod
    def of(cls, folder: Path, tables: Mapping[str, dict[str, Any]]) -> Campaign:
        """Check the tables `goal`, `chamber` and `device` of a folder; raises `InputError` with every fault."""
        tables = {
            **tables,
            "device": _with_coded_names(folder, tables["device"]),
            "goal": with_list(folder, tables["goal"]),
        }
        faults: list[str] = []
        checked: dict[str, object] = {}
        for name, model in (("goal", Goal), ("chamber", Chamber), ("device", Device)):
            try:
                checked[name] = validate(model, tables[name], source=f"{name}.toml")
            except InputError as error:
                faults += error.faults
        if faults:
            raise InputError(faults)
        goal, chamber, device = checked["goal"], checked["chamber"], checked["device"]
        assert isinstance(goal, Goal) and isinstance(chamber, Chamber) and isinstance(device, Device)
        faults = _cross_checks(goal, chamber, device)
        if faults:
            raise InputError(faults)
        return cls(folder, goal, chamber, device)

    def with_chamber(self, chamber: Chamber) -> Campaign:
        """Return the campaign with another chamber; raises `InputError` with every fault if goal and device do not fit it."""
        if faults := _cross_checks(self.goal, chamber, self.device):
            raise InputError(faults)
        return replace(self, chamber=chamber)

    def commands(self) -> Commands | None:
        """Return what the elements of an array are told in its states; None where device.toml names no file of codes."""
        return commands_of(self.device, self.folder)

    def recipe(self) -> Recipe | None:
        """Return what recipe.toml wants done to a record; None if there is none."""
        path = self.folder / "recipe.toml"
        return load(Recipe, path) if path.exists() else None

    def evaluation(self) -> Evaluation:
        """Return what evaluation.toml wants read from the pattern; the usual figures if there is none."""
        path = self.folder / "evaluation.toml"
        return load(Evaluation, path) if path.exists() else Evaluation()

    def simulated(self) -> SimulatedChamber:
        """Return the truth of the simulated chamber (twin.toml; perfect if there is none), with a probe for this band if it names none."""
        path = self.folder / "twin.toml"
        truth = load(SimulatedChamber, path) if path.exists() else SimulatedChamber()
        if "probe_ring_mm" in truth.model_fields_set:
            return truth
        frequency = self.goal.frequency_hz
        ring_m = PROBE_RING * SPEED_OF_LIGHT / (0.5 * float(frequency[0] + frequency[-1]))
        return truth.model_copy(update={"probe_ring_mm": 1e3 * ring_m})


def _with_coded_names(folder: Path, device: dict[str, Any]) -> dict[str, Any]:
    """Return the table of device.toml with the names of the states that its file of codes holds."""
    states = device.get("states")
    if not isinstance(states, dict) or not isinstance(states.get("codes"), str):
        return device
    if "names" in states:
        raise InputError(["device.toml: states.names: must be left out with states.codes, the file names the states"])
    return {**device, "states": {**states, "names": list(read_commands(folder / states["codes"]).names)}}


def _cross_checks(goal: Goal, chamber: Chamber, device: Device) -> list[str]:
    """Return the faults that only show when the files are read together."""
    faults = []
    if 2.0 * device.reach_m > chamber.largest_device_m:
        faults.append(
            f"device.toml: size_mm with offset_mm = {2000 * device.reach_m:.0f}: turning sphere must be at most "
            f"{1000 * chamber.largest_device_m:.0f} mm across (chamber.toml largest_device_m)"
        )
    if device.mass_kg > chamber.positioner.load_limit_kg:
        faults.append(
            f"device.toml: mass_kg = {device.mass_kg:g}: must be at most "
            f"{chamber.positioner.load_limit_kg:g} kg (chamber.toml positioner.load_limit_kg)"
        )
    if device.reach_m >= 0.8 * chamber.range_length_m:
        faults.append(
            f"chamber.toml: range_length_m = {chamber.range_length_m:g}: must be above "
            f"{device.reach_m / 0.8:.3f} m, the device's turning radius is {device.reach_m:.3f} m"
        )
    if goal.scheme == "dual-port" and chamber.probe.ports != 2:
        faults.append(f"goal.toml: scheme = 'dual-port': must be 'two-pass' with {chamber.probe.ports} probe port")
    if goal.scheme in ("two-pass", "one-pass") and chamber.probe.polarization == "circular":
        faults.append(
            f"goal.toml: scheme = '{goal.scheme}': must be 'dual-port' or 'auto' with probe.polarization = 'circular' in chamber.toml: "
            f"one port reads one sense at every roll, half of the field"
        )
    if goal.scheme == "one-pass" and goal.region_deg > ONE_PASS_REGION_DEG:
        faults.append(
            f"goal.toml: region_deg = {goal.region_deg:g}: must be at most {ONE_PASS_REGION_DEG:g} deg with scheme = "
            f"'one-pass': the co-polar direction is undefined at the back"
        )
    single = goal.scheme in ("two-pass", "one-pass") or (goal.scheme == "auto" and chamber.probe.ports == 1)
    if single and chamber.probe.roll is None:
        faults.append(
            "chamber.toml: positioner.joints: no joint rolls the probe: a single-port probe needs one more with carries = 'probe'"
            if chamber.positioner.joints
            else "chamber.toml: probe.roll: missing; a single-port probe needs a roll axis (deg, deg/s)"
        )
    if goal.distance_steps is not None and chamber.positioner.joints:
        faults.append(
            "goal.toml: distance_steps: must be left out with chamber.toml positioner.joints: joints keep one range length"
        )
    if goal.gate and chamber.swings_probe:
        faults.append(NO_GATE_ON_A_SWING)
    faults += _role_checks(chamber, device)
    if device.eirp_dbm is None and chamber.analyzer.power_dbm > device.input_limit_dbm:
        faults.append(
            f"chamber.toml: analyzer.power_dbm = {chamber.analyzer.power_dbm:g}: must be at most "
            f"{device.input_limit_dbm:g} dBm (device.toml input_limit_dbm)"
        )
    return faults


def _role_checks(chamber: Chamber, device: Device) -> list[str]:
    """Return what device and instruments ask of each other and do not find."""
    faults = []
    own = chamber.with_role("state")
    if device.states is not None and device.states.by_instrument and not own:
        faults.append(
            "device.toml: states: needs resource with set, or program, or an instrument with role 'state' in chamber.toml"
        )
    if own and (device.states is None or not device.states.by_instrument):
        faults.append(
            f"chamber.toml: instruments: {own[0].shown_name!r} takes states: device.toml must name them in [states], "
            "without resource and program"
        )
    if device.eirp_dbm is None:
        return faults
    if chamber.with_role("source"):
        faults.append(
            f"device.toml: eirp_dbm = {device.eirp_dbm:g}: a device that transmits by itself takes no source; "
            "remove the instrument with role 'source'"
        )
    if chamber.reference.method != "none":
        faults.append(
            f"chamber.toml: reference.method = {chamber.reference.method!r}: must be 'none' for a device that transmits by "
            "itself (device.toml eirp_dbm): a horn has no signal here"
        )
    return faults
