"""What chamber.toml and device.toml said when a run began, kept beside its journal, and what they say otherwise by now.

Results of a run are worked out with the chamber that it began with: that is what it was measured with. The device is read
as it is declared now: its offset or its expected gain say what it is, not how it was measured. Files that chamber.toml names
(probe, reference gain) are read as they are now, and a room that was learned later is taken out of earlier runs too.
"""

from __future__ import annotations

import json
import os
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from colure.acquire.circumstances import flat
from colure.app.storage.before_motion import keep_before_motion
from colure.app.storage.folders import RunFolder, run_folder
from colure.errors import InputError
from colure.model.admission import read_json
from colure.model.campaign import Campaign
from colure.model.chamber import Chamber
from colure.model.loading import validate

FILE = "begun.json"
#: Where an instrument answers changes nothing of what was measured.
ADDRESS = "resource"
#: What a goal with wishes, or with settings of its own, chooses in place of chamber.toml's.
CHOSEN = ("if_bandwidth_hz", "power_dbm", "averages")
#: What is learned of the range from its runs afterwards, and is meant for earlier runs too.
LEARNED = ("room",)


@dataclass(frozen=True)
class EditedEntry:
    """An entry of a file that was edited after a run began.

    name
        File and entry.
    now, then
        Values of the file, and when the run began, in words.
    used
        Which of both results are worked out with, in words.
    """

    file: str
    name: str
    now: str
    then: str
    used: str

    def __str__(self) -> str:
        """Return the entry as a line."""
        return f"{self.file}: {self.name} = {self.now}, was {self.then} when the run began; {self.used} is used"


def keep_begun(run: RunFolder, campaign: Campaign) -> None:
    """Keep both files' content once, before anything moves; a run that is resumed keeps what it began with.

    Raises
    ------
    InputError
        If the run's folder cannot be written to.
    """
    if not (run.path / FILE).exists():
        keep_before_motion(run.path / FILE, _content(campaign))


def campaign_of(folder: Path, run: RunFolder, *, present: bool = False) -> Campaign:
    """Read a campaign folder for the results of a run: its chamber as `as_begun` says. Raises `InputError` as `Campaign.load`."""
    return as_begun(run, Campaign.load(folder), present=present)


def measured_run(folder: Path, run_name: str, state: str | None = None) -> tuple[Campaign, RunFolder]:
    """Return the campaign as `campaign_of` reads it, and the run (of one state). Raises `InputError` as it does."""
    run = run_folder(folder, run_name)
    return campaign_of(folder, run), run.state(state)


def as_begun(run: RunFolder, campaign: Campaign, *, present: bool = False) -> Campaign:
    """Return a campaign with the chamber that a run began with; as it is for runs that did not keep it.

    present
        Leave chamber.toml as it is now: what it declares was corrected after the run.

    Raises
    ------
    InputError
        If what was kept cannot be read, or does not fit goal and device.
    """
    kept = None if present else _kept(run)
    if kept is None:
        return campaign
    now = _content(campaign)["chamber"]
    then = _with_free(kept.get("chamber", {}), now, _free(campaign) | set(LEARNED))
    if then == now:
        return campaign
    try:
        return campaign.with_chamber(validate(Chamber, then, source="chamber.toml"))
    except InputError as error:
        where = f"{run.path / FILE}: as the run began: "
        more = "; ask for chamber.toml as it is now (present chamber), if it states what the run was measured with"
        raise InputError([f"{where}{fault}{more}" for fault in error.faults]) from None


def changed_since(run: RunFolder, campaign: Campaign) -> list[str]:
    """Return every entry of chamber.toml and device.toml that differs from what the run began with, a line each.

    Empty for runs that did not keep it.

    campaign
        As results are worked out with it, see `as_begun`; what the files say now is read from its folder.

    Raises
    ------
    InputError
        If what was kept cannot be read.
    """
    return [str(one) for one in edits_since(run, campaign)]


def edits_since(run: RunFolder, campaign: Campaign) -> list[EditedEntry]:
    """Return the entries that `changed_since` says in lines; arguments and errors are the same."""
    kept = _kept(run)
    if kept is None:
        return []
    present = Campaign.load(campaign.folder)
    free, used, edits = _free(present), _content(campaign), []
    for name, part in _content(present).items():
        now, then, own = flat(part), flat(kept.get(name, {})), flat(used[name])
        edits += [
            EditedEntry(f"{name}.toml", key, _told(now, key), _told(then, key), _told(own, key))
            for key in dict.fromkeys([*then, *now])
            if now.get(key) != then.get(key) and key.rpartition(".")[2] != ADDRESS and key not in free
        ]
    return edits


def begun_digest(run: RunFolder) -> str:
    """Return the SHA-256 of what a run keeps of its beginning; empty if it keeps nothing."""
    from colure.model.files import file_hash

    path = run.path / FILE
    return file_hash(path) if path.is_file() else ""


def _kept(run: RunFolder) -> dict[str, Any] | None:
    path = run.path / FILE
    if not os.path.lexists(path):
        return None
    try:
        kept = read_json(path)
        if not isinstance(kept, dict) or not all(isinstance(part, dict) for part in kept.values()):
            raise InputError([f"{FILE}: cannot be read: holds no tables"])
    except InputError as error:
        raise InputError([f"{run.path / str(error)}; remove it if the run's files did not change since"]) from None
    return dict(kept)


def _free(campaign: Campaign) -> frozenset[str]:
    """Return the entries that the plan chooses: what was kept holds its choice, chamber.toml does not."""
    goal = campaign.goal
    wishes = goal.want is not None or goal.if_bandwidth_hz is not None or goal.power_dbm is not None
    return frozenset(f"analyzer.{name}" for name in CHOSEN) if wishes else frozenset()


def _with_free(then: Any, now: Any, free: frozenset[str], path: str = "") -> Any:
    """Return what was kept with addresses and free entries as they are now."""
    if isinstance(then, dict):
        other = now if isinstance(now, dict) else {}
        return {
            key: other[key]
            if key in other and (key == ADDRESS or f"{path}{key}" in free)
            else _with_free(value, other.get(key), free, f"{path}{key}.")
            for key, value in then.items()
        }
    if isinstance(then, list) and isinstance(now, list) and len(then) == len(now):
        return [_with_free(one, other, free, path) for one, other in zip(then, now, strict=True)]
    return then


def _content(campaign: Campaign) -> dict[str, Any]:
    """Return both files as JSON holds them."""
    content = {"chamber": campaign.chamber.model_dump(mode="json"), "device": campaign.device.model_dump(mode="json")}
    back: dict[str, Any] = json.loads(json.dumps(content))
    return back


def _told(content: dict[str, Any], key: str) -> str:
    return repr(content[key]) if key in content else "left out"
