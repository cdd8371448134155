"""Numbers as a language writes them: decimal comma, groups of three digits, minus sign; English stays as the program writes it.

What is no number stays as it is: names with digits in them, dates, versions, files, clauses of standards.
"""

from __future__ import annotations

import re
from typing import Final

#: Languages with a decimal comma.
COMMA: Final = frozenset(("de", "fr", "es"))
#: Whole parts of so many digits are set in groups of three, apart by a narrow space that does not break (ISO 80000-1:2009, 7.3.1).
LEAST_GROUPED: Final = 5
NARROW_SPACE, MINUS = "\u202f", "\u2212"
#: A text that cites one of these holds numbers of clauses and editions.
_STANDARD: Final = re.compile(r"\b(?:ISO|IEC|IEEE|JCGM|ILAC|3GPP|ETSI|ITU|NIST|EN)\b")
#: A number that stands alone: not a part of a name, of a date, or of a version.
_NUMBER: Final = re.compile(
    r"(?:(?<![^\s(/\[<=\u00b1])(?P<sign>-))?(?<![\w.,:#])(?<![A-Za-z]-)(?P<whole>\d+)(?:\.(?P<part>\d+))?(?P<power>e[-+]?\d+)?(?!\.?\d|\w|:\d)"
)


def numerals(text: str, language: str) -> str:
    """Return a text without words (a value, an interval, a list of such) with its numbers as the language writes them."""
    if language not in COMMA or _STANDARD.search(text):
        return text
    return _NUMBER.sub(_written, text)


def _written(number: re.Match[str]) -> str:
    whole, part, power = number["whole"], number["part"], number["power"] or ""
    if len(whole) >= LEAST_GROUPED and not whole.startswith("0"):
        whole = f"{int(whole):,}".replace(",", NARROW_SPACE)
    return f"{MINUS if number['sign'] else ''}{whole}{'' if part is None else f',{part}'}{power}"
