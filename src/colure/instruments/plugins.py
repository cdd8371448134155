"""Drivers that other packages bring, found by their entry points: `profile = "driver:NAME"` in chamber.toml."""

from __future__ import annotations

from importlib.metadata import EntryPoint, entry_points
from typing import Any

from colure.instruments.protocols import InstrumentError

PREFIX = "driver:"
#: Entry point groups, and what a driver of each must have.
NEEDS = {
    "colure.receivers": (
        "receiver",
        "identity",
        "configure",
        "trigger",
        "route",
        "sweep",
        "clock_s",
        "safe",
        "reconnect",
        "close",
    ),
    "colure.axes": (
        "coordinated",
        "one_by_one",
        "heard",
        "identity",
        "begin",
        "finish",
        "status",
        "pulses",
        "hold",
        "release",
        "disable",
        "home",
        "beat",
        "reconnect",
        "close",
    ),
    "colure.sources": ("identity", "prepare", "tune", "on", "require_on", "off", "reconnect", "close"),
    "colure.switches": ("identity", "route", "reconnect", "close"),
    "colure.interlocks": ("identity", "closed", "reconnect", "close"),
    "colure.states": ("identity", "take", "reconnect", "close"),
    "colure.sensors": ("quantities", "identity", "read", "reconnect", "close"),
}
#: Group of entry points by the role of an instrument.
GROUPS = {
    "receiver": "colure.receivers", "axis-controller": "colure.axes", "source": "colure.sources", "switch": "colure.switches",
    "interlock": "colure.interlocks", "state": "colure.states", "sensor": "colure.sensors",
}  # fmt: skip


def is_driver(profile: str) -> bool:
    """Tell whether a profile's name means a driver of another package."""
    return profile.startswith(PREFIX)


def driver_point(group: str, profile: str) -> EntryPoint:
    """Return the entry point of a driver.

    Raises
    ------
    InstrumentError
        If no package brings it; those that are installed are named.
    """
    name, known = profile.removeprefix(PREFIX), {point.name: point for point in entry_points(group=group)}
    if name not in known:
        raise InstrumentError(
            f"profile = {profile!r}: no package brings it; drivers in {group}: {', '.join(sorted(known)) or 'none'}"
        )
    return known[name]


def driver_version(group: str, profile: str) -> str:
    """Return which package a driver comes from, with its version."""
    package = driver_point(group, profile).dist
    return "unknown" if package is None else f"{package.name} {package.version}"


def make_driver(group: str, profile: str, *arguments: Any, **options: Any) -> Any:
    """Load a driver, make one, and look whether it is whole.

    Raises
    ------
    InstrumentError
        If it cannot be loaded or lacks something; everything that it raises becomes one line.
    """
    point = driver_point(group, profile)
    try:
        driver = point.load()(*arguments, **options)
    except InstrumentError:
        raise
    except Exception as error:
        raise InstrumentError(f"{profile}: cannot be made: {type(error).__name__}: {error}") from None
    missing = [name for name in NEEDS[group] if not hasattr(driver, name)]
    if missing:
        raise InstrumentError(f"{profile}: lacks {', '.join(missing)}; see colure.instruments.protocols")
    return driver
