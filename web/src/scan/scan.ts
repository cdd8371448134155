/** The scan as it happens, readable from two metres; the browser may come and go. */

import { Chart } from "../draw/chart";
import { lines } from "../draw/colours";
import { button, fill, h, number, slider } from "../draw/dom";
import { LevelMap } from "../draw/map";
import { covering } from "../draw/scales";
import { busy as taken, live, type Status } from "../live/live";
import { post } from "../request/server";
import type { Grid } from "../request/types";
import { put, value } from "../shell/address";
import { timeLeft } from "../shell/bar";
import { cursor } from "../shell/cursor";
import { dialog } from "../shell/dialog";
import type { Page, View } from "../shell/page";
import { Panel } from "../shell/panel";
import { may, session } from "../shell/session";
import { direction, distinct, thetaPhi, type Vector } from "../scene/angles";
import { KINDS, startDialog, type Kind } from "./start";

const SPAN = 60;

export function scanPage(view: View): Page {
  const now = new Panel("Scan"),
    read = new Panel("Now"),
    happened = new Panel("What happened"),
    picture = new Panel("Measured so far"),
    cutPanel = new Panel("Cut through the strongest direction"),
    driftPanel = new Panel("Drift of the boresight checks");
  const map = new LevelMap("levels measured so far"),
    cut = new Chart("cut through the strongest direction"),
    drift = new Chart("drift of the boresight checks");
  const state = h("div", { class: "large" }),
    share = h("div", { class: "big" }),
    left = h("div", { class: "large" }),
    count = h("p", { class: "quiet" }),
    controls = h("div", { class: "row" }),
    events = h("ul", { class: "words", attrs: { tabindex: 0, "aria-label": "what happened, the newest first" } });
  const run = h("input", {
    attrs: { value: value("run") || "first", pattern: "[A-Za-z0-9_-]{1,80}", "aria-label": "name of the run" },
    on: { input: () => put({ run: run.value }) },
  });
  fill(now.body, state, share, left, count, controls);
  fill(happened.body, events);
  let grid: Grid | null = null,
    cells: number[] = [],
    frame: Float32Array | null = null,
    shown = "",
    built = "",
    span = SPAN,
    drifted = "",
    here = true,
    lastWords = -1;

  const subject = (s: Status) => ({
    key: s.run ?? "",
    words: s.run ? `run ${s.run}${s.kind && s.kind !== "scan" ? `, ${KINDS[s.kind as Kind] ?? s.kind}` : ""}` : "",
  });
  const steer = (word: "pause" | "resume") => () =>
    void post(`/api/${word}` as const, { run: live.status.run ?? "", sequence: live.status.sequence }).catch(
      (e: unknown) => now.fault(e),
    );
  const begin = () => void startDialog(run.value, (e) => now.fault(e)).then((good) => good && fill(now.faults));
  const abort = () =>
    dialog("Abort takes the drives' power away", (close) => [
      h(
        "p",
        {},
        "Stop brakes the axes and keeps their positions. Abort also takes the drives' power away: the axes must seek their reference marks before the next scan. What was measured stays on disk.",
      ),
      h(
        "div",
        { class: "row" },
        button("back", close),
        h("span", { class: "spring" }),
        button(
          "abort",
          () => {
            post("/api/abort", {}).then(close, (e: unknown) => now.fault(e));
          },
          "danger",
        ),
      ),
    ]);
  const buttons = (s: Status) => {
    const own = session.me?.mine === true,
      busy = taken(s),
      key = `${s.state}${own}${busy}`;
    if (key === shown) return;
    shown = key;
    const needs = own
      ? ""
      : may("operate")
        ? "Take the motion lease first (top right)."
        : "This session may watch and stop.";
    const start = button("start or go on", begin, "main"),
      pause = button("pause", steer("pause")),
      resume = button("resume", steer("resume")),
      away = button("abort", abort, "", "brake and take the drives' power away");
    start.disabled = !own || busy;
    pause.disabled = !own || s.state !== "running";
    resume.disabled = !own || s.state !== "paused";
    away.disabled = !may("operate") || !busy;
    fill(
      controls,
      !busy && h("label", { class: "row" }, "run", run),
      start,
      pause,
      resume,
      away,
      needs && h("span", { class: "small quiet" }, needs),
    );
  };
  const status = (s: Status) => {
    buttons(s);
    const part = s.total ? (s.measured ?? 0) / s.total : 0;
    fill(now.subject, subject(s).words);
    fill(state, s.state);
    fill(share, s.total ? `${(100 * part).toFixed(part < 0.1 ? 1 : 0)} %` : "");
    fill(left, timeLeft(s) || (s.text ?? ""));
    fill(
      count,
      s.total
        ? `${s.measured} of ${s.total} points; every one is on disk.`
        : "No scan yet. Start one here. The page may be closed: a scan does not need it.",
    );
    const whose = s.campaign ?? session.campaign;
    if (built !== whose) {
      built = whose;
      post("/api/motion", { campaign: whose }).then(
        (m) => {
          // An answer that comes after this page was left is nobody's.
          if (!here) return;
          view.chamber.build(m);
          view.chamber.whose = whose;
          if (!grid && built === whose) sketch(m.directions);
        },
        (e: unknown) => now.fault(e),
      );
    }
    if (s.axes && s.angles_deg?.length) view.chamber.follow(s.angles_deg, s.axes, s.joints);
    reading(s);
    happening(s);
    drifting(s);
  };
  /** Before a scan: the planned points, grey. */
  const sketch = (directions: number[]) => {
    view.sphere.shape({ rows: 1, columns: directions.length / 3, closed: false, directions });
    view.sphere.dots([], { low: 0, high: 1, unit: "dB" });
    fill(view.stage.caption, `Planned: ${distinct(directions).length} directions, none measured.`);
  };
  const joints = (s: Status) =>
    (s.joints?.length && s.campaign === view.chamber.whose && view.chamber.stand?.mount?.joints) || [];
  const reading = (s: Status) => {
    const level = s.level_db,
      weak = typeof level === "number" && typeof s.noise_db === "number" && level < s.noise_db + 10;
    const rows: [string, string][] = [
      ...(s.axes ?? []).map((a, i): [string, string] => [a, withUnit(s.position_deg?.[i], 2, "°")]),
      // Azimuth, roll and probe of such a mount are coordinates: what really moves stands beside them.
      ...joints(s).map((one, i): [string, string] => [`joint ${one.name}`, withUnit(s.joints?.[i], 2, ` ${one.unit}`)]),
      ["last sweep", withUnit(level, 1, " dB (S21)")],
      ["strongest", withUnit(s.strongest_db, 1, " dB")],
      ["noise, as planned", withUnit(s.noise_db, 1, " dB")],
    ];
    if (!s.run) read.empty("Axes and levels stand here while a scan runs.");
    else
      read.show(
        subject(s),
        h(
          "dl",
          { class: weak ? "reading bad" : "reading" },
          ...rows.flatMap(([n, v]) => [h("dt", {}, n), h("dd", { class: "mono" }, v)]),
        ),
        weak && h("p", { class: "bad small" }, "The last sweep is within 10 dB of the noise."),
      );
  };
  const happening = (s: Status) => {
    const all = s.words ?? [];
    if (!s.run) {
      happened.empty("Events of a scan are listed here.");
      return;
    }
    const key = all.length ? all[all.length - 1].at + all.length : 0;
    if (key === lastWords && happened.body.contains(events)) return;
    lastWords = key;
    fill(
      events,
      ...[...all]
        .reverse()
        .slice(0, 80)
        .map((w) => h("li", { class: w.kind }, h("time", {}, new Date(1000 * w.at).toLocaleTimeString()), w.text)),
    );
    if (!happened.body.contains(events)) happened.show(subject(s), events);
  };
  const drifting = (s: Status) => {
    const ties = s.ties ?? [];
    if (ties.length < 2) {
      driftPanel.empty("Two checks along one direction show a drift.");
      return;
    }
    const c = lines(),
      // Many checks are a line: a mark for each would be hundreds of elements after a night.
      few = ties.length < 20;
    const key = `${s.run} ${ties.length} ${ties[ties.length - 1][0]}`;
    if (key === drifted && driftPanel.body.contains(drift.element)) return;
    drifted = key;
    if (!driftPanel.body.contains(drift.element)) driftPanel.show(subject(s), drift.element);
    drift.draw({ x: ties.map((t) => t[0] / 60), lines: [
      { name: "level / dB", values: ties.map((t) => t[1]), colour: c.co, points: few },
      { name: "phase / 10°", values: ties.map((t) => t[2] / 10), colour: c.cross, dash: "5 3", points: few },
    ], xName: "time since the first / min", yName: "change", yWhole: covering(ties.flatMap((t) => [t[1], t[2] / 10]), 0.2), height: 200 }, `drift of ${s.run}`); // prettier-ignore
  };
  function nothingYet(): void {
    picture.empty("Levels are drawn as they come; where nothing was measured, nothing is drawn.");
    cutPanel.empty("The cut follows the strongest direction.");
  }
  const draw = () => {
    const g = grid,
      f = frame;
    if (!g || !f) return;
    const s = live.status,
      known = f.filter((v) => !Number.isNaN(v)),
      top = known.length ? Math.ceil(known.reduce((a, b) => Math.max(a, b), -Infinity) / 5) * 5 : 0,
      scale = { low: top - span, high: top, unit: "dB" };
    view.sphere.dots(f, scale);
    view.sphere.scaleBar(scale, "S21");
    const own = g.state ? `, state ${g.state}` : "";
    fill(
      view.stage.caption,
      `Run ${s.run}${own}: ${cells.filter((i) => !Number.isNaN(f[i])).length} of ${cells.length} directions measured, coloured by level; the others are grey.`,
    );
    if (!picture.body.contains(map.element))
      picture.show(
        subject(s),
        map.element,
        h(
          "p",
          { class: "small quiet" },
          `Both polarizations together${g.state ? `, state ${g.state} alone` : ""}. Empty cells are not measured yet.`,
        ),
      );
    map.draw(
      {
        rows: g.rows,
        columns: g.columns,
        values: f,
        rowName: `${g.row_name} / deg`,
        columnName: `${g.column_name} / deg`,
        ...scale,
      },
      `levels of ${s.run}`,
    );
    if (!known.length) return;
    const at = strongest(f),
      k = at % g.columns.length;
    if (!cutPanel.body.contains(cut.element)) cutPanel.show(subject(s), cut.element);
    const values = g.rows.map((_, r) =>
      Number.isNaN(f[r * g.columns.length + k]) ? null : f[r * g.columns.length + k],
    );
    cut.draw(
      {
        x: g.rows,
        lines: [
          {
            name: `${g.column_name} ${number(g.columns[k], 0)}°`,
            values,
            colour: lines().co,
            points: values.filter((v) => v !== null).length < 25,
          },
        ],
        xName: `${g.row_name} / deg`,
        yName: "S21 / dB",
        yWhole: [scale.low, scale.high],
        height: 220,
        peakOf: 0,
        digits: 1,
      },
      `cut of ${s.run}`,
    );
  };
  const stopWatching = live.watch({
    status,
    grid: (g) => {
      grid = g;
      frame = null;
      if (!g) {
        cells = [];
        built = "";
        view.sphere.clear();
        view.sphere.scaleBar(null);
        fill(view.stage.caption);
        nothingYet();
        return;
      }
      cells = distinct(g.directions);
      view.sphere.shape({
        rows: g.rows.length,
        columns: g.columns.length,
        closed: g.column_name === "phi",
        directions: g.directions,
      });
      for (const one of [picture, cutPanel]) one.empty("The first points are awaited.", subject(live.status));
    },
    frame: (f) => {
      frame = f;
      draw();
    },
  });
  view.stage.hovered = (d) => {
    cursor.hover(d);
    const at = d && frame ? view.sphere.nearest(d) : -1;
    if (!d || !grid || at < 0 || !frame) {
      fill(view.stage.readout);
      return;
    }
    const cell: Vector = [grid.directions[3 * at], grid.directions[3 * at + 1], grid.directions[3 * at + 2]],
      v = frame[at];
    fill(view.stage.readout, `${view.sphere.words(cell)}: ${Number.isNaN(v) ? "not measured" : `${v.toFixed(1)} dB`}`);
  };
  map.clicked = (at) => cursor.pin(cellDirection(at));
  map.moved = (at) => cursor.hover(at ? cellDirection(at) : null);
  const cellDirection = (at: { row: number; column: number }): Vector => {
    const g = grid!;
    const i = 3 * (g.rows.indexOf(at.row) * g.columns.length + g.columns.indexOf(at.column));
    return [g.directions[i], g.directions[i + 1], g.directions[i + 2]];
  };
  const stopCursor = cursor.watch((d) => {
    if (!grid || !d || grid.row_name !== "theta") {
      map.point(null);
      return;
    }
    const [theta, phi] = thetaPhi(d);
    map.point({ row: theta, column: (phi + 360) % 360 });
  });
  // No page's pose stays for the next one.
  if (!live.status.angles_deg?.length) view.chamber.rest();
  if (!live.grid) nothingYet();
  const range = slider("range of colours", 20, 100, 10, SPAN, (v) => {
    span = v;
    draw();
  }, " dB"); // prettier-ignore
  const ride = h("input", { attrs: { type: "checkbox" }, on: { change: () => view.stage.ride(ride.checked) } });
  const element = h(
    "div",
    { class: "page scan-page" },
    now.element,
    h("div", { class: "two" }, read.element, happened.element),
    h("div", { class: "row no-print" }, range, h("label", { class: "row small" }, ride, "ride with the device")),
    picture.element,
    h("div", { class: "two" }, cutPanel.element, driftPanel.element),
  );
  if (!live.grid) view.sphere.cursor(cursor.at ?? direction(0, 0));
  return {
    title: "Scan",
    element,
    leave: () => {
      here = false;
      stopWatching();
      stopCursor();
    },
  };
}

/** A value with its unit; a dash alone where nothing is known. */
function withUnit(value: number | null | undefined, digits: number, unit: string): string {
  const text = number(value, digits);
  return text === "-" ? text : `${text}${unit}`;
}

function strongest(frame: Float32Array): number {
  let at = -1;
  frame.forEach((v, i) => {
    if (!Number.isNaN(v) && (at < 0 || v > frame[at])) at = i;
  });
  return Math.max(0, at);
}
