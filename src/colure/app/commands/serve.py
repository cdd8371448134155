"""`colure serve`: the control room in the browser."""

from __future__ import annotations

from pathlib import Path

import click

from colure.app.terminal.say import say

DEFAULT_PORT = 8024
LOOPBACK = ("127.0.0.1", "::1")


@click.command()
@click.argument("folders", nargs=-1, type=click.Path(path_type=Path))
@click.option(
    "--port", type=click.IntRange(0, 65535), default=DEFAULT_PORT, show_default=True, help="0 takes a free one."
)
@click.option(
    "--host", default="127.0.0.1", show_default=True, help="Address to listen on; others than this computer's need TLS."
)
@click.option("--certificate", type=click.Path(path_type=Path, dir_okay=False), help="TLS certificate (PEM).")
@click.option("--key", type=click.Path(path_type=Path, dir_okay=False), help="Its private key (PEM).")
@click.option("--role", type=click.Choice(["view", "operate", "configure"]), default="configure", show_default=True,
              help="What the printed link lets its session do.")  # fmt: skip
def serve(
    folders: tuple[Path, ...], port: int, host: str, certificate: Path | None, key: Path | None, role: str
) -> None:
    """Open the control room of one or more campaign folders (the current one by default).

    Prints a link that opens one session in a browser on this computer; from there further sessions can be invited.
    Ending it with Ctrl-C, or losing it, brakes a scan that runs and leaves it to be resumed.

    \b
    Example: colure serve my-campaign
    """
    from colure.errors import InputError
    from colure.model.campaign import Campaign

    chosen = list(folders) or [Path()]
    for folder in chosen:
        Campaign.load(folder)
    if host not in LOOPBACK and (certificate is None or key is None):
        raise InputError([f"--host = {host}: must be {' or '.join(LOOPBACK)} without --certificate and --key: "
                          f"what moves motors is not offered to a network in the clear"])  # fmt: skip
    for name, path in (("certificate", certificate), ("key", key)):
        if path is not None and not path.is_file():
            raise InputError([f"--{name} = {path}: there is no such file"])
    try:
        from colure.app.web.guard.roles import SessionRole
        from colure.app.web.server import serve as run
    except ModuleNotFoundError as error:
        raise InputError([f"serve: {error.name} is missing; install it with: pip install 'colure[web]'"]) from None
    try:
        run(
            chosen,
            port=port,
            host=host,
            certificate=certificate,
            key=key,
            role=SessionRole[role.upper()],
            announce=_announce,
        )
    except OSError as error:
        raise InputError([f"--port = {port}: {error.strerror}; choose another one"]) from None


def _announce(link: str) -> None:
    say("Open this link once, in a browser on this computer:")
    say(f"  {link}")
    say("Ctrl-C ends the control room; a scan that runs is braked and can be resumed.")
