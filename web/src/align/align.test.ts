import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { live } from "../live/live";
import { motion, standing } from "../scene/arm.fixture";
import { Chamber } from "../scene/chamber";
import { DirectionSphere } from "../scene/sphere";
import { Stage } from "../scene/stage";
import type { Page, View } from "../shell/page";
import { session } from "../shell/session";
import { alignPage } from "./align";

let view: View, page: Page, readouts: Record<string, number>;
const sent: Record<string, unknown>[] = [];
/** What the server says after a look or a move: readouts, and the pose that they come to. */
const byHand = () => ({
  at: 0, text: "arrived", sweep: null,
  axes: Object.entries(readouts).map(([axis, readout_deg]) => ({ axis, unit: axis === "lift" ? "mm" : "deg", readout_deg, min_deg: -200, max_deg: 370, home_deg: 0, speed_deg_s: 12 })),
  pose: { axes: [], angles_deg: [], joints: [readouts["turntable"], readouts["arm"], readouts["rotary"]] },
}); // prettier-ignore

beforeEach(async () => {
  vi.stubGlobal("ResizeObserver", class { observe() {} disconnect() {} }); // prettier-ignore
  vi.stubGlobal("matchMedia", () => ({ matches: true }));
  vi.spyOn(console, "error").mockImplementation(() => undefined);
  readouts = { turntable: 0, arm: 0, rotary: 0, lift: 120 };
  sent.length = 0;
  vi.stubGlobal("fetch", (path: string, init?: { body?: string }) => {
    const body = init?.body ? (JSON.parse(init.body) as { to_deg?: Record<string, number> }) : {};
    if (path === "/api/move") {
      sent.push(body);
      Object.assign(readouts, body.to_deg);
    }
    if (path === "/api/set-zero") sent.push(body);
    const answers: Record<string, unknown> = {
      "/api/motion": motion,
      "/api/checked/c": { at: 0, lines: [] },
      "/api/campaigns": [],
    };
    return Promise.resolve({ ok: true, status: 200, json: () => Promise.resolve(answers[path] ?? byHand()) });
  });
  session.campaign = "c";
  session.me = { role: "configure", mine: true } as typeof session.me;
  const stage = new Stage();
  view = { stage, chamber: new Chamber(stage), sphere: new DirectionSphere(stage) } as View;
  page = alignPage(view);
  document.body.replaceChildren(page.element);
  await vi.waitFor(() => expect(view.chamber.stand).not.toBeNull());
});
afterEach(() => page.leave());

const close = (found: number[], wanted: number[]) => wanted.forEach((v, i) => expect(found[i]).toBeCloseTo(v, 6));
const press = (label: string, root: ParentNode = page.element) =>
  [...root.querySelectorAll("button")].find((one) => one.textContent === label)!.click();

describe("the align page on a mount with joints", () => {
  it("moves the body of the joint that is moved by hand", async () => {
    press("where are the axes?");
    await vi.waitFor(() => expect(page.element.querySelectorAll("table.axes tbody tr").length).toBe(4));
    const clear = [...page.element.querySelectorAll<HTMLInputElement>("input[type=checkbox]")].find((one) => one.parentElement!.textContent!.includes("free to move"))!; // prettier-ignore
    clear.checked = true;
    clear.dispatchEvent(new Event("change"));
    const row = (name: string) =>
      [...page.element.querySelectorAll("table.axes tbody tr")].find((one) => one.textContent!.startsWith(name))!;
    close(standing(view.stage).probe, [0, 0, 1]);
    press("+10", row("arm"));
    await vi.waitFor(() => expect(row("arm").textContent).toContain("10.000°"));
    close(standing(view.stage).probe, [Math.sin(Math.PI / 18), 0, Math.cos(Math.PI / 18)]);
    close(standing(view.stage).x, [1, 0, 0]);
    press("+10", row("turntable"));
    await vi.waitFor(() => expect(row("turntable").textContent).toContain("10.000°"));
    close(standing(view.stage).x, [Math.cos(Math.PI / 18), -Math.sin(Math.PI / 18), 0]);
    close(standing(view.stage).probe, [Math.sin(Math.PI / 18), 0, Math.cos(Math.PI / 18)]);
    expect(sent).toEqual([
      { campaign: "c", to_deg: { arm: 10 }, clear: true },
      { campaign: "c", to_deg: { turntable: 10 }, clear: true },
    ]);
    const speed = [...page.element.querySelectorAll<HTMLInputElement>("input[type=number]")].find((one) => one.getAttribute("aria-label")!.startsWith("no axis goes faster"))!; // prettier-ignore
    speed.value = "2.5";
    press("+1", row("arm"));
    await vi.waitFor(() => expect(row("arm").textContent).toContain("11.000°"));
    expect(sent[2]).toEqual({ campaign: "c", to_deg: { arm: 11 }, speed_deg_s: 2.5, clear: true });
    expect(row("arm").textContent).toContain("at most 12°/s");
    expect(speed.isConnected && speed.value).toBe("2.5"); // the choice stays for the next move
    // A prismatic joint reads in millimetres.
    expect(row("lift").textContent).toContain("120.000 mm");
    expect(row("lift").querySelector("input")!.getAttribute("aria-label")).toContain("millimetres");
  });

  it("makes readouts the zeros of the joints that are ticked, and of no other", async () => {
    readouts["arm"] = 2.5;
    press("where are the axes?");
    await vi.waitFor(() => expect(page.element.querySelectorAll("table.axes tbody tr").length).toBe(4));
    press("make this zero");
    const asked = document.querySelector<HTMLElement>("[role=dialog]")!,
      write = [...asked.querySelectorAll("button")].find((one) => one.textContent === "write zeros")!;
    expect(write.disabled).toBe(true);
    for (const name of ["arm", "lift"]) {
      const label = [...asked.querySelectorAll("label")].find((one) => one.textContent!.startsWith(name))!;
      expect(label.textContent).toBe(name === "arm" ? "arm at 2.500°" : "lift at 120.000 mm");
      label.querySelector("input")!.click();
    }
    write.click();
    await vi.waitFor(() => expect(document.querySelector("[role=dialog]")).toBeNull());
    expect(sent).toEqual([{ campaign: "c", zero_deg: { arm: 2.5, lift: 120 } }]);
  });

  it("follows the joints of a scan, and offers no flip test", () => {
    live.status = { ...live.status, axes: ["azimuth", "roll", "probe"], angles_deg: [30, 0, 0], joints: [0, 30, 0] } as typeof live.status; // prettier-ignore
    page.leave();
    page = alignPage(view);
    close(standing(view.stage).probe, [0.5, 0, Math.sqrt(0.75)]);
    live.status = { type: "status", state: "idle", running: false, sequence: 0, lease: "" };
  });

  it("says why there is no flip test", () => {
    expect(page.element.textContent).toContain("has no flip test");
    const start = [...page.element.querySelectorAll("button")].find((one) => one.textContent === "measure both sides")!;
    expect(start.disabled).toBe(true);
    expect(page.element.textContent).toContain("A mount that is described by its joints has no flip test");
  });

  it("draws the mount from above, as its joints were told", async () => {
    const picture = () => page.element.querySelector(".range-picture")!.getAttribute("aria-label");
    expect(picture()).toBe("mount from above: turntable 0.0 deg, arm 0.0 deg, rotary 0.0 deg");
    readouts["arm"] = 40;
    press("where are the axes?");
    await vi.waitFor(() => expect(picture()).toContain("arm 40.0 deg"));
    expect(page.element.textContent).toContain("Joints as told at");
  });
});
