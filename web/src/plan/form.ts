/** The campaign's form: every field with its unit, limits and meaning; what is wrong is marked where it was typed. */

import { button, h } from "../draw/dom";
import type { Field, FormAnswer } from "../request/types";
import { draftOf, setDraft, type Edits } from "../shell/drafts";
import { bandsOf, bandTable, EVEN, type Band } from "./bands";

export class PlanForm {
  readonly element = h("form", { on: { submit: (event) => event.preventDefault() } });
  private labels = new Map<string, HTMLElement>();

  constructor(
    private campaign: string,
    form: FormAnswer,
    private changed: () => void,
    private again: () => void,
  ) {
    const rows = bandsOf(form.bands, draftOf(campaign)),
      fields = form.fields.filter((f) => !rows.length || !EVEN.includes(f.key));
    for (const group of new Set(fields.map((f) => f.group)))
      this.element.append(
        h(
          "fieldset",
          {},
          h("legend", {}, group),
          ...(group === "Wanted" ? [rows.length ? this.bands(form, rows) : null] : []),
          ...fields.filter((f) => f.group === group).map((f) => this.field(f)),
          group === "Wanted" && !rows.length && this.several(form),
        ),
      );
  }

  private bands(form: FormAnswer, rows: Band[]): HTMLElement {
    const saved = JSON.stringify(form.bands.rows);
    const place = bandTable(
      form.bands,
      rows,
      (now) => {
        const plain = now.map((one) => Object.fromEntries(Object.entries(one).filter(([, v]) => v !== null)));
        setDraft(this.campaign, "goal.band", JSON.stringify(plain) === saved ? undefined : (now as Edits[string]));
        this.changed();
      },
      this.again,
    );
    this.labels.set("goal.band", place);
    return place;
  }

  /** One even stretch becomes the first of several bands. */
  private several(form: FormAnswer): HTMLElement {
    return button("several bands", () => {
      const draft = draftOf(this.campaign),
        now = (key: string) => (draft[key] ?? form.fields.find((f) => f.key === key)?.value ?? null) as number | null;
      const [start_ghz, stop_ghz, points] = EVEN.map(now);
      for (const key of EVEN) setDraft(this.campaign, key, undefined);
      setDraft(this.campaign, "goal.band", [{ start_ghz, stop_ghz, points }]);
      this.again();
      this.changed();
    }, "tiny", form.bands.help); // prettier-ignore
  }

  private set(f: Field, value: unknown): void {
    const same = JSON.stringify(value) === JSON.stringify(f.value);
    this.labels.get(f.key)?.classList.toggle("changed", !same);
    setDraft(this.campaign, f.key, same ? undefined : (value as Edits[string]));
    this.changed();
  }

  private field(f: Field): HTMLElement {
    const draft = draftOf(this.campaign),
      now = f.key in draft ? draft[f.key] : f.value;
    const limits = f.least !== null || f.most !== null ? `from ${f.least ?? "-"} to ${f.most ?? "-"} ${f.unit}` : "";
    const help = [f.help, limits].filter(Boolean).join(" ");
    const label = h(
      "label",
      { class: f.key in draft ? "field changed" : "field", attrs: { title: help } },
      h("span", {}, f.label),
    );
    this.labels.set(f.key, label);
    const wrong = h("span", { class: "field-fault" });
    if (f.choices.length) {
      const select = h(
        "select",
        { on: { change: () => this.set(f, select.value) } },
        ...f.choices.map((c) => h("option", { attrs: { value: c } }, c)),
      );
      select.value = String(now);
      label.append(select, h("span", { class: "unit" }), wrong);
      return label;
    }
    if (Array.isArray(f.value)) {
      const values = now as number[];
      const boxes = values.map((v, i) =>
        h("input", {
          attrs: { type: "number", step: "any", value: String(v), "aria-label": `${f.label}, ${"xyz"[i] ?? i}` },
          on: {
            input: () =>
              this.set(
                f,
                boxes.map((b) => Number(b.value)),
              ),
          },
        }),
      );
      label.classList.add("three");
      label.append(...boxes, h("span", { class: "unit" }, f.unit || "mm"), wrong);
      return h("div", { class: "field-group" }, label);
    }
    const input = h("input", {
      attrs: {
        type: "number",
        step: f.whole ? "1" : "any",
        value: now === null || now === undefined ? "" : String(now as number),
        placeholder: f.optional ? "chosen" : "",
      },
      on: { input: () => this.set(f, input.value === "" ? (f.optional ? null : f.value) : Number(input.value)) },
    });
    label.append(input, h("span", { class: "unit" }, f.unit === f.label ? "" : f.unit), wrong);
    return label;
  }

  /** Mark the fields that faults name; the others lose their marks. */
  marks(faults: string[]): void {
    for (const [key, label] of this.labels) {
      const last = key.split(".").at(-1)!;
      // Bands are named by their number: band.0 = ..., band 2 starts at ...
      const named = last === "band" ? /(^|[\s.:])band([. ]\d|:| =)/ : new RegExp(`(^|[\\s.:])${last} =`),
        own = faults.find((line) => named.test(line)) ?? "";
      label.classList.toggle("wrong", own !== "");
      label.querySelector(".field-fault")!.textContent = own.slice(own.indexOf("must") >= 0 ? own.indexOf("must") : 0);
      for (const box of label.querySelectorAll("input, select")) box.setAttribute("aria-invalid", String(own !== ""));
    }
  }
}
