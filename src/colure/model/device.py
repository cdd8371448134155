"""The device under test, from device.toml."""

from __future__ import annotations

import math
import re
from typing import Annotated, Literal

import numpy as np
from pydantic import Field, model_validator

from colure.geometry.conventions import SPEED_OF_LIGHT, FloatArray, Handedness, amplitude_db
from colure.model.alike import alike_names
from colure.model.loading import Millimetres3, Section, number


class Elements(Section):
    """The element grid of a panel: rows along y, columns along x, centred on the device.

    pattern
        What every element radiates by itself: `estimated` finds one pattern that all of them share, `panel` takes
        (1 + cos theta)/2 of the co-polar vector.
    rows, columns
        Number of elements along y and along x.
    pitch_mm
        Distance between neighbours.
    """

    rows: int = Field(ge=1, le=200, json_schema_extra={"unit": "rows"})
    columns: int = Field(ge=1, le=200, json_schema_extra={"unit": "columns"})
    pitch_mm: float = number("mm", 0.01, 10000)
    pattern: Literal["estimated", "panel"] = "estimated"

    def places_m(self, centre_m: FloatArray) -> FloatArray:
        """Return where the elements stand (element, 3), metres: row by row from -y, from -x within a row, about a centre (3,)."""
        y, x = (1e-3 * self.pitch_mm * (np.arange(n) - (n - 1) / 2) for n in (self.rows, self.columns))
        yy, xx = np.meshgrid(y, x, indexing="ij")
        return np.asarray(np.stack([xx.ravel(), yy.ravel(), np.zeros(xx.size)], axis=-1) + centre_m)


class States(Section):
    """Beams, modes or channels of the device, and how it is told to take one.

    Either `resource` with `set` (and optionally `acknowledge`, `readback` with `expect`), or `program`: a
    command and its arguments, run without a shell, exit code 0 when the state is taken; or neither, where
    chamber.toml has an instrument with role `state`. `{index}` and `{name}` are filled in everywhere.

    loop
        `inner`: all states at every position; `outer`: the whole scan for one state after the other.
    names
        Names of the states, in their order; left out where `codes` names a file, which names them.
    codes
        CSV file beside device.toml that says what every element of an array is told in every state: `colure codes` writes it.
    command_error_db, command_error_deg
        Rms by which an element misses a command in level and phase: an error of its own for every element and command, the same
        each time. 0: commands are exact.
    settle_s
        Wait after a state was taken.
    timeout_s
        How long taking a state may last.
    resource
        Address of what switches the states.
    set
        Command that takes a state.
    acknowledge
        Pattern of the answer to that command; left out: it has no answer.
    readback, expect
        Query of the state, and the answer that proves it.
    program
        Command and arguments of a program that takes a state.
    """

    names: tuple[Annotated[str, Field(pattern=r"^[A-Za-z0-9_.+-]{1,60}$")], ...] = ()
    codes: Annotated[str, Field(min_length=1, max_length=200)] | None = None
    command_error_db: float = number("dB", 0, 6, 0.0)
    command_error_deg: float = number("deg", 0, 45, 0.0)
    loop: Literal["inner", "outer"] = "inner"
    settle_s: float = number("s", 0, 600, 0.0)
    timeout_s: float = number("s", 0.1, 600, 10.0)
    resource: str | None = None
    set: str | None = None
    acknowledge: str | None = None
    readback: str | None = None
    expect: str = "{index}"
    program: tuple[str, ...] = ()

    @model_validator(mode="after")
    def _one_way(self) -> States:
        if not self.names and self.codes is None:
            raise ValueError("names: missing; at least one state, or `codes`, the file that names them (names)")
        if len(set_of := frozenset(self.names)) != len(self.names):
            raise ValueError(f"names: {len(self.names)} given, {len(set_of)} different; each must be unique (names)")
        if alike := alike_names(self.names):
            raise ValueError(f"names: {alike}")
        if self.resource is not None and self.program:
            raise ValueError("states needs either resource with set, or program (one of the two)")
        if (self.resource is None) != (self.set is None):
            raise ValueError("states.resource needs states.set, the command with {index} or {name}")
        if self.acknowledge is not None:
            _require_pattern(self.acknowledge)
        return self

    @property
    def by_instrument(self) -> bool:
        """Tell whether an instrument of chamber.toml takes the states."""
        return self.resource is None and not self.program


def _require_pattern(text: str) -> None:
    try:
        re.compile(text)
    except re.error as error:
        raise ValueError(f"acknowledge = {text!r}: no regular expression: {error}") from None


class Device(Section):
    """What is known of the device before it is measured.

    size_mm
        Width (x), height (y) and depth (z) of the radiating part, metres times 1000.
    offset_mm
        Centre of that part relative to the axes' intersection, in the device frame.
    centre_of_gravity_mm
        Centre of gravity relative to that centre.
    polarization, axial_ratio_db, slant_deg
        Of the wave towards the boresight, IEEE Std 145 sense; the axial ratio counts where it is not linear. `slant_deg`
        is the direction of a linear polarization, or of the ellipse's major axis, from x towards y.
    beam_deg
        Azimuth and elevation of the device's strongest direction, where ties look: (0, 0) is the boresight. A dipole along z
        has a null there and is strongest at (90, 0).
    match_db
        Largest |S11| of the device, where no file says more.
    reflection
        One-port Touchstone file of the device beside device.toml; it counts where the cable's end reflects too.
    expected_side_lobe_db, expected_xpd_db, expected_front_to_back_db
        What uncertainties are forecast for: first side lobe relative to the peak (an evenly lit
        panel by default), co- over cross-polar and front over back, as positive dB.
    name
        Name of the device, for reports.
    note
        Anything worth keeping with the data.
    mass_kg
        Mass of device and mount on the last axis.
    expected_gain_dbi
        Gain expected; level, noise and exposure are planned with it.
    input_limit_dbm
        Largest power that the device stands at its port.
    eirp_dbm
        Of a device that transmits by itself: its equivalent isotropically radiated power. It takes no source, nothing can switch
        it off, and it counts for the exposure caution.
    elements
        Table of the element grid, if the device is an array.
    states
        Table of beams, modes or channels, if it has several.
    """

    name: Annotated[str, Field(min_length=1, max_length=200)]
    note: str = ""
    size_mm: tuple[
        Annotated[float, Field(ge=0.1, le=10000)],
        Annotated[float, Field(ge=0.1, le=10000)],
        Annotated[float, Field(ge=0.1, le=10000)],
    ]
    offset_mm: Millimetres3 = (0.0, 0.0, 0.0)
    centre_of_gravity_mm: Millimetres3 = (0.0, 0.0, 0.0)
    mass_kg: float = number("kg", 0.001, 10000, 1.0)
    polarization: Literal["linear", "right", "left", "elliptical"] = "linear"
    axial_ratio_db: float | None = Field(default=None, ge=0, le=60, json_schema_extra={"unit": "dB"})
    slant_deg: float = number("deg", -180, 180, 0.0)
    expected_gain_dbi: float = number("dBi", -20, 70)
    beam_deg: tuple[Annotated[float, Field(ge=-180, le=180)], Annotated[float, Field(ge=-90, le=90)]] = Field(
        default=(0.0, 0.0), json_schema_extra={"unit": "deg"}
    )
    expected_side_lobe_db: float | None = Field(default=None, ge=-80, le=-1, json_schema_extra={"unit": "dB"})
    expected_xpd_db: float = number("dB", 1, 80, 25.0)
    expected_front_to_back_db: float = number("dB", 1, 80, 22.0)
    match_db: float | None = Field(default=None, ge=-80, le=0, json_schema_extra={"unit": "dB"})
    reflection: str | None = None
    input_limit_dbm: float = number("dBm", -60, 60, 20.0)
    eirp_dbm: float | None = Field(default=None, ge=-60, le=100, json_schema_extra={"unit": "dBm"})
    elements: Elements | None = None
    states: States | None = None

    @model_validator(mode="after")
    def _sizes(self) -> Device:
        if min(self.size_mm) <= 0:
            raise ValueError(f"size_mm = {list(self.size_mm)} must be above 0 mm in every direction")
        if self.polarization == "elliptical" and self.axial_ratio_db is None:
            raise ValueError("polarization = 'elliptical' needs axial_ratio_db (dB)")
        return self

    def power_dbm(self, source_dbm: float) -> float:
        """Return the power at the device's port: that of the source, or what its own EIRP takes."""
        return source_dbm if self.eirp_dbm is None else self.eirp_dbm - self.expected_gain_dbi

    @property
    def hand(self) -> Handedness:
        """Sense that the device is declared circular with: +1 right-hand, -1 left-hand, 0 where it is linear or elliptical."""
        if self.polarization == "right":
            return 1
        return -1 if self.polarization == "left" else 0

    @property
    def reach_m(self) -> float:
        """Radius of the smallest sphere about the axes' intersection that holds the device, metres."""
        corner = np.abs(np.asarray(self.offset_mm)) + np.asarray(self.size_mm) / 2.0
        return float(np.linalg.norm(corner)) * 1e-3

    @property
    def lateral_m(self) -> float:
        """Radius of the smallest cylinder about the boresight axis through the axes' intersection that holds the device, metres."""
        x, y = (abs(o) + s / 2.0 for o, s in zip(self.offset_mm[:2], self.size_mm[:2], strict=True))
        return float(np.hypot(x, y)) * 1e-3

    @property
    def largest_dimension_m(self) -> float:
        """Diagonal of the device's front, metres."""
        return float(np.hypot(self.size_mm[0], self.size_mm[1])) * 1e-3

    @property
    def expected_gain(self) -> float:
        """The gain that is expected, linear."""
        return float(10.0 ** (self.expected_gain_dbi / 10.0))

    def nearness_db(self, *, range_length_m: float, frequency_hz: float) -> float:
        """What a finite distance may do to a level that is not transformed, dB.

        The wave's bulge takes 0.119 dB from a square aperture's peak at 2 D^2/lambda, with 1/R^2 (section 3). The phase centre, from
        which levels fall, lies beside the declared centre by half the device's depth or a quarter of its mean width, as far as
        horns' lie behind their mouths (common practice, no source). A horn of best gain, phase errors 1/4 and 3/8 of a wavelength,
        sends as from D^2/(10 lambda) behind its mouth (from its aperture integrals, derivable); elements of an array are fed in phase.
        """
        far = 2.0 * self.largest_dimension_m**2 * frequency_hz / SPEED_OF_LIGHT
        width, height, depth = self.size_mm
        as_horn_mm = 0.0 if self.elements else 1e3 * far / 20.0
        deep_mm = max(0.5 * depth, 0.25 * float(np.sqrt(width * height)), as_horn_mm)
        # The probe is nearest where the declared centre lies towards it, and the nearer side is louder by more than the farther quieter.
        nearest_m = max(range_length_m - 1e-3 * float(np.linalg.norm(self.offset_mm)), 0.01 * range_length_m)
        louder_db = -amplitude_db(max(1.0 - 1e-3 * deep_mm / nearest_m, 0.01))
        return float(0.119 * (far / nearest_m) ** 2 + louder_db)

    def probe_open_db(self, *, range_length_m: float, probe_gain_dbi: float, pattern_db: float | None) -> float:
        """What the probe's pattern leaves open of levels of a device beside its axis, dB, expanded (k = 2), over all directions.

        pattern_db
            How well the pattern is known 10 deg off the axis, dB; None where only the gain is: a beam of that gain is taken out
            (power exp(-G a^2 / 4)), and all of it is open.
        """
        aside = math.asin(min(1.0, 1e-3 * float(np.linalg.norm(self.offset_mm)) / range_length_m))
        if pattern_db is not None:
            return pattern_db * float(math.degrees(aside) / 10.0) ** 2
        return float(10.0 ** (probe_gain_dbi / 10.0) * aside**2 / (0.4 * math.log(10.0)))
