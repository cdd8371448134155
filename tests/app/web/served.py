"""The page's server as a person starts it: a process of its own, spoken to over its port."""

from __future__ import annotations

import http.client
import json
import os
import re
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from colure.app.web.room import campaign_id


class Served:
    """A session of the printed link; one connection is kept."""

    def __init__(self, process: subprocess.Popen[str], link: str) -> None:
        self.process = process
        self.port = int(re.search(r":(\d+)/", link).group(1))  # type: ignore[union-attr]
        code = link.strip().rsplit("code=", 1)[1]
        line = http.client.HTTPConnection("127.0.0.1", self.port, timeout=60)
        entered = self._raw(line, "GET", f"/launch?code={code}")
        line.close()
        self._cookie = entered[1].split(";")[0]
        self._token = ""
        self._kept = http.client.HTTPConnection("127.0.0.1", self.port, timeout=60)
        self._token = self.get("/api/me")["token"]

    def leave(self) -> None:
        """Hang up."""
        self._kept.close()

    def _raw(
        self, line: http.client.HTTPConnection, method: str, path: str, body: Any = None
    ) -> tuple[int, str, bytes]:
        headers = {"Origin": f"http://127.0.0.1:{self.port}"}
        if hasattr(self, "_cookie"):
            headers |= {"Cookie": self._cookie, "X-Colure-Token": self._token, "Content-Type": "application/json"}
        line.request(method, path, None if body is None else json.dumps(body), headers)
        answer = line.getresponse()
        return answer.status, answer.getheader("set-cookie") or "", answer.read()

    def get(self, path: str) -> Any:
        """Return an answer's content."""
        return json.loads(self._raw(self._kept, "GET", path)[2])

    def post(self, path: str, *, anew: bool = False, **body: Any) -> tuple[int, Any]:
        """Return (status, content), over a connection of its own (`anew`) or the one that is kept."""
        if anew:
            line = http.client.HTTPConnection("127.0.0.1", self.port, timeout=60)
            try:
                status, _, content = self._raw(line, "POST", path, body)
            finally:
                line.close()
            return status, json.loads(content)
        try:
            status, _, content = self._raw(self._kept, "POST", path, body)
        except (
            ConnectionError,
            http.client.RemoteDisconnected,
        ):  # the server lets connections go that ask nothing for 5 s
            self._kept.close()
            status, _, content = self._raw(self._kept, "POST", path, body)
        return status, json.loads(content)

    def most_bytes(self) -> dict[int, int]:
        """Return the most memory that the server and its workers ever took, by process (Linux)."""
        tree = [self.process.pid, *_children(self.process.pid)]
        found = {}
        for number in tree:
            try:
                words = Path(f"/proc/{number}/status").read_text(encoding="ascii", errors="replace")
            except OSError:
                continue
            kib = re.search(r"VmHWM:\s+(\d+) kB", words)
            found[number] = 1024 * int(kib.group(1)) if kib else 0
        return found

    def busy_s(self) -> float:
        """Return the processor time that the server and its workers have taken, those that ended included, seconds (Linux)."""
        ticks = 0
        for number in [self.process.pid, *_children(self.process.pid)]:
            try:
                fields = Path(f"/proc/{number}/stat").read_text(encoding="latin-1").rsplit(")", 1)[1].split()
            except OSError:
                continue
            ticks += sum(map(int, fields[11:15]))
        return ticks / os.sysconf("SC_CLK_TCK")


def _children(parent: int) -> list[int]:
    found = []
    for entry in Path("/proc").iterdir():
        if entry.name.isdigit():
            try:
                fields = (entry / "stat").read_text(encoding="latin-1").rsplit(")", 1)[1].split()
            except OSError:
                continue
            if int(fields[1]) == parent:
                found += [int(entry.name), *_children(int(entry.name))]
    return found


@contextmanager
def serving(*folders: Path) -> Iterator[Served]:
    """Serve campaigns until the block ends."""
    process = subprocess.Popen(
        [sys.executable, "-m", "colure", "serve", *map(str, folders), "--port", "0"],
        stdout=subprocess.PIPE, text=True, env={**os.environ, "PYTHONUNBUFFERED": "1"},
    )  # fmt: skip
    assert process.stdout is not None
    try:
        line = ""
        while "code=" not in line:
            line = process.stdout.readline()
            assert line, "the server did not start"
        link = next(word for word in line.split() if "code=" in word)
        end = time.monotonic() + 60.0
        while True:
            try:
                page = Served(process, link)
                break
            except ConnectionRefusedError:
                assert time.monotonic() < end
                time.sleep(0.05)
        yield page
        page.leave()
    finally:
        process.terminate()
        process.wait(timeout=60)
        process.stdout.close()


def id_of(folder: Path) -> str:
    """Return a campaign's id on the page."""
    return campaign_id(folder)
