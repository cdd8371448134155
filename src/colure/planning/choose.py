"""The quickest plan that keeps the uncertainties wanted, and two others to compare it with.

What goal.toml sets stays as it is. Free to choose are the style of the scan, how finely the
swept axis is sampled, redundant slices, and the analyzer's bandwidth.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any, Literal

import numpy as np

from colure.errors import InputError
from colure.geometry.move_times import ramp_time
from colure.model.campaign import Campaign
from colure.model.chamber import Analyzer
from colure.model.plan import ScanGrid
from colure.planning.flight import DUTY, BeyondLimitsError, smear_limit, swept_axis
from colure.planning.forecast import Forecast, field_errors, forecast
from colure.planning.largest_region import what_fits
from colure.planning.level import LinkBudget, campaign_budget
from colure.planning.path import Path, build_path
from colure.planning.power_forecast import POWER_FORECASTS, power_forecast
from colure.planning.scan import EDGE_DEG, most_sweeps, order_of, scan_grid

#: Bandwidths that analyzers offer (common practice, no source).
BANDWIDTHS_HZ = tuple(m * 10.0**d for d in range(1, 7) for m in (1.0, 1.5, 2.0, 3.0, 5.0, 7.0))
#: Share of a step-and-settle point that its sweep may take without being felt.
UNFELT = 0.1
#: Noise that is this share of the echoes no longer matters.
NOISE_SHARE = 0.1
#: Directions beyond which more of them are not worth the data.
MANY_DIRECTIONS = 20000
#: Redundancy of the careful alternative.
CAREFUL = 1.5


@dataclass(frozen=True)
class Proposal:
    """One way to measure: the campaign with every choice made, its path and what it will give."""

    name: str
    campaign: Campaign
    grid: ScanGrid
    path: Path
    order: int
    duration_s: float
    forecast: dict[str, Forecast]
    level: LinkBudget
    why: str

    @property
    def choices(self) -> dict[str, Any]:
        """What to write into goal.toml to get this plan without any choosing."""
        goal = self.campaign.goal
        return {
            "style": goal.style,
            "oversampling": goal.oversampling,
            "swept_step_deg": self.grid.swept_step_deg,
            "if_bandwidth_hz": self.campaign.chamber.analyzer.if_bandwidth_hz,
        }


def with_analyzer(campaign: Campaign) -> Campaign:
    """Return the campaign with the goal's bandwidth and power put into the chamber's analyzer.

    Raises
    ------
    InputError
        If the power is more than the source gives or the device bears.
    """
    goal, analyzer, device = campaign.goal, campaign.chamber.analyzer, campaign.device
    update: dict[str, Any] = {}
    if goal.if_bandwidth_hz is not None:
        update["if_bandwidth_hz"] = goal.if_bandwidth_hz
    asked = [("power_dbm", goal.power_dbm)]
    asked += [(f"band {number}: power_dbm", one.power_dbm) for number, one in enumerate(goal.band, start=1)]
    most = analyzer.power_dbm if analyzer.max_power_dbm is None else analyzer.max_power_dbm
    for name, power in asked:
        for limit, owner in ((most, "chamber.toml analyzer.max_power_dbm"),
                             (device.input_limit_dbm, "device.toml input_limit_dbm")):  # fmt: skip
            if power is not None and power > limit:
                raise InputError([f"goal.toml: {name} = {power:g}: must be at most {limit:g} dBm ({owner})"])
    if goal.power_dbm is not None:
        update["power_dbm"] = goal.power_dbm
    if not update:
        return campaign
    chamber = campaign.chamber.model_copy(update={"analyzer": analyzer.model_copy(update=update)})
    return replace(campaign, chamber=chamber)


def proposals(campaign: Campaign) -> list[Proposal]:
    """Return the plan to carry out first, then the alternatives, quickest first.

    Without wishes there is one: what the files say.

    Raises
    ------
    InputError
        If no plan keeps a wish; the message says by how much and for what cause.
    """
    if campaign.goal.want is None:
        return [_as_set(campaign, "goal.toml sets everything")]
    tried = [
        proposal for variant in _variants(campaign, quiet=False) if (proposal := _try(campaign, variant)) is not None
    ]
    if campaign.goal.if_bandwidth_hz is None and all(_misses(one) for one in tried):
        # Only then is a narrow bandwidth, which costs time, worth looking at.
        tried += [
            proposal for variant in _variants(campaign, quiet=True) if (proposal := _try(campaign, variant)) is not None
        ]
    if not tried:
        # Nothing can be laid out at all: let the plain layout say why.
        return [_as_set(campaign, "")]
    good = sorted((one for one in tried if not _misses(one)), key=lambda one: one.duration_s)
    if not good:
        raise InputError(_what_is_missing(min(tried, key=_excess)))
    best = good[0]
    return [replace(best, why=_reason(best, good)), *_alternatives(best, good[1:])]


def _as_set(campaign: Campaign, why: str) -> Proposal:
    """Lay a campaign out as it is set; where axes are too short for it the error names the region that they allow."""
    tuned = with_analyzer(campaign)
    try:
        return propose(tuned, "as set", why)
    except BeyondLimitsError as error:
        raise InputError([*error.faults, *what_fits(tuned)]) from None


def _alternatives(best: Proposal, others: list[Proposal]) -> list[Proposal]:
    """Return the quickest plan of the other style, and the quickest of the rest."""
    style = best.campaign.goal.style
    other = [one for one in others if one.campaign.goal.style != style][:1]
    rest = [one for one in others if one not in other]
    return [*other, *rest][:2]


def propose(campaign: Campaign, name: str, why: str) -> Proposal:
    """Lay a campaign out as it is set and forecast its figures."""
    goal, device = campaign.goal, campaign.device
    order = order_of(campaign)
    grid = scan_grid(campaign, order)
    path = build_path(goal, campaign.chamber, device, grid)
    level = campaign_budget(campaign)
    errors = field_errors(campaign, grid, order, level)
    if campaign.levels_alone:
        figures = power_forecast(campaign, errors, whole=grid.whole, step_deg=grid.step_deg)
    else:
        figures = forecast(campaign, errors, whole=grid.whole)
    return Proposal(name, campaign, grid, path, order, float(path.time_s.sum()), figures, level, why)


@dataclass(frozen=True)
class Variant:
    """One combination of what may be chosen."""

    style: Literal["step", "fly"]
    oversampling: float
    redundant: bool
    quiet: bool

    @property
    def name(self) -> str:
        """How the plan is called."""
        words = {"fly": "on the fly", "step": "step and settle"}[self.style]
        words += ", redundant slices" if self.redundant else ""
        return words + (", narrow bandwidth" if self.quiet else "")

    @property
    def why(self) -> str:
        """What speaks for it."""
        words = {
            "fly": "every slice is one motion",
            "step": "the axes stand still during every sweep",
        }[self.style]
        words += "; half as many slices again average echoes and drift" if self.redundant else ""
        return words + ("; a tenth of the bandwidth for less noise" if self.quiet else "")


def _variants(campaign: Campaign, *, quiet: bool) -> list[Variant]:
    """Return everything worth trying; what the file sets is never varied."""
    goal = campaign.goal
    fixed = goal.model_fields_set
    styles: list[Literal["step", "fly"]] = [goal.style] if "style" in fixed else ["fly", "step"]
    if campaign.levels_alone and "style" not in fixed:
        styles = ["step"]  # what reads power takes no pulses
    redundant = [False] if {"oversampling", "step_deg"} & fixed else [False, True]
    return [
        Variant(style, CAREFUL * goal.oversampling if more else goal.oversampling, more, quiet)
        for style in styles
        for more in redundant
    ]


def _try(campaign: Campaign, variant: Variant) -> Proposal | None:
    """Return a variant with its best bandwidth and sweeps, or None if it cannot be laid out."""
    goal = campaign.goal.model_copy(update={"style": variant.style, "oversampling": variant.oversampling})
    try:
        tuned = _tuned(with_analyzer(replace(campaign, goal=goal)), quiet=variant.quiet)
        return propose(tuned, variant.name, variant.why)
    except InputError:
        return None


def _tuned(campaign: Campaign, *, quiet: bool) -> Campaign:
    """Choose bandwidth and sweeps along the slice where the file leaves them open.

    On the fly sweeps are laid as close as the axis' full speed lets them be at the chamber's
    bandwidth; step by step the bandwidth is narrowed until the sweep is felt. `quiet` narrows it tenfold more.
    """
    goal, analyzer = campaign.goal, campaign.chamber.analyzer
    update: dict[str, Any] = {}
    if goal.if_bandwidth_hz is None:
        update["if_bandwidth_hz"] = best_bandwidth(campaign, quiet=quiet)
        analyzer = analyzer.model_copy(update=update)
    if goal.style == "fly" and goal.swept_step_deg is None:
        order = order_of(campaign)
        step = scan_grid(campaign, order).step_deg
        update["swept_step_deg"] = _sweeps_enough(campaign, order, step, update)
    if not update:
        return campaign
    return with_analyzer(replace(campaign, goal=goal.model_copy(update=update)))


def _sweeps_enough(campaign: Campaign, order: int, step_deg: float, update: dict[str, Any]) -> float:
    """Return a step along the slice: finer only until noise is a tenth of what the echoes do."""
    tuned = with_analyzer(replace(campaign, goal=campaign.goal.model_copy(update=update)))
    most, geometry = most_sweeps(tuned, step_deg), campaign.chamber.positioner.geometry
    needed = round(step_deg / scan_grid(tuned, order).swept_step_deg)
    least = needed if campaign.goal.region_deg >= 180.0 else min(most, int(np.ceil(step_deg / EDGE_DEG)))
    for count in range(max(least, needed), most + 1):
        goal = tuned.goal.model_copy(update={"swept_step_deg": step_deg / count})
        tried = replace(tuned, goal=goal)
        grid = scan_grid(tried, order)
        many = grid.swept_deg(geometry).size * grid.sliced_deg(geometry).size >= MANY_DIRECTIONS
        errors = field_errors(tried, grid, order, campaign_budget(tried))
        if many or errors.noise <= NOISE_SHARE * errors.echoes:
            return step_deg / count
    return step_deg / max(needed, most)


def best_bandwidth(campaign: Campaign, *, quiet: bool = False) -> float:
    """Return the narrowest usual bandwidth that costs no noticeable time, hertz.

    On the fly: the axis keeps its full speed without smearing the pattern, and the run-up hardly
    grows. Step by step: a sweep takes a tenth of what moving and settling take.
    """
    goal, chamber = campaign.goal, campaign.chamber
    order = order_of(campaign)
    grid = scan_grid(campaign, order)
    step, unblurred = grid.step_deg, 0.0
    axis = chamber.axis_table[swept_axis(chamber.positioner.geometry)]
    if goal.style == "fly":
        ramp_s = float(ramp_time(axis.speed_deg_s, axis.acceleration_deg_s2, axis.jerk))
        allowed = min(DUTY * step / axis.speed_deg_s, UNFELT * ramp_s)
        unblurred = axis.speed_deg_s / smear_limit(
            order=grid.slices_planned, if_bandwidth_hz=1.0, level_db=goal.wanted_level_db
        )
    else:
        allowed = UNFELT * (2.0 * float(np.sqrt(step / axis.acceleration_deg_s2)) + axis.settle_s)
    allowed = max(allowed - chamber.analyzer.sweep_overhead_s, 1e-6)
    needed = max(unblurred, goal.points * chamber.analyzer.averages / allowed) / (10.0 if quiet else 1.0)
    wide_enough = [b for b in BANDWIDTHS_HZ if b >= needed]
    return wide_enough[0] if wide_enough else BANDWIDTHS_HZ[-1]


def best_power_dbm(analyzer: Analyzer, level: LinkBudget, input_limit_dbm: float) -> tuple[float, str]:
    """Return the highest power that source, device and receiver bear, and which of them limits it."""
    most = analyzer.power_dbm if analyzer.max_power_dbm is None else analyzer.max_power_dbm
    choices = {
        "the source": most,
        "the device's input": input_limit_dbm,
        "the receiver": analyzer.power_dbm + analyzer.receiver_limit_dbm - level.received_dbm,
    }
    limit = min(choices, key=lambda key: choices[key])
    return choices[limit], limit


def _misses(one: Proposal) -> dict[str, float]:
    """Return by how much a proposal exceeds each wish it does not keep."""
    want = one.campaign.goal.want
    wishes = {} if want is None else want.wishes
    return {
        name: (one.forecast[name].expanded if name in one.forecast else float("inf")) - wish
        for name, wish in wishes.items()
        if name not in one.forecast or one.forecast[name].expanded > wish
    }


def _excess(one: Proposal) -> float:
    want = one.campaign.goal.want
    assert want is not None  # only proposals for wishes are compared
    return max(miss / want.wishes[name] for name, miss in _misses(one).items())


def why_without_forecast(campaign: Campaign, name: str) -> str:
    """Say why no plan of a campaign gives a figure that could be wished for."""
    if campaign.levels_alone and name not in POWER_FORECASTS:
        return f"needs phase, and the receiver reads power alone: must be one of {', '.join(POWER_FORECASTS)}"
    if name.startswith("side_lobe"):
        size = "x".join(f"{value:g}" for value in campaign.device.size_mm[:2])
        return f"a device of {size} mm has no first side lobe inside the region at this frequency (deg)"
    return f"needs the whole sphere, region_deg = {campaign.goal.region_deg:g} must be 180 deg"


def _what_is_missing(one: Proposal) -> list[str]:
    """Say for every wish that cannot be kept how near one gets, and what stands in the way."""
    want = one.campaign.goal.want
    assert want is not None  # only wishes can be missed
    out = []
    for name in _misses(one):
        wish = want.wishes[name]
        if name not in one.forecast:
            out.append(f"goal.toml: want.{name} = {wish:g}: {why_without_forecast(one.campaign, name)}")
            continue
        figure_forecast = one.forecast[name]
        unit = "deg" if name.endswith("_deg") else "dB"
        out.append(
            f"goal.toml: want.{name} = {wish:g}: must be at least {figure_forecast.expanded:.3g} {unit} here; "
            f"{figure_forecast.cause} alone gives {figure_forecast.causes[figure_forecast.cause]:.3g} {unit}"
        )
    return out


def _reason(best: Proposal, good: list[Proposal]) -> str:
    """Say in a sentence why the first plan is the first."""
    slowest = max(one.duration_s for one in good)
    tight = ""
    want = best.campaign.goal.want
    if want is not None and want.wishes:
        name = max(want.wishes, key=lambda key: best.forecast[key].expanded / want.wishes[key])
        tight = f"; the tightest wish is {name}: {best.forecast[name].expanded:.2g} of {want.wishes[name]:g}"
    faster = f", {slowest / best.duration_s:.1f} times quicker than the slowest that does" if len(good) > 1 else ""
    return f"quickest that keeps every wish{faster}: {best.why}{tight}"
