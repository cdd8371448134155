/** For tests: what the server says of a swinging arm over a turntable, 2 m, and the groups of a stage without a graphics card. */

import { Group, Vector3 } from "three";
import type { JointLine, Motion } from "../request/types";
import type { Stage } from "./stage";

const joint = (name: string, carries: "device" | "probe", axis: number[], point_m: number[], rolls = false): JointLine => ({
  name, carries, kind: "revolute", axis, point_m, least: -200, most: 370, unit: "deg", rolls,
}); // prettier-ignore
const THETA = [-80, -40, 0, 40, 80],
  PHI = [0, 30, 60, 90, 120, 150];
const points = PHI.flatMap((phi, s) => (s % 2 ? [...THETA].reverse() : THETA).map((theta) => ({ theta, phi, s })));
/** Six slices of phi, theta there and back; turntable is phi and arm is theta. */
export const motion: Motion = {
  geometry: "roll-over-azimuth", formula: "", axes: ["azimuth", "roll", "probe"],
  angles_deg: points.flatMap((p) => [p.theta, p.phi, 0]), readouts_deg: points.flatMap((p) => [p.theta, p.phi, 0]),
  role: points.map(() => 0), cell: points.map((_, i) => i), time_s: points.map((_, i) => i), directions: [],
  range_m: 2, size_mm: [60, 60, 6], offset_mm: [0, 0, 0], slant_deg: 0, reach_m: 0.05, ports: 1, limits_deg: [[-80, 80], [0, 150], [0, 0]],
  limits_words: ["turntable -10 to 370 deg", "arm -110 to 110 deg", "rotary -200 to 200 deg"],
  mount: {
    joints: [joint("turntable", "device", [0, 0, -1], [0, 0, 0]), joint("arm", "probe", [0, 1, 0], [0, 0, 0]), joint("rotary", "probe", [0, 0, 1], [0, 0, 2], true)],
    solids: [{ name: "floor", body: -1, shape: "box", a_m: [0, 0, -3], b_m: [4, 4, 0.1], radius_m: 0 }],
    up: [0, 0, 1], values: points.flatMap((p) => [p.phi, p.theta, 0]), slice_index: points.map((p) => p.s), pass_index: points.map(() => 0),
  },
}; // prettier-ignore

/** Where the probe stands, and where the device's x axis points, in the laboratory. */
export function standing(stage: Stage): { probe: number[]; x: number[] } {
  stage.scene.updateMatrixWorld(true);
  const groups = stage.room.children.filter((one) => one instanceof Group),
    local = (v: Vector3) => stage.room.worldToLocal(v).toArray();
  return {
    probe: local(groups[3].getWorldPosition(new Vector3())),
    x: local(stage.device.localToWorld(new Vector3(1, 0, 0))),
  };
}
