"""A power-only receiver: a power meter or spectrum analyzer that reads dBm."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import numpy as np

from colure.errors import InstrumentError
from colure.instruments.links import Opener, VisaLink, real_number
from colure.instruments.profile import PowerProfile
from colure.instruments.protocols import Sweep, SweepSettings
from colure.instruments.scpi_analyzer import require_plausible
from colure.instruments.scpi_words import ScpiInstrument


def _alone(frequency_hz: float) -> None:
    """Nothing else has to be tuned."""


class ScpiPowerReceiver(ScpiInstrument):
    """Receiver without phase behind a VISA resource; see `AnalyzerDriver`.

    A trace holds the square root of the power in milliwatts, so that its square is the power.
    """

    receiver = "power"
    takes_segments = True

    def __init__(self, resource: str, profile: PowerProfile, *, timeout_s: float, opener: Opener = VisaLink) -> None:
        super().__init__(resource, profile, timeout_s=timeout_s, opener=opener)
        self._profile = profile
        self._settings: SweepSettings | None = None
        #: Called with every frequency before it is read: tunes a source of its own.
        self.tuned: Callable[[float], None] = _alone

    def configure(self, settings: SweepSettings, ports: tuple[int, ...]) -> dict[str, Any]:
        """Send the settings; raises `InstrumentError` if they are refused or two ports are wanted."""
        if ports != (1,):
            raise InstrumentError(f"power receiver: {len(ports)} ports wanted, must be 1 (ports)")
        if any(
            (one.if_bandwidth_hz, one.power_dbm) != (settings.if_bandwidth_hz, settings.power_dbm)
            for one in settings.segments
        ):
            raise InstrumentError("power receiver: bands with bandwidth or power of their own; it has one of each")
        self.setup(settings)
        self._settings = settings
        return {}

    def trigger(self, *, external: bool) -> None:
        """Refuse pulses: power is read one frequency after the other."""
        if external:
            raise InstrumentError("power receiver: cannot be started by pulses; use style = 'step'")

    def sweep(self) -> Sweep:
        """Read the power at every frequency, one after the other."""
        assert self._settings is not None  # the engine configures before it sweeps
        dbm = []
        for frequency_hz in self._settings.frequency_hz:
            self.tuned(float(frequency_hz))
            self._link.write(self._profile.tune.format(frequency_hz=frequency_hz))
            dbm.append(real_number(self.ask(self._profile.read), self._link.resource, "power in dBm"))
        if max(dbm) > 100.0 or min(dbm) < -300.0:
            raise InstrumentError(
                f"{self._link.resource}: power from {min(dbm):g} to {max(dbm):g} dBm, must be from -300 to 100 dBm"
            )
        self.raise_errors()
        trace = (10.0 ** (np.array(dbm) / 20.0)).astype(complex)[:, None]
        require_plausible(trace, self._link.resource)
        return Sweep(trace, self.flags())
