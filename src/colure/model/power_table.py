"""Tables of power without phase: one level, or one a polarization, for every direction of a regular grid."""

from __future__ import annotations

from dataclasses import dataclass, replace
from pathlib import Path

import numpy as np

from colure.errors import InputError
from colure.geometry.conventions import FloatArray, power_db
from colure.model.plausible import LEAST_HZ
from colure.model.tables import numbers_of, read_rows
from colure.values import holds_arrays

PLACES = {"frequency_hz": "Hz", "theta_deg": "deg", "phi_deg": "deg"}
#: Columns of a level, and what it is of: total power, or both polarizations that add up to it.
LEVELS = {
    ("power_db",): "relative", ("gain_dbi",): "gain", ("eirp_dbm",): "eirp",
    ("power_theta_db", "power_phi_db"): "relative", ("gain_theta_dbi", "gain_phi_dbi"): "gain",
    ("eirp_theta_dbm", "eirp_phi_dbm"): "eirp",
}  # fmt: skip
#: Columns of what levels may be wrong by: all together (expanded, k = 2), and each by itself (standard deviation).
ERRORS = {"common_uncertainty_db": "dB", "scatter_db": "dB"}
LARGEST_ERROR_DB = 20.0
#: Levels of the first and of the last column of a full turn may differ by this, dB.
CLOSES_DB = 0.5
#: Levels of one pole may differ by this, dB; they become their mean. In a minimum noise alone makes them differ by more than elsewhere.
POLE_DB = 6.0


@dataclass(frozen=True)
@holds_arrays
class PowerTable:
    """Power, linear (frequency, theta, phi), on rings from +z over a full turn, radians; relative, gain, or EIRP in milliwatts.

    common_db
        What all levels may be wrong by together, expanded (k = 2): the largest of the table's column; None where it has none.
    scatter_db (frequency, theta, phi)
        Standard deviation of each level by itself; None where the table has no such column.
    """

    frequency_hz: FloatArray
    theta: FloatArray
    phi: FloatArray
    power: FloatArray
    quantity: str
    common_db: float | None = None
    scatter_db: FloatArray | None = None

    @property
    def states_errors(self) -> bool:
        """Tell whether the table says what its levels may be wrong by."""
        return self.common_db is not None or self.scatter_db is not None


def level_columns(header: list[str]) -> tuple[str, ...] | None:
    """Return the columns of power levels in a header, or None: then it is no table of power."""
    return next((names for names in LEVELS if set(names) <= set(header)), None)


def read_power(path: Path) -> PowerTable:
    """Read a table of power.

    Raises
    ------
    InputError
        Naming file, line, column, value and unit of what is wrong, or what the grid lacks.
    """
    header, rows = read_rows(path)
    names = level_columns(header)
    if names is None:
        raise InputError([f"{path.name}: no level; needs one of {'; '.join(','.join(one) for one in LEVELS)}"])
    missing = [name for name in PLACES if name not in header]
    if missing:
        raise InputError([f"{path.name}: column {', '.join(missing)}: missing"])
    stated = {name: unit for name, unit in ERRORS.items() if name in header}
    table = numbers_of(path.name, rows, {**PLACES, **dict.fromkeys(names, "dB"), **stated})
    errors = {name: table[:, 3 + len(names) + i] for i, name in enumerate(stated)}
    for name, values in errors.items():
        if values.min() < 0.0 or values.max() > LARGEST_ERROR_DB:
            worst = values.min() if values.min() < 0.0 else values.max()
            raise InputError([f"{path.name}: {name} = {worst:g}: must be from 0 to {LARGEST_ERROR_DB:g} dB"])
    if table[:, 0].min() < LEAST_HZ:
        raise InputError([f"{path.name}: frequency_hz = {table[:, 0].min():g}: must be at least {LEAST_HZ:g} Hz"])
    level = np.sum(10.0 ** (table[:, 3 : 3 + len(names)] / 10.0), axis=1)
    frequency = np.unique(table[:, 0])
    theta, phi = np.unique(np.round(table[:, 1], 6)), np.unique(np.round(table[:, 2], 6))
    if frequency.size * theta.size * phi.size != len(table):
        raise InputError(
            [
                f"{path.name}: {len(table)} rows, needs {frequency.size} x {theta.size} x {phi.size}: every direction of one grid once"
            ]
        )
    shape = frequency.size, theta.size, phi.size
    where = [np.searchsorted(a, np.round(v, 6)) for a, v in ((theta, table[:, 1]), (phi, table[:, 2]))]
    places = np.searchsorted(frequency, table[:, 0]), where[0], where[1]

    def gridded(values: FloatArray) -> FloatArray:
        out = np.empty(shape)
        out[places] = values
        return out

    power_table = _checked(path.name, frequency, theta, phi, gridded(level), LEVELS[names])
    if (common := errors.get("common_uncertainty_db")) is not None:
        power_table = replace(power_table, common_db=float(common.max()))
    if (scatter := errors.get("scatter_db")) is not None:
        # Of two polarizations that add up, the sum scatters no more than each.
        power_table = replace(power_table, scatter_db=gridded(scatter)[..., : power_table.phi.size])
    return power_table


def _checked(
    name: str, frequency: FloatArray, theta: FloatArray, phi: FloatArray, grid: FloatArray, quantity: str
) -> PowerTable:
    """Return the table if its rings and columns are regular; raises `InputError` if not."""
    if np.isclose(phi[-1] - phi[0], 360.0):
        apart = float(np.max(np.abs(power_db(grid[..., 0] / grid[..., -1]))))
        if apart > CLOSES_DB:
            raise InputError(
                [f"{name}: phi_deg = {phi[-1]:g}: {apart:.2g} dB off phi_deg = {phi[0]:g}, must be the same direction"]
            )
        phi, grid = phi[:-1], grid[..., :-1]
    faults = []
    if theta.size < 5 or abs(theta[0]) > 1e-6 or theta[-1] > 180.0 + 1e-6 or np.ptp(np.diff(theta)) > 1e-4:
        faults.append(
            f"{name}: theta_deg: {theta.size} values from {theta[0]:g} to {theta[-1]:g}: must be even steps from 0 deg, 5 or more"
        )
    if phi.size < 4 or np.ptp(np.diff(phi)) > 1e-4 or abs((phi[1] - phi[0]) * phi.size - 360.0) > 1e-3:
        faults.append(
            f"{name}: phi_deg: {phi.size} values from {phi[0]:g} to {phi[-1]:g}: must be even steps over a full turn (deg)"
        )
    if phi.size % 2:
        faults.append(f"{name}: phi_deg: {phi.size} columns: must be an even number (rings go on through the poles)")
    if abs(phi[0]) > 1e-6:
        faults.append(f"{name}: phi_deg begins at {phi[0]:g}: must begin at 0 deg")
    # Every column of a pole is the same direction.
    for ring in [i for i in (0, -1) if abs(theta[i] - (0.0 if i == 0 else 180.0)) < 1e-6]:
        apart = float(np.max(power_db(grid[:, ring].max(axis=-1) / grid[:, ring].min(axis=-1))))
        if apart > POLE_DB:
            faults.append(
                f"{name}: theta_deg = {theta[ring]:g}: levels {apart:.2g} dB apart, must be one direction (at most {POLE_DB:g} dB)"
            )
        grid[:, ring] = grid[:, ring].mean(axis=-1, keepdims=True)
    if faults:
        raise InputError(faults)
    return PowerTable(frequency, np.deg2rad(theta), np.deg2rad(phi), grid, quantity)
