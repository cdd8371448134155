/** Positioner, device and probe of a chamber, turning as its axes do. */

import {
  ArrowHelper,
  BoxGeometry,
  BufferGeometry,
  Color,
  ConeGeometry,
  CylinderGeometry,
  GridHelper,
  Group,
  Line,
  LineBasicMaterial,
  Mesh,
  Points,
  MeshLambertMaterial,
  Vector3,
  type Object3D,
} from "three";
import { lines } from "../draw/colours";
import type { Motion, Mount } from "../request/types";
import { DEG, type Geometry } from "./angles";
import { MountBodies } from "./mount";
import type { Stage } from "./stage";

export type Stand = Pick<Motion, "geometry" | "range_m" | "size_mm" | "offset_mm" | "ports"> & {
  mount?: Pick<Mount, "joints" | "solids" | "up"> | null;
};

export function solid(colour: string): MeshLambertMaterial {
  return new MeshLambertMaterial({ color: new Color(colour) });
}

export function rod(
  from: [number, number, number],
  to: [number, number, number],
  radius: number,
  colour: string,
): Mesh {
  const a = new Vector3(...from),
    way = new Vector3(...to).sub(a);
  const mesh = new Mesh(new CylinderGeometry(radius, radius, way.length(), 18), solid(colour));
  mesh.position.copy(a).addScaledVector(way, 0.5);
  mesh.quaternion.setFromUnitVectors(new Vector3(0, 1, 0), way.normalize());
  return mesh;
}

/** Let go of what a group held on the graphics card. */
export function emptied(group: Object3D): void {
  group.traverse((one) => {
    if (one instanceof Mesh || one instanceof Line || one instanceof Points) {
      (one.geometry as BufferGeometry).dispose();
      for (const material of [one.material].flat()) (material as LineBasicMaterial).dispose();
    }
  });
  group.clear();
}

export class Chamber {
  private fixed = new Group();
  private carried = new Group();
  private onDevice = new Group();
  private probe = new Group();
  private built: Stand | null = null;
  private angles: [number, number, number] = [0, 0, 0];
  private mount: MountBodies | null = null;
  /** Values of the joints, as last told. */
  private values: number[] = [];

  /** Whose chamber it is: a campaign; empty where it is nobody's, as another positioner of the tutor. */
  whose = "";

  constructor(private stage: Stage) {
    stage.room.add(this.fixed, this.carried, this.probe);
    stage.device.add(this.onDevice);
  }

  /** What stands there now; null before the first was built. */
  get stand(): Stand | null {
    return this.built;
  }

  /** Take everything away: what stood there is not the chamber that is looked at now. */
  clear(): void {
    this.built = null;
    for (const group of [this.fixed, this.carried, this.onDevice, this.probe]) emptied(group);
    this.stage.clearLabels(this.stage.room);
    this.stage.clearLabels(this.probe);
    this.mount?.leave();
    this.mount = null;
    this.stage.eye = null;
    this.stage.moves = null;
    this.values = [];
    this.angles = [0, 0, 0];
    this.stage.ask();
  }

  get geometry(): Geometry {
    return (this.built?.geometry ?? "roll-over-azimuth") as Geometry;
  }

  /** Build it anew if it is another one. */
  build(stand: Stand, force = false): void {
    const same = this.built && this.key(stand) === this.key(this.built);
    if (same && !force) return;
    this.built = stand;
    for (const group of [this.fixed, this.carried, this.onDevice, this.probe]) emptied(group);
    this.stage.clearLabels(this.stage.room);
    this.mount?.leave();
    this.mount = stand.mount ? new MountBodies(this.stage, this.fixed, this.probe, stand.mount, stand.range_m) : null;
    this.stage.upright((stand.mount?.up ?? [0, 1, 0]) as [number, number, number], this.mount?.needs ?? 1);
    this.stage.eye = this.mount && (() => this.probe.position.clone());
    if (this.mount) {
      this.addDevice(stand);
      this.addProbe(stand);
      this.pose(this.values);
      return;
    }
    this.probe.rotation.set(0, 0, 0);
    this.stage.device.position.set(0, 0, 0);
    this.stacked(stand);
    this.addDevice(stand);
    this.addProbe(stand);
    this.turn(this.angles[0], this.angles[1], this.angles[2]);
  }

  private key(stand: Stand): string {
    const mount = stand.mount && [stand.mount.joints, stand.mount.solids, stand.mount.up];
    return JSON.stringify([stand.geometry, stand.range_m, stand.size_mm, stand.offset_mm, stand.ports, mount ?? null]);
  }

  /** One of the three stacks of two axes. */
  private stacked(stand: Stand): void {
    const c = lines(),
      steel = c.quiet;
    const floor = new GridHelper(2.4, 12, c.grid, c.grid);
    floor.position.set(0, -0.68, 0.4);
    this.fixed.add(floor);
    if (stand.geometry === "roll-over-azimuth") {
      this.carried.add(
        rod([0, -0.66, 0], [0, -0.58, 0], 0.14, steel),
        rod([0, -0.62, -0.02], [0, -0.62, -0.6], 0.03, steel),
        rod([0, -0.62, -0.58], [0, 0, -0.58], 0.03, steel),
        rod([0, 0, -0.64], [0, 0, -0.5], 0.05, steel),
      );
      this.onDevice.add(rod([0, 0, -0.5], [0, 0, -0.05], 0.022, c.co));
    } else if (stand.geometry === "azimuth-over-elevation") {
      this.fixed.add(
        rod([0.62, -0.68, 0], [0.62, 0, 0], 0.028, steel),
        rod([-0.62, -0.68, 0], [-0.62, 0, 0], 0.028, steel),
      );
      this.carried.add(
        rod([-0.62, 0, 0], [-0.55, -0.54, 0], 0.022, steel),
        rod([0.62, 0, 0], [0.55, -0.54, 0], 0.022, steel),
        rod([-0.55, -0.54, 0], [0.55, -0.54, 0], 0.028, steel),
      );
      this.onDevice.add(rod([0, -0.54, 0], [0, -0.05, 0], 0.022, c.co));
    } else {
      this.carried.add(
        rod([0, -0.66, 0], [0, -0.58, 0], 0.14, steel),
        rod([-0.56, -0.6, 0], [0.56, -0.6, 0], 0.028, steel),
        rod([-0.56, -0.6, 0], [-0.56, 0, 0], 0.028, steel),
        rod([0.56, -0.6, 0], [0.56, 0, 0], 0.028, steel),
      );
      this.onDevice.add(rod([-0.56, 0, 0], [0.56, 0, 0], 0.016, c.co));
    }
  }

  private addDevice(stand: Stand): void {
    const scale = 1e-3 / stand.range_m,
      grow = Math.max(1, 0.14 / (Math.max(...stand.size_mm) * scale));
    const size = stand.size_mm.map((v) => Math.max(0.012, v * scale * grow));
    const box = new Mesh(new BoxGeometry(size[0], size[1], size[2]), solid(lines().other));
    box.position.set(stand.offset_mm[0] * scale, stand.offset_mm[1] * scale, stand.offset_mm[2] * scale);
    this.onDevice.add(box);
    this.enlarged = grow;
  }

  /** How much larger than to scale the device is drawn. */
  enlarged = 1;

  private addProbe(stand: Stand): void {
    const c = lines();
    const body = new Mesh(new ConeGeometry(0.045, 0.13, 24, 1, true), solid(c.ink));
    body.rotation.x = Math.PI / 2;
    body.position.z = 0.065;
    this.probe.add(body, new ArrowHelper(new Vector3(1, 0, 0), new Vector3(0, 0, -0.02), 0.16, c.cross, 0.045, 0.03));
    if (stand.ports === 2)
      this.probe.add(new ArrowHelper(new Vector3(0, 1, 0), new Vector3(0, 0, -0.02), 0.16, c.co, 0.045, 0.03));
    this.probe.position.set(0, 0, 1);
    this.stage.clearLabels(this.probe);
    // A probe that swings takes its name and the line along which it looks with it.
    const from = this.mount ? -1 : 0;
    if (this.mount) this.stage.label("probe", [-0.15, 0, 0.05], this.probe, "quiet", false);
    else this.stage.label("probe", [0, 0.13, 1.02], this.stage.room, "quiet", false);
    const ray = new Line(
      new BufferGeometry().setFromPoints([new Vector3(0, 0, from + RAY), new Vector3(0, 0, from + 0.96)]),
      new LineBasicMaterial({ color: c.quiet }),
    );
    (this.mount ? this.probe : this.fixed).add(ray);
  }

  /** The chamber with every axis, or every joint, at its zero: no page's pose stays for the next one. */
  rest(): void {
    this.stage.moves = null;
    this.values = [];
    if (this.mount) this.pose([]);
    else this.turn(0, 0, 0);
  }

  /** Stand the bodies of a mount where its joints have these values, degrees and millimetres. */
  pose(values: readonly number[]): void {
    this.values = [...values];
    this.mount?.pose(values);
    this.stage.ask();
  }

  /** Turn everything to angles of the conventions, degrees: azimuth-like, roll or elevation, probe. */
  turn(first: number, second: number, probe: number): void {
    this.angles = [first, second, probe];
    if (this.mount) return;
    const d = this.stage.device.rotation,
      carried = this.carried.rotation;
    // Device: R of the conventions, written as three.js writes intrinsic rotations.
    if (this.geometry === "roll-over-azimuth") {
      d.set(0, -first * DEG, -second * DEG, "YXZ");
      carried.set(0, -first * DEG, 0);
    } else if (this.geometry === "azimuth-over-elevation") {
      d.set(second * DEG, -first * DEG, 0, "XYZ");
      carried.set(second * DEG, 0, 0);
    } else {
      d.set(second * DEG, -first * DEG, 0, "YXZ");
      carried.set(0, -first * DEG, 0);
    }
    this.probe.rotation.z = probe * DEG;
    this.stage.ask();
  }

  private named(angles: number[], axes: string[]): [number, number, number] {
    const of = (name: string) => angles[axes.indexOf(name)] ?? 0;
    return [of("azimuth"), of(this.geometry === "roll-over-azimuth" ? "roll" : "elevation"), of("probe")];
  }

  /** Turn by named angles, or by the joints of a mount, at once. */
  turnTo(angles: number[], axes: string[], joints: number[] = []): void {
    this.stage.moves = null;
    this.turn(...this.named(angles, axes));
    this.pose(joints);
  }

  /** Go on to where a running scan says that its axes are, in the time until it says so again: axes do not jump. */
  follow(angles: number[], axes: string[], joints: number[] = []): void {
    const swings = this.mount !== null,
      to = swings ? joints : this.named(angles, axes),
      from = swings ? this.values : this.angles;
    if (to.every((v, i) => Math.abs(v - (from[i] ?? 0)) < 1e-3)) return;
    // A mount that is not built yet takes the pose when it is.
    if (!swings) this.values = joints;
    if (matchMedia("(prefers-reduced-motion: reduce)").matches || document.hidden) {
      this.turnTo(angles, axes, joints);
      return;
    }
    let began = 0;
    this.stage.moves = (time) => {
      began ||= time;
      const part = Math.min(1, (time - began) / BETWEEN_MS);
      const at = to.map((v, i) => (from[i] ?? 0) + (v - (from[i] ?? 0)) * part);
      if (swings) this.pose(at);
      else this.turn(...(at as [number, number, number]));
      return part < 1;
    };
    this.stage.ask();
  }
}

const RAY = 0.06;
/** A scan says where its axes are this often, ms. */
const BETWEEN_MS = 85;
