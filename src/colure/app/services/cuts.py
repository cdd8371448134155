"""Runs of the operator's own directions: planned, read, drawn, exported and compared; the counterpart of a sphere's pattern."""

from __future__ import annotations

import csv
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np

from colure.app.services.campaigns import with_frequencies, with_scan
from colure.app.services.particulars import again_of, checks_of, particulars_of, stops_of
from colure.app.services.processing import (
    addresses,
    opened,
    own_state,
    reflection_of,
    write_documents,
    write_reflection,
)
from colure.app.services.reference import reference_of, require_bands, require_reference, require_reflection
from colure.app.services.tie_direction import with_tie_direction
from colure.app.storage.folders import RunFolder, require_free, require_record
from colure.app.storage.run_identity import identity_of
from colure.app.storage.run_kinds import NO_SPHERE, is_cuts
from colure.errors import InputError
from colure.model.campaign import Campaign
from colure.model.exports import safe_text
from colure.model.plan import Plan
from colure.model.strict_json import json_text
from colure.model.whole import whole_file, write_whole

if TYPE_CHECKING:
    import xarray as xr

    from colure.analysis.cuts.levels import CutLevel
    from colure.analysis.cuts.scan import CutScan
    from colure.analysis.findings.finding import Finding
    from colure.model.figure import Figure
    from colure.report.drawing import OnAxes, Panels

#: Probe offsets this near to each other are the same co-polar, degrees.
SAME_OFFSET_DEG = 0.5
#: So many cuts are named one by one in a report.
MOST_NAMED = 8


def cut_plan(
    folder: Path,
    scan: dict[str, Any],
    monitor_ghz: float | None = None,
    run: RunFolder | None = None,
    *,
    frequencies: str | None = None,
) -> tuple[Campaign, Plan]:
    """Return a campaign with a scan in place of whatever its goal.toml scans, and the plan of it.

    run
        The run that is to be measured: ties look where they did if it has begun, else along the strongest direction known.
    frequencies
        Frequencies in place of those of goal.toml, see `with_frequencies`.

    Raises
    ------
    InputError
        If the scan's entries are not as they must be, or a direction is out of reach.
    """
    from colure.planning.preflight import make_plan

    declared = with_frequencies(Campaign.load(folder), frequencies)
    campaign, ties = with_tie_direction(with_scan(declared, scan, monitor_ghz, source="colure cut"), run)
    require_reflection(campaign)
    require_reference(campaign)
    resolved, plan = make_plan(campaign)
    require_bands(resolved, plan)
    plan.predicted["ties"] = ties.as_dict()
    return resolved, plan


def same_plan(run: RunFolder, plan: Plan) -> bool:
    """Tell whether a run's record was measured by this plan."""
    from colure.model.files import attribute_of

    return attribute_of(run.record, "plan_hash", "") == plan.hash


@dataclass(frozen=True)
class ReadCuts:
    """A run's cuts as they were read: fields, levels with intervals, figures, what the data say against them, and the frequency that is shown first."""

    scan: CutScan
    levels: list[CutLevel]
    figures: list[Figure]
    shown: int
    findings: tuple[Finding, ...] = ()


def read(campaign: Campaign, run: RunFolder) -> ReadCuts:
    """Read the levels and figures of a run's cuts; nothing is written.

    Raises
    ------
    InputError
        If the record lacks ties, reference sweeps or points.
    """
    return figures_of(campaign, opened(run))


def evaluate(campaign: Campaign, run: RunFolder) -> ReadCuts:
    """Read a run's cuts and write figures.json, cuts.csv and cuts.png beside the record. Raises `InputError` as `read` does."""
    from colure.report.cut_charts import cuts_chart

    cuts = read(campaign, run)
    own = own_state(run)
    for target in addresses(own, "figures.json"):
        write_whole(target, json_text([figure.as_dict() for figure in cuts.figures], indent=1))
    for target in addresses(own, "cuts.csv"):
        write_levels(cuts.levels, target)
    drawing = cuts_chart(cuts.levels, float(cuts.scan.frequency_hz[cuts.shown]), component_words(cuts.scan)).figure
    for target in addresses(own, "cuts.png"):
        drawing.savefig(target, dpi=200)
    return cuts


def figures_of(campaign: Campaign, record: xr.Dataset) -> ReadCuts:
    """Read the figures of a record of cuts; nothing is written. Raises `InputError` as `read` does."""
    from colure.analysis.cuts.figures import cut_figures
    from colure.analysis.cuts.levels import cut_levels
    from colure.analysis.cuts.mismatch import read_once_figures
    from colure.analysis.cuts.scan import read_cuts
    from colure.analysis.findings.cut_fit import cut_fit_findings, turned_findings
    from colure.analysis.findings.reference_level import LEVELS, horn_findings
    from colure.analysis.findings.sanity import marked
    from colure.analysis.findings.slipped import cut_slip_findings
    from colure.analysis.findings.stuck_switch import switch_findings
    from colure.analysis.findings.wave_at_peak import pair_findings
    from colure.analysis.pipeline.recipe import mismatch_db
    from colure.analysis.steps.gain import age_days, with_reflection
    from colure.analysis.steps.horn_place import place_uncertainty_db
    from colure.analysis.steps.probe_beam import rim_unheard_db
    from colure.analysis.steps.reflection import read_once

    once = read_once(record)
    reference = reference_of(campaign, record["frequency"].values)
    reflection = None if once else reflection_of(campaign, record)
    context = {
        "order": float(record.attrs["order"]),
        "mismatch_db": mismatch_db(campaign.chamber, campaign.device, reference, reflection),
    }
    if campaign.chamber.reference.has_horn:
        probe = None if reference is None else reference.probe
        context["place_db"] = place_uncertainty_db(campaign.chamber, record["frequency"].values, probe)
        context["unheard_db"] = rim_unheard_db(campaign.chamber, record["frequency"].values, probe)
    if reference is not None and (age := age_days(record, reference)) is not None:
        context["age_days"] = age
    if reference is not None and reference.uncertainty_db is not None:
        context["table_db"] = reference.uncertainty_db
    try:
        scan = read_cuts(record, campaign.chamber, campaign.device, with_reflection(reference, reflection))
        figures = cut_figures(
            scan, campaign.chamber, campaign.device, campaign.evaluation(), reflection=reflection, **context
        )
        figures = read_once_figures(scan.frequency_hz) + figures if once else figures
        names = sorted({one.name for one in figures})
        against = [
            *pair_findings(_at_peaks(scan), campaign.device, names),
            *cut_fit_findings(scan, campaign.chamber, campaign.device, names),
            *turned_findings(scan, campaign.chamber, names),
            *horn_findings(
                scan.transfer.reference_gain_dbi, scan.frequency_hz, campaign.chamber,
                figures=tuple(one for one in names if one.endswith(LEVELS)),
            ),
        ]  # fmt: skip
        against = [*switch_findings(record), *cut_slip_findings(scan.slip), *against]
        figures = marked(figures, against)
        levels = cut_levels(scan, campaign.chamber, campaign.device, campaign.evaluation(), **context)
    except ValueError as error:
        raise InputError([str(error)]) from None
    return ReadCuts(scan, levels, figures, campaign.goal.shown_index(record["frequency"].values), tuple(against))


def _at_peaks(scan: CutScan) -> list[tuple[float, complex, complex]]:
    """Return (frequency in Hz, co, cross) where each cut is strongest; of those at most 60 deg from +z, as for spheres."""
    pairs = []
    for cut in scan.cuts:
        for f, frequency in enumerate(scan.frequency_hz):
            peak = int(np.argmax(cut.total[f]))
            if cut.cross is not None and cut.directions[peak, 2] >= 0.5:
                pairs.append((float(frequency), complex(cut.co[f, peak]), complex(cut.cross[f, peak])))
    return pairs


def component_words(scan: CutScan) -> tuple[str, str]:
    """Return how the two components of a scan are called."""
    offset = float(scan.scan.offsets_deg[0])
    if scan.scan.probe == "fixed":
        return f"probe fixed at {offset:g} deg", f"at {offset + 90.0:g} deg"
    return f"co-polar (Ludwig-3, slant {offset:g} deg)", "cross-polar"


def draw_cuts(
    campaign: Campaign, run: RunFolder, kind: str, frequency_ghz: float | None = None, *, ax: OnAxes = None
) -> Panels:
    """Draw a run's cuts at a frequency, the one to watch by default; `ax`: one for each cut, else a new figure.

    Raises
    ------
    InputError
        If another kind of picture is asked for, which needs a sphere, or a frequency outside the band.
    """
    from colure.report.cut_charts import cuts_chart

    if kind != "cuts":
        raise InputError([f"kind = {kind}: must be cuts: run {run.path.name} {NO_SPHERE}"])
    cuts = read(campaign, run)
    frequency = cuts.scan.frequency_hz
    if frequency_ghz is not None and not frequency.min() - 1.0 <= 1e9 * frequency_ghz <= frequency.max() + 1.0:
        raise InputError(
            [
                f"frequency_ghz = {frequency_ghz:g}: must be from {frequency.min() / 1e9:g} to {frequency.max() / 1e9:g} GHz"
            ]
        )
    index = cuts.shown if frequency_ghz is None else int(np.argmin(np.abs(frequency - 1e9 * frequency_ghz)))
    return cuts_chart(cuts.levels, float(frequency[index]), component_words(cuts.scan), ax=ax)


def write_levels(levels: list[CutLevel], target: Path) -> None:
    """Write every direction of every cut at every frequency: angles, fields, and the interval of the level (CSV)."""
    with whole_file(target) as out:
        writer = csv.writer(out)
        unit = levels[0].unit.lower() if levels else "dbi"
        writer.writerow(
            ["cut", "frequency_hz", "angle_deg", "theta_deg", "phi_deg", "azimuth_deg", "elevation_deg", f"co_{unit}",
            "co_phase_deg",
             f"cross_{unit}", "cross_phase_deg", f"total_{unit}", f"lower_{unit}", f"upper_{unit}"]
        )  # fmt: skip
        for one in levels:
            for row in one.rows():
                writer.writerow(
                    [safe_text(one.name), f"{one.frequency_hz:.3f}", *("" if np.isnan(x) else f"{x:.6g}" for x in row)]
                )


#: What the report says that cuts do not give.
CUTS_GIVE = "The run holds cuts or single directions, no sphere. No transform, map, directivity, efficiency or radiated power follows from it."


def write_report(campaign: Campaign, run: RunFolder) -> None:
    """Write the report of a run of cuts as one HTML page and as a PDF beside the record."""
    from colure.model.files import file_hash
    from colure.report.cut_content import CutSource, compose_cuts

    cuts, record, sha256 = evaluate(campaign, run), opened(run), file_hash(run.record)
    reference = "method_gain" if campaign.chamber.reference.absolute else "method_relative"
    stated = particulars_of(campaign, run, record, sha256, method=("method_cuts", reference))
    document = compose_cuts(CutSource(
        chamber=campaign.chamber, device=campaign.device, scan=cuts.scan, levels=cuts.levels, figures=cuts.figures,
        shown=cuts.shown, components=component_words(cuts.scan), record_attrs=dict(record.attrs),
        record_file=run.record.name, record_sha256=sha256,
        demo=campaign.chamber.analyzer.resource == "twin", limits=(CUTS_GIVE,), particulars=stated,
        measured=_measured(record, cuts.scan),
    ))  # fmt: skip
    write_documents(own_state(run), document)


def _measured(record: xr.Dataset, scan: CutScan) -> tuple[tuple[str, str], ...]:
    """Return what was measured of what was planned, as rows of the report."""
    from colure.model.plan import Role
    from colure.model.record import of_role

    points, ties, references = (of_role(record, role) for role in (Role.SCAN, Role.TIE, Role.REFERENCE))
    missing = f"INCOMPLETE: {scan.missing} planned readings are missing; their directions are left out"
    directions = "; ".join(f"{one.cut.label}: {one.angle_deg.size}" for one in scan.cuts[:MOST_NAMED])
    more = "" if len(scan.cuts) <= MOST_NAMED else f"; and {len(scan.cuts) - MOST_NAMED} more cuts"
    flagged = int((record["flags"].values != 0).sum()) if "flags" in record else 0
    return (
        ("State", missing if scan.missing else "complete"),
        ("Readings",
        f"{points.sizes['point']}; {ties.sizes['point']} tie points, {references.sizes['point']} reference sweeps"),
        ("Directions", directions + more),
        ("Flagged readings",
        f"{flagged} (overload, unlevelled, unlocked or undecided); kept and counted, not removed" if flagged else "none"),
        ("Drift", f"{100.0 * scan.drift:.2g} % rms of the level remain after correction by the ties"),
        *(("Instrument check", text) for text in checks_of(record)),
        *(("Stopped", text) for text in stops_of(record)),
        *(("Measured again", text) for text in again_of(record)),
    )  # fmt: skip


def export(campaign: Campaign, run: RunFolder, kind: str, target: Path) -> str:
    """Write a run's cuts (`csv`) or figures (`figures`); other formats need a sphere. Returns what was written in words."""
    from colure.model.exports import write_figures

    if kind == "reflection":
        return write_reflection(campaign, run, target)
    if kind not in ("csv", "figures"):
        raise InputError([f"export {kind}: run {run.path.name} {NO_SPHERE}"])
    require_free(target)
    cuts, said = read(campaign, run), {"run": run.path.name, **identity_of(run).said}
    if kind == "figures":
        write_figures(target, cuts.figures, said)
        return f"{len(cuts.figures)} figures with their intervals"
    write_levels(cuts.levels, target)
    write_whole(target.with_name(f"{target.stem}-identity.json"), json_text(said, indent=1))
    unit = "dBi" if campaign.chamber.reference.absolute else "dB below the strongest"
    return f"{len(cuts.scan.cuts)} cuts, levels in {unit} with 95 % intervals; phases refer to the device's declared centre"


@dataclass(frozen=True, kw_only=True)
class CutChange:
    """One figure of two runs: both values with their half widths, the change and its half width."""

    name: str
    label: str
    unit: str
    frequency_hz: float
    value: float
    expanded: float
    other: float
    other_expanded: float
    reason: str = ""

    @property
    def change(self) -> float:
        """The other less this."""
        return self.other - self.value

    @property
    def change_expanded(self) -> float:
        """Expanded uncertainty of the change, both runs' errors independent."""
        return float(np.hypot(self.expanded, self.other_expanded))

    @property
    def agrees(self) -> bool:
        """Tell whether the change lies inside both uncertainties together, or there is none to tell (`reason`)."""
        return bool(self.reason or np.isnan(self.change)) or abs(self.change) <= self.change_expanded


def require_both_cuts(one: RunFolder, other: RunFolder) -> None:
    """Raise `InputError` if one of two runs that are there holds a sphere, and the other cuts; runs that exist are named."""
    for run in (one, other):
        require_record(run)
    cuts, spheres = ([run.path.name for run in (one, other) if is_cuts(run) == wanted] for wanted in (True, False))
    if spheres and cuts:
        raise InputError(
            [f"run {cuts[0]} holds cuts, run {spheres[0]} a sphere: cuts are compared with cuts; measure the same cuts again, or a "
             "sphere, or hold the figures of both beside each other (colure evaluate)"]
        )  # fmt: skip


def _co_polar_apart(first: CutScan, second: CutScan, names: tuple[str, str]) -> str:
    """Return why co- and cross-polar of two runs are not the same quantities; empty if they are.

    Raises
    ------
    InputError
        If one run holds both components and the other one, or each holds another one: no figure of them is the same quantity.
    """
    said = [
        f"run {name} holds {'both components' if scan.vector else 'one component'} "
        f"(offset {', '.join(f'{one:g}' for one in scan.scan.offsets_deg)} deg)"
        for name, scan in zip(names, (first, second), strict=True)
    ]
    apart = abs((first.scan.offsets_deg[0] - second.scan.offsets_deg[0] + 90.0) % 180.0 - 90.0)
    if first.vector != second.vector or (apart > SAME_OFFSET_DEG and not first.vector):
        raise InputError(
            [f"{', '.join(said)}: their levels and widths are other quantities, and no change; compare runs of the same offsets"]
        )  # fmt: skip
    return (
        f"not compared, because the runs count co-polar from offsets that are {apart:g} deg apart"
        if apart > SAME_OFFSET_DEG
        else ""
    )


def compare(
    one: tuple[Campaign, RunFolder], other: tuple[Campaign, RunFolder], plot: Path | None = None
) -> list[CutChange]:
    """Hold the cuts of two runs against each other, figure by figure; nothing is matched or moved.

    Each comes with the campaign that it is worked out with: their chambers may differ (see `as_begun`).

    Raises
    ------
    InputError
        If one of the runs holds no cuts, they hold other components, or have no cut and frequency in common.
    """
    from colure.report.cut_charts import overlay_chart

    require_both_cuts(one[1], other[1])
    first, second = read(*one), read(*other)
    names = (one[1].path.name, other[1].path.name)
    turned = _co_polar_apart(first.scan, second.scan, names)
    theirs = {(f.name, round(f.frequency_hz)): f for f in second.figures}
    rows = [
        CutChange(name=f.name, label=f.label, unit=f.unit, frequency_hz=f.frequency_hz, value=f.value,
        expanded=f.expanded_uncertainty, other=counterpart.value, other_expanded=counterpart.expanded_uncertainty,
                  reason=f.reason or counterpart.reason or (turned if f.name.endswith(("_xpd_db", "_cross_peak_db")) else ""))
        for f in first.figures if (counterpart := theirs.get((f.name, round(f.frequency_hz)))) is not None
    ]  # fmt: skip
    if not rows:
        raise InputError([f"runs {names[0]} and {names[1]}: have no cut at a common frequency (cuts)"])
    if plot is not None:
        frequency = float(first.scan.frequency_hz[first.shown])
        overlay_chart(first.levels, second.levels, frequency, names).savefig(plot, dpi=200)
    return rows
