"""Open formats in and out. The tidy CSV: one sample per row, exp(+j w t), angles in degrees."""

from __future__ import annotations

import io
import re
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np

from colure.errors import InputError
from colure.geometry.conventions import ComplexArray, FloatArray
from colure.model.field_layout import LARGEST_FIELD, laid_out
from colure.model.fields import (
    LEAST_SUPPORT,
    FieldSamples,
    grid_dataset,
    is_grid,
    recognize_grid,
    samples_of,
    scattered_dataset,
)
from colure.model.plausible import merged, require_plausible
from colure.model.tables import SEPARATORS, TextTable, read_text_table
from colure.model.whole import whole_file

if TYPE_CHECKING:
    import pandas as pd
    import xarray as xr

COLUMNS = ("frequency_hz", "theta_deg", "phi_deg", "e_theta_re", "e_theta_im", "e_phi_re", "e_phi_im")
FIELD_COLUMNS = COLUMNS[3:]
#: A comment above the header that begins so is a caution that goes with the fields.
TOLD = "caution: "
OPTIONAL = ("radius_m", "weight")
LIMITS = {
    "frequency_hz": (1.0, 1e13, "Hz"),
    "theta_deg": (-360.0, 360.0, "deg"),
    "phi_deg": (-720.0, 720.0, "deg"),
    "radius_m": (1e-9, 1e9, "m"),
    "weight": (0.0, 1e12, "(relative)"),
}


def read_csv(
    path: Path,
    *,
    radius_m: float | None = None,
    far_field: bool = False,
    accept: frozenset[str] = frozenset(),
    insist: str = "--accept",
) -> xr.Dataset:
    """Read a tidy CSV into a near-field (or far-field) dataset; a grid is recognized by itself.

    Parameters
    ----------
    radius_m
        Radius of the sphere, where the file has no column `radius_m`.
    far_field
        The file holds a far field, exp(-jkr)/r removed; no radius then.
    accept
        What the user says is right although it hardly can be: words of `colure.model.plausible`.
    insist
        What to type before such a word to say so.

    Returns
    -------
    Fields; the attribute `caution` holds what is worth telling about them, empty if nothing.

    Raises
    ------
    InputError
        Naming file, line, column, value, limit and unit of everything that is wrong.
    """
    if radius_m is not None and not (np.isfinite(radius_m) and radius_m > 0.0):
        raise InputError([f"radius = {radius_m:g}: must be a number above 0 (m)"])
    table = _read_table(path)
    if far_field and (radius_m is not None or "radius_m" in table):
        raise InputError([f"{path.name}: radius_m: must be absent for a far field (m)"])
    if not far_field and radius_m is None and "radius_m" not in table:
        raise InputError(
            [
                f"{path.name}: radius_m: missing; a near field needs this column or `radius_m`, above 0 m "
                "(a far field needs no transform: `colure evaluate`)"
            ]
        )
    if radius_m is not None and "radius_m" in table:
        raise InputError([f"{path.name}: radius_m: given as a column and by `radius_m` = {radius_m:g} m; use one"])
    samples = []
    for frequency, part in table.groupby("frequency_hz", sort=True):
        radius = None
        if not far_field:
            column = part["radius_m"].to_numpy(float) if radius_m is None else np.full(len(part), radius_m)
            radius = np.asarray(column, float)
        weight = part["weight"].to_numpy(float) if "weight" in part else np.ones(len(part))
        field = np.stack(
            [
                part["e_theta_re"].to_numpy(float) + 1j * part["e_theta_im"].to_numpy(float),
                part["e_phi_re"].to_numpy(float) + 1j * part["e_phi_im"].to_numpy(float),
            ]
        )
        theta, phi = np.deg2rad(part["theta_deg"].to_numpy(float)), np.deg2rad(part["phi_deg"].to_numpy(float))
        samples.append(FieldSamples(float(str(frequency)), theta, phi, field, radius, weight))
    told = require_plausible(samples, path.name, accept, insist=insist)
    samples, said = merged(samples, path.name)
    told = [*table.attrs["told"], *told, *said, *_unread(table.attrs["unread"])]
    dataset = _on_grid(samples, path.name)
    dataset = scattered_dataset(samples, path.name) if dataset is None else dataset
    return dataset.assign_attrs(caution="; ".join(told))


def read_far_field(path: Path) -> xr.Dataset:
    """Read a far-field file, a pattern of ours (.nc) or a tidy CSV, that can be meant so.

    What was accepted when the file was converted is not asked again.

    Raises
    ------
    InputError
        Naming the file, what is wrong with it, and the command that says it is right.
    """
    from colure.model.files import open_dataset

    if not path.is_file():
        raise InputError([f"{path}: there is no such file"])
    insist = f"colure convert {path.name} checked.nc --far-field --accept"
    if path.suffix.lower() == ".csv":
        return read_csv(path, far_field=True, insist=insist)
    dataset = laid_out(open_dataset(path), path.name)
    accepted = frozenset(str(dataset.attrs.get("accepted", "")).split())
    require_plausible(samples_of(dataset), path.name, accepted, insist=insist)
    return dataset


def _unread(names: list[str]) -> list[str]:
    """Say what columns of a file nobody reads."""
    told = []
    if "error_bound" in names:
        told.append(
            "column error_bound is not read back: intervals of figures need the .nc file that it was written from"
        )
    others = [name for name in names if name != "error_bound"]
    return [*told, f"columns that are not read: {', '.join(others)}"] if others else told


def _on_grid(samples: list[FieldSamples], source: str) -> xr.Dataset | None:
    grids = [recognize_grid(one) for one in samples]
    first = grids[0]
    if first is None:
        return None
    for one in grids:
        if one is None or one.field.shape != first.field.shape:
            return None
        if not (np.allclose(one.theta, first.theta) and np.allclose(one.phi, first.phi)):
            return None
    radii = {float(one.radius_m[0]) if one.radius_m is not None else None for one in samples}
    if len(radii) != 1:
        return None
    field = np.stack([one.field for one in grids if one is not None])
    frequency = np.array([one.frequency_hz for one in samples])
    return grid_dataset(
        frequency, np.rad2deg(first.theta), np.rad2deg(first.phi), field, radius_m=radii.pop(), source=source
    )


def _read_table(path: Path) -> pd.DataFrame:
    """Read the table as numbers; only a faulty one is read again as text, to name the faults."""
    source = read_text_table(path)
    table = _parse(path, source, as_text=False)
    if table is None or table.isna().any(axis=None):
        text = _parse(path, source, as_text=True)
        assert text is not None  # text always parses, or an InputError was raised
        table = text
    missing = [name for name in COLUMNS if name not in table]
    if missing:
        raise InputError(
            [
                f"{path.name}: column {', '.join(missing)}: missing; the header must hold {','.join(COLUMNS)} "
                f"(read with {SEPARATORS[source.separator]} between columns)"
            ]
        )
    if len(table) == 0:
        raise InputError([f"{path.name}: 0 rows: must hold at least 1 (samples)"])
    import pandas as pd

    faults: list[str] = []
    numbers = {}
    for name in (*COLUMNS, *(n for n in OPTIONAL if n in table)):
        numbers[name], bad = _numbers(table[name], name, source.decimal)
        faults += [
            f"{path.name}: line {source.lines[row]}: {name} = {value!r}: must be {need}"
            for row, value, need in bad[:21]
        ]
    gaps = np.stack([np.isnan(numbers[name]) for name in FIELD_COLUMNS])
    half = np.flatnonzero(gaps.any(axis=0) & ~gaps.all(axis=0) & (not faults))
    faults += [
        f"{path.name}: line {source.lines[row]}: some of {', '.join(FIELD_COLUMNS)} are nan, must be all or none"
        for row in half[:21]
    ]
    if not faults and gaps.all():
        faults.append(f"{path.name}: {', '.join(FIELD_COLUMNS)}: nan everywhere, must hold at least one field")
    if faults:
        more = [f"{path.name}: and more faults like these"] if len(faults) > 20 else []
        raise InputError(faults[:20] + more)
    # Directions that say nan were not measured.
    measured = pd.DataFrame(numbers)[~gaps.all(axis=0)]
    measured.attrs["told"] = [one.removeprefix(TOLD) for one in source.notes if one.startswith(TOLD)]
    measured.attrs["unread"] = [name for name in table.columns if name not in numbers]
    return measured


def _parse(path: Path, source: TextTable, *, as_text: bool) -> pd.DataFrame | None:
    """Return the table with tidy column names, or None if a number does not parse."""
    import pandas as pd

    # Before version 3 the quick parser rounds the last digit unless told not to.
    older = int(pd.__version__.split(".")[0]) < 3
    exact: dict[str, Any] = {"float_precision": "round_trip"} if older and not as_text else {}
    try:
        table = pd.read_csv(
            io.StringIO(source.text),
            sep=source.separator,
            decimal=source.decimal,
            skipinitialspace=True,
            skip_blank_lines=False,
            index_col=False,
            dtype=str if as_text else float,
            keep_default_na=not as_text,
            **exact,
        )
    except (pd.errors.ParserError, pd.errors.EmptyDataError) as error:
        raise InputError([f"{path.name}: cannot be read as CSV: {_with_lines(str(error), source)}"]) from None
    except ValueError as error:
        if as_text:
            raise InputError([f"{path.name}: cannot be read as CSV: {error}"]) from None
        return None
    table.columns = [str(name).strip().lower() for name in table.columns]
    return table


def _with_lines(text: str, source: TextTable) -> str:
    """Return a parser's message with the line of the file in place of the line of the rows it was given."""

    def line(matched: re.Match[str]) -> str:
        row = int(matched.group(1)) - 2
        return f"line {source.lines[row]}" if 0 <= row < len(source.lines) else matched.group(0)

    cells = re.search(r"Expected (\d+) fields in line (\d+), saw (\d+)", text)
    if cells:
        wanted, row, matched = cells.groups()
        return f"{line(re.fullmatch(r'line (.+)', f'line {row}') or cells)}: {matched} cells, must be {wanted}"
    return re.sub(r"line (\d+)", line, text.strip())


def _numbers(column: pd.Series, name: str, decimal: str) -> tuple[np.ndarray, list[tuple[int, str, str]]]:
    """Return a column as numbers, and (row, text, requirement) of what is none or out of limits."""
    import pandas as pd

    plain = column if decimal == "." or column.dtype == float else column.astype(str).str.replace(",", ".")
    values = pd.to_numeric(plain, errors="coerce").to_numpy(float)
    low, high, unit = LIMITS.get(name, (-LARGEST_FIELD, LARGEST_FIELD, "V/m or relative"))
    need = f"a number from {low:g} to {high:g} {unit}"
    good = (values >= low) & (values <= high)
    if name in FIELD_COLUMNS and column.dtype != float:
        # `nan` as we write it says that nothing was measured there; an empty cell says nothing.
        good |= column.astype(str).str.strip().str.lower().to_numpy() == "nan"
    wrong = np.flatnonzero(~good)
    # What parsed is shown as a number, what did not as it was written; the same again is shown once.
    first_rows: dict[str, int] = {}
    for i in wrong:
        first_rows.setdefault(c if isinstance(c := column.iloc[i], str) else f"{c:g}", int(i))
        if len(first_rows) > 20:
            break
    return values, [(row, text, need + _meant(name, values[row])) for text, row in first_rows.items()]


def _meant(name: str, value: float) -> str:
    """Return what a frequency below 1 Hz would be in gigahertz, for an error's end; empty for anything else."""
    return f"; {value:g} GHz is {value * 1e9:g} in this column" if name == "frequency_hz" and 0.0 < value < 1.0 else ""


def write_csv(dataset: xr.Dataset, path: Path) -> int:
    """Write fields as a tidy CSV and return the number of rows that are nan for lack of support.

    Grids are written theta by theta, with the error of every direction (`error_bound`, coverage factor 2, in the
    field's unit) where the dataset holds it. Numbers are written so that reading gives the same bits. What the attribute
    `caution` tells stands above the header as a comment.
    """
    import pandas as pd

    dataset = laid_out(dataset, str(dataset.attrs.get("source") or "file"))
    support = None if "support" not in dataset else np.asarray(dataset["support"].values)
    frames, hidden = [], 0
    if is_grid(dataset):
        dataset = dataset.transpose("frequency", "theta", "phi", ...)
    for index, frequency in enumerate(np.atleast_1d(dataset["frequency"].values)):
        theta, phi, field, rest = _rows_of(dataset, index)
        known = np.isfinite(field).all(axis=0)
        if support is not None:
            at = support if support.ndim == 2 else support[index]
            known &= at.ravel() >= LEAST_SUPPORT
        field = np.where(known, field, complex(np.nan, np.nan))
        hidden += int(np.count_nonzero(~known))
        columns = {
            "frequency_hz": np.full(theta.size, float(frequency)),
            "theta_deg": np.round(theta, 10) + 0.0,
            "phi_deg": np.round(phi, 10) + 0.0,
            "e_theta_re": field[0].real,
            "e_theta_im": field[0].imag,
            "e_phi_re": field[1].real,
            "e_phi_im": field[1].imag,
            **rest,
        }
        if "error_bound" in dataset and is_grid(dataset):
            columns["error_bound"] = dataset["error_bound"].values[index].ravel()
        frames.append(pd.DataFrame(columns))
    with whole_file(path) as file:
        if told := " ".join(str(dataset.attrs.get("caution", "")).split()):
            file.write(f"# {TOLD}{told}\n")
        pd.concat(frames).to_csv(file, index=False, na_rep="nan", lineterminator="\n")
    return hidden


def _rows_of(dataset: xr.Dataset, index: int) -> tuple[FloatArray, FloatArray, ComplexArray, dict[str, FloatArray]]:
    """Return (theta, phi in degrees, field (2, row), further columns) of one frequency, every direction of it."""
    field = np.stack([np.asarray(dataset[name].values[index], complex).ravel() for name in ("e_theta", "e_phi")])
    if is_grid(dataset):
        theta, phi = (a.ravel() for a in np.meshgrid(dataset["theta"].values, dataset["phi"].values, indexing="ij"))
        rest = (
            {"radius_m": np.full(theta.size, float(dataset.attrs["radius_m"]))} if "radius_m" in dataset.attrs else {}
        )
        return theta, phi, field, rest
    weight = dataset["weight"].values[index] if "weight" in dataset else np.ones(field.shape[1])
    kept = weight > 0.0
    names = [name for name in ("radius_m", "weight") if name in dataset]
    rest = {name: dataset[name].values[index][kept] for name in names}
    return dataset["theta"].values[index][kept], dataset["phi"].values[index][kept], field[:, kept], rest
