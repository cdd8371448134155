"""Whether a source, switch, contact, sensor or device state fits its profile or driver; nothing here moves an axis."""

from __future__ import annotations

import time
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any

import numpy as np

from colure.instruments.conformance import EXCHANGES, ConformanceAnswer, Kit
from colure.instruments.plugins import is_driver
from colure.instruments.protocols import InstrumentError
from colure.instruments.role_profiles import KINDS, role_profile
from colure.instruments.small_connect import connect_small
from colure.instruments.small_instruments import PLACES
from colure.model.instrument import EVERY_S, Instrument

ROLE_OF = {kind: role for role, kinds in KINDS.items() for kind in kinds}
#: Words without which something cannot be proven, and what.
OPTIONAL = {
    "identity": "another instrument on the line goes unseen",
    "acknowledge": "a command that was not taken goes unseen, unless it is read back",
    "error": "refused commands go unseen", "readback": "the position is not proven",
    "level_query": "the level is not proven",
}  # fmt: skip


def small_conformance(
    name: str, resource: str, *, role: str, timeout_s: float, folder: Path | None, power_dbm: float, start_hz: float,
    states: Sequence[str] = (),
) -> list[ConformanceAnswer]:  # fmt: skip
    """Ask a smaller instrument everything that a run will ask.

    Parameters
    ----------
    name
        A profile, or `driver:NAME`.
    role
        What it is to do.
    power_dbm, start_hz
        Level and frequency at which a source is switched on, for a moment.
    states
        Names of device states that are taken, one after the other; none if empty.
    """
    kit, opened = Kit(), list[Any]()
    instrument = Instrument.model_validate({"role": role, "profile": name, "timeout_s": timeout_s})

    def connect() -> str:
        opened.append(connect_small(instrument, resource, folder))
        return str(opened[0].identity())

    def same() -> str:
        before = opened[0].identity()
        opened[0].reconnect()
        if opened[0].identity() != before:
            raise InstrumentError(f"says {opened[0].identity()!r} after a new connection, {before!r} before")
        return "the same instrument after a new connection"

    if kit.ask("connection and identity", connect):
        try:
            for what, question in _questions(role, opened[0], power_dbm, start_hz, states).items():
                kit.ask(what, question)
            kit.ask("reconnection", same)
        finally:
            opened[0].close()
    if not is_driver(name):
        words = role_profile(name, folder, role=role)
        kit.answers += [ConformanceAnswer(f"`{word}`", None, f"empty: {meaning}") for word, meaning in OPTIONAL.items()
                        if getattr(words, word, None) == ""]  # fmt: skip
    return kit.answers


def _questions(
    role: str, driver: Any, power_dbm: float, start_hz: float, states: Sequence[str]
) -> dict[str, Callable[[], str]]:
    if role == "source":
        return _of_source(driver, power_dbm, start_hz)
    if role == "switch":
        return {f"path of the {place}": _route(driver, channel) for channel, place in _there_and_back()}
    if role == "interlock":
        return {
            "contact": lambda: "closed" if driver.closed() else "open",
            "time of a reading": _readings(driver.closed),
        }
    if role == "sensor":
        return {"quantities": lambda: _values(driver), "time of a reading": _readings(driver.read)}
    return {f"state {name}": _take(driver, index, name) for index, name in enumerate(states)}


def _there_and_back() -> list[tuple[int, str]]:
    return [*((channel, place) for channel, place in PLACES.items() if channel != 1), (1, PLACES[1])]


def _route(driver: Any, channel: int) -> Callable[[], str]:
    def act() -> str:
        driver.route(channel)
        return "brought into the path"

    return act


def _take(driver: Any, index: int, name: str) -> Callable[[], str]:
    def act() -> str:
        driver.take(index, name)
        return "taken"

    return act


def _values(driver: Any) -> str:
    readings = driver.read()
    missing = [name for name in driver.quantities if not np.isfinite(readings.get(name, np.nan))]
    if missing:
        raise InstrumentError(f"no value of {', '.join(missing)}")
    return ", ".join(f"{name} {value:g}" for name, value in readings.items())


def _readings(read: Callable[[], object]) -> Callable[[], str]:
    def act() -> str:
        times = []
        for _ in range(EXCHANGES):
            begin = time.monotonic()
            read()
            times.append(time.monotonic() - begin)
        longest = max(times)
        if longest > EVERY_S["interlock"] * 10.0:
            raise InstrumentError(
                f"a reading took {1e3 * longest:.0f} ms: must be below {1e4 * EVERY_S['interlock']:.0f} ms"
            )
        return f"{1e3 * float(np.median(times)):.1f} ms, longest {1e3 * longest:.1f} ms"

    return act


def _of_source(driver: Any, power_dbm: float, start_hz: float) -> dict[str, Callable[[], str]]:
    def level() -> str:
        driver.prepare(power_dbm)
        driver.tune(start_hz)
        return f"{power_dbm:g} dBm at {1e-9 * start_hz:g} GHz, output off"

    def on() -> str:
        try:
            driver.on()
            return "on, and proven to be"
        finally:
            driver.off()

    def off() -> str:
        driver.off()
        return "off, and proven to be"

    return {"level": level, "output on": on, "output off": off}
