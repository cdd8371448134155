"""How the engine insists on an action: what fails is tried again, what keeps failing waits for a person."""

from __future__ import annotations

from collections.abc import Callable

from colure.acquire.control import Control
from colure.acquire.gate import StartCheck
from colure.acquire.station import PositionError, Station
from colure.errors import InstrumentError, MotionError
from colure.instruments.protocols import DoorOpenError, HeldError, LostError

RETRIES = 3
#: Seconds before the second, third, ... attempt after a lost connection.
BACKOFF_S = (0.1, 0.5, 2.0)


def _nothing() -> None:
    """Nothing to recover."""


class Persistence:
    """Carries actions out until they succeed, a person has to come, or nothing may be tried again.

    note, rest, reenter
        Write an event down; pause until a person resumes; prove everything anew after that.
    """

    def __init__(
        self,
        station: Station,
        gate: StartCheck,
        control: Control,
        *,
        note: Callable[[str, str], None],
        rest: Callable[[str], None],
        reenter: Callable[[], None],
    ) -> None:
        self._station, self._gate, self._control = station, gate, control
        self._note, self._rest, self._reenter = note, rest, reenter

    def insist(self, action: Callable[[], None], what: str) -> None:
        """Run an action: retries transient faults; pauses for persistent ones.

        Every third failure waits for a person; door and hold faults wait at once. Recovery may
        fail like anything else and is then tried again within the same count.
        """
        attempt, recovery = 1, _nothing
        while True:
            try:
                recovery()
                self._explained(action)
            except MotionError:
                raise
            except DoorOpenError as error:
                reason = str(error)
            except HeldError as error:
                if self._control.stopping:
                    raise
                reason = self._why_held(error)
            except InstrumentError as error:
                reason = self._why_rest(error, what, attempt)
                if not reason:
                    attempt, recovery = attempt + 1, self._recovery(error, attempt)
                    continue
            else:
                return
            self._rest(reason)
            attempt, recovery = 1, self._reenter

    def _explained(self, action: Callable[[], None]) -> None:
        """Run an action; what fails because interlock or watchdog braked meanwhile is theirs, whatever it looks like."""
        try:
            action()
        except InstrumentError:
            if not self._control.stopping:
                self._station.contacts.require_never_opened()
                self._station.raise_late()
            raise

    def _why_held(self, error: HeldError) -> str:
        """Say why the controller holds although nobody asked us; alarms are motion faults."""
        try:
            self._station.guard.require_safe(self._station.axes.status())
        except MotionError:
            raise
        except InstrumentError as better:
            return str(better)
        return f"axes are held by their controller: {error}"

    def _why_rest(self, error: InstrumentError, what: str, attempt: int) -> str:
        """Say why a failure needs a person; empty if another attempt is due."""
        if self._control.stopping:
            raise HeldError(self._control.reason) from None
        if attempt >= RETRIES:
            if isinstance(error, PositionError):
                raise MotionError(f"{error} (after {RETRIES} attempts)") from None
            return f"{what}: {error} (after {RETRIES} attempts)"
        self._note("warning", f"{what}: {error}; attempt {attempt + 1} of {RETRIES}")
        return ""

    def _recovery(self, error: InstrumentError, attempt: int) -> Callable[[], None]:
        """Return what brings the instrument that failed back into a known state."""
        instrument, lost = getattr(error, "instrument", ""), isinstance(error, LostError)

        def recover() -> None:
            if lost:
                self._station.clock.sleep(BACKOFF_S[min(attempt, len(BACKOFF_S)) - 1])
            if instrument == "analyzer" and (lost or attempt > 1):
                self._gate.regain_analyzer()
            elif instrument == "axes" and lost:
                self._gate.regain_axes()
            elif instrument == "axes":
                # Whatever went wrong, axes may be under way: they stand before they are told anything again.
                self._gate.trust_position(home=False)
            elif instrument == "device" and lost:
                self._gate.regain_states()
            self._gate.prove_position()
            self._station.forget()

        return recover
