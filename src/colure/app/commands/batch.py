"""What `colure process` and `colure evaluate` do with many runs, and with one that is large."""

from __future__ import annotations

import functools
import sys
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from colure.app.commands.as_measured import tell_edits
from colure.app.terminal.say import say
from colure.errors import CHECK_FAILED
from colure.model.strict_json import json_text

if TYPE_CHECKING:
    from colure.app.scale.batch import Result, What


@dataclass(frozen=True)
class BatchOptions:
    """Options that both commands share."""

    table: Path | None
    scheduler: str | None
    workers: int | None
    again: bool
    specification: Path | None = None

    def is_batch(self, sources: tuple[str, ...], run_name: str | None) -> bool:
        """Tell whether sources name more than one campaign folder's run."""
        pattern = any(c in (run_name or "") for c in "*?[")
        if len(sources) > 1 or pattern or self.table is not None:
            return True
        one = sources[0] if sources else "."
        return any(c in one for c in "*?[@") or not (Path(one) / "chamber.toml").is_file()


OPTIONS = (
    click.option("--table", type=click.Path(path_type=Path), help="Summary of a batch: .csv, or .parquet."),
    click.option(
        "--scheduler", help="threads, processes, local (a Dask cluster here), or tcp://host:port of one that runs."
    ),
    click.option("--workers", type=click.IntRange(1, 1024), help="How many at once; one per core by default."),
    click.option("--again", is_flag=True, help="Do everything, whatever is kept from before."),
)


def batch_options(command: Callable[..., Any]) -> Callable[..., Any]:
    """Give a command the options of a batch as one argument `batch`."""

    @functools.wraps(command)
    def wrapped(table: Path | None, scheduler: str | None, workers: int | None, again: bool, **rest: Any) -> Any:
        options = BatchOptions(table, scheduler, workers, again, rest.pop("specification", None))
        return command(batch=options, **rest)

    for option in reversed(OPTIONS):
        wrapped = option(wrapped)
    return wrapped


def run_batch_command(
    what: What,
    sources: tuple[str, ...],
    run_name: str | None,
    options: BatchOptions,
    *,
    as_json: bool,
    present: bool = False,
) -> None:
    """Do a batch and print what became of it; exit code 1 if anything failed."""
    from colure.app.scale.batch import find_items, require_table, run_batch, write_table

    require_table(options.table)
    items = find_items(sources or (".",), run_name or "*")
    begin = time.perf_counter()
    results = []
    with _bar(len(items), "runs", quiet=as_json) as step:
        for one in run_batch(
            items, what, specification=options.specification, again=options.again,
            scheduler=options.scheduler or "processes", workers=options.workers, present=present,
        ):  # fmt: skip
            results.append(one)
            step(len(results))
    for folder, name in dict.fromkeys((one.item.folder, one.item.run) for one in results):
        tell_edits(folder, name, present=present)
    seconds = time.perf_counter() - begin
    if options.table is not None:
        write_table(results, options.table)
    failed = [one for one in results if one.status == "failed"]
    if as_json:
        say(json_text([_plain(one) for one in results]))
    else:
        _summary(results, seconds, options.table)
    sys.exit(CHECK_FAILED if failed else 0)


def _plain(one: Result) -> dict[str, Any]:
    from colure.app.scale.batch import outcomes

    return {"campaign": str(one.item.folder), "run": one.item.run, "state": one.item.state, "status": one.status,
            "reason": one.reason,
            "seconds": round(one.seconds, 3), "verdict": outcomes(one)}  # fmt: skip


def _line(one: Result) -> str:
    return f"{one.item.name}: failed: {one.reason}"


def _summary(results: list[Result], seconds: float, table: Path | None) -> None:
    from collections import Counter

    from colure.app.scale.batch import outcomes

    count: Counter[str] = Counter(one.status for one in results)
    words = ", ".join(
        f"{count[name]} {text}"
        for name, text in (("done", "done"), ("kept", "unchanged and kept"), ("failed", "failed"))
        if count[name]
    )
    runs = len({(one.item.folder, one.item.run) for one in results})
    states = f", {len(results)} states" if len(results) > runs else ""
    say(f"{runs} runs{states} in {seconds:.1f} s ({len(results) / seconds:.1f} a second): {words}")
    verdicts = Counter(outcomes(one) for one in results if outcomes(one))
    if verdicts:
        say("verdicts: " + ", ".join(f"{n} {name}" for name, n in sorted(verdicts.items())))
    for one in results:
        if one.status == "failed":
            say(_line(one), err=True)
    if table is not None:
        say(f"table: {table}")


def scale_out(
    folder: Path,
    run_name: str,
    options: BatchOptions,
    *,
    record: str | None,
    memory_gib: float,
    step_deg: float | None,
    as_json: bool,
) -> None:
    """Cut one large record into pieces for a scheduler and print what was done; exit code 1 if a piece failed."""
    from colure.app.scale.pieces import process_large

    with _bar(None, "pieces", quiet=as_json) as step:
        outcome = process_large(
            folder, run_name, record=record, scheduler=options.scheduler or "threads", workers=options.workers,
            memory_bytes=int(memory_gib * 2**30), step_deg=step_deg, told=step,
        )  # fmt: skip
    layout = outcome.layout
    if as_json:
        say(json_text({"patterns": outcome.target, "states": len(layout.states),
                               "frequencies": layout.frequencies,
                               "pieces": layout.pieces, "done": outcome.completed, "kept": outcome.before,
                               "seconds": round(outcome.seconds, 2),
                               "piece_bytes": layout.piece_bytes, "peak_bytes": outcome.peak_bytes,
                               "failed": list(outcome.faults)}))  # fmt: skip
    else:
        states = f"{len(layout.states)} states x " if layout.states else ""
        cut = f"{states}{layout.frequencies} frequencies, pieces: {layout.pieces}"
        memory = f"a piece was expected to take {layout.piece_bytes / 2**20:.0f} MiB of a worker"
        seen = f", {outcome.peak_bytes / 2**20:.0f} MiB were seen" if outcome.peak_bytes else ""
        say(
            f"{cut}: {outcome.completed} done, {outcome.before} kept from before, in {outcome.seconds:.1f} s; {memory}{seen}"
        )
        say(f"patterns: {outcome.target}")
    for line in outcome.faults:
        say(line, err=True)
    sys.exit(CHECK_FAILED if outcome.faults else 0)


@contextmanager
def _bar(total: int | None, what: str, *, quiet: bool) -> Iterator[Callable[..., None]]:
    """Show a bar with time left; yields what to call with how many are done, and a new total."""
    if quiet:
        yield lambda *_: None
        return
    from rich.progress import BarColumn, MofNCompleteColumn, Progress, TextColumn, TimeRemainingColumn

    from colure.app.terminal.consoles import console

    columns = (
        TextColumn(what),
        BarColumn(bar_width=30),
        MofNCompleteColumn(),
        TextColumn("left"),
        TimeRemainingColumn(),
    )
    with Progress(*columns, console=console(stderr=True), refresh_per_second=4) as bar:
        task = bar.add_task(what, total=total)

        def step(completed: int, whole: int | None = None) -> None:
            bar.update(task, completed=completed, total=total if whole is None else whole)

        yield step
