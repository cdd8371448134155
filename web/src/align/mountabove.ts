/** A mount that is described by its joints, from above and to scale: bodies, joints, and where the plan takes the probe. */

import { h, number } from "../draw/dom";
import type { JointLine, Motion, Mount, MountSolid } from "../request/types";
import { combine, cross, dot, type Vector } from "../scene/angles";
import { ends, links, moved, type Rigid, STILL } from "../scene/chain";
import { apart, type Rank } from "../scene/labels";
import { sketch } from "../scene/mount";

const SPACE = "http://www.w3.org/2000/svg";
const HIGH = 300,
  /** Kept free for the probe and names of joints at the rim. */
  RIM = 34,
  LETTER = 13;
/** A joint whose line leans by less than this against the vertical is drawn as a point: cosine. */
const UPRIGHT = 0.95;

export type Flat = [number, number];
/** The range as it is declared, and where its joints stand. */
export type Above = Pick<Motion, "range_m" | "size_mm" | "offset_mm"> & {
  mount: Pick<Mount, "joints" | "solids" | "up" | "values">;
};

/** To the right and upwards on the paper: whoever looks down sees them right-handed. The probe's side lies to the right. */
export function paper(up: Vector): { right: Vector; top: Vector } {
  const right: Vector = Math.abs(up[2]) > 0.9 ? [1, 0, 0] : [0, 0, 1];
  return { right, top: cross(up, right) };
}

/** Places of the laboratory as they are seen from above, metres. */
export function seen(up: Vector, places: Vector[]): Flat[] {
  const { right, top } = paper(up);
  return places.map((p) => [dot(p, right), dot(p, top)]);
}

/** The outline of points on the paper, one corner after the other (A. M. Andrew, 1979). */
export function outline(points: Flat[]): Flat[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (all: Flat[]): Flat[] => {
    const kept: Flat[] = [];
    for (const p of all) {
      while (kept.length > 1) {
        const [a, b] = kept.slice(-2);
        if ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) > 1e-12) break;
        kept.pop();
      }
      kept.push(p);
    }
    return kept.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.reverse())];
}

function corners(middle: Vector, halves: Vector): Vector[] {
  const signs = [-1, 1];
  return signs.flatMap((x) =>
    signs.flatMap((y) =>
      signs.map((z): Vector => [middle[0] + x * halves[0], middle[1] + y * halves[1], middle[2] + z * halves[2]]),
    ),
  );
}

/** Where the plan takes the probe, laboratory, metres: one place for each point. */
export function probePlaces(of: Above): Vector[] {
  const { joints, values } = of.mount,
    n = joints.length;
  return Array.from({ length: Math.floor(values.length / n) }, (_, i) =>
    moved(ends(joints, values.slice(n * i, n * i + n)).probe, [0, 0, of.range_m]),
  );
}

/** `values`: where the joints stand, degrees and millimetres; `words`: since when; `wide`: room for the picture, in its pixels. */
export function mountFromAbove(of: Above, values: readonly number[], words: string, wide = 640): HTMLElement {
  const svg = document.createElementNS(SPACE, "svg"),
    said = of.mount.joints.map((one, i) => `${one.name} ${number(values[i] ?? 0, 1)} ${one.unit}`).join(", ");
  const attributes = { viewBox: `0 0 ${wide} ${HIGH}`, role: "img", "aria-label": `mount from above: ${said}`, "font-size": LETTER, class: "range-picture" }; // prettier-ignore
  for (const [key, value] of Object.entries(attributes)) svg.setAttribute(key, String(value));
  new Drawing(svg, of, values, wide).draw();
  return h(
    "div",
    {},
    svg as unknown as Node as HTMLElement,
    h("p", { class: "small" }, `${words}: ${said}.`),
    h("p", { class: "small quiet" }, "To scale, seen from above. Small points: where the plan takes the probe. A joint without a declared solid is drawn as a line."), // prettier-ignore
  );
}

class Drawing {
  private scale: number;
  private up: Vector;
  private bodies: Rigid[];
  private places: Vector[];

  constructor(
    private svg: SVGElement,
    private of: Above,
    private values: readonly number[],
    private wide: number,
  ) {
    this.up = of.mount.up as Vector;
    this.bodies = links(of.mount.joints, values);
    this.places = probePlaces(of);
    // Everything that moves is inside; a wall or a floor may go beyond the picture.
    const span = [...seen(this.up, [...this.places, this.probe()]), ...this.sketched().flatMap((one) => one.path)],
      far = (i: 0 | 1) => Math.max(0.2 * of.range_m, ...span.map((p) => Math.abs(p[i])));
    this.scale = Math.min((this.wide / 2 - RIM) / far(0), (HIGH / 2 - RIM) / far(1));
  }

  draw(): void {
    for (const one of this.of.mount.solids) this.solid(one);
    const drawn = new Set(this.of.mount.solids.map((one) => one.body));
    for (const { body, path } of this.sketched())
      if (!drawn.has(body))
        this.add("path", { d: line(path.map((p) => this.at(p))), fill: "none", stroke: "var(--quiet)", "stroke-width": 4, "stroke-linejoin": "round" }); // prettier-ignore
    for (const p of seen(this.up, this.places)) {
      const [cx, cy] = this.at(p);
      this.add("circle", { cx, cy, r: 1.6, fill: "var(--cross)" });
    }
    this.device();
    this.of.mount.joints.forEach((one, i) => this.joint(one, i));
    this.horn();
    this.ruler();
    this.write();
  }

  private add(tag: string, attrs: Record<string, string | number>, text = ""): void {
    const one = document.createElementNS(SPACE, tag);
    for (const [key, value] of Object.entries(attrs)) one.setAttribute(key, String(value));
    if (text) one.textContent = text;
    this.svg.append(one);
  }

  private at(p: Flat): Flat {
    return [round(this.wide / 2 + this.scale * p[0]), round(HIGH / 2 - this.scale * p[1])];
  }

  private body(number: number): Rigid {
    return number < 0 ? STILL : this.bodies[number];
  }

  private end(): { device: Rigid; probe: Rigid } {
    return ends(this.of.mount.joints, this.values);
  }

  private probe(): Vector {
    return moved(this.end().probe, [0, 0, this.of.range_m]);
  }

  /** Links of the sketch as they stand, on the paper. */
  private sketched(): { body: number; path: Flat[] }[] {
    const { joints } = this.of.mount,
      r = this.of.range_m;
    return sketch(joints, this.up, r).links.map(({ body, path }) => ({
      body,
      path: seen(this.up, path.map((p) => moved(this.body(body), combine(r, p, 0, p)))), // prettier-ignore
    }));
  }

  private solid(one: MountSolid): void {
    const there = this.body(one.body),
      room = one.body < 0,
      look = { fill: "var(--quiet)", "fill-opacity": room ? 0.14 : 0.4, stroke: "var(--quiet)" };
    if (one.shape === "box") {
      const places = corners(one.a_m as Vector, one.b_m as Vector).map((p) => moved(there, p));
      const path = outline(seen(this.up, places)).map((p) => this.at(p));
      this.add("path", { d: `${line(path)} Z`, ...look });
      return;
    }
    const [[x1, y1], [x2, y2]] = seen(this.up, [moved(there, one.a_m as Vector), moved(there, one.b_m as Vector)]).map((p) => this.at(p)); // prettier-ignore
    // A stroke of length 0 with round ends is a disc.
    this.add("line", { x1, y1, x2: x2 + 1e-3, y2, stroke: "var(--quiet)", "stroke-opacity": room ? 0.3 : 0.6, "stroke-width": Math.max(2, 2 * this.scale * one.radius_m), "stroke-linecap": "round" }); // prettier-ignore
  }

  private device(): void {
    const half = this.of.size_mm.map((v) => Math.max(5e-4 * v, 3 / this.scale)) as Vector,
      middle = this.of.offset_mm.map((v) => 1e-3 * v) as Vector,
      { device } = this.end(),
      [[x1, y1], [x2, y2]] = seen(this.up, [[0, 0, 0], [0.3 * this.of.range_m, 0, 0]].map((p) => moved(device, p as Vector))).map((p) => this.at(p)); // prettier-ignore
    const places = corners(middle, half).map((p) => moved(device, p));
    this.add("path", { d: `${line(outline(seen(this.up, places)).map((p) => this.at(p)))} Z`, fill: "var(--other)" });
    this.add("line", { x1, y1, x2, y2, stroke: "var(--co)", "stroke-width": 2 });
    this.words.push({ text: "x of the device", x: x2 + (x2 < x1 ? -6 : 6), y: y2 + 4, anchor: x2 < x1 ? "end" : "start", rank: "fixed", fill: "var(--co)" }); // prettier-ignore
  }

  private joint(one: JointLine, number: number): void {
    const r = this.of.range_m,
      node = sketch(this.of.mount.joints, this.up, r).nodes[number],
      at = moved(this.bodies[number], combine(r, node, 0, node)),
      along = combine(1, moved(this.bodies[number], combine(1, combine(r, node, 0, node), 0.09 * r, one.axis as Vector)), -1, at), // prettier-ignore
      [cx, cy] = this.at(seen(this.up, [at])[0]),
      colour = one.carries === "device" ? "var(--co)" : "var(--cross)",
      upright = Math.abs(dot(one.axis as Vector, this.up)) > UPRIGHT;
    if (upright && one.kind === "revolute")
      this.add("circle", { cx, cy, r: 7, fill: "none", stroke: colour, "stroke-width": 3 }); // prettier-ignore
    else {
      const [[x1, y1], [x2, y2]] = seen(this.up, [combine(1, at, -1, along), combine(1, at, 1, along)]).map((p) => this.at(p)); // prettier-ignore
      this.add("line", { x1, y1, x2: x2 + 1e-3, y2, stroke: colour, "stroke-width": 5, "stroke-linecap": "round" });
    }
    const right = cx > this.wide - 120;
    this.words.push({ text: one.name, x: right ? cx - 12 : cx + 12, y: cy + 18, anchor: right ? "end" : "start", rank: "name", fill: "var(--ink)" }); // prettier-ignore
  }

  private words: { text: string; x: number; y: number; anchor: "start" | "middle" | "end"; rank: Rank; fill: string }[] = []; // prettier-ignore

  /** Words come last, so that nothing is drawn over them; those that would meet are written below one another. */
  private write(): void {
    const shift = { start: 0.5, middle: 0, end: -0.5 },
      spots = this.words.map(({ text, x, y, anchor, rank }) => {
        const wide = 0.6 * LETTER * text.length;
        return { x: x + shift[anchor] * wide, y, wide, high: LETTER + 2, rank };
      });
    apart(spots).forEach((by, i) => {
      const { text, x, y, anchor, fill, rank } = this.words[i];
      this.add("text", { x, y: y + (by ?? 0), fill, "text-anchor": anchor, "font-weight": rank === "fixed" || text === "probe" ? 600 : 400, stroke: "var(--card)", "stroke-width": 4, "paint-order": "stroke" }, text); // prettier-ignore
    });
  }

  /** The probe as a wedge with its mouth towards where it looks; a disc where it looks up or down. */
  private horn(): void {
    const { probe } = this.end(),
      back = 0.1 * this.of.range_m;
    const [a, b] = seen(this.up, [this.probe(), moved(probe, [0, 0, this.of.range_m + back])]).map((p) => this.at(p)),
      way: Flat = [a[0] - b[0], a[1] - b[1]],
      size = Math.hypot(...way);
    if (size < 4) this.add("circle", { cx: a[0], cy: a[1], r: 9, fill: "var(--ink)" });
    else {
      const [ux, uy] = [way[0] / size, way[1] / size],
        tip = (along: number, aside: number): Flat => [round(a[0] + along * ux - aside * uy), round(a[1] + along * uy + aside * ux)]; // prettier-ignore
      this.add("path", { d: `${line([tip(0, 11), tip(-24, 4), tip(-24, -4), tip(0, -11)])} Z`, fill: "var(--ink)" });
    }
    this.words.push({ text: "probe", x: a[0], y: a[1] - 16, anchor: "middle", rank: "name", fill: "var(--ink)" });
  }

  private ruler(): void {
    const step = [0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10].find((v) => v * this.scale > 60) ?? 10,
      y = HIGH - 14;
    this.add("path", { d: `M12 ${y - 5} V${y} H${round(12 + step * this.scale)} V${y - 5}`, fill: "none", stroke: "var(--ink)" }); // prettier-ignore
    this.add("text", { x: round(18 + step * this.scale), y, fill: "var(--ink)" }, `${step} m`);
  }
}

function line(points: Flat[]): string {
  return points.map(([x, y], i) => `${i ? "L" : "M"}${x} ${y}`).join(" ");
}

function round(v: number): number {
  return Math.round(10 * v) / 10;
}
