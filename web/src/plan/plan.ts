/** Plan: a form on one side, what follows from it on the other, and the axes going the way of the scan. */

import { button, duration, fill, h, number, slider, table } from "../draw/dom";
import { LevelMap } from "../draw/map";
import { get, post, Refusal } from "../request/server";
import type { FormAnswer, Motion, PlanAnswer, RehearsalAnswer, Scheme } from "../request/types";
import { clearDraft, draftOf, onDrafts, unsaved } from "../shell/drafts";
import { jobLine, longWork } from "../shell/jobs";
import { distinct } from "../scene/angles";
import type { Page, View } from "../shell/page";
import { Panel, type Subject } from "../shell/panel";
import { may, session, words } from "../shell/session";
import { PlanForm } from "./form";

const ROLES = ["scan", "boresight check", "reference", "resume", "turn", "cable"];

export function planPage(view: View): Page {
  const formPanel = new Panel("Campaign", "card plan-form"),
    answer = new Panel("What follows", "card plan-answer"),
    rehearsal = new Panel("Rehearsal"),
    schemes = new Panel("Positioners and polarization schemes");
  const at = h("div", { class: "small mono" }),
    walk = h("div", { class: "walk" }, h("p", { class: "quiet small" }, "The path of the scan is being worked out.")),
    saved = h("p", { class: "small quiet", attrs: { role: "status" } });
  const campaign = session.campaign;
  let form: PlanForm | null = null,
    motion: Motion | null = null,
    standing = 0,
    timer = 0,
    playing = 0,
    known: FormAnswer | null = null,
    motionAsked = 0,
    /** Which form the schemes and the rehearsal are of; empty: there are none. */
    beside = "",
    rehearsed = "";
  const subject = (): Subject => {
    const count = unsaved(campaign);
    return { key: `${campaign}|${JSON.stringify(draftOf(campaign))}`, words: count ? `${count} unsaved` : "as saved" };
  };
  const body = () => ({ campaign, edits: { ...draftOf(campaign) } });

  const ask = async () => {
    const asked = body(),
      own = subject();
    if (beside && beside !== own.key) {
      beside = "";
      schemes.empty("The form changed since; set them side by side anew.");
    }
    if (rehearsed && rehearsed !== own.key) fill(rehearsal.subject, "of the form as it was before");
    const found = await answer.ask(own, async (signal) => {
      try {
        const plan = await post("/api/plan", asked, signal);
        form?.marks([]);
        return plan;
      } catch (error) {
        if (error instanceof Refusal) form?.marks(error.faults);
        throw error;
      }
    }, answers, { keep: true }); // prettier-ignore
    if (!found) return;
    const mine = ++motionAsked;
    post("/api/motion", asked).then(
      (way) => mine === motionAsked && walked(way),
      (error: unknown) => {
        if (mine !== motionAsked) return;
        if (!motion) fill(walk, h("p", { class: "quiet small" }, "The path of the scan could not be worked out."));
        answer.fault(error);
      },
    );
  };
  const walked = (way: Motion) => {
    motion = way;
    view.chamber.build(way);
    view.sphere.shape({ rows: 1, columns: way.directions.length / 3, closed: false, directions: way.directions });
    // Whoever stands at a point of the scan stays there while a new answer comes.
    const last = way.role.length - 1,
      now = Math.min(standing, last);
    const play = button("play", () => {
      window.clearInterval(playing);
      playing = playing ? 0 : window.setInterval(() => {
        const input = walk.querySelector<HTMLInputElement>("input")!;
        input.value = String(standing >= last ? 0 : Math.min(last, standing + Math.max(1, Math.round(last / 600))));
        input.dispatchEvent(new Event("input"));
      }, 50);
      fill(play, playing ? "pause" : "play");
    }, "tiny"); // prettier-ignore
    fill(
      walk,
      slider("through the scan", 0, last, 1, now, walkTo, "", (v) => String(v + 1)),
      play,
      at,
    );
    walkTo(now);
  };
  const walkTo = (index: number) => {
    if (!motion) return;
    standing = index;
    const n = motion.axes.length,
      way = motion,
      levels = new Array<number | null>(way.directions.length / 3).fill(null);
    const k = way.mount?.joints.length ?? 0;
    view.chamber.turnTo(
      way.angles_deg.slice(n * index, n * index + n),
      way.axes,
      way.mount?.values.slice(k * index, k * index + k),
    );
    for (let i = 0; i < index; i++) if (way.cell[i] >= 0) levels[way.cell[i]] = 0.35;
    view.sphere.dots(levels, { low: 0, high: 1, unit: "" }, way.cell[index]);
    fill(
      view.stage.caption,
      `Plan: ${distinct(way.directions).length} directions; passed ones coloured, the present one orange. Nothing is measured here.`,
    );
    fill(
      at,
      `point ${index + 1} of ${way.role.length} (${ROLES[way.role[index]]}), after ${duration(way.time_s[index])}: ${way.axes.map((a, k) => `${a} ${way.readouts_deg[n * index + k].toFixed(1)}°`).join(", ")}`,
    );
  };
  const soon = () => {
    fill(saved);
    window.clearTimeout(timer);
    timer = window.setTimeout(() => void ask(), 80);
  };
  const drawForm = (found: FormAnswer) => {
    known = found;
    form = new PlanForm(campaign, found, soon, () => formPanel.show({ key: campaign, words: "" }, ...drawForm(found)));
    const save = button("write into the files", () => void keep(save), "main");
    const drop = button("as saved", () => {
      clearDraft(campaign);
      if (known) formPanel.show({ key: "", words: "" }, ...drawForm(known));
      soon();
    });
    save.disabled = !may("configure");
    return [
      h("h1", {}, found.name),
      h(
        "p",
        { class: "small quiet" },
        `${found.device}; ${found.chamber}${found.simulated ? " (simulated chamber, invented data)" : ""}`,
      ),
      form.element,
      h("div", { class: "row" }, save, drop),
      saved,
    ];
  };
  const keep = async (save: HTMLButtonElement) => {
    save.disabled = true;
    try {
      const done = await post("/api/save", body());
      clearDraft(campaign);
      fill(
        saved,
        done.written.length
          ? `written: ${done.written.join(", ")}; the files as they were stay beside them`
          : "nothing was changed",
      );
      const text = saved.textContent;
      const now = await get("/api/form/{campaign}", [campaign]);
      formPanel.show({ key: campaign, words: "" }, ...drawForm(now));
      fill(saved, text);
      void ask();
    } catch (error) {
      fill(saved, h("span", { class: "bad" }, words(error)));
      save.disabled = !may("configure");
    }
  };
  const rehearse = button("rehearse on the simulated chamber", () => {
    const asked = body(),
      own = subject();
    rehearse.disabled = true;
    rehearsed = own.key;
    const place = h("div", {});
    rehearsal.show(
      own,
      h(
        "p",
        { class: "quiet" },
        "The plan is carried out on an invented chamber as imperfect as the declared one, and held against known truth.",
      ),
      place,
    );
    longWork("/api/rehearse", { ...asked, seed: 1 + Math.floor(Math.random() * 1000) }, (job) => fill(place, jobLine(job))).then(
      (found) => {
        rehearsal.show(own, ...drawRehearsal(found));
        if (own.key !== subject().key) fill(rehearsal.subject, "of the form as it was before");
      },
      (error: unknown) => {
        rehearsal.show(own);
        rehearsal.fault(error);
      },
    ).finally(() => (rehearse.disabled = !may("operate"))); // prettier-ignore
  });
  rehearse.disabled = !may("operate");
  rehearsal.tools.append(rehearse);
  rehearsal.empty(
    may("operate")
      ? "What the finished measurement would say, beside the truth."
      : "A session that may operate can rehearse the plan.",
  );
  schemes.tools.append(button("set side by side", () => {
    const asked = body(),
      own = subject();
    beside = own.key;
    void schemes.ask(own, (signal) => post("/api/schemes", asked, signal), drawSchemes);
  })); // prettier-ignore
  schemes.empty("All three positioners with every scheme, for this device and goal.");
  const stopDrafts = onDrafts(() => fill(formPanel.subject, subject().words));
  void formPanel
    .ask({ key: campaign, words: "" }, (signal) => get("/api/form/{campaign}", [campaign], signal), drawForm)
    .then((found) => found && ask());
  const element = h(
    "div",
    { class: "page plan-page" },
    h("div", { class: "card walk-card" }, walk),
    h("div", { class: "two" }, formPanel.element, answer.element),
    rehearsal.element,
    schemes.element,
  );
  return {
    title: "Plan",
    element,
    leave: () => {
      stopDrafts();
      window.clearTimeout(timer);
      window.clearInterval(playing);
      motionAsked++;
      for (const one of [formPanel, answer, rehearsal, schemes]) one.leave();
    },
  };
}

function answers(plan: PlanAnswer): Node[] {
  const total = plan.split.reduce((sum, one) => sum + one[1], 0);
  const bar = h("div", { class: "split-bar", attrs: { role: "img", "aria-label": plan.split.map(([n, s]) => `${n} ${duration(s)}`).join(", ") } }, ...plan.split.map(([, s], i) => {
    const part = h("i", { class: i ? "two" : "one" });
    part.style.width = `${(100 * s) / total}%`;
    return part;
  })); // prettier-ignore
  return [
    h("p", { class: "verdict" }, plan.verdict),
    h("div", { class: "large" }, plan.duration),
    h("p", { class: "small quiet" }, `${plan.points} points`),
    bar,
    h("p", { class: "small quiet" }, plan.split.map(([n, s]) => `${n} ${duration(s)}`).join(", ")),
    ...plan.missing.map((line) =>
      h("p", { class: "warn small" }, `Not from this plan: ${line.replace(/^\w+: /, "")}.`),
    ),
    ...(plan.forecast.length ? [h("h3", {}, "Forecast"), forecast(plan)] : []),
    h("h3", {}, "Alternatives"),
    table(
      ["plan", "duration", "points"],
      plan.alternatives.map((a) => [h("span", { attrs: { title: a.why } }, a.name), a.duration, a.points]),
    ),
    h(
      "details",
      {},
      h("summary", {}, "Why"),
      table(
        ["question", "answer"],
        plan.rows.map(([name, text]) => [h("strong", {}, name), text]),
      ),
    ),
  ];
}

/** Forecast of every figure, beside what was wanted where something was. */
function forecast(plan: PlanAnswer): HTMLElement {
  const wished = plan.forecast.some((f) => f.wanted !== null);
  const wanted = (f: PlanAnswer["forecast"][number]) =>
    f.wanted === null
      ? ""
      : h("span", { class: f.expanded <= f.wanted ? "good num" : "bad num" }, `${f.wanted} ${f.unit}`);
  return table(
    ["figure", "±", ...(wished ? ["wanted"] : []), "mostly from"],
    plan.forecast.map((f) => [
      f.label,
      h("span", { class: "num" }, `${f.text} ${f.unit}`),
      ...(wished ? [wanted(f)] : []),
      f.cause,
    ]),
  );
}

function drawSchemes(found: Scheme[]): Node[] {
  return [
    table(
      ["positioner", "scheme", "duration", "points", "slices meet at"],
      found.map((s) => [
        h(
          "span",
          { attrs: { title: `${s.formula}; suits ${s.suits}; polarization ${s.polarization}` } },
          s.geometry.replaceAll("-", " "),
        ),
        s.scheme,
        s.fault ? h("span", { class: "small bad" }, `not here: ${s.fault}`) : s.duration,
        s.points || "-",
        s.pole,
      ]),
    ),
  ];
}

function drawRehearsal(found: RehearsalAnswer): Node[] {
  const map = new LevelMap("predicted error over all directions"),
    top = Math.ceil(Math.max(...found.error_db) / 5) * 5;
  map.draw({
    rows: found.theta,
    columns: found.phi,
    values: found.error_db,
    rowName: "theta / deg",
    columnName: "phi / deg",
    low: top - 40,
    high: top,
    unit: "dB",
  });
  return [
    h(
      "p",
      {},
      `${(100 * found.share_inside).toFixed(0)} % of all stated intervals hold the truth; it took ${found.seconds.toFixed(1)} s. An invented chamber, drawn anew each time.`,
    ),
    map.element,
    h(
      "div",
      { class: "scroll", attrs: { tabindex: 0, role: "region", "aria-label": "rehearsed figures" } },
      table(
        ["figure", "measured", "true", "interval", "mostly from"],
        found.rows.map((r) => [
          r.name,
          `${r.value} ${r.unit}`,
          number(r.truth, 3),
          h("span", { class: r.inside ? "good" : "bad" }, r.inside ? "holds the truth" : "does not"),
          r.cause,
        ]),
      ),
    ),
  ];
}
