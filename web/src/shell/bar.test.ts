import { describe, expect, it } from "vitest";
import type { Status } from "../live/live";
import { barWords } from "./bar";

const status = (state: string, running: boolean, left_s?: number) =>
  ({ run: "one", state, running, left_s, measured: 90, total: 100, level_db: -42.25 }) as unknown as Status;

describe("the bar", () => {
  it("says how long a scan takes that runs or rests", () => {
    expect(barWords(status("running", true, 300)).left).toBe("5 min left");
    expect(barWords(status("paused", true, 45)).left).toBe("45 s left");
  });

  it("gives no time to a scan whose axes stand while its record is written", () => {
    for (const state of ["done", "stopped", "aborted", "faulted"])
      expect(barWords(status(state, true, 0)).left).toBe("the record is being written");
  });

  it("says how many points a scan holds that is over", () => {
    expect(barWords(status("done", false, 0)).left).toBe("90 of 100 points");
    expect(barWords(status("done", false, 0)).share).toBe("90 %");
    expect(barWords({} as Status).run).toBe("no scan since the server began");
  });
});
