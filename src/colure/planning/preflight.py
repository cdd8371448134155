"""One call from campaign to plan, with every prediction a person wants before starting."""

from __future__ import annotations

from dataclasses import asdict

import numpy as np

from colure.model.bands import as_settings
from colure.model.campaign import Campaign
from colure.model.plan import ROLES, Plan, Role, ScanGrid
from colure.model.scan import Scan
from colure.planning.answers import exposure_of, range_of, require_possible, shortfalls
from colure.planning.choose import Proposal, best_bandwidth, best_power_dbm, proposals
from colure.planning.distances import distance_settings, require_suited
from colure.planning.duration import segments, sweep_time, trace_time
from colure.planning.flight import FlightSpeed
from colure.planning.free_scan import scan_proposal, scan_settings, scan_warnings
from colure.planning.frequency_grid import frequency_grid, gate_verdict
from colure.planning.learning import recall
from colure.planning.level import segment_budgets
from colure.planning.load import Load, assess_load, require_bearable
from colure.planning.operator_grid import grid_warnings, repeated_words
from colure.planning.passes import pass_offsets, polarization_scheme
from colure.planning.path import Path
from colure.planning.sampling import power_grids
from colure.planning.schemes import blocked_share


def make_plan(campaign: Campaign) -> tuple[Campaign, Plan]:
    """Turn goal, chamber and device into a plan, and the campaign with every choice in it.

    Raises
    ------
    InputError
        If a limit would be crossed, a step is too coarse for the device, or a wish cannot be kept.
    """
    require_suited(campaign)
    load = assess_load(campaign.device, campaign.chamber)
    require_bearable(load, campaign.chamber)
    best, *others = proposals(campaign) if campaign.goal.scan is None else [scan_proposal(campaign)]
    if best.campaign.goal.scan is None:
        require_possible(best)
    resolved, path, grid = best.campaign, best.path, best.grid
    scheme = polarization_scheme(resolved.goal, resolved.chamber)
    plan = Plan(
        **path.columns(),
        frequency_hz=resolved.goal.frequency_hz,
        ports=(1, 2) if scheme == "dual-port" else (1,),
        scheme=scheme,
        order=best.order,
        step_deg=grid.step_deg,
        states=() if resolved.device.states is None else resolved.device.states.names,
        settings=settings_of(resolved, path.flight, grid)
        | _scan_settings(resolved)
        | distance_settings(resolved.goal, len(path.role)),
        predicted={
            **_predictions(best, load, campaign.goal.scan),
            "alternatives": [_row(one) for one in (best, *others)],
        },
        inputs={
            "goal": campaign.goal.model_dump(mode="json"),
            "chamber": campaign.chamber.model_dump(mode="json"),
            "device": campaign.device.model_dump(mode="json"),
        },
    )
    return resolved, plan


def _scan_settings(campaign: Campaign) -> dict[str, object]:
    return {} if campaign.goal.scan is None else scan_settings(campaign)


def _row(one: Proposal) -> dict[str, object]:
    """Return what a person compares plans by."""
    return {
        "name": one.name,
        "why": one.why,
        "duration_s": one.duration_s,
        "points": len(one.path.role),
        "data_bytes": _data_bytes(one.campaign, one.path),
        "uncertainty": {name: forecast.expanded for name, forecast in one.forecast.items()},
        "choices": one.choices,
    }


def _data_bytes(campaign: Campaign, path: Path) -> int:
    ports = 2 if polarization_scheme(campaign.goal, campaign.chamber) == "dual-port" else 1
    return int(len(path.role) * campaign.goal.points * 16 * ports)


def settings_of(campaign: Campaign, flight: FlightSpeed | None, grid: ScanGrid) -> dict[str, object]:
    """Everything the engine must know beyond the points."""
    goal, analyzer = campaign.goal, campaign.chamber.analyzer
    settings: dict[str, object] = {
        "power_dbm": analyzer.power_dbm,
        "if_bandwidth_hz": analyzer.if_bandwidth_hz,
        "averages": analyzer.averages,
        "start_hz": float(goal.frequency_hz[0]),
        "stop_hz": float(goal.frequency_hz[-1]),
        "points": goal.points,
        "sweep_s": sweep_time(goal, analyzer),
        "trace_s": trace_time(goal, analyzer),
        "style": goal.style,
        "swept_step_deg": grid.swept_step_deg,
        "region_deg": goal.region_deg,
        "reach_deg": grid.reach_deg,
    }
    parts = segments(goal, analyzer)
    if len(parts) > 1:
        settings["segments"] = as_settings(parts)
    else:
        settings |= {"if_bandwidth_hz": parts[0].if_bandwidth_hz, "power_dbm": parts[0].power_dbm}
    if campaign.chamber.reference.method != "switch":
        settings["reference_method"] = campaign.chamber.reference.method
    if goal.dwell_s:
        settings["dwell_s"] = goal.dwell_s
    if goal.offset_deg is not None and goal.scan is None:
        offsets = pass_offsets(goal, campaign.chamber, campaign.device)
        settings["offsets_deg"] = ",".join(f"{x:.9g}" for x in offsets)
    if flight is not None:
        settings |= {
            "trigger": goal.trigger,
            "fly_axis": flight.axis,
            "fly_speed_deg_s": round(flight.speed_deg_s, 6),
            "run_up_deg": round(flight.run_up_deg, 6),
            "entry_settle_s": round(flight.entry_settle_s, 6),
            "fly_limited_by": flight.limited_by,
        }
        if goal.buffered:
            settings["buffered"] = True
        if flight.point_step_deg:
            settings["point_step_deg"] = flight.point_step_deg
    return settings


def _duration(campaign: Campaign, path: Path) -> dict[str, object]:
    """Forecast the duration, with the real axes if an earlier run taught them."""
    learned = recall(campaign.folder)
    declared_s = float(path.time_s.sum())
    if learned is None:
        return {"duration_s": declared_s, "learned_from": None}
    tables = learned.tables(campaign.chamber)
    # The overhead was learned as what comes beyond the trace; the declared one is already in.
    more = learned.overhead_s - campaign.chamber.analyzer.sweep_overhead_s
    seconds = float(path.time_with([tables[name] for name in path.axes], more).sum())
    return {"duration_s": seconds, "learned_from": learned.run, "declared_duration_s": declared_s}


def _of_bands(campaign: Campaign) -> dict[str, object]:
    """Return time and level of each segment of a sweep over bands; nothing where the sweep is an even one of one setting."""
    if not campaign.goal.band:
        return {}
    analyzer = campaign.chamber.analyzer
    rows = [
        {
            **asdict(segment),
            "trace_s": segment.points * analyzer.averages / segment.if_bandwidth_hz,
            "received_dbm": level.received_dbm,
            "noise_dbm": level.noise_dbm,
            "snr_peak_db": level.snr_peak_db,
            "snr_wanted_db": level.snr_wanted_db,
        }
        for segment, level in segment_budgets(campaign)
    ]
    return {"segments": rows}


def _predictions(best: Proposal, load: Load, asked: Scan | None) -> dict[str, object]:
    campaign, path, level = best.campaign, best.path, best.level
    goal, chamber, device = campaign.goal, campaign.chamber, campaign.device
    top_hz, analyzer = float(goal.frequency_hz[-1]), chamber.analyzer
    grid = frequency_grid(goal.frequency_hz)
    power, limited_by = best_power_dbm(analyzer, level, device.input_limit_dbm)
    unplanned = {Role.RESUME} if goal.reflection else {Role.RESUME, Role.REFLECTION}
    counts = {r.value: int(np.sum(path.role == code)) for code, r in enumerate(ROLES) if r not in unplanned}
    return {
        **_duration(campaign, path),
        "sweep_s": sweep_time(goal, analyzer),
        "points": counts,
        "data_bytes": _data_bytes(campaign, path),
        "reach": range_of(campaign, best.order).__dict__,
        "level": level.__dict__,
        **_of_bands(campaign),
        "best_power_dbm": power,
        "best_power_limit": limited_by,
        "best_if_bandwidth_hz": best_bandwidth(campaign),
        "exposure": exposure_of(campaign).__dict__,
        "frequency_grid": None if grid is None else grid.__dict__,
        "gating": gate_verdict(goal.frequency_hz, chamber.echo_excess_m),
        "power_grids": power_grids(
            largest_m=device.largest_dimension_m, frequency_hz=top_hz, step_deg=best.grid.step_deg
        ).__dict__,
        "load": load.words,
        "tilt_deg": load.tilt_deg,
        "blocked_percent": 100.0 * blocked_share(chamber.positioner.bracket_half_angle_deg),
        "forecast": {
            name: {"expanded": forecast.expanded, "cause": forecast.cause, "causes": forecast.causes}
            for name, forecast in best.forecast.items()
        },
        "missing": scan_warnings(best)
        if goal.scan is not None
        else [*([] if asked is None else grid_warnings(goal, asked)), *shortfalls(best)],
        "notes": [] if asked is None else repeated_words(asked) if goal.scan is None else [],
    }
