"""What a page of the documentation presupposes: the tutorial's campaign measured, other people's files, devices with states.

Records come from rehearsals: they cost seconds where a scan over sockets would cost minutes.
"""

from __future__ import annotations

import re
import shutil
from collections.abc import Callable
from pathlib import Path

import numpy as np
import skrf

from colure.app import services
from colure.app.services.converting import convert_file
from colure.app.services.rehearsal import record_of_rehearsal
from colure.app.storage.folders import run_folder
from colure.model.campaign import Campaign
from colure.model.chamber import EchoTable
from colure.model.files import open_dataset, save_dataset
from tests.coverage.one_room import OneRoom
from tests.coverage.scenarios import HORN_5_8_GHZ, Scenario, band, sized

SMALL = 'start_ghz = 24.00\nstop_ghz = 24.25\npoints = 2\nwanted_level_db = -20\nscheme = "two-pass"\n'
LIMITS = 'name = "file"\n\n[[limits]]\nfigure = "beamwidth_e_deg"\nat_most = 15.0\n'


def rehearsed(folder: Path, name: str = "first", *, seed: int = 1) -> None:
    """Put a record into a run of a campaign."""
    made = run_folder(folder, name)
    made.path.mkdir(parents=True)
    save_dataset(record_of_rehearsal(*services.make_plan(folder), seed=seed), made.record)


def edited(path: Path, pattern: str, put: str) -> None:
    """Replace what a pattern finds, which must be there."""
    text, count = re.subn(pattern, put, path.read_text(encoding="utf-8"), flags=re.DOTALL)
    assert count, f"{path.name}: {pattern}"
    path.write_text(text, encoding="utf-8")


def first_look(folder: Path) -> None:
    """The tutorial's campaign, measured and processed."""
    services.new_campaign(folder)
    (folder / "goal.toml").write_text(f'name = "First look"\n{SMALL}', encoding="utf-8")
    four_by_four(folder)
    rehearsed(folder)
    services.process(Campaign.load(folder), run_folder(folder, "first"))


def four_by_four(folder: Path) -> None:
    """Make the demo's panel one of 4 x 4 elements: a quarter of the points."""
    edited(folder / "device.toml", r"\[49\.7, 49\.7, 4\.0\]", "[24.9, 24.9, 4.0]")
    edited(folder / "device.toml", r"expected_gain_dbi = [0-9.]+", "expected_gain_dbi = 16.5")
    edited(folder / "device.toml", r"rows = 8\ncolumns = 8", "rows = 4\ncolumns = 4")
    edited(folder / "twin.toml", r"\[device\].*?(?=\[\[echoes)", "")


def files(here: Path) -> None:
    """Far fields as other people have them, and a near field."""
    convert_file(here / "my-campaign" / "runs" / "first" / "pattern.nc", here / "far.csv")
    convert_file(here / "far.csv", here / "far.nc", far_field=True)
    shutil.copy(here / "far.csv", here / "other.csv")
    (here / "limits.toml").write_text(LIMITS, encoding="utf-8")


def tour(here: Path) -> None:
    """A near field of a short dipole along z: e_theta as sin(theta), far enough away that nothing else matters."""
    rows = ["frequency_hz,theta_deg,phi_deg,e_theta_re,e_theta_im,e_phi_re,e_phi_im"]
    rows += [f"1e9,{t},{p},{np.sin(np.deg2rad(t)):.9f},0,0,0" for t in range(0, 181, 15) for p in range(0, 360, 15)]
    (here / "near.csv").write_text("\n".join(rows), encoding="utf-8")
    (here / "limits.toml").write_text(LIMITS, encoding="utf-8")
    shutil.copytree(here / "my-campaign", here / "campaigns" / "one")


def echo(here: Path) -> None:
    """A second run, and the same device at another distance."""
    runs = here / "my-campaign" / "runs"
    shutil.copytree(runs / "first", runs / "covered")
    for name in ("near-campaign", "far-campaign"):
        shutil.copytree(here / "my-campaign", here / name)
    edited(here / "far-campaign" / "chamber.toml", r"range_length_m = [0-9.]+", "range_length_m = 1.5")
    shutil.rmtree(here / "far-campaign" / "runs")
    rehearsed(here / "far-campaign")


def beams(here: Path) -> None:
    """A small panel with three beams."""
    folder = here / "my-beams"
    services.new_campaign(folder)
    (folder / "goal.toml").write_text('name = "beams"\nstart_ghz = 24.0\nstop_ghz = 24.0\npoints = 1\nwanted_level_db = -20\nstep_deg = 20\nscheme = "two-pass"\n', encoding="utf-8")  # fmt: skip
    edited(folder / "device.toml", r"\[49\.7, 49\.7, 4\.0\]", "[10.0, 10.0, 2.0]")
    edited(folder / "device.toml", r"\[0\.0, 0\.0, -30\.0\]", "[0.0, 0.0, 0.0]")
    edited(
        folder / "device.toml", r"\[elements\].*", '[states]\nnames = ["b00", "b01", "b02"]\nprogram = ["set-beam"]\n'
    )
    (folder / "twin.toml").write_text("state_steer_deg = [0.0, 15.0, 30.0]\n", encoding="utf-8")
    rehearsed(folder)
    rehearsed(folder, "second", seed=2)


def array(here: Path) -> None:
    """An array of 2 x 2 elements with commands, a tiny one; the page brings the beams."""
    folder = here / "my-array"
    services.new_campaign(folder)
    (folder / "goal.toml").write_text('name = "array"\nstart_ghz = 24.0\nstop_ghz = 24.0\npoints = 1\nwanted_level_db = -20\nstep_deg = 30\nscheme = "two-pass"\n', encoding="utf-8")  # fmt: skip
    edited(folder / "device.toml", r"\[49\.7, 49\.7, 4\.0\]", "[2.8, 2.8, 1.0]")
    edited(folder / "device.toml", r"\[0\.0, 0\.0, -30\.0\]", "[0.0, 0.0, 0.0]")
    page = (Path(__file__).parents[2] / "docs" / "how-to" / "measure-an-array.md").read_text(encoding="utf-8")
    told = re.search(r"```toml\n(.*?)```", page, re.DOTALL)
    assert told
    edited(folder / "device.toml", r"\[elements\].*", told[1])
    (folder / "twin.toml").write_text("seed = 5\ncommand_error_db = 0.2\ncommand_error_deg = 2.0\n", encoding="utf-8")


def array_measured(here: Path) -> None:
    """Stands for the scan of the array."""
    campaign, plan = services.make_plan(here / "my-array")
    made = run_folder(here / "my-array", "first")
    made.path.mkdir(parents=True)
    save_dataset(record_of_rehearsal(campaign, plan, truth=campaign.simulated()), made.record)


def bounce(here: Path) -> None:
    """A patch at 5.8 GHz in a chamber with a standing wave, with the steps that the page states."""
    page = (Path(__file__).parents[2] / "docs" / "how-to" / "take-out-a-bounce.md").read_text(encoding="utf-8")
    told = re.search(r"```toml\n(.*?)```", page, re.DOTALL)
    assert told
    chamber = {"reference": HORN_5_8_GHZ, "standing_wave_db": -28.0}
    device = sized(30.0, 30.0, 5.0, 7.0)
    made = Scenario(device=device, goal=band(5.8), chamber=chamber, twin={"device": {"kind": "patch"}})
    goal = made.write(here / "my-sensor") / "goal.toml"
    goal.write_text(f"{goal.read_text(encoding='utf-8')}\n{told[1]}", encoding="utf-8")


def bounce_measured(here: Path) -> None:
    """Stands for the scan at four distances."""
    rehearsed(here / "my-sensor")


def room(here: Path) -> None:
    """Three unlike devices in one room of one wall; the third is the one that the room is learned for."""
    wall = EchoTable(normal=(1.0, 0.15, -0.1), distance_m=0.8, level_db=-20.0, phase_deg=30.0)
    world = OneRoom(here / "rooms", 3, level_db=-38.0, walls=(wall,), points=2)
    for number, (name, device) in enumerate({"panel": "circular", "dipole": "dipole", "my-range": "2 x 6"}.items()):
        run = world.measured(device, number)
        shutil.copytree(run.campaign.folder, here / name)
        made = run_folder(here / name, "first")
        made.path.mkdir(parents=True)
        save_dataset(run.record, made.record)


def with_room(here: Path) -> None:
    """Stands for the entry in chamber.toml that the page asks for."""
    edited(here / "my-range" / "chamber.toml", r"range_length_m", 'room = "room.nc"\nrange_length_m')


def pairs(here: Path) -> None:
    """Three pairs of antennas of 15, 20 and 9 dBi, 1.2 m apart, by the Friis formula."""
    f, gains = np.array([23.5e9, 24.0e9, 24.5e9]), {"one": 15.0, "two": 20.0, "three": 9.0}
    for a, b in (("one", "two"), ("one", "three"), ("two", "three")):
        k = 2.0 * np.pi * f / 299_792_458.0
        s = np.zeros((3, 2, 2), complex)
        s[:, 1, 0] = s[:, 0, 1] = 10 ** ((gains[a] + gains[b]) / 20) * np.exp(-1j * k * 1.2) / (2.0 * k * 1.2)
        skrf.Network(f=f, f_unit="hz", s=s).write_touchstone(f"{a}-{b}", dir=str(here))


def horn(here: Path) -> None:
    """Stands for the scan of the 38 GHz horn."""
    if "region_deg" not in (here / "my-horn" / "goal.toml").read_text(encoding="utf-8"):
        edited(here / "my-horn" / "goal.toml", r"points = \d+", "points = 2")
    rehearsed(here / "my-horn")


def patch(here: Path) -> None:
    """Stands for the scan of a patch that is right-handed, as its page says."""
    edited(here / "my-patch" / "device.toml", r'polarization = "linear"', 'polarization = "right"')
    rehearsed(here / "my-patch")


def patch_power(here: Path) -> None:
    """Stands for the scan of a patch with a power meter: the levels of a record."""
    edited(here / "my-patch" / "goal.toml", r"points = 1", "points = 1\nstep_deg = 10")
    rehearsed(here / "my-patch", "power")
    kept = run_folder(here / "my-patch", "power").record
    record = open_dataset(kept).load()
    record.close()
    levels = record["trace"].dims, np.abs(record["trace"].values).astype(complex)
    kept.unlink()
    save_dataset(record.assign(trace=levels).assign_attrs(receiver="power"), kept)


def two_pages(here: Path) -> None:
    """The short report: the page about reports has the whole one."""
    (here / "my-campaign" / "report.toml").write_text('form = "short"\n', encoding="utf-8")


def shorter(here: Path) -> None:
    """Scan a device of 14 mm instead of 50 mm: as many commands, a tenth of the points."""
    folder = here / "my-campaign"
    if "[49.7" not in (folder / "device.toml").read_text(encoding="utf-8"):
        return  # another page's campaign is small already
    edited(folder / "goal.toml", r"points = \d+", "step_deg = 15\npoints = 2")
    edited(folder / "device.toml", r"\[49\.7, 49\.7, 4\.0\]", "[14.0, 14.0, 2.0]")
    edited(folder / "device.toml", r"\[0\.0, 0\.0, -30\.0\]", "[0.0, 0.0, 0.0]")
    edited(folder / "device.toml", r"expected_gain_dbi = [0-9.]+", "expected_gain_dbi = 11.0")
    edited(folder / "device.toml", r"\[elements\].*", "")
    edited(folder / "twin.toml", r"\[device\].*", "")


def coarse(here: Path) -> None:
    """Scan a tiny device in steps of 30 deg."""
    folder = here / "my-campaign"
    edited(folder / "goal.toml", r"points = \d+", "step_deg = 30\npoints = 2")
    edited(folder / "device.toml", r"size_mm = \[[^]]*\]", "size_mm = [2.0, 2.0, 1.0]")
    edited(folder / "device.toml", r"\[0\.0, 0\.0, -30\.0\]", "[0.0, 0.0, 0.0]")
    edited(folder / "device.toml", r"\[elements\].*", "")


#: By page: what lies there before its first line.
BEFORE: dict[str, Callable[[Path], None]] = {
    "choose-a-grid": files,
    "find-an-echo": echo,
    "learn-a-room": room,
    "many-beams": beams,
    "measure-an-array": array,
    "measure-gain": pairs,
    "take-out-a-bounce": bounce,
    "tour": tour,
    "work-with-a-file": files,
}
#: By line: what is changed before it, so that it takes less time.
SHORTER: dict[str, Callable[[Path], None]] = {
    "colure report my-campaign --specification my-campaign/limits.toml": two_pages,
    "colure check-room my-range": with_room,
    "colure rehearse my-campaign": shorter,
    "colure acquire my-campaign --run boxes --yes": coarse,
}
#: By line that is not carried out: what is done instead.
INSTEAD: dict[str, Callable[[Path], None]] = {
    "colure acquire my-horn": horn,
    "colure acquire my-array": array_measured,
    "colure acquire my-patch": patch,
    "colure acquire my-sensor": bounce_measured,
    "colure acquire my-patch --run power": patch_power,
}
