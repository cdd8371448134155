import { describe, expect, it } from "vitest";
import type { JointLine } from "../request/types";
import { DEG, type Vector } from "./angles";
import { across, ends, links, sight } from "./chain";
import kept from "./chains.json";
import { sketch } from "./mount";

type Told = {
  range_m: number;
  joints: JointLine[];
  poses: { values: number[]; rotation: number[][][]; translation: number[][]; direction: Vector; chi_deg: number }[];
};
/** What the server's geometry makes of random chains; tests/geometry writes and checks the file. */
const told = kept as unknown as Told[];

const line = (carries: "device" | "probe", axis: Vector, point_m: Vector, kind: JointLine["kind"] = "revolute") =>
  ({ name: "one", carries, kind, axis, point_m, rolls: false, least: -180, most: 180, unit: "deg" }) as JointLine;
const close = (a: readonly number[], b: readonly number[], digits = 9) =>
  a.forEach((v, i) => expect(v).toBeCloseTo(b[i], digits));

describe("a mount's joints", () => {
  it("stand where the server's geometry says", () => {
    expect(told.length).toBeGreaterThan(20);
    for (const chain of told)
      for (const pose of chain.poses) {
        links(chain.joints, pose.values).forEach((one, i) => {
          close(one.r.flat(), pose.rotation[i].flat());
          close(one.t, pose.translation[i]);
        });
        const seen = sight(chain.joints, pose.values, chain.range_m);
        close(seen.direction, pose.direction);
        const off = across(seen.direction, seen.port) - pose.chi_deg;
        expect(Math.cos(off * DEG)).toBeCloseTo(1, 9);
      }
  });

  // The planar arm of two links in every textbook of robotics (from memory): x = a cos q1 + b cos(q1 + q2).
  it("makes the planar arm of two links", () => {
    const arm = [line("probe", [0, 0, 1], [0, 0, 0]), line("probe", [0, 0, 1], [0.7, 0, 0])],
      [q1, q2] = [35, -80],
      { probe } = ends(arm, [q1, q2]),
      tip = [0, 1, 2].map((k) => probe.r[k][0] * 1.2 + probe.t[k]);
    close(tip, [0.7 * Math.cos(q1 * DEG) + 0.5 * Math.cos((q1 + q2) * DEG), 0.7 * Math.sin(q1 * DEG) + 0.5 * Math.sin((q1 + q2) * DEG), 0]); // prettier-ignore
  });

  it("shifts along a prismatic joint in millimetres", () => {
    close(links([line("probe", [0, 0, 1], [0, 0, 0], "prismatic")], [250])[0].t, [0, 0, 0.25]);
  });
});

describe("the sketch of a mount", () => {
  it("ends at device and probe, and leaves the sphere of directions free", () => {
    const arm = [line("device", [0, 0, -1], [0, 0, 0]), line("probe", [0, 1, 0], [0, 0, 0])],
      { nodes, links: rods } = sketch(arm, [0, 0, 1], 1);
    close(nodes[0], [0, 0, -0.62]);
    close(nodes[1], [0, 0.62, 0]);
    close(rods.find((one) => one.body === 0)!.path.at(-1)!, [0, 0, 0]);
    const boom = rods.find((one) => one.body === 1)!.path;
    close(boom.at(-1)!, [0, 0, 1.06]);
    close(boom[1], [0, 0.62, 1.06]);
    // Each end stands on the floor.
    expect(rods.filter((one) => one.body === -1).length).toBe(2);
  });

  it("draws a prismatic joint between what it stands on and what it shifts", () => {
    const one = [
      line("probe", [0, 1, 0], [0, 0, -0.1]),
      line("probe", [0, 0, 1], [0, 0, 0], "prismatic"),
      line("probe", [0, 1, 0], [0, 0, 1]),
    ];
    const { nodes } = sketch(one, [0, 0, 1], 1);
    expect(nodes[1][2]).toBeGreaterThan(nodes[0][2]);
    expect(nodes[1][2]).toBeLessThan(nodes[2][2]);
    expect(nodes[1][1]).toBeCloseTo(nodes[0][1], 9);
  });
});
