/** The range from above: how the axes lie by a flip test, before and after; what was not measured is not drawn. */

import type { FlipWords } from "../request/types";
import { h } from "../draw/dom";

const SPACE = "http://www.w3.org/2000/svg";
/** Height of one picture, and the width that its words need at least. */
const HIGH = 250,
  LEAST = 240;
type Pen = (tag: string, attrs: Record<string, string | number>, text?: string) => void;

/** Turn and shift that a flip test found, or 0 where they lie within their uncertainty. */
export function toDo(n: FlipWords["numbers"]): { turn_deg: number; shift_mm: number } {
  return {
    turn_deg: Math.abs(n.theta_zero_deg) > n.theta_zero_expanded_deg ? n.theta_zero_deg : 0,
    shift_mm: Math.abs(n.axes_offset_mm) > n.axes_offset_expanded_mm ? n.axes_offset_mm : 0,
  };
}

export function flipSays(n: FlipWords["numbers"]): string {
  const { turn_deg, shift_mm } = toDo(n);
  const turn = `${n.theta_zero_deg.toFixed(3)}° ± ${n.theta_zero_expanded_deg.toFixed(3)}°`,
    shift = `${n.axes_offset_mm.toFixed(2)} mm ± ${n.axes_offset_expanded_mm.toFixed(2)} mm`;
  const still = (word: string, expanded: number, declared: number, unit: string): string =>
    expanded > declared
      ? ` (cannot tell: echoes and noise hide more than the declared ±${declared}${unit})`
      : ` (nothing to ${word})`;
  const noTurn = turn_deg ? "" : still("turn", n.theta_zero_expanded_deg, n.theta_zero_declared_deg, "°"),
    noShift = shift_mm ? "" : still("shift", n.axes_offset_expanded_mm, n.axes_offset_declared_mm, " mm");
  return `zero ${turn}${noTurn}; axes apart ${shift}${noShift}`;
}

/** `rolls`: the positioner has a roll axis that a flip test can tell of. `found`: the tests in the order they were made.
 * `wide`: room for the picture, in its pixels.
 */
export function rangeFromAbove(rolls: boolean, found: FlipWords[], wide = 640): HTMLElement {
  const last = found.slice(-2),
    titles = last.length === 2 ? ["before", "after"] : ["as measured"];
  const views = last.length ? last.map((one, i) => ({ one, title: `${titles[i]}: run ${one.run}` })) : [null];
  const most = {
    turn: Math.max(1e-9, ...last.map((one) => Math.abs(one.numbers.theta_zero_deg))),
    shift: Math.max(1e-9, ...last.map((one) => Math.abs(one.numbers.axes_offset_mm))),
  };
  const svg = document.createElementNS(SPACE, "svg");
  const add: Pen = (tag, attrs, text = "") => {
    const one = document.createElementNS(SPACE, tag);
    for (const [key, value] of Object.entries(attrs)) one.setAttribute(key, String(value));
    if (text) one.textContent = text;
    svg.append(one);
  };
  // Two pictures lie beside one another where there is room for both, else below one another.
  const beside = wide / views.length >= LEAST,
    each = beside ? wide / views.length : wide,
    high = HIGH * (beside ? 1 : views.length),
    says = last.map((one) => `${one.run}: ${flipSays(one.numbers)}`).join("; ") || "nothing was measured";
  for (const [key, value] of Object.entries({
    viewBox: `0 0 ${wide} ${high}`,
    role: "img",
    "aria-label": `range from above: ${says}`,
    "font-size": 13,
    class: "range-picture",
  }))
    svg.setAttribute(key, String(value));
  views.forEach((one, i) => above(add, rolls, beside ? [i * each, 0] : [0, i * HIGH], each, one, most));
  const words = last.length
    ? "Blue-green: the roll axis as found, enlarged. Green, dashed: as it should lie."
    : rolls
      ? "Nothing was measured: the green line is where the roll axis should lie. A flip test tells how it does."
      : "This positioner has no roll axis: a flip test needs one. The beam search finds what both axes read on the beam.";
  return h(
    "div",
    {},
    svg as unknown as Node as HTMLElement,
    h("p", { class: "small quiet" }, words),
    ...last.map((one) => h("p", { class: "small" }, h("strong", {}, `${one.run}: `), flipSays(one.numbers))),
  );
}

function above(
  add: Pen,
  rolls: boolean,
  [left, top]: [number, number],
  wide: number,
  view: { one: FlipWords; title: string } | null,
  most: { turn: number; shift: number },
): void {
  const quiet = "var(--quiet)",
    ink = "var(--ink)",
    x = left + Math.min(120, 0.33 * wide),
    y = top + 132,
    r = Math.min(84, 0.27 * wide),
    end = left + wide - 40;
  add(
    "text",
    { x: left + 12, y: top + 22, fill: ink, "font-weight": 600 },
    view?.title ?? "from above, as it should be",
  );
  add("line", { x1: x, y1: y, x2: end - 8, y2: y, stroke: quiet, "stroke-dasharray": "5 5" });
  add("circle", { cx: x, cy: y, r, fill: "none", stroke: quiet });
  add("text", { x, y: y + r + 18, fill: quiet, "text-anchor": "middle" }, "azimuth axis");
  if (rolls)
    add("line", {
      x1: x - r,
      y1: y,
      x2: x + r,
      y2: y,
      stroke: "var(--good)",
      "stroke-width": 3,
      "stroke-dasharray": "9 5",
    });
  add("circle", { cx: x, cy: y, r: 5, fill: ink });
  add("path", { d: `M${end - 10} ${y - 14} L${end + 22} ${y} L${end - 10} ${y + 14} Z`, fill: ink });
  add("text", { x: end + 4, y: y - 22, fill: ink, "text-anchor": "middle" }, "probe");
  if (!view) return;
  const n = view.one.numbers,
    { turn_deg, shift_mm } = toDo(n),
    tilt = (14 * n.theta_zero_deg) / most.turn,
    offset = (22 * n.axes_offset_mm) / most.shift;
  const [dy, dt] = [shift_mm ? offset : 0, turn_deg ? tilt : 0];
  add("line", {
    x1: x - r,
    y1: y + dy + dt,
    x2: x + r,
    y2: y + dy - dt,
    stroke: "var(--co)",
    "stroke-width": 6,
    "stroke-linecap": "round",
  });
  if (turn_deg)
    add("path", {
      d: dt > 0 ? `M${x + r + 2} ${y - 28} q14 24 2 46` : `M${x + r + 2} ${y + 28} q14 -24 2 -46`,
      fill: "none",
      stroke: "var(--cross)",
      "stroke-width": 3,
    });
  if (shift_mm)
    add("line", { x1: x - r / 2, y1: y + dy, x2: x - r / 2, y2: y, stroke: "var(--cross)", "stroke-width": 3 });
}
