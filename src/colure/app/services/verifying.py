"""A device held against a reference from as few slices as decide it; the scan goes on where they do not."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import asdict, dataclass, replace
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np

from colure.app.services import acquisition, processing, verdicts
from colure.app.services.campaigns import plan_of
from colure.app.services.evaluation import marked_by_data
from colure.app.services.pattern_files import waves_of
from colure.app.services.reference import probe_of, reference_of
from colure.app.services.stopping import EvenSet, Follower
from colure.app.storage.folders import RunFolder
from colure.errors import InputError
from colure.geometry.conventions import amplitude_db
from colure.geometry.kinematics import Geometry
from colure.model.campaign import Campaign
from colure.model.events import Event, Listener
from colure.model.loading import Section, number, validate
from colure.model.plan import ROLES, Plan, Role
from colure.model.reference import WITH_HORN
from colure.model.specification import load_specification
from colure.model.strict_json import json_text
from colure.model.whole import write_whole
from colure.values import briefly_shown

if TYPE_CHECKING:
    from collections.abc import Callable
    from concurrent.futures import Future

    import xarray as xr

    from colure.acquire.engine import Engine
    from colure.acquire.outcome import Options, Outcome
    from colure.analysis.figures.evaluate import FigureSet
    from colure.analysis.innovation.known_unit import KnownUnit
    from colure.analysis.innovation.verified import Verified
    from colure.analysis.pipeline.recipe import Processed
    from colure.app.services.verdicts import Judged
    from colure.model.figure import Figure
    from colure.model.specification import Specification

#: After so many slices the fit is made: fewer tell no faults apart, more are no longer few.
LOOKS = (3, 4, 6, 9)
RESULT = "verification.json"
#: Figures of the front half at most are verified. A reference must be known over the cone in which its elements are found,
#: degrees; elements must explain it down to this amplitude.
FRONT_DEG, VISIBLE_DEG, MOST_RESIDUAL = 90.0, 75.0, 0.1


class UnitSpread(Section):
    """How good units differ from the reference, as told.

    spread
        Rms of a good element's deviation from the reference, relative.
    reference_error_db
        Error of the reference pattern below its peak, rms over directions.
    """

    spread: float = number("1", 0.001, 0.3, 0.03)
    reference_error_db: float = number("dB", -80, -30, -45.0)


@dataclass(frozen=True)
@briefly_shown
class Asked:
    """What a verification is about: the campaign, its plan, the reference and the specification.

    figures
        Which figures are read.
    """

    campaign: Campaign
    plan: Plan
    known: KnownUnit
    specification: Specification
    figures: FigureSet

    @property
    def columns(self) -> int:
        """Elements in a row."""
        elements = self.campaign.device.elements
        assert elements is not None  # refused before
        return elements.columns


@dataclass(frozen=True)
@briefly_shown
class UnitResult:
    """What a verification came to.

    by
        What decided: `slices`, or `whole scan` where the few slices did not.
    seconds
        Of chamber time, from the first sweep to the last one that was needed.
    verified
        What the slices told; of the last look where the whole scan decided.
    """

    by: str
    seconds: float
    judged: Judged
    figures: list[Figure]
    verified: Verified

    def as_dict(self) -> dict[str, Any]:
        """Return everything as plain JSON-ready data."""
        return {
            "outcome": self.judged.outcome, "by": self.by, "seconds": round(self.seconds, 1),
            "slices": self.verified.slices,
            "doubts": self.verified.doubts, "faults": [asdict(one) for one in self.verified.faults],
            "verdicts": [asdict(one) for one in self.judged.verdicts],
            "frequency_hz": sorted({one.frequency_hz for one in self.figures}),
            "figures": [one.as_dict() for one in self.figures],
        }  # fmt: skip


def asked_of(
    folder: Path,
    specification: Path,
    against: Path,
    *,
    run: RunFolder,
    reference_run: str = "first",
    likely: Mapping[str, float] | None = None,
) -> Asked:
    """Read everything and lay out the scan: three slices first, then ever finer.

    Raises
    ------
    InputError
        If device, range, specification or reference cannot be verified so; nothing was moved.
    """
    declared = Campaign.load(folder)
    _require_possible(declared)
    wanted = load_specification(specification)
    _require_limits(wanted, specification.name)
    campaign, plan = plan_of(_in_few_slices(declared), run)
    told = validate(UnitSpread, dict(likely or {}), source="verify")
    figures = _figures_of(campaign)
    missing = [one.figure for one in wanted.limits if one.figure not in _stated(figures)]
    if missing:
        known = ", ".join(_stated(figures))
        raise InputError([f"{specification.name}: limit on {name}: must be on one of {known}; another needs the whole scan: colure acquire"
                          for name in missing])  # fmt: skip
    return Asked(campaign, plan, _known(campaign, plan, against, reference_run, told), wanted, figures)


def _figures_of(campaign: Campaign) -> FigureSet:
    from colure.analysis.figures.evaluate import FigureSet

    settings, goal = campaign.evaluation(), campaign.goal
    if settings.principal_planes == "measured":
        raise InputError(
            ["evaluation.toml: principal_planes = 'measured': must be 'declared': one polarization is measured"]
        )
    return FigureSet(
        settings, float(np.deg2rad(campaign.device.slant_deg)), float(np.deg2rad(goal.region_deg)), True,
        relative=not campaign.chamber.reference.absolute,
    )  # fmt: skip


def _stated(figures: FigureSet) -> list[str]:
    from colure.analysis.innovation.figures import stated

    return [one.name for one in figures.definitions if stated(one)]


def _require_possible(campaign: Campaign) -> None:
    chamber, device, goal = campaign.chamber, campaign.device, campaign.goal
    faults = []
    if chamber.positioner.geometry is not Geometry.ROLL_OVER_AZIMUTH or chamber.positioner.joints:
        faults.append("chamber.toml: positioner: must be 'roll-over-azimuth' with two axes: slices pass the boresight")
    if device.elements is None:
        faults.append(
            "device.toml: [elements]: missing; what is new is looked for element by element; measure the whole plan: colure acquire"
        )
    if device.states is not None:
        faults.append(
            "device.toml: [states]: must be left out: one state is verified; measure the whole plan: colure acquire"
        )
    if device.polarization != "linear":
        faults.append(
            f"device.toml: polarization = {device.polarization!r}: must be 'linear': one polarization is measured"
        )
    if chamber.probe.polarization != "linear":
        faults.append("chamber.toml: probe.polarization = 'circular': must be 'linear': one polarization is measured")
    if goal.scan is not None or goal.distance_steps is not None or goal.reflection:
        faults.append("goal.toml: scan, distance_steps, reflection: must be left out: verify lays the slices out")
    if chamber.reference.method not in (*WITH_HORN, "none"):
        faults.append(
            f"chamber.toml: reference.method = {chamber.reference.method!r}: must be 'switch', 'swap' or 'none'"
        )
    faults += [f"chamber.toml: {name}: must not be declared: intervals of verify do not hold it; measure the whole plan: colure acquire"
               for name in _not_held(campaign)]  # fmt: skip
    if faults:
        raise InputError([*faults, "nothing was moved"])


def _not_held(campaign: Campaign) -> list[str]:
    """Return what the chamber declares that a verification's intervals know nothing of, by its entry."""
    chamber, reference, analyzer = campaign.chamber, campaign.chamber.reference, campaign.chamber.analyzer
    declared = {
        "standing_wave_db": chamber.standing_wave_db is not None,
        "cable": chamber.cable is not None,
        "temperature": chamber.temperature.level_db > 0.0 or chamber.temperature.phase_deg > 0.0,
        "jumps": chamber.jumps.per_hour > 0.0,
        "alignment.probe_pointing_deg": chamber.alignment.probe_pointing_deg > 0.0,
        "probe.pattern_uncertainty_db": chamber.probe.pattern_uncertainty_db > 0.0,
        "probe.ports": chamber.probe.ports != 1,
        "analyzer.linearity_db": analyzer.linearity_db > 0.0,
        "analyzer.compression_dbm": analyzer.compression_dbm is not None,
        "analyzer.isolation_db": analyzer.isolation_db is not None,
        "analyzer.source_match_db": analyzer.source_match_db is not None,
        "reference.match_db": reference.match_db is not None,
        "reference.gain_table": reference.gain_table is not None,
        "reference.adapter": reference.adapter is not None,
        "reference.reflection": reference.reflection is not None,
        "reference.offset_uncertainty_mm": reference.offset_uncertainty_mm > 0.0,
    }
    return [name for name, is_so in declared.items() if is_so]


def _require_limits(wanted: Specification, name: str) -> None:
    faults = [f"{name}: mask {one.name!r}: must be left out: verify holds limits on figures; colure verdict holds masks, "
              "on the whole scan" for one in wanted.masks]  # fmt: skip
    if wanted.decision != "guard-band":
        faults.append(f"{name}: decision = {wanted.decision!r}: must be 'guard-band': few slices decide by intervals")
    if not wanted.limits:
        faults.append(f"{name}: limits: missing; at least one is needed (limits)")
    if faults:
        raise InputError([*faults, "nothing was moved"])


def _in_few_slices(campaign: Campaign) -> Campaign:
    """Return the campaign with a scan of one polarization on the fly, in an order in which the first slices stand 60 deg apart."""
    changes = {"scheme": "one-pass", "style": "fly", "order": "progressive", "until": None, "want": None,
               "step_deg": None,
               "region_deg": min(campaign.goal.region_deg, FRONT_DEG)}  # fmt: skip
    goal = campaign.goal.model_copy(update=changes)
    # Laid out plainly: a progressive plan rounds up to steps that read well, which the number below does anew.
    _, first = plan_of(replace(campaign, goal=goal.model_copy(update={"order": "plain"})), None)
    threes = LOOKS[-1]
    # Nine times a power of three: slices then come in threes, each 60 deg apart, and the next ones between them.
    while threes < first.grid.slices_planned:
        threes *= 3
    return replace(campaign, goal=goal.model_copy(update={"step_deg": 180.0 / threes}))


def _known(campaign: Campaign, plan: Plan, against: Path, reference_run: str, told: UnitSpread) -> KnownUnit:
    from colure.analysis.fields.known_pattern import KnownPattern, at_frequencies
    from colure.analysis.innovation.known_unit import Likeness, known_unit
    from colure.analysis.innovation.verified import looked_at

    waves = waves_of(against, run_name=reference_run)
    if "one polarization, no transform" in str(waves.pattern.attrs.get("history_json", "")):
        raise InputError(
            [f"against = {waves.name}: holds one polarization: must hold both, as a two-pass run or a simulation does"]
        )
    needed = max(VISIBLE_DEG, campaign.goal.region_deg)
    if np.rad2deg(waves.region) < needed - 1e-6:
        raise InputError(
            [
                f"against = {waves.name}: known to {np.rad2deg(waves.region):.3g} deg from +z: must be known to {needed:g} deg"
            ]
        )
    device = campaign.device
    assert device.elements is not None  # refused before
    frequency = plan.frequency_hz[looked_at(plan.frequency_hz.size)]
    try:
        expansion = at_frequencies(KnownPattern(waves.frequency_hz, waves.expansion, waves.region), frequency)
    except ValueError as error:
        raise InputError([f"against = {waves.name}: {error}"]) from None
    known = known_unit(
        expansion, device.elements.places_m(1e-3 * np.asarray(device.offset_mm)),
        Likeness(spread=told.spread, reference_error_db=told.reference_error_db), order=plan.order,
        slant=float(np.deg2rad(device.slant_deg)),
        pattern=device.elements.pattern,
    )  # fmt: skip
    if known.residual > MOST_RESIDUAL:
        raise InputError([f"against = {waves.name}: its elements leave {amplitude_db(known.residual):.0f} dB of it unexplained: must be below "
                          f"{amplitude_db(MOST_RESIDUAL):.0f} dB; are rows, columns, pitch_mm and offset_mm those of the device?"])  # fmt: skip
    return known


def slice_sets(plan: Plan) -> list[EvenSet]:
    """Return the first few slices of a plan as growing sets."""
    scan = np.flatnonzero(plan.role == ROLES.index(Role.SCAN))
    slices = plan.slice_index[scan]
    _, first = np.unique(slices, return_index=True)
    ends = [int(scan[slices == one].max()) for one in slices[np.sort(first)][: LOOKS[-1]]]
    return [
        EvenSet(slices=count, planned=plan.grid.slices_planned, last=end)
        for count, end in enumerate(ends, 1)
        if count in LOOKS
    ]


def told_by(asked: Asked, record: xr.Dataset) -> tuple[Verified, Judged] | None:
    """Return what a record of some slices tells and its verdicts; None if it cannot be read yet."""
    from colure.analysis.innovation.readings import readings_of
    from colure.analysis.innovation.verified import looked_at, verified
    from colure.analysis.pipeline.recipe import default_recipe
    from colure.analysis.pipeline.stages import seed_of

    campaign = asked.campaign
    chamber, device = campaign.chamber, campaign.device
    some = looked_at(record.sizes["frequency"])
    try:
        recipe = campaign.recipe() or default_recipe(record, chamber, device)
        read = readings_of(record, chamber, device, recipe, reference_of(campaign, record["frequency"].values))
        read = read.at(np.arange(read.first.size), some)
        verification = verified(
            read, asked.known, chamber, probe_of(campaign, read.frequency_hz), asked.figures,
            columns=asked.columns, order=asked.plan.order, seed=seed_of(record),
        )  # fmt: skip
    except ValueError:
        return None
    return verification, verdicts.decided(asked.specification, verification.figures, {})


def enough(told: tuple[Verified, Judged]) -> bool:
    """Tell whether slices decide: the model explains them, and every requirement is met or missed."""
    verification, judged = told
    return verification.trusted and judged.outcome != "not decidable"


def plan_words(asked: Asked) -> str:
    """Say when a verification may end, in words."""
    duration, count = float(asked.plan.predicted["duration_s"]), len(asked.plan)
    sets = slice_sets(asked.plan)
    first, last = (duration * (one.last + 1) / count for one in (sets[0], sets[-1]))
    return (
        f"Ends as soon as slices decide: after {sets[0].slices} slices (about {first:.0f} s) at the earliest, {sets[-1].slices} slices "
        f"(about {last:.0f} s) at the latest; else after the whole scan (about {duration:.0f} s)."
    )


class Verifier(Follower):
    """Follows a run and ends it when the device is verified."""

    def __init__(self, asked: Asked, plan: Plan, listener: Listener, receiver: str) -> None:
        super().__init__(plan, listener, receiver, slice_sets(plan))
        self._about = asked

    def asked(self, one: EvenSet, record: xr.Dataset) -> Future[Any]:
        """Have reference and innovation fitted."""
        # A slice that is under way tells nothing yet.
        complete = record.isel(point=np.flatnonzero(record["plan_index"].values <= one.last))
        return self.pool.submit(told_by, self._about, complete)

    def judged(self, one: EvenSet, future: Future[Any]) -> None:
        """Say what one set of slices told, and end the run if it decides."""
        words = f"{one.slices} of {one.planned} slices"
        error = future.exception()
        told = None if error is not None else future.result()
        if told is None:
            self.listener(Event("warning", f"{words}: cannot be verified yet{'' if error is None else f': {error}'}"))
            return
        if enough(told):
            self.finish(f"verified by {words}: {told[1].outcome}")
        self.listener(Event("known", "; ".join([f"{words}: {told[1].outcome}", *told[0].doubts])))


@contextmanager
def _followed(
    asked: Asked, campaign: Campaign, plan: Plan, run: RunFolder, listener: Listener, receiver: str
) -> Iterator[Follower | None]:
    if receiver != "vector":
        raise InputError(["verify: the receiver is power-only: must be a vector receiver; nothing was moved"])
    follower = Verifier(asked, plan, listener, receiver)
    try:
        yield follower
    finally:
        follower.close()


def measure(
    asked: Asked, run: RunFolder, *, listener: Listener, on_engine: Callable[[Engine], None] | None = None,
    options: Options | None = None, despite_check: bool = False,
) -> Outcome:  # fmt: skip
    """Measure until the slices decide, else to the end of the plan; every argument as of `acquire`."""
    return acquisition.acquire(
        asked.campaign, asked.plan, run, listener=listener, on_engine=on_engine, options=options,
        despite_check=despite_check, follow=partial(_followed, asked),
    )  # fmt: skip


def result_of(asked: Asked, run: RunFolder) -> UnitResult:
    """Return what a run's record tells, by the fewest slices that decide, else by the whole scan; it is kept beside the record.

    Raises
    ------
    InputError
        If the run was stopped before anything decided.
    """
    record = processing.opened(run)
    times, plan = record["time_s"].values, asked.plan
    told = None
    for one in slice_sets(plan):
        rows = np.flatnonzero(record["plan_index"].values <= one.last)
        if rows.size < one.last + 1:
            break
        told = told_by(asked, record.isel(point=rows)) or told
        if told is not None and enough(told):
            seconds = float(times[rows].max() - times.min())
            return _kept(run, UnitResult("slices", seconds, told[1], told[0].figures, told[0]))
    missing = len(plan) - record.sizes["point"]
    if told is None or missing > 0:
        raise InputError(
            [f"run {run.path.name}: {missing} of {len(plan)} points are missing and the slices there do not decide; "
             "the same command goes on with it"]
        )  # fmt: skip
    processed = processing.processed(asked.campaign, record, asked.campaign.recipe())
    figures = _of_whole_scan(processed)
    judged = verdicts.decided(asked.specification, figures, {})
    return _kept(run, UnitResult("whole scan", float(times.max() - times.min()), judged, figures, told[0]))


def _of_whole_scan(processed: Processed) -> list[Figure]:
    """Return the figures of the whole scan, marked where the data contradict what was declared."""
    from colure.analysis.uncertainty.budget import figures_with_budget

    return marked_by_data(processed, figures_with_budget(processed.budget))


def _kept(run: RunFolder, result: UnitResult) -> UnitResult:
    write_whole(run.path / RESULT, json_text(result.as_dict(), indent=1))
    return result
