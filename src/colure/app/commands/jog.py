"""`colure jog`, `colure goto`, `colure trace`: axes and receiver by hand."""

from __future__ import annotations

import sys
from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING

import click

from colure.app.commands.numbers import FINITE, FiniteRange
from colure.app.terminal.say import say
from colure.model.strict_json import json_text

if TYPE_CHECKING:
    from colure.acquire.jogging import Jogger
    from colure.model.campaign import Campaign

folder_argument = click.argument("folder", type=click.Path(path_type=Path), default=Path())
speed_option = click.option(
    "--speed",
    "speed_deg_s",
    type=FiniteRange(0.01, 1000),
    help="No axis goes faster than this, deg/s (mm/s of a prismatic joint). [default: speeds of chamber.toml]",
)
set_home_option = click.option(
    "--set-home", is_flag=True, help="Make where the axes stand at the end their home (`home_deg` in chamber.toml)."
)
yes_option = click.option("--yes", is_flag=True, help="Everyone is clear of the axes; do not ask (for scripts).")
json_option = click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of text.")


@click.command()
@folder_argument
@click.option("--axis", help="Which axis: azimuth, roll, elevation or probe, or the name of a joint.")
@click.option("--by", "by_deg", type=FiniteRange(-360, 360), help="Turn it by this, degrees (mm of a prismatic joint).")
@click.option(
    "--to",
    "to_deg",
    type=FiniteRange(-3600, 3600),
    help="Turn it to this readout, degrees (mm of a prismatic joint).",
)
@click.option("--home", is_flag=True, help="Seek the reference marks of all axes.")
@click.option(
    "--senses", is_flag=True, help="Turn every axis by 1 deg and back, and ask whether it went the right way."
)
@speed_option
@set_home_option
@yes_option
@json_option
def jog(
    folder: Path,
    axis: str | None,
    by_deg: float | None,
    to_deg: float | None,
    home: bool,
    senses: bool,
    speed_deg_s: float | None,
    set_home: bool,
    yes: bool,
    as_json: bool,
) -> None:
    """Turn one axis by hand, within the limits of chamber.toml; without an option, say where the axes are.

    Ctrl-C brakes. The motion is watched as in a run: wrong way, stall, limits, door and alarm end it.

    \b
    Examples:
      colure jog my-campaign
      colure jog my-campaign --axis azimuth --by 5 --speed 2
      colure jog my-campaign --set-home
      colure jog my-campaign --senses
    """
    from colure.app.services.jogging import jogger
    from colure.errors import InputError
    from colure.model.campaign import Campaign

    if sum([by_deg is not None, to_deg is not None, home, senses]) > 1 or (axis is None) != (
        by_deg is None and to_deg is None
    ):
        raise InputError(["jog: give --axis with --by or --to (deg), or --home, or --senses"])
    if speed_deg_s is not None and axis is None:
        raise InputError(["--speed: goes with --axis and --by or --to"])
    campaign = Campaign.load(folder)
    with jogger(campaign) as hand, _Refusals():
        if home:  # the axes may be where no readout is trusted
            _clear(yes, "all axes seek their reference marks")
            here = hand.home()
        else:
            here = hand.where()
            if not as_json:
                _show(here, hand)
        if senses:
            _prove_all(hand, yes=yes)
        elif axis is not None:
            if axis not in here:
                raise InputError([f"--axis = {axis!r}: must be one of {', '.join(here)}"])
            target = to_deg if to_deg is not None else here[axis] + (by_deg or 0.0)
            _clear(yes, f"{axis} turns from {here[axis]:.3f} to {target:.3f} {hand.unit(axis)}")
            here = hand.to({axis: target}, speed_deg_s=speed_deg_s)
        if as_json:
            say(json_text(here))
        elif home or axis is not None:
            _show(here, hand)
        _keep_home(campaign, here if set_home else {}, as_json=as_json)


@click.command()
@folder_argument
@click.option("--az", type=FINITE, help="Bearing: azimuth, degrees.")
@click.option("--el", type=FINITE, help="Bearing: elevation, degrees.")
@click.option("--theta", type=FINITE, help="Bearing: polar angle from boresight, degrees.")
@click.option("--phi", type=FINITE, help="Bearing: angle about boresight, degrees.")
@click.option("--home", is_flag=True, help="Go to `home_deg` of every axis.")
@speed_option
@set_home_option
@yes_option
@json_option
def goto(
    folder: Path,
    az: float | None,
    el: float | None,
    theta: float | None,
    phi: float | None,
    home: bool,
    speed_deg_s: float | None,
    set_home: bool,
    yes: bool,
    as_json: bool,
) -> None:
    """Point the device at a bearing, within limits and clear of keep-out sectors.

    \b
    Examples:
      colure goto my-campaign --az 20 --el 5 --speed 2
      colure goto my-campaign --az 0 --el 0 --set-home
      colure goto my-campaign --home
    """
    from colure.app.services.jogging import jogger, readouts_for
    from colure.model.campaign import Campaign

    campaign = Campaign.load(folder)
    if home:
        targets = {name: axis.home_deg for name, axis in campaign.chamber.driven_table.items()}
    else:
        targets = readouts_for(campaign, az=az, el=el, theta=theta, phi=phi)
    with jogger(campaign) as hand, _Refusals():
        if not as_json:
            _show(hand.where(), hand)
        _clear(
            yes, "axes go to " + ", ".join(f"{name} {value:.3f} {hand.unit(name)}" for name, value in targets.items())
        )
        here = hand.to(targets, speed_deg_s=speed_deg_s)
        if as_json:
            say(json_text(here))
        else:
            _show(here, hand)
        _keep_home(campaign, here if set_home else {}, as_json=as_json)


@click.command()
@folder_argument
@click.option("--count", type=click.IntRange(1, 1_000_000), default=1, show_default=True, help="Sweeps to take.")
@json_option
def trace(folder: Path, count: int, as_json: bool) -> None:
    """Take sweeps with the plan's settings and show their levels; nothing moves, the source is off afterwards.

    \b
    Example: colure trace my-campaign --count 20
    """
    from colure.app import services
    from colure.app.services.jogging import sweeps
    from colure.geometry.conventions import amplitude_db
    from colure.model.record import Flag

    campaign, made = services.make_plan(folder)
    for number, sweep in enumerate(sweeps(campaign, made, count)):
        level_db = amplitude_db(sweep.trace, least=1e-20)
        ports = [
            {"lowest_db": float(one.min()), "highest_db": float(one.max()), "middle_db": float(one[len(one) // 2])}
            for one in level_db.T
        ]
        if as_json:
            say(json_text({"sweep": number, "ports": ports, "flags": sweep.flags}))
            continue
        text = "; ".join(
            f"port {k + 1}: {p['lowest_db']:.2f} to {p['highest_db']:.2f} dB, middle {p['middle_db']:.2f} dB"
            for k, p in enumerate(ports)
        )
        say(f"sweep {number}: {text}" + (f"; flags {Flag(sweep.flags)!r}" if sweep.flags else ""))


def _show(here: Mapping[str, float], hand: Jogger) -> None:
    limits, fastest = hand.limits(), hand.speeds()
    for name, value in here.items():
        unit, (low, high) = hand.unit(name), limits[name]
        rate = f", at most {fastest[name]:g} {unit}/s" if name in hand.turning else ""
        say(f"{name:<10} {value:9.3f} {unit}   limits {low:g} to {high:g} {unit}{rate}")


def _keep_home(campaign: Campaign, here: Mapping[str, float], *, as_json: bool) -> None:
    """Make readouts the home of axes, if there are any, and say so."""
    from colure.app.services.jogging import set_home

    for line in set_home(campaign, here) if here else []:
        say(line, err=as_json)


def _prove_all(hand: Jogger, *, yes: bool) -> None:
    """Turn every axis by a degree; a person says whether the way was right, or --yes takes the readout's word."""
    from colure.errors import InputError

    wrong = []
    for name in hand.turning:
        _clear(yes, f"{name} turns by 1 {hand.unit(name)} and back")
        made = hand.prove(name)
        right = Confirmation(yes=yes).right(name, made) is not False
        say(
            f"{name:<10} readout {made:+.3f} {hand.unit(name)}, {'not looked at' if yes else 'as seen' if right else 'WRONG WAY'}"
        )
        wrong += [] if right else [name]
    if wrong:
        raise InputError([f"chamber.toml: sense of {name}: turned the other way; change its sign" for name in wrong])


def _clear(yes: bool, what: str) -> None:
    from colure.errors import InputError

    if yes:
        return
    if not sys.stdin.isatty():
        raise InputError([f"{what}: not acknowledged: must be acknowledged with --yes before anything moves"])
    if not click.confirm(f"{what}. Everyone is clear of the axes?"):
        raise InputError(["not acknowledged: nothing was moved"])


class Confirmation:
    """A person at the terminal, asked before an axis moves and whether it went the right way; `yes`: nobody looks."""

    def __init__(self, *, yes: bool) -> None:
        self._yes = yes

    def clear(self, what: str) -> None:
        """Ask whether everyone is clear; raises `InputError` if not."""
        _clear(self._yes, what)

    def right(self, axis: str, made_deg: float) -> bool | None:
        """Ask whether an axis turned the way that its readout says; None with `yes`."""
        if self._yes:
            return None
        return click.confirm(
            f"{axis}: readout changed by {made_deg:+.3f} deg. Did the axis turn the {'positive' if made_deg > 0 else 'negative'} way?"
        )


class _Refusals:
    """Turns a forbidden move into bad input, and Ctrl-C into its own line; the axes are braked by then."""

    def __enter__(self) -> None:
        return None

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, trace: object) -> None:
        from colure.errors import GuardError, InputError, InstrumentError, MotionError

        if isinstance(error, GuardError):
            raise InputError([str(error)]) from None
        if isinstance(error, KeyboardInterrupt):
            raise InstrumentError("Ctrl-C: the axes were braked") from None
        if isinstance(error, MotionError):
            raise InstrumentError(str(error)) from None
