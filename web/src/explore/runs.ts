/** The runs of a campaign in a drawer: what each holds, when it was measured, what was said of it; found by words. */

import { levels, lines } from "../draw/colours";
import { button, fill, h } from "../draw/dom";
import { post } from "../request/server";
import type { RunRow, Thumb } from "../request/types";
import { againDialog } from "../scan/start";
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
  private loaded = false;
  private asking = false;
  private wanted: string[] = [];
  private thumbs = new Map<string, HTMLElement>();
  private stop = new AbortController();
  private campaign = session.campaign;
  private seen = new IntersectionObserver((entries) => {
    for (const one of entries)
      if (one.isIntersecting) {
        this.seen.unobserve(one.target);
        this.wanted.push(one.target.getAttribute("data-thumb") ?? "");
      }
    void this.askThumbs();
  });
  private search = h("input", {
    attrs: { type: "search", placeholder: "find by name, tag, operator, state", "aria-label": "find runs" },
    on: { input: () => this.draw() },
  });
  private summary = h("summary", {}, "Runs");

  constructor(private open: (run: string) => void) {
    this.element = h("details", { class: "card drawer", attrs: { open: true } }, this.summary, this.search, this.list);
    this.draw();
  }

  fill(runs: RunRow[]): void {
    this.runs = runs;
    this.loaded = true;
    this.draw();
  }

  leave(): void {
    this.stop.abort();
    this.seen.disconnect();
  }

  /** The picture's place; it is asked for when it comes into view, one after the other, and kept while the list is open. */
  private thumbOf(run: RunRow): HTMLElement {
    const kept = this.thumbs.get(run.name);
    if (kept) return kept;
    const place = h("span", { class: "thumb", attrs: { "data-thumb": run.name } });
    this.thumbs.set(run.name, place);
    this.seen.observe(place);
    return place;
  }

  private async askThumbs(): Promise<void> {
    if (this.asking) return;
    this.asking = true;
    for (let name; (name = this.wanted.shift()) !== undefined && !this.stop.signal.aborted;) {
      const place = this.thumbs.get(name);
      try {
        const found = await post("/api/thumb", { campaign: this.campaign, run: name }, this.stop.signal);
        if (place) fill(place, picture(found));
        if (place) place.title = TOLD[found.what];
      } catch {
        // A list without a picture is still the list.
      }
    }
    this.asking = false;
  }

  choose(name: string): void {
    this.chosen = name;
    fill(this.summary, "Runs", h("span", { class: "subject mono" }, name ? `open: ${name}` : ""));
    for (const one of this.list.querySelectorAll("button[data-run]"))
      one.setAttribute("aria-pressed", String(one.getAttribute("data-run") === name));
  }

  private draw(): void {
    const shown = this.runs.filter((run) => matches(run, this.search.value));
    if (!this.loaded) fill(this.list, h("p", { class: "quiet" }, "The runs are being listed."));
    else if (!this.runs.length)
      fill(this.list, h("p", { class: "quiet" }, "No runs yet. Scan makes them; colure acquire does too."));
    else if (!shown.length) fill(this.list, h("p", { class: "quiet" }, "No run has these words."));
    else fill(this.list, ...shown.map((run) => this.card(run)));
    this.choose(this.chosen);
  }

  private card(run: RunRow): HTMLElement {
    const when = run.measured_at
      ? new Date(1000 * run.measured_at).toLocaleString([], { dateStyle: "medium", timeStyle: "short" })
      : "";
    const kind = run.kind === "begun" ? "not sealed" : run.kind === "power" ? "power only" : run.kind;
    const main = h(
      "button",
      {
        class: "run",
        on: { click: () => this.open(run.name) },
        attrs: { type: "button", "data-run": run.name, "aria-pressed": "false" },
      },
      this.thumbOf(run),
      h("strong", {}, run.name),
      h("span", { class: "small" }, [kind, run.identity["tag"], run.identity["operator"]].filter(Boolean).join(", ")),
      h("span", { class: `small ${run.state === "complete" ? "good" : "warn-text"}` }, stateWords(run)),
      h("span", { class: "small quiet" }, when),
    );
    const about = button("notes", () => this.about(run), "tiny", "tag, operator, notes");
    about.setAttribute("aria-label", `notes of ${run.name}`);
    const again = button("again", () => againDialog(run.name), "tiny", "measure slices of it again");
    again.setAttribute("aria-label", `measure slices of ${run.name} again`);
    return h(
      "div",
      { class: "run-card" },
      main,
      h("span", { class: "run-tools" }, run.state === "complete" && run.total > 0 && may("operate") && again, about),
    );
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

const TOLD: Record<Thumb["what"], string> = {
  pattern: "total level over theta (down) and phi (across), 40 dB",
  "as read": "levels as they were read, over theta (down) and phi (across), 40 dB; no pattern was processed yet",
  cut: "the first cut, 40 dB",
  "": "nothing measured",
};

/** A pattern or what was read of it as a map, a cut as a line; nothing where nothing was measured. */
function picture(found: Thumb): HTMLElement | null {
  if (!found.what) return null;
  const canvas = h("canvas", {
      attrs: { width: found.what === "cut" ? 192 : 48, height: found.what === "cut" ? 48 : 24, "aria-hidden": "true" },
    }),
    pen = canvas.getContext("2d");
  if (!pen) return null;
  if (found.what === "cut") {
    pen.strokeStyle = lines().co;
    pen.lineWidth = 2;
    found.shades.forEach((v, i) => pen.lineTo((192 * i) / (found.shades.length - 1), 46 - (44 * v) / 255));
    pen.stroke();
    return canvas;
  }
  const pixels = pen.createImageData(48, 24);
  found.shades.forEach((v, i) => {
    for (let c = 0; c < 3; c++) pixels.data[4 * i + c] = levels[3 * Math.max(0, v) + c];
    pixels.data[4 * i + 3] = v < 0 ? 0 : 255;
  });
  pen.putImageData(pixels, 0, 0);
  return canvas;
}
