"""Learning a room: the images that explain what several devices' own waves cannot hold.

Every run gives what is outside its device's waves. One list of images must explain it for all runs, each with its own known pattern.
Images are searched one after the other, then places and weights are solved together by least squares. What a run left out would have
been told by the others decides which images are kept.
"""

from __future__ import annotations

from collections.abc import Sequence
from copy import copy
from dataclasses import dataclass, replace

import numpy as np

from colure.analysis.stray.echo_map import DIRECT_DEG, _around, _grid
from colure.analysis.stray.images import KINDS, Scanned
from colure.geometry.conventions import ComplexArray, FloatArray, IntArray
from colure.geometry.directions import tangents
from colure.values import holds_arrays

#: Images that are looked for at most.
MOST_IMAGES = 10
#: Polarizing walls: how strong the three smaller numbers of an image are expected against its first, amplitude (common practice, no source).
UNLIKE = 0.25
#: How far the length of a path may be from the first guess where the frequencies do not tell, in range lengths (one standard deviation).
PATH_SPREAD = 0.5
#: An image must lower the held-out misfit by so many noise powers of one sample.
LEAST_DROP = 30.0
#: An image whose strength all runs together leave open by more than this share is not one of its own.
UNKNOWN = 0.5
#: An image that one run alone hears must lower the misfit by so many noise powers, be sure to this share, and counts as less sure by that.
ALONE_DROP, ALONE_UNSURE, ALONE_MORE = 300.0, 0.15, 0.2
#: Steps of least squares over places and weights: after a new image, and at the end.
FEW, MANY = 3, 8
#: A step that raises the misfit is halved so often; steps that lower it by less than this share are the last.
HALVINGS, SETTLED = 4, 1e-4
#: Grid of directions that are searched, how a maximum is refined, and the samples of each run that it looks at.
STEP_DEG, FINER_DEG, SAMPLES, SEED = 18.0, (8.0, 3.0), 4000, 5
#: Path of images while their direction is looked for, range lengths.
NOMINAL = 1.6
#: Directions that are tried for every image, and how far they are apart, degrees.
CANDIDATES, APART_DEG = 3, 25.0
#: Lengths of paths that are tried, in range lengths.
PATHS = np.arange(1.1, 3.61, 0.2)
#: A first guess of an image damps its three smaller numbers by this share.
OTHERS, START_DAMPING = np.tile(np.array([0.0, 1.0, 1.0, 1.0]), 2), 0.02
#: Places are moved by this for a difference quotient, radians of direction and wavelengths of path.
NUDGE = 1e-3


@dataclass(frozen=True)
@holds_arrays
class Images:
    """Images of a room: places (image, 3) in metres and weights (image, kind)."""

    places: FloatArray
    weights: ComplexArray

    @property
    def count(self) -> int:
        """Number of images."""
        return len(self.places)

    def some(self, which: IntArray) -> Images:
        """Return some of them, in that order."""
        return Images(self.places[which], self.weights[which])

    def without(self, index: int) -> Images:
        """Return the others."""
        return self.some(np.flatnonzero(np.arange(self.count) != index))


class Misfit:
    """What of one run the device's waves cannot hold: targets (frequency, sample), weighted so that noise has the power 1."""

    def __init__(self, scanned: Scanned, field: ComplexArray, frequencies: Sequence[int]) -> None:
        self.scanned, self.frequencies = scanned, list(frequencies)
        self.middle = len(self.frequencies) // 2
        self.targets = [scanned.outside(field[index], index) for index in self.frequencies]
        sphere = scanned.sphere
        noise = sphere.white_noise(np.random.default_rng(SEED))
        #: What is outside the waves of noise of unit power, per sample; interpolated columns are no new samples.
        self._outside = float(np.mean(np.abs(scanned.outside(noise[0], self.frequencies[self.middle])) ** 2))
        self._new = 2.0 * sphere.slices_used / sphere.phi.size if sphere.slices_used else 1.0
        self.information = self._information(self.targets)

    def noise_power(self, noise: FloatArray) -> float:
        """Return the sum of squares that noise of standard deviation (frequency,) in every sample leaves in the targets."""
        squares = [
            float(noise[index]) ** 2 * one.size for index, one in zip(self.frequencies, self.targets, strict=True)
        ]
        return self._outside * sum(squares)

    def _information(self, left: list[ComplexArray]) -> float:
        power = power_of(left) / sum(one.size for one in left)
        return self._new * self._outside / max(power, 1e-300)

    def judged_by(self, left: list[ComplexArray]) -> None:
        """Take the noise from what a fit leaves; `information` is the weight of one squared sample in noise powers."""
        self.information = self._information(left)

    def columns(self, place: FloatArray) -> list[ComplexArray]:
        """Return what an image there leaves outside the device's waves, (kind, sample) at every frequency."""
        return [self.at(place, at) for at in range(len(self.frequencies))]

    def at(self, place: FloatArray, number: int) -> ComplexArray:
        """Return the same at one of the frequencies, (kind, sample)."""
        index = self.frequencies[number]
        return self.scanned.outside(self.scanned.per_kind(place, index), index)

    def of(self, left: list[ComplexArray]) -> Misfit:
        """Return the run with what is left of it as its target."""
        other = copy(self)
        other.targets = left
        return other

    def cleaned(self, field: ComplexArray, images: Images) -> Misfit:
        """Return the run with its device known without the echoes of images."""
        scanned = self.scanned
        echoes = scanned.echoes(images.places, images.weights)
        device = scanned.step.expansion(field - echoes)
        other = Misfit(Scanned(scanned.sphere, scanned.step, device, scanned.surround), field, self.frequencies)
        other.judged_by(other.left(images))
        return other

    def predicted(self, images: Images) -> list[ComplexArray]:
        """Return what images leave outside the device's waves, (sample,) at every frequency."""
        return [
            self.scanned.outside(self.scanned.echo(images.places, images.weights, index), index)
            for index in self.frequencies
        ]

    def left(self, images: Images) -> list[ComplexArray]:
        """Return what images do not explain, (sample,) at every frequency."""
        return [one - other for one, other in zip(self.targets, self.predicted(images), strict=True)]


def power_of(parts: Sequence[ComplexArray]) -> float:
    """Return the sum of squares of all parts."""
    return float(sum(np.sum(np.abs(one) ** 2) for one in parts))


@dataclass(frozen=True)
@holds_arrays
class Solved:
    """Images of least squares, what they leave of every run in noise powers, and the inverse normal matrix (parameter, parameter).

    Parameters of an image: two angles of direction (radians), path (metres), real parts of the weights, imaginary parts.
    """

    images: Images
    misfit: float
    covariance: FloatArray


#: Real parameters of one image.
EACH = 3 + 2 * KINDS


def moved(place: FloatArray, by: FloatArray) -> FloatArray:
    """Return a place (3,) after small turns along its two tangents (radians) and a longer path (metres)."""
    distance = float(np.linalg.norm(place))
    direction = place / distance
    first, second = tangents(direction)
    turned = direction + by[0] * first + by[1] * second
    return np.asarray((distance + by[2]) * turned / np.linalg.norm(turned))


def _normal(runs: Sequence[Misfit], images: Images) -> tuple[FloatArray, FloatArray, float]:
    """Return normal matrix, right side and misfit of all runs at some images."""
    size = EACH * images.count
    matrix, right, misfit = np.zeros((size, size)), np.zeros(size), 0.0
    for run in runs:
        weight = run.information
        for at, index in enumerate(run.frequencies):
            columns, left = _columns(run, images, index, run.targets[at])
            matrix += weight * (columns.conj() @ columns.T).real
            right += weight * (columns.conj() @ left).real
            misfit += weight * float(np.sum(np.abs(left) ** 2))
    return matrix, right, misfit


def _columns(run: Misfit, images: Images, index: int, target: ComplexArray) -> tuple[ComplexArray, ComplexArray]:
    """Return the derivatives (parameter, sample) of what images leave outside the device's waves, and what they do not explain."""
    rows, left = [], target
    k = float(run.scanned.device.k[index])
    nudges = np.diag([NUDGE, NUDGE, NUDGE * 2.0 * np.pi / k])
    for place, weights in zip(images.places, images.weights, strict=True):
        unit = run.scanned.per_kind(place, index)
        whole = np.tensordot(weights, unit, 1)
        beside = [np.tensordot(weights, run.scanned.per_kind(moved(place, one), index), 1) - whole for one in nudges]
        seen = run.scanned.outside(np.concatenate([unit, np.stack(beside)]), index)
        kinds, places = seen[:KINDS], seen[KINDS:] / np.diag(nudges)[:, None]
        rows += [places, kinds, 1j * kinds]
        left = left - weights @ kinds
    return (np.concatenate(rows) if rows else np.zeros((0, target.size), complex)), left


def _prior(images: Images, range_m: float) -> tuple[FloatArray, FloatArray]:
    """Return the diagonal of what is known before, and the parameters that it pulls to nought, (parameter,)."""
    known, value = np.zeros((images.count, EACH)), np.zeros((images.count, EACH))
    known[:, 2] = 1.0 / (PATH_SPREAD * range_m) ** 2
    spread = 2.0 / np.maximum(UNLIKE * np.abs(images.weights[:, :1]), 1e-9) ** 2
    for start in (3, 3 + KINDS):
        known[:, start + 1 : start + KINDS] = spread
    value[:, 3 : 3 + KINDS], value[:, 3 + KINDS :] = images.weights.real, images.weights.imag
    value[:, [3, 3 + KINDS]] = 0.0
    return known.ravel(), value.ravel()


def _with_prior(matrix: FloatArray, known: FloatArray) -> FloatArray:
    return np.asarray(matrix + np.diag(known + 1e-12 * np.diag(matrix).max()))


def _stepped(images: Images, change: FloatArray) -> Images:
    by = change.reshape(images.count, EACH)
    places = np.array([moved(place, one[:3]) for place, one in zip(images.places, by, strict=True)])
    return Images(places, images.weights + by[:, 3 : 3 + KINDS] + 1j * by[:, 3 + KINDS :])


def _cost(runs: Sequence[Misfit], images: Images, range_m: float) -> float:
    known, value = _prior(images, range_m)
    return sum(run.information * power_of(run.left(images)) for run in runs) + float(np.sum(known * value**2))


def solved(runs: Sequence[Misfit], images: Images, *, steps: int = MANY) -> Solved:
    """Solve places and weights of images together from all runs, by Gauss-Newton steps that never raise the misfit."""
    range_m = runs[0].scanned.surround.range_m
    cost = _cost(runs, images, range_m)
    for _ in range(steps):
        matrix, right, _ = _normal(runs, images)
        known, value = _prior(images, range_m)
        change = np.asarray(np.linalg.solve(_with_prior(matrix, known), right - known * value))
        before = cost
        for _ in range(HALVINGS):
            tried = _stepped(images, _limited(change, range_m))
            now = _cost(runs, tried, range_m)
            if now < cost:
                images, cost = tried, now
                break
            change = 0.5 * change
        if before - cost < SETTLED * max(before, 1.0):
            break
    matrix, _, misfit = _normal(runs, images)
    known, _ = _prior(images, range_m)
    return Solved(images, misfit, np.asarray(np.linalg.inv(_with_prior(matrix, known))))


def _limited(change: FloatArray, range_m: float) -> FloatArray:
    """Return a step that turns no image by more than 0.1 rad and moves none by more than a third of the range."""
    by = change.reshape(-1, EACH)
    largest = max(float(np.abs(by[:, :2]).max()) / 0.1, float(np.abs(by[:, 2]).max()) / (0.33 * range_m), 1.0)
    return np.asarray(change / largest)


class Searched:
    """Directions of the room with what an image there would leave outside the devices' waves, kept for all searches.

    The path is taken as `NOMINAL` range lengths; the weights are free at every frequency, so that it need not be right.
    """

    def __init__(self, runs: Sequence[Misfit]) -> None:
        self._runs, self._directions = runs, _grid(STEP_DEG)
        random = np.random.default_rng(SEED)
        self._chosen = [np.sort(random.permutation(run.targets[0].size)[:SAMPLES]) for run in runs]
        self._ends = sorted({0, len(runs[0].frequencies) - 1})
        self._seen = [self._of(number, self._directions) for number in range(len(runs))]

    def _of(self, number: int, directions: FloatArray) -> ComplexArray:
        """Return what images in directions leave of one run, (frequency, direction, kind, sample)."""
        run, path = self._runs[number], NOMINAL * self._runs[number].scanned.surround.range_m
        chosen = self._chosen[number]
        seen = [[run.at(path * one, at)[:, chosen] for one in directions] for at in self._ends]
        return np.array(seen, np.complex64)

    def best(self, left: list[list[ComplexArray]], count: int) -> list[FloatArray]:
        """Return so many directions (3,) that explain most of what is left of all runs together, apart from each other."""
        drops = self._drops(left, self._seen)
        out: list[FloatArray] = []
        while len(out) < count and drops.max() > 0.0:
            top = self._directions[int(np.argmax(drops))]
            drops = np.where(self._directions @ top > np.cos(np.deg2rad(APART_DEG)), 0.0, drops)
            out.append(self._finer(top, left))
        return out

    def _finer(self, direction: FloatArray, left: list[list[ComplexArray]]) -> FloatArray:
        for finer in FINER_DEG:
            near = _around(direction, finer)
            near = near[near[:, 2] < np.cos(np.deg2rad(0.5 * DIRECT_DEG))]
            direction = near[int(np.argmax(self._drops(left, [self._of(n, near) for n in range(len(self._runs))])))]
        return direction

    def _drops(self, left: list[list[ComplexArray]], seen: list[ComplexArray]) -> FloatArray:
        """Return how much of the misfit one image in each direction explains, (direction,)."""
        total = np.zeros(seen[0].shape[1])
        for row, at in enumerate(self._ends):
            gram = np.zeros((len(total), KINDS, KINDS), complex)
            right = np.zeros((len(total), KINDS), complex)
            for run, rest, readings, chosen in zip(self._runs, left, seen, self._chosen, strict=True):
                weight = run.information * rest[at].size / chosen.size
                gram = gram + weight * (readings[row].conj() @ readings[row].swapaxes(1, 2))
                right = right + weight * (readings[row].conj() @ rest[at][chosen])
            size = np.trace(gram, axis1=1, axis2=2).real[:, None, None] / KINDS
            damped = 1e-6 * np.eye(KINDS) + START_DAMPING * np.diag(OTHERS[:KINDS])
            weights = np.linalg.solve(gram + size * damped, right[..., None])[..., 0]
            total += np.sum(weights.conj() * right, axis=1).real
        return total


def started(runs: Sequence[Misfit], direction: FloatArray) -> Images:
    """Return one image in a direction: the path whose phases over the frequencies fit best, and its weights."""
    surround = runs[0].scanned.surround
    best, image = -1.0, None
    k = np.sort(runs[0].scanned.device.k[runs[0].frequencies])
    longest = surround.range_m + (0.9 * 2.0 * np.pi / float(np.min(np.diff(k))) if k.size > 1 else np.inf)
    for path in surround.range_m * PATHS:
        if path > longest:
            break
        place = (path * direction)[None]
        matrix, right = np.zeros((2 * KINDS, 2 * KINDS)), np.zeros(2 * KINDS)
        for run in runs:
            for kinds, one in zip(run.columns(place[0]), run.targets, strict=True):
                both = np.concatenate([kinds, 1j * kinds])
                matrix += run.information * (both.conj() @ both.T).real
                right += run.information * (both.conj() @ one).real
        size = float(np.trace(matrix))
        value = np.linalg.solve(matrix + np.diag(1e-6 * size + START_DAMPING * size * OTHERS), right)
        drop = float(value @ right)
        if drop > best:
            best, image = drop, Images(place, (value[:KINDS] + 1j * value[KINDS:])[None])
    assert image is not None
    return image


def joined(one: Images, other: Images) -> Images:
    """Return both lists as one."""
    return Images(np.concatenate([one.places, other.places]), np.concatenate([one.weights, other.weights]))


NOTHING = Images(np.zeros((0, 3)), np.zeros((0, KINDS), complex))


def searched(runs: Sequence[Misfit]) -> Images:
    """Find images one after the other until the next explains no more than noise would; the misfit judges the noise."""
    looked, images = Searched(runs), NOTHING
    for _ in range(MOST_IMAGES):
        left = [run.left(images) for run in runs]
        for run, rest in zip(runs, left, strict=True):
            run.judged_by(rest)
        before = sum(run.information * power_of(rest) for run, rest in zip(runs, left, strict=True))
        alone = [run.of(rest) for run, rest in zip(runs, left, strict=True)]
        tried = [solved(alone, started(alone, one), steps=FEW) for one in looked.best(left, CANDIDATES)]
        best = solved(runs, joined(images, min(tried, key=lambda one: one.misfit).images), steps=FEW)
        if before - best.misfit < LEAST_DROP:
            break
        images = best.images
    for run in runs:
        run.judged_by(run.left(images))
    return images


@dataclass(frozen=True)
@holds_arrays
class LearnedImages:
    """What runs tell of their room: images with their covariance, and what each run would have been told by the others.

    drops (image,)
        How much of the held-out misfit each image explained, in noise powers.
    explained (run,)
        Share of a run's misfit that images from the other runs explain.
    """

    images: Images
    covariance: FloatArray
    drops: FloatArray
    explained: FloatArray


def learn(runs: Sequence[Misfit], fields: Sequence[ComplexArray]) -> LearnedImages:
    """Learn the images of a room from runs of unlike devices.

    Parameters
    ----------
    runs, fields
        Each run's misfit, and the field (frequency, 2, theta, phi) it was made of.

    Raises
    ------
    ValueError
        If fewer than two runs are given, or no image that some runs show is seen by the others.
    """
    if len(runs) < 2:
        raise ValueError(f"room: {len(runs)} run, needs at least 2 of unlike devices (runs)")
    images = searched(runs)
    # The devices were known with their echoes in them: known again without.
    runs = [run.cleaned(field, images) for run, field in zip(runs, fields, strict=True)] if images.count else runs
    while images.count:
        solution = solved(runs, images)
        unsure = unsure_of(solution)
        if float(unsure.max()) > UNKNOWN:
            # Two images in one place: their sum is known, not the two. One of them stands for both.
            images = solution.images.without(int(np.argmax(unsure)))
            continue
        learned = _held_out(runs, solution)
        weak = np.flatnonzero(learned.drops < LEAST_DROP)
        alone = np.array([_known_alone(runs, solution, learned, int(i)) for i in weak], bool)
        if alone.all():
            return _less_sure(learned, weak)
        images = solution.images.without(int(weak[~alone][np.argmin(learned.drops[weak[~alone]])]))
    raise ValueError("room: no echo that some runs show is seen by the others too: there is nothing to learn from them")


def _known_alone(runs: Sequence[Misfit], solution: Solved, learned: LearnedImages, image: int) -> bool:
    """Tell whether an image that no other run confirms or denies is sure from the run that hears it, at all frequencies together."""
    if learned.drops[image] < -LEAST_DROP or unsure_of(solution)[image] > ALONE_UNSURE:
        return False
    without = solved(runs, solution.images.without(image), steps=FEW)
    return without.misfit - solution.misfit >= ALONE_DROP


def _less_sure(learned: LearnedImages, which: IntArray) -> LearnedImages:
    """Return images some of which no other run confirms: these are taken as less sure than the noise says."""
    more = np.zeros((learned.images.count, EACH))
    size = np.abs(learned.images.weights[which, 0])
    more[which, 3] = more[which, 3 + KINDS] = 0.5 * (ALONE_MORE * size) ** 2
    return replace(learned, covariance=learned.covariance + np.diag(more.ravel()))


def unsure_of(solution: Solved) -> FloatArray:
    """Return the relative standard deviation (image,) of every image's first weight, from noise alone."""
    own = np.diag(solution.covariance).reshape(solution.images.count, EACH)
    return np.asarray(np.sqrt(own[:, 3] + own[:, 3 + KINDS]) / np.abs(solution.images.weights[:, 0]))


def _held_out(runs: Sequence[Misfit], solution: Solved) -> LearnedImages:
    """Return images judged by leaving every run out once: the others' images are held against it."""
    images = solution.images
    drops, told, explained = np.zeros(images.count), np.zeros(images.count), []
    spread = np.zeros_like(solution.covariance)
    for number, run in enumerate(runs):
        known, others = _known_to([one for i, one in enumerate(runs) if i != number], images)
        before, after = power_of(run.targets), power_of(run.left(others))
        explained.append(1.0 - after / before)
        told[known] += 1.0
        for i, image in enumerate(known):
            drops[image] += run.information * (power_of(run.left(others.without(i))) - after)
        off = np.zeros((images.count, EACH))
        if known.size:
            off[known] = _apart(others, images.some(known)).reshape(-1, EACH)
        spread += np.outer(off, off)
    share = np.repeat(np.sqrt(np.maximum(told - 1.0, 0.0) / np.maximum(told, 1.0)), EACH)
    return LearnedImages(images, solution.covariance + np.outer(share, share) * spread, drops, np.array(explained))


def _known_to(runs: Sequence[Misfit], images: Images) -> tuple[IntArray, Images]:
    """Return which images some runs know, and what they make of them.

    What they leave open (a wall that one run alone hears) would be made up to fit their noise: it says nothing of another run.
    """
    known = np.arange(images.count)
    while known.size:
        solution = solved(runs, images.some(known), steps=FEW)
        unsure = unsure_of(solution)
        if float(unsure.max()) <= UNKNOWN:
            return known, solution.images
        known = np.delete(known, int(np.argmax(unsure)))
    return known, NOTHING


def _apart(one: Images, other: Images) -> FloatArray:
    """Return the parameters (parameter,) that lead from the second list of images to the first."""
    rows = []
    for place, weights, base, first in zip(one.places, one.weights, other.places, other.weights, strict=True):
        distance, aside = float(np.linalg.norm(base)), place / np.linalg.norm(place)
        across = np.stack(tangents(base / distance))
        change = weights - first
        rows.append(
            np.concatenate([across @ aside, [float(np.linalg.norm(place)) - distance], change.real, change.imag])
        )
    return np.concatenate(rows)
