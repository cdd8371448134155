"""What the control room's doors answer, field by field: the page's TypeScript types are made from these.

A view returns exactly these entries (the type checker holds it to that); `web/make_types.py` writes them down for
the page. Levels are dB, angles degrees, lengths millimetres unless the name says otherwise; None where nothing was measured.
"""

from __future__ import annotations

from typing import Any, Literal, TypedDict

from colure.app.web.guard.roles import RoleWord

Levels = list[float | None]
#: A value of the form as the files hold it.
FieldValue = float | int | str | bool | None | list[float]


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


class Field(TypedDict):
    """A field of the form; `help` is what the reference says of the entry."""

    group: str
    key: str
    label: str
    value: Any
    unit: str
    least: float | None
    most: float | None
    choices: list[str]
    help: str
    optional: bool
    whole: bool


class FormAnswer(TypedDict):
    name: str
    device: str
    chamber: str
    simulated: bool
    fields: list[Field]


class ForecastRow(TypedDict):
    """What a figure's expanded uncertainty will be, as text with its unit, beside what was wanted (None: nothing)."""

    name: str
    label: str
    unit: str
    expanded: float
    text: str
    wanted: float | None
    cause: str


class Alternative(TypedDict):
    name: str
    why: str
    duration: str
    points: int
    choices: Any


class PlanAnswer(TypedDict):
    rows: list[tuple[str, str]]
    missing: list[str]
    forecast: list[ForecastRow]
    verdict: str
    duration: str
    points: int
    hash: str
    split: list[tuple[str, float]]
    alternatives: list[Alternative]


class Scheme(TypedDict):
    geometry: str
    scheme: str
    points: int
    pole: str
    fault: str
    duration: str
    polarization: str
    suits: str
    formula: str


class Motion(TypedDict):
    """The way of the axes: `axes` values a point in `angles_deg` and `readouts_deg`, three a cell in `directions`.

    limits_deg
        Lowest and highest angle of the conventions, by axis.
    """

    geometry: str
    formula: str
    axes: list[str]
    angles_deg: list[float]
    readouts_deg: list[float]
    role: list[int]
    cell: list[int]
    time_s: list[float]
    directions: list[float]
    range_m: float
    size_mm: list[float]
    offset_mm: list[float]
    slant_deg: float
    reach_m: float
    ports: int
    limits_deg: list[list[float]]


class Written(TypedDict):
    written: list[str]


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


class RehearsedFigure(TypedDict):
    name: str
    unit: str
    value: str
    truth: float
    inside: bool
    cause: str


class RehearsalAnswer(TypedDict):
    rows: list[RehearsedFigure]
    share_inside: float
    seconds: float
    theta: list[float]
    phi: list[float]
    error_db: list[float]


class PolarizationBasis(TypedDict):
    name: str
    formula: str
    components: list[str]
    first: list[float]
    second: list[float]


class Way(TypedDict):
    readouts: dict[str, float]
    slant_fixed: float
    probe_roll: float
    fixed: list[float]
    following: list[float]


class Stand(TypedDict):
    name: str
    formula: str
    axes: list[str]
    pole: str
    ways: list[Way]


class Lesson(TypedDict):
    direction: list[float]
    theta: float
    phi: float
    azimuth: float
    elevation: float
    alpha: float
    epsilon: float
    bases: list[PolarizationBasis]
    positioners: list[Stand]


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


class CutAnswer(TypedDict):
    """A great circle: the direction at an angle is cos(angle) peak + sin(angle) tangent, unit vectors of the device frame.

    why
        Why the cut has no side lobe of its own, as of a pattern with several beams; empty otherwise.
    """

    of: Of
    why: str
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


class FlipNumbers(TypedDict):
    theta_zero_deg: float
    theta_zero_expanded_deg: float
    axes_offset_mm: float
    axes_offset_expanded_mm: float


class FlipWords(TypedDict):
    run: str
    measured_at: float
    numbers: FlipNumbers
    sentences: list[str]


class BeamMap(TypedDict):
    """Levels (S21, all frequencies and ports together) of one look, rows of elevation; None where it did not look."""

    stage: str
    azimuth_deg: list[float]
    elevation_deg: list[float]
    level_db: Levels


class BeamWords(TypedDict):
    """What a beam search found; `beam_deg` is azimuth and elevation of the top, None after the coarse look alone."""

    run: str
    beam_deg: tuple[float, float] | None
    maps: list[BeamMap]
    readouts_deg: dict[str, float]
    sentences: list[str]


class InstrumentLine(TypedDict):
    what: str
    good: bool
    found: str


class Checked(TypedDict):
    """What the instruments last answered; `at` is seconds since 1970, 0 if they were not asked since the server began."""

    at: float
    lines: list[InstrumentLine]
