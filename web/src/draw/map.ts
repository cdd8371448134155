/** Levels over a grid of two angles: absolute colours, the shared cursor, files of it. */

import { letters, levels, lines as inks, shade, type Ramp } from "./colours";
import { fill, h, onResize } from "./dom";
import { fileName, saveButtons, type Columns } from "./save";
import { tickWords, ticks } from "./scales";

export type MapData = {
  rows: number[];
  columns: number[];
  values: ArrayLike<number | null>;
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

const LEFT = 52,
  RIGHT = 64,
  TOP = 24,
  BOTTOM = 40;

export class LevelMap {
  readonly canvas = h("canvas", { class: "map", attrs: { role: "img", tabindex: 0 } });
  readonly said = h("div", { class: "small quiet mono said" }, "\u00a0");
  readonly element: HTMLElement;
  /** Told of the row and column values under the pointer, and of a click on them. */
  moved: ((at: { row: number; column: number } | null) => void) | null = null;
  clicked: ((at: { row: number; column: number }) => void) | null = null;
  private data: MapData | null = null;
  private image = document.createElement("canvas");
  private box = [0, 0, 1, 1];
  private width = 0;
  private mark: { row: number; column: number } | null = null;

  constructor(private name: string) {
    this.canvas.setAttribute("aria-label", name);
    const saving = saveButtons({
      name: () => fileName(this.name),
      svg: () => this.picture(),
      columns: () => this.columns(),
    });
    this.element = h("div", { class: "chart" }, this.canvas, h("div", { class: "chart-tools" }, this.said, saving));
    this.canvas.addEventListener("pointermove", (event) => {
      const at = this.under(event);
      this.say(at);
      this.moved?.(at);
    });
    this.canvas.addEventListener("pointerleave", () => this.moved?.(null));
    this.canvas.addEventListener("click", (event) => {
      const at = this.under(event);
      if (at) this.clicked?.(at);
    });
    this.canvas.addEventListener("keydown", (event) => this.key(event));
    // A map that was drawn before its page had a layout is drawn anew when it has a width.
    onResize(this.canvas, () => {
      if (this.data && this.room() !== this.width) this.paint();
    });
  }

  private room(): number {
    return Math.round(this.canvas.clientWidth / letters()) || 480;
  }

  draw(data: MapData, name = this.name): void {
    this.name = name;
    this.canvas.setAttribute("aria-label", name);
    this.data = data;
    this.paint();
  }

  /** Mark a place, or none. */
  point(at: { row: number; column: number } | null): void {
    this.mark = at;
    if (this.data) this.paint();
  }

  private paint(): void {
    const d = this.data;
    if (!d) return;
    const ramp = d.ramp ?? levels,
      big = letters(),
      width = (this.width = this.room()),
      inner = width - LEFT - RIGHT;
    const tall =
      d.height ??
      Math.round(
        d.square ? inner : Math.min(380, Math.max(140, (inner * d.rows.length) / Math.max(1, d.columns.length))),
      );
    const scale = window.devicePixelRatio || 1,
      height = tall + TOP + BOTTOM;
    this.canvas.style.height = `${height * big}px`;
    this.canvas.width = Math.round(width * scale * big);
    this.canvas.height = Math.round(height * scale * big);
    const g = this.canvas.getContext("2d")!,
      c = inks();
    g.setTransform(scale * big, 0, 0, scale * big, 0, 0);
    g.font = "12px system-ui";
    this.cells(d, ramp);
    g.imageSmoothingEnabled = false;
    g.drawImage(this.image, LEFT, TOP, inner, tall);
    g.strokeStyle = c.edge;
    g.strokeRect(LEFT, TOP, inner, tall);
    this.box = [LEFT, TOP, inner, tall];
    this.axes(g, d, ramp);
    if (this.mark) {
      const [x, y] = this.placeOf(this.mark);
      g.strokeStyle = c.cross;
      g.lineWidth = 2;
      g.strokeRect(x - 5, y - 5, 10, 10);
      g.lineWidth = 1;
    }
  }

  private cells(d: MapData, ramp: Ramp): void {
    this.image.width = d.columns.length;
    this.image.height = d.rows.length;
    const pen = this.image.getContext("2d")!,
      pixels = pen.createImageData(d.columns.length, d.rows.length);
    for (let r = 0; r < d.rows.length; r++)
      for (let k = 0; k < d.columns.length; k++) {
        const i = shade(d.values[r * d.columns.length + k], d.low, d.high);
        if (i < 0) continue;
        const at = 4 * ((d.flip ? d.rows.length - 1 - r : r) * d.columns.length + k);
        for (let b = 0; b < 3; b++) pixels.data[at + b] = ramp[3 * i + b];
        pixels.data[at + 3] = 255;
      }
    pen.putImageData(pixels, 0, 0);
  }

  private axes(g: CanvasRenderingContext2D, d: MapData, ramp: Ramp): void {
    const [left, top, inner, tall] = this.box,
      c = inks();
    const xs: [number, number] = [d.columns[0], d.columns[d.columns.length - 1]],
      ys: [number, number] = [d.rows[0], d.rows[d.rows.length - 1]];
    g.fillStyle = c.quiet;
    g.textAlign = "center";
    for (const v of ticks(xs, Math.max(2, Math.floor(inner / 60))))
      g.fillText(tickWords(v, xs), this.placeOf({ row: ys[0], column: v })[0], top + tall + 15);
    g.textAlign = "right";
    g.textBaseline = "middle";
    for (const v of ticks(ys, Math.max(2, Math.floor(tall / 34))))
      g.fillText(tickWords(v, ys), left - 5, this.placeOf({ row: v, column: xs[0] })[1]);
    g.textAlign = "center";
    g.textBaseline = "alphabetic";
    g.fillText(d.columnName, left + inner / 2, top + tall + 33);
    g.save();
    g.translate(13, top + tall / 2);
    g.rotate(-Math.PI / 2);
    g.fillText(d.rowName, 0, 0);
    g.restore();
    for (let i = 0; i < 256; i++) {
      g.fillStyle = `rgb(${ramp[3 * i]} ${ramp[3 * i + 1]} ${ramp[3 * i + 2]})`;
      g.fillRect(left + inner + 10, top + tall * (1 - (i + 1) / 256), 12, tall / 256 + 1);
    }
    g.fillStyle = c.quiet;
    g.textAlign = "left";
    const whole: [number, number] = [d.low, d.high];
    for (const v of ticks(whole, Math.max(2, Math.floor(tall / 40)), false)) {
      const f = (v - d.low) / (d.high - d.low);
      g.fillText(tickWords(v, whole), left + inner + 26, top + tall * (1 - f) + (f > 0.97 ? 10 : f < 0.03 ? 0 : 4));
    }
    g.fillText(d.unit, left + inner + 10, top - 9);
  }

  private placeOf(at: { row: number; column: number }): [number, number] {
    const d = this.data!,
      [left, top, inner, tall] = this.box;
    const share = (all: number[], v: number) => {
      const half = 0.5 / all.length,
        span = all[all.length - 1] - all[0];
      return span ? half + ((v - all[0]) / span) * (1 - 2 * half) : 0.5;
    };
    const y = share(d.rows, at.row);
    return [left + share(d.columns, at.column) * inner, top + (d.flip ? 1 - y : y) * tall];
  }

  private under(event: MouseEvent): { row: number; column: number } | null {
    const d = this.data;
    if (!d) return null;
    const place = this.canvas.getBoundingClientRect(),
      [left, top, inner, tall] = this.box;
    const x = ((event.clientX - place.left) / letters() - left) / inner,
      y = ((event.clientY - place.top) / letters() - top) / tall;
    if (x < 0 || x >= 1 || y < 0 || y >= 1) return null;
    return {
      row: d.rows[Math.floor((d.flip ? 1 - y : y) * d.rows.length)],
      column: d.columns[Math.floor(x * d.columns.length)],
    };
  }

  private say(at: { row: number; column: number } | null): void {
    const d = this.data;
    if (!d || !at) {
      fill(this.said, "\u00a0");
      return;
    }
    const v = d.values[d.rows.indexOf(at.row) * d.columns.length + d.columns.indexOf(at.column)];
    fill(
      this.said,
      `${d.rowName.split(" / ")[0]} ${tickWords(at.row, [0, 10])}, ${d.columnName.split(" / ")[0]} ${tickWords(at.column, [0, 10])}: ${v === null || Number.isNaN(v) ? "not measured" : `${v.toFixed(2)} ${d.unit}`}`,
    );
  }

  private key(event: KeyboardEvent): void {
    const d = this.data;
    const step = { ArrowLeft: [0, -1], ArrowRight: [0, 1], ArrowUp: [-1, 0], ArrowDown: [1, 0] }[event.key];
    if (!d || !step) return;
    event.preventDefault();
    const now = this.mark ?? { row: d.rows[0], column: d.columns[0] };
    const next = (all: number[], v: number, by: number) =>
      all[
        Math.max(
          0,
          Math.min(
            all.length - 1,
            all.reduce((best, one, i) => (Math.abs(one - v) < Math.abs(all[best] - v) ? i : best), 0) + by,
          ),
        )
      ];
    const at = {
      row: next(d.rows, now.row, (d.flip ? -1 : 1) * step[0]),
      column: next(d.columns, now.column, step[1]),
    };
    this.say(at);
    this.clicked?.(at);
  }

  private picture(): { text: string; width: number; height: number } {
    const width = this.width,
      height = parseFloat(this.canvas.style.height) / letters() || 300;
    const text = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}"><rect width="100%" height="100%" fill="${inks().card}"/><image width="${width}" height="${height}" href="${this.canvas.toDataURL("image/png")}"/></svg>`;
    return { text, width, height };
  }

  private columns(): Columns {
    const d = this.data;
    if (!d) return [];
    const n = d.columns.length;
    return [
      { name: d.rowName, values: d.rows.flatMap((v) => new Array<number>(n).fill(v)) },
      { name: d.columnName, values: d.rows.flatMap(() => d.columns) },
      { name: `level / ${d.unit}`, values: Array.from(d.values) },
    ];
  }
}
