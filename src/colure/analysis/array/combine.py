"""How measured states add up to an element or a beam, and what the sum may be wrong by.

Every element n answers command c with r_nc = w_c (1 + d_nc) e_n: w_c is what it was told, d_nc an error of its own for every element
and command, the same each time. A state is the sum of its elements' answers plus noise. Any sum of answers is estimated by
the best linear unbiased prediction from all states together (C. R. Henderson, Best linear unbiased estimation and prediction
under a selection model, Biometrics 31 (1975), 423-447): codes, toggles, bits and beams are cases of one formula.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray, IntArray
from colure.values import holds_arrays

#: Noise is taken for at least so much of the mean reading: a receiver without any leaves nothing to divide by.
LEAST_NOISE = 1e-9
#: Elements are told apart if the weights' smallest singular value is at least this share of the largest.
LEAST_APART = 1e-6
SAME_COMMAND = 1e-8


@dataclass(frozen=True)
@holds_arrays
class Answers:
    """Every (element, command) that occurs, without switched-off elements.

    element (answer,), told (answer,): which element, and its commanded weight. chosen (state, answer): 1 where a state holds it.
    """

    element: IntArray
    told: ComplexArray
    chosen: FloatArray

    @classmethod
    def of(cls, weight: ComplexArray) -> Answers:
        """Return the answers of states with commanded weights (state, element)."""
        element, told, chosen = list[int](), list[complex](), list[FloatArray]()
        for n, column in enumerate(weight.T):
            left = np.abs(column) > 0.0
            while left.any():
                value = complex(column[np.flatnonzero(left)[0]])
                here = left & (np.abs(column - value) < SAME_COMMAND)
                element.append(n)
                told.append(value)
                chosen.append(here.astype(float))
                left &= ~here
        return cls(np.array(element, np.int64), np.array(told, complex), np.array(chosen).reshape(-1, len(weight)).T)

    @property
    def elements(self) -> ComplexArray:
        """(answer, element) commanded weight of each answer at its element."""
        out = np.zeros((self.element.size, int(self.element.max()) + 1), complex)
        out[np.arange(self.element.size), self.element] = self.told
        return out

    def own_parts(self) -> ComplexArray:
        """Return (element, answer) what an element is: the mean of its answers, each turned back by its command.

        Commands count that all elements were told; those of a single beam would make its elements something else than the others.
        """
        own = self.element == np.arange(int(self.element.max()) + 1)[:, None]
        like = np.abs(self.told[:, None] - self.told) < SAME_COMMAND
        shared = own & ((own @ like) > 0).all(axis=0)
        counted = np.where(shared.any(axis=1, keepdims=True), shared, own)
        return np.asarray(counted / self.told / np.count_nonzero(counted, axis=1)[:, None])


@dataclass(frozen=True, kw_only=True)
@holds_arrays
class CombinedErrors:
    """What states may be wrong by, all as wave ratios like the sweeps.

    noise, freedom
        Standard deviation of one sweep, complex modulus, and the degrees of freedom that it is known with.
    level (element,)
        Rms of each element's sweeps.
    amplitude, phase
        Rms of a command's relative error in amplitude, and in phase, radians.
    leak
        A wave that is the same in every state.
    """

    noise: float
    level: FloatArray
    amplitude: float = 0.0
    phase: float = 0.0
    leak: float = 0.0
    freedom: float = float("inf")

    @property
    def command(self) -> float:
        """Rms of a command's relative error, complex modulus."""
        return float(np.hypot(self.amplitude, self.phase))


@dataclass(frozen=True)
@holds_arrays
class Combination:
    """Sums of states: `states` (sum, state), the answers' share that stays as an error, `left` (sum, answer).

    A sum's error is noise times |states| and the sum over answers of left * told * d * e.
    """

    answers: Answers
    states: ComplexArray
    left: ComplexArray

    @property
    def noise_factor(self) -> FloatArray:
        """Noise of each sum over that of one sweep, (sum,)."""
        return np.asarray(np.linalg.norm(self.states, axis=1))

    def shares(self) -> ComplexArray:
        """Return (sum, answer) what one unit of relative error of each answer adds, in units of its element."""
        return np.asarray(self.left * self.answers.told)


def require_apart(weight: ComplexArray) -> None:
    """Raise `ValueError` naming the elements that commanded weights (state, element) do not tell apart."""
    _, size, vectors = np.linalg.svd(weight, full_matrices=True)
    size = np.concatenate([size, np.zeros(weight.shape[1] - size.size)])
    lost = size < LEAST_APART * size[0]
    if lost.any():
        mixed = np.flatnonzero(np.linalg.norm(vectors[lost], axis=0) > 0.1)
        names = ", ".join(str(one) for one in mixed[:8])
        raise ValueError(
            f"states: {len(weight)} states do not tell elements {names}{' ...' if mixed.size > 8 else ''} apart; "
            f"{weight.shape[1]} independent states are needed (states)"
        )


def combine(measured: ComplexArray, wanted: ComplexArray, errors: CombinedErrors) -> Combination:
    """Return the sums of states that predict wanted answers with the least mean square error.

    Parameters
    ----------
    measured
        (state, element) commanded weights of the states that were measured.
    wanted
        (sum, element) commanded weights of beams that are to be predicted.

    Raises
    ------
    ValueError
        If the states do not tell the elements apart; they are named.
    """
    both = Answers.of(np.concatenate([measured, wanted]))
    seen = Answers(both.element, both.told, both.chosen[: len(measured)])
    return _predicted(seen, both.chosen[len(measured) :].astype(complex), measured, errors)


def elements_alone(measured: ComplexArray, errors: CombinedErrors) -> Combination:
    """Return the sums of states that give every element by itself: the mean of its answers, turned back. Raises as `combine` does."""
    seen = Answers.of(measured)
    require_apart(measured)
    return _predicted(seen, seen.own_parts(), measured, errors)


def answers_alone(measured: ComplexArray, errors: CombinedErrors) -> Combination:
    """Return the sums of states that give every answer by itself. Raises as `combine` does."""
    seen = Answers.of(measured)
    return _predicted(seen, np.eye(seen.element.size, dtype=complex), measured, errors)


def covariance(seen: Answers, errors: CombinedErrors) -> ComplexArray:
    """Return (state, state) the mean product of the states' errors."""
    states = len(seen.chosen)
    spread = seen.chosen * (errors.level[seen.element] * np.abs(seen.told) * errors.command) ** 2
    floor = max(errors.noise, LEAST_NOISE * float(np.linalg.norm(errors.level)), 1e-300) ** 2
    return np.asarray(spread @ seen.chosen.T + errors.leak**2 + floor * np.eye(states), complex)


def _predicted(seen: Answers, wanted: ComplexArray, measured: ComplexArray, errors: CombinedErrors) -> Combination:
    """Return the best linear unbiased prediction of sums of answers (sum, answer)."""
    require_apart(measured)
    design = seen.chosen @ seen.elements
    own = (errors.level[seen.element] * np.abs(seen.told) * errors.command) ** 2
    inverse = np.linalg.inv(covariance(seen, errors))
    # Noise alone sets the scale of the inverse: elements' own waves are fixed unknowns.
    toward = design.conj().T @ inverse
    fixed = np.linalg.solve(toward @ design, toward)
    joint = (wanted * own) @ seen.chosen.T @ inverse
    states = (wanted @ seen.elements) @ fixed + joint - (joint @ design) @ fixed
    return Combination(seen, np.asarray(states), np.asarray(states @ seen.chosen - wanted))


def misfit(measured: ComplexArray, sweeps: ComplexArray, errors: CombinedErrors) -> tuple[float, int]:
    """Return how large the states' disagreement is over what their declared errors explain (1: as large), and how many states are spare.

    sweeps (state, place). Without a spare state nothing can be told: nan and 0.
    """
    seen = Answers.of(measured)
    states, elements = measured.shape
    spare = states - elements
    if spare < 1:
        return float("nan"), 0
    left = np.eye(states) - measured @ np.linalg.pinv(measured)
    expected = np.trace(left @ covariance(seen, errors) @ left.conj().T).real
    disagreement = np.mean(np.sum(np.abs(left @ sweeps) ** 2, axis=0))
    return float(np.sqrt(disagreement / expected)), spare


def spare_noise(measured: ComplexArray, sweeps: ComplexArray) -> tuple[float, int] | None:
    """Return the noise of one sweep and its degrees of freedom from sums of states in which no answer is left; None without one.

    sweeps (state, place). Whatever elements answer, these sums are zero: only noise is in them.
    """
    chosen = Answers.of(measured).chosen
    vectors, size, _ = np.linalg.svd(chosen, full_matrices=True)
    rank = int(np.count_nonzero(size > LEAST_APART * size[0]))
    free = vectors[:, rank:].conj().T
    if not len(free):
        return None
    return float(np.sqrt(np.mean(np.abs(free @ sweeps) ** 2))), 2 * free.shape[0] * sweeps.shape[1]


def levels(measured: ComplexArray, sweeps: ComplexArray, noise: float) -> FloatArray:
    """Return the rms (element,) of each element's sweeps, from sweeps (state, place), less noise. Raises as `combine` does."""
    require_apart(measured)
    alone = np.linalg.pinv(measured)
    power = np.mean(np.abs(alone @ sweeps) ** 2, axis=1) - (noise * np.linalg.norm(alone, axis=1)) ** 2
    return np.asarray(np.sqrt(np.maximum(power, 0.0)))


def drawn(random: np.random.Generator, errors: CombinedErrors, shape: tuple[int, ...]) -> ComplexArray:
    """Return drawn relative errors of commands: in amplitude and in phase, each with its own size."""
    two = random.normal(size=(2, *shape))
    return np.asarray(errors.amplitude * two[0] + 1j * errors.phase * two[1])
