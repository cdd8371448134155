/** What lies on the sphere of directions: rings with numbers, letters, measured points, the pattern, the cursor. */

import {
  ArrowHelper,
  BufferAttribute,
  BufferGeometry,
  Color,
  Group,
  Line,
  LineBasicMaterial,
  LineSegments,
  Mesh,
  MeshBasicMaterial,
  Points,
  PointsMaterial,
  SphereGeometry,
  Vector3,
} from "three";
import { levels, lines, shade } from "../draw/colours";
import { fill, h } from "../draw/dom";
import { DEG, direction, dot, thetaPhi, type Vector } from "./angles";
import { emptied } from "./chamber";
import { coarseStep, mesh, type Cells, type Surface } from "./surface";
import { RADIUS, type Stage } from "./stage";

export type Scale = { low: number; high: number; unit: string };

/** The ramp's colours in linear light, as the graphics card wants them. */
const LINEAR = Float32Array.from(levels, (v) => (v / 255) ** 2.2);

export class DirectionSphere {
  private rings = new Group();
  private points: Points | null = null;
  private mesh: Mesh | null = null;
  /** The same surface with fewer cells, for pictures that move. */
  private coarse: { mesh: Mesh; cells: Int32Array } | null = null;
  private drawn = new Group();
  private cursorMark: Mesh;
  private cells: Cells | null = null;
  private cellKey = "";

  constructor(private stage: Stage) {
    this.cursorMark = new Mesh(new SphereGeometry(0.016, 16, 12), new MeshBasicMaterial({ color: 0xffffff }));
    this.cursorMark.visible = false;
    stage.device.add(this.rings, this.drawn, this.cursorMark);
    stage.detail = (fine) => this.detail(fine);
    this.frame();
  }

  /** Rings of theta and meridians of phi every 30 degrees with numbers, and the letters of the axes. */
  frame(): void {
    const c = lines(),
      places: Vector3[] = [];
    emptied(this.rings);
    this.stage.clearLabels(this.rings);
    const segment = (from: Vector, to: Vector) =>
      places.push(new Vector3(...from).multiplyScalar(RADIUS), new Vector3(...to).multiplyScalar(RADIUS));
    for (let theta = 30; theta < 180; theta += 30)
      for (let phi = 0; phi < 360; phi += 6) segment(direction(theta, phi), direction(theta, phi + 6));
    for (let phi = 0; phi < 360; phi += 30)
      for (let theta = 0; theta < 180; theta += 6) segment(direction(theta, phi), direction(theta + 6, phi));
    const thin = (this.stage.hairlines = new LineBasicMaterial({ color: c.ring, transparent: true }));
    this.rings.add(new LineSegments(new BufferGeometry().setFromPoints(places), thin));
    const at = (d: Vector, r: number): Vector => [d[0] * r, d[1] * r, d[2] * r];
    for (let theta = 30; theta < 180; theta += 30)
      this.stage.label(`${theta}°`, at(direction(theta, 0), RADIUS * 1.05), this.rings, "ring");
    for (let phi = 30; phi < 360; phi += 30)
      this.stage.label(`${phi}°`, at(direction(90, phi), RADIUS * 1.05), this.rings, "ring");
    for (const [letter, d, kind] of [
      ["x", [1, 0, 0], "x"],
      ["y", [0, 1, 0], "y"],
      ["z", [0, 0, 1], "z"],
    ] as [string, Vector, string][]) {
      const colour = kind === "x" ? c.cross : kind === "y" ? c.good : c.co;
      this.rings.add(new ArrowHelper(new Vector3(...d), new Vector3(), RADIUS * 1.16, colour, 0.05, 0.03));
      this.stage.label(letter, at(d, RADIUS * 1.24), this.rings, `letter ${kind}`, false);
    }
    (this.cursorMark.material as MeshBasicMaterial).color.set(c.cross);
    this.stage.ask();
  }

  /** The cells of a scan or a map; points of them are drawn once levels come. */
  shape(cells: Cells): void {
    this.clear();
    this.cells = cells;
  }

  clear(): void {
    emptied(this.drawn);
    this.points = this.mesh = this.coarse = null;
    this.cellKey = "";
    this.stage.ask();
  }

  /** Points: every planned direction grey, the measured ones coloured as they come; `now` is the one before the probe. */
  dots(values: ArrayLike<number | null>, scale: Scale, now = -1): void {
    const cells = this.cells;
    if (!cells) return;
    const count = cells.directions.length / 3;
    if (!this.points || this.mesh) {
      this.clear();
      const geometry = new BufferGeometry();
      geometry.setAttribute(
        "position",
        new BufferAttribute(
          Float32Array.from(cells.directions as ArrayLike<number>, (v) => RADIUS * v),
          3,
        ),
      );
      geometry.setAttribute("color", new BufferAttribute(new Float32Array(cells.directions.length), 3));
      const size = count > 6000 ? 0.012 : count > 1500 ? 0.02 : count > 400 ? 0.03 : 0.045;
      this.points = new Points(geometry, new PointsMaterial({ size, vertexColors: true }));
      this.points.frustumCulled = false;
      this.drawn.add(this.points);
    }
    const quiet = new Color(lines().ring),
      here = new Color(lines().cross),
      colour = this.points.geometry.getAttribute("color") as BufferAttribute,
      out = colour.array as Float32Array;
    for (let i = 0; i < count; i++) {
      const at = 3 * shade(values[i], scale.low, scale.high);
      if (i === now) out.set([here.r, here.g, here.b], 3 * i);
      else if (at < 0) out.set([quiet.r, quiet.g, quiet.b], 3 * i);
      else out.set(LINEAR.subarray(at, at + 3), 3 * i);
    }
    colour.needsUpdate = true;
    this.stage.ask();
  }

  /** A pattern as a surface: level outwards and in colour. Nothing is drawn where nothing was measured. */
  surface(values: ArrayLike<number | null>, scale: Scale, key: string): void {
    const cells = this.cells;
    if (!cells) return;
    const d = cells.directions,
      count = d.length / 3,
      { low, high } = scale;
    const known = (i: number) => values[i] !== null && Number.isFinite(values[i]);
    const radius = (i: number) => RADIUS * Math.max(0.03, Math.min(1, ((values[i] as number) - low) / (high - low)));
    if (!this.mesh || this.cellKey !== key) {
      this.clear();
      this.cellKey = key;
      this.mesh = this.faced(mesh(cells, 1, known));
      const step = coarseStep(cells);
      if (this.stage.software && step > 1) {
        const thin = mesh(cells, step, known);
        this.coarse = { mesh: this.faced(thin), cells: thin.cells };
      }
    }
    const geometry = this.mesh.geometry,
      place = geometry.getAttribute("position") as BufferAttribute,
      colour = geometry.getAttribute("color") as BufferAttribute,
      p = place.array as Float32Array,
      out = colour.array as Float32Array;
    for (let i = 0; i < count; i++) {
      const r = known(i) ? radius(i) : 0;
      p[3 * i] = d[3 * i] * r;
      p[3 * i + 1] = d[3 * i + 1] * r;
      p[3 * i + 2] = d[3 * i + 2] * r;
    }
    place.needsUpdate = true;
    // Light and shade are worked out here once, so that turning the picture costs little.
    geometry.computeVertexNormals();
    const normal = geometry.getAttribute("normal").array as Float32Array;
    for (let i = 0; i < count; i++) {
      const at = 3 * Math.max(0, shade(values[i], low, high));
      const light = 0.42 + 0.58 * Math.abs(0.48 * normal[3 * i] + 0.72 * normal[3 * i + 1] + 0.5 * normal[3 * i + 2]);
      for (let k = 0; k < 3; k++) out[3 * i + k] = LINEAR[at + k] * light;
    }
    colour.needsUpdate = true;
    this.thin(p, out);
    this.detail(true);
    this.stage.ask();
  }

  /** A mesh on the sphere whose places and colours come later. */
  private faced(surface: Surface): Mesh {
    const geometry = new BufferGeometry(),
      count = surface.cells.length;
    geometry.setIndex(new BufferAttribute(surface.index, 1));
    geometry.setAttribute("position", new BufferAttribute(new Float32Array(3 * count), 3));
    geometry.setAttribute("color", new BufferAttribute(new Float32Array(3 * count), 3));
    const found = new Mesh(geometry, new MeshBasicMaterial({ vertexColors: true, side: 2 }));
    found.frustumCulled = false;
    this.drawn.add(found);
    return found;
  }

  /** Places and colours of the thin mesh are those of the whole one at its own cells. */
  private thin(places: Float32Array, colours: Float32Array): void {
    if (!this.coarse) return;
    const { mesh, cells } = this.coarse;
    for (const [name, from] of [
      ["position", places],
      ["color", colours],
    ] as const) {
      const to = mesh.geometry.getAttribute(name) as BufferAttribute,
        out = to.array as Float32Array;
      for (let i = 0; i < cells.length; i++) out.set(from.subarray(3 * cells[i], 3 * cells[i] + 3), 3 * i);
      to.needsUpdate = true;
    }
  }

  /** Drawn by software a large surface is thinned while it moves; at rest every cell is there. */
  private detail(fine: boolean): void {
    if (!this.coarse || !this.mesh) return;
    this.mesh.visible = fine;
    this.coarse.mesh.visible = !fine;
  }

  get holds(): "nothing" | "points" | "surface" {
    return this.mesh ? "surface" : this.points ? "points" : "nothing";
  }

  /** The shared cursor on the sphere. */
  cursor(at: Vector | null): void {
    this.cursorMark.visible = at !== null;
    if (at) this.cursorMark.position.set(at[0], at[1], at[2]).multiplyScalar(RADIUS);
    this.stage.ask();
  }

  /** The cell nearest to a direction, or -1. */
  nearest(d: Vector): number {
    const all = this.cells?.directions;
    if (!all) return -1;
    let best = -2,
      at = -1;
    for (let i = 0; i < all.length; i += 3) {
      const near = all[i] * d[0] + all[i + 1] * d[1] + all[i + 2] * d[2];
      if (near > best) {
        best = near;
        at = i / 3;
      }
    }
    return at;
  }

  /** What stands under the scene where one points: the nearest cell within some degrees and what is told of it. */
  told(d: Vector, withinDeg: number, words: (cell: number) => string | null): string {
    const at = this.nearest(d),
      all = this.cells?.directions ?? [],
      cell: Vector | null = at < 0 ? null : [all[3 * at], all[3 * at + 1], all[3 * at + 2]],
      near = cell !== null && dot(d, cell) > Math.cos(withinDeg * DEG);
    return `${this.words(near ? cell : d)}: ${(near ? words(at) : null) ?? "not measured"}`;
  }

  /** The bar beside the scene: absolute levels and their colours. */
  scaleBar(scale: Scale | null, title = ""): void {
    if (!scale) {
      fill(this.stage.colourBar);
      return;
    }
    const canvas = h("canvas", { attrs: { width: 1, height: 128, "aria-hidden": "true" } }),
      pen = canvas.getContext("2d")!;
    for (let i = 0; i < 128; i++) {
      const k = 6 * (127 - i);
      pen.fillStyle = `rgb(${levels[k]} ${levels[k + 1]} ${levels[k + 2]})`;
      pen.fillRect(0, i, 1, 1);
    }
    // Round numbers: every 10 dB, over a long range every 20.
    const span = scale.high - scale.low,
      step = span > 60 && span % 20 === 0 ? 20 : 10,
      marks = Array.from({ length: Math.round(span / step) + 1 }, (_, i) => scale.high - i * step);
    fill(
      this.stage.colourBar,
      h("span", {}, `${title} / ${scale.unit}`),
      h("div", {}, canvas, h("ol", {}, ...marks.map((v) => h("li", {}, v.toFixed(0))))),
    );
  }

  words(d: Vector): string {
    const [theta, phi] = thetaPhi(d);
    return `theta ${theta.toFixed(1)}°, phi ${((phi + 360) % 360).toFixed(1)}°`;
  }
}

/** A line on the sphere, such as the part of a slice that was swept. */
export function arc(places: Vector[], colour: string): Line {
  return new Line(
    new BufferGeometry().setFromPoints(places.map((d) => new Vector3(...d).multiplyScalar(RADIUS * 1.003))),
    new LineBasicMaterial({ color: colour }),
  );
}
