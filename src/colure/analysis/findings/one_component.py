"""Whether a sphere of one polarization is the field of a device as large as the declared one.

One pass is read without a second one to hold it against, and no device's waves are fitted to it. But the co-polar component ahead of a
device is smooth: scalar harmonics up to k r0 and a few more degrees explain it, fewer than were measured. What they leave is what went
wrong: sweeps, an axis that lost its place or its zero, or a device that is larger than declared.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from colure.analysis.findings.finding import Finding
from colure.analysis.steps.agreement import level_db
from colure.geometry.conventions import ComplexArray, FloatArray, mode_index, wavenumber
from colure.geometry.kinematics import Geometry
from colure.model.figure import NOT_TO_BE_USED
from colure.waves.harmonics import scalars_at

if TYPE_CHECKING:
    from colure.analysis.pipeline.recipe import Processed
    from colure.analysis.steps.assemble import MeasuredSphere
    from colure.model.chamber import Chamber
    from colure.model.device import Device

#: Degrees beyond k r0: with the most of them that leave enough readings over, right scans of 12 devices leave less than -37 dB (counted).
MORE_DEGREES = (5, 4, 3)
#: Harmonics may take so much of the readings; with more, what they leave says nothing.
MOST_TAKEN = 0.7
#: Harmonics that differ by less than this within the region are one (common practice, no source).
ALIKE = 1e-2
#: The pole's rings count as if they lay at this share of a step beside it.
BESIDE_POLE = 0.3
#: What is left waits for a person beyond this, or so much above declared echoes or the noise; and is not to be used beyond the last, dB.
LOOK_DB, ABOVE_DB, WRONG_DB = -40.0, 10.0, -25.0


def one_component_findings(processed: Processed, chamber: Chamber, device: Device) -> list[Finding]:
    """Return that a sphere of one polarization is no device's of the declared size and place, if it is not."""
    sphere = processed.sphere
    if not sphere.one_polarization or chamber.positioner.geometry is not Geometry.ROLL_OVER_AZIMUTH:
        return []
    left_db = unexplained_db(sphere, float(processed.budget.slant), device.reach_m)
    if left_db is None:
        return []
    noise_db = level_db(float(np.max(processed.budget.noise_sigma)) / float(np.abs(sphere.field).max()))
    if left_db <= max(LOOK_DB, chamber.echo_level_db + ABOVE_DB, noise_db + ABOVE_DB):
        return []
    size = " x ".join(f"{x:g}" for x in device.size_mm)
    text = (
        f"a part of {left_db:.1f} dB relative to the peak does not fit one component of a device of {size} mm at the declared place: sweeps "
        "went wrong, an axis lost its place or its zero, or the device is larger or stands elsewhere. Look at connectors, couplings "
        "and zeros, check size_mm and offset_mm in device.toml, and measure again"
    )
    return [Finding("one pass", left_db, text, NOT_TO_BE_USED if left_db > WRONG_DB else "look")]


def unexplained_db(sphere: MeasuredSphere, slant: float, reach_m: float) -> float | None:
    """Return the rms over the sphere of what a device within `reach_m` does not explain, relative to the peak, at the worst frequency, dB.

    None where too few directions were measured to tell.
    """
    angle = slant - sphere.phi
    read = sphere.field[:, 0] * np.cos(angle) + sphere.field[:, 1] * np.sin(angle)
    rings, columns = read.shape[1:]
    sampled = min(columns, 2 * sphere.slices_used)
    # Columns between the measured ones were interpolated: they hold no order that was not sampled.
    spectrum = np.fft.fft(read, axis=-1) / columns
    orders = np.round(np.fft.fftfreq(columns, 1.0 / columns)).astype(int)
    reach = float(np.max(wavenumber(sphere.frequency_hz))) * reach_m
    for more in MORE_DEGREES:
        left, taken = harmonics_left(spectrum, orders, sphere.theta, int(np.ceil(reach)) + more)
        if taken <= MOST_TAKEN * rings * sampled:
            peak = np.max(np.abs(read), axis=(-2, -1))
            share = left / (1.0 - taken / (rings * sampled))
            return level_db(float(np.sqrt(np.max(share / peak**2))))
    return None


def harmonics_left(
    spectrum: ComplexArray, orders: FloatArray, theta: FloatArray, degree: int
) -> tuple[FloatArray, int]:
    """Return the mean power (frequency,) that harmonics up to a degree leave of rings' orders (frequency, ring, order), and how many they are."""
    weight = np.maximum(np.sin(theta), BESIDE_POLE * np.sin(theta[1]))
    harmonics = np.concatenate([np.full((1, theta.size), np.sqrt(0.25 / np.pi)), scalars_at(degree, theta)])
    root, left, taken = np.sqrt(weight), np.zeros(len(spectrum)), 0
    for column, order in enumerate(orders):
        rows = root[:, None] * spectrum[:, :, column].T  # ring, frequency
        if abs(order) <= degree:
            degrees = np.arange(max(1, abs(int(order))), degree + 1)
            which = 1 + np.array([mode_index(int(n), azimuthal=int(order)) for n in degrees])
            basis, size, _ = np.linalg.svd(
                (harmonics[np.append(which, 0) if order == 0 else which] * root).T, full_matrices=False
            )
            basis = basis[:, size > ALIKE * size[0]]
            taken += basis.shape[1]
            rows = rows - basis @ (basis.T @ rows)
        left = left + np.sum(np.abs(rows) ** 2, axis=0)
    return np.asarray(left / np.sum(weight)), taken
