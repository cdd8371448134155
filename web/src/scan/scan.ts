/** The scan as it happens, readable from two metres; the browser may come and go. */

import { live, type Status } from "../live/live";
import { get, post } from "../request/server";
import type { Start } from "../request/types";
import { LevelMap, LineChart } from "../draw/charts";
import { lines } from "../draw/colours";
import { button, duration, fill, h, number } from "../draw/dom";
import { Positioner, Surface } from "../scene/scene";
import { faultsIn, may, session, type Page } from "../shell/shell";

const FLOOR = -50;
const NAMES: Record<string, string> = {
  flip: "flip test",
  "beam-coarse": "beam search, coarse",
  "beam-fine": "beam search, fine",
};

export function scanPage(): Page {
  const faults = h("p", { class: "faults", attrs: { role: "alert" } }),
    trying = faultsIn(faults);
  const state = h("div", { class: "large" }),
    share = h("div", { class: "big" }),
    left = h("div", { class: "large" }),
    count = h("p", { class: "quiet" });
  const position = h("p", { class: "mono" }),
    level = h("p", { class: "mono" }),
    words = h("ul", { class: "words", attrs: { "aria-live": "polite" } }),
    done = h("i", { class: "done" });
  const map = new LevelMap("levels measured so far"),
    surface = new Surface("levels measured so far"),
    drift = new LineChart(),
    cut = new LineChart(),
    positioner = new Positioner();
  let built = "";
  const controls = h("div", { class: "row" }),
    run = h("input", { attrs: { value: "first", pattern: "[A-Za-z0-9_-]{1,80}", "aria-label": "name of the run" } });
  let shown = "";

  const begin = () => void startDialog(run.value, trying);
  const steer = (word: "pause" | "resume") => () =>
    void trying(post(`/api/${word}` as const, { run: live.status.run ?? "", sequence: live.status.sequence }));
  const buttons = (status: Status) => {
    const own = session.me?.mine === true,
      key = `${status.state}${own}${status.running}`;
    if (key === shown) return;
    shown = key;
    const needs = own ? "" : may("operate") ? "take the motion lease first (top right)" : "this session may only watch";
    const start = button("start or go on", begin, "main", needs),
      pause = button("pause", steer("pause"), "", needs),
      resume = button("resume", steer("resume"), "", needs);
    start.disabled = !own || status.running;
    pause.disabled = !own || status.state !== "running";
    resume.disabled = !own || status.state !== "paused";
    fill(
      controls,
      !status.running && h("label", { class: "row" }, "run", run),
      start,
      pause,
      resume,
      needs && h("span", { class: "small quiet" }, needs),
    );
  };
  const status = (s: Status) => {
    buttons(s);
    const part = s.total ? (s.measured ?? 0) / s.total : 0;
    fill(state, s.state);
    fill(share, s.total ? `${(100 * part).toFixed(part < 0.1 ? 1 : 0)} %` : "-");
    fill(left, s.running && s.left_s !== undefined ? `${duration(s.left_s)} left` : (s.text ?? ""));
    fill(
      count,
      s.total
        ? `${s.measured} of ${s.total} points of run ${s.run}${s.kind && s.kind !== "scan" ? ` (${NAMES[s.kind]})` : ""}; every one is on disk`
        : "No scan yet. Start one here, or close this page: a scan does not need it.",
    );
    done.style.width = `${100 * part}%`;
    fill(
      position,
      s.axes && s.position_deg?.length
        ? s.axes.map((a, i) => `${a} ${number(s.position_deg![i], 2)}°`).join("   ")
        : "",
    );
    const whose = s.campaign ?? session.campaign;
    if (built !== whose) {
      built = whose;
      void trying(post("/api/motion", { campaign: whose })).then((m) => {
        if (m) positioner.build(m);
      });
    } else if (s.axes && s.angles_deg?.length) positioner.turn(s.angles_deg, s.axes);
    const lines3 =
      s.level_db === null || s.level_db === undefined
        ? []
        : [
            `last sweep ${number(s.level_db, 1)} dB (S21)`,
            `strongest  ${number(s.strongest_db ?? null, 1)} dB`,
            `noise, as planned ${number(s.noise_db ?? null, 1)} dB`,
          ];
    fill(level, ...lines3.flatMap((line, i) => (i ? [h("br"), line] : [line])));
    level.classList.toggle(
      "bad",
      typeof s.level_db === "number" && typeof s.noise_db === "number" && s.level_db < s.noise_db + 10,
    );
    fill(
      words,
      ...[...(s.words ?? [])]
        .reverse()
        .slice(0, 60)
        .map((w) => h("li", { class: w.kind }, h("time", {}, new Date(1000 * w.at).toLocaleTimeString()), w.text)),
    );
    const c = lines(),
      ties = s.ties ?? [];
    if (ties.length)
      drift.draw(
        ties.map((t) => t[0] / 60),
        [
          { name: "level / dB", values: ties.map((t) => t[1]), colour: c.co, points: true },
          { name: "phase / 10 deg", values: ties.map((t) => t[2] / 10), colour: c.cross, dash: [5, 3], points: true },
        ],
        { x: "minutes of the run", y: "change of the ties", height: 190 },
      );
  };
  let grid: { rows: number[]; columns: number[]; names: [string, string] } | null = null;
  const stopWatching = live.watch({
    status,
    grid: (g) => {
      grid = { rows: g.rows, columns: g.columns, names: [g.row_name, g.column_name] };
      surface.shape(g.rows.length, g.columns.length, g.directions, g.column_name === "phi");
    },
    frame: (f) => {
      if (!grid) return;
      const g = grid;
      map.draw(g.rows, g.columns, f, {
        rowName: `${g.names[0]} / deg`,
        columnName: `${g.names[1]} / deg`,
        low: FLOOR,
        high: 0,
        unit: "dB",
      });
      surface.level(f, FLOOR);
      const middle = strongest(f, g.columns.length),
        values = g.rows.map((_, r) => {
          const v = f[r * g.columns.length + middle];
          return Number.isNaN(v) ? null : v;
        });
      cut.draw(g.rows, [{ name: `${g.names[1]} ${number(g.columns[middle], 0)}°`, values, colour: lines().co }], {
        x: `${g.names[0]} / deg`,
        y: "dB below the highest",
        height: 190,
        range: [FLOOR - 10, 2],
      });
    },
  });
  const element = h(
    "main",
    {},
    h(
      "div",
      { class: "columns scan" },
      h(
        "section",
        { class: "stack" },
        h("div", { class: "card" }, state, share, h("div", { class: "bar" }, done), left, count, controls, faults),
        h("div", { class: "card" }, h("h2", {}, "Now"), position, level),
        h("div", { class: "card" }, h("h2", {}, "What happened"), words),
      ),
      h(
        "section",
        { class: "stack" },
        h("div", { class: "card" }, h("h2", {}, "Measured so far, both polarizations"), map.element),
        h("div", { class: "card" }, h("h2", {}, "Cut through the strongest column"), cut.element),
      ),
      h(
        "section",
        { class: "stack" },
        h("div", { class: "card" }, surface.element),
        h("div", { class: "card" }, positioner.element),
        h("div", { class: "card" }, h("h2", {}, "Drift of the ties"), drift.element),
      ),
    ),
  );
  return { title: "Scan", element, leave: stopWatching };
}

function strongest(frame: Float32Array, columns: number): number {
  let best = 0,
    at = 0;
  frame.forEach((v, i) => {
    if (!Number.isNaN(v) && (i === 0 || v > best || Number.isNaN(best))) {
      best = v;
      at = i;
    }
  });
  return at % columns;
}

/** Nothing moves before a person has read the cautions and says so. */
export async function startDialog(
  run: string,
  trying: <T>(work: Promise<T>) => Promise<T | undefined>,
  kind: NonNullable<Start["kind"]> = "scan",
): Promise<boolean> {
  const lines = await trying(get("/api/cautions/{campaign}", [session.campaign]));
  if (!lines) return false;
  return new Promise((answer) => {
    const read = h("input", {
      attrs: { type: "checkbox" },
      on: {
        change: () => {
          go.disabled = !read.checked;
        },
      },
    });
    const home = h("input", { attrs: { type: "checkbox" } });
    const go = button(
      "start",
      () => {
        dialog.close();
        const body = {
          campaign: session.campaign,
          run,
          sequence: live.status.sequence,
          cautions_read: true as const,
          kind,
          home: home.checked,
        };
        void trying(post("/api/start", body)).then((found) => answer(found !== undefined));
      },
      "main",
    );
    go.disabled = true;
    const dialog = h(
      "dialog",
      {
        on: {
          close: () => {
            dialog.remove();
            answer(false);
          },
        },
      },
      h("h1", {}, kind === "scan" ? "Before anything moves" : `Before anything moves: ${NAMES[kind]}`),
      h("ul", {}, ...lines.map((line) => h("li", {}, line))),
      h("p", {}, h("label", {}, read, " Everyone is clear of the axes and the cautions are understood.")),
      h("p", { class: "small" }, h("label", {}, home, " Home the axes first (needed after a fault of the motion).")),
      h(
        "div",
        { class: "row" },
        button("not now", () => dialog.close()),
        h("span", { class: "spring" }),
        go,
      ),
    );
    document.body.append(dialog);
    dialog.showModal();
  });
}
