/** Curves over one axis, drawn as SVG: zoom and pan in x and y, a cursor that is shared, the peak, and files of it all. */

import { letters, lines as inks } from "./colours";
import { button, fill, h, onResize } from "./dom";
import { freest, type Box } from "./places";
import { fileName, saveButtons } from "./save";
import { covering, moved, tickWords, ticks, zoomed, type Range } from "./scales";

export type Line = {
  name: string;
  values: (number | null)[];
  colour: string;
  dash?: string;
  width?: number;
  points?: boolean;
};
/** A line across at one x, with a word beside it; `to` fills up to a second x. */
export type Mark = { at: number; to?: number; text?: string; colour: string };
export type ChartData = {
  x: number[];
  lines: Line[];
  xName: string;
  yName: string;
  xWhole?: Range;
  yWhole?: Range;
  marks?: Mark[];
  peakOf?: number;
  height?: number;
  digits?: number;
};

const SPACE = "http://www.w3.org/2000/svg";
const LEFT = 56,
  RIGHT = 14,
  TOP = 12,
  BOTTOM = 40;

function svg(tag: string, attrs: Record<string, string | number>, text = ""): SVGElement {
  const one = document.createElementNS(SPACE, tag);
  for (const [key, value] of Object.entries(attrs)) one.setAttribute(key, String(value));
  if (text) one.textContent = text;
  return one;
}

export class Chart {
  readonly canvas = svg("svg", { tabindex: 0, role: "img" }) as SVGSVGElement;
  readonly legend = h("div", { class: "legend mono" });
  readonly element: HTMLElement;
  /** Told of the x under the pointer, and of a click on one. */
  moved: ((x: number | null) => void) | null = null;
  clicked: ((x: number) => void) | null = null;
  private data: ChartData | null = null;
  private xView: Range = [0, 1];
  private yView: Range = [0, 1];
  private whole: [Range, Range] = [
    [0, 1],
    [0, 1],
  ];
  private cursor: number | null = null;
  private overlay = svg("g", {});
  private width = 0;

  constructor(private name: string) {
    const tools = h(
      "div",
      { class: "chart-tools no-print" },
      button("whole", () => this.reset(), "tiny", "show all of it (0)"),
      button("+", () => this.zoomAll(0.5), "tiny", "closer (+)"),
      button("−", () => this.zoomAll(2), "tiny", "farther (-)"),
      button("◂", () => this.pan(-0.25), "tiny", "to the left"),
      button("▸", () => this.pan(0.25), "tiny", "to the right"),
      saveButtons({ name: () => fileName(this.name), svg: () => this.picture(), columns: () => this.columns() }),
    );
    this.canvas.setAttribute("aria-label", name);
    this.element = h("div", { class: "chart" }, h("div", { class: "chart-view" }), this.legend, tools);
    this.element.firstElementChild!.append(this.canvas);
    onResize(this.element, () => {
      if (this.data && this.room() !== this.width) this.paint();
    });
    this.listen();
  }

  private room(): number {
    return Math.max(260, Math.round(this.element.clientWidth / letters()) || 600);
  }

  draw(data: ChartData, name = this.name): void {
    this.name = name;
    this.canvas.setAttribute("aria-label", name);
    const x: Range = data.xWhole ?? [Math.min(...data.x), Math.max(...data.x)];
    const y: Range =
      data.yWhole ??
      covering(
        data.lines.flatMap((l) => l.values),
        5,
      );
    const same =
      this.data !== null &&
      this.data.xName === data.xName &&
      x.every((v, i) => v === this.whole[0][i]) &&
      y.every((v, i) => v === this.whole[1][i]);
    this.data = data;
    if (!same) {
      this.whole = [x[1] > x[0] ? x : [x[0] - 0.5, x[0] + 0.5], y];
      this.xView = [...this.whole[0]];
      this.yView = [...this.whole[1]];
    }
    this.paint();
  }

  reset(): void {
    this.xView = [...this.whole[0]];
    this.yView = [...this.whole[1]];
    this.paint();
  }

  private zoomAll(factor: number): void {
    const middle = this.cursor ?? (this.xView[0] + this.xView[1]) / 2;
    this.xView = zoomed(this.xView, this.whole[0], middle, factor);
    this.paint();
  }

  private pan(share: number): void {
    this.xView = moved(this.xView, this.whole[0], share * (this.xView[1] - this.xView[0]));
    this.paint();
  }

  /** What is looked at: for tests and links. */
  get view(): { x: Range; y: Range } {
    return { x: this.xView, y: this.yView };
  }

  private inner(): { w: number; t: number } {
    return { w: this.width - LEFT - RIGHT, t: (this.data?.height ?? 300) - TOP - BOTTOM };
  }

  private px(x: number): number {
    return LEFT + ((x - this.xView[0]) / (this.xView[1] - this.xView[0])) * this.inner().w;
  }

  private py(y: number): number {
    return TOP + (1 - (y - this.yView[0]) / (this.yView[1] - this.yView[0])) * this.inner().t;
  }

  private paint(): void {
    const d = this.data;
    if (!d) return;
    this.width = this.room();
    const height = d.height ?? 300,
      { w, t } = this.inner(),
      c = inks();
    const id = `clip-${Math.round(1e9 * Math.random())}`;
    fill(this.canvas);
    for (const [key, value] of Object.entries({
      width: Math.round(this.width * letters()),
      height: Math.round(height * letters()),
      viewBox: `0 0 ${this.width} ${height}`,
      "font-family": "system-ui, sans-serif",
      "font-size": 12,
    }))
      this.canvas.setAttribute(key, String(value));
    const clip = svg("clipPath", { id });
    clip.append(svg("rect", { x: LEFT, y: TOP, width: w, height: t }));
    this.canvas.append(clip);
    for (const v of ticks(this.xView, Math.max(3, Math.floor(w / 75))))
      this.canvas.append(
        svg("line", { x1: this.px(v), x2: this.px(v), y1: TOP, y2: TOP + t, stroke: c.grid }),
        svg(
          "text",
          { x: this.px(v), y: TOP + t + 15, fill: c.quiet, "text-anchor": "middle" },
          tickWords(v, this.xView),
        ),
      );
    for (const v of ticks(this.yView, Math.max(3, Math.floor(t / 40)), false))
      this.canvas.append(
        svg("line", { x1: LEFT, x2: LEFT + w, y1: this.py(v), y2: this.py(v), stroke: c.grid }),
        svg("text", { x: LEFT - 6, y: this.py(v) + 4, fill: c.quiet, "text-anchor": "end" }, tickWords(v, this.yView)),
      );
    this.canvas.append(
      svg("rect", { x: LEFT, y: TOP, width: w, height: t, fill: "none", stroke: c.edge }),
      svg("text", { x: LEFT + w / 2, y: TOP + t + 33, fill: c.quiet, "text-anchor": "middle" }, d.xName),
      svg(
        "text",
        { x: 0, y: 0, fill: c.quiet, "text-anchor": "middle", transform: `translate(13 ${TOP + t / 2}) rotate(-90)` },
        d.yName,
      ),
    );
    const body = svg("g", { "clip-path": `url(#${id})` });
    for (const mark of d.marks ?? []) this.mark(body, mark, t);
    for (const line of d.lines) {
      body.append(
        svg("path", {
          d: this.path(line),
          fill: "none",
          stroke: line.colour,
          "stroke-width": line.width ?? 1.8,
          ...(line.dash ? { "stroke-dasharray": line.dash } : {}),
          "stroke-linejoin": "round",
        }),
      );
      if (line.points)
        line.values.forEach(
          (v, i) =>
            v !== null && body.append(svg("circle", { cx: this.px(d.x[i]), cy: this.py(v), r: 3, fill: line.colour })),
        );
    }
    this.overlay = svg("g", {});
    this.canvas.append(body);
    this.peak(c.ink);
    this.canvas.append(this.overlay);
    this.showCursor();
  }

  private path(line: Line): string {
    let out = "",
      pen = false;
    const x = this.data!.x;
    line.values.forEach((v, i) => {
      if (v === null || !Number.isFinite(v)) {
        pen = false;
        return;
      }
      out += `${pen ? "L" : "M"}${this.px(x[i]).toFixed(1)} ${this.py(v).toFixed(1)}`;
      pen = true;
    });
    return out;
  }

  private mark(body: SVGElement, mark: Mark, t: number): void {
    const x = this.px(mark.at);
    if (mark.to !== undefined)
      body.append(
        svg("rect", {
          x: Math.min(x, this.px(mark.to)),
          y: TOP,
          width: Math.abs(this.px(mark.to) - x),
          height: t,
          fill: mark.colour,
          opacity: 0.16,
        }),
      );
    body.append(svg("line", { x1: x, x2: x, y1: TOP, y2: TOP + t, stroke: mark.colour, "stroke-dasharray": "4 4" }));
    if (mark.text) body.append(svg("text", { x: x + 4, y: TOP + 13, fill: mark.colour }, mark.text));
  }

  private peak(ink: string): void {
    const line = this.data?.lines[this.data.peakOf ?? -1];
    if (!this.data || !line) return;
    let at = -1;
    line.values.forEach((v, i) => {
      if (v !== null && (at < 0 || v > (line.values[at] ?? -Infinity))) at = i;
    });
    if (at < 0) return;
    const x = this.px(this.data.x[at]),
      y = this.py(line.values[at]!),
      { w, t } = this.inner();
    // What was zoomed away has no marker; one at the edge is drawn whole.
    if (x < LEFT - 0.5 || x > LEFT + w + 0.5 || y < TOP - 0.5 || y > TOP + t + 0.5) return;
    const text = `${line.values[at]!.toFixed(this.data.digits ?? 2)} at ${tickWords(this.data.x[at], [0, this.xView[1] - this.xView[0] > 5 ? 1 : 0.1])}`,
      place = this.besides(x, y, 6.8 * text.length);
    this.canvas.append(
      svg("path", { d: `M${x} ${y - 3}l-5 -8h10z`, fill: ink }),
      svg(
        "text",
        { x: place.left, y: place.top + 11, fill: ink, stroke: inks().card, "stroke-width": 4, "paint-order": "stroke" },
        text,
      ),
    ); // prettier-ignore
  }

  /** Where the word of a peak stands: beside, above or below its marker, and over no curve where there is such a place. */
  private besides(x: number, y: number, wide: number): Box {
    const d = this.data!,
      { w, t } = this.inner(),
      high = 14,
      inView = (v: number) => v >= this.xView[0] && v <= this.xView[1],
      curves = d.lines.map((line) =>
        line.values.map((v, i) => (v !== null && Number.isFinite(v) && inView(d.x[i]) ? { x: this.px(d.x[i]), y: this.py(v) } : null)),
      ), // prettier-ignore
      tops = [y - 15, y - 28, y + 4, y + 18, y + 34],
      boxes = tops.flatMap((top) => [x + 9, x - 9 - wide].map((left) => ({ left, top, wide, high })));
    boxes.splice(2, 0, { left: x - wide / 2, top: y - 28, wide, high });
    return freest(boxes, { left: LEFT, top: TOP, wide: w, high: t }, curves);
  }

  /** Put the cursor at an x, or take it away. */
  point(x: number | null): void {
    this.cursor = x;
    this.showCursor();
  }

  private showCursor(): void {
    const d = this.data;
    if (!d) return;
    fill(this.overlay);
    let at = -1;
    if (this.cursor !== null) {
      const x = this.cursor;
      at = d.x.reduce((best, v, i) => (best < 0 || Math.abs(v - x) < Math.abs(d.x[best] - x) ? i : best), -1);
      const place = this.px(x);
      if (place >= LEFT && place <= this.width - RIGHT)
        this.overlay.append(
          svg("line", {
            x1: place,
            x2: place,
            y1: TOP,
            y2: TOP + this.inner().t,
            stroke: inks().ink,
            "stroke-width": 1,
          }),
        );
    }
    const digits = d.digits ?? 2;
    const entries = d.lines.map((l) => {
      const swatch = svg("svg", { width: 22, height: 8, "aria-hidden": "true" });
      swatch.append(
        svg("line", {
          x1: 0,
          x2: 22,
          y1: 4,
          y2: 4,
          stroke: l.colour,
          "stroke-width": 2,
          ...(l.dash ? { "stroke-dasharray": l.dash } : {}),
        }),
      );
      const v = at < 0 ? undefined : l.values[at];
      return h(
        "span",
        {},
        swatch,
        ` ${l.name}`,
        at < 0 ? null : h("b", {}, ` ${v === null || v === undefined ? "-" : v.toFixed(digits)}`),
      );
    });
    fill(
      this.legend,
      ...entries,
      at < 0 ? null : h("span", { class: "quiet" }, `${d.xName.split(" / ")[0]} ${d.x[at].toFixed(digits)}`),
    );
  }

  private picture(): { text: string; width: number; height: number } {
    const copy = this.canvas.cloneNode(true) as SVGSVGElement,
      height = this.data?.height ?? 300;
    copy.setAttribute("xmlns", SPACE);
    copy.removeAttribute("tabindex");
    copy.prepend(svg("rect", { width: this.width, height, fill: inks().card }));
    (this.data?.lines ?? []).forEach((l, i) =>
      copy.append(svg("text", { x: LEFT + 8, y: TOP + 16 + 15 * i, fill: l.colour }, l.name)),
    );
    return { text: new XMLSerializer().serializeToString(copy), width: this.width, height };
  }

  private columns(): { name: string; values: (number | null)[] }[] {
    const d = this.data;
    return d
      ? [{ name: d.xName, values: d.x }, ...d.lines.map((l) => ({ name: `${l.name} (${d.yName})`, values: l.values }))]
      : [];
  }

  private listen(): void {
    let from: [number, number] | null = null,
      box: SVGElement | null = null,
      start: [Range, Range] = this.whole;
    const at = (event: PointerEvent): [number, number] => {
      const place = this.canvas.getBoundingClientRect();
      return [(event.clientX - place.left) / letters(), (event.clientY - place.top) / letters()];
    };
    const toX = (px: number) => this.xView[0] + ((px - LEFT) / this.inner().w) * (this.xView[1] - this.xView[0]);
    const toY = (py: number) => this.yView[0] + (1 - (py - TOP) / this.inner().t) * (this.yView[1] - this.yView[0]);
    this.canvas.addEventListener("pointerdown", (event) => {
      from = at(event);
      start = [[...this.xView], [...this.yView]];
      this.canvas.setPointerCapture(event.pointerId);
    });
    this.canvas.addEventListener("pointermove", (event) => {
      const now = at(event);
      if (!from) {
        const inside = now[0] >= LEFT && now[0] <= this.width - RIGHT;
        this.point(inside ? toX(now[0]) : null);
        this.moved?.(inside ? toX(now[0]) : null);
        return;
      }
      const [w, t] = [this.inner().w, this.inner().t];
      if (event.shiftKey) {
        this.xView = moved(start[0], this.whole[0], (-(now[0] - from[0]) / w) * (start[0][1] - start[0][0]));
        this.yView = moved(start[1], this.whole[1], ((now[1] - from[1]) / t) * (start[1][1] - start[1][0]));
        this.paint();
        return;
      }
      const [x, y, wide, tall] = boxOf(from, now, w, t);
      box?.remove();
      box = svg("rect", { x, y, width: wide, height: tall, fill: inks().co, opacity: 0.15, stroke: inks().co });
      this.overlay.append(box);
    });
    this.canvas.addEventListener("pointerup", (event) => {
      const begun = from,
        now = at(event);
      from = null;
      box?.remove();
      box = null;
      if (!begun || event.shiftKey) return;
      if (Math.hypot(now[0] - begun[0], now[1] - begun[1]) < 5) {
        this.clicked?.(toX(now[0]));
        return;
      }
      const [x, y, wide, tall] = boxOf(begun, now, this.inner().w, this.inner().t);
      const view: [Range, Range] = [
        [toX(x), toX(x + wide)],
        [toY(y + tall), toY(y)],
      ];
      [this.xView, this.yView] = [
        zoomed(view[0], this.whole[0], view[0][0], 1),
        zoomed(view[1], this.whole[1], view[1][0], 1),
      ];
      this.paint();
    });
    this.canvas.addEventListener("pointerleave", () => {
      if (from) return;
      this.point(null);
      this.moved?.(null);
    });
    this.canvas.addEventListener("dblclick", () => this.reset());
    this.canvas.addEventListener("keydown", (event) => this.key(event));
  }

  private key(event: KeyboardEvent): void {
    const step = (this.xView[1] - this.xView[0]) / 100;
    const now = this.cursor ?? (this.xView[0] + this.xView[1]) / 2;
    if (event.key === "ArrowRight" || event.key === "ArrowLeft") {
      const x = Math.max(this.xView[0], Math.min(this.xView[1], now + (event.key === "ArrowRight" ? step : -step)));
      this.point(x);
      this.moved?.(x);
    } else if (event.key === "+") this.zoomAll(0.5);
    else if (event.key === "-") this.zoomAll(2);
    else if (event.key === "0") this.reset();
    else if (event.key === "Enter" && this.cursor !== null) this.clicked?.(this.cursor);
    else return;
    event.preventDefault();
  }
}

/** The box that a drag means: one that is long in one direction means that direction alone. */
export function boxOf(
  from: [number, number],
  to: [number, number],
  w: number,
  t: number,
): [number, number, number, number] {
  let x = Math.max(LEFT, Math.min(from[0], to[0])),
    y = Math.max(TOP, Math.min(from[1], to[1]));
  let wide = Math.min(LEFT + w, Math.max(from[0], to[0])) - x,
    tall = Math.min(TOP + t, Math.max(from[1], to[1])) - y;
  if (wide > 3 * tall) [y, tall] = [TOP, t];
  else if (tall > 3 * wide) [x, wide] = [LEFT, w];
  return [x, y, Math.max(1, wide), Math.max(1, tall)];
}
