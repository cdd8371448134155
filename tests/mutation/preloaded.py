"""Run gates (single tests) against changed copies of the package, each in a fork of one process that has loaded the
libraries already: a start costs tenths of a second instead of seconds. POSIX only.

The process reads one JSON line a gate, `{"package": ..., "tests": [...], "log": ..., "limit_s": ...}`, and answers with
one line, `{"code": ...}`: pytest's exit code, or 99 where the gate took longer than its limit.
"""

from __future__ import annotations

import json
import os
import shutil
import signal
import subprocess
import sys
import time
from collections.abc import Sequence
from pathlib import Path
from types import TracebackType

ROOT = Path(__file__).parents[2]
TIMED_OUT = 99
LIBRARIES = ("numpy", "scipy.optimize", "scipy.interpolate", "scipy.special", "xarray", "h5netcdf", "pandas", "pydantic",
             "pyvisa", "apsw", "click", "rich", "ducc0", "hypothesis.strategies", "pytest",
             "threadpoolctl", "skrf", "zarr", "matplotlib.figure")  # fmt: skip


class Preloaded:
    """A process with the libraries loaded that runs gates in forks of itself."""

    def __init__(self) -> None:
        environment = {**os.environ, "OPENBLAS_NUM_THREADS": "1", "PYTHONDONTWRITEBYTECODE": "1"}
        environment.pop("PYTHONPATH", None)
        self._process = subprocess.Popen([sys.executable, "-m", "tests.mutation.preloaded"], cwd=ROOT, env=environment,
                                         stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True)  # fmt: skip

    def __enter__(self) -> Preloaded:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self._process.communicate()

    def run(self, package: Path, tests: Sequence[str], *, log: Path, limit_s: float = 120.0) -> int:
        """Return pytest's exit code (0 all passed, 1 some failed) of `tests` against the package in folder `package`."""
        assert self._process.stdin is not None
        assert self._process.stdout is not None
        order = {"package": str(package), "tests": list(tests), "log": str(log), "limit_s": limit_s}
        self._process.stdin.write(json.dumps(order) + "\n")
        self._process.stdin.flush()
        return int(json.loads(self._process.stdout.readline())["code"])


def changed_copy(source: Path, target: Path, name: str, text: str) -> None:
    """Copy the package (bytecode too) into `target`/colure, with another text in file `name`."""
    package = target / "colure"
    shutil.copytree(source, package)
    (package / name).write_text(text, encoding="utf-8")
    for compiled in (package / name).parent.glob(f"__pycache__/{Path(name).stem}.*"):
        compiled.unlink()


def _gate(order: dict[str, str]) -> None:
    os.setsid()
    log = os.open(order["log"], os.O_WRONLY | os.O_CREAT | os.O_TRUNC)
    for stream in (1, 2):
        os.dup2(log, stream)
    sys.path.insert(0, order["package"])
    os.environ["PYTHONPATH"] = order["package"]
    import pytest

    code = pytest.main(
        [
            "-q",
            "-x",
            "-n",
            "0",
            "-p",
            "no:cacheprovider",
            "-W",
            "ignore::pytest.PytestAssertRewriteWarning",
            f"--basetemp={order['log']}.d",
            *order["tests"],
        ]
    )
    sys.stdout.flush()
    os._exit(int(code))


def _wait(child: int, limit_s: float) -> int:
    end = time.monotonic() + limit_s
    while time.monotonic() < end:
        done, status = os.waitpid(child, os.WNOHANG)
        if done:
            return os.waitstatus_to_exitcode(status)
        time.sleep(0.02)
    os.killpg(child, signal.SIGKILL)
    os.waitpid(child, 0)
    return TIMED_OUT


def main() -> None:
    """Serve gates until the input ends."""
    for name in LIBRARIES:
        __import__(name)
    sys.modules["xarray"].backends.list_engines()  # asks every library that can open a file
    for line in sys.stdin:
        order = json.loads(line)
        child = os.fork()
        if child == 0:
            _gate(order)
        print(json.dumps({"code": _wait(child, float(order["limit_s"]))}), flush=True)


if __name__ == "__main__":
    main()
