"""A scan that is repeated at several range lengths: the path, what a person is asked for, and what cannot be."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import numpy as np

from colure.errors import InputError
from colure.geometry.conventions import FloatArray
from colure.waves.bounce import distance_weights, noise_over_mean

if TYPE_CHECKING:
    from colure.model.campaign import Campaign
    from colure.model.goal import Goal

#: Steps must part both waves at every frequency with at most so much of the noise of a plain mean.
MOST_NOISE = 2.0


def distance_settings(goal: Goal, points: int) -> dict[str, Any]:
    """Return what engine and record must know of the steps; nothing where there is one distance. `points`: of the whole plan."""
    if goal.distance_steps is None:
        return {}
    steps_m = goal.distance_steps.steps_m(goal.frequency_hz)
    return {
        "distance_steps_mm": [round(float(1e3 * one), 6) for one in steps_m],
        "distance_moves": goal.distance_steps.moves,
        "distance_expanded_mm": goal.distance_steps.expanded_mm,
        "points_per_distance": points // steps_m.size,
    }


def distance_words(goal: Goal) -> str:
    """Say what a person moves, when, and what it costs; empty where there is one distance."""
    if goal.distance_steps is None:
        return ""
    steps_m, frequency = goal.distance_steps.steps_m(goal.frequency_hz), goal.frequency_hz
    worst = float(noise_over_mean(distance_weights(frequency, steps_m)).max()) / np.sqrt(steps_m.size)
    listed = ", ".join(f"{1e3 * one:.3f}" for one in steps_m)
    return (
        f"the whole scan at {steps_m.size} distances: the {goal.distance_steps.moves} 0 mm, then {listed[listed.index(',') + 2 :]} mm farther; "
        f"the run pauses before each and asks for it (its time comes on top); steps known to \u00b1{goal.distance_steps.expanded_mm:g} mm; "
        f"noise is {worst:.2f} times that of one scan"
    )


def require_suited(campaign: Campaign) -> None:
    """Raise `InputError` where distance steps cannot be made, or would not part the waves, with what to do."""
    goal, method = campaign.goal, campaign.chamber.reference.method
    if goal.distance_steps is None:
        return
    faults = []
    if method in ("swap", "stored"):
        faults.append(
            f"chamber.toml: reference.method = {method!r}: must be 'switch' or 'none' with distance_steps: "
            "the horn is read at every distance, or not at all"
        )
    frequency = goal.frequency_hz
    noise = noise_over_mean(distance_weights(frequency, goal.distance_steps.steps_m(frequency)))
    if not noise.max() <= MOST_NOISE:
        faults.append(_too_noisy(frequency, noise))
    if faults:
        raise InputError(faults)


def _too_noisy(frequency_hz: FloatArray, noise: FloatArray) -> str:
    worst = int(np.argmax(noise))
    return (
        f"goal.toml: distance_steps: at {frequency_hz[worst] / 1e9:g} GHz the noise is {noise[worst]:.3g} times that of a plain mean: "
        f"must be at most {MOST_NOISE:g}; steps of an eighth of the wavelength, four of them, suit an octave; of a quarter only a narrow band"
    )
