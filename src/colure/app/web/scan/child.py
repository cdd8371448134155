"""The process that carries out a scan for the control room, apart from it.

It speaks lines of JSON on its standard output and hears words on its standard input: `pause`, `resume`,
`stop`, `abort`. When that input ends, the control room is gone: nobody could stop it any more, so it
brakes and ends in a safe state, and the same run goes on later. A slow reader never holds the engine up.
"""

from __future__ import annotations

import argparse
import json
import os
import queue
import sys
import threading
from collections.abc import Iterator
from pathlib import Path
from typing import IO, TYPE_CHECKING, Any, get_args

from colure.acquire.control import hear_stops_soon
from colure.app.services.measuring_again import again_plan
from colure.app.storage.folders import run_folder
from colure.app.web.guard.hidden import without
from colure.app.web.scan.layout import Kind, planned
from colure.errors import InputError, system_fault
from colure.model.events import Event
from colure.model.strict_json import plain

if TYPE_CHECKING:
    from colure.acquire.engine import Engine
    from colure.acquire.journal import Row
    from colure.app.storage.folders import RunFolder

#: Points that wait to be told; beyond it they are only in the journal, where the page finds them later.
MOST_WAITING = 20_000
HISTORY_CHUNK = 400


class Teller:
    """Writes lines from a thread of its own; a full queue drops points, never words."""

    def __init__(self, out: IO[bytes], folder: Path) -> None:
        """Write to `out`; words never name the campaign's folder on this computer."""
        self._out, self._folder = out, folder
        self._lines: queue.SimpleQueue[bytes | None] = queue.SimpleQueue()
        self._thread = threading.Thread(target=self._run, daemon=True)
        self._thread.start()

    def tell(self, content: dict[str, Any], *, may_drop: bool = False) -> None:
        """Queue one line."""
        if "text" in content:
            content = {**content, "text": without(self._folder, str(content["text"]))}
        if not (may_drop and self._lines.qsize() > MOST_WAITING):
            self._lines.put(json.dumps(plain(content), separators=(",", ":")).encode() + b"\n")

    def close(self) -> None:
        """Write what is not yet written, for a moment at most."""
        self._lines.put(None)
        self._thread.join(timeout=5.0)

    def _run(self) -> None:
        try:
            while (line := self._lines.get()) is not None:
                self._out.write(line)
                if self._lines.empty():
                    self._out.flush()
            self._out.flush()
        except OSError:
            return  # nobody reads any more; the end of our input tells the engine


def _of(row: Row, middle: int) -> list[Any]:
    """Return what a page needs of a point: index, role, time since 1970, positions, traces at the frequency to watch, flags.

    The time goes on over a resume, where the run's own clock begins anew.
    """
    trace = row.trace[middle].ravel()
    parts = [float(f"{v:.6g}") for one in trace for v in (one.real, one.imag)]
    return [
        row.plan_index,
        row.role,
        round(row.wall_time, 3),
        [round(float(v), 4) for v in row.readback_deg],
        parts,
        row.flags,
    ]


class _Remote:
    """Commands from the control room for the engine, once there is one."""

    def __init__(self) -> None:
        self._engine: Engine | None = None
        self._early: str | None = None
        self._lock = threading.Lock()

    def attach(self, engine: Engine) -> None:
        """Control this engine; a stop or an abort that came before it counts."""
        with self._lock:
            self._engine = engine
            if self._early == "abort":
                engine.abort("aborted before it began")
            elif self._early is not None:
                engine.stop("stopped before it began")

    def act(self, word: str) -> None:
        """Do what a word says."""
        with self._lock:
            engine = self._engine
            if engine is None:
                if word in ("stop", "abort", "gone") and self._early != "abort":
                    self._early = word
                return
        if word == "pause":
            engine.pause("paused from the control room")
        elif word == "resume":
            engine.resume()
        elif word == "stop":
            engine.stop("stopped from the control room")
        elif word == "abort":
            engine.abort("aborted from the control room")
        elif word == "gone":
            engine.stop("the control room is gone")

    def listen(self) -> None:
        """Hear words until the input ends."""
        for line in sys.stdin:
            self.act(line.strip())
        self.act("gone")


def _history(journal_path: Path, middle: int) -> Iterator[list[list[Any]]]:
    """Yield what an earlier attempt measured already."""
    from colure.acquire.journal import Journal
    from colure.errors import JournalError

    if not journal_path.is_file():
        return
    try:
        journal = Journal.resume(journal_path)
    except JournalError:
        return  # acquiring says what is wrong with it
    try:
        rows = [_of(row, middle) for row in journal.rows()]
    finally:
        journal.close()
    yield from (rows[i : i + HISTORY_CHUNK] for i in range(0, len(rows), HISTORY_CHUNK))


def _left(run: RunFolder, points: frozenset[int]) -> list[int]:
    """Return which of points to be measured again are left, after a stop too."""
    from colure.acquire.journal import Journal

    if not points:
        return []
    journal = Journal.resume(run.journal)
    try:
        return sorted(journal.left_of(points))
    finally:
        journal.close()


def carry_out(
    folder: Path,
    run_name: str,
    *,
    kind: Kind,
    home: bool,
    despite_check: bool,
    teller: Teller,
    remote: _Remote,
    again: str = "",
) -> int:
    """Measure, telling everything; returns an exit code.

    again
        Slices of a finished run that are measured again; empty: what the run does not hold yet.
    """
    from colure.acquire.outcome import Options
    from colure.app import services

    points: frozenset[int] = frozenset()
    if again:
        run = run_folder(folder, run_name)
        campaign, plan, part = again_plan(folder, run, again)
        points = part.points
    else:
        campaign, plan, run = planned(folder, run_name, kind)
    middle = campaign.goal.shown_index(plan.frequency_hz)
    teller.tell({"kind": "plan", "hash": plan.hash, "total": len(plan), "again": _left(run, points)})
    for rows in _history(run.journal, middle):
        teller.tell({"kind": "history", "rows": rows})

    def listen(event: Event) -> None:
        row = event.data.get("row")
        if row is None:
            teller.tell({"kind": event.kind, "text": event.text, **event.data})
        else:
            text = event.text if event.kind == "tie" else ""
            teller.tell({"kind": event.kind, "text": text, "row": _of(row, middle)}, may_drop=event.kind == "point")

    outcome = services.acquire(
        campaign,
        plan,
        run,
        listener=listen,
        on_engine=remote.attach,
        options=Options(home=home, again=points, said=again),
        despite_check=despite_check,
    )
    teller.tell({"kind": "outcome", "state": outcome.state.value, "text": outcome.reason, "measured": outcome.measured,
                 "total": outcome.total, "flagged": outcome.flagged})  # fmt: skip
    return 0 if outcome.state.value == "done" else 3


def main() -> int:
    """Run from the command line; the control room does."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("folder", type=Path)
    parser.add_argument("run")
    parser.add_argument("--kind", choices=get_args(Kind), default="scan")
    parser.add_argument("--again", default="")
    parser.add_argument("--home", action="store_true")
    parser.add_argument("--despite-check", action="store_true")
    arguments = parser.parse_args()
    hear_stops_soon()
    # What anything else prints must not get between the lines.
    out = os.fdopen(os.dup(sys.stdout.fileno()), "wb")
    os.dup2(sys.stderr.fileno(), sys.stdout.fileno())
    teller, remote = Teller(out, arguments.folder), _Remote()
    threading.Thread(target=remote.listen, daemon=True).start()
    try:
        return carry_out(
            arguments.folder,
            arguments.run,
            kind=arguments.kind,
            home=arguments.home,
            despite_check=arguments.despite_check,
            teller=teller,
            remote=remote,
            again=arguments.again,
        )
    except InputError as error:
        teller.tell({"kind": "refused", "text": "; ".join(error.faults)})
        return 2
    except OSError as error:
        teller.tell({"kind": "refused", "text": system_fault(error, whole_path=False) or type(error).__name__})
        raise
    except Exception as error:
        # Its own output has the whole.
        teller.tell({"kind": "refused", "text": f"{type(error).__name__}: {error}"})
        raise
    finally:
        teller.close()


if __name__ == "__main__":
    sys.exit(main())
