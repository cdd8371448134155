"""Locks that the operating system frees when their owner dies: one writer per journal, one per controller."""

from __future__ import annotations

import errno
import hashlib
import ipaddress
import os
import socket
import stat
import struct
import sys
import tempfile
from contextlib import suppress
from pathlib import Path
from typing import IO

from colure.errors import InstrumentError, LockedError
from colure.instruments.resources import resource_name

#: Where all users of a computer find each other's locks; the folder for temporary files is often a user's own.
SHARED_FOLDER = Path(os.environ.get("PROGRAMDATA", tempfile.gettempdir()) if os.name == "nt" else "/tmp")
#: A name in memory that one process holds at a time, whichever user's; nobody can take it away or leave it behind (Linux, unix(7)).
NAMES_IN_MEMORY = sys.platform == "linux"


class UnusableLockError(LockedError):
    """The lock file cannot be opened; nobody knows whether somebody holds it."""


class ResourceLock:
    """The right to drive an instrument, until it is closed or this process ends."""

    def __init__(self, *parts: IO[str] | socket.socket) -> None:
        self._parts = parts

    def close(self) -> None:
        """Let others drive it."""
        for part in self._parts:
            part.close()

    def __enter__(self) -> ResourceLock:
        return self

    def __exit__(self, *error: object) -> None:
        self.close()


def hold_lock(path: Path, what: str) -> IO[str]:
    """Lock a file until the returned handle is closed or this process ends.

    Raises
    ------
    LockedError
        Naming the process that holds it; also if the file is a link, which could lead anywhere.
    """
    handle = _opened(path, what)
    owner = path.with_name(path.name + ".pid")
    try:
        if os.name == "nt":
            import msvcrt

            handle.seek(0)
            msvcrt.locking(handle.fileno(), msvcrt.LK_NBLCK, 1)  # type: ignore[attr-defined,unused-ignore]
        else:
            import fcntl

            fcntl.flock(handle.fileno(), fcntl.LOCK_EX | fcntl.LOCK_NB)
    except OSError:
        handle.close()
        raise LockedError(f"{what}: in use by process {_owner(owner)}") from None
    # Who holds it is told for people only: a file of another user, or a link of any kind in its place, is left alone.
    with suppress(OSError, LockedError), _opened(owner, what) as note:
        if _has_one_name(note):
            note.truncate(0)
            note.write(str(os.getpid()))
    return handle


def _has_one_name(file: IO[str]) -> bool:
    """Tell whether no other path leads to a file, which somebody may have laid here."""
    return os.fstat(file.fileno()).st_nlink == 1


def _opened(path: Path, what: str) -> IO[str]:
    """Open a lock file without following a link; one that another user left behind is locked as well as an own one."""
    flags = os.O_CREAT | getattr(os, "O_NOFOLLOW", 0) | getattr(os, "O_CLOEXEC", 0) | getattr(os, "O_NONBLOCK", 0)
    for mode, access in (("r+", os.O_RDWR), ("r", os.O_RDONLY)):
        try:
            number = os.open(path, flags | access, 0o666)
        except PermissionError:
            continue
        except OSError as error:
            way_out = "copy the folder to a disk that can be written" if error.errno == errno.EROFS else "remove it"
            raise UnusableLockError(f"{what}: lock file {path} cannot be opened: {error.strerror}; {way_out}") from None
        if not stat.S_ISREG(os.fstat(number).st_mode):
            os.close(number)
            raise UnusableLockError(f"{what}: lock file {path} is no regular file; remove it")
        return os.fdopen(number, mode, encoding="ascii")
    if not path.exists():
        raise UnusableLockError(
            f"{what}: {path.parent} cannot be written: choose another folder, or change its permissions"
        )
    raise UnusableLockError(f"{what}: lock file {path} belongs to another user and cannot be read; remove it")


def _owner(path: Path) -> str:
    try:
        return path.read_text(encoding="ascii").strip() or "unknown"
    except (OSError, ValueError):
        return "unknown"


def canonical(resource: str) -> str:
    """Return one spelling for every way to name the same line: case, interface number, host names of one address."""
    name = resource.strip()
    with suppress(InstrumentError):
        name = resource_name(name)
    if name.startswith("rfc2217://"):
        host, _, port = name.removeprefix("rfc2217://").partition("?")[0].rpartition(":")
        return f"RFC2217::{_address(host)}::{port}"
    text = name.upper()
    kind, *rest = text.split("::")
    if kind.startswith("TCPIP") and rest:
        rest[0] = _address(rest[0])
        if rest[-1] in ("SOCKET", "INSTR"):
            # One controller may answer in both ways: its address and port tell it apart, the wire does not.
            rest = rest[:-1]
        return "::".join(["TCPIP0" if kind == "TCPIP" else kind, *rest])
    if kind.startswith("ASRL"):
        port = kind.removeprefix("ASRL")
        # The same port is known by a link too (/dev/serial/by-id/...).
        return "ASRL" + (os.path.realpath(name[4:].split("::")[0]) if port.startswith("/") else port)
    return text


def _address(host: str) -> str:
    try:
        return str(ipaddress.ip_address(host.strip("[]")))
    except ValueError:
        pass
    try:
        return socket.gethostbyname(host)
    except OSError:
        return host


def hold_resource(resource: str) -> ResourceLock:
    """Lock an instrument's line for this computer and all its users, whichever way it is spelt.

    A name in memory is the lock where the system has such names; a file beside it is for programs that do not see that name
    (in a container). Elsewhere the file is the lock.

    Raises
    ------
    LockedError
        Naming the process that holds it; also if the file is the lock and cannot be opened.
    """
    # Resource names hold characters that file systems refuse.
    name = f"colure-{hashlib.sha256(canonical(resource).encode()).hexdigest()[:16]}"
    held = [_held_in_memory(name, resource)] if NAMES_IN_MEMORY else []
    path = SHARED_FOLDER / f"{name}.lock"
    try:
        file = hold_lock(path, resource)
    except UnusableLockError:
        if held:
            return ResourceLock(*held)
        raise
    except LockedError:
        ResourceLock(*held).close()
        raise
    with suppress(OSError):  # the next user may lock it whatever this one's file mask is
        if sys.platform != "win32" and _has_one_name(file):
            os.fchmod(file.fileno(), 0o666)
    return ResourceLock(file, *held)


def _held_in_memory(name: str, what: str) -> socket.socket:
    """Take a name in memory; raises `LockedError` naming the process that has it."""
    holder = socket.socket(socket.AF_UNIX, socket.SOCK_STREAM)
    try:
        holder.bind(f"\0{name}")
        holder.listen(socket.SOMAXCONN)  # none is ever accepted; who asks learns our number from the system
    except OSError as error:
        holder.close()
        if error.errno != errno.EADDRINUSE:
            raise LockedError(f"{what}: cannot be locked: {error.strerror}") from None
        raise LockedError(f"{what}: in use by process {_number_of(name)}") from None
    return holder


def _number_of(name: str) -> str:
    """Return the number of the process that holds a name in memory."""
    try:
        with socket.socket(socket.AF_UNIX, socket.SOCK_STREAM) as asking:
            asking.settimeout(0.5)
            asking.connect(f"\0{name}")
            told = asking.getsockopt(socket.SOL_SOCKET, socket.SO_PEERCRED, struct.calcsize("3i"))
            return str(struct.unpack("3i", told)[0])
    except OSError:
        return "unknown"
