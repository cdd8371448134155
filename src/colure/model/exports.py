"""Patterns for other programs: the trade's text exchange format, MATLAB-readable files, Touchstone, figure tables."""

from __future__ import annotations

import csv
import datetime
import io
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np

from colure.errors import InputError
from colure.geometry.conventions import ComplexArray, FloatArray
from colure.model.bands import bands_apart
from colure.model.figure import Figure
from colure.model.whole import whole_file
from colure.values import holds_arrays

#: A text cell that begins like this would be taken for a formula by a spreadsheet.
FORMULA_SIGNS = ("=", "+", "-", "@", "\t", "\r")
#: Lines that NSMA WG16.99.050 asks for at the top, in its order, as far as a measurement can fill them.
NSMA_LINE = 60


def safe_text(text: str) -> str:
    """Return text that no spreadsheet takes for a formula: an apostrophe goes before such a beginning."""
    return f"'{text}" if text.startswith(FORMULA_SIGNS) else text


@dataclass(frozen=True)
@holds_arrays
class TextCut:
    """One cut of an exchange file: `AZ` or `EL`, polarization pair as device/probe (`H/H`), degrees, dB re the largest gain."""

    plane: str
    polarization: str
    angle_deg: FloatArray
    level_db: FloatArray


def nsma_text(
    *,
    name: str,
    note: str,
    date: datetime.date,
    frequency_hz: FloatArray,
    gain_dbi: FloatArray,
    beamwidths_deg: tuple[float, float],
    cuts: list[TextCut],
    bands: str = "",
) -> str:
    """Return cuts as text in the comma-colon format of NSMA recommendation WG16.99.050 (field names from its annex).

    frequency_hz, gain_dbi
        Band edges and the frequency of the cuts between them: three values each.
    beamwidths_deg
        Half-power widths of the azimuth and the elevation cut.
    bands
        Where several bands were measured, which: the format itself knows only the lowest and the highest frequency.
    """
    out = io.StringIO()

    def line(field: str, *values: object) -> None:
        out.write(f"{field}:," + ",".join(str(value) for value in values) + "\n")

    line("REVNUM", "NSMA WG16.99.050")
    line("REVDAT", "19990520")
    line("ANTMAN", "")
    line("MODNUM", _plain(name))
    line("DESCR1", _plain(note))
    line("DESCR2", _plain(f"cuts and widths at {frequency_hz[1] / 1e6:.3f} MHz"))
    if bands:
        line("DESCR3", _plain(f"bands {bands}"))
    line("DTDATA", date.strftime("%Y%m%d"))
    line("LOWFRQ", f"{frequency_hz[0] / 1e6:.3f}")
    line("HGHFRQ", f"{frequency_hz[2] / 1e6:.3f}")
    line("GUNITS", "DBI/DBR")
    for field, gain in zip(("LWGAIN", "MDGAIN", "HGGAIN"), gain_dbi, strict=True):
        line(field, f"{gain:.2f}")
    line("AZWIDT", f"{beamwidths_deg[0]:.2f}")
    line("ELWIDT", f"{beamwidths_deg[1]:.2f}")
    line("PATTYP", "TYPICAL")
    line("NUMCUT", len(cuts))
    for one in cuts:
        line("PATCUT", one.plane)
        line("POLARI", one.polarization)
        line("NUPOIN", one.angle_deg.size)
        for angle, level in zip(one.angle_deg, one.level_db, strict=True):
            out.write(f"{angle:.2f},{level:.3f}\n")
    line("ENDFIL", "EOF")
    return out.getvalue()


def _plain(text: str) -> str:
    """Return one line of printable text without the format's separators."""
    kept = "".join(c if c.isprintable() and c not in ",:" else " " for c in text)
    return kept[:NSMA_LINE].strip()


def read_nsma(text: str) -> tuple[dict[str, str], list[TextCut]]:
    """Read what `nsma_text` wrote: (fields, cuts).

    Raises
    ------
    InputError
        Naming the line that cannot be read.
    """
    fields: dict[str, str] = {}
    cuts: list[TextCut] = []
    lines = iter(enumerate(text.splitlines(), start=1))
    most = text.count("\n") + 1
    for number, row in lines:
        field, _, value = row.partition(":,")
        if field == "ENDFIL":
            return fields, cuts
        if field != "NUPOIN":
            fields[field] = value
            continue
        if missing := [name for name in ("PATCUT", "POLARI") if name not in fields]:
            raise InputError([f"line {number}: NUPOIN: {', '.join(missing)} must come before the points of a cut"])
        if not value.strip().isdecimal() or not 1 <= int(value) <= most:
            raise InputError(
                [f"line {number}: NUPOIN = {value!r}: must be a count of points from 1 to {most} (lines of the file)"]
            )
        table = np.array([_point_of(lines, number) for _ in range(int(value))])
        cuts.append(TextCut(fields["PATCUT"], fields["POLARI"], table[:, 0], table[:, 1]))
    raise InputError(["ENDFIL: missing; the file was cut off (line)"])


def _point_of(lines: Iterator[tuple[int, str]], cut: int) -> tuple[float, float]:
    """Return the next line's (degrees, dB); raises `InputError` naming it."""
    number, row = next(lines, (0, ""))
    if number == 0:
        raise InputError([f"line {cut}: NUPOIN: the file ends before its points do (lines)"])
    parts = row.split(",")
    try:
        angle, level = (float(part) for part in parts)
    except ValueError:
        raise InputError([f"line {number}: {row[:40]!r}: must be an angle and a level, degrees and dB"]) from None
    if not (np.isfinite(angle) and abs(angle) <= 360.0 and np.isfinite(level)):
        raise InputError([f"line {number}: {row[:40]!r}: must be finite numbers, the angle from -360 to 360 deg"])
    return angle, level


def write_mat(path: Path, pattern: Any) -> None:
    """Write a pattern (dataset with e_theta, e_phi on frequency, theta, phi) as a MATLAB version 5 file."""
    from scipy.io import savemat

    content = {name: pattern[name].values for name in ("e_theta", "e_phi")}
    content |= {
        "frequency_hz": pattern["frequency"].values,
        "theta_deg": pattern["theta"].values,
        "phi_deg": pattern["phi"].values,
        "quantity": pattern.attrs.get("quantity", ""),
        "time_convention": pattern.attrs.get("time_convention", ""),
        "history_json": pattern.attrs.get("history_json", "[]"),
    }
    if "bands" in pattern.attrs:
        content["bands"] = str(pattern.attrs["bands"])
    content |= {name: str(text) for name, text in pattern.attrs.items() if name.startswith("identity_")}
    savemat(path, content, do_compression=True, oned_as="column")


def write_touchstone(
    path: Path, frequency_hz: FloatArray, s21: ComplexArray, note: str, *, s11: ComplexArray | None = None
) -> None:
    """Write a transmission as a two-port Touchstone file; parameters that were not measured are 0.

    s11
        (frequency,) reflection of the device, where it was measured.
    """
    s = np.zeros((frequency_hz.size, 2, 2), complex)
    s[:, 1, 0] = s21
    if s11 is not None:
        s[:, 0, 0] = s11
    _write_network(path, frequency_hz, s, note)


def write_reflection(path: Path, frequency_hz: FloatArray, s11: ComplexArray, note: str) -> None:
    """Write a reflection as a one-port Touchstone file."""
    _write_network(path, frequency_hz, s11[:, None, None], note)


def _write_network(path: Path, frequency_hz: FloatArray, s: ComplexArray, note: str) -> None:
    """Write scattering parameters (frequency, port, port), referred to 50 ohm; a reader is warned of gaps between bands."""
    import skrf

    bands = bands_apart(frequency_hz)
    text = f" {note}; bands {bands}" if bands else f" {note}"
    network = skrf.Network(frequency=skrf.Frequency.from_f(frequency_hz, unit="hz"), s=s, z0=50, comments=text)
    network.write_touchstone(path.stem, dir=str(path.parent), write_z0=False)


def write_figures(path: Path, figures: list[Figure], said: dict[str, str] | None = None) -> None:
    """Write figures as a table (CSV): one row a figure and frequency, text columns safe against spreadsheet formulas.

    said
        What is said of the run (run, tag, serial, ...): a column each at the end of every row.
    """
    identity = {} if said is None else said
    with whole_file(path) as out:
        writer = csv.writer(out)
        writer.writerow(
            [
                "frequency_hz",
                "name",
                "label",
                "value",
                "unit",
                "lower",
                "upper",
                "coverage_factor",
                "effective_dof",
                "not_included",
                "definition",
                "source",
                "reason",
                *identity,
            ]
        )
        for f in figures:
            text = [safe_text(x) for x in (f.name, f.label)]
            writer.writerow([f"{f.frequency_hz:.3f}", *text, f"{f.value:.9g}", safe_text(f.unit), f"{f.lower:.9g}", f"{f.upper:.9g}",
                             f"{f.coverage_factor:.4g}", f"{f.effective_dof:.4g}", safe_text(", ".join(f.not_included)), safe_text(f.definition), safe_text(f.source),
                             safe_text(f.reason), *map(safe_text, identity.values())])  # fmt: skip


def write_budgets(path: Path, figures: list[Figure]) -> None:
    """Write every row of every figure's budget as a table (CSV), columns as the GUM names them (JCGM 100:2008, H.1.7)."""
    names = ("term", "evaluation", "distribution", "size", "unit", "divisor", "standard", "sensitivity", "dof", "contribution",
             "expanded", "kind", "basis")  # fmt: skip
    with whole_file(path) as out:
        writer = csv.writer(out)
        writer.writerow(["frequency_hz", "figure", "figure_unit", *names])
        for f in figures:
            for row in f.budget:
                cells = (getattr(row, name) for name in names)
                text = (safe_text(x) if isinstance(x, str) else "" if x is None else f"{x:.6g}" for x in cells)
                writer.writerow([f"{f.frequency_hz:.3f}", safe_text(f.name), safe_text(f.unit), *text])
