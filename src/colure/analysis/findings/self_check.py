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
from colure.analysis.findings.finding import Finding
from colure.analysis.findings.room_heard import room_findings
from colure.analysis.findings.sanity import sanity
from colure.analysis.steps.agreement import NOTHING_DB, level_db
from colure.analysis.stray.echo_map import EchoMap, echo_map
from colure.geometry.conventions import amplitude_db
from colure.model.chamber import Chamber
from colure.model.files import cautions

if TYPE_CHECKING:
    from collections.abc import Sequence

    from colure.analysis.pipeline.recipe import Processed
    from colure.model.figure import Figure


def room_of(done: Processed, chamber: Chamber) -> EchoMap | None:
    """Return the map of the room, None where the scan cannot tell."""
    # Echoes come from fixed directions of the room only where the probe stands still.
    if chamber.swings_probe or not done.sphere.whole or done.sphere.one_polarization or done.step.direct:
        return None
    return echo_map(done.sphere, done.step, done.expansion, chamber.positioner.geometry)


def self_check(
    done: Processed,
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
    found = [*_drift(done), *_alignment(done, chamber), *_ports(done, chamber), *_noise(done)]
    found += (
        distance_findings(done.bounce, chamber)
        + _correction(done)
        + _cable(done)
        + _room(room)
        + room_findings(done.heard)
        + _cautions(done)
        + sanity(done, figures)
        + against_declaration(done)
    )
    if done.pole_spread_db is not None:
        text = f"every slice saw the boresight; the readings differ by {done.pole_spread_db:.1f} dB rms relative to the peak"
        found.append(Finding("pole", done.pole_spread_db, text))
    found.sort(key=lambda one: (one.rank, -one.level_db))
    centre = centre_of(done, device_slant_deg)
    x, y, z = (1e3 * float(v) for v in centre.position_m)
    dx, dy, dz = (1e3 * float(v) for v in centre.expanded_m)
    flat = f"{centre.ripple_deg:.2f} deg rms within {centre.cone_deg:.3g} deg of the peak ({centre.ripple_before_deg:.1f} deg about the axes' intersection)"
    text = f"phase centre {centre.reason}" if centre.reason else (
        f"phase centre at x {x:+.3f} \u00b1 {dx:.3f}, y {y:+.3f} \u00b1 {dy:.3f}, z {z:+.3f} \u00b1 {dz:.3f} mm (noise alone). "
        f"About it the phase is flat to {flat}")  # fmt: skip
    found.append(Finding("phase centre", NOTHING_DB, text))
    return found


def centre_of(done: Processed, slant_deg: float) -> PhaseCentre:
    """Return the phase centre at mid-band, in a cone that stays inside the region."""
    middle, figures = done.frequency_hz.size // 2, done.budget.figures
    return phase_centre(
        done.expansion.coefficients[middle],
        float(done.expansion.k[middle]),
        slant=float(np.deg2rad(slant_deg)),
        region=figures.region,
        noise=float(done.budget.noise_sigma[middle])
        * float(np.sqrt(4.0 * np.pi / (done.sphere.theta.size * done.sphere.phi.size))),
    )


#: Ties this much weaker than the strongest sweep are worth another direction, dB.
WEAK_TIES_DB = 15.0


def _weak_ties(done: Processed) -> list[Finding]:
    """Say that the ties look where the device radiates little, and what that costs."""
    below = done.tie_below_peak_db
    if below is None or below < WEAK_TIES_DB:
        return []
    cost = (
        f"their noise is {100 * done.drift.noise:.2g} %, and they were weighed by it"
        if done.drift.readable
        else "they are mostly noise and corrected nothing: the drift row is what chamber.toml declares"
    )
    text = f"the ties read {below:.0f} dB less than the strongest sweep; {cost}. The next run of this campaign looks along the strongest direction of this one; beam_deg in device.toml says it before"
    return [Finding("ties", -below, text, "information" if done.drift.readable else "look")]


def _drift(done: Processed) -> list[Finding]:
    ratio = done.drift.ratio
    moved = float(np.max(np.abs(ratio / ratio[:1] - 1.0)))
    out = [Finding("drift", level_db(done.drift.between), (
        f"boresight check readings (ties) drifted by {amplitude_db(np.abs(ratio).max() / np.abs(ratio).min()):.2f} dB and "
        f"{np.rad2deg(np.ptp(np.unwrap(np.angle(ratio), axis=0))):.1f} deg ({level_db(moved):.0f} dB). "
        f"After correction {100 * done.drift.between:.2f} % rms remain"))]  # fmt: skip
    out += _weak_ties(done)
    for jump in done.drift.jumps:
        size = abs(np.exp(jump.level_db / 8.6859 + 1j * np.deg2rad(jump.phase_deg)) - 1.0)
        out.append(Finding("jump", level_db(float(size)), (
            f"a jump of {jump.level_db:+.2f} dB and {jump.phase_deg:+.1f} deg between {jump.after_s:.0f} and {jump.before_s:.0f} s. "
            "Sweeps in that interval may be on either side. Look at the connectors, and measure those slices again")))  # fmt: skip
    return out


def _alignment(done: Processed, chamber: Chamber) -> list[Finding]:
    found = done.alignment
    if found is None:
        return []
    took = np.sqrt(max(0.0, found.residual_before**2 - found.residual**2))
    summary = f"the alignment correction lowered the misfit from {level_db(found.residual_before):.1f} to {level_db(found.residual):.1f} dB"
    level = level_db(float(took))
    # An adjustment that is off by more than was declared wants a person's eye.
    out = [Finding("alignment", level, text, "look") for text in found.warnings()]
    out.append(Finding("alignment", level, summary))
    return out + [
        Finding("alignment", level_db(float(took)) - 0.01 * (1 + index), text)
        for index, text in enumerate([*found.sentences(), *_hidden(done, chamber)])
    ]


def _hidden(done: Processed, chamber: Chamber) -> list[str]:
    """Say what one scan of a sphere cannot show of the set-up, and what would show it."""
    tolerance = chamber.alignment
    # Gaussian beam exp(-c a^2) of the probe's gain, c = G/8: a tilted one weighs the device's two sides differently.
    bend = 10.0 ** (chamber.probe.gain_dbi / 10.0) / 8.0
    reach = done.step.keep_order / float(done.expansion.k.max())
    tapered = level_db(2.0 * bend * reach / chamber.range_length_m * float(np.deg2rad(1.0)))
    return [
        f"range length: one scan cannot show it; the declared value (\u00b1{tolerance.distance_mm:g} mm) was used (a laser, or two set-ups, tell)",
        f"probe pointing: a tilt of 1 deg changes the data by {tapered:.0f} dB at most, too little to be seen or to matter",
        f"device on its mount: beam direction and phase centre move with it; \u00b1{tolerance.device_pose_deg:g} deg as declared",
    ]


def _cable(done: Processed) -> list[Finding]:
    if done.cable is None:
        return []
    size = abs(np.exp(1j * np.deg2rad(0.5 * done.cable.largest_deg) + done.cable.largest_db / 17.4) - 1.0)
    return [Finding("cable", level_db(done.cable.expanded / 2.0), (
        f"the moving cable changes by {done.cable.largest_deg:.2f} deg and {done.cable.largest_db:.3f} dB over the travel "
        f"({level_db(float(size)):.0f} dB); after the correction ±{np.rad2deg(done.cable.expanded):.3f} deg are left"))]  # fmt: skip


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


def _cautions(done: Processed) -> list[Finding]:
    """Say what the steps themselves warn of; a caution is worth reading first."""
    return [Finding("caution", 0.0, text) for text in cautions(done.pattern.attrs["history_json"])]


def _correction(done: Processed) -> list[Finding]:
    """Say that a transform took an ideal dipole for the probe."""
    if done.budget.probe is not None or done.step.direct:
        return []
    return [
        Finding(
            "probe",
            NOTHING_DB,
            "no probe correction was made: an ideal dipole was assumed, no pattern of the probe is given",
        )
    ]


def _ports(done: Processed, chamber: Chamber) -> list[Finding]:
    out = []
    transfer = done.transfer
    leak = float(np.max(np.abs(transfer.leak))) if transfer.leak.any() else 0.0
    off = transfer.response - np.eye(transfer.response.shape[1])
    leak = max(leak, float(np.abs(off).max()))
    if leak > 0.0:
        out.append(Finding("probe", level_db(leak), (
            f"the probe's own cross-polarization is {level_db(leak):.1f} dB, seen by the reference horn and taken out "
            f"(declared {chamber.probe.cross_polar_db:g} dB)")))  # fmt: skip
    ratio = transfer.imbalance
    if done.transfer.factor.shape[1] == 2:
        unequal = float(np.max(np.abs(ratio - 1.0)))
        out.append(Finding("ports", level_db(unequal), (
            f"port 2 reads {amplitude_db(np.abs(ratio).mean()):+.2f} dB and {np.rad2deg(np.angle(ratio.mean())):+.1f} deg against "
            "port 1; taken out")))  # fmt: skip
    return out


def _noise(done: Processed) -> list[Finding]:
    peak = float(np.abs(done.sphere.field).max())
    level = level_db(float(np.max(done.budget.noise_sigma)) / peak)
    return [Finding("noise", level, f"noise of one sweep lies {-level:.0f} dB below the peak")]
