"""Whether the receiver's phase runs the right way: a wave arrives after it was sent, so the phase of S21 falls as frequency rises.

Imaginary parts that are read first, the other sign of time, frequencies from stop to start: each turns the phase round. A pattern
stays what it was, while hands, phase centres and what a transform makes of a near field are wrong, and no scan tells.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from colure.acquire.station import Station
from colure.errors import InstrumentError
from colure.geometry.conventions import SPEED_OF_LIGHT, ComplexArray, FloatArray
from colure.instruments.protocols import AnalyzerDriver, LostError

#: Frequencies so close that a path of 150 m turns the phase by half a turn from one to the next; the more of them, the surer.
STEP_HZ, POINTS = 1e6, 11
#: A delay that is known to less than this many standard deviations says nothing.
SURE = 4.0


def phase_sense(station: Station, analyzer: AnalyzerDriver, range_length_m: float) -> str:
    """Sweep a few close frequencies at the middle of the plan's, set the receiver up for the plan again, and say how long the wave took.

    Raises
    ------
    InstrumentError
        If the wave arrived before it was sent.
    """
    if analyzer.receiver != "vector":
        return "cannot tell: power has no phase"
    middle = float(station.plan.frequency_hz[len(station.plan.frequency_hz) // 2])
    half = 0.5 * STEP_HZ * (POINTS - 1)
    settings = replace(station.settings(), start_hz=middle - half, stop_hz=middle + half, points=POINTS, segments=())
    try:
        analyzer.configure(settings, station.plan.ports)
        trace = analyzer.sweep().trace
    except LostError:
        raise
    except InstrumentError as error:
        return f"cannot tell: no sweep of {POINTS} frequencies {STEP_HZ / 1e6:g} MHz apart ({error})"
    finally:
        station.configure()
    return delay_in_words(settings.frequency_hz, trace, range_length_m)


def delay_in_words(frequency_hz: FloatArray, trace: ComplexArray, range_length_m: float) -> str:
    """Return how long the wave took by the phase of (frequency, port) of the stronger port.

    Raises
    ------
    InstrumentError
        If it arrived before it was sent.
    """
    strong = trace[:, int(np.argmax(np.abs(trace).sum(axis=0)))]
    off = frequency_hz - frequency_hz.mean()
    phase = np.unwrap(np.angle(strong))
    slope = float(off @ phase / (off @ off))
    rest = phase - phase.mean() - slope * off
    sigma_s = float(np.sqrt(rest @ rest / (off.size - 2) / (off @ off))) / (2.0 * np.pi)
    delay_s, direct_s = -slope / (2.0 * np.pi), range_length_m / SPEED_OF_LIGHT
    words = f"by its phase over {frequency_hz.size} close frequencies the wave took {1e9 * delay_s:.1f} ns, {range_length_m:g} m alone take {1e9 * direct_s:.1f} ns"
    if abs(delay_s) < max(SURE * sigma_s, 0.5 * direct_s):
        return f"cannot tell: {words} (noise, or an electrical delay that is set in the receiver)"
    if delay_s < 0.0:
        raise InstrumentError(
            f"{words}: it arrived before it was sent. Imaginary parts are read before real ones, the receiver counts phase the other way "
            "(its traces are conjugate), or frequencies run from stop to start: correct `trace` or `marker` in the profile"
        )
    return words
