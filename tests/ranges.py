"""Campaigns on ranges of several instruments by role, and a simulated chamber in this process that they are wired to."""

from __future__ import annotations

import re
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path

from colure.app.services import new_campaign
from colure.model.campaign import Campaign
from colure.model.chamber import Chamber
from colure.twin.servers import RunningTwin, start_twin

#: Receiver and two controllers: the positioner's, and one for the probe's roll alone.
TWO = """
[[instruments]]
role = "receiver"
[[instruments]]
role = "axis-controller"
name = "floor"
axes = ["azimuth", "roll"]
[[instruments]]
role = "axis-controller"
name = "mast"
axes = ["probe"]
"""
CUT = 'theta_deg = "-20:20:10"\nphi_deg = 0'


def range_campaign(
    folder: Path,
    instruments: str,
    *,
    scan: str = CUT,
    twin: str = "noise = false\n",
    chamber: tuple[tuple[str, str], ...] = (),
    device: tuple[tuple[str, str], ...] = (),
) -> Path:
    """Write the demo's range with other instruments, a short scan of three frequencies, and fast axes."""
    new_campaign(folder)
    text = (folder / "chamber.toml").read_text(encoding="utf-8")
    text = re.sub(r"^(resource|profile) = .*\n", "", text, flags=re.MULTILINE)
    text = re.sub(r"\[axes\]\ninterlock.*\n", "", text)
    for entry, value in (("speed_deg_s", 150), ("acceleration_deg_s2", 1500), ("settle_s", 0.02)):
        text = re.sub(rf"^{entry} = .*\n", f"{entry} = {value}\n", text, flags=re.MULTILINE)
    for old, new in chamber:
        assert old in text, old
        text = text.replace(old, new)
    (folder / "chamber.toml").write_text(text + instruments, encoding="utf-8")
    words = (folder / "device.toml").read_text(encoding="utf-8")
    for old, new in device:
        assert old in words, old
        words = words.replace(old, new)
    (folder / "device.toml").write_text(words, encoding="utf-8")
    goal = f'name = "Cut"\nstart_ghz = 24.0\nstop_ghz = 24.1\npoints = 3\n[scan]\n{scan}\n'
    (folder / "goal.toml").write_text(goal, encoding="utf-8")
    (folder / "twin.toml").write_text(f"seed = 5\n{twin}", encoding="utf-8")
    return folder


@contextmanager
def wired(folder: Path) -> Iterator[tuple[Campaign, RunningTwin]]:
    """Serve the simulated chamber in real time in this process, and yield the campaign with its addresses filled in."""
    campaign = Campaign.load(folder)
    twin = start_twin(campaign, least_time_factor=1.0)
    try:
        content = campaign.chamber.model_dump(mode="json", exclude={"analyzer": {"resource"}, "axes": True})
        for one, table in zip(campaign.chamber.instruments, content["instruments"], strict=True):
            table["resource"] = twin.resources[one.shown_name]
        yield replace(campaign, chamber=Chamber.model_validate(content)), twin
    finally:
        twin.close()
