"""A zero of azimuth that is off, in a scan of one pass: told by the seam between readings at positive and at negative azimuth.

Both stand beside each other there, and a zero that is off moves them apart. Neither a second pass nor the device's waves is needed: the
component is smooth ahead of the device, and of all zeros the true one leaves least of it unexplained.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from colure.analysis.findings.finding import Finding
from colure.analysis.findings.one_component import MORE_DEGREES, MOST_TAKEN, harmonics_left
from colure.analysis.steps.agreement import level_db
from colure.geometry.conventions import ComplexArray, FloatArray, wavenumber
from colure.geometry.kinematics import Geometry
from colure.model.figure import NOT_TO_BE_USED

if TYPE_CHECKING:
    from colure.analysis.pipeline.recipe import Processed
    from colure.analysis.steps.assemble import MeasuredSphere
    from colure.model.chamber import Chamber
    from colure.model.device import Device

#: A zero is told if it leaves so much less of what does not fit, dB, and is this many times as far off as declared, and this far, deg. Of
#: right scans of nine devices none is (108 counted); of zeros 1 deg off 12 of 27 are: all of four devices of some wavelengths at the axes.
LESS_DB, TIMES, LEAST_DEG = 6.0, 3.0, 0.2
#: What does not fit must be more than this, and than so much less than declared echoes, dB: below, echoes look like a zero now and then
#: (a patch in a room of -45 dB: -63 dB, and -71 with a zero of -0.6 deg), and no figure of a broad beam is wrong by an interval.
LEAST_DB, BELOW_ECHOES_DB = -56.0, 10.0
#: Figures that count from the zero.
CONCERNED = ("beam_azimuth", "beam_elevation", "beamwidth_")


def zero_findings(processed: Processed, chamber: Chamber, device: Device) -> list[Finding]:
    """Return that azimuth's zero is off, if the scan shows it."""
    sphere = processed.sphere
    if not sphere.one_polarization or chamber.positioner.geometry is not Geometry.ROLL_OVER_AZIMUTH:
        return []
    seen = zero_of(sphere, float(processed.budget.slant), device.reach_m)
    if seen is None:
        return []
    zero_deg, before_db, after_db = seen
    declared = chamber.alignment.theta_zero_deg
    if before_db < max(LEAST_DB, chamber.echo_level_db - BELOW_ECHOES_DB) or before_db - after_db < LESS_DB:
        return []
    if abs(zero_deg) < max(TIMES * declared, LEAST_DEG):
        return []
    text = (
        f"the zero of azimuth is {zero_deg:+.2f} deg off (declared \u00b1{declared:g} deg), or the probe stands beside its place: readings at positive "
        f"and negative azimuth fit each other then, and what does not fit falls from {before_db:.1f} to {after_db:.1f} dB relative to the "
        "peak. One pass does not correct it. Set the zero, or measure both polarizations"
    )
    about = tuple(one for one in processed.budget.figures.names if one.startswith(CONCERNED))
    return [Finding("azimuth zero", before_db, text, NOT_TO_BE_USED, about)]


def zero_of(sphere: MeasuredSphere, slant: float, reach_m: float) -> tuple[float, float, float] | None:
    """Return (zero of azimuth in degrees, what does not fit before and after it is taken out, dB); None where nothing tells it."""
    read = sphere.field[:, 0] * np.cos(slant - sphere.phi) + sphere.field[:, 1] * np.sin(slant - sphere.phi)
    rings, columns = read.shape[1:]
    if columns % 2 or rings < 3 or np.ptp(sphere.readout_sign) == 0.0:
        return None
    sampled = min(columns, 2 * sphere.slices_used)
    degree = int(np.ceil(float(np.max(wavenumber(sphere.frequency_hz))) * reach_m))
    peak = np.max(np.abs(read), axis=(-2, -1))
    slope = _along_slices(read, sphere.theta) * sphere.readout_sign

    def left(field: ComplexArray, more: int) -> tuple[float, int]:
        orders = np.round(np.fft.fftfreq(columns, 1.0 / columns)).astype(int)
        power, taken = harmonics_left(np.fft.fft(field, axis=-1) / columns, orders, sphere.theta, degree + more)
        return float(np.mean(power / peak**2)), taken

    for more in MORE_DEGREES:
        now, taken = left(read, more)
        if taken <= MOST_TAKEN * rings * sampled:
            # The power left is a parabola of the zero: three points are all of it.
            step = np.deg2rad(0.5)
            less, beyond = left(read + step * slope, more)[0], left(read - step * slope, more)[0]
            bend, tilt = 0.5 * (less + beyond) - now, 0.5 * (beyond - less)
            if bend <= 0.0:
                return None
            after = max(now - tilt**2 / (4.0 * bend), 1e-30)
            return float(np.rad2deg(-0.5 * step * tilt / bend)), level_db(now**0.5), level_db(after**0.5)
    return None


def _along_slices(read: ComplexArray, theta: FloatArray) -> ComplexArray:
    """Return the slope of a component (frequency, ring, column) by theta, per radian; slices go on beyond the pole."""
    beyond = 1 if np.isclose(theta[0], 0.0) else 0
    opposite = np.roll(read, read.shape[-1] // 2, axis=-1)[:, beyond : beyond + 1]
    through = np.concatenate([opposite, read], axis=1)
    return np.asarray(np.gradient(through, np.concatenate([[-theta[beyond]], theta]), axis=1)[:, 1:])
