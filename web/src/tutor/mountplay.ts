/** Slices of a plan on a mount that is described by its joints: what sweeps, what steps, the curve that is drawn, the dial. */

import type { JointLine, Motion, Mount } from "../request/types";
import { across, sight } from "../scene/chain";
import { cross, DEG, dot, ludwig3, thetaPhi, type Vector } from "../scene/angles";

/** So many slices of the plan are shown, spread over all of them. */
const SHOWN = 6;
/** A joint moves if it moves by this, degrees or millimetres. */
const MOVES = 0.5;
/** A slice comes to a pole if it passes it by less than this, degrees. */
const NEAR = 2;
/** A slice is called a circle if it leaves it by less than this, degrees. */
const ROUND = 0.5;

export type MountSlice = { values: number[][]; behind: boolean[]; chi: number[] };
export type MountMoment = { slice: number; values: number[]; behind: boolean; chi: number };
export type MountWords = {
  swept: string;
  stepped: string;
  slice: string;
  poles: string;
  sweeps: string;
  steps: string;
};

type Told = Pick<Motion, "angles_deg" | "axes"> & {
  mount: Pick<Mount, "joints" | "values" | "slice_index" | "pass_index">;
};

/** Slices of the plan's first pass, as joint values point after point. */
export function mountSlices(motion: Told): MountSlice[] {
  const { joints, values, slice_index, pass_index } = motion.mount,
    n = joints.length,
    axes = motion.axes.length,
    first = Math.min(...pass_index.filter((v) => v >= 0)),
    found = new Map<number, MountSlice>();
  slice_index.forEach((slice, i) => {
    if (slice < 0 || pass_index[i] > first) return;
    let one = found.get(slice);
    if (!one) found.set(slice, (one = { values: [], behind: [], chi: [] }));
    one.values.push(values.slice(n * i, n * i + n));
    one.behind.push(motion.angles_deg[axes * i] < 0);
    one.chi.push(axes > 2 ? motion.angles_deg[axes * i + 2] : 0);
  });
  const all = [...found.values()].filter((one) => one.values.length > 1),
    count = Math.min(SHOWN, all.length);
  return Array.from({ length: count }, (_, i) => all[Math.floor((i * all.length) / count)]);
}

const between = (a: number[], b: number[], part: number): number[] => a.map((v, i) => v + (b[i] - v) * part);

/** Where the joints stand at a share of the whole play; a fifth of every slice is the step to it. All joints move together. */
export function mountMoment(slices: MountSlice[], share: number): MountMoment {
  const place = Math.min(0.999999, Math.max(0, share)) * slices.length,
    slice = Math.floor(place),
    part = place - slice,
    here = slices[slice],
    last = here.values.length - 1;
  if (slice > 0 && part < 0.2) {
    const before = slices[slice - 1],
      end = before.values.length - 1;
    return {
      slice,
      values: between(before.values[end], here.values[0], part / 0.2),
      behind: here.behind[0],
      chi: here.chi[0],
    };
  }
  const at = (slice > 0 ? (part - 0.2) / 0.8 : part) * last,
    k = Math.min(last - 1, Math.floor(at));
  return {
    slice,
    values: between(here.values[k], here.values[k + 1], at - k),
    behind: here.behind[Math.round(at)],
    chi: here.chi[k] + (here.chi[k + 1] - here.chi[k]) * (at - k),
  };
}

/** The part of each slice that was swept by then, as directions of the device: where the joints really look. */
export function mountSwept(joints: JointLine[], rangeM: number, slices: MountSlice[], share: number): Vector[][] {
  const now = mountMoment(slices, share);
  return slices.slice(0, now.slice + 1).map((one, i) => {
    const place = Math.min(0.999999, Math.max(0, share)) * slices.length - i,
      upTo = i < now.slice ? 1 : Math.max(0, i > 0 ? (place - 0.2) / 0.8 : place),
      last = one.values.length - 1,
      count = Math.max(2, Math.ceil(3 * last * upTo));
    return Array.from({ length: count }, (_, k) => {
      const at = (upTo * last * k) / (count - 1),
        low = Math.min(last - 1, Math.floor(at));
      return sight(joints, between(one.values[low], one.values[low + 1], at - low), rangeM).direction;
    });
  });
}

/** Numbers of the joints that move along a slice, and of those that move from one to the next. */
export function moving(slices: MountSlice[]): { swept: number[]; stepped: number[] } {
  const joints = slices[0]?.values[0].map((_, i) => i) ?? [],
    of = (one: MountSlice, i: number) => one.values.map((v) => v[i]),
    width = (i: number) => Math.max(...slices.map((one) => Math.max(...of(one, i)) - Math.min(...of(one, i)))),
    mean = (one: MountSlice, i: number) => of(one, i).reduce((a, b) => a + b, 0) / one.values.length,
    swept = joints.filter((i) => width(i) > MOVES).sort((a, b) => width(b) - width(a)),
    change = (i: number) =>
      Math.max(0, ...slices.slice(1).map((one, k) => Math.abs(mean(one, i) - mean(slices[k], i)))),
    steps = joints.filter((i) => change(i) > MOVES).sort((a, b) => change(b) - change(a)),
    alone = steps.filter((i) => !swept.includes(i));
  return { swept, stepped: alone.length ? alone : steps };
}

function listed(names: string[]): string {
  return names.length < 2 ? (names[0] ?? "nothing") : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;
}

/** Where great circles through boresight meet: only where this way really comes. */
function meet(way: Vector[]): string {
  const theta = way.map((d) => thetaPhi(d)[0]),
    least = Math.min(...theta),
    most = Math.max(...theta),
    // From one side to the other between two directions, in front or behind.
    over = (front: boolean) =>
      way.slice(1).some((d, i) => d[0] * way[i][0] + d[1] * way[i][1] < 0 && d[2] > 0 === front),
    front = least < NEAR || over(true),
    back = most > 180 - NEAR || over(false);
  if (front && back) return "All slices meet at +z, in front, and at -z.";
  if (front) return `All slices meet at +z, in front; they end at theta ${most.toFixed(0)}° and do not come to -z.`;
  if (back) return `All slices meet at -z, behind; they begin at theta ${least.toFixed(0)}° and do not come to +z.`;
  return `The slices go from theta ${least.toFixed(0)}° to ${most.toFixed(0)}° and do not meet.`;
}

/** What a slice is, from the directions that the joints really look in. */
export function curve(way: Vector[]): { words: string; poles: string; kind: "great" | "theta" | "other" } {
  const theta = way.map((d) => thetaPhi(d)[0]),
    spread = Math.max(...theta) - Math.min(...theta);
  if (spread < ROUND)
    return {
      kind: "theta",
      words: `a circle of constant theta, ${theta[0].toFixed(0)}°`,
      poles: "The circles shrink towards +z and -z.",
    };
  let normal: Vector = [0, 0, 0];
  for (const d of way) {
    const n = cross(way[0], d);
    if (dot(n, n) > dot(normal, normal)) normal = n;
  }
  const size = Math.sqrt(dot(normal, normal)),
    off = Math.max(...way.map((d) => Math.abs(Math.asin(Math.min(1, Math.abs(dot(d, normal)) / size)) / DEG))),
    pole = Math.abs(normal[2]) / size < Math.sin(ROUND * DEG);
  if (off < ROUND && pole)
    return {
      kind: "great",
      words: "a great circle through boresight",
      poles: meet(way),
    };
  return { kind: "other", words: `a curve that leaves a great circle by up to ${off.toFixed(1)}°`, poles: "" };
}

/** What the captions say of a mount. A joint that turns the probe alone is said apart: the choice of the probe moves it. */
export function mountWords(
  joints: JointLine[],
  rangeM: number,
  slices: MountSlice[],
): MountWords & { kind: "great" | "theta" | "other" } {
  const { swept, stepped } = moving(slices),
    others = (which: number[]) => (which.some((i) => !joints[i].rolls) ? which.filter((i) => !joints[i].rolls) : which),
    named = (which: number[]) =>
      `${others(which).length > 1 ? "joints" : "joint"} ${listed(others(which).map((i) => joints[i].name))}`,
    longest = slices.reduce((a, b) => (b.values.length > a.values.length ? b : a)),
    // Between the points too: a joint that turns over on the way makes a detour there.
    { words, poles, kind } = curve(mountSwept(joints, rangeM, [longest], 1)[0]);
  return {
    swept: named(swept),
    stepped: named(stepped),
    sweeps: others(swept).length === 1 ? "sweeps" : "sweep together",
    steps: others(stepped).length === 1 ? "steps" : "step",
    slice: words,
    poles,
    kind,
  };
}

/** The joint that turns the probe about the line to the device, or -1. */
export function rollOf(joints: JointLine[]): number {
  return joints.findIndex((one) => one.rolls);
}

/** Values with the probe turned by an angle (degrees, from theta^ to phi^), within the joint's limits; null if it cannot. */
export function turned(joints: JointLine[], values: number[], by: number): number[] | null {
  const roll = rollOf(joints);
  if (roll < 0) return null;
  const sense = Math.sign(joints[roll].axis[2]) || 1,
    { least, most } = joints[roll];
  // A probe that is turned by half a turn sees the same component.
  const ways = [0, 180, -180, 360, -360]
    .map((more) => values[roll] + sense * (by + more))
    .filter((v) => v >= least && v <= most);
  if (!ways.length) return null;
  const to = ways.reduce((a, b) => (Math.abs(b - values[roll]) < Math.abs(a - values[roll]) ? b : a));
  return values.map((v, i) => (i === roll ? to : v));
}

/** An angle from -180 to 180 degrees. */
const around = (deg: number): number => deg - 360 * Math.round(deg / 360);

/** How the joints stand for a probe that stands still or follows, and what the probe then sees: angles from theta^ to phi^. */
export function mountDial(
  joints: JointLine[],
  rangeM: number,
  at: MountMoment,
  following: boolean,
): { values: number[]; direction: Vector; fieldVector: Vector; field: number; probe: number; level: number } {
  const planned = sight(joints, at.values, rangeM),
    d = planned.direction,
    fieldVector = ludwig3(...thetaPhi(d)),
    field = across(d, fieldVector, at.behind),
    was = across(d, planned.port, at.behind),
    values = turned(joints, at.values, (following ? field : 0) - was) ?? at.values,
    probe = across(d, sight(joints, values, rangeM).port, at.behind);
  return {
    values,
    direction: d,
    fieldVector,
    field: around(field),
    probe: around(probe),
    level: Math.cos((field - probe) * DEG),
  };
}
