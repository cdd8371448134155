"""Many runs at once: found by folders, globs and lists, done side by side, kept by content, and put into one table.

A run whose record, campaign files and specification hold the same bytes as last time is not done again. What fails is told with
its reason and stops nothing.
"""

from __future__ import annotations

import csv
import glob
import os
import time
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from fnmatch import fnmatch
from pathlib import Path
from typing import TYPE_CHECKING, Any, Literal

from colure.app.scale.executors import Failed, workers_of
from colure.app.storage.begun import begun_digest, campaign_of
from colure.app.storage.folders import RunFolder, campaign_digest, run_folder
from colure.errors import InputError
from colure.model.admission import read_json
from colure.model.strict_json import json_text
from colure.model.tables import decoded
from colure.model.whole import whole_file, write_whole

if TYPE_CHECKING:
    from colure.model.specification import Specification

What = Literal["process", "evaluate"]
#: Columns of the summary table.
COLUMNS = (
    "campaign",
    "run",
    "state",
    "kind",
    "frequency_ghz",
    "name",
    "label",
    "value",
    "unit",
    "lower",
    "upper",
    "outcome",
    "text",
)
TABLE_ENDINGS = (".csv", ".parquet")


@dataclass(frozen=True)
class Item:
    """One run to be done, or one state of a device that has several."""

    folder: Path
    run: str
    state: str | None = None

    @property
    def name(self) -> str:
        """How it is called in lines and tables."""
        return f"{self.folder}/{self.run}" + (f" {self.state}" if self.state else "")


@dataclass(frozen=True)
class BatchJob:
    """An item and what to do with it."""

    item: Item
    what: What
    specification: Path | None = None
    again: bool = False
    present: bool = False


@dataclass(frozen=True)
class Result:
    """What became of an item: done, kept from before, or failed with a reason; rows of the table."""

    item: Item
    status: Literal["done", "kept", "failed"]
    reason: str = ""
    seconds: float = 0.0
    rows: list[dict[str, Any]] = field(default_factory=list)


def find_items(sources: Sequence[str], run_pattern: str = "*") -> list[Item]:
    """Return the runs that sources name, each once, in order, every state of a device by itself.

    sources
        Campaign folders, folders of them, run folders, record files, globs of any of these, or `@file` with one a line.

    Raises
    ------
    InputError
        If a source names nothing; all such sources are named.
    """
    by_run: dict[tuple[Path, str], Item] = {}
    faults = []
    for source in _listed(sources):
        # Globs may be absolute, which pathlib's are not.
        paths = sorted(glob.glob(source, recursive=True)) if glob.has_magic(source) else [source]  # noqa: PTH207
        items = [item for path in paths for item in _items_at(Path(path), run_pattern)]
        if not items:
            why = "names no run with a record" if paths and any(map(os.path.exists, paths)) else "does not exist"
            faults.append(f"{source}: {why}; needs a campaign folder, run folder, record.nc, glob or @list")
        for item in items:
            by_run.setdefault((item.folder.resolve(), item.run), item)
    if faults:
        raise InputError(faults)
    return [one for item in by_run.values() for one in _by_state(item)]


def _by_state(item: Item) -> list[Item]:
    """Return one item a state; what cannot be read stays one, and says so when it is done."""
    from colure.app.services.processing import states_of

    try:
        states = states_of(run_folder(item.folder, item.run))
    except InputError:
        return [item]
    return [replace(item, state=state) for state in states] or [item]


def _listed(sources: Sequence[str]) -> Iterator[str]:
    for source in sources:
        if not source.startswith("@"):
            yield source
            continue
        lines = decoded(Path(source[1:]))[0].splitlines()
        yield from (line.strip() for line in lines if line.strip() and not line.startswith("#"))


def _items_at(path: Path, run_pattern: str) -> Iterator[Item]:
    if path.name == "record.nc" and path.is_file():
        path = path.parent
    if (path / "record.nc").is_file() and path.parent.name == "runs":
        yield Item(path.parent.parent, path.name)
    elif (path / "chamber.toml").is_file():
        for record in sorted(path.glob("runs/*/record.nc")):
            if fnmatch(record.parent.name, run_pattern):
                yield Item(path, record.parent.name)
    elif path.is_dir():
        for chamber in sorted(path.glob("*/chamber.toml")):
            yield from _items_at(chamber.parent, run_pattern)


def run_batch(
    items: Sequence[Item],
    what: What,
    *,
    specification: Path | None = None,
    again: bool = False,
    scheduler: str = "processes",
    workers: int | None = None,
    present: bool = False,
) -> Iterator[Result]:
    """Yield the result of every item as it is done; `present` as of `colure.app.storage.begun.as_begun`."""
    # A worker elsewhere has another current folder.
    file = None if specification is None else specification.resolve()
    jobs = [BatchJob(replace(item, folder=item.folder.resolve()), what, file, again, present) for item in items]
    with workers_of(scheduler, workers) as many:
        for index, outcome in many.run(do, jobs):
            item = items[index]
            if isinstance(outcome, Failed):
                yield Result(item, "failed", str(outcome))
            else:
                named = [
                    {"campaign": str(item.folder), "run": item.run, "state": item.state or "", **row}
                    for row in outcome.rows
                ]
                yield replace(outcome, item=item, rows=named)


def do(job: BatchJob) -> Result:
    """Do one item, or take over what was found last time if nothing changed."""
    begin = time.perf_counter()
    item, run = job.item, run_folder(job.item.folder, job.item.run).state(job.item.state)
    key = content_key(job)
    place = run.result(f"{job.what}d.json")
    kept = None if job.again else _kept(place, key)
    if kept is not None:
        return Result(item, "kept", rows=kept, seconds=time.perf_counter() - begin)
    rows, outputs, fault = _done(job, run)
    if fault:
        return Result(item, "failed", fault, time.perf_counter() - begin, rows)
    _keep(place, key, rows, outputs)
    return Result(item, "done", rows=rows, seconds=time.perf_counter() - begin)


def content_key(job: BatchJob) -> str:
    """Return a hash of all that a result depends on: version, record, every file beside the campaign, specification."""
    from colure.model.files import file_hash

    run = run_folder(job.item.folder, job.item.run)
    digest = campaign_digest(job.item.folder, f"{job.what} {begun_digest(run)} {job.present}")
    if job.specification is not None:
        from colure.model.specification import load_specification

        # As it was read, the tables that it names included.
        digest.update(load_specification(job.specification).model_dump_json().encode())
    if not run.record.is_file():
        raise InputError([f"{run.record.name}: is missing"])
    digest.update(file_hash(run.record).encode())
    return str(digest.hexdigest())


def _kept(place: Path, key: str) -> list[dict[str, Any]] | None:
    """Return the rows of last time if they are of the same content and what was written then is still there unchanged."""
    from colure.model.files import file_hash

    try:
        entry = read_json(place)
    except (OSError, ValueError):
        return None
    if entry.get("key") != key:
        return None
    for name, sha in entry["outputs"].items():
        path = place.parent / name
        if not path.is_file() or file_hash(path) != sha:
            return None
    return list(entry["rows"])


def _keep(place: Path, key: str, rows: list[dict[str, Any]], outputs: list[Path]) -> None:
    from colure.model.files import file_hash

    content = {"key": key, "outputs": {path.name: file_hash(path) for path in outputs}, "rows": rows}
    write_whole(place, json_text(content))


def _done(job: BatchJob, run: RunFolder) -> tuple[list[dict[str, Any]], list[Path], str]:
    """Process or evaluate an item; returns rows, the files that were written, and why there is no verdict, if so."""
    from colure.app import services
    from colure.model.specification import load_specification

    campaign = campaign_of(job.item.folder, run, present=job.present)
    specification = None if job.specification is None else load_specification(job.specification)
    if not services.has_phase(run):
        if job.what == "process":
            raise InputError(
                [f"run {job.item.run}: power only: no pattern has phase here; colure evaluate reads its figures"]
            )
        figures = services.evaluate_power(campaign, run)
        return [_figure_row(one.as_dict()) for one in figures], [run.figures], ""
    processed = services.process(campaign, run)
    outputs = [run.pattern]
    if job.what == "process":
        return [{"kind": "pattern", "text": outputs[0].name}], outputs, ""
    pattern_figures = services.evaluate(processed, run)
    outputs.append(run.figures)
    rows = [_figure_row(one.as_dict()) for one in pattern_figures]
    if specification is None:
        return rows, outputs, ""
    try:
        return [*rows, *_verdict_rows(processed, pattern_figures, specification)], outputs, ""
    except InputError as error:
        return rows, outputs, "; ".join(error.faults)


def _figure_row(one: dict[str, Any]) -> dict[str, Any]:
    return {"kind": "figure", "frequency_ghz": one["frequency_hz"] / 1e9,
            **{name: one[name] for name in ("name", "label", "value", "unit", "lower", "upper")}}  # fmt: skip


def _verdict_rows(processed: Any, figures: list[Any], specification: Specification) -> list[dict[str, Any]]:
    from colure.app.services.verdicts import judge

    judged = judge(processed, figures, specification)
    rows = [
        {"kind": "requirement", "name": one.requirement, "label": one.requirement, "value": one.margin,
         "unit": one.unit, "outcome": one.outcome, "text": one.text} for one in judged.verdicts
    ]  # fmt: skip
    whole = {
        "kind": "verdict",
        "name": specification.name,
        "label": specification.name,
        "outcome": judged.outcome,
    }
    return [*rows, whole]


def write_table(results: Sequence[Result], target: Path) -> None:
    """Write the summary table, one row a figure, requirement, verdict or failure: CSV (safe for spreadsheets) or Parquet.

    Raises
    ------
    InputError
        If the file exists, its ending is neither, or Parquet's library is missing.
    """
    rows = [row for one in sorted(results, key=lambda one: one.item.name) for row in _with_failure(one)]
    if target.suffix == ".csv":
        from colure.model.exports import safe_text

        with whole_file(target) as out:
            writer = csv.writer(out)
            writer.writerow(COLUMNS)
            for row in rows:
                cells = [row.get(name) for name in COLUMNS]
                writer.writerow(
                    ["" if c is None else safe_text(c) if isinstance(c, str) else f"{c:.9g}" for c in cells]
                )
        return
    import pandas

    frame = pandas.DataFrame([{name: row.get(name) for name in COLUMNS} for row in rows], columns=list(COLUMNS))
    numbers = ("frequency_ghz", "value", "lower", "upper")
    kinds = {name: "float64" if name in numbers else "string" for name in COLUMNS}
    frame.astype(kinds).to_parquet(target, index=False)


def _with_failure(one: Result) -> list[dict[str, Any]]:
    if one.status != "failed":
        return one.rows
    failure = {
        "campaign": str(one.item.folder),
        "run": one.item.run,
        "state": one.item.state or "",
        "kind": "failure",
        "text": one.reason,
    }
    return [*one.rows, failure]


def require_table(target: Path | None) -> None:
    """Raise `InputError` if a table cannot be written there, before hours are spent."""
    from importlib.util import find_spec

    from colure.app.storage.folders import require_free

    if target is None:
        return
    if target.suffix not in TABLE_ENDINGS:
        raise InputError([f"table = {target.name}: must end in {' or '.join(TABLE_ENDINGS)}"])
    if target.suffix == ".parquet" and find_spec("pyarrow") is None:
        raise InputError(["table: pyarrow is missing; install it with: pip install 'colure[cluster]', or write .csv"])
    if not target.parent.is_dir():
        raise InputError([f"table = {target}: folder {target.parent} does not exist"])
    require_free(target)


def outcomes(result: Result) -> str:
    """Return the outcome of a result's verdicts together, empty if there were none."""
    verdict_outcomes = {str(row["outcome"]) for row in result.rows if row["kind"] == "verdict"}
    return next((one for one in ("fail", "not decidable", "pass") if one in verdict_outcomes), "")
