"""Random goals: devices, ranges, regions, axes, wishes and imperfections that a range may meet."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from colure.geometry.kinematics import Geometry
from colure.model.campaign import Campaign
from colure.model.chamber import AlignmentTolerance, Axis
from colure.model.goal import Want
from colure.twin.declared import stand_in
from colure.twin.truth import figures_of

BAND = (24.0, 24.25)


def axis(rng: np.random.Generator, low: float, high: float) -> Axis:
    """Draw an axis that reaches from low to high, fast or slow, with or without a jerk limit."""
    return Axis(
        min_deg=low,
        max_deg=high,
        speed_deg_s=float(rng.uniform(5, 60)),
        acceleration_deg_s2=float(rng.uniform(10, 200)),
        settle_s=float(rng.uniform(0.05, 0.6)),
        jerk_deg_s3=float(rng.uniform(50, 2000)) if rng.random() < 0.3 else None,
        home_deg=0.0,
        sense=int(rng.choice([1, -1])) if low == -high else 1,
    )


def draw(base: Campaign, seed: int) -> Campaign:
    """Change the demo campaign into another one of the same band (the probe's calibration covers it)."""
    rng = np.random.default_rng((seed, 77))
    geometry = Geometry.ROLL_OVER_AZIMUTH if rng.random() < 0.75 else rng.choice(
        [Geometry.AZIMUTH_OVER_ELEVATION, Geometry.ELEVATION_OVER_AZIMUTH]
    )  # fmt: skip
    geometry = Geometry(geometry)
    dual = bool(rng.random() < 0.4)
    second = axis(rng, -200.0, 200.0)
    roll, elevation = (second, None) if geometry is Geometry.ROLL_OVER_AZIMUTH else (None, second)
    positioner = base.chamber.positioner.model_copy(
        update={"geometry": geometry, "azimuth": axis(rng, -260.0, 260.0), "roll": roll, "elevation": elevation}
    )
    if geometry is Geometry.ELEVATION_OVER_AZIMUTH:
        positioner = positioner.model_copy(update={"elevation": axis(rng, -260.0, 260.0)})
    tolerance = float(rng.uniform(0.2, 1.5))
    alignment = AlignmentTolerance(
        theta_zero_deg=0.08 * tolerance, roll_axis_tilt_deg=0.06 * tolerance, axes_offset_mm=0.2 * tolerance,
        probe_roll_zero_deg=0.25 * tolerance, distance_mm=2.0 * tolerance, device_pose_deg=0.05 * tolerance,
    )  # fmt: skip
    chamber = base.chamber.model_copy(update={
        "positioner": positioner,
        "range_length_m": float(rng.uniform(0.5, 2.5)),
        "echo_level_db": float(rng.uniform(-60, -42)),
        "cable_flex_deg": float(rng.uniform(0.1, 1.5)),
        "tie_interval_s": float(rng.uniform(60, 400)),
        "probe": base.chamber.probe.model_copy(update={"ports": 2 if dual else 1, "roll": axis(rng, -300.0, 300.0)}),
        "alignment": alignment,
        "analyzer": base.chamber.analyzer.model_copy(update={
            "power_dbm": float(rng.uniform(-15, 10)), "max_power_dbm": 10.0, "if_bandwidth_hz": float(rng.choice([300, 1000, 5000]))}),
    })  # fmt: skip
    size = rng.uniform(18.0, 32.0, 2)
    device = base.device.model_copy(update={
        "size_mm": (float(size[0]), float(size[1]), 3.0),
        "offset_mm": tuple(float(x) for x in rng.uniform([-5, -5, -8], [5, 5, 8])),
        "expected_gain_dbi": float(10 * np.log10(4 * np.pi * size[0] * size[1] / 12.4**2)),
        "elements": None,
        "slant_deg": float(rng.choice([0.0, 0.0, 45.0, 90.0])),
    })  # fmt: skip
    points = int(rng.integers(1, 4))
    whole = geometry is not Geometry.ROLL_OVER_AZIMUTH or rng.random() < 0.4
    region = 180.0 if whole else float(rng.uniform(50, 130))
    wishes = {"gain_dbi": 0.6, "beamwidth_e_deg": 4.0, "beamwidth_h_deg": 4.0}
    if size.min() > 25.0 and region > 60.0:  # smaller devices have no side lobe of their own
        wishes["side_lobe_e_db"] = 4.0
    kept = {name: value for name, value in wishes.items() if rng.random() < 0.6}
    goal = {
        "name": f"random {seed}", "start_ghz": BAND[0], "stop_ghz": BAND[0] if points == 1 else BAND[1], "points": points,
        "wanted_level_db": float(rng.uniform(-50, -30)), "region_deg": region,
        "want": Want(**kept).model_dump(exclude_none=True),
    }  # fmt: skip
    drawn = replace(base, goal=type(base.goal).model_validate(goal), chamber=chamber, device=device)
    return replace(drawn, device=device.model_copy(update=expectations(drawn)))


def expectations(campaign: Campaign) -> dict[str, float]:
    """Return what a designer would expect of the stand-in; the weaker of the two first side lobes."""
    band = campaign.goal.frequency_hz
    middle = band[band.size // 2 :][:1]
    true = figures_of(stand_in(campaign.device, middle, band_hz=band), campaign.device.slant_deg)[0]
    lobes = [true[name] for name in ("side_lobe_e_db", "side_lobe_h_db") if np.isfinite(true[name])]
    out = {"expected_xpd_db": true["xpd_db"], "expected_front_to_back_db": true["front_to_back_db"]}
    return {**out, "expected_side_lobe_db": max(-60.0, min(lobes))} if lobes else out
