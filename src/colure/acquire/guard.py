"""Where the axes may go, and whether they do what they were told: limits, keep-outs, turns, following."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from colure.acquire.clocks import Clock
from colure.errors import GuardError as GuardError  # noqa: PLC0414 - the room's front offers it too
from colure.errors import InstrumentError, MotionError
from colure.geometry.conventions import FloatArray
from colure.geometry.move_times import coordinated_time, move_time, travelled
from colure.geometry.solids import SolidContact
from colure.instruments.protocols import AxesStatus, DoorOpenError, LostError
from colure.model.chamber import Axis, Chamber, KeepOut, clearance_of
from colure.model.device import Device
from colure.model.joints import device_solid, values_of
from colure.values import holds_arrays

#: At speed the readout may lag by this much travel time on top of the axis' standstill limit.
LAG_S = 0.1
#: An axis begins to turn this long after its command at the latest: brakes are let go, the controller plans, seconds.
START_S = 0.5
#: Positions that a controller tells are never taken to be older than this, seconds.
OLDEST_S = 0.5
#: An axis that has not come nearer for this long is stalled.
STALL_S = 1.5
#: An axis that runs on into solids is looked for from places so far apart on its way, degrees or millimetres.
STEP_DEG = 1.0
#: Readouts that differ by less are the same, degrees.
SAME_DEG = 1e-9
#: An axis that stands this far on the wrong side of its start runs the wrong way, degrees; jitter of coarse readouts on top.
WRONG_WAY_DEG, WRONG_WAY_TOLERANCES = 0.25, 4.0


@dataclass(frozen=True)
@holds_arrays
class Bounds:
    """Limits and keep-out boxes of the axes in one order, degrees; open sides are infinite."""

    names: tuple[str, ...]
    low: FloatArray
    high: FloatArray
    boxes: FloatArray
    box_names: tuple[str, ...]

    @classmethod
    def of(cls, axes: Mapping[str, Axis], keep_out: Sequence[KeepOut]) -> Bounds:
        """Collect limits, cable budgets and keep-out sectors, (box, 2, axis)."""
        low, high = [], []
        for axis in axes.values():
            budget = np.inf if axis.wrap_budget_deg is None else axis.wrap_budget_deg
            low.append(max(axis.min_deg, axis.zero_deg - budget))
            high.append(min(axis.max_deg, axis.zero_deg + budget))
        boxes = np.empty((len(keep_out), 2, len(axes)))
        for number, sector in enumerate(keep_out):
            for place, name in enumerate(axes):
                boxes[number, :, place] = sector.intervals.get(name, (-np.inf, np.inf))
        return cls(tuple(axes), np.array(low), np.array(high), boxes, tuple(sector.name for sector in keep_out))


def outside(bounds: Bounds, starts_deg: FloatArray, targets_deg: FloatArray) -> FloatArray:
    """Tell which moves (move, axis) leave an axis' limits anywhere on their way.

    Every axis runs monotonically from start to target, so the extremes are its two ends. A
    start outside (after an overrun, say) may only be left towards the inside.
    """
    slack = 1e-6
    too_low = (targets_deg < bounds.low - slack) | ((starts_deg < bounds.low - slack) & (targets_deg < starts_deg))
    too_high = (targets_deg > bounds.high + slack) | ((starts_deg > bounds.high + slack) & (targets_deg > starts_deg))
    return np.asarray(too_low | too_high)


def through_box(box: FloatArray, starts_deg: FloatArray, targets_deg: FloatArray, *, coordinated: bool) -> FloatArray:
    """Tell which moves (move,) touch a closed keep-out box (2, axis) anywhere on their way.

    Coordinated axes run on the straight line between the ends (slab test). Otherwise each
    axis arrives in its own time and any place of the spanned box may be visited.
    """
    low, high = box
    if not coordinated:
        least, most = np.minimum(starts_deg, targets_deg), np.maximum(starts_deg, targets_deg)
        return np.asarray(np.all((most >= low) & (least <= high), axis=1))
    way = targets_deg - starts_deg
    still = np.abs(way) < 1e-12
    safe = np.where(still, 1.0, way)
    with np.errstate(invalid="ignore"):
        one, two = (low - starts_deg) / safe, (high - starts_deg) / safe
    inside = (starts_deg >= low) & (starts_deg <= high)
    enter = np.where(still, np.where(inside, -np.inf, np.inf), np.minimum(one, two))
    leave = np.where(still, np.where(inside, np.inf, -np.inf), np.maximum(one, two))
    return np.asarray(np.maximum(enter.max(axis=1), 0.0) <= np.minimum(leave.min(axis=1), 1.0))


class Guard:
    """Checks every motion before it is commanded and while it runs."""

    def __init__(
        self,
        chamber: Chamber,
        names: tuple[str, ...],
        clock: Clock,
        *,
        coordinated: bool,
        one_by_one: bool = False,
        device: Device | None = None,
    ) -> None:
        table = chamber.driven_table
        self.axes: dict[str, Axis] = {name: table[name] for name in names}
        self.names = names
        self._bounds = Bounds.of(self.axes, chamber.keep_out)
        self._joints = chamber.positioner.joints
        self._clearance = clearance_of(chamber, *(() if device is None else (device_solid(device),)))
        if self._clearance is not None and not coordinated:
            raise GuardError(
                "chamber.toml: positioner.solids: need a controller whose axes start and end every move together "
                "(profile: coordinated = true): nobody knows the way of one whose axes do not"
            )
        self._interlock = chamber.axes.interlock
        self._clock = clock
        self._coordinated = coordinated
        self.one_by_one = one_by_one
        #: Last known readouts with whole turns counted, and when they were read, seconds.
        self.last_deg: FloatArray | None = None
        self.read_s = 0.0
        #: Why a tie must prove that the axes stand where they read; empty if nothing asks for it.
        self.unproven = ""
        #: How old a readout of moving axes may be beyond the look that brought it: what their controller has shown so far.
        self.age_s = LAG_S

    def check_path(self, path_deg: FloatArray, what: str) -> None:
        """Refuse a list of positions (position, axis) if a move between two of them is forbidden.

        Raises
        ------
        GuardError
            Naming the move, the axis, its limit, or the keep-out sector.
        """
        if len(path_deg) < 2:
            return
        starts, targets = path_deg[:-1], path_deg[1:]
        beyond = outside(self._bounds, starts, targets)
        if beyond.any():
            move, axis = np.argwhere(beyond)[0]
            raise GuardError(
                f"{what}: move {move}: axis {self.names[axis]} target = {targets[move, axis]:g}: must be from "
                f"{self._bounds.low[axis]:g} to {self._bounds.high[axis]:g} {self.axes[self.names[axis]].unit}"
            )
        for box, name in zip(self._bounds.boxes, self._bounds.box_names, strict=True):
            touched = through_box(box, starts, targets, coordinated=self._coordinated)
            if touched.any():
                move = int(np.flatnonzero(touched)[0])
                raise GuardError(
                    f"{what}: move {move} from {self._text(starts[move])} to {self._text(targets[move])} "
                    f"passes through keep-out sector {name!r}"
                )
        self._require_clear(starts, targets, what)

    def _require_clear(self, starts_deg: FloatArray, targets_deg: FloatArray, what: str) -> None:
        """Raise `GuardError` if solids of a mount with joints meet anywhere on a move."""
        if self._clearance is None:
            return
        first_contact = self._clearance.first_contact(
            values_of(self._joints, starts_deg), values_of(self._joints, targets_deg)
        )
        if first_contact is None:
            return
        move, contact = first_contact
        raise GuardError(
            f"{what}: move {move} from {self._text(starts_deg[move])} to {self._text(targets_deg[move])} would bring "
            f"{contact.one} to {contact.other} (gap {1e3 * contact.gap:.3g} mm, must stay above 1 mm)"
        )

    def _text(self, place: FloatArray) -> str:
        units = [axis.unit for axis in self.axes.values()]
        if set(units) == {"deg"}:
            return ", ".join(f"{name} {value:g}" for name, value in zip(self.names, place, strict=True)) + " deg"
        return ", ".join(f"{name} {value:g} {unit}" for name, value, unit in zip(self.names, place, units, strict=True))

    def readouts(self, status: AxesStatus) -> FloatArray:
        """Return a status' positions in plan order, whole turns counted, and remember them.

        Raises
        ------
        LostError
            If a position is not finite: nothing may be taken for "in position" then.
        """
        positions_deg = np.array([status.positions_deg[name] for name in self.names])
        if not np.isfinite(positions_deg).all():
            bad = int(np.argmin(np.isfinite(positions_deg)))
            raise LostError(f"axis {self.names[bad]} reads {positions_deg[bad]:g}: no position (deg)")
        for place, axis in enumerate(self.axes.values()):
            if axis.modulo_deg is not None:
                near = axis.home_deg if self.last_deg is None else self.last_deg[place]
                positions_deg[place] += axis.modulo_deg * np.round((near - positions_deg[place]) / axis.modulo_deg)
        self.last_deg, self.read_s = positions_deg, self._clock.monotonic()
        return positions_deg

    def require_safe(self, status: AxesStatus) -> None:
        """Raise if an alarm stands or the door is open.

        Raises
        ------
        MotionError, DoorOpenError
            In the controller's own words.
        InstrumentError
            If the chamber has an interlock and the controller does not report it.
        """
        if status.alarm:
            raise MotionError(f"axis controller reports {status.alarm}: home the axes before going on")
        if status.door_open:
            which = f"interlock: {status.door}" if status.door else "door open"
            raise DoorOpenError(f"{which}: close it, make sure that nobody is inside, then resume")
        if self._interlock and status.door_open is None:
            raise InstrumentError("chamber.toml: axes.interlock = true, but the controller does not report the door")

    def leaves(self, *, found_deg: FloatArray, start_deg: FloatArray) -> str:
        """Say which limit or keep-out sector a running move has entered; empty if none that it did not start in."""
        slack = np.array([max(axis.readback_tolerance_deg, 1e-6) for axis in self.axes.values()])
        gone = (found_deg < np.minimum(self._bounds.low, start_deg) - slack) | (
            found_deg > np.maximum(self._bounds.high, start_deg) + slack
        )
        if gone.any():
            axis = int(np.flatnonzero(gone)[0])
            return (
                f"axis {self.names[axis]} stands at {found_deg[axis]:.3f} {self.axes[self.names[axis]].unit}, outside "
                f"{self._bounds.low[axis]:g} to {self._bounds.high[axis]:g} {self.axes[self.names[axis]].unit}"
            )
        for (low, high), name in zip(self._bounds.boxes, self._bounds.box_names, strict=True):
            began_inside = np.all((start_deg >= low) & (start_deg <= high))
            if not began_inside and np.all((found_deg >= low + slack) & (found_deg <= high - slack)):
                return f"axes stand in keep-out sector {name!r}: {self._text(found_deg)}"
        return ""

    def gap(self, path_deg: FloatArray, place: int, most: float) -> tuple[float, str]:
        """Return how far one axis may run off the moves of a path before it meets a limit, a keep-out sector or solids, and which.

        most
            Further is not looked.
        """
        axis = self.axes[self.names[place]]
        lowest, highest = float(path_deg[:, place].min()) - axis.approach_deg, float(path_deg[:, place].max())
        low, high = float(self._bounds.low[place]), float(self._bounds.high[place])
        gaps = [(lowest - low, f"below its limit of {low:g}"), (high - highest, f"beyond its limit of {high:g}")]
        starts, targets = path_deg[:-1], path_deg[1:]
        for box, box_name in zip(self._bounds.boxes, self._bounds.box_names, strict=True):
            apart, touches = 0.0, most
            if not np.isfinite(box[:, place]).any():
                continue
            while touches - apart > 1e-3:
                middle = 0.5 * (apart + touches)
                wider = box.copy()
                wider[:, place] += (-middle, middle)
                met = through_box(wider, starts, targets, coordinated=self._coordinated).any()
                apart, touches = (apart, middle) if met else (middle, touches)
            gaps.append((apart, f"into keep-out sector {box_name!r}"))
        gaps += self._solid_gaps(_places_along(path_deg), place, most)
        gap, what = min(gaps)
        return max(gap, 0.0), what

    def _solid_gaps(self, places_deg: FloatArray, place: int, most: float) -> list[tuple[float, str]]:
        """Return how far one axis may run on from any of these places, either way, before solids of a mount with joints meet, and which."""
        clearance, joints = self._clearance, self._joints
        if clearance is None:
            return []
        here, approach = values_of(joints, places_deg), self.axes[self.names[place]].approach_deg

        def meets(way: float) -> SolidContact | None:
            for on in (way, -way - approach):
                ends_deg = places_deg.copy()
                ends_deg[:, place] += on
                if contact := clearance.first_contact(here, values_of(joints, ends_deg)):
                    return contact[1]
            return None

        apart, touches, first = 0.0, most, meets(most)
        if first is None:
            return []
        while touches - apart > 1e-2:
            middle = 0.5 * (apart + touches)
            contact = meets(middle)
            apart, touches, first = (middle, touches, first) if contact is None else (apart, middle, contact)
        return [(apart, f"past where it brings {first.one} to {first.other}")]

    def wire(self, target_deg: FloatArray) -> dict[str, float]:
        """Return a target by axis name."""
        return dict(zip(self.names, (float(value) for value in target_deg), strict=True))

    def expected_s(self, ways_deg: FloatArray) -> float:
        """Return how long a move by these angles takes at full speed."""
        axes = list(self.axes.values())
        limits = [(axis.speed_deg_s, axis.acceleration_deg_s2, axis.jerk) for axis in axes]
        if self._coordinated:
            return float(coordinated_time(ways_deg, *np.transpose(limits)))
        own = [float(move_time(abs(way), *limit)) for way, limit in zip(ways_deg, limits, strict=True)]
        # Axes that wait for each other, or rest on their way, take the sum at least; a rest is as long as a start and a stop.
        return 2.0 * sum(own) if self.one_by_one else max(own)

    def position_fault(self, *, wanted_deg: FloatArray, found_deg: FloatArray) -> str:
        """Say which axis stands where it should not; empty if all are right."""
        for name, axis, wanted, readout in zip(self.names, self.axes.values(), wanted_deg, found_deg, strict=True):
            # Written so that a value that is no number is never in position.
            if not abs(wanted - readout) <= axis.readback_tolerance_deg:
                return (
                    f"axis {name} stands at {readout:.4f} {axis.unit}, commanded {wanted:.4f} {axis.unit}, "
                    f"limit {axis.readback_tolerance_deg:g} {axis.unit}"
                )
        return ""


def _places_along(path_deg: FloatArray) -> FloatArray:
    """Return places on the moves of a path, `STEP_DEG` apart at most on every axis, ends included."""
    steps = np.maximum(np.ceil(np.abs(np.diff(path_deg, axis=0)).max(axis=1, initial=0.0) / STEP_DEG), 1.0).astype(int)
    parts = [
        start + (end - start) * (np.arange(count) / count)[:, None]
        for start, end, count in zip(path_deg[:-1], path_deg[1:], steps, strict=True)
    ]
    return np.unique(np.round(np.concatenate([*parts, path_deg[-1:]]), 6), axis=0)


class MotionWatch:
    """Looks at one running move; call it with every status, and `begun` once the command is out.

    How far an axis may lag follows from its speed and from how old its readout may be: on a slow line the question takes
    a tenth of a second, and many controllers tell positions that they renew no more often.

    Raises
    ------
    MotionError
        For an alarm, a jump of the readout, a stall, or a following error beyond the limit.
    DoorOpenError
        If the door opens.
    """

    def __init__(
        self,
        guard: Guard,
        target_deg: FloatArray,
        clock: Clock,
        *,
        per_s: float | None = None,
        also: Callable[[], None] | None = None,
    ) -> None:
        assert guard.last_deg is not None  # the engine has looked before it moves
        self._guard = guard
        self._clock = clock
        self._start = guard.last_deg.copy()
        self._target = target_deg
        self._sign = np.sign(target_deg - self._start)
        self._also = also
        way = np.abs(target_deg - self._start)
        able = np.array([(one.speed_deg_s, one.acceleration_deg_s2, one.jerk) for one in guard.axes.values()]).T
        own = move_time(way, able[0], able[1], able[2])
        fastest = guard.expected_s(target_deg - self._start)
        self.expected_s = fastest if per_s is None else 1.0 / per_s + fastest
        self._slack_s = self.expected_s - own
        self._begin = clock.monotonic()
        self._before = self._start
        # A status is as old as the look before it at most: the computer may be busy elsewhere in between.
        self._looked_s, self._earlier_s = self._begin, self._begin
        self._nearest = float(way.sum())
        self._nearest_s = self._begin
        #: When each axis was last seen where it began, and when any readout last changed.
        self._left_s = np.full(way.size, self._begin)
        self._changed_s = self._begin

    def begun(self) -> None:
        """Say that the command is out: the exchanges that sent it are no motion."""
        self._begin = self._nearest_s = self._changed_s = self._clock.monotonic()
        self._left_s[:] = self._begin

    def __call__(self, status: AxesStatus | None) -> None:
        """Look at one status; None only says that we are still waiting."""
        if self._also is not None:
            self._also()
        if status is None:
            return
        now = self._clock.monotonic()
        readouts = self._guard.readouts(status)
        self._guard.require_safe(status)
        if self._clock.real_time:
            self._check_jump(readouts, now)
        left = self._guard.leaves(found_deg=readouts, start_deg=self._start)
        if left:
            raise MotionError(f"{left}; home the axes")
        self._check_direction(readouts)
        if not self._clock.real_time:
            return
        if status.moving:
            self._learn_age(readouts, now)
            self._check_progress(readouts, now)
            self._check_following(readouts)
        self._before = readouts
        self._looked_s, self._earlier_s = now, self._looked_s

    def _check_jump(self, readouts: FloatArray, now: float) -> None:
        for name, axis, was, value in zip(
            self._guard.names, self._guard.axes.values(), self._before, readouts, strict=True
        ):
            limit = 1.2 * axis.speed_deg_s * (now - self._earlier_s + LAG_S) + axis.following_error_deg
            if abs(value - was) > limit:
                raise MotionError(
                    f"axis {name} jumped from {was:.3f} to {value:.3f} deg, limit {limit:.3f} deg; home the axes"
                )

    def _check_direction(self, readouts: FloatArray) -> None:
        """Raise for an axis on the wrong side of its start, or past its target by more than it may lag."""
        for place, (name, axis) in enumerate(self._guard.axes.items()):
            sign = self._sign[place] or 1.0
            travel = float(sign * (readouts[place] - self._start[place]))
            jitter = WRONG_WAY_TOLERANCES * axis.readback_tolerance_deg
            back = max(WRONG_WAY_DEG, jitter) + (0.0 if self._sign[place] else axis.following_error_deg)
            if travel < -back:
                raise MotionError(
                    f"axis {name} runs the wrong way: {self._start[place]:.3f} to {readouts[place]:.3f} deg, target "
                    f"{self._target[place]:.3f} deg; check `sense` in chamber.toml and the axis' wiring, then home the axes"
                )
            past = travel - abs(float(self._target[place] - self._start[place]))
            if past > axis.following_error_deg + jitter and self._clock.real_time:
                raise MotionError(
                    f"axis {name} ran {past:.3f} deg past its target {self._target[place]:.3f} deg; home the axes"
                )

    def _check_progress(self, readouts: FloatArray, now: float) -> None:
        # The sum: an axis that waits for another one does not come nearer.
        left = float(np.abs(self._target - readouts).sum())
        if left < self._nearest - 1e-3:
            self._nearest, self._nearest_s = left, now
        elif now - self._nearest_s > STALL_S:
            raise MotionError(f"axes stalled {left:.3f} deg before their target for {STALL_S:g} s; home the axes")

    def _learn_age(self, readouts: FloatArray, now: float) -> None:
        """Learn when each axis began to turn, and how rarely the controller renews the positions that it tells."""
        tolerances = np.array([axis.readback_tolerance_deg for axis in self._guard.axes.values()])
        resting = np.abs(readouts - self._start) <= tolerances
        self._left_s[resting] = min(now, self._begin + START_S)
        if np.any(np.abs(readouts - self._before) > SAME_DEG):
            # A look in between saw the same once more; before the first change the axes may have rested.
            if self._looked_s > self._changed_s and not np.array_equal(self._before, self._start):
                self._guard.age_s = max(self._guard.age_s, min(now - self._changed_s, OLDEST_S))
            self._changed_s = now

    def _check_following(self, readouts: FloatArray) -> None:
        """Compare with the slowest motion that was commanded: ahead of it is fine, behind is not."""
        for place, (name, axis) in enumerate(self._guard.axes.items()):
            # A coordinated or timed axis is slower than its own profile by the slack at most.
            elapsed = self._looked_s - self._left_s[place] - self._slack_s[place]
            way = abs(self._target[place] - self._start[place])
            due = travelled(elapsed, float(way), axis.speed_deg_s, axis.acceleration_deg_s2, axis.jerk)
            behind = due - float(self._sign[place] * (readouts[place] - self._start[place]))
            limit = axis.following_error_deg + self._guard.age_s * axis.speed_deg_s
            if behind > limit:
                raise MotionError(
                    f"axis {name} follows {behind:.3f} deg behind its command, limit {limit:.3f} deg; home the axes"
                )
