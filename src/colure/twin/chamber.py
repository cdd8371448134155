"""The simulated chamber: what the analyzer would read, with everything a real range adds."""

from __future__ import annotations

import threading
from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Literal

import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray
from colure.geometry.kinematics import Misalignment, device_to_lab, probe_to_lab
from colure.geometry.rotations import RigidMotion, from_rotation_vector
from colure.model.chamber import Chamber, SimulatedChamber
from colure.twin.antennas import horn, probe_ports
from colure.twin.devices import DeviceMaker, true_reflection
from colure.twin.linkage import Linkage, require_joints
from colure.twin.signal_chain import SignalChain, StandingWave, air_c
from colure.twin.sources import Cluster, transmission
from colure.twin.states import in_state

DEVICE_CHANNEL = 1
REFERENCE_CHANNEL = 2
#: The moving cable shorted at its far end: the wave runs through it twice.
CABLE_CHANNEL = 3


#: Controller readouts in degrees by axis name; arrays of one shape are many positions at once.
Readouts = Mapping[str, float | FloatArray]
_Antennas = tuple[dict[int, tuple[Cluster, FloatArray]], list[tuple[Cluster, FloatArray]]]


def misalignment_of(truth: SimulatedChamber) -> Misalignment:
    """Return the rigid errors declared in twin.toml."""
    offset = tuple(1e-3 * x for x in truth.axes_offset_mm)
    probe = tuple(1e-3 * x for x in truth.probe_offset_mm)
    return Misalignment(
        carried_axis_tilt=(np.deg2rad(truth.roll_axis_tilt_deg), 0.0, np.deg2rad(truth.axes_square_deg)),
        other_zero=float(np.deg2rad(truth.elevation_zero_deg)),
        carried_axis_offset=(offset[0], offset[1], offset[2]),
        device_tilt=(
            float(np.deg2rad(truth.device_tilt_deg + truth.device_pose_deg[0])),
            float(np.deg2rad(truth.device_pose_deg[1])),
            float(np.deg2rad(truth.device_pose_deg[2])),
        ),
        azimuth_zero=float(np.deg2rad(truth.theta_zero_deg)),
        probe_offset=(probe[0], probe[1], probe[2]),
        probe_roll_zero=float(np.deg2rad(truth.probe_roll_zero_deg)),
        probe_tilt=(np.deg2rad(truth.probe_pointing_deg[0]), np.deg2rad(truth.probe_pointing_deg[1]), 0.0),
    )


class SimulatedRange:
    """Antennas, walls, drift, cables and receiver of one chamber around one device; thread-safe.

    Frequencies may be set anew at any time; antennas are rebuilt for them.
    """

    def __init__(
        self,
        chamber: Chamber,
        truth: SimulatedChamber,
        device_of: DeviceMaker,
        responses: ComplexArray | None = None,
    ) -> None:
        self._device_of = device_of
        #: What every element answers in every state (state, element); None where states are no commands to elements.
        self._responses = responses
        self.chamber = chamber
        self.truth = truth
        self._misalignment = misalignment_of(truth)
        require_joints(chamber, truth)
        self._linkage = Linkage(chamber, truth) if chamber.positioner.joints else None
        self._chain = SignalChain(truth, truth.seed)
        self._random = np.random.default_rng(truth.seed)
        self._of_reflections = np.random.default_rng((truth.seed, 18))
        self._lock = threading.Lock()
        self._antennas: dict[int, tuple[Cluster, FloatArray]] = {}
        self._ports: list[tuple[Cluster, FloatArray]] = []
        self._frequency = np.zeros(0)
        self._known: dict[bytes, _Antennas] = {}
        #: Which of its states the device is in.
        self.state = 0
        #: What hangs on the device's cable: `device`, or the `reference` that a person put in its place.
        self.mounted: Literal["device", "reference"] = "device"
        #: How far what a person moved stands from its first place, and what it is.
        self._moved_m, self._moves = 0.0, "probe"

    def move(self, what: str, step_m: float) -> None:
        """Move the probe or the positioner to a step from its first place, with the error that a person makes."""
        error = 0.0
        if step_m:
            key = (self.truth.seed, 31, round(1e7 * abs(step_m)))
            error = 1e-3 * self.truth.distance_step_error_mm * float(np.random.default_rng(key).normal())
        self._moves, self._moved_m = what, step_m + error

    @property
    def _range_m(self) -> float:
        """Distance from the axes' intersection to the probe as it really is."""
        return self.chamber.range_length_m + self._moved_m

    def set_frequencies(self, frequency_hz: FloatArray) -> None:
        """Rebuild the antennas for a list of frequencies."""
        if np.array_equal(frequency_hz, self._frequency):
            return
        key = np.asarray(frequency_hz, float).tobytes()
        if key not in self._known:
            if len(self._known) > 256:
                self._known.clear()
            self._known[key] = self._build(frequency_hz)
        self._antennas, self._ports = self._known[key]
        self._frequency = np.array(frequency_hz)

    def _build(self, frequency_hz: FloatArray) -> _Antennas:
        reference = self.chamber.reference
        device = self._device_of(frequency_hz)
        if not reference.absolute:
            return {DEVICE_CHANNEL: (device, device.power()), **self._in_states(device)}, self._probe(frequency_hz)
        a, b, slant_e, slant_h = reference.sides_m
        standard = horn(
            frequency_hz,
            a_m=a,
            b_m=b,
            slant_e_m=slant_e,
            slant_h_m=slant_h,
            cross=10.0 ** (self.truth.reference_cross_polar_db / 20.0)
            * complex(np.exp(1j * np.deg2rad(self.truth.reference_cross_polar_deg))),
        )
        antennas = {
            DEVICE_CHANNEL: (device, device.power()),
            REFERENCE_CHANNEL: (standard, standard.power()),
            **self._in_states(device),
        }
        return antennas, self._probe(frequency_hz)

    def _in_states(self, device: Cluster) -> dict[int, tuple[Cluster, FloatArray]]:
        """Return the device in each of its states, under -1 - index."""
        count = len(self.truth.state_steer_deg if self._responses is None else self._responses)
        made = [in_state(device, index, self.truth, self._responses) for index in range(count)]
        return {-1 - index: (one, one.power()) for index, one in enumerate(made)}

    def _probe(self, frequency_hz: FloatArray) -> list[tuple[Cluster, FloatArray]]:
        ports = probe_ports(
            frequency_hz,
            ring_m=1e-3 * self.truth.probe_ring_mm,
            cross_polar_db=self.truth.probe_cross_polar_db,
            circular=self.chamber.probe.polarization == "circular",
            taper_db=self.truth.probe_taper_db,
        )
        return [(port, port.power()) for port in ports]

    def air_c(self, moment: float) -> float:
        """Return the temperature of the air at a moment, degrees Celsius: it swings with what drives the level's swing."""
        return float(air_c(self.truth, moment))

    def reference_gain_dbi(self) -> FloatArray:
        """Return the gain of the simulated reference horn on its axis, (frequency,)."""
        on_axis = self._antennas[REFERENCE_CHANNEL][0].far_field([[0.0, 0.0, 1.0]])[:, 0]
        return np.asarray(10.0 * np.log10(np.sum(np.abs(on_axis) ** 2, axis=-1)))

    def angles_deg(self, readouts_deg: Readouts) -> dict[str, FloatArray]:
        """Return the convention's angles for controller readouts."""
        return {name: axis.map.angle_deg(readouts_deg[name]) for name, axis in self.chamber.driven_table.items()}

    def received(
        self, readouts_deg: Readouts, port: int, *, channel: int = DEVICE_CHANNEL, moving: bool = False
    ) -> ComplexArray:
        """Return S21 of the antennas and walls alone, shape (..., frequency) for readouts of shape (...).

        moving
            The readouts (frequency,) are those at every frequency's own moment; shape (frequency,).
        """
        in_state = channel == DEVICE_CHANNEL and -1 - self.state in self._antennas
        antenna, power = self._antennas[-1 - self.state if in_state else channel]
        motion, probe = self._frames(readouts_deg, with_pose=channel != REFERENCE_CHANNEL)
        if channel == REFERENCE_CHANNEL:
            antenna = self._beside(antenna)
        placed = antenna.moved(motion)
        receiver, receiver_power = self._ports[port - 1]
        direct = transmission(
            self._with_walls(placed),
            receiver.moved(probe),
            source_power=power,
            receiver_power=receiver_power,
            moving=moving,
        )
        if self.truth.standing_wave_db is None:
            return direct
        there_and_back = StandingWave(
            antenna, self.truth, range_m=self.chamber.range_length_m, seed=self.truth.seed + channel
        )
        place = np.array([0.0, 0.0, self._range_m]) + np.asarray(self._misalignment.probe_offset)
        if self._linkage is not None:
            place = probe.translation[..., None, :]
        return np.asarray(direct * there_and_back.factor(placed, place))

    def _frames(self, readouts_deg: Readouts, *, with_pose: bool) -> tuple[RigidMotion, RigidMotion]:
        """Return where device frame and probe really stand in the lab; `with_pose` as the device sits on its mount."""
        angles, off = self.angles_deg(readouts_deg), self._misalignment
        if not with_pose:
            off = replace(off, device_tilt=(0.0, 0.0, 0.0))
        if self._linkage is not None:
            device, probe = self._linkage.frames(readouts_deg)
            mounted = RigidMotion.of(rotation=from_rotation_vector(off.device_tilt), shift=off.device_offset)
            held = probe_to_lab(distance=self._range_m, roll=0.0, misalignment=off)
            return mounted.then(device), held.then(probe)
        geometry = self.chamber.positioner.geometry
        first, second = (angles[name] for name in geometry.axis_names)
        motion = device_to_lab(geometry, first=np.deg2rad(first), second=np.deg2rad(second), misalignment=off)
        roll = np.deg2rad(angles.get("probe", np.zeros(np.shape(first))))
        return motion, probe_to_lab(distance=self._range_m, roll=roll, misalignment=off)

    def _cable_angle(self, readouts_deg: Readouts) -> tuple[FloatArray, FloatArray]:
        """Return the angle that bends the moving cable and the probe's roll, radians: of a mount with joints the polar angle."""
        if self._linkage is None:
            angles = self.angles_deg(readouts_deg)
            first = angles[self.chamber.positioner.geometry.axis_names[0]]
            return np.deg2rad(first), np.deg2rad(angles.get("probe", np.zeros(np.shape(first))))
        device, probe = self._linkage.frames(readouts_deg)
        along = np.sum(device.rotation[..., :, 2] * probe.rotation[..., :, 2], axis=-1)
        roll = self._linkage.roll_deg(readouts_deg)
        return np.arccos(np.clip(along, -1.0, 1.0)), np.deg2rad(np.broadcast_to(roll, along.shape))

    def _beside(self, standard: Cluster) -> Cluster:
        """Return the reference where it really stands: as twin.toml says, or else as chamber.toml does."""
        told = self.truth.reference_offset_mm
        place = 1e-3 * np.asarray(self.chamber.reference.offset_mm if told is None else told, float)
        return standard.moved(RigidMotion(np.eye(3), place)) if place.any() else standard

    def _with_walls(self, antenna: Cluster) -> Cluster:
        """Return the antenna together with its images in every wall."""
        parts = [antenna]
        for wall in self.truth.echoes:
            reflection = 10 ** (wall.level_db / 20.0) * np.exp(1j * np.deg2rad(wall.phase_deg))
            normal = np.asarray(wall.normal) / np.linalg.norm(wall.normal)
            # Walls stay where they are: seen from a positioner that was moved back, they are elsewhere.
            away = self._moved_m * float(normal[2]) if self._moves == "positioner" else 0.0
            parts.append(antenna.mirrored(normal, wall.distance_m + away, complex(reflection)))
        return Cluster(
            antenna.frequency_hz,
            np.concatenate([p.position for p in parts], axis=-2),
            np.concatenate([p.electric for p in parts], axis=-2),
            np.concatenate([p.magnetic for p in parts], axis=-2),
            np.concatenate([p.weights for p in parts], axis=1),
            antenna.efficiency,
        )

    def sweep(
        self,
        readouts_deg: Readouts,
        *,
        port: int,
        channel: int,
        time_s: float | FloatArray,
        power_dbm: float | FloatArray,
        if_bandwidth_hz: float | FloatArray,
        on_the_way: Sequence[Readouts] | None = None,
    ) -> ComplexArray:
        """Return sweeps as the analyzer reads them: path, drift, cable, leakage, noise; (..., frequency).

        power_dbm, if_bandwidth_hz
            One for all frequencies, or (frequency,).
        on_the_way
            True positions at every frequency's own moment, if the axes move meanwhile.
        """
        truth, chain = self.truth, self._chain
        if channel == DEVICE_CHANNEL and self.mounted == "reference":
            channel = REFERENCE_CHANNEL
        if channel == DEVICE_CHANNEL and truth.position_error_deg:
            readouts_deg = self._off_readouts(readouts_deg, time_s)
            on_the_way = None if on_the_way is None else [self._off_readouts(one, time_s) for one in on_the_way]
        if channel == CABLE_CHANNEL:
            clean = self._shorted(np.shape(time_s))
        elif on_the_way is None:
            clean = self.received(readouts_deg, port, channel=channel)
        else:
            clean = self._received_moving(on_the_way, port, channel)
        bent, roll = self._cable_angle(readouts_deg)
        flex = np.exp(1j * np.deg2rad(self._bend_deg(bent)))
        if port == 2:
            clean = clean * 10 ** (truth.port2_db / 20.0) * np.exp(1j * np.deg2rad(truth.port2_deg))
        if channel == CABLE_CHANNEL:
            flex = flex**2
        if channel == REFERENCE_CHANNEL:
            clean = clean * chain.reconnected()
        elif channel == DEVICE_CHANNEL:
            clean = clean * chain.second_polarization(np.asarray(roll), port)[..., None]
        value = (
            clean
            * self._path()
            * chain.since_calibration()
            * (self._drift(time_s) * chain.wander(time_s) * flex)[..., None]
        )
        value = chain.read(value + chain.leakage(self._frequency, time_s, port), power_dbm=power_dbm)
        if truth.noise:
            return self._noisy(value, power_dbm, if_bandwidth_hz, self._random)
        # No two places ever give the same bits, as with any real receiver: a dither at -240 dB.
        place = np.sum([12.9898 * (i + 1) * np.asarray(v) for i, v in enumerate(readouts_deg.values())], axis=0)
        wave = np.sin(place[..., None] + 78.233 * (1.0 + np.arange(self._frequency.size)))
        return np.asarray(value * (1.0 + 1e-12 * wave))

    def reflected(
        self,
        readouts_deg: Readouts,
        *,
        time_s: float | FloatArray,
        power_dbm: float | FloatArray,
        if_bandwidth_hz: float | FloatArray,
    ) -> ComplexArray:
        """Return the device's reflection as the analyzer reads it, (..., frequency).

        The wave runs through the moving cable twice; level and phase of the path drift as those of the pattern's sweeps do.
        """
        told = true_reflection(self.truth.device, self._frequency)
        read = self._chain.one_port(np.broadcast_to(told, (*np.shape(time_s), told.size)))
        flex = np.exp(2j * np.deg2rad(self._bend_deg(self._cable_angle(readouts_deg)[0])))
        value = read * (self._drift(time_s) * self._chain.wander(time_s) * flex)[..., None]
        if self.truth.noise:
            return self._noisy(value, power_dbm, if_bandwidth_hz, self._of_reflections)
        # See `sweep`: no two places and states give the same bits.
        place = np.sum([12.9898 * (i + 1) * np.asarray(v) for i, v in enumerate(readouts_deg.values())], axis=0)
        wave = np.sin((place + 1.7 * self.state)[..., None] + 45.164 * (1.0 + np.arange(self._frequency.size)))
        return np.asarray(value + 1e-12 * wave)

    def _noisy(
        self,
        value: ComplexArray,
        power_dbm: float | FloatArray,
        if_bandwidth_hz: float | FloatArray,
        random: np.random.Generator,
    ) -> ComplexArray:
        """Return wave ratios with the receiver's noise."""
        noise_dbm = -173.975 + self.chamber.analyzer.noise_figure_db + 10.0 * np.log10(if_bandwidth_hz)
        sigma = 10 ** ((noise_dbm - power_dbm) / 20.0) / np.sqrt(2.0)
        with self._lock:
            normal = random.normal(size=(2, *value.shape))
        return np.asarray(value + sigma * (normal[0] + 1j * normal[1]))

    def _off_readouts(self, readouts_deg: Readouts, time_s: float | FloatArray) -> Readouts:
        """Return readouts that would be right where the axes really stand."""
        return {name: value + self._chain.off_readout_deg(name, time_s) for name, value in readouts_deg.items()}

    def _received_moving(self, places: Sequence[Readouts], port: int, channel: int) -> ComplexArray:
        """Return S21 with every frequency taken at its own place."""
        one_point = np.ndim(next(iter(places[0].values()))) == 0
        if one_point and self.truth.standing_wave_db is None:
            together = {name: np.array([place[name] for place in places], float) for name in places[0]}
            return self.received(together, port, channel=channel, moving=True)
        whole, antennas, ports = self._frequency, self._antennas, self._ports
        out = np.empty((*np.shape(next(iter(places[0].values()))), whole.size), complex)
        try:
            for index, place in enumerate(places):
                self.set_frequencies(whole[index : index + 1])
                out[..., index] = self.received(place, port, channel=channel)[..., 0]
        finally:
            self._frequency, self._antennas, self._ports = whole, antennas, ports
        return out

    def _bend_deg(self, angle: FloatArray) -> FloatArray:
        """Return the phase of the moving cable over its axis' angle (rad), degrees."""
        other = self.truth.cable_flex_other_deg
        bend = (
            self.truth.cable_flex_deg * np.sin(angle)
            + other[0] * (1.0 - np.cos(angle))
            + other[1] * np.sin(2.0 * angle)
        )
        return np.asarray(bend)

    def _shorted(self, shape: tuple[int, ...]) -> ComplexArray:
        """What comes back from a short at the cable's end: inverted, coupled out at -10 dB."""
        return np.full((*shape, self._frequency.size), -(10.0**-0.5) * 0.9, complex)

    def _path(self) -> ComplexArray:
        """Fixed cables: loss, a little ripple, 4 m of electrical length."""
        ripple = 0.3 * np.sin(2.0 * np.pi * self._frequency / 180e6)
        loss = 10 ** ((-self.chamber.analyzer.cable_loss_db + ripple) / 20.0)
        return np.asarray(loss * np.exp(-2j * np.pi * self._frequency * 4.0 / 299_792_458.0))

    def _drift(self, time_s: float | FloatArray) -> ComplexArray:
        """Warm-up plus a slow swing, in dB and degrees."""
        truth = self.truth
        start = np.deg2rad(truth.drift_swing_deg)
        swing = np.sin(2.0 * np.pi * time_s / truth.drift_time_s + start) - np.sin(start)
        shape = 1.0 - np.exp(-time_s / truth.drift_time_s) + truth.drift_swing * swing
        return np.asarray(10 ** (-truth.drift_db * shape / 20.0) * np.exp(1j * np.deg2rad(truth.drift_deg) * shape))
