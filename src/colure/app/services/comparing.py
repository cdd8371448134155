"""Runs and far-field files held against each other."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from colure.app.services import processing
from colure.app.storage.folders import RunFolder, require_free
from colure.errors import InputError
from colure.geometry.conventions import amplitude_db
from colure.model.campaign import Campaign
from colure.values import holds_arrays

if TYPE_CHECKING:
    from colure.analysis.compare.match import Freedom, LevelError, Match
    from colure.analysis.figures.evaluate import FigureSet
    from colure.analysis.uncertainty.inputs import Inputs
    from colure.app.services.pattern_files import Waves
    from colure.app.services.pattern_object import FilePattern
    from colure.geometry.conventions import FloatArray
    from colure.model.figure import Figure
    from colure.model.pattern import Quantity


#: Planes that are drawn over each other, degrees from E towards H.
PLANES_DEG = (0.0, 90.0)


@dataclass(frozen=True)
class SetUps:
    """Two set-ups compared: one sentence a line, and the numbers behind them."""

    sentences: list[str]
    numbers: dict[str, object]


def compare_set_ups(one: tuple[Campaign, RunFolder], other: tuple[Campaign, RunFolder], target: Path | None) -> SetUps:
    """Hold two runs of one device in different set-ups against each other; write the mean pattern to `target`.

    Of a device with several states, the same state of both; the first one's first by default.

    Raises
    ------
    InputError
        If frequencies differ, a run cannot be processed, or the target exists.
    """
    from colure.analysis.compare.match import compare_set_ups as compare
    from colure.analysis.steps.far_field import pattern_grid
    from colure.model.files import save_dataset, with_step
    from colure.model.pattern import build_pattern

    if target is not None:
        require_free(target)
    first = processing.process(*one)
    second = processing.process(other[0], processing.beside(one[1], other[1]))
    region = float(np.deg2rad(min(first.sphere.region_deg, second.sphere.region_deg)))
    try:
        comparison = compare(first.expansion, second.expansion, region=region)
    except ValueError as error:
        raise InputError([str(error)]) from None
    m, middle = comparison.match, first.frequency_hz.size // 2
    lengths = [campaign.chamber.range_length_m for campaign, _ in (one, other)]
    turn, shift = (", ".join(f"{v:+.3f}" for v in values) for values in (m.rotation_deg, m.shift_mm))
    words = [
        f"range lengths {lengths[0]:g} and {lengths[1]:g} m, {first.frequency_hz.size} frequencies",
        f"to lie on the first, the second device needed a turn of {turn} deg about x, y, z and a shift of {shift} mm",
        f"and {m.level_db[middle]:+.3f} dB at mid-band ({m.level_db.min():+.3f} to {m.level_db.max():+.3f} dB over the band)",
        f"the remaining difference is {m.difference_db[middle]:.1f} dB rms re the peak: stray signals of "
        f"{comparison.stray_db.max():.1f} dB rms in each set-up at most, if both have as much",
        f"in the mean of both they are {comparison.mean_stray_db.max():.1f} dB",
    ]
    declared = max(campaign.chamber.echo_level_db for campaign, _ in (one, other))
    if comparison.stray_db.max() > declared:
        words.append(f"that is MORE than the {declared:g} dB that chamber.toml declares: raise echo_level_db")
    if target is not None:
        theta, phi, field = pattern_grid(comparison.mean, 1.0)
        mean = build_pattern(field, frequency_hz=first.frequency_hz, theta=theta, phi=phi, quantity="realized_gain")
        mean = with_step(mean, "mean of two set-ups", stray_db=[round(float(x), 2) for x in comparison.mean_stray_db])
        save_dataset(mean, target)
        words.append(f"wrote {target}")
    numbers = {
        "rotation_deg": m.rotation_deg.tolist(),
        "shift_mm": m.shift_mm.tolist(),
        "level_db": m.level_db.tolist(),
        "difference_db": m.difference_db.tolist(),
        "stray_db": comparison.stray_db.tolist(),
        "mean_stray_db": comparison.mean_stray_db.tolist(),
    }
    return SetUps(words, numbers)


@dataclass(frozen=True)
@holds_arrays
class Overlaid:
    """One plane through the first pattern's peak: co-polar levels (n,) of both with their 95 % ends, dB on the scale of both.

    Ends are nan where no errors are known.
    """

    plane: str
    angle_deg: FloatArray
    level: tuple[FloatArray, FloatArray]
    lower: tuple[FloatArray, FloatArray]
    upper: tuple[FloatArray, FloatArray]


@dataclass(frozen=True, kw_only=True)
class ComparedFigure:
    """One figure of both patterns: values, expanded uncertainties (nan where a file states none), E_n."""

    name: str
    label: str
    unit: str
    frequency_hz: float
    value: float
    expanded: float
    other: float
    other_expanded: float
    e_n: float

    @classmethod
    def of(cls, figure: Figure, expanded: float, *, other: float, other_expanded: float, e_n: float) -> ComparedFigure:
        """Hold a figure, with an uncertainty that may be another than its own, against a value."""
        return cls(
            name=figure.name, label=figure.label, unit=figure.unit, frequency_hz=figure.frequency_hz, value=figure.value,
            expanded=expanded, other=other, other_expanded=other_expanded, e_n=e_n,
        )  # fmt: skip

    @property
    def change(self) -> float:
        """The other's value less this one's."""
        return self.other - self.value

    @property
    def change_expanded(self) -> float:
        """Expanded uncertainty of the change, both errors independent; nan where neither states one."""
        known = [x for x in (self.expanded, self.other_expanded) if not np.isnan(x)]
        return float(np.linalg.norm(known)) if known else float("nan")

    @property
    def undefined(self) -> bool:
        """Tell whether neither pattern has this figure."""
        return bool(np.isnan(self.value) and np.isnan(self.other))

    @property
    def agrees(self) -> bool:
        """Tell whether the difference lies inside both uncertainties together, or neither pattern has the figure."""
        return bool(abs(self.e_n) <= 1.0) or self.undefined


@dataclass(frozen=True)
@holds_arrays
class PatternComparison:
    """A pattern against another one: how they lie to each other, how they differ then, figure by figure; quantity of the first.

    overlaid
        Cuts of both at mid-band along the same directions: the principal planes through the first one's peak.
    """

    match: Match
    middle: int
    frequency_hz: FloatArray
    levels: list[LevelError]
    rows: list[ComparedFigure]
    quantity: Quantity = "realized_gain"
    overlaid: tuple[Overlaid, ...] = ()

    @property
    def agrees(self) -> bool:
        """Tell whether every figure agrees."""
        return all(row.agrees for row in self.rows)


def compare_run(
    campaign: Campaign,
    run: RunFolder,
    other: Path | tuple[Campaign, RunFolder],
    *,
    freedom: Freedom,
    other_uncertainty_db: float = 0.0,
) -> PatternComparison:
    """Hold a run against another run, or against a pattern file (.nc, or tidy far-field .csv).

    Another run comes with the campaign that it is worked out with: its chamber may be another one (see `as_begun`). Figures
    are read from both as they are, before anything is matched: what matching took out shows in them. Of another run of which
    no state is chosen, the state of the same name.

    Raises
    ------
    InputError
        If the other pattern cannot be read, or lacks the run's band or state.
    """
    from colure.analysis.compare.match import levels_of, match, normalized_error
    from colure.analysis.uncertainty.budget import figures_with_budget
    from colure.app.services.pattern_object import open_pattern

    processed = processing.process(campaign, run)
    own = figures_with_budget(processed.budget)
    figures = processed.budget.figures
    errors_of_second: Inputs | FilePattern
    if isinstance(other, tuple):
        second = processing.process(other[0], processing.beside(run, other[1]))
        errors_of_second = second.budget
        expansion, region = second.expansion, float(np.deg2rad(second.sphere.region_deg))
        theirs = {
            (f.name, round(f.frequency_hz)): (f.value, f.expanded_uncertainty)
            for f in figures_with_budget(second.budget)
        }
    else:
        opened = open_pattern(other, slant_deg=float(np.rad2deg(figures.slant)))
        file = errors_of_second = _at(opened, processed.frequency_hz)
        expansion, region = file.waves.expansion, file.waves.region
        theirs = _figures_of_file(file, figures, other_uncertainty_db)
    try:
        matched = match(processed.expansion, expansion, region=min(region, figures.region), freedom=freedom)
    except ValueError as error:
        raise InputError([str(error)]) from None
    rows = []
    for f in own:
        known = theirs.get((f.name, round(f.frequency_hz)))
        if known is not None:
            theirs_value, theirs_expanded = known
            e_n = normalized_error(
                one=f.value, expanded_one=f.expanded_uncertainty, other=theirs_value, expanded_other=theirs_expanded
            )
            rows.append(
                ComparedFigure.of(
                    f, f.expanded_uncertainty, other=theirs_value, other_expanded=theirs_expanded, e_n=e_n
                )
            )
    middle = processed.frequency_hz.size // 2
    planes = cuts_along_the_first(processed.budget, errors_of_second, middle)
    quantity: Quantity = "realized_gain" if campaign.chamber.reference.absolute else "directivity"
    return PatternComparison(
        matched, middle, processed.frequency_hz, levels_of(matched, middle), rows, quantity, planes
    )


def _at(opened: FilePattern, frequency_hz: FloatArray) -> FilePattern:
    """Return a file's field at other frequencies; its errors are kept where the frequencies are its own."""
    from colure.app.services.pattern_object import FilePattern

    own = opened.frequency_hz
    if own.shape == frequency_hz.shape and np.allclose(own, frequency_hz, rtol=1e-9):
        return opened
    return FilePattern(_interpolated(opened.waves, frequency_hz))


def _figures_of_file(
    file: FilePattern, figures: FigureSet, least_db: float
) -> dict[tuple[str, int], tuple[float, float]]:
    """Return (value, expanded uncertainty) of a file's figures by name and frequency, read as another pattern's figures are.

    Levels have at least `least_db`; what the file does not state counts as none, so that no figure agrees by not being known.
    """
    from colure.analysis.uncertainty.field_figures import figures_of_field

    waves = file.waves
    read = figures_of_field(
        waves.expansion, waves.frequency_hz, file.causes(), settings=figures.settings, slant=figures.slant,
        region=figures.region, absolute=file.holds_gain or figures.relative, chosen=replace(figures,
        region=min(figures.region, waves.region)), probe=file.probe,
    )  # fmt: skip
    out = {}
    for one in read:
        half = _half(one, least_db if one.unit.startswith("dB") else 0.0)
        out[(one.name, round(one.frequency_hz))] = (one.value, float(np.nan_to_num(half)))
    return out


def cuts_along_the_first(one: Inputs, two: Inputs | FilePattern, index: int) -> tuple[Overlaid, ...]:
    """Return the principal cuts of the first pattern and the second one along the same directions, at one frequency.

    two
        The second one's budget, or its file: no ends where that states no errors.
    """
    from colure.analysis.figures.cuts import find_beam
    from colure.analysis.uncertainty.field_figures import levels_towards
    from colure.analysis.uncertainty.inputs import Inputs
    from colure.analysis.uncertainty.level_cuts import cut_directions, level_cuts

    first = one.only(index)
    beam = find_beam(
        first.step.expansion(first.sphere.field).coefficients[0], slant=one.slant, region=one.figures.region
    )
    own = level_cuts(first, PLANES_DEG)[0]
    theirs = level_cuts(two.only(index), PLANES_DEG, beam=beam)[0] if isinstance(two, Inputs) else None
    out = []
    for number, plane in enumerate(own):
        bounds = [plane.bounds_db("co", relative=False)]
        if isinstance(two, Inputs):
            assert theirs is not None
            bounds.append(theirs[number].bounds_db("co", relative=False))
        else:
            d = cut_directions(beam, (plane.plane_deg,), plane.angle_deg)
            level, half = (
                part[0]
                for part in levels_towards(two.waves.expansion, index, two.causes(), d, one.slant, one.figures.hand)
            )
            low_end = np.where(np.isnan(half), np.nan, np.maximum(level - half, 0.0))
            level_db, low_db, high_db = (amplitude_db(end, least=1e-10) for end in (level, low_end, level + half))
            bounds.append((level_db, low_db, high_db))
        level_, low, high = ((bounds[0][i], bounds[1][i]) for i in range(3))
        out.append(Overlaid("E plane" if number == 0 else "H plane", plane.angle_deg, level_, low, high))
    return tuple(out)


def compare_files(
    first: Path, second: Path, *, freedom: Freedom, other_uncertainty_db: float = 0.0
) -> PatternComparison:
    """Hold a far-field file against another one, at the first one's frequencies.

    Intervals are those that the files state (`error_waves`); errors that are unknown count as none, so that no figure
    agrees by not being known. The second file's levels have at least `other_uncertainty_db`. The co-polar vector is the
    first one's: x or y, whichever is the stronger one at its peak.

    Raises
    ------
    InputError
        If a file holds no far field, the second one lacks the first one's band, or levels of two kinds are to be kept.
    """
    from colure.analysis.compare.match import levels_of, match
    from colure.app.services.pattern_object import open_pattern

    one = open_pattern(first)
    two = open_pattern(second, slant_deg=float(np.rad2deg(one.waves.slant)))
    if not freedom.level and one.scale != two.scale:
        raise InputError(
            [
                f"{first.name} holds {one.scale}, {second.name} {two.scale}: their levels differ by definition; level in `match` takes that out"
            ]
        )
    frequency = one.frequency_hz
    two = _at(two, frequency)
    own = one.evaluate()
    region = min(one.waves.region, two.waves.region)
    try:
        matched = match(one.scaled(), two.scaled(), region=region, freedom=freedom)
    except ValueError as error:
        raise InputError([str(error)]) from None
    rows = compare_figures(own, two.evaluate(), least_db=other_uncertainty_db)
    middle = frequency.size // 2
    return PatternComparison(matched, middle, frequency, levels_of(matched, middle), rows, one.scaled_quantity)


def compare_figures(one: Sequence[Figure], other: Sequence[Figure], *, least_db: float = 0.0) -> list[ComparedFigure]:
    """Return the figures that both have, at the first one's frequencies; levels of the other one have at least `least_db`.

    What nobody states counts as none, so that no figure agrees by not being known.
    """
    from colure.analysis.compare.match import normalized_error

    theirs, rows = {(f.name, round(f.frequency_hz)): f for f in other}, []
    for f in one:
        second = theirs.get((f.name, round(f.frequency_hz)))
        if second is not None:
            half, other_half = _half(f, 0.0), _half(second, least_db if f.unit.startswith("dB") else 0.0)
            e_n = normalized_error(
                one=f.value,
                expanded_one=float(np.nan_to_num(half)),
                other=second.value,
                expanded_other=float(np.nan_to_num(other_half)),
            )
            rows.append(ComparedFigure.of(f, half, other=second.value, other_expanded=other_half, e_n=e_n))
    return rows


def compare_power(
    one: Path | tuple[Campaign, RunFolder],
    other: Path | tuple[Campaign, RunFolder],
    *,
    other_uncertainty_db: float = 0.0,
) -> list[ComparedFigure]:
    """Hold two files or runs against each other where at least one is power without phase: figure by figure.

    Raises
    ------
    InputError
        If one cannot be read, or the two have no figure and frequency in common.
    """
    first, second = _figures(one), _figures(other)
    rows = compare_figures(first, second, least_db=other_uncertainty_db)
    if not rows:
        raise InputError(
            [
                "nothing to compare: the two have no figure at the same frequency; needs the same frequencies (Hz) and quantity"
            ]
        )
    return rows


def _figures(source: Path | tuple[Campaign, RunFolder]) -> list[Figure]:
    """Return the figures of a file or of a run."""
    from colure.app.services.evaluation import read_figures
    from colure.app.services.pattern_object import open_pattern
    from colure.app.services.power_files import is_power_file, open_power

    if isinstance(source, Path):
        opened = open_power(source) if is_power_file(source) else open_pattern(source)
        return list(opened.evaluate())
    return read_figures(*source)


def _half(figure: Figure, least: float) -> float:
    """Return a figure's expanded uncertainty, at least `least`; nan where both are unknown."""
    known = np.isfinite(figure.lower) and np.isfinite(figure.upper) and np.isfinite(figure.expanded_uncertainty)
    half = max(figure.expanded_uncertainty if known else 0.0, least)
    return half if known or half > 0.0 else float("nan")


def _interpolated(waves: Waves, frequency_hz: FloatArray) -> Waves:
    """Return a file's field at other frequencies, without the errors that it states at its own."""
    from colure.analysis.fields.known_pattern import KnownPattern, at_frequencies

    try:
        expansion = at_frequencies(KnownPattern(waves.frequency_hz, waves.expansion, waves.region), frequency_hz)
    except ValueError as error:
        raise InputError([f"{waves.name}: {error}"]) from None
    return replace(
        waves, frequency_hz=frequency_hz, expansion=expansion,
        pattern=waves.pattern.drop_vars("error_waves", errors="ignore"),
    )  # fmt: skip


def save_difference(comparison: PatternComparison, target: Path) -> None:
    """Write the matched second pattern less the first, on the grid that both were held against each other.

    Raises
    ------
    InputError
        If the target exists.
    """
    from colure.model.files import save_dataset, with_step
    from colure.model.pattern import build_pattern

    require_free(target)
    m = comparison.match
    rest = build_pattern(
        m.second - m.first, frequency_hz=comparison.frequency_hz, theta=m.theta, phi=m.phi, quantity=comparison.quantity
    )
    save_dataset(
        with_step(rest, "difference", rotation_deg=m.rotation_deg.tolist(), shift_mm=m.shift_mm.tolist()), target
    )
