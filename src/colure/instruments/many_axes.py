"""Several axis controllers as one, with the interlock chain in front of every motion."""

from __future__ import annotations

import threading
from collections.abc import Callable, Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass

from colure.errors import InstrumentError, MotionError
from colure.instruments.contacts import Contacts
from colure.instruments.protocols import (
    AxesDriver,
    AxesStatus,
    HeldError,
    LostError,
    SpeedSetter,
    Timer,
    Watch,
    latch_of,
    speed_setter_of,
    unheard,
)

#: An axis that changes by less does not move, degrees.
STILL_DEG = 1e-9
#: How often a settling is looked at, seconds.
LOOK_S = 0.05


@dataclass(frozen=True)
class Controller:
    """One controller and the axes that it turns.

    reports_door
        It must report the door.
    """

    name: str
    driver: AxesDriver
    axes: tuple[str, ...]
    reports_door: bool = False


class ManyAxes:
    """See `AxesDriver`: every command goes to the controllers that it concerns, hold and status to all at once.

    fixed
        Axes that nobody turns: they stand at 0.
    """

    def __init__(
        self,
        controllers: Sequence[Controller],
        *,
        timer: Timer,
        contacts: Contacts | None = None,
        fixed: Sequence[str] = (),
    ) -> None:
        self.controllers = tuple(controllers)
        self._contacts = contacts or Contacts()
        self._fixed = tuple(fixed)
        self._timer = timer
        self._heard: Callable[[], None] = unheard
        # Axes of different controllers do not start and end together.
        self.coordinated = len(self.controllers) == 1 and self.controllers[0].driver.coordinated
        self.one_by_one = any(one.driver.one_by_one for one in self.controllers)
        self._moving: tuple[Controller, ...] = ()
        self._workers = ThreadPoolExecutor(max(1, len(self.controllers)), thread_name_prefix="axes-status")
        self.unheld: tuple[Controller, ...] = ()

    @property
    def heard(self) -> Callable[[], None]:
        """Called with every answer of any controller."""
        return self._heard

    @heard.setter
    def heard(self, heard: Callable[[], None]) -> None:
        self._heard = heard
        for one in self.controllers:
            one.driver.heard = heard

    def identity(self) -> str:
        """Return what every controller says it is."""
        if len(self.controllers) == 1:
            return self.controllers[0].driver.identity()
        return "; ".join(f"{one.name}: {one.driver.identity()}" for one in self.controllers)

    def begin(
        self,
        targets_deg: Mapping[str, float],
        *,
        per_s: float | None = None,
        from_deg: Mapping[str, float] | None = None,
    ) -> None:
        """Start a move on the controllers whose axes it moves, interlock closed; what has begun is held if one refuses.

        Raises
        ------
        DoorOpenError, MotionError
            If a contact of the interlock chain is open: nothing has moved.
        InstrumentError
            If an axis that nobody turns is to move, or axes of two controllers at a common speed.
        """
        self._contacts.require_closed()
        self._require_at_zero(targets_deg)
        parts = [
            (one, {name: targets_deg[name] for name in one.axes})
            for one in self.controllers
            if from_deg is None or any(abs(targets_deg[name] - from_deg[name]) > STILL_DEG for name in one.axes)
        ]
        if per_s is not None and len(parts) > 1:
            names = " and ".join(one.name for one, _ in parts)
            raise InstrumentError(f"axes of {names} cannot move at one common speed; use style = 'step'")
        self._moving = tuple(one for one, _ in parts)
        try:
            for one, part in parts:
                start = None if from_deg is None else {name: from_deg[name] for name in one.axes}
                one.driver.begin(part, per_s=per_s, from_deg=start)
        except InstrumentError:
            if len(parts) > 1:
                self.hold()
            raise

    def set_speeds(self, speeds_deg_s: Mapping[str, float] | None) -> None:
        """Tell every controller the speeds of its axes; None: as declared.

        Raises
        ------
        InstrumentError
            If the driver of one of them cannot be told, or its words lack a speed.
        """
        for one in self.controllers:
            own = {} if speeds_deg_s is None else {n: v for n, v in speeds_deg_s.items() if n in one.axes}
            if own:
                speed_setter_of(one.driver, one.name).set_speeds(own)
            elif speeds_deg_s is None and isinstance(one.driver, SpeedSetter):
                one.driver.set_speeds(None)

    def _require_at_zero(self, targets_deg: Mapping[str, float]) -> None:
        for name in self._fixed:
            if abs(targets_deg.get(name, 0.0)) > STILL_DEG:
                raise InstrumentError(
                    f"axis {name} target = {targets_deg[name]:g}: must be 0 deg: turntable = true, nobody turns it"
                )

    def finish(self, settle_s: float, watch: Watch, *, limit_s: float) -> AxesStatus:
        """Wait until all axes stand and have settled; every look at one controller is a look at all of them.

        Raises
        ------
        HeldError
            If motion is held.
        MotionError
            If the axes do not arrive within `limit_s`.
        """
        moving = self._moving or self.controllers
        if len(self.controllers) == 1:
            one = self.controllers[0]
            return self._merged({one.name: one.driver.finish(settle_s, self._all_of(one, watch), limit_s=limit_s)})
        for one in moving:
            one.driver.finish(0.0, self._all_of(one, watch), limit_s=limit_s)
        left = settle_s
        while left > 0.0:
            watch(None)
            self._timer.sleep(min(left, LOOK_S))
            left -= LOOK_S
        status = self.status()
        if status.held:
            raise HeldError("axes were held on their way")
        watch(status)
        return status

    def _all_of(self, mine: Controller, watch: Watch) -> Watch:
        """Return a watch that completes the status of one controller by those of the others."""

        def see(status: AxesStatus | None) -> None:
            if status is None:
                watch(None)
                return
            others = {one.name: self._status_of(one) for one in self.controllers if one is not mine}
            watch(self._merged({mine.name: status, **others}))

        return see

    def status(self) -> AxesStatus:
        """Return where all axes are, and what controllers and interlock say."""
        if len(self.controllers) == 1:
            one = self.controllers[0]
            return self._merged({one.name: one.driver.status()})
        due = {one.name: self._workers.submit(self._status_of, one) for one in self.controllers}
        return self._merged({name: future.result() for name, future in due.items()})

    @staticmethod
    def _status_of(one: Controller) -> AxesStatus:
        """Return one controller's status; its name stands before what it fails with."""
        try:
            return one.driver.status()
        except LostError as error:
            raise LostError(f"{one.name}: {error}") from None

    def _merged(self, statuses: Mapping[str, AxesStatus]) -> AxesStatus:
        positions = dict.fromkeys(self._fixed, 0.0)
        for one in self.controllers:
            positions |= {name: statuses[one.name].positions_deg[name] for name in one.axes}
            if one.reports_door and statuses[one.name].door_open is None:
                raise InstrumentError(f"chamber.toml: {one.name} must report the door, but does not")
        doors = [status.door_open for status in statuses.values() if status.door_open is not None]
        door, stop = self._contacts.open_now()
        alarms = [f"{status.alarm} ({name})" if len(statuses) > 1 else status.alarm
                  for name, status in statuses.items() if status.alarm]  # fmt: skip
        return AxesStatus(
            positions,
            moving=any(status.moving for status in statuses.values()),
            held=any(status.held for status in statuses.values()),
            door_open=any(doors) or bool(door) if doors or self._has_door else None,
            alarm="; ".join([*alarms, *([f"emergency stop: {stop}"] if stop else [])]),
            door=door,
        )

    @property
    def _has_door(self) -> bool:
        return any(contact.stands_for == "door" for contact in self._contacts.contacts)

    def pulses(self, axis: str, *, start_deg: float, step_deg: float, count: int) -> None:
        """Let the controller of an axis start sweeps by position."""
        self._of(axis).driver.pulses(axis, start_deg=start_deg, step_deg=step_deg, count=count)

    def latches(self, axis: str) -> bool:
        """Tell whether the controller of an axis stores where it is at its pulses."""
        return latch_of(self._of(axis).driver, axis) is not None

    def latched(self, axis: str, count: int) -> list[float]:
        """Return the readouts that were stored at the pulses of an axis."""
        latch = latch_of(self._of(axis).driver, axis)
        if latch is None:
            raise InstrumentError(f"{self._of(axis).name}: the controller does not store positions at its pulses")
        return latch.latched(axis, count)

    def _of(self, axis: str) -> Controller:
        """Return the controller that turns an axis."""
        return next(one for one in self.controllers if axis in one.axes)

    def hold(self) -> None:
        """Brake all axes now, every controller from a thread of its own: one that does not answer delays no other.

        Raises
        ------
        LostError
            If a controller did not take it; `unheld` names it, all others were told.
        """
        failed = self._everywhere(lambda driver: driver.hold())
        self.unheld = tuple(one for one in self.controllers if one.name in failed)
        if failed:
            raise LostError("; ".join(f"{name}: hold not taken: {error}" for name, error in failed.items()))

    def disable_unheld(self) -> None:
        """Take the drives' power away where a hold was not taken; the others are held and keep it."""
        self._raise_first(self._everywhere(lambda driver: driver.disable(), self.unheld))

    def _everywhere(
        self, action: Callable[[AxesDriver], None], chosen: Sequence[Controller] | None = None
    ) -> dict[str, Exception]:
        """Do something with all controllers at once and return what failed."""
        controllers = self.controllers if chosen is None else chosen
        failed: dict[str, Exception] = {}

        def act(one: Controller) -> None:
            try:
                action(one.driver)
            except Exception as error:  # every controller is told, whatever another one does
                failed[one.name] = error

        if len(controllers) == 1:
            act(controllers[0])
            return failed
        threads = [
            threading.Thread(target=act, args=(one,), name=f"axes {one.name}", daemon=True) for one in controllers
        ]
        for thread in threads:
            thread.start()
        for thread in threads:
            thread.join()
        return failed

    @staticmethod
    def _raise_first(failed: Mapping[str, Exception]) -> None:
        for name, error in failed.items():
            if isinstance(error, InstrumentError):
                raise type(error)(f"{name}: {error}") from None
            raise error

    def release(self) -> None:
        """Allow motion again on all controllers, interlock closed."""
        self._contacts.require_closed()
        for one in self.controllers:
            one.driver.release()

    def disable(self) -> None:
        """Take the drives' power away on all controllers."""
        self._raise_first(self._everywhere(lambda driver: driver.disable()))

    def home(self, watch: Watch, limit_s: float) -> AxesStatus:
        """Seek the reference marks of one controller after the other, interlock closed."""
        self._contacts.require_closed()
        for one in self.controllers:
            try:
                one.driver.home(watch, limit_s)
            except MotionError as error:
                raise MotionError(f"{one.name}: {error}") from None
        return self.status()

    def beat(self) -> None:
        """Tell every controller that we are alive."""
        self._raise_first(self._everywhere(lambda driver: driver.beat()))

    def reconnect(self) -> None:
        """Open the lines of all controllers anew, also if one of them fails."""
        self._raise_first(self._everywhere(lambda driver: driver.reconnect()))

    def rest(self) -> None:
        """Let go of the threads; the lines stay open."""
        self._workers.shutdown(wait=False, cancel_futures=True)

    def close(self) -> None:
        """Close the lines."""
        self.rest()
        for one in self.controllers:
            one.driver.close()
