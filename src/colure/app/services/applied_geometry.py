"""What a run tells of a positioner goes into chamber.toml: readings that the alignment of later runs starts from, or zeros of axes.

Later runs on roll over azimuth are aligned from their data, so what was told becomes a reading there. On other positioners nothing
is aligned from the data: a zero that stands out is corrected where readouts become angles, and everything else stays as declared.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from colure.app.services.joint_geometry import ProposedZero, aligned_from_data, proposed_zeros
from colure.errors import InputError
from colure.model.campaign import Campaign
from colure.model.chamber import Reading
from colure.model.whole import write_whole

if TYPE_CHECKING:
    from colure.app.services.joint_geometry import GeometryAnswer

#: Digits after the point of a reading or a zero, degrees or millimetres.
DIGITS = 4


def apply_geometry(answer: GeometryAnswer, campaign: Campaign, measured: Campaign | None = None) -> list[str]:
    """Write what a run tells into chamber.toml; return what was written, and what was not, in words.

    Parameters
    ----------
    measured
        The campaign with the chamber that the run began with; `campaign` itself if None.

    Raises
    ------
    InputError
        If a zero is not what it was when the run was measured: what the run tells is no longer so.
    """
    if aligned_from_data(campaign):
        return _readings(answer, campaign)
    return _zeros(answer, campaign, campaign if measured is None else measured)


def _readings(answer: GeometryAnswer, campaign: Campaign) -> list[str]:
    """Write every adjustment that a run tells into `[alignment.readings]`; a reading that is there and surer stays."""
    import tomlkit

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
            out.append(
                f"alignment.readings.{one.name}: stays at {there.value:g} \u00b1 {there.expanded:g} {one.unit}, which is surer"
            )
            continue
        entry = tomlkit.inline_table()
        entry.update(
            {"value": round(one.value, DIGITS), "expanded": max(round(one.expanded, DIGITS), 1e-4), "run": answer.mark}
        )
        readings[one.name] = entry
        out.append(f"alignment.readings.{one.name} = {one.value:+.3f} \u00b1 {one.expanded:.3f} {one.unit}")
    if any(" = " in one for one in out):
        write_whole(path, tomlkit.dumps(document))
        Campaign.load(campaign.folder)
    return out


def _zeros(answer: GeometryAnswer, campaign: Campaign, measured: Campaign) -> list[str]:
    """Write the zeros of axes and joints that a run tells apart from all else and that stand out of their uncertainty."""
    import tomlkit

    path = campaign.folder / "chamber.toml"
    document = tomlkit.parse(path.read_text(encoding="utf-8"))
    present, faults, out, changed = campaign.chamber.driven_table, list[str](), list[str](), False
    for one in proposed_zeros(answer, measured):
        now, new = float(present[one.joint].zero_deg), round(one.new, DIGITS)
        where = f"{one.joint}.{one.entry}"
        if abs(now - new) < 10.0**-DIGITS:
            out.append(f"{where} = {new:g} {one.unit} is there already")
        elif abs(now - one.old) > 1e-9:
            faults.append(f"chamber.toml: {where} = {now:g}: must be {one.old:g} as the run began with it ({one.unit}): it was changed since; "
                          "measure again with what is there now")  # fmt: skip
        else:
            _table_of(document, campaign, one)[one.entry] = new
            changed = True
            out.append(f"{where} = {new:g} {one.unit} instead of {one.old:g} (off by {one.found:+.3f} \u00b1 {one.expanded:.3f} {one.unit})")  # fmt: skip
    if faults:
        raise InputError(faults)
    if changed:
        write_whole(path, tomlkit.dumps(document))
        Campaign.load(campaign.folder)
    return out + _not_written(answer)


def _table_of(document: Any, campaign: Campaign, one: ProposedZero) -> Any:
    """Return the table of chamber.toml that holds an axis or a joint."""
    positioner = document["positioner"]
    if campaign.chamber.positioner.joints:
        return next(table for table in positioner["joints"] if table["name"] == one.joint)
    return document["probe"]["roll"] if one.joint == "probe" else positioner[one.joint]


def _not_written(answer: GeometryAnswer) -> list[str]:
    """Say what a run tells that no entry of chamber.toml corrects: tilts and offsets of lines, and the probe in its holder."""
    return [
        f"{one.called} = {one.value:+.3f} \u00b1 {one.expanded:.3f} {one.unit}: no entry corrects it; adjust it on the positioner, or leave it "
        "to its tolerance"
        for one in answer.rows
        if one.state == "seen" and one.kind != "zero" and abs(one.value) > one.expanded
    ]
