import { describe, expect, it } from "vitest";
import type { JointLine, Motion } from "../request/types";
import { DEG, direction, dot, ludwig3, type Vector } from "../scene/angles";
import { sight } from "../scene/chain";
import {
  curve,
  mountDial,
  mountMoment,
  mountSlices,
  mountSwept,
  mountWords,
  turned,
  type MountSlice,
} from "./mountplay";

const joint = (name: string, carries: "device" | "probe", axis: Vector, point_m: Vector, rolls = false): JointLine => ({
  name, carries, kind: "revolute", axis, point_m, least: -200, most: 200, unit: "deg", rolls,
}); // prettier-ignore
/** A turntable whose value is phi, an arm whose value is theta, and a rotary that turns the probe. */
const ARM = [
  joint("turntable", "device", [0, 0, -1], [0, 0, 0]),
  joint("arm", "probe", [0, 1, 0], [0, 0, 0]),
  joint("rotary", "probe", [0, 0, 1], [0, 0, 1], true),
];
const THETA = [-80, -40, 0, 40, 80];

/** Slices at these phi, there and back, with two checks before them and a second pass after them. */
function motion(phis: number[]): Parameters<typeof mountSlices>[0] {
  const points = phis.flatMap((phi, s) =>
      (s % 2 ? [...THETA].reverse() : THETA).map((theta) => ({ theta, phi, s, pass: 0 })),
    ),
    checks = [0, 0].map(() => ({ theta: 0, phi: 0, s: -1, pass: -1 })),
    all = [...checks, ...points, ...points.map((p) => ({ ...p, theta: 0.5 * p.theta, pass: 1 }))];
  return {
    axes: ["azimuth", "roll", "probe"],
    angles_deg: all.flatMap((p) => [p.theta, p.phi, 0]),
    mount: {
      joints: ARM,
      values: all.flatMap((p) => [p.phi, p.theta, 0]),
      slice_index: all.map((p) => p.s),
      pass_index: all.map((p) => p.pass),
    },
  } satisfies Pick<Motion, "axes" | "angles_deg"> & { mount: object };
}

describe("slices of a plan on a mount with joints", () => {
  const slices = mountSlices(motion([0, 30, 60, 90, 120, 150, 180]));

  it("are six of the plan's first pass, without ties", () => {
    expect(slices.length).toBe(6);
    expect(slices[0].values.length).toBe(THETA.length);
  });

  it("name the joint that sweeps and the one that steps", () => {
    const words = mountWords(ARM, 1, slices);
    expect([words.swept, words.stepped]).toEqual(["joint arm", "joint turntable"]);
    expect(words.slice).toBe("a great circle through boresight");
  });

  it("tell of a detour between two points where the turntable turns over", () => {
    const over: MountSlice = { values: [[0, 30, 0], [0, 5, 0], [180, 10, 0], [180, 30, 0]], behind: [false, false, true, true], chi: [0, 0, 0, 0] }; // prettier-ignore
    expect(mountWords(ARM, 1, [over]).kind).toBe("other");
  });

  it("never leave what the plan goes to", () => {
    for (let share = 0; share <= 1; share += 0.003) {
      const [turn, arm] = mountMoment(slices, share).values;
      expect(Math.abs(arm)).toBeLessThanOrEqual(80);
      expect(turn).toBeGreaterThanOrEqual(0);
      expect(turn).toBeLessThanOrEqual(180);
    }
  });

  // Conventions: turntable phi and arm theta look along d = (sin th cos ph, sin th sin ph, cos th).
  it("grow where the joints really look", () => {
    const ways = mountSwept(ARM, 1, slices, 0.5);
    expect(ways.length).toBe(mountMoment(slices, 0.5).slice + 1);
    for (const d of ways[1]) {
      const phi = mountMoment(slices, 1 / 6 + 0.1).values[0] * DEG;
      expect(d[0] * Math.sin(phi) - d[1] * Math.cos(phi)).toBeCloseTo(0, 9);
    }
    expect(ways[0][0][0]).toBeCloseTo(Math.sin(-80 * DEG), 9);
  });

  // Conventions: chi = psi - phi keeps the whole of one component; along theta the probe takes in the cosine of phi.
  it("show what a still and a following probe take in", () => {
    for (const theta of [-60, 35])
      for (const phi of [0, 30, 90, 150]) {
        const at = { slice: 0, values: [phi, theta, 17], behind: theta < 0, chi: 17 };
        expect(Math.abs(mountDial(ARM, 1, at, true).level)).toBeCloseTo(1, 9);
        const still = mountDial(ARM, 1, at, false);
        expect(Math.abs(still.level)).toBeCloseTo(Math.abs(Math.cos(phi * DEG)), 9);
        expect(still.probe).toBeCloseTo(0, 9);
      }
  });

  it("turn the probe only within the limits of its joint", () => {
    const narrow = ARM.map((one) => (one.rolls ? { ...one, least: -20, most: 20 } : one));
    expect(turned(narrow, [0, 0, 0], 90)).toBeNull();
    expect(turned(narrow, [0, 0, 0], 170)![2]).toBeCloseTo(-10, 9);
    expect(turned(ARM.slice(0, 2), [0, 0], 10)).toBeNull();
    const port = sight(ARM, turned(ARM, [20, 50, 0], 33)!, 1).port,
      field = ludwig3(50, 20, 20 + 33);
    expect(Math.abs(dot(port, field))).toBeCloseTo(1, 9);
  });

  it("meet where they come, not at a pole that the region leaves out", () => {
    const along = (...thetas: number[]) => curve(thetas.map((v) => direction(v, 35))).poles;
    expect(along(-80, -40, 0, 40, 80)).toBe(
      "All slices meet at +z, in front; they end at theta 80° and do not come to -z.",
    );
    // No direction of a coarse way need lie at the pole that it passes.
    expect(along(-100, -60, -20, 20, 60)).toContain("do not come to -z");
    expect(along(-180, -90, 0, 90, 170)).toBe("All slices meet at +z, in front, and at -z.");
    expect(along(100, 140, 170, 190)).toContain("do not come to +z");
    expect(along(30, 60, 90)).toBe("The slices go from theta 30° to 90° and do not meet.");
  });

  it("call other curves by what they are", () => {
    const ring = Array.from({ length: 12 }, (_, i) => direction(55, 30 * i));
    expect(curve(ring).kind).toBe("theta");
    const bow = Array.from({ length: 12 }, (_, i) => direction(20 + 5 * i, 3 * i));
    expect(curve(bow).kind).toBe("other");
    const one: MountSlice = { values: [[0, 20, 0], [0, 30, 0]], behind: [false, false], chi: [0, 0] }; // prettier-ignore
    expect(mountWords(ARM, 1, [one]).stepped).toContain("nothing");
  });
});
