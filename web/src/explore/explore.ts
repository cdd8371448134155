/** Explore: what was measured, at any angle, in any coordinates and polarization, with figures and their intervals. */

import { button, choice, fill, h, slider, tabs } from "../draw/dom";
import { get, post } from "../request/server";
import type { RunRow } from "../request/types";
import { put } from "../shell/address";
import type { Page, View } from "../shell/page";
import { Panel } from "../shell/panel";
import { session } from "../shell/session";
import { CutsTab } from "./cuts";
import { showAsRead } from "./asread";
import { CutsRunView } from "./cutsrun";
import { FiguresPanel } from "./figures";
import { PatternOnStage } from "./pattern";
import { FrequencyTab, MapTab } from "./maps";
import { PowerRunView } from "./powerrun";
import { RunDrawer } from "./runs";
import { ghz, Looked } from "./state";
import { ApertureTab, FindingsTab, ImpulseTab, RecipeTab, ReportTab, VerdictTab } from "./more";
import { TogetherTab } from "./together";

export type Tab = { element: HTMLElement; show: () => void; leave?: () => void };
/** What the parts of Explore ask of the whole. */
export type Explorer = {
  looked: Looked;
  view: View;
  runs: () => string[];
  open: (run: string, state: string | null, off?: string[], gate?: [number, number] | null) => Promise<void>;
  changed: () => void;
  again: () => Promise<void>;
  pattern: PatternOnStage;
};

export const TABS: [string, string][] = [
  ["cuts", "Cuts"],
  ["map", "Map"],
  ["frequency", "Over frequency"],
  ["aperture", "Aperture"],
  ["impulse", "Impulse"],
  ["recipe", "Recipe"],
  ["findings", "Findings"],
  ["verdict", "Verdict"],
  ["together", "Several runs"],
  ["report", "Report"],
];

export function explorePage(view: View): Page {
  const looked = new Looked(),
    opened = new Panel("Run", "card opened"),
    panel = h("div", { class: "tab-panel", attrs: { id: "explore-panel" } });
  const controls = h("div", { class: "controls" });
  const kinds = new Map<string, RunRow["kind"]>();
  let here = true,
    names: string[] = [],
    shown: Tab | null = null,
    playing = 0;

  const open: Explorer["open"] = async (run, state, off = [], gate = null) => {
    const other = run !== looked.run || state !== looked.state;
    Object.assign(looked, { run, state, off, gate });
    looked.beside = looked.beside.filter((n) => n !== run);
    looked.known = null;
    drawer.choose(run);
    if (other) {
      figures.clear();
      pattern.clear();
    }
    leaveTab();
    figures.element.hidden = false;
    fill(panel);
    fill(controls);
    if (kinds.get(run) === "cuts")
      openBare(new CutsRunView(explorer), "Cuts or single directions: figures of a sphere do not follow from them.");
    else if (kinds.get(run) === "power") openBare(new PowerRunView(explorer), "Levels without phase.");
    else await again();
  };
  /** A run of cuts or of levels alone has no waves to look at: its own charts and figures stand here instead. */
  const openBare = (view: Tab, says: string) => {
    opened.show(looked.subject(false), h("p", { class: "small" }, says));
    shown = view;
    looked.keep();
    fill(controls, view.element);
    figures.element.hidden = true;
    view.show();
  }; // prettier-ignore
  const again = async () => {
    const mine = looked.run,
      trial = () => JSON.stringify([looked.off, looked.gate]),
      asked = trial();
    const found = await opened.ask(looked.subject(false), (signal) => post("/api/overview", looked.body(), signal), (answer) => {
      looked.open(answer);
      return [head()];
    }, { of: (a) => a.of, expect: looked.of(false), waiting: "The run is being processed; the first time takes some seconds." }); // prettier-ignore
    if (!here || mine !== looked.run || asked !== trial()) return;
    if (!found && (looked.off.length || looked.gate)) {
      // A trial that is refused says nothing of the run: there is a way back to it.
      figures.clear("This trial was refused: no figure follows from it.");
      fill(
        controls,
        button("without the trial", () => void open(mine, looked.state), "main"),
      );
      return;
    }
    if (!found) {
      figures.clear("No figure follows from what this run holds so far.");
      await showAsRead(view, mine, controls, () => here && mine === looked.run && !looked.known);
      return;
    }
    fill(opened.subject, looked.subject(false).words);
    drawControls();
    pattern.show();
    figures.show();
    showTab(looked.tab);
  };
  const head = () => {
    const known = looked.known!;
    return h(
      "p",
      { class: "small" },
      known.demo ? "Simulated chamber, invented device. " : "",
      `${known.frequency_hz.length} ${known.frequency_hz.length === 1 ? "frequency" : "frequencies"}, measured out to ${known.region_deg.toFixed(0)}° from boresight.`,
      looked.tried
        ? h(
            "strong",
            { class: "warn-text" },
            ` A trial${looked.off.length ? `, without ${looked.off.join(", ")}` : ""}${looked.gate ? `, gate ${looked.gate[1].toFixed(2)} ns about ${looked.gate[0].toFixed(2)} ns` : ""}: nothing of it is kept.`,
          )
        : null,
      looked.moved && h("span", { class: "warn-text" }, ` ${looked.moved}`),
      ...known.edited.flatMap((line) => [h("br"), h("span", { class: "warn-text" }, line)]),
    );
  };
  const drawControls = () => {
    const known = looked.known!,
      f = known.frequency_hz;
    // Whatever was played belongs to the controls that were there before.
    stopPlaying();
    const play = button("play", () => {
      if (playing) stopPlaying();
      else playing = window.setInterval(() => {
        if (document.querySelector(".panel[aria-busy]")) return;
        const input = controls.querySelector<HTMLInputElement>("input[type=range]")!;
        input.value = String((looked.frequency + 1) % f.length);
        input.dispatchEvent(new Event("input"));
      }, 400);
      fill(play, playing ? "pause" : "play");
    }, "tiny", "go through the frequencies"); // prettier-ignore
    fill(controls,
      f.length > 1 && h("div", { class: "row" }, slider("frequency", 0, f.length - 1, 1, looked.frequency, (i) => {
        looked.frequency = i;
        changed();
      }, "", (i) => ghz(f[i])), play),
      known.states.length > 1 && choice("state", known.states.map((s) => [s, s]), looked.state ?? known.states[0], (s) => void open(looked.run, s, looked.off, looked.gate)),
      pattern.controls(),
      tabs(TABS, looked.tab, panel, (key) => showTab(key, true)), panel); // prettier-ignore
  };
  const stopPlaying = () => {
    window.clearInterval(playing);
    playing = 0;
  };
  let timer = 0;
  /** Another frequency, plane or basis: everything that shows it follows, once it rests for a moment. */
  const changed = () => {
    window.clearTimeout(timer);
    timer = window.setTimeout(() => {
      looked.keep();
      pattern.show();
      figures.show();
      shown?.show();
    }, 60);
  };
  const leaveTab = () => {
    shown?.leave?.();
    shown = null;
  };
  const showTab = (key: string, step = false) => {
    if (!looked.known) return;
    looked.tab = TABS.some(([name]) => name === key) ? key : "cuts";
    looked.keep(step);
    leaveTab();
    shown = make[looked.tab]();
    fill(panel, shown.element);
    shown.show();
  };
  const drawer = new RunDrawer((run) => void open(run, null));
  const pattern = new PatternOnStage(view, looked, () => changed());
  const explorer: Explorer = { looked, view, runs: () => names, open, changed, again, pattern };
  const figures = new FiguresPanel(explorer);
  const make: Record<string, () => Tab> = {
    cuts: () => new CutsTab(explorer),
    map: () => new MapTab(explorer),
    frequency: () => new FrequencyTab(explorer),
    aperture: () => new ApertureTab(explorer),
    impulse: () => new ImpulseTab(explorer),
    recipe: () => new RecipeTab(explorer),
    findings: () => new FindingsTab(explorer),
    verdict: () => new VerdictTab(explorer),
    together: () => new TogetherTab(explorer),
    report: () => new ReportTab(explorer),
  };
  opened.empty("The runs are being listed.");
  figures.clear("Figures stand here once a run is open.");
  pattern.clear();
  void (async () => {
    post("/api/motion", { campaign: session.campaign }).then(
      (m) => here && view.chamber.build(m),
      () => undefined,
    );
    view.chamber.rest();
    try {
      const all = await get("/api/campaigns");
      // Whoever left meanwhile is on another page: nothing more is asked, drawn on its scene or watched for this one.
      if (!here) return;
      const runs = all.find((c) => c.id === session.campaign)?.runs ?? [];
      names = runs.filter((r) => r.kind === "sphere").map((r) => r.name);
      for (const one of runs) kinds.set(one.name, one.kind);
      drawer.fill(runs);
      // Whoever comes for one run sees it at once; a choice of several lies open.
      drawer.element.open = runs.length !== 1 && !looked.run;
      const opens = runs.find((r) => r.kind === "sphere") ?? runs.find((r) => r.kind !== "begun") ?? runs[0];
      const first = looked.run || (opens as RunRow | undefined)?.name;
      if (first) await open(first, looked.state, looked.off, looked.gate);
      else opened.empty("What a run holds is shown here: cuts, maps, figures, findings, report.");
    } catch (error) {
      opened.fault(error);
    }
  })();
  put({});
  const element = h("div", { class: "page explore-page" }, drawer.element, opened.element, controls, figures.element);
  /** Back, forward or a link to another view of the same run. */
  const follow = () => {
    if (!looked.known) return;
    const to = new Looked();
    to.open(looked.known);
    const stands = [to, looked].map((l) =>
      JSON.stringify([
        l.state,
        l.off,
        l.gate,
        l.frequency,
        l.plane,
        l.basis,
        l.coordinates,
        l.component,
        l.beside,
        l.tab,
        l.span,
      ]),
    );
    if (stands[0] === stands[1]) return;
    const { run, state, off, gate, frequency, plane, basis, basisChosen, coordinates, component, beside, tab, span } =
      to;
    const same = state === looked.state && off.join() === looked.off.join() && gate?.join() === looked.gate?.join();
    Object.assign(looked, { frequency, plane, basis, basisChosen, coordinates, component, beside, tab, span });
    if (!same) {
      void open(run, state, off, gate);
      return;
    }
    drawControls();
    pattern.show();
    figures.show();
    showTab(looked.tab);
  };
  return {
    title: "Explore",
    element,
    follow,
    leave: () => {
      here = false;
      drawer.leave();
      stopPlaying();
      window.clearTimeout(timer);
      opened.leave();
      pattern.leave();
      leaveTab();
    },
  };
}
