"""A measured point as the journal keeps it: to bytes and back."""

from __future__ import annotations

import struct
from dataclasses import dataclass, field

import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray
from colure.values import holds_arrays

HEADER = "<qqqdddqq"
HEADER_BYTES = struct.calcsize(HEADER)


@dataclass(frozen=True, kw_only=True)
@holds_arrays
class Row:
    """One measured point; fields as in `colure.model.record.build_record`.

    conditions
        What the sensors said, in the order of the journal's entry `sensors`; empty without sensors.
    """

    plan_index: int
    role: int
    state_index: int
    time_s: float
    wall_time: float
    monotonic_s: float
    commanded_deg: FloatArray
    readback_deg: FloatArray
    rate_deg_s: FloatArray
    trace: ComplexArray
    flags: int
    conditions: FloatArray = field(default_factory=lambda: np.empty(0))

    def encode(self) -> bytes:
        """Return the row's content as bytes: a fixed header, positions, trace, and what the sensors said."""
        head = struct.pack(HEADER, self.plan_index, self.role, self.state_index, self.time_s, self.wall_time,
                           self.monotonic_s, self.flags, self.commanded_deg.size)  # fmt: skip
        places = np.concatenate([self.commanded_deg, self.readback_deg, self.rate_deg_s])
        return b"".join(
            [
                head,
                struct.pack("<qq", *self.trace.shape),
                np.ascontiguousarray(places, "<f8").tobytes(),
                np.ascontiguousarray(self.trace, "<c16").tobytes(),
                np.ascontiguousarray(self.conditions, "<f8").tobytes(),
            ]
        )

    @classmethod
    def decode(cls, blob: bytes) -> Row:
        """Rebuild a row from `encode`."""
        plan_index, role, state, time_s, wall, monotonic, flags, axes = struct.unpack_from(HEADER, blob, 0)
        frequencies, ports = struct.unpack_from("<qq", blob, HEADER_BYTES)
        places_at = HEADER_BYTES + 16
        commanded, readback, rate = np.frombuffer(blob, "<f8", count=3 * axes, offset=places_at).reshape(3, axes)
        trace = np.frombuffer(blob, "<c16", count=frequencies * ports, offset=places_at + 24 * axes)
        conditions = np.frombuffer(blob, "<f8", offset=places_at + 24 * axes + 16 * frequencies * ports)
        return cls(plan_index=plan_index, role=role, state_index=state, time_s=time_s, wall_time=wall,
                   monotonic_s=monotonic, commanded_deg=commanded, readback_deg=readback, rate_deg_s=rate,
                   trace=trace.reshape(frequencies, ports), flags=flags, conditions=conditions)  # fmt: skip
