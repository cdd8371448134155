import { beforeAll, beforeEach, describe, expect, it, vi } from "vitest";
import { motion, standing } from "../scene/arm.fixture";
import { Chamber } from "../scene/chamber";
import { DirectionSphere } from "../scene/sphere";
import { Stage } from "../scene/stage";
import type { Page, View } from "../shell/page";
import { learnPage } from "./tutor";

const lesson = (mount: object) => ({
  direction: [0, 0.5, Math.sqrt(0.75)], theta: 30, phi: 90, azimuth: 0, elevation: 30, alpha: 0, epsilon: 30,
  bases: Array.from({ length: 4 }, () => ({ name: "", formula: "", components: ["", ""], first: [1, 0, 0], second: [0, 1, 0] })),
  positioners: Array.from({ length: 3 }, () => ({ name: "", formula: "", axes: ["azimuth", "roll"], pole: "", ways: [{ readouts: { azimuth: 0, roll: 0 }, slant_fixed: 0, probe_roll: -90, fixed: [1, 0, 0], following: [1, 0, 0] }] })),
  mount,
}); // prettier-ignore

let view: View,
  page: Page,
  told: object,
  refused = false;

beforeAll(() => {
  vi.stubGlobal("ResizeObserver", class { observe() {} disconnect() {} }); // prettier-ignore
  vi.stubGlobal("matchMedia", () => ({ matches: true }));
  vi.stubGlobal("fetch", (path: string) => {
    if (refused && path === "/api/motion")
      return Promise.resolve({
        ok: false, status: 422, json: () => Promise.resolve({ errors: ["theta = 180 is out of reach"] }),
      }); // prettier-ignore
    const answer = path === "/api/motion" ? motion : lesson(told);
    return Promise.resolve({ ok: true, status: 200, json: () => Promise.resolve(answer) });
  });
});

beforeEach(async () => {
  const stage = new Stage();
  view = { stage, chamber: new Chamber(stage), sphere: new DirectionSphere(stage) } as View;
  page = learnPage(view);
  document.body.replaceChildren(page.element);
  await vi.waitFor(() => expect(page.element.textContent).toContain("slices of the plan are played"));
});

const probe = () => standing(view.stage).probe,
  x = () => standing(view.stage).x;
const close = (found: number[], wanted: number[]) => wanted.forEach((v, i) => expect(found[i]).toBeCloseTo(v, 6));
function set(share: number): void {
  const input = page.element.querySelector<HTMLInputElement>("input[type=range]")!;
  input.value = String(share);
  input.dispatchEvent(new Event("input"));
}

describe("the tutor on a mount with joints", () => {
  it("says why the campaign's own mount is not there", async () => {
    page.leave();
    refused = true;
    page = learnPage(view);
    document.body.replaceChildren(page.element);
    await vi.waitFor(() => expect(page.element.textContent).toContain("theta = 180 is out of reach"));
    refused = false;
  });

  it("begins with the campaign's own mount, and says its joints' limits", () => {
    expect(page.element.textContent).toContain("arm -110 to 110 deg");
    expect(page.element.textContent).not.toContain("not drawn");
    expect(page.element.textContent).toContain(
      "Joint arm sweeps. The probe passes over a great circle through boresight",
    );
    expect(page.element.textContent).toContain("Joint turntable steps");
  });

  it("sweeps the probe and steps the device", () => {
    set(0);
    close(probe(), [Math.sin((-80 * Math.PI) / 180), 0, Math.cos((-80 * Math.PI) / 180)]);
    close(x(), [1, 0, 0]);
    set(125);
    expect(probe()[0]).toBeGreaterThan(0);
    close(x(), [1, 0, 0]);
    // The fourth slice stands at phi 90 from a fifth of it on: right-handed about -z.
    set(640);
    close(x(), [0, -1, 0]);
    expect(page.element.querySelector(".dial")!.textContent).toContain("takes in 0 % of the power");
    const follow = [...page.element.querySelectorAll("select")].find((one) => one.value === "still")!;
    follow.value = "following";
    follow.dispatchEvent(new Event("change"));
    expect(page.element.querySelector(".dial")!.textContent).toContain("takes in 100 % of the power");
  });

  it("goes to a direction by hand, and says what it cannot reach", async () => {
    const theta = page.element.querySelector<HTMLInputElement>("[aria-label='theta in degrees']")!;
    told = { values: [90, 30, 0], fault: "" };
    theta.dispatchEvent(new Event("input"));
    await vi.waitFor(() => expect(page.element.textContent).toContain("joint of this mount"));
    close(probe(), [0.5, 0, Math.sqrt(0.75)]);
    close(x(), [0, -1, 0]);
    told = { values: [], fault: "out of reach: arm = 150" };
    theta.dispatchEvent(new Event("input"));
    await vi.waitFor(() => expect(view.stage.caption.textContent).toContain("out of reach: arm = 150"));
    close(probe(), [0.5, 0, Math.sqrt(0.75)]);
  });

  it("gives the place back to another positioner", () => {
    const which = [...page.element.querySelectorAll("select")].find((one) => one.value === "mount")!;
    which.value = "azimuth-over-elevation";
    which.dispatchEvent(new Event("change"));
    close(probe(), [0, 0, 1]);
    expect(view.stage.labels.textContent).not.toContain("turntable");
    which.value = "mount";
    which.dispatchEvent(new Event("change"));
    expect(view.stage.labels.textContent).toContain("turntable");
  });
});
