"""An array's calibration from power alone: a table of powers while one element turns, or a run of such states."""

from __future__ import annotations

from pathlib import Path

import numpy as np

from colure.app.services.array_elements import CalibrationRow, row_of
from colure.app.services.array_states import told_in
from colure.app.services.processing import one_distance
from colure.app.storage.folders import RunFolder
from colure.errors import InputError
from colure.geometry.conventions import ComplexArray, FloatArray, IntArray, amplitude_db, wavenumber
from colure.model.campaign import Campaign
from colure.model.tables import numbers_of, read_rows
from colure.planning.schemes import directions

POWERS = ("power_db", "power_mw")
#: Phases that differ by less between the probe's place and far away are not worth a word, degrees.
NEAR_DEG = 0.5
#: Above this many standard uncertainties of the phase an element is no more than the scatter.
FAINT = 0.5


def from_table(path: Path) -> tuple[list[CalibrationRow], list[str]]:
    """Return the calibration of a CSV with columns element, phase_deg and power_db or power_mw, and its cautions.

    Raises
    ------
    InputError
        If a column is missing, a value is no number, or an element has too few turns.
    """
    header, rows = read_rows(path)
    kind = next((name for name in POWERS if header == ["element", "phase_deg", name]), None)
    if kind is None:
        raise InputError(
            [f"{path.name}: header must be element,phase_deg,power_db or element,phase_deg,power_mw, is {','.join(header)[:120]}"]
        )  # fmt: skip
    units = {"element": "whole number", "phase_deg": "deg", kind: kind[-2:].replace("mw", "mW").replace("db", "dB")}
    values = numbers_of(path.name, rows, units)
    element = values[:, 0].astype(int)
    if (element != values[:, 0]).any() or element.min() < 0:
        raise InputError([f"{path.name}: element: must be whole numbers from 0 (elements)"])
    missing = sorted(set(range(int(element.max()) + 1)) - set(element.tolist()))
    if missing:
        raise InputError([f"{path.name}: element {missing[0]} is missing; all elements from 0 are needed (elements)"])
    power = values[:, 2] if kind == "power_mw" else 10.0 ** (values[:, 2] / 10.0)
    return _calibrated(element, np.deg2rad(values[:, 1]), power)


def from_run(campaign: Campaign, run: RunFolder) -> tuple[list[CalibrationRow], list[str]]:
    """Return the calibration of a run of rotating states by the power at its strongest place, at mid-band, and its cautions.

    What the probe's finite distance does to the elements is taken out where device.toml says where they stand; else it is said.

    Raises
    ------
    InputError
        If the run's states turn no element by itself.
    """
    from colure.analysis.array.sweeps import places_of

    commands, record = told_in(campaign, run)
    record = one_distance(campaign, record)
    try:
        places = places_of(record, len(commands.names))
    except ValueError as error:
        raise InputError([str(error)]) from None
    middle = record.sizes["frequency"] // 2
    power = np.abs(record["trace"].values[places.rows][:, :, middle]) ** 2
    place, port = np.unravel_index(int(np.argmax(power.mean(axis=0))), power.shape[1:])
    element, turn, rows = turning(commands.weight)
    point = places.rows[0, place]
    direction = directions(
        tuple(str(name) for name in record["axis"].values),
        record["commanded_deg"].values[point][None],
        campaign.chamber,
    )[0]
    far, cautions = _far(campaign, direction, float(record["frequency"].values[middle]), int(element.max()) + 1)
    calibration, more = _calibrated(element, turn, power[rows, place, port], far)
    return calibration, cautions + more


def _far(campaign: Campaign, direction: FloatArray, frequency_hz: float, count: int) -> tuple[ComplexArray, list[str]]:
    """Return what turns elements at the probe into those far away, (element,), and what cannot be told."""
    from colure.analysis.array.rotating import beyond_the_range

    device, range_m, k = (
        campaign.device,
        campaign.chamber.range_length_m,
        float(wavenumber(np.array([frequency_hz]))[0]),
    )
    grid = device.elements
    if grid is not None and grid.rows * grid.columns == count:
        place = grid.places_m(1e-3 * np.asarray(device.offset_mm))
        return beyond_the_range(place, direction, range_m=range_m, wavenumber=k), []
    across = 0.5e-3 * float(np.hypot(*device.size_mm[:2]))
    phase_deg = float(np.rad2deg(0.5 * k * across**2 / range_m))
    if phase_deg < NEAR_DEG:
        return np.ones(count, complex), []
    return np.ones(count, complex), [
        f"phases hold at the probe, {range_m:g} m away; far away an element at the rim is up to {phase_deg:.1f} deg ahead; "
        "state rows, columns and pitch_mm in [elements] of device.toml and it is taken out"
    ]


def turning(weight: ComplexArray) -> tuple[IntArray, FloatArray, IntArray]:
    """Return (element, turn in radians, state) of every state in which one element is turned and no other; turn 0 for each.

    Raises
    ------
    InputError
        If there is no state that all others are turned from, or an element is never turned.
    """
    values = [np.unique(np.round(column, 9), return_counts=True) for column in weight.T]
    base = np.array([value[np.argmax(count)] for value, count in values])
    differs = np.abs(weight - base) > 1e-8
    alone = differs.sum(axis=1) == 1
    start = np.flatnonzero(~differs.any(axis=1))
    element = np.argmax(differs, axis=1)
    even = np.abs(np.abs(weight[np.arange(len(weight)), element]) - np.abs(base[element])) < 1e-8
    rows = np.flatnonzero(alone & even)
    missing = sorted(set(range(weight.shape[1])) - set(element[rows].tolist()))
    if missing or not start.size:
        what = f"element {missing[0]} is never turned by itself" if missing else "no state holds all elements at rest"
        raise InputError([f"states.codes: {what}; colure codes --method rotate writes such states (states)"])
    turn = np.angle(weight[rows, element[rows]] / base[element[rows]])
    every = np.arange(weight.shape[1])
    return (
        np.concatenate([every, element[rows]]),
        np.concatenate([np.zeros(every.size), turn]),
        np.concatenate([np.full(every.size, start[0]), rows]),
    )


def _calibrated(
    element: IntArray, turn: FloatArray, power: FloatArray, far: ComplexArray | None = None
) -> tuple[list[CalibrationRow], list[str]]:
    from colure.analysis.array.rotating import chosen, relative, turned_elements

    try:
        turned = turned_elements(element, turn, power)
    except ValueError as error:
        raise InputError([str(error)]) from None
    best = chosen(turned)
    share = relative(best.value if far is None else best.value * far)
    spread = np.sqrt(np.diagonal(best.covariance, axis1=1, axis2=2))
    undecided = set(best.undecided.tolist())
    rows = []
    for n in range(share.size):
        remark = ""
        if n in undecided:
            other = abs(turned.other[n] / best.value[n])
            remark = f"cannot tell: the element may be {float(amplitude_db(other)):+.1f} dB stronger, as strong as all others together"
        elif spread[n, 1] > FAINT:
            remark = "cannot tell: the element is no stronger than the powers' scatter"
        rows.append(row_of(n, "element", complex(share[n]), spread[n], remark))
    cautions = []
    if not best.adds_up:
        cautions.append(
            f"the elements do not add up to the whole field: {best.rest:.3f} of it is missing, the powers' scatter explains "
            f"{best.allowed:.3f}; an element was left out, or something that no command turns adds to the field"
        )
    return rows, cautions
