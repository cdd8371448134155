"""How good a quiet zone is: field probing along lines, and one antenna's figure at several places.

Along a line the direct wave changes slowly; what ripples on it came another way. A single echo of amplitude a makes the level
swing between 20 log(1 + a) and 20 log(1 - a): the peak-to-peak ripple tells a (J. Appel-Hansen, Reflectivity level of radio
anechoic chambers, IEEE Trans. Antennas Propag. 21, 1973: voltage-standing-wave method).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from scipy.stats import chi2

from colure.geometry.conventions import SPEED_OF_LIGHT, ComplexArray, FloatArray, amplitude_db
from colure.model.field_probing import ProbedLine
from colure.values import holds_arrays

#: The direct wave along a line: a polynomial of this degree in dB (and in phase, where it is known).
TAPER_DEGREE = 2
#: Draws of the readings' noise.
DRAWS = 400
#: Samples of a line, at least.
LEAST_SAMPLES = 8
#: Waves that stand out of a line: so many at most, and no lower than this below the strongest.
MOST_WAVES, LEAST_WAVE_DB = 4, -15.0
#: Steps of the direction's cosine in which waves are looked for, per line length in wavelengths.
FINER = 8
PROBABILITY = 0.95
DB = 20.0 / float(np.log(10.0))


def reflectivity_db(ripple_db: float) -> float:
    """Return the level of one echo that makes a peak-to-peak ripple, dB of the direct wave: 1 dB is -24.81 dB.

    Source: standards sheet, error levels (derivable): 20 log((10^(r/20) - 1) / (10^(r/20) + 1)).
    """
    ratio = 10.0 ** (ripple_db / 20.0)
    return float(amplitude_db((ratio - 1.0) / (ratio + 1.0)))


@dataclass(frozen=True)
class Wave:
    """A wave that stands out of a line: its way's angle to the line in degrees (two candidates without phase), its level in dB."""

    angle_deg: tuple[float, ...]
    level_db: float


@dataclass(frozen=True, kw_only=True)
@holds_arrays
class Probed:
    """What a line says of the quiet zone.

    ripple_db
        Peak to peak, about the direct wave's taper.
    reflectivity_db, lower_db, upper_db
        Of the echoes together as one, dB of the direct wave at the peak of the probing antenna; 95 % interval from the readings'
        noise. `lower_db` is minus infinity where noise explains the ripple; both are nan where no noise is stated.
    rms_db
        The same from the rms of the ripple: of many echoes their sum of powers.
    taper_db
        Change of the direct wave over the line: largest less smallest of the polynomial.
    tilt_deg
        Turn of the phase front over the line, degrees of phase from end to end; nan without phase.
    cautions
        What the line cannot show, one sentence each.
    """

    line: ProbedLine
    ripple_db: float
    reflectivity_db: float
    lower_db: float
    upper_db: float
    rms_db: float
    taper_db: float
    tilt_deg: float
    residual_db: FloatArray
    waves: tuple[Wave, ...]
    cautions: tuple[str, ...]


def probed(line: ProbedLine) -> Probed:
    """Read a line.

    Raises
    ------
    ValueError
        If it has too few samples, or equal positions.
    """
    _require(line)
    level = amplitude_db(line.reading)
    smooth, phase = _direct(line)
    residual = level - smooth
    ripple = float(np.ptp(residual))
    rms = float(np.sqrt(np.mean(residual**2) * residual.size / (residual.size - TAPER_DEGREE - 1.0)))
    value, low, high = _of_ripple(line, residual)
    disturbed = np.asarray(residual / DB, np.complex128)
    if line.phase:
        disturbed = line.reading / (10.0 ** (smooth / 20.0) * np.exp(1j * phase)) - 1.0
    noise = line.noise_db
    # A single echo of amplitude a makes 8.686 a / sqrt(2) dB rms; noise adds in power.
    of_echoes = np.sqrt(max(rms**2 - noise**2, 0.0)) * np.sqrt(2.0) / DB
    tilt = float(np.rad2deg(np.polyval(np.polyfit(line.position_m, phase, 1), line.position_m[[0, -1]]) @ [-1.0, 1.0]))
    return Probed(
        line=line, ripple_db=ripple, reflectivity_db=value, lower_db=low, upper_db=high,
        rms_db=float(amplitude_db(of_echoes)) + line.pattern_db,
        taper_db=float(np.ptp(smooth)), tilt_deg=tilt if line.phase else float("nan"), residual_db=residual,
        waves=_waves(line, disturbed), cautions=_cautions(line),
    )  # fmt: skip


def _require(line: ProbedLine) -> None:
    count = line.position_m.size
    if count < LEAST_SAMPLES:
        raise ValueError(
            f"line {line.name}: {count} samples at {line.frequency_hz / 1e9:.6g} GHz, needs at least {LEAST_SAMPLES}"
        )
    if np.min(np.diff(np.sort(line.position_m))) < 1e-9:
        raise ValueError(f"line {line.name}: a position is given twice (mm); average repeated readings first")


def _direct(line: ProbedLine) -> tuple[FloatArray, FloatArray]:
    """Return the direct wave along a line: level (n,) in dB and phase (n,) in radians, each a polynomial of the position."""
    middle = line.position_m - line.position_m.mean()
    level = np.polyval(np.polyfit(middle, amplitude_db(line.reading), TAPER_DEGREE), middle)
    if not line.phase:
        return level, np.zeros(middle.size)
    phase = np.unwrap(np.angle(line.reading))
    return level, np.asarray(np.polyval(np.polyfit(middle, phase, TAPER_DEGREE), middle))


def _of_ripple(line: ProbedLine, residual: FloatArray) -> tuple[float, float, float]:
    """Return the reflectivity of a ripple with its 95 % interval: of echoes whose ripple with noise on it looks like this one.

    Noise widens a ripple. A ripple that noise alone makes in 1 of 40 has no lower end.
    """
    seen = float(np.ptp(residual))
    if line.noise_db <= 0.0:
        return reflectivity_db(seen) + line.pattern_db, float("nan"), float("nan")
    random = np.random.default_rng(1)
    taken = _polynomials(line)
    noise = line.noise_db * random.normal(size=(DRAWS, residual.size))
    noise -= (noise @ taken) @ taken.T
    # A ripple's shape as one echo makes it, at every phase; its size is what is looked for.
    turn = np.linspace(0.0, 2.0 * np.pi, DRAWS, endpoint=False)[:, None]
    cycles = np.arange(residual.size) * 2.0 * np.pi * _cycles(line, residual) / residual.size
    shape = np.cos(cycles + turn)
    shape -= (shape @ taken) @ taken.T
    levels = np.linspace(0.0, 0.75 * seen, 101)
    above = np.array([np.mean(np.ptp(level * shape + noise, axis=1) > seen) for level in levels])

    def at(share: float) -> float:
        swing = 2.0 * float(levels[int(np.searchsorted(np.maximum.accumulate(above), share).clip(0, levels.size - 1))])
        return reflectivity_db(swing) + line.pattern_db if swing > 0.0 else -np.inf

    return at(0.5), at(0.5 * (1.0 - PROBABILITY)), at(0.5 * (1.0 + PROBABILITY))


def _cycles(line: ProbedLine, residual: FloatArray) -> float:
    """Return how many periods of the strongest ripple lie on the line."""
    spectrum = np.abs(np.fft.rfft(residual * np.hanning(residual.size), 8 * residual.size))
    return float(np.argmax(spectrum)) / 8.0


def _polynomials(line: ProbedLine) -> FloatArray:
    """Return orthonormal polynomials (n, degree + 1) of the position: what the taper takes out."""
    middle = line.position_m - line.position_m.mean()
    return np.linalg.qr(np.vander(middle / np.abs(middle).max(), TAPER_DEGREE + 1))[0]


def _waves(line: ProbedLine, disturbed: ComplexArray) -> tuple[Wave, ...]:
    """Return the waves that stand out: peaks of the Fourier transform over the line, with a window that holds side lobes below -31 dB.

    Relative to the direct wave an echo turns by k (cos angle - cos direct) per metre. Without phase its mirror image is as likely.
    """
    length = float(np.ptp(line.position_m))
    wave = SPEED_OF_LIGHT / line.frequency_hz
    cosine = np.linspace(-1.0, 1.0, 2 * int(np.ceil(FINER * length / wave)) + 65)
    along = cosine - np.cos(np.deg2rad(line.direct_deg))
    place = (line.position_m - line.position_m.min()) / length
    weight = (0.5 - 0.5 * np.cos(2.0 * np.pi * (place * (place.size - 1) + 0.5) / place.size)) * np.gradient(
        line.position_m
    )
    kernel = np.exp(2j * np.pi / wave * np.outer(along, line.position_m))
    level = np.abs(kernel @ (weight * disturbed)) / np.sum(weight)
    if not line.phase:
        level = 2.0 * level  # a real ripple holds half of each
    # Two widths of the window about the direct wave are its taper.
    level[np.abs(along) < 2.0 * wave / length] = 0.0
    inner = np.flatnonzero((level[1:-1] > level[:-2]) & (level[1:-1] >= level[2:])) + 1
    inner = inner[np.argsort(-level[inner])]
    out: list[Wave] = []
    for i in inner:
        if len(out) == MOST_WAVES or level[i] <= level[inner[0]] * 10.0 ** (LEAST_WAVE_DB / 20.0):
            break
        images = [cosine[i]] if line.phase else [cosine[i], cosine[i] - 2.0 * along[i]]
        angles = sorted(float(np.rad2deg(np.arccos(one))) for one in images if abs(one) <= 1.0)
        if line.phase or not any(
            np.allclose(angles, one.angle_deg, atol=3.0) for one in out if len(one.angle_deg) == len(angles)
        ):
            out.append(Wave(tuple(angles), float(amplitude_db(level[i])) + line.pattern_db))
    return tuple(out)


def _cautions(line: ProbedLine) -> tuple[str, ...]:
    """Say what a line cannot show."""
    wave = SPEED_OF_LIGHT / line.frequency_hz
    length, step = float(np.ptp(line.position_m)), float(np.max(np.diff(np.sort(line.position_m))))
    direct = np.cos(np.deg2rad(line.direct_deg))
    quickest = wave / (1.0 + abs(direct))
    out = []
    if step > 0.5 * quickest:
        out.append(
            f"Samples are {1e3 * step:.3g} mm apart; the quickest ripple has a period of {1e3 * quickest:.3g} mm and needs at most "
            f"{500.0 * quickest:.3g} mm."
        )
    share = 2.0 * wave / length
    near = [c for c in (direct - share, direct + share) if abs(c) <= 1.0]
    if not near:
        out.append(
            f"The line is {1e3 * length:.4g} mm long: less than two periods of any ripple; nothing can be told from it."
        )
    else:
        angle = max(abs(np.rad2deg(np.arccos(c)) - line.direct_deg) for c in near)
        out.append(f"Waves within {angle:.2g} deg of the direct one look like its taper.")
    if line.noise_db <= 0.0:
        out.append("The noise of the readings is not stated: the reflectivity has no interval.")
    return tuple(out)


@dataclass(frozen=True, kw_only=True)
class Spread:
    """One antenna's figure at several places of the zone: standard deviation with its 95 % interval, and places that lack.

    Source: quality of the quiet zone, 3GPP TS 38.521-2 annex O (reference positions O.2.5).
    """

    frequency_hz: float
    count: int
    mean_db: float
    deviation_db: float
    lower_db: float
    upper_db: float
    largest_db: float
    lacking: tuple[tuple[float, float, float], ...]


def spread_of(frequency_hz: float, places_m: FloatArray, values_db: Sequence[float], *, radius_m: float) -> Spread:
    """Return how a figure scatters over places (n, 3) within a zone of a radius.

    Raises
    ------
    ValueError
        If there are fewer than two places.
    """
    values = np.asarray(values_db, float)
    n = values.size
    if n < 2:
        raise ValueError(f"{n} place at {frequency_hz / 1e9:.6g} GHz: needs at least 2 (7 are wanted)")
    wanted = radius_m * np.concatenate([np.zeros((1, 3)), np.eye(3), -np.eye(3)])
    near = np.linalg.norm(wanted[:, None] - places_m[None], axis=-1).min(axis=1) <= 0.1 * radius_m
    deviation = float(values.std(ddof=1))
    # (n - 1) s^2 / sigma^2 is chi-squared with n - 1 degrees of freedom.
    low, high = (deviation * float(np.sqrt((n - 1) / chi2.ppf(p, n - 1))) for p in (0.975, 0.025))
    lacking = tuple((float(x), float(y), float(z)) for x, y, z in wanted[~near])
    return Spread(
        frequency_hz=frequency_hz,
        count=n,
        mean_db=float(values.mean()),
        deviation_db=deviation,
        lower_db=low,
        upper_db=high,
        largest_db=float(np.abs(values - values.mean()).max()),
        lacking=lacking,
    )
