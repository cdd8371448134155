"""The report of a far-field file: the same pages as a run's, as far as a file allows."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from colure.app.services.particulars import checks_of, particulars_of, settings_of, stops_of
from colure.app.services.pattern_object import FilePattern, open_pattern
from colure.app.services.power_files import PowerPattern, is_power_file, open_power
from colure.app.services.power_runs import PowerRun
from colure.app.services.processing import opened, own_state, write_documents
from colure.app.services.verdicts import judge_opened, verdicts_for_report
from colure.app.storage.folders import require_free
from colure.errors import InputError
from colure.model.specification import load_specification
from colure.model.whole import write_whole

if TYPE_CHECKING:
    import xarray as xr

    from colure.app.storage.folders import RunFolder
    from colure.model.campaign import Campaign
    from colure.model.figure import Figure
    from colure.model.report_settings import Language
    from colure.report.file_content import FileSource, Picture
    from colure.report.source import Verdicts

#: What a file of a field never says; each is one sentence.
NO_RANGE = (
    "The file says nothing of the range: positioner, range length, probe, drift, echoes and reference are not known.",
    "Whether the device stood where the coordinates say is not known.",
)
WHOLE = np.pi - 1e-9


def report_file(
    path: Path,
    folder: Path | None = None,
    specification: Path | None = None,
    *,
    slant_deg: float | None = None,
    language: Language | None = None,
) -> tuple[Path, Path]:
    """Write the report of a far-field file as one HTML page and a PDF; nothing is overwritten.

    Parameters
    ----------
    folder
        Where the report goes; beside the file if None.
    specification
        Limits and masks to hold the file against.
    language
        Language of the report; that of report.toml beside the file if None, or English.

    Returns
    -------
    Addresses of page and PDF.

    Raises
    ------
    InputError
        If the file holds no far field, the specification cannot be held against it, or a target exists or cannot be written.
    """
    from colure.report.file_content import compose_file
    from colure.report.html import render_html
    from colure.report.pdf import render_pdf

    into = path.parent if folder is None else folder
    if not into.is_dir():
        raise InputError([f"to = {into}: there is no such folder"])
    targets = into / f"{path.stem}-report.html", into / f"{path.stem}-report.pdf"
    for target in targets:
        require_free(target)
    spoken = language or settings_of(path.parent).language
    source = (
        _power_source(open_power(path, slant_deg=slant_deg or 0.0), path, specification)
        if is_power_file(path)
        else _source(path, specification, slant_deg)
    )
    document = compose_file(replace(source, language=spoken))
    try:
        write_whole(targets[0], render_html(document))
        render_pdf(document, targets[1])
    except OSError as error:
        raise InputError([f"{into}: cannot be written: {error.strerror}; name a folder by `to`"]) from None
    return targets


def report_power_run(campaign: Campaign, run: RunFolder, specification: Path | None = None) -> None:
    """Write the report of a power-only run as one HTML page and as a PDF beside the record.

    Raises
    ------
    InputError
        If the record lacks directions or polarizations, or the specification cannot be held.
    """
    from colure.model.files import file_hash
    from colure.report.file_content import compose_file

    method = "method_power", "method_gain" if campaign.chamber.reference.absolute else "method_relative"
    record = opened(run)
    stated = particulars_of(campaign, run, record, file_hash(run.record), method=method)
    source = _power_source(PowerRun(campaign, run), run.record, specification)
    document = compose_file(replace(
        source, name=campaign.device.name, particulars=stated, holds=(*source.holds, *_how_measured(campaign, record))
    ))  # fmt: skip
    write_documents(own_state(run), document)


def _how_measured(campaign: Campaign, record: xr.Dataset) -> tuple[tuple[str, str], ...]:
    """Return what was measured with what, as rows of the report."""
    device = campaign.device
    size, offset = (
        mark.join(f"{x:g}" for x in some) for mark, some in ((" x ", device.size_mm), (", ", device.offset_mm))
    )
    return (
        ("Positioner", campaign.chamber.positioner.geometry.value),
        ("Range length", f"{campaign.chamber.range_length_m:g} m"),
        ("Device", f"size {size} mm, offset {offset} mm"),
        ("Readings", str(record.sizes["point"])),
        *(("Instrument check", text) for text in checks_of(record)),
        *(("Stopped", text) for text in stops_of(record)),
        ("Plan", str(record.attrs.get("plan_hash", ""))),
        ("Journal root", str(record.attrs.get("journal_root_hash", ""))),
    )


def _source(path: Path, specification: Path | None, slant_deg: float | None) -> FileSource:
    from colure.model.files import file_hash, history
    from colure.report.file_content import FileSource

    opened = open_pattern(path, slant_deg=slant_deg)
    figures = list(opened.evaluate(opened.wanted_beside(path)))
    shown, at = _shown(opened)
    return FileSource(
        name=path.stem, figures=figures, shown_hz=shown, holds=_holds(opened, path),
        unknown=tuple(_unknown(opened, figures)), cuts=_cut_pictures(opened, at), sphere=_sphere_pictures(opened, at),
        over_frequency=_over_frequency(figures), side_lobes=opened.side_lobes(), made=history(opened.data), file=path.name,
        sha256=file_hash(path), judged=_judged(opened, path, figures, specification),
    )  # fmt: skip


def _shown(opened: FilePattern | PowerPattern) -> tuple[float, str]:
    """Return the frequency of tables and pictures in hertz, and in words."""
    shown = float(opened.frequency_hz[opened.frequency_hz.size // 2])
    return shown, f"{shown / 1e9:.6g} GHz"


def _judged(
    opened: FilePattern | PowerPattern, path: Path, figures: list[Figure], specification: Path | None
) -> Verdicts | None:
    """Hold a file against a specification, if there is one."""
    if specification is None:
        return None
    return verdicts_for_report(judge_opened(opened, path.name, figures, load_specification(specification)))


def _over_frequency(figures: list[Figure]) -> Picture | None:
    """Draw the figures that exist at every one of several frequencies."""
    from colure.report import charts
    from colure.report.file_content import Picture, pictured_over_frequency

    groups = pictured_over_frequency(figures)
    if not groups or len({one.frequency_hz for one in figures}) < 2:
        return None
    banded = any(np.isfinite(one.upper - one.lower) for _, some in groups for one in some)
    words = "Figures over frequency; bands are the 95 % intervals." if banded else "Figures over frequency."
    return Picture(charts.over_frequency(groups), words)


def _power_source(power: PowerPattern, path: Path, specification: Path | None) -> FileSource:
    from colure.model.files import file_hash
    from colure.report.file_content import FileSource, Picture

    measured = isinstance(power, PowerRun)
    figures = list(power.evaluate(None if measured else FilePattern.wanted_beside(path)))
    shown, at = _shown(power)
    banded = "; bands are the 95 % intervals; the common gain uncertainty is not included" if power.errors else ""
    return FileSource(
        name=path.stem, figures=figures, shown_hz=shown, holds=_power_holds(power, path), unknown=tuple(_power_unknown(power)),
        cuts=(Picture(power.plot("cuts"), f"Cuts of total power through the peak at {at}{banded}."),),
        sphere=(
            Picture(power.plot("map"), f"Total {power.scale}, {at}; blank where nothing is known.", dense=True),
            Picture(power.plot("solid"), f"The same as a solid, {at}.", dense=True),
        ),
        over_frequency=_over_frequency(figures), side_lobes={}, made=[], file=path.name, sha256=file_hash(path),
        judged=_judged(power, path, figures, specification),
    )  # fmt: skip


def _power_holds(opened: PowerPattern, path: Path) -> tuple[tuple[str, str], ...]:
    t, f = opened.table, opened.frequency_hz / 1e9
    known = "the whole sphere" if opened.sphere.whole else f"up to {np.rad2deg(t.theta[-1]):.4g} deg from +z"
    return (
        ("File", path.name),
        ("Frequencies", f"{f.size}: {f[0]:.6g} to {f[-1]:.6g} GHz"),
        ("Directions", f"{t.theta.size} rings x {t.phi.size} columns; {known}"),
        ("Quantity", f"{opened.scale}, power without phase"),
        ("Co-polar direction", f"declared: {np.rad2deg(opened.slant):g} deg from x towards y (Ludwig 3)"),
    )


def _power_unknown(power: PowerPattern) -> list[str]:
    """Say what a table of power does not hold, what matters most first."""
    t, out = power.table, []
    if not t.states_errors:
        out.append(
            "The table states no errors of its levels: no figure has an interval, and a guard band decides nothing."
        )
    out.append("Power without phase tells no polarization, no phase centre and no near field.")
    out.append("The E plane is the declared one; power does not tell it.")
    if t.quantity == "relative":
        out.append("The levels are relative: gain and efficiency cannot be told from them.")
    if not power.sphere.whole:
        out.append(
            f"Beyond {np.rad2deg(t.theta[-1]):.4g} deg from +z nothing is known; figures of the whole sphere are left out."
        )
    return out if isinstance(power, PowerRun) else [*out, *NO_RANGE]


def _cut_pictures(opened: FilePattern, at: str) -> tuple[Picture, ...]:
    from colure.report.file_content import Picture
    from colure.report.halves import component_words

    pair = component_words(opened.hand)
    banded = "; bands are the 95 % intervals" if opened.states_errors else ""
    return (
        Picture(opened.plot("cuts"), f"Principal-plane cuts through the peak at {at}, {pair}{banded}."),
        Picture(
            opened.plot("polar"),
            f"The same cuts as polar diagrams{' of the right- and left-hand components' if opened.hand else ''}, {at}.",
        ),
    )


def _sphere_pictures(opened: FilePattern, at: str) -> tuple[Picture, ...]:
    from colure.report.file_content import Picture
    from colure.report.halves import half_words

    return (
        *(
            Picture(drawn, half_words(at, back=back, hand=opened.hand), dense=True)
            for drawn, back in opened.beam_maps()
        ),
        Picture(opened.plot("map"), f"Total {opened.scale}, {at}; blank where nothing is known.", dense=True),
        Picture(opened.plot("solid"), f"The same as a solid, {at}.", dense=True),
    )


def _holds(opened: FilePattern, path: Path) -> tuple[tuple[str, str], ...]:
    waves, data = opened.waves, opened.data
    f = opened.frequency_hz / 1e9
    known = "the whole sphere" if waves.region >= WHOLE else f"up to {np.rad2deg(waves.region):.4g} deg from +z"
    sizes = ", ".join(f"{size} {name}" for name, size in data["e_theta"].sizes.items())
    return (
        ("File", path.name),
        ("Frequencies", f"{f.size}: {f[0]:.6g} to {f[-1]:.6g} GHz"),
        ("Directions", f"{sizes}; {known}"),
        ("Quantity", f"{waves.quantity}; shown as {opened.scale}"),
        ("Waves", f"order {waves.expansion.order}"),
        ("Phase reference", str(data.attrs.get("phase_reference", "origin of the file's coordinates"))),
        ("Co-polar direction", f"{np.rad2deg(waves.slant):g} deg from x towards y (Ludwig 3)"),
    )


def _unknown(opened: FilePattern, figures: list[Figure]) -> list[str]:
    """Say what the file does not hold, what matters most first."""
    from colure.model.fields import LEAST_SUPPORT

    waves, out = opened.waves, []
    if not opened.states_errors:
        out.append(
            "The file states no errors of its field: no figure has an interval, and a guard band decides nothing."
        )
    else:
        left = sorted({name for one in figures for name in one.not_included})
        out.append(f"Not in the intervals, because the file does not state them: {', '.join(left)}.")
    out += [f"How the file is read: {line.removeprefix('caution: ')}." for line in opened.cautions]
    if opened.scale in ("directivity", "level"):
        out.append("The field is relative: gain and efficiency cannot be told from it.")
    if waves.region < WHOLE:
        out.append(
            f"Beyond {np.rad2deg(waves.region):.4g} deg from +z the field is not known; figures of the whole sphere are left out."
        )
    if "support" in opened.data:
        share = float((opened.data["support"] >= LEAST_SUPPORT).mean())
        out.append(f"The data determine {100 * share:.1f} % of the file's directions; the others are blank.")
    return [*out, *NO_RANGE]
