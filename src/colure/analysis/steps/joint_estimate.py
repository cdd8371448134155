"""Small motions of a mount's joints from the scan of one rigid device: what is known of them, and of which sums alone.

Motions that look alike cannot be told apart. So the fit works on combinations: the singular vectors of what all motions, each
one declared standard deviation, move out of the device's waves. Combinations that leave the data as they are stay as declared.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from colure.analysis.steps.alignment_fit import AlignmentFit, AlignmentMisfit, Disturbances, Outside, clear_waves
from colure.analysis.steps.assemble import MeasuredSphere
from colure.analysis.steps.far_field import FarFieldStep
from colure.analysis.steps.misaligned import corrected
from colure.analysis.steps.moved_joints import MovedJoints, SmallMotion, Units
from colure.geometry.conventions import BoolArray, ComplexArray, FloatArray
from colure.values import holds_arrays
from colure.waves.modes import resized

#: A combination that moves the data by less than this share of their noise says nothing.
LEAST_TOLD = 0.3
#: Combinations that are looked for at most.
MOST_COMBINATIONS = 24
#: A motion or a combination whose uncertainty the data shrink below this share of the declared one was seen.
SEEN = 0.5
#: A coefficient is the device's where it is this many times what noise and echoes make of one.
CLEAR = 3.0
#: Draws of noise: many combinations want more than a few parameters do.
DRAWS = 120
#: Pairs of draws of the motions that nobody knows, for what they do to second order.
BENT_DRAWS = 10
#: Times that traces and combinations are taken.
PASSES = 2
#: Size, in declared standard deviations, of the motions from which the traces are taken.
SMALL_UNITS = 0.2


@dataclass(frozen=True, kw_only=True)
@holds_arrays
class JointEstimate:
    """What a scan says of small motions, in units of one declared standard deviation of each.

    motions
        What may be off.
    sizes, covariance
        Posterior mean (motion,) and covariance (motion, motion), echoes and noise in it.
    quiet
        The part of the covariance that is not the rooms' and the cable's.
    taken
        What is taken off the data (motion,): the combinations that were seen and stand out of their uncertainty.
    combinations
        (motion, combination) unit vectors, best known first, of those that were seen.
    sums, sums_sigma
        Their values and standard deviations (combination,).
    before, after
        Relative size of what does not fit into the device's waves, before and after the correction.
    conflict
        Probability that a mount as declared gives data as far off, or farther.
    """

    motions: tuple[SmallMotion, ...]
    sizes: FloatArray
    covariance: FloatArray
    quiet: FloatArray
    taken: FloatArray
    combinations: FloatArray
    sums: FloatArray
    sums_sigma: FloatArray
    before: float
    after: float
    conflict: float

    @property
    def sigma(self) -> FloatArray:
        """Standard deviation (motion,) of every motion."""
        return np.asarray(np.sqrt(np.diag(self.covariance)))

    @property
    def seen(self) -> BoolArray:
        """Tell which motions (motion,) the data know apart from all others."""
        return np.asarray(self.sigma < SEEN)


def estimate_joints(
    sphere: MeasuredSphere,
    step: FarFieldStep,
    model: MovedJoints,
    motions: tuple[SmallMotion, ...],
    disturbances: Disturbances,
) -> JointEstimate:
    """Find the small motions of a whole-sphere scan, at the frequencies of `sphere` and `step`.

    Raises
    ------
    ValueError
        If the scan is not a whole sphere, or nothing may be off.
    """
    if not sphere.whole:
        raise ValueError("geometry: needs a whole sphere; part of one does not close on itself (deg)")
    if not motions:
        raise ValueError("geometry: every tolerance of the mount is 0: nothing to look for (deg, mm)")
    floor = _floor(sphere, step, disturbances)
    sizes, fit, axes = np.zeros(len(motions)), None, np.zeros((len(motions), 0))
    # Motions as large as tolerances spread over waves that are not the device's: traces are taken again where they are taken off.
    for _ in range(PASSES):
        axes = _told(sphere, step, model, sizes, disturbances, floor)
        if axes.shape[1] == 0:
            return _nothing_told(motions)
        fit = _fitted(sphere, step, model, axes, sizes, disturbances, floor)
        sizes = axes @ fit.parameters
    assert fit is not None  # PASSES is above 0
    return _estimate(motions, axes, _bent(sphere, step, model, axes, fit))


def _bent(
    sphere: MeasuredSphere, step: FarFieldStep, model: MovedJoints, axes: FloatArray, fit: AlignmentFit
) -> AlignmentFit:
    """Return the fit with what motions that nobody knows do to those that are known, to second order.

    A shift on a turned joint is not the shift on a straight one: sums are known no better than the unknown members let them.
    """
    outside = Outside(step, sphere.theta, sphere.phi.size)

    def left(units: FloatArray) -> FloatArray:
        return outside(corrected(sphere, step, model, tuple(float(x) for x in units), model.aligned)[0])

    random, here = np.random.default_rng(5), axes @ fit.parameters
    start, moved = left(here), []
    rest = np.eye(len(here)) - axes @ axes.T
    for _ in range(BENT_DRAWS):
        own = random.multivariate_normal(np.zeros(len(fit.parameters)), fit.covariance, method="eigh")
        unknown = rest @ random.normal(size=len(here))
        for side in (1.0, -1.0):
            drawn = left(here + side * (axes @ own + unknown))
            moved.append(fit.weights @ (drawn - start) + fit.known @ (side * own))
    bends = np.stack(moved)
    more = bends.T @ bends / len(bends) * (1.0 + 1.0 / BENT_DRAWS)
    return replace(fit, covariance=fit.covariance + more, quiet=fit.quiet + more)


def _fitted(
    sphere: MeasuredSphere,
    step: FarFieldStep,
    model: MovedJoints,
    axes: FloatArray,
    sizes: FloatArray,
    disturbances: Disturbances,
    floor: FloatArray | None,
) -> AlignmentFit:
    def error(units: FloatArray) -> Units:
        return tuple(float(x) for x in axes @ units)

    count = axes.shape[1]
    misfit = AlignmentMisfit(sphere, step, model, error, count, draws=DRAWS, floor=floor)
    return misfit.solve(np.zeros(count), disturbances, axes.T @ sizes)


def _floor(sphere: MeasuredSphere, step: FarFieldStep, disturbances: Disturbances) -> FloatArray | None:
    """Return the size (frequency,) below which a coefficient is noise or echo; None where nobody says how strong they are."""
    if disturbances.noise is None:
        return None
    drawn = step.measured(sphere.white_noise(np.random.default_rng(3)))
    unit = np.sqrt(np.mean(np.abs(resized(drawn, step.keep_order)) ** 2, axis=(1, 2)))
    peak = np.sqrt(np.max(np.sum(np.abs(sphere.field) ** 2, axis=1), axis=(1, 2)))
    return np.asarray(CLEAR * unit * np.hypot(disturbances.noise, disturbances.echo_level * peak))


def _told(
    sphere: MeasuredSphere,
    step: FarFieldStep,
    model: MovedJoints,
    motion_sizes: FloatArray,
    disturbances: Disturbances,
    floor: FloatArray | None,
) -> FloatArray:
    """Return the combinations (motion, combination) that move the data by more than their noise hides, about motions of these sizes."""
    outside = Outside(step, sphere.theta, sphere.phi.size)
    error = tuple(float(x) for x in motion_sizes)
    data, waves = corrected(sphere, step, model, error, model.aligned)
    waves = waves * clear_waves(waves, floor)
    traces = []
    for index in range(len(motion_sizes)):
        pair = []
        for side in (SMALL_UNITS, -SMALL_UNITS):
            units = motion_sizes.copy()
            units[index] += side
            pair.append(model.read(waves, tuple(float(x) for x in units)))
        moved = replace(sphere, field=(pair[0] - pair[1]) / (2.0 * SMALL_UNITS))
        traces.append(outside(corrected(moved, step, model, error, model.aligned)[0]))
    left = outside(data)
    _, sizes, axes = np.linalg.svd(np.stack(traces, axis=-1), full_matrices=False)
    noise = float(np.linalg.norm(left) / np.sqrt(left.size))
    if disturbances.noise is not None:
        noise = min(noise, float(np.sqrt(0.5 * np.mean(disturbances.noise**2))))
    return np.asarray(axes[: min(int(np.sum(sizes > LEAST_TOLD * noise)), MOST_COMBINATIONS)].T)


def _nothing_told(motions: tuple[SmallMotion, ...]) -> JointEstimate:
    count = len(motions)
    none = np.zeros(count)
    return JointEstimate(motions=motions, sizes=none, covariance=np.eye(count), quiet=np.eye(count), taken=none,
        combinations=np.zeros((count, 0)), sums=np.zeros(0), sums_sigma=np.zeros(0), before=0.0, after=0.0,
        conflict=1.0)  # fmt: skip


def _estimate(motions: tuple[SmallMotion, ...], axes: FloatArray, fit: AlignmentFit) -> JointEstimate:
    rest = np.eye(len(motions)) - axes @ axes.T
    # Against what was declared, or gave way to the data: which combinations are known best.
    scaled = fit.covariance / np.outer(fit.wider, fit.wider)
    known, vectors = np.linalg.eigh(0.5 * (scaled + scaled.T))
    own = vectors[:, known < SEEN**2]
    sums = own.T @ fit.parameters
    sigma = np.sqrt(np.maximum(np.diag(own.T @ fit.covariance @ own), 0.0))
    clear = np.abs(sums) > 2.0 * sigma
    taken = axes @ (own[:, clear] @ sums[clear])
    return JointEstimate(
        motions=motions, sizes=axes @ fit.parameters, covariance=axes @ fit.covariance @ axes.T + rest,
        quiet=axes @ fit.quiet @ axes.T + rest, taken=taken,
        combinations=axes @ own, sums=sums, sums_sigma=sigma, before=fit.before, after=fit.after, conflict=fit.conflict,
    )  # fmt: skip


def realigned_field(sphere: MeasuredSphere, step: FarFieldStep, model: MovedJoints, taken: FloatArray) -> ComplexArray:
    """Return the field (frequency, 2, theta, phi) as a mount without the motions that are taken off would have measured it."""
    return corrected(sphere, step, model, tuple(float(x) for x in taken), model.aligned)[0]
