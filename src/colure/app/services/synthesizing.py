"""Any beam of a codebook from one run's states: figures with intervals, and held against beams that were measured."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from colure.app.services.array_states import ArrayRun, BeamAgreement, array_run, held_against
from colure.app.storage.folders import RunFolder, require_free
from colure.errors import InputError
from colure.model.campaign import Campaign
from colure.model.commands import Commands, read_commands
from colure.model.figure import Figure

if TYPE_CHECKING:
    from colure.analysis.pipeline.recipe import Processed


@dataclass(frozen=True)
class SynthesizedBeam:
    """A synthesized beam at mid-band: its figures with intervals, and its noise over that of a measured sweep."""

    name: str
    figures: list[Figure]
    noise_factor: float

    def figure(self, name: str) -> Figure:
        """Return one of the figures."""
        return next(one for one in self.figures if one.name == name)


def codebook(array: ArrayRun, path: Path) -> Commands:
    """Read a codebook; raises `InputError` if it has another number of elements than the run's codes."""
    book = read_commands(path)
    if book.elements != array.states.elements:
        raise InputError(
            [f"{path.name}: {book.elements} elements, the run's codes have {array.states.elements} (elements)"]
        )
    return book


def each_beam(array: ArrayRun, book: Commands) -> Iterator[tuple[str, Processed, float]]:
    """Yield every beam of a codebook by name, processed, with its noise over that of a measured sweep."""
    beams = array.beams(book.weight)
    for index, name in enumerate(book.names):
        yield name, array.process(beams, index, name), float(beams.noise_factor[index])


def synthesize(
    campaign: Campaign, run: RunFolder, weights: Path, *, pattern: Path | None = None
) -> tuple[ArrayRun, list[SynthesizedBeam]]:
    """Return every beam of a codebook with its figures; the pattern of its only beam is written to `pattern`.

    Raises
    ------
    InputError
        As `array_run` and `codebook` do; if the target exists, or the codebook holds several beams where a pattern is wanted.
    """
    from colure.analysis.uncertainty.budget import figures_with_budget
    from colure.model.files import save_dataset, with_step

    if pattern is not None:
        require_free(pattern)
    array = array_run(campaign, run)
    book = codebook(array, weights)
    if pattern is not None and len(book.names) != 1:
        raise InputError([f"pattern: {weights.name} holds {len(book.names)} beams, one is needed for one file (beams)"])
    beams = []
    for name, processed, factor in each_beam(array, book):
        middle = processed.frequency_hz.size // 2
        beams.append(SynthesizedBeam(name, figures_with_budget(processed.budget.only(middle)), factor))
        if pattern is not None:
            made = with_step(processed.pattern, "synthesized", beam=name, states=len(array.states.names))
            save_dataset(made, pattern)
    return array, beams


def hold_against(campaign: Campaign, run: RunFolder, states: tuple[str, ...]) -> tuple[ArrayRun, list[BeamAgreement]]:
    """Hold beams that were measured as states against the sums of the other states.

    Raises
    ------
    InputError
        As `array_run` does, or if the other states do not tell the elements apart.
    """
    array = array_run(campaign, run, without=states)
    return array, [held_against(array, one) for one in states]
