import { describe, expect, it } from "vitest";
import type { Geometry } from "../scene/angles";
import { dial, moment, slices, swept, type Limits } from "./play";

const wide: Limits = { first: [-180, 180], second: [-180, 360] };
const all: Geometry[] = ["roll-over-azimuth", "azimuth-over-elevation", "elevation-over-azimuth"];

describe("the play of the slices", () => {
  it("begins at the first slice's end and reaches the last one's", () => {
    for (const geometry of all) {
      const parts = slices(geometry, wide);
      expect(moment(geometry, wide, 0).slice).toBe(0);
      expect(moment(geometry, wide, 1).slice).toBe(parts.length - 1);
    }
  });

  it("respects the limits of the chamber", () => {
    const narrow: Limits = { first: [-35, 50], second: [-10, 25] };
    for (const geometry of all)
      for (let share = 0; share <= 1; share += 0.01) {
        const at = moment(geometry, narrow, share);
        expect(at.first).toBeGreaterThanOrEqual(-35);
        expect(at.first).toBeLessThanOrEqual(50);
        expect(at.second).toBeGreaterThanOrEqual(-10);
        expect(at.second).toBeLessThanOrEqual(25);
      }
  });

  it("grows by whole slices", () => {
    expect(swept("roll-over-azimuth", wide, 0.1).length).toBe(1);
    expect(swept("roll-over-azimuth", wide, 1).length).toBe(6);
  });

  // Conventions: on a roll over azimuth a probe that follows, chi = psi - phi, keeps the whole of one component; one
  // that stands still takes the cosine of the roll.
  it("shows what a still and a following probe take in", () => {
    for (const second of [0, 30, 60, 90, 150]) {
      const at = { slice: 0, first: 40, second };
      expect(dial("roll-over-azimuth", at, true).level).toBeCloseTo(1, 9);
      expect(dial("roll-over-azimuth", at, false).level).toBeCloseTo(Math.cos((second * Math.PI) / 180), 9);
    }
  });
});
