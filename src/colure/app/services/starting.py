"""Campaigns to start from: the demo's files, or files for a kind of device in a band that agree with each other.

Of the latter, sizes follow the wavelength; the rest is what a compact chamber of that band usually has (common practice, no source).
All of it is invented and says so.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np

from colure.errors import InputError
from colure.geometry.conventions import power_db
from colure.model.campaign import Campaign
from colure.model.chamber import SimulatedChamber
from colure.model.device import Device
from colure.model.loading import validate
from colure.model.simulated_chamber import PROBE_RING
from colure.model.whole import write_whole

LIGHT = 299_792_458.0
DEMO_FOLDER = Path(__file__).parents[1] / "demo_campaign"
LOWEST_GHZ, HIGHEST_GHZ = 0.3, 330.0
#: A wider band would carry the sizes too far from the wavelength: the top over the bottom.
WIDEST_BAND = 1.5
POINTS = 5
#: The reference horn in wavelengths: aperture H and E plane, slant lengths E and H.
REFERENCE = (4.0, 3.2, 7.2, 8.0)
REFERENCE_BELOW_8_GHZ = (3.0, 2.4, 5.0, 5.5)
#: The seed of the chamber's drawn imperfections.
SEED = 24


@dataclass(frozen=True, kw_only=True)
class StartingKind:
    """A kind of device: its name, its size (x, y, z) in wavelengths, its table in twin.toml for a wavelength in mm.

    front_to_back_db, xpd_db
        What to expect; the figures of the simulated device.
    wanted_level_db
        Level down to which its pattern is wanted.
    """

    name: str
    size: tuple[float, float, float]
    table: Callable[[float], dict[str, Any]]
    front_to_back_db: float
    xpd_db: float
    wanted_level_db: float


def _horn(wavelength_mm: float) -> dict[str, Any]:
    a, b, slant = (_nice(x * wavelength_mm) for x in (3.0, 2.4, 5.0))
    return {"kind": "horn", "aperture_a_mm": a, "aperture_b_mm": b, "slant_e_mm": slant, "slant_h_mm": slant,
            "cross_polar_db": -35.0, "efficiency_db": -0.2}  # fmt: skip


def _panel(wavelength_mm: float) -> dict[str, Any]:
    return {"kind": "panel", "rows": 8, "columns": 8, "pitch_mm": _nice(0.5 * wavelength_mm), "efficiency_db": -1.1}


def _patch(wavelength_mm: float) -> dict[str, Any]:
    length, width = (_nice(x * wavelength_mm) for x in (0.35, 0.45))
    return {"kind": "patch", "length_mm": length, "width_mm": width, "cross_polar_db": -25.0, "efficiency_db": -0.6}


def _dipole(wavelength_mm: float) -> dict[str, Any]:
    return {"kind": "dipole", "axis": "x", "length_mm": _nice(0.5 * wavelength_mm), "efficiency_db": -0.2}


def _array(wavelength_mm: float) -> dict[str, Any]:
    return {"kind": "panel", "rows": 1, "columns": 8, "pitch_mm": _nice(0.5 * wavelength_mm), "taper": 0.0,
            "efficiency_db": -0.8}  # fmt: skip


KINDS: dict[str, StartingKind] = {
    "horn": StartingKind(
        name="Horn", size=(2.4, 3.0, 0.1), table=_horn, front_to_back_db=30.0, xpd_db=35.0, wanted_level_db=-45.0
    ),
    "panel": StartingKind(
        name="Printed 8 x 8 panel",
        size=(4.0, 4.0, 0.2),
        table=_panel,
        front_to_back_db=24.0,
        xpd_db=25.0,
        wanted_level_db=-45.0,
    ),
    "patch": StartingKind(
        name="Patch", size=(0.5, 0.5, 0.05), table=_patch, front_to_back_db=22.0, xpd_db=25.0, wanted_level_db=-35.0
    ),
    "dipole": StartingKind(
        name="Half-wave dipole",
        size=(0.5, 0.05, 0.05),
        table=_dipole,
        front_to_back_db=1.0,
        xpd_db=40.0,
        wanted_level_db=-35.0,
    ),
    "array": StartingKind(
        name="Row of 8 elements",
        size=(4.0, 0.5, 0.2),
        table=_array,
        front_to_back_db=24.0,
        xpd_db=25.0,
        wanted_level_db=-40.0,
    ),
}


def new_campaign(folder: Path) -> list[Path]:
    """Copy the demo campaign as a starting point; refuses to overwrite."""
    sources = sorted(DEMO_FOLDER.glob("*.toml"))
    with _whole_folder(folder, [source.name for source in sources]) as targets:
        for source, target in zip(sources, targets, strict=True):
            write_whole(target, source.read_text(encoding="utf-8"))
        write_probe_calibration(Campaign.load(folder))
    return [*targets, folder / "probe.nc"]


@contextmanager
def _whole_folder(folder: Path, names: Sequence[str]) -> Iterator[list[Path]]:
    """Yield the paths of files that the block writes, the probe's calibration too: all of them, or none and no folder.

    Raises
    ------
    InputError
        If one of them is there already.
    """
    targets = [folder / name for name in names]
    written = [*targets, folder / "probe.nc"]
    taken = [path.name for path in written if path.exists()]
    if taken:
        raise InputError([f"{folder}: holds {', '.join(taken)} already; choose an empty folder"])
    new_folders = [one for one in (folder, *folder.parents) if not one.exists()]
    try:
        folder.mkdir(parents=True, exist_ok=True)
        yield targets
    except BaseException:
        # What failed is to be told, not what could not be taken away after it.
        with suppress(OSError):
            for path in written:
                path.unlink(missing_ok=True)
            for one in new_folders:
                one.rmdir()
        raise


def copy_profile(folder: Path, name: str) -> Path:
    """Copy a shipped instrument profile beside a campaign's chamber.toml; refuses to overwrite."""
    from colure.instruments.profile import profile_path

    if not (folder / "chamber.toml").is_file():
        raise InputError([f"{folder}: holds no chamber.toml; make the campaign first: colure new {folder}"])
    source, target = profile_path(name, None), folder / f"{name}.toml"
    if target.exists():
        raise InputError([f"{folder}: holds {target.name} already; rename or remove it first"])
    write_whole(target, source.read_text(encoding="utf-8"))
    return target


def write_probe_calibration(campaign: Campaign) -> None:
    """The simulated probe comes with the calibration file that a real one would come with."""
    from colure.model.files import save_dataset
    from colure.twin.truth import probe_calibration

    goal = campaign.goal
    band = np.linspace(0.98 * goal.start_ghz, 1.02 * goal.stop_ghz, 9) * 1e9
    ring = 1e-3 * campaign.simulated().probe_ring_mm
    save_dataset(probe_calibration(band, ring_m=ring), campaign.folder / str(campaign.chamber.probe.pattern))


def start_campaign(folder: Path, *, kind: str, band: str) -> list[Path]:
    """Write a starting campaign for a kind of device in a band and return its files; refuses to overwrite.

    Raises
    ------
    InputError
        If the band is no band, or the folder holds a campaign.
    """
    import tomlkit

    start, stop = band_of(band)
    wavelength = LIGHT / (0.5e9 * (start + stop))
    table = KINDS[kind].table(1e3 * wavelength)
    device = _device(KINDS[kind], start, stop, table)
    goal = {"name": f"{KINDS[kind].name}, first look", "start_ghz": start, "stop_ghz": stop,
            "points": 1 if start == stop else POINTS, "wanted_level_db": KINDS[kind].wanted_level_db,
            "scheme": "two-pass"}  # fmt: skip
    document = _chamber(validate(Device, device, source="device.toml"), wavelength)
    campaign = Campaign.of(folder, {"chamber": document.unwrap(), "device": device, "goal": goal})
    simulated = SimulatedChamber.model_validate(
        {"device": table, "probe_ring_mm": _nice(1e3 * PROBE_RING * wavelength)}
    )
    drawn = _drawn(campaign, simulated)
    texts = (
        tomlkit.dumps(document),
        "# The device. Invented: edit size, offset, mass and what you expect of it.\n" + tomlkit.dumps(device),
        "# What is wanted.\n" + tomlkit.dumps(goal),
        "# The truth of the simulated chamber: imperfections drawn within what chamber.toml declares, and its device.\n"
        + tomlkit.dumps(drawn),
    )
    with _whole_folder(folder, ("chamber.toml", "device.toml", "goal.toml", "twin.toml")) as targets:
        for path, text in zip(targets, texts, strict=True):
            write_whole(path, text)
        write_probe_calibration(Campaign.load(folder))
    return [*targets, folder / "probe.nc"]


def band_of(text: str) -> tuple[float, float]:
    """Return the (lowest, highest) frequency in GHz of a band such as 37-40 or 24.1."""
    parts = text.split("-")
    try:
        low, high = float(parts[0]), float(parts[-1])
    except ValueError:
        raise InputError([f"band = {text!r}: must be LOW-HIGH or one frequency, such as 37-40 (GHz)"]) from None
    if len(parts) > 2 or not np.isfinite([low, high]).all():
        raise InputError([f"band = {text!r}: must be LOW-HIGH or one frequency, such as 37-40 (GHz)"])
    if not LOWEST_GHZ <= low <= high <= HIGHEST_GHZ:
        raise InputError([f"band = {text!r}: must rise and lie within {LOWEST_GHZ:g} to {HIGHEST_GHZ:g} GHz"])
    if high > WIDEST_BAND * low:
        raise InputError(
            [f"band = {text!r}: top over bottom must be at most {WIDEST_BAND:g}; give the parts a campaign each (GHz)"]
        )
    return low, high


def _nice(value: float) -> float:
    """Round to four digits."""
    return float(f"{value:.4g}")


def _device(kind: StartingKind, start: float, stop: float, table: Mapping[str, Any]) -> dict[str, Any]:
    """Return device.toml's table; the expected gain is the simulated device's own at band centre."""
    from colure.twin.devices import device_of

    centre = np.array([0.5e9 * (start + stop)])
    wavelength_mm = 1e3 * LIGHT / float(centre[0])
    out: dict[str, Any] = {
        "name": f"{kind.name}, {0.5 * (start + stop):g} GHz",
        "note": "Invented device.",
        "size_mm": [max(0.1, _nice(x * wavelength_mm)) for x in kind.size],
        "offset_mm": [0.0, 0.0, 0.0],
        "mass_kg": 0.3,
        "polarization": "linear",
        "slant_deg": 0.0,
        "expected_gain_dbi": 0.0,
        "expected_xpd_db": kind.xpd_db,
        "expected_front_to_back_db": kind.front_to_back_db,
        "input_limit_dbm": 15.0,
    }
    if table["kind"] == "panel":
        out["elements"] = {name: table[name] for name in ("rows", "columns", "pitch_mm")}
    made = device_of(
        SimulatedChamber.model_validate({"device": table}), Device.model_validate(out), centre, band_hz=centre
    )
    gain = float(np.sum(np.abs(made.far_field([[0.0, 0.0, 1.0]])) ** 2))
    return {**out, "expected_gain_dbi": round(float(power_db(gain)), 1)}


def _chamber(device: Device, wavelength_m: float) -> Any:
    """Return chamber.toml as a document with comments: the demo's chamber, with everything that follows the wavelength at this band's value."""
    import tomlkit

    out: Any = tomlkit.parse((DEMO_FOLDER / "chamber.toml").read_text(encoding="utf-8"))
    frequency = LIGHT / wavelength_m
    a, b, slant_e, slant_h = REFERENCE if frequency >= 8e9 else REFERENCE_BELOW_8_GHZ
    horn_m = float(np.hypot(a, b)) * wavelength_m
    # Room for the device and the horn to turn, and at least a dozen wavelengths, where the probe is a small antenna.
    least = max(0.8, 12.0 * wavelength_m, 5.0 * device.reach_m, 3.0 * horn_m)
    out["range_length_m"] = float(np.ceil(10.0 * least - 1e-9) / 10.0)
    # Absorber is worth less where it is thin in wavelengths.
    out["echo_level_db"] = -40 if frequency < 6e9 else -46 if frequency < 18e9 else -52
    out["largest_device_m"] = max(0.4, _nice(2.5 * device.reach_m))
    out["door_distance_m"] = max(2.0, _nice(float(out["range_length_m"]) + 0.8))
    out["analyzer"]["cable_loss_db"] = round(12.0 * float(np.sqrt(frequency / 24e9)), 1)
    sizes = {"aperture_a_mm": a, "aperture_b_mm": b, "slant_e_mm": slant_e, "slant_h_mm": slant_h}
    for name, size in sizes.items():
        out["reference"][name] = _nice(1e3 * size * wavelength_m)
    return out


def _drawn(campaign: Campaign, simulated: SimulatedChamber) -> dict[str, Any]:
    """Return twin.toml's table: imperfections drawn within what the chamber declares, around the simulated device."""
    from colure.planning.preflight import make_plan
    from colure.twin.rehearsal import draw_chamber

    campaign, plan = make_plan(campaign)
    truth = draw_chamber(campaign.chamber, campaign.device, plan, SEED, holding=simulated)
    table = truth.model_dump(mode="json", exclude_defaults=True, exclude_none=True)
    device, echoes = table.pop("device"), table.pop("echoes", [])
    rounded: dict[str, Any] = _rounded({"seed": truth.seed, "noise": True, **table})
    return {**rounded, "device": {"kind": device.pop("kind"), **device}, "echoes": _rounded(echoes)}


def _rounded(value: Any) -> Any:
    """Round every float to four digits, for people."""
    if isinstance(value, float):
        return _nice(value)
    if isinstance(value, Mapping):
        return {key: _rounded(one) for key, one in value.items()}
    if isinstance(value, (list, tuple)):
        return [_rounded(one) for one in value]
    return value
