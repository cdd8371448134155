import { Mesh } from "three";
import { beforeAll, describe, expect, it, vi } from "vitest";
import { direction } from "./angles";
import { DirectionSphere } from "./sphere";
import { Stage } from "./stage";

beforeAll(() => {
  vi.stubGlobal("ResizeObserver", class { observe() {} disconnect() {} }); // prettier-ignore
  vi.spyOn(console, "error").mockImplementation(() => undefined);
});

/** A sphere with a pattern of so many rows and columns; level is the cell's number. */
function pattern(software: boolean, rows: number, columns: number) {
  const stage = new Stage();
  Object.assign(stage, { software });
  const sphere = new DirectionSphere(stage),
    directions: number[] = [];
  for (let r = 0; r < rows; r++)
    for (let k = 0; k < columns; k++) directions.push(...direction((180 * r) / (rows - 1), (360 * k) / (columns - 1)));
  const values = Array.from({ length: rows * columns }, (_, i) => i);
  sphere.shape({ rows, columns, closed: false, directions });
  sphere.surface(values, { low: 0, high: rows * columns, unit: "dB" }, "one");
  const shown = () => {
    const all: Mesh[] = [];
    stage.device.traverseVisible((one) => {
      if (one instanceof Mesh && one.geometry.index && one.geometry.getAttribute("color")) all.push(one);
    });
    return all;
  };
  return { stage, sphere, shown };
}

describe("a pattern on the sphere", () => {
  it("is thinned while it moves, drawn by software, and whole at rest", () => {
    const { stage, shown } = pattern(true, 181, 361);
    expect(shown().map((one) => one.geometry.index!.count)).toEqual([6 * 180 * 360]);
    stage.detail!(false);
    const [thin] = shown();
    expect(shown().length).toBe(1);
    expect(thin.geometry.index!.count).toBeLessThan(6 * 3000);
    // Places of the thin mesh are those of the whole one: the last cell is the strongest, and lies farthest out.
    const place = thin.geometry.getAttribute("position"),
      last = place.count - 1;
    expect(Math.hypot(place.getX(last), place.getY(last), place.getZ(last))).toBeCloseTo(0.5, 3);
    stage.detail!(true);
    expect(shown()[0].geometry.index!.count).toBe(6 * 180 * 360);
  });

  it("stays whole where a graphics card draws it, or where it is small", () => {
    for (const one of [pattern(false, 181, 361), pattern(true, 37, 73)]) {
      const whole = one.shown()[0].geometry.index!.count;
      one.stage.detail!(false);
      expect(one.shown()[0].geometry.index!.count).toBe(whole);
    }
  });
});
