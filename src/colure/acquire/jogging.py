"""One move by hand: the same limits, keep-outs and watch over the motion as in a run, and a brake whatever goes wrong."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager, suppress
from dataclasses import replace

import numpy as np

from colure.acquire.clocks import Clock
from colure.acquire.guard import SAME_DEG, Guard, MotionWatch
from colure.errors import GuardError, InstrumentError, MotionError
from colure.geometry.conventions import FloatArray
from colure.instruments.protocols import AxesDriver, speed_setter_of
from colure.model.chamber import Chamber
from colure.model.device import Device

#: A jog that proves the direction of an axis turns it by this, degrees; what comes back may differ by this share.
PROOF_DEG, PROOF_SHARE = 1.0, 0.1
#: A move that is held on its way: its length, after how much of it, and how long the axis may take to stand (s).
HOLD_DEG, HOLD_AFTER_DEG, STAND_S, RELEASED_S = 10.0, 0.5, 5.0, 0.3
#: Slowest speed that an axis may be told, as in chamber.toml, deg/s (mm/s).
SLOWEST_DEG_S = 0.01
#: A fast axis is given this long to be looked at and held on its way, seconds.
HOLD_S = 0.5


def _nothing() -> None:
    """Nobody asks for a stop."""


class Jogger:
    """Moves axes by hand; raises `GuardError` before a forbidden move, `InstrumentError` after a brake."""

    def __init__(
        self,
        chamber: Chamber,
        axes: AxesDriver,
        clock: Clock,
        *,
        device: Device | None = None,
        look: Callable[[], None] | None = None,
    ) -> None:
        """Take the device where solids of a mount with joints must not touch it."""
        self._axes, self._clock, self._look = axes, clock, look or _nothing
        self._guard = Guard(
            chamber,
            tuple(chamber.driven_table),
            clock,
            coordinated=axes.coordinated,
            one_by_one=axes.one_by_one,
            device=device,
        )

    def where(self) -> dict[str, float]:
        """Return the readouts; raises if an alarm stands or the door is open."""
        status = self._axes.status()
        self._guard.require_safe(status)
        return self._guard.wire(self._guard.readouts(status))

    def limits(self) -> dict[str, tuple[float, float]]:
        """Return the travel of every axis, degrees (millimetres of a prismatic joint)."""
        return {name: (axis.min_deg, axis.max_deg) for name, axis in self._guard.axes.items()}

    def speeds(self) -> dict[str, float]:
        """Return the speed of every axis as chamber.toml declares it, the fastest that it is ever told, deg/s (mm/s)."""
        return {name: axis.speed_deg_s for name, axis in self._guard.axes.items()}

    def unit(self, name: str) -> str:
        """Return the unit of an axis' readout."""
        return self._guard.axes[name].unit

    @property
    def turning(self) -> tuple[str, ...]:
        """Names of the axes that turn."""
        return tuple(name for name, axis in self._guard.axes.items() if not axis.fixed)

    def to(self, targets_deg: Mapping[str, float], *, speed_deg_s: float | None = None) -> dict[str, float]:
        """Move the named axes, the others stay, and return the readouts at the end.

        Parameters
        ----------
        speed_deg_s
            No axis goes faster than this, deg/s (mm/s of a prismatic joint); left out: the speeds of chamber.toml.

        Raises
        ------
        GuardError
            If an axis is unknown or the move is forbidden, or an axis cannot go as fast; nothing has moved.
        InstrumentError
            If the controller cannot be told a speed; nothing has moved.
        MotionError
            If an axis does not arrive, or does anything else than it was told; it is braked.
        """
        unknown = [name for name in targets_deg if name not in self._guard.axes]
        if unknown:
            raise GuardError(f"axis {unknown[0]!r}: must be one of {', '.join(self._guard.axes)}")
        here = self.where()
        start = np.array(list(here.values()))
        target = np.array([float(targets_deg.get(name, here[name])) for name in self._guard.names])
        self._guard.check_path(np.stack([start, target]), "jog")
        moving = [name for name, way in zip(self._guard.names, target - start, strict=True) if abs(way) > SAME_DEG]
        self._require_speed(speed_deg_s, moving)
        if self._axes.status().held:
            self._axes.release()
        with self._at_speed(speed_deg_s, moving):
            readouts = self._carried_out(here, target)
        fault = self._guard.position_fault(wanted_deg=target, found_deg=readouts)
        if fault:
            raise MotionError(fault)
        return self._guard.wire(readouts)

    def _carried_out(self, here: Mapping[str, float], target: FloatArray) -> FloatArray:
        """Move to a target, watched, and return the readouts; the axes are braked whatever goes wrong."""
        watch = MotionWatch(self._guard, target, self._clock, also=self._look)
        settle_s = max(axis.settle_s for axis in self._guard.axes.values())
        try:
            self._axes.begin(self._guard.wire(target), from_deg=here)
            watch.begun()
            status = self._axes.finish(settle_s, watch, limit_s=2.0 * watch.expected_s + settle_s + 10.0)
            return self._guard.readouts(status)
        except BaseException:
            self._axes.hold()
            raise

    def _require_speed(self, speed_deg_s: float | None, names: Sequence[str]) -> None:
        """Raise `GuardError` if one of these axes cannot go at a speed."""
        if speed_deg_s is None:
            return
        for name in names:
            axis = self._guard.axes[name]
            # Written so that a value that is no number is no speed.
            if not SLOWEST_DEG_S <= speed_deg_s <= axis.speed_deg_s:
                raise GuardError(
                    f"axis {name} speed = {speed_deg_s:g}: must be from {SLOWEST_DEG_S:g} to {axis.speed_deg_s:g} {axis.unit}/s "
                    "(its speed in chamber.toml)"
                )

    @contextmanager
    def _at_speed(self, speed_deg_s: float | None, names: Sequence[str]) -> Iterator[None]:
        """Let axes go at a speed in the block; both the controller and the watch over the motion know of it."""
        if speed_deg_s is None or not names:
            yield
            return
        setter, declared = speed_setter_of(self._axes, "axis controller"), dict(self._guard.axes)
        try:
            setter.set_speeds(dict.fromkeys(names, speed_deg_s))
            for name in names:
                self._guard.axes[name] = declared[name].model_copy(update={"speed_deg_s": speed_deg_s})
            yield
        except BaseException:
            self._guard.axes.update(declared)
            # The controller is told its speeds anew at the next connection, too.
            with suppress(InstrumentError):
                setter.set_speeds(None)
            raise
        self._guard.axes.update(declared)
        setter.set_speeds(None)

    def home(self) -> dict[str, float]:
        """Seek the reference marks; positions can be trusted afterwards.

        An alarm forbids nothing here: it may say that the axes were never homed, or stand on a limit switch.

        Raises
        ------
        DoorOpenError, MotionError
            If the door is open, or an alarm stands afterwards.
        """
        status = self._axes.status()
        self._guard.require_safe(replace(status, alarm=""))
        if status.held:
            self._axes.release()
        try:
            status = self._axes.home(lambda _: self._look(), 600.0)
        except BaseException:
            self._axes.hold()
            raise
        self._guard.require_safe(status)
        return self._guard.wire(self._guard.readouts(status))

    def prove(self, name: str) -> float:
        """Turn one axis by a degree and back, and return what the readout made of it.

        Raises
        ------
        InstrumentError
            If the readout grew by another angle.
        """
        here = self.where()[name]
        low, high = self.limits()[name]
        step = PROOF_DEG if here + PROOF_DEG <= high else -PROOF_DEG
        if here + step < low:
            raise GuardError(f"axis {name} has less than {PROOF_DEG:g} deg of travel")
        made = self.to({name: here + step})[name] - here
        self.to({name: here})
        if abs(made - step) > PROOF_SHARE * PROOF_DEG:
            raise InstrumentError(f"axis {name}: readout changed by {made:+.3f} deg, commanded {step:+.3f} deg")
        return float(made)

    def hold_way_deg(self, name: str, here_deg: float) -> float:
        """Return how far an axis would turn if it were not held on its way; the sign says where there is room.

        Raises
        ------
        GuardError
            If it has less than `HOLD_DEG` of travel either way.
        """
        low, high = self.limits()[name]
        wanted = max(HOLD_DEG, HOLD_S * self._guard.axes[name].speed_deg_s)
        up, down = min(wanted, high - here_deg), min(wanted, here_deg - low)
        if max(up, down) < HOLD_DEG:
            raise GuardError(f"axis {name} has less than {HOLD_DEG:g} deg of travel")
        return up if up >= down else -down

    def prove_hold(self, name: str) -> str:
        """Hold one axis on its way, release it, see that it rests, bring it back, and say what was seen.

        Raises
        ------
        InstrumentError
            If it does not stand, reads as free although held, arrives in spite of the hold, or goes on when released.
        GuardError
            If it has less than `HOLD_DEG` of travel.
        """
        here = self.where()
        start = np.array(list(here.values()))
        step = self.hold_way_deg(name, here[name])
        target = np.array([value + (step if one == name else 0.0) for one, value in here.items()])
        self._guard.check_path(np.stack([start, target]), "hold")
        held_deg, stood_s = self._held_on_its_way(name, here, target)
        self._axes.release()
        self._clock.sleep(RELEASED_S)
        rested = self.where()[name]
        if abs(rested - held_deg) > PROOF_SHARE * PROOF_DEG:
            self._axes.hold()
            raise InstrumentError(f"axis {name} goes on when it is released: {held_deg:.3f} to {rested:.3f} deg")
        self.to({name: here[name]})
        return f"held after {held_deg - here[name]:+.2f} deg, stood within {stood_s:.2f} s, rested when released"

    def _held_on_its_way(self, name: str, here: Mapping[str, float], target: FloatArray) -> tuple[float, float]:
        """Begin a move, hold it, and return where the axis stands and how long that took, seconds."""
        watch = MotionWatch(self._guard, target, self._clock, also=self._look)
        try:
            self._axes.begin(self._guard.wire(target), from_deg=here)
            watch.begun()
            begin = self._clock.monotonic()
            while abs(self._seen(watch)[name] - here[name]) < HOLD_AFTER_DEG:
                if self._clock.monotonic() - begin > watch.expected_s + STAND_S:
                    raise MotionError(f"axis {name} has not moved by {HOLD_AFTER_DEG:g} deg in time")
        except BaseException:
            self._axes.hold()
            raise
        self._axes.hold()
        held_s, before = self._clock.monotonic(), np.inf
        while abs((position_deg := self.where()[name]) - before) > 1e-3:
            before = position_deg
            if self._clock.monotonic() - held_s > STAND_S:
                raise InstrumentError(f"axis {name} still moves {STAND_S:g} s after a hold")
            self._clock.sleep(0.02)
        stood_s = self._clock.monotonic() - held_s
        wanted = float(target[self._guard.names.index(name)])
        if abs(position_deg - wanted) < PROOF_SHARE * PROOF_DEG:
            raise InstrumentError(
                f"axis {name} reached its target {abs(wanted - here[name]):g} deg away in spite of a hold"
            )
        if not self._axes.status().held:
            raise InstrumentError(f"axis {name} does not read as held after a hold")
        return position_deg, stood_s

    def _seen(self, watch: MotionWatch) -> dict[str, float]:
        """Look at a running move once."""
        self._clock.sleep(0.01)
        status = self._axes.status()
        watch(status)
        return self._guard.wire(self._guard.readouts(status))
