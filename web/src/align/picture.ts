/** The range from above: which way to turn and to shift, before and after. */

import type { FlipWords } from "../request/types";
import { h } from "../draw/dom";

type Numbers = FlipWords["numbers"];

export function rangeFromAbove(n: Numbers | null): HTMLElement {
  const space = "http://www.w3.org/2000/svg",
    svg = document.createElementNS(space, "svg");
  const add = (tag: string, attrs: Record<string, string | number>, text = "") => {
    const one = document.createElementNS(space, tag);
    for (const [key, value] of Object.entries(attrs)) one.setAttribute(key, String(value));
    if (text) one.textContent = text;
    svg.append(one);
  };
  const turn = n !== null && Math.abs(n.theta_zero_deg) > n.theta_zero_expanded_deg,
    shift = n !== null && Math.abs(n.axes_offset_mm) > n.axes_offset_expanded_mm;
  const says =
    n === null
      ? "not measured yet"
      : `${turn ? `turn by ${n.theta_zero_deg.toFixed(3)} degrees` : "no turn"}, ${shift ? `shift by ${n.axes_offset_mm.toFixed(2)} mm` : "no shift"}`;
  for (const [key, value] of Object.entries({
    viewBox: "0 0 640 300",
    role: "img",
    "aria-label": `range from above: ${says}`,
    "font-size": 14,
    class: "range-picture",
  }))
    svg.setAttribute(key, String(value));
  const ink = "var(--ink)",
    mark = "var(--cross)",
    quiet = "var(--quiet)",
    offset = shift ? 22 * Math.sign(n.axes_offset_mm) : 0,
    tilt = turn ? 12 * Math.sign(n.theta_zero_deg) : 0;
  add("text", { x: 16, y: 26, fill: quiet }, "from above");
  add("line", { x1: 150, y1: 150, x2: 560, y2: 150, stroke: quiet, "stroke-dasharray": "5 5" });
  add("circle", { cx: 150, cy: 150, r: 84, fill: "none", stroke: quiet });
  add("circle", { cx: 150, cy: 150, r: 5, fill: ink });
  add("text", { x: 160, y: 144, fill: quiet }, "azimuth axis");
  // Before: where the roll axis lies now. After: on the line to the probe.
  add("line", {
    x1: 66,
    y1: 150,
    x2: 234,
    y2: 150,
    stroke: "var(--good)",
    "stroke-width": 3,
    "stroke-dasharray": "9 5",
  });
  add("line", {
    x1: 66,
    y1: 150 + offset + tilt,
    x2: 234,
    y2: 150 + offset - tilt,
    stroke: "var(--co)",
    "stroke-width": 6,
    "stroke-linecap": "round",
  });
  add("path", { d: "M560 132 L604 150 L560 168 Z", fill: ink });
  add("text", { x: 556, y: 120, fill: ink }, "probe");
  if (turn) {
    add("path", {
      d: tilt > 0 ? "M236 122 A90 90 0 0 1 240 168" : "M240 132 A90 90 0 0 1 236 178",
      fill: "none",
      stroke: mark,
      "stroke-width": 3,
    });
    add(
      "text",
      { x: 252, y: 206, fill: mark },
      `turn ${n.theta_zero_deg.toFixed(3)}° ± ${n.theta_zero_expanded_deg.toFixed(3)}°`,
    );
  }
  if (shift) {
    add("line", { x1: 110, y1: 150 + offset, x2: 110, y2: 150, stroke: mark, "stroke-width": 3 });
    add(
      "text",
      { x: 70, y: 262, fill: mark },
      `shift ${n.axes_offset_mm.toFixed(2)} mm ± ${n.axes_offset_expanded_mm.toFixed(2)} mm`,
    );
  }
  if (n && !turn && !shift)
    add("text", { x: 252, y: 206, fill: "var(--good)" }, "nothing to turn or shift within the uncertainty");
  add(
    "text",
    { x: 16, y: 288, fill: quiet },
    "blue-green: roll axis as found (enlarged); green, dashed: as it should lie",
  );
  return h("div", {}, svg as unknown as Node as HTMLElement);
}
