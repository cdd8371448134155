import { describe, expect, it } from "vitest";
import { seriesVerdict } from "./together";

const row = (...e_n: (number | null)[]) => ({ label: "gain", unit: "dBi", values: e_n.map(() => 1), mean: 1, spread: 0, trend: null, trend_expanded: null, e_n }); // prettier-ignore
const said = (...rows: ReturnType<typeof row>[]) => seriesVerdict({ runs: ["a", "b", "c"], golden: "a", rows });

describe("the verdict of a series", () => {
  // |E_n| <= 1: ISO 13528 (performance score of two laboratories).
  it("counts figures beyond both uncertainties", () => {
    expect(said(row(0, 0.4, -1.3), row(0, 0.2, 0.1)).words).toContain("1 of 2 figures differ");
    expect(said(row(0, 0.4, -0.9)).good).toBe(true);
  });

  it("never calls good what nobody can tell", () => {
    const none = said(row(null, null, null));
    expect(none.good).toBe(false);
    expect(none.words).toContain("Nothing can be told");
    const some = said(row(0, null, 0.2), row(0, 0.1, 0.1));
    expect(some.good).toBe(false);
    expect(some.words).toContain("Of 1 nothing can be told");
  });
});
