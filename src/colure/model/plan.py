"""A plan is data: an ordered list of points that can be printed, drawn, hashed and executed."""

from __future__ import annotations

import hashlib
import json
from dataclasses import dataclass, field
from enum import StrEnum
from typing import Any

import numpy as np

from colure.errors import InputError
from colure.geometry.conventions import BoolArray, FloatArray, IntArray
from colure.geometry.kinematics import Geometry
from colure.values import holds_arrays

PLAN_FORMAT = 2
#: Coordinates of plans and records on a mount with joints.
COORDINATES = ("azimuth", "roll", "probe")
#: Entries of the campaign's files that only name things, or say when the scan may end: changing them does not make another plan.
NAMES = frozenset({"name", "note", "run", "monitor_ghz", "until"})


#: Fewer slices than these do not show how fast azimuthal orders fall, and so not what the missing slices hold.
LEAST_SLICES = 4


def even_counts(planned: int) -> list[int]:
    """Return how many of the slices planned make an even set by themselves, fewest first: every second, every third, ..."""
    return [count for count in range(LEAST_SLICES, planned) if planned % count == 0]


class Role(StrEnum):
    """Why a point is measured."""

    SCAN = "scan"
    TIE = "tie"
    REFERENCE = "reference"
    RESUME = "resume"
    TURN = "turn"
    CABLE = "cable"
    REFLECTION = "reflection"


ROLES = tuple(Role)


@dataclass(frozen=True, kw_only=True)
class ScanGrid:
    """Where a scan looks: slices, sweeps along them, and how far from the boresight.

    step_deg
        Between neighbouring slices.
    swept_step_deg
        Between neighbouring sweeps along a slice.
    reach_deg
        Largest polar angle from +z that is covered; 180 is the whole sphere.
    """

    step_deg: float
    swept_step_deg: float
    reach_deg: float = 180.0

    @property
    def whole(self) -> bool:
        """Tell whether the whole sphere is covered."""
        return self.reach_deg >= 180.0

    @property
    def slices_planned(self) -> int:
        """Slices that the whole sphere takes (roll over azimuth), or rings between its poles."""
        return round(180.0 / self.step_deg)

    def swept_deg(self, geometry: Geometry) -> FloatArray:
        """Return the angles of the swept axis, rising.

        Roll over azimuth: theta over a full turn, or to `reach_deg` on both sides. Azimuth/elevation:
        always a full turn, because only full turns keep the azimuthal orders apart.
        """
        if geometry is Geometry.ROLL_OVER_AZIMUTH and not self.whole:
            count = int(np.ceil(self.reach_deg / self.swept_step_deg - 1e-9))
            return np.asarray(np.arange(-count, count + 1) * self.swept_step_deg)
        half = round(180.0 / self.swept_step_deg)
        return np.asarray((np.arange(2 * half) - half + 1) * self.swept_step_deg)

    def sliced_deg(self, geometry: Geometry) -> FloatArray:
        """Return the angles of the other axis: phi over a half turn, or elevation (azimuth) from pole to pole.

        Of an azimuth/elevation grid the belt within `reach_deg` of the boresight's equator is kept.
        """
        n = self.slices_planned
        if geometry is Geometry.ROLL_OVER_AZIMUTH:
            return np.asarray(np.arange(n) * self.step_deg)
        every = (np.arange(n + 1) - n / 2) * self.step_deg
        if self.reach_deg >= 90.0:
            return np.asarray(every)
        outside = np.abs(every) - self.reach_deg
        return np.asarray(every[outside < self.step_deg - 1e-9])


@dataclass(frozen=True)
@holds_arrays
class Plan:
    """An ordered list of points with axis readouts, and everything predicted about them.

    axes
        Names of the axes, in the order of `targets`' columns.
    targets_deg
        (point, axis) controller readouts in degrees.
    role, slice_index, pass_index
        (point,) code into `ROLES`, great-circle slice and polarization pass (-1 if none).
    state_index
        (point,) device state, index into `states` (-1: the device has none).
    line_index
        (point,) which points are swept in one continuous motion (-1: step and settle).
    ports
        Analyzer traces read at every point (1, or 1 and 2).
    coordinates_deg
        (point, coordinate) azimuth, roll and the probe's roll that the joints take up; None where the axes are the coordinates.
    half_turned
        (point,) where the joints turn the probe by half a turn against that, so that it reads with the other sign.
    """

    axes: tuple[str, ...]
    targets_deg: FloatArray
    role: IntArray
    slice_index: IntArray
    pass_index: IntArray
    state_index: IntArray
    line_index: IntArray
    frequency_hz: FloatArray
    ports: tuple[int, ...]
    scheme: str
    order: int
    step_deg: float
    states: tuple[str, ...] = ()
    settings: dict[str, Any] = field(default_factory=dict)
    predicted: dict[str, Any] = field(default_factory=dict)
    inputs: dict[str, Any] = field(default_factory=dict)
    coordinates_deg: FloatArray | None = None
    half_turned: BoolArray | None = None

    def __len__(self) -> int:
        return len(self.role)

    @property
    def in_coordinates(self) -> tuple[tuple[str, ...], FloatArray]:
        """Names of the coordinates, and (point, coordinate) where the points lie in them, degrees."""
        if self.coordinates_deg is None:
            return self.axes, self.targets_deg
        return COORDINATES[: self.coordinates_deg.shape[1]], self.coordinates_deg

    @property
    def grid(self) -> ScanGrid:
        """Where the scan looks."""
        swept = float(self.settings.get("swept_step_deg", self.step_deg))
        return ScanGrid(
            step_deg=self.step_deg, swept_step_deg=swept, reach_deg=float(self.settings.get("reach_deg", 180.0))
        )

    def roles(self) -> list[Role]:
        """Return the role of every point."""
        return [ROLES[code] for code in self.role]

    @property
    def pulses_each(self) -> int:
        """How many pulses a sweep on the fly takes: 1, or one for every frequency."""
        return int(self.settings["points"]) if self.settings.get("point_step_deg") else 1

    @property
    def hash(self) -> str:
        """SHA-256 over everything that decides what is measured (predictions and names excluded)."""
        content = self.as_dict()
        content.pop("predicted")
        # Names and notes, and when to end, decide nothing of what is planned.
        content["inputs"] = {
            name: {k: v for k, v in table.items() if k not in NAMES} if isinstance(table, dict) else table
            for name, table in self.inputs.items()
        }
        return hashlib.sha256(json.dumps(content, sort_keys=True, separators=(",", ":")).encode()).hexdigest()

    def as_dict(self) -> dict[str, Any]:
        """Return the plan as plain JSON-ready data; degrees are rounded to a micro-degree."""
        joints: dict[str, Any] = {}
        if self.coordinates_deg is not None and self.half_turned is not None:
            joints = {
                "coordinates_deg": np.round(self.coordinates_deg, 6).tolist(),
                "half_turned": self.half_turned.astype(int).tolist(),
            }
        return joints | {
            "format": PLAN_FORMAT,
            "axes": list(self.axes),
            "targets_deg": np.round(self.targets_deg, 6).tolist(),
            "role": self.role.tolist(),
            "slice_index": self.slice_index.tolist(),
            "pass_index": self.pass_index.tolist(),
            "state_index": self.state_index.tolist(),
            "line_index": self.line_index.tolist(),
            "frequency_hz": np.round(self.frequency_hz, 3).tolist(),
            "ports": list(self.ports),
            "scheme": self.scheme,
            "order": self.order,
            "step_deg": self.step_deg,
            "states": list(self.states),
            "settings": self.settings,
            "predicted": self.predicted,
            "inputs": self.inputs,
        }

    @classmethod
    def from_dict(cls, data: dict[str, Any]) -> Plan:
        """Rebuild a plan from `as_dict`; raises `InputError` if it is not one of ours."""
        if data.get("format") != PLAN_FORMAT:
            raise InputError([f"plan: format = {data.get('format')!r}: must be {PLAN_FORMAT} (version)"])
        try:
            return cls(
                axes=tuple(data["axes"]),
                targets_deg=np.asarray(data["targets_deg"], float).reshape(-1, len(data["axes"])),
                role=np.asarray(data["role"], np.int64),
                slice_index=np.asarray(data["slice_index"], np.int64),
                pass_index=np.asarray(data["pass_index"], np.int64),
                state_index=np.asarray(data["state_index"], np.int64),
                line_index=np.asarray(data["line_index"], np.int64),
                frequency_hz=np.asarray(data["frequency_hz"], float),
                ports=tuple(data["ports"]),
                scheme=data["scheme"],
                order=data["order"],
                step_deg=data["step_deg"],
                states=tuple(data["states"]),
                settings=data["settings"],
                predicted=data["predicted"],
                inputs=data["inputs"],
                coordinates_deg=np.asarray(data["coordinates_deg"], float) if "coordinates_deg" in data else None,
                half_turned=np.asarray(data["half_turned"], bool) if "half_turned" in data else None,
            )
        except (KeyError, TypeError, ValueError) as error:
            raise InputError([f"plan: field missing or malformed: {error}"]) from None
