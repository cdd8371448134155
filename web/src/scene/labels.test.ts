import { describe, expect, it } from "vitest";
import { apart, type Spot } from "./labels";

const spot = (x: number, y: number, rank: Spot["rank"], wide = 30): Spot => ({ x, y, wide, high: 14, rank });

describe("words in the scene", () => {
  it("stay where they do not meet", () => {
    expect(apart([spot(0, 0, "fixed"), spot(60, 0, "name"), spot(0, 40, "number")])).toEqual([0, 0, 0]);
  });

  it("step aside by whole lines, whatever their order", () => {
    const all = [spot(5, 2, "name"), spot(0, 0, "fixed"), spot(8, 4, "name")];
    const moved = apart(all);
    expect(moved[1]).toBe(0);
    const stands = all.map((one, i) => one.y + moved[i]!);
    for (let i = 0; i < 3; i++)
      for (let k = 0; k < i; k++) expect(Math.abs(stands[i] - stands[k])).toBeGreaterThanOrEqual(14);
    for (const by of moved) expect(by! % 14).toBeCloseTo(0);
  });

  it("leave out a ring's number under a letter or a name, and under another number", () => {
    expect(apart([spot(0, 0, "number"), spot(4, 4, "fixed"), spot(100, 0, "number"), spot(104, 0, "number")])).toEqual([null, 0, 0, null]); // prettier-ignore
  });

  it("never leave out a name, however full it is", () => {
    const moved = apart([...Array(12)].map(() => spot(0, 0, "name")));
    expect(moved.every((by) => by !== null)).toBe(true);
  });
});
