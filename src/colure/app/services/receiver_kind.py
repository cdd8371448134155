"""Whether a campaign's receiver reads power without phase: asked in one place, by its own file of words."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from colure.instruments.profile import AnalyzerProfile, PowerProfile
    from colure.model.campaign import Campaign


def is_power_only(campaign: Campaign) -> bool:
    """Tell whether the receiver's file of words says that it reads power without phase; a driver tells only when connected.

    A campaign that was planned carries the answer as `levels_alone`.
    """
    from colure.instruments.profile import PowerProfile

    return isinstance(_words(campaign), PowerProfile)


def vector_words(campaign: Campaign) -> AnalyzerProfile | None:
    """Return the file of words of an analyzer with phase; None where a driver or a power-only receiver stands in its place."""
    from colure.instruments.profile import AnalyzerProfile

    words = _words(campaign)
    return words if isinstance(words, AnalyzerProfile) else None


def _words(campaign: Campaign) -> AnalyzerProfile | PowerProfile | None:
    from colure.instruments.plugins import is_driver
    from colure.instruments.profile import analyzer_profile

    name = campaign.chamber.analyzer.profile
    return None if is_driver(name) else analyzer_profile(name, campaign.folder)
