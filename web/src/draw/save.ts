/** Pictures and values of a chart as files of the reader's own. */

import { button, h } from "./dom";

export type Columns = { name: string; values: ArrayLike<number | string | null> }[];

export function saved(name: string, content: Blob): void {
  const address = URL.createObjectURL(content);
  const link = h("a", { attrs: { href: address, download: name } });
  link.click();
  window.setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

/** Comma-separated values; what was not measured is an empty cell, and no cell is taken for a formula. */
export function csv(columns: Columns): string {
  const cell = (v: number | string | null | undefined): string => {
    if (v === null || v === undefined || (typeof v === "number" && !Number.isFinite(v))) return "";
    const text = typeof v === "string" && /^[=+\-@\t\r]/.test(v) ? `'${v}` : String(v);
    return /[",\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
  };
  const rows = Math.max(0, ...columns.map((c) => c.values.length));
  const lines = [columns.map((c) => cell(c.name)).join(",")];
  for (let i = 0; i < rows; i++) lines.push(columns.map((c) => cell(c.values[i])).join(","));
  return `${lines.join("\r\n")}\r\n`;
}

/** Draw an SVG picture into pixels, twice as fine as on the screen. */
async function pixels(svg: string, width: number, height: number): Promise<Blob> {
  const address = URL.createObjectURL(new Blob([svg], { type: "image/svg+xml" }));
  const image = new Image();
  await new Promise((good, bad) => {
    image.onload = good;
    image.onerror = () => bad(new Error("the picture could not be drawn"));
    image.src = address;
  });
  const canvas = h("canvas", { attrs: { width: 2 * width, height: 2 * height } }),
    pen = canvas.getContext("2d")!;
  pen.drawImage(image, 0, 0, 2 * width, 2 * height);
  URL.revokeObjectURL(address);
  return new Promise((good, bad) =>
    canvas.toBlob((b) => (b ? good(b) : bad(new Error("the picture could not be packed"))), "image/png"),
  );
}

export type Savable = {
  name: () => string;
  svg: () => { text: string; width: number; height: number };
  columns: () => Columns;
};

/** The three buttons under a chart. */
export function saveButtons(what: Savable): HTMLElement {
  const svg = () => saved(`${what.name()}.svg`, new Blob([what.svg().text], { type: "image/svg+xml" }));
  const png = () => {
    const { text, width, height } = what.svg();
    void pixels(text, width, height).then((b) => saved(`${what.name()}.png`, b));
  };
  const values = () => saved(`${what.name()}.csv`, new Blob([csv(what.columns())], { type: "text/csv" }));
  return h(
    "span",
    { class: "save no-print", attrs: { role: "group", "aria-label": "save this chart" } },
    button("SVG", svg, "tiny", "save the picture as SVG"),
    button("PNG", png, "tiny", "save the picture as PNG"),
    button("CSV", values, "tiny", "save the values as CSV"),
  );
}

/** A name for a file from words: what is none of it becomes a hyphen. */
export function fileName(...parts: string[]): string {
  return (
    parts
      .filter(Boolean)
      .join("-")
      .toLowerCase()
      .replaceAll(/[^a-z0-9._-]+/g, "-")
      .replaceAll(/^-+|-+$/g, "") || "chart"
  );
}
