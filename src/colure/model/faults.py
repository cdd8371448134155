"""The faults that instruments have, by name: what the simulated ones can be told to do."""

from __future__ import annotations

from enum import StrEnum


class FaultKind(StrEnum):
    """One way in which an instrument fails."""

    ANALYZER_HANG = "analyzer-hang"
    ANALYZER_DROP = "analyzer-drop"
    SHORT_BLOCK = "short-block"
    LONG_BLOCK = "long-block"
    NOT_A_NUMBER = "not-a-number"
    INFINITE = "infinite"
    BYTE_ORDER = "byte-order"
    ALL_ZERO = "all-zero"
    FROZEN = "frozen"
    STALE = "stale"
    OVERLOAD = "overload"
    UNLEVELLED = "unlevelled"
    UNLOCKED = "unlocked"
    WRONG_IDENTITY = "wrong-identity"
    LOST_SETTINGS = "lost-settings"
    AXES_HANG = "axes-hang"
    AXES_DROP = "axes-drop"
    AXES_GARBAGE = "axes-garbage"
    STALL = "stall"
    SLOW = "slow"
    READBACK_OFF = "readback-off"
    READBACK_DRIFT = "readback-drift"
    READBACK_JUMP = "readback-jump"
    READBACK_NAN = "readback-nan"
    WRONG_WAY = "wrong-way"
    RESET_TO_ZERO = "reset-to-zero"
    LIMIT_SWITCH = "limit-switch"
    EMERGENCY_STOP = "emergency-stop"
    DOOR_OPEN = "door-open"
    INTERLOCK_OPEN = "interlock-open"
    INTERLOCK_LOST = "interlock-lost"
    SENSOR_LOST = "sensor-lost"
    SOURCE_STAYS_ON = "source-stays-on"
    CONTROLLER_DEAD = "controller-dead"
    PULSE_LOST = "pulse-lost"
    PULSE_DOUBLED = "pulse-doubled"
    LATCH_OFF = "latch-off"
    NEVER_READY = "never-ready"

    @property
    def of_analyzer(self) -> bool:
        """Tell whether the analyzer has it; the axes have the others but those of `ROLE_FAULTS`."""
        return self in ANALYZER_FAULTS


ANALYZER_FAULTS = frozenset(
    {
        FaultKind.ANALYZER_HANG,
        FaultKind.ANALYZER_DROP,
        FaultKind.SHORT_BLOCK,
        FaultKind.LONG_BLOCK,
        FaultKind.NOT_A_NUMBER,
        FaultKind.INFINITE,
        FaultKind.BYTE_ORDER,
        FaultKind.ALL_ZERO,
        FaultKind.FROZEN,
        FaultKind.STALE,
        FaultKind.OVERLOAD,
        FaultKind.UNLEVELLED,
        FaultKind.UNLOCKED,
        FaultKind.WRONG_IDENTITY,
        FaultKind.LOST_SETTINGS,
    }
)
#: Faults of pulses, each counted by its own operations: pulses that the analyzer hears while it keeps sweeps, readings of latched
#: positions, and orders to wait for pulses.
PULSE_FAULTS = frozenset({FaultKind.PULSE_LOST, FaultKind.PULSE_DOUBLED, FaultKind.LATCH_OFF, FaultKind.NEVER_READY})
#: Faults of the smaller instruments, each counted by its own operations: readings of the contact or the sensor, commands to
#: switch the source off, moves of the second axis controller; and those of pulses.
ROLE_FAULTS = PULSE_FAULTS | frozenset(
    {
        FaultKind.INTERLOCK_OPEN,
        FaultKind.INTERLOCK_LOST,
        FaultKind.SENSOR_LOST,
        FaultKind.SOURCE_STAYS_ON,
        FaultKind.CONTROLLER_DEAD,
    }
)
