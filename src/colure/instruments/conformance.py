"""Whether an instrument and its profile fit: what it answers, how fast, what it can, what is missing.

Nothing moves unless `move_deg` is given; then every axis turns by it, is held on its way, and comes back.
"""

from __future__ import annotations

import re
import time
from collections.abc import Callable, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np

from colure.errors import InputError
from colure.geometry.conventions import amplitude_db
from colure.instruments.gcode_axes import GcodeAxes
from colure.instruments.line_axes import LineAxes
from colure.instruments.line_profile import LineProfile
from colure.instruments.links import VisaLink
from colure.instruments.plugins import make_driver
from colure.instruments.profile import AnalyzerProfile, GcodeProfile, PowerProfile
from colure.instruments.protocols import (
    AnalyzerDriver,
    AxesDriver,
    HeldError,
    InstrumentError,
    SweepSettings,
    Timer,
    unwatched,
)
from colure.instruments.scpi_analyzer import ScpiAnalyzer
from colure.instruments.scpi_power import ScpiPowerReceiver
from colure.model.chamber import Axis

#: Exchanges that are timed; a move that goes on by itself after a release has begun after this, seconds.
EXCHANGES, RESUME_S = 20, 0.3
#: Share of a move's time after which it is held; a whole move and braking take at most so long; quicker moves end before a hold, seconds.
HELD_SHARE, MOVE_LIMIT_S, STAND_S, QUICK_S = 0.25, 120.0, 10.0, 0.5
#: Words without which something cannot be done, and what.
OPTIONAL = {
    "home": "homing", "door_open": "the door is not seen", "alarm": "alarms are not seen",
    "held": "a hold from elsewhere is not seen",
    "beat": "the controller does not stop by itself when this program dies",
    "disable": "abort cannot take the drives' power away",
    "timed": "style = 'fly' is not possible", "pulses": "trigger = 'position' is not possible",
    "latched": "positions at pulses are not stored: buffered = true is not possible",
    "ready": "the axis starts a slice without knowing that the analyzer waits for pulses",
    "buffer_start": "buffered = true is not possible",
    "buffer_times": "with buffered = true, a pulse lost and another doubled on one slice are not seen",
    "point_times": "with pulse_each = 'frequency', a pulse lost and another doubled on one slice are not seen",
    "point_start": "pulse_each = 'frequency' is not possible", "trigger_external": "pulses cannot start sweeps", "route": "no reference switch", "status": "overload is not seen",
    "frequency_list": "frequencies are not read back", "clock": "time stamps are the computer's",
}  # fmt: skip


@dataclass(frozen=True)
class ConformanceAnswer:
    """One question of the kit: None in `good` says what the instrument cannot do."""

    what: str
    good: bool | None
    observed: str


class UndecidedError(InstrumentError):
    """A question that the instrument leaves open."""


class Kit:
    """Asks one question after the other and keeps what was answered."""

    def __init__(self) -> None:
        self.answers: list[ConformanceAnswer] = []

    def ask(self, what: str, question: Callable[[], str]) -> bool:
        """Ask, and tell whether the answer was good."""
        try:
            self.answers.append(ConformanceAnswer(what, True, question()))
        except UndecidedError as error:
            self.answers.append(ConformanceAnswer(what, None, f"cannot tell: {error}"))
        except InstrumentError as error:
            self.answers.append(ConformanceAnswer(what, False, str(error)))
        return bool(self.answers[-1].good)

    def missing(self, profile: object) -> None:
        """Name the words that a profile lacks."""
        for word, meaning in OPTIONAL.items():
            if hasattr(profile, word) and not getattr(profile, word):
                self.answers.append(ConformanceAnswer(f"`{word}`", None, f"empty: {meaning}"))


def axes_conformance(
    profile: GcodeProfile | LineProfile,
    resource: str,
    *,
    timeout_s: float,
    timer: Timer,
    move_deg: float = 0.0,
    axes: Sequence[str] = (),
) -> list[ConformanceAnswer]:
    """Ask an axis controller everything that a run will ask.

    move_deg
        Turn every axis by this and back; 0 moves nothing.
    axes
        Those that the controller turns; all of the profile if empty.

    Raises
    ------
    InputError
        If the profile has no words for one of the axes.
    """
    kit, opened = Kit(), []
    known = tuple(profile.axes if isinstance(profile, LineProfile) else profile.letters)
    if strange := [name for name in axes if name not in known]:
        raise InputError([f"axes = {', '.join(strange)}: must be axes of the profile: {', '.join(known)}"])
    names = tuple(axes) or known
    table = {name: Axis(speed_deg_s=5.0, acceleration_deg_s2=10.0, min_deg=-3600, max_deg=3600) for name in names}
    if isinstance(profile, LineProfile):
        wraps = {
            name: axis.wraps_deg for name, axis in profile.axes.items() if name in names and axis.wraps_deg is not None
        }
        table |= {name: table[name].model_copy(update={"modulo_deg": wrap}) for name, wrap in wraps.items()}

    def connect() -> str:
        driver: AxesDriver
        if isinstance(profile, LineProfile):
            driver = LineAxes(resource, profile, table, timeout_s=timeout_s, timer=timer)
        else:
            driver = GcodeAxes(resource, profile, names, timeout_s=timeout_s)
        opened.append(driver)
        return driver.identity()

    if kit.ask("connection and identity", connect):
        driver = opened[0]
        try:
            _ask_axes(kit, driver, move_deg)
        finally:
            driver.close()
    kit.missing(profile)
    return kit.answers


def driver_conformance(
    group: str, name: str, resource: str, axes: Sequence[str], settings: SweepSettings, *, timeout_s: float,
    timer: Timer, folder: Path | None, move_deg: float = 0.0,
) -> list[ConformanceAnswer]:  # fmt: skip
    """Ask a receiver's or axis controller's driver of another package everything that a run will ask.

    Parameters
    ----------
    group
        `colure.receivers` or `colure.axes`.
    axes
        Names of the axes that the controller turns.
    """
    kit, opened = Kit(), list[Any]()
    table = {axis: Axis(speed_deg_s=5.0, acceleration_deg_s2=10.0, min_deg=-3600, max_deg=3600) for axis in axes}

    def connect() -> str:
        if group == "colure.axes":
            options = {"timeout_s": timeout_s, "timer": timer, "folder": folder}
            opened.append(make_driver(group, name, resource, table, **options))
        else:
            opened.append(make_driver(group, name, resource, timeout_s=timeout_s, folder=folder))
        return str(opened[0].identity())

    if not kit.ask("connection and identity", connect):
        return kit.answers
    if group == "colure.receivers":
        _ask_receiver(kit, opened[0], settings)
        return kit.answers
    try:
        _ask_axes(kit, opened[0], move_deg)
    finally:
        opened[0].close()
    return kit.answers


def _ask_axes(kit: Kit, axes: AxesDriver, move_deg: float) -> None:
    def positions() -> str:
        return ", ".join(f"{name} {value:.3f}" for name, value in axes.status().positions_deg.items()) + " deg"

    def exchange() -> str:
        times = [_seconds(axes.status) for _ in range(EXCHANGES)]
        return f"one look at all axes {1e3 * float(np.median(times)):.1f} ms, longest {1e3 * max(times):.1f} ms"

    def hold() -> str:
        taken = _seconds(axes.hold)
        if not axes.status().held:
            raise InstrumentError("held axes do not read as held")
        axes.release()
        if axes.status().held:
            raise InstrumentError("released axes still read as held")
        return f"sent within {1e3 * taken:.1f} ms; released again"

    def same() -> str:
        before = axes.identity()
        axes.reconnect()
        return f"the same controller after a new connection: {before}"

    if not kit.ask("positions", positions):
        words = "a controller that lacks one of the profile's axes: name those that it turns, as --axes azimuth,roll"
        kit.answers.append(ConformanceAnswer("`--axes`", None, words))
        return
    names = list(axes.status().positions_deg)
    kit.ask("time of an exchange", exchange)
    kit.ask("hold and release at rest", hold)
    kit.ask("reconnection", same)
    if move_deg:
        for name in names:
            with suppress(InstrumentError):  # whatever the axis before left behind
                axes.release()
            kit.ask(f"move of {name}", lambda name=name: _move(axes, name, move_deg))  # type: ignore[misc]


def _move(axes: AxesDriver, name: str, move_deg: float) -> str:
    """Turn an axis and back, then hold it on its way; raises `InstrumentError` for whatever is not as it should be.

    The first move tells how long a whole one takes: where the axis is on its way need not be asked, for a controller that
    answers at the end of a move cannot say so.
    """
    start = axes.status().positions_deg
    target, least_deg = {**start, name: start[name] + move_deg}, 0.02 * abs(move_deg)
    whole_s = _seconds(lambda: _go(axes, name, target, least_deg))
    _go(axes, name, start, least_deg)
    began = time.monotonic()
    axes.begin(target, from_deg=axes.status().positions_deg)
    time.sleep(max(0.0, HELD_SHARE * whole_s - (time.monotonic() - began)))
    here, stood_s, heard = _hold(axes, name)
    open_words = ""
    if abs(here - target[name]) < least_deg:
        if whole_s >= QUICK_S:
            raise InstrumentError(f"{name} reached its target in spite of a hold after {HELD_SHARE:.0%} of its time")
        open_words = "it was there before the hold"
    elif abs(here - start[name]) < least_deg:
        open_words = "it had hardly begun before the hold"
    elif not heard:
        raise InstrumentError(f"{name} does not read as held after a hold")
    axes.release()
    time.sleep(RESUME_S)
    rested = axes.status().positions_deg[name]
    if abs(rested - here) > least_deg:
        raise InstrumentError(
            f"{name} goes on after `release`: {here:.3f} to {rested:.3f} deg; put what forgets the move into it"
        )
    back = _go(axes, name, start, least_deg)
    if open_words:
        raise UndecidedError(
            f"{open_words}: a move of {name} by {move_deg:g} deg took {whole_s:.2f} s; use a longer `move`, or a lower speed of the controller"
        )
    return f"held after {here - start[name]:+.2f} deg, stood {stood_s:.2f} s later, came back to {back:.3f} deg"


def _go(axes: AxesDriver, name: str, target_deg: Mapping[str, float], least_deg: float) -> float:
    """Move and return where the axis came to, degrees; raises `InstrumentError` if that is not its target."""
    axes.begin(target_deg, from_deg=axes.status().positions_deg)
    there = axes.finish(0.0, unwatched, limit_s=MOVE_LIMIT_S).positions_deg[name]
    if abs(there - target_deg[name]) > least_deg:
        raise InstrumentError(f"{name} came to {there:.3f} deg, sent to {target_deg[name]:.3f} deg")
    return there


def _hold(axes: AxesDriver, name: str) -> tuple[float, float, bool]:
    """Hold a move; return where the axis stands, after how many seconds, and whether the move ended as a held one."""
    began, heard = time.monotonic(), False
    axes.hold()
    try:
        axes.finish(0.0, unwatched, limit_s=MOVE_LIMIT_S)
    except HeldError:
        heard = True
    before = axes.status().positions_deg[name]
    while abs((here := axes.status().positions_deg[name]) - before) > 1e-3:
        before = here
        if time.monotonic() - began > STAND_S:
            raise InstrumentError(f"{name} still moves {STAND_S:g} s after a hold")
    return here, time.monotonic() - began, heard


def analyzer_conformance(
    profile: AnalyzerProfile | PowerProfile, resource: str, settings: SweepSettings, *, timeout_s: float
) -> list[ConformanceAnswer]:
    """Ask a receiver everything that a run will ask; its source is off at the end."""
    kit, opened = Kit(), []

    def connect() -> str:
        driver: AnalyzerDriver
        if isinstance(profile, PowerProfile):
            driver = ScpiPowerReceiver(resource, profile, timeout_s=timeout_s)
        else:
            driver = ScpiAnalyzer(resource, profile, timeout_s=timeout_s)
        opened.append(driver)
        return driver.identity()

    def errors() -> str:
        """A word that no instrument knows must come back as an error."""
        if not profile.error:
            raise InstrumentError("`error` is empty: a word that the instrument does not know goes unseen")
        link = VisaLink(resource, timeout_s=timeout_s, ends=profile.line.ends)
        try:
            for _ in range(40):
                if re.match(profile.error_none, link.query(profile.error)):
                    break
            link.write("COLURE:NOSUCHWORD 1")
            answer = link.query(profile.error)
            if re.match(profile.error_none, answer):
                raise InstrumentError(f"an unknown word left no error: {profile.error!r} answered {answer[:60]!r}")
            return f"an unknown word is answered by {answer[:60]}"
        finally:
            link.close()

    kit.ask("error queue", errors)
    if kit.ask("connection and identity", connect):
        _ask_receiver(kit, opened[0], settings)
    kit.missing(profile)
    return kit.answers


def _ask_receiver(kit: Kit, receiver: AnalyzerDriver, settings: SweepSettings) -> None:
    def configure() -> str:
        readback = receiver.configure(settings, (1,))
        return ", ".join(f"{name} {value:g}" for name, value in readback.items()) or "accepted (nothing read back)"

    def sweeps() -> str:
        times, levels = [], []
        for _ in range(3):
            begin = time.monotonic()
            trace = receiver.sweep().trace
            times.append(time.monotonic() - begin)
            levels.append(amplitude_db(float(np.abs(trace).mean())))
        return f"{len(trace)} frequencies, {1e3 * float(np.median(times)):.1f} ms a sweep, mean {levels[-1]:.1f} dB"

    def off() -> str:
        receiver.safe()
        return "off"

    try:
        if kit.ask("settings", configure):
            kit.ask("three sweeps", sweeps)
    finally:
        kit.ask("source", off)
        receiver.close()


def _seconds(action: Callable[[], object]) -> float:
    begin = time.monotonic()
    action()
    return time.monotonic() - begin
