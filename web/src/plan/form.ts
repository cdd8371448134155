/** The campaign's form: every field with its unit, limits and meaning; what is wrong is marked where it was typed. */

import { h } from "../draw/dom";
import type { Field, FormAnswer } from "../request/types";
import { draftOf, setDraft, type Edits } from "../shell/drafts";

export class PlanForm {
  readonly element = h("form", { on: { submit: (event) => event.preventDefault() } });
  private labels = new Map<string, HTMLElement>();

  constructor(
    private campaign: string,
    form: FormAnswer,
    private changed: () => void,
  ) {
    for (const group of new Set(form.fields.map((f) => f.group)))
      this.element.append(
        h(
          "fieldset",
          {},
          h("legend", {}, group),
          ...form.fields.filter((f) => f.group === group).map((f) => this.field(f)),
        ),
      );
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
      const own = faults.find((line) => new RegExp(`(^|[\\s.:])${last} =`).test(line)) ?? "";
      label.classList.toggle("wrong", own !== "");
      label.querySelector(".field-fault")!.textContent = own.slice(own.indexOf("must") >= 0 ? own.indexOf("must") : 0);
      for (const box of label.querySelectorAll("input, select")) box.setAttribute("aria-invalid", String(own !== ""));
    }
  }
}
