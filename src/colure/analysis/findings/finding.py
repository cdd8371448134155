"""A finding: the result of one self-consistency check, how serious it is, and which figures it touches."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

from colure.analysis.steps.agreement import NOTHING_DB
from colure.model.figure import NOT_TO_BE_USED

Severity = Literal["information", "look", "not to be used"]


@dataclass(frozen=True)
class Finding:
    """One thing the data say: its size as field relative to the peak in dB, and a sentence.

    severity
        `information`; `look`: a person must decide before the figures are used; `not to be used`: the figures are wrong, or
        nobody can tell whether they are right.
    figures
        Names of the figures that are touched; all of them if empty.
    """

    topic: str
    level_db: float
    text: str
    severity: Severity = "information"
    figures: tuple[str, ...] = ()

    @property
    def has_level(self) -> bool:
        """Tell whether it has a size in dB; some say nothing of that kind."""
        return self.level_db > NOTHING_DB

    @property
    def rank(self) -> int:
        """Order of severity, worst first."""
        return {NOT_TO_BE_USED: 0, "look": 1, "information": 2}[self.severity]


#: Findings that speak of the room's echoes, and those that explain what does not fit without them.
OF_ROOM, SPOILT = ("echoes", "echo"), ("sweeps", "slip")


def without_room(findings: Iterable[Finding]) -> list[Finding]:
    """Return findings without those of the room's echoes where sweeps that went wrong, or a slip, explain what does not fit the device.

    More absorber, or a larger declared level, would mend nothing.
    """
    each = list(findings)
    spoilt = any(one.topic in SPOILT and one.severity == NOT_TO_BE_USED for one in each)
    return [one for one in each if not (spoilt and one.topic in OF_ROOM)]
