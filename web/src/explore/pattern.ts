/** The pattern of the opened run on the scene's sphere, level outwards and in colour, with an absolute scale. */

import { choice, fill, h, slider } from "../draw/dom";
import { post } from "../request/server";
import type { FieldMap } from "../request/types";
import { cursor } from "../shell/cursor";
import type { View } from "../shell/page";
import { agrees } from "../shell/panel";
import { overtaken, words } from "../shell/session";
import { direction, type Vector } from "../scene/angles";
import { BASES, ghz, SHOWN, type Component, type Looked } from "./state";

export type Scale = { low: number; high: number; unit: string };

export class PatternOnStage {
  map: FieldMap | null = null;
  private stop: AbortController | null = null;
  private shape = "";
  private asked = "";

  constructor(
    private view: View,
    private looked: Looked,
    private changed: () => void,
  ) {
    view.stage.hovered = (d) => {
      cursor.hover(d);
      this.say(d);
    };
  }

  /** One scale for all components: the strongest level of the total, rounded up to 5 dB, and so many dB below it. */
  scale(map: FieldMap | null = this.map): Scale {
    let top = -200;
    for (const v of map?.total ?? []) if (v !== null && v > top) top = v;
    const high = Math.ceil(top / 5) * 5;
    return { low: high - this.looked.span, high, unit: this.looked.unit };
  }

  clear(): void {
    this.stop?.abort();
    this.map = null;
    this.shape = this.asked = "";
    this.view.sphere.clear();
    this.view.sphere.scaleBar(null);
    fill(this.view.stage.caption, "Nothing of a run is drawn here yet.");
    fill(this.view.stage.readout);
  }

  leave(): void {
    this.stop?.abort();
    this.stop = null;
  }

  show(): void {
    const { looked } = this;
    const key = `${looked.subject(true, looked.basis).key}`;
    if (key === this.asked && this.map) {
      this.draw();
      return;
    }
    this.asked = key;
    this.stop?.abort();
    const stop = (this.stop = new AbortController()),
      expect = looked.of(true);
    post("/api/map", { ...looked.body(), frequency: looked.frequency, coordinates: "theta-phi", basis: looked.basis }, stop.signal).then((found) => {
      if (this.stop !== stop || !agrees(found.of, expect)) return;
      this.map = found;
      this.draw();
    }, (error: unknown) => {
      if (this.stop !== stop || overtaken(error)) return;
      this.clear();
      fill(this.view.stage.caption, h("span", { class: "bad" }, words(error)));
    }); // prettier-ignore
  }

  private draw(): void {
    const map = this.map,
      { sphere, stage } = this.view,
      { looked } = this;
    if (!map) return;
    const shape = `${map.rows.length} ${map.columns.length} ${map.rows[map.rows.length - 1]}`;
    if (shape !== this.shape) {
      this.shape = shape;
      const directions: number[] = [];
      for (const t of map.rows) for (const p of map.columns) directions.push(...direction(t, p));
      const gap = map.columns.length > 1 ? map.columns[1] - map.columns[0] : 0;
      sphere.shape({
        rows: map.rows.length,
        columns: map.columns.length,
        closed: Math.abs(map.columns[map.columns.length - 1] - map.columns[0] + gap - 360) < 1e-6,
        directions,
      });
    }
    const scale = this.scale();
    sphere.surface(map[looked.component], scale, `${looked.run} ${looked.state} ${shape} ${looked.component}`);
    const name = looked.component === "total" ? "total" : map.names[looked.component === "first" ? 0 : 1];
    sphere.scaleBar(scale, name);
    fill(
      stage.caption,
      `Run ${map.of.run}${map.of.state ? `, state ${map.of.state}` : ""}, ${ghz(map.of.frequency_hz ?? 0)}: ${name}, level outwards and in colour.`,
    );
    this.say(cursor.at);
  }

  /** The read-out: direction, total and both components. */
  private say(d: Vector | null): void {
    const at = d ?? cursor.at,
      i = at && this.map ? this.view.sphere.nearest(at) : -1;
    if (!at || !this.map || i < 0) {
      fill(this.view.stage.readout);
      return;
    }
    const map = this.map,
      w = (v: number | null) => (v === null ? "-" : v.toFixed(2));
    const cell = direction(map.rows[Math.floor(i / map.columns.length)], map.columns[i % map.columns.length]);
    const near = cell[0] * at[0] + cell[1] * at[1] + cell[2] * at[2] > Math.cos((3 * Math.PI) / 180);
    const told =
      near && map.total[i] !== null
        ? `total ${w(map.total[i])} ${this.looked.unit}, ${map.names[0]} ${w(map.first[i])}, ${map.names[1]} ${w(map.second[i])}`
        : "not measured";
    fill(this.view.stage.readout, `${this.view.sphere.words(near ? cell : at)}: ${told}`);
  }

  controls(): HTMLElement {
    const { looked } = this;
    const names = BASES.map(([key, text]): [string, string] => [key, text]);
    return h("div", { class: "row" },
      choice("components", names, looked.basis, (v) => {
        looked.basis = v as typeof looked.basis;
        looked.basisChosen = true;
        this.changed();
      }),
      choice("shown", SHOWN, looked.component, (v) => {
        looked.component = v as Component;
        this.changed();
      }),
      slider("range", 20, 80, 10, looked.span, (v) => {
        looked.span = v;
        this.changed();
      }, " dB")); // prettier-ignore
  }
}
