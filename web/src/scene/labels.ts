/** Words in the scene that would lie on one another: letters stay, names of joints step aside, numbers of rings give way. */

export type Spot = { x: number; y: number; wide: number; high: number; rank: Rank };
/** `fixed`: stays where it points; `name`: goes up or down by whole lines; `number`: is left out, its ring has others. */
export type Rank = "fixed" | "name" | "number";

const ORDER: Rank[] = ["fixed", "name", "number"];
/** Lines by which a name may stand aside, nearest first. */
const ASIDE = [0, 1, -1, 2, -2, 3, -3];

function meet(a: Spot, b: Spot): boolean {
  return Math.abs(a.x - b.x) < (a.wide + b.wide) / 2 && Math.abs(a.y - b.y) < (a.high + b.high) / 2;
}

/** How far each word is moved down, pixels; null where it is left out. Places are middles. */
export function apart(spots: readonly Spot[]): (number | null)[] {
  const out: (number | null)[] = spots.map(() => 0),
    taken: Spot[] = [];
  for (const rank of ORDER)
    spots.forEach((spot, i) => {
      if (spot.rank !== rank) return;
      const free = (by: number) => !taken.some((one) => meet(one, { ...spot, y: spot.y + by }));
      const by =
        rank === "fixed" ? 0 : rank === "number" ? (free(0) ? 0 : null) : (ASIDE.map((n) => n * spot.high).find(free) ?? 0); // prettier-ignore
      out[i] = by;
      if (by !== null) taken.push({ ...spot, y: spot.y + by });
    });
  return out;
}
