"""What the engine asks of any analyzer and any axis controller."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Protocol

from colure.geometry.conventions import ComplexArray


class InstrumentError(RuntimeError):
    """An instrument did not answer, or answered that something is wrong; words for people."""


class RefusedError(InstrumentError):
    """The instrument understood and refused; the connection is still in step."""


class HeldError(RefusedError):
    """The axes are held: a stop was commanded and motion must be released by a person."""


@dataclass(frozen=True)
class SweepSettings:
    """Trace settings, the same for every point of a plan."""

    start_hz: float
    stop_hz: float
    points: int
    if_bandwidth_hz: float
    power_dbm: float


@dataclass(frozen=True)
class Sweep:
    """One sweep: complex trace (frequency, port), and what the analyzer said about it."""

    trace: ComplexArray
    condition: int


class AnalyzerDriver(Protocol):
    """A vector receiver that sweeps and hands over complex traces."""

    def identity(self) -> str: ...
    def configure(self, settings: SweepSettings, ports: tuple[int, ...]) -> None: ...
    def route(self, channel: int) -> None: ...
    def sweep(self) -> Sweep: ...
    def clock_s(self) -> float: ...
    def safe(self) -> None: ...
    def close(self) -> None: ...


class AxesDriver(Protocol):
    """A controller that moves axes; `hold` must work while a move is under way."""

    def identity(self) -> str: ...
    def move(self, targets_deg: Mapping[str, float], settle_s: float) -> dict[str, float]: ...
    def positions_deg(self) -> dict[str, float]: ...
    def hold(self) -> None: ...
    def release(self) -> None: ...
    def close(self) -> None: ...
