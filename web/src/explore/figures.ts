/** The figures of the opened run at the frequency that is looked at, with their intervals or what a trial changes. */

import { button, fill, h, number, table } from "../draw/dom";
import { fileName, saveButtons } from "../draw/save";
import type { FigureRow } from "../request/types";
import { jobLine, longWork } from "../shell/jobs";
import { Panel } from "../shell/panel";
import { may } from "../shell/session";
import type { Explorer } from "./explore";

/** Text of an interval with the digits that its value has. */
export function interval(row: Pick<FigureRow, "text" | "lower" | "upper">): string {
  if (row.lower === null || row.upper === null) return "";
  const digits = Math.min(4, Math.max(1, /\.(\d+)/.exec(row.text)?.[1].length ?? 1));
  return `${row.lower.toFixed(digits)} to ${row.upper.toFixed(digits)}`;
}

/** A value with its unit on one line; a reason in its place runs over several. */
export function valueCell(row: Pick<FigureRow, "text" | "unit" | "value">): HTMLElement {
  return row.value === null
    ? h("span", { class: "quiet" }, row.text)
    : h("span", { class: "num" }, `${row.text} ${row.unit}`.trim());
}

export class FiguresPanel {
  private panel = new Panel("Figures", "card figures-panel");
  readonly element = this.panel.element;
  private plain = new Map<string, FigureRow[]>();

  constructor(private explorer: Explorer) {}

  clear(why = ""): void {
    this.panel.empty(why);
  }

  show(): void {
    const { looked } = this.explorer,
      known = looked.known;
    if (!known) return;
    const own = `${looked.run}/${looked.state ?? ""}`;
    if (!looked.tried) this.plain.set(own, known.figures);
    const before = this.plain.get(own),
      here = known.figures.filter((x) => Math.abs(x.frequency_hz - looked.hz) < 1);
    const evaluated = here.some((x) => x.lower !== null);
    const change = (x: FigureRow) => {
      const was = before?.find((one) => one.name === x.name && Math.abs(one.frequency_hz - x.frequency_hz) < 1)?.value;
      return was === null || was === undefined || x.value === null
        ? ""
        : `${x.value >= was ? "+" : ""}${number(x.value - was, 3)}`;
    };
    const rows = kin(here).map((x) => [
      h("span", { attrs: { title: x.definition } }, x.label),
      valueCell(x),
      looked.tried ? change(x) : interval(x),
    ]);
    const saving = saveButtons({
      name: () => fileName("figures", looked.run, looked.state ?? ""),
      svg: () => ({ text: tableSvg(here), width: 560, height: 30 + 18 * here.length }),
      columns: () => [
        { name: "figure", values: known.figures.map((x) => x.label) },
        { name: "frequency / Hz", values: known.figures.map((x) => x.frequency_hz) },
        { name: "value", values: known.figures.map((x) => x.value) },
        { name: "lower", values: known.figures.map((x) => x.lower) },
        { name: "upper", values: known.figures.map((x) => x.upper) },
        { name: "unit", values: known.figures.map((x) => x.unit) },
      ],
    });
    const third = looked.tried ? "change by the trial" : "95 % interval";
    this.panel.show(
      looked.subject(true),
      h(
        "div",
        { class: "scroll", attrs: { tabindex: 0, role: "region", "aria-label": "table of figures" } },
        spread(table(["figure", "value", third], rows, "figures"), kin(here)),
      ),
      h("div", { class: "chart-tools" }, saving),
      !evaluated && !looked.tried ? this.evaluate() : null,
    );
  }

  private evaluate(): HTMLElement {
    const place = h("div", {}),
      { looked } = this.explorer,
      asked = looked.one();
    const go = button("with intervals", () => {
      go.disabled = true;
      longWork("/api/evaluate", asked, (job) => fill(place, jobLine(job))).then(
        () => (looked.run === asked.run && looked.state === asked.state ? this.explorer.again() : undefined),
        (error: unknown) => {
          go.disabled = false;
          fill(place);
          this.panel.fault(error);
        },
      );
    }, "", "evaluate every figure with its uncertainty"); // prettier-ignore
    go.disabled = !may("operate");
    return h(
      "div",
      {},
      h(
        "p",
        { class: "small quiet" },
        may("operate")
          ? "Values without intervals so far."
          : "Values without intervals; a session that may operate works them out.",
      ),
      go,
      place,
    );
  }
}

/** A reason in place of a value takes the room of the interval too. */
export function spread(made: HTMLTableElement, rows: Pick<FigureRow, "value">[]): HTMLTableElement {
  rows.forEach((row, i) => {
    if (row.value !== null) return;
    const line = made.tBodies[0].rows[i];
    line.deleteCell(2);
    line.cells[1].colSpan = 2;
  });
  return made;
}

/** Figures that exist first, the others after them in their order. */
export function kin(rows: FigureRow[]): FigureRow[] {
  return [...rows.filter((x) => x.value !== null), ...rows.filter((x) => x.value === null)];
}

function tableSvg(rows: FigureRow[]): string {
  const safe = (text: string) => text.replaceAll("&", "&amp;").replaceAll("<", "&lt;");
  const lines = rows.map(
    (x, i) =>
      `<text x="10" y="${38 + 18 * i}">${safe(x.label)}</text><text x="330" y="${38 + 18 * i}">${safe(`${x.text} ${x.unit}`)}</text><text x="440" y="${38 + 18 * i}">${safe(interval(x))}</text>`,
  );
  return `<svg xmlns="http://www.w3.org/2000/svg" width="560" height="${30 + 18 * rows.length}" font-family="system-ui" font-size="12"><rect width="100%" height="100%" fill="#fff"/>${lines.join("")}</svg>`;
}
