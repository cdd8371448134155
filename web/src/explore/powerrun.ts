/** A run of levels without phase: the total over its grid as a surface and a map, and the figures that power alone gives. */

import { choice, fill, h, slider, table } from "../draw/dom";
import { LevelMap } from "../draw/map";
import { post } from "../request/server";
import type { PowerView } from "../request/types";
import { direction, thetaPhi, type Vector } from "../scene/angles";
import { numberOf, put } from "../shell/address";
import { cursor } from "../shell/cursor";
import { Panel } from "../shell/panel";
import type { Explorer } from "./explore";
import { interval, kin, spread, valueCell } from "./figures";
import { ghz, nearestOf } from "./state";

export class PowerRunView {
  private panel = new Panel("Total of both polarizations", "card tab-card");
  private figures = new Panel("Figures", "card figures-panel");
  private tools = h("div", { class: "controls row" });
  private map = new LevelMap("total level over all directions");
  private frequency: number | null = null;
  /** The frequency that the address names, until it was found among the run's. */
  private wanted = numberOf("f");
  private stopCursor: () => void;
  readonly element = h("div", {}, this.tools, this.panel.element, this.figures.element);

  constructor(private explorer: Pick<Explorer, "looked" | "view">) {
    this.map.clicked = (at) => cursor.pin(direction(at.row, at.column));
    this.map.moved = (at) => cursor.hover(at && direction(at.row, at.column));
    this.stopCursor = cursor.watch((at) => this.map.point(at && this.place(at)));
  }

  leave(): void {
    this.stopCursor();
    this.panel.leave();
    this.figures.leave();
  }

  show(): void {
    const { looked } = this.explorer,
      state = looked.state ? `, state ${looked.state}` : "",
      subject = {
        key: `${looked.run}/${looked.state ?? ""}|${this.frequency ?? ""}`,
        words: `run ${looked.run}${state}`,
      };
    const asked = { ...looked.one(), frequency: this.frequency };
    void this.panel
      .ask(
        subject,
        (signal) => post("/api/power", asked, signal),
        (found) => (this.elsewhere(found) ? [] : this.draw(found, subject)),
        { keep: true },
      )
      .then((found) => found && fill(this.panel.subject, `${subject.words}, ${ghz(found.of.frequency_hz ?? 0)}`));
  }

  private draw(found: PowerView, subject: { key: string; words: string }): Node[] {
    const at = `${subject.words}, ${ghz(found.of.frequency_hz ?? 0)}`;
    this.controls(found);
    const here = kin(found.figures.filter((f) => Math.abs(f.frequency_hz - (found.of.frequency_hz ?? 0)) < 1));
    const rows = here.map((f) => [h("span", { attrs: { title: f.definition } }, f.label), valueCell(f), interval(f)]);
    this.figures.show(
      { key: subject.key, words: at },
      spread(table(["figure", "value", "95 % interval"], rows, "figures"), here),
    );
    const known = found.total.filter((v): v is number => v !== null),
      high = Math.ceil(known.reduce((a, b) => Math.max(a, b), -200) / 5) * 5,
      scale = { low: high - this.explorer.looked.span, high, unit: found.unit };
    this.onSphere(found, scale, at);
    this.map.draw(
      { rows: found.rows, columns: found.columns, values: found.total, rowName: "theta / deg", columnName: "phi / deg", ...scale },
      `total of ${found.of.run}`,
    ); // prettier-ignore
    return [
      h(
        "p",
        { class: "small" },
        "The receiver gave levels without phase: no polarization, no phase centre, no transform.",
      ),
      this.map.element,
    ];
  }

  private controls(found: PowerView): void {
    if (this.tools.childElementCount) return;
    const { looked } = this.explorer,
      all = found.all_hz,
      now = all.findIndex((f) => Math.abs(f - (found.of.frequency_hz ?? 0)) < 1);
    fill(
      this.tools,
      all.length > 1 &&
        slider("frequency", 0, all.length - 1, 1, now, (i) => this.change(i, all), "", (i) => ghz(all[i])),
      found.states.length > 1 &&
        choice("state", found.states.map((s) => [s, s]), looked.state ?? found.states[0], (s) => {
          looked.state = s;
          looked.keep();
          this.show();
        }),
    ); // prettier-ignore
  }

  private change(index: number, all: number[]): void {
    this.frequency = index;
    put({ f: String(all[index] / 1e9) });
    this.show();
  }

  /** The address names another frequency of this run: that one is asked for instead. */
  private elsewhere(found: PowerView): boolean {
    const index = this.wanted === null ? -1 : nearestOf(found.all_hz, this.wanted);
    this.wanted = null;
    if (index < 0 || Math.abs(found.all_hz[index] - (found.of.frequency_hz ?? 0)) < 1) return false;
    this.change(index, found.all_hz);
    return true;
  }

  private place([x, y, z]: Vector): { row: number; column: number } {
    const [theta, phi] = thetaPhi([x, y, z]);
    return { row: theta, column: (phi + 360) % 360 };
  }

  private onSphere(found: PowerView, scale: { low: number; high: number; unit: string }, at: string): void {
    const { sphere, stage } = this.explorer.view,
      directions: number[] = [],
      { rows, columns } = found;
    for (const t of rows) for (const p of columns) directions.push(...direction(t, p));
    const step = columns.length > 1 ? columns[1] - columns[0] : 0,
      closed = Math.abs(columns[columns.length - 1] - columns[0] + step - 360) < 1e-6;
    sphere.shape({ rows: rows.length, columns: columns.length, closed, directions });
    sphere.surface(found.total, scale, `power ${at}`);
    sphere.scaleBar(scale, "total");
    fill(stage.caption, `${at[0].toUpperCase()}${at.slice(1)}: total level outwards and in colour, without phase.`);
    stage.hovered = (d) => {
      cursor.hover(d);
      const level = (i: number) => (found.total[i] === null ? null : `${found.total[i]!.toFixed(2)} ${scale.unit}`);
      fill(stage.readout, d ? sphere.told(d, 0.75 * Math.max(step, 4), level) : "");
    };
  } // prettier-ignore
}
