"""A learned room held against a new run: does the run show the learned echoes, and what does the scan read without them?

The run's own misfit (what its device's waves cannot hold) judges. Every image's echo is fitted with a free complex factor, which is 1
while the room is as it was. A wall that was moved turns the factor. Nothing is removed unless the run itself shows the echoes.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum

import numpy as np

from colure.analysis.steps.assemble import MeasuredSphere
from colure.analysis.steps.far_field import FarFieldStep
from colure.analysis.stray.images import Scanned, Surround
from colure.analysis.stray.learning import Images, Misfit, moved
from colure.analysis.stray.mirrors import hearing, of_reference
from colure.errors import InputError
from colure.geometry.conventions import ComplexArray, FloatArray, amplitude_db, wavenumber
from colure.model.chamber import Chamber
from colure.model.learned_room import LearnedRoom
from colure.model.recipe import Recipe
from colure.values import holds_arrays
from colure.waves.expansion import Expansion

#: Frequencies at which a run is asked.
FREQUENCIES = 5
#: The device is known with its echoes in it: removed, known again, removed anew, so often.
TURNS = 3
#: An echo whose factor a run leaves open by more than this is not judged by it, if all of them hold no more than so much of the power.
OPEN, UNJUDGED = 0.5, 0.25
#: What is taken out as learned and was changed since leaves the old echo and the new one (derivable: two powers).
MOVED = 2.0
#: A room has changed when echoes are off by more than this share of them, beyond so many standard deviations.
OFF, SURE = 0.35, 3.0
#: An image counts by itself when it holds so much of the echoes' power.
OWN_SHARE = 0.1
#: A run confirms a room when the error of its factors is below this, and the learned echoes lower its misfit by so many noise powers.
UNSURE, LEAST_GAIN = 0.35, 30.0
#: A run does not confirm a room when more than this of the learned echoes' power remains beyond noise.
STRANGE = 0.5
#: The model of an image is good to this share of its echo: the probe's pattern over the device, the field's radial part (derivable).
MODEL = 0.1
#: Images that may have escaped: so many, each as strong as one that is just found.
ESCAPED, JUST_FOUND = 2.0, 30.0


class Doubt(StrEnum):
    """Why a run cannot tell whether a room is as it was learned."""

    LEARNED = "the learned echoes are themselves too uncertain for this device"
    DEVICE = "this device's own waves can hold most of the learned echoes"
    NOISE = "noise hides the learned echoes"
    STRANGE = "more than the learned echoes does not fit this device"


@dataclass(frozen=True, kw_only=True)
@holds_arrays
class RoomHeard:
    """What a run says of a learned room.

    holds
        True: the run shows the learned echoes, and they were removed. False: the room has changed. None: the run cannot tell.
    explained
        Share of the run's misfit that the learned echoes explain.
    off, off_expanded
        Error of the learned echoes as an amplitude ratio to them, and the expanded uncertainty (k = 2) of that.
    factors (image,)
        What each learned echo must be multiplied with to explain the run best.
    echo_db, left_db
        Rms of the learned echoes in one reading below the peak, and what is expected to remain of the room's echoes.
    doubt
        Why the run cannot tell; None where it can.
    unjudged
        Numbers of the echoes that the run leaves open while it judges the others: removed with them, and left in `left_db` as if changed.
    """

    holds: bool | None
    explained: float
    off: float
    off_expanded: float
    factors: ComplexArray
    echo_db: float
    left_db: float
    doubt: Doubt | None = None
    unjudged: tuple[int, ...] = ()

    def strongest_db(self, declared_db: float) -> float:
        """Return the level of the room's echoes for this device: as declared, or as the learned echoes are where that is more.

        A level is declared below a beam's peak. A device of less directivity throws more at the walls, and the learned room says how much.
        """
        return max(declared_db, min(self.echo_db, 0.0))

    def level_db(self, declared_db: float) -> float:
        """Return the level of echoes that the result holds: what is taken to remain, or all of them where nothing was removed."""
        strongest = self.strongest_db(declared_db)
        return min(strongest, self.left_db) if self.holds else strongest


@dataclass(frozen=True)
@holds_arrays
class ScanNoise:
    """Noise of one sample of a scan (frequency,), standard deviation, and the degrees of freedom it is known with."""

    sigma: FloatArray
    freedom: float


def heard_of(
    sphere: MeasuredSphere,
    step: FarFieldStep,
    chamber: Chamber,
    room: LearnedRoom,
    *,
    noise: ScanNoise,
    probe: Expansion | None,
) -> RoomHeard:
    """Return what a run says of a learned room; its sphere should be aligned, if it can be.

    Raises
    ------
    ValueError
        If the scan is not a whole sphere with both polarizations.
    """
    require_whole(sphere)
    surround, images = surround_of(chamber, probe, room.middle_hz), Images(room.places_m, room.weights)
    device = step.expansion(_without(sphere, step, images, surround))
    return _heard(Scanned(sphere, step, device, surround), room, images, noise)


def removed(
    sphere: MeasuredSphere, step: FarFieldStep, chamber: Chamber, room: LearnedRoom, *, probe: Expansion | None
) -> MeasuredSphere:
    """Return a sphere without the learned echoes: the device's, and the reference's that is in its level."""
    surround = surround_of(chamber, probe, room.middle_hz)
    field = _without(sphere, step, Images(room.places_m, room.weights), surround)
    if chamber.reference.has_horn:
        own = echo_of_horn(room, surround, chamber, sphere.frequency_hz)
        field = field * (1.0 + own)[:, None, None, None]
    return replace(sphere, field=field)


def _without(sphere: MeasuredSphere, step: FarFieldStep, images: Images, surround: Surround) -> ComplexArray:
    """Return the field of a sphere without the echoes of images, the device known anew without them every time."""
    field = sphere.field
    for _ in range(TURNS):
        scanned = Scanned(sphere, step, step.expansion(field), surround)
        field = sphere.field - scanned.echoes(images.places, images.weights)
    return field


def require_whole(sphere: MeasuredSphere) -> None:
    """Raise `ValueError` where a sphere does not tell a device from its room."""
    if not sphere.whole or sphere.one_polarization:
        raise ValueError(
            "room: needs a whole sphere in both polarizations; part of one does not part a device from its room (deg)"
        )


def asked_at(count: int) -> list[int]:
    """Return which of so many frequencies are looked at: spread over the band, with two neighbours that tell long paths apart."""
    spread = np.linspace(0, count - 1, min(count, FREQUENCIES - 1)).round().astype(int)
    return sorted({*spread.tolist(), min(count - 1, int(spread[spread.size // 2]) + 1)})


def _heard(scanned: Scanned, room: LearnedRoom, images: Images, noise: ScanNoise) -> RoomHeard:
    sphere = scanned.sphere
    run = Misfit(scanned, sphere.field, asked_at(sphere.frequency_hz.size))
    each = [Images(images.places[i : i + 1], images.weights[i : i + 1]) for i in range(images.count)]
    columns = np.stack([np.concatenate(run.predicted(one)) for one in each])
    target = np.concatenate(run.targets)
    gram, right = columns.conj() @ columns.T, columns.conj() @ target
    factors = np.asarray(np.linalg.solve(gram + 1e-9 * np.trace(gram).real * np.eye(images.count), right))
    run.judged_by([target - factors @ columns])
    plain = target - columns.sum(axis=0)
    before, after = (float(np.sum(np.abs(one) ** 2)) for one in (target, plain))
    variance = np.diag(np.linalg.inv(run.information * gram + 1e-9 * np.eye(images.count))).real
    power = _powers(scanned, each)
    learned = _learned_variance(room)
    spread = variance + learned
    share = _judged(power / power.sum(), spread)
    unjudged = float(power[share == 0.0].sum())
    squares = np.abs(factors - 1.0) ** 2
    off = float(np.sqrt(max(float(share @ (squares - spread)), 0.0)))
    expanded = float(2.0 * np.sqrt(share @ spread))
    beyond = np.abs(factors - 1.0) > OFF + SURE * np.sqrt(spread)
    together = float(share @ squares) > (OFF + SURE * np.sqrt(float(share**2 @ spread))) ** 2 + float(share @ spread)
    gain = run.information * (before - after)
    holds: bool | None = True
    if np.any(beyond & (share > OWN_SHARE)) or together:
        holds = False
    # What remains beyond noise: other errors of the run, or echoes that were never learned.
    spread_of_noise = min(1.0, 2.0 / np.sqrt(noise.freedom * len(run.frequencies)))
    rest = after - run.noise_power(noise.sigma) * (1.0 + spread_of_noise * np.array([1.0, -1.0]))
    strange, most = np.maximum(rest, 0.0) / float(np.sum(np.abs(columns.sum(axis=0)) ** 2))
    doubt = _doubt(float(share @ variance), float(share @ learned), gain, float(strange)) if holds else None
    if doubt is not None:
        holds = None
    echo, left = _levels(scanned, room, images, power, strange=float(most), unjudged=unjudged)
    return RoomHeard(
        holds=holds,
        explained=1.0 - after / before,
        off=off,
        off_expanded=expanded,
        factors=factors,
        echo_db=echo,
        left_db=left,
        doubt=doubt,
        unjudged=tuple(np.flatnonzero(share == 0.0).tolist()),
    )


def _judged(share: FloatArray, spread: FloatArray) -> FloatArray:
    """Return each echo's share of the power of those that a run judges, 0 of one that it leaves open; all of them where these are too strong.

    A wall behind the device is an example: its echo has the width of the device's own back lobe, and the other walls tell that the room stands.
    """
    judged = spread <= OPEN**2
    if share[~judged].sum() > UNJUDGED:
        return share
    return np.asarray(np.where(judged, share, 0.0) / share[judged].sum())


def _doubt(by_run: float, by_room: float, gain: float, strange: float) -> Doubt | None:
    """Return why a run does not confirm a room, from the variances of its factors and what remains; None if it does."""
    if by_run + by_room > UNSURE**2:
        return Doubt.LEARNED if by_room > by_run else Doubt.DEVICE
    if gain < LEAST_GAIN:
        return Doubt.NOISE
    return Doubt.STRANGE if strange > STRANGE else None


def _powers(scanned: Scanned, each: list[Images]) -> FloatArray:
    """Return the mean power of every image's echo in one reading, relative to the peak, (image,)."""
    middle = scanned.sphere.frequency_hz.size // 2
    return np.array([_of_one_reading(scanned, scanned.echo(one.places, one.weights, middle)) for one in each])


def _of_one_reading(scanned: Scanned, field: ComplexArray) -> float:
    """Return the mean power of one reading of a field (2, theta, phi) over all directions, relative to the peak's."""
    sphere = scanned.sphere
    peak = float(np.sum(np.abs(sphere.field[sphere.frequency_hz.size // 2]) ** 2, axis=0).max())
    return float(sphere.reading_power(field)) / peak


def _learned_variance(room: LearnedRoom) -> FloatArray:
    """Return the relative variance of every image's first weight as it was learned, (image,)."""
    count = len(room.places_m)
    own = np.diag(room.covariance).reshape(count, -1)
    kinds = room.weights.shape[1]
    return np.asarray((own[:, 3] + own[:, 3 + kinds]) / np.abs(room.weights[:, 0]) ** 2)


def _levels(
    scanned: Scanned, room: LearnedRoom, images: Images, power: FloatArray, *, strange: float, unjudged: float
) -> tuple[float, float]:
    """Return the level of the learned echoes, and of what remains: errors of the images, of their model, images that escaped, what the
    run may hold beyond noise (`strange`, as a share of the learned echoes' power), and echoes that it does not judge (their power)."""
    middle, count = scanned.sphere.frequency_hz.size // 2, images.count
    whole = _of_one_reading(scanned, scanned.echo(images.places, images.weights, middle))
    uncertain = 0.0
    values, vectors = np.linalg.eigh(room.covariance)
    for value, vector in zip(values, vectors.T, strict=True):
        change = _change(scanned, images, np.sqrt(max(value, 0.0)) * vector.reshape(count, -1), middle)
        uncertain += _of_one_reading(scanned, change)
    escaped = ESCAPED * float(np.median(power * JUST_FOUND / np.maximum(room.drops, JUST_FOUND)))
    left = uncertain + (MODEL**2 + strange) * float(power.sum()) + escaped + MOVED * unjudged
    return float(amplitude_db(np.sqrt(whole), least=1e-15)), float(amplitude_db(np.sqrt(left), least=1e-15))


def _change(scanned: Scanned, images: Images, by: FloatArray, index: int) -> ComplexArray:
    """Return what small changes (image, parameter) of images change of their echo, (2, theta, phi), to first order in each image."""
    kinds = images.weights.shape[1]
    places = np.array([moved(place, one[:3]) for place, one in zip(images.places, by, strict=True)])
    weights = images.weights + by[:, 3 : 3 + kinds] + 1j * by[:, 3 + kinds :]
    return scanned.echo(places, weights, index) - scanned.echo(images.places, images.weights, index)


def echo_of_horn(room: LearnedRoom, surround: Surround, chamber: Chamber, frequency_hz: FloatArray) -> ComplexArray:
    """Return (frequency,) what the learned echoes add to the reading of the reference horn, over the horn's own wave."""
    distance = np.linalg.norm(room.places_m, axis=1)
    sent = of_reference(chamber, frequency_hz, room.places_m / distance[:, None])
    k = wavenumber(frequency_hz)
    out = np.zeros(frequency_hz.size, complex)
    for place, weights, far, field in zip(room.places_m, room.weights, distance, sent.swapaxes(0, 1), strict=True):
        turn = np.exp(-1j * (k - surround.middle_k) * (far - surround.range_m)) * surround.range_m / far
        out += turn * (field @ np.tensordot(weights, surround.mirrors(place), 1)[0])
    return out


def surround_of(chamber: Chamber, probe: Expansion | None, middle_hz: float) -> Surround:
    """Return the range that a chamber's images stand around; `probe` is its pattern."""
    hears = hearing(probe, chamber.probe.gain_dbi)
    return Surround(chamber.positioner.geometry, chamber.range_length_m, float(wavenumber(middle_hz)), hears)


def require_room(chamber: Chamber, recipe: Recipe, room: LearnedRoom | None) -> LearnedRoom:
    """Return the learned room that a recipe's step `room` needs.

    Raises
    ------
    InputError
        If there is none, or the recipe or the range has what a room cannot go with.
    """
    if room is None:
        raise InputError(
            [
                "recipe.toml: step 'room': must be off (on = false) without `room` in chamber.toml: there is no learned room"
            ]
        )
    if recipe.runs("gate"):
        raise InputError(["recipe.toml: steps 'gate' and 'room': must not be on together: a time gate changes the echoes that the room was learned with"])  # fmt: skip
    if chamber.positioner.joints or not recipe.runs("far-field"):
        raise InputError(
            [
                "recipe.toml: step 'room': needs the step 'far-field', and a positioner of two axes: images stand still only there"
            ]
        )
    return room
