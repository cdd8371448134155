import { describe, expect, it } from "vitest";
import { direction } from "../scene/angles";
import { directionOf, placeOn } from "./maps";

describe("coordinates of a map", () => {
  it("lead to a direction and back", () => {
    for (const kind of ["theta-phi", "az-el", "alpha-epsilon", "u-v"] as const)
      for (const d of [direction(20, 30), direction(75, 200), direction(89, 300)]) {
        const at = placeOn(kind, d),
          back = directionOf(kind, at.row, at.column)!;
        d.forEach((v, i) => expect(back[i]).toBeCloseTo(v, 12));
      }
  });

  it("name no direction outside the circle of u and v", () => {
    expect(directionOf("u-v", 0.8, 0.8)).toBeNull();
  });
});
