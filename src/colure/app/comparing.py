"""Runs held against each other."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

import numpy as np

from colure.app import service
from colure.app.folders import RunFolder
from colure.model.campaign import Campaign
from colure.model.loading import InputError


@dataclass(frozen=True)
class SetUps:
    """Two set-ups compared: one sentence a line, and the numbers behind them."""

    sentences: list[str]
    numbers: dict[str, object]


def compare_set_ups(one: tuple[Campaign, RunFolder], other: tuple[Campaign, RunFolder], target: Path | None) -> SetUps:
    """Hold two runs of one device in different set-ups against each other; write the mean pattern to `target`.

    Raises
    ------
    InputError
        If frequencies differ, a run cannot be processed, or the target exists.
    """
    from colure.analysis.compare import compare_set_ups as compare
    from colure.analysis.nearfield import pattern_grid
    from colure.model.files import save_dataset, with_step
    from colure.model.pattern import build_pattern

    if target is not None and target.exists():
        raise InputError([f"{target}: exists already; choose another name or remove it first"])
    first, second = (service.process(campaign, run) for campaign, run in (one, other))
    region = float(np.deg2rad(min(first.sphere.region_deg, second.sphere.region_deg)))
    try:
        found = compare(first.expansion, second.expansion, region=region)
    except ValueError as error:
        raise InputError([str(error)]) from None
    m, middle = found.match, first.frequency_hz.size // 2
    lengths = [campaign.chamber.range_length_m for campaign, _ in (one, other)]
    turn, shift = (", ".join(f"{v:+.3f}" for v in values) for values in (m.rotation_deg, m.shift_mm))
    words = [
        f"range lengths {lengths[0]:g} and {lengths[1]:g} m, {first.frequency_hz.size} frequencies",
        f"to lie on the first, the second device needed a turn of {turn} deg about x, y, z and a shift of {shift} mm",
        f"and {m.level_db[middle]:+.3f} dB at mid-band ({m.level_db.min():+.3f} to {m.level_db.max():+.3f} dB over the band)",
        f"what is left differs by {m.difference_db[middle]:.1f} dB rms below the peak: stray signals of "
        f"{found.stray_db.max():.1f} dB rms in each set-up at most, if both have as much",
        f"in the mean of both they are {found.mean_stray_db.max():.1f} dB",
    ]
    declared = max(campaign.chamber.echo_level_db for campaign, _ in (one, other))
    if found.stray_db.max() > declared:
        words.append(f"that is MORE than the {declared:g} dB that chamber.toml declares: raise echo_level_db")
    if target is not None:
        theta, phi, field = pattern_grid(found.mean, 1.0)
        mean = build_pattern(
            field, frequency_hz=first.frequency_hz, theta=theta, phi=phi, quantity="realized_gain"
        )  # fmt: skip
        mean = with_step(mean, "mean of two set-ups", stray_db=[round(float(x), 2) for x in found.mean_stray_db])
        save_dataset(mean, target)
        words.append(f"wrote {target}")
    numbers = {
        "rotation_deg": m.rotation_deg.tolist(),
        "shift_mm": m.shift_mm.tolist(),
        "level_db": m.level_db.tolist(),
        "difference_db": m.difference_db.tolist(),
        "stray_db": found.stray_db.tolist(),
        "mean_stray_db": found.mean_stray_db.tolist(),
    }
    return SetUps(words, numbers)
