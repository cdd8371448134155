import { describe, expect, it } from "vitest";
import { motion } from "../scene/arm.fixture";
import { DEG, type Vector } from "../scene/angles";
import { mountFromAbove, outline, paper, probePlaces, seen, type Above } from "./mountabove";

/** A swinging arm over a turntable, 2 m, a floor 3 m below. */
const arm = motion as unknown as Above;
const numbers = (text: string) => (text.match(/-?[\d.]+/g) ?? []).map(Number);

describe("a mount from above", () => {
  it("is seen right-handed, whatever is up", () => {
    for (const up of [
      [0, 0, 1],
      [0, 1, 0],
      [0, 0, -1],
      [0, -1, 0],
    ] as Vector[]) {
      const { right, top } = paper(up);
      const toViewer = [right[1] * top[2] - right[2] * top[1], right[2] * top[0] - right[0] * top[2], right[0] * top[1] - right[1] * top[0]]; // prettier-ignore
      expect(toViewer.map((v) => v + 0)).toEqual(up.map((v) => v + 0));
    }
  });

  it("outlines a box by its corners", () => {
    const square = outline([[0, 0], [2, 0], [1, 1], [2, 2], [0, 2], [0.5, 1]]); // prettier-ignore
    expect(square).toEqual([[0, 0], [2, 0], [2, 2], [0, 2]]); // prettier-ignore
  });

  // An arm of 2 m about y at theta stands at x = 2 sin(theta), the turntable does not move it.
  it("knows where the plan takes the probe", () => {
    const places = seen([0, 0, 1], probePlaces(arm));
    const wanted = [-80, -40, 0, 40, 80].map((theta) => 2 * Math.sin(theta * DEG));
    places.slice(0, 5).forEach(([x, y], i) => {
      expect(x).toBeCloseTo(wanted[i], 9);
      expect(y).toBeCloseTo(0, 9);
    });
  });

  it("draws the probe where the arm stands, and says every joint", () => {
    const at = (values: number[]) => {
      const text = [...mountFromAbove(arm, values, "as told").querySelectorAll("text")].find((one) => one.textContent === "probe")!; // prettier-ignore
      return numbers(text.getAttribute("x")!)[0];
    };
    const middle = at([0, 0, 0]),
      right = at([0, 60, 0]),
      left = at([70, -60, 0]);
    expect(middle).toBeCloseTo(320, 0);
    expect(right - middle).toBeGreaterThan(100);
    expect(middle - left).toBeCloseTo(right - middle, 6);
    const told = mountFromAbove(arm, [70, -60, 5], "as told");
    expect(told.textContent).toContain("as told: turntable 70.0 deg, arm -60.0 deg, rotary 5.0 deg.");
    expect(told.querySelector("svg")!.getAttribute("aria-label")).toContain("arm -60.0 deg");
  });

  it("turns the device with its turntable", () => {
    const x = (turn: number) => {
      const text = [...mountFromAbove(arm, [turn, 0, 0], "").querySelectorAll("text")].find((one) => one.textContent!.startsWith("x of"))!; // prettier-ignore
      return numbers(text.getAttribute("x")!)[0] - 320;
    };
    // Right-handed about -z: a quarter turn brings the device's x to the lab's -y, which is down on the paper.
    expect(x(0)).toBeGreaterThan(50);
    expect(Math.abs(x(90))).toBeLessThan(8);
    expect(x(180)).toBeCloseTo(-x(0), 0);
  });
});
