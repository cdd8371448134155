"""Sentences of the user's pages are short on the average; decisions are for those who change the program."""

from __future__ import annotations

from tests.docs.commands import PAGES
from tests.report.readability import MOST_WORDS, mean_words, prose


def test_sentences_of_the_pages_are_short():
    every = [one for page in PAGES for one in prose(page.read_text(encoding="utf-8"))]
    assert len(every) > 300
    assert mean_words(every) <= MOST_WORDS


def test_the_count_itself():
    text = "Colure measures. It is the one that turns, and the other one does not!\n\n```sh\ncolure plan x\n```\n\n| a | b |\n"
    assert prose(text) == ["It is the one that turns, and the other one does not!"]
    assert mean_words(prose(text)) == 12.0
