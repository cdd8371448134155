"""What the control room's doors answer before anything is measured: the plan's form, alignment, and the tutor.

What they answer about runs stands in `answers`; the same rules hold for both.
"""

from __future__ import annotations

from typing import Any, Literal, TypedDict

from colure.app.web.views.answers import Levels


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


class BandForm(TypedDict):
    """The bands that every sweep measures: a row for each [[band]], none where the frequencies are one even stretch.

    columns
        What a band may say. A row with `frequencies_ghz` has its own list, which is shown as it is.
    listed
        Name of the CSV that the bands come from; empty where they stand in goal.toml and can be edited here.
    """

    rows: list[dict[str, Any]]
    columns: list[Field]
    listed: str
    help: str


class FormAnswer(TypedDict):
    name: str
    device: str
    chamber: str
    simulated: bool
    fields: list[Field]
    bands: BandForm


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


class JointLine(TypedDict):
    """One joint of a mount: its line where every joint stands at zero, lab frame, and how far its value goes.

    Values are degrees of a revolute joint and millimetres of a prismatic one, counted right-handed about `axis`, or along it.

    rolls
        It turns the probe about the line to the device, and moves nothing else.
    """

    name: str
    carries: Literal["device", "probe"]
    kind: Literal["revolute", "prismatic"]
    axis: list[float]
    point_m: list[float]
    least: float
    most: float
    unit: str
    rolls: bool


class MountSolid(TypedDict):
    """A solid that is declared on a mount: a capsule from `a_m` to `b_m`, or a box with its centre `a_m` and half sides `b_m`.

    body
        -1 the room, else the number of the joint that carries it.
    """

    name: str
    body: int
    shape: Literal["capsule", "box"]
    a_m: list[float]
    b_m: list[float]
    radius_m: float


class Mount(TypedDict):
    """A mount that is described by its joints, from the floor outwards.

    up
        Unit vector that the page draws upwards, lab frame.
    values
        (point, joint) of the plan's points; `slice_index` and `pass_index` are those of the plan, -1 for ties and references.
    """

    joints: list[JointLine]
    solids: list[MountSolid]
    up: list[float]
    values: list[float]
    slice_index: list[int]
    pass_index: list[int]


class MountPose(TypedDict):
    """Where the joints stand to look along a direction: values by joint, none and the reason if it is out of reach."""

    values: list[float]
    fault: str


class Motion(TypedDict):
    """The way of the axes: `axes` values a point in `angles_deg` and `readouts_deg`, three a cell in `directions`.

    limits_deg
        Lowest and highest angle of the conventions, by axis; on a mount with joints what the plan goes to.
    mount
        The joints, where the positioner is described by them; None where it is one of the three stacks.
    limits_words
        How far every motor axis goes by its own readout: the joints, where the mount has some.
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
    limits_words: list[str]
    mount: Mount | None


class Written(TypedDict):
    written: list[str]


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
    """One direction in every coordinate; `mount` is the asked campaign's, None where it has no joints or none was asked for."""

    direction: list[float]
    theta: float
    phi: float
    azimuth: float
    elevation: float
    alpha: float
    epsilon: float
    bases: list[PolarizationBasis]
    positioners: list[Stand]
    mount: MountPose | None


class FlipNumbers(TypedDict):
    theta_zero_deg: float
    theta_zero_expanded_deg: float
    theta_zero_declared_deg: float
    axes_offset_mm: float
    axes_offset_expanded_mm: float
    axes_offset_declared_mm: float


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
