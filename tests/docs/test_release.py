"""One version everywhere, and a changelog in the form that it says it has."""

from __future__ import annotations

import re
import tomllib
from pathlib import Path

import colure

ROOT = Path(__file__).parents[2]
CHANGELOG = (ROOT / "CHANGELOG.md").read_text(encoding="utf-8")


def test_one_version_everywhere():
    packaged = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]["version"]
    cited = re.search(r"^version: *[\"']?([0-9.]+)", (ROOT / "CITATION.cff").read_text(encoding="utf-8"), re.MULTILINE)
    newest = re.search(r"^## ([0-9.]+) \((unreleased|[0-9]{4}-[0-9]{2}-[0-9]{2})\)$", CHANGELOG, re.MULTILINE)
    assert cited[1] == newest[1] == packaged == colure.__version__


def test_the_changelog_has_its_sections():
    """Keep a Changelog 1.1: every version has some of six kinds of changes, each once."""
    versions = re.split(r"^## ", CHANGELOG, flags=re.MULTILINE)[1:]
    assert versions
    for version in versions:
        kinds = re.findall(r"^### (.+)$", version, re.MULTILINE)
        assert kinds and len(kinds) == len(set(kinds))
        assert set(kinds) <= {"Added", "Changed", "Deprecated", "Removed", "Fixed", "Security"}
