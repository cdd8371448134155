"""How long it takes to begin: `python benchmarks/start.py`. Medians of 15, and ratios to a bare interpreter in the same run."""

from __future__ import annotations

import shutil
import statistics
import subprocess
import sys
import time

LIMITS_S = {"import colure": 0.3, "colure --help": 0.4}


def median(command: list[str]) -> float:
    """Return the median wall time in seconds."""
    taken = []
    for _ in range(15):
        begin = time.perf_counter()
        subprocess.run(command, check=True, capture_output=True)
        taken.append(time.perf_counter() - begin)
    return statistics.median(taken)


def main() -> int:
    bare = median([sys.executable, "-c", "pass"])
    script = shutil.which("colure") or "colure"
    found = {
        "import colure": median([sys.executable, "-c", "import colure"]) - bare,
        "colure --help": median([script, "--help"]),
        "colure.open_campaign": median([sys.executable, "-c", "import colure; colure.open_campaign"]) - bare,
    }
    print(f"bare interpreter {1e3 * bare:.0f} ms")
    for name, seconds in found.items():
        limit = LIMITS_S.get(name)
        print(
            f"{name:22s} {1e3 * seconds:5.0f} ms, {seconds / bare:4.1f} times it"
            + (f", limit {1e3 * limit:.0f} ms" if limit else "")
        )
    return int(any(found[name] > limit for name, limit in LIMITS_S.items()))


if __name__ == "__main__":
    sys.exit(main())
