"""How long sentences are: words a sentence, counted alike in pages, reports and findings."""

from __future__ import annotations

import re

#: Words a sentence on the average (the project's own rule for plain words).
MOST_WORDS = 18.0
_WORD = re.compile(r"[A-Za-z\u00c0-\u024f][\w\u00c0-\u024f'/-]*")


def sentences(text: str) -> list[str]:
    """Return the sentences of running text: what ends in a stop, a question mark or a colon at the end of a line."""
    joined = re.sub(r"\s+", " ", text)
    found = re.split(r"(?<=[.!?;:])\s+(?=[A-Z\u00c0-\u00de`\"(])", joined)
    return [one for one in found if len(_WORD.findall(one)) >= 3]


def mean_words(every: list[str]) -> float:
    """Return the mean number of words of sentences."""
    counts = [len(_WORD.findall(one)) for one in every]
    return sum(counts) / max(1, len(counts))


def prose(markdown: str) -> list[str]:
    """Return the sentences of a page without its code, tables, headings and lists of links."""
    text = re.sub(r"^```.*?^```", "", markdown, flags=re.DOTALL | re.MULTILINE)
    kept = [line for line in text.splitlines() if not re.match(r"\s*(#|\||!\[|\?\?\?|<)", line)]
    blocks = re.split(r"\n\s*\n|\n(?=\s*[-*\d]+[.]? )", "\n".join(kept))
    return [one for block in blocks for one in sentences(re.sub(r"[`*\[\]]|\(\S+\.md\S*\)", "", block))]
