"""What a signal chain and its surroundings do to readings: as chamber.toml declares it, and as twin.toml makes it true."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from colure.model.loading import Section, number


class Temperature(Section):
    """What the room's temperature does to level and phase: a swing such as that of an air conditioner, and what a sensor logged.

    level_db, phase_deg
        Half of the swing from end to end of what the receiver reads, expanded (k = 2); 0: not declared.
    period_s
        Time of one swing. Ties closer together than half of it follow the swing.
    level_db_per_k, phase_deg_per_k
        What the receiver reads more for every kelvin that the run's sensor logged, expanded (k = 2), sign unknown; 0: not
        declared. Cables and device are taken to follow the sensor at once.
    sensor
        Sensor and quantity that count, `air.temperature_c`; empty: the only temperature of the run.
    """

    level_db: float = number("dB", 0, 20, 0.0)
    phase_deg: float = number("deg", 0, 360, 0.0)
    period_s: float = number("s", 1, 86400, 1200.0)
    level_db_per_k: float = number("dB/K", 0, 10, 0.0)
    phase_deg_per_k: float = number("deg/K", 0, 360, 0.0)
    sensor: str = Field(default="", max_length=80)

    @property
    def of_sensor(self) -> bool:
        """Tell whether a logged temperature says how much level or phase may have moved."""
        return max(self.level_db_per_k, self.phase_deg_per_k) > 0.0


class Jumps(Section):
    """Sudden changes, such as a connector that slips: how often, and how large.

    per_hour
        Mean number in an hour; 0: not declared.
    level_db, phase_deg
        Size of one jump, expanded (k = 2).
    """

    per_hour: float = number("1/h", 0, 1000, 0.0)
    level_db: float = number("dB", 0, 20, 0.2)
    phase_deg: float = number("deg", 0, 180, 5.0)


class Cable(Section):
    """Dedicated turns that show how the moving cable flexes.

    Channel 3 of the switch shorts the cable's far end and reads what comes back; the axes turn there
    and back over the scan's travel, one after the other.

    passes
        How often the wave runs through the cable: 2 in reflection, 1 with a second, resting cable back.
    step_deg
        Angle between the readings of a turn.
    """

    passes: Literal[1, 2] = 2
    step_deg: float = number("deg", 0.5, 45, 10.0)


class OnePort(Section):
    """What the analyzer's own one-port calibration at the device's connector leaves in a measured reflection.

    The device's mismatch is as uncertain as these terms, each of unknown phase, and as the readings scatter (first order of the
    three-term error model, as in EURAMET Calibration Guide 12).

    directivity_db
        Residual directivity: what a perfect match still reads, at most.
    match_db
        Residual source match: what counts with the square of the device's reflection, at most.
    tracking_db
        Residual tracking: error in the level of a total reflection, at most.
    """

    directivity_db: float = number("dB", -80, -10)
    match_db: float = number("dB", -80, -10)
    tracking_db: float = number("dB", 0.001, 3)


class TrueChain(Section):
    """The truth of the simulated signal chain, a part of twin.toml; everything is off unless it is set.

    linearity_db
        What the receiver reads too much for every 10 dB of level; below zero it compresses.
    compression_dbm
        Level at the receiver at which it reads 1 dB too little; less below, in proportion to power.
    crosstalk_db, crosstalk_deg, crosstalk_wander_deg, crosstalk_wander_s
        Leakage that is added to every sweep whatever the axes do: its level, the phase at each port, and a slow swing of that phase.
    standing_wave_db, standing_wave_deg
        Wave that goes from the antenna to the probe, back, and to the probe again, relative to the direct one: its largest level
        over all directions, and the phase of the probe's reflection.
    distance_step_error_mm
        Rms by which a person misses a step of the range's length.
    probe_pointing_deg
        Turn of the probe about the lab's x and y.
    probe_taper_db
        How much lower the true probe's pattern is 10 deg off its axis than the calibrated one.
    reconnect_db, reconnect_deg
        What the reference's sweeps read too much: its connection is not the device's.
    position_error_deg, readback_jitter_deg
        By axis, rms: where the axis stands beside its readout at each sweep, and what the readout scatters.
    since_calibration_db, since_calibration_deg
        What the whole path reads more than on the day of a stored calibration.
    temperature_db, temperature_deg, temperature_period_s, temperature_start_deg
        Swing of level and phase, half of it from end to end, and its phase at the start.
    jumps_per_hour, jump_db, jump_deg
        Sudden changes at random moments: their mean number, and the rms of each.
    directivity_db, directivity_deg, port_match_db, port_match_deg, tracking_db, tracking_deg
        What the calibration of the device's port left: error terms of a measured reflection, and their phases.
    imbalance_db, imbalance_deg
        What the second polarization reads too much and the reference does not show: port 2, or the probe rolled by 90 deg.
    """

    linearity_db: float = number("dB per 10 dB", -2, 2, 0.0)
    compression_dbm: float | None = Field(default=None, ge=-80, le=60, json_schema_extra={"unit": "dBm"})
    crosstalk_db: float = number("dB", -200, 0, -120.0)
    crosstalk_deg: tuple[Annotated[float, Field(ge=-360, le=360)], Annotated[float, Field(ge=-360, le=360)]] = (
        0.0,
        0.0,
    )
    crosstalk_wander_deg: float = number("deg", 0, 720, 0.0)
    crosstalk_wander_s: float = number("s", 1, 1e6, 1800.0)
    standing_wave_db: float | None = Field(default=None, ge=-120, le=-3, json_schema_extra={"unit": "dB"})
    standing_wave_deg: float = number("deg", -360, 360, 0.0)
    distance_step_error_mm: float = number("mm", 0, 100, 0.0)
    probe_pointing_deg: tuple[Annotated[float, Field(ge=-45, le=45)], Annotated[float, Field(ge=-45, le=45)]] = (
        0.0,
        0.0,
    )
    probe_taper_db: float = number("dB", -3, 3, 0.0)
    reconnect_db: float = number("dB", -20, 20, 0.0)
    reconnect_deg: float = number("deg", -360, 360, 0.0)
    position_error_deg: dict[str, Annotated[float, Field(ge=0, le=10)]] = Field(default_factory=dict)
    readback_jitter_deg: dict[str, Annotated[float, Field(ge=0, le=10)]] = Field(default_factory=dict)
    since_calibration_db: float = number("dB", -20, 20, 0.0)
    since_calibration_deg: float = number("deg", -360, 360, 0.0)
    temperature_db: float = number("dB", -20, 20, 0.0)
    temperature_deg: float = number("deg", -360, 360, 0.0)
    temperature_period_s: float = number("s", 1, 1e6, 1200.0)
    temperature_start_deg: float = number("deg", -360, 360, 0.0)
    jumps_per_hour: float = number("1/h", 0, 1000, 0.0)
    jump_db: float = number("dB", 0, 20, 0.2)
    jump_deg: float = number("deg", 0, 180, 5.0)
    imbalance_db: float = number("dB", -20, 20, 0.0)
    imbalance_deg: float = number("deg", -360, 360, 0.0)
    directivity_db: float = number("dB", -200, -3, -200.0)
    directivity_deg: float = number("deg", -360, 360, 0.0)
    port_match_db: float = number("dB", -200, -3, -200.0)
    port_match_deg: float = number("deg", -360, 360, 0.0)
    tracking_db: float = number("dB", -20, 20, 0.0)
    tracking_deg: float = number("deg", -360, 360, 0.0)
