"""A scan that ends by itself: after every even set of slices the figures are read, until those wanted are known well enough.

The engine does not wait for this: points are measured on while another process reads the figures of what there is. On a simulated
chamber without a time of its own it does: there a whole scan passes while the figures of its first slices are read.
"""

from __future__ import annotations

import threading
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, replace
from functools import partial
from typing import TYPE_CHECKING, Any

import numpy as np

from colure.app.services.connecting import is_simulated
from colure.app.storage.before_motion import keep_before_motion
from colure.app.storage.folders import RunFolder
from colure.errors import InputError
from colure.geometry.kinematics import Geometry
from colure.model.admission import read_json
from colure.model.events import Event, Listener
from colure.model.goal import Want
from colure.model.loading import validate
from colure.model.plan import ROLES, Plan, Role, even_counts

if TYPE_CHECKING:
    from collections.abc import Callable
    from concurrent.futures import Future

    import xarray as xr

    from colure.acquire.journal import Row
    from colure.model.campaign import Campaign
    from colure.model.figure import Figure

#: A patient run goes on after this time without an answer, seconds.
LONGEST_ANSWER_S = 300.0


def parsed(text: str) -> Want:
    """Return what `gain_dbi=0.3,beamwidth_e_deg=0.2` asks for.

    Raises
    ------
    InputError
        If it is not written so, or names a figure that no forecast knows.
    """
    wanted: dict[str, object] = {}
    for part in filter(None, (one.strip() for one in text.split(","))):
        name, equals, value = (one.strip() for one in part.partition("="))
        try:
            wanted[name] = float(value)
        except ValueError:
            equals = ""
        if not equals or name == "":
            raise InputError([f"until: {part!r}: must be FIGURE=UNCERTAINTY, such as gain_dbi=0.3"])
    if not wanted:
        raise InputError(["until: names no figure: must be FIGURE=UNCERTAINTY, such as gain_dbi=0.3"])
    return validate(Want, wanted, source="--until")


def with_until(campaign: Campaign, run: RunFolder | None = None, until: Want | None = None) -> Campaign:
    """Return the campaign with what its scan is to know: told now, kept with the run, or as goal.toml says.

    Raises
    ------
    InputError
        If the scan cannot end early, or the run began without.
    """
    kept = _kept(run)
    wanted = until or kept or campaign.goal.until
    if wanted is None or not wanted.wishes:
        return campaign
    if run is not None and run.journal.exists() and kept is None and not campaign.goal.progressive:
        raise InputError([f"until: run {run.path.name} began with its slices side by side: begin another run (`run`)"])
    _require_possible(campaign)
    return replace(campaign, goal=campaign.goal.model_copy(update={"until": wanted}))


def _require_possible(campaign: Campaign) -> None:
    geometry, goal = campaign.chamber.positioner.geometry, campaign.goal
    faults = []
    if geometry is not Geometry.ROLL_OVER_AZIMUTH:
        faults.append(
            f"until: positioner.geometry = {geometry.value!r}: must be 'roll-over-azimuth', whose slices cover the sphere evenly "
            "after a few; measure the whole plan"
        )
    if goal.scan is not None:
        faults.append("until: goal.toml has [scan]: must be a scan that Colure lays out; leave one of them out")
    if campaign.device.states is not None:
        faults.append("until: device.toml has states: must be a device without; measure the whole plan")
    if faults:
        raise InputError(faults)


def _kept(run: RunFolder | None) -> Want | None:
    if run is None or not run.until.is_file():
        return None
    return validate(Want, read_json(run.until), source=run.until.name)


@dataclass(frozen=True, kw_only=True)
class EvenSet:
    """So many slices, evenly spaced: complete when every point of the plan up to `last` is measured."""

    slices: int
    planned: int
    last: int


def even_sets(plan: Plan) -> list[EvenSet]:
    """Return the even sets of slices that are complete before the plan is, the smallest first."""
    planned, scan = plan.grid.slices_planned, plan.role == ROLES.index(Role.SCAN)
    sets = []
    for count in even_counts(planned):
        needed = scan & (plan.slice_index % (planned // count) == 0)
        sets.append(EvenSet(slices=count, planned=planned, last=int(np.flatnonzero(needed).max())))
    # A larger set that is complete no later makes the smaller one useless.
    return [one for n, one in enumerate(sets) if all(other.last > one.last for other in sets[n + 1 :])]


def require_reachable(campaign: Campaign, plan: Plan) -> None:
    """Raise `InputError` if a scan is to end by a figure that it does not give: it would never end by itself."""
    from colure.planning.choose import why_without_forecast

    assert campaign.goal.until is not None  # who asks has wishes
    faults = [
        f"until: {name} = {limit:g}: {why_without_forecast(campaign, name)}"
        for name, limit in campaign.goal.until.wishes.items()
        if name not in plan.predicted["forecast"]
    ]
    if faults:
        raise InputError(faults)


def ends_text(plan: Plan, want: Want) -> str:
    """Say when a scan may end, in words."""
    wanted = ", ".join(f"{name} \u00b1{limit:g}" for name, limit in want.wishes.items())
    sets, forecast = even_sets(plan), plan.predicted["forecast"]
    if not sets:
        return f"after the whole plan: too few slices to end early ({wanted} wanted)"
    short = [
        f"{name} \u00b1{forecast[name]['expanded']:.2g} ({limit:g} wanted)"
        for name, limit in want.wishes.items()
        if forecast[name]["expanded"] > limit
    ]
    if short:
        return f"after the whole plan: even that is expected to give only {', '.join(short)}"
    duration = float(plan.predicted["duration_s"])
    when = ", ".join(
        f"{one.slices} of {one.planned} slices (about {duration * (one.last + 1) / len(plan):.0f} s)" for one in sets
    )
    return f"as soon as {wanted} is known; figures are read after {when}"


@dataclass(frozen=True)
class FiguresSoFar:
    """What is known of the wanted figures: largest half width of the interval over all frequencies, and the values.

    half_widths
        Infinite where a figure has no value or no upper end.
    values
        By figure, of every frequency.
    doubts
        Why a figure is not to be used, whatever its interval.
    """

    half_widths: Mapping[str, float]
    values: Mapping[str, tuple[float, ...]]
    doubts: tuple[str, ...] = ()

    def enough(self, want: Want, before: FiguresSoFar | None) -> bool:
        """Tell whether all wanted figures are known, and agree with what fewer slices said of them."""
        if self.doubts or any(self.half_widths.get(name, np.inf) > limit for name, limit in want.wishes.items()):
            return False
        return before is None or all(self._agrees(name, before) for name in want.wishes)

    def _agrees(self, name: str, before: FiguresSoFar) -> bool:
        moved = np.abs(np.subtract(self.values[name], before.values[name]))
        return bool(np.all(moved <= before.half_widths[name] + self.half_widths[name]))

    def words(self, want: Want) -> str:
        """Return what is known against what is wanted, as text."""
        return ", ".join(
            f"{name} \u00b1{width:.2g} ({limit:g} wanted)"
            if np.isfinite(width)
            else f"{name} not known ({limit:g} wanted)"
            for name, limit in want.wishes.items()
            for width in [self.half_widths.get(name, np.inf)]
        )


def known_of(figures: Sequence[Figure], want: Want) -> FiguresSoFar:
    """Return what figures with intervals say of those wanted."""
    widths: dict[str, float] = {}
    values: dict[str, tuple[float, ...]] = {}
    doubts = []
    for name in want.wishes:
        some = [one for one in figures if one.name == name]
        ends = [max(one.upper - one.value, one.value - one.lower) for one in some]
        widths[name] = max((end if np.isfinite(end) else np.inf for end in ends), default=np.inf)
        values[name] = tuple(one.value for one in some)
        doubts += [caution for one in some if one.use == "not to be used" for caution in one.cautions]
    return FiguresSoFar(widths, values, tuple(dict.fromkeys(doubts)))


def known_from(campaign: Campaign, record: xr.Dataset, want: Want) -> FiguresSoFar | None:
    """Process what was measured so far and return what it says; None if no pattern can be made of it yet."""
    from colure.analysis.pipeline.recipe import process
    from colure.analysis.uncertainty.budget import figures_with_budget
    from colure.app.services.known_rooms import learned_room_of
    from colure.app.services.reference import probe_of

    try:
        probe = probe_of(campaign, record["frequency"].values)
        room = learned_room_of(campaign, record["frequency"].values)
        processed = process(record, campaign.chamber, campaign.device, probe=probe, recipe=campaign.recipe(), room=room)
    except ValueError:
        return None
    return known_of(list(figures_with_budget(processed.budget)), want)


def first_enough(campaign: Campaign, plan: Plan, record: xr.Dataset) -> tuple[EvenSet, FiguresSoFar] | None:
    """Return the first even set of slices of a whole record that is enough; None if only the whole plan is."""
    before: FiguresSoFar | None = None
    assert campaign.goal.until is not None  # who asks has wishes
    for one in even_sets(plan):
        part = record.isel(point=np.flatnonzero(record["plan_index"].values <= one.last))
        known = known_from(campaign, part, campaign.goal.until)
        if known is not None and known.enough(campaign.goal.until, before):
            return one, known
        before = known or before
    return None


class Follower:
    """Follows a run's points and has another process look at them whenever a set of slices is complete.

    The engine is ended through what `attach` takes; who follows says when in `judged`.

    patient
        True: every answer is waited for before the next point, for simulated time that stands still meanwhile.
    """

    patient = False

    def __init__(self, plan: Plan, listener: Listener, receiver: str, sets: Sequence[EvenSet]) -> None:
        from concurrent.futures import ProcessPoolExecutor
        from multiprocessing import get_context

        self.plan, self.listener, self._receiver = plan, listener, receiver
        self.finish: Callable[[str], None] = lambda reason: None
        self._rows: list[Row] = []
        self._done: set[int] = set()
        self._sets = list(sets)
        self._busy = False
        self._answered = threading.Event()
        # Spawned: a fork would inherit the instruments' lines and threads.
        self.pool = ProcessPoolExecutor(1, mp_context=get_context("spawn"))

    def asked(self, one: EvenSet, record: xr.Dataset) -> Future[Any]:
        """Have the process look at what was measured so far."""
        raise NotImplementedError

    def judged(self, one: EvenSet, future: Future[Any]) -> None:
        """Say what one set of slices told, and end the run if it is enough."""
        raise NotImplementedError

    def attach(self, finish: Callable[[str], None], rows: Sequence[Row]) -> None:
        """Take what ends the run, and what an earlier part of it measured."""
        self.finish, self._rows = finish, list(rows)
        self._done = {row.plan_index for row in rows}
        self._look()

    def __call__(self, event: Event) -> None:
        """Pass an event on, and look at the figures when an even set of slices is complete."""
        self.listener(event)
        row = event.data.get("row")
        if row is not None:
            self._rows.append(row)
            self._done.add(int(row.plan_index))
            self._look()

    def _look(self) -> None:
        """Have the largest set looked at that is complete; one at a time, so that answers come in order."""
        if self._busy:
            return
        complete = [one for one in self._sets if one.last in self._done and self._done.issuperset(range(one.last))]
        if not complete:
            return
        from colure.acquire.seal import record_of_rows

        largest = complete[-1]
        self._sets = [one for one in self._sets if one.slices > largest.slices]
        record = record_of_rows(self.plan, self._rows).assign_attrs(receiver=self._receiver, complete=0)
        self._busy = True
        self._answered.clear()
        self.asked(largest, record).add_done_callback(partial(self._read, largest))
        if self.patient:
            self._answered.wait(LONGEST_ANSWER_S)

    def _read(self, one: EvenSet, future: Future[Any]) -> None:
        """Take what one set of slices told; the next set is looked at after that."""
        try:
            if not future.cancelled():
                self.judged(one, future)
        finally:
            self._busy = False
            self._answered.set()

    def close(self) -> None:
        """Let go of the process that looks."""
        self.pool.shutdown(wait=False, cancel_futures=True)


class Stopper(Follower):
    """Follows a run and ends it when the wanted figures are known."""

    def __init__(self, campaign: Campaign, plan: Plan, listener: Listener, receiver: str) -> None:
        assert campaign.goal.until is not None  # else there is no stopper
        super().__init__(plan, listener, receiver, even_sets(plan))
        self._campaign, self._want = campaign, campaign.goal.until
        self._before: FiguresSoFar | None = None

    def asked(self, one: EvenSet, record: xr.Dataset) -> Future[Any]:
        """Have the figures read."""
        return self.pool.submit(known_from, self._campaign, record, self._want)

    def judged(self, one: EvenSet, future: Future[Any]) -> None:
        """Say what one set of slices told, and end the run if it is enough."""
        error = future.exception()
        known: FiguresSoFar | None = None if error is not None else future.result()
        told = f"{one.slices} of {one.planned} slices"
        if known is None:
            why = f": {error}" if error is not None else ""
            self.listener(Event("warning", f"{told}: the figures cannot be read yet{why}"))
            return
        words = f"{told}: {known.words(self._want)}"
        if known.enough(self._want, self._before):
            self.finish(f"known after {words}")
        self._before = known
        self.listener(Event("known", "; ".join([words, *known.doubts])))


@contextmanager
def followed(
    campaign: Campaign, plan: Plan, run: RunFolder, listener: Listener, receiver: str
) -> Iterator[Follower | None]:
    """Follow a run that may end early while the block runs; None where the whole plan is to be measured.

    Raises
    ------
    InputError
        If the receiver gives no phase, or the run's folder cannot be written to.
    """
    if campaign.goal.until is None:
        yield None
        return
    if receiver != "vector":
        raise InputError(["until: the receiver is power-only: must be a vector receiver; measure the whole plan"])
    keep_before_motion(run.until, campaign.goal.until.wishes)
    stopper = Stopper(campaign, plan, listener, receiver)
    stopper.patient = is_simulated(campaign, "axis-controller") and campaign.simulated().time_factor == 0.0
    try:
        yield stopper
    finally:
        stopper.close()
