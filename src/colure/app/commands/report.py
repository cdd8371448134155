"""`colure report`: the report of a run, as a page and for print."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from colure.app.commands.as_measured import campaign_told, present_option
from colure.app.commands.fields import slant_option
from colure.app.terminal.say import say
from colure.model.strict_json import json_text
from colure.report.texts import LANGUAGES

if TYPE_CHECKING:
    from datetime import date

    from colure.app.storage.folders import RunFolder
    from colure.model.report_settings import Language


@click.command()
@click.argument("source", type=click.Path(path_type=Path), default=Path())
@click.option("--run", "run_name", default="first", show_default=True, help="Name of the run.")
@click.option(
    "--specification", type=click.Path(path_type=Path), default=None, help="Limits and masks to hold it against."
)
@click.option("--state", default=None, help="State of a device that has several; the first by default.")
@slant_option
@present_option
@click.option(
    "--to", "target", type=click.Path(path_type=Path), help="Folder of a file's report; beside it by default."
)
@click.option(
    "--language",
    type=click.Choice(LANGUAGES),
    default=None,
    help="Language of a file's report; as report.toml beside it says, or English, by default.",
)
@click.option(
    "--sign",
    "key_file",
    type=click.Path(path_type=Path),
    default=None,
    help="Sign the PDF with this PKCS #12 key (.p12).",
)
@click.option(
    "--passphrase-file",
    type=click.Path(path_type=Path, exists=True, dir_okay=False),
    default=None,
    help="File whose first line opens the key; asked for if left out.",
)
@click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of words.")
def report(
    source: Path,
    run_name: str,
    specification: Path | None,
    state: str | None,
    slant_deg: float | None,
    present_chamber: bool,
    target: Path | None,
    language: Language | None,
    key_file: Path | None,
    passphrase_file: Path | None,
    as_json: bool,
) -> None:
    """Write the report of a run or a far-field file as one HTML page and a PDF, with a verdict if there is a specification.

    SOURCE is a campaign folder or a far-field file (.nc, .csv). Of a state other than the first the files carry its name.
    The report of FILE.nc is FILE-report.html and FILE-report.pdf; it says what the file does not hold, and overwrites nothing.
    report.toml states laboratory, customer, dates and form; equipment.toml the calibrations. A signed PDF is written beside
    the report and never again for the same issue.

    \b
    Examples:
      colure report my-campaign --run first --specification limits.toml
      colure report my-campaign --sign laboratory.p12 --passphrase-file passphrase.txt
      colure report far.nc --specification limits.toml --to reports
    """
    from colure.app import services
    from colure.app.services import cuts
    from colure.app.services.file_reporting import report_file, report_power_run
    from colure.app.services.pattern_files import is_file
    from colure.app.services.reporting import report_run
    from colure.app.storage.folders import run_folder
    from colure.app.storage.run_kinds import NO_SPHERE, is_cuts
    from colure.errors import InputError

    if is_file(source):
        if state is not None:
            raise InputError([f"--state = {state!r}: {source.name} holds one state; leave --state out"])
        if key_file is not None:
            raise InputError([f"--sign = {key_file}: only the report of a run can be signed"])
        _say(*report_file(source, target, specification, slant_deg=slant_deg, language=language), as_json=as_json)
        return
    for option, given in (("--slant-deg", slant_deg), ("--to", target)):
        if given is not None:
            raise InputError([f"{option} = {given}: only for a file; a run's report lies in its folder"])
    if language is not None:
        raise InputError(
            [f"--language = {language}: only for a file; report.toml states the language of a run's report"]
        )
    folder, run = source, run_folder(source, run_name).state(state)
    if is_cuts(run):
        if specification is not None:
            raise InputError([f"--specification: run {run_name} {NO_SPHERE}"])
        _require_signable(folder, run, key_file)
        cuts.write_report(campaign_told(folder, run, present=present_chamber), run)
    elif run.record.is_file() and not services.has_phase(run):
        _require_signable(folder, run, key_file)
        report_power_run(campaign_told(folder, run, present=present_chamber), run, specification)
    else:
        _require_signable(folder, run, key_file)
        campaign_told(folder, run, present=present_chamber)
        report_run(folder, run, specification, present=present_chamber)
    signed = None if key_file is None else _sign(folder, run, key_file, passphrase_file)
    _say_reports(folder, run, signed, as_json=as_json)


def _require_signable(folder: Path, run: RunFolder, key_file: Path | None) -> None:
    """Refuse before anything is worked out what cannot be signed afterwards."""
    from colure.app.services.particulars import settings_of
    from colure.app.services.reporting import require_unsigned
    from colure.errors import InputError
    from colure.model.loading import require_library

    if key_file is None:
        return
    require_library("pyhanko", "sign")
    if not key_file.is_file():
        raise InputError([f"--sign = {key_file}: no such file; give a PKCS #12 key (.p12 or .pfx)"])
    require_unsigned(run.report_pdf, settings_of(folder).issue)


def _sign(folder: Path, run: RunFolder, key_file: Path, passphrase_file: Path | None) -> Path:
    """Sign the PDF that was just written."""
    from colure.app.services.particulars import settings_of
    from colure.app.services.reporting import sign_report

    if passphrase_file is None:
        phrase = click.prompt("passphrase of the key", hide_input=True, default="", show_default=False, err=True)
    else:
        phrase = passphrase_file.read_text(encoding="utf-8").splitlines()[0] if passphrase_file.stat().st_size else ""
    printed = run.report_pdf
    return sign_report(run, printed, settings_of(folder).issue, key_file=key_file, passphrase=phrase.encode("utf-8"))


def _say_reports(folder: Path, run: RunFolder, signed: Path | None, *, as_json: bool) -> None:
    """Print where the report lies, and what is wrong with the equipment."""
    from colure.app.services.particulars import equipment_warnings

    warnings = equipment_warnings(folder, measured_until(run))
    _say(run.report_html, run.report_pdf, signed, warnings, as_json=as_json)


def _say(page: Path, printed: Path, signed: Path | None = None, warnings: Sequence[str] = (), *, as_json: bool) -> None:
    if as_json:
        content = {"html": str(page), "pdf": str(printed), "equipment": list(warnings)}
        say(json_text(content if signed is None else {**content, "signed": str(signed)}))
        return
    say(f"report: {page}\nreport: {printed}" + ("" if signed is None else f"\nsigned: {signed}"))
    for one in warnings:
        say(f"equipment: {one}")


def measured_until(run: RunFolder) -> date | None:
    """Return the last day of a run's measurement; None where its record holds none."""
    from colure.app.services.particulars import days_of
    from colure.app.services.processing import opened

    days = days_of(opened(run))
    return None if days is None else days[1]
