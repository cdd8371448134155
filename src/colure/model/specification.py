"""What a measurement is held against: limits on figures and masks on cuts, from a specification file."""

from __future__ import annotations

from itertools import pairwise
from pathlib import Path
from typing import Annotated, Literal

from pydantic import Field, ValidationError, model_validator

from colure.errors import InputError
from colure.model.evaluation import Name
from colure.model.loading import Section, load
from colure.model.tables import read_numbers

Rule = Literal["simple", "guard-band"]
Formula = Literal[
    "table", "fcc-25.209", "itu-r-f.699", "itu-r-f.1336-omni", "itu-r-f.1336-sector-azimuth",
    "itu-r-f.1336-sector-elevation",
    "itu-r-ra.1631", "itu-r-s.465", "itu-r-s.580",
]  # fmt: skip
Angle = Annotated[float, Field(ge=-180, le=180)]
Level = Annotated[float, Field(ge=-200, le=200)]
Band = tuple[Annotated[float, Field(gt=0, le=1000)], Annotated[float, Field(gt=0, le=1000)]]


class Limit(Section):
    """A limit on a figure over a band (GHz; all frequencies if left out).

    figure
        Name of the figure.
    at_least, at_most
        Bounds, in the figure's unit.
    band_ghz
        From and to; left out: every frequency.
    """

    figure: Name
    at_least: float | None = Field(default=None, ge=-1000, le=1000, json_schema_extra={"unit": "the figure's"})
    at_most: float | None = Field(default=None, ge=-1000, le=1000, json_schema_extra={"unit": "the figure's"})
    band_ghz: Band | None = None

    @model_validator(mode="after")
    def _bounded(self) -> Limit:
        if self.at_least is None and self.at_most is None:
            raise ValueError(f"limit on {self.figure}: needs at_least or at_most")
        if self.at_least is not None and self.at_most is not None and self.at_least > self.at_most:
            raise ValueError(
                f"limit on {self.figure}: at_least = {self.at_least:g} is above at_most = {self.at_most:g}"
            )
        return self


class Mask(Section):
    """A curve that a cut through the peak must stay below (or above, `side = "lower"`).

    plane
        `E`, `H`, `all` (the worst of planes 15 deg apart), or an angle in degrees from E towards H.
    component
        `co`, `cross` or `total`. Co-polar is the Ludwig-3 component along `slant_deg`; of a device that is declared circular,
        and of a file whose wave is circular at the peak (axial ratio below 3 dB), it is the hand; cross-polar is the other one.
    relative
        True: levels count from the measured peak; False: absolute gain in dBi.
    formula
        `table` for `points`, or a published curve by name.
    points
        [angle in degrees from the peak, level] in rising order, straight in between; angles from 0 hold for both sides.
    file
        CSV file beside the specification with the header angle_deg,level_db instead of `points`.
    diameter_mm, peak_gain_dbi
        What published curves need: the reflector's diameter, and its peak gain (the measured one if left out).
    beamwidth_deg
        `itu-r-f.1336-...`: half-power beamwidth in the mask's plane; the omnidirectional one from the peak gain if left out.
    elevation_beamwidth_deg
        `itu-r-f.1336-sector-azimuth`: half-power beamwidth in elevation; it sets the level behind the antenna up to 6 GHz. Left out:
        from the peak gain (F.1336 recommends 3.3), for azimuth beamwidths up to 120 deg.
    from_deg, to_deg
        Angles from the peak over which the mask is held against the cut.
    exceed_db, exceed_share, exceed_from_deg
        Exceedances allowed: by at most so many dB, on at most this share of the angles, no nearer to the peak than that.
    name
        Name of the mask, for the verdict.
    side
        `upper`: the cut must stay below; `lower`: above.
    band_ghz
        From and to; left out: every frequency.
    """

    name: Annotated[str, Field(min_length=1, max_length=100)]
    plane: Literal["E", "H", "all"] | Annotated[float, Field(ge=0, lt=180)] = "all"
    component: Literal["co", "cross", "total"] = "co"
    side: Literal["upper", "lower"] = "upper"
    relative: bool = False
    formula: Formula = "table"
    points: tuple[tuple[Angle, Level], ...] = ()
    file: Annotated[str, Field(pattern=r"^[A-Za-z0-9._-]{1,100}$")] | None = None
    diameter_mm: float | None = Field(default=None, gt=0, le=1e6, json_schema_extra={"unit": "mm"})
    peak_gain_dbi: float | None = Field(default=None, ge=-20, le=100, json_schema_extra={"unit": "dBi"})
    beamwidth_deg: float | None = Field(default=None, gt=0, le=180, json_schema_extra={"unit": "deg"})
    elevation_beamwidth_deg: float | None = Field(default=None, gt=0, le=180, json_schema_extra={"unit": "deg"})
    from_deg: float = Field(default=0.0, ge=0, le=180, json_schema_extra={"unit": "deg"})
    to_deg: float = Field(default=180.0, gt=0, le=180, json_schema_extra={"unit": "deg"})
    exceed_db: float = Field(default=0.0, ge=0, le=60, json_schema_extra={"unit": "dB"})
    exceed_share: float = Field(default=0.0, ge=0, le=1, json_schema_extra={"unit": "1"})
    exceed_from_deg: float = Field(default=0.0, ge=0, le=180, json_schema_extra={"unit": "deg"})
    band_ghz: Band | None = None

    @model_validator(mode="after")
    def _complete(self) -> Mask:
        if self.file is not None:
            if self.formula != "table" or self.points:
                raise ValueError(f"mask {self.name!r}: file goes with formula = 'table' and without points")
        elif self.formula == "table":
            if len(self.points) < 2:
                raise ValueError(f"mask {self.name!r}: points has {len(self.points)}, needs at least 2 (points)")
            angles = [a for a, _ in self.points]
            if any(b < a for a, b in pairwise(angles)):
                raise ValueError(f"mask {self.name!r}: angles of points must rise (deg)")
        elif self.points:
            raise ValueError(f"mask {self.name!r}: points only go with formula = 'table', not {self.formula!r}")
        if self.formula in ("itu-r-f.699", "itu-r-ra.1631", "itu-r-s.465", "itu-r-s.580") and self.diameter_mm is None:
            raise ValueError(f"mask {self.name!r}: diameter_mm: missing; {self.formula} depends on it (mm)")
        if self.formula.startswith("itu-r-f.1336-sector") and self.beamwidth_deg is None:
            raise ValueError(f"mask {self.name!r}: beamwidth_deg: missing; {self.formula} depends on it (deg)")
        wide = self.formula == "itu-r-f.1336-sector-azimuth" and (self.beamwidth_deg or 0.0) > 120.0
        if wide and self.elevation_beamwidth_deg is None:
            raise ValueError(
                f"mask {self.name!r}: elevation_beamwidth_deg: missing; it follows from the gain only to beamwidth_deg = 120 deg"
            )
        if self.to_deg <= self.from_deg:
            raise ValueError(
                f"mask {self.name!r}: to_deg = {self.to_deg:g} must be above from_deg = {self.from_deg:g} deg"
            )
        return self


class Specification(Section):
    """Limits and masks of one document, and how decisions are made.

    decision
        `simple`: the value alone decides (shared risk). `guard-band`: a pass needs the whole interval inside, a
        fail the whole interval outside; anything else is not decidable at this uncertainty (JCGM 106:2012).
    name
        Name of the specification.
    document
        Document it comes from; the report cites it.
    limits
        Limits on figures.
    masks
        Masks on cuts.
    """

    name: Annotated[str, Field(min_length=1, max_length=200)]
    document: str = ""
    decision: Rule = "guard-band"
    limits: tuple[Limit, ...] = ()
    masks: tuple[Mask, ...] = ()

    @model_validator(mode="after")
    def _something(self) -> Specification:
        if not self.limits and not self.masks:
            raise ValueError("specification: needs at least one of [[limits]] and [[masks]]")
        return self


def load_specification(path: Path) -> Specification:
    """Read a specification file, and the mask tables that it names beside it.

    Raises
    ------
    InputError
        If a file is missing or malformed; every fault is named.
    """
    specification = load(Specification, path)
    return specification.model_copy(
        update={"masks": tuple(_with_table(mask, path.parent) for mask in specification.masks)}
    )


def _with_table(mask: Mask, folder: Path) -> Mask:
    if mask.file is None:
        return mask
    if not (folder / mask.file).is_file():
        raise InputError([f"{mask.file}: cannot be read: there is no such file in {folder} (mask {mask.name!r}: file)"])
    values, _ = read_numbers(folder / mask.file, {"angle_deg": "deg", "level_db": "dB"})
    try:
        table = tuple((float(angle), float(level)) for angle, level in values)
        content = mask.model_dump() | {"points": table, "file": None}
        return Mask.model_validate(content)
    except ValueError as error:  # a fault of the validation is one too
        words = "; ".join(str(e["msg"]) for e in error.errors()) if isinstance(error, ValidationError) else str(error)
        raise InputError([f"{mask.file}: {words} (deg, dB)"]) from None
