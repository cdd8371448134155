/** The bodies of a mount that is described by its joints: declared solids to scale, and a sketch of every link without one. */

import {
  BoxGeometry,
  BufferGeometry,
  CapsuleGeometry,
  Color,
  EdgesGeometry,
  GridHelper,
  Group,
  Line,
  LineBasicMaterial,
  LineSegments,
  Matrix4,
  Mesh,
  MeshLambertMaterial,
  Vector3,
} from "three";
import { lines } from "../draw/colours";
import type { JointLine, Mount, MountSolid } from "../request/types";
import { combine, cross, dot, type Vector } from "./angles";
import { emptied, rod, solid } from "./chamber";
import { ends, links, type Rigid } from "./chain";
import { SWINGS, type Stage } from "./stage";

/** A joint whose line goes through the sphere of directions is drawn this far out on it, in range lengths. */
const OUT = 0.62,
  INSIDE = 0.55;
/** A joint that turns the probe about its own line is drawn behind it. */
const BEHIND = 0.17;
/** The camera of a probe that swings sees so far from the axes' intersection, range lengths. */
const SIGHT = 1.35,
  /** Farther back nothing could be told apart. */
  FARTHEST = 4;
/** The floor where none is declared. */
const FLOOR = 1.3;

export type Link = { body: number; path: Vector[] };
export type Sketch = { nodes: Vector[]; links: Link[] };

type Line3 = Pick<JointLine, "carries" | "kind" | "axis" | "point_m" | "rolls">;

const minus = (a: Vector, b: Vector): Vector => combine(1, a, -1, b);
const scaled = (a: number, v: Vector): Vector => [a * v[0], a * v[1], a * v[2]];
/** Part of a vector along a unit vector. */
const along = (v: Vector, unit: Vector): Vector => scaled(dot(v, unit), unit);

/** Where a revolute joint is drawn on its line, and by how much that is beside the declared point. */
function node(joint: Line3, up: Vector, rangeM: number): { at: Vector; slid: Vector } {
  const axis = joint.axis as Vector,
    point = scaled(1 / rangeM, joint.point_m as Vector),
    foot = minus(point, along(point, axis));
  if (joint.rolls) return { at: combine(1, foot, 1 + BEHIND, [0, 0, 1]), slid: [0, 0, 0] };
  if (Math.hypot(...foot) > INSIDE || Math.hypot(...point) > INSIDE) return { at: point, slid: [0, 0, 0] };
  // Downwards where the line goes down; away from the probe where it points to it; else to either side.
  const down = -dot(axis, up),
    back = -axis[2],
    sign = Math.abs(down) > 0.3 ? Math.sign(down) : Math.abs(back) > 0.3 ? Math.sign(back) : 1,
    slid = scaled(sign * Math.sqrt(OUT * OUT - dot(foot, foot)), axis);
  return { at: combine(1, foot, 1, slid), slid };
}

/** A sketch of the links where every joint stands at zero, in range lengths: joints on their lines, and rods from one to the next. */
export function sketch(joints: readonly Line3[], up: Vector, rangeM: number): Sketch {
  const nodes: Vector[] = joints.map(() => [0, 0, 0]),
    out: Link[] = [];
  for (const end of ["device", "probe"] as const) {
    const own = joints.map((_, i) => i).filter((i) => joints[i].carries === end),
      goal: Vector = end === "device" ? [0, 0, 0] : [0, 0, 1.06],
      places = own.map((i) => (joints[i].kind === "revolute" ? node(joints[i], up, rangeM) : null)),
      /** What a rod from here ends at: the next joint that has a place of its own. */
      target = (k: number) => places.slice(k + 1).find((one) => one !== null)?.at ?? goal;
    let beside: Vector = [0, 0, 0];
    own.forEach((i, k) => {
      const here = places[k],
        to = target(k),
        axis = joints[i].axis as Vector;
      if (here) beside = here.slid;
      const corner = combine(1, to, 1, beside),
        before = k ? nodes[own[k - 1]] : combine(1, to, -2 * OUT, up);
      // A prismatic joint is drawn halfway to what follows; next to the floor, below it.
      nodes[i] =
        here?.at ?? (k ? combine(1, corner, 0.5, along(minus(before, corner), axis)) : combine(1, to, -OUT, up));
      const slides = k + 1 < own.length && !places[k + 1];
      if (!slides) out.push({ body: i, path: tidy([nodes[i], corner, to]) });
    });
    // What a prismatic joint stands on reaches to it.
    own.forEach((i, k) => {
      if (k + 1 < own.length && !places[k + 1]) out.push({ body: i, path: tidy([nodes[i], nodes[own[k + 1]]]) });
    });
    if (!own.length) continue;
    const first = nodes[own[0]];
    out.push({ body: -1, path: tidy([combine(1, first, -FLOOR - dot(first, up), up), first]) });
  }
  return { nodes, links: out };
}

function tidy(path: Vector[]): Vector[] {
  return path.filter((p, i) => i === 0 || Math.hypot(...minus(p, path[i - 1])) > 1e-6);
}

function matrix(m: Rigid, rangeM: number): Matrix4 {
  const [a, b, c] = m.r,
    t = scaled(1 / rangeM, m.t);
  return new Matrix4().set(...a, t[0], ...b, t[1], ...c, t[2], 0, 0, 0, 1);
}

/** How far the bodies that move come from the axes' intersection where every joint stands at zero, range lengths. */
export function reach(mount: Pick<Mount, "joints" | "solids" | "up">, rangeM: number): number {
  const own = new Set(mount.solids.map((one) => one.body)),
    plan = sketch(mount.joints, mount.up as Vector, rangeM),
    drawn = plan.links.filter((one) => one.body >= 0 && !own.has(one.body)).flatMap((one) => one.path),
    solid = mount.solids
      .filter((one) => one.body >= 0)
      .map((one) =>
        one.shape === "box"
          ? Math.hypot(...one.a_m.map((v, i) => (Math.abs(v) + one.b_m[i]) / rangeM))
          : Math.max(Math.hypot(...one.a_m), Math.hypot(...one.b_m)) / rangeM + one.radius_m / rangeM,
      );
  return Math.max(1, ...drawn.map((p) => Math.hypot(...p)), ...solid);
}

export class MountBodies {
  private groups: Group[];
  /** How far back the camera stands for all of it. */
  readonly needs: number;

  constructor(
    private stage: Stage,
    private fixed: Group,
    private probe: Group,
    private mount: Pick<Mount, "joints" | "solids" | "up">,
    private rangeM: number,
  ) {
    this.needs = Math.min(FARTHEST, SWINGS * Math.max(1, reach(mount, rangeM) / SIGHT));
    this.groups = mount.joints.map(() => new Group());
    for (const one of this.groups) one.matrixAutoUpdate = false;
    stage.room.add(...this.groups);
    this.draw();
  }

  leave(): void {
    for (const one of this.groups) {
      this.stage.clearLabels(one);
      emptied(one);
      this.stage.room.remove(one);
    }
  }

  /** Stand every body where the joints have these values. */
  pose(values: readonly number[]): void {
    const { joints } = this.mount,
      all = links(joints, values),
      { device, probe } = ends(joints, values);
    all.forEach((one, i) => {
      this.groups[i].matrix.copy(matrix(one, this.rangeM));
      this.groups[i].matrixWorldNeedsUpdate = true;
    });
    const scale = new Vector3();
    matrix(device, this.rangeM).decompose(this.stage.device.position, this.stage.device.quaternion, scale);
    matrix(probe, this.rangeM)
      .multiply(new Matrix4().makeTranslation(0, 0, 1))
      .decompose(this.probe.position, this.probe.quaternion, scale);
  }

  private body(number: number): Group {
    return number < 0 ? this.fixed : this.groups[number];
  }

  private draw(): void {
    const c = lines(),
      { joints, solids } = this.mount,
      up = this.mount.up as Vector,
      drawn = new Set(solids.map((one) => one.body)),
      plan = sketch(joints, up, this.rangeM);
    for (const one of solids) this.addSolid(one);
    for (const { body, path } of plan.links) {
      if (drawn.has(body)) continue;
      for (let i = 1; i < path.length; i++) this.body(body).add(rod(path[i - 1], path[i], 0.022, c.quiet));
    }
    joints.forEach((joint, i) => this.addJoint(joint, plan.nodes[i], i, drawn.has(i)));
    // Only a box can be a floor; an arch or a post alone would leave everything in the air.
    if (!solids.some((one) => one.body < 0 && one.shape === "box")) {
      const floor = new GridHelper(3.2, 16, c.grid, c.grid);
      floor.quaternion.setFromUnitVectors(new Vector3(0, 1, 0), new Vector3(...up));
      floor.position.copy(new Vector3(...up).multiplyScalar(-FLOOR));
      this.fixed.add(floor);
    }
  }

  /** The housing of a joint, its line and its name; they go with what carries the joint, which the joint itself leaves in place. */
  private addJoint(joint: JointLine, at: Vector, number: number, declared: boolean): void {
    const c = lines(),
      colour = joint.carries === "device" ? c.co : c.other,
      axis = joint.axis as Vector,
      group = this.groups[number],
      half = joint.kind === "prismatic" ? 0.09 : 0.05;
    // Where its body is declared, what stands there is no sketch: the line and the name alone are added.
    if (!declared)
      group.add(
        rod(
          combine(1, at, -half, axis),
          combine(1, at, half, axis),
          joint.kind === "prismatic" ? 0.034 : 0.045,
          colour,
        ),
      );
    group.add(
      new Line(
        new BufferGeometry().setFromPoints([1, -1].map((s) => new Vector3(...combine(1, at, 0.2 * s, axis)))),
        new LineBasicMaterial({ color: colour }),
      ),
    );
    // Beside the axis, where no rod is: across to it and to what is up.
    const side = combine(1, cross(this.mount.up as Vector, axis), 0.01, [1, 0, 0]),
      away = Math.hypot(...side) > 0.5 ? scaled(1 / Math.hypot(...side), side) : ([1, 0, 0] as Vector);
    this.stage.label(joint.name, combine(1, at, 0.12, away), group, "joint", false, at);
  }

  private addSolid(one: MountSolid): void {
    const c = lines(),
      a = scaled(1 / this.rangeM, one.a_m as Vector),
      b = scaled(1 / this.rangeM, one.b_m as Vector),
      room = one.body < 0,
      group = this.body(one.body);
    const shape = (geometry: BufferGeometry): Mesh => {
      const material: MeshLambertMaterial = solid(c.quiet);
      // What stands in the room may be a wall: one sees through it.
      if (room) Object.assign(material, { transparent: true, opacity: 0.3, depthWrite: false });
      return new Mesh(geometry, material);
    };
    if (one.shape === "box") {
      const mesh = shape(new BoxGeometry(2 * b[0], 2 * b[1], 2 * b[2])),
        edges = new LineSegments(
          new EdgesGeometry(mesh.geometry),
          new LineBasicMaterial({ color: new Color(room ? c.grid : c.edge) }),
        );
      mesh.position.set(...a);
      edges.position.set(...a);
      group.add(mesh, edges);
      return;
    }
    const radius = one.radius_m / this.rangeM,
      way = new Vector3(...minus(b, a)),
      mesh = shape(
        way.length() > 1e-9
          ? new CapsuleGeometry(radius, way.length(), 6, 18)
          : new CapsuleGeometry(radius, 1e-6, 8, 18),
      );
    mesh.position.set(...combine(0.5, a, 0.5, b));
    if (way.length() > 1e-9) mesh.quaternion.setFromUnitVectors(new Vector3(0, 1, 0), way.normalize());
    group.add(mesh);
  }
}
