"""Where the files of a run lie."""

from __future__ import annotations

import hashlib
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from colure.errors import InputError


@dataclass(frozen=True)
class RunFolder:
    """Where the files of one run lie, or of one state of its device.

    chosen
        The state that results are of; None: of a device with one state, or the first of several. All states share journal and
        record.
    """

    path: Path
    chosen: str | None = None

    def state(self, name: str | None) -> RunFolder:
        """Return the same run with one state of its device chosen: its pattern, figures and reports lie beside the run's own."""
        return replace(self, chosen=name)

    def result(self, name: str) -> Path:
        """Return where a result of this name lies: under the chosen state's name, or the plain one."""
        return self.path / name if self.chosen is None else self.of_state(self.path / name, self.chosen)

    @property
    def journal(self) -> Path:
        """SQLite journal, written while acquiring."""
        return self.path / "journal.sqlite"

    @property
    def tie_direction(self) -> Path:
        """Where the ties of this run look, JSON: a run that goes on keeps it."""
        return self.path / "ties.json"

    @property
    def until(self) -> Path:
        """What this run is to know before it ends, JSON: a run that goes on keeps it."""
        return self.path / "until.json"

    @property
    def record(self) -> Path:
        """Sealed record, netCDF-4."""
        return self.path / "record.nc"

    @property
    def pattern(self) -> Path:
        """Processed pattern, netCDF-4."""
        return self.result("pattern.nc")

    @property
    def waves(self) -> Path:
        """Patterns of all states as spherical waves and on a grid, Zarr: what scaled-out processing writes."""
        return self.path / "patterns.zarr"

    @property
    def correlations(self) -> Path:
        """How the errors of the figures go together, JSON."""
        return self.result("correlations.json")

    @property
    def figures(self) -> Path:
        """Figures with uncertainties, JSON."""
        return self.result("figures.json")

    def of_state(self, file: Path, state: str) -> Path:
        """Return where such a file lies for one device state."""
        return file.with_name(f"{file.stem}-{state}{file.suffix}")

    @property
    def report_html(self) -> Path:
        """Report page."""
        return self.result("report.html")

    @property
    def report_pdf(self) -> Path:
        """Report for print."""
        return self.result("report.pdf")


def run_folder(campaign: Path, name: str) -> RunFolder:
    """Return the folder of a run, by a name that cannot leave the campaign folder."""
    if not name or not all(c.isalnum() or c in "-_" for c in name) or len(name) > 80:
        raise InputError([f"run = {name!r}: must be letters, digits, - or _ (1 to 80 characters)"])
    return RunFolder(campaign / "runs" / name)


def run_names(campaign: Path) -> list[str]:
    """Return the names of the runs that hold a journal or a record, sorted."""
    folder = campaign / "runs"
    if not folder.is_dir():
        return []
    return sorted(p.name for p in folder.iterdir() if (p / "record.nc").is_file() or (p / "journal.sqlite").is_file())


def require_record(run: RunFolder) -> None:
    """Raise `InputError` if a run holds no record; the runs that exist are named."""
    if run.record.is_file():
        return
    require_begun(run)
    what = "was begun and holds no record yet; colure acquire goes on with it"
    raise InputError([f"run {run.path.name}: {what}; {_runs_here(run)}"])


def require_begun(run: RunFolder) -> None:
    """Raise `InputError` if a run holds neither journal nor record; the runs that exist are named."""
    if not run.record.is_file() and not run.journal.is_file():
        raise InputError([f"run {run.path.name}: does not exist; {_runs_here(run)}"])


def _runs_here(run: RunFolder) -> str:
    known = run_names(run.path.parent.parent)
    return f"runs here: {', '.join(known)}" if known else "there are no runs here yet; colure acquire measures one"


#: Files beside a campaign that change no number: what the report says, and when equipment is due.
NO_RESULT_DEPENDS_ON = ("report.toml", "equipment.toml")


def campaign_digest(folder: Path, words: str) -> Any:
    """Return a running SHA-256 of the version, `words` and every file beside a campaign: what any of its results depends on."""
    from colure import __version__
    from colure.model.doors import packages
    from colure.model.files import file_hash

    digest = hashlib.sha256(f"{__version__} {words}{packages()}".encode())
    for path in sorted(folder.iterdir()):
        if path.is_file() and not path.name.startswith(".") and path.name not in NO_RESULT_DEPENDS_ON:
            digest.update(f"\n{path.name} {file_hash(path)}".encode())
    return digest


#: Formats of a chart that is asked for: two that print without pixels, one for pages.
CHART_SUFFIXES = (".svg", ".pdf", ".png")


def require_chart_target(target: Path | None) -> None:
    """Raise `InputError` if a chart cannot be written there, before anything is worked out for it."""
    if target is None:
        return
    if target.suffix.lower() not in CHART_SUFFIXES:
        raise InputError([f"plot = {target.name}: must end in one of {', '.join(CHART_SUFFIXES)}"])
    require_free(target)


def require_free(target: Path) -> None:
    """Raise `InputError` if a file that is to be written exists, since nothing is overwritten, or if its folder does not."""
    if target.exists():
        raise InputError([f"{target}: exists already; choose another name or remove it first"])
    if not target.parent.is_dir():
        raise InputError([f"{target}: folder {target.parent} does not exist"])
