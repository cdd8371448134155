import { describe, expect, it } from "vitest";
import { duration, fill, h, number } from "./dom";

describe("building the page", () => {
  it("never makes markup of text", () => {
    const place = h("p");
    fill(place, "<img src=x onerror=alert(1)>");
    expect(place.children.length).toBe(0);
    expect(place.textContent).toBe("<img src=x onerror=alert(1)>");
  });

  it("says durations in the largest unit that fits", () => {
    expect([45, 89, 600, 3600, 5430].map(duration)).toEqual(["45 s", "89 s", "10 min", "1 h 00 min", "1 h 31 min"]);
  });

  it("gives no sign to what rounds to nothing", () => {
    expect([number(-0.004), number(-0.006), number(-0, 1), number(0.0001, 3)]).toEqual([
      "0.00",
      "-0.01",
      "0.0",
      "0.000",
    ]);
  });

  it("says nothing of what is not known", () => {
    expect([number(null), number(Number.NaN), number(1.005, 1)]).toEqual(["-", "-", "1.0"]);
  });
});
