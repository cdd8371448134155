/** A cut on a circle: the angle from the peak runs clockwise from the top, the level outwards. */

import { lines as inks } from "./colours";
import type { Line } from "./chart";
import { fill, h } from "./dom";
import { fileName, saveButtons } from "./save";

const SPACE = "http://www.w3.org/2000/svg";

export function polar(name: string, angle: number[], lines: Line[], top: number, range: number): HTMLElement {
  const size = 460,
    middle = size / 2,
    radius = middle - 30,
    c = inks();
  const picture = document.createElementNS(SPACE, "svg");
  const add = (tag: string, attrs: Record<string, string | number>, text = "") => {
    const one = document.createElementNS(SPACE, tag);
    for (const [key, value] of Object.entries(attrs)) one.setAttribute(key, String(value));
    if (text) one.textContent = text;
    picture.append(one);
  };
  for (const [key, value] of Object.entries({
    viewBox: `0 0 ${size} ${size}`,
    width: size,
    height: size,
    role: "img",
    "aria-label": name,
    "font-family": "system-ui, sans-serif",
    "font-size": 12,
    class: "polar",
  }))
    picture.setAttribute(key, String(value));
  for (let down = 0; down < range; down += 10) {
    add("circle", { cx: middle, cy: middle, r: radius * (1 - down / range), fill: "none", stroke: c.grid });
    add(
      "text",
      { x: middle + 4, y: middle - radius * (1 - down / range) + 13, fill: c.quiet },
      (top - down).toFixed(0),
    );
  }
  for (let a = 0; a < 360; a += 30) {
    const s = Math.sin((a * Math.PI) / 180),
      t = -Math.cos((a * Math.PI) / 180);
    add("line", { x1: middle, y1: middle, x2: middle + radius * s, y2: middle + radius * t, stroke: c.grid });
    add(
      "text",
      { x: middle + (radius + 16) * s, y: middle + (radius + 14) * t + 4, fill: c.quiet, "text-anchor": "middle" },
      `${a > 180 ? a - 360 : a}°`,
    );
  }
  for (const line of lines) {
    let path = "",
      pen = false;
    angle.forEach((a, i) => {
      const v = line.values[i];
      if (v === null) {
        pen = false;
        return;
      }
      const r = radius * Math.max(0, 1 - (top - v) / range);
      path += `${pen ? "L" : "M"}${(middle + r * Math.sin((a * Math.PI) / 180)).toFixed(1)} ${(middle - r * Math.cos((a * Math.PI) / 180)).toFixed(1)}`;
      pen = true;
    });
    add("path", {
      d: path,
      fill: "none",
      stroke: line.colour,
      "stroke-width": line.width ?? 1.8,
      ...(line.dash ? { "stroke-dasharray": line.dash } : {}),
    });
  }
  lines.forEach((l, i) => add("text", { x: 6, y: 16 + 15 * i, fill: l.colour }, l.name));
  const saving = saveButtons({
    name: () => fileName(name),
    svg: () => {
      const copy = picture.cloneNode(true) as SVGSVGElement;
      copy.setAttribute("xmlns", SPACE);
      return { text: new XMLSerializer().serializeToString(copy), width: size, height: size };
    },
    columns: () => [{ name: "angle / deg", values: angle }, ...lines.map((l) => ({ name: l.name, values: l.values }))],
  });
  const place = h("div", { class: "chart" });
  fill(place, picture as unknown as Node, h("div", { class: "chart-tools no-print" }, saving));
  return place;
}
