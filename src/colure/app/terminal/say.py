"""The one way in which a command says a line: what stands in foreign files or came from an instrument does nothing to a terminal."""

from __future__ import annotations

import click

from colure.values import printable


def say(text: object, *, err: bool = False) -> None:
    """Print a text with its control characters, and the marks that turn the writing, as `?`; line ends stay."""
    click.echo(printable(str(text)), err=err)
