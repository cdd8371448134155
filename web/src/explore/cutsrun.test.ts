import { describe, expect, it } from "vitest";
import { DEG, type Vector } from "../scene/angles";
import { directionAt, nearest } from "./cutsrun";

/** A cut at phi = 90 deg: theta, and where that is on the sphere. */
const angle_deg = [-60, -30, 0, 30, 60],
  directions = angle_deg.flatMap((t) => [0, Math.sin(t * DEG), Math.cos(t * DEG)]);
const cut = { angle_deg, directions };

describe("the cursor on a measured cut", () => {
  it("stands at the measured direction that is nearest", () => {
    expect(directionAt(cut, 22)).toEqual(directions.slice(9, 12));
    expect(directionAt(cut, -99)).toEqual(directions.slice(0, 3));
  });

  it("is found from a direction on the cut, not from one beside it", () => {
    expect(nearest(cut, [0, Math.sin(29 * DEG), Math.cos(29 * DEG)] as Vector)).toBe(3);
    expect(nearest(cut, [0, Math.sin(-60 * DEG), Math.cos(-60 * DEG)] as Vector)).toBe(0);
    expect(nearest(cut, [Math.sin(30 * DEG), 0, Math.cos(30 * DEG)] as Vector)).toBe(-1);
    expect(nearest(cut, [0, Math.sin(15 * DEG), Math.cos(15 * DEG)] as Vector)).toBe(-1);
  });
});
