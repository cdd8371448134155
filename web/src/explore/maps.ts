/** Levels over all directions in any coordinates, and one direction over all frequencies. */

import { Chart } from "../draw/chart";
import { lines as inks } from "../draw/colours";
import { choice, h } from "../draw/dom";
import { LevelMap } from "../draw/map";
import { covering } from "../draw/scales";
import { post } from "../request/server";
import type { FieldMap } from "../request/types";
import { cursor } from "../shell/cursor";
import { Panel } from "../shell/panel";
import { DEG, direction, thetaPhi, type Vector } from "../scene/angles";
import type { Explorer, Tab } from "./explore";
import { COORDINATES, type CoordinatesName } from "./state";

/** Rows and columns of a map as a direction of the device frame; null where direction cosines name none. */
export function directionOf(kind: CoordinatesName, row: number, column: number): Vector | null {
  const [a, b] = [column * DEG, row * DEG];
  if (kind === "theta-phi") return direction(row, column);
  if (kind === "az-el") return [Math.sin(a) * Math.cos(b), Math.sin(b), Math.cos(a) * Math.cos(b)];
  if (kind === "alpha-epsilon") return [Math.sin(a), Math.cos(a) * Math.sin(b), Math.cos(a) * Math.cos(b)];
  const rest = 1 - row * row - column * column;
  return rest < 0 ? null : [column, row, Math.sqrt(rest)];
}

/** Where a direction lies on a map. */
export function placeOn(kind: CoordinatesName, [x, y, z]: Vector): { row: number; column: number } {
  if (kind === "theta-phi") {
    const [theta, phi] = thetaPhi([x, y, z]);
    return { row: theta, column: (phi + 360) % 360 };
  }
  if (kind === "az-el") return { row: Math.asin(y) / DEG, column: Math.atan2(x, z) / DEG };
  if (kind === "alpha-epsilon") return { row: Math.atan2(y, z) / DEG, column: Math.asin(x) / DEG };
  return { row: y, column: x };
}

export class MapTab implements Tab {
  private panel = new Panel("Levels over all directions", "card tab-card");
  private map = new LevelMap("levels over all directions");
  private found: FieldMap | null = null;
  private stopCursor: () => void;
  readonly element: HTMLElement;

  constructor(private explorer: Explorer) {
    const { looked } = explorer;
    const coordinates = choice("coordinates", COORDINATES.map(([k, w]): [string, string] => [k, w]), looked.coordinates, (v) => {
      looked.coordinates = v as CoordinatesName;
      explorer.changed();
    }); // prettier-ignore
    this.element = h("div", {}, h("div", { class: "row no-print" }, coordinates), this.panel.element);
    this.map.clicked = (at) => cursor.pin(directionOf(looked.coordinates, at.row, at.column));
    this.map.moved = (at) => cursor.hover(at && directionOf(looked.coordinates, at.row, at.column));
    this.stopCursor = cursor.watch((at) =>
      this.map.point(
        at && this.found && (looked.coordinates !== "u-v" || at[2] >= 0) ? placeOn(looked.coordinates, at) : null,
      ),
    );
  }

  leave(): void {
    this.stopCursor();
    this.panel.leave();
  }

  show(): void {
    const { looked, pattern } = this.explorer,
      kind = looked.coordinates;
    void this.panel.ask(looked.subject(true, `${kind} ${looked.basis} ${looked.component}`), (signal) => post("/api/map", { ...looked.body(), frequency: looked.frequency, coordinates: kind, basis: looked.basis }, signal), (found) => {
      this.found = found;
      const scale = pattern.scale(kind === "theta-phi" ? found : (pattern.map ?? found));
      const name = looked.component === "total" ? "total" : found.names[looked.component === "first" ? 0 : 1];
      const axis = (text: string) => text.replace("_deg", " / deg");
      this.map.draw({ rows: found.rows, columns: found.columns, values: found[looked.component], rowName: axis(found.row_name), columnName: axis(found.column_name), ...scale, flip: kind !== "theta-phi", square: kind === "u-v" }, `${name} of ${looked.run}`);
      return [h("p", { class: "small" }, `Shown: ${name}. The colours keep their levels whatever is shown.`), this.map.element, h("p", { class: "small mono" }, found.formula)];
    }, { keep: true, of: (a) => a.of, expect: looked.of(true) }).then((found) => found && this.map.point(cursor.at && (kind !== "u-v" || cursor.at[2] >= 0) ? placeOn(kind, cursor.at) : null)); // prettier-ignore
  }
}

export class FrequencyTab implements Tab {
  private panel = new Panel("Over frequency", "card tab-card");
  private chart = new Chart("level over frequency");
  private figure = new Chart("figure over frequency");
  private chosen = "gain_dbi";
  private stopCursor: () => void;
  readonly element: HTMLElement;

  constructor(private explorer: Explorer) {
    const { looked } = explorer,
      labels = new Map(looked.known!.figures.map((x) => [x.name, x.label]));
    if (!labels.has(this.chosen)) this.chosen = looked.known!.figures[0]?.name ?? "";
    const pick = choice("figure", [...labels], this.chosen, (v) => {
      this.chosen = v;
      this.show();
    });
    this.element = h("div", {}, h("div", { class: "row no-print" }, pick), this.panel.element);
    this.chart.clicked = (x) => {
      const all = looked.known!.frequency_hz;
      looked.frequency = all.reduce(
        (best, f, i) => (Math.abs(f / 1e9 - x) < Math.abs(all[best] / 1e9 - x) ? i : best),
        0,
      );
      explorer.changed();
    };
    let first = true;
    this.stopCursor = cursor.watch((_, pinned) => {
      if (pinned && !first) this.show();
      first = false;
    });
  }

  leave(): void {
    this.stopCursor();
    this.panel.leave();
  }

  show(): void {
    const { looked } = this.explorer,
      known = looked.known!;
    if (known.frequency_hz.length < 2) {
      this.panel.empty("This run holds one frequency.", looked.subject(false));
      return;
    }
    const [theta, phi] = cursor.at ? thetaPhi(cursor.at) : [0, 0],
      c = inks();
    const ask = { ...looked.body(), theta_deg: theta, phi_deg: phi, basis: looked.basis };
    void this.panel.ask(looked.subject(false, `${theta} ${phi} ${looked.basis} ${this.chosen}`), (signal) => post("/api/spectrum", ask, signal), (found) => {
      const x = found.frequency_hz.map((f) => f / 1e9),
        marks = [{ at: looked.hz / 1e9, colour: c.focus, text: "looked at" }];
      this.chart.draw({ x, lines: [
        { name: found.names[0], values: found.first, colour: c.co, points: x.length < 40 },
        { name: found.names[1], values: found.second, colour: c.cross, dash: "6 3", points: x.length < 40 },
        { name: "total", values: found.total, colour: c.ink, width: 1.1 },
      ], xName: "frequency / GHz", yName: `level / ${looked.unit}`, yWhole: covering([...found.total, ...found.first, ...found.second].map((v) => (v === null ? null : Math.max(v, -60))), 5), marks, peakOf: 2, digits: 3 }, `spectrum of ${looked.run}`); // prettier-ignore
      const rows = known.figures.filter((r) => r.name === this.chosen);
      const has = rows.some((r) => r.value !== null);
      if (has) this.figure.draw({ x: rows.map((r) => r.frequency_hz / 1e9), lines: [
        { name: rows[0].label, values: rows.map((r) => r.value), colour: c.co, points: true },
        ...(rows.some((r) => r.lower !== null) ? [{ name: "95 % interval", values: rows.map((r) => r.lower), colour: c.band, dash: "3 3" }, { name: "to", values: rows.map((r) => r.upper), colour: c.band, dash: "3 3" }] : []),
      ], xName: "frequency / GHz", yName: `${rows[0].label} / ${rows[0].unit || "1"}`, yWhole: covering(rows.flatMap((r) => [r.value, r.lower, r.upper]), 0.5), marks, height: 240, digits: 3 }, `${rows[0].label} of ${looked.run}`); // prettier-ignore
      return [h("p", { class: "small" }, `Direction theta ${theta.toFixed(1)}°, phi ${phi.toFixed(1)}°${cursor.at ? "" : " (boresight; a click on sphere, map or cut sets another)"}. A click in the chart sets the frequency.`), this.chart.element, h("h3", {}, "A figure over frequency"), has ? this.figure.element : h("p", { class: "quiet" }, "This figure has no value here.")];
    }, { keep: true, of: (a) => a.of, expect: looked.of(false) }); // prettier-ignore
  }
}
