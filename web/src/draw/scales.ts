/** Round numbers on axes, and the part of a range that is looked at. */

export type Range = [number, number];

/** Round numbers between two ends, about `count` of them; those of an angle may go in steps of 15, 30, 45, 60 or 90. */
export function ticks([from, to]: Range, count = 7, angle = true): number[] {
  const low = Math.min(from, to),
    span = Math.abs(to - from);
  if (!(span > 0)) return [low];
  const rough = span / count,
    power = 10 ** Math.floor(Math.log10(rough)),
    angles = angle && span >= 80 && span <= 400 ? [15, 30, 45, 60, 90] : [];
  const step =
    [...angles, power, 2 * power, 5 * power, 10 * power].sort((a, b) => a - b).find((s) => span / s <= count + 1) ??
    10 * power;
  const out: number[] = [];
  for (let v = Math.ceil(low / step - 1e-9) * step; v <= low + span * (1 + 1e-9); v += step)
    out.push(Math.round(v / step) * step);
  return out;
}

export function tickWords(value: number, [from, to]: Range): string {
  const span = Math.abs(to - from);
  const digits = span > 20 ? 0 : span > 2 ? 1 : span > 0.2 ? 2 : 3;
  const text = value.toFixed(Number.isInteger(value) && span > 5 ? 0 : digits);
  return Number(text) === 0 ? text.replace("-", "") : text;
}

/** A part of a whole, `factor` times as long about a place; never beyond the whole. */
export function zoomed(view: Range, whole: Range, about: number, factor: number): Range {
  const low = about + (view[0] - about) * factor,
    high = about + (view[1] - about) * factor;
  return inside([low, high], whole);
}

/** Move a part along; it stops at the ends of the whole. */
export function moved(view: Range, whole: Range, by: number): Range {
  return inside([view[0] + by, view[1] + by], whole);
}

function inside([low, high]: Range, whole: Range): Range {
  const span = Math.min(high - low, whole[1] - whole[0]);
  const from = Math.max(whole[0], Math.min(low, whole[1] - span));
  return [from, from + span];
}

/** A range that holds all finite values, rounded outwards to a step. */
export function covering(values: Iterable<number | null>, step: number): Range {
  let low = Infinity,
    high = -Infinity;
  for (const v of values) {
    if (v === null || !Number.isFinite(v)) continue;
    low = Math.min(low, v);
    high = Math.max(high, v);
  }
  if (low > high) return [0, step];
  const from = Math.floor(low / step - 1e-9) * step,
    to = Math.ceil(high / step + 1e-9) * step;
  return to > from ? [from, to] : [from, from + step];
}
