"""The chamber's axes or its receiver alone, for moves by hand and a look at the level."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import ExitStack, contextmanager
from typing import TYPE_CHECKING

from colure.app.services.acquisition import twin_process
from colure.errors import InputError
from colure.model.campaign import Campaign

if TYPE_CHECKING:
    from colure.acquire.jogging import Jogger
    from colure.instruments.protocols import Sweep
    from colure.model.plan import Plan


@contextmanager
def jogger(campaign: Campaign, look: Callable[[], None] | None = None) -> Iterator[Jogger]:
    """Connect to the axis controller alone.

    look
        Called again and again while axes move; what it raises brakes them.

    Raises
    ------
    InstrumentError
        If it cannot be reached, or another process drives it.
    """
    from colure.acquire.clocks import SystemClock
    from colure.acquire.jogging import Jogger
    from colure.acquire.locks import hold_resource
    from colure.errors import InstrumentError, LockedError
    from colure.instruments.connect import connect_axes

    chamber = campaign.chamber
    resource, simulated = chamber.axes.resource, chamber.axes.resource == "twin"
    with ExitStack() as stack:
        if simulated:
            resource = stack.enter_context(twin_process(campaign.folder))["axes"]
        try:
            stack.callback(hold_resource(resource).close)
        except LockedError as error:
            raise InstrumentError(str(error)) from None
        clock = SystemClock(campaign.simulated().time_factor if simulated else 1.0)
        axes = connect_axes(chamber.axes, resource, chamber.axis_table, campaign.folder, timer=clock)
        stack.callback(axes.close)
        yield Jogger(chamber, axes, clock) if look is None else Jogger(chamber, axes, clock, look=look)


def readouts_for(
    campaign: Campaign, *, az: float | None, el: float | None, theta: float | None, phi: float | None
) -> dict[str, float]:
    """Return the readouts that point the device at a bearing, degrees; raises `InputError` if none lie within limits."""
    from colure.planning.aim import aims, bearing_from

    bearing = bearing_from(azimuth_deg=az, elevation_deg=el, theta_deg=theta, phi_deg=phi)
    ways = aims(bearing, campaign.chamber.positioner.geometry, campaign.chamber)
    if ways[0].fault:
        raise InputError([f"goto: {ways[0].fault}"])
    return ways[0].readouts_deg


def sweeps(campaign: Campaign, made: Plan, count: int) -> Iterator[Sweep]:
    """Yield sweeps with the plan's settings, the source switched off at the end; nothing moves."""
    from colure.instruments.connect import connect_analyzer
    from colure.instruments.protocols import SweepSettings

    table, s = campaign.chamber.analyzer, made.settings
    with ExitStack() as stack:
        resource = table.resource
        if resource == "twin":
            resource = stack.enter_context(twin_process(campaign.folder))["analyzer"]
        analyzer = connect_analyzer(table, resource, campaign.folder)
        stack.callback(analyzer.close)
        stack.callback(analyzer.safe)
        analyzer.configure(
            SweepSettings(
                s["start_hz"], s["stop_hz"], s["points"], s["if_bandwidth_hz"], s["power_dbm"], s["averages"]
            ),
            made.ports,
        )
        for _ in range(count):
            yield analyzer.sweep()
