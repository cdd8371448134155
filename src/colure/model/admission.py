"""What a file must be before it is opened: a regular file of a bearable size, without a way out of itself.

A file of somebody else may be damaged or made to do harm. The library for HDF5 can hang or crash on such a file. So a file without
Colure's checksum is first walked and read by a child process with limits of memory and time. A file whose checksum fits is as it was
written; its links and declared sizes are looked at here, which takes milliseconds.
"""

from __future__ import annotations

import json
import os
import stat
import subprocess
import sys
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final

from colure.errors import InputError

if TYPE_CHECKING:
    from collections.abc import Iterator

#: Bytes that a file may declare in all, per byte that it holds, and beside that. Deflate packs 1032 to 1 at best (RFC 1951: 258 bytes
#: in two bits); measured data pack 1 to 10.
LARGEST_DECLARED_BYTES, MOST_PACKED, FREE_BYTES = 8 << 30, 1100, 64 << 20
#: One chunk is unpacked in one piece; an attribute is read in one piece.
LARGEST_CHUNK_BYTES, LARGEST_ATTRIBUTE_BYTES, MOST_OBJECTS = 256 << 20, 16 << 20, 20_000
#: What the child may take: memory, bytes at a time, processor time (s), and bytes of the file for which it gets one second more.
CHILD_BYTES, PIECE_BYTES, CHILD_CPU_S, BYTES_PER_S = 1 << 30, 16 << 20, 5, 20_000_000
#: A JSON file beside a campaign: figures of many states take some megabytes; read, its values take up to thirty times as much.
LARGEST_JSON_BYTES: Final = 20_000_000
#: The first word of the child's refusal.
REFUSED: Final = "refused: "
KINDS = ((stat.S_ISDIR, "a folder"), (stat.S_ISCHR, "a device"), (stat.S_ISBLK, "a device"), (stat.S_ISFIFO, "a pipe"),
         (stat.S_ISSOCK, "a socket"))  # fmt: skip
_seen: set[tuple[int, int, int, int]] = set()


def require_regular(path: Path, *, largest_bytes: int | None = None) -> int:
    """Return the size of a regular file in bytes; a pipe is never waited for, a device never read.

    Raises
    ------
    InputError
        If it is missing, is no regular file, or is larger than `largest_bytes`.
    """
    path = Path(path)
    try:
        status = path.stat()
    except OSError as error:
        raise InputError([f"{path.name}: cannot be read from {path.parent}: {error.strerror}"]) from None
    for is_kind, words in KINDS:
        if is_kind(status.st_mode):
            raise InputError([f"{path.name}: is {words}: must be a regular file"])
    if largest_bytes is not None and status.st_size > largest_bytes:
        raise InputError([f"{path.name}: size = {status.st_size}: must be at most {largest_bytes} bytes"])
    return status.st_size


def read_json(path: Path, *, largest_bytes: int = LARGEST_JSON_BYTES) -> Any:
    """Return what a JSON file beside a campaign holds; raises `InputError` if it cannot be read, is too large or too deep."""
    require_regular(path, largest_bytes=largest_bytes)
    try:
        return json.loads(Path(path).read_text(encoding="utf-8"))
    except RecursionError:
        raise InputError([f"{path.name}: cannot be read: brackets in brackets, deeper than any of its kind"]) from None
    except (OSError, ValueError) as error:
        raise InputError([f"{path.name}: cannot be read: {error}"]) from None


def require_bounded(path: Path, *, in_memory: bool) -> None:
    """Look at links, storage and declared sizes of an HDF5 file without reading its data.

    in_memory
        The whole file is to be read at once: what it declares in all is bounded too.

    Raises
    ------
    InputError
        If a link or storage leads out of the file, or it declares more than it can hold or a computer can bear.
    OSError, ValueError, KeyError, RuntimeError
        As the library for the format raises them, if it is no such file.
    """
    import h5py

    size, total = require_regular(path), 0
    name = Path(path).name
    with h5py.File(path, "r") as file:
        for where, thing in _objects(file, name):
            for key in thing.attrs:
                total += _attribute_bytes(thing, key, f"{name}: {where}")
            if isinstance(thing, h5py.Dataset):
                total += _declared_bytes(thing, f"{name}: {where}")
            packed = MOST_PACKED * size + FREE_BYTES
            if total > packed:
                raise InputError(
                    [f"{name}: {where}: declares {total} bytes in all: must be at most {packed} in {size} bytes"]
                )
            if in_memory and total > LARGEST_DECLARED_BYTES:
                raise InputError(
                    [f"{name}: {where}: declares {total} bytes in all: must be at most {LARGEST_DECLARED_BYTES} bytes"]
                )


def _objects(file: Any, name: str) -> Iterator[tuple[str, Any]]:
    """Yield every group and dataset of a file once; raises `InputError` for a link that leads out of it."""
    import h5py

    waiting, known = [("/", file["/"])], set[int]()
    while waiting:
        where, thing = waiting.pop()
        address = int(h5py.h5o.get_info(thing.id).addr)
        if address in known:
            continue
        known.add(address)
        if len(known) > MOST_OBJECTS:
            raise InputError([f"{name}: more than {MOST_OBJECTS} groups and datasets"])
        yield where, thing
        if not isinstance(thing, h5py.Group):
            continue
        for key in thing:
            link, inner = thing.get(key, getlink=True), f"{where.rstrip('/')}/{key}"
            if isinstance(link, h5py.ExternalLink):
                raise InputError(
                    [f"{name}: {inner}: links to another file ({link.filename!r}): must hold its data itself"]
                )
            if isinstance(link, h5py.HardLink):
                waiting.append((inner, thing[key]))


def _attribute_bytes(thing: Any, key: str, where: str) -> int:
    size = int(thing.attrs.get_id(key).get_storage_size())
    if size > LARGEST_ATTRIBUTE_BYTES:
        raise InputError(
            [f"{where}: attribute {key}: declares {size} bytes: must be at most {LARGEST_ATTRIBUTE_BYTES} bytes"]
        )
    return size


def _declared_bytes(dataset: Any, where: str) -> int:
    """Return what a dataset takes in memory; raises `InputError` if its data lie elsewhere or come in too large chunks."""
    if dataset.external or dataset.is_virtual:
        raise InputError([f"{where}: its data lie in other files: must hold its data itself"])
    width, count, chunk = int(dataset.dtype.itemsize), 1, 1
    for length in dataset.shape or ():
        count *= int(length)
    for length in dataset.chunks or ():
        chunk *= int(length)
    if dataset.chunks and chunk * width > LARGEST_CHUNK_BYTES:
        raise InputError([f"{where}: chunk of {chunk * width} bytes: must be at most {LARGEST_CHUNK_BYTES} bytes"])
    return count * width


def require_readable_apart(path: Path, *, in_memory: bool) -> None:
    """Let a child process with limits walk an HDF5 file; once for a file that does not change.

    in_memory
        The whole file is to be read at once: the child reads all of it too.

    Raises
    ------
    InputError
        If `require_bounded` refuses it, it cannot be read, or the child dies or takes too long over it.
    """
    path = Path(path).resolve()
    size, status = require_regular(path), path.stat()
    mark = (status.st_dev, status.st_ino, status.st_size, status.st_mtime_ns)
    if mark in _seen:
        return
    limit_s = CHILD_CPU_S + size // BYTES_PER_S
    command = [sys.executable, "-m", "colure.model.admission", str(path), str(limit_s), "1" if in_memory else "0"]
    environment = os.environ | {
        "OPENBLAS_NUM_THREADS": "1",
        "OMP_NUM_THREADS": "1",
        "PYTHONPATH": os.pathsep.join(sys.path),
    }
    environment.pop("HDF5_PLUGIN_PATH", None)
    try:
        # Processor time ends it first; a computer that is busy elsewhere gets ten times as long.
        child = subprocess.run(
            command, env=environment, capture_output=True, text=True, timeout=10.0 * limit_s, check=False,
            stdin=subprocess.DEVNULL,
            errors="replace",
        )  # fmt: skip
    except subprocess.TimeoutExpired:
        raise InputError([f"{path.name}: was not read within {10 * limit_s} s: damaged"]) from None
    if child.returncode == 0:
        _seen.add(mark)
        return
    last = child.stdout.strip().splitlines()[-1:] or [""]
    if last[0].startswith(REFUSED):
        raise InputError([last[0].removeprefix(REFUSED)])
    raise InputError(
        [
            f"{path.name}: damaged: reading it ended the process that tried (exit code {child.returncode}; {CHILD_BYTES >> 20} MiB "
            f"and {limit_s} s of processor time allowed)"
        ]
    )


def _limit_process(limit_s: int) -> None:
    """Bound this process' memory and processor time, where the system can."""
    if sys.platform == "win32":
        return
    import resource

    resource.setrlimit(resource.RLIMIT_AS, (CHILD_BYTES, CHILD_BYTES))
    resource.setrlimit(resource.RLIMIT_CPU, (limit_s, limit_s + 1))
    resource.setrlimit(resource.RLIMIT_CORE, (0, 0))


def _read_all(path: Path) -> None:
    """Read every dataset and attribute in pieces and forget them."""
    import h5py

    with h5py.File(path, "r") as file:
        for _, thing in _objects(file, path.name):
            for key in thing.attrs:
                thing.attrs[key]
            if not isinstance(thing, h5py.Dataset) or not thing.shape:
                continue
            row = max(1, thing.size // thing.shape[0]) * thing.dtype.itemsize
            step = max(1, PIECE_BYTES // row)
            if thing.chunks:
                step = max(thing.chunks[0], step - step % thing.chunks[0])
            for first in range(0, thing.shape[0], step):
                thing[first : first + step]


def _child(arguments: list[str]) -> int:
    path, limit_s, in_memory = Path(arguments[0]), int(arguments[1]), arguments[2] == "1"
    _limit_process(limit_s)
    try:
        require_bounded(path, in_memory=in_memory)
        if in_memory:
            _read_all(path)
    except InputError as error:
        print(f"{REFUSED}{error.faults[0]}")
    except Exception as error:  # the library raises what it likes; the parent wants one line
        words = " ".join(str(error).split())[:300] or type(error).__name__
        print(f"{REFUSED}{path.name}: cannot be read as netCDF-4: {words}")
    else:
        return 0
    return 2


if __name__ == "__main__":
    sys.exit(_child(sys.argv[1:]))
