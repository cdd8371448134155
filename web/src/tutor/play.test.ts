import { describe, expect, it } from "vitest";
import type { Geometry } from "../scene/angles";
import { QUESTIONS } from "./quiz";
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

  it("shows the middle of an axis that reaches none of the usual steps", () => {
    const far: Limits = { first: [100, 140], second: [161, 179] };
    for (const geometry of all) {
      const at = moment(geometry, far, 0.5);
      expect(at.first).toBeGreaterThanOrEqual(100);
      expect(at.first).toBeLessThanOrEqual(140);
      expect(at.second).toBeGreaterThanOrEqual(161);
      expect(at.second).toBeLessThanOrEqual(179);
    }
  });

  // Conventions: without a roll axis the field leans away from both zeros, and stands straight at them.
  it("holds the answers of the quiz", () => {
    for (const geometry of ["azimuth-over-elevation", "elevation-over-azimuth"] as Geometry[]) {
      expect(dial(geometry, { slice: 0, first: 0, second: 0 }, false).level).toBeCloseTo(1, 9);
      const away = dial(geometry, { slice: 0, first: 40, second: 40 }, false).level;
      expect(away).toBeLessThan(0.98);
      expect(away).toBeGreaterThan(0.1);
    }
    expect(dial("roll-over-azimuth", { slice: 0, first: 40, second: 90 }, false).level).toBeCloseTo(0, 9);
    for (const questions of Object.values(QUESTIONS)) {
      expect(questions.length).toBe(3);
      for (const q of questions) expect(q.right).toBeLessThan(q.answers.length);
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
