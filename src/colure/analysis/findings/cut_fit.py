"""Whether cuts hold together: each is the field of a device as large as the declared one, and cuts that cross agree where they do.

No transform is made of a cut, and no second pass is held against it. But a turn about an axis shows no more than so many harmonics as
the device's radius has wavelengths about it, and a few more, fewer than were measured. What they leave is what went wrong.
"""

from __future__ import annotations

from itertools import combinations
from typing import TYPE_CHECKING

import numpy as np

from colure.analysis.findings.finding import Finding, Severity
from colure.analysis.findings.slice_numbers import as_ranges
from colure.analysis.steps.agreement import NOTHING_DB, level_db
from colure.geometry.conventions import ComplexArray, FloatArray, wavenumber
from colure.geometry.kinematics import Geometry
from colure.geometry.polarization import MOST_TURNED_DEG, turned_by_roll_deg
from colure.model.figure import NOT_TO_BE_USED

if TYPE_CHECKING:
    from collections.abc import Sequence

    from colure.analysis.cuts.scan import CutScan, MeasuredCut
    from colure.model.chamber import Chamber
    from colure.model.device import Device

#: Harmonics beyond k r of the device about its own centre: the most of them that leave enough readings over.
MORE_HARMONICS = (6, 5, 4)
#: Harmonics may take so much of the readings; with more, what they leave says nothing.
MOST_TAKEN = 0.7
#: Harmonics that differ by less than this along the cut are one (common practice, no source).
ALIKE = 1e-2
#: What is left waits for a person beyond this, or so much above declared echoes or the noise; and is not to be used beyond the last, dB.
#: Right cuts of 15 kinds leave less than -42 dB, those of fewer readings than the last number -39.8 dB (counted).
LOOK_DB, FEW_LOOK_DB, ABOVE_DB, WRONG_DB, FEW = -38.0, -34.0, 10.0, -25.0, 30
#: Cuts that disagree where they cross: beyond this, or so much above declared echoes or the noise, dB.
CROSS_LOOK_DB = -20.0
#: Of so many of the cuts the slices are named: with more of them wrong, it is the device or the set-up.
MOST_WRONG = 0.5
#: Cosine of the angle from the boresight up to which a probe that follows reads one direction of polarization in every cut.
AHEAD = 0.5
#: Cosine of the angle from the boresight beyond which a direction is straight behind the device.
BEHIND = -1.0 + 1e-7
#: Directions closer than this are one (cosine of 0.03 deg).
ONE_DIRECTION = 1.0 - 1.4e-7


def cut_fit_findings(scan: CutScan, chamber: Chamber, device: Device, names: Sequence[str]) -> list[Finding]:
    """Return which cuts are no device's of the declared size, and whether cuts disagree where they cross.

    names
        Of the figures that were read: a cut's begin with its name.
    """
    peak = max(float(np.max(one.total)) for one in scan.cuts)
    floor_db = max(chamber.echo_level_db, level_db(float(np.max(scan.noise)) / peak)) + ABOVE_DB
    told = [(cut, unexplained_db(cut, scan.frequency_hz, device)) for cut in (*scan.cuts, *scan.across)]
    wrong = [
        (cut, left_db)
        for cut, left_db in told
        if left_db is not None and left_db > max(FEW_LOOK_DB if cut.angle_deg.size < FEW else LOOK_DB, floor_db)
    ]
    # A larger device, or one that stands elsewhere, fits none of the cuts: where others fit, a slice of its own went wrong.
    judged = sum(left_db is not None for _, left_db in told)
    others_fit = 0 < len(wrong) <= MOST_WRONG * judged
    findings = []
    for cut, left_db in wrong:
        size = " x ".join(f"{x:g}" for x in device.size_mm)
        text = (
            f"a part of {left_db:.1f} dB relative to the peak does not fit a cut of a device of {size} mm at the declared place: sweeps "
            "went wrong, the level jumped, an axis lost its place, or the device is larger or stands elsewhere. Look at connectors "
            "and couplings, check size_mm and offset_mm in device.toml, and measure again"
        )
        if others_fit and (own := slices_of(cut, scan)):
            text = f"{text}. Other cuts fit it: if only this one, {cut.cut.label}, went wrong, colure acquire --again {as_ranges(own)} is enough"
        about = tuple(one for one in names if one.startswith(f"{cut.cut.name}_"))
        severity: Severity = NOT_TO_BE_USED if left_db > WRONG_DB else "look"
        findings.append(Finding("cut", left_db, text, severity, about))
    apart_db = disagreement_db(scan)
    if apart_db is not None and apart_db > max(CROSS_LOOK_DB, floor_db):
        text = (
            f"cuts that cross disagree about the direction they share by {apart_db:.1f} dB relative to the peak: the level moved between "
            "them, or the probe reads otherwise at another roll. Look at rotary joint, cable and ties, and measure again"
        )
        findings.append(Finding("cut", apart_db, text, NOT_TO_BE_USED))
    return findings


def turned_findings(scan: CutScan, chamber: Chamber, names: Sequence[str]) -> list[Finding]:
    """Return which cuts were read in another polarization at every direction: a probe at rest, one offset, and a device that rolls."""
    rolls = chamber.positioner.geometry is Geometry.ROLL_OVER_AZIMUTH
    findings = []
    for cut in (*scan.cuts, *scan.across):
        turned = turned_by_roll_deg(cut.cut.directions) if rolls and scan.scan.mixes_where_it_rolls else 0.0
        if cut.cross is None and turned > MOST_TURNED_DEG:
            text = (
                f"the device rolled along the cut {cut.cut.label} while the probe stood still: polarizations over {turned:.0f} deg were read, "
                "and no figure of one polarization follows. Measure with a second offset 90 deg further, or with probe = 'follows'"
            )
            about = tuple(one for one in names if one.startswith(f"{cut.cut.name}_"))
            findings.append(Finding("polarization", NOTHING_DB, text, NOT_TO_BE_USED, about))
    return findings


def slices_of(cut: MeasuredCut, scan: CutScan) -> list[int]:
    """Return the numbers of the slices in which a cut was measured; none for a cut across many."""
    return [n for n, one in enumerate(scan.scan.cuts()) if one.name == cut.cut.name]


def unexplained_db(cut: MeasuredCut, frequency_hz: FloatArray, device: Device) -> float | None:
    """Return the rms along a cut of what a device of the declared size does not explain, relative to the peak, at the worst frequency, dB.

    None where too few directions were measured to tell.
    """
    if cut.cut.angle_name == "number":
        return None
    # Straight behind the device the two components have no direction of their own.
    angle, chosen = np.unique(np.round(np.mod(cut.angle_deg, 360.0), 6), return_index=True)
    known = cut.directions[chosen, 2] > BEHIND
    angle, chosen = angle[known], chosen[known]
    reach = float(np.max(wavenumber(frequency_hz))) * 0.5e-3 * float(np.linalg.norm(device.size_mm))
    fields = [one[:, chosen] for one in (cut.co, cut.cross) if one is not None]
    for more in MORE_HARMONICS:
        orders = np.arange(-int(np.ceil(reach)) - more, int(np.ceil(reach)) + more + 1)
        basis, size, _ = np.linalg.svd(np.exp(1j * np.deg2rad(angle)[:, None] * orders), full_matrices=False)
        basis = basis[:, size > ALIKE * size[0]]
        if basis.shape[1] <= MOST_TAKEN * angle.size:
            share = sum(_left(basis, one) for one in fields) / (1.0 - basis.shape[1] / angle.size)
            return level_db(float(np.sqrt(np.max(share / np.max(cut.total, axis=1) ** 2))))
    return None


def _left(basis: ComplexArray, field: ComplexArray) -> FloatArray:
    """Return the mean power (frequency,) that a basis (n, harmonic) leaves of a field (frequency, n)."""
    rest = field - (field @ basis.conj()) @ basis.T
    return np.asarray(np.mean(np.abs(rest) ** 2, axis=1))


def disagreement_db(scan: CutScan) -> float | None:
    """Return by how much cuts differ at most where they cross, relative to the peak, dB; None where no two do, or the probe stands still."""
    if scan.scan.probe != "follows":
        return None
    peak = np.max([np.max(one.total, axis=1) for one in scan.cuts], axis=0)
    worst = []
    for one, other in combinations(scan.cuts, 2):
        near = one.directions @ other.directions.T
        for a, b in np.argwhere(near > ONE_DIRECTION):
            if one.directions[a, 2] < AHEAD:
                continue  # the components turn with the cut behind the device
            pairs = [(one.co[:, a], other.co[:, b])]
            if one.cross is not None and other.cross is not None:
                pairs.append((one.cross[:, a], other.cross[:, b]))
            off = np.sqrt(sum(np.abs(x - y) ** 2 for x, y in pairs)) / peak
            worst.append(float(np.sqrt(np.mean(off**2))))
    return level_db(max(worst)) if worst else None
