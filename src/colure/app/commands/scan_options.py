"""Options that say which directions to measure, in the operator's words; `colure cut`, `plan` and `acquire` share them."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import click

from colure.app.commands.numbers import FINITE

#: Options and the entries of [scan] that they are.
ENTRY_OF = {
    "theta": "theta_deg", "phi": "phi_deg", "az": "azimuth_deg", "el": "elevation_deg", "circles": "great_circles_deg",
    "through": "through_deg", "along": "along_deg", "directions": "directions", "offset": "offset_deg", "probe": "probe",
    "single_sided": "double_sided", "repeats": "repeats", "dwell_s": "dwell_s",
}  # fmt: skip
#: Options of which one is needed to name a direction.
DIRECTIONS = ("theta", "phi", "az", "el", "circles", "directions")
NAMES = (*ENTRY_OF, "monitor_ghz", "frequencies")


def scan_options(command: Callable[..., Any]) -> Callable[..., Any]:
    """Add the options that say which directions are measured, and how."""
    options = (
        click.option("--theta", metavar="ANGLES",
                     help="Polar angles from the boresight: start:stop:step, or a list such as 0,5,10."),
        click.option("--phi", metavar="ANGLES", help="Angles about the boresight, from x towards y. With --theta."),
        click.option("--az", metavar="ANGLES", help="Azimuths, d = (sin az cos el, sin el, cos az cos el). With --el."),
        click.option("--el", metavar="ANGLES", help="Elevations. With --az."),
        click.option("--circles", metavar="ANGLES",
                     help="Great circles through a direction: their planes, from x towards y."),
        click.option("--through", metavar="AZ,EL", help="That direction; the device's declared beam if left out."),
        click.option("--along", metavar="ANGLES", help="Angles along great circles.  [default: -90:90:1]"),
        click.option("--directions", metavar="CSV",
                     help="Single directions from a CSV beside goal.toml, as colure aim takes."),
        click.option("--offset", metavar="ANGLES",
                     help="Polarization offsets of the probe, one a pass: 0,90 gives both components.  [default: 0]"),
        click.option("--probe", type=click.Choice(["follows", "fixed"]),
                     help="Whether the probe turns with the device's x.  [default: follows]"),
        click.option("--single-sided", is_flag=True, help="Measure negative theta with the roll turned by 180 deg."),
        click.option("--repeats", type=int, help="How often everything is measured.  [default: 1]"),
        click.option("--dwell-s", type=FINITE, help="Rest at every point before its sweep.  [default: 0]"),
        click.option("--frequencies", metavar="GHZ",
                     help="Frequencies in GHz instead of goal.toml's: a list, start:stop:step, or a CSV beside goal.toml."),
        click.option("--monitor-ghz", type=FINITE, help="Frequency that is shown; mid-band if left out."),
    )  # fmt: skip
    for one in reversed(options):
        command = one(command)
    return command


def scan_of(asked: dict[str, Any]) -> dict[str, Any]:
    """Return the table [scan] that the options say. Raises `InputError` if a direction cannot be read."""
    from colure.errors import InputError

    usual: dict[str, Any] = {"offset": "0", "probe": "follows", "repeats": 1, "dwell_s": 0.0}
    plain = [name for name in ENTRY_OF if name not in ("through", "single_sided")]
    values = {name: usual.get(name) if asked[name] is None else asked[name] for name in plain}
    scan = {ENTRY_OF[name]: value for name, value in values.items() if value is not None}
    if asked["single_sided"]:
        scan["double_sided"] = False
    if asked["through"] is not None:
        try:
            azimuth, elevation = (float(word) for word in asked["through"].split(","))
        except ValueError:
            raise InputError(
                [f"--through = {asked['through']!r}: must be two angles such as 20,0 (azimuth, elevation, deg)"]
            ) from None
        scan["through_deg"] = (azimuth, elevation)
    return scan


def front_cut(scan: dict[str, Any]) -> dict[str, Any]:
    """Return a table [scan] that names planes alone as the habit has it: cuts over the front."""
    from colure.errors import InputError

    if scan.keys() & {"theta_deg", "azimuth_deg", "great_circles_deg", "directions"}:
        return scan
    if "phi_deg" not in scan:
        raise InputError(
            ["cut: no directions: give --phi (with --theta), --az with --el, --circles, or --directions (deg)"]
        )
    return {**scan, "theta_deg": "-90:90:1"}


def scan_in_place(asked: dict[str, Any]) -> dict[str, Any] | None:
    """Return the table [scan] that options put in place of what goal.toml scans; None if they name no directions.

    Raises
    ------
    InputError
        If options say how to measure directions, and none is named.
    """
    from colure.errors import InputError

    if any(asked[name] is not None for name in DIRECTIONS):
        return scan_of(asked)
    alone = [
        f"--{name.replace('_', '-')}" for name in NAMES if name != "frequencies" and asked[name] not in (None, False)
    ]
    if alone:
        raise InputError(
            [f"{', '.join(alone)}: must come with directions: --theta and --phi, --az and --el, --circles or --directions; "
             "without them goal.toml decides"]
        )  # fmt: skip
    return None
