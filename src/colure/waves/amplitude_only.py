"""Experimental: a far field from amplitudes on two spheres, without measured phase.

Phase is hard to hold at millimetre waves. Amplitudes of both components on two radii, prior
knowledge of where the sources can be (a box) and a start that resembles the device (a simulation
of its design) together determine the field. The search is a Levenberg-Marquardt descent on
weighted intensities, first with the strong parts, then with ever weaker ones. Intensities, not
amplitudes: their misfit stays smooth where a zero of the field has to move.

It can end in a false minimum, and then says so: the misfit stays high, and a second run from a
disturbed start may end elsewhere with as low a misfit. Believe a result only if `trustworthy` is true.
"""

from __future__ import annotations

import time
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike

from colure.geometry.conventions import ComplexArray, FloatArray, amplitude_db, mode_degrees, order_of_count, power_db
from colure.geometry.directions import unit_vector
from colure.geometry.polarization import from_cartesian
from colure.values import holds_arrays
from colure.waves.radial import outgoing
from colure.waves.transform import analysis, synthesis

#: Intensity floors of the descent's stages, relative to the strongest sample.
STAGES = (1.0, 1e-1, 1e-2, 1e-3, 1e-4, 1e-5, 1e-6)
MOST_STEPS = 40
#: A misfit above this is not believed unless the noise explains it: false minima of panels ended at
#: -33 to -44 dB, true ones below -55 dB. Two runs with like misfits must agree to `AGREE_DB`.
TRUST_DB = -50.0
AGREE_DB = -40.0
NOISE_MARGIN_DB = 1.0
DISTURBANCE_DB = -25.0


@dataclass(frozen=True)
@holds_arrays
class AmplitudeSphere:
    """Amplitudes of (e_theta, e_phi) on rings of one radius, in the units of the field there.

    radius in metres, theta (rings,) in radians, amplitude (2, rings, columns) with columns over
    the full turn.
    """

    radius: float
    theta: FloatArray
    amplitude: FloatArray


@dataclass(frozen=True, kw_only=True)
@holds_arrays
class Retrieval:
    """Coefficients (2, N(N+2)), free up to one common phase, and how far they can be believed.

    misfit_db
        Amplitude misfit over both spheres, relative.
    agreement_db
        Difference to a second run from a disturbed start, relative; NaN if none was made.
    """

    coefficients: ComplexArray
    misfit_db: float
    agreement_db: float
    unknowns: int
    seconds: float
    trustworthy: bool
    words: str


def box_basis(
    order: int, k: float, *, size: ArrayLike, centre: ArrayLike, level_db: float = -60.0, seed: int = 0
) -> ComplexArray:
    """Return an orthonormal basis (2 N(N+2), count) of the fields that sources in a box can radiate.

    Random dipoles in the box (metres, coordinate origin of the expansion) are expanded, and the
    singular vectors above `level_db` of the strongest kept. Far fewer than all modes of the
    surrounding sphere remain for a flat device.
    """
    random = np.random.default_rng(seed)
    extent, middle = np.asarray(size, float), np.asarray(centre, float)
    face = 2.0 * (extent[0] * extent[1] + extent[1] * extent[2] + extent[0] * extent[2])
    # About five random sources per half-wavelength square and polarization span what the box can radiate.
    count = int(100 + 10.0 * face * (k / np.pi) ** 2)
    place = random.uniform(-0.5, 0.5, (count, 3)) * extent + middle
    electric, magnetic = random.normal(size=(2, count, 3)) + 1j * random.normal(size=(2, count, 3))
    theta, columns = np.linspace(0.0, np.pi, order + 3), 2 * order + 2
    t, p = np.meshgrid(theta, np.arange(columns) * 2.0 * np.pi / columns, indexing="ij")
    d = unit_vector(theta=t, phi=p)
    rows = []
    for r, e, m in zip(place, electric, magnetic, strict=True):
        vector = (e - d * (d @ e)[..., None] - np.cross(d, m)) * np.exp(1j * k * (d @ r))[..., None]
        rows.append(analysis(np.stack(from_cartesian(vector, theta=t, phi=p)), order).ravel())
    u, s, _ = np.linalg.svd(np.array(rows).T, full_matrices=False)
    return np.asarray(u[:, s > 10.0 ** (level_db / 20.0) * s[0]])


def retrieve(
    spheres: list[AmplitudeSphere],
    k: float,
    basis: ComplexArray,
    start: ComplexArray,
    *,
    noise_db: float = -200.0,
    second_run: bool = True,
    seed: int = 1,
) -> Retrieval:
    """Find the expansion whose amplitudes agree with those measured on two (or more) spheres.

    Parameters
    ----------
    basis
        From `box_basis`.
    start
        (2, N(N+2)) far-field coefficients that resemble the device: a simulation of its design.
        A bare uniform aperture was not enough for a panel with cross-polarization and back lobe.
    noise_db
        Noise relative to the strongest sample, if known: lets a higher misfit pass as noise.

    Raises
    ------
    ValueError
        If there are fewer than two spheres or fewer amplitudes than unknowns.
    """
    if len({round(s.radius, 9) for s in spheres}) < 2:
        raise ValueError(f"spheres: {len(spheres)}, must be at least 2 of different radius (m)")
    began = time.perf_counter()
    matrix, amplitude, weight = _system(spheres, k, basis)
    if amplitude.size < 4 * basis.shape[1]:
        raise ValueError(f"amplitudes: {amplitude.size}, must be at least {4 * basis.shape[1]} (four per unknown)")
    # Intensities weaker than the noise carry nothing but noise.
    floors = [floor for floor in STAGES if floor >= min(1.0, 10.0 ** (noise_db / 10.0))]
    first = _descend(matrix, amplitude, weight, basis.conj().T @ start.ravel(), floors)
    misfit = _misfit(matrix, amplitude, first)
    agreement, rival = np.nan, np.inf
    if second_run:
        random = np.random.default_rng(seed)
        kick = random.normal(size=first.size) + 1j * random.normal(size=first.size)
        away = basis.conj().T @ start.ravel()
        away = away + kick * np.linalg.norm(away) / np.linalg.norm(kick) * 10.0 ** (DISTURBANCE_DB / 20.0)
        second = _descend(matrix, amplitude, weight, away, floors)
        agreement, rival = _apart_db(first, second), _misfit(matrix, amplitude, second)
    allowed = max(TRUST_DB, _noise_misfit_db(amplitude, weight, noise_db) + NOISE_MARGIN_DB)
    # Another solution that explains the amplitudes as well would make this one a guess.
    ambiguous = bool(rival < allowed and agreement > max(AGREE_DB, noise_db + 10.0))
    # Noise hides the difference between minima: then only a second run that comes back is evidence.
    proven = misfit < TRUST_DB or (not np.isnan(agreement) and agreement < max(AGREE_DB, noise_db + 10.0))
    good = bool(misfit < allowed and proven and not ambiguous)
    seconds = time.perf_counter() - began
    again = "" if np.isnan(agreement) else f", a second run ended {agreement:.0f} dB away at misfit {rival:.0f} dB"
    words = (
        f"{basis.shape[1]} unknowns, {amplitude.size} amplitudes, misfit {misfit:.0f} dB (believed below "
        f"{allowed:.0f} dB){again}: {'converged' if good else 'NOT converged, do not use'}"
    )
    return Retrieval(
        coefficients=(basis @ first).reshape(2, -1),
        misfit_db=misfit,
        agreement_db=float(agreement),
        unknowns=basis.shape[1],
        seconds=seconds,
        trustworthy=good,
        words=words,
    )


def _noise_misfit_db(amplitude: FloatArray, weight: FloatArray, noise_db: float) -> float:
    """Return the amplitude misfit that noise alone leaves: its in-phase half over the rms signal."""
    mean = float(np.sum(amplitude**2) / np.sum(weight**2))
    signal = np.sqrt(mean) / float(np.max(amplitude / weight))
    return float(noise_db - power_db(2.0) - amplitude_db(signal))


def _system(
    spheres: list[AmplitudeSphere], k: float, basis: ComplexArray
) -> tuple[ComplexArray, FloatArray, FloatArray]:
    """Return the matrix from basis coefficients to samples, amplitudes, and row weights (root solid angle)."""
    modes = basis.T.reshape(basis.shape[1], 2, -1)
    order = order_of_count(modes.shape[-1])
    rows, amplitudes, weights = [], [], []
    for one in spheres:
        functions = outgoing(order, np.array(k * one.radius)).tangential()[:, mode_degrees(order) - 1]
        columns = one.amplitude.shape[-1]
        field = synthesis(modes * functions, one.theta, columns)
        # Amplitudes at different radii weigh alike: 1/r is taken out of both sides.
        area = np.sqrt(np.abs(np.sin(one.theta)) + 1e-3)[:, None] * np.ones(columns)
        rows.append((field * area).reshape(len(field), -1))
        amplitudes.append((one.amplitude * one.radius * area).ravel())
        weights.append(np.broadcast_to(area, one.amplitude.shape).ravel())
    return np.ascontiguousarray(np.concatenate(rows, axis=1).T), np.concatenate(amplitudes), np.concatenate(weights)


def _descend(
    matrix: ComplexArray, amplitude: FloatArray, weight: FloatArray, start: ComplexArray, floors: list[float]
) -> ComplexArray:
    """Levenberg-Marquardt on weighted intensities, stage by stage."""
    x = start * np.linalg.norm(amplitude) / np.linalg.norm(matrix @ start)
    intensity = amplitude**2
    strongest = float(np.quantile((amplitude / weight) ** 2, 0.999))
    for floor in floors:
        x = _stage(matrix, intensity, 1.0 / np.sqrt(intensity + floor * strongest * weight**2), x)
    return np.asarray(x)


def _stage(matrix: ComplexArray, intensity: FloatArray, scale: FloatArray, x: ComplexArray) -> ComplexArray:
    damping, count = 1e-3, x.size
    cost = float(np.linalg.norm(scale * (np.abs(matrix @ x) ** 2 - intensity)))
    for _ in range(MOST_STEPS):
        field = matrix @ x
        slope = (2.0 * scale * np.conj(field))[:, None] * matrix
        jacobian = np.concatenate([slope.real, -slope.imag], axis=1)
        normal = jacobian.T @ jacobian
        gradient = jacobian.T @ (scale * (intensity - np.abs(field) ** 2))
        size = np.trace(normal) / len(normal)
        while True:
            step = np.linalg.solve(normal + damping * size * np.eye(len(normal)), gradient)
            following = x + step[:count] + 1j * step[count:]
            reached = float(np.linalg.norm(scale * (np.abs(matrix @ following) ** 2 - intensity)))
            if reached < cost:
                break
            damping *= 5.0
            if damping > 1e6:
                return x
        gain = (cost - reached) / cost
        x, cost, damping = following, reached, max(damping / 5.0, 1e-14)
        if gain < 1e-4:
            break
    return x


def _misfit(matrix: ComplexArray, amplitude: FloatArray, x: ComplexArray) -> float:
    ratio = float(np.linalg.norm(np.abs(matrix @ x) - amplitude) / np.linalg.norm(amplitude))
    return float(amplitude_db(max(ratio, 1e-20)))


def _apart_db(first: ComplexArray, second: ComplexArray) -> float:
    """Return the difference of two solutions, common phase and level free, relative."""
    scale = np.vdot(second, first) / np.vdot(second, second)
    ratio = float(np.linalg.norm(scale * second - first) / np.linalg.norm(first))
    return float(amplitude_db(max(ratio, 1e-20)))
