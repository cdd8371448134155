/** Several runs on one page, as in the command line: compare, series, coverage over states, two set-ups. */

import { Chart } from "../draw/chart";
import { lines } from "../draw/colours";
import { button, choice, fill, h, number, table } from "../draw/dom";
import { csv, fileName, saved, type Columns } from "../draw/save";
import { get, post } from "../request/server";
import type { CampaignRuns, Comparison, Coverage, Series } from "../request/types";
import { jobLine, longWork } from "../shell/jobs";
import { Panel, type Subject } from "../shell/panel";
import { may, session, words } from "../shell/session";
import type { Explorer, Tab } from "./explore";

const MATCHED: ["frame" | "origin" | "level", string][] = [
  ["frame", "match the turn"],
  ["origin", "match the place"],
  ["level", "match the level"],
];

/** One piece of it: a head, what is chosen, a button, and what came of it. */
class Piece {
  readonly place = h("div", { class: "came" });
  readonly faults = h("p", { class: "faults", attrs: { role: "alert" } });
  private asked = 0;

  /** Nothing that was worked out for another choice stays. */
  clear(): void {
    this.asked++;
    fill(this.place);
    fill(this.faults);
  }

  start(work: (told: (node: Node) => void) => Promise<Node[]>): void {
    this.clear();
    const mine = this.asked;
    work((node) => mine === this.asked && fill(this.place, node)).then(
      (nodes) => mine === this.asked && fill(this.place, ...nodes),
      (error: unknown) => {
        if (mine !== this.asked) return;
        fill(this.place);
        fill(this.faults, words(error));
      },
    );
  }

  body(title: string, about: string, ...chosen: (Node | null | false)[]): HTMLElement {
    return h(
      "section",
      { class: "piece", attrs: { "aria-label": title } },
      h("h3", {}, title),
      h("p", { class: "small quiet" }, about),
      h("div", { class: "row" }, ...chosen),
      this.faults,
      this.place,
    );
  }
}

export class TogetherTab implements Tab {
  private panel = new Panel("Several runs", "card tab-card");
  readonly element = this.panel.element;

  constructor(private explorer: Explorer) {}

  leave(): void {
    this.panel.leave();
  }

  show(): void {
    const { looked } = this.explorer,
      subject: Subject = {
        ...looked.subject(false),
        words: `run ${looked.run}${looked.state ? `, ${looked.state}` : ""}`,
      };
    void this.panel.ask(subject, (signal) => get("/api/campaigns", [], signal), (all) => [
      comparing(this.explorer, all),
      overRuns(this.explorer, all),
      looked.known && looked.known.states.length > 1 ? overStates(this.explorer) : null,
      setUps(this.explorer, all),
    ]); // prettier-ignore
  }
}

function held(all: CampaignRuns[], campaign: string): string[] {
  return (all.find((c) => c.id === campaign)?.runs ?? []).filter((r) => r.record).map((r) => r.name);
}

function go(label: string, action: () => void): HTMLButtonElement {
  const one = button(label, action, "main");
  one.disabled = !may("operate");
  if (one.disabled) one.title = "a session that may operate starts this";
  return one;
}

/** Choose another run and hold every figure of both against each other. Used for runs of cuts too. */
export function comparing({ looked }: Pick<Explorer, "looked">, all: CampaignRuns[], matching = true): HTMLElement {
  const piece = new Piece(),
    others = held(all, session.campaign).filter((name) => name !== looked.run);
  if (!others.length) return piece.body("Compare", "There is no second run in this campaign to compare with.");
  let other = looked.beside[0] && others.includes(looked.beside[0]) ? looked.beside[0] : others[0];
  const matched = new Set<"frame" | "origin" | "level">();
  const boxes = MATCHED.map(([key, label]) => {
    const box = h("input", { attrs: { type: "checkbox" }, on: { change: () => {
      if (box.checked) matched.add(key);
      else matched.delete(key);
      piece.clear();
    } } }); // prettier-ignore
    return h("label", { class: "row" }, box, label);
  });
  const asked = looked.one();
  return piece.body(
    "Compare",
    "Every figure of both runs. E_n is the change over both uncertainties together; the runs agree where it is 1 or less.",
    choice("other run", others.map((n) => [n, n]), other, (name) => {
      other = name;
      piece.clear();
    }),
    ...(matching ? boxes : []),
    go("compare", () =>
      piece.start(async (told) => {
        const body = { ...asked, other, matched: [...matched] };
        return compared(await longWork("/api/compare", body, (job) => told(jobLine(job))), asked.run, other);
      }),
    ),
  ); // prettier-ignore
}

function compared(found: Comparison, run: string, other: string): Node[] {
  const at = found.middle_hz,
    rows = found.rows.filter((r) => at === null || Math.abs(r.frequency_hz - at) < 1),
    apart = found.rows.filter((r) => !r.agrees).length;
  const pm = (value: number | null, half: number | null, unit = "") =>
    value === null ? "-" : `${number(value, 2)}${half === null ? "" : ` ± ${number(half, 2)}`} ${unit}`.trim();
  // What neither of them has cannot be compared: no word of agreement stands there.
  const neither = (r: Comparison["rows"][number]) => r.value === null && r.other === null;
  const turn = found.matched.length
    ? `Matched: turned by ${found.rotation_deg.map((v) => v.toFixed(3)).join(", ")}° about x, y, z, shifted by ${found.shift_mm.map((v) => v.toFixed(3)).join(", ")} mm, ${number(found.level_db, 3)} dB.`
    : "";
  return [
    h(
      "p",
      { class: `verdict ${found.agrees ? "good" : "bad"}` },
      found.agrees ? "All figures agree." : `${apart} of ${found.rows.length} figures do not agree.`,
    ),
    h(
      "p",
      { class: "small" },
      found.difference_db === null
        ? "Figure by figure; nothing is matched."
        : `The fields differ by ${number(found.difference_db, 1)} dB rms re peak at ${ghz(at)}. ${turn}`,
    ),
    scroll(
      "figures of both runs",
      table(
        ["figure", run, other, "change", "agrees"],
        rows.map((r) => [
          r.label,
          pm(r.value, r.expanded, r.unit),
          pm(r.other, r.other_expanded, r.unit),
          r.change === null ? r.reason || "-" : pm(r.change, r.change_expanded),
          neither(r) ? "-" : h("strong", { class: r.agrees ? "good" : "bad" }, r.agrees ? "yes" : "no"),
        ]),
      ),
    ),
    keepTable(`compared ${run} ${other}`, () => [
      { name: "figure", values: found.rows.map((r) => r.label) },
      { name: "frequency / Hz", values: found.rows.map((r) => r.frequency_hz) },
      { name: run, values: found.rows.map((r) => r.value) },
      { name: other, values: found.rows.map((r) => r.other) },
      { name: "change", values: found.rows.map((r) => r.change) },
      { name: "its expanded uncertainty", values: found.rows.map((r) => r.change_expanded) },
      { name: "unit", values: found.rows.map((r) => r.unit) },
    ]),
  ];
}

function overRuns({ looked }: Explorer, all: CampaignRuns[]): HTMLElement {
  const piece = new Piece(),
    runs = (all.find((c) => c.id === session.campaign)?.runs ?? [])
      .filter((r) => r.record && r.kind === "sphere")
      .sort((a, b) => (a.measured_at ?? 0) - (b.measured_at ?? 0));
  const bare = runs.filter((r) => !r.figures).map((r) => r.name),
    names = runs.filter((r) => r.figures).map((r) => r.name);
  const left = bare.length ? ` Left out, because without intervals: ${bare.join(", ")}.` : "";
  if (names.length < 2)
    return piece.body("Series", `A series needs two runs whose figures have intervals; there ${names.length === 1 ? "is one" : "are none"}.${left}`); // prettier-ignore
  const chosen = new Set(names);
  let golden = names.includes(looked.run) ? looked.run : names[0];
  const show = button("show the series", () =>
    piece.start(async (told) => {
      told(h("p", { class: "quiet loading" }, "Being worked out."));
      const order = names.filter((n) => chosen.has(n) || n === golden),
        found = await post("/api/series", { campaign: session.campaign, runs: order, golden, state: looked.state });
      return seriesTable(found, looked.state);
    }), "main"); // prettier-ignore
  /** The golden unit is always in the series, and one run alone is none. */
  const settle = () => {
    piece.clear();
    boxes.forEach(({ box }, i) => {
      box.disabled = names[i] === golden;
      box.checked = box.disabled || chosen.has(names[i]);
    });
    show.disabled = !names.some((n) => n !== golden && chosen.has(n));
    show.title = show.disabled ? "a series needs another run beside the golden unit's" : "";
  };
  const boxes = names.map((name) => {
    const box = h("input", { attrs: { type: "checkbox", checked: true }, on: { change: () => {
      if (box.checked) chosen.add(name);
      else chosen.delete(name);
      settle();
    } } }); // prettier-ignore
    return { box, label: h("label", { class: "row" }, box, name) };
  });
  settle();
  return piece.body(
    "Series",
    `Spread and trend over the devices in the order they were measured, each against a golden unit.${left}`,
    choice("golden unit", names.map((n) => [n, n]), golden, (name) => {
      golden = name;
      settle();
    }),
    h("div", { class: "row", attrs: { role: "group", "aria-label": "runs of the series" } }, ...boxes.map((one) => one.label)),
    show,
  ); // prettier-ignore
}

/** What a series says in one sentence: figures that differ, and those of which nobody can tell. */
export function seriesVerdict(found: Pick<Series, "runs" | "golden" | "rows">): { good: boolean; words: string } {
  const others = found.runs.map((run, i) => ({ run, i })).filter(({ run }) => run !== found.golden),
    of = (row: Series["rows"][number]) => others.map(({ i }) => row.e_n[i]),
    out = found.rows.filter((row) => of(row).some((v) => v !== null && Math.abs(v) > 1)).length,
    unknown = found.rows.filter((row) => of(row).some((v) => v === null)).length,
    rest = unknown ? ` Of ${unknown} nothing can be told: a value or its uncertainty is missing.` : "";
  if (out) return { good: false, words: `${out} of ${found.rows.length} figures differ from ${found.golden} by more than both uncertainties.${rest}` }; // prettier-ignore
  if (unknown === found.rows.length) return { good: false, words: `Nothing can be told against ${found.golden}: values or uncertainties are missing.` }; // prettier-ignore
  return {
    good: unknown === 0,
    words: `No figure${unknown ? " that can be compared" : ""} differs from ${found.golden} by more than both uncertainties.${rest}`,
  };
}

function seriesTable(found: Series, state: string | null): Node[] {
  const rows = found.rows.map((r) => [
    r.label,
    `${number(r.mean, 2)} ${r.unit}`,
    number(r.spread, 3),
    r.trend === null ? "-" : `${number(r.trend, 3)} ± ${number(r.trend_expanded, 3)}`,
    ...r.e_n.map((v, i) =>
      found.runs[i] === found.golden
        ? h("span", { class: "quiet" }, number(r.values[i], 2))
        : h(
            "span",
            { class: v !== null && Math.abs(v) > 1 ? "bad" : "" },
            `${number(r.values[i], 2)} (${number(v, 2)})`,
          ),
    ),
  ]);
  const said = seriesVerdict(found);
  return [
    h("p", { class: `verdict ${said.good ? "good" : "bad"}` }, said.words),
    h(
      "p",
      { class: "small quiet" },
      `At ${ghz(found.frequency_hz)}${state ? `, state ${state}` : ""}; in brackets E_n against ${found.golden}. Spread: one standard deviation; trend: change per device.`,
    ),
    scroll("series", table(["figure", "mean", "spread", "trend", ...found.runs], rows)),
    keepTable("series", () => [
      { name: "figure", values: found.rows.map((r) => r.label) },
      { name: "mean", values: found.rows.map((r) => r.mean) },
      { name: "spread", values: found.rows.map((r) => r.spread) },
      { name: "trend per device", values: found.rows.map((r) => r.trend) },
      { name: "its expanded uncertainty", values: found.rows.map((r) => r.trend_expanded) },
      ...found.runs.flatMap((run, i) => [
        { name: run, values: found.rows.map((r) => r.values[i]) },
        ...(run === found.golden ? [] : [{ name: `${run} E_n`, values: found.rows.map((r) => r.e_n[i]) }]),
      ]),
      { name: "unit", values: found.rows.map((r) => r.unit) },
    ]),
  ];
}

function overStates({ looked }: Explorer): HTMLElement {
  const piece = new Piece(),
    asked = looked.one();
  return piece.body(
    "Coverage",
    "Levels that a share of all solid angle does not exceed, of every state and of the best of all states.",
    go("read the coverage", () =>
      piece.start(async (told) => coverageTable(await longWork("/api/coverage", asked, (job) => told(jobLine(job))))),
    ),
  );
}

function coverageTable(found: Coverage): Node[] {
  const c = lines(),
    chart = new Chart("coverage over states"),
    best = found.rows.length - 1,
    dashes = ["", "5 3", "2 3", "8 3 2 3"];
  chart.draw({
    x: found.percent,
    lines: found.rows.map((r, i) => ({
      name: r.state, values: r.levels, points: found.percent.length < 20,
      colour: i === best ? c.cross : [c.co, c.other, c.good, c.quiet][i % 4],
      dash: i === best ? "" : dashes[Math.floor(i / 4) % 4],
    })),
    xName: "share of all solid angle / %", yName: `level not exceeded / ${found.unit}`, height: 240, digits: 1,
  }, "coverage over states"); // prettier-ignore
  return [
    h("p", { class: "small" }, `At ${ghz(found.frequency_hz)}, ${found.unit} ± ${found.expanded_db.toFixed(2)} dB (k = 2).`),
    chart.element,
    scroll(
      "coverage",
      table(
        ["state", "peak", ...found.percent.map((p) => `${p} %`)],
        found.rows.map((r, i) => [i === best ? h("strong", {}, r.state) : r.state, number(r.peak), ...r.levels.map((v) => number(v))]),
      ),
    ),
    keepTable("coverage", () => [
      { name: "state", values: found.rows.map((r) => r.state) },
      { name: `peak / ${found.unit}`, values: found.rows.map((r) => r.peak) },
      ...found.percent.map((p, i) => ({ name: `${p} % / ${found.unit}`, values: found.rows.map((r) => r.levels[i]) })),
    ]),
  ]; // prettier-ignore
}

function setUps({ looked }: Explorer, all: CampaignRuns[]): HTMLElement {
  const piece = new Piece(),
    asked = looked.one();
  const others = all.flatMap((c) =>
    c.runs
      .filter((r) => r.kind === "sphere" && !(c.id === session.campaign && r.name === looked.run))
      .map((r): [string, string] => [`${c.id} ${r.name}`, all.length > 1 ? `${c.folder}: ${r.name}` : r.name]),
  );
  const about =
    "The same device in another range length or turned with its positioner: what moved, and how strong the room's stray signals are.";
  if (!others.length) return piece.body("Two set-ups", `${about} There is no second run of a sphere.`);
  let other = others[0][0];
  return piece.body(
    "Two set-ups",
    about,
    choice("other set-up", others, other, (key) => {
      other = key;
      piece.clear();
    }),
    go("compare the set-ups", () =>
      piece.start(async (told) => {
        const [campaign, run] = other.split(" ");
        const found = await longWork("/api/two-set-ups", { ...asked, other_campaign: campaign, other: run }, (job) =>
          told(jobLine(job)),
        );
        return [h("ul", {}, ...found.sentences.map((s) => h("li", {}, s)))];
      }),
    ),
  );
}

function ghz(hz: number | null): string {
  return hz === null ? "mid-band" : `${(hz / 1e9).toFixed(3)} GHz`;
}

function scroll(label: string, inner: Node): HTMLElement {
  return h("div", { class: "scroll", attrs: { tabindex: 0, role: "region", "aria-label": label } }, inner);
}

function keepTable(name: string, columns: () => Columns): HTMLElement {
  const keep = () => saved(`${fileName(name)}.csv`, new Blob([csv(columns())], { type: "text/csv" }));
  return h("div", { class: "chart-tools no-print" }, button("CSV", keep, "tiny", "save the values as CSV"));
}
