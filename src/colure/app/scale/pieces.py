"""One large record, many workers: every state and block of frequencies is a piece of work that reads, transforms and writes for itself.

The waves that come out are those of `colure process`, to the last digit: drift, cable and misalignment are found first from all
frequencies together, the rest goes frequency by frequency (`colure.analysis.pipeline.stages`). A piece that is done again, because its
worker died or the whole was interrupted, writes the same numbers to the same place.
"""

from __future__ import annotations

import atexit
import json
import time
from collections.abc import Callable
from contextlib import ExitStack
from dataclasses import dataclass, replace
from functools import lru_cache
from pathlib import Path
from threading import Lock
from typing import TYPE_CHECKING, Any

import numpy as np

from colure.app.scale.executors import WORKER_BYTES, Failed, Workers, workers_of
from colure.app.services.known_rooms import learned_room_of
from colure.app.services.reference import probe_of, reference_of
from colure.app.storage.begun import campaign_of
from colure.app.storage.folders import campaign_digest, run_folder
from colure.errors import InputError
from colure.model.campaign import Campaign
from colure.model.files import require_unchanged
from colure.model.loading import require_library

if TYPE_CHECKING:
    import xarray as xr

    from colure.analysis.pipeline.stages import Known
    from colure.model.recipe import Recipe

#: Copies of a block's sweeps and of its sphere that a piece of work holds at its worst, and what an idle worker takes (measured in
#: benchmarks/scale_out.py).
COPIES, IDLE_BYTES = 14, 400 << 20


@dataclass(frozen=True)
class RecordPiece:
    """One state and block of frequencies: from where, to where.

    key
        Hash of all that the result depends on; a worker keeps the record open under it.
    """

    folder: Path
    run: str
    record: str
    key: str
    target: str
    state: int | None
    number: int
    block: tuple[int, int]
    step_deg: float
    known: Known | None = None

    def of(self, layout: PieceLayout, state: int, number: int, known: Known | None) -> RecordPiece:
        """Return the piece of another state and block."""
        return replace(
            self, state=state if layout.states else None, number=number, block=layout.blocks[number], known=known
        )


@dataclass(frozen=True)
class PieceLayout:
    """How a record is cut: states, frequencies, blocks, and the memory that one piece is expected to take."""

    states: tuple[str, ...]
    frequencies: int
    blocks: tuple[tuple[int, int], ...]
    piece_bytes: int
    in_pieces: bool

    @property
    def pieces(self) -> int:
        """Pieces of work."""
        return max(1, len(self.states)) * len(self.blocks)


@dataclass(frozen=True, kw_only=True)
class PiecesOutcome:
    """What was done."""

    target: str
    layout: PieceLayout
    completed: int
    before: int
    seconds: float
    faults: tuple[str, ...]
    peak_bytes: int = 0


def process_large(
    folder: Path,
    run_name: str,
    *,
    record: str | None = None,
    scheduler: str = "threads",
    workers: int | None = None,
    memory_bytes: int = WORKER_BYTES,
    step_deg: float | None = None,
    told: Callable[[int, int], None] | None = None,
) -> PiecesOutcome:
    """Transform a run's record, however large, into `patterns.zarr`: waves and fields by state and frequency.

    Parameters
    ----------
    record
        Path or URL of the record, netCDF-4 or Zarr; record.zarr or record.nc of the run by default.
    memory_bytes
        What one worker may take; blocks of frequencies are cut so that a piece stays below it.
    step_deg
        Grid of the fields; the coarsest of 1 to 6 deg that holds all waves by default.
    told
        Called with pieces done and pieces in all.

    Raises
    ------
    InputError
        If the record cannot be read or processed, or a library is missing.
    """
    begin = time.perf_counter()
    run = run_folder(folder, run_name)
    campaign = campaign_of(folder, run)
    source = record or str(next((path for path in (run.path / "record.zarr", run.record) if path.exists()), run.record))
    # A worker elsewhere has another current folder.
    source, target = source if "://" in source else str(Path(source).resolve()), str(run.waves.resolve())
    if source.endswith(".nc") and "://" not in source:
        require_unchanged(Path(source))
    run.path.mkdir(parents=True, exist_ok=True)
    layout, step, key, missing = _prepared(campaign, source, target, memory_bytes, step_deg)
    total = layout.pieces
    before = completed = total - len(missing)
    first = RecordPiece(folder.resolve(), run_name, source, key, target, None, 0, layout.blocks[0], step)
    peak = 0
    with workers_of(scheduler, workers, memory_bytes=memory_bytes) as many:
        if told is not None:
            told(completed, total)
        known, faults = _find_known(many, layout, first, sorted({state for state, _ in missing}))
        pieces = [first.of(layout, state, block, known[state]) for state, block in missing if state in known]
        for index, answer in many.run(transform_piece, pieces):
            if isinstance(answer, Failed):
                low, high = pieces[index].block
                faults.append(f"{_name(layout, pieces[index].state)}, frequencies {low} to {high - 1}: {answer}")
                continue
            completed, peak = completed + 1, max(peak, answer)
            if told is not None:
                told(completed, total)
    return PiecesOutcome(
        target=target,
        layout=layout,
        completed=completed - before,
        before=before,
        seconds=time.perf_counter() - begin,
        faults=tuple(faults),
        peak_bytes=peak,
    )


def _find_known(
    many: Workers, layout: PieceLayout, first: RecordPiece, states: list[int]
) -> tuple[dict[int, Known | None], list[str]]:
    """Return by state what all frequencies tell together, and faults; None where a state is one piece."""
    if not layout.in_pieces:
        return dict.fromkeys(states), []
    openings = [first.of(layout, state, 0, None) for state in states]
    known: dict[int, Known | None] = {}
    faults = []
    for index, answer in many.run(_known, openings):
        if isinstance(answer, Failed):
            faults.append(f"{_name(layout, openings[index].state)}: {answer}")
        else:
            known[states[index]] = answer
    return known, faults


def _name(layout: PieceLayout, state: int | None) -> str:
    return "the record" if state is None else f"state {layout.states[state]}"


def _recipe(campaign: Campaign, record: xr.Dataset) -> Recipe:
    from colure.analysis.pipeline.recipe import default_recipe, require_phase

    try:
        require_phase(record)
    except ValueError as error:
        raise InputError([str(error)]) from None
    return campaign.recipe() or default_recipe(record, campaign.chamber, campaign.device)


def _prepared(
    campaign: Campaign, source: str, target: str, memory_bytes: int, step_deg: float | None
) -> tuple[PieceLayout, float, str, list[tuple[int, int]]]:
    """Cut the record, make its store or go on with one of the same content; returns what remains to be done, (state, block)."""
    from colure.model.lazy import open_lazily, read_array

    with open_lazily(source) as record:
        layout, step = _layout(campaign, record, memory_bytes, step_deg)
        key = _key(campaign, record, f"{source} {layout.blocks} {step}")
        if not Path(target).exists():
            _make_store(target, record, layout, step, key)
    if require_library("zarr", "cluster").open_group(target, mode="r").attrs.get("key") != key:
        raise InputError([f"{target}: was made from another record, campaign or cut; remove it first"])
    return layout, step, key, [(int(s), int(b)) for s, b in np.argwhere(read_array(target, "done") == 0)]


def _layout(
    campaign: Campaign, record: xr.Dataset, memory_bytes: int, step_deg: float | None
) -> tuple[PieceLayout, float]:
    from colure.analysis.pipeline.stages import in_pieces
    from colure.analysis.steps.distance_steps import holds_distances
    from colure.model.lazy import rows_of_state
    from colure.model.record import grid_of, names_of_states

    if holds_distances(record):
        raise InputError(
            ["record: holds several distances (distance_steps): colure process puts them together, not in pieces"]
        )
    states, count = names_of_states(str(record.attrs.get("states", ""))), record.sizes["frequency"]
    step = _step(int(record.attrs["order"])) if step_deg is None else step_deg
    if abs(180.0 / step - round(180.0 / step)) > 1e-9:
        raise InputError([f"step_deg = {step:g}: must divide 180 deg without remainder"])
    rows = rows_of_state(record, 0 if states else None).size
    free = in_pieces(record, _recipe(campaign, record), whole=grid_of(record).whole)
    fields = (round(180.0 / step) + 1) * 2 * round(180.0 / step) * 2
    per_frequency = 16 * (COPIES * rows * record.sizes["port"] + 2 * fields)
    if not free:
        return PieceLayout(tuple(states), count, ((0, count),), IDLE_BYTES + per_frequency * count, False), step
    room = memory_bytes - IDLE_BYTES
    if room < per_frequency:
        raise InputError(
            [
                f"memory_gib: {memory_bytes / 2**30:.2g} GiB, one frequency needs {(IDLE_BYTES + per_frequency) / 2**30:.2g} GiB"
            ]
        )
    size = int(min(count, room // per_frequency))
    blocks = tuple((int(part[0]), int(part[-1]) + 1) for part in np.array_split(np.arange(count), -(-count // size)))
    return PieceLayout(
        tuple(states), count, blocks, IDLE_BYTES + per_frequency * max(b - a for a, b in blocks), True
    ), step


def _step(order: int) -> float:
    return next((step for step in (6.0, 5.0, 4.0, 3.0, 2.0, 1.0) if 180.0 / step >= order + 2), 0.5)


def _make_store(target: str, record: xr.Dataset, layout: PieceLayout, step_deg: float, key: str) -> None:
    """Make the empty store; it gets its name last."""
    zarr, states = require_library("zarr", "cluster"), max(1, len(layout.states))
    frequency, order = record["frequency"].values, int(record.attrs["order"])
    kept = ("plan_hash", "journal_root_hash", "history_json")
    attrs = {name: record.attrs[name] for name in kept if name in record.attrs}
    rings = round(180.0 / step_deg) + 1
    columns, waves = 2 * (rings - 1), order * (order + 2)
    part = f"{target}.part"
    group = zarr.open_group(part, mode="w")
    group.attrs.update({"title": "Colure patterns", "quantity": "realized_gain",
                        "time_convention": "exp(+j w t), exp(-j k r)/r removed",
                        "phase_reference": "device-frame origin", "key": key,
                        "blocks": [list(one) for one in layout.blocks], **attrs})  # fmt: skip

    def array(name: str, values: Any, dims: tuple[str, ...], **units: str) -> None:
        made = group.create_array(name, data=np.asarray(values), dimension_names=dims)
        made.attrs.update(units)

    def empty(name: str, shape: tuple[int, ...], dims: tuple[str, ...], kind: str, chunks: tuple[int, ...]) -> None:
        group.create_array(name, shape=shape, chunks=chunks, dtype=kind, dimension_names=dims, compressors=None)

    array("frequency", frequency, ("frequency",), units="Hz")
    array("theta", np.round(np.linspace(0.0, 180.0, rings), 9), ("theta",), units="deg")
    array("phi", np.round(np.arange(columns) * 360.0 / columns, 9), ("phi",), units="deg")
    group.attrs["states"] = list(layout.states) or ["beam"]
    dims = ("state", "frequency", "theta", "phi")
    for name in ("e_theta", "e_phi"):
        empty(name, (states, frequency.size, rings, columns), dims, "complex128", (1, 1, rings, columns))
    empty(
        "waves",
        (states, frequency.size, 2, waves),
        ("state", "frequency", "kind", "wave"),
        "complex128",
        (1, 1, 2, waves),
    )
    # One chunk a piece: two workers never write into the same one.
    empty("done", (states, len(layout.blocks)), ("state", "block"), "int8", (1, 1))
    Path(part).rename(target)


def _key(campaign: Campaign, record: xr.Dataset, cut: str) -> str:
    """Return a hash of what the result depends on: version, campaign files, the record's own identity, and the cut."""
    digest = campaign_digest(campaign.folder, cut)
    # A run may have begun with another chamber than chamber.toml has now.
    digest.update(campaign.chamber.model_dump_json().encode())
    digest.update(json.dumps({name: str(value) for name, value in sorted(record.attrs.items())}).encode())
    digest.update(np.ascontiguousarray(record["time_s"].values).tobytes())
    return str(digest.hexdigest())


class _OpenRecord:
    """The record of a worker, kept open for its pieces: closed when another is asked for, and before the process ends.

    A file that is left to the interpreter's end is closed after the libraries that could close it.
    """

    def __init__(self) -> None:
        self._lock, self._stack, self._held = Lock(), ExitStack(), ("", "")
        self._record: xr.Dataset | None = None
        atexit.register(self.close)

    def at(self, source: str, key: str) -> xr.Dataset:
        """Return the record of a path or URL; its small variables are read when it is opened."""
        from colure.model.lazy import open_lazily

        with self._lock:
            if self._record is None or self._held != (source, key):
                self.close()
                self._record, self._held = self._stack.enter_context(open_lazily(source)), (source, key)
            return self._record

    def close(self) -> None:
        """Close the file, if one is open."""
        self._record = None
        self._stack.close()


_open_record = _OpenRecord()


@lru_cache(maxsize=1)
def _campaign(folder: Path, run_name: str, key: str) -> Campaign:
    return campaign_of(folder, run_folder(folder, run_name))


def _known(piece: RecordPiece) -> Known:
    """Find what all frequencies of a state tell together."""
    from colure.analysis.pipeline.stages import known_of
    from colure.analysis.steps.alignment import looked_at
    from colure.model.lazy import read_rows, rows_of_state

    campaign, record = _campaign(piece.folder, piece.run, piece.key), _open_record.at(piece.record, piece.key)
    rows = rows_of_state(record, piece.state)
    some = read_rows(record, rows, looked_at(record.sizes["frequency"]))
    at = some["frequency"].values
    try:
        return known_of(
            record.isel(point=rows), some, campaign.chamber, campaign.device, _recipe(campaign, record),
            keep=int(record.attrs["order"]), probe=probe_of(campaign, at), reference=reference_of(campaign, at),
            room=learned_room_of(campaign, at),
        )  # fmt: skip
    except ValueError as error:
        raise InputError([str(error)]) from None


def transform_piece(piece: RecordPiece) -> int:
    """Transform one block of frequencies of one state and write it to its place; returns the memory's peak in bytes, 0 if unknown."""
    from colure.analysis.pipeline.stages import transform
    from colure.analysis.steps.far_field import pattern_grid
    from colure.model.lazy import read_rows, rows_of_state, write_part

    campaign, record = _campaign(piece.folder, piece.run, piece.key), _open_record.at(piece.record, piece.key)
    here, recipe = slice(*piece.block), _recipe(campaign, record)
    part = read_rows(record, rows_of_state(record, piece.state), here)
    at = part["frequency"].values
    known = None if piece.known is None else piece.known.at(here)
    try:
        transformed = transform(
            part, campaign.chamber, campaign.device, recipe, keep=int(part.attrs["order"]),
            probe=probe_of(campaign, at), reference=reference_of(campaign, at), known=known,
            room=learned_room_of(campaign, at),
        )  # fmt: skip
    except ValueError as error:
        raise InputError([str(error)]) from None
    _, _, field = pattern_grid(transformed.expansion, piece.step_deg)
    row = piece.state or 0
    write_part(piece.target, "e_theta", (row, here), field[:, 0])
    write_part(piece.target, "e_phi", (row, here), field[:, 1])
    write_part(piece.target, "waves", (row, here), transformed.expansion.coefficients)
    # Last, and only now: what is marked as done is there.
    write_part(piece.target, "done", (row, piece.number), 1)
    return _peak_bytes()


def _peak_bytes() -> int:
    """Return the largest memory that this process held, 0 where the system does not say."""
    status = Path("/proc/self/status")
    if status.is_file():  # Linux's rusage counts what the parent held before this process was started
        line = next((one for one in status.read_text(encoding="ascii").splitlines() if one.startswith("VmHWM:")), "")
        return 1024 * int(line.split()[1]) if line else 0
    try:
        import resource
    except ModuleNotFoundError:  # Windows counts otherwise
        return 0
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
