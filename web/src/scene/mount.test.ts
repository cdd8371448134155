import { Group, Mesh, Vector3 } from "three";
import { describe, expect, it } from "vitest";
import type { JointLine, Mount } from "../request/types";
import type { Vector } from "./angles";
import { links, moved } from "./chain";
import { MountBodies, reach } from "./mount";
import type { Stage } from "./stage";

const joint = (name: string, carries: "device" | "probe", axis: Vector): JointLine => ({
  name, carries, kind: "revolute", axis, point_m: [0, 0, 0], least: -180, most: 180, unit: "deg", rolls: false,
}); // prettier-ignore
const mount: Pick<Mount, "joints" | "solids" | "up"> = {
  joints: [joint("turntable", "device", [0, 0, -1]), joint("arm", "probe", [0, 1, 0])],
  solids: [
    { name: "table", body: 0, shape: "box", a_m: [0.1, 0, -0.3], b_m: [0.2, 0.1, 0.02], radius_m: 0 },
    { name: "boom", body: 1, shape: "capsule", a_m: [0, 0.6, 0], b_m: [0, 0.6, 2.2], radius_m: 0.08 },
    { name: "floor", body: -1, shape: "box", a_m: [0, 0, -3], b_m: [4, 4, 0.1], radius_m: 0 },
  ],
  up: [0, 0, 1],
};

/** A stage without a graphics card: what stands where is told by the groups alone. */
function drawn() {
  const room = new Group(),
    device = new Group(),
    fixed = new Group(),
    probe = new Group(),
    names: string[] = [];
  room.add(device, fixed, probe);
  const stage = {
    room,
    device,
    label: (text: string) => names.push(text),
    clearLabels: () => undefined,
  } as unknown as Stage;
  const bodies = new MountBodies(stage, fixed, probe, mount, 2);
  const at = (group: Group, kind: string): Vector3 => {
    room.updateMatrixWorld(true);
    const found = group.children.find((one) => one instanceof Mesh && one.geometry.type === kind)!;
    return found.getWorldPosition(new Vector3());
  };
  return { room, device, fixed, probe, names, bodies, at, groups: room.children.slice(3) as Group[] };
}

const close = (found: Vector3, wanted: readonly number[]) =>
  wanted.forEach((v, i) => expect(found.toArray()[i]).toBeCloseTo(v, 9));

describe("bodies of a mount", () => {
  it("move with the joint that carries them, in range lengths", () => {
    const one = drawn(),
      values = [70, -35];
    one.bodies.pose(values);
    const by = links(mount.joints, values);
    close(
      one.at(one.groups[0], "BoxGeometry"),
      moved(by[0], [0.1, 0, -0.3]).map((v) => v / 2),
    );
    close(
      one.at(one.groups[1], "CapsuleGeometry"),
      moved(by[1], [0, 0.6, 1.1]).map((v) => v / 2),
    );
    close(one.at(one.fixed, "BoxGeometry"), [0, 0, -1.5]);
    expect(one.names).toEqual(["turntable", "arm"]);
  });

  // Conventions: the arm's value is theta, so the probe stands in (sin th, 0, cos th) of the laboratory, one range length away.
  it("carry the probe on the arm and the device on the turntable", () => {
    const one = drawn();
    one.bodies.pose([90, 30]);
    close(one.probe.getWorldPosition(new Vector3()), [0.5, 0, Math.sqrt(0.75)]);
    one.room.updateMatrixWorld(true);
    close(one.device.localToWorld(new Vector3(1, 0, 0)), [0, -1, 0]);
  });

  it("tell how far back the camera must stand", () => {
    // The boom ends at (0, 0.6, 2.2) m with a radius of 0.08 m; the floor, which does not move, goes farther.
    expect(reach(mount, 2)).toBeCloseTo((Math.hypot(0.6, 2.2) + 0.08) / 2, 9);
    const far = { ...mount, solids: [{ ...mount.solids[1], a_m: [5, 0, 0], b_m: [5, 0, 2] }] };
    expect(reach(far, 2)).toBeCloseTo((Math.hypot(5, 2) + 0.08) / 2, 9);
    expect(reach({ ...mount, solids: [] }, 2)).toBeGreaterThan(1);
  });

  it("are gone when another positioner is built", () => {
    const one = drawn();
    one.bodies.leave();
    expect(one.room.children.length).toBe(3);
  });
});
