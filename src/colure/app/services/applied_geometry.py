"""What a run tells of a positioner's adjustments goes into chamber.toml, where the alignment of later runs starts from it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from colure.errors import InputError
from colure.model.campaign import Campaign
from colure.model.chamber import Reading
from colure.model.whole import write_whole

if TYPE_CHECKING:
    from colure.app.services.joint_geometry import GeometryAnswer

#: Digits after the point of a reading, degrees or millimetres.
DIGITS = 4


def require_built_in(campaign: Campaign) -> None:
    """Raise `InputError` where nothing is aligned from the data, so that nobody would use a reading."""
    if campaign.chamber.positioner.joints:
        raise InputError(["geometry: chamber.toml positioner.joints: must be a built-in positioner to have readings written: the step "
                          "'alignment' does not turn joints; write the proposed zeros into chamber.toml by hand and measure again"])  # fmt: skip


def apply_geometry(answer: GeometryAnswer, campaign: Campaign) -> list[str]:
    """Write every adjustment that a run tells into `[alignment.readings]` of chamber.toml; return what was written, in words.

    A reading that is there and surer stays. Everything else in the file stays as it is.

    Raises
    ------
    InputError
        If the mount has joints of its own: nothing is aligned from the data there.
    """
    import tomlkit

    require_built_in(campaign)
    path = campaign.folder / "chamber.toml"
    document = tomlkit.parse(path.read_text(encoding="utf-8"))
    alignment = document.setdefault("alignment", tomlkit.table())
    readings = alignment.setdefault("readings", tomlkit.table())
    out = []
    for one in answer.adjustments:
        there: Reading | None = getattr(campaign.chamber.alignment.readings, one.name)
        if not one.told:
            continue
        if there is not None and there.expanded <= one.expanded and there.run != answer.mark:
            out.append(f"{one.name}: stays at {there.value:g} \u00b1 {there.expanded:g} {one.unit}, which is surer")
            continue
        entry = tomlkit.inline_table()
        entry.update(
            {"value": round(one.value, DIGITS), "expanded": max(round(one.expanded, DIGITS), 1e-4), "run": answer.mark}
        )
        readings[one.name] = entry
        out.append(f"{one.name} = {one.value:+.3f} \u00b1 {one.expanded:.3f} {one.unit}")
    if any(" = " in one for one in out):
        write_whole(path, tomlkit.dumps(document))
        Campaign.load(campaign.folder)
    return out
