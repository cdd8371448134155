"""What is read from a pattern beyond the usual figures, from evaluation.toml."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field, model_validator

from colure.model.loading import Section, number

Degrees = Annotated[float, Field(ge=-360, le=360)]
Name = Annotated[str, Field(pattern=r"^[A-Za-z0-9_-]{1,40}$")]


class Window(Section):
    """A sector of directions: azimuth and elevation of the device frame (pole y), both ends included.

    name
        Name of the sector; figures carry it.
    azimuth_deg, elevation_deg
        From and to.
    """

    name: Name
    azimuth_deg: tuple[Degrees, Degrees]
    elevation_deg: tuple[Annotated[float, Field(ge=-90, le=90)], Annotated[float, Field(ge=-90, le=90)]]

    @model_validator(mode="after")
    def _ordered(self) -> Window:
        for name, (low, high) in (("azimuth_deg", self.azimuth_deg), ("elevation_deg", self.elevation_deg)):
            if high <= low:
                raise ValueError(f"sector {self.name!r}: {name} = [{low:g}, {high:g}]: high must be above low (deg)")
        if self.azimuth_deg[1] - self.azimuth_deg[0] > 360.0:
            raise ValueError(f"sector {self.name!r}: azimuth_deg must span at most 360 deg")
        return self


class Span(Section):
    """A bandwidth: where over the band a figure keeps what is asked of it, about the middle of the band.

    drop_db
        At most this far below its best value in the band; or `at_least`, or `at_most`.
    figure
        Name of the figure.
    at_least, at_most
        Value that it must keep.
    """

    figure: Name
    drop_db: float | None = Field(default=None, gt=0, le=60, json_schema_extra={"unit": "dB"})
    at_least: float | None = Field(default=None, ge=-1000, le=1000, json_schema_extra={"unit": "the figure's"})
    at_most: float | None = Field(default=None, ge=-1000, le=1000, json_schema_extra={"unit": "the figure's"})

    @model_validator(mode="after")
    def _one_way(self) -> Span:
        if sum(x is not None for x in (self.drop_db, self.at_least, self.at_most)) != 1:
            raise ValueError(f"bandwidth of {self.figure}: needs one of drop_db, at_least, at_most")
        return self


class Evaluation(Section):
    """Everything optional about the figures; the defaults are what a report of any antenna shows.

    beamwidth_levels_db
        Levels below the peak at which beamwidths are read besides half power.
    cut_planes_deg
        Planes through the peak besides E (0) and H (90), counted from E towards H.
    cuts_of
        What beamwidths, side lobes and nulls are read from: `intensity` (radiation intensity, both polarizations together,
        IEEE Std 145) or `co` (the co-polar component alone, Ludwig 3: of a circular device it is the linear one along `slant_deg`).
    principal_planes
        `auto`: E contains the co-polar vector that device.toml declares, as long as the field at the peak lies along it; else
        the major axis of the ellipse at the peak. `declared`: always the declared vector. `measured`: the major axis of
        the ellipse at the peak, middle frequency, is the co-polar reference too, and E contains it.
    components
        Partial gains at the peak besides co and cross: `circular` (both hands, circular cross-polar discrimination, axial ratio with its
        sense; given anyway for a device that is declared not linear), `theta-phi`, `ludwig-2` (azimuth and elevation, pole y).
    gain_units
        The peak gain in other units as well: `dBd` (over a half-wave dipole, 2.15 dB less), `linear`.
    rear_sector_deg
        Half angle of the cone about the direction opposite to the peak, for the front-to-rear ratio.
    cone_deg
        Half angle of the cone about the peak in which cross-polar discrimination is worst; the half-power
        beam if left out.
    up
        Axis of the device that points up where it is used: hemispheres and bands at the horizon are about it.
    horizon_bands_deg
        Partial powers within these angles of the horizon.
    coverage_percent
        Percentiles of the spherical coverage: this share of all solid angles sees at most that value.
    transmit_power_dbm
        Power available at the device's port: gives EIRP and total radiated power.
    sensitivity_dbm
        Power at the device's port that its receiver needs: gives effective and total isotropic sensitivity.
    commanded_deg
        Azimuth and elevation that every state (or `beam`, if the device has none) was told to point at.
    reference_axis_deg
        Azimuth and elevation of the axis that squint is stated against (IEEE Std 145); [0, 0] is the mechanical boresight, the device's
        z axis. Gives the squint from it, and the front-to-back ratio towards the direction opposite to it. Neither if left out.
    sectors
        Sectors whose partial power and levels are read.
    bandwidths
        Bandwidths that are read.
    """

    beamwidth_levels_db: tuple[Annotated[float, Field(gt=0, le=60)], ...] = (10.0,)
    cut_planes_deg: tuple[Annotated[float, Field(ge=0, lt=180)], ...] = ()
    cuts_of: Literal["intensity", "co"] = "intensity"
    principal_planes: Literal["auto", "declared", "measured"] = "auto"
    components: tuple[Literal["circular", "theta-phi", "ludwig-2"], ...] = ()
    gain_units: tuple[Literal["dBd", "linear"], ...] = ()
    rear_sector_deg: float = number("deg", 1, 90, 30.0)
    cone_deg: float | None = Field(default=None, ge=0.5, le=90, json_schema_extra={"unit": "deg"})
    up: Literal["x", "y", "z"] = "y"
    horizon_bands_deg: tuple[Annotated[float, Field(gt=0, lt=90)], ...] = ()
    coverage_percent: tuple[Annotated[float, Field(gt=0, lt=100)], ...] = ()
    transmit_power_dbm: float | None = Field(default=None, ge=-100, le=100, json_schema_extra={"unit": "dBm"})
    sensitivity_dbm: float | None = Field(default=None, ge=-200, le=50, json_schema_extra={"unit": "dBm"})
    commanded_deg: dict[Name, tuple[Degrees, Degrees]] = Field(default_factory=dict)
    reference_axis_deg: tuple[Degrees, Annotated[float, Field(ge=-90, le=90)]] | None = Field(
        default=None, json_schema_extra={"unit": "deg"}
    )
    sectors: tuple[Window, ...] = ()
    bandwidths: tuple[Span, ...] = ()
