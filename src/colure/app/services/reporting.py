"""A run's report: what the record, the figures and the verdict give to its pages."""

from __future__ import annotations

from concurrent.futures import ThreadPoolExecutor
from contextlib import nullcontext
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from colure.app.services import evaluation, processing
from colure.app.services.campaigns import plan_of
from colure.app.services.particulars import again_of, checks_of, particulars_of, settings_of, stops_of
from colure.app.services.processing import (
    one_distance,
    opened,
    own_state,
    process,
    process_with,
    state_in,
    states_of,
    write_documents,
)
from colure.app.services.reference import reference_of
from colure.app.services.verdicts import judge, verdicts_for_report
from colure.app.storage.begun import campaign_of
from colure.app.storage.folders import RunFolder, require_record
from colure.errors import InputError
from colure.model.campaign import Campaign
from colure.model.plan import Plan
from colure.model.specification import load_specification

if TYPE_CHECKING:
    from colure.analysis.figures.cuts import GreatCircleCut
    from colure.analysis.figures.face import Face
    from colure.analysis.findings.finding import Finding
    from colure.analysis.pipeline.recipe import Processed
    from colure.analysis.stray.echo_map import EchoMap
    from colure.analysis.uncertainty.level_cuts import LevelCut
    from colure.app.services.verdicts import Judged
    from colure.app.storage.kept_report import KeptReport
    from colure.geometry.conventions import FloatArray
    from colure.model.device import Device
    from colure.model.figure import Figure
    from colure.report.document import Document
    from colure.report.second_core import SecondCore
    from colure.report.source import PatternCuts, Source


#: Side lobes below this are not listed, dB re the peak.
LEAST_LOBE_DB = -40.0
#: Levels change over 180 deg / order: up to this one, intervals at every degree draw them.
BROAD_ORDER = 60
#: The report draws the coverage of so many states beside each other.
MOST_STATES_DRAWN = 12


def source_of(
    campaign: Campaign,
    plan: Plan,
    run: RunFolder,
    processed: Processed,
    figures: list[Figure],
    judged: Judged | None = None,
    beside: SecondCore | None = None,
) -> Source:
    """Return everything that the report of a processed run shows; `judged` fills its verdict, `beside` begins to draw."""
    from colure.analysis.findings.diagnosis import diagnoses
    from colure.analysis.findings.self_check import room_of, self_check
    from colure.model.files import file_hash
    from colure.report.second_core import EARLY
    from colure.report.source import PatternCuts, Source

    device = processed.device or campaign.device
    record = one_distance(campaign, opened(state_in(processed, run)))
    sha256, reference = file_hash(run.record), reference_of(campaign, processed.frequency_hz)
    shown = campaign.goal.shown_index(processed.frequency_hz)
    known = Source(
        plan=plan,
        chamber=campaign.chamber,
        device=campaign.device,
        processed=processed,
        figures=figures,
        record_attrs=dict(record.attrs),
        record_file=run.record.name,
        record_sha256=sha256,
        demo=campaign.chamber.analyzer.resource == "twin",
        diagnoses=[],
        room=None,
        levels={},
        cuts=PatternCuts({}, float("nan"), {}, {}),
        findings=[],
        face=None,
        judged=None if judged is None else verdicts_for_report(judged),
        states=_power_of_states(campaign, run, processed, shown),
        particulars=particulars_of(campaign, run, record, sha256, method=_method(processed, campaign)),
        stops=stops_of(record),
        checks=checks_of(record),
        again=again_of(record),
        shown=shown,
    )
    settings = known.particulars.settings
    if beside is not None and settings.form == "full":
        beside.begin(known, [name for name in EARLY if name in (settings.sections or EARLY)])

    def checked() -> tuple[EchoMap | None, list[Finding]]:
        room = room_of(processed, campaign.chamber)
        return room, self_check(processed, campaign.chamber, device.slant_deg, room=room, figures=figures)

    # Transforms and linear algebra leave the interpreter free: two of these run beside each other.
    with ThreadPoolExecutor(2) as pool:
        waiting, face = pool.submit(checked), pool.submit(_face, processed, device, shown)
        levels = _principal_levels(processed, shown)
        cuts = _cuts(processed, levels, shown)
        diagnosed = diagnoses(record, processed, campaign.chamber, device, reference)
        room, findings = waiting.result()
    return replace(
        known, diagnoses=diagnosed, room=room, levels=levels, cuts=cuts, findings=findings, face=face.result()
    )


def write_report(
    campaign: Campaign,
    plan: Plan,
    run: RunFolder,
    processed: Processed,
    figures: list[Figure],
    judged: Judged | None = None,
    *,
    key: str | None = None,
    beside: SecondCore | None = None,
) -> None:
    """Write the report as one HTML page and as a PDF beside the record; `judged` fills its verdict.

    key
        What its pages are kept under, `report_key`; None: they are not kept.
    beside
        A process that was begun for it earlier and is the caller's to close; one is begun here if None.

    Raises
    ------
    InputError
        If report.toml or equipment.toml is not as it must be.
    """
    from colure.app.storage.kept_report import KeptReport, keep_report
    from colure.report.content import compose, not_included
    from colure.report.second_core import second_core

    with second_core() if beside is None else nullcontext(beside) as other:
        source = source_of(campaign, plan, run, processed, figures, judged, other)
        try:
            document = compose(source, other)
        except ValueError as error:
            raise InputError([str(error)]) from None
    own = state_in(processed, run)
    write_documents(own, document)
    if key is not None:
        # The logo stands in report.toml's own folder and is read anew.
        pages = replace(document, logo=None)
        keep_report(
            own, key, KeptReport(pages, source.particulars.method, source.decision, not_included(source.figures))
        )


def _method(processed: Processed, campaign: Campaign) -> tuple[str, ...]:
    """Return the catalogue's keys of how the results came about."""
    from colure.model.files import history

    steps = {entry["step"] for entry in history(processed.pattern)}
    how = "method_transform" if "near-field to far-field" in steps else "method_plain"
    return how, "method_gain" if campaign.chamber.reference.absolute else "method_relative"


def _power_of_states(campaign: Campaign, run: RunFolder, processed: Processed, shown: int) -> dict[str, FloatArray]:
    """Return total gain at the frequency to watch of every state of a device that has several; none of very many."""
    import numpy as np

    from colure.model.pattern import field_of

    names = states_of(run)
    if not 2 <= len(names) <= MOST_STATES_DRAWN or not processed.sphere.whole or processed.sphere.one_polarization:
        return {}
    # The state that the report is of is processed already.
    own = state_in(processed, run).chosen
    patterns = {
        name: processed.pattern if name == own else process_with(campaign, run.state(name), processed.recipe).pattern
        for name in names
    }
    return {name: np.sum(np.abs(field_of(one)[shown]) ** 2, axis=0) for name, one in patterns.items()}


def _principal_levels(processed: Processed, shown: int) -> dict[str, LevelCut]:
    """Return the principal cuts at the frequency to watch with their intervals."""
    from colure.analysis.uncertainty.level_cuts import level_cuts

    inputs = processed.budget.only(shown)
    step_deg = 1.0 if processed.expansion.order <= BROAD_ORDER else 0.5
    e_cut, h_cut = level_cuts(inputs, (0.0, 90.0), step_deg=step_deg)[0]
    return {"E": e_cut, "H": h_cut}


def _cuts(processed: Processed, levels: dict[str, LevelCut], shown: int) -> PatternCuts:
    """Return the cuts through the peak in the principal planes, at the frequency to watch and over the band, and those about the boresight."""
    import numpy as np

    from colure.analysis.figures.cuts import FarField, cuts, cuts_in_hand, find_beam, principal_cuts, tangent_at
    from colure.analysis.figures.lobes import side_lobes, standing
    from colure.report.source import PatternCuts

    every, slant = processed.expansion.coefficients, processed.budget.slant
    seen = float(np.deg2rad(processed.sphere.region_deg))
    planes, peak_dbi = principal_cuts(every[shown], slant=slant, region=seen)
    region, band = processed.budget.figures.region, []
    for coefficients in every if len(every) > 1 else ():
        field = FarField(coefficients)
        beam = find_beam(field, slant=slant, region=region)
        tangents = [tangent_at(beam, a) for a in (0.0, 90.0)]
        band.append(cuts(field, beam, tangents, slant=slant, span_deg=90.0, region=region, step_deg=0.25))
    hand = processed.budget.figures.hand
    shown_band = [cuts_in_hand(dict(zip(("E", "H"), pair, strict=True)), hand) for pair in band]
    over = {plane: [pair[plane] for pair in shown_band] for plane in ("E", "H")} if band else {}
    lobes, unclear = {}, {}
    for plane, one in planes.items():
        candidates = [(float(angle), float(level)) for angle, level in side_lobes(one) if level > LEAST_LOBE_DB]
        level = levels[plane]
        lobes[plane] = standing(candidates, level.angle_deg, level.amplitude["total"], level.expanded["total"])
        unclear[plane] = len(candidates) - len(lobes[plane])
    axis, measured = _about_the_axis(processed, seen, shown)
    return PatternCuts(cuts_in_hand(planes, hand), peak_dbi, lobes, over, unclear, axis, measured)


def _about_the_axis(
    processed: Processed, region: float, shown: int
) -> tuple[dict[str, GreatCircleCut], dict[str, tuple[FloatArray, FloatArray]]]:
    """Return cuts through the device's z axis at the frequency to watch along the declared co-polar vector and across, and the same as read."""
    import numpy as np

    from colure.analysis.figures.cuts import Beam, FarField, cuts, declared_vector, tangent_at

    slant, sphere = processed.budget.slant, processed.sphere
    z = np.array([0.0, 0.0, 1.0])
    beam = Beam(z, declared_vector(z, slant), 1.0)
    field = FarField(processed.expansion.coefficients[shown])
    phi_deg = [float(np.rad2deg(slant)) + turn for turn in (0.0, 90.0)]
    names = [f"phi = {phi:g} deg" for phi in phi_deg]
    axis_cuts = cuts(field, beam, [tangent_at(beam, turn) for turn in (0.0, 90.0)], slant=slant, region=region)
    as_read: dict[str, tuple[FloatArray, FloatArray]] = {}
    # In another frame than the device's, or between the columns, nothing was read along these planes.
    if np.allclose(sphere.polar_to_device, np.eye(3)):
        amplitude = np.sqrt(np.sum(np.abs(sphere.field[shown]) ** 2, axis=0))
        theta = np.rad2deg(sphere.theta)
        for name, phi in zip(names, phi_deg, strict=True):
            sides = [_column(sphere.phi, np.deg2rad(phi + turn)) for turn in (180.0, 0.0)]
            if None not in sides:
                left, right = (amplitude[:, side] for side in sides)
                as_read[name] = (np.concatenate([-theta[::-1], theta]), np.concatenate([left[::-1], right]))
    return dict(zip(names, axis_cuts, strict=True)), as_read


def _column(phi: FloatArray, wanted: float) -> int | None:
    """Return the column at an azimuth (radians); None if there is none."""
    import numpy as np

    off = np.abs(np.angle(np.exp(1j * (phi - wanted))))
    nearest = int(np.argmin(off))
    return nearest if off[nearest] < 1e-6 else None


def _face(processed: Processed, device: Device, shown: int) -> Face | None:
    """Return the excitation of the device's elements at the frequency to watch; None where not every wave that leaves the face was seen."""
    from colure.analysis.figures.face import VISIBLE_DEG, face_of

    sphere = processed.sphere
    if sphere.region_deg < VISIBLE_DEG or sphere.one_polarization:
        return None
    return face_of(processed.expansion, device, index=shown)


def report_run(folder: Path, run: RunFolder, specification_file: Path | None, *, present: bool = False) -> None:
    """Write the report of a campaign's run; pages that nothing has changed since are not worked out again, only the particulars.

    present
        Use chamber.toml as it is now, not as it was when the run began.

    Raises
    ------
    InputError
        If the run holds no record or lacks what its recipe needs, or a file beside it is not as it must be.
    """
    from colure.app.storage.kept_report import kept_report

    require_record(run)
    written = campaign_of(folder, run, present=present)
    key = key_of_report(written, run, specification_file)
    kept = None if key is None else kept_report(own_state(run), key)
    if kept is not None:
        write_documents(own_state(run), _renewed(kept, written, run))
        return
    campaign, plan = plan_of(written, run)
    report_on(campaign, plan, run, process(campaign, run), specification_file, key=key)


def key_of_report(written: Campaign, run: RunFolder, specification_file: Path | None) -> str | None:
    """Return what the pages of a run's report are kept under; None if they are not.

    written
        The campaign as it is read from its folder.

    Raises
    ------
    InputError
        If report.toml is not as it must be.
    """
    from colure.app.storage.kept_report import report_key

    if specification_file is not None and not specification_file.is_file():
        return None
    return report_key(written, own_state(run), settings_of(written.folder), specification_file)


def _renewed(kept: KeptReport, campaign: Campaign, run: RunFolder) -> Document:
    """Return a kept report with the particulars, the numbers at its feet and the logo of today."""
    from colure.model.files import file_hash
    from colure.report.particulars import particulars_sections

    record = one_distance(campaign, opened(own_state(run)))
    one = particulars_of(campaign, run, record, file_hash(run.record), method=kept.method)
    fresh = {
        section.title: section
        for section in particulars_sections(one, decision=kept.decision, not_included=kept.not_included)
    }
    sections = tuple(fresh.get(section.title, section) for section in kept.document.sections)
    return one.framed(replace(kept.document, sections=sections))


def report_on(
    campaign: Campaign,
    plan: Plan,
    run: RunFolder,
    processed: Processed,
    specification_file: Path | None,
    *,
    key: str | None = None,
) -> None:
    """Evaluate a processed run and write its report, with a verdict if there is a specification file; `key` as of `write_report`."""
    figures = evaluation.known_figures(campaign, processing.state_in(processed, run), lambda: processed)
    judged = None if specification_file is None else judge(processed, figures, load_specification(specification_file))
    write_report(campaign, plan, run, processed, figures, judged, key=key)


def sign_report(run: RunFolder, printed: Path, issue: int, *, key_file: Path, passphrase: bytes) -> Path:
    """Sign a report's PDF beside it and return the signed file, which carries its issue in its name.

    Raises
    ------
    InputError
        If this issue is signed already, or the key cannot be used.
    """
    from colure.report.signing import sign_pdf

    target = printed.with_name(f"{printed.stem}-issue-{issue}-signed.pdf")
    require_unsigned(printed, issue)
    sign_pdf(
        printed,
        target,
        key_file=key_file,
        passphrase=passphrase,
        reason=f"Report of run {run.path.name}, issue {issue}",
    )
    return target


def require_unsigned(printed: Path, issue: int) -> None:
    """Raise `InputError` if this issue of a report is signed already: what changed afterwards needs a new issue."""
    target = printed.with_name(f"{printed.stem}-issue-{issue}-signed.pdf")
    if target.exists():
        raise InputError(
            [f"{target.name}: issue {issue} is signed already; set issue = {issue + 1} and changes in report.toml"]
        )
