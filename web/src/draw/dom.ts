/** Building the page: text only ever becomes text, never markup. */

type Child = Node | string | number | null | undefined | false;
type Props = {
  class?: string;
  on?: Record<string, (event: Event) => void>;
  attrs?: Record<string, string | number | boolean | undefined>;
};

export function h<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  props: Props = {},
  ...children: Child[]
): HTMLElementTagNameMap[K] {
  const element = document.createElement(tag);
  if (props.class) element.className = props.class;
  for (const [name, value] of Object.entries(props.attrs ?? {})) {
    if (value === true) element.setAttribute(name, "");
    else if (value !== false && value !== undefined) element.setAttribute(name, String(value));
  }
  for (const [name, handler] of Object.entries(props.on ?? {})) element.addEventListener(name, handler);
  fill(element, ...children);
  return element;
}

/** Put children into an element in place of what was there. */
export function fill(element: Element, ...children: Child[]): void {
  element.replaceChildren(
    ...children
      .filter((c): c is Node | string | number => c !== null && c !== undefined && c !== false)
      .map((c) => (c instanceof Node ? c : String(c))),
  );
}

export function button(label: string, action: () => void, kind = "", title = ""): HTMLButtonElement {
  return h(
    "button",
    { class: kind, on: { click: action }, attrs: { type: "button", title: title || undefined } },
    label,
  );
}

export function choice(
  label: string,
  options: [string, string][],
  value: string,
  action: (value: string) => void,
): HTMLLabelElement {
  const select = h(
    "select",
    { on: { change: () => action(select.value) } },
    ...options.map(([key, words]) => h("option", { attrs: { value: key } }, words)),
  );
  select.value = value;
  return h("label", { class: "field" }, h("span", {}, label), select);
}

export function slider(
  label: string,
  least: number,
  most: number,
  step: number,
  value: number,
  action: (value: number) => void,
  unit = "",
): HTMLLabelElement {
  const shown = h("output", {}, `${value}${unit}`);
  const input = h("input", {
    attrs: { type: "range", min: least, max: most, step, value, "aria-label": label },
    on: {
      input: () => {
        fill(shown, `${input.value}${unit}`);
        action(Number(input.value));
      },
    },
  });
  return h("label", { class: "field wide" }, h("span", {}, label), input, shown);
}

export function table(head: string[], rows: Child[][], kind = ""): HTMLTableElement {
  return h(
    "table",
    { class: kind },
    h("thead", {}, h("tr", {}, ...head.map((name) => h("th", { attrs: { scope: "col" } }, name)))),
    h("tbody", {}, ...rows.map((row) => h("tr", {}, ...row.map((cell) => h("td", {}, cell))))),
  );
}

/** Call after typing has rested a moment; an answer that was overtaken is dropped. */
export function rested(action: () => void, ms = 60): () => void {
  let timer = 0;
  return () => {
    window.clearTimeout(timer);
    timer = window.setTimeout(action, ms);
  };
}

export function duration(seconds: number): string {
  const minutes = Math.round(seconds / 60);
  if (seconds < 90) return `${Math.round(seconds)} s`;
  return minutes < 60 ? `${minutes} min` : `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, "0")} min`;
}

export function number(value: number | null | undefined, digits = 2): string {
  return value === null || value === undefined || !Number.isFinite(value) ? "-" : value.toFixed(digits);
}
