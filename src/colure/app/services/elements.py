"""What every element of an array radiates, from a run or a far-field file."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from colure.app.services.pattern_files import is_file, waves_of
from colure.errors import InputError
from colure.geometry.conventions import FloatArray, amplitude_db, wavelength
from colure.model.campaign import Campaign
from colure.model.pattern import index_of

if TYPE_CHECKING:
    from colure.analysis.figures.face import Face
    from colure.model.device import Elements

#: Elements closer than this, in wavelengths, are not told apart (common practice, no source).
LEAST_PITCH = 0.2


def elements_of(
    source: Path,
    grid: Elements | None,
    *,
    centre_mm: tuple[float, float, float] | None = None,
    run_name: str = "first",
    state: str | None = None,
    slant_deg: float | None = None,
    frequency_ghz: float | None = None,
    present: bool = False,
) -> tuple[Face, float]:
    """Return the face of an array at one frequency, mid-band by default, and that frequency in hertz.

    Parameters
    ----------
    grid
        Elements; those of device.toml if None.
    centre_mm
        Centre of the elements from the origin of the field; offset_mm of device.toml, or the origin, if None.
    present
        Of a run: chamber.toml as it is now, not as the run began.

    Raises
    ------
    InputError
        If no elements are declared, there is no such frequency, or not every wave that leaves the face is known.
    """
    from colure.analysis.figures.face import VISIBLE_DEG, face_at

    device = None if is_file(source) else Campaign.load(source).device
    chosen = grid or (None if device is None else device.elements)
    if chosen is None:
        raise InputError(
            [f"{source.name}: no elements are declared; give `rows`, `columns` and `pitch_mm`, or [elements] in device.toml"]
        )  # fmt: skip
    if device is not None and slant_deg is not None:
        raise InputError([f"slant_deg = {slant_deg:g}: only for a file; device.toml says it for a run (deg)"])
    waves = waves_of(source, run_name=run_name, state=state, slant_deg=slant_deg, present=present)
    if np.rad2deg(waves.region) < VISIBLE_DEG - 1e-6:
        raise InputError(
            [f"{waves.name}: known to {np.rad2deg(waves.region):.3g} deg from +z; elements need {VISIBLE_DEG:g} deg"]
        )
    i = index_of(waves.frequency_hz, frequency_ghz)
    length_mm = 1e3 * float(wavelength(waves.frequency_hz[i]))
    if chosen.pitch_mm < LEAST_PITCH * length_mm:
        raise InputError(
            [f"pitch = {chosen.pitch_mm:g} mm: a far field cannot tell elements apart below {LEAST_PITCH * length_mm:.3g} mm "
             f"({LEAST_PITCH:g} wavelengths)"]
        )  # fmt: skip
    centre = centre_mm or ((0.0, 0.0, 0.0) if device is None else device.offset_mm)
    size = 1e-3 * chosen.pitch_mm * np.array([chosen.columns, chosen.rows], float)
    face = face_at(waves.expansion, chosen, index=i, slant=waves.slant, centre_m=1e-3 * np.asarray(centre), size_m=size)
    return face, float(waves.frequency_hz[i])


def levels_db(face: Face) -> FloatArray:
    """Return the level of every element (row, column), dB of the strongest."""
    return amplitude_db(face.excited / np.abs(face.excited).max(), least=1e-10)


def phases_deg(face: Face) -> FloatArray:
    """Return the phase of every element (row, column) about their mean, degrees; nan where it lies in the floor."""
    mean = np.angle(np.sum(face.excited * np.abs(face.excited)))
    phase = np.rad2deg(np.angle(face.excited * np.exp(-1j * mean)))
    return np.asarray(np.where(levels_db(face) > face.floor_db, phase, np.nan))
