"""How well the data agree with themselves, in plain language, ranked by what it does to the pattern.

Redundancy comes for free: every slice passes the pole, ties are repeated, and a device fills
fewer waves than a scan resolves. The remainder of each is turned into a level below the peak.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from colure.analysis.figures.phase_centre import PhaseCentre, phase_centre
from colure.analysis.findings.bounced import distance_findings
from colure.analysis.findings.declared import against_declaration
from colure.analysis.findings.finding import Finding, without_room
from colure.analysis.findings.room_heard import room_findings
from colure.analysis.findings.sanity import sanity
from colure.analysis.findings.slice_numbers import as_ranges, slices_within
from colure.analysis.steps.agreement import NOTHING_DB, level_db
from colure.analysis.stray.echo_map import EchoMap, echo_map
from colure.analysis.stray.held import HeldPasses
from colure.geometry.conventions import amplitude_db
from colure.model.chamber import Chamber
from colure.model.files import cautions

if TYPE_CHECKING:
    from collections.abc import Sequence

    from colure.analysis.pipeline.recipe import Processed
    from colure.model.figure import Figure


def room_of(processed: Processed, chamber: Chamber) -> EchoMap | None:
    """Return the map of the room, None where the scan cannot tell."""
    # Echoes come from fixed directions of the room only where the probe stands still.
    if chamber.swings_probe or not processed.sphere.whole or processed.sphere.one_polarization or processed.step.direct:
        return None
    rotation = None
    if chamber.chain is not None:
        held = HeldPasses.of(processed.sphere, processed.budget.sweeps.record, chamber)
        if len(held.rotations) > 1:  # the room met every pass otherwise
            return None
        rotation = held.rotations[0]
    return echo_map(
        processed.sphere, processed.step, processed.expansion, chamber.positioner.geometry, rotation=rotation
    )


def self_check(
    processed: Processed,
    chamber: Chamber,
    device_slant_deg: float,
    *,
    room: EchoMap | None = None,
    figures: Sequence[Figure] = (),
) -> list[Finding]:
    """Return all self-consistency checks, most serious first, then largest effect first.

    room
        From `room_of`.
    figures
        With their intervals, where they are known already.
    """
    findings = [*_drift(processed), *_alignment(processed, chamber), *_ports(processed, chamber), *_noise(processed)]
    findings += (
        distance_findings(processed.bounce, chamber)
        + _correction(processed)
        + _cable(processed)
        + _room(room)
        + room_findings(processed.heard, chamber.echo_level_db)
        + _cautions(processed)
        + sanity(processed, figures)
        + against_declaration(processed)
    )
    findings = sorted(without_room(findings), key=lambda one: (one.rank, -one.level_db))
    centre = centre_of(processed, device_slant_deg)
    x, y, z = (1e3 * float(v) for v in centre.position_m)
    dx, dy, dz = (1e3 * float(v) for v in centre.expanded_m)
    flat = f"{centre.ripple_deg:.2f} deg rms within {centre.cone_deg:.3g} deg of the peak ({centre.ripple_before_deg:.1f} deg about the axes' intersection)"
    text = f"phase centre {centre.reason}" if centre.reason else (
        f"phase centre at x {x:+.3f} \u00b1 {dx:.3f}, y {y:+.3f} \u00b1 {dy:.3f}, z {z:+.3f} \u00b1 {dz:.3f} mm (noise alone). "
        f"About it the phase is flat to {flat}")  # fmt: skip
    findings.append(Finding("phase centre", NOTHING_DB, text))
    return findings


def centre_of(processed: Processed, slant_deg: float) -> PhaseCentre:
    """Return the phase centre at mid-band, in a cone that stays inside the region."""
    middle, figures = processed.frequency_hz.size // 2, processed.budget.figures
    return phase_centre(
        processed.expansion.coefficients[middle],
        float(processed.expansion.k[middle]),
        slant=float(np.deg2rad(slant_deg)),
        region=figures.region,
        noise=float(processed.budget.noise_sigma[middle])
        * float(np.sqrt(4.0 * np.pi / (processed.sphere.theta.size * processed.sphere.phi.size))),
    )


#: Ties this much weaker than the strongest sweep are worth another direction, dB.
WEAK_TIES_DB = 15.0


def _weak_ties(processed: Processed) -> list[Finding]:
    """Say that the ties look where the device radiates little, and what that costs."""
    below = processed.tie_below_peak_db
    if below is None or below < WEAK_TIES_DB:
        return []
    cost = (
        f"their noise is {100 * processed.drift.noise:.2g} %, and they were weighed by it"
        if processed.drift.readable
        else "they are mostly noise and corrected nothing: the drift row is what chamber.toml declares"
    )
    text = f"the ties read {below:.0f} dB less than the strongest sweep; {cost}. The next run of this campaign looks along the strongest direction of this one; beam_deg in device.toml says it before"
    return [Finding("ties", -below, text, "information" if processed.drift.readable else "look")]


def _drift(processed: Processed) -> list[Finding]:
    ratio = processed.drift.ratio
    moved = float(np.max(np.abs(ratio / ratio[:1] - 1.0)))
    out = [Finding("drift", level_db(processed.drift.between), (
        f"boresight check readings (ties) drifted by {amplitude_db(np.abs(ratio).max() / np.abs(ratio).min()):.2f} dB and "
        f"{np.rad2deg(np.ptp(np.unwrap(np.angle(ratio), axis=0))):.1f} deg ({level_db(moved):.0f} dB). "
        f"After correction {100 * processed.drift.between:.2f} % rms remain"))]  # fmt: skip
    out += _weak_ties(processed)
    for jump in processed.drift.jumps:
        size = abs(np.exp(jump.level_db / 8.6859 + 1j * np.deg2rad(jump.phase_deg)) - 1.0)
        slices = slices_within(processed.budget.sweeps.record, jump.after_s, jump.before_s)
        text = (
            f"a jump of {jump.level_db:+.2f} dB and {jump.phase_deg:+.1f} deg between {jump.after_s:.0f} and {jump.before_s:.0f} s. "
            f"Sweeps in that interval may be on either side. Look at the connectors, then measure their slices again: colure acquire --again {as_ranges(slices)}"
            if slices
            else f"a jump of {jump.level_db:+.2f} dB and {jump.phase_deg:+.1f} deg between {jump.after_s:.0f} and {jump.before_s:.0f} s. "
            "No sweep of the scan lies in that interval. Look at the connectors"
        )
        out.append(Finding("jump", level_db(float(size)), text))
    return out


def _alignment(processed: Processed, chamber: Chamber) -> list[Finding]:
    estimate = processed.alignment
    if estimate is None:
        return []
    took = np.sqrt(max(0.0, estimate.residual_before**2 - estimate.residual**2))
    summary = f"the alignment correction lowered the misfit from {level_db(estimate.residual_before):.1f} to {level_db(estimate.residual):.1f} dB"
    level = level_db(float(took))
    # An adjustment that is off by more than was declared wants a person's eye.
    out = [Finding("alignment", level, text, "look") for text in estimate.warnings()]
    out.append(Finding("alignment", level, summary))
    return out + [
        Finding("alignment", level_db(float(took)) - 0.01 * (1 + index), text)
        for index, text in enumerate([*estimate.sentences(), *_hidden(processed, chamber)])
    ]


def _hidden(processed: Processed, chamber: Chamber) -> list[str]:
    """Say what one scan of a sphere cannot show of the set-up, and what would show it."""
    tolerance = chamber.alignment
    # Gaussian beam exp(-c a^2) of the probe's gain, c = G/8: a tilted one weighs the device's two sides differently.
    bend = 10.0 ** (chamber.probe.gain_dbi / 10.0) / 8.0
    reach = processed.step.keep_order / float(processed.expansion.k.max())
    tapered = level_db(2.0 * bend * reach / chamber.range_length_m * float(np.deg2rad(1.0)))
    return [
        f"range length: one scan cannot show it; the declared value (\u00b1{tolerance.distance_mm:g} mm) was used (a laser, or two set-ups, tell)",
        f"probe pointing: a tilt of 1 deg changes the data by {tapered:.0f} dB at most, too little to be seen or to matter",
        f"device on its mount: beam direction and phase centre move with it; \u00b1{tolerance.device_pose_deg:g} deg as declared",
    ]


def _cable(processed: Processed) -> list[Finding]:
    if processed.cable is None:
        return []
    size = abs(np.exp(1j * np.deg2rad(0.5 * processed.cable.largest_deg) + processed.cable.largest_db / 17.4) - 1.0)
    return [Finding("cable", level_db(processed.cable.expanded / 2.0), (
        f"the moving cable changes by {processed.cable.largest_deg:.2f} deg and {processed.cable.largest_db:.3f} dB over the travel "
        f"({level_db(float(size)):.0f} dB); after the correction ±{np.rad2deg(processed.cable.expanded):.3f} deg are left"))]  # fmt: skip


def _room(room: EchoMap | None) -> list[Finding]:
    out = []
    for echo in () if room is None else room.echoes:
        late = (
            ""
            if echo.excess_m is None
            else f", {echo.excess_m:.2f} ± {echo.resolution_m:.2f} m longer than the direct way"
        )
        out.append(Finding("echo", echo.level_db, (
            f"an echo from {echo.place} (azimuth {echo.azimuth_deg:+.0f}, elevation {echo.elevation_deg:+.0f} deg in the room{late}) "
            f"explains {100 * echo.share:.0f} % of what does not fit the device: put absorber there")))  # fmt: skip
    return out


def _cautions(processed: Processed) -> list[Finding]:
    """Say what the steps themselves warn of; a caution is worth reading first."""
    return [Finding("caution", 0.0, text) for text in cautions(processed.pattern.attrs["history_json"])]


def _correction(processed: Processed) -> list[Finding]:
    """Say that a transform took an ideal dipole for the probe."""
    if processed.budget.probe is not None or processed.step.direct:
        return []
    return [
        Finding(
            "probe",
            NOTHING_DB,
            "no probe correction was made: an ideal dipole was assumed, no pattern of the probe is given",
        )
    ]


def _ports(processed: Processed, chamber: Chamber) -> list[Finding]:
    out = []
    transfer = processed.transfer
    leak = float(np.max(np.abs(transfer.leak))) if transfer.leak.any() else 0.0
    off = transfer.response - np.eye(transfer.response.shape[1])
    leak = max(leak, float(np.abs(off).max()))
    if leak > 0.0:
        out.append(Finding("probe", level_db(leak), (
            f"the probe's own cross-polarization is {level_db(leak):.1f} dB, seen by the reference horn and taken out "
            f"(declared {chamber.probe.cross_polar_db:g} dB)")))  # fmt: skip
    ratio = transfer.imbalance
    if processed.transfer.factor.shape[1] == 2:
        unequal = float(np.max(np.abs(ratio - 1.0)))
        out.append(Finding("ports", level_db(unequal), (
            f"port 2 reads {amplitude_db(np.abs(ratio).mean()):+.2f} dB and {np.rad2deg(np.angle(ratio.mean())):+.1f} deg against "
            "port 1; taken out")))  # fmt: skip
    return out


def _noise(processed: Processed) -> list[Finding]:
    peak = float(np.abs(processed.sphere.field).max())
    level = level_db(float(np.max(processed.budget.noise_sigma)) / peak)
    return [Finding("noise", level, f"noise of one sweep lies {-level:.0f} dB below the peak")]
