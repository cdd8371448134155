"""What the record says of the chamber, held against what chamber.toml declares of it.

Each declaration is the size of an uncertainty, so each is compared with what the record shows of it and how surely, and all of
them together. A record that cannot tell says so, and what could tell; a declaration that is too small makes intervals too short.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
from scipy.special import chdtri, ndtr

from colure.analysis.findings.drift_chance import chance_of_drift
from colure.analysis.findings.evidence import RARE, RARE_TOGETHER, Evidence, chance_together
from colure.analysis.findings.finding import Finding
from colure.analysis.findings.misfit import Shares, chance_of_adjustments, freedom_of, misfit_of, shares_of
from colure.analysis.findings.once import once_per_result
from colure.analysis.steps.agreement import NOTHING_DB, level_db
from colure.analysis.steps.drift import DB
from colure.geometry.conventions import ComplexArray, power_db
from colure.model.figure import NOT_TO_BE_USED
from colure.waves.expansion import Expansion

if TYPE_CHECKING:
    from colure.analysis.pipeline.recipe import Processed
    from colure.model.chamber import Chamber

#: Probes and cables that are drawn as declared.
DRAWS = 4000
#: Seed of the draws: the same record always gets the same answer.
SEED = 17
#: Receivers keep their noise figure within this much over a band (common practice, no source).
NOISE_MARGIN_DB = 2.0
#: Echoes stronger than declared by this much should be found; where most rooms would not show it, the record cannot tell.
UNDERSTATED_DB = 6.0
#: What moves every level besides the reference, expanded, dB.
LEAST_LEVEL_DB = 0.1
#: A comparison that would be no rarer than this with echoes so much stronger says nothing.
HINT = 0.25
#: A cross-polarization that scatters less than this about its real part, at so many frequencies, is a turn's: an impurity has a phase.
FLAT, LEAST_FLAT = 0.25, 3
#: Figures that a turned horn turns.
TURNED_BY_HORN = ("xpd_db", "xpd_worst_db", "tilt_deg")
#: What noise is lowered by to see whether a quieter run could tell, dB.
QUIETER_DB = (5.0, 10.0, 15.0, 20.0, 30.0)


@dataclass(frozen=True, kw_only=True)
class Stray:
    """Stray signals of the record: rms below the peak in dB, with the ends of a 95 % interval.

    lower_db
        `NOTHING_DB` where the noise could be all that does not fit.
    visible_db
        What does not fit the device's waves, noise included.
    chance
        Of ranges as declared, with this noise, that would show as much.
    tells, hints
        Whether most rooms that are stronger than declared by `UNDERSTATED_DB` would be found, or look unlike it at least.
    quieter_db
        Less noise by this much would let the record tell; 0 if it tells, None if noise is not what hides them.
    """

    level_db: float
    lower_db: float
    upper_db: float
    visible_db: float
    chance: float
    tells: bool
    hints: bool
    quieter_db: float | None


@dataclass(frozen=True)
class DeclaredComparisons:
    """What comparisons with the declarations gave: findings of one each, and what they are worth together."""

    findings: tuple[Finding, ...]
    evidence: tuple[Evidence, ...]


@once_per_result
def against_declaration(processed: Processed) -> list[Finding]:
    """Return what the record says of each declaration, of all together, and of which it can tell nothing."""
    chamber = processed.chamber
    if chamber is None:
        return []
    compared = compared_with(processed, chamber)
    return [
        *compared.findings,
        *_together(compared),
        *_noise(processed, chamber),
        _silent(processed, chamber, compared),
    ]


def compared_with(processed: Processed, chamber: Chamber) -> DeclaredComparisons:
    """Compare what the record shows with each declaration."""
    findings: list[Finding] = []
    evidence: list[Evidence] = []
    for topic in (_misfit, _drift, _probe, _cable, _efficiency):
        for finding, one in topic(processed, chamber):
            if finding is not None:
                findings.append(finding)
            if one is not None:
                evidence.append(one)
    # What the data hardly tell would only dilute what they tell.
    if processed.alignment is not None and any(processed.alignment.seen.values()):
        evidence.append(Evidence("alignment", processed.alignment.conflict))
    return DeclaredComparisons(tuple(findings), tuple(evidence))


ComparedPair = tuple[Finding | None, Evidence | None]


def _percent(chance: float) -> str:
    """Show a chance in percent; none is told smaller than a hundredth, however far off something is."""
    return f"{100.0 * chance:.2g}" if chance >= 1e-4 else "<0.01"


def _together(compared: DeclaredComparisons) -> Iterator[Finding]:
    """Say what all comparisons say together, where none of them is enough alone."""
    chance = chance_together(compared.evidence)
    if (
        len(compared.evidence) < 2
        or chance >= RARE_TOGETHER
        or any(one.severity != "information" for one in compared.findings)
    ):
        return
    parts = ", ".join(
        f"{one.topic} {_percent(one.chance)} %" for one in sorted(compared.evidence, key=lambda one: one.chance)
    )
    text = (
        f"the run as a whole is farther off what chamber.toml declares than it should be: {_percent(chance)} % of ranges as declared look "
        f"like it ({parts} for each alone). Some declarations are too small, and the intervals too short; check those named first"
    )
    yield Finding("declarations", NOTHING_DB, text, "look")


def _stray(shares: Shares, declared_db: float) -> Stray:
    low, middle, high = (max(v, NOTHING_DB) for v in shares.levels_db(declared_db, (0.025, 0.5, 0.975)))
    typical = _typical(shares, 0.0)
    tells = typical < RARE
    quieter = next((db for db in QUIETER_DB if _typical(shares, -db) < RARE), None)
    return Stray(
        level_db=middle,
        lower_db=low,
        upper_db=high,
        visible_db=0.5 * level_db(shares.measured),
        chance=shares.chance(),
        tells=tells,
        hints=typical < HINT,
        quieter_db=0.0 if tells else quieter,
    )


def _typical(shares: Shares, noise_db: float) -> float:
    """Return the chance that most rooms stronger than declared by `UNDERSTATED_DB` have beside that much more noise."""
    beside = shares.noise.mean() * 10.0 ** (noise_db / 10.0) + shares.other.mean()
    typical = float(np.median(shares.rooms)) * 10.0 ** (UNDERSTATED_DB / 10.0) + beside
    return shares.chance(float(typical), noise_db=noise_db)


def _misfit(processed: Processed, chamber: Chamber) -> Iterator[ComparedPair]:
    """Compare what does not fit the device's waves with echoes, and with adjustments that were not corrected."""
    misfit = misfit_of(processed)
    # Rooms are drawn as strong as the budget holds them: a learned room may leave less than was declared, or show more.
    declared = processed.budget.chamber.echo_level_db
    told = f"{chamber.echo_level_db:g} dB of chamber.toml"
    if declared != chamber.echo_level_db:
        told = f"{declared:.1f} dB that the budget holds"
    if misfit is None:
        text = (
            f"this scan cannot tell how strong stray signals are; the {told} were used. Both polarizations "
            "with a transform would tell"
        )
        yield Finding("echoes", declared, text), None
        return
    if misfit.inputs.gate is not None:
        text = (
            f"the time gate keeps echoes out, so this result cannot tell how strong they are; the {told} were "
            "used. Processed without the gate, the record would tell"
        )
        yield Finding("echoes", declared, text), None
        return
    shares = shares_of(processed, misfit)
    stray = _stray(shares, declared)
    yield _echoes(stray, told), Evidence("echoes", stray.chance) if stray.hints else None
    chance = chance_of_adjustments(misfit, max(0.0, stray.level_db - declared) if stray.chance < 0.5 else 0.0)
    if chance is None:
        return
    one = Evidence("alignment", chance)
    text = (
        f"the misalignment, which this scan shows but does not correct, is MORE than what is declared: {100.0 * chance:.2g} % of ranges as "
        "declared look like it. Check every entry of [alignment] in chamber.toml"
    )
    yield (Finding("alignment", NOTHING_DB, text, "look") if one.rare else None), one


def _echoes(stray: Stray, told: str) -> Finding:
    seen = f"a part of {stray.visible_db:.1f} dB relative to the peak does not fit the device's waves"
    measured = _level_words(stray)
    if stray.chance < RARE:
        text = (
            f"{seen}: stray signals are {measured}, MORE than the {told}, and the intervals are too short. "
            "Raise echo_level_db, or find the echo"
        )
        return Finding("echoes", stray.level_db, text, "look")
    if stray.tells:
        return Finding(
            "echoes",
            stray.level_db,
            f"{seen}. Stray signals are {measured}; that is not more than the {told}",
        )
    hides = (
        "chambers with equal echoes differ too much here; a second run with the device a quarter of a wavelength nearer would tell"
        if stray.quieter_db is None
        else f"noise hides it; {stray.quieter_db:.0f} dB less noise (averages, if_bandwidth_hz, power_dbm) would tell"
    )
    text = (
        f"cannot tell from this run whether stray signals are stronger than the {told} by {UNDERSTATED_DB:g} dB: {hides}. "
        f"{seen}; {_most_words(stray)}"
    )
    return Finding("echoes", stray.upper_db, text)


def _level_words(stray: Stray) -> str:
    """Return how strong stray signals are; no number stands for an end that noise leaves open."""
    if stray.level_db <= NOTHING_DB:
        return f"below the noise; {_most_words(stray)}"
    ends = (
        f"{stray.lower_db:.1f} to {stray.upper_db:.1f} dB"
        if stray.lower_db > NOTHING_DB
        else f"up to {stray.upper_db:.1f} dB"
    )
    return f"{stray.level_db:.1f} dB rms relative to the peak (95 %: {ends})"


def _most_words(stray: Stray) -> str:
    return (
        "noise alone explains all of it"
        if stray.upper_db <= NOTHING_DB
        else f"stray signals are below {stray.upper_db:.1f} dB"
    )


def _drift(processed: Processed, chamber: Chamber) -> Iterator[ComparedPair]:
    time_s = processed.drift.longest_session_s
    if not processed.drift.readable or time_s.size < 3:
        text = "the ties cannot tell how far the chamber drifts: what chamber.toml declares was used"
        yield Finding("drift", NOTHING_DB, text), None
        return
    logs = processed.drift.log_gain(time_s).mean(axis=1)
    level, phase = DB * float(np.ptp(logs.real)), float(np.rad2deg(np.ptp(logs.imag)))
    below = (processed.scan_peak_db, processed.tie_below_peak_db)
    tie_db = None if below[0] is None or below[1] is None else below[0] - below[1]
    chance = chance_of_drift(processed.drift, chamber, tie_level_db=tie_db)
    if chance < RARE:
        text = (
            f"the chamber drifted by {level:.2f} dB and {phase:.1f} deg over {np.ptp(time_s) / 60.0:.0f} min, farther or faster than it may with the "
            f"{chamber.tie_drift_db:g} dB and {chamber.tie_drift_deg:g} deg of chamber.toml: raise tie_drift_db or tie_drift_deg, or let it warm up"
        )
        size = float(np.hypot(level / DB, np.deg2rad(phase)))
        yield Finding("drift", level_db(size), text, "look"), Evidence("drift", chance)
    else:
        yield None, Evidence("drift", chance)


def _noise(processed: Processed, chamber: Chamber) -> Iterator[Finding]:
    """Compare the noise of repeated sweeps with what power, bandwidth and noise figure promise."""
    promised = processed.noise_promised_db
    if promised is None:
        return
    noise = np.asarray(processed.transfer.noise)[:, 0]
    freedom = freedom_of(processed)
    measured_db = float(power_db(max(float(np.mean(noise**2)), 1e-30)))
    # The scatter itself scatters: chi-square over its degrees of freedom (JCGM 100:2008, G.3).
    most = promised + NOISE_MARGIN_DB + power_db(float(chdtri(freedom, RARE)) / freedom)
    if measured_db > most:
        text = (
            f"noise of one sweep is {measured_db:.1f} dB, the plan promised {promised:.1f} dB: noise_figure_db in chamber.toml is too small, or "
            "something between source and receiver is loose"
        )
        yield Finding("noise", measured_db, text, "look")


def _probe(processed: Processed, chamber: Chamber) -> Iterator[ComparedPair]:
    """Compare the purity that the reference horn shows with the one declared, if the horn is known to be purer."""
    transfer = processed.transfer
    off = transfer.response - np.eye(transfer.response.shape[1])
    seen = [transfer.leak] if transfer.leak.any() else [off[:, 1, 0], off[:, 0, 1]] if off.any() else []
    if chamber.reference.cross_polar_db is None or not seen or chamber.probe.polarization != "linear":
        return
    leak = max(float(np.sqrt(np.mean(np.abs(one) ** 2))) for one in seen)
    chance = _chance_of_leak(processed, chamber, leak, len(seen))
    yield (_impure(seen, leak, chamber.probe.cross_polar_db) if chance < RARE else None), Evidence("probe", chance)


def _impure(seen: Sequence[ComplexArray], leak: float, declared_db: float) -> Finding:
    """Say how impure the probe is, or that the horn may stand turned: the same real part at every frequency.

    A turned horn is taken for an impure probe, and turns the device's co- and cross-polar by as much. A turned probe is taken out rightly.
    """
    deg, level = float(np.rad2deg(np.arctan(leak))), level_db(leak)
    flat = [float(np.std(one - one.mean().real) + abs(one.mean().imag)) <= FLAT * abs(one.mean().real) for one in seen]
    if all(flat) and seen[0].size >= LEAST_FLAT:
        text = (
            f"the horn shows a cross-polarization of {level:.1f} dB that is the same at every frequency, MORE than the {declared_db:g} dB of chamber.toml. "
            f"Nobody can tell whether the probe or the horn stands turned, by {deg:.1f} deg; if it is the horn, what was taken out turned the "
            "device's co- and cross-polar. Level both and measure again"
        )
        return Finding("probe", level, text, NOT_TO_BE_USED, TURNED_BY_HORN)
    text = (
        f"the probe's cross-polarization is {level:.1f} dB, MORE than the {declared_db:g} dB of chamber.toml; "
        f"it was taken out, but probe.cross_polar_db should say so. A horn that stands turned by {deg:.1f} deg would show as much"
    )
    return Finding("probe", level, text, "look", TURNED_BY_HORN)


def _chance_of_leak(processed: Processed, chamber: Chamber, leak: float, ports: int) -> float:
    """Return how many probes at the declared bound show as much beside horn, leakage, roll and noise, all of unknown phase but the roll."""
    random, horn_db, isolation_db = (
        np.random.default_rng(SEED),
        chamber.reference.cross_polar_db,
        chamber.analyzer.isolation_db,
    )
    assert horn_db is not None  # only then it is compared
    turn = np.exp(2j * np.pi * random.random((3, ports, 1, DRAWS)))
    roll = random.normal(0.0, 0.5 * np.deg2rad(chamber.alignment.probe_roll_zero_deg), DRAWS)
    sigma = 0.5 * processed.transfer.expanded.max(axis=1)[:, None]
    noise = sigma * random.normal(size=(2, ports, sigma.size, DRAWS))
    drawn = 10.0 ** (chamber.probe.cross_polar_db / 20.0) * turn[0] + 10.0 ** (horn_db / 20.0) * turn[1] + roll
    if isolation_db is not None:
        # What the horn reads: the field that it lays at the probe over the factor that makes a field of it.
        reads = 10.0 ** (processed.transfer.reference_gain_dbi / 20.0) / np.abs(processed.transfer.factor[:, 0])
        drawn = drawn + (10.0 ** (isolation_db / 20.0) / reads)[:, None] * turn[2]
    shown = np.sqrt(np.mean(np.abs(drawn + noise[0] + 1j * noise[1]) ** 2, axis=1)).max(axis=0)
    return float((1 + np.count_nonzero(shown >= leak)) / (1 + DRAWS))


def _cable(processed: Processed, chamber: Chamber) -> Iterator[ComparedPair]:
    """Compare the cable's change over its turns with bends as declared: over sin a, sin 2a and 1 - cos a of its axis."""
    if processed.cable is None or chamber.cable_flex_deg == 0.0:
        return
    random, a = np.random.default_rng(SEED), np.linspace(-np.pi, np.pi, 73)
    bends = random.normal(0.0, 0.5 * chamber.cable_flex_deg / 3**0.5, (DRAWS, 3))
    most = np.ptp(bends @ np.stack([np.sin(a), np.sin(2.0 * a), 1.0 - np.cos(a)]), axis=1)
    sure_change_deg = processed.cable.largest_deg - float(np.rad2deg(processed.cable.expanded))
    chance = float((1 + np.count_nonzero(most >= sure_change_deg)) / (1 + DRAWS))
    text = f"the moving cable changes by {processed.cable.largest_deg:.2f} deg, MORE than the {chamber.cable_flex_deg:g} deg of chamber.toml"
    yield (Finding("cable", NOTHING_DB, text, "look") if chance < RARE else None), Evidence("cable", chance)


def _efficiency(processed: Processed, chamber: Chamber) -> Iterator[ComparedPair]:
    """Compare an efficiency above 100 % with what is declared of the reference: nothing else lifts it so far.

    Any device may lose something: what lies in the lower half of the distribution says nothing and is left out, and of the
    rest twice the chance counts.
    """
    figures = processed.budget.figures
    if "efficiency_db" not in figures.names:
        return
    middle = processed.frequency_hz.size // 2
    index = figures.names.index("efficiency_db")
    every = processed.expansion
    shown = Expansion(every.coefficients[middle : middle + 1], every.k[middle : middle + 1])
    value = float(figures.definitions[index].display(float(figures.values(shown)[0, index])))
    reference = processed.budget.chamber.reference
    expanded = np.hypot.reduce(
        [reference.gain_uncertainty_db, reference.reconnect_db, processed.budget.mismatch_db, LEAST_LEVEL_DB]
    )
    chance = 2.0 * float(ndtr(-value / (0.5 * float(expanded))))
    if np.isfinite(value) and chance < 1.0:
        yield None, Evidence("reference gain", chance)


def _silent(processed: Processed, chamber: Chamber, compared: DeclaredComparisons) -> Finding:
    """Name the declarations of which a record like this says nothing, and the run that would tell."""
    told = {one.topic for one in compared.evidence}
    silent = [
        f"reference gain (\u00b1{processed.budget.chamber.reference.gain_uncertainty_db:g} dB: `colure three-antenna` tells)",
        f"pose of the device (\u00b1{chamber.alignment.device_pose_deg:g} deg: a second run with the device mounted anew, `colure set-ups`)",
        f"range length (\u00b1{chamber.alignment.distance_mm:g} mm: a laser, or a second distance)",
    ]
    if processed.budget.sweeps.record.attrs["scheme"] == "two-pass":
        silent.append(
            "a turn of the device between the two passes (it may look like a turned polarization: a dual-polarized probe tells)"
        )
    if "cable" not in told:
        silent.append(f"cable flexing ({chamber.cable_flex_deg:g} deg: turns of the cable, [cable] in chamber.toml)")
    if "probe" not in told:
        silent.append(
            f"purity of the probe ({chamber.probe.cross_polar_db:g} dB: a horn of known reference.cross_polar_db, both polarizations)"
        )
    if "alignment" not in told:
        silent.append("alignment of the positioner (both polarizations with a transform)")
    return Finding(
        "cannot tell", NOTHING_DB, f"this record cannot tell whether these are as declared: {'; '.join(silent)}"
    )
