"""The sections of a sphere's report; every number comes from elsewhere."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

import numpy as np

from colure.analysis.figures.cuts import cuts_in_hand
from colure.model.bands import segment_words
from colure.model.files import history
from colure.model.pattern import field_of
from colure.report import charts, maps
from colure.report.axis_charts import axis_cuts, signs_sketch
from colure.report.document import (
    Block,
    Chart,
    FileLink,
    Paragraph,
    ReportSection,
    Side,
    Table,
    anchor,
    chart,
)
from colure.report.figure_tables import tables_over_frequency
from colure.report.halves import UNDEFINED_BEHIND, component_words, half_words
from colure.report.measured import where
from colure.report.reflection_charts import reflection_chart
from colure.report.source import NOT_HELD
from colure.report.terms import gain_source

if TYPE_CHECKING:
    from colure.analysis.figures.cuts import GreatCircleCut
    from colure.model.chamber import Chamber
    from colure.model.figure import Figure
    from colure.report.source import Source, Verdicts

OVER_FREQUENCY = ("gain_dbi", "directivity_dbi", "beam_azimuth_deg", "beam_elevation_deg", "beamwidth_e_deg",
                  "beamwidth_h_deg", "side_lobe_e_db", "xpd_db", "return_loss_db", "mismatch_loss_db",
                  "radiation_efficiency_db")  # fmt: skip
#: Signs of the angles, in one sentence each.
SIGNS = (
    "Looking out of the device along its boresight: positive azimuth is to the left, positive elevation is up. "
    "x points to the left, y up, z out of the device; phi counts from x towards y."
)
#: Side lobes below this are not listed.
LEAST_LOBE_DB = -40.0
#: Figures in one picture over frequency.
PANELS = 4


def verdict_section(judged: Verdicts | None) -> tuple[ReportSection, ...]:
    """Return every requirement's verdict, and the cut nearest to each mask; nothing without a specification."""
    if judged is None:
        return ()
    # What no interval holds stands once under the table, not in every row.
    rows = tuple((one.requirement, one.outcome, one.text.partition(NOT_HELD)[0]) for one in judged.rows)
    left_out = next((one.text.partition(NOT_HELD)[2].rstrip(")") for one in judged.rows if NOT_HELD in one.text), "")
    caption = f"Decision rule: {judged.rule}." + (f" The intervals do not hold: {left_out}." if left_out else "")
    table = Table(("Requirement", "Verdict", "Why"), rows, caption=caption, wide=True, shares=(1.2, 0.45, 1.7))
    drawn = (
        chart(
            charts.mask_chart(one),
            f"Mask {one.name}: the cut that comes nearest to it, plane {one.plane_deg:g} deg from E, {one.frequency_hz / 1e9:.3f} GHz, "
            "with its 95 % interval.",
        )
        for one in judged.views
    )
    return (ReportSection("Verdict", (table, *drawn)),)


def set_up_section(source: Source) -> tuple[ReportSection, ...]:
    chamber, device, plan = source.chamber, source.device, source.plan
    reach, level = plan.predicted["reach"], plan.predicted["level"]
    geometry = chamber.positioner.geometry
    rows = (
        ("Positioner", _positioner_words(chamber)),
        ("Range length",
        f"{chamber.range_length_m:g} m; 2D\u00b2/\u03bb is {reach['far_field_m']:.2f} m; {reach['verdict']}"),
        ("Device", f"{device.size_mm[0]:g} x {device.size_mm[1]:g} x {device.size_mm[2]:g} mm, "
                   f"centre at {', '.join(f'{x:g}' for x in device.offset_mm)} mm from the axes' intersection"),
        ("Sphere about the device",
        f"radius {1e3 * reach['radius_m']:.1f} mm; order {plan.order}; step {plan.step_deg:g} deg"),
        ("Polarization scheme", _scheme_words(plan.scheme, str(plan.settings.get("offsets_deg", "")),
        joints=bool(chamber.positioner.joints))),
        ("Probe",
        f"{chamber.probe.ports} port, {chamber.probe.gain_dbi:g} dBi, cross-polarization {chamber.probe.cross_polar_db:g} dB; "
                  f"{'pattern ' + chamber.probe.pattern if chamber.probe.pattern else 'taken as an ideal dipole'}"),
        ("Analyzer",
        f"{'; '.join(segment_words(plan.settings))}; predicted signal-to-noise {level['snr_peak_db']:.0f} dB at the peak"),
        ("Reference", gain_source(chamber, source.processed.budget.chamber)),
        ("Duration", f"predicted {plan.predicted['duration_s'] / 60:.0f} min"),
    )  # fmt: skip
    # The sketch shows two axes; joints may lie anywhere.
    above = [] if chamber.positioner.joints else [
        chart(
            charts.range_sketch(chamber.range_length_m, device.offset_mm, device.reach_m, geometry.axis_names),
            "The range from above.",
            width_percent=92,
        )
    ]  # fmt: skip
    return (
        ReportSection(
            "Set-up and plan",
            (
                Table(("", ""), rows, wide=True),
                *above,
                chart(signs_sketch(), SIGNS, width_percent=76),
            ),
        ),
    )


def _positioner_words(chamber: Chamber) -> str:
    """Name the stack of axes, or the joints of a mount, with the formula of the direction under test."""
    geometry, joints = chamber.positioner.geometry, chamber.positioner.joints
    if not joints:
        return f"{geometry.value}; direction under test d = {geometry.direction_formula}"
    return f"{len(joints)} joints; theta and phi as on roll over azimuth, d = {geometry.direction_formula}"


def _scheme_words(scheme: str, offsets: str = "", *, joints: bool = False) -> str:
    if offsets:
        count = len(offsets.split(","))
        kind = (
            "both ports in one pass, port 1 at"
            if scheme == "dual-port"
            else "one probe port at the offset" + ("s" if count > 1 else "")
        )
        gives = "co-polar only, no transform" if scheme == "one-pass" else "full vector"
        return f"{kind} {offsets.replace(',', ', ')} deg: {gives}; co-polar refers to the first"
    # A mount of joints has no roll axis by name; the probe's angle follows phi.
    against = "phi" if joints else "the roll axis"
    if scheme == "one-pass":
        return f"one probe port along the device's polarization, turning against {against}: co-polar only, no transform"
    if scheme == "two-pass":
        return (
            f"one probe port that turns against {against} (chi = psi - phi), psi = 0 then 90 deg: "
            "both Ludwig-3 components"
        )
    return "dual-polarized probe, both ports in one pass"


def cuts_section(source: Source) -> tuple[ReportSection, ...]:
    """Return the principal cuts at the middle frequency, as lines and as polar diagrams, and their side lobes."""
    wanted, frequency = source.particulars.settings.planes, source.frequency
    planes: dict[str, GreatCircleCut] = {name: one for name, one in source.cuts.middle.items() if name in wanted}
    gain, hand = source.cuts.peak_dbi, source.device.hand
    return (
        ReportSection(
            "Cuts",
            (
                chart(
                    charts.cuts_rectangular(planes, gain, source.levels, hand=hand),
                    f"Principal-plane cuts through the peak at {frequency / 1e9:.3f} GHz, {component_words(hand)}. Bands are "
                    "the 95 % intervals of the level at each angle; the common gain uncertainty is not included."
                    f"{'' if hand else f' {UNDEFINED_BEHIND}'}",
                    width_percent=80,
                ),
                _polar(source, planes, gain),
                *_no_plane_of_its_own(source),
                *_about_the_axis(source, gain),
                *side_lobe_tables({name: one for name, one in source.cuts.side_lobes.items() if name in wanted}),
                *_unclear_lobes({name: count for name, count in source.cuts.unclear.items() if name in wanted}),
            ),
        ),
    )


def _polar(source: Source, planes: dict[str, GreatCircleCut], gain: float) -> Chart:
    """Return the polar diagrams: of both circular components where the device is declared circular."""
    at = f"{source.frequency / 1e9:.3f} GHz"
    if source.device.polarization == "linear":
        return chart(charts.cuts_polar(planes, gain), f"The same cuts as polar diagrams, {at}.", width_percent=80)
    hand = source.device.hand
    # An ellipse is declared by its major axis: its cuts are Ludwig-3 ones, its polar diagrams show both hands.
    drawn = charts.cuts_polar(planes if hand else cuts_in_hand(planes, 1), gain, hand=hand or 1)
    return chart(
        drawn, f"The same cuts as polar diagrams of the right- and left-hand components, {at}.", width_percent=80
    )


def _no_plane_of_its_own(source: Source) -> tuple[Paragraph, ...]:
    """Say which planes E and H are of a device without a plane of its own."""
    if source.device.polarization == "linear":
        return ()
    return (
        Paragraph(
            "A circularly polarized device has no E plane of its own. E names the plane of the declared direction, H the plane at "
            "right angles to it."
        ),
    )


def _about_the_axis(source: Source, gain: float) -> tuple[Chart, ...]:
    """Return the cuts whose angle counts from the mechanical boresight, with the readings before correction."""
    one = source.cuts
    if not one.axis:
        return ()
    words = (
        "Cuts through the mechanical boresight, the device's z axis: phi from x towards y. Both polarizations; solid: the result"
        + (
            "; dashed: as read at the range length, before alignment, transform and mode filter, with the same maximum."
            if one.as_measured
            else "."
        )
    )
    return (chart(axis_cuts(one.axis, one.as_measured, gain), f"{words} {source.frequency / 1e9:.3f} GHz."),)


def _unclear_lobes(unclear: dict[str, int]) -> tuple[Paragraph, ...]:
    """Say how many maxima noise or stray signals may have made."""
    if not any(unclear.values()):
        return ()
    counted = ", ".join(f"{count} in the {plane} plane" for plane, count in unclear.items() if count)
    return (
        Paragraph(
            f"Not listed: {counted}. These maxima above {LEAST_LOBE_DB:g} dB rise above their neighbourhood by less than their uncertainty."
        ),
    )


def side_lobe_tables(planes: dict[str, list[tuple[float, float]]]) -> tuple[Block, ...]:
    """Return every side lobe of each plane down to `LEAST_LOBE_DB`, as angle and level."""
    rows = []
    for plane, every in planes.items():
        lobes = [(angle, level) for angle, level in every if level > LEAST_LOBE_DB]
        if lobes:
            rows.append(
                (f"{plane} plane", ", ".join(f"{level:.1f} dB at {angle:+.0f}\u00b0" for angle, level in lobes))
            )
    if not rows:
        return ()
    return (Table(("Side lobes", "radiation intensity, re the peak"), tuple(rows), wide=True),)


def sphere_section(source: Source) -> tuple[ReportSection, ...]:
    """Return maps over direction cosines and over the sphere, the solid, and the coverage."""
    centre, frequency = source.middle, source.frequency
    pattern = source.processed.pattern
    theta, phi = pattern["theta"].values, pattern["phi"].values
    field = field_of(pattern)[centre]
    gain = charts.PARTIAL_GAIN if source.processed.sphere.one_polarization else charts.TOTAL_GAIN
    solid = chart(
        charts.solid(theta_deg=theta, phi_deg=phi, field=field, gain=gain),
        f"The same as a solid, {frequency / 1e9:.3f} GHz.",
        dense=True,
    )
    covered = _coverage_blocks(source, centre)
    title = "The whole sphere" if source.plan.grid.whole else f"The sphere, {where(source.plan)}"
    blocks: tuple[Block, ...] = (
        *_front(source, centre, frequency),
        chart(
            charts.sphere_map(theta_deg=theta, phi_deg=phi, field=field, gain=gain),
            f"{gain}, {frequency / 1e9:.3f} GHz.",
            dense=True,
        ),
        Side((solid, *covered)),
    )
    return (ReportSection(title, blocks),)


def _front(source: Source, centre: int, frequency: float) -> tuple[Chart, ...]:
    sphere = source.processed.sphere
    if sphere.one_polarization:
        return ()
    region, at = float(np.deg2rad(sphere.region_deg)), f"{frequency / 1e9:.3f} GHz"
    drawn = maps.beam_maps(
        source.processed.expansion.coefficients[centre],
        slant=source.processed.budget.slant,
        hand=source.device.hand,
        region=region,
    )
    return tuple(chart(one, half_words(at, back=back, hand=source.device.hand), dense=True) for one, back in drawn)


def _coverage_blocks(source: Source, centre: int) -> tuple[Chart, ...]:
    if not source.plan.grid.whole or source.processed.sphere.one_polarization:
        return ()
    pattern = source.processed.pattern
    power = np.sum(np.abs(field_of(pattern)[centre]) ** 2, axis=0)
    theta, words = (
        np.deg2rad(pattern["theta"].values),
        "CDF of total gain over solid angle; the dotted line is the 50th percentile",
    )
    if source.states:
        best = np.max(np.stack(list(source.states.values())), axis=0)
        figure = maps.coverage_curve(source.states, theta, best)
        return (chart(figure, f"Spherical coverage of {len(source.states)} states and of the best of all: {words}."),)
    return (chart(maps.coverage_curve({"device": power}, theta, None), f"Spherical coverage: {words}."),)


def face_section(source: Source) -> tuple[ReportSection, ...]:
    """Return the excitation of the device's elements; nothing where the scan cannot tell."""
    face, frequency = source.face, source.frequency
    if face is None:
        return ()
    rows = tuple(
        (
            f"row {s.row}, column {s.column}",
            s.verdict,
            s.level_words,
            "" if s.phase_error_deg is None else f"{s.phase_error_deg:+.0f} deg",
        )
        for s in face.suspects
    )
    listing: Block = Paragraph("No element stands out from a smooth illumination.")
    if rows:
        listing = Table(
            ("Element (from 0)", "Verdict", "level", "phase"), rows, caption="Against a smooth illumination."
        )
    return (
        ReportSection(
            "Excitation of the elements",
            (
                chart(
                    charts.face_picture(face),
                    f"Excitation of every element at {frequency / 1e9:.3f} GHz, fitted to the far field. "
                    "Rings mark elements that stand out; an element in the floor shows no phase.",
                    dense=True,
                ),
                listing,
                Paragraph(
                    f"One excitation per element is fitted to the far field at every frequency. Residual of the fit: "
                    f"{face.residual_db:.0f} dB rms. Elements below {face.floor_db:.0f} dB cannot be told from an element that does not radiate."
                ),
            ),
        ),
    )


def frequency_section(source: Source) -> tuple[ReportSection, ...]:
    """Return figures and cuts over frequency; nothing where one frequency was measured."""
    if source.processed.frequency_hz.size < 2:
        return ()
    groups = []
    for name in OVER_FREQUENCY:
        curves = [figure for figure in source.figures if figure.name == name and not figure.reason]
        if curves:
            groups.append((curves[0].label, curves))
    falls = tuple(
        chart(
            maps.waterfall(curves, source.processed.frequency_hz, plane, hand=source.device.hand),
            f"Co-polar {plane}-plane cut over frequency, each relative to its own peak.",
            dense=True,
        )
        for plane, curves in source.cuts.band.items()
        if plane in source.particulars.settings.planes
    )
    # Few panels a picture: a page takes what fits.
    drawn = (
        chart(charts.over_frequency(groups[i : i + PANELS]), "Figures over frequency; bands are the 95 % intervals.")
        for i in range(0, len(groups), PANELS)
    )
    measured = source.processed.budget.reflection
    reflected = (
        ()
        if measured is None
        else (
            chart(
                reflection_chart(measured, source.processed.frequency_hz),
                "Reflection S11 of the device, as measured in the run: level with its 95 % interval, and in the complex plane; circles "
                "are 0, -10 and -20 dB.",
            ),
        )
    )
    return (
        ReportSection(
            "Over frequency",
            (
                *drawn,
                *reflected,
                Side(falls),
                *tables_over_frequency(source.figures, source.here, source.particulars.settings.frequencies_ghz),
            ),
        ),
    )


def findings_section(source: Source) -> tuple[ReportSection, ...]:
    """Return what the self-consistency checks found, largest effect first."""
    rows = tuple(
        (f"{one.topic}, {one.level_db:.0f} dB" if one.has_level else one.topic, f"{one.text}.".replace("`", ""))
        for one in source.findings
    )
    return (
        ReportSection(
            "Self-consistency checks",
            (
                Paragraph(
                    "Every slice passes the boresight, and the boresight check is repeated during the run. A device also radiates "
                    "fewer modes than the scan resolves. These redundant readings show how well the data agree. "
                    "Levels are fields relative to the peak, after correction."
                ),
                Table(("Check", "Finding"), rows, wide=True, shares=(1.0, 4.0)),
            ),
        ),
    )


def drift_section(source: Source) -> tuple[ReportSection, ...]:
    """Return the drift of the boresight check (tie points) and what its correction leaves."""
    drift = source.processed.drift
    jumps = "" if not drift.jumps else f" {len(drift.jumps)} jumps were found; they were not smoothed over."
    return (
        ReportSection(
            "Drift",
            (
                chart(
                    charts.drift_record(drift, source.processed.frequency_hz),
                    "Tie points over the run.",
                    width_percent=80,
                ),
                Paragraph(
                    f"{drift.time_s.size} tie points. Each is predicted by its neighbours within {100 * drift.residual:.2f} % "
                    f"in amplitude (rms). After correction {100 * drift.between:.2f} % remain; the budget holds them.{jumps}"
                ),
            ),
        ),
    )


def trace_section(source: Source) -> tuple[ReportSection, ...]:
    """Return every processing step with its parameters, and the files with their hashes."""
    steps = steps_of(history(source.processed.pattern))
    return (
        ReportSection(
            "Traceability to the raw data",
            (
                Table(("Step", "Parameters"), steps, wide=True, verbatim=True),
                FileLink("Record", source.record_file, f"SHA-256 {source.record_sha256}"),
                FileLink(
                    "Journal", "journal.sqlite", f"root hash {source.record_attrs.get('journal_root_hash', 'unknown')}"
                ),
                FileLink("Pattern", "pattern.nc", "netCDF-4, e_theta and e_phi on a 1 deg grid"),
                Paragraph(f"Plan hash {source.record_attrs.get('plan_hash', source.plan.hash)}"),
            ),
        ),
    )


#: Parameters of steps that stand in words elsewhere.
ELSEWHERE = ("stops", "checks", "identity", "again")


def steps_of(made: list[dict[str, Any]]) -> tuple[tuple[str, str], ...]:
    """Return every step of a history with its parameters."""
    return tuple(
        (
            entry["step"],
            ", ".join(f"{k} = {_short(v)}" for k, v in entry["parameters"].items() if k not in ELSEWHERE),
        )
        for entry in made
    )


def _short(value: Any) -> str:
    text = f"{value:.6g}" if isinstance(value, float) else str(value)
    return text if len(text) <= 90 else text[:87] + "..."


def definitions_section(here: Sequence[Figure]) -> ReportSection:
    """Return what every figure means, with its source."""
    rows = tuple((one.label, one.definition, one.source) for one in here)
    anchors = tuple(anchor(one.name) for one in here)
    table = Table(("Figure", "Meaning", "Source"), rows, wide=True, anchors=anchors, shares=(1.2, 3.2, 1.3))
    return ReportSection("Definitions", (table,))
