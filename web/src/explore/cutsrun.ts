/** A run of cuts: no sphere, so no map and no directivity; every cut as a chart, every figure with its interval. */

import { Chart } from "../draw/chart";
import { lines as inks } from "../draw/colours";
import { fill, h, slider, table } from "../draw/dom";
import { covering } from "../draw/scales";
import { get, post } from "../request/server";
import type { CutOfRun, CutsRun } from "../request/types";
import { DEG, distinct, dot, type Vector } from "../scene/angles";
import { numberOf, put } from "../shell/address";
import { cursor } from "../shell/cursor";
import { Panel } from "../shell/panel";
import type { Explorer } from "./explore";
import { interval, kin, spread, valueCell } from "./figures";
import { ghz, nearestOf } from "./state";
import { comparing } from "./together";

/** How far below the lowest level a chart goes, dB. */
const BELOW_DB = 10;

export class CutsRunView {
  private cuts = new Panel("Measured cuts", "card tab-card");
  private figures = new Panel("Figures", "card figures-panel");
  private beside = new Panel("Beside another run", "card");
  private tools = h("div", { class: "controls" });
  readonly element = h("div", {}, this.tools, this.cuts.element, this.figures.element, this.beside.element);
  private frequency: number | null = null;
  /** The frequency that the address names, until it was found among the run's. */
  private wanted = numberOf("f");
  private charts = new Map<string, Chart>();
  private shown: CutOfRun[] = [];
  private stopCursor: () => void;

  constructor(private explorer: Pick<Explorer, "looked" | "view">) {
    this.stopCursor = cursor.watch((at) => this.follow(at));
  }

  leave(): void {
    this.stopCursor();
    this.cuts.leave();
    this.figures.leave();
    this.beside.leave();
  }

  show(): void {
    const { looked } = this.explorer,
      subject = { key: `${looked.run}/|${this.frequency ?? ""}`, words: `run ${looked.run}` };
    const asked = { ...looked.one(), frequency: this.frequency };
    void this.cuts.ask(subject, (signal) => post("/api/cuts", asked, signal), (found) => {
      const at = `run ${found.of.run}, ${ghz(found.of.frequency_hz ?? 0)}`;
      this.shown = found.cuts;
      if (this.elsewhere(found)) return [];
      this.controls(found);
      this.table({ key: subject.key, words: at }, found);
      this.cuts.subject.textContent = at;
      this.onSphere(found, at);
      return found.cuts.map((one) => this.chart(found, one));
    }, { keep: true }).then((found) => {
      if (!found) return;
      fill(this.cuts.subject, `run ${found.of.run}, ${ghz(found.of.frequency_hz ?? 0)}`);
      this.follow(cursor.at);
    }); // prettier-ignore
    if (this.frequency === null)
      void this.beside.ask(subject, (signal) => get("/api/campaigns", [], signal), (all) => [comparing(this.explorer, all, false)]); // prettier-ignore
  }

  /** The address names another frequency of this run: that one is asked for instead. */
  private elsewhere(found: CutsRun): boolean {
    const wanted = this.wanted,
      all = found.all_hz;
    this.wanted = null;
    if (wanted === null) return false;
    const index = nearestOf(all, wanted);
    if (Math.abs(all[index] - (found.of.frequency_hz ?? 0)) < 1) return false;
    this.frequency = index;
    this.show();
    return true;
  }

  /** Put the cursor of every chart where the shared one lies on its cut. */
  private follow(at: Vector | null): void {
    for (const one of this.shown) {
      const i = at ? nearest(one, at) : -1;
      this.charts.get(one.name)?.point(i < 0 ? null : one.angle_deg[i]);
    }
  }

  private controls(found: CutsRun): void {
    if (this.tools.childElementCount || found.all_hz.length < 2) return;
    const all = found.all_hz,
      now = all.findIndex((f) => Math.abs(f - (found.of.frequency_hz ?? 0)) < 1);
    const change = (index: number) => {
      this.frequency = index;
      put({ f: String(all[index] / 1e9) });
      this.show();
    };
    fill(
      this.tools,
      slider("frequency", 0, all.length - 1, 1, now, change, "", (i) => ghz(all[i])),
    );
  }

  private chart(found: CutsRun, one: CutOfRun): HTMLElement {
    const c = inks(),
      chart = this.charts.get(one.name) ?? new Chart(one.label);
    this.charts.set(one.name, chart);
    const there = (x: number | null) => (x === null ? null : directionAt(one, x));
    chart.moved = (x) => cursor.hover(there(x));
    chart.clicked = (x) => cursor.pin(there(x));
    const curves = [
      { name: found.components[0], values: one.co, colour: c.co, width: 2 },
      { name: found.components[1], values: one.cross, colour: c.cross },
      { name: "95 % interval, lower end", values: one.lower, colour: c.co, dash: "2 3" },
      { name: "upper end", values: one.upper, colour: c.co, dash: "2 3" },
    ].filter((line) => line.values.some((v) => v !== null));
    // In a null the lower end has no bound: it leaves the picture, and the curves stay readable.
    const levels = [one.co, one.cross, one.upper].flat().filter((v): v is number => v !== null),
      least = Math.min(...levels) - BELOW_DB;
    const whole = covering(
        curves.flatMap((line) => line.values.map((v) => (v === null ? null : Math.max(v, least)))),
        5,
      ),
      room: [number, number] = [
        whole[0],
        Math.max(...one.co.map((v) => v ?? -200)) > whole[1] - 2.5 ? whole[1] + 5 : whole[1],
      ];
    chart.draw({ x: one.angle_deg, lines: curves, xName: `${one.angle_name} / deg`, yName: `level / ${one.unit}`, peakOf: 0, height: 300, yWhole: room },
      `${one.label} of run ${found.of.run}`); // prettier-ignore
    return h("div", {}, h("h3", {}, one.label), chart.element);
  }

  /** The measured directions on the scene's sphere, coloured by level. */
  private onSphere(found: CutsRun, at: string): void {
    const { sphere, stage } = this.explorer.view,
      directions = found.cuts.flatMap((one) => one.directions),
      values = found.cuts.flatMap((one) => one.co),
      unit = found.cuts[0]?.unit ?? "dBi";
    const known = values.filter((v): v is number => v !== null),
      high = Math.ceil(Math.max(-200, ...known) / 5) * 5,
      scale = { low: high - 50, high, unit };
    sphere.shape({ rows: 1, columns: directions.length / 3, closed: false, directions });
    sphere.dots(values, scale);
    sphere.scaleBar(scale, "level");
    fill(stage.caption, `${at[0].toUpperCase()}${at.slice(1)}: ${distinct(directions).length} directions, coloured by level. Nothing was measured elsewhere.`);
    stage.hovered = (d) => {
      cursor.hover(d);
      const level = (i: number) => (values[i] === null ? null : `${values[i]!.toFixed(2)} ${unit}`);
      fill(stage.readout, d ? sphere.told(d, 3, level) : "");
    };
  } // prettier-ignore

  private table(subject: { key: string; words: string }, found: CutsRun): void {
    const here = kin(found.figures.filter((f) => Math.abs(f.frequency_hz - (found.of.frequency_hz ?? 0)) < 1));
    const rows = here.map((f) => [h("span", { attrs: { title: f.definition } }, f.label), valueCell(f), interval(f)]); // prettier-ignore
    this.figures.show(subject, spread(table(["figure", "value", "95 % interval"], rows, "figures"), here));
  }
}

/** The measured direction of a cut that lies nearest to an angle of its axis. */
export function directionAt(one: Pick<CutOfRun, "angle_deg" | "directions">, angle: number): Vector {
  const i = one.angle_deg.reduce((best, v, k) => (Math.abs(v - angle) < Math.abs(one.angle_deg[best] - angle) ? k : best), 0); // prettier-ignore
  return one.directions.slice(3 * i, 3 * i + 3) as Vector;
}

/** Which point of a cut a direction lies at, to 2 deg; -1 where it lies beside the cut. */
export function nearest(one: Pick<CutOfRun, "angle_deg" | "directions">, at: Vector): number {
  let best = -1,
    most = Math.cos(2 * DEG);
  one.angle_deg.forEach((_, i) => {
    const c = dot(at, one.directions.slice(3 * i, 3 * i + 3) as Vector);
    if (c > most) [best, most] = [i, c];
  });
  return best;
}
