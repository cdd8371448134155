"""Sources outside the device's sphere that turn with it: found from the waves the device cannot make, and taken out.

Degrees above those of the device's sphere belong to other sources. Cutting them off leaves the lower part of
these sources in the result, where it is as large as before in the direction of each source. So an image of the device in a
wall is looked for first (`image_in_wall`), then other sources (`source_fit`); their low degrees are subtracted with them.
What was not told apart enters the stated error as strong as the degrees that show it.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from colure.analysis.fields.image_in_wall import HighDegrees, Image, found_image, mirrored
from colure.analysis.fields.source_fit import FittedSource, fitted, located, refined
from colure.geometry.conventions import (
    ComplexArray,
    FloatArray,
    amplitude_db,
    mode_count,
    mode_degrees,
    order_of_count,
    power_db,
)
from colure.values import holds_arrays
from colure.waves.expansion import Expansion
from colure.waves.modes import resized
from colure.waves.radial import regular

#: Most sources looked for, and how often each is fitted again without the others.
MOST_SOURCES, AGAIN = 3, 2
#: Power of a degree over the noise's that is worth a search, and standard deviations that are no chance.
WORTH, CHANCE = 1.3, 5.0
#: An image is wrong in the low degrees by so many times what the high ones show.
UNLIKE = 2.0
#: Power of a source over the noise in one of the degrees that it makes.
SHOWN = 3.0
#: Waves of sources on the device's sphere may be so much stronger than its low degrees' mean.
TAIL = 2.0
#: Power of all waves over the whole that counts as noise where the data have none.
LEAST_NOISE = 1e-14
#: Share of the device's degrees, above them, that the degrees beyond must foretell as well as they say.
FORETOLD = 0.25
#: More than this many times the noise's power left over is not noise.
EXPLAINED = 2.0
#: A device of few degrees sends its beam through its own sphere: its image looks like any other source, a place is hardly found, and the
#: low waves of a source are worse known than its fit says: (degrees at most, factor), counted on panels of 0.43 and 0.75 wavelengths. Its low
#: degrees also hold more of an echo than the high ones, which noise hides up to so many of its deviations.
WORSE, HIDES = ((4, 3.0), (6, 2.0)), 3.0
#: A source that was not located points its waves somewhere: its field there against its rms over all directions.
POINTED = 2.0


@dataclass(frozen=True, kw_only=True)
@holds_arrays
class Cleaned:
    """The device's waves without what lies outside its sphere.

    expansion
        Degrees of the device's sphere only.
    errors
        (draw, 2, n(n+2)) what the subtraction may be wrong by.
    outside
        Power of the degrees above the device's over the whole power.
    left
        Power of these degrees that the located sources do not explain, over the whole power.
    mirror
        Image of the device in a wall, if there is one.
    places
        Centres of the other located sources, metres.
    near
        A place that shows itself but is too near to the sphere to be told from the device, metres; None if there is none.
    explained
        False where what is left stands out of the noise.
    told_m
        Distance from the origin beyond which a source at -40 dB shows itself in degrees that the device hardly has, metres.
    """

    expansion: Expansion
    errors: ComplexArray
    outside: float
    left: float
    mirror: Image | None
    places: list[FloatArray]
    near: FloatArray | None
    explained: bool
    told_m: float


@dataclass(frozen=True)
@holds_arrays
class _Measured(HighDegrees):
    """The high degrees, and how far they stand out of the noise."""

    def stands_out(self, waves: ComplexArray, worth: float = WORTH) -> bool:
        """Tell whether a degree stands out of the noise by more than chance."""
        degrees = np.arange(self.kept + 1, self.order + 1)
        over = self.per_degree(waves) / self.noise[degrees - 1] ** 2 - 1.0
        chance = CHANCE / np.sqrt(2.0 * (2.0 * degrees + 1.0))
        return bool(np.any(over > np.maximum(worth - 1.0, chance)))

    def shows(self, waves: ComplexArray, place: FloatArray) -> bool:
        """Tell whether the degrees that a place makes, up to k times its distance, show a source's waves.

        Those above fall off steeply: nothing lower follows from them.
        """
        last = min(int(self.k * float(np.linalg.norm(place))), self.order)
        over = self.per_degree(waves) / self.noise[self.kept :] ** 2
        return bool(np.any(over[: last - self.kept] > SHOWN))

    def hidden(self, left: ComplexArray) -> float:
        """Return the rms of a low coefficient of what was not located: about as strong as the high ones that stand out of the noise."""
        degrees = np.arange(self.kept + 1, self.order + 1)
        excess = np.maximum(self.per_degree(left) - self.noise[degrees - 1] ** 2, 0.0)
        spread = float(np.sum(excess * 2.0 * (2.0 * degrees + 1.0))) / (2.0 * mode_count(self.kept))
        return POINTED * float(np.sqrt(max(spread, float(np.max(excess, initial=0.0)))))


def without_outside(
    expansion: Expansion, radius_m: float, kept: int, noise: FloatArray | float, *, draws: int, seed: int = 3
) -> Cleaned:
    """Return the expansion (one frequency) without what comes from outside a sphere.

    Parameters
    ----------
    radius_m
        Radius of the device's sphere.
    kept
        Highest degree of the result: what a device of this radius may need.
    noise
        Rms noise of one coefficient, of all degrees or (degree,).
    draws
        Number of error draws wanted.
    """
    random, measured = np.random.default_rng(seed), _measured(expansion, radius_m, noise)
    removed = _Removed(measured, resized(expansion.coefficients, kept), draws, random)
    if expansion.order >= measured.kept + 3 and measured.stands_out(measured.waves):
        removed.image(located(measured))
        removed.sources()
    left, low, errors = removed.left(), removed.low, removed.errors
    raw = random.normal(size=(2, *errors.shape)) * np.sqrt(0.5)
    errors = errors + np.hypot(removed.hidden(), _under_noise(measured, noise)) * (raw[0] + 1j * raw[1])
    whole, beyond = float(expansion.power()), mode_count(kept)
    return Cleaned(
        expansion=Expansion(np.asarray(low), expansion.k),
        errors=np.asarray(errors),
        outside=float(np.sum(np.abs(expansion.coefficients[:, beyond:]) ** 2)) / whole,
        left=float(np.sum(np.abs(left[:, beyond:]) ** 2)) / whole,
        mirror=removed.mirror,
        places=removed.places,
        near=removed.near,
        explained=not measured.stands_out(left, EXPLAINED),
        told_m=_told_beyond(expansion, radius_m),
    )


def _measured(expansion: Expansion, radius_m: float, noise: FloatArray | float) -> _Measured:
    """Return the degrees beyond k times the sphere's radius; what the device may have there counts as noise.

    Sources on the sphere itself have waves as strong as regular waves are there: they fall with the degree, not at one.
    """
    order, k = expansion.order, float(expansion.k)
    x, free = k * radius_m, min(max(1, int(np.floor(k * radius_m))), expansion.order)
    degrees, share = np.arange(1, order + 1), _fading(x, order)
    per_mode = expansion.mode_power() / (2.0 * (2.0 * degrees + 1.0))
    near = float(per_mode[max(0, free - 3) : free].max())
    tail = TAIL * np.sqrt(near) * share / share[free - 1]
    whole = float(expansion.power())
    least = np.sqrt(LEAST_NOISE * whole / expansion.coefficients.size)
    sigma = np.maximum(np.hypot(np.broadcast_to(np.asarray(noise, float), order), tail), least)
    return _Measured(expansion.coefficients, free, sigma, k)


def _doubtful(measured: _Measured) -> float:
    """Return by how much the low waves of what was told apart are worse known than its fit says."""
    return next((factor for degrees, factor in WORSE if measured.kept <= degrees), 1.0)


def _under_noise(measured: _Measured, noise: FloatArray | float) -> float:
    """Return the rms of a low coefficient of what noise may hide in the first high degree of a device of few degrees."""
    if measured.kept > WORSE[-1][0] or measured.order <= measured.kept:
        return 0.0
    sigma = float(np.broadcast_to(np.asarray(noise, float), measured.order)[measured.kept])
    return POINTED * sigma * float(np.sqrt(HIDES / np.sqrt(2.0 * (2.0 * (measured.kept + 1.0) + 1.0))))


def _fading(x: float, order: int) -> FloatArray:
    """Return how strong waves (degree,) of sources at k r = x are, 1 for low degrees."""
    plain, sloped = regular(order, x)
    degrees = np.arange(1, order + 1)
    return np.asarray(x * np.sqrt(plain**2 + sloped**2 + degrees * (degrees + 1.0) * (plain / x) ** 2))


def _told_beyond(expansion: Expansion, radius_m: float) -> float:
    k = float(expansion.k)
    top = int(2.0 * k * radius_m) + 20
    faded = np.flatnonzero(_fading(k * radius_m, top) < 0.01)
    return float((faded[0] + 1.0) / k)


class _Removed:
    """What was removed so far: from the high degrees, from the device's, and what that may be wrong by.

    low, errors
        (2, n(n+2)) the device's waves that remain, and (draw, 2, n(n+2)) what they may be wrong by.
    mirror, places, near
        As of `Cleaned`.
    """

    def __init__(self, measured: _Measured, low: ComplexArray, draws: int, random: np.random.Generator) -> None:
        self._measured, self._random, self._draws = measured, random, draws
        self.low, self.errors = low, np.zeros((draws, *low.shape), complex)
        self.places: list[FloatArray] = []
        self.mirror: Image | None = None
        self.near: FloatArray | None = None
        self._sources: list[FittedSource] = []
        self._kept = order_of_count(low.shape[-1])

    def left(self) -> ComplexArray:
        """Return the high degrees that nothing explains, (2, N(N+2))."""
        return _left(self._measured, self._sources)

    def image(self, place: FloatArray) -> None:
        """Take the device's image in a wall out, if the high degrees look like one."""
        measured = self._measured
        wall_image = found_image(measured, self._kept, place)
        if wall_image is None:
            return
        rest = replace(measured, waves=measured.waves - wall_image.waves)
        # Four numbers were fitted, and what they do not explain of what stands out of the noise may be as large a share of the low degrees.
        unlike = max(rest.high() - measured.count, 4.0) / max(measured.high() - measured.count, 4.0)
        self.mirror, self._measured = wall_image, rest
        self.low = self.low - resized(wall_image.waves, self._kept)
        self.errors = self.errors + self._shares(UNLIKE * np.sqrt(unlike) * resized(wall_image.waves, self._kept))

    def sources(self) -> None:
        """Take located sources out, one after the other."""
        measured = self._measured
        while len(self._sources) < MOST_SOURCES and measured.stands_out(self.left()):
            more = _with_another(measured, self._sources, self._draws, self._random)
            hardly = [one.place for one in more if not measured.shows(one.waves, one.place)]
            if hardly:
                self.near = max(hardly, key=self._level)
                break
            self._sources = more
        if not self._sources:
            return
        worse = max(1.0, _foretold(measured, self._sources, self._draws, self._random))
        few = _doubtful(measured)
        for one in self._sources:
            self.places.append(one.place)
            errors = worse * resized(one.errors, self._kept)
            low = resized(one.waves, self._kept)
            self.low = self.low - low
            errors = errors + self._shares(self._pointed(one.place, errors))
            self.errors = self.errors + errors * few

    def _level(self, place: FloatArray) -> float:
        """Return the rms of a coefficient, the device's own included, of the degrees that a place would make last."""
        measured = self._measured
        last = int(measured.k * float(np.linalg.norm(place))) - measured.kept
        level = measured.per_degree(measured.waves)
        return float(np.sqrt(np.max(level[max(0, last - 2) : max(1, last + 1)], initial=0.0)))

    def hidden(self) -> float:
        """Return the rms of a low coefficient of what was not taken out."""
        level = self._measured.hidden(self.left())
        return level if self.near is None else max(level, POINTED * self._level(self.near))

    def _pointed(self, place: FloatArray, errors: ComplexArray) -> ComplexArray:
        """Return the device's image at a source as strong as the source's error: it may send what the device sends, where nobody looks."""
        measured = self._measured
        shape = mirrored(self.low, place, measured.k, measured.order)
        seen = np.sum(np.abs(shape[:, mode_count(measured.kept) :]) ** 2)
        cone = 1.0 - np.sqrt(1.0 - min(measured.kept / (measured.k * float(np.linalg.norm(place))), 0.999) ** 2)
        size = float(np.mean(np.sum(np.abs(resized(errors, measured.kept)) ** 2, axis=(1, 2)))) / cone
        strength = np.sqrt(size * (1.0 - cone) / max(float(seen), 1e-300))
        return np.asarray(strength * resized(resized(shape, measured.kept), self._kept))

    def _shares(self, waves: ComplexArray) -> ComplexArray:
        """Return draws of waves with an unknown factor of rms 1."""
        raw = self._random.normal(size=(2, self._draws)) * np.sqrt(0.5)
        return np.asarray((raw[0] + 1j * raw[1])[:, None, None] * waves)


def _foretold(measured: _Measured, sources: list[FittedSource], draws: int, random: np.random.Generator) -> float:
    """Return how much worse the lowest measured degrees are foretold by the others than the fit says: error over stated error.

    Degrees below the measured ones are foretold in the same manner, and there nobody can look.
    """
    # What the device itself may have in the first of them hides the others.
    telling = measured.per_degree(measured.waves) > SHOWN * measured.noise[measured.kept :] ** 2
    first = measured.kept + (int(np.argmax(telling)) if telling.any() else 0)
    beyond = min(first + max(3, round(FORETOLD * first)), measured.order - 3)
    if beyond <= measured.kept:
        return 1.0
    left, drawn = measured.waves.copy(), np.zeros((draws, *measured.waves.shape), complex)
    for at, one in enumerate(sources):
        rest = _left(measured, sources[:at] + sources[at + 1 :])
        rest[:, : mode_count(beyond)] = 0.0
        again = fitted(replace(measured, waves=rest, kept=beyond), one.place, draws, random)
        left, drawn = left - again.waves, drawn + again.errors
    part = slice(mode_count(measured.kept), mode_count(beyond))
    sigma = measured.noise[mode_degrees(beyond)[part] - 1]
    stated = np.mean(np.sum(np.abs(drawn[:, :, part]) ** 2, axis=1), axis=0) + 2.0 * sigma**2
    power = np.sum(np.abs(left[:, part]) ** 2, axis=0)
    starts = np.arange(measured.kept + 1, beyond + 1) ** 2 - (measured.kept + 1) ** 2
    ratios = np.add.reduceat(power, starts) / np.add.reduceat(stated, starts)
    chosen = telling[: ratios.size]
    return float(np.sqrt(np.mean(ratios[chosen]))) if chosen.any() else 1.0


def _left(measured: _Measured, sources: list[FittedSource]) -> ComplexArray:
    """Return the high degrees without those of sources."""
    left = measured.waves - sum((one.waves for one in sources), np.zeros(1))
    left[:, : mode_count(measured.kept)] = 0.0
    return np.asarray(left)


def _with_another(
    measured: _Measured, sources: list[FittedSource], draws: int, random: np.random.Generator
) -> list[FittedSource]:
    """Return one more source; then every one is fitted again to what the others leave."""
    rest = replace(measured, waves=_left(measured, sources))
    fits = [*sources, fitted(rest, refined(rest, located(rest)), draws, random)]
    for _ in range(AGAIN if len(fits) > 1 else 0):
        for at, one in enumerate(fits):
            rest = replace(measured, waves=_left(measured, fits[:at] + fits[at + 1 :]))
            fits[at] = fitted(rest, refined(rest, one.place), draws, random)
    return fits


def outside_words(cleaned: Cleaned, radius: float) -> str:
    """Say how much power lies outside the device's sphere, what was removed and what could not be told."""
    outside, left = (float(power_db(max(one, 1e-40))) for one in (cleaned.outside, cleaned.left))
    unseen = f"sources at -40 dB nearer than {cleaned.told_m:.3g} m cannot be told from the device"
    if (
        cleaned.outside <= 0.0
        and cleaned.mirror is None
        and not cleaned.places
        and cleaned.near is None
        and cleaned.explained
    ):
        return f"  nothing outside {radius:g} m stands out of the noise, nothing was removed; {unseen}"
    parts = [f"  waves of sources outside {radius:g} m hold {outside:.1f} dB of the power and were removed"]
    if cleaned.mirror is not None:
        level = float(amplitude_db(abs(cleaned.mirror.factor)))
        wall = _place(0.5 * cleaned.mirror.place)
        parts.append(f"the device's image ({level:.1f} dB) in a wall at {wall} was taken out")
    if cleaned.places:
        parts.append(f"sources at {'; '.join(map(_place, cleaned.places))}: their lower waves were subtracted")
    if cleaned.mirror is not None or cleaned.places:
        parts.append(f"{left:.1f} dB of the power unexplained")
    else:
        parts.append("none was located, so their lower waves stay")
    parts.append(unseen)
    if cleaned.near is not None:
        away = float(np.linalg.norm(cleaned.near))
        parts.append(
            f"caution: something about {away:.3g} m from the origin is too near to the sphere to be told from the device; it stays, "
            "and the stated error holds what it may add. Declare the smallest `keep_radius_m` that holds the device"
        )
    if not cleaned.explained:
        parts.append(
            "caution: that is more than noise; the stated error takes it for as strong in the lower waves. "
            "Declare the smallest `keep_radius_m` that holds the device"
        )
    return "; ".join(parts)


def _place(place: FloatArray) -> str:
    return "({:.3f}, {:.3f}, {:.3f}) m".format(*place)
