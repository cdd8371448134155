"""Files of fields turned into other files."""

from __future__ import annotations

import math
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from colure.app.storage.folders import require_free
from colure.errors import InputError
from colure.geometry.directions import unit_vector

if TYPE_CHECKING:
    import xarray as xr

    from colure.analysis.fields.errors import Declared
    from colure.analysis.fields.probe import FieldProbe
    from colure.model.fields import FieldSamples


#: A part of a probe's sphere without samples is told if it is as wide as this, from its middle to its edge.
PROBE_GAP_DEG = 20.0


@dataclass(frozen=True, kw_only=True)
class FileUncertainty:
    """What the user knows of a field file's errors, in the units of the command line.

    noise_db
        Noise of one component of one sample, dB of the largest; None: from the data.
    probe_db
        How far the probe's pattern may be off 10 deg off its axis (k = 2); 0: no probe acts; None: not known.
    """

    noise_db: float | None = None
    probe_db: float | None = None
    position_mm: float = 0.0
    angle_deg: float = 0.0
    error_limit_db: float = -40.0

    def declared(self) -> Declared:
        """Return the same in SI units and radians."""
        from colure.analysis.fields.errors import Declared

        return Declared(
            noise_db=self.noise_db,
            probe_db=self.probe_db,
            position_m=1e-3 * self.position_mm,
            angle=math.radians(self.angle_deg),
            error_limit_db=self.error_limit_db,
        )


def _probe(files: list[Path]) -> FieldProbe | None:
    """Read the far fields of a probe's ports."""
    from colure.analysis.fields.probe import FieldProbe
    from colure.model.exchange import read_far_field
    from colure.model.fields import samples_of

    if not files:
        return None
    return FieldProbe(tuple(samples_of(read_far_field(one)) for one in files))


def partial_probe(probe: FieldProbe | None) -> list[str]:
    """Say that a probe's pattern (port 1, first frequency) is known on a part of the sphere only; empty where it is whole."""
    from colure.geometry.directions import fold
    from colure.waves.cells import Cells

    if probe is None:
        return []
    one = probe.ports[0][0]
    folded, _ = fold(theta=one.theta, phi=one.phi)
    gap_deg = math.degrees(2.0 * math.asin(min(1.0, 0.5 * Cells.of(folded.theta, folded.phi).widest)))
    if gap_deg < PROBE_GAP_DEG:
        return []
    return [
        f"the probe's pattern holds no sample within {gap_deg:.0f} deg of some directions; there stands what its waves say, and no "
        "stated error holds what that costs"
    ]


def convert_file(
    source: Path,
    target: Path,
    *,
    radius_m: float | None = None,
    far_field: bool = False,
    accept: frozenset[str] = frozenset(),
) -> str:
    """Convert between tidy CSV and netCDF-4 and return what was found in plain words.

    Raises
    ------
    InputError
        If the endings are not .csv and .nc, the target exists, or the source is malformed or hardly meant so.
    """
    from colure.model.exchange import read_csv, write_csv
    from colure.model.field_layout import laid_out
    from colure.model.fields import is_grid, samples_of
    from colure.model.files import file_hash, open_dataset, save_dataset, with_step
    from colure.model.plausible import require_plausible

    endings = (source.suffix.lower(), target.suffix.lower())
    require_free(target)
    if endings == (".csv", ".nc"):
        dataset = read_csv(source, radius_m=radius_m, far_field=far_field, accept=accept)
        told = str(dataset.attrs.pop("caution"))
        dataset = with_step(dataset, "read", file=source.name, sha256=file_hash(source), caution=told)
        save_dataset(_accepted(dataset, accept), target)
        sizes = " x ".join(f"{size} {name}" for name, size in dataset.sizes.items())
        description = f"{'grid' if is_grid(dataset) else 'scattered samples'}: {sizes}"
        return f"{description}\ncaution: {told}" if told else description
    if endings == (".nc", ".csv"):
        dataset = laid_out(open_dataset(source), source.name)
        hidden = write_csv(dataset, target)
        note = f"; {hidden} directions that the data do not determine are nan" if hidden else ""
        return f"{dataset.attrs.get('title', 'fields')}{note}"
    if endings == (".nc", ".nc") and accept:
        dataset = laid_out(open_dataset(source), source.name)
        told = "; ".join(require_plausible(samples_of(dataset), source.name, accept))
        dataset = with_step(dataset, "accept", file=source.name, sha256=file_hash(source), caution=told)
        save_dataset(_accepted(dataset, accept), target)
        return f"the same fields; kept with them: {', '.join(sorted(accept))} as meant"
    raise InputError(
        [
            f"{source.name} to {target.name}: must be .csv to .nc, .nc to .csv, or with `accept` .nc to .nc (file endings)"
        ]
    )


def _accepted(dataset: xr.Dataset, accept: frozenset[str]) -> xr.Dataset:
    """Keep with the data what the user said is right: what reads them later asks no more."""
    return dataset.assign_attrs(accepted=" ".join(sorted(accept))) if accept else dataset


def transform_file(
    source: Path,
    target: Path,
    *,
    order: int | None,
    step_deg: float,
    origin_m: tuple[float, float, float] | None,
    keep_radius_m: float | None,
    accept: frozenset[str] = frozenset(),
    probes: list[Path] | None = None,
    uncertainty: FileUncertainty | None = None,
) -> list[str]:
    """Turn a file of near fields into a far-field pattern file; returns plain words.

    Parameters
    ----------
    probes
        Far fields of the probe: one port that was rolled, or two fixed ones.
    uncertainty
        What is known of noise and positions.

    Raises
    ------
    InputError
        If a file is missing or malformed, or the samples cannot carry the result.
    """
    from colure.analysis.fields.near_to_far import far_field
    from colure.model.fields import LEAST_SUPPORT, samples_of
    from colure.model.files import save_dataset
    from colure.model.plausible import require_plausible

    if abs(180.0 / step_deg - round(180.0 / step_deg)) > 1e-9:
        raise InputError([f"step_deg = {step_deg:g}: must divide 180 deg without remainder"])
    if target.suffix.lower() != ".nc":
        raise InputError(
            [f"{target.name}: must end in .nc: a far field with its errors; it is converted to CSV afterwards"]
        )
    require_free(target)
    dataset = _near_field(source, accept)
    samples = samples_of(dataset)
    # What was accepted when the file was converted is not asked again.
    told = require_plausible(samples, source.name, accept | set(str(dataset.attrs.get("accepted", "")).split()))
    _require_surface(samples, source.name)
    given, probe = uncertainty or FileUncertainty(), _probe(probes or [])
    told += partial_probe(probe)
    try:
        pattern, words = far_field(
            dataset, order=order, step_deg=step_deg, origin_m=origin_m, keep_radius_m=keep_radius_m,
            declared=given.declared(), probe=probe,
        )  # fmt: skip
    except ValueError as error:
        raise InputError([f"{source.name}: {error}"]) from None
    if partial := partial_probe(probe):
        pattern = pattern.assign_attrs(caution="; ".join(filter(None, (pattern.attrs.get("caution", ""), partial[0]))))
    save_dataset(pattern, target)
    if "support" in pattern:
        share = float((pattern["support"] >= LEAST_SUPPORT).mean())
        if share < 1.0:
            words.append(determined_words(share))
    return [*words, *(f"caution: {one}" for one in told)]


def determined_words(share: float) -> str:
    """Say how much of the grid is determined; never 100 % where a direction is not."""
    return f"only {math.floor(1000.0 * share) / 10.0:g} % of the grid is determined by the data (variable `support`)"


def _near_field(source: Path, accept: frozenset[str]) -> xr.Dataset:
    """Return the near field of a .nc or a tidy .csv with its radius in a column."""
    from colure.model.exchange import read_csv
    from colure.model.field_layout import laid_out
    from colure.model.files import file_hash, open_dataset, with_step

    if source.suffix.lower() != ".csv":
        return laid_out(open_dataset(source), source.name)
    dataset = read_csv(source, accept=accept)
    told = str(dataset.attrs.pop("caution"))
    return with_step(dataset, "read", file=source.name, sha256=file_hash(source), caution=told)


def _require_surface(samples: list[FieldSamples], source: str) -> None:
    """Raise `InputError` if directions lie on one circle: a cut says nothing of the waves beside it."""
    for one in samples:
        places = unit_vector(theta=one.theta, phi=one.phi)
        # A cone is a circle as well: what counts is whether the directions leave a plane.
        if np.linalg.matrix_rank(places - places[:1], tol=1e-6) < 3:
            raise InputError(
                [
                    f"{source}: theta_deg, phi_deg: {one.theta.size} directions at {one.frequency_hz:g} Hz lie on one circle (a cut); "
                    "a transform needs directions over a surface"
                ]
            )
