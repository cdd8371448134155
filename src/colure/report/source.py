"""Everything that the report of a sphere shows: a processed run and what was read from it."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

from colure.report.particulars import Decision
from colure.values import holds_arrays

if TYPE_CHECKING:
    from colure.analysis.figures.cuts import GreatCircleCut
    from colure.analysis.figures.face import Face
    from colure.analysis.findings.diagnosis import Diagnosis
    from colure.analysis.findings.finding import Finding
    from colure.analysis.pipeline.recipe import Processed
    from colure.analysis.stray.echo_map import EchoMap
    from colure.analysis.uncertainty.level_cuts import LevelCut
    from colure.analysis.verdict.verdicts import MaskView, Verdict
    from colure.geometry.conventions import FloatArray
    from colure.model.chamber import Chamber
    from colure.model.device import Device
    from colure.model.figure import Figure
    from colure.model.plan import Plan
    from colure.report.particulars import Particulars


@dataclass(frozen=True)
class Requirement:
    """One requirement without words: the figure's name (empty for a mask) and its bounds, or the mask's name."""

    figure: str
    bounds: str


#: What a verdict says of terms that its interval does not hold begins so.
NOT_HELD = " (not included in its interval: "


@dataclass(frozen=True)
class Verdicts:
    """A specification's verdicts: name, document, rule in words and by its name in the file, outcome of all together.

    asked
        What every row asks for, without words.
    """

    name: str
    document: str
    rule: str
    decision: str
    outcome: str
    rows: list[Verdict]
    views: list[MaskView]
    asked: list[Requirement]

    @property
    def applied(self) -> Decision:
        """The rule of decision, and what it was applied to."""
        return Decision(self.decision, f"{self.name} ({self.document})" if self.document else self.name)

    @property
    def sentence(self) -> str:
        """The outcome in one sentence."""
        passed = sum(one.outcome == "pass" for one in self.rows)
        return f"Against {self.name}: {self.outcome.upper()}; {passed} of {len(self.rows)} requirements pass ({self.rule})."


@dataclass(frozen=True)
@holds_arrays
class PatternCuts:
    """Cuts through the peak in the principal planes, by plane.

    middle, peak_dbi
        At mid-band, and the peak's gain there.
    side_lobes
        (angle in degrees, radiation intensity re the peak in dB) of those of `middle` that stand above noise and stray signals.
    unclear
        Number of further maxima by plane, which do not.
    axis
        Cuts through the mechanical boresight at mid-band, by plane: the angle counts from the device's z axis.
    as_measured
        (angle in degrees, amplitude) by the same planes as it was read at the range length, before alignment and transform.
    band
        One at every frequency, for the picture over the band; empty where one frequency was measured.
    """

    middle: dict[str, GreatCircleCut]
    peak_dbi: float
    side_lobes: dict[str, list[tuple[float, float]]]
    band: dict[str, list[GreatCircleCut]]
    unclear: dict[str, int] = field(default_factory=dict)
    axis: dict[str, GreatCircleCut] = field(default_factory=dict)
    as_measured: dict[str, tuple[FloatArray, FloatArray]] = field(default_factory=dict)


@dataclass(frozen=True)
@holds_arrays
class Source:
    """Everything the report shows.

    findings
        Self-consistency checks, in the order in which they are listed.
    face
        Excitation of the device's elements at mid-band; None where the scan cannot tell.
    states
        Total gain (theta, phi) at mid-band of every device state, on the processed pattern's grid; empty if there is one.
    particulars
        Who measured what for whom, when and with what.
    stops
        Why the run stopped on the way, in the words of its journal.
    checks
        What of the instruments was not checked before the run, or did not pass.
    again
        When which slices were measured again.
    shown
        Index of the frequency to watch; mid-band if None. Cuts, levels, states and elements are at it.
    """

    plan: Plan
    chamber: Chamber
    device: Device
    processed: Processed
    figures: list[Figure]
    record_attrs: dict[str, Any]
    record_file: str
    record_sha256: str
    demo: bool
    diagnoses: list[Diagnosis]
    room: EchoMap | None
    levels: dict[str, LevelCut]
    cuts: PatternCuts
    findings: list[Finding]
    face: Face | None
    particulars: Particulars
    judged: Verdicts | None = None
    states: dict[str, FloatArray] = field(default_factory=dict)
    stops: tuple[str, ...] = ()
    checks: tuple[str, ...] = ()
    again: tuple[str, ...] = ()
    shown: int | None = None

    @property
    def decision(self) -> Decision | None:
        """The rule by which a specification was decided; None where there was none."""
        return None if self.judged is None else self.judged.applied

    @property
    def middle(self) -> int:
        """Index of the frequency of which most sections speak: the one to watch, else the middle one."""
        return int(self.processed.frequency_hz.size // 2) if self.shown is None else self.shown

    @property
    def frequency(self) -> float:
        """The frequency of which most sections speak, in Hz."""
        return float(self.processed.frequency_hz[self.middle])

    @property
    def here(self) -> list[Figure]:
        """Figures of the middle frequency; those that report.toml names, if it names any."""
        wanted = self.particulars.settings.figures
        figures = [one for one in self.figures if one.frequency_hz == self.frequency]
        return [one for one in figures if one.name in wanted] if wanted else figures
