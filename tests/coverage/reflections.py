"""Campaigns that measure the device's reflection over frequency, counted: are gains, losses and reflection inside their intervals?

`python -m tests.coverage.reflections --draws 20` prints one line for each device.
"""

from __future__ import annotations

from collections import defaultdict
from pathlib import Path
from tempfile import TemporaryDirectory

import numpy as np

from colure.app import services
from colure.app.services.rehearsal import rehearse
from tests.coverage.asking import arguments
from tests.coverage.scenarios import Scenario, band, four_by_four, sized

ONE_PORT = {"directivity_db": -36, "match_db": -30, "tracking_db": 0.1}
#: Figures that the reflection decides, and the gains beside them.
NAMES = (
    "gain_dbi", "gain_accepted_dbi", "efficiency_db", "radiation_efficiency_db", "mismatch_loss_db", "return_loss_db"
)  # fmt: skip
#: Devices in a band as wide as their resonance, from well matched to badly.
DEVICES = {
    "patch, -18 dB at its resonance": Scenario(
        device=sized(30, 30, 4, 7.0),
        goal={**band(5.7, 5.9, 5), "reflection": True, "wanted_level_db": -30},
        chamber={"one_port": ONE_PORT, "range_length_m": 1.0},
        twin={"device": {"kind": "patch", "reflection_db": -18.0, "reflection_deg": 33.0, "resonance_ghz": 5.8,
                         "resonance_q": 30.0, "efficiency_db": -0.8}},
    ),
    "panel, -10 dB everywhere": Scenario(
        device=four_by_four(),
        goal={**band(24.0, 24.25, 3), "reflection": True},
        chamber={"one_port": ONE_PORT},
        twin={"device": {"kind": "panel", "rows": 4, "columns": 4, "reflection_db": -10.0, "efficiency_db": -0.5}},
    ),
    "dipole, off its resonance": Scenario(
        device=sized(60, 4, 4, 2.0),
        goal={**band(2.3, 2.6, 4), "reflection": True, "wanted_level_db": -30},
        chamber={"one_port": ONE_PORT, "range_length_m": 1.5, "largest_device_m": 0.4},
        twin={"device": {"kind": "dipole", "axis": "x", "length_mm": 60.0, "reflection_db": -25.0, "resonance_ghz": 2.4,
                         "resonance_q": 8.0, "efficiency_db": -0.3}},
    ),
}  # fmt: skip


def count(name: str, draws: int, *, first: int = 1) -> dict[str, list[bool]]:
    """Carry campaigns of a device out and return which figures held the truth, all frequencies together."""
    held: dict[str, list[bool]] = defaultdict(list)
    with TemporaryDirectory() as folder:
        campaign, plan = services.make_plan(DEVICES[name].write(Path(folder) / "campaign"))
        for seed in range(first, first + draws):
            for one in rehearse(campaign, plan, seed=seed).findings:
                if one.figure.name in NAMES and not one.figure.reason:
                    held[one.figure.name].append(bool(one.inside))
    return held


def main() -> None:
    """Print one line for each device."""
    asked = arguments(__doc__ or "").parse_args()
    for name in asked.names or DEVICES:
        held = count(name, asked.draws, first=asked.first)
        words = ", ".join(f"{figure} {100 * np.mean(held[figure]):.1f} % of {len(held[figure])}" for figure in NAMES)
        print(f"{name}: {words}", flush=True)


if __name__ == "__main__":
    main()
