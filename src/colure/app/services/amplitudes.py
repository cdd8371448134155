"""Files of amplitudes on two spheres turned into a far field, where that can be believed."""

from __future__ import annotations

from pathlib import Path

from colure.app.storage.folders import require_free
from colure.errors import InputError


def transform_amplitudes(
    sources: list[Path],
    target: Path,
    *,
    start: Path,
    size_mm: tuple[float, float, float],
    centre_mm: tuple[float, float, float] = (0.0, 0.0, 0.0),
    order: int | None = None,
    step_deg: float = 1.0,
    noise_db: float | None = None,
    accept: frozenset[str] = frozenset(),
) -> tuple[list[str], bool]:
    """Find a far field from the amplitudes of near fields on two or more spheres; phases in the files are not used.

    Parameters
    ----------
    start
        Far field that resembles the device, such as a simulation of its design.
    size_mm, centre_mm
        Box that holds all sources, in the frame of the files.

    Returns
    -------
    What was found, one line per frequency, and whether it can be believed. The target is written only if it can.

    Raises
    ------
    InputError
        If a file is missing or malformed, the target exists, or the samples cannot carry the result.
    """
    from colure.analysis.fields.amplitudes import SourceBox, far_field_of_amplitudes
    from colure.model.exchange import read_far_field
    from colure.model.field_layout import laid_out
    from colure.model.fields import samples_of
    from colure.model.files import open_dataset, save_dataset
    from colure.model.plausible import require_plausible

    require_free(target)
    told, spheres = [], []
    for source in sources:
        spheres.append(laid_out(open_dataset(source), source.name))
        # Amplitudes show no vector at a pole: without phase they contradict each other there by nature.
        told += require_plausible(samples_of(spheres[-1]), source.name, accept | {"poles"})
    box = SourceBox(_metres(size_mm), _metres(centre_mm))
    try:
        pattern, retrievals = far_field_of_amplitudes(
            spheres, read_far_field(start), box, order=order, step_deg=step_deg, noise_db=noise_db
        )
    except ValueError as error:
        raise InputError([f"amplitude_only: {error}"]) from None
    believed = all(one.trustworthy for one in retrievals)
    if believed:
        save_dataset(pattern, target)
    words = [
        f"{frequency / 1e9:.6g} GHz: {one.words}"
        for frequency, one in zip(pattern["frequency"].values, retrievals, strict=True)
    ]
    return [*words, *(f"caution: {one}" for one in told)], believed


def _metres(point_mm: tuple[float, float, float]) -> tuple[float, float, float]:
    x, y, z = point_mm
    return 1e-3 * x, 1e-3 * y, 1e-3 * z
