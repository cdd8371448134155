"""A composed report in another language: every text is looked up in the catalogue by its English wording.

Sections are written in English. An entry of `templates/full.toml` holds the same sentence in all languages; words in braces stand for
numbers, names, or other texts of the catalogue. What no entry fits stays English, and the translation keeps count of it.
"""

from __future__ import annotations

import re
import tomllib
from dataclasses import dataclass, field, replace
from functools import cache, lru_cache
from importlib import resources
from textwrap import fill
from typing import TYPE_CHECKING, Final

from colure.report.document import Block, Cell, Chart, Document, FileLink, Paragraph, Ref, ReportSection, Side, Table
from colure.report.numerals import numerals
from colure.report.spoken import pictures_in
from colure.report.texts import catalogue

if TYPE_CHECKING:
    from collections.abc import Callable

    from colure.report.particulars import Particulars

_FIELD: Final = re.compile(r"\{(\w+)\}")
#: Words of three letters or more that are units, symbols or names of the trade in every language.
_NO_WORDS: Final = frozenset(
    [
        "deg",
        "dbi",
        "dbm",
        "dbd",
        "dbic",
        "ghz",
        "mhz",
        "sin",
        "cos",
        "netcdf",
        "sha",
        "chi",
        "psi",
        "phi",
        "ref",
        "root",
        "rms",
        "mode",
        "nan",
        "ludwig",
        "ilac",
        "jcgm",
        "ieee",
        "std",
        "gpp",
        "annex",
    ]
)
#: Fields that hold a name, a formula or an address: they stay as they are.
_NAMES: Final = frozenset(("name", "formula", "file", "hash", "place", "parts", "scheme", "slices"))
#: The catalogue's files, beside those texts that the short report has by key.
CATALOGUE: Final = ("full.toml", "sentences.toml", "files.toml")
#: Texts within texts within texts.
DEEPEST: Final = 6
_WORD: Final = re.compile(r"[A-Za-z]{3,}|\b(?:of|to|is|at|in)\b")


def full_texts() -> list[dict[str, str]]:
    """Return the full report's texts, each in every language."""
    folder = resources.files("colure.report") / "templates"
    texts: list[dict[str, str]] = []
    for name in CATALOGUE:
        texts += tomllib.loads((folder / name).read_text(encoding="utf-8"))["text"]
    return texts


@dataclass(frozen=True)
class _TranslatedTerm:
    """One text: what it looks like in English, with its fields by name, its longest piece without one, and every language's wording."""

    pattern: re.Pattern[str]
    longest: str
    wordings: dict[str, str]


@cache
def _entries() -> tuple[dict[str, dict[str, str]], tuple[_TranslatedTerm, ...]]:
    """Return the texts without fields by their English wording, and those with fields, the longest first."""
    every = [*full_texts(), *catalogue().values()]
    plain = {one["en"]: one for one in reversed(every) if not _FIELD.search(one["en"])}
    patterned = sorted(
        (one for one in every if _FIELD.search(one["en"])), key=lambda one: -len(_FIELD.sub("", one["en"]))
    )
    return plain, tuple(_TranslatedTerm(_pattern(one["en"]), _longest(one["en"]), one) for one in patterned)


def _longest(text: str) -> str:
    """Return the longest piece between fields: a text without it needs no look at the whole pattern."""
    return max(_FIELD.sub("\0", text).split("\0"), key=len)


def _pattern(text: str) -> re.Pattern[str]:
    parts, at = [], 0
    for placeholder in _FIELD.finditer(text):
        parts += [re.escape(text[at : placeholder.start()]), f"(?P<{placeholder[1]}>.+?)"]
        at = placeholder.end()
    return re.compile("".join([*parts, re.escape(text[at:])]))


@lru_cache(maxsize=4096)
def has_words(text: str) -> bool:
    """Tell whether a text says anything beyond numbers, units, symbols and names of files and standards."""
    left = re.sub(r"[\w-]+\.(?:nc|toml|json|sqlite|csv|pdf)\b|\b[0-9a-f]{12,}\b", "", text)
    return any(word.lower() not in _NO_WORDS for word in _WORD.findall(left))


def _filled(wording: str, values: dict[str, str]) -> str:
    return _FIELD.sub(lambda name: values[name[1]], wording)


@dataclass
class Translation:
    """Texts of one language.

    left
        What no entry fitted and stays English, in the order in which it came up.
    """

    language: str
    left: list[str] = field(default_factory=list)
    _known: dict[tuple[str, int], str | None] = field(default_factory=dict, repr=False)
    #: The depth at which a text was not found; it is not found deeper either.
    _unknown: dict[str, int] = field(default_factory=dict, repr=False)

    def __call__(self, text: str) -> str:
        """Return a text in the language; itself, kept in `left`, if the catalogue holds none like it."""
        if self.language == "en":
            return text
        if not has_words(text):
            return numerals(text, self.language)
        joined = " ".join(text.split())
        wording = self._found(joined) or self._value(joined, 0)
        if wording is None:
            self.left.append(text)
            return text
        return fill(wording, max(len(line) for line in text.splitlines())) if "\n" in text else wording

    def _found(self, text: str, depth: int = 0) -> str | None:
        """Return the translation; None if the catalogue holds none, or none of what stands in one of its fields."""
        if depth >= self._unknown.get(text, DEEPEST + 2):
            return None
        key = text, depth
        if key not in self._known:
            self._known[key] = self._looked_up(text, depth)
            if self._known[key] is None:
                self._unknown[text] = depth
        return self._known[key]

    def _looked_up(self, text: str, depth: int) -> str | None:
        plain, patterned = _entries()
        if text in plain:
            return plain[text][self.language]
        if depth > DEEPEST:
            return None
        for one in patterned:
            if one.longest not in text or (match := one.pattern.fullmatch(text)) is None:
                continue
            values = {
                name: value if name in _NAMES else self._value(value, depth + 1)
                for name, value in match.groupdict().items()
            }
            known = {name: value for name, value in values.items() if value is not None}
            if len(known) == len(values):
                return _filled(one.wordings[self.language], known)
        return None

    def _value(self, text: str, depth: int) -> str | None:
        """Return what stands in a field: a text of the catalogue, a list of such, or a value without words; None if none of them."""
        for mark in ("", "; ", ", "):
            pieces = [self._piece(one, depth) for one in (text.split(mark) if mark else [text])]
            known = [one for one in pieces if one is not None]
            if len(known) == len(pieces):
                return mark.join(known)
        return None

    def _piece(self, text: str, depth: int) -> str | None:
        """Return one text of a list, which may begin small and may have its value behind it."""
        if not has_words(text):
            return numerals(text, self.language)
        for one in (text, text[0].upper() + text[1:]):
            if (wording := self._found(one, depth)) is not None:
                return wording
            if (wording := self._found(f"{one}.", depth)) is not None:
                return wording.removesuffix(".")
            split = re.fullmatch(r"(.*[^\s\d.,\u00b1+-])\s+([-+]?\d.*)", one)
            if split is not None and not has_words(split[2]) and (wording := self._found(split[1], depth)) is not None:
                return f"{wording} {numerals(split[2], self.language)}"
        return None

    def document(self, document: Document, *, kept: frozenset[str]) -> Document:
        """Return a report in the language; on its first page stands which sections hold English.

        kept
            Titles of sections that are in the language already.
        """
        answer = tuple(self(text) for text in document.answer)
        page_one = bool(self.left)
        sections, english = [], []
        for section in document.sections:
            if section.title in kept:
                sections.append(section)
                continue
            before = len(self.left)
            sections.append(self._section(section))
            if len(self.left) > before:
                english.append(sections[-1].title)
        said = _cautions(self.language) if page_one else ""
        parts = ", ".join(one for one in (said, *dict.fromkeys(english)) if one)
        told = (self._found(f"In English in this report: {parts}.") or parts,) if parts else ()
        return replace(document, answer=(*answer, *told), sections=tuple(sections))

    def _section(self, section: ReportSection) -> ReportSection:
        return ReportSection(self(section.title), tuple(self._block(block) for block in section.blocks))

    def _block(self, block: Block) -> Block:
        if isinstance(block, Paragraph):
            return Paragraph(self(block.text))
        if isinstance(block, Table):
            rows = (
                block.rows if block.verbatim else tuple(tuple(self._cell(cell) for cell in row) for row in block.rows)
            )
            header = tuple(self._cell(cell) for cell in block.header)
            return replace(block, header=header, rows=rows, caption=self(block.caption))
        if isinstance(block, FileLink):
            return replace(block, name=self(block.name), note=self(block.note))
        if isinstance(block, Side):
            return Side(tuple(self._chart(one) for one in block.charts))
        return self._chart(block)

    def _chart(self, chart: Chart) -> Chart:
        return replace(chart, caption=self(chart.caption))

    def _cell(self, cell: Cell) -> Cell:
        return Ref(self(cell.text), cell.anchor) if isinstance(cell, Ref) else self(cell)


def composed_in(one: Particulars, compose: Callable[[], Document]) -> Document:
    """Compose a report in the language that its particulars name, pictures included; the particulars are in it already."""
    kept = frozenset(one.say(key) for key in ("particulars", "equipment", "statements"))
    return written_in(one.settings.language, lambda: one.framed(compose()), kept=kept)


def written_in(language: str, compose: Callable[[], Document], *, kept: frozenset[str] = frozenset()) -> Document:
    """Compose a report in a language, pictures included.

    kept
        Titles of sections that are in the language already.
    """
    if language == "en":
        return compose()
    speak = Translation(language)
    with pictures_in(speak):
        document = compose()
    return speak.document(document, kept=kept)


def _cautions(language: str) -> str:
    return {
        "en": "cautions",
        "de": "Warnungen auf dieser Seite",
        "fr": "avertissements de cette page",
        "es": "avisos de esta página",
    }[language]
