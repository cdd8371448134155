"""A receiver together with a source and a switch of their own: one `AnalyzerDriver` for the engine."""

from __future__ import annotations

from contextlib import suppress
from typing import Any

from colure.errors import InstrumentError
from colure.geometry.conventions import ComplexArray, FloatArray
from colure.instruments.protocols import (
    AnalyzerDriver,
    SourceDriver,
    Sweep,
    SweepSettings,
    SwitchDriver,
    sweep_keeper_of,
)
from colure.instruments.scpi_power import ScpiPowerReceiver


class ReceiverChain:
    """See `AnalyzerDriver`. The source is off until settings stand, tuned before every reading, proven on after every sweep.

    Raises
    ------
    InstrumentError
        If there is a source and the receiver is not power-only: nothing ties its phase to the receiver's.
    """

    def __init__(
        self, receiver: AnalyzerDriver, *, source: SourceDriver | None = None, switch: SwitchDriver | None = None
    ) -> None:
        self._receiver, self._source, self._switch = receiver, source, switch
        self.receiver = receiver.receiver
        self.takes_segments = bool(getattr(receiver, "takes_segments", False))
        if source is None:
            return
        if not isinstance(receiver, ScpiPowerReceiver) and not hasattr(receiver, "tuned"):
            raise InstrumentError(
                "role 'source': only with a power-only receiver (profile kind 'scpi-power', or a driver with `tuned`): "
                "an analyzer with phase brings its own source"
            )
        proves = bool(getattr(source, "proves_tuning", False))
        receiver.tuned = source.tune if proves else self._tuned  # type: ignore[attr-defined,unused-ignore]

    def _tuned(self, frequency_hz: float) -> None:
        """Tune a source whose driver may return before the source has read it, on another line than the receiver's: its answer tells."""
        assert self._source is not None  # nobody else is tuned
        self._source.tune(frequency_hz)
        self._source.require_on()

    def identity(self) -> str:
        """Return what receiver, source and switch say they are."""
        parts = [self._receiver.identity()]
        parts += [f"source: {self._source.identity()}"] if self._source is not None else []
        parts += [f"switch: {self._switch.identity()}"] if self._switch is not None else []
        return "; ".join(parts)

    def configure(self, settings: SweepSettings, ports: tuple[int, ...]) -> dict[str, Any]:
        """Set level and receiver with the source off, then switch the source on."""
        if self._source is not None:
            self._source.prepare(settings.power_dbm)
        readback = self._receiver.configure(settings, ports)
        if self._source is not None:
            self._source.tune(settings.start_hz)
            self._source.on()
        return readback

    def trigger(self, *, external: bool) -> None:
        """Choose what starts a sweep."""
        self._receiver.trigger(external=external)

    def route(self, channel: int) -> None:
        """Bring device, reference or cable into the path: by the switch box if there is one."""
        (self._receiver if self._switch is None else self._switch).route(channel)

    def sweep(self) -> Sweep:
        """Return one sweep; raises `InstrumentError` if the source was not on all the time, as far as it tells."""
        sweep = self._receiver.sweep()
        if self._source is not None:
            self._source.require_on()
        return sweep

    def arm(self, sweeps: int) -> None:
        """Let the receiver keep the sweeps of a slice; raises `InstrumentError` where it cannot."""
        sweep_keeper_of(self._receiver).arm(sweeps)

    def kept(self) -> int:
        """Return how many sweeps the receiver has kept."""
        return sweep_keeper_of(self._receiver).kept()

    def moments(self, sweeps: int) -> FloatArray | None:
        """Return when each of them began, if the receiver can tell."""
        return sweep_keeper_of(self._receiver).moments(sweeps)

    def fetch(self, sweeps: int) -> list[Sweep]:
        """Return the sweeps that the receiver has kept."""
        return sweep_keeper_of(self._receiver).fetch(sweeps)

    def disarm(self) -> None:
        """Let the receiver sweep one by one again."""
        sweep_keeper_of(self._receiver).disarm()

    def reflect(self) -> Sweep:
        """Return the reflection of the device's port; raises `InstrumentError` where the receiver cannot read it."""
        reader = getattr(self._receiver, "reflect", None)
        if reader is None:
            raise InstrumentError("the receiver's driver lacks `reflect`: the device's reflection cannot be read")
        sweep: Sweep = reader()
        return sweep

    def held(self) -> ComplexArray | None:
        """Return the traces that the receiver holds; None where its driver cannot tell."""
        reader = getattr(self._receiver, "held", None)
        traces: ComplexArray | None = None if reader is None else reader()
        return traces

    def clock_s(self) -> float:
        """Return the receiver's clock."""
        return self._receiver.clock_s()

    def quench(self) -> None:
        """Switch the source of its own off at once, on its own line; nothing where the receiver brings the source."""
        if self._source is not None:
            self._source.off()

    def safe(self) -> None:
        """Switch every source off; the receiver is told even if the source fails, whose error counts."""
        try:
            self.quench()
        finally:
            self._receiver.safe()

    def reconnect(self) -> None:
        """Open all lines anew."""
        self._receiver.reconnect()
        for one in (self._source, self._switch):
            if one is not None:
                one.reconnect()

    def close(self) -> None:
        """Close all lines."""
        for one in (self._receiver, self._source, self._switch):
            if one is not None:
                with suppress(InstrumentError):
                    one.close()
