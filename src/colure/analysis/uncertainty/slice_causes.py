"""What slices too far apart do: azimuthal orders beyond what they resolve are taken for lower ones."""

from __future__ import annotations

import numpy as np

from colure.analysis.steps.assemble import finer_columns
from colure.analysis.uncertainty.inputs import Inputs
from colure.analysis.uncertainty.trial import Cause, Perturbation, Trial
from colure.geometry.conventions import ComplexArray


def _stopped(inputs: Inputs) -> bool:
    return 2 <= inputs.sphere.slices_used < inputs.sphere.slices_planned


def _aliasing(cause: Cause, trial: Trial, random: np.random.Generator) -> Perturbation:
    """Return the aliasing of a scan that was stopped before all its slices were measured.

    How much every second slice alone (or every third, ...) would change shows what the missing ones may change. The
    spectrum over azimuthal orders falls beyond the device's radius, so that is more than the error (derivable).
    """
    sphere = trial.inputs.sphere
    count = factor_of(sphere.slices_used) or 1
    fewer = np.stack([thinned(sphere.field, sphere.slices_used, first) for first in range(count)])
    words = (
        f"change when the pattern rests on fewer still of its {sphere.slices_used} of {sphere.slices_planned} slices"
    )
    return Perturbation(cause, trial.changed_field(fewer), words)


SLICE_CAUSES = (
    Cause(key="slice aliasing", text="a scan that was stopped: what every second of its slices alone would change", perturb=_aliasing,
          needs="slices that were planned and not measured", kind="measured", distribution="change", applies=_stopped),
)  # fmt: skip


def factor_of(slices: int) -> int:
    """Return the smallest p of which every p-th slice is an even set of at least two; 0 if there is none."""
    return next((p for p in range(2, slices) if slices % p == 0), 0)


def thinned(field: ComplexArray, slices: int, first: int = 0) -> ComplexArray:
    """Return fields (..., phi) as every p-th of `slices` full-circle slices would have given them, from one of the first p on.

    A prime number of slices cannot be thinned evenly: the upper half of the azimuthal orders is left out instead.
    """
    columns = field.shape[-1]
    spectrum = np.fft.fft(field, axis=-1)
    order = np.abs(np.fft.fftfreq(columns, 1.0 / columns))
    factor = factor_of(slices)
    if not factor:
        return np.asarray(np.fft.ifft(np.where(order <= slices / 2.0, spectrum, 0.0), axis=-1))
    # Back to the slices' own columns: exact, because nothing beyond their orders is in the field.
    own = 2 * slices
    coarse = np.zeros((*field.shape[:-1], own), complex)
    coarse[..., :slices] = spectrum[..., :slices]
    coarse[..., -slices + 1 :] = spectrum[..., -slices + 1 :]
    if columns > own:
        coarse[..., slices] = spectrum[..., slices] + spectrum[..., columns - slices]
    else:
        coarse[..., slices] = spectrum[..., slices]
    kept = np.fft.ifft(coarse, axis=-1)[..., first::factor] * (own / columns)
    fewer = np.fft.fft(finer_columns(kept, columns), axis=-1)
    back = np.exp(-2j * np.pi * np.fft.fftfreq(columns, 1.0 / columns) * first / own)
    return np.asarray(np.fft.ifft(fewer * back, axis=-1))
