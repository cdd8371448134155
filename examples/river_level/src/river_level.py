"""One object for each door of Colure, invented for a 24 GHz river-level station: copy it, and keep what you need."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from colure.model.definitions import Definition
from colure.report.document import Block, Paragraph

if TYPE_CHECKING:
    import xarray as xr

    from colure.analysis.figures.one_pattern import OnePattern
    from colure.app.services.exporting import Exported
    from colure.geometry.conventions import ComplexArray, FloatArray
    from colure.model.chamber import Chamber
    from colure.model.device import Device
    from colure.report.source import Source

#: The station looks down on the water, so many degrees from its boresight towards -y.
DOWN_DEG = 10.0
#: Delay of an invented cable that everything was measured through, seconds.
DELAY_S = 2.0e-9


class TowardsWater:
    """Total gain in the direction of the water."""

    definition = Definition(
        name="gain_towards_water_dbi",
        label="Gain towards the water",
        unit="dBi",
        text=f"Total gain {DOWN_DEG:g} deg from the boresight towards -y.",
        source="definition derivable",
        display=float,
        topic="gain",
        symbol="G_w",
        gain=1,
    )

    def read(self, pattern: OnePattern) -> float:
        """Return the level in dBi: it is native already, errors add up in it evenly."""
        down = np.deg2rad(DOWN_DEG)
        direction = np.array([[0.0, -np.sin(down), np.cos(down)]])
        return float(10.0 * np.log10(pattern.field.power_at(direction)[0]))


class CableDelay:
    """Take the phase of a known cable out of every sweep. It cancels against the reference, so that no figure moves."""

    def run(self, record: xr.Dataset, chamber: Chamber, device: Device) -> xr.Dataset:
        """Turn every sweep by the delay's phase."""
        turn = np.exp(2j * np.pi * DELAY_S * record["frequency"].values)
        return record.assign(trace=record["trace"] * turn[:, None])


class OpenWaveguide:
    """A probe with the pattern of a small aperture: cos^2 of half the angle, the same in both planes (invented)."""

    def pattern(self, frequency_hz: FloatArray, theta: FloatArray, phi: FloatArray) -> ComplexArray:
        """Return e_theta, e_phi (frequency, 2, theta, phi) of a Huygens source along x."""
        taper = 0.5 * (1.0 + np.cos(theta))[:, None]
        one = np.sqrt(3.0) * np.stack([taper * np.cos(phi), -taper * np.sin(phi)])
        return np.broadcast_to(one, (frequency_hz.size, *one.shape)).astype(complex)


class Station:
    """A section of the report: what the figure means where the device hangs."""

    title = "On the bridge"

    def blocks(self, source: Source) -> Sequence[Block]:
        """Return one paragraph a frequency."""
        name = TowardsWater.definition.name
        here = [one for one in source.figures if one.name == name]
        return [
            Paragraph(f"At {one.frequency_hz / 1e9:.3f} GHz the water sees {one.text()} {one.unit}.") for one in here
        ]


class StationText:
    """A text file with one figure a line."""

    ending = ".txt"

    def write(self, run: Exported, target: Path) -> str:
        """Write name, value and interval of every figure that has a value."""
        lines = [
            f"{one.name} {one.frequency_hz:.0f} {one.value:.4f} {one.lower:.4f} {one.upper:.4f} {one.unit}"
            for one in run.figures
            if not one.reason
        ]
        target.write_text("\n".join([f"# {run.device}", *lines]) + "\n", encoding="utf-8")
        return f"{len(lines)} figures, one a line"


TOWARDS_WATER, CABLE_DELAY, OPEN_WAVEGUIDE = TowardsWater(), CableDelay(), OpenWaveguide()
STATION, STATION_TEXT = Station(), StationText()
