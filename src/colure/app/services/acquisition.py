"""Acquisition as the shells see it: the chamber's instruments, a run, a check, a verification."""

from __future__ import annotations

import os
import shutil
import socket
import time
from collections.abc import Callable, Iterator, Mapping
from contextlib import AbstractContextManager, contextmanager, nullcontext, suppress
from dataclasses import dataclass, replace
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from colure.app.services.bench_check import keep_check, mark_of, require_passed_check, said_of_checks
from colure.app.services.connecting import instruments, is_simulated
from colure.app.services.flight_words import coarse_faults, flight_faults
from colure.app.services.reference import probe_of, reference_of
from colure.app.services.stored_calibration import require_valid
from colure.app.storage.begun import keep_begun
from colure.app.storage.folders import RunFolder, require_begun
from colure.errors import InputError
from colure.model.campaign import Campaign
from colure.model.events import Event, Listener, nobody
from colure.model.plan import Plan

if TYPE_CHECKING:
    from colure.acquire.check import Confirm
    from colure.acquire.engine import Engine
    from colure.acquire.journal import Journal, Verification
    from colure.acquire.outcome import Options, Outcome
    from colure.app.services.stopping import Follower

RESERVE_FACTOR = 2.0
#: What is said before a run that nothing here evaluates.
NO_POWER_CUTS = (
    "the receiver is power-only: its readings of single directions are recorded (record.nc), and nothing here evaluates them; "
    "cuts need phase, a scan of the sphere does not"
)


def _mount(address: str, command: str) -> None:
    """Do in the simulated chamber what a person does in a real one: exchange device and horn, move probe or positioner."""
    _, host, port, _ = address.split("::")
    with (
        socket.create_connection((host, int(port)), timeout=5.0) as line,
        line.makefile("rw", encoding="ascii") as words,
    ):
        words.write(f"{command}\nMOUNT?\n")
        words.flush()
        words.readline()


def acquire(
    campaign: Campaign,
    plan: Plan,
    run: RunFolder,
    *,
    listener: Listener = nobody,
    on_engine: Callable[[Engine], None] | None = None,
    options: Options | None = None,
    accept_damage: bool = False,
    despite_check: bool = False,
    follow: Callable[[Campaign, Plan, RunFolder, Listener, str], AbstractContextManager[Follower | None]] | None = None,
) -> Outcome:
    """Measure what the journal does not hold yet, then seal the record.

    Parameters
    ----------
    on_engine
        Called with the engine before it runs, for stop keys and signals.
    accept_damage
        Measure the points anew whose journal rows are damaged; without it damage is refused.
    despite_check
        Start although the newest check of the instruments did not pass.
    follow
        Gives what follows the run and may end it: by default what ends a scan whose wanted figures are known.

    Raises
    ------
    InputError
        If the newest check did not pass, the disk is too full, the run belongs to another plan or other instruments, its
        journal is damaged, or a file beside the campaign would not serve what is measured.
    """
    from colure.acquire.engine import Engine
    from colure.acquire.gate import who_answers
    from colure.acquire.journal import Journal
    from colure.acquire.outcome import Options as EngineOptions
    from colure.acquire.wakefulness import kept_awake
    from colure.app.services.stopping import followed
    from colure.app.services.tie_direction import keep as keep_tie_direction

    if not despite_check:
        require_passed_check(campaign.folder, plan.hash)
    faults = coarse_faults(campaign, plan) + flight_faults(campaign, plan)
    if faults:
        raise InputError([*faults, "nothing was moved"])
    # What cannot be processed afterwards is not measured for hours first.
    reference_of(campaign, plan.frequency_hz)
    require_valid(campaign)
    require_writable(run)
    require_room(run, plan)
    run.path.mkdir(parents=True, exist_ok=True)
    _check_journal_kept(run)
    # The simulated chamber does not mind a sleeping computer.
    simulated = is_simulated(campaign, "axis-controller")
    with nullcontext("") if simulated else kept_awake("antenna measurement") as drowsy, instruments(campaign) as bench:
        if drowsy:
            listener(Event("warning", drowsy))
        identity = who_answers(bench.analyzer, bench.axes, bench.states)
        if identity.get("receiver", "vector") == "vector":
            probe_of(campaign, plan.frequency_hz)
        elif plan.settings.get("form") == "directions":
            listener(Event("warning", NO_POWER_CUTS))
        if "ties" in plan.predicted and not run.journal.exists():
            keep_tie_direction(run, plan.predicted["ties"])
        journal = Journal.open(run.journal, plan, identity)
        try:
            _require_same_run(journal, campaign, plan, identity)
            keep_begun(run, campaign)
            _check_whole(journal, listener, accept_damage=accept_damage)
            _say_checks(journal, listener, said_of_checks(campaign, plan))
            receiver = str(identity.get("receiver", "vector"))
            with (follow or (whole if options is not None and options.again else followed))(
                campaign, plan, run, listener, receiver
            ) as stopper:
                engine: Engine = Engine(
                    plan,
                    campaign.chamber,
                    journal,
                    bench.analyzer,
                    bench.axes,
                    states=bench.states,
                    state_table=campaign.device.states,
                    listener=listener if stopper is None else stopper,
                    clock=bench.clock,
                    options=options or EngineOptions(),
                    mount=None if bench.person is None else partial(_mount, bench.person),
                    contacts=bench.contacts,
                    sensors=bench.sensors,
                )
                if stopper is not None:
                    stopper.attach(engine.finish, journal.rows())
                if on_engine is not None:
                    on_engine(engine)
                outcome = engine.run()
            if outcome.measured:
                _seal(journal, run)
        finally:
            journal.close()
    return outcome


@contextmanager
def whole(campaign: Campaign, plan: Plan, run: RunFolder, listener: Listener, receiver: str) -> Iterator[None]:
    """Follow nothing: all that is asked for is measured, whatever its figures."""
    yield None


def _seal(journal: Journal, run: RunFolder) -> None:
    """Write the record; raises `InputError` where it cannot be written, with what to do: nothing is lost."""
    from colure.acquire.seal import seal

    try:
        seal(journal, run.record)
    except OSError as error:
        known = os.strerror(error.errno) if error.errno else str(error)
        why = known if run.path.is_dir() else "its folder was moved or removed"
        raise InputError(
            [
                f"{run.record}: could not be written: {why}; every point is in {run.journal.name}, wherever it lies now: put the folder back or "
                "free the disk, then colure acquire FOLDER --run NAME --rebuild makes the record"
            ]
        ) from None


def require_writable(run: RunFolder) -> None:
    """Raise `InputError` if nothing can be written where a run is to be kept; nothing is made there."""
    folder = run.path.absolute()
    while not folder.exists():
        folder = folder.parent
    if not os.access(folder, os.W_OK | os.X_OK):
        raise InputError(
            [
                f"{folder}: cannot be written, and a run is kept there: free it, or copy the campaign to another folder; nothing was moved"
            ]
        )


def _check_journal_kept(run: RunFolder) -> None:
    """Raise `InputError` where a record holds points that the journal beside it does not: a new one would be written over it."""
    if not run.record.is_file():
        return
    beside = run.journal.with_name(run.journal.name + "-wal")
    if not any(path.is_file() and path.stat().st_size for path in (run.journal, beside)):
        raise InputError(
            [
                f"run {run.path.name}: the journal {run.journal.name} is gone or empty, so it cannot be resumed, and a new one would be written "
                f"over {run.record.name}: put a copy of the journal back, or measure under another run name (`run`); nothing was moved"
            ]
        )
    if not _journal_holds_record(run, run.journal):
        raise InputError(
            [
                f"run {run.path.name}: {run.record.name} was not made from {run.journal.name} as it is now, and a new one would be written over "
                "it: put the journal back that it was made from, or measure under another run name (`run`); nothing was moved"
            ]
        )


def _journal_holds_record(run: RunFolder, journal: Path) -> bool:
    """Tell whether every point of a run's record is in its journal, or in a copy of it; raises `InputError` if one cannot be read, or not now."""
    from colure.acquire.chain import holds_root
    from colure.acquire.journal import Journal

    root_hash = _root_hash(run)
    Journal.resume(journal).close()  # says what is wrong with it, if anything is
    holds = holds_root(journal, root_hash)
    if holds is None:
        raise InputError(
            [
                f"run {run.path.name}: {run.journal.name} cannot be read at this moment, another program may have it open: close that and try "
                "again; nothing was moved"
            ]
        )
    return holds


def _root_hash(run: RunFolder) -> str:
    """Return the root hash of the journal that a run's record was made from; raises `InputError` if the record cannot be read."""
    from colure.model.admission import require_readable_apart
    from colure.model.files import attribute_of, require_unchanged

    if not require_unchanged(run.record):
        require_readable_apart(run.record, in_memory=False)
    return str(attribute_of(run.record, "journal_root_hash", ""))


def require_room(run: RunFolder, plan: Plan) -> None:
    """Raise `InputError` if the disk that a run is kept on has less free than twice what the run takes and 10 MB; nothing is made."""
    folder = run.path.absolute()
    while not folder.exists():
        folder = folder.parent
    needed = int(RESERVE_FACTOR * plan.predicted.get("data_bytes", 0)) + 10_000_000
    free = shutil.disk_usage(folder).free
    if free < needed:
        raise InputError(
            [
                f"disk: {free / 1e6:.0f} MB free in {folder}: must be at least {needed / 1e6:.0f} MB: free the disk, or copy the campaign to "
                "another one; nothing was moved"
            ]
        )


def _check_same(
    old_hash: str, new_hash: str, old_identity: Mapping[str, object], new_identity: Mapping[str, object]
) -> None:
    faults = []
    if old_hash != new_hash:
        faults.append(
            f"plan: hash = {new_hash[:12]}: must be {old_hash[:12]} to resume; the campaign files changed: goal.toml, device.toml, a file "
            "that they name, or settings in chamber.toml other than words, limits and geometry"
        )
    faults += [
        f"instruments: {name} = {value!r}: must be {old_identity.get(name)!r} to resume"
        for name, value in new_identity.items()
        if old_identity.get(name) != value
    ]
    if faults:
        raise InputError(faults)


def _check_circumstances(journal: Journal, campaign: Campaign) -> None:
    """Refuse to go on under other words, limits or geometry, and say which."""
    from colure.acquire.circumstances import changes, circumstances

    before = journal.meta("circumstances")
    faults = [] if before is None else changes(before, circumstances(campaign.chamber, campaign.folder))
    if faults:
        raise InputError([*faults, "nothing was moved: put it back, or begin another run (`run`)"])


def _require_same_run(journal: Journal, campaign: Campaign, plan: Plan, identity: Mapping[str, object]) -> None:
    """Refuse to go on with other words, another plan or other instruments; keep under what a run begins."""
    _check_circumstances(journal, campaign)
    _check_same(journal.meta("plan_hash"), plan.hash, journal.meta("identity"), identity)
    _keep_circumstances(journal, campaign)


def _keep_circumstances(journal: Journal, campaign: Campaign) -> None:
    """Keep under what a run begins."""
    from colure.acquire.circumstances import circumstances

    if journal.meta("circumstances") is None:
        journal.set_meta("circumstances", circumstances(campaign.chamber, campaign.folder))


def _say_checks(journal: Journal, listener: Listener, texts: list[str]) -> None:
    """Say, and keep with the run, what was not checked before it, or did not pass; what earlier sessions said stays."""
    now, said = time.time(), journal.meta("checks") or []
    for text in texts:
        listener(Event("warning", text))
        journal.note("warning", text, now)
    new = [{"wall_time": now, "text": text} for text in texts if text not in [one["text"] for one in said]]
    if new:
        journal.set_meta("checks", [*said, *new])


def _check_whole(journal: Journal, listener: Listener, *, accept_damage: bool) -> None:
    """Refuse a damaged journal, unless its damaged points shall be measured anew."""
    verification = journal.verify()
    if verification.whole:
        return
    if not accept_damage:
        raise InputError(
            [f"journal: {text}" for text in verification.damaged[:20]]
            + ["journal: nothing was changed; `accept_damage` measures the damaged points anew"]
        )
    for text in journal.accept_damage():
        listener(Event("warning", f"journal: {text}; measured anew"))


@dataclass(frozen=True)
class CheckLine:
    """One line of `colure acquire --check`."""

    what: str
    good: bool
    answer: str


def check_instruments(
    campaign: Campaign, plan: Plan, *, confirm: Confirm | None = None, tell: Callable[[str], None] | None = None
) -> list[CheckLine]:
    """Talk to everything and return what was found; a run after a check that failed is refused unless told.

    confirm
        Turn every axis by a degree and brake it on a longer way; asked before each axis moves, and whether it went the right way.
        Without it nothing moves.
    tell
        Hears which instrument is asked next, before it may keep us waiting.
    """
    from colure.acquire.check import check_bench, check_motion
    from colure.errors import InstrumentError, LockedError

    lines = [CheckLine("on the fly", False, text) for text in flight_faults(campaign, plan)]
    words_there = not lines
    lines += [CheckLine("targets", False, text) for text in coarse_faults(campaign, plan)]
    turned: list[CheckLine] | None = None
    try:
        with instruments(campaign, tell or (lambda text: None)) as bench:
            lines += [CheckLine(f"{name} at", True, resource) for name, resource in bench.names.items()]
            rows = check_bench(
                plan, campaign.chamber, bench.analyzer, bench.axes, states=bench.states, clock=bench.clock,
                contacts=bench.contacts, sensors=bench.sensors, pulses=words_there,
            )  # fmt: skip
            lines += [CheckLine(*line) for line in rows]
            # What has a fault already is not moved.
            if confirm is not None and all(line.good for line in lines):
                turned = [
                    CheckLine(*line)
                    for line in check_motion(campaign.chamber, bench.axes, bench.clock, confirm, device=campaign.device)
                ]
    except (InstrumentError, LockedError) as error:
        lines.append(CheckLine("connection", False, str(error)))
    wrong, moved = ([f"{one.what}: {one.answer}" for one in part if not one.good] for part in (lines, turned or []))
    unkept = keep_check(campaign.folder, plan.hash, wrong, None if turned is None else moved, under=mark_of(campaign))
    return lines + (turned or []) + ([CheckLine("kept", False, unkept)] if unkept else [])


def rebuild(run: RunFolder) -> tuple[int, str]:
    """Write a run's record anew from its journal.

    Returns
    -------
    points
        How many the new record holds.
    kept
        Name of the file that the old record was kept under, because it cannot be read or was not made from this journal; else
        empty.

    Raises
    ------
    InputError
        If there is no such run.
    JournalError
        If there is no journal, it is damaged, or another process writes it.
    """
    from colure.acquire.journal import Journal
    from colure.acquire.seal import keep_record, record_of

    require_begun(run)
    journal = Journal.resume(run.journal)
    try:
        record = record_of(journal)  # nothing is put aside for a journal that makes no record
        kept = _put_aside(run)
        keep_record(journal, record, run.record)
    finally:
        journal.close()
    return int(record.sizes["point"]), kept


def _put_aside(run: RunFolder) -> str:
    """Rename a record that holds what its journal does not, or may, and return its new name."""
    from colure.acquire.chain import holds_root

    if not run.record.is_file():
        return ""
    with suppress(InputError):
        if holds_root(run.journal, _root_hash(run)):
            return ""
    number = 1
    while (free := run.record.with_name(f"{run.record.name}.before-{number}")).exists():
        number += 1
    run.record.rename(free)
    return free.name


def require_own_record(run: RunFolder, root_hash: str) -> None:
    """Raise `InputError` if a record's root hash is not one of the journal beside it."""
    from colure.acquire.chain import holds_root

    if run.journal.is_file() and holds_root(run.journal, root_hash) is False:
        raise InputError(
            [
                f"{run.record.name}: root hash = {root_hash[:12] or 'none'}: must be one of {run.journal.name}: the record was not "
                "made from this journal; colure acquire FOLDER --run NAME --rebuild makes it anew"
            ]
        )


def verify(run: RunFolder) -> Verification:
    """Check a journal's checksums and chain, also where nothing can be written; raises `InputError` if there is no such run."""
    from colure.acquire.journal import Journal
    from colure.acquire.read_only import readable

    require_begun(run)
    with readable(run.journal) as path:
        journal = Journal.resume(path)
        try:
            verification = journal.verify()
        finally:
            journal.close()
        try:
            own = not run.record.is_file() or _journal_holds_record(run, path)
        except InputError as error:
            return replace(verification, damaged=(*verification.damaged, *error.faults))
    strange = f"{run.record.name}: was not made from {run.journal.name} as it is now: points may be missing at its end"
    return verification if own else replace(verification, damaged=(*verification.damaged, strange))
