"""`colure learn-room` and `check-room`: the echoes of a room from several devices, kept for the next one."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING

import click

from colure.app.commands.as_measured import own_run
from colure.app.terminal.say import say
from colure.errors import CHECK_FAILED
from colure.model.strict_json import json_text

if TYPE_CHECKING:
    from colure.analysis.stray.known_room import RoomHeard
    from colure.model.learned_room import LearnedRoom

json_option = click.option("--json", "as_json", is_flag=True, help="Print JSON for programs instead of a table.")


@click.command("learn-room")
@click.argument("folder", type=click.Path(path_type=Path))
@click.argument("runs", nargs=-1, required=True)
@click.option("--to", "target", type=click.Path(path_type=Path), help="File to write; room.nc beside chamber.toml by default.")  # fmt: skip
@json_option
def learn_room(folder: Path, runs: tuple[str, ...], target: Path | None, as_json: bool) -> None:
    """Learn the echoes of FOLDER's range from finished runs of unlike devices, and keep them in room.nc.

    RUNS are names of runs of FOLDER, or paths such as OTHER/runs/first. Each must be a whole sphere in both polarizations, with the
    same positioner, probe and range length. Two are the least; five unlike ones tell most. Echoes that some runs show and the others do
    not are left out.

    \b
    Example: colure learn-room my-range horn/runs/first patch/runs/first panel/runs/first
    """
    from colure.app.services.room_learning import learn_room as learn

    room, path = learn(folder, list(runs), target=target)
    if as_json:
        say(json_text({"file": str(path), **_numbers(room)}))
        return
    say("\n".join(_rows(room)))
    say(f'{path.name}: written. To remove these echoes from the next runs, add room = "{path.name}" to chamber.toml')


@click.command("check-room")
@click.argument("folder", type=click.Path(path_type=Path))
@click.option("--run", "run_name", default="first", show_default=True, help="Name of the run.")
@click.option("--state", default=None, help="State of a device that has several; the first by default.")
@json_option
def check_room(folder: Path, run_name: str, state: str | None, as_json: bool) -> None:
    """Ask a run whether the room is as it was learned. Exit code 1 if it has changed or the run cannot tell.

    \b
    Example: colure check-room my-range --run second
    """
    from colure.analysis.findings.room_heard import room_findings
    from colure.app.services.room_learning import check_room as check

    campaign, run = own_run(folder, run_name, state)
    heard, room = check(campaign, run)
    if as_json:
        say(json_text(_heard_numbers(heard)))
    else:
        say(f"learned from {len(room.runs)} runs: {', '.join(room.runs)}")
        say("\n".join(one.text for one in room_findings(heard, campaign.chamber.echo_level_db)))
        for number, factor in enumerate(heard.factors, 1):
            seen = " (this run leaves it open)" if number - 1 in heard.unjudged else ""
            say(f"  echo {number}: as learned times {abs(factor):.2f}, turned by {_deg(factor):+.0f} deg{seen}")
    if not heard.holds:
        sys.exit(CHECK_FAILED)


def _deg(factor: complex) -> float:
    import numpy as np

    return float(np.rad2deg(np.angle(factor)))


def _heard_numbers(heard: RoomHeard) -> dict[str, object]:
    state = {True: "as learned", False: "changed", None: "cannot tell"}[heard.holds]
    return {
        "state": state, "explained": heard.explained, "off": heard.off, "off_expanded": heard.off_expanded,
        "factors": [[float(one.real), float(one.imag)] for one in heard.factors], "echo_db": heard.echo_db, "left_db": heard.left_db,
        "doubt": heard.doubt, "unjudged": list(heard.unjudged),
    }  # fmt: skip


def _rows(room: LearnedRoom) -> list[str]:
    band = f"{1e-9 * room.frequency_hz[0]:g} to {1e-9 * room.frequency_hz[-1]:g} GHz"
    echoes = [
        f"  azimuth {one['azimuth_deg']:+.1f}, elevation {one['elevation_deg']:+.1f} deg (\u00b1 {one['expanded_deg']:.1f}), "
        f"{one['extra_m']:.3f} m longer (\u00b1 {one['extra_expanded_m']:.3f}), reflection {one['reflection_db']:.1f} dB"
        for one in _echoes(room)
    ]
    shares = [
        f"  {name}: the other runs' echoes explain {100.0 * share:.0f} % of what does not fit its device"
        for name, share in zip(room.runs, room.explained, strict=True)
    ]
    return [f"{len(room.places_m)} echoes, learned from {len(room.runs)} runs, {band}", *echoes, *shares]


def _numbers(room: LearnedRoom) -> dict[str, object]:
    return {
        "echoes": _echoes(room), "runs": list(room.runs), "seals": list(room.seals), "explained": [float(x) for x in room.explained],
        "start_ghz": 1e-9 * float(room.frequency_hz[0]), "stop_ghz": 1e-9 * float(room.frequency_hz[-1]),
    }  # fmt: skip


def _echoes(room: LearnedRoom) -> list[dict[str, float]]:
    import numpy as np

    from colure.geometry.conventions import amplitude_db
    from colure.geometry.directions import azimuth_over_elevation

    spread = 2.0 * np.sqrt(np.maximum(np.diag(room.covariance), 0.0)).reshape(len(room.places_m), -1)
    out = []
    for place, weights, own in zip(room.places_m, room.weights, spread, strict=True):
        distance = float(np.linalg.norm(place))
        azimuth, elevation = azimuth_over_elevation(place / distance)
        out.append({
            "azimuth_deg": float(np.rad2deg(azimuth)), "elevation_deg": float(np.rad2deg(elevation)),
            "expanded_deg": float(np.rad2deg(np.hypot(own[0], own[1]))), "extra_m": distance - room.identity.range_length_m,
            "extra_expanded_m": float(own[2]), "reflection_db": float(amplitude_db(abs(complex(weights[0])))),
        })  # fmt: skip
    return out
