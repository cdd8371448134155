/** The runs of a campaign in a drawer: what each holds, when it was measured, what was said of it; found by words. */

import { levels } from "../draw/colours";
import { button, fill, h } from "../draw/dom";
import { post } from "../request/server";
import type { RunRow } from "../request/types";
import { dialog } from "../shell/dialog";
import { may, session, words } from "../shell/session";

const STATES: Record<RunRow["state"], string> = {
  complete: "complete",
  stopped: "stopped, can go on",
  begun: "begun, can go on",
  damaged: "journal cannot be read",
  nothing: "empty",
};
const ENTRIES: [string, string][] = [
  ["tag", "tag"],
  ["operator", "operator"],
  ["serial", "serial number"],
  ["customer", "customer"],
  ["order", "order"],
  ["note", "notes"],
];

/** Whether every word occurs in what is known of a run. */
export function matches(run: RunRow, text: string): boolean {
  const all = [run.name, run.kind, STATES[run.state], ...Object.values(run.identity)].join(" ").toLowerCase();
  return text
    .toLowerCase()
    .split(/\s+/)
    .every((word) => all.includes(word));
}

export function stateWords(run: RunRow): string {
  const count = run.total && run.state !== "complete" ? ` (${run.measured} of ${run.total})` : "";
  return `${STATES[run.state]}${count}`;
}

export class RunDrawer {
  readonly list = h("div", { class: "runs" });
  readonly element: HTMLDetailsElement;
  private runs: RunRow[] = [];
  private chosen = "";
  private search = h("input", {
    attrs: { type: "search", placeholder: "find by name, tag, operator, state", "aria-label": "find runs" },
    on: { input: () => this.draw() },
  });
  private summary = h("summary", {}, "Runs");

  constructor(private open: (run: string) => void) {
    this.element = h("details", { class: "card drawer", attrs: { open: true } }, this.summary, this.search, this.list);
  }

  fill(runs: RunRow[]): void {
    this.runs = runs;
    this.draw();
  }

  choose(name: string): void {
    this.chosen = name;
    fill(this.summary, "Runs", h("span", { class: "subject mono" }, name ? `open: ${name}` : ""));
    for (const one of this.list.querySelectorAll("button[data-run]"))
      one.setAttribute("aria-pressed", String(one.getAttribute("data-run") === name));
  }

  private draw(): void {
    const shown = this.runs.filter((run) => matches(run, this.search.value));
    if (!this.runs.length)
      fill(this.list, h("p", { class: "quiet" }, "No runs yet. Scan makes them; colure acquire does too."));
    else if (!shown.length) fill(this.list, h("p", { class: "quiet" }, "No run has these words."));
    else fill(this.list, ...shown.map((run) => this.card(run)));
    this.choose(this.chosen);
  }

  private card(run: RunRow): HTMLElement {
    const when = run.measured_at
      ? new Date(1000 * run.measured_at).toLocaleString([], { dateStyle: "medium", timeStyle: "short" })
      : "";
    const kind = run.kind === "cuts" ? "cuts" : run.kind === "sphere" ? "sphere" : "not sealed";
    const main = h(
      "button",
      {
        class: "run",
        on: { click: () => this.open(run.name) },
        attrs: { type: "button", "data-run": run.name, "aria-pressed": "false" },
      },
      thumb(run),
      h("strong", {}, run.name),
      h("span", { class: "small" }, [kind, run.identity["tag"], run.identity["operator"]].filter(Boolean).join(", ")),
      h("span", { class: `small ${run.state === "complete" ? "good" : "warn-text"}` }, stateWords(run)),
      h("span", { class: "small quiet" }, when),
    );
    const about = button("notes", () => this.about(run), "tiny", "tag, operator, notes");
    about.setAttribute("aria-label", `notes of ${run.name}`);
    return h("div", { class: "run-card" }, main, about);
  }

  private about(run: RunRow): void {
    const faults = h("p", { class: "faults", attrs: { role: "alert" } });
    const boxes = ENTRIES.map(([key, label]) => {
      const box =
        key === "note"
          ? h("textarea", { attrs: { rows: 4, maxlength: 2000, disabled: !may("operate") } })
          : h("input", { attrs: { maxlength: 200, disabled: !may("operate") } });
      box.value = run.identity[key] ?? "";
      return [key, label, box] as const;
    });
    dialog(`What is said of ${run.name}`, (close) => [
      ...boxes.map(([, label, box]) => h("label", { class: "field stacked" }, h("span", {}, label), box)),
      faults,
      h("div", { class: "row" }, h("span", { class: "small quiet" }, "Kept beside the record and shown in its reports. An empty entry leaves the former one."), h("span", { class: "spring" }), may("operate") && button("keep", () => {
        const said = Object.fromEntries(boxes.map(([key, , box]) => [key, box.value.trim()]).filter(([, v]) => v));
        post("/api/identity", { campaign: session.campaign, run: run.name, said }).then((now) => {
          run.identity = now;
          this.draw();
          close();
        }, (error: unknown) => fill(faults, words(error)));
      }, "main")),
    ]); // prettier-ignore
  }
}

function thumb(run: RunRow): HTMLElement | null {
  if (!run.thumb) return null;
  const picture = h("canvas", { class: "thumb", attrs: { width: 48, height: 24, "aria-hidden": "true" } }),
    pen = picture.getContext("2d");
  if (!pen) return picture;
  const pixels = pen.createImageData(48, 24);
  run.thumb.forEach((v, i) => {
    for (let c = 0; c < 3; c++) pixels.data[4 * i + c] = levels[3 * v + c];
    pixels.data[4 * i + 3] = 255;
  });
  pen.putImageData(pixels, 0, 0);
  return picture;
}
