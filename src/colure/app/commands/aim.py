"""`colure aim`: from a bearing to readouts and back."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from colure.app.commands.numbers import FINITE
from colure.app.terminal.say import say
from colure.model.strict_json import json_text

if TYPE_CHECKING:
    from colure.geometry.kinematics import Geometry
    from colure.model.chamber import Chamber
    from colure.model.device import Device
    from colure.planning.aim import Aim, Bearing

#: Short names for the command line; the formula of d is always printed beside them.
SHORT = {
    "roll": "roll-over-azimuth",
    "az-over-el": "azimuth-over-elevation",
    "el-over-az": "elevation-over-azimuth",
}


@click.command()
@click.option("--az", "azimuth_deg", type=FINITE, help="Bearing: azimuth, d = (sin az cos el, sin el, cos az cos el).")
@click.option("--el", "elevation_deg", type=FINITE, help="Bearing: elevation.")
@click.option("--theta", "theta_deg", type=FINITE, help="Bearing: polar angle from boresight.")
@click.option("--phi", "phi_deg", type=FINITE, help="Bearing: angle about boresight, from x towards y.")
@click.option("--readout", help="The other way round: azimuth=20,roll=90 asks where the device points.")
@click.option("--targets", type=click.Path(path_type=Path), help="CSV: name,az_deg,el_deg or name,theta_deg,phi_deg.")
@click.option("--geometry", "short", type=click.Choice(list(SHORT)), help="Only this positioner; all three by default.")
@click.option(
    "--campaign", type=click.Path(path_type=Path), help="Use the limits, senses and zeros of its chamber.toml."
)
@click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of tables.")
def aim(
    azimuth_deg: float | None,
    elevation_deg: float | None,
    theta_deg: float | None,
    phi_deg: float | None,
    readout: str | None,
    targets: Path | None,
    short: str | None,
    campaign: Path | None,
    as_json: bool,
) -> None:
    """Find the readouts that point the device at a bearing, or the bearing that readouts show.

    Both solutions of every positioner are given, with the limits checked, the slant that the
    probe receives at roll 0, and the probe roll that brings the device's own x component back.

    \b
    Examples:
      colure aim --az 20 --el 5 --geometry roll
      colure aim --readout azimuth=20,roll=90 --geometry roll
      colure aim --targets stations.csv --campaign my-campaign
    """
    from colure.errors import InputError
    from colure.geometry.kinematics import Geometry
    from colure.model.campaign import Campaign
    from colure.planning.aim import bearing_from, read_targets

    own_campaign = None if campaign is None else Campaign.load(campaign)
    chamber = None if own_campaign is None else own_campaign.chamber
    device = None if own_campaign is None else own_campaign.device
    own = None if chamber is None else chamber.positioner.geometry
    if short and chamber is not None and chamber.positioner.joints:
        raise InputError([f"--geometry = {short}: leave it out: the mount of --campaign is described by its joints"])
    geometries = [Geometry(SHORT[short])] if short else [own] if own is not None else list(Geometry)
    if readout is not None:
        _show_readouts(readout, geometries, chamber, as_json=as_json)
        return
    if targets is not None:
        bearings = read_targets(targets)
    else:
        bearings = [
            bearing_from(azimuth_deg=azimuth_deg, elevation_deg=elevation_deg, theta_deg=theta_deg, phi_deg=phi_deg)
        ]
    _show_bearings(bearings, geometries, chamber, device, as_json=as_json)


def _show_bearings(
    bearings: list[Bearing],
    geometries: list[Geometry],
    chamber: Chamber | None,
    device: Device | None,
    *,
    as_json: bool,
) -> None:
    from colure.planning.joint_aim import ways_to

    aims = [
        (bearing, geometry, ways_to(bearing, geometry, chamber, device))
        for bearing in bearings
        for geometry in geometries
    ]
    if as_json:
        content = [
            {"bearing": bearing.__dict__, "geometry": geometry.value, "direction": geometry.direction_formula,
             "solutions": [_plain(one) for one in ways]}
            for bearing, geometry, ways in aims
        ]  # fmt: skip
        say(json_text(content))
    else:
        from colure.app.terminal import screens

        screens.show_aims(aims, chamber)


def _plain(one: Aim) -> dict[str, Any]:
    return {"readouts_deg": one.readouts_deg, "within_limits": not one.fault, "fault": one.fault,
            "slant_deg": one.slant_deg, "probe_roll_deg": one.probe_roll_deg}  # fmt: skip


def _show_readouts(text: str, geometries: list[Geometry], chamber: Chamber | None, *, as_json: bool) -> None:
    from colure.errors import InputError
    from colure.planning.joint_aim import bearing_of_readouts

    try:
        readouts = {name.strip(): float(value) for name, value in (part.split("=") for part in text.split(","))}
    except ValueError:
        raise InputError([f"--readout = {text!r}: must be like azimuth=20,roll=90 (deg)"]) from None
    fitting = [geometry for geometry in geometries if set(geometry.axis_names) == set(readouts)] or geometries[:1]
    sightings = [(geometry, *bearing_of_readouts(readouts, geometry, chamber)) for geometry in fitting]
    if as_json:
        say(json_text([{"geometry": g.value, "bearing": b.__dict__, "slant_deg": s} for g, b, s in sightings]))
    else:
        from colure.app.terminal import screens

        screens.show_sightings(sightings, chamber)
