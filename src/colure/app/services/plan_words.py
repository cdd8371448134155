"""What a plan says, in words: the same lines for the terminal and the page."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from colure.app.services.flight_words import coarse_faults, flight_faults
from colure.app.services.particulars import register_of, today
from colure.model.bands import band_words
from colure.planning.distances import distance_words

if TYPE_CHECKING:
    from colure.model.campaign import Campaign
    from colure.model.chamber import Chamber
    from colure.model.plan import Plan


#: More segments than this are counted, not listed.
SHOWN_SEGMENTS = 8


def duration_text(seconds: float) -> str:
    """Return a duration as people say it."""
    minutes, rest = divmod(round(seconds), 60)
    hours, minutes = divmod(minutes, 60)
    return f"{hours} h {minutes:02d} min" if hours else f"{minutes} min {rest:02d} s" if minutes else f"{rest} s"


def _ties_text(campaign: Campaign, predicted: dict[str, Any]) -> str:
    """Say where ties look and who knows it."""
    azimuth, elevation = campaign.device.beam_deg
    source = predicted.get("ties", {}).get("source", "device.toml beam_deg")
    return f"every {campaign.chamber.tie_interval_s:g} s at azimuth {azimuth:g}, elevation {elevation:g} deg of the device ({source})"


def plan_rows(campaign: Campaign, plan: Plan) -> tuple[tuple[str, str], ...]:
    """Return (what, answer with its reason) of everything a person wants to know before starting."""
    p: dict[str, Any] = plan.predicted
    reach, level, exposure, points = p["reach"], p["level"], p["exposure"], p["points"]
    chamber, goal = campaign.chamber, campaign.goal
    geometry = chamber.positioner.geometry
    scheme = {
        "two-pass": "two passes, one port following the roll (chi = psi - phi; psi = 0, 90 deg)",
        "dual-port": "one pass, dual-polarized probe",
        "one-pass": "one polarization, one port following the roll (chi = slant - phi); no transform",
    }[plan.scheme]
    if goal.scan is not None:
        how = "follows the device's x" if goal.scan.probe == "follows" else "stays"
        offsets = ", ".join(f"{x:g}" for x in goal.scan.offsets_deg)
        scheme = "both ports in one pass" if plan.scheme == "dual-port" else f"probe {how}, offset {offsets} deg"
    elif goal.offset_deg is not None:
        scheme = _offsets_text(plan, goal.probe)
    return (
        ("Geometry", _geometry_text(chamber)),
        *_band_rows(campaign, p),
        ("Turning sphere", f"radius {1e3 * reach['radius_m']:.1f} mm about the axes' intersection"),
        ("Range", f"{chamber.range_length_m:g} m; 2D\u00b2/\u03bb = {reach['far_field_m']:.2f} m, edge phase "
                  f"{reach['edge_phase_deg']:.1f} deg, level span {reach['level_span_db']:.2f} dB"),
        ("Direct range",
        f"without a transform a -{min(40, max(20, -campaign.goal.wanted_level_db)):.0f} dB side lobe errs by more than 1 dB "
                         f"at less than {reach['side_lobe_m']:.1f} m; a transform works from {reach['nearest_m']:.2f} m"),
        ("Over the device", f"probe taper {reach['taper_db']:.2f} dB; half-angle {reach['parallax_deg']:.1f} deg"),
        ("Verdict", reach["verdict"]),
        ("Sampling", _sampling_text(plan, goal.wanted_level_db)),
        *((("Scan", "; ".join(p["notes"])),) if p.get("notes") else ()),
        ("Polarization",
        scheme if goal.scan is not None or goal.offset_deg is not None or not (plan.scheme == "two-pass" and geometry.value != "roll-over-azimuth")
            else "two passes, probe fixed at 0 and 90 deg"),
        ("Motion", _motion_text(plan)),
        *(("Not possible", text) for text in coarse_faults(campaign, plan) + flight_faults(campaign, plan)),
        ("Points", f"{points['scan']} scan, {points['tie']} tie, {points['reference']} reference"
                   + (f", {points['reflection']} reflection" if points.get("reflection") else "")),
        *_reflection_rows(campaign),
        *((("Distances", distance_words(goal)),) if goal.distance_steps is not None else ()),
        ("Ties", _ties_text(campaign, p)),
        ("Duration", f"{duration_text(p['duration_s'])} predicted from the axes and the sweep" + (
            f", as run {p['learned_from']} showed them (declared: {duration_text(p['declared_duration_s'])})"
            if p["learned_from"] else "")),
        *((("Ends", p["until"]),) if "until" in p else ()),
        ("Data", f"{p['data_bytes'] / 1e6:.1f} MB"),
        ("Level", f"received {level['received_dbm']:.1f} dBm, noise {level['noise_dbm']:.1f} dBm, signal-to-noise "
                  f"{level['snr_peak_db']:.1f} dB at the peak, {level['snr_wanted_db']:.1f} dB at the wanted level "
                  f"(\u00b1{level['noise_error_db']:.2f} dB, 1 sigma per point)"),
        ("Exposure",
        f"EIRP {exposure['eirp_dbm']:.1f} dBm: {exposure['density_w_m2']:.2g} W/m\u00b2 at the door, public limit "
                     f"{exposure['public_limit_w_m2']:g} W/m\u00b2 is met beyond {exposure['public_distance_m']:.2f} m"),
        ("Best level", _best_level_text(campaign, p)),
        ("Power figures", _power_text(p["power_grids"], plan.step_deg) + (BETWEEN if campaign.levels_alone else "")),
        ("Frequency grid", _grid_text(p)),
        ("Load", p["load"] + ("" if p["tilt_deg"] is None else f"; tilt {p['tilt_deg']:.3f} deg")),
        ("Blockage", f"{p['blocked_percent']:.1f} % of the sphere hidden by what holds the device"
                     if p["blocked_percent"] else "none declared (chamber.toml bracket_half_angle_deg)"),
        *_equipment_rows(campaign),
        ("Plan hash", plan.hash[:16]),
    )  # fmt: skip


#: What the forecast of levels alone leaves out.
BETWEEN = "; what lies between the samples adds to the forecast: colure rehearse shows how much"


def _best_level_text(campaign: Campaign, p: dict[str, Any]) -> str:
    level = p["level"]
    width = f"bandwidth {p['best_if_bandwidth_hz']:g} Hz costs no noticeable time"
    if campaign.device.eirp_dbm is not None:
        return f"{width}; set: {level['if_bandwidth_hz']:g} Hz; the device transmits by itself"
    power = f"power {p['best_power_dbm']:.1f} dBm (limited by {p['best_power_limit']})"
    return f"{power}, {width}; set: {level['power_dbm']:g} dBm, {level['if_bandwidth_hz']:g} Hz"


def _geometry_text(chamber: Chamber) -> str:
    """Name the positioner with its formula, or the joints of a mount and the coordinates that stand for them."""
    geometry, joints = chamber.positioner.geometry, chamber.positioner.joints
    if not joints:
        return f"{geometry.value}, d = {geometry.direction_formula}"
    names = ", ".join(f"{one.name} ({one.carries})" for one in joints)
    solids = len(chamber.positioner.solids)
    checked = f"{solids} solids kept apart" if solids else "collisions NOT checked (no positioner.solids)"
    return f"{len(joints)} joints: {names}; {checked}; theta is azimuth, phi is roll, d = {geometry.direction_formula}"


def _band_rows(campaign: Campaign, predicted: dict[str, Any]) -> tuple[tuple[str, str], ...]:
    """Return the frequencies and how long a sweep takes; of several bands each with its time, power, bandwidth and level."""
    goal, sweep_s = campaign.goal, predicted["sweep_s"]
    whole = f"{band_words(goal.start_ghz, goal.stop_ghz, goal.points)}, {sweep_s:.3f} s a sweep"
    segments = predicted.get("segments", [])
    if len(segments) < 2:
        return (("Band", whole),)
    listed = [
        (f"Segment {number}",
        f"{band_words(one['start_hz'] / 1e9, one['stop_hz'] / 1e9, one['points'])}, {one['trace_s']:.3f} s; {one['power_dbm']:g} dBm, {one['if_bandwidth_hz']:g} Hz; signal-to-noise "
         f"{one['snr_peak_db']:.1f} dB at the peak, {one['snr_wanted_db']:.1f} dB at the wanted level")
        for number, one in enumerate(segments[:SHOWN_SEGMENTS], start=1)
    ]  # fmt: skip
    more = [("Segments", f"{len(segments) - SHOWN_SEGMENTS} more")] if len(segments) > SHOWN_SEGMENTS else []
    return (("Bands", f"{whole}, {len(segments)} segments"), *listed, *more)


def _offsets_text(plan: Plan, probe: str) -> str:
    """Say at which offsets a grid is measured, and what follows from them."""
    offsets = str(plan.settings["offsets_deg"]).split(",")
    words = (
        "port 1 stays at"
        if plan.scheme == "dual-port"
        else f"probe {'follows the roll' if probe == 'follows' else 'stays'}, offset"
    )
    gives = "one component: co-polar only, no transform" if plan.scheme == "one-pass" else "the full vector"
    return f"{words} {', '.join(offsets)} deg: {gives}; co-polar is {offsets[0]} deg from x towards y"


def _reflection_rows(campaign: Campaign) -> tuple[tuple[str, str], ...]:
    """Return how the device's reflection is measured, and what is assumed; nothing where it is not."""
    left = campaign.chamber.one_port
    if left is None or not campaign.goal.reflection:
        return ()
    text = (f"S11 of the device at the start and before every boresight check, where the axes stand; assumes the analyzer's one-port "
            f"calibration at the device's connector: left are directivity {left.directivity_db:g} dB, source match {left.match_db:g} dB, "
            f"tracking {left.tracking_db:g} dB")  # fmt: skip
    return (("Reflection", text),)


def _equipment_rows(campaign: Campaign) -> tuple[tuple[str, str], ...]:
    """Return what equipment.toml says against measuring today; nothing if there is no register."""
    register = register_of(campaign.folder)
    if register is None:
        return ()
    warnings = register.warnings(today())
    return (("Equipment", "; ".join(warnings) if warnings else f"{len(register.item)} calibrations are valid today"),)


def _sampling_text(plan: Plan, wanted_db: float) -> str:
    """Say how finely and how far the scan looks."""
    grid = plan.grid
    if "scan_json" in plan.settings:
        slices = len({int(i) for i in plan.slice_index if i >= 0})
        return f"as goal.toml's scan says: {slices} cut{'s' if slices > 1 else ''}, steps of {grid.swept_step_deg:.3g} deg at most; no transform"
    where = "whole sphere" if grid.whole else (
        f"theta to {plan.settings['region_deg']:g} deg wanted, to {grid.reach_deg:g} deg scanned")  # fmt: skip
    along = "" if grid.swept_step_deg == grid.step_deg else f", sweeps every {grid.swept_step_deg:.3g} deg along them"
    return f"order {plan.order} for {wanted_db:g} dB, slices every {grid.step_deg:g} deg{along}, {where}"


def _power_text(grids: dict[str, Any], step_deg: float) -> str:
    """Compare the plan's step with the grids that power figures are usually taken on."""
    words = "fine enough for" if grids["enough"] else "too coarse for"
    return (f"{step_deg:g} deg is {words} radiated power (usual: 15 deg; 30 deg for sensitivity; reference step "
            f"{grids['reference_step_deg']:.1f} deg; sparsity {grids['sparsity']:.2f})")  # fmt: skip


def _grid_text(predicted: dict[str, Any]) -> str:
    """Say what the frequency grid can see in time."""
    grid = predicted["frequency_grid"]
    if grid is None:
        return str(predicted["gating"])
    return (f"step {grid['step_hz'] / 1e6:.1f} MHz: echoes alias beyond {grid['alias_free_m']:.1f} m of excess path; "
            f"span resolves {grid['resolution_m']:.2f} m; {predicted['gating']}")  # fmt: skip


def _motion_text(plan: Plan) -> str:
    """Say how the axes will run."""
    s = plan.settings
    states = f"; {len(plan.states)} device states" if plan.states else ""
    if s["style"] == "step":
        return f"step and settle{states}"
    how = "pulses of the controller" if s["trigger"] == "position" else "the computer's clock"
    if s.get("buffered"):
        how += ", kept by the analyzer until the slice ends"
    if step_deg := s.get("point_step_deg"):
        how += f", one for every frequency, {step_deg:.4f} deg apart"
    return (f"on the fly: {s['fly_axis']} at {s['fly_speed_deg_s']:.1f} deg/s (limited by {s['fly_limited_by']}), "
            f"run-up {s['run_up_deg']:.1f} deg, sweeps started by {how}{states}")  # fmt: skip
