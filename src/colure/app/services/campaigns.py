"""A campaign folder read and planned; the real axes learned from a run."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

from colure.app.services.measurable import partly_measurable, require_measurable, without_figures
from colure.app.services.receiver_kind import is_power_only
from colure.app.services.reference import require_bands, require_probe, require_reference, require_reflection
from colure.app.storage.folders import RunFolder, run_folder
from colure.errors import InputError
from colure.model.bands import bands_said, with_list
from colure.model.campaign import Campaign
from colure.model.goal import Goal
from colure.model.loading import validate
from colure.model.plan import Plan

if TYPE_CHECKING:
    from colure.model.goal import Want
    from colure.planning.learning import Learned


#: Entries of goal.toml that hold whatever is scanned, and those that only a run with a forecast of its own may keep.
KEPT = ("name", "start_ghz", "stop_ghz", "points", "band", "frequency_list", "wanted_level_db", "path", "if_bandwidth_hz", "power_dbm", "monitor_ghz", "reflection", "run")  # fmt: skip
STYLED = ("style", "trigger", "buffered", "pulse_each")


def with_scan(
    campaign: Campaign, scan: dict[str, Any], monitor_ghz: float | None, *, source: str, kept: tuple[str, ...] = KEPT
) -> Campaign:
    """Return a campaign with a scan in place of whatever its goal.toml scans.

    source
        Who asks, for what is refused.

    Raises
    ------
    InputError
        If the scan's entries are not as they must be.
    """
    if "great_circles_deg" in scan and "through_deg" not in scan:
        scan = {**scan, "through_deg": campaign.device.beam_deg}  # ties may look elsewhere
    table = {name: value for name, value in campaign.goal.model_dump().items() if name in kept and value is not None}
    if monitor_ghz is not None:
        table["monitor_ghz"] = monitor_ghz
    return replace(campaign, goal=validate(Goal, {**table, "scan": scan}, source=source))


def with_frequencies(campaign: Campaign, said: str | None) -> Campaign:
    """Return a campaign with other frequencies than its goal.toml names; as it is if none are said.

    said
        GHz: a list, `start:stop:step`, or the name of a CSV beside goal.toml.

    Raises
    ------
    InputError
        If they cannot be read.
    """
    if said is None:
        return campaign
    left = ("start_ghz", "stop_ghz", "points", "band", "frequency_list", "monitor_ghz")
    table = {name: v for name, v in campaign.goal.model_dump().items() if name not in left and v is not None}
    try:
        named = {"frequency_list": said} if said.lower().endswith(".csv") else {"band": bands_said(said)}
    except ValueError as error:
        raise InputError([f"frequencies = {said!r}: {error}"]) from None
    return replace(campaign, goal=validate(Goal, with_list(campaign.folder, {**table, **named}), source="frequencies"))


def make_plan(
    folder: Path,
    run: RunFolder | None = None,
    *,
    until: Want | None = None,
    scan: dict[str, Any] | None = None,
    monitor_ghz: float | None = None,
    frequencies: str | None = None,
) -> tuple[Campaign, Plan]:
    """Read a campaign and plan it; what the goal leaves open is chosen in the campaign returned.

    scan, monitor_ghz
        Entries of [scan] in place of what goal.toml scans, and the frequency to watch with it.
    frequencies
        Frequencies in place of those of goal.toml, see `with_frequencies`.

    run
        The run that is to be measured: ties look where they did if it has begun, else along the strongest direction known.
    until
        Figures and uncertainties at which the scan may end; else what the run or goal.toml says.
    """
    declared = with_frequencies(Campaign.load(folder), frequencies)
    if scan is not None:
        if until is not None:
            raise InputError(
                ["until: ends spheres that are planned from the goal: leave it out with directions of your own"]
            )
        declared = with_scan(declared, scan, monitor_ghz, source="directions", kept=(*KEPT, *STYLED))
    return plan_of(declared, run, until=until)


def plan_of(declared: Campaign, run: RunFolder | None = None, *, until: Want | None = None) -> tuple[Campaign, Plan]:
    """Plan a campaign that was read; what the goal leaves open is chosen in the campaign returned. Arguments as of `make_plan`."""
    from colure.app.services.stopping import ends_text, require_reachable, with_until
    from colure.app.services.tie_direction import with_tie_direction
    from colure.planning.preflight import make_plan as plan_campaign

    declared = replace(declared, levels_alone=is_power_only(declared))
    campaign, ties = with_tie_direction(with_until(declared, run, until), run)
    require_measurable(campaign)
    require_probe(campaign)
    require_reflection(campaign)
    require_reference(campaign)
    resolved, plan = plan_campaign(campaign)
    require_bands(resolved, plan)
    plan.predicted["missing"] = [*plan.predicted["missing"], *partly_measurable(campaign), *without_figures(resolved)]
    plan.predicted["ties"] = ties.as_dict()
    if resolved.goal.until is not None:
        require_reachable(resolved, plan)
        plan.predicted["until"] = ends_text(plan, resolved.goal.until)
    return resolved, plan


def learn_axes(folder: Path, run_name: str) -> tuple[Learned, Path]:
    """Fit the real axes to a run's record and write learned.toml beside chamber.toml."""
    from colure.model.files import open_dataset
    from colure.planning.learning import learn, save

    learned = learn(open_dataset(run_folder(folder, run_name).record), Campaign.load(folder).chamber, run_name)
    return learned, save(learned, folder)


def flip_plan(folder: Path) -> tuple[Campaign, Plan]:
    """Read a campaign and plan its flip test."""
    from colure.planning.flip import flip_plan as plan_flip

    campaign = Campaign.load(folder)
    return campaign, plan_flip(campaign)
