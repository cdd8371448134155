/** Where a word fits into a chart: beside what is drawn there, not over it. */

export type Place = { x: number; y: number };
export type Box = { left: number; top: number; wide: number; high: number };

/** How often a curve comes into a box: pieces of it that have a part inside (Liang and Barsky, 1984). */
export function crossings(box: Box, curve: readonly (Place | null)[]): number {
  let count = 0;
  for (let i = 1; i < curve.length; i++) {
    const a = curve[i - 1],
      b = curve[i];
    if (a && b && inside(box, a, b)) count++;
  }
  return count;
}

function inside(box: Box, a: Place, b: Place): boolean {
  let from = 0,
    to = 1;
  for (const [start, way, low, high] of [
    [a.x, b.x - a.x, box.left, box.left + box.wide],
    [a.y, b.y - a.y, box.top, box.top + box.high],
  ]) {
    if (way === 0) {
      if (start < low || start > high) return false;
      continue;
    }
    const [near, far] = [(low - start) / way, (high - start) / way].sort((p, q) => p - q);
    from = Math.max(from, near);
    to = Math.min(to, far);
  }
  return from <= to;
}

/** The first of several boxes within a whole that no curve comes into; where all are crossed, the one crossed least. */
export function freest(boxes: readonly Box[], whole: Box, curves: readonly (Place | null)[][]): Box {
  const fits = boxes.filter((b) => b.left >= whole.left && b.top >= whole.top && b.left + b.wide <= whole.left + whole.wide && b.top + b.high <= whole.top + whole.high); // prettier-ignore
  const told = (fits.length ? fits : boxes).map((box) => ({
    box,
    count: curves.reduce((sum, one) => sum + crossings(box, one), 0),
  }));
  return told.reduce((best, one) => (one.count < best.count ? one : best)).box;
}
