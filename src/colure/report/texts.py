"""Every sentence of the short report and of the laboratory's particulars, in each language; units and symbols stay as they are."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from importlib import resources
from typing import Final

from colure.report.numerals import numerals

LANGUAGES: Final = ("en", "de", "fr", "es")


def catalogue() -> dict[str, dict[str, str]]:
    """Return every key with its text in each language."""
    file = resources.files("colure.report") / "templates" / "texts.toml"
    texts: dict[str, dict[str, str]] = tomllib.loads(file.read_text(encoding="utf-8"))
    return texts


@dataclass(frozen=True)
class Texts:
    """The catalogue in one language."""

    language: str
    entries: dict[str, dict[str, str]]

    @classmethod
    def of(cls, language: str) -> Texts:
        """Return the texts of a language; raises KeyError for one that there is none of."""
        if language not in LANGUAGES:
            raise KeyError(f"language {language!r}: must be one of {', '.join(LANGUAGES)}")
        return cls(language, catalogue())

    def __call__(self, key: str, **values: object) -> str:
        """Return a text with its values filled in; raises KeyError where the catalogue lacks it."""
        return self.entries[key][self.language].format(**values)

    def numeral(self, text: str) -> str:
        """Return a value without words, its numbers as the language writes them."""
        return numerals(text, self.language)

    def band(self, low_ghz: str, high_ghz: str, count: int) -> str:
        """Return the frequencies of a report in words: ends in GHz as they are printed, and their number."""
        low, high = self.numeral(low_ghz), self.numeral(high_ghz)
        return self("band_one", frequency=low) if count == 1 else self("band", low=low, high=high, count=count)

    def label(self, name: str, label: str) -> str:
        """Return a figure's label; the program's own where the catalogue holds none (it is English then)."""
        key = f"figure_{name}"
        return self.entries[key][self.language] if key in self.entries else label

    def term(self, name: str) -> str:
        """Return what a budget term is called; the program's own word where the catalogue lacks it."""
        key = f"term_{name.replace(' ', '_')}"
        return self.entries[key][self.language] if key in self.entries else name

    def knows(self, name: str) -> bool:
        """Tell whether a figure's label is in the catalogue."""
        return f"figure_{name}" in self.entries
