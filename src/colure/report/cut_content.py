"""The report of a run of cuts; every number comes from elsewhere."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

from colure.report.cut_charts import cuts_chart
from colure.report.document import Document, Paragraph, Section, Table, chart

if TYPE_CHECKING:
    from colure.analysis.cuts.levels import CutLevel
    from colure.analysis.cuts.scan import CutScan
    from colure.model.chamber import Chamber
    from colure.model.device import Device
    from colure.model.figure import Figure

#: Contributions below this share of the largest one are not listed.
LEAST_SHARE = 0.05


@dataclass(frozen=True)
class CutSource:
    """Everything the report of cuts shows; `identity` what a person said of the run."""

    chamber: Chamber
    device: Device
    scan: CutScan
    levels: list[CutLevel]
    figures: list[Figure]
    shown: int
    components: tuple[str, str]
    record_attrs: dict[str, Any]
    record_file: str
    record_sha256: str
    demo: bool
    limits: tuple[str, ...]
    identity: dict[str, str] = field(default_factory=dict)


def compose_cuts(source: CutSource) -> Document:
    """Return the whole report of a run of cuts."""
    frequency = float(source.scan.frequency_hz[source.shown])
    here = [one for one in source.figures if one.frequency_hz == frequency]
    known = [one for one in here if not one.reason]
    answer = tuple(
        f"{one.label}: {one.text_with_unit()}" for one in known if one.name.endswith(("_peak_dbi", "_width_3_deg"))
    )
    f = source.scan.frequency_hz / 1e9
    return Document(
        title=source.device.name,
        subtitle=f"Cuts at the range length, {f[0]:.3f} to {f[-1]:.3f} GHz, {f.size} frequencies"
        + (" \u2014 invented demo data from a simulated chamber" if source.demo else ""),
        answer=answer or ("No figure could be read from these directions; the levels are in the table of the run.",),
        sections=(
            *_identity_section(source),
            _figures_section(here, frequency),
            Section("Cuts", (chart(cuts_chart(source.levels, frequency, source.components),
                                   f"Levels at {frequency / 1e9:.3f} GHz; band: 95 % interval of the co-polar level."),)),
            Section("What these directions do not give", tuple(Paragraph(text) for text in source.limits)),
            _budget_section(known),
            _set_up(source),
            Section("Definitions", (Table(("Figure", "Meaning", "Source"), tuple((x.label, x.definition, x.source) for x in known), wide=True),)),
        ),
    )  # fmt: skip


def _identity_section(source: CutSource) -> tuple[Section, ...]:
    if not source.identity:
        return ()
    return (Section("Run", (Table(("", ""), tuple(source.identity.items()), wide=True),)),)


def _figures_section(here: list[Figure], frequency: float) -> Section:
    rows = tuple((one.label, one.text(), one.unit) for one in here if not one.reason)
    why: dict[str, list[str]] = {}
    for one in here:
        if one.reason:
            why.setdefault(one.reason, []).append(one.label)
    words = tuple(Paragraph(f"{'; '.join(labels)}: {reason}.") for reason, labels in why.items())
    return Section("Figures", (Table(("Figure", f"{frequency / 1e9:.3f} GHz", "unit"), rows), *words))


def _budget_section(known: list[Figure]) -> Section:
    rows = tuple(
        (one.label, row.term, f"{row.expanded:.2g} {one.unit}", f"{row.kind}: {row.basis}")
        for one in known
        for row in one.budget
        if row.expanded > LEAST_SHARE * max(other.expanded for other in one.budget)
    )
    return Section("Uncertainty", (
        Paragraph("Each error adds to the field at an angle; its effect follows from level, slope and curvature of the measured "
                  "cut. Independent contributions add by root sum of squares (JCGM 100:2008), k = 2. The finite distance moves "
                  "all readings of a kind alike: its extremes are added to the ends of the interval."),
        Table(("Figure", "Cause", "Contribution (k = 2)", "From"), rows, wide=True),
    ))  # fmt: skip


def _set_up(source: CutSource) -> Section:
    attrs, scan = source.record_attrs, source.scan
    rows = (
        ("Positioner", source.chamber.positioner.geometry.value),
        ("Range length", f"{source.chamber.range_length_m:g} m"),
        ("Device", f"{' x '.join(f'{x:g}' for x in source.device.size_mm)} mm, offset {list(source.device.offset_mm)} mm"),
        ("Cuts", "; ".join(one.cut.label for one in scan.cuts[:8]) + (f"; {len(scan.cuts)} in all" if len(scan.cuts) > 8 else "")),
        ("Polarization", f"{source.components[0]}; offsets {', '.join(f'{x:g}' for x in scan.scan.offsets_deg)} deg, probe {scan.scan.probe}"),
        ("Repeats", str(scan.scan.repeats)),
        ("Power, bandwidth", f"{attrs.get('power_dbm', float('nan')):g} dBm, {attrs.get('if_bandwidth_hz', float('nan')):g} Hz"),
        ("Record", f"{source.record_file}, SHA-256 {source.record_sha256}"),
        ("Plan", str(attrs.get("plan_hash", ""))),
        ("Journal root", str(attrs.get("journal_root_hash", ""))),
    )  # fmt: skip
    return Section("Set-up", (Table(("", ""), rows, wide=True),))
