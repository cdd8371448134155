"""`colure conformance`: whether an instrument and its profile fit."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from contextlib import contextmanager, nullcontext
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from colure.app.commands.numbers import FiniteRange
from colure.app.terminal.say import say
from colure.model.strict_json import json_text

if TYPE_CHECKING:
    from colure.instruments.conformance import ConformanceAnswer


ROLES = ("receiver", "axis-controller", "source", "switch", "interlock", "state", "sensor")


@click.command()
@click.argument("profile_name", metavar="PROFILE")
@click.option("--resource", required=True, help="Where the instrument answers: host:port, /dev/ttyUSB0, a VISA name.")
@click.option("--role", type=click.Choice(ROLES), help="What a driver of another package (driver:NAME) is to do.")
@click.option("--folder", type=click.Path(path_type=Path), default=Path(), help="Where PROFILE.toml lies.")
@click.option("--move", "move_deg", type=FiniteRange(0, 90), default=0.0, help="Turn every axis by this and back, deg.")
@click.option(
    "--axes",
    default="",
    metavar="NAMES",
    help="Axes that the controller turns: azimuth,roll. All of the profile; a driver: azimuth,roll.",
)
@click.option("--states", default="", metavar="NAMES", help="Device states to take one after the other: left,right.")
@click.option("--yes", is_flag=True, help="Everyone is clear of the axes; do not ask (for scripts).")
@click.option("--start-ghz", type=FiniteRange(1e-6, 1100), default=1.0, show_default=True)
@click.option("--stop-ghz", type=FiniteRange(1e-6, 1100), default=2.0, show_default=True)
@click.option("--power-dbm", type=FiniteRange(-60, 30), default=-20.0, show_default=True)
@click.option("--timeout-s", type=FiniteRange(0.1, 600), default=5.0, show_default=True)
@click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of a table.")
def conformance(profile_name: str, yes: bool, move_deg: float, as_json: bool, **asked: Any) -> None:
    """Ask an instrument everything that a run will ask: identity, times, hold and release, error queue; and say what is missing.

    PROFILE is a file of words for any role, or driver:NAME with --role. Nothing moves without --move; a source is switched on for
    a moment. Exit code 1: something is not as it must be.

    \b
    Examples:
      colure conformance my-controller --resource /dev/ttyUSB0 --move 5
      colure conformance scpi-analyzer --resource 192.0.2.10:5025 --start-ghz 24 --stop-ghz 24.2
      colure conformance contact-line --resource 192.0.2.11:7000
    """
    from colure.errors import InputError

    if (
        move_deg
        and not yes
        and not (
            sys.stdin.isatty()
            and click.confirm(f"Every axis turns by {move_deg:g} deg and back. Everyone is clear of the axes?")
        )
    ):
        raise InputError(["--move: not acknowledged: must be acknowledged with --yes before anything moves"])
    answers = _answers(profile_name, move_deg, **asked)
    if as_json:
        say(json_text([{"what": answer.what, "good": answer.good, "found": answer.observed} for answer in answers]))
    else:
        for answer in answers:
            mark = {True: "yes", False: "NO", None: "-"}[answer.good]
            say(f"{mark:<4}{answer.what:<28} {answer.observed}")
    sys.exit(1 if any(answer.good is False for answer in answers) else 0)


def _answers(
    name: str, move_deg: float, *, resource: str, role: str | None, folder: Path, axes: str, states: str,
    start_ghz: float, stop_ghz: float, power_dbm: float, timeout_s: float,
) -> list[ConformanceAnswer]:  # fmt: skip
    """Ask what the profile's kind, or the role of a driver, wants to know."""
    from colure.acquire.clocks import SystemClock
    from colure.instruments.conformance import analyzer_conformance, axes_conformance, driver_conformance
    from colure.instruments.plugins import GROUPS, is_driver
    from colure.instruments.profile import analyzer_profile, axes_profile
    from colure.instruments.protocols import SweepSettings
    from colure.instruments.small_conformance import small_conformance

    settings = SweepSettings(
        start_hz=1e9 * start_ghz, stop_hz=1e9 * stop_ghz, points=11, if_bandwidth_hz=1000.0, power_dbm=power_dbm
    )
    what = _role(name, role, folder)
    turned = [one.strip() for one in axes.split(",") if one.strip()]
    if what not in ("receiver", "axis-controller"):
        chosen = [one for one in states.split(",") if one]
        with _locked(resource) if what == "source" else nullcontext():
            return small_conformance(name, resource, role=what, timeout_s=min(timeout_s,
                                     2.0) if what == "interlock" else
                                     timeout_s, folder=folder, power_dbm=power_dbm, start_hz=settings.start_hz,
                                     states=chosen)  # fmt: skip
    if is_driver(name):
        with _locked(resource) if what == "axis-controller" else nullcontext():
            return driver_conformance(GROUPS[what], name, resource, turned or ["azimuth", "roll"], settings,
                                      timeout_s=timeout_s,
                                      timer=SystemClock(), folder=folder, move_deg=move_deg)  # fmt: skip
    if what == "receiver":
        return analyzer_conformance(analyzer_profile(name, folder), resource, settings, timeout_s=timeout_s)
    with _locked(resource):
        return axes_conformance(
            axes_profile(name, folder),
            resource,
            timeout_s=timeout_s,
            timer=SystemClock(),
            move_deg=move_deg,
            axes=turned,
        )


def _role(name: str, role: str | None, folder: Path) -> str:
    """Return what an instrument is to do, from the kind of its profile; raises `InputError` if it cannot be known, or differs."""
    from colure.errors import InputError
    from colure.instruments.plugins import is_driver
    from colure.instruments.profile import profile_path
    from colure.instruments.small_conformance import ROLE_OF
    from colure.model.loading import read_toml

    if is_driver(name):
        if role is None:
            raise InputError([f"{name}: needs --role: must be one of {', '.join(ROLES)}"])
        return role
    kind = str(read_toml(profile_path(name, folder)).get("kind", ""))
    profile_role = ROLE_OF.get(kind) or ("receiver" if kind.startswith("scpi") else "axis-controller")
    if role not in (None, profile_role):
        raise InputError([f"--role = {role}: profile {name} is for role {profile_role!r} (kind = {kind!r})"])
    return profile_role


@contextmanager
def _locked(resource: str) -> Iterator[None]:
    """Keep other programs from driving the instrument meanwhile."""
    from colure.acquire.locks import hold_resource
    from colure.errors import InstrumentError, LockedError

    try:
        lock = hold_resource(resource)
    except LockedError as error:
        raise InstrumentError(str(error)) from None
    with lock:
        yield
