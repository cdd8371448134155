"""What the live socket says: its text messages, field by field. Binary messages are frames of float32 levels."""

from __future__ import annotations

from typing import Literal, NotRequired, TypedDict


class Word(TypedDict):
    """One line of what happened; `at` is seconds since 1970."""

    at: float
    kind: str
    text: str


class Idle(TypedDict):
    """No scan was started since the server began."""

    type: Literal["status"]
    state: Literal["idle"]
    running: Literal[False]
    sequence: NotRequired[int]
    lease: NotRequired[str]


class Status(TypedDict):
    """The scan but for its picture. Ties: minutes are not used, times are seconds of the run; change in dB and degrees."""

    type: Literal["status"]
    campaign: str
    run: str
    kind: str
    state: str
    text: str
    running: bool
    measured: int
    total: int
    left_s: float
    predicted_s: float
    axes: list[str]
    position_deg: list[float]
    angles_deg: list[float]
    level_db: float | None
    strongest_db: float | None
    noise_db: float
    slice: int
    ties: list[list[float]]
    words: list[Word]
    version: int
    sequence: NotRequired[int]
    lease: NotRequired[str]


class Grid(TypedDict):
    """The cells of the frames: `directions` holds three numbers a cell, in the device frame."""

    type: Literal["grid"]
    rows: list[float]
    columns: list[float]
    row_name: str
    column_name: str
    directions: list[float]
