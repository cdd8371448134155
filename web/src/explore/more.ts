/** The other views of a run: aperture, impulse response, recipe, findings, verdict, report. */

import { Chart, type Mark } from "../draw/chart";
import { levels, lines as inks, phases, shade } from "../draw/colours";
import { button, fill, h, number, slider, table } from "../draw/dom";
import { LevelMap } from "../draw/map";
import { post } from "../request/server";
import type { Effects, FaceAnswer, Impulse, VerdictsAnswer } from "../request/types";
import { jobLine, longWork } from "../shell/jobs";
import { Panel } from "../shell/panel";
import { againDialog, namedAgain } from "../scan/start";
import { may, session } from "../shell/session";
import type { Explorer, Tab } from "./explore";

abstract class OnePanel implements Tab {
  protected panel: Panel;
  readonly element: HTMLElement;

  constructor(
    protected explorer: Explorer,
    title: string,
  ) {
    this.panel = new Panel(title, "card tab-card");
    this.element = this.panel.element;
  }

  abstract show(): void;

  leave(): void {
    this.panel.leave();
  }
}

export class ApertureTab extends OnePanel {
  private size = new LevelMap("amplitude on the face");
  private turn = new LevelMap("phase on the face");
  private grid = h("canvas", {
    class: "elements",
    attrs: { role: "img", "aria-label": "excitation of every element, dB" },
  });

  constructor(explorer: Explorer) {
    super(explorer, "Waves drawn back to the device's face");
  }

  show(): void {
    const { looked } = this.explorer;
    void this.panel.ask(looked.subject(true), (signal) => post("/api/aperture", { ...looked.body(), frequency: looked.frequency }, signal), ({ face }) => {
      if (!face) return [h("p", {}, "device.toml declares no [elements]: there is no face to draw the waves back to.")];
      this.draw(face);
      return [h("div", { class: "two" }, h("div", {}, h("h3", {}, "Amplitude"), this.size.element), h("div", {}, h("h3", {}, "Phase"), this.turn.element)), h("h3", {}, "Excitation of every element / dB"), this.grid, ...(face.suspects.length ? face.suspects.map((s) => h("p", { class: "bad" }, s)) : [h("p", {}, "No element stands out.")])];
    }, { keep: true, of: (a) => a.of, expect: looked.of(true) }); // prettier-ignore
  }

  private draw(face: FaceAnswer): void {
    const names = {
      rows: face.y_mm,
      columns: face.x_mm,
      rowName: "y / mm",
      columnName: "x / mm",
      flip: true,
      square: true,
    };
    this.size.draw({ ...names, values: face.level_db, low: -25, high: 0, unit: "dB" });
    this.turn.draw({ ...names, values: face.phase_deg, low: -180, high: 180, unit: "deg", ramp: phases });
    elements(this.grid, face.elements, face.excitation_db);
  }
}

function elements(canvas: HTMLCanvasElement, places: number[][], db: number[]): void {
  const width = 340,
    scale = window.devicePixelRatio || 1;
  canvas.style.width = canvas.style.height = `${width}px`;
  canvas.width = canvas.height = width * scale;
  const g = canvas.getContext("2d")!,
    all = places.flat();
  g.scale(scale, scale);
  const low = Math.min(...all),
    high = Math.max(...all),
    pitch = (high - low) / Math.max(1, Math.round(Math.sqrt(places.length)) - 1);
  const to = (v: number) => ((v - low + pitch / 2) / (high - low + pitch)) * width,
    cell = (pitch / (high - low + pitch)) * width;
  g.font = "11px system-ui";
  g.textAlign = "center";
  g.textBaseline = "middle";
  places.forEach(([x, y], i) => {
    const s = 3 * Math.max(0, shade(db[i], -15, 0));
    g.fillStyle = `rgb(${levels[s]} ${levels[s + 1]} ${levels[s + 2]})`;
    g.fillRect(to(x) - cell / 2 + 1, width - to(y) - cell / 2 + 1, cell - 2, cell - 2);
    g.fillStyle = db[i] > -9 ? "#12191f" : "#ffffff";
    g.fillText(db[i].toFixed(1), to(x), width - to(y));
  });
}

export class ImpulseTab extends OnePanel {
  private chart = new Chart("impulse response");

  constructor(explorer: Explorer) {
    super(explorer, "Impulse response of the strongest check");
  }

  show(): void {
    const { looked } = this.explorer,
      count = looked.known?.frequency_hz.length ?? 0;
    if (count < 3) {
      const has = count === 1 ? "1 frequency" : `${count} frequencies`;
      this.panel.empty(`This run holds ${has}; an impulse response needs at least 3.`, looked.subject(false));
      return;
    }
    void this.panel.ask(
      looked.subject(false),
      (signal) => post("/api/impulse", looked.one(), signal),
      (found) => this.draw(found),
      { of: (a) => ({ ...a.of, state: looked.state }), expect: looked.of(false) },
    );
  }

  private draw(found: Impulse): Node[] {
    const { looked, open } = this.explorer,
      [least, most] = found.widths_ns,
      fine = (v: number) => Math.round(100 * v) / 100;
    let centre = fine(looked.gate?.[0] ?? found.strongest_ns),
      width = fine(looked.gate?.[1] ?? Math.max(least, 0.5 * most));
    const paint = () => {
      const c = inks(),
        marks: Mark[] =
          most > 0
            ? [
                {
                  at: centre - width / 2,
                  to: centre + width / 2,
                  colour: c.cross,
                  text: looked.gate ? "gate, tried" : "gate",
                },
              ]
            : [];
      this.chart.draw(
        {
          x: found.time_ns,
          lines: [{ name: "strongest check", values: found.level_db, colour: c.co }],
          xName: "time / ns",
          yName: "level / dB",
          height: 320,
          yWhole: [-70, 5],
          marks,
          peakOf: 0,
          digits: 2,
        },
        `impulse response of ${looked.run}`,
      );
    };
    this.chart.clicked = (x) => {
      centre = fine(x);
      this.show();
    };
    paint();
    const note = h(
      "p",
      { class: "small quiet" },
      "Hann window. A gate tried here changes every view and figure of this page, and nothing on disk; recipe.toml keeps one.",
    );
    if (most <= 0)
      return [this.chart.element, note, h("p", { class: "small quiet" }, "A gate needs five frequencies or more.")];
    const step = fine((most - least) / 200) || 0.01,
      top = Math.floor(most / step) * step;
    return [this.chart.element, h("div", { class: "row" },
      slider("gate, middle", 0, fine(found.time_ns[found.time_ns.length - 1]), step, centre, (v) => { centre = v; paint(); }, " ns"),
      slider("gate, width", Math.ceil(least / step) * step, top, step, width, (v) => { width = v; paint(); }, " ns"),
      button("try this gate", () => void open(looked.run, looked.state, looked.off, [centre, width]), "main"),
      ...(looked.gate ? [button("no gate", () => void open(looked.run, looked.state, looked.off, null))] : [])),
      h("p", { class: "small" }, `${fine(least)} ns is the narrowest that the span resolves, ${fine(most)} ns the widest before echoes repeat.`), note]; // prettier-ignore
  }
}

export class RecipeTab extends OnePanel {
  constructor(explorer: Explorer) {
    super(explorer, "Steps of the recipe");
  }

  show(): void {
    const { looked, open } = this.explorer,
      known = looked.known!,
      asked = looked.one();
    const boxes = known.steps.map((step) => {
      const box = h("input", {
        attrs: { type: "checkbox", checked: step.on, disabled: !step.may_change },
        on: {
          change: () =>
            void open(
              looked.run,
              looked.state,
              box.checked ? looked.off.filter((n) => n !== step.name) : [...looked.off, step.name],
              looked.gate,
            ),
        },
      });
      return h("label", { class: "row" }, box, step.name);
    });
    const room = h("div");
    const all = button("what does every step do?", () => {
      all.disabled = true;
      longWork("/api/effects", asked, (job) => fill(room, jobLine(job))).then(
        (found) => {
          // The tab may have been left and made anew meanwhile: whoever shows this run now shows what came.
          EFFECTS.set(JSON.stringify(asked), found);
          if (looked.run === asked.run) this.explorer.changed();
        },
        (error: unknown) => {
          all.disabled = false;
          fill(room);
          this.panel.fault(error);
        },
      );
    });
    all.disabled = !may("operate");
    const kept = EFFECTS.get(JSON.stringify(asked));
    if (kept) fill(room, effects(kept));
    this.panel.show(
      looked.subject(false),
      h("p", {}, "Switch a step off, and every view and figure follows. The record itself is never changed."),
      h("div", { class: "steps-list" }, ...boxes),
      all,
      room,
    );
  }
}

/** What every step does, by the run that was asked about, for as long as the page is open. */
const EFFECTS = new Map<string, Effects>();

function effects(found: Effects): HTMLElement {
  const steps = Object.keys(found.without);
  const rows = Object.keys(found.whole).map((name) => [
    found.labels[name],
    number(found.whole[name], 3),
    ...steps.map((s) => {
      const a = found.without[s][name],
        b = found.whole[name];
      return a === null || b === null ? "-" : `${a - b >= 0 ? "+" : ""}${(a - b).toFixed(3)}`;
    }),
  ]);
  return h(
    "div",
    { class: "scroll", attrs: { tabindex: 0, role: "region", "aria-label": "effect of every step" } },
    table(["figure", "all steps", ...steps.map((s) => `without ${s}`)], rows),
  );
}

/** A finding that names slices leads to measuring them again. */
function againButton(run: string, text: string): HTMLElement | null {
  const slices = namedAgain(text);
  if (!slices || !may("operate")) return null;
  const what = slices === "reference" ? "the reference" : `slices ${slices}`;
  return h(
    "span",
    {},
    " ",
    button(`measure ${what} again`, () => againDialog(run, slices), "tiny"),
  );
}

export class FindingsTab extends OnePanel {
  constructor(explorer: Explorer) {
    super(explorer, "Self-consistency checks");
  }

  show(): void {
    const { looked } = this.explorer;
    void this.panel.ask(
      looked.subject(false),
      (signal) => post("/api/findings", looked.one(), signal),
      ({ rows }) => [
        table(
          ["what", "field / dB re peak", "in words"],
          rows.map((f) => [
            f.topic,
            f.level_db <= -199 ? "" : number(f.level_db, 1),
            h("span", {}, f.text, againButton(looked.run, f.text)),
          ]),
        ),
      ],
      { of: (a) => a.of, expect: looked.of(false), waiting: "The data are asked what is wrong with them." },
    );
  }
}

export class VerdictTab extends OnePanel {
  constructor(explorer: Explorer) {
    super(explorer, "Verdict against limits.toml");
  }

  show(): void {
    const { looked } = this.explorer;
    if (!looked.known?.specification) {
      this.panel.empty(
        "There is no limits.toml beside the campaign: nothing to hold the run against.",
        looked.subject(false),
      );
      return;
    }
    void this.panel.ask(
      looked.subject(false),
      (signal) => post("/api/verdicts", looked.one(), signal),
      (found) => [
        found ? verdict(found) : h("p", { class: "quiet" }, "limits.toml was not held against this run yet."),
        this.judge(),
      ],
      { of: (a) => a?.of ?? null, expect: looked.of(false) },
    );
  }

  private judge(): HTMLElement {
    const { looked } = this.explorer,
      asked = looked.one(),
      place = h("div");
    const go = button("hold limits.toml against this run", () => {
      go.disabled = true;
      longWork("/api/judge", asked, (job) => fill(place, jobLine(job))).then(() => looked.run === asked.run && this.explorer.changed(), (error: unknown) => {
        go.disabled = false;
        fill(place);
        this.panel.fault(error);
      });
    }, "main"); // prettier-ignore
    go.disabled = !may("operate");
    return h("div", { class: "no-print" }, go, place);
  }
}

function verdict(found: VerdictsAnswer): HTMLElement {
  const tone = (outcome: string) => (outcome === "pass" ? "good" : outcome === "fail" ? "bad" : "warn-text");
  return h(
    "div",
    {},
    h("p", { class: `verdict ${tone(found.outcome)}` }, `${found.specification}: ${found.outcome}`),
    h(
      "p",
      { class: "small quiet" },
      `${found.document ? `${found.document}; decided` : "Decided"} by ${found.decision}.`,
    ),
    !found.current
      ? h("p", { class: "warn" }, "The record or limits.toml changed since: hold it against the run again.")
      : "",
    table(
      ["requirement", "outcome", "margin", "in words"],
      found.rows.map((r) => [
        r.requirement,
        h("strong", { class: tone(r.outcome) }, r.outcome),
        r.margin === null ? "-" : `${number(r.margin, 2)} ${r.unit}`,
        r.text,
      ]),
      "verdicts",
    ),
  );
}

export class ReportTab extends OnePanel {
  constructor(explorer: Explorer) {
    super(explorer, "Report");
  }

  show(): void {
    const { looked, again } = this.explorer,
      known = looked.known!,
      asked = looked.one(),
      place = h("div", { class: "row" });
    const state = looked.state === null ? "" : `?state=${encodeURIComponent(looked.state)}`;
    const links = () =>
      ["html", "pdf"].map((kind) =>
        h(
          "a",
          {
            attrs: {
              href: `/api/report/${session.campaign}/${looked.run}/${kind}${state}`,
              target: "_blank",
              rel: "noopener",
            },
          },
          `open the report (${kind})`,
        ),
      );
    if (known.report) fill(place, ...links());
    const write = button(
      "write the report",
      () => {
        write.disabled = true;
        longWork("/api/report", asked, (job) => fill(place, jobLine(job))).then(
          () => (looked.run === asked.run && looked.state === asked.state ? again() : undefined),
          (error: unknown) => {
            write.disabled = false;
            fill(place);
            this.panel.fault(error);
          },
        );
      },
      "main",
    );
    write.disabled = !may("operate");
    this.panel.show(
      looked.subject(false),
      h(
        "p",
        {},
        known.specification
          ? "With a verdict against limits.toml on its first page."
          : "Without a verdict: there is no limits.toml beside the campaign.",
      ),
      write,
      place,
      h(
        "p",
        { class: "small quiet" },
        "The page itself prints too (Ctrl + P): the opened view with its run, state and frequency.",
      ),
    );
  }
}
