"""How absolute levels come about: a horn of known dimensions, a stored calibration of the range, or nothing."""

from __future__ import annotations

from typing import Literal

from pydantic import Field, model_validator

from colure.model.loading import Millimetres3, Section, number

#: Dimensions of the horn, without which there is no substitution.
SIDES = ("aperture_a_mm", "aperture_b_mm", "slant_e_mm", "slant_h_mm")
#: Methods that read the horn itself during the run.
WITH_HORN = ("switch", "swap")


class Reference(Section):
    """The reference for absolute levels: most often a pyramidal horn of known dimensions, measured in the same run.

    method
        How the reference comes into the path. `switch`: by a command during the run. `swap`: a person exchanges device and
        horn, the run waits for it. `stored`: no horn; a calibration of the range from an earlier run counts. `none`: no
        reference; patterns are relative, figures that need no gain are given.
    gain_table
        File beside chamber.toml with frequency_ghz,gain_dbi,uncertainty_db (k = 2): counts instead of
        the formula; the dimensions still give what the horn loses at short range.
    adapter
        Two-port Touchstone file of what is in the reference's path but not in the device's, port 1 to the switch.
    match_db
        Largest |S11| of the horn, where no file says more.
    reflection
        One-port Touchstone file of the horn: its gain counts what it accepts, not what arrives.
    source_reflection
        One-port Touchstone file of the cable's end as the antennas see it.
    cross_polar_db
        Purity of the horn on its axis, if it is known to be better than the probe's: the horn then
        also shows how impure the probe's ports are, and that is taken out.
    reconnect_db, reconnect_deg
        How well the path repeats from the horn's connection to the device's, expanded (k = 2); 0: not declared.
    aperture_a_mm, aperture_b_mm
        Inner width of the horn's mouth across the electric field (H plane), and along it (E plane).
    slant_e_mm, slant_h_mm
        Slant lengths of the flare in the E and the H plane, from the apex to the edge of the mouth.
    phase_centre_mm
        How far the horn's phase centre lies in front of its mouth's centre.
    offset_mm
        Where the mouth's centre stands with all axes at home: from the axes' intersection, along x, y, z of the device.
    offset_uncertainty_mm
        How well that place is known in each direction, expanded (k = 2); needed where the horn stands beside the intersection.
    gain_uncertainty_db
        Expanded uncertainty (k = 2) of the horn's gain.
    sweeps
        Sweeps of the reference at each visit; without a horn, sweeps of the resting device that show the noise.
    calibration
        File beside chamber.toml that `colure calibrate` wrote, for the method `stored`.
    valid_days
        How long a stored calibration may be used.
    drift_db_day, drift_deg_day
        How far the range's level and phase may move in a day after a stored calibration, expanded (k = 2).
    """

    method: Literal["switch", "swap", "stored", "none"] = "switch"
    aperture_a_mm: float | None = Field(default=None, ge=1, le=10000, json_schema_extra={"unit": "mm"})
    aperture_b_mm: float | None = Field(default=None, ge=1, le=10000, json_schema_extra={"unit": "mm"})
    slant_e_mm: float | None = Field(default=None, ge=1, le=100000, json_schema_extra={"unit": "mm"})
    slant_h_mm: float | None = Field(default=None, ge=1, le=100000, json_schema_extra={"unit": "mm"})
    phase_centre_mm: float = number("mm", -1000, 1000, 0.0)
    offset_mm: Millimetres3 = (0.0, 0.0, 0.0)
    offset_uncertainty_mm: float = number("mm", 0, 100, 0.0)
    gain_uncertainty_db: float = number("dB", 0.001, 5, 0.25)
    match_db: float | None = Field(default=None, ge=-80, le=0, json_schema_extra={"unit": "dB"})
    gain_table: str | None = None
    adapter: str | None = None
    reflection: str | None = None
    source_reflection: str | None = None
    cross_polar_db: float | None = Field(default=None, ge=-120, le=-10, json_schema_extra={"unit": "dB"})
    sweeps: int = Field(default=4, ge=1, le=1000, json_schema_extra={"unit": "sweeps"})
    reconnect_db: float = number("dB", 0, 20, 0.0)
    reconnect_deg: float = number("deg", 0, 180, 0.0)
    calibration: str | None = None
    valid_days: float = number("days", 0.01, 3650, 30.0)
    drift_db_day: float = number("dB per day", 0, 5, 0.0)
    drift_deg_day: float = number("deg per day", 0, 180, 0.0)

    @model_validator(mode="after")
    def _complete(self) -> Reference:
        missing = [name for name in SIDES if getattr(self, name) is None]
        if missing and self.method != "none":
            most = 10000 if missing[0].startswith("aperture") else 100000
            raise ValueError(
                f"reference.{missing[0]}: missing; needs a number from 1 to {most} mm, or method = 'none' for relative patterns"
            )
        if self.method == "swap" and self.reconnect_db == 0.0:
            raise ValueError(
                "method = 'swap' needs reconnect_db above 0: how well the level repeats when device and horn are exchanged (dB, k = 2)"
            )
        if self.method == "stored":
            self._require_stored()
        if any(self.offset_mm) and self.offset_uncertainty_mm == 0.0:
            raise ValueError(
                f"offset_mm = {list(self.offset_mm)} needs offset_uncertainty_mm above 0: how well that place is known (mm, k = 2)"
            )
        return self

    def _require_stored(self) -> None:
        if self.calibration is None:
            raise ValueError(
                "method = 'stored' needs calibration, a file that `colure calibrate` wrote beside chamber.toml"
            )
        if self.drift_db_day == 0.0:
            raise ValueError(
                "method = 'stored' needs drift_db_day above 0: how far the level moves in a day (dB, k = 2)"
            )

    @property
    def has_horn(self) -> bool:
        """Tell whether a run reads the horn itself."""
        return self.method in WITH_HORN

    @property
    def absolute(self) -> bool:
        """Tell whether levels are absolute."""
        return self.method != "none"

    @property
    def shows_purity(self) -> bool:
        """Tell whether the horn's known purity shows how impure the probe is."""
        return self.cross_polar_db is not None and self.absolute

    @property
    def sides_m(self) -> tuple[float, float, float, float]:
        """The horn's mouth (across the field, along it) and its slants (E, H), metres.

        Raises `ValueError` where they are not declared, which `none` alone allows.
        """
        sides = tuple(getattr(self, name) for name in SIDES)
        if None in sides:
            raise ValueError("reference: the horn has no dimensions here (mm)")
        a, b, slant_e, slant_h = (1e-3 * float(x) for x in sides)
        return a, b, slant_e, slant_h
