"""Terms of the trade that the texts use, found in the texts themselves, and the glossary in which each must be."""

from __future__ import annotations

import re
from collections.abc import Iterable
from pathlib import Path

from colure.analysis.uncertainty.causes import CAUSES, MISSING
from colure.model.definitions import definitions_for
from colure.model.evaluation import Evaluation
from colure.report.texts import catalogue
from colure.report.translation import full_texts
from tests.docs.commands import DOCS, PAGES, ROOT

GLOSSARY = DOCS / "lookup" / "glossary.md"
#: Entries of IEEE Std 145-2013 as public lists of its contents name them; those that a text uses must be in the glossary.
IEEE_145 = (
    "accepted power", "aperture", "available power", "axial ratio", "beamwidth", "boresight", "co-polar", "cross-polar", "directivity",
    "E plane", "effective isotropic radiated power", "far field", "front-to-back ratio", "half-power beamwidth", "H plane",
    "isotropic radiator", "main lobe", "major axis", "near field", "null", "partial gain", "phase centre", "polarization ellipse",
    "radiation efficiency", "radiation intensity", "realized gain", "return loss", "side lobe", "squint", "total efficiency",
)  # fmt: skip
#: Terms of measuring and of spherical waves that are looked up where a text uses them.
MEASURING = (
    "absorber", "back lobe", "boresight check", "budget", "coverage factor", "degree", "device under test", "direction cosines", "drift",
    "echo", "expanded uncertainty", "gain transfer", "guard band", "mismatch", "mode filter", "noise figure", "one-port", "order",
    "probe correction", "quiet zone", "range length", "reflection", "sensitivity", "settle", "standing wave", "step and settle",
    "substitution", "sweep", "taper", "tie", "time gate", "transform", "truncation", "uv map", "VSWR",
)  # fmt: skip
#: Abbreviations that every reader of a screen knows: of computing, files and documents' numbers; and words in capitals that stress.
COMMON = frozenset(
    [
        "AA",
        "API",
        "ASCII",
        "CI",
        "CRC",
        "CSV",
        "CPU",
        "EPICS",
        "FORK",
        "GPIB",
        "GPL",
        "HDF",
        "HDF5",
        "HTML",
        "HTTP",
        "HTTPS",
        "ICNIRP",
        "ID",
        "IEC",
        "IEEE",
        "IET",
        "ILAC",
        "INCOMPLETE",
        "ISO",
        "ITU",
        "JCGM",
        "JPEG",
        "JSON",
        "KB",
        "LAN",
        "LXI",
        "MATLAB",
        "MODBUS",
        "MORE",
        "NIST",
        "NO",
        "NOT",
        "NSMA",
        "PATH",
        "PDF",
        "PKCS",
        "PNG",
        "PVA",
        "PYTHONPATH",
        "RAM",
        "REGULAR",
        "README",
        "RS",
        "SCPI",
        "SHA",
        "SIGINT",
        "SQL",
        "STOP",
        "SVG",
        "TCP",
        "TCPIP",
        "TOML",
        "TR",
        "TS",
        "TXT",
        "UDP",
        "URL",
        "USB",
        "UTC",
        "UTF",
        "VISA",
        "VPN",
        "WCAG",
        "DECIDABLE",
        "FAIL",
        "FILE",
        "INCLUDED",
        "ON",
        "OVERDUE",
        "PASS",
        "SOURCE",
        "STAYS",
        "WIP",
        "XML",
        "YAML",
        "ZIP",
    ]
)
_ABBREVIATION = re.compile(r"(?<![\w./-])[A-Z][A-Z0-9]+(?![\w/.-]*\w*\.[a-z])\b(?![/_(])")


def prose(text: str) -> str:
    """Return a page without its code, paths and links."""
    text = re.sub(r"^```.*?^```", "", text, flags=re.DOTALL | re.MULTILINE)
    return re.sub(r"`[^`]*`|\]\([^)]*\)|<[^>]+>", " ", text)


def texts() -> dict[str, str]:
    """Return every text by its name: pages, README, report, and what plans and findings say."""
    found = {
        str(page.relative_to(ROOT)): prose(page.read_text(encoding="utf-8"))
        for page in (*PAGES, ROOT / "README.md")
        if page != GLOSSARY
    }
    found["report"] = "\n".join(re.sub(r"\{\w+\}", " ", one["en"]) for one in (*full_texts(), *catalogue().values()))
    for folder in (
        "analysis/findings",
        "planning",
        "app/services/plan_words.py",
        "app/services/cautions.py",
        "app/services/flight_words.py",
    ):
        found[folder] = "\n".join(_literals(ROOT / "src" / "colure" / folder))
    return found


def _literals(place: Path) -> Iterable[str]:
    """Return what a module or a folder of modules says: its strings with several words, not its docstrings."""
    import ast

    for module in sorted(place.glob("*.py")) if place.is_dir() else [place]:
        tree = ast.parse(module.read_text(encoding="utf-8"))
        said = {id(node.value) for node in ast.walk(tree) if isinstance(node, ast.Expr)}
        for node in ast.walk(tree):
            if (
                isinstance(node, ast.Constant)
                and isinstance(node.value, str)
                and id(node) not in said
                and node.value.count(" ") > 2
            ):
                yield node.value


def glossary() -> str:
    """Return the glossary's terms, each between bars, in small letters."""
    rows = re.findall(r"^\| ([^|]+) \|", GLOSSARY.read_text(encoding="utf-8"), re.MULTILINE)
    return "|" + "|".join(part.strip().lower() for row in rows for part in re.split(r",|\(|\)", row)) + "|"


def defined(term: str, known: str) -> bool:
    """Tell whether the glossary has a term, or its singular."""
    small = term.lower()
    return any(f"|{one}|" in known for one in (small, small.removesuffix("s"), small.removesuffix("es")))


def abbreviations(text: str) -> set[str]:
    """Return a text's abbreviations that are not common ones."""
    return {one for one in _ABBREVIATION.findall(text) if not re.fullmatch(r"[A-Z]?\d+|[A-Z]\d", one)} - COMMON


def used(text: str, terms: Iterable[str]) -> set[str]:
    """Return the terms that a text uses as words."""
    return {
        one
        for one in terms
        if re.search(rf"(?<![\w-]){re.escape(one)}s?(?![\w-])", text, 0 if one[0].isupper() else re.IGNORECASE)
    }


def figures() -> set[str]:
    """Return the names of all figures."""
    every = Evaluation.model_validate({
        "components": ["circular"], "cone_deg": 20.0, "horizon_bands_deg": [15.0], "transmit_power_dbm": 10.0, "sensitivity_dbm": -90.0,
        "reference_axis_deg": [0.0, 0.0],
    })  # fmt: skip
    return {
        one.label for one in definitions_for(every, band=True, reflection=True, hands=True, reflection_measured=True)
    }


def headed(label: str, known: str) -> bool:
    """Tell whether a figure's name holds a term of the glossary of two words, or one that is the whole of its first part."""
    terms = [one for one in known.strip("|").split("|") if one]
    return any(re.search(rf"(?<![\w-]){re.escape(one)}(?![\w-])", label.lower()) for one in terms if len(one) > 3)


def causes() -> set[str]:
    """Return the names of all causes in a budget, without their details."""
    return {one.group or one.key for one in CAUSES} | set(MISSING)


def undefined(found: dict[str, str], known: str) -> dict[str, set[str]]:
    """Return the terms that a text uses and the glossary lacks, by text."""
    out = {name: abbreviations(text) | used(text, (*IEEE_145, *MEASURING)) for name, text in found.items()}
    out = {name: {one for one in terms if not defined(one, known)} for name, terms in out.items()}
    return {name: terms for name, terms in out.items() if terms}
