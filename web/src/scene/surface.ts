/** Which cells of a grid of directions a surface joins, whole or thinned. */

export type Cells = { rows: number; columns: number; closed: boolean; directions: ArrayLike<number> };
/** Corners of triangles by their place in `cells`, which names the cell of every corner. */
export type Surface = { index: Uint32Array; cells: Int32Array };

/** Software draws so many cells thirty times a second on two cores. */
const MOVING = 3000;

/** Every so many rows and columns are left of a surface while it moves. */
export function coarseStep(cells: Pick<Cells, "rows" | "columns">): number {
  return Math.max(1, Math.ceil(Math.sqrt((cells.rows * cells.columns) / MOVING)));
}

/** Every `step`-th number below `count`, and the last. */
export function thinned(count: number, step: number): number[] {
  const out: number[] = [];
  for (let i = 0; i < count; i += step) out.push(i);
  if (count && out.at(-1) !== count - 1) out.push(count - 1);
  return out;
}

/** The triangles of every `step`-th row and column. A patch is left out if any cell within it is unknown. */
export function mesh(
  cells: Pick<Cells, "rows" | "columns" | "closed">,
  step: number,
  known: (cell: number) => boolean,
): Surface {
  const rows = thinned(cells.rows, step),
    columns = thinned(cells.columns, step),
    n = columns.length,
    index: number[] = [],
    whole = (r: number, k: number): boolean => {
      const last = k + 1 < n ? columns[k + 1] : cells.columns;
      for (let row = rows[r]; row <= rows[r + 1]; row++)
        for (let column = columns[k]; column <= last; column++)
          if (!known(row * cells.columns + (column % cells.columns))) return false;
      return true;
    };
  for (let r = 0; r + 1 < rows.length; r++)
    for (let k = 0; k < n; k++) {
      if (k + 1 === n && !cells.closed) continue;
      if (!whole(r, k)) continue;
      const a = r * n + k,
        b = r * n + ((k + 1) % n);
      index.push(a, a + n, b, b, a + n, b + n);
    }
  return {
    index: Uint32Array.from(index),
    cells: Int32Array.from(
      { length: rows.length * n },
      (_, i) => rows[Math.floor(i / n)] * cells.columns + columns[i % n],
    ),
  };
}
