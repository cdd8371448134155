"""Two patterns of one device: how they lie to each other, and how they differ then.

Frame, phase reference, level and phase are matched first and told apart from the rest: a device
that was mounted anew, a cable that changed and a true difference are three different things.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray, amplitude_db, power_db
from colure.geometry.directions import unit_vector
from colure.geometry.rotations import from_rotation_vector
from colure.values import holds_arrays
from colure.waves.expansion import Expansion
from colure.waves.transform import synthesis

ROUNDS = 6
#: Steps of the finite differences: radians, and radians of phase per unit vector.
STEP = 1e-4
#: Frequencies that the rotation and the shift are found from.
MOST_FREQUENCIES = 3


@dataclass(frozen=True)
class Freedom:
    """What may be matched: the frame, the phase reference, the level (each frequency its own); the phase of a frequency always is."""

    frame: bool = True
    origin: bool = True
    level: bool = True


@dataclass(frozen=True)
@holds_arrays
class Match:
    """How the second pattern was brought to the first, and both on one grid.

    rotation_deg, shift_mm
        (3,) rotation vector and shift in the device frame that the second device needed.
    factor
        (frequency,) complex level and phase that it needed.
    theta, phi
        Grid, radians; within the region that both know.
    first, second
        (frequency, 2, theta, phi) fields: the first as it is, the second matched.
    weight
        (theta,) solid angle that a point stands for, relative.
    """

    rotation_deg: FloatArray
    shift_mm: FloatArray
    factor: ComplexArray
    theta: FloatArray
    phi: FloatArray
    first: ComplexArray
    second: ComplexArray
    weight: FloatArray
    expansion: Expansion

    @property
    def level_db(self) -> FloatArray:
        """Level that the second one was raised by, (frequency,)."""
        return amplitude_db(np.abs(self.factor))

    @property
    def difference_db(self) -> FloatArray:
        """Rms of the difference over the region relative to the first one's peak, (frequency,)."""
        power = np.sum(np.abs(self.second - self.first) ** 2, axis=1)
        mean = np.sum(power * self.weight[:, None], axis=(-2, -1)) / (np.sum(self.weight) * self.phi.size)
        peak = np.max(np.sum(np.abs(self.first) ** 2, axis=1), axis=(-2, -1))
        return power_db(mean / peak, least=1e-30)


#: Nothing but the phase of every frequency, which no two runs have in common.
AS_THEY_STAND = Freedom(frame=False, origin=False, level=False)
#: A turn beyond half a circle (radians) and directions told this little, relative, are no pose that data find.
MOST_TURN, LEAST_TOLD = float(np.pi), 1e-6


def match(first: Expansion, second: Expansion, *, region: float = np.pi, freedom: Freedom | None = None) -> Match:
    """Bring the second pattern to the first one by least squares over the region.

    Parameters
    ----------
    first, second
        Expansions at the same frequencies, shape (frequency, 2, J) each.
    region
        Polar angle from +z (radians) up to which both are known.
    freedom
        What may be matched; everything if None. The phase is always free.

    Raises
    ------
    ValueError
        If the frequencies differ, or no pose brings the patterns together.
    """
    free = Freedom() if freedom is None else freedom
    if first.k.shape != second.k.shape or not np.allclose(first.k, second.k, rtol=1e-6):
        raise ValueError("compare: the two patterns have different frequencies (Hz)")
    grid = _ComparisonGrid(max(first.order, second.order), region)
    wanted = grid.field(first)
    some = np.unique(np.linspace(0, first.k.size - 1, MOST_FREQUENCIES).round().astype(int))
    part = Expansion(second.coefficients[some], second.k[some])
    active = np.array([free.frame] * 3 + [free.origin] * 3)
    pose = np.zeros(6)
    # A shift is counted in radians of phase at mid-band, so that all six are of one size.
    scale = np.concatenate([np.ones(3), np.full(3, 1.0 / float(np.median(first.k)))])
    for _ in range(ROUNDS if active.any() else 0):
        base = grid.moved(part, pose * scale)
        columns = []
        for index in np.flatnonzero(active):
            step = np.zeros(6)
            step[index] = STEP
            columns.append((grid.moved(part, (pose + step) * scale) - base) / STEP)
        pose[active] += _step(wanted[some], base, np.stack(columns), grid.root_weight, free.level)
        if np.linalg.norm(pose[:3]) > MOST_TURN or np.linalg.norm(pose[3:]) > max(first.order, second.order):
            raise ValueError(
                "compare: no pose brings the second pattern to the first, they are too unlike "
                f"(turn {np.rad2deg(np.linalg.norm(pose[:3])):.3g} deg, shift {1e3 * scale[3] * np.linalg.norm(pose[3:]):.3g} mm); "
                "compare them as they stand, without frame and origin in `match`"
            )
    moved = grid.moved(second, pose * scale)
    factor = _factor(wanted, moved, grid.root_weight, free.level)
    turned = second.rotated(from_rotation_vector(pose[:3])).translated(scale[3] * pose[3:])
    return Match(
        np.rad2deg(pose[:3]),
        1e3 * scale[3] * pose[3:],
        factor,
        grid.theta,
        grid.phi,
        wanted,
        moved * factor[:, None, None, None],
        grid.root_weight[:, 0] ** 2,
        turned.with_coefficients(turned.coefficients * factor[:, None, None]),
    )


class _ComparisonGrid:
    """Directions on which two patterns are held against each other."""

    def __init__(self, order: int, region: float) -> None:
        rings = order + 3
        theta = np.linspace(0.0, np.pi, rings)
        self.theta = theta[theta <= region + 1e-9]
        self._columns = 2 * order + 2
        self.phi = np.arange(self._columns) * 2.0 * np.pi / self._columns
        self.root_weight = np.sqrt(np.sin(self.theta) + 1e-9)[:, None]
        self._direction = unit_vector(theta=self.theta[:, None], phi=self.phi[None, :])

    def field(self, expansion: Expansion) -> ComplexArray:
        """Return (frequency, 2, theta, phi)."""
        return synthesis(expansion.coefficients, self.theta, self._columns)

    def moved(self, expansion: Expansion, pose: FloatArray) -> ComplexArray:
        """Return the field of the device turned by a rotation vector (rad) and then moved (m)."""
        turned = expansion.rotated(from_rotation_vector(pose[:3])) if np.any(pose[:3]) else expansion
        phase = np.exp(1j * expansion.k[:, None, None] * (self._direction @ pose[3:]))
        return np.asarray(self.field(turned) * phase[:, None])


def _factor(wanted: ComplexArray, moved: ComplexArray, root_weight: FloatArray, level: bool) -> ComplexArray:
    """Return the complex factor (frequency,) that fits best; of modulus one if the level is not free."""
    weight = root_weight**2
    over = np.sum(wanted * np.conj(moved) * weight, axis=(1, 2, 3))
    under = np.sum(np.abs(moved) ** 2 * weight, axis=(1, 2, 3))
    best = over / under
    return np.asarray(best if level else best / np.abs(best))


def _step(
    wanted: ComplexArray, base: ComplexArray, columns: ComplexArray, root_weight: FloatArray, level: bool
) -> FloatArray:
    """Return the Gauss-Newton change of the pose, level and phase of each frequency free beside it."""
    factor = _factor(wanted, base, root_weight, level)[:, None, None, None]
    left = (wanted - factor * base) * root_weight
    design = factor * columns * root_weight
    # What level and phase can do is taken out of both: variable projection, frequency by frequency.
    own = factor * base * root_weight
    size = np.sum(np.abs(own) ** 2, axis=(1, 2, 3))
    share = np.sum(design * np.conj(own), axis=(2, 3, 4)) / size
    design = design - (share if level else 1j * share.imag)[..., None, None, None] * own
    flat = design.reshape(len(columns), -1).T
    stacked = np.concatenate([flat.real, flat.imag])
    rest = np.concatenate([left.ravel().real, left.ravel().imag])
    # A turn that the pattern's own symmetry hides is left alone: only rounding tells of it.
    return np.asarray(np.linalg.lstsq(stacked, rest, rcond=LEAST_TOLD)[0])


@dataclass(frozen=True)
@holds_arrays
class TwoSetUps:
    """What two set-ups of one device say of the range: mean pattern, and the level of what changed.

    stray_db
        (frequency,) rms of the stray field in one set-up relative to the peak, if both have as much.
    mean_stray_db
        The remainder in the mean of both, 3 dB less.
    """

    match: Match
    mean: Expansion
    stray_db: FloatArray
    mean_stray_db: FloatArray


def compare_set_ups(first: Expansion, second: Expansion, *, region: float = np.pi) -> TwoSetUps:
    """Compare a device measured at two distances, or at two angles of the whole set-up.

    The device is the same; what the room adds comes from elsewhere the second time. Half of the squared
    difference is one set-up's own (independent contributions: JCGM 100:2008, 5.1).
    """
    matched = match(first, second, region=region)
    difference = matched.difference_db
    order = max(first.order, matched.expansion.order)
    mean = first.with_coefficients(
        0.5 * (first.truncated(order).coefficients + matched.expansion.truncated(order).coefficients)
    )
    half = power_db(2.0)
    return TwoSetUps(matched, mean, difference - half, difference - 2.0 * half)


@dataclass(frozen=True, kw_only=True)
class LevelError:
    """How two matched patterns differ where the first one has some level: field errors in dB re the peak.

    low_db, high_db: the levels; error_db: rms of | |e1| - |e2| | over those directions, worst_db the largest; share
    of all solid angle.
    """

    low_db: float
    high_db: float
    error_db: float
    worst_db: float
    share: float


def levels_of(matched: Match, index: int, *, step_db: float = 5.0, floor_db: float = -50.0) -> list[LevelError]:
    """Return the equivalent error level against the level, at one frequency.

    Levels that differ by D dB at L dB below the peak differ by the field of 20 log|10^(D/20) - 1| + L
    (section 7 of the standards sheet).
    """
    a, b = (np.sqrt(np.sum(np.abs(one[index]) ** 2, axis=0)) for one in (matched.first, matched.second))
    peak = float(a.max())
    level = amplitude_db(a / peak, least=1e-12)
    off = np.abs(a - b) / peak
    weight = np.broadcast_to(matched.weight[:, None], a.shape)
    out = []
    for high in np.arange(0.0, floor_db, -step_db):
        here = (level <= high + 1e-12) & (level > high - step_db)
        if not here.any():
            continue
        mean = float(np.sum(off[here] ** 2 * weight[here]) / np.sum(weight[here]))
        share = float(np.sum(weight[here]) / np.sum(weight))
        out.append(
            LevelError(
                low_db=high - step_db,
                high_db=float(high),
                error_db=float(power_db(mean, least=1e-30)),
                worst_db=_db(float(off[here].max())),
                share=share,
            )
        )
    return out


def _db(ratio: float) -> float:
    return float(amplitude_db(max(ratio, 1e-15)))


def normalized_error(*, one: float, expanded_one: float, other: float, expanded_other: float) -> float:
    """Return E_n = (x1 - x2)/sqrt(U1^2 + U2^2) with expanded uncertainties (ISO/IEC 17043; |E_n| <= 1 agrees).

    Infinite where nothing is said of either uncertainty and the values differ.
    """
    both = float(np.hypot(expanded_one, expanded_other))
    if both == 0.0:
        return 0.0 if one == other else float(np.inf)
    return (one - other) / both
