"""A campaign folder read and planned; the real axes learned from a run."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from colure.app.services.measurable import partly_measurable, require_measurable
from colure.app.services.reference import require_probe, require_reflection
from colure.app.storage.folders import RunFolder, run_folder
from colure.model.campaign import Campaign
from colure.model.plan import Plan

if TYPE_CHECKING:
    from colure.model.goal import Want
    from colure.planning.learning import Learned


def make_plan(folder: Path, run: RunFolder | None = None, *, until: Want | None = None) -> tuple[Campaign, Plan]:
    """Read a campaign and plan it; what the goal leaves open is chosen in the campaign returned.

    run
        The run that is to be measured: ties look where they did if it has begun, else along the strongest direction known.
    until
        Figures and uncertainties at which the scan may end; else what the run or goal.toml says.
    """
    from colure.app.services.stopping import ends_text, require_reachable, with_until
    from colure.app.services.tie_direction import with_tie_direction
    from colure.planning.preflight import make_plan as plan_campaign

    campaign, ties = with_tie_direction(with_until(Campaign.load(folder), run, until), run)
    require_measurable(campaign)
    require_probe(campaign)
    require_reflection(campaign)
    resolved, plan = plan_campaign(campaign)
    plan.predicted["missing"] = [*plan.predicted["missing"], *partly_measurable(campaign)]
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
