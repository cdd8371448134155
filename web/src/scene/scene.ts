/** Three dimensions: the positioner with device and probe, the tutor's sphere, and the pattern as a surface.
 *
 * Axes are the laboratory's: z from the crossing to the probe, y up. The frame is drawn when something changed, not all the time.
 */

import {
  AmbientLight,
  ArrowHelper,
  BoxGeometry,
  BufferAttribute,
  BufferGeometry,
  Color,
  ConeGeometry,
  CylinderGeometry,
  DirectionalLight,
  GridHelper,
  Group,
  Line,
  LineBasicMaterial,
  Mesh,
  MeshLambertMaterial,
  PerspectiveCamera,
  Points,
  PointsMaterial,
  Raycaster,
  Scene,
  SphereGeometry,
  Vector2,
  Vector3,
  WebGLRenderer,
} from "three";
import { OrbitControls } from "three/addons/controls/OrbitControls.js";
import { levels, lines, shade } from "../draw/colours";
import { h } from "../draw/dom";
import type { Motion } from "../request/types";

const DEG = Math.PI / 180;
/** Some machines draw in software: then edges are left rough and it still moves. */
let software: boolean | null = null;

export class View {
  readonly note = h("div", { class: "note" });
  readonly element = h("div", { class: "scene" }, this.note);
  readonly scene = new Scene();
  readonly camera = new PerspectiveCamera(38, 4 / 3, 0.01, 50);
  readonly ok: boolean;
  protected renderer: WebGLRenderer | null = null;
  protected controls: OrbitControls | null = null;
  private asked = false;

  constructor(label: string, from: [number, number, number] = [1.6, 1.1, 2.2]) {
    this.element.setAttribute("role", "img");
    this.element.setAttribute("aria-label", label);
    this.camera.position.set(...from);
    try {
      this.renderer = new WebGLRenderer({ antialias: software !== true, alpha: true, powerPreference: "low-power" });
      if (software === null) {
        const gl = this.renderer.getContext(),
          info = gl.getExtension("WEBGL_debug_renderer_info");
        software = info
          ? /swiftshader|llvmpipe|software/i.test(String(gl.getParameter(info.UNMASKED_RENDERER_WEBGL)))
          : false;
      }
      this.renderer.setPixelRatio(software ? 1 : Math.min(2, window.devicePixelRatio));
      this.element.prepend(this.renderer.domElement);
      this.controls = new OrbitControls(this.camera, this.renderer.domElement);
      this.controls.addEventListener("change", () => this.ask());
      new ResizeObserver(() => this.ask()).observe(this.element);
    } catch {
      this.note.textContent =
        "This browser draws no 3D here (WebGL is off); everything is on the page in numbers as well.";
    }
    this.ok = this.renderer !== null;
    this.scene.add(new AmbientLight(0xffffff, 1.6));
    const sun = new DirectionalLight(0xffffff, 1.9);
    sun.position.set(1.5, 3, 2);
    this.scene.add(sun);
  }

  /** Draw once, soon. */
  ask(): void {
    if (this.asked || !this.renderer) return;
    this.asked = true;
    requestAnimationFrame(() => {
      this.asked = false;
      this.render();
    });
  }

  render(): void {
    const width = this.element.clientWidth,
      height = this.element.clientHeight;
    if (!this.renderer || !width || !height) return;
    const size = this.renderer.getSize(new Vector2());
    if (size.x !== width || size.y !== height) {
      this.renderer.setSize(width, height, false);
      this.camera.aspect = width / height;
      this.camera.updateProjectionMatrix();
    }
    this.renderer.render(this.scene, this.camera);
  }
}

function solid(colour: string, opacity = 1): MeshLambertMaterial {
  return new MeshLambertMaterial({ color: new Color(colour), transparent: opacity < 1, opacity });
}

function rod(from: Vector3, to: Vector3, radius: number, colour: string): Mesh {
  const way = to.clone().sub(from);
  const mesh = new Mesh(new CylinderGeometry(radius, radius, way.length(), 20), solid(colour));
  mesh.position.copy(from).addScaledVector(way, 0.5);
  mesh.quaternion.setFromUnitVectors(new Vector3(0, 1, 0), way.normalize());
  return mesh;
}

/** The positioner of a chamber, turning as it will. Lengths are in range lengths, so that it always fits. */
export class Positioner extends View {
  private first = new Group();
  private second = new Group();
  private probe = new Group();
  private sky: Points | null = null;
  private geometry = "";
  private measured = new Set<number>();
  private cells = 0;

  constructor() {
    super("positioner with device and probe");
    this.controls?.target.set(0, -0.05, 0.35);
    this.controls?.update();
  }

  build(motion: Motion): void {
    for (const child of [...this.scene.children])
      if (child instanceof Group || child instanceof GridHelper || child instanceof Line || child instanceof Mesh)
        this.scene.remove(child);
    const c = lines(),
      steel = c.quiet;
    this.geometry = motion.geometry;
    this.first = new Group();
    this.second = new Group();
    this.probe = new Group();
    const floor = new GridHelper(2.4, 12, c.grid, c.grid);
    floor.position.set(0, -0.62, 0.4);
    this.scene.add(floor);
    const roll = motion.geometry === "roll-over-azimuth",
      upright = motion.geometry === "azimuth-over-elevation";
    // The first axis carries the second, which carries the device.
    const [outer, inner] = upright ? [this.second, this.first] : [this.first, this.second];
    outer.add(inner);
    this.scene.add(outer);
    if (roll) {
      outer.add(
        rod(new Vector3(0, -0.6, 0), new Vector3(0, -0.5, 0), 0.16, steel),
        rod(new Vector3(0, -0.52, -0.02), new Vector3(0, -0.52, -0.42), 0.035, steel),
        rod(new Vector3(0, -0.52, -0.4), new Vector3(0, 0, -0.4), 0.035, steel),
        rod(new Vector3(0, 0, -0.46), new Vector3(0, 0, -0.3), 0.055, steel),
      );
      inner.add(rod(new Vector3(0, 0, -0.3), new Vector3(0, 0, -0.06), 0.03, c.co));
    } else if (upright) {
      this.scene.add(
        rod(new Vector3(0.42, -0.62, 0), new Vector3(0.42, 0, 0), 0.03, steel),
        rod(new Vector3(-0.42, -0.62, 0), new Vector3(-0.42, 0, 0), 0.03, steel),
      );
      outer.add(
        rod(new Vector3(-0.42, 0, 0), new Vector3(-0.4, -0.36, 0), 0.025, steel),
        rod(new Vector3(0.42, 0, 0), new Vector3(0.4, -0.36, 0), 0.025, steel),
        rod(new Vector3(-0.4, -0.36, 0), new Vector3(0.4, -0.36, 0), 0.03, steel),
      );
      inner.add(rod(new Vector3(0, -0.35, 0), new Vector3(0, -0.06, 0), 0.03, c.co));
    } else {
      outer.add(
        rod(new Vector3(0, -0.62, 0), new Vector3(0, -0.5, 0), 0.16, steel),
        rod(new Vector3(-0.3, -0.5, 0), new Vector3(0.3, -0.5, 0), 0.03, steel),
        rod(new Vector3(-0.3, -0.5, 0), new Vector3(-0.3, 0, 0), 0.03, steel),
        rod(new Vector3(0.3, -0.5, 0), new Vector3(0.3, 0, 0), 0.03, steel),
      );
      inner.add(rod(new Vector3(-0.3, 0, 0), new Vector3(0.3, 0, 0), 0.018, c.co));
    }
    this.addDevice(inner, motion);
    this.addProbe(motion);
    this.addSky(inner, motion.directions);
    this.turn(new Array(motion.axes.length).fill(0), motion.axes);
  }

  private addDevice(inner: Group, motion: Motion): void {
    const scale = 1e-3 / motion.range_m,
      largest = Math.max(...motion.size_mm) * scale,
      grow = Math.max(1, 0.16 / largest);
    const size = motion.size_mm.map((v) => Math.max(0.012, v * scale * grow));
    const box = new Mesh(new BoxGeometry(size[0], size[1], size[2]), solid(lines().other));
    box.position.set(motion.offset_mm[0] * scale, motion.offset_mm[1] * scale, motion.offset_mm[2] * scale);
    inner.add(box);
    const origin = new Vector3(0, 0, 0),
      c = lines();
    for (const [way, colour] of [
      [new Vector3(1, 0, 0), c.cross],
      [new Vector3(0, 1, 0), c.quiet],
      [new Vector3(0, 0, 1), c.co],
    ] as [Vector3, string][])
      inner.add(new ArrowHelper(way, origin, 0.24, colour, 0.05, 0.03));
    this.note.textContent = `device's own axes: x orange, y grey, z blue (boresight)${grow > 1 ? `; the device is drawn ${grow.toFixed(1)} times larger` : ""}`;
  }

  private addProbe(motion: Motion): void {
    const c = lines();
    const body = new Mesh(new ConeGeometry(0.05, 0.14, 24, 1, true), solid(c.ink));
    body.rotation.x = Math.PI / 2;
    body.position.z = 0.07;
    this.probe.add(body, new ArrowHelper(new Vector3(1, 0, 0), new Vector3(0, 0, -0.02), 0.2, c.cross, 0.05, 0.035));
    if (motion.ports === 2)
      this.probe.add(new ArrowHelper(new Vector3(0, 1, 0), new Vector3(0, 0, -0.02), 0.2, c.co, 0.05, 0.035));
    this.probe.position.set(0, 0, 1);
    const ray = new Line(
      new BufferGeometry().setFromPoints([new Vector3(0, 0, 0), new Vector3(0, 0, 0.97)]),
      new LineBasicMaterial({ color: c.quiet }),
    );
    this.scene.add(this.probe, ray);
  }

  private addSky(inner: Group, directions: number[]): void {
    this.cells = directions.length / 3;
    const places = new Float32Array(directions.map((v) => 0.33 * v)),
      colours = new Float32Array(directions.length);
    const geometry = new BufferGeometry();
    geometry.setAttribute("position", new BufferAttribute(places, 3));
    geometry.setAttribute("color", new BufferAttribute(colours, 3));
    this.sky = new Points(geometry, new PointsMaterial({ size: 0.013, vertexColors: true }));
    inner.add(this.sky);
    this.measured.clear();
    this.paint(-1);
  }

  /** Show which directions were measured and which one is now. */
  paint(now: number, measured: Iterable<number> = this.measured): void {
    if (!this.sky) return;
    this.measured = new Set(measured);
    const c = lines(),
      quiet = new Color(c.grid),
      done = new Color(c.co),
      here = new Color(c.cross);
    const colours = this.sky.geometry.getAttribute("color") as BufferAttribute;
    for (let i = 0; i < this.cells; i++) {
      const one = i === now ? here : this.measured.has(i) ? done : quiet;
      colours.setXYZ(i, one.r, one.g, one.b);
    }
    colours.needsUpdate = true;
    this.ask();
  }

  /** Turn everything to angles of the conventions, degrees, by axis. */
  turn(angles: number[], axes: string[]): void {
    const of = (name: string) => (angles[axes.indexOf(name)] ?? 0) * DEG;
    if (this.geometry === "roll-over-azimuth") {
      this.first.rotation.y = -of("azimuth");
      this.second.rotation.z = -of("roll");
    } else {
      this.first.rotation.y = -of("azimuth");
      this.second.rotation.x = of("elevation");
    }
    this.probe.rotation.z = of("probe");
    this.ask();
  }
}

/** A sphere to drag a direction on, with arrows. */
export class Sky extends View {
  private arrows = new Group();
  private ball: Mesh;

  constructor(dragged: (theta: number, phi: number) => void) {
    super("sphere of directions in the device frame", [1.5, 1.2, 2.4]);
    const c = lines();
    this.ball = new Mesh(new SphereGeometry(1, 48, 32), solid(c.band, 0.28));
    this.scene.add(this.ball, this.arrows);
    for (let i = 0; i < 12; i++)
      this.scene.add(this.circle((t) => direction(t * 2 * Math.PI, (i * Math.PI) / 12), c.grid));
    for (let i = 1; i < 6; i++)
      this.scene.add(this.circle((t) => direction((i * Math.PI) / 6, t * 2 * Math.PI), c.grid));
    const o = new Vector3(0, 0, 0);
    for (const [way, colour] of [
      [new Vector3(1, 0, 0), c.cross],
      [new Vector3(0, 1, 0), c.quiet],
      [new Vector3(0, 0, 1), c.co],
    ] as [Vector3, string][])
      this.scene.add(new ArrowHelper(way, o, 1.3, colour, 0.09, 0.05));
    this.note.textContent = "drag on the sphere; x orange, y grey, z blue (boresight). Empty space turns the view.";
    const canvas = this.renderer?.domElement;
    if (!canvas) return;
    const ray = new Raycaster();
    let held = false;
    const point = (event: PointerEvent) => {
      const place = canvas.getBoundingClientRect();
      ray.setFromCamera(
        new Vector2(
          ((event.clientX - place.left) / place.width) * 2 - 1,
          -((event.clientY - place.top) / place.height) * 2 + 1,
        ),
        this.camera,
      );
      const hit = ray.intersectObject(this.ball)[0];
      if (!hit) return false;
      const d = hit.point.normalize();
      dragged(Math.acos(Math.max(-1, Math.min(1, d.z))) / DEG, Math.atan2(d.y, d.x) / DEG);
      return true;
    };
    canvas.addEventListener(
      "pointerdown",
      (event) => {
        held = point(event);
        if (held && this.controls) {
          this.controls.enabled = false;
          canvas.setPointerCapture(event.pointerId);
        }
      },
      { capture: true },
    );
    canvas.addEventListener("pointermove", (event) => {
      if (held) point(event);
    });
    canvas.addEventListener("pointerup", () => {
      held = false;
      if (this.controls) this.controls.enabled = true;
    });
  }

  private circle(at: (t: number) => Vector3, colour: string): Line {
    const places = Array.from({ length: 73 }, (_, i) => at(i / 72));
    return new Line(new BufferGeometry().setFromPoints(places), new LineBasicMaterial({ color: colour }));
  }

  show(at: number[], arrows: { way: number[]; colour: string; length?: number }[]): void {
    this.arrows.clear();
    const d = new Vector3(...(at as [number, number, number]));
    const dot = new Mesh(new SphereGeometry(0.035, 20, 14), solid(lines().ink));
    dot.position.copy(d);
    this.arrows.add(dot);
    for (const one of arrows)
      this.arrows.add(
        new ArrowHelper(
          new Vector3(...(one.way as [number, number, number])),
          d,
          one.length ?? 0.45,
          one.colour,
          0.1,
          0.06,
        ),
      );
    this.ask();
  }
}

function direction(theta: number, phi: number): Vector3 {
  return new Vector3(Math.sin(theta) * Math.cos(phi), Math.sin(theta) * Math.sin(phi), Math.cos(theta));
}

/** A pattern as a surface: level outwards and in colour; a whole frame is taken over in one go. */
export class Surface extends View {
  private mesh: Mesh | null = null;
  private directions = new Float32Array();
  private rows = 0;
  private columns = 0;

  constructor(label = "pattern as a surface") {
    super(label, [1.35, 1.0, 1.5]);
    const o = new Vector3(0, 0, 0),
      c = lines();
    for (const [way, colour] of [
      [new Vector3(1, 0, 0), c.cross],
      [new Vector3(0, 1, 0), c.quiet],
      [new Vector3(0, 0, 1), c.co],
    ] as [Vector3, string][])
      this.scene.add(new ArrowHelper(way, o, 1.2, colour, 0.08, 0.045));
    this.note.textContent = "device's own axes: x orange, y grey, z blue (boresight)";
  }

  shape(rows: number, columns: number, directions: ArrayLike<number>, closed: boolean): void {
    if (this.mesh) {
      this.scene.remove(this.mesh);
      this.mesh.geometry.dispose();
    }
    this.rows = rows;
    this.columns = columns;
    this.directions = Float32Array.from(directions as ArrayLike<number>);
    const geometry = new BufferGeometry(),
      index: number[] = [];
    geometry.setAttribute("position", new BufferAttribute(new Float32Array(this.directions.length), 3));
    geometry.setAttribute("color", new BufferAttribute(new Float32Array(this.directions.length), 3));
    const step = software && rows * columns > 30000 ? 2 : 1;
    for (let r = 0; r + step < rows; r += step)
      for (let k = 0; k < columns; k += step) {
        if (k + step >= columns && !closed) continue;
        const next = k + step >= columns ? 0 : k + step,
          a = r * columns + k,
          b = r * columns + next,
          d = a + step * columns,
          e = b + step * columns;
        index.push(a, d, b, b, d, e);
      }
    geometry.setIndex(index);
    this.mesh = new Mesh(geometry, new MeshLambertMaterial({ vertexColors: true, side: 2, flatShading: true }));
    this.mesh.frustumCulled = false;
    this.scene.add(this.mesh);
  }

  /** Levels in dB below the highest; what is below the floor or unknown shrinks into the middle. */
  level(values: ArrayLike<number | null>, floor: number): void {
    if (!this.mesh || values.length !== this.rows * this.columns) return;
    const place = this.mesh.geometry.getAttribute("position") as BufferAttribute,
      colour = this.mesh.geometry.getAttribute("color") as BufferAttribute;
    const p = place.array as Float32Array,
      c = colour.array as Float32Array,
      d = this.directions;
    for (let i = 0; i < values.length; i++) {
      const v = values[i],
        known = v !== null && v === v,
        radius = known ? Math.max(0.02, 1 - (v as number) / floor) : 0;
      p[3 * i] = d[3 * i] * radius;
      p[3 * i + 1] = d[3 * i + 1] * radius;
      p[3 * i + 2] = d[3 * i + 2] * radius;
      const at = 3 * Math.max(0, shade(known ? (v as number) : null, floor, 0));
      c[3 * i] = (levels[at] / 255) ** 2.2;
      c[3 * i + 1] = (levels[at + 1] / 255) ** 2.2;
      c[3 * i + 2] = (levels[at + 2] / 255) ** 2.2;
    }
    place.needsUpdate = true;
    colour.needsUpdate = true;
    this.ask();
  }
}
