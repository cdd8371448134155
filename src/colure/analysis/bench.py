"""The bench on which causes are tried: the inputs of a measurement, and what a change of its data does to every figure."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Literal

import numpy as np
from scipy.stats import t as student

from colure.analysis.assembly import MeasuredSphere
from colure.analysis.figures.evaluate import FigureSet, Near
from colure.analysis.nearfield import FarFieldStep
from colure.geometry.conventions import ComplexArray, FloatArray
from colure.model.chamber import Chamber
from colure.waves.expansion import Expansion

#: Of a bound with unknown phase (arcsine, "U-shaped") 95 % lie within 0.997 of it; with normal errors a fifth to a third as
#: large beside it, its share in a root sum of squares that holds 95 % is 1.11 to 1.16 (derivable by simulation). Twice
#: its standard deviation, sqrt 2 of the bound, would be more than all.
U_SHAPED = 1.14

Distribution = Literal["normal", "U-shaped", "rectangular", "change", "Monte Carlo"]


@dataclass(frozen=True)
class Inputs:
    """What the budget needs from the processing chain.

    noise_sigma (frequency,): standard deviation (complex modulus) of one component of one
    sample, in the units of the measured field. aligned: the chamber's tolerances are what the
    correction from the data left. other_gate (as the sphere's field): what another time gate makes of it.
    once (frequency,): relative noise, each of the two quadratures, of the few sweeps that everything is compared with
    (first tie, reference). peak_reading: largest wave ratio of the scan, for what is declared of the receiver. mismatch_db: expanded,
    of declared reflections. declared_offset_mm: what the protocol says of the axes' offset, any direction.
    """

    sphere: MeasuredSphere
    step: FarFieldStep
    chamber: Chamber
    figures: FigureSet
    noise_sigma: FloatArray
    drift_residual: float
    probe: Expansion | None
    seed: int = 1
    aligned: bool = False
    other_gate: ComplexArray | None = None
    once: FloatArray | None = None
    peak_reading: float = 1.0
    declared_offset_mm: float = 0.0
    mismatch_db: float = 0.0

    def only(self, index: int) -> Inputs:
        """Return the inputs of one frequency alone."""
        one = slice(index, index + 1)
        response = self.step.response
        narrow = replace(
            self.step,
            k=self.step.k[one],
            response=replace(
                response,
                grad=response.grad[one],
                curl=response.curl[one],
                first_order_share=response.first_order_share[one],
            ),
        )
        probe = None if self.probe is None else self.probe.at_frequency(index)
        return replace(
            self,
            sphere=replace(self.sphere, frequency_hz=self.sphere.frequency_hz[one], field=self.sphere.field[one]),
            step=narrow,
            figures=replace(
                self.figures,
                band=False,
                mismatch_loss_db=None if self.figures.mismatch_loss_db is None else self.figures.mismatch_loss_db[one],
            ),
            noise_sigma=self.noise_sigma[one],
            once=None if self.once is None else self.once[one],
            probe=probe,
            other_gate=None if self.other_gate is None else self.other_gate[one],
        )

    @property
    def slant(self) -> float:
        """Reference of the co-polar vector, radians."""
        return self.figures.slant


@dataclass(frozen=True)
class Cause:
    """One term: vectors (n, frequency, figure) whose root sum of squares is its expanded contribution.

    They keep their signs, so that their products are covariances between figures. size, unit: what was
    applied (expanded), where it is one number. shift (frequency, figure): what the cause does on average, as stray
    power adds to a null and to the radiated power; the interval is moved back by it (JCGM 100:2008, 3.2.4).
    """

    term: str
    vectors: FloatArray
    basis: str
    kind: Literal["measured", "declared"]
    distribution: Distribution
    size: float | None = None
    unit: str = ""
    shift: FloatArray | None = None


@dataclass(frozen=True)
class Bench:
    """The nominal result that every cause is compared with."""

    inputs: Inputs
    nominal: Expansion
    values: FloatArray
    near: list[Near]

    def changed_field(self, field: ComplexArray) -> FloatArray:
        """Return the change of every figure (frequency, figure) when the measured field is another."""
        return self.changed(self.inputs.step.expansion(field))

    def changed(self, expansion: Expansion) -> FloatArray:
        """Return the change of every figure (frequency, figure) with another expansion."""
        found = self.inputs.figures.values(expansion, near=self.near) - self.values
        return np.asarray(np.nan_to_num(_turned_back(found, self.inputs.figures.names)))

    def monte_carlo(self, draw: Callable[[], Expansion], draws: int) -> tuple[FloatArray, FloatArray]:
        """Return vectors of the 95 % half width over random results, and their mean (frequency, figure)."""
        return self.spread(np.stack([self.changed(draw()) for _ in range(draws)]))

    def spread(self, found: FloatArray, *, tails: bool = False) -> tuple[FloatArray, FloatArray]:
        """Return vectors of the 95 % half width of random changes (draw, frequency, figure), and their mean.

        Few draws know their standard deviation badly: Student's factor of 95 % takes the place of 2 (JCGM 100:2008, G.3).

        tails
            The half width is read from the draws instead of taken from their standard deviation.
        """
        draws = len(found)
        mean = np.where(self.inputs.figures.floors, 0.0, found.mean(axis=0))
        vectors = float(student.ppf(0.975, draws - 1)) / np.sqrt(draws - 1) * (found - mean)
        if not tails:
            return np.asarray(vectors), np.asarray(mean)
        # A few wild draws make a standard deviation too long, and mostly it is too short. Whatever the distribution, the
        # r-th of n ordered draws holds the next one in r/(n + 1) of all cases (Wilks, Ann. Math. Stat. 12:91, 1941, from memory).
        holds = np.quantile(np.abs(found - mean), 0.95, axis=0, method="weibull")
        return np.asarray(vectors * (holds / np.maximum(np.linalg.norm(vectors, axis=0), 1e-300))), np.asarray(mean)


def _turned_back(change: FloatArray, names: tuple[str, ...]) -> FloatArray:
    """Take whole half turns out of the change of a tilt: an ellipse's axis has no direction."""
    if "tilt_deg" in names:
        column = names.index("tilt_deg")
        change[:, column] = (change[:, column] + 90.0) % 180.0 - 90.0
    return change
