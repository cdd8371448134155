"""What the report says, from a processed run; every number comes from elsewhere."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

import numpy as np

from colure.model.files import history
from colure.model.pattern import field_of
from colure.report import charts, maps
from colure.report.budget import budget_section
from colure.report.document import Block, Cell, Document, Link, Paragraph, Ref, Section, Table, anchor, chart
from colure.report.steps import room_section, steps_section
from colure.report.terms import gain_source

if TYPE_CHECKING:
    from colure.analysis.figures.cuts import Cut
    from colure.analysis.figures.face import Face
    from colure.analysis.findings.diagnosis import Diagnosis
    from colure.analysis.findings.finding import Finding
    from colure.analysis.pipeline.recipe import Processed
    from colure.analysis.stray.echo_map import EchoMap
    from colure.analysis.uncertainty.level_cuts import LevelCut
    from colure.analysis.verdict.verdicts import MaskView, Verdict
    from colure.geometry.conventions import FloatArray
    from colure.model.chamber import Chamber
    from colure.model.device import Device
    from colure.model.figure import Figure
    from colure.model.plan import Plan

OVER_FREQUENCY = ("gain_dbi", "directivity_dbi", "beam_azimuth_deg", "beam_elevation_deg", "beamwidth_e_deg",
                  "beamwidth_h_deg", "side_lobe_e_db", "xpd_db")  # fmt: skip


#: Side lobes below this are not listed.
LEAST_LOBE_DB = -40.0
#: Figures beside each other in one table.
COLUMNS = 6


@dataclass(frozen=True)
class Verdicts:
    """A specification's verdicts: name, rule in words, outcome of all together."""

    name: str
    rule: str
    outcome: str
    rows: list[Verdict]
    views: list[MaskView]

    @property
    def sentence(self) -> str:
        """The outcome in one sentence."""
        passed = sum(one.outcome == "pass" for one in self.rows)
        return f"Against {self.name}: {self.outcome.upper()}; {passed} of {len(self.rows)} requirements pass ({self.rule})."


@dataclass(frozen=True)
class PatternCuts:
    """Cuts through the peak in the principal planes, by plane.

    middle, peak_dbi
        At mid-band, and the peak's gain there.
    side_lobes
        (angle in degrees, radiation intensity re the peak in dB) of those of `middle`.
    band
        One at every frequency, for the picture over the band; empty where one frequency was measured.
    """

    middle: dict[str, Cut]
    peak_dbi: float
    side_lobes: dict[str, list[tuple[float, float]]]
    band: dict[str, list[Cut]]


@dataclass(frozen=True)
class Source:
    """Everything the report shows.

    findings
        What the data say of themselves, in the order in which they are listed.
    face
        Excitation of the device's elements at mid-band; None where the scan cannot tell.
    states
        Total gain (theta, phi) at mid-band of every device state, on the processed pattern's grid; empty if there is one.
    identity
        The run's name, and what a person said of it.
    """

    plan: Plan
    chamber: Chamber
    device: Device
    processed: Processed
    figures: list[Figure]
    record_attrs: dict[str, Any]
    record_file: str
    record_sha256: str
    demo: bool
    diagnoses: list[Diagnosis]
    room: EchoMap | None
    levels: dict[str, LevelCut]
    cuts: PatternCuts
    findings: list[Finding]
    face: Face | None
    judged: Verdicts | None = None
    states: dict[str, FloatArray] = field(default_factory=dict)
    identity: dict[str, str] = field(default_factory=dict)


#: What the report answers first, of the figures that exist.
ANSWERED = ("gain_dbi", "beamwidth_e_deg", "beamwidth_h_deg", "side_lobe_e_db", "side_lobe_h_db")


def compose(source: Source) -> Document:
    """Return the whole report."""
    centre = source.processed.frequency_hz.size // 2
    frequency = float(source.processed.frequency_hz[centre])
    here = [figure for figure in source.figures if figure.frequency_hz == frequency]
    return Document(
        title=source.device.name,
        subtitle=f"Antenna pattern measurement, {_band(source)}"
        + (" \u2014 invented demo data from a simulated chamber" if source.demo else ""),
        answer=_answer(source, here, frequency),
        sections=(
            *_identity_section(source),
            *verdict_section(source.judged),
            figures_section(here, frequency),
            _set_up(source),
            _cuts_section(source, frequency),
            _sphere_section(source, centre, frequency),
            *_face_section(source, frequency),
            _frequency_section(source, here),
            budget_section([figure for figure in here if not figure.reason], frequency),
            _findings_section(source),
            *room_section(source.room),
            _drift_section(source),
            steps_section(source.diagnoses),
            _trace_section(source),
            definitions_section(here),
        ),
    )


def _band(source: Source) -> str:
    f = source.processed.frequency_hz / 1e9
    return f"{f[0]:.3f} to {f[-1]:.3f} GHz, {f.size} frequencies"


def _answer(source: Source, here: list[Figure], frequency: float) -> tuple[str, ...]:
    by_name = {figure.name: figure for figure in here}
    gain = by_name["gain_dbi"]
    first = [by_name[name] for name in ANSWERED if name in by_name and not by_name[name].reason]
    groups = gain.groups()
    biggest = max(groups, key=lambda name: groups[name], default="")
    points = source.plan.predicted["points"]
    good = "No specification was given to hold it against."
    if source.judged is not None:
        good = source.judged.sentence
    return (
        f"At {frequency / 1e9:.3f} GHz: "
        + "; ".join(f"{one.label[0].lower()}{one.label[1:]} {one.text_with_unit()}" for one in first)
        + ".",
        *against(source.figures),
        good,
        f"Planned: {points['scan']} points over {_where(source.plan)} ({source.plan.scheme} scheme, slices every "
        f"{source.plan.step_deg:.3g} deg, order {source.plan.order}), {points['tie']} tie points, "
        f"{points['reference']} reference sweeps; {_measured(source.processed)}.",
        "All intervals are expanded uncertainties, about 95 %."
        + (f" The gain's largest contribution is {biggest} (\u00b1{groups[biggest]:.2f} dB)." if biggest else "")
        + (f" Not included, because nothing is declared: {', '.join(gain.not_included)}." if gain.not_included else ""),
    )


def against(figures: list[Figure]) -> list[str]:
    """Say on page one what the data say against the figures."""
    told = dict.fromkeys(words for one in figures for words in one.cautions)
    return [f"{words[0].upper()}{words[1:]}." for words in told]


def _measured(done: Processed) -> str:
    """Say whether the scan is complete, and on what the pattern rests."""
    return "how many of them were measured is not known" if done.completeness is None else done.completeness.text


def verdict_section(judged: Verdicts | None) -> tuple[Section, ...]:
    """Return every requirement's verdict, and the cut nearest to each mask; nothing without a specification."""
    if judged is None:
        return ()
    rows = tuple((one.requirement, one.outcome, one.text) for one in judged.rows)
    table = Table(("Requirement", "Verdict", "Why"), rows, caption=f"Decision rule: {judged.rule}.", wide=True,
                  shares=(1.2, 0.45, 1.7))  # fmt: skip
    drawn = (
        chart(
            charts.mask_chart(one),
            f"Mask {one.name}: the cut that comes nearest to it, plane {one.plane_deg:g} deg from E, {one.frequency_hz / 1e9:.3f} GHz, "
            "with its 95 % interval.",
        )
        for one in judged.views
    )
    return (Section("Verdict", (table, *drawn)),)


def _where(plan: Plan) -> str:
    """Say which part of the sphere was measured."""
    return "the whole sphere" if plan.grid.whole else f"theta up to {plan.settings['region_deg']:g} deg"


def _identity_section(source: Source) -> tuple[Section, ...]:
    """Return what a person said of the run; nothing if nothing was said."""
    if len(source.identity) < 2:
        return ()
    return (Section("Run", (Table(("", ""), tuple(source.identity.items()), wide=True),)),)


def _set_up(source: Source) -> Section:
    chamber, device, plan = source.chamber, source.device, source.plan
    reach, level = plan.predicted["reach"], plan.predicted["level"]
    geometry = chamber.positioner.geometry
    rows = (
        ("Positioner", f"{geometry.value}; direction under test d = {geometry.direction_formula}"),
        ("Range length", f"{chamber.range_length_m:g} m; 2D\u00b2/\u03bb is {reach['far_field_m']:.2f} m; {reach['verdict']}"),
        ("Device", f"{device.size_mm[0]:g} x {device.size_mm[1]:g} x {device.size_mm[2]:g} mm, "
                   f"centre at {device.offset_mm} mm from the axes' crossing"),
        ("Turning sphere", f"radius {1e3 * reach['radius_m']:.1f} mm; order {plan.order}; step {plan.step_deg:g} deg"),
        ("Polarization scheme", _scheme_words(plan.scheme)),
        ("Probe", f"{chamber.probe.ports} port, {chamber.probe.gain_dbi:g} dBi, cross-polarization {chamber.probe.cross_polar_db:g} dB; "
                  f"{'pattern ' + chamber.probe.pattern if chamber.probe.pattern else 'taken as an ideal dipole'}"),
        ("Analyzer", f"{plan.settings['power_dbm']:g} dBm, {plan.settings['if_bandwidth_hz']:g} Hz; predicted signal-to-noise "
                     f"{level['snr_peak_db']:.0f} dB at the peak"),
        ("Reference", gain_source(chamber, source.processed.budget.chamber)),
        ("Duration", f"predicted {plan.predicted['duration_s'] / 60:.0f} min"),
    )  # fmt: skip
    sketch = charts.range_sketch(chamber.range_length_m, device.offset_mm, device.reach_m, geometry.axis_names)
    return Section(
        "Set-up and plan",
        (Table(("", ""), rows, wide=True), chart(sketch, "The range from above.", width_percent=92)),
    )


def _scheme_words(scheme: str) -> str:
    if scheme == "one-pass":
        return (
            "one probe port along the device's polarization, turning against the roll axis: co-polar only, no transform"
        )
    if scheme == "two-pass":
        return (
            "one probe port that turns against the roll axis (chi = psi - phi), psi = 0 then 90 deg: "
            "both Ludwig-3 components"
        )
    return "dual-polarized probe, both ports in one pass"


def figures_section(here: list[Figure], frequency: float) -> Section:
    """Return the table of figures of one frequency, and why some do not exist."""
    topics = list(dict.fromkeys(figure.topic for figure in here))
    rows: list[tuple[Cell, ...]] = [
        (_named(figure), figure.text(), figure.unit)
        for topic in topics
        for figure in here
        if figure.topic == topic and not figure.reason
    ]
    why = tuple(Paragraph(text) for text in undefined_words(here))
    return Section("Figures", (Table(("Figure", f"{frequency / 1e9:.3f} GHz", "unit"), tuple(rows)), *why))


def undefined_words(figures: Sequence[Figure]) -> list[str]:
    """Return one sentence a reason: which figures do not exist, and why."""
    told: dict[str, list[str]] = {}
    for figure in figures:
        if figure.reason and figure.label not in told.setdefault(figure.reason, []):
            told[figure.reason].append(figure.label)
    return [f"{'; '.join(labels)}: {reason}." for reason, labels in told.items()]


def tables_over_frequency(figures: Sequence[Figure], here: list[Figure]) -> list[Block]:
    """Return every figure at every frequency, topic by topic."""
    at = {(figure.name, figure.frequency_hz): figure for figure in figures}
    blocks: list[Block] = []
    for topic in dict.fromkeys(figure.topic for figure in here):
        known = {one.name for one in figures if not one.reason}
        chosen = [figure for figure in here if figure.topic == topic and figure.name in known]
        for some in (chosen[i : i + COLUMNS] for i in range(0, len(chosen), COLUMNS)):
            header: tuple[Cell, ...] = ("GHz", *(Ref(f"{one.label} / {one.unit}", anchor(one.name)) for one in some))
            table = tuple(
                (f"{f / 1e9:.3f}", *(_short_text(at[one.name, f]) for one in some))
                for f in sorted({one.frequency_hz for one in figures})
            )
            blocks.append(Table(header, table))
    return blocks


def _short_text(figure: Figure) -> str:
    """Return value and uncertainty for a narrow column; why a figure does not exist is said elsewhere."""
    return "undefined" if figure.reason else figure.text()


def _named(figure: Figure) -> Ref:
    """Return a figure's name, leading to its definition."""
    return Ref(figure.label, anchor(figure.name))


def _cuts_section(source: Source, frequency: float) -> Section:
    planes, gain = source.cuts.middle, source.cuts.peak_dbi
    return Section(
        "Cuts",
        (
            chart(
                charts.cuts_rectangular(planes, gain, source.levels),
                f"Principal-plane cuts through the peak at {frequency / 1e9:.3f} GHz, Ludwig-3 components; bands are the 95 % "
                "intervals of the level at each angle, what moves all levels together left out.",
            ),
            chart(charts.cuts_polar(planes, gain), f"The same cuts as polar diagrams, {frequency / 1e9:.3f} GHz."),
            *side_lobe_tables(source.cuts.side_lobes),
        ),
        new_page=True,
    )


def side_lobe_tables(planes: dict[str, list[tuple[float, float]]]) -> tuple[Block, ...]:
    """Return every side lobe of each plane down to `LEAST_LOBE_DB`, as angle and level."""
    rows = []
    for plane, every in planes.items():
        found = [(angle, level) for angle, level in every if level > LEAST_LOBE_DB]
        if found:
            rows.append(
                (f"{plane} plane", ", ".join(f"{level:.1f} dB at {angle:+.0f}\u00b0" for angle, level in found))
            )
    if not rows:
        return ()
    return (Table(("Side lobes", "radiation intensity, re the peak"), tuple(rows), wide=True),)


def _sphere_section(source: Source, centre: int, frequency: float) -> Section:
    pattern = source.processed.pattern
    theta, phi = pattern["theta"].values, pattern["phi"].values
    field = field_of(pattern)[centre]
    gain = charts.PARTIAL_GAIN if source.processed.sphere.one_polarization else charts.TOTAL_GAIN
    return Section(
        "The whole sphere" if source.plan.grid.whole else f"The sphere, {_where(source.plan)}",
        (
            *_front(source, centre, frequency),
            chart(charts.sphere_map(theta, phi, field, gain=gain), f"{gain}, {frequency / 1e9:.3f} GHz.", dense=True),
            chart(charts.solid(theta, phi, field, gain=gain), f"The same as a solid, {frequency / 1e9:.3f} GHz.", dense=True,
                  width_percent=72),
            *_coverage_blocks(source, centre),
        ),
    )  # fmt: skip


def _front(source: Source, centre: int, frequency: float) -> tuple[Block, ...]:
    sphere = source.processed.sphere
    if sphere.one_polarization:
        return ()
    reach = float(np.sin(np.deg2rad(min(sphere.region_deg, 90.0))))
    figure = maps.front_maps(
        source.processed.expansion.coefficients[centre], slant=source.processed.budget.slant, reach=reach
    )
    words = (
        f"Over direction cosines u = sin \u03b8 cos \u03c6, v = sin \u03b8 sin \u03c6 of the front half, {frequency / 1e9:.3f} GHz; the axial "
        "ratio is drawn where the level is within 20 dB of the peak."
    )
    return (chart(figure, words, dense=True),)


def _coverage_blocks(source: Source, centre: int) -> tuple[Block, ...]:
    if not source.plan.grid.whole or source.processed.sphere.one_polarization:
        return ()
    pattern = source.processed.pattern
    power = np.sum(np.abs(field_of(pattern)[centre]) ** 2, axis=0)
    theta, words = (
        np.deg2rad(pattern["theta"].values),
        "the share of all solid angles that sees at most so much total gain",
    )
    if source.states:
        best = np.max(np.stack(list(source.states.values())), axis=0)
        figure = maps.coverage_curve(source.states, theta, best)
        return (chart(figure, f"Spherical coverage of {len(source.states)} states and of the best of all: {words}."),)
    return (chart(maps.coverage_curve({"device": power}, theta, None), f"Spherical coverage: {words}."),)


def _face_section(source: Source, frequency: float) -> tuple[Section, ...]:
    face = source.face
    if face is None:
        return ()
    rows = tuple(
        (f"row {s.row}, column {s.column}", s.verdict, f"{s.relative_level_db:.1f} dB", f"{s.phase_error_deg:+.0f} deg")
        for s in face.suspects
    )
    found: Block = Paragraph("No element stands out from a smooth illumination.")
    if rows:
        found = Table(("Element (from 0)", "Verdict", "level", "phase"), rows, caption="Against a smooth illumination.")
    return (
        Section(
            "The device's face",
            (
                chart(
                    charts.face_picture(face),
                    f"Excitation of every element at {frequency / 1e9:.3f} GHz, fitted to the far field. "
                    "Rings mark elements that stand out; an element in the floor shows no phase.",
                    dense=True,
                ),
                found,
                Paragraph(
                    f"One excitation per element is fitted to the far field at every frequency; {face.residual_db:.0f} dB of it stay "
                    f"unexplained. Elements below {face.floor_db:.0f} dB cannot be told from nothing."
                ),
            ),
        ),
    )


def _frequency_section(source: Source, here: list[Figure]) -> Section:
    if source.processed.frequency_hz.size < 2:
        return Section("Over frequency", (Paragraph("One frequency was measured."),))
    groups = []
    for name in OVER_FREQUENCY:
        found = [figure for figure in source.figures if figure.name == name and not figure.reason]
        if found:
            groups.append((found[0].label, found))
    return Section(
        "Over frequency",
        (
            chart(charts.over_frequency(groups), "Figures over frequency; bands are the 95 % intervals."),
            *(
                chart(
                    maps.waterfall(found, source.processed.frequency_hz, plane),
                    f"Co-polar {plane}-plane cut over frequency, each relative to its own peak.",
                    dense=True,
                )
                for plane, found in source.cuts.band.items()
            ),
            *tables_over_frequency(source.figures, here),
        ),
        new_page=True,
    )


def _findings_section(source: Source) -> Section:
    """What the data say of themselves, largest effect first."""
    rows = tuple(
        (f"{one.topic}, {one.level_db:.0f} dB" if one.has_level else one.topic, f"{one.text}.")
        for one in source.findings
    )
    return Section(
        "What the data say of themselves",
        (
            Paragraph(
                "Every slice passes the boresight, ties are repeated, and a device fills fewer waves than a scan resolves: "
                "what is left over shows how well the data agree, and which error explains the rest. Levels are fields "
                "relative to the peak; what could be corrected has been."
            ),
            Table(("", "finding"), rows, wide=True),
        ),
    )


def _drift_section(source: Source) -> Section:
    drift = source.processed.drift
    return Section(
        "Drift",
        (
            chart(charts.drift_record(drift, source.processed.frequency_hz), "Tie points over the run."),
            Paragraph(
                f"{drift.time_s.size} tie points. Each is predicted by its neighbours within "
                f"{100 * drift.residual:.2f} % in amplitude (rms); {100 * drift.between:.2f} % are left between two of them and go into the budget."
                + ("" if not drift.jumps else f" {len(drift.jumps)} jumps were found and not smoothed over.")
            ),
        ),
    )


def _trace_section(source: Source) -> Section:
    steps = steps_of(history(source.processed.pattern))
    return Section(
        "The way back to the raw data",
        (
            Table(("Step", "Parameters"), steps, wide=True),
            Link("Record", source.record_file, f"SHA-256 {source.record_sha256}"),
            Link("Journal", "journal.sqlite", f"root hash {source.record_attrs.get('journal_root_hash', 'unknown')}"),
            Link("Pattern", "pattern.nc", "netCDF-4, e_theta and e_phi on a 1 deg grid"),
            Paragraph(f"Plan hash {source.plan.hash}"),
        ),
    )


def steps_of(made: list[dict[str, Any]]) -> tuple[tuple[str, str], ...]:
    """Return every step of a history with its parameters."""
    return tuple(
        (
            entry["step"],
            ", ".join(f"{k} = {_short(v)}" for k, v in entry["parameters"].items() if k not in ("stops", "identity")),
        )
        for entry in made
    )


def _short(value: Any) -> str:
    text = f"{value:.6g}" if isinstance(value, float) else str(value)
    return text if len(text) <= 90 else text[:87] + "..."


def definitions_section(here: list[Figure]) -> Section:
    """Return what every figure means, with its source."""
    rows = tuple((one.label, one.definition, one.source) for one in here)
    anchors = tuple(anchor(one.name) for one in here)
    return Section("Definitions", (Table(("Figure", "Meaning", "Source"), rows, wide=True, anchors=anchors),))
