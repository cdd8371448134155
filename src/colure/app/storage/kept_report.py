"""A report's pages kept by content: written again without new mathematics where nothing that they show has changed."""

from __future__ import annotations

import base64
import hashlib
import json
from dataclasses import dataclass, fields, is_dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final

from colure.app.storage.kept_figures import key_of
from colure.app.storage.run_identity import PHOTOGRAPHS, identity_of
from colure.model.admission import read_json
from colure.model.doors import brought
from colure.model.whole import write_whole
from colure.report.document import Chart, Document, FileLink, Paragraph, Ref, ReportSection, Side, Table
from colure.report.particulars import Decision

if TYPE_CHECKING:
    from collections.abc import Sequence

    from colure.app.storage.folders import RunFolder
    from colure.model.campaign import Campaign
    from colure.model.report_settings import ReportSettings

#: Rises with every change of what is kept.
#: Drawings of every state stand in it: some megabytes each.
LARGEST_BYTES = 64_000_000
FORMAT: Final = 10
#: What report.toml says of the form of the pages; all else of it stands in sections that are written anew.
FORM: Final = ("language", "form", "sections", "figures", "frequencies_ghz", "planes")
#: What a document is made of.
PARTS: Final[dict[str, type]] = {
    one.__name__: one
    for one in (Chart, Decision, Document, FileLink, Paragraph, Ref, ReportSection, Side, Table)
}  # fmt: skip


@dataclass(frozen=True)
class KeptReport:
    """A report as it was composed last time.

    method, decision, not_included
        What its particulars say of the results: they are written anew, since the day and the customer may be others.
    """

    document: Document
    method: tuple[str, ...]
    decision: Decision | None
    not_included: tuple[str, ...]


def report_key(campaign: Campaign, run: RunFolder, settings: ReportSettings, specification: Path | None) -> str | None:
    """Return a hash of all that the pages of a run's report depend on, but for the particulars; None where others bring sections.

    campaign
        As it is read from its folder.
    """
    from colure.model.files import file_hash

    # What another package writes may depend on anything.
    if brought("colure.report_sections"):
        return None
    shown = [run.path / PHOTOGRAPHS / name for name in identity_of(run).photographs.split(", ") if name]
    files = [run.tie_direction, run.until, *shown, *([] if specification is None else [specification])]
    hashes = [(one.name, file_hash(one) if one.is_file() else "none") for one in files]
    form = [(name, getattr(settings, name)) for name in FORM]
    told = repr((FORMAT, key_of(campaign, run), hashes, form))
    return hashlib.sha256(told.encode("utf-8")).hexdigest()


def kept_report(run: RunFolder, key: str) -> KeptReport | None:
    """Return the report kept under a key; None if there is none, or a result that was written with it is not as it was."""
    try:
        kept = read_json(_place(run), largest_bytes=LARGEST_BYTES)
        if kept["key"] != key or kept["written"] != _written(run) or kept["sum"] != _sum(kept["document"]):
            return None
        document, decision = _whole(kept["document"]), _whole(kept["decision"])
        if not isinstance(document, Document) or not (decision is None or isinstance(decision, Decision)):
            return None
        return KeptReport(document, tuple(kept["method"]), decision, tuple(kept["not_included"]))
    except (OSError, ValueError, KeyError, TypeError, AttributeError):
        return None


def keep_report(run: RunFolder, key: str, report: KeptReport) -> None:
    """Keep a report under a key, with hashes of the results that were written with it."""
    document = _plain(report.document)
    content = {
        "key": key,
        "written": _written(run),
        "sum": _sum(document),
        "document": document,
        "method": report.method,
        "decision": _plain(report.decision),
        "not_included": report.not_included,
    }
    write_whole(_place(run), json.dumps(content))


def _place(run: RunFolder) -> Path:
    return run.result("report-kept.json")


def _written(run: RunFolder) -> dict[str, str]:
    from colure.model.files import file_hash

    return {one.name: file_hash(one) for one in (run.pattern, run.figures, run.correlations) if one.is_file()}


def _sum(document: Any) -> str:
    """Return a checksum: what a disk damaged is not shown."""
    return hashlib.sha256(json.dumps(document, sort_keys=True).encode("utf-8")).hexdigest()


def _plain(part: Any) -> Any:
    """Return a part of a document as JSON holds it."""
    if is_dataclass(part) and not isinstance(part, type):
        name = type(part).__name__
        if PARTS.get(name) is not type(part):
            raise TypeError(f"{name}: no part of a document that is kept")
        return {"is": name, **{one.name: _plain(getattr(part, one.name)) for one in fields(part)}}
    if isinstance(part, bytes):
        return {"is": "bytes", "base64": base64.b64encode(part).decode("ascii")}
    return [_plain(one) for one in part] if isinstance(part, (tuple, list)) else part


def _whole(part: Sequence[Any] | dict[str, Any] | Any) -> Any:
    """Return the part of a document that JSON holds; raises `KeyError` or `TypeError` for anything else."""
    if isinstance(part, dict):
        if part["is"] == "bytes":
            return base64.b64decode(part["base64"], validate=True)
        return PARTS[part["is"]](**{name: _whole(one) for name, one in part.items() if name != "is"})
    return tuple(_whole(one) for one in part) if isinstance(part, list) else part
