"""Numbers of the command line are finite: `nan` compares with no limit, so every range would let it pass."""

from __future__ import annotations

import click
import pytest
from click.testing import CliRunner

from colure.app.cli import main
from colure.app.commands.numbers import FiniteNumber, FiniteRange


def options(group, way=()):
    for name, command in group.commands.items():
        if isinstance(command, click.Group):
            yield from options(command, (*way, name))
        else:
            yield from ((*way, name, one) for one in command.params)


def test_every_number_of_every_command_is_a_finite_one():
    numbers = [one for one in options(main) if isinstance(one[-1].type, click.types.FloatParamType)]
    bare = [(*way, one.name) for *way, one in numbers if not isinstance(one.type, (FiniteNumber, FiniteRange))]
    assert len(numbers) > 40 and not bare


@pytest.mark.parametrize("value", ["nan", "inf", "-inf", "1e999"])
@pytest.mark.parametrize(
    "words", [("process", "near.csv", "far.nc", "--keep-radius-m"), ("plot", "far.nc", "a.png", "--frequency-ghz")]
)
def test_what_is_no_number_is_refused(words, value, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    result = CliRunner().invoke(main, [*words[:-1], f"{words[-1]}={value}"])
    assert (
        result.exit_code == 2
        and words[-1] in result.output
        and value.replace("1e999", "inf")[:3] in result.output.lower().replace("1e999", "inf")
    )
