"""Grids of directions judged for a device of the user's."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from colure.app.services.pattern_files import Waves
from colure.errors import InputError

if TYPE_CHECKING:
    from colure.analysis.setup.grid_study import GridErrors

#: Directions whose field is worked out at once.
AT_ONCE = 200_000


def grid_errors(
    waves: Waves, *, steps_deg: list[float], counts: list[int], orientations: int, percent: tuple[float, ...], seed: int
) -> list[GridErrors]:
    """Return the errors of grids for a far field at its middle frequency.

    Raises
    ------
    InputError
        If the field covers part of the sphere, or a step or count is out of its limits.
    """
    from colure.analysis.figures.cuts import find_beam
    from colure.analysis.setup.grid_study import constant_density, constant_step, study
    from colure.waves.scattered import Sampler

    if waves.region < np.pi - 1e-9:
        raise InputError(
            [f"{waves.name}: known to {np.rad2deg(waves.region):.3g} deg from +z; radiated power needs 180 deg"]
        )
    coefficients = waves.expansion.coefficients[waves.frequency_hz.size // 2]
    sampler = Sampler(coefficients)

    def power(theta: np.ndarray, phi: np.ndarray) -> np.ndarray:
        parts = range(0, theta.size, AT_ONCE)
        fields = [sampler.at(theta[i : i + AT_ONCE], phi[i : i + AT_ONCE], accuracy=1e-6) for i in parts]
        return np.concatenate([np.sum(np.abs(one) ** 2, axis=0) for one in fields])

    try:
        grids = [one for step in steps_deg for one in constant_step(step)]
        grids += [one for count in counts for one in constant_density(count)]
    except ValueError as error:
        raise InputError([str(error)]) from None
    return study(
        power, grids, mean=float(np.sum(np.abs(coefficients) ** 2)) / (4.0 * np.pi),
        peak=find_beam(coefficients, slant=waves.slant, region=np.pi).intensity, orientations=orientations,
        percent=percent, seed=seed,
    )  # fmt: skip
