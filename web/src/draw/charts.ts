/** Curves, polar cuts and maps; every axis says its unit. */

import uPlot from "uplot";
import "uplot/dist/uPlot.min.css";
import { levels, lines, shade, type Ramp } from "./colours";
import { fill, h } from "./dom";

export type Line = {
  name: string;
  values: (number | null)[];
  colour: string;
  dash?: number[];
  width?: number;
  points?: boolean;
};
export type LineOptions = {
  x: string;
  y: string;
  height?: number;
  range?: [number, number];
  xRange?: [number, number];
  marks?: Mark[];
  picked?: (x: number) => void;
};
/** A line across a chart at one x, with a word beside it; `shade` fills to a second x. */
export type Mark = { at: number; to?: number; text?: string; colour: string };

/** Draw lines over one x; draws itself anew when its place changes its width. */
export class LineChart {
  readonly element = h("div", { class: "chart" });
  private plot: uPlot | null = null;
  private key = "";
  private marks: Mark[] = [];
  private picked: ((x: number) => void) | undefined;
  private width = 0;
  private again: (() => void) | null = null;

  constructor() {
    new ResizeObserver(() => {
      if (this.again && this.room() !== this.width) this.again();
    }).observe(this.element);
  }

  private room(): number {
    return Math.max(280, this.element.clientWidth || 600);
  }

  draw(x: number[], series: Line[], options: LineOptions): void {
    const c = lines();
    const width = (this.width = this.room());
    this.again = () => this.draw(x, series, options);
    this.marks = options.marks ?? [];
    this.picked = options.picked;
    const key = JSON.stringify([series.map((s) => [s.name, s.colour]), { ...options, marks: 0 }, width, c.paper]);
    const data = [x, ...series.map((s) => s.values)] as uPlot.AlignedData;
    if (this.plot && key === this.key) {
      this.plot.setData(data);
      return;
    }
    this.plot?.destroy();
    fill(this.element);
    this.key = key;
    const axis = {
      stroke: c.quiet,
      grid: { stroke: c.grid, width: 1 },
      ticks: { stroke: c.grid, width: 1 },
      font: "12px system-ui",
      labelFont: "12px system-ui",
    };
    this.plot = new uPlot(
      {
        width,
        height: options.height ?? 300,
        scales: { x: { time: false, range: options.xRange }, y: { range: options.range } },
        axes: [
          { ...axis, label: options.x },
          { ...axis, label: options.y, size: 58 },
        ],
        cursor: { drag: { x: true, y: true } },
        hooks: { draw: [(u) => this.mark(u)], ready: [(u) => this.listen(u)] },
        series: [
          { label: options.x, value: (_u, v) => (v === null ? "" : v.toFixed(2)) },
          ...series.map((s) => ({
            label: s.name,
            stroke: s.colour,
            width: s.width ?? 1.6,
            dash: s.dash,
            points: { show: s.points ?? false, size: 5 },
            spanGaps: false,
            value: (_u: uPlot, v: number | null) => (v === null ? "-" : v.toFixed(2)),
          })),
        ],
      },
      data,
      this.element,
    );
  }

  private mark(u: uPlot): void {
    const g = u.ctx,
      { left, top, width, height } = u.bbox,
      scale = window.devicePixelRatio || 1;
    g.save();
    g.beginPath();
    g.rect(left, top, width, height);
    g.clip();
    g.font = `${12 * scale}px system-ui`;
    g.textBaseline = "top";
    g.textAlign = "left";
    g.lineWidth = scale;
    this.marks.forEach((one, i) => {
      const x = u.valToPos(one.at, "x", true);
      g.fillStyle = g.strokeStyle = one.colour;
      if (one.to !== undefined) {
        g.globalAlpha = 0.18;
        g.fillRect(x, top, u.valToPos(one.to, "x", true) - x, height);
        g.globalAlpha = 1;
      }
      g.setLineDash([4 * scale, 4 * scale]);
      g.beginPath();
      g.moveTo(x, top);
      g.lineTo(x, top + height);
      g.stroke();
      if (one.text) g.fillText(one.text, x + 4 * scale, top + (4 + 14 * (i % 4)) * scale);
    });
    g.restore();
  }

  /** A click picks an x; dragging enlarges, and is no click. */
  private listen(u: uPlot): void {
    let from: [number, number] = [0, 0];
    u.over.addEventListener("pointerdown", (event) => {
      from = [event.clientX, event.clientY];
    });
    u.over.addEventListener("click", (event) => {
      if (Math.hypot(event.clientX - from[0], event.clientY - from[1]) < 4)
        this.picked?.(u.posToVal(event.clientX - u.over.getBoundingClientRect().left, "x"));
    });
  }
}

function surface(canvas: HTMLCanvasElement, width: number, height: number): CanvasRenderingContext2D {
  const scale = window.devicePixelRatio || 1;
  canvas.width = Math.round(width * scale);
  canvas.height = Math.round(height * scale);
  const context = canvas.getContext("2d")!;
  context.setTransform(scale, 0, 0, scale, 0, 0);
  context.clearRect(0, 0, width, height);
  context.font = "12px system-ui";
  return context;
}

/** A cut on a circle: the angle from the peak runs clockwise from the top, the level outwards. */
export function polar(canvas: HTMLCanvasElement, angle: number[], series: Line[], top: number, range: number): void {
  const width = canvas.clientWidth || 420,
    height = Math.min(width, 460);
  const c = lines(),
    g = surface(canvas, width, height);
  const x0 = width / 2,
    y0 = height / 2,
    radius = Math.min(width, height) / 2 - 26;
  g.strokeStyle = c.grid;
  g.fillStyle = c.quiet;
  g.lineWidth = 1;
  for (let down = 0; down < range; down += 10) {
    g.beginPath();
    g.arc(x0, y0, radius * (1 - down / range), 0, 2 * Math.PI);
    g.stroke();
    if (down) g.fillText(`${(top - down).toFixed(0)}`, x0 + 4, y0 - radius * (1 - down / range) + 12);
  }
  g.textAlign = "center";
  g.textBaseline = "middle";
  for (let a = 0; a < 360; a += 30) {
    const s = Math.sin((a * Math.PI) / 180),
      t = -Math.cos((a * Math.PI) / 180);
    g.beginPath();
    g.moveTo(x0, y0);
    g.lineTo(x0 + radius * s, y0 + radius * t);
    g.stroke();
    g.fillText(`${a > 180 ? a - 360 : a}°`, x0 + (radius + 15) * s, y0 + (radius + 13) * t);
  }
  g.textAlign = "left";
  g.textBaseline = "alphabetic";
  for (const one of series) {
    g.strokeStyle = one.colour;
    g.lineWidth = one.width ?? 1.8;
    g.setLineDash(one.dash ?? []);
    g.beginPath();
    let pen = false;
    angle.forEach((a, i) => {
      const v = one.values[i];
      if (v === null) {
        pen = false;
        return;
      }
      const r = radius * Math.max(0, 1 - (top - v) / range),
        x = x0 + r * Math.sin((a * Math.PI) / 180),
        y = y0 - r * Math.cos((a * Math.PI) / 180);
      if (pen) g.lineTo(x, y);
      else g.moveTo(x, y);
      pen = true;
    });
    g.stroke();
  }
  g.setLineDash([]);
  series.forEach((one, i) => {
    g.fillStyle = one.colour;
    g.fillText(one.name, 6, 14 + 15 * i);
  });
  g.fillStyle = c.quiet;
  g.fillText(`rings: 10 dB, rim ${top.toFixed(1)} dBi`, 6, height - 6);
}

export type MapOptions = {
  rowName: string;
  columnName: string;
  low: number;
  high: number;
  unit: string;
  ramp?: Ramp;
  flip?: boolean;
  square?: boolean;
  height?: number;
};

/** Levels over a grid; under the pointer the value is said. */
export class LevelMap {
  readonly canvas = h("canvas", { class: "map", attrs: { role: "img" } });
  readonly said = h("div", { class: "small quiet mono" }, "\u00a0");
  readonly element = h("div", {}, this.canvas, this.said);
  private image = document.createElement("canvas");
  private last: {
    rows: number[];
    columns: number[];
    values: ArrayLike<number | null>;
    options: MapOptions;
    box: number[];
    width: number;
  } | null = null;

  constructor(label: string) {
    this.canvas.setAttribute("aria-label", label);
    this.canvas.addEventListener("pointermove", (event) => this.say(event));
    // A map that was drawn before its page had a layout is drawn anew once it has a width.
    new ResizeObserver(() => {
      if (!this.last) return;
      const { rows, columns, values, options, width } = this.last;
      if (this.room() !== width) this.draw(rows, columns, values, options);
    }).observe(this.canvas);
  }

  private room(): number {
    return this.canvas.clientWidth || 480;
  }

  draw(rows: number[], columns: number[], values: ArrayLike<number | null>, options: MapOptions): void {
    const ramp = options.ramp ?? levels;
    const width = this.room();
    const left = 48,
      bottom = 38,
      right = 62,
      above = 22;
    const inner = width - left - right;
    const tall =
      options.height ??
      Math.round(options.square ? inner : Math.min(360, Math.max(140, (inner * rows.length) / columns.length)));
    this.canvas.style.height = `${tall + above + bottom}px`;
    const g = surface(this.canvas, width, tall + above + bottom),
      c = lines();
    if (this.image.width !== columns.length || this.image.height !== rows.length) {
      this.image.width = columns.length;
      this.image.height = rows.length;
    }
    const pen = this.image.getContext("2d")!,
      pixels = pen.createImageData(columns.length, rows.length);
    for (let r = 0; r < rows.length; r++)
      for (let k = 0; k < columns.length; k++) {
        const i = shade(values[r * columns.length + k], options.low, options.high);
        const at = 4 * ((options.flip ? rows.length - 1 - r : r) * columns.length + k);
        if (i < 0) continue;
        pixels.data[at] = ramp[3 * i];
        pixels.data[at + 1] = ramp[3 * i + 1];
        pixels.data[at + 2] = ramp[3 * i + 2];
        pixels.data[at + 3] = 255;
      }
    pen.putImageData(pixels, 0, 0);
    g.imageSmoothingEnabled = false;
    g.drawImage(this.image, left, above, inner, tall);
    g.strokeStyle = c.quiet;
    g.strokeRect(left, above, inner, tall);
    g.fillStyle = c.quiet;
    g.textAlign = "center";
    for (const v of ticks(columns[0], columns[columns.length - 1]))
      g.fillText(
        tick(v),
        left + ((v - columns[0]) / (columns[columns.length - 1] - columns[0])) * inner,
        above + tall + 14,
      );
    g.textAlign = "right";
    g.textBaseline = "middle";
    for (const v of ticks(rows[0], rows[rows.length - 1])) {
      const f = (v - rows[0]) / (rows[rows.length - 1] - rows[0]);
      g.fillText(tick(v), left - 5, above + (options.flip ? 1 - f : f) * tall);
    }
    g.textAlign = "center";
    g.textBaseline = "alphabetic";
    g.fillText(options.columnName, left + inner / 2, above + tall + 31);
    g.save();
    g.translate(12, above + tall / 2);
    g.rotate(-Math.PI / 2);
    g.fillText(options.rowName, 0, 0);
    g.restore();
    for (let i = 0; i < 256; i++) {
      g.fillStyle = `rgb(${ramp[3 * i]} ${ramp[3 * i + 1]} ${ramp[3 * i + 2]})`;
      g.fillRect(left + inner + 10, above + tall * (1 - (i + 1) / 256), 12, tall / 256 + 1);
    }
    g.fillStyle = c.quiet;
    g.textAlign = "left";
    for (const f of [0, 0.5, 1])
      g.fillText(
        tick(options.low + f * (options.high - options.low)),
        left + inner + 25,
        above + tall * (1 - f) + (f === 1 ? 10 : f === 0 ? 0 : 4),
      );
    g.fillText(options.unit, left + inner + 10, above - 8);
    this.last = { rows, columns, values, options, box: [left, above, inner, tall], width };
  }

  private say(event: PointerEvent): void {
    if (!this.last) return;
    const { rows, columns, values, options, box } = this.last;
    const place = this.canvas.getBoundingClientRect();
    const x = (event.clientX - place.left - box[0]) / box[2],
      y = (event.clientY - place.top - box[1]) / box[3];
    if (x < 0 || x >= 1 || y < 0 || y >= 1) {
      fill(this.said, "\u00a0");
      return;
    }
    const k = Math.floor(x * columns.length),
      r = Math.floor((options.flip ? 1 - y : y) * rows.length);
    const v = values[r * columns.length + k];
    fill(
      this.said,
      `${options.rowName} ${tick(rows[r])}, ${options.columnName} ${tick(columns[k])}: ${v === null || Number.isNaN(v) ? "not measured" : `${v.toFixed(2)} ${options.unit}`}`,
    );
  }
}

/** Round numbers between two ends, four to eight of them. */
function ticks(from: number, to: number): number[] {
  const span = Math.abs(to - from),
    step = [0.1, 0.2, 0.5, 1, 2, 5, 10, 15, 30, 45, 60, 90].find((s) => span / s <= 8) ?? span / 4,
    low = Math.min(from, to);
  const out: number[] = [];
  for (let v = Math.ceil(low / step - 1e-9) * step; v <= low + span + 1e-9; v += step)
    out.push(Math.round(v * 1e6) / 1e6);
  return out;
}

function tick(value: number): string {
  return Math.abs(value) >= 10 || Number.isInteger(value) ? value.toFixed(0) : value.toFixed(2);
}
