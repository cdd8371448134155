"""A run's pattern in a frame, coordinates and polarization that somebody else wants."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from colure.app.services.processing import opened, processed
from colure.app.storage.folders import RunFolder, require_free
from colure.errors import InputError
from colure.model.campaign import Campaign
from colure.model.whole import whole_file

if TYPE_CHECKING:
    from colure.analysis.pipeline.recipe import Processed
    from colure.geometry.conventions import FloatArray


def write_view(
    campaign: Campaign,
    run: RunFolder,
    target: Path,
    *,
    coordinates: str,
    basis: str,
    boresight: str,
    origin: str,
    step_deg: float,
) -> list[str]:
    """Write a run's pattern in a chosen frame, coordinates and basis, and return the formulas in words.

    Raises
    ------
    InputError
        If boresight or origin cannot be read, the target exists, or the record lacks what the recipe needs.
    """
    import csv

    import numpy as np

    from colure.analysis.figures import frames
    from colure.geometry.conventions import power_db
    from colure.geometry.polarization import Basis

    require_free(target)
    processed_run = processed(campaign, opened(run), campaign.recipe())
    middle, slant = processed_run.frequency_hz.size // 2, processed_run.budget.slant
    region = float(np.deg2rad(processed_run.sphere.region_deg))
    direction = frames.boresight_of(boresight, processed_run.expansion.coefficients[middle], slant=slant, region=region)
    origin_m = _origin(origin, processed_run, campaign)
    turned = frames.turned_to(frames.recentred(processed_run.expansion, origin_m), direction)
    seen = frames.view(turned, frames.Coordinates(coordinates), Basis(basis), step_deg=step_deg, slant=slant)
    # Back in the device frame: only what was measured is written.
    own = frames.direction_of(seen.coordinates, seen.first, seen.second) @ frames.rotation_to(direction)
    inside = np.flatnonzero(own[:, 2] >= np.cos(region) - 1e-9)
    one, two = (name.split(" ")[0].replace("-", "_") for name in seen.basis.component_names)
    with whole_file(target) as out:
        writer = csv.writer(out)
        writer.writerow(
            ["frequency_hz", *seen.coordinates.names, f"{one}_re", f"{one}_im", f"{two}_re", f"{two}_im", "total_dbi"]
        )
        for frequency, field in zip(processed_run.frequency_hz, seen.field, strict=True):
            total = power_db(np.sum(np.abs(field) ** 2, axis=0), least=1e-20)
            for i in inside:
                values = (
                    seen.first[i],
                    seen.second[i],
                    field[0, i].real,
                    field[0, i].imag,
                    field[1, i].real,
                    field[1, i].imag,
                )
                writer.writerow([f"{frequency:.3f}", *(f"{v:.9g}" for v in values), f"{total[i]:.4f}"])
    az, el = (float(np.rad2deg(v)) for v in (np.arctan2(direction[0], direction[2]), np.arcsin(direction[1])))
    return [
        f"+z of the frame looks at azimuth {az:.3f}, elevation {el:.3f} deg of the device (smallest turn)",
        "phases refer to x {:.3f}, y {:.3f}, z {:.3f} mm of the device frame: e(d) exp(-j k d . origin)".format(
            *(1e3 * origin_m)
        ),
        f"coordinates {coordinates}: {seen.coordinates.formula}",
        f"components {', '.join(seen.basis.component_names)}: {frames.BASIS_FORMULA[seen.basis]}",
    ]


def _origin(text: str, processed_run: Processed, campaign: Campaign) -> FloatArray:
    """Return the phase reference (3,) in metres that `crossing`, `phase-centre` or X,Y,Z (mm) names."""
    import numpy as np

    from colure.analysis.findings.self_check import centre_of

    if text == "crossing":
        return np.zeros(3)
    if text == "phase-centre":
        return np.asarray(centre_of(processed_run, (processed_run.device or campaign.device).slant_deg).position_m)
    try:
        x, y, z = (1e-3 * float(part) for part in text.split(","))
    except ValueError:
        raise InputError([f"origin_mm = {text!r}: must be crossing, phase-centre, or X,Y,Z (mm)"]) from None
    return np.array([x, y, z])
