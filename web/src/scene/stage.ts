/** The one scene of the page: one WebGL context, one camera that is kept, letters and numbers as text above it.
 *
 * Axes are the laboratory's: z from the axes' intersection to the probe, y up. The unit is the range length.
 * A picture is drawn when something changed, not all the time.
 */

import {
  AmbientLight,
  DirectionalLight,
  Group,
  LineBasicMaterial,
  PerspectiveCamera,
  Raycaster,
  Scene,
  Sphere,
  Vector2,
  Vector3,
  WebGLRenderer,
} from "three";
import { OrbitControls } from "three/addons/controls/OrbitControls.js";
import { letters } from "../draw/colours";
import { button, fill, h } from "../draw/dom";
import { keep, kept } from "../shell/kept";
import { apart, type Rank, type Spot } from "./labels";

/** Radius of the sphere of directions. */
export const RADIUS = 0.5;

/** A picture at rest has this many pixels for one of the screen, so that its edges are smooth; drawn by software, no more in all
 * than this. While it moves software draws one for one: smooth edges of moving pictures would cost as much as the rest together.
 */
const FINE = 2,
  MOST_PIXELS = 2.5e6,
  RESTED_MS = 180,
  HAIRLINE = 0.5;

/** Angle of view, degrees from top to bottom, and the width over the height that it needs at least. */
const ANGLE = 36,
  WIDE = 1.08;

export const PRESETS: [string, string, [number, number, number]][] = [
  ["corner", "from the corner", [1.6, 1.0, 2.05]],
  ["probe", "as the probe sees it", [0.001, 0.12, 2.3]],
  ["side", "from the side", [2.3, 0.15, 0.3]],
  ["above", "from above", [0.001, 2.4, 0.3]],
];
/** A mount that swings the probe around the device needs so much more room than a probe that stands, at least. */
export const SWINGS = 1.5;
/** What the camera looks at: between sphere and probe, or the sphere where the probe goes around it. */
const MIDDLE = 0.22;

type Label = { element: HTMLElement; at: Vector3; parent: Group; hides: boolean; text: string; rank: Rank; letter: boolean; of: Vector3 | null }; // prettier-ignore
/** Height of the words in the scene, pixels, where the page's letters have their usual size. */
const LETTERS = 10.8;
export type Picked = (direction: [number, number, number]) => void;

export class Stage {
  readonly scene = new Scene();
  /** What stands in the laboratory, and what turns with the device. */
  readonly room = new Group();
  readonly device = new Group();
  /** Turns the laboratory so that what is up there is up in the picture. */
  private readonly world = new Group();
  /** Where the probe is now, laboratory; null where it stands on z. */
  eye: (() => Vector3) | null = null;
  /** How far back the camera stands, over where it stands before a probe that does not swing. */
  private back = 1;
  readonly canvasPlace = h("div", { class: "canvas" });
  readonly labels = h("div", { class: "labels", attrs: { "aria-hidden": "true" } });
  readonly readout = h("div", { class: "readout mono", attrs: { "aria-live": "off" } });
  readonly caption = h("div", { class: "stage-caption" });
  readonly colourBar = h("div", { class: "colour-bar" });
  readonly presets = h("div", { class: "presets" });
  readonly element: HTMLElement;
  readonly camera = new PerspectiveCamera(ANGLE, 4 / 3, 0.02, 80);
  readonly ok: boolean;
  readonly software: boolean;
  /** Told where on the sphere the pointer is, and where it was pressed. */
  hovered: ((d: [number, number, number] | null) => void) | null = null;
  picked: Picked | null = null;
  dragged: Picked | null = null;
  /** Told before every picture whether it is a fine one, at rest. */
  detail: ((fine: boolean) => void) | null = null;
  drawn = 0;
  /** Thin lines: a line is one pixel of the picture wide, however fine that is; they look the same at rest and while they move. */
  hairlines: LineBasicMaterial | null = null;
  private renderer: WebGLRenderer | null = null;
  private controls: OrbitControls | null = null;
  private asked = false;
  private marks: Label[] = [];
  private riding = false;
  private goal: Vector3 | null = null;
  private resting = 0;
  /** Something that moves by itself: told the time before every picture, it says whether it goes on. */
  moves: ((time: number) => boolean) | null = null;

  constructor() {
    this.element = h(
      "section",
      { class: "stage", attrs: { "aria-label": "chamber and sphere of directions" } },
      this.caption,
      h("div", { class: "view" }, this.canvasPlace, this.labels, this.readout, this.colourBar),
      this.presets,
    );
    this.scene.add(this.world);
    this.world.add(this.room);
    this.room.add(this.device);
    this.scene.add(new AmbientLight(0xffffff, 1.7));
    const sun = new DirectionalLight(0xffffff, 1.8);
    sun.position.set(1.5, 3, 2);
    this.scene.add(sun);
    let software = false;
    try {
      this.renderer = new WebGLRenderer({ antialias: false, alpha: true, powerPreference: "low-power" });
      const gl = this.renderer.getContext(),
        info = gl.getExtension("WEBGL_debug_renderer_info");
      software = info
        ? /swiftshader|llvmpipe|software/i.test(String(gl.getParameter(info.UNMASKED_RENDERER_WEBGL)))
        : false;
      const canvas = this.renderer.domElement;
      canvas.setAttribute("role", "img");
      canvas.setAttribute(
        "aria-label",
        "chamber with positioner, device, probe and the sphere of directions; drag to turn",
      );
      this.canvasPlace.append(canvas);
      this.controls = new OrbitControls(this.camera, canvas);
      this.controls.enablePan = false;
      this.controls.minDistance = 0.9;
      this.controls.maxDistance = 5.4;
      this.controls.target.set(0, 0, MIDDLE);
      this.controls.addEventListener("change", () => this.ask());
      this.controls.addEventListener("end", () => keep(this.cameraKey, JSON.stringify(this.camera.position.toArray())));
      this.listen(canvas);
      canvas.addEventListener("webglcontextlost", (event) => event.preventDefault());
      canvas.addEventListener("webglcontextrestored", () => this.ask());
    } catch {
      fill(
        this.canvasPlace,
        h(
          "p",
          { class: "quiet pad" },
          "This browser draws no 3D here (WebGL is off). Everything is on the page in numbers and maps as well.",
        ),
      );
    }
    this.ok = this.renderer !== null;
    this.software = software;
    this.placeCamera();
    new ResizeObserver(() => this.ask()).observe(this.canvasPlace);
    fill(this.presets, ...PRESETS.map(([key, words, at]) => button(words, () => this.fly(this.seat(key, at)))));
  }

  private get wide(): boolean {
    return this.back > 1;
  }

  /** One camera is kept for a probe that stands, one for a probe that swings, and one for each mount that reaches farther. */
  private get cameraKey(): string {
    if (!this.wide) return "camera";
    return this.back > SWINGS ? `camera-wide-${this.back.toFixed(1)}` : "camera-wide";
  }

  /** Draw a direction of the laboratory upwards; `back`: 1, or how far the camera stands back where the probe swings. */
  upright(up: [number, number, number], back: number): void {
    // About x where that is enough, so that x stays to the right.
    this.world.quaternion.setFromUnitVectors(new Vector3(...up), new Vector3(0, 1, 0));
    if (back === this.back) return;
    this.back = back;
    this.goal = null;
    if (this.controls) {
      this.controls.target.set(0, 0, this.wide ? 0 : MIDDLE);
      this.controls.maxDistance = 5.4 * back;
    }
    this.placeCamera();
    this.ask();
  }

  /** A place to look from. The probe's own is behind it, wherever it is now. */
  private seat(key: string, at: [number, number, number]): [number, number, number] {
    if (!this.wide) return at;
    const place = new Vector3(...at);
    if (key === "probe" && this.eye) place.copy(this.world.localToWorld(this.eye())).setLength(place.length());
    return place.multiplyScalar(this.back).toArray();
  }

  private placeCamera(): void {
    let at = this.seat(PRESETS[0][0], PRESETS[0][2]);
    try {
      const found: unknown = JSON.parse(kept(this.cameraKey) ?? "null");
      if (Array.isArray(found) && found.length === 3 && found.every((v) => Number.isFinite(v)))
        at = found as [number, number, number];
    } catch {
      // What was kept is no camera: the corner it is.
    }
    this.camera.position.set(...at);
    this.controls?.update();
  }

  /** Go to a place in a quarter of a second, or at once where motion is unwelcome. */
  fly(to: [number, number, number]): void {
    this.goal = new Vector3(...to);
    if (matchMedia("(prefers-reduced-motion: reduce)").matches) this.camera.position.copy(this.goal);
    keep(this.cameraKey, JSON.stringify(to));
    this.ask();
  }

  /** True: the device stands still and the chamber turns about it. */
  ride(riding: boolean): void {
    this.riding = riding;
    this.ask();
  }

  /** Put a letter or a number at a place of a group; `hides`: not shown behind the sphere; `of`: what it names, which it leaves free. */
  label(
    text: string,
    at: [number, number, number],
    parent: Group,
    kind = "",
    hides = true,
    of?: [number, number, number],
  ): void {
    const element = h("span", { class: kind }, text);
    this.labels.append(element);
    const rank = kind === "ring" ? "number" : kind === "joint" ? "name" : "fixed";
    this.marks.push({
      element,
      at: new Vector3(...at),
      parent,
      hides,
      text,
      rank,
      letter: kind.startsWith("letter"),
      of: of ? new Vector3(...of) : null,
    });
  }

  clearLabels(parent: Group): void {
    for (const mark of this.marks) if (mark.parent === parent) mark.element.remove();
    this.marks = this.marks.filter((mark) => mark.parent !== parent);
  }

  /** Draw once, soon; and once more, finely, when nothing asked for a while. */
  ask(): void {
    if (this.asked || !this.renderer) return;
    this.asked = true;
    requestAnimationFrame((time) => {
      this.asked = false;
      this.render(time, !this.software);
    });
    if (!this.software) return;
    window.clearTimeout(this.resting);
    this.resting = window.setTimeout(() => {
      if (!this.asked) this.render(performance.now(), true);
    }, RESTED_MS);
  }

  private ratio(fine: boolean, pixels: number): number {
    if (!this.software) return Math.max(FINE, window.devicePixelRatio);
    return fine ? Math.max(1, Math.min(FINE, Math.sqrt(MOST_PIXELS / pixels))) : 1;
  }

  private render(time: number, fine: boolean): void {
    const width = this.canvasPlace.clientWidth,
      height = this.canvasPlace.clientHeight;
    if (!this.renderer || !width || !height) return;
    const size = this.renderer.getSize(new Vector2()),
      ratio = this.ratio(fine, width * height);
    if (this.renderer.getPixelRatio() !== ratio) this.renderer.setPixelRatio(ratio);
    if (this.hairlines) this.hairlines.opacity = Math.min(1, HAIRLINE * ratio);
    if (size.x !== width || size.y !== height) {
      this.renderer.setSize(width, height);
      this.camera.aspect = width / height;
      // In a tall window the angle grows, so that the sphere and the probe stay within its width.
      this.camera.fov =
        (2 * Math.atan(Math.tan((ANGLE * Math.PI) / 360) * Math.max(1, WIDE / this.camera.aspect)) * 180) / Math.PI;
      this.camera.updateProjectionMatrix();
    }
    if (this.goal) {
      this.camera.position.lerp(this.goal, 0.3);
      if (this.camera.position.distanceTo(this.goal) < 0.01) this.goal = null;
      this.controls?.update();
      this.ask();
    }
    if (this.moves?.(time)) this.ask();
    else this.moves = null;
    this.room.quaternion.identity();
    this.room.position.set(0, 0, 0);
    if (this.riding) {
      this.room.quaternion.copy(this.device.quaternion).invert();
      this.room.position.copy(this.device.position).negate().applyQuaternion(this.room.quaternion);
    }
    this.detail?.(fine);
    this.renderer.render(this.scene, this.camera);
    this.place(width, height);
    this.drawn++;
  }

  private place(width: number, height: number): void {
    const centre = this.device.getWorldPosition(new Vector3()),
      eye = this.camera.position;
    const p = new Vector3(),
      q = new Vector3(),
      toEye = eye.clone().sub(centre);
    const spots: (Spot & { mark: Label })[] = [],
      em = LETTERS * letters();
    for (const mark of this.marks) {
      p.copy(mark.at);
      mark.parent.localToWorld(p);
      const behind = mark.hides && p.clone().sub(centre).dot(toEye) < 0;
      p.project(this.camera);
      mark.element.hidden = behind || p.z > 1;
      if (mark.element.hidden) continue;
      const size = mark.letter ? 1.4 * em : em,
        wide = 0.6 * size * mark.text.length + 4,
        aside = mark.of ? Math.sign(p.x - mark.parent.localToWorld(q.copy(mark.of)).project(this.camera).x) : 0;
      // The word of a body goes on from it, to the side on which it stands.
      spots.push({ mark, rank: mark.rank, x: ((p.x + 1) / 2) * width + (aside * wide) / 2, y: ((1 - p.y) / 2) * height, wide, high: 1.25 * size }); // prettier-ignore
    }
    apart(spots).forEach((by, i) => {
      const { mark, x, y } = spots[i];
      mark.element.hidden = by === null;
      if (by !== null)
        mark.element.style.transform = `translate(${x.toFixed(1)}px, ${(y + by).toFixed(1)}px) translate(-50%, -50%)`;
    });
  }

  /** The direction of the device frame under the pointer, if it is on the sphere. */
  private under(event: PointerEvent): [number, number, number] | null {
    const box = this.canvasPlace.getBoundingClientRect(),
      ray = new Raycaster();
    ray.setFromCamera(
      new Vector2(((event.clientX - box.left) / box.width) * 2 - 1, 1 - ((event.clientY - box.top) / box.height) * 2),
      this.camera,
    );
    const centre = this.device.getWorldPosition(new Vector3()),
      hit = ray.ray.intersectSphere(new Sphere(centre, RADIUS), new Vector3());
    if (!hit) return null;
    const d = this.device.worldToLocal(hit).normalize();
    return [d.x, d.y, d.z];
  }

  private listen(canvas: HTMLCanvasElement): void {
    let from: [number, number] = [0, 0],
      held = false;
    canvas.addEventListener(
      "pointerdown",
      (event) => {
        from = [event.clientX, event.clientY];
        this.goal = null;
        const d = this.dragged ? this.under(event) : null;
        if (!d || !this.dragged) return;
        held = true;
        if (this.controls) this.controls.enabled = false;
        canvas.setPointerCapture(event.pointerId);
        this.dragged(d);
      },
      { capture: true },
    );
    canvas.addEventListener("pointermove", (event) => {
      const d = event.buttons && !held ? null : this.under(event);
      if (held && d) this.dragged?.(d);
      else if (!event.buttons) this.hovered?.(d);
    });
    canvas.addEventListener("pointerleave", () => this.hovered?.(null));
    canvas.addEventListener("pointerup", (event) => {
      if (this.controls) this.controls.enabled = true;
      const still = Math.hypot(event.clientX - from[0], event.clientY - from[1]) < 4;
      const d = still && !held ? this.under(event) : null;
      held = false;
      if (d) this.picked?.(d);
    });
  }
}
