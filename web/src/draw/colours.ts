/** Perceptually even colours that a colour-blind reader keeps apart, with no grey among them: blue-violet to yellow for
 * levels, a cyclic ramp for phases.
 */

const LEVELS = [
  "#3b1a6b", "#453781", "#404f8b", "#38658c", "#2e788e", "#268b8d", "#1f9e89", "#2fb07b", "#51c369", "#7fd34e", "#b0dd2f",
  "#d9e21a", "#fde725",
]; // prettier-ignore
const PHASES = [
  "#301437",
  "#45135c",
  "#592a8f",
  "#5e51ad",
  "#6276ba",
  "#7297c1",
  "#95b5c7",
  "#c4ced4",
  "#e2d9e2",
  "#d8c7be",
  "#cca389",
  "#c27c63",
  "#b25652",
  "#983550",
  "#741e4f",
  "#4a1342",
  "#2f1436",
];

export type Ramp = Uint8ClampedArray;

function ramp(stops: string[]): Ramp {
  const out = new Uint8ClampedArray(256 * 3);
  const parts = stops.map((s) => [1, 3, 5].map((i) => parseInt(s.slice(i, i + 2), 16)));
  for (let i = 0; i < 256; i++) {
    const at = (i / 255) * (parts.length - 1);
    const low = Math.min(parts.length - 2, Math.floor(at));
    for (let c = 0; c < 3; c++) out[3 * i + c] = parts[low][c] + (at - low) * (parts[low + 1][c] - parts[low][c]);
  }
  return out;
}

export const levels = ramp(LEVELS);
export const phases = ramp(PHASES);

/** Index into a ramp of a value between two ends; -1 where there is none. */
export function shade(value: number | null, low: number, high: number): number {
  if (value === null || !Number.isFinite(value)) return -1;
  return Math.max(0, Math.min(255, Math.round((255 * (value - low)) / (high - low))));
}

/** Our lines: blue-green for co, orange for cross, plum for what is laid beside. */
/** How much larger than usual the page's letters are: charts and maps grow with them on very wide windows. */
export function letters(): number {
  return Math.max(1, (parseFloat(getComputedStyle(document.documentElement).fontSize) || 15) / 15);
}

export type Inks = {
  co: string;
  cross: string;
  other: string;
  ink: string;
  quiet: string;
  grid: string;
  paper: string;
  good: string;
  band: string;
  bad: string;
  focus: string;
  ring: string;
  edge: string;
  card: string;
};

let known: { theme: string; inks: Inks } | null = null;

/** The page's inks; read anew when the theme changes, for every chart asks and reading styles is slow. */
export function lines(): Inks {
  const theme = document.documentElement.dataset["theme"] ?? "";
  if (known?.theme === theme && known.inks.ink) return known.inks;
  known = { theme, inks: read() };
  return known.inks;
}

function read(): Inks {
  const style = getComputedStyle(document.documentElement);
  const of = (name: string) => style.getPropertyValue(name).trim();
  return {
    co: of("--co"),
    cross: of("--cross"),
    other: of("--other"),
    ink: of("--ink"),
    quiet: of("--quiet"),
    grid: of("--grid"),
    paper: of("--paper"),
    good: of("--good"),
    band: of("--band"),
    bad: of("--bad"),
    focus: of("--focus"),
    ring: of("--ring"),
    edge: of("--edge"),
    card: of("--card"),
  };
}
