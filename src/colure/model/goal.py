"""What is wanted from the measurement, from goal.toml."""

from __future__ import annotations

from typing import Annotated, Any, Literal

import numpy as np
from pydantic import Field, ValidationError, model_validator

from colure.geometry.conventions import FloatArray
from colure.model.bands import GoalBand, joined
from colure.model.distance_steps import DistanceSteps
from colure.model.identity import RunIdentity
from colure.model.loading import Section, number
from colure.model.scan import Angles, Scan, angles_of


def uncertainty(unit: str) -> Any:
    """Return the field of an uncertainty wanted: expanded, k = 2, in the figure's own unit."""
    words = "Expanded uncertainty (k = 2) that is good enough."
    return Field(default=None, gt=0, le=1000, description=words, json_schema_extra={"unit": unit})


class Want(Section):
    """Figures wanted and the expanded uncertainty (k = 2) that is good enough for each.

    Colure then looks for the quickest plan that keeps them; what goal.toml sets itself stays.
    """

    gain_dbi: float | None = uncertainty("dB")
    directivity_dbi: float | None = uncertainty("dB")
    efficiency_db: float | None = uncertainty("dB")
    beam_azimuth_deg: float | None = uncertainty("deg")
    beam_elevation_deg: float | None = uncertainty("deg")
    beamwidth_e_deg: float | None = uncertainty("deg")
    beamwidth_h_deg: float | None = uncertainty("deg")
    side_lobe_e_db: float | None = uncertainty("dB")
    side_lobe_h_db: float | None = uncertainty("dB")
    xpd_db: float | None = uncertainty("dB")
    front_to_back_db: float | None = uncertainty("dB")

    @property
    def wishes(self) -> dict[str, float]:
        """The figures that were named."""
        return {name: value for name, value in self.model_dump().items() if value is not None}


class Goal(Section):
    """Band, region, figures, dynamic range and polarization scheme wanted.

    wanted_level_db
        Level below the peak down to which the pattern should be right; sets the order.
    scheme
        `two-pass`: one probe port following the roll, at two roll offsets;
        `dual-port`: both ports of a dual-polarized probe in one pass;
        `one-pass`: one probe port along the device's own polarization, following the roll: half the
        time, but only the co-polar pattern at the range length, because a transform needs both;
        `auto`: dual-port if the probe has two ports, else two-pass.
    region_deg
        Polar angle from the boresight (+z) up to which the pattern is wanted; 180 is the whole sphere.
    swept_step_deg
        Distance between sweeps along a slice, if not `step_deg`: on the fly, finer ones cost no time.
    style
        `step`: move, settle, sweep; `fly`: the swept axis runs at constant speed through every
        slice while the analyzer sweeps.
    path
        `serpentine`: every other slice runs backwards; `one-way`: all slices run the same way.
    if_bandwidth_hz, power_dbm
        Instead of what chamber.toml says of the analyzer.
    reflection
        True: the device's own reflection (S11 at its connector) is measured in the run, at the start and before every boresight
        check; mismatch loss and the gain of the accepted power are figures then. chamber.toml must hold [one_port].
    gate
        True: a time gate must be able to part the chamber's echoes from the direct ray.
    want
        Figures and uncertainties wanted; whatever of style, swept_step_deg, oversampling and
        if_bandwidth_hz is left out is then chosen to keep them in the least time.
    until
        Figures and uncertainties at which the scan ends by itself; its slices then come ever finer, and after each even set
        of them the figures are read. What `want` plans for, `until` measures.
    trigger
        On the fly: `position`: the controller's pulses start every sweep; `time`: sweeps are
        started by the computer's clock and positions are read around them.
    buffered
        On the fly, by pulses: the analyzer keeps all sweeps of a slice and hands them over at its end. It must say that it waits
        for pulses before the axis starts, and as many sweeps as pulses and as positions that the controller latched must come.
    pulse_each
        With `buffered`: what one pulse starts: a whole `sweep`, read while the axis runs on, or one `frequency` of it, so that the
        place of every frequency is a pulse's whatever the speed. There are then as many pulses to a step as frequencies.
    order
        `plain`: slices side by side; `progressive`: ever finer, early and often an even part of them is
        complete.
    name
        Name of the campaign, for reports.
    start_ghz, stop_ghz, points
        The frequencies: first, last, and how many, evenly spaced. Left out with [[band]] or frequency_list.
    band
        Several bands in one sweep, each with its frequencies and, if wanted, its own IF bandwidth and power: a [[band]] table each,
        in rising order. Sharing one sweep, they share every direction.
    frequency_list
        CSV beside goal.toml with column frequency_ghz (or frequency_mhz, frequency_hz), rising; columns if_bandwidth_hz and
        power_dbm if wanted.
    step_deg
        Angle between slices; left out: the largest that the device's size allows.
    oversampling
        How many times denser than needed; more lowers the noise and shows stray signals.
    offset_deg
        Polarization offsets of a single probe port, one a pass, counted from the device's x towards y; co- and cross-polar then
        refer to the first. Left out: 0 and 90 deg, or the device's slant in one pass. One angle with two passes means that
        angle and 90 deg more; with two ports it is where port 1 stays.
    probe
        On roll over azimuth: `follows`: the probe turns with the device; `fixed`: it stays at the offset. On azimuth and
        elevation it always stays.
    dwell_s
        Step by step: rest at every point of the scan before its sweep, beyond settling.
    scan
        The operator's own directions and probe offsets instead of the grid that Colure would choose. A regular grid that is
        fine enough is transformed like any other; other directions are read at the range length, without a transform.
    distance_steps
        Table of range lengths at which the whole scan is repeated: the wave that bounces between probe and device comes out.
    run
        What every run of this campaign is kept and found by: tag, operator, serial, customer, order, note.
    monitor_ghz
        Frequency that charts, tables and live views show first; mid-band if left out.
    """

    name: Annotated[str, Field(min_length=1, max_length=200)]
    start_ghz: float = number("GHz", 0.03, 1100)
    stop_ghz: float = number("GHz", 0.03, 1100)
    points: int = Field(ge=1, le=100001, json_schema_extra={"unit": "frequencies"})
    band: tuple[GoalBand, ...] = ()
    frequency_list: Annotated[str, Field(min_length=1, max_length=200)] | None = None
    wanted_level_db: float = number("dB", -100, -10, -50.0)
    scheme: Literal["auto", "two-pass", "dual-port", "one-pass"] = "auto"
    region_deg: float = number("deg", 5, 180, 180.0)
    step_deg: float | None = Field(default=None, ge=0.05, le=45, json_schema_extra={"unit": "deg"})
    swept_step_deg: float | None = Field(default=None, ge=0.01, le=45, json_schema_extra={"unit": "deg"})
    oversampling: float = number("times the required density", 1.0, 10, 1.0)
    style: Literal["step", "fly"] = "step"
    trigger: Literal["position", "time"] = "position"
    buffered: bool = False
    pulse_each: Literal["sweep", "frequency"] = "sweep"
    order: Literal["plain", "progressive"] = "plain"
    path: Literal["serpentine", "one-way"] = "serpentine"
    if_bandwidth_hz: float | None = Field(default=None, ge=1, le=10e6, json_schema_extra={"unit": "Hz"})
    power_dbm: float | None = Field(default=None, ge=-60, le=30, json_schema_extra={"unit": "dBm"})
    offset_deg: Angles | None = None
    probe: Literal["follows", "fixed"] = "follows"
    dwell_s: float = number("s", 0, 600, 0.0)
    reflection: bool = False
    gate: bool = False
    want: Want | None = None
    until: Want | None = None
    scan: Scan | None = None
    distance_steps: DistanceSteps | None = None
    run: RunIdentity | None = None
    monitor_ghz: float | None = Field(default=None, ge=0.03, le=1100, json_schema_extra={"unit": "GHz"})

    @model_validator(mode="before")
    @classmethod
    def _ends_of_bands(cls, data: Any) -> Any:
        """Take first, last and number of the frequencies from the bands, where there are any."""
        if not isinstance(data, dict):
            return data
        if not data.get("band"):
            if data.get("frequency_list"):
                raise ValueError("frequency_list: is read together with its folder, as colure plan does")
            return data
        try:
            bands = [one if isinstance(one, GoalBand) else GoalBand.model_validate(one) for one in data["band"]]
        except (ValidationError, TypeError):
            # The field's own check says what is wrong with which band.
            return {"start_ghz": 1.0, "stop_ghz": 1.0, "points": 1, **data}
        every = joined(bands)
        ends = {"start_ghz": float(every[0] / 1e9), "stop_ghz": float(every[-1] / 1e9), "points": int(every.size)}
        for name, value in ends.items():
            if name in data and abs(float(data[name]) - value) > 1e-9:
                raise ValueError(
                    f"{name} = {data[name]}: must be left out with [[band]] or frequency_list (they say {value:g})"
                )
        return {**data, "band": bands, **ends}

    @model_validator(mode="after")
    def _ends(self) -> Goal:
        if self.stop_ghz < self.start_ghz:
            raise ValueError(f"stop_ghz = {self.stop_ghz:g} must be at least start_ghz = {self.start_ghz:g} GHz")
        if self.points == 1 and self.stop_ghz != self.start_ghz:
            raise ValueError("points = 1 needs start_ghz equal to stop_ghz (GHz)")
        if self.points > 1 and self.stop_ghz == self.start_ghz:
            raise ValueError(
                f"points = {self.points}: must be 1 where start_ghz and stop_ghz are both {self.start_ghz:g} GHz, or stop_ghz higher"
            )
        if self.monitor_ghz is not None and not self.start_ghz <= self.monitor_ghz <= self.stop_ghz:
            raise ValueError(
                f"monitor_ghz = {self.monitor_ghz:g}: must be from start_ghz = {self.start_ghz:g} to stop_ghz = {self.stop_ghz:g} GHz"
            )
        if self.scan is not None:
            self._require_nothing_twice()
        if self.offset_deg is not None:
            offsets = angles_of(self.offset_deg)
            if offsets.size > 8 or np.abs(offsets).max() > 360.0:
                raise ValueError(f"offset_deg = {self.offset_deg!r}: must be 1 to 8 angles from -360 to 360 deg")
        if self.style == "fly" and (self.dwell_s or (self.scan is not None and self.scan.dwell_s)):
            raise ValueError("dwell_s: must be 0 s on the fly (style = 'fly')")
        if self.buffered and (self.style != "fly" or self.trigger != "position"):
            raise ValueError(
                f"buffered = true: must be with style = 'fly' and trigger = 'position', are {self.style!r} and {self.trigger!r}"
            )
        if self.pulse_each == "frequency" and (not self.buffered or self.points < 2):
            raise ValueError(
                f"pulse_each = 'frequency': must be with buffered = true and at least 2 points, are {str(self.buffered).lower()} and "
                f"{self.points}"
            )
        return self

    @model_validator(mode="after")
    def _distances(self) -> Goal:
        if self.distance_steps is None:
            return self
        for name in ("scan", "until", "want"):
            if getattr(self, name) is not None:
                raise ValueError(f"{name}: must be left out with distance_steps: it is not done at several distances")
        if self.style == "fly":
            raise ValueError(
                "style = 'fly': must be 'step' with distance_steps: the same places are needed at every distance"
            )
        return self

    def _require_nothing_twice(self) -> None:
        """Raise `ValueError` for what [scan] decides and goal.toml sets beside it."""
        beside = ["scheme", "region_deg", "step_deg", "swept_step_deg", "oversampling", "order", "want", "until",
                  "offset_deg", "probe", "dwell_s"]  # fmt: skip
        given = [name for name in beside if getattr(self, name) != type(self).model_fields[name].default]
        if given:
            raise ValueError(f"[scan] decides {', '.join(given)}; leave {'it' if len(given) == 1 else 'them'} out")

    @property
    def progressive(self) -> bool:
        """Tell whether slices come ever finer: asked for, or because the scan may end before its last one."""
        return self.order == "progressive" or self.until is not None

    @property
    def co_polar_deg(self) -> float | None:
        """What co- and cross-polar refer to if offsets were set, degrees: the first one; None: the device's slant."""
        if self.scan is not None:
            return float(self.scan.offsets_deg[0])
        return None if self.offset_deg is None else float(angles_of(self.offset_deg)[0])

    @property
    def frequency_hz(self) -> FloatArray:
        """The frequencies in hertz, rising; evenly spaced unless there are bands or a list."""
        if self.band:
            return joined(self.band)
        return np.linspace(self.start_ghz * 1e9, self.stop_ghz * 1e9, self.points)

    @property
    def monitor_index(self) -> int:
        """Which of the frequencies is shown first."""
        return self.shown_index(self.frequency_hz)

    def shown_index(self, frequency_hz: FloatArray | list[float]) -> int:
        """Return which of some frequencies (n,) in Hz is shown first: the one to watch, or the middle one if they do not hold it."""
        if self.monitor_ghz is None or not np.min(frequency_hz) <= 1e9 * self.monitor_ghz <= np.max(frequency_hz):
            return int(np.size(frequency_hz) // 2)
        return int(np.argmin(np.abs(np.asarray(frequency_hz) - 1e9 * self.monitor_ghz)))
