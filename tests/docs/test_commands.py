"""Every command that a page, an example or a help text names exists, with the options that it is given."""

from __future__ import annotations

import re

import click
import pytest

from colure.app.cli import main
from tests.docs.commands import FENCE, INLINE, NOT_RUN, ROOT, WITH_COMMANDS, lines_of, parse, unknown_words

READ = {page: page.read_text(encoding="utf-8") for page in WITH_COMMANDS}


@pytest.mark.parametrize("page", READ, ids=lambda page: page.stem)
def test_commands_of_a_page_parse(page):
    for line in lines_of(READ[page]):
        if line.startswith("colure "):
            parse(line)
        else:
            assert line in NOT_RUN, f"{page.name}: {line}: neither of colure nor declared as not run"
    for line in INLINE.findall(READ[page]):
        assert not unknown_words(line), f"{page.name}: colure {line}: no {', '.join(unknown_words(line))}"


def test_no_command_hides_in_a_fence_that_nobody_reads():
    for page, text in READ.items():
        for kind, body in FENCE.findall(text):
            assert kind, f"{page.name}: a fence without a kind: {body[:40]}"
            if kind not in ("sh", "console"):
                assert not re.search(r"^colure [a-z-]+", body, re.MULTILINE) or kind == "text", page.name


@pytest.mark.parametrize("name", sorted(main.commands))
def test_examples_of_the_help_parse(name):
    text = main.commands[name].help or ""
    examples = re.findall(r"(?:Examples?:)?\s*(colure [a-z-]+ ?[^\n]*)", text[text.index("Example") :])
    assert examples
    for line in examples:
        parse(line.split("   ")[0])


def test_what_is_said_not_to_run_is_still_there_and_its_test_too():
    every = {line for text in READ.values() for line in lines_of(text)}
    for line, reason in NOT_RUN.items():
        assert line in every, f"{line}: no page says so any more"
        for path in re.findall(r"tests/\S+", reason):
            assert (ROOT / path).exists(), path


def test_a_wrong_option_or_command_is_found():
    with pytest.raises(click.NoSuchOption):
        parse("colure compare my-campaign --run covered --with first")
    with pytest.raises(AssertionError, match="no such command"):
        parse("colure measure my-campaign")
    assert unknown_words("three-antenna --distance-m 1.2") == {"--distance-m"}
