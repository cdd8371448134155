"""What a person said of a run, beside its record; and the list of all runs of a campaign."""

from __future__ import annotations

import json
from dataclasses import dataclass
from pathlib import Path

from colure.app.storage.folders import RunFolder, run_folder, run_names
from colure.app.storage.run_kinds import is_cuts
from colure.app.storage.whole import write_whole
from colure.errors import InputError
from colure.model.identity import RunIdentity
from colure.model.loading import validate
from colure.model.strict_json import json_text

FILE = "identity.json"


def identity_of(run: RunFolder) -> RunIdentity:
    """Return what was said of a run; nothing if nothing was. Raises `InputError` if the file is not ours."""
    path = run.path / FILE
    if not path.is_file():
        return RunIdentity()
    try:
        return validate(RunIdentity, json.loads(path.read_text(encoding="utf-8")), source=f"{run.path.name}/{FILE}")
    except (OSError, ValueError) as error:
        if isinstance(error, InputError):
            raise
        raise InputError([f"{run.path.name}/{FILE}: cannot be read: {error}"]) from None


def keep_identity(run: RunFolder, said: RunIdentity) -> RunIdentity:
    """Write what is said of a run beside its record; entries that are left out stay as they were."""
    found = said.over(identity_of(run))
    if found.said:
        run.path.mkdir(parents=True, exist_ok=True)
        write_whole(run.path / FILE, json_text(found.said, indent=1))
    return found


@dataclass(frozen=True)
class ListedRun:
    """One run of a campaign: when its folder last changed (seconds since 1970), what it holds, what was said of it."""

    name: str
    changed: float
    holds: str
    figures: bool
    report: bool
    identity: dict[str, str]

    def matches(self, words: str) -> bool:
        """Tell whether every word occurs in the run's name, kind or identity, in any letter case."""
        text = " ".join([self.name, self.holds, *self.identity.values()]).lower()
        return all(word in text for word in words.lower().split())


def list_runs(campaign: Path) -> list[ListedRun]:
    """Return every run of a campaign folder, by name."""
    found = []
    for name in run_names(campaign):
        try:
            run = run_folder(campaign, name)
        except InputError:
            continue  # not a run's name: nothing of ours
        holds = "begun" if not run.record.is_file() else "cuts" if is_cuts(run) else "sphere"
        newest = run.record if run.record.is_file() else run.journal
        found.append(
            ListedRun(
                name,
                newest.stat().st_mtime,
                holds,
                run.figures.is_file(),
                run.report_html.is_file(),
                identity_of(run).said,
            )
        )
    return found
