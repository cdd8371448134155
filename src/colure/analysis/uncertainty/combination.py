"""Contributions combined as the GUM combines them: standard uncertainties, degrees of freedom, coverage factors.

Standard uncertainties add by root sum of squares (JCGM 100:2008, 5.1.2), effective degrees of freedom come from Welch and
Satterthwaite (G.4.1). The coverage factor is read from the joint distribution of all contributions, drawn as JCGM 101:2008
draws it: bounds of unknown phase are arcsine, few repetitions are Student's, drawn rooms are as they were drawn.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal, NamedTuple

import numpy as np

from colure.analysis.steps.repetition import PROBABILITY
from colure.geometry.conventions import ComplexArray, FloatArray
from colure.values import holds_arrays

Distribution = Literal["normal", "U-shaped", "rectangular", "triangular", "change", "bias", "Monte Carlo", "as drawn"]
#: Degrees of freedom beyond which Student's factor is that of the normal distribution to all printed digits.
MANY = 1e9
#: Half width over standard uncertainty (JCGM 100:2008, 4.3.3 to 4.3.9). A normal half width is expanded, k = 2; a change was
#: seen at a step that stands for k = 2; a bias is known and stays in the value (F.2.4.5); draws have no half width.
DIVISORS: dict[Distribution, float] = {
    "normal": 2.0,
    "U-shaped": float(np.sqrt(2.0)),
    "rectangular": float(np.sqrt(3.0)),
    "triangular": float(np.sqrt(6.0)),
    "change": 2.0,
    "bias": 1.0,
    "Monte Carlo": 1.0,
    "as drawn": 1.0,
}
DRAWN: tuple[Distribution, ...] = ("Monte Carlo", "as drawn")
#: A bias that stays in the value is known to this share of itself (standard uncertainty; common practice, no source).
BIAS_KNOWN = 0.25
#: Draws of the joint distribution: the 95 % point of a normal one then stands within 2 % (derivable).
JOINT_DRAWS = 4000
#: Draws whose share inside is within so much of the half width's count as beside it.
BESIDE = 0.02
#: Outputs whose draws are held at a time.
OUTPUTS_AT_ONCE = 256


def bounded_mean(effects: FloatArray) -> FloatArray:
    """Return the mean over draws; 0 where a draw has no bound: such a figure's interval is open, its value stays."""
    mean = effects.mean(axis=0)
    return np.where(np.isfinite(mean), mean, 0.0)


@dataclass(frozen=True)
@holds_arrays
class Contribution:
    """What one input does to several outputs.

    effects (n, output)
        Change of every output when the input is off by its half width, one row for every direction in which it may be; of
        drawn inputs one row a draw; `as drawn` two rows a draw, in phase and in quadrature.
    dof
        Degrees of freedom of the input's standard uncertainty as it is known; so few `Monte Carlo` draws add to its doubt.
    centred
        True: the mean of draws is known and was taken off the value. False: draws stand for a bound, whose mean is not known;
        their mean square about zero counts.
    """

    effects: FloatArray
    distribution: Distribution
    dof: float = float("inf")
    centred: bool = True

    @property
    def degrees_of_freedom(self) -> float:
        """Degrees of freedom that count: relative variances 1/(2 dof) of a variance known and of one drawn add (JCGM 100:2008, E.4.3)."""
        if self.distribution != "Monte Carlo":
            return self.dof
        return 1.0 / (1.0 / self.dof + 1.0 / (len(self.effects) - 1.0))

    @property
    def mean(self) -> FloatArray:
        """What drawn inputs do on average (output,); zero for others."""
        drawn = self.distribution in DRAWN
        return bounded_mean(self.effects) if drawn else np.zeros(self.effects.shape[1:])

    @property
    def vectors(self) -> FloatArray:
        """Vectors (n, output) whose root sum of squares is the standard uncertainty; their products are covariances."""
        if self.distribution not in DRAWN:
            return np.asarray(self.effects / DIVISORS[self.distribution])
        if self.centred:
            return np.asarray((self.effects - self.mean) / np.sqrt(len(self.effects) - 1.0))
        return np.asarray(self.effects / np.sqrt(len(self.effects)))

    @property
    def standard(self) -> FloatArray:
        """Standard uncertainty (output,)."""
        return np.asarray(np.linalg.norm(self.vectors, axis=0))

    def weights(self, random: np.random.Generator, draws: int) -> FloatArray:
        """Return weights (draws, n) of the effects in random draws of the input."""
        count = len(self.effects)
        if self.distribution == "as drawn":
            angle, which = 2.0 * np.pi * random.random(draws), 2 * random.integers(count // 2, size=draws)
            out = np.zeros((draws, count))
            out[np.arange(draws), which], out[np.arange(draws), which + 1] = np.cos(angle), np.sin(angle)
            return out
        if self.distribution == "Monte Carlo":
            return np.asarray(random.normal(size=(draws, count)) / np.sqrt(count - 1.0) * self._scale(random, draws))
        if self.distribution == "U-shaped":
            angle = 2.0 * np.pi * random.random((draws, count))
            if count == 2:  # in phase and in quadrature: one phase
                return np.asarray(np.stack([np.cos(angle[:, 0]), np.sin(angle[:, 0])], axis=-1))
            return np.asarray(np.cos(angle))
        if self.distribution == "bias":
            return np.asarray(random.normal(1.0, BIAS_KNOWN, (draws, count)))
        if self.distribution == "rectangular":
            return np.asarray(random.uniform(-1.0, 1.0, (draws, count)))
        if self.distribution == "triangular":
            return np.asarray(random.triangular(-1.0, 0.0, 1.0, (draws, count)))
        return np.asarray(random.normal(0.0, 0.5, (draws, count)) * self._scale(random, draws))

    def _scale(self, random: np.random.Generator, draws: int) -> FloatArray | float:
        """Return what makes a normal draw one of Student's (JCGM 101:2008, 6.4.9)."""
        dof = self.degrees_of_freedom
        return np.sqrt(dof / random.chisquare(dof, (draws, 1))) if np.isfinite(dof) else 1.0


def joint_weights(
    contributions: Sequence[Contribution], draws: int, *, seed: int = 1, turned: bool = False
) -> list[FloatArray | ComplexArray]:
    """Return weights (draws, n) of every contribution's effects in random draws of all of them together.

    turned
        Monte Carlo draws also turn in phase from one to the next: for effects that are complex fields, whose phase draws leave open.
    """
    random = np.random.default_rng(seed)
    out: list[FloatArray | ComplexArray] = []
    for one in contributions:
        weights = one.weights(random, draws)
        if turned and one.distribution == "Monte Carlo":
            out.append(weights * np.exp(2j * np.pi * random.random((draws, 1))))
        else:
            out.append(weights)
    return out


def joint_draws(contributions: Sequence[Contribution], *, draws: int = JOINT_DRAWS, seed: int = 1) -> FloatArray:
    """Return random errors (draw, output) of all contributions together, to first order in each."""
    out: FloatArray = np.zeros((draws, *contributions[0].effects.shape[1:]))
    for one, weights in zip(contributions, joint_weights(contributions, draws, seed=seed), strict=True):
        effects = one.effects - one.mean if one.distribution in DRAWN and one.centred else one.effects
        out = out + np.tensordot(weights.real, effects, axes=1)
    return out


def half_width(errors: FloatArray, probability: float = PROBABILITY) -> FloatArray:
    """Return the half width about zero that holds a share of errors (draw, output)."""
    return np.asarray(np.quantile(np.abs(errors), probability, axis=0, method="weibull"))


def joint_half_width(contributions: Sequence[Contribution], *, draws: int = JOINT_DRAWS, seed: int = 1) -> FloatArray:
    """Return the half width about zero that holds 95 % of what inputs do (output,), of drawn inputs those that were not drawn.

    A few outputs at a time, so that many draws of many outputs fit.
    """
    weights = [one.real for one in joint_weights(contributions, draws, seed=seed)]
    effects = [
        one.effects - one.mean if one.distribution in DRAWN and one.centred else one.effects for one in contributions
    ]
    drawn = [which_input(w) for w, c in zip(weights, contributions, strict=True) if c.distribution == "as drawn"]
    every, shape = np.concatenate(weights, axis=1).T, effects[0].shape[1:]
    flat = np.concatenate([one.reshape(len(one), -1) for one in effects]).T  # output, effect
    half_widths = np.empty(len(flat))
    for begin in range(0, len(flat), OUTPUTS_AT_ONCE):
        some = slice(begin, begin + OUTPUTS_AT_ONCE)
        # A row an output: sorting then runs through memory as it lies.
        errors = np.abs(flat[some] @ every)
        high = _Highest.of(errors)
        half_widths[some] = high.quantile(_of_one_more(errors, high, drawn))
    return half_widths.reshape(shape)


def which_input(weights: FloatArray) -> FloatArray:
    """Return which of the drawn inputs every joint draw holds, (draw, input) 1 or 0, from weights (draw, effect) of two effects an input."""
    return np.asarray(weights[:, ::2] ** 2 + weights[:, 1::2] ** 2 > 0.0, float)


class _Highest(NamedTuple):
    """The largest of numbers (output, draw) in order, of `total` numbers, from that at `PROBABILITY` - `BESIDE` on."""

    in_order: FloatArray
    total: int

    @classmethod
    def of(cls, errors: FloatArray) -> _Highest:
        count = errors.shape[1]
        first = max(0, min(int((PROBABILITY - BESIDE) * (count + 1)) - 1, count - 2))
        return cls(np.sort(np.partition(errors, first, axis=1)[:, first:], axis=1), count)

    def quantile(self, share: FloatArray) -> FloatArray:
        """Return the quantiles (output,), each for its own share (Weibull's plotting position)."""
        size = self.in_order.shape[1]
        at = np.clip(share * (self.total + 1.0) - 1.0 - (self.total - size), 0.0, size - 1.0)
        low, rows = np.minimum(at.astype(int), size - 2), np.arange(len(self.in_order))
        below, above = self.in_order[rows, low], self.in_order[rows, low + 1]
        return np.asarray(below + (at - low) * (above - below))


def _of_one_more(errors: FloatArray, high: _Highest, drawn: Sequence[FloatArray]) -> FloatArray:
    """Return the share (output,) of joint draws that must be inside so that 95 % are of an input that was not among the drawn ones.

    errors (output, draw)
        Moduli.
    drawn
        Which input each draw holds, (draw, input), of every contribution that was drawn.

    A half width is read from the very inputs that it holds, n of them. Without one of them it would be another one, and the share of that
    one's draws inside tells what becomes of one that was not drawn (cross-validation). To first order the share is smaller by the
    mean of (p - p_i) / (n - 1) over draws beside the half width, p_i being the share inside of draws that hold the same input
    (derivable). Where nothing but n numbers is known this is p = 0.95 (n + 1) / n, whatever their distribution.
    """
    share = np.full(len(errors), PROBABILITY)
    if not drawn:
        return share
    within = np.asarray(errors <= high.quantile(share)[:, None], np.float32)
    ends = [high.quantile(share + side)[:, None] for side in (-BESIDE, BESIDE)]
    beside = np.asarray((errors >= ends[0]) & (errors <= ends[1]), np.float32)
    for one in drawn:
        holds = one.astype(np.float32)
        inside = within @ holds / np.maximum(holds.sum(axis=0), 1.0)
        lacks = np.sum((beside @ holds) * (PROBABILITY - inside), axis=1) / np.sum(beside, axis=1)
        share = share + np.maximum(lacks, 0.0) / max(holds.shape[1] - 1.0, 1.0)
    return np.asarray(np.minimum(share, 1.0))


def effective_dof(standard: FloatArray, dof: FloatArray) -> FloatArray:
    """Return the effective degrees of freedom of standard uncertainties (row, output) with degrees of freedom (row,).

    Welch-Satterthwaite (JCGM 100:2008, G.2b); infinite where nothing is uncertain, or so many that no table tells them apart.
    """
    fourth = np.sum(standard**4 / dof.reshape(-1, *(1,) * (standard.ndim - 1)), axis=0)
    total = np.sum(standard**2, axis=0) ** 2
    freedom = np.where(fourth > 0.0, total / np.where(fourth > 0.0, fourth, 1.0), np.inf)
    return np.asarray(np.where(freedom < MANY, freedom, np.inf))


def covariance(contributions: Sequence[Contribution]) -> FloatArray:
    """Return the covariance (..., output, output) of outputs (..., output) over all contributions (JCGM 100:2008, 5.2.2)."""
    every = np.concatenate([one.vectors for one in contributions])
    return np.asarray(np.einsum("n...i,n...j->...ij", every, every))


def correlation(contributions: Sequence[Contribution]) -> FloatArray:
    """Return the correlation (..., output, output) of outputs (..., output) over all contributions; 0 where nothing varies."""
    covariances = covariance(contributions)
    size = np.sqrt(np.einsum("...ii->...i", covariances))
    size = np.where(size > 0.0, size, 1.0)
    return np.asarray(covariances / size[..., :, None] / size[..., None, :])
