"""What the live socket says: its text messages, field by field. Binary messages are frames of float32 levels."""

from __future__ import annotations

from typing import Literal, NotRequired, TypedDict


class Word(TypedDict):
    """One line of what happened; `at` is seconds since 1970."""

    at: float
    kind: str
    text: str


class Hand(TypedDict):
    """What axes or receiver do by hand at this moment; `began` is seconds since 1970."""

    campaign: str
    text: str
    began: float


class Idle(TypedDict):
    """No scan was started since the server began."""

    type: Literal["status"]
    state: Literal["idle"]
    running: Literal[False]
    sequence: NotRequired[int]
    lease: NotRequired[str]
    hand: NotRequired[Hand | None]
    jobs: NotRequired[int]


class Status(TypedDict):
    """The scan but for its picture. Ties: seconds since the run's first, change in dB and degrees.

    joints
        Values of the joints in degrees and millimetres, on a mount that is described by them; empty on others.
    running, moves
        The scan's process is there, so that no other begins; the axes may move. A record is sealed while they stand.
    """

    type: Literal["status"]
    campaign: str
    run: str
    kind: str
    state: str
    text: str
    running: bool
    moves: bool
    measured: int
    total: int
    left_s: float
    predicted_s: float
    axes: list[str]
    position_deg: list[float]
    angles_deg: list[float]
    joints: list[float]
    level_db: float | None
    strongest_db: float | None
    noise_db: float
    slice: int
    ties: list[list[float]]
    words: list[Word]
    version: int
    sequence: NotRequired[int]
    lease: NotRequired[str]
    hand: NotRequired[Hand | None]
    jobs: NotRequired[int]


class Grid(TypedDict):
    """The cells of the frames: `directions` holds three numbers a cell, in the device frame; `state` is the one that is shown."""

    type: Literal["grid"]
    rows: list[float]
    columns: list[float]
    row_name: str
    column_name: str
    directions: list[float]
    state: str | None


class Alive(TypedDict):
    """Said when there is nothing new for a while: a page that hears nothing at all knows that nobody is there."""

    type: Literal["alive"]


HeldState = Literal["nothing", "begun", "stopped", "complete", "damaged"]


class Held(TypedDict):
    """What is on disk of a run; `measured_at` is when its last point was measured, seconds since 1970."""

    state: HeldState
    measured: int
    total: int
    measured_at: float | None


class Before(TypedDict):
    """What a start dialog says.

    fault
        Why this name must not be started, empty if it may.
    again
        Slices of a finished run that are measured again; empty: the run is begun, or goes on.
    to_measure
        So many of the plan's points are measured.
    failed_checks
        What checks of the instruments found wrong; a start needs `despite_check` then.
    """

    run: str
    kind: str
    again: str
    points: int
    to_measure: int
    duration_s: float
    cautions: list[str]
    on_disk: Held
    fault: str
    failed_checks: list[str]
    free_name: str
    simulated: bool


class Limits(TypedDict):
    """Where a motor axis stands, how far and how fast it goes, in `unit`: degrees, or mm of a prismatic joint."""

    axis: str
    unit: str
    readout_deg: float
    min_deg: float
    max_deg: float
    home_deg: float
    speed_deg_s: float


class SweepMessage(TypedDict):
    """One sweep: levels by port over the frequencies, and the first port's impulse response where it has one."""

    frequency_hz: list[float]
    level_db: list[list[float]]
    time_ns: list[float]
    impulse_db: list[float]


class Pose(TypedDict):
    """How the scene draws axes: angles of the conventions by name, and the values of joints on a mount that has some."""

    axes: list[str]
    angles_deg: list[float]
    joints: list[float]


class ByHand(TypedDict):
    """What a move or a look by hand ended with; `at` is seconds since 1970. `pose` is None where no axis was asked."""

    at: float
    text: str
    axes: list[Limits]
    pose: Pose | None
    sweep: SweepMessage | None
