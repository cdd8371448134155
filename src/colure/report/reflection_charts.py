"""The picture of a device's reflection as a run measured it."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from colure.geometry.conventions import FloatArray, amplitude_db
from colure.model.bands import stretches
from colure.report.look import BAND, CO, MUTED, canvas, styled

if TYPE_CHECKING:
    from colure.analysis.steps.reflection import DeviceReflection
    from colure.report.drawing import Drawing

#: Lowest level drawn, dB.
FLOOR_DB = -60.0


def reflection_chart(reflection: DeviceReflection, frequency_hz: FloatArray) -> Drawing:
    """Draw |S11| over frequency with its 95 % interval, and S11 in the complex plane inside the circle of total reflection."""
    with styled():
        figure = canvas(7.2, 2.9)
        left, right = figure.subplots(1, 2)
        low, middle, high = (
            amplitude_db(one, least=10.0 ** (FLOOR_DB / 20.0))
            for one in (reflection.low, reflection.modulus, reflection.high)
        )
        turn = np.linspace(0.0, 2.0 * np.pi, 181)
        for radius in (1.0, 10.0**-0.5, 0.1):  # 0, -10 and -20 dB
            right.plot(radius * np.cos(turn), radius * np.sin(turn), color=MUTED, linewidth=0.6)
        for part in stretches(frequency_hz):
            ghz = frequency_hz[part] / 1e9
            left.fill_between(ghz, low[part], high[part], color=BAND, alpha=0.6, linewidth=0)
            left.plot(ghz, middle[part], color=CO, marker="o", markersize=3)
            right.plot(
                reflection.coefficient[part].real, reflection.coefficient[part].imag, color=CO, marker="o", markersize=3
            )
        left.set_xlabel("frequency / GHz")
        left.set_ylabel("|S11| / dB")
        right.set_aspect("equal")
        right.set_xlabel("Re S11")
        right.set_ylabel("Im S11")
        return figure
