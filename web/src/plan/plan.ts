/** Plan: a form on one side, what follows from it on the other, and the positioner turning as it will. */

import { finished, get, post } from "../request/server";
import type { Field, Form, FormAnswer, Motion, PlanAnswer, Rehearsal } from "../request/types";
import { LevelMap } from "../draw/charts";
import { button, duration, fill, h, number, rested, slider, table } from "../draw/dom";
import { Positioner } from "../scene/scene";
import { faultsIn, may, session, type Page } from "../shell/shell";
import { tutor } from "../tutor/tutor";

export function planPage(): Page {
  const faults = h("p", { class: "faults", attrs: { role: "alert" } }),
    form = h("div"),
    answers = h("div", { class: "stack" }),
    rehearsal = h("div", { class: "stack" });
  const positioner = new Positioner(),
    at = h("div", { class: "small mono" }),
    walk = h("div");
  const edits: NonNullable<Form["edits"]> = {},
    beside = h("div");
  const sideBySide = h(
    "div",
    { class: "card" },
    h(
      "div",
      { class: "row" },
      h("h2", {}, "Positioners and schemes"),
      h("span", { class: "spring" }),
      button(
        "set side by side",
        () =>
          void (async () => {
            const found = await trying(post("/api/schemes", { campaign: session.campaign, edits }));
            if (found)
              fill(
                beside,
                table(
                  ["positioner", "scheme", "duration", "points", "slices meet at"],
                  found.map((s) => [
                    h(
                      "span",
                      { attrs: { title: `${s.formula}; suits ${s.suits}; polarization ${s.polarization}` } },
                      s.geometry,
                    ),
                    s.scheme,
                    s.fault ? h("span", { class: "small bad", attrs: { title: s.fault } }, "not here") : s.duration,
                    s.points || "-",
                    s.pole,
                  ]),
                ),
                h(
                  "p",
                  { class: "small quiet" },
                  "Point at a positioner for its formula and what it suits, at \u201cnot here\u201d for the reason.",
                ),
              );
          })(),
      ),
    ),
    beside,
  );
  const trying = faultsIn(faults);
  let motion: Motion | null = null,
    asked = 0,
    standing = 0;

  const ask = async () => {
    const mine = ++asked,
      body = { campaign: session.campaign, edits };
    const found = await trying(post("/api/plan", body));
    if (!found || mine !== asked) return;
    drawAnswers(answers, found, sideBySide);
    const way = await trying(post("/api/motion", body));
    if (!way || mine !== asked) return;
    motion = way;
    positioner.build(way);
    // Whoever stands at a point of the scan stays there while a new answer comes.
    const last = way.role.length - 1;
    fill(
      walk,
      slider("through the scan", 0, last, 1, Math.min(standing, last), (i) => walkTo(i)),
      at,
    );
    walkTo(Math.min(standing, last));
  };
  const walkTo = (index: number) => {
    if (!motion) return;
    standing = index;
    const n = motion.axes.length,
      way = motion;
    positioner.turn(way.angles_deg.slice(n * index, n * index + n), way.axes);
    const seen: number[] = [];
    for (let i = 0; i < index; i++) if (way.cell[i] >= 0) seen.push(way.cell[i]);
    positioner.paint(way.cell[index], seen);
    const kind = ["scan", "tie", "reference", "resume", "turn", "cable"][way.role[index]];
    fill(
      at,
      `point ${index + 1} of ${way.role.length} (${kind}), after ${duration(way.time_s[index])}: ${way.axes.map((a, k) => `${a} ${way.readouts_deg[n * index + k].toFixed(1)}°`).join(", ")}`,
    );
  };
  const soon = rested(() => void ask());
  const rehearse = button(
    "rehearse on the simulated chamber",
    () => void run(),
    "",
    "the whole plan on an invented chamber as imperfect as the declared one",
  );
  const run = async () => {
    rehearse.disabled = true;
    fill(
      rehearsal,
      h(
        "p",
        { class: "quiet" },
        "The plan is carried out on the simulated chamber and held against known truth; this takes some seconds.",
      ),
    );
    const found = await trying(
      finished("/api/rehearse", { campaign: session.campaign, edits, seed: 1 + Math.floor(Math.random() * 1000) }),
    );
    rehearse.disabled = false;
    if (found) drawRehearsal(rehearsal, found);
    else fill(rehearsal);
  };
  const save = button("write into the files", async () => {
    const done = await trying(post("/api/save", { campaign: session.campaign, edits }));
    if (done)
      fill(
        saved,
        done.written.length
          ? `written: ${done.written.join(", ")}; the files as they were stay beside them`
          : "nothing was changed",
      );
  });
  const saved = h("p", { class: "small quiet" });
  save.disabled = !may("configure");

  void (async () => {
    const found = await trying(get("/api/form/{campaign}", [session.campaign]));
    if (!found) return;
    drawForm(form, found, (key, value) => {
      if (value === undefined) delete edits[key];
      else edits[key] = value as NonNullable<Form["edits"]>[string];
      soon();
    });
    await ask();
  })();

  const coach = tutor();
  const element = h(
    "main",
    {},
    h(
      "div",
      { class: "columns plan" },
      h("section", { class: "card", attrs: { "aria-label": "form" } }, form, h("div", { class: "row" }, save), saved),
      h(
        "section",
        { class: "stack" },
        h("div", { class: "card" }, positioner.element, walk),
        h(
          "div",
          { class: "card" },
          h("div", { class: "row" }, h("h2", {}, "Rehearsal"), h("span", { class: "spring" }), rehearse),
          rehearsal,
        ),
        h("div", { class: "card" }, coach.element),
      ),
      h("section", { class: "stack", attrs: { "aria-live": "polite" } }, faults, answers),
    ),
  );
  return {
    title: "Plan",
    element,
    leave: () => {
      asked++;
      coach.leave();
    },
  };
}

function drawForm(place: HTMLElement, form: FormAnswer, changed: (key: string, value: unknown) => void): void {
  const groups = [...new Set(form.fields.map((f) => f.group))];
  fill(
    place,
    h("h1", {}, form.name),
    h(
      "p",
      { class: "small quiet" },
      `${form.device}; ${form.chamber}${form.simulated ? " (simulated chamber, invented data)" : ""}`,
    ),
    ...groups.map((group) =>
      h(
        "fieldset",
        {},
        h("legend", {}, group),
        ...form.fields.filter((f) => f.group === group).map((f) => field(f, changed)),
      ),
    ),
  );
}

function field(f: Field, changed: (key: string, value: unknown) => void): HTMLElement {
  const mark = (value: unknown) => {
    const same = JSON.stringify(value) === JSON.stringify(f.value);
    label.classList.toggle("changed", !same);
    changed(f.key, same ? undefined : value);
  };
  const limits = f.least !== null || f.most !== null ? `from ${f.least ?? "-"} to ${f.most ?? "-"} ${f.unit}` : "";
  const label = h("label", { class: "field", attrs: { title: limits } }, h("span", {}, f.label));
  if (f.choices.length) {
    const select = h(
      "select",
      { on: { change: () => mark(select.value) } },
      ...f.choices.map((c) => h("option", { attrs: { value: c } }, c)),
    );
    select.value = String(f.value);
    label.append(select, h("span", { class: "unit" }));
    return label;
  }
  if (Array.isArray(f.value)) {
    const boxes = f.value.map((v) =>
      h("input", {
        attrs: { type: "number", step: "any", value: String(v), "aria-label": f.label },
        on: { input: () => mark(boxes.map((b) => Number(b.value))) },
      }),
    );
    label.classList.add("three");
    label.append(...boxes, h("span", { class: "unit" }, "mm"));
    return label;
  }
  const input = h("input", {
    attrs: {
      type: "number",
      step: f.whole ? "1" : "any",
      value: f.value === null ? "" : String(f.value),
      placeholder: f.optional ? "chosen" : "",
    },
    on: { input: () => mark(input.value === "" ? (f.optional ? null : f.value) : Number(input.value)) },
  });
  label.append(input, h("span", { class: "unit" }, f.unit));
  return label;
}

function drawAnswers(place: HTMLElement, plan: PlanAnswer, more: HTMLElement): void {
  const total = plan.split.reduce((sum, one) => sum + one[1], 0);
  const bar = h(
    "div",
    {
      class: "bar",
      attrs: { role: "img", "aria-label": plan.split.map(([n, s]) => `${n} ${duration(s)}`).join(", ") },
    },
    ...plan.split.map((_, i) => h("i", { class: i ? "two" : "one" })),
  );
  [...bar.children].forEach((part, i) => {
    (part as HTMLElement).style.width = `${(100 * plan.split[i][1]) / total}%`;
  });
  fill(
    place,
    h(
      "div",
      { class: "card" },
      h("p", { class: "verdict" }, plan.verdict),
      h("div", { class: "large" }, plan.duration),
      h("p", { class: "small quiet" }, `${plan.points} points`),
      bar,
      h("p", { class: "small quiet" }, plan.split.map(([n, s]) => `${n} ${duration(s)}`).join(", ")),
      ...plan.missing.map((line) => h("p", { class: "bad" }, `Missing: ${line}`)),
    ),
    h(
      "div",
      { class: "card" },
      h("h2", {}, "Forecast"),
      table(
        ["figure", "±", "mostly from"],
        plan.forecast.map((f) => [f.name, f.expanded.toPrecision(2), f.cause]),
      ),
    ),
    h(
      "div",
      { class: "card" },
      h("h2", {}, "Alternatives"),
      table(
        ["plan", "duration", "points"],
        plan.alternatives.map((a) => [h("span", { attrs: { title: a.why } }, a.name), a.duration, a.points]),
      ),
    ),
    more,
    h(
      "div",
      { class: "card" },
      h("h2", {}, "Why"),
      table(
        ["", ""],
        plan.rows.map(([name, text]) => [h("strong", {}, name), text]),
      ),
    ),
  );
}

function drawRehearsal(place: HTMLElement, found: Rehearsal): void {
  const map = new LevelMap("predicted error over all directions");
  fill(
    place,
    h(
      "p",
      {},
      `${(100 * found.share_inside).toFixed(0)} % of all stated intervals hold the truth; it took ${found.seconds.toFixed(1)} s. An invented chamber, drawn anew each time.`,
    ),
    map.element,
    h(
      "div",
      { class: "scroll" },
      table(
        ["figure", "measured", "true", "", "mostly from"],
        found.rows.map((r) => [
          r.name,
          `${r.value} ${r.unit}`,
          number(r.truth, 3),
          h("span", { class: r.inside ? "good" : "bad" }, r.inside ? "inside" : "outside"),
          r.cause,
        ]),
      ),
    ),
  );
  const top = Math.max(...found.error_db);
  map.draw(found.theta, found.phi, found.error_db, {
    rowName: "theta / deg",
    columnName: "phi / deg",
    low: top - 40,
    high: top,
    unit: "dB",
  });
}
