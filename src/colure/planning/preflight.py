"""One call from campaign to plan, with every prediction a person wants before starting."""

from __future__ import annotations

import numpy as np

from colure.model.campaign import Campaign
from colure.model.loading import InputError
from colure.model.plan import ROLES, Plan, Role, ScanGrid
from colure.planning.duration import sweep_time, trace_time
from colure.planning.exposure import assess_exposure
from colure.planning.flight import FlightSpeed
from colure.planning.frequency_grid import frequency_grid, gate_verdict
from colure.planning.learning import recall
from colure.planning.level import link_budget
from colure.planning.load import Load, assess_load, require_bearable
from colure.planning.path import Path, build_path, polarization_scheme
from colure.planning.reach import assess, distance_for_side_lobe
from colure.planning.sampling import order_for, order_of_step, region_margin_deg, step_for
from colure.planning.schemes import blocked_share


def make_plan(campaign: Campaign) -> Plan:
    """Turn goal, chamber and device into a plan.

    Raises
    ------
    InputError
        If a limit would be crossed or a step is too coarse for the device.
    """
    goal, chamber, device = campaign.goal, campaign.chamber, campaign.device
    top_hz = float(goal.frequency_hz[-1])
    needed = order_for(reach_m=device.reach_m, frequency_hz=top_hz, level_db=goal.wanted_level_db)
    grid = scan_grid(campaign, needed)
    load = assess_load(device, chamber)
    require_bearable(load, chamber)
    path = build_path(goal, chamber, grid, device.states)
    plan = Plan(
        axes=path.axes,
        targets_deg=path.targets_deg,
        role=path.role,
        slice_index=path.slice_index,
        pass_index=path.pass_index,
        state_index=path.state_index,
        line_index=path.line_index,
        frequency_hz=goal.frequency_hz,
        ports=(1, 2) if polarization_scheme(goal, chamber) == "dual-port" else (1,),
        scheme=polarization_scheme(goal, chamber),
        order=needed,
        step_deg=grid.step_deg,
        states=() if device.states is None else device.states.names,
        settings=_settings(campaign, path.flight, grid),
        predicted=_predictions(campaign, path, load),
        inputs={
            "goal": goal.model_dump(mode="json"),
            "chamber": chamber.model_dump(mode="json"),
            "device": device.model_dump(mode="json"),
        },
    )
    return plan


def scan_grid(campaign: Campaign, order: int) -> ScanGrid:
    """Return the grid that carries waves of an order over the region wanted, as the goal's own steps say.

    Raises
    ------
    InputError
        If a step set by hand is too coarse or does not divide 180 deg.
    """
    goal, device = campaign.goal, campaign.device
    enough = step_for(order, oversampling=goal.oversampling)
    step = enough if goal.step_deg is None else goal.step_deg
    swept = step if goal.swept_step_deg is None else goal.swept_step_deg
    top_hz = float(goal.frequency_hz[-1])
    for name, value in (("step_deg", step), ("swept_step_deg", swept)):
        if not np.isclose(180.0 / value, round(180.0 / value)):
            raise InputError([f"goal.toml: {name} = {value:g}: must divide 180 deg without remainder"])
        if order_of_step(value) < order:
            raise InputError(
                [
                    f"goal.toml: {name} = {value:g}: must be at most {step_for(order):g} deg for order {order} "
                    f"(turning radius {1e3 * device.reach_m:.1f} mm at {top_hz / 1e9:g} GHz)"
                ]
            )
    if goal.region_deg >= 180.0:
        return ScanGrid(step, swept)
    reach = goal.region_deg + region_margin_deg(device.reach_m, campaign.chamber.range_length_m, swept)
    reach = float(np.ceil(reach / swept - 1e-9)) * swept
    return ScanGrid(step, swept, 180.0 if reach > 180.0 - swept else reach)


def _settings(campaign: Campaign, flight: FlightSpeed | None, grid: ScanGrid) -> dict[str, object]:
    """Everything the engine must know beyond the points."""
    goal, analyzer = campaign.goal, campaign.chamber.analyzer
    settings: dict[str, object] = {
        "power_dbm": analyzer.power_dbm,
        "if_bandwidth_hz": analyzer.if_bandwidth_hz,
        "averages": analyzer.averages,
        "start_hz": float(goal.frequency_hz[0]),
        "stop_hz": float(goal.frequency_hz[-1]),
        "points": goal.points,
        "sweep_s": sweep_time(goal.points, analyzer),
        "trace_s": trace_time(goal.points, analyzer),
        "style": goal.style,
        "swept_step_deg": grid.swept_step_deg,
        "region_deg": goal.region_deg,
        "reach_deg": grid.reach_deg,
    }
    if flight is not None:
        settings |= {
            "trigger": goal.trigger,
            "fly_axis": flight.axis,
            "fly_speed_deg_s": round(flight.speed_deg_s, 6),
            "run_up_deg": round(flight.run_up_deg, 6),
            "entry_settle_s": round(flight.entry_settle_s, 6),
            "fly_limited_by": flight.limited_by,
        }
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


def _predictions(campaign: Campaign, path: Path, load: Load) -> dict[str, object]:
    goal, chamber, device = campaign.goal, campaign.chamber, campaign.device
    top_hz = float(goal.frequency_hz[-1])
    reach = assess(
        range_length_m=chamber.range_length_m,
        reach_m=device.reach_m,
        largest_m=device.largest_dimension_m,
        frequency_hz=top_hz,
    )
    analyzer = chamber.analyzer
    grid = frequency_grid(float(goal.frequency_hz[0]), top_hz, goal.points)
    budget = link_budget(
        frequency_hz=top_hz,
        distance_m=chamber.range_length_m,
        power_dbm=analyzer.power_dbm,
        device_gain_dbi=device.expected_gain_dbi,
        probe_gain_dbi=chamber.probe.gain_dbi,
        cable_loss_db=analyzer.cable_loss_db,
        noise_figure_db=analyzer.noise_figure_db,
        if_bandwidth_hz=analyzer.if_bandwidth_hz,
        wanted_level_db=goal.wanted_level_db,
    )
    exposure = assess_exposure(
        power_dbm=analyzer.power_dbm,
        gain_dbi=device.expected_gain_dbi,
        distance_m=chamber.door_distance_m,
        frequency_hz=top_hz,
    )
    counts = {r.value: int(np.sum(path.role == code)) for code, r in enumerate(ROLES) if r is not Role.RESUME}
    return {
        **_duration(campaign, path),
        "sweep_s": sweep_time(goal.points, analyzer),
        "points": counts,
        "data_bytes": int(len(path.role) * goal.points * 16 * (2 if chamber.probe.ports == 2 else 1)),
        "reach": reach.__dict__,
        "level": budget.__dict__,
        "exposure": exposure.__dict__,
        "frequency_grid": None if grid is None else grid.__dict__,
        "gating": gate_verdict(grid, chamber.echo_excess_m),
        "load": load.words,
        "tilt_deg": load.tilt_deg,
        "blocked_percent": 100.0 * blocked_share(chamber.positioner.bracket_half_angle_deg),
        "side_lobe_distance_m": distance_for_side_lobe(
            largest_m=device.largest_dimension_m,
            frequency_hz=top_hz,
            side_lobe_db=float(np.clip(goal.wanted_level_db, -40.0, -20.0)),
            error_db=1.0,
        ),
    }
