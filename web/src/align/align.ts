/** Align: step by step from talking to the instruments to what to turn and shift, in millimetres and degrees. */

import { live, type Status } from "../live/live";
import { finished, post } from "../request/server";
import type { FlipWords } from "../request/types";
import { button, fill, h, number, table } from "../draw/dom";
import { startDialog } from "../scan/scan";
import { faultsIn, session, type Page } from "../shell/shell";

export function alignPage(): Page {
  const faults = h("p", { class: "faults", attrs: { role: "alert" } }),
    trying = faultsIn(faults);
  const found = h("div"),
    result = h("div", { class: "stack" }),
    progress = h("p", { class: "quiet" });
  const name = h("input", {
    attrs: { value: "flip", pattern: "[A-Za-z0-9_-]{1,80}", "aria-label": "name of the flip test's run" },
  });
  const talk = button(
    "talk to every instrument",
    () =>
      void (async () => {
        talk.disabled = true;
        fill(found, h("p", { class: "quiet" }, "Nothing moves."));
        const lines = await trying(finished("/api/check", { campaign: session.campaign, run: "check" }));
        talk.disabled = false;
        fill(
          found,
          lines &&
            table(
              ["what", "", "found"],
              lines.map((l) => [
                l.what,
                h("span", { class: l.good ? "good" : "bad" }, l.good ? "ready" : "not ready"),
                l.found,
              ]),
            ),
        );
      })(),
  );
  const read = async () => {
    const flip = await trying(post("/api/flip", { campaign: session.campaign, run: name.value }));
    if (flip) fill(result, drawing(flip.numbers), ...flip.sentences.map((s) => h("p", {}, s)));
  };
  const test = button(
    "measure both sides",
    () => void startDialog(name.value, trying, "flip"),
    "main",
    "needs the motion lease",
  );
  const looked = h("p", { class: "quiet" }),
    beamName = h("input", {
      attrs: { value: "beam", pattern: "[A-Za-z0-9_-]{1,70}", "aria-label": "name of the beam search" },
    }),
    beamFound = h("div");
  const coarse = button(
    "look coarsely",
    () => void startDialog(beamName.value, trying, "beam-coarse"),
    "main",
    "needs the motion lease",
  );
  const fine = button(
    "look finely",
    () => void startDialog(beamName.value, trying, "beam-fine"),
    "main",
    "needs the motion lease, and a coarse look",
  );
  const seen = async () => {
    const found = await trying(post("/api/beam", { campaign: session.campaign, run: beamName.value }));
    if (found)
      fill(
        beamFound,
        ...found.sentences.map((s) => h("p", {}, s)),
        button(
          "set as home",
          () =>
            void (async () => {
              const done = await trying(post("/api/home", { campaign: session.campaign, run: beamName.value }));
              if (done) fill(looked, done.join("; "));
            })(),
          "",
          "azimuth/elevation positioners: the beam's readouts become the axes' zeros in chamber.toml",
        ),
      );
  };
  let wasRunning = false;
  const stopWatching = live.watch({
    status: (s: Status) => {
      const done = wasRunning && !s.running && s.state === "done";
      const at = `${s.state}: ${s.measured ?? 0} of ${s.total ?? 0} points`;
      if (s.kind === "flip") {
        fill(progress, at);
        if (done) void read();
      }
      if (s.kind?.startsWith("beam") && s.running)
        fill(looked, `${s.kind === "beam-coarse" ? "coarse" : "fine"} look, ${at}`);
      if (done && s.kind === "beam-coarse")
        fill(looked, "The coarse look is done; the fine one goes where it was strongest.");
      if (done && s.kind === "beam-fine") void seen();
      wasRunning = s.running;
      for (const one of [test, coarse, fine]) one.disabled = s.running || session.me?.mine !== true;
    },
  });
  const element = h(
    "main",
    {},
    faults,
    h(
      "div",
      { class: "columns two steps" },
      h(
        "section",
        { class: "card" },
        h("h2", {}, "Connect"),
        h(
          "p",
          {},
          "Axes, analyzer, switch and interlock answer before anything is touched. Homing is part of a start: tick it there after a fault.",
        ),
        talk,
        found,
      ),
      h(
        "section",
        { class: "card" },
        h("h2", {}, "Level, laser or pointer"),
        h(
          "p",
          {},
          "Set the roll axis level and the probe on its line with the means you have; the readings go into chamber.toml under [alignment] with their uncertainty, and count as what was known beforehand.",
        ),
        h("p", { class: "small" }, "Alignment lasers: class 2 or lower, never towards eyes, off before the run."),
      ),
      h(
        "section",
        { class: "card" },
        h("h2", {}, "Flip test"),
        h(
          "p",
          {},
          "One cut from both sides: theta, and -theta with the roll at 180 deg. A device cannot tell them apart; what differs is the range: a zero that is off, axes that miss each other. A few minutes.",
        ),
        h(
          "div",
          { class: "row" },
          h("label", { class: "row" }, "run", name),
          test,
          button("read a finished one", () => void read()),
        ),
        progress,
        result,
      ),
      h(
        "section",
        { class: "card" },
        h("h2", {}, "Beam search"),
        h(
          "p",
          {},
          "Steps of half a beam over the front, then a fine look where it was strongest: where the beam is, before hours are spent. On azimuth and elevation its readouts can become the axes' zeros.",
        ),
        h(
          "div",
          { class: "row" },
          h("label", { class: "row" }, "run", beamName),
          coarse,
          fine,
          button("read a finished one", () => void seen()),
        ),
        looked,
        beamFound,
      ),
      h(
        "section",
        { class: "card" },
        h("h2", {}, "What only a scan shows"),
        h(
          "p",
          {},
          "Whole spheres find the remaining misalignments by themselves: roll-axis tilt, both offsets, the probe's roll. They are taken out of the data and listed in the run's findings with what to turn.",
        ),
      ),
    ),
  );
  return { title: "Align", element, leave: stopWatching };
}

/** A plan view of the range: which way to turn and to shift. */
function drawing(n: FlipWords["numbers"]): SVGSVGElement {
  const space = "http://www.w3.org/2000/svg";
  const make = (tag: string, attrs: Record<string, string | number>, text = "") => {
    const one = document.createElementNS(space, tag);
    for (const [key, value] of Object.entries(attrs)) one.setAttribute(key, String(value));
    one.textContent = text;
    return one;
  };
  const svg = make("svg", {
    viewBox: "0 0 420 190",
    role: "img",
    "aria-label": "range from above with what to turn and shift",
  }) as SVGSVGElement;
  const turn = Math.abs(n.theta_zero_deg) > n.theta_zero_expanded_deg,
    shift = Math.abs(n.axes_offset_mm) > n.axes_offset_expanded_mm;
  const ink = "currentColor",
    mark = "var(--cross)",
    way = n.axes_offset_mm > 0 ? 1 : -1,
    side = n.theta_zero_deg > 0 ? 1 : 0;
  svg.append(
    make("line", { x1: 90, y1: 95, x2: 385, y2: 95, stroke: ink, "stroke-dasharray": "4 4", opacity: 0.5 }),
    make("circle", { cx: 90, cy: 95, r: 46, fill: "none", stroke: ink }),
    make("circle", { cx: 90, cy: 95, r: 4, fill: ink }),
    make("line", {
      x1: 50,
      y1: 95 - 12 * way * (shift ? 1 : 0),
      x2: 130,
      y2: 95 - 12 * way * (shift ? 1 : 0),
      stroke: "var(--co)",
      "stroke-width": 5,
    }),
    make("path", { d: "M385 82 L410 95 L385 108 Z", fill: ink }),
    make("text", { x: 352, y: 72, fill: ink, "font-size": 13 }, "probe"),
    make("text", { x: 20, y: 18, fill: ink, "font-size": 13 }, "from above; the roll axis in blue-green"),
  );
  if (turn)
    svg.append(
      make("path", {
        d: side ? "M90 34 A61 61 0 0 1 143 65" : "M90 156 A61 61 0 0 0 143 125",
        fill: "none",
        stroke: mark,
        "stroke-width": 3,
        "marker-end": "url(#tip)",
      }),
      make(
        "text",
        { x: 150, y: side ? 50 : 150, fill: mark, "font-size": 14 },
        `turn the azimuth zero ${number(Math.abs(n.theta_zero_deg), 3)}° towards ${n.theta_zero_deg > 0 ? "negative" : "positive"} readouts`,
      ),
    );
  if (shift)
    svg.append(
      make("path", { d: `M90 95 v${way > 0 ? 40 : -40}`, stroke: mark, "stroke-width": 3, "marker-end": "url(#tip)" }),
      make(
        "text",
        { x: 104, y: way > 0 ? 132 : 66, fill: mark, "font-size": 14 },
        `shift the roll axis ${number(Math.abs(n.axes_offset_mm), 3)} mm`,
      ),
    );
  if (!turn && !shift)
    svg.append(
      make("text", { x: 150, y: 40, fill: "var(--good)", "font-size": 14 }, "nothing to do within the uncertainty"),
    );
  const tip = make("marker", {
    id: "tip",
    viewBox: "0 0 8 8",
    refX: 6,
    refY: 4,
    markerWidth: 6,
    markerHeight: 6,
    orient: "auto-start-reverse",
  });
  tip.append(make("path", { d: "M0 0 L8 4 L0 8 Z", fill: mark }));
  const store = make("defs", {});
  store.append(tip);
  svg.append(store);
  return svg;
}
