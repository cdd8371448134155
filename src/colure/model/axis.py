"""One motor axis: travel, speed, and how its readout maps to our angle."""

from __future__ import annotations

from typing import Literal

from pydantic import Field, model_validator

from colure.geometry.kinematics import AxisMap
from colure.model.loading import Section, number


class Axis(Section):
    """One motor axis: how far, how fast, and how its readout maps to our angle.

    following_error_deg
        How far the readout may lag behind the commanded motion at standstill; at speed a
        tenth of a second's travel is allowed on top.
    modulo_deg
        The controller's readout wraps after this angle; turns are then counted and journalled.
    jerk_deg_s3
        How fast the controller lets the acceleration change; unlimited (trapezoidal speed) if left out.
    approach_deg
        Positions are approached with growing readout from this far below, so that backlash always
        lies on the same side; 0 approaches from wherever the axis comes.
    wrap_budget_deg
        Largest angle from `zero_deg` either way that cables survive, whole turns included.
    position_error_deg
        How far the axis stands beside its readout, at random from point to point, expanded (k = 2); 0: not declared.
    min_deg, max_deg
        Travel limits of the readout. No target beyond them is ever commanded.
    speed_deg_s, acceleration_deg_s2
        Of a move, as the controller is set; durations follow from them.
    settle_s
        Wait after a move before the sweep starts.
    sense
        1 if the readout counts the way Colure counts the angle, -1 if the other way.
    zero_deg
        Readout at which the angle of Colure is zero.
    readback_tolerance_deg
        Largest distance between target and readout at which a point may be measured.
    home_deg
        Readout at which the axis is parked, and to which it returns after homing.
    torque_nm
        Torque that the axis can deliver; loads are checked against it.
    backlash_deg
        Play of the gear; it enters the uncertainty of positions approached from either side.
    """

    min_deg: float = number("deg", -3600, 3600, -180.0)
    max_deg: float = number("deg", -3600, 3600, 180.0)
    speed_deg_s: float = number("deg/s", 0.01, 1000)
    acceleration_deg_s2: float = number("deg/s^2", 0.01, 10000)
    settle_s: float = number("s", 0, 60, 0.25)
    jerk_deg_s3: float | None = Field(default=None, ge=0.01, le=1e7, json_schema_extra={"unit": "deg/s^3"})
    approach_deg: float = number("deg", 0, 30, 0.0)
    sense: Literal[1, -1] = Field(default=1, json_schema_extra={"unit": "1 or -1"})
    zero_deg: float = number("deg", -3600, 3600, 0.0)
    readback_tolerance_deg: float = number("deg", 0.0001, 5, 0.02)
    position_error_deg: float = number("deg", 0, 10, 0.0)
    home_deg: float = number("deg", -3600, 3600, 0.0)
    following_error_deg: float = number("deg", 0.001, 90, 1.0)
    torque_nm: float | None = Field(default=None, ge=0.001, le=1e6, json_schema_extra={"unit": "N m"})
    backlash_deg: float = number("deg", 0, 10, 0.0)
    modulo_deg: float | None = Field(default=None, ge=1, le=3600, json_schema_extra={"unit": "deg"})
    wrap_budget_deg: float | None = Field(default=None, ge=1, le=36000, json_schema_extra={"unit": "deg"})

    @model_validator(mode="after")
    def _ordered(self) -> Axis:
        # A joint that shifts is written in millimetres: its entries end in mm.
        unit = self.unit
        if self.max_deg <= self.min_deg:
            raise ValueError(f"max_{unit} = {self.max_deg:g} must be above min_{unit} = {self.min_deg:g} {unit}")
        if not self.min_deg <= self.home_deg <= self.max_deg:
            raise ValueError(
                f"home_{unit} = {self.home_deg:g} must be from {self.min_deg:g} to {self.max_deg:g} {unit}"
            )
        return self

    @property
    def fixed(self) -> bool:
        """Tell whether this axis does not turn: it has no travel at all."""
        return self.min_deg == self.max_deg == self.zero_deg == self.home_deg == 0.0

    @property
    def why_fixed(self) -> str:
        """Why this axis goes nowhere, to end a refusal with; empty for an axis that turns."""
        return "; turntable = true: only azimuth turns" if self.fixed else ""

    @property
    def jerk(self) -> float:
        """Jerk limit in deg/s^3, infinite where none is declared."""
        return float("inf") if self.jerk_deg_s3 is None else self.jerk_deg_s3

    @property
    def map(self) -> AxisMap:
        """The axis as the geometry sees it."""
        return AxisMap(sense=self.sense, zero_deg=self.zero_deg, min_deg=self.min_deg, max_deg=self.max_deg)

    @property
    def unit(self) -> str:
        """Unit of the readout."""
        return "deg"
