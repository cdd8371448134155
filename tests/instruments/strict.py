"""A strict SCPI-1999 analyzer that shares nothing with the simulated one: it knows its own few headers in long and short
form, refuses everything else by -113, and lets a test choose how its answers look on the wire."""

from __future__ import annotations

import re
import socket
from dataclasses import dataclass, field

import numpy as np

from tests.instruments.loopback import Loopback


@dataclass
class Strict:
    """The instrument; `answer` takes one program message and returns the response message with its end.

    end
        What ends a response: LF, CR LF, CR, or nothing where the wire tells the END.
    lies
        Faults of the data: `order` (bytes in the other order), `frequencies` (shifted by one step), `short` and
        `long` (bytes beside what the block announces), `marker` (it goes to the place below the one asked for).
    """

    block: str = "definite"
    end: bytes = b"\n"
    lies: str = ""
    settings: dict[str, float] = field(default_factory=lambda: {"STAR": 1e9, "STOP": 2e9, "POIN": 11, "AVER": 1})
    errors: list[str] = field(default_factory=list)
    asked: list[str] = field(default_factory=list)
    form: str = "REAL,64"
    order: str = "NORM"
    #: Table of segments, rising: (start, stop, points, bandwidth, power); None: this instrument has none.
    segments: list[dict[str, float]] | None = None
    segmented: bool = False
    #: The point of the trace on which the marker stands; a marker knows no place between two points.
    marked: int = 0
    sweeps: int = 0
    pending: int = 0

    def answer(self, message: str) -> bytes:
        out = []
        for unit in message.split(";"):
            found = self._unit(unit.strip().lstrip(":"))
            if found is not None:
                out.append(found if isinstance(found, bytes) else found.encode("ascii"))
        return b";".join(out) + self.end if out else b""

    def _unit(self, unit: str) -> str | bytes | None:
        self.asked.append(unit)
        head, _, value = unit.partition(" ")
        simple = {
            "*IDN?": "A LABORATORY,STRICT ANALYZER,1,1.0", "*OPC?": "1", "*ESR?": "1" if self._done() else "0",
            "FORM?": self.form, "FORM:BORD?": self.order, "SENS:SWE:POIN?": f"{self.settings['POIN']:.0f}",
            "SENS:FREQ:STAR?": f"{self.settings['STAR']:.6E}", "SENS:FREQ:STOP?": f"{self.settings['STOP']:.6E}",
        }  # fmt: skip
        if head == "SYST:ERR?":
            return self.errors.pop(0) if self.errors else '+0,"No error"'
        if unit in simple:
            return simple[unit]
        numbers = {
            "SENS:FREQ:STAR": "STAR",
            "SENS:FREQ:STOP": "STOP",
            "SENS:SWE:POIN": "POIN",
            "SENS:AVER:COUN": "AVER",
        }
        if head in numbers and value:
            self.settings[numbers[head]] = float(value)
        elif head.startswith("SENS:SEGM") and self.segments is not None:
            return self._segment(head, value)
        elif head == "SENS:SWE:TYPE" and value in ("LIN", "SEGM") and self.segments is not None:
            self.segmented = value == "SEGM"
        elif head == "FORM" and value:
            self.form = value
        elif head == "FORM:BORD" and value:
            self.order = value
        elif unit in ("*CLS", "OUTP ON", "OUTP OFF", "*OPC"):
            pass
        elif unit == "INIT":
            self.sweeps += 1
            self.pending = 2
        elif unit == "SENS:FREQ:DATA?":
            return ",".join(f"{value:.3f}" for value in self.frequencies(shown=True))
        elif head == "CALC:MARK:X" and value:
            self.marked = int(np.argmin(np.abs(self.frequencies() - float(value))))
            self.marked = max(0, self.marked - (self.lies == "marker"))
        elif unit == "CALC:MARK:X?":
            return f"{self.frequencies()[self.marked]:+.11E}"
        elif unit == "CALC:MARK:Y?":
            value_there = self.truth()[self.marked]
            return f"{value_there.real:+.14E},{value_there.imag:+.14E}"
        elif unit == "CALC:DATA? SDATA":
            return self._trace()
        else:
            self.errors.append(f'-113,"Undefined header;{unit[:30]}"')
        return None

    def _done(self) -> bool:
        self.pending -= 1
        return self.pending < 0

    def _segment(self, head: str, value: str) -> str | None:
        """Rows are made in order; each keeps what it is told, bandwidths only as filters that it has (1, 3, 10, ... Hz)."""
        rows = self.segments
        assert rows is not None
        if head == "SENS:SEGM:DEL:ALL":
            rows.clear()
            return None
        found = re.fullmatch(r"SENS:SEGM(\d+):(ADD|FREQ:STAR|FREQ:STOP|SWE:POIN|BWID|POW)(\??)", head)
        if found is None or (found[2] == "ADD") != (int(found[1]) == len(rows) + 1):
            self.errors.append(f'-113,"Undefined header;{head[:30]}"')
        elif found[2] == "ADD":
            rows.append({})
        elif found[3]:
            return f"{rows[int(found[1]) - 1].get(found[2], 0.0):+.11E}"
        else:
            wanted = float(value)
            near = [m * 10.0**d for d in range(7) for m in (1.0, 3.0)]
            filters = min(near, key=lambda one: abs(np.log(one / wanted))) if found[2] == "BWID" else wanted
            rows[int(found[1]) - 1][found[2]] = filters
        return None

    def frequencies(self, *, shown: bool = False) -> np.ndarray:
        if self.segmented and self.segments:
            parts = [np.linspace(r["FREQ:STAR"], r["FREQ:STOP"], round(r["SWE:POIN"])) for r in self.segments]
            if self.lies == "segments":
                parts = parts[::-1]
            return np.concatenate(parts)
        s = self.settings
        step = (s["STOP"] - s["STAR"]) / (s["POIN"] - 1)
        shift = step if shown and self.lies == "frequencies" else 0.0
        return np.linspace(s["STAR"], s["STOP"], round(s["POIN"])) + shift

    def truth(self) -> np.ndarray:
        """A line of 4 ns and -35 dB whose level grows by the number of sweeps, so that none looks like another."""
        return 10 ** (-35 / 20) * (1 + 0.01 * self.sweeps) * np.exp(-2j * np.pi * self.frequencies() * 4e-9)

    def _trace(self) -> bytes:
        trace = self.truth()
        pairs = np.stack([trace.real, trace.imag], axis=-1).ravel()
        if self.form.startswith("ASC"):
            return ",".join(f"{value:+.15E}" for value in pairs).encode()
        big = (self.order == "NORM") != (self.lies == "order")
        payload = pairs.astype((">" if big else "<") + ("f8" if self.form == "REAL,64" else "f4")).tobytes()
        if self.block == "indefinite":
            return b"#0" + payload
        count = str(len(payload)).encode()
        payload = {"short": payload[:-3], "long": payload + b"xyz"}.get(self.lies, payload)
        return b"#" + str(len(count)).encode() + count + payload


class SocketServer(Loopback):
    """Serves an instrument's `answer` on a raw socket."""

    def __init__(self, answer) -> None:
        self._answer = answer
        super().__init__()

    def _serve(self, connection: socket.socket) -> None:
        pending = b""
        while data := connection.recv(4096):
            pending += data
            while b"\n" in pending:
                line, pending = pending.split(b"\n", 1)
                connection.sendall(self._answer(line.decode("ascii")))
