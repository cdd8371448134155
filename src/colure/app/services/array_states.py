"""An array's elements and any of its beams from the states of one run."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from typing import TYPE_CHECKING

import numpy as np

from colure.app.services import processing
from colure.app.services.reference import reference_of
from colure.app.storage.folders import RunFolder, require_record
from colure.errors import InputError
from colure.geometry.conventions import ComplexArray, amplitude_db, power_db
from colure.model.campaign import Campaign
from colure.model.commands import Commands
from colure.values import holds_arrays

if TYPE_CHECKING:
    import xarray as xr

    from colure.analysis.array.combine import Combination, CombinedErrors
    from colure.analysis.array.sweeps import StatePlaces
    from colure.analysis.pipeline.recipe import Processed

#: Draws of the commands' errors behind a figure's interval, and behind a comparison's limit.
DRAWS, LIMIT_DRAWS = 16, 400
#: Errors of commands below this share of all elements together change no figure: codes with a free column cancel them exactly.
NEGLIGIBLE = 1e-5
#: The states' disagreement may exceed what was declared by this factor before it is called too large.
LARGEST_MISFIT = 2.0
#: Grid on which the strongest direction is looked for, degrees.
LOOK_DEG = 3.0


@dataclass(frozen=True)
@holds_arrays
class ArrayRun:
    """The states of a run that are added up, what their elements were told, and what they may be wrong by.

    states
        States that are added up, with their weights.
    rows
        Their numbers in the record.
    """

    campaign: Campaign
    run: RunFolder
    record: xr.Dataset
    places: StatePlaces
    states: Commands
    rows: list[int]
    errors: CombinedErrors

    @cached_property
    def sweeps(self) -> ComplexArray:
        """Sweeps of the states that are added up, (state, place * frequency * port)."""
        return self.places.sweeps(self.record)[self.rows]

    @cached_property
    def elements(self) -> Combination:
        """The sums of states that give every element by itself."""
        from colure.analysis.array.combine import elements_alone

        return elements_alone(self.states.weight, self.errors)

    def beams(self, weight: ComplexArray) -> Combination:
        """Return the sums of states that give beams with commanded weights (beam, element)."""
        from colure.analysis.array.combine import combine

        return combine(self.states.weight, weight, self.errors)

    @cached_property
    def misfit(self) -> tuple[float, int]:
        """How large the states' disagreement is over what was declared, and how many states are spare."""
        from colure.analysis.array.combine import misfit

        return misfit(self.states.weight, self.sweeps, self.errors)

    @property
    def contradicted(self) -> bool:
        """Tell whether the states disagree by more than was declared."""
        ratio, spare = self.misfit
        return bool(spare and ratio > LARGEST_MISFIT)

    @property
    def cautions(self) -> list[str]:
        """What the states say of the declarations, in plain words; empty where nothing is wrong."""
        ratio, spare = self.misfit
        if not spare:
            return [
                "cannot tell whether the commands' errors are as declared: there are as many states as elements, none is spare"
            ]
        if not self.contradicted:
            return []
        return [
            f"the states disagree {ratio:.1f} times as much as noise and declared commands' errors explain: raise "
            "command_error_db or command_error_deg in device.toml (states), or look for a state that was not taken"
        ]

    def process(self, combination: Combination, index: int, name: str, *, draws: int = DRAWS) -> Processed:
        """Carry a sum of states through the recipe: its pattern, and a budget that holds its noise and drawn errors of the commands."""
        processed = self._summed(combination, index, name)
        echo_level_db = self._echo_level_db(processed)
        chamber = processed.budget.chamber.model_copy(update={"echo_level_db": echo_level_db})
        return replace(
            processed,
            budget=replace(
                processed.budget, chamber=chamber, commands=self._drawn(processed, combination, index, draws)
            ),
        )

    def _summed(self, combination: Combination, index: int, name: str) -> Processed:
        from colure.analysis.array.sweeps import summed

        weights = np.zeros(self.places.rows.shape[0], complex)
        weights[self.rows] = combination.states[index]
        return processing.processed(
            self.campaign, summed(self.record, self.places, weights, name), self.campaign.recipe()
        )

    @cached_property
    def _together_db(self) -> float:
        """Directivity of all elements at 0 deg together, dB: what a stray level is declared of."""
        return _directivity_db(self._summed(self.beams(np.ones((1, self.states.elements), complex)), 0, "together"))

    def _echo_level_db(self, processed: Processed) -> float:
        """Return the stray level below the peak of a sum: one element throws more at the walls, beside its peak, than all together.

        Stray fields, rms over directions, follow the power that is radiated, the peak follows the directivity (derivable).
        """
        declared = self.campaign.chamber.echo_level_db
        return min(0.0, max(declared, declared + self._together_db - _directivity_db(processed)))

    def _drawn(self, processed: Processed, combination: Combination, index: int, draws: int) -> ComplexArray | None:
        """Return what drawn errors of the commands add to the measured sphere (draw, frequency, 2, theta, phi)."""
        from colure.analysis.array.sweeps import rows_of

        left = (
            np.abs(combination.shares()[index]) * self.errors.level[combination.answers.element] * self.errors.command
        )
        if not draws or float(np.linalg.norm(left)) < NEGLIGIBLE * float(np.linalg.norm(self.errors.level)):
            return None
        again, where = processed.budget.sweeps, rows_of(processed.budget.sweeps.record)
        weights = self.error_weights(combination, index, draws, seed=processed.budget.seed)
        own = self.record["trace"].values[self.places.rows[self.rows]]
        out = []
        for one in weights:
            trace = again.trace.copy()
            trace[where] += np.tensordot(one, own, axes=1)
            out.append(again.change(trace))
        return np.stack(out)

    def error_weights(self, combination: Combination, index: int, draws: int, *, seed: int) -> ComplexArray:
        """Return sums of states (draw, state) that are what drawn errors of commands add: each its element's own sweeps."""
        from colure.analysis.array.combine import drawn

        share = combination.shares()[index]
        each = share * drawn(np.random.default_rng((seed, index)), self.errors, (draws, share.size))
        by_element = np.zeros((draws, self.states.elements), complex)
        for answer, element in enumerate(combination.answers.element):
            by_element[:, element] += each[:, answer]
        return np.asarray(by_element @ self.elements.states)


def _directivity_db(processed: Processed) -> float:
    """Return the largest directivity of a processed pattern at mid-band, dB."""
    from colure.analysis.steps.far_field import pattern_grid

    _, _, field = pattern_grid(processed.expansion, LOOK_DEG)
    middle = processed.frequency_hz.size // 2
    # By Parseval the squares of the waves add up to the power over all directions.
    radiated = float(np.sum(np.abs(processed.expansion.coefficients[middle]) ** 2)) / (4.0 * np.pi)
    return float(power_db(np.max(np.sum(np.abs(field[middle]) ** 2, axis=0)) / radiated))


def array_run(campaign: Campaign, run: RunFolder, *, without: Sequence[str] = ()) -> ArrayRun:
    """Read the states of a run; `without` names states that are kept out of the sums.

    Raises
    ------
    InputError
        If device.toml names no codes, a state is not among them, the states do not tell the elements apart, or they were not
        measured one after the other at each place.
    """
    from colure.analysis.array.combine import CombinedErrors, levels, spare_noise
    from colure.analysis.array.sweeps import places_of
    from colure.app.storage.run_kinds import require_sphere

    commands, record = told_in(campaign, run)
    require_sphere(record)
    record = processing.one_distance(campaign, record)
    if not processing.has_phase(run):
        raise InputError([f"run {run.path.name}: receiver is power-only; adding states up needs phase (receiver)"])
    names = processing.states_of(run)
    unknown = [name for name in without if name not in names]
    if unknown:
        raise InputError([f"state = {unknown[0]!r}: must be one of {', '.join(names)}"])
    rows = [i for i, name in enumerate(names) if name not in without]
    states = commands.some([names[i] for i in rows])
    table = campaign.device.states
    assert table is not None  # told_in looked
    try:
        places = places_of(record, len(names))
        sweeps = places.sweeps(record)[rows]
        noise, freedom = spare_noise(states.weight, sweeps) or _noise(campaign, record)
        level = levels(states.weight, sweeps, noise)
    except ValueError as error:
        raise InputError([str(error)]) from None
    isolation = campaign.chamber.analyzer.isolation_db
    errors = CombinedErrors(
        noise=noise,
        level=level,
        amplitude=table.command_error_db * float(np.log(10.0)) / 20.0,
        phase=float(np.deg2rad(table.command_error_deg)),
        leak=0.0 if isolation is None else 10.0 ** (isolation / 20.0),
        freedom=freedom,
    )
    return ArrayRun(campaign, run, record, places, states, rows, errors)


def told_in(campaign: Campaign, run: RunFolder) -> tuple[Commands, xr.Dataset]:
    """Return what the elements were told in the states of a run, and its record. Raises `InputError` as `array_run` does."""
    from colure.app.services.acquisition import require_own_record
    from colure.model.files import open_dataset

    require_record(run)
    commands = campaign.commands()
    if commands is None:
        raise InputError(
            ["device.toml: states.codes: missing; it names the file that says what every element is told: colure codes"]
        )
    names = processing.states_of(run)
    missing = [name for name in names if name not in commands.names]
    if missing or not names:
        what = f"state {missing[0]!r} is" if missing else "its states are"
        raise InputError(
            [f"run {run.path.name}: {what} not in device.toml's states.codes; measure with the codes first (states)"]
        )
    record = open_dataset(run.record)
    require_own_record(run, str(record.attrs.get("journal_root_hash", "")))
    return commands.some(names), record


def _noise(campaign: Campaign, record: xr.Dataset) -> tuple[float, float]:
    """Return the standard deviation of one sweep as a wave ratio, and its degrees of freedom, from the record's repeated sweeps."""
    from colure.analysis.pipeline.recipe import default_recipe
    from colure.analysis.pipeline.stages import stages
    from colure.model.record import of_state

    one = of_state(record, 0)
    recipe = campaign.recipe() or default_recipe(one, campaign.chamber, campaign.device)
    reference = reference_of(campaign, record["frequency"].values)
    transfer = stages(one, campaign.chamber, campaign.device, recipe, reference).transfer
    return float(np.sqrt(np.mean(transfer.noise**2))), transfer.freedom * transfer.noise.size


@dataclass(frozen=True, kw_only=True)
class BeamAgreement:
    """A synthesized beam held against the same beam as it was measured, at every place of the scan.

    difference_db, expected_db, limit_db
        Rms difference of the sweeps below the beam's strongest one; what noise and the commands' errors let expect, and their 95 % point.
    noise_factor
        Noise of the synthesized sweeps over that of measured ones.
    """

    state: str
    places: int
    difference_db: float
    expected_db: float
    limit_db: float
    noise_factor: float

    @property
    def within(self) -> bool:
        """Tell whether the difference lies within the interval."""
        return self.difference_db <= self.limit_db


def held_against(array: ArrayRun, state: str) -> BeamAgreement:
    """Hold a beam that was measured as a state against the sum of the other states; `array` must be without it.

    Both went through the same chamber at the same places: they differ by noise, and the commands' errors.
    """
    names = processing.states_of(array.run)
    measured = array.places.sweeps(array.record)[names.index(state)]
    commands = array.campaign.commands()
    assert commands is not None  # array_run looked
    combination = array.beams(commands.row(state)[None])
    difference = combination.states[0] @ array.sweeps - measured
    peak = float(np.abs(measured).max())
    noise = array.errors.noise**2 * (1.0 + float(combination.noise_factor[0]) ** 2)
    # Of the drawn weights only mean products of sweeps are needed: a small matrix instead of every place.
    weights = array.error_weights(combination, 0, LIMIT_DRAWS, seed=24)
    products = array.sweeps @ array.sweeps.conj().T / array.sweeps.shape[1]
    drawn = np.einsum("ds,st,dt->d", weights, products, weights.conj()).real
    random, freedom = np.random.default_rng(24), array.errors.freedom
    # Mean squares of noise scatter by so many places, and the noise is as well known as the record tells it.
    known = 1.0 if np.isinf(freedom) else freedom / random.chisquare(freedom, drawn.size)
    drawn = drawn + noise * known * (1.0 + random.normal(size=drawn.size) / np.sqrt(measured.size))

    def below(power: float) -> float:
        return float(power_db(max(power, 1e-300)) - amplitude_db(peak))

    return BeamAgreement(
        state=state, places=measured.size, difference_db=below(float(np.mean(np.abs(difference) ** 2))),
        expected_db=below(float(drawn.mean())),
        limit_db=below(float(np.quantile(drawn, 0.95))), noise_factor=float(combination.noise_factor[0]),
    )  # fmt: skip
