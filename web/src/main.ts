/** The control room's page. */

import "./style.css";
import { alignPage } from "./align/align";
import { live } from "./live/live";
import { me, post } from "./request/server";
import { button, choice, fill, h } from "./draw/dom";
import { explorePage } from "./explore/explore";
import { planPage } from "./plan/plan";
import { scanPage } from "./scan/scan";
import { keep, kept } from "./shell/kept";
import { leaseButton, may, session, stopButton, words, type Page } from "./shell/shell";

const PAGES: Record<string, [string, () => Page]> = {
  plan: ["Plan", planPage],
  align: ["Align", alignPage],
  scan: ["Scan", scanPage],
  explore: ["Explore", explorePage],
};
let page: Page | null = null;

function theme(wanted?: string): void {
  const saved = wanted ?? kept("theme") ?? (matchMedia("(prefers-color-scheme: dark)").matches ? "dark" : "light");
  document.documentElement.dataset["theme"] = saved;
  if (wanted) keep("theme", wanted);
}

function show(): void {
  const name = location.hash.slice(1) in PAGES ? location.hash.slice(1) : "plan";
  page?.leave();
  page = PAGES[name][1]();
  document.title = `Colure: ${page.title}`;
  document.querySelectorAll("nav a").forEach((a) => {
    if (a.getAttribute("href") === `#${name}`) a.setAttribute("aria-current", "page");
    else a.removeAttribute("aria-current");
  });
  document.querySelector("main")?.replaceWith(page.element);
}

function mark(): SVGSVGElement {
  const space = "http://www.w3.org/2000/svg",
    svg = document.createElementNS(space, "svg");
  svg.setAttribute("viewBox", "0 0 24 24");
  svg.setAttribute("width", "24");
  svg.setAttribute("height", "24");
  svg.setAttribute("aria-hidden", "true");
  for (const [rx, colour] of [
    [10, "var(--ink)"],
    [4, "var(--cross)"],
  ] as [number, string][]) {
    const one = document.createElementNS(space, "ellipse");
    for (const [key, value] of Object.entries({
      cx: 12,
      cy: 12,
      rx,
      ry: 10,
      fill: "none",
      stroke: colour,
      "stroke-width": 1.8,
    }))
      one.setAttribute(key, String(value));
    svg.append(one);
  }
  return svg;
}

async function begin(): Promise<void> {
  theme();
  const app = document.getElementById("app")!;
  try {
    session.me = await me();
    const campaigns = session.me.campaigns;
    session.campaign = campaigns[0].id;
    const link = h("span", { class: "chip" });
    const invite = button(
      "invite",
      () =>
        void (async () => {
          const { code } = await post("/api/invite", { role: "view" });
          const text = `${location.origin}/launch?code=${code}`;
          const dialog = h(
            "dialog",
            { on: { close: () => dialog.remove() } },
            h("h1", {}, "A link for somebody who watches"),
            h("p", {}, "It opens one session, on this computer, that may look and stop and nothing else."),
            h("p", { class: "mono" }, text),
            button("close", () => dialog.close()),
          );
          document.body.append(dialog);
          // Not in the way of anything: stop stays in reach.
          dialog.show();
        })(),
    );
    live.watch({
      linked: (up) => {
        link.className = `chip${up ? "" : " hot"}`;
        fill(link, up ? `connected, may ${session.me!.role}` : "not connected");
      },
    });
    fill(
      app,
      h(
        "header",
        { class: "top" },
        h("span", { class: "name" }, mark(), "Colure"),
        h(
          "nav",
          { attrs: { "aria-label": "pages" } },
          ...Object.entries(PAGES).map(([key, [title]]) => h("a", { attrs: { href: `#${key}` } }, title)),
        ),
        campaigns.length > 1 &&
          choice(
            "",
            campaigns.map((c) => [c.id, c.folder]),
            session.campaign,
            (id) => {
              session.campaign = id;
              show();
            },
          ),
        h("span", { class: "spring" }),
        link,
        may("configure") && invite,
        button(
          "◐",
          () => {
            theme(document.documentElement.dataset["theme"] === "dark" ? "light" : "dark");
            show();
          },
          "",
          "light or dark",
        ),
        leaseButton(),
        stopButton(),
      ),
      h("main"),
    );
    window.addEventListener("hashchange", show);
    live.open();
    show();
  } catch (error) {
    fill(app, h("main", {}, h("h1", {}, "The control room did not open"), h("p", { class: "faults" }, words(error))));
  }
}

void begin();
