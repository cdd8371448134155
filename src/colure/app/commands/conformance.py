"""`colure conformance`: whether an instrument and its profile fit."""

from __future__ import annotations

import sys
from pathlib import Path

import click

from colure.model.strict_json import json_text


@click.command()
@click.argument("profile_name", metavar="PROFILE")
@click.option("--resource", required=True, help="Where the instrument answers: host:port, /dev/ttyUSB0, a VISA name.")
@click.option("--folder", type=click.Path(path_type=Path), default=Path(), help="Where PROFILE.toml lies.")
@click.option(
    "--move", "move_deg", type=click.FloatRange(0, 90), default=0.0, help="Turn every axis by this and back, deg."
)
@click.option("--yes", is_flag=True, help="Everyone is clear of the axes; do not ask (for scripts).")
@click.option("--start-ghz", type=click.FloatRange(1e-6, 1100), default=1.0, show_default=True)
@click.option("--stop-ghz", type=click.FloatRange(1e-6, 1100), default=2.0, show_default=True)
@click.option("--power-dbm", type=click.FloatRange(-60, 30), default=-20.0, show_default=True)
@click.option("--timeout-s", type=click.FloatRange(0.1, 600), default=5.0, show_default=True)
@click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of a table.")
def conformance(
    profile_name: str, resource: str, folder: Path, move_deg: float, yes: bool, start_ghz: float, stop_ghz: float,
    power_dbm: float, timeout_s: float, as_json: bool,
) -> None:  # fmt: skip
    """Ask an instrument everything that a run will ask: identity, times, hold and release, error queue; and say what is missing.

    Nothing moves without --move. Exit code 1: something is not as it must be.

    \b
    Examples:
      colure conformance my-controller --resource /dev/ttyUSB0 --move 5
      colure conformance scpi-analyzer --resource 192.0.2.10:5025 --start-ghz 24 --stop-ghz 24.2
    """
    from colure.acquire.clocks import SystemClock
    from colure.acquire.locks import hold_resource
    from colure.errors import InputError, InstrumentError, LockedError
    from colure.instruments.conformance import analyzer_conformance, axes_conformance
    from colure.instruments.profile import analyzer_profile, axes_profile, profile_path
    from colure.instruments.protocols import SweepSettings
    from colure.model.loading import read_toml

    receiver = str(read_toml(profile_path(profile_name, folder)).get("kind", "")).startswith("scpi")
    if (
        move_deg
        and not yes
        and not (
            sys.stdin.isatty()
            and click.confirm(f"Every axis turns by {move_deg:g} deg and back. Everyone is clear of the axes?")
        )
    ):
        raise InputError(["--move: not acknowledged: must be acknowledged with --yes before anything moves"])
    if receiver:
        settings = SweepSettings(1e9 * start_ghz, 1e9 * stop_ghz, 11, 1000.0, power_dbm)
        words = analyzer_profile(profile_name, folder)
        answers = analyzer_conformance(words, resource, settings, timeout_s=timeout_s)
    else:
        try:
            lock = hold_resource(resource)
        except LockedError as error:
            raise InstrumentError(str(error)) from None
        with lock:
            axes = axes_profile(profile_name, folder)
            answers = axes_conformance(axes, resource, timeout_s=timeout_s, timer=SystemClock(), move_deg=move_deg)
    if as_json:
        click.echo(json_text([answer.__dict__ for answer in answers]))
    else:
        for answer in answers:
            mark = {True: "yes", False: "NO", None: "-"}[answer.good]
            click.echo(f"{mark:<4}{answer.what:<28} {answer.found}")
    sys.exit(1 if any(answer.good is False for answer in answers) else 0)
