"""What the control room's doors answer, field by field: the page's TypeScript types are made from these.

A view returns exactly these entries (the type checker holds it to that); `web/make_types.py` writes them down for
the page. Levels are dB, angles degrees, lengths millimetres unless the name says otherwise; None where nothing was measured.
"""

from __future__ import annotations

from typing import Any, Literal, TypedDict

from colure.app.web.guard.roles import RoleWord

Levels = list[float | None]


class CampaignName(TypedDict):
    id: str
    folder: str


class Me(TypedDict):
    name: str
    role: RoleWord
    token: str
    lease: str | None
    mine: bool
    sequence: int
    campaigns: list[CampaignName]


class Code(TypedDict):
    code: str


class Of(TypedDict):
    """What an answer is about: the page shows it only where the same was asked. frequency_hz is None for all of them."""

    run: str
    state: str | None
    frequency_hz: float | None


class RunRow(TypedDict):
    """One run in the list of a campaign.

    state, measured, total, measured_at
        What its journal holds; when its last point was measured, seconds since 1970 (not when somebody looked at it).
    identity
        What was said of it: tag, operator, serial, customer, order, note.
    """

    name: str
    kind: Literal["sphere", "cuts", "power", "begun"]
    state: Literal["begun", "stopped", "complete", "damaged", "nothing"]
    measured: int
    total: int
    measured_at: float | None
    identity: dict[str, str]
    record: bool
    figures: bool
    report: bool


ThumbKind = Literal["pattern", "as read", "cut", ""]


class Thumb(TypedDict):
    """A small picture of a run.

    what
        The pattern; levels as they were read, where there is no pattern yet; the first cut; or nothing.
    shades
        0 to 255 over 40 dB: 24 rows of theta by 48 columns of phi, -1 where nothing was measured; of a cut 48 heights.
    """

    run: str
    what: ThumbKind
    shades: list[int]


class AsRead(TypedDict):
    """Levels of a run without a pattern: uncorrected wave ratios (S21, dB), all passes together, of the first device state.

    directions
        Three numbers a level: the direction in the device frame.
    """

    of: Of
    directions: list[float]
    level_db: list[float]
    measured: int
    total: int
    state: str | None


class CampaignRuns(TypedDict):
    id: str
    folder: str
    runs: list[RunRow]


class JobName(TypedDict):
    job: str


class JobState(TypedDict):
    """How a piece of long work stands. place: 1 is next in line, 0 does not wait; usual_s: what the last of its kind took."""

    id: str
    name: str
    words: str
    by: str
    mine: bool
    state: Literal["waiting", "at work", "done", "failed", "given up"]
    place: int
    for_s: float
    usual_s: float | None
    faults: list[str]


class JobAnswer(TypedDict):
    state: JobState
    result: Any


class Sequence(TypedDict):
    sequence: int


class Stopping(TypedDict):
    stopping: bool
    sequence: int


def shown_unit(unit: str, reason: str | None) -> str:
    """Return the unit that stands behind a value: none behind a reason or a plain number."""
    return "" if reason or unit == "1" else unit


class FigureRow(TypedDict):
    """One figure; `text` is its value with the digits that it has, or the reason why it has none."""

    name: str
    label: str
    unit: str
    frequency_hz: float
    value: float | None
    lower: float | None
    upper: float | None
    definition: str
    text: str


class StepRow(TypedDict):
    name: str
    on: bool
    may_change: bool


class VerdictRow(TypedDict):
    requirement: str
    outcome: str
    text: str
    margin: float | None
    unit: str
    needed: float | None


class VerdictsAnswer(TypedDict):
    """A specification held against a run; `current` is False where the record, or limits.toml, changed since."""

    of: Of
    specification: str
    document: str
    decision: str
    outcome: str
    current: bool
    rows: list[VerdictRow]


class Overview(TypedDict):
    """What a run holds; `shown` is the index of the frequency that is shown first, `unit` that of its levels.

    basis
        The components that the device's declared polarization asks for.
    edited
        Entries that were edited after the run began, a line each, with both values and which is used.
    """

    of: Of
    unit: str
    states: list[str]
    frequency_hz: list[float]
    shown: int
    basis: Literal["ludwig-3", "circular"]
    steps: list[StepRow]
    region_deg: float
    slant_deg: float
    figures: list[FigureRow]
    demo: bool
    specification: bool
    report: bool
    edited: list[str]


class CutAnswer(TypedDict):
    """A great circle: the direction at an angle is cos(angle) peak + sin(angle) tangent, unit vectors of the device frame.

    why
        Why the cut has no side lobe of its own, as of a pattern with several beams; empty otherwise.
    singular
        Where the cut passes a direction in which its components are undefined, in words; empty if it does not.
    """

    of: Of
    why: str
    singular: str
    angle_deg: list[float]
    first: Levels
    second: Levels
    total: Levels
    names: list[str]
    peak_dbi: float
    beamwidth_deg: float | None
    edges_deg: list[float | None]
    side_lobe_db: float | None
    null_db: float | None
    peak_theta_deg: float
    peak_phi_deg: float
    peak: list[float]
    tangent: list[float]


class Difference(TypedDict):
    of: Of
    other: str
    total: Levels
    rotation_deg: list[float]
    shift_mm: list[float]
    level_db: float
    difference_db: float


class FieldMap(TypedDict):
    of: Of
    rows: list[float]
    columns: list[float]
    row_name: str
    column_name: str
    formula: str
    names: list[str]
    first: Levels
    second: Levels
    total: Levels


class Spectrum(TypedDict):
    """Levels of one direction over all frequencies."""

    of: Of
    theta_deg: float
    phi_deg: float
    frequency_hz: list[float]
    first: Levels
    second: Levels
    total: Levels
    names: list[str]


class MaskLevel(TypedDict):
    name: str
    component: str
    level: Levels


class Masks(TypedDict):
    of: Of
    masks: list[MaskLevel]


class Impulse(TypedDict):
    of: Of
    widths_ns: list[float]
    strongest_ns: float
    time_ns: list[float]
    level_db: list[float]


class Effects(TypedDict):
    of: Of
    labels: dict[str, str]
    whole: dict[str, float | None]
    without: dict[str, dict[str, float | None]]


class FindingRow(TypedDict):
    topic: str
    level_db: float
    text: str


class Findings(TypedDict):
    of: Of
    rows: list[FindingRow]


class FaceAnswer(TypedDict):
    x_mm: list[float]
    y_mm: list[float]
    level_db: list[float]
    phase_deg: list[float]
    elements: list[list[float]]
    excitation_db: list[float]
    suspects: list[str]


class Aperture(TypedDict):
    """The picture of a panel's face; None where device.toml declares no elements."""

    of: Of
    face: FaceAnswer | None
