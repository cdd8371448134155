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

const resizing = new WeakMap<Element, () => void>();
let sizes: ResizeObserver | null = null;

/** Do something whenever an element's size changes.
 *
 * One observer for all, which knows what to do by a weak map, so that no observer's function names an element of a page that
 * was left.
 */
export function onResize(element: Element, action: () => void): void {
  resizing.set(element, action);
  sizes ??= new ResizeObserver((entries) => {
    for (const one of entries) resizing.get(one.target)?.();
  });
  sizes.observe(element);
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
  select.setAttribute("aria-label", label);
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
  say: (value: number) => string = (v) => `${v}${unit}`,
): HTMLLabelElement {
  const shown = h("output", {}, say(value));
  const input = h("input", {
    attrs: { type: "range", min: least, max: most, step, value, "aria-label": label, "aria-valuetext": say(value) },
    on: {
      input: () => {
        const now = Number(input.value);
        action(now);
        // Some sliders say what the action made of the value.
        fill(shown, say(now));
        input.setAttribute("aria-valuetext", say(now));
      },
    },
  });
  return h("label", { class: "field wide" }, h("span", {}, label), input, shown);
}

/** Tabs by the pattern of the accessibility practices: arrows move, the panel is named by its tab. */
export function tabs(
  names: [string, string][],
  chosen: string,
  panel: HTMLElement,
  action: (key: string) => void,
): HTMLElement {
  const list = h("div", { class: "tabs", attrs: { role: "tablist" } });
  const choose = (key: string, focus: boolean) => {
    for (const one of list.children) {
      const own = one.getAttribute("data-key") === key;
      one.setAttribute("aria-selected", String(own));
      one.setAttribute("tabindex", own ? "0" : "-1");
      if (own && focus) (one as HTMLElement).focus();
    }
    panel.setAttribute("aria-labelledby", `tab-${key}`);
    action(key);
  };
  names.forEach(([key, words], i) => {
    const one = h(
      "button",
      {
        attrs: {
          type: "button",
          role: "tab",
          id: `tab-${key}`,
          "data-key": key,
          "aria-controls": panel.id,
          "aria-selected": String(key === chosen),
          tabindex: key === chosen ? 0 : -1,
        },
        on: { click: () => choose(key, false) },
      },
      words,
    );
    one.addEventListener("keydown", (event) => {
      const step = event.key === "ArrowRight" ? 1 : event.key === "ArrowLeft" ? -1 : 0;
      const to =
        event.key === "Home"
          ? 0
          : event.key === "End"
            ? names.length - 1
            : step
              ? (i + step + names.length) % names.length
              : -1;
      if (to < 0) return;
      event.preventDefault();
      choose(names[to][0], true);
    });
    list.append(one);
  });
  panel.setAttribute("role", "tabpanel");
  panel.setAttribute("tabindex", "0");
  panel.setAttribute("aria-labelledby", `tab-${chosen}`);
  return list;
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
  if (value === null || value === undefined || !Number.isFinite(value)) return "-";
  const text = value.toFixed(digits);
  // What rounds to zero has no sign.
  return Number(text) === 0 ? text.replace("-", "") : text;
}
