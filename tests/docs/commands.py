"""The commands that the documentation names: where they stand, what each must parse to, what is not executed and why."""

from __future__ import annotations

import re
import shlex
from pathlib import Path

import click

from colure.app.cli import main

ROOT = Path(__file__).parents[2]
DOCS = ROOT / "docs"
PAGES = sorted(page for folder in (".", "how-to", "explanation", "lookup") for page in (DOCS / folder).glob("*.md"))
WITH_COMMANDS = [*PAGES, *sorted((DOCS / "decisions").glob("*.md")), ROOT / "README.md", ROOT / "CONTRIBUTING.md"]
FENCE = re.compile(r"^```(\w*)[^\n]*\n(.*?)^```", re.DOTALL | re.MULTILINE)
INLINE = re.compile(r"`colure ([a-z][^`\n]*)`")
LONG = "takes minutes; "
#: Lines of the pages that the tests do not carry out, each with its reason. Those of colure are parsed all the same.
NOT_RUN = {
    "python -m pip install .": "installs",
    'python -m pip install ".[test]"': "installs",
    "python -m pytest": "is what runs this",
    "python -m venv .venv": "installs",
    ". .venv/bin/activate": "installs",
    'python -m pip install -c constraints.txt -e ".[test,docs]"': "installs",
    "pre-commit install": "installs",
    "python tasks.py check": "runs all tests",
    "colure demo": "tests/endtoend/test_demo.py",
    "colure simulate my-range --serial-axes": "serves until it is stopped; tests/app/test_own_positioner.py",
    "colure serve my-campaign": "serves until it is stopped; tests/browser",
    "colure acquire my-campaign": "asks a person; the tutorial acknowledges with --yes",
    "colure acquire my-campaign --run quick --until gain_dbi=0.3,beamwidth_e_deg=0.5": "asks a person; tests/app/services/test_stopping.py",
    "colure beam my-campaign": "asks a person; tests/analysis/setup/test_beam_search.py",
    "colure verify my-campaign limits.toml --against golden.nc": "asks a person; tests/app/services/test_verifying.py",
    "colure verify my-campaign limits.toml --against good-unit --against-run first": (
        "asks a person; tests/app/services/test_verifying.py"
    ),
    "colure geometry my-range --run first --apply": (
        "needs a finished whole sphere; tests/app/services/test_applied_geometry.py and benchmarks/geometry.py"
    ),
    "colure geometry my-arm --run first --to geometry.toml": (
        "needs a finished run on a mount with joints; tests/app/test_joint_geometry.py"
    ),
    "colure report my-campaign": "the tutorial writes one, with a specification",
    "colure acquire my-horn": "asks a person, and a scan " + LONG + "a record stands in for it",
    "colure acquire my-patch": "asks a person; a record stands in for it",
    "colure acquire my-patch --run power": "asks a person, and needs a power meter; a record stands in for it",
    "colure acquire my-sensor": "asks a person, who moves the probe; a record stands in for it",
    "colure acquire my-beams": "asks a person, and needs a device that is switched; a record stands in for it",
    "colure acquire my-array": "asks a person, and needs an array that takes commands; a record stands in for it",
    "colure rehearse my-horn --draws 25": LONG + "tests/app/services/test_rehearse.py",
    "colure report my-campaign --sign laboratory.p12 --passphrase-file passphrase.txt": (
        "needs a key; tests/report/test_laboratory.py"
    ),
    "colure series my-campaign jan feb mar apr may jun jul aug sep --control check.pdf --baseline 8": (
        "needs nine months; tests/app/services/test_control.py"
    ),
    "colure cut my-campaign --phi 0 --run h-plane --yes": "measure-one-cut.md does so with a range of theta",
    "colure process my-campaign --scheduler local --workers 2": "tests/app/scale/test_pieces.py",
    "colure process --amplitude-only near-1.nc near-2.nc far.nc --start design.nc --size-mm 12,14,0.5": (
        "tests/app/services/test_amplitude_only.py"
    ),
}


def plain(line: str) -> str:
    """Return a command line without its comment and its spaces."""
    return re.sub(r"\s+#.*$", "", line).strip()


def lines_of(text: str) -> list[str]:
    """Return the command lines in a page's fences, one a command."""
    blocks = [body for kind, body in FENCE.findall(text) if kind in ("sh", "console")]
    return [part.strip() for body in blocks for line in body.splitlines() for part in plain(line).split(" && ") if part]


def parse(line: str) -> None:
    """Let the command line's own parser read a line; raises as it does, and says so if there is no such command."""
    words = shlex.split(line, comments=True)
    assert words[0] == "colure", line
    assert words[1] in main.commands, f"{line}: there is no such command"
    try:
        main.commands[words[1]].make_context(words[1], words[2:])
    except click.BadParameter as error:
        if "does not exist" not in error.message:  # a file that only the reader has
            raise


def unknown_words(line: str) -> set[str]:
    """Return the command and the options of a line in running text that do not exist; values and places are not looked at."""
    name, *rest = line.split()
    if name not in main.commands:
        return {name}
    known = {word for one in main.commands[name].params for word in (*one.opts, *one.secondary_opts)} | {"--help"}
    return {word.split("=")[0] for word in rest if re.match(r"--?[a-z]", word)} - known
