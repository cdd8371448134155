import { describe, expect, it } from "vitest";
import { coarseStep, mesh, thinned } from "./surface";

const all = () => true;

describe("a surface of a grid of directions", () => {
  it("joins every cell of an open and of a closed grid", () => {
    expect(mesh({ rows: 3, columns: 4, closed: false }, 1, all).index.length).toBe(3 * 2 * 2 * 3);
    expect(mesh({ rows: 3, columns: 4, closed: true }, 1, all).index.length).toBe(3 * 2 * 2 * 4);
  });

  it("keeps the first and the last row and column when it is thinned", () => {
    expect(thinned(181, 5).at(-1)).toBe(180);
    expect(thinned(360, 7).at(-1)).toBe(359);
    const { index, cells } = mesh({ rows: 181, columns: 361, closed: false }, 5, all);
    expect([cells[0], cells.at(-1)]).toEqual([0, 181 * 361 - 1]);
    expect(Math.max(...index)).toBe(cells.length - 1);
  });

  it("is thin enough to move, and whole where it is small", () => {
    const step = coarseStep({ rows: 181, columns: 361 });
    expect(mesh({ rows: 181, columns: 361, closed: false }, step, all).cells.length).toBeLessThan(3500);
    expect(coarseStep({ rows: 37, columns: 72 })).toBe(1);
  });

  it("draws nothing over a hole, however small it is", () => {
    const hole = 7 * 40 + 11,
      whole = mesh({ rows: 20, columns: 40, closed: true }, 4, all).index.length,
      holed = mesh({ rows: 20, columns: 40, closed: true }, 4, (i) => i !== hole).index.length;
    expect(whole - holed).toBe(6);
  });
});
