"""The process that moves axes by hand or takes one sweep for the control room, apart from it.

Its last line of standard output is JSON: what was found, or the faults. Any word on its standard input, and its end,
brakes the axes: the same stop as a scan's.
"""

from __future__ import annotations

import argparse
import json
import sys
import threading
import time
from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING, Any, Literal, get_args

from colure.acquire.control import hear_stops_soon
from colure.app.web.scan.messages import ByHand, Limits, Pose, SweepMessage
from colure.errors import GuardError, InputError, InstrumentError, MotionError
from colure.model.bands import evenly_spaced
from colure.model.campaign import Campaign
from colure.model.chamber import Chamber
from colure.model.strict_json import plain

if TYPE_CHECKING:
    from colure.acquire.jogging import Jogger

Action = Literal["where", "move", "point", "home", "rest", "sweep"]


class _Stop:
    """Set by any word of the control room, and by its end."""

    def __init__(self) -> None:
        self._event = threading.Event()

    def listen(self) -> None:
        sys.stdin.readline()
        self._event.set()

    def look(self) -> None:
        """Raise once a stop was asked for; the axes are braked by who catches it."""
        if self._event.is_set():
            raise MotionError("stopped from the control room")


def carry_out(
    folder: Path, action: Action, values: Mapping[str, float], stop: _Stop, *, speed_deg_s: float | None = None
) -> ByHand:
    """Do one thing by hand and return what was found; raises `ColureError` with the reason if it was not done."""
    campaign = Campaign.load(folder)
    if action == "sweep":
        return {
            "at": time.time(),
            "text": "one sweep; the source is off again",
            "axes": [],
            "pose": None,
            "sweep": _sweep(folder),
        }
    from colure.app.services.jogging import jogger, readouts_for

    with jogger(campaign, stop.look) as hand:
        here = hand.where()
        if action == "move":
            here = hand.to(values, speed_deg_s=speed_deg_s)
        elif action == "point":
            there = readouts_for(campaign, az=None, el=None, theta=values["theta"], phi=values["phi"])
            here = hand.to(there, speed_deg_s=speed_deg_s)
        elif action == "home":
            here = hand.home()
        elif action == "rest":
            homes = {name: axis.home_deg for name, axis in campaign.chamber.driven_table.items()}
            here = hand.to(homes, speed_deg_s=speed_deg_s)
        words = {"where": "nothing moved", "home": "reference marks found"}.get(action, "arrived")
        axes, pose = _limits(campaign, hand, here), _pose(campaign.chamber, here)
        return {"at": time.time(), "text": words, "axes": axes, "pose": pose, "sweep": None}


def _pose(chamber: Chamber, here: Mapping[str, float]) -> Pose:
    """Return how the scene draws readouts."""
    angles = {name: round(float(axis.map.angle_deg(here[name])), 3) for name, axis in chamber.driven_table.items()}
    if chamber.positioner.joints:
        return {"axes": [], "angles_deg": [], "joints": list(angles.values())}
    return {"axes": list(angles), "angles_deg": list(angles.values()), "joints": []}


def _limits(campaign: Campaign, hand: Jogger, here: Mapping[str, float]) -> list[Limits]:
    limits, table = hand.limits(), campaign.chamber.driven_table
    return [
        {"axis": name, "unit": hand.unit(name), "readout_deg": round(value, 4), "min_deg": limits[name][0],
        "max_deg": limits[name][1], "home_deg": table[name].home_deg, "speed_deg_s": table[name].speed_deg_s}
        for name, value in here.items()
    ]  # fmt: skip


def _sweep(folder: Path) -> SweepMessage:
    import numpy as np

    from colure.analysis.steps.time_gate import impulse_response
    from colure.app import services
    from colure.app.services.jogging import sweeps
    from colure.geometry.conventions import amplitude_db

    campaign, made = services.make_plan(folder)
    (sweep,) = sweeps(campaign, made, 1)
    trace, frequency = np.asarray(sweep.trace).reshape(made.frequency_hz.size, -1), made.frequency_hz
    time_s, response = np.zeros(0), np.zeros(0, complex)
    if frequency.size >= 3 and evenly_spaced(frequency):
        time_s, response = impulse_response(trace[:, 0], frequency)
    level = amplitude_db(np.abs(trace), least=1e-10)
    top = max(float(np.abs(response).max(initial=0.0)), 1e-30)
    return {
        "frequency_hz": frequency.tolist(), "level_db": np.round(level.T, 3).tolist(), "time_ns": np.round(1e9 * time_s,
        4).tolist(),
        "impulse_db": np.round(amplitude_db(np.abs(response) / top, least=1e-5), 2).tolist(),
    }  # fmt: skip


def main() -> int:
    """Run from the command line; the control room does."""
    hear_stops_soon()
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("folder", type=Path)
    parser.add_argument("action", choices=get_args(Action))
    parser.add_argument("values", help="JSON: angles in degrees by name")
    parser.add_argument("--speed", type=float, help="no axis goes faster, deg/s")
    arguments = parser.parse_args()
    stop = _Stop()
    threading.Thread(target=stop.listen, daemon=True).start()
    answer: dict[str, Any]
    try:
        values = json.loads(arguments.values)
        answer = {"found": carry_out(arguments.folder, arguments.action, values, stop, speed_deg_s=arguments.speed)}
    except InputError as error:
        answer = {"faults": error.faults}
    except (GuardError, InstrumentError, MotionError) as error:
        answer = {"faults": [str(error)]}
    print(json.dumps(plain(answer)), flush=True)
    return 0 if "found" in answer else 3


if __name__ == "__main__":
    sys.exit(main())
