"""Whether a sphere of power, read without phase, is that of a device as large as the declared one.

Power is a product of two fields: harmonics of up to twice k r of the device, and a few more, explain it wherever its centre stands. What they
leave of a grid that is finer than that is what went wrong.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from colure.analysis.findings.finding import Finding
from colure.analysis.findings.one_component import harmonics_left
from colure.geometry.conventions import power_db, wavenumber
from colure.model.figure import NOT_TO_BE_USED

if TYPE_CHECKING:
    from colure.analysis.pipeline.power_levels import PowerSphere
    from colure.model.device import Device

#: Degrees of the field beyond k r: the most of them that leave enough readings over.
MORE_DEGREES = (4, 3, 2)
#: Harmonics may take so much of the readings; with more, what they leave says nothing.
MOST_TAKEN = 0.7
#: What is left of right spheres of power is less than -25 dB of the peak (40 of 8 devices); 2 dB in a quarter of a scan leave -20 and more.
WRONG_DB = -22.0


def power_fit_findings(sphere: PowerSphere, device: Device) -> list[Finding]:
    """Return that a sphere of power is no device's of the declared size, if it is not."""
    left_db = power_left_db(sphere, device)
    if left_db is None or left_db <= WRONG_DB:
        return []
    size = " x ".join(f"{x:g}" for x in device.size_mm)
    text = (
        f"a part of {left_db:.1f} dB relative to the peak does not fit the power of a device of {size} mm: sweeps went wrong, the level "
        "jumped, or the device is larger. Look at connectors and couplings, check size_mm in device.toml, and measure again"
    )
    return [Finding("power", left_db, text, NOT_TO_BE_USED)]


def power_left_db(sphere: PowerSphere, device: Device) -> float | None:
    """Return the rms over a sphere of the power that a device of the declared size does not explain, relative to the peak's, dB.

    None of part of a sphere, or where too few directions were measured to tell.
    """
    if not sphere.whole:
        return None
    rings, columns = sphere.gain.shape[1:]
    spectrum = np.fft.fft(sphere.gain, axis=-1) / columns
    orders = np.round(np.fft.fftfreq(columns, 1.0 / columns)).astype(int)
    reach = float(np.max(wavenumber(sphere.frequency_hz))) * 0.5e-3 * float(np.linalg.norm(device.size_mm))
    for more in MORE_DEGREES:
        left, taken = harmonics_left(spectrum, orders, sphere.theta, 2 * (int(np.ceil(reach)) + more))
        if taken <= MOST_TAKEN * rings * columns:
            share = left / (1.0 - taken / (rings * columns))
            return float(power_db(np.sqrt(np.max(share / np.max(sphere.gain, axis=(1, 2)) ** 2)), least=1e-12))
    return None
