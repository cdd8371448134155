"""What the engine asks of any analyzer, any axis controller and any device state switch."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any, Protocol, runtime_checkable

from colure.errors import InstrumentError as InstrumentError  # noqa: PLC0414 - the room's front offers it too
from colure.geometry.conventions import ComplexArray, FloatArray
from colure.model.bands import Segment, told_segments
from colure.values import holds_arrays


class LostError(InstrumentError):
    """No answer, or the connection broke: the line must be cleared or opened anew."""


class RefusedError(InstrumentError):
    """The instrument understood and refused; the connection is still in step."""


class HeldError(RefusedError):
    """The axes are held: a stop was commanded and motion must be released by a person."""


class DoorOpenError(InstrumentError):
    """The interlock says that somebody may be inside; closing it alone never starts motion."""


@dataclass(frozen=True, kw_only=True)
class SweepSettings:
    """Trace settings, the same for every point of a plan.

    segments
        Parts of the sweep with a bandwidth and a power of their own, rising; empty for one even sweep. `start_hz`, `stop_hz`
        and `points` are then those of all together. A driver that takes them says so: `takes_segments = True`.
    """

    start_hz: float
    stop_hz: float
    points: int
    if_bandwidth_hz: float
    power_dbm: float
    averages: int = 1
    segments: tuple[Segment, ...] = ()

    @classmethod
    def of_plan(cls, settings: Mapping[str, Any]) -> SweepSettings:
        """Return the trace settings that a plan's settings hold."""
        names = ("start_hz", "stop_hz", "points", "if_bandwidth_hz", "power_dbm", "averages")
        return cls(**{name: settings[name] for name in names}, segments=told_segments(settings))

    @property
    def frequency_hz(self) -> FloatArray:
        """The frequencies of one trace."""
        import numpy as np

        if self.segments:
            return np.concatenate([one.frequency_hz for one in self.segments])
        return np.linspace(self.start_hz, self.stop_hz, self.points)


@dataclass(frozen=True)
@holds_arrays
class Sweep:
    """One sweep: complex trace (frequency, port), and what the analyzer said about it (`Flag` bits)."""

    trace: ComplexArray
    flags: int


@dataclass(frozen=True)
class AxesStatus:
    """What a controller says at one moment.

    door_open
        None if the controller does not report the interlock.
    door
        Which contact says that the door is open, where it is not the controller.
    alarm
        Words of a limit switch, an emergency stop or a drive fault; empty if none.
    """

    positions_deg: dict[str, float]
    moving: bool
    held: bool = False
    door_open: bool | None = None
    alarm: str = ""
    door: str = ""


#: Called with every status while axes move, or with None where a controller that is busy moving
#: cannot be asked; raises to end the motion.
Watch = Callable[[AxesStatus | None], None]


def unheard() -> None:
    """Nobody listens for signs of life."""


def unwatched(status: AxesStatus | None) -> None:
    """Watch nothing."""


class AnalyzerDriver(Protocol):
    """A receiver that sweeps and hands over traces."""

    receiver: str

    def identity(self) -> str: ...
    def configure(self, settings: SweepSettings, ports: tuple[int, ...]) -> dict[str, Any]: ...
    def trigger(self, *, external: bool) -> None: ...
    def route(self, channel: int) -> None: ...
    def sweep(self) -> Sweep: ...
    def clock_s(self) -> float: ...
    def safe(self) -> None: ...
    def reconnect(self) -> None: ...
    def close(self) -> None: ...


def require_segments(analyzer: AnalyzerDriver, settings: SweepSettings) -> None:
    """Raise `InstrumentError` if a sweep has segments and the receiver's driver does not say that it takes them."""
    if settings.segments and not getattr(analyzer, "takes_segments", False):
        raise InstrumentError(
            f"the receiver's driver lacks `takes_segments`: it cannot sweep {len(settings.segments)} segments; give goal.toml one "
            "evenly spaced band"
        )


class AxesDriver(Protocol):
    """A controller that moves axes; `hold` and `status` never queue behind a move.

    coordinated
        True if all axes of one move start and end together, on a straight line of readouts.
    one_by_one
        True if one axis may wait for another, or rest on its way.
    heard
        Called with every answer of the controller: a sign of life on a slow line.
    """

    coordinated: bool
    one_by_one: bool
    heard: Callable[[], None]

    def identity(self) -> str: ...
    def begin(
        self,
        targets_deg: Mapping[str, float],
        *,
        per_s: float | None = None,
        from_deg: Mapping[str, float] | None = None,
    ) -> None: ...
    def finish(self, settle_s: float, watch: Watch, *, limit_s: float) -> AxesStatus: ...
    def status(self) -> AxesStatus: ...
    def pulses(self, axis: str, *, start_deg: float, step_deg: float, count: int) -> None: ...
    def hold(self) -> None: ...
    def release(self) -> None: ...
    def disable(self) -> None: ...
    def home(self, watch: Watch, limit_s: float) -> AxesStatus: ...
    def beat(self) -> None: ...
    def reconnect(self) -> None: ...
    def close(self) -> None: ...


@runtime_checkable
class SpeedSetter(Protocol):
    """An axes driver that can be told how fast axes go; a driver without this method moves by hand at its own speed only.

    `set_speeds` holds for the moves after it, degrees (millimetres) per second by axis; None: as declared. It raises
    `InstrumentError` with the missing word where the controller cannot be told, and nothing has changed then.
    """

    def set_speeds(self, speeds_deg_s: Mapping[str, float] | None) -> None: ...


def speed_setter_of(axes: AxesDriver, name: str) -> SpeedSetter:
    """Return an axes driver as one that can be told speeds; raises `InstrumentError` if it cannot."""
    if not isinstance(axes, SpeedSetter):
        raise InstrumentError(
            f"{name}: the driver lacks `set_speeds`: this controller cannot be told a speed; leave the speed out"
        )
    return axes


@runtime_checkable
class SweepKeeper(Protocol):
    """A receiver that keeps the sweeps of a whole slice and hands them over at once.

    `arm` returns once it waits for pulses, with place for so many sweeps; `kept` says how many it has kept; `fetch` returns them in
    their order, `moments` when each began (seconds from any moment; None if it cannot tell); `disarm` ends it, and is called after
    every `arm`.
    """

    def arm(self, sweeps: int) -> None: ...
    def kept(self) -> int: ...
    def moments(self, sweeps: int) -> FloatArray | None: ...
    def fetch(self, sweeps: int) -> list[Sweep]: ...
    def disarm(self) -> None: ...


def sweep_keeper_of(analyzer: AnalyzerDriver) -> SweepKeeper:
    """Return a receiver as one that keeps sweeps; raises `InstrumentError` if it cannot."""
    if not isinstance(analyzer, SweepKeeper):
        raise InstrumentError(
            "the receiver's driver lacks `arm`, `kept`, `moments`, `fetch` or `disarm`: it cannot keep the sweeps of a slice; buffered = false "
            "(goal.toml)"
        )
    return analyzer


@runtime_checkable
class PulseWaiter(Protocol):
    """A receiver that says that it waits for the pulse which starts its next sweep.

    `await_pulse` begins that sweep and returns once it waits; False if it cannot tell, nothing has begun then. The next `sweep` is
    that one. `give_up` ends the waiting, if `sweep` was not called since.
    """

    def await_pulse(self) -> bool: ...
    def give_up(self) -> None: ...


@runtime_checkable
class PointTaker(Protocol):
    """A receiver that keeps sweeps and can take every frequency of them at a pulse of its own.

    `point_by_point` says whether a pulse starts one frequency or a whole sweep; `pulses_heard` how many there were since `arm`;
    `point_moments` when each frequency began (seconds from any moment; None if it cannot tell).
    """

    def point_by_point(self, *, on: bool) -> None: ...
    def pulses_heard(self) -> int: ...
    def point_moments(self, pulses: int) -> FloatArray | None: ...


def point_taker_of(analyzer: AnalyzerDriver) -> PointTaker:
    """Return a receiver as one that takes frequencies by pulses; raises `InstrumentError` if it cannot."""
    if not isinstance(analyzer, PointTaker):
        raise InstrumentError(
            "the receiver's driver lacks `point_by_point`, `pulses_heard` or `point_moments`: a pulse cannot start one frequency; pulse_each = 'sweep' "
            "(goal.toml)"
        )
    return analyzer


@runtime_checkable
class PositionLatch(Protocol):
    """A controller that stores where an axis was at each of its pulses.

    `latches` tells whether it does for this axis; `latched` returns the readouts since `pulses` was called, in their order, degrees.
    """

    def latches(self, axis: str) -> bool: ...
    def latched(self, axis: str, count: int) -> list[float]: ...


def latch_of(axes: AxesDriver, axis: str) -> PositionLatch | None:
    """Return an axes driver as one that latches positions of an axis; None where it does not."""
    return axes if isinstance(axes, PositionLatch) and axes.latches(axis) else None


class StateDriver(Protocol):
    """Something that puts the device into one of its states and proves it."""

    def identity(self) -> str: ...
    def take(self, index: int, name: str) -> None: ...
    def reconnect(self) -> None: ...
    def close(self) -> None: ...


class SourceDriver(Protocol):
    """A signal generator beside a power-only receiver.

    `tune` may return at once; with `proves_tuning = True` it returns only when the source has answered after it, else `require_on` is
    called after each. `prepare` sets the level with the output off; `off` raises if the output is not proven to be off; `require_on` raises if it is.
    """

    def identity(self) -> str: ...
    def prepare(self, power_dbm: float) -> None: ...
    def tune(self, frequency_hz: float) -> None: ...
    def on(self) -> None: ...
    def require_on(self) -> None: ...
    def off(self) -> None: ...
    def reconnect(self) -> None: ...
    def close(self) -> None: ...


class SwitchDriver(Protocol):
    """A switch box: channel 1 is the device, 2 the reference horn, 3 the shorted cable; raises if it stands elsewhere."""

    def identity(self) -> str: ...
    def route(self, channel: int) -> None: ...
    def reconnect(self) -> None: ...
    def close(self) -> None: ...


class ContactDriver(Protocol):
    """A contact; whatever `closed` raises counts as open. It is called from a thread of its own."""

    def identity(self) -> str: ...
    def closed(self) -> bool: ...
    def reconnect(self) -> None: ...
    def close(self) -> None: ...


class SensorDriver(Protocol):
    """A sensor; `quantities` names what `read` returns, the unit at the end. It is called from a thread of its own."""

    quantities: tuple[str, ...]

    def identity(self) -> str: ...
    def read(self) -> dict[str, float]: ...
    def reconnect(self) -> None: ...
    def close(self) -> None: ...


class Timer(Protocol):
    """The engine's time, injected so that tests need not wait."""

    def monotonic(self) -> float: ...
    def sleep(self, seconds: float) -> None: ...
