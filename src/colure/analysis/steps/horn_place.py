"""What it does to the reference's sweeps that the horn stands beside the axes' intersection.

The probe then sees the horn from aside, at another distance and by another part of its own pattern. The horn's pattern is that
of its aperture with the quadratic phase of both flares and of the near observer (`colure.waves.horn`).
"""

from __future__ import annotations

import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray, wavenumber
from colure.geometry.directions import phi_hat, theta_hat
from colure.geometry.kinematics import device_to_lab
from colure.model.chamber import Chamber
from colure.waves.expansion import Expansion
from colure.waves.horn import horn_aside
from colure.waves.scattered import synthesis_at

#: How much of the probe's own fall towards the horn is open where its pattern is not known (common practice, no source).
OPEN = 0.5
#: 20/ln 10: dB per neper.
DB = 20.0 / np.log(10.0)


def horn_seen(
    chamber: Chamber, frequency_hz: FloatArray, angles_deg: dict[str, float], *, port: int, offset_m: FloatArray,
    probe: Expansion | None = None,
) -> ComplexArray:  # fmt: skip
    """Return the wave (frequency,) that a port receives of the horn, over that of a horn at the intersection polarized along it.

    Parameters
    ----------
    angles_deg
        Convention's angles of the axes.
    port
        1 or 2; port 2 lies 90 deg of growing roll from port 1.
    offset_m
        (3,) place of the horn's mouth with all axes at home, device frame.
    probe
        Its pattern; a Gaussian beam of its declared gain if None.
    """
    geometry = chamber.positioner.geometry
    first, second = (np.deg2rad(angles_deg[name]) for name in geometry.axis_names)
    turn = device_to_lab(geometry, first=first, second=second).rotation
    chi = np.deg2rad(angles_deg.get("probe", 0.0) + 90.0 * (port - 1))
    distance = chamber.range_length_m
    way = np.array([0.0, 0.0, distance]) - turn @ offset_m
    r = float(np.linalg.norm(way))
    a, b, slant_e, slant_h = chamber.reference.sides_m
    frequency = np.asarray(frequency_hz, float)

    def laid(direction: FloatArray, at_m: float) -> ComplexArray:
        near = [1.0 / (1.0 / slant + 1.0 / at_m) for slant in (slant_e, slant_h)]
        # On its axis the horn lays less so near; `horn_aside` is relative to its own axis.
        sent = horn_aside(frequency, direction[None], a=a, b=b, slant_e=near[0], slant_h=near[1])
        return np.asarray(sent[:, 0])

    sent = laid(turn.T @ (way / r), r) @ turn.T  # (frequency, 3), lab frame
    response = _response(probe, chamber.probe.gain_dbi, way / r, float(chi))
    away = distance / r * np.exp(-1j * wavenumber(frequency) * (r - distance))
    return np.asarray(np.sum(sent * response, axis=-1) * away)


def _response(probe: Expansion | None, gain_dbi: float, travel: FloatArray, chi: float) -> ComplexArray:
    """Return the probe's unit response (frequency or 1, 3) to a wave that travels along `travel`, lab frame; rolled by `chi`."""
    own_x = np.array([np.cos(chi), np.sin(chi), 0.0])
    if probe is None:
        aside = float(np.arccos(np.clip(travel[2], -1.0, 1.0)))
        carried = own_x - np.array([0.0, 0.0, travel @ own_x / (1.0 + travel[2])])
        return np.asarray(carried * np.exp(-(10.0 ** (gain_dbi / 10.0)) / 8.0 * aside**2), complex)[None]
    # The probe looks back at the device: its own axes are x, -y and -z of the lab, turned with it.
    axes = np.stack([own_x, np.array([np.sin(chi), -np.cos(chi), 0.0]), np.array([0.0, 0.0, -1.0])])
    looked = axes @ -travel
    theta, phi = (
        np.array([0.0, np.arccos(np.clip(looked[2], -1.0, 1.0))]),
        np.array([0.0, np.arctan2(looked[1], looked[0])]),
    )
    field = synthesis_at(probe.coefficients, theta=theta, phi=phi)  # (frequency, 2, direction)
    on_axis = field[:, 0, 0]  # along x at phi = 0
    t_hat, p_hat = theta_hat(theta=theta[1], phi=phi[1]), phi_hat(theta=theta[1], phi=phi[1])
    vector = field[:, 0, 1, None] * t_hat + field[:, 1, 1, None] * p_hat
    return np.asarray(vector / on_axis[:, None] @ axes)


def place_uncertainty_db(chamber: Chamber, frequency_hz: FloatArray, probe: Expansion | None = None) -> float:
    """Return what the uncertainty of the horn's place does to every level, dB, expanded (k = 2): the most over the band.

    Beside the intersection the probe's own pattern counts as well, in part where it is not known.
    """
    reference = chamber.reference
    expanded = 1e-3 * reference.offset_uncertainty_mm
    at = 1e-3 * np.asarray(reference.offset_mm, float)
    home = dict.fromkeys(("azimuth", "roll", "elevation"), 0.0)

    def level(place: FloatArray, known: Expansion | None = probe) -> FloatArray:
        return np.asarray(
            DB * np.log(np.abs(horn_seen(chamber, frequency_hz, home, port=1, offset_m=place, probe=known)))
        )

    if expanded == 0.0:
        return 0.0
    sides = [0.5 * np.abs(level(at + expanded * axis) - level(at - expanded * axis)) for axis in np.eye(3)]
    bent = [np.abs(0.5 * (level(at + expanded * axis) + level(at - expanded * axis)) - level(at)) for axis in np.eye(3)]
    square = sum(one**2 for one in [*sides, *bent])
    if probe is None:
        along = np.array([0.0, 0.0, chamber.range_length_m]) - at
        aside = float(np.arccos(along[2] / np.linalg.norm(along)))
        fall = DB * 10.0 ** (chamber.probe.gain_dbi / 10.0) / 8.0 * aside**2
        square = square + (OPEN * fall) ** 2
    return float(np.sqrt(np.max(square)))
