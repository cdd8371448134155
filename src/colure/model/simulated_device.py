"""The device that the simulated chamber holds: table `[device]` of twin.toml.

Lengths are those of the device itself; `position_mm` is where its centre lies relative to the axes' intersection, in
the device frame. Invented devices for rehearsals: nothing of this reaches a measurement of a real antenna.
"""

from __future__ import annotations

from typing import Annotated, Any, Literal

from pydantic import Field, model_validator

from colure.model.loading import Millimetres3, Section, number

Degrees2 = tuple[Annotated[float, Field(ge=-89, le=89)], Annotated[float, Field(ge=-89, le=89)]]
Place = tuple[Annotated[int, Field(ge=0, le=199)], Annotated[int, Field(ge=0, le=199)]]
Polarization = Literal["linear", "right", "left", "elliptical"]
Sense = Literal["right", "left"]


def optional(unit: str, low: float, high: float) -> Any:
    """Return the field of a number that may be left out."""
    return Field(default=None, ge=low, le=high, json_schema_extra={"unit": unit})


class SimulatedAntenna(Section):
    """What every kind has.

    kind
        What the device is; each kind has entries of its own.
    efficiency_db
        Radiated over accepted power.
    reflection_db, reflection_deg
        S11 at the device's connector; it lowers the realized gain, and the total efficiency with it. None: matched.
    resonance_ghz, resonance_q
        Where the reflection is that of a resonance: its frequency, where S11 is reflection_db, and its loaded width: away from
        it the reflection grows as that of a series circuit whose reactance is resistance x Q (f / f0 - f0 / f). None: S11 is the
        same at all frequencies.
    position_mm
        The device's centre relative to the axes' intersection; `offset_mm` of device.toml if left out.
    """

    efficiency_db: float = number("dB", -60, 0, 0.0)
    reflection_db: float | None = optional("dB", -80, -0.1)
    reflection_deg: float = number("deg", -360, 360, 0.0)
    resonance_ghz: float | None = optional("GHz", 0.03, 1100)
    resonance_q: float | None = optional("1", 0.5, 10000)
    position_mm: Millimetres3 | None = None

    @model_validator(mode="after")
    def _resonance(self) -> SimulatedAntenna:
        if (self.resonance_ghz is None) != (self.resonance_q is None):
            raise ValueError("resonance_ghz and resonance_q belong together (GHz, 1)")
        if self.resonance_ghz is not None and self.reflection_db is None:
            raise ValueError("resonance_ghz needs reflection_db: S11 at the resonance (dB)")
        return self


class PolarizedAntenna(SimulatedAntenna):
    """A kind whose polarization is free; what is left out is as device.toml says.

    polarization
        Of the wave towards +z, IEEE Std 145 sense.
    slant_deg
        Direction of the linear polarization from x towards y.
    axial_ratio_db, sense, tilt_deg
        Ellipse with `elliptical` (and with `right` or `left`, where the axial ratio is 0 dB if left out): major over
        minor axis, its sense, and the major axis from x towards y.
    cross_polar_db, cross_polar_deg
        An orthogonal part of the field relative to the wanted one, in level and phase.
    magnetic_ratio
        Magnetic over electric moment of every source, r: the front is (1 + r) / (1 - r) times as strong as the back.
    """

    polarization: Polarization | None = None
    slant_deg: float | None = optional("deg", -180, 180)
    axial_ratio_db: float | None = optional("dB", 0, 60)
    sense: Sense = "right"
    tilt_deg: float = number("deg", -180, 180, 0.0)
    cross_polar_db: float | None = optional("dB", -200, 0)
    cross_polar_deg: float = number("deg", -360, 360, 90.0)
    magnetic_ratio: float = number("1", 0, 1, 0.94)

    @model_validator(mode="after")
    def _ellipse(self) -> PolarizedAntenna:
        if self.polarization == "elliptical" and self.axial_ratio_db is None:
            raise ValueError("polarization = 'elliptical' needs axial_ratio_db (dB)")
        return self


class SimulatedPanel(PolarizedAntenna):
    """A printed panel: rows along y, columns along x.

    rows, columns
        Number of elements along y and along x.
    seed
        Start of the random numbers from which the elements' errors are drawn.
    pitch_mm
        Element distance; half a wavelength at `centre_ghz` if left out.
    taper
        Amplitude over rows and columns: 1 - taper + taper cos(pi u / width).
    error, cross_error
        Rms of the real and of the imaginary part of every element's random error, co- and cross-polar.
    steer_deg
        Azimuth (towards x) and elevation (towards y) of the beam, by phase.
    centre_ghz, half_band_ghz, feed_slope_deg, feed_loss_db
        The feed network: phase at the edge column at the end of its band, loss there; the goal's band if left out.
    dead, misfed, misfeed_deg
        [row, column] of elements without excitation, and of elements fed with a wrong phase.
    """

    kind: Literal["panel"]
    rows: int = Field(ge=1, le=200, json_schema_extra={"unit": "rows"})
    columns: int = Field(ge=1, le=200, json_schema_extra={"unit": "columns"})
    pitch_mm: float | None = optional("mm", 0.01, 10000)
    taper: float = number("1", 0, 1, 0.45)
    error: float = number("1", 0, 1, 0.03)
    cross_error: float = number("1", 0, 1, 0.035)
    cross_polar_db: float | None = Field(
        default=-24.436974992327126,  # 0.06 as an amplitude
        ge=-200,
        le=0,
        json_schema_extra={"unit": "dB"},
    )
    magnetic_ratio: float = number("1", 0, 1, 0.88)
    steer_deg: Degrees2 = (0.0, 0.0)
    centre_ghz: float | None = optional("GHz", 0.03, 1100)
    half_band_ghz: float | None = optional("GHz", 0.000001, 1100)
    feed_slope_deg: float = number("deg", -180, 180, 6.0)
    feed_loss_db: float = number("dB", 0, 20, 0.15)
    dead: tuple[Place, ...] = ()
    misfed: tuple[Place, ...] = ()
    misfeed_deg: float = number("deg", -360, 360, 75.0)
    seed: int = Field(default=24, ge=0, le=2**31, json_schema_extra={"unit": "integer"})

    @model_validator(mode="after")
    def _inside(self) -> SimulatedPanel:
        for name in ("dead", "misfed"):
            for row, column in getattr(self, name):
                if row >= self.rows or column >= self.columns:
                    raise ValueError(
                        f"{name} holds [{row}, {column}]: must be below rows = {self.rows} and columns = {self.columns}"
                    )
        return self


class SimulatedHorn(PolarizedAntenna):
    """A pyramidal horn, E along x with slant 0: field cos(pi y / a), quadratic phase of both flares.

    aperture_a_mm, aperture_b_mm
        Width in the H plane (y) and in the E plane (x).
    slant_e_mm, slant_h_mm
        Distances from the virtual apexes to the aperture (R_E, R_H); 1e6 for none.
    edge_db
        Further amplitude taper towards the E-plane walls, as with corrugations: level at the wall.
    asymmetry
        Linear amplitude slope over the E plane: 1 + asymmetry at +x wall, 1 - asymmetry at the other.
    bent_wall_mm
        The wall at +x is bent outwards by so much at its edge: the path there is longer.
    lump_mm, lump_db, lump_deg
        A lump in the aperture at (x, y) that radiates by itself: level relative to the whole horn's moment, and phase.
    """

    kind: Literal["horn"]
    aperture_a_mm: float = number("mm", 0.1, 10000)
    aperture_b_mm: float = number("mm", 0.1, 10000)
    slant_e_mm: float = number("mm", 1, 1e7)
    slant_h_mm: float = number("mm", 1, 1e7)
    edge_db: float = number("dB", -60, 0, 0.0)
    asymmetry: float = number("1", -1, 1, 0.0)
    bent_wall_mm: float = number("mm", -1000, 1000, 0.0)
    lump_mm: tuple[Annotated[float, Field(ge=-5000, le=5000)], Annotated[float, Field(ge=-5000, le=5000)]] = (0.0, 0.0)
    lump_db: float | None = optional("dB", -80, 0)
    lump_deg: float = number("deg", -360, 360, 0.0)


class SimulatedAperture(PolarizedAntenna):
    """A plane aperture, rectangular or circular.

    width_mm, height_mm, diameter_mm
        Rectangle along x and y, or circle.
    taper
        Rectangle: cos^taper along both sides; circle: (1 - r^2)^taper. 0 is even.
    pedestal
        Share of the amplitude at the edge: pedestal + (1 - pedestal) x taper.
    edge_phase_deg
        Quadratic phase at the rim of a circle, at the middle of a rectangle's sides.
    random_phase_deg, correlation_mm, seed
        Rms of a random phase over the aperture, as of a rough reflector, and the radius over which it is alike (one
        wavelength at band centre if left out).
    steer_deg
        Azimuth and elevation of the beam, by linear phase.
    shape
        `rectangular` or `circular`.
    """

    kind: Literal["aperture"]
    shape: Literal["rectangular", "circular"] = "rectangular"
    width_mm: float | None = optional("mm", 0.1, 10000)
    height_mm: float | None = optional("mm", 0.1, 10000)
    diameter_mm: float | None = optional("mm", 0.1, 10000)
    taper: float = number("1", 0, 8, 0.0)
    pedestal: float = number("1", 0, 1, 0.0)
    edge_phase_deg: float = number("deg", -3600, 3600, 0.0)
    random_phase_deg: float = number("deg", 0, 180, 0.0)
    correlation_mm: float | None = optional("mm", 0.001, 10000)
    steer_deg: Degrees2 = (0.0, 0.0)
    seed: int = Field(default=24, ge=0, le=2**31, json_schema_extra={"unit": "integer"})

    @model_validator(mode="after")
    def _sized(self) -> SimulatedAperture:
        round_one = self.shape == "circular"
        wanted = ("diameter_mm",) if round_one else ("width_mm", "height_mm")
        other = ("width_mm", "height_mm") if round_one else ("diameter_mm",)
        missing = [name for name in wanted if getattr(self, name) is None]
        excess = [name for name in other if getattr(self, name) is not None]
        if missing or excess:
            raise ValueError(
                f"shape = {self.shape!r} needs {' and '.join(wanted)} (mm)"
                + (f" and no {' and no '.join(excess)}" if excess else "")
            )
        return self


class SimulatedPatch(PolarizedAntenna):
    """A rectangular patch: two radiating edges along y, one resonant length apart along x (slant 0).

    length_mm, width_mm
        Distance of the edges, and their length; 0.35 and 0.45 wavelengths at band centre if left out.
    """

    kind: Literal["patch"]
    length_mm: float | None = optional("mm", 0.01, 10000)
    width_mm: float | None = optional("mm", 0.01, 10000)
    magnetic_ratio: float = number("1", 0, 1, 0.85)


class SimulatedDipole(SimulatedAntenna):
    """A straight thin dipole with sinusoidal current, fed in the middle.

    axis
        x, y or z; along the slant of device.toml if left out.
    length_mm
        Whole length; 0 is elementary, half a wavelength at band centre if left out.
    """

    kind: Literal["dipole"]
    axis: Literal["x", "y", "z"] | None = None
    length_mm: float | None = optional("mm", 0, 10000)


class SimulatedCrossedDipoles(SimulatedAntenna):
    """Two crossed dipoles in quadrature (turnstile): circular along the normal, linear in their plane.

    normal
        Axis at right angles to both dipoles.
    polarization
        Sense of the wave towards the positive normal; device.toml's if that is circular, else right.
    length_mm
        As for a dipole.
    """

    kind: Literal["crossed-dipoles"]
    normal: Literal["x", "y", "z"] = "z"
    polarization: Sense | None = None
    length_mm: float | None = optional("mm", 0, 10000)


class SimulatedHelix(SimulatedAntenna):
    """A helix along z that radiates endfire (axial mode): a travelling current on a wire.

    turns, circumference_mm, spacing_mm
        Circumference 1 and spacing 0.225 wavelengths at band centre if left out.
    polarization
        Sense of its winding; device.toml's if that is circular, else right.
    """

    kind: Literal["helix-like", "helix"]
    turns: int = Field(default=4, ge=1, le=50, json_schema_extra={"unit": "turns"})
    circumference_mm: float | None = optional("mm", 0.1, 10000)
    spacing_mm: float | None = optional("mm", 0.1, 10000)
    polarization: Sense | None = None


class SimulatedDipoles(SimulatedAntenna):
    """Elementary sources from a CSV file beside twin.toml.

    file
        Header x_mm,y_mm,z_mm,p_x_re,p_x_im,p_y_re,p_y_im,p_z_re,p_z_im, optionally m_x_re ... m_z_im and frequency_hz.
        Places in the device frame from the axes' intersection; electric moments in A m, magnetic ones in V m, peak
        phasors. With frequency_hz every frequency lists the same places; between frequencies moments are interpolated.
    position_mm
        Further shift of all sources; none if left out.
    """

    kind: Literal["dipoles"]
    file: Annotated[str, Field(min_length=1, max_length=500)]


SimulatedDevice = Annotated[
    SimulatedPanel
    | SimulatedHorn
    | SimulatedAperture
    | SimulatedPatch
    | SimulatedDipole
    | SimulatedCrossedDipoles
    | SimulatedHelix
    | SimulatedDipoles,
    Field(discriminator="kind"),
]
