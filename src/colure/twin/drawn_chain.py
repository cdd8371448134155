"""A signal chain drawn from what a chamber declares of its own: half of what is expanded (k = 2) is the standard deviation."""

from __future__ import annotations

from typing import Any

import numpy as np

from colure.model.chamber import Chamber
from colure.model.signal_chain import OnePort
from colure.twin.signal_chain import AIR_SWING_C

#: A declared bound of a leakage or a standing wave is met within so many dB (common practice, no source).
BELOW_BOUND_DB = 3.0
#: Receivers compress at up to so much more than their data sheet promises (common practice, no source).
BETTER_THAN_PROMISED_DB = 6.0
#: Share of a declared position error that lies in the axis; the rest lies in its readout. Their squares add up to one.
IN_AXIS, IN_READOUT = 0.8, 0.6


def draw_chain(chamber: Chamber, seed: int) -> dict[str, Any]:
    """Return drawn values of `TrueChain`'s fields; what is not declared stays off."""
    random = np.random.default_rng((seed, 7))
    alignment, probe, reference, analyzer = chamber.alignment, chamber.probe, chamber.reference, chamber.analyzer

    def draw(expanded: float) -> float:
        return float(np.clip(random.normal(0.0, 0.5 * expanded), -1.5 * expanded, 1.5 * expanded))

    def turn() -> float:
        return float(random.uniform(-180.0, 180.0))

    def bound(level_db: float) -> float:
        return level_db - float(random.uniform(0.0, BELOW_BOUND_DB))

    def aside(expanded: float) -> tuple[float, float]:
        """In any direction: one of two coordinates has sqrt(1/2) of the whole."""
        return draw(expanded) / 2**0.5, draw(expanded) / 2**0.5

    lateral = aside(alignment.probe_lateral_mm)
    axes = chamber.driven_table
    drawn: dict[str, Any] = {
        "linearity_db": draw(analyzer.linearity_db),
        "crosstalk_deg": (turn(), turn()),
        "crosstalk_wander_deg": float(random.uniform(0.0, 180.0)),
        "crosstalk_wander_s": 1800.0 * float(2.0 ** random.uniform(-1.0, 1.0)),
        "standing_wave_deg": turn(),
        "probe_offset_mm": (*lateral, 0.0),
        "probe_pointing_deg": aside(alignment.probe_pointing_deg),
        "probe_taper_db": draw(probe.pattern_uncertainty_db),
        "reconnect_db": draw(reference.reconnect_db),
        "reconnect_deg": draw(reference.reconnect_deg),
        "position_error_deg": {n: 0.5 * IN_AXIS * a.position_error_deg for n, a in axes.items()},
        "readback_jitter_deg": {n: 0.5 * IN_READOUT * a.position_error_deg for n, a in axes.items()},
        "temperature_db": draw(chamber.temperature.level_db),
        "temperature_deg": draw(chamber.temperature.phase_deg),
        "temperature_period_s": chamber.temperature.period_s * float(2.0 ** random.uniform(-0.5, 0.5)),
        "temperature_start_deg": turn(),
        "jumps_per_hour": chamber.jumps.per_hour,
        "jump_db": 0.5 * chamber.jumps.level_db,
        "jump_deg": 0.5 * chamber.jumps.phase_deg,
        "imbalance_db": draw(probe.imbalance_db),
        "imbalance_deg": draw(probe.imbalance_deg),
    }
    if chamber.temperature.of_sensor:
        # The air, and what it does, swing by so much: the sensor sees it.
        drawn["temperature_db"] += AIR_SWING_C * draw(chamber.temperature.level_db_per_k)
        drawn["temperature_deg"] += AIR_SWING_C * draw(chamber.temperature.phase_deg_per_k)
    # What nobody declared is not drawn; the budget says that it is not included.
    drawn["crosstalk_db"] = -200.0 if analyzer.isolation_db is None else max(-200.0, bound(analyzer.isolation_db))
    if analyzer.compression_dbm is not None:
        better_db = float(random.uniform(0.0, BETTER_THAN_PROMISED_DB))
        drawn["compression_dbm"] = min(60.0, analyzer.compression_dbm + better_db)
    if chamber.standing_wave_db is not None:
        drawn["standing_wave_db"] = max(-120.0, bound(chamber.standing_wave_db))
    if chamber.one_port is not None:
        drawn |= _one_port(chamber.one_port, seed)
    for name in ("position_error_deg", "readback_jitter_deg"):
        if not any(a.position_error_deg for a in axes.values()):
            drawn[name] = {}
    return drawn


def _one_port(declared: OnePort, seed: int) -> dict[str, Any]:
    """Draw what a one-port calibration left; a stream of its own, so that nothing else is drawn otherwise."""
    random = np.random.default_rng((seed, 17))
    below, turns = random.uniform(0.0, BELOW_BOUND_DB, 2), random.uniform(-180.0, 180.0, 3)
    # An error of the level of any phase: partly level, partly phase.
    share = (10.0 ** (declared.tracking_db / 20.0) - 1.0) * float(random.uniform(0.5, 1.0))
    tracking = 1.0 + share * np.exp(1j * np.deg2rad(turns[2]))
    return {
        "directivity_db": declared.directivity_db - float(below[0]),
        "directivity_deg": float(turns[0]),
        "port_match_db": declared.match_db - float(below[1]),
        "port_match_deg": float(turns[1]),
        "tracking_db": float(20.0 * np.log10(abs(tracking))),
        "tracking_deg": float(np.rad2deg(np.angle(tracking))),
    }
