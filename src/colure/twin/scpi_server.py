"""The analyzer's side of the socket: SCPI-1999 words, IEEE 488.2 blocks.

Names from SCPI-1999 and IEEE 488.2 (from memory; standards sheet section 10). Short or long
form is accepted, nothing between.
"""

from __future__ import annotations

import re
import time
from collections import deque

import numpy as np

from colure.model.faults import FaultKind
from colure.twin.chamber import SimulatedRange
from colure.twin.faults import HangUpError, SilenceError
from colure.twin.kept_sweeps import KeptSweeps, Swept
from colure.twin.motion import Stage
from colure.twin.scpi_headers import CommandAction, HeaderTable
from colure.twin.small_servers import SimulatedSource, SimulatedSwitch
from colure.twin.stages import StageSet

IDENTITY = "Colure,Simulated network analyzer,0,1"
OTHER_IDENTITY = "Colure,Another simulated analyzer,1,1"
NO_ERROR = '0,"No error"'
#: Bits of the questionable register (SCPI-1999: 3 power, 5 frequency; 9 is free for makers).
CONDITION = {FaultKind.UNLEVELLED: 8, FaultKind.UNLOCKED: 32, FaultKind.OVERLOAD: 512}
PRESET = {"start": 24.0e9, "stop": 24.25e9, "points": 201.0, "band": 1000.0, "power": -20.0, "averages": 1.0}
#: Number of the trace that holds the reflection of the device's port.
REFLECTION_TRACE = 11
#: Real seconds after which an awaited pulse is given up.
PULSE_PATIENCE_S = 30.0
#: What a source that is off still gives, dBm.
NO_POWER_DBM = -250.0
#: Length of the short form of words (SCPI-1999, volume 1, 6.2.1).
SHORT = {"LINEAR": 3, "SEGMENT": 4, "IMMEDIATE": 3, "EXTERNAL": 3}


class SimulatedAnalyzer:
    """State and commands of the simulated analyzer; one instance serves every connection.

    source, switch
        Those of their own, which then count instead of the analyzer's.
    own_power_dbm
        Power of a device that transmits by itself.
    """

    def __init__(
        self,
        chamber: SimulatedRange,
        stage: Stage | StageSet,
        *,
        source: SimulatedSource | None = None,
        switch: SimulatedSwitch | None = None,
        own_power_dbm: float | None = None,
    ) -> None:
        self._source, self._switch, self._own_power_dbm = source, switch, own_power_dbm
        self._range = chamber
        self._stage = stage
        self._errors: deque[str] = deque(maxlen=30)
        self._settings = dict(PRESET)
        self._spot_hz = PRESET["start"]
        self._identity = IDENTITY
        self._external = False
        #: Rows of the table of segments, and whether sweeps follow it.
        self._segments: list[dict[str, float]] = []
        self._segmented = False
        self._fault: FaultKind | None = None
        self._count = 0
        self._channel = 1
        self._big_endian = True
        self._number_format = "REAL,64"
        self._finish, self._begun = 0.0, 0.0
        self._traces: dict[int, np.ndarray] = {}
        self._slice = KeptSweeps(stage, self._sweep_at)
        self._count_of_pulses, self._happened = 1, 0
        self._point_by_point = False
        #: Since when a single sweep waits for its pulse; whether it is deaf to it, which is known once somebody asks.
        self._waiting_s: float | None = None
        self._deaf: bool | None = None
        self._headers = HeaderTable(self._table())

    def _table(self) -> dict[str, CommandAction]:
        number = self._number
        return {
            "SENSe:FREQuency:STARt": number("start", 1e6, 1.1e12),
            "SENSe:FREQuency:STOP": number("stop", 1e6, 1.1e12),
            "SENSe:SWEep:POINts": self._sweep_points,
            "SENSe:BANDwidth": number("band", 1, 1e7),
            "SENSe:BANDwidth:RESolution": number("band", 1, 1e7),
            "SENSe:AVERage:COUNt": number("averages", 1, 100000),
            "SENSe:SWEep:COUNt:DONE": lambda q, a: str(self._count),
            "SENSe:FREQuency:DATA": lambda q, a: ",".join(f"{value:.3f}" for value in self._frequencies()),
            "SENSe:FREQuency": self._spot,
            "SENSe:FREQuency:CW": self._spot,
            "READ": lambda q, a: self._read_power(),
            "SOURce:POWer": number("power", -60, 30),
            "SENSe:SWEep:TYPE": self._sweep_type,
            "SENSe:SEGMent:DELete:ALL": lambda q, a: self._segments.clear(),
            "SENSe:SEGMent#:ADD": self._add_segment,
            "SENSe:SEGMent#:STATe": lambda q, a: None,
            "SENSe:SEGMent#:FREQuency:STARt": self._of_segment("start", 1e6, 1.1e12),
            "SENSe:SEGMent#:FREQuency:STOP": self._of_segment("stop", 1e6, 1.1e12),
            "SENSe:SEGMent#:SWEep:POINts": self._of_segment("points", 1, 100001),
            "SENSe:SEGMent#:BWIDth": self._of_segment("band", 1, 1e7),
            "SENSe:SEGMent#:POWer": self._of_segment("power", -60, 30),
            "INITiate": lambda q, a: self._initiate(),
            "INITiate:IMMediate": lambda q, a: self._initiate(),
            "INITiate:CONTinuous": lambda q, a: None,
            "OUTPut": lambda q, a: None,
            "OUTPut:STATe": lambda q, a: None,
            "ABORt": lambda q, a: self._abort(),
            "TRIGger:COUNt": self._trigger_count,
            "TRIGger:SOURce": self._trigger,
            "TRIGger:POINt": self._trigger_point,
            "TRIGger:POINt:COUNt": lambda q, a: self._heard(),
            "TRIGger:POINt:TIME": lambda q, a: ",".join(f"{moment:.6f}" for moment in self._slice.heard_s),
            "FORMat": self._format,
            "FORMat:DATA": self._format,
            "FORMat:BORDer": self._border,
            "CALCulate#:DATA": lambda q, a: self._data(q),
            "CALCulate#:DATA:BUFFer": lambda q, a: self._kept_data(q),
            "CALCulate#:DATA:BUFFer:COUNt": lambda q, a: self._kept_count(),
            "CALCulate#:DATA:BUFFer:TIME": lambda q, a: ",".join(f"{moment:.6f}" for moment in self._slice.begun_s),
            "STATus:OPERation:CONDition": lambda q, a: "32" if self._waits() else "0",
            "STATus:QUEStionable:EVENt": lambda q, a: self._events(),
            "ROUTe:CLOSe": lambda q, a: self._route(a),
            "STATus:QUEStionable:CONDition": lambda q, a: str(CONDITION.get(self._fault, 0) if self._fault else 0),
            "SYSTem:ERRor": lambda q, a: self._next_error(),
            "SYSTem:ERRor:NEXT": lambda q, a: self._next_error(),
            "SYSTem:VERSion": lambda q, a: "1999.0",
            "SYSTem:TIME": lambda q, a: self._time(),
        }

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
        common = {"*IDN?": self._identity, "*TST?": "0", "*ESR?": "0", "*STB?": "0", "*OPT?": "0"}
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
        understood = self._headers.understood(head.rstrip("?"))
        if understood is None:
            self._errors.append(f'-113,"Undefined header;{command[:40]}"')
            return None
        action, suffix = understood
        return action(f"?{suffix}" if query else suffix, argument.strip())

    def _number(self, name: str, low: float, high: float) -> CommandAction:
        return lambda query, argument: self._kept(self._settings, name, low, high, query, argument)

    def _kept(
        self, table: dict[str, float], name: str, low: float, high: float, query: str, argument: str
    ) -> str | None:
        """Answer a query of one number of a table, or set it within its limits."""
        if query.startswith("?"):
            return f"{table[name]:.12g}"
        try:
            value = float(argument)
        except ValueError:
            self._errors.append(f'-104,"Data type error;{name}"')
            return None
        if not low <= value <= high:
            self._errors.append(f'-222,"Data out of range;{name} {value:g}, {low:g} to {high:g}"')
            return None
        table[name] = value
        return None

    def _one_of(self, argument: str, *words: str) -> str:
        """Return which of some words an argument is, in its short form or written out; empty, with an error queued, if none."""
        choice = next((word for word in words if argument.upper() in (word[: SHORT[word]], word)), "")
        if not choice:
            self._errors.append(f'-224,"Illegal parameter value;{argument[:20]}"')
        return choice

    def _sweep_type(self, query: str, argument: str) -> str | None:
        if query:
            return "SEGM" if self._segmented else "LIN"
        if word := self._one_of(argument, "LINEAR", "SEGMENT"):
            self._segmented = word == "SEGMENT"
        return None

    def _sweep_points(self, query: str, argument: str) -> str | bytes | None:
        if query and self._segmented:
            return str(self._frequencies().size)
        return self._number("points", 1, 100001)(query, argument)

    def _add_segment(self, query: str, argument: str) -> None:
        """Append a row to the table; numbers run on."""
        number = int(query or 1)
        if number != len(self._segments) + 1:
            self._errors.append(f'-222,"Data out of range;segment {number}"')
            return
        self._segments.append(dict(PRESET))

    def _of_segment(self, name: str, low: float, high: float) -> CommandAction:
        def act(query: str, argument: str) -> str | None:
            number = int(query.lstrip("?") or 1)
            if not 1 <= number <= len(self._segments):
                self._errors.append(f'-222,"Data out of range;segment {number}"')
                return None
            return self._kept(self._segments[number - 1], name, low, high, query, argument)

        return act

    def _rows(self) -> list[dict[str, float]]:
        """Return what is swept, one row for each segment."""
        return self._segments if self._segmented and self._segments else [self._settings]

    def _frequencies(self) -> np.ndarray:
        return np.concatenate([np.linspace(r["start"], r["stop"], round(r["points"])) for r in self._rows()])

    def _every(self, name: str) -> float | np.ndarray:
        """Return a setting at every frequency; a number where all of the sweep has one."""
        rows = self._rows()
        if len(rows) == 1:
            return rows[0][name]
        return np.concatenate([np.full(round(r["points"]), r[name]) for r in rows])

    def _initiate(self) -> None:
        """Start a sweep now, or at the next pulse; every port is read during the same sweep."""
        if self._external and self._count_of_pulses > 1:
            self._slice.start(self._count_of_pulses)
            return
        # What waits for a pulse waits beside whatever it is asked; whoever wants the sweep's end waits too.
        self._waiting_s, self._deaf = self._stage.clock.now() if self._external else None, None
        if not self._external:
            self._sweep_at(self._stage.clock.now())

    def _abort(self) -> None:
        self._slice.end()
        self._waiting_s = None

    def _waits(self) -> bool:
        """Tell whether it waits for a pulse: of a slice, or of a single sweep."""
        if self._waiting_s is None:
            return self._slice.waits
        self._deaf = self._stage.faults.of(FaultKind.NEVER_READY) if self._deaf is None else self._deaf
        moment = self._stage.next_pulse(self._waiting_s)
        return not self._deaf and (moment is None or moment > self._stage.clock.now())

    def _sweep_at(self, begin: float | np.ndarray) -> Swept:
        """Sweep at a moment, which may have passed, or at one for every frequency; return what is in the memory then, and when it is."""
        self._fault = self._stage.faults.next_sweep()
        self._happened |= CONDITION.get(self._fault, 0) if self._fault else 0
        if self._fault in (FaultKind.WRONG_IDENTITY, FaultKind.LOST_SETTINGS):
            # Somebody exchanged the instrument, or it was switched off and on: the line is gone either way.
            self._identity = OTHER_IDENTITY if self._fault is FaultKind.WRONG_IDENTITY else self._identity
            self._settings, self._segments, self._segmented = dict(PRESET), [], False
            raise HangUpError
        if self._fault is FaultKind.ANALYZER_DROP:
            raise HangUpError
        if self._fault is FaultKind.BYTE_ORDER:
            # Somebody at the front panel, or another program: it stays so until it is set again.
            self._big_endian = not self._big_endian
        length = self._sweep_length()
        last = begin + length if isinstance(begin, float) else float(begin[-1] + self._lasts_s()[-1])
        self._finish = last + self._range.chamber.analyzer.sweep_overhead_s
        if self._fault is FaultKind.STALE and self._traces:
            return Swept(self._traces, self._finish, self._fault)
        self._count += 1
        before, self._begun = self._traces, float(np.min(begin))
        # What spoils a trace stays in the memory until the next sweep.
        self._traces = {port: self._spoiled(trace) for port, trace in self._measure(begin, length).items()}
        if self._fault is FaultKind.FROZEN and before.keys() == self._traces.keys():
            self._traces = before
        return Swept(self._traces, self._finish, self._fault)

    def _trigger_count(self, query: str, argument: str) -> str | None:
        if query:
            return str(self._count_of_pulses)
        if not re.fullmatch(r"\d{1,6}", argument) or int(argument) < 1:
            self._errors.append(f'-222,"Data out of range;TRIG:COUN {argument[:20]}, 1 to 999999"')
            return None
        self._count_of_pulses = int(argument)
        return None

    def _trigger_point(self, query: str, argument: str) -> str | None:
        if query:
            return str(int(self._point_by_point))
        if argument.upper() not in ("ON", "OFF", "0", "1"):
            self._errors.append(f'-224,"Illegal parameter value;{argument[:20]}"')
            return None
        self._point_by_point = argument.upper() in ("ON", "1")
        return None

    def _heard(self) -> str:
        self._kept_count()
        return str(len(self._slice.heard_s))

    def _kept_count(self) -> str:
        self._fault = self._slice.collect_points(self._lasts_s()) if self._point_by_point else self._slice.collect()
        self._range_wait()
        return str(len(self._slice.traces))

    def _kept_data(self, query: str) -> bytes | None:
        port = int(query[1:] or 1)
        if not self._slice.traces or port not in self._slice.traces[0]:
            self._errors.append('-230,"Data corrupt or stale"')
            return None
        return self._block(np.concatenate([one[port] for one in self._slice.traces]))

    def _events(self) -> str:
        """Return the conditions that were met since this was asked for."""
        happened, self._happened = self._happened, 0
        return str(happened)

    def _sweep_length(self) -> float:
        return self._settings["averages"] * sum(row["points"] / row["band"] for row in self._rows())

    def _lasts_s(self) -> np.ndarray:
        """Return how long every frequency takes: what its bandwidth asks for."""
        return np.concatenate([np.full(round(row["points"]), 1.0 / row["band"]) for row in self._rows()])

    def _measure(self, begins: float | np.ndarray, length: float) -> dict[int, np.ndarray]:
        self._range.set_frequencies(self._frequencies())
        each, begin = self._lasts_s(), float(np.min(begins))
        moments = begin + length * (np.cumsum(each) - 0.5 * each) / each.sum()
        if isinstance(begins, np.ndarray):
            moments = begins + 0.5 * each
        way = None
        if self._stage.busy_until() > begin:
            way = [self._stage.true_positions(float(moment)) for moment in moments]
        return {
            port: self._range.sweep(
                self._stage.true_positions(begin),
                port=port,
                channel=self._channel if self._switch is None else self._switch.channel,
                time_s=begin,
                power_dbm=self._every("power"),
                if_bandwidth_hz=self._every("band") / self._settings["averages"],
                on_the_way=way,
            )
            for port in range(1, self._range.chamber.probe.ports + 1)
        }

    def _reflection(self) -> np.ndarray:
        """Return the reflection of the device's port during the newest sweep."""
        self._range.set_frequencies(self._frequencies())
        self._range_wait()
        return self._range.reflected(
            self._stage.true_positions(self._begun),
            time_s=self._begun,
            power_dbm=self._every("power"),
            if_bandwidth_hz=self._every("band") / self._settings["averages"],
        )

    def _pulse(self, since: float) -> float:
        """Wait for the positioner's next pulse and return its moment; silent if none ever comes."""
        clock, patience = self._stage.clock, time.monotonic() + PULSE_PATIENCE_S
        while True:
            moment = self._stage.next_pulse(since)
            if moment is not None and clock.wait_until(moment, self._stage.held):
                return moment
            if clock.virtual or time.monotonic() > patience or self._stage.held.is_set():
                raise SilenceError
            time.sleep(0.001)

    def _trigger(self, query: str, argument: str) -> str | None:
        if query:
            return "EXT" if self._external else "IMM"
        if word := self._one_of(argument, "IMMEDIATE", "EXTERNAL"):
            self._external, self._waiting_s = word == "EXTERNAL", None
        return None

    def _spot(self, query: str, argument: str) -> str | None:
        if query:
            return f"{self._spot_hz:.12g}"
        try:
            self._spot_hz = float(argument)
        except ValueError:
            self._errors.append('-104,"Data type error;frequency"')
        return None

    def _read_power(self) -> str:
        """Measure the power of one frequency at port 1, as a power meter would."""
        clock, settings = self._stage.clock, self._settings
        begin = clock.now()
        self._fault = self._stage.faults.next_sweep()
        if self._fault is FaultKind.ANALYZER_HANG:
            raise SilenceError
        self._range.set_frequencies(np.array([self._spot_hz]))
        power_dbm = self._power_dbm()
        wave = self._range.sweep(
            self._stage.true_positions(begin),
            port=1,
            channel=self._channel if self._switch is None else self._switch.channel,
            time_s=begin,
            power_dbm=power_dbm,
            if_bandwidth_hz=settings["band"],
        )
        clock.wait_until(begin + 1.0 / settings["band"] + self._range.chamber.analyzer.sweep_overhead_s)
        return f"{power_dbm + 20.0 * np.log10(max(abs(wave[0]), 1e-15)):.4f}"

    def _power_dbm(self) -> float:
        """Return the power at the device's port; next to nothing where the source is off or tuned elsewhere."""
        if self._own_power_dbm is not None:
            return self._own_power_dbm
        if self._source is None:
            return self._settings["power"]
        tuned = abs(self._source.frequency_hz - self._spot_hz) <= self._settings["band"]
        return self._source.level_dbm if self._source.on and tuned else NO_POWER_DBM

    def _range_wait(self) -> None:
        if self._fault is FaultKind.ANALYZER_HANG:
            self._fault = None  # of this exchange, not of the trace
            raise SilenceError
        if self._waiting_s is not None:
            since, self._waiting_s = self._waiting_s, None
            if self._deaf:
                raise SilenceError
            self._sweep_at(self._pulse(since))
            self._range_wait()
        self._stage.clock.wait_until(self._finish)

    def _format(self, query: str, argument: str) -> str | None:
        if query:
            return self._number_format
        wanted = argument.replace(" ", "").upper()
        known = {"REAL,64": "REAL,64", "REAL,32": "REAL,32", "ASC": "ASC", "ASCII": "ASC", "ASC,0": "ASC"}
        if wanted in known:
            self._number_format = known[wanted]
        else:
            self._errors.append(f'-224,"Illegal parameter value;{argument[:20]}"')
        return None

    def _border(self, query: str, argument: str) -> str | None:
        if query:
            return "NORM" if self._big_endian else "SWAP"
        self._big_endian = argument.upper().startswith("NORM")
        return None

    def _data(self, query: str) -> bytes | None:
        port = int(query[1:] or 1)
        if port == REFLECTION_TRACE and self._traces:
            return self._block(self._reflection())
        if not 1 <= port <= self._range.chamber.probe.ports:
            self._errors.append('-230,"Data corrupt or stale"')
            return None
        self._range_wait()
        # Before the first sweep the memory holds zeros.
        empty = np.zeros(self._frequencies().size, complex)
        return self._block(self._traces.get(port, empty))

    def _block(self, values: np.ndarray) -> bytes:
        """Return a trace in the format that was asked for, with a fault of its transfer."""
        pairs = np.stack([values.real, values.imag], axis=-1).ravel()
        if self._number_format == "ASC":
            return ",".join(f"{value:.12e}" for value in pairs).encode()
        width = 8 if self._number_format == "REAL,64" else 4
        payload = pairs.astype(f"{'>' if self._big_endian else '<'}f{width}").tobytes()
        if self._fault is FaultKind.SHORT_BLOCK:
            payload = payload[:-width]
        count = str(len(payload)).encode()
        extra = bytes(range(width)) if self._fault is FaultKind.LONG_BLOCK else b""
        if self._fault in (FaultKind.SHORT_BLOCK, FaultKind.LONG_BLOCK):
            self._fault = None  # of this transfer, not of the trace
        return b"#" + str(len(count)).encode() + count + payload + extra

    def _spoiled(self, trace: np.ndarray) -> np.ndarray:
        """Return the trace with this sweep's fault in it."""
        bad = {FaultKind.NOT_A_NUMBER: complex(np.nan, 0.0), FaultKind.INFINITE: complex(np.inf, 0.0)}
        if self._fault in bad:
            out = trace.copy()
            out[out.size // 2] = bad[self._fault]
            return out
        return np.zeros_like(trace) if self._fault is FaultKind.ALL_ZERO else trace

    def _route(self, argument: str) -> None:
        match = re.fullmatch(r"\(@([123])\)", argument)
        if match is None:
            self._errors.append(f'-222,"Data out of range;route {argument[:20]}"')
            return
        self._channel = int(match.group(1))

    def _next_error(self) -> str:
        return self._errors.popleft() if self._errors else NO_ERROR

    def _time(self) -> str:
        now = self._stage.clock.now()
        return f"{int(now // 3600)},{int(now % 3600 // 60)},{now % 60:.6f}"
