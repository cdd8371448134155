"""The runs of a campaign as the page lists them, and what is said of each."""

from __future__ import annotations

from pathlib import Path
from typing import Literal

from colure.app.services import has_phase
from colure.app.storage.folders import RunFolder, run_folder, run_names
from colure.app.storage.run_identity import identity_of, keep_identity
from colure.app.storage.run_kinds import is_cuts
from colure.app.web.scan.before import held
from colure.app.web.views import answers
from colure.errors import InputError
from colure.model.identity import RunIdentity
from colure.model.loading import validate


def runs_of(folder: Path) -> list[answers.RunRow]:
    """Return the runs of a campaign, the last measured first, with what each holds."""
    rows: list[answers.RunRow] = []
    for name in run_names(folder):
        try:
            run = run_folder(folder, name)
            said = identity_of(run).said
        except InputError:
            said = {}
            if not name.replace("-", "").replace("_", "").isalnum():
                continue  # not a run's name: nothing of ours
        on_disk = held(run)
        if on_disk["measured_at"] is None and run.record.is_file():
            on_disk["measured_at"] = run.record.stat().st_mtime
        rows.append(
            {
                "name": name, "kind": _kind(run),
                "state": on_disk["state"], "measured": on_disk["measured"], "total": on_disk["total"],
                "measured_at": on_disk["measured_at"], "identity": said, "record": run.record.is_file(),
                "figures": run.figures.is_file(), "report": run.report_html.is_file(),
            }
        )  # fmt: skip
    return sorted(rows, key=lambda one: -(one["measured_at"] or 0.0))


def said_of(folder: Path, run_name: str, said: dict[str, str]) -> dict[str, str]:
    """Keep what a person says of a run, empty entries taken out; raises `InputError` if there is no such run."""
    if run_name not in run_names(folder):
        raise InputError([f"run {run_name}: is none of this campaign's"])
    run = run_folder(folder, run_name)
    return keep_identity(run, validate(RunIdentity, said, source=f"run {run_name}")).said


def _kind(run: RunFolder) -> Literal["sphere", "cuts", "power", "begun"]:
    if not run.record.is_file():
        return "begun"
    if is_cuts(run):
        return "cuts"
    return "sphere" if has_phase(run) else "power"
