"""How rarely a chamber that drifts as declared drifts like the one that was measured.

How far ties move within one run says little: half an hour of warming up is seldom over. How they bend says how fast the drift
goes, and so how far it would go. Both count: the run is held against drifts of several sizes.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
from scipy.spatial import cKDTree

from colure.analysis.steps.drift import DB
from colure.analysis.uncertainty.receiver_causes import wandering
from colure.geometry.conventions import FloatArray

if TYPE_CHECKING:
    from colure.analysis.steps.drift import DriftTrack
    from colure.model.chamber import Chamber

#: Drifts that are drawn as declared to be compared with, and to see how often one of them looks as unlike.
DRAWS, TRIALS = 6000, 1500
#: Sizes, of the declared one, that keep the declaration and that do not.
KEPT, BROKEN = (0.35, 0.5, 0.7, 1.0), (1.5, 2.0, 3.0)
#: Shapes that a drift is a sum of, and neighbours that a density is taken from.
SHAPES, NEIGHBOURS = 3, 20
#: Level and phase moved alike if they differ by no more than so many standard deviations of their noise.
MARGIN = 3.0
#: Ripple of a drift that no shape has, of the declared one (common practice, no source).
RIPPLE = 0.01
#: A chamber warms up within half an hour, half to twice that long, and swings by up to half of it (common practice, no source).
WARM_UP_S, SWING = 1800.0, 0.5
SEED = 17


def chance_of_drift(drift: DriftTrack, chamber: Chamber, *, tie_level_db: float | None = None) -> float:
    """Return how many chambers that drift as declared drift as far and as fast, in level or in phase, whichever is more off.

    `tie_level_db`, what a tie reads (wave ratio), says how much declared leakage moves it.

    The ratio of two likelihoods is compared with that of drawn drifts: the best of sizes beyond the declared one over the best
    of sizes within it. Likelihoods are densities among drawn drifts (nearest neighbours: Loftsgaarden and Quesenberry, Ann. Math.
    Stat. 36:1049, 1965, from memory). Smaller drifts than declared are called wrong less often than those as declared.
    """
    time_s = drift.longest_session_s
    logs = drift.log_gain(time_s).mean(axis=1)
    level, phase = DB * logs.real / chamber.tie_drift_db, np.rad2deg(logs.imag) / chamber.tie_drift_deg
    # Where both moved alike, the one that noise moves less tells more.
    noisy = np.array([DB / chamber.tie_drift_db, np.rad2deg(1.0) / chamber.tie_drift_deg]) * drift.noise / np.sqrt(2.0)
    farther = float(np.ptp(level) - np.ptp(phase))
    of_level = farther > -MARGIN * float(noisy.sum()) if noisy[0] < noisy[1] else farther > MARGIN * float(noisy.sum())
    declared = chamber.tie_drift_db if of_level else chamber.tie_drift_deg
    swing, jump = (
        (chamber.temperature.level_db, chamber.jumps.level_db)
        if of_level
        else (chamber.temperature.phase_deg, chamber.jumps.phase_deg)
    )
    random = np.random.default_rng(SEED)
    noise = float(np.hypot(RIPPLE, noisy[0 if of_level else 1]))

    def drawn(count: int) -> FloatArray:
        moved = _drifts(chamber, time_s, count, random, swing=swing / declared, jump=jump / declared)
        if tie_level_db is not None and chamber.analyzer.isolation_db is not None:
            share = 10.0 ** ((chamber.analyzer.isolation_db - tie_level_db) / 20.0)
            moved = moved + (DB if of_level else np.rad2deg(1.0)) / declared * share * _leakage(time_s, count, random)
        return moved + noise * random.normal(size=moved.shape)

    known = drawn(DRAWS)
    axes = np.linalg.svd(known, full_matrices=False)[2][:SHAPES]
    size = (known @ axes.T).std(axis=0)
    tree = cKDTree(known @ axes.T / size)

    def unlike(moved: FloatArray) -> FloatArray:
        places = moved @ axes.T / size

        def likely(factor: float) -> FloatArray:
            # Drifts that are so many times as large: everything is as far apart by as much.
            distance = factor * tree.query(places / factor, k=NEIGHBOURS)[0][:, -1]
            return np.asarray(-axes.shape[0] * np.log(distance + 1e-3))

        return np.asarray(np.max([likely(f) for f in BROKEN], axis=0) - np.max([likely(f) for f in KEPT], axis=0))

    shown = level if of_level else phase
    unlikeness = float(unlike((shown - shown[0])[None])[0])
    return float((1 + np.count_nonzero(unlike(drawn(TRIALS)) >= unlikeness)) / (1 + TRIALS))


def _leakage(time_s: FloatArray, count: int, random: np.random.Generator) -> FloatArray:
    """Return what leakage of slowly wandering phase does to ties (draw, moment), of its own size: in level as in phase."""
    moved = np.cos(wandering(time_s, random, (count, 1)) + 2.0 * np.pi * random.random((count, 1)))
    return np.asarray(moved - moved[:, :1])


def _drifts(
    chamber: Chamber, time_s: FloatArray, count: int, random: np.random.Generator, *, swing: float, jump: float
) -> FloatArray:
    """Return drifts (draw, moment) relative to the declared one: warm-up, swing of the temperature and jumps as declared."""
    since = time_s - time_s[0]
    tau = WARM_UP_S * 2.0 ** random.uniform(-1.0, 1.0, (count, 1))
    cycle, start = random.uniform(0.0, SWING, (count, 1)), random.uniform(-np.pi, np.pi, (count, 1))
    moved = 1.0 - np.exp(-time_s / tau) + cycle * np.sin(2.0 * np.pi * time_s / tau + start)
    if swing > 0.0:
        turn = 2.0 * np.pi * (since / chamber.temperature.period_s + random.random((count, 1)))
        moved = moved + random.normal(0.0, 0.5 * swing, (count, 1)) * np.sin(turn)
    if chamber.jumps.per_hour > 0.0:
        # Small jumps are not recognized as such.
        times = random.poisson(chamber.jumps.per_hour * np.diff(time_s) / 3600.0, (count, time_s.size - 1))
        steps = 0.5 * jump * np.sqrt(times) * random.normal(size=times.shape)
        moved = moved + np.concatenate([np.zeros((count, 1)), np.cumsum(steps, axis=1)], axis=1)
    return np.asarray(moved - moved[:, :1])
