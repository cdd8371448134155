import { beforeEach, describe, expect, it, vi } from "vitest";
import { Chamber } from "../scene/chamber";
import { DirectionSphere } from "../scene/sphere";
import { Stage } from "../scene/stage";
import type { View } from "../shell/page";
import { session } from "../shell/session";
import { explorePage } from "./explore";

/** Answers wait until a test lets them go. */
let waiting: { path: string; answer: () => void }[] = [],
  view: View;
const RUN = { name: "one", kind: "sphere", state: "complete", measured: 9, total: 9, measured_at: 0, identity: {}, record: true, figures: false, report: false }; // prettier-ignore
const ANSWERS: Record<string, unknown> = { "/api/campaigns": [{ id: "c", name: "c", runs: [RUN] }],
  "/api/overview": { of: { run: "one", state: null, frequency_hz: null }, states: ["left", "right"], frequency_hz: [24e9], shown: 0, basis: "ludwig-3", steps: [], figures: [], findings: [], region_deg: 180, demo: false, edited: [] } }; // prettier-ignore
const asked = () => waiting.map((one) => one.path);
const come = async (path: string) => {
  waiting.find((one) => one.path === path)!.answer();
  await new Promise((go) => setTimeout(go, 20));
};

beforeEach(() => {
  waiting = [];
  vi.stubGlobal("ResizeObserver", class { observe() {} disconnect() {} }); // prettier-ignore
  vi.stubGlobal("matchMedia", () => ({ matches: true }));
  vi.spyOn(console, "error").mockImplementation(() => undefined);
  vi.stubGlobal("fetch", (path: string) => {
    const body = path === "/api/motion" ? null : (ANSWERS[path] ?? {});
    return new Promise((go) => {
      waiting.push({ path, answer: () => go({ ok: true, status: 200, json: () => Promise.resolve(body) }) });
    });
  });
  session.campaign = "c";
  session.me = { role: "configure", mine: false } as typeof session.me;
  const stage = new Stage();
  view = { stage, chamber: new Chamber(stage), sphere: new DirectionSphere(stage) } as View;
});

describe("the explore page", () => {
  it("asks for its run once the list has come", async () => {
    const page = explorePage(view);
    document.body.replaceChildren(page.element);
    await come("/api/campaigns");
    expect(asked()).toContain("/api/overview");
    page.leave();
  });

  // What the first state is only the answer tells: that fills in the question, and makes no other one of it.
  it("shows its tabs when the answer names the first state", async () => {
    const page = explorePage(view);
    document.body.replaceChildren(page.element);
    await come("/api/campaigns");
    await come("/api/overview");
    expect([...page.element.querySelectorAll("[role=tab]")].map((one) => one.textContent)).toContain("Verdict");
    page.leave();
  });

  it("asks for nothing, and touches no scene, after it was left", async () => {
    const page = explorePage(view),
      drawn = vi.spyOn(view.sphere, "shape");
    page.leave();
    const before = asked().length;
    await come("/api/campaigns");
    expect(asked().length).toBe(before);
    expect(drawn).not.toHaveBeenCalled();
  });

  it("reads no levels for a run whose answer nobody waits for", async () => {
    const page = explorePage(view);
    await come("/api/campaigns");
    page.leave();
    await come("/api/overview");
    expect(asked()).not.toContain("/api/as-read");
  });
});
