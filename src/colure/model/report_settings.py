"""What a laboratory states in its report beyond the measurement, from report.toml; nothing here changes a number."""

from __future__ import annotations

from datetime import date
from typing import Annotated, Literal

from pydantic import Field, model_validator

from colure.model.loading import Section

ReportText = Annotated[str, Field(max_length=300)]
ReportWords = Annotated[str, Field(max_length=4000)]
#: Languages of a report.
Language = Literal["en", "de", "fr", "es"]


class Party(Section):
    """A laboratory or a customer: name and address.

    name
        Name as it stands in the report.
    address
        Postal address.
    contact
        Person, telephone or electronic mail.
    """

    name: ReportText = ""
    address: ReportText = ""
    contact: ReportText = ""


class Interval(Section):
    """Lowest and highest reading of a condition during the measurement.

    low, high
        In the unit that the entry names.
    """

    low: float
    high: float

    @model_validator(mode="after")
    def _ordered(self) -> Interval:
        if self.high < self.low:
            raise ValueError(f"[low = {self.low:g}, high = {self.high:g}]: high must not be below low")
        return self


class ReportSettings(Section):
    """Particulars that ISO/IEC 17025:2017, 7.8.2, asks for, and the form of the report. What is left out is printed as not stated.

    number
        The laboratory's own number of the report. Without it the report is known by its run and record.
    issue
        Number of the issue: 1, and one more each time the report is changed.
    changes
        What changed against the issue before; needed from issue 2 on.
    laboratory
        Who measured.
    location
        Where the measurement took place, if not at the laboratory's address.
    customer
        For whom. A customer named with the run (`--customer`) stands in for a missing name.
    received
        Date on which the device came.
    condition
        Condition of the device on arrival.
    authorized_by
        Who authorizes the report.
    method
        The laboratory's own name or number of its method.
    sampling
        Reference to a sampling plan, where the device was drawn from a lot.
    deviations
        Additions to, deviations or exclusions from the method.
    external
        Which results come from others.
    temperature_c, humidity_percent
        Lowest and highest reading during the measurement, in degrees Celsius and percent relative humidity.
    language
        Language of the report. What the full report has in English only, its first page says.
    form
        `full`, or `short`: two pages.
    logo
        File beside report.toml: PNG or SVG.
    sections
        Sections of the full report in their order; all of them if left out.
    figures
        Names of the figures that are listed; all of them if left out.
    frequencies_ghz
        Frequencies of the tables over frequency; all that were measured if left out.
    planes
        Planes whose cuts are drawn.
    """

    number: ReportText = ""
    issue: int = Field(default=1, ge=1, le=999)
    changes: ReportWords = ""
    laboratory: Party = Party()
    location: ReportText = ""
    customer: Party = Party()
    received: date | None = None
    condition: ReportText = ""
    authorized_by: ReportText = ""
    method: ReportText = ""
    sampling: ReportText = ""
    deviations: ReportWords = ""
    external: ReportWords = ""
    temperature_c: Interval | None = None
    humidity_percent: Interval | None = None
    language: Language = "en"
    form: Literal["full", "short"] = "full"
    logo: Annotated[str, Field(max_length=200)] = ""
    sections: tuple[Annotated[str, Field(max_length=60)], ...] = ()
    figures: tuple[Annotated[str, Field(max_length=80)], ...] = ()
    frequencies_ghz: tuple[Annotated[float, Field(gt=0, le=10000)], ...] = ()
    planes: tuple[Literal["E", "H"], ...] = ("E", "H")

    @model_validator(mode="after")
    def _agrees(self) -> ReportSettings:
        if self.issue > 1 and not self.changes.strip():
            raise ValueError(f"issue = {self.issue}: needs changes, what changed against issue {self.issue - 1}")
        if self.issue == 1 and self.changes.strip():
            raise ValueError("changes: issue 1 changes nothing; raise issue, or leave changes out")
        if not self.planes or len(set(self.planes)) != len(self.planes):
            raise ValueError(f"planes = {list(self.planes)}: must name E, H or both, each once")
        return self
