"""Locks that the operating system frees when their owner dies: one writer per journal, one per controller."""

from __future__ import annotations

import hashlib
import ipaddress
import os
import socket
import tempfile
from contextlib import suppress
from pathlib import Path
from typing import IO

from colure.errors import InstrumentError, LockedError
from colure.instruments.resources import resource_name


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
    # Who holds it is told for people only: a file of another user, or a link in its place, is left alone.
    with suppress(OSError, LockedError), _opened(owner, what) as note:
        note.truncate(0)
        note.write(str(os.getpid()))
    return handle


def _opened(path: Path, what: str) -> IO[str]:
    """Open a lock file without following a link; one that another user left behind is locked as well as an own one."""
    flags = os.O_CREAT | getattr(os, "O_NOFOLLOW", 0) | getattr(os, "O_CLOEXEC", 0)
    for mode, access in (("r+", os.O_RDWR), ("r", os.O_RDONLY)):
        try:
            return os.fdopen(os.open(path, flags | access, 0o666), mode, encoding="ascii")
        except PermissionError:
            continue
        except OSError as error:
            raise LockedError(f"{what}: lock file {path} cannot be opened: {error.strerror}; remove it") from None
    if not path.exists():
        raise LockedError(f"{what}: {path.parent} cannot be written: choose another folder, or change its permissions")
    raise LockedError(f"{what}: lock file {path} belongs to another user and cannot be read; remove it")


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


def hold_resource(resource: str) -> IO[str]:
    """Lock an instrument's line for this computer, whichever way it is spelt; raises `LockedError` naming the process."""
    # Resource names hold characters that file systems refuse.
    digest = hashlib.sha256(canonical(resource).encode()).hexdigest()[:16]
    return hold_lock(Path(tempfile.gettempdir()) / f"colure-{digest}.lock", resource)
