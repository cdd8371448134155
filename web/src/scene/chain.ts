/** Where the bodies of a mount stand that is described by its joints: the product of the motions about their lines.
 *
 * The formulas are those of the server's geometry (R. W. Brockett, "Robotic manipulators and the product of exponentials
 * formula", 1984): every line is written where all joints stand at zero, the joint nearest to the floor first. Values are
 * degrees of a revolute joint and millimetres of a prismatic one; places are metres of the laboratory's frame.
 */

import type { JointLine } from "../request/types";
import { combine, DEG, direction, dot, product, thetaPhi, times, type Matrix, type Vector } from "./angles";

/** x goes to r x + t. */
export type Rigid = { r: Matrix; t: Vector };

export const STILL: Rigid = { r: [[1, 0, 0], [0, 1, 0], [0, 0, 1]], t: [0, 0, 0] }; // prettier-ignore

type Line = Pick<JointLine, "carries" | "kind" | "axis" | "point_m">;

export function moved(by: Rigid, x: Vector): Vector {
  return combine(1, times(by.r, x), 1, by.t);
}

function transposed(m: Matrix): Matrix {
  return [0, 1, 2].map((k): Vector => [m[0][k], m[1][k], m[2][k]]) as Matrix;
}

/** First `inner`, then `outer`. */
function after(outer: Rigid, inner: Rigid): Rigid {
  return { r: product(outer.r, inner.r), t: moved(outer, inner.t) };
}

/** A rotation about a unit vector, right-handed (O. Rodrigues, 1840). */
function about(k: Vector, deg: number): Matrix {
  const c = Math.cos(deg * DEG),
    s = Math.sin(deg * DEG),
    v = 1 - c;
  return [
    [c + v * k[0] * k[0], v * k[0] * k[1] - s * k[2], v * k[0] * k[2] + s * k[1]],
    [v * k[1] * k[0] + s * k[2], c + v * k[1] * k[1], v * k[1] * k[2] - s * k[0]],
    [v * k[2] * k[0] - s * k[1], v * k[2] * k[1] + s * k[0], c + v * k[2] * k[2]],
  ];
}

function motion(joint: Line, value: number): Rigid {
  const along = joint.axis as Vector,
    point = joint.point_m as Vector;
  if (joint.kind === "prismatic") return { r: STILL.r, t: combine(1e-3 * value, along, 0, along) };
  const r = about(along, value);
  return { r, t: combine(1, point, -1, times(r, point)) };
}

/** Motion of what each joint carries, from where it is written. */
export function links(joints: readonly Line[], values: readonly number[]): Rigid[] {
  const carried = { device: STILL, probe: STILL };
  return joints.map((one, i) => (carried[one.carries] = after(carried[one.carries], motion(one, values[i] ?? 0))));
}

/** Device frame to laboratory, and what carries the probe from where it stands on z. */
export function ends(joints: readonly Line[], values: readonly number[]): { device: Rigid; probe: Rigid } {
  const all = links(joints, values),
    last = (end: string) => all[joints.map((one) => one.carries as string).lastIndexOf(end)] ?? STILL;
  return { device: last("device"), probe: last("probe") };
}

/** What the probe does as the device has it: the direction it stands in, how far, and where its port 1 lies. */
export type Sight = { direction: Vector; distance: number; port: Vector };

export function sight(joints: readonly Line[], values: readonly number[], rangeM: number): Sight {
  const { device, probe } = ends(joints, values),
    back = transposed(device.r),
    place = times(back, combine(1, moved(probe, [0, 0, rangeM]), -1, device.t)),
    distance = Math.hypot(...place);
  return {
    direction: [place[0] / distance, place[1] / distance, place[2] / distance],
    distance,
    port: times(back, times(probe.r, [1, 0, 0])),
  };
}

/** Angle from theta^ to phi^ of a vector across a direction, degrees; `behind`: theta counts negative, and both turn over. */
export function across(at: Vector, v: Vector, behind = false): number {
  const [theta, phi] = thetaPhi(at),
    unit = direction(theta + 90, phi),
    side = direction(90, phi + 90);
  return Math.atan2(dot(v, side), dot(v, unit)) / DEG + (behind ? 180 : 0);
}
