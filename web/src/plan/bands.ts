/** The bands of a sweep as rows that are edited: each with its frequencies and, if wanted, its own bandwidth and power. */

import { button, h } from "../draw/dom";
import type { BandForm } from "../request/types";
import type { Edits } from "../shell/drafts";

export type Band = Record<string, number | number[] | null>;
/** Entries that one even stretch of frequencies has instead. */
export const EVEN = ["goal.start_ghz", "goal.stop_ghz", "goal.points"];

/** The bands as they stand in the form: those of the draft, else those of the files. */
export function bandsOf(form: BandForm, draft: Edits): Band[] {
  return ((draft["goal.band"] ?? form.rows) as Band[]).map((one) => ({ ...one }));
}

/** A band above another one: as wide, and as many frequencies; none where nothing is known of the one before. */
export function above(before: Band | undefined): Band {
  const start = Number(before?.["start_ghz"] ?? 1),
    stop = Number(before?.["stop_ghz"] ?? start),
    width = Math.max(stop - start, 0.01 * stop);
  const round = (v: number) => Number(v.toPrecision(6));
  return {
    start_ghz: round(stop + width),
    stop_ghz: round(stop + 2 * width),
    points: Math.max(2, Number(before?.["points"] ?? 2)),
  };
}

/** The rows; `changed` gets all of them anew, `again` draws the form after one came or went. */
export function bandTable(
  form: BandForm,
  rows: Band[],
  changed: (rows: Band[]) => void,
  again: () => void,
): HTMLElement {
  const mayEdit = form.listed === "";
  const box = (row: Band, i: number, k: number): HTMLElement | null => {
    const f = form.columns[k],
      name = f.key.replace("band.", ""),
      own = row["frequencies_ghz"],
      words = h("span", {}, f.unit === f.label ? f.label : `${f.label} / ${f.unit}`);
    if (Array.isArray(own) && ["start_ghz", "stop_ghz", "points", "step_mhz"].includes(name)) {
      if (k) return null;
      const few = own.slice(0, 5).join(", ") + (own.length > 5 ? `, ... (${own.length})` : "");
      return h("div", { class: "listed small" }, `${few} GHz: a list of its own, which is edited in goal.toml`);
    }
    const input = h("input", {
      attrs: {
        type: "number",
        step: f.whole ? "1" : "any",
        value: row[name] === null || row[name] === undefined ? "" : String(row[name] as number),
        placeholder: name.startsWith("if_") || name.startsWith("power") ? "of all" : "",
        "aria-label": `band ${i + 1}, ${f.label} in ${f.unit}`,
        title: `${f.help} From ${f.least ?? "-"} to ${f.most ?? "-"} ${f.unit}.`,
        disabled: !mayEdit,
      },
      on: {
        input: () => {
          row[name] = input.value === "" ? null : Number(input.value);
          // One of the two says how many: who types one leaves the other out.
          const other = name === "points" ? "step_mhz" : name === "step_mhz" ? "points" : "";
          if (other && input.value !== "" && row[other] !== undefined && row[other] !== null) {
            row[other] = null;
            const k = form.columns.findIndex((c) => c.key === `band.${other}`);
            const beside = input.closest(".band")!.querySelectorAll("input")[k];
            if (beside) beside.value = "";
          }
          changed(rows);
        },
      },
    });
    return h("label", {}, words, input);
  };
  const drop = (i: number) =>
    button("remove", () => {
      rows.splice(i, 1);
      changed(rows);
      again();
    }, "tiny", `remove band ${i + 1}`); // prettier-ignore
  const add = button(
    "add a band",
    () => {
      rows.push(above(rows[rows.length - 1]));
      changed(rows);
      again();
    },
    "tiny",
  );
  return h(
    "div",
    { class: "bands" },
    h("p", { class: "small quiet" }, mayEdit ? form.help : `From the list ${form.listed}: it is edited there. ${form.help}`),
    ...rows.map((row, i) =>
      h(
        "div",
        { class: "band", attrs: { role: "group", "aria-label": `band ${i + 1}` } },
        h("strong", {}, `${i + 1}`),
        h("div", { class: "band-boxes" }, ...form.columns.map((_, k) => box(row, i, k))),
        mayEdit && rows.length > 1 && drop(i),
      ),
    ),
    h("p", { class: "field-fault", attrs: { role: "status" } }),
    mayEdit ? add : "",
  ); // prettier-ignore
}
