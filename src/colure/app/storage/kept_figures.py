"""Figures kept by content: the same question about the same record is answered from what was found last time."""

from __future__ import annotations

import hashlib
import json
from dataclasses import fields
from pathlib import Path
from typing import TYPE_CHECKING, Any

from colure.app.storage.begun import begun_digest, changed_since
from colure.app.storage.folders import RunFolder, campaign_digest
from colure.model.admission import read_json
from colure.model.figure import BudgetRow, Figure
from colure.model.whole import write_whole

if TYPE_CHECKING:
    from colure.model.campaign import Campaign

#: Rises with every change of what is kept.
FORMAT = 9


def key_of(campaign: Campaign, run: RunFolder) -> str:
    """Return a hash of all that figures depend on: version, campaign as it was read, the files beside it, the record."""
    from colure.model.files import file_hash

    digest = campaign_digest(run.path.parent.parent, f"figures {FORMAT} {run.chosen} {begun_digest(run)}")
    # Entry by entry: the chamber may be the one that the run began with, or the present one, beside the same files.
    for part in (campaign.goal, campaign.chamber, campaign.device):
        digest.update(hashlib.sha256(part.model_dump_json().encode()).digest())
    digest.update(file_hash(run.record).encode())
    return str(digest.hexdigest())


def kept_figures(run: RunFolder, key: str, written: list[Path]) -> list[Figure] | None:
    """Return the figures kept under a key; None if there are none, or a file that was written with them is not as it was."""
    from colure.model.files import file_hash

    try:
        kept = read_json(run.result("figures-kept.json"))
        if kept["key"] != key or any(file_hash(path) != kept["written"].get(path.name) for path in written):
            return None
        return [_figure(one) for one in kept["figures"]]
    except (OSError, ValueError, KeyError, TypeError, AttributeError):
        return None


def are_of(campaign: Campaign, *runs: RunFolder) -> bool:
    """Tell whether the figures beside a run (by any name of its state) were read with this campaign's chamber.

    Only after an edit of the chamber they may be of the present one.
    """
    kept = (kept_figures(one, key_of(campaign, one), [one.figures, one.correlations]) for one in runs)
    return not changed_since(runs[0], campaign) or any(one is not None for one in kept)


def keep_figures(run: RunFolder, key: str, written: list[Path], figures: list[Figure]) -> None:
    """Keep figures under a key, with hashes of the files that were written with them."""
    from colure.model.files import file_hash

    content = {
        "key": key,
        "written": {path.name: file_hash(path) for path in written},
        "figures": [{**_fields(one), "budget": [_fields(row) for row in one.budget]} for one in figures],
    }
    write_whole(run.result("figures-kept.json"), json.dumps(content))


def _fields(one: Figure | BudgetRow) -> dict[str, Any]:
    """Return what it holds by name, nothing copied."""
    return {part.name: getattr(one, part.name) for part in fields(one)}


def _figure(one: dict[str, Any]) -> Figure:
    rows = tuple(BudgetRow(**row) for row in one["budget"])
    told = {name: tuple(one[name]) for name in ("not_included", "cautions")}
    return Figure(**{**one, **told, "budget": rows})
