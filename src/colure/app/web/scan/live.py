"""What the page shows of a scan: gathered from the scan's own words, told to any number of watchers.

The scan never waits for it: a watcher gets the newest picture when it has taken the one before.
"""

from __future__ import annotations

import time
from collections import deque
from typing import Any

import numpy as np

from colure.app.web.scan.layout import Kind, Layout
from colure.app.web.scan.messages import Grid, Status, Word
from colure.geometry.conventions import BoolArray, amplitude_db, power_db
from colure.model.plan import ROLES, Role

#: Words of a scan that a page shows; all of them are in the journal.
MOST_WORDS = 200
SCAN, TIE = ROLES.index(Role.SCAN), ROLES.index(Role.TIE)
#: States that a scan does not end in by itself.
UNENDED = ("starting", "idle", "running", "paused")


class LiveScan:
    """State of one scan. Everything happens in the server's own thread."""

    def __init__(self, campaign: str, run: str, layout: Layout, *, kind: Kind = "scan") -> None:
        self.campaign, self.run, self.layout, self.kind = campaign, run, layout, kind
        self.state, self.text = "starting", "instruments are being connected"
        self.version = 0
        self._seen = np.zeros(len(layout.cell), bool)
        #: Points that are measured again although the run holds them; none: what it does not hold yet is measured.
        self._again = np.zeros(len(layout.cell), bool)
        self._power = np.zeros((layout.passes, layout.shape[0] * layout.shape[1]))
        self._ties: list[tuple[float, complex]] = []
        self._tie_port: int | None = None
        self._words: deque[Word] = deque(maxlen=MOST_WORDS)
        self._position: list[float] = []
        self._level_db: float | None = None
        self._strongest_db: float | None = None
        self._slice = 0
        self._began = time.monotonic()
        self._measured_before = 0.0
        #: The process is gone; until then its record may still be sealed, and no other scan begins.
        self._over = False
        #: The engine ended and left every axis standing; what comes after moves nothing.
        self._at_rest = False

    @property
    def running(self) -> bool:
        """Tell whether the scan's process is there: it measures, or seals what was measured."""
        return not self._over

    @property
    def moves(self) -> bool:
        """Tell whether the axes may move: until the engine ended with every axis standing, or its process is gone."""
        return self.running and not self._at_rest

    @property
    def _asked(self) -> BoolArray:
        """(point,) what this scan measures: all of the plan, or what is measured again."""
        return self._again if self._again.any() else np.ones_like(self._again)

    def hear(self, line: dict[str, Any]) -> None:
        """Take in one line of the scan's process."""
        kind = line.get("kind")
        if kind == "history":
            for row in line["rows"]:
                self._take(row)
            # What is measured again has readings already: they are drawn, and do not count.
            self._seen &= ~self._again
            self._measured_before = float(self.layout.time_s[self._seen & self._asked].sum())
        elif "row" in line:
            self._take(line["row"])
            if kind == "tie":
                self._say("tie", line["text"])
        elif kind == "state":
            self.state, self.text = line["state"], line["text"].split(": ", 1)[-1]
            self._at_rest = bool(line.get("at_rest", False))
            self._say("state", line["text"])
        elif kind in ("outcome", "refused"):
            self.state = line.get("state", "refused")
            self.text = line["text"]
            self._say(str(kind), line["text"])
        elif kind == "plan":
            self._again[line.get("again", [])] = True
        else:
            self._say(str(kind), str(line.get("text", "")))
        self.version += 1

    def ended(self, code: int) -> None:
        """The scan's process is gone."""
        self._over = True
        if self.state in UNENDED:
            self.state, self.text = (
                "interrupted",
                f"the scan's process ended by itself (code {code}); the same run goes on",
            )
            self._say("stop", self.text)
        self.version += 1

    def _say(self, kind: str, text: str) -> None:
        self._words.append({"at": time.time(), "kind": kind, "text": text})

    def stumbled(self, error: Exception) -> None:
        """A line was not understood: the scan goes on, and the page says so."""
        self._say("warning", f"the page did not understand a line of the scan: {type(error).__name__}: {error}")
        self.version += 1

    def _take(self, row: list[Any]) -> None:
        index, role, at, position, parts, _ = row
        value = np.array(parts[0::2]) + 1j * np.array(parts[1::2])
        self._position = position
        power = float(np.sum(np.abs(value) ** 2))
        self._level_db = float(power_db(power, least=1e-30))
        if self._strongest_db is None or self._level_db > self._strongest_db:
            self._strongest_db = self._level_db
        if role == TIE:
            # A circular wave is as strong at either port: all checks are read at the port that was strongest first.
            if self._tie_port is None:
                self._tie_port = int(np.argmax(np.abs(value)))
            self._ties.append((at, complex(value[self._tie_port])))
        if 0 <= index < self._seen.size:
            self._seen[index] = True
            cell = self.layout.cell[index]
            # The picture is of one device state: the first one.
            if role == SCAN and cell >= 0 and self.layout.state_index[index] <= 0:
                self._power[max(0, self.layout.pass_index[index]), cell] = power
                self._slice = int(self.layout.slice_index[index])

    def status(self) -> Status:
        """Return everything but the picture."""
        layout, asked = self.layout, self._asked
        total = float(layout.time_s[asked].sum())
        measured_s = float(layout.time_s[self._seen & asked].sum())
        elapsed = time.monotonic() - self._began
        fresh = measured_s - self._measured_before
        # How fast predicted time passes; believed once there is something to go by.
        pace = elapsed / fresh if fresh > 0.01 * total else 1.0
        first = self._ties[0][1] if self._ties else 1.0
        drift = [
            [
                round(at - self._ties[0][0], 1),
                round(float(amplitude_db(abs(v / first))), 4),
                round(float(np.rad2deg(np.angle(v / first))), 3),
            ]
            for at, v in self._ties[-400:]
        ]
        return {
            "type": "status", "campaign": self.campaign, "run": self.run, "kind": self.kind, "state": self.state,
            "text": self.text,
            "running": self.running, "moves": self.moves, "measured": int((self._seen & asked).sum()),
            "total": int(asked.sum()),
            "left_s": round(max(0.0, (total - measured_s) * pace), 1), "predicted_s": round(total, 1),
            "axes": list(layout.axes),
            "position_deg": layout.shown_deg(self._position), "angles_deg": layout.angles_deg(self._position),
            "joints": layout.joint_values(self._position), "level_db": self._level_db,
            "strongest_db": self._strongest_db, "noise_db": round(layout.noise_db, 1), "slice": self._slice,
            "ties": drift,
            "words": list(self._words), "version": self.version,
        }  # fmt: skip

    def geometry(self) -> Grid:
        """Return what does not change: the grid."""
        layout = self.layout
        return {
            "type": "grid", "rows": layout.rows_deg.tolist(), "columns": layout.columns_deg.tolist(),
            "row_name": layout.row_name,
            "column_name": layout.column_name, "directions": np.round(layout.directions, 5).ravel().tolist(),
            "state": layout.states[0] if layout.states else None,
        }  # fmt: skip

    def frame(self) -> bytes:
        """Return the picture: float32 levels (S21, dB) by row and column; nan where nothing was measured."""
        power = self._power.sum(axis=0)
        grid = np.full(power.size, np.nan, np.float32)
        known = power > 0.0
        grid[known] = power_db(power[known])
        shaped = grid.reshape(self.layout.shape)
        if self.layout.row_name == "theta":
            # All columns are one direction at a pole: its first measurement is drawn in all of them.
            for at in np.flatnonzero(np.isin(self.layout.rows_deg, (0.0, 180.0))):
                row = shaped[at]
                levels_db = row[np.isfinite(row)]
                row[np.isnan(row)] = levels_db[0] if levels_db.size else np.nan
        return shaped.astype("<f4").tobytes()
