"""Mounts of other kinds than the three stacks: a swinging arm over a turntable, and a six-axis arm that holds the probe."""

from __future__ import annotations

from pathlib import Path

#: Joints in `chamber.toml`; `{range_mm}` is the range length.
MOVES = "speed_deg_s = 30\nacceleration_deg_s2 = 60\n"


def joint(
    name: str,
    letter: str,
    carries: str,
    axis: str,
    point_mm: str = "[0, 0, 0]",
    travel: str = "[-185, 185]",
    more: str = "",
) -> str:
    """Return one joint as TOML."""
    low, high = (end.strip() for end in travel.strip("[]").split(","))
    return (
        f'[[positioner.joints]]\nname = "{name}"\nletter = "{letter}"\ncarries = "{carries}"\naxis = {axis}\n'
        f"point_mm = {point_mm}\nmin_deg = {low}\nmax_deg = {high}\n{MOVES}{more}\n"
    )


def swinging_arm(range_mm: float, *, arm: str = "[-185, 185]", roll: bool = True, more: str = "") -> str:
    """A device on a turntable, and an arm that swings the probe over it; zero is the arm above the turntable."""
    text = joint("turntable", "C", "device", "[0, 0, -1]", travel="[-10, 370]", more=more)
    text += joint("arm", "B", "probe", "[0, 1, 0]", travel=arm, more=more)
    return text + (
        joint("rotary", "U", "probe", "[0, 0, 1]", f"[0, 0, {range_mm}]", "[-200, 200]", more) if roll else ""
    )


def telescope(range_mm: float) -> str:
    """A turntable, and an arm pivoted 100 mm below the device: a telescope keeps the range length, a tilt looks back."""
    text = joint("turntable", "C", "device", "[0, 0, -1]", travel="[-10, 370]")
    text += joint("arm", "B", "probe", "[0, 1, 0]", "[0, 0, -100]")
    text += (
        '[[positioner.joints]]\nname = "telescope"\nletter = "X"\ncarries = "probe"\nkind = "prismatic"\naxis = [0, 0, 1]\n'
        "min_mm = -400\nmax_mm = 400\nspeed_mm_s = 200\nacceleration_mm_s2 = 400\n"
    )
    text += joint("tilt", "A", "probe", "[0, 1, 0]", f"[0, 0, {range_mm}]", "[-90, 90]")
    return text + joint("rotary", "U", "probe", "[0, 0, 1]", f"[0, 0, {range_mm}]", "[-200, 200]")


def table_on_swing(range_mm: float) -> str:
    """A probe that stands and rolls; the device is held as by azimuth over elevation, its polar axis across the range."""
    text = joint("swing", "A", "device", "[1, 0, 0]") + joint("table", "B", "device", "[0, -1, 0]")
    return text + joint("rotary", "U", "probe", "[0, 0, 1]", f"[0, 0, {range_mm}]", "[-200, 200]")


def six_axes(range_mm: float, *, base_mm: float = 1100.0, more: str = "") -> str:
    """A device on a turntable, and beside it an arm of six axes with a spherical wrist, 150 mm behind the probe."""
    r, base, wrist = range_mm, f"[{base_mm}, 0, 0]", f"[0, 0, {range_mm + 150}]"
    text = joint("turntable", "C", "device", "[0, 0, -1]", travel="[-10, 370]", more=more)
    for name, letter, axis, point, travel in (
        ("waist", "X", "[0, 0, 1]", base, "[-170, 170]"),
        ("shoulder", "Y", "[0, 1, 0]", base, "[-120, 120]"),
        ("elbow", "Z", "[0, 1, 0]", f"[{0.8 * base_mm}, 0, {r + 400}]", "[-160, 160]"),
        ("forearm", "A", "[1, 0, 0]", wrist, "[-190, 190]"),
        ("wrist", "B", "[0, 1, 0]", wrist, "[-350, 350]"),
        ("flange", "U", "[0, 0, 1]", f"[0, 0, {r}]", "[-360, 360]"),
    ):
        text += joint(name, letter, "probe", axis, point, travel, more)
    return text


def on_mount(folder: Path, joints: str, *, range_m: float, solids: str = "", ports: int = 1) -> None:
    """Give a campaign's roll-over-azimuth chamber another mount, with the tolerances of its joints."""
    path = folder / "chamber.toml"
    text = path.read_text(encoding="utf-8")
    start, probe = text.index("[positioner]"), text.index("[probe]")
    roll, analyzer, alignment = (text.index(f"[{name}]") for name in ("probe.roll", "analyzer", "alignment"))
    text = (
        text[:start] + "[positioner]\nload_limit_kg = 5\n\n" + joints + solids + text[probe:roll] + text[analyzer:alignment]
        + "[alignment]\nprobe_roll_zero_deg = 0.25\ndistance_mm = 2.0\ndevice_pose_deg = 0.05\n"
    )  # fmt: skip
    before = next(line for line in text.splitlines() if line.startswith("range_length_m"))
    text = text.replace(before, f"range_length_m = {range_m}").replace("ports = 1", f"ports = {ports}")
    path.write_text(text, encoding="utf-8")
    true = folder / "twin.toml"
    if true.exists():
        gone = ("theta_zero", "roll_axis", "axes_offset")
        lines = [line for line in true.read_text(encoding="utf-8").splitlines() if not line.startswith(gone)]
        text = "\n".join(lines)
        # Nothing may stand inside the sphere on which the probe swings.
        true.write_text(text.split("[[echoes]]")[0], encoding="utf-8")


def solid(name: str, on: str, at_mm: str, **more: str) -> str:
    """Return one solid as TOML."""
    shape = "".join(f"{key} = {value}\n" for key, value in more.items())
    return f'[[positioner.solids]]\nname = "{name}"\non = "{on}"\nat_mm = {at_mm}\n{shape}\n'


#: A turntable of 200 mm on a post, an arm of two tubes beside it that holds the probe 1 m over it, and the floor.
SOLIDS_OF_ARM = (
    solid("table", "turntable", "[0, 0, -150]", box_mm="[200, 200, 20]", may_touch='["post"]')
    + solid("post", "room", "[0, 0, -1390]", to_mm="[0, 0, -170]", capsule_mm="60", may_touch='["table", "floor"]')
    + solid("floor", "room", "[0, 0, -1500]", box_mm="[4000, 4000, 100]", may_touch='["post"]')
    + solid("boom", "arm", "[0, 300, 0]", to_mm="[0, 300, 1100]", capsule_mm="40", may_touch='["horn"]')
    + solid("horn", "probe", "[0, 0, 1050]", box_mm="[60, 60, 100]", may_touch='["boom"]')
    + solid("tip", "arm", "[0, 0, 950]", sphere_mm="20", may_touch='["boom", "horn"]')
)
#: The same turntable, a pedestal beside it, and the links of a six-axis arm of 1100 mm.
SOLIDS_OF_SIX = (
    solid("table", "turntable", "[0, 0, -150]", box_mm="[200, 200, 20]", may_touch='["post"]')
    + solid("post", "room", "[0, 0, -1390]", to_mm="[0, 0, -170]", capsule_mm="60", may_touch='["table", "floor"]')
    + solid("floor", "room", "[0, 0, -1500]", box_mm="[5000, 5000, 100]", may_touch='["post", "pedestal"]')
    + solid("pedestal", "room", "[1100, 0, -1400]", to_mm="[1100, 0, -200]", capsule_mm="120", may_touch='["floor"]')
    + solid("upper", "shoulder", "[1100, 0, 0]", to_mm="[880, 0, 1000]", capsule_mm="60", may_touch='["lower"]')
    + solid("lower", "elbow", "[880, 0, 1000]", to_mm="[150, 0, 794]", capsule_mm="50", may_touch='["upper", "hand"]')
    + solid("hand", "wrist", "[0, 0, 750]", to_mm="[0, 0, 680]", capsule_mm="40", may_touch='["lower", "horn"]')
    + solid("horn", "probe", "[0, 0, 640]", box_mm="[50, 50, 70]", may_touch='["hand"]')
)
