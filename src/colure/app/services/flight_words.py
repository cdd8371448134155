"""Whether the instruments' own files of words can do what a plan asks: said before anything moves, not after the first points."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from colure.app.services.receiver_kind import is_power_only, vector_words

if TYPE_CHECKING:
    from colure.instruments.line_profile import LineAxis
    from colure.model.campaign import Campaign
    from colure.model.instrument import Instrument
    from colure.model.plan import Plan


def _unbuffered(plan: Plan) -> str:
    """Say what a plan without kept sweeps looks like: pulses for single frequencies need them."""
    also = ", with pulse_each = 'sweep'," if plan.settings.get("point_step_deg") else ""
    return f"buffered = false{also} (goal.toml) needs none"


def flight_faults(campaign: Campaign, plan: Plan) -> list[str]:
    """Return the words that a plan on the fly needs and that a profile lacks; nothing step by step.

    Drivers of other packages are not asked: they refuse when they are called.

    Raises
    ------
    InputError
        If a profile cannot be read.
    """
    if plan.settings["style"] != "fly":
        return []
    by_pulses, buffered = plan.settings["trigger"] == "position", bool(plan.settings.get("buffered"))
    axis = str(plan.settings["fly_axis"])
    controllers = campaign.chamber.with_role("axis-controller")
    turning = [one for one in controllers if axis in (one.axes or (axis,))]
    faults = [
        text for one in turning for text in _of_controller(campaign, plan, one, by_pulses=by_pulses, buffered=buffered)
    ]
    points = bool(plan.settings.get("point_step_deg"))
    if by_pulses:
        faults += _of_receiver(campaign, buffered=buffered, points=points, unbuffered=_unbuffered(plan))
    return faults


def coarse_faults(campaign: Campaign, plan: Plan) -> list[str]:
    """Return which axes cannot be sent near enough to where a plan wants them, in the decimals of their controller's words.

    Drivers of other packages and motor records are not asked.

    Raises
    ------
    InputError
        If a profile cannot be read.
    """
    from colure.instruments.line_profile import LineProfile
    from colure.instruments.plugins import is_driver
    from colure.instruments.profile import axes_profile, profile_path
    from colure.model.loading import read_toml

    faults, table = [], campaign.chamber.driven_table
    for one in campaign.chamber.with_role("axis-controller"):
        name = one.words
        if is_driver(name) or read_toml(profile_path(name, campaign.folder)).get("kind") != "line-axes":
            continue
        words = axes_profile(name, campaign.folder)
        assert isinstance(words, LineProfile)
        for axis in one.axes or plan.axes:
            if axis not in plan.axes or axis not in words.axes:
                continue
            targets = np.unique(plan.targets_deg[:, plan.axes.index(axis)])
            if fault := words.axes[axis].target_fault(targets.tolist(), table[axis].readback_tolerance_deg):
                faults.append(f"{name}.toml: axes.{axis}: {fault}")
    return faults


def _of_controller(campaign: Campaign, plan: Plan, one: Instrument, *, by_pulses: bool, buffered: bool) -> list[str]:
    from colure.instruments.line_profile import LineProfile
    from colure.instruments.plugins import is_driver
    from colure.instruments.profile import axes_profile, profile_path
    from colure.model.loading import read_toml

    name, own, axis = one.words, f"{one.words}.toml", str(plan.settings["fly_axis"])
    if is_driver(name):
        return []
    if read_toml(profile_path(name, campaign.folder)).get("kind") == "epics-motors":
        why = "motor records cannot start sweeps by position: trigger = 'time' or style = 'step' (goal.toml)"
        return [f"{own}: {why}"] if by_pulses else []
    words = axes_profile(name, campaign.folder)
    faults = []
    timed = bool(words.timed)
    if isinstance(words, LineProfile):
        timed = all(axis.timed or words.timed for axis in words.axes.values())
    if not timed:
        faults.append(
            f"{own}: `timed` is empty: the speed of a move cannot be set; style = 'step' (goal.toml) needs none"
        )
    if by_pulses and not words.pulses:
        faults.append(
            f"{own}: `pulses` is empty: sweeps cannot be started by position; trigger = 'time' or style = 'step' (goal.toml)"
        )
    if (
        by_pulses
        and isinstance(words, LineProfile)
        and axis in words.axes
        and (fault := _rounded(words.axes[axis], plan))
    ):
        faults.append(f"{own}: axes.{axis}: {fault}")
    if buffered and not words.latched:
        faults.append(
            f"{own}: `latched` is empty: sweeps that the analyzer keeps cannot be counted against pulses; {_unbuffered(plan)}"
        )
    return faults


def _rounded(own: LineAxis, plan: Plan) -> str:
    """Say if the longest line's pulses would not come where they belong, in whole units of the controller; empty if they do."""
    column = plan.axes.index(str(plan.settings["fly_axis"]))
    lines = [
        plan.targets_deg[plan.line_index == number, column]
        for number in np.unique(plan.line_index[plan.line_index >= 0])
    ]
    line = max(lines, key=len)
    each = plan.pulses_each
    return own.pulse_fault(float(line[1] - line[0]) / each, each * line.size) if line.size > 1 else ""


def _of_receiver(campaign: Campaign, *, buffered: bool, points: bool, unbuffered: str) -> list[str]:
    name, words = campaign.chamber.analyzer.profile, vector_words(campaign)
    if is_power_only(campaign):
        return [f"{name}.toml: a power-only receiver takes no pulses; style = 'step' (goal.toml)"]
    if words is None:
        return []
    if words.trigger_external:
        missing = words.lacks_for_buffer if buffered else ""
        if missing:
            return [f"{name}.toml: `{missing}` is empty: the sweeps of a slice cannot be kept; {unbuffered}"]
        missing = words.lacks_for_points if points else ""
        why = "a pulse cannot start one frequency; pulse_each = 'sweep' (goal.toml) needs none"
        return [f"{name}.toml: `{missing}` is empty: {why}"] if missing else []
    return [
        f"{name}.toml: `trigger_external` is empty: pulses cannot start sweeps; trigger = 'time' or style = 'step' (goal.toml)"
    ]
