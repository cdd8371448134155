/** A great-circle cut through the peak: components, masks, other runs beside it, the difference on an axis of its own. */

import { Chart, type Line } from "../draw/chart";
import { lines as inks } from "../draw/colours";
import { button, fill, h, number, slider, table } from "../draw/dom";
import { polar } from "../draw/polar";
import { covering } from "../draw/scales";
import { post } from "../request/server";
import type { CutAnswer, Difference, Masks } from "../request/types";
import { cursor } from "../shell/cursor";
import { agrees, Panel } from "../shell/panel";
import { words } from "../shell/session";
import { combine, DEG, dot, type Vector } from "../scene/angles";
import type { Explorer, Tab } from "./explore";
import { value, put } from "../shell/address";

type Beside = { run: string; cut: CutAnswer | null; difference: Difference | null; why: string };
type Content = { cut: CutAnswer; masks: Masks | null; beside: Beside[] };

export class CutsTab implements Tab {
  private panel = new Panel("Cut through the peak", "card tab-card");
  private chart = new Chart("cut");
  private apart = new Chart("difference");
  readonly element = h("div", {}, this.panel.element);
  private round = value("polar") === "1";
  private marks: number[] = [];
  private stopCursor: () => void;
  private cut: CutAnswer | null = null;

  constructor(private explorer: Explorer) {
    this.chart.moved = (x) => cursor.hover(x === null || !this.cut ? null : this.directionAt(x));
    this.chart.clicked = (x) => {
      this.marks = [...this.marks.slice(-1), x];
      if (this.cut) cursor.pin(this.directionAt(x));
      this.show();
    };
    this.stopCursor = cursor.watch((at) => this.follow(at));
    this.tools();
  }

  leave(): void {
    this.stopCursor();
    this.panel.leave();
  }

  private directionAt(angle: number): Vector {
    const { peak, tangent } = this.cut!;
    return combine(Math.cos(angle * DEG), peak as Vector, Math.sin(angle * DEG), tangent as Vector);
  }

  /** Put the chart's cursor where the shared one lies, if it lies on this cut. */
  private follow(at: Vector | null): void {
    if (!this.cut || !at) {
      this.chart.point(null);
      return;
    }
    const a = dot(at, this.cut.peak as Vector),
      b = dot(at, this.cut.tangent as Vector);
    const onCut = a * a + b * b > Math.cos(2 * DEG) ** 2;
    const x = onCut ? Math.atan2(b, a) / DEG : null;
    this.chart.point(x);
    this.apart.point(x);
  }

  private tools(): void {
    const { looked } = this.explorer;
    // A device of circular polarization has no E plane: its cuts count from the declared direction.
    const round = looked.known?.basis === "circular",
      [first, second] = round ? ["declared", "at right angles"] : ["E", "H"];
    const plane = slider(round ? "plane, from the declared one" : "plane, from E towards H", 0, 175, 5, looked.plane, (v) => {
      looked.plane = v;
      this.explorer.changed();
    }, "°"); // prettier-ignore
    const set = (v: number) => {
      looked.plane = v;
      const input = plane.querySelector("input")!;
      input.value = String(v);
      input.dispatchEvent(new Event("input"));
    };
    const shape = button(this.round ? "rectangular" : "polar", () => {
      this.round = !this.round;
      put({ polar: this.round ? "1" : "" });
      fill(shape, this.round ? "rectangular" : "polar");
      this.show();
    });
    const others = this.explorer.runs().filter((name) => name !== looked.run);
    const boxes = others.map((name) => {
      const box = h("input", { attrs: { type: "checkbox", checked: looked.beside.includes(name) }, on: { change: () => {
        looked.beside = box.checked ? [...looked.beside, name].slice(-4) : looked.beside.filter((n) => n !== name);
        this.explorer.changed();
      } } }); // prettier-ignore
      return h("label", { class: "row small" }, box, name);
    });
    this.element.prepend(
      h(
        "div",
        { class: "row no-print" },
        plane,
        button(first, () => set(0)),
        button(second, () => set(90)),
        shape,
      ),
      boxes.length
        ? h(
            "div",
            { class: "row no-print", attrs: { role: "group", "aria-label": "beside" } },
            h("span", { class: "small quiet" }, "beside:"),
            ...boxes,
          )
        : "",
    );
  }

  show(): void {
    const { looked } = this.explorer;
    const ask = { ...looked.body(), frequency: looked.frequency, plane_deg: looked.plane, basis: looked.basis };
    const expect = looked.of(true),
      others = [...looked.beside];
    const question = async (signal: AbortSignal): Promise<Content> => {
      const cut = await post("/api/cut", ask, signal);
      const masks = looked.known?.specification && !looked.tried ? await post("/api/masks", ask, signal) : null;
      const beside = await Promise.all(others.map(async (run): Promise<Beside> => {
        try {
          // The same state and the same frequency of the other run, or the reason why not.
          const other = await post("/api/cut", { ...ask, run, off: [], gate_ns: null }, signal);
          if (!agrees(other.of, { ...expect, run })) return { run, cut: null, difference: null, why: `was not measured at ${(expect.frequency_hz! / 1e9).toFixed(3)} GHz` };
          const difference = looked.tried ? null : await post("/api/difference", { ...ask, other: run }, signal);
          return { run, cut: other, difference, why: "" };
        } catch (error) {
          if (signal.aborted) throw error;
          return { run, cut: null, difference: null, why: words(error) };
        }
      })); // prettier-ignore
      return { cut, masks, beside };
    };
    void this.panel
      .ask(
        looked.subject(true, `${looked.plane} ${looked.basis} ${others.join()} ${this.round}`),
        question,
        (found) => this.draw(found),
        { keep: true, of: (a) => a.cut.of, expect },
      )
      .then((found) => {
        if (found) this.follow(cursor.at);
      });
  }

  private draw({ cut, masks, beside }: Content): (Node | null | false)[] {
    const { looked, pattern } = this.explorer,
      c = inks();
    this.cut = cut;
    const series: Line[] = [
      { name: cut.names[0], values: cut.first, colour: c.co },
      { name: cut.names[1], values: cut.second, colour: c.cross, dash: "6 3" },
    ];
    // Where components have no direction of their own, the total is what can be read.
    if (cut.singular) series.push({ name: "total", values: cut.total, colour: c.ink, dash: "2 2", width: 1.2 });
    const others = [c.other, c.good, c.band, c.bad];
    beside.forEach(
      (one, i) =>
        one.cut &&
        series.push({ name: `${cut.names[0]} of ${one.run}`, values: one.cut.first, colour: others[i], width: 1.3 }),
    );
    for (const mask of masks?.masks ?? [])
      series.push({ name: `mask: ${mask.name}`, values: mask.level, colour: c.ink, width: 1.2 });
    const top =
      Math.ceil(
        Math.max(cut.peak_dbi, ...[...cut.total, ...beside.flatMap((b) => b.cut?.total ?? [])].map((v) => v ?? -200)) /
          5,
      ) * 5;
    // Room for the word beside the peak.
    const upper = cut.peak_dbi > top - 2.5 ? top + 5 : top;
    // The marker stands on the co-polar trace; on the total only where the peak lies in the gap.
    const strongest = cut.total.reduce<number>((best, v, i) => ((v ?? -999) > (cut.total[best] ?? -999) ? i : best), 0),
      hidden = cut.singular !== "" && cut.first[strongest] === null;
    const name = `cut of ${looked.run} at ${looked.plane}°`;
    const data = {
      x: cut.angle_deg,
      lines: series,
      xName: `angle from the peak, plane ${looked.plane}° / deg`,
      yName: `level / ${looked.unit}`,
      yWhole: [top - looked.span - 5, upper] as [number, number],
      xWhole: [-180, 180] as [number, number],
      peakOf: hidden ? 2 : 0,
      height: 340,
      marks: this.marks.map((at, i) => ({ at, colour: c.focus, text: `${i + 1}` })),
    };
    if (!this.round) this.chart.draw(data, name);
    const main = this.round ? polar(name, cut.angle_deg, series, top, looked.span) : this.chart.element;
    void pattern;
    return [
      main,
      this.readings(series, cut),
      ...this.besides(beside, cut),
      table(
        [`peak / ${looked.unit}`, "at theta, phi", "half-power beamwidth", "first side lobe", "first null"],
        [
          [
            number(cut.peak_dbi, 2),
            `${number(cut.peak_theta_deg, 1)}°, ${number(cut.peak_phi_deg, 1)}°`,
            cut.beamwidth_deg === null
              ? "-"
              : `${number(cut.beamwidth_deg, 2)}° (${number(cut.edges_deg[0], 1)}° to ${number(cut.edges_deg[1], 1)}°)`,
            cut.side_lobe_db === null ? "-" : `${number(cut.side_lobe_db, 1)} dB`,
            cut.null_db === null ? "-" : `${number(cut.null_db, 1)} dB`,
          ],
        ],
        "figures",
      ),
      cut.why !== "" &&
        h("p", { class: "small warn-text" }, `Side lobe ${cut.why}. The cut goes through one of the maxima.`),
      cut.singular !== "" && h("p", { class: "small warn-text" }, cut.singular),
      h(
        "p",
        { class: "small quiet" },
        "Drag to enlarge (along one axis, or a box), Shift and drag to move, double-click for all of it; a click sets the cursor and a mark.",
      ),
    ];
  }

  private besides(beside: Beside[], cut: CutAnswer): Node[] {
    if (!beside.length) return [];
    const c = inks(),
      colours = [c.other, c.good, c.band, c.bad];
    const told = beside.map((b) =>
      h(
        "p",
        { class: "small" },
        h("strong", {}, b.run),
        b.why
          ? `: ${b.why}`
          : b.difference
            ? `: ${number(b.difference.difference_db, 1)} dB re peak is left of the fields as they stand; only the phase of each frequency is matched, no turn, place or level (Several runs can match those)`
            : ": beside a trial no difference is worked out",
      ),
    );
    const drawn = beside.flatMap((b, i) =>
      b.difference ? [{ name: `difference to ${b.run}`, values: b.difference.total, colour: colours[i] }] : [],
    );
    if (!drawn.length) return told;
    this.apart.draw(
      {
        x: cut.angle_deg,
        lines: drawn,
        xName: "angle from the peak / deg",
        yName: `difference / ${this.explorer.looked.unit}`,
        xWhole: [-180, 180],
        yWhole: covering(
          drawn.flatMap((l) => l.values.map((v) => (v === null ? null : Math.max(v, -90)))),
          10,
        ),
        height: 200,
        digits: 1,
      },
      `difference of ${this.explorer.looked.run}`,
    );
    return [h("h3", {}, "Difference between the fields"), this.apart.element, ...told];
  }

  private readings(series: Line[], cut: CutAnswer): HTMLElement | null {
    if (!this.marks.length) return null;
    const rows = this.marks.map((mark, i) => {
      const k = Math.max(0, Math.min(cut.angle_deg.length - 1, Math.round((mark + 180) / 0.5)));
      const a = series[0].values[k],
        first = series[0].values[Math.round((this.marks[0] + 180) / 0.5)];
      const apart =
        i && a !== null && first !== null ? `${number(mark - this.marks[0], 1)}°, ${number(a - first, 2)} dB` : "";
      return [`${i + 1}`, `${number(mark, 1)}°`, ...series.map((s) => number(s.values[k], 2)), apart];
    });
    return h("div", {}, table(["mark", "angle", ...series.map((s) => s.name), "from mark 1"], rows), button("no marks", () => {
      this.marks = [];
      this.show();
    }, "tiny")); // prettier-ignore
  }
}
