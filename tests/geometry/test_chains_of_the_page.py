"""Random chains of joints as the page's own mathematics is held against them; the file that the page's tests read is current."""

from __future__ import annotations

import json
from pathlib import Path

import numpy as np
import pytest

from colure.geometry.joints import Carried, Joint, JointChain, JointKind, coordinates_of

KEPT = Path(__file__).parents[2] / "web" / "src" / "scene" / "chains.json"
CHAINS, POSES = 24, 2


def random_chain(rng: np.random.Generator) -> JointChain:
    """Two to eight joints of either kind on either end, their lines anywhere."""
    joints = []
    for number in range(int(rng.integers(2, 9))):
        kind = JointKind.PRISMATIC if rng.random() < 0.25 else JointKind.REVOLUTE
        end = Carried.DEVICE if rng.random() < 0.4 else Carried.PROBE
        axis, point = (tuple(float(v) for v in np.round(rng.normal(size=3), 3)) for _ in range(2))
        joints.append(Joint(f"j{number}", end, axis, point, kind))
    return JointChain(tuple(joints), round(float(rng.uniform(0.4, 3.0)), 3))


def told(chain: JointChain, rng: np.random.Generator) -> dict[str, object]:
    """Return a chain and some poses as the page gets them: degrees and millimetres, places in metres."""
    units = np.array([1e-3 if j.kind is JointKind.PRISMATIC else np.deg2rad(1.0) for j in chain.joints])
    poses = []
    for _ in range(POSES):
        values = np.round(rng.uniform(-200.0, 200.0, len(chain.joints)), 3)
        links = chain.links(units * values)
        probe = chain.probe_in_device(units * values)
        at = coordinates_of(probe)
        poses.append({
            "values": values.tolist(), "rotation": [one.rotation.tolist() for one in links],
            "translation": [np.broadcast_to(one.translation, 3).tolist() for one in links],
            "direction": (probe.translation / np.linalg.norm(probe.translation)).tolist(), "chi_deg": float(np.rad2deg(at.chi)),
        })  # fmt: skip
    joints = [
        {"name": j.name, "carries": j.carries.value, "kind": j.kind.value, "axis": j.direction.tolist(), "point_m": list(j.point)}
        for j in chain.joints
    ]  # fmt: skip
    return {"range_m": chain.distance, "joints": joints, "poses": poses}


def rounded(value: object) -> object:
    """Return numbers with the digits that the file holds."""
    if isinstance(value, dict):
        return {name: rounded(one) for name, one in value.items()}
    if isinstance(value, list):
        return [rounded(one) for one in value]
    return round(value, 12) + 0.0 if isinstance(value, float) else value


def wanted() -> list[object]:
    rng = np.random.default_rng(38)
    return [rounded(told(random_chain(rng), rng)) for _ in range(CHAINS)]


def test_the_pages_chains_are_those_of_the_geometry():
    """Written anew by `python -m tests.geometry.test_chains_of_the_page` where the geometry's conventions changed."""
    kept = json.loads(KEPT.read_text("utf-8"))
    assert len(kept) == CHAINS
    for one, other in zip(kept, json.loads(json.dumps(wanted())), strict=True):
        assert one["joints"] == other["joints"] and one["range_m"] == other["range_m"]
        for pose, own in zip(one["poses"], other["poses"], strict=True):
            for name, values in own.items():
                assert np.ravel(pose[name]) == pytest.approx(np.ravel(values), abs=1e-9), name


if __name__ == "__main__":
    KEPT.write_text(json.dumps(wanted(), separators=(",", ":")) + "\n", "utf-8")
