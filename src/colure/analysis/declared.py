"""What the record says of the chamber, held against what chamber.toml declares of it.

Each declaration is the size of an uncertainty, so each is compared with what the record shows of it and how surely. A record
that cannot tell says so; a declaration that is too small makes the intervals too short.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
from scipy.special import chdtri

from colure.analysis.bench import Bench
from colure.analysis.drift import DB, declared_drift
from colure.analysis.finding import NOTHING_DB, Finding, level_db
from colure.analysis.rooms import stray_in_a_room
from colure.geometry.conventions import ComplexArray, FloatArray

if TYPE_CHECKING:
    from colure.analysis.bench import Inputs
    from colure.analysis.recipe import Processed
    from colure.model.chamber import Chamber

#: Rooms that are drawn to see how much of an echo does not look like the device.
ROOMS = 60
#: A declaration is called too small when right ones would look like it in fewer than so many cases.
RARE = 0.01
#: Seed of the rooms: the same record always gets the same answer.
SEED = 17
#: Drifts that are drawn to see how far one as declared moves, and noises beside each room.
DRIFTS, NOISES = 400, 40
#: A probe is as pure as declared if it reads no more than this above it, beside the noise.
PURITY_MARGIN_DB = 1.0
#: Receivers keep their noise figure within this much over a band (common practice, no source).
NOISE_MARGIN_DB = 2.0


@dataclass(frozen=True)
class Stray:
    """Stray signals of the record: rms below the peak in dB, with the ends of a 95 % interval.

    lower_db
        `NOTHING_DB` where the noise could be all that does not fit.
    visible_db
        What does not fit the device's waves, noise included.
    chance
        Of rooms at the declared level, with this noise, that would show as much.
    """

    level_db: float
    lower_db: float
    upper_db: float
    visible_db: float
    chance: float


def against_declaration(done: Processed) -> list[Finding]:
    """Return what the record says of each declaration, and of which it can tell nothing."""
    chamber = done.chamber
    if chamber is None:
        return []
    return [*_echoes(done, chamber), *_drift(done, chamber), *_noise(done, chamber), *_probe(done, chamber),
            *_cable(done, chamber), _silent(done, chamber)]  # fmt: skip


def stray_of(done: Processed) -> Stray | None:
    """Estimate the stray signals from what does not fit the device's waves; None where the scan cannot tell.

    A wall shows the turning device its own waves from another side, and part of that looks like a device. How much stays
    visible is drawn over rooms; how strong the noise is beside it is known as well as the reference's sweeps repeat.
    """
    inputs = done.budget.only(done.frequency_hz.size // 2)
    sphere, step = inputs.sphere, inputs.step
    if not sphere.whole or step.direct or sphere.one_polarization or step.rings is not None:
        return None
    random = np.random.default_rng(SEED)
    declared = 10.0 ** (inputs.chamber.echo_level_db / 20.0)
    bench = Bench(inputs, step.expansion(sphere.field), np.zeros((1, 0)), [])
    draw = stray_in_a_room(bench, declared, random)
    shown = np.array([_outside(inputs, draw()[0]) for _ in range(ROOMS)])
    known = done.transfer.noise[:, 0] ** 2
    pooled = float(known.mean() / max(known[done.frequency_hz.size // 2], 1e-300))
    noise = _outside(inputs, _noise_like(inputs, random)) ** 2 * pooled
    freedom = _freedom(done)
    noisy = noise * freedom / random.chisquare(freedom, (NOISES, 1))
    drift = _outside(inputs, _drift_like(inputs, random)) ** 2
    found = _outside(inputs, sphere.field) ** 2
    chance = float(np.mean(shown**2 + noisy + drift >= found))
    strength = np.sqrt(np.maximum(found - noisy - drift, 0.0)) / shown * declared
    low, middle, high = (level_db(float(v)) for v in np.quantile(strength, [0.025, 0.5, 0.975]))
    return Stray(middle, low, high, 0.5 * level_db(found), chance)


def _freedom(done: Processed) -> int:
    """Return the degrees of freedom of the noise as the reference's repeated sweeps tell it."""
    assert done.chamber is not None  # only what was processed with one is compared
    return 2 * max(1, done.chamber.reference.sweeps - 1) * done.frequency_hz.size


def _outside(inputs: Inputs, field: ComplexArray) -> float:
    """Return the rms, one reading, of what of a field does not fit the device's waves, relative to the measured peak."""
    sphere = inputs.sphere
    # By solid angle: where slices meet, an alignment from the data has taken part of the echoes out.
    weight = np.sin(sphere.theta)[:, None]
    rest = np.sum(np.abs(field - inputs.step.refitted(field)) ** 2, axis=(0, 1))
    power = 0.5 * np.sum(rest * weight) / (np.sum(weight) * sphere.phi.size)
    peak = np.max(np.sum(np.abs(sphere.field) ** 2, axis=1))
    return float(np.sqrt(power / peak))


def _noise_like(inputs: Inputs, random: np.random.Generator) -> ComplexArray:
    return np.asarray(inputs.sphere.white_noise(random) * inputs.noise_sigma[:, None, None, None])


def _drift_like(inputs: Inputs, random: np.random.Generator) -> ComplexArray:
    sphere = inputs.sphere
    half = sphere.phi.size // 2
    raw = random.normal(size=(2, 2, half)) / np.sqrt(2.0)
    error = np.tile(inputs.drift_residual * (raw[0] + 1j * raw[1]), (1, 2))[:, : sphere.phi.size]
    return np.asarray(sphere.field * error[None, :, None, :])


def _echoes(done: Processed, chamber: Chamber) -> Iterator[Finding]:
    found, declared = stray_of(done), chamber.echo_level_db
    if found is None:
        text = f"this scan cannot tell how strong stray signals are; the {declared:g} dB of chamber.toml were used"
        yield Finding("echoes", declared, text)
        return
    seen = f"{found.visible_db:.1f} dB below the peak does not fit the device's waves"
    measured = f"{found.level_db:.1f} dB rms below the peak (95 %: {found.lower_db:.1f} to {found.upper_db:.1f} dB)"
    if found.chance < RARE:
        text = (
            f"{seen}: stray signals are {measured}, MORE than the {declared:g} dB of chamber.toml, and the intervals are too short. "
            "Raise echo_level_db, or find the echo"
        )
        yield Finding("echoes", found.level_db, text, "look")
    elif found.lower_db <= NOTHING_DB:
        text = f"{seen}, and the noise could be all of it: the record cannot tell more than that stray signals are below {found.upper_db:.1f} dB"
        yield Finding("echoes", found.upper_db, f"{text} ({declared:g} dB declared)")
    else:
        text = f"{seen}: stray signals are {measured}; that agrees with the {declared:g} dB of chamber.toml"
        yield Finding("echoes", found.level_db, text)


def _most_drift(time_s: FloatArray) -> float:
    """Return the excursion over some moments, relative to what is declared, that a drift as declared hardly ever exceeds.

    A warm-up within half an hour (half to twice that long) and a swing of up to half of it (common practice, no source).
    """
    random = np.random.default_rng(SEED)
    tau = 1800.0 * 2.0 ** random.uniform(-1.0, 1.0, (DRIFTS, 1))
    swing, start = random.uniform(0.0, 0.5, (DRIFTS, 1)), random.uniform(-np.pi, np.pi, (DRIFTS, 1))
    shape = 1.0 - np.exp(-time_s / tau) + swing * np.sin(2.0 * np.pi * time_s / tau + start)
    return float(np.quantile(np.ptp(shape, axis=1), 1.0 - RARE))


def _drift(done: Processed, chamber: Chamber) -> Iterator[Finding]:
    if not done.drift.readable or done.drift.time_s.size < 3:
        text = "the ties cannot tell how far the chamber drifts: what chamber.toml declares was used"
        yield Finding("drift", NOTHING_DB, text)
        return
    time_s = done.drift.time_s
    logs = done.drift.log_gain(time_s).mean(axis=1)
    declared = declared_drift(chamber)
    level, phase = float(np.ptp(logs.real)), float(np.ptp(logs.imag))
    shown = f"{DB * level:.2f} dB and {np.rad2deg(phase):.1f} deg over {np.ptp(time_s) / 60.0:.0f} min"
    limits = f"{chamber.tie_drift_db:g} dB and {chamber.tie_drift_deg:g} deg"
    if max(level / declared.real, phase / declared.imag) > _most_drift(time_s):
        text = (
            f"the chamber drifted by {shown}, MORE than it may with the {limits} of chamber.toml: raise tie_drift_db or tie_drift_deg, or "
            "let it warm up"
        )
        yield Finding("drift", level_db(float(np.hypot(level, phase))), text, "look")


def _noise(done: Processed, chamber: Chamber) -> Iterator[Finding]:
    """Compare the noise of repeated sweeps with what power, bandwidth and noise figure promise."""
    promised = done.noise_promised_db
    if promised is None:
        return
    noise = np.asarray(done.transfer.noise)[:, 0]
    freedom = _freedom(done)
    found = float(10.0 * np.log10(max(float(np.mean(noise**2)), 1e-30)))
    # The scatter itself scatters: chi-square over its degrees of freedom (JCGM 100:2008, G.3).
    most = promised + NOISE_MARGIN_DB + 10.0 * np.log10(float(chdtri(freedom, RARE)) / freedom)
    if found > most:
        text = (
            f"noise of one sweep is {found:.1f} dB, the plan promised {promised:.1f} dB: noise_figure_db in chamber.toml is too small, or "
            "something between source and receiver is loose"
        )
        yield Finding("noise", found, text, "look")


def _probe(done: Processed, chamber: Chamber) -> Iterator[Finding]:
    """Compare the purity that the reference horn shows with the one declared, if the horn is known to be purer."""
    transfer = done.transfer
    off = transfer.response - np.eye(transfer.response.shape[1])
    leak = max(
        float(np.sqrt(np.mean(np.abs(transfer.leak) ** 2))), float(np.sqrt(np.max(np.mean(np.abs(off) ** 2, axis=0))))
    )
    if chamber.reference.cross_polar_db is None or leak == 0.0:
        return
    # Both readings are noisy, and the horn itself is only so pure.
    error = np.sqrt(2.0) * float(np.max(transfer.expanded)) + 10.0 ** (chamber.reference.cross_polar_db / 20.0)
    if leak - error > 10.0 ** ((chamber.probe.cross_polar_db + PURITY_MARGIN_DB) / 20.0):
        text = (
            f"the probe's cross-polarization is {level_db(leak):.1f} dB, MORE than the {chamber.probe.cross_polar_db:g} dB of chamber.toml; "
            "it was taken out, but probe.cross_polar_db should say so"
        )
        yield Finding("probe", level_db(leak), text, "look")


def _cable(done: Processed, chamber: Chamber) -> Iterator[Finding]:
    if done.cable is not None and done.cable.largest_deg > 2.0 * chamber.cable_flex_deg:
        text = f"the moving cable changes by {done.cable.largest_deg:.2f} deg, MORE than the {chamber.cable_flex_deg:g} deg of chamber.toml"
        yield Finding("cable", NOTHING_DB, text, "look")


def _silent(done: Processed, chamber: Chamber) -> Finding:
    """Name the declarations of which a record like this says nothing."""
    silent = [
        f"reference gain (\u00b1{chamber.reference.gain_uncertainty_db:g} dB)",
        "pose of the device",
        "range length",
    ]
    if done.cable is None:
        silent.append(f"cable flexing ({chamber.cable_flex_deg:g} deg)")
    if chamber.reference.cross_polar_db is None:
        silent.append(f"purity of the probe ({chamber.probe.cross_polar_db:g} dB)")
    if done.alignment is None:
        silent.append("alignment of the positioner")
    return Finding(
        "cannot tell", NOTHING_DB, f"this record cannot tell whether these are as declared: {', '.join(silent)}"
    )
