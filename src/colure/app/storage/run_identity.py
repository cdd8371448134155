"""What a person said of a run, beside its record; and the list of all runs of a campaign."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from colure.acquire.glance import glance
from colure.app.storage.folders import RunFolder, run_folder, run_names
from colure.app.storage.pictures import require_picture
from colure.app.storage.run_kinds import is_cuts
from colure.errors import InputError
from colure.model.admission import read_json
from colure.model.identity import RunIdentity
from colure.model.loading import validate
from colure.model.strict_json import json_text
from colure.model.whole import write_whole

FILE = "identity.json"
#: Folder of a run's photographs.
PHOTOGRAPHS = "photographs"
#: What a photograph may be, and how large.
PICTURES, LARGEST_PHOTOGRAPH_BYTES = (".jpg", ".jpeg", ".png", ".webp"), 50_000_000


def identity_of(run: RunFolder) -> RunIdentity:
    """Return what was said of a run; nothing if nothing was. Raises `InputError` if the file is not ours."""
    path = run.path / FILE
    if not path.is_file():
        return RunIdentity()
    try:
        return validate(RunIdentity, read_json(path), source=f"{run.path.name}/{FILE}")
    except (OSError, ValueError) as error:
        if isinstance(error, InputError):
            raise
        raise InputError([f"{run.path.name}/{FILE}: cannot be read: {error}"]) from None


def keep_identity(run: RunFolder, said: RunIdentity, photographs: Sequence[Path] = ()) -> RunIdentity:
    """Write what is said of a run beside its record; entries that are left out stay as they were.

    photographs
        Pictures that are copied into the run's folder `photographs`; those that are there stay.

    Raises
    ------
    InputError
        If a photograph is no picture, is too large, or another one of its name is there.
    """
    before = identity_of(run)
    identity = said.over(before)
    if photographs:
        named = [*filter(None, before.photographs.split(", ")), *(_kept_photograph(run, one) for one in photographs)]
        identity = identity.model_copy(update={"photographs": ", ".join(dict.fromkeys(named))})
    if identity.said:
        run.path.mkdir(parents=True, exist_ok=True)
        write_whole(run.path / FILE, json_text(identity.said, indent=1))
    return identity


def _kept_photograph(run: RunFolder, source: Path) -> str:
    """Copy a picture into the run's folder and return its name."""
    if source.suffix.lower() not in PICTURES:
        raise InputError([f"photograph = {source}: must end in one of {', '.join(PICTURES)}"])
    if "," in source.name:
        raise InputError(
            [f"photograph = {source}: its name must be without a comma: names are listed with commas between"]
        )
    try:
        data = source.read_bytes()
    except OSError as error:
        raise InputError([f"photograph = {source}: cannot be read: {error.strerror}"]) from None
    if len(data) > LARGEST_PHOTOGRAPH_BYTES:
        raise InputError(
            [
                f"photograph = {source}: {len(data) / 1e6:.0f} MB: must be at most {LARGEST_PHOTOGRAPH_BYTES / 1e6:.0f} MB"
            ]
        )
    require_picture(data, str(source))
    target = run.path / PHOTOGRAPHS / source.name
    if target.is_file() and target.read_bytes() != data:
        raise InputError(
            [f"photograph = {source}: another picture {target.name} is kept with the run; rename this one"]
        )
    target.parent.mkdir(parents=True, exist_ok=True)
    target.write_bytes(data)
    return source.name


@dataclass(frozen=True)
class ListedRun:
    """One run of a campaign: when its folder last changed (seconds since 1970), what it holds, what was said of it.

    measured, total
        Points of its plan that are measured, and all of them; both 0 where no journal tells.
    """

    name: str
    changed: float
    holds: str
    figures: bool
    report: bool
    identity: dict[str, str]
    measured: int = 0
    total: int = 0

    def matches(self, words: str) -> bool:
        """Tell whether every word occurs in the run's name, kind or identity, in any letter case."""
        text = " ".join([self.name, self.holds, *self.identity.values()]).lower()
        return all(word in text for word in words.lower().split())


def list_runs(campaign: Path) -> list[ListedRun]:
    """Return every run of a campaign folder, by name."""
    runs = []
    for name in run_names(campaign):
        try:
            run = run_folder(campaign, name)
        except InputError:
            continue  # not a run's name: nothing of ours
        holds = "begun" if not run.record.is_file() else "cuts" if is_cuts(run) else "sphere"
        newest = run.record if run.record.is_file() else run.journal
        seen = glance(run.journal)
        runs.append(
            ListedRun(
                name,
                newest.stat().st_mtime,
                holds,
                run.figures.is_file(),
                run.report_html.is_file(),
                identity_of(run).said,
                *((seen.measured, seen.total) if seen is not None else ()),
            )
        )
    return runs
