/** The large picture of the align page: the range from above, the map of a beam search, or the live reading. */

import { Chart } from "../draw/chart";
import { letters, lines } from "../draw/colours";
import { button, fill, h, number, onResize, table } from "../draw/dom";
import { LevelMap } from "../draw/map";
import { covering } from "../draw/scales";
import type { Status } from "../live/live";
import type { BeamWords, FlipWords, Grid } from "../request/types";
import { Panel } from "../shell/panel";
import { mountFromAbove, type Above } from "./mountabove";
import { rangeFromAbove } from "./picture";

export type Showing = "above" | "beam" | "live";
const NAMES: [Showing, string][] = [
  ["above", "range from above"],
  ["beam", "beam map"],
  ["live", "live reading"],
];
const SPAN = 40,
  MOST = 400,
  /** Between a card's edge and what it holds, pixels where letters have their usual size. */
  PADDING = 12;

export class AlignScreen {
  readonly panel = new Panel("Range from above", "card align-screen");
  private showing: Showing = "above";
  /** The width that the picture was drawn for. */
  private drawnFor = 640;
  private rolls = true;
  /** Until the chamber was read nobody knows what it looks like from above. */
  private chamber: "being read" | "read" | "not read" = "being read";
  private mount: Above | null = null;
  /** Where the joints of a mount stand, and since when. */
  private joints: { values: number[]; words: string } = { values: [], words: "All joints drawn at zero" };
  private flips: FlipWords[] = [];
  private beam: BeamWords | null = null;
  private maps = [new LevelMap("coarse look of the beam search"), new LevelMap("fine look of the beam search")];
  private liveMap = new LevelMap("levels of the beam search");
  private watched: { run: string; grid: Grid; frame: Float32Array } | null = null;
  private readings: { at: number; db: number }[] = [];
  private chart = new Chart("level of the last readings");
  private last: Status | null = null;
  private buttons = NAMES.map(([key, words]) => button(words, () => this.show(key), "tiny"));

  constructor() {
    this.panel.tools.append(...this.buttons);
    this.show("above");
    onResize(this.panel.element, () => {
      if (this.showing === "above" && this.room() !== this.drawnFor) this.draw();
    });
  }

  /** What the positioner is: only a roll axis can be told by a flip test, and no flip test is made on a mount with joints. */
  positioner(rolls: boolean, mount: Above | null): void {
    this.rolls = rolls;
    this.mount = mount;
    this.chamber = "read";
    if (this.showing === "above") this.show("above");
  }

  /** The chamber could not be read: its fault stands with the instruments. */
  unread(): void {
    this.chamber = "not read";
    if (this.showing === "above") this.draw();
  }

  /** Where the joints of a mount stand, degrees and millimetres. */
  pose(values: number[]): void {
    if (!values.length || String(values) === String(this.joints.values)) return;
    this.joints = { values, words: `Joints as told at ${new Date().toLocaleTimeString()}` };
    if (this.showing === "above" && this.mount) this.draw();
  }

  /** A flip test that was read; the one before it is the picture's "before". */
  flip(found: FlipWords, show = true): void {
    this.flips = [...this.flips.filter((one) => one.run !== found.run), found].sort(
      (a, b) => a.measured_at - b.measured_at,
    );
    if (show || this.showing === "above") this.show("above");
  }

  found(beam: BeamWords): void {
    this.beam = beam;
    this.watched = null;
    this.show("beam");
  }

  /** Levels of a look that is under way. */
  look(run: string, grid: Grid, frame: Float32Array): void {
    const first = this.watched?.run !== run;
    this.watched = { run, grid, frame };
    if (first) this.show("beam");
    else if (this.showing === "beam") this.draw();
  }

  /** A reading: of a sweep that was taken by hand, or of the scan that runs. */
  reading(db: number): void {
    this.readings = [...this.readings, { at: Date.now() / 1000, db }].slice(-MOST);
    if (this.showing === "live") this.draw();
  }

  status(s: Status): void {
    const other = this.last?.measured !== s.measured || this.last?.run !== s.run;
    this.last = s;
    if (s.running && other && typeof s.level_db === "number") this.reading(s.level_db);
    else if (this.showing === "live") this.draw();
  }

  show(what: Showing): void {
    this.showing = what;
    NAMES.forEach(([key, words], i) => {
      this.buttons[i].setAttribute("aria-pressed", String(key === what));
      if (key === what) {
        fill(this.panel.element.querySelector("h2")!, words[0].toUpperCase() + words.slice(1));
        this.panel.element.setAttribute("aria-label", words);
      }
    });
    this.draw();
  }

  /** Room for a picture in its own pixels: its words keep their size whatever the window. */
  private room(): number {
    const wide = this.panel.element.clientWidth;
    return wide ? Math.max(260, Math.round(wide / letters() - 2 * PADDING)) : 640;
  }

  private draw(): void {
    this.drawnFor = this.room();
    if (this.showing === "above" && this.chamber !== "read")
      this.panel.empty(
        this.chamber === "being read" ? "The chamber is being read." : "The chamber could not be read: see below.",
      );
    else if (this.showing === "above" && this.mount)
      this.panel.show(
        { key: "above", words: "as declared in chamber.toml" },
        mountFromAbove(this.mount, this.joints.values, this.joints.words, this.drawnFor),
      );
    else if (this.showing === "above") {
      const words = this.flips.length ? `flip test${this.flips.length > 1 ? "s" : ""} ${this.flips.slice(-2).map((one) => one.run).join(", ")}` : "not measured yet"; // prettier-ignore
      this.panel.show({ key: "above", words }, rangeFromAbove(this.rolls, this.flips, this.drawnFor));
    } else if (this.showing === "beam") this.drawBeam();
    else this.drawLive();
  }

  private drawBeam(): void {
    if (this.watched) {
      const { run, grid, frame } = this.watched,
        known = frame.filter((v) => !Number.isNaN(v));
      this.panel.show({ key: run, words: `run ${run}, under way` }, this.liveMap.element, h("p", { class: "small quiet" }, `${known.length} of ${frame.length} directions; empty cells were not looked at yet.`)); // prettier-ignore
      const high = known.length ? Math.ceil(known.reduce((a, b) => Math.max(a, b), -Infinity) / 5) * 5 : 0;
      draw(this.liveMap, grid.columns, grid.rows, frame, high, `levels of ${run}`);
      return;
    }
    const beam = this.beam;
    if (!beam) {
      this.panel.empty("No beam search was read. A look draws its levels here as they come.");
      return;
    }
    this.panel.show({ key: beam.run, words: `beam search ${beam.run}` }, ...beam.maps.map((_, i) => this.maps[i].element), ...beam.sentences.map((s) => h("p", { class: "small" }, s))); // prettier-ignore
    const tops = beam.maps.flatMap((m) => m.level_db).filter((v): v is number => v !== null),
      high = Math.ceil(Math.max(-200, ...tops) / 5) * 5;
    beam.maps.forEach((m, i) => {
      draw(this.maps[i], m.azimuth_deg, m.elevation_deg, m.level_db, high, `${m.stage} look of ${beam.run}`);
      this.maps[i].point(beam.beam_deg ? { row: beam.beam_deg[1], column: beam.beam_deg[0] } : null);
    });
  }

  private drawLive(): void {
    const s = this.last,
      now = this.readings[this.readings.length - 1];
    const axes = (s?.axes ?? []).map((a, i) => [a, `${number(s?.position_deg?.[i], 2)}°`]);
    const told = h("div", { class: "row" }, h("span", { class: "big" }, now ? `${number(now.db, 1)} dB` : "-"), h("span", { class: "quiet" }, now ? `S21, ${new Date(1000 * now.at).toLocaleTimeString()}` : "no reading yet")); // prettier-ignore
    this.panel.show(
      { key: "live", words: s?.hand ? s.hand.text : s?.run ? `run ${s.run}: ${s.state}` : "" },
      told,
      this.readings.length > 1 && this.chart.element,
      axes.length > 0 && table(["axis", "readout"], axes),
      !now &&
        h("p", { class: "quiet" }, "Readings come with a sweep (A signal is there), a flip test or a beam search."),
    );
    if (this.readings.length < 2) return;
    const x = this.readings.map((one) => one.at - this.readings[0].at),
      values = this.readings.map((one) => one.db);
    this.chart.draw({ x, lines: [{ name: "level", values, colour: lines().co, points: x.length < 60 }], xName: "time / s", yName: "S21 / dB", yWhole: covering(values, 2), height: 220, peakOf: 0, digits: 1 }); // prettier-ignore
  }
}

function draw(map: LevelMap, columns: number[], rows: number[], values: ArrayLike<number | null>, high: number, name: string): void {
  map.draw({ rows, columns, values, rowName: "elevation / deg", columnName: "azimuth / deg", low: high - SPAN, high, unit: "dB", flip: true, height: 180 }, name);
} // prettier-ignore
