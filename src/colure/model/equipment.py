"""The laboratory's equipment and its calibrations, from equipment.toml."""

from __future__ import annotations

from datetime import date
from typing import Annotated, Literal

from pydantic import Field, model_validator

from colure.model.loading import Section

EquipmentText = Annotated[str, Field(max_length=300)]
EquipmentKind = Literal["analyzer", "horn", "probe", "cable", "adapter", "positioner", "other"]


class Equipment(Section):
    """One piece of equipment.

    kind
        What it is.
    name
        What the laboratory calls it.
    serial
        Serial or inventory number: with it the piece is identified.
    certificate
        Number of the calibration certificate.
    certificate_file
        File of the certificate, beside equipment.toml.
    uncertainty
        Uncertainty that the certificate states, with its unit, such as `0.3 dB (k = 2)`.
    calibrated, due
        Dates of the calibration and of the next one.
    """

    kind: EquipmentKind
    name: EquipmentText
    serial: EquipmentText = ""
    certificate: EquipmentText = ""
    certificate_file: Annotated[str, Field(max_length=200)] = ""
    uncertainty: EquipmentText = ""
    calibrated: date | None = None
    due: date | None = None

    @model_validator(mode="after")
    def _ordered(self) -> Equipment:
        if self.calibrated is not None and self.due is not None and self.due <= self.calibrated:
            raise ValueError(f"{self.name}: due = {self.due}: must be after calibrated = {self.calibrated}")
        return self

    @property
    def label(self) -> str:
        """Kind, name and serial number, as sentences name it."""
        return f"{self.kind} {self.name}" + (f" ({self.serial})" if self.serial else "")


class Register(Section):
    """Everything that takes part in a measurement.

    item
        The pieces, one table `[[item]]` each.
    """

    item: tuple[Equipment, ...] = ()

    def warnings(self, day: date) -> list[str]:
        """Return one sentence for every piece that was overdue on a day, or of which nobody knows when it is due."""
        sentences = []
        for one in self.item:
            if one.due is None:
                sentences.append(
                    f"{one.label}: no due date is stated in equipment.toml; whether its calibration holds is unknown"
                )
            elif one.due < day:
                late = (day - one.due).days
                sentences.append(
                    f"{one.label}: calibration was due on {one.due}, {late} days before {day}; calibrate it, or correct equipment.toml"
                )
        return sentences
