"""What must be proven before anything is measured: instruments, settings, position, path, tie."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import suppress
from typing import Any

import numpy as np

from colure.acquire.journal import Journal, Row
from colure.acquire.station import Station, blame
from colure.acquire.ties import TieChange, TieKeeper
from colure.acquire.whereabouts import arrived_or_lost, lost_count
from colure.errors import AcquisitionError, GuardError, MotionError
from colure.geometry.conventions import FloatArray
from colure.instruments.protocols import AnalyzerDriver, AxesDriver, HeldError, StateDriver
from colure.model.plan import ROLES, Role
from colure.values import printable

#: A tie point re-measured on resume must agree with the journal's within this, in dB.
RESUME_TOLERANCE_DB = 1.0
#: A wrapping readout this far from the journalled one, in turns, could be either way round.
AMBIGUOUS_TURNS = 0.47
#: A tie that proves a position may differ from the last one by this share of what the chamber may drift: axes a degree or two off
#: move it no more than drift does, and a run that is stopped without need loses no point.
PROOF_SHARE = 0.25
#: How often braking axes are looked at before they are taken to stand.
REST_LOOKS = 100
TIE_ROLES = tuple(ROLES.index(role) for role in (Role.TIE, Role.RESUME))


def who_answers(analyzer: AnalyzerDriver, axes: AxesDriver, states: StateDriver | None) -> dict[str, Any]:
    """Return who answers on every line, as the journal keeps it."""
    with blame("analyzer"):
        receiver = analyzer.identity()
    with blame("axes"):
        controller = axes.identity()
    switch = None if states is None else states.identity()
    said = {"analyzer": receiver, "axes": controller, "states": switch, "receiver": analyzer.receiver}
    return {name: printable(one) if isinstance(one, str) else one for name, one in said.items()}


class StartCheck:
    """Lets a run begin, or go on after an interruption, only from a proven state."""

    def __init__(self, station: Station, journal: Journal, ties: TieKeeper, say: Callable[[str, str], None]) -> None:
        self._station = station
        self._journal = journal
        self._ties = ties
        self._say = say
        #: When the axes were braked last, seconds.
        self._braked_s = 0.0

    def require_same(self) -> None:
        """Raise `AcquisitionError` if other instruments answer than those of the journal."""
        station = self._station
        wanted = self._journal.meta("identity")
        identities = who_answers(station.analyzer, station.axes, station.states)
        for name, value in identities.items():
            if wanted.get(name) != value:
                raise AcquisitionError(f"{name} is {value!r}, must be {wanted.get(name)!r} to go on with this run")

    def regain_analyzer(self) -> None:
        """Clear the receiver, and make sure that it is the same one with the same settings."""
        with blame("analyzer"):
            self._station.analyzer.reconnect()
        self.require_same()
        self.configure()

    def regain_axes(self) -> None:
        """Open the controller's lines anew; it must be the same controller, and its axes at rest."""
        with blame("axes"):
            self._station.axes.reconnect()
        self.require_same()
        self.trust_position(home=False)

    def _bring_to_rest(self) -> None:
        """Brake whatever a dead process or a lost line left in motion, and wait until it stands."""
        station = self._station
        with blame("axes"):
            station.axes.hold()
            self._braked_s = station.clock.monotonic()
            before = station.axes.status().positions_deg
            for _ in range(REST_LOOKS):
                station.alive()
                station.clock.sleep(0.1)
                now = station.axes.status().positions_deg
                if all(abs(now[name] - before[name]) < 1e-3 for name in now):
                    return
                before = now
        raise MotionError(f"axes do not come to rest after a hold, still moving after {0.1 * REST_LOOKS:g} s")

    def regain_states(self) -> None:
        """Open the line to the device's state switch anew."""
        if self._station.states is not None:
            with blame("device"):
                self._station.states.reconnect()

    def configure(self) -> None:
        """Set the receiver up; its settings as read back must be those the run began with."""
        settings = self._station.configure()
        wanted = self._journal.meta("settings")
        if wanted is None:
            self._journal.set_meta("settings", settings)
        elif wanted != settings:
            changed = [f"{name} = {settings.get(name)}, must be {wanted[name]}" for name in wanted
                       if settings.get(name) != wanted[name]]  # fmt: skip
            raise AcquisitionError(f"analyzer settings differ from those the run began with: {'; '.join(changed)}")

    def trust_position(self, *, home: bool) -> None:
        """Make sure that readouts mean what they say; homes the axes if asked to.

        Raises
        ------
        AcquisitionError
            If the position is not trusted and homing was not asked for.
        """
        station, reason = self._station, self._journal.meta("distrust")
        try:
            self._bring_to_rest()
            with blame("axes"):
                station.axes.release()
        except (HeldError, MotionError):
            # Standing on a limit switch, or with an encoder that creeps, only homing helps; nothing moves while it is held.
            if station.stopping or not home:
                raise
            with blame("axes"), suppress(HeldError):
                station.axes.release()
        if home:
            target = np.array([axis.home_deg for axis in station.guard.axes.values()])
            station.guard.last_deg = station.sent_deg = target
            with station.guarded(), blame("axes"):
                status = station.axes.home(lambda _: station.alive(), 600.0)
            station.guard.require_safe(status)
            if status.held:
                # A readout of zero is no proof: a controller that lost power on its way reads the same.
                raise MotionError("the axes were held while they sought their reference; home the axes")
            fault = station.guard.position_fault(wanted_deg=target, found_deg=station.guard.readouts(status))
            if fault:
                raise MotionError(f"after homing: {fault}")
            self._journal.set_meta("distrust", None)
            station.guard.unproven = ""
            self._say("home", "axes homed; positions are trusted")
            return
        if reason:
            raise AcquisitionError(f"position not trusted since: {reason}; look at the axes, then home them (`home`)")
        self._restore_turns()
        station.look()
        self.prove_position()

    def _restore_turns(self) -> None:
        """Take the whole turns of wrapping readouts from the journal's last point."""
        guard, last = self._station.guard, self._journal.last_row()
        if guard.last_deg is None and last is not None:
            guard.last_deg = last.readback_deg.copy()
        if guard.last_deg is None:
            return
        before, seen_s = guard.last_deg.copy(), guard.read_s
        with blame("axes"):
            readouts = guard.readouts(self._station.axes.status())
        for name, axis, was, now in zip(guard.names, guard.axes.values(), before, readouts, strict=True):
            if axis.modulo_deg is not None and abs(now - was) > AMBIGUOUS_TURNS * axis.modulo_deg:
                raise MotionError(f"axis {name} reads {now:.3f} deg, last {was:.3f} deg: its turns are not certain")
        if self._station.sent_deg is not None:
            since_s = self._braked_s - seen_s
            fault = lost_count(guard, before, self._station.sent_deg, readouts, since_s=since_s)
            if fault:
                raise MotionError(f"{fault}: its count may be lost, or somebody turned it; home the axes")
            guard.unproven = guard.unproven or arrived_or_lost(guard, before, readouts)

    def prove_position(self) -> None:
        """Let a tie tell axes that arrived at zero unseen from those of a controller that started anew on their way there.

        Raises
        ------
        MotionError
            If it differs from the last one by more than a quarter of what the chamber may drift, or there is none to compare it with.
        """
        guard, why = self._station.guard, self._station.guard.unproven
        if not why:
            return
        self._station.forget()
        last, row = self._journal.last_row(*TIE_ROLES), self._measured_tie()
        if last is None or row is None:
            raise MotionError(f"{why}, and there is no tie to prove the position by; home the axes")
        change = TieChange.between(last, row)
        if not self._ties.allows(change, PROOF_SHARE):
            raise MotionError(
                f"{why}, and the tie has changed by {change.level_db:+.2f} dB, {change.phase_deg:+.1f} deg: the count may "
                "be lost; home the axes"
            )
        self._note_tie(row, f"{why}; the tie agrees: {change.level_db:+.3f} dB, {change.phase_deg:+.1f} deg")
        guard.unproven = ""

    def check_remaining(self, remaining: FloatArray) -> None:
        """Raise `AcquisitionError` if any move from here through the rest of the plan is forbidden."""
        guard = self._station.guard
        here = guard.last_deg if guard.last_deg is not None else self._station.look()
        home = np.array([axis.home_deg for axis in guard.axes.values()])
        try:
            guard.check_path(np.vstack([here, remaining, home]), "plan")
        except GuardError as error:
            raise AcquisitionError(str(error)) from None

    def check_tie(self) -> Row | None:
        """Re-measure the tie after an interruption; it must agree with the journal's last.

        Raises
        ------
        AcquisitionError
            If it changed by more than `RESUME_TOLERANCE_DB`.
        """
        last = self._journal.last_row(*TIE_ROLES)
        row = None if last is None else self._measured_tie()
        if last is None or row is None:
            return None
        change = TieChange.between(last, row)
        if abs(change.level_db) > RESUME_TOLERANCE_DB:
            raise AcquisitionError(
                f"tie point changed by {change.level_db:+.2f} dB since the interruption, "
                f"limit {RESUME_TOLERANCE_DB:g} dB: look at the axes (home them, `home`, if they do not stand where they "
                "read), the device, the cables"
            )
        self._note_tie(row, f"tie point after the interruption: {change.level_db:+.3f} dB")
        return row

    def _measured_tie(self) -> Row | None:
        """Measure a tie outside the plan; None if the plan has none."""
        planned = np.flatnonzero(self._station.plan.role == ROLES.index(Role.TIE))
        return self._station.measure(int(planned[0]), Role.RESUME) if planned.size else None

    def _note_tie(self, row: Row, text: str) -> None:
        self._journal.append(row)
        self._ties.measured(row)
        self._say("tie", text)
