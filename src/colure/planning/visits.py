"""Where the axes stand for what is measured beside the scan: reference sweeps and boresight checks."""

from __future__ import annotations

import numpy as np

from colure.errors import InputError
from colure.geometry.conventions import FloatArray
from colure.geometry.kinematics import Geometry
from colure.model.chamber import Chamber
from colure.model.device import Device
from colure.planning.aim import aims, bearing_from


def readouts_of(chamber: Chamber, angles_deg: FloatArray) -> FloatArray:
    """Return controller readouts (point, axis) of convention angles (point, axis), degrees."""
    tables = list(chamber.axis_table.values())
    return np.stack([axis.map.readout_deg(angles_deg[:, i]) for i, axis in enumerate(tables)], axis=-1)


def reference_readouts(chamber: Chamber, device: Device, scheme: str) -> FloatArray:
    """Return controller readouts (place, axis) of the reference's sweeps.

    Without a horn the device itself is read where ties look: the noise, and what port 2 reads more than port 1.

    Raises
    ------
    InputError
        If a place cannot be reached, or nothing could tell the two ports from each other.
    """
    if chamber.reference.has_horn:
        return readouts_of(chamber, np.array(reference_targets(chamber, scheme)))
    first = tie_readouts(chamber, device, follows=scheme != "dual-port" or chamber.probe.roll is not None)
    if scheme != "dual-port" or chamber.reference.method == "stored":
        return first[None]
    axis, index = chamber.probe.roll, list(chamber.axis_table).index("probe") if chamber.probe.roll else -1
    if axis is None:
        if chamber.probe.imbalance_db == 0.0:
            raise InputError(
                ["chamber.toml: probe.imbalance_db = 0: must be above 0 dB with reference.method = 'none', two ports and no "
                 "probe.roll: nothing in such a run tells port 2 from port 1"]
            )  # fmt: skip
        return first[None]
    here = float(axis.map.angle_deg(first[index]))
    for turn in (-90.0, 90.0):
        shown = float(axis.map.readout_deg(here + turn))
        if axis.min_deg - 1e-9 <= shown <= axis.max_deg + 1e-9:
            second = first.copy()
            second[index] = shown
            return np.stack([first, second])
    raise InputError(
        [f"chamber.toml: probe.roll: {here - 90.0:g} and {here + 90.0:g} deg are out of reach: one of them must be from "
         f"{axis.min_deg:g} to {axis.max_deg:g} deg, where port 2 meets what port 1 saw (reference.method = 'none')"]
    )  # fmt: skip


def reference_targets(chamber: Chamber, scheme: str) -> list[tuple[float, float, float]]:
    """Return the (first, second, probe) angles at which the reference horn is seen by each port.

    A single port also looks across the horn where the horn's purity is known: it then shows its own.

    The horn is polarized along x_D. Port 1 meets it at home; port 2 of a dual probe meets it
    with the probe turned by -90 deg or, without a probe axis, with the horn rolled by 90 deg.
    """
    if scheme != "dual-port":
        both = scheme == "two-pass" and chamber.reference.cross_polar_db is not None
        turned = [(0.0, 0.0, 90.0)] if both else []
        return [(0.0, 0.0, 0.0), *turned]
    if chamber.probe.roll is not None:
        return [(0.0, 0.0, 0.0), (0.0, 0.0, -90.0)]
    if chamber.positioner.geometry is Geometry.ROLL_OVER_AZIMUTH:
        return [(0.0, 0.0, 0.0), (0.0, 90.0, 0.0)]
    raise InputError(
        ["chamber.toml: probe.roll: missing; port 2 of a dual probe on this geometry needs it to meet the horn (deg)"]
    )


def tie_readouts(chamber: Chamber, device: Device, *, follows: bool) -> FloatArray:
    """Return where ties look (axis,): along the declared beam in the device's own polarization, where the signal is strong.

    follows
        The probe turns to that polarization; a dual probe stays, and its stronger port counts.

    Raises
    ------
    InputError
        If no axis position within the limits looks there.
    """
    azimuth, elevation = device.beam_deg
    bearing = bearing_from(azimuth_deg=azimuth, elevation_deg=elevation, theta_deg=None, phi_deg=None)
    ways = aims(bearing, chamber.positioner.geometry, chamber)
    best = ways[0]
    if best.fault:
        raise InputError(
            [f"device.toml: beam_deg = [{azimuth:g}, {elevation:g}]: ties cannot look there: {best.fault} (deg)"]
        )
    table = chamber.axis_table
    target = np.array([best.readouts_deg.get(name, axis.home_deg) for name, axis in table.items()])
    if "probe" in table:
        axis = table["probe"]
        # Turned by 180 deg the probe reads the same with the other sign.
        rolls = (device.slant_deg - best.slant_deg if follows else 0.0) + np.array([0.0, 180.0, -180.0, 360.0, -360.0])
        shown = axis.map.readout_deg(rolls if follows else rolls[:1])
        inside = shown[(shown >= axis.min_deg - 1e-9) & (shown <= axis.max_deg + 1e-9)]
        target[list(table).index("probe")] = inside[0] if inside.size else shown[0]
    return target
