import { describe, expect, it } from "vitest";
import { read } from "./address";
import { remarks } from "./arrival";

const known = { pages: ["plan", "explore"], campaigns: ["ab12"], choices: { tab: ["cuts", "map"] } };
const of = (hash: string) => remarks(read(hash), known);

describe("an address on arrival", () => {
  it("is passed over in silence where all of it is known", () => {
    expect(of("")).toEqual([]);
    expect(of("#explore?c=ab12&run=one&tab=map&f=24.125&plane=90&at=12,-40&polar=1")).toEqual([]);
  });

  it("names what it does not know", () => {
    expect(of("#explroe")).toEqual(['There is no page "explroe"; plan is shown.']);
    expect(of("#explore?frq=24")).toEqual(['The address says "frq", which no page knows; it is ignored.']);
    expect(of("#explore?c=zz")[0]).toContain('no campaign "zz"');
    expect(of("#explore?f=fast")[0]).toContain('f = "fast", which is no number');
    expect(of("#explore?tab=mpa")[0]).toContain("none of cuts, map");
  });
});
