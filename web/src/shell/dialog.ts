/** A dialog that holds everything but the control bar: stop stays in reach whatever is asked. */

import { button, h } from "../draw/dom";

export type Dialog = { element: HTMLElement; close: () => void };

export function dialog(
  title: string,
  content: (close: () => void) => (Node | null | false)[],
  closed: () => void = () => undefined,
): Dialog {
  const before = document.activeElement as HTMLElement | null,
    held = [...document.querySelectorAll<HTMLElement>("header.top, main")];
  const close = () => {
    if (!shade.isConnected) return;
    shade.remove();
    for (const one of held) one.inert = false;
    before?.focus();
    closed();
  };
  const heading = h("h2", { attrs: { id: "dialog-title", tabindex: -1 } }, title);
  const box = h(
    "div",
    { class: "dialog", attrs: { role: "dialog", "aria-modal": "true", "aria-labelledby": "dialog-title" } },
    h(
      "div",
      { class: "row" },
      heading,
      h("span", { class: "spring" }),
      button("close", close, "tiny", "close (Escape)"),
    ),
    ...content(close).filter((c): c is Node => c instanceof Node),
  );
  const shade = h("div", { class: "shade" }, box);
  shade.addEventListener("keydown", (event) => {
    if (event.key === "Escape") close();
  });
  for (const one of held) one.inert = true;
  document.body.append(shade);
  heading.focus();
  return { element: box, close };
}
