"""Devices and chambers that are not the demo's, each as changes of the demo campaign's tables.

Every one is small in waves or has few frequencies, so that hundreds of complete campaigns can be carried out. What the
chamber declares is what its imperfections are drawn from: the declarations are right. Invented devices and chambers.
"""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any

import numpy as np
import tomlkit

from colure.app import services
from colure.model.campaign import Campaign
from colure.model.files import save_dataset
from colure.twin.truth import probe_calibration
from tests.mounts import six_axes, swinging_arm, table_on_swing

Tables = Mapping[str, Any]


@dataclass(frozen=True)
class Scenario:
    """One device in one chamber: values that replace those of the demo's files (None removes an entry).

    true
        What the chamber is where it is not as declared.
    """

    device: Tables = field(default_factory=dict)
    goal: Tables = field(default_factory=dict)
    chamber: Tables = field(default_factory=dict)
    twin: Tables = field(default_factory=dict)
    recipe: str = ""
    evaluation: Tables = field(default_factory=dict)
    true: Tables = field(default_factory=dict)

    def really(self) -> Scenario | None:
        """Return the scenario that declares its chamber as it is, None where this one does."""
        return replace(self, chamber={**self.chamber, **self.true}, true={}) if self.true else None

    def write(self, folder: Path) -> Path:
        """Write the campaign into an empty folder and return it."""
        services.new_campaign(folder)
        for name, changes in (("device", self.device), ("goal", self.goal), ("chamber", self.chamber)):
            path = folder / f"{name}.toml"
            document = tomlkit.parse(path.read_text(encoding="utf-8"))
            _merge(document, changes)
            path.write_text(tomlkit.dumps(document), encoding="utf-8")
        twin = tomlkit.document()
        _merge(twin, {"seed": 1, **self.twin})
        (folder / "twin.toml").write_text(tomlkit.dumps(twin), encoding="utf-8")
        if self.evaluation:
            (folder / "evaluation.toml").write_text(tomlkit.dumps(dict(self.evaluation)), encoding="utf-8")
        if self.recipe:
            (folder / "recipe.toml").write_text(self.recipe, encoding="utf-8")
        campaign = Campaign.load(folder)
        if campaign.chamber.probe.pattern is not None:
            band = np.linspace(0.98 * campaign.goal.start_ghz, 1.02 * campaign.goal.stop_ghz, 5) * 1e9
            ring = 1e-3 * campaign.simulated().probe_ring_mm
            save_dataset(probe_calibration(band, ring_m=ring), folder / campaign.chamber.probe.pattern)
        return folder


def _merge(into: Any, changes: Tables) -> None:
    for key, value in changes.items():
        if value is None:
            into.pop(key, None)
        elif isinstance(value, Mapping) and key in into:
            _merge(into[key], value)
        else:
            into[key] = value


def band(start_ghz: float, stop_ghz: float | None = None, points: int = 1, **more: Any) -> dict[str, Any]:
    """Return the goal of a band."""
    return {"start_ghz": start_ghz, "stop_ghz": stop_ghz or start_ghz, "points": points, "wanted_level_db": -40, **more}


def sized(x: float, y: float, z: float, gain_dbi: float, **more: Any) -> dict[str, Any]:
    """Return a device of a size in mm, centred on the axes' intersection, without a declared element grid."""
    return {"size_mm": [x, y, z], "offset_mm": [0.0, 0.0, 0.0], "expected_gain_dbi": gain_dbi, "elements": None, **more}


def four_by_four(**more: Any) -> dict[str, Any]:
    """Return a 4 x 4 panel at 24 GHz."""
    grid = {"rows": 4, "columns": 4, "pitch_mm": 6.213}
    return {**sized(24.9, 24.9, 4.0, 16.5), "elements": grid, **more}


#: At 2.4 GHz the demo's reference horn would be a waveguide below cut-off: a horn of that band instead.
HORN_2_4_GHZ = {
    "aperture_a_mm": 250.0,
    "aperture_b_mm": 190.0,
    "slant_e_mm": 300.0,
    "slant_h_mm": 330.0,
}
AT_2_4_GHZ: dict[str, Any] = {"echo_level_db": -45, "reference": HORN_2_4_GHZ, "largest_device_m": 0.5}
TRUE_HORN_38_GHZ = {
    "kind": "horn", "aperture_a_mm": 27.0, "aperture_b_mm": 21.0, "slant_e_mm": 45.0, "slant_h_mm": 45.0,
}  # fmt: skip
HORN_38_GHZ = {"aperture_a_mm": 32.0, "aperture_b_mm": 26.0, "slant_e_mm": 56.0, "slant_h_mm": 62.0}
HORN_77_GHZ = {"aperture_a_mm": 16.0, "aperture_b_mm": 13.0, "slant_e_mm": 28.0, "slant_h_mm": 31.0}
HORN_5_8_GHZ = {"aperture_a_mm": 140.0, "aperture_b_mm": 110.0, "slant_e_mm": 200.0, "slant_h_mm": 220.0}
#: Both polarizations as they were read: neither a transform nor the mode filter that works on its waves.
NO_TRANSFORM = "\n".join(f'[[steps]]\nstep = "{step}"' for step in ("drift", "gain", "purity", "assemble", "alignment"))
AZIMUTH_OVER_ELEVATION = {
    "geometry": "azimuth-over-elevation",
    "roll": None,
    "elevation": {"min_deg": -95, "max_deg": 95, "speed_deg_s": 20, "acceleration_deg_s2": 40, "settle_s": 0.25},
}
#: Strong echoes with known paths, a time gate that closes before the nearer one, and 2 GHz of band.
GATED = "\n".join(
    f'[[steps]]\nstep = "{step}"'
    for step in ("drift", "gate", "gain", "purity", "assemble", "alignment", "far-field", "mode-filter")
)
KNOWN_ECHOES = {"echo_level_db": -35, "echo_excess_m": [1.0, 1.4]}
ONE = band(24.1)
#: Figures beyond the usual ones; the sector holds the null of a dipole along z.
FURTHER = {
    "components": ["circular", "theta-phi", "ludwig-2"],
    "gain_units": ["dBd", "linear"],
    "rear_sector_deg": 45.0,
    "cone_deg": 20.0,
    "horizon_bands_deg": [15.0, 30.0],
    "coverage_percent": [20.0, 50.0, 80.0],
    "transmit_power_dbm": 10.0,
    "sensitivity_dbm": -90.0,
    "cut_planes_deg": [45.0],
    "reference_axis_deg": [0.0, 0.0],
    "beamwidth_levels_db": [6.0, 10.0],
    "sectors": [{"name": "front", "azimuth_deg": [-30.0, 30.0], "elevation_deg": [-20.0, 20.0]}],
}


def mounted(joints: str, *, ports: int = 1, **more: Any) -> dict[str, Any]:
    """Return a chamber whose mount has joints in place of two axes."""
    return {
        "positioner": {
            "geometry": None,
            "azimuth": None,
            "roll": None,
            "joints": tomllib.loads(joints)["positioner"]["joints"],
        },
        "probe": {"roll": None, "ports": ports},
        "alignment": {"theta_zero_deg": None, "roll_axis_tilt_deg": None, "axes_offset_mm": None},
        **more,
    }


def circular(axial_ratio_db: float) -> Scenario:
    """Return a right-handed 4 x 4 panel."""
    held = {"kind": "panel", "rows": 4, "columns": 4, "pitch_mm": 6.213}
    ellipse = {"polarization": "elliptical", "sense": "right", "axial_ratio_db": axial_ratio_db}
    return Scenario(
        device=four_by_four(polarization="right", axial_ratio_db=axial_ratio_db),
        goal=ONE,
        twin={"device": {**held, **ellipse}},
    )


#: Steps of the range's length, wavelengths at mid-band.
EIGHTHS = [0.0, 0.125, 0.25, 0.375]
SCENARIOS: dict[str, Scenario] = {
    "panel at the intersection": Scenario(device={"offset_mm": [0.0, 0.0, 0.0]}, goal=band(24.1)),
    "4 x 4 panel, echoes 6 dB too strong": Scenario(
        device=four_by_four(offset_mm=[0.0, 0.0, -30.0]), goal=ONE, true={"echo_level_db": -58}
    ),
    "4 x 4 panel": Scenario(device=four_by_four(offset_mm=[0.0, 0.0, -30.0]), goal=ONE),
    "circular, 0.05 dB": circular(0.05),
    "circular, 1 dB": circular(1.0),
    "circular, 3 dB": circular(3.0),
    "dipole along x": Scenario(
        device=sized(6.0, 1.0, 1.0, 2.1), goal=ONE, twin={"device": {"kind": "dipole", "axis": "x"}}
    ),
    "dipole along z": Scenario(
        device=sized(1.0, 1.0, 6.0, 2.1, beam_deg=[90.0, 0.0]),
        goal=ONE,
        twin={"device": {"kind": "dipole", "axis": "z"}},
    ),
    "turnstile": Scenario(
        device=sized(6.0, 6.0, 1.0, 4.8, polarization="right"), goal=ONE, twin={"device": {"kind": "crossed-dipoles"}}
    ),
    "2.4 GHz patch, 1 m": Scenario(
        device=sized(60.0, 60.0, 6.0, 7.0),
        goal=band(2.45),
        chamber={"range_length_m": 1.0, "echo_level_db": -35, "reference": HORN_2_4_GHZ, "largest_device_m": 0.5},
        twin={"device": {"kind": "patch"}},
    ),
    "steered 45 deg": Scenario(
        device=four_by_four(),
        goal=ONE,
        twin={"device": {"kind": "panel", "rows": 4, "columns": 4, "pitch_mm": 6.213, "steer_deg": [45.0, 0.0]}},
    ),
    "offset 120 mm": Scenario(device=sized(12.0, 12.0, 3.0, 11.0, offset_mm=[0.0, 0.0, 120.0]), goal=band(10.0)),
    "region 60 deg": Scenario(device=four_by_four(offset_mm=[0.0, 0.0, -30.0]), goal=band(24.1, region_deg=60)),
    "azimuth over elevation": Scenario(
        device=four_by_four(),
        goal=ONE,
        chamber={"positioner": AZIMUTH_OVER_ELEVATION},
    ),
    "on the fly": Scenario(device=four_by_four(), goal={**band(24.0, 24.2, 3), "style": "fly"}),
    "no transform": Scenario(
        device=four_by_four(),
        goal=band(24.1, scheme="one-pass", region_deg=90),
        chamber={"range_length_m": 2.5},
    ),
    "no transform, both polarizations": Scenario(
        device=four_by_four(), goal=ONE, chamber={"range_length_m": 2.5}, recipe=NO_TRANSFORM
    ),
    "strong drift with jumps": Scenario(
        device=four_by_four(),
        goal=ONE,
        chamber={
            "tie_drift_db": 1.5,
            "tie_drift_deg": 40.0,
            "tie_interval_s": 60,
            "jumps": {"per_hour": 6.0, "level_db": 0.3, "phase_deg": 6.0},
        },
    ),
    "leakage, standing wave, compression": Scenario(
        device=four_by_four(),
        goal=ONE,
        chamber={"analyzer": {"isolation_db": -90.0, "linearity_db": 0.05}, "standing_wave_db": -35.0},
    ),
    "38 GHz horn": Scenario(
        device=sized(21.0, 27.0, 5.0, 18.0, offset_mm=[0.0, 0.0, -15.0]),
        goal=band(38.0),
        chamber={"reference": HORN_38_GHZ},
        twin={"device": TRUE_HORN_38_GHZ},
    ),
    "38 GHz horn, four distances": Scenario(
        device=sized(21.0, 27.0, 5.0, 18.0, offset_mm=[0.0, 0.0, -15.0]),
        goal=band(37.5, 38.5, 3, distance_steps={"wavelengths": EIGHTHS, "expanded_mm": 0.04}),
        chamber={"reference": HORN_38_GHZ, "standing_wave_db": -28.0},
        twin={
            "device": {
                "kind": "horn",
                "aperture_a_mm": 27.0,
                "aperture_b_mm": 21.0,
                "slant_e_mm": 45.0,
                "slant_h_mm": 45.0,
            }
        },
    ),
    "patch, 5.8 GHz, four distances": Scenario(
        device=sized(30.0, 30.0, 5.0, 7.0),
        goal=band(5.75, 5.85, 3, distance_steps={"wavelengths": EIGHTHS, "expanded_mm": 0.2}),
        chamber={"reference": HORN_5_8_GHZ, "standing_wave_db": -28.0, "echo_level_db": -48},
        twin={"device": {"kind": "patch"}},
    ),
    "helix, 5.8 GHz": Scenario(
        device=sized(18.0, 18.0, 50.0, 10.0, polarization="right"),
        goal=band(5.8),
        chamber={"reference": HORN_5_8_GHZ, "echo_level_db": -42},
        twin={"device": {"kind": "helix", "turns": 4}},
    ),
    "slanted dipole, 77 GHz, 20 mm off": Scenario(
        device=sized(2.0, 2.0, 1.0, 2.1, slant_deg=35.0, offset_mm=[20.0, 0.0, 0.0]),
        goal=band(77.0),
        chamber={"reference": HORN_77_GHZ},
        twin={"device": {"kind": "dipole"}},
    ),
    "swinging arm, 4 x 4 panel": Scenario(
        device=four_by_four(offset_mm=[0.0, 0.0, -30.0]), goal=ONE, chamber=mounted(swinging_arm(1200))
    ),
    "swinging arm over one side, dipole 150 mm off": Scenario(
        device=sized(60.0, 6.0, 6.0, 2.1, offset_mm=[150.0, 0.0, 0.0]),
        goal=band(2.45),
        chamber=mounted(
            swinging_arm(1200, arm="[-2, 182]"), echo_level_db=-45, reference=HORN_2_4_GHZ, largest_device_m=0.5
        ),
        twin={"device": {"kind": "dipole", "axis": "x"}},
    ),
    "swinging arm, cable of 15 deg, 4 x 4 panel": Scenario(
        device=four_by_four(offset_mm=[0.0, 0.0, -30.0]),
        goal=ONE,
        chamber=mounted(swinging_arm(1200), cable_flex_deg=15.0),
    ),
    "arch, two ports, 38 GHz horn": Scenario(
        device=sized(21.0, 27.0, 5.0, 18.0),
        goal=band(38.0, region_deg=140, scheme="auto"),
        chamber=mounted(
            swinging_arm(800, arm="[-2, 165]", roll=False), range_length_m=0.8, reference=HORN_38_GHZ, ports=2
        ),
        twin={"device": TRUE_HORN_38_GHZ},
    ),
    "six axes, 38 GHz horn": Scenario(
        device=sized(21.0, 27.0, 5.0, 18.0, offset_mm=[0.0, 0.0, -15.0]),
        goal=band(38.0),
        chamber=mounted(six_axes(600, base_mm=1600), range_length_m=0.6, reference=HORN_38_GHZ),
        twin={"device": TRUE_HORN_38_GHZ},
    ),
    "six axes, dipole 60 mm off": Scenario(
        device=sized(60.0, 6.0, 6.0, 2.1, offset_mm=[60.0, 0.0, 0.0]),
        goal=band(2.45),
        chamber=mounted(six_axes(600, base_mm=1600), range_length_m=0.6, **AT_2_4_GHZ),
        twin={"device": {"kind": "dipole", "axis": "x"}},
    ),
    "arch, patch 40 mm off": Scenario(
        device=sized(60.0, 60.0, 6.0, 7.0, offset_mm=[0.0, 40.0, 30.0]),
        goal=band(2.45),
        chamber=mounted(swinging_arm(1000, arm="[-2, 182]"), range_length_m=1.0, **AT_2_4_GHZ),
        twin={"device": {"kind": "patch"}},
    ),
    "table on a swing, patch 40 mm off": Scenario(
        device=sized(60.0, 60.0, 6.0, 7.0, offset_mm=[0.0, 40.0, 30.0]),
        goal=band(2.45),
        chamber=mounted(table_on_swing(1000), range_length_m=1.0, **AT_2_4_GHZ),
        twin={"device": {"kind": "patch"}},
    ),
    "further figures, 4 x 4 panel": Scenario(device=four_by_four(), goal=ONE, evaluation=FURTHER),
    "further figures, dipole along z": Scenario(
        device=sized(1.0, 1.0, 6.0, 2.1, beam_deg=[90.0, 0.0]),
        goal=ONE,
        twin={"device": {"kind": "dipole", "axis": "z"}},
        evaluation={**FURTHER, "up": "z"},
    ),
    "dual port": Scenario(
        device=four_by_four(),
        goal=ONE,
        chamber={"probe": {"ports": 2, "imbalance_db": 0.5, "imbalance_deg": 4.0}},
    ),
    "dipole along z, ties at its null": Scenario(
        device=sized(1.0, 1.0, 6.0, 2.1), goal=ONE, twin={"device": {"kind": "dipole", "axis": "z"}}
    ),
    "weak signal": Scenario(device=four_by_four(), goal=ONE, chamber={"analyzer": {"power_dbm": -42}}),
    "region 20 deg, rim in a null": Scenario(device=four_by_four(), goal=band(24.1, region_deg=20)),
    "gated, 4 x 4 panel": Scenario(
        device=four_by_four(offset_mm=[0.0, 0.0, -30.0]),
        goal=band(23.1, 25.1, 21),
        chamber=KNOWN_ECHOES,
        recipe=GATED,
    ),
    "gated, dipole along x": Scenario(
        device=sized(6.0, 1.0, 1.0, 2.1),
        goal=band(23.1, 25.1, 21),
        chamber=KNOWN_ECHOES,
        twin={"device": {"kind": "dipole", "axis": "x"}},
        recipe=GATED,
    ),
}
