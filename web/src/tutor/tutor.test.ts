import { Group, Vector3 } from "three";
import { beforeAll, beforeEach, describe, expect, it, vi } from "vitest";
import type { JointLine, Motion } from "../request/types";
import { Chamber } from "../scene/chamber";
import { DirectionSphere } from "../scene/sphere";
import { Stage } from "../scene/stage";
import type { Page, View } from "../shell/page";
import { learnPage } from "./tutor";

const joint = (name: string, carries: "device" | "probe", axis: number[], point_m: number[], rolls = false): JointLine => ({
  name, carries, kind: "revolute", axis, point_m, least: -200, most: 370, unit: "deg", rolls,
}); // prettier-ignore
const THETA = [-80, -40, 0, 40, 80],
  PHI = [0, 30, 60, 90, 120, 150];
const points = PHI.flatMap((phi, s) => (s % 2 ? [...THETA].reverse() : THETA).map((theta) => ({ theta, phi, s })));
/** What the server says of a swinging arm over a turntable, 2 m. */
const motion: Motion = {
  geometry: "roll-over-azimuth", formula: "", axes: ["azimuth", "roll", "probe"],
  angles_deg: points.flatMap((p) => [p.theta, p.phi, 0]), readouts_deg: points.flatMap((p) => [p.theta, p.phi, 0]),
  role: points.map(() => 0), cell: points.map((_, i) => i), time_s: points.map((_, i) => i), directions: [],
  range_m: 2, size_mm: [60, 60, 6], offset_mm: [0, 0, 0], slant_deg: 0, reach_m: 0.05, ports: 1, limits_deg: [[-80, 80], [0, 150], [0, 0]],
  limits_words: ["turntable -10 to 370 deg", "arm -110 to 110 deg", "rotary -200 to 200 deg"],
  mount: {
    joints: [joint("turntable", "device", [0, 0, -1], [0, 0, 0]), joint("arm", "probe", [0, 1, 0], [0, 0, 0]), joint("rotary", "probe", [0, 0, 1], [0, 0, 2], true)],
    solids: [{ name: "floor", body: -1, shape: "box", a_m: [0, 0, -3], b_m: [4, 4, 0.1], radius_m: 0 }],
    up: [0, 0, 1], values: points.flatMap((p) => [p.phi, p.theta, 0]), slice_index: points.map((p) => p.s), pass_index: points.map(() => 0),
  },
}; // prettier-ignore
const lesson = (mount: object) => ({
  direction: [0, 0.5, Math.sqrt(0.75)], theta: 30, phi: 90, azimuth: 0, elevation: 30, alpha: 0, epsilon: 30,
  bases: Array.from({ length: 4 }, () => ({ name: "", formula: "", components: ["", ""], first: [1, 0, 0], second: [0, 1, 0] })),
  positioners: Array.from({ length: 3 }, () => ({ name: "", formula: "", axes: ["azimuth", "roll"], pole: "", ways: [{ readouts: { azimuth: 0, roll: 0 }, slant_fixed: 0, probe_roll: -90, fixed: [1, 0, 0], following: [1, 0, 0] }] })),
  mount,
}); // prettier-ignore

let view: View, page: Page, told: object;

beforeAll(() => {
  vi.stubGlobal("ResizeObserver", class { observe() {} disconnect() {} }); // prettier-ignore
  vi.stubGlobal("matchMedia", () => ({ matches: true }));
  vi.stubGlobal("fetch", (path: string) => {
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

const probe = (): Vector3 => {
  view.stage.scene.updateMatrixWorld(true);
  const group = view.stage.room.children.filter((one) => one instanceof Group)[3];
  return view.stage.room.worldToLocal(group.getWorldPosition(new Vector3()));
};
const x = (): Vector3 => {
  view.stage.scene.updateMatrixWorld(true);
  return view.stage.room.worldToLocal(view.stage.device.localToWorld(new Vector3(1, 0, 0)));
};
const close = (found: Vector3, wanted: number[]) =>
  wanted.forEach((v, i) => expect(found.toArray()[i]).toBeCloseTo(v, 6));
function set(share: number): void {
  const input = page.element.querySelector<HTMLInputElement>("input[type=range]")!;
  input.value = String(share);
  input.dispatchEvent(new Event("input"));
}

describe("the tutor on a mount with joints", () => {
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
    expect(probe().x).toBeGreaterThan(0);
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
