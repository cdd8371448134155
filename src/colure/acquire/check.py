"""A look at everything before anybody trusts it: talks to all instruments; axes turn only where a person lets them."""

from __future__ import annotations

from collections.abc import Callable
from typing import Protocol

import numpy as np

from colure.acquire.clocks import Clock
from colure.acquire.control import Control
from colure.acquire.delay_check import phase_sense
from colure.acquire.jogging import Jogger
from colure.acquire.latched import armed, awaiting, train_of_one
from colure.acquire.sight import looks_at, way_of
from colure.acquire.station import Station
from colure.analysis.findings.sanity import SNR_LOOK_DB, SNR_WRONG_DB
from colure.errors import GuardError, InstrumentError
from colure.geometry.conventions import FloatArray, amplitude_db
from colure.instruments.contacts import Contacts
from colure.instruments.protocols import AnalyzerDriver, AxesDriver, LostError, StateDriver
from colure.instruments.sensors import Sensors
from colure.model.chamber import Chamber
from colure.model.device import Device
from colure.model.plan import ROLES, Plan, Role
from colure.model.record import Flag

CheckRow = tuple[str, bool, str]
#: Settings that an analyzer reads back, as words: what is said before the value, a factor, and the unit.
SETTING_WORDS = {
    "start_hz": ("from", 1e-9, "GHz"), "stop_hz": ("to", 1e-9, "GHz"), "points": ("", 1.0, "frequencies"),
    "if_bandwidth_hz": ("bandwidth", 1.0, "Hz"), "averages": ("averages", 1.0, ""), "power_dbm": ("power", 1.0, "dBm"),
}  # fmt: skip
#: A level that is farther from the plan's promise than this is a fault, dB: a circular device reads 3 dB less with a linear probe,
#: a steered one as much. The axes look along the beam within this, degrees.
LEVEL_WRONG_DB, ALONG_DEG = 8.0, 1.0

#: So many looks at the axes are timed; the middle one counts, for a busy computer keeps some of them waiting.
LOOKS = 5
#: What is said of an analyzer that has no words for it.
WAITS_UNTOLD = "cannot tell: the profile has no words for it (`ready`, `ready_start`, `ready_sweep`, `ready_end`); released and swept again"


class _Inquiry:
    """Asks one question after the other; the receiver no more once an answer of it was lost."""

    def __init__(self, lines: list[CheckRow]) -> None:
        self._lines, self._lost = lines, False

    def ask(self, what: str, question: Callable[[], str]) -> None:
        """Ask, and write down what was answered."""
        try:
            self._lines.append((what, True, question()))
        except (InstrumentError, GuardError) as error:
            self._lines.append((what, False, str(error)))
            self._lost |= isinstance(error, LostError)

    def ask_analyzer(self, what: str, question: Callable[[], str]) -> None:
        """Ask the receiver: whose answer comes next is not known after a lost one, and each question would wait its whole time."""
        if not self._lost:
            self.ask(what, question)


def check_bench(
    plan: Plan,
    chamber: Chamber,
    analyzer: AnalyzerDriver,
    axes: AxesDriver,
    *,
    states: StateDriver | None,
    clock: Clock,
    contacts: Contacts | None = None,
    sensors: Sensors | None = None,
    pulses: bool = True,
) -> list[CheckRow]:
    """Return (what, good, found) for every question asked; the source is left off.

    pulses
        Let the receiver wait for a pulse, if the plan flies by pulses; False where a word for that is known to be missing.
    """
    station = Station(
        plan, chamber, analyzer=analyzer, axes=axes, states=states, state_table=None, clock=clock,
        control=Control(), watchdog=None,
    )  # fmt: skip
    lines: list[CheckRow] = _interlock(contacts or Contacts())
    if any(not good for _, good, _ in lines):
        return lines  # somebody may be inside: the source is not switched on

    inquiry = _Inquiry(lines)
    ask, ask_analyzer = inquiry.ask, inquiry.ask_analyzer

    def settings() -> str:
        answer = station.configure()
        return ", ".join(_in_words(*one) for one in answer.items()) or "accepted (nothing read back)"

    read_db: list[float] = []

    def sweep() -> str:
        station.prepare(Role.TIE, -1)  # the device, not the reference
        analyzer.clock_s()  # every point asks for it before its sweep
        answer = analyzer.sweep()
        level = float(amplitude_db(max(float(np.abs(answer.trace).mean(axis=0).max()), 1e-12)))
        read_db.append(level)
        flags = f"; flags {Flag(answer.flags)!r}" if answer.flags else ""
        return f"{answer.trace.shape[0]} frequencies x {answer.trace.shape[1]} ports, mean {level:.1f} {_unit(analyzer)}{flags}"

    def level() -> str:
        if not read_db or "level" not in plan.predicted:
            return "cannot tell: no level was read, or the plan promises none"
        return _against_plan(plan, read_db[-1], _unit(analyzer), station.guard.readouts(axes.status()))

    def reflection() -> str:
        station.prepare(Role.REFLECTION, -1)
        answer = station.reflect()
        return f"device reflects {float(amplitude_db(np.abs(answer.trace).max(), least=1e-12)):.1f} dB at most"

    def source_off() -> str:
        analyzer.safe()
        return _OFF[plan.inputs.get("device", {}).get("eirp_dbm") is not None]

    def path() -> str:
        here = station.guard.last_deg
        begin = [] if here is None else [here]
        station.guard.check_path(np.vstack([*begin, plan.targets_deg]), "plan")
        solids = len(chamber.positioner.solids)
        what = (
            f"{solids} solids apart"
            if chamber.positioner.joints
            else f"clear of {len(chamber.keep_out)} keep-out sectors"
        )
        return f"{len(plan)} positions inside limits and {what}"

    ask_analyzer("analyzer", analyzer.identity)
    ask_analyzer("settings", settings)
    if Role.REFERENCE in {ROLES[role] for role in plan.role}:
        ask_analyzer("reference path", lambda: _reference_path(station))
    ask_analyzer("one sweep", sweep)
    if Role.REFLECTION in {ROLES[role] for role in plan.role}:
        ask_analyzer("reflection", reflection)
    if pulses and plan.settings.get("trigger") == "position":
        ask_analyzer("ready for pulses", lambda: _waits_for_pulses(station))
    if read_db:
        ask_analyzer("delay", lambda: phase_sense(station, analyzer, chamber.range_length_m))
    ask("source", source_off)
    ask("axes", axes.identity)
    for what, question in _axes_questions(station, axes).items():
        ask(what, question)
    ask("level", level)
    ask("signal to noise", lambda: _snr(plan))
    ask("path", path)
    if states is not None:
        ask("device states", states.identity)
    # A lost sensor stops no run, and so it fails no check.
    lines += [(name, True, f"{value:g}" if np.isfinite(value) else "LOST: nan will be logged")
              for name, value in (sensors or Sensors()).latest().items()]  # fmt: skip
    return lines


#: What is said of the reference's path: none is switched, or one is; and of the source: whose it is.
_PATHS = ("none is switched: swept in the device's own path", "brought in and taken out again")
_OFF = ("switched off again", "none of ours: the device transmits by itself, and goes on")


def _unit(analyzer: AnalyzerDriver) -> str:
    """Return the unit of a level: a power receiver's trace is the root of milliwatts, another's a wave ratio."""
    return "dBm" if analyzer.receiver == "power" else "dB"


def _reference_path(station: Station) -> str:
    station.prepare(Role.REFERENCE, -1)
    station.prepare(Role.TIE, -1)
    return _PATHS[station.plan.settings.get("reference_method", "switch") == "switch"]


def _waits_for_pulses(station: Station) -> str:
    """Let the analyzer wait for a pulse that does not come, release it, and sweep again: that proves the words of both."""
    plan = station.plan
    station.prepare(Role.TIE, -1, external=True)
    if plan.settings.get("buffered"):
        with armed(station, train_of_one(plan)):
            told = True
    else:
        with awaiting(station) as told:
            pass
    station.prepare(Role.TIE, -1)
    station.analyzer.sweep()
    return "waits for a pulse, and sweeps again after it was released" if told else WAITS_UNTOLD


def _interlock(contacts: Contacts) -> list[CheckRow]:
    """Read every contact once; an open one is no fault of the bench, but a run would wait for it, and a lost one is."""
    contacts.read_all()
    door, stop = contacts.open_now()
    if door or stop:
        return [("interlock", False, f"{'; '.join(filter(None, (door, stop)))}: nothing will move")]
    names = ", ".join(f"{one.name} closed ({one.stands_for})" for one in contacts.contacts)
    return [("interlock", True, names)] if names else []


def _against_plan(plan: Plan, read_db: float, unit: str, here_deg: FloatArray) -> str:
    """Hold one sweep against the level that the plan promises at the peak of the beam, a wave ratio or a power in dBm.

    Raises
    ------
    InstrumentError
        If it reads more than any direction may, or, with the axes at the ties' place, far less than promised.
    """
    promised = plan.predicted["level"]
    # The mean over all frequencies was read; the promise holds at one, and path loss goes with frequency.
    wider = float(amplitude_db(np.mean(float(promised["frequency_hz"]) / plan.frequency_hz)))
    peak = float(promised["received_dbm"]) - (0.0 if unit == "dBm" else float(promised["power_dbm"])) + wider
    ties = plan.targets_deg[plan.role == ROLES.index(Role.TIE)]
    along = bool(ties.size) and bool(np.all(np.abs(ties[0] - here_deg) < ALONG_DEG))
    words = f"{read_db:.1f} {unit}, the plan promises {peak:.1f} {unit} along the beam"
    cause = "another device, a cable that is not connected, or a wrong gain, loss or distance in the files"
    if read_db > peak + LEVEL_WRONG_DB or (along and read_db < peak - LEVEL_WRONG_DB):
        raise InstrumentError(f"{words} ({read_db - peak:+.1f} dB): {cause}")
    return words if along else f"{words}; the axes do not look there now, so this says little"


def _snr(plan: Plan) -> str:
    """Hold the signal-to-noise ratio that the plan promises against what figures need.

    Raises
    ------
    InstrumentError
        If every figure would be marked as not to be used.
    """
    if "level" not in plan.predicted:
        return "cannot tell: the plan promises no level"
    snr = float(plan.predicted["level"]["snr_peak_db"])
    words = f"{snr:.0f} dB at the peak by the plan, figures need {SNR_LOOK_DB:g} dB"
    if snr < SNR_WRONG_DB:
        raise InstrumentError(f"{words}: raise power_dbm, narrow if_bandwidth_hz or average (analyzer in chamber.toml)")
    return words


def _axes_questions(station: Station, axes: AxesDriver) -> dict[str, Callable[[], str]]:
    def positions() -> str:
        readouts = station.guard.readouts(axes.status())
        return (
            ", ".join(f"{name} {value:.3f}" for name, value in zip(station.guard.names, readouts, strict=True)) + " deg"
        )

    def state() -> str:
        status = axes.status()
        station.guard.require_safe(status)
        door = {None: "door not reported", False: "door closed", True: "door open"}[status.door_open]
        held = ", held (the next run releases it)" if status.held else ""
        return f"no alarm, {door}{held}"

    def look_time() -> str:
        """A fault of the motion is seen by the next look: say how far an axis runs until then."""
        took_s = []
        for _ in range(LOOKS):
            began = station.clock.monotonic()
            axes.status()
            took_s.append(station.clock.monotonic() - began)
        return looks_at(station.guard, way_of(station), float(np.median(took_s)))

    return {"positions": positions, "alarm and door": state, "look at the axes": look_time}


class Confirm(Protocol):
    """Asks a person: `clear` before an axis moves (raises to refuse), `right` whether it turned the positive way; None: nobody looked."""

    def clear(self, what: str) -> None: ...
    def right(self, axis: str, made_deg: float) -> bool | None: ...


def check_motion(
    chamber: Chamber, axes: AxesDriver, clock: Clock, confirm: Confirm, *, device: Device | None = None
) -> list[CheckRow]:
    """Turn every axis by a degree and back, brake it on a longer way, and return (what, good, found).

    Ends at the first fault: an axis that does not do what it was told is not moved again.
    """
    hand, lines = Jogger(chamber, axes, clock, device=device), list[CheckRow]()
    for name in hand.turning:
        try:
            way = abs(hand.hold_way_deg(name, hand.where()[name]))
            confirm.clear(
                f"{name} turns by 1 {hand.unit(name)} and back, then up to {way:g} {hand.unit(name)} until it is braked, and back"
            )
            made = hand.prove(name)
            seen = confirm.right(name, made)
            lines.append(
                (f"direction of {name}", seen is not False, f"readout {made:+.3f} {hand.unit(name)}, {_SEEN[seen]}")
            )
            if seen is False:
                return lines
            lines.append((f"hold and release of {name}", True, hand.prove_hold(name)))
        except (InstrumentError, GuardError) as error:
            lines.append((f"motion of {name}", False, str(error)))
            return lines
    return lines


_SEEN = {
    True: "the way was confirmed",
    False: "turned the other way: change the sign of its `sense` in chamber.toml",
    None: "nobody looked which way",
}


def _in_words(name: str, value: float) -> str:
    """Say what was read back of a setting, with its unit."""
    before, factor, unit = SETTING_WORDS.get(name, (name.replace("_", " "), 1.0, ""))
    return " ".join(part for part in (before, f"{factor * value:.6g}", unit) if part)
