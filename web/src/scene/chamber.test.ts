import { describe, expect, it, vi } from "vitest";
import { motion, standing } from "./arm.fixture";
import { Chamber } from "./chamber";
import { Stage } from "./stage";

describe("the chamber in the scene", () => {
  it("takes everything away with a campaign that is left, and stands at zero for the next one", () => {
    vi.stubGlobal("ResizeObserver", class { observe() {} disconnect() {} }); // prettier-ignore
    vi.stubGlobal("matchMedia", () => ({ matches: true }));
    vi.spyOn(console, "error").mockImplementation(() => undefined);
    const stage = new Stage(),
      chamber = new Chamber(stage);
    const bodies = () =>
      stage.room.children.concat(stage.device.children).reduce((n, one) => n + one.children.length, 0);
    const before = bodies();
    chamber.build(motion as never);
    chamber.pose([0, 40, 0]);
    expect(bodies()).toBeGreaterThan(before);
    chamber.clear();
    expect(chamber.stand).toBeNull();
    expect(bodies()).toBe(before);
    expect(stage.eye).toBeNull();
    // The same campaign again: its joints stand at zero, not where the former one's stood.
    chamber.build(motion as never);
    expect(standing(stage).probe[2]).toBeCloseTo(1, 6);
  });
});
