"""The range: positioner, probe, analyzer, reference antenna, and how well they are known."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Annotated, Any, Literal

import numpy as np
from pydantic import Field, model_validator

from colure.geometry.clearance import Clearance
from colure.geometry.conventions import amplitude_from_db
from colure.geometry.joint_errors import direction_tolerance
from colure.geometry.joint_inverse import rolls_probe
from colure.geometry.joints import JointChain
from colure.geometry.solids import Solid, pairs_of
from colure.model.instrument import PROFILES, TIMEOUTS_S, Instrument, faults_of
from colure.model.joints import DEVICE, bodies_of, chain_of, solids_of
from colure.model.loading import Section, number
from colure.model.positioner import Axis as Axis  # noqa: PLC0414 - offered here too
from colure.model.positioner import KeepOut as KeepOut  # noqa: PLC0414
from colure.model.positioner import PositionerTable as PositionerTable  # noqa: PLC0414
from colure.model.positioner import coordinate_of
from colure.model.reference import Reference
from colure.model.signal_chain import Cable as Cable  # noqa: PLC0414
from colure.model.signal_chain import Jumps, OnePort, Temperature
from colure.model.simulated_chamber import EchoTable as EchoTable  # noqa: PLC0414
from colure.model.simulated_chamber import FaultTable as FaultTable  # noqa: PLC0414
from colure.model.simulated_chamber import SimulatedChamber as SimulatedChamber  # noqa: PLC0414

#: While the beam faces a wall, echoes are this much above their mean over all directions (common practice, no source).
WALL_FACING = 1.6


def facing_backwards(gain: float) -> float:
    """Return how much stronger than on average echoes are while the back of a device of this gain (linear) looks to the probe.

    The whole beam then looks to the wall behind the device. Averaged over all directions it counts with one part in its gain, for some
    four walls; the way by the wall behind is longer, but the probe looks straight at it (common practice, no source).
    """
    return max(1.0, 0.9 * math.sqrt(gain / 4.0))


class Probe(Section):
    """The probe antenna: ports, roll axis, gain, purity, and optionally its pattern.

    polarization
        `circular`: both ports together, one for each sense; what each reads of a linear field is measured
        with the reference horn in two directions. `pattern` is still that of the linear port along x that
        the two senses make up.
    pattern_uncertainty_db
        How well the pattern is known 10 deg off the axis, relative to the axis, expanded (k = 2); 0: not declared.
    imbalance_db, imbalance_deg
        What the reference leaves open of the second polarization against the first, expanded (k = 2); 0: not declared.
        The second polarization is port 2, or the probe rolled by 90 deg (its rotary joint).
    ports
        1: one linear polarization at a time; 2: both at once.
    roll
        Axis that turns the probe about its boresight; leave it out if the probe stands still.
    gain_dbi
        Gain of the probe towards the device; it sets the level that is expected, not the result.
    cross_polar_db
        Largest cross-polar level of the probe on its axis; it bounds the polarization figures.
    pattern
        File of the probe's pattern beside chamber.toml, over the whole band. Without it no probe correction is made.
    """

    ports: Literal[1, 2] = 1
    polarization: Literal["linear", "circular"] = "linear"
    roll: Axis | None = None
    gain_dbi: float = number("dBi", -20, 60)
    cross_polar_db: float = number("dB", -100, 0, -35.0)
    pattern: str | None = None
    pattern_uncertainty_db: float = number("dB", 0, 3, 0.0)
    imbalance_db: float = number("dB", 0, 20, 0.0)
    imbalance_deg: float = number("deg", 0, 180, 0.0)


class Analyzer(Section):
    """The vector network analyzer and the path between its ports and the antennas.

    max_power_dbm
        Most that the source gives at `power_dbm`'s place; `power_dbm` itself if left out.
    receiver_limit_dbm
        Level at the receiver above which it is no longer linear.
    isolation_db
        Largest S21 with nothing between the antennas: leakage and crosstalk.
    linearity_db
        Compression of the receiver, dB of error per 10 dB of level (expanded).
    compression_dbm
        Level at the receiver at which it reads 1 dB too little, or less; at other levels the error follows the power.
    source_match_db
        Return loss as S11 of the cable's end that feeds device and reference, where no file says more.
    resource
        Address of the instrument (VISA resource); `twin` is the simulated chamber.
    profile
        Name of the file of words that the instrument understands.
    power_dbm
        Power at the source port.
    if_bandwidth_hz
        Receiver bandwidth. Ten times narrower: 10 dB less noise, ten times slower.
    averages
        Sweeps averaged at every point.
    noise_figure_db
        Noise figure of the receiver with its path; it sets the noise that is expected.
    cable_loss_db
        Loss of both cables together; it sets the level that is expected.
    sweep_overhead_s
        Time that a sweep needs beyond frequencies over bandwidth.
    timeout_s
        How long an answer may take before the line counts as lost.
    """

    resource: str = "twin"
    profile: str = "scpi-analyzer"
    power_dbm: float = number("dBm", -60, 30, 0.0)
    if_bandwidth_hz: float = number("Hz", 1, 10e6, 1000.0)
    max_power_dbm: float | None = Field(default=None, ge=-60, le=60, json_schema_extra={"unit": "dBm"})
    receiver_limit_dbm: float = number("dBm", -80, 60, 0.0)
    isolation_db: float | None = Field(default=None, ge=-200, le=0, json_schema_extra={"unit": "dB"})
    linearity_db: float = number("dB per 10 dB", 0, 2, 0.0)
    compression_dbm: float | None = Field(default=None, ge=-80, le=60, json_schema_extra={"unit": "dBm"})
    source_match_db: float | None = Field(default=None, ge=-80, le=0, json_schema_extra={"unit": "dB"})
    averages: int = Field(default=1, ge=1, le=10000, json_schema_extra={"unit": "sweeps"})
    noise_figure_db: float = number("dB", 0, 60, 25.0)
    cable_loss_db: float = number("dB", 0, 100, 10.0)
    sweep_overhead_s: float = number("s", 0, 10, 0.005)
    timeout_s: float = number("s", 0.1, 600, 10.0)


class AxisController(Section):
    """The controller that turns the axes.

    interlock
        True: the controller must report the door; motion needs it closed.
    resource
        Address of the controller; `twin` is the simulated chamber.
    profile
        Name of the file of words that the controller understands.
    timeout_s
        How long a move may take beyond its calculated duration.
    """

    resource: str = "twin"
    profile: str = "gcode-axes"
    timeout_s: float = number("s", 0.1, 600, 60.0)
    interlock: bool = False


class Reading(Section):
    """What a laser, a level or an indicator said of one adjustment, with its expanded uncertainty (k = 2).

    Values count the way `colure findings` shows them: degrees, or millimetres for the axes' offsets.

    value
        What was read.
    expanded
        Its expanded uncertainty (k = 2).
    run
        Mark of the run that told it (`colure geometry`); that run is not aligned by what it told itself.
    """

    value: float = number("deg or mm", -100, 100)
    expanded: float = number("deg or mm", 1e-4, 100)
    run: str = ""


class Readings(Section):
    """Readings of the set-up instruments; an adjustment that was not read is left out.

    theta_zero
        True polar angle minus the one shown.
    roll_axis_tilt
        Angle between the roll axis and the line to the probe when azimuth reads zero, in the vertical plane.
    axes_offset_x, axes_offset_y
        How far the axes miss each other, and the height of the probe over them.
    probe_roll_zero
        True polarization angle of the probe minus the one shown.
    """

    theta_zero: Reading | None = None
    roll_axis_tilt: Reading | None = None
    axes_offset_x: Reading | None = None
    axes_offset_y: Reading | None = None
    probe_roll_zero: Reading | None = None


class AlignmentTolerance(Section):
    """How far each adjustment may be off: expanded values (k = 2) from the set-up protocol.

    readings
        Where an adjustment was read (laser, level, indicator), the alignment from the data starts from
        there instead of from zero within the tolerance.
    theta_zero_deg
        Zero of the azimuth axis, on every positioner.
    roll_axis_tilt_deg
        Roll over azimuth only: tilt of the roll axis about x.
    elevation_zero_deg, axes_square_deg
        Azimuth/elevation positioners only: zero of the elevation axis, and how far the two axes are off a right angle.
    probe_lateral_mm, probe_pointing_deg
        How far the probe stands beside the range's axis and points beside it, in any direction; 0: not declared.
    axes_offset_mm
        Axes' offset, in each direction.
    probe_roll_zero_deg
        Probe's polarization angle against its readout.
    distance_mm
        Range length.
    device_pose_deg
        How the device sits on its mount, about each axis; it moves angles, not levels.
    """

    theta_zero_deg: float = number("deg", 0, 10, 0.05)
    roll_axis_tilt_deg: float = number("deg", 0, 10, 0.05)
    elevation_zero_deg: float = number("deg", 0, 10, 0.05)
    axes_square_deg: float = number("deg", 0, 10, 0.05)
    axes_offset_mm: float = number("mm", 0, 100, 0.3)
    probe_roll_zero_deg: float = number("deg", 0, 45, 0.2)
    distance_mm: float = number("mm", 0, 1000, 2.0)
    probe_lateral_mm: float = number("mm", 0, 1000, 0.0)
    probe_pointing_deg: float = number("deg", 0, 45, 0.0)
    device_pose_deg: float = number("deg", 0, 10, 0.1)
    readings: Readings = Readings()


class Chamber(Section):
    """Everything that is bolted down, from chamber.toml.

    standing_wave_db
        Wave that goes from the antenna to the probe, back, and to the probe again, relative to the direct one, at most over all
        directions. A quarter of a wavelength of distance turns it from helping to hindering: the level swings by twice as much.
    name
        Name of the range, for reports.
    range_length_m
        Distance from the axes' intersection to the probe's phase centre.
    echo_level_db
        Stray signals of the room, rms over all directions of the scan, below the beam peak of the device on the range.
    room
        File of a learned room beside chamber.toml (`colure room learn`): its echoes are removed from every run that shows them.
    echo_excess_m
        Extra path lengths of known echoes; a time gate is judged against them.
    cable_flex_deg
        Largest phase change by the moving cable over the whole travel.
    door_distance_m
        Distance from the device to the nearest place where a person can stand; for the exposure caution.
    tie_interval_s
        Longest time between two boresight checks.
    tie_drift_db, tie_drift_deg
        Drift between boresight checks at which the next one comes earlier.
    largest_device_m
        Largest diameter that fits; larger devices are refused.
    positioner, probe, analyzer, axes, reference
        Tables of the parts of the range.
    alignment
        Table of set-up tolerances.
    cable
        Table of dedicated turns that show the moving cable's phase; left out: none are made.
    one_port
        Table of what the calibration of the device's port leaves in a measured reflection; left out: none is measured.
    temperature
        Table of the temperature's influence.
    jumps
        Table of sudden changes of level and phase.
    keep_out
        Boxes of readouts that the axes never enter.
    instruments
        List of instruments by role; left out: `analyzer` and `axes` name the two that every range has.
    """

    name: Annotated[str, Field(min_length=1, max_length=200)]
    range_length_m: float = number("m", 0.05, 1000)
    echo_level_db: float = number("dB", -120, 0, -45.0)
    standing_wave_db: float | None = Field(default=None, ge=-120, le=-3, json_schema_extra={"unit": "dB"})
    room: str | None = None
    echo_excess_m: tuple[Annotated[float, Field(gt=0, le=1000)], ...] = ()
    cable_flex_deg: float = number("deg", 0, 90, 1.0)
    door_distance_m: float = number("m", 0.1, 1000, 2.0)
    tie_interval_s: float = number("s", 5, 86400, 180.0)
    tie_drift_db: float = number("dB", 0.001, 20, 0.3)
    tie_drift_deg: float = number("deg", 0.01, 360, 8.0)
    largest_device_m: float = number("m", 0.001, 100, 0.6)
    positioner: PositionerTable
    probe: Probe
    analyzer: Analyzer = Analyzer()
    axes: AxisController = AxisController()
    reference: Reference
    alignment: AlignmentTolerance = AlignmentTolerance()
    cable: Cable | None = None
    one_port: OnePort | None = None
    temperature: Temperature = Temperature()
    jumps: Jumps = Jumps()
    keep_out: tuple[KeepOut, ...] = ()
    instruments: tuple[Instrument, ...] = ()

    @model_validator(mode="before")
    @classmethod
    def _connections(cls, data: Any) -> Any:
        """Fill in `analyzer` and `axes` from the instruments, which alone say how things are connected."""
        if not isinstance(data, dict) or not isinstance(data.get("instruments"), (list, tuple)):
            return data
        out = dict(data)
        for table, role in (("analyzer", "receiver"), ("axes", "axis-controller")):
            tables = [
                one.model_dump(exclude_unset=True) if isinstance(one, Instrument) else one
                for one in data["instruments"]
            ]
            instruments = [one for one in tables if isinstance(one, dict) and one.get("role") == role]
            if instruments and isinstance(data.get(table, {}), dict):
                out[table] = _connected(table, data.get(table, {}), instruments)
        return out

    @model_validator(mode="before")
    @classmethod
    def _joints(cls, data: Any) -> Any:
        """Give the probe of a mount with joints its roll as a coordinate: two joints point, a third can turn the polarization."""
        if not isinstance(data, dict) or not isinstance(data.get("positioner"), dict):
            return data
        joints, probe = data["positioner"].get("joints"), data.get("probe")
        if not isinstance(joints, (list, tuple)) or not joints or not isinstance(probe, dict):
            return data
        roll = coordinate_of(joints) if len(joints) > 2 else None
        told = probe.get("roll")
        told = told.model_dump() if isinstance(told, Axis) else told
        if told not in (None, None if roll is None else roll.model_dump()):
            raise ValueError(
                "probe.roll: remove it: a joint of [[positioner.joints]] with carries = 'probe' rolls the probe"
            )
        return {**data, "probe": {**probe, "roll": roll}}

    @model_validator(mode="after")
    def _joints_alone(self) -> Chamber:
        if not self.positioner.joints:
            return self
        for name, given in (("keep_out", bool(self.keep_out)), ("cable", self.cable is not None)):
            if given:
                way = (
                    "use [[positioner.solids]]"
                    if name == "keep_out"
                    else "it turns azimuth and roll, which this mount does not have"
                )
                raise ValueError(f"{name}: remove it: with [[positioner.joints]] {way}")
        if self.swings_probe and self.echo_excess_m:
            raise ValueError(
                "echo_excess_m: remove it: with joints that carry the probe around the device an echo has no one extra path (m)"
            )
        chain = self.chain
        if self.probe.roll is not None and chain is not None and not rolls_probe(chain):
            object.__setattr__(self, "probe", self.probe.model_copy(update={"roll": None}))
        object.__setattr__(self, "alignment", self._alignment_of_joints())
        return self

    def _alignment_of_joints(self) -> AlignmentTolerance:
        """Return the tolerances of directions and distance that those of the joints come to."""
        chain = self.chain
        assert chain is not None  # only asked of a mount with joints
        along, beside, away = direction_tolerance(chain, tuple(one.tolerance for one in self.positioner.joints))
        tolerances = {
            "theta_zero_deg": float(np.rad2deg(along)),
            "roll_axis_tilt_deg": float(np.rad2deg(beside)),
            "axes_offset_mm": 1e3 * away,
        }
        tolerances = {name: round(value, 6) for name, value in tolerances.items()}
        other = [
            f"{name} = {getattr(self.alignment, name):g} (here {value:.3g})"
            for name, value in tolerances.items()
            if name in self.alignment.model_fields_set and abs(getattr(self.alignment, name) - value) > 1e-6
        ]
        if other:
            raise ValueError(
                f"alignment.{', '.join(other)}: remove {'them' if other[1:] else 'it'}: zero_error_deg, tilt_error_deg and "
                f"offset_error_mm (and axial_error_mm) of [[positioner.joints]] say how far the mount is off"
            )
        if self.alignment.readings != Readings():
            raise ValueError(
                "alignment.readings: remove it: with [[positioner.joints]] nothing is aligned from the data"
            )
        return self.alignment.model_copy(update=tolerances)

    @model_validator(mode="after")
    def _instruments_fit(self) -> Chamber:
        if self.instruments:
            faults = faults_of(self.instruments, self.motor_axes)
            if faults:
                raise ValueError("instruments: " + "; ".join(faults))
        return self

    @model_validator(mode="after")
    def _temperature_logged(self) -> Chamber:
        if self.temperature.of_sensor and not any(one.role == "sensor" for one in self.instruments):
            raise ValueError(
                "temperature.level_db_per_k: needs a sensor whose temperature is logged ([[instruments]] with role = 'sensor'); without "
                "one declare the swing: level_db, phase_deg, period_s (dB/K)"
            )
        return self

    @model_validator(mode="after")
    def _known_axes(self) -> Chamber:
        if self.probe.polarization == "circular":
            self._require_both_senses()
        for sector in self.keep_out:
            for name in sector.intervals:
                if name not in self.axis_table:
                    raise ValueError(
                        f"keep_out {sector.name!r} names axis {name}, known here: {', '.join(self.axis_table)} (deg)"
                    )
        return self

    def _require_both_senses(self) -> None:
        if self.probe.ports != 2:
            raise ValueError(
                "probe.ports = 1: must be 2 with polarization = 'circular': one sense is half of a field (ports)"
            )
        if self.reference.cross_polar_db is None:
            raise ValueError(
                "reference.cross_polar_db: missing; with polarization = 'circular' the horn's purity decides the result (dB)"
            )

    @property
    def echo_amplitude(self) -> float:
        """Declared echoes of one reading over the peak, linear."""
        return float(amplitude_from_db(self.echo_level_db))

    @property
    def facing_echo_amplitude(self) -> float:
        """The same while the beam faces a wall."""
        return self.echo_amplitude * WALL_FACING

    @property
    def chain(self) -> JointChain | None:
        """The joints of the mount as the geometry sees them; None for a positioner with two axes."""
        joints = self.positioner.joints
        return chain_of(joints, self.range_length_m) if joints else None

    @property
    def swings_probe(self) -> bool:
        """Tell whether the mount carries the probe around the device: a joint does more than roll it about its boresight."""
        return any(one.carries == "probe" and not one.rolls_only for one in self.positioner.joints)

    @property
    def driven_table(self) -> dict[str, Axis]:
        """Every axis that a controller reads, by name: the joints where the mount has some, else `axis_table`."""
        joints = self.positioner.joints
        return {one.name: one for one in joints} if joints else self.axis_table

    @property
    def axis_table(self) -> dict[str, Axis]:
        """Every coordinate of plans and records by name: azimuth, roll or elevation, and the probe's roll.

        They are the motor axes, except on a mount with joints (`driven_table`).
        """
        names = self.positioner.geometry.axis_names
        table = {names[0]: self.positioner.azimuth, names[1]: self.positioner.second}
        if self.probe.roll is not None:
            table["probe"] = self.probe.roll
        return table

    @property
    def motor_axes(self) -> tuple[str, ...]:
        """Names of the axes that a controller turns."""
        return tuple(name for name, axis in self.driven_table.items() if not axis.fixed)

    @property
    def outfit(self) -> tuple[Instrument, ...]:
        """Every instrument of the range by role, the tables `analyzer` and `axes` of a file without `instruments` included."""
        if self.instruments:
            return self.instruments
        receiver, axes = self.analyzer, self.axes
        return (
            Instrument(role="receiver", name="analyzer", resource=receiver.resource, profile=receiver.profile,
                       timeout_s=receiver.timeout_s),
            Instrument(role="axis-controller", name="axes", resource=axes.resource, profile=axes.profile,
                       timeout_s=axes.timeout_s, reports_door=axes.interlock),
        )  # fmt: skip

    def with_role(self, role: str) -> tuple[Instrument, ...]:
        """Return the instruments that have a role."""
        return tuple(one for one in self.outfit if one.role == role)


def _connected(table: str, given: dict[str, Any], instruments: list[dict[str, Any]]) -> dict[str, Any]:
    """Return the table `analyzer` or `axes` with what the first instrument of that kind says of the connection."""
    first = instruments[0]
    role = str(first["role"])
    values = {
        "resource": first.get("resource", "twin"),
        "profile": first.get("profile") or PROFILES[role],
        "timeout_s": first.get("timeout_s") or TIMEOUTS_S[role],
    }
    if table == "axes":
        values["interlock"] = any(one.get("reports_door", False) for one in instruments)
    for name, value in values.items():
        if name in given and given[name] != value:
            raise ValueError(
                f"[{table}] {name} = {given[name]!r}: instruments say {value!r}; remove it here, they say how it is connected"
            )
    return {**given, **values}


def clearance_of(chamber: Chamber, *others: Solid) -> Clearance | None:
    """Return what tells whether a mount's solids stay apart, and those that stand on its bodies for a while; None without solids."""
    positioner, chain = chamber.positioner, chamber.chain
    if chain is None or not positioner.solids:
        return None
    solids, allowed = solids_of(positioner.joints, positioner.solids)
    bodies = bodies_of(positioner.joints)
    own = [replace(one, body=bodies[DEVICE]) for one in others]
    return Clearance(chain, pairs_of([*solids, *own], allowed))
