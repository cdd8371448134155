import { describe, expect, it } from "vitest";
import { crossings, freest, type Box } from "./places";

const box: Box = { left: 10, top: 10, wide: 20, high: 10 };
const p = (x: number, y: number) => ({ x, y });

describe("a word in a chart", () => {
  it("knows what goes through its box, even without a point in it", () => {
    expect(crossings(box, [p(0, 15), p(40, 15)])).toBe(1);
    expect(crossings(box, [p(20, 0), p(20, 40)])).toBe(1);
    expect(crossings(box, [p(0, 0), p(40, 5)])).toBe(0);
    expect(crossings(box, [p(15, 12), p(16, 13), p(60, 60)])).toBe(2);
    // A diagonal that passes a corner outside, and a gap where nothing was measured.
    expect(crossings(box, [p(0, 14), p(14, 0)])).toBe(0);
    expect(crossings(box, [p(0, 15), null, p(40, 15)])).toBe(0);
  });

  it("goes where no curve is, within the chart", () => {
    const whole: Box = { left: 0, top: 0, wide: 100, high: 100 };
    const there: Box = { left: 60, top: 40, wide: 20, high: 10 };
    expect(freest([box, there], whole, [[p(0, 15), p(40, 15)]])).toBe(there);
    expect(freest([{ ...box, left: 90 }, there], whole, [[]])).toBe(there);
    expect(freest([box, there], whole, [[p(0, 15), p(40, 15), p(40, 45), p(100, 45)], [p(70, 0), p(70, 99)]])).toBe(box); // prettier-ignore
  });
});
