"""Plans of mounts with joints: reach, limits and solids, at every point and on every way."""

from __future__ import annotations

import re
from pathlib import Path

import numpy as np
import pytest

from colure.errors import InputError
from colure.model.campaign import Campaign
from colure.model.chamber import Chamber
from colure.model.joints import values_of
from colure.model.loading import load
from colure.planning.joint_path import clearance_of, device_solid
from colure.planning.preflight import make_plan
from colure.planning.scan import order_of, scan_grid
from tests.endtoend.test_near_to_far import edited
from tests.mounts import SOLIDS_OF_ARM, SOLIDS_OF_SIX, on_mount, six_axes, swinging_arm

RANGE = {"swinging arm": 1.0, "six axes": 0.6}
MOUNT = {
    "swinging arm": (lambda: swinging_arm(1000), SOLIDS_OF_ARM),
    "six axes": (lambda: six_axes(600), SOLIDS_OF_SIX),
}


def small(
    folder: Path, name: str, *, region: float, size_mm: str = "[62, 6, 6]", ghz: float = 2.4, offset: str = "[0, 0, 0]"
) -> None:
    """A dipole of 2.4 GHz on a mount with solids: few points."""
    edited(
        folder,
        "goal.toml",
        ("points = 11", "points = 2"),
        ("24.00", str(ghz)),
        ("24.25", str(ghz + 0.01)),
        ("= -50 ", "= -30 "),
    )
    text = (folder / "goal.toml").read_text(encoding="utf-8")
    (folder / "goal.toml").write_text(text + f"\nregion_deg = {region}\n", encoding="utf-8")
    text = (folder / "device.toml").read_text(encoding="utf-8").split("[elements]")[0]
    text = text.replace("[49.7, 49.7, 4.0]", size_mm).replace("[0.0, 0.0, -30.0]", offset)
    (folder / "device.toml").write_text(text, encoding="utf-8")
    joints, solids = MOUNT[name]
    on_mount(folder, joints(), range_m=RANGE[name], solids=solids)
    edited(folder, "chamber.toml", ('pattern = "probe.nc"', "#"))


def require_sound(campaign: Campaign, targets: np.ndarray) -> None:
    """Walk along every move of a plan with its own small steps, and look at every limit and every pair of solids."""
    joints = campaign.chamber.positioner.joints
    low, high = np.array([j.min_deg for j in joints]), np.array([j.max_deg for j in joints])
    assert np.all(targets >= low - 1e-9) and np.all(targets <= high + 1e-9)
    clear = clearance_of(campaign.chamber, device_solid(campaign.device))
    assert clear is not None
    home = np.array([[j.home_deg for j in joints]])
    places = np.concatenate([home, targets, home])
    ways = np.diff(places, axis=0)
    share = np.linspace(0.0, 1.0, 12, endpoint=False)[:, None, None]
    walked = (places[:-1] + share * ways).reshape(-1, len(joints))
    assert clear.gaps(values_of(joints, walked)).min() > 0.0


@pytest.mark.parametrize("name", ["swinging arm", pytest.param("six axes", marks=pytest.mark.nightly)])
def test_a_plan_stays_within_limits_and_touches_nothing(campaign_folder, name, request):
    if name == "six axes":
        request.getfixturevalue("nightly")
    small(campaign_folder, name, region=90 if name == "swinging arm" else 60)
    campaign, plan = make_plan(Campaign.load(campaign_folder))
    assert plan.coordinates_deg is not None and plan.coordinates_deg.shape == (len(plan), 3)
    require_sound(campaign, plan.targets_deg)
    ties = plan.targets_deg[plan.role == 1]
    assert len(ties) > 1 and np.ptp(ties, axis=0).max() == 0.0


def test_what_is_out_of_reach_names_joint_and_limit(campaign_folder):
    small(campaign_folder, "swinging arm", region=175)
    with pytest.raises(InputError, match=r"theta = .* deg is out of reach .*: post would touch (horn|tip|boom)"):
        make_plan(Campaign.load(campaign_folder))
    text = (campaign_folder / "chamber.toml").read_text(encoding="utf-8").replace(SOLIDS_OF_ARM, "")
    text = text.replace("min_deg = -185", "min_deg = -100").replace("max_deg = 185", "max_deg = 100")
    (campaign_folder / "chamber.toml").write_text(text, encoding="utf-8")
    words = r"out of reach .*joint arm = -?\d+.*: must be from -100 to 100 deg[^$]*region_deg = 175: must be at most (\d+) deg"
    with pytest.raises(InputError, match=words) as refused:
        make_plan(Campaign.load(campaign_folder))
    # The region that the message names is scanned within reach, and no larger one.
    most = int(re.search(words, str(refused.value))[1])
    for region, fits in ((most, True), (most + 1, False)):
        edited(campaign_folder, "goal.toml", ("region_deg = ", f"region_deg = {region} # "))
        campaign = Campaign.load(campaign_folder)
        assert (scan_grid(campaign, order_of(campaign)).reach_deg <= 100) == fits


def test_a_device_in_the_way_of_the_arm_is_refused_by_name(campaign_folder):
    small(campaign_folder, "swinging arm", region=100, offset="[0, 0, 0]")
    edited(campaign_folder, "device.toml", ("[62, 6, 6]", "[380, 6, 6]"))
    edited(campaign_folder, "chamber.toml", ("at_mm = [0, 0, 950]", "at_mm = [0, 0, 180]"))
    with pytest.raises(InputError, match="device"):
        make_plan(Campaign.load(campaign_folder))


def test_flying_is_refused_in_words(campaign_folder):
    small(campaign_folder, "swinging arm", region=100)
    edited(campaign_folder, "goal.toml", ('scheme = "two-pass"', 'scheme = "two-pass"\nstyle = "fly"\n#'))
    with pytest.raises(InputError, match="style = 'fly': must be 'step' with chamber.toml positioner.joints"):
        make_plan(Campaign.load(campaign_folder))


@pytest.mark.parametrize(
    ("old", "new", "words"),
    [
        ('name = "arm"', 'name = "roll"', "name = 'roll': must not be one of"),
        ('name = "arm"', 'name = "turntable"', "name 'turntable': given twice"),
        ("axis = [0, 1, 0]", "axis = [0, 0, 0]", "axis = .*: must have a length above 0"),
        ('letter = "B"', 'letter = "C"', "letter 'C': given twice"),
        ("max_deg = 200", "max_deg = -300", "max_deg = -300 must be above min_deg"),
        ("load_limit_kg = 5", 'load_limit_kg = 5\ngeometry = "azimuth-over-elevation"', "geometry: remove it"),
        ("[alignment]", "[alignment]\ntheta_zero_deg = 3.0", "alignment.theta_zero_deg = 3 .*: remove it"),
        (
            "[alignment]",
            "[alignment]\ntheta_zero_deg = 3.0\naxes_offset_mm = 2",
            "zero_deg = 3 .*axes_offset_mm = 2 .*: remove them",
        ),
        ("speed_deg_s", "speed_mm_s", "speed_mm_s: only a joint with kind = 'prismatic'"),
        ('on = "arm"', 'on = "leg"', "on = 'leg': must be one of room, device, probe"),
    ],
)
def test_a_fault_in_a_joint_names_it(campaign_folder, old, new, words):
    small(campaign_folder, "swinging arm", region=100)
    edited(campaign_folder, "chamber.toml", (old, new))
    with pytest.raises(InputError, match=words):
        load(Chamber, campaign_folder / "chamber.toml")


def test_a_chamber_with_joints_survives_its_own_dump(campaign_folder):
    small(campaign_folder, "six axes", region=100)
    chamber = load(Chamber, campaign_folder / "chamber.toml")
    again = Chamber.model_validate(chamber.model_dump(mode="json"))
    assert again == chamber and again.alignment == chamber.alignment
    assert list(again.driven_table) == ["turntable", "waist", "shoulder", "elbow", "forearm", "wrist", "flange"]
    assert list(again.axis_table) == ["azimuth", "roll", "probe"]


@pytest.mark.nightly
@pytest.mark.parametrize("name", MOUNT)
def test_a_thousand_random_goals(campaign_folder, name, request):
    """No plan breaks a limit or touches a solid; a goal that cannot be met is refused in words."""
    if not request.config.getoption("--nightly"):
        pytest.skip("500 random goals a mount: --nightly")
    random, planned = np.random.default_rng(8), 0
    template = {path.name: path.read_text(encoding="utf-8") for path in campaign_folder.glob("*.toml")}
    for _ in range(500):
        for file, text in template.items():
            (campaign_folder / file).write_text(text, encoding="utf-8")
        size, x, y, z = random.uniform(5, 250), *random.uniform(-60, 60, 3)
        small(
            campaign_folder, name, region=float(random.uniform(20, 180)), ghz=float(random.uniform(1.0, 3.0)),
            size_mm=f"[{size:.1f}, {random.uniform(5, 100):.1f}, {random.uniform(5, 60):.1f}]", offset=f"[{x:.1f}, {y:.1f}, {z:.1f}]",
        )  # fmt: skip
        try:
            campaign, plan = make_plan(Campaign.load(campaign_folder))
        except InputError as error:
            assert any("out of reach" in one or "would bring" in one or "must be" in one for one in error.faults)
            continue
        planned += 1
        require_sound(campaign, plan.targets_deg)
    print(f"{name}: {planned} of 500 goals planned")
    assert planned > 100
