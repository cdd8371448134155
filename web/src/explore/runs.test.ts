import { describe, expect, it } from "vitest";
import type { RunRow } from "../request/types";
import { matches, stateWords } from "./runs";

const run: RunRow = {
  name: "first",
  kind: "sphere",
  state: "stopped",
  measured: 12,
  total: 90,
  measured_at: null,
  identity: { tag: "lot 7", operator: "N. N." },
  record: true,
  figures: false,
  report: false,
};

describe("runs", () => {
  it("are found when all words occur, in any case", () => {
    expect(matches(run, "LOT first")).toBe(true);
    expect(matches(run, "can go on")).toBe(true);
    expect(matches(run, "lot 8")).toBe(false);
    expect(matches(run, "")).toBe(true);
  });

  it("say how far they are", () => {
    expect(stateWords(run)).toBe("stopped, can go on (12 of 90)");
    expect(stateWords({ ...run, state: "complete" })).toBe("complete");
  });
});
