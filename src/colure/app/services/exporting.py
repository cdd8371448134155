"""Results of a run or a far-field file in other programs' formats."""

from __future__ import annotations

import datetime
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import TYPE_CHECKING, Protocol

import numpy as np

from colure.app.services import evaluation, processing
from colure.app.storage.folders import RunFolder, require_free
from colure.app.storage.run_identity import identity_of
from colure.errors import InputError
from colure.geometry.conventions import amplitude_db, power_db
from colure.model.campaign import Campaign
from colure.model.doors import brought, named
from colure.model.strict_json import json_text
from colure.model.whole import write_whole
from colure.values import holds_arrays

if TYPE_CHECKING:
    import xarray as xr

    from colure.analysis.steps.reflection import DeviceReflection
    from colure.geometry.conventions import FloatArray, Handedness
    from colure.model.figure import Figure
    from colure.waves.expansion import Expansion

ENDINGS = {
    "csv": ".csv",
    "figures": ".csv",
    "netcdf": ".nc",
    "nsma": ".txt",
    "touchstone": ".s2p",
    "matlab": ".mat",
    "reflection": ".s1p",
}
NSMA_STEP_DEG = 1.0


def export(campaign: Campaign, run: RunFolder, kind: str, target: Path) -> str:
    """Write a run's pattern, cuts or figures as `kind` (a key of `ENDINGS`); returns what was written in words.

    Raises
    ------
    InputError
        If the target exists or has another ending, there is no such state, or the run cannot be processed.
    """
    _require_target(kind, target)
    if kind in ("touchstone", "nsma") and not campaign.chamber.reference.absolute:
        raise InputError(
            [f"export {kind}: needs a reference: reference.method = 'none' in chamber.toml gives no gain (dBi)"]
        )
    if kind == "reflection":
        return processing.write_reflection(campaign, run, target)
    said = {"run": run.path.name, **identity_of(run).said}
    if not processing.has_phase(run):
        return _write_power(campaign, run, kind, target, said)
    processed = processing.process(campaign, run)
    about = {f"identity_{name}": text for name, text in said.items()} | _bands(processed.pattern)
    processed = replace(processed, pattern=processed.pattern.assign_attrs(about))
    if kind not in ENDINGS:
        figures = evaluation.known_figures(campaign, processing.state_in(processed, run), lambda: processed)
        return _write_by_other(kind, Exported(processed.pattern, tuple(figures), campaign.device.name), target)
    if kind == "figures":
        return _write_figures(
            target, evaluation.known_figures(campaign, processing.state_in(processed, run), lambda: processed), said
        )
    one = _ExportedField(
        processed.pattern, processed.frequency_hz, processed.expansion, processed.budget.slant,
        processed.budget.figures.region,
        campaign.device.name, campaign.device.note or campaign.goal.name, said, processed.budget.reflection,
        processed.budget.figures.hand,
    )  # fmt: skip
    words = _write(one, kind, target)
    return words if kind != "csv" else f"{words}; {_beside(target, said | _bands(processed.pattern))}"


def _bands(pattern: xr.Dataset) -> dict[str, str]:
    """Return {"bands": which} where a pattern's frequencies lie in several bands with gaps between them; else nothing."""
    from colure.model.bands import bands_apart

    words = bands_apart(pattern["frequency"].values)
    return {"bands": words} if words else {}


def _write_power(campaign: Campaign, run: RunFolder, kind: str, target: Path, said: dict[str, str]) -> str:
    """Write the levels or figures of a power-only run; every other form needs phase."""
    from colure.app.services.power_runs import PowerRun

    if kind not in ("csv", "figures"):
        raise InputError(
            [f"export {kind}: run {run.path.name} is power-only: must be csv or figures; {kind} needs phase"]
        )
    measured = PowerRun(campaign, run)
    if kind == "figures":
        return _write_figures(target, list(measured.evaluate()), said)
    return f"{measured.write(target)}; {_beside(target, said)}"


def _beside(target: Path, said: dict[str, str]) -> str:
    """Write what is said of a run beside a table that has no place for it; return that in words."""
    beside = target.with_name(f"{target.stem}-identity.json")
    write_whole(beside, json_text(said, indent=1))
    return f"{beside.name}: run and identity"


def export_file(source: Path, kind: str, target: Path, *, slant_deg: float | None = None) -> str:
    """Write the field, cuts or figures of a far-field file as `export` does those of a run.

    Raises
    ------
    InputError
        If the target exists or has another ending, the file holds no far field, or no gain where the kind needs one.
    """
    from colure.app.services.pattern_object import open_pattern

    _require_target(kind, target)
    if kind not in ENDINGS or kind == "reflection":
        raise InputError([f"export {kind}: takes a run, not a far-field file such as {source.name}"])
    opened = open_pattern(source, slant_deg=slant_deg)
    if kind == "figures":
        return _write_figures(target, list(opened.evaluate(opened.wanted_beside(source))))
    if kind in ("touchstone", "nsma") and not opened.holds_gain:
        raise InputError([f"export {kind}: {source.name} holds {opened.scale}, no gain (dBi)"])
    waves = opened.waves
    one = _ExportedField(
        waves.pattern.assign_attrs(_bands(waves.pattern)), waves.frequency_hz, opened.scaled(), waves.slant,
        waves.region, source.stem, f"from {source.name}", hand=opened.hand
    )  # fmt: skip
    return _write(one, kind, target)


@dataclass(frozen=True)
@holds_arrays
class Exported:
    """What a format of another package gets of a run.

    pattern
        The far field on its grid: complex e_theta and e_phi (frequency, theta, phi), with its history.
    figures
        Every figure with its interval.
    device
        The device's name.
    """

    pattern: xr.Dataset
    figures: tuple[Figure, ...]
    device: str


class ExportDoor(Protocol):
    """What an object behind `colure.exports` must have.

    ending
        File ending, such as `.txt`.
    """

    ending: str

    def write(self, run: Exported, target: Path) -> str:
        """Write the file, and return what was written in words."""
        ...


def ending_of(kind: str) -> str:
    """Return the file ending of a format, Colure's own or another package's.

    Raises
    ------
    InputError
        If nobody knows the format; those that are there are named.
    """
    if kind in ENDINGS:
        return ENDINGS[kind]
    others = {one.name: one for one in brought("colure.exports")}
    if kind not in others:
        raise InputError([f"kind = {kind!r}: must be one of {', '.join([*ENDINGS, *others])}"])
    ending = others[kind].thing.ending
    if not isinstance(ending, str) or not ending.startswith("."):
        raise others[kind].refusal(f"ending = {ending!r}: must be text such as '.txt'")
    return ending


def _write_by_other(kind: str, run: Exported, target: Path) -> str:
    one = named("colure.exports", kind)
    words = one.call(str, one.thing.write, run, target)
    if not target.is_file():
        raise one.refusal(f"wrote no file {target.name}")
    return words


@dataclass(frozen=True)
class _ExportedField:
    """A far field as other programs want it: on its grid and as waves; slant and region in radians.

    hand
        Of a circular device: co-polar is this hand, cross-polar the other one.
    """

    pattern: xr.Dataset
    frequency_hz: FloatArray
    expansion: Expansion
    slant: float
    region: float
    name: str
    note: str
    said: dict[str, str] = field(default_factory=dict)
    reflection: DeviceReflection | None = None
    hand: Handedness = 0

    @property
    def words(self) -> str:
        """What is said of the run, in one line; empty for a file."""
        return "; ".join(f"{name} {text}" for name, text in self.said.items())


def _require_target(kind: str, target: Path) -> None:
    ending = ending_of(kind)
    if target.suffix.lower() != ending:
        raise InputError([f"{target}: must end in {ending} for {kind} (file ending)"])
    require_free(target)


def _write_figures(target: Path, figures: list[Figure], said: dict[str, str] | None = None) -> str:
    from colure.model.exports import write_budgets, write_figures

    rows = target.with_name(f"{target.stem}-budget.csv")
    require_free(rows)
    write_figures(target, figures, said)
    write_budgets(rows, figures)
    return f"every figure with its 95 % interval; {rows.name}: every row of its budget"


def _write(one: _ExportedField, kind: str, target: Path) -> str:
    from colure.model.bands import bands_apart
    from colure.model.exchange import write_csv
    from colure.model.exports import write_mat, write_touchstone
    from colure.model.files import save_dataset

    if kind == "csv":
        hidden, parted = write_csv(one.pattern, target), bands_apart(one.frequency_hz)
        more = f"; {hidden} directions that the data do not determine are nan" if hidden else ""
        return "far field, exp(+jwt), every grid direction" + more + (f"; bands {parted}" if parted else "")
    if kind == "netcdf":
        save_dataset(one.pattern, target)
        return "far field with its whole history"
    if kind == "matlab":
        write_mat(target, one.pattern)
        return "e_theta and e_phi (frequency, theta, phi)"
    if kind == "touchstone":
        reflection = one.reflection
        s11 = "" if reflection is None else f"; S11: {processing.reflection_words(reflection)}"
        co = {1: "right-hand", -1: "left-hand"}.get(one.hand, "co-polar")
        write_touchstone(target, one.frequency_hz, _boresight(one),
                         f"S21: {co} field at boresight, sqrt of realized gain, phase "
                         f"about the axes' intersection{s11}; other parameters not measured"
                         + (f"; {one.words}" if one.said else ""),
                         s11=None if reflection is None else reflection.coefficient)  # fmt: skip
        return f"{co} field at boresight as S21 (sqrt of realized gain){s11}"
    write_whole(target, _nsma(one).encode("ascii", "replace").decode("ascii"))
    middle = one.frequency_hz[one.frequency_hz.size // 2]
    return f"azimuth and elevation cuts, co- and cross-polar, at {middle / 1e9:.6g} GHz (the middle frequency)"


def _boresight(far_field: _ExportedField) -> np.ndarray:
    from colure.analysis.figures.cuts import FarField, components

    z = np.array([[0.0, 0.0, 1.0]])
    return np.array(
        [
            components(FarField(c).at(z), z, far_field.slant, far_field.hand)[0][0]
            for c in far_field.expansion.coefficients
        ]
    )


def _nsma(far_field: _ExportedField) -> str:
    from colure.analysis.figures.cuts import FarField, components, find_beam
    from colure.analysis.figures.lobes import HALF_POWER_DB
    from colure.model.bands import bands_apart
    from colure.model.exports import TextCut, nsma_text

    slant, region = far_field.slant, far_field.region
    middle = far_field.frequency_hz.size // 2
    gains = np.array(
        [power_db(find_beam(c, slant=slant, region=region).intensity) for c in far_field.expansion.coefficients]
    )
    field = FarField(far_field.expansion.coefficients[middle])
    angle = np.arange(-180.0, 180.0 + NSMA_STEP_DEG / 2, NSMA_STEP_DEG)
    angle = angle[np.abs(angle) <= np.rad2deg(region) + 1e-9]
    a, zero = np.deg2rad(angle), np.zeros(angle.size)
    own, other = _designators(slant, far_field.hand)
    cuts, widths = [], []
    for plane, d in (
        ("AZ", np.stack([np.sin(a), zero, np.cos(a)], -1)),
        ("EL", np.stack([zero, np.sin(a), np.cos(a)], -1)),
    ):
        co, cross = components(field.at(d), d, slant, far_field.hand)
        for pair, values in ((f"{own}/{own}", co), (f"{own}/{other}", cross)):
            cuts.append(TextCut(plane, pair, angle, amplitude_db(values, least=1e-6) - gains[middle]))
        level = amplitude_db(co, least=1e-6)
        widths.append(_width(angle, level, HALF_POWER_DB))
    some = [0, middle, -1]
    return nsma_text(
        name=far_field.name, note="; ".join(x for x in (far_field.note, far_field.words) if x),
        date=datetime.datetime.now(datetime.UTC).date(),
        frequency_hz=far_field.frequency_hz[some], gain_dbi=gains[some], beamwidths_deg=(widths[0], widths[1]),
        cuts=cuts,
        bands=bands_apart(far_field.frequency_hz),
    )  # fmt: skip


def _designators(slant: float, hand: Handedness) -> tuple[str, str]:
    """Return what NSMA WG16.99.050 calls the device's polarization and the other one (annex B, from memory)."""
    if hand:
        return ("RCP", "LCP") if hand > 0 else ("LCP", "RCP")
    return ("H", "V") if abs(np.cos(slant)) >= np.sqrt(0.5) else ("V", "H")


def _width(angle_deg: np.ndarray, level: np.ndarray, down_db: float) -> float:
    """Return the width of the lobe about a sampled cut's highest value, its edges interpolated straight."""
    top = int(np.argmax(level))
    wanted = level[top] - down_db
    ends = []
    for side in (np.arange(top, level.size), np.arange(top, -1, -1)):
        below = np.flatnonzero(level[side] < wanted)
        if below.size == 0:
            return float("nan")
        after, before = side[below[0]], side[below[0] - 1]
        share = (level[before] - wanted) / (level[before] - level[after])
        ends.append(abs(float(angle_deg[before] + share * (angle_deg[after] - angle_deg[before]) - angle_deg[top])))
    return ends[0] + ends[1]
