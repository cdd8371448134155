"""What the device's face shows: plane field, element excitations, elements that stand out."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray, amplitude_db
from colure.model.device import Device, Elements
from colure.values import holds_arrays
from colure.waves.aperture import Suspect, plane_field, suspicious_elements
from colure.waves.elements import element_excitations
from colure.waves.expansion import Expansion

PICTURE_POINTS = 161
#: Waves that leave a face go as far as this from its normal.
VISIBLE_DEG = 90.0
#: The picture reaches this much beyond the device on every side, in device widths.
PICTURE_MARGIN = 0.2


@dataclass(frozen=True, kw_only=True)
@holds_arrays
class Face:
    """The face of a panel at one frequency.

    x_m, y_m, field
        Picture coordinates and the co-polar plane field (y, x) on the face.
    positions_m
        (element, 3) in the device frame, rows along y, columns along x.
    excitation
        (frequency, element) complex.
    residual_db, floor_db
        What the elements leave unexplained below the pattern, and the level below which an element cannot be told from
        nothing, both means over frequency, dB.
    pitch_m
        Between two elements.
    excited
        (row, column) complex at this frequency.
    suspects
        Elements that stand out, judged over all frequencies.
    """

    x_m: FloatArray
    y_m: FloatArray
    field: ComplexArray
    positions_m: FloatArray
    excitation: ComplexArray
    residual_db: float
    floor_db: float
    pitch_m: float
    excited: ComplexArray
    suspects: tuple[Suspect, ...]


def face_of(expansion: Expansion, device: Device, *, index: int) -> Face | None:
    """Return the face of a device with a declared element grid at frequency `index`, or None."""
    grid = device.elements
    if grid is None:
        return None
    centre, width_height = 1e-3 * np.asarray(device.offset_mm), 1e-3 * np.asarray(device.size_mm[:2])
    slant = float(np.deg2rad(device.slant_deg))
    return face_at(expansion, grid, index=index, slant=slant, centre_m=centre, size_m=width_height)


def face_at(
    expansion: Expansion, grid: Elements, *, index: int, slant: float, centre_m: FloatArray, size_m: FloatArray
) -> Face:
    """Return the face of an element grid at frequency `index`.

    Parameters
    ----------
    slant
        Of the co-polar vector, radians.
    centre_m, size_m
        Centre of the grid (3,) and size of the face (2,), metres.
    """
    pitch, positions = 1e-3 * grid.pitch_mm, grid.places_m(centre_m)
    excitations = element_excitations(expansion, positions, slant=slant, pattern=grid.pattern)
    width, height = (float(s) * (0.5 + PICTURE_MARGIN) for s in size_m)
    x_m = np.linspace(-width, width, PICTURE_POINTS) + centre_m[0]
    y_m = np.linspace(-height, height, PICTURE_POINTS) + centre_m[1]
    one = Expansion(expansion.coefficients[index], expansion.k[index])
    plane = plane_field(one, x_m, y_m, float(centre_m[2]))
    co = np.cos(slant) * plane[0] + np.sin(slant) * plane[1]
    lowest = max(float(excitations.floor.mean()), 1e-10)
    suspects = suspicious_elements(excitations.weight, grid.rows, grid.columns, floor=lowest)
    residual, floor = float(amplitude_db(np.mean(excitations.residual))), float(amplitude_db(lowest))
    return Face(x_m=x_m, y_m=y_m, field=np.asarray(co), positions_m=positions, excitation=excitations.weight,
                residual_db=residual, floor_db=floor, pitch_m=pitch,
                excited=excitations.weight[index].reshape(grid.rows, grid.columns), suspects=tuple(suspects))  # fmt: skip


def tiles(face: Face) -> ComplexArray:
    """Return the excitation of the element in whose tile each point of the picture lies (y, x); 0 beside the elements.

    The plane field smears a dead element over half a wavelength; a tile does not.
    """
    rows, columns = face.excited.shape
    lowest = face.positions_m[0, :2] - 0.5 * face.pitch_m
    j, i = (
        np.floor((axis - low) / face.pitch_m + 1e-9).astype(int)
        for axis, low in zip((face.x_m, face.y_m), lowest, strict=True)
    )
    inside = ((i >= 0) & (i < rows))[:, None] & ((j >= 0) & (j < columns))[None]
    shown = face.excited[np.clip(i, 0, rows - 1)[:, None], np.clip(j, 0, columns - 1)[None]]
    return np.asarray(np.where(inside, shown, 0.0))
