"""The instruments of a campaign's chamber, connected by their roles: all of them for a run, the axes alone for a move by hand."""

from __future__ import annotations

import json
import subprocess
import sys
from collections.abc import Callable, Iterator, Mapping
from contextlib import ExitStack, contextmanager, suppress
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from colure.errors import InputError
from colure.model.campaign import Campaign
from colure.model.instrument import Instrument

if TYPE_CHECKING:
    from colure.acquire.clocks import Clock
    from colure.instruments.contacts import Contacts
    from colure.instruments.protocols import AnalyzerDriver, AxesDriver, StateDriver
    from colure.instruments.sensors import Sensors

TWIN = "twin"
#: Axis controllers are known, or given up, within this time, seconds.
MEETING_S = 20.0


@contextmanager
def twin_process(folder: Path) -> Iterator[dict[str, str]]:
    """Serve the simulated chamber from a process of its own while the block runs.

    The child ends when our end of its standard input closes, so it cannot outlive us.

    Raises
    ------
    InputError
        If the simulated device cannot be built, or the chamber does not start.
    """
    from colure.twin.devices import maker_of

    maker_of(Campaign.load(folder))  # a fault of the simulated device is told here, in this process
    child = subprocess.Popen(
        [sys.executable, "-m", "colure", "simulate", str(folder), "--until-stdin-closes"],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
        # A closed terminal ends us in order: the chamber must still be there to be braked.
        start_new_session=True,
    )
    assert child.stdin is not None and child.stdout is not None
    try:
        line = child.stdout.readline()
        if not line:
            raise InputError([f"{folder}: the simulated chamber did not start"])
        yield dict(json.loads(line))
    finally:
        child.stdin.close()
        try:
            child.wait(timeout=5)
        except subprocess.TimeoutExpired:
            child.kill()
            child.wait()
        child.stdout.close()


@dataclass(frozen=True)
class ConnectedInstruments:
    """The chamber's instruments, connected, and the clock they live by.

    person
        Address at which the simulated chamber is told what a person has mounted; None where there is a real person.
    """

    analyzer: AnalyzerDriver
    axes: AxesDriver
    states: StateDriver | None
    clock: Clock
    names: dict[str, str]
    person: str | None = None
    contacts: Contacts | None = None
    sensors: Sensors | None = None


def is_simulated(campaign: Campaign, role: str = "") -> bool:
    """Tell whether any instrument is the simulated chamber's; of one role, whether all that have it are."""
    if role:
        return all(one.resource == TWIN for one in campaign.chamber.with_role(role))
    return any(one.resource == TWIN for one in campaign.chamber.outfit)


def _quietly(text: str) -> None:
    """Tell nobody."""


@contextmanager
def instruments(campaign: Campaign, tell: Callable[[str], None] = _quietly) -> Iterator[ConnectedInstruments]:
    """Connect to the chamber's instruments, starting the simulated ones where asked for, and watch interlock and sensors.

    tell
        Called before an instrument that may keep us waiting is asked who it is: which, where, in whose words, for how long at most.

    Raises
    ------
    InputError
        If a profile is none for its role.
    InstrumentError
        If one cannot be reached.
    LockedError
        If another process drives the axes or the source.
    """
    from colure.instruments.connect import connect_states
    from colure.instruments.small_connect import connect_state

    chamber, states = campaign.chamber, campaign.device.states
    names = {one.shown_name: one.resource for one in chamber.outfit}
    if states is not None and states.resource is not None:
        names["device"] = states.resource
    with ExitStack() as stack:
        names, person, clock = _served(stack, campaign, names)
        for one in chamber.with_role("axis-controller"):
            tell(_asked(one, names, min(one.limit_s, MEETING_S)))
        axes, contacts = _axes(stack, campaign, names, clock)
        for one in chamber.with_role("receiver"):
            tell(_asked(one, names, one.limit_s))
        analyzer = _receiver(stack, campaign, names)
        sensors = _sensors(stack, campaign, names)
        own = chamber.with_role("state")
        if own and states is not None:
            switch: StateDriver | None = connect_state(own[0], names[own[0].shown_name], campaign.folder)
        else:
            table = None if states is None else states.model_copy(update={"resource": names.get("device")})
            switch = connect_states(table, campaign.folder)
        if switch is not None:
            stack.callback(switch.close)

        def brake(reason: str) -> None:
            """Act on a contact that has opened, in its own thread: axes first, then the source on its own line."""
            with suppress(Exception):
                axes.hold()
            with suppress(Exception):
                getattr(analyzer, "quench", lambda: None)()

        contacts.watch(brake)
        sensors.watch()
        yield ConnectedInstruments(analyzer, axes, switch, clock, names, person, contacts, sensors)


def _asked(one: Instrument, names: Mapping[str, str], limit_s: float) -> str:
    return f"asking {one.shown_name} at {names[one.shown_name]} in the words of profile {one.words} (at most {limit_s:g} s)"


def _served(stack: ExitStack, campaign: Campaign, names: Mapping[str, str]) -> tuple[dict[str, str], str | None, Clock]:
    """Return the addresses with those of the simulated chamber filled in, where its person is told, and the clock."""
    from colure.acquire.clocks import SystemClock

    if TWIN not in names.values():
        return dict(names), None, SystemClock(1.0)
    served = stack.enter_context(twin_process(campaign.folder))
    addresses = {name: served[name] if value == TWIN else value for name, value in names.items()}
    return addresses, served["device"], SystemClock(campaign.simulated().time_factor)


def _axes(stack: ExitStack, campaign: Campaign, names: Mapping[str, str], clock: Clock) -> tuple[AxesDriver, Contacts]:
    """Connect every axis controller and the interlock chain in front of them."""
    from colure.acquire.locks import hold_resource
    from colure.instruments.connect import connect_axes
    from colure.instruments.many_axes import Controller, ManyAxes

    chamber, folder = campaign.chamber, campaign.folder
    table = {name: axis for name, axis in chamber.driven_table.items() if not axis.fixed}
    fixed = [name for name, axis in chamber.driven_table.items() if axis.fixed]
    controllers = []
    for one in chamber.with_role("axis-controller"):
        resource = names[one.shown_name]
        stack.callback(hold_resource(resource).close)
        own = {name: table[name] for name in one.axes or table}
        settings = chamber.axes.model_copy(
            update={"profile": one.words, "timeout_s": one.limit_s, "interlock": one.reports_door}
        )
        driver = connect_axes(settings, resource, own, folder, timer=clock)
        stack.callback(driver.close)
        controllers.append(Controller(one.shown_name, driver, tuple(own), one.reports_door))
    contacts = _contacts(stack, campaign, names)
    if len(controllers) == 1 and not fixed and not contacts.contacts:
        return controllers[0].driver, contacts
    many = ManyAxes(controllers, timer=clock, contacts=contacts, fixed=fixed)
    stack.callback(many.rest)
    return many, contacts


def _contacts(stack: ExitStack, campaign: Campaign, names: Mapping[str, str]) -> Contacts:
    """Connect the contacts of the interlock chain."""
    from colure.instruments.contacts import Contact, Contacts
    from colure.instruments.small_connect import connect_contact

    interlocks = []
    for one in campaign.chamber.with_role("interlock"):
        contact = connect_contact(one, names[one.shown_name], campaign.folder)
        stack.callback(contact.close)
        interlocks.append(Contact(one.shown_name, contact, one.stands_for, one.period_s))
    contacts = Contacts(interlocks)
    stack.callback(contacts.close)
    return contacts


def _receiver(stack: ExitStack, campaign: Campaign, names: Mapping[str, str]) -> AnalyzerDriver:
    """Connect the receiver, with source and switch of their own where the range has them."""
    from colure.acquire.locks import hold_resource
    from colure.instruments.connect import connect_analyzer
    from colure.instruments.receiver_chain import ReceiverChain
    from colure.instruments.small_connect import connect_source, connect_switch

    chamber, folder = campaign.chamber, campaign.folder
    name = chamber.with_role("receiver")[0].shown_name
    receiver = connect_analyzer(chamber.analyzer, names[name], folder)
    stack.callback(receiver.close)
    source, switch = _one(chamber.with_role("source")), _one(chamber.with_role("switch"))
    if source is None and switch is None:
        return receiver
    generator = box = None
    if source is not None:
        stack.callback(hold_resource(names[source.shown_name]).close)
        generator = connect_source(source, names[source.shown_name], folder)
        stack.callback(generator.close)
    if switch is not None:
        box = connect_switch(switch, names[switch.shown_name], folder)
        stack.callback(box.close)
    return ReceiverChain(receiver, source=generator, switch=box)


def _one(candidates: tuple[Instrument, ...]) -> Instrument | None:
    return candidates[0] if candidates else None


def _sensors(stack: ExitStack, campaign: Campaign, names: Mapping[str, str]) -> Sensors:
    """Connect the sensors."""
    from colure.instruments.sensors import Sensor, Sensors
    from colure.instruments.small_connect import connect_sensor

    connected_sensors = []
    for one in campaign.chamber.with_role("sensor"):
        driver = connect_sensor(one, names[one.shown_name], campaign.folder)
        stack.callback(driver.close)
        connected_sensors.append(Sensor(one.shown_name, driver, one.period_s))
    sensors = Sensors(connected_sensors)
    stack.callback(sensors.close)
    return sensors


@contextmanager
def axes_alone(campaign: Campaign) -> Iterator[tuple[AxesDriver, Clock]]:
    """Connect to the axis controllers and the interlock chain alone, for moves by hand.

    Raises
    ------
    InstrumentError
        If one cannot be reached, or another process drives it.
    """
    from colure.errors import InstrumentError, LockedError

    chamber = campaign.chamber
    names = {one.shown_name: one.resource for one in chamber.outfit if one.role in ("axis-controller", "interlock")}
    with ExitStack() as stack:
        names, _, clock = _served(stack, campaign, names)
        try:
            axes, contacts = _axes(stack, campaign, names, clock)
        except LockedError as error:
            raise InstrumentError(str(error)) from None

        def brake(reason: str) -> None:
            with suppress(Exception):
                axes.hold()

        contacts.watch(brake)
        yield axes, clock


@contextmanager
def receiver_alone(campaign: Campaign) -> Iterator[AnalyzerDriver]:
    """Connect to the receiver with its source and switch, for a look at the level; every source is off at the end.

    Raises
    ------
    DoorOpenError, MotionError
        If a contact of the interlock chain is open: no source is switched on.
    """
    roles = ("receiver", "source", "switch", "interlock")
    names = {one.shown_name: one.resource for one in campaign.chamber.outfit if one.role in roles}
    with ExitStack() as stack:
        names, _, _ = _served(stack, campaign, names)
        contacts = _contacts(stack, campaign, names)
        contacts.require_closed()
        analyzer = _receiver(stack, campaign, names)
        stack.callback(analyzer.safe)

        def off(reason: str) -> None:
            with suppress(Exception):
                analyzer.safe()

        contacts.watch(off)
        yield analyzer
