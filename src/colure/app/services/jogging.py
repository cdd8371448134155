"""The chamber's axes or its receiver alone, for moves by hand and a look at the level."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from typing import TYPE_CHECKING

from colure.app.services.connecting import axes_alone, receiver_alone
from colure.errors import InputError
from colure.model.campaign import Campaign

if TYPE_CHECKING:
    from colure.acquire.jogging import Jogger
    from colure.instruments.protocols import Sweep
    from colure.model.plan import Plan


@contextmanager
def jogger(campaign: Campaign, look: Callable[[], None] | None = None) -> Iterator[Jogger]:
    """Connect to the axis controllers alone, and to the interlock chain.

    look
        Called again and again while axes move; what it raises brakes them.

    Raises
    ------
    InstrumentError
        If it cannot be reached, or another process drives it.
    """
    from colure.acquire.jogging import Jogger

    with axes_alone(campaign) as (axes, clock):
        yield Jogger(campaign.chamber, axes, clock, device=campaign.device, look=look)


def readouts_for(
    campaign: Campaign, *, az: float | None, el: float | None, theta: float | None, phi: float | None
) -> dict[str, float]:
    """Return the readouts that point the device at a bearing, degrees; raises `InputError` if none lie within limits."""
    from colure.planning.aim import bearing_from
    from colure.planning.joint_aim import ways_to

    bearing = bearing_from(azimuth_deg=az, elevation_deg=el, theta_deg=theta, phi_deg=phi)
    ways = ways_to(bearing, campaign.chamber.positioner.geometry, campaign.chamber, campaign.device)
    if ways[0].fault:
        raise InputError([f"goto: {ways[0].fault}"])
    return ways[0].readouts_deg


def set_home(campaign: Campaign, readouts_deg: Mapping[str, float]) -> list[str]:
    """Make readouts the home of axes in chamber.toml, the file as it was beside it, and say so, an axis a line.

    Raises
    ------
    InputError
        If a readout is beyond the limits of its axis; nothing is written then.
    """
    import time

    from colure.app.storage.file_edits import write_readouts

    table = campaign.chamber.driven_table
    stamp = time.strftime("%Y%m%d-%H%M%S")
    homes = write_readouts(campaign.folder, campaign.chamber, "home", readouts_deg, stamp)
    return [
        f"{name}: home at {value:.4f} {table[name].unit} now (before: {table[name].home_deg:g})"
        for name, value in homes.items()
    ]


def sweeps(campaign: Campaign, made: Plan, count: int) -> Iterator[Sweep]:
    """Yield sweeps with the plan's settings, the source switched off at the end; nothing moves."""
    from colure.instruments.protocols import SweepSettings, require_segments

    settings = SweepSettings.of_plan(made.settings)
    with receiver_alone(campaign) as analyzer:
        require_segments(analyzer, settings)
        analyzer.configure(settings, made.ports)
        for _ in range(count):
            yield analyzer.sweep()
