"""Every element of an array from one run of code states: its embedded pattern, and a calibration table of elements and commands."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from colure.app.services.array_states import ArrayRun, array_run
from colure.app.storage.folders import RunFolder, require_free
from colure.errors import InputError
from colure.geometry.conventions import ComplexArray, FloatArray, amplitude_db
from colure.geometry.directions import theta_phi
from colure.model.campaign import Campaign
from colure.model.device import Device
from colure.values import holds_arrays

if TYPE_CHECKING:
    from colure.analysis.pipeline.recipe import Processed
    from colure.analysis.uncertainty.pattern_errors import PatternError

#: The cause that hits every element by itself; all others come from one chamber, and what they do to all levels alike cancels.
NOISE = "noise"
DEFAULT_STEP_DEG = 3.0


@dataclass(frozen=True, kw_only=True)
@holds_arrays
class Element:
    """One element by itself, at mid-band.

    peak_dbi
        Peak of its realized gain, on the scale of the whole array: what goes into the array counts, not what reaches the element.
    toward_deg
        Azimuth and elevation of its peak.
    noise_db, commands_db, chamber_db
        Error of its pattern, rms over all directions, below its own peak: noise, the commands' errors, all other causes of the budget.
    """

    number: int
    peak_dbi: float
    toward_deg: tuple[float, float]
    noise_db: float
    commands_db: float
    chamber_db: float


@dataclass(frozen=True)
@holds_arrays
class _Read:
    """What one element gave: its pattern on a grid, its co-polar value in the table's direction, and their errors by cause."""

    processed: Processed
    value: ComplexArray
    errors: dict[str, PatternError]


def each_element(array: ArrayRun, direction: FloatArray) -> Iterator[_Read]:
    """Yield every element, processed, with its co-polar component in a direction (3,)."""
    from colure.analysis.uncertainty.pattern_errors import pattern_errors

    for number in range(array.states.elements):
        processed = array.process(array.elements, number, f"element-{number:03d}", draws=0)
        count = processed.expansion.coefficients.shape[-1]
        component = _component(count, direction, array.campaign.device)
        value = np.tensordot(processed.expansion.coefficients, component, axes=2)
        yield _Read(processed, value, pattern_errors(processed.budget, component))


def _component(count: int, direction: FloatArray, device: Device) -> ComplexArray:
    """Return what multiplies waves (2, count) to give the declared co-polar component in a direction."""
    from colure.waves.scattered import synthesis_at

    theta, phi = theta_phi(direction[None])
    e = synthesis_at(np.eye(2 * count, dtype=complex).reshape(2 * count, 2, count), theta=theta, phi=phi)[..., 0]
    # Ludwig 3 from the declared slant; of a circular device the hand that it is declared for.
    x = np.cos(phi[0]) * e[:, 0] - np.sin(phi[0]) * e[:, 1]
    y = np.sin(phi[0]) * e[:, 0] + np.cos(phi[0]) * e[:, 1]
    if device.polarization == "linear":
        slant = np.deg2rad(device.slant_deg)
        return np.asarray((np.cos(slant) * x + np.sin(slant) * y).reshape(2, count))
    hand = 1j * (device.hand or 1)
    return np.asarray(((x + hand * y) / np.sqrt(2.0)).reshape(2, count))


def embedded(
    campaign: Campaign, run: RunFolder, target: Path, *, step_deg: float = DEFAULT_STEP_DEG
) -> tuple[ArrayRun, list[Element]]:
    """Write every element's embedded pattern with its errors to a netCDF file, and return what the table shows.

    Raises
    ------
    InputError
        As `array_run` does, or if the file exists.
    """
    require_free(target)
    array = array_run(campaign, run)
    read = list(each_element(array, _direction(campaign.device)))
    size = np.array([np.linalg.norm(one.processed.expansion.coefficients, axis=(-2, -1)) for one in read])
    shares = np.abs(array.elements.shares()) ** 2 @ size[array.elements.answers.element] ** 2 / (4.0 * np.pi)
    command = array.errors.command * np.sqrt(shares)
    noise = np.array([one.errors[NOISE].rms for one in read])
    rest = [np.sum([e.rms**2 for name, e in one.errors.items() if name != NOISE], axis=0) for one in read]
    errors = np.stack([noise, command, np.sqrt(rest)], axis=1)
    embedded_patterns = [
        _element(number, one, row, step_deg) for number, (one, row) in enumerate(zip(read, errors, strict=True))
    ]
    _write(target, array, embedded_patterns[0][2], np.stack([field for _, field, _ in embedded_patterns]), errors)
    return array, [element for element, _, _ in embedded_patterns]


def _element(
    number: int, one: _Read, errors: FloatArray, step_deg: float
) -> tuple[Element, ComplexArray, tuple[FloatArray, FloatArray]]:
    from colure.analysis.steps.far_field import pattern_grid

    theta, phi, field = pattern_grid(one.processed.expansion, step_deg)
    middle = one.processed.frequency_hz.size // 2
    figures = one.processed.budget.figures
    values = figures.values(one.processed.expansion)[middle]
    shown = {what.name: what.display(float(v)) for what, v in zip(figures.definitions, values, strict=True)}
    peak = float(np.sqrt(np.max(np.sum(np.abs(field[middle]) ** 2, axis=0))))
    noise_db, commands_db, chamber_db = (float(amplitude_db(row[middle] / peak, least=1e-15)) for row in errors)
    element = Element(
        number=number,
        peak_dbi=float(amplitude_db(peak)),
        toward_deg=(shown["beam_azimuth_deg"], shown["beam_elevation_deg"]),
        noise_db=noise_db,
        commands_db=commands_db,
        chamber_db=chamber_db,
    )
    return element, field, (theta, phi)


def _write(target: Path, array: ArrayRun, grid: tuple[FloatArray, FloatArray], field: ComplexArray, error: FloatArray) -> None:  # fmt: skip
    """Write patterns (element, frequency, 2, theta, phi) and their rms errors (element, group, frequency)."""
    import xarray as xr

    from colure.model.files import save_dataset, with_step

    dims = ("element", "frequency", "theta", "phi")
    text = "standard uncertainty of the field, rms over all directions"
    names = {"noise_rms": f"{text}: noise", "command_rms": f"{text}: errors of commands",
        "chamber_rms": f"{text}: all other causes of the budget"}  # fmt: skip
    dataset = xr.Dataset(
        {
            "e_theta": (dims, field[:, :, 0], {"units": "1"}),
            "e_phi": (dims, field[:, :, 1], {"units": "1"}),
            **{
                name: (("element", "frequency"), error[:, i], {"units": "1", "long_name": told})
                for i, (name, told) in enumerate(names.items())
            },
        },
        coords={
            "element": ("element", np.arange(len(field)), {"long_name": "row by row from -y, from -x within a row"}),
            "frequency": ("frequency", array.record["frequency"].values, {"units": "Hz"}),
            "theta": ("theta", np.round(np.rad2deg(grid[0]), 9), {"units": "deg"}),
            "phi": ("phi", np.round(np.rad2deg(grid[1]), 9), {"units": "deg"}),
        },
        attrs={
            "title": "Colure embedded element patterns",
            "quantity": "realized_gain" if array.campaign.chamber.reference.absolute else "relative",
            "scale": "one element at the command 0 deg and 0 dB, the array's whole input power",
            "phase_reference": "device-frame origin",
            "time_convention": "exp(+j w t), exp(-j k r)/r removed",
            "history_json": array.record.attrs.get("history_json", "[]"),
        },
    )
    save_dataset(with_step(dataset, "elements from states", states=len(array.states.names)), target)


def _direction(device: Device) -> FloatArray:
    """Return the unit vector of the device's strongest direction, as declared."""
    azimuth, elevation = np.deg2rad(device.beam_deg)
    return np.array([np.sin(azimuth) * np.cos(elevation), np.sin(elevation), np.cos(azimuth) * np.cos(elevation)])


@dataclass(frozen=True, kw_only=True)
class CalibrationRow:
    """One line of a calibration: an element, or one of its commands over what was commanded.

    command
        `element`, or the command as phase in degrees and level in dB.
    level_db, phase_deg
        Of an element over the rms of all and about the phase of their sum; of a command what it does beyond what it was told.
    level_expanded_db, phase_expanded_deg
        k = 2.
    remark
        Why nothing can be told, or empty.
    """

    element: int
    command: str
    level_db: float
    level_expanded_db: float
    phase_deg: float
    phase_expanded_deg: float
    remark: str = ""


HEADER = "element,command,level_db,level_expanded_db,phase_deg,phase_expanded_deg,remark"


def row_of(element: int, command: str, value: complex, spread: FloatArray, remark: str = "") -> CalibrationRow:
    """Return a line from a complex value and the standard uncertainties (2,) of its relative amplitude and phase in radians."""
    level = float(amplitude_db(max(abs(value), 1e-15)))
    return CalibrationRow(
        element=element, command=command, level_db=level,
        level_expanded_db=20.0 / float(np.log(10.0)) * 2.0 * float(spread[0]),
        phase_deg=float(np.rad2deg(np.angle(value))),
        phase_expanded_deg=float(np.rad2deg(2.0 * spread[1])), remark=remark,
    )  # fmt: skip


def text_of(rows: list[CalibrationRow]) -> str:
    """Return a calibration as CSV."""
    lines = [
        f"{r.element},{r.command},{r.level_db:.4f},{r.level_expanded_db:.4f},{r.phase_deg:.3f},{r.phase_expanded_deg:.3f},{r.remark}"
        for r in rows
    ]
    return "\n".join([HEADER, *lines]) + "\n"


def calibrated(campaign: Campaign, run: RunFolder) -> tuple[ArrayRun, list[CalibrationRow]]:
    """Return level and phase of every element towards the declared beam, and of every command over what it was told, at mid-band.

    Raises
    ------
    InputError
        As `array_run` does.
    """
    from colure.analysis.array.rotating import relative

    array = array_run(campaign, run)
    read = list(each_element(array, _direction(campaign.device)))
    middle = read[0].processed.frequency_hz.size // 2
    value = np.array([one.value[middle] for one in read])
    if not np.abs(value).all():
        raise InputError(["elements: one of them radiates nothing towards beam_deg; no phase can be told (device.toml)"])  # fmt: skip
    share = relative(value)
    spread = _relative_spread(array, read, value, middle)
    rows = [row_of(n, "element", complex(share[n]), spread[n]) for n in range(len(value))]
    return array, rows + _commands(array)


def _relative_spread(array: ArrayRun, read: list[_Read], value: ComplexArray, f: int) -> FloatArray:
    """Return (element, 2) the standard uncertainty of amplitude and phase of the elements over each other."""
    total = np.zeros((len(read), 2))
    for name in read[0].errors:
        off = np.array([one.errors[name].towards[:, f] / own for one, own in zip(read, value, strict=True)])
        if name != NOISE:
            # One chamber errs for all elements together: what moves their rms, or the phase of their sum, cancels (first order).
            level = np.sum(np.abs(value[:, None]) ** 2 * off.real, axis=0) / np.sum(np.abs(value) ** 2)
            phase = (value @ off / value.sum()).imag
            off = off - (level + 1j * phase)
        total += np.stack([np.sum(off.real**2, axis=1), np.sum(off.imag**2, axis=1)], axis=1)
    # What other elements' commands leave in an element: their share, in amplitude and in phase.
    left = array.elements.shares() * value[array.elements.answers.element] / value[:, None]
    for size in (array.errors.amplitude, 1j * array.errors.phase):
        total += np.stack([np.sum((size * left).real ** 2, axis=1), np.sum((size * left).imag ** 2, axis=1)], axis=1)
    return np.asarray(np.sqrt(total))


def _commands(array: ArrayRun) -> list[CalibrationRow]:
    """Return what every command does over what it was told, from all places of the scan together."""
    from colure.analysis.array.combine import answers_alone

    combination = answers_alone(array.states.weight, array.errors)
    answers, alone = combination.answers, array.elements.states @ array.sweeps
    rows = []
    for n, e in enumerate(alone):
        own = np.flatnonzero(answers.element == n)
        norm = float(np.vdot(e, e).real)
        across = alone @ e.conj() / norm
        for i in own:
            got = complex(np.vdot(e, combination.states[i] @ array.sweeps) / norm / answers.told[i])
            heard = array.errors.noise**2 * float(combination.noise_factor[i]) ** 2 / norm / 2.0
            # Another element's error of phase is one of this one's level where their fields differ in phase.
            share = combination.shares()[i] * across[answers.element] / answers.told[i]
            even, turned = float(np.sum(share.real**2)), float(np.sum(share.imag**2))
            level = even * array.errors.amplitude**2 + turned * array.errors.phase**2
            phase = even * array.errors.phase**2 + turned * array.errors.amplitude**2
            rows.append(row_of(n, _said(complex(answers.told[i])), got, np.sqrt(np.array([level, phase]) + heard)))
    return rows


def _said(weight: complex) -> str:
    level = float(amplitude_db(abs(weight)))
    phase = f"{np.rad2deg(np.angle(weight)) % 360.0 + 0.0:.6g} deg"
    return phase if abs(level) < 1e-6 else f"{phase} {level:+.6g} dB"
