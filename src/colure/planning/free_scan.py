"""The operator's own scan as a plan: any directions, any probe offsets, in the order they were written."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from colure.errors import InputError
from colure.geometry.conventions import FloatArray
from colure.geometry.directions import theta_phi
from colure.geometry.kinematics import AxisMap, Geometry, sighting, solutions
from colure.geometry.polarization import MOST_TURNED_DEG, Basis, basis_matrix, from_cartesian, turned_by_roll_deg
from colure.model.campaign import Campaign
from colure.model.chamber import Axis, Chamber
from colure.model.plan import Role, ScanGrid
from colure.model.scan import Cut, Scan
from colure.planning.aim import read_targets
from colure.planning.answers import range_of
from colure.planning.choose import Proposal, with_analyzer
from colure.planning.flown_cuts import FlownLines, flown_lines, require_still
from colure.planning.level import campaign_budget
from colure.planning.operator_grid import grid_proposal
from colure.planning.path import PlannedSlice, build_runs
from colure.planning.sampling import step_for
from colure.planning.scan import order_of
from colure.planning.visits import readouts_of

#: What no list of cuts gives, whatever its steps.
NEEDS_THE_SPHERE = "sphere: these directions are no whole sphere: there is no transform, and directivity, efficiency and TRP cannot be computed"
#: As many cuts out of reach are named one by one.
MOST_NAMED = 4


def resolved_scan(campaign: Campaign) -> Scan:
    """Return the scan with what it leaves open filled in: great circles go through the device's declared beam."""
    scan = campaign.goal.scan
    assert scan is not None  # only asked of campaigns that have one
    if scan.great_circles_deg is not None and scan.through_deg is None:
        return scan.model_copy(update={"through_deg": campaign.device.beam_deg})
    return scan


def cuts_of(campaign: Campaign, scan: Scan) -> list[Cut]:
    """Return the cuts of a scan; a CSV of directions is one list.

    Raises
    ------
    InputError
        If the CSV cannot be read; line, value and limit are named.
    """
    if scan.directions is None:
        return scan.cuts()
    targets = read_targets(campaign.folder / scan.directions)
    directions = np.array([one.direction for one in targets])
    label = f"{len(targets)} directions of {scan.directions}"
    return [Cut("list", label, "number", np.arange(1.0, len(targets) + 1.0), directions)]


def scan_proposal(campaign: Campaign) -> Proposal:
    """Return the one way to measure what [scan] says: as a grid if its angles are one, else direction by direction.

    Raises
    ------
    InputError
        If an axis cannot reach a direction, or the probe cannot take an offset; axis, value and limit are named.
    """
    grid = grid_proposal(campaign)
    if isinstance(grid, Proposal) and not _too_near(grid):
        return grid
    return _by_direction(with_analyzer(campaign))


def _too_near(grid: Proposal) -> bool:
    """Tell whether the range is too short for a grid's transform: its directions are then read as they are."""
    return grid.campaign.chamber.range_length_m < range_of(grid.campaign, grid.order).nearest_m


def _by_direction(campaign: Campaign) -> Proposal:
    scan = resolved_scan(campaign)
    chamber, device = campaign.chamber, campaign.device
    dual = chamber.probe.ports == 2
    offsets = [float(x) for x in (scan.offsets_deg[:1] if dual else scan.offsets_deg)]
    scheme = "dual-port" if dual else "two-pass" if len(offsets) > 1 else "one-pass"
    goal = campaign.goal.model_copy(update={"scheme": scheme, "scan": scan})
    resolved = replace(campaign, goal=goal)
    cuts = cuts_of(campaign, scan)
    angles = _all_angles(chamber, cuts, double_sided=scan.double_sided)
    order = order_of(resolved)
    lines = None
    if goal.style == "fly":
        lines = flown_lines(resolved, cuts, [one.angles_deg for one in angles], order=order)
        angles = [
            _AxisAngles(line, _slants(chamber.positioner.geometry, np.deg2rad(line))) for line in lines.angles_deg
        ]
    runs = _runs(resolved, scan, offsets, angles, lines)
    path = build_runs(goal, chamber, device, runs, None if lines is None else lines.speed, dwell_s=scan.dwell_s)
    step = max((cut.step_deg for cut in cuts), default=0.0) or 1.0
    return Proposal(
        "as set",
        resolved,
        ScanGrid(step_deg=step, swept_step_deg=step, reach_deg=_reach_deg(cuts)),
        path,
        order,
        float(path.time_s.sum()),
        {},
        campaign_budget(resolved),
        "[scan] sets everything",
    )


def scan_settings(campaign: Campaign) -> dict[str, object]:
    """Return what the record must know of a scan: its form, and the scan itself."""
    scan = resolved_scan(campaign)
    return {"form": "directions", "scan_json": scan.model_dump_json(), "dwell_s": scan.dwell_s}


def scan_warnings(best: Proposal) -> list[str]:
    """Return in plain words what cannot be computed from a scan."""
    campaign = best.campaign
    scan, chamber = campaign.goal.scan, campaign.chamber
    assert scan is not None  # the proposal is a scan's
    cuts = cuts_of(campaign, scan)
    out = [NEEDS_THE_SPHERE]
    why = grid_proposal(campaign)
    if isinstance(why, str) and why:
        out.append(f"grid: read direction by direction, because it is no grid that carries a transform: {why}")
    needed = step_for(best.order)
    coarse = max((cut.step_deg for cut in cuts if cut.name != "list"), default=0.0)
    if scan.directions is not None:
        out.append(
            "list: single directions give levels there; beamwidths, side lobes and nulls cannot be read from them"
        )
    elif coarse > needed * (1.0 + 1e-9):
        out.append(
            f"sampling: steps of {coarse:g} deg are coarser than the {needed:g} deg that order {best.order} needs: side lobes and "
            f"nulls between the points are not seen, and widths are as uncertain as the gaps; {needed:g} deg would do"
        )
    if chamber.probe.ports == 1 and _different(scan.offsets_deg) < 2:
        out.append("polarization: one offset gives one component: no cross-polar, no axial ratio, no total gain; "
                   f"offset_deg = [{scan.offsets_deg[0]:g}, {scan.offsets_deg[0] + 90:g}] gives both")  # fmt: skip
    rolls = chamber.positioner.geometry is Geometry.ROLL_OVER_AZIMUTH and chamber.probe.ports == 1
    turned = max((turned_by_roll_deg(cut.directions) for cut in cuts), default=0.0)
    if rolls and scan.mixes_where_it_rolls and turned > MOST_TURNED_DEG:
        out.append(
            f"polarization: the device rolls along a cut while the probe stands still, so that one offset reads polarizations over {turned:.0f} deg: "
            "no figure of one polarization follows. offset_deg with a second one 90 deg further, or probe = 'follows', gives them"
        )
    if chamber.probe.ports == 2 and scan.offsets_deg.size > 1:
        out.append(f"polarization: the probe has two ports, which give both components at once: only the first offset, "
                   f"{scan.offsets_deg[0]:g} deg, is measured; leave the others out")  # fmt: skip
    reach = range_of(campaign, best.order)
    if chamber.range_length_m < max(reach.far_field_m, reach.side_lobe_m):
        out.append(
            f"range: {chamber.range_length_m:g} m against 2D^2/lambda = {reach.far_field_m:.2f} m and {reach.side_lobe_m:.2f} m for the "
            f"wanted level: the pattern is that of the range length; what this changes is in the intervals"
        )
    return out


def _different(offsets_deg: FloatArray) -> int:
    """Return how many different polarizations offsets receive: half a turn is the same one."""
    return len({round(float(x) % 180.0, 6) % 180.0 for x in offsets_deg})


def _reach_deg(cuts: list[Cut]) -> float:
    lowest = min(float(cut.directions[:, 2].min()) for cut in cuts)
    return float(np.rad2deg(np.arccos(np.clip(lowest, -1.0, 1.0))))


@dataclass(frozen=True)
class _AxisAngles:
    """Angles of both axes of the device (n, 2), and the slant received at probe roll 0 (n,), degrees."""

    angles_deg: FloatArray
    slant_deg: FloatArray


def _all_angles(chamber: Chamber, cuts: list[Cut], *, double_sided: bool) -> list[_AxisAngles]:
    """Return where the axes go for every cut; raises `InputError` naming what is out of reach."""
    axis_angles, faults = [], list[str]()
    for cut in cuts:
        try:
            angles = _angles(chamber, cut, double_sided=double_sided)
        except InputError as error:
            faults += error.faults
            continue
        slant = _slants(chamber.positioner.geometry, np.deg2rad(angles))
        axis_angles.append(_AxisAngles(angles, slant))
    if faults:
        more = [f"... and {len(faults) - MOST_NAMED} more cuts"] if len(faults) > MOST_NAMED else []
        raise InputError([*faults[:MOST_NAMED], *more])
    return axis_angles


def _slants(geometry: Geometry, angles: FloatArray) -> FloatArray:
    """Return the Ludwig-3 slant (n,) in degrees that the probe receives at roll 0, for axes' angles (n, 2) in radians."""
    seen = sighting(geometry, first=angles[:, 0], second=angles[:, 1])
    theta, phi = theta_phi(seen.direction)
    pair = np.stack(from_cartesian(seen.first_vector.astype(complex), theta=theta, phi=phi), axis=-1)
    both = np.einsum("nab,nb->na", basis_matrix(Basis.LUDWIG_3, theta=theta, phi=phi), pair).real
    return np.asarray(np.rad2deg(np.arctan2(both[:, 1], both[:, 0])))


def _angles(chamber: Chamber, cut: Cut, *, double_sided: bool) -> FloatArray:
    """Return the axes' convention angles (n, 2), each point near the one before it."""
    geometry = chamber.positioner.geometry
    first, second = chamber.positioner.azimuth, chamber.positioner.second
    if cut.pair_deg is not None and geometry is Geometry.ROLL_OVER_AZIMUTH:
        asked = cut.pair_deg.copy()
        if not double_sided:
            behind = asked[:, 0] < 0.0
            asked[behind] = asked[behind] * [-1.0, 1.0] + [0.0, 180.0]
        roll = [_near(second.map, float(x), None) for x in asked[:, 1]]
        _require_inside(cut, first, "azimuth", asked[:, 0], hint=_theta_hint(first))
        if any(one is None for one in roll):
            _require_inside(cut, second, "roll", asked[:, 1], hint="")
        return np.stack([asked[:, 0], np.array(roll, float)], axis=-1)
    out = list[tuple[float, float]]()
    for number, direction in enumerate(cut.directions):
        ways = [
            (one, two)
            for a, b in solutions(geometry, direction)
            for one in _within(first.map, float(np.rad2deg(a)))
            for two in _within(second.map, float(np.rad2deg(b)))
        ]
        if not ways:
            raise InputError([_out_of_reach(chamber, cut, number)])
        near = out[-1] if out else (0.0, 0.0)
        out.append(min(ways, key=lambda way: (abs(way[0] - near[0]) + abs(way[1] - near[1]), way)))
    return np.array(out)


def _within(axis: AxisMap, angle_deg: float) -> list[float]:
    """Return an angle of the conventions with every whole number of turns that the axis reaches."""
    return [float(axis.angle_deg(one)) for one in axis.readouts_within(angle_deg)]


def _near(axis: AxisMap, angle_deg: float, before_deg: float | None) -> float | None:
    """Return the angle as asked, or whole turns beside it, nearest to what was asked; None out of reach."""
    ways = _within(axis, angle_deg)
    wanted = angle_deg if before_deg is None else before_deg
    return min(ways, key=lambda way: abs(way - wanted)) if ways else None


def _theta_hint(axis: Axis) -> str:
    return f"; double_sided = false measures negative theta with the roll turned; theta to {axis.max_deg:g} deg is in reach"


def _require_inside(cut: Cut, axis: Axis, name: str, angles_deg: FloatArray, *, hint: str) -> None:
    shown = axis.map.readout_deg(angles_deg)
    bad = np.flatnonzero((shown < axis.min_deg - 1e-9) | (shown > axis.max_deg + 1e-9))
    if bad.size:
        raise InputError(
            [f"goal.toml: scan, {cut.label}: axis {name} = {shown[bad[0]]:g}: must be from {axis.min_deg:g} to "
             f"{axis.max_deg:g} deg{hint}{axis.why_fixed}"]
        )  # fmt: skip


def _out_of_reach(chamber: Chamber, cut: Cut, number: int) -> str:
    geometry = chamber.positioner.geometry
    names = geometry.axis_names
    a, b = np.rad2deg(solutions(geometry, cut.directions[number])[0])
    one, two = chamber.positioner.azimuth, chamber.positioner.second
    limits = ", ".join(
        f"{name} = {float(axis.map.readout_deg(value)):.6g} (must be from {axis.min_deg:g} to {axis.max_deg:g} deg)"
        for name, axis, value in zip(names, (one, two), (a, b), strict=True)
    )
    return (
        f"goal.toml: scan, {cut.label}: {cut.angle_name} = {cut.angle_deg[number]:g} deg is out of reach: {limits}; "
        f"take a smaller range{two.why_fixed}"
    )


def _runs(
    campaign: Campaign, scan: Scan, offsets: list[float], places: list[_AxisAngles], lines: FlownLines | None
) -> list[PlannedSlice]:
    """Return every cut of every state, repeat and pass; neighbours run in opposite directions.

    On the fly the cut nearest to the beam is first flown there and back, which shows latency and backlash.
    """
    states, chamber = campaign.device.states, campaign.chamber
    count = 0 if states is None else len(states.names)
    inner = states is not None and states.loop == "inner"
    out = list[PlannedSlice]()
    if lines is not None:
        there = _targets(chamber, places[lines.strongest], offsets[0], follows=scan.probe == "follows")
        require_still(chamber, there, lines)
        nobody = np.full(len(there), -1, np.int64)
        out += [PlannedSlice(line, Role.TURN, lines.strongest, 0, nobody, line=True) for line in (there, there[::-1])]
    for outer in range(count if count and not inner else 1):
        for _ in range(scan.repeats):
            for pass_index, offset in enumerate(offsets):
                order = range(len(places)) if pass_index % 2 == 0 else reversed(range(len(places)))
                for where in order:
                    targets = _targets(chamber, places[where], offset, follows=scan.probe == "follows")
                    if len(out) % 2 and campaign.goal.path == "serpentine":
                        targets = targets[::-1]
                    state = np.full(len(targets), outer if count and not inner else -1, np.int64)
                    if inner:
                        targets, state = np.repeat(targets, count, axis=0), np.tile(np.arange(count), len(targets))
                    if lines is not None:
                        require_still(chamber, targets, lines)
                    out.append(PlannedSlice(targets, Role.SCAN, where, pass_index, state, line=lines is not None))
    return out


def _targets(chamber: Chamber, places: _AxisAngles, offset_deg: float, *, follows: bool) -> FloatArray:
    """Return readouts (n, axis) with the probe at an offset; half a turn is the same polarization."""
    table = chamber.axis_table
    if "probe" not in table:
        return readouts_of(chamber, places.angles_deg)
    axis = table["probe"]
    wanted = offset_deg - places.slant_deg if follows else np.full(places.slant_deg.size, offset_deg)
    rolls = np.empty(wanted.size)
    before = 0.0
    for index, angle in enumerate(wanted):
        ways = [way for half in (0.0, 180.0) for way in _within(axis.map, float(angle) + half)]
        if not ways:
            raise InputError(
                [f"goal.toml: scan.offset_deg = {offset_deg:g}: the probe would have to roll to {angle:g} deg: must be from "
                 f"{axis.min_deg:g} to {axis.max_deg:g} deg (chamber.toml probe.roll)"]
            )  # fmt: skip
        before = rolls[index] = min(ways, key=lambda way: (abs(way - before), way))
    return readouts_of(chamber, np.column_stack([places.angles_deg, rolls]))
