/** The coordinate tutor: drag a direction and see it in every geometry, with every polarization's vectors. */

import { post } from "../request/server";
import type { Lesson } from "../request/types";
import { lines } from "../draw/colours";
import { choice, fill, h, number, table } from "../draw/dom";
import { Sky } from "../scene/scene";
import { faultsIn } from "../shell/shell";

export function tutor(): { element: HTMLElement; leave: () => void } {
  const faults = h("p", { class: "faults" }),
    readings = h("div", { class: "stack" });
  const trying = faultsIn(faults);
  let theta = 40,
    phi = 25,
    basis = 0,
    positioner = 0,
    waiting = false,
    again = false;
  const boxes = [
    h("input", { attrs: { type: "number", min: 0, max: 180, step: 1, "aria-label": "theta in degrees" } }),
    h("input", { attrs: { type: "number", min: -180, max: 360, step: 1, "aria-label": "phi in degrees" } }),
  ];
  const sky = new Sky((t, p) => {
    theta = Math.round(10 * t) / 10;
    phi = Math.round(10 * p) / 10;
    void ask();
  });
  boxes.forEach((box, i) =>
    box.addEventListener("input", () => {
      if (box.value === "") return;
      if (i) phi = Number(box.value);
      else theta = Number(box.value);
      void ask();
    }),
  );

  const ask = async (): Promise<void> => {
    if (waiting) {
      again = true;
      return;
    }
    waiting = true;
    const found = await trying(post("/api/tutor", { theta_deg: theta, phi_deg: phi }));
    waiting = false;
    if (found) show(found);
    if (again) {
      again = false;
      await ask();
    }
  };
  let last: Lesson | null = null;
  const show = (found: Lesson) => {
    last = found;
    if (document.activeElement !== boxes[0]) boxes[0].value = String(found.theta);
    if (document.activeElement !== boxes[1]) boxes[1].value = String(found.phi);
    const c = lines(),
      one = found.bases[basis],
      stand = found.positioners[positioner],
      way = stand.ways[0];
    sky.show(found.direction, [
      { way: one.first, colour: c.co },
      { way: one.second, colour: c.band },
      { way: way.fixed, colour: c.quiet, length: 0.7 },
      { way: way.following, colour: c.cross, length: 0.62 },
    ]);
    fill(
      readings,
      table(
        ["this direction", "angles / deg", "formula"],
        [
          [
            "theta, phi",
            `${number(found.theta, 1)}, ${number(found.phi, 1)}`,
            h("code", {}, "(sin th cos ph, sin th sin ph, cos th)"),
          ],
          [
            "azimuth, elevation (pole y)",
            `${number(found.azimuth, 1)}, ${number(found.elevation, 1)}`,
            h("code", {}, "(sin az cos el, sin el, cos az cos el)"),
          ],
          [
            "alpha, epsilon (pole x)",
            `${number(found.alpha, 1)}, ${number(found.epsilon, 1)}`,
            h("code", {}, "(sin al, cos al sin ep, cos al cos ep)"),
          ],
        ],
      ),
      table(
        ["components there", "first", "second"],
        found.bases.map((b) => [
          h("span", { attrs: { title: b.formula } }, b.name),
          h("code", {}, vector(b.first)),
          h("code", {}, vector(b.second)),
        ]),
      ),
      h("p", { class: "small mono" }, one.formula),
      table(
        ["positioner", "readouts / deg", "fixed probe sees slant", "probe roll that follows"],
        found.positioners.map((p) => [
          p.name,
          p.axes.map((a) => `${a} ${number(p.ways[0].readouts[a], 1)}`).join(", "),
          `${number(p.ways[0].slant_fixed, 1)}°`,
          `${number(p.ways[0].probe_roll, 1)}°`,
        ]),
      ),
      h("p", { class: "small" }, stand.pole),
    );
  };
  const bases: [string, string][] = [
    ["0", "theta and phi"],
    ["1", "Ludwig 2, pole y"],
    ["2", "Ludwig 2, pole x"],
    ["3", "Ludwig 3"],
  ];
  const stands: [string, string][] = [
    ["0", "roll over azimuth"],
    ["1", "azimuth over elevation"],
    ["2", "elevation over azimuth"],
  ];
  void ask();
  const element = h(
    "div",
    {},
    h("h2", {}, "Coordinates, by hand"),
    h(
      "p",
      { class: "small" },
      "Drag the dot. Blue-green: the two unit vectors of the chosen components. Grey: what a probe that stands still sees, as an arrow on the device. Orange: what a probe sees that follows the roll. Near boresight watch theta and phi spin while Ludwig 3 stays.",
    ),
    h(
      "div",
      { class: "row" },
      h("label", { class: "row" }, "theta", boxes[0], "deg"),
      h("label", { class: "row" }, "phi", boxes[1], "deg"),
      choice("arrows", bases, "0", (v) => {
        basis = Number(v);
        if (last) show(last);
      }),
      choice("positioner", stands, "0", (v) => {
        positioner = Number(v);
        if (last) show(last);
      }),
    ),
    sky.element,
    faults,
    readings,
  );
  return { element, leave: () => undefined };
}

function vector(v: number[]): string {
  return `(${v.map((x) => (Object.is(x, -0) ? 0 : x).toFixed(3)).join(", ")})`;
}
