"""The analyzer's side of the socket: SCPI-1999 words, IEEE 488.2 blocks.

Names from SCPI-1999 and IEEE 488.2 (from memory; standards sheet section 10). Short or long
form is accepted, nothing between.
"""

from __future__ import annotations

import re
from collections import deque
from collections.abc import Callable

import numpy as np

from colure.twin.chamber import SimulatedRange
from colure.twin.motion import Stage

IDENTITY = "Colure,Simulated network analyzer,0,1"
NO_ERROR = '0,"No error"'


def header_pattern(definition: str) -> re.Pattern[str]:
    """Turn 'SENSe:FREQuency:STARt' into a pattern for its short and long forms."""
    parts = []
    for word in definition.split(":"):
        short = "".join(c for c in word if not c.islower())
        base = re.escape(word.rstrip("#"))
        number = r"(\d*)" if word.endswith("#") else ""
        parts.append(f"(?:{base}|{re.escape(short.rstrip('#'))}){number}")
    return re.compile("^:?" + ":".join(parts) + "$", re.IGNORECASE)


class ScpiAnalyzer:
    """State and commands of the simulated analyzer; one instance serves every connection."""

    def __init__(self, chamber: SimulatedRange, stage: Stage) -> None:
        self._range = chamber
        self._stage = stage
        self._errors: deque[str] = deque(maxlen=30)
        self._settings = {"start": 24.0e9, "stop": 24.25e9, "points": 11.0, "band": 1000.0, "power": 0.0}
        self._channel = 1
        self._big_endian = True
        self._finish = 0.0
        self._traces: dict[int, np.ndarray] = {}
        self._commands = self._table()

    def _table(self) -> list[tuple[re.Pattern[str], Callable[[str, str], str | bytes | None]]]:
        number = self._number
        entries: dict[str, Callable[[str, str], str | bytes | None]] = {
            "SENSe:FREQuency:STARt": number("start", 1e6, 1.1e12),
            "SENSe:FREQuency:STOP": number("stop", 1e6, 1.1e12),
            "SENSe:SWEep:POINts": number("points", 1, 100001),
            "SENSe:BANDwidth": number("band", 1, 1e7),
            "SENSe:BANDwidth:RESolution": number("band", 1, 1e7),
            "SOURce:POWer": number("power", -60, 30),
            "INITiate": lambda q, a: self._initiate(),
            "INITiate:IMMediate": lambda q, a: self._initiate(),
            "INITiate:CONTinuous": lambda q, a: None,
            "OUTPut": lambda q, a: None,
            "OUTPut:STATe": lambda q, a: None,
            "ABORt": lambda q, a: None,
            "TRIGger:SOURce": lambda q, a: None,
            "FORMat": self._format,
            "FORMat:DATA": self._format,
            "FORMat:BORDer": self._border,
            "CALCulate#:DATA": lambda q, a: self._data(q),
            "ROUTe:CLOSe": lambda q, a: self._route(a),
            "STATus:QUEStionable:CONDition": lambda q, a: "0",
            "SYSTem:ERRor": lambda q, a: self._next_error(),
            "SYSTem:ERRor:NEXT": lambda q, a: self._next_error(),
            "SYSTem:VERSion": lambda q, a: "1999.0",
            "SYSTem:TIME": lambda q, a: self._time(),
        }
        return [(header_pattern(name), action) for name, action in entries.items()]

    def answer(self, line: str) -> bytes:
        """Execute one line (commands separated by ;) and return the bytes to send back."""
        replies: list[bytes] = []
        for command in filter(None, (part.strip() for part in line.split(";"))):
            reply = self._one(command)
            if reply is not None:
                replies.append(reply if isinstance(reply, bytes) else reply.encode("ascii"))
        return b";".join(replies) + b"\n" if replies else b""

    def _one(self, command: str) -> str | bytes | None:
        head, _, argument = command.partition(" ")
        query = head.endswith("?")
        common = {"*IDN?": IDENTITY, "*TST?": "0", "*ESR?": "0", "*STB?": "0", "*OPT?": "0"}
        upper = head.upper()
        if upper in common:
            return common[upper]
        if upper == "*OPC?":
            self._range_wait()
            return "1"
        if upper in ("*CLS", "*RST"):
            self._errors.clear()
            return None
        if upper in ("*OPC", "*WAI"):
            self._range_wait()
            return None
        for pattern, action in self._commands:
            match = pattern.match(head.rstrip("?"))
            if match:
                suffix = match.group(1) if match.groups() else ""
                return action(f"?{suffix}" if query else "", argument.strip())
        self._errors.append(f'-113,"Undefined header;{command[:40]}"')
        return None

    def _number(self, name: str, low: float, high: float) -> Callable[[str, str], str | None]:
        def act(query: str, argument: str) -> str | None:
            if query:
                return f"{self._settings[name]:.12g}"
            try:
                value = float(argument)
            except ValueError:
                self._errors.append(f'-104,"Data type error;{name}"')
                return None
            if not low <= value <= high:
                self._errors.append(f'-222,"Data out of range;{name} {value:g}, {low:g} to {high:g}"')
                return None
            self._settings[name] = value
            return None

        return act

    def _frequencies(self) -> np.ndarray:
        return np.linspace(self._settings["start"], self._settings["stop"], round(self._settings["points"]))

    def _initiate(self) -> None:
        """Start a sweep now; every port is read during the same sweep."""
        self._range.set_frequencies(self._frequencies())
        begin = self._stage.clock.now()
        settings = self._settings
        self._finish = begin + settings["points"] / settings["band"] + self._range.chamber.analyzer.sweep_overhead_s
        readouts = self._stage.positions(begin)
        for port in range(1, self._range.chamber.probe.ports + 1):
            self._traces[port] = self._range.sweep(
                readouts,
                port=port,
                channel=self._channel,
                time_s=begin,
                power_dbm=settings["power"],
                if_bandwidth_hz=settings["band"],
            )

    def _range_wait(self) -> None:
        self._stage.clock.wait_until(self._finish)

    def _format(self, query: str, argument: str) -> str | None:
        if query:
            return "REAL,64"
        if argument.replace(" ", "").upper() != "REAL,64":
            self._errors.append(f'-224,"Illegal parameter value;{argument}"')
        return None

    def _border(self, query: str, argument: str) -> str | None:
        if query:
            return "NORM" if self._big_endian else "SWAP"
        self._big_endian = argument.upper().startswith("NORM")
        return None

    def _data(self, query: str) -> bytes | None:
        port = int(query[1:] or 1)
        if port not in self._traces:
            self._errors.append('-230,"Data corrupt or stale"')
            return None
        self._range_wait()
        trace = self._traces[port]
        pairs = np.stack([trace.real, trace.imag], axis=-1).ravel()
        payload = pairs.astype(">f8" if self._big_endian else "<f8").tobytes()
        count = str(len(payload)).encode()
        return b"#" + str(len(count)).encode() + count + payload

    def _route(self, argument: str) -> None:
        match = re.fullmatch(r"\(@([12])\)", argument)
        if match is None:
            self._errors.append(f'-222,"Data out of range;route {argument[:20]}"')
            return
        self._channel = int(match.group(1))

    def _next_error(self) -> str:
        return self._errors.popleft() if self._errors else NO_ERROR

    def _time(self) -> str:
        now = self._stage.clock.now()
        return f"{int(now // 3600)},{int(now % 3600 // 60)},{now % 60:.6f}"
