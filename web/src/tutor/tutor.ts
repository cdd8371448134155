/** Learn: slices grow on the sphere while the axes turn, and a dial shows what the probe sees; then one direction by hand. */

import { ArrowHelper, Group, Vector3 } from "three";
import { lines } from "../draw/colours";
import { button, choice, fill, h, number, slider, table } from "../draw/dom";
import { post } from "../request/server";
import type { Lesson, Motion } from "../request/types";
import { put, value } from "../shell/address";
import type { Page, View } from "../shell/page";
import { Panel } from "../shell/panel";
import { session } from "../shell/session";
import { arc } from "../scene/sphere";
import { lookedAt, ludwig3, thetaPhi, type Geometry, type Vector } from "../scene/angles";
import { emptied } from "../scene/chamber";
import { RADIUS } from "../scene/stage";
import { dial, moment, slices, swept, SWEEPS, type Limits } from "./play";
import {
  mountDial,
  mountMoment,
  mountSlices,
  mountSwept,
  mountWords,
  rollOf,
  turned,
  type MountSlice,
} from "./mountplay";
import { ofMount, QUESTIONS, quiz } from "./quiz";

/** One of the three stacks, or the campaign's own mount where it is described by joints. */
type Shown = Geometry | "mount";
export const STANDS: [Geometry, string][] = [
  ["roll-over-azimuth", "roll over azimuth"],
  ["azimuth-over-elevation", "azimuth over elevation"],
  ["elevation-over-azimuth", "elevation over azimuth"],
];
const MINE = "this campaign's mount";
const WIDE: Limits = { first: [-180, 180], second: [-180, 360] };

export function learnPage(view: View): Page {
  const play = new Panel("Slice by slice"),
    hand = new Panel("One direction by hand"),
    questions = new Panel("Three questions");
  const group = new Group(),
    dialPlace = h("div", { class: "dial" }),
    captions = h("ol", { class: "captions" }),
    gone = new AbortController(),
    reach = h("p", { class: "small quiet" });
  view.stage.device.add(group);
  let geometry: Shown = STANDS.find(([key]) => key === value("stand"))?.[0] ?? "roll-over-azimuth",
    parts: MountSlice[] = [],
    /** What the slices of the mount are called: the same for every picture of the play. */
    named: ReturnType<typeof mountWords> | null = null,
    limits = WIDE,
    own: { geometry: Shown; limits: Limits; motion: Motion } | null = null,
    share = 0,
    following = false,
    running = 0,
    byHand: Vector | null = null,
    basis = 3;

  const stand = () => {
    limits = own && own.geometry === geometry ? own.limits : WIDE;
    const mine = own?.geometry === geometry ? own : null;
    // The campaign's own device and probe on its own positioner; a plain plate on another one.
    view.chamber.build(mine?.motion ?? { geometry, range_m: 1, size_mm: [90, 90, 12], offset_mm: [0, 0, 0], ports: 1 });
    view.chamber.whose = mine ? session.campaign : "";
    fill(
      reach,
      mine
        ? `This campaign's chamber, by its readouts: ${mine.motion.limits_words.join(", ")}. ${geometry === "mount" ? `${parts.length} slices of the plan are played, as the joints go through them.` : "The slices stay within."}${mine.motion.axes.includes("probe") ? "" : " Its probe cannot turn."}`
        : own
          ? "Not this campaign's positioner: shown without limits."
          : "",
    );
    questions.show(
      { key: geometry, words: called() },
      quiz(geometry === "mount" ? mountQuestions() : QUESTIONS[geometry], () => undefined),
    );
    draw();
  };
  const called = () => STANDS.find(([k]) => k === geometry)?.[1] ?? MINE;
  /** The campaign's own mount; only asked for where it is shown. */
  const mount = () => ({ joints: own!.motion.mount!.joints, range: own!.motion.range_m });
  const said = () => {
    if (geometry !== "mount") return { ...SWEEPS[geometry], sweeps: "sweeps", steps: "steps", kind: "great" };
    return named!;
  };
  const mountQuestions = () => {
    const s = said();
    return ofMount(s.swept, s.stepped, s.slice, s.kind === "theta");
  };
  const count = () => (geometry === "mount" ? parts.length : slices(geometry, limits).length);
  /** What is shown at this share: slices so far, direction, field, and what the probe sees of it. */
  const now = () => {
    if (geometry === "mount") {
      const { joints, range } = mount(),
        at = mountMoment(parts, share),
        seen = mountDial(joints, range, at, following);
      view.chamber.pose(seen.values);
      return {
        slice: at.slice,
        seen,
        d: seen.direction,
        field: seen.fieldVector,
        ways: mountSwept(joints, range, parts, share),
      };
    }
    const at = moment(geometry, limits, share),
      seen = dial(geometry, at, following),
      d = lookedAt(geometry, at.first, at.second);
    view.chamber.turn(at.first, at.second, seen.probe);
    return { slice: at.slice, seen, d, field: ludwig3(...thetaPhi(d)), ways: swept(geometry, limits, share) };
  };
  const draw = () => {
    const { slice, seen, d, field, ways } = now(),
      c = lines();
    emptied(group);
    for (const one of ways) if (one.length > 1) group.add(arc(one, c.cross));
    group.add(
      new ArrowHelper(new Vector3(...field), new Vector3(...d).multiplyScalar(RADIUS * 1.01), 0.24, c.co, 0.07, 0.04),
    );
    view.sphere.cursor(d);
    drawDial(seen);
    drawCaptions(slice, seen.level);
    const s = said();
    fill(
      view.stage.caption,
      `${capital(called())}: ${s.swept} ${s.sweeps}, ${s.stepped} ${s.steps}. Orange: swept. Blue-green arrow: the device's field.`,
    );
    const input = position.querySelector("input")!;
    if (document.activeElement !== input || running) {
      input.value = String(Math.round(1000 * share));
      fill(position.querySelector("output")!, sayPosition());
    }
  };
  const sayPosition = (): string => {
    const at = geometry === "mount" ? mountMoment(parts, share) : moment(geometry, limits, share);
    return `slice ${at.slice + 1} of ${count()}`;
  };
  const drawDial = (seen: { field: number; probe: number; level: number }) => {
    const space = "http://www.w3.org/2000/svg",
      svg = document.createElementNS(space, "svg");
    const add = (tag: string, attrs: Record<string, string | number>, text = "") => {
      const one = document.createElementNS(space, tag);
      for (const [k, v] of Object.entries(attrs)) one.setAttribute(k, String(v));
      if (text) one.textContent = text;
      svg.append(one);
    };
    for (const [k, v] of Object.entries({
      viewBox: "0 0 180 180",
      role: "img",
      "aria-label": `what the probe sees: field at ${seen.field.toFixed(0)} degrees, probe at ${seen.probe.toFixed(0)} degrees`,
    }))
      svg.setAttribute(k, v);
    const end = (deg: number, r: number): [number, number] => [
      90 + r * Math.cos((deg * Math.PI) / 180),
      90 - r * Math.sin((deg * Math.PI) / 180),
    ];
    add("circle", { cx: 90, cy: 90, r: 78, fill: "none", stroke: "var(--edge)", "stroke-width": 2 });
    for (let a = 0; a < 360; a += 30) {
      const [x1, y1] = end(a, 72),
        [x2, y2] = end(a, 78);
      add("line", { x1, y1, x2, y2, stroke: "var(--quiet)" });
    }
    const [px, py] = end(seen.probe, 78),
      [qx, qy] = end(seen.probe + 180, 78);
    add("line", {
      x1: px,
      y1: py,
      x2: qx,
      y2: qy,
      stroke: "var(--cross)",
      "stroke-width": 3,
      "stroke-dasharray": "7 4",
    });
    const [fx, fy] = end(seen.field, 62);
    add("line", { x1: 90, y1: 90, x2: fx, y2: fy, stroke: "var(--co)", "stroke-width": 5, "stroke-linecap": "round" });
    const [tx, ty] = end(seen.probe, 62 * seen.level);
    add("circle", { cx: tx, cy: ty, r: 6, fill: "var(--cross)" });
    fill(
      dialPlace,
      h("h3", {}, "What the probe sees"),
      svg as unknown as Node,
      h(
        "p",
        { class: "small" },
        `Field (blue-green) at ${seen.field.toFixed(0)}°, probe axis (orange) at ${seen.probe.toFixed(0)}°: the probe takes in ${(100 * seen.level * seen.level).toFixed(0)} % of the power.`,
      ),
    );
  };
  const drawCaptions = (slice: number, level: number) => {
    const s = said(),
      now = slice === 0 ? 0 : following ? 3 : Math.abs(level) < 0.98 ? 2 : 1;
    const texts = geometry === "mount" ? [
      `${capital(s.swept)} ${s.sweeps}. The probe passes over ${s.slice}.`,
      `${capital(s.stepped)} ${s.steps}, and the next slice begins. ${s.poles}`,
      "The field rides on the device: with every step of phi it turns before a probe that lies along theta.",
      rollOf(mount().joints) < 0
        ? "No joint of this mount turns the probe alone: it keeps what the plan gives it."
        : `A probe that follows, turned by ${mount().joints[rollOf(mount().joints)].name}, keeps the same component all the time.`,
    ] : [
      `The ${s.swept} axis sweeps. The probe passes over ${s.slice}.`,
      `The ${s.stepped} axis steps, and the next slice begins. ${s.poles}`,
      geometry === "roll-over-azimuth"
        ? "The field rides on the device: with every step of the roll it turns before a probe that stands still."
        : "The field rides on the device: away from the middle it leans before a probe that stands still.",
      geometry === "roll-over-azimuth"
        ? "A probe that follows the roll keeps the same component all the time."
        : "A probe that turns along with the field keeps the same component.",
    ]; // prettier-ignore
    fill(captions, ...texts.map((text, i) => h("li", { class: i === now ? "now" : "" }, text)));
  };
  const position = slider("through the slices", 0, 1000, 1, 0, (v) => {
    share = v / 1000;
    byHand = null;
    draw();
  }, "", sayPosition); // prettier-ignore
  const run = button(
    "play",
    () => {
      if (running) {
        stop();
        return;
      }
      if (share >= 0.999) share = 0;
      byHand = null;
      let last = performance.now();
      const step = (time: number) => {
        share = Math.min(1, share + (time - last) / (4500 * count()));
        last = time;
        draw();
        if (share >= 1) stop();
        else running = requestAnimationFrame(step);
      };
      running = requestAnimationFrame(step);
      fill(run, "pause");
    },
    "main",
  );
  const stop = () => {
    cancelAnimationFrame(running);
    running = 0;
    fill(run, "play");
  };
  const which = choice("positioner", STANDS.map(([k, w]): [string, string] => [k, w]), geometry, (v) => {
    geometry = v as Shown;
    put({ stand: geometry === own?.geometry ? "" : geometry });
    share = 0;
    stand();
    if (byHand) void ask();
  }); // prettier-ignore
  const follow = choice("probe", [["still", "stands still"], ["following", "follows"]], "still", (v) => {
    following = v === "following";
    draw();
  }); // prettier-ignore
  const ride = h("input", { attrs: { type: "checkbox" }, on: { change: () => view.stage.ride(ride.checked) } });
  play.show(
    { key: "", words: "" },
    h(
      "div",
      { class: "row no-print" },
      run,
      which,
      follow,
      h("label", { class: "row small" }, ride, "ride with the device"),
    ),
    position,
    reach,
    h("div", { class: "two" }, captions, dialPlace),
  );

  // One direction by hand: dragged on the sphere, or typed.
  let theta = 40,
    phi = 25;
  const boxes = [
    h("input", {
      attrs: { type: "number", min: 0, max: 180, step: 1, value: theta, "aria-label": "theta in degrees" },
    }),
    h("input", { attrs: { type: "number", min: -180, max: 360, step: 1, value: phi, "aria-label": "phi in degrees" } }),
  ];
  const readings = h("div", {});
  boxes.forEach((box, i) => box.addEventListener("input", () => {
    if (box.value === "") return;
    if (i) phi = Number(box.value);
    else theta = Number(box.value);
    void ask();
  })); // prettier-ignore
  view.stage.dragged = (d) => {
    stop();
    [theta, phi] = thetaPhi(d).map((v) => Math.round(10 * v) / 10);
    boxes[0].value = String(theta);
    boxes[1].value = String(phi);
    byHand = d;
    void ask();
  };
  const inner = new Panel("readings", "bare", "h3");
  readings.append(inner.element);
  const ask = async () => {
    const found = await inner.ask(
      { key: "hand|", words: "" },
      (signal) =>
        post(
          "/api/tutor",
          { theta_deg: theta, phi_deg: phi, ...(geometry === "mount" ? { campaign: session.campaign } : {}) },
          signal,
        ),
      (lesson) => shown(lesson),
      { keep: true },
    );
    if (found) pose(found);
  };
  const pose = (found: Lesson) => {
    const c = lines(),
      one = found.bases[basis],
      stands = found.positioners[like()],
      axes = stands.axes,
      way = stands.ways[0],
      d = new Vector3(...(found.direction as Vector)).multiplyScalar(RADIUS * 1.01);
    emptied(group);
    view.sphere.cursor(found.direction as Vector);
    if (found.mount?.fault) {
      // A mount that cannot look there stays where it is; its arrows would be those of another direction.
      fill(view.stage.caption, `By hand: ${found.mount.fault}.`);
      return;
    }
    for (const [vector, colour, length] of [
      [one.first, c.co, 0.26],
      [one.second, c.good, 0.26],
      [way.fixed, c.quiet, 0.34],
      [way.following, c.cross, 0.3],
    ] as [number[], string, number][])
      group.add(new ArrowHelper(new Vector3(...(vector as Vector)), d, length, colour, 0.06, 0.035));
    if (found.mount) {
      const { joints } = mount(),
        values = found.mount.values;
      view.chamber.pose((following && turned(joints, values, way.probe_roll)) || values);
    } else view.chamber.turn(way.readouts[axes[0]], way.readouts[axes[1]], following ? way.probe_roll : 0);
    fill(
      view.stage.caption,
      "By hand. Blue-green and green: unit vectors of the components. Grey: a probe that stands still, as an arrow on the device. Orange: one that follows.",
    );
  };
  /** Which of the three stacks the lesson's words are about; a mount keeps the coordinates of a roll over azimuth. */
  const like = () =>
    Math.max(
      0,
      STANDS.findIndex(([k]) => k === geometry),
    );
  const shown = (found: Lesson): Node[] => [
    table(["this direction", "angles / deg", "formula"], [
      ["theta, phi", `${number(found.theta, 1)}, ${number(found.phi, 1)}`, h("code", {}, "(sin th cos ph, sin th sin ph, cos th)")],
      ["azimuth, elevation (pole y)", `${number(found.azimuth, 1)}, ${number(found.elevation, 1)}`, h("code", {}, "(sin az cos el, sin el, cos az cos el)")],
      ["alpha, epsilon (pole x)", `${number(found.alpha, 1)}, ${number(found.epsilon, 1)}`, h("code", {}, "(sin al, cos al sin ep, cos al cos ep)")],
    ]),
    table(["components there", "first", "second"], found.bases.map((b) => [h("span", { attrs: { title: b.formula } }, b.name), h("code", {}, vector(b.first)), h("code", {}, vector(b.second))])),
    table(["positioner", "readouts / deg", "still probe sees slant", "probe roll that follows"], found.positioners.map((p) => [p.name, p.axes.map((a) => `${a} ${number(p.ways[0].readouts[a], 1)}`).join(", "), `${number(p.ways[0].slant_fixed, 1)}°`, `${number(p.ways[0].probe_roll, 1)}°`])),
    found.mount && !found.mount.fault && table(["joint of this mount", "value"], mount().joints.map((one, i) => [one.name, `${number(found.mount!.values[i], 2)} ${one.unit}`])),
    h("p", { class: "small" }, geometry === "mount" ? `On this mount a slice is ${said().slice}. ${said().poles}` : found.positioners[like()].pole),
  ].filter((one) => one instanceof Node); // prettier-ignore
  const bases: [string, string][] = [["0", "theta and phi"], ["1", "Ludwig 2, pole y"], ["2", "Ludwig 2, pole x"], ["3", "Ludwig 3"]]; // prettier-ignore
  hand.show({ key: "", words: "" }, h("p", { class: "small" }, "Drag on the sphere, or type an angle."), h("div", { class: "row" }, h("label", { class: "row" }, "theta", boxes[0], "deg"), h("label", { class: "row" }, "phi", boxes[1], "deg"), choice("arrows", bases, "3", (v) => {
    basis = Number(v);
    void ask();
  })), readings); // prettier-ignore
  post("/api/motion", { campaign: session.campaign }, gone.signal).then(
    (m) => {
      const of = (name: string) => m.limits_deg[m.axes.indexOf(name)] ?? [-180, 360],
        first = of("azimuth"),
        second = of(m.geometry === "roll-over-azimuth" ? "roll" : "elevation");
      const is: Shown = m.mount ? "mount" : (m.geometry as Geometry);
      if (m.mount) {
        parts = mountSlices({ ...m, mount: m.mount });
        // A plan without slices (a list of directions) is nothing to play: the three stacks are shown.
        if (!parts.length) return;
        named = mountWords(m.mount.joints, m.range_m, parts);
        which.querySelector("select")!.append(h("option", { attrs: { value: "mount" } }, MINE));
      }
      own = {
        geometry: is,
        motion: m,
        limits: { first: first as [number, number], second: second as [number, number] },
      };
      if (!value("stand")) {
        geometry = is;
        which.querySelector("select")!.value = geometry;
      }
      stand();
    },
    (error: unknown) => {
      if (gone.signal.aborted) return;
      stand();
      // The campaign's own positioner is missing: that is said, and the three stacks are there all the same.
      play.fault(error);
    },
  );
  stand();
  return {
    title: "Learn",
    element: h("div", { class: "page learn-page" }, play.element, questions.element, hand.element),
    leave: () => {
      stop();
      gone.abort();
      inner.leave();
      emptied(group);
      view.stage.device.remove(group);
      view.stage.dragged = null;
    },
  };
}

function capital(text: string): string {
  return text[0].toUpperCase() + text.slice(1);
}

function vector(v: number[]): string {
  return `(${v.map((x) => (Object.is(x, -0) ? 0 : x).toFixed(3)).join(", ")})`;
}
