"""The chores of the project, for every system that has Python: `python tasks.py NAME`."""

from __future__ import annotations

import subprocess
import sys

TASKS: dict[str, list[list[str]]] = {
    "test": [[sys.executable, "-m", "pytest"]],
    "lint": [[sys.executable, "-m", "ruff", "check", "."], [sys.executable, "-m", "ruff", "format", "--check", "."]],
    "types": [[sys.executable, "-m", "mypy"]],
    "layers": [["lint-imports"]],
    "bench": [
        [sys.executable, "benchmarks/run.py"],
        [sys.executable, "benchmarks/acquisition.py"],
        [sys.executable, "benchmarks/recipe.py", "--large"],
        [sys.executable, "benchmarks/report.py"],
        [sys.executable, "benchmarks/headline.py", "--all"],
        [sys.executable, "benchmarks/arrays.py", "patterns", "--array", "5x3"],
        [sys.executable, "benchmarks/control_room.py"],
        [sys.executable, "benchmarks/start.py"],
        [sys.executable, "benchmarks/batch.py"],
        [sys.executable, "benchmarks/scale_out.py"],
    ],
    # The long versions: more power cuts, kills, hours, seeds and flips; 200 random goals and misalignments.
    "nightly": [
        [
            sys.executable,
            "-m",
            "pytest",
            "--nightly",
            "tests/crash",
            "tests/acquire",
            "tests/planning",
            "tests/analysis",
            "tests/waves",
            "tests/app/test_honest_intervals.py",
            "tests/app/test_cuts.py",
            "tests/coverage",
            "tests/instruments",
            "tests/model",
            "tests/browser",
            "tests/endtoend",
        ]
    ],
    # Small errors planted in the mathematical rooms, one at a time: how many do the tests catch?
    "mutants": [[sys.executable, "-m", "tests.mutation.mutants", "--count", "120"]],
    # Static pages in build/site (needs: pip install ".[docs]").
    "docs": [[sys.executable, "-m", "mkdocs", "build", "--strict"]],
    "demo": [[sys.executable, "-m", "colure", "demo"]],
}
TASKS["check"] = [*TASKS["lint"], *TASKS["types"], *TASKS["layers"], *TASKS["test"]]


def main() -> int:
    """Run the tasks named on the command line, or list them."""
    names = sys.argv[1:]
    if not names or any(name not in TASKS for name in names):
        print("usage: python tasks.py " + "|".join(TASKS))
        return 2
    for name in names:
        for command in TASKS[name]:
            print("+", " ".join(command), flush=True)
            code = subprocess.call(command)
            if code:
                return code
    return 0


if __name__ == "__main__":
    sys.exit(main())
