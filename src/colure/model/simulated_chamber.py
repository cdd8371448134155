"""The truth of the simulated chamber: what the measurement must cope with."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from colure.model.faults import FaultKind
from colure.model.loading import Millimetres3, Section, number
from colure.model.signal_chain import TrueChain
from colure.model.simulated_device import SimulatedDevice
from colure.model.simulated_states import TrueStates


class TrueJoint(Section):
    """How one joint of the simulated mount really stands: small motions beside what chamber.toml says.

    name
        Joint of chamber.toml.
    zero_deg
        True angle minus the one shown; of a prismatic joint millimetres.
    tilt_deg
        Turn of the joint's line about the lab's x, y and z axes in the reference position, through the joint's point.
    offset_mm
        Shift of the joint's line in the reference position.
    """

    name: str
    zero_deg: float = number("deg", -10, 10, 0.0)
    tilt_deg: Millimetres3 = (0.0, 0.0, 0.0)
    offset_mm: Millimetres3 = (0.0, 0.0, 0.0)


#: Radius of the probe's ring in wavelengths at mid-band that has a gain of 7 dBi.
PROBE_RING = 0.2092


class EchoTable(Section):
    """One reflecting wall of the simulated chamber.

    normal
        Direction of the wall from the axes' intersection; its length does not matter.
    distance_m
        Distance of the wall from the axes' intersection.
    level_db, phase_deg
        Reflection of the wall.
    """

    normal: Millimetres3
    distance_m: float = number("m", 0.1, 100)
    level_db: float = number("dB", -120, 0)
    phase_deg: float = number("deg", -360, 360, 0.0)


class FaultTable(Section):
    """One fault of a simulated instrument.

    at
        Number of the operation that fails: sweeps for the analyzer's faults, moves for the axes', readings for those of
        interlock and sensor, commands to switch off for the source's, moves of the second controller for `controller-dead`.
    kind
        What fails.
    """

    kind: FaultKind
    at: int = Field(ge=1, le=10_000_000, json_schema_extra={"unit": "operations"})


class SimulatedChamber(TrueChain, TrueStates):
    """The truth of the simulated chamber, from twin.toml: what the measurement must cope with.

    cable_flex_deg, cable_flex_other_deg
        Phase of the moving cable over its axis' angle a: times sin a, and times 1 - cos a and sin 2a.
    elevation_zero_deg, axes_square_deg
        Azimuth/elevation positioners: true elevation minus the one shown; the carried axis turned about z against the fixed one.
    joints
        What the joints of a mount really do.
    device_tilt_deg, device_pose_deg
        How the device sits on its mount: about x, and about x, y, z (both together). The reference horn has its own mount.
    drift_swing, drift_swing_deg
        Slow swing on top of the warm-up, as a share of it, once in `drift_time_s`, and its phase at the start.
    device
        What the chamber holds; built from device.toml if left out.
    probe_ring_mm
        Radius of the ring of four sources that the probe is; of a campaign, 0.21 wavelengths at mid-band if left out, which have 7 dBi.
    seed
        Start of the random numbers: same seed, same noise.
    noise
        False: a receiver without noise.
    drift_db, drift_deg, drift_time_s
        Warm-up drift of level and phase, and its time constant.
    echoes
        Reflecting walls.
    theta_zero_deg
        True polar angle minus the one shown.
    roll_axis_tilt_deg
        Tilt of the roll axis out of the plane in which azimuth turns.
    axes_offset_mm
        How far the axes miss each other.
    probe_roll_zero_deg
        True polarization angle of the probe minus the one shown.
    probe_offset_mm
        Where the probe stands beside its declared place.
    probe_cross_polar_db
        Cross-polar level of the probe on its axis.
    reference_offset_mm
        Where the reference horn's mouth really stands from the axes' intersection; as chamber.toml says if left out.
    reference_cross_polar_db, reference_cross_polar_deg
        Cross-polar part of the reference horn, level and phase.
    port2_db, port2_deg
        Second port relative to the first.
    time_factor
        Speed of the simulated clock: 0 does not wait at all, 1 is real time.
    axes_latency_s
        How late the axes' answers come.
    backlash_deg
        Play of each axis by name.
    faults
        Faults at given operations.
    random_faults_per_1000
        Faults at random, by their frequency.
    """

    device: SimulatedDevice | None = None
    seed: int = Field(default=1, ge=0, le=2**31, json_schema_extra={"unit": "integer"})
    noise: bool = True
    drift_db: float = number("dB", 0, 20, 0.0)
    drift_deg: float = number("deg", 0, 360, 0.0)
    drift_time_s: float = number("s", 1, 1e6, 1800.0)
    drift_swing: float = number("1", 0, 5, 0.2)
    drift_swing_deg: float = number("deg", -360, 360, 0.0)
    cable_flex_deg: float = number("deg", 0, 90, 0.0)
    cable_flex_other_deg: tuple[Annotated[float, Field(ge=-90, le=90)], Annotated[float, Field(ge=-90, le=90)]] = (
        0.0,
        0.0,
    )
    echoes: tuple[EchoTable, ...] = ()
    theta_zero_deg: float = number("deg", -10, 10, 0.0)
    roll_axis_tilt_deg: float = number("deg", -10, 10, 0.0)
    elevation_zero_deg: float = number("deg", -10, 10, 0.0)
    axes_square_deg: float = number("deg", -10, 10, 0.0)
    axes_offset_mm: Millimetres3 = (0.0, 0.0, 0.0)
    joints: tuple[TrueJoint, ...] = ()
    device_tilt_deg: float = number("deg", -10, 10, 0.0)
    device_pose_deg: tuple[
        Annotated[float, Field(ge=-10, le=10)],
        Annotated[float, Field(ge=-10, le=10)],
        Annotated[float, Field(ge=-10, le=10)],
    ] = (0.0, 0.0, 0.0)
    probe_roll_zero_deg: float = number("deg", -45, 45, 0.0)
    probe_offset_mm: Millimetres3 = (0.0, 0.0, 0.0)
    probe_cross_polar_db: float = number("dB", -200, 0, -42.0)
    probe_ring_mm: float = number("mm", 0.01, 1000, 2.6)
    reference_offset_mm: Millimetres3 | None = None
    reference_cross_polar_db: float = number("dB", -200, 0, -200.0)
    reference_cross_polar_deg: float = number("deg", -360, 360, 0.0)
    port2_db: float = number("dB", -20, 20, 0.0)
    port2_deg: float = number("deg", -360, 360, 0.0)
    time_factor: float = number("times real", 0, 1000, 0.0)
    axes_latency_s: float = number("s", 0, 10, 0.0)
    backlash_deg: dict[str, Annotated[float, Field(ge=0, le=10)]] = Field(default_factory=dict)
    faults: tuple[FaultTable, ...] = ()
    random_faults_per_1000: float = number("faults per 1000 operations", 0, 1000, 0.0)
