"""Which words a device wants: TOML profiles, shipped with the package or written by a user."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Literal

from pydantic import Field, field_validator

from colure.model.loading import InputError, Section, load

FOLDER = Path(__file__).parent / "profiles"


class AnalyzerProfile(Section):
    """Commands of an analyzer; {name} fields are filled from the sweep settings."""

    identity: str = "*IDN?"
    setup: tuple[str, ...]
    sweep: str
    trace: str
    byte_order: Literal["big", "little"] = "big"
    error: str = "SYST:ERR?"
    error_none: str = r"^\+?0,"
    condition: str = ""
    route: str = ""
    clock: str = ""
    safe: tuple[str, ...] = ()


class AxesProfile(Section):
    """Commands and reply patterns of an axis controller.

    `move` receives `{words}`, one `{letter}{value}` per axis; `wait` receives `{settle_s}`.
    """

    identity: str = ""
    letters: dict[str, str]
    decimals: int = Field(default=4, ge=0, le=9, json_schema_extra={"unit": "decimals"})
    word: str = "{letter}{value}"
    move: str
    wait: str
    position: str
    position_pattern: str
    done: str = "^ok$"
    fault: str = "^error"
    held: str = "held"
    hold: str = "!"
    release: str = "~"

    @field_validator("position_pattern", "done", "fault", "held")
    @classmethod
    def _compiles(cls, pattern: str) -> str:
        try:
            re.compile(pattern)
        except re.error as error:
            raise ValueError(f"must be a regular expression: {error}") from None
        return pattern


def profile_path(name: str, campaign_folder: Path | None) -> Path:
    """Return the file of a profile: beside the campaign first, then the shipped ones.

    Raises
    ------
    InputError
        If no such profile exists; the shipped names are listed.
    """
    if not re.fullmatch(r"[A-Za-z0-9_-]{1,60}", name):
        raise InputError([f"chamber.toml: profile = {name!r}: must be letters, digits, - or _ (1 to 60 characters)"])
    for folder in filter(None, (campaign_folder, FOLDER)):
        path = folder / f"{name}.toml"
        if path.is_file():
            return path
    shipped = ", ".join(sorted(p.stem for p in FOLDER.glob("*.toml")))
    raise InputError([f"chamber.toml: profile = {name!r}: must be one of {shipped}, or a file {name}.toml beside it"])


def analyzer_profile(name: str, campaign_folder: Path | None = None) -> AnalyzerProfile:
    """Read an analyzer profile."""
    return load(AnalyzerProfile, profile_path(name, campaign_folder))


def axes_profile(name: str, campaign_folder: Path | None = None) -> AxesProfile:
    """Read an axis controller profile."""
    return load(AxesProfile, profile_path(name, campaign_folder))
