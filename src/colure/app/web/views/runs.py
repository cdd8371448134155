"""The runs of a campaign as the page lists them, and what is said of each."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path

import numpy as np

from colure.app.storage.folders import RunFolder, run_folder, run_names
from colure.app.storage.run_identity import identity_of, keep_identity
from colure.app.storage.run_kinds import is_cuts
from colure.app.web.scan.before import held
from colure.app.web.views import answers
from colure.errors import InputError
from colure.geometry.conventions import power_db
from colure.model.identity import RunIdentity
from colure.model.loading import validate

#: A thumbnail is this large; enough to tell one pattern from another.
THUMB_ROWS, THUMB_COLUMNS, THUMB_RANGE_DB = 24, 48, 40.0


def runs_of(folder: Path) -> list[answers.RunRow]:
    """Return the runs of a campaign, the last measured first, with what each holds."""
    found: list[answers.RunRow] = []
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
        found.append(
            {
                "name": name, "kind": "begun" if not run.record.is_file() else "cuts" if is_cuts(run) else "sphere",
                "state": on_disk["state"], "measured": on_disk["measured"], "total": on_disk["total"],
                "measured_at": on_disk["measured_at"], "identity": said, "record": run.record.is_file(),
                "figures": run.figures.is_file(), "report": run.report_html.is_file(), "thumb": _thumb(run),
            }
        )  # fmt: skip
    return sorted(found, key=lambda one: -(one["measured_at"] or 0.0))


def said_of(folder: Path, run_name: str, said: dict[str, str]) -> dict[str, str]:
    """Keep what a person says of a run, empty entries taken out; raises `InputError` if there is no such run."""
    if run_name not in run_names(folder):
        raise InputError([f"run {run_name}: is none of this campaign's"])
    run = run_folder(folder, run_name)
    return keep_identity(run, validate(RunIdentity, said, source=f"run {run_name}")).said


def _thumb(run: RunFolder) -> list[int] | None:
    """Return a small picture of the pattern, levels 0 to 255, rows of theta; None before it was processed."""
    return list(_shades(run.pattern, run.pattern.stat().st_mtime)) if run.pattern.is_file() else None


@lru_cache(maxsize=200)
def _shades(pattern_file: Path, _changed: float) -> tuple[int, ...]:
    from colure.model.files import open_dataset
    from colure.model.pattern import field_of

    pattern = open_dataset(pattern_file)
    field = field_of(pattern.isel(frequency=[pattern.sizes["frequency"] // 2]))[0]
    power = np.nan_to_num(np.sum(np.abs(field) ** 2, axis=0))
    rows = np.linspace(0, power.shape[0] - 1, THUMB_ROWS).astype(int)
    columns = np.linspace(0, power.shape[1] - 1, THUMB_COLUMNS).astype(int)
    level = power_db(power[np.ix_(rows, columns)] / power.max(), least=1e-12)
    shade = np.clip(255.0 * (1.0 + level / THUMB_RANGE_DB), 0, 255).astype(int)
    return tuple(int(v) for v in shade.ravel())
