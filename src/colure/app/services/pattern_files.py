"""A far field from wherever it lies: a run of a campaign, a netCDF-4 pattern, a tidy CSV."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from colure.app.services import processing
from colure.app.storage.begun import campaign_of
from colure.app.storage.folders import RunFolder, run_folder
from colure.errors import InputError
from colure.geometry.conventions import BoolArray, FloatArray
from colure.model.campaign import Campaign
from colure.values import holds_arrays

if TYPE_CHECKING:
    import xarray as xr

    from colure.analysis.pipeline.recipe import Processed
    from colure.waves.expansion import Expansion

FILE_ENDINGS = (".nc", ".csv")
#: A field known to less than this, radians from +z, is no pattern.
LEAST_REGION = float(np.deg2rad(10.0))
#: A component this much stronger than the other one (amplitudes) says which of x and y is meant.
TELLING = 1.12
#: A wave so far beside the co-polar axis is told about, degrees, if its linear share is at least this (axial ratio above 5 dB).
WELL_ALONG_DEG, LINEAR = 10.0, 0.5


@dataclass(frozen=True)
@holds_arrays
class Waves:
    """A far field as waves (frequency, 2, J), up to which polar angle from +z it is known (radians), and on a grid.

    quantity: what |e|^2 is: relative, directivity, gain, realized_gain or eirp. slant: of the co-polar vector, radians.
    copolar: how the co-polar vector of a file was chosen, in words; empty where it was said.
    """

    name: str
    frequency_hz: FloatArray
    expansion: Expansion
    region: float
    pattern: xr.Dataset
    quantity: str
    slant: float
    copolar: str = ""


def is_file(source: Path) -> bool:
    """Tell whether a source is a pattern's file rather than a campaign's folder."""
    return source.suffix.lower() in FILE_ENDINGS


def waves_of(
    source: Path,
    *,
    run_name: str = "first",
    state: str | None = None,
    slant_deg: float | None = None,
    present: bool = False,
) -> Waves:
    """Return the far field of a pattern file, or of a run of a campaign folder (processed anew).

    present
        Of a run: chamber.toml as it is now, not as the run began, see `as_begun`.

    Raises
    ------
    InputError
        If the file holds no far field, or the run cannot be processed.
    """
    if is_file(source):
        return waves_of_file(source, slant_deg=slant_deg)
    run = run_folder(source, run_name)
    return waves_of_run(campaign_of(source, run, present=present), run.state(state))


def waves_of_run(campaign: Campaign, run: RunFolder) -> Waves:
    """Return the far field of a run; raises `InputError` if it cannot be processed."""
    return waves_of_processed(run.path.name, processing.process(campaign, run))


def waves_of_processed(name: str, processed: Processed) -> Waves:
    """Return the far field of what was processed."""
    region = float(np.deg2rad(processed.sphere.region_deg))
    return Waves(
        name,
        processed.frequency_hz,
        processed.expansion,
        region,
        processed.pattern,
        "realized_gain",
        processed.budget.slant,
    )


def waves_of_file(path: Path, *, slant_deg: float | None = None) -> Waves:
    """Return the far field of a file; raises `InputError` if it holds none, or too little to expand.

    slant_deg
        Direction of the co-polar vector from x towards y; None: x or y, whichever is the stronger one at the peak.
    """
    from colure.analysis.fields.known_pattern import opened_pattern
    from colure.model.exchange import read_far_field

    dataset = read_far_field(path)
    region = _supported_region(dataset)
    if region < LEAST_REGION:
        raise InputError(
            [
                f"{path.name}: support: the field is determined to {np.rad2deg(region):.3g} deg from +z; needs at least 10 deg (full rings)"
            ]
        )
    try:
        known = opened_pattern(dataset)
    except (ValueError, KeyError) as error:
        raise InputError([f"{path.name}: {error}"]) from None
    if told := _misfit(dataset):
        dataset = dataset.assign_attrs(caution="; ".join(filter(None, (dataset.attrs.get("caution", ""), told))))
    quantity, region = str(dataset.attrs.get("quantity", "relative")), min(region, known.region)
    chosen, words = (slant_deg, "") if slant_deg is not None else copolar_direction(known.expansion, region)
    slant = float(np.deg2rad(chosen))
    return Waves(path.stem, known.frequency_hz, known.expansion, region, dataset, quantity, slant, words)


def _misfit(dataset: xr.Dataset) -> str:
    """Say where a field that states no errors of its own fits no waves; our own patterns were asked when they were made."""
    from colure.analysis.fields.worst_ring import ring_words
    from colure.model.fields import samples_of

    return "" if "error_waves" in dataset or "support" in dataset else ring_words(samples_of(dataset))


def copolar_direction(expansion: Expansion, region: float) -> tuple[float, str]:
    """Return the co-polar direction of a field that nobody declared, degrees from x towards y, and how it was chosen.

    It is x or y, whichever is the stronger one (Ludwig 3) at the peak of the middle frequency. Neither is where the wave is
    linear and slanted: the words say so.
    """
    from colure.analysis.figures.cuts import FarField, find_beam, ludwig_3

    middle = expansion.coefficients[expansion.k.size // 2]
    peak = find_beam(middle, slant=0.0, region=region).direction
    x, y = (complex(part[0]) for part in ludwig_3(FarField(middle).at(peak[None]), peak[None], 0.0))
    along_y = abs(y) > TELLING * abs(x)
    chosen, axis = (90.0, "y") if along_y else (0.0, "x")
    turned = (x * np.conj(y)).real
    tilt = 0.5 * float(np.rad2deg(np.arctan2(2.0 * turned, abs(x) ** 2 - abs(y) ** 2))) % 180.0
    # The ellipse's axes from its invariants: |x|^2 + |y|^2 and 2 |Im(x y*)| (Stokes).
    whole, circular = abs(x) ** 2 + abs(y) ** 2, 2.0 * abs((x * np.conj(y)).imag)
    off = abs((tilt - chosen + 90.0) % 180.0 - 90.0)
    if off > WELL_ALONG_DEG and np.sqrt(whole**2 - circular**2) > LINEAR * whole:
        return chosen, (
            f"caution: the wave at the peak lies {tilt:.0f} deg from x towards y; co- and cross-polar figures count from {axis}, "
            f"{off:.0f} deg beside it. --slant-deg {tilt:.0f} makes them its own"
        )
    return chosen, f"co-polar along {axis}, the stronger at the peak; --slant-deg says another" if along_y else ""


def _supported_region(dataset: xr.Dataset) -> float:
    """Return the polar angle from +z, radians, up to which every direction is determined at every frequency."""
    from colure.model.fields import LEAST_SUPPORT

    if "support" not in dataset:
        return float(np.pi)
    support = dataset["support"]
    full = (support >= LEAST_SUPPORT).all([dim for dim in support.dims if dim != "theta"]).values
    theta = np.deg2rad(dataset["theta"].values)
    bad = np.flatnonzero(~full)
    if bad.size == 0:
        return float(np.pi)
    return float(theta[bad[0] - 1]) if bad[0] > 0 else 0.0


def known_mask(dataset: xr.Dataset, index: int, theta: FloatArray, phi: FloatArray) -> BoolArray:
    """Return where a file's `support` says that the field is determined, (theta, phi) of a grid in radians."""
    from colure.model.fields import LEAST_SUPPORT

    if "support" not in dataset:
        return np.ones((theta.size, phi.size), bool)
    support = dataset["support"]
    one = (support.isel(frequency=index) if "frequency" in support.dims else support).transpose("theta", "phi")
    rows = np.abs(one["theta"].values[None] - np.rad2deg(theta)[:, None]).argmin(axis=1)
    columns = np.abs(one["phi"].values[None] - np.rad2deg(phi)[:, None]).argmin(axis=1)
    return np.asarray(one.values[np.ix_(rows, columns)] >= LEAST_SUPPORT)
