/** The control room's page: one scene, one bar, and the page that one is at. */

import "./style.css";
import { alignPage } from "./align/align";
import { button, choice, fill, h, onResize } from "./draw/dom";
import { explorePage, TABS } from "./explore/explore";
import { BASES, COORDINATES, SHOWN } from "./explore/state";
import { live } from "./live/live";
import { planPage } from "./plan/plan";
import { me, post } from "./request/server";
import { scanPage } from "./scan/scan";
import { Chamber } from "./scene/chamber";
import { DirectionSphere } from "./scene/sphere";
import { Stage } from "./scene/stage";
import { put, read } from "./shell/address";
import { remarks } from "./shell/arrival";
import { controlBar } from "./shell/bar";
import { cursor } from "./shell/cursor";
import { dialog } from "./shell/dialog";
import { onDrafts, unsaved } from "./shell/drafts";
import { jobsButton } from "./shell/jobs";
import { keep, kept } from "./shell/kept";
import { leaseButton } from "./shell/lease";
import type { Page, View } from "./shell/page";
import { may, session, words } from "./shell/session";
import { learnPage, STANDS } from "./tutor/tutor";

const PAGES: Record<string, [string, (view: View) => Page]> = {
  plan: ["Plan", planPage],
  align: ["Align", alignPage],
  scan: ["Scan", scanPage],
  explore: ["Explore", explorePage],
  learn: ["Learn", learnPage],
};
/** Words of an address that stand for one of a few. */
const CHOICES: Record<string, string[]> = Object.fromEntries(
  Object.entries({ tab: TABS, basis: BASES, coords: COORDINATES, shown: SHOWN, stand: STANDS }).map(([key, all]) => [
    key,
    all.map(([one]) => one),
  ]),
);
const ROLES: Record<string, string> = {
  view: "may watch and stop",
  operate: "may operate",
  configure: "may configure",
};

const DARK = matchMedia("(prefers-color-scheme: dark)");

function theme(wanted?: string): void {
  const dark = DARK.matches ? "dark" : "light";
  const chosen = wanted ?? kept("theme") ?? dark;
  document.documentElement.dataset["theme"] = chosen;
  if (wanted) keep("theme", wanted);
}

class Room {
  private page: Page | null = null;
  private name = "";
  private view!: View;
  private content = h("div", { class: "content" });
  /** What the address says that nobody here knows. */
  private remarks = h("div", { class: "remarks warn-text", attrs: { role: "status" } });
  /** The list of campaigns in the head; null with one campaign. */
  private campaigns: HTMLSelectElement | null = null;

  open(app: HTMLElement): void {
    const stage = new Stage();
    this.view = { stage, chamber: new Chamber(stage), sphere: new DirectionSphere(stage) };
    cursor.watch((at) => this.view.sphere.cursor(at));
    stage.picked = (d) => cursor.pin(d);
    const head = this.head();
    onResize(head, () => document.documentElement.style.setProperty("--head", `${head.offsetHeight}px`));
    fill(app, head, this.remarks, h("main", { class: "split" }, stage.element, this.content), controlBar());
    window.addEventListener("hashchange", () => this.show());
    window.addEventListener("popstate", () => this.show());
    // Until somebody chooses here, the page is as light as everything else on this computer.
    DARK.addEventListener("change", () => {
      if (!kept("theme")) this.recolour();
    });
    live.open();
    this.show(true);
  }

  /** Show the page that the address names; `anew` also where it is shown already. */
  show(anew = false): void {
    const place = read(location.hash);
    fill(this.remarks, ...remarks(place, { pages: Object.keys(PAGES), campaigns: (session.me?.campaigns ?? []).map((c) => c.id), choices: CHOICES }).map((words) => h("p", {}, words))); // prettier-ignore
    const name = place.page in PAGES ? place.page : "plan";
    const wanted = place.values["c"];
    if (wanted && session.me?.campaigns.some((c) => c.id === wanted)) session.campaign = wanted;
    if (this.campaigns) this.campaigns.value = session.campaign;
    const key = `${name} ${session.campaign} ${place.values["run"] ?? ""}`;
    if (!anew && key === this.name) {
      this.page?.follow?.();
      return;
    }
    this.name = key;
    this.page?.leave();
    const { stage, sphere, chamber } = this.view;
    // Until this campaign's chamber was answered, none stands there: never the former one's.
    if (chamber.whose !== session.campaign) chamber.clear();
    chamber.whose = session.campaign;
    stage.hovered = stage.dragged = null;
    stage.picked = (d) => cursor.pin(d);
    fill(stage.readout);
    fill(stage.caption);
    sphere.clear();
    sphere.scaleBar(null);
    stage.ride(false);
    cursor.fromAddress();
    this.page = PAGES[name][1](this.view);
    document.title = `Colure: ${this.page.title}`;
    for (const a of document.querySelectorAll("nav a")) {
      if (a.getAttribute("data-page") === name) a.setAttribute("aria-current", "page");
      else a.removeAttribute("aria-current");
    }
    // Every page has one heading of the first order; where the page draws none, it is heard and not seen.
    fill(this.content, name === "plan" ? null : h("h1", { class: "heard" }, this.page.title), this.page.element);
  }

  private head(): HTMLElement {
    const link = h("span", { class: "chip", attrs: { role: "status" } }),
      draft = h("a", { class: "chip draft", attrs: { href: "#plan" } });
    const campaigns = session.me?.campaigns ?? [];
    live.watch({
      linked: (up) => {
        link.className = `chip${up ? "" : " hot"}`;
        fill(link, up ? (ROLES[session.me?.role ?? ""] ?? "") : "not connected");
      },
    });
    onDrafts(() => this.drafts(draft));
    this.drafts(draft);
    const switcher =
      campaigns.length > 1 &&
      choice(
        "campaign",
        campaigns.map((c) => [c.id, c.folder]),
        session.campaign,
        (id) => {
          session.campaign = id;
          history.replaceState(null, "", `#${read(location.hash).page}`);
          put({ c: id });
          this.show(true);
        },
      );
    this.campaigns = switcher ? switcher.querySelector("select") : null;
    const dark = button("◐", () =>
      this.recolour(document.documentElement.dataset["theme"] === "dark" ? "light" : "dark"),
    );
    dark.setAttribute("aria-label", "light or dark");
    dark.title = "light or dark";
    const nav = h(
      "nav",
      { attrs: { "aria-label": "pages" } },
      ...Object.entries(PAGES).map(([key, [title]]) =>
        h("a", { attrs: { href: `#${key}`, "data-page": key }, on: { click: (event) => this.go(event, key) } }, title),
      ),
    );
    return h(
      "header",
      { class: "top" },
      h("span", { class: "name" }, mark(), "Colure"),
      nav,
      switcher,
      h("span", { class: "spring" }),
      draft,
      ...jobsButton(),
      link,
      may("configure") && button("invite", () => void this.invite()),
      dark,
      leaseButton(),
    );
  }

  /** Draw everything anew in the colours that are wanted, or in those of the system. */
  private recolour(wanted?: string): void {
    theme(wanted);
    this.view.sphere.frame();
    const { chamber } = this.view;
    if (chamber.stand) chamber.build({ ...chamber.stand }, true);
    this.show(true);
  }

  /** The campaign goes along from page to page. */
  private go(event: Event, key: string): void {
    event.preventDefault();
    const campaign = (session.me?.campaigns.length ?? 0) > 1 ? `?c=${session.campaign}` : "";
    location.hash = `#${key}${campaign}`;
  }

  private drafts(place: HTMLElement): void {
    const count = unsaved(session.campaign);
    place.hidden = count === 0;
    fill(place, `${count} unsaved ${count === 1 ? "value" : "values"}`);
  }

  private async invite(): Promise<void> {
    try {
      const { code } = await post("/api/invite", { role: "view" });
      dialog("A link for somebody who watches", () => [
        h(
          "p",
          {},
          "It opens one session on this computer. That session may look and stop, and nothing else. The link works once and for a short while.",
        ),
        h("p", { class: "mono copy" }, `${location.origin}/launch?code=${code}`),
      ]);
    } catch (error) {
      dialog("No link was made", () => [h("p", { class: "faults" }, words(error))]);
    }
  }
}

function mark(): SVGSVGElement {
  const space = "http://www.w3.org/2000/svg",
    svg = document.createElementNS(space, "svg");
  for (const [key, value] of Object.entries({ viewBox: "0 0 24 24", width: "24", height: "24", "aria-hidden": "true" }))
    svg.setAttribute(key, value);
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
    const wanted = read(location.hash).values["c"];
    session.campaign = session.me.campaigns.find((c) => c.id === wanted)?.id ?? session.me.campaigns[0].id;
    new Room().open(app);
  } catch (error) {
    fill(
      app,
      h(
        "main",
        { class: "pad" },
        h("h1", {}, "The control room did not open"),
        h("p", { class: "faults" }, words(error)),
        h(
          "p",
          {},
          "A link opens once. colure serve prints a new one when it starts; a session that may configure makes more with invite.",
        ),
      ),
    );
  }
}

void begin();
