"""The simulated signal chain: what receiver, cables and their surroundings make of what the probe receives."""

from __future__ import annotations

from functools import cached_property

import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray
from colure.model.signal_chain import TrueChain
from colure.twin.sources import Cluster

#: Below this a receiver reads noise whatever its linearity: wave ratio.
FLOOR = 1e-9
#: 10^(1/10) - 1: what a receiver that reads 1 dB too little at a level has lost of the power there.
ONE_DB = 10.0**0.1 - 1.0
#: Jumps are drawn for so long: a day.
LONGEST_S = 86400.0
#: Sites of an antenna that scatter a wave back, at most.
SCATTERERS = 48
#: Directions in which the strongest scattering is looked for.
LOOKED_AT = 600
#: How differently the sites of an antenna scatter: phase in radians, rms (common practice, no source).
UNEVEN = 0.5
#: Air in the simulated chamber, and how far it swings, degrees Celsius.
AIR_C, AIR_SWING_C = 23.0, 0.6


def air_c(truth: TrueChain, moment_s: float | FloatArray) -> FloatArray:
    """Return the temperature of the air at moments, degrees Celsius: it swings with what drives the level's swing."""
    turn = 2.0 * np.pi * np.asarray(moment_s) / truth.temperature_period_s + np.deg2rad(truth.temperature_start_deg)
    return np.asarray(AIR_C + AIR_SWING_C * np.sin(turn))


class SignalChain:
    """Everything between the antennas and the reading that depends on time, level and port alone."""

    def __init__(self, truth: TrueChain, seed: int) -> None:
        self._truth, self._seed = truth, seed

    def wander(self, time_s: float | FloatArray) -> ComplexArray:
        """Return the factor of temperature and jumps at moments (...)."""
        truth, moments = self._truth, np.asarray(time_s, float)
        start = np.deg2rad(truth.temperature_start_deg)
        swing = np.sin(2.0 * np.pi * moments / truth.temperature_period_s + start)
        log = swing * (np.log(10.0) / 20.0 * truth.temperature_db + 1j * np.deg2rad(truth.temperature_deg))
        if truth.jumps_per_hour > 0.0:
            when, steps = self._jumps
            log = log + np.append(0.0, np.cumsum(steps))[np.searchsorted(when, moments)]
        return np.asarray(np.exp(log))

    @cached_property
    def _jumps(self) -> tuple[FloatArray, ComplexArray]:
        """Moments of the jumps, rising, and their logarithms."""
        truth, random = self._truth, np.random.default_rng((self._seed, 11))
        apart = random.exponential(
            3600.0 / truth.jumps_per_hour, int(4 + 2 * truth.jumps_per_hour * LONGEST_S / 3600.0)
        )
        when = np.cumsum(apart)
        level, phase = random.normal(size=(2, when.size))
        steps = np.log(10.0) / 20.0 * truth.jump_db * level + 1j * np.deg2rad(truth.jump_deg) * phase
        return when, steps

    def reconnected(self) -> complex:
        """Return the factor on the reference's sweeps."""
        return _factor(self._truth.reconnect_db, self._truth.reconnect_deg)

    def since_calibration(self) -> complex:
        """Return the factor on every sweep against the day of a stored calibration."""
        return _factor(self._truth.since_calibration_db, self._truth.since_calibration_deg)

    def second_polarization(self, roll: FloatArray, port: int) -> ComplexArray:
        """Return the factor on a port of the device's sweeps at probe rolls (radians): port 2, or what a rolled probe reads."""
        log = np.log(_factor(self._truth.imbalance_db, self._truth.imbalance_deg))
        return np.asarray(np.exp(log * (np.ones_like(roll) if port == 2 else np.sin(roll) ** 2)))

    def read(self, value: ComplexArray, *, power_dbm: float | FloatArray) -> ComplexArray:
        """Return what a receiver reads (...) that is not linear."""
        truth, out = self._truth, value
        if truth.linearity_db:
            out = out * np.maximum(np.abs(value), FLOOR) ** (truth.linearity_db / 10.0)
        if truth.compression_dbm is not None:
            over = np.abs(value) ** 2 * 10.0 ** ((power_dbm - truth.compression_dbm) / 10.0)
            out = out / np.sqrt(1.0 + ONE_DB * over)
        return np.asarray(out)

    def leakage(self, frequency_hz: FloatArray, time_s: float | FloatArray, port: int) -> ComplexArray:
        """Return what is added to a sweep (..., frequency)."""
        truth, moments = self._truth, np.asarray(time_s, float)
        swing = np.sin(2.0 * np.pi * moments / truth.crosstalk_wander_s)
        phase = np.deg2rad(truth.crosstalk_deg[port - 1] + truth.crosstalk_wander_deg * swing)
        own = np.exp(1j * (0.7 + 1e-9 * frequency_hz))
        return np.asarray(10.0 ** (truth.crosstalk_db / 20.0) * np.exp(1j * phase)[..., None] * own)

    def one_port(self, reflection: ComplexArray) -> ComplexArray:
        """Return what a receiver reads of a reflection (..., frequency) with what its calibration left.

        The whole three-term model: directivity + tracking x reflection / (1 - match x reflection).
        """
        truth = self._truth
        directivity, match, tracking = (
            _factor(truth.directivity_db, truth.directivity_deg),
            _factor(truth.port_match_db, truth.port_match_deg),
            _factor(truth.tracking_db, truth.tracking_deg),
        )
        return np.asarray(directivity + tracking * reflection / (1.0 - match * reflection))

    def off_readout_deg(self, axis: str, time_s: float | FloatArray) -> FloatArray:
        """Return where an axis stands beside its readout at moments (...); the same for all ports of one moment."""
        rms = self._truth.position_error_deg.get(axis, 0.0)
        return self._scatter(rms, axis, time_s)

    def jitter_deg(self, axis: str, time_s: float | FloatArray) -> FloatArray:
        """Return what a readout shows beside where the axis stands, at moments (...)."""
        return self._scatter(self._truth.readback_jitter_deg.get(axis, 0.0), f"{axis} readout", time_s)

    def _scatter(self, rms: float, what: str, time_s: float | FloatArray) -> FloatArray:
        moments = np.asarray(time_s, float)
        if rms == 0.0:
            return np.zeros(moments.shape)
        which = int.from_bytes(what.encode()[:8].ljust(8), "big")
        milliseconds = np.round(1e3 * np.abs(moments)).astype(np.int64).ravel()
        normal = [float(np.random.default_rng((self._seed, which, int(one))).normal()) for one in milliseconds]
        return np.asarray(rms * np.reshape(normal, moments.shape))


def _factor(level_db: float, phase_deg: float) -> complex:
    return complex(10.0 ** (level_db / 20.0) * np.exp(1j * np.deg2rad(phase_deg)))


class StandingWave:
    """The wave that an antenna sends to the probe, that comes back from there and goes to the probe again.

    The antenna's own sites scatter it: waves from all of them add up at the probe with the phase of the way there and back.
    """

    def __init__(self, antenna: Cluster, truth: TrueChain, *, range_m: float, seed: int) -> None:
        count = antenna.position.shape[0]
        # Every antenna reflects with a phase of its own.
        self._own = np.exp(2j * np.pi * np.random.default_rng((seed, 14)).random())
        self._sites = np.unique(np.linspace(0, count - 1, min(count, SCATTERERS)).astype(int))
        random = np.random.default_rng((seed, 13, count))
        uneven = np.exp(1j * random.normal(0.0, UNEVEN, self._sites.size))
        self._k, self._range = antenna.k, range_m
        directions = random.normal(size=(LOOKED_AT, 3))
        directions = np.concatenate([[[0.0, 0.0, 1.0]], directions])
        directions /= np.linalg.norm(directions, axis=1, keepdims=True)
        strongest = np.abs(self._sum(range_m * directions[:, None, :] - antenna.position[self._sites], uneven)).max(
            axis=0
        )
        level = -200.0 if truth.standing_wave_db is None else truth.standing_wave_db
        turn = 10.0 ** (level / 20.0) * np.exp(1j * np.deg2rad(truth.standing_wave_deg))
        self._weights = uneven
        self._strength = turn * self._own / strongest

    def _sum(self, way: FloatArray, weights: ComplexArray) -> ComplexArray:
        """Return the sum over sites (..., frequency) for the ways from sites to the probe (..., site, 3)."""
        longer = np.linalg.norm(way, axis=-1)[..., None, :] - self._range
        return np.asarray(np.exp(-2j * self._k[:, None] * longer) @ weights)

    def factor(self, placed: Cluster, probe_m: FloatArray) -> ComplexArray:
        """Return what the direct wave is multiplied with (..., frequency), for an antenna placed before a probe at (3,)."""
        way = probe_m - placed.position[..., self._sites, :]
        turn = np.exp(-2j * self._k * self._range)
        return np.asarray(1.0 + self._strength * turn * self._sum(way, self._weights))
